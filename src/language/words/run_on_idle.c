/* SPDX-License-Identifier: MIT */
/* run_on_idle: clauses of a run-on line that tell nothing to do: how somebody is, what is not done,
 * what is planned. See run_on.h.
 */
#include "language/words/loose_read.h"
#include "language/words/run_on.h"

/* How he is, how it looks. */
static const char *const idle_verbs[] = {
    "is",     "are",   "was",       "has",    "have",    "looks",   "look",    "sees",
    "see",    "reads", "read",      "waits",  "wait",    "knows",   "needs",   "need",
    "wants",  "calls", "turns",     "faces",  "thinks",  "doesn't", "don't",   "isn't",
    "can't",  "honor", "gets open", "ready",  "decides", "had",     "play",    "stays ready",
    "be",     "picks", "faces up",  "jab",    "got",     "catch",   "catches", "takes his time",
    "starts", "start", "working",   "taking", NULL};

/* Something is done at `at` that is drawn. */
static bool deed_at_word(const struct cursor *c, const struct token *at)
{
    static const char *const nouns[] = {
        "elbows", "wings", "corners", "slots", "look", "spots", "blocks", "screens", "action",
        "cutter", "set",   "ball",    "shot",  "down", "right", "up",     "top",     "low",
        "post",   "stack", "box",     "horns", "on",   "play",  NULL};
    return !token_is_among(at, idle_verbs) && !token_is_among(at, nouns) && run_on_verb(c, at);
}

bool run_on_moves(const struct cursor *line, const struct token *from, const struct token *to)
{
    struct cursor part = look_between(line, from, to);
    for (const struct token *at = from; at < to; at++) {
        if (deed_at_word(&part, at)) {
            return true;
        }
    }
    return false;
}

bool run_on_seen(const struct token *from, const struct token *to)
{
    static const char *const sees[] = {"sees", "see", "reads", "read", "feels", NULL};
    static const char *const things[] = {"that", "this", "i", "everybody", NULL};
    return from + 1 < to && ((attacker_at(from, to) && token_is_among(from + 1, sees)) ||
                             token_is_among(from, things));
}

/* 2 has it: whoever has the ball by the lines above, or somebody else. */
static bool has_not(const struct cursor *c, const struct token *people, const struct token *to)
{
    static const char *const has[] = {"has", "got", "have", NULL};
    int number = attacker_at(people - 1, to);
    return number && people + 1 < to && token_is_among(people, has) &&
           (token_is_word(people + 1, "it") ||
            token_is_word(past_fillers(people + 1, to), "ball")) &&
           run_on_holder(c) != number;
}

bool run_on_not(const struct cursor *line, const struct run_on_piece *piece)
{
    static const char *const nots[] = {"doesn't", "don't", "didn't", "isn't gonna",
                                       "won't",   "never", "can't",  NULL};
    static const char *const binds[] = {"until", "unless", "or",     "but",     "instead", "if",
                                        "when",  "till",   "before", "without", "just",    NULL};
    size_t count;
    struct cursor part = look_between(line, piece->from, piece->to);
    const struct token *at = past_sounds(piece->from, piece->to);
    const struct token *people = players_end(&part, at, &count);
    people +=
        people < piece->to && (token_is_among(people, he_or_she) || token_is_word(people, "you"));
    if (people >= piece->to || !token_is_among(people, nots)) {
        return false;
    }
    for (const struct token *word = people + 1; word < piece->to; word++) {
        if (token_is_among(word, binds) || attacker_at(word, piece->to)) {
            return false;
        }
    }
    return true;
}

/* we want to go spain, let's run it through the post: a plan, which nobody carries out by it. */
static bool only_planned(const struct cursor *c, const struct token *at)
{
    static const char *const we[] = {"we", "we're", "let's", "lets", "i", "we'll", NULL};
    static const char *const gives[] = {"lob",  "reverse", "swing",     "hit",       "throw",
                                        "pass", "kick",    "feed",      "give",      "skip",
                                        "dump", "whoever", "whoever's", "whichever", "he",
                                        "him",  "her",     "get",       NULL};
    const struct token *from = at;
    if (at >= c->end || !token_is_among(at, we)) {
        return false;
    }
    for (; at < c->end; at++) {
        if (token_is_player(at) || (token_is_among(at, gives) &&
                                    !said_at(at, c->end, "get it in safe|get it in|get into"))) {
            return false;
        }
    }
    return at > from;
}

bool run_on_idle(const struct cursor *line, const struct run_on_piece *piece)
{
    static const char *const things[] = {"it",      "that",    "this",      "there",    "nobody",
                                         "that's",  "nothing", "they",      "their",    "it's",
                                         "they're", "defense", "everybody", "everyone", NULL};
    static const char *const whats[] = {"can",  "can't",   "has",   "have",  "is",   "are",
                                        "gets", "doesn't", "don't", "could", "will", NULL};
    struct cursor part = look_between(line, piece->from, piece->to);
    const struct token *to = piece->to;
    const struct token *at = run_on_past_openers(&part, past_sounds(piece->from, to));
    bool nothing = !run_on_moves(line, piece->from, to);
    size_t count;
    const struct token *people = at < to ? players_end(&part, at, &count) : at;
    const struct token *verb = people > at ? run_on_past_aux(&part, people) : to;
    for (const struct token *word = at + 1; nothing && people == at && word < to; word++) {
        if (attacker_at(word, to) && !attacker_at(word - 1, to) &&
            token_is_among(at, (const char *const[]){"we", "you", "let's", "get", "then", NULL})) {
            return false; /* we go over there to 2 */
        }
    }
    if (people > at && has_not(&part, people, to)) {
        return false;
    }
    if (nothing && people > at && verb < to && !token_is_among(people, idle_verbs) &&
        !token_is_among(verb, idle_verbs)) {
        return false; /* 4 down low: he does something there, which no verb tells */
    }
    if (nothing || run_on_not(line, piece) || only_planned(&part, past_sounds(piece->from, to))) {
        return true;
    }
    bool player = false, what = false;
    for (const struct token *word = at; word < to; word++) {
        const struct token *next = word + 1 < to ? run_on_past_aux(&part, word + 1) : to;
        player = player || (token_is_player(word) && next < to && run_on_verb(&part, next));
        what = what || token_is_among(word, whats);
    }
    bool thing = at < to && (token_is_among(at, things) || token_is_among(at, owner_words));
    return !player && what && (thing || (piece->so && at < to && token_is_among(at, he_or_she)));
}
