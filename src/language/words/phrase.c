/* SPDX-License-Identifier: MIT */
/* phrase: verbs as they are said: the longest entry wins, bare or with its -s. */
#include <string.h>

#include "language/words/vocabulary.h"

static const struct phrase phrases[] = {
#define PHRASE(verb_, words_, bare_, pass_, screen_, with_, spot_)                                 \
    {.words = words_,                                                                              \
     .bare = bare_,                                                                                \
     .verb = VERB_##verb_,                                                                         \
     .pass = PASS_##pass_,                                                                         \
     .screen = SCREEN_##screen_,                                                                   \
     .with = with_,                                                                                \
     .to = SPOT_##spot_},
#include "language/words/phrases.def"
#undef PHRASE
};

enum { OWN = sizeof phrases / sizeof *phrases };

size_t phrase_count(void)
{
    return OWN + VERB_COUNT;
}

/* The rows of phrases.def, then each verb's own words. */
struct phrase phrase_at(size_t index)
{
    if (index < OWN) {
        return phrases[index];
    }
    enum verb verb = (enum verb)(index - OWN);
    return (struct phrase){.words = verb_row(verb)->words,
                           .bare = verb_row(verb)->bare,
                           .verb = verb,
                           .with = "",
                           .to = SPOT_COUNT};
}

bool phrase_has(const struct phrase *phrase, char letter)
{
    return strchr(phrase->with, letter) != NULL;
}

static bool suits(const struct phrase *phrase, enum phrase_side side)
{
    bool guard = verb_row(phrase->verb)->task == VERB_GUARD;
    if (side == FOR_ANYONE || phrase->verb == VERB_STAYS) {
        return true;
    }
    return guard == (side == FOR_DEFENDERS);
}

/* `it` and `the ball` behind a word of a ball verb are used up, but not where they begin something
 * else: ball side, ball screens. */
static void take_it(struct cursor *c)
{
    if (take_words(c, "it")) {
        return;
    }
    bool other = word_is(c, 1, "side") || word_is(c, 1, "screen") || word_is(c, 1, "screens") ||
                 word_is(c, 0, "ballside");
    if (word_is(c, 0, "ball") && !other) {
        take_words(c, "ball");
    }
}

/* Takes the words in one piece, or a ball verb's with `it` inside or behind. */
static bool take_form(struct cursor *c, struct str words, bool ball)
{
    struct cursor trial = *c;
    if (take_str(&trial, words)) {
        if (ball) {
            take_it(&trial);
        }
        c->at = trial.at;
        return true;
    }
    const char *space = ball ? memchr(words.at, ' ', words.size) : NULL;
    if (!space) {
        return false;
    }
    struct str first = {words.at, (size_t)(space - words.at)};
    struct str rest = {space + 1, words.size - first.size - 1};
    trial = *c;
    if (!take_str(&trial, first)) {
        return false;
    }
    take_it(&trial);
    if (!take_str(&trial, rest)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static bool take_phrase(struct cursor *c, struct phrase *phrase, bool own)
{
    bool ball = phrase_has(phrase, 'B');
    struct str words = own ? verb_head(phrase->verb, false) : str_of(phrase->words);
    struct str bare = own ? verb_head(phrase->verb, true) : str_of(phrase->bare);
    phrase->with_s = take_form(c, words, ball);
    return phrase->with_s || take_form(c, bare, ball);
}

/* make, set, take, give and a noun: sets a down screen, gives a pump fake. */
static bool light_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS || !take_among(&trial, light_words)) {
        return false;
    }
    const struct token *longest = NULL;
    for (size_t i = 0; i < OWN; i++) {
        struct cursor noun = trial;
        if (phrase_has(&phrases[i], 'N') && take_words(&noun, phrases[i].bare) &&
            (!longest || noun.at > longest)) {
            longest = noun.at;
            *out = phrases[i];
        }
    }
    if (longest) {
        c->at = longest;
    }
    return longest != NULL;
}

bool phrase_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    const struct token *longest = c->at;
    for (size_t i = 0; i < phrase_count(); i++) {
        struct phrase phrase = phrase_at(i);
        struct cursor trial = *c;
        if (suits(&phrase, side) && take_phrase(&trial, &phrase, i >= OWN) && trial.at > longest) {
            longest = trial.at;
            *out = phrase;
        }
    }
    if (longest == c->at) {
        return light_read(c, side, out);
    }
    struct cursor trial = *c;
    struct phrase noun;
    if (light_read(&trial, side, &noun) && trial.at > longest) {
        longest = trial.at;
        *out = noun;
    }
    c->at = longest;
    return true;
}

struct str phrase_words(enum verb verb, enum pass_kind pass, enum screen_kind screen, bool bare)
{
    for (size_t i = 0; i < OWN && (pass != PASS_PLAIN || screen != SCREEN_PLAIN); i++) {
        const struct phrase *phrase = &phrases[i];
        if (phrase->verb == verb && phrase->pass == pass && phrase->screen == screen) {
            return str_of(bare ? phrase->bare : phrase->words);
        }
    }
    return verb_head(verb, bare);
}

const char *phrase_nearest(const struct cursor *c, enum phrase_side side)
{
    const char *nearest = NULL;
    size_t best = 3;
    /* a full list keeps no helps: a long file of mistakes is read as fast as any */
    for (size_t i = 0; i < phrase_count() && !c->diags->full; i++) {
        struct phrase phrase = phrase_at(phrase_count() - 1 - i);
        if (!suits(&phrase, side)) {
            continue;
        }
        size_t with_s = words_distance(c, phrase.words);
        size_t bare = words_distance(c, phrase.bare);
        size_t distance = with_s < bare ? with_s : bare;
        if (distance > 0 && distance < best) { /* the very word is what was refused */
            best = distance;
            nearest = phrase.words;
        }
    }
    return nearest;
}
