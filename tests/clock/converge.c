/* SPDX-License-Identifier: MIT */
/* converge: the tick halved. Every play is run with the program's tick and with half of it. Up to
 * the moment at which the first screen is set, other bodies' contacts included, the two must agree:
 * 90 % of the ways through a step within 25 mm for the player who is worst off, 90 % of the moments
 * within 6 ms; and so they must as long as no two bodies touch. What comes after, where a body is
 * passed on one side or the other, is printed. It is said of the files, of the
 * published plays that the outside tests hold, and of the generated ones, each alone, and of all
 * together.
 *
 *   converge [-r RATE] [-g PLAYS] [-v MM] FILE... */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "floor/sim/sim.h"
#include "plays.h"
#include "table.h"
#include "worked.h"

#define FAR_MM 25.0 /* what is wanted: p90 when the tick is halved (ours) */
#define LATE_MS 6.0
#define TOUCH .52    /* m between two who touch, or nearly */
#define NEVER_MS 1e6 /* happened in one run only */

enum when { BEFORE_CONTACT, AFTER_CONTACT, WHENS };
enum { SECONDS = 6 };

struct tally {
    struct numbers worst[WHENS];   /* mm, one a way through a step */
    struct numbers untouched[3];   /* as long as no two touch: attackers, defenders, all */
    struct numbers at[SECONDS];    /* mm, by second of the step, whatever happened */
    struct numbers early[SECONDS]; /* the same, of those before contact */
    struct numbers event[MOMENT_COUNT][WHENS], events[WHENS]; /* ms */
    struct numbers alone; /* ms, of moments before any two bodies touch */
    int rate;
    size_t plays, differ; /* differ: not the same segments ran */
    double loud;          /* mm; what is worse is told by name; < 0: nothing */
};

static struct run *run_at(struct arena *arena, const struct sources *sources,
                          const struct play *play, int rate)
{
    struct diags diags;
    diags_init(&diags, arena);
    struct sim_options options = {.rate = rate};
    return sim_run_with(arena, sources, play, &diags, &options);
}

/* When the first screen was set; a step after one with a screen is all after it. */
static double contact_of(const struct segment *segment)
{
    for (const struct segment *s = segment->before; s; s = s->before) {
        if (contact_of(s) < HUGE_VAL) {
            return -1;
        }
    }
    double first = HUGE_VAL;
    for (size_t i = 0; i < segment->tasks; i++) {
        double set = segment->record[i].time[MOMENT_SET];
        first = set >= 0 && set < first ? set : first;
    }
    return first;
}

static double worst_of(const struct segment *a, const struct segment *b, size_t sample, int first,
                       int last, int *who)
{
    double worst = 0;
    for (int i = first; i < last; i++) {
        if (a->track[i].sample && b->track[i].sample) {
            double far =
                1000 * vec2_distance(a->track[i].sample[sample].at, b->track[i].sample[sample].at);
            if (far > worst) {
                worst = far;
                *who = i;
            }
        }
    }
    return worst;
}

/* Do two bodies touch at a sample? */
static bool is_touching(const struct segment *segment, size_t sample)
{
    for (int a = 0; a < BODY_COUNT; a++) {
        for (int b = a + 1; b < BODY_COUNT; b++) {
            if (segment->track[a].sample && segment->track[b].sample &&
                vec2_distance(segment->track[a].sample[sample].at,
                              segment->track[b].sample[sample].at) < TOUCH) {
                return true;
            }
        }
    }
    return false;
}

static void compare_events(struct tally *tally, const struct segment *a, const struct segment *b,
                           double contact, double touch)
{
    for (size_t i = 0; i < a->tasks; i++) {
        for (int m = 0; m < MOMENT_COUNT; m++) {
            double ta = a->record[i].time[m], tb = b->record[i].time[m];
            if (ta == TIME_NEVER && tb == TIME_NEVER) {
                continue;
            }
            bool both = ta != TIME_NEVER && tb != TIME_NEVER;
            double late = both ? 1000 * fabs(ta - tb) : NEVER_MS;
            double first = both ? fmin(ta, tb) : fmax(ta, tb);
            enum when when = first <= contact ? BEFORE_CONTACT : AFTER_CONTACT;
            numbers_add(&tally->event[m][when], late);
            numbers_add(&tally->events[when], late);
            if (first <= touch) {
                numbers_add(&tally->alone, late);
            }
        }
    }
}

static void compare(struct tally *tally, const struct segment *a, const struct segment *b)
{
    double contact = fmin(contact_of(a), contact_of(b)), worst[WHENS] = {-1, -1};
    double when_worst = 0;
    int who_worst = 0;
    double alone[2] = {0, 0};
    bool touched = a->before != NULL; /* what differs after a step differs for good */
    double touch = touched ? -1 : contact;
    size_t samples = a->samples < b->samples ? a->samples : b->samples;
    for (size_t i = 0; i < samples; i++) {
        double t = (double)i * RUN_SAMPLE;
        int who = 0;
        double far = worst_of(a, b, i, 0, BODY_COUNT, &who);
        enum when when = t <= contact ? BEFORE_CONTACT : AFTER_CONTACT;
        if (when == BEFORE_CONTACT && far > worst[when]) {
            when_worst = t;
            who_worst = who;
        }
        worst[when] = fmax(worst[when], far);
        if (!touched && (is_touching(a, i) || is_touching(b, i))) {
            touched = true;
            touch = fmin(contact, t);
        }
        if (!touched && when == BEFORE_CONTACT) {
            for (int k = 0; k < 2; k++) {
                alone[k] = fmax(alone[k], worst_of(a, b, i, k ? BODY_FIRST_DEFENDER : 0,
                                                   k ? BODY_COUNT : BODY_COACH + 1, &who));
            }
        }
        if (i % 20 == 0 && i / 20 >= 1 && i / 20 <= SECONDS) {
            numbers_add(&tally->at[i / 20 - 1], far);
            if (when == BEFORE_CONTACT) {
                numbers_add(&tally->early[i / 20 - 1], far);
            }
        }
    }
    for (int w = 0; w < WHENS; w++) {
        if (worst[w] >= 0) {
            numbers_add(&tally->worst[w], worst[w]);
        }
    }
    if (touch > 0) {
        numbers_add(&tally->untouched[0], alone[0]);
        numbers_add(&tally->untouched[1], alone[1]);
        numbers_add(&tally->untouched[2], fmax(alone[0], alone[1]));
    }
    compare_events(tally, a, b, contact, touch);
    if (tally->loud >= 0 && worst[BEFORE_CONTACT] > tally->loud) {
        printf("# %.*s, step %d%c: %.0f mm at %.2f s, %s%d\n", STR_ARG(a->play->name), a->step + 1,
               a->branch >= 0 ? 'a' + a->branch : ' ', worst[BEFORE_CONTACT], when_worst,
               body_is_defender((body)who_worst) ? "x" : "", body_number((body)who_worst));
    }
}

struct group {
    const char *name;
    struct tally alone, *all;
};

static void one_play(void *ctx, struct arena *arena, const struct sources *sources,
                     const struct play *play)
{
    struct group *group = ctx;
    struct tally *tally = group->all;
    struct run *a = run_at(arena, sources, play, tally->rate);
    struct run *b = run_at(arena, sources, play, 2 * tally->rate);
    tally->plays++;
    group->alone.plays++;
    for (size_t s = 0; s < a->segments.count; s++) {
        const struct segment *sa = a->segments.at[s], *sb = b->segments.at[s];
        if (sa->ran && sb->ran) {
            compare(tally, sa, sb);
            compare(&group->alone, sa, sb);
        } else if (sa->ran != sb->ran) {
            tally->differ++;
            printf("# %.*s, step %d%c: ran in one only\n", STR_ARG(play->name), sa->step + 1,
                   sa->branch >= 0 ? 'a' + sa->branch : ' ');
        }
    }
}

static void print_table(struct tally *tally)
{
    static const char *const moments[MOMENT_COUNT] = {
        [MOMENT_STARTED] = "started", [MOMENT_RELEASED] = "released", [MOMENT_SET] = "set",
        [MOMENT_CAUGHT] = "caught",   [MOMENT_USED] = "used",         [MOMENT_ARRIVED] = "arrived"};
    printf("# %zu plays, 1/%d s against 1/%d s: median, 90 %%, most\n", tally->plays, tally->rate,
           2 * tally->rate);
    numbers_print("worst player before contact, mm", &tally->worst[BEFORE_CONTACT]);
    numbers_print("attackers before any touch, mm", &tally->untouched[0]);
    numbers_print("defenders before any touch, mm", &tally->untouched[1]);
    numbers_print("worst player after it, mm", &tally->worst[AFTER_CONTACT]);
    for (int s = 0; s < SECONDS; s++) {
        char name[64];
        snprintf(name, sizeof name, "at %d s before contact, mm", s + 1);
        numbers_print(name, &tally->early[s]);
    }
    for (int s = 0; s < SECONDS; s++) {
        char name[64];
        snprintf(name, sizeof name, "at %d s whatever happened, mm", s + 1);
        numbers_print(name, &tally->at[s]);
    }
    numbers_print("moments before contact, ms", &tally->events[BEFORE_CONTACT]);
    numbers_print("moments before any touch, ms", &tally->alone);
    numbers_print("moments after it, ms", &tally->events[AFTER_CONTACT]);
    for (int m = 0; m < MOMENT_COUNT; m++) {
        for (int w = 0; w < WHENS; w++) {
            char name[64];
            snprintf(name, sizeof name, "%s %s contact, ms", moments[m], w ? "after" : "before");
            numbers_print(name, &tally->event[m][w]);
        }
    }
}

static bool say(int number, bool good, const char *what, double found, double most)
{
    printf("%sok %d - %s: %.1f, at most %.0f\n", good ? "" : "not ", number, what, found, most);
    return good;
}

/* What is wanted, and not held as long as it is not reached. */
static void wish(const char *what, double found, double most)
{
    printf("# %s: %s: %.1f of %.0f\n", found <= most ? "reached" : "NOT REACHED", what, found,
           most);
}

static void wishes(const char *whose, struct tally *tally)
{
    printf("# of %zu plays, %s:\n", tally->plays, whose);
    wish("90 % of the worst players before the first screen is set, mm",
         numbers_share(&tally->worst[BEFORE_CONTACT], .9), FAR_MM);
    wish("90 % of the moments before the first screen is set, ms",
         numbers_share(&tally->events[BEFORE_CONTACT], .9), LATE_MS);
    wish("90 % of the worst players before a touch, mm", numbers_share(&tally->untouched[2], .9),
         FAR_MM);
}

static void run_groups(int argc, char **argv, struct group *groups)
{
    static const struct worked_table *const tables[] = {&worked_offense, &worked_defense,
                                                        &worked_break};
    plays_files(argc, argv, one_play, &groups[0]);
    for (size_t k = 0; k < sizeof tables / sizeof *tables; k++) {
        for (size_t i = 0; i < tables[k]->count; i++) {
            /* a play may stand twice, once a read */
            if (i == 0 || strcmp(tables[k]->at[i].text, tables[k]->at[i - 1].text) != 0) {
                plays_text(tables[k]->at[i].text, one_play, &groups[1]);
            }
        }
    }
    plays_seeds((int)plays_option(argc, argv, "-g", 0), one_play, &groups[2]);
}

int main(int argc, char **argv)
{
    static struct tally tally;
    static struct group groups[] = {
        {.name = "the files"}, {.name = "published plays"}, {.name = "generated ones"}};
    enum { GROUPS = sizeof groups / sizeof *groups };
    tally.rate = (int)plays_option(argc, argv, "-r", SIM_RATE);
    tally.loud = plays_option(argc, argv, "-v", -1);
    for (size_t g = 0; g < GROUPS; g++) {
        groups[g].all = &tally;
        groups[g].alone.loud = -1;
    }
    run_groups(argc, argv, groups);
    print_table(&tally);
    printf("1..4\n");
    double far = numbers_share(&tally.untouched[2], .9), late = numbers_share(&tally.alone, .9);
    bool good = tally.untouched[2].count && tally.alone.count;
    good &= say(1, far <= FAR_MM, "90 % of the worst players before a touch, mm", far, FAR_MM);
    good &= say(2, late <= LATE_MS, "90 % of the moments before a touch, ms", late, LATE_MS);
    double set = numbers_share(&tally.events[BEFORE_CONTACT], .9);
    good &= say(3, set <= LATE_MS, "90 % of the moments before the first screen is set, ms", set,
                LATE_MS);
    double worst = numbers_share(&tally.worst[BEFORE_CONTACT], .9);
    good &= say(4, worst <= FAR_MM, "90 % of the worst players before the first screen is set, mm",
                worst, FAR_MM);
    for (size_t g = 0; g < GROUPS; g++) {
        wishes(groups[g].name, &groups[g].alone);
    }
    wishes("all", &tally);
    return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
