# SPDX-License-Identifier: MIT
"""client: asks a local server, over sockets of its own, whatever a test wants to ask."""
import socket
import subprocess


class Server:
    """A program that prints its address and serves; .address, .token, .port."""

    def __init__(self, *words, **more):
        self.words, self.more = words, more

    def __enter__(self):
        self.process = subprocess.Popen(self.words, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, **self.more)
        self.address = self.process.stdout.readline().strip()
        self.port = int(self.address.split('/')[2].split(':')[1])
        self.token = self.address.split('/')[3]
        return self

    def connect(self, timeout=10):
        return socket.create_connection(('127.0.0.1', self.port), timeout)

    def head(self, method='GET', path='', host=None, origin=None, version='HTTP/1.1', **more):
        lines = [f'{method} /{self.token}/{path} {version}', f'Host: {host or f"127.0.0.1:{self.port}"}']
        if origin != '' and (origin or method in ('PUT', 'POST')):
            lines.append(f'Origin: {origin or f"http://127.0.0.1:{self.port}"}')
        lines += [f'{name.replace("_", "-")}: {value}' for name, value in more.items()]
        return ('\r\n'.join(lines) + '\r\n\r\n').encode()

    def raw(self, data, timeout=10):
        """What comes back until the connection ends: b'' when it just ends."""
        with self.connect(timeout) as there:
            try:
                there.sendall(data)
                return read_all(there)
            except ConnectionError:
                return b''

    def ask(self, method='GET', path='', body=None, **more):
        """Status, headers (in lower case), body."""
        if body is not None or method == 'POST':
            body = body or b''
            more.setdefault('Content_Length', len(body))
        return parts(self.raw(self.head(method, path, Connection='close', **more) + (body or b'')))


def read_all(there):
    data = b''
    while True:
        try:
            piece = there.recv(65536)
        except ConnectionError:
            return data
        if not piece:
            return data
        data += piece


def read_one(there):
    """One answer of a connection that goes on."""
    data = b''
    while b'\r\n\r\n' not in data or len(parts(data)[2]) < int(parts(data)[1]['content-length']):
        piece = there.recv(65536)
        if not piece:
            raise ConnectionError(data)
        data += piece
    return data


def parts(data):
    head, _, body = data.partition(b'\r\n\r\n')
    lines = head.decode('latin-1').split('\r\n')
    status = int(lines[0].split()[1]) if len(lines[0].split()) > 1 else 0
    return status, dict((line.split(': ', 1)[0].lower(), line.split(': ', 1)[1]) for line in lines[1:] if ': ' in line), body
