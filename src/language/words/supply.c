/* SPDX-License-Identifier: MIT */
/* supply: what a sentence leaves out and the words themselves tell: whose screen is meant, the rim
 * of a basket cut, that a move is only a move. (Sides and spots that hang on the floor: play.) */
#include "language/words/grammar.h"

static bool word_starts(const struct token *token, const struct token *end, const char *word)
{
    return token < end && str_starts(token->text, word);
}

/* dives to the rim, pops out to the wing: said of one who has set no screen it is a cut, a move. */
static void without_screen(struct predicate *p)
{
    bool rolls = p->s->verb == VERB_ROLLS, pops = p->s->verb == VERB_POPS && p->s->place;
    if ((!rolls && !pops) || (rolls && !word_starts(p->from, p->c->end, "dive")) ||
        above_has_screened(p->c, &p->s->subject)) {
        return;
    }
    p->s->verb = rolls ? VERB_CUTS : VERB_GOES;
    if (rolls && !p->s->place) {
        p->phrase.to = SPOT_RIM;
    }
}

/* flex cuts, turns the corner, bumps out: ways to use the screen that waits for this player. */
static void with_screen(struct predicate *p)
{
    static const struct entry uses[] = {{"flex cuts", VERB_COMES},
                                        {"shuffle cuts", VERB_COMES},
                                        {"ucla cuts", VERB_COMES},
                                        {"zipper cuts", VERB_COMES},
                                        {"turns corner", VERB_DRIVES_OFF},
                                        {"gets downhill", VERB_DRIVES_OFF},
                                        {"goes downhill", VERB_DRIVES_OFF},
                                        {"snakes it", VERB_DRIBBLES_OFF},
                                        {"snakes screen", VERB_DRIBBLES_OFF},
                                        {"bumps", VERB_FADES},
                                        {NULL, 0}};
    struct who by, second;
    bool several, plain = p->s->path == PATH_NONE && p->s->drive == DRIVE_FREE;
    for (const struct entry *use = uses; plain && use->words; use++) {
        if (str_is(str_of(p->phrase.words), use->words) && p->s->object.kind == WHO_NONE &&
            above_waiting_screen(p->c, &p->s->subject.at[0], &by, &second, &several)) {
            p->s->verb = (enum verb)use->value;
            return;
        }
    }
}

void place_of_phrase(struct predicate *p)
{
    without_screen(p);
    with_screen(p);
    if (p->s->place || p->phrase.to == SPOT_COUNT) {
        return;
    }
    struct place *place = arena_new(p->c->arena, struct place);
    *place = (struct place){.kind = PLACE_SPOT, .spot = p->phrase.to, .span = p->s->verb_span};
    p->s->place = place;
}

static void note_screen(struct predicate *p)
{
    const struct sentence *s = p->s;
    struct strbuf screener;
    strbuf_init(&screener, p->c->arena);
    if (s->object.kind == WHO_ROLE) {
        strbuf_add(&screener, s->object.role);
    } else {
        strbuf_print(&screener, "%d", s->object.number);
    }
    diag_add(p->c->diags, DIAG_TEXT_SCREEN_TAKEN, s->verb_span,
             "nobody is named to come off: the screen of %s was taken", screener.at);
}

/* 3 comes to top, 2 fades to the corner: no screen is named and none waits, so it is a move there.
 */
static bool moves_only(struct predicate *p, const struct slot *slot)
{
    bool place = slot->letter == 'U' && p->s->place != NULL && p->from < p->c->at;
    for (const struct token *at = p->from; place && at < p->c->at; at++) {
        place = !str_is(at->text, "off");
    }
    enum verb verb = p->s->verb;
    if (!place || (verb != VERB_COMES && verb != VERB_FADES && verb != VERB_FLARES)) {
        return false;
    }
    p->s->verb = verb == VERB_COMES ? VERB_GOES : VERB_DRIFTS;
    return true;
}

/* 1 dribbles at 2 and hands off: to the one just dribbled at. */
static bool hands_off_there(struct predicate *p)
{
    const sentence_list *here = p->c->here;
    const struct sentence *last = here && here->count > 0 ? &here->at[here->count - 1] : NULL;
    if (p->s->verb != VERB_HANDS_OFF || !last || last->verb != VERB_DRIBBLES_AT ||
        !same_who(&last->subject.at[0], &p->s->subject.at[0])) {
        return false;
    }
    p->s->object = last->object;
    return true;
}

/* throws the lob and 2 dunks it: to the one who shoots it. */
static bool passes_to_shooter(struct predicate *p)
{
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct phrase phrase;
    struct who who;
    take_mark(&trial, ',');
    bool found = p->c->speech && verb_row(p->s->verb)->task == VERB_PASS &&
                 take_words(&trial, "and") && person_read(&trial, &who) && !who_defends(&who) &&
                 !same_who(&who, &p->s->subject.at[0]) &&
                 phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase.verb == VERB_SHOOTS;
    cursor_back(&trial, mark);
    if (found) {
        p->s->object = who;
    }
    return found;
}

/* 5 sets a ball screen: a screen on the ball is for whoever has it. */
static bool screens_the_ball(struct predicate *p)
{
    if (p->s->verb != VERB_SCREENS || p->s->screen != SCREEN_BALL) {
        return false;
    }
    p->s->object = (struct who){.kind = WHO_BALL, .span = p->s->verb_span};
    return true;
}

/* A player that is not written but known from above: whom the screened defender guards, whose
 * screen is waiting. */
bool player_above(struct predicate *p, const struct slot *slot)
{
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    struct who second;
    bool several = false;
    if (p->on_bare || (s->verb == VERB_SCREENS && s->on)) {
        struct who on = *s->on;
        s->on = NULL;
        const struct who *fits = above_guarded(c, &on, &s->object) ? &s->object : &on;
        return player_fits(p, fits, 'W') > 0;
    }
    if (slot->letter == 'U' &&
        above_waiting_screen(c, &s->subject.at[0], &s->object, &second, &several)) {
        s->object2 = second.kind == WHO_NONE ? NULL : who_keep(c, second);
        note_screen(p);
        return player_fits(p, &s->object, 'U') > 0;
    }
    if (!several && (moves_only(p, slot) || hands_off_there(p) || screens_the_ball(p) ||
                     passes_to_shooter(p))) {
        return true;
    }
    if (several) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_OBJECT_MISSING, s->verb_span,
                         "`%.*s` off whom? More than one screen waits for this player",
                         STR_ARG(cursor_text(c, s->verb_span))),
                  "say whose: `%.*s 5`", STR_ARG(predicate_begun_to(p, slot->preposition)));
        return false;
    }
    return player_missing(p, slot->preposition) > 0;
}
