/* SPDX-License-Identifier: MIT */
/* spots: checks about whether players at rest stand where the spots are: the wing, outside the
 * line, as far apart as the spots, as wide as the start. */
#include <math.h>

#include "base/geom/shape.h"
#include "base/real.h"
#include "judge/check/stand.h"

#define AT_SPOT (8 * FEET) /* farther off than this one stands at no spot of the arc; ours */
#define LOW_WING                                                                                   \
    (5.1 * FEET)              /* a federation's wings beside two guards: level with the bottom of  \
                               * the free-throw circle, 1.55 m under the line (WABC L3) */
#define IN_SLOT (5 * FEET)    /* who stands so near to a slot is the guard there; ours */
#define NEXT_SPOT (20 * FEET) /* no two spots that are neighbors are farther apart; ours */
#define GAP_SHARE 1.05        /* of the spots' own gap, */
#define SAME_AREA 1e-6        /* m^2 */
#define GAP_MORE (1 * FEET)   /* and this: ours */
/* nobody so far apart stands at spots that are neighbors */
#define NO_NEIGHBORS (NEXT_SPOT + 2 * AT_SPOT + HALF_FOOT)

/* ---- where somebody stands ---- */

/* The nearest of all spots, perimeter or not; side as he stands. */
static enum spot nearest_spot(const struct checker *checker, struct vec2 at)
{
    enum side side = look_side(checker, at.x);
    enum spot nearest = SPOT_TOP;
    double least = INFINITY;
    for (int i = 0; i < SPOT_COUNT; i++) {
        bool line = i == SPOT_BASELINE || i == SPOT_SIDELINE || i == SPOT_HALF_COURT;
        double far = vec2_distance(court_spot(checker->play->court, (enum spot)i, side), at);
        if (!line && far < least) {
            least = far;
            nearest = (enum spot)i;
        }
    }
    return nearest;
}

static bool holds(const struct checker *checker, body b, size_t sample)
{
    return segment_holder(checker->segment, (double)sample * RUN_SAMPLE) == b;
}

/* A finding about one who stands, and the sentence that sends him to a spot. */
static struct finding *stands(struct checker *checker, body b, size_t sample, double amount,
                              const char *spot)
{
    double t = (double)sample * RUN_SAMPLE;
    struct finding *finding = look_report(checker, t, amount, b, BODY_NONE);
    finding->span = stand_line(checker, b, t, finding->span);
    finding->mark = MARK_POINT;
    finding->a = look_at(checker->segment, b, sample);
    look_say(checker, &finding->help, "write: %s %s to %s", look_body(checker, b),
             stand_goes_by(checker, b, t), spot);
    return finding;
}

/* ---- space.wing ---- */

static bool in_slot(const struct checker *checker, struct vec2 at)
{
    return vec2_near(court_spot(checker->play->court, SPOT_SLOT, look_side(checker, at.x)), at,
                     IN_SLOT);
}

/* Four out: two stand in the slots, or started there. */
static bool guards_in_slots(const struct checker *checker, size_t sample)
{
    int now = 0, start = 0;
    for (body b = 0; b < BODY_COACH; b++) {
        if (look_plays(checker, b)) {
            now += in_slot(checker, look_at(checker->segment, b, sample));
            start += in_slot(checker, checker->play->start[b].at);
        }
    }
    return now >= 2 || start >= 2;
}

/* How far a wing stands from the free-throw line extended; below 0: he is no wing, or a low one
 * beside two guards. */
static double off_the_line(const struct checker *checker, body b, size_t sample)
{
    const struct court *court = checker->play->court;
    struct vec2 at = look_at(checker->segment, b, sample);
    double far, up = at.y - court->free_throw;
    if (fabs(up) <= checker->limit) {
        return fabs(up); /* whoever it is */
    }
    bool wing = court_nearest_perimeter(court, at, NULL, &far) == SPOT_WING && far <= AT_SPOT &&
                nearest_spot(checker, at) == SPOT_WING;
    if (!wing || (up < 0 && up >= -LOW_WING - HALF_FOOT && guards_in_slots(checker, sample))) {
        return -1;
    }
    return fabs(up);
}

static bool is_off_the_line(const struct checker *checker, const void *about, size_t sample)
{
    const body *b = about;
    return stand_on_floor(checker, *b, sample) &&
           off_the_line(checker, *b, sample) > checker->limit + HALF_FOOT;
}

static void off_wing(struct checker *checker, body b, size_t sample)
{
    struct vec2 at = look_at(checker->segment, b, sample);
    double off = off_the_line(checker, b, sample);
    bool high = at.y > checker->play->court->free_throw;
    const char *wing = look_spot(checker, SPOT_WING, look_side(checker, at.x));
    struct finding *finding = stands(checker, b, sample, off, wing);
    look_say(checker, &finding->message,
             "%s: %s to the wing. You stand %s %s the free-throw line extended; keep within %s.",
             look_body(checker, b), high ? "come down" : "come up", look_length(checker, off),
             high ? "above" : "below", look_length(checker, checker->limit));
}

void look_space_wing(struct checker *checker)
{
    for (body b = 0; b < BODY_COACH && !checker->play->is_drill; b++) {
        struct rest rest;
        if (look_plays(checker, b) && stand_rest(checker, is_off_the_line, &b, &rest)) {
            off_wing(checker, b, rest.from);
        }
    }
}

/* ---- space.inside-line ---- */

/* How far inside the three-point line, negative outside. */
static double inside_line(const struct court *court, struct vec2 at)
{
    return at.y < court->junction ? court->straight - fabs(at.x) : court->arc - vec2_length(at);
}

static bool is_inside_line(const struct checker *checker, const void *about, size_t sample)
{
    const body *b = about;
    const struct court *court = checker->play->court;
    struct vec2 at = look_at(checker->segment, *b, sample);
    return inside_line(court, at) > checker->limit + HALF_FOOT &&
           stand_on_floor(checker, *b, sample) && !holds(checker, *b, sample) &&
           spot_row(nearest_spot(checker, at))->perimeter;
}

static void too_far_in(struct checker *checker, body b, size_t sample)
{
    const struct court *court = checker->play->court;
    struct vec2 at = look_at(checker->segment, b, sample);
    double inside = inside_line(court, at);
    enum spot spot = nearest_spot(checker, at);
    const char *where =
        look_spot(checker, spot, spot_row(spot)->sided ? look_side(checker, at.x) : SIDE_NONE);
    struct finding *finding = stands(checker, b, sample, inside, where);
    look_say(checker, &finding->message,
             "%s: step out behind the three-point line. You stand %s inside it, at the %s; keep "
             "within %s.",
             look_body(checker, b), look_length(checker, inside), where,
             look_length(checker, checker->limit));
}

void look_space_inside_line(struct checker *checker)
{
    /* no arc, or one that is out of the range of the young */
    bool none = checker->play->court->arc <= 0 || checker->play->level == LEVEL_U12;
    for (body b = 0; b < BODY_COACH && !none && !checker->play->is_drill; b++) {
        struct rest rest;
        if (look_plays(checker, b) && stand_rest(checker, is_inside_line, &b, &rest)) {
            too_far_in(checker, b, rest.from);
        }
    }
}

/* ---- space.far ---- */

struct neighbors {
    body a, b;
};

/* Where round the arc, from the right corner to the left one: 0 to 1, by the angle at the ring. */
static double round_the_arc(struct vec2 at)
{
    double length = vec2_length(at);
    return length > 0 ? at.x / length : 0; /* falls from right to left; enough to order them */
}

/* Somebody else of the perimeter stands between the two. */
static bool is_between(const struct checker *checker, const struct neighbors *pair, size_t sample)
{
    double one = round_the_arc(look_at(checker->segment, pair->a, sample));
    double two = round_the_arc(look_at(checker->segment, pair->b, sample));
    for (body b = 0; b < BODY_COACH; b++) {
        if (b == pair->a || b == pair->b || !look_plays(checker, b)) {
            continue;
        }
        struct vec2 at = look_at(checker->segment, b, sample);
        double here = round_the_arc(at);
        if (stand_off_spot(checker, at) <= AT_SPOT && (here - one) * (here - two) < 0) {
            return true;
        }
    }
    return false;
}

/* What may be between two who stand there; INFINITY: one stands at no spot of the arc, or an empty
 * spot lies between theirs, and they are no neighbors. */
static double most_apart(const struct checker *checker, struct vec2 a, struct vec2 b)
{
    const struct court *court = checker->play->court;
    enum side left, right;
    double off;
    enum spot one = court_nearest_perimeter(court, a, &left, &off);
    if (off > AT_SPOT) {
        return INFINITY;
    }
    enum spot two = court_nearest_perimeter(court, b, &right, &off);
    double gap = vec2_distance(court_spot(court, one, left), court_spot(court, two, right));
    return off > AT_SPOT || gap > NEXT_SPOT ? (double)INFINITY
                                            : real_max(checker->limit, GAP_SHARE * gap + GAP_MORE);
}

/* What is soonest told comes first: most pairs are near enough, too far apart for neighbors, or on
 * the move. */
static bool are_far(const struct checker *checker, const void *about, size_t sample)
{
    const struct neighbors *pair = about;
    struct vec2 a = look_at(checker->segment, pair->a, sample);
    struct vec2 b = look_at(checker->segment, pair->b, sample);
    double gap = vec2_distance(a, b);
    return gap > checker->limit + HALF_FOOT && gap < NO_NEIGHBORS &&
           stand_on_floor(checker, pair->a, sample) && stand_on_floor(checker, pair->b, sample) &&
           gap > most_apart(checker, a, b) + HALF_FOOT && !is_between(checker, pair, sample);
}

static void far_pair(struct checker *checker, body a, body b, size_t sample)
{
    struct vec2 at_a = look_at(checker->segment, a, sample);
    struct vec2 at_b = look_at(checker->segment, b, sample);
    double gap = vec2_distance(at_a, at_b);
    enum side side;
    enum spot spot = court_nearest_perimeter(checker->play->court, at_a, &side, NULL);
    const char *where = look_spot(checker, spot, side);
    struct finding *finding = stands(checker, a, sample, gap, where);
    finding->who[1] = b;
    finding->limit = most_apart(checker, at_a, at_b);
    finding->mark = MARK_DISTANCE;
    finding->b = at_b;
    look_say(checker, &finding->message,
             "%s: come in to %s. %s and %s stand %s apart, a long pass; keep within %s.",
             look_body(checker, a), where, look_body(checker, b), look_body(checker, a),
             look_length(checker, gap), look_length(checker, finding->limit));
}

struct farthest { /* neighbor of one who is to come in */
    body from;
    double gap;
    size_t when;
};

/* Of the two the one who is farther off his spot is to come in. */
static void note_far(const struct checker *checker, body a, body b, size_t sample,
                     struct farthest farthest[BODY_COACH])
{
    struct vec2 at_a = look_at(checker->segment, a, sample);
    struct vec2 at_b = look_at(checker->segment, b, sample);
    double gap = vec2_distance(at_a, at_b);
    bool first = stand_off_spot(checker, at_a) >= stand_off_spot(checker, at_b);
    struct farthest *his = &farthest[first ? a : b];
    if (gap > his->gap) {
        *his = (struct farthest){first ? b : a, gap, sample};
    }
}

/* Of each who stands too far out, the neighbor farthest from him. */
void look_space_far(struct checker *checker)
{
    struct farthest farthest[BODY_COACH] = {{0}};
    for (body a = 0; a < BODY_COACH && !checker->play->is_drill; a++) {
        for (body b = (body)(a + 1); b < BODY_COACH; b++) {
            struct neighbors pair = {a, b};
            struct rest rest;
            if (look_plays(checker, a) && look_plays(checker, b) &&
                stand_rest(checker, are_far, &pair, &rest) && stand_lasts(&rest)) {
                note_far(checker, a, b, rest.from, farthest);
            }
        }
    }
    for (body a = 0; a < BODY_COACH; a++) {
        if (farthest[a].gap > 0) {
            far_pair(checker, a, farthest[a].from, farthest[a].when);
        }
    }
}

/* ---- space.area ---- */

/* What the five cover as the play starts, m^2; 0 when they are not all on the front half. */
static double area_of_start(const struct checker *checker)
{
    const struct play *play = checker->play;
    struct vec2 at[5], hull[5];
    for (int i = 0; i < 5; i++) {
        const struct start_body *start = &play->start[body_attacker(i + 1)];
        at[i] = start->at;
        if (!start->on_floor || !court_inside(play->court, start->at, 0) ||
            start->at.y > play->court->half_court) {
            return 0;
        }
    }
    return polygon_area(hull, hull_of(checker->arena, at, 5, hull));
}

static double area_at(const struct checker *checker, size_t sample)
{
    struct vec2 at[5], hull[5];
    for (int i = 0; i < 5; i++) {
        at[i] = look_at(checker->segment, body_attacker(i + 1), sample);
    }
    return polygon_area(hull, hull_of(checker->arena, at, 5, hull));
}

static bool is_narrow(const struct checker *checker, const void *about, size_t sample)
{
    const double *least = about;
    for (int i = 1; i <= 5; i++) {
        body b = body_attacker(i);
        struct vec2 at = look_at(checker->segment, b, sample);
        if (!look_idle(checker, b, sample) || !court_inside(checker->play->court, at, 0) ||
            look_in_lane(checker, at) || look_shot(checker->segment, (double)sample * RUN_SAMPLE)) {
            return false;
        }
    }
    return area_at(checker, sample) < *least;
}

/* The free spot of the arc, and who is to go to it, with which the five cover the most. */
struct way_out {
    body who;
    enum spot spot;
    enum side side;
    double area;
};

static void try_spot(const struct checker *checker, size_t sample, enum spot spot, enum side side,
                     struct way_out *best)
{
    struct vec2 at[5], hull[5], there = court_spot(checker->play->court, spot, side);
    for (int i = 0; i < 5; i++) {
        at[i] = look_at(checker->segment, body_attacker(i + 1), sample);
        if (vec2_near(at[i], there, AT_SPOT)) {
            return; /* somebody is there */
        }
    }
    for (int i = 0; i < 5; i++) {
        struct vec2 was = at[i];
        at[i] = there;
        double area = polygon_area(hull, hull_of(checker->arena, at, 5, hull));
        body who = body_attacker(i + 1);
        bool more = area > best->area + SAME_AREA;
        bool same =
            !more && area > best->area - SAME_AREA; /* then the lower number, mirrored too */
        if ((more || (same && who < best->who)) && !holds(checker, who, sample)) {
            *best = (struct way_out){who, spot, side, area};
        }
        at[i] = was;
    }
}

static struct way_out way_out_of(const struct checker *checker, size_t sample)
{
    struct way_out best = {.who = BODY_NONE};
    for (int i = 0; i < SPOT_COUNT; i++) {
        if (spot_row((enum spot)i)->perimeter) {
            for (int k = 0; k < (spot_row((enum spot)i)->sided ? 2 : 1); k++) {
                enum side side =
                    spot_row((enum spot)i)->sided ? look_side_in_turn(checker, k) : SIDE_NONE;
                try_spot(checker, sample, (enum spot)i, side, &best);
            }
        }
    }
    return best;
}

static int percent(double share)
{
    return (int)(share * 100 + 0.5);
}

static void narrow(struct checker *checker, size_t sample, double share)
{
    struct way_out way = way_out_of(checker, sample);
    if (way.who == BODY_NONE) {
        return;
    }
    const char *spot = look_spot(checker, way.spot, way.side);
    struct finding *finding = stands(checker, way.who, sample, share, spot);
    look_say(checker, &finding->message,
             "%s: spread out, to %s. The five of you cover %d%% of the floor you started on; cover "
             "%d%% or more.",
             look_body(checker, way.who), spot, percent(share), percent(checker->limit));
}

void look_space_area(struct checker *checker)
{
    double start = area_of_start(checker), least = checker->limit * start;
    struct rest rest;
    if (checker->play->is_drill || checker->play->players < 5 || start <= 0) {
        return;
    }
    if (stand_rest(checker, is_narrow, &least, &rest) && stand_lasts(&rest)) {
        narrow(checker, rest.from, area_at(checker, rest.from) / start);
    }
}
