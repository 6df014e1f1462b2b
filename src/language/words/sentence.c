/* SPDX-License-Identifier: MIT */
/* sentence: subject, verb, slots, modifiers, clause, until, and nothing left over. */
#include "language/words/speech.h"

static int trailing_clause(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    if (!clause_is(c)) {
        return 0;
    }
    if (p->s->tie.word != TIE_NONE || p->s->tie.meanwhile) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_TWO, cursor_span(c), "a second clause in one sentence"),
                  "a sentence waits for one thing: keep one of the two");
        return -1;
    }
    bool then = p->s->tie.then;
    if (!clause_read(c, &p->s->tie)) {
        return -1;
    }
    enum tie_word word = p->s->tie.word;
    if (then && (word == TIE_AS || word == TIE_AT || word == TIE_LATER)) {
        struct span span = cursor_taken(c, from);
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_THEN, span, "`then` and `%.*s` say two different moments",
                         STR_ARG(cursor_text(c, span))),
                  "keep one of them");
        return -1;
    }
    p->s->tie.span = cursor_taken(c, from);
    return 1;
}

static int until_part(struct predicate *p)
{
    struct cursor *c = p->c;
    struct span span = cursor_span(c);
    if (!take_words(c, "until")) {
        return 0;
    }
    if (p->s->until) {
        diag_help(c->diags, REFUSE(c, TEXT_CLAUSE_TWO, span, "a second `until` in one sentence"),
                  "a sentence is cut short by one thing: keep one of the two");
        return -1;
    }
    struct event until;
    if (!until_read(c, &until)) {
        return -1;
    }
    p->s->until = event_keep(c, until);
    return 1;
}

/* A length or a time behind a comma: sets up toward the rim, 6 ft. */
static int length_read(struct predicate *p)
{
    const struct token *next = cursor_next(p->c);
    struct slot slots[SLOTS_MOST];
    for (size_t i = verb_slots(p->s->verb, slots); next && i-- > 0;) {
        bool time = next->unit == UNIT_SECONDS;
        if (next->kind == TOKEN_MEASURE && slots[i].letter == (time ? 'T' : 'L')) {
            return slot_read(p);
        }
    }
    return 0;
}

/* hits 4 coming up, finds 3 coming off it: as it is said of him above already. */
static bool coming_along(struct predicate *p)
{
    static const char *const words[] = {
        "coming up",         "coming down",    "coming off",          "coming off it",
        "coming off screen", "coming out",     "coming over",         "coming in",
        "coming across",     "coming back",    "on the move",         "on the way up",
        "on the way out",    "off the screen", "coming off the pick", NULL};
    struct cursor trial = *p->c;
    const struct token *from = p->c->at;
    bool pass = verb_row(p->s->verb)->task == VERB_PASS && who_is_one(&p->s->object);
    if (!p->c->speech || !pass || !take_among(&trial, words) || !part_ends(&trial) ||
        above_verb(p->c, &p->s->object).size == 0) {
        return false;
    }
    p->c->at = trial.at;
    note_left_out(p->c, cursor_taken(p->c, from));
    return true;
}

/* 1 passes to 2 cutting: he could be either, and behind the receiver it is the receiver. */
static void note_who_moves(struct cursor *c, const struct who *who, struct span span)
{
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, span,
                                 "who does this is not written: %d, to whom "
                                 "the pass is, was taken",
                                 who->number);
    diag_help(c->diags, diag, "to have another, write a sentence of its own: `1 cuts to the rim`");
}

/* finds 4 drifting to the corner: what the receiver does, which is a sentence of its own before it;
 * said above already, it is only said again. */
static int receiver_moves(struct predicate *p)
{
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    if (coming_along(p)) {
        return 1;
    }
    struct cursor trial = *c;
    struct phrase phrase;
    struct str bare;
    if (!c->speech || verb_row(s->verb)->task != VERB_PASS || s->object.kind != WHO_PLAYER ||
        s->ahead || take_entry(&trial, pace_entries) >= 0 ||
        !phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare) ||
        (verb_row(phrase.verb)->task != VERB_MOVE && verb_row(phrase.verb)->task != VERB_USE)) {
        return 0;
    }
    struct token *said = c->speech->tokens + (cursor_next(c) - c->speech->tokens);
    struct recast verb = {.to = c->at};
    recast_verb(c, &verb, bare);
    struct token whole = verb.tokens.at[0];
    whole.span = cursor_taken(&trial, c->at);
    for (struct token *at = said + 1; at < trial.at; at++) {
        at->filler = true;
    }
    *said = whole;
    struct sentence *move = arena_new(c->arena, struct sentence);
    *move = (struct sentence){.span = whole.span};
    VEC_PUSH(c->arena, &move->subject, s->object);
    const struct who *doer = c->doer;
    struct str before = above_verb(c, &s->object);
    c->doer = &move->subject.at[0];
    bool fine = rest_read(c, move);
    c->doer = doer;
    bool again = str_equal(before, phrase_words(move->verb, move->pass, move->screen, false));
    s->ahead = again ? NULL : move;
    if (fine && s->ahead) {
        note_who_moves(c, &s->object, whole.span);
    }
    return fine ? 1 : -1;
}

/* passes to the elbow, 5 this time; to the corner, 4's side: who it is that stands there. */
static int names_receiver(struct predicate *p)
{
    static const char *const tails[] = {"this time", "there", "over there", "right there", NULL};
    struct cursor trial = *p->c;
    struct sentence *s = p->s;
    struct who who;
    bool spot = verb_row(s->verb)->task == VERB_PASS && s->object.kind == WHO_SPOT && !s->place;
    if (!p->c->speech || !spot) {
        return 0;
    }
    take_words(&trial, "to"); /* to the corner to 4 */
    const struct token *name = trial.at;
    bool side = owner_read(&trial, &who) && take_words(&trial, "side");
    trial.at = side ? trial.at : name;
    if (!side && !person_read(&trial, &who)) {
        return 0;
    }
    take_among(&trial, tails);
    if (who.kind != WHO_PLAYER || !part_ends(&trial)) {
        return 0;
    }
    s->place = s->object.place;
    if (s->place->side == SIDE_OPPOSITE) { /* of the ball, and where he is already */
        s->place = place_sided(p->c, s->place, SIDE_NONE);
    }
    s->object = who;
    p->c->at = trial.at;
    return 1;
}

/* posts up at the block for two seconds: how long he is there, behind where; chain.c makes a
 * sentence of it. */
static int stays_there(struct predicate *p)
{
    struct cursor trial = *p->c;
    struct sentence *s = p->s;
    bool there = s->place || verb_row(s->verb)->place == DEFAULT_OWN_SPOT ||
                 verb_row(s->verb)->place == DEFAULT_NEAREST_BLOCK;
    if (!p->c->speech || verb_row(s->verb)->task != VERB_MOVE || !there || s->subject.count != 1 ||
        !who_is_one(&s->subject.at[0]) || s->duration.unit != UNIT_NONE ||
        !take_words(&trial, "for") || !skip_seconds(&trial) || !part_ends(&trial)) {
        return 0;
    }
    take_words(p->c, "for");
    return take_seconds(p->c, &s->duration) ? 1 : -1;
}

/* One part behind the verb: 1 taken, 0 nothing fits, -1 reported. A comma may stand before all but
 * a slot. */
static int part_read(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {
        modifier_read, stays_there, for_lob, aside_read, trailing_clause, until_part, length_read};
    struct cursor *c = p->c;
    struct cursor_mark mark = cursor_mark(c);
    bool comma = take_mark(c, ',');
    p->comma_clause = (struct span){0};
    int moves = receiver_moves(p);
    if (moves != 0) {
        return moves;
    }
    for (size_t i = 0; i < sizeof readers / sizeof *readers; i++) {
        int taken = readers[i](p);
        if (taken != 0) {
            bool clause = comma && readers[i] == trailing_clause;
            p->comma_clause = clause ? p->s->tie.span : p->comma_clause;
            return taken;
        }
    }
    if (!comma) {
        int named = word_is(c, 0, "to") ? names_receiver(p) : 0;
        return named != 0 ? named : slot_read(p);
    }
    int again = same_place_again(p);
    again = again != 0 ? again : names_receiver(p);
    again = again != 0 ? again : behind_line(p);
    bool cut = p->s->verb == VERB_L_CUTS || p->s->verb == VERB_V_CUTS;
    if (again == 0 && cut && c->speech && !p->s->place) { /* l-cuts, up the lane line then out */
        again = along_read(p);
    }
    if (again != 0) {
        return again;
    }
    /* ducks in from the weak side, front of the rim: where to, which it has not said yet */
    bool place = p->way_said && !p->s->place && verb_takes_place(p->s->verb) && place_starts(c) &&
                 !subject_verb_is(c);
    int taken = place ? slot_read(p) : 0;
    if (taken == 0) {
        cursor_back(c, mark);
    }
    return taken;
}

/* 3 cuts to the rim, at 2 s, 4 lifts to top: the clause could belong to either. */
static bool between(struct predicate *p)
{
    if (p->comma_clause.end == 0 || stop_is(p->c)) {
        return false;
    }
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_CLAUSE_BETWEEN, p->comma_clause,
                     "`%.*s` could belong to the sentence before it or behind it",
                     STR_ARG(cursor_text(p->c, p->comma_clause))),
              "end the first sentence with a full stop, or write two lines");
    return true;
}

/* x1 jumps to the ball: into the lane of the pass to his man, which is one pass away. */
static void tell_jump(const struct predicate *p)
{
    const struct sentence *s = p->s;
    if (s->verb != VERB_DENIES || !str_starts(cursor_text(p->c, s->verb_span), "jump")) {
        return;
    }
    struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_VERB_TAKEN, s->verb_span,
                                 "read as `denies`: into the lane of the pass to his own man");
    diag_help(p->c->diags, diag, "where his man is two passes away, write `%.*s sags`",
              STR_ARG(subject_words(p->c, &s->subject)));
}

static bool predicate_read(struct predicate *p)
{
    enum phrase_side side = who_side(&p->s->subject.at[0]);
    while (!stop_is(p->c)) {
        if (use_goes_on(p) || ends_said(p)) {
            continue;
        }
        if (next_is(p, side)) {
            break;
        }
        int taken = part_read(p);
        if (taken == 0) {
            if (!slots_filled(p)) {
                return false;
            }
            taken = refuse_left(p);
        }
        if (taken < 0) {
            return false;
        }
    }
    far_from_ball(p);
    note_him(p);
    tell_jump(p);
    p->s->spread = spread_is(p);
    return (p->s->spread || slots_filled(p)) && !between(p);
}

static bool double_fits(struct cursor *c, const struct sentence *s)
{
    if (s->screen != SCREEN_DOUBLE || s->subject.count == 2 ||
        s->subject.at[0].kind == WHO_EVERYONE_ELSE) {
        return true;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_DOUBLE_SCREEN, s->verb_span, "a double screen takes two screeners"),
              "write `4 and 5 double screen for 2`");
    return false;
}

/* `and`, `to` before a verb; but `to the rim` is where to. */
static bool leads_to_verb(struct cursor *c)
{
    struct cursor trial = *c;
    bool to = take_words(&trial, "to");
    if (!to && !take_words(&trial, "and")) {
        return false;
    }
    if (c->speech && !verb_begins(&trial)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* Behind `uses`: whose screen, and the verb that says how. */
static bool used_screen_read(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    take_uses(c);
    struct who second;
    int screen = above_screen_read(c, &p->s->subject.at[0], &p->s->object, &second);
    if (screen == 0 && c->speech) { /* uses 5 */
        screen = person_read(c, &p->s->object);
    }
    p->s->object2 = second.kind == WHO_NONE ? NULL : who_keep(c, second);
    if (screen < 0) {
        return false;
    }
    if (screen > 0 && leads_to_verb(c)) {
        p->s->verb_span = cursor_taken(c, from);
        return player_fits(p, &p->s->object, 'U') > 0;
    }
    p->holds = above_holds(c, &p->s->subject.at[0]);
    if (screen > 0 && c->speech &&
        (p->holds || leg_follows(c) || word_is(c, 0, "going"))) { /* uses 5 to the left wing */
        p->used = true;
        p->s->verb_span = cursor_taken(c, from);
        return player_fits(p, &p->s->object, 'U') > 0;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_VERB_MISSING, cursor_taken(c, from), "a screen is used how?"),
              "write `%.*s curls off 5`, `fades off 5` or `comes off 5 to top`",
              STR_ARG(subject_words(c, &p->s->subject)));
    return false;
}

/* `3, 5 screens`: two players without `and` and a verb said of one. */
static bool and_before(const struct sentence *s, const struct token *verb)
{
    uint32_t first = s->subject.at[0].span.begin;
    do {
        verb--;
    } while (verb->span.begin > first && !str_is(verb->text, "and"));
    return verb->span.begin > first;
}

/* boxes 2 out: the player between the words of the verb. */
static bool inside_read(struct predicate *p)
{
    struct cursor inner = *p->c;
    inner.at = p->phrase.inside;
    bool read = who_read(&inner, &p->s->object);
    p->c->refusals = inner.refusals;
    return read && player_fits(p, &p->s->object, 'W') > 0;
}

/* sets a flat screen: what the word would change is not in the language. */
static void note_dropped(struct cursor *c, const struct phrase *phrase)
{
    if (!phrase->dropped) {
        return;
    }
    struct span span = phrase->dropped->span;
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span,
                 "`%.*s` changes nothing here and was left out", STR_ARG(cursor_text(c, span)));
    bool pass = verb_row(phrase->verb)->task == VERB_PASS;
    diag_help(c->diags, diag, "%s",
              pass
                  ? "say how the ball flies: `1 skip passes to 4`, `1 lob passes to 5`"
                  : "say where or how the screener stands: `at right wing`, `facing the baseline`");
}

/* Who does it, for the words behind the verb that hang on that. */
static void acts(struct cursor *c, struct sentence *s)
{
    s->bare = s->subject.count > 1;
    c->several = s->bare || s->subject.at[0].kind == WHO_EVERYONE_ELSE;
    c->screener = verb_row(s->verb)->task == VERB_SCREEN ? &s->subject.at[0] : NULL;
}

/* What stands behind a verb that no word says. */
static bool unsaid_read(struct predicate *p)
{
    p->after_verb = p->c->at;
    p->phrase = (struct phrase){.words = "", .bare = "", .with = "", .to = SPOT_COUNT};
    acts(p->c, p->s);
    return predicate_read(p);
}

/* Where to, or for whom, behind a verb that is not written again. */
bool elided_read(struct cursor *c, struct sentence *s)
{
    struct predicate p = {.c = c, .s = s, .from = c->at};
    s->verb_span = cursor_span(c);
    return unsaid_read(&p);
}

/* cuts through the lane, through the zone: the way, which the verb has taken half of. */
static void through_what(struct cursor *c, struct phrase *phrase)
{
    static const char *const whats[] = {"lane",    "zone",    "key",     "paint", "middle",
                                        "defense", "defence", "traffic", "gut",   "elbows",
                                        "top",     "elbow",   NULL};
    if (c->speech && phrase->to == SPOT_RIM && str_is(c->at[-1].text, "through") &&
        word_among(c, whats)) {
        c->at--;
        phrase->to = SPOT_COUNT;
    }
}

/* cuts through and out to the corner: one cut, which leads through. */
static void through_and_out(struct cursor *c, const struct phrase *phrase)
{
    static const char *const wheres[] = {"to",   "into",   "other",    "far", "weak",
                                         "ball", "strong", "opposite", NULL};
    struct cursor trial = *c;
    if (phrase->to == SPOT_RIM && str_is(c->at[-1].text, "through") && take_words(&trial, "and") &&
        take_words(&trial, "out") && word_among(&trial, wheres)) {
        c->at = trial.at;
    }
}

/* The verb as its words say it, and as it is said of these. */
static void verb_settled(struct predicate *p, struct run_in in, const struct token *verb)
{
    static const char *const throws[] = {"throws", "throw", "puts", "put", "gets", "get", NULL};
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    through_what(c, &p->phrase);
    through_and_out(c, &p->phrase);
    s->verb = p->phrase.verb;
    bool to = str_is(c->at[-1].text, "to") || str_is(c->at[-1].text, "into") ||
              token_is_among(verb, throws);
    if (s->verb == VERB_INBOUNDS && to && s->subject.count == 1 &&
        starts_inside(c, &s->subject.at[0])) {
        s->verb = VERB_PASSES; /* passes in to the post, by one on the floor */
    }
    if (s->verb == VERB_DOUBLES && s->subject.count == 2) {
        s->verb = VERB_TRAPS; /* x4 and x1 double 1: one of them guards him */
    }
    s->pass = p->phrase.pass;
    s->screen = in.slant != SCREEN_PLAIN ? in.slant : p->phrase.screen;
    s->verb_span = cursor_taken(c, verb);
    p->after_verb = c->at;
    s->three = p->phrase.three;
    s->shoots = phrase_has(&p->phrase, 'X') && s->subject.count == 1; /* pulls up at the elbow */
    note_dropped(c, &p->phrase);
    s->pace = p->phrase.pace != PACE_VERB ? p->phrase.pace : in.pace;
    if (p->phrase.steps > 0) {
        s->length = (struct measure){.value = p->phrase.steps, .unit = UNIT_STEPS};
    }
    acts(c, s);
}

/* Verb and all behind it, for a subject that is known. */
bool guards_begun(const struct cursor *c)
{
    return (c->step && c->step != c->top) || above_count(c) > 0;
}

/* x3 stays home: on his own man, where it is written who that is. */
static void stays_home(struct predicate *p)
{
    struct sentence *s = p->s;
    struct who man;
    bool home = s->verb == VERB_STAYS && str_is(str_of(p->phrase.words), "stays home");
    if (home && s->subject.count == 1 && who_defends(&s->subject.at[0]) && cursor_done(p->c) &&
        guards_begun(p->c) && above_guarded(p->c, &s->subject.at[0], &man)) {
        man.span = s->verb_span;
        s->verb = VERB_GUARDS;
        s->object = man;
    }
}

bool rest_read(struct cursor *c, struct sentence *s)
{
    struct predicate p = {.c = c, .s = s};
    enum phrase_side side = who_side(&s->subject.at[0]);
    struct run_in in = read_run_in(c);
    p.from = c->at;
    if (side == FOR_ATTACKERS && uses_screen_is(c) && !used_screen_read(&p)) {
        return false;
    }
    if (p.used) {
        s->verb = p.holds ? VERB_DRIVES_OFF : VERB_COMES;
        return unsaid_read(&p);
    }
    const struct token *verb = c->at;
    bool read = phrase_read(c, side, &p.phrase);
    c->counted = false;
    if (!read) {
        refuse_verb(c, &s->subject);
        return false;
    }
    if (refuse_longer(c, &s->subject, verb)) {
        return false;
    }
    verb_settled(&p, in, verb);
    if (s->object.kind != WHO_NONE && !use_verb(s)) {
        return refuse_use(c, s);
    }
    if (s->bare && p.phrase.with_s && !and_before(s, p.from)) {
        return refuse_run_on(c, s);
    }
    if (p.phrase.inside && !inside_read(&p)) {
        return false;
    }
    stays_home(&p);
    if (!predicate_read(&p) || !double_fits(c, s)) {
        return false;
    }
    if (s->subject.count == 1) {
        above_drop_own_man(c, &s->subject.at[0], s->verb, &s->object);
    }
    return true;
}
