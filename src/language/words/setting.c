/* SPDX-License-Identifier: MIT */
/* setting: the value of each setting, as a table of readers. */
#include "language/syntax/chars.h"
#include "language/words/reader.h"
#include "language/words/speech.h"
#include "language/words/vocabulary.h"

/* The longest of `words` that stands at the cursor; -1: none. */
static int take_longest(struct cursor *c, const char *(*word)(int), int count)
{
    const struct token *best = c->at;
    int value = -1;
    for (int i = 0; i < count; i++) {
        struct cursor trial = *c;
        if (take_words(&trial, word(i)) && trial.at > best) {
            best = trial.at;
            value = i;
        }
    }
    c->at = best;
    return value;
}

static const char *court_word(int i)
{
    return court_of((enum court_code)i)->word;
}

static const char *level_word(int i)
{
    return level_of((enum level_code)i)->word;
}

static bool rules_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    out->number = take_longest(c, court_word, COURT_COUNT);
    return out->number >= 0;
}

static bool level_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    out->number = take_longest(c, level_word, LEVEL_COUNT);
    return out->number >= 0;
}

static bool choice_read(struct cursor *c, struct setting_form *out)
{
    size_t count = choice_count(out->setting);
    for (size_t i = 0; i < count; i++) {
        if (take_words(c, choice_word(out->setting, i))) {
            out->number = (int)i;
            return true;
        }
    }
    return false;
}

static bool units_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    bool fine = take_words(c, "meters") ? (out->number = 1, true) : choice_read(c, out);
    r->metres = fine ? out->number == 1 : r->metres;
    r->shelf->metres = r->depth == 0 ? r->metres : r->shelf->metres;
    return fine;
}

static bool paper_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return choice_read(c, out);
}

static bool basket_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return choice_read(c, out);
}

static bool floor_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return choice_read(c, out);
}

static bool limit_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    const struct token *id = cursor_next(c);
    if (!id || id->kind != TOKEN_CHECK_ID) {
        return false;
    }
    out->text = id->text;
    cursor_take(c, id, id + 1);
    const struct token *measure = cursor_next(c);
    if (!measure || measure->kind != TOKEN_MEASURE) {
        return false;
    }
    out->measure = (struct measure){measure->number, measure->unit};
    cursor_take(c, measure, measure + 1);
    return true;
}

enum { NUMBER_MOST_IN_BOOK = 999 };
static bool number_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    struct span span;
    const struct token *next = cursor_next(c);
    return next && next->number <= NUMBER_MOST_IN_BOOK && integer_read(c, &out->number, &span);
}

static const struct token *piece_end(const struct cursor *c)
{
    const struct token *at = c->at;
    while (at < c->end && !token_is_mark(at, ',')) {
        at++;
    }
    return at;
}

/* A quoted text, or words. */
static bool tag_read(struct cursor *c, struct str *tag)
{
    const struct token *end = piece_end(c);
    if (c->at < end && c->at->kind == TOKEN_QUOTED) {
        *tag = c->at->text;
        c->at++;
        return c->at == end;
    }
    const struct token *from = c->at;
    for (; c->at < end; c->at++) {
        if (c->at->kind == TOKEN_QUOTED) {
            return false;
        }
    }
    if (from < end) {
        struct span span = span_join(from->span, end[-1].span);
        *tag = text_clean(c->arena, cursor_text(c, span), false);
    }
    return from < end;
}

static bool tags_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    do {
        struct str tag;
        if (!tag_read(c, &tag)) {
            return false;
        }
        VEC_PUSH(c->arena, &out->tags, tag);
    } while (take_mark(c, ','));
    return true;
}

static bool ball_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    const struct token *from = c->at;
    if (!who_read(c, &out->ball)) {
        return false;
    }
    if (out->ball.kind != WHO_PLAYER && out->ball.kind != WHO_COACH) {
        c->at = from;
        return false;
    }
    if (cursor_done(c)) {
        return true;
    }
    const struct token *place_from = c->at;
    const struct place *place = place_read(c, 0);
    if (place && place->kind == PLACE_OUT) {
        out->ball_out = place->a;
        return true;
    }
    c->at = place_from;
    return false;
}

/* 2-3, or two three: digits with hyphens. */
static bool zone_read(struct cursor *c, const char *const *zones, struct str *out)
{
    const struct token *next = cursor_next(c);
    struct str text = {0};
    const struct token *end = next;
    if (next && next->kind == TOKEN_GROUP) {
        text = next->text;
        end = next + 1;
    } else if (next) {
        struct strbuf buf;
        strbuf_init(&buf, c->arena);
        for (; end < c->end && end->kind == TOKEN_NUMBER && end->integer && end->number < 10;
             end++) {
            strbuf_print(&buf, "%s%d", buf.size ? "-" : "", (int)end->number);
        }
        text = strbuf_str(&buf);
    }
    for (; *zones; zones++) {
        if (str_is(text, *zones)) {
            *out = str_of(*zones);
            c->at = end;
            return true;
        }
    }
    return false;
}

static bool man_read(struct cursor *c, struct setting_form *out)
{
    static const char *const styles[] = {[MAN_GAP] = "gap", [MAN_DENY] = "deny", [MAN_SAG] = "sag"};
    out->defense = DEFENSE_MAN;
    for (int i = MAN_GAP; i <= MAN_SAG; i++) {
        if (take_words(c, styles[i])) {
            out->man = (enum man_style)i;
            out->man_written = true;
            break;
        }
    }
    return true;
}

static bool press_read(struct cursor *c, struct setting_form *out)
{
    static const char *const presses[] = {"2-2-1", "1-2-1-1", NULL};
    out->defense = DEFENSE_PRESS;
    return take_words(c, "man") || zone_read(c, presses, &out->zone);
}

/* `box-and-one`, `box and 1`. */
static bool and_one(struct cursor *c, const char *words, const char *count_word, int count)
{
    struct cursor trial = *c;
    struct span span;
    int number = 0;
    if (!take_words(&trial, words) || !take_words(&trial, "and")) {
        return false;
    }
    if (!take_words(&trial, count_word) &&
        (!integer_read(&trial, &number, &span) || number != count)) {
        return false;
    }
    *c = trial;
    return true;
}

/* 1-2-1-1: a press by its figures. */
static bool press_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct setting_form form;
    bool group = cursor_next(c) && (cursor_next(c)->kind == TOKEN_GROUP);
    return group && press_read(&trial, &form);
}

static bool group_is_next(const struct cursor *c)
{
    const struct token *next = cursor_next(c);
    return next && next->kind == TOKEN_GROUP;
}

/* man to man full court: a press. */
static bool full_court_man(struct cursor *c, struct setting_form *out)
{
    static const char *const fulls[] = {
        "full court",         "all over the floor", "press", "full court press",
        "defense full court", "all over",           NULL};
    if (take_among(c, fulls)) {
        if (out->man_written) { /* a press denies, gaps and sags by rule */
            return false;
        }
        out->defense = DEFENSE_PRESS;
    }
    return true;
}

bool defense_words_read(struct cursor *c, struct setting_form *out)
{
    static const char *const zones[] = {"2-3", "3-2", "1-3-1", "1-2-2", "2-1-2", NULL};
    if (take_words(c, "none")) {
        out->defense = DEFENSE_NONE;
    } else if (take_words(c, "man to man") || take_words(c, "man")) {
        return man_read(c, out) && full_court_man(c, out);
    } else if (and_one(c, "box", "one", 1)) {
        out->defense = DEFENSE_BOX_AND_ONE;
    } else if (and_one(c, "triangle", "two", 2)) {
        out->defense = DEFENSE_TRIANGLE_AND_TWO;
    } else if (take_words(c, "press") || press_is(c)) {
        return press_read(c, out);
    } else if (take_words(c, "zone") || group_is_next(c)) {
        out->defense = DEFENSE_ZONE;
        return zone_read(c, zones, &out->zone);
    } else {
        return false;
    }
    return true;
}

static bool defense_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    static const char *const leads[] = {"is in",     "is",      "plays", "in", "are in",
                                        "they play", "will be", "of",    NULL};
    static const char *const tails[] = {"full court", "zone press", "zone",
                                        "defense",    "press",      "half court",
                                        "pressure",   "everywhere", NULL};
    take_among(c, leads);
    if (!defense_words_read(c, out)) {
        return false;
    }
    while (take_among(c, tails)) {
    }
    return true;
}

static bool clock_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    const struct token *next = cursor_next(c);
    return next && next->number > 0 && take_measure(c, true, &out->measure);
}

static bool lineup_name_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    struct span span;
    return quoted_read(c, &out->text, &span);
}

/* What each setting is read by, and what the coach may write; no reader: a text of his own. */
static const struct {
    bool (*read)(struct reader *, struct cursor *, struct setting_form *);
    const char *write;
} rows[SETTING_COUNT] = {
    [SETTING_RULES] = {rules_read,
                       "high-school, fiba, nba, wnba, college-men, college-women or mini"},
    [SETTING_LEVEL] =
        {level_read,
         "u12; u14, u16, u18, middle-school, jv or varsity, alone or with boys or girls; "
         "college or professional with men or women. A high school is varsity or jv: level varsity "
         "boys"},
    [SETTING_UNITS] = {units_read, "feet or metres"},
    [SETTING_PAPER] = {paper_read, "letter or a4"},
    [SETTING_BASKET] = {basket_read, "top or bottom"},
    [SETTING_FLOOR] = {floor_read, "half or full"},
    [SETTING_LIMIT] = {limit_read, "a check, and a measure with its unit: limit space.close 10 ft"},
    [SETTING_NUMBER] = {number_read, "a whole number up to 999: number 4"},
    [SETTING_TAGS] = {tags_read, "words with commas between: tags man, late clock"},
    [SETTING_START] =
        {start_read,
         "a formation, or players and places: start five-out, 5 at 6 ft above left corner"},
    [SETTING_BALL] = {ball_read,
                      "ball 1, ball coach, or a throw-in: ball 2 out of bounds at left hash"},
    [SETTING_DEFENSE] =
        {defense_read,
         "none; man, alone or with deny, gap or sag; zone 2-3, 3-2, 1-3-1, 1-2-2 or 2-1-2; "
         "box-and-one; triangle-and-two; press man, 2-2-1 or 1-2-1-1"},
    [SETTING_CLOCK] = {clock_read, "seconds with their unit: clock 6 s"},
    [SETTING_LINEUP] = {lineup_name_read, "the name of a lineup in quotes: lineup \"Big\""},
    [SETTING_ABOUT] = {NULL, "a text: about \"The screener answers the switch.\""},
    [SETTING_CALL] = {NULL, "what is called: call \"Lantern\""},
    [SETTING_SERIES] = {NULL, "a name: series \"Motion\""},
    [SETTING_SCORE] = {NULL, "a text: score \"down 2\""},
    [SETTING_CAUTION] = {NULL, "a text: caution \"No dunking in warm-up\""},
    [SETTING_GOAL] = {NULL, "a text: goal \"8 of 10\""},
};

/* What stands where a value, or nothing more, belongs. */
static bool refuse(struct cursor *c, enum setting setting)
{
    struct span span = cursor_span(c);
    struct str text = cursor_text(c, span);
    const char *word = setting_word(setting);
    struct diag *diag;
    if (text.size == 0) {
        diag = diag_add(c->diags, DIAG_TEXT_SETTING, span, "`%s` breaks off here", word);
    } else {
        diag = diag_add(c->diags, DIAG_TEXT_SETTING, span, "`%.*s` does not fit `%s`",
                        STR_ARG(text), word);
    }
    diag_help(c->diags, diag, "%s", rows[setting].write);
    return false;
}

/* A name ends without its full stop; a sentence of the coach's keeps it. */
static bool text_read(struct reader *r, const struct line *line, enum setting setting,
                      struct setting_form *out)
{
    size_t from = 1;
    struct title title;
    enum title_result result = title_read(r, line, &from, NULL, &title);
    struct cursor c = reader_cursor(r, line, from);
    if (result != TITLE_FINE || !cursor_done(&c)) {
        return result != TITLE_REFUSED && refuse(&c, setting);
    }
    out->text = title.text;
    bool name = setting == SETTING_CALL || setting == SETTING_SERIES || setting == SETTING_SCORE;
    while (name && !title.quoted && out->text.size > 0 && out->text.at[out->text.size - 1] == '.') {
        out->text.size--;
    }
    return true;
}

/* 2 wing right, 3 in the corner on the left: the value as it is said aloud; false: nothing of it.
 */
static bool as_said(struct reader *r, const struct line *line, enum setting setting,
                    struct setting_form *out)
{
    struct speech said = {NULL, 0};
    struct cursor c = reader_cursor(r, line, 1);
    struct cursor_mark mark = cursor_mark(&c);
    struct setting_form form = {.setting = setting, .value_span = out->value_span};
    c.speech = &said;
    if (rows[setting].read(r, &c, &form) && cursor_done(&c) && c.refusals == 0) {
        *out = form;
        return true;
    }
    cursor_back(&c, mark);
    return false;
}

bool setting_read(struct reader *r, const struct line *line, enum setting setting,
                  struct setting_form *out)
{
    *out = (struct setting_form){.setting = setting, .value_span = SPAN_NONE};
    if (line->count > 1) {
        out->value_span = span_join(line->tokens[1].span, line->tokens[line->count - 1].span);
    }
    if (!rows[setting].read) {
        return text_read(r, line, setting, out);
    }
    struct cursor c = reader_cursor(r, line, 1);
    if (rows[setting].read(r, &c, out) && cursor_done(&c)) {
        return c.refusals == 0;
    }
    return c.refusals == 0 && (as_said(r, line, setting, out) || refuse(&c, setting));
}
