/* SPDX-License-Identifier: MIT */
/* stand: what one is told who stands still, and the sentences that jobs are made of. */
#include "language/tell/teller.h"

void end_sentence(struct strbuf *out)
{
    strbuf_text(out, ". ");
}

void add_sentence(const struct teller *t, struct strbuf *out, const struct strbuf *sentence)
{
    (void)t;
    say_upper(out, strbuf_str(sentence));
    end_sentence(out);
}

struct strbuf sentence_of(const struct teller *t)
{
    struct strbuf sentence;
    strbuf_init(&sentence, t->arena);
    return sentence;
}

static struct vec2 stands_then(const struct teller *t, body who, size_t until)
{
    struct vec2 at = stands_at(t->play, t->step, who);
    for (size_t i = 0; i < until; i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->who == who) {
            at = task->planned;
        }
    }
    return at;
}

struct vec2 stands_now(const struct teller *t, size_t until)
{
    return stands_then(t, t->you, until);
}

/* ---- in the lane ---- */

/* Do the seconds that one may be in the lane count for who stands there? As the check has it: a
 * foot inside the lines, in a play and not in a drill. */
static bool counts_in_lane(const struct teller *t, struct vec2 at)
{
    const struct court *court = t->play->court;
    return !t->play->is_drill && court->lane_seconds > 0 && court_in_wider_lane(court, at, -FEET);
}

enum lane_stand {
#define STAND(spot, text, unmoved, shot)
#define STAND_LANE(when, text) LANE_##when,
#include "language/tell/tell_stand.def"
#undef STAND
#undef STAND_LANE
};
static const char *const lane_stands[] = {
#define STAND(spot, text, unmoved, shot)
#define STAND_LANE(when, text) [LANE_##when] = text,
#include "language/tell/tell_stand.def"
#undef STAND
#undef STAND_LANE
};

/* Where the ball is while one waits: in front, or yet to be brought there. */
static bool is_ball_back(const struct teller *t, size_t before)
{
    body holder = holds_ball_then(t, before);
    return holder != BODY_NONE && stands_then(t, holder, before).y > t->play->court->half_court;
}

static const char *lane_stand(const struct teller *t, size_t before, bool named, bool has_run)
{
    enum lane_stand row = is_ball_back(t, before)
                              ? (named ? LANE_BALL_BACK : LANE_BALL_BACK_UNNAMED)
                          : has_run ? LANE_DONE
                          : named   ? LANE_NAMED
                                    : LANE_UNNAMED;
    return lane_stands[row];
}

static const struct {
    enum spot spot;
    const char *text, *unmoved, *shot; /* the last two may be NULL */
} stands[] = {
#define STAND(spot, text, unmoved, shot) {SPOT_##spot, text, unmoved, shot},
#define STAND_LANE(when, text)
#include "language/tell/tell_stand.def"
#undef STAND
#undef STAND_LANE
};

/* Has this one run anywhere yet: in a step that leads here, or in this one's first tasks? */
static bool has_run(const struct teller *t, size_t until)
{
    struct vec2 at = stands_now(t, until), start = t->play->start[t->you].at;
    return at.x != start.x || at.y != start.y;
}

/* Does it end in a shot of another, behind which no pass comes? */
static bool other_shoots(const struct teller *t)
{
    bool shoots = false;
    for (size_t i = 0; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        shoots = shoots || (task->kind == TASK_SHOOT && task->who != t->you);
    }
    return shoots;
}

/* The one told stands still once the first `before` tasks are done. */
static void say_stand(const struct teller *t, struct strbuf *out, size_t before)
{
    struct vec2 at = stands_now(t, before);
    struct task task = {.who = t->you, .other = BODY_NONE, .on = BODY_NONE, .goal = goal_at(at)};
    task.goal.spot = near_spot(t->play, at, &task.goal.side);
    if (task.goal.spot == SPOT_COUNT && court_in_lane(t->play->court, at)) {
        task.goal.spot = SPOT_LANE;
    }
    size_t row = 0;
    while (stands[row].spot != SPOT_COUNT && stands[row].spot != task.goal.spot) {
        row++;
    }
    const char *text = stands[row].text;
    if (counts_in_lane(t, at)) {
        bool named = task.goal.spot != SPOT_COUNT && task.goal.spot != SPOT_LANE;
        text = lane_stand(t, before, named, has_run(t, before));
    } else if (stands[row].shot && other_shoots(t)) {
        text = stands[row].shot;
    } else if (stands[row].unmoved && !has_run(t, before)) {
        text = stands[row].unmoved;
    }
    say_template(t, out, &task, text);
    strbuf_char(out, ' ');
}

void say_lane(const struct teller *t, struct strbuf *out, struct vec2 at)
{
    if (counts_in_lane(t, at)) {
        struct task task = {.who = t->you, .other = BODY_NONE, .on = BODY_NONE};
        say_template(t, out, &task, "Not longer than {lane} in the lane. ");
    }
}

/* The mate whose movement the one with the ball has to watch: a user of a screen, else one who is
 * screened for, else a mover. */
static body to_watch(const struct teller *t)
{
    body mover = BODY_NONE, screened = BODY_NONE;
    for (size_t i = 0; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->who != t->you && task->kind == TASK_USE) {
            return task->who;
        }
        if (task->who != t->you && task->kind == TASK_MOVE && mover == BODY_NONE) {
            mover = task->who;
        }
        bool screens = task->kind == TASK_SCREEN && body_is_attacker(task->other);
        if (screens && task->other != t->you && screened == BODY_NONE) {
            screened = task->other;
        }
    }
    return screened != BODY_NONE ? screened : mover;
}

static void say_hold(const struct teller *t, struct strbuf *out, struct vec2 at)
{
    struct goal goal = goal_at(at);
    goal.spot = near_spot(t->play, at, &goal.side);
    struct strbuf sentence = sentence_of(t);
    strbuf_text(&sentence, "hold the ball");
    if (court_inside(t->play->court, at, 0)) {
        say_at(t, &sentence, &goal);
    } else {
        strbuf_text(&sentence, " out of bounds");
    }
    body mate = to_watch(t);
    if (mate != BODY_NONE) {
        strbuf_text(&sentence, " and watch ");
        say_body(t, &sentence, mate);
        strbuf_text(&sentence, " come open");
    }
    add_sentence(t, out, &sentence);
    say_lane(t, out, at);
}

/* A fade and a rejected screen lead away from the screener. */
static bool leads_away(enum verb verb)
{
    return verb == VERB_FADES || verb == VERB_REJECTS;
}

/* A screen set before this step, that somebody uses in it. */
static bool say_standing_screen(const struct teller *t, struct strbuf *out)
{
    for (size_t i = 0; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->kind == TASK_USE && (task->other == t->you || task->other2 == t->you)) {
            struct strbuf sentence = sentence_of(t);
            strbuf_text(&sentence, "stay still until ");
            say_body(t, &sentence, task->who);
            strbuf_text(&sentence, leads_away(task->verb) ? " has left" : " has gone by you");
            add_sentence(t, out, &sentence);
            return true;
        }
    }
    return false;
}

bool holds_a_screen(const struct teller *t)
{
    for (size_t i = step_task_count(t->step, t->branch); i-- > 0;) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->who == t->you) {
            return task->kind == TASK_SCREEN;
        }
    }
    return false;
}

void say_still(const struct teller *t, struct strbuf *out, size_t before)
{
    if (holds_ball_then(t, before) == t->you) {
        say_hold(t, out, stands_now(t, before));
    } else if (holds_a_screen(t)) {
        if (!say_standing_screen(t, out)) {
            strbuf_text(out, "Hold your screen and be still. ");
        }
    } else if (!say_standing_screen(t, out)) {
        say_stand(t, out, before);
    }
}
