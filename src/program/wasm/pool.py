#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Numbers that stand often in the code of a module stand in it once: a constant of nine bytes becomes the name of
one, of two or three. Takes a module of the core's instructions, gives the same with more globals; an instruction that
it does not know ends it, so that nothing is taken for what it is not. No tool at hand does this (binaryen puts the constants back).
Usage: pool.py INPUT.wasm OUTPUT.wasm"""
import collections
import pathlib
import sys

GLOBALS, CODE = 6, 10  # sections
GLOBAL_GET, I32_CONST, I64_CONST, F32_CONST, F64_CONST = 0x23, 0x41, 0x42, 0x43, 0x44
F64_TYPE, IMMUTABLE, END = 0x7C, 0x00, 0x0B
GLOBAL_COST = 12  # bytes of one in its section: type, mutability, constant, end


def read(data, at):
    """An unsigned number and where the next byte is; of a signed one the place alone counts."""
    value = shift = 0
    while True:
        byte = data[at]
        at += 1
        value |= (byte & 0x7F) << shift
        shift += 7
        if byte < 0x80:
            return value, at


def number(value):
    out = bytearray()
    while value >= 0x80:
        out.append(value & 0x7F | 0x80)
        value >>= 7
    return bytes(out + bytes([value]))


def skip(data, at, count):
    for _ in range(count):
        _, at = read(data, at)
    return at


NONE = {0x00, 0x01, 0x05, 0x0B, 0x0F, 0x1A, 0x1B} | set(range(0x45, 0xC5))  # no operand
ONE = {0x02, 0x03, 0x04, 0x0C, 0x0D, 0x10, *range(0x20, 0x25), 0x3F, 0x40, I32_CONST, I64_CONST}
TWO = {0x11, *range(0x28, 0x3F)}  # a type and a table; alignment and offset
WIDE = {0x08: 2, 0x0A: 2, 0x0B: 1, **{code: 0 for code in range(8)}}  # behind 0xFC


def after(data, at):
    """The place of the instruction behind the one at `at`."""
    code, at = data[at], at + 1
    if code in NONE:
        return at
    if code in ONE:
        return skip(data, at, 1)
    if code in TWO:
        return skip(data, at, 2)
    if code in (F32_CONST, F64_CONST):
        return at + (4 if code == F32_CONST else 8)
    if code == 0x0E:  # a table of branches and the other one
        count, at = read(data, at)
        return skip(data, at, count + 1)
    if code == 0xFC:
        wide, at = read(data, at)
        if wide in WIDE:
            return skip(data, at, WIDE[wide])
    sys.exit(f'pool.py: an instruction it does not know: {code:#x}')


def bodies(code):
    """Of each function: its locals as they are, its instructions."""
    count, at = read(code, 0)
    for _ in range(count):
        size, at = read(code, at)
        groups, begin = read(code, at)
        for _ in range(groups):
            begin = skip(code, begin, 1) + 1
        yield code[at:begin], code[begin:at + size]
        at += size


def instructions(body):
    at = 0
    while at < len(body):
        end = after(body, at)
        yield body[at:end]
        at = end


def sections(module):
    at = 8
    while at < len(module):
        size, begin = read(module, at + 1)
        yield module[at], module[begin:begin + size]
        at = begin + size


def pool(module):
    parts = list(sections(module))
    functions = [(local, list(instructions(body))) for local, body in bodies(dict(parts)[CODE])]
    often = collections.Counter(one for _, body in functions for one in body if one[0] == F64_CONST)
    count, at = read(dict(parts)[GLOBALS], 0)
    name, rows = {}, bytearray()
    for constant, times in sorted(often.items(), key=lambda item: (-item[1], item[0])):
        called = bytes([GLOBAL_GET]) + number(count + len(name))
        if times * (len(constant) - len(called)) > GLOBAL_COST:
            name[constant] = called
            rows += bytes([F64_TYPE, IMMUTABLE]) + constant + bytes([END])
    made = [local + b''.join(name.get(one, one) for one in body) for local, body in functions]
    new = {GLOBALS: number(count + len(name)) + dict(parts)[GLOBALS][at:] + rows,
           CODE: number(len(made)) + b''.join(number(len(body)) + body for body in made)}
    out = bytearray(module[:8])
    for kind, content in parts:
        content = new.get(kind, content)
        out += bytes([kind]) + number(len(content)) + content
    return bytes(out)


def main():
    source, target = map(pathlib.Path, sys.argv[1:])
    target.write_bytes(pool(source.read_bytes()))


if __name__ == '__main__':
    main()
