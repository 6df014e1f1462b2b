/* SPDX-License-Identifier: MIT */
/* why: what stands in front of a sentence and says why, or how soon, and moves nobody, though
 * somebody is named in it: `2 can't see anything, so back to 1`, `I like it better if 5 starts
 * lower. 5 to the elbow`, `before the trap gets there, 2 passes`. Left out, with a note. Rules of
 * recast_find. */
#include "language/words/speech.h"

/* A sentence, or what is read as one, begins here. */
static bool begins(const struct cursor *c)
{
    struct recast recast;
    return subject_verb_is(c) || recast_find(c, &recast);
}

/* How somebody is, or what he lacks. */
static bool take_state_of(struct cursor *c)
{
    static const char *const states[] = {"can't",
                                         "cannot",
                                         "could not",
                                         "couldn't",
                                         "has no",
                                         "has nothing",
                                         "doesn't have",
                                         "does not have",
                                         "isn't open",
                                         "is not open",
                                         "isn't there",
                                         "is covered",
                                         "is denied",
                                         "is stuck",
                                         "is trapped",
                                         "is in trouble",
                                         "is overplayed",
                                         "is guarded",
                                         "is hot",
                                         "is tired",
                                         "is taller",
                                         "is smaller",
                                         "is bigger",
                                         "is quicker",
                                         "is slower",
                                         "is our",
                                         "is their",
                                         "is the best",
                                         "is a good",
                                         "is a great",
                                         "has a mismatch",
                                         "has the mismatch",
                                         "has a smaller",
                                         "has a bigger",
                                         "has a slower",
                                         "deserves",
                                         "likes",
                                         "loves",
                                         "sees nothing",
                                         "finds nothing",
                                         "gets nothing",
                                         "doesn't see",
                                         "does not see",
                                         "is smothered",
                                         "is under pressure",
                                         "has it going",
                                         "has the hot hand",
                                         "has a small",
                                         "is asleep",
                                         "is not looking",
                                         "isn't looking",
                                         "is ball watching",
                                         "turns his head",
                                         "turns her head",
                                         "is late",
                                         NULL};
    return take_among(c, states);
}

/* 2 can't see anything, so back out to 1; our shooter 2 deserves a look, so 5 pins for him. */
bool why_first(const struct cursor *c, struct recast *r)
{
    static const char *const joints[] = {"and so", "so that's why", "so then",   "so now",
                                         "so",     "that's why",    "therefore", NULL};
    struct cursor trial = cursor_look(c);
    struct who who;
    const struct token *from = cursor_next(c);
    if (!from || !person_read(&trial, &who) || !take_state_of(&trial)) {
        return false;
    }
    for (; trial.at < c->end; trial.at++) {
        struct cursor next = trial;
        if (trial.at->kind == TOKEN_MARK && trial.at->mark != ',') {
            return false;
        }
        bool comma = take_mark(&next, ',');
        bool so = comma && next.at < next.end && str_is(next.at->text, "so"); /* a filler there */
        next.at += so;
        if ((!take_among(&next, joints) && !so) || !begins(&next)) {
            continue;
        }
        r->to = next.at;
        r->told = span_join(from->span, trial.at[-1].span);
        return true;
    }
    return false;
}

/* I like it better if, it works better when: raw words, for `like` says nothing elsewhere. */
static const struct token *liking(const struct token *at, const struct token *end)
{
    static const char *const heads[] = {"i", "i'd", "it", "we", NULL};
    static const char *const likes[] = {"like", "love", "prefer", "better", "hate", "rather", NULL};
    static const char *const conditions[] = {"if", "when", NULL};
    enum { FAR = 7 };
    bool likes_it = false;
    if (!token_is_among(at, heads)) {
        return NULL;
    }
    for (const struct token *word = at + 1; word < end && word < at + FAR; word++) {
        if (word->kind != TOKEN_WORD) {
            return NULL;
        }
        likes_it = likes_it || token_is_among(word, likes);
        if (token_is_among(word, conditions)) {
            return likes_it ? word + 1 : NULL;
        }
    }
    return NULL;
}

/* I like it better if 5 starts a bit lower but okay. / Up to the full stop. */
bool liked_better(const struct cursor *c, struct recast *r)
{
    const struct token *from = cursor_next(c);
    const struct token *at = from ? liking(from, c->end) : NULL;
    if (!at) {
        return false;
    }
    static const char *const joints[] = {"but", "so", "and", NULL};
    const struct token *condition = at;
    for (; at < c->end && !(at->kind == TOKEN_MARK && at->mark != ','); at++) {
        struct cursor next = cursor_look(c);
        next.at = at;
        bool joined = take_mark(&next, ',');
        joined = take_among(&next, joints) || joined;
        if (joined && at > condition && begins(&next)) { /* but 3 cuts: somebody is to do it */
            r->to = next.at;
            r->told = span_join(from->span, at[-1].span);
            return true;
        }
    }
    r->to = at;
    r->told = span_join(from->span, at[-1].span);
    return r->remark = true;
}

/* before contact; before any pass can hurt her: of nobody by number, to where the part ends. */
static bool take_threat(struct cursor *c)
{
    static const char *const alone[] = {"contact", "impact", "any contact", "first contact", NULL};
    static const char *const who[] = {"any pass",    "pass",      "another pass", "anything",
                                      "defense",     "defence",   "zone",         "help",
                                      "double team", "trap",      "press",        "anybody",
                                      "anyone",      "defenders", "rotation",     "they",
                                      "weak side",   "help side", "other team",   NULL};
    static const char *const what[] = {"can",  "could",  "is",   "are", "has",   "have",
                                       "gets", "shifts", "sets", "get", "shift", NULL};
    struct cursor trial = *c;
    if (take_among(&trial, alone)) {
        c->at = trial.at;
        return true;
    }
    if (!take_among(&trial, who) || !take_among(&trial, what)) {
        return false;
    }
    while (trial.at < trial.end && !clause_ends(trial.at)) {
        if (trial.at->kind != TOKEN_WORD) {
            return false;
        }
        trial.at++;
    }
    c->at = trial.at;
    return true;
}

/* before the trap gets there, / before they recover: how soon, and nothing that can be waited for.
 */
static bool take_hurry(struct cursor *c)
{
    static const char *const who[] = {"trap",      "double",  "double team",     "help",
                                      "defense",   "defence", "second defender", "rotation",
                                      "closeout",  "they",    "anybody",         "anyone",
                                      "defenders", "zone",    "press",           "second man",
                                      NULL};
    static const char *const what[] = {
        "gets there", "get there",  "comes",       "come",          "arrives",     "arrive",
        "recovers",   "recover",    "gets set",    "get set",       "is set",      "are set",
        "gets back",  "get back",   "can recover", "can react",     "reacts",      "react",
        "shifts",     "shift",      "can shift",   "gets over",     "can rotate",  "rotates",
        "rotate",     "closes",     "can close",   "can get there", "can come",    "can get set",
        "can help",   "helps",      "catches up",  "can trap",      "gets to him", "gets to her",
        "get to him", "get to her", "knows it",    "notices",       "wakes up",    NULL};
    struct cursor trial = *c, threat = *c;
    if (take_words(&threat, "before") && take_threat(&threat)) {
        c->at = threat.at;
        return true;
    }
    if (!take_words(&trial, "before") || !take_among(&trial, who) || !take_among(&trial, what)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

bool hurry_first(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    const struct token *from = cursor_next(c);
    if (!from || !take_hurry(&trial)) {
        return false;
    }
    r->told = cursor_taken(&trial, from);
    take_mark(&trial, ',');
    r->to = trial.at;
    return begins(&trial);
}

/* not before: what a clause in front has said. */
static bool take_stress(struct cursor *c)
{
    static const char *const words[] = {"not before",  "not sooner",          "no sooner",
                                        "not earlier", "not a second before", "no earlier",
                                        NULL};
    return take_among(c, words);
}

bool hurry_behind(struct cursor *c)
{
    struct cursor trial = cursor_look(c);
    const struct token *from = cursor_next(c);
    if (!c->speech || !(take_hurry(&trial) || take_stress(&trial)) || !part_ends(&trial)) {
        return false;
    }
    if (!take_hurry(c)) {
        take_stress(c);
    }
    note_left_out(c, cursor_taken(c, from));
    return true;
}
