#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The same runs to the last bit, whoever compiles them: tests/clock/hash.c with the rooms it needs, built by each
compiler there is, plainly and optimized; all must print the same numbers. What is made at build time is taken from
BUILD.  same.py ROOT BUILD FILE..."""
import concurrent.futures
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

COMPILERS = ('gcc', 'clang')
LEVELS = ('-O0', '-O2')
FLAGS = ('-std=c17', '-ffp-contract=off', '-fno-fast-math')
GENERATED = '20'


def sources(root):
    rooms = [path for room in ('base', 'language/syntax', 'language/words', 'floor')
             for path in sorted((root / 'src' / room).rglob('*.c')) if not path.stem.endswith('_make')]
    tests = ['clock/hash.c', 'clock/plays.c', 'unit/play/resolved.c', 'unit/whole_file.c', 'property/generate.c', 'property/maker.c',
             'property/pieces.c']
    return rooms + [root / 'tests' / name for name in tests]


def build(root, made, folder, compiler, level):
    """The program, or what the compiler said."""
    include = [f'-I{root / name}' for name in ('src', 'tests/clock', 'tests/unit', 'tests/unit/play', 'tests/property')]
    include.append(f'-I{made / "src/language/words"}')
    cache = [shutil.which('ccache')] if shutil.which('ccache') else []
    flags = list(FLAGS) + (['-fexcess-precision=standard'] if compiler == 'gcc' else [])

    def one(source):
        out = folder / (str(source.relative_to(root)).replace('/', '-') + '.o')
        done = subprocess.run([*cache, compiler, level, *flags, *include, '-c', source, '-o', out],
                              capture_output=True, text=True, check=False)
        return out, done.stderr if done.returncode else ''

    with concurrent.futures.ThreadPoolExecutor(os.cpu_count() or 1) as pool:
        objects = list(pool.map(one, sources(root)))
    said = ''.join(text for _, text in objects)
    program = folder / 'hash'
    if not said:
        done = subprocess.run([compiler, *[out for out, _ in objects], '-lm', '-o', program],
                              capture_output=True, text=True, check=False)
        said = done.stderr if done.returncode else ''
    return program, said


def main():
    root, made, files = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve(), sys.argv[3:]
    first, failed, number = None, 0, 0
    kinds = [(compiler, level) for compiler in COMPILERS if shutil.which(compiler) for level in LEVELS]
    print(f'1..{len(kinds)}')
    for compiler, level in kinds:
        number += 1
        with tempfile.TemporaryDirectory() as name:
            program, said = build(root, made, pathlib.Path(name), compiler, level)
            lines = []
            if not said:
                done = subprocess.run([program, '-g', GENERATED, *files], capture_output=True, text=True, check=False)
                lines, said = done.stdout.splitlines(), done.stderr
                said += '' if done.returncode == 0 else f'status {done.returncode}'
        first = first or lines
        good = not said and len(lines) > 1 and lines == first
        failed += not good
        print(f'{"ok" if good else "not ok"} {number} - {compiler} {level}: {max(0, len(lines) - 1)} plays, {lines[-1] if lines else "none"}')
        for was, now in zip(first, lines):
            if was != now:
                print(f'# {was} became {now}')
        for line in said.splitlines()[:20]:
            print('# ' + line)
    return 1 if failed else 0


if __name__ == '__main__':
    sys.exit(main())
