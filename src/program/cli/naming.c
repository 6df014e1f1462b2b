/* SPDX-License-Identifier: MIT */
/* naming: see naming.h. */
#include "program/cli/naming.h"

#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/stat.h>

#include "program/cli/files.h"
#include "program/cli/say.h"

static const char *const holes[] = {"{play}", "{step}", "{player}", "{n}"};
enum { HOLES = sizeof holes / sizeof *holes, SLUG_MOST = 100 };

bool naming_folder(const char *path)
{
    struct stat facts;
    size_t size = strlen(path);
    return (size > 0 && path[size - 1] == '/') ||
           (stat(path, &facts) == 0 && S_ISDIR(facts.st_mode));
}

/* The hole at `at`, or HOLES. */
static size_t hole_at(const char *at)
{
    for (size_t i = 0; i < HOLES; i++) {
        if (strncmp(at, holes[i], strlen(holes[i])) == 0) {
            return i;
        }
    }
    return HOLES;
}

static bool has_hole(const char *text)
{
    for (; *text; text++) {
        if (hole_at(text) < HOLES) {
            return true;
        }
    }
    return false;
}

const char *naming_ending(const char *path)
{
    const char *slash = strrchr(path, '/'), *dot = strrchr(slash ? slash : path, '.');
    size_t letters =
        dot ? strspn(dot + 1, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ") : 0;
    return letters > 0 && dot[1 + letters] == '\0' ? dot + 1 : NULL;
}

/* Does the name promise what comes out, or nothing? */
static bool ending_good(const struct request *request, const char *given, const char *pattern)
{
    const char *ending = naming_ending(given), *wanted = naming_ending(pattern);
    if (!ending || !wanted || strcasecmp(ending, wanted) == 0) {
        return true;
    }
    char capitals[8];
    size_t size = 0;
    for (; wanted[size] && size + 1 < sizeof capitals; size++) {
        capitals[size] = (char)(wanted[size] - 'a' + 'A');
    }
    capitals[size] = '\0';
    wrong_use(request,
              "it comes out as %s, not as '%s': -o takes a name that ends in .%s, a folder, or -",
              capitals, shown(ending), wanted);
    return false;
}

bool naming_start(struct naming *naming, const struct request *request, const char *pattern,
                  bool many)
{
    *naming = (struct naming){.pattern = pattern, .shared = request->written};
    const char *output = request->output;
    if (!output) {
        return true;
    }
    if (!*output) {
        wrong_use(request, "-o needs a name");
        return false;
    }
    for (const char *at = strchr(output, '{'); at; at = strchr(at + 1, '{')) {
        if (hole_at(at) == HOLES) {
            wrong_use(request, "-o knows {play}, {step}, {n} and {player}, not '%s'", shown(at));
            return false;
        }
    }
    if (many && (strcmp(output, "-") == 0 || (!naming_folder(output) && !has_hole(output)))) {
        wrong_use(request, "more than one file comes out: -o takes a folder, or a name with "
                           "{play}, {step}, {player} or {n} in it");
        return false;
    }
    bool slash = output[strlen(output) - 1] == '/';
    naming->given = naming_folder(output) ? format_text("%s%s%s", output, slash ? "" : "/", pattern)
                                          : format_text("%s", output);
    if (!naming_ending(naming->given) && has_hole(naming->given) && naming_ending(pattern)) {
        char *whole = format_text("%s.%s", naming->given, naming_ending(pattern));
        free(naming->given); /* many files: each is called what it is */
        naming->given = whole;
    }
    if (!ending_good(request, naming->given, pattern)) {
        free(naming->given);
        naming->given = NULL;
        return false;
    }
    return true;
}

/* Lower case, a hyphen for everything that is no letter or figure. */
static char *slug(const char *text)
{
    char *out = must(malloc(SLUG_MOST + 8));
    size_t size = 0;
    bool gap = false;
    for (; *text && size < SLUG_MOST; text++) {
        char c = *text >= 'A' && *text <= 'Z' ? (char)(*text - 'A' + 'a') : *text;
        if (!((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || (unsigned char)c >= 0x80)) {
            gap = size > 0;
            continue;
        }
        if (gap) {
            out[size++] = '-';
        }
        gap = false;
        out[size++] = c;
    }
    /* not half a letter at the end */
    while (*text && size > 0 && ((unsigned char)*text & 0xC0) == 0x80) {
        text--;
        size--;
    }
    out[size] = '\0';
    return size ? out : strcpy(out, "play");
}

static struct file_names *names_of(struct naming *naming)
{
    return naming->shared ? naming->shared : &naming->own;
}

static char *fill_hole(size_t number, const struct name_parts *parts, size_t hole)
{
    const char *texts[HOLES] = {parts->play, parts->step, parts->player, NULL};
    return hole == HOLES - 1 ? format_text("%zu", number) : slug(texts[hole] ? texts[hole] : "all");
}

static char *fill(size_t number, const struct name_parts *parts, const char *pattern)
{
    char *out = format_text("%s", "");
    while (*pattern) {
        size_t hole = hole_at(pattern);
        char *piece = hole < HOLES ? fill_hole(number, parts, hole) : format_text("%c", *pattern);
        char *longer = format_text("%s%s", out, piece);
        pattern += hole < HOLES ? strlen(holes[hole]) : 1;
        free(piece);
        free(out);
        out = longer;
    }
    return out;
}

static bool is_used(const struct file_names *names, const char *path)
{
    for (size_t i = 0; i < names->count; i++) {
        if (strcmp(names->at[i], path) == 0) {
            return true;
        }
    }
    return false;
}

static char *numbered(const char *path, unsigned number)
{
    const char *slash = strrchr(path, '/');
    const char *dot = strrchr(slash ? slash : path, '.');
    int size = dot ? (int)(dot - path) : (int)strlen(path);
    return format_text("%.*s-%u%s", size, path, number, dot ? dot : "");
}

const char *naming_next(struct naming *naming, const struct name_parts *parts)
{
    struct file_names *names = names_of(naming);
    char *plain = fill(names->count + 1, parts, naming->given ? naming->given : naming->pattern);
    char *path = format_text("%s", plain);
    for (unsigned number = 2; is_used(names, path); number++) {
        free(path);
        path = numbered(plain, number);
    }
    free(plain);
    names->at = must(realloc(names->at, (names->count + 1) * sizeof *names->at));
    names->at[names->count++] = path;
    return path;
}

void naming_drop(struct naming *naming)
{
    struct file_names *names = names_of(naming);
    free(names->at[--names->count]);
}

void names_free(struct file_names *names)
{
    for (size_t i = 0; i < names->count; i++) {
        free(names->at[i]);
    }
    free(names->at);
}

void naming_free(struct naming *naming)
{
    names_free(&naming->own);
    free(naming->given);
}

static void put_make_name(struct output *output, const char *name)
{
    for (; *name; name++) {
        if (strchr(" \t#\\", *name)) {
            output->writer.write(output, "\\", 1);
        } else if (*name == '$') {
            output->writer.write(output, "$", 1);
        }
        output->writer.write(output, name, 1);
    }
}

bool names_deps(const struct file_names *names, const struct request *request,
                const struct input *input)
{
    struct output output;
    if (is_used(names, request->deps)) {
        say(request->command, "%s is what was written: --deps needs a file of its own",
            shown(request->deps));
        return false;
    }
    if (!output_open(&output, input, request->command, request->deps, false)) {
        return false;
    }
    for (size_t i = 0; i < names->count; i++) {
        output.writer.write(&output, " ", i > 0);
        put_make_name(&output, names->at[i]);
    }
    output.writer.write(&output, ":", 1);
    for (size_t i = 0; i < courtwright_source_count(input->book); i++) {
        output.writer.write(&output, " ", 1);
        put_make_name(&output, courtwright_source(input->book, i));
    }
    if (input->beside) {
        output.writer.write(&output, " ", 1);
        put_make_name(&output, input->beside);
    }
    output.writer.write(&output, "\n", 1);
    return output_finish(&output);
}

int naming_end(struct naming *naming, const struct request *request, const struct input *input,
               int status)
{
    if (status == STATUS_FINE && request->deps && !naming->shared &&
        !names_deps(&naming->own, request, input)) {
        status = STATUS_FILE;
    }
    naming_free(naming);
    return status;
}

static const struct {
    const char *extension;
    enum courtwright_format format;
} formats[] = {/* as ROW_FORMAT lists them */
               {"svg", COURTWRIGHT_SVG},
               {"pdf", COURTWRIGHT_PDF},
               {"png", COURTWRIGHT_PNG}};
enum { FORMATS = sizeof formats / sizeof *formats };

enum courtwright_format format_meant(const struct request *request)
{
    const char *ending = request->output ? naming_ending(request->output) : NULL;
    for (size_t i = 0; ending && !request->format && i < FORMATS; i++) {
        if (strcasecmp(ending, formats[i].extension) == 0) {
            return formats[i].format;
        }
    }
    return formats[request->format ? request->format - 1 : 0].format;
}

const char *format_extension(enum courtwright_format format)
{
    size_t i = 0;
    while (i + 1 < FORMATS && formats[i].format != format) {
        i++;
    }
    return formats[i].extension;
}
