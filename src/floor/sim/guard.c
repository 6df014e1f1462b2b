/* SPDX-License-Identifier: MIT */
/* guard: the defenders: each goes, from what he saw a reaction ago, to where his strategy or the
 * man rules want him. */
#include "floor/sim/guard.h"

#include <math.h>

#include "base/real.h"

#define CLOSE_SEES .45 /* of the reaction, for one's own man within touch */
#define CLOSE_NEAR .8  /* m */
#define CLOSE_FAR 1.3
#define PULL 3.5    /* 1/s: speed by distance to the target (ours) */
#define SOFT 1.6    /* braking, as a share of sqrt(2 b L) squared */
#define TOP .85     /* of the sprint: what a defender's legs tend to */
#define STILL .08   /* m: near enough to stand, */
#define STIRS .25   /* and so far off before he stirs again (ours): feet are not moved by inches */
#define DRIFT .4    /* m/s: a place that moves slower than that is stood on (ours) */
#define SPRINTS .75 /* of the way when closing out (the textbooks' three quarters) */
#define EASES .5    /* share of another's speed that is gone along with, near him */
#define NEAR_IT 1.5 /* m from his place: then it matters who stands on it */
#define SHOULDERS (2 * MOTION_BODY + .02)
#define UNDER .1  /* m nearer to the baseline than is right: somebody keeps him there (ours) */
#define MINDS .08 /* s in which he changes his mind (ours), */
#define TURNS 3.0 /* m/s: and at least so fast */
#define UNDER_RING (4 * FEET) /* nobody stands nearer to the baseline but on the ball or a post */
#define POST_NEAR 4.2         /* m from the ring: a man nearer is a post, */
#define POST_FAR 5.2          /* and further out he is none (man.c) */
#define STROLL .6             /* m/s: a first step slower than that */
#define BEGINS .05            /* s: is wanted for so long before it is taken (both ours) */
#define STEPS .15             /* s that a step which is begun goes on, */
#define STEP_LEAST .35        /* m/s, and as fast at least (both ours) */
#define CREEPS .2             /* m/s: nobody creeps to a place that is as good as reached (ours) */
#define MOVES .05             /* m/s: slower than that nobody moves */
#define SHUT_WANTS .5         /* m/s wanted and nothing had, */
#define SHUT_TIME .4          /* s of it: then his team-mates step aside, */
#define SHUT_LETS .6          /* s long (all ours) */
#define SEES_MAN 2.0          /* m: a man so near may be in his way, */
#define STOPS 1.0             /* m/s: slower than that he does not run into one's way */
#define ROUND .62             /* m: and is gone round with as much between the two, */
#define OPPOSITE .7           /* sine: nearer to straight behind him both ways round are as long */
#define PLAIN .1              /* sine: and nearer than that to nobody's side */
#define BACKS 1.2             /* m before a runner: he backs up, he does not turn yet */

static struct vec2 inside(const struct world *world, struct vec2 p)
{
    double side = world->court->half_width - .3, near = world->court->baseline + .3;
    return vec2_of(real_clamp(p.x, -side, side),
                   real_clamp(p.y, near, 2 * world->court->half_court - near));
}

double guard_reaction(const struct world *world, body self, body who)
{
    double far = vec2_distance(world->agent[self].m.at, world->agent[who].m.at);
    return world->agent[self].level->reaction *
           real_mix(CLOSE_SEES, 1, real_smooth(far, CLOSE_NEAR, CLOSE_FAR));
}

/* `man`: whom he minds; `seen`: the ball and who had it, a reaction ago: the same for all. */
static struct view look(const struct world *world, body self, body man, struct glimpse seen)
{
    double reaction = world->agent[self].level->reaction;
    bool free = man == BODY_NONE; /* he minds nobody: himself, so to say */
    return (struct view){.man = free ? world->agent[self].m
                                     : see_body(world, man, guard_reaction(world, self, man)),
                         .ball = vec2_along(seen.ball, seen.ball_v, reaction),
                         .ball_v = seen.ball_v,
                         .has_ball = !free && seen.holder == man};
}

struct vec2 guard_rule(const struct world *world, struct vec2 man, struct vec2 ball, bool has)
{
    if (world->driven > 0 && !has) {
        return defense_driven(world->court, world->play->man, man, ball, world->driven);
    }
    return world->play->defense == DEFENSE_PRESS
               ? defense_press(world->court, world->play->man, man, ball, has)
               : defense_man(world->court, world->play->man, man, ball, has);
}

/* The man rules, and how fast the place they name is moving. */
static struct aim by_rule(const struct world *world, const struct view *view)
{
    const double soon = .08;
    struct vec2 now = guard_rule(world, view->man.at, view->ball, view->has_ball);
    if (vec2_square(view->man.v) + vec2_square(view->ball_v) == 0) {
        return (struct aim){now, {0, 0}};
    }
    struct vec2 man = vec2_along(view->man.at, view->man.v, soon);
    struct vec2 ball = vec2_along(view->ball, view->ball_v, soon);
    struct vec2 then = guard_rule(world, man, ball, view->has_ball);
    return (struct aim){now, vec2_scale(vec2_sub(then, now), 1 / soon)};
}

/* A strategy of his own, where there is no screen. */
static bool by_strategy(struct world *world, body self, const struct view *view, struct aim *aim)
{
    enum strategy strategy = world->duty[self].strategy;
    if (!defense_plays_him(strategy)) {
        return false;
    }
    struct seen_screen seen = guard_seen(world, self, view, BODY_NONE);
    *aim = defense_unscreened(strategy, world->court, world->play->man, &seen);
    return true;
}

/* Whose business it is, first to last; when it is nobody's the man rules hold. */
static guard_decider *const deciders[] = {
    guard_zone,      guard_at_pick,     duty_aim,        seal_aim,
    help_aim,        guard_tags_roller, guard_at_screen, guard_at_own_screener,
    guard_at_roller, by_strategy};

static struct aim wanted(struct world *world, body self, const struct view *view)
{
    struct aim aim;
    world->agent[self].goes = DUTY_SLIDES;
    for (size_t i = 0; i < sizeof deciders / sizeof *deciders; i++) {
        if (deciders[i](world, self, view, &aim)) {
            return aim;
        }
    }
    return by_rule(world, view);
}

struct vec2 guard_expected(struct world *world, body self, body screener, struct vec2 man,
                           struct vec2 exit)
{
    struct seen_screen seen = {.man = man,
                               .ball = ball_place(world),
                               .exit = exit,
                               .screener = world->agent[screener].m.at,
                               .from = man,
                               .self = world->agent[self].m.at,
                               .has_ball = ball_is_held(world, world->guards[self])};
    if (!seen.has_ball && world->duty[self].strategy != STRATEGY_UNDER) {
        seen.exit = guard_exit(world, screener, world->screen[screener].user);
    }
    struct aim aim =
        seen.has_ball
            ? defense_on_handler(guard_coverage(world, world->guards[self], screener), &seen)
            : guard_screened(world, world->duty[self].strategy, screener, &seen);
    return inside(world, aim.at);
}

/* How fast he may go: slides near the target, runs far from it or beside a running man. */
static double speed_cap(const struct level *level, double far, double along)
{
    double slide = level->slide, sprint = level->sprint;
    double near = real_mix(slide, .7 * sprint, real_clamp(far - 1, 0, 1));
    double runs = real_max(real_smooth(far, 1.8, 2.2), real_smooth(along, .7 * slide, .9 * slide));
    return real_mix(near, .95 * sprint, runs);
}

/* How far off his place he is: what he is too near to the baseline counts twice, so that nobody
 * stands under the ring for being almost where he ought to. */
static double off_place(const struct agent *agent, struct vec2 way)
{
    double low = real_min(UNDER_RING, agent->m.at.y + way.y) - agent->m.at.y;
    return vec2_length(way) + real_max(0, low);
}

/* Near his place and that is not moving he stands, until it has moved a foot away: a place that is
 * reckoned anew every tick is never quite still. */
static bool stands(struct agent *agent, struct vec2 way, struct vec2 drift)
{
    double far = off_place(agent, way);
    agent->stands = vec2_length(drift) < DRIFT && far < (agent->stands ? STIRS : STILL);
    return agent->stands;
}

/* On an errand of his own: a sprint; to close out three quarters of the way, then chopped steps. */
static double errand_cap(const struct world *world, body self, struct vec2 aim)
{
    const struct agent *agent = &world->agent[self];
    double whole = vec2_distance(world->duty[self].from, aim);
    bool chops =
        agent->goes == DUTY_CLOSES && vec2_distance(agent->m.at, aim) < (1 - SPRINTS) * whole;
    return chops ? world->agent[self].level->slide : world->agent[self].level->sprint;
}

/* Shut in among his own: after a while they step aside for him. */
static void watch_shut(const struct world *world, struct agent *agent, struct vec2 wants)
{
    bool shut = vec2_length(wants) > SHUT_WANTS && vec2_square(agent->m.v) < MOVES * MOVES;
    agent->stall = shut ? agent->stall + world->since : 0;
    if (agent->stall > SHUT_TIME) {
        agent->let_through = world->t + SHUT_LETS;
    }
}

/* `past`: his own man, whom he is going round. */
static void run_errand(struct world *world, body self, struct aim aim, body past)
{
    struct agent *agent = &world->agent[self];
    struct vec2 way = vec2_sub(aim.at, world_soon(world, agent).at);
    double far = vec2_length(way), cap = errand_cap(world, self, aim.at);
    double go = real_min(PULL * far, real_sqrt(SOFT * agent->level->brake * far));
    double share = real_mix(EASES, 1, real_smooth(far, .3, 1.5)); /* he may stop short */
    struct vec2 command = stands(agent, way, aim.v)
                              ? vec2_of(0, 0)
                              : vec2_along(vec2_scale(vec2_unit(way), go), aim.v, share);
    double fast = vec2_length(command);
    if (fast > cap) {
        command = vec2_scale(command, cap / fast);
    }
    agent->gait = motion_gait(agent->level, EFFORT_SPRINT, false);
    agent->gait.clip = cap;
    watch_shut(world, agent, command);
    command = steer_round(world, self, command, vec2_along(aim.at, aim.v, .3), past);
    agent->command = steer_off(world, self, command);
}

static void control(struct world *world, body self, const struct view *view, struct aim aim,
                    body past)
{
    struct agent *agent = &world->agent[self];
    struct vec2 at = world_soon(world, agent).at;
    struct vec2 way = vec2_sub(aim.at, at), off = vec2_sub(at, view->man.at);
    double far = vec2_length(way), speed = vec2_length(view->man.v), slide = agent->level->slide;
    struct vec2 rim = vec2_unit(vec2_scale(view->man.at, -1));
    double cap = speed_cap(agent->level, far, vec2_length(aim.v)), share = 1;
    double ahead = speed > .3 ? vec2_dot(off, view->man.v) / speed : 0;
    if (ahead > .6) { /* too far in front of a runner: he is waited for */
        share = real_clamp(1 - (ahead - .6) / .6, .25, 1);
    }
    /* in front of him: slides; before a runner he backs up, and nobody runs backwards as fast as
     * forwards; all of it by degrees, so that no moment is the first */
    double gap = vec2_length(off);
    double slow = 1 - real_smooth(vec2_dot(view->man.v, rim), 1.2 * slide, 1.4 * slide);
    double front = real_smooth(vec2_dot(vec2_unit(off), rim), .30, .40);
    double slides = front * slow * (1 - real_smooth(gap, 1.4, 1.6));
    double backs = front * (1 - slow) * (1 - real_smooth(gap, BACKS - .1, BACKS + .1));
    cap = real_mix(cap, real_min(cap, agent->level->backpedal), backs);
    cap = real_mix(cap, real_min(cap, 1.15 * slide), slides);
    share *= real_mix(1, .75, slides);
    double go = real_min(PULL * far, real_sqrt(SOFT * agent->level->brake * far));
    struct vec2 command = vec2_scale(vec2_unit(way), go);
    command = stands(agent, way, aim.v) ? vec2_of(0, 0) : vec2_along(command, aim.v, share);
    if (vec2_square(command) < CREEPS * CREEPS && off_place(agent, way) < STIRS) {
        command = vec2_of(0, 0);
    }
    double fast = vec2_length(command);
    if (fast > cap) {
        command = vec2_scale(command, cap / fast);
    }
    agent->gait = motion_gait(agent->level, EFFORT_SPRINT, false);
    agent->gait.top = TOP * agent->level->sprint;
    agent->gait.clip = cap;
    watch_shut(world, agent, command);
    command = steer_round(world, self, command, vec2_along(aim.at, aim.v, .3), past);
    agent->command = steer_off(world, self, command);
}

struct vec2 guard_start(struct world *world, body defender)
{
    body man = world->guards[defender];
    if (guard_has_area(world, defender)) {
        return inside(world, zone_first(world, defender));
    }
    struct vec2 at = world->agent[man].m.at;
    return inside(world, guard_rule(world, at, ball_place(world), ball_is_held(world, man)));
}

/* A mind is not changed in a tick: where a rule gives way to another, the place he goes for moves
 * there within a tenth of a second, so that a rule that comes and goes does not set him dancing. */
static struct aim eased(const struct world *world, const struct agent *agent, struct aim to)
{
    if (world->tick == 0) {
        return to;
    }
    struct vec2 from = vec2_along(agent->aim.at, agent->aim.v, world->since);
    double far = vec2_distance(from, to.at), step = world->since * TURNS;
    if (far > step) {
        step = real_max(step, far * motion_fades(world->since / MINDS));
        to.at = vec2_along(from, vec2_sub(to.at, from), step / far);
    }
    return to;
}

/* Shoulder to shoulder with somebody who stands at `o`, on the side of `at`; no nearer to the
 * baseline than `low`: there he slides along the line to it. */
static struct vec2 shoulder(const struct world *world, struct vec2 o, struct vec2 at, double low)
{
    struct vec2 p = vec2_along(o, vec2_unit(vec2_sub(at, o)), SHOULDERS);
    double up = low - o.y;
    if (p.y < low && up < SHOULDERS) {
        double hand = world->play->mirrored ? -1 : 1;
        double side = at.x > o.x ? 1 : at.x < o.x ? -1 : hand;
        p = vec2_of(o.x + side * real_sqrt(SHOULDERS * SHOULDERS - up * up), low);
    }
    return p;
}

/* A team-mate stands where he wants to: then shoulder to shoulder with him, on his own side. Two
 * whose places are nearer than two bodies would push each other for good. So he does with an
 * attacker whose body keeps him under the ring. */
static struct vec2 beside(const struct world *world, body self, struct vec2 aim)
{
    struct vec2 at = world->agent[self].m.at;
    double low = real_min(UNDER_RING, aim.y);
    if (vec2_square(vec2_sub(aim, at)) > NEAR_IT * NEAR_IT) {
        return aim;
    }
    for (int i = 0; i < world->bodies; i++) {
        const struct agent *o = &world->agent[world->present[i]];
        bool on_it = vec2_square(vec2_sub(aim, o->m.at)) < SHOULDERS * SHOULDERS;
        bool under = !o->defends && at.y < low - UNDER && !ball_is_held(world, world->present[i]) &&
                     world->guards[self] != world->present[i];
        if (on_it && (o->defends || under) && o != &world->agent[self] &&
            vec2_square(o->m.v) < DRIFT * DRIFT) {
            aim = shoulder(world, o->m.at, at, low);
        }
    }
    return aim;
}

/* On which side of the way to him his man is gone round: the short one; when both are about as
 * long, the rim's, and not behind his back; 0: neither. +1: he is left on the right. */
static double round_side(struct vec2 to_man, struct vec2 man, struct vec2 aim)
{
    struct vec2 self = vec2_unit(vec2_scale(to_man, -1)), rim = vec2_unit(vec2_scale(man, -1));
    struct vec2 there = vec2_unit(vec2_sub(aim, man));
    double turn = vec2_cross(self, there), inside = vec2_cross(self, rim);
    bool opposite = fabs(turn) < OPPOSITE && vec2_dot(self, there) < 0;
    turn = opposite && fabs(inside) > PLAIN ? inside : turn;
    return fabs(turn) < PLAIN ? 0 : turn > 0 ? -1 : 1;
}

/* His own man has the ball and is in his way: he goes round him. Whom he goes round, or BODY_NONE.
 */
static body round_man(const struct world *world, body self, const struct view *view,
                      struct vec2 *aim)
{
    const struct agent *agent = &world->agent[self];
    body man = guard_minds(world, self);
    struct vec2 off = vec2_sub(*aim, agent->m.at), way = vec2_unit(off);
    struct vec2 to_man = vec2_sub(view->man.at, agent->m.at);
    double ahead = vec2_dot(to_man, way), far = vec2_length(to_man);
    bool leaves = vec2_dot(view->man.v, vec2_sub(*aim, view->man.at)) < 0; /* he chases him */
    if (!view->has_ball || (leaves && vec2_square(view->man.v) > DRIFT * DRIFT) || far > SEES_MAN) {
        return BODY_NONE;
    }
    if (ahead <= 0 || ahead > vec2_length(off) || fabs(vec2_cross(way, to_man)) > ROUND) {
        bool slow = vec2_square(view->man.v) < STOPS * STOPS;
        return slow ? man : (body)BODY_NONE; /* he gets by: no way round him is needed */
    }
    double side = round_side(to_man, view->man.at, *aim), sine = real_min(ROUND / far, 1);
    if (side == 0) {
        return BODY_NONE;
    }
    struct vec2 u = vec2_scale(to_man, 1 / far), by = vec2_scale(vec2_left(u), side * sine);
    struct vec2 tangent = vec2_along(by, u, real_sqrt(1 - sine * sine));
    *aim = vec2_along(agent->m.at, tangent, vec2_length(off));
    return man;
}

/* Whoever is not on the ball, not helping and not on a post does not stand under the ring, whatever
 * the rule that places him; by degrees, in the man's distance and toward the lane's edge. */
static struct vec2 off_baseline(const struct world *world, body self, const struct view *view,
                                struct vec2 p)
{
    double edge = world->court->lane_half_width;
    bool ruled = world->duty[self].strategy == STRATEGY_NONE && world->helper != self;
    if (p.y >= UNDER_RING || !ruled || view->has_ball || world->guards[self] == BODY_NONE) {
        return p;
    }
    double open = real_smooth(vec2_length(view->man.at), POST_NEAR, POST_FAR);
    double lane = 1 - real_smooth(fabs(p.x), edge, edge + 2 * MOTION_BODY);
    return vec2_of(p.x, real_mix(p.y, UNDER_RING, open * lane));
}

/* Who stands where he wants to be takes a first slow step when he has wanted to for a while: what
 * he wants for one beat and not in the next moves nobody's feet. */
static struct vec2 begun(const struct world *world, struct agent *agent, struct vec2 command)
{
    bool wants = command.x != 0 || command.y != 0;
    bool rests = agent->m.v.x == 0 && agent->m.v.y == 0;
    if (!wants || !rests) {
        agent->content_at = wants ? -1 : world->t;
        return command;
    }
    bool strolls = vec2_square(command) < STROLL * STROLL;
    bool doubts = strolls && vec2_near(agent->aim.at, agent->m.at, STIRS) &&
                  world->t - agent->content_at < BEGINS - 1e-9;
    if (!doubts) {
        agent->step = command;
        agent->step_until = world->t + STEPS;
    }
    return doubts ? vec2_of(0, 0) : command;
}

/* A step that is begun is finished: nobody lifts a foot and puts it down again. */
static struct vec2 finished(const struct world *world, struct agent *agent, struct vec2 command)
{
    bool slow = vec2_square(command) < STEP_LEAST * STEP_LEAST;
    if (world->t >= agent->step_until || (agent->m.v.x == 0 && agent->m.v.y == 0)) {
        return command;
    }
    if (!slow && vec2_dot(command, agent->step) < 0) {
        agent->step_until = world->t; /* he goes another way, in earnest */
    }
    return slow ? vec2_scale(vec2_unit(agent->step), STEP_LEAST) : command;
}

void guard_tick(struct world *world)
{
    guard_watch_switches(world);
    guard_watch_picks(world);
    guard_watch_roller(world);
    help_tick(world);
    zone_tick(world);
    duty_tick(world);
    struct glimpse seen = {0};
    double ago = -1; /* s: what he saw who was asked last */
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        struct agent *agent = &world->agent[b];
        body man = guard_minds(world, (body)b);
        if (!agent->here) {
            continue;
        }
        agent->command = vec2_of(0, 0);
        if (man != BODY_NONE && !world->agent[man].here) {
            continue;
        }
        if (agent->level->reaction != ago) {
            ago = agent->level->reaction;
            seen = see_ago(world, ago);
        }
        struct view view = look(world, (body)b, man, seen);
        struct aim aim = wanted(world, (body)b, &view);
        aim.at = off_baseline(world, (body)b, &view, aim.at);
        aim = agent->aim = eased(world, agent, aim);
        aim.at = beside(world, (body)b, inside(world, aim.at));
        body past = round_man(world, (body)b, &view, &aim.at);
        if (agent->goes == DUTY_SLIDES || world->duty[b].there) {
            control(world, (body)b, &view, aim, past);
        } else {
            run_errand(world, (body)b, aim, past);
        }
        steer_watch_feet(world, agent);
        agent->command = begun(world, agent, steer_footed(world, agent, agent->command));
        agent->command = finished(world, agent, agent->command);
    }
}
