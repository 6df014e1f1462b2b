/* SPDX-License-Identifier: MIT */
/* pictured: the pictures of a text that was run, and the lines in one. Everything in the running
 * test's arena; what is not there fails the test. */
#ifndef TESTS_UNIT_SCENE_PICTURED_H
#define TESTS_UNIT_SCENE_PICTURED_H

#include "floor_text.h"
#include "picture/scene/drawing.h"

/* The diagram of a step, counted from 1, or of a branch of it, from 0; -1: its common part. */
const struct diagram *diagram_of(const char *text, int step, int branch);
/* Its picture, so many points wide; 0: as wide as it is by itself. */
struct scene *pictured(const char *text, int step, int branch, double width);

/* A line of the pen, no head and no white under it; of a screen: the line or its bar. */
bool is_drawn_line(const struct scene_item *item, enum scene_class class, body who);
bool is_bar(const struct scene *scene, const struct scene_item *item);
/* The first line of somebody's of a class that is no bar; NULL: there is none. */
const struct scene_item *drawn_line(const struct scene *scene, enum scene_class class, body who);

#endif
