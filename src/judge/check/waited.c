/* SPDX-License-Identifier: MIT */
/* waited: which sentence a pass has waited for longest. Takes a segment with its moments, gives a
 * task and seconds; must not know checks. */
#include "judge/check/look.h"

#include "base/real.h"

#define AT_ONCE .02 /* s: what ended so little later still came before */

/* When the task was over, as far as others waited for it; TIME_NEVER: it was not. */
static double over(const struct task_record *record)
{
    double last = TIME_NEVER;
    for (int m = MOMENT_STARTED + 1; m < MOMENT_COUNT; m++) {
        last = real_max(last, record->time[m]);
    }
    return last;
}

/* A link back: what was over last by `at`, of all that the task waited for. */
struct link {
    int task;
    double over; /* s */
};

static void later(struct link *link, int task, double moment, double at)
{
    if (moment >= 0 && moment <= at + AT_ONCE && moment > link->over) {
        *link = (struct link){task, moment};
    }
}

/* What held the task back until `at`: what its ties name, its screen, its player's sentences before
 * it. */
static struct link before(const struct segment *segment, int task, double at)
{
    const struct task *it = segment_task(segment, (size_t)task);
    struct link link = {-1, TIME_NEVER};
    for (size_t i = 0; i < it->waits.count; i++) {
        const struct wait *wait = &it->waits.at[i];
        if (wait->kind == WAIT_TASK && !wait->before && (size_t)wait->task < segment->tasks) {
            later(&link, wait->task, segment->record[wait->task].time[wait->moment], at);
        }
    }
    for (int i = 0; i < task; i++) {
        const struct task *other = segment_task(segment, (size_t)i);
        bool screens =
            it->kind == TASK_USE && other->kind == TASK_SCREEN && other->other == it->who;
        if (screens) {
            later(&link, i, segment->record[i].time[MOMENT_SET], at);
        } else if (other->who == it->who) {
            later(&link, i, over(&segment->record[i]), at);
        }
    }
    return link;
}

/* It says itself how long it waits. */
static bool is_timed(const struct task *task)
{
    for (size_t i = 0; i < task->waits.count; i++) {
        if (task->waits.at[i].kind == WAIT_CLOCK || task->waits.at[i].delay > 0) {
            return true;
        }
    }
    return false;
}

/* The sentence for whose end the receiver was waited for. */
static int receiver_busy(const struct segment *segment, body receiver, double at)
{
    int busy = -1;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        if (task->who == receiver && started >= 0 && started < at) {
            busy = (int)i;
        }
    }
    return busy;
}

const struct task *look_waited(const struct segment *segment, size_t pass, double *seconds)
{
    double at = segment->record[pass].time[MOMENT_RELEASED];
    int task = receiver_busy(segment, segment_task(segment, pass)->other, at);
    const struct task *longest = NULL;
    *seconds = 0;
    while (task >= 0) {
        const struct task *it = segment_task(segment, (size_t)task);
        double started = segment->record[task].time[MOMENT_STARTED];
        struct link link = before(segment, task, started);
        double from = is_timed(it) ? real_max(0, link.over) : started;
        if (at - from > *seconds) {
            *seconds = at - from;
            longest = it;
        }
        task = link.task != task && from > 0 ? link.task : -1;
        at = from;
    }
    return longest;
}
