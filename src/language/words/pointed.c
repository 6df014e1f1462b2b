/* SPDX-License-Identifier: MIT */
/* pointed: who is meant in a moment that names nobody, for the second reading: when he gets there,
 * as she comes out, once he has thrown it in, until it is set; the moment she does; and `him` in
 * one of somebody else: as 1 lobs to him. It is the one of the sentence, or of the one above it, of
 * whom a sentence above tells just that; where two fit, nobody. */
#include "language/words/grammar.h"

enum { NAMED_MOST = 8 };
struct named {
    struct who at[NAMED_MOST];
    size_t count;
};

static void add(struct named *named, struct who who)
{
    for (size_t i = 0; i < named->count; i++) {
        if (same_who(&named->at[i], &who)) {
            return;
        }
    }
    if (who.kind == WHO_PLAYER && named->count < NAMED_MOST) {
        named->at[named->count++] = who;
    }
}

/* Those of the sentence in hand, up to the clause: who does it, and whom it is done to. */
static void add_here(const struct cursor *c, const struct token *clause, struct named *named)
{
    struct who him;
    add(named, *c->doer);
    for (const struct token *at = clause; at > c->first;) {
        at--;
        if (token_is_mark(at, '.') || token_is_mark(at, ';') ||
            at->span.begin == c->doer->span.begin) {
            return;
        }
        if (at->kind == TOKEN_NUMBER && !at->possessive && at->integer) {
            add(named,
                (struct who){.kind = WHO_PLAYER, .number = (int)at->number, .span = at->span});
        } else if ((token_is_word(at, "him") || token_is_word(at, "her")) &&
                   above_him(c, c->doer, &him)) {
            add(named, him);
        }
    }
}

static void add_of(const struct sentence *s, struct named *named)
{
    for (size_t i = 0; i < s->subject.count; i++) {
        add(named, s->subject.at[i]);
    }
    add(named, s->object);
}

/* ---- one of them ---- */

/* A sentence above tells it; `*index`: the latest that does. */
static bool told_above(const struct cursor *c, const struct event *event, size_t *index)
{
    above_list list = above_sentences(c, false);
    bool happens = event->kind == EVENT_VERB || event->kind == EVENT_CATCHES; /* is open: no */
    for (size_t i = happens ? list.count : 0; i-- > 0;) {
        if (event_of(list.at[i], event)) {
            *index = i;
            return true;
        }
    }
    return false;
}

struct fit {
    struct event event;
    const struct token *to; /* where it ends in the line */
    size_t index;
};

/* A copy of the line for `named` to read from `from` on, which may be changed from there: what
 * looks back in it finds what stands in front. */
static struct token *copied(const struct cursor *c, const struct token *from, struct cursor *named)
{
    const struct token *first = c->first ? c->first : from;
    size_t before = (size_t)(from - first), count = (size_t)(c->end - first);
    struct token *tokens = arena_array(c->arena, struct token, count);
    for (size_t i = 0; i < count; i++) {
        tokens[i] = first[i];
    }
    named->watch = NULL;
    named->first = c->first ? tokens : NULL;
    named->at = tokens + before;
    named->end = tokens + count;
    return tokens + before;
}

/* The moment with this one in the place of the token at `from`. */
static bool named_read(const struct cursor *c, const struct token *from, const struct who *who,
                       struct fit *out)
{
    struct cursor named = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct token *tokens = copied(c, from, &named);
    tokens[0] = token_number(c->arena, from, who->number);
    named.doer = NULL;
    bool read = event_read(&named, &out->event) && named.refusals == mark.refusals;
    bool ends =
        cursor_done(&named) || mark_is(&named, ',') || stop_is(&named) || subject_verb_is(&named);
    bool told = read && ends && told_above(c, &out->event, &out->index);
    told = told || (read && ends && event_settled(c, &out->event) &&
                    told_above(c, &out->event, &out->index));
    if (!told) {
        cursor_back(&named, mark);
        named.at = tokens;
        told = event_told(&named, &out->event) && !out->event.told &&
               told_above(c, &out->event, &out->index);
    }
    out->to = from + (named.at - tokens);
    cursor_back(&named, mark);
    return told;
}

/* The only one of these of whom it is told; of two the one in the latest sentence, where that is
 * the last above. False: none, or two. */
static bool one_of(const struct cursor *c, const struct token *from, const struct named *named,
                   struct fit *out)
{
    size_t fits = 0, last = above_count(c);
    for (size_t i = 0; i < named->count; i++) {
        struct fit fit;
        if (!named_read(c, from, &named->at[i], &fit)) {
            continue;
        }
        bool latest = fit.index + 1 == last, had = fits > 0 && out->index + 1 == last;
        fits += fits == 0 || latest == had;
        if (fits == 1 && !had) {
            *out = fit;
        }
    }
    return fits == 1;
}

static bool he_fits(const struct cursor *c, const struct token *from, struct fit *out)
{
    enum { BACK = 2 };
    above_list list = above_sentences(c, false);
    struct named named = {.count = 0};
    if (c->doer) {
        add_here(c, from, &named);
        if (one_of(c, from, &named, out)) {
            return true;
        }
    }
    for (size_t i = list.count, far = 0; i-- > 0 && far < BACK; far++) {
        size_t had = named.count;
        if (who_defends(&list.at[i]->subject.at[0])) { /* it may be he */
            return false;
        }
        add_of(list.at[i], &named);
        if (named.count > had && one_of(c, from, &named, out)) {
            return true;
        }
    }
    return false;
}

static bool is_he(const struct token *at)
{
    return token_is_word(at, "he") || token_is_word(at, "she");
}

/* ---- the moment she does ---- */

/* Behind who: does that; of a defender, who does what he does by coming, also comes. */
static bool take_does(struct cursor *c, const struct sentence *s)
{
    static const char *const does[] = {"does that",   "does so",     "does it",       "does this",
                                       "has done it", "has done so", "has done that", "did",
                                       "does",        NULL};
    static const char *const comes[] = {"comes",   "comes over", "comes up", "gets there",
                                        "arrives", "is there",   "steps up", "steps in",
                                        "commits", "goes",       "leaves",   NULL};
    return take_among(c, does) ||
           (s->subject.count > 0 && who_defends(&s->subject.at[0]) && take_among(c, comes));
}

static bool does_so(struct cursor *c, const struct token *from, struct event *out)
{
    above_list list = above_sentences(c, false);
    struct cursor trial = *c;
    struct who who;
    trial.at = is_he(from) ? from + 1 : from;
    bool named = !is_he(from) && person_read(&trial, &who);
    const struct sentence *s = NULL;
    for (size_t i = list.count; i-- > 0 && !s;) {
        s = !named || acts_in(list.at[i], &who) ? list.at[i] : NULL;
    }
    if ((!named && !is_he(from)) || !s || s->subject.count != 1 || c->doer ||
        !take_does(&trial, s) ||
        !(cursor_done(&trial) || mark_is(&trial, ',') || subject_verb_is(&trial))) {
        return false;
    }
    *out = (struct event){.subject = s->subject.at[0]};
    moment_of(out, s, false);
    cursor_take(c, from, trial.at);
    out->span = cursor_taken(c, from);
    return true;
}

/* ---- until it is set ---- */

static bool it_fits(const struct cursor *c, const struct token *from, struct fit *out)
{
    above_list list = above_sentences(c, false);
    const struct sentence *last = list.count > 0 ? list.at[list.count - 1] : NULL;
    bool screen = token_is_word(from, "it") && last && !c->doer &&
                  verb_row(last->verb)->task == VERB_SCREEN && last->subject.count == 1 &&
                  last->subject.at[0].kind == WHO_PLAYER;
    return screen && named_read(c, from, &last->subject.at[0], out);
}

/* ---- as 1 lobs to him ---- */

/* Whoever acts in the sentence, where its clause is of somebody else and it names nobody besides.
 */
static bool him_fits(const struct cursor *c, const struct token *from, struct event *out,
                     const struct token **to)
{
    struct cursor named = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    struct named all = {.count = 0};
    if (!c->doer || !person_read(&named, &who) || same_who(&who, c->doer)) {
        return false;
    }
    add_here(c, from, &all);
    size_t count = (size_t)(c->end - from), at = 0;
    for (size_t i = 0; i < count; i++) {
        bool him = token_is_word(&from[i], "him") || token_is_word(&from[i], "her");
        bool ends = i + 1 == count || from[i + 1].kind == TOKEN_MARK;
        at = at == 0 && him && ends && i > 1 ? i : at;
        if (from[i].kind == TOKEN_MARK && at == 0) {
            break;
        }
    }
    if (at == 0 || all.count != 1 || all.at[0].kind != WHO_PLAYER) {
        return false;
    }
    named = *c;
    struct token *tokens = copied(c, from, &named);
    tokens[at] = token_number(c->arena, &from[at], all.at[0].number);
    named.end = tokens + at + 1;
    bool read = event_read(&named, out) && cursor_done(&named) && out->object.kind == WHO_PLAYER &&
                named.refusals == mark.refusals;
    cursor_back(&named, mark);
    *to = from + at + 1;
    return read;
}

bool event_pointed(struct cursor *c, struct event *out)
{
    const struct token *from = cursor_next(c), *to = NULL;
    struct fit fit = {.to = NULL};
    if (!from) {
        return false;
    }
    if (him_fits(c, from, out, &to)) {
        cursor_take(c, from, to);
        out->span = cursor_taken(c, from);
        return true;
    }
    if (does_so(c, from, out)) {
        return true;
    }
    if (!(is_he(from) ? he_fits(c, from, &fit) : it_fits(c, from, &fit))) {
        return false;
    }
    cursor_take(c, from, fit.to);
    *out = fit.event;
    out->span = cursor_taken(c, from);
    out->subject.span = from->span;
    return true;
}

/* when 2 catches, 5 screens for him: the only one the clause names. */
const struct who *told_in_front(const struct tie *tie)
{
    const struct event *event = tie->event;
    bool one = event && who_is_one(&event->subject) && !event_is_state(event) &&
               (event->kind == EVENT_CATCHES || event->object.kind == WHO_NONE);
    return one ? &event->subject : NULL;
}
