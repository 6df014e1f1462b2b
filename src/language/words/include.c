/* SPDX-License-Identifier: MIT */
/* include: another file of the same book, through whoever started the compilation. */
#include "base/limits.h"
#include "language/words/reader.h"

static bool is_open_or_read(const struct reader *r, struct str name)
{
    for (size_t i = 0; i < r->shelf->sources->all.count; i++) {
        if (str_equal(r->shelf->sources->all.at[i].name, name)) {
            return true;
        }
    }
    return false;
}

static const struct {
    enum diag_code code;
    const char *what, *help;
} failures[] = {
    [LOAD_MISSING] = {DIAG_FILE_MISSING, "there is no file",
                      "write the name as it stands in this file's folder"},
    [LOAD_UNREADABLE] =
        {DIAG_FILE_UNREADABLE, "nothing can be read from",
         "it is a folder, or you have no right to read it: name a file that you can open"},
    [LOAD_OUTSIDE] = {DIAG_FILE_OUTSIDE,
                      "outside the book's folder:", "copy it into the book's folder"},
    [LOAD_TOO_LARGE] = {DIAG_FILE_TOO_LARGE, "too large for a playbook:",
                        "make several files of it, each with an include of its own"},
};

static void report_failure(struct reader *r, enum load_result result, struct str path,
                           struct span span)
{
    struct diag *diag = diag_add(r->diags, failures[result].code, span, "%s \"%.*s\"",
                                 failures[result].what, STR_ARG(path));
    diag_help(r->diags, diag, "%s", failures[result].help);
}

/* False: reported. */
static bool load(struct reader *r, struct str path, struct span span, uint32_t *source)
{
    struct shelf *shelf = r->shelf;
    if (r->depth >= LIMIT_INCLUDE_DEPTH) {
        struct diag *diag =
            diag_add(r->diags, DIAG_TEXT_INCLUDE_DEEP, span,
                     "files include one another more than %d deep", LIMIT_INCLUDE_DEPTH);
        diag_help(r->diags, diag, "include it from the book's own file");
        return false;
    }
    if (shelf->sources->all.count >= LIMIT_SOURCES) {
        struct diag *diag =
            diag_add(r->diags, DIAG_TEXT_MANY, span, "a book has at most %d files", LIMIT_SOURCES);
        diag_help(r->diags, diag, "put several plays into one file");
        return false;
    }
    struct str name = path, text = {0};
    struct str from = shelf->sources->all.at[r->source].name;
    enum load_result result = LOAD_UNREADABLE;
    if (shelf->loader) {
        result = shelf->loader->load(shelf->loader->ctx, r->arena, from, path, &name, &text);
    }
    if (result != LOAD_OK) {
        report_failure(r, result, path, span);
        return false;
    }
    if (text.size > LIMIT_FILE_BYTES) {
        report_failure(r, LOAD_TOO_LARGE, path, span);
        return false;
    }
    if (is_open_or_read(r, name)) {
        struct diag *diag = diag_add(r->diags, DIAG_FILE_CYCLE, span,
                                     "the file \"%.*s\" is in the book already", STR_ARG(path));
        diag_help(r->diags, diag, "leave this include out: one is enough");
        return false;
    }
    *source = sources_add(shelf->sources, name, text);
    return true;
}

/* An included file's playbook heading says nothing: its settings are not the book's. */
static void drop_playbook(struct reader *r, struct block *file)
{
    size_t kept = 0;
    for (size_t i = 0; i < file->forms.count; i++) {
        struct form *form = &file->forms.at[i];
        if (form->kind == FORM_BLOCK && form->block->kind == BLOCK_PLAYBOOK) {
            diag_add(r->diags, DIAG_TEXT_INCLUDE_PLAYBOOK, form->block->span,
                     "the playbook heading of an included file and its settings are not used");
            continue;
        }
        file->forms.at[kept++] = *form;
    }
    file->forms.count = kept;
}

void include_read(struct reader *r, const struct line *line)
{
    struct cursor c = reader_cursor(r, line, 1);
    struct span span;
    struct form form = {.kind = FORM_INCLUDE, .line = line, .span = line->span};
    if (!quoted_read(&c, &form.title, &span) || form.title.size == 0) {
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_INCLUDE, cursor_span(&c),
                                     "the name of a file in quotes belongs here");
        diag_help(r->diags, diag, "write `include \"presses.play\"`");
        reader_broken(r, line);
        return;
    }
    if (!reader_used_up(&c)) {
        reader_broken(r, line);
        return;
    }
    uint32_t source;
    if (load(r, form.title, span, &source)) {
        form.block = file_read(r->shelf, source, r->depth + 1);
        drop_playbook(r, form.block);
    }
    VEC_PUSH(r->arena, &r->file->forms, form);
}
