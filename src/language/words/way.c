/* SPDX-License-Identifier: MIT */
/* way: the way somebody takes, which is not where it ends: across the lane, along the baseline,
 * behind the zone, over the top, going left. Baseline and sideline are run along; any other way is
 * the straight one, so it is left out, with a note; a way without an end is asked for it. */
#include "language/words/grammar.h"

static const char *const ways[] = {
    "across",     "up",       "down",          "along",       "through",     "thru",      "over",
    "right down", "right up", "straight down", "straight up", "right along", "back down", NULL};
static const char *const lines[] = {"right side of lane",
                                    "left side of lane",
                                    "three-point line",
                                    "free-throw line",
                                    "middle of floor",
                                    "middle of paint",
                                    "right lane line",
                                    "right sideline",
                                    "middle of lane",
                                    "left lane line",
                                    "left sideline",
                                    "middle of key",
                                    "foul line",
                                    "main street",
                                    "perimeter",
                                    "gut of lane",
                                    "pipe",
                                    "gut",
                                    "lane line",
                                    "end line",
                                    "endline",
                                    "sideline",
                                    "baseline",
                                    "middle",
                                    "elbows",
                                    "paint",
                                    "floor",
                                    "court",
                                    "elbow",
                                    "lane",
                                    "side",
                                    "wing",
                                    "key",
                                    "arc",
                                    NULL};
/* What is passed by, and moves nobody elsewhere. */
static const char *const passes_by[] = {"up and down",
                                        "in and out",
                                        "out and back",
                                        "down and back",
                                        "up and back",
                                        "in front of her defender",
                                        "in front of his defender",
                                        "across face of his man",
                                        "on her right shoulder",
                                        "on his right shoulder",
                                        "across front of zone",
                                        "on her left shoulder",
                                        "on his left shoulder",
                                        "sideline to sideline",
                                        "across face of zone",
                                        "across front of rim",
                                        "behind back of zone",
                                        "in front of defense",
                                        "in front of her man",
                                        "in front of his man",
                                        "from opposite side",
                                        "from where she is",
                                        "in behind defense",
                                        "on her right side",
                                        "on his right side",
                                        "past his defender",
                                        "underneath basket",
                                        "underneath hoop",
                                        "behind defenders",
                                        "corner to corner",
                                        "from strong side",
                                        "from where he is",
                                        "in front of zone",
                                        "off her shoulder",
                                        "off his shoulder",
                                        "on baseline side",
                                        "on her left side",
                                        "on his left side",
                                        "on his right hip",
                                        "across his face",
                                        "from other side",
                                        "from underneath",
                                        "going other way",
                                        "on his left hip",
                                        "through defense",
                                        "through traffic",
                                        "around her man",
                                        "around his man",
                                        "around outside",
                                        "behind defence",
                                        "behind defense",
                                        "behind her man",
                                        "behind his man",
                                        "block to block",
                                        "elbow to elbow",
                                        "from back side",
                                        "from ball side",
                                        "from help side",
                                        "from weak side",
                                        "going baseline",
                                        "going downhill",
                                        "in behind zone",
                                        "on middle side",
                                        "underneath rim",
                                        "baseline side",
                                        "behind cutter",
                                        "behind roller",
                                        "from baseline",
                                        "from far side",
                                        "with baseline",
                                        "behind drive",
                                        "from outside",
                                        "going middle",
                                        "on high side",
                                        "out of paint",
                                        "out of there",
                                        "past her man",
                                        "past his man",
                                        "side to side",
                                        "through zone",
                                        "under basket",
                                        "across face",
                                        "around horn",
                                        "around zone",
                                        "behind ball",
                                        "behind play",
                                        "behind roll",
                                        "behind them",
                                        "behind zone",
                                        "from behind",
                                        "from inside",
                                        "going right",
                                        "middle side",
                                        "off her hip",
                                        "off her man",
                                        "off his hip",
                                        "off his man",
                                        "on low side",
                                        "on top side",
                                        "out of lane",
                                        "out of post",
                                        "behind cut",
                                        "behind her",
                                        "behind him",
                                        "from above",
                                        "from below",
                                        "going left",
                                        "out of key",
                                        "out of way",
                                        "top to rim",
                                        "underneath",
                                        "behind it",
                                        "high side",
                                        "other way",
                                        "under rim",
                                        "under hoop",
                                        "low side",
                                        "over top",
                                        "top side",
                                        "in back",
                                        NULL};
static const char *const dribbles[] = {"one dribble",
                                       "two dribbles",
                                       "three dribbles",
                                       "one hard dribble",
                                       "two hard dribbles",
                                       "off dribble",
                                       "off one dribble",
                                       "off two dribbles",
                                       "on dribble",
                                       "off bounce",
                                       "with one dribble",
                                       "with two dribbles",
                                       "with two hard dribbles",
                                       "in one dribble",
                                       "in two dribbles",
                                       "with a hard dribble",
                                       NULL};

static void note_straight(struct cursor *c, struct span span)
{
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span,
                 "`%.*s` was left out: the way is the straight one", STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, "for another way write `past left block`, or two sentences");
}

/* through the lane, under the basket: what lies on the way; SPOT_COUNT: nothing that has a name. */
static enum spot way_by(struct str text)
{
    static const struct {
        const char *begins, *ends;
        enum spot spot;
    } rows[] = {
        {"through", "lane", SPOT_LANE}, {"through", "paint", SPOT_LANE},
        {"through", "key", SPOT_LANE},  {"thru", "lane", SPOT_LANE},
        {"thru", "paint", SPOT_LANE},   {"thru", "key", SPOT_LANE},
        {"down", "lane", SPOT_LANE},    {"down", "paint", SPOT_LANE},
        {"up", "lane", SPOT_LANE},      {"through", "middle", SPOT_LANE},
        {"under", "basket", SPOT_RIM},  {"under", "rim", SPOT_RIM},
        {"under", "hoop", SPOT_RIM},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct str end = str_of(rows[i].ends);
        bool ends = text.size >= end.size &&
                    str_equal((struct str){text.at + text.size - end.size, end.size}, end);
        if (ends && str_starts(text, rows[i].begins)) {
            return rows[i].spot;
        }
    }
    return SPOT_COUNT;
}

void note_way(struct predicate *p, struct span span)
{
    struct cursor *c = p->c;
    const struct sentence *s = p->s;
    enum spot via = way_by(cursor_text(c, span));
    bool moves = s->verb == VERB_CUTS || s->verb == VERB_GOES || s->verb == VERB_CLEARS ||
                 s->verb == VERB_RELOCATES;
    p->way_said = true;
    if (via == SPOT_COUNT || !moves || s->subject.count != 1 || p->via_span.end > 0) {
        note_straight(c, span);
        return;
    }
    p->via = via;
    p->via_span = span;
}

/* On which side the player is as the lines above have it; SIDE_NONE: they do not tell. */
static enum side side_known(const struct cursor *c, const struct who *who)
{
    above_list above = above_sentences(c, true);
    for (size_t i = above.count; i-- > 0;) {
        const struct sentence *s = above.at[i];
        if (same_who(&s->subject.at[0], who) && s->place) {
            return s->place->kind == PLACE_SPOT ? s->place->side : SIDE_NONE;
        }
    }
    for (size_t i = 0; c->top && i < c->top->forms.count; i++) {
        const struct form *form = &c->top->forms.at[i];
        const struct setting_form *setting = form->kind == FORM_SETTING ? form->setting : NULL;
        for (size_t k = 0; setting && k < setting->placings.count; k++) {
            const struct placing *placing = &setting->placings.at[k];
            const struct place *place = placing->kind == PLACING_WHO ? placing->place : NULL;
            if (place && same_who(&placing->who, who)) {
                return place->kind == PLACE_SPOT ? place->side : SIDE_NONE;
            }
        }
    }
    return SIDE_NONE;
}

static bool perimeter(enum spot spot)
{
    return spot == SPOT_TOP || spot == SPOT_WING || spot == SPOT_SLOT || spot == SPOT_CORNER ||
           spot == SPOT_SHORT_CORNER || spot == SPOT_HASH;
}

/* The straight way would lead elsewhere: by the lane to a spot outside, by the rim to one on the
 * other side. */
static bool leads_round(const struct predicate *p)
{
    const struct place *place = p->s->place;
    bool side = place && place->kind == PLACE_SIDE;
    if (!place || (!side && (place->kind != PLACE_SPOT || !perimeter(place->spot)))) {
        return false;
    }
    enum side to = place->side, from = side_known(p->c, &p->s->subject.at[0]);
    bool known = (to == SIDE_LEFT || to == SIDE_RIGHT) && (from == SIDE_LEFT || from == SIDE_RIGHT);
    bool opposite = to == SIDE_OPPOSITE && (from == SIDE_LEFT || from == SIDE_RIGHT);
    bool across = opposite || to == SIDE_WEAK || (known && to != from);
    return to == SIDE_OPPOSITE ? opposite : p->via == SPOT_LANE || across;
}

/* In the middle nothing is opposite: by its name. */
static void name_side(struct predicate *p)
{
    if (p->s->place->side == SIDE_OPPOSITE) {
        struct place *place = arena_new(p->c->arena, struct place);
        *place = *p->s->place;
        place->side = side_known(p->c, &p->s->subject.at[0]) == SIDE_LEFT ? SIDE_RIGHT : SIDE_LEFT;
        p->s->place = place;
    }
}

/* cuts through to the wing of his own side: by way of the lane, where the straight way to the other
 * side leads through it anyway. */
static void through_lane(struct predicate *p)
{
    const struct place *place = p->s->place;
    struct str words = str_of(p->phrase.words);
    bool through = str_equal(words, STR("cuts through")) || str_equal(words, STR("scoots through"));
    if (through && p->s->subject.count == 1 && place && place->kind == PLACE_SPOT &&
        place->side == side_known(p->c, &p->s->subject.at[0])) {
        p->via = SPOT_LANE;
        p->via_span = p->s->verb_span;
    }
}

void way_settled(struct predicate *p)
{
    struct cursor *c = p->c;
    struct sentence *s = p->s;
    if (p->via_span.end == 0) {
        through_lane(p);
    }
    struct span span = p->via_span;
    if (span.end == 0) {
        return;
    }
    p->via_span = (struct span){0};
    if (!leads_round(p) || s->ahead || verb_row(s->verb)->task != VERB_MOVE) {
        note_straight(c, span);
        return;
    }
    name_side(p);
    struct place *place = arena_new(c->arena, struct place);
    *place = (struct place){.kind = PLACE_SPOT, .spot = p->via, .span = span};
    struct sentence *ahead = arena_new(c->arena, struct sentence);
    *ahead = (struct sentence){.span = s->verb_span,
                               .subject = s->subject,
                               .verb = s->verb == VERB_CUTS ? VERB_CUTS : VERB_GOES,
                               .verb_span = s->verb_span,
                               .pace = s->pace,
                               .begins = s->begins,
                               .place = place};
    s->begins = NULL;
    s->ahead = ahead;
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, span,
                 "`%.*s`: it is run by way of %s, a sentence of its own",
                 STR_ARG(cursor_text(c, span)), p->via == SPOT_LANE ? "the lane" : "the rim");
    diag_help(c->diags, diag, "for the straight way leave it out");
}

/* drives left, going baseline: by which side of the one who guards the driver; -1: none of them. */
static int drive_way(const struct token *from, const struct token *end, bool side)
{
    static const struct entry words[] = {{"left", DRIVE_LEFT},
                                         {"right", DRIVE_RIGHT},
                                         {"baseline", DRIVE_BASELINE},
                                         {"middle", DRIVE_MIDDLE},
                                         {NULL, 0}};
    int way = -1;
    if (from + 1 < end && str_is(end[-1].text, "line") && str_is(end[-2].text, "end")) {
        return DRIVE_BASELINE; /* along the end line */
    }
    for (const struct entry *entry = words; entry->words && from < end; entry++) {
        if (str_is(end[-1].text, entry->words)) {
            return entry->value;
        }
        for (const struct token *at = from; side && at + 1 < end; at++) {
            if (str_is(at->text, "his") || str_is(at->text, "her")) { /* whose left? */
                return -1;
            }
            bool of_side = str_is(at->text, entry->words) && str_is(at[1].text, "side");
            way = of_side ? entry->value : way; /* on the baseline side, down the left side */
        }
    }
    return way;
}

const struct place *place_off_screen(struct cursor *c, enum drive_side way, struct span span)
{
    static const struct {
        enum spot spot;
        enum side side;
        const char *words;
    } ends[] = {[DRIVE_BASELINE] = {SPOT_SHORT_CORNER, SIDE_NONE, "the short corner"},
                [DRIVE_MIDDLE] = {SPOT_NAIL, SIDE_NONE, "the nail"},
                [DRIVE_LEFT] = {SPOT_ELBOW, SIDE_LEFT, "left elbow"},
                [DRIVE_RIGHT] = {SPOT_ELBOW, SIDE_RIGHT, "right elbow"}};
    struct place *place = arena_new(c->arena, struct place);
    *place = (struct place){
        .kind = PLACE_SPOT, .spot = ends[way].spot, .side = ends[way].side, .span = span};
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, span,
                                 "`%.*s` off a screen: %s was taken, where the turn ends",
                                 STR_ARG(cursor_text(c, span)), ends[way].words);
    diag_help(c->diags, diag, "to go elsewhere, name it: `1 dribbles off 5 to left wing`");
    return place;
}

/* going left, off a screen: with the ball to where the turn round it ends; without it anywhere on
 * that side could be meant. -1: reported. */
static int off_to_side(struct predicate *p, const struct token *from, const struct token *end,
                       int way)
{
    struct cursor *c = p->c;
    struct span span = {from->span.source, from->span.begin, end[-1].span.end};
    struct who holder;
    bool ball = p->s->subject.count == 1 && above_holder(c, &holder) &&
                same_who(&holder, &p->s->subject.at[0]);
    if (ball || p->s->verb == VERB_DRIVES_OFF) {
        cursor_take(c, from, end);
        p->s->place = place_off_screen(c, (enum drive_side)way, span);
        p->s->verb = p->s->verb == VERB_COMES ? VERB_DRIVES_OFF : p->s->verb;
        return 1;
    }
    static const char *const to[] = {[DRIVE_BASELINE] = "left short corner",
                                     [DRIVE_MIDDLE] = "the nail",
                                     [DRIVE_LEFT] = "left wing",
                                     [DRIVE_RIGHT] = "right wing"};
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, span, "`%.*s`: off a screen, where does it end?",
                     STR_ARG(cursor_text(c, span))),
              "write where to: `%.*s to %s`", STR_ARG(predicate_begun(p)), to[way]);
    return -1;
}

/* The way that ends before `end` changes what is run: taken for a drive; 1, 0: it is none that
 * does, -1: reported. */
static int way_runs(struct predicate *p, const struct token *from, const struct token *end,
                    bool placed)
{
    struct cursor *c = p->c;
    int way = drive_way(from, end, p->s->verb == VERB_DRIVES);
    bool off = verb_row(p->s->verb)->task == VERB_USE;
    if (way < 0 || placed || (p->s->verb != VERB_DRIVES && !off)) {
        return 0;
    }
    struct span span = {from->span.source, from->span.begin, end[-1].span.end};
    if (p->s->verb == VERB_DRIVES && p->s->drive != DRIVE_FREE) {
        return said_twice(p, span, "the way");
    }
    if (p->s->verb == VERB_DRIVES) {
        cursor_take(c, from, end);
        p->s->drive = (enum drive_side)way;
        return 1;
    }
    return off_to_side(p, from, end, way);
}

/* Somewhere to go, or for whom, is said still. */
static bool goes_on(const struct cursor *c)
{
    return word_among(c, place_words) || word_among(c, particle_words) || word_is(c, 0, "from") ||
           word_is(c, 0, "for") || word_is(c, 0, "off");
}

const char *const way_end_words[] = {"comes out", "come out", "pops out", "pop out",  "ends up",
                                     "end up",    "gets out", "goes out", "winds up", "lands",
                                     "out",       "stops",    NULL};

/* along the baseline, behind the zone, and comes out: the end is said still. */
static bool way_goes_on(const struct cursor *c)
{
    struct cursor trial = *c;
    while (take_among(&trial, passes_by)) {
    }
    bool more = trial.at > c->at && goes_on(&trial);
    take_mark(&trial, ',');
    take_words(&trial, "and");
    return goes_on(c) || more || word_among(&trial, way_end_words);
}

/* Nothing more is said of where to. */
static bool ends_after(const struct cursor *c)
{
    return part_ends(c) || word_is(c, 0, "past") || word_is(c, 0, "around") || clause_is(c);
}

/* left, high: which way, right before where to. 1: taken, 0: nothing of that. */
static int toward_side(struct predicate *p)
{
    static const char *const sides[] = {"left",       "right",  "high",  "low",    "wide",
                                        "baseline",   "middle", "under", "around", "behind",
                                        "underneath", "tight",  NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    if (p->s->place || !take_among(&trial, sides) || !take_among(&trial, place_words)) {
        return 0;
    }
    const struct token *to = trial.at - 1;
    const struct place *place = spot_read(&trial, true);
    cursor_back(&trial, mark);
    bool sideless = place && place->kind == PLACE_SPOT && spot_needs_side(place->spot) &&
                    place->side == SIDE_NONE;
    if (!place || (sideless && (word_is(c, 0, "left") || word_is(c, 0, "right")))) {
        return 0; /* right to the corner: which one is meant */
    }
    const struct token *from = past_fillers(c->at, c->end);
    int runs = way_runs(p, from, from + 1, p->s->verb != VERB_DRIVES);
    if (runs != 0) {
        return runs;
    }
    cursor_take(c, c->at, to);
    note_way(p, cursor_taken(c, from));
    return 1;
}

/* under the basket: no way that passes by, where nothing follows. */
static bool under_rim(const struct cursor *c, const struct token *from)
{
    static const char *const unders[] = {
        "under basket",   "under rim",       "under hoop", "underneath basket",
        "underneath rim", "underneath hoop", NULL};
    struct cursor said = *c;
    said.at = from;
    return word_among(&said, unders);
}

static int passing_by(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    struct cursor trial = *c;
    enum verb_task task = verb_row(p->s->verb)->task;
    bool ball = task == VERB_CARRY || task == VERB_USE || p->s->verb == VERB_GOES;
    static const char *const overs[] = {
        "over top",   "over defense",  "over her defender", "over his defender",
        "over front", "over her head", "over his head",     NULL};
    if (p->s->pass == PASS_LOB && task == VERB_PASS && take_among(c, overs)) {
        return 1; /* what a lob does */
    }
    if (task == VERB_PASS || task == VERB_SHOOT || task == VERB_GUARD) {
        return 0; /* over the top: how high a pass is */
    }
    bool taken = take_among(&trial, passes_by) || (ball && take_among(&trial, dribbles));
    /* the baseline side of 5 is a place; the top side block another */
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool more = taken && (word_is(&trial, 0, "of") || person_read(&trial, &who));
    cursor_back(c, mark);
    if (!taken || more) {
        return 0;
    }
    int runs = way_runs(p, past_fillers(from, c->end), trial.at, p->s->place || goes_on(&trial));
    if (runs != 0) {
        return runs;
    }
    c->at = trial.at;
    if (under_rim(c, from) && !p->s->place && stop_is(c)) { /* and it ends there */
        p->phrase.to = SPOT_RIM;
        return 1;
    }
    note_way(p, cursor_taken(c, from));
    return 1;
}

/* off x5, past 5's defender, in front of x3: a defender is gone by, and stands for no way. */
static int by_defender(struct predicate *p)
{
    static const char *const leads[] = {"in front of", "off of", "off",  "past", "behind",
                                        "around",      "by",     "over", NULL};
    struct cursor *c = p->c;
    const struct token *from = c->at;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool taken = verb_row(p->s->verb)->task == VERB_MOVE && take_among(&trial, leads) &&
                 person_read(&trial, &who) && who_defends(&who);
    const struct token *end = trial.at;
    cursor_back(c, mark);
    if (!taken) {
        return 0;
    }
    c->at = end;
    if (p->s->verb == VERB_CUTS && !p->s->place && str_is(from->text, "behind")) {
        p->s->verb = VERB_BACK_CUTS; /* cuts behind x2 */
        return 1;
    }
    note_way(p, cursor_taken(c, from));
    return 1;
}

/* What was said up to `to` is where it ends. */
static int ends_there(struct predicate *p, const struct token *to, struct place place)
{
    const struct token *from = p->c->at;
    p->c->at = to;
    place.span = cursor_taken(p->c, from);
    struct place *kept = arena_new(p->c->arena, struct place);
    *kept = place;
    p->s->place = kept;
    return 1;
}

/* flashes to the middle: on half a floor the middle of a defense is the nail. */
static int flashes_middle(struct predicate *p)
{
    static const char *const leads[] = {"to", "into", "in", "at", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    if (p->s->verb != VERB_FLASHES || p->s->place) {
        return 0;
    }
    take_among(&trial, leads);
    if (!take_words(&trial, "middle")) {
        return 0;
    }
    struct cursor again = trial; /* to the middle, at the nail */
    bool said = take_among(&again, leads) && place_starts(&again);
    if ((!said && !ends_after(&trial)) || above_full_floor(c)) {
        return 0;
    }
    const struct token *from = c->at;
    if (said) {
        c->at = trial.at;
        note_way(p, cursor_taken(c, from));
        return 1;
    }
    ends_there(p, trial.at, (struct place){.kind = PLACE_SPOT, .spot = SPOT_NAIL});
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, p->s->place->span,
                                 "the middle was taken as the nail");
    diag_help(c->diags, diag, "to go elsewhere, name it: `%.*s to the lane`",
              STR_ARG(predicate_begun(p)));
    return 1;
}

/* flashes high: to the high post on the own side. */
static int flashes_high(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    bool flashes = p->s->verb == VERB_FLASHES || (p->s->verb == VERB_GOES && c->speech);
    if (!flashes || p->s->place || !take_words(&trial, "high") || !ends_after(&trial)) {
        return 0;
    }
    ends_there(p, trial.at, (struct place){.kind = PLACE_SPOT, .spot = SPOT_HIGH_POST});
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, p->s->place->span,
                                 "`high` was taken as the high post");
    diag_help(c->diags, diag, "to go elsewhere, name it: `%.*s to the nail`",
              STR_ARG(predicate_begun(p)));
    return 1;
}

/* x3 sags off 3 into the lane: off his own man, to where who sags stands by rule. */
static int sag_way(struct predicate *p)
{
    static const char *const offs[] = {"off of", "off", "away from", "from", NULL};
    static const char *const leads[] = {"into",    "to",         "in",         "toward", "back to",
                                        "down to", "back in to", "down in to", NULL};
    static const char *const ends[] = {
        "lane", "paint", "middle of lane", "middle of paint", "middle", "key", "help", "gap", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who man, own;
    if (p->s->verb != VERB_SAGS || p->s->subject.count > 1) {
        return 0;
    }
    bool off = take_among(&trial, offs) || str_is(c->at[-1].text, "off");
    if (off && person_read(&trial, &man) && above_guarded(c, &p->s->subject.at[0], &own) &&
        same_who(&man, &own)) {
        c->at = trial.at;
        return 1;
    }
    cursor_back(c, mark);
    trial = *c;
    const struct token *from = c->at;
    if (!take_among(&trial, leads) || !take_among(&trial, ends)) {
        return 0;
    }
    c->at = trial.at;
    note_left_out(c, cursor_taken(c, from));
    return 1;
}

/* ices it down the side: where the ball is sent, which moves no defender. */
static int guard_way(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    bool down = c->at > c->first && str_is(c->at[-1].text, "down"); /* ices it down: the side */
    if (verb_row(p->s->verb)->task != VERB_GUARD || (!take_among(&trial, ways) && !down) ||
        !take_among(&trial, lines) || !ends_after(&trial)) {
        return 0;
    }
    c->at = trial.at;
    note_left_out(c, cursor_taken(c, from));
    return 1;
}

/* traps 1 at half court, in the corner: where they meet him. */
static int trap_where(struct predicate *p)
{
    static const char *const leads[] = {"at", "in", "on", "along", "near", "against", NULL};
    static const char *const near_lines[] = {
        "half court line", "half court", "timeline",      "line",
        "sideline",        "baseline",   "coffin corner", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    const struct token *from = c->at;
    bool traps = (p->s->verb == VERB_TRAPS || p->s->verb == VERB_DOUBLES) && !clause_is(c) &&
                 p->s->object.kind != WHO_NONE;
    if (!traps || !take_among(&trial, leads)) {
        return 0;
    }
    bool where = take_among(&trial, near_lines) || spot_read(&trial, true);
    const struct token *end = trial.at;
    cursor_back(c, mark);
    if (!where) {
        return 0;
    }
    c->at = end;
    note_meeting(c, cursor_taken(c, from));
    return 1;
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
    if (side < 0 || !ends_after(&trial)) {
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
    if (side < 0 || !ends_after(&trial)) {
        return 0;
    }
    return ends_there(
        p, trial.at,
        (struct place){.kind = PLACE_SPOT, .spot = SPOT_BLOCK, .side = (enum side)side});
}

/* drives left, dribbles to the right: with no place behind it. A drive goes to the rim, by that
 * side of whoever guards; a dribble, to that side. */
static int side_alone(struct predicate *p)
{
    static const struct entry sides[] = {{"back left", SIDE_LEFT},
                                         {"back right", SIDE_RIGHT},
                                         {"back to left", SIDE_LEFT},
                                         {"back to right", SIDE_RIGHT},
                                         {"left", SIDE_LEFT},
                                         {"right", SIDE_RIGHT},
                                         {"to left", SIDE_LEFT},
                                         {"to right", SIDE_RIGHT},
                                         {"hard left", SIDE_LEFT},
                                         {"hard right", SIDE_RIGHT},
                                         {"off left", SIDE_LEFT},
                                         {"off right", SIDE_RIGHT},
                                         {NULL, 0}};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    enum verb verb = p->s->verb;
    bool ball = verb_row(verb)->task == VERB_CARRY || verb == VERB_DRIVES_OFF ||
                verb == VERB_DRIBBLES_OFF || verb == VERB_COMES || verb == VERB_REJECTS;
    int side = ball && (!p->s->place || verb == VERB_DRIVES) ? take_entry(&trial, sides) : -1;
    if (side < 0 || !ends_after(&trial)) {
        return 0;
    }
    if (verb_row(verb)->place == DEFAULT_RIM || verb == VERB_COMES) {
        return way_runs(p, past_fillers(from, c->end), trial.at, false);
    }
    return ends_there(p, trial.at, (struct place){.kind = PLACE_SIDE, .side = (enum side)side});
}

/* drives off 5 going left: the same without speech. */
static int going_read(struct predicate *p)
{
    static const char *const goings[] = {"going left", "going right", "going baseline",
                                         "going middle", NULL};
    struct cursor trial = *p->c;
    const struct token *from = past_fillers(p->c->at, p->c->end);
    return take_among(&trial, goings) ? way_runs(p, from, trial.at, p->s->place || goes_on(&trial))
                                      : 0;
}

/* The first of these that stands here; in a plain line only the side of a drive. */
static int way_or_side(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {
        passing_by,     toward_side, by_defender, side_alone, across_alone, flashes_high,
        flashes_middle, trap_where,  guard_way,   sag_way,    posts_side};
    if (!p->c->speech) {
        return p->s->verb == VERB_DRIVES ? side_alone(p) : 0;
    }
    int found = 0;
    for (size_t i = 0; found == 0 && i < sizeof readers / sizeof *readers; i++) {
        found = readers[i](p);
    }
    return found;
}

/* down the lane, right down the middle: of a verb that goes to the rim, there. */
static bool down_to_rim(const struct cursor *c, enum verb verb)
{
    static const char *const downs[] = {"right down", "straight down", "back down", "down", NULL};
    static const char *const middles[] = {"lane",        "key", "paint", "pipe",
                                          "main street", "gut", NULL};
    struct cursor inner = *c;
    inner.watch = NULL;
    return take_among(&inner, downs) && word_among(&inner, middles) &&
           (verb == VERB_CUTS || verb == VERB_ROLLS || verb == VERB_DRIVES || verb == VERB_SLIPS ||
            ((verb == VERB_GOES || verb == VERB_COMES) && c->speech));
}

static const char *const baselines[] = {"baseline", "end line", "endline", NULL};

/* Baseline or sideline; NULL: none of them. */
static const struct place *line_place(struct cursor *c)
{
    const struct token *from = c->at;
    if (take_among(c, baselines)) {
        return place_new(c, (struct place){.kind = PLACE_SPOT, .spot = SPOT_BASELINE}, from);
    }
    const struct place *place = spot_read(c, true);
    return place && place->kind == PLACE_SPOT && place->spot == SPOT_SIDELINE ? place : NULL;
}

/* along the baseline, up the right sideline, runs the baseline: a line that is run along. */
static int line_read(struct predicate *p)
{
    static const char *const alongs[] = {"along",         "up",          "down",
                                         "right along",   "straight up", "right up",
                                         "straight down", "right down",  NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(p->s->verb, slots);
    bool takes = p->s->verb == VERB_DRIVES, article = c->at < c->end && c->at->filler;
    article = article || (c->speech && word_among(c, baselines) && word_is(c, 1, "to"));
    for (size_t i = 0; i < count; i++) {
        takes = takes || slots[i].letter == 'A';
    }
    bool whole = article && (p->s->verb == VERB_CUTS || p->s->verb == VERB_GOES);
    bool word = takes && take_among(&trial, alongs);
    const struct place *line = word || (takes && whole) ? line_place(&trial) : NULL;
    const struct token *end = trial.at;
    cursor_back(c, mark);
    if (!line) {
        return 0;
    }
    trial.at = end;
    bool goes_on = way_goes_on(&trial) || word_is(&trial, 0, "to");
    if ((!p->s->place && !goes_on) || (p->s->place && !word)) {
        return 0; /* where does it end? */
    }
    struct span span = cursor_taken(&trial, past_fillers(c->at, c->end));
    if (p->s->verb == VERB_DRIVES) {
        return line->spot == SPOT_BASELINE ? way_runs(p, c->at, end, false) : 0;
    }
    if (p->path_done) {
        return said_twice(p, span, "the way");
    }
    p->path_done = p->way_said = true;
    p->s->path = PATH_ALONG;
    p->s->path_place = line;
    cursor_take(c, c->at, end);
    return 1;
}

int along_read(struct predicate *p)
{
    int line = line_read(p);
    if (line != 0) {
        return line;
    }
    if (p->s->verb == VERB_DRIVES && word_is(p->c, 1, "middle") && !p->s->place &&
        !word_is(p->c, 2, "to") && !word_is(p->c, 2, "of")) {
        return 0; /* drives down the middle: which way, to the rim */
    }
    int going = going_read(p);
    if (going != 0) {
        return going;
    }
    if (past_defender(p) || through_gap(p)) {
        return 1;
    }
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    enum verb verb = p->s->verb;
    if (c->speech && verb_row(verb)->task == VERB_PASS && p->s->object.kind != WHO_NONE &&
        take_among(&trial, ways) && take_among(&trial, lines)) { /* throws it to 2 up the side */
        c->at = trial.at;
        note_left_out(c, cursor_taken(c, from));
        return 1;
    }
    trial = *c;
    int by = way_or_side(p);
    if (by != 0) {
        return by;
    }
    bool whole = word_among(c, baselines) && (verb == VERB_CUTS || verb == VERB_GOES) &&
                 cursor_next(c) > c->at;
    if ((p->s->place && !c->speech) || (!whole && !take_among(&trial, ways)) ||
        !take_among(&trial, lines)) {
        return 0;
    }
    struct span span = cursor_taken(&trial, from);
    int runs = verb == VERB_DRIVES ? way_runs(p, past_fillers(from, c->end), trial.at,
                                              p->s->place || goes_on(&trial))
                                   : 0;
    if (runs != 0) { /* down the left side of the lane */
        return runs;
    }
    if (word_is(&trial, 0, "to") || word_is(&trial, 0, "from") ||
        (c->speech &&
         (p->s->place || way_goes_on(&trial) || verb_row(verb)->place != DEFAULT_NONE))) {
        note_way(p, span);
        c->at = trial.at;
        return 1;
    }
    bool through = c->speech && word_is(c, 0, "through") && !stop_is(&trial);
    if (through && (word_is(c, 1, "lane") || word_is(c, 1, "key") || word_is(c, 1, "paint"))) {
        c->at = trial.at; /* through the lane and up to the slot */
        p->phrase.to = SPOT_LANE;
        return 1;
    }
    if (down_to_rim(c, verb)) {
        c->at = trial.at;
        p->phrase.to = SPOT_RIM;
        return 1;
    }
    bool right = false;
    for (const struct token *at = from; at < trial.at; at++) {
        right = right || token_is_word(at, "right");
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_PLACE_HALF, span, "`%.*s` is the way: where does it end?",
                     STR_ARG(cursor_text(c, span))),
              "write the place behind it: `%.*s %.*s to %s corner`", STR_ARG(predicate_begun(p)),
              STR_ARG(cursor_text(c, span)), right ? "right" : "left");
    return -1;
}
