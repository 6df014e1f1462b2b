/* SPDX-License-Identifier: MIT */
/* moving: groups of marks with keys as declarative animation. Takes a moving picture, gives bytes.
 * Numbers are as short as the eye allows: tenths of a point, times to two thousandths of a second.
 * Must not know plays or runs. */
#include "picture/svg/moving.h"

#include <math.h>

#include "picture/svg/element.h"

#define TIME_STEP 0.002 /* s: keys are told at least so finely */
#define TRAIL "0.55"    /* opacity */
#define ERASE 100.0     /* a line's length, told to the reader, so that shares are short numbers */

struct reel {
    struct output out;
    const struct moving *moving;
    bool loop;
    int time_decimals; /* of a share of the duration */
};

/* ---- numbers ---- */

/* ".5" for 0.5: a fraction without its zero. */
static void put_short(struct writer *writer, double value, int decimals)
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

static void put_share(struct reel *reel, double t)
{
    double share = real_clamp(t / reel->moving->duration, 0, 1);
    put_short(reel->out.writer, share, reel->time_decimals);
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

static void close_animation(struct reel *reel)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, " begin=\"0s\" dur=\"");
    writer_number(writer, reel->moving->duration, 3);
    writer_text(writer, reel->loop ? "s\" repeatCount=\"indefinite\"/>" : "s\" fill=\"freeze\"/>");
}

typedef void value_put(struct writer *writer, struct vec2 at);

static void value_point(struct writer *writer, struct vec2 at)
{
    put_short(writer, at.x, 1);
    writer_text(writer, " ");
    put_short(writer, at.y, 1);
}

static void value_erased(struct writer *writer, struct vec2 at)
{
    put_short(writer, -ERASE * at.x, 1);
}

static void value_x(struct writer *writer, struct vec2 at)
{
    put_short(writer, at.x, 1);
}

static void value_y(struct writer *writer, struct vec2 at)
{
    put_short(writer, at.y, 1);
}

/* The keys; what comes before the first is as it is there, and after the last as there. */
static void put_keys(struct reel *reel, const moving_keys *keys, value_put *put)
{
    struct writer *writer = reel->out.writer;
    size_t last = keys->count - 1;
    bool early = keys->at[0].t > 0, late = keys->at[last].t < reel->moving->duration;
    writer_text(writer, " values=\"");
    for (size_t i = 0; i < keys->count + early + late; i++) {
        size_t at = i < early ? 0 : i - early > last ? last : i - early;
        writer_text(writer, i ? ";" : "");
        put(writer, keys->at[at].at);
    }
    writer_text(writer, "\" keyTimes=\"");
    for (size_t i = 0; i < keys->count + early + late; i++) {
        writer_text(writer, i ? ";" : "");
        if (i < early) {
            writer_text(writer, "0");
        } else if (i - early > last) {
            writer_text(writer, "1");
        } else {
            put_share(reel, keys->at[i - early].t);
        }
    }
    writer_text(writer, "\"");
}

static void animate_keys(struct reel *reel, const char *attribute, const moving_keys *keys,
                         value_put *put)
{
    open_animation(reel, "animate", attribute);
    put_keys(reel, keys, put);
    close_animation(reel);
}

/* Seen in some stretches only. */
static void animate_shows(struct reel *reel, const moving_shows *shows)
{
    struct writer *writer = reel->out.writer;
    bool first = shows->at[0].from <= 0;
    open_animation(reel, "animate", "visibility");
    writer_text(writer, " calcMode=\"discrete\" values=\"");
    writer_text(writer, first ? "" : "hidden;");
    for (size_t i = 0; i < shows->count; i++) {
        bool stays = shows->at[i].to > reel->moving->duration;
        writer_text(writer, i ? ";visible" : "visible");
        writer_text(writer, stays ? "" : ";hidden");
    }
    writer_text(writer, "\" keyTimes=\"0");
    for (size_t i = 0; i < shows->count; i++) {
        if (i > 0 || !first) {
            writer_text(writer, ";");
            put_share(reel, shows->at[i].from);
        }
        if (shows->at[i].to <= reel->moving->duration) {
            writer_text(writer, ";");
            put_share(reel, shows->at[i].to);
        }
    }
    writer_text(writer, "\"");
    close_animation(reel);
}

/* ---- marks ---- */

/* Is it there from the beginning to the end? */
static bool always(const struct reel *reel, const moving_shows *shows)
{
    return shows->count == 0 || (shows->count == 1 && shows->at[0].from <= 0 &&
                                 shows->at[0].to >= reel->moving->duration);
}

static void put_halo(struct reel *reel, const struct moving_mark *mark)
{
    struct scene_item rim = mark->item;
    rim.fill = ROLE_NONE;
    rim.stroke = ROLE_FLOOR;
    rim.width = 0.22 * mark->item.size;
    writer_text(reel->out.writer, "<g");
    svg_put_classes(&reel->out, NULL, &rim);
    svg_put_paint(&reel->out, &rim);
    writer_text(reel->out.writer, " paint-order=\"stroke\">");
}

static void put_line(struct reel *reel, const struct moving_mark *mark)
{
    struct writer *writer = reel->out.writer;
    const struct scene_item *item = &mark->item;
    struct vec2 fixed = item->path[0].p[0];
    writer_text(writer, "<line");
    svg_put_classes(&reel->out, NULL, item);
    svg_put_paint(&reel->out, item);
    svg_put_number(&reel->out, "x1", fixed.x);
    svg_put_number(&reel->out, "y1", fixed.y);
    svg_put_number(&reel->out, "x2", fixed.x);
    svg_put_number(&reel->out, "y2", fixed.y);
    if (mark->dash > 0) {
        writer_text(writer, " stroke-dasharray=\"");
        put_short(writer, mark->dash, 2);
        writer_text(writer, " ");
        put_short(writer, mark->space, 2);
        writer_text(writer, "\"");
    }
    writer_text(writer, ">");
    animate_keys(reel, "x2", &mark->ends, value_x);
    animate_keys(reel, "y2", &mark->ends, value_y);
    writer_text(writer, "</line>\n");
}

/* A mark stands in a group of its own when it comes and goes, or is erased. */
static void put_mark(struct reel *reel, const struct moving_mark *mark)
{
    struct writer *writer = reel->out.writer;
    bool shows = !always(reel, &mark->shows), erased = mark->erased.count > 0;
    bool wrapped = shows || erased || mark->trail;
    if (wrapped) {
        writer_text(writer, "<g");
        writer_text(writer, mark->trail ? " opacity=\"" TRAIL "\"" : "");
        writer_text(writer, shows ? " visibility=\"hidden\"" : "");
        writer_text(writer, erased ? " stroke-dasharray=\"100 200\">" : ">");
    }
    if (shows) {
        animate_shows(reel, &mark->shows);
    }
    if (erased) {
        animate_keys(reel, "stroke-dashoffset", &mark->erased, value_erased);
    }
    if (mark->halo) {
        put_halo(reel, mark);
    }
    if (mark->ends.count > 0) {
        put_line(reel, mark);
    } else {
        svg_put_item_with(&reel->out, &mark->item, false, erased ? " pathLength=\"100\"" : "");
    }
    writer_text(writer, mark->halo ? "</g>" : "");
    writer_text(writer, wrapped ? "</g>" : "");
}

static void put_who(struct reel *reel, const struct moving_group *group)
{
    char text[8] = {' ', body_is_defender(group->who) ? 'x' : 'p', 0};
    if (body_number(group->who) > 0) {
        number_print(text + 2, body_number(group->who), 0, false);
    }
    writer_text(reel->out.writer, group->who == BODY_COACH ? " coach" : text);
}

static void put_group(struct reel *reel, const struct moving_group *group)
{
    struct writer *writer = reel->out.writer;
    writer_text(writer, "<g class=\"");
    writer_text(writer, scene_class_word(group->class));
    if (group->who != BODY_NONE) {
        put_who(reel, group);
    }
    writer_text(writer, "\">");
    if (group->way.count > 0) {
        open_animation(reel, "animateTransform", "transform");
        writer_text(writer, " type=\"translate\"");
        put_keys(reel, &group->way, value_point);
        close_animation(reel);
    }
    for (size_t i = 0; i < group->marks.count; i++) {
        put_mark(reel, &group->marks.at[i]);
    }
    writer_text(writer, "</g>\n");
}

void svg_moving(const struct moving *moving, const struct moving_options *options,
                struct writer *writer)
{
    struct reel reel = {
        .out = {.writer = writer, .theme = moving->theme, .styled = options->styled},
        .moving = moving,
        .loop = options->loop,
        .time_decimals = 1};
    for (double finest = 0.1; finest * moving->duration > 2 * TIME_STEP; finest /= 10) {
        reel.time_decimals++;
    }
    writer_text(writer, "<g class=\"moving\"");
    if (options->hidden) {
        writer_text(writer, " display=\"none\"><set attributeName=\"display\" to=\"inline\" "
                            "begin=\"0s\"/>\n");
    } else {
        writer_text(writer, ">\n");
    }
    for (size_t i = 0; i < moving->groups.count; i++) {
        put_group(&reel, &moving->groups.at[i]);
    }
    writer_text(writer, "</g>\n");
}
