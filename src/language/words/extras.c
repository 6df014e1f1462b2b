/* SPDX-License-Identifier: MIT */
/* extras: words behind a verb that say what it says already, or from where; taken so that nothing
 * is left over, or refused where they could mean two things. */
#include "language/words/grammar.h"

/* ices it, boxes out his man: the screen, or whom he guards, which the verb means by itself. */
static int guard_pronoun(struct predicate *p)
{
    static const char *const men[] = {"his man", "her man", "their man", NULL};
    static const enum verb at_screen[] = {VERB_ICES,       VERB_HEDGES,   VERB_GOES_OVER,
                                          VERB_GOES_UNDER, VERB_SWITCHES, VERB_TRAPS,
                                          VERB_TRAILS};
    bool screen = false;
    for (size_t i = 0; i < sizeof at_screen / sizeof *at_screen; i++) {
        screen = screen || p->s->verb == at_screen[i];
    }
    return (screen && take_words(p->c, "it")) || take_among(p->c, men);
}

/* switches onto 5: with whoever guards 5; stays home on 3: on his own man, as he does. */
static bool guard_whom(struct predicate *p)
{
    static const char *const ontos[] = {"onto", "on to", "on", "out on", "out onto", NULL};
    static const char *const men[] = {"shooter", "his man", "her man", "shooters", NULL};
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(p->c);
    struct who who, man;
    bool taken = false;
    if (p->s->subject.count != 1 || p->s->object.kind != WHO_NONE) {
        return false;
    }
    if (p->s->verb == VERB_SWITCHES && take_among(&trial, ontos) && person_read(&trial, &who) &&
        who.kind == WHO_PLAYER) {
        p->s->object = above_defender_of(p->c, &who, who.span);
        taken = true;
    } else if (p->s->verb == VERB_STAYS && take_words(&trial, "on")) {
        taken = take_among(&trial, men) ||
                (person_read(&trial, &who) && above_guarded(p->c, &p->s->subject.at[0], &man) &&
                 same_who(&who, &man));
        if (taken && guards_begun(p->c) && above_guarded(p->c, &p->s->subject.at[0], &man)) {
            p->s->verb = VERB_GUARDS;
            p->s->object = man;
        }
    }
    const struct token *end = trial.at;
    cursor_back(p->c, mark);
    p->c->at = taken ? end : p->c->at;
    return taken;
}

/* chases 3 off the screen, denies 2 the ball, denies the pass to 2: words that a defender's verb
 * says already. */
int guard_extra(struct predicate *p)
{
    if (p->s->object.kind == WHO_NONE &&
        (word_is(p->c, 0, "it") || word_is(p->c, 0, "his") || word_is(p->c, 0, "her"))) {
        int taken = guard_pronoun(p);
        if (taken != 0) {
            return taken;
        }
    }
    if (p->c->speech && guard_whom(p)) {
        return 1;
    }
    static const char *const ways[] = {"off", "over", "around", "through", "under", "on", NULL};
    static const char *const screens[] = {"screen", "ball screen", "down screen", "pick", NULL};
    static const char *const passes[] = {
        "ball",  "pass",          "return pass", "entry",           "reversal",
        "catch", "one pass away", "1 pass away", "two passes away", NULL};
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct who owner;
    if (p->s->verb == VERB_DENIES && take_among(&trial, passes)) {
        p->c->at = trial.at;
        return 1;
    }
    bool trails = p->s->verb == VERB_TRAILS;
    bool found = (trails || p->s->verb == VERB_GOES_OVER || p->s->verb == VERB_GOES_UNDER) &&
                 (take_among(&trial, ways), owner_read(&trial, &owner), true) &&
                 take_among(&trial, screens);
    const struct token *at = trial.at;
    cursor_back(&trial, mark);
    p->c->at = found ? at : p->c->at;
    return found;
}

/* kicks it to 4 for three, dribbles to the elbow for a jumper: the shot is a sentence more. */
bool for_shot(struct predicate *p)
{
    static const char *const nouns[] = {"shot",
                                        "jumper",
                                        "jump shot",
                                        "lay-up",
                                        "three-pointer",
                                        "three",
                                        "open shot",
                                        "open three",
                                        "open jumper",
                                        "corner three",
                                        "pull-up jumper",
                                        "pull-up",
                                        "floater",
                                        "catch and shoot three",
                                        "catch and shoot",
                                        "open look",
                                        "easy lay-up",
                                        "dunk",
                                        "finish",
                                        "wide open three",
                                        NULL};
    struct cursor trial = *p->c;
    enum verb_task task = verb_row(p->s->verb)->task;
    bool mover = p->s->object.kind == WHO_NONE && p->c->speech; /* to whoever has just moved */
    struct who holder;
    bool carries =
        task == VERB_CARRY || (task == VERB_MOVE && above_holder(p->c, &holder) &&
                               p->s->subject.count == 1 && same_who(&holder, &p->s->subject.at[0]));
    bool pass = task == VERB_PASS && (p->s->object.kind == WHO_PLAYER || mover);
    if ((!pass && !(carries && p->s->subject.count == 1)) || !take_words(&trial, "for") ||
        !take_among(&trial, nouns)) {
        return false;
    }
    bool ends = cursor_done(&trial) || cursor_next(&trial)->kind == TOKEN_MARK ||
                word_is(&trial, 0, "and") || clause_is(&trial);
    if (!ends) {
        return false;
    }
    p->s->shoots = true;
    p->c->at = trial.at;
    return true;
}

/* jabs baseline, ball fakes left, jab steps at x2: which way it goes, which moves nobody. */
static bool which_way(struct predicate *p)
{
    static const char *const ways[] = {
        "left", "right", "baseline", "middle",   "inside", "outside", "up the line", "down low",
        "high", "low",   "one way",  "opposite", "up",     "down",    "away",        NULL};
    static const char *const leads[] = {"to", "at", "toward", "into", "in", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    const struct token *from = c->at;
    struct who who;
    if (clause_is(c)) {
        return false;
    }
    bool led = take_among(&trial, leads);
    bool player = p->s->verb == VERB_PASS_FAKES && led;
    bool way = take_among(&trial, ways) || (led && spot_read(&trial, true)) ||
               (led && !player && defender_read(&trial, &who));
    const struct token *at = trial.at;
    cursor_back(&trial, mark);
    if (!way || (led && from == at)) {
        return false;
    }
    c->at = at;
    note_left_out(c, cursor_taken(c, from));
    return true;
}

/* dribbles at 1 on the wing: where the other one is. */
static bool where_they_meet(struct predicate *p)
{
    static const char *const words[] = {"on", "in", "at", NULL};
    const struct token *from = p->c->at;
    if (!p->c->speech || clause_is(p->c) || !spot_behind(p->c, words)) {
        return false;
    }
    note_meeting(p->c, cursor_taken(p->c, from));
    return true;
}

/* seals x5, seals 5's defender: whoever guards the one who seals, which the verb means by itself.
 * seals the middle man: one of a zone, and which of them is known on the floor. */
static bool seals_whom(struct predicate *p)
{
    struct cursor trial = *p->c;
    if (one_of_a_zone(p->c)) {
        const struct token *line = &p->c->at[-1];
        if (!above_zone(p->c) || !take_among(&trial, defender_words)) {
            return false;
        }
        p->c->at = trial.at;
        note_left_out(p->c, cursor_taken(p->c, line));
        return true;
    }
    struct who who, guarded;
    bool own = defender_read(&trial, &who) && p->s->subject.count == 1 &&
               ((who.kind == WHO_DEFENDER_OF && who.number == p->s->subject.at[0].number) ||
                (above_guarded(p->c, &who, &guarded) && same_who(&guarded, &p->s->subject.at[0])));
    p->c->at = own ? trial.at : p->c->at;
    return own;
}

/* 1 cuts off 4, who has the ball, for the hand-off: 4 hands off to 1. */
static bool cuts_for_it(struct predicate *p)
{
    static const char *const words[] = {"for hand-off", "for hand - off", "for handoff",
                                        "for get back", NULL};
    struct sentence *s = p->s;
    struct cursor trial = *p->c;
    bool by = verb_row(s->verb)->task == VERB_USE && s->object.kind == WHO_PLAYER && !s->place &&
              !s->object2 && !s->ahead && s->subject.count == 1 && above_holds(p->c, &s->object);
    if (!by || !take_among(&trial, words) ||
        !(cursor_done(&trial) || cursor_next(&trial)->kind == TOKEN_MARK)) {
        return false;
    }
    struct who taker = s->subject.at[0];
    who_list giver = {NULL, 0, 0}; /* a list of its own: the one of the line goes on with 1 */
    VEC_PUSH(p->c->arena, &giver, s->object);
    s->subject = giver;
    s->object = taker;
    s->verb = VERB_HANDS_OFF;
    p->c->at = trial.at;
    return true;
}

/* Words that an attacker's verb says already: back cuts behind the defense, dribbles at 2 for a
 * hand-off (which is a sentence more). */
bool attack_extra(struct predicate *p)
{
    if (p->c->speech && p->s->verb == VERB_STAYS && who_defends(&p->s->subject.at[0])) {
        return guard_whom(p);
    }
    if ((p->s->verb == VERB_JABS || p->s->verb == VERB_PASS_FAKES ||
         p->s->verb == VERB_SHOT_FAKES) &&
        which_way(p)) {
        return true;
    }
    if (p->s->verb == VERB_SEALS && seals_whom(p)) {
        return true;
    }
    static const char *const behind[] = {
        "behind defender",     "behind defense",  "behind defence",  "behind his defender",
        "behind her defender", "behind his man",  "behind her man",  "behind their man",
        "behind denial",       "behind pressure", "behind overplay", NULL};
    static const char *const hand_offs[] = {
        "for hand-off",         "into hand-off",         "for dho", "into dho",
        "for dribble hand-off", "into dribble hand-off", NULL};
    if (cuts_for_it(p)) {
        return true;
    }
    if (p->s->verb == VERB_BACK_CUTS && take_among(p->c, behind)) {
        return true;
    }
    if (p->s->verb == VERB_DRIBBLES_AT && p->s->object.kind != WHO_NONE && where_they_meet(p)) {
        return true;
    }
    if (p->s->verb == VERB_DRIBBLES_AT && p->s->object.kind != WHO_NONE &&
        take_among(p->c, hand_offs)) {
        p->s->hands_off = true;
        return true;
    }
    return false;
}

/* lifts out of the corner, cuts from left wing: where the player is already, which the play makes
 * sure of. 1: taken, -1: reported. */
int begins_read(struct predicate *p)
{
    struct cursor trial = *p->c;
    enum verb_task task = verb_row(p->s->verb)->task;
    if (task != VERB_MOVE && task != VERB_CARRY && task != VERB_SCREEN && task != VERB_SHOOT &&
        task != VERB_PASS) {
        return 0;
    }
    const struct place *place = spot_behind(&trial, begin_words);
    if (!place || place->kind != PLACE_SPOT || place->spot == SPOT_LANE) { /* nobody starts there */
        return 0;
    }
    p->c->at = trial.at;
    if (p->s->begins) {
        return said_twice(p, place->span, "from where");
    }
    p->s->begins = place;
    return 1;
}

/* clears the corner: left, or gone to? goes baseline: along it, or a drive? */
int clears_what(struct predicate *p)
{
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    bool line = (p->s->verb == VERB_GOES || p->s->verb == VERB_CUTS) &&
                word_is(p->c, 0, "baseline") && cursor_next(p->c) == p->c->at &&
                p->c->at == p->after_verb;
    const struct place *place = p->s->verb == VERB_CLEARS || line ? spot_read(&trial, true) : NULL;
    struct span span = place ? cursor_taken(&trial, p->c->at) : SPAN_NONE;
    struct cursor behind = trial;
    cursor_back(&trial, mark);
    if (!place) {
        return 0;
    }
    if (!line && p->c->speech && place->kind == PLACE_SPOT && !p->s->begins &&
        word_is(&behind, 0, "to") && leg_follows(&behind)) { /* clears the block to the corner */
        p->c->at = behind.at;
        p->s->begins = place;
        return 1;
    }
    if (line && p->s->verb == VERB_GOES &&
        above_holds(p->c, &p->s->subject.at[0])) { /* who has the ball drives */
        take_words(p->c, "baseline");
        p->s->verb = VERB_DRIVES;
        p->s->drive = DRIVE_BASELINE;
        return 1;
    }
    if (line && p->c->speech && p->s->verb == VERB_CUTS && part_ends(&behind)) {
        p->c->at = behind.at; /* a baseline cut: to the rim along it */
        p->path_done = p->way_said = true;
        p->s->path = PATH_ALONG;
        p->s->path_place = place;
        p->phrase.to = SPOT_RIM;
        if (str_starts(str_of(p->phrase.words), "run")) { /* runs the baseline: to its other end */
            struct place corner = {.kind = PLACE_SPOT, .spot = SPOT_CORNER, .side = SIDE_OPPOSITE};
            p->phrase.to = SPOT_COUNT;
            take_place(p, corner, "the opposite corner");
        }
        return 1;
    }
    struct str text = cursor_text(p->c, span);
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_TWO_MEANINGS, span, "`%.*s %.*s`: %s", STR_ARG(predicate_begun(p)),
                     STR_ARG(text), line ? "along it, or to it?" : "out of there, or to there?"),
              line ? "write where it ends, `%.*s to %.*s`; with the ball it is `drives baseline`"
                   : "write where it ends: `%.*s to %.*s`",
              STR_ARG(predicate_begun(p)), STR_ARG(text));
    return -1;
}

/* goes by, and nothing behind it: the one who guards him. */
static bool by_is_all(const struct cursor *c, const struct token *behind)
{
    struct cursor end = *c;
    end.at = behind;
    return str_is(behind[-1].text, "by") && (stop_is(&end) || mark_is(&end, ',') ||
                                             word_is(&end, 0, "and") || word_is(&end, 0, "on"));
}

/* drives right by x1: by his right side, or close by; the side is taken, and told. */
static void by_right_side(struct predicate *p, const struct token *end)
{
    struct cursor *c = p->c;
    const struct token *from = past_fillers(c->at, c->end);
    if (!word_is(c, 0, "right") || p->s->verb != VERB_DRIVES || p->s->drive != DRIVE_FREE) {
        return;
    }
    struct span span = {from->span.source, from->span.begin, end[-1].span.end};
    p->s->drive = DRIVE_RIGHT;
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_HEARD, span, "`%.*s` was taken as `right`",
                                 STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, "write it so, if it is meant; by either side is `drives to the rim`");
}

/* drives past x1, drives by his man: who is beaten, by the drive itself. */
bool past_defender(struct predicate *p)
{
    static const char *const ways[] = {"past", "by", "right by", "right past", "around", NULL};
    static const char *const men[] = {"his man",      "her man",      "his defender",
                                      "her defender", "the defender", NULL};
    struct cursor trial = *p->c;
    struct who who;
    bool goes = p->c->speech && p->s->verb == VERB_GOES && !p->s->place &&
                above_holds(p->c, &p->s->subject.at[0]);
    if ((p->s->verb != VERB_DRIVES && !goes) || !take_among(&trial, ways)) {
        return false;
    }
    const struct token *way = trial.at;
    bool beaten = take_among(&trial, men) || (p->c->speech && take_among(&trial, him_or_her)) ||
                  defender_read(&trial, &who);
    if (!beaten && !(p->c->speech && by_is_all(p->c, way))) { /* goes right by */
        return false;
    }
    by_right_side(p, beaten ? trial.at : way);
    p->c->at = beaten ? trial.at : way;
    p->s->verb = VERB_DRIVES;
    return true;
}

/* through the gap between x1 and x2: the way, which the drive finds for itself. */
bool through_gap(struct predicate *p)
{
    static const char *const gaps[] = {"gap", "seam", "gaps", "defense", "traffic", NULL};
    static const struct entry sides[] = {{"right gap", DRIVE_RIGHT},
                                         {"left gap", DRIVE_LEFT},
                                         {"right seam", DRIVE_RIGHT},
                                         {"left seam", DRIVE_LEFT},
                                         {"middle gap", DRIVE_MIDDLE},
                                         {"baseline gap", DRIVE_BASELINE},
                                         {NULL, 0}};
    static const struct entry floors[] = {
        {"right side", DRIVE_RIGHT}, {"left side", DRIVE_LEFT}, {NULL, 0}};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    const struct token *from = c->at;
    if (verb_row(p->s->verb)->task != VERB_CARRY) {
        return false;
    }
    bool led = take_words(&trial, "through") || take_words(&trial, "into");
    struct cursor sided = trial;
    int side = p->s->verb == VERB_DRIVES && !p->s->place ? take_entry(&sided, sides) : -1;
    side = side < 0 && !led && p->s->verb == VERB_DRIVES && from == p->after_verb && !p->s->place
               ? take_entry(&sided, floors) /* drives the right side */
               : side;
    if (side >= 0) { /* the right gap: by that side of who guards him */
        c->at = sided.at;
        p->s->drive = (enum drive_side)side;
        return true;
    }
    if (!take_among(&trial, gaps) || (!led && from != p->after_verb)) {
        return false;
    }
    const struct token *at = trial.at;
    struct cursor pair = trial;
    bool two = take_words(&pair, "between") && person_read(&pair, &who) &&
               take_words(&pair, "and") && person_read(&pair, &who);
    cursor_back(&trial, mark);
    c->at = at;
    if (two && !p->s->place) { /* that is where it goes */
        p->s->place = place_read(c, 0);
        return p->s->place != NULL;
    }
    c->at = two ? pair.at : at;
    note_way(p, cursor_taken(c, from));
    return true;
}

/* rotates up, rolls down, v-cuts back out: which way, at the end, where the verb says so by itself
 * or still asks where to. */
static bool end_particle(const struct predicate *p, const struct cursor *behind)
{
    static const char *const inward[] = {"down", "in", "through", NULL};
    if (!stop_is(behind) && !mark_is(behind, ',') && !word_is(behind, 0, "and") &&
        !word_is(behind, 0, "then")) {
        return false;
    }
    switch (verb_row(p->s->verb)->place) {
    case DEFAULT_OWN_SPOT:
    case DEFAULT_EMPTY_PERIMETER:
    case DEFAULT_AWAY_PERIMETER:
        return true;
    case DEFAULT_RIM:
        return verb_row(p->s->verb)->task == VERB_MOVE && word_among(p->c, inward);
    case DEFAULT_NONE:
        return verb_row(p->s->verb)->task == VERB_MOVE && !p->s->place;
    default:
        return false;
    }
}

bool drop_particle(struct predicate *p, bool place)
{
    struct cursor trial = *p->c;
    if (word_is(&trial, 0, "in") && word_is(&trial, 1, "to")) { /* in to the elbow */
        return take_words(p->c, "in");
    }
    if (!take_among(&trial, particle_words)) {
        return false;
    }
    while (take_among(&trial, particle_words)) { /* back out to 1 */
    }
    struct cursor_mark mark = cursor_mark(&trial);
    if (word_is(p->c, 0, "over") && word_is(&trial, 0, "top")) {
        return false; /* over the top is how high a pass is, not where to */
    }
    bool leads = word_among(&trial, place_words) || word_is(&trial, 0, "off") ||
                 (place && spot_read(&trial, true) != NULL) || end_particle(p, &trial);
    cursor_back(&trial, mark);
    if (leads) {
        for (const struct token *at = p->c->at; at < trial.at; at++) {
            p->across = p->across || str_is(at->text, "across");
        }
        p->c->at = trial.at;
    }
    return leads;
}

/* right at 2, straight to the rim: right before a preposition they add nothing. */
void drop_stress(struct cursor *c)
{
    static const char *const words[] = {"right", "straight", "directly", "all the way", NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, words) ||
        !(word_among(&trial, place_words) || word_is(&trial, 0, "off") ||
          (c->speech && word_among(&trial, particle_words)))) {
        return;
    }
    struct cursor place = trial;
    struct cursor_mark mark = cursor_mark(&place);
    take_among(&place, place_words);
    const struct place *spot = spot_read(&place, true);
    bool side = spot && spot->kind == PLACE_SPOT && spot->side == SIDE_NONE &&
                spot_takes_side(spot->spot) && word_is(c, 0, "right");
    cursor_back(&place, mark);
    if (!side) { /* right to corner: the right one may be meant */
        c->at = trial.at;
    }
}
