/* SPDX-License-Identifier: MIT */
/* loose_read: the reader of last resort, for a line that the grammar refused twice. It cuts the
 * line into clauses; what the grammar reads of them it leaves to the grammar, and in the others it
 * looks for who acts, what is done, to whom and where, in any order, by wide tables. What it finds
 * is put in the words of the language and read by the grammar as any sentence. Every word must be
 * used or known to add nothing; a word that turns the sense round ends the attempt. Inside words
 * only. */
#ifndef LANGUAGE_WORDS_LOOSE_READ_H
#define LANGUAGE_WORDS_LOOSE_READ_H

#include "language/words/speech.h"

enum {
    L_NONE = 1,
    L_TO = 2,
    L_FOR = 4,
    L_OFF = 8,
    L_FROM = 16,
    L_WITH = 32,
    L_ON = 64,
    L_PAST = 128,
    L_ALONG = 256
};
enum { F_SPOT = 1, F_WAY = 2, F_DEFENDS = 4, F_MAN = 8, F_WEAK = 16 };
enum frame_kind {
#define FRAME(name, ...) FRAME_##name,
#include "language/words/loose_frames.def"
#undef FRAME
    FRAME_COUNT
};
struct frame {
    bool holder; /* acts where nobody is named */
    unsigned leads, flags;
};
struct loose_act {
    enum frame_kind frame;
    enum verb verb;
    enum pass_kind pass;
    enum screen_kind screen;
    const char *said;
};

enum item_kind {
    ITEM_UNKNOWN,
    ITEM_FATAL,
    ITEM_SMALL,
    ITEM_CAUSE,  /* why, and all behind it */
    ITEM_REASON, /* the same, where nobody is named in it */
    ITEM_HOPE,   /* a reason; FATAL where somebody is named in it */
    ITEM_THING,  /* adds nothing, but never alone */
    ITEM_LOST,   /* FATAL where it is nobody */
    ITEM_LEAD,
    ITEM_WHO,
    ITEM_PLACE,
    ITEM_SIDE, /* left, right, by themselves */
    ITEM_ACT
};
/* A piece of a clause. */
struct item {
    enum item_kind kind;
    const struct token *from, *to;
    unsigned lead;               /* LEAD: which it may be */
    const struct loose_act *act; /* ACT */
    struct who who;              /* WHO */
    token_list tokens;           /* WHO, PLACE: as the language has it */
};
enum { ITEMS_MOST = 48 };
struct items {
    struct item at[ITEMS_MOST];
    size_t count;
};

/* loose_cut */
enum { PIECES_MOST = 20 };
/* A clause, and what joined it to the one before. */
struct piece {
    const struct token *from, *to;
    bool then, meanwhile, relative; /* then; while, meanwhile; who */
    bool taken;                     /* with the one before it */
};
struct pieces {
    struct piece at[PIECES_MOST];
    size_t count;
};
bool token_is_player(const struct token *token); /* by number, and nobody's own thing */
bool line_turns(const struct cursor *c);   /* something turns the whole line round: forget it */
bool line_doubled(const struct cursor *c); /* a word is said twice, or the end is lost */
/* At `at` another sentence begins, without a joint, behind the one from `from` on. */
bool clause_runs_on(const struct cursor *c, const struct token *from, const struct token *at);
/* `out`, empty before: the line's clauses; false: too many. */
bool line_cut(const struct cursor *c, struct pieces *out);

/* loose_lex: the clause from c->at to c->end, piece by piece; false: too long. */
bool items_find(const struct cursor *c, struct items *out);
/* The same, where it may go on with who acts in `last`; NULL: nobody. */
bool items_after(const struct cursor *c, const struct sentence *last, struct items *out);
/* Whether one of the ways in `said`, parted by `|`, begins at `at`; gives its end, or NULL. */
const struct token *said_at(const struct token *at, const struct token *end, const char *said);
/* The number at `at` counts what is done: two steps, three set screens. `from`: where its clause
 * begins. */
bool counts_at(const struct token *from, const struct token *at, const struct token *end);
/* One of the acts begins at `at`. */
bool act_begins(const struct token *at, const struct token *end, bool defends);
/* Somebody does something in there: no mere reason. */
bool action_told(const struct cursor *c, const struct token *from, const struct token *to);
/* loose_fill: the clause as the language has it. */
struct reading {
    token_list tokens; /* of sentences, parted by full stops; empty: it moves nobody */
    struct who acts;   /* who acts in the last of them */
    bool run_in;       /* goes somewhere that is not said: part of what comes */
    bool uses;         /* a screen: where to may stand in the next clause */
    bool taker;        /* he gets it from another, who is the one that acts in the sentence */
    bool named;        /* who acts is said, by number or by name */
    bool sure;         /* no word was passed over */
};
const struct frame *loose_frame(enum frame_kind kind);
/* Who may go on without being named. */
struct going {
    const struct sentence *last; /* of the line; NULL: none */
    bool relative;               /* behind `who`: whom it was done to */
    bool more;                   /* another clause follows */
    bool waits;                  /* `last` is of one who goes, and where to is not said yet */
};
bool clause_fill(const struct cursor *c, const struct items *items, const struct going *going,
                 struct reading *out);

/* The line from c->at to c->end, read loosely: true: all of it, its sentences are in `out` and a
 * note says how it was read. False: none of it, nothing is reported; `*help`: what it may mean, or
 * which part is lost, unless `blamed` lies in it; or empty. */
bool loose_read(struct cursor *c, sentence_list *out, struct span blamed, struct str *help);
/* plain: the line from c->at to c->end put more plainly and read again, in the end loosely; true:
 * all of it, with notes of what was left out; false: none of it, nothing is reported. */
bool plain_read(struct cursor *c, sentence_list *out, bool loosely);
/* The same, of a note: what its letters stand for is put in full, and all of it read again. */
bool jot_read(struct cursor *c, sentence_list *out);
/* spare: the line from c->at to c->end without a phrase that it can spare, or with another verb,
 * where the grammar stumbled; true: all of it, with a note. False: nothing of it, silently. */
bool spare_read(struct cursor *c, sentence_list *out, const struct diag *error);
/* parts: the line from c->at to c->end, each part of it as a line of its own; true: all of it, with
 * notes; false: nothing of it, silently. */
bool parts_read(struct cursor *c, sentence_list *out);
/* lean: the line from c->at to c->end without what it is called in front, what is only shown, how
 * and with what, as it takes to be read; true: all of it, with a note of each; false: nothing. */
bool lean_read(struct cursor *c, sentence_list *out);
/* reshape: the line from c->at to c->end, put another way in one place and read by all of these;
 * true: all of it, with notes; false: nothing of it, silently. */
bool reshape_read(struct cursor *c, sentence_list *out);
/* The same of each part of it (parts). */
bool lean_parts_read(struct cursor *c, sentence_list *out);
/* speech: the line as it stands, or as it is said; false: why is in the diagnostics. */
void speech_begin(struct cursor *c); /* c->at to c->end, as it is said */
bool strictly_read(struct cursor *c, sentence_list *out);

#endif
