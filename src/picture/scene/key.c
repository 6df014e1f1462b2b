/* SPDX-License-Identifier: MIT */
/* key: one sample of each mark for the key at the foot of a page, in the sizes of a 3.3 in diagram.
 */
#include "picture/scene/drawing.h"

#define KEY_SCALE 4.714 /* points a foot at 3.3 in */

static void sample_stroke(struct drawing *drawing, enum scene_class class, struct vec2 at,
                          double length)
{
    struct stroke stroke = {.class = class,
                            .who = BODY_NONE,
                            .other = BODY_NONE,
                            .start = -1,
                            .end = -1,
                            .grow = 1,
                            .role = class == CLASS_DEFENSE_MOVE ? ROLE_DEFENDER : ROLE_INK,
                            .parts = 1,
                            .head = class != CLASS_SCREEN && class != CLASS_HANDOFF};
    stroke.part[0].task = -1;
    struct vec2 ends[2] = {at, vec2_of(at.x + length, at.y)};
    stroke.trail.at = (struct vec2 *)arena_copy(drawing->arena, (const char *)ends, sizeof ends);
    stroke.trail.count = 2;
    stroke.path = path_of(drawing->arena, stroke.trail.at, 2);
    if (class == CLASS_SCREEN) {
        stroke.end = stop_add(
            drawing, (struct stop){.kind = STOP_BAR, .at = ends[1], .facing = vec2_of(1, 0)});
    }
    VEC_PUSH(drawing->arena, &drawing->strokes, stroke);
    ink_make(drawing);
    strokes_draw(drawing);
}

/* A ringed numeral, `length` wide, in letters that can be read. */
static void sample_ball(struct drawing *drawing, enum scene_class class, struct vec2 at,
                        double length)
{
    const double numeral = 8;
    double stroke = drawing->size.ring_stroke * length / (2 * drawing->size.ring);
    double radius = (length - stroke) / 2;
    struct vec2 middle = vec2_of(at.x + length / 2, at.y);
    put_circle(drawing, class, middle, radius, ROLE_NONE, ROLE_INK, stroke);
    put_text(drawing, CLASS_PLAYER, STR("1"), middle, numeral, FACE_BOLD, ROLE_INK);
}

/* An X with its number. */
static void sample_defender(struct drawing *drawing, enum scene_class class, struct vec2 at,
                            double length)
{
    const double numeral = 8; /* as beside a defender, in letters that can be read */
    double wide = length - 0.6 * numeral, half = wide / 2;
    pen_move(drawing, vec2_of(at.x, at.y - half));
    pen_line(drawing, vec2_of(at.x + wide, at.y + half));
    pen_move(drawing, vec2_of(at.x, at.y + half));
    pen_line(drawing, vec2_of(at.x + wide, at.y - half));
    pen_stroke(drawing, class, ROLE_DEFENDER, drawing->size.x_stroke);
    put_text(drawing, class, STR("1"), vec2_of(at.x + length - 0.2 * numeral, at.y), numeral,
             FACE_MEDIUM, ROLE_DEFENDER);
}

static void sample_line(struct drawing *drawing, enum scene_class class, struct vec2 at,
                        double length)
{
    for (int i = 0; i < 3; i++) {
        double x = at.x + length * (i + 0.5) / 3;
        pen_move(drawing, vec2_of(x + 1, at.y - 3.2));
        pen_line(drawing, vec2_of(x - 1, at.y + 3.2));
        pen_stroke(drawing, class, ROLE_INK, drawing->size.line);
    }
}

static void sample_coach(struct drawing *drawing, enum scene_class class, struct vec2 at,
                         double length)
{
    put_text(drawing, class, STR("C"), vec2_of(at.x + length / 2, at.y), length * 1.3, FACE_BOLD,
             ROLE_INK);
}

static void sample_cone(struct drawing *drawing, enum scene_class class, struct vec2 at,
                        double length)
{
    (void)class;
    cone_draw(drawing, vec2_of(at.x + length / 2, at.y));
}

static void sample_end(struct drawing *drawing, enum scene_class class, struct vec2 at,
                       double length)
{
    const struct sizes *size = &drawing->size;
    (void)length;
    put_circle(drawing, class, vec2_of(at.x + size->end + size->end_stroke / 2, at.y), size->end,
               ROLE_PAGE, ROLE_INK, size->end_stroke);
}

/* What each is called, also where there is little room, and how it is drawn. */
static const struct {
    const char *word, *brief; /* NULL: there is no shorter one */
    void (*draw)(struct drawing *drawing, enum scene_class class, struct vec2 at, double length);
} samples[CLASS_COUNT] = {
    [CLASS_MOVE] = {"run", NULL, sample_stroke},
    [CLASS_PASS] = {"pass", NULL, sample_stroke},
    [CLASS_DRIBBLE] = {"dribble", NULL, sample_stroke},
    [CLASS_SCREEN] = {"screen", NULL, sample_stroke},
    [CLASS_HANDOFF] = {"hand-off", NULL, sample_stroke},
    [CLASS_SHOT] = {"shot", NULL, sample_stroke},
    [CLASS_DEFENSE_MOVE] = {"defender\xE2\x80\x99s way", NULL, sample_stroke},
    [CLASS_CONE] = {"cone", NULL, sample_cone},
    [CLASS_LINE_OF_PLAYERS] = {"who waits", NULL, sample_line},
    [CLASS_END] = {"where you finish", "finish", sample_end},
    [CLASS_DEFENDER] = {"defender x1", "defender", sample_defender},
    [CLASS_PLAYER] = {"coach", NULL, sample_coach},
    [CLASS_BALL] = {"ball", NULL, sample_ball},
};

const char *scene_key_word(enum scene_class class, bool brief)
{
    return brief && samples[class].brief ? samples[class].brief : samples[class].word;
}

void scene_key_sample(struct arena *arena, struct scene *scene, enum scene_class class,
                      struct vec2 at, double length)
{
    struct scene_options options = {.accent = BODY_NONE, .theme = scene->theme};
    struct drawing drawing = {
        .arena = arena, .options = &options, .scene = scene, .size = sizes_of(KEY_SCALE)};
    int lines = scene->lines;
    samples[class].draw(&drawing, class, at, length);
    scene->lines = lines;
}

unsigned scene_key_uses(const struct scene *scene)
{
    const unsigned player = 1u << CLASS_PLAYER;
    bool coach = false;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        coach = coach || (item->class == CLASS_PLAYER && item->who == BODY_COACH);
    }
    return (scene->uses & ~player) | (coach ? player : 0);
}
