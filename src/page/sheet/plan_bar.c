/* SPDX-License-Identifier: MIT */
/* plan_bar: see plan_bar.h. */
#include "page/sheet/plan_bar.h"

#include "page/sheet/bands.h"
#include "page/sheet/clock.h"

#define BAR 16.0
#define FRAME 0.9
#define FRAME_SHARE 0.12  /* of an item's length: a short one has a thinner frame */
#define AXIS (BAR + 12.0) /* baseline of the times under it */
#define KEY_BASE 29.0     /* further down: of the key's words */
#define BOX_WIDE 12.0
#define BOX_HIGH 9.0

static const struct kind_row {
    enum filling filling;
    const char *word;
} kinds[] = {
    {FILL_OPEN, "Warm-up, cool-down"},
    {FILL_LINED, "Skill, no defenders"},
    {FILL_HATCH, "Team, no contact"},
    {FILL_DARK, "Live, with contact"},
    {FILL_DOTS, "Water"},
};
enum { KINDS = sizeof kinds / sizeof *kinds };

static enum filling filling_of(const struct plan_item *item)
{
    switch (item->content) {
    case CONTENT_WARM_UP:
    case CONTENT_COOL_DOWN:
    case CONTENT_TALK:
        return item->contact ? FILL_DARK : FILL_OPEN;
    case CONTENT_WATER:
        return FILL_DOTS;
    default:
        break;
    }
    bool team = item->content == CONTENT_PLAY || item->against.size > 0;
    return item->contact ? FILL_DARK : team ? FILL_HATCH : FILL_LINED;
}

static void put_middle(const struct setter *setter, struct galley *galley, enum type type,
                       struct str text, double x, double base, enum role role, bool on_white)
{
    const struct text_block *words = words_set(setter, type, text, 0);
    double half = text_width(words) / 2;
    if (on_white) {
        galley_box(galley, vec2_of(x - half - 1.5, base - 7.5), vec2_of(x + half + 1.5, base + 1.8),
                   0, ROLE_INK, FILL_OPEN);
    }
    galley_text_middle(galley, words, x, base, role);
}

/* The bar's whole length in minutes. */
static double length_of(const struct practice *practice)
{
    return practice->planned > practice->booked ? practice->planned : practice->booked;
}

/* The middle of an item, or of the longer part of it where the time booked ends in it: a line
 * stands there. */
static double middle_of(double from, double to, double end, double *room)
{
    bool parted = end > from && end < to;
    bool left = end - from > to - end;
    from = parted && !left ? end : from;
    to = parted && left ? end : to;
    *room = to - from;
    return (from + to) / 2;
}

/* Everybody comes to each station for its share of the time, as the last row of the plan has it. */
static void add_sums(double sums[KINDS], const struct plan_item *item)
{
    struct plan_item rest = *item;
    double all = 0;
    for (size_t i = 0; i < item->stations.count; i++) {
        all += item->stations.at[i].minutes;
    }
    double share = all > item->minutes ? item->minutes / all : 1; /* more than there is time for */
    for (size_t i = 0; i < item->stations.count; i++) {
        const struct plan_item *station = &item->stations.at[i];
        sums[filling_of(station)] += station->minutes * share;
        rest.minutes -= station->minutes * share;
        rest.contact = false;
    }
    sums[filling_of(&rest)] += real_max(0, rest.minutes);
}

/* Stations that are done at once stand over each other, of each kind so much as has its share. */
static void put_box(struct galley *galley, const struct plan_item *item, double from, double to,
                    double frame)
{
    double sums[KINDS] = {0}, y = 0;
    add_sums(sums, item);
    for (int i = 0; i < KINDS; i++) {
        double high = item->minutes > 0 ? BAR * sums[kinds[i].filling] / item->minutes : 0;
        double end = real_min(BAR, y + high);
        if (end > y) {
            galley_box(galley, vec2_of(from, y), vec2_of(to, end), frame, ROLE_INK,
                       kinds[i].filling);
        }
        y = end;
    }
}

/* What its minutes are written on: dark or open where all of it is. */
static enum filling fullest_of(const struct plan_item *item)
{
    enum filling filling = filling_of(item);
    for (size_t i = 0; i < item->stations.count; i++) {
        filling = filling_of(&item->stations.at[i]) == filling ? filling : FILL_HATCH;
    }
    return filling;
}

static void put_items(const struct setter *setter, struct galley *galley,
                      const struct practice *practice, double scale)
{
    double end = practice->booked * scale;
    for (size_t i = 0; i < practice->items.count; i++) {
        const struct plan_item *item = &practice->items.at[i];
        double from = item->begins * scale, to = (item->begins + item->minutes) * scale;
        double room, middle = middle_of(from, to, end, &room);
        enum filling filling = fullest_of(item);
        double frame =
            real_min(FRAME, FRAME_SHARE * (to - from)); /* else many short items are black */
        put_box(galley, item, from, to, frame);
        struct str minutes = plan_minutes(setter->arena, item->minutes);
        if (text_width(words_set(setter, TYPE_DISC, minutes, 0)) + 4 <= room) {
            put_middle(setter, galley, TYPE_DISC, minutes, middle, BAR / 2 + 2.9,
                       filling == FILL_DARK ? ROLE_ORDER_TEXT : ROLE_TEXT,
                       filling != FILL_OPEN && filling != FILL_DARK);
        }
    }
    if (practice->booked > practice->planned) { /* free time, left empty */
        galley_box(galley, vec2_of(practice->planned * scale, 0), vec2_of(end, BAR), 0.5, ROLE_RULE,
                   FILL_OPEN);
    } else if (practice->booked > 0 && practice->booked < practice->planned) {
        galley_rule(galley, vec2_of(end, -4), vec2_of(end, BAR + 4), 2, ROLE_WARNING);
    }
}

/* Every quarter of an hour by the clock, and both ends. */
static void put_axis(const struct setter *setter, struct galley *galley,
                     const struct practice *practice, double scale)
{
    const double room = 34;
    double quarter = 15;
    while (quarter * scale < room) {
        quarter *= 2;
    }
    bool of_day = practice->starts >= 0;
    double start = of_day ? practice->starts : 0, end = start + length_of(practice);
    const struct text_block *first =
        words_set(setter, TYPE_NOTE, clock_full(setter, start, of_day), 0);
    const struct text_block *last =
        words_set(setter, TYPE_NOTE, clock_full(setter, end, of_day), 0);
    galley_text(galley, first, 0, AXIS, ROLE_SOFT);
    galley_text_end(galley, last, PAGE_WIDE, AXIS, ROLE_SOFT);
    for (double at = ((int)(start / quarter) + 1) * quarter; at < end; at += quarter) {
        double x = (at - start) * scale;
        galley_rule(galley, vec2_of(x, BAR), vec2_of(x, BAR + 3), 0.6, ROLE_SOFT);
        if (x > text_width(first) + room / 2 && x < PAGE_WIDE - text_width(last) - room / 2) {
            put_middle(setter, galley, TYPE_NOTE, clock_time(setter, at, of_day), x, AXIS,
                       ROLE_SOFT, false);
        }
    }
}

/* Talks have the bar of the warm-up; they are named where there are any. */
static struct str kind_words(const struct setter *setter, const struct practice *practice, int kind)
{
    struct str word = str_of(kinds[kind].word);
    bool talk = false;
    for (size_t i = 0; i < practice->items.count; i++) {
        talk = talk || practice->items.at[i].content == CONTENT_TALK;
    }
    return talk && kinds[kind].filling == FILL_OPEN
               ? str_format(setter->arena, "%.*s, talk", STR_ARG(word))
               : word;
}

static void put_key(const struct setter *setter, struct galley *galley,
                    const struct practice *practice)
{
    double sums[KINDS] = {0};
    for (size_t i = 0; i < practice->items.count; i++) {
        add_sums(sums, &practice->items.at[i]);
    }
    double used = 0;
    int count = 0;
    for (int i = 0; i < KINDS; i++) {
        if (sums[kinds[i].filling] > 0) {
            const struct text_block *words =
                words_set(setter, TYPE_POINT, kind_words(setter, practice, i), 0);
            used += BOX_WIDE + 4 + text_width(words);
            count++;
        }
    }
    double gap = count > 1 ? (PAGE_WIDE - used) / (count - 1) : 0;
    gap = gap > 24 ? 24 : gap;
    double x = 0, base = AXIS + KEY_BASE - 12;
    for (int i = 0; i < KINDS; i++) {
        double minutes = sums[kinds[i].filling];
        if (minutes <= 0) {
            continue;
        }
        galley_box(galley, vec2_of(x, base - BOX_HIGH + 1), vec2_of(x + BOX_WIDE, base + 1), FRAME,
                   ROLE_INK, kinds[i].filling);
        const struct text_block *words =
            words_set(setter, TYPE_POINT, kind_words(setter, practice, i), 0);
        galley_text(galley, words, x + BOX_WIDE + 4, base, ROLE_TEXT);
        struct str sum = str_format(setter->arena, "%.*s\xC2\xA0min",
                                    STR_ARG(plan_minutes(setter->arena, minutes)));
        galley_text(galley, words_set(setter, TYPE_DISC, sum, 0), x + BOX_WIDE + 4, base + 10.5,
                    ROLE_TEXT);
        x += BOX_WIDE + 4 + text_width(words) + gap;
    }
}

struct galley *plan_bar(const struct setter *setter, const struct practice *practice)
{
    struct galley *galley = galley_new(setter->arena);
    double length = length_of(practice);
    if (length <= 0) {
        return galley;
    }
    double scale = PAGE_WIDE / length;
    put_items(setter, galley, practice, scale);
    put_axis(setter, galley, practice, scale);
    put_key(setter, galley, practice);
    return galley;
}
