/* SPDX-License-Identifier: MIT */
/* look: what the checks of this room share: the run in hand, questions about who is doing what, and
 * how to report. For no other room. */
#ifndef JUDGE_CHECK_LOOK_H
#define JUDGE_CHECK_LOOK_H

#include "judge/check/check.h"

#define REST_SPEED 0.25                  /* m/s: slower than this somebody stands; ours */
#define REST_TIME 1.0                    /* s: shorter rests are part of moving; ours */
#define NOTED_ANGLE (30 * REAL_PI / 180) /* a screener turned so far is noted */
#define HALF_FOOT                                                                                  \
    0.1524 /* nobody stands to the inch: what a limit on distance may be missed by                 \
            */

typedef VEC(const struct segment *) segment_list;
struct checker {
    struct arena *arena;
    const struct run *run;
    const struct play *play;
    const struct segment *segment; /* the one in hand */
    const struct check_row *row;
    double limit; /* the row's, of the rules or the level, or the play's own */
    bool limit_written;
    finding_list *findings;
    segment_list of; /* the segment of each finding */
};

/* Adds a finding about one or two players (BODY_NONE: none) and gives it to be filled in. */
struct finding *look_report(struct checker *checker, double time, double amount, body first,
                            body second);
void look_say(struct checker *checker, struct str *text, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
const char *look_length(struct checker *checker, double metres);   /* "9 ft" */
const char *look_seconds(struct checker *checker, double seconds); /* "2.4 s" */
const char *look_body(struct checker *checker, body b);            /* "3", "x3" */
const char *look_spot(struct checker *checker, enum spot spot, enum side side);
/* The side of the floor; in the middle the right one, and in the other side of a play the left. */
enum side look_side(const struct checker *checker, double x);
/* The two sides in turn, 0 and 1, where the first of two that are as good is taken: left, right; in
 * the other side of a play right, left. */
enum side look_side_in_turn(const struct checker *checker, int turn);

/* By the play's own line, else its level, the rules in force, the row. */
double look_limit(const struct play *play, const struct check_row *row, bool *written);
/* Where and how fast somebody is at a sample; nobody who is off the floor may be asked for. */
struct vec2 look_at(const struct segment *segment, body b, size_t sample);
double look_speed(const struct segment *segment, body b, size_t sample);
bool look_plays(const struct checker *checker, body b); /* an attacker of the five, on the floor */
bool look_last(const struct checker *checker); /* no segment goes on from the one in hand */
/* The task that `b` began last by time t, in this segment or one it goes on from, or NULL; `in`
 * says in which segment, `index` its place there. */
const struct task *look_latest(const struct segment *segment, body b, double t,
                               const struct segment **in, size_t *index);
bool look_links(const struct task *task, body a, body b); /* it is about both, and not a pass */
bool look_linked(const struct segment *segment, body a, body b);
bool look_uses_ball(const struct task *task);            /* its verb needs the ball in hand */
bool look_shot(const struct segment *segment, double t); /* a shot has left by then */
bool look_dribbles(const struct segment *segment, body b, double t);
/* The screener leaves it before contact, on purpose. */
bool look_slipped(const struct segment *segment, size_t screen);
/* This check has told of him in this play already; BODY_NONE: of anybody. */
bool look_told(const struct checker *checker, body b);
double look_outside(const struct court *court, struct vec2 p); /* m over the line; < 0 inside */
/* Nearest to him of his team-mates on the floor; himself when he has none. */
body look_mate(const struct checker *checker, body who, double t);
/* A sentence of the segment has him hold by time t. */
bool look_told_to_hold(const struct segment *segment, body b, double t);
/* Well inside the lane, a foot from its lines: who stands on a line may be outside for all one
 * knows. */
bool look_in_lane(const struct checker *checker, struct vec2 p);
/* In the lane, on its lines or within a foot of them: where nobody is spaced from anybody. */
bool look_inside_player(const struct checker *checker, struct vec2 p);
/* The last span of a segment if `holder` goes on holding the ball from it into the next, else NULL.
 */
const struct ball_span *look_held_over(const struct segment *segment, body holder);
/* The segments a hold comes from, latest first, when it began before the one in hand. */
segment_list look_held_through(struct checker *checker, body holder);
/* Nothing of his is under way, whether he has come to rest or not. */
bool look_done(const struct checker *checker, body b, size_t sample);
/* Stands with nothing under way: no screen held, no cut or hand-off unfinished. */
bool look_idle(const struct checker *checker, body b, size_t sample);

/* When the screener of a use, set as the user left, moved before the user was by him; TIME_NEVER.
 */
double look_screen_left(const struct segment *segment, size_t use);
/* waited.c: the sentence that took longest of those a pass waited for, through its receiver, and
 * for how many seconds of that; NULL: it waited for none. */
const struct task *look_waited(const struct segment *segment, size_t pass, double *seconds);

#define CHECK(symbol, ...) void look_##symbol(struct checker *checker);
#include "judge/check/checks.def"
#undef CHECK

#endif
