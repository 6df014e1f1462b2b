#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""What `courtwright positions` writes, read by another program: held against its schema by a validator that is not
ours, and against itself at another rate. Prints TAP.
Usage: positions.py PROGRAM SCHEMA FILE.play…"""
import copy
import json
import math
import os
import pathlib
import subprocess
import sys
import tempfile

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

PLAYS = {
    'passes': '''play "Lantern \\"one\\""
  start five-out
  ball 1
  defense man
  step "Swing"
    1 passes to 2
    1 cuts to the rim
    2 bounce passes to 1
    1 shoots
    4 rebounds
  step "Again"
    4 dribbles to left wing
    4 hands off to 3
    3 lob passes to 5
''',
    'throw-in': '''play "Tollgate"
  start sideline inbounds
  defense man
  step
    4 cuts to left wing
    3 inbounds to 4
    3 cuts to right corner
    4 skip passes to 3
''',
    'reads': '''play "Millrace"
  start five-out
  ball 1
  defense man
  step
    5 down screens for 3
    read x3 trails "Curl"
      3 curls off 5 to the rim
      1 passes to 3
    read x3 goes under "Fade"
      3 fades off 5 to left corner
      1 passes to 3
''',
    'missed': '''play "Switchback"
  start five-out
  ball 1
  step
    2 cuts to left block
    at 0.2 s, 1 passes to 2 at left block
''',
    'no ball': '''drill "Lines"
  start 1 top, 2 right wing
  ball coach
  step
    1 cuts to the rim
''',
}


def positions(file, *words, env=None):
    done = subprocess.run([PROGRAM, 'positions', str(file), *words], capture_output=True, timeout=120, env=env)
    return done.returncode, done.stdout.decode(), done.stderr.decode()


def plays(file, *words):
    """The plays of a file, each from a file of its own, and what was said."""
    with tempfile.TemporaryDirectory() as folder:
        status, out, err = positions(file, *words, '-o', folder + '/{n}.json')
        return [json.loads(pathlib.Path(name).read_text()) for name in out.splitlines()] if status == 0 else [], err


def hermite(a, b, h, u):
    p = [0, 0]
    for axis in (0, 1):
        p[axis] = (a[axis] * (2 * u ** 3 - 3 * u ** 2 + 1) + b[axis] * (3 * u ** 2 - 2 * u ** 3)
                   + h * (a[axis + 2] * (u ** 3 - 2 * u ** 2 + u) + b[axis + 2] * (u ** 3 - u ** 2)))
    return p


def on_curve(times, track, t):
    i = min(max(sum(time <= t for time in times) - 1, 0), max(len(times) - 2, 0))
    if len(times) == 1:
        return track[0][:2]
    h = times[i + 1] - times[i]
    return hermite(track[i], track[i + 1], h, (t - times[i]) / h)


def distance(a, b):
    return math.dist(a[:2], b[:2])


def errors_between(coarse, fine):
    """How far the curve through the coarse samples is off at each of the fine ones, metres."""
    found = []
    for few, many in zip(coarse['segments'], fine['segments']):
        for who, track in few['bodies'].items():
            at = 0
            for t, there in zip(many['times'], many['bodies'][who]):
                while at + 2 < len(few['times']) and few['times'][at + 1] <= t:
                    at += 1
                there_too = on_curve(few['times'][at:at + 2], track[at:at + 2], t)
                found.append(distance(there_too, there))
    return found


def along(span, length, t):
    """Metres that a thrown ball has come, by what the schema says of it."""
    t, whole = t - span['from'], span['to'] - span['from']
    if 'bounce' in span:
        down, floor_at = span['bounce'] - span['from'], length * 2 / 3
        return floor_at * t / down if t < down else floor_at + (length - floor_at) * (t - down) / (whole - down)
    return math.log(1 + (math.exp(.0219 * length) - 1) * t / whole) / .0219


def off_its_law(segment, span, index):
    """How far the ball is from where its span has it at a sample, metres."""
    t, ball = segment['times'][index], segment['ball'][index]
    if span['state'] == 'held' and t > span['from'] + .8 and span['by'] in segment['bodies']:
        return distance(segment['bodies'][span['by']][index], ball)
    length = distance(span['start'], span['end'])
    if span['state'] != 'passed' or length < .1:
        return 0
    share = along(span, length, t) / length
    return distance([a + (b - a) * share for a, b in zip(span['start'], span['end'])], ball)


def look_at_ball(segment):
    """What is wrong with the ball of a segment: a list."""
    wrong, spans, at = [], segment['spans'], 0
    for before, after in zip(spans, spans[1:]):
        if abs(before['to'] - after['from']) > 2e-6:
            wrong.append(f'a gap at {before["to"]}')
        if math.dist(before['end'], after['start']) > .02:
            wrong.append(f'a jump of {math.dist(before["end"], after["start"]):.3f} m at {before["to"]}')
    if spans and (spans[0]['from'] > 0 or abs(spans[-1]['to'] - segment['duration']) > 2e-6):
        wrong.append('it is not there from the start to the end')
    for index, holder in enumerate(segment['holder']):
        t = segment['times'][index]
        while at + 1 < len(spans) and spans[at + 1]['from'] <= t:
            at += 1
        span = spans[at]
        if min(abs(t - span['from']), abs(t - span['to'])) < 2e-6:
            continue
        if (span['by'] if span['state'] == 'held' else None) != holder:
            wrong.append(f'{holder} has it at {t}, and the span says {span["by"]}')
        if off_its_law(segment, span, index) > .002:
            wrong.append(f'{off_its_law(segment, span, index):.3f} m off its law at {t}')
    return wrong


def schema_itself():
    done = subprocess.run([PROGRAM, 'positions', '--schema'], capture_output=True, timeout=60)
    text = SCHEMA.read_bytes()
    tap.ok(done.returncode == 0 and done.stdout == text, '--schema prints the schema of the tree', done.stderr.decode())
    schema = json.loads(text)
    jsonschema.Draft202012Validator.check_schema(schema)
    tap.ok(True, 'the schema is one')
    bare = [name for name, field in schema['$defs']['segment']['properties'].items()
            if not field.get('description') and name in ('times', 'bodies', 'ball', 'holder', 'spans', 'tasks', 'events')]
    tap.same(bare, [], 'the fields of a segment are told')
    return jsonschema.Draft202012Validator(schema)


def says(validator, value):
    return [f'{"/".join(map(str, error.absolute_path))}: {error.message[:200]}' for error in validator.iter_errors(value)]


def spoiled(validator, value):
    """The validator does find faults."""
    def without(value):
        del value['segments'][0]['bodies']

    def more(value):
        value['segments'][0]['extra'] = 1

    def flat(value):
        next(iter(value['segments'][0]['bodies'].values()))[0].pop()

    def worded(value):
        value['segments'][0]['events'][0]['what'] = 'jumped'

    def fast(value):
        value['rate'] = 121
    for spoil in (without, more, flat, worded, fast):
        bad = copy.deepcopy(value)
        spoil(bad)
        tap.ok(says(validator, bad), f'the schema refuses what it does not tell: {spoil.__name__}')


def look_at_times(value, name):
    good = True
    for segment in value['segments']:
        times, count = segment['times'], len(segment['times'])
        good &= all(abs(t - i / value['rate']) < 2e-6 for i, t in enumerate(times[:-1])) and times == sorted(set(times))
        good &= abs(times[-1] - segment['duration']) < 2e-6 and all(len(track) == count for track in segment['bodies'].values())
        good &= len(segment['ball']) == len(segment['holder']) and len(segment['ball']) in (0, count)
        events = [(event['t'], event['task']) for event in segment['events']]
        moments = sum(moment in task for task in segment['tasks']
                      for moment in ('started', 'released', 'set', 'caught', 'used', 'arrived'))
        good &= [t for t, _ in events] == sorted(t for t, _ in events) and len(events) == moments
        good &= all(segment['tasks'][event['task']][event['what']] == event['t'] for event in segment['events'])
    tap.ok(good, f'{name}: times are even, the end is there, every event is in its place')


def one_play(validator, file, name):
    for rate in (1, 7, 10, 30, 120):
        status, out, err = positions(file, '--rate', str(rate))
        values = [json.loads(out)]
        faults = [fault for value in values for fault in says(validator, value)]
        tap.ok(status == 0 and values and not faults, f'{name} at {rate} a second is as the schema has it', err + '\n'.join(faults[:5]))
        for value in values:
            if value['rate'] != rate:
                tap.ok(False, f'{name}: the rate asked for')
        if rate == 7:
            for value in values:
                look_at_times(value, name)
    return values


def by_two_rates(values_10, values_120):
    return [error for few, many in zip(values_10, values_120) for error in errors_between(few, many)]


def main():
    validator = schema_itself()
    errors, balls, checked = [], [], 0
    with tempfile.TemporaryDirectory() as folder:
        files = {}
        for name, text in PLAYS.items():
            files[name] = pathlib.Path(folder) / (name + '.play')
            files[name].write_text(text)
        for name, file in files.items():
            one_play(validator, file, name)
        for file in [*files.values(), *FILES]:
            few, err = plays(file, '--rate', '10')
            many = plays(file, '--rate', '120')[0]
            faults = [fault for value in few for fault in says(validator, value)]
            tap.ok(not faults and few, f'{file.name} is as the schema has it', err + '\n'.join(faults[:5]))
            errors += by_two_rates(few, many)
            for value in many:
                for segment in value['segments']:
                    checked += 1
                    balls += [f'{value["play"]} {segment["label"]}: {fault}' for fault in look_at_ball(segment)]
        first = plays(files['passes'], '--rate', '10')[0][0]
        tap.same(first['play'], 'Lantern "one"', 'a name in quotes comes through')
        spoiled(validator, first)
        again = [positions(files['reads'], '--rate', '30', env={**os.environ, 'LC_ALL': word})[1] for word in ('C', 'de_DE.UTF-8')]
        tap.ok(again[0] == again[1], 'the same bytes, whatever the language')
        for rate in ('0', '-1', '121', '1000000000000', 'fast', '10.5', ''):
            status, out, err = positions(files['reads'], '--rate', rate)
            tap.ok(status == 2 and not out and '--rate' in err, f"a rate of '{rate}' is refused", out[:100] + err)
    worst = sorted(errors)[-1]
    share = sum(error < .01 for error in errors) / len(errors)
    print(f'# {len(errors)} places: {share:.5%} within a centimetre, worst {worst * 1000:.1f} mm, '
          f'rms {math.sqrt(sum(error * error for error in errors) / len(errors)) * 1000:.2f} mm')
    tap.ok(share >= .999, 'ten samples a second give the run back to within a centimetre, in 999 of 1,000')
    tap.ok(not balls and checked > 8, f'the ball is where its spans say: {checked} segments', '\n'.join(balls[:10]))
    return tap.end()


if __name__ == '__main__':
    sys.exit(main())
