/* SPDX-License-Identifier: MIT */
/* say: see say.h. */
#include "program/cli/say.h"

#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

enum { EXCERPT_COLUMNS = 110, EXCERPT_BEFORE = 60 };

static void vsay(const char *command, const char *format, va_list args)
{
    fprintf(stderr, command ? "courtwright %s: " : "courtwright: ", command);
    vfprintf(stderr, format, args);
    fputc('\n', stderr);
}

void say(const char *command, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    vsay(command, format, args);
    va_end(args);
}

void say_wrong_use(const char *command, const char *format, va_list args)
{
    vsay(command, format, args);
    fprintf(stderr, "Try 'courtwright %s --help'.\n", command ? command : "");
}

int wrong_use(const struct request *request, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    say_wrong_use(request->command, format, args);
    va_end(args);
    return STATUS_USE;
}

const char *shown(const char *text)
{
    static char kept[4][512];
    static unsigned next;
    char *out = kept[next++ % 4];
    size_t size = 0;
    for (; text[size] && size + 1 < sizeof kept[0]; size++) {
        unsigned char c = (unsigned char)text[size];
        out[size] = c < 0x20 || c == 0x7F ? '?' : (char)c;
    }
    out[size] = '\0';
    return out;
}

static bool colored(const struct request *request)
{
    if (request->color == COLOR_ALWAYS || request->color == COLOR_NEVER) {
        return request->color == COLOR_ALWAYS;
    }
    const char *none = getenv("NO_COLOR"), *term = getenv("TERM");
    return !(none && *none) && term && strcmp(term, "dumb") != 0 && isatty(STDERR_FILENO);
}

static const char *const severity_words[] = {"note", "warning", "error"};

static bool is_shown(const struct telling *telling, const struct courtwright_diagnostic *said)
{
    if (telling->rewritten && said->severity == COURTWRIGHT_NOTE &&
        strncmp(said->id, "text.", strlen("text.")) == 0 &&
        strcmp(said->file, telling->rewritten) == 0) {
        return true;
    }
    if (!telling->only) {
        return said->severity >= telling->least;
    }
    size_t size = strlen(telling->only);
    return strcmp(telling->only, severity_words[said->severity]) == 0 ||
           strcmp(telling->only, said->id) == 0 ||
           (strncmp(telling->only, said->id, size) == 0 && said->id[size] == '.');
}

/* The byte where a code point begins. */
static const char *code_point(const char *text, unsigned index)
{
    for (; *text && index > 0; index--) {
        do {
            text++;
        } while (((unsigned char)*text & 0xC0) == 0x80);
    }
    return text;
}

static void show_excerpt(const struct courtwright_diagnostic *said, bool color)
{
    unsigned first = said->column > EXCERPT_BEFORE ? said->column - EXCERPT_BEFORE : 1;
    const char *begin = code_point(said->excerpt, first - 1);
    const char *end = code_point(begin, EXCERPT_COLUMNS);
    fprintf(stderr, "  %.*s\n  ", (int)(end - begin), begin);
    unsigned last = first + EXCERPT_COLUMNS;
    unsigned marked_end = said->end > last ? last : said->end;
    for (unsigned column = first; column < said->column; column++) {
        fputc(' ', stderr);
    }
    fputs(color ? "\033[32m^" : "^", stderr);
    for (unsigned column = said->column + 1; column < marked_end; column++) {
        fputc('~', stderr);
    }
    fputs(color ? "\033[0m\n" : "\n", stderr);
}

static void show_place(const struct courtwright_diagnostic *said)
{
    if (said->file[0]) {
        fprintf(stderr, "%s:", said->file);
    }
    if (said->line) {
        fprintf(stderr, "%u:%u:", said->line, said->column);
    }
    fputs(said->file[0] ? " " : "courtwright: ", stderr);
}

static void show(const struct courtwright_diagnostic *said, bool names, bool color)
{
    static const char *const paint[] = {"\033[36m", "\033[35m", "\033[31m"};
    const char *word = said->accepted ? "accepted" : severity_words[said->severity];
    show_place(said);
    fprintf(stderr, "%s%s:%s %s [%s]", color ? paint[said->severity] : "", word,
            color ? "\033[0m" : "", names ? said->named : said->message, said->id);
    if (said->finding) {
        fprintf(stderr, " (%s%s%s, %.1f s)", said->play, said->step[0] ? ", step " : "", said->step,
                said->time);
    }
    fputc('\n', stderr);
    if (said->line) {
        show_excerpt(said, color);
    }
    if (said->accepted) {
        fprintf(stderr, "  on purpose: %s\n", said->reason);
    } else if (said->help[0]) {
        fprintf(stderr, "  help: %s\n", said->help);
    }
    if (said->other_file[0]) {
        fprintf(stderr, "  see %s:%u\n", said->other_file, said->other_line);
    }
}

static bool show_json(const struct courtwright_diagnostic *said, bool names)
{
    json_t *line = json_pack("{ss si si si ss ss ss ss}", "file", said->file, "line",
                             (int)said->line, "column", (int)said->column, "end", (int)said->end,
                             "severity", severity_words[said->severity], "id", said->id, "message",
                             names ? said->named : said->message, "help", said->help);
    bool good = line != NULL;
    if (good && said->finding) {
        good = json_object_set_new(line, "play", json_string(said->play)) == 0 &&
               json_object_set_new(line, "step", json_string(said->step)) == 0 &&
               json_object_set_new(line, "time", json_real(said->time)) == 0;
    }
    if (good && said->accepted) {
        good = json_object_set_new(line, "accepted", json_string(said->reason)) == 0;
    }
    if (good && said->other_file[0]) {
        good = json_object_set_new(line, "other",
                                   json_pack("{ss si}", "file", said->other_file, "line",
                                             (int)said->other_line)) == 0;
    }
    good = good && json_dumpf(line, stdout, JSON_COMPACT | JSON_REAL_PRECISION(6)) == 0;
    putchar('\n');
    json_decref(line);
    return good;
}

static void count_of(char *out, size_t size, size_t count, const char *word)
{
    snprintf(out, size, "%zu %s%s", count, word, count == 1 ? "" : "s");
}

static void show_total(const struct courtwright *book, const struct telling *telling,
                       size_t shown_count)
{
    char errors[40], warnings[40];
    size_t kept = courtwright_diagnostic_count(book);
    size_t all = courtwright_error_count(book) + courtwright_warning_count(book);
    count_of(errors, sizeof errors, courtwright_error_count(book), "error");
    count_of(warnings, sizeof warnings, courtwright_warning_count(book), "warning");
    if (telling->json && all > kept) {
        fprintf(stderr, "%s, %s; only the first %zu are written\n", errors, warnings, kept);
    } else if (!telling->json && shown_count > 0 && all > 0) {
        fprintf(stderr, "%s, %s%s\n", errors, warnings,
                all > kept ? "; the list above stops early" : "");
    }
}

int tell(const struct request *request, const struct courtwright *book,
         const struct telling *telling)
{
    bool color = colored(request);
    size_t counted = 0, warnings = 0;
    for (size_t i = 0; i < courtwright_diagnostic_count(book); i++) {
        const struct courtwright_diagnostic *said = courtwright_diagnostic(book, i);
        if (!is_shown(telling, said)) {
            continue;
        }
        counted += said->severity != COURTWRIGHT_NOTE;
        warnings += said->severity == COURTWRIGHT_WARNING;
        if (!telling->json) {
            show(said, telling->names, color);
        } else if (!show_json(said, telling->names)) {
            say(request->command, "standard output could not be written");
            return STATUS_FILE;
        }
        if (strcmp(said->id, "file.memory") == 0 || strcmp(said->id, "file.limit") == 0) {
            return STATUS_FILE;
        }
    }
    show_total(book, telling, counted);
    bool bad = courtwright_error_count(book) > 0 || (request->strict && warnings > 0);
    return bad ? STATUS_TEXT : STATUS_FINE;
}

void tell_missing(const struct request *request, const struct courtwright *book)
{
    if (request->written) {
        return; /* once for all of them */
    }
    const char *letters = courtwright_borrowed_letters(book);
    if (*letters) {
        say(request->command,
            "the face has no letters for %s: they are drawn in fonts of this machine, first %s",
            shown(letters), shown(courtwright_borrowed_face(book)));
    }
    letters = courtwright_missing_letters(book);
    if (*letters) {
        say(request->command, "no font here has letters for %s: a box stands in place of each",
            shown(letters));
    }
}
