#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""The local server over real sockets: who is let in, what is turned away, what it survives. Prints TAP.
Usage: protocol.py SITE (the program of site.c)"""
import pathlib
import random
import socket
import subprocess
import sys
import threading
import time

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
import client  # noqa: E402
from client import parts, read_all, read_one  # noqa: E402
from tap import Tap  # noqa: E402

tap = Tap()


class Server(client.Server):
    """The site of site.c; .ticket."""

    def __init__(self):
        super().__init__(sys.argv[1], stderr=subprocess.PIPE)

    def __enter__(self):
        super().__enter__()
        self.ticket = self.process.stdout.readline().strip()
        return self

    def __exit__(self, *trouble):
        status, said = self.end()
        if not trouble[0]:
            tap.ok((status, said) == (0, 'over\n'), 'it ends well', f'{status} {said} {self.process.stderr.read()}')

    def end(self):
        self.process.stdin.close()
        said = self.process.stdout.read()
        return self.process.wait(20), said

    def begins(self):
        """Waits until a sheet that takes two seconds is begun."""
        return self.process.stderr.readline() == 'begun\n'


def lets_in(server):
    status, headers, body = server.ask()
    tap.same((status, body), (200, b'<!DOCTYPE html><title>kites</title>'), 'the page is given')
    for name, value in (('content-security-policy', "default-src 'self'"), ('cache-control', 'no-store'), ('referrer-policy', 'no-referrer'),
                        ('x-content-type-options', 'nosniff'), ('x-frame-options', 'DENY'), ('cross-origin-resource-policy', 'same-origin')):
        tap.same(headers.get(name), value, f'with {name}')
    tap.ok('server' not in headers, 'what serves it is not told')
    tap.same(server.ask('PUT', 'file', b'five-out', If_Match='v1')[::2], (200, b'v1'), 'a text is taken, with its version')
    tap.same(server.ask('GET', 'file')[::2], (200, b'five-out'), 'and given back')
    whole = bytes(range(256)) * 4096
    tap.same(server.ask('PUT', 'file', whole)[0], 200, 'the largest text is taken')
    tap.ok(server.ask('GET', 'file')[2] == whole, 'byte for byte')
    tap.same(server.ask('PUT', 'file', b'')[0], 200, 'an empty text too')
    chunked = server.head('PUT', 'file', Transfer_Encoding='chunked', Connection='close') + b'5\r\nfive-\r\n3\r\nout\r\n0\r\n\r\n'
    tap.same((parts(server.raw(chunked))[0], server.ask('GET', 'file')[2]), (200, b'five-out'), 'one that comes in pieces too')
    tap.same(server.ask('POST', 'sheet?for=Imke%20Dorn&per-page=4&empty&a=%3C%26', b'five-out')[2],
             b'for=Imke Dorn\nper-page=4\nempty=\na=<&\nfive-out', 'what stands behind the ? comes through, and a text to make a sheet of')
    status, headers, _ = server.ask('POST', 'sheet?kind=card')
    tap.same((status, headers.get('content-disposition')), (200, 'inline; filename="Kites _two_.pdf"'), 'a sheet has a name to be kept under')


def ticket(server):
    first, again = (parts(server.raw(f'GET /{server.ticket.split("/")[3]} HTTP/1.1\r\nHost: 127.0.0.1:{server.port}\r\nConnection: close\r\n\r\n'.encode()))
                    for _ in range(2))
    tap.same((first[0], first[1].get('location')), (303, server.address), 'a ticket leads to the page')
    tap.same(again[0], 404, 'once')


def same_connection(server):
    with server.connect() as there:
        for _ in range(3):
            there.sendall(server.head())
            data = read_one(there)
        tap.ok(b'</title>' in data, 'one connection asks three times')


def turns_away(server):
    port, right = server.port, server.head(Connection='close')
    turned = lambda data, status, what: tap.same(parts(server.raw(data))[0], status, what)
    turned(right.replace(server.token.encode(), b'0' * 32), 404, 'another token')
    turned(right.replace(server.token.encode() + b'/', b''), 404, 'no token')
    turned(server.head(path='../etc/passwd', Connection='close'), 404, 'a path that leads out')
    turned(server.head(path='%2e%2e/file', Connection='close'), 404, 'the same, in disguise')
    turned(server.head(path='file%00.play', Connection='close'), 404, 'a NUL in the path')
    turned(server.head(path='%00', Connection='close'), 404, 'nothing but a NUL')
    for host in ('kites.example', f'kites.example:{port}', 'localhost', f'localhost:{port}', '127.0.0.1', f'127.0.0.1:{port + 1}'):
        turned(server.head(host=host, Connection='close'), 403, f'Host {host.replace(str(port), "PORT").replace(str(port + 1), "OTHER")}')
    turned(right.replace(b'Host:', b'X-Host:'), 400, 'no Host')
    turned(right.replace(b'\r\nHost:', b'\r\nHost: kites.example\r\nHost:'), 403, 'two of them')
    for origin in ('http://kites.example', 'null', f'https://127.0.0.1:{port}', 'http://127.0.0.1'):
        tap.same(server.ask('GET', 'file', origin=origin)[0], 403, f'Origin {origin.replace(str(port), "PORT")} may not read')
        tap.same(server.ask('PUT', 'file', b'mine now', origin=origin)[0], 403, 'nor write')
    tap.same(server.ask('PUT', 'file', b'mine now', origin='')[0], 403, 'a text from nowhere')
    tap.same(server.ask('GET', 'file', Sec_Fetch_Site='cross-site')[0], 403, 'what another site asks for')
    tap.same(server.ask('POST', 'sheet?a=1%00x&b=%32')[2], b'a=1%00x\nb=2\n', 'what stands behind a NUL is not lost from a value')
    for method in ('POST', 'DELETE', 'OPTIONS', 'HEAD', 'PATCH', 'BREW'):
        status, headers, _ = server.ask(method, 'file')
        tap.same((status, headers.get('allow')), (405, 'GET, PUT'), f'{method} is not taken')
    tap.ok(b'mine now' not in server.ask('GET', 'file')[2], 'and nothing of it was written')
    tap.ok('access-control-allow-origin' not in server.ask('OPTIONS', 'file', origin='http://kites.example')[1], 'no other site is let through')


def too_much(server):
    most = 1 << 20
    tap.same(server.ask('PUT', 'file', b'x' * (most + 1))[0], 413, 'a text that is too large is heard out, and refused')
    tap.same(server.ask('PUT', 'file', b'', Content_Length=most * 9)[0], 413, 'one that says it is far too large is not waited for')
    tap.same(server.ask('PUT', 'file', b'', Content_Length='99999999999999999999')[0] in (400, 413), True, 'nor one with a silly length')
    tap.same(server.ask('PUT', 'file', b'', Content_Length='-5')[0] in (400, 413), True, 'nor one below nothing')
    chunked = server.head('PUT', 'file', Transfer_Encoding='chunked') + (b'10000\r\n' + b'x' * 65536 + b'\r\n') * 17 + b'0\r\n\r\n'
    tap.same(parts(server.raw(chunked.replace(b'Transfer', b'Connection: close\r\nTransfer')))[0], 413, 'one that grows too large in pieces')
    chunked = server.head('PUT', 'file', Transfer_Encoding='chunked') + (b'10000\r\n' + b'x' * 65536 + b'\r\n') * 200
    tap.same(server.raw(chunked), b'', 'one that never ends is cut off')
    tap.ok(parts(server.raw(server.head(X='y' * 140000)))[0] in (0, 400, 413, 431), 'a head that is too long')
    tap.ok(parts(server.raw(server.head(path='file?' + 'a=b&' * 20000)))[0] in (0, 400, 413, 414, 431), 'an address that is too long')
    many = lambda count: server.ask('POST', 'sheet?' + '&'.join(f'k{i}=v' for i in range(count)))
    tap.same((many(400)[2].count(b'\n'), many(401)[0]), (400, 414), 'of four hundred values all are heard, of more none')
    tap.same(server.ask()[0], 200, 'and the page is still there')


def garbage(server):
    chance = random.Random(8)
    answers = set()
    for i in range(300):
        data = bytearray(server.head('PUT', 'file', If_Match='v', Content_Length=5) + b'hello')
        for _ in range(chance.randrange(1, 12)):
            data[chance.randrange(len(data))] = chance.randrange(256)
        if i % 3 == 0:
            data = bytes(chance.randrange(256) for _ in range(chance.randrange(1, 400)))
        with server.connect(0.3) as there:
            try:
                there.sendall(data)
                there.shutdown(socket.SHUT_WR)
                answers.add(parts(read_all(there))[0])
            except (ConnectionError, TimeoutError):
                answers.add(0)
        if i % 40 == 39:
            time.sleep(0.5)  # strangers are let in slowly
    tap.ok(answers & {400, 403, 404}, f'garbage is turned away ({sorted(answers)})')
    tap.same(server.ask()[0], 200, 'and the page is still there after it')


def rates(server):
    wrong = server.head().replace(server.token.encode(), b'f' * 32)
    statuses = [parts(server.raw(wrong))[0] for _ in range(120)]
    tap.ok(404 in statuses and statuses[-1] == 429, 'who guesses tokens is slowed down')
    tap.same(server.ask()[0], 200, 'but not who knows it')
    answers, there = [], server.connect()
    for _ in range(700):
        there.sendall(server.head('GET', 'file'))
        answers.append(read_one(there))
        if b'\r\nConnection: close' in answers[-1]:  # as every refusal
            there.close()
            there = server.connect()
    there.close()
    good, slowed = (sum(answer.startswith(b'HTTP/1.1 ' + status) for answer in answers) for status in (b'200', b'429'))
    tap.ok(good >= 400 and slowed > 50, 'nor for long: a page gone wild is slowed down too', (good, slowed))
    tap.ok(any(b'Retry-After: 1' in answer for answer in answers), 'and told when to come again')
    time.sleep(1)
    tap.same(server.ask()[0], 200, 'a second later it is answered again')


def slow(server):
    began = time.monotonic()
    with server.connect(15) as silent, server.connect(15) as dripping, server.connect(40) as body:
        body.sendall(server.head('PUT', 'file', Content_Length=1000))
        ended = {}

        def watch(name, there):
            read_all(there)
            ended[name] = time.monotonic() - began

        def drip():
            data = server.head()[:-4]
            for i in range(100):
                try:
                    dripping.sendall(data[i:i + 1])
                    body.sendall(b'x')
                except OSError:
                    pass
                if 'dripping' in ended and 'body' in ended:
                    return
                time.sleep(0.25)
        threads = [threading.Thread(target=watch, args=pair) for pair in (('silent', silent), ('dripping', dripping), ('body', body))]
        threads.append(threading.Thread(target=drip))
        for thread in threads:
            thread.start()
        times = []
        while time.monotonic() - began < 3:
            asked = time.monotonic()
            tap_good = server.ask()[0] == 200
            times.append(time.monotonic() - asked if tap_good else 99)
            time.sleep(0.05)
        tap.ok(max(times) < 1, 'others are answered meanwhile', f'{max(times):.3f} s')
        for thread in threads:
            thread.join()
    tap.ok(4 < ended['silent'] < 8, 'who says nothing is shown out', ended)
    tap.ok(4 < ended['dripping'] < 8, 'who asks a byte at a time too', ended)
    tap.ok(18 < ended['body'] < 24, 'and whose text never ends', ended)


def sheets(server):
    """One at a time, and the page is answered meanwhile."""
    answers = []
    asking = threading.Thread(target=lambda: answers.append(server.ask('POST', 'sheet')[0]))
    asking.start()
    tap.ok(server.begins(), 'a sheet is begun')
    tap.same(server.ask('POST', 'sheet')[0], 503, 'a second one is told to come again')
    good = server.ask()[0] == 200
    tap.ok(good and not answers, 'the page is answered while a sheet is made', answers)
    asking.join()
    tap.same(answers, [200], 'and then there is the sheet')
    with server.connect() as there:
        there.sendall(server.head('POST', 'sheet'))
        server.begins()
    last = 503
    for _ in range(100):  # until the one that nobody waits for is made
        last = server.ask('POST', 'sheet')[0] if last == 503 else last
        time.sleep(0.1 if last == 503 else 0)
    tap.same(last, 200, 'who leaves before his sheet is made does not keep the next from his')


def answered(server):
    """Seconds until the page is answered, five at most."""
    began = time.monotonic()
    while time.monotonic() - began < 5:
        try:
            if server.ask()[0] == 200:
                break
        except OSError:
            pass
        time.sleep(0.02)
    return time.monotonic() - began


def knock(server, times):
    """Connections that say nothing; one that is refused is none."""
    there = []
    for _ in range(times):
        try:
            there.append(socket.create_connection(('127.0.0.1', server.port), 5))
        except ConnectionError:
            pass
    return there


def flood(server, many=1000):
    """Connections that say nothing, all at once: most are refused, the page is answered within a second."""
    crowd = []
    for _ in range(many):
        there = socket.socket()
        there.setblocking(False)
        try:
            there.connect(('127.0.0.1', server.port))
        except OSError:  # it is on its way, or refused
            pass
        crowd.append(there)
    took = answered(server)
    tap.ok(took < 1, f'the page answers within a second after a flood of {many} that all stay', f'{took:.3f} s')
    time.sleep(2)  # some had to knock twice
    staying = 0
    for there in crowd:
        try:
            there.getpeername()  # an error for one that still knocks
            staying += there.recv(1) != b''
        except BlockingIOError:
            staying += 1
        except OSError:
            pass
    tap.ok(0 < staying <= 64, f'past 64 they were refused ({staying} stay)', staying)
    for there in crowd:
        there.close()
    tap.same(server.ask()[0], 200, 'and when they have gone it is as before')


def known_stay(server):
    """Whoever has shown the token is not shown out by a crowd of strangers."""
    with server.connect() as there:
        there.sendall(server.head())
        read_one(there)
        crowd = knock(server, 200)
        time.sleep(0.5)
        crowd += knock(server, 200)
        there.sendall(server.head())
        tap.ok(b'200 OK' in read_one(there), 'a page that was there before the flood keeps its connection')
        for other in crowd:
            other.close()


def few_descriptors():
    with Server() as server:
        subprocess.run(['prlimit', f'--pid={server.process.pid}', '--nofile=16'], check=True)
        crowd = knock(server, 40)
        time.sleep(0.3)
        for there in crowd:
            there.close()
        tap.ok(answered(server) < 5, 'a system without file descriptors to give is waited for')


def ends():
    with Server() as server:
        there = server.connect()
        there.sendall(server.head('POST', 'sheet'))
        server.begins()
        began = time.monotonic()
        status, said = server.end()
        tap.ok((status, said) == (0, 'over\n') and time.monotonic() - began < 3, 'it ends well while a sheet is made', (status, said))
        tap.ok(b'200 OK' in read_all(there), 'and the sheet is still given')
        server.end = lambda: (status, said)
    first, second = Server(), Server()
    with first, second:
        tap.ok(first.token != second.token and len(first.token) == 32, 'each has a token of its own')


def main():
    with Server() as server:
        lets_in(server)
        ticket(server)
        same_connection(server)
        turns_away(server)
        too_much(server)
        garbage(server)
        sheets(server)
    with Server() as server:
        rates(server)
    with Server() as server:
        flood(server)
        known_stay(server)
        flood(server, 300)
        slow(server)
    few_descriptors()
    ends()
    return tap.end()


if __name__ == '__main__':
    sys.exit(main())
