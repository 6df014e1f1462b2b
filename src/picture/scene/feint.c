/* SPDX-License-Identifier: MIT */
/* feint: who goes as if to screen and slips fools nobody on paper with the half step that the run
 * takes: his line begins with a leg toward the one he would screen for, long enough to be seen,
 * turns there, and goes on as it was run. */
#include "picture/scene/drawing.h"

#define SHOWN                                                                                      \
    0.8 /* feet of the run's own step beyond his numeral: it is drawn as it was (ours)             \
         */
#define LEG_SEEN 2.6  /* feet beyond his numeral, */
#define LEG_HEADS 1.6 /* and lengths of an arrow's head: it is one on a card too (ours) */
#define SHORT_OF 0.8  /* feet from whom he would screen for (ours) */
#define REJOINS 1.5   /* legs from where he began: there his line is as it was run (ours) */
#define LEG_STEP 0.35 /* feet between its points */
#define TURNED (20 * REAL_PI / 180)
enum { ASIDE = 7, SHORTER = 4 }; /* ways that are tried, each with legs so long */

bool is_feint(const struct segment *segment, int task)
{
    return task >= 0 && segment_task(segment, (size_t)task)->kind == TASK_SCREEN &&
           segment->record[task].time[MOMENT_SET] < 0;
}

/* Is a place clear of everybody's mark that does not itself give way? */
static bool is_clear(const struct drawing *drawing, struct vec2 at, double room)
{
    for (size_t i = 0; i < drawing->symbols.count; i++) {
        const struct symbol *symbol = &drawing->symbols.at[i];
        bool stays = symbol->pinned || !body_is_defender(symbol->who);
        if (stays && vec2_distance(at, symbol->at) < symbol->radius + room) {
            return false;
        }
    }
    return true;
}

/* Where the leg toward a place turns, on paper: straight on, or where that is taken a little to a
 * side; false: there is no room for one. */
static bool turn_toward(const struct drawing *drawing, const struct stop *start,
                        const struct symbol *whom, struct vec2 *turn)
{
    const struct sizes *size = &drawing->size;
    if (!whom) {
        return false;
    }
    double hidden = stop_radius(drawing, start) + size->gap;
    double seen = real_max(LEG_SEEN * size->k, LEG_HEADS * size->head_length);
    struct vec2 way = vec2_unit(vec2_sub(whom->at, start->at));
    double room = real_max(SHORT_OF * size->k, size->gap);
    for (int i = 0; i < ASIDE * SHORTER; i++) {
        int side = i / SHORTER;
        double aside = (side % 2 ? -1 : 1) * ((side + 1) / 2) * TURNED;
        double leg = hidden + seen * (1 - 0.2 * (i % SHORTER));
        struct vec2 at = vec2_along(start->at, vec2_turn(way, aside), leg);
        struct vec2 inside = frame_keep(&drawing->frame, at, size->gap);
        if (is_clear(drawing, at, room) && vec2_near(at, inside, 1e-9)) {
            *turn = at;
            return true;
        }
    }
    return false;
}

/* Toward the defender whom the screen would be set on, or where none is drawn its user. */
static bool turn_of(const struct drawing *drawing, const struct stroke *stroke, struct vec2 *turn)
{
    const struct stop *start = &drawing->stops.at[stroke->start];
    body user = segment_task(drawing->segment, (size_t)stroke->part[0].task)->other;
    const struct symbol *whom = user == BODY_NONE ? NULL : symbol_of(drawing, user);
    for (size_t i = 0; whom && i < drawing->symbols.count; i++) {
        body who = drawing->symbols.at[i].who;
        if (body_is_defender(who) && drawing->play->guards[who] == user) {
            whom = &drawing->symbols.at[i];
        }
    }
    return start->kind == STOP_SYMBOL && turn_toward(drawing, start, whom, turn);
}

static void lead_to(struct drawing *drawing, struct trail *trail, struct vec2 to)
{
    struct vec2 from = trail->at[trail->count - 1];
    size_t pieces = (size_t)(vec2_distance(from, to) / (LEG_STEP * drawing->size.k)) + 1;
    for (size_t i = 1; i <= pieces; i++) {
        trail->corner[trail->count] = false;
        trail->at[trail->count++] = vec2_mix(from, to, (double)i / (double)pieces);
    }
}

/* Shares of the way before the turn, and of that behind it, are of the new ones. */
static double share_led(double share, double was, double is)
{
    return share < was ? is * share / was : is + (1 - is) * (share - was) / real_max(1 - was, 1e-9);
}

static void shares_lead(struct stroke *stroke, double was, double is)
{
    for (size_t p = 0; p < stroke->parts; p++) {
        stroke->part[p].from = share_led(stroke->part[p].from, was, is);
        stroke->part[p].to = share_led(stroke->part[p].to, was, is);
    }
    for (size_t i = 0; i < stroke->clocks; i++) {
        stroke->share[i] = share_led(stroke->share[i], was, is);
    }
    stroke->part[0].from = stroke->share[0] = 0;
}

void feint_show(struct drawing *drawing, struct stroke *stroke)
{
    struct vec2 turn;
    const struct trail *run = &stroke->trail;
    if (stroke->parts < 2 || !is_feint(drawing->segment, stroke->part[0].task) ||
        !turn_of(drawing, stroke, &turn)) {
        return;
    }
    struct vec2 start = run->at[0];
    double leg = vec2_distance(start, turn), reach = 0;
    size_t rejoins = 0;
    for (size_t i = 1; i < run->count; i++) {
        double along = vec2_dot(vec2_sub(run->at[i], start), vec2_unit(vec2_sub(turn, start)));
        reach = real_max(reach, along);
        rejoins = rejoins == 0 && vec2_distance(run->at[i], start) > REJOINS * leg ? i : rejoins;
    }
    double hidden = start_gap(drawing, stroke) + SHOWN * drawing->size.k;
    if (reach >= hidden && rejoins > 0) { /* the run shows it */
        return;
    }
    rejoins = rejoins > 0 ? rejoins : run->count - 1; /* or it hardly goes anywhere */
    size_t most = run->count + 4 * (size_t)(leg / (LEG_STEP * drawing->size.k)) + 8;
    struct trail trail = {arena_array(drawing->arena, struct vec2, most),
                          arena_array(drawing->arena, bool, most), 1};
    trail.at[0] = start;
    trail.corner[0] = false;
    lead_to(drawing, &trail, turn);
    trail.corner[trail.count - 1] = true;
    lead_to(drawing, &trail, run->at[rejoins]);
    for (size_t i = rejoins + 1; i < run->count; i++) {
        trail.corner[trail.count] = run->corner[i];
        trail.at[trail.count++] = run->at[i];
    }
    stroke->trail = trail;
    shares_lead(stroke, stroke->part[0].to, leg / trail_length(&trail));
}
