/* SPDX-License-Identifier: MIT */
/* where: the words for a place as a goal. What hangs on where somebody is in the words (a missing
 * side, the ball's side, an empty spot, the next spot) is settled here, on planned positions; what
 * hangs on it on the floor (where 3 is, beside 3) stays a goal for the run. */
#include "floor/play/resolve.h"

#include <math.h>

#include "base/real.h"

#define MIDDLE (3 * FEET)  /* within this of the axis a player has no side of his own */
#define EMPTY (10 * FEET)  /* a spot is empty with nobody nearer: under the 12 ft of space.close */
#define CROWDED (4 * FEET) /* when no spot is that empty, nobody on it must do */
#define ELSEWHERE (5 * FEET)   /* a spot nearer than this is where the player stands already */
#define LINE_LENGTH (8 * FEET) /* where the end of a line is, behind its first player (ours) */

static enum side flip(enum side side)
{
    if (side == SIDE_LEFT) {
        return SIDE_RIGHT;
    }
    return side == SIDE_RIGHT ? SIDE_LEFT : side;
}

static enum side said_side(enum side side, const struct voice *voice)
{
    return voice->mirrored ? flip(side) : side;
}

enum side where_side(struct vec2 at)
{
    if (fabs(at.x) <= MIDDLE) {
        return SIDE_NONE;
    }
    return at.x < 0 ? SIDE_LEFT : SIDE_RIGHT;
}

/* Of somebody: where he is, else by which side he has driven there. */
enum side where_side_of(const struct maker *m, body who)
{
    enum side side = where_side(m->flow.at[who]);
    int drove = m->flow.drove[who];
    return side != SIDE_NONE || drove == 0 ? side : drove < 0 ? SIDE_LEFT : SIDE_RIGHT;
}

struct vec2 where_planned(const struct maker *m, const struct goal *goal, body mover)
{
    struct vec2 from = mover < BODY_COUNT ? m->flow.at[mover] : vec2_of(0, 0);
    return goal_point(goal, m->play->court, mover, from, m->flow.at);
}

double where_metres(const struct maker *m, struct measure measure)
{
    switch (measure.unit) {
    case UNIT_FEET:
        return measure.value * FEET;
    case UNIT_METRES:
        return measure.value;
    case UNIT_STEPS:
        return measure.value * m->play->speed->step;
    default:
        return measure.value * (m->play->metres ? 1 : FEET);
    }
}

bool note_is_of_mirror(const struct maker *m)
{
    return m->plain && m->plain->mirrored;
}

static bool ask_side(struct maker *m, struct span span, body mover, const char *word)
{
    struct diag *diag;
    if (mover == BODY_NONE) {
        diag = diag_add(m->diags, DIAG_PLAY_SIDE, span, "which %s?", word);
    } else {
        diag = diag_add(m->diags, DIAG_PLAY_SIDE, span, "which %s? %s is in the middle", word,
                        who_text(m, mover).at);
    }
    diag_help(m->diags, diag, "say `left %s` or `right %s`", word, word);
    return false;
}

static bool ball_side(struct maker *m, struct span span, enum side *side)
{
    if (m->flow.holder == BODY_NONE) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_BALL, span,
                                     "nobody has the ball, so there is no ball side");
        diag_help(m->diags, diag, "say left or right: `left corner`");
        return false;
    }
    *side = where_side_of(m, m->flow.holder);
    if (*side == SIDE_NONE) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_SIDE, span,
                                     "the ball is in the middle with %s: it has no side",
                                     who_text(m, m->flow.holder).at);
        diag_help(m->diags, diag, "say left or right");
        return false;
    }
    return true;
}

/* Opposite, of one who is in the middle: the other side from the one he came from; from the top,
 * away from the ball. */
static enum side side_left(const struct maker *m, body mover)
{
    enum side came = mover < BODY_COUNT ? m->flow.came[mover] : SIDE_NONE;
    body holder = m->flow.holder;
    bool ball = came == SIDE_NONE && holder != BODY_NONE && holder != mover;
    return ball ? where_side_of(m, holder) : came;
}

/* LEFT or RIGHT for what was said, or for what was left out. */
static bool settle_side(struct maker *m, enum side said, struct span span, body mover,
                        const char *word, enum side *side)
{
    if (said == SIDE_LEFT || said == SIDE_RIGHT) {
        *side = said;
        return true;
    }
    if (said == SIDE_BALL || said == SIDE_WEAK) {
        bool known = ball_side(m, span, side);
        *side = said == SIDE_WEAK ? flip(*side) : *side;
        return known;
    }
    *side = mover < BODY_COUNT ? where_side_of(m, mover) : SIDE_NONE;
    if (*side == SIDE_NONE && said == SIDE_OPPOSITE) {
        *side = side_left(m, mover);
    }
    if (*side == SIDE_NONE) {
        return ask_side(m, span, mover, word);
    }
    *side = said == SIDE_OPPOSITE ? flip(*side) : *side;
    return true;
}

static enum goal_kind spot_kind(enum spot spot)
{
    switch (spot) {
    case SPOT_BASELINE:
    case SPOT_SIDELINE:
    case SPOT_FREE_THROW_LINE:
        return GOAL_LINE;
    case SPOT_LANE:
        return GOAL_LANE;
    case SPOT_FRONT_OF_RIM:
        return GOAL_FRONT_OF_RIM;
    default:
        return GOAL_POINT;
    }
}

struct goal where_spot(const struct maker *m, enum spot spot, enum side side)
{
    struct goal goal = goal_none();
    goal.kind = spot_kind(spot);
    goal.spot = spot;
    goal.side = side;
    if (goal.kind == GOAL_POINT) {
        goal.at = court_spot(m->play->court, spot, side);
    }
    return goal;
}

/* Once: in a mirror it is the other side of what was said of its play. */
void where_note_side(struct maker *m, struct span span, body mover, enum side side,
                     const char *word)
{
    const char *taken = side == SIDE_LEFT ? "left" : "right";
    if (note_is_of_mirror(m)) {
        return;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_SIDE_TAKEN, span, "no side is written: %s is on the %s here",
                 who_text(m, mover).at, taken);
    diag_help(m->diags, diag, "to be sure, write `%s %s`", taken, word);
}

#define THROWN_TO (30 * FEET) /* across the floor: as far as a throw in goes (ours) */

/* breaks to the corner, of one in the backcourt whose ball is to be thrown in there: the corner
 * there, and not the one a floor's length away. */
static bool is_for_throw_in(const struct maker *m, const struct place *place, body mover)
{
    const struct court *court = m->play->court;
    body holder = m->flow.holder;
    if (place->spot != SPOT_CORNER || place->backcourt || !m->play->full_floor ||
        mover >= BODY_COUNT || mover == holder || holder >= BODY_COUNT) {
        return false;
    }
    struct vec2 ball = m->flow.at[holder], at = m->flow.at[mover];
    return at.y > court->half_court && ball.y > court->half_court &&
           !court_inside(court, ball, 0) && vec2_distance(at, ball) < THROWN_TO;
}

static void note_backcourt(struct maker *m, const struct place *place, enum side side)
{
    if (!note_is_of_mirror(m)) {
        const char *word = spot_row(place->spot)->word;
        struct diag *diag =
            diag_add(m->diags, DIAG_TEXT_PLACE_TAKEN, place->span,
                     "the ball is thrown in there: the backcourt %s was taken", word);
        diag_help(m->diags, diag, "to be sure, write `backcourt %s %s`",
                  side == SIDE_LEFT ? "left" : "right", word);
    }
}

static bool spot_goal(struct maker *m, const struct place *place, const struct voice *voice,
                      body mover, struct goal *goal)
{
    const struct spot_row *row = spot_row(place->spot);
    enum side side = said_side(place->side, voice);
    bool needs = row->sided && !(row->optional && side == SIDE_NONE);
    bool left_out = needs && side == SIDE_NONE;
    if (needs && !settle_side(m, side, place->span, mover, row->word, &side)) {
        return false;
    }
    bool thrown_to = is_for_throw_in(m, place, mover);
    if (thrown_to) {
        note_backcourt(m, place, side);
    } else if (left_out) {
        where_note_side(m, place->span, mover, side, row->word);
    }
    *goal = where_spot(m, place->spot, needs || side <= SIDE_RIGHT ? side : SIDE_NONE);
    if (place->backcourt || thrown_to) {
        goal->backcourt = m->play->full_floor = true;
        goal->at = court_mirror_back(m->play->court, court_spot(m->play->court, place->spot, side));
        goal->kind = GOAL_POINT;
    }
    return true;
}

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
static bool side_goal(struct maker *m, const struct place *place, const struct voice *voice,
                      body mover, struct goal *goal)
{
    static const enum spot away[] = {SPOT_CORNER, SPOT_WING, SPOT_SLOT};
    static const enum spot with_ball[] = {SPOT_WING, SPOT_SLOT, SPOT_CORNER};
    const enum spot *order = mover == m->flow.holder ? with_ball : away;
    enum side side;
    if (!settle_side(m, said_side(place->side, voice), place->span, mover, "side", &side)) {
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

static bool next_goal(struct maker *m, const struct place *place, const struct voice *voice,
                      body mover, struct goal *goal)
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

static const struct goal *kept(struct maker *m, struct goal goal)
{
    struct goal *copy = arena_new(m->arena, struct goal);
    *copy = goal;
    return copy;
}

static bool body_goal(struct maker *m, const struct who *who, const struct voice *voice,
                      enum goal_kind kind, struct goal *goal)
{
    body b = who_body(m, who, voice);
    if (b == BODY_NONE) {
        return false;
    }
    *goal = goal_none();
    goal->kind = kind;
    goal->who = b;
    if (kind == GOAL_POINT) {
        goal->at = m->stood[b];
    }
    return true;
}

static bool offset_goal(struct maker *m, const struct place *place, const struct voice *voice,
                        body mover, struct goal *goal)
{
    struct goal from;
    bool known = place->a ? where_goal(m, place->a, voice, mover, &from)
                          : body_goal(m, &place->who, voice, GOAL_BODY, &from);
    if (!known) {
        return false;
    }
    *goal = goal_none();
    goal->kind = GOAL_OFFSET;
    goal->a = kept(m, from);
    goal->length = where_metres(m, place->length);
    goal->measured = true;
    goal->direction = place->direction;
    bool across = place->direction == LEFT_OF || place->direction == RIGHT_OF;
    if (across && voice->mirrored) {
        goal->direction = place->direction == LEFT_OF ? RIGHT_OF : LEFT_OF;
    }
    return true;
}

static bool mix_goal(struct maker *m, const struct place *place, const struct voice *voice,
                     body mover, struct goal *goal)
{
    struct goal a, b;
    if (!where_goal(m, place->a, voice, mover, &a) || !where_goal(m, place->b, voice, mover, &b)) {
        return false;
    }
    *goal = goal_none();
    goal->kind = GOAL_MIX;
    goal->a = kept(m, a);
    goal->b = kept(m, b);
    goal->fraction = place->kind == PLACE_HALFWAY ? 0.5 : place->fraction;
    return true;
}

static bool line_goal(struct maker *m, const struct place *place, body mover, struct goal *goal)
{
    const struct play *play = m->play;
    body best = BODY_NONE;
    double least = HUGE_VAL;
    for (size_t i = 0; i < play->lines.count; i++) {
        body first = play->lines.at[i];
        double far =
            mover < BODY_COUNT ? vec2_distance(m->flow.at[mover], play->start[first].at) : 0;
        if (far < least) {
            least = far;
            best = first;
        }
    }
    if (best == BODY_NONE) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_NO_LINE, place->span, "there is no line of players here");
        diag_help(m->diags, diag,
                  "say where it is in the drill's start: start 1 top, line behind 1");
        return false;
    }
    struct vec2 at = play->start[best].at;
    *goal = goal_at(vec2_along(at, vec2_unit(at), LINE_LENGTH));
    goal->line_end = true;
    return true;
}

static bool cone_goal(struct maker *m, const struct place *place, struct goal *goal)
{
    if (place->cone < 0 || (size_t)place->cone >= m->play->cones.count) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_CONE, place->span,
                                     "there is no cone %c here", 'A' + place->cone);
        diag_help(m->diags, diag,
                  "cones are lettered in the order of the start line: start 1 top, "
                  "cone at left elbow");
        return false;
    }
    *goal = goal_at(m->play->cones.at[place->cone]);
    goal->cone = place->cone + 1;
    goal->measured = true;
    return true;
}

static bool outside_goal(struct maker *m, const struct place *place, const struct voice *voice,
                         body mover, struct goal *goal)
{
    struct goal level;
    if (!where_goal(m, place->a, voice, mover, &level)) {
        return false;
    }
    *goal = goal_none();
    goal->kind = GOAL_OUTSIDE;
    goal->a = kept(m, level);
    return true;
}

static struct goal xy_goal(const struct maker *m, const struct place *place, bool mirrored)
{
    double unit = m->play->metres ? 1 : FEET;
    struct goal goal = goal_at(vec2_of(place->x * (mirrored ? -unit : unit), place->y * unit));
    goal.measured = true;
    return goal;
}

bool where_goal(struct maker *m, const struct place *place, const struct voice *voice, body mover,
                struct goal *goal)
{
    *goal = goal_none();
    switch (place->kind) {
    case PLACE_SPOT:
        return spot_goal(m, place, voice, mover, goal);
    case PLACE_SIDE:
        return side_goal(m, place, voice, mover, goal);
    case PLACE_NEXT:
        return next_goal(m, place, voice, mover, goal);
    case PLACE_OFFSET:
        return offset_goal(m, place, voice, mover, goal);
    case PLACE_HALFWAY:
    case PLACE_FRACTION:
        return mix_goal(m, place, voice, mover, goal);
    case PLACE_XY:
        *goal = xy_goal(m, place, voice->mirrored);
        return true;
    case PLACE_SPOT_OF:
        return body_goal(m, &place->who, voice, GOAL_POINT, goal);
    case PLACE_WHERE:
        return body_goal(m, &place->who, voice, GOAL_BODY, goal);
    case PLACE_BESIDE:
        return body_goal(m, &place->who, voice, GOAL_BESIDE, goal);
    case PLACE_BEHIND:
        return body_goal(m, &place->who, voice, GOAL_BEHIND, goal);
    case PLACE_END_OF_LINE:
        return line_goal(m, place, mover, goal);
    case PLACE_OUT:
        return outside_goal(m, place, voice, mover, goal);
    case PLACE_CONE:
        return cone_goal(m, place, goal);
    case PLACE_NONE:
        break;
    }
    return false;
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

static bool empty_perimeter(struct maker *m, body mover, bool away, struct span span,
                            struct goal *goal)
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

static bool nearest_block(struct maker *m, body mover, struct span span, struct goal *goal)
{
    enum side side = where_side(m->flow.at[mover]);
    if (side == SIDE_NONE) {
        return ask_side(m, span, mover, "block");
    }
    *goal = where_spot(m, SPOT_BLOCK, side);
    return true;
}

bool where_default(struct maker *m, enum verb_default place, body mover, struct span span,
                   struct goal *goal)
{
    *goal = goal_none();
    switch (place) {
    case DEFAULT_RIM:
        *goal = where_spot(m, SPOT_RIM, SIDE_NONE);
        return true;
    case DEFAULT_OWN_SPOT:
        *goal = goal_at(m->flow.at[mover]);
        return true;
    case DEFAULT_EMPTY_PERIMETER:
        return empty_perimeter(m, mover, false, span, goal);
    case DEFAULT_AWAY_PERIMETER:
        return empty_perimeter(m, mover, true, span, goal);
    case DEFAULT_NEAREST_BLOCK:
        return nearest_block(m, mover, span, goal);
    case DEFAULT_LANE:
        *goal = where_spot(m, SPOT_LANE, SIDE_NONE);
        return true;
    case DEFAULT_HALF_COURT:
        *goal = where_spot(m, SPOT_HALF_COURT, SIDE_NONE);
        return true;
    case DEFAULT_NONE:
    case DEFAULT_WHERE_HE_IS:
        break;
    }
    return true;
}
