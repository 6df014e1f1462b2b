#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""advances: writes the advance widths of the face's letters as a C table.

advances.py OUT.c FACE.otf...   (in the order of enum face)

Reads the tables cmap (formats 4 and 12), hmtx, hhea and head of OpenType files, and nothing else.
A letter is in the table when every face has it.
"""
import struct
import sys

# What a coach's page is likely to hold; any other letter counts as an em.
RANGES = [
    (0x20, 0x7E),      # ASCII
    (0xA0, 0x17F),     # Latin-1, Latin Extended-A
    (0x2009, 0x200A),  # thin and hair space
    (0x2010, 0x2027),  # dashes, quotation marks, dagger, bullet, ellipsis
    (0x202F, 0x203A),  # narrow no-break space, per mille, primes, angle quotes
    (0x20AC, 0x20AC),  # euro
    (0x2122, 0x2122),  # trade mark
    (0x2190, 0x2199),  # arrows
    (0x2212, 0x2215),  # minus, plus-minus, slash
    (0x2248, 0x2265),  # about, not equal, at most, at least
    (0x25A0, 0x25CF),  # squares, circles, triangles
    (0x2713, 0x2717),  # ticks and crosses
]


class Face:
    def __init__(self, path):
        with open(path, 'rb') as file:
            self.data = file.read()
        self.path = path
        count = self.u16(4)
        self.tables = {}
        for i in range(count):
            tag, _, offset, _ = struct.unpack_from('>4sIII', self.data, 12 + 16 * i)
            self.tables[tag] = offset
        self.em = self.u16(self.tables[b'head'] + 18)
        self.metrics = self.u16(self.tables[b'hhea'] + 34)
        self.glyphs = self.read_cmap()

    def u16(self, at):
        return struct.unpack_from('>H', self.data, at)[0]

    def u32(self, at):
        return struct.unpack_from('>I', self.data, at)[0]

    def read_cmap(self):
        cmap = self.tables[b'cmap']
        best = None
        for i in range(self.u16(cmap + 2)):
            platform, encoding, offset = struct.unpack_from('>HHI', self.data, cmap + 4 + 8 * i)
            form = self.u16(cmap + offset)
            if form == 12 or (form == 4 and platform in (0, 3) and encoding != 0):
                if best is None or form > best[0]:
                    best = (form, cmap + offset)
        if best is None:
            sys.exit(f'{self.path}: no letter table that can be read (cmap format 4 or 12)')
        return self.read_segments(best[1]) if best[0] == 4 else self.read_groups(best[1])

    def read_groups(self, at):
        glyphs = {}
        for i in range(self.u32(at + 12)):
            first, last, glyph = struct.unpack_from('>III', self.data, at + 16 + 12 * i)
            for letter in range(first, last + 1):
                glyphs[letter] = glyph + letter - first
        return glyphs

    def read_segments(self, at):
        glyphs = {}
        twice = self.u16(at + 6)
        for i in range(0, twice, 2):
            last = self.u16(at + 14 + i)
            first = self.u16(at + 16 + twice + i)
            delta = self.u16(at + 16 + 2 * twice + i)
            place = at + 16 + 3 * twice + i
            offset = self.u16(place)
            for letter in range(first, min(last, 0xFFFE) + 1):
                if offset == 0:
                    glyph = (letter + delta) & 0xFFFF
                else:
                    glyph = self.u16(place + offset + 2 * (letter - first))
                    glyph = (glyph + delta) & 0xFFFF if glyph else 0
                if glyph:
                    glyphs[letter] = glyph
        return glyphs

    def advance(self, letter):
        glyph = min(self.glyphs[letter], self.metrics - 1)
        return self.u16(self.tables[b'hmtx'] + 4 * glyph)


def main(out, paths):
    faces = [Face(path) for path in paths]
    ems = {face.em for face in faces}
    if len(ems) != 1:
        sys.exit('the faces do not agree on the units of an em')
    rows = []
    for first, last in RANGES:
        for letter in range(first, last + 1):
            if all(letter in face.glyphs for face in faces):
                widths = ', '.join(str(face.advance(letter)) for face in faces)
                rows.append(f'    {{0x{letter:04X}, {{{widths}}}}},\n')
    with open(out, 'w', encoding='utf-8') as file:
        file.write('/* Made by fonts/advances.py from the face; not to be edited. */\n'
                   '#include "picture/metrics/advances.h"\n\n'
                   f'const unsigned advances_em = {ems.pop()};\n'
                   f'const size_t advances_count = {len(rows)};\n'
                   'const struct advance advances[] = {\n')
        file.writelines(rows)
        file.write('};\n')


main(sys.argv[1], sys.argv[2:])
