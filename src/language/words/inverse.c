/* SPDX-License-Identifier: MIT */
/* inverse: a sentence of the one for whom something is done: gets the ball from 1, takes the
 * hand-off from 5, gets a down screen from 4. It is written as what that one does. */
#include "language/words/grammar.h"

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

/* on the way by, going middle: how he comes; the way he drives on is left. False: neither. */
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

/* 1's pass, 5's hand-off: whose it is, is from whom he gets it. */
static bool owned_pass(struct cursor *c, struct sentence *out, struct who *by)
{
    struct cursor own = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct sentence s = *out;
    bool read = owner_read(&own, by) && by->kind == WHO_PLAYER && inverse_noun(&own, &s) &&
                verb_row(s.verb)->task != VERB_SCREEN && own.refusals == mark.refusals;
    if (!read) {
        cursor_back(c, mark);
        return false;
    }
    *out = s;
    c->at = own.at;
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
    if (got && owned_pass(c, out, by)) {
        return true;
    }
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

/* He takes it from himself: reported. */
static bool of_himself(struct cursor *c, const struct who *by, const struct who *taker)
{
    if (!same_who(by, taker)) {
        return false;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_OBJECT_UNFIT, by->span, "`%.*s` does this: it takes another player",
                     STR_ARG(cursor_text(c, by->span))),
              "write the other player's number");
    return true;
}

/* From whom is not written: the one who has the ball. */
static void note_from(struct cursor *c, const struct who *by, const who_list *subject,
                      struct span verb)
{
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, verb,
                 "from whom is not written: %d, who has the ball, was taken", by->number);
    diag_help(c->diags, diag, "to have another, write who passes: `%d passes to %.*s`", by->number,
              STR_ARG(subject_words(c, subject)));
}

/* Off the screen that was set for him in this line, into the hand-off: a sentence of its own. */
static bool off_screen_first(struct cursor *c, const who_list *subject, struct tie tie,
                             const struct who *by, struct span verb, sentence_list *out)
{
    struct who screener, second;
    enum screen_kind kind;
    if (!c->speech || !above_screen_here(c, &subject->at[0], &screener, &kind, &second)) {
        return false;
    }
    struct sentence comes = {.verb = VERB_COMES,
                             .object = screener,
                             .object2 = second.kind == WHO_NONE ? NULL : who_keep(c, second),
                             .place = place_by(c->arena, PLACE_BESIDE, *by)};
    pair_add(c, out, subject, tie, comes, verb);
    return true;
}

/* on the wing: where it is done; of a screen, out to the wing: where he ends who uses it (`*used`).
 * NULL: neither is said. */
static const struct place *inverse_where(struct cursor *c, enum verb verb, bool *used)
{
    static const char *const ends[] = {"to", "out to", "over to", "up to", "down to", "into", NULL};
    struct cursor trial = *c;
    *used = verb_row(verb)->task == VERB_SCREEN && take_among(&trial, ends);
    if (!*used) {
        take_among(&trial, place_words);
    }
    const struct place *place = verb == VERB_HANDS_OFF ? NULL : spot_read(&trial, true);
    c->at = place ? trial.at : c->at;
    return place;
}

/* Takes the hand-off going middle: the way he drives on; -1: none. */
static int drives_on_by(struct cursor *c, enum verb verb)
{
    static const struct entry ways[] = {{"going middle", DRIVE_MIDDLE},
                                        {"going baseline", DRIVE_BASELINE},
                                        {"going left", DRIVE_LEFT},
                                        {"going right", DRIVE_RIGHT},
                                        {NULL, 0}};
    if (verb != VERB_HANDS_OFF || !c->speech) {
        return -1;
    }
    take_taker_way(c);
    return take_entry(c, ways);
}

/* Where he ends who uses it: said; off the ball somewhere, or with it at the rim; or in the clause
 * that goes on with him. False: reported. */
static bool use_end(struct cursor *c, const struct who *taker, const struct who *by, bool said,
                    bool *use)
{
    static const char *const tos[] = {"to", "for", NULL};
    struct cursor next = *c;
    next.watch = NULL;
    bool on = (take_joint(&next) || take_among(&next, tos)) && !subject_verb_is(&next) &&
              verb_begins(&next);
    bool holds = above_holds(c, taker);
    *use = !on && (said || holds);
    if (on || *use) {
        return true;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_PLACE_MISSING, cursor_span(c),
                     "to use the screen `%.*s comes off %.*s`: to which place?",
                     STR_ARG(cursor_text(c, taker->span)), STR_ARG(cursor_text(c, by->span))),
              "name the place: `%.*s comes off %.*s to left wing`; a curl goes to the rim",
              STR_ARG(cursor_text(c, taker->span)), STR_ARG(cursor_text(c, by->span)));
    return false;
}

/* The screen that he uses stands above already. */
static bool set_above(const struct cursor *c, const struct who *taker, const struct who *by)
{
    struct who screener, second;
    bool several;
    return above_waiting_screen(c, taker, &screener, &second, &several) && same_who(&screener, by);
}

int inverse_read(struct cursor *c, const who_list *subject, struct tie tie, sentence_list *out)
{
    static const struct tie none = {.word = TIE_NONE};
    static const char *const uses[] = {"uses", "use", NULL};
    const struct token *from = c->at;
    const struct who *taker = &subject->at[0];
    struct sentence s = {.verb = VERB_PASSES};
    struct who by;
    bool says_use = word_among(c, uses);
    if (who_side(taker) == FOR_DEFENDERS || subject->count > 1 || !take_inverse(c, &s, &by)) {
        return 0;
    }
    struct span verb = cursor_taken(c, from);
    who_list one = {NULL, 0, 0};
    VEC_PUSH(c->arena, &one, by);
    if (of_himself(c, &by, taker)) {
        return -1;
    }
    if (by.kind == WHO_PLAYER && by.span.begin == past_fillers(from, c->end)->span.begin) {
        note_from(c, &by, subject, verb);
    }
    s.object = *taker;
    if (s.spread) {
        s.spread = false;
        struct sentence comes = {.verb = VERB_DRIBBLES_AT, .object = s.object};
        pair_add(c, out, &one, tie, comes, verb);
        tie = none;
    }
    if (s.verb == VERB_PASSES && s.pass == PASS_PLAIN &&
        (beside_is(out, subject, &by) || dribbled_at(c, taker, &by))) {
        s.verb = VERB_HANDS_OFF;
    }
    if (s.verb == VERB_HANDS_OFF && off_screen_first(c, subject, tie, &by, verb, out)) {
        tie = none;
    }
    int way = drives_on_by(c, s.verb);
    bool used;
    const struct place *place = inverse_where(c, s.verb, &used);
    s.place = place && !used ? place : NULL;
    bool use = place && used;
    says_use = says_use && verb_row(s.verb)->task == VERB_SCREEN;
    if (says_use && !use_end(c, taker, &by, use, &use)) {
        return -1;
    }
    if (!says_use || !use || !set_above(c, taker, &by)) {
        pair_add(c, out, &one, tie, s, verb);
        tie = none;
    }
    if (use) {
        enum verb with_ball = place && used ? VERB_DRIBBLES_OFF : VERB_DRIVES_OFF;
        struct sentence off = {.verb = above_holds(c, taker) ? with_ball : VERB_COMES,
                               .object = by,
                               .place = used ? place : NULL};
        pair_add(c, out, subject, tie, off, verb);
    }
    out->at[out->count - 1].span = span_join(taker->span, c->at[-1].span);
    if (way >= 0) { /* and drives on */
        struct sentence drives = {.verb = VERB_DRIVES, .drive = (enum drive_side)way};
        pair_add(c, out, subject, none, drives, verb);
    }
    return 1;
}
