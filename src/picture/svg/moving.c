/* SPDX-License-Identifier: MIT */
/* moving: marks in their groups, groups in their layers; what moves of them reel.c tells. Takes a
 * moving picture, gives bytes. Must not know plays or runs. */
#include "picture/svg/moving.h"

#include "picture/svg/reel.h"

#define TRAIL ".55" /* opacity */
/* A line is one dash, which is longer than any floor, and is erased as that begins further along.
 */
#define ERASED "stroke-dasharray=\"9999\""

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
        reel_place(reel, ends[i].x);
        writer_text(writer, i ? "\" y2=\"" : "\" y1=\"");
        reel_place(reel, ends[i].y);
        writer_text(writer, "\"");
    }
    writer_text(writer, " stroke-dasharray=\"");
    reel_number(writer, svg_length(&reel->out, mark->dash), 1);
    writer_text(writer, " ");
    reel_number(writer, svg_length(&reel->out, mark->space), 1);
    writer_text(writer, mark->ends.count > 0 ? "\">" : "\"/>\n");
}

static void put_line(struct reel *reel, const struct moving_mark *mark, bool painted)
{
    struct writer *writer = reel->out.writer;
    open_line(reel, mark, painted);
    if (mark->ends.count == 0) {
        return;
    }
    reel_ends(reel, &mark->ends);
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
    bool comes = !reel_always(reel, mark->shows.at, mark->shows.count);
    if (comes) {
        writer_text(writer, "<g display=\"none\">");
        reel_seen(reel, mark->shows.at, mark->shows.count);
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

static void put_group(struct reel *reel, const struct moving_group *group,
                      const struct scene_item *layer)
{
    struct writer *writer = reel->out.writer;
    struct moving_show only;
    moving_shows shows = shows_in(reel, group, &only);
    bool comes = !reel_always(reel, shows.at, shows.count);
    /* there from the beginning, and once only gone */
    bool goes = !reel->loop && shows.count == 1 && shows.at[0].from <= 0;
    put_group_class(reel, group);
    writer_text(writer, comes && !goes ? "\" display=\"none\"" : "\"");
    if (reel_stands(&group->way)) {
        writer_text(writer, " transform=\"translate(");
        reel_point(reel, group->way.at[0].at);
        writer_text(writer, ")\"");
    }
    writer_text(writer, ">");
    reel->until = shows.count > 0 ? shows.at[shows.count - 1].to : reel->moving->duration + 1;
    if (comes && goes) {
        reel_gone(reel, shows.at[0].to);
    } else if (comes) {
        reel_seen(reel, shows.at, shows.count);
    }
    if (group->erased.count > 0) {
        reel_erased(reel, &group->erased, group->length);
    }
    if (group->way.count > 0 && !reel_stands(&group->way)) {
        reel_way(reel, &group->way);
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
    if (reel_always(reel, &show, 1)) {
        return false;
    }
    writer_text(reel->out.writer, "<g display=\"none\">");
    reel_seen(reel, &show, 1);
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
