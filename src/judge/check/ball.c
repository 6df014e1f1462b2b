/* SPDX-License-Identifier: MIT */
/* ball: checks about who has the ball and for how long. */
#include <math.h>
#include <string.h>

#include "base/real.h"
#include "judge/check/look.h"

/* ---- ball.holder ---- */

static bool ever_held(const struct segment *segment, body b)
{
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state == BALL_HELD && span->holder == b) {
            return true;
        }
    }
    return false;
}

/* He had it in this step, gave it away, and nobody is to give it back before this. */
static bool gave_it_away(const struct segment *segment, size_t index)
{
    const struct task *task = segment_task(segment, index);
    if (segment->record[index].time[MOMENT_STARTED] >= 0) {
        return false;
    }
    for (size_t i = index; i-- > 0;) {
        const struct task *before = segment_task(segment, i);
        if (task_gives_ball_to(before, task->who)) {
            return false;
        }
        if (task_gives_ball(before) && before->who == task->who) {
            return segment->record[i].time[MOMENT_RELEASED] >= 0;
        }
    }
    return false;
}

static const char *deed(const struct task *task)
{
    switch (task->kind) {
    case TASK_PASS:
        return "pass";
    case TASK_EXCHANGE:
        return "hand off";
    case TASK_SHOOT:
        return "shoot";
    case TASK_HOLD:
        return "fake";
    default:
        return "dribble";
    }
}

/* Who has it instead, for the message: at time t, or the last to have had it. */
static body who_has_it(const struct segment *segment, double t)
{
    body holder = segment_holder(segment, t);
    for (size_t i = segment->ball.count; i-- > 0 && holder == BODY_NONE;) {
        if (segment->ball.at[i].state == BALL_HELD && segment->ball.at[i].from <= t) {
            holder = segment->ball.at[i].holder;
        }
    }
    return holder;
}

static void without_ball(struct checker *checker, const struct task *task, double t)
{
    body holder = who_has_it(checker->segment, t);
    struct finding *finding = look_report(checker, t, 0, task->who, BODY_NONE);
    const char *who = look_body(checker, task->who);
    finding->span = task->span;
    finding->mark = MARK_POINT;
    finding->a = segment_at(checker->segment, task->who, t);
    if (holder == BODY_NONE || holder == task->who) {
        look_say(checker, &finding->message,
                 "%s: get the ball first. You %s here, and nobody gives you the ball.", who,
                 deed(task));
        look_say(checker, &finding->help, "write before this sentence who passes to %s", who);
        return;
    }
    const char *has = look_body(checker, holder);
    look_say(checker, &finding->message,
             "%s: get the ball first. You %s here, and %s has the ball.", who, deed(task), has);
    look_say(checker, &finding->help, "write: %s passes to %s, before this sentence", has, who);
}

static void to_oneself(struct checker *checker, const struct task *task, double t)
{
    struct finding *finding = look_report(checker, t, 0, task->who, BODY_NONE);
    const char *who = look_body(checker, task->who);
    finding->span = task->span;
    look_say(checker, &finding->message,
             "%s: give the ball to a team-mate. You cannot %s to yourself.", who, deed(task));
    look_say(checker, &finding->help, "name another player after the verb");
}

void look_ball_holder(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->supplied || !look_uses_ball(task)) {
            continue;
        }
        const double *time = segment->record[i].time;
        double started = time[MOMENT_STARTED];
        double t = started >= 0 ? started : segment->duration;
        if (task_gives_ball_to(task, task->who)) {
            to_oneself(checker, task, t);
        } else if (!ever_held(segment, task->who) || gave_it_away(segment, i)) {
            without_ball(checker, task, t);
        }
    }
}

/* ---- ball.held ---- */

#define RUNS 1.5     /* m/s: that is no rest; whether it is legal is another check (ours) */
#define CUT_SEEN 0.4 /* s on the move: shorter is a step to the side; ours */

/* Anybody else of the attack on the move: a cut or a screen on the way for the holder to see. */
static bool somebody_moves(const struct checker *checker, body holder, size_t sample)
{
    for (body b = 0; b < BODY_COACH; b++) {
        if (b != holder && look_plays(checker, b) &&
            look_speed(checker->segment, b, sample) > 2 * REST_SPEED) {
            return true;
        }
    }
    return false;
}

static bool dribbles(const struct segment *segment, body holder, double t)
{
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, holder, t, &in, &index);
    if (!task || in != segment || task->kind == TASK_HOLD || task->kind == TASK_PASS ||
        task->kind == TASK_SHOOT || !look_uses_ball(task)) {
        return false;
    }
    double arrived = in->record[index].time[MOMENT_ARRIVED];
    return arrived < 0 || t < arrived;
}

struct hold {
    double now, most;    /* seconds with nothing on the way; the longest that ended */
    double busy;         /* seconds for which somebody has been on the move by now */
    double began, since; /* when the longest began, and the one that goes on */
};

static void end_rest(struct hold *hold)
{
    if (hold->now > hold->most) {
        hold->most = hold->now;
        hold->began = hold->since;
    }
    hold->now = 0;
}

/* A rest ends when the holder dribbles or runs, or when somebody has been on the move for a while:
 * a step to the side is nothing to see. Rests are not added up. */
static void go_through(const struct checker *checker, const struct ball_span *span,
                       struct hold *hold)
{
    for (size_t i = 0; i < checker->segment->samples; i++) {
        double t = (double)i * RUN_SAMPLE;
        if (t < span->from || t >= span->to) {
            continue;
        }
        bool moves = somebody_moves(checker, span->holder, i);
        hold->busy = moves ? hold->busy + RUN_SAMPLE : 0;
        bool runs = look_speed(checker->segment, span->holder, i) > RUNS;
        if (runs || dribbles(checker->segment, span->holder, t) || hold->busy >= CUT_SEEN) {
            end_rest(hold);
        } else if (!moves) {
            hold->since = hold->now > 0 ? hold->since : t;
            hold->now += RUN_SAMPLE;
        }
    }
}

/* What a hold that began in the steps before brings along. */
static void bring_along(struct checker *checker, body holder, struct hold *hold)
{
    segment_list back = look_held_through(checker, holder);
    struct checker earlier = *checker;
    for (size_t i = back.count; i-- > 0;) {
        earlier.segment = back.at[i];
        go_through(&earlier, look_held_over(back.at[i], holder), hold);
        hold->since = 0; /* in the step that follows it goes on from the start */
    }
    hold->most = 0; /* what ended there was told there */
}

/* The sentence to change: the longest hold written in it, else what he waits to do. */
static struct span held_span(const struct segment *segment, const struct ball_span *span,
                             size_t next, struct span otherwise)
{
    const struct task *longest = NULL;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        if (task->kind == TASK_HOLD && task->who == span->holder && started >= span->from - 1e-6 &&
            started <= span->to && task->duration > (longest ? longest->duration : 0)) {
            longest = task;
        }
    }
    int ends = next < segment->ball.count ? segment->ball.at[next].task : -1;
    if (!longest && ends >= 0 && (size_t)ends < segment->tasks) {
        longest = segment_task(segment, (size_t)ends);
    }
    return longest && longest->sentence ? longest->span : otherwise;
}

/* The team-mate nearest to the holder of those who stand on a perimeter spot, and which spot. */
static body who_could_move(struct checker *checker, body holder, double t, const char **spot)
{
    body nearest = BODY_NONE;
    double least = INFINITY;
    struct vec2 from = segment_at(checker->segment, holder, t);
    for (body b = 0; b < BODY_COACH; b++) {
        if (b == holder || !look_plays(checker, b)) {
            continue;
        }
        enum side side;
        double off;
        struct vec2 at = segment_at(checker->segment, b, t);
        enum spot near = court_nearest_perimeter(checker->play->court, at, &side, &off);
        if (off <= 3 * FEET && vec2_distance(at, from) < least) {
            least = vec2_distance(at, from);
            nearest = b;
            *spot = look_spot(checker, near, side);
        }
    }
    return nearest;
}

static void held(struct checker *checker, size_t index, const struct hold *hold)
{
    const struct ball_span *span = &checker->segment->ball.at[index];
    double seconds = hold->most;
    struct finding *finding = look_report(checker, hold->began, seconds, span->holder, BODY_NONE);
    finding->severity = seconds > 1.5 * checker->limit ? SEVERITY_WARNING : SEVERITY_NOTE;
    finding->span = held_span(checker->segment, span, index + 1, finding->span);
    finding->mark = MARK_POINT;
    finding->a = segment_at(checker->segment, span->holder, hold->began);
    const char *who = look_body(checker, span->holder);
    look_say(checker, &finding->message,
             "%s: pass, drive or shoot sooner. You hold the ball %s while nobody moves; %s is "
             "enough.",
             who, look_seconds(checker, seconds), look_seconds(checker, checker->limit));
    const char *spot = NULL;
    body mate = who_could_move(checker, span->holder, hold->began, &spot);
    struct str sooner;
    look_say(checker, &sooner,
             look_told_to_hold(checker->segment, span->holder, hold->began + seconds)
                 ? "write: %s holds for 1 s"
                 : "let %s pass or go sooner",
             who);
    if (mate != BODY_NONE) {
        look_say(checker, &finding->help, "%.*s, or give %s something to see: %s v-cuts to %s",
                 STR_ARG(sooner), who, look_body(checker, mate), spot);
    } else {
        look_say(checker, &finding->help, "%.*s, or give %s a cut or a screen to wait for",
                 STR_ARG(sooner), who);
    }
}

void look_ball_held(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count && !checker->play->is_drill; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        struct hold hold = {0};
        if (span->state != BALL_HELD || !look_plays(checker, span->holder) ||
            !court_inside(checker->play->court, segment_at(segment, span->holder, span->from), 0)) {
            continue;
        }
        if (i == 0) {
            bring_along(checker, span->holder, &hold);
        }
        go_through(checker, span, &hold);
        if (i + 1 < segment->ball.count) { /* a pass or a shot ends it; else nobody knows what */
            end_rest(&hold);
        }
        if (hold.most > checker->limit + 0.05) {
            held(checker, i, &hold);
        }
    }
}

/* ---- ball.double-dribble ---- */

enum dribble { DRIBBLE_FRESH, DRIBBLE_ALIVE, DRIBBLE_DEAD };

/* A fake, a look or a hold ends a dribble; standing with the ball for a moment does not. */
static bool picks_up(const struct task *task)
{
    return task->kind == TASK_HOLD && task->verb != VERB_STAYS;
}

/* The holder's deeds in the order done; gives the first dribble after one that ended, or NULL. */
static const struct task *dribble_on(const struct segment *segment, const struct ball_span *span,
                                     enum dribble *state, double *when)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        if (task->who != span->holder || started < span->from - 1e-6 || started > span->to) {
            continue;
        }
        bool dribble = task->kind == TASK_CARRY || (task->kind == TASK_USE && look_uses_ball(task));
        if (dribble && *state == DRIBBLE_DEAD) {
            *when = started;
            return task;
        }
        *state = dribble                                     ? DRIBBLE_ALIVE
                 : picks_up(task) && *state == DRIBBLE_ALIVE ? DRIBBLE_DEAD
                                                             : *state;
    }
    return NULL;
}

static void again(struct checker *checker, const struct task *task, double when)
{
    struct finding *finding = look_report(checker, when, 0, task->who, BODY_NONE);
    finding->span = task->span;
    finding->mark = MARK_POINT;
    finding->a = segment_at(checker->segment, task->who, when);
    const char *who = look_body(checker, task->who);
    look_say(checker, &finding->message,
             "%s: pass or shoot now. You have ended your dribble and cannot start another.", who);
    look_say(
        checker, &finding->help,
        "write: %s passes to %s, in place of this sentence; or take out the fake or hold before it",
        who, look_body(checker, look_mate(checker, task->who, when)));
}

void look_ball_double_dribble(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        enum dribble state = DRIBBLE_FRESH;
        double when = 0;
        if (span->state != BALL_HELD) {
            continue;
        }
        segment_list back = {0};
        if (i == 0) {
            back = look_held_through(checker, span->holder);
        }
        bool told = false;
        for (size_t k = back.count; k-- > 0;) {
            told |= dribble_on(back.at[k], look_held_over(back.at[k], span->holder), &state,
                               &when) != NULL;
        }
        const struct task *task = told ? NULL : dribble_on(segment, span, &state, &when);
        if (task) {
            again(checker, task, when);
        }
    }
}
