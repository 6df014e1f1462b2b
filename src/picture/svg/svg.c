/* SPDX-License-Identifier: MIT */
/* svg: a scene as live SVG. Takes a display list, gives bytes: one element an item, grouped by what
 * the items are for, paint as plain attributes first, so that a reader without CSS sees the right
 * picture, then one style block that follows dark screens and paper. Must not know plays or cairo.
 */
#include "picture/svg/svg.h"

#include "picture/svg/element.h"

#include "base/rng.h"

#include <math.h>

#define FAMILY "Inter, system-ui, 'Segoe UI', 'Helvetica Neue', Arial, sans-serif"

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
    return hash_whole(hash_whole(hash, (unsigned long long)svg_hundredths(p.x)),
                      (unsigned long long)svg_hundredths(p.y));
}

/* All of an item that is seen. */
static uint64_t hash_item(uint64_t hash, const struct scene_item *item)
{
    unsigned kinds = (unsigned)item->class << 24 | (unsigned)item->shape << 20 |
                     (unsigned)item->fill << 12 | (unsigned)item->stroke << 4 |
                     (unsigned)item->casing;
    hash = hash_whole(hash, kinds);
    hash = hash_whole(hash, (unsigned long long)svg_hundredths(item->width));
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
        hash = hash_whole(hash, (unsigned long long)svg_hundredths(size));
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

/* Neighbors of one class are one group; when all are painted alike, the group carries the paint. */
void svg_put_groups(struct output *out, const struct scene_item *items, size_t count)
{
    for (size_t i = 0, end; i < count; i = end) {
        bool alike = true;
        for (end = i + 1; end < count && items[end].class == items[i].class; end++) {
            alike = alike && svg_same_paint(out, &items[i], &items[end]);
        }
        writer_text(out->writer, "<g");
        svg_put_classes(out, scene_class_word(items[i].class), alike ? &items[i] : NULL);
        if (alike) {
            svg_put_paint(out, &items[i]);
        }
        writer_text(out->writer, ">\n");
        for (size_t k = i; k < end; k++) {
            svg_put_item(out, &items[k], alike);
        }
        writer_text(out->writer, "</g>\n");
    }
}

/* ---- style ---- */

static void put_rule(struct output *out, char kind, const char *property, enum role role,
                     unsigned rgb)
{
    struct writer *writer = out->writer;
    writer_text(writer, ".");
    writer_str(writer, out->prefix);
    writer_text(writer, " .");
    writer_bytes(writer, &kind, 1);
    writer_text(writer, "-");
    writer_text(writer, scene_role_word(role));
    writer_text(writer, "{");
    writer_text(writer, property);
    writer_text(writer, ":");
    svg_put_rgb(out, rgb);
    writer_text(writer, "}");
}

void svg_roles_add(struct role_set *roles, const struct scene_item *item)
{
    roles->fills |= 1u << item->fill;
    roles->strokes |= 1u << item->stroke;
}

/* The colors of a theme for these roles, but those that are in force. */
static void put_rules(struct output *out, const struct role_set *roles, enum theme theme,
                      const unsigned *have)
{
    const unsigned *want = theme_row(theme)->rgb;
    for (int role = ROLE_NONE + 1; role < ROLE_COUNT; role++) {
        if (have && have[role] == want[role]) {
            continue;
        }
        if (roles->fills >> role & 1) {
            put_rule(out, 'f', "fill", (enum role)role, want[role]);
        }
        if (roles->strokes >> role & 1) {
            put_rule(out, 's', "stroke", (enum role)role, want[role]);
        }
    }
}

void svg_put_colors(struct output *out, const struct role_set *roles)
{
    put_rules(out, roles, out->theme, NULL);
    writer_text(out->writer, "\n");
}

/* The colors that differ from those in the attributes, for the roles that occur. */
static void put_media(struct output *out, const struct role_set *roles, const char *media,
                      enum theme theme)
{
    if (theme == out->theme) {
        return;
    }
    writer_text(out->writer, media);
    put_rules(out, roles, theme, theme_row(out->theme)->rgb);
    writer_text(out->writer, "}\n");
}

void svg_put_media(struct output *out, const struct role_set *roles)
{
    put_media(out, roles, "@media screen and (prefers-color-scheme:dark){", THEME_DARK);
    put_media(out, roles, "@media print{", THEME_PRINT);
}

/* ---- the whole ---- */

void svg_put_root(struct output *out, double width, double height, bool fluid, bool told)
{
    struct writer *writer = out->writer;
    writer_text(writer,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" xml:lang=\"en\"");
    if (fluid) {
        writer_text(writer, " width=\"100%\"");
    } else {
        svg_put_length(out, "width", width);
        svg_put_length(out, "height", height);
    }
    writer_text(writer, " viewBox=\"0 0 ");
    writer_number(writer, width, 2);
    writer_text(writer, " ");
    writer_number(writer, height, 2);
    writer_text(writer, "\" class=\"courtwright ");
    writer_str(writer, out->prefix);
    writer_text(writer, "\" role=\"img\" aria-labelledby=\"");
    writer_str(writer, out->prefix);
    writer_text(writer, "-t");
    if (told) {
        writer_text(writer, " ");
        writer_str(writer, out->prefix);
        writer_text(writer, "-d");
    }
    writer_text(writer, "\"\n fill=\"none\" stroke-linejoin=\"round\" text-anchor=\"middle\" "
                        "font-family=\"" FAMILY "\">\n");
}

void svg_put_words(struct output *out, const char *element, const char *suffix, struct str text)
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
    struct output out = {
        .writer = writer, .theme = scene->theme, .prefix = svg_prefix(arena, scene, options->salt)};
    struct role_set roles = {0};
    for (size_t i = 0; i < scene->items.count; i++) {
        svg_roles_add(&roles, &scene->items.at[i]);
    }
    svg_put_root(&out, scene->width, scene->height, options->fluid, scene->description.size > 0);
    svg_put_words(&out, "title", "-t", scene->title);
    if (scene->description.size > 0) {
        svg_put_words(&out, "desc", "-d", scene->description);
    }
    writer_text(writer, "<style type=\"text/css\">\n");
    svg_put_media(&out, &roles);
    writer_text(writer, "</style>\n");
    svg_put_groups(&out, scene->items.at, scene->items.count);
    writer_text(writer, "</svg>\n");
}

bool svg_is_floor(const struct scene_item *item)
{
    return item->class == CLASS_COURT || item->class == CLASS_BASKET;
}

static bool is_in(enum svg_part part, const struct scene_item *item)
{
    return item->class != CLASS_PAGE && svg_is_floor(item) == (part == SVG_FLOOR);
}

void svg_write_part(const struct scene *scene, enum svg_part part, struct writer *writer)
{
    struct output out = {.writer = writer, .theme = scene->theme, .styled = true};
    const struct scene_item *items = scene->items.at;
    size_t count = scene->items.count;
    for (size_t i = 0, end; i < count; i = end) {
        for (end = i; end < count && is_in(part, &items[end]); end++) {
        }
        svg_put_groups(&out, &items[i], end - i);
        end += end == i;
    }
}
