/* SPDX-License-Identifier: MIT */
/* vocabulary: the words of the language as tables, and how to find one: spots, sides, directions,
 * verb phrases. Inside words, for tidy and for the listed tables, which print from the same rows.
 */
#ifndef LANGUAGE_WORDS_VOCABULARY_H
#define LANGUAGE_WORDS_VOCABULARY_H

#include "language/words/cursor.h"
#include "language/words/index.h"

enum { WORDS_MOST = 64 }; /* letters of the longest entry, with room */

/* The letters of `words` without hyphens, spaces and articles, in `out`; too long gives nothing. */
struct str words_squeeze(struct str words, char out[WORDS_MOST]);
/* "three" for three, Three; empty for 3: what a number written as a word was. */
struct str number_as_word(struct str written);

/* The rows of a large table that may begin at the cursor. */
static inline struct index_rows rows_here(const struct cursor *c, enum index_table table)
{
    const struct token *at = past_fillers(c->at, c->end);
    if (at == c->end || at->first == '\0') {
        return (struct index_rows){NULL, NULL};
    }
    return index_of(table, at->first, at->text.size > 1 ? at->text.at[1] : '\0');
}
/* One of these, NULL at the end. A list of four words or more is static: it is known again by where
 * it stands in memory (sieve.h); so is every list of entries. */
bool word_among(const struct cursor *c, const char *const *words);
bool take_among(struct cursor *c, const char *const *words);
extern const char *const particle_words[]; /* out, up, back … */
extern const char *const place_words[];    /* what may lead to a place */
extern const char *const begin_words[];    /* what may lead to where somebody comes from */
extern const char *const owner_words[];    /* his, her, their */
extern const char *const he_or_she[];
extern const char *const him_or_her[];
/* passes to 3, who cuts: without the ball, so he is there before the pass. */
extern const char *const catch_runs[];
extern const char *const man_words[];      /* anybody: man, kid (men.def has these and the next) */
extern const char *const sort_words[];     /* one, and by what he does: man, screener, helper */
extern const char *const people_words[];   /* ours, one or several: man, screener, bigs */
extern const char *const defender_words[]; /* his: who guards him */
extern const char *const guard_words[];    /* the same in a line read loosely */
extern const char *const light_words[];    /* makes, sets, takes, gives */
static inline bool mark_is(const struct cursor *c, char mark)
{
    const struct token *next = cursor_next(c);
    return next && next->kind == TOKEN_MARK && next->mark == mark;
}
bool take_measure(struct cursor *c, bool is_time, struct measure *out);

/* A word that stands for a value of an enumeration; rows end with words NULL. */
struct entry {
    const char *words;
    int value;
};
extern const struct entry spot_entries[], side_entries[], direction_entries[], way_entries[],
    fraction_entries[], pace_entries[];
/* Takes the longest entry that fits; -1 when none does. */
int take_entry(struct cursor *c, const struct entry *entries);
int take_spot(struct cursor *c); /* the same of spot_entries, by the index */
/* The first entry of a value: the one tidy prints. */
const char *entry_words(const struct entry *entries, int value);
/* The nearest entry to what stands at the cursor (one word or two), or NULL. */
const char *entry_nearest(const struct cursor *c, const struct entry *entries);
/* The letters of the next word, and of the next two. */
struct said_words {
    char letters[2][WORDS_MOST];
    struct str said[2];
};
void said_read(const struct cursor *c, struct said_words *out);
/* How many letters `words` is off one of them: 0, 1 or 2; 3 when it is not near. */
size_t words_distance(const struct said_words *said, const char *words);
bool spot_takes_side(enum spot spot);
bool spot_needs_side(enum spot spot);

/* A way to say a verb. */
struct phrase {
    const char *words, *bare;
    enum verb verb;
    enum pass_kind pass;
    enum screen_kind screen;
    const char *with; /* letters: O the object needs no preposition, N its bare form is a noun too,
                         B takes `it` and `the ball`, M stands for any movement in a clause,
                         A for attackers only; more in phrases.def */
    enum spot to;     /* where to when no place follows; SPOT_COUNT: none */
    bool with_s;      /* it was said of one: passes */
    enum pace pace;   /* the word says it: jogs, a hard cut; PACE_VERB: it does not */
    double steps;     /* takes two steps toward; 0: no length */
    bool counted;     /* takes two dribbles: so many, and not all the way */
    bool three;       /* a shot that is called a three */
    const struct token
        *dropped;               /* an adjective that changes nothing here: a flat screen; or NULL */
    const struct token *inside; /* the player between its words, boxes 2 out; NULL: none */
};
size_t phrase_count(void);
struct phrase phrase_at(size_t index);
static inline bool phrase_has(const struct phrase *phrase, char letter)
{
    const char *at = phrase->with;
    while (*at != '\0' && *at != letter) {
        at++;
    }
    return *at != '\0';
}
enum phrase_side { FOR_ATTACKERS, FOR_DEFENDERS, FOR_ANYONE };
/* Takes the longest phrase that suits the side. */
bool phrase_read(struct cursor *c, enum phrase_side side, struct phrase *out);
/* A noun that stands with make, set, take, give: a down screen. */
bool phrase_noun_read(struct cursor *c, struct phrase *out);
/* The same said as `dribbling`, and its bare words. */
bool phrase_ing_here(struct cursor *c, enum phrase_side side, struct phrase *out, struct str *said);
/* The same said as `is dribbling`. */
bool phrase_ing_read(struct cursor *c, enum phrase_side side, struct phrase *out);
/* What tidy prints for a verb of this kind: "bounce passes", without its preposition. */
struct str phrase_words(enum verb verb, enum pass_kind pass, enum screen_kind screen, bool bare);
/* The phrase nearest to what stands at the cursor, or NULL. */
const char *phrase_nearest(const struct cursor *c, enum phrase_side side);

/* The words that stand for the values of a setting, in choices.def. */
size_t choice_count(enum setting setting);
const char *choice_word(enum setting setting, size_t index); /* NULL past the end */

/* The slots of a verb, from its row. */
struct slot {
    char letter; /* as in verbs.def, capital: needed */
    bool needed;
    struct str preposition; /* empty: none */
};
enum { SLOTS_MOST = 4 };
size_t verb_slots(enum verb verb, struct slot out[SLOTS_MOST]);
/* The verb's words without the preposition of its first slot. */
struct str verb_head(enum verb verb, bool bare);
/* What this verb is when another preposition follows: dribbles, off -> dribbles off. VERB_COUNT:
 * nothing else. */
enum verb verb_sibling(enum verb verb, const char *preposition);

#endif
