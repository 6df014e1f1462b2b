/* SPDX-License-Identifier: MIT */
/* legal: checks of what makes a screen legal: a step left to who does not see it, feet still until
 * the cutter is past; and the set-up that gives it something to screen. */
#include <math.h>

#include "base/real.h"
#include "floor/motion/motion.h"
#include "judge/check/look.h"

/* ---- screen.step ---- */

#define UNSEEN (135 * REAL_PI / 180) /* so far from where he looks he does not see it; ours */
#define STANDS 0.5                   /* m/s: slower, a defender stands; ours */
#define COMES 1.5  /* m/s: faster, and toward the screener, he runs into it; ours */
#define TOWARD 0.7 /* cosine; ours */

/* He looks at the ball and at his man: what is between the two is in view, and his back is
 * opposite. */
static struct vec2 faces(const struct segment *segment, body defender, body man, double t)
{
    struct vec2 at = segment_at(segment, defender, t);
    struct vec2 ball = vec2_unit(vec2_sub(segment_ball(segment, t), at));
    return vec2_add(ball, vec2_unit(vec2_sub(segment_at(segment, man, t), at)));
}

/* Has the defender to be left a step: the screen is in his back, or he runs into it. */
static bool needs_a_step(const struct segment *segment, const struct task *screen, body defender,
                         double t)
{
    struct vec2 to =
        vec2_sub(segment_at(segment, screen->who, t), segment_at(segment, defender, t));
    struct vec2 v = segment_velocity(segment, defender, t);
    double speed = vec2_length(v);
    if (speed > COMES) {
        return vec2_dot(vec2_unit(v), vec2_unit(to)) > TOWARD;
    }
    return speed < STANDS && vec2_angle(faces(segment, defender, screen->other, t), to) > UNSEEN;
}

static void too_near(struct checker *checker, const struct task *task, body defender, double t,
                     double gap)
{
    struct finding *finding = look_report(checker, t, gap, task->who, defender);
    const char *who = look_body(checker, task->who), *x = look_body(checker, defender);
    finding->limit = checker->limit_written ? checker->limit : checker->play->speed->step;
    finding->span = task->span;
    finding->mark = MARK_DISTANCE;
    finding->a = segment_at(checker->segment, task->who, t);
    finding->b = segment_at(checker->segment, defender, t);
    bool runs = vec2_length(segment_velocity(checker->segment, defender, t)) > STANDS;
    look_say(checker, &finding->message,
             "%s: leave %s a step. You set it %s from %s, who %s; a step is %s.", who, x,
             look_length(checker, gap), x, runs ? "comes at a run" : "does not see you",
             look_length(checker, finding->limit));
    look_say(checker, &finding->help, "write: %s screens for %s", who,
             look_body(checker, task->other));
}

void look_screen_step(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    double step = checker->limit_written ? checker->limit : checker->play->speed->step;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        double set = record->time[MOMENT_SET];
        bool literal = task->goal_written && task->goal.measured; /* else the run leaves it */
        if (task->kind != TASK_SCREEN || !literal || set < 0 || record->defender == BODY_NONE ||
            !needs_a_step(segment, task, record->defender, set)) {
            continue;
        }
        double gap = vec2_distance(segment_at(segment, task->who, set),
                                   segment_at(segment, record->defender, set)) -
                     2 * MOTION_BODY;
        if (gap < step - HALF_FOOT) {
            too_near(checker, task, record->defender, set, real_max(0, gap));
        }
    }
}

/* ---- screen.moving ---- */

#define SHIFTS HALF_FOOT /* m that a set screener may shift on his feet; ours */
#define ARRIVES 0.1      /* s before the cutter is by: then he may go; ours */

/* When the cutter is nearest to where the screen was set. */
static double when_by(const struct segment *segment, body user, struct vec2 screen, double from)
{
    double when = from, least = INFINITY;
    for (size_t i = 0; i < segment->samples; i++) {
        double t = (double)i * RUN_SAMPLE;
        double far = vec2_distance(look_at(segment, user, i), screen);
        if (t >= from && far < least) {
            least = far;
            when = t;
        }
    }
    return when;
}

/* When a set screener has shifted, or TIME_NEVER. */
static double when_shifts(const struct segment *segment, body screener, struct vec2 screen,
                          double from)
{
    for (size_t i = 0; i < segment->samples; i++) {
        double t = (double)i * RUN_SAMPLE;
        if (t > from && vec2_distance(look_at(segment, screener, i), screen) > SHIFTS) {
            return t;
        }
    }
    return TIME_NEVER;
}

double look_screen_left(const struct segment *segment, size_t use)
{
    const struct task *task = segment_task(segment, use);
    double leaves = segment->record[use].time[MOMENT_STARTED];
    if (task->kind != TASK_USE || task->screen_task < 0 || leaves < 0) {
        return TIME_NEVER;
    }
    const struct task_record *record = &segment->record[task->screen_task];
    double set = record->time[MOMENT_SET];
    if (set < 0 || set > leaves + ARRIVES) {
        return TIME_NEVER; /* he left before it was set: another check's */
    }
    double shifts = when_shifts(segment, task->other, record->to, set);
    double used = record->time[MOMENT_USED];
    if (used >= 0 && shifts >= used) {
        return TIME_NEVER;
    }
    double by = when_by(segment, task->who, record->to, leaves);
    return shifts >= 0 && shifts < by - ARRIVES ? shifts : TIME_NEVER;
}

static void moving(struct checker *checker, const struct task *use, const struct task *screen,
                   double t)
{
    struct finding *finding = look_report(checker, t, 0, screen->who, use->who);
    const char *who = look_body(checker, screen->who), *user = look_body(checker, use->who);
    const struct segment *in;
    size_t index;
    const struct task *next = look_latest(checker->segment, screen->who, t, &in, &index);
    finding->span = next && next->sentence ? next->span : screen->span;
    finding->mark = MARK_POINT;
    finding->a = segment_at(checker->segment, screen->who, t);
    look_say(checker, &finding->message,
             "%s: keep your feet still until %s is past. You move while %s is still coming, and "
             "contact then is your foul.",
             who, user, user);
    look_say(checker, &finding->help, "leave out the clause: without one %s waits until %s is past",
             who, user);
}

void look_screen_moving(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *use = segment_task(segment, i);
        bool away = use->shape == SHAPE_BACK || use->shape == SHAPE_FADE; /* not by the screen */
        double t = away ? TIME_NEVER : look_screen_left(segment, i);
        if (t < 0) {
            continue;
        }
        const struct task *screen = segment_task(segment, (size_t)use->screen_task);
        const struct task_record *record = &segment->record[use->screen_task];
        if (!look_slipped(segment, (size_t)use->screen_task) && record->defender != BODY_NONE) {
            moving(checker, use, screen, t);
        }
    }
}

/* ---- screen.no-setup ---- */

#define WITHIN 3.0      /* s before he leaves; ours */
#define ROOM (6 * FEET) /* a place to set up toward is at least so far off; ours */

static bool is_setup(const struct task *task)
{
    return task->shape == SHAPE_SETUP && task->sentence;
}

/* The play writes set-ups: then a cutter without one was forgotten. One that writes none leaves
 * them to the players. */
static bool writes_setups(const struct play *play)
{
    for (size_t s = 0; s < play->steps.count; s++) {
        const struct step *step = &play->steps.at[s];
        for (size_t i = 0; i < step->tasks.count; i++) {
            if (is_setup(&step->tasks.at[i])) {
                return true;
            }
        }
        for (size_t b = 0; b < step->branches.count; b++) {
            for (size_t i = 0; i < step->branches.at[b].tasks.count; i++) {
                if (is_setup(&step->branches.at[b].tasks.at[i])) {
                    return true;
                }
            }
        }
    }
    return false;
}

/* How far from where he leaves he has been shortly before. */
static double moved_before(const struct segment *segment, body b, double leaves)
{
    struct vec2 from = segment_at(segment, b, leaves);
    double most = 0, back = 0, t = leaves;
    while (segment && back < WITHIN) {
        most = real_max(most, vec2_distance(segment_at(segment, b, t), from));
        back += RUN_SAMPLE;
        t -= RUN_SAMPLE;
        if (t < 0) {
            t += segment->begins;
            segment = segment->before;
        }
    }
    return most;
}

/* Where he would set up: the rim or a spot of the arc, whichever leads him most away from the
 * screen. */
static const char *away_from(struct checker *checker, struct vec2 user, struct vec2 screen)
{
    const char *best = "the rim";
    struct vec2 way = vec2_unit(vec2_sub(screen, user));
    double least = vec2_length(user) > ROOM ? vec2_dot(vec2_unit(vec2_scale(user, -1)), way) : 1;
    for (int i = 0; i < SPOT_COUNT; i++) {
        enum side side = look_side(checker, user.x);
        side = spot_row((enum spot)i)->sided ? side : SIDE_NONE;
        struct vec2 to = vec2_sub(court_spot(checker->play->court, (enum spot)i, side), user);
        double cosine = vec2_dot(vec2_unit(to), way);
        if (spot_row((enum spot)i)->perimeter && vec2_length(to) > ROOM && cosine < least - 0.2) {
            least = cosine;
            best = look_spot(checker, (enum spot)i, side);
        }
    }
    return best;
}

/* The last thing he did before was to screen for somebody himself. */
static bool has_screened(const struct segment *segment, body b, double leaves)
{
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(segment, b, leaves - RUN_SAMPLE, &in, &index);
    return task && task->kind == TASK_SCREEN;
}

static void no_setup(struct checker *checker, const struct task *use, double leaves, double moved)
{
    struct finding *finding = look_report(checker, leaves, moved, use->who, use->other);
    const char *who = look_body(checker, use->who), *screener = look_body(checker, use->other);
    struct vec2 at = segment_at(checker->segment, use->who, leaves);
    finding->span = use->span;
    finding->mark = MARK_POINT;
    finding->a = at;
    look_say(checker, &finding->message,
             "%s: go away from %s first, then come back to the screen. You move %s before you use "
             "it; %s turns your defender's head.",
             who, screener, look_length(checker, moved), look_length(checker, checker->limit));
    look_say(checker, &finding->help, "write: %s sets up toward %s", who,
             away_from(checker, at, segment_at(checker->segment, use->other, leaves)));
}

void look_screen_no_setup(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    if (checker->play->is_drill || !writes_setups(checker->play)) {
        return;
    }
    for (size_t i = 0; i < segment->tasks && !look_told(checker, BODY_NONE); i++) {
        const struct task *use = segment_task(segment, i);
        double leaves = segment->record[i].time[MOMENT_STARTED];
        if (use->kind != TASK_USE || use->screen_task < 0 || use->shape == SHAPE_BACK ||
            look_uses_ball(use) || leaves < 0) {
            continue;
        }
        if (has_screened(segment, use->who, leaves)) {
            continue; /* his defender has helped on that screen, and looks at it */
        }
        double moved = moved_before(segment, use->who, leaves);
        if (moved < checker->limit - HALF_FOOT) {
            no_setup(checker, use, leaves, moved);
        }
    }
}
