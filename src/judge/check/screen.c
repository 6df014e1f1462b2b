/* SPDX-License-Identifier: MIT */
/* screen: checks about whether a screen finds its defender and is waited for. */
#include <math.h>

#include "base/real.h"
#include "floor/motion/motion.h"
#include "judge/check/stand.h"

#define WRONG_ANGLE (50 * REAL_PI / 180)
#define ANGLE_SLACK (2 * REAL_PI / 180)
#define ON_NOBODY (3 * FEET)
#define CLOSE_BY (3 * FEET) /* who stands so near to a place is there; ours */
#define AT_RIM (6 * FEET)   /* who is sent so near to the ring is sent to the rim; ours */
#define NEAR_EXIT 1.0       /* m: who leaves to no farther than this leaves nowhere in particular */

/* Between two bodies, not between their middles; 0 when they touch. */
static double body_gap(struct vec2 a, struct vec2 b)
{
    return real_max(0, vec2_distance(a, b) - 2 * MOTION_BODY);
}

static double set_time(const struct segment *segment, size_t index)
{
    double set = segment->record[index].time[MOMENT_SET];
    return set >= 0 ? set : segment->duration;
}

/* ---- screen.nobody ---- */

#define CLEARLY (1 * FEET) /* nearer by so much to a team-mate: set on him; ours */

/* One of two screens on one way, of which another stands by the defender: the second waits for him
 * farther along the way. */
static bool is_staggered(const struct checker *checker, size_t screen)
{
    const struct segment *segment = checker->segment;
    const struct task *task = segment_task(segment, screen);
    if (task->goal_written) {
        return false;
    }
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *other = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        if (i != screen && other->kind == TASK_SCREEN && other->other == task->other &&
            record->time[MOMENT_SET] >= 0 &&
            (record->on_way || body_gap(record->to, record->on) <= checker->limit + HALF_FOOT)) {
            return true;
        }
    }
    return false;
}

/* The team-mate the screener stands nearest to; who uses the screen and who screens with him are
 * where they should be. */
static body nearest_mate(const struct checker *checker, const struct task *task, double t,
                         struct vec2 at, double *gap)
{
    const struct segment *segment = checker->segment;
    body nearest = BODY_NONE;
    for (body b = 0; b < BODY_COACH; b++) {
        const struct segment *in;
        size_t index;
        if (!look_plays(checker, b) || b == task->who || b == task->other) {
            continue;
        }
        const struct task *his = look_latest(segment, b, t, &in, &index);
        if (his && his->kind == TASK_SCREEN && his->other == task->other) {
            continue;
        }
        double distance = body_gap(segment_at(segment, b, t), at);
        if (nearest == BODY_NONE || distance < *gap) {
            nearest = b;
            *gap = distance;
        }
    }
    return nearest;
}

/* What the cutter does before the screen is set, and his defender with him; or NULL. */
static const struct task *leaves_before(const struct segment *segment, body user, double t)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        bool goes = task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE;
        if (goes && task->who == user && task->sentence && started >= 0 && started < t) {
            return task;
        }
    }
    return NULL;
}

static void help_to_find(struct checker *checker, struct finding *finding, const struct task *task,
                         double t)
{
    const struct segment *segment = checker->segment;
    const char *who = look_body(checker, task->who), *user = look_body(checker, task->other);
    const struct task *his =
        checker->play->zone == ZONE_NONE ? leaves_before(segment, task->other, t) : NULL;
    if (task->goal_written) {
        look_say(checker, &finding->help,
                 "write: %s screens for %s, which goes to the defender by itself", who, user);
    } else if (his) {
        look_say(checker, &finding->help, "put before %s's sentence: as %s screens,", user, who);
    } else {
        look_say(checker, &finding->help,
                 "set it sooner, as the defender goes where the ball goes; or start %s nearer",
                 who);
    }
}

static void nobody(struct checker *checker, size_t index, double t, double gap, body mate)
{
    const struct task *task = segment_task(checker->segment, index);
    const struct task_record *record = &checker->segment->record[index];
    struct finding *finding = look_report(checker, t, gap, task->who, record->defender);
    const char *who = look_body(checker, task->who);
    const char *defender = look_body(checker, record->defender);
    finding->span = task->span;
    finding->mark = MARK_DISTANCE;
    finding->a = record->to;
    finding->b = record->on;
    if (mate != BODY_NONE) {
        look_say(
            checker, &finding->message,
            "%s: find %s and screen there. You set it nearer to %s than to %s, who is %s away.",
            who, defender, look_body(checker, mate), defender, look_length(checker, gap));
    } else {
        look_say(checker, &finding->message,
                 "%s: find %s and screen there. You set it %s away; be within %s.", who, defender,
                 look_length(checker, gap), look_length(checker, checker->limit));
    }
    help_to_find(checker, finding, task, t);
}

void look_screen_nobody(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        bool was_set = record->time[MOMENT_SET] >= 0;
        if (task->kind != TASK_SCREEN || look_slipped(segment, i) ||
            record->defender == BODY_NONE || record->on_way || record->time[MOMENT_STARTED] < 0 ||
            (record->carried && !was_set) || is_staggered(checker, i)) {
            continue;
        }
        double t = set_time(segment, i), gap = body_gap(record->to, record->on),
               mate_gap = INFINITY;
        body mate = nearest_mate(checker, task, t, record->to, &mate_gap);
        if (gap > checker->limit + HALF_FOOT) {
            nobody(checker, i, t, gap, BODY_NONE);
        } else if (mate != BODY_NONE && mate_gap < gap - CLEARLY && gap > checker->limit / 3) {
            nobody(checker, i, t, gap, mate);
        }
    }
}

/* ---- screen.early ---- */

/* The screener's own `until` has ended it before it was set. */
static bool was_ended(const struct segment *segment, size_t screen)
{
    const struct task_record *record = &segment->record[screen];
    return segment_task(segment, screen)->has_until && record->time[MOMENT_SET] < 0 &&
           record->time[MOMENT_ARRIVED] >= 0;
}

static void ended(struct checker *checker, struct finding *finding, const struct task *task)
{
    const char *who = look_body(checker, task->who), *screener = look_body(checker, task->other);
    look_say(
        checker, &finding->message,
        "%s: set the screen first. Your `until` ends it on the way, and %s leaves without one.",
        screener, who);
    look_say(checker, &finding->help, "leave out `until` in the screen, or end it after %s leaves",
             who);
}

static void early(struct checker *checker, size_t index, double leaves, double set)
{
    const struct segment *segment = checker->segment;
    const struct task *task = segment_task(segment, index);
    struct finding *finding = look_report(checker, leaves, set - leaves, task->who, task->other);
    const char *who = look_body(checker, task->who), *screener = look_body(checker, task->other);
    finding->span = task->span;
    finding->mark = MARK_POINT;
    finding->a = segment_at(segment, task->who, leaves);
    double arrived = segment->record[index].time[MOMENT_ARRIVED];
    if (was_ended(segment, (size_t)task->screen_task)) {
        ended(checker, finding, task);
        return;
    }
    bool never = segment->record[task->screen_task].time[MOMENT_SET] < 0;
    if (never || (arrived >= 0 && arrived < set)) {
        look_say(checker, &finding->message,
                 "%s: wait for the screen. You are gone before %s is set; go when %s's feet are "
                 "still.",
                 who, screener, screener);
    } else {
        look_say(checker, &finding->message,
                 "%s: wait for the screen. You leave %s before %s is set; go when %s's feet are "
                 "still.",
                 who, look_seconds(checker, set - leaves), screener, screener);
    }
    if (task->early) {
        look_say(checker, &finding->help, "leave out `early`: %s then waits for the screen", who);
    } else {
        look_say(checker, &finding->help,
                 "leave out the clause: %s waits for the screen without one", who);
    }
}

void look_screen_early(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        bool away = task->shape == SHAPE_BACK; /* a back cut answers a defender who jumped early */
        if (task->kind != TASK_USE || task->screen_task < 0 || away ||
            record->time[MOMENT_STARTED] < 0) {
            continue;
        }
        size_t screen = (size_t)task->screen_task;
        if (look_slipped(segment, screen)) {
            continue;
        }
        double leaves = record->time[MOMENT_STARTED], set = set_time(segment, screen);
        if (set - leaves > checker->limit + 2 * RUN_SAMPLE) {
            early(checker, i, leaves, set);
        }
    }
}

/* ---- screen.angle ---- */

/* He who was to use it is gone: that is said elsewhere. */
static bool left_early(const struct segment *segment, size_t screen)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        if (task->kind == TASK_USE && task->screen_task == (int)screen && started >= 0 &&
            started < set_time(segment, screen) - 2 * RUN_SAMPLE) {
            return true;
        }
    }
    return false;
}

static void angle(struct checker *checker, size_t index, double off)
{
    const struct task *task = segment_task(checker->segment, index);
    const struct task_record *record = &checker->segment->record[index];
    struct finding *finding =
        look_report(checker, record->time[MOMENT_SET], off, task->who, task->other);
    finding->severity =
        off > WRONG_ANGLE + checker->limit - NOTED_ANGLE ? SEVERITY_WARNING : SEVERITY_NOTE;
    finding->span = task->span;
    finding->mark = MARK_ANGLE;
    finding->a = record->to;
    finding->b = vec2_sub(record->to, vec2_of(real_cos(record->facing), real_sin(record->facing)));
    finding->c = record->exit;
    const char *who = look_body(checker, task->who), *user = look_body(checker, task->other);
    enum side side;
    double far;
    const struct court *court = checker->play->court;
    enum spot spot = court_nearest_perimeter(court, record->exit, &side, &far);
    const char *where = vec2_length(record->exit) < AT_RIM ? "the rim"
                        : far < 4 * FEET                   ? look_spot(checker, spot, side)
                                                           : "where the cutter goes";
    look_say(checker, &finding->message,
             "%s: turn your back to %s. %s leaves that way, and you are turned %d degrees off it; "
             "keep within %d.",
             who, where, user, (int)(off * 180 / REAL_PI + .5),
             (int)(checker->limit * 180 / REAL_PI + .5));
    look_say(checker, &finding->help, "leave out the words about facing: %s then turns by itself",
             who);
}

void look_screen_angle(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        struct vec2 way = vec2_sub(record->exit, record->to);
        bool on_nobody = record->defender == BODY_NONE ||
                         body_gap(record->to, record->on) > ON_NOBODY; /* that is said elsewhere */
        bool written = task->faces || task->faces_back; /* else the screener turned by himself */
        if (task->kind != TASK_SCREEN || !written || record->time[MOMENT_SET] < 0 || on_nobody ||
            left_early(segment, i) || vec2_length(way) < NEAR_EXIT) {
            continue;
        }
        struct vec2 back = vec2_of(-real_cos(record->facing), -real_sin(record->facing));
        double off = vec2_angle(back, way);
        if (off > checker->limit + ANGLE_SLACK) {
            angle(checker, i, off);
        }
    }
}

/* ---- screen.gap ---- */

#define AS_TIGHT (1 * FEET) /* `tight` and nearer: it is not `wide` that leaves the gap */
#define IN_WAY (3 * FEET)   /* before the user: a step; common practice, no source */

/* Where `wide` is not to blame, the screener stands out of the way. */
static void gap_help(struct checker *checker, size_t use, struct finding *finding)
{
    const struct segment *segment = checker->segment;
    const struct task *task = segment_task(segment, use);
    const struct task_record *record = &segment->record[use];
    const char *who = look_body(checker, task->who), *screener = look_body(checker, task->other);
    if (task->gap > AS_TIGHT + MOTION_BODY / 10) {
        look_say(checker, &finding->help, "leave out `wide`: %s then goes by %s's hip", who,
                 screener);
        return;
    }
    struct vec2 from = segment_at(segment, task->who, real_max(0, record->time[MOMENT_STARTED]));
    struct vec2 way = vec2_unit(vec2_sub(record->to, from)), at = vec2_along(from, way, IN_WAY);
    double unit = checker->play->metres ? 1 : FEET;
    struct strbuf place;
    strbuf_init(&place, checker->arena);
    strbuf_text(&place, "(");
    strbuf_number(&place, at.x / unit, 0);
    strbuf_text(&place, ", ");
    strbuf_number(&place, at.y / unit, 0);
    strbuf_text(&place, ")");
    look_say(checker, &finding->help,
             "%s stands out of the way: bring the screen before %s, `%s screens for %s at %s`",
             screener, who, screener, who, place.at);
}

void look_screen_gap(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double gap = segment->record[i].gap;
        bool away =
            task->shape == SHAPE_BACK || task->shape == SHAPE_FADE; /* not by the shoulder */
        if (task->kind != TASK_USE || task->screen_task < 0 || away ||
            gap <= checker->limit + HALF_FOOT) {
            continue;
        }
        double set = segment->record[task->screen_task].time[MOMENT_SET];
        if (set < 0 || set > segment->record[i].time[MOMENT_STARTED] ||
            look_screen_left(segment, i) >= 0) {
            continue; /* one of the two left too early: that is said elsewhere */
        }
        double t = real_max(0, segment->record[i].time[MOMENT_STARTED]);
        struct finding *finding = look_report(checker, t, gap, task->who, task->other);
        const char *who = look_body(checker, task->who),
                   *screener = look_body(checker, task->other);
        finding->span = task->span;
        finding->mark = MARK_POINT;
        finding->a = segment_at(segment, task->other, t);
        look_say(checker, &finding->message,
                 "%s: go shoulder to hip with %s. Your cut leaves a %s gap; keep it within %s.",
                 who, screener, look_length(checker, gap), look_length(checker, checker->limit));
        gap_help(checker, i, finding);
    }
}

/* ---- screen.unused ---- */

static bool uses_it(const struct segment *segment, const struct task *screen)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->kind == TASK_USE && (task->other == screen->who || task->other2 == screen->who) &&
            task->who == screen->other) {
            return true;
        }
    }
    return false;
}

/* In a zone a screen frees a team-mate who stands behind it: he is passed to while it stands. */
static bool is_passed_to(const struct segment *segment, const struct task *screen)
{
    for (size_t i = 0; segment->play->zone != ZONE_NONE && i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double caught = segment->record[i].time[MOMENT_CAUGHT];
        const struct segment *in;
        size_t index;
        if (task->kind == TASK_PASS && task->other == screen->other && caught >= 0 &&
            look_latest(segment, screen->who, caught, &in, &index) == screen) {
            return true;
        }
    }
    return false;
}

/* In this segment, on the ways beside it through the same step, or on any that goes on from them.
 */
static bool ever_used(const struct checker *checker, const struct task *screen)
{
    for (size_t i = 0; i < checker->run->segments.count; i++) {
        const struct segment *segment = checker->run->segments.at[i];
        bool used = uses_it(segment, screen) || is_passed_to(segment, screen);
        if (segment->step >= checker->segment->step && used) {
            return true;
        }
    }
    return false;
}

/* Where the cutter is sent after the screen, or else might go. */
static const char *where_he_goes(struct checker *checker, body user, double set)
{
    const struct segment *segment = checker->segment;
    size_t sample = (size_t)(set / RUN_SAMPLE);
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        enum side side;
        double far;
        enum spot spot = court_nearest_perimeter(checker->play->court, task->planned, &side, &far);
        if (task->kind != TASK_MOVE || task->who != user) {
            continue;
        }
        if (vec2_length(task->planned) < AT_RIM) {
            return "the rim";
        }
        if (far < HALF_FOOT && stand_is_free(checker, task->planned, user, sample) &&
            !vec2_near(look_at(segment, user, sample), task->planned, CLOSE_BY)) {
            return look_spot(checker, spot, side);
        }
    }
    const char *spot = stand_where_to(checker, user, sample, CLEAR);
    return spot ? spot : "the rim";
}

void look_screen_unused(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double set = segment->record[i].time[MOMENT_SET];
        if (task->kind != TASK_SCREEN || set < 0 || look_slipped(segment, i) ||
            segment->record[i].time[MOMENT_USED] >= 0 || ever_used(checker, task)) {
            continue;
        }
        struct finding *finding = look_report(checker, set, 0, task->who, task->other);
        const char *who = look_body(checker, task->who), *user = look_body(checker, task->other);
        finding->span = task->span;
        finding->mark = MARK_POINT;
        finding->a = segment->record[i].to;
        look_say(
            checker, &finding->message,
            "%s: come off %s's screen. It is set for you, and to the end of the play you do not "
            "use it.",
            user, who);
        if (segment_holder(segment, set) == task->other) {
            look_say(checker, &finding->help, "write: %s drives off %s to the rim", user, who);
        } else {
            look_say(checker, &finding->help, "write: %s comes off %s to %s", user, who,
                     where_he_goes(checker, task->other, set));
        }
    }
}
