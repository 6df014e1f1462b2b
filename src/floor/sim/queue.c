/* SPDX-License-Identifier: MIT */
/* queue: each attacker does his sentences in order; the first one starts when its ties hold. */
#include "floor/sim/world.h"

#include "base/limits.h"
#include "base/real.h"

#define LEFT_BY 1.5        /* m: then a spot is free (play.h) */
#define NEAR_BY 3.0        /* m: then who is dribbled at goes (ours) */
#define OPEN_BY (4 * FEET) /* nearest defender */
#define AT_END .01         /* m: nearer to the end of his run nobody stirs */
#define HAND 0.65          /* m: a hand in the lane */
#define CUT_OFF (2 * FEET) /* of a run: nearer to its end it is as good as done (ours) */
#define LATE .35           /* s: a passer's follow-through, and the eye (ours) */
#define GETS_ON .1         /* m nearer: he gets on; */
#define IN_VAIN 2.0        /* s without that are in vain (both ours) */
#define FAR_OFF 1e9        /* m */
enum { ROUNDS = 8 };       /* at one moment, one thing leading to the next */

static const struct task_class *const classes[] = {
    [TASK_MOVE] = &task_move,     [TASK_HOLD] = &task_hold,         [TASK_CARRY] = &task_carry,
    [TASK_PASS] = &task_pass,     [TASK_EXCHANGE] = &task_exchange, [TASK_SHOOT] = &task_shoot,
    [TASK_SCREEN] = &task_screen, [TASK_USE] = &task_use,           [TASK_GUARD] = &task_guard};

const struct task_class *task_class(enum task_kind kind)
{
    return classes[kind];
}

struct job *queue_head(struct world *world, body who)
{
    struct agent *agent = &world->agent[who];
    return agent->head < agent->queued ? &world->job[agent->queue[agent->head]] : NULL;
}

static double nearest_defender(const struct world *world, body who)
{
    double least = 1e9;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        if (world->agent[b].here) {
            least = real_min(least, vec2_distance(world->agent[b].m.at, world->agent[who].m.at));
        }
    }
    return least;
}

/* Distance of the nearest defender to the way from the ball to `who`; his own end counts little. */
static double lane(const struct world *world, body who)
{
    struct vec2 from = ball_place(world), to = world->agent[who].m.at;
    struct vec2 way = vec2_unit(vec2_sub(to, from));
    double far = vec2_distance(from, to), least = 1e9;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        struct vec2 p = vec2_sub(world->agent[b].m.at, from);
        double along = vec2_dot(p, way);
        if (world->agent[b].here && along > .5 && along < far - .3) {
            double off = vec2_cross(way, p);
            least = real_min(least, off < 0 ? -off : off);
        }
    }
    return least;
}

static bool state_holds(const struct world *world, const struct job *job, const struct wait *wait)
{
    body who = wait->who;
    switch (wait->state) {
    case EVENT_HAS_BALL:
        return ball_is_held(world, who);
    case EVENT_OPEN:
        return nearest_defender(world, who) >= OPEN_BY && lane(world, who) >= HAND;
    case EVENT_COVERED:
        return nearest_defender(world, who) < OPEN_BY || lane(world, who) < HAND;
    case EVENT_DENIED:
        return lane(world, who) < HAND - FEET;
    case EVENT_PAST: { /* a foot beyond the line through the other, square to his way */
        const struct agent *agent = &world->agent[who];
        struct vec2 way = vec2_unit(agent->m.v);
        body whom = wait->other < BODY_COUNT ? wait->other : job ? job->task->who : who;
        struct vec2 other = world->agent[whom].m.at;
        return vec2_length(agent->m.v) > .5 && vec2_dot(vec2_sub(agent->m.at, other), way) > FEET;
    }
    case EVENT_NONE:
    case EVENT_VERB:
    case EVENT_CATCHES:
        break;
    }
    return true;
}

/* A screen that no sentence up to `index` uses is done when it is set. */
static bool is_set_for_later(const struct world *world, int screen, int index)
{
    const struct task *by = world->job[screen].task;
    if (by->kind != TASK_SCREEN || world->segment->record[screen].time[MOMENT_SET] == TIME_NEVER) {
        return false;
    }
    for (int i = 0; i < index; i++) {
        const struct task *task = world->job[i].task;
        if (task->kind == TASK_USE && task->who == by->other &&
            (task->other == by->who || task->other2 == by->who)) {
            return false;
        }
    }
    return true;
}

/* For `job`, behind it, the sentence is over. A slip does not wait for the screen that it leaves.
 */
static bool is_over_for(const struct world *world, const struct job *job, int before)
{
    const struct task *task = world->job[before].task;
    bool left = job->task->slip && task->kind == TASK_SCREEN && task->who == job->task->who;
    return world->job[before].complete || left || is_set_for_later(world, before, job->index);
}

static bool all_before(const struct world *world, const struct job *job, double *last)
{
    *last = 0;
    int first = (size_t)job->index >= world->base ? (int)world->base : 0;
    for (int i = first; i < job->index; i++) {
        if (!is_over_for(world, job, i)) {
            return false;
        }
        for (int m = 0; m < MOMENT_COUNT; m++) {
            *last = real_max(*last, world->segment->record[i].time[m]);
        }
    }
    return true;
}

/* What was cut short has been: who waited for its end by his verb, or for the screen to be used,
 * waits no longer; and nobody for a screen that its screener has slipped. */
static bool is_cut_off(const struct world *world, const struct wait *wait)
{
    const struct job *on = &world->job[wait->task];
    bool slipped = on->task->kind == TASK_SCREEN && on->complete && !on->cut &&
                   world->segment->record[wait->task].time[MOMENT_SET] == TIME_NEVER;
    return slipped || (on->cut && (!wait->written || wait->moment == MOMENT_USED));
}

/* He is on his way and near the other, or will come no nearer. */
static bool has_neared(const struct world *world, const struct wait *wait)
{
    double far = vec2_distance(world->agent[wait->who].m.at, world->agent[wait->other].m.at);
    bool begun = world->segment->record[wait->task].time[MOMENT_STARTED] != TIME_NEVER;
    return world->job[wait->task].complete || (begun && far <= NEAR_BY);
}

bool queue_wait_met(struct world *world, const struct job *job, const struct wait *wait)
{
    double last;
    switch (wait->kind) {
    case WAIT_TASK: {
        if (wait->task >= 0 && (size_t)wait->task < world->jobs && is_cut_off(world, wait)) {
            return true;
        }
        double time = wait->task >= 0 && (size_t)wait->task < world->jobs
                          ? world->segment->record[wait->task].time[wait->moment]
                          : 0;
        return time != TIME_NEVER && world->t >= time + wait->delay - 1e-9;
    }
    case WAIT_CLOCK:
        return world->t - world_zero(world) >= wait->delay - 1e-9;
    case WAIT_ALL_BEFORE:
        return all_before(world, job, &last) && world->t >= last + wait->delay - 1e-9;
    case WAIT_LEAVES:
        return vec2_distance(world->agent[wait->who].m.at, wait->where) >= LEFT_BY ||
               !queue_head(world, wait->who); /* who is done, a screen beside it, leaves no more */
    case WAIT_NEARS:
        return has_neared(world, wait);
    case WAIT_STATE:
        return state_holds(world, job, wait);
    case WAIT_DEED: {
        double time = deed_time(world, wait);
        return time != TIME_NEVER && world->t >= time + wait->delay - 1e-9;
    }
    }
    return true;
}

bool queue_waits_met(struct world *world, const struct job *job, bool *fixed)
{
    *fixed = false;
    for (size_t i = 0; i < job->task->waits.count; i++) {
        const struct wait *wait = &job->task->waits.at[i];
        if (!queue_wait_met(world, job, wait)) {
            return false;
        }
        *fixed |= wait->fixed;
    }
    return true;
}

static bool may_start(struct world *world, struct job *job)
{
    bool fixed;
    if (!queue_waits_met(world, job, &fixed)) {
        return false;
    }
    return fixed || task_class(job->task->kind)->ready(world, job);
}

/* A movement that follows at once is run into without a stop. */
bool queue_next_is_run(struct world *world, body who, struct vec2 *goal)
{
    struct agent *agent = &world->agent[who];
    if (agent->head + 1 >= agent->queued) {
        return false;
    }
    struct job *next = &world->job[agent->queue[agent->head + 1]];
    if (!task_class(next->task->kind)->movement || !may_start(world, next)) {
        return false;
    }
    enum verb_shape shape = next->task->shape;
    bool plants = shape == SHAPE_V || shape == SHAPE_L || shape == SHAPE_BACK ||
                  shape == SHAPE_SETUP ||
                  next->task->kind == TASK_SCREEN; /* begins with a step the other way */
    *goal = plants ? agent->m.at : move_goal(world, next->task);
    return !plants;
}

/* Does `task` wait, by words or by the order of its player's sentences, for `on`? */
bool queue_depends(struct world *world, int task, int on, int depth)
{
    const struct job *job = &world->job[task];
    if (task == on) {
        return true;
    }
    if (depth <= 0 || job->phase != PHASE_WAITING) {
        return false;
    }
    for (size_t i = 0; i < job->task->waits.count; i++) {
        const struct wait *wait = &job->task->waits.at[i];
        if (wait->kind == WAIT_ALL_BEFORE && on < task &&
            ((size_t)on >= world->base || (size_t)task < world->base)) {
            return true;
        }
        if (wait->kind == WAIT_TASK && wait->task >= 0 && (size_t)wait->task < world->jobs &&
            queue_depends(world, wait->task, on, depth - 1)) {
            return true;
        }
    }
    const struct agent *agent = &world->agent[job->task->who];
    for (size_t i = agent->head; i < agent->queued && agent->queue[i] != task; i++) {
        if (queue_depends(world, agent->queue[i], on, depth - 1)) {
            return true;
        }
    }
    return false;
}

/* `as`, `at` and `when` in the next sentence cut short what its player is doing. */
static bool is_cut_short(struct world *world, const struct agent *agent, const struct job *head)
{
    if (agent->head + 1 >= agent->queued || task_is_throw(head->task)) {
        return false;
    }
    const struct job *next = &world->job[agent->queue[agent->head + 1]];
    bool fixed;
    return next->task->cuts_short && queue_waits_met(world, next, &fixed);
}

/* `until`: the moment has come at which it is cut short. */
static bool is_ended(struct world *world, const struct job *job)
{
    const struct wait *until = &job->task->until;
    if (!job->task->has_until) {
        return false;
    }
    return until->kind == WAIT_DEED ? deed_holds(world, until) : queue_wait_met(world, job, until);
}

/* It stands until something that has not come; nobody waits for it to end. */
static bool stands_on(const struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    return job->phase == PHASE_ACTIVE && job->task->kind == TASK_HOLD && job->task->has_until &&
           agent->head + 1 == agent->queued;
}

/* What was cut short leaves nothing behind that others would wait for. */
static void drop(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    struct screen *screen = &world->screen[job->task->who];
    agent->going = false;
    if (job->task->kind == TASK_USE) {
        use_let_go(world, job);
    } else if (job->task->kind == TASK_SCREEN) {
        screen->live = false;
        agent->anchored = false;
        agent->screening = false;
    }
}

/* A time cuts short what is nearly done anyhow, or stands on purpose, and nobody need be told. */
static bool is_worth_telling(const struct agent *agent, const struct job *job)
{
    double left = agent->course.goal - agent->course.along;
    bool lasts = job->task->stay || job->task->kind == TASK_GUARD; /* until his next sentence */
    return !lasts && !(agent->going && left < CUT_OFF);
}

/* That `as` and `when` cut short is what they are written for; of a time it may not be meant. */
static void tell_cut(struct world *world, const struct job *job)
{
    const struct agent *agent = &world->agent[job->task->who];
    const struct job *next = &world->job[agent->queue[agent->head + 1]];
    for (size_t i = 0; i < next->task->waits.count; i++) {
        const struct wait *wait = &next->task->waits.at[i];
        if (wait->kind == WAIT_CLOCK && wait->fixed && is_worth_telling(agent, job)) {
            trouble_cut(world, job, next);
        }
    }
}

/* When a wait came true; TIME_NEVER for one that has no moment of its own. */
static double moment_of(const struct world *world, const struct wait *wait)
{
    double time = TIME_NEVER;
    if (wait->kind == WAIT_TASK) {
        time = world->segment->record[wait->task].time[wait->moment];
    } else if (wait->kind == WAIT_DEED) {
        time = deed_time(world, wait);
    } else if (wait->kind == WAIT_CLOCK) {
        time = world_zero(world);
    }
    return time == TIME_NEVER ? time : time + wait->delay;
}

/* `as` and `at` say exactly when: who is not free by then is too late. */
static void watch_late(struct world *world, const struct job *job)
{
    for (size_t i = 0; i < job->task->waits.count; i++) {
        const struct wait *wait = &job->task->waits.at[i];
        double moment = moment_of(world, wait);
        if (wait->fixed && wait->written && moment != TIME_NEVER && world->t > moment + LATE) {
            trouble_past(world, job, wait, moment);
            return;
        }
    }
}

static void begin(struct world *world, struct job *job)
{
    struct agent *agent = &world->agent[job->task->who];
    job->phase = PHASE_ACTIVE;
    job->begun = world->t;
    agent->coming = false;
    if (task_class(job->task->kind)->movement) { /* whoever leaves takes his screen with him */
        world->screen[job->task->who].live = false;
        agent->anchored = agent->seals = false;
    }
    watch_late(world, job);
    world->segment->record[job->index].from = agent->m.at;
    world_mark(world, job->index, MOMENT_STARTED);
    task_class(job->task->kind)->start(world, job);
    world->quiet = 0;
    world->news = true;
}

static void end(struct world *world, struct job *job, bool cut)
{
    job->phase = PHASE_DONE;
    world->agent[job->task->who].head++;
    if (cut) {
        job->complete = true;
        job->cut = true;
        world_mark(world, job->index, MOMENT_ARRIVED);
        world->segment->record[job->index].to = world->agent[job->task->who].m.at;
        drop(world, job);
    } else if (job->task->has_until) {
        trouble_until(world, job);
    }
    world->quiet = 0;
    world->news = true;
}

/* Nothing changes: at most the moment is tried. */
bool queue_due(struct world *world, body who)
{
    struct job *job = queue_head(world, who);
    if (!job) {
        return false;
    }
    if (job->phase == PHASE_WAITING) {
        return may_start(world, job);
    }
    return is_cut_short(world, &world->agent[who], job) || is_ended(world, job) ||
           task_class(job->task->kind)->due(world, job);
}

/* Waits for a moment the coach has named, and it has not come: who only lets the seconds behind it
 * go by knows when he goes. What waits its turn, or for a ball or a screen, has the whole step. */
static bool is_tied(struct world *world, const struct job *job)
{
    for (size_t i = 0; i < job->task->waits.count; i++) {
        const struct wait *wait = &job->task->waits.at[i];
        bool named = wait->written && (wait->kind == WAIT_TASK || wait->kind == WAIT_STATE ||
                                       wait->kind == WAIT_DEED);
        if (named && !queue_wait_met(world, job, wait) && moment_of(world, wait) == TIME_NEVER) {
            return true;
        }
    }
    return false;
}

/* Without news nothing can have begun: only what is on goes on. */
static void one_player(struct world *world, body who, bool news)
{
    struct agent *agent = &world->agent[who];
    for (int guard = 0; guard < LIMIT_SENTENCES; guard++) {
        struct job *job = queue_head(world, who);
        if (!job) {
            return;
        }
        if (job->phase == PHASE_WAITING) {
            if (job->head_since < 0) {
                job->head_since = world->t;
            }
            if (!news || !may_start(world, job)) {
                if (world->t - job->head_since > LIMIT_WAIT_SECONDS && is_tied(world, job)) {
                    trouble_waited(world, job);
                }
                return;
            }
            begin(world, job);
            news = true;
        }
        bool ended = news && is_ended(world, job);
        bool cut = ended || (news && is_cut_short(world, agent, job));
        if (ended && job->begun == world->t && task_class(job->task->kind)->movement) {
            trouble_at_once(world, job);
        }
        if (!cut && !task_class(job->task->kind)->tick(world, job)) {
            return;
        }
        if (cut && !ended) {
            tell_cut(world, job);
        }
        end(world, job, cut);
        news = true;
    }
}

static bool stands_at_end(const struct agent *agent)
{
    const struct path *path = &agent->course.path;
    return vec2_square(agent->m.v) < 1e-6 &&
           vec2_square(vec2_sub(agent->m.at, path->at[path->count - 1])) < AT_END * AT_END;
}

/* Who comes to the ball and for a while gets no nearer to it, up and down before a wall of bodies,
 * is let through. */
static void watch_coming(const struct world *world, struct agent *agent, double far)
{
    bool gets_on = far < agent->come_far - GETS_ON;
    if (!gets_on && world->t <= agent->come_since + IN_VAIN) {
        return;
    }
    if (!gets_on) {
        agent->let_through = world->t + IN_VAIN;
    }
    agent->come_far = far;
    agent->come_since = world->t;
}

static void come(struct world *world, body who, const struct mover *soon)
{
    struct agent *agent = &world->agent[who];
    struct vec2 to = agent->come_to;
    double far = vec2_distance(soon->at, to);
    watch_coming(world, agent, far);
    agent->gait = motion_gait(agent->level, EFFORT_CUT, false);
    double speed = real_min(3.5 * far, real_sqrt(1.6 * agent->gait.brake * far));
    agent->command =
        vec2_scale(vec2_unit(vec2_sub(to, soon->at)), real_min(speed, agent->gait.top));
    agent->command = steer_round(world, who, agent->command, to, BODY_NONE);
}

/* Nobody's sentence: to the ball if it is coming to him, else on to the end of his run, else still.
 */
static void idle(struct world *world, body who)
{
    struct agent *agent = &world->agent[who];
    struct mover soon = world_soon(world, agent);
    seal_tick(world, who);
    if (!agent->coming) {
        agent->come_far = FAR_OFF;
    }
    if (agent->coming) {
        come(world, who, &soon);
    } else if (agent->through) {
        agent->command = agent->m.v;
    } else if (agent->going && stands_at_end(agent)) {
        agent->command = vec2_of(0, 0);
    } else if (agent->going) {
        motion_progress(&agent->course, &agent->m, &agent->gait);
        agent->command = motion_wish(&agent->course, &soon, &agent->gait, 0);
        agent->command = steer_round(world, who, agent->command,
                                     path_point(&agent->course.path, 1e9), BODY_NONE);
    } else {
        agent->command = vec2_of(0, 0);
    }
}

/* Until nothing more happens at this moment: whoever was asked before a team-mate's moment came is
 * asked again. */
void queue_tick(struct world *world)
{
    deeds_watch(world);
    bool news = true;
    for (int guard = 0; news && guard < ROUNDS; guard++) {
        news = world->news;
        world->news = false;
        for (int b = 0; b < BODY_COUNT; b++) {
            if (!world->agent[b].here) {
                continue;
            }
            if (body_is_attacker((body)b)) { /* defenders are moved by guard.c */
                steer_watch_feet(world, &world->agent[b]);
                idle(world, (body)b);
            }
            one_player(world, (body)b, news);
        }
        news = world->news;
    }
}

bool queue_all_done(struct world *world)
{
    for (size_t i = 0; i < world->jobs; i++) {
        if (!world->job[i].complete && !stands_on(world, &world->job[i])) {
            return false;
        }
    }
    return true;
}
