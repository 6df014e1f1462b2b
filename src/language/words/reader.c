/* SPDX-License-Identifier: MIT */
/* reader: what the readers of lines share: the block that is open, forms put into it, a cursor over
 * a line. */
#include <string.h>

#include "base/limits.h"
#include "language/words/reader.h"

struct block *reader_block(const struct reader *r)
{
    return r->branch ? r->branch : r->step ? r->step : r->top ? r->top : r->file;
}

const struct line *line_keep(struct reader *r, struct line line)
{
    struct line *kept = arena_new(r->arena, struct line);
    *kept = line;
    return kept;
}

struct block *block_new(struct reader *r, enum block_kind kind, const struct line *line)
{
    struct block *block = arena_new(r->arena, struct block);
    block->kind = kind;
    block->line = line;
    block->span = line ? line->span : (struct span){r->source, 0, 0};
    block->title_span = block->mirrors_span = SPAN_NONE;
    return block;
}

struct form *reader_add(struct reader *r, struct block *block, enum form_kind kind,
                        const struct line *line)
{
    struct form form;
    memset(&form, 0, sizeof form); /* the larger kinds too */
    form.kind = kind;
    form.line = line;
    form.span = line ? line->span : (struct span){r->source, 0, 0};
    if (block->forms.room == 0) { /* most steps have two or three lines */
        block->forms.room = 4;
        block->forms.at = arena_array(r->arena, struct form, 4);
    }
    VEC_PUSH(r->arena, &block->forms, form);
    return &block->forms.at[block->forms.count - 1];
}

struct form *reader_add_sentence(struct reader *r, struct block *block, const struct line *line,
                                 const struct sentence *sentence)
{
    struct form *form = reader_add(r, block, FORM_SENTENCE, line);
    form->sentence = arena_new(r->arena, struct sentence);
    *form->sentence = *sentence;
    form->span = sentence->span;
    return form;
}

void reader_broken(struct reader *r, const struct line *line)
{
    if (r->diags->errors == 0) { /* one cause is one error; but no line is left out in silence */
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_LINE_UNKNOWN, line->span,
                                     "nothing could be made of this line");
        diag_help(r->diags, diag, "write it as the manual has it: who does what, and where");
    }
    reader_add(r, reader_block(r), FORM_BROKEN, line);
}

struct cursor reader_cursor(const struct reader *r, const struct line *line, size_t from)
{
    bool drill = r->top && r->top->kind == BLOCK_DRILL;
    bool action = r->top && r->top->kind == BLOCK_ACTION;
    return (struct cursor){.arena = r->arena,
                           .diags = r->diags,
                           .sources = r->shelf->sources,
                           .at = line->tokens + from,
                           .end = line->tokens + line->count,
                           .line_span = line->span,
                           .watch = r->shelf->watch,
                           .sieves = r->shelf->sieves,
                           .metres = r->metres,
                           .drill = drill,
                           .top = r->top,
                           .step = r->step,
                           .branch = r->branch,
                           .players = drill ? LIMIT_ATTACKERS : 5,
                           .roles = action ? r->top->roles.at : NULL,
                           .role_count = action ? r->top->roles.count : 0};
}

/* "A "b" c": a text ends where the next mark of the kind stands. */
static bool is_behind_text(const struct cursor *c, struct span span)
{
    if (span.begin <= c->line_span.begin) {
        return false;
    }
    struct str before = cursor_text(c, (struct span){span.source, span.begin - 1, span.begin});
    return before.size == 1 && before.at[0] == '"';
}

bool reader_used_up(struct cursor *c)
{
    if (cursor_done(c)) {
        return true;
    }
    struct span span = cursor_span(c);
    struct str text = cursor_text(c, span);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_LEFT_OVER, span,
                                 "`%.*s` has no part in this line", STR_ARG(text));
    diag_help(c->diags, diag,
              is_behind_text(c, span)     ? "quotes end a text: write single ones inside it"
              : c->at->kind == TOKEN_WORD ? "leave it out, or put a text in quotes"
                                          : "leave it out");
    return false;
}

struct line line_without_stops(const struct line *line)
{
    size_t count = line->count;
    while (count > 0 && line->tokens[count - 1].kind == TOKEN_MARK &&
           (line->tokens[count - 1].mark == '.' || line->tokens[count - 1].mark == ';')) {
        count--;
    }
    if (count == line->count || count == 0) {
        return *line;
    }
    struct line part = line_part(line, 0, count);
    part.span = line->span; /* as it stands, should it be broken */
    part.comment = line->comment;
    part.comment_span = line->comment_span;
    return part;
}
