/* SPDX-License-Identifier: MIT */
/* advances: the table that the build makes of the face's files (fonts/advances.py). Private to
 * metrics. */
#ifndef PICTURE_METRICS_ADVANCES_H
#define PICTURE_METRICS_ADVANCES_H

#include "picture/metrics/metrics.h"

struct advance {
    unsigned short letter;            /* code point; rows stand in its order */
    unsigned short width[FACE_COUNT]; /* in units of the em */
};
extern const struct advance advances[];
extern const size_t advances_count;
extern const unsigned advances_em;

#endif
