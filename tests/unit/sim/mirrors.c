/* SPDX-License-Identifier: MIT */
/* mirrors: whether two runs are each other's other side. */
#include "mirrors.h"

#include "suite.h"

void runs_are_mirrors(const struct run *run, const struct run *other)
{
    ck_assert_uint_eq(run->segments.count, other->segments.count);
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *a = run->segments.at[i], *m = other->segments.at[i];
        ck_assert_uint_eq(a->samples, m->samples);
        ck_assert_double_eq(a->duration, m->duration);
        ck_assert_double_eq(a->begins, m->begins);
        for (body b = 0; b < BODY_COUNT; b++) {
            ck_assert_int_eq(a->track[b].on_floor, m->track[b].on_floor);
            for (size_t k = 0; a->track[b].sample && k < a->samples; k++) {
                struct vec2 at = a->track[b].sample[k].at, to = m->track[b].sample[k].at;
                ck_assert_msg(at.x == -to.x && at.y == to.y, "segment %d: body %d at %.2f s",
                              (int)i, b, RUN_SAMPLE * (double)k);
            }
        }
    }
}
