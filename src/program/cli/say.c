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

/* U+202E and its like are not seen and turn round what stands beside them: they are shown by their
 * number. Its bytes at `at`; 0: it is another. */
static size_t turner_size(const char *at)
{
    const unsigned char *byte = (const unsigned char *)at;
    if (byte[0] == 0xD8 && byte[1] == 0x9C) { /* 061C */
        return 2;
    }
    bool marks = byte[0] == 0xE2 && byte[1] == 0x80 &&
                 (byte[2] == 0x8E || byte[2] == 0x8F ||  /* 200E, 200F */
                  (byte[2] >= 0xAA && byte[2] <= 0xAE)); /* 202A to 202E */
    bool apart =
        byte[0] == 0xE2 && byte[1] == 0x81 && byte[2] >= 0xA6 && byte[2] <= 0xA9; /* 2066 */
    return marks || apart ? 3 : 0;
}

enum { TURNER_COLUMNS = 6 }; /* U+202E */

static void turner_name(const char *at, char out[TURNER_COLUMNS + 1])
{
    const unsigned char *byte = (const unsigned char *)at;
    unsigned code = byte[0] == 0xD8
                        ? (byte[0] & 0x1Fu) << 6 | (byte[1] & 0x3Fu)
                        : (byte[0] & 0x0Fu) << 12 | (byte[1] & 0x3Fu) << 6 | (byte[2] & 0x3Fu);
    snprintf(out, TURNER_COLUMNS + 1, "U+%04X", code & 0xFFFFu);
}

/* The text up to `end` (NULL: all of it) on standard error. */
static void put(const char *text, const char *end)
{
    while (*text && text != end) {
        size_t size = turner_size(text);
        if (size > 0) {
            char name[TURNER_COLUMNS + 1];
            turner_name(text, name);
            fputs(name, stderr);
            text += size;
        } else {
            fputc(*text++, stderr);
        }
    }
}

const char *shown(const char *text)
{
    static char kept[4][512];
    static unsigned next;
    char *out = kept[next++ % 4];
    size_t size = 0;
    while (*text && size + TURNER_COLUMNS + 1 < sizeof kept[0]) {
        size_t turner = turner_size(text);
        unsigned char c = (unsigned char)*text;
        if (turner > 0) {
            turner_name(text, out + size);
            size += TURNER_COLUMNS;
        } else {
            out[size++] = c < 0x20 || c == 0x7F ? '?' : (char)c;
        }
        text += turner > 0 ? turner : 1;
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

static int columns_of(const char *at)
{
    return turner_size(at) > 0 ? TURNER_COLUMNS : 1;
}

static void show_excerpt(const struct courtwright_diagnostic *said, bool color)
{
    unsigned first = said->column > EXCERPT_BEFORE ? said->column - EXCERPT_BEFORE : 1;
    const char *begin = code_point(said->excerpt, first - 1);
    const char *end = code_point(begin, EXCERPT_COLUMNS), *at = begin;
    fputs("  ", stderr);
    put(begin, end);
    fputs("\n  ", stderr);
    unsigned last = first + EXCERPT_COLUMNS;
    unsigned marked_end = said->end > last ? last : said->end;
    for (unsigned column = first; column < said->column; column++) {
        fprintf(stderr, "%*s", columns_of(at), "");
        at = code_point(at, 1);
    }
    fputs(color ? "\033[32m^" : "^", stderr);
    for (unsigned column = said->column; column < marked_end; column++) {
        for (int i = column == said->column; i < columns_of(at); i++) {
            fputc('~', stderr);
        }
        at = code_point(at, 1);
    }
    fputs(color ? "\033[0m\n" : "\n", stderr);
}

static void show_place(const struct courtwright_diagnostic *said)
{
    if (said->file[0]) {
        put(said->file, NULL);
        fputc(':', stderr);
    }
    if (said->line) {
        fprintf(stderr, "%u:%u:", said->line, said->column);
    }
    fputs(said->file[0] ? " " : "courtwright: ", stderr);
}

static void show_more(const char *what, const char *text)
{
    fprintf(stderr, "  %s", what);
    put(text, NULL);
    fputc('\n', stderr);
}

static void show(const struct courtwright_diagnostic *said, bool names, bool color)
{
    static const char *const paint[] = {"\033[36m", "\033[35m", "\033[31m"};
    const char *word = said->accepted ? "accepted" : severity_words[said->severity];
    show_place(said);
    fprintf(stderr, "%s%s:%s ", color ? paint[said->severity] : "", word, color ? "\033[0m" : "");
    put(names ? said->named : said->message, NULL);
    fprintf(stderr, " [%s]", said->id);
    if (said->finding) {
        fputs(" (", stderr);
        put(said->play, NULL);
        fputs(said->step[0] ? ", step " : "", stderr);
        put(said->step, NULL);
        fprintf(stderr, ", %.1f s)", said->time);
    }
    fputc('\n', stderr);
    if (said->line) {
        show_excerpt(said, color);
    }
    if (said->accepted) {
        show_more("on purpose: ", said->reason);
    } else if (said->help[0]) {
        show_more("help: ", said->help);
    }
    if (said->other_file[0]) {
        fputs("  see ", stderr);
        put(said->other_file, NULL);
        fprintf(stderr, ":%u\n", said->other_line);
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

void tell_written(const struct request *request, const struct courtwright *book)
{
    say(request->command,
        courtwright_error_count(book) > 0
            ? "written all the same: nothing that is wrong above is in it; the status is 1"
            : "written all the same: --strict counts a warning as an error; the status is 1");
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
