/* SPDX-License-Identifier: MIT */
/* toward: a side or a height with no place behind it is where somebody goes: left, across, high,
 * the middle. Of a drive it is the way. */
#include "language/words/grammar.h"

/* What was said up to `to` is where it ends. */
static int ends_there(struct predicate *p, const struct token *to, struct place place)
{
    const struct token *from = p->c->at;
    p->c->at = to;
    p->s->place = place_new(p->c, place, from);
    return 1;
}

/* The same, of words that name no place: a note tells which was taken. `help`: what to write behind
 * the verb to go elsewhere. */
static int taken_there(struct predicate *p, const struct token *to, struct place place,
                       const char *taken, const char *help)
{
    ends_there(p, to, place);
    struct diag *diag =
        diag_add(p->c->diags, DIAG_TEXT_PLACE_TAKEN, p->s->place->span, "%s", taken);
    diag_help(p->c->diags, diag, "to go elsewhere, name it: `%.*s %s`", STR_ARG(predicate_begun(p)),
              help);
    return 1;
}

/* drives right off 5, goes left off it: by which side of the screen, said in front of it. Who comes
 * right off it without the ball leaves at once. */
int side_off(struct predicate *p)
{
    static const struct entry sides[] = {{"left", SIDE_LEFT}, {"right", SIDE_RIGHT}, {NULL, 0}};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct sentence *s = p->s;
    const struct token *from = past_fillers(c->at, c->end);
    bool goes = s->verb == VERB_GOES && s->subject.count == 1 && above_holds(c, &s->subject.at[0]);
    bool carries = s->verb == VERB_DRIVES || s->verb == VERB_DRIBBLES || goes;
    int side = carries && !s->place && s->drive == DRIVE_FREE ? take_entry(&trial, sides) : -1;
    if (side < 0 || !word_is(&trial, 0, "off") || c->at + 3 > c->end) {
        return 0;
    }
    cursor_take(c, from, trial.at);
    s->verb = VERB_DRIVES;
    s->drive = side == SIDE_LEFT ? DRIVE_LEFT : DRIVE_RIGHT;
    return 1;
}

/* drives left, dribbles to the right: with no place behind it. A drive goes to the rim, by that
 * side of whoever guards; a dribble, to that side. */
int side_alone(struct predicate *p)
{
    static const struct entry sides[] = {{"back left", SIDE_LEFT},
                                         {"back right", SIDE_RIGHT},
                                         {"back to left", SIDE_LEFT},
                                         {"back to right", SIDE_RIGHT},
                                         {"left", SIDE_LEFT},
                                         {"right", SIDE_RIGHT},
                                         {"to left", SIDE_LEFT},
                                         {"to right", SIDE_RIGHT},
                                         {"toward left", SIDE_LEFT},
                                         {"toward right", SIDE_RIGHT},
                                         {"on left", SIDE_LEFT},
                                         {"on right", SIDE_RIGHT},
                                         {"on left side", SIDE_LEFT},
                                         {"on right side", SIDE_RIGHT},
                                         {"hard left", SIDE_LEFT},
                                         {"hard right", SIDE_RIGHT},
                                         {"off left", SIDE_LEFT},
                                         {"off right", SIDE_RIGHT},
                                         {NULL, 0}};
    static const struct entry drives[] = {{"right side", SIDE_RIGHT},
                                          {"left side", SIDE_LEFT},
                                          {"down right side", SIDE_RIGHT},
                                          {"down left side", SIDE_LEFT},
                                          {NULL, 0}};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    enum verb verb = p->s->verb;
    bool ball = verb_row(verb)->task == VERB_CARRY || verb == VERB_DRIVES_OFF ||
                verb == VERB_DRIBBLES_OFF || verb == VERB_COMES || verb == VERB_REJECTS;
    int side = ball && (!p->s->place || verb == VERB_DRIVES) ? take_entry(&trial, sides) : -1;
    side = side < 0 && verb == VERB_DRIVES ? take_entry(&trial, drives) : side;
    if (side < 0 || !way_ends_here(&trial)) {
        return 0;
    }
    if (verb_row(verb)->place == DEFAULT_RIM || verb == VERB_COMES) {
        return drive_runs(p, past_fillers(from, c->end), trial.at, false);
    }
    return ends_there(p, trial.at, (struct place){.kind = PLACE_SIDE, .side = (enum side)side});
}

/* goes opposite, drifts across, runs right: with no place behind it. */
static int across_alone(struct predicate *p)
{
    static const struct entry sides[] = {{"opposite", SIDE_OPPOSITE},
                                         {"across", SIDE_OPPOSITE},
                                         {"left", SIDE_LEFT},
                                         {"right", SIDE_RIGHT},
                                         {NULL, 0}};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    enum verb verb = p->s->verb;
    bool moves = verb == VERB_GOES || verb == VERB_CUTS || verb == VERB_CLEARS ||
                 verb == VERB_RELOCATES || verb == VERB_DRIFTS;
    int side = moves && !p->s->place ? take_entry(&trial, sides) : -1;
    if (side < 0 || !way_ends_here(&trial)) {
        return 0;
    }
    return ends_there(p, trial.at, (struct place){.kind = PLACE_SIDE, .side = (enum side)side});
}

/* posts left: on that block. */
static int posts_side(struct predicate *p)
{
    static const struct entry sides[] = {{"left", SIDE_LEFT}, {"right", SIDE_RIGHT}, {NULL, 0}};
    struct cursor trial = *p->c;
    int side = p->s->verb == VERB_POSTS_UP && !p->s->place ? take_entry(&trial, sides) : -1;
    if (side < 0 || !way_ends_here(&trial)) {
        return 0;
    }
    return ends_there(
        p, trial.at,
        (struct place){.kind = PLACE_SPOT, .spot = SPOT_BLOCK, .side = (enum side)side});
}

/* flashes high: to the high post on the own side. */
static int flashes_high(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    bool comes = p->s->verb == VERB_COMES && p->s->object.kind == WHO_NONE;
    bool flashes = p->s->verb == VERB_FLASHES || (c->speech && (comes || p->s->verb == VERB_GOES));
    if (!flashes || p->s->place || !take_words(&trial, "high") || !way_ends_here(&trial)) {
        return 0;
    }
    struct place post = {.kind = PLACE_SPOT, .spot = SPOT_HIGH_POST};
    return taken_there(p, trial.at, post, "`high` was taken as the high post", "to the nail");
}

/* flashes to the middle: on half a floor the middle of a defense is the nail. */
static int flashes_middle(struct predicate *p)
{
    static const char *const leads[] = {"to", "into", "in", "at", "toward", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    enum verb verb = p->s->verb;
    bool flashes = verb == VERB_FLASHES;
    bool moves = c->speech && (verb == VERB_GOES || verb == VERB_DRIBBLES ||
                               (verb == VERB_CUTS && above_full_floor(c)) ||
                               (verb == VERB_COMES && p->s->object.kind == WHO_NONE));
    if ((!flashes && !moves) || p->s->place || (!take_among(&trial, leads) && moves)) {
        return 0;
    }
    if (!take_words(&trial, "middle")) {
        return 0;
    }
    struct cursor again = trial; /* to the middle, at the nail */
    bool said = take_among(&again, leads) && place_starts(&again);
    bool full = above_full_floor(c);
    if ((!said && !way_ends_here(&trial)) || (full && (said || !above_pressed(c)))) {
        return 0;
    }
    if (full) { /* against a press: in the backcourt, where the ball is thrown in */
        struct place top = {.kind = PLACE_SPOT, .spot = SPOT_TOP, .backcourt = true};
        return taken_there(p, trial.at, top, "the middle was taken as backcourt top",
                           "to half court");
    }
    const struct token *from = c->at;
    if (said) {
        c->at = trial.at;
        note_way(p, cursor_taken(c, from));
        return 1;
    }
    struct place nail = {.kind = PLACE_SPOT, .spot = SPOT_NAIL};
    return taken_there(p, trial.at, nail, "the middle was taken as the nail", "to the lane");
}

/* 4 comes up: off the screen that waits for him, or by himself: to the next spot up. */
static int comes_up(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct sentence *s = p->s;
    struct who one, two;
    bool several = false;
    if (!c->speech || s->verb != VERB_COMES || s->object.kind != WHO_NONE || s->place ||
        s->subject.count != 1 || above_holds(c, &s->subject.at[0]) || !take_words(&trial, "up") ||
        !part_ends(&trial)) {
        return 0;
    }
    struct cursor behind = trial;
    struct phrase phrase;
    if (take_joint(&behind) && !subject_verb_is(&behind) &&
        !(phrase_read(&behind, FOR_ATTACKERS, &phrase) &&
          verb_row(phrase.verb)->task == VERB_MOVE)) { /* comes up and screens: up there */
        return 0;
    }
    struct spot_stood at;
    bool known = above_stands(c, &s->subject.at[0], &at);
    bool inside = known && (at.spot == SPOT_BLOCK || at.spot == SPOT_LOW_POST ||
                            at.spot == SPOT_MID_POST || at.spot == SPOT_DUNKER);
    bool perimeter =
        known && (at.spot == SPOT_CORNER || at.spot == SPOT_WING || at.spot == SPOT_SLOT);
    if (!inside && !perimeter) {
        return 0;
    }
    if (!above_waiting_screen(c, &s->subject.at[0], &one, &two, &several) && !several) {
        s->verb = inside ? VERB_FLASHES : VERB_LIFTS;
    }
    struct place up = {.kind = PLACE_NEXT, .way = WAY_UP};
    struct place elbow = {.kind = PLACE_SPOT, .spot = SPOT_ELBOW};
    return taken_there(p, trial.at, inside ? elbow : up,
                       inside ? "`up` was taken as the elbow"
                              : "`up` was taken as the next spot up",
                       "to left elbow");
}

int toward_read(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {side_alone,     across_alone, flashes_high,
                                                         flashes_middle, posts_side,   comes_up};
    int found = 0;
    for (size_t i = 0; found == 0 && i < sizeof readers / sizeof *readers; i++) {
        found = readers[i](p);
    }
    return found;
}
