/* SPDX-License-Identifier: MIT */
/* pass: checks about passes, catches and what follows a shot. */
#include <math.h>

#include "base/real.h"
#include "judge/check/look.h"

#define SHOT_FOLLOWS 1.6 /* s from catch to release: a catch-and-shoot; ours */

static const struct task *pass_of(const struct segment *segment, const struct ball_span *span)
{
    if (span->state != BALL_FLIGHT || span->task < 0 || (size_t)span->task >= segment->tasks) {
        return NULL;
    }
    const struct task *task = segment_task(segment, (size_t)span->task);
    return task->kind == TASK_PASS ? task : NULL;
}

/* ---- pass.long ---- */

void look_pass_long(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count && !checker->play->is_drill; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        const struct task *task = pass_of(segment, span);
        double length = vec2_distance(span->start, span->end);
        if (!task || task->pass == PASS_SKIP || length <= checker->limit + HALF_FOOT) {
            continue;
        }
        struct finding *finding =
            look_report(checker, span->from, length, span->holder, span->target);
        const char *who = look_body(checker, span->holder), *to = look_body(checker, span->target);
        finding->span = task->span;
        finding->mark = MARK_LANE;
        finding->a = span->start;
        finding->b = span->end;
        look_say(checker, &finding->message,
                 "%s: look for a shorter pass. It is %s to %s; over %s a defender has time to get "
                 "there.",
                 who, look_length(checker, length), to, look_length(checker, checker->limit));
        look_say(checker, &finding->help, "write %s skip passes to %s if it is meant", who, to);
    }
}

/* ---- open.catch ---- */

/* The catch that a shot follows, or TIME_NEVER when the shooter dribbled or held long before. */
static double catch_before(const struct segment *segment, body shooter, double shot)
{
    for (size_t i = segment->ball.count; i-- > 0;) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state == BALL_FLIGHT && span->target == shooter && span->to <= shot) {
            return shot - span->to <= SHOT_FOLLOWS ? span->to : TIME_NEVER;
        }
    }
    return TIME_NEVER;
}

void look_open_catch(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count && !checker->play->is_drill; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        double t =
            span->state == BALL_SHOT ? catch_before(segment, span->holder, span->from) : TIME_NEVER;
        if (t < 0) {
            continue;
        }
        double least = INFINITY;
        body nearest = BODY_NONE;
        struct vec2 at = segment_at(segment, span->holder, t);
        for (int x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
            double gap = segment->track[x].sample
                             ? vec2_distance(segment_at(segment, (body)x, t), at)
                             : (double)INFINITY;
            if (gap < least) {
                least = gap;
                nearest = (body)x;
            }
        }
        if (least >= checker->limit - HALF_FOOT) {
            continue;
        }
        struct finding *finding = look_report(checker, t, least, span->holder, nearest);
        const char *who = look_body(checker, span->holder);
        finding->mark = MARK_DISTANCE;
        finding->a = at;
        finding->b = segment_at(segment, nearest, t);
        look_say(checker, &finding->message,
                 "%s: get open before the catch. %s is %s away as you catch to shoot; %s is open.",
                 who, look_body(checker, nearest), look_length(checker, least),
                 look_length(checker, checker->limit));
        look_say(checker, &finding->help, "give %s a screen or a cut first, or pass on", who);
    }
}

/* ---- shot.balance ---- */

static int how_many(const struct segment *segment, enum verb verb)
{
    int count = 0;
    for (size_t i = 0; i < segment->tasks; i++) {
        count += segment_task(segment, i)->verb == verb;
    }
    return count;
}

void look_shot_balance(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    int glass = how_many(segment, VERB_REBOUNDS), back = how_many(segment, VERB_GETS_BACK);
    bool shot = false;
    double t = 0;
    for (size_t i = 0; i < segment->ball.count; i++) {
        if (segment->ball.at[i].state == BALL_SHOT && !shot) {
            shot = true;
            t = segment->ball.at[i].from;
        }
    }
    if (!shot || checker->play->is_drill || glass + back == 0 || (glass >= 3 && back >= 1)) {
        return;
    }
    struct finding *finding = look_report(checker, t, glass, BODY_NONE, BODY_NONE);
    look_say(checker, &finding->message,
             "Send three to the glass and keep one back: %d %s, %d %s back.", glass,
             glass == 1 ? "rebounds" : "rebound", back, back == 1 ? "gets" : "get");
    look_say(checker, &finding->help, "write: 4 rebounds, and for the safety: 1 gets back");
}
