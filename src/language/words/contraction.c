/* SPDX-License-Identifier: MIT */
/* contraction: he's under, they're trapping, x1's chasing: read as `he is under`. What is
 * somebody's own, `his`, `3's spot`, is left as it is. */
#include "language/words/speech.h"

static bool ends_in(struct str text, const char *tail, size_t size)
{
    return text.size > size &&
           str_equal((struct str){text.at + text.size - size, size}, (struct str){tail, size});
}

/* A short form that is one word: `'s` alone is parted from its word by the scanner. */
static bool they_are(const struct token *token)
{
    return token->kind == TOKEN_WORD && str_is(token->text, "they're");
}

/* he's, she's; x1's chasing, 4's open: not x1's man. */
static bool is_behind(const struct token *token, const struct token *end)
{
    static const char *const states[] = {"under", "over", "open", "denied", "late", "behind", "in"};
    if (!token->possessive) {
        return false;
    }
    static const char *const heads[] = {"he",     "she",  "it",    "that", "nothing",
                                        "nobody", "help", "there", "who",  "here"};
    for (size_t i = 0; token->kind == TOKEN_WORD && i < sizeof heads / sizeof *heads; i++) {
        if (str_is(token->text, heads[i])) {
            return true;
        }
    }
    const struct token *next = token + 1;
    bool person = token->kind == TOKEN_NUMBER || token->kind == TOKEN_DEFENDER;
    if (!person || next >= end || next->kind != TOKEN_WORD) {
        return false;
    }
    bool found = ends_in(next->text, "ing", 3) && !str_is(next->text, "wing");
    for (size_t i = 0; i < sizeof states / sizeof *states; i++) {
        found = found || str_is(next->text, states[i]);
    }
    return found;
}

/* the ball's in the air, the screen's set, the man's hedging: is. The ball's side, the screen's
 * angle are their own. */
static bool thing_is(const struct token *token, const struct token *end)
{
    static const char *const things[] = {"ball", "pass",     "screen",    "pick",     "defense",
                                         "zone", "everyone", "everybody", "defender", NULL};
    static const char *const states[] = {"in",   "on",   "at",    "with", "set",    "there",
                                         "up",   "over", "open",  "gone", "out",    "down",
                                         "back", "off",  "going", "live", "coming", NULL};
    struct token thing = *token;
    thing.possessive = false;
    return token->possessive && token + 1 < end && token_is_among(&thing, things) &&
           token_is_among(token + 1, states);
}

/* it's in the air: the ball is. */
static bool ball_flies(const struct token *at, const struct token *end)
{
    const struct token *air = at + 2;
    air += air < end && air->filler;
    return str_is(at->text, "it") && air < end && token_is_word(at + 1, "in") &&
           token_is_word(air, "air");
}

size_t contractions_open(const struct token *from, size_t count, struct token *to, size_t room)
{
    size_t size = 0;
    for (size_t i = 0; i < count && size + 2 <= room; i++) {
        bool whole = they_are(&from[i]);
        to[size++] = from[i];
        if (from[i].kind == TOKEN_WORD && from[i].possessive && str_is(from[i].text, "dho")) {
            to[size - 1].text = STR("dhos"); /* dho's it with 2 */
            to[size - 1].possessive = false;
            to[size - 1].first = 'd';
        }
        if (whole || is_behind(&from[i], from + count) || thing_is(&from[i], from + count)) {
            bool ball = ball_flies(&from[i], from + count);
            to[size - 1].possessive = false;
            to[size - 1].text = whole ? STR("they") : ball ? STR("ball") : from[i].text;
            to[size - 1].first = to[size - 1].text.at[0];
            to[size] = to[size - 1];
            to[size].kind = TOKEN_WORD;
            to[size].text = str_of(whole ? "are" : "is");
            to[size].first = to[size].text.at[0];
            to[size].integer = false;
            size++;
        }
    }
    return size;
}

size_t owners_turned(struct token *tokens, size_t count)
{
    static const char *const owned[] = {"place", "position", "spot",  "defender",
                                        "man",   "block",    "guard", NULL};
    for (size_t i = 0; i + 2 < count; i++) {
        size_t who = i + 2;
        while (who < count && tokens[who].filler) {
            who++;
        }
        if (tokens[i].kind != TOKEN_WORD || tokens[i].possessive ||
            !token_is_among(&tokens[i], owned) || !token_is_word(&tokens[i + 1], "of") ||
            who == count || tokens[who].kind != TOKEN_NUMBER || tokens[who].possessive ||
            (i > 0 && token_is_word(&tokens[i - 1], "takes"))) {
            continue;
        }
        struct token owner = tokens[who], thing = tokens[i];
        owner.possessive = true;
        if (str_is(thing.text, "block")) { /* of one who sets it: a screen */
            thing.text = STR("screen");
            thing.first = 's';
        } else if (str_is(thing.text, "position")) {
            thing.text = STR("spot");
            thing.first = 's';
        } else if (!str_is(thing.text, "place") && !str_is(thing.text, "spot")) {
            thing.text = STR("defender");
            thing.first = 'd';
        }
        tokens[i] = owner;
        tokens[i + 1] = thing;
        for (size_t k = who + 1; k < count; k++) {
            tokens[i + 2 + k - who - 1] = tokens[k];
        }
        count -= who + 1 - (i + 2);
    }
    return count;
}
