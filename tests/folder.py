# SPDX-License-Identifier: MIT
"""folder: a fresh folder with some files in it, gone afterwards whatever became of its rights."""
import pathlib
import shutil
import subprocess
import tempfile


class Folder:
    """Files by name without .play: a text, or bytes."""

    def __init__(self, **files):
        self.files = files

    def __enter__(self):
        self.path = pathlib.Path(tempfile.mkdtemp(prefix='courtwright-test-'))
        for name, text in self.files.items():
            (self.path / f'{name}.play').write_bytes(text if isinstance(text, bytes) else text.encode())
        return self.path

    def __exit__(self, *_):
        subprocess.run(['chmod', '-R', 'u+rwx', self.path], check=False)
        shutil.rmtree(self.path)
