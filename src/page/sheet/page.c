/* SPDX-License-Identifier: MIT */
/* page: the frame of a page. Takes a play and a body, gives a whole page; must not know what is in
 * the body. Numbers are points on letter paper; A4 keeps the columns and lowers the foot. */
#include "page/sheet/page.h"

#include "base/real.h"
#include "language/tell/tell.h"

#define RUNNING_HEAD 50.0
#define HEAD_RULE 57.0
#define TITLE 84.0
#define TITLE_TO_ABOUT 17.0
#define TO_BODY 27.0 /* from the last baseline of the title or about line */
#define CAUTION_LAST 739.0
#define CAUTION_TO_KEY 20.0
#define KEY_TO_BODY 16.0
#define FOOT_RULE 748.0
#define FOOT 760.0
#define CAUTION_INDENT 20.0

enum { CAUTION_LINES_MOST = 8 };
_Static_assert((int)PLAN_CAUTION_LINES == (int)TELL_CAUTION_LINES, "a plan has as many");

const struct paper *paper_of(bool a4)
{
    static const struct paper letter = {612, 792, 54, 0};
    static const struct paper paper_a4 = {595.28, 841.89, 45.64, 49.89};
    return a4 ? &paper_a4 : &letter;
}

/* ---- caution ---- */

struct caution caution_of_play(const struct play *play)
{
    return (struct caution){.kind = CAUTION_PLAYERS,
                            .young = tell_is_young(play),
                            .own = play->cautions.at,
                            .own_count = play->cautions.count};
}

struct caution caution_of_plays(struct arena *arena, enum caution_kind kind,
                                const struct play *const *plays, size_t count)
{
    struct tell_care care = tell_care_of(arena, plays, count);
    return (struct caution){kind, care.young, care.own, care.own_count};
}

struct caution caution_of_job(const struct setter *setter)
{
    const struct sheet_job *job = setter->job;
    const struct play **plays = arena_array(setter->arena, const struct play *, job->count);
    for (size_t i = 0; i < job->count; i++) {
        plays[i] = job->plays[i].play;
    }
    return caution_of_plays(setter->arena, CAUTION_PLAYERS, plays, job->count);
}

static void add_line(const struct setter *setter, struct galley *galley, struct str line,
                     int *lines)
{
    const struct text_block *words = words_set(setter, TYPE_NOTE, line, PAGE_WIDE - CAUTION_INDENT);
    galley_text(galley, words, CAUTION_INDENT, *lines * type_leading(TYPE_NOTE), ROLE_TEXT);
    *lines += (int)text_lines(words);
}

/* Its first baseline is 0, its height that of its last. */
static struct galley *caution_set(const struct setter *setter, const struct caution *caution,
                                  bool own, int *lines)
{
    struct galley *galley = galley_new(setter->arena);
    *lines = 0;
    for (int i = 0; i < TELL_CAUTION_LINES; i++) {
        struct str line = caution->kind == CAUTION_PRACTICE
                              ? plan_caution(i)
                              : tell_page_caution(setter->arena, i, "sheet");
        add_line(setter, galley, line, lines);
    }
    if (caution->young) {
        add_line(setter, galley, tell_young_caution(), lines);
    }
    for (size_t i = 0; own && i < caution->own_count; i++) {
        add_line(setter, galley, caution->own[i], lines);
    }
    galley->height = (*lines - 1) * type_leading(TYPE_NOTE);
    return galley;
}

const struct galley *page_caution(const struct setter *setter, const struct caution *caution,
                                  bool *surplus)
{
    int lines;
    *surplus = false;
    if (caution->kind == CAUTION_NONE) {
        return galley_new(setter->arena);
    }
    struct galley *galley = caution_set(setter, caution, true, &lines);
    *surplus = lines > CAUTION_LINES_MOST;
    if (*surplus) {
        galley = caution_set(setter, caution, false, &lines);
    }
    double last = galley->height;
    galley_sign(galley, 6.2, last / 2 - 2.9);
    galley->height = last;
    return galley;
}

/* ---- head ---- */

static size_t lines_below(const struct text_block *words)
{
    return text_lines(words) > 0 ? text_lines(words) - 1 : 0;
}

/* Words at both ends over the rule; a second line grows upward. */
static void put_running_head(struct galley *galley, const struct head *head,
                             const struct paper *paper)
{
    const struct text_block *club = head->shown[HEAD_CLUB];
    const struct text_block *sheet = head->shown[HEAD_SHEET];
    double right = paper->width - paper->margin;
    double leading = type_leading(TYPE_NOTE);
    galley_text(galley, club, paper->margin, RUNNING_HEAD - leading * (double)lines_below(club),
                ROLE_SOFT);
    galley_text_end(galley, sheet, right, RUNNING_HEAD - leading * (double)lines_below(sheet),
                    ROLE_SOFT);
    galley_rule(galley, vec2_of(paper->margin, HEAD_RULE), vec2_of(right, HEAD_RULE), 1.2,
                ROLE_INK);
}

/* Returns the last baseline. */
static double put_title(struct galley *galley, const struct head *head, const struct paper *paper)
{
    const struct text_block *series = head->shown[HEAD_SERIES];
    galley_text_end(galley, series, paper->width - paper->margin, TITLE, ROLE_TEXT);
    double base = galley_text(galley, head->shown[HEAD_TITLE], paper->margin, TITLE, ROLE_TEXT);
    return real_max(base, TITLE + type_leading(TYPE_SERIES) * (double)lines_below(series));
}

/* The about line of a first page with the clock at its right; returns the last baseline. */
static double put_about(struct galley *galley, const struct head *head, const struct paper *paper,
                        double base)
{
    const struct text_block *clock = head->shown[HEAD_CLOCK];
    const struct text_block *about = head->shown[HEAD_ABOUT];
    if (text_lines(clock) == 0 && text_lines(about) == 0) {
        return base;
    }
    base += TITLE_TO_ABOUT;
    galley_text_end(galley, clock, paper->width - paper->margin, base, ROLE_TEXT);
    double last = galley_text(galley, about, paper->margin, base, ROLE_TEXT);
    return real_max(last, base + type_leading(TYPE_CLOCK) * (double)lines_below(clock));
}

struct page page_open(const struct setter *setter, const struct head_words *words,
                      const struct galley *caution, bool first)
{
    const struct paper *paper = paper_of(setter->job->a4);
    struct page page = {
        .galley = galley_new(setter->arena), .head = words, .empty = true, .first = first};
    struct head head = head_make(setter, words, first);
    put_running_head(page.galley, &head, paper);
    double base = put_title(page.galley, &head, paper);
    page.about = base + TITLE_TO_ABOUT;
    base = first ? put_about(page.galley, &head, paper, base) : page.about;
    page.y = base + TO_BODY - LETTER_TOP;
    page.key = CAUTION_LAST + paper->foot - caution->height - CAUTION_TO_KEY;
    page.bottom = page.key - KEY_TO_BODY;
    return page;
}

/* ---- foot ---- */

struct key_row {
    enum scene_class class;
    double length, tight; /* of the sample, where there is room, and where there is little */
};

static const struct key_row key_rows[] = {
#define KEY_ROW(class, length, tight, phone) {class, length, tight},
#include "picture/scene/key_rows.def"
#undef KEY_ROW
};
enum { KEY_ROWS = sizeof key_rows / sizeof *key_rows };
#define KEY_TO_WORD 6.0
#define KEY_TO_WORD_TIGHT 3.5
#define KEY_GAP_LEAST 13.0
#define KEY_GAP_TIGHT 6.5
#define KEY_GAP_MOST 30.0

/* From a sample's left end to its word. */
static double key_reach(const struct key_row *row, bool tight)
{
    return tight ? row->tight + KEY_TO_WORD_TIGHT : row->length + KEY_TO_WORD;
}

/* The gap between the rows of the key that are not NULL. */
static double key_gap(const struct text_block *const words[KEY_ROWS], bool tight)
{
    double used = 0;
    int count = 0;
    for (int i = 0; i < KEY_ROWS; i++) {
        if (words[i]) {
            used += key_reach(&key_rows[i], tight) + text_width(words[i]);
            count++;
        }
    }
    double gap = count > 1 ? (PAGE_WIDE - used) / (count - 1) : KEY_GAP_MOST;
    return gap > KEY_GAP_MOST ? KEY_GAP_MOST : gap;
}

static unsigned uses_of(const struct page *page)
{
    unsigned uses = page->uses;
    for (size_t i = 0; i < page->galley->items.count; i++) {
        const struct placed *placed = &page->galley->items.at[i];
        uses |= placed->kind == PLACED_SCENE ? scene_key_uses(placed->scene) : 0;
    }
    return uses;
}

/* Samples and words along the key's line, from its left end. */
static void put_samples(const struct setter *setter, struct page *page, const struct paper *paper,
                        const struct text_block *const words[KEY_ROWS], bool tight)
{
    double gap = key_gap(words, tight);
    struct scene *samples = arena_new(setter->arena, struct scene);
    const double middle = 12;
    samples->width = PAGE_WIDE;
    samples->height = 2 * middle;
    double x = 0;
    for (int i = 0; i < KEY_ROWS; i++) {
        if (!words[i]) {
            continue;
        }
        const struct key_row *row = &key_rows[i];
        scene_key_sample(setter->arena, samples, row->class, vec2_of(x, middle),
                         tight ? row->tight : row->length);
        x += key_reach(row, tight);
        galley_text(page->galley, words[i], paper->margin + x, page->key, ROLE_TEXT);
        x += text_width(words[i]) + gap;
    }
    if (samples->items.count > 0) {
        galley_scene(page->galley, samples, paper->margin, page->key - 2.9 - middle);
    }
}

static void key_words(const struct setter *setter, unsigned uses, bool brief,
                      const struct text_block *words[KEY_ROWS])
{
    for (int i = 0; i < KEY_ROWS; i++) {
        const struct key_row *row = &key_rows[i];
        struct str word = str_of(scene_key_word(row->class, brief));
        words[i] = uses >> row->class & 1 ? words_set(setter, TYPE_NOTE, word, 0) : NULL;
    }
}

/* All that the page shows and no more, spread over its width; where that is too much for a line,
 * first the samples are shorter, then the words; who has the ball goes without saying first. */
static void put_key(const struct setter *setter, struct page *page, const struct paper *paper)
{
    const struct text_block *words[KEY_ROWS];
    unsigned uses = uses_of(page);
    key_words(setter, uses, false, words);
    bool tight = key_gap(words, false) < KEY_GAP_LEAST;
    if (tight && key_gap(words, true) < KEY_GAP_TIGHT) {
        key_words(setter, uses, true, words);
    }
    for (int i = 0; i < KEY_ROWS && key_gap(words, tight) < KEY_GAP_TIGHT; i++) {
        words[i] = NULL;
    }
    put_samples(setter, page, paper, words, tight);
}

/* The date stands in the middle of the page, or where it keeps off what stands at either end. */
static double date_middle(const struct paper *paper, double left, double date, double page)
{
    const double apart = 12;
    double least = paper->margin + left + apart + date / 2;
    double most = paper->width - paper->margin - page - apart - date / 2;
    return real_max(least, real_min(most, paper->width / 2));
}

void page_foot(const struct setter *setter, struct galley *galley, struct str words, size_t number,
               size_t count)
{
    const struct paper *paper = paper_of(setter->job->a4);
    double right = paper->width - paper->margin;
    double base = FOOT + paper->foot;
    galley_rule(galley, vec2_of(paper->margin, FOOT_RULE + paper->foot),
                vec2_of(right, FOOT_RULE + paper->foot), 0.6, ROLE_RULE);
    struct str foot = words_fit(setter, TYPE_NOTE, words, HEAD_SIDE, 1);
    const struct text_block *left = words_set(setter, TYPE_NOTE, foot, 0);
    struct str of =
        number > 0 ? str_format(setter->arena, "Page %zu of %zu", number, count) : STR("");
    const struct text_block *page = words_set(setter, TYPE_NOTE, of, 0);
    struct str when = words_fit(setter, TYPE_NOTE, setter->job->date_text, HEAD_DATE_WIDE, 1);
    const struct text_block *date = words_set(setter, TYPE_NOTE, when, 0);
    galley_text(galley, left, paper->margin, base, ROLE_SOFT);
    galley_text_middle(galley, date,
                       date_middle(paper, text_width(left), text_width(date), text_width(page)),
                       base, ROLE_SOFT);
    galley_text_end(galley, page, right, base, ROLE_SOFT);
}

/* "Continued: step 5; reads of step 2" */
static struct str contents_line(struct arena *arena, const struct page *page)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_text(&out, "Continued");
    int first = 0;
    int last = 0;
    for (size_t i = 0; i < page->bands.count; i++) {
        const struct band *band = &page->bands.at[i];
        if (band->kind == BAND_STEPS) {
            first = first ? first : band->first;
            last = band->last;
        }
    }
    const char *gap = ": ";
    if (first > 0) {
        strbuf_print(&out, first == last ? "%sstep %d" : "%ssteps %d", gap, first);
        if (first < last) {
            strbuf_print(&out, last - first == 1 ? " and %d" : " to %d", last);
        }
        gap = "; ";
    }
    int told = 0;
    for (size_t i = 0; i < page->bands.count; i++) {
        const struct band *band = &page->bands.at[i];
        if (band->kind == BAND_READS && band->first != told) {
            strbuf_print(&out, "%sthe ways on from step %d", gap, band->first);
            told = band->first;
            gap = "; ";
        }
    }
    strbuf_char(&out, '.');
    return strbuf_str(&out);
}

void page_finish(const struct setter *setter, struct page *page, const struct galley *caution)
{
    const struct paper *paper = paper_of(setter->job->a4);
    if (!page->first) {
        const struct text_block *line =
            words_set(setter, TYPE_ABOUT, contents_line(setter->arena, page), 0);
        galley_text(page->galley, line, paper->margin, page->about, ROLE_TEXT);
    }
    if (!page->keyless) {
        put_key(setter, page, paper);
    }
    galley_join(page->galley, caution, paper->margin, CAUTION_LAST + paper->foot - caution->height);
}

void page_close(const struct setter *setter, struct page *page, const struct galley *caution,
                size_t number, size_t count)
{
    page_finish(setter, page, caution);
    page_foot(setter, page->galley, page->head->foot, number, count);
}
