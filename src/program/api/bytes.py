#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""A file's bytes as a list for a C array. Usage: bytes.py INPUT OUTPUT"""
import sys

with open(sys.argv[1], 'rb') as file:
    data = file.read()
with open(sys.argv[2], 'w', encoding='ascii') as file:
    for start in range(0, len(data), 24):
        line = ', '.join(str(byte - 256 if byte > 127 else byte) for byte in data[start:start + 24])
        file.write(line + (',\n' if start + 24 < len(data) else '\n'))
