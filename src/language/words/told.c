/* SPDX-License-Identifier: MIT */
/* told: a clause of time whose moment is told as a sentence is, with where and how: as 1 penetrates
 * to the front of the rim, once 5 has come up to the elbow, when 3 runs out of the corner. It is
 * read by itself, and means the latest sentence above of the same player and kind. */
#include <string.h>

#include "language/words/loose_clause.h"

/* What somebody does, of one kind or another: the clause may have another verb for it. Who has the
 * ball may also just go. */
static bool same_kind(enum verb a, enum verb b, bool loosely)
{
    enum verb_task one = verb_row(a)->task, other = verb_row(b)->task;
    bool runs = verb_runs(a), run = verb_runs(b);
    bool carries = one == VERB_CARRY || a == VERB_DRIVES_OFF || a == VERB_DRIBBLES_OFF;
    bool carry = other == VERB_CARRY || b == VERB_DRIVES_OFF || b == VERB_DRIBBLES_OFF;
    bool use = one == VERB_USE && other != VERB_USE && a != VERB_COMES; /* of no screen */
    return !use &&
           (one == other || (runs && run) || (carries && carry) || (loosely && runs && carry));
}

/* Somebody is named in the clause, and it is not that one. */
static bool apart(const struct who *told, const struct who *above)
{
    return told->kind != WHO_NONE && above->kind != WHO_BALL && !same_who(told, above);
}

static bool at_rim(const struct place *place)
{
    return place->spot == SPOT_RIM || place->spot == SPOT_FRONT_OF_RIM || place->spot == SPOT_LANE;
}

static bool places_apart(const struct place *a, const struct place *b)
{
    return a && b && a->kind == PLACE_SPOT && b->kind == PLACE_SPOT && !(at_rim(a) && at_rim(b)) &&
           !same_spot(a, b);
}

static const struct sentence *latest_like(const above_list *list, const struct sentence *told,
                                          bool loosely)
{
    for (size_t i = list->count; i-- > 0;) {
        const struct sentence *s = list->at[i];
        if (acts_in(s, &told->subject.at[0]) && same_kind(told->verb, s->verb, loosely) &&
            !apart(&told->object, &s->object) && !places_apart(told->place, s->place)) {
            return s;
        }
    }
    return NULL;
}

const struct sentence *told_among(const above_list *list, const struct sentence *told)
{
    const struct sentence *s = latest_like(list, told, false);
    return s ? s : latest_like(list, told, true);
}

/* The latest above that tells the same; NULL: none. */
static const struct sentence *told_above(const struct cursor *c, const struct sentence *told)
{
    above_list list = above_sentences(c, false);
    return told_among(&list, told);
}

bool event_settled(const struct cursor *c, struct event *event)
{
    above_list list = above_sentences(c, false);
    struct sentence told = {.verb = event->verb, .object = event->object};
    bool other = event->kind == EVENT_VERB && who_is_one(&event->subject);
    for (size_t i = 0; other && i < list.count; i++) {
        enum verb verb = list.at[i]->verb;
        other = (verb != event->verb && !verb_in_family(verb, event->family)) ||
                !acts_in(list.at[i], &event->subject);
    }
    if (!other) {
        return false;
    }
    VEC_PUSH(c->arena, &told.subject, event->subject);
    const struct sentence *s = told_above(c, &told);
    if (s) {
        moment_of(event, s, event->over);
    }
    return s != NULL;
}

/* ---- as a sentence ---- */

/* The part with `has come`, `is coming` as `comes`; `*over`: it is done then. */
static bool as_present(struct cursor *part, bool *over)
{
    static const char *const had[] = {"has", "have", "had", NULL};
    static const char *const adverbs[] = {"just", "already", "finally", "now", NULL};
    struct cursor trial = *part;
    struct phrase phrase;
    struct who who;
    struct str said;
    const struct token *from = cursor_next(part);
    if (!from || !person_read(&trial, &who)) {
        return false;
    }
    const struct token *who_end = trial.at;
    enum phrase_side side = who_side(&who);
    bool have = take_among(&trial, had);
    bool is = !have && take_words(&trial, "is");
    take_among(&trial, adverbs);
    bool read = is ? phrase_ing_here(&trial, side, &phrase, &said)
                   : past_read(&trial, side, &phrase); /* drove, has driven */
    if (!read) {
        return false;
    }
    *over = !is;
    struct recast all = {.to = NULL};
    recast_copy(part, &all, from, who_end);
    recast_verb(part, &all, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
    recast_copy(part, &all, trial.at, part->end);
    part->at = part->first = all.tokens.at;
    part->end = all.tokens.at + all.tokens.count;
    return true;
}

bool event_arrives(const struct cursor *c)
{
    static const char *const words[] = {"gets",    "get",     "got",        "reaches", "reach",
                                        "reached", "arrives", "arrives at", "arrive",  NULL};
    struct cursor trial = cursor_look(c);
    struct who who;
    struct cursor_mark mark = cursor_mark(c);
    bool is = person_read(&trial, &who) && take_among(&trial, words) &&
              (word_among(&trial, particle_words) || word_among(&trial, place_words));
    cursor_back(&trial, mark);
    return is;
}

/* The part as one sentence of the player named first in it, and nothing more. */
static bool as_sentence(const struct cursor *part, struct sentence *out)
{
    struct cursor trial = cursor_look(part), whole = *part; /* which is left at `list` */
    struct who first;
    sentence_list list = {NULL, 0, 0};
    struct cursor_mark mark = cursor_mark(part);
    for (size_t i = 0; part->here && i < part->here->count; i++) {
        VEC_PUSH(part->arena, &list, part->here->at[i]);
    }
    size_t had = list.count;
    bool named = person_read(&trial, &first);
    bool read = named && sentences_read(&whole, &list) && whole.refusals == mark.refusals;
    cursor_back(&whole, mark);
    if (!read || list.count != had + 1) {
        return false;
    }
    *out = list.at[had];
    return out->subject.count == 1 && same_who(&out->subject.at[0], &first) &&
           out->tie.word == TIE_NONE && !out->until && verb_row(out->verb)->task != VERB_HOLD;
}

/* ---- by its pieces ---- */

/* 3 runs out of the corner, 1 lets it go: who and what, and no word that is not known. */
static bool by_pieces(const struct cursor *part, struct sentence *out)
{
    struct items items;
    struct clause k = {.c = part};
    if (!items_find(part, &items) || !clause_act(&k, &items) || !clause_gather(&k, &items) ||
        !k.act || k.actor_count != 1 || k.unknown > 0 || k.actors[0]->kind != ITEM_WHO ||
        k.from_who || !who_is_one(&k.actors[0]->who)) {
        return false;
    }
    enum verb_task task = verb_row(k.act->verb)->task;
    *out = (struct sentence){.verb = k.act->verb, .pass = k.act->pass, .screen = k.act->screen};
    VEC_PUSH(part->arena, &out->subject, k.actors[0]->who);
    if (k.object && task != VERB_MOVE) {
        out->object = k.object->who;
    }
    return k.act->frame != FRAME_RECEIVE && k.act->frame != FRAME_TAKE && task != VERB_HOLD;
}

/* gives the ball to 2: passed or handed, whichever stands above. */
static const struct sentence *given_above(const struct cursor *c, const struct cursor *part,
                                          struct sentence *told)
{
    static const char *const gives[] = {"gives ball",     "gives it",      "gave ball",   "gave it",
                                        "has given ball", "gives up ball", "gives it up", NULL};
    static const char *const tails[] = {"away", "up", "back", "over", NULL};
    struct cursor trial = cursor_look(part);
    struct cursor_mark mark = cursor_mark(part);
    struct who who, to = {.kind = WHO_NONE};
    bool given = person_read(&trial, &who) && who_is_one(&who) && take_among(&trial, gives);
    take_among(&trial, tails);
    bool whole =
        given && (cursor_done(&trial) ||
                  (take_words(&trial, "to") && person_read(&trial, &to) && cursor_done(&trial)));
    cursor_back(&trial, mark);
    above_list list = above_sentences(c, false);
    for (size_t i = whole ? list.count : 0; i-- > 0;) {
        enum verb_task task = verb_row(list.at[i]->verb)->task;
        if ((task == VERB_PASS || task == VERB_EXCHANGE) && acts_in(list.at[i], &who) &&
            !apart(&to, &list.at[i]->object)) {
            *told = (struct sentence){.object = to};
            VEC_PUSH(c->arena, &told->subject, who);
            return list.at[i];
        }
    }
    return NULL;
}

/* ---- the clause ---- */

static bool part_told(const struct cursor *c, const struct token *end, struct event *out)
{
    struct cursor part = *c;
    struct sentence told;
    bool over = false;
    part.speech = NULL;
    part.watch = NULL;
    part.remark = SPAN_NONE;
    part.first = part.at;
    part.end = end;
    over = event_arrives(&part);
    as_present(&part, &over);
    const struct sentence *s = given_above(c, &part, &told);
    bool whole = !s && as_sentence(&part, &told);
    if (!s && !whole && !by_pieces(&part, &told)) {
        return false;
    }
    s = s ? s : told_above(c, &told);
    const struct place *place = told.place;
    told.place = NULL;
    if (!s && place && told_above(c, &told)) { /* he goes somewhere else */
        return false;
    }
    if (!s && !whole) {
        return false;
    }
    moment_of(out, s ? s : &told, over);
    if (!s) {
        struct sentence *kept = arena_new(c->arena, struct sentence);
        *kept = told;
        kept->place = place;
        out->told = kept;
    }
    out->subject = told.subject.at[0];
    out->object = s ? (struct who){.kind = WHO_NONE} : told.object;
    return true;
}

/* Where the clause may end: at a comma, at the end; or where somebody begins to do something, who
 * is no spot: that may be part of where he goes. */
static bool may_end(const struct cursor *c, const struct token *at, bool acts)
{
    struct cursor rest = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    rest.at = at;
    if (!acts) {
        return at == c->end || token_is_mark(at, ',');
    }
    bool begins = at < c->end && !at->filler && bare_before(&rest) && subject_verb_is(&rest) &&
                  person_read(&rest, &who);
    cursor_back(&rest, mark);
    return begins;
}

static bool told_to(struct cursor *c, const struct token *from, bool acts, struct event *out)
{
    bool comma = false;
    for (const struct token *at = from + 1; at <= c->end && !comma; at++) {
        comma = at == c->end || token_is_mark(at, ',');
        struct cursor_mark mark = cursor_mark(c);
        struct event event = {.kind = EVENT_NONE};
        bool told = may_end(c, at, acts) && part_told(c, at, &event);
        cursor_back(c, mark);
        if (told) {
            cursor_take(c, from, at);
            event.span = cursor_taken(c, from);
            *out = event;
            return true;
        }
    }
    return false;
}

bool event_told(struct cursor *c, struct event *out)
{
    const struct token *from = cursor_next(c);
    return from && from + 2 <= c->end &&
           (told_to(c, from, false, out) || told_to(c, from, true, out));
}

void note_told(const struct cursor *c, const struct event *event)
{
    if (event->told) { /* untold.c tells what became of it */
        return;
    }
    struct str verb = phrase_words(event->verb, event->pass, event->screen, false);
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_READ_AS, event->span, "the moment was read as `%.*s %.*s`",
                 STR_ARG(cursor_text(c, event->subject.span)), STR_ARG(verb));
    diag_help(c->diags, diag, "if another moment is meant, name it so: who, and the verb");
}
