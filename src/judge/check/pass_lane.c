/* SPDX-License-Identifier: MIT */
/* pass_lane: passes that go through a defender. Looked at is where everybody is while the ball
 * flies, not how far somebody might have jumped: who plays his man does not know of the pass. Left
 * out are the defender of the ball, round whom one passes, whoever stands behind the receiver or
 * beside him, and all under a ball that flies over their hands. */
#include <math.h>

#include "base/real.h"
#include "judge/check/lane.h"
#include "judge/check/look.h"

#define BESIDE_PASSER 1.3   /* m of the way: so far hands and a step go round a body; ours */
#define BESIDE_RECEIVER 0.9 /* m: there the receiver meets the ball, and has him on his back, */
#define IN_FRONT 0.35       /* or, when he stands on the ball's side, only so far; ours */
#define ON_BALL 3.5         /* m: the nearest one, and so near, is the ball's own defender; ours */
#define RUNS 1.5            /* m/s: faster, somebody is on the run; ours */
#define LANE 0.45           /* m to either side: somebody in it stands in the lane; ours */
#define STOOD 0.5           /* s in it before the pass: the passer could have seen him; ours */

static double reach_up(const struct level *level)
{
    return motion_lane(level).high - level->reach_jump; /* there is no time to jump */
}

/* Who guards the ball as it leaves, or BODY_NONE. */
static body on_ball(const struct segment *segment, const struct ball_span *span)
{
    body nearest = BODY_NONE;
    double least = ON_BALL;
    for (int x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        if (!segment->track[x].on_floor) {
            continue;
        }
        double far = vec2_distance(segment_at(segment, (body)x, span->from), span->start);
        if (far < least || (segment->guards[x] == span->holder && far < ON_BALL)) {
            nearest = (body)x;
            least = segment->guards[x] == span->holder ? 0 : far;
        }
    }
    return nearest;
}

/* He runs after his man, or back to him with his back to the ball. */
static bool chases(const struct segment *segment, const struct ball_span *span, body x)
{
    bool his = segment->guards[x] == span->target;
    struct vec2 way = vec2_unit(vec2_sub(span->end, span->start));
    return his && (vec2_length(segment_velocity(segment, span->target, span->from)) > RUNS ||
                   vec2_length(segment_velocity(segment, span->target, span->to)) > RUNS ||
                   vec2_dot(segment_velocity(segment, x, span->from), way) > RUNS);
}

bool pass_way_of(const struct segment *segment, const struct ball_span *span, struct pass_way *way)
{
    const struct flight *flight = &span->flight;
    if (span->state != BALL_FLIGHT || span->from < 0 || !(flight->length > 0)) {
        return false;
    }
    double high = reach_up(segment->play->speed), last = flight->length - IN_FRONT;
    way->segment = segment;
    way->span = span;
    way->guard = on_ball(segment, span);
    way->count = 0;
    for (int i = 0; i <= PASS_LOOKS; i++) {
        double s = flight->seconds * i / PASS_LOOKS, along = motion_flight_along(flight, s);
        if (along >= BESIDE_PASSER && along <= last && motion_flight_height(flight, s) <= high) {
            way->moment[way->count++] = (struct pass_moment){
                s, along, vec2_mix(span->start, span->end, along / flight->length)};
        }
    }
    return true;
}

/* Where the ball comes nearest to him, if that is nearer than `clear` and than to anybody yet. */
static void come_near(const struct pass_way *way, body x, double clear, double later,
                      struct lane_look *closed)
{
    const struct ball_span *span = way->span;
    struct vec2 at = segment_at(way->segment, x, span->to + later);
    struct vec2 back = vec2_sub(span->start, span->end);
    bool fronts = vec2_dot(vec2_sub(at, span->end), vec2_unit(back)) > IN_FRONT;
    double last = span->flight.length - (fronts ? IN_FRONT : BESIDE_RECEIVER);
    for (int i = 0; i < way->count && way->moment[i].along <= last; i++) {
        const struct pass_moment *moment = &way->moment[i];
        double when = span->from + moment->after;
        double far = vec2_distance(segment_at(way->segment, x, when + later), moment->at);
        if (far < clear && far < closed->near) {
            *closed = (struct lane_look){x, far, when, clear, moment->at, moment->along};
        }
    }
}

double lane_clear(const struct play *play)
{
    bool written;
    return look_limit(play, check_find(STR("pass.lane")), &written);
}

struct lane_look lane_look(const struct pass_way *way, double clear, double later)
{
    const struct segment *segment = way->segment;
    struct lane_look closed = {.by = BODY_NONE, .near = INFINITY};
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        if (segment->track[x].on_floor && x != way->guard) {
            come_near(way, x, chases(segment, way->span, x) ? clear / 2 : clear, later, &closed);
        }
    }
    return closed;
}

/* Has he stood in the lane for that long as the ball leaves? Who stands there as the play starts
 * has always stood there. */
static bool has_stood(const struct segment *segment, const struct ball_span *span, body x)
{
    struct vec2 way = vec2_unit(vec2_sub(span->end, span->start));
    double t = span->from;
    for (double stood = 0; stood < STOOD; stood += RUN_SAMPLE, t -= RUN_SAMPLE) {
        while (t < 0 && segment->before) {
            t += segment->begins;
            segment = segment->before;
        }
        if (t < 0) {
            return true;
        }
        struct vec2 at = vec2_sub(segment_at(segment, x, t), span->start);
        double along = vec2_dot(at, way);
        if (along < 0 || along > span->flight.length || fabs(vec2_cross(way, at)) > LANE) {
            return false;
        }
    }
    return true;
}

/* Would a lob be over him? */
static bool lob_clears(const struct checker *checker, const struct ball_span *span,
                       const struct lane_look *closed)
{
    struct flight lob = motion_pass(checker->play->speed, PASS_LOB, span->flight.length);
    for (int i = 0; i <= PASS_LOOKS; i++) {
        double s = lob.seconds * i / PASS_LOOKS;
        if (motion_flight_along(&lob, s) >= closed->along) {
            return motion_flight_height(&lob, s) > reach_up(checker->play->speed);
        }
    }
    return false;
}

static void blocked(struct checker *checker, const struct ball_span *span, const struct task *task,
                    const struct lane_look *closed)
{
    bool stood = has_stood(checker->segment, span, closed->by);
    struct finding *finding =
        look_report(checker, span->from, closed->near, span->holder, closed->by);
    const char *who = look_body(checker, span->holder), *to = look_body(checker, span->target);
    const char *by = look_body(checker, closed->by);
    finding->severity =
        stood && closed->near <= checker->limit / 2 ? SEVERITY_WARNING : SEVERITY_NOTE;
    finding->span = task->span;
    finding->mark = MARK_LANE;
    finding->a = span->start;
    finding->b = span->end;
    look_say(checker, &finding->message,
             "%s: find a lane past %s. The pass to %s may be picked off: it goes within %s of %s; "
             "keep %s clear.",
             who, by, to, look_length(checker, closed->near), by,
             look_length(checker, closed->clear));
    if (lob_clears(checker, span, closed)) {
        look_say(checker, &finding->help, "write: %s lob passes to %s, or pass when %s is gone",
                 who, to, by);
    } else {
        look_say(checker, &finding->help, "pass when %s is gone, or by way of a team-mate", by);
    }
}

void look_pass_lane(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count && !checker->play->is_drill; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        bool known = span->task >= 0 && (size_t)span->task < segment->tasks;
        struct pass_way way;
        if (!known || !pass_way_of(segment, span, &way)) {
            continue;
        }
        struct lane_look closed = lane_look(&way, checker->limit, 0);
        if (closed.by != BODY_NONE) {
            blocked(checker, span, segment_task(segment, (size_t)span->task), &closed);
        }
    }
}
