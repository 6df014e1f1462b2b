/* SPDX-License-Identifier: MIT */
/* card_cell: see card_cell.h. Takes a diagram, gives a card; must not know where on a page. */
#include "page/sheet/card_cell.h"

#include "language/tell/tell.h"

#define CALL_GAP 8.0 /* a situation and a call on one line keep so far apart */
#define TITLE_PITCH 10.0
#define TAIL 3.0         /* a line reaches so far under its baseline */
#define LEAST_SHARE 0.84 /* of the width a floor may be drawn, where that saves a card's height */

enum { BUSY_NUMBERS = 4, BUSY_BESIDE = 3 }; /* of a busy picture, at the least (ours) */
#define SIDE_GAP 5.0                        /* on a wide card, from its words to its diagram */
#define SIDE_TOP 6.0                        /* and from its edge */

/* The floor may be cut to where its arc just ends; before it is cut further, words stand closer. */
enum { NAME_LINES_MOST = 16, LESS_MOST = 1 };

static const struct card_size sizes[] = {
    {12, 3, 168, 157.5, 8, 152, 94, 14, 12.5, 4.5, 12, TYPE_CARD_NAME},
    {20, 4, 126, 126.5, 5.4, 115.2, 82, 12.5, 10.5, 4.5, 9, TYPE_SMALL_CARD_NAME},
};

const struct card_size *card_size_find(int per_page)
{
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        if (sizes[i].per_page == per_page) {
            return &sizes[i];
        }
    }
    return NULL;
}

/* What it says over its diagram. */
struct card_words {
    struct str situation;
    bool alone; /* the play has no other card */
};
/* A card being filled from the top down. */
struct filling_card {
    const struct setter *setter;
    const struct card_size *size;
    const struct diagram *diagram;
    struct galley *galley;
    double width; /* inside the margins */
    double base;  /* the last baseline, or where the diagram ends */
    double name_width;
    size_t less; /* how many steps less of the floor, or smaller, it is than it might be */
};

static const struct play *play_of(const struct filling_card *card)
{
    return card->diagram->segment->play;
}

/* What it is for at the left; the call at the right, or under it where both are too long. */
static void put_situation(struct filling_card *card, struct str situation, double base)
{
    const struct setter *setter = card->setter;
    double left = card->size->inside, right = left + card->width;
    const struct text_block *words = words_set(setter, TYPE_NOTE, situation, card->width);
    card->base = galley_text(card->galley, words, left, base, ROLE_SOFT);
    struct str call = play_of(card)->call;
    if (call.size == 0) {
        return;
    }
    call = str_format(setter->arena, "\xE2\x80\x9C%.*s\xE2\x80\x9D", STR_ARG(call));
    const struct text_block *called = words_set(setter, TYPE_CALL, call, card->width);
    if (text_lines(words) == 1 && text_lines(called) == 1 &&
        text_width(words) + CALL_GAP + text_width(called) <= card->width) {
        galley_text_end(card->galley, called, right, card->base, ROLE_TEXT);
    } else {
        card->base = galley_text(card->galley, called, left, card->base + type_leading(TYPE_CALL),
                                 ROLE_TEXT);
    }
}

/* "Lantern 2a"; returns the name in full when it had to be shortened. */
static struct str put_name(struct filling_card *card, bool alone)
{
    const struct setter *setter = card->setter;
    struct str name = words_isolated(setter->arena, play_of(card)->name);
    struct str label = alone ? STR("") : card->diagram->label;
    struct str whole = label.size > 0 ? str_format(setter->arena, "%.*s\xC2\xA0%.*s", STR_ARG(name),
                                                   STR_ARG(label))
                                      : name;
    struct str shown = words_fit(setter, card->size->name, whole, card->width, NAME_LINES_MOST);
    bool shortened = !str_equal(shown, whole);
    if (shortened && label.size > 0) { /* the number is not what is left out */
        shown = str_format(setter->arena, "%.*s %.*s", STR_ARG(shown), STR_ARG(label));
    }
    const struct text_block *words = words_set(setter, card->size->name, shown, card->width);
    card->name_width = text_width(words);
    card->base = galley_text(card->galley, words, card->size->inside,
                             card->base + card->size->to_name, ROLE_TEXT);
    return shortened ? whole : STR("");
}

/* Of a read: when it is played. */
static void put_branch(struct filling_card *card)
{
    const struct play *play = play_of(card);
    if (card->diagram->branch < 0) {
        return;
    }
    const struct step *step = &play->steps.at[card->diagram->step];
    struct str told = tell_branch(card->setter->arena, &step->branches.at[card->diagram->branch]);
    const struct text_block *words = words_set(card->setter, TYPE_NOTE, told, card->width);
    card->base =
        galley_text(card->galley, words, card->size->inside, card->base + TITLE_PITCH, ROLE_TEXT);
}

static const struct text_block *caution_words(const struct filling_card *card)
{
    const struct text_block *words = words_set(card->setter, TYPE_NOTE, tell_card_caution(), 0);
    return text_width(words) <= card->width
               ? words
               : words_set(card->setter, TYPE_NOTE, STR("Feet still, elbows in.\nHead hit: out."),
                           card->width);
}

static size_t rows_for(const struct filling_card *card, double height)
{
    double caution =
        card->size->to_caution + text_height(caution_words(card)) - type_leading(TYPE_NOTE) + TAIL;
    double whole = card->base + card->size->to_diagram + height + caution;
    return (size_t)((whole - 1e-6) / card->size->height) + 1;
}

/* Have many of its numbers no room on their lines, which are short beside them? */
static bool is_busy(const struct scene *scene)
{
    int numbers = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool disc = item->class == CLASS_ORDER && item->shape == ITEM_CIRCLE && !item->casing;
        numbers += disc ? 1 : 0;
    }
    return numbers >= BUSY_NUMBERS && scene->labels_beside >= BUSY_BESIDE;
}

static struct scene_options picture_options(double width, double below)
{
    return (struct scene_options){.width = width,
                                  .theme = THEME_PRINT,
                                  .accent = BODY_NONE,
                                  .plain = true,
                                  .order = true,
                                  .below = below};
}

/* With less of the floor where nobody is, or a little smaller, where that saves a card's height. */
static const struct scene *fit_scene(struct filling_card *card, size_t *rows)
{
    static const struct {
        double below, share; /* feet of floor at least; of the width */
    } ways[] = {{27.6, 1}, {24, 1}, {21, 1}, {21, (1 + LEAST_SHARE) / 2}, {21, LEAST_SHARE}};
    struct scene_options chosen = {0};
    *rows = 0;
    for (size_t i = 0; i < sizeof ways / sizeof *ways && *rows != 1; i++) {
        struct scene_options options =
            picture_options(card->size->diagram * ways[i].share, ways[i].below);
        size_t needs = rows_for(card, scene_height(card->setter->arena, card->diagram, &options));
        if (*rows == 0 || needs < *rows) {
            *rows = needs;
            chosen = options;
            card->less = i;
        }
    }
    return scene_make(card->setter->arena, card->diagram, &chosen);
}

/* What it is for stands at the end of the name's line: false where there is no room for that. */
static bool put_situation_beside(struct filling_card *card, struct str situation)
{
    const struct text_block *words = words_set(card->setter, TYPE_NOTE, situation, 0);
    double room = card->width - card->name_width - CALL_GAP;
    if (play_of(card)->call.size > 0 || text_width(words) > room) {
        return false;
    }
    galley_text_end(card->galley, words, card->size->inside + card->width, card->base, ROLE_SOFT);
    return true;
}

/* Its name and what it is for, and what does not fit of the name. Where they are one line or two
 * from card to card, the name leads in both. */
static struct str put_head(struct filling_card *card, const struct card_words *words)
{
    bool small = card->size->name == TYPE_SMALL_CARD_NAME;
    if (small) {
        card->base = card->size->first - card->size->to_name + 1;
    } else {
        put_situation(card, words->situation, card->size->first);
    }
    struct str whole = put_name(card, words->alone);
    if (small) {
        put_situation(card, words->situation, card->base + TITLE_PITCH);
    }
    return whole;
}

/* `tight`: in as few lines as can be; one of no rows when that cannot be. */
static struct card_cell make(const struct setter *setter, const struct card_size *size,
                             const struct diagram *diagram, const struct card_words *words,
                             bool tight)
{
    struct filling_card card = {.setter = setter,
                                .size = size,
                                .diagram = diagram,
                                .galley = galley_new(setter->arena),
                                .width = size->width - 2 * size->inside};
    struct card_cell cell = {.galley = card.galley, .columns = 1};
    if (tight) {
        card.base = size->first - size->to_name + 1;
        cell.whole = put_name(&card, words->alone);
    } else {
        cell.whole = put_head(&card, words);
    }
    if (tight && !put_situation_beside(&card, words->situation)) {
        return cell;
    }
    put_branch(&card);
    const struct scene *scene = fit_scene(&card, &cell.rows);
    cell.less = card.less;
    cell.busy = is_busy(scene);
    double top = card.base + size->to_diagram;
    galley_scene(card.galley, scene, size->inside + (card.width - scene->width) / 2, top);
    galley_text(card.galley, caution_words(&card), size->inside,
                top + scene->height + size->to_caution, ROLE_TEXT);
    return cell;
}

/* The largest picture beside the words of a wide card; NULL: none is as high as the card alone. */
static const struct scene *side_scene(struct filling_card *card, double width)
{
    static const double below[] = {27.6, 24, 21};
    for (size_t i = 0; i < sizeof below / sizeof *below; i++) {
        struct scene_options options = picture_options(width, below[i]);
        if (scene_height(card->setter->arena, card->diagram, &options) <=
            card->size->height - 2 * SIDE_TOP) {
            return scene_make(card->setter->arena, card->diagram, &options);
        }
    }
    return NULL;
}

/* Two cards wide, its words at the left of its diagram; one of no rows when they have no room. */
static struct card_cell make_wide(const struct setter *setter, const struct card_size *size,
                                  const struct diagram *diagram, const struct card_words *words)
{
    struct filling_card card = {.setter = setter,
                                .size = size,
                                .diagram = diagram,
                                .galley = galley_new(setter->arena),
                                .width = size->side};
    struct card_cell cell = {.galley = card.galley, .columns = 2};
    double left = size->inside + size->side + SIDE_GAP;
    cell.whole = put_head(&card, words);
    put_branch(&card);
    const struct text_block *caution = caution_words(&card);
    double first = size->height - SIDE_TOP - text_height(caution) + type_leading(TYPE_NOTE) - TAIL;
    const struct scene *scene = side_scene(&card, 2 * size->width - size->inside - left);
    if (!scene || card.base + size->to_caution > first) {
        return (struct card_cell){0};
    }
    cell.rows = 1;
    galley_scene(card.galley, scene, left, (size->height - scene->height) / 2);
    galley_text(card.galley, caution, size->inside, first, ROLE_TEXT);
    return cell;
}

struct card_cell card_cell_make(const struct setter *setter, const struct card_size *size,
                                const struct diagram *diagram, struct str situation, bool alone)
{
    const struct card_words words = {situation, alone};
    struct card_cell cell = make(setter, size, diagram, &words, false);
    if (cell.rows > 1 || cell.less > LESS_MOST) {
        struct card_cell tight = make(setter, size, diagram, &words, true);
        bool larger = tight.rows == cell.rows && tight.less < cell.less;
        cell = tight.rows > 0 && (tight.rows < cell.rows || larger) ? tight : cell;
    }
    struct card_cell wide = cell.busy ? make_wide(setter, size, diagram, &words) : cell;
    return wide.rows > 0 && wide.rows <= cell.rows ? wide : cell;
}
