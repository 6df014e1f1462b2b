#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The program as a coach meets it: each command, and each way a file can be wrong. Prints TAP.
Usage: cli.py PROGRAM"""
import base64
import hashlib
import json
import os
import pathlib
import re
import shutil
import signal
import stat
import subprocess
import sys
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from commands import COMMANDS  # noqa: E402
from program import ENV, PROGRAM, Folder, run  # noqa: E402
from tap import Tap  # noqa: E402

KITES = pathlib.Path(__file__).resolve().parents[2] / 'examples' / 'kites'
tap = Tap()

GOOD = '''play "Lantern"
  start five-out
  ball 1
  defense man
  step "Swing"
    1 passes to 2
    after 1 passes, 3 back cuts to the rim
  step "Again"
    3 clears to left wing
    2 passes to 1
'''
BRANCHED = GOOD + '''    read x1 sags "Curl"
      1 cuts to the rim
'''
TWO = GOOD + '''
play "Tollgate"
  start five-out
  ball 1
  step
    1 passes to 3
'''
WRONG = '''play "Lantern"
  start five-out
  ball 1
  step
    1 pases to 2
'''
# 2 and 4 side by side to the end: nobody would call that spacing.
CROWDED = '''play "Millrace"
  start 1 top, 2 right wing, 3 left wing, 4 at 4 ft above right wing, 5 left corner
  ball 1
  defense man
  step "Crowd"
    1 passes to 3
    2 and 4 stay
    1 cuts to the rim
'''


def one_message(result, status, words, what):
    """The right status, one line on standard error that holds the words, nothing on standard output."""
    got, out, err = result
    lines = [line for line in err.splitlines() if not line.startswith('Try ')]
    good = got == status and out == '' and len(lines) >= 1 and all(word in err for word in words)
    tap.ok(good and 'Sanitizer' not in err and 'runtime error' not in err, what,
           f'status {got}, wanted {status}\nout: {out[:500]}\nerr: {err[:800]}\nwanted in it: {words}')


def help_and_use():
    status, out, err = run('--help')
    tap.ok(status == 0 and 'draw FILE' in out and not err, 'help lists the commands', out + err)
    tap.ok('reads FILE' not in out, 'help does not list what is not built')
    for command in COMMANDS:
        status, out, err = run(command, '--help')
        tap.ok(status == 0 and f'courtwright {command}' in out and 'Example' in out and not err,
               f'{command} --help tells its options and an example', out + err)
    status, out, _ = run('--version')
    tap.ok(status == 0 and re.fullmatch(r'courtwright \d+\.\d+\.\d+\n', out), 'version is told', out)
    tap.ok(b'SIL OPEN FONT LICENSE Version 1.1' in pathlib.Path(PROGRAM).read_bytes(), 'the licence of the faces goes where they go')
    one_message(run(), 2, ['COMMAND'], 'no command at all is wrong use')
    one_message(run('drwa'), 2, ["no command 'drwa'"], 'an unknown command is wrong use')
    one_message(run('reads', 'x.play'), 2, ['reads is not built yet'], 'a command of later says that it is not built yet')
    one_message(run('check', 'x.play', '--reads'), 2, ['--reads is not built yet'],
                'an option of later says so')
    one_message(run('draw', 'x.play', '--wdith', '3in'), 2, ['--wdith'], 'an unknown option is wrong use')
    one_message(run('draw', 'x.play', '--width', '3in', '--width', '4in'), 2, ['--width', 'twice'], 'an option given twice is wrong use')
    one_message(run('draw', 'x.play', '-o', 'a.svg', '--output', 'b.svg'), 2, ['--output', 'twice'], 'one given short and long is given twice')
    one_message(run('draw', 'x.play', '--width', 'wide'), 2, ['--width', 'wide'], 'a width that is no length is wrong use')
    one_message(run('draw', 'x.play', '--width', '900in'), 2, ['--width'], 'a width out of range is wrong use')
    one_message(run('draw', 'x.play', '--format', 'bmp'), 2, ['svg|pdf|png', 'bmp'], 'an unknown format is wrong use')
    one_message(run('draw', 'x.play', '--play'), 2, ['--play'], 'an option without its value is wrong use')
    one_message(run('draw'), 2, ['FILE'], 'a command without its file is wrong use')
    one_message(run('draw', 'a', 'b'), 2, ["'b'"], 'one file too many is wrong use')
    one_message(run('handout', 'x.play', '--per-page', '5'), 2, ['--per-page'], 'five diagrams a page are wrong use')
    one_message(run('check', 'x.play', '--only', 'nonsense'), 2, ['nonsense'], '--only wants a known word')
    one_message(run('draw', 'x.play', '--text', 'live', '--format', 'png'), 2, ['--text live'], 'live text wants SVG')


def new():
    with Folder() as here:
        status, out, err = run('new', cwd=here)
        tap.ok((status, out, err) == (0, 'playbook.play\n', ''), 'new writes playbook.play and names it', f'{status} {out} {err}')
        status, out, err = run('check', '--strict', 'playbook.play', cwd=here)
        tap.ok((status, out, err) == (0, '', ''), 'the new playbook has nothing to be told of', f'{status} {out} {err}')
        status, out, err = run('tidy', '--check', 'playbook.play', cwd=here)
        tap.ok(status == 0, 'the new playbook is tidy', err)
        one_message(run('new', cwd=here), 3, ['there already'], 'new does not write over a file')
        status, out, err = run('new', '-', cwd=here)
        tap.same((status, out, err), (0, (here / 'playbook.play').read_text(), ''), 'new - is for standard output')


def policy_holds(page):
    """The page's policy lets in its own script and style, by their very bytes, and nothing else."""
    policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', page)[1]
    for tag in ('script', 'style'):
        bodies = re.findall(f'<{tag}>(.*?)</{tag}>', page, re.S)
        digest = base64.b64encode(hashlib.sha256(bodies[0].encode('utf-8')).digest()).decode('ascii')
        tap.ok(len(bodies) == 1 and f"{tag}-src 'sha256-{digest}';" in policy, f'the policy knows the {tag}')
    tap.ok(policy.startswith("default-src 'none';") and 'unsafe' not in policy, 'and lets in nothing else')
    tap.ok(not re.search(r'\s(on\w+|style)=|https?:|<(img|link|iframe|object|embed|base)\b', page), 'no handler, no style in a tag, nothing from elsewhere')


def check():
    with Folder(good=GOOD, wrong=WRONG, crowded=CROWDED) as here:
        status, out, err = run('check', '--strict', 'good.play', cwd=here)
        tap.ok((status, out, err) == (0, '', ''), 'a good playbook has status 0', f'{status} {out} {err}')
        status, out, err = run('check', 'wrong.play', cwd=here)
        lines = err.splitlines()
        tap.ok(status == 1 and lines and re.match(r'wrong\.play:5:\d+: error: .* \[[a-z]+\.[a-z-]+\]$', lines[0]),
               'an error names file, line, column and id', err)
        tap.ok(len(lines) > 2 and lines[1] == '      1 pases to 2' and lines[2].strip(' ') in ('^~~~~', '^~~~~~~~')
               and lines[1][lines[2].index('^'):].startswith('pases'), 'the line is shown with a mark under the word', err)
        tap.ok('\n  help: ' in err and 'pass' in err.split('help:')[1], 'help says the nearest word', err)
        (here / 'long.play').write_text(GOOD + '    1 hums\n' * 600)
        status, out, err = run('check', '--json', 'long.play', cwd=here)
        tap.ok(status == 1 and 100 < len(out.splitlines()) < 600 and '600 errors' in err and f'first {len(out.splitlines())} ' in err,
               'what --json leaves out is counted', f'{len(out.splitlines())} {err}')
        status, out, err = run('check', '--json', 'wrong.play', cwd=here)
        rows = [json.loads(line) for line in out.splitlines()]
        tap.ok(status == 1 and rows and set(rows[0]) >= {'file', 'line', 'column', 'end', 'severity', 'id', 'message', 'help'}
               and rows[0]['line'] == 5 and err == '', 'findings come as JSON lines', out + err)
        status, out, err = run('check', '-', stdin=WRONG)
        tap.ok(status == 1 and err.startswith('stdin:5:'), 'check reads standard input', err)
        status, out, err = run('check', 'crowded.play', cwd=here)
        tap.ok(status == 0 and ' warning: ' in err and '(Millrace' in err, 'a finding is a warning with its step', err)
        status, _, strict = run('check', '--strict', 'crowded.play', cwd=here)
        tap.same(status, 1, 'with --strict a warning counts')
        found = re.search(r'\[([a-z]+)\.([a-z-]+)\]', err)
        if tap.ok(bool(found), 'a finding has an id', err):
            _, _, only = run('check', '--only', found[1], 'crowded.play', cwd=here)
            tap.ok(only.count('[') == only.count(f'[{found[1]}.') > 0, '--only keeps one family', only)
            _, _, none = run('check', '--only', 'error', 'crowded.play', cwd=here)
            tap.same(none, '', '--only error leaves warnings out')
        team = 'team "Larkspur Kites"\n  2 "Ada Holm" guard\n  3 "Wren Castell" wing\n  4 "Ines Marlow" wing\n'
        (here / 'team.play').write_text(team + CROWDED)
        _, _, numbers = run('check', 'team.play', cwd=here)
        _, _, names = run('check', '--names', 'team.play', cwd=here)
        tap.ok('Ines (4): ' in names and ' Ada (2) and Ines (4) ' in names
               and re.sub(r'(Ada|Ines) \((\d)\)', r'\2', names) == numbers, '--names says who it is, by first name', names + numbers)
        rows = [json.loads(line) for line in run('check', '--names', '--json', 'team.play', cwd=here)[1].splitlines()]
        tap.ok(any('Ines (4)' in row['message'] for row in rows), 'in JSON too', str(rows))
        lineup = team + '  lineup "Small" 2 "Wren Castell", 4 "Ada Holm"\n' + CROWDED.replace('\n', '\n  lineup "Small"\n', 1)
        _, _, names = run('check', '--names', '-', stdin=lineup)
        tap.ok('Wren (2) and Ada (4)' in names and 'Ines' not in names, 'from the lineup of the play', names)
        colored = run('check', '--color', 'always', 'wrong.play', cwd=here)[2]
        tap.ok('\033[31m' in colored, '--color always paints', colored)
        tap.ok('\033' not in run('check', 'wrong.play', cwd=here, env={'TERM': 'xterm'})[2], 'no color where no terminal is')


EARLY = '''play "Switchback"
  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left elbow
  defense man
  step
    5 screens for 3
    at 0.5 s, 3 curls off 5 to the rim
'''


def tolerance():
    with Folder(good=GOOD, wrong=WRONG) as here:
        status, out, err = run('check', '--tolerance', 'good.play', cwd=here)
        lines = out.splitlines()
        tap.ok(status == 0 and err == '' and lines and all(re.match(
            r'.+, step \d+[a-z]?: (works \d+ times in 100 computer runs(; (the tightest: .+, \d\.\d s( late)?|nothing in it is tight)(\. \d+ times? .+)?'
            r'|\. \d+ times? .+)|nothing in it can be late: .+)$', line) for line in lines),
            'check --tolerance says of every step how often it works and what is tight', out + err)
        alone = run('check', '--tolerance', '--jobs', '1', 'good.play', cwd=here)
        many = run('check', '--tolerance', '-j7', 'good.play', cwd=here)
        tap.ok(alone == many == (status, out, err), 'one thread and seven give the same answer', f'{alone}\n{many}')
        status, out, err = run('check', '--tolerance', '--json', 'good.play', cwd=here)
        rows = [json.loads(line) for line in out.splitlines()]
        tap.ok(status == 0 and len(rows) == len(lines) and all(row['message'] == line.split(': ', 1)[1]
               for row, line in zip(rows, lines)), 'and the same as JSON lines', out + err)
        status, out, err = run('check', '--tolerance', '-', stdin=EARLY)
        tap.ok(status == 0 and 'works 0 times' in out and '100 times 3 is gone before 5' in out
               and 'check warns of it: screen.early\n  help: leave out the clause' in out and '[screen.early]' in err,
               'what check warns of does not work, and both say so and what to do', out + err)
        out = run('check', '--tolerance', '--names', '-', stdin='team "Kites"\n  3 "Ada Holt"\n' + EARLY)[1]
        tap.ok('Ada (3) is gone before 5' in out, '--names says who in the tolerance too', out)
        page = run('explain', 'tolerance')[1]
        tap.ok('pass.lane' in page and 'screen.early' in page and 'tolerance' in run('explain')[1],
               'explain tolerance says what works and what does not', page)
        status, out, err = run('check', '--tolerance', 'wrong.play', cwd=here)
        tap.ok(status == 1 and 'error' in err and out == '', 'a play with an error is not tried', out + err)
    one_message(run('check', '--schema', 'x.play'), 2, ['--schema'], '--schema stands alone')
    one_message(run('check'), 2, ['FILE'], 'check without its file is wrong use')
    one_message(run('coach', 'x.play', '-j2'), 2, ['--tolerance'], 'coach knows -j as check does')
    one_message(run('check', 'x.play', '--jobs', '2'), 2, ['--tolerance'], '--jobs without --tolerance is wrong use')
    one_message(run('check', 'x.play', '--tolerance', '--jobs', '1.5'), 2, ['--jobs'], 'half a thread is wrong use')
    one_message(run('check', 'x.play', '--tolerance', '--jobs', '0'), 2, ['--jobs', '0'], 'no thread at all is wrong use')


def explain_draws():
    with Folder() as here:
        status, out, err = run('explain', 'space.close', '--draw', cwd=here)
        tap.ok((status, out, err) == (0, 'space-close.svg\n', '') and (here / 'space-close.svg').read_text().count('<svg') == 1,
               'explain --draw names the picture after the check', f'{status} {out} {err}')
        status, out, _ = run('explain', 'Screen.Angle', '--draw', '-f', 'svg', '-o', '-')
        tap.ok(status == 0 and out.startswith('<') and 'turn your back' not in out and '</svg>' in out,
               'and writes it to standard output', out[:200])
        for kind, head in (('png', b'\x89PNG'), ('pdf', b'%PDF')):
            run('explain', 'pass.lane', '--draw', '-o', f'x.{kind}', cwd=here)
            tap.ok((here / f'x.{kind}').read_bytes().startswith(head), f'as {kind} by the name')
        rows = [json.loads(line) for line in run('list', 'checks', '--json')[1].splitlines()]
        names = [row['word'] for row in rows] if rows and 'word' in rows[0] else [
            line.split()[0] for line in run('list', 'checks')[1].splitlines()]
        bad = [name for name in names if run('explain', name, '--draw', '-o', f'{name}.svg', cwd=here)[0] != 0]
        tap.ok(len(names) > 20 and not bad, f'the examples of all {len(names)} checks can be drawn', ' '.join(bad))
    one_message(run('explain', 'curls', '--draw'), 2, ['only checks'], 'a verb has no bad example to draw')
    one_message(run('explain', 'space.clsoe', '--draw'), 2, ["'space.clsoe'"], 'an unknown check cannot be drawn')
    one_message(run('explain', '--draw'), 2, ['name of a check'], '--draw without a check is wrong use')
    one_message(run('explain', 'space.close', '-o', 'x.svg'), 2, ['--draw'], '-o without --draw is wrong use')


def on_terminal(env, *words):
    """What comes out on standard error when that is a terminal."""
    import pty
    master, slave = pty.openpty()
    subprocess.run([PROGRAM, *words], stderr=slave, stdout=subprocess.DEVNULL, env={**ENV, **env}, check=False)
    os.close(slave)
    text = b''
    try:
        while chunk := os.read(master, 65536):
            text += chunk
    except OSError:
        pass
    os.close(master)
    return text.decode()


def colors():
    with Folder(wrong=WRONG) as here:
        file = str(here / 'wrong.play')
        tap.ok('\033[' in on_terminal({'TERM': 'xterm'}, 'check', file), 'a terminal gets color')
        tap.ok('\033' not in on_terminal({'TERM': 'xterm', 'NO_COLOR': '1'}, 'check', file), 'NO_COLOR is heeded')
        tap.ok('\033' not in on_terminal({'TERM': 'dumb'}, 'check', file), 'a dumb terminal gets no color')


SIGNATURES = {'svg': b'<?xml', 'pdf': b'%PDF-', 'png': b'\x89PNG\r\n\x1a\n'}


def draw():
    with Folder(good=GOOD, two=TWO, wrong=WRONG, crowded=CROWDED) as here:
        status, out, err = run('draw', 'good.play', cwd=here)
        tap.ok(status == 0 and out == 'lantern-1.svg\nlantern-2.svg\n', 'draw writes a diagram a step and names them', out + err)
        tap.ok(all((here / name).is_file() for name in out.split()), 'what it names is there')
        first = (here / 'lantern-1.svg').read_bytes()
        run('draw', 'good.play', cwd=here)
        tap.ok((here / 'lantern-1.svg').read_bytes() == first, 'the same play gives the same bytes')
        run('draw', 'good.play', cwd=here, env={'LC_ALL': 'de_DE.UTF-8', 'TZ': 'Asia/Tokyo', 'LANG': 'de_DE.UTF-8'})
        tap.ok((here / 'lantern-1.svg').read_bytes() == first, 'locale and time zone change nothing')
        for kind, signature in SIGNATURES.items():
            status, out, err = run('draw', 'good.play', '--step', '1', '-o', f'one.{kind}', cwd=here)
            file = here / f'one.{kind}'
            tap.ok(status == 0 and out == f'one.{kind}\n' and file.is_file() and file.read_bytes().startswith((signature, b'<svg')),
                   f'a name that ends in {kind} gives {kind}', f'{status} {out} {err}')
        status, out, err = run('draw', '-', '--step', '2', '-o', '-', stdin=GOOD)
        tap.ok(status == 0 and '</svg>' in out and err == '', 'draw is a filter', f'{status} {out[:200]} {err}')
        status, live, err = run('draw', '-', '--step', '2', '--text', 'live', '-o', '-', stdin=GOOD)
        tap.ok(status == 0 and '<text' in live and len(live) < 40000, 'live text is text', f'{status} {live[:200]} {err}')
        (here / 'out').mkdir()
        status, out, err = run('draw', 'two.play', '-o', 'out', cwd=here)
        tap.same(sorted(out.split()), ['out/lantern-1.svg', 'out/lantern-2.svg', 'out/tollgate-1.svg'], 'draw fills a folder')
        status, out, err = run('draw', 'two.play', '-o', 'out/{n}-{play}_{step}.svg', cwd=here)
        tap.same(out.split(), ['out/1-lantern_1.svg', 'out/2-lantern_2.svg', 'out/3-tollgate_1.svg'], 'a name may have holes')
        status, out, err = run('draw', 'two.play', '-o', 'out/{play}.svg', cwd=here)
        tap.same(out.split(), ['out/lantern.svg', 'out/lantern-2.svg', 'out/tollgate.svg'], 'names that collide are numbered')
        status, out, err = run('draw', 'two.play', '--play', 'TOLLGATE', cwd=here)
        tap.same(out, 'tollgate-1.svg\n', '--play takes one, capitals or not')
        status, out, err = run('draw', '-', '--play', 'Lantern', '--step', '2 alone', '-o', '-', stdin=BRANCHED)
        tap.ok(status == 0 and '</svg>' in out and run('draw', '-', '--step', '2', '-o', '-', stdin=BRANCHED)[0] == 2, 'a step with reads may be drawn alone', err)
        one_message(run('draw', '-', '--step', '9', '-o', '-', stdin=BRANCHED), 2, ["no step '9'", 'are: 1, 2, 2a'], 'the steps that there are, are named')
        one_message(run('draw', 'good.play', '-f', 'png', '-w', '27in', '--scale', '10', '--layout', 'grid', '-o', 'x.png', cwd=here), 2, ['20,000 pixels'],
                    'a picture that is too large says so')
        for layout in ('strip', 'grid'):
            status, out, err = run('draw', 'good.play', '--layout', layout, '-f', 'pdf', cwd=here)
            tap.ok(status == 0 and out == 'lantern.pdf\n', f'a {layout} is one file a play', f'{status} {out} {err}')
        one_message(run('draw', 'two.play', '-o', 'all.svg', cwd=here), 2, ['more than one file'], 'many diagrams want more than one name')
        for name, words in (('x.pdf', ['--format', 'png']), ('x.jpg', []), ('x.svg', ['-f', 'pdf']), ('x.txt', ['-f', 'svg'])):
            one_message(run('draw', 'good.play', '--step', '1', '-o', name, *words, cwd=here), 2, ['comes out as', f"'{name[2:]}'"],
                        f'draw: {name} {" ".join(words)} would be something else than it says')
            tap.ok(not (here / name).exists(), f'draw: and {name} is not written')
        one_message(run('explain', 'space.close', '--draw', '-o', 'x.jpg', cwd=here), 2, ['comes out as SVG'],
                    'explain --draw: a name promises what comes out')
        for name, words, signature in (('y.PNG', [], SIGNATURES['png']), ('y.v2', ['-f', 'pdf'], SIGNATURES['pdf'])):
            status, out, err = run('draw', 'good.play', '--step', '1', '-o', name, *words, cwd=here)
            tap.ok(status == 0 and (here / name).read_bytes().startswith(signature), f'draw: {name} is what it says, or says nothing', err)
        one_message(run('draw', 'two.play', '-o', '-', cwd=here), 2, ['more than one file'], 'many diagrams do not go to standard output')
        one_message(run('draw', 'two.play', '-o', 'x-{who}.svg', cwd=here), 2, ['{who}'], 'an unknown hole is wrong use')
        one_message(run('draw', 'two.play', '--play', 'Switchback', cwd=here), 2, ['Switchback', 'Lantern'], 'an unknown play lists those there are')
        one_message(run('draw', 'good.play', '--step', '7', cwd=here), 2, ["'7'"], 'an unknown step is wrong use')
        status, out, err = run('draw', 'wrong.play', cwd=here)
        tap.ok(status == 1 and out == '' and 'mend the errors' in err, 'a play with an error is not drawn', out + err)
        (here / 'half.play').write_text(WRONG + '\n' + GOOD.replace('Lantern', 'Kite'))
        status, out, err = run('draw', 'half.play', cwd=here)
        tap.ok(status == 1 and out == 'kite-1.svg\nkite-2.svg\n', 'an error in one play does not stop the other', out + err)
        status, out, err = run('draw', 'good.play', '--measure', cwd=here)
        tap.ok(status == 0 and len(out.splitlines()) == 2 and 'symbol-symbol 0' in out, '--measure counts what lies on what', out + err)
        counted = out
        status, out, err = run('draw', 'good.play', '--measure', '-o', 'counted.txt', cwd=here)
        tap.ok((status, out, (here / 'counted.txt').read_text()) == (0, 'counted.txt\n', counted), '--measure -o writes it there', out + err)
        long = 'play "G"\n  start five-out\n  ball 1\n  defense man\n  step\n    at 29 s, 1 passes to 2\n'
        one_message(run('check', '-', stdin=long, cwd=here), 1, ['stdin:5:3', 'more than 30 seconds', '[run.long]'], 'what is said of a run is read when the run is gone')
        one_message(run('draw', 'good.play', '--scale', '3', '-o', 'x.svg', cwd=here), 2, ['--scale', 'PNG'], 'an SVG has no pixels')
        one_message(run('tidy', 'good.play', '--check', '-o', 'x.play', cwd=here), 2, ['--check', '-o'], 'what writes nothing takes no name')
        one_message(run('draw', 'good.play', '--measure', '--deps', 'x.d', cwd=here), 2, ['--deps', '-o'], 'what makes no file has no rule for make')
        tap.same(run('draw', 'good.play', '--measure', '-o', '-', cwd=here)[:2], (0, counted), 'or, for -, on standard output')
        one_message(run('draw', 'good.play', '--measure', '-o', 'good.play', cwd=here), 3, ['what was read'], 'and not over the input')
        status, out, err = run('draw', 'good.play', '--measure', '--json', cwd=here)
        told = [json.loads(line) for line in out.splitlines()]
        tap.ok(status == 0 and len(told) == 2 and all(len(one['on']) == 36 and sum(one['on'].values()) == 0 and
               one['labels'] >= one['labels_moved'] and one['labels_left_out'] == 0 and one['labels_astray'] == 0 for one in told),
               '--measure --json tells every pair', out + err)
        status, out, err = run('draw', 'good.play', '--json', cwd=here)
        tap.ok(status == 2 and '--measure' in err, '--json without --measure is wrong use', out + err)
        shown = run('draw', 'crowded.play', '--show-checks', '--text', 'live', '--step', '1', '-o', '-', cwd=here)[1]
        plain = run('draw', 'crowded.play', '--text', 'live', '--step', '1', '-o', '-', cwd=here)[1]
        tap.ok(shown != plain and len(shown) > len(plain), '--show-checks draws findings')
        hidden = run('draw', 'good.play', '--defense', 'hidden', '--text', 'live', '--step', '1', '-o', '-', cwd=here)[1]
        plain = run('draw', 'good.play', '--text', 'live', '--step', '1', '-o', '-', cwd=here)[1]
        tap.ok(0 < len(hidden) < len(plain), '--defense hidden leaves the defense out')
        for option in (['--theme', 'dark'], ['--caption'], ['--caution'], ['--beats'], ['--width', '84mm'], ['--salt', 'b']):
            changed = run('draw', 'good.play', *option, '--text', 'live', '--step', '1', '-o', '-', cwd=here)
            tap.ok(changed[0] == 0 and changed[1] != plain and '</svg>' in changed[1], f'{" ".join(option)} changes the drawing',
                   changed[2])
        (here / 'team.play').write_text('team "Larkspur Kites"\n  2 "Noor Lindqvist" guard\n\n' + GOOD)
        named = run('draw', 'team.play', '--names', '--text', 'live', '--step', '1', '-o', '-', cwd=here)[1]
        plain = run('draw', 'team.play', '--text', 'live', '--step', '1', '-o', '-', cwd=here)[1]
        tap.ok('Noor' in named and 'Noor' not in plain, '--names shows first names, and only then')
        status, out, err = run('draw', 'good.play', '--deps', 'rule.d', cwd=here)
        tap.same((here / 'rule.d').read_text(), 'lantern-1.svg lantern-2.svg: good.play\n', '--deps writes a make rule')


def animate():
    with Folder(good=GOOD, two=TWO, wrong=WRONG) as here:
        status, out, err = run('animate', 'good.play', cwd=here)
        tap.ok(status == 0 and out == 'lantern.svg\n', 'animate writes a file a play and names it', f'{status} {out} {err}')
        text = (here / 'lantern.svg').read_text()
        tap.ok('<animateTransform' in text and 'fill="freeze"' in text and 'indefinite' not in text, 'it is played once', text[:300])
        tap.ok('<title' in text and 'Lantern' in text and len(text) < 30000, 'it is named, and small', len(text))
        run('animate', 'good.play', '-o', 'again.svg', cwd=here, env={'LC_ALL': 'de_DE.UTF-8', 'TZ': 'Asia/Tokyo', 'LANG': 'de_DE.UTF-8'})
        tap.ok((here / 'again.svg').read_text() == text, 'the same play gives the same bytes anywhere')
        status, out, err = run('animate', '-', '--step', '2', '--loop', '-o', '-', stdin=GOOD)
        tap.ok(status == 0 and out.rstrip().endswith('</svg>') and 'repeatCount="indefinite"' in out and 'freeze' not in out and err == '',
               'animate is a filter; --loop begins again', f'{status} {out[:200]} {err}')
        (here / 'films').mkdir()
        status, out, err = run('animate', 'two.play', '-o', 'films/', cwd=here)
        tap.ok(status in (0, 1) and len(out.split()) >= 2 and all((here / name).is_file() for name in out.split()), 'one file for each play', out + err)
        status, dark, _ = run('animate', '-', '--theme', 'dark', '--width', '5in', '-o', '-', stdin=GOOD)
        tap.ok(status == 0 and 'width="360"' in dark and '#121619' in dark, 'theme and width are heard', dark[:300])
        run('animate', str(KITES / 'kites.play'), '-o', 'size-{play}.svg', cwd=here)
        sizes = sorted((file.stat().st_size, file.name) for file in here.glob('size-*.svg'))
        tap.ok(len(sizes) > 15 and sizes[-1][0] < 30000, 'every play of the example book is under 30 kB', sizes[-3:])
        status, bare, _ = run('animate', '-', '--defense', 'hidden', '-o', '-', stdin=GOOD)
        tap.ok(status == 0 and 'class="defender x' not in bare, 'defenders can be left out')
        salted = [run('animate', '-', '--salt', word, '-o', '-', stdin=GOOD)[1] for word in 'ab']
        tap.ok(re.search(r'id="(\w+)-t"', salted[0])[1] != re.search(r'id="(\w+)-t"', salted[1])[1], 'a salt makes ids differ')
        kinds = [set(re.findall(r'\bid="([^"]+)"', run('draw', '-', '--text', kind, '--step', '1 alone', '-o', '-', stdin=GOOD)[1]))
                 for kind in ('outlines', 'live')]
        tap.ok(all(kinds) and not kinds[0] & kinds[1], 'a drawing has other ids in letters than in outlines', kinds)
        one_message(run('animate', 'good.play', '--step', '7', cwd=here), 2, ["no step '7'"], 'a step that is not there is wrong use')
        one_message(run('animate', 'good.play', '--play', 'Nobody', cwd=here), 2, ['Nobody'], 'a play that is not there is wrong use')
        for name in ('film.pdf', 'film.png'):
            one_message(run('animate', 'good.play', '-o', name, cwd=here), 2, ['comes out as SVG'], f'{name} is refused: what moves comes out as SVG')
            tap.ok(not (here / name).exists(), 'and nothing is written there')
        status, out, err = run('animate', 'wrong.play', cwd=here)
        tap.ok(status == 1 and not out and err, 'a play with an error is not animated', f'{status} {out} {err}')


def handout():
    book = 'team "Larkspur Kites"\n  1 "Wren Adeyemi" guard\n  2 "Noor Lindqvist" guard\n\n' + TWO
    with Folder(book=book, good=GOOD) as here:
        status, out, err = run('handout', 'good.play', cwd=here)
        tap.ok(status == 0 and out == 'lantern.pdf\n' and (here / 'lantern.pdf').read_bytes().startswith(b'%PDF-'),
               'handout writes a PDF', f'{status} {out} {err}')
        for date in ('x' * 101, 'a\x1bb', 'a\nb', b'a\xffb'):
            one_message(run('handout', 'good.play', '--date', date, '-o', 'date.pdf', cwd=here), 2, ['--date takes one line'], f'--date {date!r} is wrong use')
        tap.same(run('handout', 'good.play', '--date', 'Zoë’s, 3 December', '-o', 'date.pdf', cwd=here)[:2], (0, 'date.pdf\n'), 'a date is a text')
        status, out, err = run('handout', 'book.play', '--for', 'everyone', '-o', 'for-{player}.pdf', cwd=here)
        tap.same((status, out), (0, 'for-wren-adeyemi.pdf\nfor-noor-lindqvist.pdf\n'), 'a file for every player of the roster')
        status, out, err = run('handout', 'book.play', '--for', 'wren adeyemi', cwd=here)
        tap.ok(status == 0 and out == 'lantern-wren-adeyemi.pdf\n', 'a player is found by name', f'{status} {out} {err}')
        status, out, err = run('handout', 'book.play', '--for', '3', '--paper', 'A4', '--per-page', '1', cwd=here)
        tap.ok(status == 0 and out == 'lantern-3.pdf\n', 'a player is found by number', f'{status} {out} {err}')
        one_message(run('handout', 'book.play', '--for', 'Nobody', cwd=here), 2, ['Nobody'], 'an unknown player is wrong use')
        status, out, err = run('handout', 'book.play', '--for', 'Wren', cwd=here)
        tap.ok(status == 0 and out.endswith('-wren-adeyemi.pdf\n') and "taken for 'Wren Adeyemi'" in err, 'a part of a name that nobody else has will do', f'{status} {out} {err}')
        one_message(run('handout', 'book.play', '--for', 'Adeyemy', cwd=here), 2, ["did you mean 'Wren Adeyemi'"], 'a name misspelled is told the nearest')
        one_message(run('handout', 'book.play', '--for', '9', cwd=here), 2, ['no play here has a player 9'], 'there is no player 9 in a play')
        one_message(run('handout', 'book.play', '--for', '13', cwd=here), 2, ['--for', '1 to 12'], 'nobody has a number over 12')
        (here / 'pair.play').write_text('drill "Give and go"\n  start 1 top, 2 right wing\n  ball 1\n\n  step\n    1 passes to 2\n')
        one_message(run('handout', 'pair.play', '--for', '4', cwd=here), 2, ['player 4'],
                    'a player who is in no play has no pages')
        tap.ok(not list(here.glob('*-4.pdf')), 'and no file is left')
        status, out, err = run('handout', 'pair.play', '--for', 'everyone', cwd=here)
        tap.ok(status == 0 and out == 'give-and-go-1.pdf\ngive-and-go-2.pdf\n' and 'player 5' in err,
               'everyone is whoever is on the floor', f'{status} {out} {err}')
        (here / 'round.play').write_text(GOOD + '\n' + (here / 'pair.play').read_text())
        status, out, err = run('handout', 'round.play', '--play', 'Give and go', '--for', '4', cwd=here)
        tap.ok(status == 0 and out == 'give-and-go-4.pdf\n', 'a drill goes to one of the team without a number in it, too',
               f'{status} {out} {err}')
        (here / 'none.play').write_text(GOOD.replace('Swing', 'a\u0378'))  # U+0378 is no letter: no font has it
        status, out, err = run('handout', 'none.play', '-o', 'none.pdf', cwd=here)
        tap.ok(status == 0 and '\u0378' in err and 'box' in err, 'letters that no font has are told of', err)
        (here / 'shalom.play').write_text(GOOD.replace('Swing', '\u05e9\u05dc\u05d5\u05dd'))
        status, out, err = run('handout', 'shalom.play', '-o', 'shalom.pdf', cwd=here)
        tap.ok(status == 0 and '\u05e9\u05dc\u05d5\u05dd: they are drawn in fonts of this machine, first ' in err,
               'letters from another face are told of, and which it is', err)
        words = subprocess.run(['pdftotext', str(here / 'shalom.pdf'), '-'], stdout=subprocess.PIPE).stdout.decode()
        tap.ok('\u05e9\u05dc\u05d5\u05dd' in words, 'and can be read back', words)
        (here / 'bare.conf').write_text('<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "fonts.dtd"><fontconfig/>')
        status, out, err = run('handout', 'shalom.play', '-o', 'shalom.pdf', cwd=here, env={'FONTCONFIG_FILE': str(here / 'bare.conf')})
        tap.ok(status == 0 and '\u05e9' in err and 'box' in err, 'a machine without fonts has boxes', err)
        plain = run('handout', 'good.play', '-o', '-', cwd=here)
        again = run('handout', 'good.play', '-o', '-', cwd=here)
        tap.ok(plain[0] == 0 and plain[1] == again[1], 'the same handout has the same bytes')
        dated = run('handout', 'good.play', '-o', 'dated.pdf', cwd=here, env={'SOURCE_DATE_EPOCH': '1767225600'})
        tap.ok(dated[0] == 0 and b'20260101' in (here / 'dated.pdf').read_bytes(), 'SOURCE_DATE_EPOCH dates the PDF', dated[2])


def everyone():
    """One PDF a player, with every spot that player has."""
    team = 'team "Larkspur Kites"\n  1 "Imke Dorn" guard, jersey 4\n  2 "Wren Castell" wing, jersey 7\n  3 "Wren Castell" wing, jersey 7\n' \
        '  4 "../../Lio Marsh" forward\n  5 "Imke Dorn" post, jersey 33\n' \
        '  lineup "Small" 1 "Imke Dorn", 2 "Wren Castell", 3 "../../Lio Marsh", 4 "Wren Castell", 5 "Imke Dorn"\n'
    small = GOOD.replace('Lantern', 'Sluice').replace('  start', '  lineup "Small"\n  start', 1)
    with Folder(book='playbook "Kites"\n' + team + GOOD + small, twice=GOOD) as here:
        (here / 'pages').mkdir()
        status, out, err = run('handout', 'book.play', '--for', 'everyone', '-o', 'pages/{player}.pdf', cwd=here)
        names = ['imke-dorn', 'wren-castell', 'lio-marsh', 'imke-dorn-2']
        tap.same((status, out.split(), sorted(os.listdir(here / 'pages'))),
                 (0, [f'pages/{name}.pdf' for name in names], sorted(f'{name}.pdf' for name in names)),
                 'everyone: a file a player, two of one name apart, none outside the folder')
        status, out, err = run('handout', 'book.play', '--for', 'Wren Castell', '-o', 'pages/', cwd=here)
        tap.same((status, out), (0, 'pages/kites-wren-castell.pdf\n'), 'everyone: a player with two spots has one file')
        tap.ok('play.lineup-twice' in err and 'Wren Castell' in err and 'Imke' not in err.split('[play')[0] and 'taken for' not in err,
               'the lineup has her at two spots, and the two of one name not: each has a jersey', err)
        (here / 'warned.play').write_text(GOOD + 'practise "P"\n  lasts 20 min\n')
        status, out, err = run('practice', 'warned.play', cwd=here)
        tap.ok(status == 1 and 'no practice can be read in it; mend the errors' in err and 'one begins with' not in err,
               'no practice where errors hide it: it is said so', err)
        status, out, err = run('trend', 'warned.play', cwd=here)
        tap.ok(status == 1 and 'mend the errors first' in err and 'a block of it' not in err, 'nothing charted where errors hide it, too', err)
        twice = 'playbook "K"\nteam "K"\n  1 "Ann Lee", jersey 4\n  2 "Ann Ray", jersey 4\n'
        (here / 'strict.play').write_text(twice + GOOD)
        status, out, err = run('handout', 'strict.play', '--strict', '-o', 'strict.pdf', cwd=here)
        tap.ok(status == 1 and (here / 'strict.pdf').exists() and 'written all the same' in err, 'what is written in spite of --strict is said to be', err)
        status, out, err = run('handout', 'strict.play', '-o', 'strict.pdf', cwd=here)
        tap.ok(status == 0 and 'written all the same' not in err, 'and without it nothing is said', err)
        status, out, err = run('handout', 'book.play', '--for', 'Imke Dorn', '-o', 'one.pdf', cwd=here)
        tap.ok(status == 2 and not (here / 'one.pdf').exists() and "'Imke Dorn' are 2 players" in err and "--for '#4'" in err,
               'one file for two of a name: it is said that they are two, and how to ask for one', err)
        (here / 'same.play').write_text(('playbook "Kites"\n' + team + GOOD).replace(', jersey 7', '').replace(', jersey 4', '').replace(', jersey 33', ''))
        status, out, err = run('handout', 'same.play', '--for', 'everyone', '-o', 'pages/same-{player}.pdf', cwd=here)
        tap.ok(len(out.split()) == 3 and err.count('give each a jersey') == 2, 'two of one name without jerseys are one player, and it is said', out + err)
        pages = subprocess.run(['qpdf', '--show-npages', str(here / 'pages' / 'wren-castell.pdf')], stdout=subprocess.PIPE, check=False)
        # 2 and 3 of Lantern, 2 and 4 of the lineup of Sluice
        tap.same((pages.returncode, pages.stdout), (0, b'4\n'), 'everyone: each spot of each play has its page')
        circle = 'playbook "K"\nteam "K"\n  1 "Ann Lee" guard, jersey 4\n  2 "Ann Ray" wing, jersey 4\n  3 "Ann Lee" wing, jersey 44\n'
        (here / 'circle.play').write_text(circle + GOOD)
        status, out, err = run('handout', 'circle.play', '--for', 'Ann Lee', '-o', 'pages/', cwd=here)
        tap.ok(status == 0 and "--for '#44'" in err, 'two of one name: the jersey that is advised asks for one', err)
        status, out, err = run('handout', 'circle.play', '--for', '#4', '-o', 'pages/', cwd=here)
        tap.ok(status == 2 and "wears '#4'" in err and "as '#7'" not in err, 'two of one jersey: it is not advised again', err)
        (here / 'circle.play').write_text(circle.replace('Ann Lee" wing, jersey 44', 'ANN LEE" wing, jersey 5\n  4 "Di Orr", jersey 5') + GOOD)
        status, out, err = run('handout', 'circle.play', '--for', 'Ann Lee', '-o', 'pages/', cwd=here)
        tap.ok(status == 0 and 'that nobody else wears' in err, 'two of one name without a jersey of their own: it is said what is missing', err)
        status, out, err = run('handout', 'book.play', '--for', '-o', 'one.pdf', cwd=here)
        tap.ok(status == 2 and '--for needs a value' in err and 'everyone' in err and not (here / 'one.pdf').exists(),
               'a value that is an option is missing, and what it may be is said', err)
        status, out, err = run('handout', 'book.play', '--for', 'everyone', '-o', 'pages/x-{player}', cwd=here)
        tap.ok(status == 0 and all(name.endswith('.pdf') for name in out.split()), 'a name made for many files gets its ending', out + err)
        (here / 'pages' / 'wren-castell.pdf').write_text('old')
        one_message(run('handout', 'book.play', '--for', 'everyone', '-o', 'none/{player}.pdf', cwd=here), 3, ['none/imke-dorn.pdf', 'No such file'],
                    'everyone: a folder that is not there')
        one_message(run('handout', 'book.play', '--for', 'everyone', '-o', 'one.pdf', cwd=here), 2, ['{player}'],
                    'everyone: one name for many files is wrong use')
        limit = 'ulimit -f 1; exec "$0" "$@"'
        done = subprocess.run(['sh', '-c', limit, PROGRAM, 'handout', 'book.play', '--for', 'wren castell', '-o', 'pages/{player}.pdf'],
                              stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=here, check=False)
        tap.ok(done.returncode == 3 and (here / 'pages' / 'wren-castell.pdf').read_text() == 'old', 'everyone: an old file stays whole',
               done.stderr)
        if os.geteuid() == 0:
            os.chmod(here, 0o755)
            os.chmod(here / 'pages', 0o555)
            one_message(run('handout', str(here / 'book.play'), '--for', 'everyone', '-o', str(here / 'pages' / '{n}.pdf'), cwd='/', user=65534,
                            group=65534, extra_groups=[]), 3, ['Permission denied'], 'everyone: a folder one may not write to')


def errors_and_sheets():
    """A sheet is not written while there is an error in what it prints; one elsewhere does not stop it."""
    bad = WRONG.replace('Lantern', 'Millrace')
    plan = 'practice "Week 3"\n  10 min play "{play}"\n'
    played = GOOD.replace('    2 passes to 1\n', '    2 passes to 1\n    chart set "Screen set"\n')
    charted = 'charted 2026-11-10 game\n  "{play}" set 1 of 2\n'
    with Folder(play=GOOD + bad, good=GOOD, team='team "Kites"\n  9 "Wren"\n' + GOOD, plan=GOOD + bad + plan.format(play='Millrace'),
                other=GOOD + bad + plan.format(play='Lantern'), bare=GOOD + plan.format(play='Ferry'),
                charted=played + charted.format(play='Lantern') + charted.format(play='Ferry')) as here:
        for command in ('handout', 'coach', 'fill-in', 'card', 'chart'):
            before = set(here.iterdir())
            status, out, err = run(command, 'play.play', cwd=here)
            tap.ok((status, out) == (1, '') and 'nothing was written: mend the errors first; --play' in err and set(here.iterdir()) == before,
                   f'{command}: nothing of a book with an error in a play', f'{status} {out} {err}')
            status, out, err = run(command, 'play.play', '--play', 'Lantern', '-o', 'one.pdf', cwd=here)
            tap.ok((status, out) == (1, 'one.pdf\n'), f'{command}: a play without one is printed alone', f'{status} {out} {err}')
            status, out, err = run(command, 'team.play', cwd=here)
            tap.ok((status, out) == (1, '') and 'nothing was written' in err, f'{command}: nothing while the roster is wrong', err)
            status, out, err = run(command, 'bare.play', '-o', 'one.pdf', cwd=here)
            tap.ok((status, out) == (1, 'one.pdf\n'), f'{command}: a wrong practice does not stop it', f'{status} {out} {err}')
            status, out, err = run(command, 'good.play', '-o', 'one.svg', cwd=here)
            tap.ok(status == 2 and out == '' and "'svg'" in err and '.pdf' in err and not (here / 'one.svg').exists(),
                   f'{command}: a name that ends in .svg is wrong use', f'{status} {err}')
        status, out, err = run('practice', 'plan.play', cwd=here)
        tap.ok(status == 1 and out == '' and 'error in the text' in err, 'practice: nothing while a play it shows is wrong', f'{status} {out} {err}')
        status, out, err = run('practice', 'other.play', cwd=here)
        tap.ok((status, out) == (1, 'week-3.pdf\n'), 'practice: a wrong play that it does not show is no matter', f'{status} {out} {err}')
        status, out, err = run('trend', 'charted.play', cwd=here)
        tap.ok((status, out) == (1, '') and 'nothing was written' in err, 'trend: nothing while a row is wrong', f'{status} {out} {err}')
        tap.ok(run('handout', 'charted.play', cwd=here)[:2] == (1, 'lantern.pdf\n'), 'handout: a wrong row of counts is no matter')


def fill_in():
    with Folder(good=GOOD, book='playbook "Larkspur Kites"\n' + TWO) as here:
        tap.same(run('fill-in', 'good.play', cwd=here)[:2], (0, 'lantern-fill-in.pdf\n'), 'fill-in writes a PDF')
        tap.same(run('coach', 'good.play', cwd=here)[:2], (0, 'lantern-coach.pdf\n'), 'coach writes a PDF')
        tap.same(run('coach', 'book.play', cwd=here)[:2], (0, 'larkspur-kites-coach.pdf\n'), 'coach sheets of a book are one PDF')
        sheets = [run('fill-in', 'good.play', '--seed', seed, '-o', '-', cwd=here)[1] for seed in ('0', '0', '1', '2', '3', '4', '5')]
        tap.ok(sheets[0] == sheets[1] and len(set(sheets)) > 1, 'the same seed asks the same, another asks something else', len(set(sheets)))
        (here / 'still.play').write_text('play "Stillwater"\n  start five-out\n  step\n    1 stays\n\n' + TWO)
        status, out, err = run('fill-in', 'still.play', '-o', 'some.pdf', cwd=here)
        tap.ok(status == 0 and out == 'some.pdf\n' and "'Stillwater' is left out" in err and err.count('left out') == 1,
               'fill-in tells of a play in which nobody moves', f'{status} {out} {err}')
        status, out, err = run('fill-in', 'still.play', '--play', 'Stillwater', cwd=here)
        tap.ok(status == 1 and out == '' and 'nobody moves' in err and not (here / 'stillwater-fill-in.pdf').exists(),
               'fill-in: alone, nothing is written', f'{status} {out} {err}')
        one_message(run('coach', 'good.play', '--jobs', '2', cwd=here), 2, ['--tolerance'], 'coach: --jobs without --tolerance is wrong use')
        sheets = [run('coach', 'good.play', '-o', '-', *words, cwd=here)[1]
                  for words in ([], ['--tolerance', '--jobs', '1'], ['--tolerance', '--jobs', '2'])]
        tap.ok(sheets[1] == sheets[2] != sheets[0], 'coach --tolerance says more, the same on one thread and on two')
        one_message(run('fill-in', 'good.play', '--seed', '-1', cwd=here), 2, ['--seed', '0'], 'a seed below 0 is wrong use')
        one_message(run('fill-in', 'good.play', '--seed', '1.5', cwd=here), 2, ['--seed', 'whole'], 'a seed with a fraction is wrong use')
        one_message(run('fill-in', 'good.play', '--play', 'Ferry', cwd=here), 2, ['Ferry'], 'fill-in: an unknown play is wrong use')


PLANS = '''practice "Week 3"
  starts 17:30
  lasts 30 min
  10 min warm-up "Form running"
  15 min play "Lantern"
  5 min talk

practice "Week 4"
  12 min "Free throws"
'''


def practice():
    with Folder(book='playbook "Larkspur Kites"\n' + GOOD + PLANS, good=GOOD, over=GOOD + PLANS.replace('30 min', '20 min'),
                wrong=GOOD + PLANS.replace('"Lantern"', '"Lanten"')) as here:
        status, out, err = run('practice', 'book.play', cwd=here)
        tap.ok(status == 0 and out == 'larkspur-kites-practices.pdf\n'
               and (here / 'larkspur-kites-practices.pdf').read_bytes().startswith(b'%PDF-'), 'practice writes a PDF', f'{status} {out} {err}')
        status, out, err = run('practice', 'book.play', '--title', 'week 4', cwd=here)
        tap.same((status, out), (0, 'week-4.pdf\n'), 'one practice is picked by its title')
        one_message(run('practice', 'book.play', '--title', 'Week 5', cwd=here), 2, ['Week 5'], 'an unknown practice is wrong use')
        one_message(run('practice', 'good.play', cwd=here), 1, ['no practice'], 'a book without a practice has no plan')
        status, out, err = run('check', 'over.play', cwd=here)
        tap.ok(status == 0 and 'practice.over' in err and '10 min' in err, 'more minutes than are booked are told', err)
        status, out, err = run('practice', 'wrong.play', '-o', '-', cwd=here)
        tap.ok(status == 1 and 'season.name' in err and 'did you mean "Lantern"?' in err and out == '' and 'nothing was written' in err,
               'a play that is not in the book is an error, and no plan is printed', err)
        status, out, err = run('practice', 'book.play', '--deps', 'rule.d', '-o', 'plan.pdf', cwd=here)
        tap.same((here / 'rule.d').read_text(), 'plan.pdf: book.play\n', '--deps writes a make rule')
        for plays in range(1, 9):
            items = '  10 min play "Lantern"\n' * plays
            (here / 'long.play').write_text(GOOD + f'practice "Long"\n{items}  5 min talk\n')
            run('practice', 'long.play', '-o', 'long.pdf', cwd=here)
            words = subprocess.run(['pdftotext', '-layout', str(here / 'long.pdf'), '-'], stdout=subprocess.PIPE).stdout.decode()
            last = words.split('\f')[-2]
            tap.ok('Longest gap' in last and 'Talk' in last, f'the sums of {plays} plays stand under the last item', last)


CHARTED = '''
charted 2026-12-01 practice
  "Lantern" points 3 in 4
'''


def tallies():
    two = GOOD + GOOD.replace('Lantern', 'Orchard')
    with Folder(book='playbook "Larkspur Kites"\n' + two, good=GOOD + CHARTED, bare=GOOD,
                some=GOOD.replace('    2 passes to 1\n', '    2 passes to 1\n    chart set "Screen set"\n')
                + GOOD.replace('Lantern', 'Orchard') + GOOD.replace('Lantern', 'Ferry')) as here:
        status, out, err = run('chart', 'book.play', cwd=here)
        tap.ok(status == 0 and out == 'larkspur-kites-tally.pdf\n', 'chart writes a PDF', f'{status} {out} {err}')
        status, out, err = run('chart', 'book.play', '--play', 'orchard', cwd=here)
        tap.same((status, out), (0, 'orchard-tally.pdf\n'), 'one play is picked by its name')
        one_message(run('chart', 'book.play', '--play', 'Ferry', cwd=here), 2, ['Ferry'], 'chart: an unknown play is wrong use')
        for name, args, told, silent in (
                ('some.play', (), ['left out', 'Orchard, Ferry', 'chart set "'], ['Lantern']),
                ('some.play', ('--play', 'ferry'), ['nothing to chart', 'empty lines', 'Ferry', 'chart set "'], ['Orchard', 'left out']),
                ('book.play', (), ['nothing to chart', 'empty lines', 'Lantern, Orchard', 'chart set "'], ['left out'])):
            status, out, err = run('chart', name, *args, '-o', 'some.pdf', cwd=here)
            tap.ok(status == 0 and out == 'some.pdf\n' and all(word in err for word in told) and not any(word in err for word in silent),
                   f'chart says which plays have nothing to chart: {name} {args}', f'{status} {out} {err}')
        status, out, err = run('chart', 'some.play', '--play', 'Lantern', '-o', 'some.pdf', cwd=here)
        tap.same((status, out, err), (0, 'some.pdf\n', ''), 'chart says nothing of a play that is charted')
        status, out, err = run('trend', 'good.play', cwd=here)
        tap.same((status, out), (0, 'trend.pdf\n'), 'trend writes a PDF')
        status, out, err = run('trend', 'good.play', '--play', 'lantern', '-o', '-', cwd=here)
        tap.ok(status == 0 and out.startswith('%PDF-'), 'a trend of one play', err)
        status, out, err = run('chart', 'good.play', '-o', 'same.pdf', '--deps', 'same.pdf', cwd=here)
        tap.ok(status == 3 and '--deps' in err and (here / 'same.pdf').read_bytes().startswith(b'%PDF-'),
               '--deps does not write over the pages', err)
        one_message(run('trend', 'bare.play', cwd=here), 1, ['nothing is charted'], 'without counts there is no trend')
        one_message(run('trend', 'good.play', '--play', 'Ferry', cwd=here), 2, ['Ferry'], 'trend: an unknown play is wrong use')


PLAN = """practice "{title}"
  starts 18:00
  10 min play "Lantern"
"""


def season():
    team = 'playbook "Larkspur Kites"\nteam "Larkspur Kites"\n  2 "Ada Quill"\n  3 "Coach"\n'
    plan = PLAN.format(title='Larkspur Kites')
    names = [f'larkspur-kites{end}' for end in ('-book.pdf', '.html', '.pdf', '-ada-quill.pdf', '-coach.pdf', '-coach-2.pdf', '-fill-in.pdf', '-card.pdf',
                                                '-2.pdf', '-tally.pdf', '-trend.pdf')]
    two = GOOD + GOOD.replace('Lantern', 'Orchard')
    with Folder(book=team + two + CHARTED + plan, good=GOOD, plan=plan, bad=team + GOOD + plan + '  10 min play "Ferry"\n',
                wrong=GOOD + GOOD.replace('Lantern', 'Ferry').replace('2 passes', '2 hums')) as here:
        (here / 'print').mkdir()
        status, out, err = run('season', 'book.play', '-o', 'print', '--deps', 'rule.d', cwd=here)
        tap.same((status, out.split()), (0, [f'print/{name}' for name in names]), f'season writes every sheet, each under a name of its own {err}')
        tap.same(sorted(file.name for file in (here / 'print').iterdir()), sorted(names), 'and nothing else')
        tap.same((here / 'rule.d').read_text(), ' '.join(f'print/{name}' for name in names) + ': book.play\n', 'season --deps has them all')
        for name, args in zip(names, (('book',), ('book',), ('handout',), ('handout', '--for', 'Ada Quill'), ('handout', '--for', 'Coach'), ('coach',),
                                      ('fill-in',), ('card',), ('practice',), ('chart',), ('trend',))):
            one = f'one.{name.split(".")[-1]}'
            run(args[0], 'book.play', *args[1:], '-o', one, cwd=here)
            tap.ok((here / one).read_bytes() == (here / 'print' / name).read_bytes(), f'season: {name} is what {" ".join(args)} writes')
        (here / 'left.play').write_text(team.replace('Ada Quill', 'Imke Dorn') + two + CHARTED + plan)
        (here / 'print' / 'larkspur-kites-poster.pdf').write_bytes(b'%PDF-1.4 the coach made it')
        shutil.copy(here / 'print' / 'larkspur-kites-coach.pdf', here / 'print' / 'larkspur-kites-two-coach.pdf')
        (here / 'print' / 'larkspur-kites-two.html').write_text('<p>another book')
        status, out, err = run('season', 'left.play', '-o', 'print', cwd=here)
        tap.ok(status == 0 and '\ncourtwright season: larkspur-kites-ada-quill.pdf: of an earlier time' in err,
               'season tells the sheets of who has left', err)
        tap.ok((here / 'print' / names[3]).exists(), 'and takes none of them away')
        tap.same(run('season', 'good.play', '-o', 'print/', cwd=here)[1].split(),
                 [f'print/{name}' for name in ('playbook.pdf', 'playbook.html', 'lantern.pdf', *(f'lantern-{n}.pdf' for n in range(1, 6)), 'lantern-coach.pdf',
                                               'lantern-fill-in.pdf', 'lantern-card.pdf', 'lantern-tally.pdf')], 'a file without a title or a roster')
        shutil.copy(here / 'print' / 'lantern-card.pdf', here / 'print' / 'lantern-wren.pdf')
        tap.ok('lantern-wren.pdf: of an earlier' in run('season', 'good.play', '-o', 'print/', cwd=here)[2], 'nor of a file without a title')
        for name, args, code, told in (('bad.play', (), 1, ['mend the errors first']), ('wrong.play', (), 1, ['mend the errors first']),
                                       ('plan.play', (), 1, ['mend the errors first']), ('good.play', ('-o', '-'), 2, ['folder']),
                                       ('good.play', ('-o', 'one.pdf'), 2, ['folder']), ('good.play', ('-o', 'none/'), 3, ['make the folder none first']),
                                       ('good.play', ('--play', 'Orchard'), 2, ['Orchard']),
                                       ('good.play', ('--crest', 'good.play'), 3, ['the crest'])):
            before = set(here.iterdir())
            status, out, err = run('season', name, *args, cwd=here)
            tap.ok((status, out) == (code, '') and all(word in err for word in told) and set(here.iterdir()) == before,
                   f'season: nothing of {name} {args}', f'{status} {out} {err}')


def cards():
    drill = GOOD.replace('play "Lantern"', 'drill "Orchard"')
    with Folder(book='playbook "Larkspur Kites"\n' + GOOD + drill, good=GOOD, drill=drill) as here:
        status, out, err = run('card', 'book.play', cwd=here)
        tap.same((status, out), (0, 'larkspur-kites-card.pdf\n'), 'card writes a PDF')
        tap.same(run('card', 'good.play', cwd=here)[:2], (0, 'lantern-card.pdf\n'), 'a card of a file without a title has its play\'s name')
        tap.same(run('card', 'book.play', '--play', 'orchard', cwd=here)[:2], (0, 'orchard-card.pdf\n'), 'a drill is on a card when it is named')
        one_message(run('card', 'drill.play', cwd=here), 1, ['only drills', '--play'], 'drills alone make no card')
        one_message(run('card', 'book.play', '--per-page', '9', cwd=here), 2, ['12 or 20'], 'nine cards a page are wrong use')
        one_message(run('card', 'book.play', '--play', 'Ferry', cwd=here), 2, ['Ferry'], 'card: an unknown play is wrong use')
        status, out, err = run('card', 'book.play', '--deps', 'rule.d', '-o', 'bench.pdf', cwd=here)
        tap.same((here / 'rule.d').read_text(), 'bench.pdf: book.play\n', 'card --deps writes a make rule')


def books():
    with Folder(book='playbook "Larkspur Kites"\n' + GOOD, good=GOOD, empty='playbook "Larkspur Kites"\n') as here:
        tap.same(run('book', 'book.play', cwd=here)[:2], (0, 'larkspur-kites-book.pdf\n'), 'book writes a PDF')
        names = [run(*sheet, 'book.play', '-o', './', cwd=here)[1] for sheet in (['handout'], ['coach'], ['fill-in'], ['card'], ['chart'], ['book'])]
        tap.ok(len(set(names)) == len(names), 'each sheet has a name of its own: none is written over another', str(names))
        tap.same(run('book', 'good.play', '--two-sided', cwd=here)[:2], (0, 'playbook.pdf\n'), 'a book without a title is called playbook')
        one_message(run('book', 'empty.play', cwd=here), 1, ['no play in it'], 'no book without a play')
        one_message(run('book', 'good.play', '--per-page', '5', cwd=here), 2, ['1, 2, 4, 6 or 9'], 'book: five diagrams a page are wrong use')
        tap.same(run('book', 'book.play', '-o', 'x.html', cwd=here)[:2], (0, 'x.html\n'), 'a book whose name ends in .html is a page')
        page = (here / 'x.html').read_text(encoding='utf-8')
        tap.ok(page.startswith('<!DOCTYPE html>') and page.rstrip().endswith('</html>'), 'the page is whole')
        tap.same(run('book', 'book.play', '-p', 'Lantern', '-o', '{play}.html', cwd=here)[:2], (0, 'lantern.html\n'), 'a page of one play is not called as the book is')
        tap.same(run('book', 'book.play', '-o', 'y.html', cwd=here)[0], 0, 'once more')
        tap.ok((here / 'y.html').read_text(encoding='utf-8') == page, 'the same book gives the same page')
        policy_holds(page)
        for option in (['--per-page', '4'], ['--two-sided'], ['--crest', 'good.svg'], ['--paper', 'a4']):
            one_message(run('book', 'good.play', *option, '-o', 'x.html', cwd=here), 2, ['PDF', 'HTML'], f'a page has no {option[0]}')
        one_message(run('book', 'empty.play', '-o', 'x.html', cwd=here), 1, ['no play in it'], 'no page without a play')
        (here / 'plan.play').write_text(GOOD + 'practice "Monday"\n  10 min drill "Nope"\n')
        status, out, err = run('book', 'plan.play', '-o', 'z.html', cwd=here)
        tap.ok(status == 1 and 'nothing was written' in err and not (here / 'z.html').exists(), 'no page with a practice that has an error', err)
        tap.same(run('book', 'plan.play', '--play', 'Lantern', '-o', 'z.html', cwd=here)[1], 'z.html\n', 'a page of one play has no practices')
        svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9">{}</svg>'
        for name, text in (('good', svg.format('<rect width="9" height="9"/>')), ('broken', svg.format('<rect')), ('words', 'hello'),
                           ('outside', svg.format('<image width="9" height="9" href="good.svg"/>')), ('huge', svg.format(' ' * (4 << 20))),
                           ('endless', svg.format('<filter id="f"><feTurbulence numOctaves="999999999"/></filter><rect width="9" height="9" filter="url(#f)"/>')),
                           ('tangled', svg.format('<g id="a0"><rect width="9" height="9"/></g>' + ''.join(
                               f'<g id="a{i}">' + f'<use href="#a{i - 1}"/>' * 10 + '</g>' for i in range(1, 12))))):
            (here / f'{name}.svg').write_text(text)
        tap.same(run('book', 'book.play', '--crest', 'good.svg', '--deps', 'rule.d', cwd=here)[:2], (0, 'larkspur-kites-book.pdf\n'), 'a crest on the cover')
        tap.same((here / 'rule.d').read_text(), 'larkspur-kites-book.pdf: book.play good.svg\n', 'the make rule names the crest')
        whole = (here / 'larkspur-kites-book.pdf').read_bytes()
        for name, words in (('broken', 'broken'), ('words', 'neither SVG nor PNG'), ('outside', 'outside itself'), ('huge', '4 MiB'),
                            ('endless', 'too long or too much memory'), ('tangled', 'save it as plain shapes'), ('missing', 'No such file')):
            one_message(run('book', 'book.play', '--crest', f'{name}.svg', cwd=here), 3, [f'{name}.svg', words], f'a crest that is {name} is refused')
        tap.ok((here / 'larkspur-kites-book.pdf').read_bytes() == whole, 'and the old file is whole')
        one_message(run('book', 'book.play', '--crest', 'good.svg', '-o', 'good.svg', cwd=here), 2, ['PDF'], 'a book is no SVG')
        (here / 'crest.pdf').write_text(svg.format('<rect width="9" height="9"/>'))
        one_message(run('book', 'book.play', '--crest', 'crest.pdf', '-o', 'crest.pdf', cwd=here), 3, ['crest.pdf'], 'the crest is not written over')
        status, out, err = run('book', 'book.play', '--deps', 'rule.d', '-o', 'whole.pdf', cwd=here)
        tap.same((here / 'rule.d').read_text(), 'whole.pdf: book.play\n', 'book --deps writes a make rule')


def tidy():
    rough = GOOD.replace('    1 passes to 2', '    1   PASS  to  2.   # swing').replace('\n', '\r\n')
    with Folder(rough=rough, wrong=WRONG) as here:
        (here / 'rough.play').write_bytes(rough.encode())
        status, out, err = run('tidy', 'rough.play', cwd=here)
        tap.ok(status == 0 and '    1 passes to 2' in out and '# swing' in out and '\r' not in out, 'tidy prints the one form', out + err)
        tap.ok((here / 'rough.play').read_bytes() == rough.encode(), 'tidy leaves the file alone')
        status, again, err = run('tidy', '-', stdin=out)
        tap.same(again, out, 'what is tidy stays as it is')
        tap.same(run('tidy', '--check', 'rough.play', cwd=here)[0], 1, 'tidy --check says that a file is not tidy')
        os.chmod(here / 'rough.play', 0o640)
        status, named, err = run('tidy', '--write', 'rough.play', cwd=here)
        tap.same((status, named, (here / 'rough.play').read_text()), (0, 'rough.play\n', out), 'tidy --write writes it back')
        tap.same(stat.S_IMODE(os.stat(here / 'rough.play').st_mode), 0o640, 'and keeps who may read it')
        tap.same(run('tidy', '--check', 'rough.play', cwd=here)[0], 0, 'then it is tidy')
        tap.same(run('tidy', '--write', 'rough.play', cwd=here)[:2], (0, ''), 'a tidy file is not written again')
        status, out, err = run('tidy', '--write', 'wrong.play', cwd=here)
        tap.ok(status == 1 and (here / 'wrong.play').read_text() == WRONG, 'a file with errors is left as it is', out + err)
        one_message(run('tidy', '--write', '-'), 2, ['--write'], 'standard input cannot be written back')
    tidy_tells()
    only_errors()
    tidy_keeps_what_is_there()
    tidy_lists()
    tidy_upgrades()
    tidy_loses_nothing()


COMMENTED = """# for the Kites
courtwright 1

play "Lantern"

  # who stands where
  start five-out  # wide
  step
    1 passes to 2  # swing

    # then
    2 passes to 3
# the end
"""


def tidy_keeps_what_is_there():
    with Folder(here=COMMENTED, loose=COMMENTED.replace('passes to', 'swings it to').replace('\n\n', '\n\n\n\n')) as here:
        tap.same(run('tidy', 'here.play', cwd=here)[1], COMMENTED, 'tidy keeps comments and blank lines where they were')
        status, out, err = run('tidy', 'loose.play', cwd=here)
        tap.same(out, COMMENTED, 'runs of blank lines become one')
        tap.same(run('tidy', '-', stdin=out)[1], out, 'and tidying again changes nothing')


def tidy_tells():
    """What tidy leaves out or writes another way it tells, in the words of check."""
    loose = GOOD.replace('1 passes to 2', '1 passes to 2 because they sag').replace('3 clears to left wing', '3 clears to the left wing so we are wide')
    other = GOOD.replace('Lantern', 'Tollgate').replace('1 passes to 2', '1 passes to 2 because they sag')
    with Folder(loose=loose, book='include "loose.play"\n' + other, crowded=CROWDED.replace('1 passes to 3', '1 passes to 3 because they sag')) as here:
        told = run('check', 'loose.play', cwd=here)[2]
        tap.ok('[text.aside]' in told, 'check tells what was left out', told)
        notes = ''.join(part for part in re.findall(r'loose\.play:(?:.*\n)(?:  .*\n)*', told) if '[text.' in part.splitlines()[0])
        for words, status in ((('tidy',), 0), (('tidy', '--check'), 1), (('tidy', '--upgrade'), 0), (('tidy', '--write'), 0)):
            got, _, err = run(*words, 'loose.play', cwd=here)
            tap.ok(got == status and err.startswith(notes), f'so does {" ".join(words)}', err)
        tap.same(run('tidy', '--write', 'loose.play', cwd=here), (0, '', ''), 'of what is tidy there is nothing to tell')
        (here / 'loose.play').write_text(loose)
        err = run('tidy', 'book.play', cwd=here)[2]
        tap.ok('book.play:' in err and 'loose.play:' not in err, 'nothing is told of a file that is not written', err)
        (here / 'many.play').write_text(''.join(loose.replace('Lantern', f'Lantern {i}') for i in range(300)))
        err = run('tidy', 'many.play', cwd=here)[2]
        tap.ok('more to tell of many.play than a list holds' in err, 'when that is more than the list holds, it is said', err[-300:])
        err = run('tidy', 'crowded.play', cwd=here)[2]
        tap.ok('[text.aside]' in err and 'warning' not in err, 'nor of the run', err)


def only_errors():
    left_out = 'play "Lantern"\n  start five-out\n  accept pass.long "so"\n  step\n    2 fills slot\n    5 pops\n'
    left_out = left_out.replace('5 pops', '5 posts up')
    with Folder(left=left_out) as here:
        status, out, err = run('check', 'left.play', cwd=here)
        tap.ok(status == 0 and all(err.count(name) == 1 for name in ('play.side-taken', 'play.default', 'check.accept-idle')),
               'check tells what was taken, each once', err)
        tap.same(run('check', '--only', 'error', 'left.play', cwd=here), (0, '', ''), 'check --only error says nothing of it')
        tap.same(run('tidy', 'left.play', cwd=here), (0, left_out, ''), 'and tidy writes none of it in')


def tidy_lists():
    with Folder(rough='play "Lantern"\n  start five-out\n  step\n   1 PASSES  to 2, 2 swings to 3\n    3 shoots\n') as here:
        status, out, err = run('tidy', '--check', 'rough.play', cwd=here)
        tap.same((status, out), (1, 'rough.play:4:    1 PASSES  to 2, 2 swings to 3\n'), 'tidy --check lists the lines that are not tidy')
        tap.ok('rough.play is not in its tidy form' in err, 'and says so', err)
        run('tidy', '--write', 'rough.play', cwd=here)
        tap.same(run('tidy', '--check', 'rough.play', cwd=here)[:2], (0, ''), 'of a tidy file it lists nothing')


def tidy_upgrades():
    with Folder(plain=GOOD, named='courtwright 1\n' + GOOD, newer='courtwright 2\n' + GOOD, late=GOOD + 'courtwright 1\n') as here:
        tap.same(run('tidy', '--upgrade', 'plain.play', cwd=here)[:2], (0, 'courtwright 1\n' + GOOD), 'tidy --upgrade names the version')
        tap.same(run('tidy', '--upgrade', 'named.play', cwd=here)[:2], (0, 'courtwright 1\n' + GOOD), 'once')
        tap.same(run('tidy', '--upgrade', '--check', 'plain.play', cwd=here)[0], 1, 'tidy --upgrade --check says that a file names none')
        tap.same(run('tidy', '--upgrade', '--check', 'named.play', cwd=here)[0], 0, 'and that another is up to date')
        tap.same(run('tidy', '--upgrade', '--write', 'plain.play', cwd=here)[:2], (0, 'plain.play\n'), 'tidy --upgrade --write writes it back')
        tap.same((here / 'plain.play').read_text(), 'courtwright 1\n' + GOOD, 'with its version')
        for words in (('--upgrade',), ('--upgrade', '--write'), ('--upgrade', '--check')):
            one_message(run('tidy', *words, 'newer.play', cwd=here), 1, ['newer.play:1:', 'version 2', 'knows version 1', 'not upgraded'],
                        f'a version that is not known is an error (tidy {" ".join(words)})')
        tap.same((here / 'newer.play').read_text(), 'courtwright 2\n' + GOOD, 'and the file is as it was')
        one_message(run('tidy', '--upgrade', 'late.play', cwd=here), 1, ['late.play:11:', 'first line'], 'a version in the wrong place is an error')


def tidy_loses_nothing():
    long = GOOD + ''.join(f'play "Lantern {i}"\n  start five-out\n  step\n    1   passes to 2\n' for i in range(40))
    with Folder(rough=long) as here:
        limit = 'ulimit -f 1; exec "$0" "$@"'
        done = subprocess.run(['sh', '-c', limit, PROGRAM, 'tidy', '--write', 'rough.play'], stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, cwd=here, check=False)
        tap.ok(done.returncode == 3 and b'rough.play cannot be written' in done.stderr, 'no room for the tidy file', done.stderr)
        tap.same((here / 'rough.play').read_text(), long, 'then the file is as it was')
        tap.same(sorted(os.listdir(here)), ['rough.play'], 'and nothing lies beside it')
        os.chmod(here, 0o777)
        os.chmod(here / 'rough.play', 0o444)
        user = {'user': 65534, 'group': 65534, 'extra_groups': []} if os.geteuid() == 0 else {}
        one_message(run('tidy', '--write', str(here / 'rough.play'), cwd='/', **user), 3, ['Permission denied'], 'a file one may not write to')
        os.chmod(here / 'rough.play', 0o666)
        os.chmod(here, 0o555)
        one_message(run('tidy', '--write', str(here / 'rough.play'), cwd='/', **user), 3, ['Permission denied'], 'a folder one may not write to')
        tap.same((here / 'rough.play').read_text(), long, 'the file is as it was')
        os.chmod(here, 0o755)
        (here / 'link.play').symlink_to('rough.play')
        os.chmod(here / 'rough.play', 0o666)
        status, out, err = run('tidy', '--write', 'link.play', cwd=here, umask=0o077)
        tap.ok(status == 0 and (here / 'link.play').is_symlink(), 'a link stays one', out + err)
        tap.ok('    1 passes to 2\nplay "Lantern 1"' in (here / 'rough.play').read_text(), 'what it leads to is tidy')
        tap.same(stat.S_IMODE(os.stat(here / 'rough.play').st_mode), 0o666, 'whatever new files may be, who may write it stays')
        (here / 'rough.play').write_text(long)
        os.link(here / 'rough.play', here / 'second.play')
        status, out, err = run('tidy', '--write', 'second.play', cwd=here)
        tap.ok(status == 0 and os.path.samefile(here / 'rough.play', here / 'second.play'), 'two names of one file stay so', out + err)
        tap.ok('    1 passes to 2\nplay "Lantern 1"' in (here / 'rough.play').read_text(), 'and both are tidy')
        tap.same((here / 'rough.play').read_text(), run('tidy', 'rough.play', cwd=here)[1], 'to the last line')
        tap.same(sorted(os.listdir(here)), ['link.play', 'rough.play', 'second.play'], 'and nothing is left beside them')
        (here / 'rough.play').write_text(long)
        done = subprocess.run(['sh', '-c', limit, PROGRAM, 'tidy', '--write', 'second.play'], stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, cwd=here, check=False)
        tap.ok(done.returncode == 3 and (here / 'rough.play').read_text() == long, 'without room for the text beside it the file is as it was')
        (here / 'a.play').symlink_to('b.play')
        (here / 'b.play').symlink_to('a.play')
        one_message(run('tidy', '--write', 'a.play', cwd=here), 3, ['a.play cannot be read'], 'links in a circle')


def tables():
    status, out, err = run('explain')
    tap.ok(status == 0 and 'file.memory' in out and 'passes to' in out, 'explain lists what there is', out[:300] + err)
    words = [line[2:] for line in out.splitlines() if line.startswith('  ')]
    unexplained = [word for word in words if run('explain', word)[0] != 0]
    tap.ok(words and not unexplained, 'every word that explain lists it explains', unexplained)
    status, out, err = run('explain', 'curls')
    tap.ok(status == 0 and out.startswith('curls off (verb)'), 'a verb is found without its preposition', out + err)
    one_message(run('explain', 'warp drive'), 2, ['warp drive'], 'what there is not is said not to be')
    status, out, err = run('list')
    for table in out.split('\n')[1:-1]:
        status, rows, err = run('list', table)
        tap.ok(status == 0 and rows.count('\n') >= 1, f'list {table} is a table', rows + err)
        status, lines, err = run('list', table, '--json')
        tap.ok(status == 0 and all(json.loads(line)['word'] for line in lines.splitlines())
               and lines.count('\n') == rows.count('\n'), f'list {table} --json has the same rows', lines[:300] + err)
    one_message(run('list', 'nonsense'), 2, ['nonsense'], 'an unknown table is wrong use')
    with Folder(two=TWO) as here:
        status, out, err = run('list', 'plays', 'two.play', cwd=here)
        tap.ok(status == 0 and out.startswith('Lantern: 2 steps, 2 diagrams, '), 'list plays tells a book', out + err)
        rows = [json.loads(line) for line in run('list', 'plays', 'two.play', '--json', cwd=here)[1].splitlines()]
        tap.same([row['name'] for row in rows], ['Lantern', 'Tollgate'], 'list plays --json too')


def positions():
    with Folder(good=GOOD) as here:
        status, out, err = run('positions', 'good.play', '--rate', '10', cwd=here)
        data = json.loads(out) if status == 0 else {}
        segments = data.get('segments', [])
        tap.ok(data.get('schema') == 'courtwright-positions-2' and len(segments) == 2, 'positions are JSON', out[:300] + err)
        for segment in segments:
            times = segment['times']
            even = all(abs(time - index / 10) < 1e-6 for index, time in enumerate(times[:-1]))
            tap.ok(even and abs(times[-1] - segment['duration']) < 1e-6 and
                   all(len(track) == len(times) for track in segment['bodies'].values()) and
                   len(segment['ball']) == len(segment['holder']) == len(times), 'there is a place for every time')
            fast = max((((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) ** .5 * 10
                        for track in segment['bodies'].values() for a, b in zip(track, track[1:])), default=0)
            tap.ok(0 < fast < 11, f'nobody outruns a person ({fast:.1f} m/s)')
        if len(segments) == 2:
            gaps = [((a[-1][0] - b[0][0]) ** 2 + (a[-1][1] - b[0][1]) ** 2) ** .5 for a, b in
                    ((segments[0]['bodies'][who], segments[1]['bodies'][who]) for who in segments[0]['bodies'])]
            tap.ok(max(gaps) < 1, 'a step begins where the one before ended', gaps)
            tap.ok(segments[0]['holder'][0] in ('1', None) and segments[0]['holder'][-1] == '2', 'the pass is seen in who holds the ball')
        for stage in ('resolved', 'run', 'scene'):
            status, out, err = run('positions', 'good.play', '--dump', stage, cwd=here)
            tap.ok(status == 0 and out.count('\n') > 3, f'--dump {stage} shows that stage', out[:200] + err)


    with Folder(two=TWO) as here:
        one_message(run('positions', 'two.play', cwd=here), 2, ['2 plays', '--play', '-o'], 'two plays are not one JSON document')
        tap.same(json.loads(run('positions', 'two.play', '-p', 'Tollgate', cwd=here)[1])['play'], 'Tollgate', 'one of them is')
        status, out, err = run('positions', 'two.play', '-o', '{n}.json', cwd=here)
        tap.same((status, out, [json.loads((here / f'{n}.json').read_text())['play'] for n in (1, 2)]), (0, '1.json\n2.json\n', ['Lantern', 'Tollgate']),
                 'or each in a file of its own')
        tap.ok(run('positions', 'two.play', '--dump', 'run', cwd=here)[0] == 0, 'a stage as text may be of several')


def bad_files():
    with Folder(good=GOOD) as here:
        (here / 'folder').mkdir()
        one_message(run('check', 'none.play', cwd=here), 3, ['none.play', 'No such file'], 'a missing file')
        one_message(run('check', 'folder', cwd=here), 3, ['folder', 'it is a folder'], 'a folder in place of a file')
        (here / 'locked.play').write_text(GOOD)
        os.chmod(here / 'locked.play', 0)
        if os.geteuid() == 0:
            drop = {'user': 65534, 'group': 65534, 'extra_groups': []}
            os.chmod(here, 0o755)
        else:
            drop = {}
        one_message(run('check', str(here / 'locked.play'), cwd='/', **drop), 3, ['locked.play', 'Permission denied'], 'a file one may not read')
        (here / 'empty.play').write_text('')
        status, out, err = run('check', 'empty.play', cwd=here)
        tap.ok(status in (0, 1) and out == '', 'an empty file is checked', f'{status} {err}')
        one_message(run('draw', 'empty.play', cwd=here), 1, ['nothing was drawn'], 'an empty file has nothing to draw')
        (here / 'binary.play').write_bytes(bytes(range(256)) * 40)
        one_message(run('check', 'binary.play', cwd=here), 1, ['not a text file', 'file.binary'], 'a binary file is one error')
        tap.same(run('check', 'binary.play', cwd=here)[2].count('error:'), 1, 'and no more than one')
        (here / 'nul.play').write_bytes(GOOD.encode() + b'  # \x00\n')
        one_message(run('check', 'nul.play', cwd=here), 1, ['nul.play:11:5: ', 'file.binary'], 'a zero byte is told of where it stands')
        (here / 'm.play').write_text('1 passes to 2\nplay\n  start five-out\n  1 passes to 2\n')
        err = run('check', 'm.play', cwd=here)[2]
        tap.ok('m.play:2:5: error: ' in err and err.count('error: ') == 1, 'a play without a title is not one called as the file is', err)
        (here / 'm.play').write_text('1 passes to 2\nplay "M"\n  start five-out\n  1 passes to 2\n')
        err = run('check', 'm.play', cwd=here)[2]
        tap.ok('m.play:2:6: error: there are two plays "M"' in err and 'see m.play:1' in err, 'one with its title is: both places', err)
        (here / 'other.play').write_text('play "N"\n  start five-out\n  1 passes to 2\n')
        (here / 'n.play').write_text('1 passes to 2\ninclude "other.play"\n')
        err = run('check', 'n.play', cwd=here)[2]
        tap.ok('other.play:1:6: error: there are two plays "N"' in err and 'see n.play:1' in err, 'so has one that is included', err)
        (here / 'latin.play').write_bytes('play "Caf\u00e9"\n'.encode('latin-1'))
        status, out, err = run('check', 'latin.play', cwd=here)
        tap.ok(status == 1 and 'latin.play:1:' in err, 'text that is not UTF-8 is an error of its line', err)
        (here / 'line.play').write_text(GOOD + '# ' + 'x' * 10_000_000 + '\n')
        status, out, err = run('check', 'line.play', cwd=here)
        tap.ok(status == 1 and 'file.too-large' in err and 'help: ' in err and len(err) < 2000, 'a line of 10 MB is one error', err[:500])
        (here / 'long.play').write_text(GOOD + '    1 passes to ' + '2 ' * 200_000 + '\n')
        status, out, err = run('check', 'long.play', cwd=here)
        tap.ok(status == 1 and 'long.play:11:' in err and len(err) < 3000, 'a line of 400 kB is an error of its line', err[:500])
        (here / 'big.play').write_text('# ' + 'y' * 78 + '\n' + ('# ' + 'x' * 78 + '\n') * 60_000 + GOOD)
        status, out, err = run('check', 'big.play', cwd=here)
        tap.ok(status == 0, 'a long file is fine', err[:500])
        status, out, err = run('check', '/dev/zero', timeout=60)
        tap.ok(status in (1, 3) and len(err) < 2000, 'a file without an end is an error', err[:300])
        esc = GOOD.replace('Swing', 'Sw\033[31ming').replace('passes', 'pazzes')
        (here / 'escape.play').write_text(esc)
        status, out, err = run('check', 'escape.play', cwd=here)
        tap.ok(status == 1 and '\033' not in err, 'no escape of the text reaches the terminal', repr(err))


def includes():
    with Folder(main='include "second.play"\n' + GOOD, second=GOOD.replace('Lantern', 'Second')) as here:
        status, out, err = run('draw', 'main.play', '--deps', 'rule.d', cwd=here)
        tap.ok(status == 0 and 'second-1.svg' in out and (here / 'rule.d').read_text().endswith(': main.play second.play\n'),
               'an include is read, and in the make rule', out + err)
        status, out, err = run('check', str(here / 'main.play'), cwd='/')
        tap.ok(status == 0, 'an include is found from the folder of the book', err)
        (here / 'second.play').write_text(WRONG.replace('Lantern', 'Second'))
        status, out, err = run('check', './main.play', cwd=here)
        tap.ok(status == 1 and err.startswith('./second.play:5:'), 'an error in an include names that file', err)
        (here / 'missing.play').write_text('include "nowhere.play"\n')
        one_message(run('check', 'missing.play', cwd=here), 1, ['missing.play:1:', 'file.missing'], 'a missing include')
        (here / 'self.play').write_text('include "self.play"\n')
        one_message(run('check', 'self.play', cwd=here), 1, ['self.play:1:', 'file.cycle', 'help: '], 'a file that includes itself')
        (here / 'a.play').write_text('include "b.play"\n')
        (here / 'b.play').write_text('include "./a.play"\n')
        one_message(run('check', 'a.play', cwd=here), 1, ['file.cycle'], 'includes in a circle')
        (here / 'second.play').write_text(GOOD.replace('Lantern', 'Second'))
        (here / 'twice.play').write_text('include "second.play"\ninclude "./second.play"\n' + GOOD)
        status, out, err = run('check', 'twice.play', cwd=here)
        tap.ok(status == 1 and 'twice.play:2:' in err and 'file.cycle' in err, 'a file included twice', err)
        (here / 'other-name.play').symlink_to('second.play')
        (here / 'twice.play').write_text('include "second.play"\ninclude "other-name.play"\n' + GOOD)
        status, out, err = run('check', 'twice.play', cwd=here)
        tap.ok(status == 1 and 'twice.play:2:' in err and 'file.cycle' in err, 'twice by way of a link inside the folder', err)
        (here / 'same-name.play').write_text('include "second.play"\n' + GOOD.replace('Lantern', 'SECOND'))
        status, out, err = run('check', 'same-name.play', cwd=here)
        tap.ok(status == 1 and 'play.duplicate' in err and 'same-name.play:2:' in err and 'see second.play:1' in err,
               'a name that stands in two files: both places', err)
        (here / 'out').symlink_to(here.parent)
        (here / 'by-folder.play').write_text('include "out/outside.play"\n')
        (here.parent / 'outside.play').write_text(GOOD)
        status, out, err = run('check', 'by-folder.play', cwd=here)
        tap.ok(status == 1 and 'file.outside' in err, 'a folder that is a link leading out', err)
        (here / 'dots').mkdir()
        (here / 'dots.play').write_text('include "dots/../second.play"\n')
        tap.same(run('check', 'dots.play', cwd=here)[0], 0, 'up and down inside the folder')
        (here / 'dangling.play').symlink_to('nothing.play')
        (here / 'to-dangling.play').write_text('include "dangling.play"\n')
        one_message(run('check', 'to-dangling.play', cwd=here), 1, ['file.missing'], 'a link to nothing')
        (here / 'up.play').write_text('include "../outside.play"\n')
        (here / 'absolute.play').write_text('include "/etc/hostname"\n')
        (here / 'link.play').symlink_to('/etc/hostname')
        (here / 'through.play').write_text('include "link.play"\n')
        (here.parent / 'outside.play').write_text(GOOD)
        for name in ('up', 'absolute', 'through'):
            one_message(run('check', f'{name}.play', cwd=here), 1, ['file.outside'], f'an include leading out of the folder ({name})')
        (here.parent / 'outside.play').unlink()
        (here / 'sub').mkdir()
        (here / 'dir.play').write_text('include "sub"\n')
        one_message(run('check', 'dir.play', cwd=here), 1, ['file.unreadable', 'help: '], 'a folder as include')
        os.mkfifo(here / 'pipe.play')
        (here / 'fifo.play').write_text('include "pipe.play"\n')
        one_message(run('check', 'fifo.play', cwd=here, timeout=20), 1, ['file.unreadable'], 'a pipe as include does not hang')
        one_message(run('check', 'pipe.play', cwd=here, timeout=20), 3, ['no plain file', '`-`'], 'a pipe as the file does not hang')
        (here / 'turned.play').write_text('1 passes to \u202e2\n', encoding='utf-8')
        status, out, err = run('check', 'turned.play', cwd=here)
        tap.ok('\u202e' not in err and '1 passes to U+202E2\n              ^~~~~~\n' in err, 'what turns a line round is shown by its number', err)
        one_message(run('check', 'no\u202eyalp.txt', cwd=here), 3, ['noU+202Eyalp.txt'], 'in the name of a file too')
        (here / 'sub' / 'x.play').write_text('include "y.play"\n')
        (here / 'sub' / 'y.play').write_text(GOOD)
        (here / 'deep.play').write_text('include "sub/x.play"\n')
        tap.same(run('check', 'deep.play', cwd=here)[0], 0, 'an include counts from the file it stands in')
        (here / 'deep-2.play').write_text(''.join(f'include "d{i}.play"\n' for i in range(80)))
        for i in range(80):
            (here / f'd{i}.play').write_text('# nothing\n')
        status, out, err = run('check', 'deep-2.play', cwd=here)
        tap.ok(status == 1 and 'deep-2.play:' in err, 'too many includes are an error', err[:300])


def bad_outputs():
    with Folder(good=GOOD) as here:
        os.chmod(here, 0o755)
        book = ['draw', str(here / 'good.play'), '--step', '1']
        one_message(run(*book, '-o', 'none/one.svg', cwd=here), 3, ['none/one.svg', 'No such file', 'make the folder none first'], 'a folder that is not there')
        one_message(run(*book, '-o', 'none/', cwd=here), 3, ['none/'], 'a folder that is not there, with a slash')
        one_message(run(*book, '-o', 'good.play/one.svg', cwd=here), 3, ['Not a directory'], 'a file in place of a folder')
        os.mkfifo(here / 'pipe.svg')
        one_message(run(*book, '-o', 'pipe.svg', cwd=here, timeout=20), 3, ['pipe.svg is no plain file, and nobody reads'], 'a pipe that nobody reads from')
        reader = os.open(here / 'pipe.svg', os.O_RDONLY | os.O_NONBLOCK)
        tap.ok(run(*book, '-o', 'pipe.svg', cwd=here, timeout=20)[0] == 0 and os.read(reader, 4) == b'<svg', 'a pipe that somebody reads from')
        os.close(reader)
        (here / 'closed').mkdir()
        os.chmod(here / 'closed', 0o555)
        user = {'user': 65534, 'group': 65534, 'extra_groups': []} if os.geteuid() == 0 else {}
        one_message(run(*book, '-o', str(here / 'closed' / 'one.svg'), cwd='/', **user), 3, ['Permission denied'], 'a folder one may not write to')
        (here / 'one.svg').write_text('old')
        os.chmod(here / 'one.svg', 0o444)
        if user:
            os.chmod(here, 0o777)
        one_message(run(*book, '-o', str(here / 'one.svg'), cwd='/', **user), 3, ['Permission denied'], 'a file one may not write to')
        tap.same((here / 'one.svg').read_text(), 'old', 'and it is as it was')
        one_message(run(*book, '-o', 'good.play', cwd=here), 2, ['comes out as SVG'], 'the input is no picture')
        shutil.copy(here / 'good.play', here / 'good.svg')
        one_message(run('draw', 'good.svg', '--step', '1', '-o', 'good.svg', cwd=here), 3, ['what was read'], 'the input is not written over')
        tap.same((here / 'good.svg').read_text(), GOOD, 'whatever it is called')
        (here / 'same.svg').symlink_to('good.play')
        one_message(run(*book, '-o', 'same.svg', cwd=here), 3, ['what was read'], 'not by way of a link either')
        tap.same((here / 'good.play').read_text(), GOOD, 'the input is as it was')
        if os.path.exists('/dev/full'):
            one_message(run(*book, '-o', '/dev/full', cwd=here), 3, ['/dev/full', 'No space'], 'a full disk')
            with open('/dev/full', 'wb') as full:
                for name in ('crowded.play', 'wrong.play'):
                    (here / name).write_text(CROWDED if name == 'crowded.play' else WRONG)
                    done = subprocess.run([PROGRAM, 'check', name], stdout=subprocess.PIPE, stderr=full, cwd=here, env=ENV, check=False)
                    tap.same(done.returncode, 3, f'what is to be said of {name} is lost on a full disk: that is not fine')
                status, _, err = run(*book, '-o', '-', cwd=here, stdout=full)
                tap.ok(status == 3 and 'No space' in err and err.count('\n') == 1, 'a full standard output', err)
                status, _, err = run('list', 'verbs', stdout=full)
                tap.ok(status == 3 and 'No space' in err, 'a full standard output for tables', err)
        for words, what in ((book + ['-o', '-'], 'a drawing'), (['--help'], 'help'), (['list', 'verbs'], 'a table')):
            done = subprocess.run(['sh', '-c', 'exec "$0" "$@" >&-', PROGRAM, *words], stderr=subprocess.PIPE, cwd=here, check=False)
            tap.ok(done.returncode == 3 and b'standard output' in done.stderr, f'a closed standard output for {what}', done.stderr)
        done = subprocess.run(['sh', '-c', 'exec "$0" check - <&-', PROGRAM], stderr=subprocess.PIPE, check=False)
        tap.ok(done.returncode == 3 and b'standard input' in done.stderr, 'a closed standard input', done.stderr)
        (here / 'kept.svg').write_text('old')
        done = subprocess.run(['sh', '-c', 'ulimit -f 1; exec "$0" "$@"', PROGRAM, *book, '-o', 'kept.svg'], stdout=subprocess.PIPE,
                              stderr=subprocess.PIPE, cwd=here, check=False)
        tap.ok(done.returncode == 3 and b'File too large' in done.stderr and (here / 'kept.svg').read_text() == 'old', 'a file that could not be written whole is as it was',
               f'{done.returncode} {done.stderr}')
        tap.same([name for name in os.listdir(here) if name.startswith('.')], [], 'nothing unfinished is left lying about')
        status, out, err = run(*book, '-o', '/dev/null', cwd=here)
        tap.ok(status == 0 and stat.S_ISCHR(os.stat('/dev/null').st_mode), 'a device is written to and not replaced', err)
        (here / 'real').mkdir()
        (here / 'real' / 'to.svg').write_text('old')
        (here / 'by-link.svg').symlink_to('real/to.svg')
        status, out, err = run(*book, '-o', 'by-link.svg', cwd=here)
        tap.ok(status == 0 and (here / 'by-link.svg').is_symlink() and (here / 'real' / 'to.svg').read_text() != 'old',
               'a link is followed', err)
        one_message(run('draw', 'good.play', '--step', '1', '--deps', 'good.play', cwd=here), 3, ['good.play is what was read', '--deps'], 'the rule for make is not written over the input')
        tap.same(((here / 'good.play').read_text(), list(here.glob('lantern*'))), (GOOD, []), 'and nothing is drawn before that is known')
        links_and_devices(here, book)


def links_and_devices(here, book):
    drawn = run(*book, '-o', '-', cwd=here)[1]
    (here / 'to-new.svg').symlink_to('real/new.svg')
    status, out, err = run(*book, '-o', 'to-new.svg', cwd=here)
    tap.ok((status, out) == (0, 'to-new.svg\n') and (here / 'to-new.svg').is_symlink() and (here / 'real' / 'new.svg').read_text() == drawn,
           'of a link that leads nowhere yet the target is made', err)
    (here / 'to-none.svg').symlink_to('nowhere/new.svg')
    one_message(run(*book, '-o', 'to-none.svg', cwd=here), 3, ['to-none.svg', 'make the folder nowhere first'], 'a link into a folder that is not there')
    tap.ok((here / 'to-none.svg').is_symlink(), 'and it stays a link')
    (here / 'out.svg').symlink_to('/dev/stdout')
    for name in ('/dev/stdout', '/proc/self/fd/1', 'out.svg'):
        log = here / 'log'
        log.write_text('old\n')
        before = log.stat().st_ino
        done = subprocess.run(['sh', '-c', 'exec "$0" "$@" >>log', PROGRAM, *book, '-o', name], stderr=subprocess.PIPE, cwd=here, env=ENV, check=False)
        tap.ok(done.returncode == 0 and log.stat().st_ino == before and log.read_text() == 'old\n' + drawn,
               f'-o {name} >> log goes on after what is there, and prints no name into it', done.stderr)
        tap.same(run(*book, '-o', name, cwd=here)[:2], (0, drawn), f'-o {name} into a pipe')
    done = subprocess.run(['sh', '-c', 'exec "$0" "$@" 3>third', PROGRAM, *book, '-o', '/dev/fd/3'], stdout=subprocess.PIPE, cwd=here, env=ENV, check=False)
    tap.same((done.returncode, done.stdout, (here / 'third').read_text()), (0, b'/dev/fd/3\n', drawn), 'a file that is open already')
    tap.ok((here / 'out.svg').is_symlink() and os.path.islink('/dev/stdout'), 'links to what is the system\'s own stay')


def writes(going, folder):
    """Whether a file is open to be written in the folder: beside its place, or without a name yet."""
    try:
        opened = [os.readlink(link) for link in pathlib.Path(f'/proc/{going.pid}/fd').iterdir()]
    except OSError:
        opened = []
    return any(name.startswith(f'{folder.resolve()}/') and name.endswith(' (deleted)') for name in opened) or list(folder.glob('.courtwright-*'))


def interrupted():
    with Folder() as here:
        for file in KITES.glob('*.play'):
            shutil.copy(file, here)
        for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP, signal.SIGKILL):
            going = subprocess.Popen([PROGRAM, 'coach', 'kites.play', '--tolerance', '--jobs', '1', '-o', 'out.pdf'], cwd=here, env=ENV,
                                     stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
            while going.poll() is None and not writes(going, here):
                time.sleep(0.01)
            going.send_signal(number)
            tap.same((going.wait(60), list(here.glob('.courtwright-*')), (here / 'out.pdf').exists()), (-number, [], False),
                     f'{number.name} while a file is written ends it, and leaves nothing behind')


def main():
    tap.parts(help_and_use, new, check, tolerance, explain_draws, colors, draw, animate, handout, everyone, errors_and_sheets, fill_in, practice, tallies,
              cards, books, season, tidy, tables, positions, bad_files, includes, bad_outputs, interrupted)
    return tap.end()


if __name__ == '__main__':
    sys.exit(main())
