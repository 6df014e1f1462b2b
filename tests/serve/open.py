#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""courtwright open: what the page is given, and how the file on the disk is read and saved. Prints TAP.
Usage: open.py PROGRAM"""
import base64
import hashlib
import json
import os
import pathlib
import re
import resource
import shutil
import signal
import socket
import stat
import subprocess
import sys
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
import client  # noqa: E402
from program import PROGRAM, Folder, run  # noqa: E402
from tap import Tap  # noqa: E402

KITES = pathlib.Path(__file__).resolve().parents[2] / 'examples' / 'kites'
tap = Tap()

LANTERN = '''play "Lantern"
  start five-out
  ball 1
  defense man
  step "Swing"
    1 passes to 2
'''
SECOND = LANTERN.replace('Lantern', 'Tollgate')
NOBODY = 65534


class Open(client.Server):
    """courtwright open FILE in a folder; asks as the page does."""

    def __init__(self, folder, name='kites.play', *words, program=PROGRAM, **more):
        super().__init__(program, 'open', name, *words, cwd=folder, stderr=subprocess.PIPE, **more)

    def __exit__(self, *_):
        if self.process.poll() is None:
            self.process.send_signal(signal.SIGINT)
        self.process.wait(20)

    def file(self, **more):
        status, _, body = self.ask('GET', 'file', **more)
        return status, json.loads(body) if body else None

    def version(self):
        return self.file()[1]['version']

    def save(self, text, version=None, query=''):
        body = text if isinstance(text, bytes) else text.encode()
        status, _, body = self.ask('PUT', 'file' + query, body, If_Match=f'"{version or self.version()}"')
        return status, json.loads(body)

    def sheet(self, query, text=LANTERN):
        status, headers, body = self.ask('POST', 'sheet?' + query, text.encode())
        return status, headers, body


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def the_page():
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        status, headers, body = server.ask()
        served = body.decode()
        tap.same((status, headers.get('content-type')), (200, 'text/html; charset=utf-8'), 'the page is served')
        status, said, _ = run('open', '--offline', 'page.html', cwd=folder)
        alone = (folder / 'page.html').read_text()
        tap.same((status, said), (0, 'page.html\n'), 'and written as a file')
        changed = (alone.replace('<!--courtwright-server-->', f'<meta name="courtwright-server" content="{server.token}">')
                   .replace("connect-src 'none'", "connect-src 'self'"))
        tap.ok(alone != changed == served, 'served it knows the server, and is else the same')
        tap.same([alone.count(mark) for mark in ('<!--courtwright-server-->', "connect-src 'none'")], [1, 1], 'each mark stands there once')
        policy = re.search(r'http-equiv="Content-Security-Policy" content="([^"]*)"', served)[1]
        tap.same(headers['content-security-policy'], policy + "; frame-ancestors 'none'", 'the policy of the page is in the header too')
        rules = dict((rule.split()[0], rule.split()[1:]) for rule in policy.split(';') if rule.strip())
        scripts = rules.get('script-src', rules.get('default-src', []))
        tap.ok("'unsafe-inline'" not in scripts and '*' not in scripts and rules.get('default-src') == ["'none'"], 'it lets in nothing by default', policy[:300])
        for script in re.findall(r'<script(?![^>]*\bsrc=)([^>]*)>(.*?)</script>', served, re.S):
            if 'application/' in script[0] or 'text/plain' in script[0]:
                continue  # not run: a block of data
            digest = base64.b64encode(hashlib.sha256(script[1].encode()).digest()).decode()
            tap.ok(f"'sha256-{digest}'" in scripts, 'a script that stands in the page is let in by its fingerprint')
        tap.ok(not re.search(r'<script[^>]*\bsrc=', served), 'no script is loaded')
        for whose in ('The courtwright authors', 'The Inter Project Authors', 'SIL OPEN FONT LICENSE Version 1.1', 'Rich Felker', '@codemirror/state', 'Marijn Haverbeke'):
            tap.ok(whose in alone, f'the licences of what is in the page stand in it: {whose}')


def reading():
    with Folder(kites='include "sets.play"\n' + LANTERN, sets=SECOND) as folder, Open(folder) as server:
        status, told = server.file()
        tap.same((status, told['name'], told['text'], told['new'], told['writable']),
                 (200, 'kites.play', 'include "sets.play"\n' + LANTERN, False, True), 'the file is read')
        tap.same(told['includes'], [{'name': 'sets.play', 'text': SECOND}], 'with what it includes')
        tap.same(server.file(If_None_Match=f'"{told["version"]}"'), (304, None), 'nothing is sent when it is the same')
        (folder / 'sets.play').write_text(SECOND + '# more\n')
        again = server.file(If_None_Match=f'"{told["version"]}"')
        tap.ok(again[0] == 200 and again[1]['includes'][0]['text'].endswith('# more\n'), 'an include that was changed is noticed')
        tap.same(server.save('include "sets.play"\n' + SECOND, told['version'])[0], 200, 'and is no quarrel')
    with Folder(kites='include "late.play"\n' + LANTERN) as folder, Open(folder) as server:
        told = server.file()[1]
        (folder / 'late.play').write_text(SECOND)
        again = server.file(If_None_Match=f'"{told["version"]}"')
        tap.same((told['includes'], again[0], again[1]['includes']), ([], 200, [{'name': 'late.play', 'text': SECOND}]),
                 'one that comes later is noticed too')
    with Folder(kites=b'\xef\xbb\xbf' + LANTERN.replace('\n', '\r\n').encode()) as folder, Open(folder) as server:
        told = server.file()[1]
        tap.same(told['text'], '\ufeff' + LANTERN.replace('\n', '\r\n'), 'line ends and a mark at the beginning are given as they are')
        server.save(told['text'])
        tap.same((folder / 'kites.play').read_bytes(), b'\xef\xbb\xbf' + LANTERN.replace('\n', '\r\n').encode(), 'and saved so')
    with Folder() as folder:
        (folder / b'caf\xe9.play'.decode('utf-8', 'surrogateescape')).write_text(LANTERN)
        with Open(folder, b'caf\xe9.play') as server:
            told = server.file()[1]
            tap.same((told['name'], server.save(SECOND, told['version'])[0]), ('caf?.play', 200), 'a name that is no UTF-8 is told as far as it can be')
    with Folder(kites='# \u2028 "\\ \x01 \U0001f3c0 \u05d0\n') as folder, Open(folder) as server:
        told = server.file()[1]
        tap.same(told['text'], '# \u2028 "\\ \x01 \U0001f3c0 \u05d0\n', 'letters of every kind come through')


def nothing_else():
    """Includes stay inside the folder; what a request names is not looked for."""
    with Folder(secret='the lineup') as outside, Folder(other=SECOND) as folder:
        (folder / 'inner').mkdir()
        (folder / 'link.play').symlink_to(outside / 'secret.play')
        text = f'include "{os.path.relpath(outside, folder)}/secret.play"\ninclude "{outside}/secret.play"\ninclude "link.play"\n' + LANTERN
        (folder / 'kites.play').write_text(text)
        with Open(folder) as server:
            status, told = server.file()
            tap.same((status, told['includes']), (200, []), 'what is outside the folder is not given')
            for path in ('../other.play', 'other.play', 'file/..%2fother.play', '%2fetc%2fpasswd', 'file?path=other.play', 'file?name=../x'):
                body = server.ask('GET', path)[2]
                tap.ok(b'Tollgate' not in body and b'root:' not in body, f'a request for {path} reads nothing else')
            typed = server.sheet('sheet=handout', 'include "other.play"\n' + LANTERN)
            tap.same(typed[0], 422, 'an include that is not saved is not read for a sheet')
            server.save('include "other.play"\n' + LANTERN)
            tap.same(server.sheet('sheet=handout', 'include "other.play"\n' + LANTERN)[0], 200, 'one that is saved is')
            tap.same(names(folder), ['inner', 'kites.play', 'link.play', 'other.play'], 'and nothing was written beside')


def saving():
    with Folder(kites=LANTERN) as folder:
        file = folder / 'kites.play'
        file.chmod(0o640)
        with Open(folder) as server:
            before = server.version()
            status, told = server.save(SECOND)
            tap.same((status, file.read_text()), (200, SECOND), 'a text is saved')
            tap.ok(told['version'] != before and told['version'] == server.version(), 'and has another version')
            tap.same(stat.S_IMODE(file.stat().st_mode), 0o640, 'with the rights it had')
            tap.same(names(folder), ['kites.play'], 'nothing stays beside it')
            tap.same(server.save('')[0], 200, 'an empty text is saved too')
            tap.same(file.read_bytes(), b'', 'as it is')
            large = ('# ' + 'x' * 97 + '\n') * 80000
            tap.same((server.save(large)[0], len(file.read_bytes())), (200, 8000000), 'and one of eight million letters')
            for what, body, version, status in (('that is not UTF-8', b'\xff\xfe', None, 400), ('with a NUL', b'a\0b', None, 400),
                                                ('with half a letter at its end', 'é'.encode()[:1], None, 400),
                                                ('with half of a pair', b'\xed\xa0\x80', None, 400),
                                                ('too large', b'x' * ((8 << 20) + 1), None, 413)):
                got, _, _ = server.ask('PUT', 'file', body, If_Match=server.version())
                tap.same(got, status, f'a text {what} is not')
            tap.same(server.ask('PUT', 'file', b'x')[0], 428, 'nor one that does not say what it was made of')
            tap.same(len(file.read_bytes()), 8000000, 'and all that left the file as it was')
        with Open(folder) as server:
            link = folder / 'link.play'
            link.symlink_to('kites.play')
        with Open(folder, 'link.play') as server:
            tap.same((server.save(LANTERN)[0], link.is_symlink(), file.read_text()), (200, True, LANTERN), 'behind a link the file is saved, and the link stays')
        os.link(file, folder / 'second.play')
        with Open(folder) as server:
            tap.same((server.save(SECOND)[0], (folder / 'second.play').read_text()), (200, SECOND), 'a file of two names is saved under both')


def quarrels():
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        file = folder / 'kites.play'
        version = server.version()
        file.write_text('# theirs\n' + LANTERN)
        status, told = server.save('# mine\n' + LANTERN, version)
        tap.same((status, told['text'], told['gone'], told['kept']), (412, '# theirs\n' + LANTERN, False, 'kites (from the page).play'),
                 'a file that was changed meanwhile is not written over')
        tap.ok('kites (from the page).play' in told['message'], 'the page is told')
        tap.same((file.read_text(), (folder / told['kept']).read_text()), ('# theirs\n' + LANTERN, '# mine\n' + LANTERN), 'and both texts are there')
        status, again = server.save('# mine, longer\n' + LANTERN, version)
        tap.same((status, again['kept'], (folder / again['kept']).read_text(), len(names(folder))), (412, told['kept'], '# mine, longer\n' + LANTERN, 2),
                 'a page that goes on trying keeps its text in the one place')
        status, mine = server.save('# mine, longer\n' + LANTERN, again['version'], '?keep=yes')
        tap.same((status, mine['kept'], file.read_text()), (200, 'kites (from the folder).play', '# mine, longer\n' + LANTERN), 'the coach takes mine')
        tap.same((names(folder), (folder / mine['kept']).read_text()), (['kites (from the folder).play', 'kites.play'], '# theirs\n' + LANTERN),
                 'theirs is kept beside, and what says nothing more is gone')
        version = server.version()
        file.write_text('# theirs again\n')
        told = server.save('# mine again\n', version)[1]
        tap.same(server.save('# theirs again, and more\n', told['version'])[0], 200, 'the coach takes theirs and goes on with it')
        tap.same((folder / told['kept']).read_text(), '# mine again\n', 'mine is still beside it')
        version = server.version()
        file.write_text('# a third time\n')
        tap.same(server.save('# mine\n', version)[1]['kept'], 'kites (from the page 2).play', 'the next quarrel does not write over that')
        version = server.version()
        file.write_text('# the same\n')
        tap.same(server.save('# the same\n', version)[0], 200, 'who wrote the same has no quarrel')
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        file, version = folder / 'kites.play', server.version()
        file.write_text('# theirs\n')
        first, second, again = (server.save(text, version, f'?page={page}')[1] for text, page in (('# mine\n', 'a'), ('# ours\n', 'b'), ('# mine 2\n', 'a')))
        tap.same([told['kept'] for told in (first, second, again)], ['kites (from the page).play', 'kites (from the page 2).play', 'kites (from the page).play'],
                 'two pages have a place each')
        tap.same([(folder / told['kept']).read_text() for told in (second, again)], ['# ours\n', '# mine 2\n'], 'and what each wrote last lies there')
        server.save('# mine 2\n', again['version'], '?page=c&keep=yes')
        tap.same(names(folder), ['kites (from the folder).play', 'kites (from the page 2).play', 'kites.play'], 'a page that was loaded anew puts its own back')
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        for made_up in ('v', '*', 'nonesuch-1', '0123-4567', ''):
            status = server.ask('PUT', 'file', b'# mine\n', If_Match=f'"{made_up}"')[0]
            tap.same((status, names(folder)), (428, ['kites.play']), f'"{made_up}" is no version: nothing is kept beside')
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        file, version = folder / 'kites.play', server.version()
        file.unlink()
        tap.same(server.file()[1]['new'], True, 'a file that was taken away is a new one')
        status, told = server.save(SECOND, version)
        tap.same((status, told['gone'], file.exists()), (412, True, False), 'and is not made again unasked')
        tap.same((server.save(SECOND, told['version'], '?keep=yes')[0], file.read_text(), names(folder)), (200, SECOND, ['kites.play']), 'but when it is asked for')
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        file, version = folder / 'kites.play', server.version()
        file.write_bytes(b'')
        status, told = server.save(LANTERN, version)
        tap.same((status, told['text'], file.read_bytes(), (folder / told['kept']).read_text()), (412, '', b'', LANTERN), 'one that was emptied is a quarrel')
        tap.ok('was emptied meanwhile' in told['message'], 'and said to be empty', told['message'])
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        file, version = folder / 'kites.play', server.version()
        file.write_bytes(b'\xff not text \0')
        tap.same(server.file()[0], 500, 'a file that became no text is told of')
        told = server.save(SECOND, version)
        tap.same(told[0], 412, 'and is not written over')
        status, mine = server.save(SECOND, told[1]['version'], '?keep=yes')
        tap.same((status, (folder / mine['kept']).read_bytes()), (200, b'\xff not text \0'), 'unless asked, and then kept to the byte')


def at_once():
    """Somebody else writes the file as soon as the page's text is in it."""
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        file, wrong = folder / 'kites.play', []
        for i in range(30):
            mine = f'# mine {i}\n'
            file.write_text('# before\n')
            version = server.version()

            def other():
                end = time.monotonic() + 5
                while file.read_text() != mine and time.monotonic() < end:
                    pass
                (folder / 'other').write_text(f'# theirs {i}\n')
                (folder / 'other').replace(file)
            thread = threading.Thread(target=other)
            thread.start()
            told = server.save(mine, version)[1]
            thread.join()
            if file.read_text() != mine and told['version'] == server.version():
                wrong.append(i)
        tap.same(wrong, [], 'who writes right behind the page is not taken for it')


def other_things():
    """Something else stands where the file was, or nothing could."""
    with Folder(kites=LANTERN) as folder, Open(folder) as server:
        file, version = folder / 'kites.play', server.version()
        for make, why in ((file.mkdir, 'it is a folder'), (lambda: os.mkfifo(file), 'it is no plain file')):
            file.rmdir() if file.is_dir() else file.unlink()
            make()
            status, told = server.save(SECOND, version)
            tap.ok(status == 507 and why in told['message'], f'where the file was: {why}', (status, told))
            tap.ok(server.file()[0] == 500 and why in server.file()[1]['message'], 'which is told when it is read, too')
    with Folder() as outside:
        folder = outside / 'season'
        folder.mkdir()
        (folder / 'kites.play').write_text(LANTERN)
        with Open(outside, 'season/kites.play') as server:
            version = server.version()
            folder.rename(outside / 'last season')
            status, told = server.file()
            tap.same((status, told['gone'], told['text'], told['writable'], told['why']),
                     (200, True, LANTERN, False, 'kites.play is gone, and its folder with it'),
                     'a file whose folder was moved is told of, with the text that lay there, and no new one')
            status, told = server.save(SECOND, version)
            tap.ok(status == 403 and 'folder' in told['message'] and names(outside) == ['last season'], 'nothing is written then', (status, told))
            (outside / 'last season').rename(folder)
            tap.same((server.file()[1]['text'], server.save(SECOND, version)[0]), (LANTERN, 200), 'moved back, it goes on')


def new_ones():
    with Folder() as folder:
        old = os.umask(0o022)
        with Open(folder, 'first.play') as server:
            told = server.file()[1]
            tap.ok(told['new'] and told['version'].startswith('none') and 'play "First Light"' in told['text'], 'a file that is not there begins with a first play')
            tap.same(names(folder), [], 'and is not there before it is saved')
            tap.same(server.save(LANTERN)[0], 200, 'then it is')
            tap.same(((folder / 'first.play').read_text(), stat.S_IMODE((folder / 'first.play').stat().st_mode)), (LANTERN, 0o644), 'with the rights of a new file')
        with Open(folder, 'second.play') as server:
            version = server.version()
            (folder / 'second.play').write_text(SECOND)
            tap.same((server.save(LANTERN, version)[0], (folder / 'second.play').read_text()), (412, SECOND), 'one that somebody else made meanwhile is not written over')
            server.process.send_signal(signal.SIGINT)
            tap.ok('is not there yet: the first save makes it' in server.process.stderr.read(), 'the terminal is told')
        os.umask(old)


def not_to_be_written():
    """As somebody who may not: root may everything, so as nobody."""
    with Folder(kites=LANTERN) as folder:
        who = {'user': NOBODY, 'group': NOBODY, 'extra_groups': []} if os.geteuid() == 0 else {}
        program = shutil.copy(PROGRAM, folder / 'program')
        folder.chmod(0o755)
        (folder / 'kites.play').chmod(0o444)
        if not who:
            folder.chmod(0o555)
        with Open(folder, program=program, **who) as server:
            told = server.file()[1]
            tap.same((told['writable'], told['text']), (False, LANTERN), 'a file that may not be written is opened to be read')
            tap.ok('cannot be saved: Permission denied' in told['why'], 'and the page is told why', told['why'])
            status, told = server.save(SECOND)
            tap.same((status, (folder / 'kites.play').read_text()), (403, LANTERN), 'it is not written')
            tap.ok('Permission denied' in told['message'], 'and said again')
            server.process.send_signal(signal.SIGINT)
            tap.ok('read only' in server.process.stderr.read(), 'the terminal is told too')
        (folder / 'kites.play').chmod(0o666)
        with Open(folder, program=program, **who) as server:
            tap.ok('its folder cannot be written in' in server.file()[1].get('why', ''), 'a folder that may not be written in neither')
        (folder / 'kites.play').chmod(0)
        done = subprocess.run([program, 'open', 'kites.play'], cwd=folder, capture_output=True, text=True, timeout=20, **who)
        tap.ok(done.returncode == 3 and 'Permission denied' in done.stderr, 'one that may not be read is not opened', done.stderr)
        folder.chmod(0o755)


def full_disk():
    with Folder(kites=LANTERN) as folder:
        limit = lambda: resource.setrlimit(resource.RLIMIT_FSIZE, (8192, 8192))
        with Open(folder, preexec_fn=limit) as server:
            status, told = server.save('# x\n' * 5000)
            tap.same((status, (folder / 'kites.play').read_text(), names(folder)), (507, LANTERN, ['kites.play']), 'where there is no room the file stays as it was')
            tap.ok('File too large' in told['message'] and 'as it was' in told['message'], 'and the page is told', told)
            tap.same((server.save(SECOND)[0], (folder / 'kites.play').read_text()), (200, SECOND), 'a smaller text goes')
            version = server.version()
            (folder / 'kites.play').write_text(LANTERN)
            status, told = server.save('# x\n' * 5000, version)
            tap.same((status, 'kept' in told, names(folder)), (412, False, ['kites.play']), 'a text that cannot be kept beside is not said to be')
            tap.ok('kept nowhere' in told['message'], 'but that it is kept nowhere')


def sheets():
    with Folder() as folder:
        for file in KITES.glob('*.play'):
            shutil.copy(file, folder)
        text = (folder / 'kites.play').read_text()
        with Open(folder) as server:
            for sheet in ('handout', 'coach', 'fill-in', 'card', 'practice', 'chart', 'trend', 'book'):
                status, headers, body = server.sheet(f'sheet={sheet}', text)
                tap.ok(status == 200 and body.startswith(b'%PDF') and headers['content-type'] == 'application/pdf' and
                       sheet in headers['content-disposition'], f'the sheet {sheet} comes as a PDF', (status, body[:200]))
            all_of_it = server.sheet('sheet=handout', text)[2]
            for query in ('reader=3', 'for=Wren%20Castell', 'paper=a4', 'play=Lantern', 'names=1', 'per-page=9', 'date=November'):
                status, _, body = server.sheet('sheet=handout&' + query, text)
                tap.ok(status == 200 and body != all_of_it, f'{query} is another one', (status, body[:200]))
            tap.same(server.sheet('sheet=handout&paper=a4', text)[2], server.sheet('sheet=handout&paper=a4', text)[2], 'the same wish, the same bytes')
            for query, why in (('sheet=nonsense', 'no such sheet'), ('', 'no such sheet'), ('sheet=handout&reader=9', 'out of its range'),
                               ('sheet=handout&reader=x', 'out of its range'), ('sheet=handout&play=Nowhere', 'no such play'),
                               ('sheet=handout&for=Nobody', 'nothing in it'), ('sheet=card&per-page=13', 'range'), ('sheet=practice&title=x', 'nothing in it')):
                status, _, body = server.sheet(query, text)
                tap.ok(status == 422 and why in body.decode(), f'"{query}" is told why not', (status, body[:200]))
            for what, broken in (('a play', text.replace('include "sets.play"', 'play "Hm"\n  start five-out\n  ball 1\n  step\n    1 pases to 2\n')), ('nothing', '')):
                status, _, body = server.sheet('sheet=handout', broken)
                tap.ok(status == 422 and json.loads(body)['message'], f'{what} with an error in it gives no sheet', (status, body[:200]))
            for sheet, wanted in (('practice', 422), ('trend', 422), ('chart', 200)):
                status, _, body = server.sheet(f'sheet={sheet}', LANTERN)
                tap.ok(status == wanted, f'{sheet}: a text without a practice, without a tally', (status, body[:200]))
            tap.same((folder / 'kites.play').read_text(), text, 'and the file is as it was')


def wrong_use():
    with Folder(kites=LANTERN, bad=b'\xff\xfe') as folder:
        (folder / 'dangling.play').symlink_to('nowhere.play')
        (folder / 'sub').mkdir()
        os.mkfifo(folder / 'pipe.play')
        for words, status, said in ((['open'], 2, 'what is missing: FILE'), (['open', '-'], 2, 'give a file'),
                                    (['open', '--offline', 'x.html', 'kites.play'], 2, '--offline writes the page alone'),
                                    (['open', 'kites.play', '--port', '0'], 2, '--port'), (['open', 'kites.play', '--port', '65536'], 2, '--port'),
                                    (['open', 'sub'], 3, 'it is a folder'), (['open', 'sub/'], 3, 'it is a folder'), (['open', 'pipe.play'], 3, 'no plain file'),
                                    (['open', 'bad.play'], 3, 'no text in UTF-8'), (['open', 'nowhere/x.play'], 3, 'no such folder'),
                                    (['open', 'dangling.play'], 3, 'a link to a file that is not there'),
                                    (['open', '--offline', 'kites.play'], 2, 'ends in .html'),
                                    (['open', '--offline', 'nowhere/page.html'], 3, 'cannot be written')):
            got, out, err = run(*words, cwd=folder)
            tap.ok(got == status and said in err and out == '', f'{" ".join(words)}: {said}', (got, out, err))
        with socket.socket() as taken:
            taken.bind(('127.0.0.1', 0))
            taken.listen()
            got, _, err = run('open', 'kites.play', '--port', str(taken.getsockname()[1]), cwd=folder)
            tap.ok(got == 3 and 'Address already in use' in err, 'a port that is taken is told', err)
        with socket.socket() as free:
            free.bind(('127.0.0.1', 0))
            port = free.getsockname()[1]
        with Open(folder, 'kites.play', '--port', str(port)) as server:
            tap.same((server.port, server.ask()[0]), (port, 200), 'one that is free can be asked for')
            others = [line.split()[1] for name in ('tcp', 'tcp6') for line in pathlib.Path(f'/proc/net/{name}').read_text().splitlines()[1:]
                      if line.split()[3] == '0A' and line.split()[1].endswith(f':{port:04X}')]
            tap.same(others, [f'0100007F:{port:04X}'], 'it listens on loopback alone')


def ending():
    with Folder(kites=LANTERN) as folder:
        for number in (signal.SIGINT, signal.SIGTERM, signal.SIGHUP):
            with Open(folder) as server:
                there = server.connect()
                there.sendall(server.head())
                client.read_one(there)
                began = time.monotonic()
                server.process.send_signal(number)
                status = server.process.wait(20)
                tap.ok(status == 0 and time.monotonic() - began < 1, f'{signal.Signals(number).name} ends it well, while a page is there', status)
                tap.same(server.process.stdout.read() + server.process.stderr.read(), '', 'without a word')
                there.close()


def browser():
    with Folder(kites=LANTERN) as folder:
        (folder / 'bin').mkdir()
        (folder / 'bin' / 'xdg-open').write_text(f'#!/bin/sh\necho "$@" > {folder}/told.new; mv {folder}/told.new {folder}/told\n')
        (folder / 'bin' / 'xdg-open').chmod(0o755)
        env = {**os.environ, 'PATH': f'{folder}/bin:{os.environ["PATH"]}', 'DISPLAY': ':0'}
        with Open(folder, 'kites.play', '--browser', 'yes', env=env) as server:
            for _ in range(100):
                if (folder / 'told').exists():
                    break
                time.sleep(0.05)
            told = (folder / 'told').read_text().strip()
            tap.ok(told.startswith(f'http://127.0.0.1:{server.port}/') and server.token not in told, 'the browser is called, and not with the address that opens the file', told)
            ask = lambda: client.parts(server.raw(f'GET /{told.split("/")[3]} HTTP/1.1\r\nHost: 127.0.0.1:{server.port}\r\nConnection: close\r\n\r\n'.encode()))
            first, again = ask(), ask()
            tap.same((first[0], first[1].get('location'), again[0]), (303, server.address, 404), 'what it is called with leads there once')
        (folder / 'told').unlink()
        for words in ([], ['--browser', 'no']):
            with Open(folder, 'kites.play', *words, env=env) as server:
                time.sleep(0.2)
                tap.ok(not (folder / 'told').exists(), f'{" ".join(words) or "where nobody is at the terminal"}: it is not')


def main():
    status, _, said = run('open', '--offline', '/dev/null')
    if status:
        print(f'1..0 # SKIP {said.strip()}')
        return 0
    tap.parts(the_page, reading, nothing_else, saving, quarrels, at_once, other_things, new_ones, not_to_be_written, full_disk, sheets, wrong_use, ending, browser)
    return tap.end()


if __name__ == '__main__':
    sys.exit(main())
