/* SPDX-License-Identifier: MIT */
/* goal: where a place is, for one mover, with everybody where they are now. Pure; must not know
 * words or time. */
#include "floor/play/play.h"

#include "base/real.h"

#define BESIDE (3 * FEET)  /* language.md: 3 ft, on the mover's side */
#define BEHIND (3 * FEET)  /* a waiting player's distance, common practice */
#define NEAR_MIDDLE (1e-9) /* on the axis neither side is the mover's own */

struct goal goal_none(void)
{
    return (struct goal){.who = BODY_NONE, .spot = SPOT_COUNT};
}

struct goal goal_at(struct vec2 at)
{
    struct goal goal = goal_none();
    goal.kind = GOAL_POINT;
    goal.at = at;
    return goal;
}

/* A point `away` from `who` in the direction of `toward`; straight up the floor when that is the
 * same point. */
static struct vec2 next_to(struct vec2 who, struct vec2 toward, double away)
{
    struct vec2 way = vec2_unit(vec2_sub(toward, who));
    if (way.x == 0 && way.y == 0) {
        way = vec2_of(0, 1);
    }
    return vec2_along(who, way, away);
}

static enum side side_of(struct vec2 from)
{
    if (from.x < -NEAR_MIDDLE) {
        return SIDE_LEFT;
    }
    return from.x > NEAR_MIDDLE ? SIDE_RIGHT : SIDE_NONE;
}

/* Above is toward half court, from either side of it. */
static struct vec2 offset(const struct court *court, struct vec2 from, enum direction direction,
                          double length)
{
    static const struct vec2 fixed[DIRECTION_COUNT] = {
        [ABOVE] = {0, 1}, [BELOW] = {0, -1}, [LEFT_OF] = {-1, 0}, [RIGHT_OF] = {1, 0}};
    struct vec2 out = vec2_unit(from);
    if (direction == OUTSIDE) {
        return vec2_along(from, out, length);
    }
    if (direction == INSIDE) { /* not through the ring to the other side */
        return vec2_along(from, out, -real_min(length, vec2_length(from)));
    }
    struct vec2 way = fixed[direction];
    way.y = from.y > court->half_court ? 0 - way.y : way.y;
    return vec2_along(from, way, length);
}

struct vec2 goal_point(const struct goal *goal, const struct court *court, body mover,
                       struct vec2 from, const struct vec2 position[BODY_COUNT])
{
    struct vec2 who = goal->who < BODY_COUNT ? position[goal->who] : from;
    struct vec2 a = from;
    if (goal->a) {
        a = goal_point(goal->a, court, mover, from, position);
    }
    switch (goal->kind) {
    case GOAL_NONE:
        return from;
    case GOAL_POINT:
        return goal->at;
    case GOAL_BODY:
        return vec2_add(who, goal->at);
    case GOAL_BESIDE:
        return next_to(who, from, BESIDE);
    case GOAL_BEHIND:
        return vec2_along(who, vec2_unit(who), BEHIND);
    case GOAL_LINE:
        return court_line_point(court, goal->spot, goal->side, from);
    case GOAL_MIX:
        return vec2_mix(a, goal_point(goal->b, court, mover, from, position), goal->fraction);
    case GOAL_OFFSET:
        return offset(court, a, goal->direction, goal->length);
    case GOAL_LANE:
        return court_spot(court, SPOT_LANE, goal->side ? goal->side : side_of(from));
    case GOAL_FRONT_OF_RIM:
        return court_spot(court, SPOT_FRONT_OF_RIM, goal->side ? goal->side : side_of(from));
    case GOAL_OUTSIDE:
        return court_outside(court, a);
    }
    return from;
}
