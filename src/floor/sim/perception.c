/* SPDX-License-Identifier: MIT */
/* perception: what can be seen is a reaction time old; the eye goes on along the way it saw. */
#include "floor/sim/world.h"

#include "base/real.h"

static struct stance *at_beat(const struct world *world, long beat)
{
    return (struct stance *)&world->past[(beat + SIM_STANCES) % SIM_STANCES];
}

static long beat_of(const struct world *world, long tick)
{
    return tick * SIM_THOUGHTS / world->rate;
}

void see_now(struct world *world)
{
    struct stance *stance = at_beat(world, beat_of(world, world->tick));
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
    struct stance now = *at_beat(world, beat_of(world, world->tick));
    for (long i = 0; i < SIM_STANCES; i++) {
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

/* Where `who` was, `seconds` before the moment that is thought about: on the curve between two
 * beats.
 */
static struct mover was(const struct world *world, body who, double seconds)
{
    long last = beat_of(world, world->tick);
    double back = (double)last - (world->t + world->lead - seconds) * SIM_THOUGHTS;
    back = real_clamp(back, 0, SIM_STANCES - 2);
    long whole = (long)back;
    const struct stance *after = at_beat(world, last - whole);
    const struct stance *before = at_beat(world, last - whole - 1);
    double t = 1 - (back - (double)whole), part = 1.0 / SIM_THOUGHTS;
    struct mover a = {.at = before->at[who], .v = before->v[who]},
                 b = {.at = after->at[who], .v = after->v[who]};
    return motion_between(&a, &b, part, t);
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

/* Before the clock starts the ball is where it is. */
static struct glimpse see_first(const struct world *world)
{
    bool held = world->ball.state == HELD;
    return (struct glimpse){.ball = ball_place(world),
                            .holder = held ? world->ball.holder : (body)BODY_NONE};
}

struct glimpse see_ago(const struct world *world, double seconds)
{
    if (world->changes == 0) {
        return see_first(world);
    }
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
