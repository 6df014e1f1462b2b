/* SPDX-License-Identifier: MIT */
/* contraction: he's under, they're trapping, x1's chasing: read as `he is under`. What is
 * somebody's own, `his`, `3's spot`, is left as it is. */
#include "language/words/speech.h"

static bool ends_in(struct str text, const char *tail, size_t size)
{
    return text.size > size &&
           str_equal((struct str){text.at + text.size - size, size}, (struct str){tail, size});
}

/* Words whose short form is one of its own: they're, he's. */
static const struct {
    const char *text, *who, *verb;
} shorts[] = {{"they're", "they", "are"}, {"he's", "he", "is"}, {"she's", "she", "is"}};
enum { SHORT_COUNT = sizeof shorts / sizeof *shorts };

static size_t short_of(const struct token *token)
{
    size_t row = 0;
    while (row < SHORT_COUNT &&
           !(token->kind == TOKEN_WORD && str_is(token->text, shorts[row].text))) {
        row++;
    }
    return row;
}

/* he's, she's; x1's chasing, 4's open: not x1's man. */
static bool is_behind(const struct token *token, const struct token *end)
{
    static const char *const states[] = {"under", "over", "open", "denied", "late", "behind", "in"};
    if (!token->possessive) {
        return false;
    }
    if (token->kind == TOKEN_WORD) {
        return str_is(token->text, "he") || str_is(token->text, "she");
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

size_t contractions_open(const struct token *from, size_t count, struct token *to, size_t room)
{
    size_t size = 0;
    for (size_t i = 0; i < count && size + 2 <= room; i++) {
        size_t row = short_of(&from[i]);
        to[size++] = from[i];
        if (row < SHORT_COUNT || is_behind(&from[i], from + count)) {
            bool whole = row < SHORT_COUNT;
            to[size - 1].possessive = false;
            to[size - 1].text = whole ? str_of(shorts[row].who) : from[i].text;
            to[size - 1].first = to[size - 1].text.at[0];
            to[size] = to[size - 1];
            to[size].kind = TOKEN_WORD;
            to[size].text = str_of(whole ? shorts[row].verb : "is");
            to[size].first = to[size].text.at[0];
            to[size].integer = false;
            size++;
        }
    }
    return size;
}
