/* SPDX-License-Identifier: MIT */
/* tidy: see tidy.h. Here: a book's blocks as indented lines, with their comments and blank lines.
 */
#include "language/tidy/tidy.h"

#include "language/syntax/chars.h"
#include "language/tidy/tidy_form.h"

struct printer {
    struct strbuf out;
    const struct sources *sources;
    VEC(const struct line *)
    pending;         /* comments and blank lines that take the next line's indent */
    unsigned indent; /* of the line last printed */
};

static void start_line(struct printer *p, unsigned indent)
{
    for (unsigned i = 0; i < indent; i++) {
        strbuf_char(&p->out, ' ');
    }
}

/* Blank lines stand between others, one at a time. */
static void print_pending(struct printer *p, unsigned indent)
{
    bool blank = false;
    for (size_t i = 0; i < p->pending.count; i++) {
        const struct line *line = p->pending.at[i];
        if (line->comment.size == 0) {
            blank = p->out.size > 0;
            continue;
        }
        strbuf_text(&p->out, blank ? "\n" : "");
        start_line(p, indent);
        strbuf_add(&p->out, line->comment);
        strbuf_char(&p->out, '\n');
        blank = false;
    }
    p->pending.count = 0;
    strbuf_text(&p->out, blank ? "\n" : "");
}

static void begin(struct printer *p, unsigned indent)
{
    print_pending(p, indent);
    start_line(p, indent);
    p->indent = indent;
}

static void finish(struct printer *p, const struct line *line)
{
    while (p->out.size > 0 &&
           (p->out.at[p->out.size - 1] == ' ' || p->out.at[p->out.size - 1] == '\t')) {
        p->out.size--; /* behind a quote that nothing closes */
    }
    if (line && line->comment.size > 0) {
        strbuf_text(&p->out, "  ");
        strbuf_add(&p->out, line->comment);
    }
    strbuf_char(&p->out, '\n');
}

static void print_line(struct printer *p, const struct form *form)
{
    struct strbuf *out = &p->out;
    switch (form->kind) {
    case FORM_BROKEN:
        tidy_raw(out, p->sources, form->line);
        break;
    case FORM_VERSION:
        strbuf_print(out, "courtwright %d", form->number);
        break;
    case FORM_SETTING:
        tidy_setting(out, form->setting);
        break;
    case FORM_STANDING:
        tidy_who(out, &form->standing->defender);
        strbuf_text(out, " guards ");
        tidy_who(out, &form->standing->player);
        break;
    case FORM_SENTENCE:
        tidy_sentence(out, form->sentence);
        break;
    case FORM_PLAN:
        tidy_plan(out, form->plan);
        break;
    case FORM_ROW:
        tidy_row(out, form->row);
        break;
    case FORM_ROSTER:
    case FORM_LINEUP:
        tidy_roster(out, form);
        break;
    case FORM_INCLUDE:
    case FORM_CHAPTER:
        strbuf_text(out, form->kind == FORM_INCLUDE ? "include " : "chapter ");
        text_quote(out, form->title);
        break;
    default:
        tidy_note(out, form->kind, form->note);
    }
}

static void print_forms(struct printer *p, const struct block *block, unsigned indent);

static void print_block(struct printer *p, const struct block *block, unsigned indent)
{
    if (block->implied) {
        print_forms(p, block, indent);
        return;
    }
    begin(p, indent);
    if (block->broken) {
        tidy_raw(&p->out, p->sources, block->line);
    } else {
        tidy_heading(&p->out, block);
    }
    if (block->one_line) {
        strbuf_text(&p->out, ", ");
        tidy_sentence(&p->out, block->forms.at[0].sentence);
    }
    finish(p, block->line);
    if (!block->one_line) {
        print_forms(p, block, indent + 2);
    }
}

/* A station stands under its `stations`. */
static bool is_station(const struct form *form)
{
    return form->kind == FORM_PLAN && form->plan->kind == PLAN_STATION;
}

static void print_forms(struct printer *p, const struct block *block, unsigned indent)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_BLANK || form->kind == FORM_COMMENT) {
            VEC_PUSH(p->out.arena, &p->pending, form->line);
        } else if (form->kind == FORM_BLOCK) {
            print_block(p, form->block, indent);
        } else {
            begin(p, indent + (is_station(form) ? 2 : 0));
            print_line(p, form);
            finish(p, form->line);
        }
    }
}

/* What stands behind the last line stays under it, or at the margin if it was there. */
static void print_last(struct printer *p)
{
    while (p->pending.count > 0 && p->pending.at[p->pending.count - 1]->comment.size == 0) {
        p->pending.count--;
    }
    if (p->pending.count > 0) {
        bool margin = p->pending.at[p->pending.count - 1]->indent == 0;
        print_pending(p, margin ? 0 : p->indent);
    }
}

struct str tidy_book(struct arena *arena, const struct sources *sources, const struct book *book)
{
    if (book->file->forms.count == 0) { /* no text, or none at all: nothing of it may be lost */
        return sources->all.at[book->file->span.source].text;
    }
    struct printer printer = {.sources = sources};
    strbuf_init(&printer.out, arena);
    print_forms(&printer, book->file, 0);
    print_last(&printer);
    return strbuf_str(&printer.out);
}

static bool names_version(const struct book *book)
{
    for (size_t i = 0; i < book->file->forms.count; i++) {
        if (book->file->forms.at[i].kind == FORM_VERSION) {
            return true;
        }
    }
    return false;
}

struct str tidy_upgrade(struct arena *arena, const struct sources *sources, const struct book *book)
{
    struct str text = tidy_book(arena, sources, book);
    if (text.size == 0 || book->file->forms.count == 0 || names_version(book)) {
        return text;
    }
    return str_format(arena, "courtwright %d\n%.*s", LANGUAGE_VERSION, STR_ARG(text));
}

static bool has_broken_version(const struct block *block)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        bool broken = form->kind == FORM_BROKEN && form->line->count > 0;
        if ((broken && str_is(form->line->tokens[0].text, "courtwright")) ||
            (form->kind == FORM_BLOCK && has_broken_version(form->block))) {
            return true;
        }
    }
    return false;
}

bool tidy_can_upgrade(const struct book *book)
{
    return !has_broken_version(book->file);
}
