/* SPDX-License-Identifier: MIT */
/* crowd: what one picture can show. Takes what a run drew of lines; must not know pictures. */
#include "judge/check/look.h"

#define LEAST_LINE .4 /* m: who moves less is not drawn with a line */
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
    for (size_t i = first; i < end && i < segment->tasks; i++) {
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

void look_step_crowded(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    size_t common = step_task_count(&checker->play->steps.at[segment->step], -1);
    if (segment->branch <= 0) {
        count_lines(checker, 0, common);
    }
    if (segment->branch >= 0) {
        count_lines(checker, common, segment->tasks);
    }
}
