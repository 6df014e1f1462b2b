/* SPDX-License-Identifier: MIT */
/* lines: a source as lines of tokens, with their comments; and how lines join and part. */
#include <string.h>

#include "language/syntax/scan.h"

static const char *line_finish(const struct source *source, size_t index)
{
    size_t begin = source->line_starts.at[index];
    size_t end = index + 1 < source->line_starts.count ? source->line_starts.at[index + 1]
                                                       : source->text.size;
    while (end > begin && (source->text.at[end - 1] == '\n' || source->text.at[end - 1] == '\r')) {
        end--;
    }
    return source->text.at + end;
}

/* Where the first character that is no blank stands; counts the columns before it. */
static const char *skip_indent(const struct scan *scan, unsigned *columns)
{
    const char *at = scan->at;
    while (at < scan->end) {
        struct letter letter = scan_peek(scan, at);
        if (letter.code != ' ') {
            break;
        }
        *columns = letter.raw == '\t' ? (*columns / 8 + 1) * 8 : *columns + (letter.raw != 0xFEFF);
        at += letter.size;
    }
    return at;
}

static const char *trim_end(const struct scan *scan, const char *begin)
{
    const char *last = begin;
    if (scan->plain) {
        for (last = scan->end; last > begin && (last[-1] == ' ' || last[-1] == '\t'); last--) {
        }
        return last;
    }
    for (const char *at = begin; at < scan->end;) {
        struct letter letter = scan_peek(scan, at);
        at += letter.size;
        last = letter.code == ' ' ? last : at;
    }
    return last;
}

static void report_letter(const struct scan *scan, const char *at, struct letter letter)
{
    struct span span = scan_span(scan, at, at + letter.size);
    if (letter.fault == CHAR_BROKEN) {
        struct diag *diag =
            diag_add(scan->diags, DIAG_TEXT_BYTE, span,
                     "the byte %02X is no part of a letter in UTF-8", (unsigned)(unsigned char)*at);
        diag_help(scan->diags, diag, "type the letter again, or save the file as UTF-8");
    } else {
        struct diag *diag =
            diag_add(scan->diags, DIAG_TEXT_CONTROL, span,
                     "a character that cannot be seen stands here (U+%04X)", (unsigned)letter.raw);
        diag_help(scan->diags, diag, "delete it, and type the word beside it again");
    }
}

/* The first character of a line that cannot stand there is reported; more would say the same. */
static bool letters_ok(const struct scan *scan, const char *from, const char *to, bool hidden_too)
{
    bool quoted = false;
    if (scan->plain) {
        return true;
    }
    for (const char *at = from; at < to;) {
        struct letter letter = scan_peek(scan, at);
        quoted = letter.code == '"' ? !quoted : quoted;
        bool hidden = letter.fault == CHAR_HIDDEN && hidden_too && !quoted;
        if (letter.fault != CHAR_FINE && (hidden || letter.fault != CHAR_HIDDEN)) {
            report_letter(scan, at, letter);
            return false;
        }
        at += letter.size;
    }
    return true;
}

/* A row that begins with a title, up to `by`: who is told behind it, which is no comment. */
static bool asks_by_whom(const struct line *line)
{
    return line->count > 2 && line->tokens[0].kind == TOKEN_QUOTED &&
           token_is_word(&line->tokens[line->count - 1], "by");
}

static void take_comment(struct scan *scan, struct line *line)
{
    const char *from = scan->at, *to = trim_end(scan, from);
    line->comment_span = scan_span(scan, from, to);
    line->comment = (struct str){from, (size_t)(to - from)};
    if (letter_is_digit(scan_peek(scan, from + 1)) && to > from + 1 && !asks_by_whom(line)) {
        struct diag *diag = diag_add(scan->diags, DIAG_TEXT_HASH, line->comment_span,
                                     "what follows # is not read: it is a comment");
        int digits = 1;
        while (from + digits < to && letter_is_digit(scan_peek(scan, from + digits))) {
            digits++;
        }
        diag_help(scan->diags, diag,
                  "a player is the number alone: %c; in charted rows a jersey stands in quotes: by "
                  "\"%.*s\"",
                  from[1], digits, from);
    }
    letters_ok(scan, from, to, false);
}

static void report_unclosed(const struct scan *scan)
{
    const struct token *quote = &scan->tokens[scan->count - 1];
    struct diag *diag = diag_add(scan->diags, DIAG_TEXT_QUOTE, quote->span,
                                 "this quotation mark opens a text that nothing closes");
    diag_help(scan->diags, diag, "write \" at the text's end, on the same line");
}

static void report_long(const struct scan *scan, struct line *line, const char *what, int most)
{
    struct diag *diag = diag_add(scan->diags, DIAG_TEXT_LONG_LINE, line->span,
                                 "this line is too long to be read: more than %d %s", most, what);
    diag_help(scan->diags, diag, "write one sentence a line");
    line->broken = true;
}

static void keep_tokens(struct scan *scan, struct line *line)
{
    line->count = scan->count;
    line->tokens = arena_array(scan->arena, struct token, scan->count);
    memcpy(line->tokens, scan->tokens, scan->count * sizeof scan->tokens[0]);
    line->span = span_join(line->tokens[0].span, line->tokens[line->count - 1].span);
}

static void read_line(struct scan *scan, struct line *line)
{
    scan->count = 0;
    scan->full = scan->unclosed = false;
    const char *from = scan->at = skip_indent(scan, &line->indent);
    line->span = scan_span(scan, from, trim_end(scan, from));
    if (scan->end - from > LIMIT_LINE_BYTES) {
        report_long(scan, line, "bytes", LIMIT_LINE_BYTES);
        return;
    }
    scan_tokens(scan);
    if (scan->full) {
        report_long(scan, line, "words", LIMIT_TOKENS);
        return;
    }
    struct span whole = scan_span(scan, from, scan->at);
    bool fine = letters_ok(scan, from, scan->at, true);
    if (scan->unclosed) {
        report_unclosed(scan);
        fine = false;
    }
    if (scan->count > 0) {
        keep_tokens(scan, line);
    }
    if (!fine) {
        line->broken = true;
        const char *end = scan->end;
        scan->end = scan->at; /* up to the comment */
        line->span = (struct span){whole.source, whole.begin,
                                   scan_span(scan, from, trim_end(scan, from)).end};
        scan->end = end;
    }
    if (scan->at < scan->end) {
        take_comment(scan, line);
    }
}

static bool report_not_text(const struct source *source, uint32_t number, struct diags *diags)
{
    if (text_is_text(source->text)) {
        return false;
    }
    bool wide = str_starts(source->text, "\xFF\xFE") || str_starts(source->text, "\xFE\xFF");
    struct diag *diag = diag_add(diags, DIAG_TEXT_NOT_TEXT, (struct span){number, 0, 0},
                                 wide ? "this file is UTF-16, not UTF-8"
                                      : "this file is not a plain text in UTF-8");
    diag_help(diags, diag, "save it as plain text, UTF-8");
    return true;
}

void lines_read(struct arena *arena, const struct sources *sources, uint32_t number,
                struct diags *diags, struct lines *lines)
{
    const struct source *source = &sources->all.at[number];
    *lines = (struct lines){0};
    bool plain = text_is_plain(source->text);
    if (!plain && report_not_text(source, number, diags)) {
        return;
    }
    struct scan scan = {
        .arena = arena, .diags = diags, .source = number, .text = source->text.at, .plain = plain};
    lines->all.room = source->line_starts.count;
    lines->all.at = arena_array(arena, struct line, lines->all.room);
    for (size_t i = 0; i < source->line_starts.count; i++) {
        scan.at = source->text.at + source->line_starts.at[i];
        scan.end = line_finish(source, i);
        struct line line = {.comment_span = SPAN_NONE};
        read_line(&scan, &line);
        VEC_PUSH(arena, &lines->all, line);
    }
}

bool line_goes_on(const struct line *line)
{
    return !line->broken && line->count > 0 && line->tokens[line->count - 1].kind == TOKEN_MARK &&
           line->tokens[line->count - 1].mark == ',';
}

struct line line_join(struct arena *arena, const struct line *first, const struct line *second)
{
    struct line line = *second;
    line.indent = first->indent;
    line.broken = first->broken || second->broken;
    line.span = span_join(first->span, second->span);
    line.count = first->count + second->count;
    line.tokens = arena_array(arena, struct token, line.count);
    memcpy(line.tokens, first->tokens, first->count * sizeof line.tokens[0]);
    if (second->count > 0) {
        memcpy(line.tokens + first->count, second->tokens, second->count * sizeof line.tokens[0]);
    }
    return line;
}

struct line line_part(const struct line *line, size_t from, size_t to)
{
    struct line part = *line;
    part.tokens = line->tokens + from;
    part.count = to - from;
    part.comment = (struct str){0};
    part.comment_span = SPAN_NONE;
    if (part.count > 0) {
        part.span = span_join(part.tokens[0].span, part.tokens[part.count - 1].span);
    }
    return part;
}

/* What a mark's writer probably meant. */
static const char *mark_help(char mark)
{
    switch (mark) {
    case '-':
        return "write a comma between two sentences, and no spaces around a hyphen";
    case '+':
        return "write `and`";
    case '\'':
        return "write \" around a text; ' stands for feet, or in 3's";
    case ':':
        return "leave it out: the first word says what the line is";
    case '/':
        return "write `or`, or a comma";
    default:
        return "leave it out, or put the text in quotes";
    }
}

static bool starts_behind(const struct line *line, size_t index, size_t before)
{
    return index < line->count && line->tokens[index].span.begin == line->tokens[before].span.end;
}

/* Marks that mean something: , ; . ( ) and a minus inside brackets. */
static bool mark_ok(const struct line *line, size_t index, int depth)
{
    const struct token *token = &line->tokens[index];
    if (token->mark == '.') {
        bool glued = starts_behind(line, index + 1, index);
        return !glued || line->tokens[index + 1].kind == TOKEN_MARK;
    }
    if (token->mark == '-') {
        return depth > 0 && starts_behind(line, index + 1, index) &&
               line->tokens[index + 1].kind == TOKEN_NUMBER;
    }
    return token->mark && strchr(",;()", token->mark);
}

/* "taking -5 s" */
static bool is_below_zero(const struct line *line, size_t i)
{
    return line->tokens[i].mark == '-' && i > 0 && !starts_behind(line, i, i - 1) &&
           starts_behind(line, i + 1, i) && line->tokens[i + 1].kind == TOKEN_MEASURE;
}

static void report_below_zero(const struct token *minus, const struct sources *sources,
                              struct diags *diags)
{
    struct span span = span_join(minus->span, minus[1].span);
    struct str number = source_text(sources, minus[1].span);
    struct diag *diag = diag_add(diags, DIAG_TEXT_MARK, span,
                                 "this is below zero: a time or a length is not negative");
    diag_help(diags, diag, "leave out the minus: %.*s", STR_ARG(number));
}

static void report_mark(const struct token *token, bool first, const struct sources *sources,
                        struct diags *diags)
{
    struct str text = source_text(sources, token->span);
    struct diag *diag;
    if (token->mark == '-' && first) {
        diag = diag_add(diags, DIAG_TEXT_MARK, token->span, "a line begins with a hyphen");
        diag_help(diags, diag, "leave it out: every line is read by itself");
        return;
    }
    if (token->mark == '-') {
        diag = diag_add(diags, DIAG_TEXT_MARK, token->span, "a hyphen with a space beside it");
    } else if (token->mark == '.') {
        diag = diag_add(diags, DIAG_TEXT_MARK, token->span, "no space behind this full stop");
    } else {
        diag = diag_add(diags, DIAG_TEXT_MARK, token->span, "`%.*s` means nothing here",
                        STR_ARG(text));
    }
    diag_help(diags, diag, "%s",
              token->mark == '.' ? "write a space behind it; half a foot is 0.5 ft"
                                 : mark_help(token->mark));
}

/* 1e3, 2e-1: how a machine writes a number. Gives its last token; NULL: it is none. */
static const struct token *power_end(const struct line *line, size_t i)
{
    const struct token *at = &line->tokens[i], *end = at + 1;
    if (at->kind != TOKEN_NUMBER || token_is_spelled(at) || !starts_behind(line, i + 1, i) ||
        end->kind != TOKEN_WORD || end->text.at[0] != 'e') {
        return NULL;
    }
    for (size_t k = 1; k < end->text.size; k++) {
        if (!letter_is_digit((struct letter){.code = (unsigned char)end->text.at[k]})) {
            return NULL;
        }
    }
    bool sign = end->text.size == 1 && starts_behind(line, i + 2, i + 1) &&
                (token_is_mark(end + 1, '-') || token_is_mark(end + 1, '+')) &&
                starts_behind(line, i + 3, i + 2) && end[2].kind != TOKEN_MARK;
    return end->text.size > 1 ? end : sign ? end + 2 : NULL;
}

static void report_power(const struct token *from, const struct token *to,
                         const struct sources *sources, struct diags *diags)
{
    struct span span = span_join(from->span, to->span);
    struct diag *diag = diag_add(diags, DIAG_TEXT_MARK, span, "`%.*s` is no number here",
                                 STR_ARG(source_text(sources, span)));
    diag_help(diags, diag, "write it out in digits: 12, or 1.5");
}

bool line_marks_ok(const struct line *line, const struct sources *sources, struct diags *diags)
{
    int depth = 0;
    for (size_t i = 0; i < line->count; i++) {
        const struct token *token = &line->tokens[i], *power = power_end(line, i);
        if (power) {
            report_power(token, power, sources, diags);
            return false;
        }
        if (token->kind != TOKEN_MARK) {
            continue;
        }
        depth += (token->mark == '(') - (token->mark == ')');
        if (!mark_ok(line, i, depth)) {
            if (is_below_zero(line, i)) {
                report_below_zero(token, sources, diags);
            } else {
                report_mark(token, i == 0, sources, diags);
            }
            return false;
        }
    }
    return true;
}
