/* SPDX-License-Identifier: MIT */
/* zone: where the defenders of a zone or press stand: at home by where the ball is, one of them on
 * the ball, leaning toward whoever is in their area. Takes the homes from court; the numbers of the
 * lean are ours, common practice. */
#include "floor/defense/defense.h"

#include <math.h>

#include "base/real.h"

#define ON_BALL 1.0   /* m: an arm's length and a little, as in the man rules */
#define NEAR_RIM .45  /* share of the way to the rim that a guard stands off at most */
#define GOES_OUT 2.0  /* m beyond the perimeter spots that a zone goes out to the ball */
#define BACKS_UP 2.8  /* m from the ball: behind the one who is on it */
#define OFF_BALL 1.9  /* m: nearer than that only one stands */
#define AREA_NEAR 1.2 /* m from home: a man as near is in one's area, */
#define AREA_FAR 3.2  /* one as far is not */
#define LEAN .5       /* share of the way to where one would stand on him */
#define LEAN_POST .8  /* a post on the ball's side: he is fronted a little */
#define LEAN_MOST 1.1 /* m from home */
#define UNDER_RING (3 * FEET)
#define BESIDE_RING (10 * FEET) /* so far to the side nobody is under it */

static struct vec2 toward_rim(struct vec2 p, double metres)
{
    return vec2_along(p, vec2_unit(p), -real_min(metres, NEAR_RIM * vec2_length(p)));
}

/* The ball, or the furthest place out to which a zone goes for it. */
static struct vec2 ball_met(const struct zone_seen *seen)
{
    struct vec2 reach = zone_reach(seen->court, seen->zone, seen->ball);
    struct vec2 out = vec2_sub(seen->ball, reach);
    return vec2_along(reach, vec2_unit(out), real_min(vec2_length(out), GOES_OUT));
}

static struct vec2 above_ball(struct vec2 ball)
{
    return vec2_along(ball, vec2_unit(ball), ON_BALL);
}

/* On the side of the middle, so that the ball is shut in against the line. */
static struct vec2 beside_ball(struct vec2 ball)
{
    double side = real_clamp(ball.x, -1, 1);
    return vec2_along(ball, vec2_unit(vec2_of(-side, .25)), ON_BALL);
}

/* By the rows alone, one going over into the other. */
static struct vec2 by_rows(const struct zone_home *home, struct vec2 ball)
{
    struct vec2 at = vec2_scale(home->at, home->point);
    at = vec2_along(at, toward_rim(ball, ON_BALL), home->ball);
    at = vec2_along(at, above_ball(ball), home->above);
    return vec2_along(at, beside_ball(ball), home->trap);
}

/* Behind who is on the ball: on the way to the nail, near the ring on the way to it. */
static struct vec2 behind_ball(const struct court *court, struct vec2 ball)
{
    struct vec2 nail = vec2_sub(vec2_of(0, court->free_throw), ball);
    double far = vec2_length(nail);
    struct vec2 up = vec2_along(ball, vec2_unit(nail), real_min(BACKS_UP, .7 * far));
    double low = 1 - real_smooth(vec2_length(ball), 2.5, 4.5);
    return vec2_mix(up, toward_rim(ball, BACKS_UP), low);
}

/* With somebody else on the ball: the rows that send him there want him behind that one. */
static struct vec2 off_ball(const struct court *court, const struct zone_home *home,
                            struct vec2 ball)
{
    struct vec2 behind = behind_ball(court, ball);
    struct vec2 at = vec2_scale(home->at, home->point);
    at = vec2_along(at, above_ball(ball), home->above);
    at = vec2_along(at, beside_ball(ball), home->trap);
    return vec2_along(at, behind, home->ball);
}

/* Where one would stand on a man of one's area: before a post on the ball's side, else off him. */
static struct vec2 on_man(struct vec2 man, struct vec2 ball, double post)
{
    struct vec2 to_ball = vec2_sub(ball, man), rim = vec2_unit(vec2_scale(man, -1));
    double far = vec2_length(to_ball);
    struct vec2 off =
        toward_rim(vec2_along(man, vec2_unit(to_ball), real_min(.2 * far, 1.2)), ON_BALL + .2);
    struct vec2 way = vec2_unit(vec2_add(vec2_scale(vec2_unit(to_ball), .8), vec2_scale(rim, .35)));
    return vec2_mix(off, vec2_along(man, way, .65), post);
}

static double is_post(struct vec2 man, struct vec2 ball)
{
    double inside = 1 - real_smooth(vec2_length(man), 3.6, 4.6);
    double side = real_clamp(ball.x, -1, 1); /* the ball's side, without a jump at the middle */
    return inside * real_smooth(man.x * side, -1.2, .2);
}

/* How much the man stands in the area round `home`. */
static double in_area(struct vec2 home, struct vec2 man)
{
    return 1 - real_smooth(vec2_distance(home, man), AREA_NEAR, AREA_FAR);
}

static void lean(const struct zone_seen *seen, const bool free[ZONE_DEFENDERS],
                 const double share[ZONE_DEFENDERS], struct vec2 at[ZONE_DEFENDERS])
{
    struct vec2 pull[ZONE_DEFENDERS] = {{0, 0}};
    for (int m = 0; m < seen->men; m++) {
        double in[ZONE_DEFENDERS], squares = 0, post = is_post(seen->man[m], seen->ball);
        for (int k = 0; k < ZONE_DEFENDERS; k++) {
            in[k] = free[k] ? in_area(at[k], seen->man[m]) : 0;
            squares += in[k] * in[k];
        }
        for (int k = 0; k < ZONE_DEFENDERS && squares > 0; k++) {
            struct vec2 way = vec2_sub(on_man(seen->man[m], seen->ball, post), at[k]);
            double much = in[k] * in[k] * in[k] / squares * real_mix(LEAN, LEAN_POST, post);
            pull[k] = vec2_along(pull[k], way, much);
        }
    }
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        double far = vec2_length(pull[k]);
        double most = far > LEAN_MOST ? LEAN_MOST / far : 1;
        at[k] = free[k] ? vec2_along(at[k], pull[k], most * share[k]) : at[k];
    }
}

/* Out from under the ring, to its front: all the way in the middle, not at all beside it. */
static struct vec2 from_under(const struct court *court, struct vec2 p)
{
    double least =
        real_mix(UNDER_RING, court->baseline, real_smooth(fabs(p.x), UNDER_RING, BESIDE_RING));
    return vec2_of(p.x, real_max(p.y, least));
}

static struct vec2 clear_of(struct vec2 p, struct vec2 ball)
{
    struct vec2 away = vec2_sub(p, ball);
    double far = vec2_length(away);
    return far > 0 && far < OFF_BALL ? vec2_along(ball, away, OFF_BALL / far) : p;
}

void defense_zone(const struct zone_seen *seen, struct vec2 at[ZONE_DEFENDERS])
{
    struct zone_home home[ZONE_DEFENDERS];
    struct vec2 ball = ball_met(seen);
    bool free[ZONE_DEFENDERS], decided = seen->on_ball != ZONE_BY_ROWS;
    double share[ZONE_DEFENDERS];
    zone_homes(seen->court, seen->zone, seen->ball, seen->thrown_in, seen->mirrored, home);
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        free[k] = !zone_is_man(seen->zone, k);
        share[k] = home[k].point;
        if (!free[k]) {
            continue;
        }
        bool takes = k == seen->on_ball || k == seen->comes;
        at[k] = !decided ? by_rows(&home[k], ball)
                : takes  ? toward_rim(ball, ON_BALL)
                         : off_ball(seen->court, &home[k], ball);
        free[k] = !takes;
    }
    lean(seen, free, share, at);
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        double by_ball = home[k].above + home[k].trap;
        if (free[k] && decided) {
            at[k] = vec2_mix(clear_of(at[k], ball), at[k], by_ball);
        }
        if (free[k]) {
            by_ball += decided ? 0 : home[k].ball;
            at[k] = vec2_mix(from_under(seen->court, at[k]), at[k], by_ball);
        }
    }
}
