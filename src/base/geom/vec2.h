/* SPDX-License-Identifier: MIT */
/* vec2: points and directions of the floor, metres, x to the attackers' right, y toward half court.
 * Seen from above with the basket on top that frame is left-handed, as screens are. */
#ifndef BASE_GEOM_VEC2_H
#define BASE_GEOM_VEC2_H

#include <stdbool.h>

struct vec2 {
    double x, y;
};

struct vec2 vec2_of(double x, double y);
struct vec2 vec2_add(struct vec2 a, struct vec2 b);
struct vec2 vec2_sub(struct vec2 a, struct vec2 b);
struct vec2 vec2_scale(struct vec2 a, double k);
struct vec2 vec2_along(struct vec2 a, struct vec2 direction,
                       double distance); /* a + direction * distance */
struct vec2 vec2_mix(struct vec2 a, struct vec2 b, double t);
double vec2_dot(struct vec2 a, struct vec2 b);
double vec2_cross(struct vec2 a, struct vec2 b); /* a.x b.y - a.y b.x */
double vec2_length(struct vec2 a);
double vec2_distance(struct vec2 a, struct vec2 b);
struct vec2 vec2_unit(struct vec2 a);               /* (0, 0) for the null vector */
struct vec2 vec2_turn(struct vec2 a, double angle); /* from x toward y */
struct vec2 vec2_left(struct vec2 a);               /* a quarter turn from x toward y: (-y, x) */
double vec2_angle(struct vec2 a, struct vec2 b);    /* unsigned, 0..pi; 0 if either is null */
bool vec2_near(struct vec2 a, struct vec2 b, double within);

#endif
