/* SPDX-License-Identifier: MIT */
/* files: what is read and written, and every way that can go wrong. */
#ifndef PROGRAM_CLI_FILES_H
#define PROGRAM_CLI_FILES_H

#include <stdarg.h>
#include <stdio.h>
#include <sys/stat.h>
#include <sys/types.h>

#include "program/cli/command.h"

void *must(void *block); /* gives `block`, or says that memory ran out and ends the program */
char *format_text(const char *format, ...)
    __attribute__((format(printf, 1, 2), nonnull(1))); /* to be freed */
char *format_args(const char *format, va_list args) __attribute__((format(printf, 1, 0)));

/* How much of a path is its folder, with the slash behind it; 0: it names none. */
size_t folder_size(const char *path);
/* The folder with that slash, or "." where the path names none; to be freed. */
char *folder_named(const char *path);

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
    /* Told of each include that was looked for: what came of it, and what it is called and holds
     * where it was found; or NULL. */
    void (*looked_for)(void *ctx, const char *from, const char *path,
                       enum courtwright_fetched fetched, const char *name,
                       const struct bytes *text);
    void *looked_for_ctx;
    struct courtwright *book;
};

/* Reads the text and finds its folder, and no more; NULL, or why it cannot be read. */
const char *input_read(struct input *input, const char *path);
/* What `include "path"` in the text of that name means, as courtwright_host has it; name and text
 * are to be freed. */
enum courtwright_fetched input_fetch(struct input *input, const char *from, const char *path,
                                     char **name, struct bytes *text);
/* What the library asks for includes of the text that was read. */
struct courtwright_host input_host(struct input *input);

/* Reads and loads request->words[index]; says what is wrong and gives false (status 3). */
bool input_load(struct input *input, const struct request *request, int index);
/* The same, and no play is run: for what asks only what the words are. */
bool input_load_words(struct input *input, const struct request *request, int index);
/* Another plain file that what is written is made of; says what is wrong and gives false. */
bool input_read_beside(struct input *input, const struct request *request, const char *path,
                       struct bytes *bytes);
/* Is it a file that was read, whatever its name? */
bool input_was_read(const struct input *input, const struct stat *facts);
void input_free(struct input *input);

/* One file being written: beside its place, then moved there; `-` is standard output. */
struct output {
    const char *command;
    char *path;   /* as shown */
    char *target; /* where it goes: links followed */
    char *beside; /* the unfinished one; NULL when it is written straight (a pipe, a device, `-`) */
    bool nameless; /* it is, and has no name in its folder until all is written */
    FILE *file;
    struct courtwright_writer writer;
    int error;
    bool standard; /* it is standard output, whatever it was called; known to the end */
    bool precious; /* it takes the place of what was read: on the disk before it does */
    bool linked;   /* the file has other names, which must go on naming it */
    bool complete; /* all of it is in the unfinished file, and on the disk when it is precious */
};

/* From now on a signal that ends the program takes the unfinished file with it. */
void output_tidy_at_signals(void);
/* False, and said, when it cannot be written or is what was read (unless `over_input`). */
bool output_open(struct output *output, const struct input *input, const char *command,
                 const char *path, bool over_input);
/* All or nothing. False, and said: `error` tells why, and but for `standard` nothing else is left
 * in it. */
bool output_finish(struct output *output);
/* The first half of that: all is written, but has not taken its place. */
bool output_complete(struct output *output);
void output_drop(struct output *output);
/* The same, and prints the name unless the data itself went to standard output; a status. */
int output_named(struct output *output, const char *path);
/* Ends what the library has written: keeps it and prints its name, or drops it and says why, of
 * what; a status. */
int output_close(struct output *output, enum courtwright_status written, const char *of,
                 const char *path);

#endif
