#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Diagrams as others read them: live and print-true SVG drawn alike by librsvg, and the PDF by poppler; valid by the
DTD of SVG 1.1, no id twice in a page of many, the same bytes anywhere. Prints TAP.
Usage: pictures.py PROGRAM COMPARE EXAMPLES"""
import os
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as tree

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from tap import Tap  # noqa: E402

PROGRAM, COMPARE, EXAMPLES = (os.path.abspath(word) for word in sys.argv[1:4])
APART_MOST = 60  # millionths of the pixels: none with the same face; a numeral that is missing makes 150 or more
PDF_APART_MOST = 600  # of a print-true SVG and the PDF, whose page begins up to half a pixel off; a line that is missing makes 1500
DTD = pathlib.Path('/usr/share/xml/w3c-sgml-lib/schema/dtd/REC-SVG11-20110816/svg11.dtd')  # Debian: w3c-sgml-lib
SVG = '{http://www.w3.org/2000/svg}'
# What SVG 1.1 has of elements and attributes, as far as ours and cairo's go; aria-* and role besides.
ELEMENTS = {'svg', 'title', 'desc', 'style', 'g', 'path', 'circle', 'text', 'defs', 'symbol', 'use', 'clipPath', 'rect'}
ATTRIBUTES = {
    'svg': {'width', 'height', 'viewBox', 'version', 'class', 'role', 'aria-labelledby', 'fill', 'stroke-linejoin',
            'text-anchor', 'font-family', '{http://www.w3.org/XML/1998/namespace}lang'},
    'title': {'id'}, 'desc': {'id'}, 'style': {'type'}, 'defs': set(),
    'symbol': {'id', 'overflow'}, 'clipPath': {'id'},
    'use': {'x', 'y', '{http://www.w3.org/1999/xlink}href'},
    'text': {'x', 'y', 'font-size', 'font-weight', 'text-anchor'},
    'circle': {'cx', 'cy', 'r'}, 'path': {'d', 'style'}, 'rect': {'x', 'y', 'width', 'height', 'style'},
    'g': {'id', 'style', 'clip-path', 'clip-rule'},
}
PAINT = {'class', 'fill', 'stroke', 'stroke-width', 'stroke-linecap', 'stroke-linejoin'}
tap = Tap()


def run(*words, cwd=None, env=None):
    done = subprocess.run([PROGRAM, *words], cwd=cwd, env={**os.environ, **(env or {})}, timeout=300,
                          stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    return done.returncode, done.stdout, done.stderr.decode()


def drawn(folder, play, *words, env=None, cwd=None):
    """The files that a draw wrote, by name."""
    folder.mkdir(parents=True, exist_ok=True)
    status, _, said = run('draw', str(play), *words, '-o', f'{folder}/', env=env, cwd=cwd)
    if status not in (0, 1):
        raise SystemExit(f'draw {play} {words}: {status}\n{said}')
    return {path.name: path for path in sorted(folder.iterdir())}


def foreign_parts(root):
    """Elements and attributes that SVG 1.1 or our own rules do not have."""
    wrong = []
    for element in root.iter():
        name = element.tag.replace(SVG, '')
        if name not in ELEMENTS:
            wrong.append(name)
            continue
        allowed = ATTRIBUTES[name] | (PAINT if name in ('g', 'path', 'circle', 'text') else set())
        wrong += [f'{name} {key}' for key in element.attrib if key not in allowed]
    return wrong


def validate(folder, drawings):
    """By the DTD, which knows neither role nor aria-*: all in one go, without a network."""
    if not DTD.is_file():
        print('# no DTD of SVG 1.1 here (Debian: w3c-sgml-lib)')
        return
    folder.mkdir()
    for name, text in drawings.items():
        (folder / name).write_text(re.sub(r'\s(?:role|aria-[a-z]+)="[^"]*"', '', text))
    done = subprocess.run(['xmllint', '--noout', '--nonet', '--dtdvalid', DTD.as_uri(), *sorted(os.listdir(folder))],
                          cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.STDOUT)
    said = done.stdout.decode()
    for name in drawings:
        tap.ok(f'{name}:' not in said and f'Document {name} ' not in said, f'{name} is valid SVG 1.1', said[:2000])
    tap.ok(done.returncode == 0 and len(drawings) > 100, f'{len(drawings)} drawings are valid SVG 1.1', said[:2000])


def apart(a, b):
    done = subprocess.run([COMPARE, str(a), str(b)], stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=120)
    share, inked = (int(word) for word in (done.stdout.split() or [b'1000000', b'0']))
    return share, inked, done


def look_at_pdf(name, print_true, pdf):
    page = pdf.with_suffix('')
    subprocess.run(['pdftocairo', '-r', '216', '-png', '-singlefile', str(pdf), str(page)], check=True)
    share, inked, done = apart(print_true, f'{page}.png')
    tap.ok(done.returncode == 0 and share <= PDF_APART_MOST and inked > 10000, f'{name}: the PDF looks alike',
           f'{share} millionths apart; at most {PDF_APART_MOST} {done.stderr.decode()}')


def look_at_both(name, live, print_true):
    live_text, print_text = live.read_text(), print_true.read_text()
    for kind, text in (('live', live_text), ('print-true', print_text)):
        root = tree.fromstring(text)
        tap.same(foreign_parts(root), [], f'{name}: {kind} holds what SVG 1.1 has')
        title = root[0]
        tap.ok(title.tag == SVG + 'title' and len(title.text) > 3 and root[1].tag == SVG + 'desc' and
               len(root[1].text) > 20, f'{name}: {kind} is named and told in words', text[:600])
        tap.ok('<script' not in text and 'foreignObject' not in text and 'data:' not in text and
               'http' not in text.replace('http://www.w3.org/', ''), f'{name}: {kind} asks for nothing from outside')
    share, inked, done = apart(live, print_true)
    tap.ok(done.returncode == 0, f'{name}: librsvg draws both', done.stderr.decode())
    tap.ok(share <= APART_MOST and inked > 10000, f'{name}: live and print-true look alike',
           f'{share} millionths apart, {inked} inked; at most {APART_MOST}')
    tap.ok(len(live_text) < 16000, f'{name}: live is small', f'{len(live_text)} bytes')


def look_at_film(name, folder, text):
    """What moves, in a renderer that does not: its still, and nothing else."""
    root = tree.fromstring(text)
    kinds = {element.tag.replace(SVG, '') for element in root.iter()}
    tap.ok(kinds <= ELEMENTS | {'set', 'animate', 'animateTransform', 'line'}, f'{name}: nothing but animation is added', kinds - ELEMENTS)
    tap.ok('<script' not in text and 'href' not in text and ' on' not in ' '.join(key for element in root.iter() for key in element.attrib)
           and 'http' not in text.replace('http://www.w3.org/', ''), f'{name}: no script, and nothing from outside')
    still, moving = (part for part in root if part.get('class') in ('still', 'moving'))
    whole = folder / 'film.svg'
    whole.write_text(text)
    tree.register_namespace('', SVG[1:-1])
    root.remove(moving)
    (folder / 'still.svg').write_text(tree.tostring(root, 'unicode'))
    root.remove(still)
    (folder / 'floor.svg').write_text(tree.tostring(root, 'unicode'))
    share, inked, done = apart(whole, folder / 'still.svg')
    tap.ok(done.returncode == 0 and share == 0 and inked > 10000, f'{name}: librsvg shows the still alone', f'{share} {inked} {done.stderr.decode()}')
    tap.ok(apart(whole, folder / 'floor.svg')[0] > 1000, f'{name}: the still is seen')


def look_at_films(folder, plays):
    sizes = {}
    for play in plays:
        out = folder / play.stem
        out.mkdir(parents=True)
        status, _, said = run('animate', str(play), '-o', f'{out}/')
        tap.ok(status in (0, 1), f'{play.stem} moves', said)
        films = {path.stem: path.read_text() for path in sorted(out.iterdir())}
        for name, text in films.items():
            look_at_film(f'{play.stem} {name}', out, text)
            sizes[f'{play.stem} {name}'] = len(text.encode())
    large = [f'{name} {size}' for name, size in sorted(sizes.items(), key=lambda item: -item[1]) if size > 30000]
    print(f'# of {len(sizes)} plays that move these take more than 30 kB: {", ".join(large) or "none"}')
    tap.ok(len(large) < 0.25 * len(sizes), 'a usual play moves in less than 30 kB', large)


def ids_of(text):
    return re.findall(r'\bid="([^"]*)"', text)


def look_at_page(kind, texts):
    """Fifty drawings in one page: those there are, each with its own salt as often as it takes."""
    page = '<div>' + ''.join(texts) + '</div>'
    ids = ids_of(page)
    tap.same(len(ids), len(set(ids)), f'{len(texts)} {kind} drawings in one page share no id')
    aims = re.findall(r'(?:href="#|url\(#)([^")]*)', page)
    tap.same([aim for aim in aims if aim not in set(ids)], [], f'every reference in {kind} finds its id')
    done = subprocess.run(['xmllint', '--noout', '-'], input=page.encode(), stderr=subprocess.PIPE)
    tap.ok(done.returncode == 0, f'a page of {kind} drawings is whole XML', done.stderr.decode())


def bytes_of(folder, play, env, cwd):
    found = {}
    for kind in ('svg', 'pdf', 'png'):
        for name, path in drawn(folder / kind, play, '-f', kind, env=env, cwd=cwd).items():
            found[name] = path.read_bytes()
    for name, path in drawn(folder / 'live', play, '--text', 'live', env=env, cwd=cwd).items():
        found['live ' + name] = path.read_bytes()
    return found


def main():
    plays = sorted(pathlib.Path(EXAMPLES).rglob('*.play'))
    plays = [play for play in plays if play.parent.name == 'topics' or play.name == 'kites.play']
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        texts = {'live': [], 'print-true': []}
        drawings = {}
        for play in plays:
            live = drawn(folder / 'live' / play.stem, play, '--text', 'live')
            print_true = drawn(folder / 'print' / play.stem, play)
            tap.same(list(live), list(print_true), f'{play.stem}: the same drawings in both kinds')
            pdf = drawn(folder / 'pdf' / play.stem, play, '-f', 'pdf')
            for name in live:
                look_at_both(f'{play.stem} {name}', live[name], print_true[name])
                look_at_pdf(f'{play.stem} {name}', print_true[name], pdf[name.replace('.svg', '.pdf')])
                drawings[f'live-{play.stem}-{name}'] = live[name].read_text()
                drawings[f'print-{play.stem}-{name}'] = print_true[name].read_text()
        validate(folder / 'valid', drawings)
        look_at_films(folder / 'films', plays)
        play = pathlib.Path(EXAMPLES) / 'topics' / 'v-cut.play'
        for kind, words in (('live', ['--text', 'live']), ('print-true', [])):
            for salt in range(50):
                if len(texts[kind]) < 50:
                    drawings = drawn(folder / 'salt' / kind / str(salt), play, '--salt', str(salt), *words)
                    texts[kind] += [path.read_text() for path in drawings.values()]
            look_at_page(kind, texts[kind][:50])
        (folder / 'elsewhere').mkdir()
        here = bytes_of(folder / 'a', play, {'LC_ALL': 'C', 'TZ': 'UTC'}, EXAMPLES)
        there = bytes_of(folder / 'b', play, {'LC_ALL': 'de_DE.UTF-8', 'TZ': 'Asia/Tokyo', 'HOME': '/nowhere',
                                              'FONTCONFIG_FILE': '/nowhere/fonts.conf'}, folder / 'elsewhere')
        tap.same(sorted(here), sorted(there), 'the same files anywhere')
        for name in here:
            tap.ok(here[name] == there[name], f'the same bytes in another folder, zone and locale: {name}')
    return tap.end()


sys.exit(main())
