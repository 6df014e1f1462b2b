/* SPDX-License-Identifier: MIT */
/* holder: who has the ball, and who `he` and `him` are, by what is written above: for sentences
 * that leave out who acts. Follows the order of the lines, not of the floor; where the words do not
 * tell, nobody is found and nothing is guessed. */
#include "language/words/grammar.h"

const struct setting_form *setting_of(const struct block *top, enum setting setting)
{
    const struct setting_form *found = NULL;
    for (size_t i = 0; block_sets(top, setting) && i < top->forms.count; i++) {
        const struct form *form = &top->forms.at[i];
        found =
            form->kind == FORM_SETTING && form->setting->setting == setting ? form->setting : found;
    }
    return found;
}

bool above_full_floor(const struct cursor *c)
{
    const struct setting_form *floor = setting_of(c->top, SETTING_FLOOR);
    const struct setting_form *defense = setting_of(c->top, SETTING_DEFENSE);
    const struct setting_form *start = setting_of(c->top, SETTING_START);
    bool full = (floor && floor->number == 1) || (defense && defense->defense == DEFENSE_PRESS);
    for (size_t i = 0; start && i < start->placings.count; i++) {
        const struct placing *placing = &start->placings.at[i];
        full = full ||
               (placing->kind == PLACING_FORMATION ? formation_at(placing->formation)->full_floor
                                                   : placing->place && placing->place->backcourt);
    }
    return full;
}

static struct who player(int number, struct span span)
{
    return (struct who){.kind = WHO_PLAYER, .number = number, .span = span};
}

/* The one who stands out of bounds, else 1. */
static struct who by_start(const struct block *top)
{
    const struct setting_form *start = setting_of(top, SETTING_START);
    struct who found = player(1, SPAN_NONE);
    for (size_t i = 0; start && i < start->placings.count; i++) {
        const struct placing *placing = &start->placings.at[i];
        if (placing->kind == PLACING_WHO && placing->place && placing->place->kind == PLACE_OUT) {
            return placing->who;
        }
        for (int n = 0; placing->kind == PLACING_FORMATION && n < 5; n++) {
            const struct formation_spot *spot = &formation_at(placing->formation)->at[n];
            found = spot->ball || spot->out_of_bounds ? player(n + 1, SPAN_NONE) : found;
        }
    }
    return found;
}

static struct who at_start(const struct block *top)
{
    static const struct who nobody = {.kind = WHO_NONE};
    const struct setting_form *ball = setting_of(top, SETTING_BALL);
    if (!top || (top->kind != BLOCK_PLAY && top->kind != BLOCK_DRILL)) {
        return nobody;
    }
    if (ball) {
        return ball->ball;
    }
    return top->kind == BLOCK_DRILL ? nobody : by_start(top);
}

/* 5 screens for 1 after 1 passes to 4: then it is with 4, if it was still with 1. */
static void after_moment(const struct event *event, struct who *holder)
{
    bool passed = event && event->kind == EVENT_VERB && who_is_one(&event->object) &&
                  verb_row(event->verb)->task == VERB_PASS && same_who(holder, &event->subject);
    *holder = passed ? event->object : *holder;
}

static void after_sentence(const struct sentence *s, struct who *holder)
{
    enum verb_task task = verb_row(s->verb)->task;
    if (s->tie.word == TIE_AFTER) {
        after_moment(s->tie.event, holder);
    }
    if (task == VERB_PASS || task == VERB_EXCHANGE) {
        *holder = s->object;
    } else if (task == VERB_SHOOT) {
        *holder = (struct who){.kind = WHO_BALL}; /* in the air */
    } else if (s->verb == VERB_REBOUNDS && holder->kind == WHO_BALL && s->subject.count == 1) {
        *holder = s->subject.at[0];
    }
}

static void after_forms(const struct block *block, struct who *holder)
{
    for (size_t i = 0; block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SENTENCE) {
            after_sentence(form->sentence, holder);
        } else if (form->kind == FORM_RUN || form->kind == FORM_REPEAT || form->kind == FORM_SAME ||
                   form->kind == FORM_BROKEN) {
            *holder = (struct who){.kind = WHO_NONE};
        }
    }
}

static bool goes_on_here(const struct block *branch)
{
    for (size_t i = 0; i < branch->forms.count; i++) {
        if (branch->forms.at[i].kind == FORM_CONTINUE) {
            return true;
        }
    }
    return false;
}

/* A step that is over: its own sentences, and the branch from which the next step goes on. */
static void after_step(const struct block *step, struct who *holder)
{
    const struct block *branch = NULL;
    after_forms(step, holder);
    for (size_t i = 0; i < step->forms.count; i++) {
        const struct form *form = &step->forms.at[i];
        bool is_branch = form->kind == FORM_BLOCK &&
                         (form->block->kind == BLOCK_READ || form->block->kind == BLOCK_OPTION);
        if (is_branch && (!branch || (goes_on_here(form->block) && !goes_on_here(branch)))) {
            branch = form->block;
        }
    }
    after_forms(branch, holder);
}

bool above_holder(const struct cursor *c, struct who *out)
{
    const struct block *top = c->top;
    *out = at_start(top);
    for (size_t i = 0; top && i < top->forms.count; i++) {
        const struct form *form = &top->forms.at[i];
        if (form->kind == FORM_BLOCK && form->block->kind == BLOCK_STEP && form->block != c->step) {
            after_step(form->block, out);
        }
    }
    if (c->step && c->step->after.size > 0) {
        *out = (struct who){.kind = WHO_NONE};
    }
    after_forms(top, out);
    after_forms(c->step != top ? c->step : NULL, out);
    after_forms(c->branch, out);
    for (size_t i = 0; c->here && i < c->here->count; i++) {
        after_sentence(&c->here->at[i], out);
    }
    return who_is_one(out);
}

bool above_holds(const struct cursor *c, const struct who *who)
{
    struct who holder;
    return above_holder(c, &holder) && same_who(&holder, who);
}

/* x5 fronts: his own man, whom he keeps from the ball. */
static bool kept_from(const struct cursor *c, const struct sentence *s, struct who *man)
{
    bool keeps = s->verb == VERB_FRONTS || s->verb == VERB_DENIES || s->verb == VERB_OVERPLAYS;
    return keeps && s->subject.count == 1 && s->object.kind == WHO_NONE &&
           above_guarded(c, &s->subject.at[0], man);
}

/* Attackers of a sentence that are not `not`, added to those in `out`. */
static void add_named(const struct cursor *c, const struct sentence *s, const struct who * not,
                      who_list *out)
{
    struct arena *arena = c->arena;
    struct who named[8];
    size_t count = 0;
    for (size_t i = 0; i < s->subject.count && count < 5; i++) {
        named[count++] = s->subject.at[i];
    }
    count += !kept_from(c, s, &named[count]) ? 0 : 1;
    named[count++] = s->object;
    for (size_t i = 0; i < count; i++) {
        bool known = !who_is_one(&named[i]) || (not &&same_who(&named[i], not ));
        for (size_t k = 0; k < out->count; k++) {
            known = known || same_who(&named[i], &out->at[k]);
        }
        if (!known) {
            VEC_PUSH(arena, out, named[i]);
        }
    }
}

/* 2 goes beside 5, 3 goes beside 5: two who came to one player, and either can be meant. */
static bool both_came(const struct sentence *first, const struct sentence *second)
{
    const struct place *a = first->place, *b = second->place;
    return verb_row(first->verb)->task == VERB_MOVE && verb_row(second->verb)->task == VERB_MOVE &&
           !same_who(&first->subject.at[0], &second->subject.at[0]) && a && b &&
           a->kind == b->kind && who_is_one(&a->who) && same_who(&a->who, &b->who);
}

bool above_him(const struct cursor *c, const struct who * not, struct who *out)
{
    above_list list = above_sentences(c, true);
    who_list named = {NULL, 0, 0};
    if (c->about && (!c->here || c->here->count == 0) && !(not &&same_who(c->about, not ))) {
        *out = *c->about;
        out->span = SPAN_NONE; /* if x4 helps, 1 hits him: no word names 4 */
        return !c->about_two;
    }
    if (c->told && !(not &&same_who(c->told, not ))) {
        *out = *c->told;
        out->span = SPAN_NONE;
        return true;
    }
    const struct sentence *last = list.count > 0 ? list.at[list.count - 1] : NULL;
    if (list.count > 1 && both_came(list.at[list.count - 2], last)) {
        return false;
    }
    bool moved = last && verb_runs(last->verb) && last->subject.count == 1 &&
                 who_is_one(&last->subject.at[0]);
    if (moved &&
        !(not &&same_who(&last->subject.at[0], not ))) { /* 3 curls off 5: of the two it is 3 */
        *out = last->subject.at[0];
        return true;
    }
    for (size_t i = list.count; i-- > 0 && named.count == 0;) {
        add_named(c, list.at[i], not, &named);
    }
    if (named.count == 1) {
        *out = named.at[0];
    }
    return named.count == 1;
}
