/* SPDX-License-Identifier: MIT */
/* coverage: what the defense does, as it is said: they trap it, they're icing it, and what is going
 * on: x3 is sagging, 4 is lifting to the wing. Rules of recast_find, for the second reading. */
#include "language/words/speech.h"

static void put(const struct cursor *c, struct recast *r, struct token token)
{
    VEC_PUSH(c->arena, &r->tokens, token);
}

/* A verb of two words as one token: the words of a table join over hyphens. */
static struct token verb_token(const struct cursor *c, struct str words)
{
    struct token token = *cursor_next(c);
    char *text = arena_array(c->arena, char, words.size + 1);
    for (size_t i = 0; i < words.size; i++) {
        text[i] = words.at[i] == ' ' ? '-' : words.at[i];
    }
    text[words.size] = '\0';
    token.kind = TOKEN_WORD;
    token.text = (struct str){text, words.size};
    token.first = text[0];
    token.filler = token.possessive = token.integer = token.stopped = false;
    return token;
}

/* they trap it: the two at the latest screen above, or the one of them whose part it is. */
bool theirs(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"they", "defense", NULL};
    struct cursor trial = *c;
    struct condition said = {.kind = COND_OTHERWISE};
    trial.watch = NULL;
    if (!word_among(c, words) || !coverage_said(&trial, &said) ||
        !(stop_is(&trial) || mark_is(&trial, ',') || word_is(&trial, 0, "and"))) {
        return false;
    }
    bool both = said.other.kind != WHO_NONE;
    VEC_PUSH(c->arena, &r->subject, said.who);
    if (both) {
        VEC_PUSH(c->arena, &r->subject, said.other);
    }
    put(c, r, verb_token(c, phrase_words(said.verb, PASS_PLAIN, SCREEN_PLAIN, both)));
    r->to = trial.at;
    return true;
}

/* x3 is sagging, 4 is lifting to the wing: it does. */
bool going_on(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"is", "are", NULL};
    struct cursor trial = *c;
    struct phrase phrase;
    struct str bare;
    who_list list;
    trial.watch = NULL;
    const struct token *from = c->at;
    if (!subject_read(&trial, &list)) {
        return false;
    }
    const struct token *behind = trial.at;
    if (!take_among(&trial, words) ||
        !phrase_ing_here(&trial, who_side(&list.at[0]), &phrase, &bare)) {
        return false;
    }
    for (; from < behind; from++) {
        put(c, r, *from);
    }
    put(c, r, verb_token(c, bare));
    r->to = trial.at;
    return true;
}
