/* SPDX-License-Identifier: MIT */
/* people: see people.h. */
#include "language/words/people.h"

#include "language/words/speech.h"

static const struct person_row people[] = {
#define PERSON(words, person, number, deed) {words, PERSON_##person, number, DEED_##deed},
#include "language/words/people.def"
#undef PERSON
};

static const struct person_row *longest_person(struct cursor *c)
{
    const struct person_row *found = NULL;
    const struct token *longest = c->at;
    struct index_rows rows = rows_here(c, INDEX_PEOPLE);
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        struct cursor trial = *c;
        if (take_str(&trial, str_of(people[*row].words)) && trial.at > longest) {
            longest = trial.at;
            found = &people[*row];
        }
    }
    c->at = longest;
    return found;
}

const struct person_row *take_person(struct cursor *c)
{
    struct cursor ours = *c;
    const struct person_row *found = longest_person(c);
    const struct person_row *owned = take_words(&ours, "our") ? longest_person(&ours) : NULL;
    if (owned && ours.at > c->at) { /* our point, our point guard */
        c->at = ours.at;
        return owned;
    }
    return found;
}

/* Who did it last, above: the passer, the screener. */
static bool last_of(const struct cursor *c, enum verb_task task, struct who *out)
{
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        if (verb_row(s->verb)->task == task) {
            *out = s->subject.at[0];
            const struct sentence *before = i > 0 ? list.at[i - 1] : NULL;
            bool either = task == VERB_SCREEN && before && verb_row(before->verb)->task == task &&
                          !same_who(&before->subject.at[0], out) && s->tie.word == TIE_NONE &&
                          !s->tie.then; /* two screens in one breath: of which of them? */
            return s->subject.count == 1 && who_is_one(out) && !either;
        }
    }
    return false;
}

/* 4 or 5: who set the latest screen. */
static bool big_of(const struct cursor *c, struct who *out)
{
    if (last_of(c, VERB_SCREEN, out)) {
        return out->kind == WHO_PLAYER && out->number >= 4;
    }
    size_t found = 0; /* the only one who stands inside */
    for (int number = 1; number <= c->players; number++) {
        struct who who = {.kind = WHO_PLAYER, .number = number, .span = cursor_span(c)};
        struct spot_stood at;
        if (above_stands(c, &who, &at) &&
            (at.spot == SPOT_BLOCK || at.spot == SPOT_LOW_POST || at.spot == SPOT_MID_POST ||
             at.spot == SPOT_HIGH_POST || at.spot == SPOT_DUNKER)) {
            *out = who;
            found++;
        }
    }
    return found == 1;
}

/* Who threw the ball in last; before any pass, who has it. */
static bool thrower_of(const struct cursor *c, struct who *out)
{
    above_list list = above_sentences(c, true);
    const struct sentence *first = NULL;
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        first = verb_row(s->verb)->task == VERB_PASS ? s : first;
        if (s->verb == VERB_INBOUNDS) {
            break;
        }
    }
    if (!first) {
        return above_holder(c, out);
    }
    *out = first->subject.at[0];
    return who_is_one(out) && (first->verb == VERB_INBOUNDS || !starts_inside(c, out));
}

bool person_above(const struct cursor *c, const struct person_row *row, struct who *out)
{
    struct span span = cursor_span(c);
    *out = (struct who){.kind = WHO_NONE, .span = span};
    switch (row->person) {
    case PERSON_PLAYER:
        *out = (struct who){.kind = WHO_PLAYER, .number = row->number, .span = span};
        return true;
    case PERSON_HOLDER:
        return above_holder(c, out);
    case PERSON_PASSER:
        return last_of(c, VERB_PASS, out) || above_holder(c, out);
    case PERSON_THROWER:
        return thrower_of(c, out);
    case PERSON_SCREENER:
        return last_of(c, VERB_SCREEN, out);
    case PERSON_BIG:
        return big_of(c, out);
    case PERSON_OTHERS:
        out->kind = WHO_EVERYONE_ELSE;
        return true;
    default:
        return false;
    }
}

static bool may_stand_before(const struct person_row *row, bool defender)
{
    switch (row->person) {
    case PERSON_HELP:
        return defender;
    case PERSON_BIG:
        return true;
    case PERSON_ACTOR:
    case PERSON_HIM:
    case PERSON_OTHERS:
    case PERSON_DEED:
        return false;
    default:
        return !defender;
    }
}

void skip_title(struct cursor *c)
{
    struct cursor trial = *c;
    const struct token *begin = cursor_next(c);
    if (!begin || begin->kind != TOKEN_WORD) { /* mostly the number itself */
        return;
    }
    const struct person_row *row = take_person(&trial);
    const struct token *next = row ? cursor_next(&trial) : NULL;
    if (!next || next->possessive || (next->kind != TOKEN_DEFENDER && !c->speech)) {
        return;
    }
    bool defender = next->kind == TOKEN_DEFENDER;
    if ((defender || next->kind == TOKEN_NUMBER) && may_stand_before(row, defender)) {
        c->at = trial.at;
    }
}
