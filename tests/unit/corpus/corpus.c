/* SPDX-License-Identifier: MIT */
#include "corpus.h"
#include "whole_file.h"

#include <stdio.h>
#include <string.h>

static struct str trimmed(struct str s)
{
    while (s.size > 0 && (s.at[0] == ' ' || s.at[0] == '\t')) {
        s.at++;
        s.size--;
    }
    while (s.size > 0 && strchr(" \t\r", s.at[s.size - 1])) {
        s.size--;
    }
    return s;
}

/* The part before `mark`, which `rest` then begins behind; without one all of it. */
static struct str before(struct str *rest, const char *mark)
{
    size_t size = strlen(mark);
    for (size_t i = 0; i + size <= rest->size; i++) {
        if (memcmp(rest->at + i, mark, size) == 0) {
            struct str part = {rest->at, i};
            *rest = (struct str){rest->at + i + size, rest->size - i - size};
            return part;
        }
    }
    struct str all = *rest;
    *rest = (struct str){rest->at + rest->size, 0};
    return all;
}

bool str_holds(struct str text, struct str part)
{
    for (size_t i = 0; i + part.size <= text.size; i++) {
        if (memcmp(text.at + i, part.at, part.size) == 0) {
            return true;
        }
    }
    return false;
}

/* "a / b" as lines, indented but for the first of a head. */
static struct str as_lines(struct arena *arena, struct str parts, bool head)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    while (parts.size > 0) {
        struct str line = trimmed(before(&parts, " / "));
        if (line.size > 0) {
            strbuf_print(&out, "%s%.*s\n", head && out.size == 0 ? "" : "  ", STR_ARG(line));
        }
    }
    return strbuf_str(&out);
}

/* One line of a family. */
static void add_line(struct arena *arena, corpus_lines *out, struct corpus_line line,
                     struct str text)
{
    line.written = before(&text, " =>");
    line.wanted = trimmed(text);
    line.refused = line.wanted.size > 0 && line.wanted.at[0] == '!';
    if (line.refused) {
        line.wanted = trimmed((struct str){line.wanted.at + 1, line.wanted.size - 1});
    }
    VEC_PUSH(arena, out, line);
}

bool corpus_open(struct arena *arena, const char *path, corpus_lines *out)
{
    static const struct str usual = {"play \"Corpus\"\n  defense man\n", 29};
    struct corpus_line line = {.head = usual};
    struct str text;
    *out = (corpus_lines){NULL, 0, 0};
    if (!whole_file(arena, path, &text)) {
        return false;
    }
    while (text.size > 0) {
        struct str row = before(&text, "\n");
        struct str rest = {row.at + 1, row.size > 0 ? row.size - 1 : 0};
        line.number++;
        if (trimmed(row).size == 0 || str_is(row, "#") || str_starts(row, "# ")) {
            continue;
        }
        if (str_starts(row, "= ")) {
            line =
                (struct corpus_line){.number = line.number, .head = usual, .family = trimmed(rest)};
        } else if (row.at[0] == '^') {
            line.above = as_lines(arena, rest, false);
        } else if (row.at[0] == '@') {
            line.head = as_lines(arena, rest, true);
        } else {
            add_line(arena, out, line, row);
        }
    }
    return true;
}

struct str corpus_text(struct arena *arena, const struct corpus_line *line, struct str said)
{
    return str_format(arena, "%.*s%.*s  %.*s\n", STR_ARG(line->head), STR_ARG(line->above),
                      STR_ARG(said));
}

void corpus_read(struct arena *arena, struct str text, struct corpus_read *out)
{
    sources_init(&out->sources, arena);
    diags_init(&out->diags, arena);
    uint32_t source = sources_add(&out->sources, STR("corpus.play"), text);
    out->book = book_read(arena, &out->sources, source, NULL, &out->diags);
    out->tidy = tidy_book(arena, &out->sources, out->book);
    out->plays = playbook_resolve(arena, &out->sources, out->book, STR("corpus.play"), &out->diags);
    diags_sort(&out->diags);
}

static size_t line_count(struct str text)
{
    size_t count = 0;
    for (size_t i = 0; i < text.size; i++) {
        count += text.at[i] == '\n';
    }
    return count;
}

struct str corpus_behind(struct arena *arena, struct str tidy, struct str above)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    size_t skip = line_count(above);
    for (size_t i = 0; tidy.size > 0; i++) {
        struct str row = before(&tidy, "\n");
        struct str said = trimmed(before(&row, "#"));
        if (i >= skip && said.size > 0) {
            strbuf_print(&out, "%s%.*s", out.size > 0 ? " / " : "", STR_ARG(said));
        }
    }
    return strbuf_str(&out);
}

struct str corpus_errors(struct arena *arena, const struct diags *diags)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < diags->all.count; i++) {
        const struct diag *diag = &diags->all.at[i];
        if (diag->severity == SEVERITY_ERROR) {
            strbuf_print(&out, "%s: %.*s; %.*s\n", diag->row->id, STR_ARG(diag->message),
                         STR_ARG(diag->help));
        }
    }
    return strbuf_str(&out);
}

struct str corpus_dump(struct arena *arena, const struct corpus_read *read)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < read->plays->plays.count; i++) {
        play_dump(&out, &read->plays->plays.at[i]);
    }
    return strbuf_str(&out);
}
