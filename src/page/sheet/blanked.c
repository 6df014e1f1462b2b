/* SPDX-License-Identifier: MIT */
/* blanked: see blanked.h. */
#include "page/sheet/blanked.h"

#include <math.h>
#include <string.h>

#include "base/geom/shape.h"
#include "base/real.h"

/* Points, all but the first (ours). */
enum { DIRECTIONS = 24, DISTANCES = 6 };
#define FURTHER 2.0       /* from one distance to the next */
#define LETTER_RADIUS 5.2 /* or as large as the picture's own discs */
#define LETTER_SIZE 1.65  /* of the radius */
#define LETTER_WHITE 1.0  /* round the disc */
#define LETTER_GAP 1.6    /* from what it stands beside */
#define AIR 2.5           /* to what is not its own, where there is room */
#define NEAR_START 14.0   /* a line that starts so near to its player's numeral starts there */

/* ---- what goes ---- */

static bool is_line_class(enum scene_class class)
{
    return (class >= CLASS_MOVE && class <= CLASS_SHOT) || class == CLASS_ORDER;
}

/* Lines on which one of the missing tasks is drawn: a run that goes on is one line. */
static bool *lines_without(struct arena *arena, const struct scene *scene, const bool *missing)
{
    int most = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        most = scene->items.at[i].line > most ? scene->items.at[i].line : most;
    }
    bool *gone = arena_array(arena, bool, (size_t)most + 1);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->line >= 0 && item->task >= 0 && is_line_class(item->class) &&
            missing[item->task]) {
            gone[item->line] = true;
        }
    }
    return gone;
}

/* Where the first missing line of a blank begins. */
static bool find_start(const struct scene *scene, const struct blank *blank, struct vec2 *start)
{
    int line = -1;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->task == (int)blank->first && item->line >= 0 && is_line_class(item->class)) {
            line = item->line;
        }
    }
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->line == line && line >= 0 && item->shape == ITEM_PATH && !item->casing &&
            item->class != CLASS_ORDER && item->count > 0) {
            *start = item->path[0].p[0];
            return true;
        }
    }
    return false;
}

/* The numeral of a player; or NULL. */
static const struct scene_item *find_player(const struct scene *scene, body who)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_PLAYER && item->shape == ITEM_TEXT && item->who == who) {
            return item;
        }
    }
    return NULL;
}

/* Whose lines are missing, and where those begin: a ring elsewhere would tell where they end. */
struct runner {
    bool missing;
    struct vec2 start;
};

static void find_runners(const struct scene *scene, const struct asked *asked,
                         struct runner runners[BODY_COUNT])
{
    const struct segment *segment = asked->diagram->segment;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        bool throws = task->kind == TASK_PASS || task->kind == TASK_SHOOT;
        if (asked->missing[i] && !throws) {
            runners[task->who].missing = true;
        }
    }
    for (size_t i = 0; i < asked->blanks.count; i++) {
        const struct blank *blank = &asked->blanks.at[i];
        find_start(scene, blank, &runners[blank->who].start);
    }
}

static bool is_end_of(const struct scene_item *item, const struct runner runners[BODY_COUNT])
{
    if (item->class != CLASS_END || item->who >= BODY_COUNT || !runners[item->who].missing) {
        return false;
    }
    double away = vec2_distance(item->at, runners[item->who].start);
    return away > 3 * item->radius + item->width;
}

/* ---- letters ---- */

/* What a letter may lie on, its lines as points. */
struct obstacle {
    const struct scene_item *item;
    VEC(points_list) runs;
};
typedef VEC(struct obstacle) obstacle_list;

static void find_obstacles(struct arena *arena, const struct scene *scene, obstacle_list *out)
{
    const double flatness = 0.1; /* points */
    for (size_t i = 0; i < scene->items.count; i++) {
        struct obstacle obstacle = {.item = &scene->items.at[i]};
        bool path = obstacle.item->shape == ITEM_PATH;
        if (obstacle.item->casing || obstacle.item->class == CLASS_PAGE ||
            obstacle.item->class == CLASS_CLEAR) {
            continue;
        }
        for (size_t next = 0; path && next < obstacle.item->count;) {
            points_list run = {0};
            next = item_ink(arena, obstacle.item, next, flatness, &run);
            VEC_PUSH(arena, &obstacle.runs, run);
        }
        VEC_PUSH(arena, out, obstacle);
    }
}

/* How far a place is from what is painted there. */
static double obstacle_distance(const struct obstacle *obstacle, struct vec2 at)
{
    const struct scene_item *item = obstacle->item;
    double least = 1e9, middle = vec2_distance(at, item_middle(item));
    if (item->shape == ITEM_CIRCLE) {
        double edge = middle - item->radius;
        return item->fill == ROLE_NONE ? fabs(edge) : edge;
    }
    if (item->shape == ITEM_TEXT) {
        return middle - 1.15 * 0.5 * METRICS_CAP_HEIGHT * item->size;
    }
    for (size_t i = 0; i < obstacle->runs.count; i++) {
        const points_list *run = &obstacle->runs.at[i];
        least = real_min(least, way_distance(at, run->at, run->count));
    }
    return least;
}

static double letter_radius(const struct scene *scene)
{
    return real_max(LETTER_RADIUS, scene->scale); /* a disc of a foot, see sizes.def */
}

/* Where a letter is looked for: beside what it belongs to, and whose that is. */
struct letter_anchor {
    struct vec2 at;
    double radius;
    body who;
};

/* What somebody would take a letter beside it to belong to. */
static bool is_mark(const struct scene_item *item)
{
    return item->class > CLASS_CLEAR && item->class != CLASS_FINDING &&
           item->class != CLASS_CAPTION;
}

/* What one thing in the picture costs a letter that is so far from its own: what it would lie on,
 * be tight with, or be taken for a letter of. */
static double obstacle_score(const struct obstacle *obstacle, struct vec2 at, double inside,
                             const struct letter_anchor *anchor)
{
    const struct scene_item *item = obstacle->item;
    double far = obstacle_distance(obstacle, at), room = far - inside;
    double own = vec2_distance(at, anchor->at) - anchor->radius;
    if (!is_mark(item)) {
        return room >= 0 ? 0 : item->class == CLASS_BASKET ? -30 * room : 1;
    }
    double score = room < 0 ? 40 - 60 * room : 0;
    if (item->who == anchor->who) {
        return score;
    }
    score += room >= 0 && room < AIR ? 5 * (AIR - room) / AIR : 0;
    return score + (far < own + 1 ? 35 : 0);
}

static double letter_score(const struct scene *scene, const obstacle_list *obstacles,
                           struct vec2 at, const struct letter_anchor *anchor)
{
    double inside = letter_radius(scene) + LETTER_WHITE, score = 0;
    if (at.x < inside || at.y < inside || at.x > scene->width - inside ||
        at.y > scene->height - inside) {
        score += 1000;
    }
    for (size_t i = 0; i < obstacles->count; i++) {
        score += obstacle_score(&obstacles->at[i], at, inside, anchor);
    }
    return score;
}

/* Beside its anchor, off everything and nearer to it than to anything else: all ways round are
 * tried, so that its place says nothing of where the line goes. The search for places of order
 * discs (scene's labels) weighs lines while they are laid, the missing ones with them; here they
 * are gone from a finished picture, and nothing may tell where they were. */
static struct vec2 letter_place(struct arena *arena, const struct scene *scene,
                                const struct letter_anchor *anchor)
{
    obstacle_list obstacles = {0};
    find_obstacles(arena, scene, &obstacles);
    struct vec2 best = anchor->at;
    double least = 1e9;
    for (int far = 0; far < DISTANCES; far++) {
        double away = anchor->radius + LETTER_GAP + letter_radius(scene) + FURTHER * far;
        for (int i = 0; i < DIRECTIONS; i++) {
            double angle = 2 * REAL_PI * i / DIRECTIONS - 0.75 * REAL_PI;
            struct vec2 out = vec2_of(real_cos(angle), real_sin(angle));
            struct vec2 at = vec2_along(anchor->at, out, away);
            double score = letter_score(scene, &obstacles, at, anchor) + FURTHER * far;
            if (score < least - 1e-9) {
                least = score;
                best = at;
            }
        }
    }
    return best;
}

static void put_disc(struct arena *arena, struct scene *scene, const struct blank *blank,
                     struct vec2 at)
{
    double radius = letter_radius(scene);
    struct scene_item disc = {.class = CLASS_ORDER,
                              .shape = ITEM_CIRCLE,
                              .fill = ROLE_PAGE,
                              .at = at,
                              .radius = radius + LETTER_WHITE,
                              .task = -1,
                              .line = -1,
                              .who = blank->who,
                              .other = BODY_NONE,
                              .casing = true};
    VEC_PUSH(arena, &scene->items, disc);
    disc.radius = radius;
    disc.fill = ROLE_ORDER;
    disc.casing = false;
    VEC_PUSH(arena, &scene->items, disc);
    disc.shape = ITEM_TEXT;
    disc.fill = ROLE_ORDER_TEXT;
    disc.text = str_format(arena, "%c", blank->letter);
    disc.size = LETTER_SIZE * radius;
    disc.face = FACE_SEMIBOLD;
    disc.at.y += 0.5 * METRICS_CAP_HEIGHT * disc.size;
    VEC_PUSH(arena, &scene->items, disc);
}

/* Radius of the ring round who has the ball, or of a numeral. */
static double symbol_radius(const struct scene *scene, const struct scene_item *numeral)
{
    struct vec2 at = item_middle(numeral);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_BALL && item->shape == ITEM_CIRCLE &&
            vec2_distance(item->at, at) < item->radius) {
            return item->radius + 0.5 * item->width;
        }
    }
    return 0.47 * numeral->size;
}

/* Where the player of a blank is when the first of his missing lines begins: by his numeral, or by
 * the end of the last line of his that stays. */
static void letter_blank(struct arena *arena, struct scene *out, const struct scene *whole,
                         const struct blank *blank)
{
    const double end_ring = 3;
    const struct scene_item *numeral = find_player(out, blank->who);
    struct vec2 start = {0, 0};
    bool found = find_start(whole, blank, &start);
    if (!numeral && !found) {
        return;
    }
    struct letter_anchor anchor = {start, end_ring, blank->who};
    if (numeral) {
        struct vec2 middle = item_middle(numeral);
        double own = symbol_radius(out, numeral);
        if (!found || vec2_distance(start, middle) < own + NEAR_START) {
            anchor.at = middle;
            anchor.radius = own;
        }
    }
    put_disc(arena, out, blank, letter_place(arena, out, &anchor));
}

const struct scene *blanked_scene(struct arena *arena, const struct asked *asked)
{
    const struct scene *scene = asked->scene;
    const bool *gone = lines_without(arena, scene, asked->missing);
    struct runner runners[BODY_COUNT] = {0};
    find_runners(scene, asked, runners);
    struct scene *out = arena_new(arena, struct scene);
    *out = *scene;
    memset(&out->items, 0, sizeof out->items);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (!(item->line >= 0 && gone[item->line]) && !is_end_of(item, runners)) {
            VEC_PUSH(arena, &out->items, *item);
        }
    }
    for (size_t i = 0; i < asked->blanks.count; i++) {
        letter_blank(arena, out, scene, &asked->blanks.at[i]);
    }
    return out;
}

/* The letter of the blank that a task belongs to; 0: it is not missing. */
static char letter_of(const struct asked *asked, int task)
{
    for (size_t i = 0; i < asked->blanks.count && task >= 0; i++) {
        if (asked->blanks.at[i].tasks[task]) {
            return asked->blanks.at[i].letter;
        }
    }
    return 0;
}

const struct scene *answered_scene(struct arena *arena, const struct asked *asked)
{
    struct scene *out = scene_copy(arena, asked->scene);
    bool shown[BLANK_LETTERS] = {false};
    for (size_t i = 0; i < out->items.count; i++) {
        struct scene_item *item = &out->items.at[i];
        char letter = letter_of(asked, item->task);
        if (item->class == CLASS_ORDER && item->shape == ITEM_TEXT && letter) {
            item->text = str_format(arena, "%c", letter);
            shown[letter - 'A'] = true;
        }
    }
    for (size_t i = 0; i < asked->blanks.count; i++) {
        if (!shown[asked->blanks.at[i].letter - 'A']) { /* the picture is too small for discs */
            letter_blank(arena, out, asked->scene, &asked->blanks.at[i]);
        }
    }
    return out;
}
