/* SPDX-License-Identifier: MIT */
/* spot: where each spot is on each court. Takes a court's numbers, gives points in metres. The
 * places are in words in spots.def's sources; how they became numbers stands here. */
#include <math.h>

#include "base/diag.h"
#include "base/real.h"
#include "floor/court/court.h"

static const struct spot_row rows[SPOT_COUNT] = {
#define SPOT(symbol, word, sided, perimeter, source)                                               \
    [SPOT_##symbol] = {word, sided,                                                                \
                       SPOT_##symbol == SPOT_HIGH_POST || SPOT_##symbol == SPOT_HALF_COURT,        \
                       perimeter, EXPLAINED(source)},
#include "floor/court/spots.def"
#undef SPOT
};

const struct spot_row *spot_row(enum spot spot)
{
    return &rows[spot];
}

/* One foot outside the arc, or outside the circle that stands for it. */
static double ring_of_spots(const struct court *court)
{
    return court->perimeter + FEET;
}

static double slot_x(const struct court *court)
{
    return real_max(court->lane_half_width + FEET, 8 * FEET);
}

static double corner_x(const struct court *court)
{
    double straight = court->arc > 0 ? court->straight : court->perimeter;
    return real_min(straight + FEET, court->half_width - 1.5 * FEET);
}

static double height_at(const struct court *court, double x)
{
    double r = ring_of_spots(court);
    return real_sqrt(r * r - x * x);
}

static struct vec2 wing(const struct court *court)
{
    double x = height_at(court, court->free_throw); /* the same square, the other leg */
    return vec2_of(real_min(x, court->half_width - 3 * FEET), court->free_throw);
}

static double block_y(const struct court *court)
{
    return (court->block_near + court->block_far) / 2;
}

/* The second space from the baseline. Where a mark stands below the block (FIBA) the first space is
 * below the block too; in the American codes it is the one above it. */
static double second_space_y(const struct court *court)
{
    bool below = court->mark[0] < court->block_near;
    return ((below ? court->block_far : court->mark[0]) + court->mark[1]) / 2;
}

/* Right side; what has no side stands on the axis. */
static struct vec2 right_spot(const struct court *court, enum spot spot)
{
    double lane = court->lane_half_width, outside_lane = lane + 1.5 * FEET;
    switch (spot) {
    case SPOT_TOP:
        return vec2_of(0, ring_of_spots(court));
    case SPOT_WING:
        return wing(court);
    case SPOT_SLOT:
        return vec2_of(slot_x(court), height_at(court, slot_x(court)));
    case SPOT_CORNER:
        return vec2_of(corner_x(court), court->baseline + 3 * FEET);
    case SPOT_ELBOW:
        return vec2_of(court->free_throw_half, court->free_throw);
    case SPOT_HIGH_POST:
        return vec2_of(court->free_throw_half, court->free_throw + FEET);
    case SPOT_BLOCK:
    case SPOT_LOW_POST:
        return vec2_of(outside_lane, block_y(court));
    case SPOT_MID_POST:
        return vec2_of(outside_lane, (block_y(court) + court->free_throw) / 2);
    case SPOT_SHORT_CORNER:
        return vec2_of((lane + corner_x(court)) / 2, 0);
    case SPOT_DUNKER:
        return vec2_of(lane + 2 * FEET, court->baseline + 4 * FEET);
    case SPOT_HASH:
        return vec2_of(court->half_width - 3 * FEET, court->hash);
    case SPOT_FRONT_OF_RIM:
        return vec2_of(1.5 * FEET, 3 * FEET);
    case SPOT_LANE:
        return vec2_of(lane / 2, (court->baseline + court->free_throw) / 2);
    case SPOT_BASELINE:
        return vec2_of(0, court->baseline + 3 * FEET);
    case SPOT_SIDELINE:
        return vec2_of(court->half_width - 3 * FEET, (court->baseline + court->half_court) / 2);
    case SPOT_LANE_SPACE:
        return vec2_of(outside_lane, second_space_y(court));
    case SPOT_HALF_COURT:
        return vec2_of(court->half_width - 3 * FEET, court->half_court);
    case SPOT_CENTRE:
        return vec2_of(0, court->half_court);
    case SPOT_NAIL:
    case SPOT_FREE_THROW_LINE:
        return vec2_of(0, court->free_throw);
    case SPOT_RIM:
    case SPOT_COUNT:
        break;
    }
    return vec2_of(0, 0);
}

struct vec2 court_spot(const struct court *court, enum spot spot, enum side side)
{
    struct vec2 p = right_spot(court, spot);
    if (side == SIDE_LEFT) {
        p.x = 0 - p.x; /* never -0 */
    } else if (side != SIDE_RIGHT && (rows[spot].optional || !rows[spot].sided)) {
        p.x = 0;
        p.y = spot == SPOT_HIGH_POST ? court->free_throw : p.y;
    }
    return p;
}

enum spot court_nearest_perimeter(const struct court *court, struct vec2 p, enum side *side,
                                  double *far)
{
    enum spot nearest = SPOT_TOP;
    double least = INFINITY;
    enum side its_side = SIDE_NONE;
    for (int i = 0; i < SPOT_COUNT; i++) {
        if (!rows[i].perimeter) {
            continue;
        }
        enum side sides = !rows[i].sided ? SIDE_NONE : p.x < 0 ? SIDE_LEFT : SIDE_RIGHT;
        double square = vec2_square(vec2_sub(court_spot(court, (enum spot)i, sides), p));
        if (square < least) {
            least = square;
            nearest = (enum spot)i;
            its_side = sides;
        }
    }
    if (side) {
        *side = its_side;
    }
    if (far) {
        *far = real_sqrt(least);
    }
    return nearest;
}
