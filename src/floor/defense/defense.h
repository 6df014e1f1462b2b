/* SPDX-License-Identifier: MIT */
/* defense: where a defender wants to be, from what he has seen. No clock, no state; odd in x. */
#ifndef FLOOR_DEFENSE_DEFENSE_H
#define FLOOR_DEFENSE_DEFENSE_H

#include "floor/court/court.h"
#include "floor/play/play.h"

/* The man rules: where the defender of the player at `man` stands with the ball at `ball`.
 * Continuous in all inputs. */
struct vec2 defense_man(const struct court *court, enum man_style style, struct vec2 man,
                        struct vec2 ball, bool has_ball);

/* How much these rules have him help on the weak side instead of being by his man: 0 to 1, with man
 * and ball on opposite sides and two passes apart. */
double defense_helps(struct vec2 man, struct vec2 ball);

/* The same with the ball being driven at the rim, `driven` from 0 to 1: who guards a low man away
 * from it is in the lane, wherever the ball has come to there. */
struct vec2 defense_driven(const struct court *court, enum man_style style, struct vec2 man,
                           struct vec2 ball, double driven);

/* The same of a man press: in the backcourt everybody is denied. */
struct vec2 defense_press(const struct court *court, enum man_style style, struct vec2 man,
                          struct vec2 ball, bool has_ball);

/* A zone as its defenders see the floor. */
enum { ZONE_BY_ROWS = -1, ZONE_MEN = 12 };
struct zone_seen {
    const struct court *court;
    enum zone zone;
    bool mirrored; /* the play is */
    bool thrown_in;
    struct vec2 ball;
    /* Who has the ball and who is coming to take it over, 0..4 for x1..x5; ZONE_DEFENDERS: nobody
     * of the zone. ZONE_BY_ROWS: the rows share it, continuously in where the ball is. */
    int on_ball, comes;
    struct vec2 man[ZONE_MEN]; /* those without the ball whom the zone has to mind */
    int men;
};
/* Where each defender with an area stands (the others' are left alone). Continuous in all inputs
 * but on_ball and comes. Nobody stands under the ring but on the ball. */
void defense_zone(const struct zone_seen *seen, struct vec2 at[ZONE_DEFENDERS]);

/* What a defender does about a screen, or instead of the man rules. */
enum strategy {
#define STRATEGY(symbol, ...) STRATEGY_##symbol,
#include "floor/defense/strategies.def"
#undef STRATEGY
    STRATEGY_COUNT
};
/* What a condition of a read asks of one defender; STRATEGY_NONE: nothing but the man rules. False:
 * there is no such strategy yet. */
bool defense_strategy(const struct condition *condition, enum strategy *strategy);
enum strategy defense_strategy_of(enum verb verb); /* STRATEGY_NONE: no verb of a defender's */

/* A screen as one of its two defenders sees it. */
struct seen_screen {
    struct vec2 man, man_v, ball, exit; /* the user */
    struct vec2 screener;
    struct vec2 from; /* where the user stood when he left; until then where he stands */
    struct vec2 self; /* the defender */
    bool left;        /* the user is on the way */
    bool passed;      /* and past the screener */
    bool refused;     /* or cuts back the other way */
    bool has_ball;    /* a ball screen */
    double side; /* of the way to the rim on which the screen was, once that is settled; or 0 */
};
/* Where to be, and with what velocity to go along. */
struct aim {
    struct vec2 at, v;
};
/* Off the ball: the user's defender; the screener's own, while his man screens. */
struct aim defense_screened(enum strategy strategy, const struct seen_screen *seen);
struct aim defense_screener(enum strategy strategy, const struct seen_screen *seen);

/* Who has left his screen for the ring, while his man stays with him. */
struct aim defense_roller(const struct seen_screen *seen);

/* On which side of the handler's way to the rim the screener is: +1 left, -1 right, less when he is
 * nearly on it. */
double defense_screen_side(const struct seen_screen *seen);

/* On the ball: what the handler's and the screener's defender do, from each one's own word. */
struct coverage {
    enum strategy guard, big;
};
struct coverage defense_coverage(enum strategy guard, enum strategy big);
struct aim defense_on_handler(struct coverage coverage, const struct seen_screen *seen);
struct aim defense_on_screener(struct coverage coverage, const struct seen_screen *seen);
/* The screener's man leaves him for the handler: hedges, drops, ices, traps. */
bool defense_big_jumps(struct coverage coverage);

/* A strategy where there is no screen: trailing, denying, overplaying a man. */
struct aim defense_unscreened(enum strategy strategy, const struct court *court,
                              enum man_style style, const struct seen_screen *seen);

#endif
