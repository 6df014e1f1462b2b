/* SPDX-License-Identifier: MIT */
/* help: a dribbler who is past his own defender and on the way to the rim, or a cutter whom nobody
 * is near, draws a low defender, whose man is then open; the next one sinks to that man. Help ends
 * when the ball goes elsewhere or the guard is back, and then they recover, or close out when their
 * own man has it. Takes what was seen; who helps, and where he meets the drive, is help_pick's. */
#include "floor/sim/help.h"

#include <math.h>

#include "base/real.h"

#define DRIVES 1.5      /* m/s toward the rim */
#define LINE 5.2        /* m from the rim: past it somebody has to come for a cutter, */
#define DRIVE_LINE 5.4  /* and for the ball, which nobody waits for (ours) */
#define BEATEN .55      /* m that the own defender is in front, at least, to be in front */
#define BACK .5         /* m/s: then the drive is over */
#define INSIDE 3.6      /* m from the rim, 12 ft: the low men are all in the lane, */
#define COMES_IN 7.2    /* and from here on they go there (ours) */
#define ON_LINE .8      /* m off his line to the rim, at most, */
#define IN_WAY 1.5      /* m before the driver: now he helps */
#define FREE (4 * FEET) /* from his own defender: open by the published bands, and he is free */
#define AGAIN .9        /* m: and not any more */
#define OUT 6.0         /* m: as good as nobody */
#define MINDS 1.5       /* s that a cutter without the ball is minded for his own defender (ours) */
#define AWAY 1.5        /* m from his own man: then there is something to recover */

static bool is_beaten(const struct world *world, body driver, const struct mover *seen)
{
    body own = world->guarded[driver];
    if (own == BODY_NONE || !world->agent[own].here) {
        return true;
    }
    struct vec2 rim = vec2_unit(vec2_scale(seen->at, -1));
    return vec2_dot(vec2_sub(world->agent[own].m.at, seen->at), rim) < BEATEN;
}

/* Back to the man he left. */
static void send_back(struct world *world, body self)
{
    body man = self < BODY_COUNT ? world->guards[self] : (body)BODY_NONE;
    if (man != BODY_NONE && world->duty[self].strategy == STRATEGY_NONE &&
        vec2_distance(world->agent[self].m.at, world->agent[man].m.at) > AWAY) {
        duty_by_rule(world, self, STRATEGY_RECOVER);
    }
}

static void end_help(struct world *world)
{
    body helper = world->helper, second = world->second;
    world->helper = world->helped = world->second = BODY_NONE;
    send_back(world, helper);
    send_back(world, second);
}

static bool goes_in(const struct mover *seen, double line)
{
    struct vec2 rim = vec2_unit(vec2_scale(seen->at, -1));
    return vec2_length(seen->at) < line && vec2_dot(seen->v, rim) > DRIVES;
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
        if (goes_in(&seen, LINE) && is_beaten(world, (body)b, &seen) && far < least) {
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

/* The ball is being driven at the rim: from when it goes there until it leaves the driver's hands;
 * the nearer, the more. */
static void watch_drive(struct world *world, body holder, bool has, const struct mover *ball)
{
    if (!has || holder != world->driver) {
        world->driver = BODY_NONE;
        world->driven = 0;
    }
    if (has && goes_in(ball, COMES_IN)) {
        world->driver = holder;
    }
    if (has && holder == world->driver) {
        world->driven = 1 - real_smooth(vec2_length(ball->at), INSIDE, COMES_IN);
    }
}

static void begin_help(struct world *world, body danger, bool has_ball)
{
    struct mover at = see_body(world, danger, world->level->reaction);
    world->helper = help_who(world, danger, &at);
    world->helped = danger;
    world->helped_ball = has_ball;
    world->helped_since = world->t;
}

/* And who sinks to the man he has left, once that is to be seen. */
static void watch_second(struct world *world)
{
    bool seen =
        world->helper != BODY_NONE && world->t > world->helped_since + world->level->reaction;
    if (seen && world->second == BODY_NONE) {
        world->second = help_second(world);
    }
}

void help_tick(struct world *world)
{
    struct glimpse seen = see_ago(world, world->level->reaction);
    body holder = seen.holder;
    bool has = holder < BODY_COUNT && ball_is_held(world, holder);
    struct mover ball = has ? see_body(world, holder, world->level->reaction) : (struct mover){0};
    bool drives = has && goes_in(&ball, DRIVE_LINE) && is_beaten(world, holder, &ball);
    watch_drive(world, holder, has, &ball);
    world->helped_ball = world->helped_ball || (has && holder == world->helped);
    if (world->helper != BODY_NONE &&
        (help_is_over(world, holder) || (drives && world->helped != holder))) {
        end_help(world);
    }
    watch_second(world);
    if (world->helper != BODY_NONE || !has) {
        return;
    }
    body danger = drives ? holder : free_cutter(world, holder);
    if (danger != BODY_NONE) {
        begin_help(world, danger, danger == holder);
    }
}

bool help_aim(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body left_man = world->helper != BODY_NONE ? world->guards[world->helper] : (body)BODY_NONE;
    if (world->helper == self) {
        struct mover at = see_body(world, world->helped, world->agent[self].level->reaction);
        *aim = help_meet(world, self, &at);
    } else if (world->second == self && left_man != BODY_NONE &&
               world->guards[self] != BODY_NONE) { /* both may have given their man up since */
        struct mover left = see_body(world, left_man, world->agent[self].level->reaction);
        *aim = help_sink(&left, &view->man, view->ball);
    } else {
        return false;
    }
    world->agent[self].goes = DUTY_RUNS;
    return true;
}

/* What is to be seen of it: he is before the driver, or the cutter, and near him. */
bool help_shows(const struct world *world, body self)
{
    body man = world->helper == self ? world->helped : world->ball.holder;
    bool area = guard_has_area(world, self) && man < BODY_COUNT && world->driver == man;
    bool helps = area || world->helper == self || world->duty[self].strategy == STRATEGY_HELP;
    if (!helps || man >= BODY_COUNT || man == world->guards[self] || !world->agent[man].here) {
        return false;
    }
    struct vec2 at = world->agent[man].m.at, off = vec2_sub(world->agent[self].m.at, at);
    struct vec2 way = vec2_unit(vec2_scale(at, -1));
    double beside = vec2_cross(way, off), before = vec2_dot(way, off);
    return vec2_length(off) < IN_WAY && before > 0 && fabs(beside) < ON_LINE;
}
