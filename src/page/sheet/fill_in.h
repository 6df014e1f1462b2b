/* SPDX-License-Identifier: MIT */
/* fill_in: what questions and answers of fill-in sheets share: a picture's heading, words behind
 * their letter; and the answers, which are kept until the pages of all questions are set. Private
 * to sheet. */
#ifndef PAGE_SHEET_FILL_IN_H
#define PAGE_SHEET_FILL_IN_H

#include "page/sheet/asked.h"
#include "page/sheet/rows.h"

#define FILL_IN_GAP 18.0 /* between two rows of pictures */

/* How questions stand on a page: so many pictures across, each with its words under or beside it.
 */
struct ask_form {
    size_t across;
    double picture;     /* its width */
    double left, words; /* of its words, from its own left, and how wide they are */
    double pitch;       /* from one picture's left to the next one's */
    bool beside;
    enum type heading;
};
/* From a row's top to its pictures', of which the longest heading has so many lines. */
double ask_form_top(const struct ask_form *form, size_t lines);

/* A play that is asked about. */
struct filling_in {
    struct rows rows;
    const struct run *run;
    const struct ask_form *answering;
    bool small;  /* the pictures of questions */
    bool dashed; /* a line to cover along is among them, */
    bool turned; /* a page begins with what would tell of the one before */
    asked_list asked;
};

/* "1a  x3 trails, from the start of step 1" over a question, "1a  x3 trails: Curl" over the answer,
 * which is the same picture. */
struct str asked_heading(const struct filling_in *filling, const struct asked *asked,
                         bool answered);
/* A question or an answer behind its letter; returns its last baseline. */
double blank_set(const struct filling_in *filling, struct galley *row, const struct blank *blank,
                 struct str text, enum type type, struct vec2 base, double width);

/* How answers stand: pictures of a step's reads and of whole floors; two where they are alone on
 * their page. */
const struct ask_form *answers_form(struct arena *arena, const struct play *play,
                                    const diagram_list *diagrams, bool alone);
/* Of one picture: what stands over it, and it with its words and points. */
struct answer {
    const struct text_block *heading;
    struct galley *below;
};
struct answers { /* of one play */
    const struct ask_form *form;
    struct str name;
    size_t points;
    VEC(struct answer) pictures;
};
typedef VEC(struct answers) answers_list;
/* In memory of `keep`. */
struct answers answers_of(const struct filling_in *filling, struct arena *keep);
/* What a point is given for. */
#define ANSWERS_POINTS "One for each line that runs as it does here, one for each answer."
/* On the pages that are open: of their one play. */
void answers_add(struct rows *rows, const struct answers *answers);
/* The same of many plays, three pictures across, each play's under its name. */
void answers_add_all(struct rows *rows, const answers_list *all);

#endif
