/* SPDX-License-Identifier: MIT */
/* crowd: what one picture can show. Takes what a run drew of lines; must not know pictures. */
#include "judge/check/look.h"

#define LEAST_LINE .4 /* m: who moves less is not drawn with a line */
#define SOON .2       /* s: he may begin to dribble as he gets the ball */
enum { MOST = 7 };    /* lines in one picture that are told apart at a glance; ours, by eye */

/* Does a sentence leave a line on paper? */
static bool draws(const struct segment *segment, size_t index)
{
    const struct task *task = segment_task(segment, index);
    const struct task_record *record = &segment->record[index];
    switch (task->kind) {
    case TASK_PASS:
    case TASK_EXCHANGE:
    case TASK_SHOOT:
        return record->time[MOMENT_RELEASED] >= 0;
    case TASK_SCREEN:
        return record->time[MOMENT_STARTED] >= 0;
    case TASK_MOVE:
    case TASK_CARRY:
    case TASK_USE:
    case TASK_GUARD:
        return record->time[MOMENT_STARTED] >= 0 &&
               vec2_distance(record->from, record->to) > LEAST_LINE;
    case TASK_HOLD:
        break;
    }
    return false;
}

/* The sentences [first, end) of one diagram. */
static void count_lines(struct checker *checker, size_t first, size_t end)
{
    const struct segment *segment = checker->segment;
    int lines = 0;
    size_t over = end; /* the first that is too many */
    for (size_t i = first; i < end; i++) {
        lines += draws(segment, i);
        over = lines == MOST + 1 && over == end ? i : over;
    }
    if (lines <= MOST) {
        return;
    }
    struct finding *finding =
        look_report(checker, real_max(0, segment->record[over].time[MOMENT_STARTED]), lines,
                    BODY_NONE, BODY_NONE);
    finding->span = segment_task(segment, over)->span;
    finding->limit = MOST;
    look_say(checker, &finding->message,
             "Begin a new step: one picture would show %d lines, and more than %d are hard to tell "
             "apart.",
             lines, MOST);
    look_say(checker, &finding->help,
             "write: step, on a line of its own before this sentence or "
             "where the ball stops before it");
}

/* Does that sentence leave a line of his with the ball? */
static bool dribbles(const struct segment *segment, size_t index, body who)
{
    const struct task *task = segment_task(segment, index);
    return task->who == who && draws(segment, index) &&
           (task->kind == TASK_CARRY || task->kind == TASK_USE);
}

/* A dribble to a hand-off and one off it: two zigzags meet at its bars. */
static void find_hand_off(struct checker *checker, size_t first, size_t end, size_t hand_off)
{
    const struct segment *segment = checker->segment;
    const struct task *task = segment_task(segment, hand_off);
    double released = segment->record[hand_off].time[MOMENT_RELEASED];
    bool in = false;
    size_t out = end;
    for (size_t i = first; i < end; i++) {
        double began = segment->record[i].time[MOMENT_STARTED];
        in = in || (segment_task(segment, i)->kind == TASK_CARRY && began < released &&
                    dribbles(segment, i, task->who));
        if (out == end && began > released - SOON && dribbles(segment, i, task->other)) {
            out = i;
        }
    }
    if (!in || out == end) {
        return;
    }
    struct finding *finding =
        look_report(checker, segment->record[out].time[MOMENT_STARTED], 2, task->who, task->other);
    finding->span = segment_task(segment, out)->span;
    finding->limit = 1;
    look_say(checker, &finding->message,
             "Begin a new step: one picture would show the dribble of %s to the hand-off and that "
             "of %s from it.",
             look_body(checker, task->who), look_body(checker, task->other));
    look_say(checker, &finding->help, "write: step, on a line of its own before this sentence");
}

static void crowd_at(struct checker *checker, size_t first, size_t end)
{
    const struct segment *segment = checker->segment;
    end = end < segment->tasks ? end : segment->tasks;
    count_lines(checker, first, end);
    for (size_t i = first; i < end; i++) {
        if (segment_task(segment, i)->kind == TASK_EXCHANGE && draws(segment, i)) {
            find_hand_off(checker, first, end, i);
        }
    }
}

void look_step_crowded(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    size_t common = step_task_count(&checker->play->steps.at[segment->step], -1);
    if (segment->branch <= 0) {
        crowd_at(checker, 0, common);
    }
    if (segment->branch >= 0) {
        crowd_at(checker, common, segment->tasks);
    }
}
