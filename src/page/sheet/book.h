/* SPDX-License-Identifier: MIT */
/* book: the whole playbook. Private to sheet. */
#ifndef PAGE_SHEET_BOOK_H
#define PAGE_SHEET_BOOK_H

#include "page/sheet/sheet.h"

bool book_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                struct writer *writer);

#endif
