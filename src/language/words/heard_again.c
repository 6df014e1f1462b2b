/* SPDX-License-Identifier: MIT */
/* heard_again: what is said twice over in a dictated line: a place once more behind `yeah`, who
 * acts once more as `he's`; and `two` where a phone heard `to`. Puts the tokens of the second
 * reading right: see hearing.c. */
#include "language/words/put_plain.h"

#include <string.h>

static size_t again_drop(struct token *tokens, size_t count, size_t from, size_t to)
{
    memmove(tokens + from, tokens + to, (count - to) * sizeof *tokens);
    return count - (to - from);
}

static void note_again(const struct cursor *c, struct span span)
{
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_TAKEN_BACK, span, "`%.*s` is said again, and was taken once",
                 STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, "delete one of the two");
}

/* The spot that ends right before `end`; gives where it begins, or NULL. */
static const struct token *spot_before(const struct cursor *c, const struct token *from,
                                       const struct token *end, const struct place **place)
{
    enum { FAR = 4 };
    const struct token *longest = NULL;
    const struct place *one;
    for (const struct token *at = end; at > from && at > end - FAR;) {
        if (spot_end(c, --at, &one) == end) {
            longest = at;
            *place = one;
        }
    }
    return longest;
}

/* the left block yeah the far block: which of the two says more is kept. */
static size_t places_again(struct cursor *c, struct token *tokens, size_t count)
{
    static const char *const yeahs[] = {"yeah", "yep", "yes", "so", NULL};
    static const char *const sounds[] = {"uh", "um", "er", NULL};
    for (size_t i = 1; i + 1 < count; i++) {
        const struct place *first, *second;
        c->end = tokens + count;
        if (!token_is_among(&tokens[i], yeahs)) {
            continue;
        }
        const struct token *back = tokens + i;
        while (back > tokens && token_is_among(back - 1, sounds)) {
            back--;
        }
        const struct token *to = spot_end(c, tokens + i + 1, &second);
        const struct token *from = to ? spot_before(c, tokens, back, &first) : NULL;
        if (!from || first->kind != PLACE_SPOT || second->kind != PLACE_SPOT ||
            first->spot != second->spot || (token_is_word(&tokens[i], "so") && first->side)) {
            continue;
        }
        bool sided = first->side == SIDE_LEFT || first->side == SIDE_RIGHT;
        bool sided_too = second->side == SIDE_LEFT || second->side == SIDE_RIGHT;
        if (sided && sided_too && first->side != second->side) {
            continue;
        }
        size_t begin = sided ? (size_t)(back - tokens) : (size_t)(from - tokens);
        size_t end = sided ? (size_t)(to - tokens) : i + 1;
        note_again(c, span_join(tokens[begin].span, tokens[end - 1].span));
        count = again_drop(tokens, count, begin, end);
    }
    return count;
}

/* Nothing but joints and sounds stand before it: a sentence begins there. */
static bool again_begins(const struct token *tokens, size_t i)
{
    static const char *const sounds[] = {"um",      "uh",   "okay", "ok",    "so",
                                         "alright", "now",  "well", "and",   "then",
                                         "but",     "yeah", "like", "right", NULL};
    return i == 0 || clause_ends(&tokens[i - 1]) || token_is_among(&tokens[i - 1], sounds);
}

/* five he's going to flash, x2 he jumps up, 4 and 5 they're screening: who acts, twice. */
static size_t actors_again(struct cursor *c, struct token *tokens, size_t count)
{
    static const char *const ares[] = {"they're", "theyre", NULL};
    static const char *const heads[] = {"he", "she", "they", NULL};
    static const char *const iss[] = {"hes", "shes", NULL};
    for (size_t i = 0; i + 2 < count; i++) {
        struct token *he = &tokens[i + 1];
        bool player = (tokens[i].kind == TOKEN_NUMBER || tokens[i].kind == TOKEN_DEFENDER) &&
                      !tokens[i].possessive;
        size_t first =
            i > 1 && token_is_word(&tokens[i - 1], "and") && tokens[i - 2].kind == tokens[i].kind
                ? i - 2
                : i;
        if (!player || !again_begins(tokens, first)) {
            continue;
        }
        struct token bare = *he;
        bare.possessive = false;
        bool is = token_is_among(he, iss) || (he->possessive && token_is_among(&bare, he_or_she));
        bool are = token_is_among(he, ares);
        struct cursor acts = cursor_look(c);
        acts.at = he + 1;
        acts.end = tokens + count;
        bool be = token_is_word(he + 1, "is") || token_is_word(he + 1, "are");
        bool again = !he->possessive && token_is_among(he, heads) &&
                     (be || (tokens[i].kind == TOKEN_DEFENDER && verb_begins(&acts)));
        if (is || are) {
            he->possessive = false;
            he->text = is ? STR("is") : STR("are");
            he->first = is ? 'i' : 'a';
        } else if (again) {
            count = again_drop(tokens, count, i + 1, i + 2);
        }
    }
    return count;
}

/* passes two 4, dribbles two the right wing: `to`. */
static void twos_for_to(const struct cursor *c, struct token *tokens, size_t count)
{
    static const char *const passes[] = {"passes", "throws",   "kicks", "swings", "dumps", "lobs",
                                         "skips",  "gives it", "pass",  "throw",  NULL};
    static const char *const goes[] = {"cuts",  "goes",  "runs",    "dribbles", "drives",
                                       "dives", "moves", "flashes", "lifts",    "drifts",
                                       "pops",  "rolls", "down",    "up",       "over",
                                       "out",   "back",  "across",  NULL};
    for (size_t i = 1; i + 1 < count; i++) {
        struct token *two = &tokens[i];
        const struct place *place;
        bool heard = token_is_word(two, "too") || (token_is_spelled(two) && two->number == 2);
        const struct token *next = &tokens[i + 1];
        bool whom =
            token_is_among(two - 1, passes) && next->kind == TOKEN_NUMBER && !next->possessive;
        bool where = token_is_among(two - 1, goes) && next->kind == TOKEN_WORD &&
                     spot_end(c, next, &place) != NULL;
        if (!heard || two->possessive || !(whom || where)) {
            continue;
        }
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_HEARD, two->span, "`%.*s` was taken as `to`",
                     STR_ARG(cursor_text(c, two->span)));
        diag_help(c->diags, diag, "write `to`");
        two->kind = TOKEN_WORD;
        two->text = STR("to");
        two->first = 't';
    }
}

size_t heard_again(struct cursor *c, struct token *tokens, size_t count)
{
    c->end = tokens + count;
    twos_for_to(c, tokens, count);
    count = places_again(c, tokens, count);
    c->end = tokens + count;
    return actors_again(c, tokens, count);
}
