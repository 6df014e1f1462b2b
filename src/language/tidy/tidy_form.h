/* SPDX-License-Identifier: MIT */
/* tidy_form: single lines in their one form. Between the files of this room. */
#ifndef LANGUAGE_TIDY_TIDY_FORM_H
#define LANGUAGE_TIDY_TIDY_FORM_H

#include "language/tidy/tidy.h"

void tidy_setting(struct strbuf *out, const struct setting_form *setting);
void tidy_defense(struct strbuf *out, const struct setting_form *setting);
void tidy_plan(struct strbuf *out, const struct plan_form *plan);
void tidy_row(struct strbuf *out, const struct row_form *row);
void tidy_note(struct strbuf *out, enum form_kind kind, const struct note_form *note);
void tidy_roster(struct strbuf *out, const struct form *form);
void tidy_heading(struct strbuf *out, const struct block *block);
/* A line that could not be read, as it stands; one that went on over several is joined. */
void tidy_raw(struct strbuf *out, const struct sources *sources, const struct line *line);

#endif
