/* SPDX-License-Identifier: MIT */
/* run_on: a line that goes on and on without a mark, as it is dictated. It is cut wherever a new
 * clause can begin; each clause is put as the language has it, with who acts in it, and read by
 * itself, together with the next one where it cannot stand alone. What tells nothing to do is left
 * out with a note. Inside words only. */
#ifndef LANGUAGE_WORDS_RUN_ON_H
#define LANGUAGE_WORDS_RUN_ON_H

#include "language/words/put_plain.h"
#include "language/words/reader.h"
#include "language/words/speech.h"

/* What a clause is, by how it begins. */
enum run_on_kind {
    RUN_ON_DEED,
    RUN_ON_MOMENT, /* when, as soon as: the next one hangs on it */
    RUN_ON_IF,
    RUN_ON_WHY,  /* because */
    RUN_ON_TITLE /* what the play is called */
};
struct run_on_piece {
    const struct token *from, *to; /* without what joins it to the one before */
    const struct token *joint;     /* where that begins */
    enum run_on_kind kind;
    bool then, meanwhile;
    bool led; /* by a verb that only leads to where another is done */
    bool so;  /* what comes of the one before, or what it is for */
};
enum { RUN_ON_MOST = 28 };
struct run_on_pieces {
    struct run_on_piece at[RUN_ON_MOST];
    size_t count;
};
/* run_on_cut: the clauses of the line from c->at to c->end; false: too many. */
bool run_on_cut(const struct cursor *c, struct run_on_pieces *out);
/* The same of a note, which its marks part: 1>4, 5 flare 1. */
bool run_on_cut_note(const struct cursor *c, struct run_on_pieces *out);
/* Somebody, or something, begins to do something at `at`. */
bool run_on_begins(const struct cursor *c, const struct token *at);
/* A verb stands at `at`, of the play language or of the wide tables. */
bool run_on_verb(const struct cursor *c, const struct token *at);
/* Where the words for who acts end, 4 and 5, his man; NULL: nobody there. */
const struct token *run_on_somebody(const struct cursor *c, const struct token *at);
bool run_on_done(const struct cursor *c, const struct token *at); /* something is said of him */
int run_on_holder(const struct cursor *c); /* who has the ball; 0: the words do not tell */
/* Past what leads up to who acts: we want, let's have. */
const struct token *run_on_past_openers(const struct cursor *c, const struct token *at);
/* Past what is said between who acts and what he does: just, is gonna, has to. */
const struct token *run_on_past_aux(const struct cursor *c, const struct token *at);

/* Behind somebody, past where he stands, to where he is spoken of again: 4 in the far corner he
 * comes; NULL: it is not said so. */
const struct token *run_on_past_where(const struct cursor *c, const struct token *from);

/* Past the first of two verbs, which only leads to where the second is done: goes up and screens.
 */
const struct token *run_on_past_run_in(const struct cursor *c, const struct token *at);

/* Of whom the clauses so far were. */
struct run_on_people {
    int said;      /* who acted in the last one */
    int moved;     /* the last of them who did not have the ball */
    int addressed; /* 4 you come up: he is you; 0: nobody */
    int asked;     /* the defender of the last read; 0: none */
};
/* run_on_say: the clause as the language has it; false: it does not say who acts, and nobody goes
 * on from the one before. `*nothing`: it tells nothing to do. */
bool run_on_say(const struct cursor *c, const struct run_on_piece *piece,
                struct run_on_people *people, struct recast *out, bool *nothing);
/* The same of what is asked of the defense; `to`: where it ends. */
void run_on_asked(const struct cursor *c, const struct token *from, const struct token *to,
                  const struct run_on_people *people, struct recast *out);
/* The same by the rows of run_on.def: of a clause, and of what is asked; false: as it was. */
bool said_plainly(const struct cursor *c, struct recast *out);
bool asked_plainly(const struct cursor *c, struct recast *out);
bool noted_plainly(const struct cursor *c, struct recast *out); /* of a part of a note */
/* Nothing in it moves anybody: it is how it is, or how it looks. */
bool run_on_idle(const struct cursor *c, const struct run_on_piece *piece);
/* don't hold it, he doesn't dribble: what is not done. */
bool run_on_not(const struct cursor *c, const struct run_on_piece *piece);
/* 3 sees it coming, that is happening: nothing that is drawn waits for it. */
bool run_on_seen(const struct token *from, const struct token *to);
/* pass and passes. */
bool run_on_same_stem(const struct token *one, const struct token *two);
/* run_on_again: the line, in the tokens themselves, without what it says twice or takes back, with
 * notes; gives how many are left. */
size_t run_on_again(struct cursor *c, struct token *tokens, size_t count);
/* Something that is drawn is done between these. */
bool run_on_moves(const struct cursor *c, const struct token *from, const struct token *to);

/* What a run-on line says: sentences, and behind them its reads. */
enum { RUN_ON_READS = 4 };
struct run_on_read {
    struct block block; /* with its conditions */
    size_t first;       /* of its sentences */
};
struct run_on {
    sentence_list sentences;
    struct run_on_read reads[RUN_ON_READS];
    size_t read_count;
    size_t understood; /* clauses, also where one of the others was not */
};
/* The line while it is read. */
struct run_on_run {
    bool note;
    struct cursor *c; /* on the line, with its short forms opened */
    struct run_on *out;
    struct run_on_pieces pieces;
    struct run_on_people people;
    struct strbuf text; /* of all of it, as it was read */
    token_list moment;  /* which the next clause waits for */
    struct span moment_span;
    bool moment_idle; /* it is no deed, and may be left out */
};
/* run_on_clause: the clause at `at`, or it and the next ones: how many were read; 0: none. */
size_t run_on_clause(struct run_on_run *r, size_t at);
void run_on_moment(struct run_on_run *r, const struct run_on_piece *piece); /* the next waits */
void run_on_leave_out(struct run_on_run *r, const struct run_on_piece *piece);

/* Of these, one screens for the same one twice. */
bool run_on_told_twice(const sentence_list *all);
/* run_on_read: true: all of it, with notes. False: what was not understood is reported. */
bool run_on_read(struct cursor *c, bool note, struct run_on *out);
/* It is one: long, with hardly a mark, and of several clauses. */
bool run_on_is(const struct cursor *c);
/* It is a note: a few words between two marks, and of several such. */
bool run_on_is_note(const struct cursor *c);

#endif
