/* SPDX-License-Identifier: MIT */
/* svg: a scene as live SVG. Takes a display list, gives bytes: one element an item, grouped by what
 * the items are for, paint as plain attributes first, so that a reader without CSS sees the right
 * picture, then one style block that follows dark screens and paper. Must not know plays or cairo.
 */
#include "picture/svg/svg.h"

#include "base/rng.h"

#include <assert.h>
#include <math.h>

#define FAMILY "Inter, system-ui, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif"

struct output {
    struct writer *writer;
    const struct scene *scene;
    struct str prefix;
    bool styled; /* the page around it has the colors, and tells whose a mark is */
};

/* What XML 1.0 can hold; the rest cannot even be escaped. */
static bool letter_is_text(unsigned letter)
{
    if (letter < 0x20) {
        return letter == '\t' || letter == '\n';
    }
    return (letter < 0x7F || letter > 0x9F) && letter != 0xFFFE && letter != 0xFFFF;
}

static const char *letter_entity(unsigned letter)
{
    switch (letter) {
    case '&':
        return "&amp;";
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '"':
        return "&quot;";
    default:
        return NULL;
    }
}

void svg_escape(struct writer *writer, struct str text)
{
    while (text.size > 0) {
        struct str rest = text;
        unsigned letter = metrics_letter(&rest);
        struct str bytes = {text.at, text.size - rest.size};
        const char *entity = letter_entity(letter);
        if (entity) {
            writer_text(writer, entity);
        } else if (letter == 0xFFFD && bytes.size == 1) {
            writer_text(writer, "\xEF\xBF\xBD"); /* a byte that is no UTF-8 */
        } else if (letter_is_text(letter)) {
            writer_str(writer, bytes);
        }
        text = rest;
    }
}

static long long hundredths(double value)
{
    if (!(fabs(value) < 1e9)) {
        return 0;
    }
    return (long long)floor(value * 100 + 0.5);
}

/* The same on every machine, whichever way it lays its bytes. */
static uint64_t hash_whole(uint64_t hash, unsigned long long value)
{
    unsigned char bytes[8];
    for (int i = 0; i < 8; i++) {
        bytes[i] = (unsigned char)(value >> (8 * i) & 0xFF);
    }
    return hash_bytes(hash, bytes, sizeof bytes);
}

static uint64_t hash_point(uint64_t hash, struct vec2 p)
{
    return hash_whole(hash_whole(hash, (unsigned long long)hundredths(p.x)),
                      (unsigned long long)hundredths(p.y));
}

/* All of an item that is seen. */
static uint64_t hash_item(uint64_t hash, const struct scene_item *item)
{
    unsigned kinds = (unsigned)item->class << 24 | (unsigned)item->shape << 20 |
                     (unsigned)item->fill << 12 | (unsigned)item->stroke << 4 |
                     (unsigned)item->casing;
    hash = hash_whole(hash, kinds);
    hash = hash_whole(hash, (unsigned long long)hundredths(item->width));
    for (size_t i = 0; i < item->count; i++) {
        const struct path_element *element = &item->path[i];
        size_t points = element->op == OP_CURVE ? 3 : element->op == OP_CLOSE ? 0 : 1;
        hash = hash_whole(hash, (unsigned)element->op);
        for (size_t p = 0; p < points; p++) {
            hash = hash_point(hash, element->p[p]);
        }
    }
    if (item->shape != ITEM_PATH) {
        hash = hash_point(hash, item->at);
        double size = item->shape == ITEM_TEXT ? item->size : item->radius;
        hash = hash_whole(hash, (unsigned long long)hundredths(size));
        hash = hash_bytes(hash, item->text.at, item->text.size);
    }
    return hash;
}

struct str svg_prefix(struct arena *arena, const struct scene *scene, struct str salt)
{
    uint64_t hash = hash_whole(HASH_SEED, (unsigned)scene->theme);
    hash = hash_point(hash, vec2_of(scene->width, scene->height));
    for (size_t i = 0; i < scene->items.count; i++) {
        hash = hash_item(hash, &scene->items.at[i]);
    }
    hash = hash_bytes(hash, scene->title.at, scene->title.size);
    hash = hash_bytes(hash, salt.at, salt.size);
    return str_format(arena, "cw%010llx", (unsigned long long)(hash & 0xFFFFFFFFFFull));
}

/* ---- attributes ---- */

static void put_number(struct output *out, const char *name, double value)
{
    writer_text(out->writer, " ");
    writer_text(out->writer, name);
    writer_text(out->writer, "=\"");
    writer_number(out->writer, value, 2);
    writer_text(out->writer, "\"");
}

static void put_color(struct output *out, const char *name, unsigned rgb)
{
    static const char digits[] = "0123456789abcdef";
    char text[] = "=\"#000000\"";
    for (int i = 0; i < 6; i++) {
        text[8 - i] = digits[rgb >> 4 * i & 0xF];
    }
    writer_text(out->writer, " ");
    writer_text(out->writer, name);
    writer_text(out->writer, text);
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
static void put_classes(struct output *out, const char *meaning, const struct scene_item *item)
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

static void put_paint(struct output *out, const struct scene_item *item)
{
    const struct theme_row *theme = theme_row(out->scene->theme);
    if (item->fill != ROLE_NONE && !out->styled) {
        put_color(out, "fill", theme->rgb[item->fill]);
    }
    if (item->stroke == ROLE_NONE) {
        return;
    }
    if (!out->styled) {
        put_color(out, "stroke", theme->rgb[item->stroke]);
    }
    put_number(out, "stroke-width", item->width);
    if (item->cap == CAP_ROUND) {
        writer_text(out->writer, " stroke-linecap=\"round\"");
    }
    if (item->join == JOIN_MITER) {
        writer_text(out->writer, " stroke-linejoin=\"miter\"");
    }
}

static bool same_paint(const struct output *out, const struct scene_item *a,
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
    writer_number(pen->writer, (double)value / 100, 2);
    pen->number_before = true;
}

static void pen_point(struct pen *pen, struct vec2 p)
{
    pen_number(pen, hundredths(p.x) - pen->x);
    pen_number(pen, hundredths(p.y) - pen->y);
}

static void pen_stand(struct pen *pen, struct vec2 p)
{
    pen->x = hundredths(p.x);
    pen->y = hundredths(p.y);
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
    struct pen pen = {.writer = out->writer};
    writer_text(out->writer, " d=\"");
    for (size_t i = 0; i < item->count; i++) {
        pen_element(&pen, &item->path[i]);
    }
    writer_text(out->writer, "\"/>");
}

static void put_circle(struct output *out, const struct scene_item *item)
{
    put_number(out, "cx", item->at.x);
    put_number(out, "cy", item->at.y);
    put_number(out, "r", item->radius);
    writer_text(out->writer, "/>");
}

static void put_text(struct output *out, const struct scene_item *item)
{
    put_number(out, "x", item->at.x);
    put_number(out, "y", item->at.y);
    put_number(out, "font-size", item->size);
    put_number(out, "font-weight", metrics_weight(item->face));
    if (item->anchor == ANCHOR_START) {
        writer_text(out->writer, " text-anchor=\"start\"");
    }
    writer_text(out->writer, ">");
    svg_escape(out->writer, item->text);
    writer_text(out->writer, "</text>");
}

static void put_item(struct output *out, const struct scene_item *item, bool painted)
{
    static const char *const names[] = {
        [ITEM_PATH] = "<path", [ITEM_CIRCLE] = "<circle", [ITEM_TEXT] = "<text"};
    static void (*const bodies[])(struct output *, const struct scene_item *) = {
        [ITEM_PATH] = put_path, [ITEM_CIRCLE] = put_circle, [ITEM_TEXT] = put_text};
    writer_text(out->writer, names[item->shape]);
    if (!painted) {
        put_classes(out, NULL, item);
        put_paint(out, item);
    }
    bodies[item->shape](out, item);
    writer_text(out->writer, "\n");
}

/* Neighbors of one class are one group; when all are painted alike, the group carries the paint. */
static void put_groups(struct output *out, const struct scene_item *items, size_t count)
{
    for (size_t i = 0, end; i < count; i = end) {
        bool alike = true;
        for (end = i + 1; end < count && items[end].class == items[i].class; end++) {
            alike = alike && same_paint(out, &items[i], &items[end]);
        }
        writer_text(out->writer, "<g");
        put_classes(out, scene_class_word(items[i].class), alike ? &items[i] : NULL);
        if (alike) {
            put_paint(out, &items[i]);
        }
        writer_text(out->writer, ">\n");
        for (size_t k = i; k < end; k++) {
            put_item(out, &items[k], alike);
        }
        writer_text(out->writer, "</g>\n");
    }
}

/* ---- style ---- */

static void put_rule(struct output *out, char kind, const char *property, enum role role,
                     unsigned rgb)
{
    struct output *o = out;
    writer_text(o->writer, ".");
    writer_str(o->writer, o->prefix);
    writer_text(o->writer, " .");
    writer_bytes(o->writer, &kind, 1);
    writer_text(o->writer, "-");
    writer_text(o->writer, scene_role_word(role));
    char color[] = ":#000000}";
    for (int i = 0; i < 6; i++) {
        color[7 - i] = "0123456789abcdef"[rgb >> 4 * i & 0xF];
    }
    writer_text(o->writer, "{");
    writer_text(o->writer, property);
    writer_text(o->writer, color);
}

/* The colors that differ from those in the attributes, for the roles that occur. */
static void put_media(struct output *out, const char *media, enum theme theme)
{
    if (theme == out->scene->theme) {
        return;
    }
    unsigned fills = 0;
    unsigned strokes = 0;
    for (size_t i = 0; i < out->scene->items.count; i++) {
        fills |= 1u << out->scene->items.at[i].fill;
        strokes |= 1u << out->scene->items.at[i].stroke;
    }
    const unsigned *have = theme_row(out->scene->theme)->rgb;
    const unsigned *want = theme_row(theme)->rgb;
    writer_text(out->writer, media);
    for (int role = ROLE_NONE + 1; role < ROLE_COUNT; role++) {
        if (have[role] == want[role]) {
            continue;
        }
        if (fills >> role & 1) {
            put_rule(out, 'f', "fill", (enum role)role, want[role]);
        }
        if (strokes >> role & 1) {
            put_rule(out, 's', "stroke", (enum role)role, want[role]);
        }
    }
    writer_text(out->writer, "}\n");
}

static void put_style(struct output *out)
{
    writer_text(out->writer, "<style type=\"text/css\">\n");
    put_media(out, "@media screen and (prefers-color-scheme:dark){", THEME_DARK);
    put_media(out, "@media print{", THEME_PRINT);
    writer_text(out->writer, "</style>\n");
}

/* ---- the whole ---- */

static void put_root(struct output *out, bool fluid)
{
    struct writer *writer = out->writer;
    writer_text(writer,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" xml:lang=\"en\"");
    if (fluid) {
        writer_text(writer, " width=\"100%\"");
    } else {
        put_number(out, "width", out->scene->width);
        put_number(out, "height", out->scene->height);
    }
    writer_text(writer, " viewBox=\"0 0 ");
    writer_number(writer, out->scene->width, 2);
    writer_text(writer, " ");
    writer_number(writer, out->scene->height, 2);
    writer_text(writer, "\" class=\"courtwright ");
    writer_str(writer, out->prefix);
    writer_text(writer, "\" role=\"img\" aria-labelledby=\"");
    writer_str(writer, out->prefix);
    writer_text(writer, "-t");
    if (out->scene->description.size > 0) {
        writer_text(writer, " ");
        writer_str(writer, out->prefix);
        writer_text(writer, "-d");
    }
    writer_text(writer, "\"\n fill=\"none\" stroke-linejoin=\"round\" text-anchor=\"middle\" "
                        "font-family=\"" FAMILY "\">\n");
}

static void put_words(struct output *out, const char *element, const char *suffix, struct str text)
{
    struct writer *writer = out->writer;
    writer_text(writer, "<");
    writer_text(writer, element);
    writer_text(writer, " id=\"");
    writer_str(writer, out->prefix);
    writer_text(writer, suffix);
    writer_text(writer, "\">");
    svg_escape(writer, text);
    writer_text(writer, "</");
    writer_text(writer, element);
    writer_text(writer, ">\n");
}

void svg_write(struct arena *arena, const struct scene *scene, const struct svg_options *options,
               struct writer *writer)
{
    struct output out = {writer, scene, svg_prefix(arena, scene, options->salt), false};
    put_root(&out, options->fluid);
    put_words(&out, "title", "-t", scene->title);
    if (scene->description.size > 0) {
        put_words(&out, "desc", "-d", scene->description);
    }
    put_style(&out);
    put_groups(&out, scene->items.at, scene->items.count);
    writer_text(writer, "</svg>\n");
}

static bool is_in(enum svg_part part, const struct scene_item *item)
{
    bool floor = item->class == CLASS_COURT || item->class == CLASS_BASKET;
    return item->class != CLASS_PAGE && floor == (part == SVG_FLOOR);
}

void svg_write_part(const struct scene *scene, enum svg_part part, struct writer *writer)
{
    struct output out = {writer, scene, STR(""), true};
    const struct scene_item *items = scene->items.at;
    size_t count = scene->items.count;
    for (size_t i = 0, end; i < count; i = end) {
        for (end = i; end < count && is_in(part, &items[end]); end++) {
        }
        put_groups(&out, &items[i], end - i);
        end += end == i;
    }
}
