/* SPDX-License-Identifier: MIT */
/* labels: places for order discs and what each costs. Private to the room. */
#ifndef PICTURE_SCENE_LABELS_H
#define PICTURE_SCENE_LABELS_H

#include "picture/scene/drawing.h"

#define LEFT_OUT 250.0 /* a score from which a disc is rather left out */

struct candidate {
    struct vec2 at;
    double along; /* points along the ink's middle line */
    double fraction;
    bool on;
    bool led; /* by a thin line to `tip` */
    struct vec2 tip;
};
/* The best place so far, and what it costs. */
struct choice {
    struct candidate place;
    double cost;
};
/* What a number belongs to: a line, or where that is not drawn its player. */
struct owner {
    size_t line; /* SIZE_MAX: none */
    body who;    /* BODY_NONE: it is no number */
};
bool owner_has_line(const struct drawing *drawing, struct owner owner); /* or a bar */
/* From a place to what is drawn of its owner, points. */
double own_distance(const struct drawing *drawing, struct owner owner, struct vec2 at);
/* Of a disc with the white round it. */
double disc_white(const struct sizes *size);
/* What a place on or beside a line costs; no need to know it above `most`. */
double score_of(const struct drawing *drawing, size_t own, const struct candidate *place,
                double most);
/* The same for a place round about. */
struct loose {
    bool on;     /* it may be near other lines, whose it cannot be taken to be */
    double most; /* no need to know it above that */
};
double loose_score(const struct drawing *drawing, struct owner owner, struct vec2 at, double r,
                   struct loose how);
/* As place_score, no need to know it above `most`. */
double place_score_below(const struct drawing *drawing, struct vec2 at, double r, double most);

/* label_line.c: is enough of a line seen beside a disc that lies on it, `along` it? `whole`: its
 * length without its head; `tail`: it may be where the line begins, which comes out from under it;
 * `off`: how far its middle is from the line, of which it hides the less. */
bool disc_leaves_enough(const struct drawing *drawing, const struct stroke *stroke, double along,
                        double whole, bool tail, double off);
/* What it costs that it hides so much there. */
double on_line_score(const struct drawing *drawing, const struct stroke *stroke,
                     const struct candidate *place, double whole);
/* Is it drawn without a break, so that two pieces of it would be dashes? */
bool stroke_is_solid(enum scene_class class);

/* leader.c: a place from which a thin line leads to a part of a line, to a player's numeral, if it
 * costs less than the best so far. */
void leader_to_line(const struct drawing *drawing, size_t index, const struct stroke_part *part,
                    struct choice *best);
void leader_to_player(const struct drawing *drawing, body who, struct vec2 about,
                      struct choice *best);

#endif
