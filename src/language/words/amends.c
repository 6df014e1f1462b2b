/* SPDX-License-Identifier: MIT */
/* amends: the head of a sentence that goes back on the lines above: `but first 3 cuts`, `I mean, 1
 * passes to 3`, `no wait`. A line above stands as it was written, so this one would only be added
 * to it: it is refused, with what to change. */
#include "language/words/grammar.h"

/* Behind it something tells that the order is that of this line alone: first 4 cuts, then 3 fills.
 */
static bool order_goes_on(const struct cursor *c)
{
    static const char *const words[] = {"then",  "second",  "next", "afterwards", "after",
                                        "later", "finally", "last", "before",     NULL};
    for (const struct token *at = c->at; at < c->end; at++) {
        if (token_is_among(at, words)) {
            return true;
        }
    }
    return false;
}

/* first 3 cuts: and no first pass, first time. */
static bool first_is(const struct cursor *c, bool but)
{
    static const char *const firsts[] = {"first of all", "first off", "first", "before that", NULL};
    struct cursor trial = *c;
    trial.watch = NULL;
    if (!take_among(&trial, firsts)) {
        return false;
    }
    take_mark(&trial, ',');
    return subject_verb_is(&trial) && (but || !order_goes_on(&trial));
}

static bool taken_back_is(const struct cursor *c)
{
    static const char *const words[] = {
        "i mean",      "actually",  "no wait",     "wait no",      "scratch that",
        "strike that", "no i mean", "no actually", "actually no",  "correction",
        "sorry no",    "no sorry",  "make that",   "no make that", "take that back",
        "or rather",   NULL};
    struct cursor trial = *c;
    trial.watch = NULL;
    if (!take_among(&trial, words)) {
        return false;
    }
    take_mark(&trial, ',');
    return subject_verb_is(&trial) || verb_begins(&trial);
}

bool amends_refused(struct cursor *c)
{
    static const char *const buts[] = {"but", "and", "well", "oh", "no", "now", NULL};
    struct cursor trial = *c;
    trial.watch = NULL;
    if (c->at == c->end || c->at->kind != TOKEN_WORD) {
        return false;
    }
    bool but = false;
    bool back = taken_back_is(&trial), first = !back && first_is(&trial, false);
    if (!back && !first && take_among(&trial, buts)) {
        but = true;
        back = taken_back_is(&trial);
        first = !back && first_is(&trial, true);
    }
    above_list list = {NULL, 0, 0};
    if (back || first) {
        list = above_sentences(c, false);
    }
    if (list.count == 0) {
        return false;
    }
    c->amends = true;
    struct span span = c->at[but].span;
    const struct sentence *last = list.at[list.count - 1];
    if (back) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_TWO_MEANINGS, span, "instead of `%.*s`, or besides it?",
                         STR_ARG(source_text(c->sources, last->span))),
                  "change what stands above; if both are meant, leave out `%.*s`",
                  STR_ARG(cursor_text(c, span)));
        return true;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, span, "before `%.*s`, or after it?",
                     STR_ARG(source_text(c->sources, last->span))),
              "put this sentence above that one; if it comes later, write `then`");
    return true;
}
