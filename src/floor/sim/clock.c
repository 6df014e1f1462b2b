/* SPDX-License-Identifier: MIT */
/* clock: the loop: everybody decides, everybody moves, bodies meet, the ball flies; tick by tick
 * until everything that was said is done and the defenders stand. What happens inside a tick is
 * looked for there: everybody is taken back to that moment, and the rest of the tick is run from it
 * with what has then begun. */
#include "floor/sim/world.h"

#include "base/limits.h"
#include "base/real.h"

#define STIRRING .25     /* m/s: slower than that nothing is going on */
#define STUCK 1.2        /* s of that while there is something left to do */
#define SETTLE_LEAST .25 /* s after the last task: the ball is in hand, the feet stand, */
#define SETTLE_MOST 1.2  /* and at most; where no step follows, until the defenders stand too */
#define STALL_WANTS .4   /* m/s wanted, */
#define STALL_GETS .3    /* and not reached */
#define STALL_TIME .35   /* for so long */
#define STALL_LETS .8    /* s in which team-mates step aside */
#define STANDS .35       /* m/s */
enum {
    HALVINGS = 12, /* of a tick, to find a moment in it: 2 microseconds */
    PIECES = 12    /* of a tick, at most */
};

/* Who wants to go and cannot, in a crowd of his own side, is let through: people step aside. */
static void watch_stall(const struct world *world, struct agent *agent)
{
    bool stalls = vec2_length(agent->command) > STALL_WANTS && vec2_length(agent->m.v) < STALL_GETS;
    agent->stall = stalls ? agent->stall + world->dt : 0;
    if (agent->stall > STALL_TIME) {
        agent->let_through = world->t + STALL_LETS;
    }
}

/* To the end of the tick. */
static void move_all(struct world *world)
{
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        agent->before = agent->m;
        if (agent->anchored) {
            agent->m.v = vec2_of(0, 0);
            agent->m.plant.left = 0;
            continue;
        }
        if (agent->later > 0) {
            motion_advance(&agent->m, &agent->gait, vec2_of(0, 0), agent->later);
        }
        motion_advance(&agent->m, &agent->gait, agent->command, world->h - agent->later);
        agent->later = 0;
    }
}

static void watch_all(struct world *world)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        if (agent->here && !agent->defends && !agent->anchored) {
            watch_stall(world, agent);
        }
        if (agent->outside && court_inside(world->court, agent->m.at, .2)) {
            agent->outside = false;
        }
    }
}

static bool attackers_stir(const struct world *world)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        if (world->agent[b].here && vec2_length(world->agent[b].m.v) > STIRRING) {
            return true;
        }
    }
    return false;
}

/* A tie to the clock, or some seconds after an event that has been, will end by itself. */
static bool clock_will_tell(struct world *world)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        struct job *job = world->agent[b].here ? queue_head(world, (body)b) : NULL;
        for (size_t i = 0; job && i < job->task->waits.count; i++) {
            const struct wait *wait = &job->task->waits.at[i];
            if (wait->kind == WAIT_CLOCK && wait->delay > world->t - world_zero(world)) {
                return true;
            }
            if (wait->delay > 0 && wait->delay > world->quiet - STUCK) {
                return wait->kind != WAIT_TASK ||
                       world->segment->record[wait->task].time[wait->moment] != TIME_NEVER;
            }
        }
    }
    return false;
}

/* All of them; or the attackers alone, who begin the next step: the defenders are on their way
 * there as they are in a game. */
static bool they_stand(const struct world *world, bool attackers)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        bool asked = world->agent[b].here && !(attackers && world->agent[b].defends);
        if (asked && vec2_length(world->agent[b].m.v) > STANDS) {
            return false;
        }
    }
    return true;
}

static bool is_over(struct world *world)
{
    if (!queue_all_done(world) || ball_is_under_way(world)) {
        world->settled = 0;
        return false;
    }
    world->settled += world->dt;
    bool whole = world_beat(world, SIM_SAMPLES); /* the last sample is the end */
    for (int b = 0; b <= BODY_COACH; b++) {
        if (whole && world->agent[b].through) {
            return true; /* nothing stops him */
        }
    }
    return whole && world->settled >= SETTLE_LEAST &&
           (they_stand(world, border_next(world) != NULL) || world->settled > SETTLE_MOST);
}

static void show(const struct world *world)
{
    const struct sim_options *options = world->options;
    if (options->inside) {
        options->inside(options->watcher, world, true);
    }
    if (!options->watch) {
        return;
    }
    struct sim_tick tick = {
        .step = world->step_index, .branch = world->branch, .t = world->t - world_zero(world)};
    for (int b = 0; b < BODY_COUNT; b++) {
        tick.here[b] = world->agent[b].here;
        tick.at[b] = world->agent[b].m.at;
        tick.v[b] = world->agent[b].m.v;
    }
    options->watch(options->watcher, &tick);
}

/* ---- what happens inside the tick ---- */

/* Everybody to `part` of the way through the time just run, from `from` on, `h` long. */
static void stand_at(struct world *world, double from, double h, double part)
{
    double p2 = part * part, p3 = p2 * part;
    double h00 = 2 * p3 - 3 * p2 + 1, h10 = (p3 - 2 * p2 + part) * h, h01 = 3 * p2 - 2 * p3,
           h11 = (p3 - p2) * h;
    for (int b = 0; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        if (!agent->here) {
            continue;
        }
        const struct mover *m = &agent->before, *n = &agent->after;
        agent->m.at.x = m->at.x * h00 + n->at.x * h01 + m->v.x * h10 + n->v.x * h11;
        agent->m.at.y = m->at.y * h00 + n->at.y * h01 + m->v.y * h10 + n->v.y * h11;
        agent->m.v = vec2_mix(m->v, n->v, part);
        agent->m.plant.left = real_max(0, m->plant.left - part * h);
    }
    world->t = from + part * h;
}

enum { BALL = BODY_COUNT, SIGHT, ENTRY, WATCHED };

static bool is_due(struct world *world, int who)
{
    return who == BALL    ? ball_due(world)
           : who == SIGHT ? see_due(world)
           : who == ENTRY ? border_due(world)
                          : world->agent[who].here && queue_due(world, (body)who);
}

/* The part of the time just run after which `who` was due first, or `best` when it was later, or
 * all the while. */
static double first_due(struct world *world, int who, double from, double h, double best)
{
    double low = 0, high = best;
    stand_at(world, from, h, low);
    if (is_due(world, who)) {
        return best;
    }
    stand_at(world, from, h, high);
    if (!is_due(world, who)) {
        return best;
    }
    for (int i = 0; i < HALVINGS; i++) {
        double middle = (low + high) / 2;
        stand_at(world, from, h, middle);
        if (is_due(world, who)) {
            high = middle;
        } else {
            low = middle;
        }
    }
    return high;
}

/* At the end of a tick: did something happen inside it? Then everybody stands at that moment. */
static bool take_back(struct world *world, double from, double h)
{
    bool due[WATCHED], any = false;
    for (int who = 0; who < WATCHED; who++) {
        due[who] = is_due(world, who);
        any |= due[who];
    }
    world->news |= any;
    if (!any) {
        return false;
    }
    struct mover end[BODY_COUNT];
    double best = 1, to = world->t;
    for (int b = 0; b < BODY_COUNT; b++) {
        end[b] = world->agent[b].after = world->agent[b].m;
    }
    for (int who = 0; who < WATCHED; who++) {
        if (due[who]) {
            best = first_due(world, who, from, h, best);
        }
    }
    if (best < 1) {
        stand_at(world, from, h, best);
        return true;
    }
    for (int b = 0; b < BODY_COUNT; b++) {
        world->agent[b].m = end[b];
    }
    world->t = to;
    return false;
}

static void one_tick(struct world *world)
{
    double end = (double)(world->tick + 1) / world->rate;
    bool again = true;
    if (world->t == (double)world->tick / world->rate) { /* else it begins inside the tick */
        see_now(world);
    }
    for (int piece = 0; again; piece++) {
        double from = world->t;
        world->h = end - from;
        world->lead = world->h;
        world->fresh = piece == 0;
        see_done(world);
        queue_tick(world);
        border_watch(world);
        guard_tick(world);
        move_all(world);
        if (world->options->inside) {
            world->options->inside(world->options->watcher, world, false);
        }
        contact_tick(world);
        world->t = end;
        again = piece < PIECES && take_back(world, from, end - from);
        ball_tick(world);
        screen_watch(world);
    }
    world->tick++;
    world->fresh = true;
    watch_all(world);
    world->quiet = attackers_stir(world) ? 0 : world->quiet + world->dt;
    if (world_beat(world, SIM_SAMPLES)) {
        record_sample(world);
    }
    show(world);
}

void clock_run(struct world *world)
{
    world->fresh = world->news = true;
    if (world->tick == 0) {
        see_fill(world);
    }
    record_ball(world);
    record_sample(world);
    show(world);
    border_watch(world);
    while (!world->failed && !is_over(world)) {
        one_tick(world);
        border_watch(world);
        if (world->quiet > STUCK && !queue_all_done(world) && !clock_will_tell(world)) {
            trouble_stuck(world);
        } else if (world->t - world_zero(world) > LIMIT_STEP_SECONDS) {
            trouble_long(world);
        }
    }
    while (!world_beat(world, SIM_SAMPLES)) { /* a failed one may stop between two samples */
        one_tick(world);
    }
    record_finish(world);
}
