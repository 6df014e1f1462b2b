/* SPDX-License-Identifier: MIT */
/* practice: the lines of a practice plan: when it starts and how long it lasts, what is done in it
 * and for how many minutes, stations. Takes one line, gives one form; knows no names of plays. */
#include "base/limits.h"
#include "language/syntax/chars.h"
#include "language/words/grammar.h"
#include "language/words/outline.h"
#include "language/words/reader.h"

static const char item_example[] = "12 min drill \"Four-spot closeouts\"";

static bool refuse(struct cursor *c, const char *expected, const char *example)
{
    struct span span = cursor_span(c);
    struct str text = cursor_text(c, span);
    struct diag *diag =
        text.size == 0
            ? REFUSE(c, TEXT_PLAN, span, "%s is missing here", expected)
            : REFUSE(c, TEXT_PLAN, span, "`%.*s` stands where %s belongs", STR_ARG(text), expected);
    diag_help(c->diags, diag, "write `%s`", example);
    return false;
}

/* ---- values ---- */

/* A time of the day; one before seven is read as it stands, and mostly not meant. */
static bool clock_part(struct cursor *c, struct plan_form *out, const char *example)
{
    enum { EARLIEST = 7 * 60 };
    take_words(c, "at");
    const struct token *clock = cursor_next(c);
    if (!clock || clock->kind != TOKEN_CLOCK) {
        return refuse(c, "a time of the day", example);
    }
    out->clock = (int)clock->number;
    cursor_take(c, clock, clock + 1);
    bool half_named = clock->text.at[clock->text.size - 1] == 'm';
    if (out->clock < EARLIEST && !half_named) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLAN_EARLY, clock->span,
                                     "%.*s is read as a time of the morning", STR_ARG(clock->text));
        diag_help(c->diags, diag, "in the evening: %d:%02d", out->clock / 60 % 12 + 12,
                  out->clock % 60);
    }
    return true;
}

static bool minutes_part(struct cursor *c, double *minutes, const char *example)
{
    const struct token *token = cursor_next(c);
    if (!token || token->kind != TOKEN_MEASURE || token->unit != UNIT_MINUTES) {
        return refuse(c, "a number of minutes", example);
    }
    if (token->number <= 0 || token->number > LIMIT_PRACTICE_MINUTES) {
        struct diag *diag =
            REFUSE(c, TEXT_PLAN, token->span, "minutes are more than 0 and at most %d",
                   LIMIT_PRACTICE_MINUTES);
        diag_help(c->diags, diag, "write `%s`", example);
        return false;
    }
    *minutes = token->number;
    cursor_take(c, token, token + 1);
    return true;
}

/* A text in quotes that says something. */
static bool filled(struct cursor *c, struct str text, struct span span)
{
    if (text.size > 0) {
        return true;
    }
    struct diag *diag = REFUSE(c, TEXT_PLAN, span, "this text is empty");
    diag_help(c->diags, diag, "say it in words, or leave it out");
    return false;
}

static bool text_part(struct cursor *c, struct plan_form *out, const char *example)
{
    return quoted_read(c, &out->text, &out->text_span) || refuse(c, "a text in quotes", example);
}

/* ---- what is done ---- */

static const struct content_row {
    const char *word, *other;
    bool named;
} contents[CONTENT_COUNT] = {
#define CONTENT(symbol, word, named, other) [CONTENT_##symbol] = {word, other, named},
#include "language/words/contents.def"
#undef CONTENT
};

const char *content_word(enum content_kind kind)
{
    return contents[kind].word;
}

static bool take_content(struct cursor *c, enum content_kind *out)
{
    for (int i = 0; i < CONTENT_COUNT; i++) {
        const struct content_row *row = &contents[i];
        if (row->word && ((row->other && take_words(c, row->other)) || take_words(c, row->word))) {
            *out = (enum content_kind)i;
            return true;
        }
    }
    return false;
}

static const char *minutes_example(struct cursor *c, double minutes, struct str text)
{
    struct strbuf example;
    strbuf_init(&example, c->arena);
    strbuf_number(&example, minutes, 2);
    strbuf_text(&example, " min \"");
    for (size_t i = 0; i < text.size; i++) { /* no quotes within quotes */
        if (text.at[i] != '"') {
            strbuf_char(&example, text.at[i]);
        }
    }
    strbuf_char(&example, '"');
    return strbuf_str(&example).at;
}

static bool content_part(struct cursor *c, struct plan_form *out)
{
    out->content = CONTENT_TEXT;
    bool kind = take_content(c, &out->content);
    if (quoted_read(c, &out->text, &out->text_span)) {
        return filled(c, out->text, out->text_span);
    }
    if (kind && !contents[out->content].named) {
        return true;
    }
    if (kind) {
        return refuse(c, "its name in quotes",
                      out->content == CONTENT_PLAY ? "15 min play \"Lantern\"" : item_example);
    }
    struct span span = span_join(cursor_span(c), c->line_span);
    struct str text = cursor_text(c, (struct span){span.source, cursor_span(c).begin, span.end});
    bool words = cursor_next(c) && cursor_next(c)->kind == TOKEN_WORD;
    const char *example = item_example;
    if (words) {
        example = minutes_example(c, out->minutes > 0 ? out->minutes : 10, text);
    }
    return refuse(c, "drill, play, warm-up, cool-down, water, talk or a text in quotes", example);
}

/* ---- what may stand behind it ---- */

static bool groups_part(struct cursor *c, struct plan_form *out)
{
    static const char example[] = "12 min drill \"Four-spot closeouts\", groups of 4";
    struct span span;
    if (!integer_read(c, &out->groups, &span)) {
        return refuse(c, "how many are in a group", example);
    }
    if (out->groups < 1 || out->groups > LIMIT_GROUP) {
        struct diag *diag = REFUSE(c, TEXT_PLAN, span, "a group has 1 to %d players", LIMIT_GROUP);
        diag_help(c->diags, diag, "write `%s`", example);
        return false;
    }
    return true;
}

static bool against_part(struct cursor *c, struct plan_form *out)
{
    out->against = true;
    out->defense = arena_new(c->arena, struct setting_form);
    out->defense->setting = SETTING_DEFENSE;
    return defense_words_read(c, out->defense) ||
           refuse(c, "a defense", "15 min play \"Lantern\", against zone 2-3");
}

static bool with_part(struct cursor *c, struct plan_form *out)
{
    if (quoted_read(c, &out->with, &out->with_span)) {
        return filled(c, out->with, out->with_span);
    }
    return refuse(c, "who, in quotes", "12 min drill \"Four-spot closeouts\", with \"guards\"");
}

static bool contact_part(struct cursor *c, struct plan_form *out)
{
    (void)c;
    out->contact = CONTACT_YES;
    return true;
}

static bool no_contact_part(struct cursor *c, struct plan_form *out)
{
    (void)c;
    out->contact = CONTACT_NO;
    return true;
}

enum extra { EXTRA_GROUPS, EXTRA_AGAINST, EXTRA_WITH, EXTRA_CONTACT, EXTRA_COUNT };
static const struct extra_row {
    const char *words;
    enum extra which;
    bool (*read)(struct cursor *, struct plan_form *);
} extras[] = {
    {"in groups of", EXTRA_GROUPS, groups_part},
    {"groups of", EXTRA_GROUPS, groups_part},
    {"against", EXTRA_AGAINST, against_part},
    {"versus", EXTRA_AGAINST, against_part},
    {"vs", EXTRA_AGAINST, against_part},
    {"with", EXTRA_WITH, with_part},
    {"no contact", EXTRA_CONTACT, no_contact_part},
    {"without contact", EXTRA_CONTACT, no_contact_part},
    {"full contact", EXTRA_CONTACT, contact_part},
    {"contact", EXTRA_CONTACT, contact_part},
};

static bool live_part(struct cursor *c, struct plan_form *out, bool seen[EXTRA_COUNT])
{
    const struct token *from = c->at;
    if (seen[EXTRA_CONTACT] || !outline_sides(c)) {
        return false;
    }
    seen[EXTRA_CONTACT] = true;
    out->contact = CONTACT_YES;
    outline_say_contact(c, cursor_taken(c, from));
    return true;
}

/* 1: taken, 0: none stands here, -1: reported. */
static int extra_part(struct cursor *c, struct plan_form *out, bool seen[EXTRA_COUNT])
{
    for (size_t i = 0; i < sizeof extras / sizeof extras[0]; i++) {
        struct cursor trial = *c;
        if (!take_words(&trial, extras[i].words)) {
            continue;
        }
        if (seen[extras[i].which]) {
            struct diag *diag = REFUSE(c, TEXT_PLAN, cursor_span(c),
                                       "`%s` is said twice in this line", extras[i].words);
            diag_help(c->diags, diag, "keep one of the two");
            return -1;
        }
        seen[extras[i].which] = true;
        c->at = trial.at;
        return extras[i].read(c, out) ? 1 : -1;
    }
    return 0;
}

static bool extras_part(struct cursor *c, struct plan_form *out)
{
    bool seen[EXTRA_COUNT] = {false};
    while (!cursor_done(c)) {
        bool comma = take_mark(c, ',');
        int taken = live_part(c, out, seen) ? 1 : extra_part(c, out, seen);
        if (taken < 0) {
            return false;
        }
        if (taken == 0) {
            return !comma ||
                   refuse(c, "groups of, against, contact, no contact or with",
                          "12 min drill \"Four-spot closeouts\", groups of 4, no contact");
        }
    }
    return true;
}

/* ---- lines ---- */

static bool starts_read(struct cursor *c, struct plan_form *out)
{
    return clock_part(c, out, "starts 17:30");
}

static bool ends_read(struct cursor *c, struct plan_form *out)
{
    return clock_part(c, out, "ends 18:45");
}

/* 1.5 hours, 2 h. */
static bool hours_part(struct cursor *c, double *minutes)
{
    static const char *const hours[] = {"hours", "hour", "hrs", "hr", "h", NULL};
    enum { MINUTES = 60 };
    const struct token *token = cursor_next(c);
    struct cursor trial = *c;
    if (!token || token->kind != TOKEN_NUMBER || token->possessive) {
        return false;
    }
    trial.at = token + 1;
    double time = token->number * MINUTES;
    if (!take_among(&trial, hours) || time <= 0 || time > LIMIT_PRACTICE_MINUTES) {
        return false;
    }
    *minutes = time;
    cursor_take(c, token, trial.at);
    return true;
}

static bool lasts_read(struct cursor *c, struct plan_form *out)
{
    take_words(c, "for");
    if (hours_part(c, &out->minutes)) {
        return true;
    }
    return minutes_part(c, &out->minutes, "lasts 75 min");
}

/* In quotes, or the words to the line's end. */
static bool about_read(struct cursor *c, struct plan_form *out)
{
    if (cursor_done(c) || c->at->kind == TOKEN_QUOTED) {
        return text_part(c, out, "about \"Closing out under control\"");
    }
    out->text_span = span_join(c->at->span, c->end[-1].span);
    out->text = text_clean(c->arena, cursor_text(c, out->text_span), false);
    c->at = c->end;
    return true;
}

static bool lineup_name_read(struct cursor *c, struct plan_form *out)
{
    return text_part(c, out, "lineup \"Big\"");
}

static bool stations_read(struct cursor *c, struct plan_form *out)
{
    static const char example[] = "stations 12 min, change every 4 min";
    if (!minutes_part(c, &out->minutes, example)) {
        return false;
    }
    take_mark(c, ',');
    if (!take_words(c, "change every")) {
        return refuse(c, "change every and the minutes at each", example);
    }
    return minutes_part(c, &out->change, example);
}

static bool station_read(struct cursor *c, struct plan_form *out)
{
    static const char example[] = "station \"Basket 1\" drill \"Four-spot closeouts\"";
    struct plan_form content = *out;
    if (!quoted_read(c, &out->text, &out->text_span)) {
        return refuse(c, "the station's name in quotes", example);
    }
    if (!filled(c, out->text, out->text_span)) {
        return false;
    }
    take_mark(c, ',');
    if (!content_part(c, &content)) {
        return false;
    }
    out->content = content.content;
    out->station = out->text;
    out->text = content.text;
    out->text_span = content.text_span;
    return extras_part(c, out);
}

/* 10 min: warm-up; water - 3 min */
static void take_dash(struct cursor *c)
{
    if (!take_mark(c, ':') && !take_mark(c, '-')) {
        take_mark(c, ',');
    }
}

/* Nobody is in contact, or against anybody, at the bottle. */
static bool water_fits(struct cursor *c, const struct plan_form *plan, struct span span)
{
    if (plan->content != CONTENT_WATER || (!plan->against && plan->contact != CONTACT_YES)) {
        return true;
    }
    struct diag *diag = REFUSE(c, TEXT_PLAN, span, "water is neither against anybody nor contact");
    diag_help(c->diags, diag, "write `3 min water`, and what is played on a line of its own");
    return false;
}

static bool item_read(struct cursor *c, struct plan_form *out)
{
    const struct token *next = cursor_next(c);
    bool before = next && next->kind == TOKEN_MEASURE;
    if (before && !minutes_part(c, &out->minutes, item_example)) {
        return false;
    }
    take_dash(c);
    if (!content_part(c, out)) {
        return false;
    }
    if (!before) { /* water, 3 min */
        take_dash(c);
        take_words(c, "for");
        if (!minutes_part(c, &out->minutes, item_example)) {
            return false;
        }
    }
    return extras_part(c, out) && water_fits(c, out, c->line_span);
}

static const struct plan_row {
    const char *word, *other;
    enum plan_kind kind;
    bool (*read)(struct cursor *, struct plan_form *);
} rows[] = {
    {"starts", "start", PLAN_STARTS, starts_read},
    {"ends", "end", PLAN_ENDS, ends_read},
    {"lasts", "last", PLAN_LASTS, lasts_read},
    {"about", NULL, PLAN_ABOUT, about_read},
    {"lineup", NULL, PLAN_LINEUP, lineup_name_read},
    {"stations", NULL, PLAN_STATIONS, stations_read},
    {"station", NULL, PLAN_STATION, station_read},
};

const char *plan_word(enum plan_kind kind)
{
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        if (rows[i].kind == kind) {
            return rows[i].word;
        }
    }
    return "";
}

static bool line_read(struct cursor *c, struct plan_form *out)
{
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        if (take_words(c, rows[i].word) || (rows[i].other && take_words(c, rows[i].other))) {
            out->kind = rows[i].kind;
            take_mark(c, ':');
            return rows[i].read(c, out);
        }
    }
    enum content_kind content;
    struct cursor trial = *c;
    const struct token *next = cursor_next(c);
    if (next && next->kind == TOKEN_NUMBER && cursor_next(&trial)) {
        return refuse(
            c, "minutes with their unit",
            str_format(c->arena, "%.*s min drill \"Four-spot closeouts\"", STR_ARG(next->text)).at);
    }
    bool item = next && (next->kind == TOKEN_MEASURE || next->kind == TOKEN_QUOTED ||
                         take_content(&trial, &content));
    return item ? item_read(c, out)
                : refuse(c,
                         "starts, lasts, ends, about, lineup, stations, station, or minutes and "
                         "what is done",
                         item_example);
}

/* The line of this kind that stands here already; a practice may have very many lines, of which few
 * are of a kind that stands once. */
static const struct form *same_above(const struct reader *r, enum plan_kind kind)
{
    for (size_t i = 0; i < r->top->forms.count; i++) {
        const struct form *form = &r->top->forms.at[i];
        if (form->kind == FORM_PLAN && form->plan->kind == kind) {
            return form;
        }
    }
    return NULL;
}

static const struct form *last_above(const struct reader *r)
{
    for (size_t i = r->top->forms.count; i > 0; i--) {
        if (r->top->forms.at[i - 1].kind == FORM_PLAN) {
            return &r->top->forms.at[i - 1];
        }
    }
    return NULL;
}

/* starts, lasts and the like stand once. */
static bool stands_once(const struct reader *r, struct cursor *c, const struct plan_form *plan,
                        const struct token *first)
{
    const struct form *same = plan->kind < PLAN_ITEM ? same_above(r, plan->kind) : NULL;
    if (!same) {
        return true;
    }
    struct diag *diag =
        REFUSE(c, TEXT_SETTING_TWICE, first->span, "`%s` stands here twice", plan_word(plan->kind));
    if (diag) {
        diag->other = same->span;
    }
    diag_help(c->diags, diag, "keep one of the two lines");
    return false;
}

/* A station stands under its stations. */
static bool station_fits(const struct reader *r, struct cursor *c, const struct plan_form *plan,
                         const struct token *first)
{
    const struct form *above = plan->kind == PLAN_STATION ? last_above(r) : NULL;
    if (plan->kind != PLAN_STATION ||
        (above && (above->plan->kind == PLAN_STATIONS || above->plan->kind == PLAN_STATION))) {
        return true;
    }
    struct diag *diag = REFUSE(c, TEXT_PLAN, first->span, "a station stands under `stations`");
    diag_help(c->diags, diag, "write `stations 12 min, change every 4 min` above it");
    return false;
}

static void add_plan(struct reader *r, const struct line *line, const struct plan_form *plan)
{
    struct plan_form *kept = arena_new(r->arena, struct plan_form);
    *kept = *plan;
    reader_add(r, r->top, FORM_PLAN, line)->plan = kept;
}

/* Words of the coach's own, or water and the like alone; not `drill`, `water, loudly`. */
static bool own_words(struct plan_form *plan)
{
    for (int i = 0; i < CONTENT_COUNT; i++) {
        const struct content_row *row = &contents[i];
        struct str text = plan->text, word = row->word ? str_of(row->word) : (struct str){0};
        if (word.size == 0 || text.size < word.size ||
            !str_equal_fold((struct str){text.at, word.size}, word)) {
            continue;
        }
        bool whole = text.size == word.size;
        if (whole && !row->named) {
            plan->content = (enum content_kind)i;
            plan->text = (struct str){NULL, 0};
            plan->text_span = SPAN_NONE;
            return true;
        }
        if (whole || text.at[word.size] == ',' || (row->named && text.at[word.size] == ' ')) {
            return false;
        }
    }
    return true;
}

/* An item without quotes; the first one says when the practice starts. */
static bool outlined(struct reader *r, const struct line *line)
{
    struct diags *heard = r->diags, unheard;
    struct plan_form plan = {.kind = PLAN_ITEM, .text_span = SPAN_NONE, .with_span = SPAN_NONE};
    diags_init(&unheard, r->arena);
    r->diags = &unheard;
    struct cursor c = reader_cursor(r, line, 0);
    bool strict = line_read(&c, &plan) && c.refusals == 0 && reader_used_up(&c);
    r->diags = heard;
    struct cursor loose = reader_cursor(r, line, 0);
    int clock = -1;
    bool item = !strict && outline_item(&loose, &plan, &clock) && own_words(&plan);
    if (loose.refusals > 0) {
        reader_broken(r, line);
        return true;
    }
    if (!item) {
        return false;
    }
    struct cursor words = reader_cursor(r, line, 0);
    outline_kind(&words, &plan);
    if (clock >= 0 && !same_above(r, PLAN_ITEM) && !same_above(r, PLAN_STARTS)) {
        struct plan_form starts = {
            .kind = PLAN_STARTS, .clock = clock, .text_span = SPAN_NONE, .with_span = SPAN_NONE};
        struct line bare = line_part(line, 0, line->count);
        add_plan(r, line_keep(r, bare), &starts);
    }
    add_plan(r, line, &plan);
    return true;
}

void practice_line(struct reader *r, const struct line *line)
{
    if (outlined(r, line)) {
        return;
    }
    struct plan_form plan = {.kind = PLAN_ITEM, .text_span = SPAN_NONE, .with_span = SPAN_NONE};
    struct cursor c = reader_cursor(r, line, 0);
    if (!line_read(&c, &plan) || c.refusals > 0 || !reader_used_up(&c) ||
        !stands_once(r, &c, &plan, line->tokens) || !station_fits(r, &c, &plan, line->tokens)) {
        reader_broken(r, line);
        return;
    }
    outline_quoted(&c, &plan);
    add_plan(r, line, &plan);
}
