/* SPDX-License-Identifier: MIT */
/* generate: a whole play from a seed: settings, start, steps. What the steps are made of is in
 * pieces.c. */
#include "generate.h"

#include "maker.h"

#define LONG 9.0 /* s */

/* ---- settings and start ---- */

static void settings(struct maker *maker, uint64_t seed)
{
    static const enum court_code codes[] = {COURT_HIGH_SCHOOL, COURT_HIGH_SCHOOL, COURT_FIBA,
                                            COURT_NBA};
    static const char *const styles[] = {"man", "man gap", "man deny", "man sag"};
    maker->court = court_of(codes[maker_roll(maker, 4)]);
    const struct level *level = level_of((enum level_code)maker_roll(maker, LEVEL_COUNT));
    strbuf_print(maker->out, "play \"Lantern %llu\"\n  rules %s\n  level %s\n",
                 (unsigned long long)seed, maker->court->word, level->word);
    strbuf_print(maker->out, "  defense %s\n", styles[maker_roll(maker, 4)]);
}

static void formation(struct maker *maker)
{
    size_t count = formation_count(), index;
    do { /* on half the floor, and no free throw, where nobody guards a man */
        index = maker_roll(maker, (unsigned)count);
    } while (formation_at(index)->full_floor ||
             str_is(str_of(formation_at(index)->word), "free throw"));
    const struct formation *chosen = formation_at(index);
    strbuf_print(maker->out, "  start %s\n", chosen->word);
    for (int i = 0; i < MAKER_PLAYERS; i++) {
        maker->at[i + 1] = formation_point(maker->court, &chosen->at[i]);
        if (chosen->at[i].ball) {
            maker->holder = i + 1;
        }
    }
}

static void free_start(struct maker *maker)
{
    strbuf_text(maker->out, "  start ");
    for (int i = 1; i <= MAKER_PLAYERS; i++) {
        maker->at[i] = vec2_of(0, 100);
    }
    for (int i = 1; i <= MAKER_PLAYERS; i++) {
        struct made_place place;
        if (!maker_place(maker, MAKER_NOBODY, i <= 2, &place)) {
            maker_place(maker, MAKER_NOBODY, false, &place);
        }
        maker->at[i] = place.at;
        bool bare = place.words[0] > '9' && place.words[0] != 'h';
        strbuf_print(maker->out, "%s%d %s%s", i > 1 ? ", " : "", i, bare ? "" : "at ", place.words);
    }
    strbuf_print(maker->out, "\n  ball %d\n", maker->holder);
}

/* ---- steps ---- */

static void begin_step(struct maker *maker)
{
    for (int i = 1; i <= MAKER_PLAYERS; i++) {
        maker->began[i] = maker->at[i];
        maker->moved[i] = maker->said[i] = maker->screened[i] = false;
        maker->free[i] = maker->done[i] = 0;
    }
    maker->first_holder = maker->holder;
    maker->events = 0;
    maker->open_screen = false;
}

/* A step is a diagram and not a game. */
static bool is_long(const struct maker *maker)
{
    for (int i = 1; i <= MAKER_PLAYERS; i++) {
        if (maker->free[i] > LONG) {
            return true;
        }
    }
    return false;
}

static void one_step(struct maker *maker, bool first, bool last)
{
    begin_step(maker);
    bool outside = first && !court_inside(maker->court, maker->at[maker->holder], 0);
    if (outside) {
        piece_throw_in(maker);
    }
    unsigned pieces = 1 + maker_roll(maker, 5);
    size_t before = maker->out->size;
    for (unsigned i = 0; (i < pieces && !is_long(maker)) || maker->out->size == before; i++) {
        piece_random(maker);
    }
    if (last && maker_chance(maker, 15)) {
        piece_reads(maker);
    }
    if (last && !maker->over && maker_chance(maker, 30)) {
        piece_finish(maker);
    }
}

void generate_play(struct strbuf *out, uint64_t seed)
{
    struct maker maker = {.out = out, .holder = 1, .indent = "    "};
    /* the rows of neighboring seeds overlap, so each starts from the first number of its own */
    rng_seed(&maker.rng, seed);
    rng_seed(&maker.rng, rng_next(&maker.rng));
    settings(&maker, seed);
    if (maker_chance(&maker, 60)) {
        formation(&maker);
    } else {
        free_start(&maker);
    }
    unsigned steps = 1 + maker_roll(&maker, 3);
    for (unsigned i = 0; i < steps; i++) {
        strbuf_print(out, "  step %u\n", i + 1);
        one_step(&maker, i == 0, i + 1 == steps);
    }
}
