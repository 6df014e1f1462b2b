/* SPDX-License-Identifier: MIT */
/* possession: checks of the rulebook about where the ball may be: on the floor, in front once it
 * has been there, in reach when it is handed over. */
#include <math.h>

#include "base/real.h"
#include "judge/check/look.h"

#define PAST (1 * FEET) /* over half court with both feet, and the ball in front of them; ours */
#define REACH                                                                                      \
    .15 /* m over the limit at a hand-off: nobody sees it; ours                                    \
         */

/* ---- ball.out ---- */

/* The place that was written; the run stops at the line. */
static void sent_out(struct checker *checker, const struct task *task, double t, double by)
{
    struct finding *finding = look_report(checker, t, by, task->who, BODY_NONE);
    const char *who = look_body(checker, task->who);
    enum side side;
    enum spot spot = court_nearest_perimeter(checker->play->court, task->planned, &side, NULL);
    finding->span = task->span;
    finding->mark = MARK_POINT;
    finding->a = task->planned;
    look_say(checker, &finding->message,
             "%s: keep the ball on the floor. This place is %s over the line, and the ball is dead "
             "there.",
             who, look_length(checker, by));
    look_say(checker, &finding->help, "write: %s dribbles to %s", who,
             look_spot(checker, spot, side));
}

static void caught_out(struct checker *checker, const struct ball_span *span, double by)
{
    struct finding *finding = look_report(checker, span->to, by, span->target, span->holder);
    const char *who = look_body(checker, span->target);
    const struct segment *segment = checker->segment;
    if (span->task >= 0 && (size_t)span->task < segment->tasks) {
        finding->span = segment_task(segment, (size_t)span->task)->span;
    }
    finding->mark = MARK_POINT;
    finding->a = segment_at(segment, span->target, span->to);
    look_say(checker, &finding->message,
             "%s: come onto the floor first. You are %s over the line as you catch, and the ball "
             "is dead.",
             who, look_length(checker, by));
    enum side side;
    enum spot spot = court_nearest_perimeter(checker->play->court, finding->a, &side, NULL);
    look_say(checker, &finding->help, "write before the pass: %s goes to %s", who,
             look_spot(checker, spot, side));
}

void look_ball_out(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    const struct court *court = checker->play->court;
    for (size_t i = 0; i < segment->tasks && !checker->play->is_drill; i++) {
        const struct task *task = segment_task(segment, i);
        bool carries = task->kind == TASK_CARRY || task->kind == TASK_USE;
        double by = carries && task->goal_written && look_uses_ball(task)
                        ? look_outside(court, task->planned)
                        : -1;
        if (by > HALF_FOOT) {
            sent_out(checker, task, real_max(0, segment->record[i].time[MOMENT_STARTED]), by);
        }
    }
    for (size_t i = 0; i + 1 < segment->ball.count && !checker->play->is_drill; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        bool caught = span->state == BALL_FLIGHT && !span->throw_in &&
                      segment->ball.at[i + 1].holder == span->target;
        double by = caught ? look_outside(court, segment_at(segment, span->target, span->to)) : -1;
        if (by > HALF_FOOT) { /* of a throw-in two may stand behind the line after a basket */
            caught_out(checker, span, by);
        }
    }
}

/* ---- ball.backcourt ---- */

/* The first moment at which the ball is back. */
struct crossing {
    bool found;
    size_t span;
    double t;
};

/* Follows the ball through a segment up to `until`: has it been in front, in the hands of the
 * attack, since the last shot or throw-in? `front`: it had at the segment's beginning. */
static bool follow(const struct segment *segment, double until, bool front,
                   struct crossing *crossing)
{
    const struct court *court = segment->play->court;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        bool over = span->state == BALL_SHOT || span->state == BALL_LOOSE || span->throw_in;
        front = front && !over;
        double to = real_min(real_min(span->to, until), segment->duration);
        for (double t = real_max(0, span->from); span->state == BALL_HELD && !over && t <= to;
             t += RUN_SAMPLE) {
            double y = segment_at(segment, span->holder, t).y;
            if (front && y > court->half_court && !crossing->found) {
                *crossing = (struct crossing){true, i, t};
            }
            front = front || y < court->half_court - PAST;
        }
    }
    return front;
}

static bool front_at_start(const struct segment *segment)
{
    struct crossing none = {0};
    return segment->before &&
           follow(segment->before, segment->begins, front_at_start(segment->before), &none);
}

static void back_over(struct checker *checker, size_t index, double t)
{
    const struct segment *segment = checker->segment;
    const struct ball_span *span = &segment->ball.at[index];
    double by = segment_at(segment, span->holder, t).y - checker->play->court->half_court;
    const char *who = look_body(checker, span->holder);
    bool passed = index > 0 && segment->ball.at[index - 1].state == BALL_FLIGHT &&
                  t < span->from + RUN_SAMPLE;
    body from = passed ? segment->ball.at[index - 1].holder : (body)BODY_NONE;
    struct finding *finding = look_report(checker, t, by, span->holder, from);
    int task = passed ? segment->ball.at[index - 1].task : -1;
    if (task >= 0 && (size_t)task < segment->tasks) {
        finding->span = segment_task(segment, (size_t)task)->span;
    }
    finding->mark = MARK_POINT;
    finding->a = segment_at(segment, span->holder, t);
    if (passed) {
        look_say(checker, &finding->message,
                 "%s: keep the ball in front. %s catches behind half court, and it has been over "
                 "the line.",
                 look_body(checker, from), who);
        look_say(checker, &finding->help, "write: %s goes to top, before the pass", who);
    } else {
        look_say(checker, &finding->message,
                 "%s: stay in front with the ball. You take it back over half court, and it has "
                 "been over the line.",
                 who);
        look_say(checker, &finding->help,
                 "write: %s dribbles to top, which is in front of half court", who);
    }
}

void look_ball_backcourt(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    struct crossing crossing = {0};
    if (checker->play->is_drill) {
        return;
    }
    follow(segment, segment->duration, front_at_start(segment), &crossing);
    if (crossing.found) {
        back_over(checker, crossing.span, crossing.t);
    }
}

/* ---- ball.handoff ---- */

static bool at_a_fixed_moment(const struct task *task)
{
    for (size_t i = 0; i < task->waits.count; i++) {
        if (task->waits.at[i].fixed) {
            return true;
        }
    }
    return false;
}

void look_ball_handoff(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double t = segment->record[i].time[MOMENT_STARTED];
        if (task->kind != TASK_EXCHANGE || t < 0 || !at_a_fixed_moment(task) ||
            task->other >= BODY_COUNT || !segment->track[task->other].on_floor) {
            continue; /* without one it waits until the two have met */
        }
        double far =
            vec2_distance(segment_at(segment, task->who, t), segment_at(segment, task->other, t));
        if (far <= checker->limit + REACH) {
            continue;
        }
        struct finding *finding = look_report(checker, t, far, task->who, task->other);
        const char *who = look_body(checker, task->who), *to = look_body(checker, task->other);
        finding->span = task->span;
        finding->mark = MARK_DISTANCE;
        finding->a = segment_at(segment, task->who, t);
        finding->b = segment_at(segment, task->other, t);
        look_say(checker, &finding->message,
                 "%s: hand it over when you meet. You and %s are %s apart then; arms reach %s.",
                 who, to, look_length(checker, far), look_length(checker, checker->limit));
        look_say(checker, &finding->help, "write: %s hands off to %s", who, to);
    }
}
