/* SPDX-License-Identifier: MIT */
/* aloud: headings as they are said: `second step: the swing`, `2nd pic`, `frame 3`, `new play, call
 * it Lantern`. Looked for once in all lines of a file, before any is read, and put as they are
 * written; a line that is anything else is left alone. */
#include "language/words/grammar.h"
#include "language/words/reader.h"

#include <string.h>

/* second, 2nd, next: which one; 0: not said by number. False: none of them here. */
static bool take_ordinal(struct cursor *c, int *number)
{
    static const struct entry words[] = {{"first", 1},   {"second", 2}, {"third", 3}, {"fourth", 4},
                                         {"fifth", 5},   {"sixth", 6},  {"next", 0},  {"last", 0},
                                         {"another", 0}, {"new", 0},    {"final", 0}, {NULL, 0}};
    static const char *const ends[] = {"st", "nd", "rd", "th", NULL};
    struct cursor trial = *c;
    struct span span;
    int said = take_entry(&trial, words);
    if (said < 0 && (!integer_read(&trial, &said, &span) || !take_among(&trial, ends))) {
        return false;
    }
    *number = said;
    c->at = trial.at;
    return true;
}

/* A heading ends here, or its title begins: nothing that could be a sentence. */
static bool title_may_begin(const struct cursor *c)
{
    const struct token *next = c->at < c->end ? c->at : NULL;
    return !next || next->kind == TOKEN_QUOTED ||
           (next->kind == TOKEN_MARK &&
            (next->mark == ':' || next->mark == '-' || next->mark == '.' || next->mark == ','));
}

/* The number of the step; 0: none said; -1: no such heading. */
static int step_said(struct cursor *c)
{
    static const char *const pictures[] = {"frame", "picture", "pic",   "diagram",
                                           "phase", "panel",   "slide", NULL};
    struct span span;
    int number = 0;
    bool ordinal = take_ordinal(c, &number);
    bool picture = take_among(c, pictures);
    if (!picture && (!ordinal || !take_words(c, "step"))) {
        return -1;
    }
    if (number == 0 && picture) {
        integer_read(c, &number, &span);
    }
    if (!title_may_begin(c)) {
        return -1;
    }
    static const char marks[] = {':', '-', '.', ','};
    for (size_t i = 0; i < sizeof marks; i++) {
        take_mark(c, marks[i]);
    }
    return number;
}

/* new play, call it Lantern; a play called Lantern. */
static bool play_said(struct cursor *c)
{
    static const char *const news[] = {"new play",    "next play",  "play is called",
                                       "play called", "play named", NULL};
    static const char *const names[] = {"call it",     "called",  "named", "it is called",
                                        "it's called", "name is", NULL};
    bool whole = word_is(c, 0, "play");
    if (!take_among(c, news)) {
        return false;
    }
    take_mark(c, ',');
    take_mark(c, ':');
    bool named = take_among(c, names);
    take_mark(c, ':');
    return (whole || named || (c->at < c->end && c->at->kind == TOKEN_QUOTED)) && c->at < c->end;
}

static void put_heading(struct reader *r, struct line *line, const char *word, int number,
                        const struct token *rest)
{
    size_t left = (size_t)(line->tokens + line->count - rest);
    struct token *tokens = arena_array(r->arena, struct token, left + 2);
    size_t size = 0;
    tokens[size++] = token_word(line->tokens, word);
    if (number > 0) {
        tokens[size] = token_number(r->arena, tokens, number);
        tokens[size].span.begin = tokens[size].span.end;
        size++;
    }
    for (size_t i = 0; i < left; i++) {
        tokens[size++] = rest[i];
    }
    line->tokens = tokens;
    line->count = size;
}

static void insert_line(struct reader *r, size_t index, struct line line)
{
    VEC_PUSH(r->arena, &r->lines.all, line);
    for (size_t i = r->lines.all.count - 1; i > index; i--) {
        r->lines.all.at[i] = r->lines.all.at[i - 1];
    }
    r->lines.all.at[index] = line;
}

/* A line of its own for what stands behind a title: `word` and the tokens from `rest` on. */
static void put_behind(struct reader *r, size_t index, const char *word, size_t rest)
{
    struct line *line = &r->lines.all.at[index], behind = *line;
    behind.count = line->count - rest + 1;
    behind.tokens = arena_array(r->arena, struct token, behind.count);
    behind.tokens[0] = token_word(&line->tokens[rest], word);
    behind.tokens[0].span.end = behind.tokens[0].span.begin;
    for (size_t i = 1; i < behind.count; i++) {
        behind.tokens[i] = line->tokens[rest + i - 1];
    }
    line->comment = (struct str){0};
    line->comment_span = SPAN_NONE;
    line->count = rest;
    while (line->count > 1 && line->tokens[line->count - 1].kind == TOKEN_MARK) {
        line->count--;
    }
    insert_line(r, index + 1, behind);
}

/* practice Tuesday, 90 minutes; drill "Shell" 4 on 4: what it lasts, what it is about. */
static void title_runs_on(struct reader *r, size_t index, bool practice)
{
    const struct line *line = &r->lines.all.at[index];
    const struct token *last = &line->tokens[line->count - 1];
    bool quoted = line->count > 2 && line->tokens[1].kind == TOKEN_QUOTED;
    bool lasts = last->kind == TOKEN_MEASURE && last->unit == UNIT_MINUTES && line->count > 3 &&
                 token_is_mark(&last[-1], ',');
    if (str_is(line->tokens[0].text, "practice") && lasts) {
        put_behind(r, index, "lasts", line->count - 1);
    } else if (str_is(line->tokens[0].text, "drill") && quoted && !practice) {
        size_t rest = 2;
        while (rest < line->count && line->tokens[rest].kind == TOKEN_MARK) {
            rest++;
        }
        if (rest < line->count && !str_is(line->tokens[rest].text, "mirrors") &&
            line->tokens[rest].kind != TOKEN_QUOTED) {
            put_behind(r, index, "about", rest);
        }
    }
}

/* ---- settings run together ---- */

static bool word_next(const struct line *line, size_t at, const char *const *words)
{
    return at < line->count && token_is_among(&line->tokens[at], words);
}

static bool player_next(const struct line *line, size_t at)
{
    return at < line->count && line->tokens[at].kind == TOKEN_NUMBER &&
           !line->tokens[at].possessive;
}

/* ball 1 defense man step: another line of a play's head begins here. */
static bool setting_at(const struct line *line, size_t at)
{
    static const char *const defenses[] = {"man", "zone", "none", "press", "box", "triangle", NULL};
    static const char *const floors[] = {"half", "full", NULL};
    const struct token *token = &line->tokens[at];
    if (token->kind != TOKEN_WORD || token->possessive) {
        return false;
    }
    bool end = at + 1 == line->count;
    if (str_is(token->text, "ball")) {
        return player_next(line, at + 1);
    }
    if (str_is(token->text, "defense") || str_is(token->text, "defence")) {
        return word_next(line, at + 1, defenses) ||
               (!end && line->tokens[at + 1].kind == TOKEN_GROUP);
    }
    if (str_is(token->text, "start")) {
        return player_next(line, at + 1);
    }
    if (str_is(token->text, "floor")) {
        return word_next(line, at + 1, floors);
    }
    return str_is(token->text, "step") && (end || line->tokens[at + 1].kind == TOKEN_QUOTED);
}

/* The part of a line is a line by itself. */
static bool reads_alone(struct reader *r, const struct line *part)
{
    struct opener opener = opener_of(part, 0);
    struct setting_form form;
    if (opener.kind == LINE_STEP) {
        return part->count == 1 || (part->count == 2 && part->tokens[1].kind == TOKEN_QUOTED);
    }
    return opener.kind == LINE_SETTING && setting_read(r, part, (enum setting)opener.which, &form);
}

static struct line piece_of(const struct line *line, size_t from, size_t to)
{
    struct line piece = *line;
    while (to > from + 1 && line->tokens[to - 1].kind == TOKEN_MARK) {
        to--;
    }
    piece.tokens = &line->tokens[from];
    piece.count = to - from;
    return piece;
}

/* ball 1 defense man step: each in a line of its own, where each can be read. */
static void settings_run_on(struct reader *r, size_t index)
{
    static const char *const heads[] = {"ball", "defense", "defence", "start", "floor", NULL};
    enum { MOST = 6 };
    size_t cuts[MOST + 1] = {0}, count = 1;
    const struct line line = r->lines.all.at[index];
    if (line.count < 3 || line.broken || !token_is_among(&line.tokens[0], heads)) {
        return;
    }
    for (size_t at = 2; at < line.count && count < MOST; at++) {
        if (setting_at(&line, at)) {
            cuts[count++] = at;
        }
    }
    cuts[count] = line.count;
    for (size_t i = 0; i < count; i++) {
        struct line piece = piece_of(&line, cuts[i], cuts[i + 1]);
        if (count == 1 || !reads_alone(r, &piece)) {
            return;
        }
    }
    for (size_t i = count; i-- > 1;) {
        struct line piece = piece_of(&line, cuts[i], cuts[i + 1]);
        if (i + 1 < count) {
            piece.comment = (struct str){0};
            piece.comment_span = SPAN_NONE;
        }
        insert_line(r, index + 1, piece);
    }
    struct line *first = &r->lines.all.at[index];
    *first = piece_of(&line, 0, cuts[1]);
    first->comment = (struct str){0};
    first->comment_span = SPAN_NONE;
}

/* Most lines begin as no heading does: a look at two tokens tells. */
static bool may_be_heading(const struct line *line)
{
    if (line->count == 0 || line->broken) {
        return false;
    }
    const struct token *first = &line->tokens[0];
    if (first->kind == TOKEN_NUMBER) { /* 2nd */
        bool ends = line->count > 1 && line->tokens[1].kind == TOKEN_WORD;
        return line->count > 1 &&
               (first->text.at[0] > '9' || (ends && line->tokens[1].text.size == 2));
    }
    return first->kind == TOKEN_WORD && first->first != '\0' && strchr("acfilnpstd", first->first);
}

void headings_aloud(struct reader *r)
{
    bool practice = false;
    struct diags *heard = r->diags, unheard;
    diags_init(&unheard, r->arena);
    r->diags = &unheard;
    for (size_t i = 0; i < r->lines.all.count; i++) {
        struct line *line = &r->lines.all.at[i];
        settings_run_on(r, i);
        line = &r->lines.all.at[i];
        if (!may_be_heading(line)) {
            continue;
        }
        struct cursor c = reader_cursor(r, line, 0), play = c;
        int number = step_said(&c);
        if (number >= 0) {
            put_heading(r, line, "step", number, c.at);
        } else if (play_said(&play)) {
            put_heading(r, line, "play", 0, play.at);
        } else {
            title_runs_on(r, i, practice);
        }
        struct opener opener = opener_of(&r->lines.all.at[i], 0);
        practice = opener.kind == LINE_HEADING_0 ? opener.which == BLOCK_PRACTICE : practice;
    }
    r->diags = heard;
}
