/* SPDX-License-Identifier: MIT */
/* charted: what was counted on a day: the heading and its rows. Takes one line, gives one form;
 * knows no names of plays. */
#include "base/limits.h"
#include "language/words/grammar.h"
#include "language/words/reader.h"

static const char row_example[] = "\"Lantern\" set 7 of 12";

static bool refuse(struct cursor *c, const char *expected, const char *example)
{
    struct span span = cursor_span(c);
    struct str text = cursor_text(c, span);
    struct diag *diag = text.size == 0 ? REFUSE(c, TEXT_ROW, span, "%s is missing here", expected)
                                       : REFUSE(c, TEXT_ROW, span, "`%.*s` stands where %s belongs",
                                                STR_ARG(text), expected);
    diag_help(c->diags, diag, "write `%s`", example);
    return false;
}

/* ---- the heading ---- */

static int days_in_month(int year, int month)
{
    static const int days[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    return days[month - 1] + (month == 2 && leap);
}

static int digits(struct str text, size_t from, size_t count)
{
    int value = 0;
    for (size_t i = from; i < from + count; i++) {
        value = value * 10 + (text.at[i] - '0');
    }
    return value;
}

static bool heading_refuse(struct cursor *c, struct span span, const char *message)
{
    struct diag *diag = REFUSE(c, TEXT_HEADING, span, "%s", message);
    diag_help(c->diags, diag, "write `charted 2026-12-01 game \"Millrace High\"`");
    return false;
}

bool charted_heading_read(struct cursor *c, struct block *block)
{
    const struct token *date = cursor_next(c);
    if (!date || date->kind != TOKEN_DATE) {
        return heading_refuse(c, cursor_span(c),
                              "the day belongs here: year, month and day with hyphens");
    }
    enum { FIRST_YEAR = 1950, LAST_YEAR = 2100 }; /* no team of ours plays before or after */
    int year = digits(date->text, 0, 4);
    if (year < FIRST_YEAR || year > LAST_YEAR) {
        return heading_refuse(c, date->span, "this is no year that is played in");
    }
    if (digits(date->text, 8, 2) > days_in_month(year, digits(date->text, 5, 2))) {
        return heading_refuse(c, date->span, "there is no such day");
    }
    block->date = date->text;
    cursor_take(c, date, date + 1);
    for (int i = OCCASION_PRACTICE; i <= OCCASION_FILM; i++) {
        if (take_words(c, occasion_word((enum occasion)i))) {
            block->occasion = (enum occasion)i;
            return true;
        }
    }
    return heading_refuse(c, cursor_span(c), "practice, game or film belongs here");
}

const char *occasion_word(enum occasion occasion)
{
    static const char *const words[] = {
        [OCCASION_PRACTICE] = "practice", [OCCASION_GAME] = "game", [OCCASION_FILM] = "film"};
    return words[occasion];
}

/* ---- rows ---- */

static bool count_part(struct cursor *c, int *count, int least, const char *expected,
                       const char *example)
{
    struct span span;
    if (!integer_read(c, count, &span)) {
        return refuse(c, expected, example);
    }
    if (*count < least || *count > LIMIT_COUNT) {
        struct diag *diag = REFUSE(c, TEXT_ROW, span, "a count is a whole number from %d to %d",
                                   least, LIMIT_COUNT);
        diag_help(c->diags, diag, "write `%s`", example);
        return false;
    }
    return true;
}

static bool share_part(struct cursor *c, struct row_form *out, const char *example)
{
    const struct token *from = cursor_next(c);
    if (!count_part(c, &out->made, 0, "how often it was done", example)) {
        return false;
    }
    if (!take_words(c, "out of") && !take_words(c, "of")) {
        return refuse(c, "of", example);
    }
    if (!count_part(c, &out->of, 1, "how often it was seen", example)) {
        return false;
    }
    out->count_span = cursor_taken(c, from);
    if (out->made > out->of) {
        struct diag *diag = REFUSE(c, TEXT_ROW, out->count_span,
                                   "%d of %d is more than all of them", out->made, out->of);
        diag_help(c->diags, diag, "did you mean `%d of %d`?", out->of, out->made);
        return false;
    }
    return true;
}

static bool points_part(struct cursor *c, struct row_form *out)
{
    static const char example[] = "\"Lantern\" points 14 in 12";
    const struct token *from = cursor_next(c);
    if (!count_part(c, &out->made, 0, "how many points were made", example)) {
        return false;
    }
    if (!take_words(c, "in")) {
        return refuse(c, "in", example);
    }
    if (!count_part(c, &out->of, 1, "how often the play was run", example)) {
        return false;
    }
    out->count_span = cursor_taken(c, from);
    enum { MOST_A_TRIP = 4 }; /* a three, and the free throw for a foul on it */
    if (out->made > MOST_A_TRIP * out->of) {
        struct diag *diag =
            REFUSE(c, TEXT_ROW, out->count_span, "%d points in %d trip%s are more than can be made",
                   out->made, out->of, out->of == 1 ? "" : "s");
        diag_help(c->diags, diag,
                  "a trip is worth 4 at most, a three and the free throw for a foul on it; the "
                  "points stand first, then how often it was run: `%s`",
                  example);
        return false;
    }
    return true;
}

static bool what_part(struct cursor *c, struct row_form *out)
{
    if (take_words(c, "points")) {
        out->kind = ROW_POINTS;
        return points_part(c, out);
    }
    if (take_words(c, "read")) {
        static const char example[] = "\"Lantern\" read \"Fade\" 3 of 4";
        out->kind = ROW_READ;
        return (quoted_read(c, &out->word, &out->word_span) ||
                refuse(c, "the name of a read in quotes", example)) &&
               share_part(c, out, example);
    }
    const struct token *word = cursor_next(c);
    if (!word || word->kind != TOKEN_WORD || word->possessive) {
        return refuse(c, "the word of a chart line, read or points", row_example);
    }
    out->kind = ROW_CHART;
    out->word = word->text;
    out->word_span = word->span;
    cursor_take(c, word, word + 1);
    return share_part(c, out, row_example);
}

/* by #12: a jersey without quotes, which is no comment there. */
static bool jersey_of_comment(const struct line *line, struct row_form *out)
{
    size_t digits = 1;
    while (digits < line->comment.size && line->comment.at[digits] >= '0' &&
           line->comment.at[digits] <= '9') {
        digits++;
    }
    if (digits < 2 || digits != line->comment.size) {
        return false;
    }
    out->by = line->comment;
    out->by_span = line->comment_span;
    return true;
}

static bool by_part(struct cursor *c, const struct line *line, struct row_form *out)
{
    static const char example[] = "\"Lantern\" set 7 of 12 by 3";
    take_mark(c, ',');
    if (!take_words(c, "by")) {
        return true;
    }
    if (cursor_done(c) && jersey_of_comment(line, out)) {
        return true;
    }
    if (quoted_read(c, &out->by, &out->by_span)) {
        return true;
    }
    struct span span;
    if (!integer_read(c, &out->player, &span)) {
        return refuse(c, "a player", example);
    }
    out->by_span = span;
    if (out->player < 1 || out->player > 5) {
        struct diag *diag = REFUSE(c, TEXT_PLAYER_RANGE, span,
                                   "there is no player %d: 1 to 5 are on the floor", out->player);
        diag_help(c->diags, diag, "a number of 1 to 5, or a name of the roster in quotes");
        return false;
    }
    return true;
}

void charted_line(struct reader *r, const struct line *line)
{
    struct row_form row = {.word_span = SPAN_NONE, .by_span = SPAN_NONE};
    struct cursor c = reader_cursor(r, line, 0);
    bool fine = quoted_read(&c, &row.play, &row.play_span) ||
                refuse(&c, "the name of a play in quotes", row_example);
    if (fine) {
        take_mark(&c, ':');
    }
    if (!fine || !what_part(&c, &row) || !by_part(&c, line, &row) || c.refusals > 0 ||
        !reader_used_up(&c)) {
        reader_broken(r, line);
        return;
    }
    struct row_form *kept = arena_new(r->arena, struct row_form);
    struct line without = *line;
    *kept = row;
    if (row.by_span.end > 0 && row.by_span.begin == line->comment_span.begin) {
        without.comment = (struct str){0};
        without.comment_span = SPAN_NONE;
        line = line_keep(r, without);
    }
    reader_add(r, r->top, FORM_ROW, line)->row = kept;
}
