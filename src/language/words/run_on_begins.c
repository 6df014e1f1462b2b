/* SPDX-License-Identifier: MIT */
/* run_on_begins: where somebody begins to do something, in a line without marks. See run_on.h.
 */
#include "language/words/loose_read.h"
#include "language/words/run_on.h"

static const char *const auxiliaries[] = {"is going to",
                                          "are going to",
                                          "is gonna",
                                          "are gonna",
                                          "gonna",
                                          "going to",
                                          "has got to",
                                          "have got to",
                                          "got to",
                                          "gotta",
                                          "has to",
                                          "have to",
                                          "needs to",
                                          "need to",
                                          "gets to",
                                          "wants to",
                                          "want to",
                                          "wanna",
                                          "will",
                                          "can",
                                          "just",
                                          "simply",
                                          "now",
                                          "also",
                                          "then",
                                          "quickly",
                                          "quick",
                                          "immediately",
                                          "right away",
                                          "kind of",
                                          "sort of",
                                          "kinda",
                                          "goes ahead and",
                                          "go ahead and",
                                          "basically",
                                          "actually",
                                          "really",
                                          "is",
                                          "are",
                                          "guys",
                                          "you guys",
                                          "guys are",
                                          "you",
                                          "you are",
                                          "you're",
                                          "you'll",
                                          "you've",
                                          "you've got to",
                                          "you both",
                                          "you all",
                                          "you go ahead and",
                                          "he",
                                          "she",
                                          "they",
                                          "both",
                                          "should",
                                          "must",
                                          "right off",
                                          "to",
                                          "do",
                                          "might",
                                          "already",
                                          "first",
                                          "has",
                                          "slowly",
                                          "hard",
                                          "gets ready to",
                                          "starts to",
                                          "from there",
                                          NULL};

const struct token *run_on_past_aux(const struct cursor *c, const struct token *at)
{
    struct cursor trial = line_look(c, past_sounds(at, c->end));
    while (trial.at < c->end && take_among(&trial, auxiliaries)) {
        trial.at = past_sounds(trial.at, c->end);
    }
    return trial.at;
}

bool run_on_verb(const struct cursor *c, const struct token *at)
{
    static const char *const nouns[] = {"screen", "pick",  "post", "cut",  "pass",  "block",
                                        "drive",  "shot",  "roll", "help", "trap",  "top",
                                        "hand",   "catch", "down", "up",   "right", "on",
                                        "low",    "ball",  "drag", "run",  NULL};
    if (at >= c->end || at->kind != TOKEN_WORD || at->possessive) {
        return false;
    }
    if (at > c->at && token_is_among(at, nouns) && at[-1].filler) { /* the screen */
        return false;
    }
    return verb_at(c, at) || act_begins(at, c->end, false) || act_begins(at, c->end, true);
}

static const char *const states[] = {
    "is",      "are",   "was",   "has",    "have",  "had",    "isn't", "can",    "can't",
    "doesn't", "don't", "will",  "won't",  "looks", "sees",   "waits", "reads",  "gotta",
    "knows",   "needs", "wants", "should", "might", "gets",   "got",   "comes",  "helps",
    "goes",    "calls", "turns", "stays",  "wait",  "wanted", "does",  "stands", "plays",
    "starts",  "keeps", "holds", "gonna",  "look",  "cannot", NULL};

bool run_on_done(const struct cursor *c, const struct token *at)
{
    const struct token *verb = run_on_past_aux(c, at);
    return at < c->end && (token_is_among(past_sounds(at, c->end), states) ||
                           (verb < c->end && token_is_among(verb, states)) || run_on_verb(c, verb));
}

/* 4, 4 and 5, x3, 3's man, the two bigs: where the words for who acts end; NULL: nobody. */
const struct token *run_on_somebody(const struct cursor *c, const struct token *at)
{
    static const char *const nobody[] = {
        "he",   "she",   "they", "you",       "we",     "i",        "it",      "that",
        "this", "there", "who",  "everybody", "nobody", "everyone", "nothing", NULL};
    static const char *const short_forms[] = {
        "we're", "you're", "they're", "i'm",  "we'll", "you'll", "let's",   "lets",
        "we've", "you've", "that's",  "we'd", "i'd",   "he'll",  "they'll", NULL};
    size_t count;
    const struct token *people = players_end(c, at, &count);
    if (count > 0) {
        return people;
    }
    if (at->kind == TOKEN_WORD && !at->possessive &&
        (token_is_among(at, nobody) || token_is_among(at, short_forms))) {
        return at + 1;
    }
    static const char *const men[] = {"man",   "guy",   "girl",   "defender", "kid",    "big",
                                      "guard", "bigs",  "guards", "help",     "ball",   "defense",
                                      "trap",  "wings", "others", "rest",     "double", "corners",
                                      "post",  "guys",  NULL};
    static const char *const before[] = {
        "his",   "her",    "their",   "our",   "two",   "top",  "low",  "middle", "bottom",
        "back",  "weak",   "side",    "front", "first", "last", "both", "left",   "right",
        "other", "corner", "outside", "point", "short", "wing", "nail", NULL};
    const struct token *word = at;
    while (word < c->end && word < at + 5 &&
           (word->filler || token_is_among(word, before) ||
            (word == at && word->kind == TOKEN_NUMBER))) {
        word++;
    }
    return word < c->end && token_is_among(word, men) && (word > at || token_is_word(at, "help"))
               ? word + 1
               : NULL;
}

bool run_on_begins(const struct cursor *c, const struct token *at)
{
    at = past_sounds(at, c->end);
    if (at >= c->end) {
        return false;
    }
    const struct token *behind = run_on_somebody(c, at);
    return behind && behind < c->end &&
           (run_on_done(c, behind) || (at->kind == TOKEN_WORD && behind == at + 1));
}

/* 4 in the far corner he comes, 1 on the weak side you go: where he stands is no part of what he
 * does. */
const struct token *run_on_past_where(const struct cursor *c, const struct token *from)
{
    static const char *const leads[] = {"in",   "on",  "at",     "up",  "down",  "over", "out",
                                        "from", "off", "behind", "way", "under", NULL};
    static const char *const again[] = {"he", "she", "you", "they", NULL};
    enum { FAR = 8 };
    if (from >= c->end || !token_is_among(from, leads)) {
        return NULL;
    }
    for (const struct token *at = from + 1; at < c->end && at < from + FAR; at++) {
        if (at->kind != TOKEN_WORD) {
            return NULL;
        }
        if (token_is_among(at, again)) {
            return at + 1 < c->end && run_on_done(c, at + 1) ? at : NULL;
        }
    }
    return NULL;
}
