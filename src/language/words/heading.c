/* SPDX-License-Identifier: MIT */
/* heading: the lines that open blocks. */
#include "base/limits.h"
#include "language/words/grammar.h"
#include "language/words/reader.h"
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
bool heading_named(struct reader *r, const struct line *line, size_t *from,
                   const char *const *stops, struct block *block, const char *message,
                   const char *help)
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

bool heading_ends(struct reader *r, const struct line *line, size_t from)
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
    return heading_named(r, line, &from, NULL, block, "the book's title is missing",
                         "playbook \"Larkspur Kites\"") &&
           heading_ends(r, line, from);
}

static bool team_heading(struct reader *r, const struct line *line, struct block *block)
{
    size_t from = 1;
    return heading_named(r, line, &from, NULL, block, "the team's name is missing",
                         "team \"Larkspur Kites\"") &&
           heading_ends(r, line, from);
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
    if (!heading_named(r, line, &from, stops, block,
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
    if (role_is_taken(r->shelf, role->text)) {
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
    return heading_named(r, line, &from, NULL, block, "the practice's title is missing",
                         "practice \"Week 3, Tuesday\"") &&
           heading_ends(r, line, from);
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
        return result == TITLE_FINE && heading_ends(r, line, from);
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

void block_add(struct reader *r, struct block *parent, struct block *block)
{
    reader_add(r, parent, FORM_BLOCK, block->line)->block = block;
}

static void open_top(struct reader *r, struct block *block)
{
    block_add(r, r->file, block);
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
    if (heading_named(r, line, &from, NULL, &heading, "the chapter's title is missing",
                      "chapter \"Inbounds\"") &&
        heading_ends(r, line, from) && !line->broken) {
        reader_add(r, r->file, FORM_CHAPTER, line)->title = heading.title;
    } else {
        reader_add(r, r->file, FORM_BROKEN, line);
    }
}

bool heading_misplaced(struct reader *r, const struct line *line, const char *message,
                       const char *help)
{
    struct diag *diag =
        diag_add(r->diags, DIAG_TEXT_HEADING_PLACE, line->tokens[0].span, "%s", message);
    diag_help(r->diags, diag, "%s", help);
    reader_broken(r, line);
    r->told = true;
    return false;
}

bool block_plays(const struct block *top)
{
    return top && (top->kind == BLOCK_PLAY || top->kind == BLOCK_DRILL);
}

static bool step_fits(struct reader *r, const struct line *line)
{
    if (!block_plays(r->top)) {
        r->step = r->branch = NULL;
        return heading_misplaced(r, line, "a step stands in a play or a drill",
                                 "write `play \"Lantern\"` above it");
    }
    if (r->top->mirrors.size > 0) {
        return heading_misplaced(r, line, "a play that mirrors another has no steps of its own",
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

static struct block *open_heading(struct reader *r, const struct line *line, struct opener opener)
{
    enum block_kind kind = (enum block_kind)opener.which;
    if (opener.kind == LINE_HEADING_0) {
        open_top(r, block_new(r, kind, line));
        return r->top;
    }
    if (opener.kind == LINE_BRANCH) {
        return branch_fits(r, line) ? branch_open(r, kind, line) : NULL;
    }
    if (!step_fits(r, line)) {
        return NULL;
    }
    r->step = r->branch = NULL;
    struct block *block = block_new(r, kind, line);
    block_add(r, r->top, block);
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
    moments_settle(r);
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
