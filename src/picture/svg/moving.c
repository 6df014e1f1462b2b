/* SPDX-License-Identifier: MIT */
/* moving: groups of marks with keys as declarative animation. Takes a moving picture, gives bytes.
 * Numbers are as short as the eye allows: whole quarters of a point, times in ticks. What is played
 * once begins when its first key says; what begins again has everything told on the whole clock, so
 * that nothing can drift apart. Must not know plays or runs. */
#include "picture/svg/moving.h"

#include <math.h>

#include "picture/svg/element.h"

#define TRAIL ".55" /* opacity */
/* A line is one dash, which is longer than any floor, and is erased as that begins further along.
 */
#define ERASED "stroke-dasharray=\"9999\""

struct reel {
    struct output out;
    const struct moving *moving;
    bool loop;
    double until;  /* s: what is being written is not seen any more */
    double length; /* points, of the line that is being erased */
};

/* ---- numbers ---- */

/* ".5" for 0.5: a fraction without its zero. */
static void put_short(struct writer *writer, double value, int decimals)
{
    char text[NUMBER_MOST];
    size_t size = number_print(text, value, decimals, false);
    bool minus = size > 0 && text[0] == '-';
    const char *digits = text + minus;
    size -= minus;
    if (size > 1 && digits[0] == '0') {
        digits++;
        size--;
    }
    writer_text(writer, minus ? "-" : "");
    writer_bytes(writer, digits, size);
}

/* Seconds: what a clock value without a unit is. */
static void put_time(struct reel *reel, const char *name, double t, int decimals)
{
    writer_text(reel->out.writer, " ");
    writer_text(reel->out.writer, name);
    writer_text(reel->out.writer, "=\"");
    put_short(reel->out.writer, t, decimals);
    writer_text(reel->out.writer, "\"");
}

/* ---- animations ---- */

static void open_animation(struct reel *reel, const char *element, const char *attribute)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, "<");
    writer_text(writer, element);
    writer_text(writer, " attributeName=\"");
    writer_text(writer, attribute);
    writer_text(writer, "\"");
}

/* What comes and goes, and lines that are erased, do it to a hundredth of a second; what is told on
 * the whole clock, where the shares of it are ticks, has it to a thousandth. */
enum { DECIMALS = 2, WHOLE_DECIMALS = 3 };

static double hundredths(double t)
{
    return floor(t * 100 + 0.5) / 100;
}

/* From `begin` to `end`: once, and what it ends with stays where it is seen longer; or all the time
 * again and again. */
static void close_animation(struct reel *reel, double begin, double end)
{
    if (begin > 0) {
        put_time(reel, "begin", begin, DECIMALS);
    }
    bool whole = begin <= 0 && end > reel->moving->duration - reel->moving->tick / 2;
    put_time(reel, "dur", whole ? end : hundredths(end) - hundredths(begin),
             whole ? WHOLE_DECIMALS : DECIMALS);
    bool stays = end < reel->until - reel->moving->tick / 2;
    writer_text(reel->out.writer, reel->loop ? " repeatCount=\"indefinite\"/>"
                                  : stays    ? " fill=\"freeze\"/>"
                                             : "/>");
}

typedef void value_put(const struct reel *reel, struct vec2 at);

static void put_place(const struct reel *reel, double points)
{
    put_short(reel->out.writer, svg_length(&reel->out, points), 0);
}

static void value_point(const struct reel *reel, struct vec2 at)
{
    put_place(reel, at.x);
    writer_text(reel->out.writer, " ");
    put_place(reel, at.y);
}

static void value_erased(const struct reel *reel, struct vec2 at)
{
    put_place(reel, -at.x * reel->length);
}

static void value_x(const struct reel *reel, struct vec2 at)
{
    put_place(reel, at.x);
}

static void value_y(const struct reel *reel, struct vec2 at)
{
    put_place(reel, at.y);
}

/* The stretch of the clock that an animation is told on: a way on the whole of it, so that all its
 * times are ticks. */
struct stretch {
    double begin, end;
    int decimals; /* of a share of it */
};

static struct stretch stretch_of(const struct reel *reel, const moving_keys *keys, bool way)
{
    const struct moving *moving = reel->moving;
    double first = keys->at[0].t, last = keys->at[keys->count - 1].t;
    bool whole = reel->loop || way || last <= first ||
                 (first < moving->tick / 2 && last > moving->duration - moving->tick / 2);
    if (whole) {
        return (struct stretch){0, moving->duration, moving->decimals};
    }
    return (struct stretch){first, last, last - first > 1 ? 3 : 2};
}

/* The keys on a stretch; where they do not reach its ends, what they begin and end with holds
 * there.
 */
struct key_row {
    const moving_keys *keys;
    struct stretch stretch;
    bool early; /* the stretch begins before the first */
    size_t count;
};

static struct key_row row_of(const struct reel *reel, const moving_keys *keys, bool way)
{
    struct key_row row = {.keys = keys, .stretch = stretch_of(reel, keys, way)};
    double tick = reel->moving->tick / 2;
    bool late = keys->at[keys->count - 1].t < row.stretch.end - tick;
    row.early = keys->at[0].t > row.stretch.begin + tick;
    row.count = keys->count + row.early + late;
    return row;
}

static struct vec2 row_place(const struct key_row *row, size_t index)
{
    size_t last = row->keys->count - 1;
    index -= index > 0 && row->early;
    return row->keys->at[index > last ? last : index].at;
}

/* The share of the stretch. */
static double row_share(const struct key_row *row, size_t index)
{
    const struct stretch *stretch = &row->stretch;
    if (index == 0 || index + 1 == row->count) {
        return index == 0 ? 0 : 1;
    }
    double t = row->keys->at[index - row->early].t;
    return real_clamp((t - stretch->begin) / (stretch->end - stretch->begin), 0, 1);
}

static void put_row(struct reel *reel, const struct key_row *row, value_put *put)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, " values=\"");
    for (size_t i = 0; i < row->count; i++) {
        writer_text(writer, i ? ";" : "");
        put(reel, row_place(row, i));
    }
    writer_text(writer, "\"");
    if (row->count <= 2) {
        return; /* evenly from the one to the other */
    }
    writer_text(writer, " keyTimes=\"");
    for (size_t i = 0; i < row->count; i++) {
        writer_text(writer, i ? ";" : "");
        put_short(writer, row_share(row, i), row->stretch.decimals);
    }
    writer_text(writer, "\"");
}

static void animate_keys(struct reel *reel, const char *element, const char *attribute,
                         const moving_keys *keys, value_put *put)
{
    struct key_row row = row_of(reel, keys, put == value_point);
    open_animation(reel, element, attribute);
    put_row(reel, &row, put);
    close_animation(reel, row.stretch.begin, row.stretch.end);
}

/* A line from its start, by its length. */
static void animate_erased(struct reel *reel, const struct moving_group *group)
{
    reel->length = group->length;
    animate_keys(reel, "animate", "stroke-dashoffset", &group->erased, value_erased);
}

/* Does it stand in one place all the time? */
static bool stands(const moving_keys *keys)
{
    for (size_t i = 1; i < keys->count; i++) {
        if (!vec2_near(keys->at[i].at, keys->at[0].at, MOVING_GRAIN / 2)) {
            return false;
        }
    }
    return keys->count > 0;
}

/* ---- what comes and goes ---- */

static bool to_the_end(const struct reel *reel, const struct moving_show *show)
{
    return show->to > reel->moving->duration;
}

/* Is it there from the beginning to the end? */
static bool always(const struct reel *reel, const struct moving_show *show, size_t count)
{
    return count == 0 || (count == 1 && show->from <= 0 && to_the_end(reel, show));
}

/* Seen in some stretches only, of an element that is `off` by itself. */
static void seen_once(struct reel *reel, const char *attribute, const char *on,
                      const struct moving_show *show, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        open_animation(reel, "set", attribute);
        writer_text(reel->out.writer, " to=\"");
        writer_text(reel->out.writer, on);
        writer_text(reel->out.writer, "\"");
        if (show[i].from > 0) {
            put_time(reel, "begin", show[i].from, DECIMALS);
        }
        if (!to_the_end(reel, &show[i])) {
            put_time(reel, "end", show[i].to, DECIMALS);
        }
        writer_text(reel->out.writer, "/>");
    }
}

/* The same again and again. */
static void seen_again(struct reel *reel, const char *attribute, const char *on, const char *off,
                       const struct moving_show *show, size_t count)
{
    struct writer *writer = reel->out.writer;
    double all = reel->moving->duration;
    bool first = show[0].from <= 0;
    open_animation(reel, "animate", attribute);
    writer_text(writer, " calcMode=\"discrete\" values=\"");
    for (size_t i = 0; i < count; i++) {
        writer_text(writer, i ? ";" : "");
        writer_text(writer, i || !first ? off : "");
        writer_text(writer, i || !first ? ";" : "");
        writer_text(writer, on);
    }
    writer_text(writer, to_the_end(reel, &show[count - 1]) ? "" : ";");
    writer_text(writer, to_the_end(reel, &show[count - 1]) ? "" : off);
    writer_text(writer, "\" keyTimes=\"0");
    for (size_t i = 0; i < count; i++) {
        if (show[i].from > 0) {
            writer_text(writer, ";");
            put_short(writer, show[i].from / all, reel->moving->decimals);
        }
        if (!to_the_end(reel, &show[i])) {
            writer_text(writer, ";");
            put_short(writer, show[i].to / all, reel->moving->decimals);
        }
    }
    writer_text(writer, "\"");
    close_animation(reel, 0, all);
}

static void animate_shows(struct reel *reel, const char *attribute, const char *on, const char *off,
                          const struct moving_show *show, size_t count)
{
    if (reel->loop) {
        seen_again(reel, attribute, on, off, show, count);
    } else {
        seen_once(reel, attribute, on, show, count);
    }
}

/* The stretches of a group inside its layer, which comes and goes by itself: what is there as long
 * as that says nothing of it. */
static moving_shows shows_in(const struct reel *reel, const struct moving_group *group,
                             struct moving_show *only)
{
    moving_shows shows = group->shows;
    if (group->part < 0 || shows.count != 1) {
        return shows;
    }
    const struct moving_show *part = &reel->moving->parts.at[group->part];
    double tick = reel->moving->tick / 2;
    *only = shows.at[0];
    only->from = only->from < part->from + tick ? 0 : only->from;
    only->to = only->to > part->to - tick ? reel->moving->duration + 1 : only->to;
    shows.at = only;
    return shows;
}

static void animate_visible(struct reel *reel, const moving_shows *shows)
{
    animate_shows(reel, "display", "inline", "none", shows->at, shows->count);
}

/* ---- marks ---- */

/* The head of a dashed line whose second end may move. */
static void open_line(struct reel *reel, const struct moving_mark *mark, bool painted)
{
    struct writer *writer = reel->out.writer;
    struct vec2 fixed = mark->item.path[0].p[0], other = mark->item.path[1].p[0];
    const struct vec2 ends[] = {fixed, mark->ends.count > 0 ? mark->ends.at[0].at : other};
    writer_text(writer, "<line");
    if (!painted) {
        svg_put_classes(&reel->out, NULL, &mark->item);
        svg_put_paint(&reel->out, &mark->item);
    }
    for (int i = 0; i < 2; i++) {
        writer_text(writer, i ? " x2=\"" : " x1=\"");
        put_place(reel, ends[i].x);
        writer_text(writer, i ? "\" y2=\"" : "\" y1=\"");
        put_place(reel, ends[i].y);
        writer_text(writer, "\"");
    }
    writer_text(writer, " stroke-dasharray=\"");
    put_short(writer, svg_length(&reel->out, mark->dash), 1);
    writer_text(writer, " ");
    put_short(writer, svg_length(&reel->out, mark->space), 1);
    writer_text(writer, mark->ends.count > 0 ? "\">" : "\"/>\n");
}

static void put_line(struct reel *reel, const struct moving_mark *mark, bool painted)
{
    struct writer *writer = reel->out.writer;
    open_line(reel, mark, painted);
    if (mark->ends.count == 0) {
        return;
    }
    animate_keys(reel, "animate", "x2", &mark->ends, value_x);
    animate_keys(reel, "animate", "y2", &mark->ends, value_y);
    writer_text(writer, "</line>\n");
}

static bool has_rim(const struct moving_mark *mark)
{
    return mark->item.shape == ITEM_TEXT && mark->item.stroke != ROLE_NONE;
}

/* A line without an inside, of the layer's color, needs that not again. */
static enum paint_told told_of(const struct reel *reel, const struct scene_item *item,
                               const struct scene_item *layer)
{
    if (!layer) {
        return TOLD_NOTHING;
    }
    bool line = item->shape == ITEM_PATH && item->fill == ROLE_NONE;
    return svg_same_paint(&reel->out, layer, item) ? TOLD_PAINT
           : line && item->stroke == layer->stroke ? TOLD_COLOR
                                                   : TOLD_NOTHING;
}

static void put_mark(struct reel *reel, const struct moving_mark *mark,
                     const struct scene_item *layer)
{
    struct writer *writer = reel->out.writer;
    enum paint_told told = told_of(reel, &mark->item, layer);
    bool comes = !always(reel, mark->shows.at, mark->shows.count);
    if (comes) {
        writer_text(writer, "<g display=\"none\">");
        animate_visible(reel, &mark->shows);
    }
    const char *more = has_rim(mark) && !reel->out.lettering     ? " paint-order=\"stroke\""
                       : layer && mark->item.stroke == ROLE_NONE ? " stroke=\"none\""
                                                                 : "";
    if (mark->dash > 0) {
        put_line(reel, mark, told == TOLD_PAINT);
    } else {
        svg_put_item_with(&reel->out, &mark->item, told, more);
    }
    writer_text(writer, comes ? "</g>\n" : "");
}

/* ---- groups ---- */

static void put_who(struct reel *reel, const struct moving_group *group)
{
    char text[2 + NUMBER_MOST] = {' ', body_is_defender(group->who) ? 'x' : 'p'};
    if (body_number(group->who) > 0) {
        text[2 + number_print(text + 2, body_number(group->who), 0, false)] = '\0';
    }
    writer_text(reel->out.writer, group->who == BODY_COACH ? " coach" : text);
}

static void put_group_class(struct reel *reel, const struct moving_group *group)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, "<g class=\"");
    writer_text(writer, scene_class_word(group->class));
    if (group->who != BODY_NONE) {
        put_who(reel, group);
    }
}

static void put_group(struct reel *reel, const struct moving_group *group,
                      const struct scene_item *layer)
{
    struct writer *writer = reel->out.writer;
    struct moving_show only;
    moving_shows shows = shows_in(reel, group, &only);
    bool comes = !always(reel, shows.at, shows.count);
    /* there from the beginning, and once only gone */
    bool goes = !reel->loop && shows.count == 1 && shows.at[0].from <= 0;
    put_group_class(reel, group);
    writer_text(writer, comes && !goes ? "\" display=\"none\"" : "\"");
    if (stands(&group->way)) {
        writer_text(writer, " transform=\"translate(");
        value_point(reel, group->way.at[0].at);
        writer_text(writer, ")\"");
    }
    writer_text(writer, ">");
    reel->until = shows.count > 0 ? shows.at[shows.count - 1].to : reel->moving->duration + 1;
    if (comes && goes) {
        struct moving_show gone = {shows.at[0].to, reel->moving->duration + 1};
        seen_once(reel, "display", "none", &gone, 1);
    } else if (comes) {
        animate_visible(reel, &shows);
    }
    if (group->erased.count > 0) {
        animate_erased(reel, group);
    }
    if (group->way.count > 0 && !stands(&group->way)) {
        animate_keys(reel, "animateTransform", "transform", &group->way, value_point);
    }
    for (size_t i = 0; i < group->marks.count; i++) {
        put_mark(reel, &group->marks.at[i], layer);
    }
    writer_text(writer, "</g>\n");
}

/* ---- layers: the trails of a part, its roads, all that is there in every part ---- */

static bool same_layer(const struct moving_group *a, const struct moving_group *b)
{
    return a->part == b->part && a->trail == b->trail;
}

/* How many marks of some groups have this paint. */
static int painted_like(const struct reel *reel, const struct moving_group *groups, size_t count,
                        const struct scene_item *paint)
{
    int like = 0;
    for (size_t i = 0; i < count; i++) {
        for (size_t k = 0; k < groups[i].marks.count; k++) {
            like += svg_same_paint(&reel->out, paint, &groups[i].marks.at[k].item);
        }
    }
    return like;
}

/* The line of a part whose paint most of them have: it is told once for all that are alike. */
static const struct scene_item *layer_paint(const struct reel *reel,
                                            const struct moving_group *groups, size_t count)
{
    const struct scene_item *paint = NULL;
    int most = 0;
    for (size_t i = 0; groups->part >= 0 && i < count; i++) {
        const struct scene_item *line = &groups[i].marks.at[0].item;
        int like = painted_like(reel, groups, count, line);
        if (like > most) {
            paint = line;
            most = like;
        }
    }
    return paint;
}

static void open_layer(struct reel *reel, const struct moving_group *group,
                       const struct scene_item *paint)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, "<g");
    if (paint) {
        svg_put_classes(&reel->out, group->trail ? "trails" : "roads", paint);
        svg_put_paint(&reel->out, paint);
        writer_text(writer, group->trail ? " opacity=\"" TRAIL "\"" : " " ERASED);
    }
    writer_text(writer, ">\n");
}

/* The numeral of somebody, with its rim; NULL: the group is of something else. */
static const struct scene_item *numeral_of(const struct moving_group *group)
{
    bool actor = group->class == CLASS_PLAYER || group->class == CLASS_DEFENDER;
    const struct moving_mark *last = &group->marks.at[group->marks.count - 1];
    return actor && group->way.count > 0 && has_rim(last) ? &last->item : NULL;
}

/* All defenders, all attackers: how their numerals are painted is told once. */
static size_t put_actors(struct reel *reel, const struct moving_group *groups, size_t count)
{
    struct writer *writer = reel->out.writer;
    const struct scene_item *numeral = numeral_of(&groups[0]);
    size_t end = 0;
    writer_text(writer, "<g");
    svg_put_classes(&reel->out, NULL, numeral);
    svg_put_paint(&reel->out, numeral);
    svg_put_lettering(&reel->out, numeral);
    writer_text(writer, " paint-order=\"stroke\">\n");
    reel->out.lettering = numeral;
    for (; end < count && groups[end].class == groups[0].class && numeral_of(&groups[end]); end++) {
        put_group(reel, &groups[end], numeral);
    }
    reel->out.lettering = NULL;
    writer_text(writer, "</g>\n");
    return end;
}

/* One layer; gives how many groups it is. */
static size_t put_layer(struct reel *reel, const struct moving_group *groups, size_t count)
{
    size_t size = 1;
    while (size < count && same_layer(&groups[0], &groups[size])) {
        size++;
    }
    const struct scene_item *paint = layer_paint(reel, groups, size);
    open_layer(reel, groups, paint);
    for (size_t i = 0; i < size;) {
        if (!paint && numeral_of(&groups[i])) {
            i += put_actors(reel, &groups[i], size - i);
        } else {
            put_group(reel, &groups[i++], paint);
        }
    }
    writer_text(reel->out.writer, "</g>\n");
    return size;
}

/* All layers of a part come and go together. */
static bool open_part(struct reel *reel, int part)
{
    struct moving_show show = reel->moving->parts.at[part];
    show.to += show.to > reel->moving->duration - reel->moving->tick / 2 ? 1 : 0;
    if (always(reel, &show, 1)) {
        return false;
    }
    writer_text(reel->out.writer, "<g display=\"none\">");
    animate_shows(reel, "display", "inline", "none", &show, 1);
    return true;
}

static void put_layers(struct reel *reel)
{
    const struct moving_group *groups = reel->moving->groups.at;
    size_t count = reel->moving->groups.count;
    for (size_t i = 0; i < count;) {
        int part = groups[i].part;
        bool opened = part >= 0 && open_part(reel, part);
        do {
            i += put_layer(reel, &groups[i], count - i);
        } while (i < count && groups[i].part == part);
        writer_text(reel->out.writer, opened ? "</g>\n" : "");
    }
}

void svg_moving(const struct moving *moving, const struct moving_options *options,
                struct writer *writer)
{
    struct reel reel = {.out = {.writer = writer,
                                .theme = moving->theme,
                                .styled = options->styled,
                                .quarters = true},
                        .moving = moving,
                        .loop = options->loop};
    writer_text(writer, "<g class=\"moving\" transform=\"scale(.25)\"");
    if (options->hidden) {
        writer_text(writer, " display=\"none\"><set attributeName=\"display\" to=\"inline\"/>\n");
    } else {
        writer_text(writer, ">\n");
    }
    put_layers(&reel);
    writer_text(writer, "</g>\n");
}

/* ---- pieces ---- */

static struct reel pieces_to(struct writer *writer)
{
    return (struct reel){.out = {.writer = writer, .styled = true, .quarters = true}};
}

void svg_moving_shape(const struct moving_mark *mark, struct writer *writer)
{
    struct reel reel = pieces_to(writer);
    if (mark->dash > 0) {
        open_line(&reel, mark, true);
        writer_text(writer, mark->ends.count > 0 ? "</line>\n" : "");
    } else {
        svg_put_item(&reel.out, &mark->item, true);
    }
}

void svg_moving_paint(const struct moving_mark *mark, struct writer *writer)
{
    struct reel reel = pieces_to(writer);
    writer_text(writer, "<g");
    svg_put_classes(&reel.out, NULL, &mark->item);
    svg_put_paint(&reel.out, &mark->item);
    writer_text(writer, has_rim(mark) ? " paint-order=\"stroke\"></g>\n" : "></g>\n");
}

void svg_moving_frame(const struct moving_group *group, struct writer *writer)
{
    struct reel reel = pieces_to(writer);
    put_group_class(&reel, group);
    writer_text(writer, group->trail ? " trail\"></g>\n" : "\"></g>\n");
}
