/* SPDX-License-Identifier: MIT */
/* hinged: what hangs on the defense, said behind what is done: 1 shoots if x1 goes under, drives if
 * he goes over; 1 drives, but if x4 helps he kicks to 4. Put as it is written, the read in a line
 * of its own. Takes one line of a play; gives it to who reads a line. */
#include <string.h>

#include "language/words/reader.h"
#include "language/words/speech.h"

/* Where `if` stands behind a sentence; 0: nowhere. */
static size_t if_at(const struct line *line, size_t from)
{
    size_t least = from > 0 ? 1 : 2; /* a sentence has two words, one that goes on has one */
    for (size_t i = from + least; i + 1 < line->count; i++) {
        const struct token *token = &line->tokens[i];
        if (token->first == 'i' && token_is_word(token, "if") &&
            !token_is_word(token - 1, "as")) { /* as if he screens */
            return i;
        }
    }
    return 0;
}

static bool parts_here(const struct token *token)
{
    return token_is_mark(token, ',') || token_is_mark(token, ';') || token_is_mark(token, '.');
}

static bool goes_on_here(const struct token *token)
{
    return parts_here(token) || token_is_word(token, "and") || token_is_word(token, "but") ||
           token_is_word(token, "or");
}

/* Where the condition behind `if` ends; 0: none is read there. */
static size_t condition_end(const struct reader *r, const struct line *line, size_t at)
{
    struct cursor c = reader_cursor(r, line, at + 1);
    struct cursor_mark mark = cursor_mark(&c);
    struct condition said;
    c.watch = NULL;
    bool read = condition_read(&c, &said) && c.refusals == mark.refusals;
    size_t end = (size_t)(past_fillers(c.at, c.end) - line->tokens);
    cursor_back(&c, mark);
    return read ? end : 0;
}

/* passes to 2 if she is open: she is the one named last before it. */
static struct line name_her(struct reader *r, const struct line *line, size_t at)
{
    struct line named = line_part(line, 0, line->count);
    const struct token *who = &line->tokens[at + 1];
    if (!token_is_word(who, "he") && !token_is_word(who, "she")) {
        return named;
    }
    struct token *tokens = arena_array(r->arena, struct token, line->count);
    for (size_t i = 0; i < line->count; i++) {
        tokens[i] = line->tokens[i];
    }
    for (size_t i = at; i-- > 0;) {
        if (token_is_word(&line->tokens[i], "him") || token_is_word(&line->tokens[i], "her")) {
            break; /* 5 gives it him if he is open: not 5 */
        }
        if (line->tokens[i].kind == TOKEN_NUMBER && !line->tokens[i].possessive) {
            tokens[at + 1] = token_number(r->arena, who, (int)line->tokens[i].number);
            break;
        }
    }
    named.tokens = tokens;
    return named;
}

/* she shoots if her girl trails: the defender of whoever does it, where a number says who. */
static struct line name_his(struct reader *r, const struct line *line, size_t at, size_t from)
{
    static const char *const men[] = {"man", "defender", "girl", "guy", NULL};
    struct line named = *line; /* with its span: what stands before `if` is part of it */
    if (at + 2 >= line->count || line->tokens[from].kind != TOKEN_NUMBER ||
        !token_is_among(&line->tokens[at + 1], owner_words) ||
        !token_is_among(&line->tokens[at + 2], men)) {
        return named;
    }
    for (size_t i = from; i < at; i++) { /* 1 passes to 2, and she shoots: not 1's */
        static const char *const others[] = {"he", "she", "who", "they", NULL};
        if (token_is_among(&line->tokens[i], others)) {
            return named;
        }
    }
    struct token *tokens = arena_array(r->arena, struct token, line->count);
    memcpy(tokens, line->tokens, line->count * sizeof *tokens);
    tokens[at + 1] = token_number(r->arena, &line->tokens[at + 1], (int)line->tokens[from].number);
    tokens[at + 1].possessive = true;
    tokens[at + 2] = token_word(&line->tokens[at + 2], "defender");
    named.tokens = tokens;
    return named;
}

/* The one who acts behind the comma: if his man denies, 1 goes backdoor. */
struct line if_names_his(struct reader *r, const struct line *line)
{
    size_t comma = 2;
    while (comma + 1 < line->count && !token_is_mark(&line->tokens[comma], ',')) {
        comma++;
    }
    return name_his(r, line, 0, comma + 1 < line->count ? comma + 1 : 0);
}

/* if x1 goes under, 1 shoots: the condition of `line` from `at` to `end` before what is done. */
static struct line turned_round(struct reader *r, const struct line *line, size_t from, size_t at,
                                size_t end)
{
    size_t count = 0, done = at;
    while (done > from && parts_here(&line->tokens[done - 1])) {
        done--;
    }
    struct token *tokens = arena_array(r->arena, struct token, line->count + 3);
    for (size_t i = at; i < end; i++) {
        tokens[count++] = line->tokens[i];
    }
    tokens[count++] = token_mark(&line->tokens[at], ',');
    if (from > 0 && line->tokens[0].kind == TOKEN_NUMBER &&
        line->tokens[from].kind == TOKEN_WORD) { /* drives if he goes over: the same */
        tokens[count++] = line->tokens[0];
    }
    for (size_t i = from; i < done; i++) {
        tokens[count++] = line->tokens[i];
    }
    struct line out = line_part(line, from, line->count);
    out.tokens = tokens;
    out.count = count;
    return out;
}

static bool is_joint(const struct token *token)
{
    return parts_here(token) || token_is_word(token, "and") || token_is_word(token, "then");
}

/* 1 passes to 4, and 3 cuts if x3 denies: where the last sentence before `at` begins, when it is of
 * somebody by number: only that one hangs on the condition. 0: none is. */
static size_t own_sentence(const struct reader *r, const struct line *line, size_t at)
{
    for (size_t i = at; i-- > 2;) {
        struct cursor c = reader_cursor(r, line, i);
        if (is_joint(&line->tokens[i - 1]) && line->tokens[i].kind == TOKEN_NUMBER &&
            subject_verb_is(&c)) {
            return i;
        }
    }
    return 0;
}

/* Where what stands before `from` ends, without its joint. */
static size_t joint_before(const struct line *line, size_t from)
{
    while (from > 0 && is_joint(&line->tokens[from - 1])) {
        from--;
    }
    return from;
}

/* 4 cuts if he is denied, 1 feeds him: somebody by number goes on with it. */
static bool acts_next(const struct reader *r, const struct line *line, size_t from)
{
    struct cursor c = reader_cursor(r, line, from);
    return token_is_mark(&line->tokens[from - 1], ',') && line->tokens[from].kind == TOKEN_NUMBER &&
           subject_verb_is(&c);
}

/* What is done behind the condition belongs to the answer. */
static struct line with_more(struct reader *r, const struct line *read, const struct line *line,
                             size_t from)
{
    struct line out = *read;
    size_t more = line->count - from;
    struct token *tokens = arena_array(r->arena, struct token, read->count + more + 1);
    memcpy(tokens, read->tokens, read->count * sizeof *tokens);
    tokens[read->count] = token_mark(&line->tokens[from - 1], ',');
    memcpy(tokens + read->count + 1, line->tokens + from, more * sizeof *tokens);
    out.tokens = tokens;
    out.count = read->count + more + 1;
    return out;
}

/* 1 shoots if x1 goes under[, drives if he goes over]. */
static bool behind_it(struct reader *r, const struct line *line, size_t at)
{
    struct line reads[4];
    size_t count = 0, from = own_sentence(r, line, at);
    struct line rest = *line, first = line_part(line, 0, joint_before(line, from));
    for (; at > 0 && count < sizeof reads / sizeof *reads; at = if_at(&rest, from)) {
        rest = name_his(r, &rest, at, from);
        size_t end = condition_end(r, &rest, at);
        if (end == 0) {
            rest = name_her(r, &rest, at);
            end = condition_end(r, &rest, at);
        }
        if (end == 0 || (end < rest.count && !goes_on_here(&rest.tokens[end]))) {
            return false;
        }
        reads[count++] = turned_round(r, &rest, from, at, end);
        for (from = end; from < rest.count && goes_on_here(&rest.tokens[from]);) {
            from++;
        }
    }
    if (from < rest.count && !(count == 1 && acts_next(r, &rest, from))) {
        return false; /* what is done goes on, and of which of them is not said */
    }
    if (from < rest.count) {
        reads[0] = with_more(r, &reads[0], &rest, from);
    }
    reads[count - 1].comment = line->comment;
    reads[count - 1].comment_span = line->comment_span;
    if (first.count > 0) {
        body_line(r, line_keep(r, first));
    }
    for (size_t i = 0; i < count; i++) {
        if_lines(r, line_keep(r, reads[i]));
    }
    return true;
}

/* they, it's there: what is asked of the line's own sentences, which nothing above tells yet. */
static bool asks_before(const struct token *asked)
{
    static const char *const words[] = {"they", "defense", "he", "she", "it", "that", NULL};
    return token_is_among(asked, words);
}

/* if he's denied 2 back cuts: the one named last before it, where he is the one who then acts. */
static struct line name_him(struct reader *r, const struct line *line, size_t at)
{
    struct line named = name_her(r, line, at);
    const struct token *who = &named.tokens[at + 1];
    size_t end = who->kind == TOKEN_NUMBER ? condition_end(r, &named, at) : 0;
    while (end > 0 && end < named.count && token_is_mark(&named.tokens[end], ',')) {
        end++;
    }
    bool same = end > 0 && end < named.count && named.tokens[end].kind == TOKEN_NUMBER &&
                !named.tokens[end].possessive && named.tokens[end].number == who->number;
    return same ? named : *line;
}

/* 1 drives, but if x4 helps he kicks to 4: two lines. */
static bool before_it(struct reader *r, const struct line *line, size_t at)
{
    size_t end = joint_before(line, at - 1), answer = condition_end(r, line, at);
    struct line named = *line;
    if (answer == 0) {
        named = name_him(r, line, at);
        line = &named;
        answer = condition_end(r, line, at);
    }
    bool later = answer == 0 && asks_before(&line->tokens[at + 1]);
    struct cursor c = reader_cursor(r, line, answer);
    if (end == 0 || (!later && (answer == 0 || answer >= line->count)) ||
        (!later && parts_here(&line->tokens[answer]) && cursor_done(&c))) {
        return false;
    }
    struct line first = line_part(line, 0, end), second = line_part(line, at, line->count);
    second.comment = line->comment;
    second.comment_span = line->comment_span;
    body_line(r, line_keep(r, first));
    if_lines(r, line_keep(r, second));
    return true;
}

/* 3 is denied? Then he back cuts: the question is what a read asks. */
static bool asked(struct reader *r, const struct line *line)
{
    size_t at = 1;
    while (at < line->count && !token_is_mark(&line->tokens[at], '?')) {
        at++;
    }
    size_t behind = at + 1;
    while (behind < line->count &&
           (token_is_word(&line->tokens[behind], "then") || parts_here(&line->tokens[behind]))) {
        behind++;
    }
    if (at >= line->count || behind >= line->count) {
        return false;
    }
    struct line turned = line_part(line, 0, line->count);
    struct token *tokens = arena_array(r->arena, struct token, line->count + 2);
    size_t count = 0;
    tokens[count++] = token_word(&line->tokens[0], "if");
    bool verb = token_is_word(&line->tokens[0], "is") || token_is_word(&line->tokens[0], "does");
    bool is = token_is_word(&line->tokens[0], "is") && at > 2; /* is 3 denied? */
    for (size_t i = verb; i < at; i++) {
        tokens[count++] = line->tokens[i];
        if (is && i == 1) {
            tokens[count++] = line->tokens[0];
        }
    }
    size_t end = count;
    tokens[count++] = token_mark(&line->tokens[at], ',');
    for (size_t i = behind; i < line->count; i++) {
        tokens[count++] = line->tokens[i];
    }
    turned.tokens = tokens;
    turned.count = count;
    if (condition_end(r, &turned, 0) != end) {
        return false;
    }
    turned.comment = line->comment;
    turned.comment_span = line->comment_span;
    if_lines(r, line_keep(r, turned));
    return true;
}

/* The catch that is asked for behind `if`, at `at`: if he catches it. */
static bool catch_asked(const struct line *line, size_t at)
{
    static const char *const does[] = {"catches", "receives", NULL};
    static const char *const gets[] = {"gets", "has", NULL};
    static const char *const it[] = {"it", "ball", NULL};
    const struct token *token = &line->tokens[at + 1], *end = line->tokens + line->count;
    if (token + 1 >= end || !(token->kind == TOKEN_NUMBER || token_is_among(token, he_or_she))) {
        return false;
    }
    const struct token *what = past_fillers(token + 2, end);
    return token_is_among(token + 1, does) ||
           (what < end && token_is_among(token + 1, gets) && token_is_among(what, it));
}

/* Where what hangs on the catch begins. */
static size_t behind_catch(const struct line *line, size_t at)
{
    static const char *const it[] = {"it",       "ball", "pass", "catches",
                                     "receives", "gets", "has",  NULL};
    size_t end = at + 2;
    while (end < line->count && (line->tokens[end].filler || parts_here(&line->tokens[end]) ||
                                 token_is_among(&line->tokens[end], it))) {
        end++;
    }
    return end;
}

/* The line from `if` at `at` on, who catches named: when 4 catches, 2 cuts; where nobody has passed
 * to him yet, 1 passes to 4, then 2 cuts. */
static struct line caught_line(struct reader *r, const struct line *line, size_t at)
{
    const struct token *by = &line->tokens[at];
    struct line out = line_part(line, at, line->count);
    struct cursor c = reader_cursor(r, line, 0);
    struct who holder;
    size_t count = 0, behind = behind_catch(line, at);
    struct token *tokens = arena_array(r->arena, struct token, line->count + 8);
    bool thrown = by[1].kind == TOKEN_NUMBER && above_holder(&c, &holder) &&
                  holder.kind == WHO_PLAYER && holder.number != (int)by[1].number;
    if (thrown) {
        tokens[count++] = token_number(r->arena, by, holder.number);
        tokens[count++] = token_word(by, "passes");
        tokens[count++] = token_word(by, "to");
        tokens[count++] = by[1];
        tokens[count++] = token_mark(by, ',');
        tokens[count++] = token_word(by, "then");
    } else {
        tokens[count++] = token_word(by, "when");
        tokens[count++] = by[1];
        tokens[count++] = token_word(by, "catches");
        tokens[count++] = token_mark(by, ',');
    }
    for (size_t i = behind; i < line->count; i++) {
        tokens[count++] = line->tokens[i];
    }
    out.tokens = tokens;
    out.count = count;
    return out;
}

/* 4 flashes; if he catches, 2 cuts: that comes when he does. With a note. */
static bool when_caught(struct reader *r, const struct line *line, size_t at)
{
    if (at >= line->count || !token_is_word(&line->tokens[at], "if") || !catch_asked(line, at) ||
        behind_catch(line, at) >= line->count) {
        return false;
    }
    struct span span = line->tokens[at].span;
    struct diag *diag =
        diag_add(r->diags, DIAG_TEXT_HEARD, span, "`if` was taken as `when`: a catch is no read");
    diag_help(r->diags, diag, "what the defense does is a read: `if x4 denies, …`");
    struct line named = name_her(r, line, at),
                first = line_part(&named, 0, joint_before(&named, at));
    if (first.count > 0) {
        body_line(r, line_keep(r, first));
    }
    struct line second = caught_line(r, &named, at);
    second.comment = line->comment;
    second.comment_span = line->comment_span;
    body_line(r, line_keep(r, second));
    return true;
}

bool if_caught(struct reader *r, const struct line *line)
{
    return when_caught(r, line, 0);
}

bool line_hinges(struct reader *r, const struct line *line)
{
    if (asked(r, line)) {
        return true;
    }
    size_t at = if_at(line, 0);
    if (at == 0) {
        return false;
    }
    if (when_caught(r, line, at)) {
        return true;
    }
    struct line opened = *line;
    size_t room = 2 * line->count + 2;
    opened.tokens = arena_array(r->arena, struct token, room);
    opened.count = contractions_open(line->tokens, line->count, opened.tokens, room);
    at = if_at(&opened, 0);
    const struct token *before = &opened.tokens[at - 1];
    bool joined = token_is_word(before, "but") || token_is_word(before, "and");
    return joined || parts_here(before) ? before_it(r, &opened, at) : behind_it(r, &opened, at);
}

bool line_answers(struct reader *r, const struct line *line)
{
    struct line asked = line_part(line, 1, line->count);
    struct cursor c = reader_cursor(r, &asked, 0);
    struct cursor_mark mark = cursor_mark(&c);
    struct condition said;
    c.watch = NULL;
    take_mark(&c, ':');
    bool read = condition_read(&c, &said) && (take_mark(&c, ',') || take_mark(&c, ':')) &&
                subject_verb_is(&c);
    cursor_back(&c, mark);
    if (read) {
        asked.comment = line->comment;
        asked.comment_span = line->comment_span;
        if_lines(r, line_keep(r, asked));
    }
    return read;
}
