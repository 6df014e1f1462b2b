/* SPDX-License-Identifier: MIT */
/* space: checks about where players stand at rest. */
#include <math.h>

#include "base/real.h"
#include "judge/check/look.h"

#define ONE_SPOT (3 * FEET) /* nearer than this two stand on one spot: spot.taken says so; ours */
#define YOUTH_CLOSE (10 * FEET) /* u12: common practice, no source */
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

/* Where to send one of the two: to the perimeter spot he is near to but not on, if that is far
 * enough from the other. */
static const char *where_to(struct checker *checker, struct vec2 at, struct vec2 other,
                            double limit)
{
    enum side side;
    double far;
    enum spot spot = court_nearest_perimeter(checker->play->court, at, &side, &far);
    struct vec2 there = court_spot(checker->play->court, spot, side);
    if (far < 2 * HALF_FOOT || far > 10 * FEET || vec2_distance(there, other) < limit) {
        return NULL;
    }
    return look_spot(checker, spot, side);
}

static double off_spot(const struct checker *checker, struct vec2 at)
{
    double far;
    court_nearest_perimeter(checker->play->court, at, NULL, &far);
    return far;
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
    finding->mark = MARK_DISTANCE;
    finding->a = at_a;
    finding->b = at_b;
    const char *who = look_body(checker, a), *other = look_body(checker, b);
    const char *spot = where_to(checker, at_a, at_b, limit);
    struct str advice;
    if (spot) {
        look_say(checker, &advice, "go to %s", spot);
        look_say(checker, &finding->help, "send %s to %s", who, spot);
    } else {
        look_say(checker, &advice, "give %s more room", other);
        look_say(checker, &finding->help, "send %s to another spot, or write: limit space.close %s",
                 who, look_length(checker, floor(gap / FEET) * FEET));
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
    finding->mark = MARK_POINT;
    finding->a = at;
    const char *who = look_body(checker, b);
    look_say(checker, &finding->message,
             "%s: stay low in the corner. You stand %s up from the %s; keep within %s.", who,
             look_length(checker, up), corner, look_length(checker, checker->limit));
    look_say(checker, &finding->help, "send %s to %s", who, corner);
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
    finding->mark = MARK_POINT;
    finding->a = look_at(checker->segment, a, sample);
    const char *who = look_body(checker, a), *other = look_body(checker, b);
    look_say(checker, &finding->message,
             "%s: find another spot. %s stands there too when the step ends, %s away.", who, other,
             look_length(checker, gap));
    look_say(checker, &finding->help, "send %s elsewhere, or write first where %s goes", who,
             other);
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
            if (!look_plays(checker, a) || !look_plays(checker, b) || look_linked(segment, a, b)) {
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
