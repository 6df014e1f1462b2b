/* SPDX-License-Identifier: MIT */
/* book: a file from its lines to its blocks. Here every line finds the block it belongs to; what it
 * says is read elsewhere. */
#include <string.h>

#include "base/limits.h"
#include "language/words/reader.h"

void version_line(struct reader *r, const struct line *line, bool first)
{
    struct cursor c = reader_cursor(r, line, 1);
    struct span span = line->tokens[0].span;
    int number = 0;
    struct diag *diag = NULL;
    if (!first) {
        diag = diag_add(r->diags, DIAG_TEXT_VERSION, span,
                        "the language's version stands on the first line");
    } else if (!integer_read(&c, &number, &span) || number < 1) {
        diag = diag_add(r->diags, DIAG_TEXT_VERSION, cursor_span(&c), "a version is a number: 1");
    } else if (number > LANGUAGE_VERSION) {
        diag = diag_add(
            r->diags, DIAG_TEXT_VERSION, span,
            "this file is written in version %d of the language; this program knows version %d",
            number, LANGUAGE_VERSION);
    } else if (reader_used_up(&c)) {
        reader_add(r, r->file, FORM_VERSION, line)->number = number;
        return;
    }
    diag_help(r->diags, diag, "write `courtwright %d` on the first line, or nothing",
              LANGUAGE_VERSION);
    reader_broken(r, line);
}

/* A second `level`, or a second limit of the same check. */
static bool stands_already(struct reader *r, const struct block *block, const struct line *line,
                           const struct setting_form *setting)
{
    if (setting->setting == SETTING_CAUTION) {
        return false;
    }
    for (size_t i = 0; block_sets(block, setting->setting) && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind != FORM_SETTING || form->setting->setting != setting->setting ||
            (setting->setting == SETTING_LIMIT && !str_equal(form->setting->text, setting->text))) {
            continue;
        }
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_SETTING_TWICE, line->tokens[0].span,
                                     "`%s` stands here twice", setting_word(setting->setting));
        if (diag) {
            diag->other = form->span;
        }
        diag_help(r->diags, diag, "keep one of the two lines");
        return true;
    }
    return false;
}

void setting_misplaced(struct reader *r, const struct line *line, enum setting setting)
{
    const char *help = setting_stands(setting, 'F')
                           ? "under playbook, or before the file's first heading"
                       : setting_stands(setting, 'P') ? "under a play's heading"
                                                      : "under a drill's heading";
    struct diag *diag = diag_add(r->diags, DIAG_TEXT_SETTING_PLACE, line->tokens[0].span,
                                 "`%s` does not belong here", setting_word(setting));
    diag_help(r->diags, diag, "%s", help);
    reader_broken(r, line);
}

void setting_line(struct reader *r, const struct line *line, enum setting setting)
{
    bool implied = r->top && r->top->implied;
    char where = !r->top || r->top->kind == BLOCK_PLAYBOOK ? 'F'
                 : r->top->kind == BLOCK_DRILL             ? 'D'
                                                           : 'P';
    bool of_file =
        implied && setting_stands(setting, 'F'); /* units and paper, where a play has no heading */
    if (!setting_stands(setting, where) && !of_file) {
        setting_misplaced(r, line, setting);
        return;
    }
    struct setting_form *form = arena_new(r->arena, struct setting_form);
    struct line said;
    if ((setting == SETTING_BALL || setting == SETTING_START) && loose_ball(r, line, &said)) {
        setting = SETTING_BALL;
        line = line_keep(r, said);
    }
    struct block *block = r->top ? r->top : r->file;
    if (!setting_read(r, line, setting, form) || stands_already(r, block, line, form)) {
        reader_broken(r, line);
        return;
    }
    _Static_assert(SETTING_COUNT <= 32, "a bit each");
    reader_add(r, block, FORM_SETTING, line)->setting = form;
    block->settings |= (uint32_t)1 << setting;
    thrower_on_line(r, block, form);
}

static struct str settings_of_book(const struct reader *r)
{
    struct strbuf out;
    strbuf_init(&out, r->arena);
    for (int setting = 0; setting < SETTING_COUNT; setting++) {
        if (setting_stands((enum setting)setting, 'F')) {
            strbuf_print(&out, "%s%s", out.size > 0 ? ", " : "",
                         setting_word((enum setting)setting));
        }
    }
    return strbuf_str(&out);
}

static void outside_line(struct reader *r, const struct line *line)
{
    const char *near = opener_nearest(line);
    if (near && !r->told) {
        line_unknown(r, line, near);
    } else if (!r->told && r->top && r->top->kind == BLOCK_PLAYBOOK) {
        struct diag *diag = diag_add(r->diags, DIAG_TEXT_OUTSIDE, line->span,
                                     "this is no setting of a playbook, and stands under no play");
        diag_help(r->diags, diag, "a playbook has %.*s", STR_ARG(settings_of_book(r)));
        r->told = true;
    } else if (!r->told) {
        struct diag *diag =
            diag_add(r->diags, DIAG_TEXT_OUTSIDE, line->span, "this line stands under no play");
        diag_help(r->diags, diag, "write `play \"Lantern\"` above it");
        r->told = true;
    }
    reader_broken(r, line);
}

static void open_implied(struct reader *r)
{
    struct block *block = block_new(r, BLOCK_PLAY, NULL);
    block->implied = true;
    reader_add(r, r->file, FORM_BLOCK, NULL)->block = block;
    r->top = block;
    r->at_head = false;
    r->has_steps = false;
    r->shelf->plays++;
    for (size_t i = 0; i < r->lines.all.count; i++) {
        enum line_class kind = opener_of(&r->lines.all.at[i], 0).kind;
        if (kind == LINE_HEADING_0 || kind == LINE_CHAPTER || kind == LINE_INCLUDE) {
            break;
        }
        r->has_steps = r->has_steps || kind == LINE_STEP;
    }
}

/* Before the first heading: settings of the file, or a play that has none. */
static void head_line(struct reader *r, const struct line *line, struct opener opener, bool first)
{
    bool of_file = opener.kind == LINE_SETTING && setting_stands((enum setting)opener.which, 'F');
    if (opener.kind == LINE_VERSION) {
        version_line(r, line, first);
    } else if (of_file || (opener.kind == LINE_SETTING && !r->implied)) {
        setting_line(r, line, (enum setting)opener.which);
    } else if (r->implied) {
        open_implied(r);
        play_line(r, line, opener);
    } else {
        outside_line(r, line);
    }
}

static bool is_free_setting(struct opener opener)
{
    return opener.which == SETTING_ABOUT || opener.which == SETTING_CALL ||
           opener.which == SETTING_SERIES || opener.which == SETTING_SCORE ||
           opener.which == SETTING_CAUTION || opener.which == SETTING_GOAL;
}

/* Lines whose text may hold any mark: a title without quotes. */
static bool is_free_text(const struct line *line, struct opener opener)
{
    if (line->count > 1 && line->tokens[1].kind == TOKEN_QUOTED) {
        return false;
    }
    switch (opener.kind) {
    case LINE_HEADING_0:
        return opener.which != BLOCK_ACTION;
    case LINE_CHAPTER:
    case LINE_STEP:
        return true;
    case LINE_BRANCH:
        return opener.which == BLOCK_OPTION;
    case LINE_SETTING:
        return is_free_setting(opener);
    default:
        return false;
    }
}

static bool keeps_stops(struct opener opener)
{
    return opener.kind == LINE_SETTING &&
           (opener.which == SETTING_ABOUT || opener.which == SETTING_CAUTION ||
            opener.which == SETTING_GOAL);
}

static bool is_level_0(enum line_class kind)
{
    return kind == LINE_HEADING_0 || kind == LINE_CHAPTER || kind == LINE_INCLUDE;
}

/* Lines whose first word means another thing than in a play. */
static bool is_plan(const struct reader *r)
{
    return r->top && (r->top->kind == BLOCK_PRACTICE || r->top->kind == BLOCK_CHARTED);
}

static bool line_has_minutes(const struct line *line)
{
    for (size_t i = 0; i < line->count; i++) {
        if (line->tokens[i].kind == TOKEN_MEASURE && line->tokens[i].unit == UNIT_MINUTES) {
            return true;
        }
    }
    return false;
}

/* drill "Four-spot closeouts" 12 min: in a practice no heading. */
static bool is_item(const struct reader *r, const struct line *line)
{
    bool names = line->count > 2 && line->tokens[1].kind == TOKEN_QUOTED &&
                 (str_is(line->tokens[0].text, "drill") || str_is(line->tokens[0].text, "play"));
    return names && r->top && r->top->kind == BLOCK_PRACTICE && line_has_minutes(line);
}

static void broken_line(struct reader *r, const struct line *line, struct opener opener)
{
    bool heading =
        opener.kind == LINE_STEP || opener.kind == LINE_BRANCH || is_level_0(opener.kind);
    bool implied = r->at_head && r->implied && !is_level_0(opener.kind);
    bool of_file = opener.kind == LINE_SETTING && setting_stands((enum setting)opener.which, 'F');
    if (implied && opener.kind != LINE_VERSION && !of_file) {
        open_implied(r);
    }
    if (heading) {
        heading_read(r, line, opener);
    } else {
        reader_broken(r, line);
    }
}

static void plan_line(struct reader *r, const struct line *line, struct opener opener)
{
    if (opener.kind == LINE_STEP || opener.kind == LINE_BRANCH) {
        heading_read(r, line, opener);
    } else if (r->told) {
        reader_broken(r, line);
    } else if (r->top->kind == BLOCK_PRACTICE) {
        practice_line(r, line);
    } else {
        charted_line(r, line);
    }
}

static void fine_line(struct reader *r, const struct line *line, struct opener opener, bool first)
{
    if (is_level_0(opener.kind)) {
        heading_read(r, line, opener);
    } else if (r->at_head) {
        head_line(r, line, opener, first);
    } else if (!r->top || r->top->kind == BLOCK_PLAYBOOK) {
        if (opener.kind == LINE_SETTING) {
            setting_line(r, line, (enum setting)opener.which);
        } else if (opener.kind == LINE_STEP || opener.kind == LINE_BRANCH) {
            heading_read(r, line, opener);
        } else if (opener.kind == LINE_VERSION) {
            version_line(r, line, false);
        } else {
            outside_line(r, line);
        }
    } else if (is_plan(r)) {
        plan_line(r, line, opener);
    } else if (r->top->kind == BLOCK_TEAM) {
        if (opener.kind == LINE_STEP || opener.kind == LINE_BRANCH) {
            heading_read(r, line, opener);
        } else if (r->told) {
            reader_broken(r, line);
        } else {
            roster_read(r, line);
        }
    } else {
        play_line(r, line, opener);
    }
}

/* `level: u16` is level u16. */
static struct line without_colon(struct reader *r, const struct line *line)
{
    struct line own = *line;
    if (line->count > 1 && token_is_mark(&line->tokens[1], ':')) {
        own.count--;
        own.tokens = arena_array(r->arena, struct token, line->count);
        memcpy(own.tokens, line->tokens, line->count * sizeof own.tokens[0]);
        memmove(own.tokens + 1, line->tokens + 2, (own.count - 1) * sizeof own.tokens[0]);
    }
    return own;
}

/* Sentences may stand where the reader is. */
static bool plays_here(const struct reader *r)
{
    return r->top ? r->top->kind == BLOCK_PLAY || r->top->kind == BLOCK_DRILL ||
                        r->top->kind == BLOCK_ACTION
                  : r->at_head && r->implied;
}

/* The line with one mark put for another where it stands. */
static struct line with_mark(struct reader *r, const struct line *line, char mark, char other)
{
    struct line own = *line;
    bool copied = false;
    for (size_t i = 0; i < line->count; i++) {
        if (line->tokens[i].kind != TOKEN_MARK || line->tokens[i].mark != mark) {
            continue;
        }
        if (!copied) {
            own.tokens = arena_array(r->arena, struct token, line->count);
            memcpy(own.tokens, line->tokens, line->count * sizeof own.tokens[0]);
            copied = true;
        }
        own.tokens[i].mark = other;
    }
    return own;
}

/* The line as it was read, where nothing was changed in it: else a copy. */
static const struct line *line_kept(struct reader *r, struct line own)
{
    const struct line *read = &r->lines.all.at[r->next - 1];
    bool same =
        own.tokens == read->tokens && own.count == read->count && own.broken == read->broken;
    return same ? read : line_keep(r, own);
}

static void take_line(struct reader *r, const struct line *line)
{
    struct opener opener = opener_of(line, 0);
    bool first = !r->seen;
    r->seen = true;
    if (is_item(r, line)) {
        opener = (struct opener){.kind = LINE_OTHER};
    }
    struct line own = opener.kind == LINE_OTHER ? *line : without_colon(r, line);
    bool sentence = opener.kind == LINE_OTHER || opener.kind == LINE_NOTE || opener.kind == LINE_IF;
    if ((!sentence || is_plan(r)) && !keeps_stops(opener)) {
        own = line_without_stops(&own);
    }
    bool speaks = opener.kind == LINE_OTHER || opener.kind == LINE_IF ||
                  (opener.kind == LINE_SETTING && opener.which == SETTING_START);
    if (speaks && plays_here(r)) {
        own = marks_as_spoken(r, &own);
    }
    static const char *const against[] = {"vs", "versus", "against", NULL};
    bool colons = plays_here(r) && line->count > 0 && /* the sentence sees to them */
                  (opener.kind == LINE_OTHER ||
                   (opener.kind == LINE_IF && token_is_among(&line->tokens[0], against)));
    struct line marks = colons ? with_mark(r, &own, ':', ',') : own;
    marks = colons ? with_mark(r, &marks, '?', ',') : marks; /* 3 is denied? Then he back cuts */
    if (!own.broken && !is_free_text(&own, opener) && !(is_plan(r) && !is_level_0(opener.kind)) &&
        !line_marks_ok(&marks, r->shelf->sources, r->diags)) {
        own.broken = true;
    }
    const struct line *kept = line_kept(r, own);
    if (own.broken) {
        broken_line(r, kept, opener);
    } else {
        fine_line(r, kept, opener, first);
    }
}

/* The next line that says something, from `from` on; the count of lines if there is none. */
static size_t next_saying(const struct reader *r, size_t from)
{
    while (from < r->lines.all.count && r->lines.all.at[from].count == 0 &&
           !r->lines.all.at[from].broken) {
        from++;
    }
    return from;
}

static bool opens_anew(const struct reader *r, const struct line *line)
{
    struct opener opener = opener_of(line, 0);
    bool action = r->top && r->top->kind == BLOCK_ACTION;
    if (opener.kind == LINE_SETTING) {
        return !r->begun && !action;
    }
    return opener.kind != LINE_OTHER || (r->top && line_is_standing(r, line));
}

/* Lines that end with a text: nothing goes on behind it. An action's roles and a read's conditions
 * do go on. */
static bool ends_with_text(const struct line *line)
{
    struct opener opener = opener_of(line, 0);
    switch (opener.kind) {
    case LINE_HEADING_0:
        return opener.which != BLOCK_ACTION;
    case LINE_CHAPTER:
    case LINE_INCLUDE:
    case LINE_STEP:
        return true;
    case LINE_BRANCH:
        return opener.which == BLOCK_OPTION;
    case LINE_SETTING:
        return is_free_setting(opener);
    default:
        return false;
    }
}

static void keep_comment(struct reader *r, struct line line)
{
    line.count = 0;
    line.tokens = NULL;
    line.span = line.comment_span;
    reader_add(r, reader_block(r), FORM_COMMENT, line_keep(r, line));
}

/* A line that ends in a comma goes on in the next one that says something. */
static struct line whole_line(struct reader *r, struct line line)
{
    while (line_goes_on(&line)) {
        size_t next = next_saying(r, r->next);
        if (next < r->lines.all.count && r->lines.all.at[next].count == 0) {
            line.broken = true; /* too long: it has been said */
            break;
        }
        if (next == r->lines.all.count || opens_anew(r, &r->lines.all.at[next]) ||
            ends_with_text(&line)) {
            struct diag *diag =
                diag_add(r->diags, DIAG_TEXT_COMMA, line.tokens[line.count - 1].span,
                         "the line ends in a comma, but nothing goes on");
            diag_help(r->diags, diag, "take the comma away, or write what was to follow it");
            line.broken = true;
            break;
        }
        if (line.count + r->lines.all.at[next].count > LIMIT_TOKENS) {
            diag_add(r->diags, DIAG_TEXT_LONG_LINE, line.tokens[line.count - 1].span,
                     "this line goes on for too long: more than %d words", LIMIT_TOKENS);
            line.broken = true;
            break;
        }
        if (line.comment.size > 0) {
            keep_comment(r, line);
        }
        for (size_t i = r->next; i < next; i++) {
            if (r->lines.all.at[i].comment.size > 0) {
                keep_comment(r, r->lines.all.at[i]);
            }
        }
        line = line_join(r->arena, &line, &r->lines.all.at[next]);
        r->next = next + 1;
    }
    return line;
}

static void blank_line(struct reader *r, const struct line *line)
{
    struct block *block = reader_block(r);
    bool again =
        block->forms.count > 0 && block->forms.at[block->forms.count - 1].kind == FORM_BLANK;
    if (line->comment.size > 0) {
        reader_add(r, block, FORM_COMMENT, line)->span = line->comment_span;
    } else if (!again) {
        reader_add(r, block, FORM_BLANK, line);
    }
}

/* Whether the lines before the first heading are a play: there is no heading, or a start, a step or
 * a sentence stands among them. */
static bool implies_play(const struct reader *r)
{
    for (size_t i = 0; i < r->lines.all.count; i++) {
        const struct line *line = &r->lines.all.at[i];
        struct opener opener = opener_of(line, 0);
        if (is_level_0(opener.kind)) {
            return false;
        }
        if (line->count == 0 || opener.kind == LINE_VERSION) {
            continue;
        }
        bool setting = opener.kind == LINE_SETTING && opener.which != SETTING_START;
        if (!setting && (opener.kind != LINE_OTHER || !opener_nearest(line))) {
            return true;
        }
    }
    return true;
}

static bool is_only_stops(const struct line *line)
{
    for (size_t i = 0; i < line->count; i++) {
        if (line->tokens[i].kind != TOKEN_MARK ||
            (line->tokens[i].mark != '.' && line->tokens[i].mark != ';')) {
            return false;
        }
    }
    return !line->broken;
}

static void read_lines(struct reader *r)
{
    while (r->next < r->lines.all.count) {
        const struct line *line = &r->lines.all.at[r->next++];
        if (line->count == 0 && !line->broken) {
            blank_line(r, line);
        } else if (is_only_stops(line)) {
            if (line->comment.size > 0) {
                keep_comment(r, *line);
            }
        } else {
            struct line whole = whole_line(r, *line);
            take_line(r, &whole);
        }
    }
}

struct block *file_read(struct shelf *shelf, uint32_t source, int depth)
{
    struct reader r = {.shelf = shelf,
                       .arena = shelf->arena,
                       .diags = shelf->diags,
                       .source = source,
                       .depth = depth,
                       .at_head = true,
                       .metres = shelf->metres};
    size_t errors = shelf->diags->errors;
    r.file = block_new(&r, BLOCK_FILE, NULL);
    lines_read(shelf->arena, shelf->sources, source, shelf->diags, &r.lines);
    headings_aloud(&r);
    r.implied = implies_play(&r);
    read_lines(&r);
    moments_settle(&r);
    if (!r.seen && errors == shelf->diags->errors) {
        struct diag *diag =
            diag_add(shelf->diags, DIAG_TEXT_EMPTY, r.file->span, "there is nothing in this file");
        diag_help(shelf->diags, diag, "write a line such as `1 passes to 2`");
    } else if (r.seen && r.at_head && r.implied) {
        open_implied(&r);
    }
    return r.file;
}

struct book *book_read(struct arena *arena, struct sources *sources, uint32_t source,
                       const struct loader *loader, struct diags *diags)
{
    return book_read_watched(arena, sources, source, loader, diags, NULL);
}

struct book *book_read_watched(struct arena *arena, struct sources *sources, uint32_t source,
                               const struct loader *loader, struct diags *diags,
                               const struct cursor_watch *watch)
{
    struct shelf shelf = {.arena = arena,
                          .sources = sources,
                          .loader = loader,
                          .diags = diags,
                          .playbook = SPAN_NONE,
                          .watch = watch,
                          .sieves = sieves_new(arena)};
    struct book *book = arena_new(arena, struct book);
    book->file = file_read(&shelf, source, 0);
    return book;
}
