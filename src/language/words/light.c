/* SPDX-License-Identifier: MIT */
/* light: verbs that only carry a noun: makes a pass, sets a down screen, takes the shot, takes two
 * dribbles. For phrase.c, which takes the longest. */
#include "language/words/grammar.h"

static const struct entry efforts[] = {{"hard", PACE_SPRINT},  {"fast", PACE_SPRINT},
                                       {"quick", PACE_SPRINT}, {"slow", PACE_JOG},
                                       {"easy", PACE_JOG},     {NULL, 0}};

/* What stands before a noun and changes nothing that is run; what a coach might miss is kept for a
 * note. */
static void take_adjectives(struct cursor *c, struct phrase *phrase)
{
    static const char *const empty[] = {"good", "solid",  "nice",   "simple",
                                        "big",  "strong", "little", NULL};
    static const char *const told[] = {
        "high",     "flat",     "side",     "wing",   "angle",       "middle", "early",    "corner",
        "inverted", "diagonal", "baseline", "flex",   "small-small", "low",    "angled",   "short",
        "long",     "direct",   "wide",     "horns",  "spread",      "elbow",  "sideline", "slot",
        "quick",    "empty",    "tight",    "second", "first",       "hard",   NULL};
    for (;;) {
        int effort = take_entry(c, efforts);
        const struct token *from = past_fillers(c->at, c->end);
        phrase->pace = effort >= 0 ? (enum pace)effort : phrase->pace; /* makes a hard cut */
        if (effort < 0 && !take_among(c, empty)) {
            if (!take_among(c, told)) {
                return;
            }
            phrase->dropped = phrase->dropped ? phrase->dropped : from;
        }
    }
}

/* The longest noun of the table, words of it or with its -s: a down screen, double drags. */
static bool table_noun(struct cursor *c, struct phrase *out)
{
    const struct token *longest = NULL;
    struct index_rows rows = rows_here(c, INDEX_PHRASES);
    size_t best = phrase_count(); /* of those that are as long, the one written first */
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        struct phrase phrase = phrase_at(*row);
        if (!phrase_has(&phrase, 'N')) {
            continue;
        }
        struct cursor noun = *c;
        bool taken = take_words(&noun, phrase.words) || take_words(&noun, phrase.bare);
        if (taken && (!longest || noun.at > longest || (noun.at == longest && *row < best))) {
            longest = noun.at;
            best = *row;
            *out = phrase_at(best);
        }
    }
    c->at = longest ? longest : c->at;
    return longest != NULL;
}

bool phrase_noun_read(struct cursor *c, struct phrase *out)
{
    struct cursor trial = *c;
    struct phrase said = {.pace = PACE_VERB};
    if (!table_noun(&trial, out)) { /* a noun of the table goes first: step-up screen */
        take_adjectives(&trial, &said);
        if (!table_noun(&trial, out)) {
            return false;
        }
    }
    out->pace = said.pace;
    out->dropped = said.dropped;
    c->at = trial.at;
    return true;
}

/* make, set, take, give and a noun: sets a down screen, gives a pump fake. */
bool light_verb_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    static const char *const going[] = {
        "goes",   "go",    "flows", "flow", "runs",    "run",   "sprints", "sprint",
        "steps",  "step",  "comes", "come", "gets",    "get",   "moves",   "move",
        "rolls",  "roll",  "turns", "turn", "trails",  "trail", "jogs",    "jog",
        "slides", "slide", "pops",  "pop",  "flashes", "flash", NULL};
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS) {
        return false;
    }
    const struct token *first = cursor_next(&trial);
    bool light = take_among(&trial, light_words);
    bool taken = light && (token_is_word(first, "takes") || token_is_word(first, "take"));
    bool led = !light && c->speech && take_among(&trial, going);
    while (led && (take_among(&trial, particle_words) || take_words(&trial, "straight") ||
                   take_words(&trial, "right"))) {
    }
    led = led && (take_words(&trial, "into") || take_words(&trial, "in to"));
    if ((!light && !led) || !phrase_noun_read(&trial, out)) {
        return false;
    }
    bool screens = verb_row(out->verb)->task == VERB_SCREEN;
    if ((led && !screens) || (taken && screens)) { /* who takes a screen uses it */
        return false;
    }
    c->at = trial.at;
    return true;
}

/* A three: said so, and not a player. */
static bool take_three(struct cursor *c, bool described)
{
    static const char *const words[] = {"three-pointer", "three-point shot", "three ball",
                                        "3-pointer",     "3-point shot",     "3 ball",
                                        "trey",          "shot from three",  NULL};
    struct cursor trial = *c;
    const struct token *next = cursor_next(&trial);
    bool article = next && next > c->at;
    if (take_among(&trial, words) ||
        ((article || described) && (take_words(&trial, "three") || take_words(&trial, "3")))) {
        c->at = trial.at;
        return true;
    }
    return false;
}

/* shoots the open jumper, takes a corner three, pulls up for a floater. */
bool light_shot_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    static const char *const verbs[] = {"shoots",
                                        "shoot",
                                        "takes",
                                        "take",
                                        "puts up",
                                        "put up",
                                        "pulls up for",
                                        "pull up for",
                                        "fires",
                                        "fire",
                                        "launches",
                                        "launch",
                                        "attempts",
                                        "attempt",
                                        "gets up",
                                        "get up",
                                        "rises for",
                                        "rise for",
                                        "steps into",
                                        "step into",
                                        "goes up for",
                                        "go up for",
                                        "finishes with",
                                        "finish with",
                                        "pulls up and takes",
                                        "pull up and take",
                                        "lets fly with",
                                        NULL};
    static const char *const adjectives[] = {
        "open",         "wide-open",   "corner",          "wing",
        "top",          "deep",        "elbow",           "pull-up",
        "step-back",    "mid-range",   "quick",           "contested",
        "reverse",      "short",       "catch-and-shoot", "left-handed",
        "right-handed", "left-hand",   "right-hand",      "baseline",
        "bank",         "easy",        "power",           "jump",
        "hard",         "little",      "turnaround",      "wide",
        "one-handed",   "one-dribble", "running",         NULL};
    static const char *const nouns[] = {
        "shot",      "jumper",    "jump shot", "lay-up",      "lay-in",    "floater",
        "runner",    "fadeaway",  "hook",      "dunk",        "mid-range", "two-pointer",
        "bank shot", "finish",    "pull-up",   "shots",       "teardrop",  "j",
        "fade",      "step-back", "bunny",     "finger roll", "baby hook", NULL};
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS || !take_among(&trial, verbs)) {
        return false;
    }
    static const char *const shots[] = {"pull-up", "step-back", "turnaround", NULL};
    bool described = false, whole = false, three;
    for (;;) {
        bool shot = word_among(&trial, shots); /* a pull-up, a step-back: a shot by itself */
        if (!take_among(&trial, adjectives)) {
            break;
        }
        described = true;
        whole = shot;
    }
    three = take_three(&trial, described);
    if (!three && !take_among(&trial, nouns) && !whole) {
        return false;
    }
    c->at = trial.at;
    *out = (struct phrase){.words = "shoots",
                           .bare = "shoot",
                           .verb = VERB_SHOOTS,
                           .with = "",
                           .to = SPOT_COUNT,
                           .with_s = false,
                           .three = three};
    return true;
}

/* takes one power dribble, takes a couple of hard dribbles. */
bool light_dribble_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    static const char *const verbs[] = {"takes",     "take",     "uses",  "use",
                                        "puts down", "put down", "needs", NULL};
    static const char *const counts[] = {"one", "two",       "three", "1",      "2",
                                         "3",   "couple of", "few",   "couple", NULL};
    static const char *const adjectives[] = {
        "hard",  "power",   "long",  "quick",  "crab",  "slow",   "strong", "big",
        "more",  "retreat", "pull",  "drag",   "short", "little", "attack", "extra",
        "speed", "escape",  "pound", "rhythm", "side",  NULL};
    static const char *const nouns[] = {"dribble", "dribbles", "bounce", "bounces", NULL};
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS || (!take_among(&trial, verbs) && !c->counted)) {
        return false;
    }
    if (!take_among(&trial, counts) && c->counted) {
        return false;
    }
    while (take_among(&trial, adjectives)) {
    }
    if (!take_among(&trial, nouns)) {
        return false;
    }
    c->at = trial.at;
    *out = (struct phrase){.words = "dribbles",
                           .bare = "dribble",
                           .verb = VERB_DRIBBLES,
                           .with = "",
                           .to = SPOT_COUNT,
                           .counted = true};
    return true;
}
