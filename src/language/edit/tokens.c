/* SPDX-License-Identifier: MIT */
/* tokens: a text in pieces for the eye. What was understood says what its words are; a word of a
 * line that is not finished, or of a line of no form, is what the vocabulary has it for. */
#include "base/limits.h"
#include "language/edit/paint.h"
#include "language/words/reader.h"
#include "language/words/vocabulary.h"

struct eye {
    const struct edit_text *text;
    const struct painted *painted;
    struct diags diags; /* turned away */
    edit_token_list *out;
};

static void add(struct eye *eye, struct span span, enum edit_class class)
{
    if (span.begin < span.end) {
        struct edit_token token = {span.begin, span.end, class};
        VEC_PUSH(eye->text->arena, eye->out, token);
    }
}

/* What the first word makes of the line, as a class. */
static enum edit_class opener_class(struct opener opener)
{
    switch (opener.kind) {
    case LINE_OTHER:
        return EDIT_PLAIN;
    case LINE_SETTING:
    case LINE_VERSION:
        return EDIT_SETTING;
    case LINE_NOTE:
        return EDIT_NOTE;
    default:
        return EDIT_HEADING;
    }
}

static bool numbers_are_players(struct opener opener)
{
    switch (opener.kind) {
    case LINE_OTHER:
    case LINE_BRANCH:
    case LINE_IF:
        return true;
    case LINE_NOTE:
        return opener.which != FORM_REPEAT && opener.which != FORM_SAME;
    case LINE_SETTING:
        return opener.which == SETTING_START || opener.which == SETTING_BALL;
    default:
        return false;
    }
}

const char *const when_words[] = {"as",    "after",     "when",  "while", "then", "meanwhile",
                                  "later", "otherwise", "until", "or",    NULL};
const char *const how_words[] = {"wide", "tight", "early", "taking", "facing", "back to", NULL};

/* The class of the words at the cursor, which moves behind them. */
static enum edit_class vocabulary_class(struct cursor *c)
{
    struct phrase phrase;
    const struct token *from = c->at;
    if (take_among(c, when_words)) {
        return EDIT_TIE;
    }
    if (take_among(c, how_words) || take_entry(c, pace_entries) >= 0) {
        return EDIT_MODIFIER;
    }
    if (phrase_read(c, FOR_ANYONE, &phrase)) {
        return EDIT_VERB;
    }
    bool side = take_entry(c, side_entries) >= 0;
    if (take_spot(c) >= 0 || side || take_entry(c, direction_entries) >= 0 ||
        take_entry(c, fraction_entries) >= 0) {
        return EDIT_PLACE;
    }
    c->at = from + 1;
    return str_is(from->text, "coach") ? EDIT_PLAYER : EDIT_PLAIN;
}

static enum edit_class kind_class(const struct token *token, struct opener opener)
{
    switch (token->kind) {
    case TOKEN_QUOTED:
        return EDIT_QUOTED;
    case TOKEN_MEASURE:
        return EDIT_MEASURE;
    case TOKEN_DEFENDER:
        return EDIT_DEFENDER;
    case TOKEN_CHECK_ID:
        return EDIT_CHECK;
    case TOKEN_GROUP:
    case TOKEN_DATE:
    case TOKEN_CLOCK:
        return EDIT_VALUE;
    case TOKEN_NUMBER:
        return numbers_are_players(opener) ? EDIT_PLAYER : EDIT_VALUE;
    default:
        return EDIT_PLAIN;
    }
}

static struct cursor cursor_of(struct eye *eye, const struct line *line, size_t from)
{
    return (struct cursor){.arena = eye->text->arena,
                           .diags = &eye->diags,
                           .sources = eye->text->sources,
                           .at = line->tokens + from,
                           .end = line->tokens + line->count,
                           .line_span = line->span,
                           .players = LIMIT_ATTACKERS};
}

/* What was read as something, and no more than its kind says otherwise. */
static enum edit_class painted_class(const struct eye *eye, const struct token *token)
{
    return (enum edit_class)eye->painted->class[token->span.begin];
}

static bool is_kind_first(enum token_kind kind)
{
    return kind == TOKEN_QUOTED || kind == TOKEN_MEASURE || kind == TOKEN_CHECK_ID;
}

/* The line names roles: the coach's own words for players. */
static bool names_roles(struct opener opener)
{
    return (opener.kind == LINE_HEADING_0 && opener.which == BLOCK_ACTION) ||
           (opener.kind == LINE_NOTE && opener.which == FORM_RUN);
}

static bool joins_roles(const struct token *token)
{
    static const char *const words[] = {"for", "with", "and", "mirrored", NULL};
    for (size_t i = 0; words[i]; i++) {
        if (str_is(token->text, words[i])) {
            return true;
        }
    }
    return false;
}

static void line_tokens(struct eye *eye, const struct line *line)
{
    struct opener opener = opener_of(line, 0);
    size_t known = 0; /* tokens before this one have the class of a phrase */
    enum edit_class class = EDIT_PLAIN, of_phrase = EDIT_PLAIN;
    for (size_t i = 0; i < line->count; i++) {
        const struct token *token = &line->tokens[i];
        enum edit_class painted = painted_class(eye, token);
        if (token->kind == TOKEN_MARK) {
            class = painted == EDIT_ERROR ? EDIT_ERROR : EDIT_PLAIN;
        } else if (is_kind_first(token->kind)) {
            class = painted == EDIT_ERROR ? EDIT_ERROR : kind_class(token, opener);
        } else if (painted != EDIT_PLAIN) {
            class = painted;
        } else if (token->kind != TOKEN_WORD) {
            class = kind_class(token, opener);
        } else if (i == 0 && opener.kind != LINE_OTHER) {
            class = opener_class(opener);
        } else if (names_roles(opener)) {
            class = joins_roles(token) ? EDIT_PLAIN : EDIT_PLAYER;
        } else if (i < known) {
            class = of_phrase;
        } else {
            struct cursor c = cursor_of(eye, line, i);
            class = of_phrase = vocabulary_class(&c);
            known = (size_t)(c.at - line->tokens);
        }
        if (i == 0 && token->kind == TOKEN_WORD && opener.kind != LINE_OTHER &&
            painted != EDIT_ERROR) {
            class = opener_class(opener);
        }
        add(eye, token->span, class);
    }
}

/* Reads once, and keeps what was read for whoever asks more. */
static void tokens_of(const struct edit_text *text, struct painted *painted, edit_token_list *out)
{
    struct diags diags, unsaid;
    struct lines lines = {0};
    paint_book(text, edit_read(text, &diags), &diags, painted);
    struct eye eye = {.text = text, .painted = painted, .out = out};
    diags_init(&eye.diags, text->arena);
    diags_init(&unsaid, text->arena);
    lines_read(text->arena, text->sources, text->source, &unsaid, &lines);
    for (size_t i = 0; i < lines.all.count; i++) {
        line_tokens(&eye, &lines.all.at[i]);
        if (lines.all.at[i].comment.size > 0) {
            add(&eye, lines.all.at[i].comment_span, EDIT_COMMENT);
        }
    }
}

void edit_tokens(const struct edit_text *text, edit_token_list *out)
{
    struct painted painted = {0};
    tokens_of(text, &painted, out);
}

/* The innermost thing that was read at `at`. */
static bool named_at(const struct painted *painted, uint32_t at, struct edit_word *out)
{
    bool found = false;
    for (size_t i = 0; i < painted->name_count; i++) {
        struct span span = painted->names[i].span;
        bool inside = span.begin <= at && at <= span.end;
        if (inside && (!found || span.end - span.begin <= out->end - out->begin)) {
            *out = (struct edit_word){.begin = span.begin,
                                      .end = span.end,
                                      .class = painted->names[i].class,
                                      .name = str_of(painted->names[i].name)};
            found = true;
        }
    }
    return found;
}

bool edit_word_at(const struct edit_text *text, uint32_t at, struct edit_word *out)
{
    edit_token_list tokens = {0};
    struct painted painted = {0};
    const char *bytes = text->sources->all.at[text->source].text.at;
    tokens_of(text, &painted, &tokens);
    for (size_t i = tokens.count; i-- > 0;) {
        struct edit_token token = tokens.at[i];
        if (token.begin > at || at > token.end) {
            continue;
        }
        struct str written = {bytes + token.begin, token.end - token.begin};
        struct edit_word named = {0};
        *out = (struct edit_word){token.begin, token.end, token.class, written, written};
        if ((token.class == EDIT_VERB || token.class == EDIT_PLACE) &&
            named_at(&painted, at, &named)) {
            *out = named;
            out->written = written;
        }
        return true;
    }
    return false;
}
