/* SPDX-License-Identifier: MIT */
/* court: the floors of the codes as tables, and plain questions about them. Takes courts.def; knows
 * nobody who plays on it. */
#include "floor/court/court.h"

#include <math.h>

#include "base/diag.h"
#include "base/real.h"

/* How far outside the line a throw-in is taken from: common practice, no source. */
#define OUTSIDE (2 * FEET)
#define STEP_IN .9 /* m, 3 ft (ours) */
/* "A line: its nearest point, 3 ft inside": common practice, no source. */
#define INSIDE_LINE (3 * FEET)

static const struct court courts[COURT_COUNT] = {
#define COURT(symbol, word_, name_, unit, half_width_, ring_y, board_y, board_half, lane_half,     \
              free_throw_y, free_throw_half_, circle_, arc_, straight_, junction_, perimeter_,     \
              half_court_y, no_charge_, line_, ring_, ring_z, near_y, far_y, depth_, mark1, mark2, \
              mark3, mark_depth_, hash_y, inner_circle, lane_s, throw_in_s, backcourt_s, shot_s,   \
              close_s, source_)                                                                    \
    [COURT_##symbol] = {                                                                           \
        .word = (word_),                                                                           \
        .name = (name_),                                                                           \
        .half_width = (half_width_) * (unit),                                                      \
        .baseline = -(ring_y) * (unit),                                                            \
        .half_court = ((half_court_y) - (ring_y)) * (unit),                                        \
        .board = ((board_y) - (ring_y)) * (unit),                                                  \
        .board_half_width = (board_half) * (unit),                                                 \
        .lane_half_width = (lane_half) * (unit),                                                   \
        .free_throw = ((free_throw_y) - (ring_y)) * (unit),                                        \
        .free_throw_half = (free_throw_half_) * (unit),                                            \
        .circle = (circle_) * (unit),                                                              \
        .arc = (arc_) * (unit),                                                                    \
        .straight = (straight_) * (unit),                                                          \
        .junction = (junction_) * (unit),                                                          \
        .perimeter = (perimeter_) * (unit),                                                        \
        .no_charge = (no_charge_) * (unit),                                                        \
        .line = (line_) * (unit),                                                                  \
        .ring = (ring_) * (unit),                                                                  \
        .ring_height = (ring_z) * (unit),                                                          \
        .block_near = ((near_y) - (ring_y)) * (unit),                                              \
        .block_far = ((far_y) - (ring_y)) * (unit),                                                \
        .block_depth = (depth_) * (unit),                                                          \
        .mark = {((mark1) - (ring_y)) * (unit), ((mark2) - (ring_y)) * (unit),                     \
                 ((mark3) - (ring_y)) * (unit)},                                                   \
        .mark_depth = (mark_depth_) * (unit),                                                      \
        .hash = ((hash_y) - (ring_y)) * (unit),                                                    \
        .centre_inner_circle = (inner_circle),                                                     \
        .lane_seconds = (lane_s),                                                                  \
        .throw_in_seconds = (throw_in_s),                                                          \
        .backcourt_seconds = (backcourt_s),                                                        \
        .shot_clock = (shot_s),                                                                    \
        .closely_guarded = (close_s),                                                              \
        .source = EXPLAINED(source_),                                                              \
    },
#include "floor/court/courts.def"
#undef COURT
};

const struct court *court_of(enum court_code code)
{
    return &courts[code];
}

bool court_find(struct str word, enum court_code *code)
{
    for (int i = 0; i < COURT_COUNT; i++) {
        if (court_same_word(word, courts[i].word)) {
            *code = (enum court_code)i;
            return true;
        }
    }
    return false;
}

static char next_letter(const char *at, size_t size, size_t *i)
{
    while (*i < size && (at[*i] == '-' || at[*i] == ' ')) {
        ++*i;
    }
    if (*i >= size) {
        return 0;
    }
    char c = at[(*i)++];
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

bool court_same_word(struct str written, const char *word)
{
    struct str known = str_of(word);
    size_t i = 0, k = 0;
    for (;;) {
        char a = next_letter(written.at, written.size, &i);
        char b = next_letter(known.at, known.size, &k);
        if (a != b) {
            return false;
        }
        if (!a) {
            return true;
        }
    }
}

static double far_baseline(const struct court *court)
{
    return 2 * court->half_court - court->baseline;
}

struct vec2 court_mirror_back(const struct court *court, struct vec2 p)
{
    return vec2_of(p.x, 2 * court->half_court - p.y);
}

struct vec2 court_line_point(const struct court *court, enum spot spot, enum side side,
                             struct vec2 p)
{
    double across = court->half_width - INSIDE_LINE;
    double low = court->baseline + INSIDE_LINE, high = far_baseline(court) - INSIDE_LINE;
    double x = real_clamp(p.x, -across, across), y = real_clamp(p.y, low, high);
    if (spot == SPOT_SIDELINE) {
        bool left = side == SIDE_LEFT || (side != SIDE_RIGHT && p.x < 0);
        return vec2_of(left ? -across : across, y);
    }
    if (spot == SPOT_FREE_THROW_LINE) {
        return vec2_of(real_clamp(p.x, -court->free_throw_half, court->free_throw_half),
                       court->free_throw);
    }
    return vec2_of(x, spot == SPOT_HALF_COURT ? court->half_court : low);
}

struct vec2 court_outside(const struct court *court, struct vec2 p)
{
    double side = court->half_width - fabs(p.x);
    double near = p.y - court->baseline, far = far_baseline(court) - p.y;
    if (side < near && side < far) {
        double x = court->half_width + OUTSIDE;
        return vec2_of(p.x < 0 ? -x : x, p.y);
    }
    return vec2_of(p.x, near <= far ? court->baseline - OUTSIDE : far_baseline(court) + OUTSIDE);
}

struct vec2 court_stepped_in(const struct court *court, struct vec2 p)
{
    double side = court->half_width - STEP_IN, near = court->baseline + STEP_IN;
    return vec2_of(real_clamp(p.x, -side, side),
                   real_clamp(p.y, near, far_baseline(court) - STEP_IN));
}

bool court_inside(const struct court *court, struct vec2 p, double margin)
{
    return fabs(p.x) <= court->half_width - margin && p.y >= court->baseline + margin &&
           p.y <= far_baseline(court) - margin;
}

bool court_in_lane(const struct court *court, struct vec2 p)
{
    return court_in_wider_lane(court, p, 0);
}

bool court_in_wider_lane(const struct court *court, struct vec2 p, double beyond)
{
    return fabs(p.x) <= court->lane_half_width + beyond && p.y >= court->baseline &&
           p.y <= court->free_throw + beyond;
}
