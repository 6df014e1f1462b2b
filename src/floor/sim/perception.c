/* SPDX-License-Identifier: MIT */
/* perception: what can be seen is a reaction time old; the eye goes on along the way it saw. */
#include "floor/sim/world.h"

#include "base/real.h"

static struct glimpse *at_tick(const struct world *world, long tick)
{
    return &world->past[(tick + world->past_size) % world->past_size];
}

void see_now(struct world *world)
{
    struct glimpse *glimpse = at_tick(world, world->tick);
    const struct glimpse *before = at_tick(world, world->tick - 1);
    for (int i = 0; i < world->bodies; i++) {
        body b = world->present[i];
        glimpse->at[b] = world->agent[b].m.at;
        glimpse->v[b] = world->agent[b].m.v;
    }
    const struct ball *ball = &world->ball;
    bool flies = ball->state == IN_FLIGHT;
    glimpse->ball = flies || ball->state == IN_SHOT ? ball->end : ball_place(world);
    glimpse->holder = ball->state == HELD ? ball->holder : flies ? ball->target : (body)BODY_NONE;
    bool same = world->tick > 0 && before->holder == glimpse->holder && ball->state == HELD;
    glimpse->ball_v = same ? world->agent[ball->holder].m.v : vec2_of(0, 0);
}

void see_fill(struct world *world)
{
    see_now(world);
    struct glimpse now = *at_tick(world, world->tick);
    for (long i = 0; i < world->past_size; i++) {
        world->past[i] = now;
    }
}

static struct vec2 ahead(struct vec2 a, struct vec2 b, double t, struct vec2 v, double seconds)
{
    return vec2_along(vec2_mix(a, b, t), v, seconds);
}

/* Where `who` is believed to be, from what was seen `seconds` ago. */
struct mover see_body(const struct world *world, body who, double seconds)
{
    double since = world->t * world->rate - (double)world->tick; /* ticks since the last glimpse */
    double back = real_clamp(seconds * world->rate - since, 0, (double)world->past_size - 3);
    long whole = (long)back;
    const struct glimpse *near = at_tick(world, world->tick - whole);
    const struct glimpse *far = at_tick(world, world->tick - whole - 1);
    double t = back - (double)whole;
    struct vec2 v = vec2_mix(near->v[who], far->v[who], t);
    return (struct mover){ahead(near->at[who], far->at[who], t, v, seconds), v};
}

const struct glimpse *see_ago(const struct world *world, double seconds)
{
    double since = world->t * world->rate - (double)world->tick;
    long back =
        (long)real_clamp(seconds * world->rate - since + .5, 0, (double)world->past_size - 2);
    return at_tick(world, world->tick - back);
}
