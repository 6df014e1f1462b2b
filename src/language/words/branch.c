/* SPDX-License-Identifier: MIT */
/* branch: what opens a branch of a step: `read`, `option`, and `if` with its answer in one line. */
#include "base/limits.h"
#include "language/words/grammar.h"
#include "language/words/reader.h"
#include "language/words/speech.h"

/* What is asked of nobody by number: help comes, the lob is there, the middle is denied. */
static const char *says_nobody(const struct cursor *c)
{
    static const char *const helps[] = {"help",      "nobody",    "no one",  "no",      "there is",
                                        "weak side", "help side", "anybody", "someone", "somebody",
                                        "helps",     "low man",   "helper",  NULL};
    static const char *const passes[] = {"lob",   "pass", "skip", "shot", "kick",
                                         "entry", "feed", "look", "roll", "kick-out",
                                         "drive", "cut",  NULL};
    static const char *const places[] = {"middle", "inside",   "post", "sideline",
                                         "return", "reversal", NULL};
    if (word_is(c, 0, "they") || word_is(c, 0, "the defense")) {
        return "say which of them: `x2 doubles 5`, `x4 fronts`; of a screen that stands above it "
               "`they switch` is enough";
    }
    if (word_among(c, helps)) {
        return "say whose defender does what: `x4 helps`, or `x4 stays` where he does not";
    }
    if (word_among(c, passes)) {
        return "say who is open, or is not: `5 is open`, `5 is covered`";
    }
    return word_among(c, places) ? "say of a player: `3 is denied`, `3 is open`; with more than "
                                   "one sentence behind it: `read 3 is denied`"
                                 : NULL;
}

/* A condition that is none: the word behind who it speaks of is mostly the wrong one. */
static void report_condition(struct reader *r, struct cursor c)
{
    struct who who;
    bool defender = who_read(&c, &who) && who.kind == WHO_DEFENDER;
    struct span span = cursor_span(&c);
    struct str text = cursor_text(&c, span);
    const char *near = defender ? phrase_nearest(&c, FOR_DEFENDERS) : NULL;
    struct diag *diag;
    if (text.size == 0) {
        diag = diag_add(r->diags, DIAG_TEXT_READ, span, "the condition breaks off here");
    } else {
        diag = diag_add(r->diags, DIAG_TEXT_READ, span, "`%.*s` is no part of a condition",
                        STR_ARG(text));
    }
    const char *of_whom = says_nobody(&c);
    if (near) {
        diag_help(r->diags, diag, "did you mean `%s`?", near);
    } else if (of_whom) {
        diag_help(r->diags, diag, "%s", of_whom);
    } else {
        diag_help(r->diags, diag,
                  "write `x3 trails`, `x1 and x3 switch`, `3 is open` or `otherwise`");
    }
}

static bool condition_part(struct reader *r, struct cursor *c, struct block *block)
{
    struct condition condition = {0};
    size_t refusals = c->refusals;
    if (condition_read(c, &condition)) {
        VEC_PUSH(r->arena, &block->conditions, condition);
        return true;
    }
    if (c->refusals == refusals) {
        report_condition(r, *c);
    }
    return false;
}

static bool conditions_part(struct reader *r, struct cursor *c, struct block *block)
{
    do {
        if (!condition_part(r, c, block)) {
            return false;
        }
    } while (take_words(c, "or"));
    return true;
}

/* read x3 trails, continue here. */
static bool continue_behind(struct reader *r, struct cursor c)
{
    take_mark(&c, ',');
    struct span span = cursor_span(&c);
    if (!take_words(&c, "continue here")) {
        return false;
    }
    struct diag *diag =
        diag_add(r->diags, DIAG_TEXT_LEFT_OVER, span, "`continue here` has no part in this line");
    diag_help(r->diags, diag, "put it on a line of its own under the read: `continue here`");
    return true;
}

/* What may stand between a condition and what is done about it. */
static bool take_answer_mark(struct cursor *c)
{
    static const char *const words[] = {"then", "means", "we", NULL};
    bool taken = take_mark(c, ',') || take_mark(c, ':') || take_mark(c, '-');
    return take_among(c, words) || taken;
}

/* read x3 trails, curl: a title without quotes, to the end of the line. */
static bool bare_title(struct reader *r, const struct line *line, struct cursor *c,
                       struct block *block)
{
    struct title title;
    size_t from = (size_t)(past_fillers(c->at, c->end) - line->tokens);
    if (title_read(r, line, &from, NULL, &title) == TITLE_REFUSED) {
        return false;
    }
    block->title = title.text;
    block->title_quoted = title.quoted;
    block->title_span = title.span;
    return true;
}

bool read_heading(struct reader *r, const struct line *line, struct block *block)
{
    static const char *const ifs[] = {"if", "when", NULL};
    struct cursor c = reader_cursor(r, line, 1);
    take_answer_mark(&c); /* read, if x3 trails */
    take_among(&c, ifs);
    if (!conditions_part(r, &c, block)) {
        return false;
    }
    if (continue_behind(r, c)) {
        return false;
    }
    struct cursor behind = c;
    if (take_answer_mark(&behind) && !cursor_done(&behind)) {
        return bare_title(r, line, &behind, block);
    }
    block->title_quoted = quoted_read(&c, &block->title, &block->title_span);
    return !continue_behind(r, c) && reader_used_up(&c);
}

bool option_heading(struct reader *r, const struct line *line, struct block *block)
{
    size_t from = 1;
    return heading_named(r, line, &from, NULL, block, "the option's name is missing",
                         "option \"Counter\"") &&
           heading_ends(r, line, from);
}

/* Indented as the lines of the branch that is open, farther in than its heading. */
static bool in_a_branch(const struct reader *r, const struct line *line)
{
    if (!r->branch || !r->branch->line) {
        return false;
    }
    unsigned heading = r->branch->line->indent;
    return line->indent > heading && (!r->branch_has_line || line->indent >= r->branch_indent);
}

bool branch_fits(struct reader *r, const struct line *line)
{
    if (in_a_branch(r, line)) {
        return heading_misplaced(
            r, line, "a read cannot stand in a read",
            "another answer to the same step begins below `read`, not farther in; what comes of "
            "this one is a step of its own: `step \"Swing it\" after \"Curl\"`");
    }
    bool body =
        block_plays(r->top) ? r->step || !r->has_steps : r->top && r->top->kind == BLOCK_ACTION;
    if (!body) {
        return heading_misplaced(r, line, "a read stands in a step, or in a play without steps",
                                 "write `step \"Come off the screen\"` above it");
    }
    if (r->top->mirrors.size > 0) {
        return heading_misplaced(r, line, "a play that mirrors another has no reads of its own",
                                 "take the reads away, or mirrors");
    }
    if (r->branches >= LIMIT_BRANCHES) {
        if (r->branches++ == LIMIT_BRANCHES) { /* said once */
            struct diag *diag = diag_add(r->diags, DIAG_TEXT_MANY, line->tokens[0].span,
                                         "a step has at most %d reads and options", LIMIT_BRANCHES);
            diag_help(r->diags, diag, "join answers with `or`, or make two steps of it");
        }
        r->branch = NULL;
        reader_broken(r, line);
        r->told = true;
        return false;
    }
    return true;
}

struct block *branch_open(struct reader *r, enum block_kind kind, const struct line *line)
{
    struct block *block = block_new(r, kind, line);
    moments_settle(r);
    r->branch = NULL;
    block_add(r, reader_block(r), block);
    r->branch = block;
    r->branch_has_line = false;
    r->begun = true;
    r->told = false;
    r->branches++;
    return block;
}

/* if x3 goes under 3 fades: where the sentence needs its subject the condition leaves it. */
static bool comma_may_miss(struct cursor *c, const struct line *line, struct block *block)
{
    struct condition *last = &block->conditions.at[block->conditions.count - 1];
    struct who *object = last->kind == COND_BOTH ? &last->object : &last->other;
    struct cursor trial = *c;
    if (subject_verb_is(c) || (take_among(&trial, he_or_she) && verb_begins(&trial))) {
        return true;
    }
    trial = *c;
    bool person = object->kind == WHO_PLAYER && !last->place;
    while (person && trial.at > line->tokens + 1 && trial.at[-1].span.begin >= object->span.begin) {
        trial.at--;
    }
    if (!person || !bare_before(&trial) || !subject_verb_is(&trial)) {
        return false;
    }
    c->at = trial.at;
    *object = (struct who){.kind = WHO_NONE};
    return true;
}

/* if 2 is denied "Back door": a read, named. */
static bool named_if(struct reader *r, const struct line *line, struct cursor c,
                     const struct block *block)
{
    struct block titled = *block;
    titled.title_quoted = quoted_read(&c, &titled.title, &titled.title_span);
    if (!titled.title_quoted || !cursor_done(&c)) {
        return false;
    }
    *branch_open(r, BLOCK_READ, line) = titled;
    return true;
}

/* The read right above, of which `otherwise` is the other end. */
static const struct condition *read_above(const struct reader *r)
{
    const struct block *in = r->step ? r->step : r->top;
    for (size_t i = in->forms.count; i > 0; i--) {
        const struct form *form = &in->forms.at[i - 1];
        if (form->kind == FORM_BLOCK && form->block->conditions.count > 0) {
            return &form->block->conditions.at[0];
        }
    }
    return NULL;
}

static const struct who *done_to(const struct condition *condition)
{
    return condition->kind == COND_BOTH ? &condition->object : &condition->other;
}

/* Whose choice a read is: the attacker it names, or whom the defender it names guards. Of two
 * attackers the one it is done to. */
static bool whose_choice(const struct cursor *c, const struct condition *condition, struct who *out)
{
    if (!condition || condition->kind == COND_OTHERWISE) {
        return false;
    }
    const struct who *who = &condition->who;
    if (who_defends(who) && done_to(condition)->kind == WHO_PLAYER) { /* x4 doubles 5, she passes */
        *out = *done_to(condition);
        return true;
    }
    if (who_defends(who)) {
        return above_guarded(c, who, out);
    }
    *out = *who;
    return who->kind == WHO_PLAYER || who->kind == WHO_ROLE;
}

/* A look alone is no answer: with it the read would be nothing. */
static void moves_nobody(struct reader *r, const struct cursor *c, const struct token *from)
{
    struct span said = span_join(from->span, c->end[-1].span);
    struct diag *diag = diag_add(r->diags, DIAG_TEXT_IF, said,
                                 "`%.*s` moves nobody, and a read is what somebody then does",
                                 STR_ARG(cursor_text(c, said)));
    diag_help(r->diags, diag,
              "write what is done: `if not, 1 passes to 4`; a look is a note: `point 1 \"Look at "
              "4\"`");
}

/* The read with what is done about it, as `if` says it in one line. */
void branch_answered(struct reader *r, const struct line *line, const struct block *block,
                     const struct sentence *sentences, size_t count)
{
    *branch_open(r, BLOCK_READ, line) = *block;
    struct line bare = line_part(line, 0, line->count);
    for (size_t i = 0; i < count; i++) {
        reader_add_sentence(r, r->branch, line_keep(r, bare), &sentences[i]);
    }
    r->sentences += count;
    moments_settle(r);
    /* more: a read like any other */
    bool one = r->branch->forms.count == 1;
    r->branch->one_line = one && block->conditions.at[0].kind != COND_OTHERWISE;
    r->branch = one ? NULL : r->branch;
}

static void if_read(struct reader *r, const struct line *line)
{
    static const char *const words[] = {"if",   "versus", "vs",  "against", "should",
                                        "when", "on",     "off", "upon",    NULL};
    if (!branch_fits(r, line)) {
        return;
    }
    struct block *block = block_new(r, BLOCK_READ, line);
    struct line named = if_names_his(r, line);
    line = &named;
    struct line opened = *line;
    opened.tokens = arena_array(r->arena, struct token, 2 * line->count + 2);
    opened.count = contractions_open(line->tokens, line->count, opened.tokens, 2 * line->count + 2);
    line = line_keep(r, opened);
    struct cursor c = reader_cursor(r, line, 0);
    take_among(&c, words);
    take_mark(&c, '.'); /* vs. */
    sentence_list sentences = {0};
    bool fine = conditions_part(r, &c, block);
    if (fine && named_if(r, line, c, block)) {
        return;
    }
    bool other = fine && block->conditions.at[0].kind == COND_OTHERWISE; /* otherwise pop */
    if (fine && !take_answer_mark(&c) && !(other && verb_begins(&c)) &&
        !comma_may_miss(&c, line, block)) {
        struct str asks = cursor_text(&c, block->conditions.at[0].span);
        struct diag *diag =
            diag_add(r->diags, DIAG_TEXT_IF, cursor_span(&c), "a comma and a sentence belong here");
        diag_help(r->diags, diag,
                  "write it in one line, more of it with `and`: `if %.*s, 3 cuts to the rim and 1 "
                  "passes to 3`; or write `read %.*s` and its lines below it",
                  STR_ARG(asks), STR_ARG(asks));
        fine = false;
    }
    struct who about;
    c.asked = fine ? &block->conditions.at[0] : NULL;
    const struct condition *condition = other ? read_above(r) : &block->conditions.at[0];
    if (fine && whose_choice(&c, condition, &about)) {
        c.about = &about;
        c.about_two = condition->kind == COND_BOTH;
        c.about_done = done_to(condition)->kind == WHO_PLAYER;
    }
    const struct token *from = c.at;
    fine = fine && sentences_read(&c, &sentences);
    if (fine && sentences.count == 0) { /* 1 looks at 4 */
        moves_nobody(r, &c, from);
    }
    if (!fine || sentences.count == 0) {
        r->branch = NULL;
        reader_broken(r, line);
        return;
    }
    branch_answered(r, line, block, sentences.at, sentences.count);
}

/* when x3 trails, 3 curls off 5: as a tie it would wait for what comes of its own use. */
static bool use_hangs_on(struct cursor c)
{
    static const enum verb at_screen[] = {VERB_TRAILS,   VERB_GOES_UNDER, VERB_GOES_OVER,
                                          VERB_SWITCHES, VERB_HEDGES,     VERB_OVERPLAYS,
                                          VERB_DROPS,    VERB_ICES,       VERB_TRAPS};
    struct condition condition = {.kind = COND_OTHERWISE};
    struct cursor_mark mark = cursor_mark(&c);
    who_list list;
    c.watch = NULL;
    bool hangs = take_words(&c, "when") && condition_read(&c, &condition) &&
                 (condition.kind == COND_VERB || condition.kind == COND_BOTH);
    take_mark(&c, ',');
    hangs = hangs && subject_read(&c, &list) && use_follows(&c) && c.refusals == mark.refusals;
    cursor_back(&c, mark);
    for (size_t i = 0; hangs && i < sizeof at_screen / sizeof *at_screen; i++) {
        if (condition.verb == at_screen[i]) {
            return true;
        }
    }
    return false;
}

/* when they switch: not of one defender, whose verb would be a moment. */
static bool they_do(const struct cursor *c)
{
    static const char *const words[] = {"they", "defense", "defenders", NULL};
    struct cursor trial = *c;
    struct condition said;
    struct cursor_mark mark = cursor_mark(c);
    bool do_it = word_among(&trial, words) && coverage_said(&trial, &said) &&
                 (mark_is(&trial, ',') || subject_verb_is(&trial));
    cursor_back(&trial, mark);
    return do_it;
}

bool line_is_read(const struct reader *r, const struct line *line)
{
    static const char *const words[] = {"on", "when", "off", "upon", NULL};
    struct cursor c = reader_cursor(r, line, 0);
    bool here = (r->step || !r->has_steps) && r->top;
    if (!here || use_hangs_on(c)) {
        return here;
    }
    if (take_among(&c, words)) {
        return coverage_is(&c) || they_do(&c);
    }
    bool means = false;
    for (size_t i = 1; i < line->count; i++) { /* few lines have it, and the rest costs */
        means = means || token_is_word(&line->tokens[i], "means");
    }
    struct cursor_mark mark = cursor_mark(&c);
    struct condition said; /* top lock by x2 means 2 cuts */
    means = means && !subject_verb_is(&c) && condition_read(&c, &said) && word_is(&c, 0, "means");
    cursor_back(&c, mark);
    return means;
}

/* Where a second read begins in the line of one: ", if", "; otherwise", "and if". 0: nowhere. */
static size_t second_if(const struct line *line)
{
    for (size_t i = 2; i + 1 < line->count; i++) {
        const struct token *before = &line->tokens[i - 1], *token = &line->tokens[i];
        bool joined = before->kind == TOKEN_WORD &&
                      (str_is(before->text, "and") || str_is(before->text, "but"));
        bool parted =
            joined || (before->kind == TOKEN_MARK &&
                       (before->mark == ',' || before->mark == ';' || before->mark == '.'));
        bool again = str_is(token->text, "if") || str_is(token->text, "otherwise") ||
                     str_is(token->text, "else");
        if (parted && token->kind == TOKEN_WORD && again) {
            return i;
        }
    }
    return 0;
}

void if_lines(struct reader *r, const struct line *line)
{
    struct line rest = *line;
    for (size_t at; (at = second_if(&rest)) > 0;) {
        size_t end = at - 1; /* trails, 3 curls, and if: the comma is none of its own */
        while (end > 1 && rest.tokens[end - 1].kind == TOKEN_MARK) {
            end--;
        }
        if_read(r, line_keep(r, line_part(&rest, 0, end)));
        struct line part = line_part(&rest, at, rest.count);
        part.comment = rest.comment;
        part.comment_span = rest.comment_span;
        rest = part;
        r->branch = NULL;
    }
    if_read(r, line_keep(r, rest));
}
