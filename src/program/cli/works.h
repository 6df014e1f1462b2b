/* SPDX-License-Identifier: MIT */
/* works: what the commands for paper write of a book that is loaded, each with the options of the
 * request; a status. What is wrong with the book is said before, by sheet_run. */
#ifndef PROGRAM_CLI_WORKS_H
#define PROGRAM_CLI_WORKS_H

#include "program/cli/pick.h"

typedef int sheet_work(const struct request *request, struct input *input, struct picked *picked);

sheet_work write_handouts, write_coach, write_fill_in, write_card, write_practices, write_tally,
    write_trend, write_book;

#endif
