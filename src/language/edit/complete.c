/* SPDX-License-Identifier: MIT */
/* complete: what could stand at a place. Nothing is known here of what follows what: every word of
 * the tables is put there and read by the reader of books itself, and those that are not refused
 * are offered. So what is offered and what is taken cannot part. */
#include "language/edit/offers.h"
#include "language/edit/paint.h"

#include <string.h>

#include "language/words/vocabulary.h"

enum { PIECES_MOST = 4 }; /* words of one entry that may have been typed already */

struct trier {
    struct context context;
    const candidate_list *candidates;
    edit_offer_list *out;
};

static char low(char c)
{
    return c >= 'A' && c <= 'Z' ? (char)(c - 'A' + 'a') : c;
}

/* Whether `typed` begins `text`, capitals, hyphens and the number of blanks aside, and is not all
 * of it. */
static bool begins(struct str typed, struct str text)
{
    size_t i = 0, k = 0;
    while (i < typed.size && k < text.size) {
        bool blank = typed.at[i] == ' ' || typed.at[i] == '\t' || typed.at[i] == '-';
        bool wanted = text.at[k] == ' ' || text.at[k] == '-';
        if (blank && wanted) {
            while (i < typed.size &&
                   (typed.at[i] == ' ' || typed.at[i] == '\t' || typed.at[i] == '-')) {
                i++;
            }
            k++;
        } else if (low(typed.at[i]) == low(text.at[k])) {
            i++;
            k++;
        } else {
            return false;
        }
    }
    return i == typed.size && k < text.size;
}

/* Whether the line up to `begin` with this word behind it is read without a word against it. */
static bool can_stand(struct trier *t, uint32_t begin, const struct candidate *candidate)
{
    const struct context *context = &t->context;
    struct arena *arena = context->text->arena;
    struct arena_mark mark = arena_mark(arena);
    struct strbuf words;
    struct sources sources;
    struct diags diags;
    struct painted painted = {0};
    strbuf_init(&words, arena);
    strbuf_add(&words, context->above);
    size_t line_at = words.size;
    strbuf_add(&words,
               (struct str){context->before.at + context->line_begin, begin - context->line_begin});
    size_t word_at = words.size;
    strbuf_add(&words, candidate->text);
    size_t word_end = words.size;
    strbuf_char(&words, '\n');
    sources_init(&sources, arena);
    struct edit_text text = {arena, &sources, sources_add(&sources, STR(""), strbuf_str(&words)),
                             NULL};
    const struct book *book = edit_read(&text, &diags);
    bool fine = true;
    for (size_t i = 0; i < diags.all.count; i++) {
        const struct diag *diag = &diags.all.at[i];
        bool against =
            diag->severity == SEVERITY_ERROR || diag->row == &diag_rows[DIAG_TEXT_READ_AS];
        bool here = against && diag->span.source == text.source && diag->span.end > line_at;
        fine = fine && !(here && diag->span.begin < word_end);
    }
    diags.all.count = 0;
    if (fine) {
        paint_book(&text, book, &diags, &painted);
        bool own = painted.class[word_at] == EDIT_QUOTED;
        fine = own == (candidate->class == EDIT_QUOTED) || candidate->text.at[0] == '"';
    }
    arena_release(arena, mark);
    return fine;
}

/* The same line would come out of an offer there is already. */
static bool is_offered(const struct trier *t, uint32_t begin, struct str text)
{
    for (size_t i = 0; i < t->out->count; i++) {
        const struct edit_offer *offer = &t->out->at[i];
        if (offer->begin > begin) {
            continue;
        }
        size_t skip = begin - offer->begin;
        if (offer->text.size == text.size + skip &&
            memcmp(offer->text.at + skip, text.at, text.size) == 0) {
            return true;
        }
    }
    return false;
}

/* Words that open a line open one; values stand behind a setting's word. */
static bool suits_line(const struct trier *t, uint32_t begin, const struct candidate *candidate)
{
    const struct line *line = &t->context.line;
    bool first = line->count == 0 || begin <= line->tokens[0].span.begin;
    switch (candidate->class) {
    case EDIT_HEADING:
    case EDIT_SETTING:
        return first;
    case EDIT_NOTE:
        return first || t->context.top == BLOCK_PRACTICE;
    case EDIT_VALUE:
        return !first && opener_of(line, 0).kind == LINE_SETTING;
    default:
        return true;
    }
}

static void try_from(struct trier *t, uint32_t begin)
{
    struct str typed = {t->context.before.at + begin, t->context.at - begin};
    for (size_t i = 0; i < t->candidates->count; i++) {
        const struct candidate *candidate = &t->candidates->at[i];
        if ((typed.size == 0 && candidate->when_typed) || !begins(typed, candidate->text) ||
            !suits_line(t, begin, candidate) || is_offered(t, begin, candidate->text)) {
            continue;
        }
        bool opens = candidate->sure && begin == t->context.line_begin;
        if (!opens && !can_stand(t, begin, candidate)) {
            continue;
        }
        struct edit_offer offer = {begin,           t->context.at,   candidate->class,
                                   candidate->text, candidate->name, candidate->what};
        VEC_PUSH(t->context.text->arena, t->out, offer);
    }
}

/* From the longest run of words that may be the beginning of an entry to none at all. */
static void try_line(struct trier *t)
{
    const struct line *line = &t->context.line;
    uint32_t at = t->context.at;
    size_t most = line->count < PIECES_MOST ? line->count : PIECES_MOST;
    for (size_t pieces = most; pieces > 0; pieces--) {
        uint32_t begin = line->tokens[line->count - pieces].span.begin;
        try_from(t, begin);
    }
    if (line->count == 0 || line->tokens[line->count - 1].span.end < at ||
        line->tokens[line->count - 1].kind == TOKEN_MARK) {
        try_from(t, at);
    }
}

void edit_complete(const struct edit_text *text, uint32_t at, const char *const *checks,
                   edit_offer_list *out)
{
    candidate_list candidates = {0};
    struct trier trier = {.candidates = &candidates, .out = out};
    context_find(text, at, &trier.context);
    if (trier.context.silent) {
        return;
    }
    offers_gather(&trier.context, checks, &candidates);
    try_line(&trier);
}
