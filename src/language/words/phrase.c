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
    return phrase->with[0] != '\0' && strchr(phrase->with, letter) != NULL;
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

/* `his man`, `her defender`: who guards the one that acts. */
static bool take_own_defender(struct cursor *c)
{
    static const char *const owners[] = {"his", "her", "their", NULL};
    static const char *const defenders[] = {"man", "defender", NULL};
    struct cursor trial = *c;
    take_among(&trial, owners);
    if (!take_among(&trial, defenders)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static void take_screen(struct cursor *c)
{
    static const char *const screens[] = {"screen", "ball screen", "pick", "top of screen", NULL};
    take_among(c, screens);
}

/* What may stand inside or behind the words of a row and adds nothing to them; false: it must, and
 * does not. */
static bool take_extra(struct cursor *c, struct phrase *phrase)
{
    if (phrase_has(phrase, 'B')) {
        take_it(c);
    }
    if (phrase_has(phrase, 'S')) {
        take_screen(c);
    }
    if (phrase_has(phrase, 'D') || phrase_has(phrase, 'E')) {
        return take_own_defender(c) || phrase_has(phrase, 'D');
    }
    return true;
}

/* The player of boxes 2 out. */
static bool take_inside(struct cursor *c, struct phrase *phrase)
{
    const struct token *next = cursor_next(c);
    bool player = next && next->kind == TOKEN_NUMBER && next->integer && !next->possessive;
    if (!phrase_has(phrase, 'I') || !player) {
        return !phrase_has(phrase, 'I') && take_extra(c, phrase);
    }
    phrase->inside = next;
    cursor_take(c, next, next + 1);
    return true;
}

/* shoots a 3: without its article the number would be a player. */
static bool article_fits(const struct cursor *c, const struct phrase *phrase)
{
    return !phrase_has(phrase, 'a') || str_is(c->at[-2].text, "a");
}

/* Takes the words in one piece, or with something inside or behind: swings it over, sets his man
 * up, boxes 2 out. */
static bool take_form(struct cursor *c, struct str words, struct phrase *phrase)
{
    struct cursor trial = *c;
    if (take_str(&trial, words) && article_fits(&trial, phrase) && take_extra(&trial, phrase)) {
        c->at = trial.at;
        return true;
    }
    bool parts = phrase_has(phrase, 'B') || phrase_has(phrase, 'D') || phrase_has(phrase, 'E') ||
                 phrase_has(phrase, 'I');
    const char *space = parts ? memchr(words.at, ' ', words.size) : NULL;
    if (!space) {
        return false;
    }
    struct str first = {words.at, (size_t)(space - words.at)};
    struct str rest = {space + 1, words.size - first.size - 1};
    trial = *c;
    if (!take_str(&trial, first) || !take_inside(&trial, phrase) || !take_str(&trial, rest)) {
        phrase->inside = NULL;
        return false;
    }
    c->at = trial.at;
    return true;
}

/* What the letters of a row say besides its verb. */
static void say_more(struct phrase *phrase)
{
    static const struct {
        char letter;
        enum pace pace;
    } paces[] = {{'w', PACE_WALK}, {'j', PACE_JOG}, {'s', PACE_SPRINT}};
    for (size_t i = 0; i < sizeof paces / sizeof *paces; i++) {
        phrase->pace = phrase_has(phrase, paces[i].letter) ? paces[i].pace : phrase->pace;
    }
    for (char digit = '1'; digit <= '3'; digit++) {
        phrase->steps = phrase_has(phrase, digit) ? digit - '0' : phrase->steps;
    }
}

static bool take_phrase(struct cursor *c, struct phrase *phrase, bool own)
{
    struct str words = own ? verb_head(phrase->verb, false) : str_of(phrase->words);
    struct str bare = own ? verb_head(phrase->verb, true) : str_of(phrase->bare);
    phrase->with_s = take_form(c, words, phrase);
    return phrase->with_s || take_form(c, bare, phrase);
}

/* make, set, take, give and a noun: sets a down screen, gives a pump fake. */
static bool light_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    static const struct entry efforts[] = {{"hard", PACE_SPRINT},  {"fast", PACE_SPRINT},
                                           {"quick", PACE_SPRINT}, {"slow", PACE_JOG},
                                           {"easy", PACE_JOG},     {NULL, 0}};
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS || !take_among(&trial, light_words)) {
        return false;
    }
    int effort = take_entry(&trial, efforts);
    char noun_letter = cursor_letter(&trial);
    const struct token *longest = NULL;
    for (size_t i = 0; i < OWN; i++) {
        if (phrases[i].bare[0] != noun_letter || !phrase_has(&phrases[i], 'N')) {
            continue;
        }
        struct cursor noun = trial;
        if (take_words(&noun, phrases[i].bare) && (!longest || noun.at > longest)) {
            longest = noun.at;
            *out = phrases[i];
        }
    }
    if (longest) {
        out->pace = effort >= 0 ? (enum pace)effort : PACE_VERB; /* makes a hard cut */
        c->at = longest;
    }
    return longest != NULL;
}

bool phrase_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    const struct token *longest = c->at;
    struct index_rows rows = rows_here(c, INDEX_PHRASES);
    size_t best = phrase_count(); /* of those that are as long, the one written first */
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        struct phrase phrase = phrase_at(*row);
        struct cursor trial = *c;
        if (suits(&phrase, side) && take_phrase(&trial, &phrase, *row >= OWN) &&
            (trial.at > longest || (trial.at == longest && *row < best))) {
            longest = trial.at;
            best = *row;
            say_more(&phrase);
            *out = phrase;
        }
    }
    if (best == phrase_count()) {
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
