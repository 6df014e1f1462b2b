/* SPDX-License-Identifier: MIT */
/* told: a coach's text taken to its run, and what was said on the way. */
#include "told.h"

#include <string.h>

void told_run(struct told *told, const char *text)
{
    *told = (struct told){0};
    resolve_text(&arena, &told->text, STR("Test"), str_of(text));
    ck_assert_uint_gt(told->text.book->plays.count, 0);
    told->play = &told->text.book->plays.at[told->text.book->plays.count - 1];
    told->run = sim_run(&arena, &told->text.sources, told->play, &told->text.diags);
}

const char *told_said(struct told *told)
{
    return resolved_said(&arena, &told->text);
}

void told_is_sound(struct told *told)
{
    ck_assert_msg(told->text.diags.errors == 0, "%s", told_said(told));
    for (size_t i = 0; i < told->run->segments.count; i++) {
        ck_assert(told->run->segments.at[i]->ran);
    }
}

void told_says(struct told *told, const char *id, const char *words)
{
    for (size_t i = 0; i < told->text.diags.all.count; i++) {
        const struct diag *diag = &told->text.diags.all.at[i];
        const char *text = str_copy(&arena, diag->message).at;
        if (strcmp(diag->row->id, id) == 0 && strstr(text, words)) {
            return;
        }
    }
    ck_abort_msg("no %s with `%s` but:\n%s", id, words, told_said(told));
}

const struct segment *told_segment(const struct told *told, int step, int branch)
{
    for (size_t i = 0; i < told->run->segments.count; i++) {
        const struct segment *segment = told->run->segments.at[i];
        if (segment->step == step && segment->branch == branch) {
            return segment;
        }
    }
    ck_abort_msg("no segment of step %d, branch %d", step + 1, branch);
    return NULL;
}

double told_time(const struct segment *segment, size_t task, enum moment moment)
{
    ck_assert_uint_lt(task, segment->tasks);
    double time = segment->record[task].time[moment];
    ck_assert_msg(time >= 0, "task %d has no such moment", (int)task);
    return time;
}
