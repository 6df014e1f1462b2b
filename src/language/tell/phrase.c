/* SPDX-License-Identifier: MIT */
/* phrase: the words of one task by its row, with the places and players it is about. */
#include "language/tell/teller.h"

#include <assert.h>
#include <string.h>

struct tell_row {
    const char *third, *bare, *event, *more;
};
static const struct tell_row rows[VERB_COUNT] = {
#define TELL(verb, third, bare, event, more) [VERB_##verb] = {third, bare, event, more},
#include "language/tell/tell_verbs.def"
#undef TELL
};
#define TELL_PASS(kind, third, bare)
#define TELL_SCREEN(kind, third, bare)
static const struct tell_row passes[] = {
#undef TELL_PASS
#define TELL_PASS(kind, third, bare) [PASS_##kind] = {third, bare, NULL, NULL},
#include "language/tell/tell_kinds.def"
#undef TELL_PASS
#define TELL_PASS(kind, third, bare)
};
static const struct tell_row screens[SCREEN_DOUBLE + 1] = {
#undef TELL_SCREEN
#define TELL_SCREEN(kind, third, bare) [SCREEN_##kind] = {third, bare, NULL, NULL},
#include "language/tell/tell_kinds.def"
#undef TELL_SCREEN
};
#undef TELL_PASS

/* A movement that the ball makes a dribble is told as one. */
static enum verb told_as(const struct task *task)
{
    bool carried = task->kind == TASK_CARRY && verb_row(task->verb)->task != VERB_CARRY;
    return carried ? VERB_DRIBBLES : task->verb;
}

/* What is said where the screener slips: of the screen, and of who would have used it. */
static const struct tell_row no_screen = {"goes as if to screen for {o}{at}",
                                          "go as if to screen for {o}{at}", NULL, NULL};
static const struct tell_row no_use = {"goes{to} without the screen", "go{to} without the screen",
                                       NULL, NULL};
static const struct tell_row no_use_with_ball = {"dribbles{to} without the screen",
                                                 "dribble{to} without the screen", NULL, NULL};

static const struct tell_row *row_of_nothing(const struct task *task)
{
    bool ball = task->verb == VERB_DRIBBLES_OFF || task->verb == VERB_DRIVES_OFF;
    return task->kind == TASK_SCREEN ? &no_screen : ball ? &no_use_with_ball : &no_use;
}

/* Who turns away from a screen with the ball drives, and shows nobody a hand. */
static const struct tell_row rejected_with_ball = {"turns away from {O} screen and drives{to}",
                                                   "turn away from {O} screen and drive{to}", NULL,
                                                   NULL};

static bool rejects_with_ball(const struct teller *t, const struct task *task)
{
    size_t at = 0, count = step_task_count(t->step, t->branch);
    while (at < count && step_task(t->step, t->branch, at) != task) {
        at++;
    }
    return task->verb == VERB_REJECTS && at < count && holds_ball_then(t, at) == task->who;
}

/* Who drives or dribbles already goes on: told to oneself, not under a picture. */
static const struct tell_row goes_on[] = {{NULL, "drive on{side}{to}", NULL, NULL},
                                          {NULL, "dribble on{way}{to}", NULL, NULL}};

static bool has_ball_moving(const struct task *task)
{
    return task->kind == TASK_CARRY || task->verb == VERB_DRIBBLES_OFF ||
           task->verb == VERB_DRIVES_OFF;
}

static const struct tell_row *row_of_going_on(const struct teller *t, const struct task *task)
{
    const struct task *before = NULL;
    size_t count = step_task_count(t->step, t->branch);
    for (size_t i = 0; i < count && step_task(t->step, t->branch, i) != task; i++) {
        const struct task *one = step_task(t->step, t->branch, i);
        before = one->who == t->you || task_gives_ball_to(one, t->you) ? one : before;
    }
    bool goes_on_with_it = before && before->who == t->you && has_ball_moving(before);
    return !goes_on_with_it                 ? NULL
           : told_as(task) == VERB_DRIVES   ? &goes_on[0]
           : told_as(task) == VERB_DRIBBLES ? &goes_on[1]
                                            : NULL;
}

static const char *template_of(const struct teller *t, const struct task *task, enum form_of form)
{
    const struct tell_row *row = &rows[told_as(task)], *on = NULL;
    if (form == FORM_BARE && task->who == t->you && (on = row_of_going_on(t, task))) {
        row = on;
    } else if (is_slipped(t, task)) {
        row = row_of_nothing(task);
    } else if (rejects_with_ball(t, task)) {
        row = &rejected_with_ball;
    } else if (task->kind == TASK_PASS && task->verb == VERB_PASSES && passes[task->pass].third) {
        row = &passes[task->pass];
    } else if (task->verb == VERB_SCREENS && screens[task->screen].third) {
        row = &screens[task->screen];
    }
    return form == FORM_THIRD ? row->third : row->bare;
}

static const char *const nouns[VERB_COUNT] = {
#define TELL_NOUN(verb, noun) [VERB_##verb] = noun,
#include "language/tell/tell_nouns.def"
#undef TELL_NOUN
};

struct str tell_thing(struct arena *arena, const struct play *play, const struct step *step,
                      int branch, size_t index)
{
    const struct teller teller = teller_to_all(arena, play, step, branch, false);
    const struct task *task = step_task(step, branch, index);
    const char *noun = nouns[told_as(task)];
    struct strbuf out;
    strbuf_init(&out, arena);
    say_possessive(&teller, &out, task->who);
    strbuf_char(&out, ' ');
    say_template(&teller, &out, task, noun ? noun : "move");
    return strbuf_str(&out);
}

const char *verb_event_word(enum verb verb)
{
    return rows[verb].event ? rows[verb].event : "goes";
}

const char *verb_more(enum verb verb)
{
    return rows[verb].more ? rows[verb].more : "";
}

const char *task_more(const struct teller *t, const struct task *task)
{
    return is_slipped(t, task) || rejects_with_ball(t, task) ? "" : verb_more(task->verb);
}

/* ---- slots ---- */

typedef void say_slot(const struct teller *t, struct strbuf *out, const struct task *task);

static void slot_other(const struct teller *t, struct strbuf *out, const struct task *task)
{
    say_body(t, out, task->other);
}

static void slot_others(const struct teller *t, struct strbuf *out, const struct task *task)
{
    say_possessive(t, out, task->other);
}

static void slot_second(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->other2 != BODY_NONE) {
        strbuf_text(out, " and ");
        say_body(t, out, task->other2);
    }
}

static void slot_defender(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->on != BODY_NONE) {
        body_print(out, task->on);
    } else {
        say_guard(t, out, task->other, task);
    }
}

static void slot_own_defender(const struct teller *t, struct strbuf *out, const struct task *task)
{
    say_guard(t, out, task->who, task);
}

static void slot_to(const struct teller *t, struct strbuf *out, const struct task *task)
{
    say_to(t, out, &task->goal, task->who);
}

static void slot_at(const struct teller *t, struct strbuf *out, const struct task *task)
{
    say_at(t, out, &task->goal);
}

static void slot_goal(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->goal.kind == GOAL_BODY) {
        say_body(t, out, task->goal.who);
    } else {
        say_goal(t, out, &task->goal);
    }
}

static void slot_way(const struct teller *t, struct strbuf *out, const struct task *task)
{
    static const char *const words[] = {[PATH_AROUND] = " around ",
                                        [PATH_OVER] = " over ",
                                        [PATH_UNDER] = " under ",
                                        [PATH_PAST] = " past ",
                                        [PATH_ALONG] = " along "};
    if (task->path == PATH_NONE) {
        return;
    }
    strbuf_text(out, words[task->path]);
    if (task->path_who != BODY_NONE) {
        say_body(t, out, task->path_who);
    } else {
        say_goal(t, out, &task->path_goal);
    }
}

static void slot_side(const struct teller *t, struct strbuf *out, const struct task *task)
{
    (void)t;
    if (task->drive_baseline) {
        strbuf_text(out, " along the baseline");
    } else if (task->drive_middle) {
        strbuf_text(out, " through the middle");
    } else if (task->drive_across != 0) {
        strbuf_text(out, task->drive_across < 0 ? " by the left" : " by the right");
    }
}

static void slot_width(const struct teller *t, struct strbuf *out, const struct task *task)
{
    (void)t;
    if (task->gap > 1) {
        strbuf_text(out, " wide");
    } else if (task->gap > 0) {
        strbuf_text(out, " tight");
    }
}

static void slot_duration(const struct teller *t, struct strbuf *out, const struct task *task)
{
    (void)t;
    strbuf_number(out, task->duration, 1);
    strbuf_text(out, " s");
}

static void slot_length(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->length > 0) {
        play_length(out, t->play, task->length);
    } else {
        strbuf_text(out, "two steps");
    }
}

static void slot_face(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->face.kind == GOAL_BODY) {
        say_body(t, out, task->face.who);
    } else {
        say_goal(t, out, &task->face);
    }
}

static void slot_man(const struct teller *t, struct strbuf *out, const struct task *task)
{
    body man = task->other != BODY_NONE ? task->other : guards_then(t, task->who, task);
    if (man != BODY_NONE) {
        say_body(t, out, man);
    } else {
        strbuf_text(out, "the open player");
    }
}

/* Nobody has a defender of one's own against a zone. */
static void slot_your(const struct teller *t, struct strbuf *out, const struct task *task)
{
    strbuf_text(out, has_guard(t, task->who) ? "your defender" : "the defender near you");
}

static void slot_ball(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->other != BODY_NONE) {
        say_body(t, out, task->other);
    } else {
        strbuf_text(out, "the ball");
    }
}

static void slot_on(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->other != BODY_NONE) {
        strbuf_text(out, " on ");
        say_body(t, out, task->other);
    }
}

/* How long one may be in the lane: "3 seconds". */
static void slot_lane(const struct teller *t, struct strbuf *out, const struct task *task)
{
    (void)task;
    strbuf_number(out, t->play->court->lane_seconds, 1);
    strbuf_text(out, " seconds");
}

static void slot_in(const struct teller *t, struct strbuf *out, const struct task *task)
{
    bool back_court = task->goal.kind == GOAL_POINT && task->goal.at.y > t->play->court->half_court;
    strbuf_text(out, back_court ? " up the floor" : " in");
}

static void slot_with(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (task->on != BODY_NONE) {
        strbuf_text(out, " with ");
        say_body(t, out, task->on);
    }
}

static const struct {
    const char *name;
    say_slot *say;
} slots[] = {{"o", slot_other},    {"O", slot_others},       {"p", slot_second},
             {"x", slot_defender}, {"y", slot_own_defender}, {"to", slot_to},
             {"at", slot_at},      {"goal", slot_goal},      {"way", slot_way},
             {"side", slot_side},  {"w", slot_width},        {"d", slot_duration},
             {"l", slot_length},   {"f", slot_face},         {"m", slot_man},
             {"b", slot_ball},     {"on", slot_on},          {"with", slot_with},
             {"in", slot_in},      {"your", slot_your},      {"lane", slot_lane}};

static void fill(const struct teller *t, struct strbuf *out, const struct task *task,
                 struct str name)
{
    for (size_t i = 0; i < sizeof slots / sizeof *slots; i++) {
        if (str_is(name, slots[i].name)) {
            slots[i].say(t, out, task);
            return;
        }
    }
    assert(false); /* a slot that no row of the table names */
}

static void fill_all(const struct teller *t, struct strbuf *out, const struct task *task,
                     struct str text)
{
    for (size_t i = 0; i < text.size; i++) {
        const char *at = text.at + i;
        const char *end = *at == '{' ? memchr(at, '}', text.size - i) : NULL;
        if (end) {
            fill(t, out, task, (struct str){at + 1, (size_t)(end - at - 1)});
            i += (size_t)(end - at);
        } else {
            strbuf_char(out, *at);
        }
    }
}

void say_template(const struct teller *t, struct strbuf *out, const struct task *task,
                  const char *text)
{
    const char *bar = strchr(text, '|');
    struct str chosen = str_of(text);
    if (bar) {
        bool others = strstr(text, "{x}") != NULL;
        bool guarded =
            others ? task->on != BODY_NONE || is_guarded(t, task->other) : is_guarded(t, task->who);
        chosen = guarded ? (struct str){text, (size_t)(bar - text)} : str_of(bar + 1);
    }
    fill_all(t, out, task, chosen);
}

void say_task(const struct teller *t, struct strbuf *out, const struct task *task,
              enum form_of form)
{
    say_template(t, out, task, template_of(t, task, form));
    say_manner(t, out, task);
}

void say_manner(const struct teller *t, struct strbuf *out, const struct task *task)
{
    static const char *const paces[] = {
        [EFFORT_WALK] = " at a walk", [EFFORT_JOG] = " at a jog",
        [EFFORT_RUN] = " at a run",   [EFFORT_CUT] = "",
        [EFFORT_HARD] = "",           [EFFORT_SPRINT] = " at a sprint"};
    if (task->effort != verb_row(task->verb)->pace) {
        strbuf_text(out, paces[task->effort]);
    }
    if (task->taking > 0) {
        strbuf_text(out, " in ");
        strbuf_number(out, task->taking, 1);
        strbuf_text(out, " s");
    }
    if (task->early && !is_slipped(t, task)) {
        strbuf_text(out, " without waiting for the screen");
    }
    if (task->faces && task->kind == TASK_SCREEN) {
        strbuf_text(out, task->faces_back ? ", back to " : ", facing ");
        slot_face(t, out, task);
    }
    say_until(t, out, task);
}
