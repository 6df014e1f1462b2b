/* SPDX-License-Identifier: MIT */
/* steer: bends a wanted velocity round whoever stands in the way, by the tangent; where somebody
 * else stands beside him, by the tangent of the next one, and so on round the group. The side is
 * the nearer one, kept until all are passed: changing one's mind in front of a body is how players
 * dance. */
#include "floor/sim/world.h"

#include "base/real.h"

#define SIGHT 2.0                  /* m ahead in which a body matters (ours) */
#define SCREENER_SIGHT (SIGHT + 1) /* m: who goes to where two or three stand (ours) */
#define AIR .06                    /* m between the two, passing */
#define ROOM (2 * MOTION_BODY + AIR)
#define PLAINLY .02 /* of the cosines of two ways round: then the shorter one is plain (ours) */
#define GRAZE .02   /* m of the room that a tangent may miss: it touches the circle it goes round */
#define COMING .3   /* m/s: two who come the other way faster than that meet, and do not pass */
#define KEEP .4     /* s that a chosen side is kept */
#define STAYS .5    /* s in which it is not changed, though it be shut: he waits for a gap */
#define FORESIGHT .25 /* s that a moving body is thought on */
#define RUNS .6       /* m/s: a defender who moves is run by, it is he who has to get there first */
#define CROSSES 1.0   /* s that somebody who crosses is thought on, at most (ours) */
#define STROLLS 1.5   /* m/s: at least so fast does he think to get there (ours) */
#define WIDEST -.45   /* cosine of the widest way round (117 degrees): further is back (ours) */
#define STRIDE .4     /* m */
#define FEET_MOVE .05 /* m/s: slower than that nobody moves */
#define FEET_UNDER                                                                                 \
    .52 /* s from one turn about to the next, at least (ours; the refractory time of people who    \
         * follow what jumps to and fro is .3 to .5 s): never three in a second */
#define BESIDE 1.2                   /* of what would lead back: aside, and a little on (ours) */
#define EDGE .1                      /* m inside the line */
#define WATCHED_FROM 1.2             /* m before a runner at which he is made way for */
#define HITS (2 * MOTION_BODY - .05) /* m off his way: nearer than that is no graze */
#define STARTS .3 /* m/s: slower than that nobody who stands starts among bodies (ours) */
#define STEPS 8.0 /* 1/s: so fast, by what is missing to let him by (ours) */
#define CREEP .15 /* m/s: what is left of a way between bodies is no way (ours) */
#define CLOSES                                                                                     \
    6.0 /* 1/s: so fast, by the room that is left, does one come up to another (ours)              \
         */
#define SQUEEZE                                                                                    \
    .4 /* of an attacker's speed, where there is no way round: he waits for a gap (ours) */

/* The way somebody wants, and those who may be in it. */
struct view_ahead {
    const struct world *world;
    body who, not_him;
    const struct agent *self;
    struct vec2 way; /* unit */
    double far;      /* m that matter */
};

static bool is_obstacle(const struct view_ahead *view, body other)
{
    const struct agent *a = view->self, *b = &view->world->agent[other];
    if (other == view->who || other == view->not_him || b->outside || a->anchored) {
        return false;
    }
    double t = view->world->t;
    bool his_own = !a->defends || b->defends; /* a defender is let through by defenders */
    if (!b->anchored && his_own && t < a->let_through && t >= b->let_through) {
        return false; /* people step aside for who cannot get on */
    }
    if (a->screening && view->world->guards[other] == view->who &&
        !ball_is_held(view->world, view->world->screen[view->who].user)) {
        return false; /* his own defender goes with him, and out of his way */
    }
    if (!a->defends && b->defends) {
        return !b->shadow && vec2_square(b->m.v) <= RUNS * RUNS;
    }
    return true;
}

/* Is he in the way `way`, and how far on? */
static inline bool in_the_way(const struct view_ahead *view, const struct agent *b, struct vec2 way,
                              double room, double *ahead, double *off)
{
    const struct agent *a = view->self;
    struct vec2 now = vec2_sub(b->m.at, a->m.at), closing = vec2_sub(b->m.v, a->m.v);
    *ahead = vec2_dot(now, way);
    if (*ahead < 0 || *ahead > view->far) {
        return false;
    }
    *off = vec2_cross(way, vec2_along(now, closing, FORESIGHT * .5));
    return fabs(*off) < room && vec2_dot(closing, way) < .2; /* not running away in front */
}

/* The first one in the way, but for those already gone round; BODY_NONE: nobody. */
static body first_ahead(const struct view_ahead *view, struct vec2 way, double room,
                        unsigned long passed, double *off)
{
    const struct world *world = view->world;
    struct vec2 at = view->self->m.at;
    double nearest = SCREENER_SIGHT, ahead, aside;
    body found = BODY_NONE;
    for (int i = 0; i < world->bodies; i++) {
        body b = world->present[i];
        const struct agent *o = &world->agent[b];
        double dx = o->m.at.x - at.x, dy = o->m.at.y - at.y;
        if (dx * way.x + dy * way.y < 0 || dx * dx + dy * dy > SCREENER_SIGHT * SCREENER_SIGHT) {
            continue; /* most of them, at little cost */
        }
        if (!(passed >> b & 1) && is_obstacle(view, b) &&
            in_the_way(view, o, way, room, &ahead, &aside) && ahead < nearest) {
            found = b;
            nearest = ahead;
            *off = aside;
        }
    }
    return found;
}

/* The direction that passes the point `rel` at `room`, with it on the side `side` (+1 left). */
static struct vec2 tangent(struct vec2 rel, double side)
{
    double far = real_max(vec2_length(rel), 1e-9);
    struct vec2 u = vec2_scale(rel, 1 / far);
    double sine = real_min(ROOM / far, .995), cosine = real_sqrt(1 - sine * sine);
    struct vec2 right = vec2_scale(vec2_left(u), -side);
    return vec2_of(u.x * cosine + right.x * sine, u.y * cosine + right.y * sine);
}

/* From him to the other as it will be in the middle of what he is about to run. */
static struct vec2 between(const struct world *world, const struct agent *a, const struct agent *o)
{
    struct vec2 now = vec2_sub(o->m.at, a->m.at), closing = vec2_sub(o->m.v, a->m.v);
    return vec2_along(now, closing, world->lead / 2);
}

static bool head_on(const struct agent *a, const struct agent *o)
{
    double against = -vec2_dot(a->m.v, o->m.v);
    double fast = real_max(vec2_square(a->m.v), vec2_square(o->m.v));
    return against > 0 && against * against > COMING * COMING * fast;
}

/* On which side the other is left: where he is; head on, to the ball's side. Two who run at each
 * other must choose alike, or they dance: the first one's view holds for both. */
static double choose_side(const struct world *world, body who, body other, struct vec2 goal,
                          double off)
{
    const struct agent *a = &world->agent[who], *o = &world->agent[other];
    struct tie_side tie = world_tie(world);
    if (head_on(a, o)) {
        const struct agent *first = who < other ? a : o, *second = who < other ? o : a;
        off = vec2_cross(vec2_unit(first->m.v), vec2_sub(second->m.at, first->m.at));
        goal = vec2_add(first->m.at, first->m.v);
        a = first;
    }
    if (fabs(off) > .02) {
        return off > 0 ? 1 : -1;
    }
    struct vec2 ball = tie.ball;
    tie.ball = vec2_scale(a->m.at, 2); /* it lies ahead: as if it were outside of him */
    return -route_side(a->m.at, goal, ball, &tie);
}

/* Two on errands of their own: on which side the other will be when he gets to him, who crosses his
 * way meanwhile; 0: he does not, or it is not clear. So he is let by in front, and takes nobody
 * along.
 */
static double crosses(const struct agent *a, const struct agent *o, struct vec2 goal)
{
    bool errands = a->defends && o->defends && a->goes != DUTY_SLIDES && o->goes != DUTY_SLIDES;
    struct vec2 way = vec2_unit(vec2_sub(goal, a->m.at)), rel = vec2_sub(o->m.at, a->m.at);
    double speed = real_max(vec2_length(a->m.v), STROLLS), across = vec2_cross(way, o->m.v);
    if (!errands || head_on(a, o) || fabs(across) < RUNS) {
        return 0;
    }
    double soon = real_clamp(vec2_dot(rel, way) / speed, 0, CROSSES);
    double then = vec2_cross(way, rel) + across * soon;
    return then > ROOM / 2 ? 1 : then < -ROOM / 2 ? -1 : 0;
}

/* A stride that way ends on the line. */
static bool leaves_floor(const struct view_ahead *view, struct vec2 way)
{
    return !view->self->outside &&
           !court_inside(view->world->court, vec2_along(view->self->m.at, way, STRIDE), EDGE);
}

/* Round the first and whoever stands beside him, all left on one side. False: no way but back, or
 * off the floor. */
static bool way_round(const struct view_ahead *view, body first, double side, struct vec2 *way)
{
    unsigned long passed = 0;
    double off;
    *way = view->way;
    for (body b = first; b != BODY_NONE; b = first_ahead(view, *way, ROOM - GRAZE, passed, &off)) {
        passed |= 1ul << b;
        *way = tangent(between(view->world, view->self, &view->world->agent[b]), side);
        if (vec2_dot(*way, view->way) < WIDEST) {
            return false;
        }
    }
    return !leaves_floor(view, *way);
}

/* The side on which the whole group is the shorter way round; when that is not plain, `side`, that
 * of the first. */
static double shorter_side(const struct view_ahead *view, body first, double side)
{
    struct vec2 one, other;
    bool one_goes = way_round(view, first, side, &one);
    bool other_goes = way_round(view, first, -side, &other);
    bool plain = vec2_dot(other, view->way) > vec2_dot(one, view->way) + PLAINLY;
    return other_goes && (!one_goes || plain) ? -side : side;
}

/* The side is kept while the same group is in the way, and told to who comes the other way. */
static void take_side(struct world *world, body who, body found, double side)
{
    struct agent *a = &world->agent[who], *o = &world->agent[found];
    bool anew = a->dodged != found || world->t > a->dodge_until;
    if (side != a->dodge_side || world->t > a->dodge_until) {
        a->dodge_since = world->t;
    }
    a->dodge_side = side;
    a->dodged = found;
    a->dodge_until = world->t + KEEP;
    if (anew && head_on(a, o)) {
        o->dodge_side = side;
        o->dodged = who;
        o->dodge_until = world->t + KEEP;
    }
}

/* Which way his feet go, and when they last turned about. */
void steer_watch_feet(const struct world *world, struct agent *agent)
{
    if (vec2_square(agent->m.v) > FEET_MOVE * FEET_MOVE) {
        if (vec2_dot(agent->m.v, agent->way) < 0) {
            agent->turned = world->t;
        }
        agent->way = vec2_unit(agent->m.v);
    }
}

/* Who has just turned about, or been turned by a bump, does not turn about again at once: until his
 * feet are under him he brakes, or goes aside and a little on. */
struct vec2 steer_footed(const struct world *world, const struct agent *agent, struct vec2 command)
{
    double back = vec2_dot(command, agent->way);
    bool may = back >= 0 || world->t > agent->turned + FEET_UNDER;
    return may ? command : vec2_along(command, agent->way, -BESIDE * back);
}

static struct vec2 round_them(struct world *world, body who, struct vec2 command, struct vec2 goal,
                              body not_him)
{
    struct agent *a = &world->agent[who];
    double speed = vec2_length(command), far = vec2_distance(a->m.at, goal), off = 0;
    if (speed < .2 || far < .3) {
        return command;
    }
    struct view_ahead view = {.world = world,
                              .who = who,
                              .not_him = not_him,
                              .self = a,
                              .way = vec2_scale(command, 1 / speed),
                              .far = real_min(a->screening ? SCREENER_SIGHT : SIGHT, far)};
    body found = first_ahead(&view, view.way, ROOM, 0, &off);
    if (found == BODY_NONE) {
        return command;
    }
    bool same = a->dodged == found || (a->dodged != BODY_NONE && !head_on(a, &world->agent[found]));
    bool keeps = same && world->t <= a->dodge_until;
    double then = crosses(a, &world->agent[found], goal);
    double side = then != 0 ? then
                  : keeps   ? a->dodge_side
                            : choose_side(world, who, found, goal, off);
    if (then == 0 && !keeps && a->screening) { /* he goes to where two or three stand */
        side = shorter_side(&view, found, side);
    }
    bool free = !keeps || world->t > a->dodge_since + STAYS;
    struct vec2 way;
    if (way_round(&view, found, side, &way) ||
        (free && way_round(&view, found, side = -side, &way))) {
        take_side(world, who, found, side);
        return vec2_scale(way, speed);
    }
    if (!keeps) {
        take_side(world, who, found, -side);
    }
    struct vec2 along = tangent(between(world, a, &world->agent[found]), a->dodge_side);
    if (leaves_floor(&view, along)) {
        return vec2_of(0, 0);
    }
    return vec2_scale(along, a->defends ? 0 : SQUEEZE * speed);
}

struct vec2 steer_round(struct world *world, body who, struct vec2 command, struct vec2 goal,
                        body not_him)
{
    const struct agent *agent = &world->agent[who];
    struct vec2 way = round_them(world, who, command, goal, not_him);
    bool bends = way.x != command.x || way.y != command.y;
    return bends && !agent->defends ? steer_footed(world, agent, way) : way;
}

/* A runner who is about to run into him: he does not go against him, and steps out of his way, to
 * the side on which he is. */
static struct vec2 let_by(const struct world *world, const struct agent *a, const struct agent *o,
                          struct vec2 command)
{
    double speed = vec2_length(o->m.v);
    struct vec2 way = vec2_scale(o->m.v, 1 / speed), rel = vec2_sub(a->m.at, o->m.at);
    double ahead = vec2_dot(rel, way), off = vec2_cross(way, rel), aside = fabs(off);
    double closing = speed - vec2_dot(a->m.v, way);
    bool still = command.x == 0 && command.y == 0; /* his feet are not moved for a graze */
    if (ahead < 0 || ahead > WATCHED_FROM || aside > (still ? HITS : ROOM) || closing < .3) {
        return command;
    }
    double near = 1 - real_smooth(ahead, .5 * WATCHED_FROM, WATCHED_FROM);
    near *= real_smooth(speed, RUNS, 2 * RUNS);
    double hand = world->play->mirrored ? -1 : 1, side = off > 0 ? 1 : off < 0 ? -1 : hand;
    struct vec2 out = vec2_scale(vec2_left(way), side);
    double against = vec2_dot(command, way), goes = vec2_dot(command, out);
    double needs = real_min(STEPS * (ROOM - aside), a->level->slide);
    command = vec2_along(command, way, near * real_max(0, -against));
    command = vec2_along(command, out, near * real_max(0, needs - goes));
    return still && vec2_square(command) < STARTS * STARTS ? vec2_of(0, 0) : command;
}

struct vec2 steer_off(const struct world *world, body who, struct vec2 command)
{
    const double near = 2 * MOTION_BODY + .5;
    bool pressed = false,
         on_ball = world->guards[who] != BODY_NONE && ball_is_held(world, world->guards[who]);
    const struct agent *a = &world->agent[who];
    for (int i = 0; i < world->bodies; i++) {
        const struct agent *o = &world->agent[world->present[i]];
        if (!o->defends && vec2_square(o->m.v) > RUNS * RUNS && !o->screening && !on_ball &&
            vec2_square(vec2_sub(o->m.at, a->m.at)) < WATCHED_FROM * WATCHED_FROM + ROOM * ROOM &&
            !ball_is_held(world, world->present[i])) {
            command = let_by(world, a, o, command);
            pressed = true;
        }
    }
    if (command.x == 0 && command.y == 0) {
        return command;
    }
    for (int i = 0; i < world->bodies; i++) {
        const struct agent *o = &world->agent[world->present[i]];
        struct vec2 gap = vec2_sub(o->m.at, a->m.at);
        double square = vec2_square(gap);
        bool lets = o->defends && world->t < a->let_through && world->t >= o->let_through;
        if (o == a || lets || square > near * near || square < 1e-12) {
            continue;
        }
        double far = real_sqrt(square);
        struct vec2 way = vec2_scale(gap, 1 / far);
        double room = real_max(0, far - 2 * MOTION_BODY);
        double most = real_max(0, vec2_dot(o->m.v, way)) + CLOSES * room;
        double over = vec2_dot(command, way) - most;
        if (over > 0) {
            command = vec2_along(command, way, -over);
            pressed = true;
        }
    }
    double least = vec2_square(a->m.v) > 0 ? CREEP : STARTS;
    bool stuck = pressed && vec2_square(command) < least * least;
    return stuck ? vec2_of(0, 0) : command;
}
