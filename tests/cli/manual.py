#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The man pages and completions, made from the program's tables. Prints TAP.
Usage: manual.py PROGRAM MANUAL_PROGRAM"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from commands import COMMANDS  # noqa: E402
from tap import Tap  # noqa: E402

program, manual = (os.path.abspath(word) for word in sys.argv[1:3])
tap = Tap()


def output(*words, **more):
    return subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False, **more)


def complete(script, *words):
    """What bash offers when the last of the words is being written."""
    line = ' '.join(f"'{word}'" for word in words)
    text = f"source {script}; COMP_WORDS=({line}); COMP_CWORD={len(words) - 1}; _courtwright; echo ${{COMPREPLY[@]}}"
    return output('bash', '-c', text).stdout.decode().split()


def main():
    commands = output(program, '--help').stdout.decode()
    names = re.findall(r'^  ([a-z-]+) ', commands.split('Commands:')[1].split('\n\n')[0], re.M)
    pages = {page: output(manual, page).stdout.decode() for page in ('man1', 'man5', 'bash')}
    tap.same(sorted(names), sorted(COMMANDS), 'help has every command')
    sections = re.findall(r'^\.SS ([a-z\\-]+)( |$)', pages['man1'], re.M)
    tap.same(sorted(section.replace('\\-', '-') for section, _ in sections), sorted(COMMANDS), 'every command has its section, and nothing else')
    for name in names:
        options = set(re.findall(r'--([a-z-]+)', output(program, name, '--help').stdout.decode().split('Options:')[1].split('Example')[0]))
        missing = [option for option in options - {'help', 'color'} if '\\-\\-' + option.replace('-', '\\-') not in pages['man1']]
        tap.ok(not missing, f'the options of {name} are in the page', missing)
    verbs = [line.split('  ')[0] for line in output(program, 'list', 'verbs').stdout.decode().splitlines()]
    tap.ok(verbs and all('\\fB' + verb.replace('-', '\\-') + '\\fR' in pages['man5'] for verb in verbs), 'every verb is in the page of the language')
    if shutil.which('groff'):
        for page in ('man1', 'man5'):
            done = output('groff', '-ww', '-man', '-Tutf8', '-z', '-K', 'utf8', input=pages[page].encode())
            tap.ok(done.returncode == 0 and not done.stderr, f'{page} is sound', done.stderr.decode())
    with tempfile.TemporaryDirectory() as folder:
        script = os.path.join(folder, 'courtwright')
        pathlib.Path(script).write_text(pages['bash'])
        tap.same(complete(script, 'courtwright', 'h'), ['handout'], 'bash completes a command')
        tap.same(complete(script, 'courtwright', 'draw', '--sh'), ['--show-checks'], 'and an option')
        tap.same(complete(script, 'courtwright', 'draw', '--format', 'p'), ['pdf', 'png'], 'and its values')
        tap.same(complete(script, 'courtwright', 'list', 'v'), ['verbs'], 'and a table')
    return tap.end()


if __name__ == '__main__':
    sys.exit(main())
