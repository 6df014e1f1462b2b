/* SPDX-License-Identifier: MIT */
/* sink: where cairo's bytes are kept until a file is whole. Running out of memory may not jump
 * through cairo: it is remembered here, what cairo goes on to write is dropped, and the jump goes
 * on once cairo is out of the way. */
#ifndef PICTURE_PAINT_SINK_H
#define PICTURE_PAINT_SINK_H

#include <cairo.h>

#include "base/str.h"

struct sink {
    struct arena *arena;
    struct strbuf bytes;
    int escaped; /* what the arena jumped with, or 0 */
};

void sink_init(struct sink *sink, struct arena *arena);
/* A cairo_write_func_t; `closure` is the sink. */
cairo_status_t sink_take(void *closure, const unsigned char *bytes, unsigned size);
/* To be called when nothing of cairo is held: goes on with a jump that was held back. */
void sink_end(struct sink *sink);

#endif
