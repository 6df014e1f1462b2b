/* SPDX-License-Identifier: MIT */
/* help: a dribbler who is past his own defender and on the way to the rim, or a cutter whom nobody
 * is near, draws the nearest low defender, whose man is then open; help ends when the ball goes
 * elsewhere or the guard is back, and then he recovers, or closes out when his own man has it. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define DRIVES 1.5      /* m/s toward the rim */
#define LINE 5.2        /* m from the rim: past it somebody has to come (ours) */
#define BEATEN .55      /* m that the own defender is in front, at least, to be in front */
#define REACH 4.5       /* m from which one comes to help */
#define LOW 4.0         /* m from the rim: a low man stands no further out (ours) */
#define FRONT 1.3       /* m before the driver where the helper stops him */
#define RIM_LEAST .7    /* m: nobody helps from under the ring */
#define BACK .5         /* m/s: then the drive is over */
#define FREE (4 * FEET) /* from his own defender: open by the published bands, and he is free */
#define AGAIN .9        /* m: and not any more */
#define OUT 6.0         /* m: as good as nobody */
#define MINDS 1.5       /* s that a cutter without the ball is minded for his own defender (ours) */
#define AWAY 1.5        /* m from his own man: then there is something to recover */

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

/* Who has no man is there for it. */
static bool is_busy(const struct world *world, body defender)
{
    body man = world->guards[defender];
    for (int s = 0; s <= BODY_COACH; s++) { /* somebody comes to screen him */
        if (world->screen[s].live && !world->screen[s].cleared &&
            world->screen[s].defender == defender) {
            return true;
        }
    }
    return guard_has_area(world, defender) || world->duty[defender].strategy != STRATEGY_NONE ||
           (man != BODY_NONE && world->screen[man].live);
}

/* The nearest one within reach, of those no further from the rim than `most`. */
static body nearest_within(const struct world *world, body danger, struct vec2 at, double most)
{
    body best = BODY_NONE;
    double least = REACH;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        double far = vec2_distance(world->agent[b].m.at, at);
        bool may = world->agent[b].here && vec2_length(world->agent[b].m.at) < most &&
                   b != world->guarded[danger] && !is_busy(world, (body)b);
        if (may && far < least) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

/* The low man; when there is none, whoever is nearer to the rim than the danger: who is behind it
 * is late. */
static body nearest_helper(const struct world *world, body danger, const struct mover *seen)
{
    double from_rim = vec2_length(seen->at);
    body low = nearest_within(world, danger, stop_at(seen), real_min(LOW, from_rim));
    return low != BODY_NONE ? low : nearest_within(world, danger, stop_at(seen), from_rim);
}

/* The helper goes back to the man he left. */
static void end_help(struct world *world)
{
    body self = world->helper, man = self < BODY_COUNT ? world->guards[self] : (body)BODY_NONE;
    world->helper = BODY_NONE;
    world->helped = BODY_NONE;
    if (man != BODY_NONE && world->duty[self].strategy == STRATEGY_NONE &&
        vec2_distance(world->agent[self].m.at, world->agent[man].m.at) > AWAY) {
        duty_by_rule(world, self, STRATEGY_RECOVER);
    }
}

static bool goes_in(const struct mover *seen)
{
    struct vec2 rim = vec2_unit(vec2_scale(seen->at, -1));
    return vec2_length(seen->at) < LINE && vec2_dot(seen->v, rim) > DRIVES;
}

static double off_guard(const struct world *world, body man)
{
    body own = world->guarded[man];
    bool has = own != BODY_NONE && world->agent[own].here;
    return has ? vec2_distance(world->agent[own].m.at, world->agent[man].m.at) : OUT;
}

/* The roller of a screen on the ball is the business of those who play it. */
static bool is_roller(const struct world *world, body b)
{
    const struct pick *pick = &world->pick;
    return (pick->live || pick->tagger != BODY_NONE) && pick->screener == b;
}

/* A cutter nobody is near, on his way to the rim: the one who is furthest in. */
static body free_cutter(const struct world *world, body holder)
{
    body best = BODY_NONE;
    double least = LINE;
    enum defense_kind kind = world->play->defense;
    if (kind != DEFENSE_MAN && kind != DEFENSE_NONE) { /* those of an area mind their own */
        return best;
    }
    for (int b = 0; b < BODY_COACH; b++) {
        if (!world->agent[b].here || b == holder || is_roller(world, (body)b) ||
            off_guard(world, (body)b) < FREE) {
            continue;
        }
        struct mover seen = see_body(world, (body)b, world->level->reaction);
        double far = vec2_length(seen.at);
        if (goes_in(&seen) && is_beaten(world, (body)b, &seen) && far < least) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

/* The danger he went to is none any more: the ball is elsewhere, or the guard is back. */
static bool help_is_over(const struct world *world, body holder)
{
    body man = world->helped;
    struct mover seen = see_body(world, man, world->level->reaction);
    if (world->ball.state == IN_SHOT || world->ball.state == GONE) {
        return true;
    }
    if (holder == man) {
        return !is_beaten(world, man, &seen) && vec2_length(seen.v) < BACK;
    }
    bool passed_on = world->helped_ball;
    bool late = world->t > world->helped_since + MINDS || world->t < world->helped_since;
    bool leaves = vec2_dot(seen.v, seen.at) > BACK * vec2_length(seen.at);
    return passed_on || late || leaves || off_guard(world, man) < AGAIN;
}

void help_tick(struct world *world)
{
    struct glimpse seen = see_ago(world, world->level->reaction);
    body holder = seen.holder;
    bool has = holder < BODY_COACH && ball_is_held(world, holder);
    struct mover ball = has ? see_body(world, holder, world->level->reaction) : (struct mover){0};
    bool drives = has && goes_in(&ball) && is_beaten(world, holder, &ball);
    world->helped_ball = world->helped_ball || (has && holder == world->helped);
    if (world->helper != BODY_NONE &&
        (help_is_over(world, holder) || (drives && world->helped != holder))) {
        end_help(world);
    }
    if (world->helper != BODY_NONE || !has) {
        return;
    }
    body danger = drives ? holder : free_cutter(world, holder);
    if (danger != BODY_NONE) {
        struct mover at = see_body(world, danger, world->level->reaction);
        world->helper = nearest_helper(world, danger, &at);
        world->helped = danger;
        world->helped_ball = danger == holder;
        world->helped_since = world->t;
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
