/* SPDX-License-Identifier: MIT */
/* verbs: the rows of verbs.def and what can be said of a verb from its row alone. */
#include <string.h>

#include "language/words/vocabulary.h"

static const struct verb_row rows[VERB_COUNT] = {
#define VERB(sym, says, bares, does, wants, goal, bend, effort, first, final, follows)             \
    [VERB_##sym] = {.symbol = #sym,                                                                \
                    .words = says,                                                                 \
                    .bare = bares,                                                                 \
                    .task = VERB_##does,                                                           \
                    .needs = wants,                                                                \
                    .place = DEFAULT_##goal,                                                       \
                    .shape = SHAPE_##bend,                                                         \
                    .pace = EFFORT_##effort,                                                       \
                    .fixed = WHEN_##first,                                                         \
                    .last = WHEN_##final,                                                          \
                    .slots = follows},
#include "language/words/verbs.def"
#undef VERB
};

const struct verb_row *verb_row(enum verb verb)
{
    return &rows[verb];
}

bool verb_goes(enum verb verb)
{
    enum verb_task task = verb_row(verb)->task;
    return task == VERB_MOVE || task == VERB_CARRY;
}

bool verb_runs(enum verb verb)
{
    enum verb_task task = verb_row(verb)->task;
    return task == VERB_MOVE || task == VERB_USE;
}

bool verb_in_family(enum verb verb, enum event_family family)
{
    static const char *const families[VERB_COUNT] = {
#define FAMILY(verb, letters) [VERB_##verb] = letters,
#include "language/words/families.def"
#undef FAMILY
    };
    static const char letters[] = {
        [FAMILY_NONE] = 0,     [FAMILY_PASSES] = 'p',   [FAMILY_SCREENS] = 's',
        [FAMILY_CUTS] = 'c',   [FAMILY_DRIBBLES] = 'd', [FAMILY_MOVES] = 'm',
        [FAMILY_DRIVES] = 'v', [FAMILY_BACK_CUTS] = 'k'};
    if (family == FAMILY_USES) {
        return rows[verb].task == VERB_USE;
    }
    return family != FAMILY_NONE && families[verb] && strchr(families[verb], letters[family]);
}

/* Another preposition makes another verb of the same head. */
static const struct {
    enum verb verb;
    const char *preposition;
    enum verb other;
} siblings[] = {
    {VERB_DRIBBLES, "at", VERB_DRIBBLES_AT},
    {VERB_DRIBBLES, "off", VERB_DRIBBLES_OFF},
    {VERB_DRIVES, "off", VERB_DRIVES_OFF},
    {VERB_CUTS, "off", VERB_COMES},
    {VERB_BACK_CUTS, "off", VERB_BACK_CUTS_OFF},
    {VERB_GOES, "off", VERB_COMES},
    {VERB_POPS, "off", VERB_COMES},
    {VERB_LIFTS, "off", VERB_COMES},
    {VERB_FLASHES, "off", VERB_COMES},
    {VERB_DRIFTS, "off", VERB_COMES},
    {VERB_STAYS, "for", VERB_HOLDS},
};

enum verb verb_sibling(enum verb verb, const char *preposition)
{
    for (size_t i = 0; i < sizeof siblings / sizeof *siblings; i++) {
        if (siblings[i].verb == verb && strcmp(siblings[i].preposition, preposition) == 0) {
            return siblings[i].other;
        }
    }
    return VERB_COUNT;
}

size_t verb_slots(enum verb verb, struct slot out[SLOTS_MOST])
{
    size_t count = 0;
    for (const char *at = rows[verb].slots; *at && count < SLOTS_MOST; count++) {
        const char *from = at;
        while (*at != ':') {
            at++;
        }
        struct slot *slot = &out[count];
        bool none = from[0] == '_';
        slot->preposition = none ? (struct str){"", 0} : (struct str){from, (size_t)(at - from)};
        slot->needed = at[1] < 'a';
        slot->letter = (char)(slot->needed ? at[1] : at[1] - 'a' + 'A');
        at += at[2] == ' ' ? 3 : 2;
    }
    return count;
}

struct str verb_head(enum verb verb, bool bare)
{
    struct str words = str_of(bare ? rows[verb].bare : rows[verb].words);
    struct slot slots[SLOTS_MOST];
    if (verb_slots(verb, slots) == 0) {
        return words;
    }
    struct str last = slots[0].preposition;
    if (last.size > 0 && words.size > last.size + 1 &&
        memcmp(words.at + words.size - last.size, last.at, last.size) == 0 &&
        words.at[words.size - last.size - 1] == ' ') {
        words.size -= last.size + 1;
    }
    return words;
}
