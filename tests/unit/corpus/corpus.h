/* SPDX-License-Identifier: MIT */
/* corpus: files of sentences as coaches say and type them, each with what it means. One a line:
 *   loose => tidy sentence / tidy sentence      what tidy prints
 *   loose => ! words of the message             refused, with an error or a help that holds these
 * words ^ line / line                               stands before every line from here on; alone:
 * nothing
 *   @ line / line                               the play's head instead of `play` and `defense man`
 *   = name                                      a family: nothing stands before its lines
 *   # text                                      a comment */
#ifndef TESTS_UNIT_CORPUS_CORPUS_H
#define TESTS_UNIT_CORPUS_CORPUS_H

#include "floor/play/play.h"
#include "language/tidy/tidy.h"

struct corpus_line {
    int number;
    struct str family, head, above; /* head and above: whole lines, one below the other */
    struct str written, wanted;     /* wanted: without its ! */
    bool refused;
};
typedef VEC(struct corpus_line) corpus_lines;

/* What became of a text. */
struct corpus_read {
    struct sources sources;
    struct diags diags;
    struct book *book;
    struct playbook *plays;
    struct str tidy; /* of all of it */
};

/* Everything lives in the arena. False: the file cannot be read. */
bool corpus_open(struct arena *arena, const char *path, corpus_lines *out);
/* The head, what stands above, and what is `said`. */
struct str corpus_text(struct arena *arena, const struct corpus_line *line, struct str said);
void corpus_read(struct arena *arena, struct str text, struct corpus_read *out);
/* Lines of `tidy` behind as many as `before` has, trimmed, without comments, with " / " between. */
struct str corpus_behind(struct arena *arena, struct str tidy, struct str before);
/* Every error's message and help, one a line. */
struct str corpus_errors(struct arena *arena, const struct diags *diags);
/* Where and when everything happens, for comparing: play_dump of every play. */
struct str corpus_dump(struct arena *arena, const struct corpus_read *read);
bool str_holds(struct str text, struct str part);

#endif
