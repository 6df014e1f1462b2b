/* SPDX-License-Identifier: MIT */
/* slots: what may follow a verb, read by its row in verbs.def: players, places, a time, a way
 * round, each at most once, in any order, known by its preposition. */
#include "language/words/grammar.h"

#include <string.h>

/* `and 5` behind a screener, unless it begins a new sentence. */
static int second_screener(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    if (!take_words(&trial, "and") || subject_verb_is(&trial)) {
        return 1;
    }
    struct phrase phrase;
    struct cursor verb = trial;
    struct who second;
    if (phrase_read(&verb, FOR_ANYONE, &phrase) || !who_read(&trial, &second)) {
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

static int read_player(struct predicate *p, const struct slot *slot, struct who who)
{
    if (p->s->object.kind != WHO_NONE) {
        return said_twice(p, who.span, "the player");
    }
    p->s->object = who;
    int fits = player_fits(p, &who, slot->letter);
    return fits > 0 && slot->letter == 'U' ? second_screener(p) : fits;
}

static int read_place(struct predicate *p, const struct place *place)
{
    if (p->s->place) {
        return said_twice(p, place->span, "the place");
    }
    if (p->s->verb == VERB_DRIBBLES && place->kind == PLACE_SPOT && place->spot == SPOT_RIM &&
        str_starts(str_of(p->phrase.words), "takes")) { /* takes it strong to the cup */
        p->s->verb = VERB_DRIVES;
    }
    p->s->place = place;
    return 1;
}

/* A place behind a preposition, or what is wrong there. */
static int place_after(struct predicate *p, struct str preposition)
{
    size_t before = p->c->refusals;
    const struct place *place = place_read(p->c, 0);
    if (place) {
        return read_place(p, place);
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

static int read_measure(struct predicate *p, char letter)
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
                  STR_ARG(cursor_text(p->c, span)), STR_ARG(begun));
        return -1;
    }
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_DURATION_MISSING, span, "`%.*s` for how long?",
                     STR_ARG(predicate_begun(p))),
              "write seconds: `%.*s for 1 s`; who only does not move `stays`",
              STR_ARG(predicate_begun(p)));
    return -1;
}

static int read_way(struct predicate *p)
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
    if (baseline) {
        p->s->drive = DRIVE_BASELINE;
    } else {
        p->s->drive = DRIVE_MIDDLE;
    }
    return 1;
}

/* around 5, over 5, under 5, past 5, past left wing. */
static int read_path(struct predicate *p)
{
    static const struct entry words[] = {{"around", PATH_AROUND}, {"round", PATH_AROUND},
                                         {"over", PATH_OVER},     {"under", PATH_UNDER},
                                         {"past", PATH_PAST},     {NULL, 0}};
    struct cursor *c = p->c;
    struct cursor_mark mark = cursor_mark(c);
    int path = take_entry(c, words);
    if (path < 0) {
        return 0;
    }
    struct who who = {.kind = WHO_NONE};
    const struct place *place = NULL;
    bool found = path == PATH_PAST ? place_or_who_read(c, 0, &place, &who) : who_read(c, &who);
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

/* off the screen, off 5's screen. */
static int screen_named(struct predicate *p)
{
    struct who who, second;
    int taken = above_screen_read(p->c, &p->s->subject.at[0], &who, &second);
    if (taken <= 0) {
        return taken;
    }
    if (p->s->object.kind != WHO_NONE) {
        return said_twice(p, who.span, "the screener");
    }
    p->s->object = who;
    p->s->object2 = second.kind == WHO_NONE ? NULL : who_keep(p->c, second);
    return player_fits(p, &who, 'U');
}

/* comes off tight to the elbow, comes off going right: the screen that waits is not named again. */
static bool unnamed_screen(struct predicate *p, const struct slot *slot)
{
    struct cursor *c = p->c;
    struct who by, second;
    bool several;
    if (!c->speech || slot->letter != 'U' ||
        !above_waiting_screen(c, &p->s->subject.at[0], &by, &second, &several)) {
        return false;
    }
    if (take_words(c, "tight") || take_words(c, "tightly")) {
        p->s->width = WIDTH_TIGHT;
        return true;
    }
    return word_is(c, 0, "to") || word_is(c, 0, "going") || word_is(c, 0, "hard");
}

/* A slot's content behind its preposition (already taken). */
static int read_content(struct predicate *p, const struct slot *slot)
{
    struct cursor *c = p->c;
    struct who who;
    int screen = slot->letter == 'U' || p->s->verb == VERB_REJECTS ? screen_named(p) : 0;
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
        return who_read(c, &who) ? read_player(p, slot, who) : player_missing(p, slot->preposition);
    case 'P':
        if (p->s->verb == VERB_DRIVES && word_is(c, 0, "middle")) {
            return read_way(p); /* drives to the middle is the way; to the baseline, a place */
        }
        return place_after(p, slot->preposition);
    case 'E':
        return read_either(p, slot->preposition);
    default:
        return read_measure(p, slot->letter);
    }
}

/* on x2: the defender of a screen; on anything else leads to a place. */
static int read_on(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct who who;
    if (!take_words(&trial, "on") || !person_read(&trial, &who) || !who_defends(&who)) {
        return 0;
    }
    take_words(c, "on");
    person_read(c, &who);
    if (p->s->on) {
        return said_twice(p, who.span, "the defender");
    }
    p->s->on = who_keep(c, who);
    return 1;
}

static bool holds_place(const struct predicate *p)
{
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    while (take_among(&trial, particle_words)) {
    }
    take_among(&trial, place_words);
    bool spot = !clause_is(p->c) && spot_read(&trial, true) != NULL;
    cursor_back(&trial, mark);
    return spot;
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
    p->c->at = trial.at;
    p->c->refusals = trial.refusals;
    p->s->verb = VERB_DRIBBLES_AT;
    return read_player(p, &(struct slot){.letter = 'W', .needed = true}, who);
}

/* a pass into 5, on to 3; throws 5 a lob, passes 2 the ball. */
static bool into_player(struct predicate *p, const struct slot *slot)
{
    static const char *const leads[] = {"into", "in to", "on to", "onto", "inside to", NULL};
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
    return read_player(p, slot, who) > 0;
}

/* By the slot's own preposition. */
static int exact_slot(struct predicate *p, const struct slot *slots, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        char preposition[16];
        if (slots[i].letter == 'O') {
            int taken = read_on(p);
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
            return read_content(p, &slots[i]);
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
    int taken = slot_of(slots, count, "Y") ? read_way(p) : guard ? guard_extra(p) : clears_what(p);
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
        return read_player(p, player, who);
    }
    bool uses = verb_row(p->s->verb)->task == VERB_USE && p->s->object.kind == WHO_NONE;
    int screen = uses ? screen_named(p) : 0; /* rejects the screen, curls the screen */
    if (screen != 0) {
        return screen;
    }
    if (bare && p->s->object.kind == WHO_NONE && points_back(c)) {
        return -1;
    }
    if (c->speech && p->s->verb == VERB_REPLACES && above_noun_doer(c, &who)) {
        return read_player(p, player, who); /* fills in behind the drive: for whoever drove */
    }
    if (bare && (p->s->object.kind == WHO_NONE || !place) && !cursor_done(c)) {
        bool found = p->s->object.kind == WHO_NONE ? who_read(c, &who) : person_read(c, &who);
        if (found) {
            return read_player(p, player, who);
        }
    }
    struct cursor_mark mark = cursor_mark(c);
    const struct place *found = place ? place_read(c, 0) : NULL;
    if (c->refusals != before && !found) {
        return -1;
    }
    if (found) {
        return read_place(p, found);
    }
    cursor_back(c, mark);
    if (place && place->letter == 'E' && !p->s->place && person_read(c, &who)) {
        return p->s->object.kind == WHO_NONE ? (p->s->object = who, 1)
                                             : said_twice(p, who.span, "the player");
    }
    const struct token *next = cursor_next(c);
    bool time = next && next->kind == TOKEN_MEASURE && next->unit == UNIT_SECONDS;
    if (other && next && next->kind == TOKEN_MEASURE && time == (other->letter == 'T')) {
        return clause_is(c) ? 0 : read_measure(p, other->letter);
    }
    return 0;
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
    if (noun && c->speech && p->s->verb == VERB_SCREENS) { /* screens the screener */
        return read_player(p, player, who);
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

/* takes two dribbles toward the wing: how far that is hangs on the dribbler. */
static void note_toward(struct predicate *p)
{
    struct span span = cursor_span(p->c);
    struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_WORD_DROPPED, span,
                                 "`%.*s` was read as `to`: the dribble ends there",
                                 STR_ARG(cursor_text(p->c, span)));
    diag_help(p->c->diags, diag,
              "for less of the way: `1 dribbles to halfway between top and left "
              "wing`");
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
        return read_player(p, &(struct slot){.letter = 'U', .needed = true}, who);
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
    return screen_named(p);
}

int slot_read(struct predicate *p)
{
    struct slot slots[SLOTS_MOST];
    drop_stress(p->c);
    int from = clause_is(p->c) ? 0 : begins_read(p);
    if (from != 0) {
        return from;
    }
    int over = clause_is(p->c) ? 0 : over_screen(p);
    if (over != 0) {
        return over;
    }
    from = clause_is(p->c) ? 0 : along_read(p);
    if (from != 0) {
        return from;
    }
    if (!clause_is(p->c) && (how_it_flies(p) || for_shot(p))) {
        return 1;
    }
    while (change_verb(p)) {
    }
    size_t count = verb_slots(p->s->verb, slots);
    if (clause_is(p->c)) {
        return 0;
    }
    int taken = toward_player(p);
    if (taken == 0) {
        taken = exact_slot(p, slots, count);
    }
    if (taken == 0 && slot_of(slots, count, "R")) {
        taken = read_path(p);
    }
    const struct slot *place = slot_of(slots, count, "PE");
    bool stays = p->s->verb == VERB_STAYS && who_side(&p->s->subject.at[0]) == FOR_DEFENDERS;
    place = stays ? NULL : place;
    if (taken == 0 && place && p->phrase.counted && word_is(p->c, 0, "toward")) {
        note_toward(p);
    }
    if (taken == 0 && place && !str_is(place->preposition, "toward") &&
        take_among(p->c, place_words)) {
        taken = read_content(p, place);
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
    bool way = s->drive != DRIVE_FREE, path = s->path != PATH_NONE;
    if ((way && !slot_of(slots, count, "Y")) || (path && !slot_of(slots, count, "R"))) {
        diag_help(p->c->diags,
                  REFUSE(p->c, TEXT_TWICE, s->verb_span,
                         "`%.*s` takes either a screener or a way round, not both",
                         STR_ARG(cursor_text(p->c, s->verb_span))),
                  "keep one of the two, or write two sentences");
        return false;
    }
    if (verb_row(s->verb)->task == VERB_SCREEN && s->place && s->place->kind == PLACE_SIDE) {
        struct str side = cursor_text(p->c, s->place->span);
        diag_help(p->c->diags,
                  REFUSE(p->c, TEXT_PLACE_HALF, s->place->span,
                         "a screen is set on a spot: where on the %.*s?", STR_ARG(side)),
                  "name the spot, `at right wing`, or leave the side out");
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
    place_of_phrase(p);
    size_t count = verb_slots(p->s->verb, slots);
    if (!slots_agree(p, slots, count)) {
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
        if (slot->letter == 'T' && p->s->duration.unit == UNIT_NONE) {
            return read_measure(p, 'T') > 0;
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
