#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""A season of three hundred plays: every sheet of it takes less than 300 MB. Times stand in comments:
they judge nothing. Prints TAP; for a build without sanitizers, whose memory is not ours.
Usage: room.py PROGRAM"""
import os
import pathlib
import sys
import tempfile

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import Tap  # noqa: E402

PROGRAM = os.path.abspath(sys.argv[1])
FEW, MANY, MOST = 75, 300, 300_000  # plays; kB
PLAY = '''play "Millpond {i:03}"
  about "The post screens down in Millpond {i:03}; the cutter reads the defender."
  series "{series}"
  start 1 top, 2 right wing, 3 left short corner, 4 right corner, 5 left elbow
  ball 1
  defense man
  step "Screen down, way {i:03}"
    2 and 4 stay
    3 sets up toward the rim
    5 down screens for 3
    chart set "Screen {i:03} set on the defender"
    point 5 "Find x3, stop on two feet, and be still."
    mistake "3 leaves before 5 is still."
    read x3 trails "Curl"
      3 curls off 5 to the nail
      5 pops to left wing
      1 passes to 3
    read x3 overplays "Back cut"
      3 back cuts to the rim
      1 bounce passes to 3
  step "Swing it"
    3 passes to 1
    3 clears to left block
    then 1 passes to 2

'''
tap = Tap()


def spent(command, book, out):
    """Peak kB and seconds of one run; None when it failed."""
    null = os.open(os.devnull, os.O_WRONLY)
    pid = os.fork()
    if pid == 0:
        os.dup2(null, 1)
        os.dup2(null, 2)
        os.execv(PROGRAM, [PROGRAM, command, str(book), '-o', str(out)])
    _, status, usage = os.wait4(pid, 0)
    os.close(null)
    good = os.waitstatus_to_exitcode(status) == 0 and out.is_file()
    return (usage.ru_maxrss, usage.ru_utime) if good else None


def main():
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        for count in (FEW, MANY):
            text = ''.join(PLAY.format(i=i + 1, series=('Motion', 'Quick', 'Zone')[i % 3]) for i in range(count))
            (folder / f'{count}.play').write_text('playbook "Larkspur Kites"\n' + text)
        for command in ('book', 'handout', 'coach', 'fill-in', 'chart', 'card'):
            few, many = (spent(command, folder / f'{count}.play', folder / f'{command}-{count}.pdf') for count in (FEW, MANY))
            if tap.ok(few and many, f'{command}: {FEW} plays and {MANY} are written'):
                tap.ok(many[0] < MOST, f'{command}: {MANY} plays in less than {MOST // 1000} MB', f'{many[0]} kB')
                print(f'# {command}: {FEW} plays {few[0] // 1000} MB, {few[1]:.1f} s; {MANY} plays {many[0] // 1000} MB, '
                      f'{many[1]:.1f} s: {many[1] / max(few[1], .01):.1f} times', flush=True)
    return tap.end()


sys.exit(main())
