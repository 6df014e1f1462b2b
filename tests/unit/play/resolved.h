/* SPDX-License-Identifier: MIT */
/* resolved: a text read and resolved in one call, for the suites of play and tell. */
#ifndef TESTS_UNIT_PLAY_RESOLVED_H
#define TESTS_UNIT_PLAY_RESOLVED_H

#include "floor/play/play.h"
#include "language/words/words.h"

struct resolved {
    struct sources sources;
    struct diags diags;
    struct playbook *book;
};
/* Everything lives in `arena`; `name` is the file's. */
void resolve_text(struct arena *arena, struct resolved *out, struct str name, struct str text);
/* "error play.side: which wing? …" one a line, with line numbers: those of this room. */
void print_diags(struct strbuf *out, const struct resolved *resolved);
/* All that was said, one a line, to be shown when a test fails. */
const char *resolved_said(struct arena *arena, const struct resolved *resolved);
bool has_diag(const struct resolved *resolved, const char *id);

#endif
