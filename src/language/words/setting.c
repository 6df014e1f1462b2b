/* SPDX-License-Identifier: MIT */
/* setting: the value of each setting, as a table of readers. */
#include "language/words/reader.h"
#include "language/words/vocabulary.h"

/* What the value could have been. */
static bool refuse(struct cursor *c, const char *expected)
{
    struct span span = cursor_span(c);
    struct str text = cursor_text(c, span);
    struct diag *diag;
    if (text.size == 0) {
        diag = diag_add(c->diags, DIAG_TEXT_SETTING, span, "the value of the setting is missing");
    } else {
        diag = diag_add(c->diags, DIAG_TEXT_SETTING, span, "`%.*s` is no value of this setting",
                        STR_ARG(text));
    }
    diag_help(c->diags, diag, "%s", expected);
    return false;
}

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
    return out->number >= 0 ||
           refuse(c, "high-school, fiba, nba, wnba, college-men, college-women or mini");
}

static bool level_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    out->number = take_longest(c, level_word, LEVEL_COUNT);
    return out->number >= 0 ||
           refuse(c,
                  "u12; u14, u16, u18, middle-school, jv or varsity, with boys or girls; college "
                  "men, college women, professional men, professional women");
}

static bool choice_read(struct cursor *c, struct setting_form *out, const char *first,
                        const char *second, const char *expected)
{
    if (take_words(c, first)) {
        out->number = 0;
        return true;
    }
    out->number = 1;
    return take_words(c, second) || refuse(c, expected);
}

static bool units_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    bool fine = take_words(c, "meters") ? (out->number = 1, true)
                                        : choice_read(c, out, "feet", "metres", "feet or metres");
    r->metres = fine ? out->number == 1 : r->metres;
    r->shelf->metres = r->depth == 0 ? r->metres : r->shelf->metres;
    return fine;
}

static bool paper_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return choice_read(c, out, "letter", "a4", "letter or a4");
}

static bool basket_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return choice_read(c, out, "top", "bottom", "top or bottom");
}

static bool floor_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return choice_read(c, out, "half", "full", "half or full");
}

static bool limit_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    const struct token *id = cursor_next(c);
    if (!id || id->kind != TOKEN_CHECK_ID) {
        return refuse(c, "a check and a measure: limit space.close 10 ft");
    }
    out->text = id->text;
    c->at = id + 1;
    const struct token *measure = cursor_next(c);
    if (!measure || measure->kind != TOKEN_MEASURE) {
        return refuse(c, "a measure with its unit: 10 ft, 3 s, 30 degrees, 60 %");
    }
    out->measure = (struct measure){measure->number, measure->unit};
    c->at = measure + 1;
    return true;
}

static bool number_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    struct span span;
    return integer_read(c, &out->number, &span) || refuse(c, "a whole number: number 4");
}

/* Up to the next comma outside brackets. */
static const struct token *piece_end(const struct cursor *c)
{
    int depth = 0;
    const struct token *at = c->at;
    for (; at < c->end; at++) {
        char mark = at->kind == TOKEN_MARK ? at->mark : '\0';
        depth += (mark == '(') - (mark == ')');
        if (mark == ',' && depth <= 0) {
            break;
        }
    }
    return at;
}

static bool tags_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    do {
        const struct token *end = piece_end(c);
        if (end == c->at) {
            return refuse(c, "words with commas between: tags man, late clock");
        }
        struct str tag = c->at->text;
        if (c->at->kind != TOKEN_QUOTED) {
            tag = cursor_text(c, span_join(c->at->span, end[-1].span));
        } else if (end != c->at + 1) {
            c->at++;
            return refuse(c, "a comma between two tags");
        }
        VEC_PUSH(c->arena, &out->tags, tag);
        c->at = end;
    } while (take_mark(c, ','));
    return true;
}

static bool ball_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    static const char expected[] =
        "a player, with a place if it is a throw-in: ball 2 out of bounds at left hash";
    const struct token *from = c->at;
    if (!who_read(c, &out->ball)) {
        return refuse(c, expected);
    }
    if (out->ball.kind != WHO_PLAYER && out->ball.kind != WHO_COACH) {
        c->at = from;
        return refuse(c, expected);
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
    return refuse(c, "out of bounds at a place: out of bounds at left hash");
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
        }
    }
    return true;
}

static bool press_read(struct cursor *c, struct setting_form *out)
{
    static const char *const presses[] = {"2-2-1", "1-2-1-1", NULL};
    out->defense = DEFENSE_PRESS;
    return take_words(c, "man") || zone_read(c, presses, &out->zone) ||
           refuse(c, "press man, press 2-2-1 or press 1-2-1-1");
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

static bool group_is_next(const struct cursor *c)
{
    const struct token *next = cursor_next(c);
    return next && next->kind == TOKEN_GROUP;
}

static bool defense_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    static const char *const zones[] = {"2-3", "3-2", "1-3-1", "1-2-2", "2-1-2", NULL};
    if (take_words(c, "none")) {
        out->defense = DEFENSE_NONE;
    } else if (take_words(c, "man to man") || take_words(c, "man")) {
        return man_read(c, out);
    } else if (and_one(c, "box", "one", 1)) {
        out->defense = DEFENSE_BOX_AND_ONE;
    } else if (and_one(c, "triangle", "two", 2)) {
        out->defense = DEFENSE_TRIANGLE_AND_TWO;
    } else if (take_words(c, "press")) {
        return press_read(c, out);
    } else if (take_words(c, "zone") || group_is_next(c)) {
        out->defense = DEFENSE_ZONE;
        return zone_read(c, zones, &out->zone) || refuse(c, "zone 2-3, 3-2, 1-3-1, 1-2-2 or 2-1-2");
    } else {
        return refuse(
            c,
            "none, man (deny, gap, sag), zone 2-3, box-and-one, triangle-and-two or press 2-2-1");
    }
    return true;
}

static bool clock_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return (take_measure(c, true, &out->measure) && out->measure.value > 0) ||
           refuse(c, "seconds: clock 6 s");
}

static bool lineup_setting_read(struct reader *r, struct cursor *c, struct setting_form *out)
{
    (void)r;
    return quoted_read(c, &out->text, &out->value_span) ||
           refuse(c, "the name of a lineup in quotes: lineup \"Big\"");
}

static bool is_text(enum setting setting)
{
    return setting == SETTING_ABOUT || setting == SETTING_CALL || setting == SETTING_SERIES ||
           setting == SETTING_SCORE || setting == SETTING_CAUTION || setting == SETTING_GOAL;
}

/* A name ends without its full stop; a sentence of the coach's keeps it. */
static bool text_read(struct reader *r, const struct line *line, enum setting setting,
                      struct setting_form *out)
{
    size_t from = 1;
    struct title title;
    enum title_result result = title_read(r, line, &from, NULL, &title);
    struct cursor c = reader_cursor(r, line, from);
    if (result != TITLE_FINE) {
        return result == TITLE_NONE && refuse(&c, "a text: about \"The screener answers\"");
    }
    out->text = title.text;
    bool name = setting == SETTING_CALL || setting == SETTING_SERIES || setting == SETTING_SCORE;
    while (name && !title.quoted && out->text.size > 0 && out->text.at[out->text.size - 1] == '.') {
        out->text.size--;
    }
    return reader_used_up(&c);
}

bool setting_read(struct reader *r, const struct line *line, enum setting setting,
                  struct setting_form *out)
{
    static bool (*const readers[SETTING_COUNT])(struct reader *, struct cursor *,
                                                struct setting_form *) = {
        [SETTING_RULES] = rules_read,   [SETTING_LEVEL] = level_read,
        [SETTING_UNITS] = units_read,   [SETTING_PAPER] = paper_read,
        [SETTING_BASKET] = basket_read, [SETTING_LIMIT] = limit_read,
        [SETTING_NUMBER] = number_read, [SETTING_TAGS] = tags_read,
        [SETTING_FLOOR] = floor_read,   [SETTING_START] = start_read,
        [SETTING_BALL] = ball_read,     [SETTING_DEFENSE] = defense_read,
        [SETTING_CLOCK] = clock_read,   [SETTING_LINEUP] = lineup_setting_read,
    };
    *out = (struct setting_form){.setting = setting, .value_span = SPAN_NONE};
    if (line->count > 1) {
        out->value_span = span_join(line->tokens[1].span, line->tokens[line->count - 1].span);
    }
    if (is_text(setting)) {
        return text_read(r, line, setting, out);
    }
    struct cursor c = reader_cursor(r, line, 1);
    return readers[setting](r, &c, out) && reader_used_up(&c);
}
