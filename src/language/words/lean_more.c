/* SPDX-License-Identifier: MIT */
/* lean_more: more that a line can do without: adverbs, what somebody does before what counts, why,
 * what was, what the defense does meanwhile; and a moment told by where the ball is: see lean.h. */
#include "language/words/lean.h"

#include "language/words/loose_read.h"
#include "language/words/people.h"

/* Nobody by number, and no condition. */
static bool of_nobody(const struct token *from, const struct token *to)
{
    static const char *const turns[] = {"not",   "if",    "when",    "unless", "until", "or",
                                        "once",  "after", "instead", "never",  "else",  "before",
                                        "while", "as",    "except",  "unless", "then",  NULL};
    for (const struct token *at = from; at < to; at++) {
        if (at->kind == TOKEN_NUMBER || at->kind == TOKEN_DEFENDER || at->kind == TOKEN_QUOTED ||
            token_is_among(at, turns) || token_is_among(at, subject_pronouns)) {
            return false;
        }
    }
    return from < to;
}

/* Where what is said from `at` on ends: at a mark, or at what joins. */
static const struct token *said_to(const struct cursor *c, const struct token *at)
{
    while (at < c->end && !joint_at(at)) {
        at++;
    }
    return at;
}

/* ---- adverbs ---- */

/* gingerly, therefore: how or why it is done. Not when, how often, or whether. */
static void adverb_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const whether[] = {
        "only",         "early",      "nearly",    "hardly",   "barely",   "scarcely",
        "possibly",     "probably",   "initially", "firstly",  "secondly", "thirdly",
        "lastly",       "finally",    "family",    "formerly", "assembly", "supposedly",
        "previously",   "rarely",     "seldomly",  "usually",  "mostly",   "normally",
        "occasionally", "repeatedly", "doubly",    "likely",   "unlikely", "partly",
        "potentially",  "originally", "fly",       "apply",    "rely",     NULL};
    static const char *const others[] = {"therefore", "hence",  "thus",   "even",      "duly",
                                         "thereby",   "indeed", "merely", "thereupon", NULL};
    enum { SHORTEST = 6 };
    size_t size = at->text.size;
    bool ly = at->kind == TOKEN_WORD && size >= SHORTEST && at->text.at[size - 1] == 'y' &&
              at->text.at[size - 2] == 'l' && !token_is_among(at, whether);
    bool then = token_is_word(at, "only") && at + 1 < c->end && token_is_word(at + 1, "then");
    bool before_verb = token_is_word(at, "only") && at > c->at && at + 1 < c->end &&
                       at[-1].kind != TOKEN_WORD && ends_in_s(at + 1);
    bool whole = (token_is_word(at, "whole") || token_is_word(at, "entire")) && at + 1 < c->end &&
                 at[1].kind == TOKEN_WORD; /* the whole baseline */
    if (ly || then || before_verb || whole || token_is_among(at, others)) {
        add_cut(cuts, at, at + 1);
    }
}

/* ---- before what counts ---- */

/* makes his move and shoots, gets up in the lane and denies 3: what comes of it is told behind. */
static void prelude_cut(const struct cursor *c, const struct token *who, struct cuts *cuts)
{
    bool defends = who->kind == TOKEN_DEFENDER;
    if ((!defends && !attacker_at(who, c->end)) || who->possessive || !clause_begins_at(c, who)) {
        return;
    }
    const struct token *first = past_sounds(who + 1, c->end), *joint;
    const struct token *verb = goes_on_at(c, first, &joint);
    if (!verb || first == joint) {
        return;
    }
    struct cursor next = line_look(c, verb);
    struct phrase phrase;
    bool read = phrase_read(&next, defends ? FOR_DEFENDERS : FOR_ATTACKERS, &phrase);
    bool shoots = read && verb_row(phrase.verb)->task == VERB_SHOOT;
    bool guards = read && defends && verb_row(phrase.verb)->task == VERB_GUARD &&
                  !act_begins(first, c->end, true); /* stunts and recovers: at whom? */
    bool acts = verb_at(c, first) || act_begins(first, c->end, false);
    struct cursor behind = line_look(c, first);
    static const char *const stops[] = {"stops behind",   "stays behind", "pulls up behind",
                                        "waits behind",   "steps behind", "stands behind",
                                        "sets up behind", "hides behind", NULL};
    bool stop = shoots && take_among(&behind, stops);
    if ((guards || stop) ? of_nobody(first, joint) : !acts && idle_words(c, first, joint)) {
        add_cut(cuts, first, verb);
    }
}

/* ---- why, and how it was ---- */

/* The comma in front of it goes with it. */
static const struct token *with_comma(const struct cursor *c, const struct token *at)
{
    return at > c->at && token_is_mark(at - 1, ',') ? at - 1 : at;
}

/* only to keep their men busy. */
static void aim_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const onlys[] = {"only to",     "just to",  "simply to", "merely to",
                                        "in order to", "so as to", NULL};
    struct cursor trial = line_look(c, at);
    const struct token *end = said_to(c, at);
    if (at > c->at + 1 && take_among(&trial, onlys) && aside_aim_is(&trial) &&
        of_nobody(trial.at, end)) {
        add_cut(cuts, with_comma(c, at), end);
    }
}

/* , whom he left; who was left open: how it was. who was cutting: what he does. */
static void past_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const was[] = {"who was",   "who were", "who had been", "whom", "which is",
                                      "which was", "that was", "who has been", NULL};
    struct cursor trial = line_look(c, at);
    if (at < c->at + 2 || !take_among(&trial, was)) {
        return;
    }
    const struct token *end = said_to(c, trial.at);
    for (const struct token *word = trial.at; word < end; word++) {
        if (attacker_at(word, c->end) || word->kind == TOKEN_QUOTED || ends_in_ing(word)) {
            return;
        }
    }
    bool comma = end < c->end && token_is_mark(end, ',');
    add_cut(cuts, with_comma(c, at), comma ? end + 1 : end);
}

/* cuts off 5, 5 being the screener: one whom somebody goes off. */
static void being_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    const struct token *from = with_comma(c, at), *end = said_to(c, at);
    bool off = false;
    for (const struct token *word = c->at + 1; word < from; word++) {
        off = off || (token_is_word(word - 1, "off") && word->kind == TOKEN_NUMBER &&
                      word->number == at->number);
    }
    if (from < at && off && attacker_at(at, c->end) && at + 2 < c->end &&
        token_is_word(at + 1, "being") && of_nobody(at + 2, end)) {
        add_cut(cuts, from, end);
    }
}

/* as the zone shifts, before the defense is settled: nobody's movement waits for it. */
static void zone_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const ties[] = {"as", "while", "before", "when", "once", NULL};
    static const char *const theirs[] = {"zone",      "defense",    "defence",   "help side",
                                         "weak side", "other team", "opponents", "help defense",
                                         "floor",     "crowd",      "lane",      NULL};
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, ties) || !take_among(&trial, theirs)) {
        return;
    }
    const struct token *end = trial.at;
    while (end < c->end && end->kind == TOKEN_WORD && !joint_at(end)) {
        end++;
    }
    struct cursor next = line_look(c, end);
    bool front = at == c->at || joint_at(at - 1);
    bool over = end == c->end || end->kind == TOKEN_MARK || subject_verb_is(&next);
    if (over && of_nobody(trial.at, end)) {
        add_cut(cuts, at, front && end < c->end && token_is_mark(end, ',') ? end + 1 : end);
    }
}

/* pitches it to 3 as he runs by: it meets him anyway. */
static void passing_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const whos[] = {"as he", "as she", "as they", "when he", "when she", NULL};
    static const char *const bys[] = {"runs by",   "goes by",   "comes by",  "cuts by",
                                      "passes",    "pass",      "run by",    "go by",
                                      "come by",   "runs past", "goes past", "comes past",
                                      "passes by", "flies by",  NULL};
    struct cursor trial = line_look(c, at);
    if (at > c->at + 2 && take_among(&trial, whos) && take_among(&trial, bys) &&
        part_ends(&trial)) {
        add_cut(cuts, with_comma(c, at), trial.at);
    }
}

/* ---- where the ball is ---- */

/* The latest sentence above is a pass to this player, by number; 0: it is none. */
static int passed_to(const struct cursor *c)
{
    above_list above = above_sentences(c, false);
    const struct sentence *last = above.count > 0 ? above.at[above.count - 1] : NULL;
    bool pass = last && verb_row(last->verb)->task == VERB_PASS && last->object.kind == WHO_PLAYER;
    return pass ? last->object.number : 0;
}

/* With the ball on the wing, 4 runs: when 2, who was thrown it, catches. With 5 holding it: he does
 * already. */
static void ball_cut(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    static const char *const leads[] = {"with ball", "with ball now", "ball now", NULL};
    static const char *const wheres[] = {"there", "on that side", "on other side", NULL};
    static const char *const holds[] = {
        "holding it", "holding ball", "having it",     "having ball",
        "keeping it", "keeping ball", "in possession", NULL};
    struct who holder;
    struct cursor trial = line_look(c, at);
    if (at != c->at) {
        return;
    }
    if (take_words(&trial, "with") && attacker_at(trial.at, c->end) && above_holder(c, &holder) &&
        holder.kind == WHO_PLAYER && holder.number == (int)trial.at->number) {
        trial.at++;
        const struct token *end = take_among(&trial, holds) ? said_to(c, trial.at) : c->end;
        if (end + 1 < c->end && token_is_mark(end, ',') &&
            (end == trial.at || of_nobody(trial.at, end))) {
            add_cut(cuts, at, end + 1);
        }
        return;
    }
    trial = line_look(c, at);
    int to = passed_to(c);
    bool ball = to && take_among(&trial, leads);
    bool where = ball && (take_among(&trial, wheres) || spot_behind(&trial, place_words));
    if (where && trial.at + 1 < c->end && token_is_mark(trial.at, ',')) {
        add_cut(cuts, at, trial.at + 1);
        if (cuts->count > 0 && cuts->at[cuts->count - 1].from == at) {
            cuts->at[cuts->count - 1].catches = to;
        }
    }
}

void cuts_find_more(const struct cursor *c, const struct token *at, struct cuts *cuts)
{
    ball_cut(c, at, cuts);
    prelude_cut(c, at, cuts);
    aim_cut(c, at, cuts);
    past_cut(c, at, cuts);
    being_cut(c, at, cuts);
    zone_cut(c, at, cuts);
    passing_cut(c, at, cuts);
    adverb_cut(c, at, cuts);
}
