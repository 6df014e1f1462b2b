/* SPDX-License-Identifier: MIT */
/* maker: what the files of the generator share: a play while it is being made. */
#ifndef TESTS_PROPERTY_MAKER_H
#define TESTS_PROPERTY_MAKER_H

#include "base/rng.h"
#include "floor/court/court.h"
#include "generate.h"

enum { MAKER_PLAYERS = 5, MAKER_EVENTS = 64, MAKER_PLACE = 64, MAKER_NOBODY = 0 };

/* A place with its words, as a sentence takes it: "left wing", "3 ft above left corner". */
struct made_place {
    char words[MAKER_PLACE];
    struct vec2 at;
};

/* What can be tied to: "3 cuts"; and about when it will be over, s. */
struct made_event {
    int who;
    const char *verb;
    double end;
};

/* How a sentence may be tied: not at all; to what is over; also to the moment itself, which takes
 * the place of the verb's own wait, and so only a player's first sentence of a step. */
enum tie_kind { TIE_NOT, TIE_LATER, TIE_ANY };

struct maker {
    struct rng rng;
    struct strbuf *out;
    const struct court *court;
    struct vec2 at[MAKER_PLAYERS + 1];                      /* where each was last sent */
    struct vec2 began[MAKER_PLAYERS + 1];                   /* where each stood as the step began */
    bool moved[MAKER_PLAYERS + 1], said[MAKER_PLAYERS + 1]; /* in this step */
    bool screened[MAKER_PLAYERS + 1];                       /* has set a screen in this step */
    int holder, first_holder;                               /* now; as the step began */
    bool dribbled;                                          /* the holder, and has picked it up */
    bool open_screen; /* one is set and not yet used: nothing may wait for it to be over */
    bool over;        /* a shot is up */
    double free[MAKER_PLAYERS + 1]; /* about when each has done what he was told in this step, s */
    double done[MAKER_PLAYERS + 1]; /* the same without the catches he waits for: his next sentence
                                     * stands at the head of his queue from then on */
    double begins;                  /* the last sentence, about */
    struct made_event event[MAKER_EVENTS];
    size_t events;
    const char *indent;
};

/* maker.c */
unsigned maker_roll(struct maker *maker, unsigned most); /* 0 .. most-1 */
bool maker_chance(struct maker *maker, unsigned percent);
/* A place that nobody was sent to and that is some way from where `who` is; the perimeter's when
 * asked for. False: none was found. */
bool maker_place(struct maker *maker, int who, bool perimeter, struct made_place *place);
bool maker_rim_free(const struct maker *maker, int who);
bool maker_is_free(const struct maker *maker, int who, struct vec2 p);
/* A player other than the holder and the two; MAKER_NOBODY: none. */
int maker_other(struct maker *maker, int not_him, int nor_him);
/* One sentence of `who`, with a tie or without, and what it can be tied to afterwards. */
void maker_say(struct maker *maker, int who, enum tie_kind tie, const char *verb,
               const char *format, ...) __attribute__((format(printf, 5, 6)));
/* He goes there with his last sentence; he is busy for so long. */
void maker_send(struct maker *maker, int who, struct vec2 to);
void maker_busy(struct maker *maker, int who, double seconds);

/* pieces.c: one to six sentences that belong together. */
void piece_random(struct maker *maker);
void piece_reads(struct maker *maker);  /* a screen, and what to do when the defense does this */
void piece_finish(struct maker *maker); /* a shot, a rebound */
void piece_throw_in(struct maker *maker);

#endif
