/* SPDX-License-Identifier: MIT */
/* blanked: a scene without what its question, or another of the same sheet, asks for. Takes the
 * whole scene of the question's diagram; must not know pages. Private to sheet. */
#ifndef PAGE_SHEET_BLANKED_H
#define PAGE_SHEET_BLANKED_H

#include "page/sheet/asked.h"

const struct scene *blanked_scene(struct arena *arena, const struct scene *scene,
                                  const struct asked *asked);

#endif
