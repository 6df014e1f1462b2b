/* SPDX-License-Identifier: MIT */
/* element: what the writers of this room share. Private to the room. */
#ifndef PICTURE_SVG_ELEMENT_H
#define PICTURE_SVG_ELEMENT_H

#include "base/writer.h"
#include "picture/scene/scene.h"

struct output {
    struct writer *writer;
    enum theme theme;
    struct str prefix; /* of ids, and the class of the root */
    bool styled;       /* the page around it has the colors, and tells whose a mark is */
    bool quarters;     /* places in whole quarters of a point, to stand in a group that is scaled by
                        * a quarter: short */
    const struct scene_item *lettering; /* a text whose size and face are told around; or NULL */
};
/* Which roles are painted: bit 1 << role. */
struct role_set {
    unsigned fills, strokes;
};

long long svg_hundredths(double value); /* 0 for what is no number of the page */
/* A length in the output's unit: name="12.34" */
void svg_put_length(struct output *out, const char *name, double points);
/* A length as it is written: 12.34, or in whole quarters. */
double svg_length(const struct output *out, double points);
void svg_put_rgb(struct output *out, unsigned rgb); /* #rrggbb */
void svg_put_color(struct output *out, const char *name, unsigned rgb);
/* class="move f-ink s-floor p3", of what there is of it. `item`: how it is painted and whose it
 * is; NULL: several do not agree. */
void svg_put_classes(struct output *out, const char *meaning, const struct scene_item *item);
void svg_put_paint(struct output *out, const struct scene_item *item);
void svg_put_pen(struct output *out, const struct scene_item *item); /* of it, what is no color */
bool svg_same_paint(const struct output *out, const struct scene_item *a,
                    const struct scene_item *b);
void svg_put_lettering(struct output *out, const struct scene_item *text); /* size and face */
/* The element; with its own paint unless its group has painted it. */
void svg_put_item(struct output *out, const struct scene_item *item, bool painted);
/* What its groups have told of its paint: nothing; the color of a line; all. */
enum paint_told { TOLD_NOTHING, TOLD_COLOR, TOLD_PAINT };
void svg_put_item_with(struct output *out, const struct scene_item *item, enum paint_told told,
                       const char *more); /* attributes, " name=\"value\"" */

/* svg.c: the pieces of a document. `told`: a <desc> follows the <title>. */
void svg_put_root(struct output *out, double width, double height, bool fluid, bool told);
/* <title> with suffix "-t", <desc> with "-d" behind the prefix as its id */
void svg_put_words(struct output *out, const char *element, const char *suffix, struct str text);
void svg_roles_add(struct role_set *roles, const struct scene_item *item);
/* What a style says of these roles, where attributes do not; */
void svg_put_colors(struct output *out, const struct role_set *roles);
/* and of dark screens and paper. */
void svg_put_media(struct output *out, const struct role_set *roles);
void svg_put_groups(struct output *out, const struct scene_item *items, size_t count);
bool svg_is_floor(const struct scene_item *item); /* of the court, or its basket */

#endif
