/* SPDX-License-Identifier: MIT */
/* who: the words for a player as a body on the floor. A spot as a name is whoever stood there,
 * alone, as the step began; the ball is whoever is planned to have it. */
#include "floor/play/resolve.h"

#include "base/real.h"

#define STANDS_WITHIN                                                                              \
    (4 * FEET) /* of a spot: nearer than half the least gap of two spots (ours)                    \
                */

struct str who_text(struct maker *m, body b)
{
    struct strbuf out;
    strbuf_init(&out, m->arena);
    body_print(&out, b);
    return strbuf_str(&out);
}

bool on_floor(const struct maker *m, body b)
{
    return b < BODY_COUNT && m->play->start[b].on_floor;
}

static void list_floor(const struct maker *m, struct strbuf *out)
{
    const char *gap = "";
    for (body b = 0; b < BODY_COACH; b++) {
        if (m->play->start[b].on_floor) {
            strbuf_print(out, "%s%d", gap, body_number(b));
            gap = ", ";
        }
    }
}

static body attacker(struct maker *m, int number, struct span span)
{
    body b = body_attacker(number);
    if (b != BODY_NONE && on_floor(m, b)) {
        return b;
    }
    struct strbuf floor;
    strbuf_init(&floor, m->arena);
    list_floor(m, &floor);
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_NOT_ON_FLOOR, span, "%d is not on the floor", number);
    if (floor.size == 0) {
        diag_help(m->diags, diag, "place the players first: start five-out");
    } else {
        diag_help(m->diags, diag, "on the floor: %s; place %d in the `start` line", floor.at,
                  number);
    }
    return BODY_NONE;
}

static body defender(struct maker *m, int number, struct span span)
{
    body b = body_defender(number);
    bool here = b != BODY_NONE && (m->play->guards[b] != BODY_NONE || m->play->start[b].on_floor);
    if (here) {
        return b;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_NO_DEFENDER, span, "x%d guards nobody here", number);
    diag_help(m->diags, diag,
              "x1 guards 1, x2 guards 2 and so on; or before the first step: x%d guards 3", number);
    return BODY_NONE;
}

static body guard_of(struct maker *m, body attacked, struct span span)
{
    for (body b = BODY_FIRST_DEFENDER; b < BODY_COUNT && attacked != BODY_NONE; b++) {
        if (m->flow.guards[b] == attacked) {
            return b;
        }
    }
    if (attacked != BODY_NONE) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_DEFENDER, span, "nobody guards %s",
                                     who_text(m, attacked).at);
        if (m->play->zone != ZONE_NONE) { /* each has an area */
            diag_help(m->diags, diag, "in a zone say which defender: x%d", body_number(attacked));
        }
    }
    return BODY_NONE;
}

body who_stood(const struct maker *m, struct vec2 p, size_t *how_many)
{
    body found = BODY_NONE;
    *how_many = 0;
    for (body b = 0; b < BODY_COACH; b++) {
        if (on_floor(m, b) && vec2_near(m->stood[b], p, STANDS_WITHIN)) {
            found = b;
            ++*how_many;
        }
    }
    return *how_many == 1 ? found : (body)BODY_NONE;
}

/* Who stood there alone as the step began; where nobody did, who has gone there since. */
static body stands_at(const struct maker *m, struct vec2 p, size_t *how_many)
{
    body found = who_stood(m, p, how_many), there = BODY_NONE;
    size_t since = 0;
    for (body b = 0; *how_many == 0 && b < BODY_COACH; b++) {
        if (on_floor(m, b) && vec2_near(m->flow.at[b], p, STANDS_WITHIN)) {
            there = b;
            since++;
        }
    }
    return since == 1 ? there : found;
}

/* the corner, where somebody stands in one of the two only. */
static body by_either(struct maker *m, const struct who *who, const struct voice *voice)
{
    static const enum side sides[] = {SIDE_LEFT, SIDE_RIGHT};
    body found = BODY_NONE;
    size_t standing = 0;
    for (size_t i = 0; i < 2; i++) {
        struct place place = *who->place;
        struct goal goal;
        size_t how_many = 0;
        place.side = sides[i];
        body b = where_goal(m, &place, voice, BODY_NONE, &goal)
                     ? stands_at(m, where_planned(m, &goal, BODY_NONE), &how_many)
                     : (body)BODY_NONE;
        standing += b == BODY_NONE ? how_many : 1;
        found = b == BODY_NONE ? found : b;
    }
    return standing == 1 ? found : (body)BODY_NONE;
}

/* Who is nearest to it now and does not have the ball: whom a help may name. */
static int nearest_number(const struct maker *m, struct vec2 p)
{
    body nearest = BODY_NONE;
    for (body b = 0; b < BODY_COACH; b++) {
        bool there = on_floor(m, b) && b != m->flow.holder && b < BODY_FIRST_DEFENDER;
        if (there && (nearest == BODY_NONE ||
                      vec2_distance(m->flow.at[b], p) < vec2_distance(m->flow.at[nearest], p))) {
            nearest = b;
        }
    }
    return nearest == BODY_NONE ? 3 : body_number(nearest);
}

static body by_spot(struct maker *m, const struct who *who, const struct voice *voice)
{
    struct goal goal;
    const struct place *place = who->place;
    bool sided = place->kind == PLACE_SPOT && place->side == SIDE_NONE;
    body either =
        sided && spot_row(place->spot)->sided ? by_either(m, who, voice) : (body)BODY_NONE;
    if (either != BODY_NONE) {
        return either;
    }
    /* The words name a place of the floor, not of a mover: with no side they name nobody's. */
    if (!where_goal(m, who->place, voice, BODY_NONE, &goal)) {
        return BODY_NONE;
    }
    size_t how_many;
    struct vec2 there = where_planned(m, &goal, BODY_NONE);
    body found = stands_at(m, there, &how_many);
    if (found == BODY_NONE) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_SPOT_WHO, who->span,
                                     how_many ? "more than one player stood there as the step began"
                                              : "nobody stood there as the step began");
        diag_help(m->diags, diag, "say the number: %d", nearest_number(m, there));
    }
    return found;
}

static body receiver(struct maker *m, const struct who *who, const struct voice *voice, body passer)
{
    const struct place *place = who->kind == WHO_SPOT ? who->place : NULL;
    enum side side = where_side_of(m, passer);
    bool open = place && place->kind == PLACE_SPOT && place->side == SIDE_NONE &&
                spot_row(place->spot)->sided && side != SIDE_NONE;
    if (!open || by_either(m, who, voice) != BODY_NONE) {
        return who_body(m, who, voice);
    }
    struct place sided = *place;
    struct who one = *who;
    bool left = (side == SIDE_LEFT) != voice->mirrored; /* the words' side, not the floor's */
    sided.side = left ? SIDE_LEFT : SIDE_RIGHT;
    one.place = &sided;
    size_t errors = m->diags->errors;
    body found = by_spot(m, &one, voice);
    if (found != BODY_NONE && m->diags->errors == errors) {
        where_note_side(m, who->span, passer, side, spot_row(place->spot)->word);
    }
    return found;
}

/* The only one who is near that place as it is planned so far. */
static body is_now_at(const struct maker *m, struct vec2 p)
{
    body found = BODY_NONE;
    size_t count = 0;
    for (body b = 0; b < BODY_COACH; b++) {
        if (on_floor(m, b) && vec2_near(m->flow.at[b], p, STANDS_WITHIN)) {
            found = b;
            count++;
        }
    }
    return count == 1 ? found : (body)BODY_NONE;
}

/* The left corner goes to the wing: a line above has called him so who acts in it. */
static bool called_so(const struct maker *m, const struct place *place)
{
    for (size_t i = 0; m->block && i < m->block->count && i < m->line; i++) {
        const struct form *form = m->block->at[i].form;
        const struct sentence *s = form->kind == FORM_SENTENCE ? form->sentence : NULL;
        for (size_t n = 0; s && n < s->subject.count; n++) {
            const struct place *other =
                s->subject.at[n].kind == WHO_SPOT ? s->subject.at[n].place : NULL;
            if (other && other->kind == PLACE_SPOT && other->spot == place->spot &&
                other->side == place->side) {
                return true;
            }
        }
    }
    return false;
}

/* Who stood at the spot as the step began, and has left it, does not get a pass to it: whoever has
 * come there since does. */
body who_receiver(struct maker *m, const struct who *who, const struct voice *voice, body passer)
{
    body found = receiver(m, who, voice, passer);
    const struct place *place = who->kind == WHO_SPOT ? who->place : NULL;
    bool one_spot = place && place->kind == PLACE_SPOT &&
                    (place->side != SIDE_NONE || !spot_row(place->spot)->sided);
    if (!one_spot || found >= BODY_COACH || called_so(m, place) ||
        vec2_near(m->flow.at[found], m->stood[found], STANDS_WITHIN)) {
        return found;
    }
    struct vec2 spot = m->stood[found];
    body now = is_now_at(m, spot);
    if (now == BODY_NONE) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_SPOT_WHO, who->span,
                     "%s stood there as the step began, and has left it", who_text(m, found).at);
        diag_help(m->diags, diag, "say the number: %d", nearest_number(m, spot));
    }
    return now;
}

static body by_role(struct maker *m, const struct who *who, const struct voice *voice)
{
    for (size_t i = 0; i < voice->roles.count; i++) {
        if (str_equal_fold(voice->roles.at[i].role, who->role)) {
            return voice->roles.at[i].who;
        }
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_ROLE, who->span,
                                 "nobody plays the role `%.*s`", STR_ARG(who->role));
    diag_help(m->diags, diag, "name it where the action is run: run \"…\" with %.*s 2",
              STR_ARG(who->role));
    return BODY_NONE;
}

static body ball_holder(struct maker *m, struct span span)
{
    if (m->flow.holder == BODY_NONE) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_NO_BALL, span, "nobody has the ball at this point");
        diag_help(m->diags, diag, "say the player's number");
    }
    return m->flow.holder;
}

static int part(const struct voice *voice, int number)
{
    return number >= 1 && number <= LIMIT_ATTACKERS ? voice->number[number] : number;
}

body who_body(struct maker *m, const struct who *who, const struct voice *voice)
{
    switch (who->kind) {
    case WHO_PLAYER:
        return attacker(m, part(voice, who->number), who->span);
    case WHO_DEFENDER:
        return defender(m, part(voice, who->number), who->span);
    case WHO_DEFENDER_OF:
        return guard_of(m, attacker(m, part(voice, who->number), who->span), who->span);
    case WHO_ROLE:
        return by_role(m, who, voice);
    case WHO_COACH:
        if (!on_floor(m, BODY_COACH)) {
            struct diag *diag = diag_add(m->diags, DIAG_PLAY_NOT_ON_FLOOR, who->span,
                                         "the coach is not on the floor");
            diag_help(m->diags, diag,
                      "place the coach in the drill's start: start 1 top, coach "
                      "left wing");
            return BODY_NONE;
        }
        return BODY_COACH;
    case WHO_BALL:
        return ball_holder(m, who->span);
    case WHO_SPOT:
        return by_spot(m, who, voice);
    case WHO_EVERYONE_ELSE:
        diag_add(m->diags, DIAG_PLAY_EVERYONE, who->span,
                 "`everyone else` can only be the subject of a sentence");
        return BODY_NONE;
    case WHO_NONE:
        break;
    }
    return BODY_NONE;
}

/* Whom a subject names, without a complaint: for `everyone else` to leave out. */
static body quietly(struct maker *m, const struct who *who, const struct voice *voice)
{
    struct diags aside, *kept = m->diags;
    diags_init(&aside, m->arena);
    m->diags = &aside;
    body b = who->kind == WHO_EVERYONE_ELSE ? (body)BODY_NONE : who_body(m, who, voice);
    m->diags = kept;
    return b;
}

static struct body_list everyone_else(struct maker *m)
{
    bool named[BODY_COUNT] = {false};
    for (size_t i = 0; i < m->block->count; i++) {
        const struct said *said = &m->block->at[i];
        if (said->form->kind != FORM_SENTENCE) {
            continue;
        }
        const struct sentence *s = said->form->sentence;
        for (size_t j = 0; j < s->subject.count; j++) {
            body b = quietly(m, &s->subject.at[j], said->voice);
            if (b < BODY_COUNT) {
                named[b] = true;
            }
        }
    }
    struct body_list list = {.count = 0};
    for (body b = 0; b < BODY_COACH; b++) {
        if (on_floor(m, b) && !named[b]) {
            list.at[list.count++] = b;
        }
    }
    return list;
}

static bool listed(const struct body_list *list, body b)
{
    for (size_t i = 0; i < list->count; i++) {
        if (list->at[i] == b) {
            return true;
        }
    }
    return false;
}

struct body_list who_subjects(struct maker *m, const struct sentence *s, const struct voice *voice)
{
    struct body_list list = {.count = 0};
    for (size_t i = 0; i < s->subject.count; i++) {
        const struct who *who = &s->subject.at[i];
        if (who->kind == WHO_EVERYONE_ELSE) {
            list = everyone_else(m);
            if (list.count == 0) {
                diag_add(m->diags, DIAG_PLAY_EVERYONE, who->span,
                         "there is nobody else: every player has a sentence in this block");
            }
            return list;
        }
        body b = who_body(m, who, voice);
        if (b == BODY_NONE) {
            return (struct body_list){.count = 0};
        }
        if (listed(&list, b)) {
            diag_add(m->diags, DIAG_PLAY_TWICE, who->span, "%s is named twice in this sentence",
                     who_text(m, b).at);
        } else if (list.count < LIMIT_ATTACKERS) {
            list.at[list.count++] = b;
        }
    }
    return list;
}
