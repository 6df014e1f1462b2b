/* SPDX-License-Identifier: MIT */
/* above_guards: whom a defender guards, and who guards one, as far as what stands above says. */
#include "language/words/grammar.h"

bool above_pressed(const struct cursor *c)
{
    const struct block *top = c->top;
    bool found = false;
    for (size_t i = 0; block_sets(top, SETTING_DEFENSE) && i < top->forms.count; i++) {
        const struct form *form = &top->forms.at[i];
        if (form->kind == FORM_SETTING && form->setting->setting == SETTING_DEFENSE) {
            found = form->setting->defense == DEFENSE_PRESS;
        }
    }
    return found;
}

bool above_zone(const struct cursor *c)
{
    const struct block *top = c->top;
    bool found = false;
    for (size_t i = 0; block_sets(top, SETTING_DEFENSE) && i < top->forms.count; i++) {
        const struct form *form = &top->forms.at[i];
        if (form->kind == FORM_SETTING && form->setting->setting == SETTING_DEFENSE) {
            enum defense_kind kind = form->setting->defense;
            found = kind != DEFENSE_NONE && kind != DEFENSE_MAN &&
                    !(kind == DEFENSE_PRESS && form->setting->zone.size == 0);
        }
    }
    return found;
}

bool above_guarded(const struct cursor *c, const struct who *defender, struct who *out)
{
    if (above_zone(c)) {
        return false;
    }
    if (defender->kind == WHO_DEFENDER_OF) {
        *out = (struct who){.kind = defender->role.size > 0 ? WHO_ROLE : WHO_PLAYER,
                            .number = defender->number,
                            .role = defender->role,
                            .span = defender->span};
        return true;
    }
    *out = (struct who){.kind = WHO_PLAYER, .number = defender->number, .span = defender->span};
    for (size_t i = 0; c->top && i < c->top->forms.count; i++) {
        const struct form *form = &c->top->forms.at[i];
        if (form->kind == FORM_STANDING && same_who(&form->standing->defender, defender)) {
            *out = form->standing->player;
        }
    }
    above_list list = above_sentences(c, true);
    for (size_t i = 0; i < list.count; i++) {
        if (list.at[i]->verb == VERB_GUARDS && same_who(&list.at[i]->subject.at[0], defender)) {
            *out = list.at[i]->object;
        }
    }
    out->span = defender->span;
    return true;
}

struct who above_defender_of(const struct cursor *c, const struct who *player, struct span span)
{
    struct who found = {
        .kind = WHO_DEFENDER_OF, .number = player->number, .role = player->role, .span = span};
    for (int number = 1; number <= c->players; number++) {
        struct who defender = {.kind = WHO_DEFENDER, .number = number, .span = span}, man;
        bool his = above_guarded(c, &defender, &man) && same_who(&man, player);
        if (his && (found.kind == WHO_DEFENDER_OF || number != player->number)) {
            found = defender; /* x1 guards 3: he, and not x3, of whom nothing is said */
        }
    }
    return found;
}

/* The player is that defender's own, as far as words say. */
static bool own_man(const struct cursor *c, const struct who *defender, const struct who *man)
{
    struct who own;
    if (!above_guarded(c, defender, &own) || !same_who(&own, man)) {
        return false;
    }
    for (size_t i = 0; c->top && i < c->top->forms.count; i++) { /* given to somebody else */
        const struct form *form = &c->top->forms.at[i];
        if (form->kind == FORM_STANDING && same_who(&form->standing->player, man) &&
            !same_who(&form->standing->defender, defender)) {
            return false;
        }
    }
    above_list list = above_sentences(c, true);
    for (size_t i = 0; i < list.count; i++) { /* whose man he is now hangs on the run */
        enum verb verb = list.at[i]->verb;
        if (verb == VERB_GUARDS || verb == VERB_SWITCHES || verb == VERB_ROTATES ||
            verb == VERB_RECOVERS) {
            return false;
        }
    }
    return true;
}

void above_drop_own_man(const struct cursor *c, const struct who *defender, enum verb verb,
                        struct who *object)
{
    struct slot slots[SLOTS_MOST];
    bool guard = verb_row(verb)->task == VERB_GUARD && verb_slots(verb, slots) > 0;
    if (guard && !slots[0].needed &&
        verb != VERB_TRAPS && /* a trap without a name is of the ball */
        who_defends(defender) && object->kind != WHO_NONE && !c->branch &&
        own_man(c, defender, object)) {
        *object = (struct who){.kind = WHO_NONE};
    }
}
