/* SPDX-License-Identifier: MIT */
/* film: the document round a moving picture. Takes a still and a moving picture of one frame, gives
 * one SVG in which the court stands once. What moves has its colors from the style alone: who can
 * animate knows styles, and it is shorter. Which of the two is seen is told three times: by plain
 * attributes for renderers that know nothing else (the still), by <set> for those that animate (the
 * moving one), by the style for paper and for less motion (the still). */
#include "picture/svg/film.h"

#include "picture/svg/element.h"
#include "picture/svg/svg.h"

/* How many items the ground and the floor on it are: they are the same in both. */
static size_t floor_count(const struct scene *scene)
{
    const struct scene_item *items = scene->items.at;
    size_t count = 0;
    while (count < scene->items.count &&
           (items[count].class == CLASS_PAGE || svg_is_floor(&items[count]))) {
        count++;
    }
    return count;
}

static struct role_set roles_of_moving(const struct moving *moving)
{
    struct role_set roles = {0};
    for (size_t i = 0; i < moving->groups.count; i++) {
        const struct moving_group *group = &moving->groups.at[i];
        for (size_t k = 0; k < group->marks.count; k++) {
            svg_roles_add(&roles, &group->marks.at[k].item);
        }
    }
    return roles;
}

static void put_switch(struct output *out)
{
    /* alone in a window it fills that, in a page or an image it is as large as it says */
    writer_text(out->writer, ":root.");
    writer_str(out->writer, out->prefix);
    writer_text(out->writer, "{width:100%;height:100%;color-scheme:light dark}\n@media "
                             "print,(prefers-reduced-motion:reduce){.");
    writer_str(out->writer, out->prefix);
    writer_text(out->writer, " .moving{display:none!important}.");
    writer_str(out->writer, out->prefix);
    writer_text(out->writer, " .still{display:inline!important}}\n");
}

void svg_film(struct arena *arena, const struct film *film, const struct film_options *options,
              struct writer *writer)
{
    const struct scene *still = film->still;
    struct output out = {
        .writer = writer, .theme = still->theme, .prefix = svg_prefix(arena, still, options->salt)};
    struct role_set moved = roles_of_moving(film->moving), roles = moved;
    for (size_t i = 0; i < still->items.count; i++) {
        svg_roles_add(&roles, &still->items.at[i]);
    }
    struct moving_options moving = {.loop = options->loop, .styled = true, .hidden = true};
    size_t floor = floor_count(still);
    svg_put_root(&out, still->width, still->height, options->fluid, true);
    svg_put_words(&out, "title", "-t", film->title);
    svg_put_words(&out, "desc", "-d", film->description);
    writer_text(writer, "<style type=\"text/css\">\n");
    svg_put_colors(&out, &moved);
    svg_put_media(&out, &roles);
    put_switch(&out);
    writer_text(writer, "</style>\n");
    svg_put_groups(&out, still->items.at, floor);
    writer_text(writer, "<g class=\"still\"><set attributeName=\"display\" to=\"none\"/>\n");
    svg_put_groups(&out, still->items.at + floor, still->items.count - floor);
    writer_text(writer, "</g>\n");
    svg_moving(film->moving, &moving, writer);
    writer_text(writer, "</svg>\n");
}
