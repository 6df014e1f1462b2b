/* SPDX-License-Identifier: MIT */
/* asking: one diagram while it is looked through for what to ask about it: which of its tasks have
 * a line, and what a missing line takes with it. Private to asked. */
#ifndef PAGE_SHEET_ASKING_H
#define PAGE_SHEET_ASKING_H

#include "page/sheet/asked.h"

/* What can be asked, the most telling first. */
enum topic {
    TOPIC_READ,     /* what the defender's deed means */
    TOPIC_SCREENER, /* what a screener does next */
    TOPIC_USE,      /* which way round a screen */
    TOPIC_SCREEN,   /* where a screen is set */
    TOPIC_PASS,     /* who gets the ball */
    TOPIC_PLACE,    /* where to stop */
    TOPIC_COUNT
};

struct looking {
    struct arena *arena;
    const struct play *play;
    const struct diagram *diagram;
    const struct step *step;
    const struct branch *branch; /* or NULL */
    const struct scene *scene;   /* whole */
    size_t first, end;           /* its own tasks */
    int *line;                   /* of each task, in the scene; -1: it has none */
    enum scene_class *class;     /* of each line */
    size_t lines;                /* in the scene */
};
struct looking looking_at(struct arena *arena, const struct play *play,
                          const struct diagram *diagram, double width);
const struct task *task_of(const struct looking *looking, size_t index);
/* An attacker's, that has a line of its own or with others. */
bool task_is_drawn(const struct looking *looking, size_t index);
bool task_gives(const struct task *task);  /* a pass, a hand-off */
bool task_is_way(const struct task *task); /* a run, a dribble, a screen */
/* Seconds of its segment; a pass begins when it leaves the hands. */
double task_began(const struct looking *looking, size_t index);
enum scene_class line_class_of(const struct looking *looking, size_t index);

/* Does task `index` tell who got the ball of the pass? */
bool task_tells_of_pass(const struct looking *looking, size_t pass, size_t index);
/* Task `index` and all that would tell of it: what its player does from there on, the ball that
 * comes to him there, who comes off his screen; of a pass what is done with the ball then. */
bool *missing_with(const struct looking *looking, size_t index);
/* How many lines are missing, and how many players' stay drawn. */
size_t missing_lines(const struct looking *looking, const bool *missing);
size_t drawn_lines(const struct looking *looking, const bool *missing);

/* The blanks of what `topic` asks by task `index`: one for each player with lines among those that
 * are missing with it; of a pass one for all, since who has the next would be who gets it. */
void blanks_of(const struct looking *looking, enum topic topic, size_t index, const bool *missing,
               blank_list *out);
/* A read that a defender decides; what is left over is no read of anybody. */
bool looking_is_read(const struct looking *looking);
struct str asked_title(const struct looking *looking);

#endif
