/* SPDX-License-Identifier: MIT */
/* sides: who gets the ball, where the words say only on which side or on which spot he is: `1
 * passes right`, `1 gives it to 5 on the block`, `1 hands off to 2 on the wing`; and `goes right
 * with the dribble`. Rules of recast_find. */
#include "language/words/speech.h"

static bool on_perimeter(const struct spot_stood *at)
{
    return at->spot == SPOT_CORNER || at->spot == SPOT_WING || at->spot == SPOT_SLOT ||
           at->spot == SPOT_TOP;
}

/* On one of the spots that are too far from each other for a hand-off. */
static bool stands_wide(const struct spot_stood *at)
{
    return on_perimeter(at) || at->spot == SPOT_BLOCK || at->spot == SPOT_LOW_POST ||
           at->spot == SPOT_MID_POST || at->spot == SPOT_SHORT_CORNER || at->spot == SPOT_DUNKER;
}

/* left, right; opposite: the other one from where the passer stands. */
static enum side side_said(struct cursor *c, const struct who *passer)
{
    static const struct entry sides[] = {
        {"left", SIDE_LEFT},           {"to left", SIDE_LEFT},
        {"to left side", SIDE_LEFT},   {"left side", SIDE_LEFT},
        {"to right side", SIDE_RIGHT}, {"right side", SIDE_RIGHT},
        {"right", SIDE_RIGHT},         {"to right", SIDE_RIGHT},
        {"opposite", SIDE_OPPOSITE},   {"to other side", SIDE_OPPOSITE},
        {"across", SIDE_OPPOSITE},     {"to opposite side", SIDE_OPPOSITE},
        {"other side", SIDE_OPPOSITE}, {"to weak side", SIDE_OPPOSITE},
        {"weak side", SIDE_OPPOSITE},  {NULL, 0}};
    struct spot_stood at;
    int said = take_entry(c, sides);
    if (said < 0 || !part_ends(c)) {
        return SIDE_NONE;
    }
    if (said != SIDE_OPPOSITE) {
        return (enum side)said;
    }
    bool known = above_stands(c, passer, &at);
    return !known                  ? SIDE_NONE
           : at.side == SIDE_LEFT  ? SIDE_RIGHT
           : at.side == SIDE_RIGHT ? SIDE_LEFT
                                   : SIDE_NONE;
}

/* The only one outside on this side; false: none, or more than one. */
static bool only_one_there(const struct cursor *c, enum side side, const struct who *passer,
                           struct who *out)
{
    size_t found = 0;
    for (int number = 1; number <= c->players; number++) {
        struct who who = {.kind = WHO_PLAYER, .number = number, .span = cursor_next(c)->span};
        struct spot_stood at;
        if (!same_who(&who, passer) && above_stands(c, &who, &at) && at.side == side &&
            on_perimeter(&at)) {
            *out = who;
            found++;
        }
    }
    return found == 1;
}

/* Who passes: named here, or the one who has the ball. */
static bool passer_read(struct cursor *c, struct somebody *out, bool *named)
{
    struct who holder;
    const struct token *at = cursor_next(c);
    *named = player_here(c, out);
    if (*named || !above_holder(c, &holder) || holder.kind != WHO_PLAYER) {
        return *named && out->who.kind == WHO_PLAYER;
    }
    *out = somebody_numbered(c, at, holder);
    return true;
}

/* 1 passes right, swing it to the left side: to the only one who stands outside there. */
bool passes_side(const struct cursor *c, struct recast *r)
{
    static const char *const balls[] = {"it", "ball", "it over", "it back", "over", "out", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody passer;
    struct phrase phrase;
    struct who to;
    bool named;
    if (!passer_read(&trial, &passer, &named)) {
        return false;
    }
    const struct token *verb = trial.at;
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.verb != VERB_PASSES ||
        phrase_has(&phrase, 'O')) {
        return false;
    }
    const struct token *end = trial.at;
    take_among(&trial, balls);
    enum side side = side_said(&trial, &passer.who);
    if (side == SIDE_NONE || !only_one_there(c, side, &passer.who, &to)) {
        return false;
    }
    recast_somebody(c, r, &passer);
    recast_copy(c, r, verb, end);
    recast_word(c, r, "to");
    recast_number(c, r, to.number);
    r->as = str_format(c->arena, "%d passes to %d", passer.who.number, to.number);
    r->to = trial.at;
    return true;
}

/* 2 throws a lob to the rim for 5: to 5, there. */
bool passes_there_for(const struct cursor *c, struct recast *r)
{
    static const char *const leads[] = {"to", "into", "at", "up to", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody passer, to;
    struct phrase phrase;
    bool named;
    if (!passer_read(&trial, &passer, &named)) {
        return false;
    }
    const struct token *verb = trial.at;
    if ((!phrase_read(&trial, FOR_ATTACKERS, &phrase) &&
         !light_verb_read(&trial, FOR_ATTACKERS, &phrase)) ||
        phrase.verb != VERB_PASSES || phrase_has(&phrase, 'O')) {
        return false;
    }
    const struct token *end = trial.at;
    take_words(&trial, "it");
    const struct token *lead = trial.at;
    const struct place *place = spot_behind(&trial, leads);
    const struct token *spot = trial.at;
    if (!place || place->kind != PLACE_SPOT || !take_words(&trial, "for") ||
        !player_here(&trial, &to) || same_who(&to.who, &passer.who) || !part_ends(&trial)) {
        return false;
    }
    bool points = to.who.number == 2 || to.who.number == 3; /* for three: the shot */
    if (points && phrase.pass != PASS_LOB) {
        return false;
    }
    struct cursor where = *c;
    where.at = lead;
    take_among(&where, leads);
    recast_somebody(c, r, &passer);
    recast_copy(c, r, verb, end);
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    recast_word(c, r, "at");
    recast_copy(c, r, where.at, spot);
    r->to = trial.at;
    return true;
}

/* gives, gives the ball in the high post: up to `to` and whom. */
static bool gives_whom(struct cursor *c, struct somebody *to, bool *placed)
{
    static const char *const gives[] = {"gives it",  "gives ball", "gives", "give it",
                                        "give ball", "give",       NULL};
    static const char *const leads[] = {"in", "at", "on", "inside to", NULL};
    struct cursor_mark mark = cursor_mark(c);
    if (!take_among(c, gives)) {
        return false;
    }
    *placed = spot_behind(c, leads) != NULL;
    bool read = take_words(c, "to") && player_here(c, to);
    if (read && !*placed) {
        struct cursor where = *c;
        *placed = spot_behind(&where, leads) != NULL;
    }
    if (!read) {
        cursor_back(c, mark);
    }
    return read;
}

/* 1 gives it to 5 on the block, 1 gives it to 2, who stands on another spot outside: too far off to
 * be handed. */
bool gives_far(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody giver, to;
    struct spot_stood here, there;
    bool named, placed;
    if (!passer_read(&trial, &giver, &named) || !gives_whom(&trial, &to, &placed) ||
        same_who(&to.who, &giver.who)) {
        return false;
    }
    bool known = above_stands(c, &giver.who, &here) && above_stands(c, &to.who, &there);
    bool near = known && here.spot == there.spot && here.side == there.side;
    bool apart = known && !near && stands_wide(&here) && stands_wide(&there);
    if (near || (!placed && !apart)) {
        return false;
    }
    recast_somebody(c, r, &giver);
    recast_word(c, r, "passes");
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    r->as = str_format(c->arena, "%d passes to %d", giver.who.number, to.who.number);
    r->to = trial.at;
    return true;
}

/* 1 hands off to 2 on the wing, where 2 stands: on the dribble. */
bool hands_off_at(const struct cursor *c, struct recast *r)
{
    static const char *const hands[] = {"hands off to",
                                        "hand off to",
                                        "hands it off to",
                                        "hand it off to",
                                        "hands it to",
                                        "hand it to",
                                        "hands ball to",
                                        "hand ball to",
                                        "hands ball off to",
                                        "gives hand-off to",
                                        NULL};
    static const char *const leads[] = {"at", "on", "in", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody giver, to;
    struct spot_stood here, there;
    bool named;
    if (!passer_read(&trial, &giver, &named) || !take_among(&trial, hands) ||
        !player_here(&trial, &to)) {
        return false;
    }
    const struct token *where = trial.at;
    const struct place *place = spot_behind(&trial, leads);
    bool stands = place && place->kind == PLACE_SPOT && above_stands(c, &to.who, &there) &&
                  there.spot == place->spot &&
                  (place->side == SIDE_NONE || place->side == there.side);
    bool both = above_stands(c, &giver.who, &here) && stands && here.spot == there.spot &&
                here.side == there.side;
    if (!stands || both || !part_ends(&trial)) {
        return false;
    }
    recast_somebody(c, r, &giver);
    recast_word(c, r, "dho-with");
    recast_somebody(c, r, &to);
    r->told = span_join(past_fillers(where, trial.at)->span, trial.at[-1].span);
    r->to = trial.at;
    return true;
}

/* 1 goes right with the dribble, comes toward 2 on the dribble: dribbles there. */
bool with_dribble(const struct cursor *c, struct recast *r)
{
    static const char *const moves[] = {"goes", "go",  "moves",    "move",    "comes",   "come",
                                        "gets", "get", "advances", "advance", "travels", NULL};
    static const char *const tails[] = {"with dribble",     "on dribble",    "dribbling",
                                        "with ball",        "off dribble",   "with his dribble",
                                        "with her dribble", "on the bounce", NULL};
    static const char *const towards[] = {
        "at", "toward", "towards", "in direction of", "in the direction of", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who, other;
    bool named;
    if (!passer_read(&trial, &who, &named) || !above_holds(c, &who.who) ||
        !take_among(&trial, moves)) {
        return false;
    }
    struct cursor first = trial; /* goes with the dribble toward 2 */
    bool early = take_among(&first, tails);
    const struct token *from = early ? first.at : trial.at, *end = NULL, *behind = NULL;
    for (struct cursor at = trial; !early && at.at < at.end && !clause_ends(at.at); at.at++) {
        struct cursor tail = at;
        if (take_among(&tail, tails)) {
            end = at.at;
            behind = tail.at;
            break;
        }
    }
    struct cursor way = trial;
    way.at = from;
    bool at_him = take_among(&way, towards) && player_here(&way, &other) &&
                  (early ? part_ends(&way) : way.at == end);
    if (!early && (!end || end == from)) {
        return false;
    }
    recast_somebody(c, r, &who);
    recast_word(c, r, "dribbles");
    if (at_him) {
        recast_word(c, r, "at");
        recast_somebody(c, r, &other);
        r->to = early ? way.at : behind;
        return true;
    }
    if (!early) {
        recast_copy(c, r, from, end);
    }
    r->to = early ? from : behind;
    return true;
}

/* hold it for 2 seconds, and nothing behind it: the one who has the ball does. */
bool holds_long(const struct cursor *c, struct recast *r)
{
    static const char *const holds[] = {"hold it", "hold ball", "hold", "keep it", NULL};
    static const char *const tails[] = {"up top", "on top", "out top", "there", NULL};
    struct cursor trial = cursor_look(c);
    struct who holder;
    if (!take_among(&trial, holds) || !above_holder(c, &holder) || holder.kind != WHO_PLAYER) {
        return false;
    }
    take_words(&trial, "for");
    take_words(&trial, "about");
    const struct token *from = trial.at;
    bool seconds = skip_seconds(&trial);
    const struct token *end = trial.at;
    take_among(&trial, tails);
    if (!seconds || !stop_is(&trial)) {
        return false;
    }
    recast_number(c, r, holder.number);
    recast_word(c, r, "holds");
    recast_word(c, r, "for");
    recast_copy(c, r, from, end);
    r->to = trial.at;
    return true;
}
