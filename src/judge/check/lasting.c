/* SPDX-License-Identifier: MIT */
/* lasting: see lasting.h. */
#include "judge/check/lasting.h"

const struct ball_span *lasting_span(const struct segment *segment, double t)
{
    for (size_t i = segment->ball.count; i-- > 0;) {
        if (segment->ball.at[i].from <= t + 1e-9) {
            return &segment->ball.at[i];
        }
    }
    return NULL;
}

bool lasting_control(const struct checker *checker, const struct segment *segment, double t)
{
    const struct ball_span *span = lasting_span(segment, t);
    if (!span || (span->state != BALL_HELD && span->state != BALL_FLIGHT)) {
        return false;
    }
    struct vec2 from =
        span->state == BALL_FLIGHT ? span->start : segment_at(segment, span->holder, t);
    return look_outside(checker->play->court, from) < 0;
}

struct stay lasting_stay(const struct checker *checker, is_so *so, body b, double limit)
{
    segment_list way = {0};
    for (const struct segment *s = checker->segment; s; s = s->before) {
        VEC_PUSH(checker->arena, &way, s);
    }
    struct stay stay = {.passed = TIME_NEVER};
    for (size_t k = way.count; k-- > 0;) {
        /* up to where the next begins: steps may overlap, and a border is no moment twice */
        double until = k > 0 ? way.at[k - 1]->begins - RUN_SAMPLE / 2 : way.at[k]->duration;
        for (size_t i = 0; i < way.at[k]->samples && (double)i * RUN_SAMPLE <= until + 1e-9; i++) {
            enum so is = so(checker, way.at[k], b, i);
            stay.seconds = is == SO_YES   ? stay.seconds + RUN_SAMPLE
                           : is == SO_NOT ? 0
                                          : stay.seconds;
            bool passes =
                stay.seconds > limit + RUN_SAMPLE && stay.seconds <= limit + 2 * RUN_SAMPLE;
            if (k == 0 && stay.passed < 0 && passes) {
                stay.passed = (double)i * RUN_SAMPLE;
            }
            if (k == 0 && stay.passed >= 0) {
                if (is == SO_NOT) {
                    return stay;
                }
                stay.whole = stay.seconds;
            }
        }
    }
    return stay;
}
