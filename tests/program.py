# SPDX-License-Identifier: MIT
"""program: the program under test, the first argument of the script, and fresh folders to run it in."""
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

PROGRAM = os.path.abspath(sys.argv[1])
ENV = {key: value for key, value in os.environ.items() if key not in ('NO_COLOR', 'SOURCE_DATE_EPOCH', 'TERM')}


def run(*words, stdin='', cwd=None, env=None, timeout=120, **more):
    """Status, standard output, standard error."""
    done = subprocess.run([PROGRAM, *words], input=stdin.encode() if isinstance(stdin, str) else stdin,
                          cwd=cwd, env={**ENV, **(env or {})}, timeout=timeout,
                          stdout=more.pop('stdout', subprocess.PIPE), stderr=more.pop('stderr', subprocess.PIPE), **more)
    decode = lambda text: (text or b'').decode('utf-8', 'replace')
    return done.returncode, decode(done.stdout), decode(done.stderr)


class Folder:
    """A fresh folder with some files in it, in a fresh one of its own."""

    def __init__(self, **files):
        self.files = files

    def __enter__(self):
        self.outer = pathlib.Path(tempfile.mkdtemp(prefix='courtwright-'))
        self.outer.chmod(0o755)  # for those tests that are somebody else
        path = self.outer / 'inner'
        path.mkdir(0o700)
        for name, text in self.files.items():
            (path / f'{name}.play').write_bytes(text if isinstance(text, bytes) else text.encode())
        return path

    def __exit__(self, *_):
        subprocess.run(['chmod', '-R', 'u+rwx', self.outer], check=False)
        shutil.rmtree(self.outer)
