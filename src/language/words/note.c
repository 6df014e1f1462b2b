/* SPDX-License-Identifier: MIT */
/* note: the lines under a step that are no sentences: points, mistakes, charts, runs, repeats. */
#include "language/words/reader.h"

static bool refuse(struct cursor *c, struct span span, const char *expected, const char *example)
{
    struct str text = cursor_text(c, span);
    struct diag *diag;
    if (text.size == 0) {
        diag = diag_add(c->diags, DIAG_TEXT_NOTE, span, "%s is missing here", expected);
    } else {
        diag = diag_add(c->diags, DIAG_TEXT_NOTE, span, "`%.*s` stands where %s belongs",
                        STR_ARG(text), expected);
    }
    diag_help(c->diags, diag, "write `%s`", example);
    return false;
}

static bool text_part(struct cursor *c, struct note_form *out, const char *example)
{
    return quoted_read(c, &out->text, &out->text_span) ||
           refuse(c, cursor_span(c), "a text in quotes", example);
}

static bool point_read(struct cursor *c, struct note_form *out)
{
    struct span span;
    if (integer_read(c, &out->player, &span)) {
        out->word_span = span;
        if (out->player < 1 || out->player > c->players) {
            struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLAYER_RANGE, span,
                                         "there is no player %d: 1 to %d are on the floor",
                                         out->player, c->players);
            diag_help(c->diags, diag, "write `point \"…\"` for everyone");
            return false;
        }
    }
    return text_part(c, out, "point 3 \"Wait for the screen\"");
}

static bool chart_read(struct cursor *c, struct note_form *out)
{
    static const char example[] = "chart set \"Screen set on the defender\"";
    const struct token *word = cursor_next(c);
    if (!word || word->kind != TOKEN_WORD || word->possessive) {
        return refuse(c, cursor_span(c), "a short word for the tally", example);
    }
    if (str_is(word->text, "read") || str_is(word->text, "points")) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_NOTE, word->span,
                                     "`%.*s` is counted without a chart line", STR_ARG(word->text));
        diag_help(c->diags, diag, "another word for what you count: %s", example);
        return false;
    }
    out->word = word->text;
    out->word_span = word->span;
    cursor_take(c, word, word + 1);
    return text_part(c, out, example);
}

static bool accept_read(struct cursor *c, struct note_form *out)
{
    static const char example[] = "accept space.close \"they cross on purpose\"";
    const struct token *id = cursor_next(c);
    if (!id || id->kind != TOKEN_CHECK_ID) {
        return refuse(c, cursor_span(c), "the name of a check", example);
    }
    out->word = id->text;
    out->word_span = id->span;
    cursor_take(c, id, id + 1);
    return text_part(c, out, example);
}

static bool mirrored_read(struct cursor *c, struct note_form *out)
{
    struct cursor trial = *c;
    take_mark(&trial, ',');
    out->mirrored = take_words(&trial, "mirrored");
    if (out->mirrored) {
        *c = trial;
    }
    return true;
}

static bool binding_read(struct cursor *c, struct note_form *out)
{
    static const char example[] = "run \"give and go\" with passer 1, receiver 2";
    const struct token *role = cursor_next(c);
    struct role_binding binding = {0};
    if (!role || role->kind != TOKEN_WORD || role->possessive) {
        return refuse(c, cursor_span(c), "a role of the action", example);
    }
    binding.role = role->text;
    cursor_take(c, role, role + 1);
    if (!who_read(c, &binding.who)) {
        return c->refusals == 0 && refuse(c, cursor_span(c), "a player for the role", example);
    }
    VEC_PUSH(c->arena, &out->roles, binding);
    return true;
}

static bool run_read(struct cursor *c, struct note_form *out)
{
    if (!text_part(c, out, "run \"give and go\" with passer 1, receiver 2")) {
        return false;
    }
    if (take_words(c, "with")) {
        do {
            if (!binding_read(c, out)) {
                return false;
            }
            struct cursor behind = *c;
            if (take_mark(&behind, ',') && word_is(&behind, 0, "mirrored")) {
                break;
            }
        } while (take_mark(c, ',') || take_words(c, "and"));
    }
    return mirrored_read(c, out);
}

static bool step_part(struct cursor *c, struct note_form *out, const char *words,
                      const char *expected, const char *example)
{
    struct span span;
    if (!take_words(c, words) || !integer_read(c, &out->step, &span)) {
        return refuse(c, cursor_span(c), expected, example);
    }
    out->word_span = span;
    return true;
}

static bool repeat_read(struct cursor *c, struct note_form *out)
{
    return step_part(c, out, "from step", "`from step` with a number", "repeat from step 1") &&
           mirrored_read(c, out);
}

static bool same_read(struct cursor *c, struct note_form *out)
{
    static const char example[] = "same as step 1 of \"Lantern\"";
    if (!step_part(c, out, "as step", "`as step` with a number", example)) {
        return false;
    }
    if (!take_words(c, "of")) {
        return refuse(c, cursor_span(c), "`of` with the name of a play", example);
    }
    return text_part(c, out, example);
}

static bool continue_read(struct cursor *c, struct note_form *out)
{
    (void)out;
    return take_words(c, "here") || refuse(c, cursor_span(c), "`here`", "continue here");
}

static bool mistake_read(struct cursor *c, struct note_form *out)
{
    return text_part(c, out, "mistake \"Leaving before the screen is set\"");
}

bool note_read(struct reader *r, const struct line *line, enum form_kind kind,
               struct note_form *out)
{
    static bool (*const readers[])(struct cursor *, struct note_form *) = {
        [FORM_POINT] = point_read,   [FORM_MISTAKE] = mistake_read,   [FORM_CHART] = chart_read,
        [FORM_ACCEPT] = accept_read, [FORM_RUN] = run_read,           [FORM_REPEAT] = repeat_read,
        [FORM_SAME] = same_read,     [FORM_CONTINUE] = continue_read,
    };
    struct cursor c = reader_cursor(r, line, 1);
    *out = (struct note_form){.word_span = SPAN_NONE, .text_span = SPAN_NONE};
    return readers[kind](&c, out) && c.refusals == 0 && reader_used_up(&c);
}
