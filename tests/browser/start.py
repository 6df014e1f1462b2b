#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Starts a test that needs a browser; where node, Chromium or the packages of package.json are missing, it
says so as a TAP skip. Usage: start.py SCRIPT.cjs [ARGUMENT...]"""
import os
import pathlib
import shutil
import sys

HERE = pathlib.Path(__file__).resolve().parent


def missing():
    if not shutil.which('node'):
        return 'node'
    if not shutil.which('chromium') and not os.environ.get('CHROMIUM'):
        return 'chromium'
    if not (HERE / 'node_modules' / 'playwright-core').is_dir():
        return 'the packages: run npm ci in tests/browser'
    return None


def main():
    why = missing()
    if why:
        print(f'1..0 # SKIP there is no {why}')
        return 0
    os.environ.setdefault('CHROMIUM', shutil.which('chromium') or '')
    os.execvp('node', ['node', *sys.argv[1:]])


if __name__ == '__main__':
    sys.exit(main())
