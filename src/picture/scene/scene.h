/* SPDX-License-Identifier: MIT */
/* scene: one diagram as a display list, in points, y down, ready for any writer. */
#ifndef PICTURE_SCENE_SCENE_H
#define PICTURE_SCENE_SCENE_H

#include "floor/sim/run.h"
#include "judge/check/check.h"
#include "picture/metrics/metrics.h"

/* What a mark is for: its class in live SVG, its place in the order of drawing. */
enum scene_class {
    CLASS_PAGE,
    CLASS_COURT,
    CLASS_BASKET,
    CLASS_CLEAR,
    CLASS_MOVE,
    CLASS_PASS,
    CLASS_DRIBBLE,
    CLASS_SCREEN,
    CLASS_HANDOFF,
    CLASS_SHOT,
    CLASS_DEFENSE_MOVE,
    CLASS_CONE,
    CLASS_LINE_OF_PLAYERS,
    CLASS_BEAD,
    CLASS_END,
    CLASS_DEFENDER,
    CLASS_PLAYER,
    CLASS_BALL,
    CLASS_ORDER,
    CLASS_FINDING,
    CLASS_CAPTION,
    CLASS_COUNT
};
/* Colours by role; the theme says what they are. ROLE_NONE: not painted. */
enum role {
    ROLE_NONE,
#define ROLE(name, word, print, screen, dark) ROLE_##name,
#include "picture/scene/roles.def"
#undef ROLE
    ROLE_COUNT
};
enum theme { THEME_PRINT, THEME_SCREEN, THEME_DARK, THEME_COUNT };
struct theme_row {
    const char *word;
    unsigned rgb[ROLE_COUNT]; /* 0xRRGGBB */
    bool has_floor, has_lane; /* tints painted */
};
/* "hand-off", "ink": what they are called in dumps and as classes of live SVG. */
const char *scene_class_word(enum scene_class class);
const char *scene_role_word(enum role role);
const struct theme_row *theme_row(enum theme theme);
bool theme_find(struct str word, enum theme *theme);

enum path_op { OP_MOVE, OP_LINE, OP_CURVE, OP_CLOSE };
struct path_element {
    enum path_op op;
    struct vec2 p[3]; /* CURVE: two handles and the end; else p[0] */
};
enum item_shape { ITEM_PATH, ITEM_CIRCLE, ITEM_TEXT };
struct scene_item {
    enum scene_class class;
    enum item_shape shape;
    enum role fill, stroke;
    double width; /* of the stroke */
    enum { CAP_BUTT, CAP_ROUND } cap;
    enum { JOIN_ROUND, JOIN_MITER } join; /* miter limit 4 */
    struct path_element *path;            /* ITEM_PATH: dashes are already cut */
    size_t count;
    struct vec2 at; /* CIRCLE: centre; TEXT: baseline, middle */
    double radius;
    struct str text;
    double size;
    enum face face;
    enum { ANCHOR_MIDDLE, ANCHOR_START } anchor;
    int task;    /* index of the task it belongs to, or -1 */
    int line;    /* the drawn line it belongs to (its disc, head and bar too), or -1 */
    body who;    /* the player it belongs to, or BODY_NONE */
    body other;  /* a throw's line: who gets the ball; or BODY_NONE */
    bool casing; /* white under a later line at a crossing, or a clear disc */
};
struct vec2 item_middle(const struct scene_item *item); /* of a text, or a circle's */
/* The points of one run of a path's ink, from its element `first` on, curves as short
 * straight pieces; where the next run begins. */
typedef VEC(struct vec2) points_list;
size_t item_ink(struct arena *arena, const struct scene_item *item, size_t first, double flatness,
                points_list *points);
/* Where the floor lies on a picture: points of the middle of the baseline's inner edge, and of one
 * foot of x and of y from there. */
struct floor_place {
    struct vec2 origin, across, down;
};
#define SCENE_SMALL 3.0   /* points a foot of floor; what is smaller drops what was checked */
enum { SCENE_RESTS = 3 }; /* rings and bars of one player that may be moved in a crowd */
struct scene {
    double width, height; /* points */
    enum theme theme;
    struct str title, description; /* plain text; title names play, step and branch */
    VEC(struct scene_item) items;  /* in the order they are drawn */
    unsigned uses; /* bit 1 << scene_class for each class that occurs: for the key */
    int lines;     /* how many lines of players and ball are drawn */
    double scale;  /* points a foot of floor */
    struct floor_place floor;
    int labels_left_out; /* order discs that found no place */
    unsigned left_out;   /* bit 1 << body: whose */
    int labels_beside;   /* that stand beside their line */
    int wrong_sides;     /* numerals and bars that a movement's line passes as its run does not */
    unsigned wrong;      /* bit 1 << body: whose line, and whose numeral or bar */
    unsigned rests[SCENE_RESTS]; /* bit 1 << body: who has an n-th ring or bar of his own */
};

/* The diagrams of a play: each step's, then each of its branches'. */
struct diagram {
    const struct segment *segment;
    int step, branch; /* branch -1: the step's common part */
    struct str label; /* "2", "2a" */
    struct str title;
};
typedef VEC(struct diagram) diagram_list;

struct scene_options {
    double width; /* points; 0: 237.6 (3.3 in) */
    enum theme theme;
    body accent;      /* whose page it is; BODY_NONE: nobody's */
    size_t accent_at; /* of that one's lines, those of this task and of later ones alone */
    bool hide_defense, caution, beads;
    bool caption;                 /* title and sentences, over and under the floor */
    bool heading;                 /* the title alone */
    const struct team *names;     /* first names beside the numbers, from its roster; or NULL */
    const finding_list *findings; /* drawn when not NULL, and told under the floor */
    bool told_elsewhere;          /* they are told on the page */
    double below; /* least y of the floor shown, feet from the baseline; 0: by rule */
    /* All these on one floor, wherever anybody is in them at any time: their frames are the same.
     * NULL: what this diagram needs. */
    const diagram_list *together;
    /* Where no sentence stands under it: no order discs, no names, numerals only at the X that a
     * read is about. With `order` the discs all the same: a card's, to be read in a hurry. */
    bool plain, order;
    unsigned named; /* bit 1 << n: xN is spoken of beside it, and numbered however small it is */
    struct scene_memory *memory; /* or NULL; what is drawn is the same */
};
/* What was moved in pictures so that nothing lies on anything: the next one of the same diagram and
 * size, for another reader, need not search again. Holds for as long as the plays it was asked
 * about live; lives in `arena`. */
struct scene_memory *scene_memory_new(struct arena *arena);

void scene_diagrams(struct arena *arena, const struct run *run, diagram_list *diagrams);
/* A step's own, or that of its first way on; NULL: it has none. */
const struct diagram *scene_first_diagram(const diagram_list *diagrams, size_t step);

/* The first task of which it may show a line: a way on shows its own alone, but the whole step
 * where half a line of that would be left. Its words begin there too. */
size_t scene_first_task(const struct diagram *diagram);
/* The first task that is a way on's own; 0: of a step, and of a way whose picture begins with it.
 */
size_t scene_own_task(const struct diagram *diagram);
/* Is it a way on that shows the whole step? */
bool scene_begins_again(const struct diagram *diagram);

/* What a picture takes up, for its title: "after 1a"; a way on that shows the whole step, where its
 * sisters show their own sentences alone, "from the start of step 1"; else empty. */
struct str scene_after(struct arena *arena, const struct diagram *diagram);

struct scene *scene_make(struct arena *arena, const struct diagram *diagram,
                         const struct scene_options *options);
/* The same with nothing drawn: its size alone, in no time. */
struct scene *scene_blank(struct arena *arena, const struct diagram *diagram,
                          const struct scene_options *options);
/* What is drawn of it, in memory of its own: making a scene takes many times as much. */
struct scene *scene_copy(struct arena *arena, const struct scene *scene);
/* The same drawing so many times as large, lines and letters too. */
struct scene *scene_enlarge(struct arena *arena, const struct scene *scene, double times);
/* Height a scene of this width would have, without making it. */
double scene_height(struct arena *arena, const struct diagram *diagram,
                    const struct scene_options *options);

/* Both halves of a floor alone, once for many pictures: its place is SCENE_COURT_SCALE points a
 * foot with the middle of the baseline at (0, 0). */
#define SCENE_COURT_SCALE 7.39 /* a phone's (390 px), so that lines there are as wide as meant */
struct scene *scene_court(struct arena *arena, const struct court *court);

/* A sample mark for a page's key, baseline at `at`, `length` long, of CLASS_MOVE .. CLASS_END but
 * beads, a defender, the ball; CLASS_PLAYER is the coach's letter, for players' numbers need no
 * key. */
void scene_key_sample(struct arena *arena, struct scene *scene, enum scene_class class,
                      struct vec2 at, double length);
/* "run", "defender x1"; in as few words as can be. */
const char *scene_key_word(enum scene_class class, bool brief);
/* The marks of a picture that a key has a sample for, as `uses`. */
unsigned scene_key_uses(const struct scene *scene);

/* What lies on what, for tests and `--measure`. */
enum measured {
    MEASURED_SYMBOL, /* a player, an X, its numeral, a cone */
    MEASURED_LINE,
    MEASURED_BAR, /* a screen's, a hand-off's */
    MEASURED_DOT, /* where a player ends */
    MEASURED_LABEL,
    MEASURED_HEAD,   /* of an arrow */
    MEASURED_BASKET, /* its ring */
    MEASURED_TICK,   /* who waits in a line of players */
    MEASURED_KINDS
};
const char *measured_word(enum measured kind);
struct scene_measure {
    double least_gap; /* points, between a line and a symbol that is not its own */
    int on[MEASURED_KINDS]
          [MEASURED_KINDS]; /* a <= b; a line on a line: so near that the two look one */
    int numerals_own; /* of on: numerals that touch their own X, of which nobody is in doubt */
    int outside;
    int labels, labels_left_out, labels_beside;
    int labels_astray;             /* nearer to another line than to their own, or far from it */
    int crossings, crossings_flat; /* flat: under 12 degrees */
    int wrong_sides; /* numerals and bars that a line passes on the other side than its run */
    unsigned bodies; /* bit 1 << body: whose marks lie on something, or are passed wrong, or whose
                        disc has no place, or is astray, and whose line it is nearer to */
};
int scene_measure_overlaps(const struct scene_measure *measure); /* all of them, and outside */
/* Those in which one of two marks may not be told: all but of heads, the basket, who waits and
 * a numeral on its own X. */
int scene_measure_hidden(const struct scene_measure *measure);
void scene_measure(struct arena *arena, const struct scene *scene, struct scene_measure *measure);
void scene_dump(struct strbuf *out, const struct scene *scene);

#endif
