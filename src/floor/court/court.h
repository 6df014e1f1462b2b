/* SPDX-License-Identifier: MIT */
/* court: the floors of the codes, the spots on them, who stands where in each formation, and how
 * fast the players of a level are. Constant tables, each row with its source; no state.
 *
 * Metres from the floor point under the ring, x to the attackers' right, y toward half court. */
#ifndef FLOOR_COURT_COURT_H
#define FLOOR_COURT_COURT_H

#include <stdbool.h>
#include <stddef.h>

#include "base/geom/vec2.h"
#include "base/str.h"

enum court_code {
#define COURT(symbol, word, ...) COURT_##symbol,
#include "floor/court/courts.def"
#undef COURT
    COURT_COUNT
};

struct court {
    const char *word;  /* "high-school", as the setting `rules` says it */
    const char *name;  /* "High school (NFHS)" */
    double half_width; /* to the inner edge of the sideline */
    double baseline;   /* y of its inner edge: negative */
    double half_court; /* y of the middle of the division line */
    double board;      /* y of the backboard's face: negative */
    double board_half_width;
    double lane_half_width; /* to the outer edge of the lane line */
    double free_throw;      /* y of the free-throw line's far edge */
    double free_throw_half; /* half its length */
    double circle;          /* radius of the free-throw and centre circles */
    double arc;             /* radius of the three-point arc; 0: none */
    double straight;        /* x of the arc's straight parts */
    double junction;        /* y where straight and arc meet */
    double perimeter;       /* the radius that perimeter spots are counted from (arc, or 5.0 m) */
    double no_charge;       /* radius of the no-charge semicircle; 0: none */
    double line;            /* width of a line */
    double ring;            /* inner radius of the ring */
    double ring_height;     /* of its upper edge over the floor */
    double block_near, block_far,
        block_depth; /* the block mark: y of its edges, how far it sticks out */
    double mark[4];  /* y of the middle of the other lane marks; 0 ends the list */
    double mark_depth;
    double hash; /* y of the throw-in mark on the sideline */
    bool centre_inner_circle;
    /* time limits of the code, seconds; 0: none */
    double lane_seconds, throw_in_seconds, backcourt_seconds, shot_clock, closely_guarded;
    const char *source; /* where the numbers come from */
};

const struct court *court_of(enum court_code code);
bool court_find(struct str word, enum court_code *code);
/* The same word but for capitals, hyphens and spaces: "five out" is "five-out". */
bool court_same_word(struct str written, const char *word);

enum side { SIDE_NONE, SIDE_LEFT, SIDE_RIGHT, SIDE_BALL, SIDE_WEAK, SIDE_OPPOSITE };

/* SPOT(SYMBOL, "word", sided, perimeter, "source"): sided spots have a left and a right one. */
enum spot {
#define SPOT(symbol, word, sided, perimeter, source) SPOT_##symbol,
#include "floor/court/spots.def"
#undef SPOT
    SPOT_COUNT
};
struct spot_row {
    const char *word;
    bool sided;     /* needs a side: `left wing` */
    bool optional;  /* a side may be left out: `high post` */
    bool perimeter; /* counts as standing round the arc */
    const char *source;
};
const struct spot_row *spot_row(enum spot spot);
/* Where a spot is; `side` is LEFT or RIGHT for sided ones (else ignored, NONE for plain `high
 * post`, `lane`, `front of the rim` taken at x = 0). BASELINE and SIDELINE are lines: see
 * court_line_point. The free-throw line, baseline and sideline have no one point; they give their
 * middle. */
struct vec2 court_spot(const struct court *court, enum spot spot, enum side side);
struct vec2 court_mirror_back(const struct court *court,
                              struct vec2 p); /* over half court: backcourt */
/* The point of the baseline or a sideline (3 ft inside the floor), of the free-throw line or of
 * half court nearest to p; without a side the nearer sideline. */
struct vec2 court_line_point(const struct court *court, enum spot spot, enum side side,
                             struct vec2 p);
/* 2 ft outside the nearest boundary, level with p: where a throw-in is taken from. */
struct vec2 court_outside(const struct court *court, struct vec2 p);
/* Where who threw in from p comes onto the floor: 3 ft inside the line (ours). */
struct vec2 court_stepped_in(const struct court *court, struct vec2 p);
/* On the floor (both halves), at least `margin` inside every line. */
bool court_inside(const struct court *court, struct vec2 p, double margin);
bool court_in_lane(const struct court *court, struct vec2 p);
/* The same of a lane wider by `beyond` metres at its sides and its top; below 0: narrower. */
bool court_in_wider_lane(const struct court *court, struct vec2 p, double beyond);
/* The nearest perimeter spot (corner, wing, slot, top) to p and how far it is. */
enum spot court_nearest_perimeter(const struct court *court, struct vec2 p, enum side *side,
                                  double *far);

/* Formations: where 1 to 5 stand. */
struct formation_spot {
    enum spot spot;
    enum side side;
    bool backcourt, out_of_bounds;
    double above, right; /* metres above it (toward half court), to the right of it */
    enum spot between;   /* SPOT_COUNT: none; else half way to this spot, same side */
    bool ball;           /* has the ball at the start */
};
struct formation {
    const char *word;
    const char *figures; /* "5-out", or NULL */
    struct formation_spot at[5];
    bool full_floor;
};
size_t formation_count(void);
const struct formation *formation_at(size_t index);
bool formation_find(struct str written, size_t *index); /* capitals, hyphens, spaces: no matter */
struct vec2 formation_point(const struct court *court, const struct formation_spot *spot);

/* Zones and presses: home points by where the ball is. */
enum zone {
    ZONE_NONE,
#define ZONE(symbol, ...) ZONE_##symbol,
#define ZONE_ROW(...)
#include "floor/court/zones.def"
#undef ZONE
#undef ZONE_ROW
    ZONE_COUNT
};
enum { ZONE_DEFENDERS = 5 };
/* The places of the ball that the rows of a zone are for; a press has the last seven. */
enum zone_anchor {
    ANCHOR_TOP,
    ANCHOR_SLOT,
    ANCHOR_WING,
    ANCHOR_CORNER,
    ANCHOR_HIGH, /* the high post, in the middle */
    ANCHOR_BLOCK,
    ANCHOR_FRONT_COUNT,
    ANCHOR_THROW_IN = ANCHOR_FRONT_COUNT, /* being thrown in behind the far baseline */
    ANCHOR_BACK_DEEP,                     /* of the backcourt: in front of the far ring */
    ANCHOR_BACK_CORNER,
    ANCHOR_BACK_TOP, /* level with the far free-throw line */
    ANCHOR_BACK_WING,
    ANCHOR_HALF_MIDDLE,
    ANCHOR_HALF_SIDE,
    ANCHOR_COUNT
};
struct zone_row {
    const char *word;     /* "2-3" */
    const char *setting;  /* "zone 2-3", as the setting `defense` says it */
    const char *who;      /* "x1 left top, ..." */
    bool press;           /* of the full floor */
    enum zone falls_back; /* a press: what it is over half court */
    const char *source;
};
const struct zone_row *zone_row(enum zone zone);
bool zone_find(struct str setting, enum zone *zone); /* by its setting */
/* This defender (0 for x1) has no area but a man. */
bool zone_is_man(enum zone zone, int defender);

/* Where a defender of a zone is at home with the ball where it is: shares of a point, of the
 * three ways to stand at the ball. Between the rows they go over into each other, so that they
 * change no faster than a little faster than the ball; they add up to 1. */
struct zone_home {
    struct vec2 at; /* of the rows that name a point; (0, 0) when `point` is 0 */
    double point, ball, above, trap;
    double until; /* share of rows that send him to the ball until its man is there */
};
/* thrown_in: the ball is out of bounds. In a mirrored play the zone is mirrored too. */
void zone_homes(const struct court *court, enum zone zone, struct vec2 ball, bool thrown_in,
                bool mirrored, struct zone_home home[ZONE_DEFENDERS]);
/* The nearest place to the ball at which a zone still goes out to it. */
struct vec2 zone_reach(const struct court *court, enum zone zone, struct vec2 ball);
struct vec2 zone_anchor_point(const struct court *court, enum zone_anchor anchor); /* right side */

/* Levels: how fast, how quick, how far. Metres and seconds. */
enum level_code {
#define LEVEL(symbol, word, ...) LEVEL_##symbol,
#include "floor/court/levels.def"
#undef LEVEL
    LEVEL_COUNT
};
struct level {
    const char *word;   /* "u16 girls" */
    double sprint, tau; /* top speed m/s, time constant s of v = V(1 - e^(-t/tau)) */
    double jog, walk;   /* caps */
    double slide, backpedal;
    double dribble;                /* factor on speed with the ball */
    double pass;                   /* chest pass, m/s */
    double reaction;               /* s */
    double brake;                  /* m/s^2 */
    double catch_shot, catch_pass; /* s from catch to release */
    double step;                   /* a normal step, m */
    double height;                 /* m, for reach */
    double reach_jump;             /* m */
    const char *source;
};
const struct level *level_of(enum level_code code);
bool level_find(struct str written, enum level_code *code);

#endif
