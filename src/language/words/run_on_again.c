/* SPDX-License-Identifier: MIT */
/* run_on_again: what a run-on line says twice over, four rolls four rolls hard to the rim, and what
 * it takes back, three comes up no three stays: the one that says more stands, or the later one.
 * See run_on.h. Takes the tokens of the line and its cut; knows no sentence. */
#include "language/words/loose_read.h"
#include "language/words/run_on.h"

#include <string.h>

/* Who acts in a clause, and where what he does begins. */
struct act {
    const struct token *from, *verb, *to;
    int number; /* 0: not by number */
    bool named; /* by number, or as several */
    bool back;  /* behind it, it is taken back */
};

/* no wait, I mean: where the clause ends without it. */
static const struct token *without_back(const struct cursor *c, const struct token *from,
                                        const struct token *to)
{
    static const char *const backs[] = {"no",    "wait",         "i mean", "actually",
                                        "sorry", "scratch that", "nope",   NULL};
    for (const struct token *at = from + 1; at < to; at++) {
        struct cursor trial = look_between(c, at, to);
        while (trial.at < to && take_among(&trial, backs)) {
            trial.at = past_sounds(trial.at, to);
        }
        if (trial.at >= to) {
            return token_is_word(at, "actually") ? to : at;
        }
    }
    return to;
}

static struct act act_of(const struct cursor *c, const struct run_on_piece *piece)
{
    struct act act = {.from = past_sounds(piece->from, piece->to)};
    act.to = without_back(c, act.from, piece->to);
    act.back = act.to < piece->to;
    struct cursor part = look_between(c, act.from, act.to);
    const struct token *at = run_on_past_openers(&part, act.from);
    size_t count;
    const struct token *people = at < act.to ? players_end(&part, at, &count) : at;
    act.named = people > at && count > 0;
    act.number = act.named && count == 1 ? attacker_at(at, act.to) : 0;
    const struct token *who = act.named ? people : at < act.to ? run_on_somebody(&part, at) : NULL;
    act.from = at;
    act.verb = run_on_past_run_in(&part, run_on_past_aux(&part, who ? who : at));
    return act;
}

/* pass, passes; go, goes. */
bool run_on_same_stem(const struct token *one, const struct token *two)
{
    struct str a = one->text, b = two->text;
    if (a.size > b.size) {
        struct str swap = a;
        a = b;
        b = swap;
    }
    size_t more = b.size - a.size;
    return one->kind == TOKEN_WORD && two->kind == TOKEN_WORD && more <= 2 &&
           memcmp(a.at, b.at, a.size) == 0 && (more == 0 || b.at[b.size - 1] == 's') &&
           (more < 2 || b.at[a.size] == 'e');
}

/* Adds nothing to where, whom or how. */
static bool small_word(const struct token *at, const struct token *end)
{
    static const char *const words[] = {"hard", "just",  "it",   "there",  "to",    "at",   "on",
                                        "in",   "into",  "for",  "of",     "him",   "her",  "you",
                                        "real", "okay",  "now",  "really", "again", "then", "so",
                                        "here", "quick", "ball", NULL};
    bool right = token_is_word(at, "right") && at + 1 < end && at[1].kind == TOKEN_WORD;
    return right || at->filler || at->kind == TOKEN_MARK || token_is_among(at, words);
}

static bool same_word(const struct token *one, const struct token *two)
{
    if (one->kind == TOKEN_NUMBER || one->kind == TOKEN_DEFENDER) {
        return one->kind == two->kind && one->number == two->number;
    }
    return run_on_same_stem(one, two);
}

/* Both pass, both set a screen: in other words the same. */
static bool same_deed(const struct token *one, const struct token *two)
{
    static const char *const screens[] = {"set",  "sets",  "screen", "screens",
                                          "pick", "picks", NULL};
    static const char *const passes[] = {"pass",  "passes", "throw", "throws", "give", "gives",
                                         "swing", "swings", "hit",   "hits",   "find", "finds",
                                         "feed",  "feeds",  "kick",  "kicks",  NULL};
    return run_on_same_stem(one, two) ||
           (token_is_among(one, screens) && token_is_among(two, screens)) ||
           (token_is_among(one, passes) && token_is_among(two, passes));
}

/* All that these say is said in those too. */
static bool said_in(const struct token *from, const struct token *to, const struct token *those,
                    const struct token *end)
{
    for (; from < to; from++) {
        const struct token *at = those;
        while (at < end && !same_word(from, at) && !same_deed(from, at)) {
            at++;
        }
        if (at == end && !small_word(from, to)) {
            return false;
        }
    }
    return true;
}

/* The second of them could be of the one who acts in the first. */
static bool same_actor(const struct act *one, const struct act *two)
{
    return !two->named || (one->number && one->number == two->number) ||
           (one->named && two->named && !one->number && !two->number &&
            said_in(two->from, two->verb, one->from, one->verb));
}

static void tell_again(const struct cursor *c, const struct token *from, const struct token *to,
                       bool back)
{
    struct span span = span_join(from->span, to[-1].span);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_TAKEN_BACK, span,
                                 back ? "`%.*s` is taken back, and left out"
                                      : "`%.*s` is said again, and was taken once",
                                 STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, back ? "delete it, and what takes it back" : "delete one of the two");
}

struct range {
    const struct token *from, *to;
};

/* Of two clauses, one behind the other, what goes; false: both stand. */
static bool range_of(const struct cursor *c, const struct act *one, const struct act *two,
                     const struct token *joint, struct range *out)
{
    if (one->verb >= one->to || two->verb >= two->to || !same_actor(one, two)) {
        return false;
    }
    bool same = same_deed(one->verb, two->verb);
    if (one->back) {
        *out = (struct range){one->named && !two->named ? one->verb : one->from,
                              one->named && !two->named ? two->verb : two->from};
        tell_again(c, one->verb, one->to, true);
        return same || two->named;
    }
    if (!same) {
        return false;
    }
    if (said_in(two->verb, two->to, one->verb, one->to)) {
        *out = (struct range){joint, two->to};
        tell_again(c, two->from, two->to, false);
        return true;
    }
    if (said_in(one->verb, one->to, two->verb, two->to)) {
        *out = (struct range){one->verb, two->verb};
        tell_again(c, one->verb, one->to, false);
        return true;
    }
    return false;
}

/* and then five right then five ducks in: who acts, said twice. */
static size_t stammers(struct cursor *c, struct token *tokens, size_t count)
{
    static const char *const joints[] = {"and", "then", "so", "now", "okay", "but", NULL};
    static const char *const between[] = {"right", "then", "okay", "uh",   "um",
                                          "yeah",  "so",   "now",  "well", NULL};
    for (size_t i = 1; i + 2 < count; i++) {
        const struct token *at = &tokens[i];
        size_t next = i + 1;
        while (next + 1 < count && token_is_among(&tokens[next], between)) {
            next++;
        }
        if (next > i + 1 && at->kind == TOKEN_NUMBER && !at->possessive &&
            token_is_among(at - 1, joints) && same_word(at, &tokens[next]) &&
            !tokens[next].possessive && run_on_verb(c, run_on_past_aux(c, &tokens[next + 1]))) {
            tell_again(c, at, &tokens[next], false);
            memmove(&tokens[i], &tokens[next], (count - next) * sizeof *tokens);
            count -= next - i;
            c->end = tokens + count;
        }
    }
    return count;
}

size_t run_on_again(struct cursor *c, struct token *tokens, size_t count)
{
    struct run_on_pieces pieces;
    count = stammers(c, tokens, count);
    if (!run_on_cut(c, &pieces)) {
        return count;
    }
    for (size_t i = pieces.count; i-- > 1;) { /* from behind: what stands in front stays put */
        const struct run_on_piece *first = &pieces.at[i - 1], *second = &pieces.at[i];
        if (first->kind != RUN_ON_DEED || second->kind != RUN_ON_DEED || second->then) {
            continue;
        }
        struct act one = act_of(c, first), two = act_of(c, second);
        struct cursor_mark mark = cursor_mark(c);
        struct range gone;
        if (!range_of(c, &one, &two, second->joint, &gone)) {
            cursor_back(c, mark);
            continue;
        }
        size_t from = (size_t)(gone.from - tokens), to = (size_t)(gone.to - tokens);
        memmove(tokens + from, tokens + to, (count - to) * sizeof *tokens);
        count -= to - from;
        /* the next pair ends where this one began */
        if (gone.from < first->to) {
            pieces.at[i - 1].to = gone.from + (second->to - gone.to);
        }
    }
    c->end = tokens + count;
    return count;
}
