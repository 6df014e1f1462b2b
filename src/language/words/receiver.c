/* SPDX-License-Identifier: MIT */
/* receiver: to whom a pass or a hand-off goes that does not say it: to the one just dribbled at,
 * who shoots it, has just moved, is fronted, to the post; and which of two `him` is. */
#include "language/words/speech.h"

/* 1 dribbles at 2 and hands off: to the one just dribbled at. */
static bool hands_off_there(struct predicate *p)
{
    const sentence_list *here = p->c->here;
    const struct sentence *last = here && here->count > 0 ? &here->at[here->count - 1] : NULL;
    if (p->s->verb != VERB_HANDS_OFF || !last || last->verb != VERB_DRIBBLES_AT ||
        !same_who(&last->subject.at[0], &p->s->subject.at[0])) {
        return false;
    }
    p->s->object = last->object;
    return true;
}

/* throws the lob and 2 dunks it: to the one who shoots it. */
static bool passes_to_shooter(struct predicate *p)
{
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct phrase phrase;
    struct who who;
    take_mark(&trial, ',');
    bool found = p->c->speech && verb_row(p->s->verb)->task == VERB_PASS &&
                 take_words(&trial, "and") && person_read(&trial, &who) && !who_defends(&who) &&
                 !same_who(&who, &p->s->subject.at[0]) &&
                 phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase.verb == VERB_SHOOTS;
    cursor_back(&trial, mark);
    if (found) {
        p->s->object = who;
    }
    return found;
}

/* Said of the pass: back, right back. */
static bool goes_back(const struct predicate *p)
{
    for (const struct token *at = p->from; at < p->c->at; at++) {
        if (str_is(at->text, "back")) {
            return true;
        }
    }
    return false;
}

/* 5 jumps to the rim and 1 throws the lob: to the one who has just moved; throws it right back: to
 * the one it came from. */
static bool passes_to_mover(struct predicate *p)
{
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    const struct who *passer = &s->subject.at[0];
    enum verb_task task = verb_row(s->verb)->task;
    bool enters = s->place && (str_is(p->from->text, "enters") || str_is(p->from->text, "enter"));
    if (!c->speech || (task != VERB_PASS && task != VERB_EXCHANGE) || s->subject.count > 1 ||
        enters) { /* enters the lane: he goes there */
        return false;
    }
    above_list list = above_sentences(c, false);
    const struct sentence *last = list.count > 0 ? list.at[list.count - 1] : NULL;
    for (size_t i = list.count; i-- > 0 && goes_back(p) && s->object.kind == WHO_NONE;) {
        enum verb_task before = verb_row(list.at[i]->verb)->task;
        bool gave = (before == VERB_PASS || before == VERB_EXCHANGE) &&
                    same_who(&list.at[i]->object, passer) && list.at[i]->subject.count == 1;
        s->object = gave ? list.at[i]->subject.at[0] : s->object;
    }
    if (s->object.kind == WHO_NONE && last && last->subject.count == 1 && verb_runs(last->verb) &&
        who_is_one(&last->subject.at[0]) && !same_who(&last->subject.at[0], passer)) {
        s->object = last->subject.at[0];
    }
    if (s->object.kind != WHO_PLAYER) {
        s->object = (struct who){.kind = WHO_NONE};
        return false;
    }
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, s->verb_span,
                                 "to whom is not written: %d was taken", s->object.number);
    diag_help(c->diags, diag, "to have another, write the number: `%.*s`",
              STR_ARG(predicate_begun_to(p, STR("to 4"))));
    return true;
}

/* throws it in, a post entry: to the post, on the passer's side. */
static bool passes_to_post(struct predicate *p)
{
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    const struct token *last = c->at > p->from ? &c->at[-1] : p->from;
    bool in = str_is(last->text, "in") || str_is(last->text, "inside");
    bool post = false;
    for (const struct token *at = p->from; at < c->at; at++) {
        post = post || str_is(at->text, "post");
    }
    if (!c->speech || s->verb != VERB_PASSES || s->subject.count > 1 || s->place ||
        (!in && !post)) {
        return false;
    }
    struct place place = {.kind = PLACE_SPOT, .spot = SPOT_LOW_POST, .span = s->verb_span};
    s->object =
        (struct who){.kind = WHO_SPOT, .place = place_keep(c->arena, place), .span = s->verb_span};
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, s->verb_span,
                                 "to whom is not written: the low post was taken");
    diag_help(c->diags, diag, "to have another, write the number: `%.*s`",
              STR_ARG(predicate_begun_to(p, STR("to 5"))));
    return true;
}

/* x5 fronts 5, 1 lobs it over the top: to the only one who is fronted. */
static bool lobs_to_fronted(struct predicate *p)
{
    struct cursor *c = p->c;
    struct who fronted = {.kind = WHO_NONE}, man;
    if (!c->speech || verb_row(p->s->verb)->task != VERB_PASS || p->s->pass != PASS_LOB) {
        return false;
    }
    above_list list = above_sentences(c, true);
    for (size_t i = 0; i < list.count; i++) {
        const struct sentence *s = list.at[i];
        if (s->verb != VERB_FRONTS || s->subject.count != 1) {
            continue;
        }
        bool known = above_guarded(c, &s->subject.at[0], &man);
        man = s->object.kind != WHO_NONE ? s->object : man;
        bool other = fronted.kind != WHO_NONE && !same_who(&man, &fronted);
        if ((!known && s->object.kind == WHO_NONE) || man.kind != WHO_PLAYER || other) {
            return false;
        }
        fronted = man;
    }
    if (fronted.kind == WHO_NONE || same_who(&fronted, &p->s->subject.at[0])) {
        return false;
    }
    p->s->object = fronted;
    p->s->object.span = p->s->verb_span;
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, p->s->verb_span,
                 "to whom is not written: %d, who is fronted, was taken", fronted.number);
    diag_help(c->diags, diag, "to have another, write the number: `%.*s`",
              STR_ARG(predicate_begun_to(p, STR("to 4"))));
    return true;
}

bool receiver_above(struct predicate *p)
{
    return hands_off_there(p) || passes_to_shooter(p) || lobs_to_fronted(p) || passes_to_mover(p) ||
           passes_to_post(p);
}

/* Somebody who moves by himself, and not who passes now. */
static bool moves_alone(const struct sentence *s, const struct who *passer)
{
    return verb_runs(s->verb) && s->subject.count == 1 && who_is_one(&s->subject.at[0]) &&
           !same_who(&s->subject.at[0], passer);
}

/* 3 cuts, 4 fills, 1 hits him: the last one, and that is said. */
void note_him(struct predicate *p)
{
    struct cursor *c = p->c;
    struct str word = cursor_text(c, p->s->object.span);
    if ((!str_is(word, "him") && !str_is(word, "her")) || p->s->object.kind != WHO_PLAYER) {
        return;
    }
    above_list list = above_sentences(c, true);
    if (list.count < 2) {
        return;
    }
    const struct sentence *last = list.at[list.count - 1], *before = list.at[list.count - 2];
    const struct who *passer = &p->s->subject.at[0];
    if (!moves_alone(last, passer) || !moves_alone(before, passer) ||
        same_who(&last->subject.at[0], &before->subject.at[0]) ||
        !same_who(&last->subject.at[0], &p->s->object)) {
        return;
    }
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, p->s->object.span,
                 "`%.*s`: %d, who moved last, was taken", STR_ARG(word), p->s->object.number);
    diag_help(c->diags, diag, "to have another, write the number in its place: `3`");
}
