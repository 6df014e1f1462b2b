/* SPDX-License-Identifier: MIT */
/* maker: rolls, free places, ties and the printing of one sentence. Knows nothing of what a play is
 * made of. */
#include "maker.h"

#include <stdio.h>
#include <string.h>

#include "base/real.h"

#define APART 2.3   /* m: two who stand are further apart than this (ours) */
#define PACE 2.2    /* m/s: about what a run comes to with its start and its stop (ours) */
#define PATIENT 4.0 /* s that a player is made to wait: half of what the clock bears */

unsigned maker_roll(struct maker *maker, unsigned most)
{
    return rng_below(&maker->rng, most);
}

bool maker_chance(struct maker *maker, unsigned percent)
{
    return maker_roll(maker, 100) < percent;
}

bool maker_is_free(const struct maker *maker, int who, struct vec2 p)
{
    for (int i = 1; i <= MAKER_PLAYERS; i++) {
        if (i != who && vec2_distance(maker->at[i], p) < APART) {
            return false;
        }
    }
    return true;
}

bool maker_rim_free(const struct maker *maker, int who)
{
    return maker_is_free(maker, who, vec2_of(0, 0));
}

/* ---- places ---- */

static const enum spot spots[] = {SPOT_TOP,      SPOT_WING,         SPOT_SLOT,     SPOT_CORNER,
                                  SPOT_WING,     SPOT_CORNER,       SPOT_SLOT,     SPOT_ELBOW,
                                  SPOT_MID_POST, SPOT_SHORT_CORNER, SPOT_DUNKER,   SPOT_BLOCK,
                                  SPOT_NAIL,     SPOT_HASH,         SPOT_HIGH_POST};
enum { PERIMETER_SPOTS = 7, ALL_SPOTS = sizeof spots / sizeof *spots };

static void some_spot(struct maker *maker, bool perimeter, struct made_place *place)
{
    enum spot spot = spots[maker_roll(maker, perimeter ? PERIMETER_SPOTS : ALL_SPOTS)];
    enum side side = maker_roll(maker, 2) ? SIDE_LEFT : SIDE_RIGHT;
    const char *side_word = side == SIDE_LEFT ? "left " : "right ";
    const struct spot_row *row = spot_row(spot);
    const char *article = spot == SPOT_NAIL ? "the " : "";
    snprintf(place->words, sizeof place->words, "%s%s", row->sided ? side_word : article,
             row->word);
    place->at = court_spot(maker->court, spot, row->sided ? side : SIDE_NONE);
}

/* A foot or three off a spot, half way between two, or in figures. */
static void measured(struct maker *maker, struct made_place *place)
{
    struct made_place a, b;
    some_spot(maker, false, &a);
    some_spot(maker, false, &b);
    int x = (int)maker_roll(maker, 37) - 18, y = (int)maker_roll(maker, 24) - 2;
    switch (maker_roll(maker, 3)) {
    case 0:
        snprintf(place->words, sizeof place->words, "%u ft above %.40s", 1 + maker_roll(maker, 4),
                 a.words);
        place->at = vec2_add(a.at, vec2_of(0, (place->words[0] - '0') * FEET));
        break;
    case 1:
        snprintf(place->words, sizeof place->words, "halfway between %.20s and %.20s", a.words,
                 b.words);
        place->at = vec2_mix(a.at, b.at, .5);
        break;
    default:
        snprintf(place->words, sizeof place->words, "(%d, %d)", x, y);
        place->at = vec2_of(x * FEET, y * FEET);
        break;
    }
}

bool maker_place(struct maker *maker, int who, bool perimeter, struct made_place *place)
{
    for (int tries = 0; tries < 60; tries++) {
        if (!perimeter && maker_chance(maker, 10)) {
            measured(maker, place);
        } else {
            some_spot(maker, perimeter, place);
        }
        bool goes = who == MAKER_NOBODY || vec2_distance(place->at, maker->at[who]) > 1.2;
        if (goes && maker_is_free(maker, who, place->at) &&
            court_inside(maker->court, place->at, .6)) {
            return true;
        }
    }
    return false;
}

int maker_other(struct maker *maker, int not_him, int nor_him)
{
    int first = (int)maker_roll(maker, MAKER_PLAYERS);
    for (int k = 0; k < MAKER_PLAYERS; k++) {
        int who = (first + k) % MAKER_PLAYERS + 1;
        if (who != maker->holder && who != not_him && who != nor_him) {
            return who;
        }
    }
    return MAKER_NOBODY;
}

void maker_send(struct maker *maker, int who, struct vec2 to)
{
    maker_busy(maker, who, .6 + vec2_distance(maker->at[who], to) / PACE);
    maker->at[who] = to;
    maker->moved[who] = true;
}

void maker_busy(struct maker *maker, int who, double seconds)
{
    maker->free[who] = real_max(maker->free[who], maker->begins) + seconds;
    maker->done[who] = maker->free[who];
    if (maker->events && maker->event[maker->events - 1].who == who) {
        maker->event[maker->events - 1].end = maker->free[who];
    }
}

/* ---- sentences ---- */

/* The last sentence that the words name: `2 moves` is any run of 2's, a cut or a dribble too, and
 * the nearest earlier one is meant. */
static const struct made_event *named(const struct maker *maker, const struct made_event *event)
{
    bool any_run = strcmp(event->verb, "moves") == 0;
    const struct made_event *last = event;
    for (size_t i = 0; i < maker->events; i++) {
        const struct made_event *other = &maker->event[i];
        bool run = strcmp(other->verb, "cuts") == 0 || strcmp(other->verb, "dribbles") == 0;
        bool same = strcmp(other->verb, event->verb) == 0 || (any_run && run);
        if (other->who == event->who && same) {
            last = other;
        }
    }
    return last;
}

/* An earlier sentence of somebody else; NULL: the roll found none. A screen not yet used is over
 * only later, so it can be waited for only while it is being set. */
static const struct made_event *some_event(struct maker *maker, int who, bool may_be_screen)
{
    for (int tries = 0; tries < 6 && maker->events; tries++) {
        const struct made_event *event =
            named(maker, &maker->event[maker_roll(maker, (unsigned)maker->events)]);
        bool screen = strcmp(event->verb, "screens") == 0;
        bool soon = event->end < maker->done[who] + PATIENT;
        if (event->who != who && soon && (may_be_screen || !screen)) {
            return event;
        }
    }
    return NULL;
}

/* About when everything said so far is over. */
static double all_over(const struct maker *maker)
{
    double last = 0;
    for (int i = 1; i <= MAKER_PLAYERS; i++) {
        last = real_max(last, maker->free[i]);
    }
    return last;
}

static void tie_to_moment(struct maker *maker, const struct made_event *event)
{
    bool catches = strcmp(event->verb, "catches") == 0;
    maker->begins = real_max(maker->begins, event->end);
    const char *word = catches ? "when" : maker_chance(maker, 70) ? "as" : "while";
    strbuf_print(maker->out, "%s %d %s, ", word, event->who, event->verb);
}

static void tie_to_end(struct maker *maker, const struct made_event *event)
{
    static const char *const delays[] = {"0.3 s ", "0.5 s ", "1 s "};
    const char *delay = maker_chance(maker, 25) ? delays[maker_roll(maker, 3)] : "";
    maker->begins = real_max(maker->begins, event->end);
    strbuf_print(maker->out, "%safter %d %s, ", delay, event->who, event->verb);
}

static void print_tie(struct maker *maker, int who, enum tie_kind kind)
{
    bool moment = kind == TIE_ANY && !maker->said[who];
    if (kind == TIE_NOT || maker->events == 0 || maker_chance(maker, 60)) {
        return;
    }
    const struct made_event *event = some_event(maker, who, moment);
    unsigned roll = maker_roll(maker, 10);
    bool patient = !maker->open_screen && all_over(maker) < maker->done[who] + PATIENT;
    if (moment && roll == 0) {
        strbuf_print(maker->out, "at %u.%u s, ", maker_roll(maker, 2), 3 + maker_roll(maker, 6));
    } else if (moment && roll == 1 && maker->event[maker->events - 1].who != who &&
               maker->event[maker->events - 1].end < maker->done[who] + PATIENT) {
        strbuf_text(maker->out, "meanwhile ");
    } else if (moment && roll < 7 && event) {
        tie_to_moment(maker, event);
    } else if (patient && roll == 7) {
        strbuf_text(maker->out, "then ");
        maker->begins = all_over(maker);
    } else if (patient && roll == 8) {
        strbuf_text(maker->out, "0.5 s later, ");
        maker->begins = all_over(maker) + .5;
    } else if (event && strcmp(event->verb, "screens") != 0) {
        tie_to_end(maker, event);
    }
}

void maker_say(struct maker *maker, int who, enum tie_kind tie, const char *verb,
               const char *format, ...)
{
    va_list args;
    maker->begins = maker->free[who];
    strbuf_text(maker->out, maker->indent);
    print_tie(maker, who, tie);
    strbuf_print(maker->out, "%d ", who);
    va_start(args, format);
    strbuf_vprint(maker->out, format, args);
    va_end(args);
    strbuf_char(maker->out, '\n');
    maker->said[who] = true;
    if (verb && maker->events < MAKER_EVENTS) {
        maker->event[maker->events++] = (struct made_event){who, verb, maker->begins};
    }
}
