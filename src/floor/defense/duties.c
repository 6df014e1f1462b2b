/* SPDX-License-Identifier: MIT */
/* duties: a row for each: its target, in words and numbers, and what kind of duty it is. Distances
 * are between the middles of bodies, metres; those without a source are ours. */
#include "floor/defense/duties.h"

#include <math.h>

#include "base/real.h"

#define TOUCH .52      /* two bodies of .25 and a hand's breadth: contact without a push */
#define FRONTS .60     /* before a post, between him and the ball */
#define TRAPS .70      /* the second man of a double, near enough to touch the ball */
#define FREE 2.5       /* from the rim, toward the ball: who has no man guards the lane */
#define TRAP_NEAR 2.5  /* from the one doubled: here the side is chosen, and kept */
#define TRAP_CLOSE 1.0 /* and here at the latest */
#define BESIDE .5      /* sine: so far off the line of the other it is clear which */
#define NEAR_RIM .45   /* share of the way to the rim that one stands off at most */
#define HELP_LINE 5.2  /* from the rim: past it a drive is met in front, before it in the lane */
#define HELP_SEES 6.7  /* and from here on he begins to come */
#define STOPS 1.3      /* before the driver where the helper stops him */
#define RIM_LEAST .7   /* nobody helps from under the ring */
#define LANE_TAGS .3   /* outside the lane that a tag goes at most */
#define TAGS .60       /* from the roller, on the rim's side */
#define JAB 2          /* steps toward the ball: a stunt */
#define JAB_SHORT 1.1  /* and never nearer to it than that */
#define MEETS .25      /* s of a cutter's run that a bump goes before him */
#define STEPS_OUT .5   /* m in which a cutter counts as running, of his speed in m/s */
#define DROP_SHARE .55 /* of the way from the man to the rim */
#define DROP_LEAST .9  /* and no nearer to it, no farther */
#define DROP_MOST 3.6

typedef struct duty_aim target(const struct seen_duty *seen);

static struct vec2 to_rim(struct vec2 p)
{
    return vec2_unit(vec2_scale(p, -1));
}

/* `metres` from p toward `way`; beside the ring never more than its share of the way. */
static struct vec2 off(struct vec2 p, struct vec2 way, double metres)
{
    return vec2_along(p, vec2_unit(way),
                      real_min(metres, real_max(TOUCH, NEAR_RIM * vec2_length(p))));
}

static struct vec2 lean(struct vec2 a, double x, struct vec2 b, double y)
{
    return vec2_add(vec2_scale(a, x), vec2_scale(b, y));
}

static struct duty_aim at(struct vec2 p, struct vec2 v, enum duty_gait gait)
{
    return (struct duty_aim){{p, v}, gait};
}

struct vec2 defense_free(struct vec2 ball)
{
    return vec2_scale(vec2_unit(ball), real_min(FREE, NEAR_RIM * vec2_length(ball)));
}

/* His own man by the man rules; without one, the lane. */
static struct duty_aim by_rule(const struct seen_duty *seen)
{
    if (!seen->has_man) {
        return at(defense_free(seen->ball), vec2_of(0, 0), DUTY_SLIDES);
    }
    struct vec2 p = defense_man(seen->court, seen->style, seen->man, seen->ball, seen->has_ball);
    return at(p, seen->man_v, DUTY_SLIDES);
}

/* helps: in the lane, or the place named; a drive that comes past the help line is met 1.3 m in
 * front, between ball and rim. */
static struct duty_aim helps(const struct seen_duty *seen)
{
    double far = vec2_length(seen->ball);
    double left = real_max(real_min(RIM_LEAST, far), far - STOPS);
    struct vec2 stop = vec2_scale(vec2_unit(seen->ball), left);
    double comes = seen->has_place ? 1 : real_smooth(far, HELP_LINE, HELP_SEES);
    return at(vec2_mix(stop, seen->place, comes), vec2_of(0, 0), DUTY_RUNS);
}

/* closes out: between the man and the rim, an arm's length away; a sprint, then chopped steps. */
static struct duty_aim closes_out(const struct seen_duty *seen)
{
    return at(off(seen->whom, to_rim(seen->whom), seen->arm), seen->whom_v, DUTY_CLOSES);
}

/* From who is doubled to the other who does it, or to where that one is to stand. */
static struct vec2 to_mate(const struct seen_duty *seen)
{
    return seen->mate_first ? to_rim(seen->whom) : vec2_unit(vec2_sub(seen->mate, seen->whom));
}

double defense_side(const struct seen_duty *seen)
{
    struct vec2 off = vec2_sub(seen->self, seen->whom);
    if (!seen->has_mate || vec2_length(off) > TRAP_NEAR) {
        return 0;
    }
    double side = vec2_dot(vec2_left(to_mate(seen)), off);
    bool behind = fabs(side) < BESIDE * vec2_length(off); /* the other is in between */
    if (behind && vec2_length(off) > TRAP_CLOSE) {
        return 0;
    }
    return side > 1e-6 ? 1 : side < -1e-6 ? -1 : seen->hand;
}

/* doubles, traps: with the defender on the ball at right angles, on the side he comes from; the
 * first of two who trap stays between ball and rim, as near. */
static struct duty_aim doubles(const struct seen_duty *seen)
{
    struct vec2 rim = to_rim(seen->whom);
    if (seen->first || !seen->has_mate) {
        return at(off(seen->whom, rim, TRAPS), seen->whom_v, DUTY_RUNS);
    }
    if (seen->side == 0) { /* straight at him, until he is near enough to choose a side */
        return at(off(seen->whom, vec2_sub(seen->self, seen->whom), TRAPS), seen->whom_v,
                  DUTY_RUNS);
    }
    struct vec2 across = vec2_left(to_mate(seen));
    return at(vec2_along(seen->whom, across, seen->side * TRAPS), seen->whom_v, DUTY_RUNS);
}

/* fronts: on the line from the post to the ball; with the ball in his hands nobody is fronted. */
static struct duty_aim fronts(const struct seen_duty *seen)
{
    if (seen->whom_has_ball) {
        return at(off(seen->whom, to_rim(seen->whom), seen->arm), seen->whom_v, DUTY_SLIDES);
    }
    struct vec2 ball = vec2_unit(vec2_sub(seen->ball, seen->whom));
    return at(vec2_along(seen->whom, ball, FRONTS), seen->whom_v, DUTY_SLIDES);
}

/* bumps: one step on the cutter's way, so that he has to go through or round; met, he is let go. */
static struct duty_aim bumps(const struct seen_duty *seen)
{
    if (seen->over) {
        return by_rule(seen);
    }
    double speed = vec2_length(seen->whom_v);
    struct vec2 rim = to_rim(seen->whom);
    struct vec2 way = lean(vec2_unit(seen->whom_v), real_smooth(speed, 0, STEPS_OUT), rim,
                           1 - real_smooth(speed, 0, STEPS_OUT));
    return at(off(seen->whom, way, TOUCH + MEETS * speed), vec2_of(0, 0), DUTY_RUNS);
}

/* tags: a hand on the roller, on the rim's side of him, and not out of the lane with him. */
static struct duty_aim tags(const struct seen_duty *seen)
{
    struct vec2 ball = vec2_unit(vec2_sub(seen->ball, seen->whom));
    struct vec2 p = off(seen->whom, lean(to_rim(seen->whom), .8, ball, .4), TAGS);
    double side = seen->court->lane_half_width + LANE_TAGS;
    p.x = real_clamp(p.x, -side, side);
    p.y = real_min(p.y, seen->court->free_throw);
    return at(p, seen->whom_v, DUTY_RUNS);
}

/* stunts: two steps toward the ball and back. */
static struct duty_aim stunts(const struct seen_duty *seen)
{
    if (seen->over) {
        struct duty_aim back = by_rule(seen);
        back.gait = DUTY_RUNS;
        return back;
    }
    double far = vec2_distance(seen->from, seen->whom);
    double jab = real_min(JAB * seen->step, real_max(0, far - JAB_SHORT));
    struct vec2 way = vec2_unit(vec2_sub(seen->whom, seen->from));
    return at(vec2_along(seen->from, way, jab), vec2_of(0, 0), DUTY_RUNS);
}

/* recovers: back to his man by the shortest way; one who has the ball by then is closed out on. */
static struct duty_aim recovers(const struct seen_duty *seen)
{
    if (seen->has_ball) {
        return at(off(seen->man, to_rim(seen->man), seen->arm), seen->man_v, DUTY_CLOSES);
    }
    struct duty_aim back = by_rule(seen);
    back.gait = DUTY_RUNS;
    return back;
}

/* boxes out: between man and rim, back against him, once the shot is up. */
static struct duty_aim boxes_out(const struct seen_duty *seen)
{
    if (!seen->over) {
        return by_rule(seen);
    }
    return at(off(seen->whom, to_rim(seen->whom), TOUCH), seen->whom_v, DUTY_RUNS);
}

static struct duty_aim rotates(const struct seen_duty *seen)
{
    return at(seen->place, vec2_of(0, 0), DUTY_RUNS);
}

static struct duty_aim stays(const struct seen_duty *seen)
{
    return at(seen->from, vec2_of(0, 0), DUTY_SLIDES);
}

/* drops, where nobody screens: to the place named, else down the line to the rim. */
static struct duty_aim drops(const struct seen_duty *seen)
{
    if (seen->has_place) {
        return at(seen->place, vec2_of(0, 0), DUTY_RUNS);
    }
    double left = real_clamp((1 - DROP_SHARE) * vec2_length(seen->man), DROP_LEAST, DROP_MOST);
    return at(vec2_scale(vec2_unit(seen->man), left), seen->man_v, DUTY_SLIDES);
}

/* ices: on the ball, on the side of the middle, so that it goes to the sideline. */
static struct duty_aim ices(const struct seen_duty *seen)
{
    struct vec2 middle = vec2_of(real_clamp(-seen->whom.x, -1, 1), 0);
    return at(off(seen->whom, lean(to_rim(seen->whom), .6, middle, .9), seen->arm), seen->whom_v,
              DUTY_SLIDES);
}

enum { GOES = 1, SCREEN = 2, PLAYS = 4, LEAVES = 8, WAITS = 16 };
static const struct {
    target *target;
    int kind;
} rows[STRATEGY_COUNT] = {
    [STRATEGY_TRAIL] = {NULL, SCREEN | PLAYS},
    [STRATEGY_OVER] = {NULL, SCREEN},
    [STRATEGY_UNDER] = {NULL, SCREEN},
    [STRATEGY_OVERPLAY] = {NULL, SCREEN | PLAYS},
    [STRATEGY_SWITCH] = {NULL, SCREEN},
    [STRATEGY_DENY] = {NULL, PLAYS},
    [STRATEGY_SAG] = {NULL, PLAYS},
    [STRATEGY_GUARD] = {by_rule, GOES},
    [STRATEGY_HELP] = {helps, GOES | LEAVES | WAITS},
    [STRATEGY_CLOSE_OUT] = {closes_out, GOES | PLAYS | WAITS},
    [STRATEGY_DOUBLE] = {doubles, GOES | LEAVES | WAITS},
    [STRATEGY_HEDGE] = {NULL, SCREEN},
    [STRATEGY_DROP] = {drops, SCREEN},
    [STRATEGY_ICE] = {ices, SCREEN},
    [STRATEGY_TRAP] = {doubles, SCREEN | LEAVES | WAITS},
    [STRATEGY_FRONT] = {fronts, PLAYS},
    [STRATEGY_BUMP] = {bumps, GOES | WAITS},
    [STRATEGY_TAG] = {tags, GOES | LEAVES | WAITS},
    [STRATEGY_STUNT] = {stunts, GOES | WAITS},
    [STRATEGY_RECOVER] = {recovers, GOES},
    [STRATEGY_BOX_OUT] = {boxes_out, PLAYS},
    [STRATEGY_ROTATE] = {rotates, GOES | LEAVES},
    [STRATEGY_STAY] = {stays, 0},
};

bool defense_duty(enum strategy strategy, const struct seen_duty *seen, struct duty_aim *out)
{
    if (!rows[strategy].target) {
        return false;
    }
    *out = rows[strategy].target(seen);
    return true;
}

bool defense_goes(enum strategy strategy)
{
    return rows[strategy].kind & GOES;
}

bool defense_at_screens(enum strategy strategy)
{
    return rows[strategy].kind & SCREEN;
}

bool defense_plays_him(enum strategy strategy)
{
    return rows[strategy].kind & PLAYS;
}

bool defense_leaves(enum strategy strategy)
{
    return rows[strategy].kind & LEAVES;
}

bool defense_waits(enum strategy strategy)
{
    return rows[strategy].kind & WAITS;
}
