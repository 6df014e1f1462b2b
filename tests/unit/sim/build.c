/* SPDX-License-Identifier: MIT */
#include "build.h"

#include <string.h>

#include "base/limits.h"
#include "base/real.h"

struct play *build_play(struct arena *arena, enum defense_kind defense)
{
    struct play *play = arena_new(arena, struct play);
    play->name = STR("Lantern");
    play->rules = COURT_HIGH_SCHOOL;
    play->level = LEVEL_U16;
    play->court = court_of(play->rules);
    play->speed = level_of(play->level);
    play->defense = defense;
    play->man = MAN_GAP;
    play->players = 5;
    play->formation = -1;
    for (int i = 1; i <= LIMIT_ATTACKERS; i++) {
        play->guards[body_defender(i)] = body_attacker(i);
    }
    for (int b = 0; b < BODY_COUNT; b++) {
        play->start[b].spot = SPOT_COUNT;
    }
    for (int i = 1; i <= 5; i++) {
        play->start[body_attacker(i)].on_floor = true;
        play->start[body_defender(i)].on_floor = defense != DEFENSE_NONE;
    }
    play->ball = body_attacker(1);
    play->span = SPAN_NONE;
    return play;
}

void build_place(struct play *play, int player, double x_feet, double y_feet)
{
    play->start[body_attacker(player)].at = vec2_of(x_feet * FEET, y_feet * FEET);
}

void build_formation(struct play *play, const char *squeezed)
{
    size_t index = 0;
    if (!formation_find(str_of(squeezed), &index)) {
        return;
    }
    for (int i = 0; i < 5; i++) {
        play->start[body_attacker(i + 1)].at =
            formation_point(play->court, &formation_at(index)->at[i]);
    }
}

struct step *build_step(struct arena *arena, struct play *play)
{
    struct step step = {.number = (int)play->steps.count + 1,
                        .after_step = (int)play->steps.count - 1,
                        .after_branch = -1,
                        .span = SPAN_NONE};
    VEC_PUSH(arena, &play->steps, step);
    return &play->steps.at[play->steps.count - 1];
}

struct branch *build_branch(struct arena *arena, struct step *step, const char *title)
{
    struct branch branch = {.title = str_of(title), .span = SPAN_NONE};
    VEC_PUSH(arena, &step->branches, branch);
    return &step->branches.at[step->branches.count - 1];
}

void build_condition(struct arena *arena, struct branch *branch, int defender, enum verb verb)
{
    struct condition condition = {.kind = verb == VERB_COUNT ? COND_OTHERWISE : COND_VERB,
                                  .verb = verb};
    condition.who = (struct who){.kind = WHO_DEFENDER, .number = defender};
    if (verb == VERB_SWITCHES) {
        condition.kind = COND_BOTH;
    }
    VEC_PUSH(arena, &branch->conditions, condition);
}

static enum task_kind kind_of(enum verb verb)
{
    static const enum task_kind kinds[] = {
        [VERB_MOVE] = TASK_MOVE,     [VERB_HOLD] = TASK_HOLD,         [VERB_CARRY] = TASK_CARRY,
        [VERB_PASS] = TASK_PASS,     [VERB_EXCHANGE] = TASK_EXCHANGE, [VERB_SHOOT] = TASK_SHOOT,
        [VERB_SCREEN] = TASK_SCREEN, [VERB_USE] = TASK_USE,           [VERB_GUARD] = TASK_HOLD};
    return kinds[verb_row(verb)->task];
}

struct task *build_task(struct arena *arena, struct step *step, struct branch *branch, int who,
                        enum verb verb)
{
    const struct verb_row *row = verb_row(verb);
    struct task task = {.kind = kind_of(verb),
                        .verb = verb,
                        .who = body_attacker(who),
                        .other = BODY_NONE,
                        .other2 = BODY_NONE,
                        .on = BODY_NONE,
                        .path_who = BODY_NONE,
                        .shape = row->shape,
                        .effort = row->pace,
                        .screen_task = -1,
                        .span = SPAN_NONE};
    task.goal.who = BODY_NONE;
    task.goal.spot = SPOT_COUNT;
    task.slip = verb == VERB_SLIPS;
    task.stay = verb == VERB_STAYS;
    if (branch) {
        VEC_PUSH(arena, &branch->tasks, task);
        return &branch->tasks.at[branch->tasks.count - 1];
    }
    VEC_PUSH(arena, &step->tasks, task);
    return &step->tasks.at[step->tasks.count - 1];
}

void build_to(struct task *task, double x_feet, double y_feet)
{
    task->goal.kind = GOAL_POINT;
    task->goal.at = vec2_of(x_feet * FEET, y_feet * FEET);
    task->goal_written = true;
    task->planned = task->goal.at;
}

void build_to_spot(const struct play *play, struct task *task, enum spot spot, enum side side)
{
    struct vec2 at = court_spot(play->court, spot, side);
    build_to(task, at.x / FEET, at.y / FEET);
    task->goal.spot = spot;
    task->goal.side = side;
}

void build_wait(struct arena *arena, struct task *task, int on, enum moment moment, bool fixed)
{
    struct wait wait = {.kind = WAIT_TASK,
                        .task = on,
                        .moment = moment,
                        .fixed = fixed,
                        .written = true,
                        .who = BODY_NONE,
                        .span = SPAN_NONE};
    VEC_PUSH(arena, &task->waits, wait);
}

static void mirror_goal(struct arena *arena, struct goal *goal)
{
    goal->at.x = -goal->at.x;
    goal->side = goal->side == SIDE_LEFT    ? SIDE_RIGHT
                 : goal->side == SIDE_RIGHT ? SIDE_LEFT
                                            : goal->side;
    (void)arena;
}

static void mirror_tasks(struct arena *arena, struct task *tasks, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        mirror_goal(arena, &tasks[i].goal);
        mirror_goal(arena, &tasks[i].path_goal);
        mirror_goal(arena, &tasks[i].face);
        tasks[i].planned.x = -tasks[i].planned.x;
        for (size_t w = 0; w < tasks[i].waits.count; w++) {
            tasks[i].waits.at[w].where.x = -tasks[i].waits.at[w].where.x;
        }
    }
}

static void *copied(struct arena *arena, const void *from, size_t count, size_t size)
{
    void *to = arena_take_array(arena, count ? count : 1, size);
    if (count) {
        memcpy(to, from, count * size);
    }
    return to;
}

struct play *build_mirror(struct arena *arena, const struct play *play)
{
    struct play *copy = copied(arena, play, 1, sizeof *play);
    copy->mirrored = !play->mirrored;
    for (int b = 0; b < BODY_COUNT; b++) {
        copy->start[b].at.x = -copy->start[b].at.x;
    }
    copy->steps.at = copied(arena, play->steps.at, play->steps.count, sizeof *play->steps.at);
    for (size_t s = 0; s < copy->steps.count; s++) {
        struct step *step = &copy->steps.at[s];
        step->tasks.at = copied(arena, step->tasks.at, step->tasks.count, sizeof *step->tasks.at);
        mirror_tasks(arena, step->tasks.at, step->tasks.count);
        step->branches.at =
            copied(arena, step->branches.at, step->branches.count, sizeof *step->branches.at);
        for (size_t b = 0; b < step->branches.count; b++) {
            struct branch *branch = &step->branches.at[b];
            branch->tasks.at =
                copied(arena, branch->tasks.at, branch->tasks.count, sizeof *branch->tasks.at);
            mirror_tasks(arena, branch->tasks.at, branch->tasks.count);
        }
    }
    return copy;
}
