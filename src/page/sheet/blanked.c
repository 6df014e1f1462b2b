/* SPDX-License-Identifier: MIT */
/* blanked: see blanked.h. */
#include "page/sheet/blanked.h"

#include <string.h>

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
    double away = vec2_length(vec2_sub(item->at, runners[item->who].start));
    return away > 3 * item->radius + item->width;
}

/* ---- letters ---- */

/* How far a place is from what an item paints, at the nearest of the points that make it. */
static double item_distance(const struct scene_item *item, struct vec2 at)
{
    if (item->shape == ITEM_CIRCLE) {
        double edge = vec2_length(vec2_sub(at, item->at)) - item->radius;
        return item->fill == ROLE_NONE ? (edge < 0 ? -edge : edge) : edge;
    }
    if (item->shape == ITEM_TEXT) {
        double half = 0.5 * METRICS_CAP_HEIGHT * item->size;
        return vec2_length(vec2_sub(at, vec2_of(item->at.x, item->at.y - half))) - half * 1.15;
    }
    double least = 1e9;
    struct vec2 last = {0, 0};
    for (size_t i = 0; i < item->count; i++) {
        const struct path_element *element = &item->path[i];
        struct vec2 end = element->op == OP_CURVE ? element->p[2] : element->p[0];
        for (int k = 1; k <= 8 && element->op != OP_MOVE && element->op != OP_CLOSE; k++) {
            double t = k / 8.0, u = 1 - t;
            struct vec2 p = vec2_add(vec2_scale(last, u), vec2_scale(end, t));
            if (element->op == OP_CURVE) {
                p = vec2_add(vec2_scale(last, u * u * u), vec2_scale(end, t * t * t));
                p = vec2_add(p, vec2_scale(element->p[0], 3 * t * u * u));
                p = vec2_add(p, vec2_scale(element->p[1], 3 * t * t * u));
            }
            least = real_min(least, vec2_length(vec2_sub(at, p)));
        }
        last = element->op == OP_CLOSE ? last : end;
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
static double item_score(const struct scene *scene, const struct scene_item *item, struct vec2 at,
                         const struct letter_anchor *anchor)
{
    double inside = letter_radius(scene) + LETTER_WHITE, far = item_distance(item, at);
    double own = vec2_distance(at, anchor->at) - anchor->radius, room = far - inside;
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

static double letter_score(const struct scene *scene, struct vec2 at,
                           const struct letter_anchor *anchor)
{
    double inside = letter_radius(scene) + LETTER_WHITE, score = 0;
    if (at.x < inside || at.y < inside || at.x > scene->width - inside ||
        at.y > scene->height - inside) {
        score += 1000;
    }
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (!item->casing && item->class != CLASS_PAGE && item->class != CLASS_CLEAR) {
            score += item_score(scene, item, at, anchor);
        }
    }
    return score;
}

/* Beside its anchor, off everything and nearer to it than to anything else: all ways round are
 * tried, so that its place says nothing of where the line goes. */
static struct vec2 letter_place(const struct scene *scene, const struct letter_anchor *anchor)
{
    struct vec2 best = anchor->at;
    double least = 1e9;
    for (int far = 0; far < DISTANCES; far++) {
        double away = anchor->radius + LETTER_GAP + letter_radius(scene) + FURTHER * far;
        for (int i = 0; i < DIRECTIONS; i++) {
            double angle = 2 * REAL_PI * i / DIRECTIONS - 0.75 * REAL_PI;
            struct vec2 out = vec2_of(real_cos(angle), real_sin(angle));
            struct vec2 at = vec2_along(anchor->at, out, away);
            double score = letter_score(scene, at, anchor) + FURTHER * far;
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
    struct vec2 at =
        vec2_of(numeral->at.x, numeral->at.y - 0.5 * METRICS_CAP_HEIGHT * numeral->size);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_BALL && item->shape == ITEM_CIRCLE &&
            vec2_length(vec2_sub(item->at, at)) < item->radius) {
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
        double half = 0.5 * METRICS_CAP_HEIGHT * numeral->size;
        struct vec2 middle = vec2_of(numeral->at.x, numeral->at.y - half);
        double own = symbol_radius(out, numeral);
        if (!found || vec2_length(vec2_sub(start, middle)) < own + NEAR_START) {
            anchor.at = middle;
            anchor.radius = own;
        }
    }
    put_disc(arena, out, blank, letter_place(out, &anchor));
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
