/* SPDX-License-Identifier: MIT */
/* crest_scan: what an SVG refers to. Private to paint. */
#ifndef PICTURE_PAINT_CREST_SCAN_H
#define PICTURE_PAINT_CREST_SCAN_H

#include "base/str.h"

/* A file, an address, a style sheet, an entity that is not in the picture itself. */
bool crest_refers_outside(struct str svg);

#endif
