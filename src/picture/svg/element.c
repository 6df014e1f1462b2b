/* SPDX-License-Identifier: MIT */
/* element: one mark as one element: its attributes, its path in few letters. Shared by the stills
 * and by what moves. */
#include "picture/svg/element.h"

#include <math.h>

#include "picture/svg/svg.h"

enum { QUARTERS = 4 }; /* of a point */

long long svg_hundredths(double value)
{
    if (!(fabs(value) < 1e9)) {
        return 0;
    }
    return (long long)floor(value * 100 + 0.5);
}

double svg_length(const struct output *out, double points)
{
    return out->quarters ? QUARTERS * points : points;
}

/* ---- attributes ---- */

static void put_number(struct output *out, const char *name, double value, int decimals)
{
    writer_text(out->writer, " ");
    writer_text(out->writer, name);
    writer_text(out->writer, "=\"");
    writer_number(out->writer, value, decimals);
    writer_text(out->writer, "\"");
}

void svg_put_length(struct output *out, const char *name, double points)
{
    put_number(out, name, svg_length(out, points), out->quarters ? 1 : 2);
}

void svg_put_rgb(struct output *out, unsigned rgb)
{
    char text[] = "#000000";
    for (int i = 0; i < 6; i++) {
        text[6 - i] = "0123456789abcdef"[rgb >> 4 * i & 0xF];
    }
    writer_text(out->writer, text);
}

void svg_put_color(struct output *out, const char *name, unsigned rgb)
{
    writer_text(out->writer, " ");
    writer_text(out->writer, name);
    writer_text(out->writer, "=\"");
    svg_put_rgb(out, rgb);
    writer_text(out->writer, "\"");
}

/* Classes of one element, with gaps between them. */
static void put_class(struct output *out, bool *any, const char *kind, const char *word)
{
    writer_text(out->writer, *any ? " " : " class=\"");
    writer_text(out->writer, kind);
    writer_text(out->writer, word);
    *any = true;
}

static void put_owner(struct output *out, bool *any, body who)
{
    char digits[NUMBER_MOST + 1];
    if (out->styled && body_is_attacker(who) && body_number(who) > 0) {
        digits[number_print(digits, body_number(who), 0, false)] = '\0';
        put_class(out, any, "p", digits);
    }
}

/* `item`: how it is painted and whose it is; NULL: several do not agree. */
void svg_put_classes(struct output *out, const char *meaning, const struct scene_item *item)
{
    bool any = false;
    if (meaning) {
        put_class(out, &any, "", meaning);
    }
    if (item && item->fill != ROLE_NONE) {
        put_class(out, &any, "f-", scene_role_word(item->fill));
    }
    if (item && item->stroke != ROLE_NONE) {
        put_class(out, &any, "s-", scene_role_word(item->stroke));
    }
    if (item && !item->casing) {
        put_owner(out, &any, item->who);
        put_owner(out, &any, item->other);
    }
    writer_text(out->writer, any ? "\"" : "");
}

void svg_put_paint(struct output *out, const struct scene_item *item)
{
    const struct theme_row *theme = theme_row(out->theme);
    if (item->fill != ROLE_NONE && !out->styled) {
        svg_put_color(out, "fill", theme->rgb[item->fill]);
    }
    if (item->stroke == ROLE_NONE) {
        return;
    }
    if (!out->styled) {
        svg_put_color(out, "stroke", theme->rgb[item->stroke]);
    }
    svg_put_pen(out, item);
}

void svg_put_pen(struct output *out, const struct scene_item *item)
{
    svg_put_length(out, "stroke-width", item->width);
    if (item->cap == CAP_ROUND) {
        writer_text(out->writer, " stroke-linecap=\"round\"");
    }
    if (item->join == JOIN_MITER) {
        writer_text(out->writer, " stroke-linejoin=\"miter\"");
    }
}

bool svg_same_paint(const struct output *out, const struct scene_item *a,
                    const struct scene_item *b)
{
    bool owner = a->who == b->who && a->other == b->other && a->casing == b->casing;
    if (a->fill != b->fill || a->stroke != b->stroke || (out->styled && !owner)) {
        return false;
    }
    return a->stroke == ROLE_NONE ||
           (a->width == b->width && a->cap == b->cap && a->join == b->join);
}

/* ---- path data ---- */

/* Relative steps in whole hundredths of a point: short, and no error adds up along the line. */
struct pen {
    struct writer *writer;
    bool quarters;
    long long x, y;             /* where it is */
    long long start_x, start_y; /* where the subpath began */
    char last;                  /* the command letter in force, or 0 */
    bool number_before;         /* a number directly before this one */
};

static void pen_command(struct pen *pen, char letter)
{
    if (pen->last == letter) {
        return;
    }
    writer_bytes(pen->writer, &letter, 1);
    pen->last = letter == 'm' ? 'l' : letter; /* what follows a move without a letter is a line */
    pen->number_before = false;
}

static void pen_number(struct pen *pen, long long value)
{
    if (pen->number_before && value >= 0) {
        writer_text(pen->writer, " ");
    }
    writer_number(pen->writer, pen->quarters ? (double)value : (double)value / 100, 2);
    pen->number_before = true;
}

/* In steps of the pen: hundredths, or quarters of a point. */
static long long pen_steps(const struct pen *pen, double points)
{
    return svg_hundredths(pen->quarters ? points * QUARTERS / 100 : points);
}

static void pen_point(struct pen *pen, struct vec2 p)
{
    pen_number(pen, pen_steps(pen, p.x) - pen->x);
    pen_number(pen, pen_steps(pen, p.y) - pen->y);
}

static void pen_stand(struct pen *pen, struct vec2 p)
{
    pen->x = pen_steps(pen, p.x);
    pen->y = pen_steps(pen, p.y);
}

static void pen_element(struct pen *pen, const struct path_element *element)
{
    switch (element->op) {
    case OP_MOVE:
        pen->last = 0;
        pen_command(pen, 'm');
        pen_point(pen, element->p[0]);
        pen_stand(pen, element->p[0]);
        pen->start_x = pen->x;
        pen->start_y = pen->y;
        break;
    case OP_LINE:
        pen_command(pen, 'l');
        pen_point(pen, element->p[0]);
        pen_stand(pen, element->p[0]);
        break;
    case OP_CURVE:
        pen_command(pen, 'c');
        for (int i = 0; i < 3; i++) {
            pen_point(pen, element->p[i]);
        }
        pen_stand(pen, element->p[2]);
        break;
    case OP_CLOSE:
        pen_command(pen, 'z');
        pen->last = 0;
        pen->x = pen->start_x;
        pen->y = pen->start_y;
        break;
    }
}

/* ---- elements ---- */

static void put_path(struct output *out, const struct scene_item *item)
{
    struct pen pen = {.writer = out->writer, .quarters = out->quarters};
    writer_text(out->writer, " d=\"");
    for (size_t i = 0; i < item->count; i++) {
        pen_element(&pen, &item->path[i]);
    }
    writer_text(out->writer, "\"/>");
}

/* In quarters, as whole a number as the lines that lead there; 0 need not be said. */
static void put_middle(struct output *out, const char *name, double points)
{
    double steps = svg_length(out, points);
    if (!out->quarters) {
        put_number(out, name, steps, 2);
    } else if (floor(steps + 0.5) != 0) {
        put_number(out, name, floor(steps + 0.5), 0);
    }
}

static void put_circle(struct output *out, const struct scene_item *item)
{
    put_middle(out, "cx", item->at.x);
    put_middle(out, "cy", item->at.y);
    svg_put_length(out, "r", item->radius);
    writer_text(out->writer, "/>");
}

void svg_put_lettering(struct output *out, const struct scene_item *text)
{
    svg_put_length(out, "font-size", text->size);
    put_number(out, "font-weight", metrics_weight(text->face), 0);
}

static void put_text(struct output *out, const struct scene_item *item)
{
    const struct scene_item *told = out->lettering;
    svg_put_length(out, "x", item->at.x);
    svg_put_length(out, "y", item->at.y);
    if (!told || told->size != item->size || told->face != item->face) {
        svg_put_lettering(out, item);
    }
    if (item->anchor == ANCHOR_START) {
        writer_text(out->writer, " text-anchor=\"start\"");
    }
    writer_text(out->writer, ">");
    svg_escape(out->writer, item->text);
    writer_text(out->writer, "</text>");
}

void svg_put_item(struct output *out, const struct scene_item *item, bool painted)
{
    svg_put_item_with(out, item, painted ? TOLD_PAINT : TOLD_NOTHING, "");
}

void svg_put_item_with(struct output *out, const struct scene_item *item, enum paint_told told,
                       const char *more)
{
    static const char *const names[] = {
        [ITEM_PATH] = "<path", [ITEM_CIRCLE] = "<circle", [ITEM_TEXT] = "<text"};
    static void (*const bodies[])(struct output *, const struct scene_item *) = {
        [ITEM_PATH] = put_path, [ITEM_CIRCLE] = put_circle, [ITEM_TEXT] = put_text};
    writer_text(out->writer, names[item->shape]);
    if (told == TOLD_NOTHING) {
        svg_put_classes(out, NULL, item);
        svg_put_paint(out, item);
    } else if (told == TOLD_COLOR) {
        svg_put_pen(out, item);
    }
    writer_text(out->writer, more);
    bodies[item->shape](out, item);
    writer_text(out->writer, out->quarters ? "" : "\n"); /* of what moves every byte counts */
}
