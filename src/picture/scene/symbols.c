/* SPDX-License-Identifier: MIT */
/* symbols: who stands where on paper (a little off the run's own place where a line of the court or
 * a neighbour would be under the numeral), and the marks themselves. */
#include "picture/scene/again.h"

#include <math.h>

#define PAST_RIM 4.0     /* feet: who is further from the basket has run on */
#define CAME_FEET 6.0    /* so far off it is seen from where he came, */
#define CAME_SECONDS 4.0 /* if he did so lately */
#define CLEAR_POINTS 0.9 /* white round a symbol's body */
#define OWN_NUMERAL 1.12 /* times the others' size: a copy loses the color, not that (ours) */
#define OVER 0.05        /* s: what ends so soon after the beginning is drawn as done (scope_of) */

struct str body_text(struct drawing *drawing, body who)
{
    if (who == BODY_COACH) {
        return STR("C");
    }
    return str_format(drawing->arena, "%d", body_number(who));
}

struct symbol *symbol_of(const struct drawing *drawing, body who)
{
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        if (drawing->symbols.at[i].who == who) {
            return &drawing->symbols.at[i];
        }
    }
    return NULL;
}

/* A perimeter place goes out until its clear disc misses the three-point line. All in feet from the
 * ring, of the half it is in. */
static struct vec2 off_the_arc(const struct court *court, struct vec2 p, double clear)
{
    double line = court->line / FEET, arc = court->arc / FEET, straight = court->straight / FEET;
    double wide = court->half_width / FEET;
    if (court->arc <= 0) {
        return p;
    }
    if (p.y * FEET > court->junction) {
        double far = vec2_length(p);
        if (far > arc - line && far < arc + clear) {
            struct vec2 out = vec2_scale(vec2_unit(p), arc + clear);
            if (fabs(out.x) > wide - clear) { /* no room: slide round the arc instead */
                out.x = p.x < 0 ? -(wide - clear) : wide - clear;
            }
            return out;
        }
        return p;
    }
    if (fabs(p.x) > straight - line && fabs(p.x) < straight + clear && fabs(p.x) < wide) {
        double middle = (straight + wide) / 2;
        double x = real_min(straight + clear, real_max(middle, wide - clear));
        p.x = p.x < 0 ? -x : x;
    }
    return p;
}

static struct vec2 off_the_block(const struct court *court, struct vec2 p, double around)
{
    double lane = court->lane_half_width / FEET;
    double near = court->block_near / FEET - around, far = court->block_far / FEET + around;
    double off = fabs(p.x) - lane;
    if (court->block_depth > 0 && p.y > near && p.y < far && off > 0.5 && off < 2.0) {
        p.x = p.x < 0 ? -(lane + 2.0) : lane + 2.0;
    }
    return p;
}

static struct vec2 off_the_ring(const struct court *court, struct vec2 p, double clear)
{
    double ring = court->ring / FEET + clear;
    double far = vec2_length(p);
    if (far >= ring) {
        return p;
    }
    struct vec2 out = far > 0.2 ? vec2_unit(p) : vec2_of(0, 1);
    if (out.y < 0) { /* not behind the board */
        out = vec2_unit(vec2_of(out.x == 0 ? 1 : out.x, 0.3));
    }
    return vec2_scale(out, ring);
}

/* A thrower stands clear of the line he throws over. */
static struct vec2 off_the_floor(const struct court *court, struct vec2 p)
{
    double wide = court->half_width / FEET, end = court->baseline / FEET;
    if (p.y < end - 0.3) {
        p.y = end - 2.4;
    } else if (fabs(p.x) > wide + 0.3) {
        p.x = p.x < 0 ? -(wide + 2.2) : wide + 2.2;
    }
    return p;
}

static bool outside(const struct court *court, struct vec2 p)
{
    return p.y < court->baseline / FEET - 0.3 || fabs(p.x) > court->half_width / FEET + 0.3;
}

struct vec2 symbol_spot(const struct drawing *drawing, struct vec2 metres, bool ball)
{
    const struct court *court = drawing->frame.court;
    double k = drawing->size.k;
    bool far = drawing->frame.full && metres.y > court->half_court;
    struct vec2 p =
        vec2_of(metres.x / FEET, (far ? 2 * court->half_court - metres.y : metres.y) / FEET);
    double clear =
        ((ball ? drawing->size.ring + drawing->size.ring_stroke / 2 : drawing->size.body) +
         CLEAR_POINTS) /
        k;
    if (outside(court, p)) {
        p = off_the_floor(court, p);
    } else {
        /* whoever may get the ball later is put no further out than with a bare numeral */
        p = off_the_arc(court, p, (drawing->size.body + CLEAR_POINTS) / k);
        p = off_the_block(court, p, drawing->size.body / k);
        p = off_the_ring(court, p, clear);
    }
    double y = far ? 2 * court->half_court / FEET - p.y : p.y;
    return frame_point(&drawing->frame, vec2_of(p.x * FEET, y * FEET));
}

static void place(struct drawing *drawing, body who, struct vec2 at, bool ball)
{
    struct symbol symbol = {.who = who, .at = at, .ball = ball};
    const struct sizes *size = &drawing->size;
    symbol.radius = body_is_defender(who) ? size->x_half + size->x_stroke / 2
                    : ball                ? size->ring + size->ring_stroke / 2
                                          : size->body;
    VEC_PUSH(drawing->arena, &drawing->symbols, symbol);
}

/* Two that would touch are moved apart along the line between them, by half each or `share`. */
static void apart(struct symbol *a, struct symbol *b, double least, double share)
{
    struct vec2 way = vec2_sub(b->at, a->at);
    double far = vec2_length(way);
    if (far >= least) {
        return;
    }
    way = far > 0.01 ? vec2_unit(way) : vec2_of(0, 1);
    a->at = vec2_along(a->at, way, -(least - far) * share);
    b->at = vec2_along(b->at, way, (least - far) * (1 - share));
}

static void keep_inside(const struct frame *frame, struct symbol *symbol)
{
    symbol->at = frame_keep(frame, symbol->at, symbol->radius + 0.5);
}

static void attackers_apart(struct drawing *drawing)
{
    for (int turn = 0; turn < 24; turn++) {
        for (size_t i = 0; i < drawing->symbols.count; i++) {
            for (size_t j = i + 1; j < drawing->symbols.count; j++) {
                struct symbol *a = &drawing->symbols.at[i], *b = &drawing->symbols.at[j];
                if (!body_is_defender(a->who) && !body_is_defender(b->who)) {
                    apart(a, b, a->radius + b->radius + drawing->size.gap, 0.5);
                }
            }
            keep_inside(&drawing->frame, &drawing->symbols.at[i]);
        }
    }
}

/* Defenders give way: to attackers by the rule of the tables, to each other by half. */
static void defenders_apart(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    double room = real_max(0.3 * size->k, 1.1);
    for (int turn = 0; turn < 16; turn++) {
        for (size_t i = 0; i < drawing->symbols.count; i++) {
            for (size_t j = 0; j < drawing->symbols.count; j++) {
                struct symbol *a = &drawing->symbols.at[i], *b = &drawing->symbols.at[j];
                if (i == j || !body_is_defender(b->who)) {
                    continue;
                }
                if (!body_is_defender(a->who)) {
                    apart(a, b, a->radius + 1.15 * size->x_half + room, 0);
                } else if (i < j) {
                    apart(a, b, 2.3 * size->x_half + room, 0.5);
                }
            }
        }
    }
}

/* Who has the ball as the diagram begins, or who last had it: the ball is always somewhere. */
static body first_holder(const struct segment *segment, double time)
{
    body last = BODY_NONE;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        if (last != BODY_NONE && span->from > time + 0.02) {
            break;
        }
        /* thrown in the step before, or there by now and not drawn any more: whose it will be */
        bool is_his = span->state == BALL_FLIGHT && (span->from < 0 || span->to <= time + OVER);
        body has = is_his ? span->target : span->holder;
        last = has != BODY_NONE ? has : last;
        if (last != BODY_NONE && span->to >= time - 0.02) {
            break;
        }
    }
    return last;
}

/* The same, but what is handed over at that very moment, and drawn in the picture before, is done.
 */
static body drawn_holder(const struct drawing *drawing)
{
    const struct segment *segment = drawing->segment;
    double start = drawing->scope.start;
    for (size_t i = 0; i < drawing->scope.first; i++) {
        double caught = segment->record[i].time[MOMENT_CAUGHT];
        if (segment_task(segment, i)->kind == TASK_EXCHANGE && caught > start - OVER &&
            caught <= start + OVER) {
            return segment_task(segment, i)->other;
        }
    }
    return first_holder(segment, start);
}

/* Who shoots from where he is drawn stands far enough out for the line of his shot. */
static void shooters_out(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    struct vec2 basket = frame_point(&drawing->frame, vec2_of(0, 0));
    for (size_t i = drawing->scope.first; i < drawing->scope.end; i++) {
        const struct task *task = segment_task(drawing->segment, i);
        const struct task_record *record = &drawing->segment->record[i];
        struct symbol *symbol = symbol_of(drawing, task->who);
        if (task->kind != TASK_SHOOT || !symbol || record->time[MOMENT_RELEASED] < 0 ||
            vec2_distance(record->from,
                          segment_at(drawing->segment, task->who, drawing->scope.start)) > 0.5) {
            continue;
        }
        double line = real_max(2.3 * size->k, 1.6 * size->head_length);
        double least = symbol->radius + line + size->basket + 2 * size->gap;
        symbol->at = vec2_add(symbol->at,
                              push_off(symbol->at, basket, least, vec2_unit(drawing->frame.down)));
    }
}

/* Where a player was so long before the diagram begins, in the step before if need be. */
static struct vec2 place_before(const struct drawing *drawing, body who, double ago)
{
    const struct segment *segment = drawing->segment;
    double time = drawing->scope.start - ago;
    if (time < 0 && segment->before) {
        return segment_at(segment->before, who, real_max(0, segment->begins + time));
    }
    return segment_at(segment, who, real_max(0, time));
}

/* Who ran to the rim stands on the side he came from, where the line of his run stopped; not if he
 * has gone on past it. */
static struct vec2 rim_side(const struct drawing *drawing, body who, struct vec2 at)
{
    double far = rim_distance(drawing, at);
    struct vec2 from = at;
    for (double ago = RUN_SAMPLE; ago < CAME_SECONDS && rim_distance(drawing, from) < CAME_FEET;
         ago += RUN_SAMPLE) {
        from = place_before(drawing, who, ago);
    }
    double come = vec2_length(from);
    if (far > PAST_RIM || come / FEET < CAME_FEET || at.y > drawing->frame.court->half_court) {
        return at;
    }
    return vec2_scale(from, real_max(vec2_length(at), 0.3 * FEET) / come);
}

/* When a player is where he is drawn. In a step that begins while the one before goes on, whoever
 * is still on his way from there is drawn where that way ends and his own begins. */
static double drawn_when(const struct drawing *drawing, body who)
{
    const struct segment *segment = drawing->segment;
    double start = drawing->scope.start, first = segment->duration;
    bool overlaps = segment->before && segment->begins < segment->before->duration - 1e-9;
    if (!overlaps || start > 0 || !body_is_attacker(who)) {
        return start;
    }
    for (size_t i = 0; i < segment->tasks; i++) {
        double began = segment->record[i].time[MOMENT_STARTED];
        if (segment_task(segment, i)->who == who && began != TIME_NEVER) {
            first = real_min(first, began);
        }
    }
    return first;
}

void symbols_place(struct drawing *drawing)
{
    const struct segment *segment = drawing->segment;
    bool defense = !drawing->options->hide_defense; /* a shadow is not on the floor */
    body holder = drawn_holder(drawing);
    for (int b = 0; b < BODY_COUNT; b++) {
        body who = (body)b;
        if (!segment->track[b].on_floor || (body_is_defender(who) && !defense)) {
            continue;
        }
        struct vec2 at = segment_at(segment, who, drawn_when(drawing, who));
        bool ball = who == holder;
        place(drawing, who,
              body_is_defender(who) ? frame_point(&drawing->frame, at)
                                    : symbol_spot(drawing, rim_side(drawing, who, at), ball),
              ball);
    }
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        struct symbol *symbol = &drawing->symbols.at[i];
        symbol->at = vec2_add(symbol->at, nudge_of(drawing, symbol->who, -1));
    }
    shooters_out(drawing);
    attackers_apart(drawing);
    defenders_apart(drawing);
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        keep_inside(&drawing->frame, &drawing->symbols.at[i]);
    }
}

void x_pen(struct drawing *drawing, struct vec2 at, double half)
{
    pen_move(drawing, vec2_of(at.x - half, at.y - half));
    pen_line(drawing, vec2_of(at.x + half, at.y + half));
    pen_move(drawing, vec2_of(at.x - half, at.y + half));
    pen_line(drawing, vec2_of(at.x + half, at.y - half));
}

void symbols_clear(struct drawing *drawing)
{
    const struct sizes *size = &drawing->size;
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        enum role ground = ground_at(drawing, symbol->at);
        struct scene_item *item;
        if (!body_is_defender(symbol->who)) {
            double own = symbol->ball ? size->ring : size->body;
            double block = block_gap(drawing, symbol->at); /* beside a block he leaves it whole */
            double radius =
                own +
                (block < symbol->radius ? CLEAR_POINTS : real_clamp(block - own, 0, CLEAR_POINTS));
            item = put_circle(drawing, CLASS_CLEAR, symbol->at, radius, ground, ROLE_NONE, 0);
        } else {
            x_pen(drawing, symbol->at, size->x_half);
            item = pen_stroke(drawing, CLASS_CLEAR, ground, size->x_stroke + 2 * size->casing);
            item->cap = CAP_ROUND;
        }
        item->casing = true;
        item->who = symbol->who;
        if (symbol->has_numeral) {
            item =
                put_circle(drawing, CLASS_CLEAR, symbol->numeral, NUMERAL_CLEAR * size->x_numeral,
                           ground_at(drawing, symbol->numeral), ROLE_NONE, 0);
            item->casing = true;
            item->who = symbol->who;
        }
    }
}

static void defender_draw(struct drawing *drawing, const struct symbol *symbol)
{
    const struct sizes *size = &drawing->size;
    x_pen(drawing, symbol->at, size->x_half);
    struct scene_item *item = pen_stroke(drawing, CLASS_DEFENDER, ROLE_DEFENDER, size->x_stroke);
    item->who = symbol->who;
    if (symbol->has_numeral) {
        item = put_text(drawing, CLASS_DEFENDER, body_text(drawing, symbol->who), symbol->numeral,
                        size->x_numeral, FACE_MEDIUM, ROLE_DEFENDER);
        item->who = symbol->who;
    }
}

static void attacker_draw(struct drawing *drawing, const struct symbol *symbol)
{
    const struct sizes *size = &drawing->size;
    bool own = symbol->who == drawing->options->accent;
    enum role role = own ? ROLE_ACCENT : ROLE_INK;
    if (symbol->ball) {
        struct scene_item *ring = put_circle(drawing, CLASS_BALL, symbol->at, size->ring, ROLE_NONE,
                                             role, size->ring_stroke);
        ring->who = symbol->who;
    }
    struct scene_item *item =
        put_text(drawing, CLASS_PLAYER, body_text(drawing, symbol->who), symbol->at,
                 size->numeral * (symbol->ball ? 0.92
                                  : own        ? OWN_NUMERAL
                                               : 1),
                 own ? FACE_EXTRABOLD : FACE_BOLD, role);
    item->who = symbol->who;
}

void symbols_draw(struct drawing *drawing)
{
    for (int defenders = 1; defenders >= 0; defenders--) {
        for (size_t i = 0; i < drawing->symbols.count; i++) {
            const struct symbol *symbol = &drawing->symbols.at[i];
            if (body_is_defender(symbol->who) != (defenders == 1)) {
                continue;
            }
            if (defenders) {
                defender_draw(drawing, symbol);
            } else {
                attacker_draw(drawing, symbol);
            }
        }
    }
}
