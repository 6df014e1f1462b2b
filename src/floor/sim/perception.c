/* SPDX-License-Identifier: MIT */
/* perception: what can be seen is a reaction time old; the eye goes on along the way it saw. */
#include "floor/sim/world.h"

#include "base/real.h"

static struct stance *at_tick(const struct world *world, long tick)
{
    return &world->past[(tick + world->past_size) % world->past_size];
}

void see_now(struct world *world)
{
    struct stance *stance = at_tick(world, world->tick);
    for (int b = 0; b < BODY_COUNT; b++) {
        if (world->agent[b].here) {
            stance->at[b] = world->agent[b].m.at;
            stance->v[b] = world->agent[b].m.v;
        }
    }
}

void see_fill(struct world *world)
{
    see_now(world);
    struct stance now = *at_tick(world, world->tick);
    for (long i = 0; i < world->past_size; i++) {
        world->past[i] = now;
    }
}

void see_later(struct world *world, double seconds)
{
    if (world->sights < SIM_SIGHTS) {
        world->sight[world->sights++] = world->t + seconds;
    }
}

bool see_due(const struct world *world)
{
    for (int i = 0; i < world->sights; i++) {
        if (world->sight[i] <= world->t) {
            return true;
        }
    }
    return false;
}

void see_done(struct world *world)
{
    int left = 0;
    for (int i = 0; i < world->sights; i++) {
        if (world->sight[i] > world->t) {
            world->sight[left++] = world->sight[i];
        }
    }
    world->sights = left;
}

/* Where `who` was, `seconds` before the moment that is thought about. */
static struct mover was(const struct world *world, body who, double seconds)
{
    double since = (world->t + world->lead) * world->rate - (double)world->tick;
    double back = real_clamp(seconds * world->rate - since, 0, (double)world->past_size - 3);
    long whole = (long)back;
    const struct stance *near = at_tick(world, world->tick - whole);
    const struct stance *far = at_tick(world, world->tick - whole - 1);
    double t = back - (double)whole;
    return (struct mover){.at = vec2_mix(near->at[who], far->at[who], t),
                          .v = vec2_mix(near->v[who], far->v[who], t)};
}

/* Where `who` is believed to be, from what was seen `seconds` ago. */
struct mover see_body(const struct world *world, body who, double seconds)
{
    struct mover seen = was(world, who, seconds);
    return (struct mover){.at = vec2_along(seen.at, seen.v, seconds), .v = seen.v};
}

void see_ball(struct world *world)
{
    const struct ball *ball = &world->ball;
    bool flies = ball->state == IN_FLIGHT, air = flies || ball->state == IN_SHOT;
    struct change *change = &world->change[world->changes++ % SIM_CHANGES];
    *change = (struct change){.t = world->t,
                              .held = ball->state == HELD,
                              .holder = ball->state == HELD ? ball->holder
                                        : flies             ? ball->target
                                                            : (body)BODY_NONE,
                              .ball = air ? ball->end : ball_place(world)};
    see_later(world, world->level->reaction);
}

struct glimpse see_ago(const struct world *world, double seconds)
{
    int last = world->changes - 1, first = world->changes - SIM_CHANGES;
    while (last > 0 && last > first && world->change[last % SIM_CHANGES].t > world->t - seconds) {
        last--;
    }
    const struct change *change = &world->change[last % SIM_CHANGES];
    struct glimpse seen = {.ball = change->ball, .holder = change->holder};
    if (change->held) {
        struct mover holder = was(world, change->holder, seconds);
        seen.ball = holder.at;
        seen.ball_v = holder.v;
    }
    return seen;
}
