/* SPDX-License-Identifier: MIT */
/* files: what is read and written, and every way that can go wrong. */
#ifndef PROGRAM_CLI_FILES_H
#define PROGRAM_CLI_FILES_H

#include <stdio.h>
#include <sys/types.h>

#include "program/cli/command.h"

void *must(void *block); /* gives `block`, or says that memory ran out and ends the program */
char *format_text(const char *format, ...)
    __attribute__((format(printf, 1, 2), nonnull(1))); /* to be freed */

struct bytes {
    char *at;
    size_t size;
};

/* A book and where it came from. */
struct input {
    const char *path; /* as given; "-": standard input */
    char *prefix;     /* what stands before the file's name: "plays/", or "" */
    char *folder;     /* the book's own, real path; NULL when it cannot be told */
    struct bytes text;
    struct {
        dev_t device;
        ino_t inode;
    } * read; /* what was read, so as never to be written */
    size_t read_count;
    const char *beside; /* another file that was read, for --deps; or NULL */
    int jobs;           /* how many threads may work side by side; 0: one a processor */
    struct courtwright *book;
};

/* Reads and loads request->words[index]; says what is wrong and gives false (status 3). */
bool input_load(struct input *input, const struct request *request, int index);
/* Another plain file that what is written is made of; says what is wrong and gives false. */
bool input_read_beside(struct input *input, const struct request *request, const char *path,
                       struct bytes *bytes);
void input_free(struct input *input);

/* One file being written: beside its place, then moved there; `-` is standard output. */
struct output {
    const char *command;
    char *path;   /* as shown */
    char *target; /* where it goes: links followed */
    char *beside; /* the unfinished one; NULL when it is written straight (a pipe, a device, `-`) */
    FILE *file;
    struct courtwright_writer writer;
    int error;
    bool precious; /* it takes the place of what was read: on the disk before it does */
    bool linked;   /* the file has other names, which must go on naming it */
};

/* False, and said, when it cannot be written or is what was read (unless `over_input`). */
bool output_open(struct output *output, const struct input *input, const char *command,
                 const char *path, bool over_input);
bool output_finish(struct output *output); /* all or nothing */
void output_drop(struct output *output);
/* Ends what the library has written: keeps it and prints its name, or drops it and says why, of
 * what; a status. */
int output_close(struct output *output, enum courtwright_status written, const char *of,
                 const char *path);

#endif
