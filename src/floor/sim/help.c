/* SPDX-License-Identifier: MIT */
/* help: a dribbler who is past his own defender and on the way to the rim draws the nearest low
 * defender, whose man is then open; help ends when the ball goes elsewhere or the guard is back. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define DRIVES 1.5   /* m/s toward the rim */
#define LINE 5.2     /* m from the rim: past it somebody has to come (ours) */
#define BEATEN .55   /* m that the own defender is in front, at least, to be in front */
#define REACH 4.5    /* m from which one comes to help */
#define FRONT 1.3    /* m before the driver where the helper stops him */
#define RIM_LEAST .7 /* m: nobody helps from under the ring */
#define BACK .5      /* m/s: then the drive is over */

/* Where the drive is to be stopped: before the driver, on his way to the rim. */
static struct vec2 stop_at(const struct mover *driver)
{
    double far = vec2_length(driver->at);
    double left = real_max(real_min(RIM_LEAST, far), far - FRONT);
    return vec2_scale(vec2_unit(driver->at), left);
}

static bool is_beaten(const struct world *world, body driver, const struct mover *seen)
{
    body own = world->guarded[driver];
    if (own == BODY_NONE || !world->agent[own].here) {
        return true;
    }
    struct vec2 rim = vec2_unit(vec2_scale(seen->at, -1));
    return vec2_dot(vec2_sub(world->agent[own].m.at, seen->at), rim) < BEATEN;
}

static bool is_busy(const struct world *world, body defender)
{
    body man = world->guards[defender];
    return man == BODY_NONE || world->duty[defender].strategy != STRATEGY_NONE ||
           world->screen[man].live;
}

/* The low man: from between driver and rim, or from the side; who is behind the drive is late. */
static body nearest_helper(const struct world *world, body driver, const struct mover *seen)
{
    struct vec2 at = stop_at(seen);
    double from_rim = vec2_length(seen->at);
    body best = BODY_NONE;
    double least = REACH;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        double far = vec2_distance(world->agent[b].m.at, at);
        bool low = vec2_length(world->agent[b].m.at) < from_rim;
        bool may =
            low && world->agent[b].here && b != world->guarded[driver] && !is_busy(world, (body)b);
        if (may && far < least) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

static void end_help(struct world *world)
{
    world->helper = BODY_NONE;
    world->helped = BODY_NONE;
}

void help_tick(struct world *world)
{
    struct glimpse seen = see_ago(world, world->level->reaction);
    body driver = seen.holder;
    bool has = driver != BODY_NONE && ball_is_held(world, driver);
    if (world->helper != BODY_NONE && (!has || driver != world->helped)) {
        end_help(world);
    }
    if (!has || driver == BODY_COACH) {
        return;
    }
    struct mover at = see_body(world, driver, world->level->reaction);
    struct vec2 rim = vec2_unit(vec2_scale(at.at, -1));
    bool beaten = is_beaten(world, driver, &at);
    if (world->helper != BODY_NONE) {
        if (!beaten && vec2_length(at.v) < BACK) {
            end_help(world);
        }
        return;
    }
    if (beaten && vec2_length(at.at) < LINE && vec2_dot(at.v, rim) > DRIVES) {
        world->helper = nearest_helper(world, driver, &at);
        world->helped = driver;
    }
}

bool help_aim(struct world *world, body self, const struct view *view, struct aim *aim)
{
    (void)view;
    if (world->helper != self) {
        return false;
    }
    struct mover at = see_body(world, world->helped, world->level->reaction);
    *aim = (struct aim){stop_at(&at), vec2_scale(at.v, .5)};
    return true;
}
