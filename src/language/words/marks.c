/* SPDX-License-Identifier: MIT */
/* marks: how a line is punctuated where it was said or typed in haste: `!`, `->`, `w/`, a slash
 * between two sentences, dashes around what is said by the way, and marks that a phone wrote down
 * as words (period, new line). Gives the line with the marks the grammar knows; looks at no other
 * word. */
#include "language/words/grammar.h"
#include "language/words/reader.h"

#include <string.h>

static bool word_at(const struct line *line, size_t at, const char *word)
{
    return at < line->count && token_is_word(&line->tokens[at], word);
}

static bool mark_at(const struct line *line, size_t at, char mark)
{
    return at < line->count && token_is_mark(&line->tokens[at], mark);
}

static bool closes(const struct line *line, size_t at)
{
    return at >= line->count || mark_at(line, at, ',') || mark_at(line, at, '.') ||
           mark_at(line, at, ';');
}

/* Blanks on both sides. */
static bool stands_free(const struct line *line, size_t at)
{
    const struct token *token = &line->tokens[at];
    return at > 0 && at + 1 < line->count && token[-1].span.end < token->span.begin &&
           token->span.end < token[1].span.begin;
}

/* 1 - eyes at the rim - comes off: words alone between two dashes; gives how many tokens that is.
 */
static size_t by_the_way(const struct line *line, size_t at)
{
    enum { MOST = 14 };
    if (!mark_at(line, at, '-') || !stands_free(line, at)) {
        return 0;
    }
    for (size_t i = at + 1; i < line->count && i < at + MOST; i++) {
        if (mark_at(line, i, '-') && stands_free(line, i)) {
            return i > at + 1 ? i + 1 - at : 0;
        }
        if (line->tokens[i].kind != TOKEN_WORD && !mark_at(line, i, ',')) {
            return 0;
        }
    }
    return 0;
}

/* 2 shoots / passes to 4: one of the two, and no sentence behind the other; hands ready is none. */
static bool alternative(struct reader *r, const struct line *line, size_t at)
{
    struct cursor c = reader_cursor(r, line, at + 1);
    c.watch = NULL;
    return verb_begins(&c) && !subject_verb_is(&c) && !aside_head_is(&c) && !remark_is(&c);
}

static bool is_player(const struct token *token)
{
    return token->kind == TOKEN_NUMBER || token->kind == TOKEN_DEFENDER;
}

/* 2+3, 4/5: both of them. */
static bool players_beside(const struct line *line, size_t at)
{
    return at > 0 && at + 1 < line->count && !stands_free(line, at) &&
           is_player(&line->tokens[at - 1]) && is_player(&line->tokens[at + 1]);
}

/* What stands at `at` in other marks: what takes its place, if anything; gives how many tokens it
 * is, 0: nothing of the kind. */
static size_t spoken(struct reader *r, const struct line *line, size_t at, struct token *out,
                     bool *none)
{
    const struct token *token = &line->tokens[at];
    *none = false;
    if (mark_at(line, at, '!')) {
        *out = token_mark(token, '.');
        *none = closes(line, at + 1) || at == 0;
        return 1;
    }
    bool stem = mark_at(line, at, '-') || mark_at(line, at, '=');
    if (mark_at(line, at + stem, '>')) { /* 1 -> 2, 1>2 */
        *out = token_word(token, "to");
        return stem ? 2 : 1;
    }
    if ((mark_at(line, at, '+') || mark_at(line, at, '/')) && players_beside(line, at)) {
        *out = token_word(token, "and");
        return 1;
    }
    if (word_at(line, at, "w") && mark_at(line, at + 1, '/')) {
        *out = token_word(token, "with");
        return 2;
    }
    if (mark_at(line, at, '/') && stands_free(line, at) && !alternative(r, line, at)) {
        *out = token_mark(token, ',');
        return 1;
    }
    bool two = word_at(line, at, "new") && word_at(line, at + 1, "line");
    two = two || (word_at(line, at, "full") && word_at(line, at + 1, "stop"));
    if (at > 0 && (two || word_at(line, at, "period"))) {
        *out = token_mark(token, '.');
        *none = closes(line, at + (two ? 2 : 1));
        return two ? 2 : 1;
    }
    return 0;
}

static bool may_be_spoken(const struct token *token)
{
    return token->kind == TOKEN_MARK ? strchr("!-/>=+", token->mark) != NULL
                                     : token->kind == TOKEN_WORD && (str_is(token->text, "new") ||
                                                                     str_is(token->text, "full") ||
                                                                     str_is(token->text, "period"));
}

struct line marks_as_spoken(struct reader *r, const struct line *line)
{
    struct line own = *line;
    size_t from = 0, size = 0;
    while (from < line->count && !may_be_spoken(&line->tokens[from])) {
        from++;
    }
    if (from == line->count || line->broken) {
        return own;
    }
    own.tokens = arena_array(r->arena, struct token, line->count);
    for (size_t at = 0; at < line->count;) {
        struct token token;
        bool none;
        size_t aside = by_the_way(line, at);
        size_t taken = aside > 0 ? aside : spoken(r, line, at, &token, &none);
        if (aside > 0) {
            struct cursor c = reader_cursor(r, line, at);
            note_left_out(&c,
                          span_join(line->tokens[at + 1].span, line->tokens[at + aside - 2].span));
        } else if (taken == 0) {
            own.tokens[size++] = line->tokens[at];
        } else if (!none) {
            own.tokens[size++] = token;
        }
        at += taken > 0 ? taken : 1;
    }
    own.count = size;
    return size > 0 ? own : *line;
}
