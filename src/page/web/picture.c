/* SPDX-License-Identifier: MIT */
/* picture: see picture.h. Takes scenes, gives SVG that leans on the page's own style and courts. */
#include "page/web/picture.h"

#include "picture/svg/svg.h"

#define KEY_HIGH 14.0 /* px of a sample's box */

struct key_row {
    enum scene_class class;
    double width;
};
static const struct key_row key_rows[] = {
#define KEY_ROW(class, length, tight, phone) {class, phone},
#include "picture/scene/key_rows.def"
#undef KEY_ROW
};
enum { KEY_ROWS = sizeof key_rows / sizeof *key_rows };

/* ---- drawn once ---- */

static void put_court(const struct html *html, enum court_code code)
{
    const struct court *court = court_of(code);
    html_put(html, "<g id=\"court.%s\">\n", str_of(court->word));
    svg_write_part(scene_court(html->arena, court), SVG_FLOOR, html->writer);
    html_put(html, "</g>\n");
}

static void put_sample(const struct html *html, const struct key_row *row)
{
    struct scene *scene = arena_new(html->arena, struct scene);
    scene->theme = THEME_SCREEN;
    scene_key_sample(html->arena, scene, row->class, vec2_of(0.5, KEY_HIGH / 2), row->width - 2);
    html_put(html, "<g id=\"key.%s\">\n", str_of(scene_class_word(row->class)));
    svg_write_part(scene, SVG_MARKS, html->writer);
    html_put(html, "</g>\n");
}

void picture_library(const struct html *html, unsigned courts)
{
    html_put(html, "<svg class=\"library floor\" width=\"0\" height=\"0\" aria-hidden=\"true\">"
                   "<defs>\n");
    for (int code = 0; code < COURT_COUNT; code++) {
        if (courts >> code & 1) {
            put_court(html, (enum court_code)code);
        }
    }
    for (size_t i = 0; i < KEY_ROWS; i++) {
        put_sample(html, &key_rows[i]);
    }
    html_put(html, "<g id=\"sign\"><path class=\"line\" d=\"M9 1.5l7.6 13.6H1.4z\"/>"
                   "<path class=\"line\" d=\"M9 6v4.6m0 1.6v1.4\"/></g>\n"
                   "</defs></svg>\n");
}

/* ---- diagrams ---- */

struct picture picture_make(struct arena *arena, const struct diagram *diagram,
                            const diagram_list *together, const struct team *names)
{
    struct scene_options options = {.width = PICTURE_WIDTH,
                                    .theme = THEME_SCREEN,
                                    .accent = BODY_NONE,
                                    .names = names,
                                    .together = together};
    struct moving_part part = moving_part_of(diagram);
    return (struct picture){scene_make(arena, diagram, &options),
                            moving_make(arena, &part, 1, &options)};
}

static void put_floor(const struct html *html, const struct floor_place *floor,
                      enum court_code court)
{
    const double parts[] = {floor->across.x / SCENE_COURT_SCALE,
                            floor->across.y / SCENE_COURT_SCALE,
                            floor->down.x / SCENE_COURT_SCALE,
                            floor->down.y / SCENE_COURT_SCALE,
                            floor->origin.x,
                            floor->origin.y};
    html_put(html, "<use href=\"#court.%s\" transform=\"matrix(", str_of(court_of(court)->word));
    for (int i = 0; i < 6; i++) {
        html_put(html, i > 0 ? " " : "");
        html_number(html, parts[i], 4);
    }
    html_put(html, ")\"/>\n");
}

void picture_still(const struct html *html, const struct picture *picture, enum court_code court)
{
    const struct scene *scene = picture->still;
    html_put(html, "<svg class=\"floor still\" viewBox=\"0 0 %n %n\" aria-hidden=\"true\">\n",
             scene->width, scene->height);
    put_floor(html, &scene->floor, court);
    svg_write_part(scene, SVG_MARKS, html->writer);
    html_put(html, "</svg>\n");
}

void picture_key(const struct html *html, unsigned uses)
{
    html_put(html, "<p class=\"key\">");
    for (size_t i = 0; i < KEY_ROWS; i++) {
        const struct key_row *row = &key_rows[i];
        struct str mark = str_of(scene_class_word(row->class));
        if (uses >> row->class & 1) {
            html_put(html,
                     "<span data-mark=\"%s\"><svg class=\"floor\" width=\"%n\" height=\"%n\" "
                     "aria-hidden=\"true\">"
                     "<use href=\"#key.%s\"/></svg>%s</span>",
                     mark, row->width, KEY_HIGH, mark, str_of(scene_key_word(row->class, true)));
        }
    }
    html_put(html, "</p>\n");
}
