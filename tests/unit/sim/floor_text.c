/* SPDX-License-Identifier: MIT */
#include "floor_text.h"

#include "base/real.h"

void floor_text(struct ran *out, struct str text)
{
    *out = (struct ran){0};
    resolve_text(&arena, &out->text, STR("floor.play"), text);
    if (out->text.book && out->text.book->plays.count > 0 && !out->text.book->plays.at[0].broken) {
        out->run =
            sim_run(&arena, &out->text.sources, &out->text.book->plays.at[0], &out->text.diags);
    }
}

const struct run *floor_run(const char *text)
{
    struct ran *ran = arena_new(&arena, struct ran);
    floor_text(ran, str_of(text));
    ck_assert_msg(ran->text.diags.errors == 0, "%s", floor_said(ran));
    return ran->run;
}

const char *floor_said(const struct ran *ran)
{
    return resolved_said(&arena, &ran->text);
}

int floor_task(const struct segment *segment, int who, enum task_kind kind)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->who == body_attacker(who) && task->kind == kind) {
            return (int)i;
        }
    }
    return -1;
}

double floor_moment(const struct segment *segment, int task, enum moment moment)
{
    return task < 0 ? TIME_NEVER : segment->record[task].time[moment];
}

double floor_room(const struct segment *segment, int player, double t)
{
    double least = 99;
    for (int d = 1; d <= 5; d++) {
        if (segment->track[body_defender(d)].on_floor) {
            least = real_min(least, floor_off(segment, player, d, t));
        }
    }
    return least;
}

double floor_off(const struct segment *segment, int player, int defender, double t)
{
    return vec2_distance(segment_at(segment, body_attacker(player), t),
                         segment_at(segment, body_defender(defender), t));
}
