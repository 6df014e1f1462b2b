/* SPDX-License-Identifier: MIT */
/* vacated: a spot told by who has left it, the spot he left, the corner 4 left, where she came
 * from; and a time told as a full one, a full second. Ways of plain.c: see put_plain.h. */
#include "language/words/put_plain.h"

/* ---- the spot he left ---- */

/* Who acts in the last clause before this one that is of somebody else; 0: nobody. */
static int other_before(const struct cursor *line, const struct token *at)
{
    struct somebody own, other;
    bool named, then;
    const struct token *clause = clause_begin(line, at);
    if (!clause_subject(line, clause, &own, &named)) {
        return 0;
    }
    while (clause > line->at) {
        const struct token *joint = joint_begin(line, clause, &then);
        if (joint == line->at) {
            return 0;
        }
        clause = clause_begin(line, joint);
        if (!clause_subject(line, clause, &other, &named)) {
            return 0;
        }
        if (!same_who(&own.who, &other.who)) {
            return other.who.number;
        }
    }
    return 0;
}

/* the open spot that, the corner, where: what stands before who has left it. */
static bool take_spot_of(struct cursor *c)
{
    static const char *const empty[] = {"open", "empty", "vacated", "vacant", NULL};
    static const char *const spots[] = {"spot", "place", "space", "area", "position", "hole", NULL};
    static const char *const which[] = {"that", "which", NULL};
    if (take_words(c, "where")) {
        return true;
    }
    take_among(c, empty);
    bool spot = take_among(c, spots) || spot_here(c) != NULL;
    take_among(c, which);
    return spot;
}

static bool take_left(struct cursor *c)
{
    static const char *const small[] = {"has just", "had just", "has", "had", "just", NULL};
    static const char *const lefts[] = {"left",   "vacated",      "came from", "leaves", "emptied",
                                        "was in", "started from", "come from", NULL};
    take_among(c, small);
    return take_among(c, lefts);
}

/* into the spot he left: to 2's spot. */
static const struct token *left_spot_put(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    static const char *const leads[] = {"into", "to", "in", "at", "onto", NULL};
    struct cursor trial = line_look(line, at);
    if (at == line->at || !take_among(&trial, leads) || !take_spot_of(&trial)) {
        return NULL;
    }
    const struct token *who = cursor_next(&trial);
    int number = who ? attacker_at(who, line->end) : 0;
    bool pronoun = who && number == 0 && token_is_among(who, he_or_she);
    if (number == 0 && !pronoun) {
        return NULL;
    }
    trial.at = who + 1;
    if (!take_left(&trial) || (number = pronoun ? other_before(line, at) : number) == 0) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_word(&here, out, "to");
    recast_number(&here, out, number);
    out->tokens.at[out->tokens.count - 1].possessive = true;
    recast_word(&here, out, "spot");
    return trial.at;
}

/* ---- a full second ---- */

/* a full second, for two whole seconds: as a measure. */
static const struct token *full_put(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    static const char *const fulls[] = {"full", "whole", "good", "long", NULL};
    static const char *const seconds[] = {"second", "seconds", NULL};
    static const char *const behind[] = {"after", "later", "before", "into", "behind", NULL};
    static const char *const leads[] = {"for", "in", "about", NULL};
    bool number = at->kind == TOKEN_NUMBER && at->integer && !at->possessive;
    const struct token *full = at + number;
    if (full + 1 >= line->end || !token_is_among(full, fulls) ||
        !token_is_among(full + 1, seconds)) {
        return NULL;
    }
    struct token measure = full[1];
    measure.text = str_format(line->arena, "%d s", number ? (int)at->number : 1);
    measure.kind = TOKEN_MEASURE;
    measure.number = number ? at->number : 1;
    measure.unit = UNIT_SECONDS;
    const struct token *end = full + 2, *before = at;
    while (before > line->at && before[-1].filler) {
        before--;
    }
    bool led = before > line->at && token_is_among(before - 1, leads);
    if (!led && before > line->at && !(end < line->end && token_is_among(end, behind))) {
        struct cursor here = line_look(line, at);
        recast_word(&here, out, "for");
    }
    recast_copy(line, out, &measure, &measure + 1);
    return end;
}

const struct token *vacated_put(const struct cursor *line, const struct token *at,
                                struct recast *out)
{
    static plain_way *const ways[] = {left_spot_put, full_put, NULL};
    return first_put(ways, line, at, out);
}
