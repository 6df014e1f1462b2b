/* SPDX-License-Identifier: MIT */
/* parting: for whoever wants to know why a run hangs on its tick. Every play is run with a tick and
 * with half of it; printed is the first moment of each way through a step at which somebody is
 * further from himself than a bound, up to the first screen that is set, and what had come out
 * otherwise by then: the first thing decided, and the first velocity wanted. At the end how often
 * it was what. Nothing here passes or fails. parting [-r RATE] [-g PLAYS] [-m MM] FILE... */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "floor/sim/world.h"
#include "plays.h"

#define COMMAND .15 /* m/s between two velocities that are not the same any more */

/* What is decided, one number each, of a body... */
#define BODY_FACTS(X)                                                                              \
    X(head, a->head)                                                                               \
    X(phase, a->head < a->queued ? (int)w->job[a->queue[a->head]].phase : -1)                      \
    X(dodged, w->t <= a->dodge_until ? a->dodged : -1)                                             \
    X(side, w->t <= a->dodge_until ? a->dodge_side : 0)                                            \
    X(stands, a->stands)                                                                           \
    X(goes, a->goes)                                                                               \
    X(anchored, a->anchored)                                                                       \
    X(planted, a->planted)                                                                         \
    X(coming, a->coming)                                                                           \
    X(going, a->going)                                                                             \
    X(corner, a->course.passed)                                                                    \
    X(let_through, w->t < a->let_through)                                                          \
    X(turned, w->t < a->turned + .5)                                                               \
    X(strategy, w->duty[b].strategy)                                                               \
    X(duty_over, w->duty[b].over)                                                                  \
    X(duty_there, w->duty[b].there)                                                                \
    X(duty_waits, w->duty[b].waits)                                                                \
    X(guards, w->guards[b])                                                                        \
    X(screen,                                                                                      \
      w->screen[b].live + 2 * w->screen[b].set + 4 * w->screen[b].left + 8 * w->screen[b].cleared) \
    X(screen_met, w->screen[b].met)                                                                \
    X(screen_near, w->screen[b].near_at >= 0)                                                      \
    X(screen_way, w->screen[b].ahead)
/* ... and of all. */
#define WORLD_FACTS(X)                                                                             \
    X(helper, w->helper)                                                                           \
    X(helped, w->helped)                                                                           \
    X(second, w->second)                                                                           \
    X(driver, w->driver)                                                                           \
    X(pick, w->pick.live)                                                                          \
    X(tagger, w->pick.tagger)                                                                      \
    X(ball, w->ball.state)                                                                         \
    X(holder, w->ball.holder)                                                                      \
    X(zone_ball, w->zone.on_ball)                                                                  \
    X(zone_comes, w->zone.comes)

#define NAME(name, value) FACT_##name,
enum { BODY_FACTS(NAME) BODY_FACT_COUNT };
enum { WORLD_FACTS(NAME) WORLD_FACT_COUNT };
#define TEXT(name, value) #name,
static const char *const body_facts[] = {BODY_FACTS(TEXT)}, *const world_facts[] = {
                                                                WORLD_FACTS(TEXT)};

struct moment_of { /* everybody, at one time */
    int step, branch;
    double t;
    struct vec2 at[BODY_COUNT], v[BODY_COUNT], command[BODY_COUNT];
    double body[BODY_COUNT][BODY_FACT_COUNT], world[WORLD_FACT_COUNT];
    bool here[BODY_COUNT], set; /* a screen has been set */
};
struct log {
    struct moment_of *at;
    size_t count, room;
};

static void keep(void *watcher, const struct world *w, bool met)
{
    struct log *log = watcher;
    if (!met || w->tick % (w->rate / SIM_RATE_PART) != 0) {
        return;
    }
    if (log->count == log->room) {
        log->room = log->room * 2 + 4096;
        log->at = realloc(log->at, log->room * sizeof *log->at);
        if (!log->at) {
            abort();
        }
    }
    struct moment_of *now = &log->at[log->count++];
    *now =
        (struct moment_of){.step = w->step_index, .branch = w->branch, .t = w->t - world_zero(w)};
    for (int b = 0; b < BODY_COUNT; b++) {
        const struct agent *a = &w->agent[b];
        now->here[b] = a->here;
        now->at[b] = a->m.at;
        now->v[b] = a->m.v;
        now->command[b] = a->command;
#define KEEP_BODY(name, value) now->body[b][FACT_##name] = a->here ? (double)(value) : 0;
        BODY_FACTS(KEEP_BODY)
        now->set |= w->screen[b].set;
    }
#define KEEP_WORLD(name, value) now->world[FACT_##name] = (double)(value);
    WORLD_FACTS(KEEP_WORLD)
}

/* ---- the first that differs ---- */

struct first {
    bool any;
    double t;
    int who;
    const char *what;
    double a, b;
};

static void note(struct first *first, double t, int who, const char *what, double a, double b)
{
    if (!first->any) {
        *first = (struct first){true, t, who, what, a, b};
    }
}

static void look(const struct moment_of *a, const struct moment_of *b, struct first *fact,
                 struct first *wanted, struct first *far, double bound)
{
    for (int f = 0; f < WORLD_FACT_COUNT; f++) {
        if (a->world[f] != b->world[f]) {
            note(fact, a->t, -1, world_facts[f], a->world[f], b->world[f]);
        }
    }
    for (int k = 0; k < BODY_COUNT; k++) {
        if (!a->here[k]) {
            continue;
        }
        for (int f = 0; f < BODY_FACT_COUNT; f++) {
            if (a->body[k][f] != b->body[k][f]) {
                note(fact, a->t, k, body_facts[f], a->body[k][f], b->body[k][f]);
            }
        }
        double off = vec2_distance(a->command[k], b->command[k]);
        if (off > COMMAND) {
            note(wanted, a->t, k, "command", off, vec2_length(a->command[k]));
        }
        double mm = 1000 * vec2_distance(a->at[k], b->at[k]);
        if (mm > bound) {
            note(far, a->t, k, "place", mm, 0);
        }
    }
}

struct tally {
    int rate;
    double bound;
    bool loud;
    size_t ways, parted, inherited;
    struct cause {
        const char *what;
        size_t times;
    } cause[64];
    size_t causes;
};

static void count(struct tally *tally, const char *what)
{
    for (size_t i = 0; i < tally->causes; i++) {
        if (strcmp(tally->cause[i].what, what) == 0) {
            tally->cause[i].times++;
            return;
        }
    }
    tally->cause[tally->causes++] = (struct cause){what, 1};
}

static void print_first(const char *label, const struct first *first)
{
    if (first->any) {
        printf("   %s %s%d %s at %.3f s (%.3f, %.3f)", label,
               first->who < 0                       ? "-"
               : body_is_defender((body)first->who) ? "x"
                                                    : "",
               first->who < 0 ? 0 : body_number((body)first->who), first->what, first->t, first->a,
               first->b);
    }
}

static void tell(struct tally *tally, const struct play *play, const struct moment_of *at,
                 const struct first *fact, const struct first *wanted, const struct first *far)
{
    tally->ways++;
    if (!far->any) {
        return;
    }
    tally->parted++;
    if (far->t < .03 && at->step > 0) {
        tally->inherited++;
        return;
    }
    bool decided = fact->any && fact->t <= far->t + .2;
    const char *cause = decided                              ? fact->what
                        : wanted->any && wanted->t <= far->t ? "command"
                                                             : "drift";
    count(tally, cause);
    printf("%.*s %d%c:", STR_ARG(play->name), at->step + 1,
           at->branch >= 0 ? 'a' + at->branch : ' ');
    print_first("fact", fact);
    print_first("wants", wanted);
    print_first("far", far);
    printf("\n");
}

/* Who is furthest from himself at a moment. */
static void trace(const struct moment_of *a, const struct moment_of *b)
{
    int who = 0;
    for (int k = 1; k < BODY_COUNT; k++) {
        bool more = vec2_distance(a->at[k], b->at[k]) > vec2_distance(a->at[who], b->at[who]);
        who = a->here[k] && more ? k : who;
    }
    printf(
        "# %d %.3f s: %s%d %.3f mm, v (%.3f, %.3f) (%.3f, %.3f), wants (%.3f, %.3f) (%.3f, %.3f)\n",
        a->step + 1, a->t, body_is_defender((body)who) ? "x" : "", body_number((body)who),
        1000 * vec2_distance(a->at[who], b->at[who]), a->v[who].x, a->v[who].y, b->v[who].x,
        b->v[who].y, a->command[who].x, a->command[who].y, b->command[who].x, b->command[who].y);
}

static struct log run_at(struct arena *arena, const struct sources *sources,
                         const struct play *play, int rate)
{
    struct log log = {0};
    struct diags diags;
    diags_init(&diags, arena);
    struct sim_options options = {.rate = rate, .inside = keep, .watcher = &log};
    sim_run_with(arena, sources, play, &diags, &options);
    return log;
}

static bool same_way(const struct moment_of *a, const struct moment_of *b)
{
    return a->step == b->step && a->branch == b->branch;
}

static void one_play(void *ctx, struct arena *arena, const struct sources *sources,
                     const struct play *play)
{
    struct tally *tally = ctx;
    struct log a = run_at(arena, sources, play, tally->rate);
    struct log b = run_at(arena, sources, play, 2 * tally->rate);
    size_t i = 0, k = 0;
    while (i < a.count && k < b.count) {
        struct first fact = {0}, wanted = {0}, far = {0};
        size_t from = i;
        while (i < a.count && k < b.count && same_way(&a.at[from], &a.at[i]) &&
               same_way(&a.at[from], &b.at[k])) {
            if (!far.any && !a.at[i].set && !b.at[k].set) {
                look(&a.at[i], &b.at[k], &fact, &wanted, &far, tally->bound);
            }
            if (tally->loud) {
                trace(&a.at[i], &b.at[k]);
            }
            i++, k++;
        }
        tell(tally, play, &a.at[from], &fact, &wanted, &far);
        while (i < a.count && same_way(&a.at[from], &a.at[i])) {
            i++;
        }
        while (k < b.count && same_way(&a.at[from], &b.at[k])) {
            k++;
        }
    }
    free(a.at);
    free(b.at);
}

int main(int argc, char **argv)
{
    static struct tally tally;
    tally.rate = (int)plays_option(argc, argv, "-r", SIM_RATE);
    tally.bound = plays_option(argc, argv, "-m", 5);
    tally.loud = plays_option(argc, argv, "-t", 0) > 0;
    plays_each(argc, argv, one_play, &tally);
    printf(
        "%zu ways through a step, %zu part by more than %.0f mm before a screen, %zu of them from "
        "their start\n",
        tally.ways, tally.parted, tally.bound, tally.inherited);
    for (size_t i = 0; i < tally.causes; i++) {
        printf("%6zu %s\n", tally.cause[i].times, tally.cause[i].what);
    }
    return EXIT_SUCCESS;
}
