/* SPDX-License-Identifier: MIT */
/* context: see context.h. Reads the lines, not the forms: those above may be half written. */
#include "language/edit/context.h"

/* Lines of the same block that are kept to try a line with: what points back reaches no further. */
enum { NEAR_LINES = 10 };

struct headings { /* indices of lines; -1: none */
    int top, step, branch;
};

static void note_heading(const struct line *line, int index, struct headings *open)
{
    switch (opener_of(line, 0).kind) {
    case LINE_HEADING_0:
    case LINE_CHAPTER:
    case LINE_INCLUDE:
        *open = (struct headings){index, -1, -1};
        break;
    case LINE_STEP:
        open->step = index;
        open->branch = -1;
        break;
    case LINE_BRANCH:
        open->branch = index;
        break;
    default:
        break;
    }
}

static void keep_line(struct strbuf *out, const struct context *context, const struct line *line)
{
    strbuf_add(out, (struct str){context->before.at + line->span.begin,
                                 line->span.end - line->span.begin});
    strbuf_char(out, '\n');
}

/* The headings that are open, and the nearest other lines under the innermost but one. */
static void keep_above(struct context *context, const struct lines *lines, int current,
                       const struct headings *open)
{
    struct strbuf out;
    int block = open->step >= 0 ? open->step : open->top, from = current, near = 0;
    while (from > block + 1 && near < NEAR_LINES) {
        from--;
        near += lines->all.at[from].count > 0;
    }
    strbuf_init(&out, context->text->arena);
    const int headings[] = {open->top, open->step, open->branch};
    for (int i = 0; i < 3; i++) {
        if (headings[i] >= 0 && headings[i] < from) {
            keep_line(&out, context, &lines->all.at[headings[i]]);
        }
    }
    for (int i = from; i < current; i++) {
        if (lines->all.at[i].count > 0) {
            keep_line(&out, context, &lines->all.at[i]);
        }
    }
    context->above = strbuf_str(&out);
}

/* The line of the source in which `at` stands, and those that go on in it. */
static int find_line(struct context *context, struct lines *lines)
{
    const struct source *source = &context->text->sources->all.at[context->text->source];
    int current = (int)source_place(source, context->at).line - 1;
    static const struct line empty;
    if (current >= (int)lines->all.count) {
        VEC_PUSH(context->text->arena, &lines->all, empty);
        current = (int)lines->all.count - 1;
    }
    context->line = lines->all.at[current];
    context->line_begin =
        context->line.count > 0 ? context->line.tokens[0].span.begin : context->at;
    while (current > 0 && line_goes_on(&lines->all.at[current - 1])) {
        const struct line *first = &lines->all.at[--current];
        context->line = line_join(context->text->arena, first, &context->line);
        context->line_begin = first->tokens[0].span.begin;
    }
    return current;
}

static bool in_comment(const struct context *context)
{
    const struct line *line = &context->line;
    return line->comment.size > 0 && context->at > line->comment_span.begin;
}

static enum block_kind top_kind(const struct lines *lines, int top)
{
    struct opener opener = {LINE_OTHER, 0};
    if (top >= 0) {
        opener = opener_of(&lines->all.at[top], 0);
    }
    return opener.kind == LINE_HEADING_0 ? (enum block_kind)opener.which : BLOCK_FILE;
}

static const struct block *play_at(const struct context *context)
{
    const struct block *found = NULL;
    const struct block *file = context->book->file;
    for (size_t i = 0; i < file->forms.count; i++) {
        const struct form *form = &file->forms.at[i];
        if (form->kind == FORM_BLOCK && form->block->span.source == context->text->source &&
            form->block->span.begin <= context->at) {
            found = form->block;
        }
    }
    return found && (found->kind == BLOCK_PLAY || found->kind == BLOCK_DRILL) ? found : NULL;
}

/* What stands up to `at`, as a source of its own: a quote that goes on behind it is open there. */
static void read_before(struct context *context, struct lines *lines)
{
    struct sources *own = arena_new(context->text->arena, struct sources);
    struct diags unsaid;
    sources_init(own, context->text->arena);
    diags_init(&unsaid, context->text->arena);
    lines_read(context->text->arena, own, sources_add(own, STR(""), context->before), &unsaid,
               lines);
}

void context_find(const struct edit_text *text, uint32_t at, struct context *out)
{
    struct str whole = text->sources->all.at[text->source].text;
    struct lines lines = {0};
    struct headings open = {-1, -1, -1};
    struct diags diags;
    at = at < whole.size ? at : (uint32_t)whole.size;
    while (at > 0 && at < whole.size && ((unsigned char)whole.at[at] & 0xC0) == 0x80) {
        at--; /* not inside a letter */
    }
    *out = (struct context){.text = text, .before = {whole.at, at}, .at = at};
    out->book = edit_read(text, &diags);
    out->play = play_at(out);
    read_before(out, &lines);
    if (lines.all.count == 0 && at > 0) {
        out->silent = true;
        return;
    }
    int current = find_line(out, &lines);
    for (int i = 0; i < current; i++) {
        note_heading(&lines.all.at[i], i, &open);
    }
    out->top = top_kind(&lines, open.top);
    out->silent = in_comment(out);
    keep_above(out, &lines, current, &open);
    if (out->line.count > 1 && out->line.tokens[1].kind == TOKEN_QUOTED) {
        out->action = out->line.tokens[1].text;
    }
}
