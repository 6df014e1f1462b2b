/* SPDX-License-Identifier: MIT */
/* slot_content: what one slot of a verb holds, read behind its preposition: a player, a place, a
 * screen, a length or a time, a way round. Which slot it is, is known here. */
#include "language/words/speech.h"

/* `and 5` behind a screener, unless it begins a new sentence. */
static int second_screener(struct predicate *p)
{
    struct cursor *c = p->c;
    static const char *const links[] = {"and then off of", "and then off", "then off of",
                                        "then off",        "and off of",   "and off",
                                        "and then",        "then",         NULL};
    struct cursor trial = *c;
    bool linked = take_words(&trial, "and");
    struct cursor then = *c;
    take_mark(&then, ',');
    if (c->speech && take_among(&then, links)) { /* off 4 then off 5 */
        trial = then;
        linked = true;
    }
    if (!linked || subject_verb_is(&trial)) {
        return 1;
    }
    struct phrase phrase;
    struct cursor verb = trial;
    struct who second;
    if (phrase_read(&verb, FOR_ANYONE, &phrase) || !who_read(&trial, &second)) {
        return 1;
    }
    bool acts = !cursor_done(&trial) && ends_in_s(cursor_next(&trial)) && !clause_is(&trial) &&
                !word_among(&trial, place_words); /* and 2 looks for her */
    if (acts) {
        return 1;
    }
    p->s->object2 = who_keep(c, second);
    c->at = trial.at;
    c->refusals = trial.refusals;
    if (same_who(&p->s->object, &second)) {
        return said_twice(p, second.span, "the screener");
    }
    return player_fits(p, &second, 'U');
}

int slot_player(struct predicate *p, const struct slot *slot, struct who who)
{
    if (p->s->object.kind != WHO_NONE) {
        return said_twice(p, who.span, "the player");
    }
    bool each = who.kind == WHO_SPOT && who.place->each; /* screen for the corners: stands.c */
    bool side = who.kind == WHO_SPOT && who.place->kind == PLACE_SIDE; /* to the right side */
    enum verb_task task = verb_row(p->s->verb)->task;
    if ((each && task == VERB_SCREEN) || (side && task == VERB_PASS && !p->c->speech)) {
        p->c->at = p->after_verb;
        return 0;
    }
    p->s->object = who;
    int fits = player_fits(p, &who, slot->letter);
    return fits > 0 && slot->letter == 'U' ? second_screener(p) : fits;
}

/* clears the block to the other side: the block there. */
static const struct place *same_spot_there(struct predicate *p, const struct place *place)
{
    const struct place *from = p->s->begins;
    if (!from || from->kind != PLACE_SPOT || !spot_takes_side(from->spot) ||
        place->kind != PLACE_SIDE) {
        return place;
    }
    struct place there = *from;
    there.side = place->side;
    there.span = place->span;
    struct diag *diag = diag_add(
        p->c->diags, DIAG_TEXT_PLACE_TAKEN, place->span, "`%.*s`: the %.*s there was taken",
        STR_ARG(cursor_text(p->c, place->span)), STR_ARG(cursor_text(p->c, from->span)));
    diag_help(p->c->diags, diag, "to go elsewhere, name the spot: `%.*s to left corner`",
              STR_ARG(predicate_begun(p)));
    return place_keep(p->c->arena, there);
}

int slot_place(struct predicate *p, const struct place *place)
{
    if (p->s->place) {
        return said_twice(p, place->span, "the place");
    }
    if (p->s->verb == VERB_DRIBBLES && place->kind == PLACE_SPOT && place->spot == SPOT_RIM &&
        str_starts(str_of(p->phrase.words), "takes")) { /* takes it strong to the cup */
        p->s->verb = VERB_DRIVES;
    }
    if (p->across && place->kind == PLACE_SPOT && place->side == SIDE_NONE &&
        spot_takes_side(place->spot) &&
        !spot_row(place->spot)->optional) { /* goes across to the block: to the other one */
        place = place_sided(p->c, place, SIDE_OPPOSITE);
    }
    p->s->place = same_spot_there(p, place);
    return 1;
}

/* comes at 4, runs around behind 3: to where that player is, an arm's length away. */
static const struct place *beside_read(struct predicate *p)
{
    static const char *const leads[] = {
        "behind", "around behind", "around", "around in back of", "in behind", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    enum verb verb = p->s->verb;
    const struct token *from = c->at;
    if (!c->speech || c->drill || (verb != VERB_GOES && verb != VERB_CUTS && verb != VERB_COMES)) {
        return NULL;
    }
    bool behind = take_among(&trial, leads);
    if (verb == VERB_CUTS && !behind) { /* cuts to 2: to his spot, or to the ball? */
        return NULL;
    }
    bool found = person_read(&trial, &who) && who_is_one(&who) && trial.refusals == mark.refusals &&
                 !same_who(&who, &p->s->subject.at[0]);
    const struct token *end = trial.at;
    cursor_back(c, mark);
    struct cursor after = *c;
    after.at = end;
    if (!found || !part_ends(&after)) {
        return NULL;
    }
    if (!behind && str_starts(str_of(p->phrase.words), "goes") && p->s->subject.count == 1 &&
        above_holds(c, &p->s->subject.at[0])) { /* of the ball it is said as well */
        struct str to = cursor_text(c, who.span), by = subject_words(c, &p->s->subject);
        diag_help(c->diags,
                  REFUSE(c, TEXT_TWO_MEANINGS, span_join(p->s->verb_span, who.span),
                         "goes with the ball, or with a pass?"),
                  "write `%.*s passes to %.*s`, or `%.*s dribbles at %.*s`", STR_ARG(by),
                  STR_ARG(to), STR_ARG(by), STR_ARG(to));
        return NULL;
    }
    c->at = end;
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, who.span, "to %.*s: beside that player was taken",
                 STR_ARG(cursor_text(c, who.span)));
    diag_help(c->diags, diag, "to go elsewhere, name the place: `%.*s to left wing`",
              STR_ARG(predicate_begun(p)));
    return place_new(c, (struct place){.kind = PLACE_BESIDE, .who = who}, from);
}

/* A place behind a preposition, or what is wrong there. */
static int place_after(struct predicate *p, struct str preposition)
{
    size_t before = p->c->refusals;
    const struct place *place = beside_read(p);
    place = place || p->c->refusals > before ? place : place_read(p->c, 0);
    if (place) {
        return slot_place(p, place);
    }
    if (p->c->refusals == before) {
        place_refuse(p->c, predicate_begun_to(p, preposition));
    }
    return -1;
}

static int read_either(struct predicate *p, struct str preposition)
{
    size_t before = p->c->refusals;
    const struct place *place;
    struct who who;
    struct span span = cursor_span(p->c);
    if (!place_or_who_read(p->c, 0, &place, &who)) {
        if (p->c->refusals == before) {
            place_refuse(p->c, predicate_begun_to(p, preposition));
        }
        return -1;
    }
    if (p->s->place || p->s->object.kind != WHO_NONE) {
        return said_twice(p, span, "the place");
    }
    p->s->place = place;
    p->s->object = who;
    return 1;
}

int slot_measure(struct predicate *p, char letter)
{
    struct measure *out = letter == 'T' ? &p->s->duration : &p->s->length;
    struct span span = cursor_span(p->c);
    struct measure found;
    bool beats = letter == 'T' && p->c->speech; /* for a count, a good second */
    if (beats ? take_seconds(p->c, &found) : take_measure(p->c, letter == 'T', &found)) {
        if (out->unit != UNIT_NONE) {
            return said_twice(p, span, letter == 'T' ? "the time" : "the length");
        }
        *out = found;
        return 1;
    }
    struct cursor_mark mark = cursor_mark(p->c);
    struct who who;
    bool somebody = person_read(p->c, &who);
    cursor_back(p->c, mark);
    if (somebody) { /* 3 waits for 5 to screen */
        struct str begun =
            cursor_text(p->c, span_join(p->s->subject.at[0].span,
                                        p->s->subject.at[p->s->subject.count - 1].span));
        diag_help(p->c->diags,
                  REFUSE(p->c, TEXT_DURATION_MISSING, span, "a wait for somebody is no time"),
                  "say what comes after it: `after %.*s passes, %.*s cuts to the rim`",
                  STR_ARG(who.kind == WHO_BALL ? STR("4") : cursor_text(p->c, span)),
                  STR_ARG(begun));
        return -1;
    }
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_DURATION_MISSING, span, "`%.*s` for how long?",
                     STR_ARG(predicate_begun(p))),
              "write seconds: `%.*s for 1 s`; who only does not move `stays`",
              STR_ARG(predicate_begun(p)));
    return -1;
}

int slot_way(struct predicate *p)
{
    struct span span = cursor_span(p->c);
    static const char *const middles[] = {
        "middle",         "down middle",          "up middle", "right down middle",
        "through middle", "straight down middle", NULL};
    bool baseline = take_words(p->c, "baseline");
    if (!baseline && !take_among(p->c, middles)) {
        return 0;
    }
    if (p->s->drive != DRIVE_FREE) {
        return said_twice(p, span, "the way");
    }
    p->s->drive = baseline ? DRIVE_BASELINE : DRIVE_MIDDLE;
    return 1;
}

/* cuts over the top to the elbow: off the screen that waits for him, or straight there. */
static bool over_top(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct sentence *s = p->s;
    struct who screener, second;
    bool several, cuts = s->verb == VERB_CUTS || s->verb == VERB_GOES || s->verb == VERB_FLASHES;
    if (!cuts || s->subject.count != 1 || !take_words(&trial, "over top") ||
        !(s->place ? part_ends(&trial) : leg_follows(&trial))) {
        return false;
    }
    const struct token *from = c->at;
    bool waits = above_waiting_screen(c, &s->subject.at[0], &screener, &second, &several);
    c->at = trial.at;
    if (waits && !several && screener.kind == WHO_PLAYER) {
        p->s->verb = VERB_COMES;
        p->s->object = screener;
    } else {
        note_way(p, cursor_taken(c, from));
    }
    return true;
}

/* around 5, over 5, under 5, past 5, past left wing. */
int slot_path(struct predicate *p)
{
    static const struct entry words[] = {{"around", PATH_AROUND}, {"round", PATH_AROUND},
                                         {"over", PATH_OVER},     {"under", PATH_UNDER},
                                         {"past", PATH_PAST},     {NULL, 0}};
    struct cursor *c = p->c;
    struct cursor_mark mark = cursor_mark(c);
    static const char *const behinds[] = {"around behind", "in behind", "around in back of", NULL};
    if (word_among(c, behinds) && !p->s->place) {
        p->s->place = beside_read(p);
        if (p->s->place) {
            return 1;
        }
    }
    if (over_top(p)) {
        return 1;
    }
    int path = take_entry(c, words);
    if (path < 0) {
        return 0;
    }
    struct who who = {.kind = WHO_NONE};
    const struct place *place = NULL;
    bool found = path == PATH_PAST ? place_or_who_read(c, 0, &place, &who) : who_read(c, &who);
    bool rim = who.kind == WHO_SPOT && who.place->spot == SPOT_RIM; /* nobody stands there */
    if (found && path == PATH_UNDER && rim) {
        cursor_back(c, mark);
        return 0;
    }
    if (!found) {
        if (c->refusals != mark.refusals) {
            return -1;
        }
        bool particle = path == PATH_OVER; /* goes over to left wing */
        if (particle && word_among(c, place_words)) {
            return 1;
        }
        return points_back(c) ? -1 : player_missing(p, str_of(entry_words(words, path)));
    }
    if (p->path_done) {
        return said_twice(p, cursor_taken(c, mark.at), "the way round");
    }
    p->path_done = true;
    if (path == PATH_AROUND && p->s->verb == VERB_CUTS &&
        above_screened(c, &p->s->subject.at[0], &who)) {
        p->s->verb = VERB_COMES;
        p->s->object = who;
        return 1;
    }
    p->s->path = (enum path_word)path;
    p->s->path_who = place ? NULL : who_keep(c, who);
    p->s->path_place = place;
    return 1;
}

/* off 4's screen, who has set none, where 5's waits: which one is meant? */
static bool another_waits(struct predicate *p, const struct who *by)
{
    struct cursor *c = p->c;
    struct who waits, second;
    bool several, one = above_waiting_screen(c, &p->s->subject.at[0], &waits, &second, &several);
    if (!one || several || waits.kind != WHO_PLAYER || by->kind != WHO_PLAYER) {
        return false;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_OBJECT_UNFIT, by->span,
                     "%d has set no screen for this player: the one that waits is %d's", by->number,
                     waits.number),
              "write whose it is: `%.*s off %d`; or have it set: `%d screens for 1`",
              STR_ARG(predicate_begun(p)), waits.number, by->number);
    return true;
}

/* off 5's back screen, who has set none: it is a sentence of its own, in front. False: refused. */
static bool screen_in_front(struct predicate *p, const struct who *by, const struct token *from)
{
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    struct cursor noun = *c;
    struct phrase phrase;
    struct who owner;
    noun.watch = NULL;
    noun.at = from;
    if (s->subject.count != 1 || s->ahead || !owner_read(&noun, &owner) ||
        above_may_have_screened(c, &s->subject.at[0], by) || same_who(by, &s->subject.at[0])) {
        return true;
    }
    if (another_waits(p, by)) {
        return false;
    }
    bool read = phrase_noun_read(&noun, &phrase) && phrase.verb == VERB_SCREENS;
    enum screen_kind kind = read ? phrase.screen : SCREEN_PLAIN;
    bool ball = above_holds(c, &s->subject.at[0]);
    struct sentence *ahead = arena_new(c->arena, struct sentence);
    *ahead = (struct sentence){.span = s->verb_span,
                               .verb = VERB_SCREENS,
                               .screen = kind == SCREEN_PLAIN && ball ? SCREEN_BALL : kind,
                               .verb_span = s->verb_span,
                               .object = s->subject.at[0]};
    VEC_PUSH(c->arena, &ahead->subject, *by);
    s->ahead = ahead;
    return true;
}

/* off the screen, off 5's screen. */
int slot_screen(struct predicate *p)
{
    struct who who, second;
    const struct token *from = p->c->at;
    int taken = above_screen_read(p->c, &p->s->subject.at[0], &who, &second);
    if (taken <= 0) {
        return taken;
    }
    if (p->s->object.kind != WHO_NONE) {
        return said_twice(p, who.span, "the screener");
    }
    p->s->object = who;
    p->s->object2 = second.kind == WHO_NONE ? NULL : who_keep(p->c, second);
    return screen_in_front(p, &who, from) ? player_fits(p, &who, 'U') : -1;
}

/* comes off tight to the elbow, comes off going right: the screen that waits is not named again. */
static bool unnamed_screen(struct predicate *p, const struct slot *slot)
{
    struct cursor *c = p->c;
    struct who by, second;
    bool several;
    if (!c->speech || (slot->letter != 'U' && p->s->verb != VERB_REJECTS) ||
        !above_waiting_screen(c, &p->s->subject.at[0], &by, &second, &several)) {
        return false;
    }
    if (take_words(c, "tight") || take_words(c, "tightly")) {
        p->s->width = WIDTH_TIGHT;
        return true;
    }
    return word_is(c, 0, "to") || word_is(c, 0, "going") || word_is(c, 0, "left") ||
           word_is(c, 0, "right") || word_is(c, 0, "and") || word_is(c, 0, "hard") ||
           mark_is(c, ',') || stop_is(c) ||
           word_among(c, particle_words); /* comes off up the lane to the wing */
}

/* A slot's content behind its preposition (already taken). */
int slot_content(struct predicate *p, const struct slot *slot)
{
    struct cursor *c = p->c;
    struct who who;
    int screen = slot->letter == 'U' || p->s->verb == VERB_REJECTS ? slot_screen(p) : 0;
    if (screen != 0) {
        return screen;
    }
    if (points_back(c)) {
        return -1;
    }
    switch (slot->letter) {
    case 'W':
    case 'U':
    case 'D':
        if (unnamed_screen(p, slot)) {
            return 1;
        }
        return who_read(c, &who) ? slot_player(p, slot, who) : player_missing(p, slot->preposition);
    case 'P':
        if (p->s->verb == VERB_DRIVES && word_is(c, 0, "middle")) {
            return slot_way(p); /* drives to the middle is the way; to the baseline, a place */
        }
        return place_after(p, slot->preposition);
    case 'E':
        return read_either(p, slot->preposition);
    default:
        return slot_measure(p, slot->letter);
    }
}

/* on x2: the defender of a screen; on anything else leads to a place. */
int slot_defender(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    if (!take_words(&trial, "on") || !person_read(&trial, &who) || !who_defends(&who)) {
        cursor_back(c, mark);
        return 0;
    }
    c->at = trial.at;
    c->refusals = trial.refusals;
    if (p->s->on) {
        return said_twice(p, who.span, "the defender");
    }
    p->s->on = who_keep(c, who);
    return 1;
}
