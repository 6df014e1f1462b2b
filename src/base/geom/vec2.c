/* SPDX-License-Identifier: MIT */
/* vec2: the arithmetic of points and directions. Pure; knows nothing but real numbers. */
#include "base/geom/vec2.h"

#include <math.h>

#include "base/real.h"

struct vec2 vec2_of(double x, double y)
{
    return (struct vec2){x, y};
}

struct vec2 vec2_add(struct vec2 a, struct vec2 b)
{
    return (struct vec2){a.x + b.x, a.y + b.y};
}

struct vec2 vec2_sub(struct vec2 a, struct vec2 b)
{
    return (struct vec2){a.x - b.x, a.y - b.y};
}

struct vec2 vec2_scale(struct vec2 a, double k)
{
    return (struct vec2){a.x * k, a.y * k};
}

struct vec2 vec2_along(struct vec2 a, struct vec2 direction, double distance)
{
    return (struct vec2){a.x + direction.x * distance, a.y + direction.y * distance};
}

struct vec2 vec2_mix(struct vec2 a, struct vec2 b, double t)
{
    return (struct vec2){real_mix(a.x, b.x, t), real_mix(a.y, b.y, t)};
}

double vec2_dot(struct vec2 a, struct vec2 b)
{
    return a.x * b.x + a.y * b.y;
}

double vec2_cross(struct vec2 a, struct vec2 b)
{
    return a.x * b.y - a.y * b.x;
}

double vec2_length(struct vec2 a)
{
    return real_hypot(a.x, a.y);
}

double vec2_distance(struct vec2 a, struct vec2 b)
{
    return real_hypot(a.x - b.x, a.y - b.y);
}

struct vec2 vec2_unit(struct vec2 a)
{
    double length = vec2_length(a);
    return length > 0 ? (struct vec2){a.x / length, a.y / length} : (struct vec2){0, 0};
}

struct vec2 vec2_turn(struct vec2 a, double angle)
{
    double c = real_cos(angle), s = real_sin(angle);
    return (struct vec2){a.x * c - a.y * s, a.x * s + a.y * c};
}

struct vec2 vec2_left(struct vec2 a)
{
    return (struct vec2){-a.y, a.x};
}

double vec2_angle(struct vec2 a, struct vec2 b)
{
    return real_atan2(fabs(vec2_cross(a, b)), vec2_dot(a, b));
}

bool vec2_near(struct vec2 a, struct vec2 b, double within)
{
    return vec2_distance(a, b) <= within;
}
