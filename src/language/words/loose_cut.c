/* SPDX-License-Identifier: MIT */
/* loose_cut: a line cut into clauses, at its marks, at the words that join them, and where somebody
 * begins to do something; or told to be none that can be read loosely: see loose_read.h. */
#include "language/words/loose_read.h"

/* What turns the whole line round, wherever it stands. */
static const char turning_words[] =
    "forget|forget it|nope|unless|instead|pretend|ghost|scratch that|"
    "no wait|wait no|hold on|i mean|sorry|or|like he|like she|but first|but before that";
static const char faked_words[] = "fake shot|fake pass|fake pump";
static const char fake_words[] =
    "shot fake|pump fake|up fake|pass fake|head fake|ball fake|jab fake";

bool token_is_player(const struct token *token)
{
    return (token->kind == TOKEN_NUMBER || token->kind == TOKEN_DEFENDER) && !token->possessive;
}

/* keep 3 from cutting: he does not. */
static bool kept_from(const struct cursor *c, const struct token *at)
{
    const struct token *doing = past_fillers(at + 1, c->end);
    return token_is_word(at, "from") && doing < c->end && doing->text.size > 4 &&
           doing->kind == TOKEN_WORD && ends_in_ing(doing);
}

/* 2 uh 3 cuts: the one, or the other. */
static bool stammers(const struct cursor *c, const struct token *at)
{
    return at > c->at && at + 1 < c->end && token_is_player(&at[-1]) && token_is_player(&at[1]) &&
           said_at(at, at + 1, "uh|um|er|erm");
}

/* Something in the line turns it round: forget it; a fake that is none of a shot or a pass. */
bool line_turns(const struct cursor *c)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        if (kept_from(c, at) || stammers(c, at)) {
            return true;
        }
        bool fake = said_at(at, c->end, "fake") && !said_at(at, c->end, faked_words) &&
                    !(at > c->at && said_at(at - 1, c->end, fake_words));
        if (fake || said_at(at, c->end, turning_words)) {
            return true;
        }
    }
    return false;
}

static bool only_people(const struct token *from, const struct token *to)
{
    bool any = false;
    for (; from < to; from++) {
        if (!token_is_player(from) && !from->filler && !token_is_mark(from, ',') &&
            !token_is_word(from, "and")) {
            return false;
        }
        any = any || token_is_player(from);
    }
    return any;
}

/* and and, and a line that ends with and: a word is doubled, or the rest is lost. */
bool line_doubled(const struct cursor *c)
{
    if (c->end > c->at && said_at(c->end - 1, c->end, "and|then|so|while|who|to")) {
        return true;
    }
    for (const struct token *at = c->at + 1; at < c->end; at++) {
        if (token_is_word(at, "and") && token_is_word(&at[-1], "and")) {
            return true;
        }
    }
    return false;
}

/* 1 drives but 4 stays: another sentence; everybody but 1 is none. */
static bool joins_but(const struct cursor *c, const struct token *at)
{
    return token_is_word(at, "but") && at + 1 < c->end &&
           !(at > c->at &&
             said_at(at - 1, at, "everybody|everyone|all|nobody|anybody|nothing|anything|one"));
}

/* holds it before he passes: first the one, then the other. */
static bool joins_before(const struct cursor *c, const struct token *at)
{
    const struct token *who = token_is_word(at, "before") ? past_fillers(at + 1, c->end) : c->end;
    const struct token *verb = who < c->end ? past_fillers(who + 1, c->end) : c->end;
    return at > c->at && verb < c->end && said_at(who, c->end, "he|she") == who + 1 &&
           ends_in_s(verb) && act_begins(verb, c->end, false);
}

static const struct token *behind_joints(const struct cursor *c, const struct token *at,
                                         struct piece *next)
{
    const struct token *end = c->end;
    for (; at < end; at++) {
        bool then = token_is_word(at, "then") || joins_before(c, at), word = at->kind == TOKEN_WORD;
        bool meanwhile = word && (str_is(at->text, "while") || str_is(at->text, "meanwhile"));
        bool joint = token_is_word(at, "and") || token_is_word(at, "so") || joins_but(c, at);
        bool mark =
            at->kind == TOKEN_MARK && (at->mark == ',' || at->mark == '.' || at->mark == ';' ||
                                       at->mark == ':' || at->mark == '-');
        if (!then && !meanwhile && !joint && !mark) {
            break;
        }
        next->then = next->then || then;
        next->meanwhile = next->meanwhile || meanwhile;
    }
    return at;
}

static bool act_between(const struct cursor *c, const struct token *from, const struct token *to)
{
    for (const struct token *seen = from; seen < to; seen++) {
        if (act_begins(seen, c->end, false) || act_begins(seen, c->end, true)) {
            return true;
        }
    }
    return false;
}

/* 1 passes to 2 3 cuts: a new one begins without a joint. */
bool clause_runs_on(const struct cursor *c, const struct token *from, const struct token *at)
{
    if (!token_is_player(at) || at == from || at + 1 >= c->end || counts_at(from, at, c->end)) {
        return false;
    }
    const struct token *next = past_fillers(at + 1, c->end);
    bool leg =
        next < c->end && at->kind == TOKEN_NUMBER && /* to the top five to the wing */
        said_at(next, c->end, "to|up to|down to|out to|over to") &&
        said_at(at - 1, at,
                "top|wing|corner|elbow|block|slot|post|rim|basket|lane|paint|nail|key|point");
    if (next >= c->end || (!leg && !act_begins(next, c->end, at->kind == TOKEN_DEFENDER)) ||
        said_at(at - 1, at,
                "to|toward|towards|beside|near|for|off|of|by|from|with|on|at|and|into|behind|past|"
                "around|player|number|than|"
                "till|til|until|when|as|after|once|if|while|let|have|get|between|or|over|under")) {
        return false;
    }
    return act_between(c, from, at);
}

/* he rejects it she goes left: a pronoun acts, and nothing joins it to what stands before. */
static bool pronoun_runs_on(const struct cursor *c, const struct token *from,
                            const struct token *at)
{
    static const char *const lightly[] = {"just",    "simply", "then",    "kinda", "kind of",
                                          "sort of", "now",    "quickly", NULL};
    static const char *const binds[] = {
        "as",    "when",  "if",     "who",    "that",  "because", "so",  "while", "till",
        "until", "after", "before", "once",   "like",  "where",   "and", "time",  "moment",
        "than",  "how",   "what",   "though", "since", "soon",    NULL};
    if (at == from || !said_at(at, c->end, "he|she") || token_is_among(at - 1, binds)) {
        return false;
    }
    struct cursor verb = cursor_look(c);
    verb.at = past_fillers(at + 1, c->end);
    while (take_among(&verb, lightly)) {
    }
    return verb.at < c->end && act_begins(verb.at, c->end, false) && act_between(c, from, at);
}

/* comes up to the slot gets the ball: a second verb, behind where the first one ends. */
static bool verb_runs_on(const struct cursor *c, const struct token *from, const struct token *at)
{
    static const char ends[] = "top|wing|corner|elbow|block|slot|post|rim|basket|lane|paint|nail|"
                               "key|point|it|ball|him|her|there|line|floor|hoop";
    static const char with_ball[] = "give|pass|throw|kick|dish|hand|shoot|take hand off|take "
                                    "handoff|drive|swing|skip|lob|dump|feed";
    if (at == from || at->kind != TOKEN_WORD || at->possessive || !ends_in_s(at) ||
        !act_begins(at, c->end, false)) {
        return false;
    }
    bool behind = said_at(at - 1, at, ends) == at ||
                  (token_is_player(at - 1) && at - 1 > from && said_at(at, c->end, with_ball));
    return behind && act_between(c, from, at - 1);
}

bool line_cut(const struct cursor *c, struct pieces *out)
{
    struct piece next = {.from = c->at};
    next.from = behind_joints(c, c->at, &next);
    for (const struct token *at = next.from; at <= c->end;) {
        struct piece behind = {.from = NULL};
        const struct token *to = at < c->end ? behind_joints(c, at, &behind) : at;
        bool who = at < c->end && token_is_word(at, "who") && at > next.from;
        bool list = to > at && to < c->end && only_people(next.from, at) && token_is_player(to) &&
                    !token_is_mark(at, ':');
        bool runs_on =
            at < c->end && (clause_runs_on(c, next.from, at) || pronoun_runs_on(c, next.from, at) ||
                            verb_runs_on(c, next.from, at));
        bool end = at == c->end || (to > at && !list) || who || runs_on;
        if (!end) {
            at = to > at ? to : at + 1;
            continue;
        }
        if (at > next.from) {
            if (out->count == PIECES_MOST) {
                return false;
            }
            next.to = at;
            out->at[out->count++] = next;
        }
        if (at == c->end) {
            break;
        }
        bool relative = who || (to < c->end && token_is_word(to, "who")); /* for 2, who curls */
        behind.relative = relative;
        behind.from = who ? at + 1 : relative ? to + 1 : to;
        next = behind;
        at = behind.from > at ? behind.from : at + 1;
    }
    return out->count > 0;
}
