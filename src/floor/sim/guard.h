/* SPDX-License-Identifier: MIT */
/* guard: what the files that move defenders share. A decider looks at what one defender sees and,
 * when it is its business, says where he wants to be; the first one in the table of guard.c that
 * does is followed. Private to sim. */
#ifndef FLOOR_SIM_GUARD_H
#define FLOOR_SIM_GUARD_H

#include "floor/sim/world.h"

struct view { /* what one defender has to go by */
    struct mover man;
    struct vec2 ball;
    struct vec2 ball_v;
    bool has_ball;
};

typedef bool guard_decider(struct world *world, body self, const struct view *view,
                           struct aim *aim);

/* guard.c: s until he sees what somebody does; less within touch. */
double guard_reaction(const struct world *world, body self, body who);

/* guard.c: where the man rules have the defender of a man who stands there. */
struct vec2 guard_rule(const struct world *world, struct vec2 man, struct vec2 ball, bool has);

/* guard_screen.c: his man uses a screen or is about to; his man is the screener. */
guard_decider guard_at_screen, guard_at_own_screener, guard_at_roller;
struct seen_screen guard_seen(struct world *world, body self, const struct view *view,
                              body screener); /* screener BODY_NONE: there is none */
/* What the user's defender wants, off the ball. Nobody has told him anything: then he helps as the
 * man rules have it while his man is two passes away, screen or no screen. */
struct aim guard_screened(const struct world *world, enum strategy strategy, body screener,
                          const struct seen_screen *seen);
struct vec2 guard_exit(struct world *world, body screener, body user);
/* He jumps out at a screen, his man has slipped, and he does not know it yet. */
bool guard_is_fooled(const struct world *world, body screener, enum strategy big);
/* Who hedges or traps does not wait for a screen on the ball that is to be slipped; he is nearer to
 * the ball than the screener. */
bool guard_jumps_early(struct world *world, body screener);
bool guard_is_out(const struct world *world, body screener);
void guard_swap(struct world *world, body a, body b); /* the two change men */
/* He takes this man for good; who had him has none, and whom he had is open. */
void guard_take(struct world *world, body self, body man);
void guard_watch_switches(struct world *world);

/* guard_pick.c: the two defenders of a screen on the ball, and who takes the roller. */
guard_decider guard_at_pick, guard_tags_roller;
void guard_watch_picks(struct world *world);
void guard_watch_roller(struct world *world);
struct coverage guard_coverage(const struct world *world, body user, body screener);

/* guard_zone.c */
guard_decider guard_zone;

/* help.c */
guard_decider help_aim;

/* seal.c */
guard_decider seal_aim;

/* duty.c */
guard_decider duty_aim;

#endif
