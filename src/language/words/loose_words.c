/* SPDX-License-Identifier: MIT */
/* loose_words: what is said in one of many ways, its words bent or not: see loose_read.h. */
#include "language/words/loose_read.h"

#include <string.h>

static bool tail_is(struct str text, size_t from, const char *tail)
{
    return str_equal((struct str){text.at + from, text.size - from}, str_of(tail));
}

/* `text` is `word`, or that word as a verb is bent: cuts, cutting, drives, driving, carries. */
static bool bent_from(struct str text, struct str word)
{
    size_t n = word.size;
    if (text.size < n - 1 || n < 2 || memcmp(text.at, word.at, n - 1) != 0) {
        return false;
    }
    char last = word.at[n - 1];
    bool whole = text.size >= n && text.at[n - 1] == last;
    if (n == 2 && last != 'o') { /* goes, doing; but not ins, ons */
        return false;
    }
    if (whole) {
        bool doubled = text.size > n && text.at[n] == last && tail_is(text, n + 1, "ing");
        return text.size == n || tail_is(text, n, "s") || tail_is(text, n, "es") ||
               tail_is(text, n, "ing") || doubled;
    }
    return (last == 'e' && tail_is(text, n - 1, "ing")) ||
           (last == 'y' && tail_is(text, n - 1, "ies"));
}

static struct str next_word(struct str *left, char stop)
{
    size_t size = 0;
    while (size < left->size && left->at[size] != stop) {
        size++;
    }
    struct str word = {left->at, size};
    size_t past = size < left->size ? size + 1 : size;
    *left = (struct str){left->at + past, left->size - past};
    return word;
}

static bool word_fits(const struct token *token, struct str word)
{
    bool own = word.size > 2 && tail_is(word, word.size - 2, "'s");
    if (own) { /* let's, he's: the scanner keeps the 's apart */
        word.size -= 2;
    }
    bool words = token->kind == TOKEN_WORD || token->kind == TOKEN_NUMBER;
    if (!words || token->possessive != own || token->text.size == 0 ||
        token->text.at[0] != word.at[0]) {
        return false;
    }
    return str_equal(token->text, word) || bent_from(token->text, word);
}

/* hand-off, as one word of what has been put in other words: where the way goes on behind it. */
static bool joined_fits(const struct token *token, struct str *way)
{
    struct str text = token->text;
    bool joined = token->kind == TOKEN_WORD && !token->possessive && text.size < way->size + 1;
    bool hyphen = false;
    for (size_t i = 0; i < text.size && joined; i++) {
        hyphen = hyphen || text.at[i] == '-';
        joined = text.at[i] == way->at[i] || (text.at[i] == '-' && way->at[i] == ' ');
    }
    if (!joined || !hyphen || (text.size < way->size && way->at[text.size] != ' ')) {
        return false;
    }
    size_t past = text.size < way->size ? text.size + 1 : text.size;
    *way = (struct str){way->at + past, way->size - past};
    return true;
}

/* One way: all its words; articles and what says nothing may stand between. */
static const struct token *way_at(const struct token *at, const struct token *end, struct str way)
{
    for (bool first = true; way.size > 0; first = false) {
        const struct token *joined = at;
        while (!first && joined < end && (joined->filler || token_is_word(joined, "a"))) {
            joined++;
        }
        if (joined < end && joined_fits(joined, &way)) {
            at = joined + 1;
            continue;
        }
        struct str word = next_word(&way, ' ');
        while (!first && at < end && (at->filler || token_is_word(at, "a")) &&
               !word_fits(at, word)) {
            at++;
        }
        if (at >= end || !word_fits(at, word)) {
            return NULL;
        }
        at++;
    }
    return at;
}

const struct token *said_at(const struct token *at, const struct token *end, const char *said)
{
    const struct token *longest = NULL;
    struct str left = str_of(said);
    while (left.size > 0) {
        struct str way = next_word(&left, '|');
        const struct token *to =
            at->first == way.at[0] || at->first == '\0' ? way_at(at, end, way) : NULL;
        longest = to && (!longest || to > longest) ? to : longest;
    }
    return longest;
}
