/* SPDX-License-Identifier: MIT */
/* reel: what a picture that moves is written to. Each animation goes into the element that is open.
 * Private to the room. */
#ifndef PICTURE_SVG_REEL_H
#define PICTURE_SVG_REEL_H

#include "picture/scene/moving.h"
#include "picture/svg/element.h"

struct reel {
    struct output out;
    const struct moving *moving;
    bool loop;
    double until;  /* s: what is being written is not seen any more */
    double length; /* points, of the line that is being erased */
};

/* ".5" for 0.5: a fraction without its zero. */
void reel_number(struct writer *writer, double value, int decimals);
void reel_place(const struct reel *reel, double points);
void reel_point(const struct reel *reel, struct vec2 at);

/* Where an element is; where the second end of a line is; how much of a line is gone, from its
 * start, of its length in points. */
void reel_way(struct reel *reel, const moving_keys *way);
void reel_ends(struct reel *reel, const moving_keys *ends);
void reel_erased(struct reel *reel, const moving_keys *erased, double length);
bool reel_stands(const moving_keys *keys); /* in one place all the time */

/* Is it there from the beginning to the end? No stretch: yes. */
bool reel_always(const struct reel *reel, const struct moving_show *show, size_t count);
/* When it is seen, of an element that by itself is not. */
void reel_seen(struct reel *reel, const struct moving_show *show, size_t count);
/* There by itself, until then; not where all begins again. */
void reel_gone(struct reel *reel, double from);

#endif
