/* SPDX-License-Identifier: MIT */
/* retold: what is told in speech by what stands around it: `the left one` after a corner, `to the
 * corner where 2 was`, `goes by him and takes it from him`, `throws it into the post to 5`, and
 * what it is called in front: `horns 1 passes`. Ways of plain.c, tried before all others. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"

static bool ends_behind_it(const struct cursor *line, const struct token *at)
{
    return at == line->end || clause_ends(at) || token_is_word(at, "so");
}

/* from the right corner to the left one: the spot that was named. */
static const struct token *the_other_one(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    static const char *const sides[] = {"left", "right", "other", "opposite", NULL};
    static const char *const spots[] = {"wing", "corner", "elbow",    "block",
                                        "slot", "hash",   "sideline", NULL};
    const struct token *one = at + 1, *spot = at;
    if (!token_is_among(at, sides) || !(one < line->end) ||
        !(token_is_word(one, "one") || attacker_at(one, line->end) == 1) ||
        !ends_behind_it(line, one + 1)) {
        return NULL;
    }
    while (spot > line->at && !token_is_among(spot, spots)) {
        spot--;
    }
    if (!token_is_among(spot, spots)) {
        return NULL;
    }
    bool small = spot > line->at && token_is_word(spot - 1, "short");
    recast_copy(line, out, at, at + 1);
    recast_copy(line, out, spot - small, spot + 1);
    return one + 1;
}

/* to the corner where 2 was: his spot says which. */
static const struct token *place_and_whose(const struct cursor *line, const struct token *at,
                                           struct recast *out)
{
    static const char *const leads[] = {"to", "into", "at", NULL};
    static const char *const was[] = {"was",      "is",       "started",   "used to be",
                                      "had been", "just was", "just left", "came from",
                                      "left",     NULL};
    const struct place *place;
    const struct token *spot = past_fillers(at + 1, line->end);
    const struct token *where =
        token_is_among(at, leads) && spot < line->end ? spot_end(line, spot, &place) : NULL;
    if (!where || where + 2 >= line->end || !token_is_word(where, "where") ||
        !attacker_at(where + 1, line->end)) {
        return NULL;
    }
    struct cursor trial = line_look(line, where + 2);
    if (!take_among(&trial, was) || !ends_behind_it(line, trial.at)) {
        return NULL;
    }
    out->told = span_join(spot->span, where[-1].span);
    recast_copy(line, out, at, at + 1);
    return where;
}

/* throws it into the post to 5; 2 to 5 in the post: to 5, wherever he stands. */
static const struct token *near_whom(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const leads[] = {"into",      "in to", "in",      "to", "down to",
                                        "down into", "up to", "over to", NULL};
    static const char *const where[] = {"post", "low post", "high post", "middle", "paint",
                                        "lane", "key",      "backcourt", NULL};
    static const char *const its[] = {"it", "ball", NULL};
    struct cursor trial = line_look(line, at);
    if (at == line->at || !take_among(&trial, leads) || !take_among(&trial, where)) {
        return NULL;
    }
    const struct token *to = trial.at;
    bool before = token_is_among(at - 1, its) && to + 1 < line->end && token_is_word(to, "to") &&
                  attacker_at(past_fillers(to + 1, line->end), line->end);
    bool behind = at - 1 > line->at && attacker_at(at - 1, line->end) &&
                  token_is_word(at - 2, "to") && token_is_word(at, "in") &&
                  (ends_behind_it(line, to) || attacker_at(to, line->end));
    if (!before && !behind) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    out->told = span_join(at->span, to[-1].span);
    if (before) {
        recast_word(&here, out, "to");
        return to + 1;
    }
    if (!ends_behind_it(line, to)) {
        recast_mark(&here, out, ',');
    }
    return to;
}

/* five's got it, when two's got it: has it. */
static const struct token *has_got_it(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const ties[] = {"when",     "once", "as soon as", "until", "after",
                                       "now that", "if",   "till",       NULL};
    static const char *const gots[] = {"got it", "got ball", "got it there", NULL};
    struct cursor trial = line_look(line, at);
    if (!take_among(&trial, ties)) {
        return NULL;
    }
    const struct token *who = trial.at;
    struct cursor got = line_look(line, who + 1);
    if (who >= line->end || who->kind != TOKEN_NUMBER || !who->possessive ||
        !take_among(&got, gots)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, at, who);
    recast_number(&here, out, (int)who->number);
    recast_word(&here, out, "has");
    recast_word(&here, out, "it");
    return got.at;
}

/* ---- hand-offs that one goes for ---- */

/* takes it from him, gets it back on the hand-off: the ball, out of his hands. */
static bool takes_from_hands(struct cursor *c)
{
    static const char *const words[] = {"gets it back on hand off",
                                        "gets it back on handoff",
                                        "gets it back on a hand off",
                                        "gets it back on a handoff",
                                        "gets hand off",
                                        "gets handoff",
                                        "gets hand off back",
                                        "gets hand off from him",
                                        "gets handoff from him",
                                        "takes hand off",
                                        "takes handoff",
                                        "takes hand off from him",
                                        "takes handoff from him",
                                        "takes it from him",
                                        "takes it from her",
                                        "takes it out of his hands",
                                        "takes it out of her hands",
                                        "takes ball from him",
                                        "takes ball from her",
                                        "takes ball out of his hands",
                                        "gets it back from him",
                                        "gets it back from her",
                                        "gets it handed back",
                                        "gets it handed to him",
                                        "gets it right back",
                                        "gets ball back on hand off",
                                        NULL};
    return take_among(c, words);
}

/* Who was thrown the ball last in front of `at`; 0: nothing tells. */
static int thrown_before(const struct cursor *line, const struct token *at)
{
    int number = 0;
    for (const struct token *to = line->at; to + 1 < at; to++) {
        bool passed =
            token_is_word(to, "to") || token_is_word(to, "hits") || token_is_word(to, "finds");
        number = passed && attacker_at(to + 1, at) ? attacker_at(to + 1, at) : number;
    }
    return number;
}

/* runs off 5 gets it back on the hand-off; goes right by him and takes it from him: 5 hands off.
 */
static const struct token *runs_for_it(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const goes[] = {"runs", "goes", "cuts", "comes", "sprints", NULL};
    static const char *const ways[] = {"right", "in",   "hard", "straight",
                                       "over",  "back", "up",   NULL};
    static const char *const nears[] = {"off of", "off", "by",     "past",     "at",     "around",
                                        "over",   "to",  "toward", "right at", "behind", NULL};
    struct cursor trial = line_look(line, at);
    if (at == line->at || !take_among(&trial, goes)) {
        return NULL;
    }
    take_among(&trial, ways);
    if (!take_among(&trial, nears) || trial.at >= line->end) {
        return NULL;
    }
    bool him = token_is_word(trial.at, "him") || token_is_word(trial.at, "her");
    int other = him ? thrown_before(line, at) : attacker_at(trial.at, line->end);
    const struct token *who = at - 1;
    while (who > line->at && !(attacker_at(who, line->end) && clause_begins_at(line, who))) {
        who--;
    }
    int runner = attacker_at(who, line->end);
    trial.at++;
    take_mark(&trial, ',');
    take_words(&trial, "and");
    if (!other || !runner || other == runner || !takes_from_hands(&trial)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    if (who + 1 < at) { /* gives it to 5, goes by him */
        if (!clause_ends(at - 1)) {
            recast_mark(&here, out, ',');
        }
        recast_number(&here, out, runner);
    }
    recast_word(&here, out, "takes");
    recast_word(&here, out, "hand-off");
    recast_word(&here, out, "from");
    recast_number(&here, out, other);
    out->told = span_join(at->span, at->span);
    return trial.at;
}

/* 1 and 3 do a dribble hand-off: from whoever has the ball. */
static const struct token *do_handoff(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const does[] = {"do", "run", "have", "just do", "work", NULL};
    static const char *const what[] = {
        "dribble hand off", "dribble handoff", "dribble hand-off", "dho",
        "hand off",         "handoff",         "hand-off",         NULL};
    size_t count;
    struct who holder;
    const struct token *two = players_end(line, at, &count);
    struct cursor trial = line_look(line, past_sounds(two, line->end));
    if (count != 2 || !clause_begins_at(line, at) || !take_among(&trial, does)) {
        return NULL;
    }
    int first = attacker_at(at, line->end), second = attacker_at(two - 1, line->end);
    bool known = above_holder(line, &holder) && holder.kind == WHO_PLAYER;
    if (!take_among(&trial, what) || !first || !second || !known ||
        (holder.number != first && holder.number != second)) {
        return NULL;
    }
    take_words(&trial, "thing");
    if (trial.at < line->end && (token_is_word(trial.at, "so") || token_is_mark(trial.at, ':'))) {
        return NULL; /* told step by step behind it */
    }
    struct cursor here = line_look(line, at);
    put_dho(&here, out, holder.number, holder.number == first ? second : first);
    if (trial.at < line->end && !clause_ends(trial.at)) {
        recast_mark(&here, out, ',');
    }
    return trial.at;
}

/* 1 gets a give-and-go with 2, 1 and 2 run a give and go: whoever has the ball gives it. */
static const struct token *give_and_go(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const does[] = {"gets",  "runs",  "does", "has",  "plays",
                                       "makes", "do",    "run",  "play", "get",
                                       "have",  "works", "work", "make", NULL};
    size_t count;
    struct who holder;
    const struct token *two = players_end(line, at, &count);
    struct cursor trial = line_look(line, past_sounds(two, line->end));
    if (count < 1 || count > 2 || !clause_begins_at(line, at) || !take_among(&trial, does) ||
        !take_words(&trial, "give and go")) {
        return NULL;
    }
    int first = attacker_at(at, line->end);
    int second = count == 2 ? attacker_at(two - 1, line->end) : 0;
    if (!second && take_words(&trial, "with")) {
        second = attacker_at(trial.at, line->end);
        trial.at += second > 0;
    }
    bool known = above_holder(line, &holder) && holder.kind == WHO_PLAYER;
    if (!first || !second || (known && holder.number != first && holder.number != second)) {
        return NULL;
    }
    bool turned = known && holder.number == second;
    struct cursor here = line_look(line, at);
    recast_word(&here, out, "give");
    recast_word(&here, out, "and");
    recast_word(&here, out, "go");
    recast_number(&here, out, turned ? second : first);
    recast_word(&here, out, "and");
    recast_number(&here, out, turned ? first : second);
    return trial.at;
}

/* ---- what it is called ---- */

/* A word of what a play, a set or a place to start from is called; no verb, nobody. */
static bool names_scene(const struct token *at)
{
    static const char *const words[] = {
        "sideline", "baseline", "out",        "ball",    "side",    "set",      "box",
        "stack",    "flex",     "triangle",   "horns",   "motion",  "on",       "from",
        "off",      "rebound",  "drag",       "screens", "screen",  "pick",     "roll",
        "and",      "flow",     "high",       "low",     "flat",    "four",     "one",
        "same",     "thing",    "next",       "last",    "alright", "girls",    "guys",
        "boys",     "ladies",   "everybody",  "team",    "this",    "is",       "easy",
        "simple",   "quick",    "hitter",     "now",     "we",      "call",     "it",
        "are",      "under",    "our",        "own",     "basket",  "inbounds", "play",
        "break",    "up",       "transition", "early",   "offense", "five",     "okay",
        "ok",       "um",       "uh",         "right",   "so",      "spread",   "stagger",
        "double",   "pistol",   "elbow",      "post",    "entry",   NULL};
    return at->filler || token_is_among(at, words);
}

/* one four low, five out; this is the easy one: a number that is nobody's. */
static bool number_of_scene(const struct cursor *line, const struct token *at)
{
    static const char *const counts[] = {"low", "high", "flat", "out", "around", "down", NULL};
    static const char *const which[] = {"easy", "last", "first", "next", "simple", "quick", NULL};
    if (!attacker_at(at, line->end)) {
        return false;
    }
    const struct token *next = at + 1;
    bool formation = next < line->end && (token_is_among(next, counts) ||
                                          (attacker_at(next, line->end) && next + 1 < line->end &&
                                           token_is_among(next + 1, counts)));
    return formation || (at > line->at && token_is_among(at - 1, which));
}

/* One of them that is called something. */
static bool names_it(const struct token *at)
{
    static const char *const nouns[] = {
        "sideline", "baseline", "box",    "stack",  "flex",   "triangle", "horns", "motion",
        "flow",     "rebound",  "drag",   "set",    "play",   "side",     "thing", "one",
        "break",    "girls",    "guys",   "boys",   "basket", "low",      "flat",  "transition",
        "offense",  "hitter",   "spread", "pistol", NULL};
    return token_is_among(at, nouns);
}

/* sideline ball 3 throws it in, alright girls this is the easy one 2 cuts: how it is called. */
static const struct token *called_first(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    enum { FAR = 10 };
    static const char *const stands[] = {"is", "has", "gets", "starts", NULL}; /* with it */
    const struct token *who = at;
    bool named = false, word = false;
    if (at != line->at) {
        return NULL;
    }
    for (; who + 1 < line->end && who < at + FAR; who++) {
        struct cursor acts = line_look(line, who);
        bool acting = word && named && attacker_at(who, line->end) &&
                      (subject_verb_is(&acts) || act_begins(who + 1, line->end, false) ||
                       token_is_among(who + 1, stands) ||
                       (token_is_word(who + 1, "to") && attacker_at(who + 2, line->end)));
        if (acting) {
            break;
        }
        bool number = number_of_scene(line, who);
        if (!number && !names_scene(who)) {
            return NULL;
        }
        word = word || (who->kind == TOKEN_WORD && !who->filler);
        named = named || number || names_it(who);
    }
    if (who + 1 >= line->end || who >= at + FAR) {
        return NULL;
    }
    const struct token *last = who - 1;
    while (last > at && (last->filler || token_is_word(last, "so") || token_is_word(last, "and"))) {
        last--;
    }
    out->told = span_join(at->span, last->span);
    return who;
}

/* flex: 1 passes to 2; Spain PNR, wheel: what it is called, in words that do nothing. */
static const struct token *called_colon(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    static const char *const never[] = {
        "if",      "when",    "as",    "once",  "read",     "reads",    "option",  "on",
        "off",     "not",     "no",    "never", "or",       "either",   "then",    "after",
        "before",  "until",   "all",   "both",  "everyone", "rest",     "others",  "they",
        "defense", "defence", "guard", "trap",  "switch",   "weakside", "weak",    "strong",
        "left",    "right",   "l",     "r",     "swap",     "exchange", "cross",   "screen",
        "pass",    "passes",  "dho",   "weave", "stagger",  "double",   "counter", "instead",
        "x",       "ball",    "skip",  "lob",   "flare",    "pin",      "ghost",   "rip",
        NULL};
    enum { FAR = 4 };
    const struct place *place;
    const struct token *colon = at;
    if (at != line->at) {
        return NULL;
    }
    for (; colon < line->end && !token_is_mark(colon, ':'); colon++) {
        if (colon->kind != TOKEN_WORD || colon->possessive || colon == at + FAR ||
            token_is_among(colon, never) || verb_at(line, colon) || spot_end(line, colon, &place)) {
            return NULL;
        }
    }
    if (colon == at || colon + 1 >= line->end || !attacker_at(colon + 1, line->end) ||
        remark_judges(line, at, colon)) {
        return NULL;
    }
    out->told = span_join(at->span, colon[-1].span);
    return colon + 1;
}

const struct token *retold_put(const struct cursor *line, const struct token *at,
                               struct recast *out)
{
    static plain_way *const ways[] = {called_colon, called_first, the_other_one, place_and_whose,
                                      near_whom,    has_got_it,   runs_for_it,   do_handoff,
                                      give_and_go,  NULL};
    return first_put(ways, line, at, out);
}
