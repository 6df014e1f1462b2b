/* SPDX-License-Identifier: MIT */
/* offers: every word that could stand somewhere, from the tables of the language and the names of
 * the book. Whether it can stand here is for complete.c to try. Between the files of this room. */
#ifndef LANGUAGE_EDIT_OFFERS_H
#define LANGUAGE_EDIT_OFFERS_H

#include "language/edit/context.h"

struct candidate {
    struct str text, name, what;
    enum edit_class class;
    bool sure; /* a role: opens a sentence, though by itself it may look like a slip of the pen */
    bool when_typed; /* only once its first letters stand there: one of many ways to say a thing */
};
typedef VEC(struct candidate) candidate_list;
void offers_gather(const struct context *context, const char *const *checks, candidate_list *out);

#endif
