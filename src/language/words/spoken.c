/* SPDX-License-Identifier: MIT */
/* spoken: what a speaker tells in order to tell something else: what somebody does not do before
 * what he does (`5 doesn't roll he pops`), what he only shows (`runs up like he's going to screen
 * but he slips`), where he looks before he throws it. Ways of plain.c, tried before all others. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"

enum { SHORT = 9 }; /* as many words tell of it, at most */

/* doesn't, isn't, can't; phones and hands leave the mark out. */
static bool take_not(struct cursor *c)
{
    static const char *const nots[] = {
        "doesn't", "doesnt",     "does not",  "don't",       "dont",   "do not",
        "didn't",  "didnt",      "did not",   "can't",       "cant",   "cannot",
        "won't",   "wont",       "isn't",     "isnt",        "is not", "ain't",
        "never",   "is covered", "is denied", "is not open", NULL};
    return take_among(c, nots);
}

/* Between what is not done and what is, it must be the same moment, and no condition. */
static bool binds(const struct token *at)
{
    static const char *const words[] = {"until", "till",    "til",   "unless",  "if", "when",
                                        "after", "before",  "while", "once",    "or", "because",
                                        "than",  "just as", "yet",   "anymore", NULL};
    return token_is_among(at, words) || token_is_mark(at, '.') || token_is_mark(at, ';') ||
           token_is_mark(at, '?');
}

/* Somebody begins to do something at `at`, spoken of as the same: he, or the number again. Gives
 * where the verb begins. */
static const struct token *same_acts(const struct cursor *line, const struct token *at, int number)
{
    static const char *const small[] = {"just", "instead", "kinda", "kind", "of", "actually", NULL};
    bool he = token_is_among(at, he_or_she);
    if (!he && !(number && attacker_at(at, line->end) == number)) {
        return NULL;
    }
    const struct token *verb = past_sounds(at + 1, line->end);
    while (verb < line->end && token_is_among(verb, small)) {
        verb = past_sounds(verb + 1, line->end);
    }
    return verb < line->end && (verb_at(line, verb) || act_begins(verb, line->end, false)) ? verb
                                                                                           : NULL;
}

/* From what is not done on: where the same player does something, behind `he`; NULL: not told.
 * `*joint`: where what stands between ends. */
static const struct token *done_instead(const struct cursor *line, const struct token *at,
                                        int number, const struct token **joint)
{
    for (const struct token *word = at; word < line->end && word < at + SHORT; word++) {
        const struct token *verb = same_acts(line, word, number);
        if (binds(word)) {
            return NULL;
        }
        if (verb && word > at) {
            *joint = word;
            return verb;
        }
        if (word > at && attacker_at(word, line->end) && word + 1 < line->end &&
            verb_at(line, word + 1)) { /* another one acts */
            return NULL;
        }
    }
    return NULL;
}

/* Who is spoken of at `at`: a number, he, or nobody at all. */
static bool spoken_of(const struct cursor *line, const struct token *at, int *number, bool *nobody)
{
    static const char *const none[] = {"nobody", "no one", NULL};
    struct cursor trial = line_look(line, at);
    *number = attacker_at(at, line->end);
    *nobody = take_among(&trial, none);
    return *number || *nobody || token_is_among(at, he_or_she);
}

/* 5 doesn't roll he pops, but he doesn't he slips, he can't score so he throws it: what is done. */
static const struct token *not_but(const struct cursor *line, const struct token *at,
                                   struct recast *out)
{
    int number;
    bool nobody;
    const struct token *who = at + (token_is_word(at, "but") && at + 1 < line->end);
    if (!spoken_of(line, who, &number, &nobody) || (at > line->at && binds(at - 1))) {
        return NULL;
    }
    struct cursor trial = line_look(line, past_sounds(who + 1, line->end));
    if (nobody ? !verb_at(line, trial.at) : !take_not(&trial)) {
        return NULL;
    }
    const struct token *joint = NULL,
                       *verb = done_instead(line, trial.at - !nobody, number, &joint);
    if (!verb) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    out->told = span_join(who->span, joint[-1].span);
    if (number) {
        recast_number(&here, out, number);
        return verb;
    }
    if (at > line->at && !clause_ends(at - 1)) {
        recast_mark(&here, out, ',');
    }
    return joint;
}

/* he doesn't stop, he doesn't go anywhere: what he does not, moves nobody. */
static const struct token *stays_so(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    static const char *const rests[] = {
        "stop", "go anywhere",      "move",      "do anything", "need it", "stop there", "hesitate",
        "wait", "go anywhere else", "slow down", NULL};
    int number;
    bool nobody;
    const struct token *who = at + (token_is_word(at, "and") || token_is_mark(at, ','));
    if (at == line->at || who >= line->end || !spoken_of(line, who, &number, &nobody) || nobody ||
        binds(at - 1)) {
        return NULL;
    }
    struct cursor trial = line_look(line, who + 1);
    if (!take_not(&trial) || !take_among(&trial, rests) ||
        !(trial.at == line->end || clause_ends(trial.at))) {
        return NULL;
    }
    out->told = span_join(who->span, trial.at[-1].span);
    return trial.at;
}

/* like he's going to screen: gives where what he only shows begins; NULL: not said. */
static const struct token *shown_at(const struct cursor *line, const struct token *at)
{
    static const char *const likes[] = {"like", "as if", "as though", NULL};
    static const char *const he_is[] = {"he is",    "she is", "hes",     "shes",
                                        "they are", "theyre", "they're", "he was",
                                        "she was",  "he",     "she",     NULL};
    static const char *const goings[] = {"going", "gonna",     "about to", "coming", "setting",
                                         "to",    "screening", "cutting",  NULL};
    struct cursor trial = line_look(line, at);
    if (!take_among(&trial, likes) || trial.at >= line->end) {
        return NULL;
    }
    struct token he = *trial.at; /* he's */
    he.possessive = false;
    bool owns = trial.at->possessive && token_is_among(&he, he_or_she);
    trial.at += owns;
    return (owns || take_among(&trial, he_is)) && take_among(&trial, goings) ? trial.at : NULL;
}

/* 2 runs up like he's going to screen for 1 but he slips: slips. */
static const struct token *only_shows(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    enum { FAR = 6 };
    int number = attacker_at(at, line->end);
    const struct place *place;
    const struct token *like = at + 1, *joint = NULL;
    if (!number || !clause_begins_at(line, at)) {
        return NULL;
    }
    while (like < line->end && like < at + FAR && like->kind == TOKEN_WORD &&
           !shown_at(line, like) && !clause_ends(like) && !spot_end(line, like, &place)) {
        like++;
    }
    const struct token *shown = like < line->end ? shown_at(line, like) : NULL;
    const struct token *verb = shown ? done_instead(line, shown, number, &joint) : NULL;
    for (const struct token *word = shown; verb && word < joint; word++) {
        verb = token_is_word(word, "so") ? NULL : verb;
    }
    if (!verb) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_number(&here, out, number);
    out->told = span_join(at[1].span, joint[-1].span);
    if (token_is_word(verb, "slips")) { /* of a screen that he has not set */
        recast_word(&here, out, "goes");
        return verb + 1;
    }
    return verb;
}

/* ---- where he looks ---- */

/* looks at 5 and drops it in: passes to 5. */
static const struct token *looks_and_gives(const struct cursor *line, const struct token *at,
                                           struct recast *out)
{
    static const char *const looks[] = {"looks at",    "look at",   "looks in to",   "looks to",
                                        "looks in at", "looks for", "looks down at", NULL};
    static const char *const posts[] = {"in post", "inside", "down low", "at post", NULL};
    static const char *const gives[] = {"drops it",   "throws it", "dumps it",  "puts it",
                                        "gets it",    "feeds it",  "passes it", "gives it",
                                        "bounces it", NULL};
    static const char *const ins[] = {"down in there", "in there",    "down there", "over there",
                                      "in to him",     "down to him", "in to her",  "down to her",
                                      "to him",        "to her",      "inside",     "in",
                                      "down",          "over",        NULL};
    struct cursor trial = line_look(line, at);
    struct cursor place;
    if (!take_among(&trial, looks)) {
        return NULL;
    }
    const struct token *whom = past_fillers(trial.at, line->end), *end = whom + 1;
    if (whom >= line->end || !(attacker_at(whom, line->end) || token_is_word(whom, "him") ||
                               token_is_word(whom, "her"))) {
        return NULL;
    }
    trial.at = end;
    take_among(&trial, posts);
    place = trial;
    bool spot = spot_behind(&trial, place_words) != NULL;
    const struct token *from = place.at, *to = spot ? trial.at : place.at;
    take_mark(&trial, ',');
    take_words(&trial, "and");
    if (!take_among(&trial, gives) || !take_among(&trial, ins) ||
        !(trial.at == line->end || clause_ends(trial.at))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    out->told = at->span;
    recast_word(&here, out, "passes");
    recast_word(&here, out, "to");
    recast_copy(line, out, whom, end);
    recast_copy(line, out, from, to);
    return trial.at;
}

/* 3 looks at 5, nah he's covered, so he gives it back: gives it back. */
static const struct token *looks_for_nothing(const struct cursor *line, const struct token *at,
                                             struct recast *out)
{
    static const char *const looks[] = {"looks at", "looks to", "looks for", "looks inside", NULL};
    static const char *const nothing[] = {"nah",     "nope",      "no",    "nothing", "but",
                                          "covered", "not",       "isn't", "isnt",    "denied",
                                          "there",   "nothing's", NULL};
    enum { FAR = 12 };
    int number = attacker_at(at, line->end);
    struct cursor trial = line_look(line, at + 1);
    bool none = false;
    if (!number || !clause_begins_at(line, at) || !take_among(&trial, looks)) {
        return NULL;
    }
    for (const struct token *word = trial.at; word < line->end && word < at + FAR; word++) {
        none = none || token_is_among(word, nothing);
        const struct token *he = word + 1;
        const struct token *verb = none && he < line->end && token_is_word(word, "so")
                                       ? same_acts(line, he, number)
                                       : NULL;
        if (binds(word)) {
            return NULL;
        }
        if (verb) {
            struct cursor here = line_look(line, at);
            recast_number(&here, out, number);
            out->told = span_join(at[1].span, word->span);
            return verb;
        }
    }
    return NULL;
}

const struct token *spoken_put(const struct cursor *line, const struct token *at,
                               struct recast *out)
{
    static plain_way *const ways[] = {only_shows,      not_but,           stays_so,
                                      looks_and_gives, looks_for_nothing, NULL};
    return first_put(ways, line, at, out);
}
