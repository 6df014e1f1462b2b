/* SPDX-License-Identifier: MIT */
/* man: the man rules, continuous in where man and ball are. One pass away between man and ball, two
 * away on the help line, posts on the ball's side, nobody under the ring. The numbers are ours,
 * chosen so that no defender jumps when somebody runs by. */
#include "floor/defense/defense.h"

#include <math.h>

#include "base/real.h"

#define ON_BALL 1.0           /* m: an arm's length and a little */
#define NEAR_RIM .45          /* share of the way to the rim that a guard stands off at most */
#define UNDER_RING (4 * FEET) /* nobody nearer to the baseline but on the ball or a post */

#define LOW_MAN 3.2  /* m from the baseline's ring: a corner or a block, */
#define HIGH_MAN 5.2 /* and no low man any more (ours) */
#define SINKS .65    /* of the way from his man to the ball, in the lane (ours) */
#define CLOSE_IN .6  /* of that, to the side: nearer to the middle than to his man (ours) */
#define IN_LANE .35  /* m inside the lane's side: both feet in it */

#define OVER_HALF 3.0 /* m over half court, in which a press becomes an ordinary man defense */

struct style_row {
    double share, cap; /* along the way to the ball, one pass away */
    double off;        /* m toward the rim then */
    double help;       /* factor on the depth two passes away */
};
static const struct style_row styles[] = {[MAN_GAP] = {.35, 2.3, 1.0, 1.0},
                                          [MAN_DENY] = {1.0, .9, .55, .7},
                                          [MAN_SAG] = {.45, 2.8, 1.9, 1.2}};

static struct vec2 toward_rim(struct vec2 p, double metres)
{
    return vec2_along(p, vec2_unit(p), -real_min(metres, .4 * vec2_length(p)));
}

/* How much man and ball are on opposite sides, 0..1. */
static double opposite(struct vec2 man, struct vec2 ball)
{
    double side = real_clamp(ball.x * 4, -1, 1); /* the ball's side, without a jump at the middle */
    return real_smooth(-man.x * side, -.6, .6) * real_smooth(fabs(ball.x), 1, 3);
}

static struct vec2 one_pass(const struct style_row *style, struct vec2 man, struct vec2 ball,
                            double far)
{
    struct vec2 way = vec2_unit(vec2_sub(ball, man));
    return toward_rim(vec2_along(man, way, real_min(style->share * far, style->cap)), style->off);
}

static struct vec2 two_passes(const struct style_row *style, struct vec2 man, struct vec2 ball)
{
    double sides = fabs(man.x) + fabs(ball.x);
    double line = sides > 0 ? real_clamp((fabs(man.x) - .45) / sides, .25, .65) : .45;
    struct vec2 p = vec2_mix(man, ball, real_mix(.45, line, opposite(man, ball)));
    return vec2_along(p, vec2_unit(p), -style->help * (.25 * vec2_length(p) + .3));
}

static struct vec2 post(struct vec2 man, struct vec2 ball)
{
    struct vec2 to_ball = vec2_unit(vec2_sub(ball, man)), to_rim = vec2_unit(vec2_scale(man, -1));
    return vec2_along(man, vec2_unit(vec2_add(vec2_scale(to_ball, .8), vec2_scale(to_rim, .35))),
                      .65);
}

struct vec2 defense_man(const struct court *court, enum man_style style, struct vec2 man,
                        struct vec2 ball, bool has_ball)
{
    (void)court;
    double from_rim = vec2_length(man), far = vec2_distance(man, ball);
    if (has_ball) {
        return vec2_along(man, vec2_unit(man), -real_min(ON_BALL, NEAR_RIM * from_rim));
    }
    const struct style_row *row = &styles[style];
    /* each rule is worked out only where it has a share */
    double away = real_smooth(far, 8.3, 10), is_post = 1 - real_smooth(from_rim, 4.2, 5.2);
    double helping = is_post > 0 ? opposite(man, ball) * real_smooth(far, 4, 6.5) : 0;
    struct vec2 one = {0, 0}, two = {0, 0}, low = {0, 0};
    if (away < 1 && is_post < 1) {
        one = one_pass(row, man, ball, far);
    }
    if ((away > 0 && is_post < 1) || helping > 0) {
        two = two_passes(row, man, ball);
    }
    if (is_post > 0) {
        low = vec2_mix(post(man, ball), two, helping);
    }
    struct vec2 at = vec2_mix(vec2_mix(one, two, away), low, is_post);
    at.y = real_max(at.y, real_mix(UNDER_RING, -1.0, is_post * (1 - helping)));
    return at;
}

double defense_helps(struct vec2 man, struct vec2 ball)
{
    double far = vec2_distance(man, ball);
    double is_post = 1 - real_smooth(vec2_length(man), 4.2, 5.2);
    return opposite(man, ball) *
           real_mix(real_smooth(far, 5.5, 8), real_smooth(far, 4, 6.5), is_post);
}

/* How much his man is a low one, and not on the ball's side: his defender is then a low man of the
 * defense. */
static double is_low(struct vec2 man, struct vec2 ball)
{
    double side = real_clamp(ball.x * 4, -1, 1);
    double beside = real_smooth(man.x * side, -.3, .6) * real_smooth(fabs(ball.x), .5, 1.6);
    return (1 - real_smooth(man.y, LOW_MAN, HIGH_MAN)) * (1 - beside);
}

struct vec2 defense_driven(const struct court *court, enum man_style style, struct vec2 man,
                           struct vec2 ball, double driven)
{
    struct vec2 usual = defense_man(court, style, man, ball, false);
    double share = driven * is_low(man, ball);
    if (share <= 0) {
        return usual;
    }
    struct vec2 p = vec2_mix(man, ball, SINKS);
    p = vec2_along(p, vec2_unit(p), -styles[style].help * (.25 * vec2_length(p) + .3));
    double side = court->lane_half_width - IN_LANE;
    p.x = real_clamp(CLOSE_IN * p.x, -side, side);
    p.y = real_max(p.y, UNDER_RING);
    return vec2_mix(usual, p, share);
}

struct vec2 defense_press(const struct court *court, enum man_style style, struct vec2 man,
                          struct vec2 ball, bool has_ball)
{
    double back = real_smooth(ball.y, court->half_court - OVER_HALF, court->half_court);
    struct vec2 usual = defense_man(court, style, man, ball, has_ball);
    return back > 0 ? vec2_mix(usual, defense_man(court, MAN_DENY, man, ball, has_ball), back)
                    : usual;
}
