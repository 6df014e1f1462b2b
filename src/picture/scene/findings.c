/* SPDX-License-Identifier: MIT */
/* findings: what the checks saw, drawn where it is: a distance as a dimension line with its length,
 * a screen's angle as an arc with its degrees, a closed passing lane hatched, a time with its
 * seconds, and each with the square and letter that open its text. */
#include "picture/scene/drawing.h"

#include <string.h>

#define ARC 3.4          /* feet: the radius of an angle's arc */
#define WORDS_MOST 150.0 /* of score: lettering that would lie so badly is left out (ours) */

static enum role finding_role(const struct drawing *drawing)
{
    return drawing->options->theme == THEME_DARK ? ROLE_WARNING : ROLE_ACCENT;
}

/* Those of one diagram that are drawn and listed, in order: the first has the letter A. */
struct finding_refs findings_of(struct arena *arena, const struct diagram *diagram,
                                const struct scene_options *options)
{
    struct finding_refs shown = {0};
    const finding_list *findings = options->findings;
    for (size_t i = 0; findings && i < findings->count; i++) {
        const struct finding *finding = &findings->at[i];
        if (finding_is_of(finding, diagram->step, diagram->branch)) {
            VEC_PUSH(arena, &shown, finding);
        }
    }
    if (shown.count > 0 && sizes_of(frame_of(arena, diagram, options).k).small) {
        shown.count = 0; /* a small picture drops what was checked before what is run */
    }
    return shown;
}

static void thin_line(struct drawing *drawing, struct vec2 a, struct vec2 b, double width)
{
    pen_move(drawing, a);
    pen_line(drawing, b);
    pen_stroke(drawing, CLASS_FINDING, finding_role(drawing), width);
}

enum { LANE_CORNERS = 8 }; /* of a lane with the picture's four sides cut off */

/* What of a lane from a to b is in the picture: how many corners it has; 0: it is too short. */
static size_t lane_corners(const struct drawing *drawing, const struct finding *finding,
                           struct vec2 corner[LANE_CORNERS])
{
    double k = drawing->size.k;
    struct vec2 a = frame_point(&drawing->frame, finding->a),
                b = frame_point(&drawing->frame, finding->b);
    struct vec2 way = vec2_unit(vec2_sub(b, a)), square = vec2_left(way);
    if (vec2_distance(a, b) < 5 * k) {
        return 0;
    }
    struct vec2 from = vec2_along(a, way, 2.4 * k), to = vec2_along(b, way, -1.3 * k);
    corner[0] = vec2_along(from, square, 0.6 * k);
    corner[1] = vec2_along(to, square, 1.9 * k);
    corner[2] = vec2_along(to, square, -1.9 * k);
    corner[3] = vec2_along(from, square, -0.6 * k);
    struct vec2 low = {0, drawing->frame.top}, high = {drawing->frame.width, drawing->frame.height};
    const struct vec2 side[4][2] = {{low, {-1, 0}}, {low, {0, -1}}, {high, {1, 0}}, {high, {0, 1}}};
    size_t count = 4;
    for (size_t i = 0; i < 4; i++) {
        struct vec2 kept[LANE_CORNERS];
        count = polygon_cut(corner, count, side[i][0], side[i][1], kept);
        for (size_t c = 0; c < count; c++) {
            corner[c] = kept[c];
        }
    }
    return count;
}

/* The piece of the line through p along `way` that lies in the lane. */
static bool clip_to(const struct vec2 *corner, size_t count, struct vec2 p, struct vec2 way,
                    double reach, struct vec2 out[2])
{
    size_t found = 0;
    struct vec2 a = vec2_along(p, way, -reach), b = vec2_along(p, way, reach);
    for (size_t i = 0; i < count && found < 2; i++) {
        double t, u;
        if (segment_cross(a, b, corner[i], corner[(i + 1) % count], &t, &u)) {
            out[found++] = vec2_mix(a, b, t);
        }
    }
    return found == 2 && vec2_distance(out[0], out[1]) > 0.3;
}

static void lane_draw(struct drawing *drawing, const struct finding *finding)
{
    struct vec2 corner[LANE_CORNERS], ends[2];
    size_t count = lane_corners(drawing, finding, corner);
    if (count < 3) {
        return;
    }
    double k = drawing->size.k;
    struct vec2 a = frame_point(&drawing->frame, finding->a),
                b = frame_point(&drawing->frame, finding->b);
    struct vec2 way = vec2_unit(vec2_sub(b, a)), hatch = vec2_turn(way, REAL_PI / 4);
    for (double along = -4 * k; along < vec2_distance(a, b) + 4 * k; along += 0.95 * k * 1.414) {
        if (clip_to(corner, count, vec2_along(a, way, along), hatch, 8 * k, ends)) {
            thin_line(drawing, ends[0], ends[1], drawing->size.hatch_line);
        }
    }
    pen_move(drawing, corner[0]);
    for (size_t i = 1; i < count; i++) {
        pen_line(drawing, corner[i]);
    }
    pen_close(drawing);
    pen_stroke(drawing, CLASS_FINDING, finding_role(drawing), drawing->size.hatch_line);
}

void findings_under(struct drawing *drawing)
{
    struct finding_refs shown = findings_of(drawing->arena, drawing->diagram, drawing->options);
    for (size_t i = 0; i < shown.count; i++) {
        if (shown.at[i]->mark == MARK_LANE) {
            lane_draw(drawing, shown.at[i]);
        }
    }
}

static struct str length_text(struct drawing *drawing, double metres)
{
    struct strbuf text;
    strbuf_init(&text, drawing->arena);
    play_length(&text, drawing->play, metres);
    return strbuf_str(&text);
}

/* A dimension line beside a and b, with the length in a break of it; returns its middle. */
static struct vec2 dimension_draw(struct drawing *drawing, const struct finding *finding)
{
    double k = drawing->size.k, size = drawing->size.lettering, best = 1e9, offset = 0;
    struct vec2 a = frame_point(&drawing->frame, finding->a),
                b = frame_point(&drawing->frame, finding->b);
    struct vec2 way = vec2_distance(a, b) > 0.1 ? vec2_unit(vec2_sub(b, a)) : vec2_of(1, 0),
                square = vec2_left(way);
    struct vec2 middle = vec2_mix(a, b, 0.5);
    struct str text = length_text(drawing, finding->amount);
    static const double offs[] = {3.2, -3.2, 2.4, -2.4, 4.2, -4.2, 5.4, -5.4};
    for (size_t i = 0; i < sizeof offs / sizeof *offs; i++) {
        double score = words_score(drawing, text, size, vec2_along(middle, square, offs[i] * k)) +
                       0.5 * (double)i;
        score += 0.5 * place_score(drawing, vec2_along(a, square, offs[i] * k), 0.4 * k);
        score += 0.5 * place_score(drawing, vec2_along(b, square, offs[i] * k), 0.4 * k);
        if (score < best) {
            best = score;
            offset = offs[i] * k;
        }
    }
    if (best > WORDS_MOST) { /* no room for its length: the square and the text say it */
        return middle;
    }
    double thin = drawing->size.hatch_line, half = vec2_distance(a, b) / 2;
    double side = offset < 0 ? -1 : 1;
    struct vec2 at = vec2_along(middle, square, offset);
    struct vec2 ends[2] = {vec2_along(a, square, offset), vec2_along(b, square, offset)};
    for (int e = 0; e < 2; e++) {
        struct vec2 foot = e == 0 ? a : b;
        thin_line(drawing, vec2_along(foot, square, side * (drawing->size.ring + 0.5 * k)),
                  vec2_along(ends[e], square, side * 0.5 * k), thin);
        struct vec2 slant = vec2_scale(vec2_turn(way, REAL_PI / 4), 0.55 * k);
        thin_line(drawing, vec2_sub(ends[e], slant), vec2_add(ends[e], slant),
                  1.9 * drawing->size.check_line);
    }
    double wide = metrics_width(FACE_SEMIBOLD, size, text) / 2 + 0.3 * k;
    if (half > wide * 0.6) {
        thin_line(drawing, ends[0], ends[1], drawing->size.check_line);
    }
    words_put(drawing, CLASS_FINDING, text, size, at, FACE_SEMIBOLD, finding_role(drawing));
    return at;
}

/* ---- an angle ---- */

enum { ARC_POINTS = 8 }; /* that no lettering is to lie on */

static const struct stop *bar_of(const struct drawing *drawing, body who)
{
    for (size_t i = 0; i < drawing->stops.count; i++) {
        const struct stop *stop = &drawing->stops.at[i];
        if (stop->kind == STOP_BAR && stop->who == who) {
            return stop;
        }
    }
    return NULL;
}

/* The line that the screener ran to the bar lies along his back: it is one side of the angle. */
static bool line_is_back(const struct drawing *drawing, const struct stop *bar, struct vec2 back)
{
    for (size_t i = 0; i < drawing->strokes.count; i++) {
        const struct stroke *stroke = &drawing->strokes.at[i];
        if (stroke->end >= 0 && &drawing->stops.at[stroke->end] == bar &&
            path_length(&stroke->path) > ARC * drawing->size.k) {
            struct vec2 way = path_direction(&stroke->path, path_length(&stroke->path));
            return vec2_angle(vec2_scale(way, -1), back) < REAL_PI / 18;
        }
    }
    return false;
}

/* Its degrees beyond the arc, in the middle of it or, where something is there, nearer to one of
 * its ends. */
static void degrees_put(struct drawing *drawing, const struct finding *finding, struct vec2 at,
                        struct vec2 back, double turn)
{
    static const double along[] = {.5, .25, .75, 0, 1}, offs[] = {1.9, 2.5, 3.1, -1.6, 3.7};
    double k = drawing->size.k, best = WORDS_MOST, size = drawing->size.lettering;
    struct str text =
        str_format(drawing->arena, "%d°", (int)(finding->amount * 180 / REAL_PI + .5));
    struct vec2 best_at = at;
    for (size_t a = 0; a < sizeof along / sizeof *along; a++) {
        for (size_t i = 0; i < sizeof offs / sizeof *offs; i++) {
            struct vec2 place =
                vec2_along(at, vec2_turn(back, turn * along[a]), ARC * k + offs[i] * k);
            double score = words_score(drawing, text, size, place) + 4 * (double)i + 12 * (double)a;
            if (score < best) {
                best = score;
                best_at = place;
            }
        }
    }
    if (best < WORDS_MOST) { /* else the text says it */
        words_put(drawing, CLASS_FINDING, text, size, best_at, FACE_SEMIBOLD,
                  finding_role(drawing));
    }
}

/* An arc with its degrees between the way the screener's back is turned and the way the user
 * leaves; its corner is the middle of the bar. */
static struct vec2 angle_draw(struct drawing *drawing, const struct finding *finding)
{
    double k = drawing->size.k, r = ARC * k, thin = drawing->size.hatch_line;
    const struct stop *bar = bar_of(drawing, finding->who[0]);
    struct vec2 at = bar ? bar->at : frame_point(&drawing->frame, finding->a);
    struct vec2 floor_at = frame_point(&drawing->frame, finding->a);
    struct vec2 back = vec2_unit(vec2_sub(frame_point(&drawing->frame, finding->b), floor_at)),
                way = vec2_unit(vec2_sub(frame_point(&drawing->frame, finding->c), floor_at));
    back = bar ? vec2_scale(bar->facing, -1) : back;
    double turn = vec2_cross(back, way) < 0 ? -finding->amount : finding->amount;
    way = vec2_turn(back, turn); /* true to its number wherever the bar has been moved */
    thin_line(drawing, vec2_along(at, way, 0.3 * k), vec2_along(at, way, r + 1.1 * k), thin);
    if (!bar || !line_is_back(drawing, bar, back)) {
        thin_line(drawing, vec2_along(at, back, 0.3 * k), vec2_along(at, back, r + 1.1 * k), thin);
    }
    pen_move(drawing, vec2_along(at, back, r));
    pen_arc(drawing, at, vec2_scale(back, r), vec2_scale(vec2_left(back), r), 0, turn);
    pen_stroke(drawing, CLASS_FINDING, finding_role(drawing), 1.9 * drawing->size.check_line);
    degrees_put(drawing, finding, at, back, turn);
    for (int i = 0; i <= ARC_POINTS; i++) {
        struct vec2 out = vec2_turn(back, turn * i / ARC_POINTS);
        VEC_PUSH(drawing->arena, &drawing->words, vec2_along(at, out, r));
    }
    return vec2_along(at, vec2_turn(back, turn / 2), -2 * k); /* its square stands outside it */
}

/* ---- squares and letters ---- */

void finding_square(struct drawing *drawing, const struct finding *finding, size_t letter,
                    struct vec2 at, double size, enum scene_class class)
{
    double half = 0.64 * size;
    bool filled = finding->severity != SEVERITY_NOTE;
    pen_move(drawing, vec2_of(at.x - half, at.y - half));
    pen_line(drawing, vec2_of(at.x + half, at.y - half));
    pen_line(drawing, vec2_of(at.x + half, at.y + half));
    pen_line(drawing, vec2_of(at.x - half, at.y + half));
    pen_close(drawing);
    struct scene_item *item = pen_stroke(drawing, class, finding_role(drawing), 0.8);
    item->join = JOIN_MITER;
    item->fill = filled ? finding_role(drawing) : ground_at(drawing, at);
    enum role ink = filled ? ROLE_PAGE : finding_role(drawing);
    put_text(drawing, class, str_format(drawing->arena, "%c", (char)('A' + letter % 26)), at, size,
             FACE_BOLD, ink);
}

/* The square near a place, where it lies on nothing; returns where. */
static struct vec2 tag_draw(struct drawing *drawing, const struct finding *finding,
                            struct vec2 near, size_t letter)
{
    double size = drawing->size.lettering, half = 0.64 * size, best = 1e9, k = drawing->size.k;
    struct vec2 at = near;
    for (int ring = 0; ring < 4; ring++) {
        for (int i = 0; i < 16; i++) {
            double off = 2.6 * k + ring * 1.4 * k;
            struct vec2 place = vec2_along(
                near, vec2_of(real_cos(i * REAL_PI / 8), real_sin(i * REAL_PI / 8)), off);
            double score = place_score(drawing, place, 1.25 * half) + 3 * ring + 0.01 * i;
            if (score < best) {
                best = score;
                at = place;
            }
        }
    }
    finding_square(drawing, finding, letter, at, size, CLASS_FINDING);
    VEC_PUSH(drawing->arena, &drawing->words, at);
    return at;
}

/* What was measured, beside the square of a place: so many seconds, so many feet. */
static void amount_draw(struct drawing *drawing, const struct finding *finding, struct vec2 tag)
{
    double size = drawing->size.lettering;
    struct strbuf out;
    strbuf_init(&out, drawing->arena);
    bool seconds = strcmp(finding->row->unit, "s") == 0,
         length = strcmp(finding->row->unit, "ft") == 0;
    if (finding->amount <= 0 || !(seconds || length)) {
        return;
    }
    if (seconds) {
        strbuf_number(&out, finding->amount, 1);
        strbuf_text(&out, " s");
    } else {
        play_length(&out, drawing->play, finding->amount);
    }
    struct str text = strbuf_str(&out);
    double aside = 0.64 * size + metrics_width(FACE_SEMIBOLD, size, text) / 2 + 0.3 * size;
    const struct vec2 places[] = {{tag.x + aside, tag.y},
                                  {tag.x - aside, tag.y},
                                  {tag.x, tag.y + 1.3 * size},
                                  {tag.x, tag.y - 1.3 * size}};
    double best = 150;
    size_t chosen = 0;
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        double score = words_score(drawing, text, size, places[i]) + 4 * (double)i;
        if (score < best) {
            best = score;
            chosen = i;
        }
    }
    if (best < 150) {
        words_put(drawing, CLASS_FINDING, text, size, places[chosen], FACE_SEMIBOLD,
                  finding_role(drawing));
    }
}

void findings_draw(struct drawing *drawing)
{
    struct finding_refs shown = findings_of(drawing->arena, drawing->diagram, drawing->options);
    for (size_t i = 0; i < shown.count; i++) {
        const struct finding *finding = shown.at[i];
        body who = finding->who[0];
        bool placed = finding->mark != MARK_NONE;
        if (!placed && (who >= BODY_COUNT || !drawing->segment->track[who].on_floor)) {
            continue; /* of the whole step: the list has it */
        }
        struct vec2 near =
            frame_point(&drawing->frame,
                        placed ? finding->a : segment_at(drawing->segment, who, finding->time));
        if (finding->mark == MARK_DISTANCE) {
            near = dimension_draw(drawing, finding);
        } else if (finding->mark == MARK_LANE) {
            near = vec2_mix(near, frame_point(&drawing->frame, finding->b), 0.4);
        } else if (finding->mark == MARK_ANGLE) {
            near = angle_draw(drawing, finding);
        }
        struct vec2 tag = tag_draw(drawing, finding, near, i);
        if (finding->mark == MARK_POINT || !placed) {
            amount_draw(drawing, finding, tag);
        }
    }
}
