/* SPDX-License-Identifier: MIT */
#include "resolved.h"

void resolve_text(struct arena *arena, struct resolved *out, struct str name, struct str text)
{
    sources_init(&out->sources, arena);
    diags_init(&out->diags, arena);
    uint32_t source = sources_add(&out->sources, name, text);
    struct book *book = book_read(arena, &out->sources, source, NULL, &out->diags);
    out->book = playbook_resolve(arena, &out->sources, book, name, &out->diags);
    diags_sort(&out->diags);
}

void print_diags(struct strbuf *out, const struct resolved *resolved)
{
    static const char *const severities[] = {"note", "warning", "error"};
    for (size_t i = 0; i < resolved->diags.all.count; i++) {
        const struct diag *diag = &resolved->diags.all.at[i];
        if (!str_starts(str_of(diag->row->id), "play.")) {
            continue; /* how words are told is held by their own suites */
        }
        unsigned line = 0;
        if (diag->span.source != SOURCE_NONE) {
            const struct source *source = &resolved->sources.all.at[diag->span.source];
            line = source_place(source, diag->span.begin).line;
        }
        strbuf_print(out, "%u: %s %s: %.*s\n", line, severities[diag->severity], diag->row->id,
                     STR_ARG(diag->message));
        if (diag->help.size) {
            strbuf_print(out, "   help: %.*s\n", STR_ARG(diag->help));
        }
    }
}

const char *resolved_said(struct arena *arena, const struct resolved *resolved)
{
    struct strbuf said;
    strbuf_init(&said, arena);
    for (size_t i = 0; i < resolved->diags.all.count; i++) {
        const struct diag *diag = &resolved->diags.all.at[i];
        strbuf_print(&said, "%s: %.*s\n", diag->row->id, STR_ARG(diag->message));
    }
    strbuf_char(&said, '\0');
    return said.at;
}

bool has_diag(const struct resolved *resolved, const char *id)
{
    for (size_t i = 0; i < resolved->diags.all.count; i++) {
        if (str_is(str_of(resolved->diags.all.at[i].row->id), id)) {
            return true;
        }
    }
    return false;
}
