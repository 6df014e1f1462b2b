/* SPDX-License-Identifier: MIT */
/* remark: what a coach says beside the movement, where a sentence begins: no rush, the timing is
 * everything, I like it better so. In front of a sentence it is left out, with a note; a part of a
 * line that holds nothing else is kept as a point. Never what could be an action misspelled: no
 * player, no place, no verb of the language stands in it, nor a word near to one. */
#include "language/words/speech.h"

static const char *const heads[] = {
#define REMARK(words) words,
#include "language/words/remarks.def"
#undef REMARK
    NULL};

/* A word that says who, where, or what is done; or one that may be meant for it. */
static bool acts(const struct cursor *c, const struct token *at)
{
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct phrase phrase;
    trial.at = at;
    struct str said;
    bool is = phrase_read(&trial, FOR_ANYONE, &phrase) || spot_read(&trial, true) ||
              (c->at < at && phrase_ing_here(&trial, FOR_DEFENDERS, &phrase, &said));
    trial.at = at;
    bool near = at->text.size > 3 &&
                (phrase_nearest(&trial, FOR_ATTACKERS) || phrase_nearest(&trial, FOR_DEFENDERS));
    cursor_back(&trial, mark);
    return is || near;
}

/* What is said of the sentence beside it, and not to the players: this is never done, our bad. */
bool remark_judges(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const words[] = {
        "not",   "never",   "only",      "if",       "unless", "fake",  "fakes", "should", "bad",
        "wrong", "hate",    "opponents", "opponent", "error",  "false", "worst", "except", "maybe",
        "until", "mistake", "illegal",   "isn't",    "happen", "mind",  "do",    "want",   NULL};
    for (const struct token *at = from; at < to; at++) {
        struct cursor word = cursor_look(c);
        word.at = at;
        if (word_among(&word, words)) {
            return true;
        }
    }
    /* strong, strong, and up: he shoots, or goes there */
    return to - from > 1 && token_is_word(&to[-1], "up") && token_is_word(&to[-2], "and");
}

/* Words alone, and none of them moves anybody. */
static bool moves_nobody(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const never[] = {
        "not",    "everybody", "everyone", "moves",  "move",     "rotates",   "rotate",  "shifts",
        "shift",  "spot",      "spots",    "never",  "or",       "option",    "options", "if",
        "unless", "until",     "he",       "she",    "they",     "him",       "her",     "it",
        "when",   "after",     "before",   "as",     "upon",     "on",        "off",     "while",
        "once",   "catch",     "pass",     "screen", "overload", "overloads", NULL};
    size_t words = 0;
    for (const struct token *at = from; at < to; at++) {
        struct cursor word = cursor_look(c);
        word.at = at;
        if (token_is_mark(at, ',')) {
            continue;
        }
        bool twice = at > from && at->text.size > 3 && str_equal(at[-1].text, at->text);
        if (at->kind != TOKEN_WORD || twice ||
            (!at->filler && (word_among(&word, never) || acts(c, at)))) {
            return false;
        }
        words += !at->filler;
    }
    return words > 1 && !remark_judges(c, from, to); /* one alone could be anything */
}

bool remark_acts(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const owners[] = {"our", "my", NULL};
    bool acted = false;
    for (const struct token *at = from + 1; token_is_among(from, owners) && at < to; at++) {
        acted = acted || acts(c, at);
    }
    return acted;
}

/* Up to `to`, and what is said behind its head does not judge. */
static bool head_is(const struct cursor *c, const struct token *from, const struct token *to)
{
    struct cursor trial = cursor_look(c);
    trial.at = from;
    return take_among(&trial, heads) && !remark_judges(c, trial.at, to) &&
           !remark_acts(c, from, to);
}

/* A sentence of somebody begins here. */
static bool sentence_at(const struct cursor *c, const struct token *at)
{
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    trial.at = at;
    struct cursor verb = trial;
    bool is = subject_verb_is(&trial) || (take_among(&verb, he_or_she) && verb_begins(&verb));
    cursor_back(&trial, mark);
    return is;
}

/* No player is named, nor a defender; `the big one` is none. */
static bool names_nobody(const struct cursor *c, const struct token *from, const struct token *to)
{
    struct cursor inside = cursor_look(c);
    inside.end = to;
    c = &inside;
    for (const struct token *at = from; at < to; at++) {
        bool you = at > from && str_is(at[-1].text, "you") && at->text.at[0] > '9';
        bool count = at + 2 < to && str_is(at[1].text, "or") && str_is(at[2].text, "so");
        bool one = (str_is(at->text, "one") || you || count) && !sentence_at(c, at);
        if ((at->kind == TOKEN_NUMBER && !one) || at->kind == TOKEN_DEFENDER ||
            at->kind == TOKEN_QUOTED) {
            return false;
        }
    }
    return from < to;
}

/* Behind its head somebody does something. */
static bool goes_on_acting(const struct cursor *c, const struct token *from)
{
    for (const struct token *at = from + 1; at < c->end; at++) {
        if (!at->filler && sentence_at(c, at)) {
            return true;
        }
    }
    return false;
}

bool remark_in_front(const struct cursor *c, struct recast *r)
{
    static const char *const joints[] = {"and then", "and now", "and so", "and",
                                         "but",      "so",      "then",   NULL};
    const struct token *from = cursor_next(c);
    for (const struct token *at = from; from && at < c->end; at++) {
        struct cursor next = cursor_look(c);
        next.at = at;
        bool comma = take_mark(&next, ',');
        bool joined = take_among(&next, joints);
        if ((!comma && !joined) || at == from || !sentence_at(c, next.at)) {
            if (at->kind == TOKEN_MARK && !token_is_mark(at, ',')) {
                return false;
            }
            continue;
        }
        bool said = head_is(c, from, at) ? names_nobody(c, from, at) : moves_nobody(c, from, at);
        bool then = joined && next.at > at && str_is(next.at[-1].text, "then");
        r->to = then ? next.at - 1 : next.at;
        r->told = span_join(from->span, at[-1].span);
        return said;
    }
    return false;
}

bool remark_is(const struct cursor *c)
{
    const struct token *from = cursor_next(c);
    return from && ((head_is(c, from, c->end) && names_nobody(c, from, c->end) &&
                     !goes_on_acting(c, from)) ||
                    moves_nobody(c, from, c->end));
}
