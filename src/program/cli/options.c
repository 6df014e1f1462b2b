/* SPDX-License-Identifier: MIT */
/* options: see options.h. Long options may be cut short as long as they are clear; values stand
 * behind = or as the next word; -- ends options. */
#include "program/cli/options.h"

#include <jansson.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "program/cli/say.h"

static const struct option_row common[] = {
    {"help", 'h', OPTION_FLAG, FIELD(help), NULL, "show this", 0, 0},
    {"color", 0, OPTION_CHOICE, FIELD(color), "auto|always|never", "color in messages", 0, 0},
    OPTIONS_END,
};

enum { MOST_GIVEN = 32 }; /* more options than any command has */
struct reading {
    const struct option_row *given[MOST_GIVEN]; /* those with a value, until now */
    size_t given_count;
    const struct command *command;
    struct request *request;
    int argc, at;
    char **argv;
};

static bool wrong(const struct reading *reading, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    say_wrong_use(reading->command->name, format, args);
    va_end(args);
    return false;
}

/* How many rows of a table the first `size` letters of `name` could mean; an exact one counts
 * alone. */
static int match(const struct option_row *rows, const char *name, size_t size,
                 const struct option_row **found)
{
    int matches = 0;
    for (; rows && rows->kind != OPTION_END; rows++) {
        if (strncmp(rows->name, name, size) != 0) {
            continue;
        }
        if (rows->name[size] == '\0') {
            *found = rows;
            return -1;
        }
        *found = rows;
        matches++;
    }
    return matches;
}

static const struct option_row *find_long(const struct reading *reading, const char *name,
                                          size_t size)
{
    const struct option_row *own = NULL, *shared = NULL;
    int own_matches = match(reading->command->options, name, size, &own);
    int shared_matches = match(common, name, size, &shared);
    if (own_matches < 0) {
        return own;
    }
    if (shared_matches < 0) {
        return shared;
    }
    if (size == 0 || own_matches + shared_matches != 1) {
        wrong(reading,
              own_matches + shared_matches > 1 ? "--%.*s could mean several options"
                                               : "there is no option --%.*s",
              (int)size, name);
        return NULL;
    }
    return own ? own : shared;
}

static const struct option_row *find_short(const struct reading *reading, char letter)
{
    const struct option_row *tables[] = {reading->command->options, common};
    for (size_t i = 0; i < 2; i++) {
        for (const struct option_row *row = tables[i]; row && row->kind != OPTION_END; row++) {
            if (row->letter == letter) {
                return row;
            }
        }
    }
    wrong(reading, "there is no option -%c", letter);
    return NULL;
}

static bool set_choice(const struct reading *reading, const struct option_row *row,
                       const char *value)
{
    size_t size = strlen(value);
    int number = 1;
    for (const char *at = row->value; at;
         at = strchr(at, '|') ? strchr(at, '|') + 1 : NULL, number++) {
        if (strncasecmp(at, value, size) == 0 && (at[size] == '|' || at[size] == '\0') &&
            size > 0) {
            *(int *)((char *)reading->request + row->offset) = number;
            return true;
        }
    }
    return wrong(reading, "--%s takes %s, not '%s'", row->name, row->value, value);
}

static const struct {
    const char *word;
    double points;
} units[] = {{"", 1}, {"pt", 1}, {"in", 72}, {"cm", 72 / 2.54}, {"mm", 72 / 25.4}};

static bool set_number(const struct reading *reading, const struct option_row *row,
                       const char *value)
{
    char *end;
    double number = strtod(value, &end);
    bool good = end != value && isfinite(number);
    if (good && row->kind == OPTION_LENGTH) {
        good = false;
        for (size_t i = 0; i < sizeof units / sizeof *units && !good; i++) {
            good = strcmp(end, units[i].word) == 0;
            number *= good ? units[i].points : 1;
        }
    } else if (good) {
        good = *end == '\0';
    }
    if (!good || number < row->least || number > row->most) {
        return row->kind == OPTION_LENGTH
                   ? wrong(reading,
                           "--%s takes a length from %gin to %gin, such as 3.3in or 84mm, not '%s'",
                           row->name, row->least / 72, row->most / 72, value)
                   : wrong(reading, "--%s takes a number from %.10g to %.10g, not '%s'", row->name,
                           row->least, row->most, value);
    }
    *(double *)((char *)reading->request + row->offset) = number;
    return true;
}

/* A text for a page, which has one line for it. */
static bool set_line(const struct reading *reading, const struct option_row *row, const char *value)
{
    const size_t most = 100;
    json_t *text = json_string(value); /* NULL: no UTF-8 */
    bool good = text != NULL;
    json_decref(text);
    for (const char *at = value; good && *at; at++) {
        good = (unsigned char)*at >= ' ' && *at != 0x7F;
    }
    if (!good || strlen(value) > most) {
        return wrong(reading, "--%s takes one line of text, at most %zu bytes of UTF-8", row->name,
                     most);
    }
    *(const char **)((char *)reading->request + row->offset) = value;
    return true;
}

/* Of two values one would be lost, and nobody would know which. */
static bool is_first(struct reading *reading, const struct option_row *row)
{
    for (size_t i = 0; i < reading->given_count; i++) {
        if (reading->given[i] == row) {
            return wrong(reading, "--%s is given twice", row->name);
        }
    }
    if (reading->given_count < MOST_GIVEN) {
        reading->given[reading->given_count++] = row;
    }
    return true;
}

/* An option of this command, whole: "-o", "--strict", "--paper=a4". */
static bool is_option(const struct reading *reading, const char *word)
{
    const struct option_row *row = reading->command->options;
    for (; word[0] == '-' && row->name; row++) {
        size_t size = strlen(row->name);
        bool name = word[1] == '-' && strncmp(word + 2, row->name, size) == 0 &&
                    (word[2 + size] == '\0' || word[2 + size] == '=');
        if (name || (row->letter && word[1] == row->letter && word[2] == '\0')) {
            return true;
        }
    }
    return false;
}

static bool set(struct reading *reading, const struct option_row *row, const char *value)
{
    if (row->kind == OPTION_LATER) {
        return wrong(reading, "--%s is not built yet", row->name);
    }
    if (row->kind == OPTION_FLAG) {
        if (value) {
            return wrong(reading, "--%s takes no value", row->name);
        }
        *(bool *)((char *)reading->request + row->offset) = true;
        return true;
    }
    if (!is_first(reading, row)) {
        return false;
    }
    if (!value && reading->at + 1 < reading->argc &&
        !is_option(reading, reading->argv[reading->at + 1])) {
        value = reading->argv[++reading->at];
    }
    if (!value) {
        return wrong(reading, "--%s needs a value: %s (%s)", row->name, row->value, row->help);
    }
    switch (row->kind) {
    case OPTION_CHOICE:
        return set_choice(reading, row, value);
    case OPTION_LINE:
        return set_line(reading, row, value);
    case OPTION_NUMBER:
    case OPTION_LENGTH:
        return set_number(reading, row, value);
    default:
        *(const char **)((char *)reading->request + row->offset) = value;
        return true;
    }
}

static bool read_long(struct reading *reading, const char *name)
{
    const char *equals = strchr(name, '=');
    size_t size = equals ? (size_t)(equals - name) : strlen(name);
    const struct option_row *row = find_long(reading, name, size);
    return row && set(reading, row, equals ? equals + 1 : NULL);
}

/* -o FILE, -oFILE, -pLantern; flags may stand together. */
static bool read_short(struct reading *reading, const char *letters)
{
    for (; *letters; letters++) {
        const struct option_row *row = find_short(reading, *letters);
        if (!row) {
            return false;
        }
        if (row->kind != OPTION_FLAG) {
            return set(reading, row, letters[1] ? letters + 1 : NULL);
        }
        set(reading, row, NULL);
    }
    return true;
}

static bool add_word(struct reading *reading, const char *word)
{
    struct request *request = reading->request;
    if (request->word_count == reading->command->most) {
        return wrong(reading,
                     reading->command->most ? "'%s' is one too many" : "'%s': no argument is taken",
                     word);
    }
    request->words[request->word_count++] = word;
    return true;
}

bool options_read(const struct command *command, int argc, char **argv, struct request *request)
{
    struct reading reading = {
        .command = command, .request = request, .argc = argc, .at = 2, .argv = argv};
    bool options = true;
    request->command = command->name;
    for (; reading.at < argc; reading.at++) {
        const char *word = argv[reading.at];
        bool good;
        if (options && strcmp(word, "--") == 0) {
            options = false;
            continue;
        }
        if (options && strncmp(word, "--", 2) == 0) {
            good = read_long(&reading, word + 2);
        } else if (options && word[0] == '-' && word[1]) {
            good = read_short(&reading, word + 1);
        } else {
            good = add_word(&reading, word);
        }
        if (!good) {
            return false;
        }
    }
    if (!request->help && request->word_count < command->least) {
        return wrong(&reading, "what is missing: %s", command->arguments);
    }
    return true;
}

static void help_rows(const struct option_row *row)
{
    for (; row && row->kind != OPTION_END; row++) {
        if (row->kind == OPTION_LATER) {
            continue;
        }
        char left[80];
        char letter[] = {'-', row->letter, ',', ' ', '\0'};
        snprintf(left, sizeof left, "  %s--%s%s%s", row->letter ? letter : "    ", row->name,
                 row->value ? " " : "", row->value ? row->value : "");
        printf(strlen(left) < 34 ? "%-34s %s\n" : "%s\n                                   %s\n",
               left, row->help);
    }
}

void options_help(const struct command *command)
{
    printf("courtwright %s %s%s\n\n%c%s.\n\nOptions:\n", command->name, command->arguments,
           command->options ? " [options]" : "", command->what[0] - 'a' + 'A', command->what + 1);
    help_rows(command->options);
    help_rows(common);
    printf("\n%s\n%s",
           strchr(command->example, '\n') + 1 < command->example + strlen(command->example)
               ? "Examples:"
               : "Example:",
           command->example);
}
