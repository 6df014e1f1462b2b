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
    static const char *const acting[] = {"all", "everybody", "everyone", "others", "rest", NULL};
    enum { MOST = 14 };
    if (!mark_at(line, at, '-') || !stands_free(line, at) ||
        token_is_among(&line->tokens[at + 1], acting)) {
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

/* ---- arrows ---- */

enum { PUT_MOST = 3 }; /* tokens that take the place of one */

/* ->, =>, >, and the letter for it: how many tokens; 0: no arrow. */
static size_t arrow_at(const struct line *line, size_t at)
{
    bool stem = mark_at(line, at, '-') || mark_at(line, at, '=');
    if (mark_at(line, at + stem, '>')) {
        return stem ? 2 : 1;
    }
    const struct token *token = at < line->count ? &line->tokens[at] : NULL;
    return token && (str_is(token->text, "→") || str_is(token->text, "⇒")) ? 1 : 0;
}

/* Where the clause begins that ends at `at`. */
static size_t clause_before(const struct line *line, size_t at)
{
    while (at > 0 && !closes(line, at - 1) && !mark_at(line, at - 1, ':')) {
        at--;
    }
    return at;
}

/* 1 -> 2 -> 5 nail: the arrow is what is done. `said`: what stands before it, read already. */
static bool arrow_passes(const struct line *said)
{
    static const char *const leads[] = {"rev", "reverse", "ball", "swing", "pass", "then", "and",
                                        "dho", "lob",     "skip", "kick",  "inb",  "dump", NULL};
    static const char *const throws[] = {"bounce", "lob",  "skip", "pass", "kick", "dump", "swing",
                                         "hit",    "feed", "in",   "out",  "dho",  "ho",   NULL};
    size_t from = clause_before(said, said->count);
    if (said->count > from + 1 && token_is_among(&said->tokens[said->count - 1], throws)) {
        return true; /* 4 bounce > 2 */
    }
    while (from < said->count && token_is_among(&said->tokens[from], leads)) {
        from++;
    }
    if (from == said->count && from > 0 && !word_at(said, from - 1, "then") &&
        token_is_among(&said->tokens[from - 1], leads) && !word_at(said, from - 1, "and")) {
        return true; /* ball > 4, swing > 3 */
    }
    return from < said->count && is_player(&said->tokens[from]) &&
           (from + 1 == said->count || word_at(said, from + 1, "to"));
}

/* Somebody does something behind it, or somebody who is named before. */
static bool acts_behind(struct reader *r, const struct line *line, size_t at)
{
    struct cursor c = reader_cursor(r, line, at);
    c.watch = NULL;
    if (at >= line->count) {
        return false;
    }
    c.at += is_player(c.at);
    static const char *const ends[] = {"post",  "score", "finish", "scores", "shot",
                                       "shots", "layup", "lay-up", "jumper", "three",
                                       "dunk",  "3",     NULL};
    if (word_among(&c, ends)) { /* 1 > 5 post: where he is; 1 > 3 shot: what comes of it */
        return false;
    }
    static const char *const kinds[] = {"lob",         "skip", "bounce", "lob pass",
                                        "bounce pass", "get",  NULL};
    struct cursor kind = c;
    if (take_among(&kind, kinds) && (kind.at == kind.end || kind.at->kind == TOKEN_MARK)) {
        return false; /* 1 > 3 lob: what pass it is; 3 > 5 get: what comes of it */
    }
    return c.at < c.end && (verb_begins(&c) || arrow_at(line, at + 1) > 0);
}

/* 5 pin 3 -> R corner: where 3 goes, and nothing of the screen. */
static bool of_a_screen(const struct line *said)
{
    static const char *const screens[] = {"scr",     "screen", "screens", "pin",   "pins",
                                          "stag",    "flare",  "pick",    "picks", "back",
                                          "stagger", "dn",     "cross",   "down",  NULL};
    size_t from = clause_before(said, said->count);
    bool screen = false;
    if (from > 0 && mark_at(said, from - 1, ':')) { /* flare: 5 for 2 -> wing */
        from = clause_before(said, from - 1);
    }
    for (size_t i = from; i < said->count; i++) {
        screen = screen || token_is_among(&said->tokens[i], screens);
    }
    return screen && said->tokens[said->count - 1].kind == TOKEN_NUMBER;
}

/* 1 passes to 2 -> 2 shoots: what comes next; 1 -> 2, 3 -> R corner: to. */
static size_t arrow_read(struct reader *r, const struct line *said, const struct line *line,
                         size_t at, size_t size, struct token out[PUT_MOST])
{
    const struct token *token = &line->tokens[at];
    bool passes = arrow_passes(said),
         player = at + size < line->count && is_player(&line->tokens[at + size]);
    struct cursor behind = reader_cursor(r, line, at + size);
    behind.watch = NULL;
    bool next =
        passes ? player && acts_behind(r, line, at + size) && arrow_at(line, at + size + 1) == 0
               : player || (behind.at < behind.end && verb_begins(&behind));
    out[0] = next ? token_mark(token, ',') : token_word(token, "to");
    if (next || passes || said->count == 0 || !of_a_screen(said)) {
        return 1;
    }
    out[0] = token_mark(token, ',');
    out[1] = said->tokens[said->count - 1];
    out[2] = token_word(token, "to");
    return 3;
}

/* 1>2>>3, 1 >> 3: skipped. Gives how many tokens are put. */
static size_t skip_read(const struct line *said, const struct token *token,
                        struct token out[PUT_MOST])
{
    size_t put = 0;
    if (said->count > 1 && clause_before(said, said->count) + 1 < said->count) {
        out[put++] = token_mark(token, ',');
    }
    out[put++] = token_word(token, "skip");
    out[put++] = token_word(token, "to");
    return put;
}

/* b/d, h/o: letters with a slash between. */
static const char *slashed(const struct line *line, size_t at)
{
    static const struct {
        const char *first, *second, *put;
    } rows[] = {{"b", "d", "back-cut"},          {"h", "o", "hand-off"},
                {"w", "o", "without"},           {"d", "s", "down-screen"},
                {"c", "o", "closes-out"},        {"s", "c", "short-corner"},
                {"s", "corner", "short-corner"}, {"b", "p", "bounce-pass"}};
    for (size_t i = 0; mark_at(line, at + 1, '/') && i < sizeof rows / sizeof *rows; i++) {
        if (word_at(line, at, rows[i].first) && word_at(line, at + 2, rows[i].second)) {
            return rows[i].put;
        }
    }
    return NULL;
}

/* One mark between two things that are said: what it stands for. False: itself. */
static bool between_put(struct reader *r, const struct line *line, size_t at, struct token *out)
{
    const struct token *token = &line->tokens[at];
    bool free = stands_free(line, at);
    if (mark_at(line, at, '-') && free) { /* 1 dribbles at 2 - 2 back cuts */
        bool all = word_at(line, at + 1, "all") || word_at(line, at + 1, "everybody");
        *out = token_mark(token, ',');
        return all || (is_player(token + 1) && !is_player(token - 1)) ||
               acts_behind(r, line, at + 1);
    }
    bool plus = mark_at(line, at, '+'), slash = mark_at(line, at, '/');
    if ((plus && free) || ((plus || slash) && players_beside(line, at))) {
        *out = token_word(token, "and"); /* feed 5 + relocate */
        return true;
    }
    *out = token_mark(token, ',');
    bool comes = mark_at(line, at, '=') && free &&
                 token[1].kind == TOKEN_WORD; /* bounce 2 = layup: what comes of it */
    return comes || (slash && free && !alternative(r, line, at));
}

/* period, full stop, new line: how many tokens; 0: no stop. */
static size_t stop_said(const struct line *line, size_t at)
{
    bool two = (word_at(line, at, "new") && word_at(line, at + 1, "line")) ||
               (word_at(line, at, "full") && word_at(line, at + 1, "stop"));
    return at == 0 ? 0 : two ? 2 : word_at(line, at, "period") ? 1 : 0;
}

/* What stands at `at` in other marks: what takes its place, `*put` tokens, if anything; gives how
 * many tokens it is, 0: nothing of the kind. */
static size_t spoken(struct reader *r, const struct line *said, const struct line *line, size_t at,
                     struct token out[PUT_MOST], size_t *put)
{
    const struct token *token = &line->tokens[at];
    *put = 1;
    bool loud = mark_at(line, at, '!');
    size_t stop = loud ? 1 : stop_said(line, at);
    if (stop > 0) {
        *out = token_mark(token, '.');
        *put = closes(line, at + stop) || at == 0 ? 0 : 1;
        return stop;
    }
    size_t arrow = arrow_at(line, at);
    if (arrow == 1 && said->count > 0 && arrow_at(line, at + 1) == 1 && at + 2 < line->count &&
        is_player(&line->tokens[at + 2])) {
        *put = skip_read(said, token, out);
        return 2;
    }
    if (arrow > 0) {
        *put = arrow_read(r, said, line, at, arrow, out);
        return arrow;
    }
    const char *letters = slashed(line, at);
    if (letters) {
        *out = token_word(token, letters);
        return word_at(line, at + 3, "cut") ? 4 : 3;
    }
    if (word_at(line, at, "w") && mark_at(line, at + 1, '/')) {
        *out = token_word(token, "with");
        return 2;
    }
    return between_put(r, line, at, out) ? 1 : 0;
}

static bool may_be_spoken(const struct token *token)
{
    return token->kind == TOKEN_MARK
               ? strchr("!-/>=+", token->mark) != NULL
               : token->kind != TOKEN_NUMBER &&
                     (str_is(token->text, "new") || str_is(token->text, "full") ||
                      str_is(token->text, "period") ||
                      (token->text.size > 2 && token->text.at[0] == '\xe2'));
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
    own.tokens = arena_array(r->arena, struct token, line->count * PUT_MOST);
    for (size_t at = 0; at < line->count;) {
        struct token put[PUT_MOST];
        size_t count = 0;
        own.count = size;
        size_t aside = by_the_way(line, at);
        size_t taken = aside > 0 ? aside : spoken(r, &own, line, at, put, &count);
        if (aside > 0) {
            struct cursor c = reader_cursor(r, line, at);
            note_left_out(&c,
                          span_join(line->tokens[at + 1].span, line->tokens[at + aside - 2].span));
        } else if (taken == 0) {
            own.tokens[size++] = line->tokens[at];
        } else {
            for (size_t i = 0; i < count; i++) {
                own.tokens[size++] = put[i];
            }
        }
        at += taken > 0 ? taken : 1;
    }
    own.count = size;
    return size > 0 ? own : *line;
}
