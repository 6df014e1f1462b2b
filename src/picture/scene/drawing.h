/* SPDX-License-Identifier: MIT */
/* drawing: what the files of this room share while one diagram is made. Everything is in points of
 * the picture, y down, unless a name says feet or metres. Private to the room. */
#ifndef PICTURE_SCENE_DRAWING_H
#define PICTURE_SCENE_DRAWING_H

#include "base/geom/path.h"
#include "base/geom/shape.h"
#include "base/real.h"
#include "base/vec.h"
#include "picture/scene/moving.h"
#include "picture/scene/scene.h"

/* Sizes of all marks, points. */
struct sizes {
    double k; /* points a foot */
    /* k < SCENE_SMALL: no numerals of defenders but of whom words are about, no lane marks. Discs
     * stay, all or none: a card has no sentences, and players read the order off them (ours). */
    bool small;
#define SIZE(name, feet, least) double name;
#include "picture/scene/sizes.def"
#undef SIZE
};
struct sizes sizes_of(double k);
/* Those of a card, grown with the floor: what is decided by them has room at every size. */
struct sizes sizes_as_card(double k);

/* The floor shown and where it lies on the picture. Feet count from the baseline's inner edge (y)
 * and the long axis (x), as the tables of sizes do. */
struct frame {
    const struct court *court;
    double k;
    struct vec2 low, high;    /* feet shown */
    struct vec2 origin;       /* points of (0, 0) feet */
    struct vec2 across, down; /* points for one foot of x, of y */
    double width, height;
    double top;           /* points above the floor, for a caption */
    bool full, half_line; /* both halves; the division line is in the picture */
};
/* Which tasks a diagram draws, and when it begins. */
struct scope {
    size_t first, end; /* task indices [first, end) */
    double start;      /* seconds of the segment */
};
struct scope scope_of(const struct diagram *diagram);
double answer_start(const struct diagram *diagram); /* when a branch's own sentences begin */
double task_start(const struct segment *segment, size_t index); /* TIME_NEVER: it did not start */
double task_end(const struct segment *segment, size_t index);   /* when its line ends */
struct frame frame_of(struct arena *arena, const struct diagram *diagram,
                      const struct scene_options *options);
struct vec2 frame_feet(const struct frame *frame, struct vec2 metres);
struct vec2 frame_point(const struct frame *frame, struct vec2 metres);
struct vec2 frame_point_feet(const struct frame *frame, double x, double y);
/* A direction of the floor, radians from x toward y, as a unit vector of the picture. */
struct vec2 frame_direction(const struct frame *frame, double angle);
/* A point of the picture back to metres. */
struct vec2 frame_back(const struct frame *frame, struct vec2 point);

/* A way on paper, close points; `corner` marks the sharp ones. */
struct trail {
    struct vec2 *at;
    bool *corner; /* may be NULL: none */
    size_t count;
};

/* Where a line may begin or end. */
enum stop_kind { STOP_SYMBOL, STOP_RING, STOP_BAR, STOP_FREE, STOP_RIM };
struct stop {
    enum stop_kind kind;
    body who;
    struct vec2 at;
    struct vec2 truth;  /* metres */
    double from, to;    /* seconds while the player rests there */
    struct vec2 facing; /* BAR: unit, the way the screener looks */
    bool out;           /* a line goes on from here */
    int on;             /* FREE: the stroke it lies on, and how far along */
    double share;
};

/* One line of a player or the ball. */
struct stroke_part { /* of one sentence */
    int task, order;
    double from, to; /* share of the line's length */
};
enum { STROKE_PARTS = 8 };
struct passed; /* a numeral or a bar that its run passes: sides.c */
struct stroke {
    enum scene_class class;
    body who;       /* whose line it is; a pass: the passer */
    body other;     /* a pass: the receiver */
    int start, end; /* stops, or -1 */
    struct stroke_part part[STROKE_PARTS];
    size_t parts;
    struct trail trail; /* from where the ink starts to the tip of the head or the bar */
    struct path path;   /* the same, measured */
    struct vec2 *ink;   /* what is drawn, as points: zigzags and all; for crossings */
    size_t ink_count;
    struct vec2 tip, back; /* of the head: its tip, and so far back as it is long */
    struct vec2 low, high; /* the box round the ink and its head's tip */
    double width;          /* of the stroke */
    double grow;           /* 1, or more for the reader's own lines */
    enum role role;
    bool head;
    bool standing;       /* a screen set before the diagram begins */
    double began, ended; /* seconds */
    double *clock;       /* seconds at each of `clock_share` shares of the length */
    double *share;
    size_t clocks;
    const struct passed *passed;
    size_t passes;
};

struct symbol {
    body who;
    struct vec2 at;
    double radius; /* its body or its ring's outer edge */
    bool ball;
    bool pinned;         /* an X where a screen finds it */
    struct vec2 numeral; /* a defender's: middle */
    bool has_numeral;
};
struct crossing {
    size_t under, over; /* lines */
    struct vec2 at;
    double along_under, along_over; /* points along each ink */
    double angle;                   /* 0..pi/2 */
};
struct disc {
    struct vec2 at;
    int order, task, line;
    body who;
    bool led; /* it stands off its line, and a thin line leads from it to `tip` */
    struct vec2 tip;
};

struct nudges; /* marks that are moved a little, so that nothing lies on anything: again.h */
struct drawing {
    struct arena *arena;
    const struct diagram *diagram;
    const struct scene_options *options;
    const struct segment *segment;
    const struct play *play;
    struct scope scope;
    struct frame frame;
    struct sizes size;
    struct scene *scene;
    const struct nudges *nudges; /* NULL: none */
    VEC(struct symbol) symbols;
    VEC(struct stop) stops;
    VEC(struct stroke) strokes;
    VEC(struct crossing) crossings;
    VEC(struct disc) discs;
    bool defenders_stay;    /* they have stepped aside as far as they can */
    bool over_defenders;    /* the number being placed may lie on an X that can step aside */
    VEC(struct vec2) words; /* middles of pieces of lettering on the floor */
    VEC(struct vec2) cones;
    VEC(struct vec2) ticks, tick_ways; /* a line of players: middles, and half a tick */
    VEC(body) tick_owners;
    VEC(struct path_element) pen; /* the path being written */
};

/* pen.c: items. */
struct scene_item *item_add(struct drawing *drawing, enum scene_class class, enum item_shape shape);
void pen_move(struct drawing *drawing, struct vec2 at);
void pen_line(struct drawing *drawing, struct vec2 at);
void pen_curve(struct drawing *drawing, struct vec2 handle1, struct vec2 handle2, struct vec2 end);
void pen_close(struct drawing *drawing);
/* An arc about `centre` from angle a to b (either way round), joined to what is there. */
void pen_arc(struct drawing *drawing, struct vec2 centre, struct vec2 x, struct vec2 y, double a,
             double b);
/* Points as few smooth cubics that keep so near to them; corners stay sharp. */
#define PEN_WITHIN 0.12 /* points */
#define PEN_SLIP 0.15   /* points that a line keeps off marks for that */
void pen_way(struct drawing *drawing, const struct vec2 *at, size_t count);
void pen_way_within(struct drawing *drawing, const struct vec2 *at, size_t count, double tolerance);
/* Ends the path as one item of the class. */
struct scene_item *pen_stroke(struct drawing *drawing, enum scene_class class, enum role role,
                              double width);
struct scene_item *pen_fill(struct drawing *drawing, enum scene_class class, enum role role);
struct scene_item *put_circle(struct drawing *drawing, enum scene_class class, struct vec2 at,
                              double radius, enum role fill, enum role stroke, double width);
/* Text with its capitals centred on `middle`. */
struct scene_item *put_text(struct drawing *drawing, enum scene_class class, struct str text,
                            struct vec2 middle, double size, enum face face, enum role role);
enum role ground_at(const struct drawing *drawing, struct vec2 at); /* what white is there */

#define NUMERAL_CLEAR 0.42                /* of its size: white round a defender's numeral */
void court_draw(struct drawing *drawing); /* court_lines.c */
/* From a place to the next square beside a lane, points. */
double block_gap(struct drawing *drawing, struct vec2 at);
struct basket_marks {
    struct vec2 ring, left, right; /* its middle; the ends of the board */
};
struct basket_marks basket_marks(const struct drawing *drawing, bool far);
void symbols_place(struct drawing *drawing);  /* symbols.c */
void symbols_number(struct drawing *drawing); /* numerals.c: where each X's numeral goes */
void symbols_clear(struct drawing *drawing);  /* clear discs */
void symbols_draw(struct drawing *drawing);
/* From an X's middle to that of the numeral beside it, at the nearest. */
double numeral_reach(const struct sizes *size);
void x_pen(struct drawing *drawing, struct vec2 at, double half); /* the two lines of an X */
/* Where somebody who stands there is drawn: clear of the arc, the block mark and the basket. */
struct vec2 symbol_spot(const struct drawing *drawing, struct vec2 metres, bool ball);
struct symbol *symbol_of(const struct drawing *drawing, body who);
struct str body_text(struct drawing *drawing, body who);

/* chain.c */
void chain_make(struct drawing *drawing);
bool class_is_throw(enum scene_class class); /* a pass, a hand-off, a shot */
bool stroke_is_throw(const struct stroke *stroke);
/* Where the two bars of a hand-off are, while lines are laid; false: it is none. */
bool handoff_middle(const struct stroke *stroke, struct vec2 *middle);
int stop_add(struct drawing *drawing, struct stop stop);
int stop_at(const struct drawing *drawing, body who, double time);
/* A line of no sentence, yet to be led anywhere; and one of a sentence. */
struct stroke *stroke_new(struct drawing *drawing, enum scene_class class, body who);
struct stroke *stroke_add(struct drawing *drawing, enum scene_class class, body who, size_t task);
/* standing.c */
void standing_bars(struct drawing *drawing); /* screens that stand as the diagram begins */
/* Where the numeral of a screener who is at his bar already is drawn. */
struct vec2 place_behind(const struct drawing *drawing, const struct stop *bar, body who,
                         double radius);
/* reads.c: what a read looks at, in light lines */
void reads_make(struct drawing *drawing);
bool read_is_about(const struct drawing *drawing, body who); /* is it this defender's deed? */
bool read_is_at_screen(const struct drawing *drawing);       /* by which side he goes past it? */
bool read_is_behind(const struct drawing *drawing);          /* is he behind his man? */
body read_guard(const struct segment *segment, body man);    /* BODY_NONE: nobody */
/* lights.c */
void lights_cut(struct drawing *drawing); /* those lines give way to all others */
bool stroke_is_light(const struct stroke *stroke);
double rim_distance(const struct drawing *drawing,
                    struct vec2 metres); /* feet, to the nearer basket */
/* chain.c: does it end at the numeral it began at? */
bool stroke_comes_home(const struct drawing *drawing, const struct stroke *stroke);
/* settle.c */
/* The push that brings `at` to `least` from `from`, or nothing; `otherwise`: which way if they are
 * one. */
struct vec2 push_off(struct vec2 at, struct vec2 from, double least, struct vec2 otherwise);
void bar_ends(const struct drawing *drawing, const struct stop *bar, struct vec2 *a,
              struct vec2 *b);
/* The bar at the end of a short way that comes from the side is turned a little toward it, unless
 * its sentence says how it lies; `task` -1: none here does. */
#define BAR_OBLIQUE (30 * REAL_PI / 180) /* so far off square its line may come to a bar */
void bar_tilt(const struct drawing *drawing, struct stop *bar, struct vec2 from, int task);
struct vec2 bar_nearest(const struct drawing *drawing, const struct stop *bar, struct vec2 p);
/* `at`, or the next place that is `edge` inside the picture. */
struct vec2 frame_keep(const struct frame *frame, struct vec2 at, double edge);
void defenders_settle(struct drawing *drawing); /* defenders.c */
void settle(struct drawing *drawing);
void handoffs_clear(struct drawing *drawing); /* handoffs.c: off what they lie on */
/* rings.c */
/* How far from the middle of what it leaves a line's ring stands at the least, for its head, and of
 * a dribble some of its waves, to be seen. */
double way_least(const struct drawing *drawing, double radius, bool dribbles);
/* Beside who leaves, behind a line of players, off everything else. */
void rings_approach(struct drawing *drawing);
void rings_behind_queues(struct drawing *drawing);
void rings_settle(struct drawing *drawing);
/* The ring at `at`, or the next place in the picture and, of who ends on the floor, on the floor:
 * on a boundary line it tells that he steps out. */
struct vec2 ring_keep(const struct drawing *drawing, const struct stop *ring, struct vec2 at);
bool rings_drop(struct drawing *drawing); /* that had to go too far; whether any */
/* A number that changes when a symbol or a stop is moved: to end a loop when none is. */
double places_sum(const struct drawing *drawing);
/* Once the moves are traced; true: some still stand on a line. */
bool defenders_yield(struct drawing *drawing);
/* Those on whom numbers were put step aside; false: one of them found no place. */
bool defenders_make_room(struct drawing *drawing);
bool defender_can_yield(const struct drawing *drawing, const struct symbol *x);
/* Does an X that stands there, the lines and numbers being laid, lie on nothing? */
bool defender_has_room(const struct drawing *drawing, const struct symbol *x, struct vec2 at);
void defenders_lead(struct drawing *drawing); /* their own lines begin where they are */
double stop_radius(const struct drawing *drawing,
                   const struct stop *stop); /* 0 for bars and free ends */
/* trace.c: the run's own track brought to a few smooth curves on paper. */
void trace_moves(struct drawing *drawing);
/* The share of the stroke's length that was run by a time, and back. */
double stroke_share(const struct stroke *stroke, double time);
double stroke_clock(const struct stroke *stroke, double share);
/* Moves the ends of a trail, the rest in proportion. */
/* Where a line leaves its stop: a bar by the end that is nearer to where it goes; where that end
 * lies beside somebody, by the other end, or from behind it if the way does not lead through it: a
 * bar that is crossed reads as an X. */
struct vec2 trail_leaves(const struct drawing *drawing, const struct stop *start,
                         const struct trail *trail);
/* Who comes back to where he stood leaves by one side of his numeral and comes by the other: the
 * one on which he ran, so that his way opens to a V. */
struct vec2 trail_aside(const struct drawing *drawing, const struct stop *home,
                        const struct trail *trail);
void trail_lead(struct arena *arena, struct trail *trail, struct vec2 start, struct vec2 end);
/* sides.c: a movement passes each numeral and each bar on the side on which it was run past it,
 * whatever the size of the picture. */
struct passed {
    body who;     /* whose numeral, or whose bar; BODY_NONE: the basket it is played at */
    int bar;      /* its stop, or -1 */
    double sweep; /* of the run round it, radians */
};
struct run_way { /* on paper, with its seconds */
    const struct vec2 *at;
    const double *when;
    size_t count;
};
void sides_note(struct drawing *drawing, struct stroke *stroke, const struct run_way *run);
/* What a stroke is to pass on the side of its run: NULL, either side will do. */
const struct passed *stroke_passes(const struct stroke *stroke, body who, int bar);
bool is_passed_wrong(const struct passed *passed, struct vec2 middle, const struct trail *trail);
struct vec2 passed_middle(const struct drawing *drawing, const struct passed *passed);
int sides_wrong(const struct drawing *drawing, const struct stroke *stroke,
                const struct trail *trail); /* how many of them it passes on the other */
void sides_count(struct drawing *drawing);
/* feint.c */
/* A screen that is slipped before it is set: the steps toward it are what fools a defender. */
bool is_feint(const struct segment *segment, int task);
void feint_show(struct drawing *drawing, struct stroke *stroke);
/* square.c: screeners come to their bars as these lie. */
void bars_square(struct drawing *drawing);
/* vee.c */
void open_corners(struct drawing *drawing);
/* bend.c: pushed apart where paper needs it. */
double trail_length(const struct trail *trail);
/* A smooth hump: full height at `along`, nothing beyond `wide` to either side or at the ends. Where
 * it reaches an end and `fan` is set, the way leaves that end at an angle. */
void trail_hump(struct trail *trail, double along, struct vec2 push, double wide, bool fan);
/* By how much of a push it moves each point. */
void hump_shape(const struct trail *trail, double along, double wide, bool fan, double *shape);
/* fan.c */
/* How far a place is from the next symbol or the picture's edge. */
double room_at(const struct drawing *drawing, struct vec2 at);
void bend_round(struct drawing *drawing); /* round symbols, bars, rings and cones */
/* Off lines that it would lie on; false: none did. */
bool bend_off(struct drawing *drawing);
void lights_off(struct drawing *drawing); /* light lines off passes that were bowed */
/* Round all that is in its way. */
void bend_one(struct drawing *drawing, struct stroke *stroke);
/* Where a bend found no way between crowded marks: the points themselves are pushed out. */
void squeeze_one(struct drawing *drawing, struct stroke *stroke);
/* trim.c: passes, hand-offs and shots between the stops; every line cut to its gaps. */
void throws_make(struct drawing *drawing);
void throws_aim(struct drawing *drawing);   /* where they start and end, once the moves are bent */
void passes_round(struct drawing *drawing); /* last: round numerals that would break them */
void rims_cut(struct drawing *drawing);     /* runs to the rim stop short of the basket */
void trim(struct drawing *drawing);
/* gaps.c */
bool stroke_flies(const struct stroke *stroke); /* a pass, a shot */
/* From the middle of what it leaves, of what it comes to, to its ink. */
double start_gap(const struct drawing *drawing, const struct stroke *stroke);
double end_gap(const struct drawing *drawing, const struct stroke *stroke);
/* Rings, and small numerals, of a pass are moved apart where it would not be seen. */
void passes_part(struct drawing *drawing);
/* The stops at both ends of a pass or an exchange that is caught; false: it is none of that kind,
 * or not between places where somebody rests. */
bool throw_stops(const struct drawing *drawing, size_t task, enum task_kind kind, int *from,
                 int *to);
bool stop_is_thrown(const struct drawing *drawing, int stop, enum task_kind kind); /* one of them */
/* A pass or a hand-off with no room between its ends, beside them; false: it is none. */
bool throw_beside(struct drawing *drawing, struct stroke *stroke);
/* route.c */
struct route_how {
    bool walls; /* on the sides of the run, */
    bool thin;  /* with no room for the waves of a dribble */
};
/* Another way for a line, over a fine mesh; false: there is none. */
bool route_way(struct drawing *drawing, const struct stroke *stroke, const struct trail *trail,
               struct route_how how, struct trail *found);
/* How many marks a line that goes that way lies on; not those that step aside for it. */
int trail_lies(struct drawing *drawing, const struct stroke *stroke, const struct trail *trail);
/* repair.c: what still lies on something goes another way; whether any did */
bool lines_repair(struct drawing *drawing);
/* marks.c */
void ink_make(struct drawing *drawing);
void ink_one(struct drawing *drawing, struct stroke *stroke);
void ink_again(struct drawing *drawing, struct stroke *stroke); /* whose way was cut since */
/* heads.c: what has ink already, cut so that no head lies on another's */
void heads_part(struct drawing *drawing);
/* trim: its shares were of `whole`; now they are of what is left of it behind its `front`. */
void shares_shift(struct stroke *stroke, double whole, double front);
/* zigzag.c: the ink of a dribble; and swung so that it lies along no other line. */
void zigzag_ink(struct drawing *drawing, struct stroke *stroke);
void zigzag_off_lines(struct drawing *drawing, size_t index);
/* From a place to the ink of a line, its head too; negative on it. */
double stroke_distance(const struct drawing *drawing, const struct stroke *stroke, struct vec2 at);
/* Is it surely further off than that? */
bool stroke_is_beyond(const struct drawing *drawing, const struct stroke *stroke, struct vec2 at,
                      double far);
void strokes_draw(struct drawing *drawing);
void rings_draw(struct drawing *drawing);
double head_reach(const struct drawing *drawing, const struct stroke *stroke); /* under its head */
/* Marks of a still and of a moving picture alike, whose they are not yet told: a head; the same at
 * the end of a line; a line; a screener's bar. */
struct scene_item *head_draw(struct drawing *drawing, enum scene_class class, enum role role,
                             struct vec2 tip, struct vec2 way, double grow);
/* A head's outline: tip, barb, notch, barb, tip. */
enum { HEAD_EDGE = 5 };
struct head {
    struct vec2 edge[HEAD_EDGE];
};
/* Of a line's head, if the line ended `back` points before its end. */
struct head line_head(const struct drawing *drawing, const struct stroke *stroke, double back);
struct scene_item *line_head_draw(struct drawing *drawing, const struct stroke *stroke);
struct scene_item *line_draw(struct drawing *drawing, const struct stroke *stroke, enum role role,
                             double within);
struct scene_item *bar_draw(struct drawing *drawing, const struct stop *bar, enum role role,
                            double grow);
bool stroke_has_bar(const struct drawing *drawing, const struct stroke *stroke);
/* crossings.c */
void crossings_find(struct drawing *drawing);
void crossings_case(struct drawing *drawing, size_t over);
/* props.c */
void props_place(struct drawing *drawing);
void queues_place(struct drawing *drawing);
void props_draw(struct drawing *drawing);
void cone_draw(struct drawing *drawing, struct vec2 at);
/* moving_keys.c: few keys from which all samples are found again, each to within `within`; behind
 * the keys there are. A first sample where the last key is, is left out. Places are whole grains;
 * 0: any. */
void keys_add(struct arena *arena, moving_keys *keys, const struct moving_key *sample, size_t count,
              double within, double grain);
/* A stretch of a way that is told already, behind the keys there are. */
void keys_copy(struct arena *arena, moving_keys *keys, const moving_keys *way, double from,
               double to);
/* One part of a picture that moves, while its groups are made. */
struct moving_work {
    struct arena *arena;
    struct moving *moving;
    const struct scene_options *options; /* nobody's page: no accent */
    const struct moving_part *parts;
    size_t count;
    struct frame frame; /* of all parts */
    const struct moving_part *part;
    struct diagram whole;   /* the part's step with its branch as one: no light lines of a read */
    struct drawing drawing; /* of the part: its frame and sizes are those of all parts */
    VEC(struct moving_group) over; /* what lies over the players: bars */
    int index;                     /* of the part */
    double begin, shift, end;      /* s of the picture; `shift`: from the segment's clock to it */
};
/* A moment of the segment as the nearest tick of the picture, kept inside the part; and back. */
long moving_tick(const struct moving_work *work, double time);
double moving_clock(const struct moving_work *work, long tick);
double moving_time(const struct moving_work *work, double time); /* of that tick */
struct moving_group *moving_group_add(struct moving_work *work, enum scene_class class, body who);
/* A mark with the item that was drawn last, which is taken out of the scene again. */
struct moving_mark *moving_mark_add(struct moving_work *work, struct moving_group *group);
/* Where something is at a moment of the segment. */
typedef struct vec2 moving_at(const struct moving_work *work, const void *ctx, double time);
/* Its way from one tick to another, behind the keys there are; its share of a line: keys_share. */
void keys_sample(struct moving_work *work, moving_keys *keys, long first, long last, double within,
                 moving_at *at, const void *ctx);
void keys_share(struct moving_work *work, moving_keys *keys, long first, long last, double within,
                moving_at *at, const void *ctx);
/* Seen between two moments of the segment, too. */
void moving_show(struct moving_work *work, moving_shows *shows, double from, double to);
/* moving_roads.c: the lines of a part's movements, their trails or their roads. */
void roads_plan(struct moving_work *work);
void roads_add(struct moving_work *work, bool trails);
/* moving_throws.c: passes and shots, likewise. */
void flights_add(struct moving_work *work, bool trails);
/* labels.c */
void discs_place(struct drawing *drawing);
void discs_draw(struct drawing *drawing); /* discs.c */
/* What a mark of that radius would lie on there; 0: on nothing. */
double place_score(const struct drawing *drawing, struct vec2 at, double r);
/* measure.c */
bool item_is_bar(const struct scene_item *item, const struct sizes *size);
/* caption.c */
double caption_height(struct arena *arena, const struct diagram *diagram,
                      const struct scene_options *options, double width);
void caption_draw(struct drawing *drawing);
/* How much room the titles of all that are on one floor take over it; one where the play may go
 * back is longer. */
double title_height(struct arena *arena, const struct diagram *diagram,
                    const struct scene_options *options, double width);
/* Over the floor; `back`: the play goes back to it. */
void title_put(struct drawing *drawing, const struct diagram *diagram, bool back);
void names_draw(struct drawing *drawing); /* names.c */
/* beads.c */
void beads_draw(struct drawing *drawing);
void beads_time(struct drawing *drawing);
/* words.c: lettering on the floor. */
double words_score(const struct drawing *drawing, struct str text, double size, struct vec2 at);
void words_put(struct drawing *drawing, enum scene_class class, struct str text, double size,
               struct vec2 at, enum face face, enum role role);
/* findings.c */
struct finding_refs {
    const struct finding **at;
    size_t count, room;
};
struct finding_refs findings_of(struct arena *arena, const struct diagram *diagram,
                                const struct scene_options *options);
void finding_square(struct drawing *drawing, const struct finding *finding, size_t letter,
                    struct vec2 at, double size, enum scene_class class);
void findings_under(struct drawing *drawing); /* hatched lanes lie under the lines */
void findings_draw(struct drawing *drawing);

#endif
