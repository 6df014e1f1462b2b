/* SPDX-License-Identifier: MIT */
/* handmade: a small scene put together by hand, with one of everything a writer has to draw. */
#ifndef TESTS_UNIT_SVG_HANDMADE_H
#define TESTS_UNIT_SVG_HANDMADE_H

#include "picture/scene/scene.h"

struct scene *handmade_scene(struct arena *arena, enum theme theme);

#endif
