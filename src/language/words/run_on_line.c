/* SPDX-License-Identifier: MIT */
/* run_on_line: a run-on line put into the block that is open: its sentences, and behind them its
 * reads. See run_on.h and reader.h. */
#include "language/words/grammar.h"
#include "language/words/run_on.h"

void run_on_hear(struct reader *r, const struct diags *unheard, const struct line *line)
{
    size_t kept = 0;
    struct diags *diags = r->diags;
    for (size_t i = 0; i < diags->all.count; i++) {
        const struct diag *diag = &diags->all.at[i];
        bool mine = diag->span.source == line->span.source &&
                    diag->span.begin >= line->span.begin && diag->span.begin <= line->span.end;
        if (!mine) {
            diags->all.at[kept++] = *diag;
        } else {
            diags->errors -= diag->severity == SEVERITY_ERROR;
            diags->warnings -= diag->severity == SEVERITY_WARNING;
        }
    }
    diags->all.count = kept;
    for (size_t i = 0; i < unheard->all.count; i++) {
        diag_again(diags, &unheard->all.at[i]);
    }
}

static void put_all(struct reader *r, const struct line *line, const struct run_on *run)
{
    struct line bare = line_part(line, 0, line->count);
    size_t plain = run->read_count > 0 ? run->reads[0].first : run->sentences.count;
    for (size_t i = 0; i < plain; i++) {
        const struct line *own = i + 1 == run->sentences.count ? line : line_keep(r, bare);
        reader_add_sentence(r, reader_block(r), own, &run->sentences.at[i]);
    }
    r->begun = true;
    r->sentences += plain;
    for (size_t i = 0; i < run->read_count; i++) {
        const struct run_on_read *read = &run->reads[i];
        size_t end = i + 1 < run->read_count ? run->reads[i + 1].first : run->sentences.count;
        branch_answered(r, i + 1 == run->read_count ? line : line_keep(r, bare), &read->block,
                        &run->sentences.at[read->first], end - read->first);
    }
}

enum { UNDERSTOOD_FEWEST = 1 };

/* All of it, put into the block; false: none of it, and why is in `*unheard`. */
static bool line_put(struct reader *r, const struct line *line, struct diags *unheard, bool *most)
{
    struct cursor c = reader_cursor(r, line, 0);
    struct diags *heard = r->diags;
    struct run_on run = {.read_count = 0};
    *most = false;
    bool note = !run_on_is(&c);
    if (!r->top || (note && !run_on_is_note(&c))) {
        return false;
    }
    c.diags = r->diags = unheard;
    bool read = run_on_read(&c, note, &run) && (run.read_count == 0 || branch_fits(r, line));
    r->diags = heard;
    *most = !read && !note && run.understood >= UNDERSTOOD_FEWEST && unheard->errors > 0;
    if (!read) {
        return false;
    }
    run_on_hear(r, unheard, line);
    for (size_t i = 0; i < run.read_count; i++) {
        struct block *block = block_new(r, BLOCK_READ, line);
        block->conditions = run.reads[i].block.conditions;
        run.reads[i].block = *block;
    }
    put_all(r, line, &run);
    return true;
}

bool run_on_line(struct reader *r, const struct line *line)
{
    struct diags unheard;
    bool most;
    diags_init(&unheard, r->arena);
    if (line_put(r, line, &unheard, &most)) {
        return true;
    }
    if (most) {
        run_on_hear(r, &unheard, line);
        reader_broken(r, line);
    }
    return most;
}

bool run_on_instead(struct reader *r, const struct line *line)
{
    struct diags unheard;
    bool most;
    diags_init(&unheard, r->arena);
    return line_put(r, line, &unheard, &most);
}

bool run_on_asks(struct reader *r, const struct line *line, struct diags **blame)
{
    struct diags *unheard = arena_new(r->arena, struct diags);
    bool most;
    diags_init(unheard, r->arena);
    bool put = line_put(r, line, unheard, &most);
    *blame = most ? unheard : NULL;
    return put;
}
