/* SPDX-License-Identifier: MIT */
/* situation: settings said in a few words: situation.c. Inside words only. */
#ifndef LANGUAGE_WORDS_SITUATION_H
#define LANGUAGE_WORDS_SITUATION_H

#include "language/words/reader.h"

/* Each: whether `line` says this setting; then `out` is the setting's own line. What it reports on
 * its way is heard by nobody. */
bool throw_in_said(struct reader *r, const struct line *line, struct line *out);
bool rules_said(struct reader *r, const struct line *line, struct line *out);
bool level_said(struct reader *r, const struct line *line, struct line *out);
bool half_said(struct reader *r, const struct line *line, struct line *out);
bool half_said(struct reader *r, const struct line *line, struct line *out);
bool clock_said(struct reader *r, const struct line *line, struct line *out);
bool score_said(struct reader *r, const struct line *line, struct line *out);
bool call_said(struct reader *r, const struct line *line, struct line *out);

#endif
