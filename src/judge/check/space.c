/* SPDX-License-Identifier: MIT */
/* space: checks about where players stand at rest. */
#include <math.h>

#include "base/real.h"
#include "judge/check/look.h"

#define ONE_SPOT (3 * FEET) /* nearer than this two stand on one spot: spot.taken says so; ours */
#define YOUTH_CLOSE (10 * FEET) /* u12: common practice, no source */
#define CLEAR (12 * FEET)       /* a spot to send somebody to is free so far around; ours */
#define END_REST 0.3            /* s: who stands at the very end of a play stands; ours */

static bool stands_on_floor(const struct checker *checker, body b, size_t sample)
{
    const struct court *court = checker->play->court;
    struct vec2 at = look_at(checker->segment, b, sample);
    /* spacing is for the perimeter and the posts: who is in the lane is on his way */
    return court_inside(court, at, 0) && !look_inside_player(checker, at) &&
           look_idle(checker, b, sample) &&
           !look_shot(checker->segment, (double)sample * RUN_SAMPLE);
}

/* A stretch of samples long enough to be called standing: [from, to). */
struct rest {
    size_t from, to;
};

static bool long_enough(const struct checker *checker, struct rest rest)
{
    double seconds = (double)(rest.to - rest.from) * RUN_SAMPLE;
    bool at_end = rest.to == checker->segment->samples && look_last(checker);
    return seconds >= (at_end ? END_REST : REST_TIME);
}

/* ---- space.close ---- */

/* The least distance between two who start on spots with names: the start's own. */
static double start_least(const struct play *play)
{
    double least = INFINITY;
    for (int a = 1; a <= play->players; a++) {
        for (int b = 1; b < a; b++) {
            const struct start_body *one = &play->start[body_attacker(a)];
            const struct start_body *two = &play->start[body_attacker(b)];
            if (one->on_floor && two->on_floor && one->spot != SPOT_COUNT &&
                two->spot != SPOT_COUNT) {
                least = real_min(least, vec2_distance(one->at, two->at));
            }
        }
    }
    if (play->formation < 0) {
        return least;
    }
    const struct formation *formation = formation_at((size_t)play->formation);
    for (int a = 0; a < 5; a++) {
        for (int b = 0; b < a; b++) {
            least = real_min(least, vec2_distance(formation_point(play->court, &formation->at[a]),
                                                  formation_point(play->court, &formation->at[b])));
        }
    }
    return least;
}

static double close_limit(const struct checker *checker)
{
    double limit = checker->limit;
    if (!checker->limit_written && checker->play->level == LEVEL_U12) {
        limit = real_min(limit, YOUTH_CLOSE);
    }
    return real_min(limit, start_least(checker->play));
}

static double gap_at(const struct checker *checker, body a, body b, size_t sample)
{
    return vec2_distance(look_at(checker->segment, a, sample),
                         look_at(checker->segment, b, sample));
}

/* The first stretch in which both stand closer than the limit; false: none. */
static bool stand_close(const struct checker *checker, body a, body b, double limit,
                        struct rest *rest)
{
    rest->from = rest->to = 0;
    for (size_t i = 0; i < checker->segment->samples; i++) {
        double gap = gap_at(checker, a, b, i);
        bool close = gap < limit - HALF_FOOT && gap > ONE_SPOT && stands_on_floor(checker, a, i) &&
                     stands_on_floor(checker, b, i);
        if (close) {
            rest->to = i + 1;
        } else if (long_enough(checker, *rest)) {
            return true;
        } else {
            rest->from = rest->to = i + 1;
        }
    }
    return long_enough(checker, *rest);
}

/* Far enough from every team-mate as they stand. */
static bool is_free(const struct checker *checker, struct vec2 there, body who, size_t sample,
                    double limit)
{
    for (body b = 0; b < BODY_COACH; b++) {
        if (b != who && look_plays(checker, b) &&
            vec2_distance(look_at(checker->segment, b, sample), there) < limit - HALF_FOOT) {
            return false;
        }
    }
    return true;
}

/* Where to send one of the two: to the nearest free spot of the perimeter, or NULL. */
static const char *where_to(struct checker *checker, body who, size_t sample, double limit)
{
    static const enum spot spots[] = {SPOT_CORNER, SPOT_WING, SPOT_SLOT, SPOT_TOP};
    struct vec2 at = look_at(checker->segment, who, sample);
    const char *nearest = NULL;
    double least = 20 * FEET; /* farther is another play */
    for (size_t i = 0; i < sizeof spots / sizeof *spots; i++) {
        for (int k = 0; k < (spots[i] == SPOT_TOP ? 1 : 2); k++) {
            enum side side = spots[i] == SPOT_TOP ? SIDE_NONE : k ? SIDE_RIGHT : SIDE_LEFT;
            struct vec2 there = court_spot(checker->play->court, spots[i], side);
            double far = vec2_distance(there, at);
            if (far > 2 * HALF_FOOT && far < least && is_free(checker, there, who, sample, limit)) {
                least = far;
                nearest = look_spot(checker, spots[i], side);
            }
        }
    }
    return nearest;
}

static double off_spot(const struct checker *checker, struct vec2 at)
{
    double far;
    court_nearest_perimeter(checker->play->court, at, NULL, &far);
    return far;
}

/* What brought him where he stands, or NULL when he started there. */
static const struct task *came_by(const struct checker *checker, body who, double t)
{
    const struct segment *segment = checker->segment;
    const struct task *latest = NULL;
    for (; segment && !latest; segment = segment->before) {
        double when = TIME_NEVER;
        for (size_t i = 0; i < segment->tasks; i++) {
            const struct task *task = segment_task(segment, i);
            double started = segment->record[i].time[MOMENT_STARTED];
            bool moved = task->kind != TASK_HOLD && task->kind != TASK_PASS &&
                         task->kind != TASK_SHOOT && task->sentence;
            if (moved && task->who == who && started >= 0 && started <= t && started >= when) {
                when = started;
                latest = task;
            }
        }
        t = segment->begins;
    }
    return latest;
}

/* The line to change: the sentence that brought him there, else the start. */
static struct span line_of(const struct checker *checker, body who, double t, struct span otherwise)
{
    const struct task *task = came_by(checker, who, t);
    const struct block *block = checker->play->block;
    for (size_t i = 0; !task && block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SETTING && form->setting.setting == SETTING_START) {
            return form->span;
        }
    }
    return task ? task->span : otherwise;
}

/* With the ball in hand one dribbles there. */
static const char *goes_by(const struct checker *checker, body who, double t)
{
    const struct task *task = came_by(checker, who, t);
    bool with_ball = task ? look_uses_ball(task) : segment_holder(checker->segment, t) == who;
    return with_ball ? "dribbles" : "goes";
}

static void close_pair(struct checker *checker, body a, body b, double limit, size_t sample)
{
    struct vec2 at_a = look_at(checker->segment, a, sample);
    struct vec2 at_b = look_at(checker->segment, b, sample);
    if (off_spot(checker, at_a) < off_spot(checker, at_b)) { /* who is off his spot moves */
        body swap = a;
        a = b;
        b = swap;
        struct vec2 swap_at = at_a;
        at_a = at_b;
        at_b = swap_at;
    }
    double gap = vec2_distance(at_a, at_b);
    struct finding *finding = look_report(checker, (double)sample * RUN_SAMPLE, gap, a, b);
    finding->limit = limit;
    finding->span = line_of(checker, a, finding->time, finding->span);
    finding->mark = MARK_DISTANCE;
    finding->a = at_a;
    finding->b = at_b;
    const char *who = look_body(checker, a), *other = look_body(checker, b);
    const char *spot = where_to(checker, a, sample, limit);
    struct str advice;
    if (spot) {
        look_say(checker, &advice, "go to %s", spot);
        look_say(checker, &finding->help, "write: %s %s to %s", who,
                 goes_by(checker, a, finding->time), spot);
    } else {
        look_say(checker, &advice, "give %s more room", other);
        look_say(checker, &finding->help,
                 "send %s to a free spot, or write: accept space.close \"why\"", who);
    }
    look_say(checker, &finding->message, "%s: %s. %s and %s stand %s apart; keep %s or more.", who,
             advice.at, other, who, look_length(checker, gap), look_length(checker, limit));
}

void look_space_close(struct checker *checker)
{
    double limit = close_limit(checker);
    for (body a = 0; a < BODY_COACH && !checker->play->is_drill; a++) {
        for (body b = 0; b < a; b++) {
            struct rest rest;
            if (look_plays(checker, a) && look_plays(checker, b) &&
                !look_linked(checker->segment, a, b) && stand_close(checker, a, b, limit, &rest)) {
                close_pair(checker, a, b, limit, rest.from);
            }
        }
    }
}

/* ---- space.corner ---- */

/* How far up from deep somebody in a corner stands; negative: he is not in a corner. */
static double up_from_deep(const struct checker *checker, struct vec2 at)
{
    enum side side;
    double far;
    enum spot spot = court_nearest_perimeter(checker->play->court, at, &side, &far);
    if (spot != SPOT_CORNER) {
        return -1;
    }
    struct vec2 deep = court_spot(checker->play->court, spot, side);
    bool wide = fabs(at.x) > fabs(deep.x) - 3 * FEET; /* else he is between corner and lane */
    return wide ? at.y - deep.y : -1;
}

static bool stand_high(const struct checker *checker, body b, struct rest *rest)
{
    rest->from = rest->to = 0;
    for (size_t i = 0; i < checker->segment->samples; i++) {
        double up = up_from_deep(checker, look_at(checker->segment, b, i));
        if (up > checker->limit + HALF_FOOT && stands_on_floor(checker, b, i)) {
            rest->to = i + 1;
        } else if (long_enough(checker, *rest)) {
            return true;
        } else {
            rest->from = rest->to = i + 1;
        }
    }
    return long_enough(checker, *rest);
}

static void high(struct checker *checker, body b, size_t sample)
{
    struct vec2 at = look_at(checker->segment, b, sample);
    double up = up_from_deep(checker, at);
    const char *corner = look_spot(checker, SPOT_CORNER, at.x < 0 ? SIDE_LEFT : SIDE_RIGHT);
    struct finding *finding = look_report(checker, (double)sample * RUN_SAMPLE, up, b, BODY_NONE);
    finding->severity = up > 2 * checker->limit + HALF_FOOT ? SEVERITY_WARNING : SEVERITY_NOTE;
    finding->span = line_of(checker, b, finding->time, finding->span);
    finding->mark = MARK_POINT;
    finding->a = at;
    const char *who = look_body(checker, b);
    look_say(checker, &finding->message,
             "%s: stay low in the corner. You stand %s up from the %s; keep within %s.", who,
             look_length(checker, up), corner, look_length(checker, checker->limit));
    look_say(checker, &finding->help, "write: %s %s to %s", who, goes_by(checker, b, finding->time),
             corner);
}

void look_space_corner(struct checker *checker)
{
    for (body b = 0; b < BODY_COACH && !checker->play->is_drill; b++) {
        struct rest rest;
        if (look_plays(checker, b) && stand_high(checker, b, &rest)) {
            high(checker, b, rest.from);
        }
    }
}

/* ---- spot.taken ---- */

static bool goes(const struct task *task)
{
    return task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE;
}

/* They belong together for a screen, or for a hand-off after which neither has gone anywhere: who
 * goes on, and comes to rest where the other is, does so for another reason. */
static bool still_together(const struct segment *segment, body a, body b)
{
    double last = TIME_NEVER, left = TIME_NEVER;
    bool linked = false;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        if (look_links(task, a, b)) {
            if (task->kind == TASK_SCREEN || task->kind == TASK_USE) {
                return true;
            }
            linked = true;
            last = real_max(last, started);
        } else if ((task->who == a || task->who == b) && goes(task)) {
            left = real_max(left, started);
        }
    }
    return linked && left <= last;
}

static bool rests(const struct checker *checker, body b, size_t sample)
{
    struct vec2 at = look_at(checker->segment, b, sample);
    return look_idle(checker, b, sample) && court_inside(checker->play->court, at, 0);
}

static void taken(struct checker *checker, body a, body b, size_t sample)
{
    double gap = gap_at(checker, a, b, sample);
    const struct segment *in;
    size_t first = 0, second = 0;
    double t = (double)sample * RUN_SAMPLE;
    const struct task *one = look_latest(checker->segment, a, t, &in, &first);
    const struct task *two = look_latest(checker->segment, b, t, &in, &second);
    if (!one || (two && second > first)) { /* who was sent there last is the one to be sent on */
        body swap = a;
        a = b;
        b = swap;
    }
    struct finding *finding = look_report(checker, t, gap, a, b);
    finding->span = line_of(checker, a, t, finding->span);
    finding->mark = MARK_POINT;
    finding->a = look_at(checker->segment, a, sample);
    const char *who = look_body(checker, a), *other = look_body(checker, b);
    look_say(checker, &finding->message,
             "%s: find another spot. %s stands there too when the step ends, %s away.", who, other,
             look_length(checker, gap));
    const char *spot = where_to(checker, a, sample, CLEAR);
    if (spot) {
        look_say(checker, &finding->help, "write: %s %s to %s, or first where %s goes", who,
                 goes_by(checker, a, t), spot, other);
    } else {
        look_say(checker, &finding->help, "send %s elsewhere, or write first where %s goes", who,
                 other);
    }
}

void look_spot_taken(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    size_t rest = (size_t)(END_REST / RUN_SAMPLE);
    if (checker->play->is_drill || segment->samples <= rest ||
        look_shot(segment, segment->duration)) {
        return;
    }
    for (body a = 0; a < BODY_COACH; a++) {
        for (body b = 0; b < a; b++) {
            if (!look_plays(checker, a) || !look_plays(checker, b) ||
                still_together(segment, a, b)) {
                continue;
            }
            bool both = true;
            for (size_t i = segment->samples - rest; i < segment->samples; i++) {
                both = both && gap_at(checker, a, b, i) <= checker->limit && rests(checker, a, i) &&
                       rests(checker, b, i);
            }
            if (both) {
                taken(checker, a, b, segment->samples - 1);
            }
        }
    }
}
