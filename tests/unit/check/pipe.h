/* SPDX-License-Identifier: MIT */
/* pipe: a text taken through every room up to the checks. */
#ifndef TESTS_UNIT_CHECK_PIPE_H
#define TESTS_UNIT_CHECK_PIPE_H

#include "judge/check/check.h"

struct piped {
    struct sources sources;
    struct diags diags;
    const struct playbook *book;
    finding_list findings; /* of all plays of the text, in turn */
};
void pipe_text(struct arena *arena, struct str text, struct piped *piped);
/* The sound or the flawed play of a check, from the folder of twins; it must be there. */
struct str pipe_twin(struct arena *arena, const char *folder, const struct check_row *row,
                     const char *which);
size_t piped_count(const struct piped *piped,
                   const char *id); /* findings of a check, accepted or not */
/* All that was said, one a line, to be shown when a test fails. */
const char *piped_said(struct arena *arena, const struct piped *piped);

#endif
