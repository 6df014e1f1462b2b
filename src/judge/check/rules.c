/* SPDX-License-Identifier: MIT */
/* rules: checks of the rulebook: who is on the floor, and what the clocks allow. */
#include <math.h>

#include "base/real.h"
#include "floor/motion/motion.h"
#include "judge/check/lasting.h"
#include "judge/check/stand.h"

#define LANE_SLACK 2.0    /* s: between steps the model stands about longer than players do; ours */
#define OUT_BY (1 * FEET) /* a foot over the line is a matter of inches on the floor; ours */
#define LINES_BY                                                                                   \
    5 /* m: in a drill lines of players wait beside the floor, about so far off (ours) */

/* ---- start.missing ---- */

void look_start_missing(struct checker *checker)
{
    int placed = 0;
    if (checker->play->is_drill || checker->segment != checker->run->segments.at[0]) {
        return;
    }
    for (body b = 0; b < BODY_COACH; b++) {
        placed += checker->play->start[b].on_floor;
    }
    if (placed >= 5) {
        return;
    }
    struct finding *finding = look_report(checker, 0, placed, BODY_NONE, BODY_NONE);
    finding->span = checker->play->start_span;
    finding->limit = 5;
    look_say(checker, &finding->message,
             "Place all five: %d %s on the floor, so spacing and help are not judged in full.",
             placed, placed == 1 ? "player is" : "players are");
    look_say(checker, &finding->help, "write: start five-out, or name all five in the start line");
}

/* ---- player.out ---- */

/* What to write so that he stays inside: the nearest spot, or whom to pass to. */
static void help_inside(struct checker *checker, struct finding *finding, const struct task *task,
                        body b, struct vec2 place)
{
    const char *who = look_body(checker, b);
    enum side side;
    enum spot spot = court_nearest_perimeter(checker->play->court, place, &side, NULL);
    if (task->kind == TASK_PASS) {
        look_say(checker, &finding->help, "write: %s passes to %s", look_body(checker, task->who),
                 who);
    } else {
        look_say(checker, &finding->help, b < BODY_COACH ? "write: %s goes to %s" : "send %s to %s",
                 who, look_spot(checker, spot, side));
    }
}

/* `place`: where the sentence has him; NULL: where he starts. */
static void out(struct checker *checker, body b, double t, double by, const struct task *task,
                const struct vec2 *place)
{
    struct finding *finding = look_report(checker, t, by, b, BODY_NONE);
    const char *who = look_body(checker, b);
    finding->mark = MARK_POINT;
    finding->a = place ? *place : segment_at(checker->segment, b, t);
    if (place) {
        finding->span = task->span;
        look_say(checker, &finding->message,
                 "%s: stay on the floor. This place is %s outside the line.", who,
                 look_length(checker, by));
        help_inside(checker, finding, task, b, *place);
        return;
    }
    finding->span = checker->play->start_span;
    look_say(checker, &finding->message,
             "%s: start on the floor. You stand %s outside the line, and only who throws in may.",
             who, look_length(checker, by));
    if (b < BODY_COACH) {
        look_say(checker, &finding->help,
                 "start %s inside, or write: ball %s out of bounds at a spot", who, who);
    } else {
        look_say(checker, &finding->help, "start %s inside", who);
    }
}

/* The place that was written is where he is to be; with the ball ball.out says it. */
static bool is_sent(const struct task *task)
{
    return task->kind == TASK_MOVE || task->kind == TASK_GUARD ||
           (task->kind == TASK_USE && !look_uses_ball(task));
}

/* Where a pass is to be caught, when that is a place of its own; out of bounds two may stand for a
 * throw-in. */
static bool catch_place(const struct checker *checker, const struct task *task, struct vec2 *place)
{
    const struct goal *goal = &task->goal;
    bool throws_in = checker->play->throw_in && !checker->segment->before;
    bool outside = goal->kind == GOAL_OUTSIDE && goal->a->kind == GOAL_POINT && !throws_in;
    if (task->kind != TASK_PASS || (goal->kind != GOAL_POINT && !outside)) {
        return false;
    }
    *place = outside ? court_outside(checker->play->court, goal->a->at) : goal->at;
    return true;
}

void look_player_out(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    const struct court *court = checker->play->court;
    double most = checker->play->is_drill ? LINES_BY : OUT_BY;
    for (body b = 0; b < BODY_COUNT && !segment->before; b++) {
        const struct start_body *start = &checker->play->start[b];
        bool stands = start->on_floor && (body_is_attacker(b) || start->placed);
        double by = stands ? look_outside(court, start->at) : -1;
        bool throws = checker->play->throw_in && checker->play->ball == b;
        if (by > most && !throws && segment == checker->run->segments.at[0]) {
            out(checker, b, 0, by, NULL, NULL);
        }
    }
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        struct vec2 place = task->planned;
        bool catch = catch_place(checker, task, &place);
        bool sent = task->goal_written && (catch || is_sent(task));
        double by = sent ? look_outside(court, place) : -1;
        if (by > most) {
            out(checker, catch ? task->other : task->who,
                real_max(0, segment->record[i].time[MOMENT_STARTED]), by, task, &place);
        }
    }
}

/* ---- the clocks ---- */

/* A screen in the lane takes the model longer than it takes a player: it is not counted. */
static bool screens(const struct segment *segment, body b, double t)
{
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, b, t, &in, &index);
    return task && task->kind == TASK_SCREEN;
}

static enum so in_lane(const struct checker *checker, const struct segment *segment, body b,
                       size_t sample)
{
    double t = (double)sample * RUN_SAMPLE;
    if (!segment->track[b].on_floor || !look_in_lane(checker, look_at(segment, b, sample)) ||
        !lasting_control(checker, segment, t) || /* it runs while the ball is in front */
        segment_ball(segment, t).y >= checker->play->court->half_court) {
        return SO_NOT;
    }
    return screens(segment, b, t) ? SO_PAUSED : SO_YES;
}

void look_time_lane(struct checker *checker)
{
    double limit = checker->limit;
    for (body b = 0; b < BODY_COACH && limit > 0 && !checker->play->is_drill; b++) {
        if (!look_plays(checker, b)) {
            continue;
        }
        struct stay stay = lasting_stay(checker, in_lane, b, limit);
        if (stay.passed < 0) {
            continue;
        }
        struct finding *finding = look_report(checker, stay.passed, stay.whole, b, BODY_NONE);
        const char *who = look_body(checker, b);
        finding->span = stand_line(checker, b, stay.passed, finding->span);
        finding->limit = limit;
        finding->severity = stay.whole > limit + LANE_SLACK ? SEVERITY_WARNING : SEVERITY_NOTE;
        finding->mark = MARK_POINT;
        finding->a = segment_at(checker->segment, b, stay.passed);
        look_say(checker, &finding->message,
                 "%s: step out of the lane. You are in it %s; %s is the limit.", who,
                 look_seconds(checker, stay.whole), look_seconds(checker, limit));
        const char *out = stand_by_lane(checker, b, (size_t)(stay.passed / RUN_SAMPLE));
        if (segment_holder(checker->segment, stay.passed) == b) {
            look_say(checker, &finding->help, "let %s pass or shoot sooner", who);
        } else if (out) {
            look_say(checker, &finding->help, "write: %s goes to %s", who, out);
        } else {
            look_say(checker, &finding->help, "send %s out of the lane sooner", who);
        }
    }
}

static enum so ball_back(const struct checker *checker, const struct segment *segment, body b,
                         size_t sample)
{
    (void)b;
    double t = (double)sample * RUN_SAMPLE;
    return lasting_control(checker, segment, t) &&
                   segment_ball(segment, t).y > checker->play->court->half_court
               ? SO_YES
               : SO_NOT;
}

static enum so throws_in(const struct checker *checker, const struct segment *segment, body b,
                         size_t sample)
{
    double t = (double)sample * RUN_SAMPLE;
    const struct ball_span *span = lasting_span(segment, t);
    return span && span->state == BALL_HELD && span->holder == b &&
                   look_outside(checker->play->court, look_at(segment, b, sample)) > 0
               ? SO_YES
               : SO_NOT;
}

/* ---- inbound.early ---- */

/* With the ball out of bounds there is one thing to do. */
static bool is_not_a_throw(const struct task *task)
{
    return task->kind == TASK_CARRY || task->kind == TASK_SHOOT || task->kind == TASK_EXCHANGE ||
           task->kind == TASK_USE;
}

static void carried_in(struct checker *checker, const struct task *task, double t)
{
    struct finding *finding = look_report(checker, t, 0, task->who, BODY_NONE);
    const char *who = look_body(checker, task->who);
    finding->span = task->span;
    finding->mark = MARK_POINT;
    finding->a = segment_at(checker->segment, task->who, t);
    look_say(checker, &finding->message,
             "%s: throw in first. You have the ball out of bounds, and it comes in by a pass.",
             who);
    look_say(checker, &finding->help, "write: %s inbounds to %s, before this sentence", who,
             look_body(checker, look_mate(checker, task->who, t)));
}

void look_inbound_early(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks && !checker->play->is_drill; i++) {
        const struct task *task = segment_task(segment, i);
        double t = segment->record[i].time[MOMENT_STARTED];
        const struct ball_span *span = t >= 0 ? lasting_span(segment, t) : NULL;
        if (is_not_a_throw(task) && span && span->state == BALL_HELD && span->throw_in &&
            span->holder == task->who) {
            carried_in(checker, task, t);
            return;
        }
    }
}

/* ---- what to write to be sooner ---- */

/* He holds, or goes slower than his verb would have him. */
static bool takes_time(const struct task *task)
{
    bool goes = task->kind == TASK_CARRY || task->kind == TASK_MOVE;
    return task->verb == VERB_HOLDS || (goes && task->effort < verb_row(task->verb)->pace);
}

/* The latest sentence by time t of somebody who takes his time over it: of `b`, or of whoever needs
 * the ball for it (BODY_NONE); or NULL. */
static const struct task *slow_by(const struct segment *segment, body b, double t)
{
    const struct task *slow = NULL;
    double when = TIME_NEVER;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        bool his =
            b == BODY_NONE ? look_uses_ball(task) || task->verb == VERB_HOLDS : task->who == b;
        if (his && takes_time(task) && started >= 0 && started <= t && started >= when) {
            slow = task;
            when = started;
        }
    }
    return slow;
}

/* `otherwise`: when nobody takes his time. */
static void help_sooner(struct checker *checker, struct finding *finding, body b,
                        const char *otherwise)
{
    const struct task *slow = slow_by(checker->segment, b, finding->time);
    if (!slow) {
        look_say(checker, &finding->help, "%s", otherwise);
    } else if (slow->verb == VERB_HOLDS) {
        look_say(checker, &finding->help, "write: %s holds for 0.2 s, or leave it out",
                 look_body(checker, slow->who));
    } else {
        look_say(checker, &finding->help, "leave out `%s`: %s then goes at full speed",
                 slow->effort == EFFORT_WALK  ? "walking"
                 : slow->effort == EFFORT_JOG ? "jogging"
                                              : "running",
                 look_body(checker, slow->who));
    }
}

/* A clause that has his receiver start at a moment of its own, or NULL. */
static const struct task *late_cut(const struct segment *segment, body thrower)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        for (size_t k = 0; k < segment->tasks; k++) {
            const struct task *pass = segment_task(segment, i), *cut = segment_task(segment, k);
            bool fixed = cut->waits.count > 0 && cut->waits.at[0].fixed;
            if (pass->kind == TASK_PASS && pass->who == thrower && cut->who == pass->other &&
                fixed) {
                return cut;
            }
        }
    }
    return NULL;
}

/* ---- the clocks that run on ---- */

void look_time_backcourt(struct checker *checker)
{
    double limit = checker->limit;
    struct stay stay = lasting_stay(checker, ball_back, BODY_NONE, limit);
    if (checker->play->is_drill || limit <= 0 || stay.passed < 0) {
        return;
    }
    const struct ball_span *span = lasting_span(checker->segment, stay.passed);
    struct finding *finding =
        look_report(checker, stay.passed, stay.whole, span->holder, BODY_NONE);
    const char *who = look_body(checker, span->holder);
    finding->limit = limit;
    look_say(
        checker, &finding->message,
        "%s: bring the ball over half court sooner. It is in the backcourt %s; %s is the limit.",
        who, look_seconds(checker, stay.whole), look_seconds(checker, limit));
    help_sooner(checker, finding, BODY_NONE, "pass ahead, or leave out a wait");
}

/* Which sentence takes most of the time that a throw-in waits: the finding is of that one. */
static void name_eater(struct checker *checker, struct finding *finding, body thrower)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *pass = segment_task(segment, i);
        double seconds;
        if (pass->kind != TASK_PASS || pass->who != thrower ||
            segment->record[i].time[MOMENT_RELEASED] < finding->time) {
            continue;
        }
        const struct task *eater = look_waited(segment, i, &seconds);
        if (eater && seconds > finding->limit / 3) {
            const char *words = verb_row(eater->verb)->words;
            bool to = eater->other < BODY_COUNT;
            look_say(checker, &finding->message, "%.*s %s of it go by while %s %s%s%s.",
                     STR_ARG(finding->message), look_seconds(checker, seconds),
                     look_body(checker, eater->who), words, to ? " " : "",
                     to ? look_body(checker, eater->other) : "");
            finding->span = eater->span;
        }
        return;
    }
}

void look_time_throw_in(struct checker *checker)
{
    double limit = checker->limit;
    for (body b = 0; b < BODY_COACH && !checker->play->is_drill; b++) {
        if (!look_plays(checker, b)) {
            continue;
        }
        struct stay stay = lasting_stay(checker, throws_in, b, limit);
        if (stay.passed < 0) {
            continue;
        }
        struct finding *finding = look_report(checker, stay.passed, stay.whole, b, BODY_NONE);
        const char *who = look_body(checker, b);
        finding->limit = limit;
        look_say(checker, &finding->message,
                 "%s: throw in sooner. You hold the ball out of bounds %s; %s is the limit.", who,
                 look_seconds(checker, stay.whole), look_seconds(checker, limit));
        name_eater(checker, finding, b);
        const struct task *late = late_cut(checker->segment, b);
        if (late) {
            look_say(checker, &finding->help, "leave out the clause: %s then cuts at once",
                     look_body(checker, late->who));
        } else {
            help_sooner(checker, finding, b,
                        "throw in to an earlier cut, or start the cuts sooner");
        }
    }
}

/* Seconds of the play at which the clocks start: at once, or when a throw-in is touched on the
 * floor (NFHS 5-9, FIBA art. 49, from memory); TIME_NEVER: it has not been, so far. */
static double clocks_start(const struct segment *segment)
{
    if (!segment->play->throw_in) {
        return 0;
    }
    double start = segment->before ? clocks_start(segment->before) : TIME_NEVER;
    for (size_t i = 0; start < 0 && i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state == BALL_FLIGHT && span->throw_in) {
            start = segment->time_before + span->to;
        }
    }
    return start;
}

/* When in the segment the clock runs out with no shot on its way; TIME_NEVER: it does not. */
static double runs_out(const struct segment *segment, double start, double limit)
{
    if (start < 0) {
        return TIME_NEVER;
    }
    double t = start + limit - segment->time_before;
    return t >= 0 && t < segment->duration && !look_shot(segment, t) ? t : TIME_NEVER;
}

static void too_late(struct checker *checker, double limit, const char *clock)
{
    const struct segment *segment = checker->segment;
    double start = clocks_start(segment), t = runs_out(segment, start, limit);
    if (limit <= 0 || t < 0 || checker->play->is_drill) {
        return;
    }
    double left = TIME_NEVER;
    body shooter = BODY_NONE;
    for (size_t i = 0; i < segment->ball.count; i++) {
        if (segment->ball.at[i].state == BALL_SHOT) {
            left = segment->time_before + segment->ball.at[i].from - start;
            shooter = segment->ball.at[i].holder;
            break;
        }
    }
    struct finding *finding = look_report(checker, t, left, shooter, BODY_NONE);
    finding->limit = limit;
    if (left >= 0) {
        look_say(checker, &finding->message, "%s: shoot sooner. The shot leaves at %s; %s has %s.",
                 look_body(checker, shooter), look_seconds(checker, left), clock,
                 look_seconds(checker, limit));
    } else {
        finding->amount = segment->time_before + segment->duration - start;
        look_say(checker, &finding->message,
                 "Get a shot sooner: %s of %s runs out in this step, and nobody has shot.", clock,
                 look_seconds(checker, limit));
    }
    help_sooner(checker, finding, BODY_NONE, "take a pass or a wait out before the shot");
}

void look_time_clock(struct checker *checker)
{
    too_late(checker, checker->play->clock, "the play's clock");
}

void look_time_shot_clock(struct checker *checker)
{
    too_late(checker, checker->limit, "the shot clock");
}
