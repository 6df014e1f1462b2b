/* SPDX-License-Identifier: MIT */
/* supply: what a sentence leaves out and the words themselves tell: whose screen is meant, the rim
 * of a basket cut, that a move is only a move. (Sides and spots that hang on the floor: play.) */
#include "language/words/speech.h"

#include <string.h>

bool word_starts(const struct token *token, const struct token *end, const char *word)
{
    return token < end && str_starts(token->text, word);
}

/* 4 goes away from 5, away from the ball: of whose screen it is a rejection, else no place. */
bool away_from_nobody(struct predicate *p)
{
    const struct sentence *s = p->s;
    struct cursor *c = p->c;
    if (s->verb != VERB_REJECTS || !strstr(p->phrase.words, "away from") ||
        s->object.kind == WHO_NONE || above_may_have_screened(c, &s->subject.at[0], &s->object)) {
        return false;
    }
    struct str who = subject_words(c, &s->subject), from = cursor_text(c, s->object.span);
    diag_help(
        c->diags,
        REFUSE(c, TEXT_TWO_MEANINGS, s->verb_span, "away from %.*s is no place", STR_ARG(from)),
        "write where it ends, `%.*s %s to left wing`", STR_ARG(who), s->bare ? "go" : "goes");
    return true;
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
    struct str words = str_of(p->phrase.words);
    for (const struct entry *use = uses; plain && use->words; use++) {
        if (use->words[0] == words.at[0] && str_is(words, use->words) &&
            p->s->object.kind == WHO_NONE &&
            above_waiting_screen(p->c, &p->s->subject.at[0], &by, &second, &several)) {
            p->s->verb = (enum verb)use->value;
            return;
        }
    }
}

/* then 1 goes: with the ball, and nowhere said, it is a drive; off the screen that waits. */
static void goes_with_ball(struct predicate *p)
{
    struct sentence *s = p->s;
    struct who holder, by, second;
    bool several;
    if (!p->c->speech || s->verb != VERB_GOES || s->place || s->subject.count != 1 ||
        !str_is(str_of(p->phrase.words), "goes") || !above_holder(p->c, &holder) ||
        !same_who(&holder, &s->subject.at[0]) || p->way_said) {
        return;
    }
    bool screen = above_waiting_screen(p->c, &holder, &by, &second, &several);
    if (several) {
        return;
    }
    s->verb = screen ? VERB_DRIVES_OFF : VERB_DRIVES;
    struct diag *diag =
        diag_add(p->c->diags, DIAG_TEXT_VERB_TAKEN, s->verb_span,
                 "with the ball, and nowhere said, it was read as `%s`", verb_row(s->verb)->words);
    diag_help(p->c->diags, diag, "to go elsewhere, name the place: `%.*s to left wing`",
              STR_ARG(predicate_begun(p)));
}

/* 1 comes off it and hits 5: with the ball it is a drive, or a dribble to where it is said. */
static void comes_with_ball(struct predicate *p)
{
    struct who by, second;
    bool several;
    if (p->s->verb == VERB_COMES && p->s->subject.count == 1 && p->c->speech &&
        above_holds(p->c, &p->s->subject.at[0]) &&
        (p->s->object.kind != WHO_NONE ||
         above_waiting_screen(p->c, &p->s->subject.at[0], &by, &second, &several))) {
        p->s->verb = p->s->place ? VERB_DRIBBLES_OFF : VERB_DRIVES_OFF;
    }
}

static struct diag *note_screen(struct predicate *p)
{
    const struct sentence *s = p->s;
    struct strbuf screener;
    strbuf_init(&screener, p->c->arena);
    if (s->object.kind == WHO_ROLE) {
        strbuf_add(&screener, s->object.role);
    } else {
        strbuf_print(&screener, "%d", s->object.number);
    }
    return diag_add(p->c->diags, DIAG_TEXT_SCREEN_TAKEN, s->verb_span,
                    "nobody is named to come off: the screen of %s was taken", screener.at);
}

/* What a plain movement is off the screen that was set in the same breath. VERB_COUNT: no use. */
static enum verb use_of(const struct predicate *p, enum screen_kind kind)
{
    const struct sentence *s = p->s;
    bool place = s->place || p->phrase.to != SPOT_COUNT;
    bool ball = above_holds(p->c, &s->subject.at[0]);
    switch (s->verb) {
    case VERB_CUTS:
        return ball ? VERB_COUNT : place ? VERB_COMES : VERB_CURLS;
    case VERB_GOES:
    case VERB_FILLS:
    case VERB_LIFTS:
    case VERB_FLASHES:
        return !place ? VERB_COUNT : ball ? VERB_DRIBBLES_OFF : VERB_COMES;
    case VERB_DRIFTS:
    case VERB_RELOCATES:
        return ball ? VERB_COUNT : kind == SCREEN_FLARE || !place ? VERB_FADES : VERB_COMES;
    case VERB_DRIVES:
        return ball ? VERB_DRIVES_OFF : VERB_COUNT;
    case VERB_DRIBBLES:
        return ball && place ? VERB_DRIBBLES_OFF : VERB_COUNT;
    case VERB_POPS: /* out to the wing, by the one it was set for */
        return place && !ball ? VERB_COMES : VERB_COUNT;
    default:
        return VERB_COUNT;
    }
}

/* goes away, by the baseline, around 4: a way that the screen may have no part in; straight down
 * the lane, middle, left are the ways off it. */
static bool goes_elsewhere(const struct predicate *p)
{
    static const char *const others[] = {"away",   "opposite", "baseline", "behind",   "around",
                                         "under",  "past",     "by",       "through",  "thru",
                                         "beside", "between",  "beneath",  "backdoor", NULL};
    bool other = false;
    for (const struct token *at = p->from; p->way_said && at < p->c->at; at++) {
        other = other || token_is_among(at, others);
    }
    return other;
}

/* as 1 catches, 4 screens for 2, 2 to the wing: the clause in front is of the screen. */
static bool tied_as_screen(const struct predicate *p)
{
    const sentence_list *here = p->c->here;
    for (size_t i = here && p->s->tie.event ? here->count : 0; i > 0; i--) {
        const struct sentence *last = &here->at[i - 1];
        if (verb_row(last->verb)->task == VERB_SCREEN && last->tie.event == p->s->tie.event) {
            return true;
        }
    }
    return false;
}

/* A drive, or who pops out: off the screen that waits, in a line of its own too. */
static bool always_uses(const struct predicate *p)
{
    return (p->s->verb == VERB_DRIVES && p->s->drive != DRIVE_BASELINE) ||
           word_starts(p->from, p->c->end, "pop");
}

/* The screen that waits for this player: of this line; for the one with the ball who drives and for
 * one who pops out also of a line before, if its screener has not gone on since. */
static bool screen_to_use(const struct predicate *p, struct who *by, enum screen_kind *kind,
                          struct who *second)
{
    const struct who *user = &p->s->subject.at[0];
    return above_screen_here(p->c, user, by, kind, second) ||
           (always_uses(p) && above_screen_holds(p->c, user, by, kind, second));
}

/* How to have it go without the screen. */
static struct str without_it(const struct predicate *p)
{
    struct arena *arena = p->c->arena;
    struct str who = subject_words(p->c, &p->s->subject), begun = predicate_begun(p);
    if (always_uses(p)) {
        return str_format(arena, "`%.*s %s to`, and the place", STR_ARG(who),
                          p->s->verb == VERB_DRIVES ? "dribbles" : "goes");
    }
    return str_format(arena, "`%.*s` in a line of its own", STR_ARG(begun));
}

/* goes right, drives left: the place that is on that side of the screen. */
static void side_off_screen(struct predicate *p)
{
    struct sentence *s = p->s;
    bool side = s->place && s->place->kind == PLACE_SIDE &&
                (s->place->side == SIDE_LEFT || s->place->side == SIDE_RIGHT);
    if (s->verb == VERB_DRIBBLES_OFF && side) { /* goes right */
        s->drive = s->place->side == SIDE_LEFT ? DRIVE_LEFT : DRIVE_RIGHT;
        s->place = NULL;
        s->verb = VERB_DRIVES_OFF;
    }
    if (s->verb == VERB_DRIVES_OFF && s->drive != DRIVE_FREE) {
        s->place = place_off_screen(p->c, s->drive, s->verb_span);
        s->drive = DRIVE_FREE;
    }
}

/* 5 screens for 3 and 3 cuts to the rim: said in one breath, the screen is used. In a line of its
 * own the cut is a cut; a drive of the one it waits for is off it. */
static bool uses_screen(struct predicate *p)
{
    struct sentence *s = p->s;
    struct who by, second;
    bool tied = s->tie.word != TIE_NONE && !tied_as_screen(p);
    bool plain = s->path == PATH_NONE && !tied && s->subject.count == 1 &&
                 s->object.kind == WHO_NONE && !goes_elsewhere(p);
    enum screen_kind kind;
    if (!plain || use_of(p, SCREEN_PLAIN) == VERB_COUNT || !screen_to_use(p, &by, &kind, &second)) {
        return false;
    }
    struct str without = without_it(p);
    s->tie.word = TIE_NONE; /* the screen's own: who uses it waits for it, and so for that */
    s->tie.event = NULL;
    s->verb = use_of(p, kind);
    side_off_screen(p);
    s->object = by;
    s->object2 = second.kind == WHO_NONE ? NULL : who_keep(p->c, second);
    diag_help(p->c->diags, note_screen(p), "if the screen is not used, write %.*s",
              STR_ARG(without));
    return true;
}

/* 4 opens to the corner: he goes there; to the ball, to the rim he only turns. */
static void opens_there(struct predicate *p)
{
    struct sentence *s = p->s;
    const struct place *place = s->place ? s->place : s->object.place;
    bool spot = s->verb == VERB_FACES && place && place->kind == PLACE_SPOT &&
                place->spot != SPOT_RIM && place->spot != SPOT_FRONT_OF_RIM;
    if (spot && word_starts(p->from, p->c->end, "open")) {
        s->verb = VERB_RELOCATES;
        s->place = place;
        s->object = (struct who){.kind = WHO_NONE};
    }
}

void place_of_phrase(struct predicate *p)
{
    opens_there(p);
    screenless_move(p);
    with_screen(p);
    uses_screen(p);
    ghosts_on_ball(p);
    rolls_of_none(p);
    comes_with_ball(p);
    goes_with_ball(p);
    if (p->s->verb == VERB_SETS_UP && p->s->object.kind == WHO_PLAYER &&
        word_starts(p->from, p->c->end, "fake") && above_holds(p->c, &p->s->subject.at[0])) {
        p->s->verb = VERB_PASS_FAKES; /* fakes to 2: the pass */
    }
    end_inside(p);
    if (p->c->speech && p->phrase.to == SPOT_COUNT) {
        end_unsaid(p);
    }
    counted_part(p);
    if (!p->s->place && p->phrase.to != SPOT_COUNT) {
        struct place place = {.kind = PLACE_SPOT, .spot = p->phrase.to, .span = p->s->verb_span};
        p->s->place = place_keep(p->c->arena, place);
    }
    way_settled(p);
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

/* a pin-down by 5, 2 comes off it: for the one who uses it right behind. */
static bool screens_for_user(struct predicate *p)
{
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(p->c);
    struct who who;
    if (!p->c->speech || p->s->verb != VERB_SCREENS || p->s->screen == SCREEN_BALL ||
        !(take_mark(&trial, ',') || take_words(&trial, "and"))) {
        return false;
    }
    take_words(&trial, "and");
    bool uses = person_read(&trial, &who) && who.kind == WHO_PLAYER &&
                !same_who(&who, &p->s->subject.at[0]) && (skip_run_in(&trial), use_follows(&trial));
    cursor_back(p->c, mark);
    if (uses) {
        p->s->object = who;
    }
    return uses;
}

/* 5 rolls, 4 replaces: the one who has just gone. */
static bool replaces_mover(struct predicate *p)
{
    struct cursor *c = p->c;
    above_list list = above_sentences(c, false);
    const struct sentence *last = list.count > 0 ? list.at[list.count - 1] : NULL;
    const struct sentence *before = list.count > 1 ? list.at[list.count - 2] : NULL;
    bool behind = c->at > p->from && str_is(c->at[-1].text, "behind");
    if (behind && before && before->verb == VERB_DRIVES) { /* 1 drives, 2 slides over, 3 fills
                                                              behind: behind the drive */
        last = before;
    }
    const struct event *moment = behind && last ? last->tie.event : NULL;
    struct who gone = last && last->subject.count == 1 ? last->subject.at[0] : p->s->subject.at[0];
    if (moment && moment->kind == EVENT_VERB && verb_row(moment->verb)->task == VERB_CARRY) {
        gone = moment->subject; /* when 1 drives, 4 slides down and 2 fills behind */
    }
    if (p->s->verb != VERB_REPLACES || !c->speech || !last || last->subject.count != 1 ||
        (verb_row(last->verb)->task != VERB_MOVE && verb_row(last->verb)->task != VERB_CARRY &&
         verb_row(last->verb)->task != VERB_USE) ||
        !who_is_one(&gone) || same_who(&gone, &p->s->subject.at[0])) {
        return false;
    }
    p->s->object = gone;
    p->s->object.span = p->s->verb_span;
    who_list mover = {NULL, 0, 0};
    VEC_PUSH(c->arena, &mover, gone);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, p->s->verb_span,
                                 "whom is not written: %.*s, who has just gone, was taken",
                                 STR_ARG(subject_words(c, &mover)));
    diag_help(c->diags, diag, "to have another, write the number: `%.*s 3`",
              STR_ARG(predicate_begun(p)));
    return true;
}

/* x3 stunts: at whoever has the ball. */
static bool at_the_ball(struct predicate *p)
{
    struct who holder;
    bool found = p->c->speech && p->s->verb == VERB_STUNTS && above_holder(p->c, &holder);
    if (found) {
        p->s->object = holder;
        p->s->object.span = p->s->verb_span;
        struct diag *diag =
            diag_add(p->c->diags, DIAG_TEXT_WHO_TAKEN, p->s->verb_span,
                     "at whom is not named: %d, who has the ball, was taken", holder.number);
        diag_help(p->c->diags, diag, "to have another, write the number");
    }
    return found && holder.kind == WHO_PLAYER;
}

/* sets the screen and rolls, picks and pops: what comes of a screen on the ball. */
static bool rolls_behind(const struct predicate *p)
{
    struct cursor trial = cursor_look(p->c);
    struct phrase phrase;
    if (!p->c->speech || p->s->screen != SCREEN_PLAIN || p->s->subject.count != 1 || p->s->place ||
        !take_joint(&trial)) {
        return false;
    }
    struct who who; /* 5 screens, 1 drives right: by the one who has the ball */
    struct cursor next = trial;
    if (person_read(&next, &who) && above_holds(p->c, &who)) {
        skip_run_in(&next);
        return phrase_read(&next, FOR_ATTACKERS, &phrase) &&
               (verb_row(phrase.verb)->task == VERB_CARRY || phrase.verb == VERB_GOES ||
                verb_row(phrase.verb)->task == VERB_USE);
    }
    return phrase_read(&trial, FOR_ATTACKERS, &phrase) && !phrase_has(&phrase, 'O') &&
           (phrase.verb == VERB_ROLLS || phrase.verb == VERB_POPS);
}

/* 5 sets a ball screen: a screen on the ball is for whoever has it. */
static bool screens_the_ball(struct predicate *p)
{
    struct sentence *s = p->s;
    bool rolls = s->verb == VERB_SCREENS && rolls_behind(p) && !above_holds(p->c, s->subject.at);
    if (s->verb != VERB_SCREENS || (s->screen != SCREEN_BALL && !rolls)) {
        return false;
    }
    s->screen = SCREEN_BALL;
    s->object = (struct who){.kind = WHO_BALL, .span = s->verb_span};
    if (rolls) {
        struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_WHO_TAKEN, s->verb_span,
                                     "for whom is not written: the one who has the ball was taken");
        diag_help(p->c->diags, diag, "to have another, write the number: `%.*s`",
                  STR_ARG(predicate_begun_to(p, STR("for 2"))));
    }
    return true;
}

/* 2 and 3 come off: one screen is for both. */
static bool one_screen_for_all(const struct predicate *p, const struct who *screener)
{
    struct who other, second;
    bool several;
    for (size_t i = 1; i < p->s->subject.count; i++) {
        if (!above_waiting_screen(p->c, &p->s->subject.at[i], &other, &second, &several) ||
            !same_who(&other, screener)) {
            return false;
        }
    }
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
    if ((slot->letter == 'U' || s->verb == VERB_REJECTS) &&
        above_waiting_screen(c, &s->subject.at[0], &s->object, &second, &several)) {
        if (!one_screen_for_all(p, &s->object)) {
            s->object = (struct who){.kind = WHO_NONE};
            return player_missing(p, slot->preposition) > 0;
        }
        s->object2 = second.kind == WHO_NONE ? NULL : who_keep(c, second);
        note_screen(p);
        return player_fits(p, &s->object, 'U') > 0;
    }
    if (!several && (moves_only(p, slot) || screens_the_ball(p) || screens_for_user(p) ||
                     replaces_mover(p) || receiver_above(p) || at_the_ball(p))) {
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
