/* SPDX-License-Identifier: MIT */
/* film: see film.h. Takes a moving picture, gives rows of whole numbers and pieces of SVG. */
#include "page/web/film.h"

#include <math.h>

#include "picture/svg/moving.h"

#define QUARTERS (1 / MOVING_GRAIN)
#define HUNDREDTHS 100.0

/* ---- pieces ---- */

static bool keep(void *ctx, const char *bytes, size_t size)
{
    strbuf_add(ctx, (struct str){bytes, size});
    return true;
}

static int piece_number(struct arena *arena, struct cast *cast, struct str piece)
{
    for (size_t i = 0; i < cast->pieces.count; i++) {
        if (str_equal(cast->pieces.at[i], piece)) {
            return (int)i;
        }
    }
    VEC_PUSH(arena, &cast->pieces, piece);
    return (int)cast->pieces.count - 1;
}

enum piece { PIECE_FRAME, PIECE_PAINT, PIECE_SHAPE };

static int piece_of(const struct html *html, struct cast *cast, enum piece kind,
                    const struct moving_group *group, const struct moving_mark *mark)
{
    struct strbuf text;
    strbuf_init(&text, html->arena);
    struct writer writer = {.write = keep, .ctx = &text};
    if (kind == PIECE_FRAME) {
        svg_moving_frame(group, &writer);
    } else if (kind == PIECE_PAINT) {
        svg_moving_paint(mark, &writer);
    } else {
        svg_moving_shape(mark, &writer);
    }
    return piece_number(html->arena, cast, strbuf_str(&text));
}

/* ---- rows of numbers ---- */

static long ticks(const struct moving *moving, double seconds)
{
    return (long)floor(seconds / moving->tick + 0.5);
}

/* A row being written: each key as the difference to the one before. */
struct row {
    const struct html *html;
    long last[3];
    bool any;
};

static void row_add(struct row *row, const long *key, int size)
{
    for (int i = 0; i < size; i++) {
        html_put(row->html, row->any ? "," : "[");
        html_number(row->html, (double)(key[i] - row->last[i]), 0);
        row->last[i] = key[i];
        row->any = true;
    }
}

static void row_end(struct row *row)
{
    html_put(row->html, row->any ? "]" : "0");
}

/* Keys of `values` values each, times `scale`; one key alone where nothing changes. */
static void put_keys(const struct html *html, const struct moving *moving, const moving_keys *keys,
                     int values, double scale)
{
    struct row row = {.html = html};
    bool still = true;
    for (size_t i = 0; i < keys->count; i++) {
        still =
            still && keys->at[i].at.x == keys->at[0].at.x && keys->at[i].at.y == keys->at[0].at.y;
    }
    for (size_t i = 0; i < keys->count && (i == 0 || !still); i++) {
        const struct moving_key *key = &keys->at[i];
        const long numbers[] = {ticks(moving, key->t), (long)floor(key->at.x * scale + 0.5),
                                (long)floor(key->at.y * scale + 0.5)};
        row_add(&row, numbers, 1 + values);
    }
    row_end(&row);
}

static void put_shows(const struct html *html, const struct moving *moving,
                      const moving_shows *shows)
{
    bool always = shows->count == 0 || (shows->count == 1 && shows->at[0].from <= 0 &&
                                        shows->at[0].to >= moving->duration);
    for (size_t i = 0; i < shows->count && !always; i++) {
        html_put(html, i > 0 ? ",%d,%d" : "[%d,%d", (int)ticks(moving, shows->at[i].from),
                 (int)ticks(moving, shows->at[i].to));
    }
    html_put(html, always ? "0" : "]");
}

/* ---- a film ---- */

static void put_mark(const struct html *html, struct cast *cast, const struct moving *moving,
                     const struct moving_group *group, const struct moving_mark *mark)
{
    html_put(html, ",[%d,%d", piece_of(html, cast, PIECE_PAINT, group, mark),
             piece_of(html, cast, PIECE_SHAPE, group, mark));
    if (mark->shows.count > 0 || mark->ends.count > 0) {
        html_put(html, ",");
        put_shows(html, moving, &mark->shows);
    }
    if (mark->ends.count > 0) {
        html_put(html, ",");
        put_keys(html, moving, &mark->ends, 2, QUARTERS);
    }
    html_put(html, "]");
}

/* The two lines of a shot are one path, each half as long as it. */
static double erased_scale(const struct moving_group *group)
{
    return group->class == CLASS_SHOT ? HUNDREDTHS / 2 : HUNDREDTHS;
}

void film_put(const struct html *html, struct cast *cast, const struct moving *moving)
{
    html_put(html, "[");
    html_number(html, moving->tick, 9);
    for (size_t i = 0; i < moving->groups.count; i++) {
        const struct moving_group *group = &moving->groups.at[i];
        html_put(html, ",[%d,", piece_of(html, cast, PIECE_FRAME, group, NULL));
        put_keys(html, moving, &group->way, 2, QUARTERS);
        html_put(html, ",");
        put_keys(html, moving, &group->erased, 1, erased_scale(group));
        html_put(html, ",");
        put_shows(html, moving, &group->shows);
        for (size_t k = 0; k < group->marks.count; k++) {
            put_mark(html, cast, moving, group, &group->marks.at[k]);
        }
        html_put(html, "]");
    }
    html_put(html, "]");
}

void cast_put(const struct html *html, const struct cast *cast)
{
    html_put(html, "<template class=\"cast\"><svg>\n");
    for (size_t i = 0; i < cast->pieces.count; i++) {
        writer_str(html->writer, cast->pieces.at[i]);
    }
    html_put(html, "</svg></template>\n");
}
