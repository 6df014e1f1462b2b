/* SPDX-License-Identifier: MIT */
/* pair: phrases that are two sentences, written out as two. */
#include "language/words/grammar.h"

enum pair { PAIR_EXCHANGE, PAIR_GIVE_AND_GO, PAIR_FOLLOW, PAIR_DRIBBLE_HAND_OFF };
static const struct entry pairs[] = {
    {"exchange", PAIR_EXCHANGE},
    {"exchanges", PAIR_EXCHANGE},
    {"exchange places", PAIR_EXCHANGE},
    {"exchange spots", PAIR_EXCHANGE},
    {"swap", PAIR_EXCHANGE},
    {"swap places", PAIR_EXCHANGE},
    {"swap spots", PAIR_EXCHANGE},
    {"switch places", PAIR_EXCHANGE},
    {"switch spots", PAIR_EXCHANGE},
    {"exchange positions", PAIR_EXCHANGE},
    {"trade places", PAIR_EXCHANGE},
    {"trade spots", PAIR_EXCHANGE},
    {"interchange", PAIR_EXCHANGE},
    {"trade sides", PAIR_EXCHANGE},
    {"swap sides", PAIR_EXCHANGE},
    {"change sides", PAIR_EXCHANGE},
    {"change places", PAIR_EXCHANGE},
    {"trade positions", PAIR_EXCHANGE},
    {"gives and goes with", PAIR_GIVE_AND_GO},
    {"give and go with", PAIR_GIVE_AND_GO},
    {"follows the pass", PAIR_FOLLOW},
    {"follow the pass", PAIR_FOLLOW},
    {"follows his pass", PAIR_FOLLOW},
    {"follows her pass", PAIR_FOLLOW},
    {"follows their pass", PAIR_FOLLOW},
    {"follows", PAIR_FOLLOW},
    {"follow", PAIR_FOLLOW},
    {"follows it", PAIR_FOLLOW},
    {"follow it", PAIR_FOLLOW},
    {"chases it", PAIR_FOLLOW},
    {"chases his pass", PAIR_FOLLOW},
    {"chases her pass", PAIR_FOLLOW},
    {"dribble hands off to", PAIR_DRIBBLE_HAND_OFF},
    {"dribble hand-offs to", PAIR_DRIBBLE_HAND_OFF},
    {"dribble hand-off with", PAIR_DRIBBLE_HAND_OFF},
    {"dribble hand-off to", PAIR_DRIBBLE_HAND_OFF},
    {"hand-off with", PAIR_DRIBBLE_HAND_OFF},
    {"dho to", PAIR_DRIBBLE_HAND_OFF},
    {"dhos to", PAIR_DRIBBLE_HAND_OFF},
    {"dribbles over and hands off to", PAIR_DRIBBLE_HAND_OFF},
    {"dhos with", PAIR_DRIBBLE_HAND_OFF},
    {"dho with", PAIR_DRIBBLE_HAND_OFF},
    {"dhos it with", PAIR_DRIBBLE_HAND_OFF},
    {"dhos it to", PAIR_DRIBBLE_HAND_OFF},
    {"dribble hand-offs with", PAIR_DRIBBLE_HAND_OFF},
    {NULL, 0},
};

static const char *const for_it_back[] = {
    "for hand-off", "for handback", "for dho",        "to get hand-off",     "into hand-off",
    "for pitch",    "for it back",  "to get it back", "for return hand-off", NULL};

/* runs around her for the hand-off: after the pass to her. */
static bool runs_round(struct cursor *c)
{
    static const char *const rounds[] = {"runs around him",
                                         "runs around her",
                                         "goes around him",
                                         "goes around her",
                                         "cuts around him",
                                         "cuts around her",
                                         "comes around him",
                                         "comes around her",
                                         "runs off him",
                                         "runs off her",
                                         "runs by him",
                                         "runs by her",
                                         "goes to him",
                                         "goes to her",
                                         "runs to him",
                                         "runs to her",
                                         NULL};
    struct cursor trial = *c;
    if (!c->speech || !take_among(&trial, rounds) || !word_among(&trial, for_it_back)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* The words of a pair; a hand-off on the dribble is a noun too: goes into a DHO with 2. */
static int take_pair(struct cursor *c)
{
    static const char *const lights[] = {"goes into",
                                         "go into",
                                         "flows into",
                                         "flow into",
                                         "runs",
                                         "run",
                                         "makes",
                                         "make",
                                         "sets up",
                                         "set up",
                                         "dribbles into",
                                         "dribble into",
                                         "comes into",
                                         "come into",
                                         "gets into",
                                         "get into",
                                         "goes",
                                         "go",
                                         "starts with",
                                         "start with",
                                         "starts in",
                                         "takes it into",
                                         "take it into",
                                         "takes it in",
                                         "moves into",
                                         "move into",
                                         "gets in",
                                         "turns it into",
                                         "does",
                                         "do",
                                         "plays",
                                         "play",
                                         "initiates",
                                         "initiate",
                                         "takes into",
                                         "comes right into",
                                         "brings it into",
                                         "has",
                                         "have",
                                         "opens with",
                                         "begins with",
                                         "comes to",
                                         NULL};
    if (runs_round(c)) {
        return PAIR_FOLLOW;
    }
    int pair = word_is(c, 1, "ball") ? -1 : take_entry(c, pairs); /* follows the ball: a move */
    struct cursor trial = *c;
    if (pair >= 0 || !take_among(&trial, lights) ||
        take_entry(&trial, pairs) != PAIR_DRIBBLE_HAND_OFF) {
        return pair;
    }
    c->at = trial.at;
    return PAIR_DRIBBLE_HAND_OFF;
}

bool pair_is(const struct cursor *c)
{
    struct cursor trial = *c;
    return take_pair(&trial) >= 0;
}

bool pair_needs_ball(const struct cursor *c)
{
    struct cursor trial = *c;
    int pair = take_pair(&trial);
    return pair == PAIR_GIVE_AND_GO || pair == PAIR_DRIBBLE_HAND_OFF;
}

static void add(struct cursor *c, sentence_list *out, const who_list *subject, struct tie tie,
                struct sentence sentence, struct span verb)
{
    sentence.tie = tie;
    sentence.subject = *subject;
    sentence.verb_span = verb;
    sentence.span = span_join(
        tie.word != TIE_NONE || tie.then || tie.meanwhile ? tie.span : subject->at[0].span,
        c->at[-1].span);
    VEC_PUSH(c->arena, out, sentence);
}

/* The rim, or a place that hangs on this player. */
static const struct place *place_of(struct cursor *c, enum place_kind kind, struct who who)
{
    struct place *place = arena_new(c->arena, struct place);
    *place = (struct place){.kind = kind, .span = who.span};
    if (kind == PLACE_SPOT) {
        place->spot = SPOT_RIM;
    } else {
        place->who = who;
    }
    return place;
}

/* trade places out front: where the two are. */
static void where_they_are(struct cursor *c)
{
    static const char *const words[] = {"out front",
                                        "up top",
                                        "on top",
                                        "on back side",
                                        "on weak side",
                                        "on ball side",
                                        "on strong side",
                                        "on help side",
                                        "on the other side",
                                        "on that side",
                                        "on perimeter",
                                        "down low",
                                        "inside",
                                        "outside",
                                        "in post",
                                        "behind the ball",
                                        "on left side",
                                        "on right side",
                                        "on the left",
                                        "on the right",
                                        "away from ball",
                                        "over there",
                                        NULL};
    const struct token *from = c->at;
    if (c->speech && take_among(c, words)) {
        note_left_out(c, cursor_taken(c, from));
    }
}

bool trade_is(const struct cursor *c)
{
    struct cursor trial = *c;
    return take_pair(&trial) == PAIR_EXCHANGE;
}

static int exchange(struct cursor *c, const who_list *subject, struct tie tie, struct span verb,
                    sentence_list *out)
{
    where_they_are(c);
    bool two = subject->count == 2;
    for (size_t i = 0; two && i < 2; i++) {
        two = subject->at[i].kind == WHO_PLAYER || subject->at[i].kind == WHO_ROLE;
    }
    if (!two) {
        diag_help(c->diags, REFUSE(c, TEXT_LIST_UNFIT, verb, "two players exchange"),
                  "write `3 and 5 exchange`");
        return -1;
    }
    for (size_t i = 0; i < 2; i++) {
        who_list one = {NULL, 0, 0};
        VEC_PUSH(c->arena, &one, subject->at[i]);
        add(c, out, &one, tie,
            (struct sentence){.verb = VERB_FILLS,
                              .place = place_of(c, PLACE_SPOT_OF, subject->at[1 - i])},
            verb);
    }
    return 1;
}

void note_meeting(const struct cursor *c, struct span span)
{
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span,
                                 "`%.*s` was left out: they meet where the other one is",
                                 STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag,
              "to have it elsewhere, send the receiver there first: `2 goes to right wing`");
}

/* goes into a DHO with 2 on the wing: where they meet hangs on where the other one is. */
static void meeting_read(struct cursor *c, bool give)
{
    struct cursor trial = *c;
    const struct token *from = c->at;
    take_among(&trial, place_words);
    if (give || clause_is(c) || trial.at == c->at || !spot_read(&trial, true)) {
        return;
    }
    c->at = trial.at;
    note_meeting(c, cursor_taken(c, from));
}

static int with_player(struct cursor *c, const who_list *subject, struct tie tie, struct span verb,
                       enum pair pair, sentence_list *out)
{
    struct who who;
    struct tie none = {.word = TIE_NONE};
    bool person = person_read(c, &who) && (who.kind == WHO_PLAYER || who.kind == WHO_ROLE) &&
                  !same_who(&who, &subject->at[0]);
    if (!person) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_OBJECT_MISSING, cursor_span(c), "`%.*s` whom?",
                         STR_ARG(cursor_text(c, verb))),
                  "write the player's number: `1 passes to 4`");
        return -1;
    }
    bool give = pair == PAIR_GIVE_AND_GO;
    add(c, out, subject, tie,
        (struct sentence){.verb = give ? VERB_PASSES : VERB_DRIBBLES_AT, .object = who}, verb);
    struct sentence second =
        give ? (struct sentence){.verb = VERB_CUTS, .place = place_of(c, PLACE_SPOT, who)}
             : (struct sentence){.verb = VERB_HANDS_OFF, .object = who};
    meeting_read(c, give);
    add(c, out, subject, none, second, verb);
    if (give && c->speech) { /* said, it may well mean the pass back too */
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, verb,
                                     "`give and go`: the pass and the cut; no pass back is drawn");
        diag_help(c->diags, diag, "to have it, write it behind: `2 passes to 1`");
    }
    return 1;
}

static int follow(struct cursor *c, const who_list *subject, struct tie tie, struct span verb,
                  sentence_list *out)
{
    struct who who = above_receiver(c, &subject->at[0]);
    if (who.kind == WHO_NONE || who.kind == WHO_SPOT) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_POINTS_BACK, verb, "`%.*s`: this player has made no pass above",
                         STR_ARG(cursor_text(c, verb))),
                  "say to whom: `2 goes beside 4`");
        return -1;
    }
    add(c, out, subject, tie,
        (struct sentence){.verb = VERB_GOES, .place = place_of(c, PLACE_BESIDE, who)}, verb);
    if (c->speech && take_among(c, for_it_back)) { /* follows it for the hand-off */
        who_list one = {NULL, 0, 0};
        VEC_PUSH(c->arena, &one, who);
        add(c, out, &one, (struct tie){.word = TIE_NONE},
            (struct sentence){.verb = VERB_HANDS_OFF, .object = subject->at[0]}, verb);
    }
    return 1;
}

int pair_read(struct cursor *c, const who_list *subject, struct tie tie, sentence_list *out)
{
    const struct token *from = c->at;
    int pair = take_pair(c);
    if (pair < 0) {
        return 0;
    }
    struct span verb = cursor_taken(c, from);
    if (who_side(&subject->at[0]) == FOR_DEFENDERS) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_ATTACKER_ONLY, verb, "`%.*s` is an attacker's verb",
                         STR_ARG(cursor_text(c, verb))),
                  "a defender `switches with x3`, `recovers to 2`");
        return -1;
    }
    if (pair == PAIR_EXCHANGE) {
        return exchange(c, subject, tie, verb, out);
    }
    if (subject->count > 1) {
        diag_help(c->diags, REFUSE(c, TEXT_LIST_UNFIT, subject->at[1].span, "one player does this"),
                  "write one sentence for each");
        return -1;
    }
    return pair == PAIR_FOLLOW ? follow(c, subject, tie, verb, out)
                               : with_player(c, subject, tie, verb, (enum pair)pair, out);
}

/* The noun of what another one does for him: the hand-off, a down screen. */
static bool inverse_noun(struct cursor *c, struct sentence *out)
{
    static const char *const balls[] = {"ball", "it", NULL};
    static const char *const dribbled[] = {"dribble hand-off", "dho", NULL};
    static const char *const throws[] = {"inbounds", "inbound", NULL};
    struct phrase phrase;
    if (c->speech && take_among(c, throws)) { /* gets the inbounds */
        take_words(c, "pass");
        out->verb = VERB_INBOUNDS;
        return true;
    }
    if (c->speech && take_among(c, dribbled)) {
        out->verb = VERB_HANDS_OFF;
        out->spread = true; /* until it is read: on the dribble */
        return true;
    }
    if (take_among(c, balls)) {
        out->verb = VERB_PASSES;
        return true;
    }
    if (c->speech && take_words(c, "block")) { /* a screen, as it is called elsewhere */
        out->verb = VERB_SCREENS;
        return true;
    }
    if (!phrase_noun_read(c, &phrase) ||
        (verb_row(phrase.verb)->task != VERB_PASS && verb_row(phrase.verb)->task != VERB_EXCHANGE &&
         verb_row(phrase.verb)->task != VERB_SCREEN)) {
        return false;
    }
    out->verb = phrase.verb;
    out->pass = phrase.pass;
    out->screen = phrase.screen;
    return true;
}

/* Nothing more is said of whom he gets it from. */
static bool from_nobody(const struct cursor *c)
{
    static const char *const leads[] = {"at", "on", "in", NULL};
    return part_ends(c) || word_among(c, leads);
}

/* receives, and nothing is said of what. */
static bool receives_is(const struct cursor *c, const struct token *from)
{
    static const char *const words[] = {"receives", "receive", NULL};
    struct cursor verb = *c;
    verb.at = from;
    return c->speech && word_among(&verb, words) && from_nobody(c);
}

/* receives from 1: the ball. */
static bool receives_from(const struct cursor *c, const struct token *from)
{
    static const char *const words[] = {"receives", "receive", NULL};
    struct cursor verb = *c;
    verb.at = from;
    return c->speech && word_among(&verb, words) && word_is(c, 0, "from");
}

/* comes and gets it: as near to a hand-off as to a pass. */
static bool comes_and(const struct cursor *c, const struct token *from)
{
    static const char *const goes[] = {"comes", "come", "goes", "go",   "runs", "run", "steps",
                                       "up",    "over", "back", "down", "out",  NULL};
    struct cursor before = *c;
    bool joined =
        from > c->first + 1 && (str_is(from[-1].text, "and") || str_is(from[-1].text, "to"));
    before.at = from - (joined ? 2 : 0);
    return before.at < from && word_among(&before, goes);
}

/* dribbles at 2, 2 gets it. */
static bool dribbled_at(const struct cursor *c, const struct who *taker, const struct who *by)
{
    above_list list = above_sentences(c, false);
    const struct sentence *last = list.count > 0 ? list.at[list.count - 1] : NULL;
    return last && last->verb == VERB_DRIBBLES_AT && same_who(&last->object, taker) &&
           same_who(&last->subject.at[0], by);
}

/* on the way by, going middle: how he comes, and which way he drives on; -1: he does not. */
static bool take_taker_way(struct cursor *c)
{
    static const char *const nears[] = {"on the way by", "on the run", "on the move", "going by",
                                        "coming by",     "on the fly", NULL};
    bool near = take_among(c, nears);
    return near || word_is(c, 0, "going");
}

/* gets it, receives it: from whoever has it, who is not he himself. */
static bool handed_over(struct cursor *c, const struct sentence *what, const struct token *from,
                        struct who *by)
{
    static const char *const gets[] = {"gets", "get", "receives", "receive", NULL};
    static const char *const takes[] = {"takes", "take", NULL};
    struct cursor verb = *c, ways = *c;
    struct who holder;
    verb.at = from;
    bool passed = what->verb == VERB_PASSES || what->verb == VERB_INBOUNDS;
    if (!c->speech || !passed || !above_holder(c, &holder) || !c->doer ||
        same_who(&holder, c->doer)) {
        return false;
    }
    bool near = dribbled_at(c, c->doer, &holder);
    bool end = from_nobody(c) || (near && take_taker_way(&ways));
    if (!end || (!word_among(&verb, gets) && !(near && word_among(&verb, takes))) ||
        (!near && comes_and(c, past_fillers(from, c->end)))) {
        return false;
    }
    *by = holder;
    by->span = cursor_taken(c, from);
    return true;
}

static bool take_inverse(struct cursor *c, struct sentence *out, struct who *by)
{
    static const char *const gets[] = {
        "gets",         "get",         "takes", "take",    "receives",
        "receive",      "catches",     "catch", "accepts", "accept",
        "comes to get", "come to get", "uses",  "use",     NULL};
    static const char *const from[] = {"back from", "right back from", "from", NULL};
    static const char *const back[] = {"right back", "straight back", "back", NULL};
    static const char *const off[] = {"back off of", "back off", "off of", "off", NULL};
    struct cursor_mark mark = cursor_mark(c);
    bool got = take_among(c, gets) || (c->speech && take_words(c, "for")); /* for the lob from 2 */
    bool alone = got && receives_is(c, mark.at);
    bool begun = alone || (got && inverse_noun(c, out)) || receives_from(c, mark.at);
    bool passed = begun && take_among(c, from);
    if (begun && !passed && out->verb == VERB_PASSES && out->pass == PASS_PLAIN &&
        take_among(c, off)) { /* gets it off 4: out of the hands */
        out->verb = VERB_HANDS_OFF;
        passed = true;
    }
    struct cursor hands = *c;
    if (begun && !passed && c->speech && out->verb == VERB_PASSES && take_words(&hands, "out of") &&
        owner_read(&hands, by) && take_words(&hands, "hands")) {
        out->verb = VERB_HANDS_OFF;
        c->at = hands.at;
        return true;
    }
    passed = passed || (begun && out->verb == VERB_HANDS_OFF && take_among(c, off));
    if (passed && out->verb == VERB_HANDS_OFF && c->speech && owner_read(c, by)) {
        static const char *const hips[] = {"hip", "hands", "hand", "shoulder", NULL};
        if (take_among(c, hips)) { /* takes it off 4's hip */
            return true;
        }
    }
    if (begun && !passed && c->speech && out->verb == VERB_PASSES && take_among(c, back) &&
        !take_among(c, place_words) && above_holder(c, by)) { /* gets it right back */
        by->span = cursor_taken(c, mark.at);
        return true;
    }
    if (begun && !passed && handed_over(c, out, mark.at, by)) {
        return true;
    }
    bool found = passed && person_read(c, by) &&
                 (by->kind == WHO_PLAYER || by->kind == WHO_ROLE || by->kind == WHO_COACH);
    if (!found) {
        cursor_back(c, mark);
    }
    return found;
}

bool inverse_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct sentence s = {.verb = VERB_PASSES};
    struct who by;
    bool found = take_inverse(&trial, &s, &by);
    cursor_back(&trial, mark);
    return found;
}

/* follows his pass and takes it back: beside the one who has it, it is a hand-off. */
static bool beside_is(const sentence_list *out, const who_list *subject, const struct who *by)
{
    const struct sentence *last = out->count > 0 ? &out->at[out->count - 1] : NULL;
    return last && last->verb == VERB_GOES && last->place && last->place->kind == PLACE_BESIDE &&
           same_who(&last->place->who, by) && same_who(&last->subject.at[0], &subject->at[0]);
}

int inverse_read(struct cursor *c, const who_list *subject, struct tie tie, sentence_list *out)
{
    const struct token *from = c->at;
    struct sentence s = {.verb = VERB_PASSES};
    struct who by;
    if (who_side(&subject->at[0]) == FOR_DEFENDERS || subject->count > 1 ||
        !take_inverse(c, &s, &by)) {
        return 0;
    }
    struct span verb = cursor_taken(c, from);
    who_list one = {NULL, 0, 0};
    VEC_PUSH(c->arena, &one, by);
    if (same_who(&by, &subject->at[0])) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_OBJECT_UNFIT, by.span, "`%.*s` does this: it takes another player",
                         STR_ARG(cursor_text(c, by.span))),
                  "write the other player's number");
        return -1;
    }
    if (by.kind == WHO_PLAYER && by.span.begin == past_fillers(from, c->end)->span.begin) {
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, verb,
                     "from whom is not written: %d, who has the ball, was taken", by.number);
        diag_help(c->diags, diag, "to have another, write who passes: `%d passes to %.*s`",
                  by.number, STR_ARG(subject_words(c, subject)));
    }
    s.object = subject->at[0];
    if (s.spread) {
        s.spread = false;
        add(c, out, &one, tie, (struct sentence){.verb = VERB_DRIBBLES_AT, .object = s.object},
            verb);
        tie = (struct tie){.word = TIE_NONE};
    }
    if (s.verb == VERB_PASSES && s.pass == PASS_PLAIN &&
        (beside_is(out, subject, &by) || dribbled_at(c, &subject->at[0], &by))) {
        s.verb = VERB_HANDS_OFF;
    }
    struct who screener, second;
    enum screen_kind kind;
    if (s.verb == VERB_HANDS_OFF && c->speech &&
        above_screen_here(c, &subject->at[0], &screener, &kind,
                          &second)) { /* off it, into the hand-off */
        add(c, out, subject, tie,
            (struct sentence){.verb = VERB_COMES,
                              .object = screener,
                              .object2 = second.kind == WHO_NONE ? NULL : who_keep(c, second),
                              .place = place_of(c, PLACE_BESIDE, by)},
            verb);
        tie = (struct tie){.word = TIE_NONE};
    }
    static const struct entry ways[] = {{"going middle", DRIVE_MIDDLE},
                                        {"going baseline", DRIVE_BASELINE},
                                        {"going left", DRIVE_LEFT},
                                        {"going right", DRIVE_RIGHT},
                                        {NULL, 0}};
    int way = -1;
    if (s.verb == VERB_HANDS_OFF && c->speech) {
        take_taker_way(c);
        way = take_entry(c, ways);
    }
    struct cursor at = *c; /* on the wing */
    take_among(&at, place_words);
    const struct place *place = s.verb == VERB_HANDS_OFF ? NULL : spot_read(&at, true);
    if (place) {
        s.place = place;
        c->at = at.at;
    }
    add(c, out, &one, tie, s, verb);
    out->at[out->count - 1].span = span_join(subject->at[0].span, c->at[-1].span);
    if (way >= 0) { /* and drives on */
        add(c, out, subject, (struct tie){.word = TIE_NONE},
            (struct sentence){.verb = VERB_DRIVES, .drive = (enum drive_side)way}, verb);
    }
    return 1;
}
