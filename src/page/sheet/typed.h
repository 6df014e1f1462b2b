/* SPDX-License-Identifier: MIT */
/* typed: at the end of a tally sheet, the lines in which what was counted is kept in the playbook.
 * Private to sheet. */
#ifndef PAGE_SHEET_TYPED_H
#define PAGE_SHEET_TYPED_H

#include "page/sheet/rows.h"

/* Where the page that is being filled has room for all of them. */
void typed_add(struct rows *rows, const struct play *play, const point_list *charts);

#endif
