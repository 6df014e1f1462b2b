/* SPDX-License-Identifier: MIT */
/* ball_screens: what the handler's and the screener's defender aim for at a screen on the ball,
 * before the handler goes and after. Which of the two has the word: who goes over, under or ices is
 * the handler's man, who hedges or drops the screener's; a switch and a trap are of both. Takes
 * what is seen, must not know the clock. Distances are ours where no row of the sweep is named. */
#include "floor/defense/ways.h"

#include <math.h>

#include "base/real.h"

#define NEAR .95    /* m: on the ball */
#define OFF 1.15    /* m: a step lower, to get under */
#define LEAN -.25   /* of the way out: so that he has to use the screen */
#define BESIDE .3   /* m off the line to the rim, from which the screener has a side */
#define PLAIN .4    /* sine off that line: a place is plainly on one side of it */
#define BODY .28    /* m: and some air */
#define THROUGH .80 /* m from the screener: two bodies and .30 */
#define OUTSIDE .62 /* m: two bodies and .12 */
#define LEVEL .25   /* m ahead of the handler */
#define CHASED 1.0  /* m/s */
#define BACK .55    /* m behind him */
#define ARRIVES .8  /* m from the handler */
#define STOPPED .5  /* m/s */
#define REFUSES .6  /* m/s: he goes, and not to the screen */
#define REFUSES_TO .15
#define DROP_NEAR .9 /* m from the ring */
#define DROP_FAR 3.6

struct coverage defense_coverage(enum strategy guard, enum strategy big)
{
    static const enum strategy both[] = {STRATEGY_TRAP, STRATEGY_SWITCH, STRATEGY_ICE};
    for (size_t i = 0; i < sizeof both / sizeof *both; i++) {
        if (guard == both[i] || big == both[i]) {
            return (struct coverage){both[i], both[i]};
        }
    }
    bool own_word = guard == STRATEGY_UNDER || guard == STRATEGY_OVERPLAY;
    enum strategy on = own_word ? guard : STRATEGY_OVER;
    bool own = big == STRATEGY_HEDGE || big == STRATEGY_DROP;
    if (guard == STRATEGY_HEDGE || guard == STRATEGY_DROP) { /* said of the wrong one: meant so */
        own = true;
        big = guard;
    }
    enum strategy by = on == STRATEGY_OVERPLAY ? STRATEGY_OVER : on;
    return (struct coverage){on, own ? big : by};
}

double defense_screen_side(const struct seen_screen *seen)
{
    struct vec2 left = vec2_left(vec2_unit(vec2_scale(seen->from, -1)));
    struct vec2 off = vec2_sub(seen->screener, seen->from);
    return real_clamp(vec2_dot(off, left) / BESIDE, -1, 1);
}

/* Out past the screener: square to the way to the rim on his side, as far as he has one, and where
 * the handler is to go. */
static struct ways out_of(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->man);
    struct vec2 left = vec2_left(vec2_unit(vec2_scale(seen->from, -1)));
    double side = seen->side != 0 ? seen->side : defense_screen_side(seen);
    w.exit = vec2_unit(vec2_add(vec2_scale(left, side), vec2_scale(w.exit, .6)));
    return w;
}

static struct aim on_the_ball(const struct seen_screen *seen, double lean, double metres)
{
    struct ways w = out_of(seen);
    return (struct aim){ways_beside(seen->man, w.rim, 1, w.exit, lean, metres), seen->man_v};
}

/* ---- the handler's man, before ---- */

static struct aim over_waits(const struct seen_screen *seen)
{
    return on_the_ball(seen, 0, NEAR);
}
static struct aim under_waits(const struct seen_screen *seen)
{
    return on_the_ball(seen, 0, OFF);
}
static struct aim switch_waits(const struct seen_screen *seen)
{
    return on_the_ball(seen, -.1, NEAR);
}
static struct aim forces_in(const struct seen_screen *seen)
{
    return on_the_ball(seen, LEAN, NEAR);
}
/* Between the ball and the screen, on the side to which it is set, from wherever the screener
 * comes: the screen is not to be had. */
static struct aim ice_waits(const struct seen_screen *seen)
{
    struct ways w = out_of(seen);
    struct vec2 left = vec2_left(vec2_unit(vec2_scale(seen->from, -1)));
    double side = vec2_dot(vec2_unit(vec2_sub(seen->exit, seen->from)), left);
    double clear = real_smooth(fabs(side), 0, PLAIN);
    w.exit = vec2_unit(vec2_mix(w.exit, vec2_scale(left, side > 0 ? 1 : -1), clear));
    return (struct aim){ways_beside(seen->man, w.rim, 1, w.exit, 1.1, NEAR), seen->man_v};
}

/* ---- the handler's man, after ---- */

/* Past the screener, along the handler's way out. */
static double beyond(const struct seen_screen *seen, struct vec2 p)
{
    return vec2_dot(vec2_sub(p, seen->screener), out_of(seen).exit);
}

static bool refuses(const struct seen_screen *seen)
{
    double speed = vec2_length(seen->man_v);
    return !seen->passed && speed > REFUSES &&
           vec2_dot(seen->man_v, out_of(seen).exit) < REFUSES_TO * speed;
}

static struct aim meets(const struct seen_screen *seen, double soon, double off)
{
    struct ways w = ways_of(seen, seen->man);
    struct vec2 at = vec2_along(seen->man, seen->man_v, soon);
    return (struct aim){vec2_along(at, w.rim, real_min(off, .45 * vec2_length(seen->man))),
                        seen->man_v};
}

/* Over the top: round the screener's outer shoulder, while the screen is still before him. */
static bool over_the_top(const struct seen_screen *seen, struct aim *aim)
{
    struct vec2 rim = vec2_unit(vec2_scale(seen->screener, -1));
    bool goes_by = beyond(seen, seen->man) > -.2 && beyond(seen, seen->self) < 0;
    if (!goes_by || vec2_distance(seen->self, seen->screener) > 1.2) {
        return false;
    }
    struct vec2 by = vec2_along(seen->screener, rim, -OUTSIDE);
    by = vec2_along(by, out_of(seen).exit, .3);
    *aim = (struct aim){by, vec2_scale(vec2_unit(vec2_sub(by, seen->self)), 2.0)};
    return true;
}

/* At the handler's hip. */
static struct aim over_follows(const struct seen_screen *seen)
{
    struct aim top;
    if (refuses(seen)) {
        return meets(seen, .25, .9);
    }
    if (over_the_top(seen, &top)) {
        return top;
    }
    struct aim aim = meets(seen, .15, .65);
    if (vec2_distance(aim.at, seen->screener) < 2 * BODY) { /* no room there: at his side */
        struct vec2 out = out_of(seen).exit;
        double side = vec2_dot(vec2_sub(seen->self, seen->man), out) < 0 ? -1 : 1;
        aim.at = vec2_along(seen->man, out, side * .55);
    }
    return aim;
}

/* With a big waiting below: over the top and on at the handler's back; when he stops, up to him
 * from where he has come. */
static struct aim chases(const struct seen_screen *seen)
{
    if (!seen->passed || refuses(seen)) {
        return over_follows(seen);
    }
    bool runs = vec2_length(seen->man_v) > CHASED;
    struct vec2 back = runs ? vec2_scale(seen->man_v, -1) : vec2_sub(seen->self, seen->man);
    return (struct aim){vec2_along(seen->man, vec2_unit(back), BACK), seen->man_v};
}

/* Through on the rim's side, level with the handler; to meet him behind. */
static struct aim under_follows(const struct seen_screen *seen)
{
    if (refuses(seen)) {
        return meets(seen, .25, .9);
    }
    struct ways w = ways_of(seen, seen->screener);
    struct vec2 out = out_of(seen).exit;
    double v = vec2_dot(seen->man_v, out), self = beyond(seen, seen->self);
    bool through = self > .2;
    struct aim stops = meets(seen, 0, .75);
    bool room = vec2_distance(stops.at, seen->screener) > 2 * BODY;
    if (through && room && vec2_length(seen->man_v) < STOPPED) {
        return stops;
    }
    if (seen->passed || (through && beyond(seen, seen->man) > 1.0)) {
        return meets(seen, .25, .9);
    }
    double level = real_clamp(beyond(seen, seen->man) + .35 * v + LEVEL, -1, 1.3);
    struct vec2 by = vec2_along(vec2_along(seen->screener, out, level), w.rim, THROUGH);
    return (struct aim){by, vec2_scale(out, real_max(0, v))};
}

static struct aim trap_follows(const struct seen_screen *seen)
{
    struct aim top;
    if (over_the_top(seen, &top)) {
        return top;
    }
    struct ways w = out_of(seen);
    struct vec2 shut = vec2_add(vec2_scale(w.exit, -.6), vec2_scale(w.rim, .8));
    struct vec2 from = vec2_sub(seen->self, seen->man); /* near him he closes in from where he is */
    double near = 1 - real_smooth(vec2_length(from), ARRIVES, 2 * ARRIVES);
    return (struct aim){ways_beside(seen->man, shut, 1, vec2_unit(from), 1.2 * near, .62),
                        seen->man_v};
}

/* Away from the screen he is sent: there he stays at his hip, on the side of the screen. Who uses
 * it all the same is chased over it. */
static struct aim ice_follows(const struct seen_screen *seen)
{
    if (!refuses(seen)) {
        return over_follows(seen);
    }
    struct ways w = out_of(seen);
    struct vec2 at = vec2_along(seen->man, seen->man_v, .15);
    return (struct aim){ways_beside(at, w.exit, .5, w.rim, 1, .65), seen->man_v};
}

/* ---- the screener's man ---- */

static struct aim still(struct vec2 at)
{
    return (struct aim){at, {0, 0}};
}
static struct aim big_below(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    return still(ways_beside(seen->screener, w.rim, 1, w.exit, .2, 1.0));
}
static struct aim big_off(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    return still(ways_beside(seen->screener, w.rim, 1, out_of(seen).exit, -.5, 1.5));
}
static struct aim big_up(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    return still(ways_beside(seen->screener, out_of(seen).exit, .95, w.rim, .3, .95));
}
static struct aim big_steps_out(const struct seen_screen *seen)
{
    struct ways w = ways_of(seen, seen->screener);
    return still(ways_beside(seen->screener, out_of(seen).exit, .9, w.rim, .5, .9));
}

static struct aim hedge_jumps(const struct seen_screen *seen)
{
    struct ways w = out_of(seen);
    struct vec2 at = vec2_along(seen->man, seen->man_v, .3);
    return (struct aim){ways_beside(at, w.exit, .8, w.rim, .45, .85), seen->man_v};
}

static struct aim trap_jumps(const struct seen_screen *seen)
{
    struct ways w = out_of(seen);
    struct vec2 at = vec2_along(seen->man, seen->man_v, .05);
    return (struct aim){ways_beside(at, w.exit, .9, w.rim, .35, .66),
                        vec2_scale(seen->man_v, .8)}; /* not past him when he stops */
}

/* Low, between the two, nearer to the handler as he comes; `shade` to the handler's side of it. */
static struct aim drops_to(const struct seen_screen *seen, struct vec2 shade)
{
    double man = vec2_length(seen->man), screener = vec2_length(seen->screener);
    double far = real_clamp(real_min(.55 * man, screener - .6), DROP_NEAR, DROP_FAR);
    double weight = real_mix(.95, .6, real_smooth(man, 3.5, 5.5));
    struct vec2 way = vec2_unit(vec2_mix(seen->screener, seen->man, weight));
    struct vec2 at = vec2_along(vec2_scale(way, far), shade, .5);
    double share = real_min(.8, far / real_max(man, .5));
    return (struct aim){at, vec2_scale(seen->man_v, share)};
}

static struct aim drop_waits(const struct seen_screen *seen)
{
    return drops_to(seen, vec2_of(0, 0));
}
/* On the side to which the handler is sent. */
static struct aim ice_drops(const struct seen_screen *seen)
{
    return drops_to(seen, vec2_scale(out_of(seen).exit, -1));
}

static const struct {
    ways_aim *waits, *follows; /* the handler's man */
    ways_aim *stands, *jumps;  /* the screener's; NULL once he goes: back to his own man */
} coverages[STRATEGY_COUNT] = {
    [STRATEGY_NONE] = {over_waits, over_follows, big_below, NULL},
    [STRATEGY_OVER] = {over_waits, over_follows, big_below, NULL},
    [STRATEGY_UNDER] = {under_waits, under_follows, big_off, NULL},
    [STRATEGY_OVERPLAY] = {ice_waits, over_follows, big_below, NULL},
    [STRATEGY_SWITCH] = {switch_waits, over_follows, big_steps_out, NULL},
    [STRATEGY_ICE] = {ice_waits, ice_follows, ice_drops, ice_drops},
    [STRATEGY_TRAP] = {forces_in, trap_follows, big_up, trap_jumps},
    [STRATEGY_HEDGE] = {NULL, NULL, big_up, hedge_jumps},
    [STRATEGY_DROP] = {NULL, NULL, drop_waits, drop_waits},
};

struct aim defense_on_handler(struct coverage coverage, const struct seen_screen *seen)
{
    ways_aim *waits = coverages[coverage.guard].waits, *follows = coverages[coverage.guard].follows;
    bool over = coverage.guard == STRATEGY_OVER;
    if (seen->left) {
        return over && coverage.big == STRATEGY_DROP ? chases(seen)
               : follows                             ? follows(seen)
                                                     : over_follows(seen);
    }
    bool forced = over && (coverage.big == STRATEGY_HEDGE || coverage.big == STRATEGY_DROP);
    return forced ? forces_in(seen) : waits ? waits(seen) : over_waits(seen);
}

bool defense_big_jumps(struct coverage coverage)
{
    return coverages[coverage.big].jumps != NULL;
}

struct aim defense_on_screener(struct coverage coverage, const struct seen_screen *seen)
{
    ways_aim *jumps = coverages[coverage.big].jumps, *stands = coverages[coverage.big].stands;
    if (seen->left && jumps) {
        return jumps(seen);
    }
    return stands ? stands(seen) : big_below(seen);
}
