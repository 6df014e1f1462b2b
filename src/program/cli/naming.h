/* SPDX-License-Identifier: MIT */
/* naming: what the files that come out are called. */
#ifndef PROGRAM_CLI_NAMING_H
#define PROGRAM_CLI_NAMING_H

#include "program/cli/command.h"

struct input;
/* What came out so far. */
struct file_names {
    char **at;
    size_t count;
};
struct naming {
    const char *pattern; /* of this command, when the coach gives none: "{play}-{step}.svg" */
    char *given;         /* made of -o; NULL: nothing was given */
    struct file_names own, *shared; /* NULL: the command's own */
};
/* What stands for {play}, {step} and {player}; {n} counts what comes out. NULL: not known here. */
struct name_parts {
    const char *play, *step, *player;
};

/* What a name ends in behind its last dot, when that is letters alone: "svg"; else NULL. */
const char *naming_ending(const char *path);
/* Many: more than one will come out. False, and said, when -o cannot be understood. */
bool naming_start(struct naming *naming, const struct request *request, const char *pattern,
                  bool many);
/* "-", or a path; two that would be the same get -2, -3. Valid as long as the naming. */
const char *naming_next(struct naming *naming, const struct name_parts *parts);
/* Takes back the name given last: nothing was written there. */
void naming_drop(struct naming *naming);
void naming_free(struct naming *naming);
/* Whether it is a folder, or says that it is one by a slash at its end. */
bool naming_folder(const char *path);
void names_free(struct file_names *names);
/* --deps, of all of these; false, and said, when it cannot be written. */
bool names_deps(const struct file_names *names, const struct request *request,
                const struct input *input);
/* As naming_free, when all is written: first comes --deps, if `status` is fine and the names are
 * the command's own; the status. */
int naming_end(struct naming *naming, const struct request *request, const struct input *input,
               int status);

/* --format, or what the name given with -o ends in, or SVG with outlines; and how such a name ends.
 */
enum courtwright_format format_meant(const struct request *request);
const char *format_extension(enum courtwright_format format);

#endif
