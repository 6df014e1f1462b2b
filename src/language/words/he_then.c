/* SPDX-License-Identifier: MIT */
/* he_then: he and she in a moment, and behind one, where the line itself tells who that is: `1
 * passes to 2 as soon as she is open`, `x2 bumps 2 as he cuts to the rim`, `after 3 has thrown it
 * in to 1, he runs to the corner`. With a note. Ways of plain.c: see put_plain.h. */
#include "language/words/loose_read.h"
#include "language/words/put_plain.h"

static const char *const tie_words[] = {"as soon as", "as long as",  "the moment", "the instant",
                                        "right when", "just as",     "when",       "once",
                                        "as",         "after",       "while",      "until",
                                        "till",       "by the time", NULL};

/* The only attacker whom the line names between these; 0: none, or two. */
static int only_one(const struct cursor *line, const struct token *from, const struct token *to)
{
    int one = 0;
    for (const struct token *at = from; at < to; at++) {
        struct token number = *at;
        number.possessive = false;
        bool counts = token_is_spelled(at) && at + 1 < to && at[1].kind == TOKEN_WORD &&
                      !verb_at(line, at + 1); /* the two corner men */
        if (counts) {
            return 0;
        }
        int named = at->kind == TOKEN_NUMBER ? attacker_at(&number, &number + 1) : 0;
        if (named && one && named != one) {
            return 0;
        }
        one = named ? named : one;
    }
    return one;
}

/* The only pass of the line: from whom, and to whom; false: none, or two. */
static bool one_pass(const struct cursor *line, const struct token *from, const struct token *to,
                     int *passer, int *receiver)
{
    *passer = *receiver = 0;
    for (const struct token *at = from; at + 2 < to; at++) {
        struct cursor verb = line_look(line, at + 1);
        struct phrase phrase;
        static const char *const has[] = {"has", "have", "had", NULL};
        bool past = take_among(&verb, has);
        if (!attacker_at(at, to) ||
            !(past ? past_read(&verb, FOR_ATTACKERS, &phrase)
                   : phrase_read(&verb, FOR_ATTACKERS, &phrase)) ||
            !phrase_passes(&phrase)) {
            continue;
        }
        const struct token *whom = verb.at;
        while (whom < to && whom->kind == TOKEN_WORD) {
            whom++;
        }
        if (*passer || !attacker_at(whom, to)) {
            return false;
        }
        *passer = attacker_at(at, to);
        *receiver = attacker_at(whom, to);
    }
    return *passer != 0 && *passer != *receiver;
}

/* he is open; gives where that ends, or NULL. */
static const struct token *open_end(const struct cursor *line, const struct token *he)
{
    static const char *const opens[] = {
        "is open",      "gets open",  "comes open",   "is free",      "gets free",
        "is clear",     "gets clear", "is wide open", "breaks free",  "is ready",
        "is unguarded", "opens up",   "has room",     "is available", NULL};
    static const char *const owned[] = {"open", "free", "clear", "ready", "wide open", NULL};
    struct cursor trial = line_look(line, he + 1);
    if (he->possessive ? take_among(&trial, owned) : take_among(&trial, opens)) {
        return trial.at == line->end || clause_ends(trial.at) || trial.at->kind == TOKEN_MARK
                   ? trial.at
                   : NULL;
    }
    return NULL;
}

/* as soon as she is open: to whom the pass of the line goes; as he cuts: whom alone it names. */
static const struct token *he_in_moment(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    struct cursor trial = line_look(line, at);
    const struct token *he = take_among(&trial, tie_words) ? trial.at : line->end;
    struct token he_is = he < line->end ? *he : *at;
    he_is.possessive = false;
    if (he + 1 >= line->end || !token_is_among(&he_is, he_or_she) ||
        (at > line->at && at[-1].kind == TOKEN_NUMBER && token_is_word(at, "as"))) {
        return NULL;
    }
    int passer, receiver;
    const struct token *end = open_end(line, he);
    bool pass = one_pass(line, line->at, line->end, &passer, &receiver);
    int who = end && pass ? receiver : only_one(line, line->at, line->end);
    bool acts = he->possessive || verb_at(line, he + 1) || act_begins(he + 1, line->end, false);
    if (!who || !(end || acts)) {
        return NULL;
    }
    struct cursor here = line_look(line, he);
    out->as = str_format(line->arena, "%d", who);
    recast_copy(line, out, at, he);
    recast_number(&here, out, who);
    if (end) {
        recast_word(&here, out, "is");
        recast_word(&here, out, "open");
        return end;
    }
    if (he->possessive) {
        recast_word(&here, out, "is");
    }
    return he + 1;
}

/* After 3 has thrown it in to 1, he runs: 3; he drives: 1. */
static const struct token *he_behind_moment(const struct cursor *line, const struct token *at,
                                            struct recast *out)
{
    struct cursor tie = line_look(line, line->at);
    struct cursor verb = line_look(line, at + 1);
    struct phrase phrase;
    if (at < line->at + 3 || !token_is_mark(at - 1, ',') || !token_is_among(at, he_or_she) ||
        !take_among(&tie, tie_words) || !phrase_read(&verb, FOR_ATTACKERS, &phrase)) {
        return NULL;
    }
    for (const struct token *mark = line->at; mark < at - 1; mark++) {
        if (mark->kind == TOKEN_MARK || token_is_among(mark, subject_pronouns)) {
            return NULL;
        }
    }
    int who = only_one(line, line->at, at), passer, receiver;
    if (!who && one_pass(line, line->at, at, &passer, &receiver)) {
        enum verb_task task = verb_row(phrase.verb)->task;
        bool runs = (task == VERB_MOVE && phrase.verb != VERB_GOES) || task == VERB_SCREEN;
        who = verb_needs_ball(phrase.verb) ? receiver : runs ? passer : 0;
    }
    if (!who) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    out->as = str_format(line->arena, "%d", who);
    recast_number(&here, out, who);
    return at + 1;
}

const struct token *he_then_put(const struct cursor *line, const struct token *at,
                                struct recast *out)
{
    static plain_way *const ways[] = {he_in_moment, he_behind_moment, NULL};
    return first_put(ways, line, at, out);
}
