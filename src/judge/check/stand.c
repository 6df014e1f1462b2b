/* SPDX-License-Identifier: MIT */
/* stand: see stand.h. */
#include "judge/check/stand.h"

#include <math.h>

#include "base/real.h"

#define SHARED (6 * FEET)  /* nearer than this two do not share a place; ours */
#define AT_POST (4 * FEET) /* nearer than this somebody is at a post; ours */

bool stand_on_floor(const struct checker *checker, body b, size_t sample)
{
    const struct court *court = checker->play->court;
    struct vec2 at = look_at(checker->segment, b, sample);
    if (look_speed(checker->segment, b, sample) > REST_SPEED) {
        return false; /* as look_idle says, and sooner */
    }
    /* spacing is for the perimeter and the posts: who is in the lane is on his way */
    return court_inside(court, at, 0) && !look_inside_player(checker, at) &&
           look_idle(checker, b, sample) &&
           !look_shot(checker->segment, (double)sample * RUN_SAMPLE);
}

static double seconds_of(const struct rest *rest)
{
    return (double)(rest->to - rest->from) * RUN_SAMPLE;
}

bool stand_lasts(const struct rest *rest)
{
    return seconds_of(rest) >= REST_TIME;
}

static bool long_enough(const struct checker *checker, const struct rest *rest)
{
    bool at_end = rest->to == checker->segment->samples && look_last(checker);
    return seconds_of(rest) >= (at_end ? END_REST : REST_TIME);
}

bool stand_rest(const struct checker *checker, stand_so *so, const void *about, struct rest *rest)
{
    rest->from = rest->to = 0;
    for (size_t i = 0; i < checker->segment->samples; i++) {
        if (so(checker, about, i)) {
            rest->to = i + 1;
        } else if (long_enough(checker, rest)) {
            return true;
        } else {
            rest->from = rest->to = i + 1;
        }
    }
    return long_enough(checker, rest);
}

/* Far enough from every team-mate as they stand, and on no place that one of them ends at. */
static bool is_free(const struct checker *checker, struct vec2 there, body who, size_t sample,
                    double limit)
{
    const struct segment *segment = checker->segment;
    double ends = real_min(limit, SHARED);
    for (body b = 0; b < BODY_COACH; b++) {
        if (b == who || !look_plays(checker, b)) {
            continue;
        }
        if (vec2_near(look_at(segment, b, sample), there, limit - HALF_FOOT) ||
            vec2_near(look_at(segment, b, segment->samples - 1), there, ends - HALF_FOOT)) {
            return false;
        }
    }
    return true;
}

bool stand_is_free(const struct checker *checker, struct vec2 there, body who, size_t sample)
{
    return is_free(checker, there, who, sample, SHARED);
}

/* The nearest of these that is free, or NULL. */
static const char *nearest_free(struct checker *checker, const enum spot *spots, size_t count,
                                body who, size_t sample, double limit)
{
    struct vec2 at = look_at(checker->segment, who, sample);
    const char *nearest = NULL;
    double least = 20 * FEET; /* farther is another play */
    for (size_t i = 0; i < count; i++) {
        for (int k = 0; k < (spots[i] == SPOT_TOP ? 1 : 2); k++) {
            enum side side = spots[i] == SPOT_TOP ? SIDE_NONE : look_side_in_turn(checker, k);
            struct vec2 there = court_spot(checker->play->court, spots[i], side);
            double far = vec2_distance(there, at);
            if (far > 2 * HALF_FOOT && far < least && is_free(checker, there, who, sample, limit)) {
                least = far;
                nearest = look_spot(checker, spots[i], side);
            }
        }
    }
    return nearest;
}

/* At a post, and nearer to it than to any place outside. */
static bool is_at_post(const struct checker *checker, struct vec2 at)
{
    static const enum spot posts[] = {SPOT_BLOCK, SPOT_MID_POST, SPOT_ELBOW, SPOT_HIGH_POST};
    double inside = real_min(stand_off_spot(checker, at), AT_POST);
    bool post_nearer = false;
    for (size_t i = 0; i < 2 * sizeof posts / sizeof *posts; i++) {
        struct vec2 post =
            court_spot(checker->play->court, posts[i / 2], i % 2 ? SIDE_RIGHT : SIDE_LEFT);
        post_nearer = post_nearer || vec2_near(post, at, inside);
    }
    return post_nearer;
}

const char *stand_where_to(struct checker *checker, body who, size_t sample, double limit)
{
    static const enum spot outside[] = {SPOT_CORNER, SPOT_WING, SPOT_SLOT, SPOT_TOP};
    static const enum spot inside[] = {SPOT_SHORT_CORNER, SPOT_BLOCK, SPOT_ELBOW};
    enum { OUT = sizeof outside / sizeof *outside, POSTS = sizeof inside / sizeof *inside };
    bool post = is_at_post(checker, look_at(checker->segment, who, sample));
    const char *spot = post ? nearest_free(checker, inside, POSTS, who, sample, limit)
                            : nearest_free(checker, outside, OUT, who, sample, limit);
    return spot   ? spot
           : post ? nearest_free(checker, outside, OUT, who, sample, limit)
                  : nearest_free(checker, inside, POSTS, who, sample, limit);
}

const char *stand_by_lane(struct checker *checker, body who, size_t sample)
{
    static const enum spot beside[] = {SPOT_BLOCK, SPOT_SHORT_CORNER, SPOT_ELBOW, SPOT_CORNER};
    enum side near = look_side(checker, look_at(checker->segment, who, sample).x);
    enum side far = near == SIDE_LEFT ? SIDE_RIGHT : SIDE_LEFT;
    for (size_t i = 0; i < 2 * sizeof beside / sizeof *beside; i++) {
        enum side side = i % 2 ? far : near;
        struct vec2 there = court_spot(checker->play->court, beside[i / 2], side);
        if (stand_is_free(checker, there, who, sample)) {
            return look_spot(checker, beside[i / 2], side);
        }
    }
    return NULL;
}

double stand_off_spot(const struct checker *checker, struct vec2 at)
{
    double far;
    court_nearest_perimeter(checker->play->court, at, NULL, &far);
    return far;
}

const struct task *stand_came_by(const struct checker *checker, body who, double t)
{
    const struct segment *segment = checker->segment;
    const struct task *latest = NULL;
    for (; segment && !latest; segment = segment->before) {
        double when = TIME_NEVER;
        for (size_t i = 0; i < segment->tasks; i++) {
            const struct task *task = segment_task(segment, i);
            double started = segment->record[i].time[MOMENT_STARTED];
            bool moved = task->kind != TASK_HOLD && task->kind != TASK_PASS &&
                         task->kind != TASK_SHOOT && task->sentence;
            if (moved && task->who == who && started >= 0 && started <= t && started >= when) {
                when = started;
                latest = task;
            }
        }
        t = segment->begins;
    }
    return latest;
}

struct span stand_line(const struct checker *checker, body who, double t, struct span otherwise)
{
    const struct task *task = stand_came_by(checker, who, t);
    const struct block *block = checker->play->block;
    for (size_t i = 0; !task && block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SETTING && form->setting->setting == SETTING_START) {
            return form->span;
        }
    }
    return task ? task->span : otherwise;
}

const char *stand_goes_by(const struct checker *checker, body who, double t)
{
    const struct task *task = stand_came_by(checker, who, t);
    bool with_ball = task ? look_uses_ball(task) : segment_holder(checker->segment, t) == who;
    return with_ball ? "dribbles" : "goes";
}
