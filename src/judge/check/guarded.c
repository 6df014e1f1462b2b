/* SPDX-License-Identifier: MIT */
/* guarded: the rule of who is closely guarded: so long with the ball and a defender within reach.
 */
#include "floor/motion/motion.h"
#include "judge/check/lasting.h"

#define GUARDED (6 * FEET) /* NFHS 4-10, NCAA rule 4; from foot to foot */
#define GUARDED_FIBA 1.0   /* m: FIBA art. 27 */
#define FOOT_AHEAD                                                                                 \
    MOTION_BODY /* m: the foot that is measured to stands so far before the middle                 \
                 */

static bool counts_dribbles(const struct checker *checker)
{
    return checker->play->rules == COURT_HIGH_SCHOOL; /* FIBA and NCAA count only who holds it */
}

static bool is_guarded(const struct checker *checker, const struct segment *segment, body b,
                       size_t sample)
{
    bool fiba = checker->play->rules == COURT_FIBA || checker->play->rules == COURT_MINI;
    double within = (fiba ? GUARDED_FIBA : GUARDED) + FOOT_AHEAD;
    struct vec2 at = look_at(segment, b, sample);
    if (!fiba && at.y > checker->play->court->half_court) {
        return false; /* there it is not counted */
    }
    for (int x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        if (!segment->track[x].on_floor) {
            continue;
        }
        struct vec2 to = vec2_sub(look_at(segment, (body)x, sample), at);
        bool rim_side = vec2_dot(to, at) < 0; /* who trails behind guards no more */
        if (rim_side && vec2_length(to) <= within) {
            return true;
        }
    }
    return false;
}

/* He is told to hold it, or to fake: whoever only waits may be dribbling where he stands. Who
 * comes off a screen is not guarded meanwhile. */
static bool is_told_to(const struct segment *segment, body b, double t, enum task_kind kind)
{
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, b, t, &in, &index);
    if (!task || task->kind != kind || task->verb == VERB_STAYS || in != segment) {
        return false;
    }
    double arrived = in->record[index].time[MOMENT_ARRIVED];
    return arrived < 0 || t <= arrived;
}

static enum so guarded_while(const struct checker *checker, const struct segment *segment, body b,
                             size_t sample, bool dribbling)
{
    double t = (double)sample * RUN_SAMPLE;
    const struct ball_span *span = lasting_span(segment, t);
    bool has = span && span->state == BALL_HELD && span->holder == b && !span->throw_in;
    bool does = dribbling ? look_dribbles(segment, b, t) && is_told_to(segment, b, t, TASK_CARRY)
                          : is_told_to(segment, b, t, TASK_HOLD);
    return has && does && is_guarded(checker, segment, b, sample) ? SO_YES : SO_NOT;
}

static enum so holds_guarded(const struct checker *checker, const struct segment *segment, body b,
                             size_t sample)
{
    return guarded_while(checker, segment, b, sample, false);
}

static enum so dribbles_guarded(const struct checker *checker, const struct segment *segment,
                                body b, size_t sample)
{
    return guarded_while(checker, segment, b, sample, true);
}

static void closely_guarded(struct checker *checker, is_so *so, body b, double limit)
{
    struct stay stay = lasting_stay(checker, so, b, limit);
    if (stay.passed < 0) {
        return;
    }
    struct finding *finding = look_report(checker, stay.passed, stay.whole, b, BODY_NONE);
    const char *who = look_body(checker, b);
    bool holds = so == holds_guarded;
    finding->limit = limit;
    finding->mark = MARK_POINT;
    finding->a = segment_at(checker->segment, b, stay.passed);
    look_say(checker, &finding->message,
             "%s: %s sooner. You %s %s with a defender within reach; %s is the limit.", who,
             holds ? "pass, shoot or dribble" : "pass or shoot",
             holds ? "hold the ball" : "dribble", look_seconds(checker, stay.whole),
             look_seconds(checker, limit));
    look_say(checker, &finding->help,
             holds ? "write: %s holds for 1 s, or let %s pass before it"
                   : "let %s dribble less far, or pass before %s does",
             who, who);
}

static bool has_task(const struct segment *segment, body b, enum task_kind kind)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->who == b && task->kind == kind) {
            return true;
        }
    }
    return false;
}

void look_time_closely_guarded(struct checker *checker)
{
    double limit = checker->limit;
    for (body b = 0; b < BODY_COACH && limit > 0 && !checker->play->is_drill; b++) {
        if (!look_plays(checker, b)) {
            continue;
        }
        if (has_task(checker->segment, b, TASK_HOLD)) {
            closely_guarded(checker, holds_guarded, b, limit);
        }
        if (counts_dribbles(checker) && has_task(checker->segment, b, TASK_CARRY)) {
            closely_guarded(checker, dribbles_guarded, b, limit);
        }
    }
}
