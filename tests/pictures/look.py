#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The look book: every diagram of some books on one HTML page at three sizes and in three themes, the worst by
`--measure` first, and again as a bad photocopier gives it; with --sheets, as PNG contact sheets made by librsvg.
Usage: look.py PROGRAM FOLDER [--sheets] [--only WORD] BOOK.play ..."""
import argparse
import html
import json
import pathlib
import re
import subprocess
import tempfile

SIZES = {'3.3in': 237.6, '2.1in': 151.2, '1.6in': 115.2}
THEMES = ('print', 'screen', 'dark')
STYLE = '''body{font:14px/1.4 sans-serif;margin:16px;background:#fff;color:#111}
section{border-top:1px solid #999;padding:8px 0;display:flex;gap:16px;flex-wrap:wrap;align-items:flex-start}
h2{font-size:15px;margin:0;width:100%} h2 small{font-weight:400} .bad{color:#a30}
p{margin:0;max-width:26em} .dark{background:#121619} .copies{display:none}
.copy svg{filter:grayscale(1) blur(.55px) brightness(.75) contrast(30)}
:checked~main .copies{display:flex;gap:16px;flex-wrap:wrap}'''


class Diagram:
    def __init__(self, book, measures):
        self.book, self.name = book, f'{measures["3.3in"]["play"]} {measures["3.3in"]["step"]}'
        self.measures, self.pictures, self.words = measures, {}, ''

    def overlaps(self, size):
        found = self.measures[size]
        return found['outside'] + sum(found['on'].values())

    def badness(self):
        """What sorts it: overlaps first, then what nearly is one."""
        hard = sum(self.overlaps(size) for size in SIZES)
        soft = sum(m['flat_crossings'] + 2 * m['wrong_sides'] + 2 * m['labels_astray'] + m['labels_left_out'] + .3 * m['labels_moved'] +
                   .1 * m['crossings'] + max(0, 2 - m.get('least_gap', 2)) for m in self.measures.values())
        return hard, soft

    def told(self):
        said = []
        for size, found in self.measures.items():
            parts = [f'{pair} {n}' for pair, n in found['on'].items() if n]
            keys = 'outside', 'flat_crossings', 'wrong_sides', 'labels_astray', 'labels_left_out'
            parts += [f'{key.replace("_", " ")} {found[key]}' for key in keys if found[key]]
            if parts:
                said.append(f'{size}: {", ".join(parts)}')
        return '; '.join(said)


def run(program, *words):
    done = subprocess.run([program, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=600)
    if done.returncode not in (0, 1):
        raise SystemExit(f'{words}: {done.returncode}\n{done.stderr.decode()}')
    return done.stdout.decode()


def inside(svg):
    """What stands in a page of others: no XML head."""
    return re.sub(r'^<\?xml[^>]*>\s*', '', svg)


def diagrams_of(program, book, number):
    measured = {size: [json.loads(line) for line in run(program, 'draw', book, '--measure', '--json', '-w', size).splitlines()]
                for size in SIZES}
    found = [Diagram(book, dict(zip(SIZES, row))) for row in zip(*measured.values())]
    for size in SIZES:
        for theme in THEMES:
            with tempfile.TemporaryDirectory() as folder:
                salt = f'{number}{size}{theme}'
                text = 'outlines' if theme == 'print' else 'live' # a third of the bytes
                run(program, 'draw', book, '-w', size, '--theme', theme, '--text', text, '--salt', salt,
                    '-o', f'{folder}/{{n}}.svg')
                files = sorted(pathlib.Path(folder).iterdir(), key=lambda path: int(path.stem))
                for diagram, path in zip(found, files):
                    diagram.pictures[size, theme] = inside(path.read_text())
    for diagram in found:
        words = re.search(r'<desc[^>]*>(.*?)</desc>', diagram.pictures['3.3in', 'print'], re.S)
        diagram.words = words.group(1).split(' Caution:')[0] if words else ''
    return found


def page(diagrams):
    parts = [f'<!doctype html><meta charset="utf-8"><title>Look book</title><style>{STYLE}</style>'
             f'<h1>Look book: {len(diagrams)} diagrams, worst first</h1>'
             '<input type="checkbox" id="copies"><label for="copies"> as photocopies too</label><main>']
    for diagram in diagrams:
        row = [f'<section><h2>{html.escape(diagram.name)} <small>{html.escape(diagram.book)}</small> '
               f'<small class="bad">{html.escape(diagram.told())}</small></h2>']
        row += [f'<div class="{theme}">{diagram.pictures[size, theme]}</div>' for theme in THEMES for size in SIZES]
        copies = ''.join(f'<div class="copy">{diagram.pictures[size, "print"]}</div>' for size in SIZES)
        copies = re.sub(r'\bid="|href="#|url\(#', lambda found: found.group() + 'c-', copies)
        parts.append(''.join(row) + f'<p>{diagram.words}</p><div class="copies">{copies}</div></section>')
    return ''.join(parts) + '</main>'


def placed(svg, x, y, scale, copied):
    root = re.match(r'<svg[^>]*>', svg).group()
    width, height = (float(re.search(rf'\b{key}="([0-9.]+)', root).group(1)) for key in ('width', 'height'))
    head = re.sub(r'\s(?:width|height)="[^"]*"', '', root)
    head = head[:-1] + f' x="{x}" y="{y}" width="{width * scale}" height="{height * scale}">'
    around = ('<g filter="url(#copier)">', '</g>') if copied else ('', '')
    return around[0] + head + svg[len(root):] + around[1], width * scale, height * scale


COPIER = '''<filter id="copier" x="0" y="0" width="1" height="1"><feColorMatrix type="saturate" values="0"/>
<feGaussianBlur stdDeviation="1.3"/><feComponentTransfer><feFuncR type="discrete" tableValues="0 0 0 1 1"/>
<feFuncG type="discrete" tableValues="0 0 0 1 1"/><feFuncB type="discrete" tableValues="0 0 0 1 1"/>
</feComponentTransfer></filter>'''


def lines_of(words, wide):
    lines = ['']
    for word in words.split():
        if len(lines[-1]) + len(word) > wide:
            lines.append('')
        lines[-1] += word + ' '
    return lines


def sheet(path, diagrams, size, theme, copied, columns, scale):
    """One PNG: diagrams in columns, each with its name and its words."""
    cell, parts, x, y, tall = SIZES[size] * scale + 24, [], 0, 0, 0
    for i, diagram in enumerate(diagrams):
        if i and i % columns == 0:
            x, y, tall = 0, y + tall + 16, 0
        text = [diagram.name] + lines_of(html.unescape(diagram.words).split(': ', 1)[-1], int(cell / 7))
        drawn, _, height = placed(diagram.pictures[size, theme], x + 8, y + 20, scale, copied)
        parts.append(f'<rect x="{x + 4}" y="{y + 18}" width="{cell - 16}" height="{height + 4}" fill="#fff"/>' + drawn)
        for n, line in enumerate(text):
            at = y + 14 if n == 0 else y + height + 24 + 13 * n
            parts.append(f'<text x="{x + 6}" y="{at}" font-size="12">{html.escape(line)}</text>')
        tall, x = max(tall, height + 28 + 13 * len(text)), x + cell
    whole = (f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" '
             f'width="{cell * columns}" height="{y + tall}"><rect width="100%" height="100%" fill="#e4ecf2"/>'
             f'{COPIER}{"".join(parts)}</svg>')
    subprocess.run(['rsvg-convert', '--unlimited', '-o', str(path)], input=whole.encode(), check=True)


def main():
    words = argparse.ArgumentParser(description=__doc__)
    words.add_argument('program')
    words.add_argument('folder', type=pathlib.Path)
    words.add_argument('books', nargs='+')
    words.add_argument('--sheets', action='store_true')
    words.add_argument('--only', default='', help='in the name of the book or the diagram')
    words.add_argument('--dirty', action='store_true', help='only where something lies on something')
    asked = words.parse_args()
    asked.folder.mkdir(parents=True, exist_ok=True)
    diagrams = [diagram for n, book in enumerate(asked.books) for diagram in diagrams_of(asked.program, book, n)
                if asked.only in f'{book} {diagram.name}']
    if asked.dirty:
        diagrams = [diagram for diagram in diagrams if diagram.badness()[0]]
    # a book that takes in another shows its plays again
    diagrams = list({(diagram.name, diagram.words): diagram for diagram in diagrams}.values())
    if asked.sheets:
        for kind, size, theme, copied, columns, scale, most in (
                ('large', '3.3in', 'print', False, 4, 1.5, 12), ('middle', '2.1in', 'print', False, 5, 1.6, 20),
                ('small', '1.6in', 'print', False, 6, 1.8, 24), ('copied', '1.6in', 'print', True, 6, 1.8, 24),
                ('dark', '3.3in', 'dark', False, 5, 1.2, 20), ('screen', '3.3in', 'screen', False, 5, 1.2, 20)):
            for n in range(0, len(diagrams), most):
                sheet(asked.folder / f'{kind}-{n // most:02d}.png', diagrams[n:n + most], size, theme, copied, columns, scale)
    diagrams.sort(key=Diagram.badness, reverse=True)
    (asked.folder / 'index.html').write_text(page(diagrams))
    bad = [diagram for diagram in diagrams if diagram.badness()[0]]
    for diagram in bad:
        print(f'{diagram.name} ({diagram.book}): {diagram.told()}')
    print(f'{asked.folder / "index.html"}: {len(diagrams)} diagrams, {len(bad)} with something on something')


main()
