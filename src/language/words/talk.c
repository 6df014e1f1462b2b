/* SPDX-License-Identifier: MIT */
/* talk: a dictated line, put more plainly: `4 and 5 they cross` without the second subject, `to the
 * corner the right corner` said once, and a stop where a sentence ends and the next one begins
 * without a word between. Ways of plain.c. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"
#include "language/words/people.h"

/* 4 and 5 they cross, 5 he ducks in: the subject twice. */
static const struct token *subject_again(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    size_t count;
    const struct token *to = players_end(line, at, &count);
    const struct token *pronoun = past_sounds(to, line->end);
    if (count == 0 || !clause_begins_at(line, at) || pronoun == line->end) {
        return NULL;
    }
    bool you = token_is_word(pronoun, "you"); /* 5 you come up: said to him */
    if (!you && (!token_is_among(pronoun, subject_pronouns) ||
                 token_is_word(pronoun, "they") != (count > 1))) { /* 5 they: of others */
        return NULL;
    }
    const struct token *verb = past_sounds(pronoun + 1, line->end);
    verb += you && verb < line->end && token_is_word(verb, "guys");
    verb = past_sounds(verb, line->end);
    bool two = verb < line->end && (token_is_word(verb, "both") ||
                                    (you && count > 1 && attacker_at(verb, line->end) == 2));
    verb += two;
    if (!verb_at(line, verb) && !act_begins(verb, line->end, false)) {
        return NULL;
    }
    recast_copy(line, out, at, to);
    return verb;
}

/* Where the clause before `at` begins; NULL: nobody is in it, as in out of that screen 5 sprints.
 */
static const struct token *somebody_from(const struct cursor *line, const struct token *at)
{
    bool somebody = false;
    while (at > line->at && !clause_ends(at - 1)) {
        at--;
        somebody = somebody || token_is_player(at) || token_is_among(at, subject_pronouns);
    }
    return somebody ? at : NULL;
}

/* 1 passes to 2 3 cuts: a stop between. */
static const struct token *stop_missing(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    const struct token *from = somebody_from(line, at);
    if (!from || !clause_runs_on(line, from, at)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_mark(&here, out, ',');
    recast_copy(line, out, at, at + 1);
    return at + 1;
}

/* A spot, or somebody who is the object, ends before `at`. */
static bool said_before(const struct cursor *line, const struct token *from, const struct token *at)
{
    static const char *const leads[] = {"to", "at", "off", "for", "of", "on", "with", NULL};
    static const char *const ends[] = {"it", "floor", "him", "her", "ball", "inside", NULL};
    enum { FAR = 4 };
    const struct place *place;
    if (at - from < 2) {
        return false;
    }
    if (token_is_among(at - 1, ends) ||
        (attacker_at(at - 1, line->end) && token_is_among(at - 2, leads))) {
        return true;
    }
    for (const struct token *begin = at - 1; begin > from && begin > at - FAR; begin--) {
        if (spot_end(line, begin, &place) == at) {
            return true;
        }
    }
    return false;
}

/* flashes to the elbow gets it from 1: a joint between. */
static const struct token *joint_missing(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    static const char *const nouns[] = {"screens", "picks", "blocks",  "cuts", "passes",
                                        "wings",   "slots", "corners", NULL};
    const struct token *verb = past_sounds(at, line->end);
    if (verb == line->end || verb->kind != TOKEN_WORD || !ends_in_s(verb) || at->filler ||
        token_is_among(verb, nouns)) {
        return NULL;
    }
    const struct token *from = somebody_from(line, at);
    bool acted = false;
    for (const struct token *word = from; from && word < at && !acted; word++) {
        acted = word->kind == TOKEN_WORD && verb_at(line, word);
    }
    if (!acted || !verb_at(line, verb) || !said_before(line, from, at)) {
        return NULL;
    }
    struct cursor here = line_look(line, verb);
    recast_word(&here, out, "and");
    recast_copy(line, out, verb, verb + 1);
    return verb + 1;
}

/* to the corner the right corner: the second says which. */
static const struct token *place_again(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    (void)out; /* nothing takes its place */
    const struct place *first, *second;
    const struct token *end = spot_end(line, at, &first);
    const struct token *next = end ? past_sounds(end, line->end) : NULL;
    bool again = next && next < line->end && spot_end(line, next, &second) &&
                 first->kind == PLACE_SPOT && second->kind == PLACE_SPOT &&
                 first->spot == second->spot && first->side == SIDE_NONE &&
                 second->side != SIDE_NONE;
    return again ? next : NULL;
}

/* off of that: the screen. */
static const struct token *off_that(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    static const char *const behind[] = {"to", "into", "out", "up", "down", "over", NULL};
    const struct token *that = at + 1;
    if (!token_is_word(at, "off") || that >= line->end) {
        return NULL;
    }
    that += token_is_word(that, "of");
    const struct token *next = that + 1;
    if (that >= line->end || !token_is_word(that, "that") ||
        !(next >= line->end || clause_ends(next) || token_is_among(next, behind))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "it");
    return next;
}

/* on that pass: on the pass. */
static const struct token *that_noun(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const leads[] = {"on", "off",    "after",  "with",
                                        "as", "during", "before", NULL};
    static const char *const those[] = {"that", "this", NULL};
    struct cursor noun = line_look(line, at + 2);
    struct event event;
    if (!token_is_among(at, leads) || at + 2 >= line->end || !token_is_among(at + 1, those) ||
        !(above_noun_is(&noun, false) || above_noun_verb(&noun, &event))) {
        return NULL;
    }
    struct cursor here = line_look(line, at + 1);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "the");
    out->tokens.at[1].filler = true;
    return at + 2;
}

/* cuts through without the ball: as he does; to dribble so makes no sense. */
static const struct token *without_ball(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    static const char *const wheres[] = {"to", "into", "through", "along", NULL};
    struct cursor trial = line_look(line, at);
    if (!take_words(&trial, "without ball") ||
        !(trial.at == line->end || clause_ends(trial.at) || token_is_mark(trial.at, '.') ||
          token_is_among(trial.at, wheres))) {
        return NULL;
    }
    for (const struct token *word = at; word > line->at && !clause_ends(word - 1); word--) {
        if (said_at(word - 1, at, "dribble|drive|pass|shoot|throw|hand|swing|carry|penetrate")) {
            return NULL;
        }
    }
    out->told = span_join(at->span, trial.at[-1].span);
    return trial.at;
}

/* screens, after he is rolling; passes and after run to the rim: then, where nothing waits for it.
 */
static const struct token *after_is_then(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    struct cursor trial = cursor_look(line);
    struct phrase phrase;
    const struct token *verb = at + 1;
    if (at == line->at || !token_is_word(at, "after") || !clause_begins_at(line, at) ||
        verb >= line->end) {
        return NULL;
    }
    bool he = token_is_word(verb, "he") || token_is_word(verb, "she");
    const struct token *end = verb + he;
    trial.at = end;
    bool doing = he && phrase_ing_read(&trial, FOR_ATTACKERS, &phrase);
    const struct token *more = trial.at;
    trial.at = end;
    for (const struct token *word = end; word < line->end; word++) {
        if (word->kind == TOKEN_MARK && word->mark != '.') {
            return NULL; /* after he cuts, 4 fills */
        }
    }
    if (!doing && !verb_begins(&trial)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_word(&here, out, "then");
    recast_copy(line, out, verb, end);
    if (doing) {
        recast_verb(&here, out, str_of(phrase.words));
        return more;
    }
    return end;
}

/* hustles back to, gets back out to. */
static bool goes_back_to(struct cursor *c)
{
    static const char *const goes[] = {"hurries", "hustles", "gets",   "sprints", "scrambles",
                                       "runs",    "rushes",  "races",  "goes",    "hurry",
                                       "hustle",  "get",     "sprint", "run",     "go",
                                       "returns", "return",  "drops",  "comes",   NULL};
    static const char *const ways[] = {"straight", "right",   "out",     "in",
                                       "over",     "quickly", "all way", NULL};
    const struct token *verb = c->at;
    if (!take_among(c, goes)) {
        return false;
    }
    take_among(c, ways);
    if (!take_words(c, "back") && !str_starts(verb->text, "return")) {
        return false;
    }
    while (take_among(c, ways)) {
    }
    return take_words(c, "to");
}

/* own man, player, own. */
static bool his_own_read(struct cursor *c)
{
    bool own = take_words(c, "own");
    return take_among(c, guard_words) || own;
}

/* x5 hustles back to her own player, gets back out to 2: recovers. */
static const struct token *runs_back(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    struct cursor trial = line_look(line, at);
    struct who who;
    bool defends = false;
    for (const struct token *word = line->at; word < at; word++) {
        defends = word->kind == TOKEN_DEFENDER || (defends && !attacker_at(word, line->end));
    }
    if (!defends || !goes_back_to(&trial)) {
        return NULL;
    }
    struct cursor here = line_look(line, at), own = trial;
    if (take_among(&own, owner_words) && his_own_read(&own)) {
        recast_word(&here, out, "recovers");
        return own.at;
    }
    if (!attacker_at(past_fillers(trial.at, line->end), line->end) || !person_read(&trial, &who)) {
        return NULL;
    }
    recast_word(&here, out, "recovers");
    recast_word(&here, out, "to");
    recast_number(&here, out, who.number);
    return trial.at;
}

/* 1 throws it to 5, who has popped to the top: he has gone there before. */
static const struct token *who_has_gone(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    static const char *const has[] = {"has", "has just", "has already", "had", "just", NULL};
    const struct token *who = at;
    if (!clause_begins_at(line, at) || token_is_mark(at, ',')) {
        return NULL;
    }
    while (who < line->end && !token_is_word(who, "who") && !token_is_mark(who, '.') &&
           !token_is_mark(who, ';') && !token_is_word(who, "and") && !token_is_word(who, "then")) {
        who++;
    }
    const struct token *to = who > at && token_is_mark(who - 1, ',') ? who - 1 : who;
    int number = to > at ? attacker_at(to - 1, line->end) : 0;
    struct cursor trial = line_look(line, who + 1);
    struct phrase phrase;
    if (who >= line->end || !number || to - 1 == at || !take_among(&trial, has) ||
        !past_read(&trial, FOR_ATTACKERS, &phrase) || verb_row(phrase.verb)->task != VERB_MOVE) {
        return NULL;
    }
    const struct token *rest = trial.at;
    while (take_among(&trial, particle_words)) {
    }
    if (!spot_behind(&trial, place_words) ||
        !(trial.at == line->end || clause_ends(trial.at) || token_is_mark(trial.at, '.'))) {
        return NULL;
    }
    struct cursor here = line_look(line, who);
    recast_number(&here, out, number);
    recast_verb(&here, out, str_of(phrase.words));
    recast_copy(line, out, rest, trial.at);
    recast_mark(&here, out, ',');
    recast_copy(line, out, at, to);
    return trial.at;
}

/* ---- what comes first ---- */

/* and, so then, right: where a line begins with what joins it to one before. */
static const struct token *line_joint(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const words[] = {"and",     "so",  "but", "well",  "now",
                                        "alright", "and", "ok",  "right", NULL};
    const struct token *to = at;
    bool then = false;
    while (at == line->at && to < line->end &&
           (token_is_among(to, words) || token_is_word(to, "then") ||
            (to > at && past_sounds(to, to + 1) > to))) {
        then = then || token_is_word(to, "then");
        to++;
    }
    bool right = to > at && token_is_word(to - 1, "right"); /* the right wing */
    if (to == at || to == line->end || (to == at + 1 && then) ||
        (right && !to->filler && !attacker_at(to, line->end))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    if (then) {
        recast_word(&here, out, "then");
    }
    return to;
}

const struct token *talk_put(const struct cursor *line, const struct token *at, struct recast *out)
{
    static plain_way *const ways[] = {place_again,   line_joint,   who_has_gone,  subject_again,
                                      off_that,      that_noun,    without_ball,  runs_back,
                                      after_is_then, stop_missing, joint_missing, NULL};
    return first_put(ways, line, at, out);
}
