/* SPDX-License-Identifier: MIT */
/* names: when asked for, the first name of whoever plays a spot, small beside its numeral. */
#include "picture/scene/drawing.h"

static void name_put(struct drawing *drawing, const struct symbol *symbol, struct str name)
{
    static const struct vec2 ways[] = {{1, 0},     {-1, 0},     {0, 1},      {0, -1},
                                       {0.8, 0.7}, {-0.8, 0.7}, {0.8, -0.7}, {-0.8, -0.7}};
    double size = drawing->size.lettering, half = metrics_width(FACE_MEDIUM, size, name) / 2,
           best = 90;
    struct vec2 chosen = {0, 0};
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++) {
        double off = symbol->radius + 1.2;
        struct vec2 at = vec2_of(symbol->at.x + ways[i].x * (off + half),
                                 symbol->at.y + ways[i].y * (off + 0.45 * size));
        double edge = half + 0.5, score = words_score(drawing, name, size, at) + 0.5 * (double)i;
        bool out = at.x < edge || at.x > drawing->frame.width - edge;
        if (!out && score < best) {
            best = score;
            chosen = at;
        }
    }
    if (best < 90) {
        words_put(drawing, CLASS_PLAYER, name, size, chosen, FACE_MEDIUM, ROLE_SOFT);
        drawing->scene->items.at[drawing->scene->items.count - 1].who = symbol->who;
    }
}

void names_draw(struct drawing *drawing)
{
    const struct team *team = drawing->options->names;
    for (size_t i = 0; team && !drawing->size.small && i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        struct str name = team_first_name(team, drawing->play, symbol->who);
        if (name.size > 0) {
            name_put(drawing, symbol, name);
        }
    }
}
