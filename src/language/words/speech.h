/* SPDX-License-Identifier: MIT */
/* speech: the second reading of a line that could not be read as it stands: as it is said aloud,
 * with words that say nothing, and with sentences that leave out who acts. Inside words only. */
#ifndef LANGUAGE_WORDS_SPEECH_H
#define LANGUAGE_WORDS_SPEECH_H

#include "language/words/grammar.h"

/* The line's tokens, of which what is said otherwise takes the place. */
struct speech {
    struct token *tokens;
    size_t room;
};

typedef VEC(struct token) token_list;

/* What stands at the head of a sentence, and what is read in its place. */
struct recast {
    const struct token *to; /* what is written ends there */
    token_list tokens;      /* what is read for it */
    who_list subject;       /* who acts, where the words do not say; else empty */
    bool taken;             /* not said, but known from above: a note tells */
    bool same;              /* it goes on with the subject before it */
    bool remark;            /* it is said to the players, and may stand alone */
    struct span told;       /* left out, for a note; or SPAN_NONE */
    struct str as; /* what it was taken for, where it could be more, for a note; or empty */
};
/* Whether a sentence that is said another way begins at the cursor. */
bool recast_find(const struct cursor *c, struct recast *out);
/* The same by one rule; what it has reported stays when it fits. */
bool recast_by(const struct cursor *c, bool (*rule)(const struct cursor *, struct recast *),
               struct recast *out);
/* Reads it so from here on; false: no room. */
bool recast_put(struct cursor *c, const struct recast *recast);
/* The rules. */
#define RECAST(rule) bool rule(const struct cursor *c, struct recast *r);
#define REORDER(rule) RECAST(rule)
#include "language/words/recast.def"
#undef RECAST
#undef REORDER

/* What the rules share. Where the tokens of somebody stand. */
struct somebody {
    const struct token *from, *to;
    struct who who;
};
bool somebody_read(struct cursor *c, struct somebody *out); /* an attacker */
bool player_here(struct cursor *c, struct somebody *out);   /* the same, but no spot */
/* Of whom no token tells: a number, in the place of `at`. */
struct somebody somebody_numbered(const struct cursor *c, const struct token *at, struct who who);
struct cursor cursor_look(const struct cursor *c); /* to try, watched by nobody */
/* used: the screen of 4, 4's screen: one that is set already; a screen by 4 is set here. */
bool known_screen(const struct token *from, const struct token *to);
/* The same, of what stands from here to there. */
struct cursor look_between(const struct cursor *c, const struct token *at, const struct token *end);
/* A cursor over what was recast, as a line of its own: what is read there is not counted as read.
 */
struct cursor recast_line(const struct cursor *c, const struct recast *recast);
/* The same, of which nothing is known yet: neither who acts nor who screened in front of it. */
struct cursor recast_afresh(const struct cursor *c, const struct recast *recast);
void recast_word(const struct cursor *c, struct recast *r, const char *text);
/* As one token: the words of a table join over hyphens. */
void recast_verb(const struct cursor *c, struct recast *r, struct str words);
void recast_number(const struct cursor *c, struct recast *r, int number);
void recast_mark(const struct cursor *c, struct recast *r, char mark);
void recast_copy(const struct cursor *c, struct recast *r, const struct token *from,
                 const struct token *to);
void recast_somebody(const struct cursor *c, struct recast *r, const struct somebody *one);
/* when 2 catches: the moment from here to there, and its comma. */
void recast_when(const struct cursor *c, struct recast *r, const struct token *from,
                 const struct token *to);
void recast_acts(const struct cursor *c, struct recast *r, const struct who *who);
/* Who has the ball acts, and a note tells; false: the words do not say who that is. */
bool recast_holder(const struct cursor *c, struct recast *r);
bool take_two_name(struct cursor *c); /* give and go, pick and roll: what two do */
bool take_label(struct cursor *c);    /* label: a name of labels.def */
bool verb_needs_ball(enum verb verb);
/* Behind a pass, who is meant by `he` with this verb, where it can only be the passer. */
bool passer_goes_on(const struct sentence *last, enum verb verb, struct who *out);
/* A sentence that says all its verb needs begins here. */
bool whole_sentence_is(const struct cursor *c);
bool clause_ends(const struct token *token);
bool sentence_ends(const struct token *token); /* a full stop, a semicolon */
/* The end of what stands up to one of them. */
const struct token *chain_end(const struct cursor *c);
void take_particles(struct cursor *c);
/* `by 2`, `from 2` further on in the sentence: who does what a noun says. */
bool agent_ahead(const struct cursor *c, const struct token *from, struct somebody *agent,
                 const struct token **by);
bool ends_in_s(const struct token *token); /* passes, but not pass */
bool ends_in_ing(const struct token *token);
const struct sentence *sentence_before(const struct cursor *c); /* of this line; NULL: none */
/* contraction: the place of 2, the defender of 3: as 2's place, 3's defender, in the tokens
 * themselves; gives how many are left. */
size_t owners_turned(struct token *tokens, size_t count);
/* `he's under` as `he is under`; gives how many tokens it put, at most `room`. */
size_t contractions_open(const struct token *from, size_t count, struct token *to, size_t room);
/* throw: the play's start puts this player on a spot of the floor. */
bool starts_inside(const struct cursor *c, const struct who *who);
/* unscreened: who has set no screen and pops, rolls, slips. */
bool word_starts(const struct token *token, const struct token *end, const char *word);
void screenless_move(struct predicate *p);
void ghosts_on_ball(struct predicate *p);
void rolls_of_none(struct predicate *p);
bool stands_outside(const struct cursor *c, const struct who *who); /* he takes it out of bounds */
/* remark */
bool remark_judges(const struct cursor *c, const struct token *from,
                   const struct token *to); /* it says of a sentence whether it holds */
/* apart: who slides to the slot to get it: before the pass. */
void comes_to_pass(const struct cursor *c, sentence_list *out, const struct token *from,
                   const struct token *to);
/* The same of whom the pass is to, in a clause of his own, said from here to the cursor: who cuts
 * to the corner. */
void runs_to_catch(const struct cursor *c, sentence_list *out, const struct token *from);
/* whose: whom a sentence is to, as who acts next. */
who_list receiver_of(struct cursor *c, const struct sentence *s);
/* Who acts in the sentence that begins here, other than who is named in it or goes on from the one
 * before; empty: nobody. What is said another way is put as it is written. `last`: the one before
 * it in the chain, of `subject`; or NULL. */
who_list whose_next(struct cursor *c, const struct joint *joint, const struct sentence *last,
                    const who_list *subject);
/* our big crosses under the rim: somebody of ours does something. */
bool remark_acts(const struct cursor *c, const struct token *from, const struct token *to);
/* hearing: what a phone heard as another word, `won passes to too`, and what the speaker took back,
 * `no wait`: put right in the tokens from c->at on; gives how many are left. */
size_t heard_right(struct cursor *c, struct token *tokens, size_t count);
/* heard_again: what is said twice over, and `two` for `to`, of the same. */
size_t heard_again(struct cursor *c, struct token *tokens, size_t count);

#endif
