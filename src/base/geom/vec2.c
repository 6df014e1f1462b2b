/* SPDX-License-Identifier: MIT */
/* vec2: what of the arithmetic of points needs an angle; the rest stands in the header. Pure. */
#include "base/geom/vec2.h"

struct vec2 vec2_turn(struct vec2 a, double angle)
{
    double c = real_cos(angle), s = real_sin(angle);
    return (struct vec2){a.x * c - a.y * s, a.x * s + a.y * c};
}

double vec2_angle(struct vec2 a, struct vec2 b)
{
    return real_atan2(fabs(vec2_cross(a, b)), vec2_dot(a, b));
}
