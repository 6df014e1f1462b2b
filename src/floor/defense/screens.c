/* SPDX-License-Identifier: MIT */
/* screens: what the defenders of a screen's two men aim for, before the user leaves and after.
 * Directions: R to the rim, B to the ball, E to the place where the user is to go. */
#include "floor/defense/defense.h"

#include "base/real.h"

#define GUARD .80       /* m: close to a man without the ball */
#define UNDER_NEAR 1.15 /* m from user to screener at which the way through is taken */
#define UNDER_BY .80    /* m from the screener: two bodies and .30 */
#define RIMWARD .4      /* cosine: he is going to the rim */

static const enum verb strategy_verbs[STRATEGY_COUNT] = {
#define VERB_NONE VERB_COUNT
#define STRATEGY(symbol, verb) [STRATEGY_##symbol] = VERB_##verb,
#include "floor/defense/strategies.def"
#undef STRATEGY
#undef VERB_NONE
};

bool defense_strategy(const struct condition *condition, enum strategy *strategy)
{
    *strategy = STRATEGY_NONE;
    switch (condition->kind) {
    case COND_OTHERWISE:
        return true;
    case COND_SWITCH:
        *strategy = STRATEGY_SWITCH;
        return true;
    case COND_OPEN:
        *strategy = STRATEGY_SAG;
        return true;
    case COND_COVERED:
    case COND_DENIED:
        *strategy = STRATEGY_DENY;
        return true;
    case COND_VERB:
        break;
    }
    for (int i = 1; i < STRATEGY_COUNT; i++) {
        if (strategy_verbs[i] == condition->verb) {
            *strategy = (enum strategy)i;
            return true;
        }
    }
    return false;
}

struct ways {
    struct vec2 rim, ball, exit;
};

static struct ways ways_of(const struct seen_screen *seen, struct vec2 from)
{
    return (struct ways){vec2_unit(vec2_scale(from, -1)), vec2_unit(vec2_sub(seen->ball, from)),
                         vec2_unit(vec2_sub(seen->exit, from))};
}

/* `metres` from p along a * x + b * y; never more than .45 of the way to the rim. */
static struct vec2 beside(struct vec2 p, struct vec2 a, double x, struct vec2 b, double y,
                          double metres)
{
    struct vec2 way = vec2_unit(vec2_add(vec2_scale(a, x), vec2_scale(b, y)));
    return vec2_along(p, way, real_min(metres, real_max(.55, .45 * vec2_length(p))));
}

static bool rimward(const struct seen_screen *seen, double cosine)
{
    struct vec2 rim = vec2_unit(vec2_scale(seen->man, -1));
    double speed = vec2_length(seen->man_v);
    return speed > .5 && vec2_dot(seen->man_v, rim) > cosine * speed;
}

static bool leaves_screen(const struct seen_screen *seen)
{
    return vec2_dot(seen->man_v, vec2_sub(seen->screener, seen->man)) < 0;
}

static struct vec2 waiting(enum strategy strategy, const struct seen_screen *seen)
{
    struct vec2 m = seen->man;
    struct ways w = ways_of(seen, m);
    if (seen->has_ball) { /* ball screens: on the ball, a step lower when going under */
        double lean = strategy == STRATEGY_SWITCH ? -.1 : 0;
        return beside(m, w.rim, 1, w.exit, lean, strategy == STRATEGY_UNDER ? 1.15 : .95);
    }
    switch (strategy) {
    case STRATEGY_OVER:
        return beside(m, w.exit, .7, w.rim, 1, .8);
    case STRATEGY_UNDER:
        return vec2_along(m, vec2_unit(vec2_add(vec2_scale(w.ball, .35), w.rim)),
                          real_min(2, .45 * vec2_length(m)));
    case STRATEGY_OVERPLAY:
        return beside(m, w.exit, 1, w.rim, -.5, .85);
    case STRATEGY_SWITCH:
        return beside(m, w.ball, 1, w.rim, 1, 1.3);
    case STRATEGY_DENY:
        return beside(m, w.ball, 1, w.rim, .35, .9);
    default:
        break;
    }
    return beside(m, w.ball, .4, w.rim, 1, 1.1);
}

static struct aim guard(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    return (struct aim){beside(seen->man, w.ball, .3, w.rim, 1, GUARD), seen->man_v};
}

static struct aim behind(const struct seen_screen *seen)
{
    if (vec2_length(seen->man_v) < .5) {
        return guard(seen);
    }
    return (struct aim){vec2_along(seen->man, vec2_unit(seen->man_v), -.55), seen->man_v};
}

/* Through on the rim's side of the screener, then to meet him. */
static struct aim through(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    struct vec2 inside = vec2_unit(vec2_add(vec2_scale(w.exit, .5), w.rim));
    struct vec2 by = vec2_along(seen->screener, inside, UNDER_BY);
    if (!seen->passed && vec2_distance(seen->man, seen->screener) > UNDER_NEAR + .5) {
        return (struct aim){waiting(STRATEGY_UNDER, seen), seen->man_v};
    }
    bool there = vec2_dot(vec2_sub(seen->self, by), w.exit) > -.25;
    if (!there) {
        return (struct aim){by, vec2_scale(vec2_unit(vec2_sub(by, seen->self)), 2.0)};
    }
    struct vec2 rim = vec2_unit(vec2_scale(seen->man, -1));
    struct vec2 meet = vec2_along(seen->man, seen->man_v, .25);
    return (struct aim){vec2_along(meet, rim, real_min(.9, .45 * vec2_length(seen->man))),
                        seen->man_v};
}

struct aim defense_screened(enum strategy strategy, const struct seen_screen *seen)
{
    if (!seen->left) {
        return (struct aim){waiting(strategy, seen), seen->man_v};
    }
    struct ways w = ways_of(seen, seen->man);
    if (seen->has_ball && strategy != STRATEGY_UNDER) {
        struct vec2 meet = vec2_along(seen->man, seen->man_v, .15);
        return (struct aim){vec2_along(meet, w.rim, real_min(.65, .45 * vec2_length(seen->man))),
                            seen->man_v};
    }
    switch (strategy) {
    case STRATEGY_OVER:
        return (struct aim){beside(seen->man, w.ball, 1, w.rim, 1, .6), seen->man_v};
    case STRATEGY_UNDER:
        return through(seen);
    case STRATEGY_OVERPLAY:
        if (rimward(seen, RIMWARD)) {
            return guard(seen);
        }
        return (struct aim){waiting(strategy, seen), seen->man_v};
    case STRATEGY_DENY:
        return (struct aim){waiting(strategy, seen), seen->man_v};
    case STRATEGY_TRAIL:
        if (!seen->passed && rimward(seen, .35) && leaves_screen(seen)) {
            return guard(seen); /* behind his back, not round the screen */
        }
        return behind(seen);
    default:
        break;
    }
    return guard(seen);
}

struct aim defense_screener(enum strategy strategy, const struct seen_screen *seen)
{
    struct vec2 s = seen->screener;
    struct ways w = ways_of(seen, s);
    struct vec2 at;
    if (seen->has_ball) { /* a ball screen: below it, with room for the guard, or up to switch */
        at = strategy == STRATEGY_SWITCH  ? beside(s, w.exit, .9, w.rim, .5, .9)
             : strategy == STRATEGY_UNDER ? beside(s, w.rim, 1, w.exit, 0, 1.5)
                                          : beside(s, w.rim, 1, w.exit, .2, 1.1);
    } else if (strategy == STRATEGY_UNDER) { /* opens the gap for his team-mate */
        at = beside(s, w.ball, 1, w.rim, .1, 1.3);
    } else if (strategy == STRATEGY_SWITCH) {
        at = beside(s, w.exit, 1, w.rim, .2, .9);
    } else {
        at = beside(s, w.ball, .35, w.rim, 1, 1.2);
    }
    return (struct aim){at, {0, 0}};
}

struct aim defense_unscreened(enum strategy strategy, const struct court *court,
                              enum man_style style, const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    if (strategy == STRATEGY_TRAIL && !seen->has_ball) {
        return behind(seen);
    }
    if ((strategy == STRATEGY_OVERPLAY || strategy == STRATEGY_DENY) && !seen->has_ball) {
        if (rimward(seen, RIMWARD)) {
            return guard(seen);
        }
        return (struct aim){beside(seen->man, w.ball, 1, w.rim, .2, .9), seen->man_v};
    }
    if (strategy == STRATEGY_SAG) {
        double off =
            real_min(3.0, .45 * vec2_length(seen->man)); /* a step or two off, ball or not */
        return (struct aim){vec2_along(seen->man, w.rim, off), seen->man_v};
    }
    return (struct aim){defense_man(court, style, seen->man, seen->ball, seen->has_ball),
                        seen->man_v};
}
