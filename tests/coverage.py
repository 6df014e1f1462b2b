#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""How much of src the suites run, line by line: builds apart with coverage, runs every test, prints a
row for each room and, last, the whole. Usage: coverage.py SOURCE_FOLDER BUILD_FOLDER"""
import collections
import gzip
import json
import pathlib
import subprocess
import sys
import tempfile

root, build = pathlib.Path(sys.argv[1]).resolve(), pathlib.Path(sys.argv[2]).resolve()


def main():
    if not (build / 'build.ninja').is_file():
        subprocess.run(['meson', 'setup', build, root, '-Db_coverage=true', '-Dbuildtype=debug'], check=True,
                       stdout=subprocess.DEVNULL)
    subprocess.run(['ninja', '-C', build], check=True, stdout=subprocess.DEVNULL)
    for old in build.rglob('*.gcda'):
        old.unlink()
    # tests that fail say so elsewhere: here only what they ran is counted
    subprocess.run(['meson', 'test', '-C', build, '--no-rebuild', '--timeout-multiplier', '4'], check=False,
                   stdout=subprocess.DEVNULL)
    runs = collections.defaultdict(int)
    with tempfile.TemporaryDirectory() as folder:
        data = [str(path) for path in build.rglob('*.gcda') if 'src' in path.parts]
        for start in range(0, len(data), 40):
            subprocess.run(['gcov', '--json-format', *data[start:start + 40]], cwd=folder, check=True,
                           stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            for path in pathlib.Path(folder).glob('*.gcov.json.gz'):
                report = json.loads(gzip.decompress(path.read_bytes()))
                for file in report['files']:
                    name = (build / file['file']).resolve()
                    if (root / 'src') in name.parents:
                        for line in file['lines']:
                            runs[str(name.relative_to(root)), line['line_number']] += line['count']
                path.unlink()
    rooms = collections.defaultdict(lambda: [0, 0])
    for (name, _), count in runs.items():
        for room in ('/'.join(name.split('/')[:-1]), 'src in all'):
            rooms[room][0] += count > 0
            rooms[room][1] += 1
    for room in sorted(rooms, key=lambda room: (room == 'src in all', room)):
        run, lines = rooms[room]
        print(f'{room:28} {run:6} of {lines:6} lines  {100 * run / lines:5.1f} %')


main()
