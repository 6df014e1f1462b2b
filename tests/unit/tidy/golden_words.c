/* SPDX-License-Identifier: MIT */
/* Goldens of a folder: X.play read and printed is X.tidy, X.tidy printed is itself, and what was
 * complained of is X.diag, line by line; no such file: nothing was. Prints TAP. With --write the
 * .tidy and .diag files are made anew, to be looked at before they are kept. */
#define _POSIX_C_SOURCE 200809L

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "language/tidy/tidy.h"
#include "whole_file.h"

enum { NAMES_MOST = 200, PATH_MOST = 4096 };

static jmp_buf escape;

/* NULL at = no such file. */
static struct str read_file(struct arena *arena, const char *path)
{
    struct str text;
    return whole_file(arena, path, &text) ? text : (struct str){NULL, 0};
}

static bool write_file(const char *path, struct str text)
{
    if (text.size == 0) {
        remove(path);
        return true;
    }
    FILE *file = fopen(path, "wb");
    bool fine = file && fwrite(text.at, 1, text.size, file) == text.size;
    return file && fclose(file) == 0 && fine;
}

/* Includes give an empty play, so that goldens stand alone. */
static enum load_result load_any(void *ctx, struct arena *arena, struct str from, struct str path,
                                 struct str *name, struct str *text)
{
    (void)ctx;
    (void)arena;
    (void)from;
    *name = path;
    *text = STR("play \"Included\"\n");
    return LOAD_OK;
}

static struct str tidied(struct arena *arena, struct str text, struct str *complaints)
{
    struct sources sources;
    struct diags diags;
    struct strbuf out;
    const struct loader loader = {load_any, NULL};
    sources_init(&sources, arena);
    diags_init(&diags, arena);
    uint32_t source = sources_add(&sources, STR("golden.play"), text);
    struct book *book = book_read(arena, &sources, source, &loader, &diags);
    diags_sort(&diags);
    strbuf_init(&out, arena);
    for (size_t i = 0; i < diags.all.count; i++) {
        const struct diag *diag = &diags.all.at[i];
        struct place_in_source at =
            source_place(&sources.all.at[diag->span.source], diag->span.begin);
        strbuf_print(&out, "%u:%u: %s: %.*s", (unsigned)at.line, (unsigned)at.column, diag->row->id,
                     STR_ARG(diag->message));
        strbuf_print(&out, diag->help.size ? "; %.*s\n" : "%.*s\n", STR_ARG(diag->help));
    }
    *complaints = strbuf_str(&out);
    return tidy_book(arena, &sources, book);
}

static void first_difference(const char *what, struct str found, struct str wanted)
{
    size_t line = 1, begin = 0, i = 0;
    for (; i < found.size && i < wanted.size && found.at[i] == wanted.at[i]; i++) {
        if (found.at[i] == '\n') {
            line++;
            begin = i + 1;
        }
    }
    const char *a = found.at + begin, *b = wanted.at + begin;
    size_t a_size = found.size - begin, b_size = wanted.size - begin;
    const char *a_end = memchr(a, '\n', a_size), *b_end = memchr(b, '\n', b_size);
    printf("# %s differs in line %zu\n# found:  %.*s\n# wanted: %.*s\n", what, line,
           (int)(a_end ? (size_t)(a_end - a) : a_size), a,
           (int)(b_end ? (size_t)(b_end - b) : b_size), b);
}

static bool same(const char *what, struct str found, struct str wanted)
{
    bool equal = str_equal(found, wanted);
    if (!equal) {
        first_difference(what, found, wanted);
    }
    return equal;
}

static bool check(struct arena *arena, const char *folder, const char *name, bool write)
{
    char path[PATH_MOST];
    struct str complaints, none;
    snprintf(path, sizeof path, "%s/%s.play", folder, name);
    struct str out = tidied(arena, read_file(arena, path), &complaints);
    struct str again = tidied(arena, out, &none);
    snprintf(path, sizeof path, "%s/%s.tidy", folder, name);
    struct str tidy = read_file(arena, path);
    bool fine = !write || write_file(path, out);
    snprintf(path, sizeof path, "%s/%s.diag", folder, name);
    struct str diag = read_file(arena, path);
    if (write) {
        return write_file(path, complaints) && fine && same("printed twice", again, out);
    }
    fine = same("tidy", out, tidy) && fine;
    fine = same("complaints", complaints, diag) && fine;
    return same("printed twice", again, out) && fine;
}

static int by_name(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

static size_t list(const char *folder, char *names[NAMES_MOST])
{
    size_t count = 0;
    DIR *dir = opendir(folder);
    for (struct dirent *entry; dir && (entry = readdir(dir)) && count < NAMES_MOST;) {
        char *dot = strrchr(entry->d_name, '.');
        if (dot && strcmp(dot, ".play") == 0) {
            *dot = '\0';
            names[count++] = strdup(entry->d_name);
        }
    }
    if (dir) {
        closedir(dir);
    }
    qsort(names, count, sizeof names[0], by_name);
    return count;
}

static bool run(const char *folder, const char *name, bool write)
{
    struct arena arena;
    if (setjmp(escape)) {
        printf("Bail out! the arena gave up\n");
        exit(EXIT_FAILURE);
    }
    arena_init(&arena, NULL, &escape);
    bool fine = check(&arena, folder, name, write);
    arena_finish(&arena);
    return fine;
}

int main(int argc, char **argv)
{
    bool write = argc > 2 && strcmp(argv[2], "--write") == 0;
    char *names[NAMES_MOST];
    size_t count = argc > 1 ? list(argv[1], names) : 0, failed = 0;
    printf("1..%zu\n", count);
    for (size_t i = 0; i < count; i++) {
        bool fine = run(argv[1], names[i], write);
        failed += !fine;
        printf("%sok %zu - %s\n", fine ? "" : "not ", i + 1, names[i]);
        free(names[i]);
    }
    return count > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
