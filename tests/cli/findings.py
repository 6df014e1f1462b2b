#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What `courtwright check --json` writes, held line by line against its schema by a validator that is not ours.
Prints TAP. Usage: findings.py PROGRAM SCHEMA FILE.play…"""
import copy
import json
import os
import pathlib
import subprocess
import sys

try:
    import jsonschema
except ImportError:  # the package is Debian's, and another python may stand before Debian's on the path
    if sys.executable != '/usr/bin/python3' and os.path.exists('/usr/bin/python3'):
        os.execv('/usr/bin/python3', ['/usr/bin/python3', *sys.argv])
    raise

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import Tap  # noqa: E402

PROGRAM, SCHEMA = os.path.abspath(sys.argv[1]), pathlib.Path(sys.argv[2])
FILES = [pathlib.Path(name).resolve() for name in sys.argv[3:]]
tap = Tap()

ACCEPTED = '''play "Millrace"
  start 1 top, 2 right wing, 3 left wing, 4 at 4 ft above right wing, 5 left corner
  defense man
  step
    accept space.close "they hand off next"
    1 passes to 3
    2 and 4 stay
'''
WRONG = '''play "Lantern"
  start five-out
  step
    1 pases to 2
play "Lantern"
  start five-out
  step
    1 passes to 2
'''


def rows_of(*words, stdin=''):
    done = subprocess.run([PROGRAM, 'check', '--json', *words], input=stdin.encode(), stdout=subprocess.PIPE,
                          stderr=subprocess.PIPE, check=False)
    return [json.loads(line) for line in done.stdout.decode().splitlines()], done.stderr.decode()


def whys(validator, rows):
    """What is wrong with them; the innermost reasons, since `oneOf` alone says little."""
    out = []
    for row in rows:
        for error in validator.iter_errors(row):
            out += [f'{row}\n  {inner.message}' for inner in error.context or [error]]
    return '\n'.join(out[:8])


def main():
    text = SCHEMA.read_text()
    schema = json.loads(text)
    validator = jsonschema.Draft202012Validator(schema)
    jsonschema.Draft202012Validator.check_schema(schema)
    printed = subprocess.run([PROGRAM, 'check', '--schema'], stdout=subprocess.PIPE, check=False)
    tap.ok(printed.returncode == 0 and printed.stdout.decode() == text, 'check --schema prints the schema that is installed')
    seen = set()
    rows = []
    for what, words, stdin in (('what is wrong in a text', ['-'], WRONG), ('an accepted finding', ['-'], ACCEPTED),
                               ('a tolerance', ['--tolerance', '-'], ACCEPTED)):
        rows, err = rows_of(*words, stdin=stdin)
        tap.ok(rows and not err and not whys(validator, rows), f'{what} is as the schema says', whys(validator, rows) + err)
        seen |= {key for row in rows for key in row}
    fields = {key for kind in ('said', 'tolerance') for key in schema['$defs'][kind]['properties']}
    tap.same(sorted(fields - seen), [], 'every field of the schema has been met')
    for file in FILES:
        rows, err = rows_of(str(file))
        tap.ok(not err and not whys(validator, rows), f'{file.name}: {len(rows)} lines are as the schema says', whys(validator, rows) + err)
    rows, _ = rows_of('--tolerance', '-', stdin=ACCEPTED)
    for row in rows:  # and no field can be left out or be another unseen
        for key in row:
            less, other = copy.deepcopy(row), copy.deepcopy(row)
            del less[key]
            other[key] = None
            if key not in ('accepted', 'other'):
                tap.ok(not validator.is_valid(less), f'a line without its {key} is refused')
            tap.ok(not validator.is_valid(other), f'a line with another {key} is refused')
        tap.ok(not validator.is_valid({**row, 'extra': 1}), 'a line with something else in it is refused')
    return tap.end()


if __name__ == '__main__':
    sys.exit(main())
