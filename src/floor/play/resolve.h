/* SPDX-License-Identifier: MIT */
/* resolve: what the files of this room share while a book becomes plays. For no other room. */
#ifndef FLOOR_PLAY_RESOLVE_H
#define FLOOR_PLAY_RESOLVE_H

#include "base/limits.h"
#include "base/names.h"
#include "floor/play/play.h"

struct role_is { /* a role of the action being run, and who plays it */
    struct str role;
    body who;
};
/* In whose words a sentence is said: an action's roles, a repeated step's players, the other side.
 */
struct voice {
    bool mirrored;
    int number[LIMIT_ATTACKERS + 1]; /* who plays the part of a number */
    VEC(struct role_is) roles;
};
struct said { /* a line of a step, and in whose words */
    const struct form *form;
    const struct voice *voice;
};
typedef VEC(struct said) said_list;
struct branch_script {
    const struct block *block;
    const struct voice *voice;
    said_list lines;
};
struct script { /* a step with its runs, repeats and sames written out */
    said_list lines;
    VEC(struct branch_script) branches;
    struct span last; /* the step's own line that was written out last */
};

struct flow { /* what is planned so far, sentence by sentence */
    struct vec2 at[BODY_COUNT];
    int drove[BODY_COUNT]; /* by which side, where the drive ends in the middle: -1 left, 1 right */
    enum side came[BODY_COUNT]; /* the side each player moved from last; NONE: the middle only */
    body holder;                /* of the ball; BODY_NONE after a shot */
    int gave;                   /* task that gave it, in this segment; -1: had it at the start */
    int screen[BODY_COUNT];     /* the latest screen each player set in this segment, or -1 */
    body carried[BODY_COUNT];  /* screen left over from the step before: for whom; else BODY_NONE */
    bool screened[BODY_COUNT]; /* has set a screen, or handed off, in this play */
    body guards[BODY_COUNT];   /* of a defender: whom, as far as sentences say */
};
struct named { /* who is in an event or a state */
    body subject, object;
    struct vec2 where; /* where the object is planned to be */
};
struct work { /* beside each task of the segment: what its waits are made of */
    const struct sentence *sentence;
    struct named event, until; /* of its tie, and of what ends it */
    bool wants_ball;
    int gave;    /* the pass it has the ball from, or -1 */
    body holder; /* who had the ball as it was written */
    body fills;  /* whose spot it fills, or BODY_NONE */
    struct vec2 fills_where;
    int own_screen; /* its own player's screen right before it, or -1 */
    int above;      /* first task of the sentence above, or -1 */
};
typedef VEC(struct work) work_list;

struct source_play { /* a play as it stands in the book */
    const struct block *block;
    const struct block *file; /* whose lines before the first heading hold for it */
    struct str chapter, name;
    bool unnamed; /* a file that is one play */
    bool duplicate;
};

struct maker {
    struct arena *arena;
    const struct sources *sources;
    struct diags *diags;
    const struct block *playbook; /* or NULL */
    struct str file_name;         /* what a file without a play heading is called */
    struct playbook *out;
    VEC(const struct block *) actions;
    VEC(const struct block *) loops; /* actions that run themselves, by others or not: reported */
    bool too_many;                   /* plays or actions: said once */
    VEC(struct source_play) found;
    struct names names;         /* of what was found: the number of its place there */
    const char *const *spelled; /* the same names, for what is near to a wrong one; NULL: not yet */
    bool said_used[LIMIT_SOURCES]; /* the note that `after 5 screens` waits until it was used */
    /* the play in hand */
    struct play *play;
    const struct block *body;  /* whose steps these are: its own, or of the play it mirrors */
    const struct voice *plain; /* the play's own voice: mirrored or not */
    VEC(struct script) scripts;
    const struct flow *ends[LIMIT_STEPS];         /* how each way through each step ends */
    struct vec2 stances[LIMIT_STEPS][BODY_COUNT]; /* where everybody stood as each step began, */
    body holders[LIMIT_STEPS];                    /* and who had the ball */
    /* the step in hand */
    struct step *step;
    struct branch *branch;  /* or NULL */
    const said_list *block; /* the lines of the block in hand */
    size_t line;            /* which of them */
    const struct script *script;
    struct vec2 stood[BODY_COUNT];
    body thrower; /* started out of bounds by the start line, or BODY_NONE */
    struct flow flow;
    work_list works; /* of the segment's tasks, common first */
    int order, group, above;
    unsigned depth;  /* of plays resolved aside, in one another */
    unsigned asides; /* so far in the book */
};

/* who.c: a body, or BODY_NONE with an error. */
body who_body(struct maker *m, const struct who *who, const struct voice *voice);
/* The same, of a pass: the corner is that of the passer's side, where both are occupied. */
body who_receiver(struct maker *m, const struct who *who, const struct voice *voice, body passer);
/* The subjects of a sentence; none with an error. */
struct body_list {
    body at[LIMIT_ATTACKERS];
    size_t count;
};
struct body_list who_subjects(struct maker *m, const struct sentence *s, const struct voice *voice);
/* The only attacker who stood within reach of p as the step began. */
body who_stood(const struct maker *m, struct vec2 p, size_t *how_many);
struct str who_text(struct maker *m, body b);
bool on_floor(const struct maker *m, body b);

/* retold.c: a note's text with the players and sides of the voice; false: `unsure` may be one of
 * them, or a count or a turn of speech. */
bool retold_note(struct maker *m, struct str text, const struct voice *voice, struct str *out,
                 struct str *unsure);

/* where.c: a place as a goal for `mover`, false with an error. */
bool where_goal(struct maker *m, const struct place *place, const struct voice *voice, body mover,
                struct goal *goal);
bool where_default(struct maker *m, enum verb_default place, body mover, struct span span,
                   struct goal *goal);
struct goal where_spot(const struct maker *m, enum spot spot, enum side side);
struct vec2 where_planned(const struct maker *m, const struct goal *goal, body mover);
double where_metres(const struct maker *m, struct measure measure);
enum side where_side(struct vec2 at);                     /* NONE within 3 ft of the middle */
enum side where_side_of(const struct maker *m, body who); /* the same; of a driver, how he came */
enum side where_said_side(enum side side, const struct voice *voice);
/* LEFT or RIGHT for what was said, or for what was left out; false with an error. */
bool where_settle_side(struct maker *m, enum side said, struct span span, body mover,
                       const char *word, enum side *side);
/* Tells that the side was left out and which was taken. */
void where_note_side(struct maker *m, struct span span, body mover, enum side side,
                     const char *word);
/* A note that names a side is of a mirror: said of the play that it mirrors already. */
bool note_is_of_mirror(const struct maker *m);

/* spots.c: a spot that is not named; false with an error. Of a side; the next one on the way; one
 * of the perimeter that nobody has, `away` from the ball or not. */
bool spots_of_side(struct maker *m, const struct place *place, const struct voice *voice,
                   body mover, struct goal *goal);
bool spots_next(struct maker *m, const struct place *place, const struct voice *voice, body mover,
                struct goal *goal);
bool spots_empty(struct maker *m, body mover, bool away, struct span span, struct goal *goal);

/* settings.c: a play's settings, nearest first. */
struct setting_at {
    const struct setting_form *form; /* NULL: not written */
    bool mirrored;                   /* it comes from the play that is mirrored */
    struct span span;                /* of its line */
};
struct setting_at setting_find(const struct maker *m, const struct source_play *source,
                               enum setting setting);
void play_settings(struct maker *m, const struct source_play *source);
void book_settings(struct maker *m, const struct block *file);
/* loops.c: reports each circle of actions that run one another, used or not. */
void actions_find_loops(struct maker *m);
const struct block *action_by_name(const struct maker *m, struct str name);
/* start.c: who stands where, who guards whom, who has the ball. */
void play_start(struct maker *m, const struct source_play *source);

/* expand.c */
void expand_step(struct maker *m, const struct block *block, struct script *script);

/* branches.c: two ways on of one step that cannot be told apart, each with both places. */
void branches_contradict(struct maker *m, const struct step *step);
/* The note of a step, a read or a play in which nothing is said to happen. */
void note_empty(struct maker *m, const struct script *script, const struct block *block);

/* events.c: what a clause names, as something to wait for. */
struct asked {
    const struct event *event;
    struct named by;
    enum tie_word word;
    double seconds;
    int index, group; /* of the task that asks */
    body holder;      /* who has the ball as it is written */
    bool until;
    bool of_step; /* a step asks, of the one it goes on from: m->step */
};
enum moment event_moment_of(enum verb_event event);
struct wait event_wait_for(int task, enum moment moment);
/* False when there is nothing to wait for, reported if that is a fault. */
bool event_asked(struct maker *m, const struct asked *asked, struct wait *out);
/* Somebody uses the screen on this way through the step, or on one of the ways behind it. */
bool screen_is_used(const struct maker *m, int screen);
/* By a sentence above that one: for this it is done when it has been used, else when it is set. */
bool screen_is_used_above(const struct maker *m, int screen, size_t index);

/* sentence.c, ties.c, steps.c */
void sentence_tasks(struct maker *m, const struct sentence *s, const struct voice *voice);
struct task *sentence_add(struct maker *m, const struct task *task, const struct work *work);
void ties_resolve(struct maker *m, size_t from);
void ties_find_circles(struct maker *m, size_t from); /* circles.c: takes the waits of one out */
/* chasers.c: in a zone nobody has a man but whom the zone or a line gives one: of a box-and-one x1,
 * of a triangle-and-two x1 and x2, each the first player nobody else is on. `said`: the lines. */
void chasers_set(struct maker *m, const struct form *const said[BODY_COUNT]);
bool man_is_guarded(const struct play *play, body man, body but); /* by another than `but` */
/* duties.c: a condition's defender can do that; where he goes for it. False with an error. */
bool duty_condition(struct maker *m, struct branch *branch, const struct condition *condition,
                    const struct voice *voice);
void duties_hold_apart(struct maker *m, size_t from); /* duties.c: two of one defender at once */
void play_steps(struct maker *m);
/* screens.c: of all steps: who has no ball gets no ball screen */
void screens_fit_ball(struct maker *m);
const struct source_play *play_by_name(const struct maker *m, struct str name);
/* The play resolved on its own, for a step of it that is shared and repeats another: its scripts
 * and who stood where. NULL: too deep, or too often. What is wrong with it is not said again. */
const struct maker *play_aside(struct maker *m, const struct source_play *source);
/* Whose steps a play has: its own, or those of the play it mirrors; NULL with an error. */
const struct block *play_body(struct maker *m, const struct source_play *source, bool *mirrored);
/* It has a line that could not be read: reported there; a play is not whole without it. */
bool block_is_broken(const struct block *block);
/* Takes back what was said of this play, from `from` on, and only follows from a line that could
 * not be read. */
void follow_drop(struct diags *diags, size_t from, const struct block *block);
const struct voice *voice_plain(struct maker *m, bool mirrored);

size_t task_count(const struct maker *m);
/* The task goes off this screen, alone or as the second of two. */
bool task_uses(const struct maker *m, const struct task *task, int screen);
struct task *task_at(const struct maker *m, size_t index);

/* team.c: the players and lineups of a `team` block; of all of them, when the book is read. */
void team_gather(struct maker *m, const struct block *block);
void team_hold(struct maker *m);

/* traits.c: what a verb brings with it beyond its row in verbs.def. */
bool verb_is(enum verb verb, char trait);

#endif
