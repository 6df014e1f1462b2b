/* SPDX-License-Identifier: MIT */
/* slots: what may follow a verb, read by its row in verbs.def: players, places, a time, a way
 * round, each at most once, in any order, known by its preposition. */
#include "language/words/grammar.h"

#include <string.h>

static const struct slot *slot_of(const struct slot *slots, size_t count, const char *letters)
{
    for (size_t i = 0; i < count; i++) {
        if (strchr(letters, slots[i].letter)) {
            return &slots[i];
        }
    }
    return NULL;
}

bool verb_takes_place(enum verb verb)
{
    struct slot slots[SLOTS_MOST];
    return slot_of(slots, verb_slots(verb, slots), "P") != NULL;
}

static bool holds_place(const struct predicate *p)
{
    struct cursor trial = *p->c;
    while (take_among(&trial, particle_words)) {
    }
    take_among(&trial, place_words);
    return !clause_is(p->c) && spot_here(&trial);
}

/* dribbles, drives, cuts and back cuts become another verb by what follows them. */
static bool change_verb(struct predicate *p)
{
    const struct token *next = cursor_next(p->c);
    if (p->s->verb == VERB_STAYS && next && next->kind == TOKEN_MEASURE &&
        next->unit == UNIT_SECONDS && !clause_is(p->c) &&
        who_side(&p->s->subject.at[0]) == FOR_ATTACKERS) { /* waits two seconds */
        p->s->verb = VERB_HOLDS;
        return true;
    }
    if (p->s->verb == VERB_HOLDS && holds_place(p)) { /* holds the corner */
        p->s->verb = VERB_STAYS;
        return true;
    }
    if (p->s->verb == VERB_GOES && p->c->speech && !p->s->place && word_is(p->c, 0, "middle") &&
        above_holds(p->c, &p->s->subject.at[0])) {
        p->s->verb = VERB_DRIVES; /* goes middle */
        return true;
    }
    if (p->s->verb == VERB_REPLACES && p->c->speech && holds_place(p)) {
        p->s->verb = VERB_FILLS; /* replaces up top, fills for 2 at the right slot */
        p->s->object = (struct who){.kind = WHO_NONE};
        return true;
    }
    static const char *const words[] = {"off", "at", "for", NULL};
    struct sentence *s = p->s;
    for (const char *const *word = words; *word; word++) {
        enum verb other = verb_sibling(s->verb, *word);
        bool fits = !(other == VERB_DRIBBLES_AT && s->place) &&
                    !(other == VERB_HOLDS && who_side(&s->subject.at[0]) == FOR_DEFENDERS);
        if (other != VERB_COUNT && word_is(p->c, 0, *word) && !clause_is(p->c) && fits) {
            s->verb = other;
            return true;
        }
    }
    return false;
}

/* dribbles toward 2 is dribbles at 2. */
static int toward_player(struct predicate *p)
{
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct who who;
    bool carries = p->s->verb == VERB_DRIBBLES || p->s->verb == VERB_DRIVES;
    if (!carries || p->s->place ||
        !(take_words(&trial, "toward") ||
          (p->s->verb == VERB_DRIVES &&
           (take_words(&trial, "right at") || take_words(&trial, "straight at") ||
            take_words(&trial, "at"))))) {
        return 0;
    }
    if (!person_read(&trial, &who)) {
        cursor_back(&trial, mark);
        return 0;
    }
    p->part_way = p->phrase.counted && word_is(p->c, 0, "toward") && who_is_one(&who);
    p->c->at = trial.at;
    p->c->refusals = trial.refusals;
    if (p->part_way) { /* takes one dribble toward 2: not up to him */
        struct place where = {.kind = PLACE_WHERE, .who = who, .span = who.span};
        p->s->place = place_keep(p->c->arena, where);
        return 1;
    }
    p->s->verb = VERB_DRIBBLES_AT;
    return slot_player(p, &(struct slot){.letter = 'W', .needed = true}, who);
}

/* a pass into 5, on to 3; throws 5 a lob, passes 2 the ball. */
static bool into_player(struct predicate *p, const struct slot *slot)
{
    static const char *const leads[] = {"into", "on to", "inside to", NULL};
    static const char *const balls[] = {"ball", "rock", NULL};
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct phrase phrase;
    struct who who;
    bool led = take_among(&trial, leads);
    bool player = person_read(&trial, &who) && who.kind == WHO_PLAYER;
    bool fits = player && led;
    if (player && !led && !phrase_has(&p->phrase, 'O') && trial.at < p->c->end) {
        bool article = trial.at->filler;
        bool noun = phrase_noun_read(&trial, &phrase) && phrase.verb == VERB_PASSES;
        fits = article && (noun || take_among(&trial, balls));
        if (fits && noun && p->s->pass == PASS_PLAIN) {
            p->s->pass = phrase.pass;
        }
    }
    if (!fits) {
        cursor_back(&trial, mark);
        return false;
    }
    p->c->at = trial.at;
    p->c->refusals = trial.refusals;
    return slot_player(p, slot, who) > 0;
}

/* By the slot's own preposition. */
static int exact_slot(struct predicate *p, const struct slot *slots, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        char preposition[16];
        if (slots[i].letter == 'O') {
            int taken = slot_defender(p);
            if (taken != 0) {
                return taken;
            }
            continue;
        }
        if (verb_row(p->s->verb)->task == VERB_PASS && slots[i].letter == 'W' &&
            p->s->object.kind == WHO_NONE && into_player(p, &slots[i])) {
            return 1;
        }
        if (slots[i].preposition.size == 0 || slots[i].preposition.size >= sizeof preposition) {
            continue;
        }
        if (p->s->verb == VERB_STAYS && who_side(&p->s->subject.at[0]) == FOR_DEFENDERS) {
            continue; /* a defender stays by rule, not by place */
        }
        memcpy(preposition, slots[i].preposition.at, slots[i].preposition.size);
        preposition[slots[i].preposition.size] = 0;
        static const char *const screened[] = {"around", "round", "of", NULL};
        if (take_words(p->c, preposition) ||
            (slots[i].letter == 'U' && take_among(p->c, screened))) {
            if (str_is(slots[i].preposition, "off")) {
                take_words(p->c, "of");
            }
            return slot_content(p, &slots[i]);
        }
    }
    return 0;
}

/* A set-up is toward a place, and said so; some phrases say it themselves. */
static bool needs_toward(const struct predicate *p, const struct slot *place)
{
    return str_is(place->preposition, "toward") && !phrase_has(&p->phrase, 'O');
}

/* Without a preposition: a way, a place, a player where the verb takes one so. */
static int bare_slot(struct predicate *p, const struct slot *slots, size_t count)
{
    struct cursor *c = p->c;
    size_t before = c->refusals;
    const struct slot *player = slot_of(slots, count, "WUD");
    const struct slot *place = slot_of(slots, count, "PE");
    place = place && needs_toward(p, place) ? NULL : place;
    bool defends = who_side(&p->s->subject.at[0]) == FOR_DEFENDERS;
    place = p->s->verb == VERB_STAYS && defends ? NULL : place;
    const struct slot *other = slot_of(slots, count, "LT");
    bool guard = verb_row(p->s->verb)->task == VERB_GUARD;
    if (attack_extra(p)) {
        return 1;
    }
    int taken = slot_of(slots, count, "Y") ? slot_way(p) : guard ? guard_extra(p) : clears_what(p);
    if (taken != 0) {
        return taken;
    }
    bool bare = player && (player->preposition.size == 0 || phrase_has(&p->phrase, 'O') || guard);
    struct who who;
    struct cursor led = *c;
    if (guard && bare && p->s->object.kind == WHO_NONE && take_among(&led, place_words) &&
        person_read(&led, &who)) {
        take_among(c, place_words);
        person_read(c, &who);
        return slot_player(p, player, who);
    }
    bool uses = verb_row(p->s->verb)->task == VERB_USE && p->s->object.kind == WHO_NONE;
    int screen = uses ? slot_screen(p) : 0; /* rejects the screen, curls the screen */
    if (screen != 0) {
        return screen;
    }
    if (bare && p->s->object.kind == WHO_NONE && points_back(c)) {
        return -1;
    }
    if (c->speech && p->s->verb == VERB_REPLACES && above_noun_doer(c, &who)) {
        return slot_player(p, player, who); /* fills in behind the drive: for whoever drove */
    }
    if (bare && (p->s->object.kind == WHO_NONE || !place) && !cursor_done(c)) {
        bool spot = p->s->object.kind == WHO_NONE && !uses; /* curls nail: where it ends */
        bool found = spot ? who_read(c, &who) : person_read(c, &who);
        if (found) {
            return slot_player(p, player, who);
        }
    }
    int side = place ? way_off_screen(p) : 0;
    if (side != 0) {
        return side;
    }
    struct cursor_mark mark = cursor_mark(c);
    const struct place *found = place ? place_read(c, 0) : NULL;
    if (c->refusals != before && !found) {
        return -1;
    }
    if (found) {
        return slot_place(p, found);
    }
    cursor_back(c, mark);
    if (place && place->letter == 'E' && !p->s->place && person_read(c, &who)) {
        return p->s->object.kind == WHO_NONE ? (p->s->object = who, 1)
                                             : said_twice(p, who.span, "the player");
    }
    const struct token *next = cursor_next(c);
    bool time = next && next->kind == TOKEN_MEASURE && next->unit == UNIT_SECONDS;
    if (other && next && next->kind == TOKEN_MEASURE && time == (other->letter == 'T')) {
        return clause_is(c) ? 0 : slot_measure(p, other->letter);
    }
    return 0;
}

/* screens 3, picks 1, hammers 3, pins 2: said of a team-mate, or of the one who guards him, it is
 * the same screen. */
static bool screens_whom(const struct predicate *p, const struct who *who)
{
    return p->c->speech && p->s->verb == VERB_SCREENS && who_is_one(who);
}

/* hammers 3 into the corner: there the screen is set, or there 3 goes? */
static bool where_to_follows(struct predicate *p, const struct who *who)
{
    static const char *const leads[] = {"to", "into", "toward", NULL};
    struct cursor trial = *p->c;
    const struct token *from = p->c->at;
    if (!spot_behind(&trial, leads)) {
        return false;
    }
    struct span span = cursor_taken(&trial, from);
    struct str begun = predicate_begun_to(p, STR("for")), whom = cursor_text(p->c, who->span);
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_TWO_MEANINGS, span,
                     "`%.*s`: is it set there, or does %.*s go there?",
                     STR_ARG(cursor_text(p->c, span)), STR_ARG(whom)),
              "write `%.*s %.*s at …`, or what %.*s does as a sentence of its own", STR_ARG(begun),
              STR_ARG(whom), STR_ARG(whom));
    return true;
}

/* 5 screens 3: what is missing in between could mean two things. */
static int missing_preposition(struct predicate *p, const struct slot *slots, size_t count)
{
    struct cursor *c = p->c;
    const struct slot *player = slot_of(slots, count, "WUD");
    const struct slot *set_up = slot_of(slots, count, "E");
    struct cursor_mark mark = cursor_mark(c);
    const struct place *place = NULL;
    struct who who;
    if (set_up && needs_toward(p, set_up) && !p->s->place && p->s->object.kind == WHO_NONE &&
        place_or_who_read(c, 0, &place, &who)) {
        cursor_back(c, mark);
        who.span = place ? place->span : who.span;
        return preposition_missing(p, &who, set_up->preposition);
    }
    if (!player || p->s->object.kind != WHO_NONE || player->preposition.size == 0) {
        return 0;
    }
    bool defender = his_defender_read(c, &who); /* screens his man */
    if (!defender && points_back(c)) {
        return -1;
    }
    if (!defender && !who_read(c, &who)) {
        return 0;
    }
    if (defender && c->refusals != mark.refusals) {
        return -1;
    }
    bool noun = c->at > mark.at && c->at[-1].kind == TOKEN_WORD && who.kind == WHO_PLAYER;
    if ((noun && c->speech && p->s->verb == VERB_SCREENS) || /* screens the screener */
        screens_whom(p, &who)) {
        if (!noun && where_to_follows(p, &who)) {
            return -1;
        }
        return slot_player(p, player, who);
    }
    cursor_back(c, mark);
    if (who_defends(&who) && p->s->verb == VERB_SCREENS && !p->s->on) {
        person_read(c, &who);
        p->s->on = who_keep(c, who);
        p->on_bare = true;
        return 1;
    }
    if (who_defends(&who)) {
        return player_fits(p, &who, player->letter) < 0 ? -1 : 0;
    }
    if (who.kind == WHO_BALL && p->s->verb == VERB_SCREENS) { /* screens the ball */
        person_read(c, &p->s->object);
        p->s->screen = SCREEN_BALL;
        return 1;
    }
    return preposition_missing(p, &who, player->preposition);
}

/* As it is said of one for whom a screen waits: goes over it is comes off it, drifts behind it is
 * fades off it. COUNT: no such verb. */
static enum verb off_screen(const struct predicate *p)
{
    enum verb verb = p->s->verb, other = verb_sibling(verb, "off");
    struct who by, second;
    bool several, away = word_is(p->c, 0, "behind") || verb == VERB_DRIFTS;
    if ((other != VERB_COUNT && !away) || verb_row(verb)->task != VERB_MOVE ||
        !above_waiting_screen(p->c, &p->s->subject.at[0], &by, &second, &several)) {
        return other;
    }
    return away ? VERB_FADES : VERB_COMES;
}

/* over the top of the screen, around the pick, tight off it: off it. */
static int over_screen(struct predicate *p)
{
    static const char *const ways[] = {"over top of",
                                       "off top of",
                                       "around top of",
                                       "over",
                                       "around",
                                       "tight off",
                                       "hard off",
                                       "right off",
                                       "close off",
                                       "low off",
                                       "high off",
                                       "tight around",
                                       "behind",
                                       "shoulder to shoulder off",
                                       NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    if (!c->speech || p->s->object.kind != WHO_NONE || !take_among(&trial, ways)) {
        return 0;
    }
    enum verb other = off_screen(p);
    struct cursor named = trial;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool his = other != VERB_COUNT && !word_is(c, 0, "behind") && person_read(&named, &who) &&
               above_screened(c, &p->s->subject.at[0], &who);
    cursor_back(c, mark);
    if (his) { /* goes around 5, who has screened for him */
        p->s->verb = other;
        c->at = named.at;
        return slot_player(p, &(struct slot){.letter = 'U', .needed = true}, who);
    }
    if (!above_screen_noun_is(&trial)) {
        return 0;
    }
    if (other == VERB_COUNT && verb_row(p->s->verb)->task != VERB_USE) {
        return 0;
    }
    bool tight = word_is(c, 0, "tight") || word_is(c, 0, "close");
    p->s->verb = other == VERB_COUNT ? p->s->verb : other;
    p->s->width = tight ? WIDTH_TIGHT : p->s->width;
    c->at = trial.at;
    return slot_screen(p);
}

/* waits two beats, stays there for a count: so many seconds. */
static bool waits_beats(struct predicate *p)
{
    struct cursor trial = *p->c;
    take_words(&trial, "for");
    struct cursor beats = trial;
    if (!p->c->speech || p->s->verb != VERB_STAYS || p->s->place ||
        who_side(&p->s->subject.at[0]) != FOR_ATTACKERS || !skip_seconds(&beats)) {
        return false;
    }
    p->c->at = trial.at;
    p->s->verb = VERB_HOLDS;
    return take_seconds(p->c, &p->s->duration);
}

/* What no slot holds, and is looked for before them: from where, which way, how it flies. As
 * along_read. */
static int before_slots(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {begins_read, over_screen, along_read};
    for (size_t i = 0; i < sizeof readers / sizeof *readers; i++) {
        int taken = readers[i](p);
        if (taken != 0) {
            return taken;
        }
    }
    return how_it_flies(p) || for_shot(p) || waits_beats(p);
}

int slot_read(struct predicate *p)
{
    if (p->s->verb == VERB_DRIBBLES_AT && p->s->object.kind != WHO_NONE && attack_extra(p)) {
        return 1; /* dribbles up to 1 at the top: where the other one is */
    }
    struct slot slots[SLOTS_MOST];
    if (side_off(p)) {
        return 1;
    }
    drop_stress(p->c);
    bool clause = clause_is(p->c); /* holds as long as nothing is taken */
    int before = clause ? 0 : before_slots(p);
    if (before != 0) {
        return before;
    }
    while (change_verb(p)) {
    }
    size_t count = verb_slots(p->s->verb, slots);
    if (clause) {
        return 0;
    }
    int taken = toward_player(p);
    if (taken == 0) {
        taken = exact_slot(p, slots, count);
    }
    if (taken == 0 && slot_of(slots, count, "R")) {
        taken = slot_path(p);
    }
    const struct slot *place = slot_of(slots, count, "PE");
    bool stays = p->s->verb == VERB_STAYS && who_side(&p->s->subject.at[0]) == FOR_DEFENDERS;
    place = stays ? NULL : place;
    p->part_way = p->part_way || (place && p->phrase.counted && word_is(p->c, 0, "toward"));
    if (taken == 0 && place && !str_is(place->preposition, "toward") &&
        take_among(p->c, place_words)) {
        taken = slot_content(p, place);
    }
    if (taken == 0) {
        taken = bare_slot(p, slots, count);
    }
    if (taken == 0 && drop_particle(p, place != NULL)) {
        taken = 1;
    }
    return taken != 0 ? taken : missing_preposition(p, slots, count);
}

/* What was taken before an `off` made another verb of it must still have its slot; and one place is
 * enough. */
static bool slots_agree(struct predicate *p, const struct slot *slots, size_t count)
{
    struct sentence *s = p->s;
    bool turns = s->drive != DRIVE_FREE && s->drive != DRIVE_BASELINE;
    if (turns && s->verb == VERB_DRIVES_OFF && p->c->speech && !s->place) {
        s->place = place_off_screen(p->c, s->drive, s->verb_span); /* drives middle off 5 */
        s->drive = DRIVE_FREE;
    }
    bool way = s->drive != DRIVE_FREE, path = s->path != PATH_NONE;
    if ((way && !slot_of(slots, count, "Y")) ||
        (path && !slot_of(slots, count, s->path == PATH_ALONG ? "A" : "R"))) {
        diag_help(p->c->diags,
                  REFUSE(p->c, TEXT_TWICE, s->verb_span,
                         "`%.*s` takes either a screener or a way round, not both",
                         STR_ARG(cursor_text(p->c, s->verb_span))),
                  "keep one of the two, or write two sentences");
        return false;
    }
    enum verb_task task = verb_row(s->verb)->task;
    bool half = s->place && s->place->kind == PLACE_SIDE;
    bool relative = half && s->place->side != SIDE_LEFT && s->place->side != SIDE_RIGHT;
    if (half && (task == VERB_SCREEN || (task == VERB_USE && relative))) {
        struct str side = cursor_text(p->c, s->place->span);
        diag_help(
            p->c->diags,
            REFUSE(p->c, TEXT_PLACE_HALF, s->place->span, "where on the %.*s?", STR_ARG(side)),
            task == VERB_USE ? "name the spot: `ball side block`, `opposite wing`"
                             : "name the spot, `at right wing`, or leave the side out");
        return false;
    }
    bool either = slot_of(slots, count, "E") && s->place && s->object.kind != WHO_NONE;
    if (either || (way && s->place && s->place->kind == PLACE_SIDE)) {
        return said_twice(p, s->place->span, either ? "where" : "the way") > 0;
    }
    return true;
}

bool slots_filled(struct predicate *p)
{
    struct slot slots[SLOTS_MOST];
    if (leaves_for_nowhere(p) || screen_of_nobody(p)) {
        return false;
    }
    place_of_phrase(p);
    size_t count = verb_slots(p->s->verb, slots);
    if (!slots_agree(p, slots, count) || away_from_nobody(p)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        const struct slot *slot = &slots[i];
        bool player = slot->letter == 'W' || slot->letter == 'U' || slot->letter == 'D';
        if (!slot->needed) {
            continue;
        }
        if (player && p->s->object.kind == WHO_NONE && !player_above(p, slot)) {
            return false;
        }
        bool either = slot->letter == 'E' && p->s->object.kind != WHO_NONE;
        if ((slot->letter == 'P' || slot->letter == 'E') && !p->s->place && !either) {
            return place_needed(p, slot);
        }
        if (slot->letter == 'T' && p->s->until && p->s->verb == VERB_HOLDS &&
            p->s->duration.unit == UNIT_NONE) { /* 2 holds until 3 is open: its end is said */
            p->s->verb = VERB_STAYS;
            return true;
        }
        bool many = p->s->subject.count > 1 || p->s->subject.at[0].kind == WHO_EVERYONE_ELSE;
        if (slot->letter == 'T' && p->s->duration.unit == UNIT_NONE && many && p->c->speech) {
            p->s->verb = VERB_STAYS; /* both bigs hold: of several no time is meant */
            return true;
        }
        if (slot->letter == 'T' && p->s->duration.unit == UNIT_NONE) {
            return slot_measure(p, 'T') > 0;
        }
    }
    return true;
}

void event_object_read(struct cursor *c, enum verb *verb, const struct phrase *phrase,
                       struct who *out)
{
    static const char *const siblings[] = {"off", "at", NULL};
    struct slot slots[SLOTS_MOST];
    for (const char *const *word = siblings; *word; word++) {
        enum verb other = verb_sibling(*verb, *word);
        struct cursor trial = *c;
        if (other != VERB_COUNT && take_words(&trial, *word) &&
            (person_read(&trial, out) || verb_row(other)->task == VERB_USE)) {
            *verb = other;
        }
        *out = (struct who){.kind = WHO_NONE};
    }
    size_t count = verb_slots(*verb, slots);
    const struct slot *player = slot_of(slots, count, "WUDE");
    struct cursor trial = *c;
    bool guard = player && verb_row(*verb)->task == VERB_GUARD;
    if (!player || clause_is(c)) {
        return;
    }
    bool said = player->preposition.size > 0 && take_str(&trial, player->preposition);
    bool bare = player->preposition.size == 0 || guard || phrase_has(phrase, 'O');
    if (guard && !said) { /* hedges on 3 */
        take_among(&trial, place_words);
    }
    if ((said ? who_read(&trial, out) : bare && person_read(&trial, out))) {
        c->at = trial.at;
        c->refusals = trial.refusals;
        return;
    }
    *out = (struct who){.kind = WHO_NONE};
    if (said && player->letter == 'U') { /* after 3 comes off: whosever screen it is */
        take_words(&trial, "screen");
        c->at = trial.at;
    }
}
