/* SPDX-License-Identifier: MIT */
/* wanted: what the coach wants, told in front of it: `what I want here is 3 cutting to the corner
 * and 4 filling`, `start out with 1 dribbling over`, `I want 2 to come off it`. Who is to do it
 * does it. A rule of unfold.h. */
#include "language/words/unfold.h"

const char *const what_is_said[] = {"what i want is",
                                    "what i want here is",
                                    "what we want is",
                                    "what we want here is",
                                    "what i need is",
                                    "what we need is",
                                    "what we do is",
                                    "what we get is",
                                    "what we have is",
                                    "what you get is",
                                    "what we are looking for is",
                                    "what we are going to do is",
                                    "what we're going to do is",
                                    "what were going to do is",
                                    "what we are gonna do is",
                                    "what we're gonna do is",
                                    "what were gonna do is",
                                    "what i am going to do is",
                                    "what i would like is",
                                    "what i'd like is",
                                    "what happens is",
                                    "what we run is",
                                    "what we want to do is",
                                    "what you do is",
                                    "all we do is",
                                    "all we want is",
                                    "the idea is",
                                    "the way it goes is",
                                    "the play is",
                                    NULL};
static const char *const wishes[] = {"start out with",
                                     "starts out with",
                                     "start with",
                                     "starts with",
                                     "we start with",
                                     "we start out with",
                                     "it starts with",
                                     "begin with",
                                     "we begin with",
                                     "it begins with",
                                     "we have",
                                     "we have got",
                                     "we got",
                                     "we get",
                                     "i want",
                                     "we want",
                                     "i need",
                                     "we need",
                                     "i would like",
                                     "i have",
                                     "i have got",
                                     "i got",
                                     "we are going to have",
                                     "we will have",
                                     "we are gonna have",
                                     "i am gonna have",
                                     NULL};

bool skip_talk(struct cursor *c)
{
    static const char *const small[] = {"so",      "you know",  "okay", "ok",  "um",   "uh",
                                        "alright", "all right", "and",  "now", "well", NULL};
    bool then = false, first;
    do {
        first = take_words(c, "then");
        then = then || first;
    } while (first || take_among(c, small));
    return then;
}

/* 3 cutting, 3 to cut: puts who does it, and that he does it; gives where the rest begins. */
static const struct token *put_wanted(const struct cursor *c, const struct token *at,
                                      struct recast *r)
{
    struct cursor trial = line_look(c, at);
    struct somebody who;
    struct phrase phrase;
    struct str bare;
    if (at->kind != TOKEN_NUMBER || at->possessive || !player_here(&trial, &who) ||
        who.who.kind != WHO_PLAYER) {
        return NULL;
    }
    static const char *const leads[] = {"to be", "is", "just", NULL};
    static const struct entry kinds[] = {{"down screening", 0},  {"back screening", 1},
                                         {"cross screening", 2}, {"ball screening", 3},
                                         {"up screening", 1},    {"flare screening", 4},
                                         {"pinning down", 0},    {NULL, 0}};
    static const char *const screens[] = {"down-screens", "back-screens", "cross-screens",
                                          "ball-screens", "flare-screens"};
    take_among(&trial, leads);
    int kind = take_entry(&trial, kinds);
    if (kind >= 0) {
        recast_somebody(c, r, &who);
        recast_word(c, r, screens[kind]);
        return trial.at;
    }
    struct cursor to = line_look(c, who.to);
    if (phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare)) {
        recast_somebody(c, r, &who);
        put_third(c, r, bare);
        return trial.at;
    }
    if (!take_words(&to, "to")) {
        return NULL;
    }
    static const char *const ways[] = {"just", "go and", "come and", "go ahead and", NULL};
    take_among(&to, ways);
    const struct token *verb = to.at;
    if (!phrase_read(&to, FOR_ATTACKERS, &phrase)) {
        return NULL;
    }
    recast_somebody(c, r, &who);
    recast_verb(c, r, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
    return to.at > verb ? to.at : NULL;
}

/* The rest of the line, with each who is to do something doing it. */
static void put_rest(const struct cursor *c, const struct token *at, struct recast *r)
{
    bool joined = false;
    while (at < c->end) {
        const struct token *done = joined ? put_wanted(c, at, r) : NULL;
        joined = clause_ends(at) || (joined && at->filler);
        if (!done) {
            recast_copy(c, r, at, at + 1);
        }
        at = done ? done : at + 1;
    }
}

bool wanted(const struct cursor *c, struct recast *r)
{
    struct cursor head = line_look(c, c->at);
    bool then = skip_talk(&head);
    const struct token *from = head.at;
    if (!take_among(&head, what_is_said) && !take_among(&head, wishes)) {
        return false;
    }
    if (skip_talk(&head) || then) {
        recast_word(c, r, "then");
    }
    const struct token *rest = head.at < c->end ? put_wanted(c, head.at, r) : NULL;
    if (!rest) {
        r->tokens.count = 0;
        return false;
    }
    put_rest(c, rest, r);
    r->told = span_join(from->span, head.at[-1].span);
    return true;
}
