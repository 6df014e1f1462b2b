/* SPDX-License-Identifier: MIT */
/* where: the words for a place as a goal. What hangs on where somebody is in the words (a missing
 * side, the ball's side, an empty spot, the next spot) is settled here, on planned positions; what
 * hangs on it on the floor (where 3 is, beside 3) stays a goal for the run. */
#include "floor/play/resolve.h"

#include <math.h>

#include "base/real.h"

#define MIDDLE (3 * FEET)      /* within this of the axis a player has no side of his own */
#define LINE_LENGTH (8 * FEET) /* where the end of a line is, behind its first player (ours) */

static enum side flip(enum side side)
{
    if (side == SIDE_LEFT) {
        return SIDE_RIGHT;
    }
    return side == SIDE_RIGHT ? SIDE_LEFT : side;
}

enum side where_said_side(enum side side, const struct voice *voice)
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
bool where_settle_side(struct maker *m, enum side said, struct span span, body mover,
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

#define STANDS_THERE (6 * FEET) /* so near a spot it is taken (ours) */

static bool spot_is_free(const struct maker *m, struct vec2 spot, body mover)
{
    for (body b = 0; b < BODY_COACH; b++) {
        if (b != mover && on_floor(m, b) && vec2_distance(m->flow.at[b], spot) < STANDS_THERE) {
            return false;
        }
    }
    return true;
}

/* goes to the wing, of one who is in the middle without the ball, and a team-mate stands on one of
 * the two: to the other one, with a note. NONE: both are free, or neither. */
static enum side free_side(struct maker *m, const struct place *place, body mover)
{
    const struct spot_row *row = spot_row(place->spot);
    if (mover >= BODY_COACH || mover == m->flow.holder || place->backcourt ||
        spot_kind(place->spot) != GOAL_POINT || where_side_of(m, mover) != SIDE_NONE) {
        return SIDE_NONE;
    }
    const struct court *court = m->play->court;
    bool left = spot_is_free(m, court_spot(court, place->spot, SIDE_LEFT), mover);
    bool right = spot_is_free(m, court_spot(court, place->spot, SIDE_RIGHT), mover);
    enum side side = left == right ? SIDE_NONE : left ? SIDE_LEFT : SIDE_RIGHT;
    if (side != SIDE_NONE && !note_is_of_mirror(m)) {
        const char *taken = left ? "left" : "right";
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_SIDE_TAKEN, place->span,
                     "no side is written: nobody is at the %s %s", taken, row->word);
        diag_help(m->diags, diag, "to be sure, write `%s %s`", taken, row->word);
    }
    return side;
}

static bool spot_goal(struct maker *m, const struct place *place, const struct voice *voice,
                      body mover, struct goal *goal)
{
    const struct spot_row *row = spot_row(place->spot);
    enum side side = where_said_side(place->side, voice);
    bool needs = row->sided && !(row->optional && side == SIDE_NONE);
    bool left_out = needs && side == SIDE_NONE;
    enum side only = left_out && row->sided ? free_side(m, place, mover) : SIDE_NONE;
    side = only != SIDE_NONE ? only : side;
    left_out = left_out && only == SIDE_NONE;
    if (needs && !where_settle_side(m, side, place->span, mover, row->word, &side)) {
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
        return spots_of_side(m, place, voice, mover, goal);
    case PLACE_NEXT:
        return spots_next(m, place, voice, mover, goal);
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
        return spots_empty(m, mover, false, span, goal);
    case DEFAULT_AWAY_PERIMETER:
        return spots_empty(m, mover, true, span, goal);
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
