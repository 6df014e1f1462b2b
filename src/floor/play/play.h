/* SPDX-License-Identifier: MIT */
/* play: who does what, where, tied to what. Made from a book's words; verbs are gone: each sentence
 * has become tasks of a closed set with a path shape, a pace and ties. Metres and seconds. */
#ifndef FLOOR_PLAY_PLAY_H
#define FLOOR_PLAY_PLAY_H

#include "base/diag.h"
#include "floor/court/court.h"
#include "language/words/words.h"

/* A body on the floor: attackers 1..12, the coach, defenders x1..x12. */
enum { BODY_COACH = 12, BODY_FIRST_DEFENDER = 13, BODY_COUNT = 25, BODY_NONE = 255 };
typedef unsigned char body;
body body_attacker(int number); /* 1..12 */
body body_defender(int number); /* 1..12 */
bool body_is_attacker(body b);  /* the coach counts as one */
bool body_is_defender(body b);
int body_number(body b); /* 1..12; 0 for the coach and for none */
/* "3", "x3", "the coach" */
void body_print(struct strbuf *out, body b);

/* A place that may hang on where somebody is when it is asked for. */
enum goal_kind {
    GOAL_NONE,
    GOAL_POINT,  /* at */
    GOAL_BODY,   /* where `who` is now, plus at */
    GOAL_BESIDE, /* 3 ft from `who`, on the mover's side */
    GOAL_BEHIND, /* behind `who`, away from the ring (drills) */
    GOAL_LINE, /* the nearest point of `spot` (baseline, sideline, free-throw line) to the mover */
    GOAL_MIX,  /* a + (b - a) * fraction */
    GOAL_OFFSET,       /* from a, `length` metres in `direction` */
    GOAL_LANE,         /* the middle of the lane on the mover's side */
    GOAL_FRONT_OF_RIM, /* on the mover's side */
    GOAL_OUTSIDE       /* out of bounds level with a */
};
struct goal {
    enum goal_kind kind;
    struct vec2 at;
    body who;
    const struct goal *a, *b;
    double fraction, length;
    enum direction direction;
    enum spot spot; /* also for GOAL_POINT made from a spot: to name it; else SPOT_COUNT */
    enum side side;
    bool backcourt;
    bool measured; /* written with a measure or a bracket: to be taken literally */
    int cone;      /* GOAL_POINT that is a cone: 1 is A; else 0 */
    bool line_end; /* GOAL_POINT that is the end of a line of players */
};
/* A goal of no place: who is BODY_NONE and spot SPOT_COUNT, which zeroed memory is not. A
 * GOAL_POINT with `who` is that player's spot of the step's beginning. */
struct goal goal_none(void);
struct goal goal_at(struct vec2 at);
/* Where it is, for `mover` at `from`, given where everyone is. */
struct vec2 goal_point(const struct goal *goal, const struct court *court, body mover,
                       struct vec2 from, const struct vec2 position[BODY_COUNT]);

enum task_kind {
    TASK_MOVE,
    TASK_HOLD,
    TASK_CARRY,
    TASK_PASS,
    TASK_EXCHANGE,
    TASK_SHOOT,
    TASK_SCREEN,
    TASK_USE,
    TASK_GUARD /* `who` is a defender: what he does instead of the default, until his next sentence
                * or the step's end; `other` is whom he guards, doubles, tags, `on` the defender he
                * switches with, `goal` where he helps or rotates to */
};
enum moment { /* what can be waited for in the life of a task, in the order it happens */
              MOMENT_STARTED,
              MOMENT_RELEASED,
              MOMENT_SET,
              MOMENT_CAUGHT,
              MOMENT_USED,
              MOMENT_ARRIVED,
              MOMENT_COUNT
};

/* "Not before `moment` of task `task` + delay"; fixed: exactly then, in place of the verb's wait.
 * WAIT_ALL_BEFORE: every task of a lower index is done. What the kind of a task brings with it is
 * not listed: a pass waits for the ball and its receiver, a use for its screen (screen_task). A
 * wait for the ball from a certain pass, for one's own screen to be used and for a spot to be left
 * is listed, with written == false. */
struct wait {
    enum {
        WAIT_TASK,
        WAIT_CLOCK,
        WAIT_ALL_BEFORE,
        WAIT_LEAVES,
        WAIT_NEARS,
        WAIT_STATE,
        WAIT_DEED
    } kind;
    int task;    /* index among the segment's tasks (common first, then the branch's own), */
    bool before; /* or, with this, among those of the way before the step, which go on beside it */
    enum moment moment;
    double delay; /* seconds; for WAIT_CLOCK the time of the step */
    bool fixed;
    bool written;   /* in the coach's words; else from the verb */
    body who;       /* WAIT_LEAVES: until he is 1.5 m from `where`; WAIT_NEARS: until he, in his
                     * `task`, comes near `other`; WAIT_STATE */
    body other;     /* WAIT_STATE: past whom; WAIT_DEED: whom it is done to, or BODY_NONE */
    enum verb verb; /* WAIT_DEED: what the defender `who` does by rule, without a sentence; `moment`
                     * is its start or its end */
    struct vec2 where;
    enum event_kind state;
    struct span span;
};

struct task {
    enum task_kind kind;
    enum verb verb;
    body who;
    body other;  /* receiver; screened player; screener used; dribbled at; BODY_NONE */
    body other2; /* second screener used */
    body on;     /* the defender named for a screen */
    struct goal
        goal; /* where to; GOAL_NONE: worked out by the run (a screen, a pass to where he is) */
    bool goal_written;
    struct vec2 planned; /* where `who` is expected to end: used to resolve later words */
    enum verb_shape shape;
    enum verb_pace effort;
    enum path_word path;
    body path_who;
    struct goal path_goal;
    double taking;   /* s; 0: by effort */
    double length;   /* set-up length, m; 0: by rule */
    double duration; /* hold, s */
    double
        gap; /* path's distance from a screener used, m beyond shoulder to shoulder; 0: by rule */
    bool early;
    bool drive_baseline, drive_middle;
    int drive_across; /* by the left of who guards the driver: -1, by the right: 1; the floor's */
    bool faces, faces_back; /* a screen's written facing */
    struct goal face;
    enum pass_kind pass;
    enum screen_kind screen;
    int screen_task; /* TASK_USE, roll, pop, slip, re-screen: the screen it belongs to; -1 none */
    bool slip;       /* leaves before contact */
    bool stay;       /* standing on purpose */
    bool cuts_short; /* an `as`, `at` or `when` sentence: ends what `who` is doing then */
    bool supplied;   /* no sentence of its own: made by rule, with a note */
    VEC(struct wait) waits;
    bool has_until;
    struct wait until; /* the movement, screen or hold is cut short when this comes true */
    int order; /* the disc's number in the diagram: 1.. per sentence, a branch's after the common
                * ones; 0 for supplied ones and for `stays` */
    int group; /* tasks of one sentence share it; 0 for supplied ones */
    const struct sentence *sentence; /* NULL for supplied ones */
    struct span span;
};

struct point {  /* a teaching point, mistake or accepted finding */
    int player; /* 0: for all */
    struct str word, text;
    struct span span;
};
typedef VEC(struct point) point_list;

struct branch {
    enum { BRANCH_READ, BRANCH_OPTION } kind;
    struct str title; /* never empty: a read without one is named by its condition */
    const struct block *block;
    VEC(struct condition) conditions;
    struct goal goal; /* where the first one's defender helps, drops or rotates to */
    bool goal_written;
    VEC(struct task) tasks;
    point_list points, mistakes, charts, accepts;
    bool continues; /* the next step goes on from here */
    struct span continues_span;
    struct span span;
};
struct step {
    int number;       /* 1.. */
    struct str title; /* may be empty */
    const struct block *block;
    VEC(struct task) tasks;      /* the common sentences */
    VEC(struct branch) branches; /* none, or every way on */
    point_list points, mistakes, charts, accepts;
    int after_step;   /* index of the step it goes on from (the one before it, or an earlier one
                         whose branch it names); -1: the first */
    int after_branch; /* which branch of that step it follows; its first, or the marked one;
                         -1 none */
    VEC(struct wait)
    begins; /* `step "..." as 5 screens`: it begins when these hold among the tasks
             * of the way before it, which go on meanwhile; none: when all is over */
    struct span span;
};
struct start_body {
    bool on_floor;
    struct vec2 at;
    enum spot spot; /* SPOT_COUNT: none */
    enum side side;
    bool placed; /* a defender placed by the coach, not by rule */
};
struct roster_entry {
    int number; /* spot in the play, 1..5 */
    struct str name, role, jersey;
    bool starter; /* the first of those who have the spot */
    struct span span;
};
struct limit_entry {
    struct str check;
    double value; /* metres, seconds, radians or a share */
    struct span span;
    enum unit unit; /* as written: whether it suits the check is the check's to say */
};
struct play {
    struct str name, about, call, series, score, goal, chapter, lineup;
    VEC(struct str) cautions; /* the coach's own lines */
    int number;               /* 0: none */
    bool is_drill, mirrored;
    struct str mirrors; /* the play whose other side it is, as written; empty: none */
    VEC(struct str) tags;
    enum court_code rules;
    enum level_code level;
    bool level_written; /* by the coach; else it is the one that is supposed */
    const struct court *court;
    const struct level *speed;
    bool metres, a4, basket_bottom, full_floor;
    double clock; /* s; 0: none */
    enum defense_kind defense;
    enum man_style man;
    enum zone zone; /* ZONE_NONE: everybody plays a man, or there is no defense */
    int players;    /* attackers on the floor have numbers 1..players */
    struct start_body start[BODY_COUNT];
    struct span start_span;  /* of the line that says who stands where; else the play's own */
    body guards[BODY_COUNT]; /* for a defender: whom he guards */
    body ball;               /* who has it at the start */
    bool throw_in;
    int formation; /* index, or -1 */
    VEC(struct vec2) cones;
    VEC(body) lines; /* behind whom players wait */
    VEC(struct limit_entry) limits;
    VEC(struct step) steps;
    point_list points, mistakes, accepts; /* for the whole play */
    const struct block *block;
    struct span span;
    bool broken; /* an error was reported in it: it may be drawn as far as it goes */
};
struct chapter {
    struct str title;
    size_t first, count; /* plays */
};
struct lineup {
    struct str title;
    VEC(struct roster_entry) spots; /* number and name */
    struct span span;
};
struct team {
    struct str name;
    VEC(struct roster_entry) roster;
    VEC(struct lineup) lineups;
};
struct playbook {
    struct str title; /* of `playbook`, else empty */
    struct team team; /* name may be empty */
    VEC(struct chapter) chapters;
    VEC(struct play) plays;
    bool a4, metres; /* the book's paper and units */
};

/* The chapter that a play of the book stands in, as an index; chapters.count: none with a title. */
size_t playbook_chapter(const struct playbook *book, const struct play *play);

/* Who is at a spot: as the lineup (NULL: none) has it, else the roster's starter, else the first
 * with that number whom the lineup has nowhere else; NULL: nobody. */
const struct roster_entry *team_at(const struct team *team, const struct lineup *lineup,
                                   int number);
/* Who plays an attacker's spot in the play, by its lineup; empty when nobody is named. */
struct str team_name(const struct team *team, const struct play *play, body who);
/* Her jersey's number as the roster has it; empty: none. */
struct str team_jersey(const struct team *team, const struct play *play, body who);
struct str team_first_name(const struct team *team, const struct play *play, body who);
struct str team_first_of(struct str name); /* up to its first space */
/* Who is meant by what was said of her: her name; else a part of one, "Wren" or "Wren C."; else her
 * jersey, "#7". Of one player who has several rows the first. */
struct team_found {
    const struct roster_entry *entry; /* NULL: nobody */
    const struct roster_entry *other; /* another who may be meant as well; NULL: nobody is */
    bool whole;                       /* said as the roster has it */
};
struct team_found team_find(const struct team *team, struct str said);
/* Two rows are of one player when they have one name and no two jerseys. */
bool team_same_player(const struct roster_entry *a, const struct roster_entry *b);

/* Does the player of this name have this spot in the play? As its lineup has it; a lineup that does
 * not name her leaves her the places she has on the roster. `jersey` tells two of one name apart;
 * empty: any. */
bool team_plays(const struct team *team, const struct play *play, struct str name,
                struct str jersey, int number);
/* Whom the play's lineup has at this spot, where that is not the player of this name: she stands in
 * for her; NULL: the lineup leaves the spot to the roster, or the spot is her own. */
const struct roster_entry *team_instead(const struct team *team, const struct play *play,
                                        struct str name, int number);

/* Words to plays. `name` is what a file without a play heading is called. Reports and goes on. */
struct playbook *playbook_resolve(struct arena *arena, const struct sources *sources,
                                  const struct book *book, struct str name, struct diags *diags);

/* The tasks of one way through a step: common ones first, then the branch's own (branch -1: none).
 */
size_t step_task_count(const struct step *step, int branch);
const struct task *step_task(const struct step *step, int branch, size_t index);
bool task_is_fixed(const struct task *task);   /* its start, by `as` or `at` */
bool task_gives_ball(const struct task *task); /* a pass, a hand-off */
bool task_gives_ball_to(const struct task *task, body who);
bool task_is_throw(const struct task *task); /* the same or a shot: he has it no more */

/* Ways on are told, lettered and drawn as the coach wrote them, but what takes what is left over
 * ("otherwise") stands last: the branch told at `place`, and the letter of a branch. */
int branch_told(const struct step *step, int place);
char branch_letter(const struct step *step, int branch);
/* The reads of all its steps, in the order in which they are told. */
typedef VEC(const struct branch *) branch_list;
branch_list play_reads(struct arena *arena, const struct play *play);

/* "x3 trails or x3 goes over", "otherwise"; nothing for an option. To somebody: "you are denied".
 */
void branch_conditions_print(struct strbuf *out, const struct branch *branch, body you);

/* A text dump for goldens, feet with one decimal. */
void play_dump(struct strbuf *out, const struct play *play);

/* A length in the play's units for messages: "9 ft", "2.7 m"; feet whole (or one decimal under 3).
 */
void play_length(struct strbuf *out, const struct play *play, double metres);

#endif
