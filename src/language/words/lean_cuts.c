/* SPDX-License-Identifier: MIT */
/* lean_cuts: what a line can do without: what a play is called in front of a colon, what is only
 * shown before what is done, how, with what, out of what: see lean.h. */
#include "language/words/lean.h"

#include "language/words/loose_read.h"
#include "language/words/people.h"

void add_cut(struct cuts *cuts, const struct token *from, const struct token *to)
{
    for (size_t i = 0; i < cuts->count; i++) {
        if (from < cuts->at[i].to && cuts->at[i].from < to) {
            return;
        }
    }
    if (cuts->count < CUTS_MOST && from < to) {
        cuts->at[cuts->count++] = (struct cut){.from = from, .to = to};
    }
}

/* ---- words that may go ---- */

bool idle_words(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const comes[] = {
        "layup",  "lay-up",   "jumper",  "dunk",   "bucket",   "basket",    "hoop",
        "it",     "again",    "twice",   "except", "either",   "both",      "each",
        "other",  "no",       "never",   "nobody", "handoff",  "hand",      "off",
        "to",     "toward",   "into",    "onto",   "until",    "lob",       "skip",
        "bounce", "overhead", "rebound", "paint",  "defender", "defenders", "post",
        "arc",    "centre",   "center",  "circle", "key",      "line",      NULL};
    const struct token *part = from;
    for (const struct token *at = from; at <= to; at++) {
        bool owner = at < to && token_is_among(at, owner_words);
        if (at < to &&
            (token_is_among(at, comes) || act_begins(at, to, true) || act_begins(at, to, false))) {
            return false;
        }
        if (at < to && !owner) {
            continue;
        }
        if (part < at && !only_how(c, part, at)) {
            return false;
        }
        if (owner && (at + 1 == to || token_is_among(at + 1, people_words) ||
                      token_is_among(at + 1, guard_words))) {
            return false;
        }
        part = at + 1;
    }
    return from < to;
}

bool joint_at(const struct token *at)
{
    static const char *const joints[] = {"and", "then", "while", "but", "so", "who", "as", NULL};
    return at->kind == TOKEN_MARK || token_is_among(at, joints);
}

/* ---- what it is called ---- */

/* Nobody does anything in it: double drag, ball reversal, no hurry; a bare verb may be said. */
static bool nobody_acts(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const turns[] = {"not",    "if",     "when", "unless", "until", "or",
                                        "option", "read",   "once", "after",  "as",    "instead",
                                        "never",  "before", "else", "catch",  NULL};
    for (const struct token *at = from; at < to; at++) {
        struct cursor acts = line_look(c, at);
        bool person = attacker_at(at, to) || token_is_among(at, subject_pronouns);
        if (token_is_among(at, turns) || at->kind == TOKEN_DEFENDER || at->kind == TOKEN_QUOTED ||
            sentence_ends(at) ||
            (person && (subject_verb_is(&acts) || act_begins(at + 1, to, false)))) {
            return false;
        }
    }
    return true;
}

static void called_cut(const struct cursor *c, struct cuts *cuts)
{
    const struct token *at = c->at;
    while (at < c->end && !token_is_mark(at, ':')) {
        at++;
    }
    const struct token *from = c->at + (token_is_word(c->at, "then") ? 1 : 0);
    struct cursor behind = line_look(c, at < c->end ? at + 1 : at);
    if (at > from && at + 1 < c->end && nobody_acts(c, from, at) && !remark_judges(c, from, at) &&
        (subject_verb_is(&behind) || clause_is(&behind) ||
         (attacker_at(at + 1, c->end) && act_begins(at + 2, c->end, false)))) {
        add_cut(cuts, from, at + 1);
    }
}

/* we call this fist 4 comes up, our base look 1 passes: how it is called, without a colon. */
static void headed_cut(const struct cursor *c, struct cuts *cuts)
{
    static const char *const heads[] = {"we",    "our",   "this",  "it's",   "that",      "its",
                                        "it",    "guys",  "girls", "listen", "everybody", "last",
                                        "basic", "quick", "same",  "let's",  NULL};
    static const char *const calls[] = {"call", "calls", "look", "is", "play", "say", "set", NULL};
    static const char *const moments[] = {"on",   "off",   "from",   "with", "catch",  "pass",
                                          "shot", "drive", "screen", "ball", "second", NULL};
    enum { FAR = 8 };
    const struct token *from = past_sounds(c->at, c->end), *who = from;
    while (who < c->end && who < from + FAR && who->kind == TOKEN_WORD &&
           !token_is_among(who, moments) &&
           (token_is_among(who, calls) || !(verb_at(c, who) || act_begins(who, c->end, false)))) {
        who++;
    }
    struct cursor acts = line_look(c, who);
    if (who > from + 1 && who < from + FAR && attacker_at(who, c->end) && subject_verb_is(&acts) &&
        token_is_among(from, heads) && nobody_acts(c, from, who) && !remark_judges(c, from, who)) {
        add_cut(cuts, from, who);
    }
}

/* ---- what is only shown ---- */

const struct token *goes_on_at(const struct cursor *c, const struct token *at,
                               const struct token **joint)
{
    static const char *const joints[] = {"and", "then", "but", NULL};
    enum { FAR = 12 };
    for (const struct token *far = at + FAR; at + 1 < c->end && at < far; at++) {
        if (sentence_ends(at)) {
            return NULL;
        }
        if (!token_is_mark(at, ',') && !token_is_among(at, joints)) {
            continue;
        }
        *joint = at;
        while (at < c->end && (token_is_mark(at, ',') || token_is_among(at, joints))) {
            at++;
        }
        at = past_sounds(at, c->end);
        bool bent = at < c->end && (ends_in_s(at) || (at + 1 < c->end && ends_in_s(at + 1)));
        if (bent && (verb_at(c, at) || (ends_in_s(at) && act_begins(at, c->end, false)))) {
            return at;
        }
    }
    return NULL;
}

/* fakes the entry into the post, then skips it: skips it. shows 2 the hand-off, and drives. */
static void shown_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const fakes[] = {"fakes",      "pump fakes", "pass fakes",
                                        "ball fakes", "threatens",  NULL};
    static const char *const things[] = {"pass",   "hand-off", "handoff", "hand off",
                                         "screen", "drive",    "shot",    "pick",
                                         "cut",    "entry",    NULL};
    struct cursor trial = line_look(c, at);
    const struct token *joint;
    bool shows = false;
    if (!take_among(&trial, fakes)) {
        shows = take_words(&trial, "shows");
        trial.at += shows && attacker_at(trial.at, c->end) ? 1 : 0;
        shows = shows && take_among(&trial, things);
        if (!shows) {
            return;
        }
    }
    const struct token *verb = at > c->at ? goes_on_at(c, trial.at, &joint) : NULL;
    if (verb) {
        add_cut(cuts, at, verb);
    }
}

/* 2 sprints up as if to pick the ball and runs out to the wing: only runs out. */
static void pretended_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const likes[] = {
        "as if to",         "as though to",      "as if",         "as though",
        "like he is going", "like she is going", "pretending to", NULL};
    enum { FAR = 7 };
    const struct token *joint;
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, likes)) {
        return;
    }
    const struct token *verb = goes_on_at(c, trial.at, &joint), *who = at;
    while (who > c->at && who > at - FAR && who[-1].kind != TOKEN_MARK &&
           !attacker_at(who, c->end)) {
        who--;
    }
    if (verb && attacker_at(who, c->end) && clause_begins_at(c, who)) {
        add_cut(cuts, who + 1, verb);
    }
}

/* ---- how, with what, out of what ---- */

/* Away from the ball, behind the play: where one is already, or what he has done. */
static const struct token *safe_front(const struct cursor *c, const struct token *at)
{
    static const char *const fronts[] = {"away from ball",
                                         "away from pass",
                                         "away from play",
                                         "away from action",
                                         "away from all that",
                                         "behind play",
                                         "behind action",
                                         "behind pick and roll",
                                         "behind all that",
                                         "right behind his pass",
                                         "right behind her pass",
                                         "behind his pass",
                                         "behind her pass",
                                         "out of double team",
                                         "out of trap",
                                         "on weak side",
                                         "on help side",
                                         "on strong side",
                                         "on ball side",
                                         "on other side",
                                         "on other side of floor",
                                         "into space that this opens",
                                         "into that space",
                                         "into open space",
                                         "into gap",
                                         "from here on",
                                         "for now",
                                         "all through this step",
                                         "all through step",
                                         "throughout this step",
                                         "throughout step",
                                         "throughout",
                                         "whole time",
                                         "all this time",
                                         "all along",
                                         "in this step",
                                         "as our safety",
                                         "as our outlet",
                                         "as safety",
                                         "as outlet",
                                         "as last man",
                                         "with that done",
                                         "that done",
                                         "out of that look",
                                         "between lines of zone",
                                         "between lines of press",
                                         "in heart of zone",
                                         "in middle of it all",
                                         NULL};
    struct cursor trial = line_look(c, at);
    return take_among(&trial, fronts) ? trial.at : NULL;
}

/* With a hop, 3 drives; peeling off the back, 5 runs; from the corner 4 comes up. */
static void front_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const homes[] = {"from under", "from", "out of", "off", NULL};
    static const char *const hows[] = {"with",    "without",   "in", "under", "out of", "behind",
                                       "between", "away from", "on", "by",    "over",   NULL};
    enum { FAR = 9 };
    const struct token *who = at;
    struct cursor acts = line_look(c, at);
    while (who < c->end && who < at + FAR &&
           !(attacker_at(who, c->end) && subject_verb_is(&acts))) {
        acts.at = ++who;
    }
    if (who == at || who >= c->end || who >= at + FAR) {
        return;
    }
    const struct token *end = who - (token_is_mark(who - 1, ',') ? 1 : 0);
    struct cursor lead = line_look(c, at);
    const struct place *place;
    if (take_among(&lead, homes) && spot_end(c, lead.at, &place) == end &&
        may_stand_there(c, lead.at, place)) {
        add_cut(cuts, at, who);
        return;
    }
    if (safe_front(c, at) == end) {
        add_cut(cuts, at, who);
        return;
    }
    lead = line_look(c, at);
    bool how = take_among(&lead, hows) || (ends_in_ing(at) && !verb_at(c, at) && ++lead.at);
    if (how && idle_words(c, lead.at, end)) {
        add_cut(cuts, at, who);
    }
}

/* ; nothing else changes: a tail that says that no more is done. */
static void no_more_cut(const struct cursor *c, const struct token *mark, struct cuts *cuts)
{
    static const char *const tails[] = {"nothing else changes",
                                        "nothing else happens",
                                        "nothing else moves",
                                        "nothing more",
                                        "nothing else",
                                        "that is all",
                                        "that's all",
                                        "that is it",
                                        "and that is all",
                                        "and no more",
                                        "no more than that",
                                        "no further",
                                        "all else stays same",
                                        "rest stays same",
                                        "everything else stays same",
                                        NULL};
    struct cursor trial = line_look(c, mark + 1);
    if (mark > c->at && take_among(&trial, tails) &&
        (trial.at == c->end || sentence_ends(trial.at))) {
        add_cut(cuts, mark, trial.at);
    }
}

/* 3 passes to 5 and splits with 1: 1 goes, 3 cuts: what several do is told of each behind it. */
static void splits_cut(const struct cursor *c, const struct token *colon, struct cuts *cuts)
{
    static const char *const acts[] = {
        "splits",       "scissors",      "crosses", "exchanges", "switches",
        "interchanges", "criss-crosses", "changes", "trades",    NULL};
    const struct token *clause = colon;
    while (clause > c->at && !joint_at(clause - 1)) {
        clause--;
    }
    struct cursor trial = line_look(c, clause);
    bool with = clause > c->at && take_among(&trial, acts) && take_words(&trial, "with") &&
                attacker_at(trial.at, c->end) && trial.at + 1 == colon;
    struct cursor behind = line_look(c, colon + 1);
    if (with && names_player(colon + 1, c->end, (int)trial.at->number) &&
        subject_verb_is(&behind)) {
        add_cut(cuts, clause, colon + 1);
    }
}

/* , never stopping, : between two commas, or from one to where the line ends; one word alone may be
 * misspelt. */
static void apart_cut(const struct cursor *c, const struct token *comma, struct cuts *cuts)
{
    enum { FAR = 7 };
    const struct token *from = past_sounds(comma + 1, c->end), *to = from;
    while (to < c->end && to->kind != TOKEN_MARK) {
        to++;
    }
    bool ends = to == c->end || sentence_ends(to);
    if (to - from < 2 || to - from > FAR || joint_at(from) || verb_at(c, from) ||
        act_begins(from, c->end, false) || !(ends || token_is_mark(to, ',')) ||
        !idle_words(c, from, to)) {
        return;
    }
    struct cursor next = line_look(c, ends ? to : to + 1);
    add_cut(cuts, comma, ends || subject_verb_is(&next) ? to : to + 1);
}

/* with a sharp corner, on the way down: to where the next thing is said. */
static void adjunct_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const leads[] = {"with",  "without", "in",     "on",  "at",   "by",
                                        "under", "over",    "behind", "for", "like", NULL};
    static const char *const next[] = {"to",   "into", "from", "for",  "off",    "past",
                                       "with", "in",   "on",   "at",   "toward", "out",
                                       "up",   "down", "back", "over", NULL};
    enum { FAR = 6 };
    if (!token_is_among(at, leads) || at < c->at + 2 || joint_at(at - 1)) {
        return;
    }
    const struct token *to = at + 1;
    while (to < c->end && to < at + FAR && to->kind == TOKEN_WORD && !joint_at(to) &&
           !token_is_among(to, next)) {
        to++;
    }
    bool over = to == c->end || joint_at(to) || token_is_among(to, next);
    if (over && to > at + 1 && idle_words(c, at + 1, to)) {
        add_cut(cuts, at, to);
    }
}

void cuts_find(const struct cursor *c, struct cuts *cuts)
{
    called_cut(c, cuts);
    headed_cut(c, cuts);
    for (const struct token *at = c->at; at < c->end; at++) {
        shown_cut(c, at, cuts);
        pretended_cut(c, at, cuts);
    }
    for (const struct token *at = c->at; at < c->end; at++) {
        if (at == c->at || sentence_ends(at - 1) || token_is_mark(at - 1, ':')) {
            front_cut(c, at, cuts);
        }
        if (at->kind == TOKEN_MARK) {
            no_more_cut(c, at, cuts);
        }
        if (token_is_mark(at, ':') && at > c->at) {
            splits_cut(c, at, cuts);
        }
        if (token_is_mark(at, ',')) {
            apart_cut(c, at, cuts);
        }
        cuts_find_tails(c, at, cuts);
        cuts_find_more(c, at, cuts);
        adjunct_cut(c, at, cuts);
    }
}
