/* SPDX-License-Identifier: MIT */
/* circles: ties by which sentences wait for one another, told in the coach's own sentences. */
#include "floor/play/resolve.h"

struct walk {
    struct maker *m;
    unsigned char *state; /* 0: not seen, 1: on the way, 2: done */
    int *came;            /* the task whose start was being asked for */
    bool found;
};

/* 2 passes to 3, 3 passes to 2, and 1 has the ball: no tie is wrong, a pass is missing. */
static bool say_nobody_begins(struct walk *walk, int from, int to)
{
    struct maker *m = walk->m;
    int first = to;
    for (int i = from; i >= 0; i = walk->came[i]) {
        if (!task_gives_ball(task_at(m, (size_t)i))) {
            return false;
        }
        first = i < first ? i : first;
        if (i == to) {
            break;
        }
    }
    struct task *task = task_at(m, (size_t)first);
    body holder = m->works.at[first].holder;
    if (holder == BODY_NONE || holder == task->who) {
        return false;
    }
    struct str has = who_text(m, holder), who = who_text(m, task->who);
    struct diag *diag = diag_add(
        m->diags, DIAG_PLAY_CIRCLE, task->span,
        "%s has the ball, and it comes to %s only by a pass behind this one", has.at, who.at);
    diag_help(m->diags, diag, "bring it there first: `%s passes to %s`", has.at, who.at);
    task->waits.count = 0;
    m->play->broken = true;
    return walk->found = true;
}

static void say_circle(struct walk *walk, int from, int to)
{
    struct maker *m = walk->m;
    if (say_nobody_begins(walk, from, to)) {
        return;
    }
    struct strbuf out;
    strbuf_init(&out, m->arena);
    int i = from;
    do {
        const struct task *task = task_at(m, (size_t)i);
        strbuf_print(&out, "%s`%.*s`", out.size ? ", which is waited for by " : "",
                     STR_ARG(source_text(m->sources, task->span)));
        i = walk->came[i];
    } while (i >= 0 && i != to && i != from);
    if (to != from) {
        strbuf_print(&out, ", which is waited for by `%.*s`",
                     STR_ARG(source_text(m->sources, task_at(m, (size_t)to)->span)));
    }
    struct task *task = task_at(m, (size_t)to);
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_CIRCLE, task->span,
                                 "these sentences wait for one another in a circle: %s", out.at);
    diag_help(m->diags, diag, "take the tie out of one of them");
    task->waits.count = 0;
    m->play->broken = true;
    walk->found = true;
}

static void visit(struct walk *walk, int index);

static void depends(struct walk *walk, int index, int on)
{
    if (on < 0 || on == index || walk->found) {
        return;
    }
    if (walk->state[on] == 1) {
        say_circle(walk, index, on);
        return;
    }
    if (walk->state[on] == 0) {
        walk->came[on] = index;
        visit(walk, on);
    }
}

static int own_before(const struct maker *m, int index)
{
    body who = task_at(m, (size_t)index)->who;
    for (int i = index - 1; i >= 0; i--) {
        if (task_at(m, (size_t)i)->who == who) {
            return i;
        }
    }
    return -1;
}

/* What must have happened for the wait to end: the task's start, and for a screen to be used, its
 * user's start. */
static void depends_on_wait(struct walk *walk, int index, const struct wait *wait)
{
    struct maker *m = walk->m;
    if (wait->kind != WAIT_TASK || wait->before) {
        return;
    }
    depends(walk, index, wait->task);
    for (size_t i = 0; wait->moment == MOMENT_USED && i < task_count(m); i++) {
        if (task_uses(m, task_at(m, i), wait->task)) { /* the first: others come past a post */
            depends(walk, index, (int)i);
            return;
        }
    }
}

static void visit(struct walk *walk, int index)
{
    struct maker *m = walk->m;
    walk->state[index] = 1;
    const struct task *task = task_at(m, (size_t)index);
    for (size_t i = 0; i < task->waits.count && !walk->found; i++) {
        depends_on_wait(walk, index, &task->waits.at[i]);
    }
    if (!task->cuts_short) {
        depends(walk, index, own_before(m, index));
    }
    if (task->kind == TASK_USE && !task->early && !task_is_fixed(task)) {
        depends(walk, index, task->screen_task);
    }
    walk->state[index] = 2;
}

void ties_find_circles(struct maker *m, size_t from)
{
    size_t count = task_count(m);
    for (size_t i = from; i < count; i++) {
        struct walk walk = {.m = m,
                            .state = arena_array(m->arena, unsigned char, count),
                            .came = arena_array(m->arena, int, count)};
        for (size_t j = 0; j < count; j++) {
            walk.came[j] = -1;
        }
        visit(&walk, (int)i);
        if (walk.found) {
            return;
        }
    }
}
