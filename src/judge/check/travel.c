/* SPDX-License-Identifier: MIT */
/* travel: who runs with the ball in the hands and does not dribble. */
#include "judge/check/look.h"

#include "base/real.h"

/* How far `span`'s holder runs with the ball in hand, at most, between a catch or a dribble and the
 * next; and when the row's limit is passed. */
static double carried(const struct checker *checker, const struct ball_span *span, double *passed)
{
    const struct segment *segment = checker->segment;
    double so_far = 0, most = 0;
    for (size_t i = 1; i < segment->samples; i++) {
        double t = (double)i * RUN_SAMPLE;
        if (t - RUN_SAMPLE < span->from || t > span->to) {
            continue;
        }
        so_far = look_dribbles(segment, span->holder, t)
                     ? 0
                     : so_far + vec2_distance(look_at(segment, span->holder, i - 1),
                                              look_at(segment, span->holder, i));
        if (so_far > most) {
            most = so_far;
            *passed = most > checker->limit && *passed < 0 ? t : *passed;
        }
    }
    return most;
}

/* Who threw the ball that the holder of this span caught; BODY_NONE: nobody in this segment. */
static body thrower(const struct segment *segment, size_t span)
{
    bool thrown = span > 0 && segment->ball.at[span - 1].state == BALL_FLIGHT;
    return thrown ? segment->ball.at[span - 1].holder : (body)BODY_NONE;
}

static void report(struct checker *checker, size_t index, double passed, double metres)
{
    const struct ball_span *span = &checker->segment->ball.at[index];
    struct finding *finding = look_report(checker, passed, metres, span->holder, BODY_NONE);
    finding->limit = checker->limit;
    const char *who = look_body(checker, span->holder);
    look_say(checker, &finding->message,
             "%s: dribble, or catch where you stop. You run %s with the ball in your hands.", who,
             look_length(checker, metres));
    body from = thrower(checker->segment, index);
    if (from != BODY_NONE) {
        look_say(checker, &finding->help,
                 "let %s pass later (without `as` it comes as %s gets there), or end the cut where "
                 "it is caught",
                 look_body(checker, from), who);
    } else {
        look_say(checker, &finding->help, "write where %s goes with the ball: %s dribbles to top",
                 who, who);
    }
}

void look_ball_travel(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state != BALL_HELD || span->throw_in || !look_plays(checker, span->holder)) {
            continue;
        }
        double passed = TIME_NEVER, metres = carried(checker, span, &passed);
        if (passed >= 0) {
            report(checker, i, passed, metres);
        }
    }
}
