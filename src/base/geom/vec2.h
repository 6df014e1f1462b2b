/* SPDX-License-Identifier: MIT */
/* vec2: points and directions of the floor, metres, x to the attackers' right, y toward half court.
 * Seen from above with the basket on top that frame is left-handed, as screens are. */
#ifndef BASE_GEOM_VEC2_H
#define BASE_GEOM_VEC2_H

#include <stdbool.h>

#include "base/real.h"

struct vec2 {
    double x, y;
};

/* All but the turning ones are open to the compiler: the clock is made of them. Points lie on a
 * floor, so their squares neither run over nor vanish. */
static inline struct vec2 vec2_of(double x, double y)
{
    return (struct vec2){x, y};
}

static inline struct vec2 vec2_add(struct vec2 a, struct vec2 b)
{
    return (struct vec2){a.x + b.x, a.y + b.y};
}

static inline struct vec2 vec2_sub(struct vec2 a, struct vec2 b)
{
    return (struct vec2){a.x - b.x, a.y - b.y};
}

static inline struct vec2 vec2_scale(struct vec2 a, double k)
{
    return (struct vec2){a.x * k, a.y * k};
}

/* a + direction * distance */
static inline struct vec2 vec2_along(struct vec2 a, struct vec2 direction, double distance)
{
    return (struct vec2){a.x + direction.x * distance, a.y + direction.y * distance};
}

static inline struct vec2 vec2_mix(struct vec2 a, struct vec2 b, double t)
{
    return (struct vec2){real_mix(a.x, b.x, t), real_mix(a.y, b.y, t)};
}

static inline double vec2_dot(struct vec2 a, struct vec2 b)
{
    return a.x * b.x + a.y * b.y;
}

static inline double vec2_cross(struct vec2 a, struct vec2 b) /* a.x b.y - a.y b.x */
{
    return a.x * b.y - a.y * b.x;
}

static inline double vec2_square(struct vec2 a) /* of the length */
{
    return a.x * a.x + a.y * a.y;
}

static inline double vec2_length(struct vec2 a)
{
    return real_sqrt(vec2_square(a));
}

static inline double vec2_distance(struct vec2 a, struct vec2 b)
{
    return vec2_length(vec2_sub(a, b));
}

static inline struct vec2 vec2_unit(struct vec2 a) /* (0, 0) for the null vector */
{
    double length = vec2_length(a);
    return length > 0 ? (struct vec2){a.x / length, a.y / length} : (struct vec2){0, 0};
}

static inline struct vec2 vec2_left(struct vec2 a) /* a quarter turn from x toward y: (-y, x) */
{
    return (struct vec2){-a.y, a.x};
}

static inline bool vec2_near(struct vec2 a, struct vec2 b, double within)
{
    return vec2_distance(a, b) <= within;
}

struct vec2 vec2_turn(struct vec2 a, double angle); /* from x toward y */
double vec2_angle(struct vec2 a, struct vec2 b);    /* unsigned, 0..pi; 0 if either is null */

#endif
