#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""A file for the assembler that takes the page into the program. Its fingerprint stands there, so that another
page is assembled anew. Usage: page_bytes.py PAGE.html OUTPUT.S"""
import hashlib
import pathlib
import sys

page = pathlib.Path(sys.argv[1]).resolve()
pathlib.Path(sys.argv[2]).write_text(f'''/* {hashlib.sha256(page.read_bytes()).hexdigest()} */
    .section .rodata
    .global page_bytes_begin, page_bytes_end
page_bytes_begin:
    .incbin "{page}"
page_bytes_end:
    .byte 0
    .section .note.GNU-stack, "", %progbits
''', encoding='utf-8')
