/* SPDX-License-Identifier: MIT */
/* when: what a task waits for, in words: first what the coach tied it to, else what its verb does.
 */
#include "language/tell/teller.h"

static bool you_do(const struct teller *t, body b)
{
    return b == t->you && b != BODY_NONE;
}

/* "1 passes", "you pass" */
static void say_event(const struct teller *t, struct strbuf *out, body who, const char *third,
                      const char *second)
{
    say_body(t, out, who);
    strbuf_char(out, ' ');
    strbuf_text(out, you_do(t, who) ? second : third);
}

/* The user of a screen on this way through the step. */
static body user_of(const struct teller *t, int screen)
{
    for (size_t i = 0; i < step_task_count(t->step, t->branch); i++) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->kind == TASK_USE && task->screen_task == screen) {
            return task->who;
        }
    }
    return step_task(t->step, t->branch, (size_t)screen)->other;
}

bool is_slipped(const struct teller *t, const struct task *task)
{
    bool uses = task->kind == TASK_USE && task->screen_task >= 0 && task->other2 == BODY_NONE;
    const struct task *screen = task->kind == TASK_SCREEN ? task : NULL;
    if (uses) {
        screen = step_task(t->step, t->branch, (size_t)task->screen_task);
    }
    for (size_t i = 0; screen && i < step_task_count(t->step, t->branch); i++) {
        const struct task *slip = step_task(t->step, t->branch, i);
        if (slip->slip && slip->screen_task >= 0 &&
            step_task(t->step, t->branch, (size_t)slip->screen_task) == screen) {
            return true;
        }
    }
    return false;
}

/* Of this step, or of the one before that goes on beside it. */
static const struct task *waited_for(const struct teller *t, const struct wait *wait)
{
    if (!wait->before) {
        return step_task(t->step, t->branch, (size_t)wait->task);
    }
    const struct step *before = &t->play->steps.at[t->step->after_step];
    return step_task(before, t->step->after_branch, (size_t)wait->task);
}

/* "cuts" -> "cut", "passes" -> "pass", "screens" -> "screen": the events' own words only. */
static const char *bare_event(struct arena *arena, const char *third)
{
    struct str word = str_of(third);
    size_t end = 0;
    while (end < word.size && word.at[end] != ' ') {
        end++;
    }
    size_t cut = end >= 4 && word.at[end - 2] == 'e' && word.at[end - 3] == 's' ? 2 : 1;
    if (end >= 4 && word.at[end - 2] == 'e' && word.at[end - 3] == 'o') {
        cut = 2; /* goes */
    }
    return str_format(arena, "%.*s%.*s", (int)(end - cut), word.at, (int)(word.size - end),
                      word.at + end)
        .at;
}

/* "right ", "about a second ": nobody counts tenths in a play. */
static void say_delay(struct strbuf *out, double seconds)
{
    static const char *const counted[] = {NULL,  NULL,    "two",   "three", "four", "five",
                                          "six", "seven", "eight", "nine",  "ten"};
    const size_t most = sizeof counted / sizeof *counted;
    size_t whole = (size_t)(seconds + .5);
    if (seconds < .75) {
        strbuf_text(out, "right ");
    } else if (whole < 2) {
        strbuf_text(out, "about a second ");
    } else if (whole < most) {
        strbuf_print(out, "about %s seconds ", counted[whole]);
    } else {
        strbuf_print(out, "about %zu seconds ", whole);
    }
}

/* `bare`: the word that leads it, "until" or "a second after", has been said. */
static void say_moment(const struct teller *t, struct strbuf *out, const struct task *on,
                       const struct wait *wait, body subject, bool bare)
{
    bool late = bare || (wait->delay > 0 && wait->written);
    switch (wait->moment) {
    case MOMENT_STARTED:
    case MOMENT_RELEASED: {
        const char *event = verb_event_word(on->verb);
        strbuf_text(out, late ? "" : "as ");
        say_event(t, out, on->who, event, bare_event(t->arena, event));
        break;
    }
    case MOMENT_CAUGHT:
        if (on->other == subject) {
            strbuf_text(out, late ? "the catch" : "on the catch");
            return;
        }
        strbuf_text(out, late ? "" : wait->fixed ? "as " : "when ");
        say_event(t, out, on->other, "catches", "catch");
        break;
    case MOMENT_SET:
        strbuf_text(out, late ? "" : "when ");
        if (on->who == subject) { /* not "5 rolls when 5 is set" */
            strbuf_text(out, subject == t->you ? "your screen is set" : "the screen is set");
        } else {
            say_event(t, out, on->who, "is set", "are set");
        }
        break;
    case MOMENT_USED: {
        body user = wait->before ? on->other : user_of(t, wait->task);
        strbuf_text(out, late ? "" : "when ");
        say_event(t, out, user, "has gone by", "have gone by");
        break;
    }
    case MOMENT_ARRIVED:
        strbuf_text(out, late ? "" : "when ");
        say_event(t, out, on->who, "gets there", "get there");
        break;
    case MOMENT_COUNT:
        break;
    }
}

static void say_state(const struct teller *t, struct strbuf *out, const struct wait *wait,
                      bool bare)
{
    static const struct {
        const char *third, *second;
    } states[] = {[EVENT_OPEN] = {"is open", "are open"},
                  [EVENT_COVERED] = {"is covered", "are covered"},
                  [EVENT_DENIED] = {"is denied", "are denied"},
                  [EVENT_PAST] = {"has gone by", "have gone by"},
                  [EVENT_HAS_BALL] = {"has the ball", "have the ball"}};
    strbuf_text(out, bare ? "" : "when ");
    bool past = wait->state == EVENT_PAST && wait->other != BODY_NONE;
    if (past) {
        say_event(t, out, wait->who, "is past ", "are past ");
        say_body(t, out, wait->other);
    } else {
        say_event(t, out, wait->who, states[wait->state].third, states[wait->state].second);
    }
}

/* "x2 closes out on 4": what a defender does by rule. */
static void say_deed(const struct teller *t, struct strbuf *out, const struct wait *wait, bool bare)
{
    const struct verb_row *row = verb_row(wait->verb);
    bool late = bare || wait->delay > 0;
    strbuf_text(out, late ? "" : wait->moment == MOMENT_ARRIVED ? "once " : "as ");
    say_event(t, out, wait->who, row->words, row->bare);
    if (wait->other != BODY_NONE) { /* the slot's preposition, "on:w", but for "stunts at" */
        size_t size = 0;
        while (row->slots[size] && row->slots[size] != ':') {
            size++;
        }
        bool said = row->slots[0] == '_' || wait->verb == VERB_STUNTS;
        strbuf_print(out, " %.*s%s", said ? 0 : (int)size, row->slots, said ? "" : " ");
        say_body(t, out, wait->other);
    }
}

static void say_wait(const struct teller *t, struct strbuf *out, const struct task *task,
                     const struct wait *wait)
{
    switch (wait->kind) {
    case WAIT_TASK:
        if (wait->delay > 0 && wait->written) {
            say_delay(out, wait->delay);
            strbuf_text(out, "after ");
        }
        say_moment(t, out, waited_for(t, wait), wait, task->who, false);
        break;
    case WAIT_CLOCK:
        say_delay(out, wait->delay);
        strbuf_text(out, wait->delay < .75 ? "at the start" : "into the step");
        break;
    case WAIT_ALL_BEFORE:
        strbuf_text(out, "after that");
        break;
    case WAIT_LEAVES:
        strbuf_text(out, "as ");
        say_event(t, out, wait->who, "leaves", "leave");
        break;
    case WAIT_NEARS:
        strbuf_text(out, "as ");
        say_event(t, out, wait->who, "comes near", "come near");
        break;
    case WAIT_STATE:
        say_state(t, out, wait, false);
        break;
    case WAIT_DEED:
        if (wait->delay > 0) {
            say_delay(out, wait->delay);
            strbuf_text(out, "after ");
        }
        say_deed(t, out, wait, false);
        break;
    }
}

/* The player does nothing with the ball between its catch and this. */
static bool at_once(const struct teller *t, const struct task *task, size_t pass)
{
    for (size_t i = pass + 1; i < step_task_count(t->step, t->branch); i++) {
        const struct task *between = step_task(t->step, t->branch, i);
        if (between == task) {
            return true;
        }
        bool acts = between->kind == TASK_CARRY || between->kind == TASK_HOLD;
        if (between->who == task->who && acts) {
            return false;
        }
    }
    return false;
}

/* A wait of the verb's that a player must be told: leaving for a spot, going after a screen, a
 * shot on the catch. That a dribble needs the ball goes without saying. */
static bool worth_saying(const struct teller *t, const struct task *task, const struct wait *wait)
{
    if (wait->written || wait->kind == WAIT_LEAVES || wait->kind == WAIT_NEARS) {
        return true;
    }
    if (wait->kind != WAIT_TASK) {
        return false;
    }
    const struct task *on = waited_for(t, wait);
    bool shot = task->kind == TASK_SHOOT && !wait->before && wait->moment == MOMENT_CAUGHT &&
                at_once(t, task, (size_t)wait->task);
    bool screen = on->kind == TASK_SCREEN && !is_slipped(t, on);
    return shot || screen || on->kind == TASK_SHOOT;
}

void say_when(const struct teller *t, struct strbuf *out, const struct task *task)
{
    for (int written = 1; written >= 0; written--) {
        for (size_t i = 0; i < task->waits.count; i++) {
            const struct wait *wait = &task->waits.at[i];
            if (wait->written == (written == 1) && worth_saying(t, task, wait)) {
                say_wait(t, out, task, wait);
                return;
            }
        }
    }
}

void say_begins(const struct teller *t, struct strbuf *out, const struct wait *wait)
{
    static const struct task nobody = {.who = BODY_NONE, .other = BODY_NONE};
    say_wait(t, out, &nobody, wait);
}

void say_until(const struct teller *t, struct strbuf *out, const struct task *task)
{
    if (!task->has_until) {
        return;
    }
    const struct wait *until = &task->until;
    strbuf_text(out, " until ");
    if (until->kind == WAIT_TASK) {
        say_moment(t, out, waited_for(t, until), until, task->who, true);
    } else if (until->kind == WAIT_DEED) {
        say_deed(t, out, until, true);
    } else {
        say_state(t, out, until, true);
    }
}

bool receiver_moves(const struct teller *t, size_t index)
{
    const struct task *pass = step_task(t->step, t->branch, index);
    if (pass->kind != TASK_PASS) {
        return false;
    }
    /* Who ran before a way on began is there, as far as its picture tells. */
    size_t first = index >= t->step->tasks.count && !t->again ? t->step->tasks.count : 0;
    for (size_t i = index; i-- > first;) {
        const struct task *task = step_task(t->step, t->branch, i);
        if (task->who == pass->other) {
            bool moves =
                task->kind == TASK_MOVE || task->kind == TASK_USE || task->kind == TASK_CARRY;
            return moves && task->shape != SHAPE_SETUP;
        }
    }
    return false;
}
