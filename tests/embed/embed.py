#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The library used from outside, and what it shows of itself. Prints TAP.
Usage: embed.py EMBED_PROGRAM SHARED_LIBRARY"""
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree as tree

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import Tap  # noqa: E402

tap = Tap()
root = pathlib.Path(__file__).resolve().parents[2]
done = subprocess.run([sys.argv[1]], stdout=subprocess.PIPE, stderr=subprocess.PIPE, check=False)
said = done.stderr.decode()
tap.ok(done.returncode == 0, 'the example program runs', said)
tap.ok('book.play:7:' in said and '[text.' in said, 'it is told of the wrong word', said)
tap.ok('Second side: 1 diagrams' in said and 'Swing and go: 0 diagrams, broken' in said, 'it sees both plays', said)
tap.ok('could stand:' in said and '  dribbles to  (' in said and '  cuts to  (' not in said, 'it is offered what could stand there', said)
try:
    tag = tree.fromstring(done.stdout).tag
except tree.ParseError as trouble:
    tag = repr(trouble)
tap.ok(tag.endswith('svg'), 'what it writes is SVG', tag)

symbols = subprocess.run(['nm', '-D', '--defined-only', sys.argv[2]], stdout=subprocess.PIPE, check=True).stdout.decode()
shown = {line.split()[-1] for line in symbols.splitlines() if line.split()[1] in 'TDBR'}
header = (root / 'include' / 'courtwright' / 'courtwright.h').read_text()
declared = set(re.findall(r'COURTWRIGHT_API[^;(]*?(courtwright_\w+)\(', header))
strangers = {name for name in shown - declared if not re.match(r'_*(asan|ubsan|init|fini|edata|end|bss_start|odr)', name)}
tap.ok(not strangers, 'the shared library shows only what the header declares', sorted(strangers)[:20])
tap.ok(declared and declared <= shown, 'and all of that', sorted(declared - shown))
sys.exit(tap.end())
