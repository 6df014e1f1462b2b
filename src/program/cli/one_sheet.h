/* SPDX-License-Identifier: MIT */
/* one_sheet: a sheet that comes out as one file. */
#ifndef PROGRAM_CLI_ONE_SHEET_H
#define PROGRAM_CLI_ONE_SHEET_H

#include "program/cli/naming.h"
#include "program/cli/works.h"

/* Reads the book, says what is wrong with it, and lets `work` write; a status. */
int sheet_run(const struct request *request, sheet_work *work);

/* A sheet is not written while there is an error in what it prints. The plays --play means, or all;
 * STATUS_FINE, or what was said: none of that name, an error in one of them or round them. */
int sheet_pick(const struct request *request, const struct input *input, struct picked *picked);
/* The same of a part of the book: an error in it or round the plays. */
int sheet_part(const struct request *request, const struct input *input,
               enum courtwright_part part);
/* Whether there is none: nothing is said. */
bool part_good(const struct courtwright *book, enum courtwright_part part);

/* --per-page as a handout takes it; false, and said, when it is another number. */
bool per_page_good(const struct request *request);
/* What the options every sheet has say. */
struct courtwright_handout sheet_options(const struct request *request);
/* Writes it where -o says, else to a file of this name; a status. */
int one_sheet(const struct request *request, struct input *input, const char *sheet,
              const struct courtwright_handout *options, const char *name);

/* The same of the playbook as one HTML file, which `-o` asks for by its end. */
int one_page(const struct request *request, struct input *input, const struct courtwright_web *web,
             const char *name);
bool page_wanted(const struct request *request);

/* Picks plays and writes one sheet of them, called after the play or the book and `word`; a status.
 */
int sheet_of_plays(const struct request *request, struct input *input, struct picked *picked,
                   const char *sheet, const char *word);

#define ROW_PAPER                                                                                  \
    {                                                                                              \
        "paper", 0, OPTION_CHOICE, FIELD(paper), "letter|a4", "else as the book says", 0, 0        \
    }
#define ROW_NAMES                                                                                  \
    {                                                                                              \
        "names", 0, OPTION_FLAG, FIELD(names), NULL, "names beside numbers", 0, 0                  \
    }
#define ROW_DATE                                                                                   \
    {                                                                                              \
        "date", 0, OPTION_LINE, FIELD(date), "TEXT", "stands at the foot of the page", 0, 0        \
    }

#endif
