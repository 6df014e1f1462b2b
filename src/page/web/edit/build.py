#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""One HTML file of the page to write in: scripts bundled by esbuild, the module packed and as base64, and a policy that names
each script and style by its hash; the licences of what is in it stand there too.
Usage: build.py ESBUILD NODE FOLDER MODULE ROLES.def OUTPUT"""
import base64
import gzip
import pathlib
import re
import subprocess
import sys

sys.path.append(str(pathlib.Path(__file__).resolve().parent.parent))
from style import hash_of, style_of  # noqa: E402


def bundle(esbuild, entry):
    """One script, without a module's import; `</script` cannot end it."""
    done = subprocess.run([esbuild, str(entry), '--bundle', '--minify', '--format=iife', '--target=es2021', '--charset=utf8',
                           '--legal-comments=none', '--log-level=warning'], stdout=subprocess.PIPE, check=True)
    text = done.stdout.decode('utf-8').strip()
    if re.search(r'</script|<!--', text, re.I):
        sys.exit(f'{entry.name}: what ends a script stands in it')
    return text


def notices(folder):
    """The licences of all that the page holds, each text once, with whose it is: they go where the page goes."""
    root, packages = folder.parents[3], folder / 'node_modules'
    texts = {(root / 'LICENSE').read_text(encoding='utf-8'): ['courtwright'],
             (root / 'fonts' / 'OFL.txt').read_text(encoding='utf-8'): ['Inter, whose widths of letters the module has'],
             (folder / 'libc.txt').read_text(encoding='utf-8'): ['the C library in the module']}
    for file in sorted(packages.rglob('LICENSE*')):
        texts.setdefault(file.read_text(encoding='utf-8'), []).append(file.parent.relative_to(packages).as_posix())
    return '\n\n'.join(f'{", ".join(whose)}:\n\n{text.strip()}' for text, whose in texts.items())


def drawn(node, folder, module):
    """What the page of the sample opens with, as JSON in which no tag can end."""
    done = subprocess.run([node, str(folder / 'drawn.mjs'), str(module), str(folder / 'sample.play'), 'lantern.play'],
                          stdout=subprocess.PIPE, check=True)
    return done.stdout.decode('utf-8').replace('<', '\\u003c')


def main():
    esbuild, node, folder, module, table, output = *sys.argv[1:3], *map(pathlib.Path, sys.argv[3:])
    boot, script = bundle(esbuild, folder / 'boot.js'), bundle(esbuild, folder / 'main.js')
    style = re.sub(r'\s+', ' ', style_of([folder / 'page.css', folder / 'paper.css'], table)).strip()
    policy = '; '.join(["default-src 'none'", f"script-src {hash_of(boot)} {hash_of(script)} 'wasm-unsafe-eval'", 'worker-src blob:',
                        f'style-src {hash_of(style)}', 'img-src data: blob:', "connect-src 'none'", "base-uri 'none'", "form-action 'none'"])
    parts = {'NOTICES': notices(folder), 'POLICY': policy, 'STYLE': style, 'BOOT': boot, 'MAIN': script, 'WORKER': bundle(esbuild, folder / 'worker.js'),
             'SAMPLE': (folder / 'sample.play').read_text(encoding='utf-8'), 'DRAWN': drawn(node, folder, module),
             'MODULE': base64.b64encode(gzip.compress(module.read_bytes(), 9, mtime=0)).decode('ascii')}
    page = (folder / 'index.html').read_text(encoding='utf-8')
    page = re.sub(r'\{\{(\w+)\}\}', lambda match: parts[match[1]], page)
    output.write_text(page, encoding='utf-8')


if __name__ == '__main__':
    main()
