/* SPDX-License-Identifier: MIT */
/* pick: which plays and diagrams are meant. */
#ifndef PROGRAM_CLI_PICK_H
#define PROGRAM_CLI_PICK_H

#include "program/cli/files.h"

struct picked {
    size_t *plays;
    size_t count;
    size_t left_out; /* broken ones that would have been meant */
};

/* The plays --play means, or all; a broken one is left out. False, and said, when there is none of
 * that name. */
bool pick_plays(struct picked *picked, const struct request *request,
                const struct courtwright *book);
/* Says what there is to say of the book, then picks. The status of what was said; nothing is picked
 * (plays is NULL) where that or the picking ends it. */
int tell_and_pick(struct picked *picked, const struct request *request,
                  const struct courtwright *book);
/* Says why nothing was `done` ("drawn") of what was picked; the status. */
int none_picked(const struct picked *picked, const struct request *request,
                const struct courtwright *book, const char *done);
void picked_free(struct picked *picked);
/* Whether --step ("2" with its reads, "2a", "2 alone"; all when not given) means this diagram. */
bool step_picked(const struct request *request, const struct courtwright_diagram *diagram);

/* The date of SOURCE_DATE_EPOCH as ISO 8601, or NULL. */
const char *epoch_date(void);

#endif
