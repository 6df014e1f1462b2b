/* SPDX-License-Identifier: MIT */
/* say: everything the program says on standard error. */
#ifndef PROGRAM_CLI_SAY_H
#define PROGRAM_CLI_SAY_H

#include <stdarg.h>

#include "program/cli/command.h"

/* "courtwright draw: …" */
void say(const char *command, const char *format, ...) __attribute__((format(printf, 2, 3)));
/* The same, and where to look it up. */
void say_wrong_use(const char *command, const char *format, va_list args);
int wrong_use(const struct request *request, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* A text from outside, fit for a terminal: control characters become '?', those that turn a line
 * round their number, U+202E. Valid until the next four. */
const char *shown(const char *text);

/* What is shown of what is said about a book. */
struct telling {
    const char *only; /* a severity, an id, the first part of an id; NULL: everything */
    enum courtwright_severity least;
    /* And the notes of what was left out or read another way in the file of that name; or NULL. */
    const char *rewritten;
    bool names; /* players by name, where they have one */
    bool json;  /* lines on standard output, else words on standard error */
};
/* Something was written, and the status is that of a text in which something is wrong. */
void tell_written(const struct request *request, const struct courtwright *book);
/* Letters that could not be drawn, if there were any. */
void tell_missing(const struct request *request, const struct courtwright *book);
/* Shows what was said and gives the status it means. False words in `only` are wrong use. */
int tell(const struct request *request, const struct courtwright *book,
         const struct telling *telling);

#endif
