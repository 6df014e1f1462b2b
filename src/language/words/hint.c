/* SPDX-License-Identifier: MIT */
/* hint: helps by the rows of hints.def, and the most usual verbs where no row and no word is near.
 */
#include "language/words/grammar.h"

static const struct {
    enum hint_where where;
    const char *words, *help;
} hints[] = {
#define HINT(where, words, help) {HINT_##where, words, help},
#include "language/words/hints.def"
#undef HINT
};

enum { HINT_COUNT = sizeof hints / sizeof *hints };

/* Each % of the row becomes who acts, each ~ another player. */
static struct str filled(const struct cursor *c, const char *help, struct str who)
{
    struct strbuf out;
    strbuf_init(&out, c->arena);
    for (; *help; help++) {
        if (*help == '%') {
            strbuf_add(&out, who);
        } else if (*help == '~') {
            strbuf_char(&out, str_is(who, "2") ? '3' : '2');
        } else {
            strbuf_char(&out, *help);
        }
    }
    return strbuf_str(&out);
}

/* Whether a defender can do what the help would have him do: `% guards 3`, `% stays`. */
static bool defends(const char *help)
{
    for (const char *at = help; *at; at++) {
        bool acts = at[0] == '`' && at[1] == '%' && at[2] == ' ';
        if (acts && !str_starts(str_of(at + 3), "guards") && !str_starts(str_of(at + 3), "stays")) {
            return false;
        }
    }
    return true;
}

struct str hint_until(const struct cursor *c, enum hint_where where, struct str who,
                      const struct token **end)
{
    const struct token *longest = c->at;
    size_t best = HINT_COUNT; /* of those that are as long, the one written first */
    struct index_rows rows = rows_here(c, INDEX_HINTS);
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        struct cursor trial = *c;
        trial.watch = NULL; /* words that are refused */
        bool fits = who.size == 0 || who.at[0] != 'x' || defends(hints[*row].help);
        if (hints[*row].where == where && fits && take_str(&trial, str_of(hints[*row].words)) &&
            (trial.at > longest || (trial.at == longest && *row < best))) {
            longest = trial.at;
            best = *row;
        }
    }
    *end = longest;
    return best < HINT_COUNT ? filled(c, hints[best].help, who) : (struct str){"", 0};
}

struct str hint_for(const struct cursor *c, enum hint_where where, struct str who)
{
    const struct token *end;
    return hint_until(c, where, who, &end);
}

struct str hint_usual(const struct cursor *c, enum phrase_side side, bool bare)
{
    static const enum verb attack[] = {VERB_PASSES, VERB_CUTS, VERB_SCREENS, VERB_DRIBBLES,
                                       VERB_GOES};
    static const enum verb defend[] = {VERB_GUARDS, VERB_DENIES, VERB_SAGS, VERB_HELPS,
                                       VERB_SWITCHES};
    enum { USUAL = sizeof attack / sizeof *attack };
    struct strbuf out;
    strbuf_init(&out, c->arena);
    for (size_t i = 0; i < USUAL; i++) {
        enum verb verb = side == FOR_DEFENDERS ? defend[i] : attack[i];
        struct slot slots[SLOTS_MOST] = {{.letter = 0}};
        verb_slots(verb, slots);
        struct str head = verb_head(verb, bare), preposition = slots[0].preposition;
        strbuf_print(&out, "%s`%.*s%s%.*s`",
                     i == 0          ? ""
                     : i + 1 < USUAL ? ", "
                                     : " and ",
                     STR_ARG(head), preposition.size > 0 ? " " : "", STR_ARG(preposition));
    }
    return strbuf_str(&out);
}
