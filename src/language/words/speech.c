/* SPDX-License-Identifier: MIT */
/* speech: a line read as it stands, and once more as it is said: see speech.h. */
#include "language/words/loose_read.h"
#include "language/words/unfold.h"

#include "base/limits.h"

#include <string.h>

enum filler_where { FILLER_ANY, FILLER_HEAD, FILLER_COMMA, FILLER_TAIL };
static const struct {
    enum filler_where where;
    const char *words;
} fillers[] = {
#define FILLER(where, words) {FILLER_##where, words},
#include "language/words/fillers.def"
#undef FILLER
};

enum { ROOM = 512 };

static bool parts(const struct token *token)
{
    bool mark = token->kind == TOKEN_MARK &&
                (token->mark == ',' || token->mark == '.' || token->mark == ';');
    return mark || (token->kind == TOKEN_WORD &&
                    (str_is(token->text, "and") || str_is(token->text, "then")));
}

/* A sentence may begin at this token: nothing but fillers stand since the last one ended. */
static bool at_head(const struct cursor *c)
{
    const struct token *at = c->at;
    while (at > c->first && at[-1].filler) {
        at--;
    }
    return at == c->first || parts(&at[-1]);
}

static bool at_tail(const struct cursor *c, const struct token *end)
{
    end = past_fillers(end, c->end);
    return end == c->end || (parts(end) && end->kind == TOKEN_MARK);
}

/* The longest filler at the cursor; NULL: none. */
static const struct token *filler_end(const struct cursor *c, bool head)
{
    const struct token *longest = NULL;
    struct opening opening = cursor_opening(c);
    for (size_t i = 0; i < sizeof fillers / sizeof *fillers; i++) {
        struct cursor trial = *c;
        bool begins = fillers[i].where == FILLER_HEAD || fillers[i].where == FILLER_COMMA;
        if ((begins && !head) || !may_open(opening, fillers[i].words) ||
            !take_str(&trial, str_of(fillers[i].words)) ||
            (fillers[i].where == FILLER_COMMA && !mark_is(&trial, ',')) ||
            (fillers[i].where == FILLER_TAIL && !at_tail(c, trial.at))) {
            continue;
        }
        longest = !longest || trial.at > longest ? trial.at : longest;
    }
    return longest;
}

/* is going to the top: where, not what he will do. */
static bool going_where(const struct cursor *c, const struct token *end)
{
    const struct token *last = end;
    while (last > c->at && last[-1].filler) {
        last--;
    }
    struct cursor trial = *c;
    trial.at = end;
    return last > c->at + 2 && token_is_word(&last[-1], "to") &&
           token_is_word(&last[-2], "going") && !verb_begins(&trial);
}

/* his dribble, her jumper: whose else. */
static bool own_thing(const struct cursor *c)
{
    static const char *const things[] = {"dribble", "dribbles", "jumper", "lay-up",
                                         "jump",    "floater",  "feet",   NULL};
    struct cursor trial = *c;
    return take_among(&trial, owner_words) && word_among(&trial, things);
}

/* you two cut: player 2, or two of them? */
static bool you_two(const struct token *at, const struct token *end)
{
    return token_is_word(at, "you") && at + 1 < end && token_is_spelled(&at[1]) &&
           !at[1].possessive;
}

static void mark_fillers(struct cursor *c, struct token *tokens, size_t count)
{
    struct cursor at = *c;
    at.watch = NULL;
    for (size_t i = 0; i < count;) {
        at.at = tokens + i;
        const struct token *end = tokens[i].filler || you_two(tokens + i, tokens + count)
                                      ? NULL
                                      : filler_end(&at, at_head(&at));
        end = end && going_where(&at, end) ? NULL : end;
        size_t to = end ? (size_t)(end - tokens) : i;
        for (; i < to; i++) {
            tokens[i].filler = true;
        }
        if (end && i < count && token_is_mark(&tokens[i], ',') &&
            at_head(&at)) { /* okay, 1 passes */
            tokens[i].filler = true;
        }
        bool word = str_is(tokens[i].text, "man") || str_is(tokens[i].text, "player");
        bool man = i > 0 && word && !tokens[i].possessive && tokens[i - 1].kind == TOKEN_NUMBER &&
                   !tokens[i - 1].possessive && i + 1 < count && !str_is(tokens[i + 1].text, "to");
        bool guard = i > 0 && str_is(tokens[i].text, "guard") && !tokens[i].possessive &&
                     tokens[i - 1].kind == TOKEN_NUMBER && tokens[i - 1].number <= 2 &&
                     !tokens[i - 1].possessive &&
                     (i + 1 == count || tokens[i + 1].kind == TOKEN_WORD ||
                      tokens[i + 1].kind == TOKEN_MARK); /* the two guard */
        bool lets = tokens[i].possessive && str_is(tokens[i].text, "let") && at_head(&at);
        if (!end && (lets || man || guard || own_thing(&at))) {
            tokens[i].filler = true;
        }
        i += end ? 0 : 1;
    }
}

void speech_begin(struct cursor *c)
{
    size_t count = (size_t)(c->end - c->at);
    struct speech *speech = arena_new(c->arena, struct speech);
    speech->room = count + ROOM < LIMIT_TOKENS ? count + ROOM : LIMIT_TOKENS;
    speech->tokens = arena_array(c->arena, struct token, speech->room);
    count = contractions_open(c->at, count, speech->tokens, speech->room);
    count = owners_turned(speech->tokens, count);
    c->speech = speech;
    c->at = c->first = speech->tokens;
    c->end = speech->tokens + count;
    count = heard_right(c, speech->tokens, count);
    c->end = speech->tokens + count;
    mark_fillers(c, speech->tokens, count);
}

bool recast_put(struct cursor *c, const struct recast *recast)
{
    struct speech *speech = c->speech;
    struct span said = cursor_span(c);
    for (const struct token *at = c->at; recast->as.size > 0 && at < recast->to; at++) {
        said = span_join(said, at->span);
    }
    size_t from = (size_t)(c->at - speech->tokens), to = (size_t)(recast->to - speech->tokens);
    size_t count = (size_t)(c->end - speech->tokens);
    size_t size = count - (to - from) + recast->tokens.count;
    if (size > speech->room) {
        return false;
    }
    memmove(speech->tokens + from + recast->tokens.count, speech->tokens + to,
            (count - to) * sizeof *speech->tokens);
    if (recast->tokens.count > 0) {
        memcpy(speech->tokens + from, recast->tokens.at,
               recast->tokens.count * sizeof *speech->tokens);
    }
    c->end = speech->tokens + size;
    bool point = recast->remark && past_fillers(c->at, c->end) == c->end; /* told by who keeps it */
    if (recast->told.source != SOURCE_NONE && !point) {
        note_left_out(c, recast->told);
    }
    if (recast->as.size > 0) {
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_READ_AS, said, "read as `%.*s`", STR_ARG(recast->as));
        diag_help(c->diags, diag, "if something else is meant, write it so: who, what, where");
    }
    return true;
}

/* Colons and question marks are left to the sentence: one may end the name of what comes. */
static bool colon_is(const struct cursor *c)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        if (token_is_mark(at, ':') || token_is_mark(at, '?')) {
            return true;
        }
    }
    return false;
}

/* The line as it stands. */
static bool as_written(struct cursor *c, sentence_list *out)
{
    struct line line = {.tokens = (struct token *)c->at, .count = (size_t)(c->end - c->at)};
    if (colon_is(c) && !line_marks_ok(&line, c->sources, c->diags)) {
        c->refusals++;
        return false;
    }
    return chains_read(c, out);
}

/* Where the last error is: how far a reading came. */
static uint32_t furthest(const struct cursor *c, struct cursor_mark mark)
{
    const struct diags *diags = c->diags;
    for (size_t i = diags->all.count; i-- > mark.diags;) {
        if (diags->all.at[i].severity == SEVERITY_ERROR) {
            return diags->all.at[i].span.begin;
        }
    }
    return 0;
}

/* Once more, as it is said. */
static bool as_said(struct cursor *c, sentence_list *out)
{
    struct cursor said = *c;
    speech_begin(&said);
    bool fine = said.refusals == c->refusals && chains_read(&said, out);
    c->refusals = said.refusals;
    c->remark = out->count == 0 ? said.remark : SPAN_NONE;
    if (fine && out->count > 0 && said.remark.end > 0) {
        note_left_out(c, said.remark);
    }
    c->at = fine ? c->end : c->at;
    return fine && (out->count > 0 || said.remark.end > 0);
}

/* Of a line that is refused nothing was left out or taken. */
static void errors_only(struct diags *diags, size_t from)
{
    size_t kept = from;
    for (size_t i = from; i < diags->all.count; i++) {
        if (diags->all.at[i].severity == SEVERITY_ERROR) {
            diags->all.at[kept++] = diags->all.at[i];
        }
    }
    diags->all.count = kept;
}

bool strictly_read(struct cursor *c, sentence_list *out)
{
    c->here = out;
    c->first = c->at;
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    if (as_written(c, out)) {
        return true;
    }
    if (c->diags->full || c->amends) {
        return false;
    }
    uint32_t written = furthest(c, mark);
    cursor_back(c, mark);
    out->count = had;
    if (as_said(c, out)) {
        return true;
    }
    if (furthest(c, mark) > written) {
        errors_only(c->diags, mark.diags);
        return false;
    }
    cursor_back(c, mark);
    out->count = had;
    return as_written(c, out);
}

/* The last error of those reported since `mark`. */
static struct diag *last_error(struct cursor *c, struct cursor_mark mark)
{
    for (size_t i = c->diags->all.count; i-- > mark.diags;) {
        if (c->diags->all.at[i].severity == SEVERITY_ERROR) {
            return &c->diags->all.at[i];
        }
    }
    return NULL;
}

/* What says by itself what is wrong, or that two readings fit: nothing is read loosely there. */
static bool kept(const struct diag *error)
{
    static const enum diag_code codes[] = {
        DIAG_TEXT_NEGATION,       DIAG_TEXT_TWO_MEANINGS,  DIAG_TEXT_TWICE,
        DIAG_TEXT_CLAUSE_BETWEEN, DIAG_TEXT_CLAUSE_TWO,    DIAG_TEXT_PLAYER_RANGE,
        DIAG_TEXT_CLAUSE_THEN,    DIAG_TEXT_DOUBLE_SCREEN, DIAG_TEXT_PREPOSITION_MISSING};
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++) {
        if (error->row == &diag_rows[codes[i]]) {
            return true;
        }
    }
    return false;
}

/* What cannot be read as it stands is read once more as speech; when that fails too, put more
 * plainly, and loosely; and when that is no use either, the reading that came further says why, and
 * what may have been meant.
 */
bool sentences_read(struct cursor *c, sentence_list *out)
{
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    c->amends = false;
    if (strictly_read(c, out)) {
        return true;
    }
    struct diag *error = c->diags->full ? NULL : last_error(c, mark);
    if (!error || c->amends) {
        return false;
    }
    struct cursor other = *c;
    struct diags unheard;
    struct span remark = c->remark;
    bool loosely = !kept(error);
    diags_init(&unheard, c->arena);
    other.at = mark.at;
    other.diags = &unheard;
    other.doer = other.screener = NULL;
    out->count = had;
    if (jot_read(&other, out) || unfold_read(&other, out) || plain_read(&other, out, loosely) ||
        (loosely && loose_read(&other, out, error->span, &c->meant)) ||
        (loosely && !c->parted && spare_read(&other, out, error)) || parts_read(&other, out) ||
        reshape_read(&other, out) || (loosely && lean_read(&other, out)) ||
        lean_parts_read(&other, out)) {
        cursor_back(c, mark);
        c->at = c->end;
        for (size_t i = 0; i < unheard.all.count; i++) {
            diag_again(c->diags, &unheard.all.at[i]);
        }
        return true;
    }
    out->count = had;
    c->remark = remark;
    if (loosely && c->meant.size > 0) {
        struct str before = error->help;
        diag_help(c->diags, error, "%.*s%s%.*s", STR_ARG(before), before.size > 0 ? "; " : "",
                  STR_ARG(c->meant));
    }
    return false;
}

bool sentence_read(struct cursor *c, struct sentence *out)
{
    sentence_list list = {NULL, 0, 0};
    bool fine = sentences_read(c, &list);
    c->here = NULL;
    if (!fine) {
        return false;
    }
    if (list.count == 0) {
        refuse_subject(c);
        return false;
    }
    if (list.count > 1) {
        struct span span = list.at[1].span;
        diag_help(c->diags, REFUSE(c, TEXT_SENTENCES_MANY, span, "one sentence may stand here"),
                  "put the next one in a line of its own");
        return false;
    }
    *out = list.at[0];
    return true;
}
