/* SPDX-License-Identifier: MIT */
/* command: what every command gets and gives back. The program knows the library by its public
 * header alone. */
#ifndef PROGRAM_CLI_COMMAND_H
#define PROGRAM_CLI_COMMAND_H

#include <stdbool.h>
#include <stddef.h>

#include "courtwright/courtwright.h"

enum status {
    STATUS_FINE = 0,
    STATUS_TEXT = 1, /* an error in the text, or with --strict a warning */
    STATUS_USE = 2,  /* the command was used wrongly */
    STATUS_FILE = 3  /* a file could not be read or written */
};

enum color { COLOR_AUTO = 1, COLOR_ALWAYS, COLOR_NEVER };

/* What was asked for on the command line; zero where nothing was. Choices are numbered from 1 in
 * the order their row lists them. */
struct request {
    const char *command;
    const char *words[2]; /* what is no option: a file, a word, a table */
    int word_count;
    bool help, strict, json, caption, caution, names, beads, show_checks, measure, write, check,
        schema, upgrade, tolerance, draw, two_sided, loop;
    int color, format, text, layout, theme, defense, paper, dump, browser;
    const char *output, *deps, *play, *step, *only, *reader, *date, *salt, *title, *crest, *offline;
    double width, scale, per_page, rate, jobs, seed, port;
    struct file_names *written; /* of several commands' work in one; NULL: of this command alone */
};

struct option_row {
    const char *name; /* "width" for --width */
    char letter;      /* 'o' for -o; 0: none */
    enum {
        OPTION_END,
        OPTION_FLAG,
        OPTION_TEXT,
        OPTION_LINE, /* text that stands on a page */
        OPTION_CHOICE,
        OPTION_NUMBER,
        OPTION_LENGTH,
        OPTION_LATER
    } kind;
    size_t offset;     /* in struct request */
    const char *value; /* NAME for the help, or the choices: "svg|pdf|png" */
    const char *help;
    double least, most; /* NUMBER; LENGTH in points */
};
#define FIELD(name) offsetof(struct request, name)
#define OPTIONS_END                                                                                \
    {                                                                                              \
        .kind = OPTION_END                                                                         \
    }

struct command {
    const char *name, *arguments, *what;
    const struct option_row *options;
    const char *example; /* lines for --help */
    int least, most;     /* how many words it takes */
    int (*run)(const struct request *request);
};

#define COMMAND(name) extern const struct command command_##name;
#define LATER(name)
#include "program/cli/commands.def"
#undef COMMAND
#undef LATER

/* Rows that several commands share. */
#define ROW_OUTPUT(text)                                                                           \
    {                                                                                              \
        "output", 'o', OPTION_TEXT, FIELD(output), "OUT", text, 0, 0                               \
    }
#define ROW_PLAY                                                                                   \
    {                                                                                              \
        "play", 'p', OPTION_TEXT, FIELD(play), "NAME", "only this play", 0, 0                      \
    }
#define ROW_STEP                                                                                   \
    {                                                                                              \
        "step", 's', OPTION_TEXT, FIELD(step), "N",                                                \
            "only this step, with its reads: 2; one of them: 2a; without them: \"2 alone\"", 0, 0  \
    }
#define ROW_DEFENSE                                                                                \
    {                                                                                              \
        "defense", 0, OPTION_CHOICE, FIELD(defense), "shown|hidden", "draw the defenders or not",  \
            0, 0                                                                                   \
    }
#define ROW_SALT                                                                                   \
    {                                                                                              \
        "salt", 0, OPTION_TEXT, FIELD(salt), "WORD",                                               \
            "makes ids differ where one drawing stands twice in a page", 0, 0                      \
    }
#define ROW_FORMAT                                                                                 \
    {                                                                                              \
        "format", 'f', OPTION_CHOICE, FIELD(format), "svg|pdf|png",                                \
            "what to write; else by the name's end, else svg", 0, 0                                \
    }
#define ROW_THEME                                                                                  \
    {                                                                                              \
        "theme", 0, OPTION_CHOICE, FIELD(theme), "print|screen|dark", "colors", 0, 0               \
    }
#define ROW_WIDTH                                                                                  \
    {                                                                                              \
        "width", 'w', OPTION_LENGTH, FIELD(width), "LENGTH", "of a diagram: 3.3in, 84mm, 240pt",   \
            72, 1944                                                                               \
    }
#define ROW_STRICT                                                                                 \
    {                                                                                              \
        "strict", 0, OPTION_FLAG, FIELD(strict), NULL, "treat a warning as an error", 0, 0         \
    }
#define ROW_DEPS                                                                                   \
    {                                                                                              \
        "deps", 0, OPTION_TEXT, FIELD(deps), "FILE",                                               \
            "write a make rule: what was written, from what", 0, 0                                 \
    }

#endif
