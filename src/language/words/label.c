/* SPDX-License-Identifier: MIT */
/* label: what is said in front of a sentence, or by itself, and moves nobody: the name of what
 * comes (zoom action, / Spain:), and what is said to the players (be patient, / sell it). Left out
 * with a note; what stands alone becomes a point. Rules of recast_find. */
#include "language/words/speech.h"

static const struct entry names[] = {
#define LABEL(words) {words, 0},
#define LABEL_DOES(words) {words, 1},
#include "language/words/labels.def"
#undef LABEL
#undef LABEL_DOES
    {NULL, 0},
};
static const struct entry remarks[] = {
#define REMARK(words) {words, 0},
#include "language/words/remarks.def"
#undef REMARK
    {NULL, 0},
};

static bool mark_token(const struct token *token, const char *marks)
{
    for (; token->kind == TOKEN_MARK && *marks; marks++) {
        if (token->mark == *marks) {
            return true;
        }
    }
    return false;
}

bool take_label(struct cursor *c)
{
    return take_entry(c, names) >= 0;
}

/* Names of the table, and the nouns of screens and hand-offs, one behind another. `*does`: among
 * them what is done. */
static bool take_names(struct cursor *c, bool *does)
{
    static const char *const between[] = {"high",  "low",    "side", "left", "right", "double",
                                          "into",  "then",   "and",  "to",   "with",  "quick",
                                          "empty", "little", "on",   "big",  NULL};
    bool named = false;
    for (;;) {
        struct phrase phrase;
        struct cursor noun = *c;
        int name = take_entry(c, names);
        if (name >= 0 || take_two_name(c)) {
            *does = *does || name != 0;
            named = true;
        } else if (phrase_noun_read(&noun, &phrase) &&
                   (verb_row(phrase.verb)->task == VERB_SCREEN ||
                    verb_row(phrase.verb)->task == VERB_EXCHANGE)) {
            *c = noun;
            *does = named = true;
        } else if (!take_among(c, between)) {
            return named;
        }
    }
}

/* A sentence begins here. */
static bool sentence_begins(const struct cursor *c)
{
    struct recast recast;
    return subject_verb_is(c) || clause_is(c) || word_is(c, 0, "then") || recast_find(c, &recast);
}

/* Up to a colon: any words, numbers too, but no condition and nothing that is not. */
static const struct token *colon_ahead(const struct cursor *c)
{
    static const char *const clauses[] = {
        "same", "as",    "after", "when", "while",  "once", "if",      "until", "off", "not",
        "no",   "don't", "never", "or",   "before", "at",   "instead", "avoid", NULL};
    const struct token *from = cursor_next(c);
    bool clock = from && from->kind == TOKEN_MEASURE && from->unit == UNIT_SECONDS, on = false;
    if (!from || (from->kind != TOKEN_WORD && !clock)) {
        return NULL;
    }
    for (const struct token *at = from; at < c->end && at < from + 10; at++) {
        struct cursor word = *c;
        word.at = at;
        if (mark_token(at, ":")) { /* on the catch: when; on the 3 side: where */
            return at > from && (clock || !on || token_is_word(&at[-1], "side")) ? at : NULL;
        }
        on = on || token_is_word(at, "on");
        if (mark_token(at, ".;") ||
            (at->kind == TOKEN_WORD && !clock && word_among(&word, clauses))) {
            return NULL;
        }
    }
    return NULL;
}

/* zoom action, a two-word name that ends so. */
static const struct token *action_ahead(const struct cursor *c)
{
    static const char *const last[] = {"action", "look",    "set",     "series", "game",
                                       "motion", "dribble", "offense", "cut",    NULL};
    const struct token *from = cursor_next(c);
    for (const struct token *at = from; from && at < c->end && at < from + 8; at++) {
        if (mark_token(at, ",")) {
            struct cursor end = *c;
            end.at = at - 1;
            return at > from && word_among(&end, last) ? at : NULL;
        }
        struct cursor word = *c;
        word.at = at;
        bool part = at->kind == TOKEN_WORD || mark_token(at, "-");
        if (!part || word_is(&word, 0, "not") || word_is(&word, 0, "never") ||
            word_is(&word, 0, "no")) {
            return NULL;
        }
    }
    return NULL;
}

/* zoom action, / give and go, / Spain: the name of what comes. */
bool label(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    const struct token *from = cursor_next(c), *end = colon_ahead(c);
    bool clock = from && from->kind == TOKEN_MEASURE; /* three seconds on the clock: */
    if (!from || (from->kind != TOKEN_WORD && !(clock && end)) || clause_is(c)) {
        return false;
    }
    bool colon = end != NULL, does = false;
    if (!end && take_names(&trial, &does)) {
        end = trial.at;
    }
    if (!colon && does && sentence_before(c) && c->at > c->first && mark_token(&c->at[-1], ",")) {
        return false; /* 1 dribbles at 3, DHO, 4 cuts: done, by those who are told before it */
    }
    if (colon && remark_judges(c, from, end)) {
        return false;
    }
    if (!end || end >= c->end || !mark_token(end, ",.:;-")) {
        bool alone = end == c->end && c->at == c->first && !does;
        end = alone ? end : action_ahead(c);
        if (!end) {
            return false;
        }
        r->remark = alone;
    }
    trial.at = end < c->end ? end + 1 : end;
    r->to = trial.at;
    r->told = span_join(from->span, end[-1].span);
    return r->remark || (colon && !cursor_done(&trial)) || sentence_begins(&trial);
}

/* Up to where the players are no longer spoken to. NULL: somebody is named in it who would act. */
static const struct token *remark_end(const struct cursor *c)
{
    static const char *const joints[] = {"and", "so", "but", "then", NULL};
    struct cursor at = *c;
    for (;; at.at++) {
        if (at.at >= c->end || mark_token(at.at, ",.;:")) {
            return at.at;
        }
        struct cursor next = at;
        if (take_among(&next, joints) && (sentence_begins(&next) || verb_begins(&next))) {
            return at.at;
        }
        if (at.at->kind == TOKEN_NUMBER) {
            return NULL;
        }
    }
}

/* be patient, / hands ready, / he has to sell it: said to the players. */
bool remarked(const struct cursor *c, struct recast *r)
{
    static const char *const joints[] = {"and", "so", "but", "then", NULL};
    struct cursor trial = cursor_look(c);
    const struct token *from = cursor_next(c);
    struct who who;
    bool make =
        from && take_words(&trial, "make") && person_read(&trial, &who) && who_defends(&who);
    trial = make ? trial : cursor_look(c); /* make x3 believe */
    if (!from || (!make && take_entry(&trial, remarks) < 0)) {
        return false;
    }
    bool told = trial.at[-1].kind == TOKEN_NUMBER && verb_begins(&trial); /* you two cut */
    const struct token *end = told ? NULL : remark_end(&trial);
    if (!end || remark_judges(c, trial.at, end) || remark_acts(c, from, end)) {
        return false;
    }
    trial.at = end;
    while (take_mark(&trial, ',') || take_mark(&trial, ':') || take_among(&trial, joints)) {
    }
    r->to = trial.at;
    r->told = span_join(from->span, end[-1].span);
    r->remark = true;
    return cursor_done(&trial) || mark_token(trial.at, ".;") || sentence_begins(&trial);
}

/* looks for 5, and passes it in to her: who was looked for. */
static void put_seen(const struct cursor *c, struct recast *r, const struct somebody *seen)
{
    for (const struct token *at = r->to; seen->from && at < c->end && !clause_ends(at); at++) {
        bool alone = at + 1 == c->end || at[1].kind != TOKEN_WORD ||
                     !str_is(at[1].text, "man"); /* her man is another */
        if (token_is_among(at, him_or_her) && alone) {
            recast_copy(c, r, r->to, at);
            recast_somebody(c, r, seen);
            r->to = at + 1;
            return;
        }
    }
}

/* 5 looks opposite, 4 dives; 3 sees the catch and back cuts: a look moves nobody, who goes on is
 * named still. */
bool looks_only(const struct cursor *c, struct recast *r)
{
    static const char *const acts[] = {
        "looks",        "look",         "sees",      "see",        "watches",  "watch",
        "reads",        "read",         "calls for", "call for",   "asks for", "wants",
        "yells",        "points",       "draws",     "recognizes", "notices",  "demands",
        "takes a look", "waits for it", "checks",    "surveys",    "scans",    NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    const struct token *from = cursor_next(c);
    if (!from || !somebody_read(&trial, &who) || who.who.kind == WHO_SPOT ||
        !take_among(&trial, acts) ||
        (word_is(&trial, 0, "to") && str_starts(trial.at[-1].text, "want"))) {
        return false; /* wants to cut: he is to do it */
    }
    struct somebody seen = {.from = NULL};
    struct cursor at = trial;
    static const char *const leads[] = {"for", "at", "to", "inside to", "inside for", NULL};
    if (take_among(&at, leads) && somebody_read(&at, &seen) && seen.who.kind == WHO_PLAYER) {
        trial = at; /* looks for 5 first */
    } else {
        seen.from = NULL;
    }
    const struct token *end = remark_end(&trial);
    for (const struct token *word = trial.at; end && word < end; word++) {
        if (token_is_word(word, "with") ||
            (token_is_word(word, "by") && word + 1 < end && ends_in_ing(word + 1))) {
            return false; /* looks him up with a pass, reads it by cutting to the rim */
        }
    }
    if (!end) {
        return false;
    }
    trial.at = end;
    struct cursor on = trial;
    bool same = take_joint(&on) && verb_begins(&on) && !subject_verb_is(&on);
    if (same) {
        recast_somebody(c, r, &who);
        r->to = on.at;
        r->told = span_join(from->span, end[-1].span);
        put_seen(c, r, &seen);
        return true;
    }
    while (take_mark(&trial, ',') || take_words(&trial, "and") || take_words(&trial, "but")) {
    }
    r->to = trial.at;
    r->told = span_join(from->span, end[-1].span);
    r->remark = true;
    return cursor_done(&trial) || mark_token(trial.at, ".;") || sentence_begins(&trial);
}
