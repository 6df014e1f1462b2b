#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Handouts as others read them: whole PDF by qpdf, faces and words by poppler, nothing outside its
page, nothing too small to read. Prints TAP.
Usage: pages.py PROGRAM EXAMPLES"""
import json
import os
import pathlib
import re
import struct
import subprocess
import sys
import tempfile
import zlib
import xml.etree.ElementTree as tree

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import Tap  # noqa: E402

PROGRAM, EXAMPLES = (os.path.abspath(word) for word in sys.argv[1:3])
LETTER, A4 = (612, 792, 54), (595.28, 841.89, 45.64)
PAPERS = (('letter', LETTER), ('a4', A4))
KITES = pathlib.Path(EXAMPLES) / 'kites' / 'kites.play'
CAUTION = ('Screens: feet still, elbows in; a step behind a standing player, up to two off a moving one.',
           'Hit to the head: stop, tell an adult, sit out until medically cleared.',
           'Local rules, league and medical staff come before this sheet.')
tap = Tap()


def told(*words):
    done = subprocess.run(words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, timeout=120)
    return done.returncode, done.stdout.decode()


def handout(folder, name, text, *words):
    """Writes the handout of a text (or a file); its path, or None."""
    play = text
    if not isinstance(text, pathlib.Path):
        play = folder / f'{name}.play'
        play.write_text(text)
    out = folder / f'{name}.pdf'
    status, said = told(PROGRAM, 'handout', str(play), '-o', str(out), *words)
    return out if tap.ok(status in (0, 1) and out.exists(), f'{name}: is written', f'{status}: {said}') else None


def pages_of(pdf):
    """For each page its size and its words with their boxes."""
    _, text = told('pdftotext', '-bbox', str(pdf), '-')
    text = re.sub(r'<!DOCTYPE[^>]*>', '', text).replace('xmlns="http://www.w3.org/1999/xhtml"', '')
    found = []
    for page in tree.fromstring(text).iter('page'):
        words = [(word.text, *(float(word.get(key)) for key in ('xMin', 'yMin', 'xMax', 'yMax')))
                 for word in page.iter('word')]
        found.append((float(page.get('width')), float(page.get('height')), words))
    return found


def plain(pdf, page=0):
    """Words with one space between, hyphens at line ends as they stand."""
    words = ['pdftotext', '-raw'] + (['-f', str(page), '-l', str(page)] if page else []) + [str(pdf), '-']
    return ' '.join(told(*words)[1].split())


def smallest_type(pdf):
    """The smallest letters in points, to a third: poppler zooms no further."""
    _, text = told('pdftohtml', '-xml', '-i', '-stdout', '-zoom', '3', str(pdf))
    return min(int(size) for size in re.findall(r'<fontspec [^>]*size="(\d+)"', text)) / 3


def look_at(name, pdf, paper=LETTER, caution=None, lean=0, bare=(), cover=False, each=False):
    """What holds for every page of every sheet. `lean`: how far the pages of a two-sided one lean to the
    outside; `bare`: pages without a diagram, and so without a caution; `cover`: the first page has no number; `each`: every play
    counts its own pages."""
    width, height, margin = paper
    status, said = told('qpdf', '--check', str(pdf))
    tap.ok(status == 0, f'{name}: qpdf finds nothing wrong', said)
    _, faces = told('pdffonts', str(pdf))
    rows = [line.split() for line in faces.splitlines()[2:]]
    tap.ok(rows and all('Inter-' in row[0] and row[-5:-2] == ['yes', 'yes', 'yes'] for row in rows),
           f'{name}: all faces are embedded', faces)
    pages = pages_of(pdf)
    size, most = pdf.stat().st_size, 60_000 + 25_000 * (len(pages) - 1)
    tap.ok(size <= most, f'{name}: 60 kB for a page and 25 kB for each further one are enough', f'{size} bytes, {len(pages)} pages')
    tap.ok(all(abs(page[0] - width) < 0.1 and abs(page[1] - height) < 0.1 for page in pages), f'{name}: paper')
    outside = [word for number, page in enumerate(pages, 1) for shift in [lean if number % 2 else -lean] for word in page[2]
               if word[1] < margin + shift - 1 or word[3] > width - margin + shift + 1 or word[2] < 30 or word[4] > height - 20]
    tap.same(outside, [], f'{name}: every word is inside the margins')
    tap.ok(smallest_type(pdf) >= 7.9, f'{name}: nothing is under 8 pt', smallest_type(pdf))
    for number, page in enumerate(pages, 1):
        text = plain(pdf, number)
        has = all(line in text for line in caution or CAUTION)
        tap.same(has, number not in bare, f'{name}: the caution is on page {number}, if it has a diagram')
        counted = f'Page {number} of {len(pages)}' in text if not each else bool(re.search(r'Page \d+ of \d+', text))
        tap.same(counted, not (cover and number == 1), f'{name}: page {number} is counted')
        body = [word for word in page[2] if 110 < word[2] < height - 100]
        tap.ok(body, f'{name}: page {number} is not empty')
    return pages


def headings_alone(pages):
    """Headings with nothing under them before the foot."""
    alone = []
    for width, height, words in pages:
        lowest = max(word[4] for word in words if word[4] < height - 95)
        alone += [word[0] for word in words if word[0] in ('Notes', 'Continued', 'Goal') and word[4] > lowest - 2
                  and word[0] != 'Notes']
    return alone


STEPS = '''play "Switchback"
  about "{about}"
  series "Motion"
  number 7
  start five-out
  ball 1
  defense man
'''


def many_steps(count, sentence='{a} passes to {b}', points=()):
    text = STEPS.format(about='Round and round.')
    for i in range(count):
        a, b = 1 + i % 2, 1 + (i + 1) % 2
        text += f'  step "Pass number {i + 1}"\n    {sentence.format(a=a, b=b)}\n'
        text += ''.join(f'    point "{point}"\n' for point in points)
    return text


def look_at_grids(folder):
    for per_page in (1, 2, 4, 6, 9):
        for paper, size in PAPERS:
            name = f'twelve steps, {per_page} a page, {paper}'
            pdf = handout(folder, name, many_steps(12), '--per-page', str(per_page), '--paper', paper)
            if pdf:
                pages = look_at(name, pdf, size)
                text = plain(pdf)
                tap.ok(all(f'Pass number {i + 1}' in text for i in range(12)), f'{name}: every step is there', text)
                tap.same(len(pages), -(-12 // per_page), f'{name}: as many pages as it takes')


def look_at_long(folder):
    """Texts far too long for a column, a page or a line lose no word."""
    long = ' '.join(f'word{i}' for i in range(450))
    pdf = handout(folder, 'long point', many_steps(2, points=[long]))
    if pdf:
        pages = look_at('long point', pdf)
        text = plain(pdf)
        tap.same([i for i in range(450) if len(re.findall(rf'\bword{i}\b', text)) != 2], [],
                 'long point: every word is there, once for each step')
        tap.ok('Continued' in text and not headings_alone(pages), 'long point: it goes on with a heading')
    about = ' '.join(f'about{i}' for i in range(60))
    title = ' '.join(f'title{i}' for i in range(14))
    pdf = handout(folder, 'long head', STEPS.format(about=about).replace('Switchback', title).replace(
        '"Motion"', '"' + 'Motion and more ' * 4 + '"') + '  step "' + 'Down and out ' * 9 + '"\n    1 passes to 2\n')
    if pdf:
        look_at('long head', pdf)
        text = plain(pdf)
        tap.ok(all(f'about{i}' in text for i in range(60)) and all(f'title{i}' in text for i in range(14)),
               'long head: every word is there', text)
    one = 'W' * 300
    pdf = handout(folder, 'one long word', many_steps(1, points=[one]))
    if pdf:
        look_at('one long word', pdf)
        tap.ok(told('pdftotext', str(pdf), '-')[1].count('W') >= 300, 'one long word: no letter is lost')


def look_at_one_long_word_everywhere(folder):
    """No letter is lost of words that no line can hold."""
    names = dict(title='W', about='Q', point='K', step='Y', series='U', date='V')
    most = {where: 100 if where == 'date' else 3000 for where in names}
    long = {where: letter * most[where] for where, letter in names.items()}
    text = STEPS.format(about=long['about']).replace('Switchback', long['title']).replace('"Motion"', f'"{long["series"]}"')
    text += f'  step "{long["step"]}"\n    1 passes to 2\n    point "{long["point"]}"\n'
    pdf = handout(folder, 'long words', text, '--date', long['date'])
    if pdf:
        look_at('long words', pdf)
        read = told('pdftotext', str(pdf), '-')[1]
        for where, letter in names.items():
            tap.ok(read.count(letter) >= most[where], f'long words: no letter of the {where} is lost', read.count(letter))


def look_at_room(folder):
    """A step or a read that has room on the page stands on it."""
    tasks = ['1 passes to 2', '1 cuts to the rim', '1 clears to left corner', '3 fills top', '5 fills left wing']
    points = ''.join(f'    point "Point {i} is long enough to take two lines of a column, or nearly so."\n' for i in range(2))
    step = '\n'.join('    ' + task for task in tasks) + '\n' + points
    text = STEPS.format(about='Round.') + '  step "One"\n' + step + '  step "Two"\n    2 passes to 3\n' + \
        '  step "Three"\n    3 passes to 5\n' + points * 2
    pdf = handout(folder, 'three steps', text)
    if pdf:
        pages = look_at('three steps', pdf)
        tap.same(len(pages), 1, 'three steps: the third has its words beside it, not a page')
    reads = '  step "Drive"\n    1 dribbles to the right elbow\n' + ''.join(
        f'    read {seen}\n      1 passes to {to}\n' for seen, to in (('x2 sags', 2), ('otherwise', 3)))
    pdf = handout(folder, 'two reads', STEPS.format(about='Two.') + reads)
    if pdf:
        pages = look_at('two reads', pdf)
        left = [word[1] for word in pages[0][2] if word[0] in ('1a', '1b')]
        tap.same(sorted(round(x) for x in left), [54, 320], 'two reads: each has half of the page')


def look_at_discs(folder):
    """On one player's page every sentence keeps its number: beside the job, or before the sentence."""
    text = STEPS.format(about='Two.') + '  step "Go"\n    1 passes to 2\n    1 cuts to the rim\n    3 fills top\n'
    for who, own in ((1, ['1', '2']), (3, ['3']), (4, [])):
        pdf = handout(folder, f'discs for {who}', text, '--for', str(who))
        if pdf:
            words = pages_of(pdf)[0][2]
            job = [word for word in words if word[0] == 'job']
            beside = [word[0] for word in words if job and word[1] > job[0][3] and word[1] < job[0][3] + 60
                      and abs(word[2] - job[0][2]) < 4]
            tap.same(beside, own, f'discs for {who}: the numbers of the job')
            starts = [word[0] for word in words if word[1] < 62 and job and word[2] > job[0][2] and word[0] in '123'
                      and word[4] < 700]
            tap.same(sorted(own + starts), ['1', '2', '3'], f'discs for {who}: every number once')


def look_at_cautions(folder):
    own = 'Mats under both baskets are pushed back first.'
    for level in ('u12', 'u16 girls'):
        text = many_steps(6).replace('  start', f'  level {level}\n  caution "{own}"\n  start', 1)
        pdf = handout(folder, f'caution {level}', text)
        if pdf:
            pages = look_at(f'caution {level}', pdf)
            for number in range(1, len(pages) + 1):
                page = plain(pdf, number)
                tap.ok(own in page, f'caution {level}: the coach\'s own line is on page {number}', page)
                tap.same('local rules may bar zone defense' in page, level == 'u12',
                         f'caution {level}: what the age adds, page {number}')
    lines = ''.join(f'  caution "Own line {i} of a coach who has very much to say about all this."\n' for i in range(12))
    pdf = handout(folder, 'many cautions', many_steps(2).replace('  start', lines + '  start', 1))
    if pdf:
        look_at('many cautions', pdf)
        text = plain(pdf)
        tap.ok(all(f'Own line {i} of' in text for i in range(12)), 'many cautions: every line is there', text)


def look_at_examples(folder):
    pdf = handout(folder, 'kites', KITES, '--date', 'Oct 12')
    if pdf:
        look_at('kites', pdf)
        text = plain(pdf)
        for words in ('LARKSPUR KITES', 'Players’ sheet, under 16 girls', 'Oct 12', 'Motion, number 1',
                      'Step 1: what x3 does decides what 3 does', 'Pass and cut', '1 passes to 2.'):
            tap.ok(words in text, f'kites: says {words}', text)
        tap.ok('CreationDate' not in told('pdfinfo', str(pdf))[1], 'kites: no time of day gets in')
        outline = told('qpdf', '--json', '--json-key=outlines', str(pdf))[1]
        for words in ('Tollgate', 'Lantern', 'Pass and cut'):
            tap.ok(words in outline, f'kites: {words} is a bookmark', outline)
    for who, name in (('3', 'player 3'), ('1', 'player 1')):
        pdf = handout(folder, name, KITES, '--for', who)
        if pdf:
            look_at(name, pdf)
            text = plain(pdf)
            tap.ok('Your job' in text and f'Player’s sheet for {who}' in text, f'{name}: is told the job', text)
            tap.ok('what you do' in text or who != '3', f'{name}: reads speak to the reader', text)
            tap.ok('Imke' not in text and 'Wren' not in text, f'{name}: nobody is named unasked', text)
    spots = 'team "Kites"\n  1 "Imke Dorn"\n  1 "Ada Quill"\n  lineup "Small" 1 "Ada Quill"\n'
    pdf = handout(folder, 'who has the spot', spots + many_steps(1).replace('\n', '\n  lineup "Small"\n', 1), '--for', '1', '--names')
    tap.ok(pdf and 'Player’s sheet for 1, Ada' in plain(pdf), 'who has the spot: it is hers in that play')
    pdf = handout(folder, 'a reserve', spots.replace('  lineup "Small" 1 "Ada Quill"\n', '') + many_steps(1), '--for', 'Ada Quill', '--names')
    text = plain(pdf) if pdf else ''
    tap.ok('Player’s sheet for 1, Ada Quill' in text and '1 Ada.' in text and 'Imke' not in text, 'a reserve: her spot is hers on her page', text)
    for play in sorted((pathlib.Path(EXAMPLES) / 'topics').glob('*.play')):
        pdf = handout(folder, play.stem, play)
        if pdf:
            look_at(play.stem, pdf, A4 if 'paper a4' in play.read_text() else LETTER)


PLAN_CAUTION = ('Walk it first; less contact for young players', 'Head hit, faint or chest pain: stop, get help',
                'Local rules, league, medical staff come before this plan.')


def sheet(folder, command, name, text, *words):
    """Writes a sheet of a text (or a file); its path, or None."""
    play = text
    if not isinstance(text, pathlib.Path):
        play = folder / f'{name}.play'
        play.write_text(text)
    out = folder / f'{name}.pdf'
    status, said = told(PROGRAM, command, str(play), '-o', str(out), *words)
    return out if tap.ok(status in (0, 1) and out.exists(), f'{name}: is written', f'{status}: {said}') else None


def look_at_practices(folder):
    for paper, size, times in (('letter', LETTER, '5:30 to 6:45 PM'), ('a4', A4, '17:30 to 18:45')):
        pdf = sheet(folder, 'practice', f'tuesday {paper}', KITES, '--title', 'Week 3, Tuesday', '--paper', paper, '--date', 'Oct 13')
        if pdf:
            look_at(f'tuesday {paper}', pdf, size, PLAN_CAUTION)
            text = plain(pdf).replace('\xa0', ' ')
            for words in (times, 'Practice plan, under 16 girls', 'Floor dry. AED, phone and injured list checked.',
                          'Lantern against man', 'South basket: Two counts', 'fits the time booked', 'Groups of 4', 'Oct 13',
                          'Longest gap between water breaks: 25 min.', 'none back to back', 'Goal: 8 right reads of 10'):
                tap.ok(words in text, f'tuesday {paper}: says {words}', text)
    items = ''.join(f'  5 min "Station {i} of a long evening, told in words that go on for a while and then some more"\n'
                    for i in range(60))
    pdf = sheet(folder, 'practice', 'long evening', f'practice "Long evening"\n  lasts 240 min\n{items}')
    if pdf:
        pages = look_at('long evening', pdf, LETTER, PLAN_CAUTION)
        text = plain(pdf).replace('\xa0', ' ')
        tap.ok(len(pages) > 1 and all(f'Station {i} of' in text for i in range(60)), 'long evening: every item is there', text)
        tap.ok('60 min more than the time booked' in text, 'long evening: says by how much it is over', text)
        tap.ok(all('Clock Min What' in plain(pdf, i + 1) for i in range(len(pages))), 'long evening: every page has its columns')
    wide = 'practice "' + 'Every word of it ' * 12 + '"\n  about "' + 'And a line about it. ' * 40 + '"\n  5 min water\n'
    pdf = sheet(folder, 'practice', 'wide title', wide)
    if pdf:
        look_at('wide title', pdf, LETTER, PLAN_CAUTION)
        tap.same(plain(pdf).count('And a line about it.'), 40, 'wide title: all of the line about it is there')
    swing = '  step "{0}"\n    1 passes to 2\n  step "{1}"\n    5 screens for 3\n    3 comes off 5 to the top\n'
    play = 'play "Tollgate"\n  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left block\n  ball 1\n'
    plan = play + swing.format('Entry', 'Screen away') + 'practice "Over"\n  lasts 20 min\n  20 min play "Tollgate"\n  5 min cool-down\n'
    pdf = sheet(folder, 'practice', 'steps', plan + '  stations 4 min, change every 2 min\n    station "side" "free throws"\n    station "top" "Shots." with "guards"\n')
    text = plain(pdf) if pdf else ''
    tap.ok('1 Entry' in text and '2 Screen away' in text, 'practice, steps: where there is room each step has its picture', text)
    tap.ok('Side: Free throws' in text, 'practice, steps: a station begins with a capital', text)
    tap.ok('Top: Shots. With guards' in text, 'practice, steps: a sentence that has its stop gets no other', text)
    drills = ''.join(f'drill "Round {name}"\n  start 1 top, 2 right wing\n  ball 1\n  step "Pass"\n    1 passes to 2\n' for name in 'abc')
    for count in (1, 3):
        stations = ''.join(f'    station "place {name}" drill "Round {name}"\n' for name in 'abc'[:count])
        what = f'practice, {count} pictured station{"s" if count > 1 else ""}'
        pdf = sheet(folder, 'practice', what, drills + f'practice "Stations"\n  lasts 12 min\n  stations {4 * count} min, change every 4 min\n{stations}    station "side" "free throws"\n')
        if pdf:
            look_at(what, pdf, LETTER, PLAN_CAUTION)
            text = plain(pdf)
            tap.ok(all(text.count(f'Place {name}') == 2 for name in 'abc'[:count]) and text.count('Side') == 1,
                   f'{what}: each of a drill has its picture under its name', text)
    pdf = sheet(folder, 'practice', 'many plays', plan + '  20 min play "Tollgate"\n' * 4)
    text = plain(pdf) if pdf else ''
    tap.ok('1 Entry' not in text and text.count('2 of 2 Screen away') == 5,
           'practice, many plays: the screen is shown, not the entry, and that there is more', text)
    whole = sheet(folder, 'practice', 'all practices', KITES)
    if whole:
        text = plain(whole)
        tap.ok(text.count('Page 1 of 1') == 2, 'all practices: each counts its own pages', text)


def look_at_tallies(folder):
    for paper, size in PAPERS:
        pdf = sheet(folder, 'chart', f'tally {paper}', KITES, '--play', 'Sluice', '--paper', paper)
        if pdf:
            look_at(f'tally {paper}', pdf, size)
            text = plain(pdf)
            for words in ('Tally sheet', '1 waits until 5 is still', 'Points on the trip', '1 #4', 'By player',
                          '1d x1 and x5 switch: Slip', 'Times', 'Charted by'):
                tap.ok(words in text, f'tally {paper}: says {words}', text)
            tap.ok('Imke' not in text, f'tally {paper}: nobody is named unasked', text)
    ferry = 'team "Kites"\n' + ''.join(f'  {(n - 1) % 5 + 1} "P{n} Venn", jersey {n}\n' for n in range(1, 10)) \
        + 'play "Ferry"\n  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left block\n  ball 1\n  defense man\n  step "Bring it"\n' \
        '    5 ball screens for 1\n    chart set "Screen set before 1 moves"\n    read x5 drops "Pull up"\n      1 dribbles off 5 to right elbow\n' \
        '    read x5 hedges "Slip"\n      5 slips to the rim\n      1 passes to 5\n'
    for paper, size in PAPERS:
        pdf = sheet(folder, 'chart', f'tally, nine players, {paper}', ferry, '--paper', paper)
        pages = look_at(f'tally, nine players, {paper}', pdf, size) if pdf else []
        tap.ok(len(pages) == 1, f'tally, nine players, {paper}: the reads stand on the page of the players', str(len(pages)))
        tap.ok(pdf and 'Set Pull up Slip 1 #1' in plain(pdf), f'tally, nine players, {paper}: a player is counted by what charted takes', pdf and plain(pdf))
    short = many_steps(1) + '    chart set "Screen set"\n'
    pdf = sheet(folder, 'chart', 'tally, typed in', short)
    tap.ok(pdf and '"Switchback" set ____ of ____' in plain(pdf) and '"Switchback" points ____ in ____' in plain(pdf),
           'tally, typed in: the lines of charted stand there to be typed', pdf and plain(pdf))
    (folder / 'typed.play').write_text(short + 'charted 2026-11-17 game "Dunmore"\n  "Switchback" set 6 of 11\n  "Switchback" points 7 in 11\n')
    status, said = told(PROGRAM, 'check', str(folder / 'typed.play'))
    tap.ok('error:' not in said, 'tally, typed in: and are read back', said)
    pdf = sheet(folder, 'chart', 'tally, names', KITES, '--play', 'Sluice', '--names')
    tap.ok(pdf and 'Imke #4' in plain(pdf) and 'Dorn' not in plain(pdf), 'tally, names: first names, with jerseys, when they are asked for')
    named = 'team "Kites"\n  1 "Wilhelmina-Katharina-Leopoldina Dorn" guard, jersey 4\n  5 "Wilhelmina-Katharina-Leopoldina Dorn", jersey 4\n' \
        + ''.join(f'  2 "P{n} Venn", jersey {n}\n' for n in range(20, 36)) + many_steps(1) + '    chart set "Screen set"\n'
    pdf = sheet(folder, 'chart', 'long name', named, '--names')
    text = plain(pdf) if pdf else ''
    tap.ok('1/5 Wilhelmina-Katharina- Leopoldina #4' in text and text.count('#4') == 1, 'long name: on two lines, and a player with two spots once', text)
    tap.ok(all(f'P{n} #{n}' in text for n in range(20, 36)), 'long name: however many they are', text)
    lines = ''.join(f'    chart word{chr(97 + i)} "What is to be seen number {i} and told at some length"\n' for i in range(24))
    pdf = sheet(folder, 'chart', 'long tally', many_steps(1) + lines)
    if pdf:
        pages = look_at('long tally', pdf)
        text = plain(pdf)
        tap.ok(all(f'number {i} and' in text for i in range(24)) and len(pages) > 2, 'long tally: every line is there', text)
        tap.ok(all(f'Word{chr(97 + i)}' in text for i in range(24)), 'long tally: every word has its column', text)


def look_at_trends(folder):
    for paper, size, days in (('letter', LETTER, 'Nov 10 to Nov 21'), ('a4', A4, '10 November to 21 November')):
        pdf = sheet(folder, 'trend', f'trend {paper}', KITES, '--play', 'Lantern', '--paper', paper)
        if pdf:
            look_at(f'trend {paper}', pdf, size)
            text = plain(pdf).replace('\xa0', ' ')
            # 46 of 69: 66.7 %; Wilson at 90 %, reckoned by hand: 0.5683 to 0.7515
            for words in (days, 'Trend, coach only', '67% 46 of 69', '(57–75)', 'One date so far', 'No change seen',
                          '0.82 23 in 28', 'Read: Curl'):
                tap.ok(words in text, f'trend {paper}: says {words}', text)
    days = ''.join(f'charted 2026-{10 + i // 28:02}-{i % 28 + 1:02} {"game" if i % 3 else "practice"}\n'
                   f'  "Switchback" set {i % 12} of 12 by "Player {i % 9}"\n' for i in range(60))
    pdf = sheet(folder, 'trend', 'long trend', many_steps(1) + '    chart set "Screen set"\n' + days)
    if pdf:
        look_at('long trend', pdf)
        tap.ok(all(f'Player {i}' in plain(pdf) for i in range(9)), 'long trend: every player is there')
    day = many_steps(1) + '    chart set "Screen set"\n' + ''.join(
        f'charted 2026-10-01 {what}\n  "Switchback" set {made} of 20\n' for what, made in (('practice', 5), ('game', 19)))
    pdf = sheet(folder, 'trend', 'one day', day)
    tap.ok(pdf and 'One date so far' in plain(pdf), 'one day: practice and game of a day are no change')
    years = many_steps(1) + '    chart set "Screen set"\n' + ''.join(
        f'charted {year}-12-10 film\n  "Switchback" set {made} of 20\n' for year, made in ((2024, 2), (2025, 18)))
    pdf = sheet(folder, 'trend', 'years', years)
    tap.ok(pdf and 'Dec 10, 2024 to Dec 10, 2025' in plain(pdf).replace('\xa0', ' '), 'years: dates of two years say which')
    team = many_steps(1) + '    chart set "Screen set"\ncharted 2026-10-01 game\n  "Switchback" set 9 of 14\n'
    for parts, all_of in ((((4, 6), (5, 8)), '9 of 14'), (((4, 6), (5, 9)), '18 of 29')):
        rows = ''.join(f'  "Switchback" set {made} of {of} by "Player {i}"\n' for i, (made, of) in enumerate(parts))
        text = plain(sheet(folder, 'trend', 'parts', team + rows)).replace('\xa0', ' ')
        tap.ok(all_of in text and '4 of 6' in text, f'parts: {parts} of 9 of 14 by two players are {all_of}', text)
    few = many_steps(1) + '    chart set "Screen set"\ncharted 2026-10-01 game\n  "Switchback" set 4 of 8 by 3\n' \
        'charted 2026-10-09 game\n  "Switchback" set 8 of 9\n'
    pdf = sheet(folder, 'trend', 'few', few)
    if pdf:
        look_at('few', pdf)
        tap.same(plain(pdf).count('Too few to tell'), 2, 'few: it says that they are too few, in all and by player')
    look_at_points(folder)


def look_at_points(folder):
    """Points a trip have an interval, and their players; each page of a long one has its dates."""
    book = 'team "Kites"\n  1 "Imke" guard\n' + many_steps(1) + ''.join(
        f'charted 2026-10-{day:02} game\n  "Switchback" points 9 in 10\n  "Switchback" points 6 in 5 by "Imke"\n'
        for day in (1, 9))
    pdf = sheet(folder, 'trend', 'points', book)
    if pdf:
        text = plain(pdf).replace('\xa0', ' ')
        # 18 points are 6 threes of 20: Wilson at 90 %, reckoned by hand: 0.1626 to 0.4853
        for words in ('(0.5–1.5)', 'By player: Points a trip', '12 in 10', 'to Oct 1: 9 in 10'):
            tap.ok(words in text, f'points: says {words}', text)
    names = [f'w{i}' for i in range(12)]
    rows = ''.join(f'  "Switchback" {name} 8 of 12\n' for name in names)
    long = many_steps(1) + ''.join(f'    chart {name} "What {name} is"\n' for name in names) + ''.join(
        f'charted 2026-11-{day:02} game\n{rows}' for day in (3, 24))
    pdf = sheet(folder, 'trend', 'many curves', long)
    for page in (1, 2):
        text = plain(pdf, page).replace('\xa0', ' ')
        tap.ok('By date' in text and len(re.findall(r'^(?:Nov )?3 24|Nov 3|Nov 24', text, re.M)) > 0,
               f'many curves: page {page} has dates', text)


def look_at_lineups(folder):
    """Who has a spot on the roster, and another in the play's lineup, is told so."""
    team = 'team "Kites"\n  1 "Imke" guard, jersey 4\n  1 "Juno" guard, jersey 5\n  2 "Lio" guard, jersey 6\n' \
        '  lineup "Small" 1 "Juno", 2 "Lio"\n'
    book = team + 'play "Sluice"\n  lineup "Small"\n  start five-out\n  defense man\n  1 passes to 2\n'
    for name, stands_in in (('Imke', True), ('Juno', False)):
        pdf = handout(folder, f'lineup {name}', book, '--for', name)
        text = plain(pdf).replace('\xa0', ' ') if pdf else ''
        tap.same(('standing in as 1' in text, 'Your part' in text and '#5 as 1, not you' in text, 'Your job' in text),
                 (stands_in, stands_in, not stands_in), f'lineup: {name} is told whose job it is')
    twins = 'team "Kites"\n  1 "Imke" guard, jersey 4\n  1 "Imke" guard, jersey 7\n' \
        'play "Sluice"\n  start five-out\n  1 passes to 2\n'
    told(PROGRAM, 'handout', str(written(folder, 'twins', twins)), '--for', 'Imke', '-o', str(folder / '{player}.pdf'))
    heads = [plain(folder / name).replace('\xa0', ' ') for name in ('imke.pdf', 'imke-2.pdf')]
    tap.ok('Imke #4' in heads[0] and 'Imke #7' in heads[1], 'two of one name: the jersey tells whose sheet it is')


def written(folder, name, text):
    play = folder / f'{name}.play'
    play.write_text(text)
    return play


def look_at_index(folder):
    """A tag stands there once, as on the card; a press break is no baseline play."""
    plays = (('Brk', '  start press break\n  defense press 2-2-1\n  4 inbounds to 2\n'),
             ('Quay', '  tags BLOB\n  start baseline inbounds box\n  1 cuts to top\n'),
             ('Mole', '  tags baseline\n  start baseline inbounds box\n  1 cuts to top\n'))
    text = ''.join(f'play "{name}"\n{lines}' for name, lines in plays)
    pdf = sheet(folder, 'book', 'index', text)
    index = plain(pdf, len(pages_of(pdf))).replace('\xa0', ' ') if pdf else ''
    tap.ok('By tag Baseline Quay 4, Mole 5 Press Brk 3' in index,
           'index: a tag stands once, as on the card', index)
    pdf = sheet(folder, 'card', 'situations', text)
    text = plain(pdf) if pdf else ''
    tap.same((text.count('Press'), text.count('Baseline')), (1, 2), 'card: a press break is grouped as that')


def boxes_of(pages):
    return [word for page in pages for word in page[2]]


TWO_LONG = '''play "Loomgate"
  about "Swing the ball, screen behind, screen down."
  start 1 right slot, 2 left slot, 3 right corner, 4 left corner, 5 right block
  ball 1
  defense man
  step "Swing and flex"
    1 passes to 2
    5 back screens for 3
    3 cuts off 5 to the left block
    then 1 down screens for 5
    5 comes off 1 to right slot
    1 goes to right corner
  step "Other side"
    2 passes to 5
    3 back screens for 4
    4 cuts off 3 to the right block
    then 2 down screens for 3
    3 comes off 2 to left slot
    2 goes to left corner
'''

DOVETAIL = '''play "Dovetail"
  start 1 top, 2 right corner, 3 left corner, 4 left wing, 5 right elbow
  ball 1
  defense man
  step "Set it up"
    5 ball screens for 1 at the top
    1 dribbles off 5 to right elbow
    2 lifts to right wing
    read x5 drops "Pull up"
      1 shoots
      5 rolls to the rim
    read x5 hedges "Slip"
      5 slips to the rim
      1 lobs to 5
      5 shoots
    read x1 and x5 trap 1 "Short roll"
      5 short rolls to the nail
      1 bounce passes to 5
      5 passes to 4
      4 shoots
'''


def look_at_coach(folder):
    for paper, size in PAPERS:
        pdf = sheet(folder, 'coach', f'coach {paper}', KITES, '--paper', paper, '--date', 'Oct 12')
        if pdf:
            look_at(f'coach {paper}', pdf, size, each=True)
            text = plain(pdf).replace('\xa0', ' ')
            for words in ('Coach’s sheet, under 16 girls', 'Timing', 'Set screens have a heavy edge.', 'With 1a.', 'Common mistakes',
                          '3 leaves before 5 is still.', 'Step 1: what x3 does decides what 3 does', '3 curls off 5 to the nail.', 'Oct 12',
                          'the screen is set at', 'the cut passes at', '’s hand by'):
                tap.ok(words in text, f'coach {paper}: says {words}', text)
    drill = sheet(folder, 'coach', 'coach, drill', KITES, '--play', 'Out of the corner')
    if drill:
        text = plain(drill).replace('\xa0', ' ')
        tap.ok('flash to the nail' in text and not re.search(r'flash to the nail of (?!the)|cut to the right (?!corner|wing)', text),
               'coach: what is shortened on the strip does not end in the middle of a place', text)
        tap.ok(re.search(r'in 8 seconds\. As drawn the ball is over half court after \d\.\d s\.', text), 'coach: what a goal in seconds takes', text)
        tap.ok('looks for x' not in text and 'heavy edge' not in text and '4 stays out of bounds.' in text,
               'coach: nobody is watched where nobody defends, no edge is told of where no screen is', text)
    players = sheet(folder, 'handout', 'players, drill', KITES, '--play', 'Out of the corner')
    wren = sheet(folder, 'handout', 'a player, drills', KITES, '--for', 'Wren Castell')
    text = plain(wren) if wren else ''
    tap.ok('you take each in turn: 1 and 2. Wait in the line behind 1' in text and 'After 1 you are last in the line' in text,
           'a player, drills: the numbers are spots that go round, as the drill has it', text)
    third = sheet(folder, 'handout', '3, drill', KITES, '--play', 'Out of the corner', '--for', '3')
    tap.ok(third and 'When you are 3' in plain(third) and 'Your job' not in plain(third), '3, drill: nobody is it for good', third and plain(third))
    tap.ok(players and 'As drawn' not in plain(players), 'players: a goal is what the coach wrote')
    told_of = sheet(folder, 'coach', 'coach, tolerance', KITES, '--play', 'Floodgate', '--tolerance')
    if told_of:
        look_at('coach, tolerance', told_of, each=True)
        text = plain(told_of).replace('\xa0', ' ')
        tap.ok(len(re.findall(r'Timing held in \d+ of 100 computer runs', text)) >= 2 and 'tightest: ' in text and 'may pick off' in text,
               'coach, tolerance: how often, what is tightest, and what goes wrong', text)
    none = sheet(folder, 'coach', 'coach, room', KITES, '--play', 'Weathervane')
    if none:
        text = plain(none)
        tap.ok('Notes' in text and 'computer runs' not in text, 'coach: what is left of a page is for notes; nobody asked how often', text)
    late = 'play "Crossing"\n  level u16 girls\n  start 1 top, 2 right wing, 3 left corner, 4 at 4 ft above right wing, 5 left elbow\n' \
        '  ball 1\n  defense man\n  mistake "Everyone watches the ball."\n  point "Call the screen by name."\n  step "Crowd"\n' \
        '    5 down screens for 3\n    3 curls off 5 to the rim early\n    1 passes to 2\n    mistake "3 runs first."\n'
    pdf = sheet(folder, 'coach', 'crossing', late)
    if pdf:
        pages = look_at('crossing', pdf)
        text = plain(pdf).replace('\xa0', ' ')
        tap.same(text.count('You are gone before 5 is set'), 1, 'crossing: a finding is told once')
        tap.ok('Check these' in text and '2 and 4 stand 4 ft apart; keep 9 ft or more.' in text, 'crossing: a finding has its figures', text)
        tap.ok('waits for 5: the screen is set' not in text, 'crossing: a figure that is a finding is not told again', text)
        tap.ok('Everyone watches the ball.' in text and '3 runs first.' in text and 'Call the screen by name.' in text,
               'crossing: mistakes and points are there', text)
        squares = [word[0] for word in boxes_of(pages) if word[0] in ('A', 'B')]
        tap.same(sorted(squares), ['A', 'A', 'B', 'B'], 'crossing: a letter on the floor, the same before its text')
    for count in (1, 5, 12):
        pdf = sheet(folder, 'coach', f'coach, {count} steps', many_steps(count, points=('Look at the rim. ' * 12, )))
        if pdf:
            look_at(f'coach, {count} steps', pdf)
            text = plain(pdf)
            tap.ok(all(f'Pass number {i + 1}' in text for i in range(count)) and text.count('Timing') == count,
                   f'coach, {count} steps: every step has its timing', text)
            spans = re.findall(r'([\d.]+) to ([\d.]+)\ss of the play', text)
            tap.ok(len(spans) == (count if count > 1 else 0) and all(a[1] == b[0] for a, b in zip(spans, spans[1:])),
                   f'coach, {count} steps: each says where on the play\'s clock it lies', spans)
    pass_in = 'play "Brace"\n  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left block\n  ball 1\n  defense man\n' \
        '  step "Pass"\n    1 passes to 2\n'
    roll = '    option "Roll"\n      5 flashes to the nail\n      2 passes to 5\n'
    swing = '    option "Swing"\n      3 cuts to the rim\n      2 passes to 3\n'
    pdf = sheet(folder, 'coach', 'coach, room for timings', pass_in + roll + swing)
    if pdf:
        pages = look_at('coach, room for timings', pdf)
        text = plain(pdf)
        tap.ok(len(pages) == 1 and 'With 1a.' in text and 'Timing with 1b' in text and 'Timing with 1a' not in text,
               'coach: where a page has room every read has its timing, once', text)
    pdf = sheet(folder, 'coach', 'coach, three reads', DOVETAIL)
    if pdf:
        pages = look_at('coach, three reads', pdf)
        text = plain(pdf)
        tap.ok(len(pages) == 1 and 'Short roll' in text and 'Timing with' not in text,
               'coach: no page is turned for the timing of reads', (len(pages), text))
    pdf = sheet(folder, 'coach', 'coach, room in a column', KITES, '-p', 'Millrace')
    if pdf:
        pages = look_at('coach, room in a column', pdf)
        text = plain(pdf)
        tap.ok(len(pages) == 1 and len(re.findall(r'\bBall\b', text)) == 2 and 'Timing with' not in text,
               'coach: where there is room under a read its timing stands there', (len(pages), text))
    pdf = sheet(folder, 'coach', 'coach, two long steps', TWO_LONG)
    if pdf:
        pages = look_at('coach, two long steps', pdf)
        tap.same(len(pages), 1, 'coach: two long steps go on one page')
    pdf = sheet(folder, 'coach', 'coach, long words', many_steps(2, points=('K' * 2000, )) + '    mistake "' + 'Q' * 2000 + '"\n')
    if pdf:
        look_at('coach, long words', pdf)
        said = told('pdftotext', str(pdf), '-')[1]
        tap.ok(said.count('K') >= 4000 and said.count('Q') >= 2000, 'coach, long words: no letter is lost', (said.count('K'), said.count('Q')))


def look_at_fill_in(folder):
    for paper, size in PAPERS:
        for seed in ('0', '7'):
            name = f'fill-in {paper} {seed}'
            pdf = sheet(folder, 'fill-in', name, KITES, '--paper', paper, '--seed', seed, '--date', 'Oct 12')
            if pdf:
                texts = [plain(pdf, number + 1) for number in range(len(pages_of(pdf)))]
                answering = ['Fill-in sheet, answers' in text for text in texts]
                first = answering.index(True)
                bare = [first] if 'The answers begin on the next page.' in texts[first - 1] else []
                look_at(name, pdf, size, each=True, bare=bare)
                tap.ok(first % 2 == 0 and all(answering[first:]), f'{name}: the answers are together at the end, on no back of a question', answering)
                for text, answers in zip(texts, answering):
                    tap.ok(text == texts[first - 1] and bare or answers == ('in all' in text) and not (answers and 'Draw a ' in text), f'{name}: a page asks or answers', text)
                plays = [text.split('Name')[0].split('girls')[-1].strip() for text in texts[:first] if 'A line is missing' in text]
                found = ' '.join(texts[first:])
                tap.ok(len(plays) == 18 and all(play in found for play in plays), f'{name}: each play is answered under its name', (plays, found))
    pdf = sheet(folder, 'fill-in', 'fill-in Lantern', KITES, '--play', 'Lantern')
    if pdf:
        asked, answers = plain(pdf, 1) + plain(pdf, 2), plain(pdf, 3)
        for read, answer in (('1a x3 trails', '3 curls off 5 to the nail.'), ('1b x3 goes under', '3 fades off 5 to the left corner.'),
                             ('1c x3 overplays', '3 cuts behind x3 to the rim.')):
            tap.ok(read in asked, f'fill-in Lantern: asks what follows when {read}', asked)
            tap.ok(answer in answers and answer not in asked, f'fill-in Lantern: {answer} stands with the answers alone', answers)
        tap.ok(asked.count('What does 3 do? Draw a run.') == 3 and asked.count('To whom does 1 pass, and where? Draw a pass.') == 3,
               'fill-in Lantern: asks for cutter and passer at each read', asked)
        tap.ok('Curl' not in asked, 'fill-in Lantern: the name of a read gives nothing away', asked)
        tap.ok('1a x3 trails: Curl' in answers and 'of 4 points' in answers and 'of 15 points in all' in answers,
               'fill-in Lantern: what is missing is counted', answers)
    for count in (1, 5, 12):
        pdf = sheet(folder, 'fill-in', f'fill-in, {count} steps', many_steps(count))
        if pdf:
            pages = look_at(f'fill-in, {count} steps', pdf)
            text = plain(pdf)
            tap.ok(all(f'{i + 1} Pass number {i + 1} ' in text for i in range(count)) and text.count(' Draw a ') >= count,
                   f'fill-in, {count} steps: each is asked and answered', text)
            shown = [(len(re.findall(r'\bStep \d', page)), page.count('Cover from here on')) for page in map(
                lambda number: plain(pdf, number + 1), range(len(pages))) if 'Fill-in sheet, answers' not in page]
            tap.ok(sum(steps for steps, _ in shown) == count and all(covers == steps - 1 for steps, covers in shown),
                   f'fill-in, {count} steps: a line to cover along where the next one would tell how a step ends', shown)


CARD_CAUTION = 'Feet still, elbows in. Head hit: out.'


def cards_on(pages):
    """How many cards there are: each has its own caution."""
    return sum(sum(1 for word in page[2] if word[0] == 'Feet') for page in pages)


def look_at_cards(folder):
    for paper, size in PAPERS:
        for per_page in ('12', '20'):
            name = f'card {per_page} {paper}'
            pdf = sheet(folder, 'card', name, KITES, '--paper', paper, '--per-page', per_page, '--date', 'Oct 12')
            if pdf:
                pages = look_at(name, pdf, size)
                text = plain(pdf).replace('\xa0', ' ')
                tap.same(cards_on(pages), text.count(CARD_CAUTION), f'{name}: every card has the short caution')
                first = plain(pdf, 1).replace('\xa0', ' ')
                full = 'Cut along the dashes' not in first # no row is left for it
                tap.ok(first.count('Head hit: out.') == int(per_page) or full or 'too tall for what is left here' in first
                       or 'takes two places' in first, f'{name}: as many on the page as were asked for, or it says why not', first)
                tap.ok('two places' in text, f'{name}: a busy diagram is drawn wider, and it says so', text)
                for words in ('Bench card, under 16 girls', 'Lantern 1a', 'x3 trails: Curl', 'Against zone', 'Cut along the dashes', 'hand-off', 'finish'):
                    tap.ok(words in text, f'{name}: says {words}', text)
                order = [text.find(word) for word in ('Sandbar 1', 'Sandbar 2', 'Towpath 1', 'Towpath 2', 'Weathervane', 'Millrace 1', 'Causeway 1',
                                                      'Floodgate 1', 'Tollgate 1')]
                tap.ok(-1 not in order and (order == sorted(order)), f'{name}: grouped by situation', order)
                tap.ok('Pass, cut, fill' not in text, f'{name}: drills stay off it')
    for count, most in ((1, 1), (12, 1), (13, 1), (40, 2)):
        text = ''.join(f'play "Millpond {i:02}"\n  call "Stone {i:02}"\n  tags {("man", "slob", "quick, man")[i % 3]}\n'
                       '  start five-out\n  ball 1\n  1 passes to 2\n  3 cuts to the rim\n' for i in range(count))
        pdf = sheet(folder, 'card', f'{count} plays', text)
        if pdf:
            pages = look_at(f'{count} plays', pdf)
            said = plain(pdf)
            tap.same((cards_on(pages), len(pages)), (count, most), f'{count} plays: a card each, on few pages')
            tap.ok(all(f'Millpond {i:02}' in said and f'“Stone {i:02}”' in said for i in range(count)), f'{count} plays: names and calls')
            size = os.path.getsize(pdf)
            tap.ok(size < 60000 + 25000 * (len(pages) - 1), f'{count} plays: the file is small', size)
    wide = ''.join(f'play "{name}"\n  call "{call}"\n  tags "{tag}"\n  caution "{own}"\n  start five-out\n  ball 1\n  1 passes to 2\n'
                   for name, call, tag, own in (('K' * 700, 'Y' * 60, 'any tag of the coach ' * 4, 'Mind the wall.'),
                                                ('Q word ' * 80, 'Short', 'blob', 'Mind the step.')))
    pdf = sheet(folder, 'card', 'wide names', wide)
    if pdf:
        look_at('wide names', pdf)
        said = told('pdftotext', str(pdf), '-')[1]
        tap.ok(said.count('K') >= 700 and said.count('Y') >= 60 and said.count('Q') >= 80, 'wide names: no letter is lost')
        tap.ok('Names in full' in said and 'Mind the wall.' in said and 'Mind the step.' in said, 'wide names: they stand in full')


def outline_of(pdf):
    """Bookmarks as (depth, title, page)."""
    def walk(nodes, depth):
        for node in nodes:
            yield depth, node['title'], node['destpageposfrom1']
            yield from walk(node['kids'], depth + 1)
    return list(walk(json.loads(told('qpdf', '--json', '--json-key=outlines', str(pdf))[1])['outlines'], 0))


def links_of(pdf):
    """For each page its links: what they cover and the name of the place they lead to."""
    objects = json.loads(told('qpdf', '--json=1', '--json-key=objects', '--json-key=pages', '--decode-level=none', str(pdf))[1])
    found = []
    for page in objects['pages']:
        links = objects['objects'][page['object']].get('/Annots', [])
        if isinstance(links, str):
            links = objects['objects'][links]
        rows = [objects['objects'][link] if isinstance(link, str) else link for link in links]
        found.append([(row['/Rect'], row.get('/Dest', row.get('/A', {}).get('/D'))) for row in rows if row['/Subtype'] == '/Link'])
    return found


def labels_of(pdf):
    """What the first page of each run of labels is called: (page from 0, its label)."""
    rows = json.loads(told('qpdf', '--json', '--json-key=pagelabels', str(pdf))[1])['pagelabels']
    return [(row['index'], row['label'].get('/P', '').removeprefix('u:') + (str(row['label']['/St']) if '/S' in row['label'] else ''))
            for row in rows]


def small_png(width, height):
    """A PNG of one color."""
    def part(kind, body):
        return struct.pack('>I', len(body)) + kind + body + struct.pack('>I', zlib.crc32(kind + body))
    rows = (b'\0' + b'\x20\x40\x80' * width) * height
    return (b'\x89PNG\r\n\x1a\n' + part(b'IHDR', struct.pack('>IIBBBBB', width, height, 8, 2, 0, 0, 0)) +
            part(b'IDAT', zlib.compress(rows)) + part(b'IEND', b''))


def look_at_books(folder):
    drill = 'book "Ropes"\ndrill "Bollard"\n  start 1 top, 2 right wing\n  ball 1\n  step "Over"\n    1 passes to 2\n'.replace('book', 'playbook', 1)
    pdf = sheet(folder, 'book', 'book of a drill', drill)
    if pdf:
        places = told('pdfinfo', '-dests', str(pdf))[1]
        tap.ok('"index"' in places or 'Index' not in plain(pdf, 2), 'book of a drill: no line leads to an index that is not there', plain(pdf, 2))
    long = 'play "' + 'N' * 200 + '"\n  start 1 top, 2 right wing, 3 left wing\n  ball 1\n  step "Over"\n    1 passes to 2\n  step "Back"\n    2 passes to 1\n'
    pdf = sheet(folder, 'fill-in', 'answers under a long name', long + long.replace('N' * 200, 'Capstan'))
    if pdf:
        answers = plain(pdf, len(pages_of(pdf)))
        tap.ok('Answers' in answers and 0 < answers.split('Answers', 1)[1].count('N') < 200, 'fill-in: a name too long is shortened over the answers', answers)
    for paper, size, lean, more in (('letter', LETTER, 0, ()), ('a4', A4, 13.5, ('--two-sided', '--crest', str(KITES.with_suffix('.svg'))))):
        name = f'book {paper}'
        pdf = sheet(folder, 'book', name, KITES, '--paper', paper, '--date', 'Oct 12', *more)
        if not pdf:
            continue
        count = len(pages_of(pdf))
        pages = look_at(name, pdf, size, lean=lean, bare=(2, count), cover=True)
        contents = plain(pdf, 2).replace('\xa0', ' ')
        index = plain(pdf, count).replace('\xa0', ' ')
        outline = outline_of(pdf)
        tops = [(title, page) for depth, title, page in outline if depth == 1]
        tap.ok(len(tops) == 18 and ('Lantern', 4) in tops, f'{name}: every play is a bookmark in its chapter', tops)
        tap.same([title for depth, title, _ in outline if depth == 0],
                 ['Contents', 'Motion', 'When we need a basket', 'Out of bounds', 'Zones and presses', 'Drills', 'Index'],
                 f'{name}: contents, chapters and index are bookmarks')
        tap.ok((2, '1  Pass and cut', 3) in outline, f'{name}: a step is a bookmark', outline)
        for title, page in tops:
            tap.ok(plain(pdf, page).replace('\xa0', ' ').find(title) >= 0, f'{name}: {title} is on page {page}')
            tap.ok(re.search(rf'{re.escape(title)} .*?\b{page}\b', contents), f'{name}: the contents lead to {title}', contents)
        tap.ok('Back cut' in index and 'Lantern 4' in index and 'Five-out' in index and 'Late clock' in index and 'Player 3 screens' in index,
               f'{name}: the index has actions, formations, tags and players', index)
        place_of = {}
        for line in told('pdfinfo', '-dests', str(pdf))[1].splitlines()[1:]:
            place_of[line.rsplit('"', 2)[1]] = int(line.split()[0])
        links = links_of(pdf)
        unknown = [link for page in links for link in page if link[1] not in place_of]
        tap.same(unknown, [], f'{name}: every link leads to a place there is')
        first = {f'play-{i + 1}': page for i, (_, page) in enumerate(tops)}
        tap.same({key: value for key, value in place_of.items() if key.startswith('play-')}, first, f'{name}: places are where the plays are')
        tap.same({link[1] for link in links[1]}, set(first) | {'index'}, f'{name}: the contents have a link to every play')
        tap.ok(set(first) == {link[1] for link in links[-1]}, f'{name}: the index has a link to every play')
        tap.ok(all('contents' in [link[1] for link in page] for page in links[2:-1]), f'{name}: every play leads back')
        beside = {title: page for title, page in tops if title in ('Lantern', 'Lantern right')}
        for title, other in (('Lantern', 'Lantern right'), ('Lantern right', 'Lantern')) if paper == 'letter' else ():  # a4 has no room left
            text = plain(pdf, beside[title]).replace('\xa0', ' ')
            tap.ok(f'{other}, page {beside[other]}: the same on the other side' in text and 'Down screen, Curl, Pop' in text,
                   f'{name}: {title} says under what it is found, and where its other side is', text)
            tap.ok(f'play-{[one for one, _ in tops].index(other) + 1}' in [link[1] for link in links[beside[title] - 1]],
                   f'{name}: {title} leads to {other}')
        inside = all(0 <= box[0] < box[2] <= size[0] + 1 and 0 <= box[1] < box[3] <= size[1] + 1 for page in links for box, _ in page)
        tap.ok(inside, f'{name}: links lie on their page')
        tap.same(labels_of(pdf), [(0, 'Cover'), (1, '2')], f'{name}: pages are labeled as they are numbered')
        info = told('pdfinfo', str(pdf))[1]
        for words in ('Larkspur Kites, Playbook', 'Playbook, under 16 girls', 'Author:'):
            tap.ok(words in info, f'{name}: metadata say {words}', info)
        size_most = 60000 + 25000 * (count - 1)
        tap.ok(os.path.getsize(pdf) <= size_most, f'{name}: the file is small', os.path.getsize(pdf))
        cover = plain(pdf, 1)
        tap.ok('14 plays, 4 drills' in cover and 'Under 16 girls' in cover, f'{name}: the cover says what is in it', cover)
    crest = folder / 'crest.png'
    crest.write_bytes(small_png(40, 30))
    pdf = sheet(folder, 'book', 'PNG on the cover', KITES, '--crest', str(crest))
    if pdf:
        look_at('PNG on the cover', pdf, bare=(2, len(pages_of(pdf))), cover=True)
        tap.ok(' 40 ' in told('pdfimages', '-list', str(pdf))[1], 'PNG on the cover: it is there')
    many = 'playbook "Larkspur Kites"\n' + ''.join(
        f'chapter "Part {i}"\n' + ''.join(
            f'play "Millpond {i}-{k} of the long row"\n  tags man, "tag {k % 7}"\n  start five-out\n  ball 1\n  1 passes to 2\n  3 back cuts\n'
            for k in range(12)) for i in range(5))
    pdf = sheet(folder, 'book', 'sixty plays', many)
    if pdf:
        count = len(pages_of(pdf))
        starts = [page for depth, title, page in outline_of(pdf) if title == 'Index']
        first = [page for depth, title, page in outline_of(pdf) if depth == 1][0]
        look_at('sixty plays', pdf, bare=tuple(range(2, first)) + tuple(range(starts[0], count + 1)), cover=True)
        tap.ok(first > 3, 'sixty plays: the contents take more than one page')
    wide = 'playbook "' + 'Kites ' * 40 + '"\nchapter "' + 'Chapter ' * 40 + '"\n' + many_steps(1).replace('Switchback', 'Q' * 400)
    pdf = sheet(folder, 'book', 'wide book', wide)
    if pdf:
        text = plain(pdf)
        tap.ok(plain(pdf, 2).count('Chapter') >= 40 and told('pdftotext', '-f', '2', '-l', '2', str(pdf), '-')[1].count('Q') >= 400,
               'wide book: the contents lose no letter')
        tap.ok(plain(pdf, 1).count('Kites') >= 40, 'wide book: nor does the cover', plain(pdf, 1))
    long = many_steps(1).replace('Switchback', ('word ' * 300).strip())
    pdf = sheet(folder, 'book', 'long name', 'playbook "Kites"\n' + long)
    if pdf:
        tap.ok(all(word[4] < 780 for page in pages_of(pdf) for word in page[2]), 'long name: the contents stay on their page')
    two = 'team "Kites"\n  1 "Imke Dorn"\n  2 "Safi Okoro"\n  2 "Ada Quill", jersey 9\n  lineup "Small" 2 "Ada Quill"\n'
    pdf = sheet(folder, 'handout', 'lineup', two + many_steps(1).replace('\n', '\n  lineup "Small"\n', 1), '--names')
    if pdf:
        tap.ok('1 Imke, 2 Ada (#9).' in ' '.join(plain(pdf).split()), "who is who has the play's lineup", plain(pdf))
    pdf = sheet(folder, 'handout', 'two of a spot', two + many_steps(1), '--names')
    if pdf:
        tap.ok('1 Imke, 2 Safi or Ada (#9).' in ' '.join(plain(pdf).split()), 'without a lineup who is who has all who have a spot', plain(pdf))
    pdf = sheet(folder, 'book', 'long title', 'playbook "' + 'Kites ' * 600 + '"\nteam "Larkspur"\n  1 "Imke Dorn"\n' + many_steps(1))
    if pdf:
        pages = pages_of(pdf)
        tap.ok(all(word[4] < 780 for page in pages for word in page[2]), 'long title: it stays on its page')
        tap.ok(plain(pdf, 2).count('Kites') >= 600, 'long title: the contents have it in full', plain(pdf, 2).count('Kites'))


def look_at_key(folder):
    pdf = handout(folder, 'key', many_steps(1))
    if pdf:
        text = plain(pdf)
        tap.ok('pass' in text and 'dribble' not in text and 'hand-off' not in text and 'where you finish' not in text,
               'key: only what the page shows', text)
        tap.ok('ball defender' in ' '.join(text.replace(' 1 ', ' ').split()), 'key: the ball and a defender come first', text[-500:])


WAYS = '''play "Culvert"
  start five-out
  ball 1
  defense man

  step "Swing"
    1 passes to 2
    option "Back"
      2 passes to 1
    option "Down"
      continue here
      2 passes to 4
  step "Go on"
    5 clears to the left block
  step "Last"
    3 fills the top
'''


def look_at_ways(folder):
    """A step says on which way it goes on; ways stand right after their own step."""
    pdf = handout(folder, 'ways', WAYS)
    if pdf:
        text = plain(pdf)
        tap.ok('Go on after 1b' in text and text.count('after 1') == 1, 'ways: step 2 goes on from the marked one', text)
        tap.ok(0 <= text.find('1a Back') < text.find('1b Down') < text.find('Go on') < text.find('3 Last'),
               'ways: they stand before the next step', text)


def look_at_gaps(folder):
    """Words keep clear of the next heading and of the key: half a line at least."""
    for reader in '12345':
        pdf = handout(folder, f'gaps for {reader}', pathlib.Path(EXAMPLES) / 'kites' / 'motion.play', '--for', reader)
        for number, (_, height, words) in enumerate(pages_of(pdf) if pdf else [], 1):
            key = min(word[2] for word in words if word[0] == 'run' and word[2] > height - 120)
            body = [word for word in words if 110 < word[2] < key - 1]
            tap.ok(key - max(word[4] for word in body) > 6, f'gaps for {reader}: the key of page {number} stands clear')
            for head in [word for word in body if word[0] == 'Again']:
                over = max(word[4] for word in body if word[4] < head[2] + 2 and word[1] < 300)
                tap.ok(head[2] - over > 8, f'gaps for {reader}: the heading of step 3 stands clear', head[2] - over)


def look_at_bytes(folder):
    first = handout(folder, 'bytes', KITES)
    again = folder / 'again.pdf'
    subprocess.run([PROGRAM, 'handout', str(KITES), '-o', str(again)], cwd='/', timeout=120, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                   env={**os.environ, 'LC_ALL': 'de_DE.UTF-8', 'TZ': 'Asia/Tokyo', 'HOME': '/nowhere'})
    tap.ok(first and first.read_bytes() == again.read_bytes(), 'the same bytes in another folder, zone and locale')


def main():
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        look_at_examples(folder)
        look_at_grids(folder)
        look_at_long(folder)
        look_at_one_long_word_everywhere(folder)
        look_at_room(folder)
        look_at_discs(folder)
        look_at_cautions(folder)
        look_at_key(folder)
        look_at_cards(folder)
        look_at_books(folder)
        look_at_coach(folder)
        look_at_fill_in(folder)
        look_at_ways(folder)
        look_at_gaps(folder)
        look_at_bytes(folder)
        look_at_practices(folder)
        look_at_tallies(folder)
        look_at_trends(folder)
        look_at_lineups(folder)
        look_at_index(folder)
    return tap.end()


sys.exit(main())
