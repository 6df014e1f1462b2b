/* SPDX-License-Identifier: MIT */
/* crowd: see crowd.h. */
#include "program/serve/crowd.h"

#include <stddef.h>

void crowd_init(struct crowd *crowd)
{
    crowd->count = 0;
    for (int i = 0; i < CROWD_MOST; i++) {
        crowd->seats[i].fd = -1;
    }
}

struct crowd_seat *crowd_enter(struct crowd *crowd, int fd, int64_t now)
{
    for (int i = 0; i < CROWD_MOST; i++) {
        struct crowd_seat *seat = &crowd->seats[i];
        if (seat->fd < 0) {
            *seat = (struct crowd_seat){.fd = fd, .since = now, .until = now + CROWD_STRANGER_MS};
            crowd->count++;
            return seat;
        }
    }
    return NULL;
}

void crowd_leave(struct crowd *crowd, struct crowd_seat *seat)
{
    seat->fd = -1;
    crowd->count--;
}

void crowd_knows(struct crowd_seat *seat)
{
    seat->known = true;
    seat->until = 0;
}

void crowd_begins(struct crowd_seat *seat, int64_t now)
{
    seat->until = now + CROWD_REQUEST_MS;
}

void crowd_ends(struct crowd_seat *seat)
{
    seat->until = 0;
}

static bool is_there(const struct crowd_seat *seat)
{
    return seat->fd >= 0 && !seat->leaving;
}

struct crowd_seat *crowd_yields(struct crowd *crowd, int64_t now)
{
    struct crowd_seat *oldest = NULL;
    for (int i = 0; i < CROWD_MOST; i++) {
        struct crowd_seat *seat = &crowd->seats[i];
        if (is_there(seat) && !seat->known && now - seat->since >= CROWD_SETTLED_MS &&
            (!oldest || seat->since < oldest->since)) {
            oldest = seat;
        }
    }
    return oldest;
}

struct crowd_seat *crowd_late(struct crowd *crowd, int64_t now)
{
    for (int i = 0; i < CROWD_MOST; i++) {
        struct crowd_seat *seat = &crowd->seats[i];
        if (is_there(seat) && seat->until && now >= seat->until) {
            return seat;
        }
    }
    return NULL;
}

int crowd_wait(const struct crowd *crowd, int64_t now)
{
    int64_t wait = -1;
    for (int i = 0; i < CROWD_MOST; i++) {
        const struct crowd_seat *seat = &crowd->seats[i];
        if (is_there(seat) && seat->until) {
            int64_t left = seat->until > now ? seat->until - now : 0;
            wait = wait < 0 || left < wait ? left : wait;
        }
    }
    return (int)wait;
}
