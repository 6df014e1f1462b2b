/* SPDX-License-Identifier: MIT */
/* subject: who acts, and whether a verb follows. */
#include "language/words/grammar.h"

enum phrase_side who_side(const struct who *who)
{
    return who_defends(who) ? FOR_DEFENDERS : FOR_ATTACKERS;
}

/* goes out, sprints over: how somebody comes to where the verb happens. */
static const struct entry goings[] = {
    {"steps", PACE_VERB},        {"step", PACE_VERB},
    {"goes", PACE_VERB},         {"go", PACE_VERB},
    {"runs", PACE_VERB},         {"run", PACE_VERB},
    {"comes", PACE_VERB},        {"come", PACE_VERB},
    {"moves", PACE_VERB},        {"move", PACE_VERB},
    {"turns", PACE_VERB},        {"turn", PACE_VERB},
    {"slides", PACE_VERB},       {"slide", PACE_VERB},
    {"heads", PACE_VERB},        {"head", PACE_VERB},
    {"pinches", PACE_VERB},      {"pinch", PACE_VERB},
    {"opens up", PACE_VERB},     {"open up", PACE_VERB},
    {"spins around", PACE_VERB}, {"turns around", PACE_VERB},
    {"pivots", PACE_VERB},       {"rips", PACE_VERB},
    {"rip", PACE_VERB},          {"drops", PACE_VERB},
    {"drop", PACE_VERB},         {"dips", PACE_VERB},
    {"dip", PACE_VERB},          {"climbs", PACE_VERB},
    {"climb", PACE_VERB},        {"works", PACE_VERB},
    {"work", PACE_VERB},         {"circles", PACE_VERB},
    {"circle", PACE_VERB},       {"swings around", PACE_VERB},
    {"swing around", PACE_VERB}, {"jogs", PACE_JOG},
    {"jog", PACE_JOG},           {"walks", PACE_WALK},
    {"walk", PACE_WALK},         {"sprints", PACE_SPRINT},
    {"sprint", PACE_SPRINT},     {"hustles", PACE_SPRINT},
    {"hustle", PACE_SPRINT},     {"races", PACE_SPRINT},
    {"race", PACE_SPRINT},       {"rushes", PACE_SPRINT},
    {"rush", PACE_SPRINT},       {NULL, 0},
};

bool take_joint(struct cursor *c)
{
    bool joined = take_mark(c, ',');
    joined = take_words(c, "and") || joined;
    return take_words(c, "then") || joined;
}

bool use_follows(const struct cursor *c)
{
    struct cursor trial = *c;
    struct phrase phrase;
    return phrase_read(&trial, FOR_ATTACKERS, &phrase) &&
           (verb_row(phrase.verb)->task == VERB_USE ||
            (verb_sibling(phrase.verb, "off") != VERB_COUNT && word_is(&trial, 0, "off")));
}

/* waits for the screen, then curls: a use waits for it by itself; a plain cut would not. */
static bool take_wait(struct cursor *c)
{
    static const char *const words[] = {"waits for screen", "wait for screen", "waits on screen",
                                        "wait on screen", NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, words)) {
        return false;
    }
    const struct token *behind = trial.at;
    bool uses = take_joint(&trial) && use_follows(&trial);
    c->at = uses ? behind : c->at;
    return uses;
}

/* gets it and drives: where another has it, that is a pass of his. */
static bool gets_from_another(const struct cursor *c)
{
    static const char *const gets[] = {"gets", "get", "receives", "receive", NULL};
    struct who holder;
    return c->doer && word_among(c, gets) && above_holder(c, &holder) &&
           !same_who(&holder, c->doer);
}

/* catches the ball, rips through, waits for the screen: what goes before by itself. */
static bool take_before(struct cursor *c)
{
    static const char *const balls[] = {"it", "ball", "pass", NULL};
    static const char *const words[] = {"rips through",
                                        "rip through",
                                        "rips it",
                                        "rips",
                                        "rip",
                                        "keeps it",
                                        "keeps",
                                        "keep",
                                        "crosses over",
                                        "cross over",
                                        "hesitates",
                                        "hesitate",
                                        "pivots",
                                        "pivot",
                                        "spins",
                                        "spin",
                                        "changes direction",
                                        "changes speed",
                                        "gets ball",
                                        "gets it",
                                        "get ball",
                                        "get it",
                                        "reads it",
                                        "reads screen",
                                        "reads his man",
                                        "reads her man",
                                        "reads his defender",
                                        "puts his head down",
                                        "puts her head down",
                                        "put his head down",
                                        "lowers his shoulder",
                                        "lowers her shoulder",
                                        "turns on the jets",
                                        "sets his man up",
                                        "sets her man up",
                                        "sets up his man",
                                        "sets up her man",
                                        "sets him up",
                                        "loses his man",
                                        "loses her man",
                                        "takes his man low",
                                        "takes her man low",
                                        "takes him low",
                                        "ducks under",
                                        "plants foot",
                                        "plants his foot",
                                        "plants her foot",
                                        "plant foot",
                                        "plants his outside foot",
                                        "plants her outside foot",
                                        "changes pace",
                                        "turns middle",
                                        "turns baseline",
                                        "steps through",
                                        "gathers",
                                        "waves off hand-off",
                                        "refuses hand-off",
                                        "waves off screen",
                                        "waves him off",
                                        "turns",
                                        "faces up",
                                        "calls for it",
                                        "shows himself",
                                        "shows herself",
                                        "show himself",
                                        "show herself",
                                        "calls for ball",
                                        "sees it",
                                        "walks him down",
                                        "walks his man down",
                                        "walks her man down",
                                        "walks her down",
                                        "takes him down",
                                        "takes his man down",
                                        "takes her man down",
                                        "squares up",
                                        "looks inside",
                                        "looks in",
                                        "looks opposite",
                                        "looks up",
                                        "sets his feet",
                                        "sets her feet",
                                        "sets feet",
                                        "receives it",
                                        "receives ball",
                                        "receives pass",
                                        NULL};
    static const char *const catches[] = {"catches", "catch", NULL};
    static const char *const looks[] = {"looks at", "look at", NULL};
    if (take_among(c, catches)) {
        take_among(c, balls);
        struct cursor at = *c;
        bool place = c->speech && spot_behind(&at, place_words) &&
                     word_is(&at, 0, "and"); /* catches on the wing and drives */
        c->at = place ? at.at : c->at;
        return true;
    }
    struct cursor trial = *c;
    struct who who;
    if (take_among(&trial, looks) && person_read(&trial, &who)) { /* looks at 2 and hits 4 */
        c->at = trial.at;
        return true;
    }
    return (!gets_from_another(c) && take_among(c, words)) || take_wait(c);
}

/* comes to screen; but to the post, to front of the rim, to help side is where to. */
static bool take_to(struct cursor *c)
{
    static const char *const words[] = {"to", "into", NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, words) || trial.at >= trial.end || str_is(trial.at->text, "the")) {
        return false;
    }
    c->at = trial.at;
    return !spot_here(&trial);
}

static bool verb_follows(const struct cursor *c)
{
    struct cursor verb = *c;
    struct phrase phrase;
    return phrase_read(&verb, FOR_ANYONE, &phrase);
}

/* catches it and, spins and: right before a verb. `*moves`: with a move of its own. */
static bool take_done(struct cursor *c, bool *moves)
{
    static const char *const made[] = {"sets",  "loses",     "ducks",  "spins", "spin", "crosses",
                                       "cross", "hesitates", "pivots", "pivot", "rips", "hesitate",
                                       "walks", "takes",     "looks",  "look",  NULL};
    struct cursor trial = *c;
    bool move = word_among(&trial, made);
    bool before = take_before(&trial) && take_joint(&trial) && verb_follows(&trial);
    c->at = before ? trial.at : c->at;
    *moves = *moves || (before && move);
    return before;
}

/* goes down and screens: a screen by the way to it. */
static enum screen_kind slant_here(const struct cursor *c)
{
    static const struct entry slants[] = {{"down", SCREEN_DOWN},
                                          {"across", SCREEN_CROSS},
                                          {"away", SCREEN_AWAY},
                                          {"opposite", SCREEN_AWAY},
                                          {NULL, 0}};
    struct cursor trial = *c;
    trial.watch = NULL;
    int slant = take_entry(&trial, slants);
    return slant < 0 ? SCREEN_PLAIN : (enum screen_kind)slant;
}

/* steps in and pops back out: one cut, and no way to something else. */
static bool v_cuts(const struct cursor *c)
{
    struct cursor trial = *c;
    struct phrase phrase;
    trial.watch = NULL;
    return phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase.verb == VERB_V_CUTS;
}

/* goes out and, comes over to: right before a verb. */
static bool take_way_to(struct cursor *c, struct run_in *in)
{
    static const char *const lines[] = {"lane", "key", "paint", "floor", "court", NULL};
    static const char *const ways[] = {"in", "together", "under", "over", "opposite", NULL};
    int going = take_entry(c, goings);
    bool way = false;
    enum screen_kind slant = SCREEN_PLAIN;
    while (going >= 0) {
        enum screen_kind here = slant_here(c);
        if (!take_among(c, particle_words) && !take_among(c, ways)) {
            break;
        }
        slant = here != SCREEN_PLAIN ? here : slant;
        way = true;
    }
    if (way) { /* goes across the lane and screens */
        take_among(c, lines);
    }
    if (going >= 0 && c->speech) { /* comes up out of the corner and takes it */
        static const char *const of[] = {"of", NULL};
        bool out =
            c->at > c->first && token_is_word(&c->at[-1], "out"); /* runs out of the corner */
        spot_behind(c, out ? of : begin_words);
    }
    if (going < 0 || !(take_words(c, "and") || take_to(c)) || !verb_follows(c)) {
        return false;
    }
    in->pace = going != PACE_VERB ? (enum pace)going : in->pace;
    in->moves = in->moves || way;
    in->slant = slant != SCREEN_PLAIN ? slant : in->slant;
    return true;
}

/* The same, or what is done in front of the verb: rips it and drives. */
static bool take_going(struct cursor *c, struct run_in *in)
{
    struct cursor trial = *c;
    struct run_in with = *in;
    bool taken = take_way_to(&trial, &with);
    if (!taken) {
        trial = *c;
        taken = take_done(&trial, &with.moves);
    }
    if (!taken || v_cuts(c)) { /* asked last: of most sentences nothing is taken */
        return false;
    }
    *in = with;
    c->at = trial.at;
    return true;
}

static struct run_in run_in(struct cursor *c, const struct token **from)
{
    static const char *const empty[] = {"will",        "now", "both", "also",
                                        "immediately", "all", "each", NULL};
    struct run_in in = {.pace = PACE_VERB, .slant = SCREEN_PLAIN};
    while (take_among(c, empty)) {
    }
    struct cursor trial = *c;
    int written = take_entry(&trial, pace_entries); /* quickly cuts */
    if (written >= 0 && verb_follows(&trial)) {
        in.pace = (enum pace)written;
        c->at = trial.at;
    }
    *from = c->at;
    while (take_going(c, &in)) {
    }
    return in;
}

enum pace skip_run_in(struct cursor *c)
{
    const struct token *from;
    return run_in(c, &from).pace;
}

/* The way that was run in on is that of the screen behind it. */
static bool slants_screen(const struct cursor *c, const struct run_in *in)
{
    struct cursor verb = *c;
    struct phrase phrase;
    verb.watch = NULL;
    return in->slant != SCREEN_PLAIN && phrase_read(&verb, FOR_ATTACKERS, &phrase) &&
           phrase.verb == VERB_SCREENS && phrase.screen == SCREEN_PLAIN;
}

struct run_in read_run_in(struct cursor *c)
{
    const struct token *from;
    struct run_in in = run_in(c, &from);
    if (slants_screen(c, &in)) {
        return in;
    }
    in.slant = SCREEN_PLAIN;
    if (in.moves && from->span.source != SOURCE_NONE) {
        struct span span = cursor_taken(c, from);
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span, "`%.*s` is not drawn and was left out",
                     STR_ARG(cursor_text(c, span)));
        diag_help(c->diags, diag,
                  "to keep it, write where to before it, `1 dribbles to left slot` "
                  "or `5 goes to left slot`; or say it in a `point`");
    }
    return in;
}

/* uses the screen and VERB, uses 5's screen and VERB: behind `uses`. */
bool take_uses(struct cursor *c)
{
    static const char *const words[] = {"uses", "use", NULL};
    static const char *const takes[] = {"takes", "take", "accepts", "accept", NULL};
    struct cursor trial = *c;
    if (take_among(c, words)) {
        return true;
    }
    /* takes the screen; but takes it, takes a screen from 5 */
    bool said = c->speech && take_among(&trial, takes) && trial.at < trial.end &&
                (str_is(trial.at->text, "the") || trial.at->possessive) &&
                above_screen_noun_is(&trial);
    c->at = said ? trial.at : c->at;
    return said;
}

bool uses_screen_is(const struct cursor *c)
{
    struct cursor trial = *c;
    static const char *const screens[] = {"screen", "pick", "ball screen", NULL};
    struct who owner;
    if (!take_uses(&trial)) {
        return false;
    }
    struct cursor_mark mark = cursor_mark(&trial);
    bool owned = owner_read(&trial, &owner);
    bool screen = word_among(&trial, screens) || (!owned && word_is(&trial, 0, "it"));
    struct who who;
    screen = screen ||
             (c->speech && !owned && (above_screen_noun_is(&trial) || person_read(&trial, &who)));
    cursor_back(&trial, mark);
    return screen;
}

bool verb_begins(const struct cursor *c)
{
    struct cursor trial = *c;
    struct phrase phrase;
    skip_run_in(&trial);
    return pair_is(&trial) || inverse_is(&trial) || uses_screen_is(&trial) ||
           phrase_read(&trial, FOR_ANYONE, &phrase);
}

static bool everyone_read(struct cursor *c, struct who *out)
{
    const struct token *from = c->at;
    static const char *const words[] = {
        "everyone else",    "everybody else", "the others", "all others",
        "the rest of them", "the rest",       NULL};
    if (!take_among(c, words)) {
        return false;
    }
    *out = (struct who){.kind = WHO_EVERYONE_ELSE, .span = cursor_taken(c, from)};
    return true;
}

/* Mostly there is only one. */
static void first_subject(struct cursor *c, who_list *out, struct who who)
{
    *out = (who_list){arena_new(c->arena, struct who), 1, 1};
    out->at[0] = who;
}

bool subject_read(struct cursor *c, who_list *out)
{
    struct who who;
    *out = (who_list){NULL, 0, 0};
    if (everyone_read(c, &who)) {
        first_subject(c, out, who);
        return true;
    }
    struct cursor_mark begin = cursor_mark(c);
    take_words(c, "players"); /* players 2 and 4 */
    if (!who_read(c, &who)) {
        cursor_back(c, begin);
        return false;
    }
    first_subject(c, out, who);
    for (;;) {
        struct cursor_mark mark = cursor_mark(c);
        bool joined = take_mark(c, ',');
        joined = take_words(c, "and") || joined;
        if (!joined || verb_begins(c) || !who_read(c, &who)) {
            cursor_back(c, mark);
            return true;
        }
        VEC_PUSH(c->arena, out, who);
    }
}

bool subject_verb_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    bool both = subject_read(&trial, &list) && verb_begins(&trial);
    cursor_back(&trial, mark);
    return both;
}

/* Who may be the one that acts. */
bool subject_fits(struct cursor *c, const who_list *list)
{
    for (size_t i = 0; i < list->count; i++) {
        const struct who *who = &list->at[i];
        if (who->kind == WHO_COACH && !c->drill) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_DRILL_ONLY, who->span, "a coach takes part in drills only"),
                      "open it with `drill`, or write a player's number");
            return false;
        }
        if (who->kind == WHO_BALL) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_BALL_ACTS, who->span, "the ball does nothing by itself"),
                      "say who moves it: `1 passes to 2`");
            return false;
        }
        for (size_t k = 0; k < i; k++) {
            if (same_who(who, &list->at[k])) {
                struct str name = cursor_text(c, who->span);
                diag_help(c->diags,
                          REFUSE(c, TEXT_TWICE, who->span, "`%.*s` is named twice", STR_ARG(name)),
                          "name each player once: `3 and 4 cut to the rim`");
                return false;
            }
        }
        if (who_side(who) != who_side(&list->at[0])) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_LIST_UNFIT, who->span,
                             "offense and defense do not share a sentence"),
                      "write two sentences: `3 cuts to the rim` and `x3 trails`");
            return false;
        }
    }
    return true;
}

struct str subject_words(const struct cursor *c, const who_list *list)
{
    if (list->at[0].kind == WHO_PLAYER && list->at[0].span.source == SOURCE_NONE) {
        return str_format(c->arena, "%d", list->at[0].number); /* who has the ball by rule */
    }
    struct str text = cursor_text(c, span_join(list->at[0].span, list->at[list->count - 1].span));
    bool guarded = list->at[0].kind == WHO_PLAYER && list->count == 1 && text.size > 0 &&
                   (text.at[0] == 'x' || text.at[0] == 'X');
    return guarded ? str_format(c->arena, "%d", list->at[0].number) : text; /* of x3: 3 */
}
