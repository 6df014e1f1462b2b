/* SPDX-License-Identifier: MIT */
/* dictated: sounds and words said twice in a line that could not be read, and what set the scene in
 * front of it: `um`, `to the to the corner`, `box set so 2 comes across`. Ways of plain.c, tried
 * before all others. */
#include "language/words/put_plain.h"

/* 5 comes um up: a sound; between two players it may be that one is not meant. */
static const struct token *sound_put(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const sounds[] = {"um", "uh", "uhm", "erm", "hmm", NULL};
    const struct token *end = at;
    (void)out;
    while (end < line->end && token_is_among(end, sounds)) {
        end++;
    }
    bool between = at > line->at && attacker_at(at - 1, line->end) && attacker_at(end, line->end);
    return end > at && !between ? end : NULL;
}

static bool twice_alike(const struct token *a, const struct token *b)
{
    return a->kind == TOKEN_WORD && b->kind == TOKEN_WORD && !a->possessive && !b->possessive &&
           str_equal(a->text, b->text);
}

/* It was spoken: a number is a word in it. */
static bool spoken_line(const struct cursor *line)
{
    for (const struct token *at = line->at; at < line->end; at++) {
        if (token_is_spelled(at)) {
            return true;
        }
    }
    return false;
}

/* three cuts cuts, to the to the corner: the second time. What is said twice to stress it counts;
 * and who types a word twice may have meant another. */
static const struct token *said_again(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const stress[] = {"no", "wait", "very", "really", "that", "had", NULL};
    if (at + 1 >= line->end || at->kind != TOKEN_WORD || token_is_among(at, stress) ||
        !spoken_line(line)) {
        return NULL;
    }
    size_t count = twice_alike(at, at + 1) ? 1 : 0;
    if (!count && at + 3 < line->end && twice_alike(at, at + 2) && twice_alike(at + 1, at + 3)) {
        count = 2;
    }
    if (!count) {
        return NULL;
    }
    out->told = span_join(at->span, at[count - 1].span);
    return at + count;
}

/* 3 and 2 both cut at the same time: as two do. */
static const struct token *same_time(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    struct cursor trial = line_look(line, at);
    bool both = false;
    if (!take_words(&trial, "at same time") || !(trial.at == line->end || clause_ends(trial.at))) {
        return NULL;
    }
    for (const struct token *word = line->at; word < at; word++) {
        both = both || token_is_word(word, "both");
    }
    out->told = both ? span_join(at->span, trial.at[-1].span) : SPAN_NONE;
    return both ? trial.at : NULL;
}

/* box set so 2 comes across: how they stand, before somebody acts. */
static const struct token *scene_so(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    static const char *const turns[] = {"if",   "when",   "not",   "no",     "unless", "after",
                                        "once", "until",  "don't", "nobody", "never",  "while",
                                        "as",   "before", "ball",  "his",    "her",    "he",
                                        "she",  "they",   "it",    "stop",   "say",    NULL};
    enum { FAR = 6 };
    const struct token *so = at;
    if (at != line->at) {
        return NULL;
    }
    while (so < line->end && so <= at + FAR && !token_is_word(so, "so")) {
        if (so->kind != TOKEN_WORD || so->possessive || token_is_among(so, turns)) {
            return NULL;
        }
        so++;
    }
    struct cursor acts = line_look(line, so + 1);
    if (so == at || so > at + FAR || so + 1 >= line->end || !attacker_at(so + 1, line->end) ||
        !subject_verb_is(&acts)) {
        return NULL;
    }
    out->told = span_join(at->span, so[-1].span);
    return so + 1;
}

const struct token *dictated_put(const struct cursor *line, const struct token *at,
                                 struct recast *out)
{
    static plain_way *const ways[] = {sound_put, said_again, same_time, scene_so, NULL};
    return first_put(ways, line, at, out);
}
