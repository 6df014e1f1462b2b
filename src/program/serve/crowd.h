/* SPDX-License-Identifier: MIT */
/* crowd: who is connected, how many at most, and who has to go. Takes the time, opens nothing.
 *
 * A stranger is a connection that has not yet asked for anything with the right token. He has to
 * within a few seconds; and where all seats are taken a newcomer gets the seat of the stranger who
 * has had it longest, so that no flood keeps the page out for more than a moment. A newcomer for
 * whom there is no seat is refused. Who has shown the token keeps his seat as long as he likes, but
 * a request that has begun must be whole in time. */
#ifndef PROGRAM_SERVE_CROWD_H
#define PROGRAM_SERVE_CROWD_H

#include <stdbool.h>
#include <stdint.h>

enum {
    CROWD_MOST = 64,          /* connections at once (ours: a browser opens six to a page) */
    CROWD_STRANGER_MS = 5000, /* to ask rightly (ours) */
    CROWD_SETTLED_MS = 250,   /* a stranger keeps his seat so long in a crush (ours) */
    CROWD_REQUEST_MS = 20000  /* for a text to arrive: 8 MB at half a megabyte a second (ours) */
};

struct crowd_seat {
    int fd;        /* -1: nobody's */
    bool known;    /* has shown the token */
    bool leaving;  /* was told to go */
    int64_t since; /* ms */
    int64_t until; /* ms: has to be done by then; 0: no hurry */
};
struct crowd {
    struct crowd_seat seats[CROWD_MOST];
    int count;
};

void crowd_init(struct crowd *crowd);
/* NULL when there is no seat. */
struct crowd_seat *crowd_enter(struct crowd *crowd, int fd, int64_t now);
void crowd_leave(struct crowd *crowd, struct crowd_seat *seat);

void crowd_knows(struct crowd_seat *seat);               /* he has shown the token */
void crowd_begins(struct crowd_seat *seat, int64_t now); /* a text begins to arrive */
void crowd_ends(struct crowd_seat *seat);                /* it is there, or the answer is given */

/* Whose seat a newcomer may have; NULL: nobody's. */
struct crowd_seat *crowd_yields(struct crowd *crowd, int64_t now);
/* One who should be gone by now; NULL: nobody. */
struct crowd_seat *crowd_late(struct crowd *crowd, int64_t now);
/* How long, ms, until somebody will be late; -1: nobody will. */
int crowd_wait(const struct crowd *crowd, int64_t now);

#endif
