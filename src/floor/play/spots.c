/* SPDX-License-Identifier: MIT */
/* spots: which spot is meant where none is named: one that nobody has, of a side or all round the
 * perimeter; the next one along the walk from corner to corner. */
#include "floor/play/resolve.h"

#include <math.h>

#include "base/real.h"

#define EMPTY (10 * FEET)  /* a spot is empty with nobody nearer: under the 12 ft of space.close */
#define CROWDED (4 * FEET) /* when no spot is that empty, nobody on it must do */
#define ELSEWHERE (5 * FEET) /* a spot nearer than this is where the player stands already */

/* Nobody but `mover` is planned within `room` of p. */
static bool is_empty(const struct maker *m, struct vec2 p, body mover, double room)
{
    for (body b = 0; b < BODY_COACH; b++) {
        if (b != mover && on_floor(m, b) && vec2_distance(m->flow.at[b], p) < room) {
            return false;
        }
    }
    return true;
}

struct candidate {
    enum spot spot;
    enum side side;
};

static void note_side_spot(struct maker *m, const struct place *place, body mover,
                           const struct goal *goal)
{
    if (mover >= BODY_COUNT || note_is_of_mirror(m)) {
        return;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_DEFAULT, place->span, "no spot is written: %s goes to %s %s",
                 who_text(m, mover).at, goal->side == SIDE_LEFT ? "left" : "right",
                 spot_row(goal->spot)->word);
    diag_help(m->diags, diag, "name another where it matters: `%s wing`",
              goal->side == SIDE_LEFT ? "left" : "right");
}

/* Who has the ball goes where it can be passed from, the others where they are out of the way. */
bool spots_of_side(struct maker *m, const struct place *place, const struct voice *voice,
                   body mover, struct goal *goal)
{
    static const enum spot away[] = {SPOT_CORNER, SPOT_WING, SPOT_SLOT};
    static const enum spot with_ball[] = {SPOT_WING, SPOT_SLOT, SPOT_CORNER};
    const enum spot *order = mover == m->flow.holder ? with_ball : away;
    enum side side;
    if (!where_settle_side(m, where_said_side(place->side, voice), place->span, mover, "side",
                           &side)) {
        return false;
    }
    for (size_t i = 0; i < sizeof away / sizeof *away; i++) {
        if (is_empty(m, court_spot(m->play->court, order[i], side), mover, CROWDED)) {
            *goal = where_spot(m, order[i], side);
            note_side_spot(m, place, mover, goal);
            return true;
        }
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_SPOT, place->span,
                                 "corner, wing and slot on that side are all taken");
    diag_help(m->diags, diag, "name the spot: right wing");
    return false;
}

/* The walk from one corner to the other. */
static const struct candidate walk[] = {{SPOT_CORNER, SIDE_LEFT},
                                        {SPOT_WING, SIDE_LEFT},
                                        {SPOT_TOP, SIDE_NONE},
                                        {SPOT_WING, SIDE_RIGHT},
                                        {SPOT_CORNER, SIDE_RIGHT}};
enum { WALK_COUNT = sizeof walk / sizeof *walk, WALK_TOP = 2 };

static int walk_index(const struct maker *m, struct vec2 at)
{
    int best = 0;
    double least = HUGE_VAL;
    for (int i = 0; i < WALK_COUNT; i++) {
        double far = vec2_distance(court_spot(m->play->court, walk[i].spot, walk[i].side), at);
        if (far < least) {
            least = far;
            best = i;
        }
    }
    return best;
}

/* -1, 1: the way along the walk; 0: none. */
static int walk_way(enum way way, int here, bool mirrored)
{
    if (way == WAY_LEFT || way == WAY_RIGHT) {
        return (way == WAY_LEFT) != mirrored ? -1 : 1;
    }
    int down = here < WALK_TOP ? -1 : here > WALK_TOP;
    return way == WAY_DOWN ? down : -down;
}

/* The player stands on none of them, and this one lies above him. */
static bool below_spot(const struct maker *m, body mover, int index)
{
    struct vec2 at = m->flow.at[mover];
    struct vec2 spot = court_spot(m->play->court, walk[index].spot, walk[index].side);
    return spot.y - at.y > 3 * FEET; /* more than beside it */
}

bool spots_next(struct maker *m, const struct place *place, const struct voice *voice, body mover,
                struct goal *goal)
{
    int here = mover < BODY_COUNT ? walk_index(m, m->flow.at[mover]) : 0;
    int way = mover < BODY_COUNT ? walk_way(place->way, here, voice->mirrored) : 0;
    int next = here + way;
    if (place->way == WAY_UP && mover < BODY_COUNT && below_spot(m, mover, here)) {
        next = here; /* lifts from the elbow: to the nearest spot above him */
        way = 1;
    }
    if (way == 0 || next < 0 || next >= WALK_COUNT) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_SPOT, place->span,
                                     "there is no next spot that way from where %s is",
                                     mover < BODY_COUNT ? who_text(m, mover).at : "that player");
        diag_help(m->diags, diag,
                  "the spots run left corner, left wing, top, right wing, right "
                  "corner; name one: left wing");
        return false;
    }
    *goal = where_spot(m, walk[next].spot, walk[next].side);
    return true;
}

static const struct candidate perimeter[] = {{SPOT_TOP, SIDE_NONE},    {SPOT_SLOT, SIDE_LEFT},
                                             {SPOT_WING, SIDE_LEFT},   {SPOT_CORNER, SIDE_LEFT},
                                             {SPOT_SLOT, SIDE_RIGHT},  {SPOT_WING, SIDE_RIGHT},
                                             {SPOT_CORNER, SIDE_RIGHT}};
enum { PERIMETER_COUNT = sizeof perimeter / sizeof *perimeter };

#define LONG_PASS 8.2 /* m: from there on a pass gives the defender time (ours) */
#define LONG_COST 3.0 /* m of way that a metre more of it is worth */

/* How far round the place is; infinite when it will not do. A tie goes to the side the mover is
 * on; in the exact middle to the left, or the right in a mirrored play. */
static double perimeter_cost(const struct maker *m, const struct candidate *spot, body mover,
                             bool away, double room)
{
    struct vec2 p = court_spot(m->play->court, spot->spot, spot->side);
    struct vec2 from = m->flow.at[mover];
    double far = vec2_distance(p, from);
    if (!is_empty(m, p, mover, room) || far < ELSEWHERE) {
        return HUGE_VAL;
    }
    if (away && m->flow.holder < BODY_COUNT && m->flow.holder != mover) {
        struct vec2 ball = m->flow.at[m->flow.holder];
        if (vec2_distance(p, ball) <= vec2_distance(from, ball)) {
            return HUGE_VAL;
        }
        far += LONG_COST * real_max(0, vec2_distance(p, ball) - LONG_PASS);
    }
    enum side second = m->plain->mirrored ? SIDE_LEFT : SIDE_RIGHT;
    return far + (spot->side == second ? 1e-9 : 0);
}

/* Who stands on a spot of the perimeter may fade to where he is: he has left it by then. */
static const struct candidate *own_perimeter(const struct maker *m, body mover)
{
    for (size_t i = 0; i < PERIMETER_COUNT; i++) {
        struct vec2 p = court_spot(m->play->court, perimeter[i].spot, perimeter[i].side);
        if (vec2_distance(p, m->flow.at[mover]) < ELSEWHERE) {
            return &perimeter[i];
        }
    }
    return NULL;
}

bool spots_empty(struct maker *m, body mover, bool away, struct span span, struct goal *goal)
{
    static const double rooms[] = {EMPTY, CROWDED};
    for (size_t r = 0; r < 2; r++) {
        const struct candidate *best = NULL;
        double least = HUGE_VAL;
        for (size_t i = 0; i < PERIMETER_COUNT; i++) {
            double cost = perimeter_cost(m, &perimeter[i], mover, away, rooms[r]);
            if (cost < least) {
                least = cost;
                best = &perimeter[i];
            }
        }
        if (best) {
            *goal = where_spot(m, best->spot, best->side);
            return true;
        }
    }
    const struct candidate *own = away ? own_perimeter(m, mover) : NULL;
    if (own) {
        *goal = where_spot(m, own->spot, own->side);
        return true;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_SPOT, span,
                                 "no empty spot on the perimeter for %s", who_text(m, mover).at);
    diag_help(m->diags, diag, "say where: to left corner");
    return false;
}
