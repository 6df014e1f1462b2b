/* SPDX-License-Identifier: MIT */
#include "staged.h"

#include "base/real.h"

enum { SAMPLES_MOST = 400 };

struct vec2 staged_feet(const struct staged *staged, double x, double y)
{
    return vec2_of(x * FEET, y * FEET + staged->play->court->baseline);
}

void staged_begin(struct staged *staged, struct arena *arena, enum court_code court)
{
    *staged = (struct staged){.arena = arena};
    staged->play = arena_new(arena, struct play);
    staged->play->name = STR("Lantern");
    staged->play->court = court_of(court);
    staged->play->rules = court;
    staged->play->speed = level_of(LEVEL_U16);
    staged->play->players = 5;
    VEC_PUSH(arena, &staged->play->steps,
             ((struct step){.number = 2, .title = STR("Cross screen")}));
    staged->step = &staged->play->steps.at[0];
    staged->segment = arena_new(arena, struct segment);
    staged->segment->play = staged->play;
    staged->segment->branch = -1;
    staged->segment->main = staged->segment->ran = true;
    staged->segment->record = arena_array(arena, struct task_record, STAGED_TASKS);
    staged->ball = BODY_NONE;
    staged->diagram = (struct diagram){staged->segment, 0, -1, STR("2"), STR("Cross screen")};
}

void staged_stands(struct staged *staged, body who, double x, double y)
{
    staged->segment->track[who].on_floor = true;
    staged->home[who] = staged_feet(staged, x, y);
    if (body_is_defender(who)) {
        staged->play->defense = DEFENSE_MAN;
    }
}

void staged_ball(struct staged *staged, body who)
{
    staged->ball = who;
    staged->play->ball = who;
}

struct task *staged_task(struct staged *staged, size_t index)
{
    return &staged->step->tasks.at[index];
}

static size_t task_add(struct staged *staged, enum task_kind kind, body who)
{
    struct task task = {.kind = kind,
                        .who = who,
                        .other = BODY_NONE,
                        .other2 = BODY_NONE,
                        .on = BODY_NONE,
                        .path_who = BODY_NONE,
                        .screen_task = -1};
    size_t index = staged->step->tasks.count;
    task.order = task.group = (int)index + 1;
    VEC_PUSH(staged->arena, &staged->step->tasks, task);
    struct task_record *record = &staged->segment->record[index];
    for (int i = 0; i < MOMENT_COUNT; i++) {
        record->time[i] = TIME_NEVER;
    }
    record->defender = BODY_NONE;
    record->gap = -1;
    staged->segment->tasks = index + 1;
    return index;
}

static void lasts(struct staged *staged, double time)
{
    staged->segment->duration = real_max(staged->segment->duration, time);
}

size_t staged_move(struct staged *staged, enum task_kind kind, body who, double start,
                   double seconds, const double *points, size_t count)
{
    size_t index = task_add(staged, kind, who);
    struct staged_run *run = &staged->run[who][staged->runs[who]++];
    run->start = start;
    run->end = start + seconds;
    run->at[0] = staged->runs[who] > 1 ? run[-1].at[run[-1].count - 1] : staged->home[who];
    run->count = 1;
    for (size_t i = 0; i < count && run->count < STAGED_POINTS; i++) {
        run->at[run->count++] = staged_feet(staged, points[2 * i], points[2 * i + 1]);
    }
    struct task_record *record = &staged->segment->record[index];
    record->time[MOMENT_STARTED] = start;
    record->time[MOMENT_ARRIVED] = run->end;
    record->from = run->at[0];
    record->to = run->at[run->count - 1];
    lasts(staged, run->end);
    return index;
}

size_t staged_screen(struct staged *staged, body who, body on, double start, double seconds,
                     const double *points, size_t count)
{
    size_t index = staged_move(staged, TASK_SCREEN, who, start, seconds, points, count);
    struct task_record *record = &staged->segment->record[index];
    record->time[MOMENT_SET] = start + seconds;
    record->defender = on;
    record->on = staged->home[on];
    struct vec2 way = vec2_sub(record->on, record->to);
    record->facing = real_atan2(way.y, way.x);
    return index;
}

static void ball_goes(struct staged *staged, struct ball_span span)
{
    struct ball_span held = {.from = staged->ball_since,
                             .to = span.from,
                             .state = BALL_HELD,
                             .holder = staged->ball,
                             .target = BODY_NONE,
                             .task = -1};
    VEC_PUSH(staged->arena, &staged->segment->ball, held);
    VEC_PUSH(staged->arena, &staged->segment->ball, span);
    staged->ball = span.target;
    staged->ball_since = span.to;
    lasts(staged, span.to);
}

static size_t throw_add(struct staged *staged, enum task_kind kind, body who, body to,
                        double released, double caught)
{
    size_t index = task_add(staged, kind, who);
    staged_task(staged, index)->other = to;
    struct task_record *record = &staged->segment->record[index];
    record->time[MOMENT_STARTED] = record->time[MOMENT_RELEASED] = released;
    record->time[MOMENT_CAUGHT] = kind == TASK_SHOOT ? TIME_NEVER : caught;
    ball_goes(staged, (struct ball_span){.from = released,
                                         .to = caught,
                                         .state = kind == TASK_SHOOT ? BALL_SHOT : BALL_FLIGHT,
                                         .holder = who,
                                         .target = to,
                                         .task = (int)index});
    return index;
}

size_t staged_pass(struct staged *staged, body who, body to, double released, double caught)
{
    return throw_add(staged, TASK_PASS, who, to, released, caught);
}

size_t staged_handoff(struct staged *staged, body who, body to, double time)
{
    return throw_add(staged, TASK_EXCHANGE, who, to, time, time + 0.1);
}

size_t staged_shot(struct staged *staged, body who, double time)
{
    return throw_add(staged, TASK_SHOOT, who, BODY_NONE, time, time + 0.8);
}

static struct vec2 place_at(const struct staged *staged, body who, double t)
{
    struct vec2 at = staged->home[who];
    for (size_t r = 0; r < staged->runs[who]; r++) {
        const struct staged_run *run = &staged->run[who][r];
        if (t < run->start) {
            break;
        }
        double whole = 0;
        for (size_t i = 1; i < run->count; i++) {
            whole += vec2_distance(run->at[i - 1], run->at[i]);
        }
        double rest = whole * real_clamp((t - run->start) / (run->end - run->start), 0, 1);
        at = run->at[run->count - 1];
        for (size_t i = 1; i < run->count; i++) {
            double leg = vec2_distance(run->at[i - 1], run->at[i]);
            if (rest <= leg) {
                at = vec2_mix(run->at[i - 1], run->at[i], leg > 0 ? rest / leg : 0);
                break;
            }
            rest -= leg;
        }
    }
    return at;
}

void staged_end(struct staged *staged)
{
    struct segment *segment = staged->segment;
    struct ball_span held = {.from = staged->ball_since,
                             .to = segment->duration + 1,
                             .state = BALL_HELD,
                             .holder = staged->ball,
                             .target = BODY_NONE,
                             .task = -1};
    VEC_PUSH(staged->arena, &segment->ball, held);
    segment->samples = (size_t)(segment->duration / RUN_SAMPLE) + 2;
    if (segment->samples > SAMPLES_MOST) {
        segment->samples = SAMPLES_MOST;
    }
    for (int b = 0; b < BODY_COUNT; b++) {
        struct track *track = &segment->track[b];
        track->sample = arena_array(staged->arena, struct sample, segment->samples);
        track->facing = arena_array(staged->arena, float, segment->samples);
        for (size_t i = 0; i < segment->samples && track->on_floor; i++) {
            double t = (double)i * RUN_SAMPLE;
            struct vec2 at = place_at(staged, (body)b, t),
                        next = place_at(staged, (body)b, t + 0.01);
            track->sample[i] = (struct sample){at, vec2_scale(vec2_sub(next, at), 100)};
        }
    }
    for (size_t i = 0; i < segment->tasks; i++) {
        struct task_record *record = &segment->record[i];
        const struct task *task = staged_task(staged, i);
        if (record->time[MOMENT_RELEASED] >= 0) {
            record->from = place_at(staged, task->who, record->time[MOMENT_RELEASED]);
            record->to = task->other == BODY_NONE
                             ? vec2_of(0, 0)
                             : place_at(staged, task->other, record->time[MOMENT_CAUGHT]);
        }
    }
}
