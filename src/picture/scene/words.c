/* SPDX-License-Identifier: MIT */
/* words: lettering on the floor (times, lengths): scored by what it would lie on, and put down with
 * white behind it. */
#include "picture/scene/drawing.h"

static size_t pieces_of(double width, double size)
{
    size_t pieces = (size_t)(width / (0.7 * size)) + 1;
    return pieces < 2 ? 2 : pieces;
}

static struct vec2 piece_at(struct vec2 at, double width, double size, size_t i, size_t pieces)
{
    double reach = real_max(0, width - 0.7 * size);
    return vec2_of(at.x - reach / 2 + reach * (double)i / (double)(pieces - 1), at.y);
}

double words_score(const struct drawing *drawing, struct str text, double size, struct vec2 at)
{
    double width = metrics_width(FACE_MEDIUM, size, text), worst = 0;
    size_t pieces = pieces_of(width, size);
    for (size_t i = 0; i < pieces; i++) {
        worst = real_max(worst,
                         place_score(drawing, piece_at(at, width, size, i, pieces), 0.42 * size));
    }
    return worst;
}

void words_put(struct drawing *drawing, enum scene_class class, struct str text, double size,
               struct vec2 at, enum face face, enum role role)
{
    double width = metrics_width(face, size, text), half = width / 2 + 0.5, high = 0.41 * size;
    pen_move(drawing, vec2_of(at.x - half, at.y - high));
    pen_line(drawing, vec2_of(at.x + half, at.y - high));
    pen_line(drawing, vec2_of(at.x + half, at.y + high));
    pen_line(drawing, vec2_of(at.x - half, at.y + high));
    pen_close(drawing);
    struct scene_item *item = pen_fill(drawing, class, ground_at(drawing, at));
    item->casing = true;
    put_text(drawing, class, text, at, size, face, role);
    size_t pieces = pieces_of(width, size);
    for (size_t i = 0; i < pieces; i++) {
        VEC_PUSH(drawing->arena, &drawing->words, piece_at(at, width, size, i, pieces));
    }
}
