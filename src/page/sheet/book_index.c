/* SPDX-License-Identifier: MIT */
/* book_index: a book's index by action, formation, tag and player. Takes its plays with their page
 * numbers, gives pages without their feet: entries in three columns, every play a link. */
#include "page/sheet/book_parts.h"
#include "page/sheet/situation.h"

#include <stdlib.h>

#define COLUMNS 3
#define COLUMN 152.0
#define COLUMN_PITCH 176.0
#define INDENT 10.0
#define SECTION_LEAD 26.0 /* from an entry to the next section's heading */
/* From a section's rule, or the entry before, to the entry's baseline; the less where that spares a
 * page. */
static const double leads[] = {15, 13};
enum { LEADS = sizeof leads / sizeof *leads };
#define TO_RULE 6.0

/* What is looked up, and the plays it is in: their indices, rising. */
struct entry {
    struct str name;
    VEC(size_t) plays;
};
typedef VEC(struct entry) entry_list;

static void enter(struct arena *arena, entry_list *entries, struct str name, size_t play)
{
    struct entry *entry = NULL;
    for (size_t i = 0; i < entries->count && !entry; i++) {
        entry = str_equal_fold(entries->at[i].name, name) ? &entries->at[i] : NULL;
    }
    if (!entry) {
        VEC_PUSH(arena, entries, ((struct entry){.name = name}));
        entry = &entries->at[entries->count - 1];
    }
    if (entry->plays.count == 0 || entry->plays.at[entry->plays.count - 1] != play) {
        VEC_PUSH(arena, &entry->plays, play);
    }
}

/* ---- what there is to look up ---- */

static const char *action_of(enum verb verb)
{
    switch (verb) {
#define ACTION(name, verb)                                                                         \
    case VERB_##verb:                                                                              \
        return name;
#include "page/sheet/actions.def"
#undef ACTION
    default:
        return NULL;
    }
}

static const char *screen_of(enum screen_kind kind)
{
    static const char *const names[] = {
        [SCREEN_PLAIN] = "Screen",       [SCREEN_AWAY] = "Screen away",
        [SCREEN_DOWN] = "Down screen",   [SCREEN_BACK] = "Back screen",
        [SCREEN_CROSS] = "Cross screen", [SCREEN_FLARE] = "Flare screen",
        [SCREEN_BALL] = "Ball screen",   [SCREEN_DOUBLE] = "Double screen",
    };
    return names[kind];
}

static const char *pass_of(enum pass_kind kind)
{
    return kind == PASS_LOB ? "Lob" : kind == PASS_SKIP ? "Skip pass" : NULL;
}

struct visit {
    struct arena *arena;
    const struct sheet_job *job;
    const struct play *play;
    size_t index;
    entry_list *entries;
};

static void enter_name(const struct visit *visit, const char *name)
{
    if (name) {
        enter(visit->arena, visit->entries, str_of(name), visit->index);
    }
}

static void enter_action(const struct visit *visit, const struct task *task)
{
    enter_name(visit, action_of(task->verb));
    if (task->kind == TASK_SCREEN && task->verb != VERB_RE_SCREENS) {
        enter_name(visit, screen_of(task->screen));
    }
    if (task->kind == TASK_PASS) {
        enter_name(visit, pass_of(task->pass));
    }
}

/* "4 screens": by number; with names, by who plays there. In a drill a number is nobody's. */
static void enter_player(const struct visit *visit, const struct task *task)
{
    const char *does = task->kind == TASK_SHOOT    ? "shoots"
                       : task->kind == TASK_SCREEN ? "screens"
                       : task->kind == TASK_USE    ? "comes off a screen"
                                                   : NULL;
    if (!does || visit->play->is_drill || !body_is_attacker(task->who) ||
        body_number(task->who) == 0) {
        return;
    }
    const struct team *names = head_names(visit->job, visit->play);
    struct str name = names ? team_first_name(names, visit->play, task->who) : STR("");
    struct strbuf out;
    strbuf_init(&out, visit->arena);
    if (name.size > 0) {
        name = words_isolated(visit->arena, name);
        strbuf_print(&out, "%.*s (%d) %s", STR_ARG(name), body_number(task->who), does);
    } else {
        strbuf_print(&out, "Player %d %s", body_number(task->who), does);
    }
    enter(visit->arena, visit->entries, strbuf_str(&out), visit->index);
}

static void each_task(const struct visit *visit,
                      void (*what)(const struct visit *visit, const struct task *task))
{
    for (size_t i = 0; i < visit->play->steps.count; i++) {
        const struct step *step = &visit->play->steps.at[i];
        for (size_t k = 0; k < step->tasks.count; k++) {
            what(visit, &step->tasks.at[k]);
        }
        for (size_t b = 0; b < step->branches.count; b++) {
            for (size_t k = 0; k < step->branches.at[b].tasks.count; k++) {
                what(visit, &step->branches.at[b].tasks.at[k]);
            }
        }
    }
}

static void enter_actions(const struct visit *visit)
{
    each_task(visit, enter_action);
}

static void enter_players(const struct visit *visit)
{
    each_task(visit, enter_player);
}

static void enter_formation(const struct visit *visit)
{
    if (visit->play->formation >= 0) {
        struct str word = str_of(formation_at((size_t)visit->play->formation)->word);
        enter(visit->arena, visit->entries, str_capital(visit->arena, word), visit->index);
    }
}

/* One without a tag of the coach's by how it begins. */
static void enter_tags(const struct visit *visit)
{
    for (size_t i = 0; i < visit->play->tags.count; i++) {
        enter(visit->arena, visit->entries, situation_tag(visit->arena, visit->play->tags.at[i]),
              visit->index);
    }
    struct situation situation = situation_of(visit->arena, visit->play);
    if (visit->play->tags.count == 0 && situation.order < situation_count()) {
        enter(visit->arena, visit->entries, situation.word, visit->index); /* as on the card */
    }
}

static const struct {
    const char *title;
    void (*enter)(const struct visit *visit);
} sections[] = {{"By action", enter_actions},
                {"By formation", enter_formation},
                {"By tag", enter_tags},
                {"By player", enter_players}};
enum { SECTIONS = sizeof sections / sizeof *sections };

bool book_has_index(const struct setter *setter, const book_play_list *plays)
{
    entry_list entries = {0};
    for (size_t k = 0; k < plays->count && entries.count == 0; k++) {
        struct visit visit = {setter->arena, setter->job, plays->at[k].play, k, &entries};
        for (size_t i = 0; i < SECTIONS; i++) {
            sections[i].enter(&visit);
        }
    }
    return entries.count > 0;
}

struct str book_index_words(struct arena *arena, const struct sheet_job *job,
                            const struct play *play)
{
    entry_list entries = {0};
    struct visit visit = {arena, job, play, 0, &entries};
    enter_tags(&visit);
    enter_formation(&visit);
    enter_actions(&visit);
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < entries.count; i++) {
        strbuf_print(&out, "%s%.*s", i > 0 ? ", " : "", STR_ARG(entries.at[i].name));
    }
    return strbuf_str(&out);
}

static int by_name(const void *a, const void *b)
{
    return str_compare(((const struct entry *)a)->name, ((const struct entry *)b)->name);
}

/* ---- a long column ---- */

/* The plays of an entry, "Lantern 7, Tollgate 9", each with its link; the last baseline. */
static double put_plays(const struct setter *setter, struct galley *column,
                        const struct entry *entry, const book_play_list *plays, double base)
{
    const double leading = type_leading(TYPE_POINT), gap = 4;
    double x = INDENT;
    base += leading;
    for (size_t i = 0; i < entry->plays.count; i++) {
        size_t index = entry->plays.at[i];
        const struct book_play *play = &plays->at[index];
        struct str name = words_isolated(setter->arena, play->play->name);
        struct str text = str_format(setter->arena, "%.*s\xC2\xA0%zu%s", STR_ARG(name), play->page,
                                     i + 1 < entry->plays.count ? "," : "");
        const struct text_block *words = words_set(setter, TYPE_POINT, text, COLUMN - INDENT);
        if (x > INDENT && x + text_width(words) > COLUMN) {
            x = INDENT;
            base += leading;
        }
        galley_link(column, vec2_of(x, base - 8), vec2_of(x + text_width(words), base + 3),
                    book_play_place(setter->arena, index));
        base = galley_text(column, words, x, base, ROLE_TEXT);
        x = text_lines(words) > 1 ? COLUMN : x + text_width(words) + gap;
    }
    return base;
}

static double put_section(const struct setter *setter, struct galley *column, const char *title,
                          entry_list *entries, const book_play_list *plays, double lead,
                          double base)
{
    if (entries->count == 0) {
        return base;
    }
    qsort(entries->at, entries->count, sizeof *entries->at, by_name);
    base += base > 0 ? SECTION_LEAD : 8;
    galley_text(column, words_set(setter, TYPE_HEADING, str_of(title), 0), 0, base, ROLE_TEXT);
    galley_keep(column);
    base += TO_RULE;
    galley_rule(column, vec2_of(0, base), vec2_of(COLUMN, base), 0.9, ROLE_INK);
    galley_keep(column);
    for (size_t i = 0; i < entries->count; i++) {
        const struct entry *entry = &entries->at[i];
        const struct text_block *words = words_set(setter, TYPE_SMALL_HEADING, entry->name, COLUMN);
        base = galley_text(column, words, 0, base + lead, ROLE_TEXT);
        galley_keep(column);
        base = put_plays(setter, column, entry, plays, base);
    }
    return base;
}

static struct galley *set_entries(const struct setter *setter, const book_play_list *plays,
                                  double lead)
{
    struct galley *column = galley_new(setter->arena);
    double base = 0;
    for (size_t i = 0; i < SECTIONS; i++) {
        entry_list entries = {0};
        for (size_t k = 0; k < plays->count; k++) {
            struct visit visit = {setter->arena, setter->job, plays->at[k].play, k, &entries};
            sections[i].enter(&visit);
        }
        base = put_section(setter, column, sections[i].title, &entries, plays, lead, base);
    }
    return column;
}

/* ---- pages ---- */

/* The name of the entry that `rest` goes on with, as it stands over what was parted off; NULL: it
 * begins with one. */
static const struct text_block *name_left(const struct galley *column, const struct galley *rest)
{
    const struct text_block *name = NULL;
    for (size_t i = 0; i < rest->items.count; i++) {
        const struct placed *placed = &rest->items.at[i];
        if (placed->kind == PLACED_TEXT) {
            if (placed->x < INDENT) {
                return NULL;
            }
            break;
        }
    }
    for (size_t i = 0; i < column->items.count; i++) {
        const struct placed *placed = &column->items.at[i];
        name = placed->kind == PLACED_TEXT && placed->x < INDENT ? placed->text : name;
    }
    return name;
}

/* An entry that goes on in the next column has its name again. */
static struct galley *named_again(const struct galley *column, const struct galley *rest)
{
    const struct text_block *name = name_left(column, rest);
    struct galley *all = galley_new(rest->arena);
    double base = name ? galley_text(all, name, 0, 8, ROLE_TEXT) : 0;
    if (name) {
        galley_keep(all);
    }
    galley_join(all, rest, 0, name ? base + 4 : 0);
    return all;
}

/* Parts off what goes into columns so high; what is left, or NULL. */
static struct galley *fill_columns(const struct setter *setter, const struct galley *entries,
                                   double height, struct galley *into, double x, double y)
{
    struct galley *rest = galley_new(setter->arena);
    galley_join(rest, entries, 0, 0);
    for (int i = 0; i < COLUMNS && rest; i++) {
        struct galley *column = rest;
        rest = column->height > height ? galley_part(column, height) : NULL;
        if (into) {
            galley_join(into, column, x + i * COLUMN_PITCH, y);
        }
        rest = rest && rest->items.count > 0 ? named_again(column, rest) : NULL;
    }
    return rest;
}

/* The least height in which the columns take it all; `most` when they do not. */
static double even_height(const struct setter *setter, const struct galley *entries, double most)
{
    const double step = 12;
    double height = entries->height / COLUMNS + step;
    if (height > most) {
        return most;
    }
    struct arena_mark mark = arena_mark(setter->arena);
    while (height < most && fill_columns(setter, entries, height, NULL, 0, 0)) {
        height += step;
    }
    arena_release(setter->arena, mark);
    return height < most ? height : most;
}

static void set_index(const struct setter *setter, const book_play_list *plays, double lead,
                      galley_list *pages)
{
    const struct paper *paper = paper_of(setter->job->a4);
    struct galley *rest = set_entries(setter, plays, lead);
    struct head_words *head = arena_new(setter->arena, struct head_words);
    *head = (struct head_words){.sheet = book_sheet_words(setter),
                                .title = STR("Index"),
                                .about = STR("The numbers are pages.")};
    const struct galley *none = galley_new(setter->arena);
    for (bool first = true; rest && rest->items.count > 0; first = false) {
        struct page page = page_open(setter, head, none, first);
        if (first) {
            galley_place(page.galley, paper->margin, HEAD_TOP, PLACE_INDEX);
        }
        double height = even_height(setter, rest, page.bottom - page.y);
        rest = fill_columns(setter, rest, height, page.galley, paper->margin, page.y);
        page_finish(setter, &page, none);
        VEC_PUSH(setter->arena, pages, page.galley);
    }
}

void book_index(const struct setter *setter, const book_play_list *plays, galley_list *pages)
{
    galley_list best = {0};
    for (size_t i = 0; i < LEADS; i++) {
        galley_list tried = {0};
        set_index(setter, plays, leads[i], &tried);
        best = i == 0 || tried.count < best.count ? tried : best;
    }
    for (size_t i = 0; i < best.count; i++) {
        VEC_PUSH(setter->arena, pages, best.at[i]);
    }
}
