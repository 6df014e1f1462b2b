/* SPDX-License-Identifier: MIT */
/* course: a way with the speeds it can be run at, and pure pursuit along it. */
#include "floor/motion/motion.h"

#include "base/real.h"

#define STEP .10    /* m between the points of a course */
#define WINDOW .3   /* m on either side over which a bend is measured */
#define SHARP .6    /* rad: a turn of the feet and not a bend (ours) */
#define SLOWEST .6  /* m/s: nobody creeps round a corner (ours) */
#define PLANNED .85 /* people brake earlier than they need (Giannakopoulos et al. 2026) */
#define LOOK .20    /* m: how far ahead the eyes are, plus .10 s of way (ours) */
#define LOOK_TIME .10
#define SEARCH .8       /* m of way in which the nearest point is looked for */
#define SETTLE 4.0      /* 1/s: speed by what is left in the last steps (ours) */
#define NEARLY .05      /* m before a length at which it is reached */
#define LONG 30.0       /* s: nobody runs longer */
#define CORNER_NEAR .15 /* m before a corner at which the feet are planted */

/* The turn over WINDOW metres on either side of a point, and how long that piece of way is. */
static double bend_at(const struct path *path, size_t i, double *length)
{
    size_t a = i, b = i;
    while (a > 0 && path->along[i] - path->along[a] < WINDOW) {
        a--;
    }
    while (b + 1 < path->count && path->along[b] - path->along[i] < WINDOW) {
        b++;
    }
    *length = (path->along[b] - path->along[a]) / 2;
    if (a == i || b == i) {
        return 0;
    }
    return vec2_angle(vec2_sub(path->at[i], path->at[a]), vec2_sub(path->at[b], path->at[i]));
}

static double bend_cap(const struct gait *gait, const struct path *path, size_t i)
{
    double length, angle = bend_at(path, i, &length);
    if (angle < 1e-6) {
        return gait->sprint;
    }
    if (angle >= SHARP) {
        return real_max(SLOWEST, gait->sprint * motion_turn_share(angle));
    }
    return real_max(SLOWEST, real_sqrt(MOTION_ACROSS * length / angle));
}

/* Points every STEP, with the given points kept: a corner must not be cut by sampling. */
static struct path dense(struct arena *arena, const struct vec2 *points, size_t count)
{
    VEC(struct vec2) all = {0};
    VEC_PUSH(arena, &all, points[0]);
    for (size_t i = 1; i < count; i++) {
        double length = vec2_distance(points[i - 1], points[i]);
        int pieces = (int)(length / STEP) + 1;
        if (length < 1e-9) {
            continue;
        }
        for (int k = 1; k <= pieces; k++) {
            VEC_PUSH(arena, &all,
                     k == pieces ? points[i]
                                 : vec2_mix(points[i - 1], points[i], (double)k / pieces));
        }
    }
    return path_of(arena, all.at, all.count);
}

/* The turns that are planted: local peaks of the bend over a right angle's half. */
static void find_corners(struct arena *arena, struct course *course)
{
    const struct path *path = &course->path;
    course->corner = arena_array(arena, double, path->count);
    for (size_t i = 1; i + 1 < path->count; i++) {
        struct vec2 in = vec2_sub(path->at[i], path->at[i - 1]);
        struct vec2 out = vec2_sub(path->at[i + 1], path->at[i]);
        if (vec2_angle(in, out) > SHARP) {
            course->corner[course->corners++] = path->along[i];
        }
    }
}

struct course motion_course(struct arena *arena, const struct vec2 *points, size_t count,
                            const struct gait *gait, double run_out)
{
    struct course course = {.path = dense(arena, points, count)};
    const struct path *path = &course.path;
    course.goal = real_max(0, path_length(path) - run_out);
    course.cap = arena_array(arena, double, path->count);
    for (size_t i = 0; i < path->count; i++) {
        course.cap[i] = bend_cap(gait, path, i);
    }
    for (size_t i = path->count - 1; i > 0; i--) {
        double gap = path->along[i] - path->along[i - 1];
        double before = real_sqrt(course.cap[i] * course.cap[i] + 2 * PLANNED * gait->brake * gap);
        course.cap[i - 1] = real_min(course.cap[i - 1], before);
    }
    find_corners(arena, &course);
    return course;
}

/* The piece of the way that holds `along`, looked for from the one before. */
static size_t piece_at(const struct path *path, size_t from, double along)
{
    while (from + 2 < path->count && path->along[from + 1] <= along) {
        from++;
    }
    return from;
}

static struct vec2 on_piece(const struct path *path, size_t i, double along)
{
    if (i + 1 >= path->count) {
        return path->at[path->count - 1];
    }
    double gap = path->along[i + 1] - path->along[i];
    double t = gap > 0 ? real_clamp((along - path->along[i]) / gap, 0, 1) : 0;
    struct vec2 a = path->at[i], b = path->at[i + 1];
    return (struct vec2){a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
}

/* Nearest point of the way within the window ahead; the earlier of two that are equally near. */
static double nearest_ahead(const struct course *course, struct vec2 p, double last)
{
    const struct path *path = &course->path;
    double best = course->along, least = 1e18, reach = 1e18;
    for (size_t i = course->piece; i + 1 < path->count && path->along[i] <= last; i++) {
        struct vec2 a = path->at[i], b = path->at[i + 1];
        if (vec2_square(vec2_sub(a, p)) > reach) {
            continue; /* no point of a piece so short can be nearer: most of them */
        }
        double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
        double gap = path->along[i + 1] - path->along[i];
        double t = square > 0 ? ((p.x - a.x) * dx + (p.y - a.y) * dy) / square : 0;
        double low = gap > 0 ? (course->along - path->along[i]) / gap : 0;
        double high = gap > 0 ? (last - path->along[i]) / gap : 0;
        t = real_clamp(t, low > 0 ? low : 0, high < 1 ? high : 1);
        double ox = a.x + dx * t - p.x, oy = a.y + dy * t - p.y, far = ox * ox + oy * oy;
        if (far < least - 1e-9) {
            least = far;
            reach = (real_sqrt(far) + 1.01 * STEP) * (real_sqrt(far) + 1.01 * STEP);
            best = path->along[i] + gap * t;
        }
    }
    return best;
}

static double cap_at(const struct course *course, double along)
{
    const struct path *path = &course->path;
    size_t i = piece_at(path, course->piece, along);
    if (i + 1 >= path->count) {
        return course->cap[path->count - 1];
    }
    double gap = path->along[i + 1] - path->along[i];
    return gap > 0 ? real_mix(course->cap[i], course->cap[i + 1],
                              real_clamp((along - path->along[i]) / gap, 0, 1))
                   : course->cap[i];
}

static struct vec2 point_ahead(const struct course *course, double along, bool past_end)
{
    const struct path *path = &course->path;
    double length = path_length(path);
    struct vec2 p = on_piece(path, piece_at(path, course->piece, along), along);
    if (along > length && past_end) {
        p = vec2_along(p, path_direction(path, length), along - length);
    }
    return p;
}

static double next_stop(const struct course *course)
{
    return course->passed < course->corners ? course->corner[course->passed]
                                            : path_length(&course->path);
}

double motion_along(const struct course *course, struct vec2 p)
{
    return nearest_ahead(course, p, real_min(next_stop(course), course->along + SEARCH));
}

bool motion_at_corner(const struct course *course, struct vec2 p)
{
    return course->passed < course->corners &&
           course->along + SEARCH > course->corner[course->passed] &&
           motion_along(course, p) > course->corner[course->passed] - CORNER_NEAR;
}

void motion_progress(struct course *course, struct vec2 p)
{
    double stop = next_stop(course);
    course->along = motion_along(course, p);
    if (course->passed < course->corners && course->along > stop - CORNER_NEAR) {
        course->passed++;
        course->along = stop;
    }
    course->piece = piece_at(&course->path, course->piece, course->along);
}

struct vec2 motion_wish(const struct course *course, const struct mover *mover,
                        const struct gait *gait, double end_speed)
{
    double length = path_length(&course->path), speed = vec2_length(mover->v);
    double along = motion_along(course, mover->at);
    double look = along + LOOK + LOOK_TIME * speed;
    bool last = course->passed == course->corners;
    struct vec2 target =
        point_ahead(course, last ? look : real_min(look, next_stop(course)), end_speed > 0);
    double left = real_max(0, length - along);
    double limit = real_min(gait->top, cap_at(course, along));
    limit = real_min(limit, real_sqrt(end_speed * end_speed + 2 * PLANNED * gait->brake * left));
    if (end_speed <= 0) {
        limit = real_min(
            limit,
            SETTLE * vec2_distance(mover->at, course->path.at[course->path.count - 1]) + .02);
        if (left > .3) {
            limit = real_max(limit, .3);
        }
    }
    return vec2_scale(vec2_unit(vec2_sub(target, mover->at)), limit);
}

struct vec2 motion_follow(struct course *course, const struct mover *mover, const struct gait *gait,
                          double end_speed)
{
    motion_progress(course, mover->at);
    return motion_wish(course, mover, gait, end_speed);
}

double motion_course_time(const struct course *course, struct mover mover, const struct gait *gait,
                          double end_speed, double along, struct mover *there)
{
    struct course copy = *course;
    const double dt = 1.0 / 60, last = along - NEARLY;
    double t = 0, before = copy.along;
    motion_progress(&copy, mover.at);
    while (copy.along < last && t < LONG) {
        struct mover soon = {vec2_along(mover.at, mover.v, dt), mover.v};
        motion_advance(&mover, gait, motion_wish(&copy, &soon, gait, end_speed), dt);
        t += dt;
        before = copy.along;
        motion_progress(&copy, mover.at);
    }
    if (there) {
        *there = mover;
    }
    double over = copy.along - last, gained = copy.along - before;
    return over > 0 && gained > over ? t - dt * over / gained : t;
}
