/* SPDX-License-Identifier: MIT */
/* route_use: the ways off a screen: by the shoulder, faded, behind the defender. Takes where user,
 * screener and defender are now. */
#include "floor/sim/world.h"

#include <math.h>

#include "base/real.h"

#define SHOULDER (2 * MOTION_BODY + MOTION_SHOULDER)
#define BEHIND 1.5 /* m from the screener: two bodies, the air of a shot and a step (ours) */
#define FAKE .45   /* m toward the screen before it is rejected (ours) */
#define ROUND .66
#define IN_LINE .2 /* m: nearer to the line than this nobody can say on which side */
#define STRAIGHT_ON                                                                                \
    .7               /* twice the cosine of half the angle there: it turns by 40 degrees (ours)    \
                      */
#define BETWEEN -.25 /* cosine: the side on which the defender stands */
#define BOW .10      /* of the chord */
#define CLEAR .4     /* m: a way that passes the defender by so much is free */
#define LOOP 1.0     /* m longer than the other way: nobody runs that round a screen */
#define LINE .16     /* m from a line that a body's middle keeps */
#define PASSES .3    /* m of air between screener and defender through which nobody runs */

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

/* The side `out` of the screener, or the other one where there is no room between him and the line
 * to run through. */
static struct vec2 roomy_side(const struct world *world, struct vec2 screener, struct vec2 out,
                              double near)
{
    struct vec2 by = vec2_along(screener, out, near), other = vec2_along(screener, out, -near);
    bool shut = !court_inside(world->court, by, LINE) && court_inside(world->court, other, LINE);
    return shut ? vec2_scale(out, -1) : out;
}

static double plan_fade(struct world *world, const struct task *task, struct vec2 screener,
                        struct vec2 goal, struct route *route)
{
    struct vec2 user = world->agent[task->who].m.at;
    struct tie_side tie = world_tie(world);
    if (is_beyond(user, screener, goal)) {
        double side = -route_side(user, goal, tie.ball, &tie);
        struct vec2 out = vec2_scale(vec2_left(vec2_unit(vec2_sub(goal, user))), side);
        out = roomy_side(world, screener, out, SHOULDER + task->gap);
        route_shoulder(route, screener, out, SHOULDER + task->gap, 2.0, goal);
        return 0;
    }
    route_to(route,
             vec2_along(user, vec2_unit(vec2_sub(screener, user)), draw_step(user, screener)));
    double chord = vec2_distance(goal, route->points.at[route->points.count - 1]);
    route_bow(route, goal, BOW * chord, tie.ball, &tie);
    return 0;
}

static double plan_behind(struct world *world, const struct task *task, struct vec2 screener,
                          struct vec2 goal, struct route *route)
{
    struct vec2 user = world->agent[task->who].m.at, turn = user;
    if (task->shape == SHAPE_BACK) {
        double step = task->verb == VERB_REJECTS ? FAKE : draw_step(user, screener);
        turn = vec2_along(user, vec2_unit(vec2_sub(screener, user)), step);
        route_corner(route, turn);
    }
    body defender = guard_of(world, task->who);
    struct tie_side tie = world_tie(world);
    struct vec2 way = vec2_unit(vec2_sub(goal, turn));
    double side = -route_side(turn, goal, screener, &tie); /* away from the screener */
    if (defender != BODY_NONE && world->agent[defender].here && !world->agent[defender].shadow) {
        struct vec2 d = world->agent[defender].m.at;
        double ahead = vec2_dot(vec2_sub(d, turn), way),
               off = vec2_cross(way, vec2_sub(d, turn)) * side;
        if (ahead > -.2 && ahead < vec2_distance(turn, goal) - .3 && off > -ROUND && off < ROUND) {
            route_to(route, vec2_along(d, vec2_left(way), side * ROUND));
        }
    }
    return plan_end(world, task, goal, route);
}

/* Where he stands; of one who is still on the way, where he is going to. */
static struct vec2 screener_at(const struct world *world, body screener)
{
    const struct screen *screen = &world->screen[screener];
    return screen->live && !screen->set ? screen->spot : world->agent[screener].m.at;
}

/* Nothing to curl round: from there by the screener it goes nearly straight on. */
static bool is_straight_on(struct vec2 from, struct vec2 screener, struct vec2 exit)
{
    struct vec2 turned =
        vec2_add(vec2_unit(vec2_sub(from, screener)), vec2_unit(vec2_sub(exit, screener)));
    return vec2_length(turned) < STRAIGHT_ON;
}

/* On which side of the way past the screener he goes: +1 left. A curl goes round him; any other way
 * has him between user and defender, or, when those are in a line, takes the near side. */
static struct vec2 out_side(struct world *world, const struct task *task, struct vec2 from,
                            struct vec2 screener, struct vec2 exit)
{
    struct tie_side tie = world_tie(world);
    body defender = guard_of(world, task->who);
    bool seen = defender != BODY_NONE && world->agent[defender].here;
    struct vec2 from_him = seen ? vec2_sub(screener, world->agent[defender].m.at) : vec2_of(0, 0);
    if (task->shape == SHAPE_CURL &&
        !is_straight_on(from, screener,
                        exit)) { /* but never through between defender and screener */
        struct vec2 out = route_outward(from, screener, exit, &tie);
        if (vec2_dot(out, vec2_unit(from_him)) > BETWEEN) {
            return out;
        }
    }
    struct vec2 way = vec2_unit(vec2_sub(exit, from)), left = vec2_left(way);
    double off = vec2_cross(way, from_him);
    if (fabs(off) < IN_LINE) {
        off = -vec2_cross(way, vec2_sub(screener, from));
    }
    if (fabs(off) < IN_LINE) {
        off = route_side(from, exit, tie.ball, &tie);
    }
    return vec2_scale(left, off > 0 ? 1 : -1);
}

static double radius_of(const struct world *world, body user)
{
    return ball_is_held(world, user) ? MOTION_CORNER : MOTION_CURL;
}

/* How long the way is that passes the screener on that side. */
static double length_by(const struct world *world, const struct task *task, struct vec2 screener,
                        struct vec2 out, struct vec2 goal)
{
    struct route route;
    route_start(&route, world->arena, world->agent[task->who].m.at);
    route_shoulder(&route, screener, out, SHOULDER + task->gap, radius_of(world, task->who), goal);
    return route_length(&route);
}

/* The same, but for a loop: when the other side of the screener is much shorter, and does not lead
 * between him and the defender, it is the other side. */
static struct vec2 short_side(struct world *world, const struct task *task, struct vec2 screener,
                              struct vec2 goal)
{
    struct vec2 out = out_side(world, task, world->agent[task->who].m.at, screener, goal);
    struct vec2 roomy = roomy_side(world, screener, out, SHOULDER + task->gap);
    struct vec2 other = vec2_scale(out, -1);
    if (vec2_dot(roomy, out) < 0) {
        return roomy;
    }
    if (task->shape == SHAPE_CURL || length_by(world, task, screener, out, goal) <
                                         length_by(world, task, screener, other, goal) + LOOP) {
        return out;
    }
    body defender = guard_of(world, task->who);
    bool seen = defender != BODY_NONE && world->agent[defender].here;
    struct vec2 by = vec2_along(screener, other, SHOULDER + task->gap);
    bool between =
        seen && vec2_distance(by, world->agent[defender].m.at) < 2 * MOTION_BODY + PASSES;
    bool shut = vec2_dot(roomy_side(world, screener, other, SHOULDER + task->gap), other) < 0;
    return between || shut ? out : other;
}

/* The two screeners of a row, and the end. */
struct row {
    struct vec2 first, second, goal;
    double near, radius;
};

/* Past both, the first of them on the side `by`. Returns on which side the second is passed. */
static struct vec2 past_row(struct world *world, const struct task *task, const struct row *row,
                            struct vec2 by, struct route *route)
{
    struct vec2 second = vec2_along(row->second, by, row->near);
    route_shoulder(route, row->first, by, row->near, row->radius, second);
    return task->shape == SHAPE_CURL ? out_side(world, task, row->first, row->second, row->goal)
                                     : by;
}

static double row_length(struct world *world, const struct task *task, const struct row *row,
                         struct vec2 by)
{
    struct route route;
    route_start(&route, world->arena, world->agent[task->who].m.at);
    struct vec2 out = past_row(world, task, row, by, &route);
    route_shoulder(&route, row->second, out, row->near, row->radius, row->goal);
    return route_length(&route);
}

/* As past one, but for a loop. */
static struct vec2 row_side(struct world *world, const struct task *task, const struct row *row)
{
    struct vec2 user = world->agent[task->who].m.at;
    struct vec2 along = vec2_left(vec2_unit(vec2_sub(row->second, user)));
    double side =
        vec2_dot(along, out_side(world, task, user, row->second, row->goal)) >= 0 ? 1 : -1;
    struct vec2 by = vec2_scale(along, side), other = vec2_scale(along, -side);
    bool loops = row_length(world, task, row, by) > row_length(world, task, row, other) + LOOP;
    return loops ? other : by;
}

bool use_doubles_back(const struct world *world, const struct task *task, struct vec2 goal)
{
    if (task->other2 >= BODY_COUNT) {
        return false;
    }
    struct vec2 user = world->agent[task->who].m.at;
    struct vec2 first = screener_at(world, task->other), second = screener_at(world, task->other2);
    return vec2_distance(user, first) + vec2_distance(second, goal) >
           vec2_distance(user, second) + vec2_distance(first, goal) + LOOP;
}

/* Shoulder to shoulder past one screener, or past two in turn on one side: the nearer one first,
 * whatever the order of the words, when the other way he would double back. */
static double plan_off(struct world *world, const struct task *task, struct vec2 goal,
                       struct route *route)
{
    struct vec2 first = screener_at(world, task->other);
    struct shoulder by = {first, {0, 0}, SHOULDER + task->gap, radius_of(world, task->who)};
    if (task->other2 < BODY_COUNT) {
        struct vec2 second = screener_at(world, task->other2);
        bool turned = use_doubles_back(world, task, goal);
        struct row row = {turned ? second : first, turned ? first : second, goal, by.near,
                          by.radius};
        by.out = past_row(world, task, &row, row_side(world, task, &row), route);
        by.at = row.second;
    } else {
        by.out = short_side(world, task, first, goal);
    }
    return plan_by(world, task, &by, goal, route);
}

/* The straight way would lead between the screener and the defender. */
static bool is_between(const struct world *world, const struct task *task, struct vec2 screener,
                       struct vec2 goal)
{
    body defender = guard_of(world, task->who);
    if (defender == BODY_NONE || !world->agent[defender].here) {
        return false;
    }
    struct vec2 user = world->agent[task->who].m.at, d = world->agent[defender].m.at;
    struct vec2 way = vec2_unit(vec2_sub(goal, user));
    double far = vec2_distance(goal, user);
    double ahead =
        real_max(vec2_dot(vec2_sub(d, user), way), vec2_dot(vec2_sub(screener, user), way));
    double one = vec2_cross(way, vec2_sub(d, user)),
           two = vec2_cross(way, vec2_sub(screener, user));
    return one * two < 0 && ahead > 0 && ahead < far && fabs(one - two) < BEHIND;
}

/* The dribbler pulls up behind the screen: to the place, round nothing. */
static bool stops_behind(const struct world *world, const struct task *task, struct vec2 screener,
                         struct vec2 goal)
{
    return ball_is_held(world, task->who) && !move_at_rim(goal) && task->other2 >= BODY_COUNT &&
           vec2_distance(goal, screener) < BEHIND && !is_between(world, task, screener, goal);
}

/* Where he comes off to: the line, if he runs along one from there on. */
static struct vec2 use_toward(const struct world *world, const struct task *task, struct vec2 goal)
{
    return task->path == PATH_ALONG ? goal_point(&task->path_goal, world->court, task->who,
                                                 world->agent[task->other].m.at, NULL)
                                    : goal;
}

/* The place lies on the one side of his defender, the screen on the other, and to go round both
 * would be a loop. */
bool use_goes_away(struct world *world, const struct task *task, struct vec2 end)
{
    struct vec2 goal = use_toward(world, task, end);
    body defender = guard_of(world, task->who);
    const struct screen *screen = &world->screen[task->other];
    bool seen = defender != BODY_NONE && world->agent[defender].here;
    if (task->shape != SHAPE_STRAIGHT || !seen || !screen->live || !screen->set ||
        task->other2 < BODY_COUNT) {
        return false;
    }
    struct vec2 user = world->agent[task->who].m.at, screener = world->agent[task->other].m.at;
    struct vec2 way = vec2_unit(vec2_sub(goal, user));
    double one = vec2_cross(way, vec2_sub(world->agent[defender].m.at, user));
    double two = vec2_cross(way, vec2_sub(screener, user));
    if (one * two <= 0 || fabs(one) < CLEAR || fabs(two) < fabs(one)) {
        return false; /* he is not between the straight way and the screener */
    }
    struct vec2 out = short_side(world, task, screener, goal);
    return length_by(world, task, screener, out, goal) > vec2_distance(user, goal) + LOOP;
}

static double plan_use_to(struct world *world, const struct task *task, struct vec2 goal,
                          struct route *route)
{
    route_start(route, world->arena, world->agent[task->who].m.at);
    struct vec2 screener = screener_at(world, task->other);
    bool slipped = !world->screen[task->other].live && task->screen_task >= 0;
    if (task->shape == SHAPE_BACK || use_goes_away(world, task, goal)) {
        return plan_behind(world, task, screener, goal, route);
    }
    if (slipped) { /* there is nothing to go round */
        return plan_end(world, task, goal, route);
    }
    if (task->shape == SHAPE_FADE) {
        return plan_fade(world, task, screener, goal, route);
    }
    if (stops_behind(world, task, screener, goal)) {
        route_to(route, goal);
        return 0;
    }
    return plan_off(world, task, goal, route);
}

double plan_use(struct world *world, const struct task *task, struct vec2 goal, struct route *route)
{
    double behind = plan_use_to(world, task, use_toward(world, task, goal), route);
    return task->path == PATH_ALONG ? plan_along(world, task, goal, route) : behind;
}
