/* SPDX-License-Identifier: MIT */
/* duties: where one defender goes when he does something of his own instead of the man rules:
 * helps, closes out, doubles. From what he sees, no clock and no state; odd in x. What is about a
 * screen is in defense.h. */
#ifndef FLOOR_DEFENSE_DUTIES_H
#define FLOOR_DEFENSE_DUTIES_H

#include "floor/defense/defense.h"

struct seen_duty {
    const struct court *court;
    enum man_style style;
    struct vec2 self, from;   /* the defender, and where he stood as it began */
    struct vec2 man, man_v;   /* his own man */
    struct vec2 whom, whom_v; /* whom it is about; his own man when nobody is named */
    struct vec2 ball;
    bool has_man;       /* else he guards the lane */
    bool has_ball;      /* his own man has it */
    bool whom_has_ball; /* he whom it is about has it */
    struct vec2 mate;   /* the other defender at `whom`, for two who trap */
    bool has_mate;
    bool first;        /* of two who trap the one whose man it is: he */
    bool mate_first;   /* or the other, who stays between him and the rim */
    double side;       /* on which side of the other the second comes: +1, -1; 0: not yet */
    struct vec2 place; /* where he helps, drops, rotates to */
    bool has_place;    /* written, so that nothing draws him elsewhere */
    bool over;         /* the shot has gone up; the jab is done; the cutter has been met */
    double hand;       /* +1, or -1 in the other side of a play: breaks ties */
    double arm, step;  /* m: an arm's length, a normal step */
};
/* How he goes there. */
enum duty_gait {
    DUTY_SLIDES, /* as by rule: slides near, runs far */
    DUTY_RUNS,   /* face forward, at a sprint */
    DUTY_CLOSES  /* sprints three quarters of the way, then chops his steps */
};
struct duty_aim {
    struct aim aim;
    enum duty_gait gait;
};
/* False: the strategy is none of these (a screen's, or nothing of his own). */
bool defense_duty(enum strategy strategy, const struct seen_duty *seen, struct duty_aim *out);

/* The side for the second of two who trap, once he is near: that on which he is. */
double defense_side(const struct seen_duty *seen);
/* Where one who has no man stands: between ball and rim. */
struct vec2 defense_free(struct vec2 ball);

/* A movement with an end, that a step waits for; the others are ways to stand, good at once. */
bool defense_goes(enum strategy strategy);
/* About a screen: held until it has been used. */
bool defense_at_screens(enum strategy strategy);
/* Somebody else whom he minds as he would his own man: x3 denies 2. */
bool defense_plays_him(enum strategy strategy);
/* Asked for by a read it waits until the ball, a cutter or a drive calls for it. */
bool defense_waits(enum strategy strategy);
/* He leaves his own man for it. */
bool defense_leaves(enum strategy strategy);

#endif
