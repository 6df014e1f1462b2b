/* SPDX-License-Identifier: MIT */
/* made: see made.h. */
#include "made.h"

#include "base/real.h"

/* Every sentence stands in the same stretch of a text that is never shown. */
enum { TEXT_SIZE = 28 };

static void room_for_tasks(struct made *made, struct step *step)
{
    step->tasks.at = arena_array(made->arena, struct task, MADE_TASKS);
    step->tasks.room = MADE_TASKS;
}

static struct segment *add_segment(struct made *made, double seconds)
{
    size_t index = made->play.steps.count;
    struct segment *segment = &made->segment[index];
    made->play.steps.count++;
    made->step[index] =
        (struct step){.number = (int)index + 1, .after_step = (int)index - 1, .after_branch = -1};
    made->play.steps.at = made->step;
    room_for_tasks(made, &made->step[index]);
    *segment = (struct segment){.play = &made->play,
                                .step = (int)index,
                                .branch = -1,
                                .main = true,
                                .ran = true,
                                .duration = seconds,
                                .samples = (size_t)(seconds / RUN_SAMPLE + 1.5),
                                .before = index ? &made->segment[index - 1] : NULL};
    segment->record = arena_array(made->arena, struct task_record, MADE_TASKS);
    for (int b = 0; b < BODY_COUNT; b++) {
        segment->guards[b] = BODY_NONE;
    }
    VEC_PUSH(made->arena, &made->run.segments, segment);
    return segment;
}

static void fill(struct made *made, struct segment *segment, body b, size_t from, struct vec2 at)
{
    struct track *track = &segment->track[b];
    track->on_floor = true;
    if (!track->sample) {
        track->sample = arena_array(made->arena, struct sample, segment->samples);
        track->facing = arena_array(made->arena, float, segment->samples);
    }
    for (size_t i = from; i < segment->samples; i++) {
        track->sample[i] = (struct sample){.at = at};
    }
}

struct made *made_play(struct arena *arena, double seconds)
{
    struct made *made = arena_new(arena, struct made);
    struct play *play = &made->play;
    size_t formation;
    made->arena = arena;
    play->court = court_of(COURT_HIGH_SCHOOL);
    play->level = LEVEL_U16;
    play->speed = level_of(LEVEL_U16);
    play->players = 5;
    play->ball = body_attacker(1);
    formation_find(STR("five-out"), &formation);
    play->formation = (int)formation;
    made->run.play = play;
    struct segment *segment = add_segment(made, seconds);
    for (int i = 0; i < 5; i++) {
        const struct formation_spot *spot = &formation_at(formation)->at[i];
        struct vec2 at = formation_point(play->court, spot);
        play->start[body_attacker(i + 1)] =
            (struct start_body){.on_floor = true, .at = at, .spot = spot->spot, .side = spot->side};
        fill(made, segment, body_attacker(i + 1), 0, at);
    }
    return made;
}

struct segment *made_step(struct made *made, double seconds)
{
    struct segment *segment = add_segment(made, seconds), *before = segment->before;
    segment->begins = before->duration;
    for (int b = 0; b < BODY_COUNT; b++) {
        if (before->track[b].on_floor) {
            fill(made, segment, (body)b, 0, before->track[b].sample[before->samples - 1].at);
        }
    }
    return segment;
}

void made_stand(struct made *made, struct segment *segment, body b, double x, double y)
{
    fill(made, segment, b, 0, vec2_of(x * FEET, y * FEET));
}

void made_walk(struct made *made, struct segment *segment, body b, double from, double to, double x,
               double y)
{
    size_t first = (size_t)(from / RUN_SAMPLE + 0.5), last = (size_t)(to / RUN_SAMPLE + 0.5);
    struct vec2 start = segment->track[b].sample[first].at, end = vec2_of(x * FEET, y * FEET);
    struct vec2 v = vec2_scale(vec2_sub(end, start), 1 / (to - from));
    fill(made, segment, b, last, end);
    for (size_t i = first; i < last; i++) {
        double t = (double)(i - first) / (double)(last - first);
        segment->track[b].sample[i] = (struct sample){vec2_mix(start, end, t), v};
    }
}

void made_ball(struct made *made, struct segment *segment, body holder, double from, double to)
{
    struct ball_span span = {.from = from,
                             .to = to,
                             .state = BALL_HELD,
                             .holder = holder,
                             .target = BODY_NONE,
                             .task = -1};
    VEC_PUSH(made->arena, &segment->ball, span);
}

void made_flight(struct made *made, struct segment *segment, body from, body target, double at,
                 double till, bool shot)
{
    struct ball_span span = {.from = at,
                             .to = till,
                             .state = shot ? BALL_SHOT : BALL_FLIGHT,
                             .holder = from,
                             .target = target,
                             .start = segment_at(segment, from, at),
                             .end = shot ? vec2_of(0, 0) : segment_at(segment, target, till),
                             .task = -1};
    VEC_PUSH(made->arena, &segment->ball, span);
}

struct task *made_task(struct made *made, struct segment *segment, enum task_kind kind,
                       enum verb verb, body who, body other, double started, double arrived)
{
    struct step *step = &made->step[segment->step];
    struct task *task = &step->tasks.at[step->tasks.count++];
    static const struct sentence sentence;
    *task = (struct task){.kind = kind,
                          .verb = verb,
                          .who = who,
                          .other = other,
                          .other2 = BODY_NONE,
                          .on = BODY_NONE,
                          .path_who = BODY_NONE,
                          .screen_task = -1,
                          .effort = EFFORT_HARD,
                          .sentence = &sentence,
                          .span = {0, (uint32_t)segment->tasks, TEXT_SIZE}};
    struct task_record *record = &segment->record[segment->tasks++];
    *record = (struct task_record){.defender = BODY_NONE, .gap = -1};
    for (int m = 0; m < MOMENT_COUNT; m++) {
        record->time[m] = TIME_NEVER;
    }
    record->time[MOMENT_STARTED] = started;
    record->time[MOMENT_ARRIVED] = arrived;
    return task;
}

struct task_record *made_record(struct segment *segment, const struct task *task)
{
    return &segment->record[task - segment_task(segment, 0)];
}

struct made *made_run_with_ball(struct arena *arena, double feet)
{
    struct made *made = made_play(arena, 6);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, body_attacker(2), 0, 20);
    made_ball(made, segment, body_attacker(1), 0, 1);
    made_flight(made, segment, body_attacker(1), body_attacker(2), 1, 2, false);
    made_ball(made, segment, body_attacker(2), 2, 6);
    made_walk(made, segment, body_attacker(2), 2.5, 4.5, feet, 20);
    return made;
}
