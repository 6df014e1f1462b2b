/* SPDX-License-Identifier: MIT */
/* formation: who stands where at the start. A table in terms of spots; no source numbers any of
 * them, they are common practice. */
#include "base/real.h"
#include "floor/court/court.h"

#define AT(place, on)                                                                              \
    {                                                                                              \
        .spot = SPOT_##place, .side = SIDE_##on, .between = SPOT_COUNT                             \
    }
#define AXIS(place) AT(place, NONE)
#define ABOVE_SPOT(place, on, feet)                                                                \
    {                                                                                              \
        .spot = SPOT_##place, .side = SIDE_##on, .between = SPOT_COUNT, .above = (feet)*FEET       \
    }
#define BETWEEN(place, other, on)                                                                  \
    {                                                                                              \
        .spot = SPOT_##place, .side = SIDE_##on, .between = SPOT_##other                           \
    }
#define BACK(place, on)                                                                            \
    {                                                                                              \
        .spot = SPOT_##place, .side = SIDE_##on, .between = SPOT_COUNT, .backcourt = true          \
    }
#define THROWS_IN(place, on, back)                                                                 \
    {                                                                                              \
        .spot = SPOT_##place, .side = SIDE_##on, .between = SPOT_COUNT, .backcourt = (back),       \
        .out_of_bounds = true, .ball = true                                                        \
    }
#define ROUND_CIRCLE(right_feet, above_feet)                                                       \
    {                                                                                              \
        .spot = SPOT_CENTRE, .between = SPOT_COUNT, .right = (right_feet)*FEET,                    \
        .above = (above_feet)*FEET                                                                 \
    }

static const struct formation formations[] = {
    {"five-out",
     "5-out",
     {AXIS(TOP), AT(WING, RIGHT), AT(WING, LEFT), AT(CORNER, RIGHT), AT(CORNER, LEFT)},
     false},
    {"four-out one-in",
     "4-out 1-in",
     {AT(SLOT, RIGHT), AT(SLOT, LEFT), AT(CORNER, LEFT), AT(CORNER, RIGHT), AT(BLOCK, LEFT)},
     false},
    {"three-out two-in",
     "3-out 2-in",
     {AXIS(TOP), AT(WING, RIGHT), AT(WING, LEFT), AT(BLOCK, RIGHT), AT(BLOCK, LEFT)},
     false},
    {"one-three-one",
     "1-3-1",
     {AXIS(TOP), AT(WING, RIGHT), AT(WING, LEFT), AXIS(NAIL), AT(BLOCK, RIGHT)},
     false},
    {"one-four high",
     "1-4 high",
     {AXIS(TOP), AT(WING, RIGHT), AT(WING, LEFT), AT(ELBOW, RIGHT), AT(ELBOW, LEFT)},
     false},
    {"one-four low",
     "1-4 low",
     {AXIS(TOP), AT(CORNER, RIGHT), AT(CORNER, LEFT), AT(BLOCK, RIGHT), AT(BLOCK, LEFT)},
     false},
    {"horns",
     NULL,
     {AXIS(TOP), AT(CORNER, RIGHT), AT(CORNER, LEFT), AT(ELBOW, RIGHT), AT(ELBOW, LEFT)},
     false},
    {"box",
     NULL,
     {AXIS(TOP), AT(BLOCK, RIGHT), AT(BLOCK, LEFT), AT(ELBOW, RIGHT), AT(ELBOW, LEFT)},
     false},
    {"stack",
     NULL,
     {AXIS(TOP), AT(BLOCK, RIGHT), AT(BLOCK, LEFT), ABOVE_SPOT(BLOCK, RIGHT, 4),
      ABOVE_SPOT(BLOCK, LEFT, 4)},
     false},
    {"baseline inbounds box",
     NULL,
     {AT(ELBOW, LEFT), AT(ELBOW, RIGHT), THROWS_IN(SHORT_CORNER, RIGHT, false), AT(BLOCK, RIGHT),
      AT(BLOCK, LEFT)},
     false},
    {"baseline inbounds stack",
     NULL,
     {AXIS(TOP), AT(ELBOW, RIGHT), THROWS_IN(SHORT_CORNER, RIGHT, false), AT(BLOCK, RIGHT),
      BETWEEN(BLOCK, ELBOW, RIGHT)},
     false},
    {"sideline inbounds",
     NULL,
     {AXIS(TOP), AT(CORNER, LEFT), THROWS_IN(HASH, RIGHT, false), AT(ELBOW, LEFT),
      AT(BLOCK, RIGHT)},
     false},
    {"press break",
     NULL,
     {BACK(ELBOW, LEFT), BACK(ELBOW, RIGHT), AXIS(HALF_COURT), THROWS_IN(SHORT_CORNER, RIGHT, true),
      AXIS(FRONT_OF_RIM)},
     true},
    {"free throw",
     NULL,
     {AXIS(NAIL), ABOVE_SPOT(WING, RIGHT, 3), ABOVE_SPOT(WING, LEFT, 3), AT(LANE_SPACE, RIGHT),
      AT(LANE_SPACE, LEFT)},
     false},
    {"jump ball",
     NULL,
     {ROUND_CIRCLE(0, 9), ROUND_CIRCLE(9, 0), ROUND_CIRCLE(-9, 0), ROUND_CIRCLE(0, -9),
      AXIS(CENTRE)},
     true},
};

size_t formation_count(void)
{
    return sizeof formations / sizeof *formations;
}

const struct formation *formation_at(size_t index)
{
    return &formations[index];
}

bool formation_find(struct str written, size_t *index)
{
    for (size_t i = 0; i < formation_count(); i++) {
        const struct formation *formation = &formations[i];
        if (court_same_word(written, formation->word) ||
            (formation->figures && court_same_word(written, formation->figures))) {
            *index = i;
            return true;
        }
    }
    return false;
}

struct vec2 formation_point(const struct court *court, const struct formation_spot *spot)
{
    struct vec2 p = court_spot(court, spot->spot, spot->side);
    if (spot->between != SPOT_COUNT) {
        p = vec2_mix(p, court_spot(court, spot->between, spot->side), 0.5);
    }
    p = vec2_add(p, vec2_of(spot->right, spot->above));
    if (spot->backcourt) {
        p = court_mirror_back(court, p);
    }
    return spot->out_of_bounds ? court_outside(court, p) : p;
}
