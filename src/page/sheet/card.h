/* SPDX-License-Identifier: MIT */
/* card: the bench card. Private to sheet. */
#ifndef PAGE_SHEET_CARD_H
#define PAGE_SHEET_CARD_H

#include "page/sheet/sheet.h"

bool card_write(struct arena *arena, struct fonts *fonts, const struct sheet_job *job,
                struct writer *writer);

#endif
