#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The same runs to the last bit, whoever compiles them: tests/clock/hash.c with the rooms that reckon, built by each
compiler there is, plainly and optimized; all must print the same numbers. The rooms that read a play's words are built
once. What is made at build time is taken from BUILD.  same.py ROOT BUILD FILE..."""
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


RECKON, READ = ('base', 'floor'), ('language/syntax', 'language/words')
TESTS = ('clock/hash.c', 'clock/plays.c', 'unit/play/resolved.c', 'unit/whole_file.c', 'property/generate.c', 'property/maker.c',
         'property/pieces.c')


def sources(root, rooms):
    return [path for room in rooms for path in sorted((root / 'src' / room).rglob('*.c')) if not path.stem.endswith('_make')]


def build(root, made, folder, compiler, level, files):
    """The objects, and what the compiler said of them."""
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
        done = list(pool.map(one, files))
    return [out for out, _ in done], ''.join(text for _, text in done)


def hashed(objects, compiler, folder, files):
    """What the linked program prints, and what went wrong."""
    program = folder / 'hash'
    done = subprocess.run([compiler, *objects, '-lm', '-o', program], capture_output=True, text=True, check=False)
    if done.returncode:
        return [], done.stderr
    done = subprocess.run([program, '-g', GENERATED, *files], capture_output=True, text=True, check=False)
    return done.stdout.splitlines(), done.stderr + ('' if done.returncode == 0 else f'status {done.returncode}')


def main():
    root, made, files = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve(), sys.argv[3:]
    first, failed, number = None, 0, 0
    kinds = [(compiler, level) for compiler in COMPILERS if shutil.which(compiler) for level in LEVELS]
    print(f'1..{len(kinds)}')
    with tempfile.TemporaryDirectory() as name:
        once = pathlib.Path(name)
        reading, wrong = build(root, made, once, *kinds[0], sources(root, READ) + [root / 'tests' / test for test in TESTS])
        for compiler, level in kinds:
            number += 1
            folder = once / str(number)
            folder.mkdir()
            reckoning, said = build(root, made, folder, compiler, level, sources(root, RECKON))
            lines, said = ([], wrong + said) if wrong or said else hashed(reading + reckoning, compiler, folder, files)
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
