/* SPDX-License-Identifier: MIT */
/* edit: what an editor asks of a text while it is being typed: what each piece of it is, what could
 * stand at a place, what the word there means, and what became of every sentence. Takes a source as
 * it stands, half written or not; reports nothing, keeps nothing. Knows no file, no page, and
 * nothing of the run: only words and what they were resolved to. */
#ifndef LANGUAGE_EDIT_EDIT_H
#define LANGUAGE_EDIT_EDIT_H

#include "floor/play/play.h"

enum edit_class {
#define CLASS(symbol, name, what) EDIT_##symbol,
#include "language/edit/classes.def"
#undef CLASS
    EDIT_CLASS_COUNT
};
const char *edit_class_name(enum edit_class class); /* NULL past the end */

/* A text in hand. The source is in `sources` already; what the readers add to them and to `arena`
 * is the caller's to let go. */
struct edit_text {
    struct arena *arena;
    struct sources *sources;
    uint32_t source;
    const struct loader *loader; /* NULL: included files count as empty */
};

struct edit_token {
    uint32_t begin, end; /* bytes */
    enum edit_class class;
};
typedef VEC(struct edit_token) edit_token_list;
/* In the order of the text, none over another; blanks belong to none. */
void edit_tokens(const struct edit_text *text, edit_token_list *out);

/* The word under `at` (or right before it), by the name the tables of the language know it by:
 * "curls off" for a verb in any of its forms. */
struct edit_word {
    uint32_t begin, end;
    enum edit_class class;
    struct str name;    /* what to look up */
    struct str written; /* as it stands, in lower case: when there is nothing under that name */
};
bool edit_word_at(const struct edit_text *text, uint32_t at, struct edit_word *out);

/* What could stand at a place. */
struct edit_offer {
    uint32_t begin, end; /* the bytes it takes the place of, `end` being the place asked about */
    enum edit_class class;
    struct str text; /* to be written there */
    struct str name; /* what the tables know it by; may be empty */
    struct str what; /* a few words, when they are the text's own: a player's name; may be empty */
};
typedef VEC(struct edit_offer) edit_offer_list;
/* `checks` (NULL-ended) are the checks' ids, which this room does not know. In the order in which a
 * coach would want them: who, what, where, then the rest. */
void edit_complete(const struct edit_text *text, uint32_t at, const char *const *checks,
                   edit_offer_list *out);

/* A sentence and what became of it. */
struct edit_tie {                    /* a wait of its first task */
    const struct sentence *sentence; /* for which one; NULL: a time, a state, all before */
    enum moment moment;              /* of that one */
    double delay;                    /* s after it */
    bool written, fixed;             /* as in struct wait */
};
struct edit_diagram {
    size_t play; /* index in the book */
    int step, branch;
    struct str label; /* "2a" */
};
struct edit_sentence {
    const struct sentence *sentence;
    struct span span;
    struct str tidy;
    struct str
        told;  /* in prose, as it was understood in the first diagram it is in; may be empty */
    int tasks; /* in that diagram; 0: it came to nothing, see the diagnostics */
    VEC(struct edit_tie) ties;
    VEC(struct edit_diagram) diagrams;
};
typedef VEC(struct edit_sentence) edit_sentence_list;
/* Those of the source itself, not of what it includes, in the order of the text. `name` as for
 * playbook_resolve. */
void edit_sentences(const struct edit_text *text, struct str name, edit_sentence_list *out);

/* Between the files of this room: the book without a word said about it. */
struct book *edit_read(const struct edit_text *text, struct diags *diags);

#endif
