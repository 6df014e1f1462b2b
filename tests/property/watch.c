/* SPDX-License-Identifier: MIT */
#include "watch.h"

#include <math.h>
#include <stdio.h>

#include "base/real.h"

#define EPS 1e-9
#define DEEP .05        /* m of two bodies in each other */
#define TURNS .05       /* m/s: a body that turns about slower than that is said to stand */
#define REST .25        /* m/s, */
#define REST_TIME .5    /* s: so slow for so long is at rest */
#define WRITTEN_FOR .6  /* s after a corner, or a sentence's start, that a turn belongs to it */
#define BRAKE_BACK 1.25 /* of the braking: feet planted against a wrong way (floor model, 1) */
#define SHOVE .03       /* m that a body is put aside in one tick, not by its own legs */
#define RING (4 * FEET) /* nobody stands nearer to the baseline but on the ball or a post */
#define RING_SLACK .15
#define POST 5.2 /* m from the ring: a man nearer than that may be a post */

/* Keeps the worst of a kind; with `list` each one is printed. */
static void worse(const struct watch *watch, struct worst *worst, double value,
                  const struct world *world, int who, int other)
{
    if (watch->list) {
        printf("# %s: %.4f, seed %llu, step %d, branch %d, %.3f s, body %d, %d\n", worst->kind,
               value, (unsigned long long)watch->seed, world->step_index + 1, world->branch,
               world->t, who, other);
    }
    if (value > worst->value) {
        *worst = (struct worst){worst->kind,   value,    watch->seed, world->step_index + 1,
                                world->branch, world->t, (body)who,   (body)other};
    }
}

/* ---- legs: what the mover did in one tick against the sprint law, the braking and the grip ----
 */

/* A foot is planted where a way begins or turns sharply, and nowhere else; it turns no more than
 * is carried in and than the angle lets through. m/s too much. */
static double begins_plant(struct plant_memory *memory, const struct agent *agent, double t)
{
    struct plant plant = agent->before.plant;
    bool way = memory->course != agent->course.path.at || memory->passed != agent->course.passed;
    bool same = plant.to.x == memory->to.x && plant.to.y == memory->to.y &&
                fabs(t + plant.left - memory->ends) < EPS;
    double speed = vec2_length(agent->before.v), carried = vec2_length(plant.to);
    memory->course = agent->course.path.at;
    memory->passed = agent->course.passed;
    if (plant.left > 0) { /* what was run too far, and taken back, may have ended it */
        memory->to = plant.to;
        memory->ends = t + plant.left;
    }
    if (same || plant.left <= 0) {
        return 0;
    }
    double angle = vec2_angle(agent->before.v, plant.to);
    double most = real_min(speed, agent->gait.sprint * motion_turn_share(angle));
    double turned = vec2_distance(vec2_unit(agent->before.v), vec2_unit(plant.to)); /* 2 sin a/2 */
    double over = real_max(carried - most, MOTION_PLANT * plant.left - carried * turned);
    return way ? over : carried;
}

/* What the planted foot gave of a tick, and the velocity it left: seconds. */
static double planted(const struct agent *agent, double dt, struct vec2 *v)
{
    struct plant plant = agent->before.plant;
    double t = plant.left > 0 ? real_min(dt, plant.left) : 0;
    struct vec2 change = vec2_sub(plant.to, *v);
    if (t > 0) {
        *v = vec2_along(*v, vec2_unit(change), real_min(vec2_length(change), MOTION_PLANT * t));
    }
    return t;
}

static void legs(struct watch *watch, const struct world *world, int b)
{
    const struct agent *agent = &world->agent[b];
    const struct level *level = world->level;
    struct vec2 before = agent->before.v, now = agent->m.v;
    double begun = begins_plant(&watch->plant[b], agent, world->t);
    double dt = agent->ran - planted(agent, agent->ran, &before),
           wanted = vec2_length(agent->command);
    struct vec2 way = vec2_unit(wanted > 0 ? agent->command : before);
    if (agent->anchored) {
        return; /* planted: a set screener's feet, judged by when he may be set */
    }
    double from = vec2_dot(before, way), to = vec2_dot(now, way);
    double across = fabs(fabs(vec2_cross(way, now)) - fabs(vec2_cross(way, before)));
    double sprint = level->sprint, start = real_max(from, 0);
    double gain = (sprint - start) * (1 - real_exp(-dt / level->tau));
    double back = from < 0 ? BRAKE_BACK * level->brake * dt : 0;
    double over = real_max(to - from - gain - back, from - to - BRAKE_BACK * level->brake * dt);
    over = real_max(over, across - MOTION_ACROSS * dt);
    /* across the way that he went; of what he gains along it a share, as it turns */
    double turned = fabs(vec2_cross(vec2_unit(before), vec2_unit(now)));
    double sideways = turned * real_min(vec2_length(before), vec2_length(now));
    over = real_max(over, agent->gait.bends ? sideways - MOTION_ROUND * dt : 0);
    if (watch->segment == world->segment) { /* else it may go on from the step before */
        over = real_max(over, begun);
    }
    if (over > EPS) {
        watch->too_hard++;
        worse(watch, &watch->hard, over / agent->ran, world, b, BODY_NONE);
    }
    bool ball = world->ball.state == HELD && world->ball.holder == b;
    double fast = vec2_length(now) - sprint;
    (void)ball;
    if (fast > EPS) {
        watch->too_fast++;
        worse(watch, &watch->fast, fast, world, b, BODY_NONE);
    }
}

/* ---- turning about ---- */

static bool turn_is_written(struct motion_memory *memory, const struct agent *agent, double t)
{
    bool new_course = agent->course.path.at != memory->course;
    if (agent->head != memory->head || agent->course.passed != memory->passed || new_course) {
        memory->written = t;
    }
    memory->head = agent->head;
    memory->passed = agent->course.passed;
    memory->course = agent->course.path.at;
    return t - memory->written < WRITTEN_FOR;
}

static void turned(struct watch *watch, const struct world *world, int b, bool rested)
{
    struct motion_memory *memory = &watch->memory[b];
    if (rested && memory->stirred < 0) {
        memory->stirred = world->t;
    }
    memory->turned[memory->turns++ % WATCH_TURNS] = world->t;
    size_t in_a_second = 0;
    for (size_t i = 0; i < WATCH_TURNS && i < memory->turns; i++) {
        in_a_second += world->t - memory->turned[i] < 1;
    }
    if (in_a_second > 2) {
        watch->dancing++;
        worse(watch, &watch->dance, (double)in_a_second, world, b, BODY_NONE);
    }
}

static void turns(struct watch *watch, const struct world *world, int b)
{
    struct motion_memory *memory = &watch->memory[b];
    const struct agent *agent = &world->agent[b];
    double speed = vec2_length(agent->m.v);
    bool written = turn_is_written(memory, agent, world->t);
    bool rested = memory->slow_since >= 0 && world->t - memory->slow_since > REST_TIME;
    if (speed > TURNS) {
        if (vec2_dot(agent->m.v, memory->way) < 0 && !written) {
            turned(watch, world, b, rested && speed < REST);
        }
        memory->way = vec2_unit(agent->m.v);
    }
    if (memory->stirred >= 0 && world->t - memory->stirred > REST_TIME) {
        watch->trembling++; /* it went nowhere */
        worse(watch, &watch->tremble, world->t - memory->stirred, world, b, BODY_NONE);
        memory->stirred = -1;
    }
    if (speed > REST) {
        memory->slow_since = memory->stirred = -1; /* a start, not a tremble */
    } else if (memory->slow_since < 0) {
        memory->slow_since = world->t;
    }
}

/* ---- where bodies are ---- */

static bool written_contact(const struct world *world, int a, int b)
{
    if (a > BODY_COACH || b > BODY_COACH) {
        return false;
    }
    for (size_t i = 0; i < world->jobs; i++) { /* a hand-off, while it goes on */
        const struct job *job = &world->job[i];
        bool both = (job->task->who == a && job->task->other == b) ||
                    (job->task->who == b && job->task->other == a);
        if (both && job->task->kind == TASK_EXCHANGE && job->phase == PHASE_ACTIVE) {
            return true;
        }
    }
    return false;
}

static void bodies(struct watch *watch, const struct world *world)
{
    bool deep = false;
    for (int a = 0; a < BODY_COUNT; a++) {
        for (int b = a + 1; world->agent[a].here && b < BODY_COUNT; b++) {
            double in =
                2 * MOTION_BODY - (world->agent[b].here
                                       ? vec2_distance(world->agent[a].m.at, world->agent[b].m.at)
                                       : 9);
            if (in > DEEP && !written_contact(world, a, b)) {
                deep = true;
                worse(watch, &watch->overlap, in, world, a, b);
            }
        }
    }
    watch->overlaps += deep;
}

static void on_the_floor(struct watch *watch, const struct world *world, int b)
{
    const struct agent *agent = &world->agent[b];
    if (!agent->outside && b != BODY_COACH && !court_inside(world->court, agent->m.at, 0)) {
        watch->outside++;
        worse(watch, &watch->out, 1, world, b, BODY_NONE);
    }
}

static void under_the_ring(struct watch *watch, const struct world *world, int b)
{
    const struct agent *agent = &world->agent[b];
    body man = body_is_defender((body)b) ? world->guards[b] : (body)BODY_NONE;
    if (man >= BODY_COUNT || world->duty[b].strategy != STRATEGY_NONE) {
        return;
    }
    bool ball = (world->ball.state == HELD && world->ball.holder == man) ||
                (world->ball.state == IN_FLIGHT && world->ball.target == man);
    double since = watch->memory[b].slow_since;
    bool helps = world->helper == b; /* he is on the ball, as it were */
    bool stands = !helps && since >= 0 && world->t - since > REST_TIME,
         post = vec2_length(world->agent[man].m.at) < POST;
    double low = RING - RING_SLACK - agent->m.at.y;
    if (stands && !ball && !post && low > 0 &&
        fabs(agent->m.at.x) < world->court->lane_half_width) {
        watch->under_ring++;
        worse(watch, &watch->ring, low, world, b, man);
    }
}

static void remember(struct watch *watch, const struct world *world, int b)
{
    struct motion_memory *memory = &watch->memory[b];
    const struct agent *agent = &world->agent[b];
    if (watch->segment != world->segment) { /* another way through a step */
        *memory =
            (struct motion_memory){.slow_since = world->t, .written = world->t, .stirred = -1};
    } else {
        struct vec2 own = vec2_scale(vec2_add(memory->v, agent->m.v), world->dt / 2);
        double put = vec2_distance(vec2_add(memory->at, own), agent->m.at);
        if (put > SHOVE) {
            watch->shoved++;
            worse(watch, &watch->shove, put, world, b, BODY_NONE);
        }
        turns(watch, world, b);
    }
    memory->at = agent->m.at;
    memory->v = agent->m.v;
}

void watch_tick(void *ctx, const struct world *world, bool met)
{
    struct watch *watch = ctx;
    for (int b = 0; b < BODY_COUNT; b++) {
        if (!world->agent[b].here) {
            continue;
        }
        if (!met) {
            if (world->agent[b].ran > 0) {
                legs(watch, world, b);
            }
            continue;
        }
        watch->body_ticks++;
        on_the_floor(watch, world, b);
        under_the_ring(watch, world, b);
        remember(watch, world, b);
    }
    if (met) {
        watch->segment = world->segment;
        watch->ticks++;
        bodies(watch, world);
    }
}
