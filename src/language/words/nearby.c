/* SPDX-License-Identifier: MIT */
/* nearby: places as a coach points at them: just below 5, a couple of feet above the wing, the top
 * side of the left block, between 2 and 4, 4's. Read in the second reading of a line; how far,
 * where it is not said, is told. */
#include "language/words/grammar.h"

/* As far as beside somebody is: 3 ft (ours), about a metre. */
static struct measure a_little(const struct cursor *c)
{
    return c->metres ? (struct measure){.value = 1, .unit = UNIT_METRES}
                     : (struct measure){.value = 3, .unit = UNIT_FEET};
}

enum far { FAR_LITTLE, FAR_FEET, FAR_FEW_FEET, FAR_STEPS };
static const struct entry lengths[] = {
    {"little", FAR_LITTLE},       {"little bit", FAR_LITTLE},
    {"bit", FAR_LITTLE},          {"slightly", FAR_LITTLE},
    {"touch", FAR_LITTLE},        {"tad", FAR_LITTLE},
    {"hair", FAR_LITTLE},         {"right", FAR_LITTLE},
    {"couple of feet", FAR_FEET}, {"couple feet", FAR_FEET},
    {"few feet", FAR_FEW_FEET},   {"couple of steps", FAR_STEPS},
    {"couple steps", FAR_STEPS},  {NULL, 0},
};
static const struct entry directions[] = {
    {"above", ABOVE},
    {"below", BELOW},
    {"inside", INSIDE},
    {"outside", OUTSIDE},
    {"left of", LEFT_OF},
    {"right of", RIGHT_OF},
    {"to left of", LEFT_OF},
    {"to right of", RIGHT_OF},
    {"higher than", ABOVE},
    {"lower than", BELOW},
    {"up from", ABOVE},
    {"down from", BELOW},
    {"out from", OUTSIDE},
    {"in from", INSIDE},
    {"wider than", OUTSIDE},
    {"deeper than", BELOW},
    {"in front of", ABOVE},
    {"outside of", OUTSIDE},
    {"inside of", INSIDE},
    {"top side of", ABOVE},
    {"high side of", ABOVE},
    {"low side of", BELOW},
    {"baseline side of", BELOW},
    {"bottom side of", BELOW},
    {"middle side of", INSIDE},
    {"left side of", LEFT_OF},
    {"right side of", RIGHT_OF},
    {"off", OUTSIDE},
    {NULL, 0},
};

static struct measure length_of(const struct cursor *c, int far)
{
    double feet = far == FAR_FEET ? 2 : 3;
    return far == FAR_STEPS    ? (struct measure){.value = 2, .unit = UNIT_STEPS}
           : far == FAR_LITTLE ? a_little(c)
                               : (struct measure){.value = feet, .unit = UNIT_FEET};
}

static void note_length(struct cursor *c, struct span span)
{
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_LENGTH_TAKEN, span,
                                 "`%.*s`: how far is not written: %s was taken",
                                 STR_ARG(cursor_text(c, span)), c->metres ? "1 m" : "3 ft");
    diag_help(c->diags, diag, "write the distance: `%s`",
              c->metres ? "2 m above left corner" : "5 ft above left corner");
}

/* The lane and the rim have no other inside. */
static bool whole_inside(const struct place *place)
{
    return place->direction == INSIDE && place->a && place->a->kind == PLACE_SPOT &&
           (place->a->spot == SPOT_LANE || place->a->spot == SPOT_RIM);
}

/* the open spot at the left slot: which spot is said behind. */
static const struct place *open_spot_at(struct cursor *c)
{
    static const char *const opens[] = {"open spot at",  "open spot in",  "open spot on",
                                        "empty spot at", "empty spot in", "empty spot on",
                                        "open area at",  "open area in",  "free spot at",
                                        "space at",      "space in",      NULL};
    return spot_behind(c, opens);
}

static const struct place *off_read(struct cursor *c, int depth)
{
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_OFFSET};
    bool measured = take_measure(c, false, &place.length);
    if (measured) {
        take_words(c, "or two"); /* a step or two */
    }
    int direction = take_entry(c, directions);
    int far = measured ? FAR_FEET : direction < 0 ? take_entry(c, lengths) : -1;
    direction = direction < 0 ? take_entry(c, directions) : direction;
    bool off = direction == OUTSIDE && c->at > mark.at && str_is(c->at[-1].text, "off");
    if (direction < 0 || (off && !measured && far < 0)) {
        cursor_back(c, mark);
        return NULL;
    }
    place.direction = (enum direction)direction;
    struct span said = cursor_taken(c, mark.at);
    size_t before = c->refusals;
    bool from = str_is(c->at[-1].text, "from");
    if (!place_or_who_read(c, depth + 1, &place.a, &place.who) || c->refusals != before ||
        (from && !measured && far < 0 &&
         word_among(c, (const char *const[]){"to", "into", NULL}))) {
        cursor_back(c, mark); /* up from the block to the wing: where the way begins */
        return NULL;
    }
    if (place.a && whole_inside(&place)) {
        return place.a;
    }
    if (!measured) {
        place.length = length_of(c, far < 0 ? FAR_LITTLE : far);
    }
    if (!measured && (far < 0 || far == FAR_LITTLE)) {
        note_length(c, said);
    }
    /* just below 5 on the left block: where 5 is, which the play knows */
    static const char *const leads[] = {"on", "at", "in", NULL};
    if (!place.a) {
        spot_behind(c, leads);
    }
    return place_new(c, place, mark.at);
}

static const struct place *end_read(struct cursor *c, int depth)
{
    size_t before = c->refusals;
    const struct place *place;
    struct who who;
    const struct token *from = c->at;
    if (!place_or_who_read(c, depth + 1, &place, &who) || c->refusals != before) {
        return NULL;
    }
    return place ? place : place_new(c, (struct place){.kind = PLACE_WHERE, .who = who}, from);
}

/* between 2 and 4, midway between the elbow and the wing. */
static const struct place *middle_read(struct cursor *c, int depth)
{
    static const char *const words[] = {"halfway between", "midway between", "in between",
                                        "right between",   "between",        NULL};
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_HALFWAY, .fraction = 0.5};
    if (take_among(c, words)) {
        place.a = end_read(c, depth);
        place.b = place.a && take_words(c, "and") ? end_read(c, depth) : NULL;
    }
    if (!place.b) {
        cursor_back(c, mark);
        return NULL;
    }
    return place_new(c, place, mark.at);
}

/* 2 takes 4's. */
static const struct place *owned_alone(struct cursor *c)
{
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_SPOT_OF};
    static const char *const verbs[] = {"takes", "take", "fills", "fill", "to"};
    bool takes = false;
    for (size_t i = 0; c->at > c->first && i < sizeof verbs / sizeof *verbs; i++) {
        takes = takes || str_is(c->at[-1].text, verbs[i]);
    }
    static const char *const spots[] = {"spot", "place", "position", "old spot", NULL};
    if (take_among(c, owner_words) && take_among(c, spots) && above_him(c, c->doer, &place.who)) {
        return place_new(c, place, mark.at); /* takes his spot */
    }
    cursor_back(c, mark);
    if (takes && owner_read(c, &place.who) &&
        (stop_is(c) || mark_is(c, ',') || word_is(c, 0, "and"))) {
        return place_new(c, place, mark.at);
    }
    cursor_back(c, mark);
    return NULL;
}

/* slides up a step, 3 ft in, halfway to the corner: from where the player is. */
static const struct place *self_read(struct cursor *c, int depth)
{
    static const struct entry sides[] = {
        {"up", ABOVE},        {"down", BELOW},        {"in", INSIDE},
        {"out", OUTSIDE},     {"left", LEFT_OF},      {"right", RIGHT_OF},
        {"to left", LEFT_OF}, {"to right", RIGHT_OF}, {NULL, 0}};
    struct cursor_mark mark = cursor_mark(c);
    if (!c->doer || c->several) {
        return NULL;
    }
    struct place place = {.kind = PLACE_HALFWAY, .fraction = 0.5};
    take_words(c, "about");
    if (take_words(c, "halfway to")) {
        place.a = place_new(c, (struct place){.kind = PLACE_WHERE, .who = *c->doer}, mark.at);
        place.b = end_read(c, depth);
        if (place.b) {
            return place_new(c, place, mark.at);
        }
        cursor_back(c, mark);
        return NULL;
    }
    place = (struct place){.kind = PLACE_OFFSET, .who = *c->doer};
    int direction = take_entry(c, sides);
    bool measured = take_measure(c, false, &place.length);
    direction = direction < 0 ? take_entry(c, sides) : direction;
    if (direction < 0 || !measured || !part_ends(c)) {
        cursor_back(c, mark);
        return NULL;
    }
    place.direction = (enum direction)direction;
    return place_new(c, place, mark.at);
}

/* flashes to the ball: toward whoever has it, half the way (ours). */
static const struct place *ball_read(struct cursor *c)
{
    struct cursor trial = *c;
    struct who holder;
    const struct token *before = c->at; /* screens the ball is no place */
    while (before > c->first && before[-1].filler) {
        before--;
    }
    bool led =
        before > c->first && (str_is(before[-1].text, "to") || str_is(before[-1].text, "toward") ||
                              str_is(before[-1].text, "towards"));
    static const char *const balls[] = {"ball", "meet ball", "meet pass", "meet it", NULL};
    if (!led || !c->doer || c->several || !take_among(&trial, balls) ||
        word_is(&trial, 0, "side") || !above_holder(c, &holder) || same_who(&holder, c->doer)) {
        return NULL;
    }
    const struct token *from = c->at;
    c->at = trial.at;
    struct place place = {.kind = PLACE_HALFWAY, .fraction = 0.5};
    place.a = place_new(c, (struct place){.kind = PLACE_WHERE, .who = *c->doer}, from);
    place.b = place_new(c, (struct place){.kind = PLACE_WHERE, .who = holder}, from);
    struct span span = cursor_taken(c, from);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_LENGTH_TAKEN, span,
                                 "`%.*s`: how far is not written: half the way was taken",
                                 STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, "name the place: `to the nail`, `beside 1`");
    return place_new(c, place, from);
}

const struct place *nearby_read(struct cursor *c, int depth)
{
    const struct place *place = c->speech ? off_read(c, depth) : NULL;
    place = place || !c->speech ? place : self_read(c, depth);
    place = place || !c->speech ? place : middle_read(c, depth);
    place = place || !c->speech ? place : open_spot_at(c);
    place = place || !c->speech ? place : ball_read(c);
    return place || !c->speech ? place : owned_alone(c);
}
