#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The plays in the documents, held to what is said of them. A block that opens with ```play has no
error; one that opens with ```play says ID [ID…] gets exactly those errors and warnings of text. The
plays of examples/ have no error and no warning and stand in their tidy form. The pictures in
examples/pictures are what the program draws today of README's first play, and a block that opens with
```text COMMAND [OPTION…] is what that command prints of it.
Prints TAP. Usage: docs.py PROGRAM SOURCE_FOLDER [--write], which draws and prints those anew."""
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import Tap  # noqa: E402

program, root = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
tap = Tap()


def said(path, text=None):
    """What check says of a file, or of a text on standard input."""
    done = subprocess.run([program, 'check', '--json', str(path)], input=text.encode() if text is not None else None,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=root, check=False, timeout=300)
    if done.returncode not in (0, 1) or b'Sanitizer' in done.stderr or b'runtime error' in done.stderr:
        return [{'severity': 'error', 'id': 'crash', 'file': str(path), 'line': 0,
                 'message': f'status {done.returncode}: {done.stderr.decode()[-2000:]}'}]
    return [json.loads(line) for line in done.stdout.splitlines()]


def told(rows):
    return '\n'.join(f'{row["file"]}:{row["line"]}: {row["severity"]}: {row["message"]} [{row["id"]}]' for row in rows)


def blocks(document):
    """Line, the words behind ```play, text."""
    opened, lines = None, []
    for number, line in enumerate(document.read_text(encoding='utf-8').splitlines(), 1):
        fence = re.match(r'```(.*)$', line)
        if opened and fence:
            yield opened[0], opened[1], '\n'.join(lines) + '\n'
            opened = None
        elif opened:
            lines.append(line)
        elif fence and fence[1].split()[:1] == ['play']:
            opened, lines = (number, fence[1].split()[1:]), []


def pictures(write):
    """README shows its first play as the program draws it."""
    text = next(iter(blocks(root / 'README.md')))[2]
    with tempfile.TemporaryDirectory() as folder:
        play = pathlib.Path(folder, 'lantern.play')
        play.write_text(text, encoding='utf-8')
        subprocess.run([program, 'draw', '--text', 'live', play.name], cwd=folder, check=True, stdout=subprocess.DEVNULL,
                       stderr=subprocess.DEVNULL, timeout=300)
        drawn = {path.name: path.read_bytes() for path in pathlib.Path(folder).glob('*.svg')}
    shown = root / 'examples' / 'pictures'
    if write:
        shown.mkdir(exist_ok=True)
        for name, bytes_ in drawn.items():
            (shown / name).write_bytes(bytes_)
    kept = {path.name: path.read_bytes() for path in shown.glob('*.svg')}
    tap.same(sorted(kept), sorted(drawn), "examples/pictures holds each diagram of README's first play")
    for name in sorted(drawn):
        tap.ok(kept.get(name) == drawn[name], f'examples/pictures/{name} is drawn as today', 'run docs.py with --write and look')
    used = set(re.findall(r'\(examples/pictures/([^)]+)\)', (root / 'README.md').read_text(encoding='utf-8')))
    tap.ok(used and used <= set(kept), 'each picture that README shows is there', ' '.join(sorted(used - set(kept))))


def answers(write):
    """README shows what commands print of its first play."""
    readme = root / 'README.md'
    text = readme.read_text(encoding='utf-8')
    play = next(iter(blocks(readme)))[2]
    found = list(re.finditer(r'(?m)^```text ([^\n]+)\n(.*?)^```$', text, re.DOTALL))
    tap.ok(found, 'README shows what a command prints')
    for block in reversed(found):
        command, *options = block[1].split()
        done = subprocess.run([program, command, '-', *options], input=play.encode(), stdout=subprocess.PIPE,
                              stderr=subprocess.DEVNULL, check=False, timeout=300)
        printed = done.stdout.decode()
        text = text[:block.start(2)] + printed + text[block.end(2):] if write else text
        tap.same(printed, printed if write else block[2], f'README shows what {block[1]} prints')
    if write:
        readme.write_text(text, encoding='utf-8')


def main():
    pictures('--write' in sys.argv[3:])
    answers('--write' in sys.argv[3:])
    for document in sorted(root.glob('*.md')):
        for number, words, text in blocks(document):
            rows = said('-', text)
            what = f'the play in {document.name}, line {number}'
            if words[:1] == ['says']:
                ids = sorted(row['id'] for row in rows if row['severity'] != 'note')
                tap.same(ids, sorted(words[1:]), f'{what}, says {" ".join(words[1:])}')
            else:
                errors = [row for row in rows if row['severity'] == 'error']
                tap.ok(not errors and not words, f'{what}, has no error', told(errors))
    for example in sorted((root / 'examples').rglob('*.play')):
        rows = [row for row in said(example) if row['severity'] != 'note']
        tap.ok(not rows, f'{example.relative_to(root)} has nothing to be warned of', told(rows))
        tidy = subprocess.run([program, 'tidy', '--check', str(example)], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
                              cwd=root, check=False, timeout=300)
        tap.ok(tidy.returncode == 0, f'{example.relative_to(root)} is tidy', tidy.stderr.decode())
    return tap.end()


if __name__ == '__main__':
    sys.exit(main())
