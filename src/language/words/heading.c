/* SPDX-License-Identifier: MIT */
/* heading: the lines that open blocks. */
#include "base/limits.h"
#include "language/words/grammar.h"
#include "language/words/reader.h"
#include "language/words/speech.h"
#include "language/words/vocabulary.h"

static void refuse(struct reader *r, struct span span, const char *message, const char *help)
{
    struct diag *diag = diag_add(r->diags, DIAG_TEXT_HEADING, span, "%s", message);
    diag_help(r->diags, diag, "write `%s`", help);
}

static struct span behind(const struct line *line)
{
    return span_end(line->span);
}

/* A title that must be there, and may be without quotes when nothing follows it. */
static bool named(struct reader *r, const struct line *line, size_t *from, const char *const *stops,
                  struct block *block, const char *message, const char *help)
{
    struct title title;
    enum title_result result = title_read(r, line, from, stops, &title);
    if (result == TITLE_NONE) {
        refuse(r, behind(line), message, help);
    }
    block->title = title.text;
    block->title_quoted = title.quoted;
    block->title_span = title.span;
    return result == TITLE_FINE;
}

static bool rest_is_empty(struct reader *r, const struct line *line, size_t from)
{
    struct cursor c = reader_cursor(r, line, from);
    return reader_used_up(&c);
}

static bool playbook_heading(struct reader *r, const struct line *line, struct block *block)
{
    size_t from = 1;
    if (r->depth == 0 && r->shelf->playbook.source != SOURCE_NONE) {
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_PLAYBOOK_TWICE, block->span,
                                     "this book has a playbook heading already");
        if (diag) {
            diag->other = r->shelf->playbook;
        }
        diag_help(r->diags, diag, "divide a book by `chapter \"…\"`");
        return false;
    }
    r->shelf->playbook = r->depth == 0 ? block->span : r->shelf->playbook;
    return named(r, line, &from, NULL, block, "the book's title is missing",
                 "playbook \"Larkspur Kites\"") &&
           rest_is_empty(r, line, from);
}

static bool team_heading(struct reader *r, const struct line *line, struct block *block)
{
    size_t from = 1;
    return named(r, line, &from, NULL, block, "the team's name is missing",
                 "team \"Larkspur Kites\"") &&
           rest_is_empty(r, line, from);
}

static bool play_heading(struct reader *r, const struct line *line, struct block *block)
{
    static const char *const stops[] = {"mirrors", NULL};
    bool drill = block->kind == BLOCK_DRILL;
    size_t from = 1;
    if (++r->shelf->plays == LIMIT_PLAYS + 1) {
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_MANY, block->span,
                                     "a book has at most %d plays", LIMIT_PLAYS);
        diag_help(r->diags, diag, "make two books of it");
    }
    if (!named(r, line, &from, stops, block,
               drill ? "the drill's name is missing" : "the play's name is missing",
               drill ? "drill \"Four-spot closeouts\"" : "play \"Lantern\"")) {
        return false;
    }
    struct cursor c = reader_cursor(r, line, from);
    if (!drill && take_words(&c, "mirrors") &&
        (!quoted_read(&c, &block->mirrors, &block->mirrors_span) || block->mirrors.size == 0)) {
        refuse(r, cursor_span(&c), "mirrors needs the name of a play in quotes",
               "play \"Lantern left\" mirrors \"Lantern\"");
        return false;
    }
    return reader_used_up(&c) && r->shelf->plays <= LIMIT_PLAYS;
}

static bool role_part(struct reader *r, struct cursor *c, struct block *block)
{
    const struct token *role = cursor_next(c);
    if (!role || role->kind != TOKEN_WORD || role->possessive) {
        refuse(r, cursor_span(c), "the name of a role belongs here",
               "action \"give and go\" for passer, receiver");
        return false;
    }
    cursor_take(c, role, role + 1);
    if (word_is_taken(role->text)) {
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_ROLE, role->span,
                                     "`%.*s` means something else already", STR_ARG(role->text));
        diag_help(r->diags, diag, "another word for the role: passer, receiver, cutter");
        return false;
    }
    for (size_t i = 0; i < block->roles.count; i++) {
        if (str_equal(block->roles.at[i], role->text)) {
            diag_add(r->diags, DIAG_TEXT_ROLE, role->span, "the role `%.*s` is named twice",
                     STR_ARG(role->text));
            return false;
        }
    }
    VEC_PUSH(r->arena, &block->roles, role->text);
    return true;
}

static bool action_heading(struct reader *r, const struct line *line, struct block *block)
{
    static const char example[] = "action \"give and go\" for passer, receiver";
    struct cursor c = reader_cursor(r, line, 1);
    if (!quoted_read(&c, &block->title, &block->title_span) || block->title.size == 0) {
        refuse(r, cursor_span(&c), "the action's name in quotes belongs here", example);
        return false;
    }
    block->title_quoted = true;
    if (!take_words(&c, "for")) {
        refuse(r, cursor_span(&c), "for and the roles of the action belong here", example);
        return false;
    }
    bool fine = true;
    do {
        fine = role_part(r, &c, block) && fine;
    } while (take_mark(&c, ',') || take_words(&c, "and"));
    return fine && reader_used_up(&c);
}

static bool practice_heading(struct reader *r, const struct line *line, struct block *block)
{
    size_t from = 1;
    return named(r, line, &from, NULL, block, "the practice's title is missing",
                 "practice \"Week 3, Tuesday\"") &&
           rest_is_empty(r, line, from);
}

static bool charted_heading(struct reader *r, const struct line *line, struct block *block)
{
    struct cursor c = reader_cursor(r, line, 1);
    if (!charted_heading_read(&c, block)) {
        return false;
    }
    size_t from = (size_t)(c.at - line->tokens);
    if (from < line->count) {
        struct title title;
        enum title_result result = title_read(r, line, &from, NULL, &title);
        block->title = title.text;
        block->title_quoted = title.quoted;
        block->title_span = title.span;
        return result == TITLE_FINE && rest_is_empty(r, line, from);
    }
    return true;
}

/* What may stand behind `step`, before its title. */
static bool step_number(struct reader *r, const struct line *line, size_t *from,
                        struct block *block)
{
    const struct token *token = *from < line->count ? &line->tokens[*from] : NULL;
    if (!token || token->kind != TOKEN_NUMBER || !token->integer || token->possessive) {
        return true;
    }
    block->number = (int)token->number;
    (*from)++;
    if (*from < line->count && line->tokens[*from].kind == TOKEN_MARK &&
        (line->tokens[*from].mark == '.' || line->tokens[*from].mark == ':')) {
        (*from)++; /* step 2. Swing it */
    }
    if (block->number == (int)r->steps) {
        return true;
    }
    struct diag *diag =
        diag_add(r->diags, DIAG_TEXT_STEP_NUMBER, token->span,
                 "this is step %d of the play, not %d", (int)r->steps, block->number);
    diag_help(r->diags, diag, "write `step %d`, or `step` alone", (int)r->steps);
    return false;
}

static bool is_tie_word(const struct token *token)
{
    return token->kind == TOKEN_WORD &&
           (str_is(token->text, "as") || str_is(token->text, "after") ||
            str_is(token->text, "when"));
}

static bool step_heading(struct reader *r, const struct line *line, struct block *block)
{
    static const char *const stops[] = {"as", "after", "when", NULL};
    size_t from = 1;
    bool fine = step_number(r, line, &from, block);
    if (from < line->count && !is_tie_word(&line->tokens[from])) {
        struct title title;
        fine = title_read(r, line, &from, stops, &title) != TITLE_REFUSED && fine;
        block->title = title.text;
        block->title_quoted = title.quoted;
        block->title_span = title.span;
    }
    struct cursor c = reader_cursor(r, line, from);
    if (step_tie_read(&c, &block->tie, &block->after) && reader_used_up(&c)) {
        return fine;
    }
    block->tie = (struct tie){0}; /* half a tie is none */
    block->after = (struct str){0};
    return false;
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
    if (near) {
        diag_help(r->diags, diag, "did you mean `%s`?", near);
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

static bool read_heading(struct reader *r, const struct line *line, struct block *block)
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

static bool option_heading(struct reader *r, const struct line *line, struct block *block)
{
    size_t from = 1;
    return named(r, line, &from, NULL, block, "the option's name is missing",
                 "option \"Counter\"") &&
           rest_is_empty(r, line, from);
}

static bool (*const heading_readers[])(struct reader *, const struct line *, struct block *) = {
    [BLOCK_PLAYBOOK] = playbook_heading, [BLOCK_TEAM] = team_heading,
    [BLOCK_ACTION] = action_heading,     [BLOCK_PLAY] = play_heading,
    [BLOCK_DRILL] = play_heading,        [BLOCK_PRACTICE] = practice_heading,
    [BLOCK_CHARTED] = charted_heading,   [BLOCK_STEP] = step_heading,
    [BLOCK_READ] = read_heading,         [BLOCK_OPTION] = option_heading,
};

static bool has_steps(const struct reader *r)
{
    for (size_t i = r->next; i < r->lines.all.count; i++) {
        enum line_class kind = opener_of(&r->lines.all.at[i], 0).kind;
        if (kind == LINE_HEADING_0 || kind == LINE_CHAPTER || kind == LINE_INCLUDE) {
            return false;
        }
        if (kind == LINE_STEP) {
            return true;
        }
    }
    return false;
}

static void add_block(struct reader *r, struct block *parent, struct block *block)
{
    reader_add(r, parent, FORM_BLOCK, block->line)->block = block;
}

static void open_top(struct reader *r, struct block *block)
{
    add_block(r, r->file, block);
    r->top = block;
    r->step = r->branch = NULL;
    r->at_head = r->begun = r->told = false;
    r->steps = r->sentences = r->branches = 0;
    r->has_steps = has_steps(r);
}

static void close_top(struct reader *r)
{
    r->top = r->step = r->branch = NULL;
    r->at_head = r->begun = r->told = r->has_steps = false;
}

static void chapter_read(struct reader *r, const struct line *line)
{
    struct block heading = {0};
    size_t from = 1;
    if (named(r, line, &from, NULL, &heading, "the chapter's title is missing",
              "chapter \"Inbounds\"") &&
        rest_is_empty(r, line, from) && !line->broken) {
        reader_add(r, r->file, FORM_CHAPTER, line)->title = heading.title;
    } else {
        reader_add(r, r->file, FORM_BROKEN, line);
    }
}

static bool out_of_place(struct reader *r, const struct line *line, const char *message,
                         const char *help)
{
    struct diag *diag =
        diag_add(r->diags, DIAG_TEXT_HEADING_PLACE, line->tokens[0].span, "%s", message);
    diag_help(r->diags, diag, "%s", help);
    reader_broken(r, line);
    r->told = true;
    return false;
}

static bool is_play(const struct block *top)
{
    return top && (top->kind == BLOCK_PLAY || top->kind == BLOCK_DRILL);
}

static bool step_fits(struct reader *r, const struct line *line)
{
    if (!is_play(r->top)) {
        r->step = r->branch = NULL;
        return out_of_place(r, line, "a step stands in a play or a drill",
                            "write `play \"Lantern\"` above it");
    }
    if (r->top->mirrors.size > 0) {
        return out_of_place(r, line, "a play that mirrors another has no steps of its own",
                            "take the steps away, or mirrors");
    }
    if (r->steps >= LIMIT_STEPS) {
        if (r->steps++ == LIMIT_STEPS) { /* said once */
            struct diag *diag = diag_add(r->diags, DIAG_TEXT_MANY, line->tokens[0].span,
                                         "a play has at most %d steps", LIMIT_STEPS);
            diag_help(r->diags, diag, "make two plays of it");
        }
        reader_broken(r, line);
        r->step = r->branch = NULL;
        r->told = true;
        return false;
    }
    return true;
}

static bool branch_fits(struct reader *r, const struct line *line)
{
    bool body = is_play(r->top) ? r->step || !r->has_steps : r->top && r->top->kind == BLOCK_ACTION;
    if (!body) {
        return out_of_place(r, line, "a read stands in a step, or in a play without steps",
                            "write `step \"Come off the screen\"` above it");
    }
    if (r->top->mirrors.size > 0) {
        return out_of_place(r, line, "a play that mirrors another has no reads of its own",
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

static struct block *open_branch(struct reader *r, enum block_kind kind, const struct line *line)
{
    struct block *block = block_new(r, kind, line);
    r->branch = NULL;
    add_block(r, reader_block(r), block);
    r->branch = block;
    r->branch_has_line = false;
    r->begun = true;
    r->told = false;
    r->branches++;
    return block;
}

static struct block *open_heading(struct reader *r, const struct line *line, struct opener opener)
{
    enum block_kind kind = (enum block_kind)opener.which;
    if (opener.kind == LINE_HEADING_0) {
        open_top(r, block_new(r, kind, line));
        return r->top;
    }
    if (opener.kind == LINE_BRANCH) {
        return branch_fits(r, line) ? open_branch(r, kind, line) : NULL;
    }
    if (!step_fits(r, line)) {
        return NULL;
    }
    r->step = r->branch = NULL;
    struct block *block = block_new(r, kind, line);
    add_block(r, r->top, block);
    r->step = block;
    r->begun = true;
    r->told = false;
    r->sentences = r->branches = 0;
    r->steps++;
    return block;
}

void heading_read(struct reader *r, const struct line *line, struct opener opener)
{
    struct diags *diags = r->diags, unheard;
    if (line->broken) { /* it has been said why */
        diags_init(&unheard, r->arena);
        r->diags = &unheard;
    }
    if (opener.kind == LINE_CHAPTER || opener.kind == LINE_INCLUDE) {
        close_top(r);
    }
    if (opener.kind == LINE_CHAPTER) {
        chapter_read(r, line);
    } else if (opener.kind == LINE_INCLUDE) {
        include_read(r, line);
    } else {
        struct block *block = open_heading(r, line, opener);
        if (block && (!heading_readers[block->kind](r, line, block) || line->broken)) {
            block->broken = true;
        }
    }
    r->diags = diags;
}

/* if x3 goes under 3 fades: where the sentence needs its subject the condition leaves it. */
static bool comma_may_miss(struct cursor *c, const struct line *line, struct block *block)
{
    struct condition *last = &block->conditions.at[block->conditions.count - 1];
    struct who *object = last->kind == COND_BOTH ? &last->object : &last->other;
    struct cursor trial = *c;
    static const char *const pronouns[] = {"he", "she", NULL};
    if (subject_verb_is(c) || (take_among(&trial, pronouns) && verb_begins(&trial))) {
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
    *open_branch(r, BLOCK_READ, line) = titled;
    return true;
}

/* Whose choice a read is: the attacker it names, or whom the defender it names guards. */
static bool whose_choice(const struct cursor *c, const struct condition *condition, struct who *out)
{
    const struct who *who = &condition->who;
    if (condition->kind == COND_OTHERWISE) {
        return false;
    }
    if (who_defends(who)) {
        return above_guarded(c, who, out);
    }
    *out = *who;
    return who->kind == WHO_PLAYER || who->kind == WHO_ROLE;
}

static void if_read(struct reader *r, const struct line *line)
{
    static const char *const words[] = {"if",   "versus", "vs",  "against", "should",
                                        "when", "on",     "off", "upon",    NULL};
    if (!branch_fits(r, line)) {
        return;
    }
    struct block *block = block_new(r, BLOCK_READ, line);
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
    if (fine && !take_answer_mark(&c) && !comma_may_miss(&c, line, block)) {
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
    if (fine && whose_choice(&c, &block->conditions.at[0], &about)) {
        c.about = &about;
        c.about_two = block->conditions.at[0].kind == COND_BOTH;
    }
    if (!fine || !sentences_read(&c, &sentences) || sentences.count == 0) {
        r->branch = NULL;
        reader_broken(r, line);
        return;
    }
    *open_branch(r, BLOCK_READ, line) = *block;
    struct line bare = line_part(line, 0, line->count);
    for (size_t i = 0; i < sentences.count; i++) {
        reader_add_sentence(r, r->branch, line_keep(r, bare), &sentences.at[i]);
    }
    r->sentences += sentences.count;
    /* more: a read like any other */
    r->branch->one_line = sentences.count == 1 && block->conditions.at[0].kind != COND_OTHERWISE;
    r->branch = sentences.count == 1 ? NULL : r->branch;
}

bool line_is_read(const struct reader *r, const struct line *line)
{
    static const char *const words[] = {"on", "when", "off", "upon", NULL};
    struct cursor c = reader_cursor(r, line, 0);
    return (r->step || !r->has_steps) && r->top && take_among(&c, words) && coverage_is(&c);
}

/* Where a second read begins in the line of one: ", if", "; otherwise". 0: nowhere. */
static size_t second_if(const struct line *line)
{
    for (size_t i = 2; i + 1 < line->count; i++) {
        const struct token *before = &line->tokens[i - 1], *token = &line->tokens[i];
        bool parted = before->kind == TOKEN_MARK && (before->mark == ',' || before->mark == ';');
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
        if_read(r, line_keep(r, line_part(&rest, 0, at - 1)));
        struct line part = line_part(&rest, at, rest.count);
        part.comment = rest.comment;
        part.comment_span = rest.comment_span;
        rest = part;
        r->branch = NULL;
    }
    if_read(r, line_keep(r, rest));
}
