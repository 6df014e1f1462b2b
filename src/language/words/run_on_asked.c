/* SPDX-License-Identifier: MIT */
/* run_on_asked: what a run-on line asks of the defense, put as the language has it: his man is x3,
 * it is there is that he is open. See run_on.h.
 */
#include "language/words/loose_read.h"
#include "language/words/run_on.h"

/* What only a defender does: he goes under, she is trailing. */
static bool guards_behind(const struct token *at, const struct token *to)
{
    static const char *const words[] = {
        "under",     "over",        "trails", "trailing", "trail",  "sagging", "sags",    "denying",
        "denies",    "fronting",    "fronts", "switches", "hedges", "hedging", "chasing", "chases",
        "overplays", "overplaying", "cheats", "helps",    "lags",   "closes",  NULL};
    at += at < to &&
          (token_is_word(at, "is") || token_is_word(at, "goes") || token_is_word(at, "go"));
    return at < to && token_is_among(at, words);
}

/* x3, in the place of `at`. */
static void put_number(const struct cursor *c, const struct token *at, int number,
                       struct recast *out)
{
    struct token x = *at;
    x.kind = TOKEN_DEFENDER;
    x.possessive = false;
    x.first = '\0';
    x.number = number;
    x.integer = true;
    x.text = str_format(c->arena, "x%d", number);
    VEC_PUSH(c->arena, &out->tokens, x);
}

/* His defender, by number where it is known who guards whom. */
static void put_guard(const struct cursor *c, const struct token *at, int number,
                      struct recast *out)
{
    struct who man = {.kind = WHO_PLAYER, .number = number, .span = at->span};
    struct who guard = above_defender_of(c, &man, at->span);
    if (guard.kind != WHO_DEFENDER) {
        struct cursor here = line_look(c, at);
        recast_number(&here, out, number);
        out->tokens.at[out->tokens.count - 1].possessive = true;
        recast_word(&here, out, "defender");
        return;
    }
    put_number(c, at, guard.number, out);
}

/* it is there, that is not there: of the cut to the rim, not of who came up behind it. */
static int cutter(const struct cursor *c)
{
    for (size_t i = c->here ? c->here->count : 0; i-- > 0;) {
        const struct sentence *s = &c->here->at[i];
        enum verb_task task = verb_row(s->verb)->task;
        bool inside = s->verb == VERB_BACK_CUTS || s->verb == VERB_ROLLS || s->verb == VERB_SLIPS ||
                      (s->place && s->place->kind == PLACE_SPOT && s->place->spot == SPOT_RIM);
        if (task == VERB_PASS) {
            return 0;
        }
        if (inside && s->subject.count == 1 && s->subject.at[0].kind == WHO_PLAYER) {
            return s->subject.at[0].number;
        }
    }
    return 0;
}

void run_on_asked(const struct cursor *line, const struct token *from, const struct token *to,
                  const struct run_on_people *people, struct recast *out)
{
    static const char *const men[] = {"man", "guy", "girl", "defender", "kid", "player", NULL};
    struct cursor part = look_between(line, from, to);
    struct recast said = {.to = NULL};
    for (const struct token *at = from; at < to; at++) {
        struct cursor here = line_look(&part, at);
        bool his = token_is_among(at, owner_words) && at + 1 < to && token_is_among(at + 1, men);
        bool own = at->possessive && at->kind == TOKEN_NUMBER && at + 1 < to &&
                   token_is_among(at + 1, men);
        if ((his && people->said) || own) {
            put_guard(&part, at, own ? (int)at->number : people->said, &said);
            at++;
            continue;
        }
        if (at == from && token_is_among(at, he_or_she) && people->said &&
            guards_behind(at + 1, to)) {
            put_guard(&part, at, people->said, &said);
            continue;
        }
        static const char *const meant[] = {"he", "she", "it", "that", NULL};
        int one =
            people->said == run_on_holder(&part) && people->moved ? people->moved : people->said;
        static const char *const guards[] = {"stays",   "comes", "drops",  "steps", "goes",
                                             "doesn't", "turns", "leaves", NULL};
        if (at == from && people->asked && token_is_among(at, he_or_she) && at + 1 < to &&
            token_is_among(at + 1, guards)) { /* if he stays back, behind what x5 was asked */
            put_number(&part, at, people->asked, &said);
            continue;
        }
        if (token_is_word(at, "you") && at > from && people->addressed) {
            recast_number(&here, &said, people->addressed);
            continue;
        }
        int cut = token_is_word(at, "it") || token_is_word(at, "that") ? cutter(line) : 0;
        one = cut && cut != run_on_holder(&part) ? cut : one;
        if (at == from && token_is_among(at, meant) && one) {
            recast_number(&here, &said, one);
            continue;
        }
        recast_copy(&part, &said, at, at + 1);
    }
    struct cursor plain = recast_line(&part, &said);
    struct recast rows = {.to = NULL};
    bool put = asked_plainly(&plain, &rows);
    const struct recast *all = put ? &rows : &said;
    recast_copy(&part, out, all->tokens.at, all->tokens.at + all->tokens.count);
}
