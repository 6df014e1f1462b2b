/* SPDX-License-Identifier: MIT */
/* body: the lines of a play or an action: its settings, standing assignments, sentences and notes,
 * and whether each may stand where it does. */
#include "base/limits.h"
#include "language/syntax/chars.h"
#include "language/words/grammar.h"
#include "language/words/put_plain.h"
#include "language/words/reader.h"
#include "language/words/run_on.h"

void line_unknown(struct reader *r, const struct line *line, const char *near)
{
    struct str word = source_text(r->shelf->sources, line->tokens[0].span);
    struct diag *diag = diag_add(r->diags, DIAG_TEXT_LINE_UNKNOWN, line->tokens[0].span,
                                 "no line begins with `%.*s`", STR_ARG(word));
    diag_help(r->diags, diag, "did you mean `%s`?", near);
}

bool line_is_standing(const struct reader *r, const struct line *line)
{
    if (r->begun || line->count < 3 || line->tokens[0].kind != TOKEN_DEFENDER ||
        line->tokens[0].possessive) {
        return false;
    }
    struct cursor c = reader_cursor(r, line, 1);
    struct phrase phrase;
    bool guards = phrase_read(&c, FOR_DEFENDERS, &phrase) && phrase.verb == VERB_GUARDS;
    return guards && cursor_next(&c) && cursor_next(&c)->kind == TOKEN_NUMBER;
}

/* all over the floor, and the others stay in the box: what a chaser does by rule. */
static void all_over(struct cursor *c)
{
    static const char *const wheres[] = {
        "all over the floor", "all over the court", "all over",     "everywhere",
        "wherever he goes",   "wherever she goes",  "man to man",   "full time",
        "full court",         "all the time",       "face to face", NULL};
    static const char *const others[] = {
        "others",       "the rest", "everybody else", "everyone else", "the other four",
        "rest of them", NULL};
    static const char *const stay[] = {"stay in", "stays in", "are in", "play",   "plays", "zone",
                                       "keep",    "hold",     "form",   "sit in", NULL};
    static const char *const shapes[] = {"box", "zone", "diamond", "triangle", "up", "a box", NULL};
    const struct token *from = c->at;
    bool said = take_among(c, wheres);
    struct cursor trial = *c;
    take_mark(&trial, ',');
    take_words(&trial, "and");
    take_words(&trial, "while");
    if (take_among(&trial, others) && take_among(&trial, stay) && take_among(&trial, shapes)) {
        c->at = trial.at;
        said = true;
    }
    if (said) {
        note_left_out(c, cursor_taken(c, from));
    }
}

/* x1 guards 3 [and x3 guards 1]. */
static void standing_line(struct reader *r, const struct line *line)
{
    struct cursor c = reader_cursor(r, line, 0);
    size_t first = r->top->forms.count;
    struct line bare = line_part(line, 0, line->count);
    do {
        struct form form = {.kind = FORM_STANDING, .line = line_keep(r, bare), .span = line->span};
        form.standing = arena_new(r->arena, struct standing);
        const struct token *from = c.at;
        struct phrase phrase;
        if (!who_read(&c, &form.standing->defender) ||
            form.standing->defender.kind != WHO_DEFENDER ||
            !phrase_read(&c, FOR_DEFENDERS, &phrase) || phrase.verb != VERB_GUARDS ||
            !who_read(&c, &form.standing->player) || form.standing->player.kind != WHO_PLAYER) {
            struct diag *diag = diag_add(r->diags, DIAG_TEXT_SETTING, cursor_taken(&c, from),
                                         "a defender guards one player");
            diag_help(r->diags, diag, "write `x1 guards 3`");
            c.refusals++;
            break;
        }
        form.span = cursor_taken(&c, from);
        VEC_PUSH(r->arena, &r->top->forms, form);
        all_over(&c);
    } while (take_mark(&c, ',') || take_words(&c, "and"));
    if (c.refusals > 0 || !reader_used_up(&c)) {
        r->top->forms.count = first;
        reader_broken(r, line);
        return;
    }
    r->top->forms.at[r->top->forms.count - 1].line = line;
}

/* What the last read asks for, as it is written: x2 denies. */
static struct str last_condition(const struct reader *r)
{
    const struct block *in = r->step ? r->step : r->top;
    for (size_t i = in->forms.count; i > 0; i--) {
        const struct form *form = &in->forms.at[i - 1];
        if (form->kind == FORM_BLOCK && form->block->conditions.count > 0 &&
            form->block->conditions.at[0].kind != COND_OTHERWISE) {
            return source_text(r->shelf->sources, form->block->conditions.at[0].span);
        }
    }
    return STR("x3 trails");
}

/* False: the line may not stand where it does; reported, once for all that follow it. */
static bool body_fits(struct reader *r, const struct line *line, bool whole_play)
{
    bool play = r->top->kind != BLOCK_ACTION;
    enum diag_code code = DIAG_TEXT_NOTE_PLACE;
    const char *message = NULL, *help = NULL;
    if (play && r->top->mirrors.size > 0) {
        message = "a play that mirrors another has no lines of its own";
        help = "keep the settings only, or take mirrors away";
    } else if (play && r->has_steps && !r->step && !whole_play) {
        if (opener_of(line, 0).kind == LINE_OTHER && opener_nearest(line)) {
            line_unknown(r, line, opener_nearest(line));
            r->told = true; /* what stands beneath was to be of it */
            return false;
        }
        message = "this stands before the first step";
        help = "write `step \"…\"` above it";
    } else if (!r->branch && r->branches > 0) {
        code = DIAG_TEXT_IF;
        message = "after an `if` every line belongs to a read";
        struct str asks = last_condition(r);
        help = str_format(r->arena,
                          "put it before the first read; or join it to the line of the `if` with "
                          "`and`, or write `read %.*s` and its lines below it",
                          STR_ARG(asks))
                   .at;
    }
    if (!message) {
        return true;
    }
    if (!r->told) {
        struct diag *diag = diag_add(r->diags, code, line->span, "%s", message);
        diag_help(r->diags, diag, "%s", help);
        r->told = true;
    }
    return false;
}

static void watch_indent(struct reader *r, const struct line *line)
{
    if (!r->branch) {
        return;
    }
    if (!r->branch_has_line) {
        r->branch_has_line = true;
        r->branch_indent = line->indent;
    } else if (line->indent < r->branch_indent) {
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_READ_INDENT, line->span,
                                     "this line belongs to the read above, whatever its indent");
        diag_help(r->diags, diag, "lines for all reads stand before the first read");
    }
}

static void add_sentences(struct reader *r, const struct line *line, const sentence_list *list)
{
    struct line bare = line_part(line, 0, line->count);
    for (size_t i = 0; i < list->count; i++) {
        const struct line *own = i + 1 == list->count ? line : line_keep(r, bare);
        reader_add_sentence(r, reader_block(r), own, &list->at[i]);
    }
    r->begun = true;
    r->sentences += list->count;
}

/* be patient: what moves nobody is kept as a point; 0: for everyone. */
static void keep_point(struct reader *r, const struct line *line, struct span span, int player)
{
    struct note_form *note = arena_new(r->arena, struct note_form);
    note->text = text_clean(r->arena, source_text(r->shelf->sources, span), false);
    note->text_span = span;
    note->word_span = SPAN_NONE;
    note->player = player;
    diag_add(r->diags, DIAG_TEXT_ASIDE, span, "`%.*s` moves nobody: it is kept as a point",
             STR_ARG(note->text));
    reader_add(r, reader_block(r), FORM_POINT, line)->note = note;
}

/* Words of which none moves anybody, nor could be meant for one that does. */
static bool remark_part(struct reader *r, const struct line *line, struct cursor c,
                        struct cursor_mark mark)
{
    struct cursor whole = c;
    whole.at = mark.at;
    if (!remark_is(&whole)) {
        return false;
    }
    cursor_back(&c, mark);
    keep_point(r, line, span_join(line->tokens[0].span, line->tokens[line->count - 1].span), 0);
    return true;
}

/* tell 4: hands ready: a point for that player. */
static bool told_part(struct reader *r, const struct line *line)
{
    static const char *const tells[] = {"tell", "remind", "note for", "for", "reminder for", NULL};
    struct cursor c = reader_cursor(r, line, 0);
    struct who who;
    if (!take_among(&c, tells) || !person_read(&c, &who) || who.kind != WHO_PLAYER ||
        c.refusals > 0 || !take_mark(&c, ':') || c.at == c.end) {
        return false;
    }
    keep_point(r, line, span_join(c.at->span, c.end[-1].span), who.number);
    return true;
}

/* 5 has to be patient: a point for 5, where nothing in it could move anybody. */
static bool must_part(struct reader *r, const struct line *line)
{
    static const char *const musts[] = {
        "has to be",   "needs to be",   "must be",   "has got to be", "should be",
        "has to stay", "needs to stay", "must stay", "should stay",   "can't be",
        "has to keep", "needs to keep", NULL};
    struct cursor c = reader_cursor(r, line, 0);
    const struct token *who = cursor_next(&c);
    bool player = who && who->kind == TOKEN_NUMBER && who->integer && !who->possessive &&
                  who->number >= 1 && who->number <= c.players;
    c.at = player ? who + 1 : c.at;
    if (!player || !take_among(&c, musts)) {
        return false;
    }
    for (struct cursor at = c; at.at < at.end; at.at++) {
        struct cursor spot = at;
        spot.watch = NULL;
        bool word = at.at->kind == TOKEN_WORD || token_is_mark(at.at, ',');
        if (!word || spot_read(&spot, true)) {
            return false;
        }
    }
    keep_point(r, line, span_join(line->tokens[0].span, c.end[-1].span), (int)who->number);
    return true;
}

static void sentence_part(struct reader *r, const struct line *line)
{
    if (told_part(r, line) || must_part(r, line)) {
        return;
    }
    if (r->sentences >= LIMIT_SENTENCES) {
        if (r->sentences++ == LIMIT_SENTENCES) {
            struct diag *diag = diag_add(r->diags, DIAG_TEXT_MANY, line->span,
                                         "a step has at most %d sentences", LIMIT_SENTENCES);
            diag_help(r->diags, diag, "make two steps of it: write `step` above this line");
        }
        reader_broken(r, line);
        return;
    }
    struct cursor c = reader_cursor(r, line, 0);
    struct cursor_mark mark = cursor_mark(&c);
    r->scratch.count = 0;
    bool read = sentences_read(&c, &r->scratch) && r->scratch.count > 0;
    if (read && !r->diags->full && run_on_told_twice(&r->scratch) && run_on_instead(r, line)) {
        return; /* 5 screens for 1, 5 screens for 1: said twice over */
    }
    if (read) {
        add_sentences(r, line, &r->scratch);
        return;
    }
    if (c.refusals == mark.refusals && c.remark.end > 0) { /* be patient: a point */
        keep_point(r, line, c.remark, 0);
        return;
    }
    if (!r->diags->full && run_on_line(r, line)) {
        return;
    }
    bool player =
        line->count > 1 && line->tokens[1].kind == TOKEN_NUMBER &&
        (str_is(line->tokens[0].text, "player") || str_is(line->tokens[0].text, "players"));
    struct cursor head = c;
    head.at = mark.at;
    bool help = c.meant.size > 0;
    const char *near =
        r->diags->full || player || help || verb_begins(&head) ? NULL : opener_nearest(line);
    if (!near && !r->diags->full && remark_part(r, line, c, mark)) {
        return;
    }
    if (c.refusals == mark.refusals && !near) { /* only words that say nothing: the */
        refuse_subject(&c);
    }
    if (near) {
        cursor_back(&c, mark);
        line_unknown(r, line, near);
    }
    reader_broken(r, line);
}

static void note_part(struct reader *r, const struct line *line, enum form_kind kind)
{
    struct note_form *note = arena_new(r->arena, struct note_form);
    if (!note_read(r, line, kind, note)) {
        reader_broken(r, line);
        return;
    }
    reader_add(r, reader_block(r), kind, line)->note = note;
}

/* A setting said as a sentence, before the first one of a play. */
static bool setting_said(struct reader *r, const struct line *line)
{
    return !r->begun && r->top->kind != BLOCK_ACTION && r->top->mirrors.size == 0 &&
           loose_setting(r, line);
}

/* Whether the part can be read, without a word and without keeping it. */
static bool part_reads(struct reader *r, const struct line *part)
{
    struct diags *heard = r->diags, unheard;
    diags_init(&unheard, r->arena);
    r->diags = &unheard;
    struct cursor c = reader_cursor(r, part, 0);
    sentence_list list = {0};
    bool reads = sentences_read(&c, &list) && list.count > 0;
    r->diags = heard;
    return reads;
}

/* run at 3, run it to the wing: said to the one who has the ball, and no action is run. */
static bool run_is_verb(const struct line *line, struct opener opener)
{
    static const char *const behinds[] = {"at", "it", "off", "through", "to", NULL};
    return opener.which == FORM_RUN && line->count > 1 && token_is_among(&line->tokens[1], behinds);
}

/* One sentence or note of a line that full stops part. */
static void part_line(struct reader *r, const struct line *line)
{
    struct opener opener = opener_of(line, 0);
    if (opener.kind == LINE_OTHER && setting_said(r, line)) {
        return;
    }
    bool note = opener.kind == LINE_NOTE && !run_is_verb(line, opener);
    struct cursor talk = reader_cursor(r, line, 0);
    if (opener.kind == LINE_OTHER && r->top->kind == BLOCK_DRILL && rotation_is(&talk) &&
        !part_reads(r, line)) {
        keep_point(r, line, span_join(line->tokens[0].span, talk.end[-1].span), 0);
        return;
    }
    if (line_is_standing(r, line) && r->top->kind != BLOCK_ACTION) {
        standing_line(r, line);
        return;
    }
    bool whole_play = note && (opener.which == FORM_POINT || opener.which == FORM_MISTAKE ||
                               opener.which == FORM_ACCEPT);
    if (!body_fits(r, line, whole_play)) {
        reader_broken(r, line);
        return;
    }
    watch_indent(r, line);
    if (note) {
        note_part(r, line, (enum form_kind)opener.which);
    } else {
        sentence_part(r, line);
    }
}

static bool is_stop(const struct token *token)
{
    return token_is_mark(token, '.') || token_is_mark(token, ';');
}

static bool is_comma(const struct token *token)
{
    return token_is_mark(token, ',');
}

/* Behind a full stop only sentences and notes may stand: what opens a line of another kind there
 * would become one as soon as it is printed; and nothing goes on behind `, .` */
static bool parts_fit(struct reader *r, const struct line *line)
{
    for (size_t i = 1; i < line->count; i++) {
        if (is_stop(&line->tokens[i]) && is_comma(&line->tokens[i - 1])) {
            struct diag *diag = diag_add(r->diags, DIAG_TEXT_COMMA, line->tokens[i - 1].span,
                                         "the sentence ends in a comma, but nothing goes on");
            diag_help(r->diags, diag, "take the comma away, or write what was to follow it");
            return false;
        }
        enum line_class kind = opener_of(line, i).kind;
        if (!is_stop(&line->tokens[i - 1]) || kind == LINE_OTHER || kind == LINE_NOTE) {
            continue;
        }
        struct str word = source_text(r->shelf->sources, line->tokens[i].span);
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_LINE_UNKNOWN, line->tokens[i].span,
                                     "`%.*s` begins a line of its own", STR_ARG(word));
        diag_help(r->diags, diag, "put it on a new line");
        return false;
    }
    return true;
}

/* Whether it is all that a line of this setting says. */
static bool setting_reads(struct reader *r, const struct line *line, enum setting setting)
{
    struct diags *heard = r->diags, unheard;
    struct setting_form form = {.setting = setting};
    diags_init(&unheard, r->arena);
    r->diags = &unheard;
    bool reads = setting_read(r, line, setting, &form) && unheard.errors == 0;
    r->diags = heard;
    return reads;
}

/* Stagger for 3. First 4, second 5: a screen called by its name goes on behind the full stop, where
 * it is said who sets it. Gives where that part ends. */
static size_t call_ends(struct reader *r, const struct line *all, size_t from, size_t to)
{
    enum { PARTS_MOST = 3 };
    struct line part = line_part(all, from, to);
    struct cursor c = reader_cursor(r, &part, 0);
    if (to == all->count || !screen_named(&c) || part_reads(r, &part)) {
        return to;
    }
    size_t end = to;
    for (int parts = 1; parts < PARTS_MOST && end < all->count; parts++) {
        for (end++; end < all->count && !is_stop(&all->tokens[end]);) {
            end++;
        }
        part = line_part(all, from, end);
        if (part_reads(r, &part)) {
            return end;
        }
    }
    return to;
}

void body_line(struct reader *r, const struct line *line)
{
    if (!parts_fit(r, line)) {
        reader_broken(r, line);
        return;
    }
    struct line all = line_without_stops(line);
    for (size_t from = 0; from < all.count;) {
        size_t to = from;
        while (to < all.count && !is_stop(&all.tokens[to])) {
            to++;
        }
        to = call_ends(r, &all, from, to);
        if (to - from == line->count) { /* mostly */
            part_line(r, line);
        } else if (to > from) {
            struct line part = line_part(&all, from, to);
            if (to == all.count) {
                part.comment = all.comment;
                part.comment_span = all.comment_span;
            }
            part_line(r, line_keep(r, part));
        }
        from = to + 1;
    }
}

/* A setting's word where settings are over: `ball side wing fills top` is a sentence all the same.
 */
static void late_setting(struct reader *r, const struct line *line, enum setting setting)
{
    if (!setting_reads(r, line, setting) && part_reads(r, line)) {
        body_line(r, line);
        return;
    }
    if (r->top->kind == BLOCK_ACTION) {
        setting_misplaced(r, line, setting);
        return;
    }
    struct diag *diag = diag_add(r->diags, DIAG_TEXT_SETTING_LATE, line->tokens[0].span,
                                 "`%s` holds for the whole play and stands before its first %s",
                                 setting_word(setting), r->has_steps ? "step" : "sentence");
    diag_help(r->diags, diag, "move it up, under the play's heading");
    reader_broken(r, line);
}

/* A line that says first against what it is run, which is the play's own defense. */
static bool against_line(struct reader *r, const struct line *line)
{
    struct cursor c = reader_cursor(r, line, 0);
    struct span told;
    c.watch = NULL;
    const struct token *rest = against_said(&c, &told);
    if (!rest) {
        return false;
    }
    struct line behind = *line;
    behind.tokens = (struct token *)rest;
    behind.count = (size_t)(line->tokens + line->count - rest);
    note_left_out(&c, told);
    body_line(r, line_keep(r, behind));
    return true;
}

/* so if, okay now if: what is said before a read says nothing. */
static bool talk_before_if(struct reader *r, const struct line *line)
{
    static const char *const small[] = {"so", "now", "and",     "but",  "okay",  "ok",
                                        "um", "uh",  "alright", "well", "right", NULL};
    size_t at = 0;
    while (at + 1 < line->count &&
           (token_is_among(&line->tokens[at], small) || (at > 0 && is_comma(&line->tokens[at])))) {
        at++;
    }
    if (at == 0 || !token_is_word(&line->tokens[at], "if")) {
        return false;
    }
    struct line behind = *line;
    behind.tokens = line->tokens + at;
    behind.count = line->count - at;
    if_lines(r, line_keep(r, behind));
    return true;
}

/* Something is asked of the defense in it. */
static bool line_asks(const struct line *line)
{
    size_t at = 0;
    while (at < line->count && !token_is_word(&line->tokens[at], "if")) {
        at++;
    }
    return at < line->count;
}

static void play_line_plainly(struct reader *r, const struct line *line, struct opener opener)
{
    if (opener.kind == LINE_IF && setting_said(r, line)) { /* against a 2-3 */
        return;
    }
    if (opener.kind == LINE_SETTING) {
        enum setting setting = (enum setting)opener.which;
        if (r->begun || r->top->kind == BLOCK_ACTION) {
            late_setting(r, line, setting);
        } else {
            setting_line(r, line, setting);
        }
    } else if (opener.kind == LINE_STEP || opener.kind == LINE_BRANCH) {
        if (opener.kind != LINE_BRANCH || !line_answers(r, line)) {
            heading_read(r, line, opener);
        }
    } else if (opener.kind == LINE_OTHER && talk_before_if(r, line)) {
    } else if (against_line(r, line)) { /* against their 2-3, 1 passes to 2 */
    } else if (opener.kind == LINE_IF && if_caught(r, line)) {
    } else if (opener.kind == LINE_IF || (opener.kind == LINE_OTHER && line_is_read(r, line))) {
        if_lines(r, line);
    } else if (opener.kind == LINE_VERSION) {
        version_line(r, line, false);
    } else if (opener.kind != LINE_OTHER || !line_hinges(r, line)) {
        body_line(r, line);
    }
}

void play_line(struct reader *r, const struct line *line, struct opener opener)
{
    struct diags *blame = NULL;
    if (line_asks(line) && !r->diags->full && run_on_asks(r, line, &blame)) {
        return;
    }
    size_t errors = r->diags->errors;
    play_line_plainly(r, line, opener);
    if (blame && r->diags->errors > errors) {
        run_on_hear(r, blame, line);
    }
}
