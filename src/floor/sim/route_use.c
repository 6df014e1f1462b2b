/* SPDX-License-Identifier: MIT */
/* route_use: the ways off a screen: by the shoulder, faded, behind the defender. Takes where user,
 * screener and defender are now. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define SHOULDER (2 * MOTION_BODY + MOTION_SHOULDER)
#define FAKE .45 /* m toward the screen before it is rejected (prototype) */
#define ROUND .66
#define BOW .10 /* of the chord */

static void soft(struct route *route, struct vec2 goal, struct vec2 end)
{
    struct vec2 from = route->points.at[route->points.count - 1];
    struct vec2 before = vec2_along(goal, vec2_unit(vec2_sub(from, goal)),
                                    real_min(.7, .4 * vec2_distance(goal, from)));
    for (int i = 0; i <= 8; i++) {
        double t = i / 8.0;
        route_to(route, vec2_mix(vec2_mix(before, goal, t), vec2_mix(goal, end, t), t));
    }
}

/* To the place; at the ring on through by a stride. */
static void to_goal(struct world *world, const struct task *task, struct vec2 from,
                    struct vec2 goal, struct route *route)
{
    if (!move_at_rim(goal)) {
        route_to(route, goal);
        return;
    }
    struct tie_side tie = world_tie(world);
    struct vec2 way = vec2_unit(vec2_sub(goal, from));
    double side = fabs(way.x) > .15 ? (way.x > 0 ? 1 : -1)
                                    : -route_side(vec2_of(0, 5), vec2_of(0, 0), tie.ball, &tie);
    (void)task;
    soft(route, goal, vec2_of(goal.x + side * 1.3, real_max(goal.y + .3 * way.y, -.4)));
}

/* The step with which the user draws the defender toward the screen before going the other way. */
static double draw_step(struct vec2 user, struct vec2 screener)
{
    return real_clamp(vec2_distance(user, screener) - 1.25, .35, .8);
}

/* The way out of the fade: is the screener between user and place (a flare), or behind the turn? */
static bool is_beyond(struct vec2 user, struct vec2 screener, struct vec2 goal)
{
    struct vec2 way = vec2_unit(vec2_sub(goal, user)), p = vec2_sub(screener, user);
    double ahead = vec2_dot(p, way);
    return ahead > .5 && ahead < vec2_distance(user, goal) - .3 && fabs(vec2_cross(way, p)) < 1.6;
}

static void plan_fade(struct world *world, const struct task *task, struct vec2 screener,
                      struct vec2 goal, struct route *route)
{
    struct vec2 user = world->agent[task->who].m.at;
    struct tie_side tie = world_tie(world);
    if (is_beyond(user, screener, goal)) {
        double side = -route_side(user, goal, tie.ball, &tie);
        struct vec2 out = vec2_scale(vec2_left(vec2_unit(vec2_sub(goal, user))), side);
        route_shoulder(route, screener, out, SHOULDER + task->gap, 2.0, goal);
        return;
    }
    route_to(route,
             vec2_along(user, vec2_unit(vec2_sub(screener, user)), draw_step(user, screener)));
    double chord = vec2_distance(goal, route->points.at[route->points.count - 1]);
    route_bow(route, goal, BOW * chord, tie.ball, &tie);
}

static void plan_behind(struct world *world, const struct task *task, struct vec2 screener,
                        struct vec2 goal, struct route *route)
{
    struct vec2 user = world->agent[task->who].m.at;
    double step = task->verb == VERB_REJECTS ? FAKE : draw_step(user, screener);
    struct vec2 turn = vec2_along(user, vec2_unit(vec2_sub(screener, user)), step);
    route_corner(route, turn);
    body defender = world->guarded[task->who];
    struct tie_side tie = world_tie(world);
    struct vec2 way = vec2_unit(vec2_sub(goal, turn));
    double side = -route_side(turn, goal, screener, &tie); /* away from the screener */
    struct vec2 from = turn;
    if (defender != BODY_NONE && world->agent[defender].here && !world->agent[defender].shadow) {
        struct vec2 d = world->agent[defender].m.at;
        double ahead = vec2_dot(vec2_sub(d, turn), way),
               off = vec2_cross(way, vec2_sub(d, turn)) * side;
        if (ahead > -.2 && ahead < vec2_distance(turn, goal) - .3 && off > -ROUND && off < ROUND) {
            from = vec2_along(d, vec2_left(way), side * ROUND);
            route_to(route, from);
        }
    }
    to_goal(world, task, from, goal, route);
}

static struct vec2 screener_at(const struct world *world, body screener)
{
    return world->agent[screener].m.at;
}

/* Shoulder to shoulder past one screener, or past two in turn. */
static void plan_off(struct world *world, const struct task *task, struct vec2 goal,
                     struct route *route)
{
    struct vec2 user = world->agent[task->who].m.at, first = screener_at(world, task->other);
    struct tie_side tie = world_tie(world);
    double near = SHOULDER + task->gap;
    double radius =
        task->kind == TASK_USE && ball_is_held(world, task->who) ? MOTION_CORNER : MOTION_CURL;
    struct vec2 out = route_outward(user, first, goal, &tie), from = first;
    if (task->other2 < BODY_COUNT) {
        struct vec2 second = screener_at(world, task->other2);
        struct vec2 next = route_outward(first, second, goal, &tie);
        struct vec2 way = vec2_left(vec2_unit(vec2_sub(second, first)));
        double side = vec2_dot(next, way) >= 0 ? 1 : -1;
        out = vec2_scale(way, side); /* both on one side */
        route_shoulder(route, first, out, near, radius, vec2_along(second, out, near));
        out = next;
        from = second;
    }
    struct vec2 to = goal;
    bool rim = move_at_rim(goal);
    if (rim) { /* the last stride is the run-out's */
        to = vec2_along(goal, vec2_unit(vec2_sub(vec2_along(from, out, near), goal)), .75);
    }
    route_shoulder(route, from, out, near, radius, to);
    if (rim) {
        to_goal(world, task, to, goal, route);
    }
}

void plan_use(struct world *world, const struct task *task, struct vec2 goal, struct route *route)
{
    route_start(route, world->arena, world->agent[task->who].m.at);
    struct vec2 screener = screener_at(world, task->other);
    const struct screen *screen = &world->screen[task->other];
    bool slipped = !screen->live && task->screen_task >= 0; /* there is nothing to go round */
    if (slipped && task->shape != SHAPE_BACK) {
        to_goal(world, task, route->points.at[0], goal, route);
    } else if (task->shape == SHAPE_FADE) {
        plan_fade(world, task, screener, goal, route);
    } else if (task->shape == SHAPE_BACK) {
        plan_behind(world, task, screener, goal, route);
    } else {
        plan_off(world, task, goal, route);
    }
}
