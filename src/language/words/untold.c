/* SPDX-License-Identifier: MIT */
/* untold: a moment that no sentence of its step tells: `when 1 dribbles at 2, 2 back cuts`, `while
 * 1 brings the ball up to the top, 3 runs wide`. Where it says all that a sentence of it needs, who
 * does what, and to whom or where to, it becomes that sentence, in front of what waits for it, with
 * a note. Takes a block whose lines have all been read: what a later line tells is told. A moment
 * that says less stays an error of the play, and so does one that cannot be: a pass of somebody who
 * has not got the ball. */
#include <string.h>

#include "language/words/grammar.h"
#include "language/words/reader.h"

static bool plays_out(const struct block *block)
{
    return block && (block->kind == BLOCK_PLAY || block->kind == BLOCK_DRILL ||
                     block->kind == BLOCK_ACTION || block->kind == BLOCK_STEP ||
                     block->kind == BLOCK_READ || block->kind == BLOCK_OPTION);
}

/* A line in it may tell what its words do not show: an action, a step said again, a broken one. */
static bool hides(const struct block *block)
{
    for (size_t i = 0; block && i < block->forms.count; i++) {
        enum form_kind kind = block->forms.at[i].kind;
        if (kind == FORM_RUN || kind == FORM_REPEAT || kind == FORM_SAME || kind == FORM_BROKEN) {
            return true;
        }
    }
    return false;
}

static bool catches(const struct event *event)
{
    return event->kind == EVENT_CATCHES || event->kind == EVENT_HAS_BALL;
}

/* The sentence is one the moment may be of, by its words; who stands on a spot is not asked. */
bool event_of(const struct sentence *s, const struct event *event)
{
    enum verb_task task = verb_row(s->verb)->task;
    const struct who *object = &event->object;
    if (catches(event)) {
        bool to = s->object.kind == WHO_SPOT || same_who(&s->object, &event->subject);
        return (task == VERB_PASS || task == VERB_EXCHANGE) && to &&
               (object->kind == WHO_NONE || acts_in(s, object));
    }
    bool same = s->verb == event->verb || verb_in_family(s->verb, event->family);
    bool fits = object->kind == WHO_NONE || s->object.kind == WHO_SPOT ||
                same_who(&s->object, object) || (s->object2 && same_who(s->object2, object));
    bool anyone = s->subject.count > 0 && s->subject.at[0].kind != WHO_PLAYER; /* everyone else */
    return same && fits && (anyone || acts_in(s, &event->subject));
}

/* All that the verb needs is said; what he has to have done before is not looked for. */
static bool says_enough(const struct cursor *c, const struct sentence *s)
{
    const struct verb_row *row = verb_row(s->verb);
    const char *needs = row->needs;
    bool whom = !strchr(needs, 'W') || who_is_one(&s->object);
    bool where = !strchr(needs, 'P') || s->place;
    bool screened = row->task != VERB_USE || above_screened(c, &s->subject.at[0], &s->object);
    bool out = !strchr(needs, 'O') || s->verb == VERB_INBOUNDS; /* who has the ball is there */
    bool set = !strchr(needs, 'S') || above_has_screened(c, &s->subject.at[0], 1);
    return row->task != VERB_HOLD && whom && where && screened && out && set &&
           !strchr(needs, 'T') && s->verb != VERB_REBOUNDS &&
           !(s->object.kind != WHO_NONE && acts_in(s, &s->object));
}

/* 1 screens for 3, and slips as 3 comes to the top: off the screen that waits for 3. */
static void off_the_screen(const struct cursor *c, struct sentence *s)
{
    struct who screener, second = {.kind = WHO_NONE};
    bool several = false;
    bool moves = verb_row(s->verb)->task == VERB_MOVE && s->place && s->path == PATH_NONE &&
                 (s->verb == VERB_GOES || s->verb == VERB_CUTS || s->verb == VERB_LIFTS);
    if (moves && above_waiting_screen(c, &s->subject.at[0], &screener, &second, &several) &&
        !several) {
        s->verb = VERB_COMES;
        s->object = screener;
        s->object2 = second.kind == WHO_NONE ? NULL : who_keep((struct cursor *)c, second);
    }
}

/* shoots off 1's pass: who does something with the ball then is who it is passed to. */
static void pass_to_tied(struct sentence *s, const struct sentence *tied)
{
    bool pass = verb_row(s->verb)->task == VERB_PASS && s->object.kind == WHO_NONE;
    bool needs = strchr(verb_row(tied->verb)->needs, 'B') != NULL && tied->subject.count == 1;
    if (pass && needs && tied->subject.at[0].kind == WHO_PLAYER &&
        !acts_in(tied, &s->subject.at[0])) {
        s->object = tied->subject.at[0];
    }
}

/* The moment as a sentence. */
static struct sentence as_sentence(const struct cursor *c, const struct event *event,
                                   const struct sentence *tied)
{
    struct sentence s = {
        .verb = event->verb, .pass = event->pass, .screen = event->screen, .object = event->object};
    if (event->told && !catches(event)) {
        s = *event->told;
    } else if (catches(event)) { /* 2 catches it from 1 */
        s.verb = VERB_PASSES;
        s.object = event->subject;
        s.place = event->told ? event->told->place : NULL;
        VEC_PUSH(c->arena, &s.subject, event->object);
    } else {
        VEC_PUSH(c->arena, &s.subject, event->subject);
    }
    pass_to_tied(&s, tied);
    s.span = s.verb_span = event->span;
    s.tie = (struct tie){.word = TIE_NONE, .span = SPAN_NONE};
    return s;
}

/* Who has the ball where the form stands. */
static bool holder_at(const struct cursor *c, struct block *block, size_t at, struct who *out)
{
    size_t count = block->forms.count;
    block->forms.count = at;
    bool known = above_holder(c, out);
    block->forms.count = count;
    return known;
}

/* Whoever next does something with the ball is the one who has it by then. */
static bool goes_on_with(const struct block *block, size_t at, const struct sentence *s)
{
    enum verb_task task = verb_row(s->verb)->task;
    if (task != VERB_PASS && task != VERB_EXCHANGE && task != VERB_SHOOT) {
        return true;
    }
    for (size_t i = at; i < block->forms.count; i++) {
        const struct sentence *next =
            block->forms.at[i].kind == FORM_SENTENCE ? block->forms.at[i].sentence : NULL;
        if (next && next->verb == VERB_REBOUNDS) {
            return true;
        }
        if (next && strchr(verb_row(next->verb)->needs, 'B')) {
            return task != VERB_SHOOT && acts_in(next, &s->object);
        }
    }
    return true;
}

static bool can_be(const struct cursor *c, struct block *block, size_t at, const struct sentence *s)
{
    struct who holder;
    bool ball = strchr(verb_row(s->verb)->needs, 'B') != NULL;
    if (!ball) {
        return true;
    }
    return holder_at(c, block, at, &holder) && same_who(&holder, &s->subject.at[0]) &&
           goes_on_with(block, at, s);
}

/* Somebody would go two ways at once: 1 dribbles to the wing while 1 moves to the top. */
static bool at_once(const struct sentence *tied, const struct event *event,
                    const struct sentence *s)
{
    enum verb_task task = verb_row(s->verb)->task;
    bool behind = event == tied->tie.event &&
                  (tied->tie.word == TIE_AFTER || tied->tie.word == TIE_SECONDS_AFTER);
    bool goes = task != VERB_PASS && task != VERB_EXCHANGE && task != VERB_SHOOT;
    return goes && !behind && acts_in(tied, &s->subject.at[0]);
}

/* when 4 catches, and nobody has passed to 4: the pass of whoever has the ball there. */
static const struct event *caught_from(const struct cursor *c, struct block *block, size_t at,
                                       const struct event *event)
{
    struct who holder;
    struct str name = cursor_text(c, event->subject.span);
    bool named = !str_equal_fold(name, STR("he")) && !str_equal_fold(name, STR("she"));
    bool known = named && catches(event) && event->object.kind == WHO_NONE &&
                 event->subject.kind == WHO_PLAYER && holder_at(c, block, at, &holder) &&
                 holder.kind == WHO_PLAYER && holder.number != event->subject.number;
    if (!known) {
        return event;
    }
    struct event *from = arena_new(c->arena, struct event);
    *from = *event;
    from->object = holder;
    return from;
}

void note_pass_brought(const struct cursor *c, struct span span, int from, int to)
{
    struct diag *pass =
        diag_add(c->diags, DIAG_TEXT_VERB_TAKEN, span,
                 "nobody passes to %d: `%d passes to %d` was put in front", to, from, to);
    diag_help(c->diags, pass, "write the pass as a sentence of its own where another is meant");
}

static void note_brought(const struct cursor *c, const struct event *event, const char *taken)
{
    if (catches(event)) {
        note_pass_brought(c, event->span, event->object.number, event->subject.number);
        return;
    }
    if (taken) {
        diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, event->span, "no place is written: %s was taken",
                 taken);
    }
    struct str said = cursor_text(c, event->span);
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_VERB_TAKEN, event->span,
                 "no sentence tells this moment: `%.*s` was put in front as one", STR_ARG(said));
    diag_help(c->diags, diag, "write it as a sentence of its own where another is meant");
}

static void insert(struct reader *r, struct block *block, size_t at, const struct sentence *s)
{
    const struct line *line = block->forms.at[at].line;
    struct line bare = line_part(line, 0, line->count);
    reader_add_sentence(r, block, line_keep(r, bare), s);
    struct form form = block->forms.at[block->forms.count - 1];
    memmove(&block->forms.at[at + 1], &block->forms.at[at],
            (block->forms.count - 1 - at) * sizeof form);
    block->forms.at[at] = form;
    r->sentences++;
}

/* All sentences that the one in hand may wait for, without itself. */
static above_list others(const struct cursor *c, const struct sentence *one)
{
    bool beside = c->step && (c->step->tie.word != TIE_NONE || c->step->after.size > 0);
    above_list all = above_sentences(c, beside), list = {NULL, 0, 0};
    for (size_t i = 0; i < all.count; i++) {
        if (all.at[i] != one) {
            VEC_PUSH(c->arena, &list, all.at[i]);
        }
    }
    return list;
}

/* A sentence of this block tells it; most moments are told there, and nothing more is asked. */
static bool told_in(const struct block *block, const struct sentence *one,
                    const struct event *event)
{
    for (size_t i = 0; block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SENTENCE && form->sentence != one &&
            event_of(form->sentence, event)) {
            if (catches(event) && event->told && !form->sentence->place) {
                form->sentence->place = event->told->place; /* when 5 catches at the elbow */
            }
            return true;
        }
    }
    return false;
}

/* One that waits for this tells it in other words: its moment then. */
static const struct event *moment_by(const struct cursor *c, const struct event *event,
                                     const struct sentence *of)
{
    struct event moment = *event;
    moment_of(&moment, of, false);
    moment.object = (struct who){.kind = WHO_NONE};
    moment.told = NULL;
    if (of->span.begin != event->span.begin) {
        note_told(c, &moment);
    }
    struct event *kept = arena_new(c->arena, struct event);
    *kept = moment;
    return kept;
}

/* x1 goes over while x4 drops: what two defenders are told to do. */
static bool both_defend(const struct sentence *tied, const struct event *event)
{
    return tied->tie.event == event && tied->tie.word == TIE_WHILE && event->kind == EVENT_VERB &&
           verb_row(event->verb)->task == VERB_GUARD && event->subject.kind == WHO_DEFENDER &&
           who_defends(&tied->subject.at[0]);
}

/* when x1 doubles 5, as soon as x4 denies: what no defender does by rule alone. Help, closing out
 * and the way round a screen come about by themselves. */
static bool done_on_purpose(const struct event *event)
{
    static const enum verb verbs[] = {VERB_DOUBLES, VERB_TRAPS,  VERB_HEDGES,   VERB_STUNTS,
                                      VERB_DENIES,  VERB_FRONTS, VERB_OVERPLAYS};
    bool found = false;
    for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++) {
        found = found || event->verb == verbs[i];
    }
    return found && event->kind == EVENT_VERB && who_defends(&event->subject);
}

/* A double comes when who is doubled has the ball: not before the pass to him is there. */
static void comes_behind_pass(const struct block *block, size_t at, struct sentence *s)
{
    bool comes = s->verb == VERB_DOUBLES || s->verb == VERB_TRAPS || s->verb == VERB_STUNTS;
    const struct form *before = at > 0 ? &block->forms.at[at - 1] : NULL;
    bool pass = before && before->kind == FORM_SENTENCE &&
                verb_row(before->sentence->verb)->task == VERB_PASS;
    if (comes && pass) {
        s->tie.then = true;
    }
}

/* The moment of the form at `at`: kept, of another sentence, or brought: then true. */
static bool settle(struct reader *r, struct block *block, size_t at, const struct event **event)
{
    const struct form *form = &block->forms.at[at];
    struct cursor c = reader_cursor(r, form->line, 0);
    bool waited = event == &form->sentence->tie.event; /* until 1 has it: a pass of another time */
    const struct event *e = waited && *event ? caught_from(&c, block, at, *event) : *event;
    bool happens = e && (e->kind == EVENT_VERB || catches(e)) &&
                   (who_is_one(&e->subject) || both_defend(form->sentence, e) ||
                    (waited && done_on_purpose(e))) &&
                   (e->kind == EVENT_VERB || who_is_one(&e->object));
    if (!happens || told_in(block, form->sentence, *event) ||
        told_in(r->step, form->sentence, *event) || told_in(r->top, form->sentence, *event) ||
        told_in(block, form->sentence, e) || told_in(r->step, form->sentence, e) ||
        told_in(r->top, form->sentence, e)) {
        return false;
    }
    above_list list = others(&c, form->sentence);
    for (size_t i = 0; i < list.count; i++) { /* of a step that goes on beside this one */
        if (event_of(list.at[i], e)) {
            return false;
        }
    }
    struct sentence told = as_sentence(&c, e, form->sentence), anywhere = told;
    const struct sentence *of = told_among(&list, &told);
    anywhere.place = NULL;
    if (!of) {
        off_the_screen(&c, &told);
    }
    if (of && e->told) {
        *event = moment_by(&c, e, of);
    }
    bool nowhere = !of && !told.place && strchr(verb_row(told.verb)->needs, 'P');
    const char *taken = nowhere ? unsaid_place(&c, &told) : NULL; /* after 2 cuts through */
    if (of || told_among(&list, &anywhere) || !says_enough(&c, &told) ||
        at_once(form->sentence, e, &told) || !can_be(&c, block, at, &told)) {
        return false;
    }
    note_brought(&c, e, taken);
    if (told.verb != e->verb && e->kind == EVENT_VERB) {
        *event = moment_by(&c, e, &told);
    }
    comes_behind_pass(block, at, &told);
    insert(r, block, at, &told);
    return true;
}

/* 4 passes in to 3, then comes off a screen from 5: a screen that was taken for one on the ball,
 * and 4 has it no longer. Where the line says `ball`, it is left to be told. */
static void off_the_ball(const struct reader *r, struct block *block, size_t at)
{
    static const char *const words[] = {"ball", "on-ball", "onball", "ball-screen", NULL};
    const struct form *form = &block->forms.at[at];
    struct sentence *s = form->sentence;
    struct who holder;
    if (s->verb != VERB_SCREENS || s->screen != SCREEN_BALL || s->object.kind != WHO_PLAYER) {
        return;
    }
    struct cursor c = reader_cursor(r, form->line, 0);
    bool gone = holder_at(&c, block, at, &holder) && !same_who(&holder, &s->object);
    bool off = false;
    for (size_t i = 0; i < form->line->count; i++) {
        off = off || token_is_word(&form->line->tokens[i], "off");
        gone = gone && !token_is_among(&form->line->tokens[i], words);
    }
    s->screen = gone && off ? SCREEN_PLAIN : s->screen;
}

void moments_settle(struct reader *r)
{
    struct block *block = reader_block(r);
    if (!plays_out(block) || hides(block) || hides(r->step) || hides(r->top)) {
        return;
    }
    for (size_t i = 0; i < block->forms.count; i++) {
        struct sentence *s =
            block->forms.at[i].kind == FORM_SENTENCE ? block->forms.at[i].sentence : NULL;
        if (s && settle(r, block, i, &s->tie.event)) {
            s = block->forms.at[++i].sentence;
        }
        if (s && settle(r, block, i, &s->until)) {
            i++;
        }
    }
    for (size_t i = 0; i < block->forms.count; i++) {
        if (block->forms.at[i].kind == FORM_SENTENCE) {
            off_the_ball(r, block, i);
        }
    }
}
