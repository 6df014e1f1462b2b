/* SPDX-License-Identifier: MIT */
/* reel: keys and stretches of time as declarative animation. Numbers are as short as the eye
 * allows: whole quarters of a point, times in ticks. What is played once begins when its first key
 * says; what begins again has everything told on the whole clock, so that nothing can drift apart.
 */
#include "picture/svg/reel.h"

#include <math.h>

/* ---- numbers ---- */

void reel_number(struct writer *writer, double value, int decimals)
{
    char text[NUMBER_MOST];
    size_t size = number_print(text, value, decimals, false);
    bool minus = size > 0 && text[0] == '-';
    const char *digits = text + minus;
    size -= minus;
    if (size > 1 && digits[0] == '0') {
        digits++;
        size--;
    }
    writer_text(writer, minus ? "-" : "");
    writer_bytes(writer, digits, size);
}

/* Seconds: what a clock value without a unit is. */
static void put_time(struct reel *reel, const char *name, double t, int decimals)
{
    writer_text(reel->out.writer, " ");
    writer_text(reel->out.writer, name);
    writer_text(reel->out.writer, "=\"");
    reel_number(reel->out.writer, t, decimals);
    writer_text(reel->out.writer, "\"");
}

/* ---- animations ---- */

static void open_animation(struct reel *reel, const char *element, const char *attribute)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, "<");
    writer_text(writer, element);
    writer_text(writer, " attributeName=\"");
    writer_text(writer, attribute);
    writer_text(writer, "\"");
}

/* What comes and goes, and lines that are erased, do it to a hundredth of a second; what is told on
 * the whole clock, where the shares of it are ticks, has it to a thousandth. */
enum { DECIMALS = 2, WHOLE_DECIMALS = 3 };

static double hundredths(double t)
{
    return floor(t * 100 + 0.5) / 100;
}

/* From `begin` to `end`: once, and what it ends with stays where it is seen longer; or all the time
 * again and again. */
static void close_animation(struct reel *reel, double begin, double end)
{
    if (begin > 0) {
        put_time(reel, "begin", begin, DECIMALS);
    }
    bool whole = begin <= 0 && end > reel->moving->duration - reel->moving->tick / 2;
    put_time(reel, "dur", whole ? end : hundredths(end) - hundredths(begin),
             whole ? WHOLE_DECIMALS : DECIMALS);
    bool stays = end < reel->until - reel->moving->tick / 2;
    writer_text(reel->out.writer, reel->loop ? " repeatCount=\"indefinite\"/>"
                                  : stays    ? " fill=\"freeze\"/>"
                                             : "/>");
}

typedef void value_put(const struct reel *reel, struct vec2 at);

void reel_place(const struct reel *reel, double points)
{
    reel_number(reel->out.writer, svg_length(&reel->out, points), 0);
}

void reel_point(const struct reel *reel, struct vec2 at)
{
    reel_place(reel, at.x);
    writer_text(reel->out.writer, " ");
    reel_place(reel, at.y);
}

static void value_erased(const struct reel *reel, struct vec2 at)
{
    reel_place(reel, -at.x * reel->length);
}

static void value_x(const struct reel *reel, struct vec2 at)
{
    reel_place(reel, at.x);
}

static void value_y(const struct reel *reel, struct vec2 at)
{
    reel_place(reel, at.y);
}

/* The stretch of the clock that an animation is told on: a way on the whole of it, so that all its
 * times are ticks. */
struct stretch {
    double begin, end;
    int decimals; /* of a share of it */
};

static struct stretch stretch_of(const struct reel *reel, const moving_keys *keys, bool way)
{
    const struct moving *moving = reel->moving;
    double first = keys->at[0].t, last = keys->at[keys->count - 1].t;
    bool whole = reel->loop || way || last <= first ||
                 (first < moving->tick / 2 && last > moving->duration - moving->tick / 2);
    if (whole) {
        return (struct stretch){0, moving->duration, moving->decimals};
    }
    return (struct stretch){first, last, last - first > 1 ? 3 : 2};
}

/* The keys on a stretch; where they do not reach its ends, what they begin and end with holds
 * there.
 */
struct key_row {
    const moving_keys *keys;
    struct stretch stretch;
    bool early; /* the stretch begins before the first */
    size_t count;
};

static struct key_row row_of(const struct reel *reel, const moving_keys *keys, bool way)
{
    struct key_row row = {.keys = keys, .stretch = stretch_of(reel, keys, way)};
    double tick = reel->moving->tick / 2;
    bool late = keys->at[keys->count - 1].t < row.stretch.end - tick;
    row.early = keys->at[0].t > row.stretch.begin + tick;
    row.count = keys->count + row.early + late;
    return row;
}

static struct vec2 row_place(const struct key_row *row, size_t index)
{
    size_t last = row->keys->count - 1;
    index -= index > 0 && row->early;
    return row->keys->at[index > last ? last : index].at;
}

/* The share of the stretch. */
static double row_share(const struct key_row *row, size_t index)
{
    const struct stretch *stretch = &row->stretch;
    if (index == 0 || index + 1 == row->count) {
        return index == 0 ? 0 : 1;
    }
    double t = row->keys->at[index - row->early].t;
    return real_clamp((t - stretch->begin) / (stretch->end - stretch->begin), 0, 1);
}

static void put_row(struct reel *reel, const struct key_row *row, value_put *put)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, " values=\"");
    for (size_t i = 0; i < row->count; i++) {
        writer_text(writer, i ? ";" : "");
        put(reel, row_place(row, i));
    }
    writer_text(writer, "\"");
    if (row->count <= 2) {
        return; /* evenly from the one to the other */
    }
    writer_text(writer, " keyTimes=\"");
    for (size_t i = 0; i < row->count; i++) {
        writer_text(writer, i ? ";" : "");
        reel_number(writer, row_share(row, i), row->stretch.decimals);
    }
    writer_text(writer, "\"");
}

static void animate_keys(struct reel *reel, const char *element, const char *attribute,
                         const moving_keys *keys, value_put *put)
{
    struct key_row row = row_of(reel, keys, put == reel_point);
    open_animation(reel, element, attribute);
    put_row(reel, &row, put);
    close_animation(reel, row.stretch.begin, row.stretch.end);
}

void reel_way(struct reel *reel, const moving_keys *way)
{
    animate_keys(reel, "animateTransform", "transform", way, reel_point);
}

/* From where the line ends as it is drawn. */
static void animate_end(struct reel *reel, const char *attribute, const moving_keys *ends,
                        value_put *put)
{
    struct key_row row = row_of(reel, ends, false);
    if (row.count != 2) {
        animate_keys(reel, "animate", attribute, ends, put);
        return;
    }
    open_animation(reel, "animate", attribute);
    writer_text(reel->out.writer, " to=\"");
    put(reel, row_place(&row, 1));
    writer_text(reel->out.writer, "\"");
    close_animation(reel, row.stretch.begin, row.stretch.end);
}

void reel_ends(struct reel *reel, const moving_keys *ends)
{
    animate_end(reel, "x2", ends, value_x);
    animate_end(reel, "y2", ends, value_y);
}

void reel_erased(struct reel *reel, const moving_keys *erased, double length)
{
    reel->length = length;
    animate_keys(reel, "animate", "stroke-dashoffset", erased, value_erased);
}

bool reel_stands(const moving_keys *keys)
{
    for (size_t i = 1; i < keys->count; i++) {
        if (!vec2_near(keys->at[i].at, keys->at[0].at, MOVING_GRAIN / 2)) {
            return false;
        }
    }
    return keys->count > 0;
}

/* ---- what comes and goes ---- */

static bool to_the_end(const struct reel *reel, const struct moving_show *show)
{
    return show->to > reel->moving->duration;
}

bool reel_always(const struct reel *reel, const struct moving_show *show, size_t count)
{
    return count == 0 || (count == 1 && show->from <= 0 && to_the_end(reel, show));
}

/* Seen so in some stretches only, of an element that is otherwise by itself. */
static void seen_once(struct reel *reel, const char *so, const struct moving_show *show,
                      size_t count)
{
    for (size_t i = 0; i < count; i++) {
        open_animation(reel, "set", "display");
        writer_text(reel->out.writer, " to=\"");
        writer_text(reel->out.writer, so);
        writer_text(reel->out.writer, "\"");
        if (show[i].from > 0) {
            put_time(reel, "begin", show[i].from, DECIMALS);
        }
        if (!to_the_end(reel, &show[i])) {
            put_time(reel, "end", show[i].to, DECIMALS);
        }
        writer_text(reel->out.writer, "/>");
    }
}

/* The same again and again. */
static void seen_again(struct reel *reel, const struct moving_show *show, size_t count)
{
    struct writer *writer = reel->out.writer;
    double all = reel->moving->duration;
    bool first = show[0].from <= 0, last = to_the_end(reel, &show[count - 1]);
    open_animation(reel, "animate", "display");
    writer_text(writer, " calcMode=\"discrete\" values=\"");
    for (size_t i = 0; i < count; i++) {
        writer_text(writer, i ? ";" : "");
        writer_text(writer, i || !first ? "none;inline" : "inline");
    }
    writer_text(writer, last ? "" : ";none");
    writer_text(writer, "\" keyTimes=\"0");
    for (size_t i = 0; i < count; i++) {
        if (show[i].from > 0) {
            writer_text(writer, ";");
            reel_number(writer, show[i].from / all, reel->moving->decimals);
        }
        if (!to_the_end(reel, &show[i])) {
            writer_text(writer, ";");
            reel_number(writer, show[i].to / all, reel->moving->decimals);
        }
    }
    writer_text(writer, "\"");
    close_animation(reel, 0, all);
}

void reel_seen(struct reel *reel, const struct moving_show *show, size_t count)
{
    if (reel->loop) {
        seen_again(reel, show, count);
    } else {
        seen_once(reel, "inline", show, count);
    }
}

void reel_gone(struct reel *reel, double from)
{
    struct moving_show gone = {from, reel->moving->duration + 1};
    seen_once(reel, "none", &gone, 1);
}
