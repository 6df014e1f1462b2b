#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The style and the script of a page as C arrays, with the policy that lets in these two alone: their
hashes are of the very bytes that stand in the page. Usage: parts.py STYLE.css SCRIPT.js OUTPUT"""
import base64
import hashlib
import pathlib
import re
import sys


def plain(text):
    """Without the licence line and the notes round it, which the page has no need of."""
    text = re.sub(r'/\*.*?\*/', '', text, flags=re.S)
    lines = (line.strip() for line in text.splitlines())
    return '\n'.join(line for line in lines if line and not line.startswith('//')) + '\n'


def array(name, text):
    data = text.encode('utf-8')
    rows = (', '.join(str(byte - 256 if byte > 127 else byte) for byte in data[start:start + 24])
            for start in range(0, len(data), 24))
    return f'static const char {name}[] = {{\n' + ',\n'.join(rows) + '};\n'


def sha256(text):
    return "'sha256-" + base64.b64encode(hashlib.sha256(text.encode('utf-8')).digest()).decode('ascii') + "'"


def main():
    style, script = (plain(pathlib.Path(path).read_text(encoding='utf-8')) for path in sys.argv[1:3])
    if '</script' in script.lower() or '</style' in style.lower():
        sys.exit('parts.py: a closing tag inside a part would end it')
    policy = (f"default-src 'none'; script-src {sha256(script)}; style-src {sha256(style)}; "
              "base-uri 'none'; form-action 'none'")
    pathlib.Path(sys.argv[3]).write_text(f'#define BOOK_POLICY "{policy}"\n' + array('book_style', style)
                                         + array('book_script', script), encoding='ascii')


if __name__ == '__main__':
    main()
