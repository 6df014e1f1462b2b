/* SPDX-License-Identifier: MIT */
/* space: checks about where players stand at rest. */
#include <math.h>

#include "base/real.h"
#include "judge/check/stand.h"

#define BESIDE (1 * FEET) /* so much farther apart end two who are sent to one place; ours */
#define STOPS .5 /* m/s: from no more than this a player stops within an inch or two; ours */
#define ONE_SPOT (3 * FEET) /* nearer than this two stand on one spot: spot.taken says so; ours */

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
    return real_min(checker->limit, start_least(checker->play));
}

static double gap_at(const struct checker *checker, body a, body b, size_t sample)
{
    return vec2_distance(look_at(checker->segment, a, sample),
                         look_at(checker->segment, b, sample));
}

struct pair {
    body a, b;
    double limit;
};

static bool are_close(const struct checker *checker, const void *about, size_t sample)
{
    const struct pair *pair = about;
    double gap = gap_at(checker, pair->a, pair->b, sample);
    return gap < pair->limit - HALF_FOOT && gap > ONE_SPOT &&
           stand_on_floor(checker, pair->a, sample) && stand_on_floor(checker, pair->b, sample);
}

/* Which of the two is to move: who came there, if the other one did not; else who is off his spot;
 * when both stand on spots, who came last. */
static bool second_moves(const struct checker *checker, body a, body b, size_t sample)
{
    double t = (double)sample * RUN_SAMPLE;
    const struct task *one = stand_came_by(checker, a, t), *two = stand_came_by(checker, b, t);
    double off_a = stand_off_spot(checker, look_at(checker->segment, a, sample));
    double off_b = stand_off_spot(checker, look_at(checker->segment, b, sample));
    if (!one != !two) {
        return two != NULL;
    }
    if (one && fabs(off_a - off_b) < HALF_FOOT) {
        return one->span.begin < two->span.begin;
    }
    return off_a < off_b;
}

static void close_pair(struct checker *checker, body a, body b, double limit, size_t sample)
{
    if (second_moves(checker, a, b, sample)) {
        body swap = a;
        a = b;
        b = swap;
    }
    struct vec2 at_a = look_at(checker->segment, a, sample);
    struct vec2 at_b = look_at(checker->segment, b, sample);
    double gap = vec2_distance(at_a, at_b);
    struct finding *finding = look_report(checker, (double)sample * RUN_SAMPLE, gap, a, b);
    finding->limit = limit;
    finding->span = stand_line(checker, a, finding->time, finding->span);
    finding->mark = MARK_DISTANCE;
    finding->a = at_a;
    finding->b = at_b;
    const char *who = look_body(checker, a), *other = look_body(checker, b);
    const char *spot = stand_where_to(checker, a, sample, limit);
    struct str advice;
    if (spot) {
        look_say(checker, &advice, "go to %s", spot);
        look_say(checker, &finding->help, "write: %s %s to %s", who,
                 stand_goes_by(checker, a, finding->time), spot);
    } else {
        look_say(checker, &advice, "give %s more room", other);
        look_say(checker, &finding->help,
                 "send %s to a free spot, or write: accept space.close \"why\"", who);
    }
    look_say(checker, &finding->message, "%s: %s. %s and %s stand %s apart; keep %s or more.", who,
             advice.at, other, who, look_length(checker, gap), look_length(checker, limit));
}

/* Threw in in this step, and no sentence has sent him on: where he steps in is nobody's spacing. */
static bool has_thrown_in(const struct checker *checker, body b)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state == BALL_FLIGHT && span->throw_in && span->holder == b) {
            return !stand_came_by(checker, b, segment->duration);
        }
    }
    return false;
}

void look_space_close(struct checker *checker)
{
    double limit = close_limit(checker);
    for (body a = 0; a < BODY_COACH && !checker->play->is_drill; a++) {
        for (body b = 0; b < a; b++) {
            struct pair pair = {a, b, limit};
            struct rest rest;
            if (look_plays(checker, a) && look_plays(checker, b) &&
                !look_linked(checker->segment, a, b) && !has_thrown_in(checker, a) &&
                !has_thrown_in(checker, b) && stand_rest(checker, are_close, &pair, &rest)) {
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

static bool is_high(const struct checker *checker, const void *about, size_t sample)
{
    const body *b = about;
    return stand_on_floor(checker, *b, sample) &&
           up_from_deep(checker, look_at(checker->segment, *b, sample)) >
               checker->limit + HALF_FOOT;
}

static void high(struct checker *checker, body b, size_t sample)
{
    struct vec2 at = look_at(checker->segment, b, sample);
    double up = up_from_deep(checker, at);
    const char *corner = look_spot(checker, SPOT_CORNER, look_side(checker, at.x));
    struct finding *finding = look_report(checker, (double)sample * RUN_SAMPLE, up, b, BODY_NONE);
    finding->severity = up > 2 * checker->limit + HALF_FOOT ? SEVERITY_WARNING : SEVERITY_NOTE;
    finding->span = stand_line(checker, b, finding->time, finding->span);
    finding->mark = MARK_POINT;
    finding->a = at;
    const char *who = look_body(checker, b);
    look_say(checker, &finding->message,
             "%s: stay low in the corner. You stand %s up from the %s; keep within %s.", who,
             look_length(checker, up), corner, look_length(checker, checker->limit));
    look_say(checker, &finding->help, "write: %s %s to %s", who,
             stand_goes_by(checker, b, finding->time), corner);
}

void look_space_corner(struct checker *checker)
{
    for (body b = 0; b < BODY_COACH && !checker->play->is_drill; b++) {
        struct rest rest;
        if (look_plays(checker, b) && stand_rest(checker, is_high, &b, &rest)) {
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

/* He stands with his feet still to screen; for whom, or BODY_NONE. */
static body screens_for(const struct segment *segment, body b, size_t sample)
{
    double t = (double)sample * RUN_SAMPLE;
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, b, t, &in, &index);
    bool set = task && task->kind == TASK_SCREEN && in->record[index].time[MOMENT_SET] >= 0;
    return set ? task->other : (body)BODY_NONE;
}

/* Two screens on one cutter's way, shoulder to shoulder. */
static bool double_screen(const struct segment *segment, body a, body b, size_t sample)
{
    body user = screens_for(segment, a, sample);
    return user != BODY_NONE && user == screens_for(segment, b, sample);
}

/* Whoever holds a screen has come to rest too: it concerns the two of it and nobody else. */
static bool rests(const struct checker *checker, body b, size_t sample)
{
    const struct segment *segment = checker->segment;
    bool screens = screens_for(segment, b, sample) != BODY_NONE &&
                   look_speed(segment, b, sample) <= REST_SPEED;
    return (screens || look_idle(checker, b, sample)) &&
           court_inside(checker->play->court, look_at(segment, b, sample), 0);
}

/* Sent to one place they end beside each other, as near as bodies let them. */
static double one_spot(const struct checker *checker, body a, body b)
{
    double t = checker->segment->duration;
    const struct task *one = stand_came_by(checker, a, t), *two = stand_came_by(checker, b, t);
    bool same =
        one && two && goes(one) && goes(two) && vec2_near(one->planned, two->planned, HALF_FOOT);
    return checker->limit + (same ? BESIDE : 0);
}

static void taken(struct checker *checker, body a, body b, size_t sample)
{
    double gap = gap_at(checker, a, b, sample);
    double t = (double)sample * RUN_SAMPLE;
    const struct task *one = stand_came_by(checker, a, t), *two = stand_came_by(checker, b, t);
    /* who was sent there last is the one to be sent on, whoever has shot or passed since */
    if (!one || (two && two->span.begin > one->span.begin)) {
        body swap = a;
        a = b;
        b = swap;
    }
    struct finding *finding = look_report(checker, t, gap, a, b);
    finding->span = stand_line(checker, a, t, finding->span);
    finding->mark = MARK_POINT;
    finding->a = look_at(checker->segment, a, sample);
    const char *who = look_body(checker, a), *other = look_body(checker, b);
    look_say(checker, &finding->message,
             "%s: find another spot. %s stands there too when the step ends, %s away.", who, other,
             look_length(checker, gap));
    const char *spot = stand_where_to(checker, a, sample, CLEAR);
    if (spot) {
        look_say(checker, &finding->help, "write: %s %s to %s, or send %s on first", who,
                 stand_goes_by(checker, a, t), spot, other);
    } else {
        look_say(checker, &finding->help, "send %s elsewhere, or send %s on first", who, other);
    }
}

/* The shooter of the step and the samples until he has shot, or BODY_NONE and all of them. */
static body until_shot(const struct segment *segment, size_t *samples)
{
    *samples = segment->samples;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state == BALL_SHOT) {
            size_t left = (size_t)(span->from / RUN_SAMPLE) + 1;
            *samples = left < *samples ? left : *samples;
            return span->holder;
        }
    }
    return BODY_NONE;
}

/* In a step with a shot: it may be taken as soon as the ball is there, and by the lane players
 * finish and rebound beside each other. */
static bool stands_at_shot(const struct checker *checker, body b, size_t sample, body shooter)
{
    return !look_inside_player(checker, look_at(checker->segment, b, sample)) &&
           (b == shooter ? look_speed(checker->segment, b, sample) <= REST_SPEED
                         : rests(checker, b, sample));
}

/* Has got there and is about to stop: a step ends with its last arrival and does not wait. */
static bool arrives(const struct checker *checker, body b, size_t sample)
{
    return look_speed(checker->segment, b, sample) <= STOPS && look_done(checker, b, sample) &&
           court_inside(checker->play->court, look_at(checker->segment, b, sample), 0);
}

static bool both_end_there(const struct checker *checker, const struct pair *pair)
{
    size_t last = checker->segment->samples - 1;
    return (arrives(checker, pair->a, last) || rests(checker, pair->a, last)) &&
           (arrives(checker, pair->b, last) || rests(checker, pair->b, last)) &&
           gap_at(checker, pair->a, pair->b, last) <= pair->limit &&
           !double_screen(checker->segment, pair->a, pair->b, last);
}

static bool stand_there(const struct checker *checker, const struct pair *pair, size_t samples,
                        body shooter)
{
    body a = pair->a, b = pair->b;
    bool shoots = a == shooter || b == shooter;
    size_t rest = shoots ? 1 : (size_t)(END_REST / RUN_SAMPLE);
    bool both = samples > rest && !double_screen(checker->segment, a, b, samples - 1);
    for (size_t i = samples - rest; both && i < samples; i++) {
        both = gap_at(checker, a, b, i) <= pair->limit &&
               (shooter == BODY_NONE ? rests(checker, a, i) && rests(checker, b, i)
                                     : stands_at_shot(checker, a, i, shooter) &&
                                           stands_at_shot(checker, b, i, shooter));
    }
    return both;
}

static bool end_there(const struct checker *checker, const struct pair *pair, size_t samples,
                      body shooter)
{
    return stand_there(checker, pair, samples, shooter) ||
           (shooter == BODY_NONE && both_end_there(checker, pair));
}

/* When the shot leaves, and when the step ends: the ball does not wait for all. */
void look_spot_taken(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    if (checker->play->is_drill || look_shot(segment->before, segment->begins)) {
        return;
    }
    size_t samples;
    body shooter = until_shot(segment, &samples);
    for (body a = 0; a < BODY_COACH; a++) {
        for (body b = 0; b < a; b++) {
            if (!look_plays(checker, a) || !look_plays(checker, b) ||
                still_together(segment, a, b)) {
                continue;
            }
            struct pair pair = {a, b, one_spot(checker, a, b)};
            if (end_there(checker, &pair, samples, shooter)) {
                taken(checker, a, b, samples - 1);
            } else if (end_there(checker, &pair, segment->samples, shooter)) {
                taken(checker, a, b, segment->samples - 1);
            }
        }
    }
}
