#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Packs what lies in a module's memory as it starts, tables and texts: they are a quarter of it and mostly words. Takes a module
that gives out `unpack` (unpack.c), gives one that starts with it. What is packed lies at the stack's end, see there.
Usage: pack.py INPUT.wasm OUTPUT.wasm"""
import pathlib
import sys

from pool import number, read, sections

EXPORTS, START, ELEMENTS, CODE, DATA_COUNT, DATA = 7, 8, 9, 10, 12, 11  # sections
I32_CONST, END, FUNCTION = 0x41, 0x0B, 0
PACKED = 1024  # as in unpack.c
LEAST, FAR = 4, 65535  # bytes of what is said again, and how far back it may stand
LOOKS = 64  # places that are tried for it (ours)


def signed_number(value):
    """As a constant has it, whose last byte says whether it is below 0."""
    out = number(value)
    return out if out[-1] < 0x40 else out[:-1] + bytes([out[-1] | 0x80, 0])


def image(data):
    """What the segments make of the memory: from which address, which bytes."""
    count, at = read(data, 0)
    pieces = []
    for _ in range(count):
        if data[at] != 0 or data[at + 1] != I32_CONST:
            sys.exit('pack.py: a segment that is not simply laid out')
        begin, at = read(data, at + 2)  # below 2^20: as if it had no sign
        size, at = read(data, at + 1)
        pieces.append((begin, data[at:at + size]))
        at += size
    first, last = min(begin for begin, _ in pieces), max(begin + len(piece) for begin, piece in pieces)
    memory = bytearray(last - first)
    for begin, piece in pieces:
        memory[begin - first:begin - first + len(piece)] = piece
    return first, bytes(memory)


def same(data, one, other):
    """How many bytes from `one` on are those from `other` on."""
    size = 0
    while one + size < len(data) and data[one + size] == data[other + size]:
        size += 1
    return size


def longest(data, at, places):
    best, back = 0, 0
    for place in reversed(places[-LOOKS:]):
        if at - place > FAR:
            break
        if data[place:place + best + 1] == data[at:at + best + 1]:
            size = same(data, at, place)
            if size > best:
                best, back = size, at - place
    return best, back


def counted(count):
    """The nibble of a count and the bytes behind."""
    if count < 15:
        return count, b''
    more = count - 15
    return 15, b'\xff' * (more // 255) + bytes([more % 255])


def piece(literals, size, back):
    first, behind = counted(len(literals))
    second, more = counted(size - LEAST) if size else (0, b'')
    return bytes([first << 4 | second]) + behind + literals + (back.to_bytes(2, 'little') + more if size else b'')


def packed(data):
    """See unpack.c. A longer one that begins a byte later is preferred."""
    places, out, literal, at = {}, bytearray(), 0, 0

    def found(where):
        known = places.get(data[where:where + LEAST])
        return longest(data, where, known) if known else (0, 0)

    def pass_over(until):
        nonlocal at
        for place in range(at, until):
            places.setdefault(data[place:place + LEAST], []).append(place)
        at = until

    while at < len(data):
        size, back = found(at)
        if size < LEAST:
            pass_over(at + 1)
            continue
        begin = at
        pass_over(begin + 1)
        later = found(at)
        if later[0] > size + 1:
            continue
        out += piece(data[literal:begin], size, back)
        pass_over(begin + size)
        literal = at
    return bytes(out + (piece(data[literal:], 0, 0) if literal < len(data) else b''))


def unpacked(data, size):
    out, at = bytearray(), 0

    def count(nibble):
        nonlocal at
        more = 255 if nibble == 15 else 0
        while more == 255:
            more = data[at]
            at += 1
            nibble += more
        return nibble

    while len(out) < size:
        counts = data[at]
        at += 1
        literals = count(counts >> 4)
        out += data[at:at + literals]
        at += literals
        if len(out) < size:
            back = int.from_bytes(data[at:at + 2], 'little')
            at += 2
            for _ in range(count(counts & 15) + LEAST):
                out.append(out[-back])
    return bytes(out)


def exported(data, wanted):
    """The number of the function that is given out by that name."""
    count, at = read(data, 0)
    for _ in range(count):
        size, at = read(data, at)
        name, kind = data[at:at + size].decode(), data[at + size]
        index, at = read(data, at + size + 1)
        if name == wanted and kind == FUNCTION:
            return index
    sys.exit(f'pack.py: the module does not give out {wanted}')


def pack(module):
    parts = dict(sections(module))
    first, memory = image(parts[DATA])
    short = packed(memory)
    if unpacked(short, len(memory)) != memory or START in parts:
        sys.exit('pack.py: it cannot be unpacked')
    body = first.to_bytes(4, 'little') + len(memory).to_bytes(4, 'little') + short
    if PACKED + len(body) > first:
        sys.exit('pack.py: there is no room for it below the data')
    parts[DATA] = number(1) + bytes([0, I32_CONST]) + signed_number(PACKED) + bytes([END]) + number(len(body)) + body
    parts[DATA_COUNT] = number(1)
    parts[START] = number(exported(parts[EXPORTS], 'unpack'))
    order = [*range(1, ELEMENTS + 1), DATA_COUNT, CODE, DATA]
    return module[:8] + b''.join(bytes([kind]) + number(len(parts[kind])) + parts[kind] for kind in order if kind in parts)


def main():
    source, target = map(pathlib.Path, sys.argv[1:])
    target.write_bytes(pack(source.read_bytes()))


if __name__ == '__main__':
    main()
