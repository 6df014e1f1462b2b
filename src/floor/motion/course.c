/* SPDX-License-Identifier: MIT */
/* course: a way with the speeds it can be run at, and pure pursuit along it. A sharp turn is a
 * planted foot: the speed that can be carried through is all that it costs; any other bend is run
 * on a curve that the feet must hold. */
#include "floor/motion/motion.h"

#include <math.h>

#include "base/real.h"

#define STEP .10    /* m between the points of a course */
#define WINDOW .3   /* m on either side over which a bend is measured */
#define SHARP .6    /* rad: a turn of the feet and not a bend (ours), */
#define BLUNT .5    /* and the tangent of less: most turns are none, and cost no angle */
#define SLOWEST .6  /* m/s: nobody creeps round a corner (ours) */
#define PLANNED .85 /* people brake earlier than they need (Giannakopoulos et al. 2026) */
#define LOOK .20    /* m: how far ahead the eyes are, plus .10 s of way (ours) */
#define LOOK_TIME .10
#define ASTRAY .6   /* m off his way: who is further off, round somebody, looks on ahead, (ours) */
#define LOOK_ON 1.5 /* m for each further one: he joins it aslant and does not turn back to it */
#define BESIDE .5   /* m from the end of his way, abreast of it: further is not there (ours) */
#define SEARCH .8   /* m of way in which the nearest point is looked for */
#define SETTLE 4.0  /* 1/s: speed by what is left in the last steps (ours) */
#define NEARLY .05  /* m before a length at which it is reached */
#define LONG 30.0   /* s: nobody runs longer */
#define CORNER_NEAR .15 /* m before a corner at which the feet are planted at the latest */

static struct vec2 piece_way(const struct path *path, size_t i)
{
    return vec2_sub(path->at[i + 1], path->at[i]);
}

static bool is_sharp(const struct path *path, size_t i)
{
    if (i == 0 || i + 1 >= path->count) {
        return false;
    }
    struct vec2 in = piece_way(path, i - 1), out = piece_way(path, i);
    bool blunt = fabs(vec2_cross(in, out)) < BLUNT * vec2_dot(in, out);
    return !blunt && vec2_angle(in, out) > SHARP;
}

/* The turn over WINDOW metres on either side of a point, as far as no foot is planted there, and
 * how long that piece of way is. */
static double bend_at(const struct path *path, size_t i, double *length)
{
    size_t a = i, b = i;
    while (a > 0 && path->along[i] - path->along[a] < WINDOW && !is_sharp(path, a)) {
        a--;
    }
    while (b + 1 < path->count && path->along[b] - path->along[i] < WINDOW && !is_sharp(path, b)) {
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

/* The turns that are planted. Each is done in one step, which needs its room on either side. */
static void find_corners(struct arena *arena, struct course *course, const struct gait *gait)
{
    const struct path *path = &course->path;
    course->corner = arena_array(arena, struct corner, path->count);
    for (size_t i = 1; i + 1 < path->count; i++) {
        if (is_sharp(path, i)) {
            struct vec2 in = vec2_unit(piece_way(path, i - 1)), out = vec2_unit(piece_way(path, i));
            double share = motion_turn_share(vec2_angle(in, out));
            course->corner[course->corners++] =
                (struct corner){path->along[i], real_max(SLOWEST, gait->sprint * share), out};
        }
    }
}

/* No faster into a corner than it is left, from where the foot is planted. */
static void cap_corner(struct course *course, size_t i)
{
    struct path *path = &course->path;
    const struct corner *corner = &course->corner[i];
    size_t k = 0;
    while (path->along[k] < corner->along) {
        k++;
    }
    struct vec2 in = vec2_unit(piece_way(path, k - 1));
    double lead = motion_plant_lead(corner->speed, vec2_distance(in, corner->out));
    for (size_t j = k; j < path->count && corner->along - path->along[j] <= lead; j--) {
        course->cap[j] = real_min(course->cap[j], corner->speed);
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
    find_corners(arena, &course, gait);
    for (size_t i = 0; i < course.corners; i++) {
        cap_corner(&course, i);
    }
    for (size_t i = path->count - 1; i > 0; i--) {
        double gap = path->along[i] - path->along[i - 1];
        double before = real_sqrt(course.cap[i] * course.cap[i] + 2 * PLANNED * gait->brake * gap);
        course.cap[i - 1] = real_min(course.cap[i - 1], before);
    }
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
    return course->passed < course->corners ? course->corner[course->passed].along
                                            : path_length(&course->path);
}

double motion_along(const struct course *course, struct vec2 p)
{
    return nearest_ahead(course, p, real_min(next_stop(course), course->along + SEARCH));
}

static bool is_to_turn(const struct course *course, const struct mover *mover,
                       const struct gait *gait, double along)
{
    if (course->passed == course->corners || mover->plant.left > 0) {
        return false;
    }
    const struct corner *corner = &course->corner[course->passed];
    double left = corner->along - along, speed = vec2_length(mover->v);
    if (left > SEARCH) {
        return false;
    }
    struct mover turned = *mover;
    motion_plant(&turned, gait, corner->out, corner->speed);
    return left < real_max(CORNER_NEAR, speed * turned.plant.left / 2);
}

bool motion_at_corner(const struct course *course, const struct mover *mover,
                      const struct gait *gait)
{
    return course->passed < course->corners &&
           course->along + SEARCH > course->corner[course->passed].along &&
           is_to_turn(course, mover, gait, motion_along(course, mover->at));
}

void motion_progress(struct course *course, struct mover *mover, const struct gait *gait)
{
    course->along = motion_along(course, mover->at);
    if (is_to_turn(course, mover, gait, course->along)) {
        const struct corner *corner = &course->corner[course->passed++];
        motion_plant(mover, gait, corner->out, corner->speed);
        course->along = corner->along;
    }
    course->piece = piece_at(&course->path, course->piece, course->along);
}

struct vec2 motion_wish(const struct course *course, const struct mover *mover,
                        const struct gait *gait, double end_speed)
{
    double length = path_length(&course->path), speed = vec2_length(mover->v);
    double along = motion_along(course, mover->at);
    double off = vec2_distance(mover->at, point_ahead(course, along, false));
    double look = along + LOOK + LOOK_TIME * speed + LOOK_ON * real_max(0, off - ASTRAY);
    bool last = course->passed == course->corners;
    struct vec2 target =
        point_ahead(course, last ? look : real_min(look, next_stop(course)), end_speed > 0);
    double far = vec2_distance(mover->at, course->path.at[course->path.count - 1]);
    double left = real_max(length - along, end_speed > 0 ? 0 : far - BESIDE);
    double bend = real_min(cap_at(course, course->along), cap_at(course, along)); /* from here on */
    double limit = real_min(gait->top, bend);
    double brakes = real_max(0, left - motion_plant_lead(end_speed, course->turn));
    limit = real_min(limit, real_sqrt(end_speed * end_speed + 2 * PLANNED * gait->brake * brakes));
    if (end_speed <= 0) {
        limit = real_min(limit, SETTLE * far + .02);
        if (left > .3) {
            limit = real_max(limit, .3);
        }
    }
    return vec2_scale(vec2_unit(vec2_sub(target, mover->at)), limit);
}

struct vec2 motion_follow(struct course *course, struct mover *mover, const struct gait *gait,
                          double end_speed)
{
    motion_progress(course, mover, gait);
    return motion_wish(course, mover, gait, end_speed);
}

double motion_course_time(const struct course *course, struct mover mover, const struct gait *gait,
                          double end_speed, double along, struct mover *there)
{
    struct course copy = *course;
    const double dt = 1.0 / 60, last = along - NEARLY;
    double t = 0, before = copy.along;
    motion_progress(&copy, &mover, gait);
    while (copy.along < last && t < LONG) {
        struct mover soon = {.at = vec2_along(mover.at, mover.v, dt), .v = mover.v};
        motion_advance(&mover, gait, motion_wish(&copy, &soon, gait, end_speed), dt);
        t += dt;
        before = copy.along;
        motion_progress(&copy, &mover, gait);
    }
    if (there) {
        *there = mover;
    }
    double over = copy.along - last, gained = copy.along - before;
    return over > 0 && gained > over ? t - dt * over / gained : t;
}
