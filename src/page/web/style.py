# SPDX-License-Identifier: MIT
"""What the scripts that put a page together have in common: colors from the one table, and hashes for its policy."""
import base64
import hashlib
import re
import sys

THEMES = ('print', 'screen', 'dark')  # the columns of roles.def


def palettes(table):
    """What `@palette screen;` stands for: the column's colors as a style's own variables."""
    rows = re.findall(r'^ROLE\(\w+, "([\w-]+)", 0x(\w{6}), 0x(\w{6}), 0x(\w{6})\)$', table.read_text(encoding='utf-8'), flags=re.M)
    return {theme: ' '.join(f'--{row[0]}: #{row[1 + column].lower()};' for row in rows) for column, theme in enumerate(THEMES)}


def style_of(files, table):
    """Style sheets as one text with their colors, without notes."""
    colors = palettes(table)
    text = ''.join(file.read_text(encoding='utf-8') for file in files)
    text = re.sub(r'@palette (\w+);', lambda match: colors[match[1]], re.sub(r'/\*.*?\*/', '', text, flags=re.S))
    if '</style' in text.lower():
        sys.exit(f'{files[0].name}: a closing tag would end the style')
    return text


def hash_of(text):
    return "'sha256-" + base64.b64encode(hashlib.sha256(text.encode('utf-8')).digest()).decode('ascii') + "'"
