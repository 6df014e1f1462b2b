/* SPDX-License-Identifier: MIT */
/* world: everything that moves in one segment, as the files of the sim share it. Private to sim. */
#ifndef FLOOR_SIM_WORLD_H
#define FLOOR_SIM_WORLD_H

#include "floor/defense/duties.h"
#include "floor/motion/motion.h"
#include "floor/sim/sim.h"

enum {
    SIM_SAMPLES = 20,             /* a second: RUN_SAMPLE */
    SIM_REPLANS = 20,             /* times a second a screener looks where to go */
    SIM_THOUGHTS = SIM_RATE_PART, /* beats a second: everybody looks and decides at each */
    SIM_STANCES =
        22,          /* beats of what was to be seen that are kept: the longest reaction and more */
    SIM_CHANGES = 8, /* of the ball's hands that are remembered */
    SIM_SIGHTS = 16, /* things that have happened and are yet to be seen, at most */
    SIM_PAIRS = BODY_COUNT * (BODY_COUNT - 1) / 2, /* of all whom a drill may have */
    SIM_NO_TASK = -1
};

enum phase { PHASE_WAITING, PHASE_ACTIVE, PHASE_DONE };

/* One task as it is being done. */
struct job {
    const struct task *task;
    int index;
    enum phase phase;
    double head_since; /* when it became the first of its player's queue; < 0: not yet */
    double begun;      /* when it started */
    bool cut;          /* it was cut short */
    bool complete;     /* its last moment has come (a pass: caught) */
    bool fixed;        /* PASS, EXCHANGE: at its moment, whether or not somebody is there */
    double until;      /* a hold's end, a release */
    double look_at;    /* PASS: when to work out the receiver's arrival again; < 0: not yet */
    struct vec2 goal;  /* where a movement ends */
    double shoulder;   /* USE: length of its course at the screener; < 0: none */
    double least;      /* USE: least distance to the screener so far */
    bool with_ball;    /* USE: off a screen on the ball */
    bool away;         /* USE: away from the screen, behind the defender */
};

/* Somebody on the floor. */
struct agent {
    bool here;
    const struct level *level; /* how fast and quick he is: the play's, or in a trial his own */
    bool shadow;               /* a defender who is not in the play: nobody runs into him */
    struct mover m;
    struct mover start, after; /* at both ends of the piece of time just run through, */
    struct mover before;       /* and before the part of it that was run last, */
    double ran;                /* which took so many s; 0: he did not run in it */
    bool meets;                /* he is about to touch somebody */
    struct vec2 face;          /* unit */
    struct vec2 faced;         /* as last written down, and its angle */
    float facing;
    struct vec2 command; /* velocity wanted until he thinks again */
    struct gait gait;
    struct stride stride; /* of both */
    bool defends;
    bool anchored;              /* a set screener */
    bool seals;                 /* he has his defender on his back, or is about to */
    bool screening;             /* on his way to set one */
    bool planted;               /* and there but for the last step */
    const struct agent *sought; /* the defender whom he is looking for */
    struct aim aim;             /* a defender: where he wants to be */
    struct vec2 way;            /* in which he last moved, unit, */
    double turned;              /* and when he last turned about, s */
    bool stands;                /* a defender: he is where he wants to be, as near as it matters */
    enum duty_gait goes;        /* and how he goes there */
    struct vec2 step;           /* a defender: the one he began last, m/s, */
    double step_until;          /* and until when it goes on, s */
    double content_at;          /* s: when he stood and wanted nothing else; < 0: he is going */
    bool outside;               /* out of bounds to throw in */
    bool coming;                /* to the ball or the hand-off, without a sentence */
    struct vec2 come_to;
    double come_far, come_since; /* how near he has come to it, m, and when */
    struct course course;        /* the way being run, if `going` */
    bool going;
    bool through; /* he is at the end of his way, and runs on into the next step */
    double end_speed;
    body dodged; /* round whom he is bending, on which side, until when */
    double dodge_side, dodge_until, dodge_since;
    double stuck_since;        /* s: when he last got on, */
    double stuck_along;        /* and how far he had come */
    double way_since, way_far; /* s: when this way began, and how long it was, m; */
    body held_by;              /* who was nearest when he last did not get on */
    bool has_helped;           /* a defender: in this step */
    double held_since;         /* two keep him from dribbling on, since, s; < 0: nobody does */
    double stall, let_through; /* s of wanting in vain; until when team-mates step aside */
    int *queue;                /* task indices, in order */
    size_t queued, head;
};

/* Two who touch, or are about to. */
struct meeting {
    body a, b;
};

/* What a defender does instead of the man rules: from a read for the whole step, from his own
 * sentence until his next one, or by rule until he is back. STRATEGY_NONE: nothing else. */
struct duty {
    enum strategy strategy;
    body whom;      /* the attacker it is about; BODY_NONE: his own man, or the ball */
    body with;      /* the defender he switches with, or BODY_NONE */
    bool has_place; /* helps, drops, rotates to a place that was written */
    struct vec2 place;
    int task;         /* the sentence, or SIM_NO_TASK for a read's and the rule's */
    bool by_rule;     /* nobody said it: back to his man after he has helped */
    double since;     /* s of the step */
    struct vec2 from; /* where he stood then */
    bool waits;       /* a read's: for the moment that calls for it, by rule until then */
    bool has_trapped; /* he has been at a man with the ball, or goes out of his area to him: */
    body trapped;
    double side; /* of the other who traps, once it is chosen */
    bool over;   /* the jab is done, the cutter met, the shot up */
    bool met;    /* he has been at whom he is to double, trap, tag or bump */
    bool vain;   /* it cannot come about: told of as far as it is to be, and not again */
    bool there;  /* he has been where it wants him */
    bool holds;  /* told whom to guard he is with him, and nothing by rule draws him off */
};

/* A screen, by its screener: on the way, standing, or left over from the step before. */
struct screen {
    bool live;
    int task; /* SIM_NO_TASK: from an earlier step */
    body user, defender;
    const struct task *use; /* the one that its screener stands for; NULL: none in this step */
    int side;               /* of the defender, as the user sees it: screen_use */
    struct vec2 exit, spot, on;
    struct vec2 came_from; /* where its screener started */
    bool set, left, cleared, wanted;
    bool slipped; /* the screener left before contact, at: */
    double slipped_at;
    bool refused;         /* the user goes the other way, behind his defender */
    bool second;          /* of two in a row: further on, not beside the defender */
    bool ahead;           /* between the helping defender and the user's way, not beside him */
    bool met;             /* the defender is where he is to be screened */
    bool goes_to_him;     /* he was awaited there, and stands elsewhere */
    bool planned;         /* its spot has been worked out once */
    bool given_up;        /* the user went without it */
    bool shadow;          /* its defender is not in the play */
    struct vec2 rest;     /* where the defender ought to stand when the user stands */
    struct vec2 reckoned; /* where he was looked for; told of a screen that was used too early */
    double still;         /* when he last moved, near the spot */
    double near_at; /* when he first was near the spot, with nothing to wait for; < 0: not yet */
    double due;     /* when the defender could first be met */
    double set_at, left_at, clear_at;
    int unset; /* times it had to be set anew */
};

/* A screen on the ball while its two defenders are at it: from when the handler goes. */
struct pick {
    bool live;
    int task; /* the use */
    body user, screener, guard, big;
    struct coverage does;
    struct vec2 exit, from; /* where the handler goes, and stood */
    double side;            /* of his way to the rim, on which the screener was then */
    double since, ended;
    double rests; /* s the handler has stood before his own guard */
    body tagger;  /* who has taken the screener, whose man has jumped out */
};

struct ball {
    enum { HELD, IN_FLIGHT, IN_SHOT, LOOSE, GONE } state;
    body holder;            /* HELD; IN_FLIGHT, IN_SHOT: who threw it */
    body target;            /* IN_FLIGHT, LOOSE: who is to have it */
    struct vec2 start, end; /* when not held: from where to where it goes, */
    struct flight flight;   /* and how; a LOOSE one then lies at the end */
    double from, to;        /* s; HELD: while the hands that took it bring it in, */
    struct vec2 off;        /* from so far off the body */
    double caught_at; /* when the holder got it, s (LOOSE: since when he has been coming); before
                         the segment: when he may pass */
    bool throw_in;    /* held by, or from, somebody out of bounds to throw in */
    int task;
};

/* A zone's defenders, 0..4 for x1..x5. */
struct zone_watch {
    int on_ball,
        comes; /* who has the ball, who is coming to take it over; ZONE_DEFENDERS: nobody */
    bool closing[ZONE_DEFENDERS], traps[ZONE_DEFENDERS];
    bool his[ZONE_DEFENDERS]; /* the ball is where he takes it */
    body left;                /* an attacker whom a read leaves open, or BODY_NONE */
    struct aim aim[ZONE_DEFENDERS];
};

/* Where everybody was at one beat; and what was seen of the ball. */
struct stance {
    struct vec2 at[BODY_COUNT], v[BODY_COUNT];
};
struct change { /* of the ball's hands */
    double t;
    bool held;        /* then the ball is where its holder is */
    body holder;      /* or who is about to be */
    struct vec2 ball; /* in the air: where it is going */
};
struct glimpse {
    struct vec2 ball, ball_v; /* in the air: where it is going */
    body holder;              /* or who is about to be */
};

/* A step that begins while this one goes on: when, and the world at that moment. */
struct entry {
    int step;
    VEC(struct wait) waits;
    bool early; /* it held as this step began */
    struct world *at;
};

/* A defender's deed that somebody waits for, and when it first was so. */
struct deed {
    const struct wait *wait;
    double time; /* s of the step; TIME_NEVER: not yet */
};

typedef VEC(const struct wait *) deed_list;

struct world {
    struct arena *arena;
    const struct sources *sources;
    struct diags *diags;
    const struct play *play;
    const struct court *court;
    const struct level *level; /* the play's: of what is no one body's matter */
    const struct step *step;
    int step_index, branch;
    struct segment *segment;
    size_t base; /* so many of the jobs go on from the step before; the step's own are behind */
    long origin; /* the tick at which the segment begins: the clock goes on from step to step */
    VEC(struct entry) entries;
    int rate;  /* ticks a second */
    double dt; /* 1 / rate, s */
    long tick;
    double t; /* tick * dt: never summed up; or a moment inside the tick, when something happens */
    double h; /* s of the part of a tick that is being run, */
    struct meeting meeting[SIM_PAIRS]; /* and who are about to touch in it */
    int meetings;
    struct meeting near[SIM_PAIRS]; /* of whom: who may before everybody next thinks */
    int nears;
    double lead;    /* s from t to the next beat: what is wanted is worked out for then */
    double thought; /* s: when everybody last thought */
    double since;   /* s from then to now, while they think */
    bool fresh;     /* at the start of a tick, and not inside it */
    bool news;      /* something has happened: somebody may start, or be done */
    const struct sim_options *options;
    struct agent agent[BODY_COUNT];
    body present[BODY_COUNT]; /* who is on the floor, attackers first: the loops of a tick */
    int bodies;
    struct job *job;
    size_t jobs;
    struct ball ball;
    struct screen screen[BODY_COUNT];
    body guards[BODY_COUNT];       /* defender -> his man */
    body guards_first[BODY_COUNT]; /* as the step began */
    VEC(struct deed) deeds;
    const struct wait *lacked;    /* the deed for whose sake it failed, or NULL */
    const deed_list *supposed;    /* deeds that come about only if they are told, or NULL */
    body guarded[BODY_COUNT];     /* man -> his defender */
    struct duty duty[BODY_COUNT]; /* of defenders */
    struct pick pick;
    struct zone_watch zone;
    body helper, helped; /* who helps against whose drive or cut, or BODY_NONE */
    body second;         /* who sinks to the man that the helper left, or BODY_NONE */
    body driver;         /* who drives at the rim, until the ball leaves him, or BODY_NONE */
    double driven;       /* how much of that, 0 to 1 when he is inside */
    bool helped_ball;    /* he has had the ball */
    double helped_since; /* s of the step */
    struct stance past[SIM_STANCES];   /* ring, by beat */
    struct change change[SIM_CHANGES]; /* ring */
    int changes;
    double sight[SIM_SIGHTS]; /* when what has happened will be seen, s, unsorted */
    int sights;
    double quiet; /* s since anything last moved or happened */
    double done;  /* when the last task was done; < 0: not yet */
    VEC(struct sample) samples[BODY_COUNT];
    VEC(float) facing[BODY_COUNT];
    bool failed;
};

/* sim.c */
void world_position(const struct world *world, struct vec2 position[BODY_COUNT]);
struct tie_side world_tie(const struct world *world);
struct task_record *world_record(struct world *world, int task);
void world_mark(struct world *world, int task, enum moment moment); /* now; the first time counts */
struct mover world_soon(const struct world *world, const struct agent *agent); /* `lead` from now */
/* Does this tick open one of `times` equal parts of the clock's second? The same moments at every
 * rate, and of all of them those at which everybody looks and decides, SIM_THOUGHTS, are some. */
bool world_beat(const struct world *world, int times);

double world_zero(const struct world *world);                       /* when the segment began, s */
bool world_is_written(const struct world *world, struct span span); /* it is in the coach's text */

/* border.c: the next world begins as a copy of this one. */
void border_first(struct world *world);
void border_open(struct world *world);  /* which steps begin while this one goes on */
void border_watch(struct world *world); /* at each moment: do they? */
bool border_due(struct world *world);   /* does one, and has not yet? */
void border_close(struct world *world); /* says which never did */
const struct step *border_next(const struct world *world); /* that goes on from here; NULL: none */
/* He need not brake: the step is over as he gets there, and his next begins with a run to *goal. */
bool border_next_is_run(struct world *world, body who, struct vec2 *goal);
const struct world *border_to(const struct world *world,
                              int step); /* as `step` begins; itself: at its end */
/* `from` stays as it is: what is new lies in `arena`. */
struct world *border_cross(struct arena *arena, const struct world *from, bool over, int step,
                           int branch);

/* clock.c: from the start to the end of the segment. */
void clock_run(struct world *world);

/* queue.c: who does what now. */
void queue_tick(struct world *world);
bool queue_due(struct world *world, body who);         /* is he to start, or to be done, now? */
struct job *queue_head(struct world *world, body who); /* NULL: nothing left */
bool queue_wait_met(struct world *world, const struct job *job, const struct wait *wait);
bool queue_waits_met(struct world *world, const struct job *job, bool *fixed);
bool queue_next_is_run(struct world *world, body who,
                       struct vec2 *goal); /* ready, and a movement */
bool queue_depends(struct world *world, int task, int on, int depth);
bool queue_all_done(struct world *world);

/* deeds.c: what a defender does by rule. */
void deeds_list(struct world *world);  /* those that are waited for */
void deeds_watch(struct world *world); /* each tick */
bool deed_holds(const struct world *world, const struct wait *wait);
double deed_time(const struct world *world, const struct wait *wait); /* TIME_NEVER: not yet */

/* One kind of task: when it may start (its verb's own wait), starting, each tick (true: the player
 * is free for his next), whether something is to happen now that its tick is to be asked about (it
 * changes nothing: the clock tries moments inside a tick with it), and whom it waits for, for
 * messages. A tick asked twice at one moment does the same. */
struct task_class {
    bool (*ready)(struct world *world, struct job *job);
    void (*start)(struct world *world, struct job *job);
    bool (*tick)(struct world *world, struct job *job);
    bool (*due)(struct world *world, const struct job *job);
    int (*waits_for)(struct world *world, const struct job *job);
    bool movement;
};
const struct task_class *task_class(enum task_kind kind);
extern const struct task_class task_move, task_hold, task_carry, task_pass, task_exchange,
    task_shoot, task_screen, task_use, task_guard;

/* task_move.c, shared with carry and use */
void move_along(struct world *world, struct job *job, struct route *route, double run_out);
bool move_tick(struct world *world, struct job *job);
bool move_due(struct world *world, const struct job *job);
void move_to_goal(struct world *world, struct job *job, struct route *route);
struct vec2 move_goal(struct world *world, const struct task *task);
bool move_at_rim(struct vec2 goal);
/* route_plan.c: the way of a movement by its shape. */
double plan_move(struct world *world, const struct task *task, struct vec2 goal,
                 struct route *route);
double plan_along(struct world *world, const struct task *task, struct vec2 goal,
                  struct route *route); /* a line, from the route's last point on */
double plan_use(struct world *world, const struct task *task, struct vec2 goal,
                struct route *route);
/* A use whose place lies on the other side of the user's defender than the screen. */
bool use_goes_away(struct world *world, const struct task *task, struct vec2 end);
/* Past two in the order that is written he would run on and come back: the second comes first. */
bool use_doubles_back(const struct world *world, const struct task *task, struct vec2 goal);
/* The last strides: to the place; at the ring to its front, where it is seen, or, to shoot, on
 * through. All of these return how much of the way lies behind the goal. */
double plan_end(struct world *world, const struct task *task, struct vec2 goal,
                struct route *route);
/* Past somebody on the side `out`, `near` metres from him, on a curve of `radius`, and to the end.
 */
struct shoulder {
    struct vec2 at, out;
    double near, radius;
};
double plan_by(struct world *world, const struct task *task, const struct shoulder *by,
               struct vec2 goal, struct route *route);
double plan_setup_length(const struct task *task, double far);

/* screen_place.c */
#define SCREEN_STANDS 1.0 /* m/s: a defender faster than that is running by */
#define SCREEN_MET .36    /* m of air between the two at most */
/* Where its defender is, and at what speed; where one would be if there is none. */
struct vec2 screen_defender(const struct world *world, const struct screen *screen, struct vec2 *v);
/* Works out its spot, anew when he comes otherwise than was reckoned. */
void screen_plan(struct world *world, const struct job *job, struct screen *screen);
/* task_screen.c: he slips out of it, and nothing but his screen keeps him from it; else he sets it
 * and waits. */
bool screen_is_slipped(struct world *world, body screener);
/* The user is still to use the screen of that task. */
bool screen_is_wanted(const struct world *world, int screen, body screener, body user);
/* task_use.c: he has the ball, if it is one with the ball. */
bool use_has_ball(const struct world *world, const struct task *task);
/* It is cut short: its screeners need not stand on. */
void use_let_go(struct world *world, const struct job *job);

/* screens.c */
int screen_task_for(struct world *world, body user); /* a screen still to be set for him; or none */
bool screen_on_ball(const struct world *world, body user); /* the user has it, or it flies to him */
bool screen_setup_pending(struct world *world, body user); /* his fake is not done */
double screen_eta(struct world *world,
                  int task); /* s until the screener is there; large: not on the way */
/* Which of all its uses in the step its screener stands for, who does not know what will be read:
 * the first, unless more of them come off on the other side of the defender, or most on one side
 * and the first straight on; NULL: none. `side`:
 * on which side of him, as the user sees it, +1 left, -1 right; 0: on either. */
const struct task *screen_use(struct world *world, const struct step *step, body screener,
                              body user, int *side);
struct vec2 screen_exit(struct world *world, body screener, body user);
void screen_watch(struct world *world); /* clears and frees what has been used */

/* ball.c: it is somewhere at every moment, and nowhere does it jump. */
struct flight ball_flight(const struct world *world, const struct task *pass, struct vec2 end);
void ball_throw(struct world *world, const struct job *pass, struct vec2 end);
void ball_give(struct world *world, body to); /* into his hands, from where it is */
void ball_shoot(struct world *world, body from, int task);
void ball_drop(struct world *world, body target); /* to the floor; he is to fetch it */
void ball_tick(struct world *world);
bool ball_due(const struct world *world); /* is it caught, at the ring, picked up now? */
struct vec2 ball_place(const struct world *world);
bool ball_is_held(const struct world *world, body who);
bool ball_is_under_way(const struct world *world);     /* in the air, or being fetched */
bool ball_is_for(const struct world *world, body who); /* he has it, or it is on its way to him */
/* From one segment to the next: what was in the air is no more. */
void ball_take(struct world *world, const struct ball *before);
struct ball ball_leave(const struct world *world);

/* catch.c: whom a throw meets, and whether he catches it. */
struct job *ball_receiver_job(struct world *world, body receiver, int pass);
double catch_reach(const struct world *world); /* m */
void catch_tick(struct world *world);          /* while it flies */
void catch_take(struct world *world, body by); /* what ends the pass, if it was one */

/* record_ball.c */
void record_ball(struct world *world);     /* opens a new span */
void record_ball_end(struct world *world); /* and, when all is over, the dribbles */

/* steer.c: bends a wanted velocity round whoever is in the way. */
struct vec2 steer_round(struct world *world, body who, struct vec2 command, struct vec2 goal,
                        body not_him);
/* Who has just turned about does not at once do so again: his feet are watched for it. */
void steer_watch_feet(const struct world *world, struct agent *agent);
struct vec2 steer_footed(const struct world *world, const struct agent *agent, struct vec2 command);
/* He does not push: toward whoever is in touch he goes no faster than that one goes away. */
struct vec2 steer_off(const struct world *world, body who, struct vec2 command);

/* seal.c: a defender on the back of his man. */
struct vec2 seal_place(const struct world *world, body who,
                       struct vec2 goal); /* where it is done */
void seal_begin(struct world *world, body who);
void seal_set(struct world *world, body who);  /* he is there */
void seal_tick(struct world *world, body who); /* until he has the ball */

/* help.c */
void help_tick(struct world *world);
bool help_shows(const struct world *world, body self); /* in the driver's way, to be seen */

/* guard_zone.c: defenders with an area and no man. */
void zone_start(struct world *world); /* at the start of a segment */
void zone_tick(struct world *world);
struct vec2 zone_first(const struct world *world, body self); /* where he stands to begin with */
bool guard_has_area(const struct world *world, body self);
bool zone_has_ball(const struct world *world, body self); /* it is his by his area */
bool zone_traps(const struct world *world, body self);    /* by rule, beside who is on the ball */
body guard_nearest_area(const struct world *world, struct vec2 p); /* who of them is nearest */
/* Who guards him: his own defender, in a zone who is nearest; or BODY_NONE. */
body guard_of(const struct world *world, body man);
/* Whom a defender minds: his man; in a zone, when he is on the ball, who has it; or BODY_NONE. */
body guard_minds(const struct world *world, body self);

/* trap.c: the two of a trap let nobody dribble at them or between them. */
bool trap_holds(struct world *world, body holder, struct vec2 command);
/* The ball has gone from `trapped` to `holder`: when that is the trapper's own man, the nearest of
 * the others takes him, and he that one's; else back to his own. */
void trap_rotate(struct world *world, body self, body trapped, body holder);
bool trap_is_closed(const struct world *world, body holder); /* his dribble is over */

/* duty.c: what one defender does instead of the man rules. */
void duty_clear(struct world *world); /* at the start of a segment: nobody has any */
struct condition deed_condition(const struct wait *deed); /* as a read would ask it */
/* What the read says of the defense, and what is supposed. */
void duty_suppose(struct world *world);
/* The defender that a condition is about: himself, or who guards the player it names. */
body duty_read_of(const struct world *world, const struct who *who);
/* reads.c: says what a defender is to do and cannot: a read, before the step; a sentence, as it
 * starts; who recovers and is with his man; what has waited in vain or come too late, at the end.
 */
void reads_look(struct world *world);
void reads_start(struct world *world, const struct job *job);
void reads_recover(struct world *world, body self);
void reads_end(struct world *world);
void duty_begin(struct world *world, struct job *job); /* his sentence starts */
void duty_by_rule(struct world *world, body self, enum strategy strategy);
body duty_man(const struct world *world, body self);   /* whom he minds now, or BODY_NONE */
body duty_about(const struct world *world, body self); /* whom it is about, or BODY_NONE */
/* A screen for this attacker or by him is set, on its way or still to come. */
bool duty_screen(const struct world *world, body man);
/* Does the defender do that now, by sentence, read or rule? For what waits on it. */
bool duty_shows(const struct world *world, body defender, enum verb verb);
void duty_meets(struct world *world, body self); /* out of his area: to whom he goes */
/* duty_watch.c: what is over, who is there, who takes another man. */
void duty_tick(struct world *world);
bool duty_arrives(const struct world *world, body self); /* he is where it wants him */
void duty_arrive(struct world *world, body self);        /* and what follows from that */
void duty_pick_up(struct world *world); /* who has no man takes the one who is left open */

/* guard.c, perception.c, contact.c, record.c, trouble.c */
void guard_tick(struct world *world);
struct vec2 guard_start(struct world *world, body defender);
/* Where `defender` will stand once the user stands at `man` and `screener` is on the way. */
struct vec2 guard_expected(struct world *world, body defender, body screener, struct vec2 man,
                           struct vec2 exit);
void see_now(struct world *world);
void see_fill(struct world *world);
void see_ball(struct world *world); /* it has changed hands */
/* What happens now will be seen `seconds` from now: defenders then think at that very moment. More
 * of them at once than SIM_SIGHTS wait for the next tick. */
void see_later(struct world *world, double seconds);
bool see_due(const struct world *world);
void see_done(struct world *world); /* what is due has been seen */
struct glimpse see_ago(const struct world *world, double seconds);
struct mover see_body(const struct world *world, body who, double seconds);
void contact_list(struct world *world);                 /* who is near whom, for contact_look */
void contact_look(struct world *world, double seconds); /* who will touch whom within that time */
void contact_part(struct world *world);                 /* they do */
void contact_bound(struct world *world, body b);        /* no faster than legs, and on the floor */
void record_sample(struct world *world);
void record_finish(struct world *world);
/* For a message: a player, a length in the play's unit, seconds. */
const char *said_who(const struct world *world, body b);
const char *said_far(const struct world *world, double metres);
const char *said_seconds(const struct world *world, double seconds);
/* A sentence that all reads share is run with each of them, and told of once. */
bool trouble_told(const struct world *world, const struct job *job);
void trouble_stuck(struct world *world); /* nothing moves, not everything is done */
void trouble_waited(struct world *world, const struct job *job);
void trouble_long(struct world *world);
/* Not an error, but not to be misread in silence: a screen set `off` m from the place that was
 * written; a use that goes away from its screen, or uses one that the defense does not let him. */
void trouble_screen_place(struct world *world, const struct job *job, double off);
void trouble_away(struct world *world, const struct job *job);
void trouble_order(struct world *world, const struct job *job);         /* use_doubles_back */
void trouble_up(struct world *world, const struct job *job, double up); /* a down screen goes up */
void trouble_ice(struct world *world, const struct job *job); /* it uses a screen that is iced */
void trouble_trapped(struct world *world, const struct job *job); /* it ends in a trap */
/* He comes to the end of his way far later than it needs, or is kept short of its place. */
void trouble_held_up(struct world *world, const struct job *job);
void trouble_until(struct world *world, const struct job *job);   /* it ended without its `until` */
void trouble_at_once(struct world *world, const struct job *job); /* it ends as it begins */
void trouble_cut(struct world *world, const struct job *job, const struct job *by); /* by a time */
/* The moment that it was to start at, s, was over before its player was free. */
void trouble_past(struct world *world, const struct job *job, const struct wait *wait,
                  double moment);

#endif
