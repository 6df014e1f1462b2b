/* SPDX-License-Identifier: MIT */
/* token: words, quotes, defenders, check ids and marks of one line. Knows characters and the number
 * words; no vocabulary. */
#include "language/syntax/scan.h"

#include <string.h>

struct span scan_span(const struct scan *scan, const char *from, const char *to)
{
    return (struct span){scan->source, (uint32_t)(from - scan->text), (uint32_t)(to - scan->text)};
}

struct token *scan_add(struct scan *scan, enum token_kind kind, const char *from)
{
    if (scan->count == LIMIT_TOKENS) {
        scan->full = true;
        scan->count--; /* the line is given up: what it says no longer matters */
    }
    struct token *token = &scan->tokens[scan->count++];
    *token = (struct token){.kind = kind, .text = {from, (size_t)(scan->at - from)}};
    return token;
}

static bool glues(struct letter letter)
{
    return letter_is_letter(letter) || letter_is_digit(letter);
}

static int number_word(struct str word)
{
    static const char *const words[] = {"one",   "two",   "three", "four", "five",   "six",
                                        "seven", "eight", "nine",  "ten",  "eleven", "twelve"};
    bool may = word.size >= 3 && word.size <= 6 && strchr("otfsen", word.at[0] | 0x20);
    for (int i = 0; i < 12 && may; i++) { /* most words are none by their first letter */
        if ((word.at[0] | 0x20) == words[i][0] && str_equal_fold(word, str_of(words[i]))) {
            return i + 1;
        }
    }
    return 0;
}

/* the open one, the other one: somebody or something, and not the player 1. */
static bool stands_for_a_noun(const struct scan *scan, struct str word)
{
    static const char *const what[] = {"open", "free", "other",  "wrong", "right",
                                       "same", "last", "second", "next"};
    const struct token *before = scan->count >= 2 ? &scan->tokens[scan->count - 1] : NULL;
    if (!before || word.size != 3 || !str_equal_fold(word, STR("one")) ||
        !str_equal_fold(before[-1].text, STR("the"))) {
        return false;
    }
    for (size_t i = 0; i < sizeof what / sizeof *what; i++) {
        if (str_equal_fold(before->text, str_of(what[i]))) {
            return true;
        }
    }
    return false;
}

/* letter { letter | digit | "'" letter }; `'s` at its end is left for the possessive. */
static const char *word_end(const struct scan *scan, const char *at)
{
    for (;;) {
        while (at < scan->end && ((*at >= 'a' && *at <= 'z') || (*at >= '0' && *at <= '9'))) {
            at++;
        }
        struct letter letter = scan_peek(scan, at);
        if (glues(letter) && at < scan->end) {
            at += letter.size;
            continue;
        }
        const char *behind = at + letter.size;
        if (letter.code != '\'' || behind >= scan->end ||
            !letter_is_letter(scan_peek(scan, behind))) {
            return at;
        }
        struct letter next = scan_peek(scan, behind);
        bool owns = (next.code == 's' || next.code == 'S') && !glues(scan_peek(scan, behind + 1));
        if (owns) {
            return at;
        }
        at = behind;
    }
}

/* x3, x 3, x three: `at` stands behind the x. False: the x is something else. */
static bool scan_defender(struct scan *scan, const char *from, struct str word)
{
    const char *digits = from + 1;
    if (word.size == 1) {
        while (scan_peek(scan, digits).code == ' ' && digits < scan->end) {
            digits += scan_peek(scan, digits).size;
        }
        digits += scan_peek(scan, digits).code == '-' ? scan_peek(scan, digits).size : 0;
    }
    int number = 0;
    const char *end = digits;
    for (; end < scan->end && *end >= '0' && *end <= '9'; end++) {
        number = number < 1000 ? number * 10 + (*end - '0') : number;
    }
    if (end == digits && digits < scan->end) {
        end = word_end(scan, digits);
        number = number_word((struct str){digits, (size_t)(end - digits)});
    }
    if (end == digits || (number == 0 && *digits != '0') || glues(scan_peek(scan, end))) {
        return false;
    }
    scan->at = end;
    struct token *token = scan_add(scan, TOKEN_DEFENDER, from);
    token->number = number;
    token->integer = true;
    token->possessive = scan_possessive(scan);
    return true;
}

/* space.close, ball.double-dribble: `at` stands on the point behind a word. */
static bool scan_check_id(struct scan *scan, const char *from)
{
    const char *at = scan->at;
    if (at >= scan->end || *at != '.' || !letter_is_letter(scan_peek(scan, at + 1))) {
        return false;
    }
    at++;
    for (;;) {
        while (at < scan->end && glues(scan_peek(scan, at))) {
            at += scan_peek(scan, at).size;
        }
        struct letter mark = scan_peek(scan, at);
        if (mark.code != '-' || !letter_is_letter(scan_peek(scan, at + mark.size))) {
            break;
        }
        at += mark.size;
    }
    scan->at = at;
    scan_add(scan, TOKEN_CHECK_ID, from);
    return true;
}

/* half a second: `at` stands behind the half. False: no unit follows. */
static bool scan_half(struct scan *scan, const char *from)
{
    const char *behind = scan->at, *at = behind;
    while (scan_peek(scan, at).code == ' ' && at < scan->end) {
        at += scan_peek(scan, at).size;
    }
    const char *end = word_end(scan, at);
    struct str word = {at, (size_t)(end - at)};
    if (!str_equal_fold(word, STR("a")) && !str_equal_fold(word, STR("an"))) {
        return false;
    }
    scan->at = end;
    struct token *token = scan_add(scan, TOKEN_WORD, from);
    scan_unit(scan, token);
    if (token->kind != TOKEN_MEASURE) {
        scan->count--;
        scan->at = behind;
        return false;
    }
    token->number = 0.5;
    return true;
}

static void scan_word(struct scan *scan)
{
    const char *from = scan->at;
    const char *end = word_end(scan, from);
    struct str word = {from, (size_t)(end - from)};
    if ((*from == 'x' || *from == 'X') && scan_defender(scan, from, word)) {
        return;
    }
    scan->at = end;
    if (scan_check_id(scan, from)) {
        return;
    }
    if (str_equal_fold(word, STR("comma"))) { /* as a phone writes down what it hears */
        scan_add(scan, TOKEN_MARK, from)->mark = ',';
        return;
    }
    bool half = str_equal_fold(word, STR("half")) && scan_half(scan, from);
    if (half) {
        return;
    }
    int number = stands_for_a_noun(scan, word) ? 0 : number_word(word);
    struct token *token = scan_add(scan, number ? TOKEN_NUMBER : TOKEN_WORD, from);
    token->number = number;
    token->integer = number > 0;
    token->possessive = scan_possessive(scan);
    bool article = str_equal_fold(word, STR("a")) || str_equal_fold(word, STR("an"));
    if (!token->possessive && (number || article)) {
        scan_unit(scan, token);
    }
}

/* Up to the closing mark; the text keeps its quotes until it is cleaned. */
static void scan_quoted(struct scan *scan)
{
    const char *from = scan->at;
    const char *at = from + scan_peek(scan, from).size;
    const char *text = at;
    for (; at < scan->end; at += scan_peek(scan, at).size) {
        struct letter letter = scan_peek(scan, at);
        struct letter next = scan_peek(scan, at + letter.size);
        if (letter.raw == '\\' && (next.code == '"' || next.raw == '\\')) {
            at += letter.size;
        } else if (letter.code == '"') {
            break;
        }
    }
    at = at < scan->end ? at : scan->end;
    const char *close = at;
    scan->unclosed = at == scan->end;
    scan->at = scan->unclosed ? at : at + scan_peek(scan, at).size;
    struct token *token = scan_add(scan, TOKEN_QUOTED, from);
    token->text = text_clean(scan->arena, (struct str){text, (size_t)(close - text)}, true);
    token->span = scan_span(scan, from, scan->at);
}

/* Marks between letters that say nothing: a hyphen between two words, or a word and a number, is a
 * space; the apostrophe of `the defenders'` is dropped. */
static bool says_nothing(struct scan *scan, struct letter mark)
{
    if ((mark.code != '-' && mark.code != '\'') || scan->count == 0) {
        return false;
    }
    struct token *before = &scan->tokens[scan->count - 1];
    if (before->span.end != (uint32_t)(scan->at - scan->text)) {
        return false;
    }
    bool joins = before->kind != TOKEN_MARK && before->kind != TOKEN_QUOTED &&
                 glues(scan_peek(scan, scan->at + mark.size));
    if (mark.code == '-') {
        return joins;
    }
    bool dropped = before->kind == TOKEN_WORD && !before->possessive;
    before->span.end += dropped ? mark.size : 0; /* it stays part of what was written */
    return dropped;
}

static bool is_filler(struct str word)
{
    static const char *const fillers[][2] = {
        {"", ""},     {"a", ""}, {"an", ""},          {"the", ""},
        {"just", ""}, {"", ""},  {"simply", "please"}}; /* by their length */
    bool may = word.size > 0 && word.size < sizeof fillers / sizeof *fillers &&
               memchr("atjsp", word.at[0], 5); /* what they begin with */
    return may && (str_is(word, fillers[word.size][0]) || str_is(word, fillers[word.size][1]));
}

static void finish_token(struct scan *scan, const char *from)
{
    struct token *token = &scan->tokens[scan->count - 1];
    if (token->kind == TOKEN_QUOTED) {
        return;
    }
    token->span = scan_span(scan, from, scan->at);
    size_t size = token->possessive ? token->text.size : (size_t)(scan->at - from);
    token->text = text_lower(scan->arena, (struct str){from, size});
    if (!token->possessive && (token->kind == TOKEN_WORD || token->kind == TOKEN_NUMBER)) {
        token->first = token->text.at[0];
        token->filler = token->kind == TOKEN_WORD && is_filler(token->text);
    }
}

/* &, @, w/ are words, as phones write them, and -> is an arrow, whatever it says. */
static bool scan_sign(struct scan *scan, struct letter letter)
{
    static const struct {
        const char *sign, *word;
    } signs[] = {{"&", "and"}, {"@", "at"}, {"w/", "with"}, {"->", "→"}, {"=>", "→"}};
    const char *from = scan->at;
    size_t size = 0, i = 0;
    if (letter.code != '&' && letter.code != '@' && letter.code != 'w' && letter.code != '-' &&
        letter.code != '=') {
        return false;
    }
    for (; i < sizeof signs / sizeof *signs && size == 0; i++) {
        size_t length = strlen(signs[i].sign);
        size = (size_t)(scan->end - from) >= length && memcmp(from, signs[i].sign, length) == 0
                   ? length
                   : 0;
    }
    if (size == 0) {
        return false;
    }
    scan->at += size;
    struct token *token = scan_add(scan, TOKEN_WORD, from);
    token->text = str_of(signs[i - 1].word);
    token->span = scan_span(scan, from, scan->at);
    token->first = token->text.at[0];
    return true;
}

static void scan_mark(struct scan *scan, struct letter letter)
{
    const char *from = scan->at;
    scan->at += letter.size;
    struct token *token = scan_add(scan, TOKEN_MARK, from);
    token->mark = (char)letter.code;
}

void scan_tokens(struct scan *scan)
{
    while (scan->at < scan->end && !scan->full) {
        const char *from = scan->at;
        struct letter letter = scan_peek(scan, from);
        if (letter.code == '#') {
            return;
        }
        if (letter.code == ' ' || letter.fault == CHAR_HIDDEN || says_nothing(scan, letter)) {
            scan->at += letter.size;
            continue;
        }
        if (scan_sign(scan, letter)) {
            continue;
        }
        if (letter.code == '"') {
            scan_quoted(scan);
        } else if (letter_is_digit(letter)) {
            scan_number(scan);
        } else if (letter_is_letter(letter)) {
            scan_word(scan);
        } else {
            scan_mark(scan, letter);
        }
        finish_token(scan, from);
    }
}

bool token_is_among(const struct token *token, const char *const *words)
{
    char first = token->text.size > 0 ? token->text.at[0] : '\0';
    for (; *words; words++) {
        if (**words == first && token_is_word(token, *words)) {
            return true;
        }
    }
    return false;
}

struct str tokens_typed(struct arena *arena, const struct token *from, const struct token *to)
{
    struct strbuf text;
    strbuf_init(&text, arena);
    for (const struct token *at = from; at < to; at++) {
        bool mark = at->kind == TOKEN_MARK;
        strbuf_text(&text, at > from && !mark ? " " : "");
        for (size_t i = 0; !mark && i < at->text.size; i++) {
            strbuf_char(&text, at->text.at[i] == '-' ? ' ' : at->text.at[i]);
        }
        if (mark) {
            strbuf_char(&text, at->mark);
        }
        strbuf_text(&text, at->possessive ? "'s" : "");
    }
    return strbuf_str(&text);
}

struct token token_word(const struct token *like, const char *text)
{
    return (struct token){
        .kind = TOKEN_WORD, .span = like->span, .text = str_of(text), .first = text[0]};
}

struct token token_mark(const struct token *like, char mark)
{
    return (struct token){.kind = TOKEN_MARK,
                          .span = like->span,
                          .text = mark == ',' ? STR(",") : STR("."),
                          .mark = mark};
}

struct token token_number(struct arena *arena, const struct token *like, int number)
{
    struct str text = str_format(arena, "%d", number);
    return (struct token){.kind = TOKEN_NUMBER,
                          .span = like->span,
                          .text = text,
                          .first = text.at[0],
                          .number = number,
                          .integer = true};
}
