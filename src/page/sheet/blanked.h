/* SPDX-License-Identifier: MIT */
/* blanked: the picture of a question without the lines it asks for, a letter where each player's
 * begin; and the same with all its lines, those under their letters. Must not know pages. Private
 * to sheet. */
#ifndef PAGE_SHEET_BLANKED_H
#define PAGE_SHEET_BLANKED_H

#include "page/sheet/asked.h"

const struct scene *blanked_scene(struct arena *arena, const struct asked *asked);
const struct scene *answered_scene(struct arena *arena, const struct asked *asked);

#endif
