#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The style and the script of a page as C arrays, with the policy that lets in these two alone: their
hashes are of the very bytes that stand in the page. Usage: parts.py STYLE.css SCRIPT.js ROLES.def OUTPUT"""
import pathlib
import re
import sys

from style import hash_of, style_of


def plain(text):
    """Without blanks and lines that the page has no need of."""
    lines = (line.strip() for line in text.splitlines())
    return '\n'.join(line for line in lines if line and not line.startswith('//')) + '\n'


def script_of(file):
    """Without its notes."""
    text = re.sub(r'/\*.*?\*/', '', file.read_text(encoding='utf-8'), flags=re.S)
    if '</script' in text.lower():
        sys.exit(f'{file.name}: a closing tag would end the script')
    return text


def array(name, text):
    data = text.encode('utf-8')
    rows = (', '.join(str(byte - 256 if byte > 127 else byte) for byte in data[start:start + 24])
            for start in range(0, len(data), 24))
    return f'static const char {name}[] = {{\n' + ',\n'.join(rows) + '};\n'


def main():
    sheet, code, table, output = map(pathlib.Path, sys.argv[1:])
    style, script = plain(style_of([sheet], table)), plain(script_of(code))
    policy = (f"default-src 'none'; script-src {hash_of(script)}; style-src {hash_of(style)}; "
              "base-uri 'none'; form-action 'none'")
    output.write_text(f'#define BOOK_POLICY "{policy}"\n' + array('book_style', style) + array('book_script', script),
                      encoding='ascii')


if __name__ == '__main__':
    main()
