#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Times whole runs of the program, cold, as ratios to an empty program linked to the same libraries.

bench.py EMPTY PROGRAM EXAMPLES_FOLDER

Runs of the two are taken in turn (empty, program, empty, ...), so that a machine whose speed drifts
slows both; the figure is the median of the pair-by-pair ratios. Nothing here passes or fails."""
import os
import statistics
import sys
import tempfile
import time

RUNS = 31


def once(command, folder):
    null = os.open(os.devnull, os.O_WRONLY)
    begin = time.perf_counter()
    pid = os.fork()
    if pid == 0:
        os.chdir(folder)
        os.dup2(null, 1)
        os.execv(command[0], command)
    _, status = os.waitpid(pid, 0)
    spent = time.perf_counter() - begin
    os.close(null)
    if os.waitstatus_to_exitcode(status) != 0:
        sys.exit("bench: %s ended with %d" % (" ".join(command), os.waitstatus_to_exitcode(status)))
    return spent


def compare(name, command, empty, folder):
    ratios, times = [], []
    once(command, folder)
    for _ in range(RUNS):
        base = once([empty], folder)
        spent = once(command, folder)
        ratios.append(spent / base)
        times.append(spent * 1000)
    print("%-44s %6.1f x empty   (median %.1f ms, least %.1f, most %.1f)" %
          (name, statistics.median(ratios), statistics.median(times), min(times), max(times)))


def main():
    empty, program, examples = (os.path.abspath(path) for path in sys.argv[1:4])
    play = os.path.join(examples, "topics", "cross-screen.play")
    book = os.path.join(examples, "kites", "kites.play")
    with tempfile.TemporaryDirectory() as folder:
        compare("check one play", [program, "check", "--only", "error", play], empty, folder)
        compare("draw one diagram, live SVG", [program, "draw", "--text", "live", play], empty, folder)
        compare("draw one diagram, print-true SVG", [program, "draw", play], empty, folder)
        compare("draw one diagram, PDF", [program, "draw", "--format", "pdf", play], empty, folder)
        compare("draw one diagram, PNG", [program, "draw", "--format", "png", play], empty, folder)
        compare("handout of the example book", [program, "handout", book], empty, folder)


main()
