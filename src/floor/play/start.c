/* SPDX-License-Identifier: MIT */
/* start: who stands where, who guards whom and who has the ball as a play begins. */
#include "floor/play/resolve.h"

#include <math.h>
#include <string.h>

#include "base/real.h"

#define FIVE_OUT "fiveout"
#define ONE_SPOT (1.5 * FEET) /* nearer than this two bodies stand in one another (ours) */
#define FAR_OFF (20 * FEET)   /* outside the lines (ours) */
#define COACH_AT                                                                                   \
    (26 * FEET) /* where the coach stands with the ball when no place is written (ours) */

static void stand(struct maker *m, body b, struct vec2 at, enum spot spot, enum side side)
{
    struct start_body *start = &m->play->start[b];
    *start = (struct start_body){.on_floor = true, .at = at, .spot = spot, .side = side};
    m->flow.at[b] = m->stood[b] = at;
}

static enum side other_side(enum side side)
{
    if (side == SIDE_LEFT) {
        return SIDE_RIGHT;
    }
    return side == SIDE_RIGHT ? SIDE_LEFT : side;
}

static void stand_formation(struct maker *m, size_t index, bool mirrored)
{
    const struct formation *formation = formation_at(index);
    m->play->formation = (int)index;
    m->play->full_floor = m->play->full_floor || formation->full_floor;
    for (int i = 0; i < 5; i++) {
        const struct formation_spot *spot = &formation->at[i];
        struct vec2 at = formation_point(m->play->court, spot);
        bool plain = spot->above == 0 && spot->between == SPOT_COUNT && !spot->out_of_bounds &&
                     !spot->backcourt;
        at.x = mirrored ? -at.x : at.x;
        stand(m, body_attacker(i + 1), at, plain ? spot->spot : SPOT_COUNT,
              mirrored ? other_side(spot->side) : spot->side);
        if (spot->ball) {
            m->play->ball = body_attacker(i + 1);
            m->play->throw_in = spot->out_of_bounds;
        }
    }
}

static void five_out(struct maker *m)
{
    size_t index;
    if (formation_find(STR(FIVE_OUT), &index)) {
        stand_formation(m, index, m->plain->mirrored);
    }
}

static body placed_body(const struct who *who)
{
    if (who->kind == WHO_COACH) {
        return BODY_COACH;
    }
    return who->kind == WHO_DEFENDER ? body_defender(who->number) : body_attacker(who->number);
}

static bool place_point(struct maker *m, const struct place *place, const struct voice *voice,
                        body mover, struct goal *goal, struct vec2 *at)
{
    if (!place || !where_goal(m, place, voice, mover, goal)) {
        m->play->broken = true;
        return false;
    }
    /* the nearest point of a line to nobody: where the list of places has it */
    *at = goal->kind == GOAL_LINE && mover == BODY_NONE
              ? court_spot(m->play->court, goal->spot, goal->side)
              : where_planned(m, goal, mover);
    return true;
}

/* Who throws in stands outside, and so may a coach; nobody stands in the street. */
static bool is_far_off(struct maker *m, const struct placing *placing, body b, struct vec2 at)
{
    const struct court *court = m->play->court;
    double by = real_max(
        fabs(at.x) - court->half_width,
        real_max(court->baseline - at.y, at.y - (2 * court->half_court - court->baseline)));
    if (by <= FAR_OFF) {
        return false;
    }
    struct strbuf who, far;
    strbuf_init(&who, m->arena);
    strbuf_init(&far, m->arena);
    body_print(&who, b);
    play_length(&far, m->play, by);
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_OFF_FLOOR, placing->place->span, "%s starts %s off the floor",
                 strbuf_str(&who).at, strbuf_str(&far).at);
    diag_help(m->diags, diag, "give a spot, or feet from the ring, x right, y up: %s at (12, 6)",
              strbuf_str(&who).at);
    m->play->broken = true;
    double side = court->half_width - FEET, low = court->baseline + FEET;
    at = vec2_of(real_clamp(at.x, -side, side), real_clamp(at.y, low, 2 * court->half_court - low));
    stand(m, b, at, SPOT_COUNT, SIDE_NONE); /* the rest is read on */
    return true;
}

static void place_who(struct maker *m, const struct placing *placing, const struct voice *voice)
{
    body b = placed_body(&placing->who);
    if (b == BODY_NONE) {
        m->play->broken = true;
        return;
    }
    struct goal goal;
    struct vec2 at;
    body mover = m->play->start[b].on_floor ? b : (body)BODY_NONE;
    if (place_point(m, placing->place, voice, mover, &goal, &at) &&
        !is_far_off(m, placing, b, at)) {
        bool spot = goal.kind == GOAL_POINT && !goal.backcourt;
        stand(m, b, at, spot ? goal.spot : SPOT_COUNT, goal.side);
        m->play->start[b].placed = body_is_defender(b);
        if (goal.kind == GOAL_OUTSIDE && body_is_attacker(b)) {
            m->thrower = b;
        }
    }
}

static void place_one(struct maker *m, const struct placing *placing, const struct voice *voice)
{
    switch (placing->kind) {
    case PLACING_FORMATION:
        stand_formation(m, placing->formation, voice->mirrored);
        break;
    case PLACING_WHO:
        place_who(m, placing, voice);
        break;
    case PLACING_CONE: {
        struct goal goal;
        struct vec2 at;
        if (place_point(m, placing->place, voice, BODY_NONE, &goal, &at)) {
            VEC_PUSH(m->arena, &m->play->cones, at);
        }
        break;
    }
    case PLACING_LINE: {
        body first = who_body(m, &placing->who, voice);
        if (first != BODY_NONE) {
            VEC_PUSH(m->arena, &m->play->lines, first);
        }
        break;
    }
    }
}

/* ---- defenders ---- */

/* The line before it in the block that gives the same defender a man. */
static const struct form *given_before(const struct block *block, size_t index)
{
    const struct who *x = &block->forms.at[index].standing->defender;
    for (size_t i = 0; i < index; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_STANDING && form->standing->defender.kind == x->kind &&
            x->kind == WHO_DEFENDER && form->standing->defender.number == x->number) {
            return form;
        }
    }
    return NULL;
}

static void say_given(struct maker *m, const struct form *form, const struct form *before)
{
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_TWO_DUTIES, form->span,
                                 "x%d is given two players to guard: here, and in a line above",
                                 form->standing->defender.number);
    diag_help(m->diags, diag, "keep one of the two lines");
    if (diag) {
        diag->other = before->span;
    }
    m->play->broken = true;
}

static void set_guards(struct maker *m, const struct block *block, const struct voice *voice,
                       const struct form *said[BODY_COUNT])
{
    for (size_t i = 0; block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind != FORM_STANDING) {
            continue;
        }
        const struct form *before = given_before(block, i);
        if (before) {
            say_given(m, form, before);
            continue;
        }
        body x = form->standing->defender.kind == WHO_DEFENDER
                     ? body_defender(form->standing->defender.number)
                     : who_body(m, &form->standing->defender, voice);
        body player = who_body(m, &form->standing->player, voice);
        if (x != BODY_NONE && player != BODY_NONE) {
            m->play->guards[x] = player;
            said[x] = form;
        } else {
            m->play->broken = true;
        }
    }
}

/* Whose man a line gave to somebody else takes the one who was left over, first to first. */
static void share_out(struct play *play, const struct form *const said[BODY_COUNT])
{
    bool without[BODY_COUNT] = {false};
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        if (!said[x] && play->guards[x] != BODY_NONE && man_is_guarded(play, play->guards[x], x)) {
            play->guards[x] = BODY_NONE;
            without[x] = true;
        }
    }
    for (body man = 0; man < BODY_COACH; man++) {
        body x = BODY_FIRST_DEFENDER;
        while (x < BODY_COUNT && !without[x]) {
            x++;
        }
        if (x < BODY_COUNT && play->start[man].on_floor && !man_is_guarded(play, man, BODY_NONE)) {
            play->guards[x] = man;
            without[x] = false;
        }
    }
}

static bool has_area(const struct play *play, body x)
{
    return play->zone != ZONE_NONE && body_number(x) <= ZONE_DEFENDERS;
}

static void set_on_floor(struct maker *m, body x)
{
    struct play *play = m->play;
    bool guards = play->guards[x] != BODY_NONE;
    if (play->start[x].placed && !guards && !has_area(play, x)) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_DEFENDER, play->span,
                                     "x%d stands on the floor and guards nobody", body_number(x));
        diag_help(m->diags, diag, "say whom: x%d guards 3", body_number(x));
    }
    play->start[x].on_floor =
        play->start[x].placed || has_area(play, x) || (guards && play->defense != DEFENSE_NONE);
}

static void set_defenders(struct maker *m, const struct voice *voice)
{
    struct play *play = m->play;
    const struct form *said[BODY_COUNT] = {NULL}; /* the line that gives him a man */
    bool zone = play->zone != ZONE_NONE;
    for (body b = 0; b < BODY_COACH && !zone; b++) {
        if (play->start[b].on_floor) {
            play->guards[body_defender(body_number(b))] = b;
        }
    }
    set_guards(m, m->body, voice, said);
    if (play->block != m->body) {
        set_guards(m, play->block, voice, said);
    }
    if (zone) {
        chasers_set(m, said);
    } else {
        share_out(play, said);
    }
    for (body x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        set_on_floor(m, x);
    }
}

/* ---- the ball ---- */

static const struct sentence *first_sentence(const struct block *block)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SENTENCE) {
            return form->sentence;
        }
        if (form->kind == FORM_BLOCK && form->block->kind == BLOCK_STEP) {
            return first_sentence(form->block);
        }
    }
    return NULL;
}

static body lowest_on_floor(const struct maker *m)
{
    for (body b = 0; b < BODY_COACH; b++) {
        if (m->play->start[b].on_floor) {
            return b;
        }
    }
    return BODY_NONE;
}

static void coach_on_floor(struct maker *m)
{
    if (!m->play->start[BODY_COACH].on_floor) {
        stand(m, BODY_COACH, vec2_of(0, COACH_AT), SPOT_COUNT, SIDE_NONE);
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_COACH, m->play->span,
                                     "the coach stands above the top: no place is written");
        diag_help(m->diags, diag, "place the coach: start 1 top, coach left wing");
    }
}

static void default_ball(struct maker *m)
{
    struct play *play = m->play;
    const struct sentence *first = play->is_drill ? first_sentence(m->body) : NULL;
    if (first && first->subject.count && first->subject.at[0].kind == WHO_COACH) {
        play->ball = BODY_COACH;
        coach_on_floor(m);
    } else if (play->ball == BODY_NONE && m->thrower != BODY_NONE) {
        play->ball = m->thrower; /* what else would anybody do there */
        play->throw_in = true;
    } else if (play->ball == BODY_NONE) {
        play->ball = lowest_on_floor(m);
    }
}

/* ball 3 out of bounds at …, and no place in the start: that is where 3 stands. */
static void thrower_on_floor(struct maker *m, const struct setting_form *form)
{
    if (form && form->ball_out && form->ball.kind == WHO_PLAYER) {
        body b = placed_body(&form->ball);
        if (b < BODY_COACH && !m->play->start[b].on_floor) {
            stand(m, b, vec2_of(0, 0), SPOT_COUNT, SIDE_NONE); /* until the place is read */
        }
    }
}

static void written_ball(struct maker *m, const struct setting_form *form,
                         const struct voice *voice)
{
    if (form->ball.kind == WHO_COACH && !m->play->is_drill) {
        struct diag *diag = diag_add(m->diags, DIAG_TEXT_DRILL_ONLY, form->ball.span,
                                     "a coach takes part in drills only");
        diag_help(m->diags, diag, "open it with `drill`, or write a player's number: ball 1");
        m->play->broken = true;
        return;
    }
    if (form->ball.kind == WHO_COACH) {
        coach_on_floor(m);
    }
    body b = who_body(m, &form->ball, voice);
    if (b == BODY_NONE) {
        m->play->broken = true;
        return;
    }
    bool formations = m->play->throw_in && m->play->ball == b;
    m->play->ball = b;
    m->play->throw_in = formations || b == m->thrower;
    struct goal goal;
    struct vec2 level;
    if (form->ball_out && place_point(m, form->ball_out, voice, b, &goal, &level)) {
        /* The place may be said with or without its `out of bounds at`. */
        struct vec2 at = goal.kind == GOAL_OUTSIDE ? level : court_outside(m->play->court, level);
        stand(m, b, at, SPOT_COUNT, SIDE_NONE);
        m->play->throw_in = true;
    }
}

/* ---- each on a spot of their own ---- */

static bool stands(const struct maker *m, body b)
{
    const struct start_body *start = &m->play->start[b];
    return start->on_floor && (start->placed || !body_is_defender(b));
}

static void say_one_spot(struct maker *m, const bool here[BODY_COUNT], size_t count)
{
    struct strbuf who;
    strbuf_init(&who, m->arena);
    size_t said = 0;
    for (body b = 0; b < BODY_COUNT; b++) {
        if (here[b]) {
            strbuf_text(&who, said == 0 ? "" : said + 1 == count ? " and " : ", ");
            body_print(&who, b);
            said++;
        }
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_ONE_SPOT, m->play->start_span, "%s start on one spot", who.at);
    diag_help(m->diags, diag, "give each a spot: start five-out, or start 1 top, 2 right wing");
    m->play->broken = true;
}

static void hold_apart(struct maker *m)
{
    bool told[BODY_COUNT] = {false};
    for (body a = 0; a < BODY_COUNT; a++) {
        bool here[BODY_COUNT] = {false};
        size_t count = 0;
        for (body b = a; b < BODY_COUNT && stands(m, a) && !told[a]; b++) {
            here[b] = stands(m, b) && !told[b] &&
                      vec2_near(m->play->start[a].at, m->play->start[b].at, ONE_SPOT);
            count += here[b];
        }
        for (body b = a; b < BODY_COUNT && count > 1; b++) {
            told[b] = told[b] || here[b];
        }
        if (count > 1) {
            say_one_spot(m, here, count);
        }
    }
}

/* ---- all of it ---- */

static void set_full_floor(struct maker *m)
{
    double half = m->play->court->half_court;
    m->play->players = 0;
    for (body b = 0; b < BODY_COUNT; b++) {
        const struct start_body *start = &m->play->start[b];
        if (start->on_floor && start->at.y > half + 1) {
            m->play->full_floor = true;
        }
        if (start->on_floor && b < BODY_COACH) {
            m->play->players = body_number(b);
        }
    }
}

/* Where the words about their side take them to stand: at home, with the ball where it is. */
static void plan_areas(struct maker *m)
{
    const struct play *play = m->play;
    struct zone_home home[ZONE_DEFENDERS];
    if (play->zone == ZONE_NONE || play->ball == BODY_NONE) {
        return;
    }
    zone_homes(play->court, play->zone, m->flow.at[play->ball], play->throw_in, play->mirrored,
               home);
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        body x = body_defender(k + 1);
        if (!play->start[x].placed && play->guards[x] == BODY_NONE) {
            m->flow.at[x] = home[k].point > 0 ? home[k].at : m->flow.at[play->ball];
        }
    }
}

void play_start(struct maker *m, const struct source_play *source)
{
    struct play *play = m->play;
    play->formation = -1;
    play->ball = m->thrower = BODY_NONE;
    m->flow.holder = BODY_NONE;
    for (body b = 0; b < BODY_COUNT; b++) {
        play->guards[b] = BODY_NONE;
        play->start[b].spot = SPOT_COUNT;
        m->flow.at[b] = m->stood[b] = vec2_of(0, 0);
        m->flow.carried[b] = BODY_NONE;
        m->flow.screen[b] = -1;
        m->flow.screened[b] = false;
    }
    struct setting_at start = setting_find(m, source, SETTING_START);
    const struct voice *voice = voice_plain(m, start.mirrored);
    play->start_span = start.form ? start.span : play->span;
    if (!start.form) {
        five_out(m);
    }
    for (size_t i = 0; start.form && i < start.form->placings.count; i++) {
        place_one(m, &start.form->placings.at[i], voice);
    }
    struct setting_at ball = setting_find(m, source, SETTING_BALL);
    thrower_on_floor(m, ball.form);
    set_defenders(m, voice);
    memcpy(m->flow.guards, play->guards, sizeof play->guards);
    if (ball.form) {
        written_ball(m, ball.form, voice_plain(m, ball.mirrored));
    } else {
        default_ball(m);
    }
    m->flow.holder = play->ball;
    plan_areas(m);
    set_full_floor(m);
    hold_apart(m);
}
