/* SPDX-License-Identifier: MIT */
/* zone: the tables of zones.def on a court, and how a ball between the places of the rows shares
 * them. The places are the corners of triangles that cover the half court, so a defender's home is
 * continuous in the ball and goes about as fast as it. Odd in x: the left is the right mirrored. */
#include <math.h>

#include "base/diag.h"
#include "base/real.h"
#include "floor/court/court.h"

enum cell_kind {
    CELL_AT,
    CELL_UNTIL,
    CELL_BACK,
    CELL_HALF,
    CELL_BALL,
    CELL_ABOVE,
    CELL_TRAP,
    CELL_OWN
};
struct cell { /* small: there are more than six hundred */
    signed char kind;
    signed char x, y; /* whole feet, as zones.def says for its kind */
};

static const struct cell cells[ZONE_COUNT][ANCHOR_COUNT][ZONE_DEFENDERS] = {
#define ZONE(...)
#define ZONE_ROW(zone, anchor, ...) [ZONE_##zone][ANCHOR_##anchor] = {__VA_ARGS__},
#define AT(right, up)                                                                              \
    {                                                                                              \
        CELL_AT, (right), (up)                                                                     \
    }
#define UNTIL(right, up)                                                                           \
    {                                                                                              \
        CELL_UNTIL, (right), (up)                                                                  \
    }
#define BACK(right, up)                                                                            \
    {                                                                                              \
        CELL_BACK, (right), (up)                                                                   \
    }
#define HALF(right, up)                                                                            \
    {                                                                                              \
        CELL_HALF, (right), (up)                                                                   \
    }
#define BALL                                                                                       \
    {                                                                                              \
        CELL_BALL, 0, 0                                                                            \
    }
#define ABOVE                                                                                      \
    {                                                                                              \
        CELL_ABOVE, 0, 0                                                                           \
    }
#define TRAP                                                                                       \
    {                                                                                              \
        CELL_TRAP, 0, 0                                                                            \
    }
#define OWN                                                                                        \
    {                                                                                              \
        CELL_OWN, 0, 0                                                                             \
    }
#include "floor/court/zones.def"
#undef ZONE
#undef ZONE_ROW
#undef AT
#undef UNTIL
#undef BACK
#undef HALF
#undef BALL
#undef ABOVE
#undef TRAP
#undef OWN
};

static const struct {
    struct zone_row row;
    const char *mirror;
} zones[ZONE_COUNT] = {
#define ZONE(symbol, word, setting, press, back, mirror, who, source)                              \
    [ZONE_##symbol] = {{word, setting, who, press, ZONE_##back, EXPLAINED(source)}, mirror},
#define ZONE_ROW(...)
#include "floor/court/zones.def"
#undef ZONE
#undef ZONE_ROW
};

const struct zone_row *zone_row(enum zone zone)
{
    return &zones[zone].row;
}

bool zone_find(struct str setting, enum zone *zone)
{
    for (int i = ZONE_NONE + 1; i < ZONE_COUNT; i++) {
        if (court_same_word(setting, zones[i].row.setting)) {
            *zone = (enum zone)i;
            return true;
        }
    }
    return false;
}

bool zone_is_man(enum zone zone, int defender)
{
    return cells[zone][ANCHOR_TOP][defender].kind == CELL_OWN;
}

/* ---- the places of the ball ---- */

struct vec2 zone_anchor_point(const struct court *court, enum zone_anchor anchor)
{
    static const enum spot spots[ANCHOR_FRONT_COUNT] = {
        [ANCHOR_TOP] = SPOT_TOP,       [ANCHOR_SLOT] = SPOT_SLOT, [ANCHOR_WING] = SPOT_WING,
        [ANCHOR_CORNER] = SPOT_CORNER, [ANCHOR_HIGH] = SPOT_NAIL, [ANCHOR_BLOCK] = SPOT_BLOCK};
    struct vec2 corner = court_spot(court, SPOT_CORNER, SIDE_RIGHT);
    if (anchor < ANCHOR_FRONT_COUNT) {
        return court_spot(court, spots[anchor], SIDE_RIGHT);
    }
    bool side = anchor == ANCHOR_BACK_CORNER || anchor == ANCHOR_BACK_WING ||
                anchor == ANCHOR_HALF_SIDE || anchor == ANCHOR_THROW_IN;
    bool deep = anchor == ANCHOR_BACK_DEEP || anchor == ANCHOR_BACK_CORNER;
    bool half = anchor == ANCHOR_HALF_MIDDLE || anchor == ANCHOR_HALF_SIDE;
    double y = half ? court->half_court : deep ? 0 : court->free_throw;
    if (anchor == ANCHOR_THROW_IN) {
        return court_outside(court,
                             court_mirror_back(court, vec2_of(corner.x / 2, court->baseline)));
    }
    return court_mirror_back(court, vec2_of(side ? .85 * corner.x : 0, y));
}

enum { MOST_SHARES = 8 };
struct share {
    int anchor;
    bool mirrored;
    double share;
};
struct shares {
    struct share at[MOST_SHARES];
    int count;
};

static void shares_add(struct shares *list, int anchor, bool mirrored, double share)
{
    if (share > 0) {
        list->at[list->count++] = (struct share){anchor, mirrored, share};
    }
}

/* The corners of the triangles, on the right: the rows' own places, the left block, and under the
 * right one the place level with the corner. */
enum { LEFT_BLOCK = ANCHOR_FRONT_COUNT, UNDER_BLOCK };

static struct vec2 vertex(const struct court *court, int which)
{
    struct vec2 block = zone_anchor_point(court, ANCHOR_BLOCK);
    struct vec2 corner = zone_anchor_point(court, ANCHOR_CORNER);
    switch (which) {
    case LEFT_BLOCK:
        return vec2_of(-block.x, block.y);
    case UNDER_BLOCK:
        return vec2_of(block.x, corner.y);
    default:
        return zone_anchor_point(court, (enum zone_anchor)which);
    }
}

/* Which share of p each corner of the triangle has; negative ones: p is outside it. */
static void barycentric(struct vec2 p, const struct vec2 corner[3], double share[3])
{
    struct vec2 a = vec2_sub(corner[1], corner[0]), b = vec2_sub(corner[2], corner[0]);
    struct vec2 c = vec2_sub(p, corner[0]);
    double whole = vec2_cross(a, b);
    share[1] = vec2_cross(c, b) / whole;
    share[2] = vec2_cross(a, c) / whole;
    share[0] = 1 - share[1] - share[2];
}

/* Under the blocks and between them only left and right matters: one row's share falls as the
 * other's grows, alike on both sides. */
static bool between_blocks(const struct court *court, struct vec2 p, double of, struct shares *out)
{
    struct vec2 block = zone_anchor_point(court, ANCHOR_BLOCK);
    if (p.y > block.y || p.x > block.x) {
        return false;
    }
    double right = .5 + p.x / (2 * block.x);
    shares_add(out, ANCHOR_BLOCK, false, of * right);
    shares_add(out, ANCHOR_BLOCK, true, of * (1 - right));
    return true;
}

/* The triangle p lies in, or but for a rounding; its corners' shares. */
static const int *triangle_of(const struct court *court, struct vec2 p, double share[3])
{
    static const int triangles[][3] = {
        {ANCHOR_TOP, ANCHOR_SLOT, ANCHOR_HIGH},     {ANCHOR_SLOT, ANCHOR_WING, ANCHOR_HIGH},
        {ANCHOR_WING, ANCHOR_BLOCK, ANCHOR_HIGH},   {ANCHOR_WING, ANCHOR_CORNER, ANCHOR_BLOCK},
        {ANCHOR_CORNER, UNDER_BLOCK, ANCHOR_BLOCK}, {ANCHOR_HIGH, ANCHOR_BLOCK, LEFT_BLOCK}};
    const int *found = triangles[0];
    double best = -INFINITY;
    for (size_t i = 0; i < sizeof triangles / sizeof *triangles; i++) {
        struct vec2 corner[3];
        double trial[3];
        for (int k = 0; k < 3; k++) {
            corner[k] = vertex(court, triangles[i][k]);
        }
        barycentric(p, corner, trial);
        double least = real_min(trial[0], real_min(trial[1], trial[2]));
        if (least > best) {
            best = least;
            found = triangles[i];
            share[0] = trial[0], share[1] = trial[1], share[2] = trial[2];
        }
    }
    return found;
}

/* p on the right half, inside the places of the rows; `of`: what there is to share. */
static void front_shares(const struct court *court, struct vec2 p, double of, struct shares *out)
{
    if (between_blocks(court, p, of, out)) {
        return;
    }
    double share[3], sum = 0;
    const int *corners = triangle_of(court, p, share);
    for (int k = 0; k < 3; k++) {
        sum += real_max(share[k], 0);
    }
    for (int k = 0; k < 3; k++) {
        bool block = corners[k] == LEFT_BLOCK || corners[k] == UNDER_BLOCK;
        shares_add(out, block ? ANCHOR_BLOCK : corners[k], corners[k] == LEFT_BLOCK,
                   of * share[k] / sum);
    }
}

/* The nearest point to p of what the places of the rows enclose; p on the right half. They lie on
 * a convex line, so that it moves no faster than p. */
static struct vec2 enclosed(const struct court *court, struct vec2 p)
{
    static const int line[] = {ANCHOR_TOP, ANCHOR_SLOT, ANCHOR_WING, ANCHOR_CORNER};
    struct vec2 corner = zone_anchor_point(court, ANCHOR_CORNER);
    struct vec2 in = vec2_of(p.x, real_max(p.y, corner.y)), best = in;
    double least = INFINITY;
    bool outside = false;
    for (int i = 0; i + 1 < (int)(sizeof line / sizeof *line); i++) {
        struct vec2 a = zone_anchor_point(court, (enum zone_anchor)line[i]);
        struct vec2 b = zone_anchor_point(court, (enum zone_anchor)line[i + 1]);
        struct vec2 along = vec2_sub(b, a), rel = vec2_sub(in, a);
        outside |= vec2_cross(along, rel) > 0;
        double t = real_clamp(vec2_dot(rel, along) / vec2_dot(along, along), 0, 1);
        struct vec2 q = vec2_along(a, along, t);
        if (vec2_distance(q, in) < least) {
            least = vec2_distance(q, in);
            best = q;
        }
    }
    return outside ? best : in;
}

#define FALLS_BACK (16 * FEET) /* over half court, in which a press becomes its zone (ours) */

/* Of the backcourt: left to right, and from the far ring to half court. */
static void back_shares(const struct court *court, struct vec2 p, double of, struct shares *out)
{
    double side = real_clamp(p.x / zone_anchor_point(court, ANCHOR_BACK_CORNER).x, 0, 1);
    double up = 2 * court->half_court - p.y, line = court->free_throw;
    double high = real_clamp(up / line, 0, 1);
    double half = real_clamp((up - line) / (court->half_court - line), 0, 1);
    const double rows[3] = {1 - high, high * (1 - half), half};
    static const int middle[3] = {ANCHOR_BACK_DEEP, ANCHOR_BACK_TOP, ANCHOR_HALF_MIDDLE};
    static const int sides[3] = {ANCHOR_BACK_CORNER, ANCHOR_BACK_WING, ANCHOR_HALF_SIDE};
    for (int i = 0; i < 3; i++) {
        shares_add(out, middle[i], false, of * rows[i] * (1 - side));
        shares_add(out, sides[i], false, of * rows[i] * side);
    }
}

/* How much a press is still one, with the ball at p: 1 in the backcourt. */
static double in_backcourt(const struct court *court, bool press, struct vec2 p)
{
    return press ? real_clamp(1 - (court->half_court - p.y) / FALLS_BACK, 0, 1) : 0;
}

static struct shares shares_of(const struct court *court, bool press, struct vec2 ball, bool thrown)
{
    struct shares out = {.count = 0};
    struct vec2 p = vec2_of(fabs(ball.x), ball.y);
    double back = in_backcourt(court, press, p);
    if (press && thrown && p.y > court->half_court) {
        double right = .5 + real_clamp(p.x / court->half_width, 0, 1) / 2;
        shares_add(&out, ANCHOR_THROW_IN, false, right);
        shares_add(&out, ANCHOR_THROW_IN, true, 1 - right);
    } else {
        if (back > 0) {
            back_shares(court, p, back, &out);
        }
        if (back < 1) {
            front_shares(court, enclosed(court, p), 1 - back, &out);
        }
    }
    for (int i = 0; ball.x < 0 && i < out.count; i++) {
        out.at[i].mirrored = !out.at[i].mirrored;
    }
    return out;
}

/* ---- the homes ---- */

/* What the tables' floor, a high school's, has there: the lane, the free-throw line, the corner
 * and the top of the arc stay what they are on every court. */
#define TABLE_LANE (6 * FEET)
#define TABLE_CORNER (20.75 * FEET)
#define TABLE_LINE (13.75 * FEET)
#define TABLE_TOP (20.75 * FEET)

static double stretch(double v, double first, double second, double new_first, double new_second)
{
    return v <= first ? v / first * new_first
                      : new_first + (v - first) / (second - first) * (new_second - new_first);
}

static struct vec2 on_court(const struct court *court, double x_feet, double y_feet)
{
    double x = stretch(fabs(x_feet) * FEET, TABLE_LANE, TABLE_CORNER, court->lane_half_width,
                       court_spot(court, SPOT_CORNER, SIDE_RIGHT).x);
    double y = y_feet * FEET;
    if (y > 0) {
        y = stretch(y, TABLE_LINE, TABLE_TOP, court->free_throw,
                    court_spot(court, SPOT_TOP, SIDE_NONE).y);
    }
    return vec2_of(x_feet < 0 ? -x : x, y);
}

static struct vec2 cell_point(const struct court *court, const struct cell *cell)
{
    struct vec2 p = on_court(court, cell->x, cell->y);
    if (cell->kind == CELL_BACK) {
        return court_mirror_back(court, p);
    }
    return cell->kind == CELL_HALF ? vec2_of(p.x, court->half_court + cell->y * FEET) : p;
}

static void take_share(const struct court *court, const struct cell *cell, bool mirrored,
                       double share, struct zone_home *home)
{
    switch ((enum cell_kind)cell->kind) {
    case CELL_AT:
    case CELL_UNTIL:
    case CELL_BACK:
    case CELL_HALF: {
        struct vec2 p = cell_point(court, cell);
        p.x = mirrored ? 0 - p.x : p.x; /* never -0 */
        home->at = vec2_along(home->at, p, share);
        home->point += share;
        home->until += cell->kind == CELL_UNTIL ? share : 0;
        break;
    }
    case CELL_BALL:
        home->ball += share;
        break;
    case CELL_ABOVE:
        home->above += share;
        break;
    case CELL_TRAP:
        home->trap += share;
        break;
    case CELL_OWN:
        break;
    }
}

void zone_homes(const struct court *court, enum zone zone, struct vec2 ball, bool thrown_in,
                bool mirrored, struct zone_home home[ZONE_DEFENDERS])
{
    ball.x = mirrored ? -ball.x : ball.x;
    struct shares shares = shares_of(court, zones[zone].row.press, ball, thrown_in);
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        home[k] = (struct zone_home){.at = vec2_of(0, 0)};
        for (int i = 0; i < shares.count; i++) {
            const struct share *share = &shares.at[i];
            bool front = share->anchor < ANCHOR_FRONT_COUNT;
            enum zone rows = front && zones[zone].row.press ? zones[zone].row.falls_back : zone;
            int place = share->mirrored ? zones[rows].mirror[k] - '1' : k;
            take_share(court, &cells[rows][share->anchor][place], share->mirrored, share->share,
                       &home[k]);
        }
        if (home[k].point > 0) {
            home[k].at = vec2_scale(home[k].at, 1 / home[k].point);
            home[k].at.x = mirrored ? 0 - home[k].at.x : home[k].at.x;
        }
    }
}

struct vec2 zone_reach(const struct court *court, enum zone zone, struct vec2 ball)
{
    struct vec2 p = vec2_of(fabs(ball.x), ball.y);
    struct vec2 in = enclosed(court, p);
    in = vec2_mix(in, p, in_backcourt(court, zones[zone].row.press, p));
    return vec2_of(ball.x < 0 ? 0 - in.x : in.x, in.y);
}
