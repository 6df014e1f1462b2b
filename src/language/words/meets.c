/* SPDX-License-Identifier: MIT */
/* meets: what a defender does in a clause of time, said as a way he goes: until x5 meets him, when
 * x4 comes in. A way of plain.c: see put_plain.h. */
#include "language/words/put_plain.h"

/* x5, 5's defender: where he ends; NULL: nobody of theirs. */
static const struct token *their_man(const struct cursor *line, const struct token *at)
{
    if (at < line->end && at->kind == TOKEN_DEFENDER && !at->possessive) {
        return at + 1;
    }
    bool owned = at + 1 < line->end && at->kind == TOKEN_NUMBER && at->possessive;
    return owned && token_is_among(at + 1, guard_words) ? at + 2 : NULL;
}

/* comes in to help, steps over from the corner, leaves him to cut off the drive: all up to where
 * the clause ends is of that; how he does it is told by the verb. */
static const struct token *way_end(const struct cursor *line, const struct token *at)
{
    static const char *const goes[] = {
        "comes", "steps",     "slides",  "drops", "jumps",   "rotates", "rushes", "meets", "leaves",
        "turns", "collapses", "commits", "slid",  "stepped", "moves",   "runs",   NULL};
    static const char *const small[] = {
        "to",     "help",      "stop",  "him",  "her",    "over",     "up",   "in",     "down",
        "across", "out",       "at",    "ball", "drive",  "cut",      "off",  "from",   "on",
        "toward", "it",        "into",  "meet", "pick",   "lane",     "wing", "corner", "block",
        "right",  "left",      "paint", "rim",  "driver", "dribbler", "take", "his",    "her",
        "man",    "help-side", "weak",  "side", NULL};
    struct cursor trial = line_look(line, at);
    if (!take_among(&trial, goes)) {
        return NULL;
    }
    const struct token *word = trial.at;
    for (; word < line->end && word->kind != TOKEN_MARK && !clause_ends(word); word++) {
        if (!token_is_among(word, small) && !word->filler) {
            return NULL;
        }
    }
    return word;
}

const struct token *beats_put(const struct cursor *line, const struct token *at, struct recast *out)
{
    static const char *const moments[] = {"when", "until", "till",       "as",
                                          "once", "after", "as soon as", NULL};
    struct cursor trial = line_look(line, at);
    if (!take_among(&trial, moments)) {
        return NULL;
    }
    const struct token *man = past_fillers(trial.at, line->end), *man_to = their_man(line, man);
    const struct token *end = man_to ? way_end(line, man_to) : NULL;
    if (!end) {
        return NULL;
    }
    recast_copy(line, out, at, man_to);
    struct cursor here = line_look(line, man_to);
    recast_word(&here, out, "helps");
    return end;
}
