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

void pair_add(struct cursor *c, sentence_list *out, const who_list *subject, struct tie tie,
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

/* trade places out front: where the two are. */
static void where_they_are(struct cursor *c)
{
    static const char *const words[] = {"out front",       "at top",

                                        "up top",          "on top",
                                        "on back side",    "on weak side",
                                        "on ball side",    "on strong side",
                                        "on help side",    "on the other side",
                                        "on that side",    "on perimeter",
                                        "down low",        "inside",
                                        "outside",         "in post",
                                        "behind the ball", "on left side",
                                        "on right side",   "on the left",
                                        "on the right",    "away from ball",
                                        "over there",      NULL};
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
        pair_add(c, out, &one, tie,
                 (struct sentence){.verb = VERB_FILLS,
                                   .place = place_by(c->arena, PLACE_SPOT_OF, subject->at[1 - i])},
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
    pair_add(c, out, subject, tie,
             (struct sentence){.verb = give ? VERB_PASSES : VERB_DRIBBLES_AT, .object = who}, verb);
    struct sentence second =
        give ? (struct sentence){.verb = VERB_CUTS,
                                 .place = place_keep(c->arena, (struct place){.kind = PLACE_SPOT,
                                                                              .spot = SPOT_RIM,
                                                                              .span = who.span})}
             : (struct sentence){.verb = VERB_HANDS_OFF, .object = who};
    meeting_read(c, give);
    pair_add(c, out, subject, none, second, verb);
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
                  "say where to, `%.*s goes beside 4`; behind somebody's cut: `after 4 cuts, %.*s "
                  "cuts to the rim`",
                  STR_ARG(subject_words(c, subject)), STR_ARG(subject_words(c, subject)));
        return -1;
    }
    static const char *const screens[] = {"with screen",
                                          "with ball screen",
                                          "with pick",
                                          "into ball screen",
                                          "into screen",
                                          "to ball screen",
                                          "to set screen",
                                          "to set ball screen",
                                          "for ball screen",
                                          "and sets ball screen",
                                          "and ball screens",
                                          "to screen",
                                          NULL};
    struct cursor screen = *c;
    if (c->speech && take_among(&screen, screens)) { /* follows it with a screen */
        take_among(&screen, (const char *const[]){"for him", "for her", NULL});
        c->at = screen.at;
        pair_add(c, out, subject, tie,
                 (struct sentence){.verb = VERB_SCREENS, .screen = SCREEN_BALL, .object = who},
                 verb);
        return 1;
    }
    pair_add(c, out, subject, tie,
             (struct sentence){.verb = VERB_GOES, .place = place_by(c->arena, PLACE_BESIDE, who)},
             verb);
    if (c->speech && take_among(c, for_it_back)) { /* follows it for the hand-off */
        who_list one = {NULL, 0, 0};
        VEC_PUSH(c->arena, &one, who);
        pair_add(c, out, &one, (struct tie){.word = TIE_NONE},
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
