/* SPDX-License-Identifier: MIT */
/* board: the check of a throw-in and the backboard that stands in its way. */
#include <math.h>

#include "base/real.h"
#include "judge/check/look.h"

/* Between the board's face and the baseline, as wide as the board: there it hangs, and what holds
 * it. Asked of the part of the way from a to b that lies between the two. */
static bool passes_under(const struct court *court, struct vec2 a, struct vec2 b)
{
    double rise = b.y - a.y;
    if (a.y >= court->baseline || b.y <= a.y) {
        return false; /* not from behind the line, or along behind it */
    }
    double in = (court->baseline - a.y) / rise;
    double out = real_clamp((court->board - a.y) / rise, 0, 1);
    double x_in = a.x + in * (b.x - a.x), x_out = a.x + out * (b.x - a.x);
    bool crosses = (x_in < 0) != (x_out < 0);
    return in <= 1 && (crosses || real_min(fabs(x_in), fabs(x_out)) <= court->board_half_width);
}

/* Behind either baseline there is a board. */
static bool leads_under(const struct court *court, const struct ball_span *span)
{
    return passes_under(court, span->start, span->end) ||
           passes_under(court, court_mirror_back(court, span->start),
                        court_mirror_back(court, span->end));
}

/* The spot out of bounds on the side where it is caught. */
static void help_beside(struct checker *checker, struct finding *finding, const char *who,
                        const struct ball_span *span)
{
    bool back = span->start.y > checker->play->court->half_court;
    look_say(checker, &finding->help,
             "start %s out of bounds at %s%s, or pass to somebody on the near side", who,
             back ? "backcourt " : "",
             look_spot(checker, SPOT_SHORT_CORNER, look_side(checker, span->end.x)));
}

void look_inbound_board(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    const struct court *court = checker->play->court;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state != BALL_FLIGHT || !span->throw_in || span->target == BODY_NONE ||
            span->task < 0 || !leads_under(court, span)) {
            continue;
        }
        struct finding *finding = look_report(checker, span->from, 0, span->holder, span->target);
        const char *who = look_body(checker, span->holder), *to = look_body(checker, span->target);
        finding->span = segment_task(segment, (size_t)span->task)->span;
        finding->mark = MARK_LANE;
        finding->a = span->start;
        finding->b = span->end;
        look_say(checker, &finding->message,
                 "%s: throw it in beside the board. The pass to %s goes under it, and its back is "
                 "out of bounds.",
                 who, to);
        help_beside(checker, finding, who, span);
    }
}
