/* SPDX-License-Identifier: MIT */
/* run: what happened when a play was run on one clock: tracks, events and who had the ball. */
#ifndef FLOOR_SIM_RUN_H
#define FLOOR_SIM_RUN_H

#include "floor/motion/motion.h"

#define RUN_SAMPLE 0.05 /* seconds between samples of a track */

struct sample {
    /* m, m/s; between samples a cubic Hermite curve: within 1 cm of where the clock had him at 99.9
     * % of all ticks (tests/clock/tracks.c), a few centimetres in the tick of a shove */
    struct vec2 at, v;
};
struct track {
    bool on_floor;
    struct sample *sample; /* count of the segment's `samples`, at i * RUN_SAMPLE */
    float *facing;         /* radians from x toward y, one per sample */
};
/* Where the ball was from one moment to another: the spans follow each other without a gap, and the
 * ball goes from one to the next without a jump. */
struct ball_span {
    double from, to; /* seconds of the segment; the first may have begun before it: below 0 */
    enum { BALL_HELD, BALL_FLIGHT, BALL_SHOT, BALL_LOOSE } state;
    body holder;            /* HELD: who; FLIGHT, SHOT: who threw it; LOOSE: nobody */
    body target;            /* FLIGHT: who is to catch it */
    struct vec2 start, end; /* where it is at `from` and goes to; HELD: where it leaves the hands */
    struct flight flight;   /* how it flies, falls off the ring or drops; HELD: height at `from`
                             * and once it is brought in */
    double settle;          /* HELD: s in which the hands bring it in to the body */
    bool throw_in; /* HELD: by somebody out of bounds at `from`; FLIGHT: thrown in by him. Time out
                    * of bounds with the ball ends at the release */
    int task;      /* that made it, or -1 */
};
struct dribble_span { /* without a stop; consecutive ones are one */
    body who;
    double from, to; /* s */
    double length;   /* m */
    int bounces;     /* 0: broken off before the ball was back (ours: two a second) */
};
#define TIME_NEVER (-1.0)
struct task_record {
    double time[MOMENT_COUNT]; /* seconds of the segment, TIME_NEVER when it did not happen */
    struct vec2 from, to; /* where `who` was when it started and ended; a pass: release and catch */
    struct vec2 on;   /* SCREEN: where the screened defender was when it was set (or at the end) */
    body defender;    /* SCREEN: whom it was set on, BODY_NONE with no defence at all */
    bool on_way;      /* SCREEN: not on him but on the way that he, who helps, has to his man */
    struct vec2 exit; /* SCREEN: the place where the user was to go */
    double facing;    /* SCREEN: the way the screener faces when set, radians */
    double gap; /* USE: least distance from the user's path to the screener's body, m; <0: none */
    struct vec2 corner; /* V, L, set-up: where the path turned; GUARD: whence he went back */
    bool has_corner;
    double miss;  /* PASS: from the receiver to the ball as it came, m; <0: it never did. Over what
                   * two hands and a step reach it was not caught, and run.missed said so */
    double lane;  /* PASS: the lane's margin as it leaves the hand (motion_lane_short), m, */
    body lane_by; /* and of whom; BODY_NONE: no defender, not thrown, or over all hands */
    bool carried; /* it was still going on when the segment ended */
};
struct world;    /* private to sim */
struct segment { /* one way through one step */
    const struct play *play;
    int step, branch; /* indices; branch -1: the step has none */
    bool main;        /* on the way that the next step goes on from */
    bool ran;         /* false: it could not start or deadlocked (reported) */
    double duration;
    size_t samples;
    struct track track[BODY_COUNT];
    VEC(struct ball_span) ball;
    VEC(struct dribble_span) dribbles; /* in order */
    size_t tasks;
    struct task_record *record; /* by task index: step_task(step, branch, i) */
    body guards[BODY_COUNT];    /* at the end */
    struct segment *before;     /* the segment it starts from, or NULL */
    double begins;      /* seconds of `before` at which it starts: its duration, or earlier when
                         * its step begins while that one goes on */
    double time_before; /* seconds of play before it starts */
    const struct world *end; /* everybody as it was over: what sim_again begins from */
};
struct run {
    const struct play *play;
    VEC(struct segment *)
    segments; /* in the order of the diagrams: step by step, its branches in turn */
};

struct vec2 segment_at(const struct segment *segment, body b,
                       double t); /* clamped to the segment */
struct vec2 segment_velocity(const struct segment *segment, body b, double t);
/* Who has the ball at t; BODY_NONE while it flies. */
body segment_holder(const struct segment *segment, double t);
struct vec2 segment_ball(const struct segment *segment, double t);
double segment_ball_height(const struct segment *segment, double t); /* m, of its middle */
const struct ball_span *segment_span(const struct segment *segment, double t); /* NULL: no ball */
const struct task *segment_task(const struct segment *segment, size_t index);
/* A text dump for goldens: events with times to .01 s and feet to .1. */
void run_dump(struct strbuf *out, const struct run *run);

#endif
