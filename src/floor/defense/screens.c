/* SPDX-License-Identifier: MIT */
/* screens: what the defenders of a screen's two men aim for, before the user leaves and after.
 * Directions: R to the rim, B to the ball, E to the place where the user is to go. */
#include "floor/defense/ways.h"

#include "base/real.h"

#define GUARD .80                   /* m: close to a man without the ball */
#define UNDER_NEAR 1.15             /* m from user to screener at which the way through is taken */
#define UNDER_BY .80                /* m from the screener: two bodies and .30 */
#define UNDER_LEVEL (.5 * UNDER_BY) /* m on the rim's side of the screener: he is below him, */
#define UNDER_SHORT .3 /* m short of him on the user's way: and by him as good as (ours) */
#define OPEN .52       /* m off the straight way to the user: by that one gets past the screener */
#define OFF_HIM .90    /* m from the screener: he does not go round him */
#define UNDER_RING 1.1 /* m from the ring: there is no room below a screener as near as that */
#define BALL_SIDE .95  /* m from him toward the ball, then */
#define STOPS .3       /* m from where he is to go: there he stops, */
#define BRAKES 2.0     /* and from here on he brakes (ours) */
#define STIRS .4       /* m/s: a man who stands is met from the rim's side, */
#define SLOW .6        /* and one who runs is trailed; */
#define FAST 2.6       /* past the screen he has to run as fast for that (ours) */
#define RIMWARD .4     /* cosine: he is going to the rim */

static const enum verb strategy_verbs[STRATEGY_COUNT] = {
#define VERB_NONE VERB_COUNT
#define STRATEGY(symbol, verb) [STRATEGY_##symbol] = VERB_##verb,
#include "floor/defense/strategies.def"
#undef STRATEGY
#undef VERB_NONE
};

enum strategy defense_strategy_of(enum verb verb)
{
    for (int i = 1; i < STRATEGY_COUNT; i++) {
        if (strategy_verbs[i] == verb) {
            return (enum strategy)i;
        }
    }
    return STRATEGY_NONE;
}

bool defense_strategy(const struct condition *condition, enum strategy *strategy)
{
    *strategy = STRATEGY_NONE;
    switch (condition->kind) {
    case COND_OTHERWISE:
        return true;
    case COND_OPEN:
        *strategy = STRATEGY_SAG;
        return true;
    case COND_COVERED:
    case COND_DENIED:
        *strategy = STRATEGY_DENY;
        return true;
    case COND_VERB:
    case COND_BOTH:
        break;
    }
    *strategy = defense_strategy_of(condition->verb);
    return *strategy != STRATEGY_NONE;
}

struct ways ways_of(const struct seen_screen *seen, struct vec2 from)
{
    return (struct ways){vec2_unit(vec2_scale(from, -1)), vec2_unit(vec2_sub(seen->ball, from)),
                         vec2_unit(vec2_sub(seen->exit, from))};
}

struct vec2 ways_beside(struct vec2 p, struct vec2 a, double x, struct vec2 b, double y,
                        double metres)
{
    struct vec2 way = vec2_unit(vec2_add(vec2_scale(a, x), vec2_scale(b, y)));
    return vec2_along(p, way, real_min(metres, real_max(.55, .45 * vec2_length(p))));
}

bool ways_rimward(const struct seen_screen *seen, double cosine)
{
    struct vec2 rim = vec2_unit(vec2_scale(seen->man, -1));
    double speed = vec2_length(seen->man_v);
    return speed > .5 && vec2_dot(seen->man_v, rim) > cosine * speed;
}

static bool leaves_screen(const struct seen_screen *seen)
{
    return vec2_dot(seen->man_v, vec2_sub(seen->screener, seen->man)) < 0;
}

/* Along with him; where he is about to stop one stops too. */
static struct aim with_him(const struct seen_screen *seen, struct vec2 at)
{
    double left = vec2_distance(seen->man, seen->exit);
    double share = seen->left && seen->passed ? real_smooth(left, STOPS, BRAKES) : 1;
    return (struct aim){at, vec2_scale(seen->man_v, share)};
}

/* ---- before the user leaves ---- */

static struct aim trail_waits(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    return with_him(seen, ways_beside(seen->man, w.ball, .4, w.rim, 1, 1.1));
}

static struct aim over_waits(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    return with_him(seen, ways_beside(seen->man, w.exit, .7, w.rim, 1, .8));
}

static struct aim under_waits(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    struct vec2 way = vec2_unit(vec2_add(vec2_scale(w.ball, .35), w.rim));
    return with_him(seen, vec2_along(seen->man, way, real_min(2, .45 * vec2_length(seen->man))));
}

static struct aim overplay_waits(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    return with_him(seen, ways_beside(seen->man, w.exit, 1, w.rim, -.5, .85));
}

static struct aim switch_waits(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    return with_him(seen, ways_beside(seen->man, w.ball, 1, w.rim, 1, 1.3));
}

static struct aim deny_waits(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    return with_him(seen, ways_beside(seen->man, w.ball, 1, w.rim, .35, .9));
}

/* ---- once he has left ---- */

static struct aim guards(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    return with_him(seen, ways_beside(seen->man, w.ball, .3, w.rim, 1, GUARD));
}

/* How much he runs, 0 to 1; once he is past the screen he has to run faster for that. */
static double runs(const struct seen_screen *seen)
{
    return real_smooth(vec2_length(seen->man_v), STIRS, seen->passed ? FAST : SLOW);
}

/* At the back of a man who runs; the slower he runs the more between him and the rim. */
static struct aim behind(const struct seen_screen *seen)
{
    struct vec2 back = vec2_along(seen->man, vec2_unit(seen->man_v), -.55);
    return with_him(seen, vec2_mix(guards(seen).at, back, runs(seen)));
}

static struct aim trail_follows(const struct seen_screen *seen)
{
    bool back = seen->refused && ways_rimward(seen, RIMWARD);
    if (back || (!seen->passed && leaves_screen(seen))) {
        return guards(seen); /* behind his back, not round the screen */
    }
    return behind(seen);
}

static struct aim over_follows(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    struct vec2 by = ways_beside(seen->man, w.ball, 1, w.rim, 1, .6);
    return with_him(seen, seen->passed ? vec2_mix(guards(seen).at, by, runs(seen)) : by);
}

/* The screener is not between him and the user. */
static bool is_open(const struct seen_screen *seen)
{
    struct vec2 way = vec2_unit(vec2_sub(seen->man, seen->self));
    struct vec2 off = vec2_sub(seen->screener, seen->self);
    double along = vec2_dot(off, way), beside = vec2_cross(way, off);
    return along < 0 || fabs(beside) > OPEN;
}

/* Through on the rim's side of the screener, then to meet him. */
static struct aim under_follows(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    struct vec2 inside = vec2_unit(vec2_add(vec2_scale(w.exit, .5), w.rim));
    struct vec2 by = vec2_along(seen->screener, inside, UNDER_BY);
    if (!seen->passed && ways_rimward(seen, RIMWARD) && leaves_screen(seen) &&
        vec2_distance(seen->man, seen->screener) > OFF_HIM) {
        return guards(seen); /* a back cut */
    }
    if (!seen->passed && vec2_distance(seen->man, seen->screener) > UNDER_NEAR + .5) {
        return under_waits(seen);
    }
    struct vec2 off = vec2_sub(seen->self, seen->screener);
    bool level = vec2_dot(off, inside) > UNDER_LEVEL && vec2_dot(off, w.exit) > -UNDER_SHORT;
    bool there = level || vec2_dot(vec2_sub(seen->self, by), w.exit) > -.25;
    bool inside_him = vec2_length(seen->self) < vec2_length(seen->man) - .3;
    if (seen->passed && is_open(seen)) {
        there = true; /* he has turned away from it: straight to him */
    }
    if (!there && !(seen->passed && inside_him && ways_rimward(seen, RIMWARD))) {
        return (struct aim){by, vec2_scale(vec2_unit(vec2_sub(by, seen->self)), 2.0)};
    }
    struct vec2 rim = vec2_unit(vec2_scale(seen->man, -1));
    struct vec2 meet = vec2_along(seen->man, seen->man_v, .25);
    return with_him(seen, vec2_along(meet, rim, real_min(.9, .45 * vec2_length(seen->man))));
}

static struct aim overplay_follows(const struct seen_screen *seen)
{
    return ways_rimward(seen, RIMWARD) ? guards(seen) : overplay_waits(seen);
}

/* ---- the screener's own defender ---- */

static struct aim stands_below(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    double low = real_smooth(vec2_length(seen->screener), UNDER_RING, 2 * UNDER_RING);
    struct vec2 below = ways_beside(seen->screener, w.ball, .35, w.rim, 1, 1.2);
    struct vec2 by_ball = vec2_along(seen->screener, w.ball, BALL_SIDE);
    return (struct aim){vec2_mix(by_ball, below, low), {0, 0}};
}

static struct aim opens_the_gap(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    return (struct aim){ways_beside(seen->screener, w.ball, 1, w.rim, .9, 1.3), {0, 0}};
}

static struct aim steps_out(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    return (struct aim){ways_beside(seen->screener, w.exit, 1, w.rim, .2, .9), {0, 0}};
}

static const struct {
    ways_aim *waits, *follows, *screener;
} answers[STRATEGY_COUNT] = {
    [STRATEGY_NONE] = {trail_waits, trail_follows, stands_below},
    [STRATEGY_TRAIL] = {trail_waits, trail_follows, stands_below},
    [STRATEGY_OVER] = {over_waits, over_follows, stands_below},
    [STRATEGY_UNDER] = {under_waits, under_follows, opens_the_gap},
    [STRATEGY_OVERPLAY] = {overplay_waits, overplay_follows, stands_below},
    [STRATEGY_SWITCH] = {switch_waits, guards, steps_out},
    [STRATEGY_DENY] = {deny_waits, deny_waits, stands_below},
    [STRATEGY_HEDGE] = {NULL, NULL, steps_out},
    [STRATEGY_TRAP] = {NULL, NULL, steps_out},
};

struct aim defense_screened(enum strategy strategy, const struct seen_screen *seen)
{
    ways_aim *waits = answers[strategy].waits, *follows = answers[strategy].follows;
    if (!seen->left) {
        return waits ? waits(seen) : answers[STRATEGY_NONE].waits(seen);
    }
    return follows ? follows(seen) : answers[STRATEGY_NONE].follows(seen);
}

struct aim defense_screener(enum strategy strategy, const struct seen_screen *seen)
{
    ways_aim *stands = answers[strategy].screener;
    return stands ? stands(seen) : answers[STRATEGY_NONE].screener(seen);
}

struct aim defense_roller(const struct seen_screen *seen)
{
    return guards(seen);
}

/* ---- no screen ---- */

struct aim defense_unscreened(enum strategy strategy, const struct court *court,
                              enum man_style style, const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    if (strategy == STRATEGY_TRAIL && !seen->has_ball) {
        return behind(seen);
    }
    if ((strategy == STRATEGY_OVERPLAY || strategy == STRATEGY_DENY) && !seen->has_ball) {
        if (ways_rimward(seen, RIMWARD)) {
            return guards(seen);
        }
        return with_him(seen, ways_beside(seen->man, w.ball, 1, w.rim, .2, .9));
    }
    if (strategy == STRATEGY_SAG) {
        double off =
            real_min(3.0, .45 * vec2_length(seen->man)); /* a step or two off, ball or not */
        return with_him(seen, vec2_along(seen->man, w.rim, off));
    }
    return with_him(seen, defense_man(court, style, seen->man, seen->ball, seen->has_ball));
}
