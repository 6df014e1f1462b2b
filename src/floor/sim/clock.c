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
    HALVINGS = 16, /* of a tick, to find a moment in it: a tenth of a microsecond */
    PIECES = 12,   /* of a tick, at most */
    CONTACTS = 480 /* a second: so often bodies are parted where two are about to touch, at any
                      rate, because that goes fast and must not hang on the tick */
};

/* Who wants to go and cannot, in a crowd of his own side, is let through: people step aside. */
static void watch_stall(const struct world *world, struct agent *agent)
{
    bool stalls = vec2_length(agent->command) > STALL_WANTS && vec2_length(agent->m.v) < STALL_GETS;
    agent->stall = stalls ? agent->stall + world->since : 0;
    if (agent->stall > STALL_TIME) {
        agent->let_through = world->t + STALL_LETS;
    }
}

static void watch_all(struct world *world)
{
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        if (!agent->defends && !agent->anchored) {
            watch_stall(world, agent);
        }
        if (agent->outside && court_inside(world->court, agent->m.at, .2)) {
            agent->outside = false;
        }
    }
}

/* Everybody looks and decides; what he wants then holds until the next beat, or until something
 * happens. */
static void think(struct world *world)
{
    long part = world->rate / SIM_THOUGHTS;
    double next = (double)((world->tick / part + 1) * part) / world->rate;
    world->lead = next - world->t;
    world->since = world->t - world->thought;
    see_done(world);
    watch_all(world);
    screen_watch(world);
    queue_tick(world);
    border_watch(world);
    guard_tick(world);
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        agent->stride = motion_stride(&agent->gait, agent->command);
    }
    contact_list(world);
    world->thought = world->t;
}

static void run_legs(struct agent *agent, double seconds)
{
    agent->before = agent->m;
    agent->ran = seconds;
    if (agent->anchored) {
        agent->m.v = vec2_of(0, 0);
        agent->m.plant.left = 0;
    } else {
        motion_run(&agent->m, &agent->gait, &agent->stride, seconds);
    }
}

/* Legs alone: `meeting` of those who are about to touch somebody, else of all others. */
static void run_all(struct world *world, bool meeting, double seconds)
{
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        if (agent->meets == meeting) {
            run_legs(agent, seconds);
        } else if (meeting) {
            agent->ran = 0;
        }
    }
}

static void look_on(struct world *world, bool shown)
{
    if (shown && world->options->inside) {
        world->options->inside(world->options->watcher, world, false);
    }
}

static void bound_all(struct world *world)
{
    for (int i = 0; i < world->bodies; i++) {
        if (world->agent[world->present[i]].ran > 0) {
            contact_bound(world, world->present[i]);
        }
    }
}

/* On for `seconds`; `shown` to whoever looks on. Bodies meet in the middle of each part that their
 * legs run: so the length of the part matters least. */
static void move_all(struct world *world, double seconds, bool shown)
{
    contact_look(world, seconds);
    int parts = real_pieces(seconds, CONTACTS);
    world->h = seconds / parts;
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        agent->start = agent->m;
        agent->ran = 0;
    }
    run_all(world, false, seconds);
    for (int i = 0; world->meetings && i <= parts; i++) {
        if (i > 0) {
            contact_part(world);
            bound_all(world);
            run_all(world, true, i < parts ? world->h : world->h / 2);
        } else {
            for (int k = 0; k < world->bodies; k++) {
                struct agent *agent = &world->agent[world->present[k]];
                if (agent->meets) {
                    run_legs(agent, world->h / 2);
                }
            }
        }
        look_on(world, shown);
        world->t += i == 0 || i == parts ? world->h / 2 : world->h;
    }
    if (!world->meetings) {
        look_on(world, shown);
        world->t += seconds;
    }
    bound_all(world);
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

/* Samples are counted from where the segment begins. */
static bool is_sample(const struct world *world)
{
    return (world->tick - world->origin) * SIM_SAMPLES % world->rate == 0;
}

static bool is_over(struct world *world)
{
    if (!queue_all_done(world) || ball_is_under_way(world)) {
        world->done = -1;
        return false;
    }
    if (world->done < 0) {
        world->done = world->thought;
    }
    bool whole = is_sample(world); /* the last sample is the end */
    double settled = world->t - world->done;
    for (int b = 0; b <= BODY_COACH; b++) {
        if (whole && world->agent[b].through) {
            return true; /* nothing stops him */
        }
    }
    return whole && settled >= SETTLE_LEAST &&
           (they_stand(world, border_next(world) != NULL) || settled > SETTLE_MOST);
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

/* Everybody to `part` of the way through the time just run, from `from` on, `h` long: by his legs,
 * or, who was in touch, about so. */
static void stand_at(struct world *world, double from, double h, double part)
{
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        if (!agent->meets && part < 1) {
            agent->m = agent->start;
            run_legs(agent, part * h);
            contact_bound(world, world->present[i]);
            continue;
        }
        double left = agent->start.plant.left - part * h;
        struct plant plant = {.to = agent->m.plant.to, .left = real_max(0, left)};
        agent->m = motion_between(&agent->start, &agent->after, h, part);
        agent->m.plant = plant;
    }
    world->t = from + part * h;
}

enum { BALL = BODY_COUNT, SIGHT, ENTRY, WATCHED };

static bool is_due(struct world *world, int who)
{
    return who == BALL    ? ball_due(world)
           : who == SIGHT ? see_due(world)
           : who == ENTRY ? border_due(world)
                          : queue_due(world, (body)who);
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
    world->news = true;
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
    int due[WATCHED], dues = 0;
    for (int i = 0; i < world->bodies; i++) {
        if (is_due(world, world->present[i])) {
            due[dues++] = world->present[i];
        }
    }
    for (int what = BALL; what < WATCHED; what++) {
        if (is_due(world, what)) {
            due[dues++] = what;
        }
    }
    if (!dues) {
        return false;
    }
    double best = 1;
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        agent->after = agent->m;
    }
    for (int i = 0; i < dues; i++) {
        best = first_due(world, due[i], from, h, best);
    }
    world->t = from;
    for (int i = 0; i < world->bodies; i++) {
        struct agent *agent = &world->agent[world->present[i]];
        agent->m = best < 1 ? agent->start : agent->after;
    }
    if (best < 1) {
        move_all(world, best * h, false);
    }
    world->t = from + best * h;
    return best < 1;
}

static void one_tick(struct world *world)
{
    double end = (double)(world->tick + 1) / world->rate;
    bool again = true, beat = world_beat(world, SIM_THOUGHTS);
    bool inside = world->t > (double)world->tick / world->rate; /* it begins inside the tick */
    if (beat && !inside) {
        see_now(world);
    }
    for (int piece = 0; again; piece++) {
        double from = world->t;
        world->fresh = piece == 0;
        if (piece > 0 || beat || world->news) {
            think(world);
        }
        move_all(world, end - from, true);
        world->t = end;
        again = piece < PIECES && take_back(world, from, end - from);
        ball_tick(world);
    }
    world->tick++;
    world->fresh = true;
    world->quiet = attackers_stir(world) ? 0 : world->quiet + world->dt;
    if (is_sample(world)) {
        record_sample(world);
    }
    show(world);
}

void clock_run(struct world *world)
{
    world->fresh = world->news = true;
    world->done = -1;
    if (world->tick == 0) {
        see_fill(world);
    }
    record_ball(world);
    record_sample(world);
    show(world);
    border_watch(world);
    while (!world->failed && !is_over(world)) {
        one_tick(world);
        if (world->quiet > STUCK && !queue_all_done(world) && !clock_will_tell(world)) {
            trouble_stuck(world);
        } else if (world->t - world_zero(world) > LIMIT_STEP_SECONDS) {
            trouble_long(world);
        }
    }
    border_watch(world);
    while (!is_sample(world)) { /* a failed one may stop between two samples */
        one_tick(world);
    }
    record_finish(world);
}
