/* SPDX-License-Identifier: MIT */
/* route_plan: the way of a movement by its shape: a table of shapes, each a few points. Takes where
 * everybody is now; must not know time or verbs. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define AT_RIM .6        /* m: a goal this near the ring is the ring */
#define SHORT_OF_RIM .9  /* m */
#define LAST_STRIDES .75 /* m before the ring */
#define RUN_OUT 1.3      /* m run on behind the ring (ours: further spoils the next diagram) */
#define ROUND .66        /* m from a body gone round: two bodies and some air */
#define ARM .80          /* m: `dribbles at 2` ends an arm's length away */
#define PAST FEET        /* beyond the line through the other player */
#define BACK_STEP .60    /* m: the step that draws the defender out before a back cut */
#define V_DEEP .42       /* of the way from end to end: legs at 100 degrees to each other, */
#define V_MOST 4.0       /* m, and no deeper (all ours) */
#define ON_LINE .5       /* m: nobody goes out of his way to a line as near as this */
#define SLANT .5         /* metres along a line for each that it is off, */
#define SLANT_MOST .4    /* of the line at each end, and no more */
#define WIDE_OF 3.0      /* m off the middle: from there a drive can run along the baseline, */
#define TURN_IN 2.0      /* m off the ring it turns in, clear of the backboard (both ours) */
#define STEEP .25        /* metres along it for each on the way down to it (ours) */
#define SETUP_LEAST 1.2  /* m: shorter in-legs cannot be seen on paper */
#define SETUP_MOST 1.8
#define SETUP_BACK .5 /* m nearer to the screen than where the fake began */

bool move_at_rim(struct vec2 goal)
{
    return vec2_length(goal) < AT_RIM;
}

static body defender_of(const struct world *world, body who)
{
    body defender = guard_of(world, who);
    bool seen =
        defender != BODY_NONE && world->agent[defender].here && !world->agent[defender].shadow;
    return seen ? defender : (body)BODY_NONE;
}

/* On through under the ring to the side it was run at, so that nobody stops there. Returns the
 * metres that lie behind the goal. */
static double run_out(struct world *world, struct route *route, struct vec2 goal)
{
    struct tie_side tie = world_tie(world);
    struct vec2 from = route->points.at[route->points.count - 1];
    struct vec2 way = vec2_unit(vec2_sub(goal, from));
    double side = fabs(way.x) > .15
                      ? (way.x > 0 ? 1 : -1)
                      : -route_side(from, goal, tie.ball, &tie) * (way.y > 0 ? -1 : 1);
    struct vec2 end = vec2_of(goal.x + side * RUN_OUT, real_max(goal.y + way.y * .3, -.4));
    struct vec2 before = vec2_along(goal, way, -real_min(.7, .4 * vec2_distance(goal, from)));
    route_to(route, before);
    for (int i = 1; i <= 8; i++) {
        double t = i / 8.0;
        route_to(route, vec2_mix(vec2_mix(before, goal, t), vec2_mix(goal, end, t), t));
    }
    return vec2_distance(goal, end);
}

/* A drive that ends in a shot goes up at the ring; any other stops in front of it, to see the
 * floor. */
static bool finishes(const struct world *world, body who)
{
    const struct agent *agent = &world->agent[who];
    return ball_is_held(world, who) && agent->head + 1 < agent->queued &&
           world->job[agent->queue[agent->head + 1]].task->kind == TASK_SHOOT;
}

/* Where a run to the ring ends that comes from there: in front of it, nobody stands under it. */
static struct vec2 front_of_ring(const struct world *world, struct vec2 from)
{
    struct goal front = goal_none();
    front.kind = GOAL_FRONT_OF_RIM;
    return goal_point(&front, world->court, BODY_NONE, from, NULL);
}

double plan_end(struct world *world, const struct task *task, struct vec2 goal, struct route *route)
{
    if (!move_at_rim(goal)) {
        route_to(route, goal);
        return 0;
    }
    if (finishes(world, task->who)) {
        return run_out(world, route, goal);
    }
    struct vec2 last = route->points.at[route->points.count - 1];
    bool drives = ball_is_held(world, task->who); /* on his line */
    route_to(route, drives ? vec2_along(goal, vec2_unit(vec2_sub(last, goal)), SHORT_OF_RIM)
                           : front_of_ring(world, last));
    return 0;
}

double plan_by(struct world *world, const struct task *task, const struct shoulder *by,
               struct vec2 goal, struct route *route)
{
    struct vec2 shoulder = vec2_along(by->at, by->out, by->near), to = goal;
    bool rim = move_at_rim(goal), through = rim && finishes(world, task->who);
    if (through) { /* the last strides are the end's */
        to = vec2_along(goal, vec2_unit(vec2_sub(shoulder, goal)), LAST_STRIDES);
    } else if (rim) {
        to = front_of_ring(world, shoulder);
    }
    route_shoulder(route, by->at, by->out, by->near, by->radius, to);
    return through ? plan_end(world, task, goal, route) : 0;
}

double plan_setup_length(const struct task *task, double far)
{
    return task->length > 0 ? task->length : real_clamp(.35 * far, SETUP_LEAST, SETUP_MOST);
}

/* Out toward the place, a corner, and back a little nearer to the screen. */
static void plan_setup(struct world *world, const struct task *task, struct vec2 goal,
                       struct route *route)
{
    struct vec2 from = world->agent[task->who].m.at;
    struct vec2 way = vec2_unit(vec2_sub(goal, from));
    double length = plan_setup_length(task, vec2_distance(goal, from));
    route_corner(route, vec2_along(from, way, length));
    struct vec2 toward = way;
    int screen = screen_task_for(world, task->who);
    if (screen != SIM_NO_TASK) {
        struct vec2 exit = screen_exit(world, world->job[screen].task->who, task->who);
        toward = vec2_unit(vec2_sub(exit, from));
    }
    /* beside the way in, so that the two legs stand apart */
    struct tie_side tie = world_tie(world);
    double side = route_side(from, goal, vec2_along(from, toward, 1), &tie);
    route_to(route, vec2_along(from, vec2_left(way), side * SETUP_BACK));
}

static void plan_v(struct world *world, const struct task *task, struct vec2 goal,
                   struct route *route)
{
    struct vec2 from = world->agent[task->who].m.at, rim = vec2_of(0, 0);
    struct vec2 middle = vec2_mix(from, goal, .5);
    double deep = real_clamp(.35 * vec2_length(middle), 1.5, 2.6);
    if (middle.y > world->court->half_court) { /* no lane to be kept out of, and long ways: there a
                                                * V whose legs lie nearly in a line is none */
        deep = real_clamp(V_DEEP * vec2_distance(from, goal), deep, V_MOST);
    }
    route_corner(route, vec2_along(middle, vec2_unit(vec2_sub(rim, middle)), deep));
    route_to(route, goal);
}

/* In one line, then square out of it. */
static void plan_l(struct world *world, const struct task *task, struct vec2 goal,
                   struct route *route)
{
    struct vec2 from = world->agent[task->who].m.at;
    if (vec2_distance(from, goal) < 1) {
        struct vec2 in =
            vec2_along(from, vec2_unit(from), -real_clamp(.35 * vec2_length(from), 1.5, 2.6));
        struct tie_side tie = world_tie(world);
        double side = route_side(vec2_of(0, 0), from, tie.ball, &tie);
        route_to(route, in);
        route_corner(route, vec2_along(in, vec2_left(vec2_unit(from)), 1.2 * side));
    } else {
        route_corner(route, fabs(goal.x) > fabs(from.x) ? vec2_of(from.x, goal.y)
                                                        : vec2_of(goal.x, from.y));
    }
    route_to(route, goal);
}

/* Past `body` on the side away from `p` when he stands in the way. */
static void round_defender(struct world *world, body defender, struct vec2 away_from,
                           struct vec2 goal, struct route *route)
{
    struct vec2 from = route->points.at[route->points.count - 1];
    if (defender == BODY_NONE) {
        return;
    }
    struct vec2 d = world->agent[defender].m.at, way = vec2_unit(vec2_sub(goal, from));
    double ahead = vec2_dot(vec2_sub(d, from), way), off = vec2_cross(way, vec2_sub(d, from));
    if (ahead < .2 || ahead > vec2_distance(from, goal) - .3 || fabs(off) > ROUND) {
        return;
    }
    struct tie_side tie = world_tie(world);
    double side = route_side(from, goal, away_from, &tie); /* free side: the other one */
    struct vec2 right = vec2_scale(vec2_left(way), -side);
    route_to(route, vec2_along(d, right, ROUND));
}

/* The set-up just done has drawn the defender already. */
static bool after_fake(const struct world *world, body who)
{
    const struct agent *agent = &world->agent[who];
    return agent->head > 0 && world->job[agent->queue[agent->head - 1]].task->shape == SHAPE_SETUP;
}

static double plan_back(struct world *world, const struct task *task, struct vec2 goal,
                        struct route *route)
{
    struct vec2 from = world->agent[task->who].m.at, ball = ball_place(world);
    struct vec2 out =
        vec2_unit(vec2_add(vec2_unit(vec2_sub(ball, from)), vec2_scale(vec2_unit(from), .7)));
    struct vec2 step = vec2_along(from, out, BACK_STEP);
    if (!after_fake(world, task->who) && court_inside(world->court, step, .2)) {
        route_corner(route, step);
    }
    round_defender(world, defender_of(world, task->who), ball, goal, route);
    return plan_end(world, task, goal, route);
}

/* At the gap beside the own defender: as written, else where the other defenders are further off.
 */
static double drive_side(struct world *world, const struct task *task, struct vec2 from,
                         struct vec2 goal, body own)
{
    struct tie_side tie = world_tie(world);
    double middle = route_side(from, goal, vec2_of(0, world->court->free_throw), &tie);
    if (task->drive_middle || task->drive_baseline) {
        return task->drive_middle ? middle : -middle;
    }
    struct vec2 left = vec2_left(vec2_unit(vec2_sub(goal, from)));
    if (task->drive_across != 0 && left.x != 0) {
        return left.x * task->drive_across > 0 ? 1 : -1;
    }
    double room[2] = {9, 9};
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        if (b == own || !world->agent[b].here || world->agent[b].shadow) {
            continue;
        }
        struct vec2 p = vec2_sub(world->agent[b].m.at, vec2_mix(from, goal, .4));
        room[0] = real_min(room[0], vec2_length(vec2_along(p, left, -1)));
        room[1] = real_min(room[1], vec2_length(vec2_along(p, left, 1)));
    }
    if (fabs(room[0] - room[1]) < .15) {
        return middle;
    }
    return room[0] > room[1] ? 1 : -1;
}

/* A bow from where the way is, by a point, toward another. */
static void bow(struct route *route, struct vec2 by, struct vec2 to)
{
    struct vec2 from = route->points.at[route->points.count - 1];
    struct vec2 a = vec2_mix(from, by, .6), b = vec2_mix(by, to, .4);
    for (int i = 0; i <= 8; i++) {
        double t = i / 8.0;
        route_to(route, vec2_mix(vec2_mix(a, by, t), vec2_mix(by, b, t), t));
    }
}

/* Down to the baseline by whoever guards him, along it, and in beside the backboard; to the other
 * side behind it. From the middle there is no such way. */
static bool has_baseline_way(const struct task *task, struct vec2 from, struct vec2 goal)
{
    bool across = goal.x * from.x < 0 && goal.y < TURN_IN;
    return task->drive_baseline && fabs(from.x) > WIDE_OF && (move_at_rim(goal) || across);
}

static double plan_baseline(struct world *world, const struct task *task, struct vec2 goal,
                            struct route *route)
{
    struct vec2 from = world->agent[task->who].m.at;
    struct vec2 on = court_line_point(world->court, SPOT_BASELINE, SIDE_NONE, from);
    struct vec2 off = vec2_of(goal.x, on.y), way = vec2_unit(vec2_sub(off, on));
    double length = vec2_distance(on, off), in = vec2_distance(from, on);
    double out = real_min(SLANT * vec2_distance(off, goal), SLANT_MOST * length);
    struct vec2 down = vec2_along(on, way, real_min(STEEP * in, SLANT_MOST * length));
    body own = defender_of(world, task->who);
    struct vec2 leg = vec2_unit(vec2_sub(down, from));
    struct vec2 at = own != BODY_NONE ? vec2_sub(world->agent[own].m.at, from) : vec2_of(0, 0);
    double ahead = vec2_dot(at, leg), beside = vec2_dot(vec2_left(leg), at);
    if (in > ON_LINE && ahead > .2 && ahead < vec2_distance(from, down) &&
        fabs(beside) < ROUND) { /* outside of him */
        double turn = vec2_dot(vec2_left(leg), way) > 0 ? -1 : 1;
        struct vec2 beaten = vec2_along(from, leg, ahead);
        bow(route, vec2_along(beaten, vec2_left(leg), beside + turn * (ROUND + .15)), down);
    }
    if (in > ON_LINE) {
        route_to(route, down);
    }
    if (move_at_rim(goal)) { /* up beside the backboard */
        bow(route, vec2_along(off, way, -TURN_IN),
            vec2_along(vec2_of(goal.x, SHORT_OF_RIM), way, -SHORT_OF_RIM));
    } else {
        bow(route, vec2_along(off, way, -out), goal);
    }
    return plan_end(world, task, goal, route);
}

static double plan_drive(struct world *world, const struct task *task, struct vec2 goal,
                         struct route *route)
{
    struct vec2 from = world->agent[task->who].m.at;
    if (has_baseline_way(task, from, goal)) {
        return plan_baseline(world, task, goal, route);
    }
    body own = defender_of(world, task->who);
    struct vec2 way = vec2_unit(vec2_sub(goal, from));
    double side = drive_side(world, task, from, goal, own);
    double ahead = own != BODY_NONE ? vec2_dot(vec2_sub(world->agent[own].m.at, from), way) : -1;
    bool blocked = ahead > .2 && ahead < vec2_distance(from, goal) - .6 &&
                   fabs(vec2_cross(way, vec2_sub(world->agent[own].m.at, from))) < ROUND + .2;
    bool written = task->drive_baseline || task->drive_middle || task->drive_across != 0;
    if (blocked || written) {
        struct vec2 at = blocked ? world->agent[own].m.at : vec2_mix(from, goal, .4);
        struct vec2 by = vec2_along(at, vec2_left(way), side * (blocked ? ROUND + .15 : .9));
        bow(route, by, goal);
    }
    return plan_end(world, task, goal, route);
}

/* Onto the line by a slant, along it, and off it by another. */
double plan_along(struct world *world, const struct task *task, struct vec2 goal,
                  struct route *route)
{
    struct vec2 from = route->points.at[route->points.count - 1];
    struct vec2 on = goal_point(&task->path_goal, world->court, task->who, from, NULL);
    struct vec2 off = goal_point(&task->path_goal, world->court, task->who, goal, NULL);
    struct vec2 way = vec2_unit(vec2_sub(off, on));
    double length = vec2_distance(on, off), in = vec2_distance(from, on);
    double out = vec2_distance(off, goal);
    if (in > ON_LINE) {
        route_to(route, vec2_along(on, way, real_min(SLANT * in, SLANT_MOST * length)));
    }
    if (out > ON_LINE) {
        route_to(route, vec2_along(off, way, -real_min(SLANT * out, SLANT_MOST * length)));
    }
    return plan_end(world, task, goal, route);
}

/* Round, over or under somebody: over is half court's side, under the baseline's; round is the
 * outside. */
static double plan_path(struct world *world, const struct task *task, struct vec2 goal,
                        struct route *route)
{
    struct vec2 from = world->agent[task->who].m.at, position[BODY_COUNT], by;
    world_position(world, position);
    by = task->path_who < BODY_COUNT
             ? position[task->path_who]
             : goal_point(&task->path_goal, world->court, task->who, from, position);
    struct tie_side tie = world_tie(world);
    struct vec2 way = vec2_unit(vec2_sub(goal, from)), left = vec2_left(way);
    double side;
    switch (task->path) {
    case PATH_OVER:
        side = left.y >= 0 ? 1 : -1;
        break;
    case PATH_UNDER:
        side = left.y >= 0 ? -1 : 1;
        break;
    case PATH_PAST: /* by the straight way */
        side = -route_side(from, goal, by, &tie);
        break;
    case PATH_AROUND:
    case PATH_ALONG:
    case PATH_NONE:
    default:
        side = route_side(from, goal, by, &tie);
        break;
    }
    double near = ROUND + task->gap;
    if (task->path == PATH_PAST) {
        double off = fabs(vec2_cross(way, vec2_sub(by, from)));
        if (off >= near) {
            return plan_end(world, task, goal, route);
        }
    }
    struct shoulder shoulder = {by, vec2_scale(left, side), near, real_max(near, .9)};
    return plan_by(world, task, &shoulder, goal, route);
}

double plan_move(struct world *world, const struct task *task, struct vec2 goal,
                 struct route *route)
{
    route_start(route, world->arena, world->agent[task->who].m.at);
    if (task->path == PATH_ALONG) {
        return plan_along(world, task, goal, route);
    }
    if (task->path != PATH_NONE) {
        return plan_path(world, task, goal, route);
    }
    switch (task->shape) {
    case SHAPE_SETUP:
        plan_setup(world, task, goal, route);
        return 0;
    case SHAPE_V:
        plan_v(world, task, goal, route);
        return 0;
    case SHAPE_L:
        plan_l(world, task, goal, route);
        return 0;
    case SHAPE_BACK:
        return plan_back(world, task, goal, route);
    case SHAPE_DRIVE:
        return plan_drive(world, task, goal, route);
    case SHAPE_AT:
        if (task->other < BODY_COUNT) {
            struct vec2 from = world->agent[task->who].m.at, at = world->agent[task->other].m.at;
            double far = vec2_distance(from, at);
            route_to(route, vec2_along(at, vec2_unit(vec2_sub(from, at)), real_min(ARM, far)));
            return 0;
        }
        break;
    case SHAPE_SEAL:
        route_to(route, seal_place(world, task->who, goal));
        return 0;
    case SHAPE_STRAIGHT:
    case SHAPE_CURL:
    case SHAPE_FADE:
        break;
    }
    return plan_end(world, task, goal, route);
}
