/* SPDX-License-Identifier: MIT */
/* worked: published plays in our language, and what their books say of the run. A table a kind;
 * the spots a source leaves open are ours and are not asserted. */
#ifndef TESTS_OUTSIDE_WORKED_H
#define TESTS_OUTSIDE_WORKED_H

#include "floor/sim/run.h"

/* A sentence of the text: whose, its verb, and which of several (0: the first). */
struct deed {
    int who; /* an attacker; a defender is negative: -3 is x3 */
    enum verb verb;
    int nth;
};
struct fact;
struct told { /* what a fact is held up against */
    const struct segment *segment;
    const struct fact *fact;
    const char *row;
};
/* Fields by need: the constructors below say which. */
struct fact {
    void (*holds)(const struct told *told);
    struct deed deed, later;
    enum moment moment, later_moment;
    int who, whom, third;
    enum spot spot;
    enum side side;
    double amount; /* metres, seconds or degrees */
    int step, branch;
};
enum { WORKED_FACTS = 16 };
struct worked {
    const char *row;    /* of the list at the end of test_worked.c */
    const char *notes;  /* the notes it is told, by id, and why each is right */
    const char *source; /* who published it */
    const char *text;
    struct fact facts[WORKED_FACTS]; /* about the first step's only way, until INSIDE */
};
struct worked_table {
    const struct worked *at;
    size_t count;
};
extern const struct worked_table worked_offense, worked_defense, worked_break;

void worked_inside(const struct told *told);
void worked_order(const struct told *told);
void worked_lasts(const struct told *told);
void worked_ends(const struct told *told);
void worked_ends_side(const struct told *told);
void worked_ends_in_lane(const struct told *told);
void worked_ends_outside(const struct told *told);
void worked_has_ball(const struct told *told);
void worked_near_man(const struct told *told);
void worked_together(const struct told *told);
void worked_apart(const struct told *told);
void worked_still(const struct told *told);
void worked_on_axis(const struct told *told);
void worked_gap(const struct told *told);
void worked_quicker_after(const struct told *told);
void worked_alone_on_side(const struct told *told);
void worked_carries(const struct told *told);
void worked_by_sideline(const struct told *told);
void worked_nearer(const struct told *told);
void worked_looser(const struct told *told);
void worked_goes_between(const struct told *told);
void worked_most_open(const struct told *told);
void worked_keeps_speed(const struct told *told);
void worked_guarded(const struct told *told);
void worked_slow_in_lane(const struct told *told);
void worked_comes_to(const struct told *told);
void worked_chest(const struct told *told);
void worked_back(const struct told *told);
void worked_level(const struct told *told);

#define DEED(who, VERB)                                                                            \
    {                                                                                              \
        (who), VERB_##VERB, 0                                                                      \
    }
/* The facts from here on are about this way (branch -1: the step has none), counted from 0. */
#define INSIDE(s, b)                                                                               \
    {                                                                                              \
        .holds = worked_inside, .step = (s), .branch = (b)                                         \
    }
/* The one moment is not later than the other. */
#define ORDER(a, A, M, b, B, N)                                                                    \
    {                                                                                              \
        .holds = worked_order, .deed = DEED(a, A), .moment = MOMENT_##M, .later = DEED(b, B),      \
        .later_moment = MOMENT_##N                                                                 \
    }
/* As ORDER, of the n-th and m-th (from 0) sentences of that verb. */
#define ORDER_OF(a, A, n, M, b, B, m, N)                                                           \
    {                                                                                              \
        .holds = worked_order, .deed = {(a), VERB_##A, (n)}, .moment = MOMENT_##M,                 \
        .later = {(b), VERB_##B, (m)}, .later_moment = MOMENT_##N                                  \
    }
/* From the one moment to the other at least so many seconds. */
#define LASTS(a, A, M, b, B, N, seconds)                                                           \
    {                                                                                              \
        .holds = worked_lasts, .deed = DEED(a, A), .moment = MOMENT_##M, .later = DEED(b, B),      \
        .later_moment = MOMENT_##N, .amount = (seconds)                                            \
    }
#define ENDS(player, SPOT, SIDE, within)                                                           \
    {                                                                                              \
        .holds = worked_ends, .who = (player), .spot = SPOT_##SPOT, .side = SIDE_##SIDE,           \
        .amount = (within)                                                                         \
    }
#define ENDS_SIDE(player, SIDE, least)                                                             \
    {                                                                                              \
        .holds = worked_ends_side, .who = (player), .side = SIDE_##SIDE, .amount = (least)         \
    }
#define ENDS_IN_LANE(player)                                                                       \
    {                                                                                              \
        .holds = worked_ends_in_lane, .who = (player)                                              \
    }
#define ENDS_OUTSIDE(player)                                                                       \
    {                                                                                              \
        .holds = worked_ends_outside, .who = (player)                                              \
    } /* the lane */
#define HAS_BALL(player)                                                                           \
    {                                                                                              \
        .holds = worked_has_ball, .who = (player)                                                  \
    }
/* A screen is set so near to the defender it is for. */
#define SCREENS_MAN(a, A, within)                                                                  \
    {                                                                                              \
        .holds = worked_near_man, .deed = DEED(a, A), .moment = MOMENT_SET, .amount = (within)     \
    }
/* At a moment two bodies are no farther, or no nearer, than that. */
#define TOGETHER(a, A, M, one, other, within)                                                      \
    {                                                                                              \
        .holds = worked_together, .deed = DEED(a, A), .moment = MOMENT_##M, .who = (one),          \
        .whom = (other), .amount = (within)                                                        \
    }
#define APART(a, A, M, one, other, least)                                                          \
    {                                                                                              \
        .holds = worked_apart, .deed = DEED(a, A), .moment = MOMENT_##M, .who = (one),             \
        .whom = (other), .amount = (least)                                                         \
    }
/* From the way's beginning to its end a body is not farther than that from where it was. */
#define STILL(player, within)                                                                      \
    {                                                                                              \
        .holds = worked_still, .who = (player), .amount = (within)                                 \
    }
#define ON_AXIS(body, within)                                                                      \
    {                                                                                              \
        .holds = worked_on_axis, .who = (body), .amount = (within)                                 \
    }
/* The user's path goes by the screener's body within that: half a body of it is the user's own. */
#define GAP(a, A, most)                                                                            \
    {                                                                                              \
        .holds = worked_gap, .deed = DEED(a, A), .amount = (most)                                  \
    }
/* The player is quicker during the later sentence than during the first, by so many m/s. */
#define QUICKER_AFTER(a, A, b, B, least)                                                           \
    {                                                                                              \
        .holds = worked_quicker_after, .deed = DEED(a, A), .later = DEED(b, B), .amount = (least)  \
    }
/* At the moment no other attacker stands on the pair's side of the axis. */
#define ALONE_ON_SIDE(a, A, M, one, other)                                                         \
    {                                                                                              \
        .holds = worked_alone_on_side, .deed = DEED(a, A), .moment = MOMENT_##M, .who = (one),     \
        .whom = (other)                                                                            \
    }
/* From that moment on the player goes so many metres with the ball. */
#define CARRIES(a, A, M, player, least)                                                            \
    {                                                                                              \
        .holds = worked_carries, .deed = DEED(a, A), .moment = MOMENT_##M, .who = (player),        \
        .amount = (least)                                                                          \
    }
/* On the way the player comes so near to a sideline. */
#define BY_SIDELINE(player, within)                                                                \
    {                                                                                              \
        .holds = worked_by_sideline, .who = (player), .amount = (within)                           \
    }
/* At the end the first is nearer to the second than every other defender (attacker) is. */
#define NEARER(body, to)                                                                           \
    {                                                                                              \
        .holds = worked_nearer, .who = (body), .whom = (to)                                        \
    }

/* At the end the first defender is farther from his man than the second from his, by so much. */
#define LOOSER(one, other, least)                                                                  \
    {                                                                                              \
        .holds = worked_looser, .who = (one), .whom = (other), .amount = (least)                   \
    }
/* After that moment the body comes so near to the line between two others. */
#define GOES_BETWEEN(a, A, M, body, one, other, within)                                            \
    {                                                                                              \
        .holds = worked_goes_between, .deed = DEED(a, A), .moment = MOMENT_##M, .who = (body),     \
        .whom = (one), .third = (other), .amount = (within)                                        \
    }

/* At the end no team-mate without the ball has his nearest defender farther away. */
#define MOST_OPEN(player)                                                                          \
    {                                                                                              \
        .holds = worked_most_open, .who = (player)                                                 \
    }
/* After three quarters of a sentence's way the body still has that share of its best speed. */
#define KEEPS_SPEED(a, A, share)                                                                   \
    {                                                                                              \
        .holds = worked_keeps_speed, .deed = DEED(a, A), .amount = (share)                         \
    }
/* From that moment on some defender is always so near. */
#define GUARDED(a, A, M, player, within)                                                           \
    {                                                                                              \
        .holds = worked_guarded, .deed = DEED(a, A), .moment = MOMENT_##M, .who = (player),        \
        .amount = (within)                                                                         \
    }
/* At the moment the player is in the lane and slower than so many m/s. */
#define SLOW_IN_LANE(a, A, M, player, most)                                                        \
    {                                                                                              \
        .holds = worked_slow_in_lane, .deed = DEED(a, A), .moment = MOMENT_##M, .who = (player),   \
        .amount = (most)                                                                           \
    }
/* At the end the one is nearer to the other than at the beginning, by so much. */
#define COMES_TO(player, other, least)                                                             \
    {                                                                                              \
        .holds = worked_comes_to, .who = (player), .whom = (other), .amount = (least)              \
    }
/* A set screener faces the defender, or turns his back to the baseline, within so many degrees. */
#define CHEST_TO_MAN(a, A, most)                                                                   \
    {                                                                                              \
        .holds = worked_chest, .deed = DEED(a, A), .amount = (most)                                \
    }
#define BACK_TO_BASELINE(a, A, most)                                                               \
    {                                                                                              \
        .holds = worked_back, .deed = DEED(a, A), .amount = (most)                                 \
    }
/* A screen is set level with a spot. */
#define LEVEL_WITH(a, A, SPOT, within)                                                             \
    {                                                                                              \
        .holds = worked_level, .deed = DEED(a, A), .spot = SPOT_##SPOT, .amount = (within)         \
    }

#endif
