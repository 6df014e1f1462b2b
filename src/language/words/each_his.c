/* SPDX-License-Identifier: MIT */
/* each_his: what several do, told once of all and then of each: `both bigs screen down, 5 for 2 and
 * 4 for 3`, `the wings drop to the corners, 2 to the right corner and 3 to the left corner`. Each
 * has a sentence of his own. Ways of plain.c, tried before all others. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"

/* 4 for 2, 5 to the left slot: who, whom he screens for or where he goes, and where that ends. */
struct his_leg {
    int who, whom;
    const struct token *place, *to;
};

/* The leg at `at`; false: none. */
static bool his_leg_read(const struct cursor *line, const struct token *at, struct his_leg *out)
{
    const struct place *place;
    out->who = attacker_at(at, line->end);
    if (!out->who || at + 2 >= line->end) {
        return false;
    }
    bool to = token_is_word(at + 1, "to");
    const struct token *next = at + 2;
    out->place = to ? next : NULL;
    out->whom = token_is_word(at + 1, "for") ? attacker_at(next, line->end) : 0;
    out->to = to ? spot_end(line, next, &place) : next + 1;
    return to ? out->to != NULL : out->whom > 0 && out->whom != out->who;
}

/* Both legs, one behind the other, of the same kind, and nothing behind them. */
static bool his_legs_read(const struct cursor *line, const struct token *at, struct his_leg *first,
                          struct his_leg *second)
{
    if (!his_leg_read(line, at, first)) {
        return false;
    }
    const struct token *next = first->to;
    while (next < line->end && (token_is_mark(next, ',') || token_is_word(next, "and"))) {
        next++;
    }
    return his_leg_read(line, next, second) && second->who != first->who &&
           (second->place != NULL) == (first->place != NULL) &&
           (second->to == line->end || clause_ends(second->to));
}

/* both bigs, the two wings, 4 and 5, they: several, and they are those of the legs. Gives where the
 * verb begins; NULL: not said so. */
static const struct token *several_end(const struct cursor *line, const struct token *at,
                                       const struct his_leg *first, const struct his_leg *second)
{
    static const char *const groups[] = {"bigs",     "posts",  "wings", "guards",  "corners",
                                         "forwards", "guys",   "girls", "players", "men",
                                         "shooters", "elbows", "boys",  NULL};
    static const char *const which[] = {"both", "our",     "all",   "of",    "these", "those", "so",
                                        "okay", "outside", "right", "other", "you",   NULL};
    static const char *const lights[] = {"both", "all", "go", "then", "just", "and", "will", NULL};
    enum { FAR = 5 };
    size_t count;
    const struct token *to = players_end(line, at, &count);
    if (count == 2) {
        int one = (int)at->number, other = (int)to[-1].number;
        bool them = (one == first->who && other == second->who) ||
                    (one == second->who && other == first->who);
        to = them ? to : NULL;
    } else if (count == 0) {
        bool they = token_is_word(at, "they");
        while (!they && to < line->end && to < at + FAR &&
               (to->filler || token_is_spelled(to) || token_is_among(to, which))) {
            to++;
        }
        to = they || (to < line->end && token_is_among(to, groups)) ? to + 1 : NULL;
    } else {
        to = NULL;
    }
    to = to ? past_sounds(to, line->end) : NULL;
    to += to && to < line->end && token_is_word(to, "they") && count != 0;
    while (to && to < line->end && token_is_among(to, lights)) {
        to = past_sounds(to + 1, line->end);
    }
    return to;
}

/* down, back, cross: of which kind the screens are; "": not said. False: they are no screens. */
static bool screens_of_each(const struct token *from, const struct token *to, const char **kind)
{
    static const char *const kinds[] = {"down", "back", "cross", "flare",
                                        "away", "pin",  "ball",  NULL};
    static const char *const words[] = {"screen",    "screens", "pick",  "picks",
                                        "screening", "picking", "block", NULL};
    bool said = false;
    *kind = "";
    for (const struct token *at = from; at < to; at++) {
        said = said || token_is_among(at, words);
        for (size_t i = 0; kinds[i]; i++) {
            *kind = token_is_word(at, kinds[i]) ? kinds[i] : *kind;
        }
    }
    return said;
}

static void put_his_leg(const struct cursor *here, struct recast *out, const struct his_leg *leg,
                        const char *kind)
{
    recast_number(here, out, leg->who);
    if (leg->place) {
        recast_word(here, out, "goes");
        recast_word(here, out, "to");
        recast_copy(here, out, leg->place, leg->to);
        return;
    }
    if (kind[0] != '\0') {
        recast_verb(here, out, str_format(here->arena, "%s screens", kind));
    } else {
        recast_word(here, out, "screens");
    }
    recast_word(here, out, "for");
    recast_number(here, out, leg->whom);
}

/* They screen down 5 for 2 and 4 for 3: 5 down screens for 2, 4 down screens for 3. */
static const struct token *each_put(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    static const char *const moves[] = {"drop",  "drops", "come",  "go",     "run",   "sprint",
                                        "cross", "trade", "swap",  "switch", "move",  "exchange",
                                        "fly",   "pop",   "slide", "lift",   "space", "spread",
                                        "drift", "sink",  "step",  "change", "fan",   "clear",
                                        "split", "cut",   "flash", NULL};
    enum { FAR = 14 };
    struct his_leg first, second;
    const struct token *leg = at + 2;
    if (!clause_begins_at(line, at)) {
        return NULL;
    }
    while (leg < line->end && leg < at + FAR && !his_legs_read(line, leg, &first, &second)) {
        leg++;
    }
    if (leg >= line->end || leg >= at + FAR) {
        return NULL;
    }
    const struct token *verb = several_end(line, at, &first, &second);
    const char *kind = "";
    if (!verb || verb >= leg) {
        return NULL;
    }
    for (const struct token *word = verb; word < leg; word++) { /* nobody else, and no end there */
        bool mark = word->kind == TOKEN_MARK && word + 1 == leg;
        if ((word->kind != TOKEN_WORD && !mark) || token_is_word(word, "for")) {
            return NULL;
        }
    }
    if (first.place ? !token_is_among(verb, moves) : !screens_of_each(verb, leg, &kind)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    put_his_leg(&here, out, &first, kind);
    recast_mark(&here, out, ',');
    put_his_leg(&here, out, &second, kind);
    out->as = STR("each has a sentence of his own");
    return second.to;
}

/* ---- off one who screens for him ---- */

/* 3 comes up off 5, who screens down for him, to the wing: 5 down screens for 3, and 3 comes up off
 * 5 to the wing. */
static const struct token *off_who(const struct cursor *line, const struct token *at,
                                   struct recast *out)
{
    static const char *const whos[] = {"who", "whos", "that", NULL};
    static const char *const places[] = {"at", "on", "in", NULL};
    enum { FAR = 9 };
    int number = attacker_at(at, line->end);
    const struct token *by = at + 1;
    if (!number || !clause_begins_at(line, at)) {
        return NULL;
    }
    while (by < line->end && by < at + FAR && by->kind == TOKEN_WORD) {
        by++;
    }
    int screener = attacker_at(by, line->end);
    bool off = screener && (token_is_word(by - 1, "off") ||
                            (token_is_word(by - 1, "of") && token_is_word(by - 2, "off")));
    const struct place *place;
    const struct token *who = by + 1, *spot = NULL;
    if (off && who + 1 < line->end && token_is_among(who, places)) { /* off 4 at the elbow who */
        spot = spot_end(line, who + 1, &place);
        who = spot ? spot : who;
    }
    who += off && who < line->end && token_is_mark(who, ',');
    if (!off || screener == number || who >= line->end) {
        return NULL;
    }
    struct token bare = *who;
    bare.possessive = false;
    if (!token_is_among(&bare, whos)) {
        return NULL;
    }
    const struct token *whom = who + 1;
    while (whom + 1 < line->end && whom < who + FAR && whom->kind == TOKEN_WORD &&
           !token_is_word(whom, "for")) {
        whom++;
    }
    const char *kind;
    if (whom + 1 >= line->end || !token_is_word(whom, "for") ||
        !token_is_among(whom + 1, him_or_her) || !screens_of_each(who + 1, whom, &kind)) {
        return NULL;
    }
    const struct token *rest = whom + 2;
    rest += rest < line->end && token_is_mark(rest, ',');
    struct cursor here = line_look(line, at);
    struct his_leg leg = {.who = screener, .whom = number};
    put_his_leg(&here, out, &leg, kind);
    if (spot) {
        recast_copy(line, out, by + 1, spot);
    }
    recast_mark(&here, out, ',');
    recast_copy(line, out, at, by + 1);
    if (rest + 1 < line->end && token_is_word(rest, "and") && token_is_among(rest + 1, he_or_she)) {
        recast_word(&here, out, "and");
        rest += 2;
    }
    out->as = STR("first the screen");
    return rest;
}

const struct token *each_his_put(const struct cursor *line, const struct token *at,
                                 struct recast *out)
{
    static plain_way *const ways[] = {each_put, off_who, NULL};
    return first_put(ways, line, at, out);
}
