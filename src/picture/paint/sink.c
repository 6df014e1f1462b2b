/* SPDX-License-Identifier: MIT */
/* sink: takes bytes from cairo and libpng; gives them as one text. */
#include "picture/paint/sink.h"

void sink_init(struct sink *sink, struct arena *arena)
{
    sink->arena = arena;
    sink->escaped = 0;
    strbuf_init(&sink->bytes, arena);
}

cairo_status_t sink_take(void *closure, const unsigned char *bytes, unsigned size)
{
    struct sink *sink = closure;
    if (sink->escaped) {
        return CAIRO_STATUS_SUCCESS;
    }
    jmp_buf here;
    jmp_buf *volatile outer = sink->arena->escape;
    sink->arena->escape = &here;
    int escaped = setjmp(here);
    if (escaped) {
        sink->escaped = escaped;
    } else {
        strbuf_add(&sink->bytes, (struct str){(const char *)bytes, size});
    }
    sink->arena->escape = outer;
    /* Never a failure: cairo 1.16 trips over links when its stream fails. sink_end tells. */
    return CAIRO_STATUS_SUCCESS;
}

void sink_end(struct sink *sink)
{
    if (sink->escaped) {
        longjmp(*sink->arena->escape, sink->escaped);
    }
}
