#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Who includes whom: reads the real #include lines of src/ and holds them against the table of rooms.
A room may include what its row names, and what those may include in turn. Prints TAP."""
import pathlib
import re
import sys
import tempfile

TABLE = {
    'base': [],
    'language/syntax': ['base'],
    'floor/court': ['base'],
    'language/words': ['language/syntax', 'floor/court'],
    'language/tidy': ['language/words', 'language/syntax'],
    'floor/play': ['language/words', 'floor/court'],
    'floor/season': ['floor/play', 'language/words'],
    'floor/motion': ['base', 'floor/court', 'floor/play'],
    'floor/defense': ['base', 'floor/court', 'floor/play'],
    'floor/sim': ['floor/motion', 'floor/defense', 'floor/play'],
    'language/tell': ['floor/play', 'language/words'],
    'language/edit': ['language/tidy', 'language/tell', 'floor/play'],
    'judge/check': ['floor/sim'],
    'judge/trials': ['floor/sim', 'judge/check'],
    'picture/metrics': ['base'],
    'picture/scene': ['floor/sim', 'judge/check', 'language/tell', 'picture/metrics'],
    'picture/svg': ['picture/scene'],
    'picture/text': ['base', 'picture/metrics'],
    'picture/paint': ['picture/scene', 'picture/text', 'picture/svg'],  # svg: the prefix of ids, escapes
    'page/sheet': ['floor/season', 'picture/scene', 'picture/paint', 'language/tell', 'picture/text', 'judge/check'],
    'page/web': ['floor/season', 'picture/svg', 'picture/scene', 'language/tell', 'judge/check'],
    'program/api': None,  # every room but cli
    'program/wasm': ['base'],  # and the public header
    'program/serve': [],
    'program/cli': ['program/serve'],
}
# What may be asked of the world outside, by room; anything else is the C library's plain part.
PLAIN = {'assert', 'ctype', 'float', 'limits', 'math', 'setjmp', 'stdalign', 'stdarg', 'stdbool', 'stddef', 'stdint',
         'stdio', 'stdlib', 'string'}
OUTSIDE = {
    'base': {'sys/mman'},  # the pages of a chunk come together, where the machine can
    'picture/text': {'cairo', 'cairo-ft', 'fontconfig/fontconfig', 'fribidi', 'raqm', 'ft2build', 'linebreak', 'linebreakdef', 'hb', 'hb-ft', 'threads'},
    'picture/paint': {'cairo', 'cairo-svg', 'cairo-pdf', 'png', 'dlfcn'},  # dlfcn: librsvg, when there is a crest
    'page/sheet': {'cairo', 'cairo-pdf'},
    # no fcntl, no sys/stat: it opens no file
    'program/serve': {'errno', 'microhttpd', 'netinet/in', 'poll', 'pthread', 'strings', 'sys/eventfd', 'sys/random', 'sys/socket', 'time', 'unistd'},
    'program/cli': {'jansson', 'dirent', 'errno', 'fcntl', 'pthread', 'signal', 'spawn', 'stdatomic', 'strings', 'sys/resource', 'sys/stat', 'sys/types', 'sys/wait', 'time', 'unistd'},
}
GENERATED = {'language/words', 'picture/metrics', 'picture/text', 'page/web', 'program/api',
             'program/cli'}  # tables made at build time are included by bare name


def reach(room):
    """Every room that `room` may include, through others too."""
    if TABLE[room] is None:
        return {other for other in TABLE if other not in ('program/cli', 'program/serve', 'program/wasm')}
    found, todo = {room}, list(TABLE[room])
    while todo:
        next_room = todo.pop()
        if next_room not in found:
            found.add(next_room)
            todo += TABLE[next_room]
    return found


def room_of(path):
    """The room a path below src/ is in, or None."""
    parts = path.split('/')
    return 'base' if parts[0] == 'base' else '/'.join(parts[:2])


def faults_of(root, room):
    allowed, faults, read = reach(room), [], 0
    for file in sorted((root / room).rglob('*')):
        if file.suffix not in ('.c', '.h', '.def', '.inc'):
            continue
        read += 1
        for number, line in enumerate(file.read_text(encoding='utf-8').splitlines(), 1):
            match = re.match(r'\s*#\s*include\s+(["<])([^">]+)[">]', line)
            if match:
                fault = judge(root, room, allowed, match[1], match[2])
                if fault:
                    faults.append(f'{file.relative_to(root.parent)}:{number}: {match[2]}: {fault}')
            elif re.match(r'\s*#\s*include\s+[^"<\s]', line) and 'FT_' not in line:
                faults.append(f'{file.relative_to(root.parent)}:{number}: an include that cannot be read')
    if not read:
        faults.append(f'{room}: no files')
    return faults


def judge(root, room, allowed, mark, path):
    if path == 'courtwright/courtwright.h':
        return None if room.startswith('program/') else 'the public header is for program/ only'
    if mark == '<':
        name = path[:-2]
        if name in PLAIN or name in OUTSIDE.get(room, ()):
            return None
        return 'not a library of this room'
    if '/' not in path:
        return None if room in GENERATED else 'a path from src/ is wanted'
    if not (root / path).is_file():
        return 'there is no such file'
    other = room_of(path)
    if other not in TABLE:
        return f'{other} is not in the table'
    return None if other in allowed else f'{room} may not include {other}'


def finds_a_fault():
    """Whether this test can fail: a small tree with one include that is not allowed."""
    with tempfile.TemporaryDirectory() as folder:
        root = pathlib.Path(folder) / 'src'
        for path, text in (('language/syntax/a.c', '#include "floor/sim/run.h"\n'), ('floor/sim/run.h', '\n')):
            (root / path).parent.mkdir(parents=True)
            (root / path).write_text(text)
        return len(faults_of(root, 'language/syntax')) == 1 and not faults_of(root, 'floor/sim')


def main():
    root = pathlib.Path(sys.argv[1]) if len(sys.argv) > 1 else pathlib.Path(__file__).resolve().parents[2] / 'src'
    rooms = sorted(TABLE)
    there = {room_of(str(file.relative_to(root))) for file in root.rglob('*.[ch]')}
    print(f'1..{len(rooms) + 2}')
    failed = 0
    for number, room in enumerate(rooms, 1):
        faults = faults_of(root, room)
        failed += bool(faults)
        print(f'{"not ok" if faults else "ok"} {number} - {room} includes only what it may')
        for fault in faults:
            print(f'# {fault}')
    strangers = sorted(there - set(TABLE))
    failed += bool(strangers)
    print(f'{"not ok" if strangers else "ok"} {len(rooms) + 1} - every room is in the table {" ".join(strangers)}')
    works = finds_a_fault()
    failed += not works
    print(f'{"ok" if works else "not ok"} {len(rooms) + 2} - an include that is not allowed is found')
    return 1 if failed else 0


if __name__ == '__main__':
    sys.exit(main())
