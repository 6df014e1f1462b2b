/* SPDX-License-Identifier: MIT */
/* metrics: how wide a text is in the bundled face, from a table made at build time of the face's
 * own advance widths (no kerning). Scenes are measured by it, so that a diagram is the same
 * everywhere. */
#ifndef PICTURE_METRICS_METRICS_H
#define PICTURE_METRICS_METRICS_H

#include "base/str.h"

enum face { FACE_REGULAR, FACE_MEDIUM, FACE_SEMIBOLD, FACE_BOLD, FACE_EXTRABOLD, FACE_COUNT };

/* Width of UTF-8 text set at `size` (any unit; the result is in it). Letters outside the table are
 * taken as wide as an em. */
double metrics_width(enum face face, double size, struct str text);
#define METRICS_CAP_HEIGHT 0.727 /* of the size */
#define METRICS_ASCENT 0.969
#define METRICS_DESCENT 0.242
int metrics_weight(enum face face); /* 400..800, for CSS */

/* Takes the next letter off a text that is not empty. A byte that is no UTF-8 counts as one letter,
 * U+FFFD. */
unsigned metrics_letter(struct str *rest);

#endif
