/* SPDX-License-Identifier: MIT */
/* people: what players are called when nobody says a number: people.def. Inside words only. */
#ifndef LANGUAGE_WORDS_PEOPLE_H
#define LANGUAGE_WORDS_PEOPLE_H

#include "language/words/grammar.h"

enum person {
    PERSON_PLAYER,
    PERSON_HOLDER,
    PERSON_ACTOR,
    PERSON_PASSER,
    PERSON_THROWER,
    PERSON_SCREENER,
    PERSON_BIG,
    PERSON_OTHERS,
    PERSON_HIM,
    PERSON_TITLE,
    PERSON_HELP,
    PERSON_DEED
};
/* What he did above: nouns.c. */
enum deed {
    DEED_NOTHING,
    DEED_SCREENER,
    DEED_ROLLER,
    DEED_CUTTER,
    DEED_PASSER,
    DEED_THROWER,
    DEED_RECEIVER,
    DEED_SHOOTER,
    DEED_DRIVER,
    DEED_POST,
    DEED_POPPER,
    DEED_FLASHER
};
struct person_row {
    const char *words;
    enum person person;
    int number;
    enum deed deed;
};
/* Takes the longest row that fits, `our` before it; NULL: none, unmoved. */
const struct person_row *take_person(struct cursor *c);
/* Who that is by what stands above; ACTOR and HIM the caller knows. False: nothing tells. */
bool person_above(const struct cursor *c, const struct person_row *row, struct who *out);
/* low man x4, post player 5: past what stands before a number and names nobody else. */
void skip_title(struct cursor *c);

#endif
