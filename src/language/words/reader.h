/* SPDX-License-Identifier: MIT */
/* reader: a book on its way from lines to blocks. Between the files of this room that read
 * everything but the inside of a sentence. */
#ifndef LANGUAGE_WORDS_READER_H
#define LANGUAGE_WORDS_READER_H

#include "language/words/cursor.h"

/* What the first word makes of a line. */
enum line_class {
    LINE_OTHER, /* a sentence, a roster line, or nothing known: the block decides */
    LINE_VERSION,
    LINE_SETTING,
    LINE_HEADING_0,
    LINE_CHAPTER,
    LINE_INCLUDE,
    LINE_STEP,
    LINE_BRANCH,
    LINE_IF,
    LINE_NOTE
};
struct opener {
    enum line_class kind;
    int which; /* block_kind, form_kind or setting */
};
struct opener opener_of(const struct line *line, size_t token);
/* The opening word nearest to what the line opens with, or NULL. */
const char *opener_nearest(const struct line *line);
/* Where a setting may stand: F, P, D. */
bool setting_stands(enum setting setting, char where);

struct verb_words;
/* What belongs to the whole book. */
struct shelf {
    struct arena *arena;
    struct sources *sources;
    const struct loader *loader;
    struct diags *diags;
    struct span playbook; /* of the first playbook heading */
    bool metres;          /* the book's units, for files that name none */
    size_t plays;
    const struct cursor_watch *watch; /* or NULL */
    struct sieves *sieves;
    struct verb_words *verb_words; /* taken: made when it is first asked; else NULL */
};

/* One file being read. */
struct reader {
    struct shelf *shelf;
    struct arena *arena;
    struct diags *diags; /* turned away while what is read is known to be broken */
    uint32_t source;
    int depth; /* of includes */
    struct lines lines;
    size_t next; /* the line to be looked at next */
    struct block *file;
    struct block *top;    /* of level 0; NULL: before the first, or behind a chapter or include */
    struct block *step;   /* NULL: none open */
    struct block *branch; /* a read or option; NULL: none open */
    bool at_head;         /* before the first heading of level 0 */
    bool implied;         /* the lines before it are a play */
    bool metres;
    bool has_steps;                    /* the play that is open has step headings */
    bool begun;                        /* its first step or sentence has come */
    bool told;                         /* that its lines stand in the wrong place */
    bool seen;                         /* a line that says something */
    size_t steps, sentences, branches; /* of the play; of the step, or the play without any */
    unsigned branch_indent;            /* of the first line in the branch */
    bool branch_has_line;
    sentence_list scratch; /* of the line being read */
};

/* A sentence of the line, as a form of its own. */
struct form *reader_add_sentence(struct reader *r, struct block *block, const struct line *line,
                                 const struct sentence *sentence);
/* The block that a line goes into. */
struct block *reader_block(const struct reader *r);
struct form *reader_add(struct reader *r, struct block *block, enum form_kind kind,
                        const struct line *line);
void reader_broken(struct reader *r, const struct line *line);
struct cursor reader_cursor(const struct reader *r, const struct line *line, size_t from);
struct block *block_new(struct reader *r, enum block_kind kind, const struct line *line);
/* Reports what was not used; true when everything was. */
bool reader_used_up(struct cursor *c);
/* Keeps `line` where forms can point at it. */
const struct line *line_keep(struct reader *r, struct line line);

/* Full stops at a line's end close nothing more than the line does. */
struct line line_without_stops(const struct line *line);
/* aloud: headings said another way, in all lines, as they are written. */
void headings_aloud(struct reader *r);
/* marks: the line with the marks the grammar knows: `!` as a full stop, `->` as to. */
struct line marks_as_spoken(struct reader *r, const struct line *line);
/* xN guards, before the first sentence. */
bool line_is_standing(const struct reader *r, const struct line *line);
void line_unknown(struct reader *r, const struct line *line, const char *near);
void setting_misplaced(struct reader *r, const struct line *line, enum setting setting);

/* One whole line each, where its block is open. */
void version_line(struct reader *r, const struct line *line, bool first);
void setting_line(struct reader *r, const struct line *line, enum setting setting);
/* rotation: how a drill goes on, which moves nobody in it. */
bool rotation_is(const struct cursor *c);
/* throw: 3 baseline, and ball 3: he stands out of bounds, to put it in. */
void thrower_on_line(struct reader *r, const struct block *block, const struct setting_form *read);
/* 1 has the ball, they are in a 2-3: a setting said as a sentence, before the first one. */
bool loose_setting(struct reader *r, const struct line *line);
/* ball starts with 3, start with the ball in 3's hands: as `ball 3` in `out`. */
bool loose_ball(struct reader *r, const struct line *line, struct line *out);
void play_line(struct reader *r, const struct line *line, struct opener opener);
/* The sentences of a line, which full stops part, and its notes. */
void body_line(struct reader *r, const struct line *line);
/* untold: a moment of the block that is open which none of its sentences tells becomes one, with a
 * note. Called before the block is left. */
void moments_settle(struct reader *r);
/* hinged: 1 shoots if x1 goes under: read as the read it is. False: the line is no such thing. */
struct line if_names_his(struct reader *r, const struct line *line);
bool if_caught(struct reader *r, const struct line *line); /* if 4 catches, 2 cuts: when he does */
bool line_hinges(struct reader *r, const struct line *line);
/* read x3 trails, 3 curls off 5: the same, where what is done stands in the read's own line. */
bool line_answers(struct reader *r, const struct line *line);

/* Each reads one line (or the part of one) into the block that is open. */
/* A heading, broken or not, opens its block: what follows belongs to it. */
void heading_read(struct reader *r, const struct line *line, struct opener opener);
void if_lines(struct reader *r, const struct line *line);
/* on a trap, 1 passes to 5: a read that opens with what the defense does. */
bool line_is_read(const struct reader *r, const struct line *line);
/* What the headings share: a title that must be there; nothing stands behind it; a heading that
 * stands in the wrong place. false: reported. */
bool heading_named(struct reader *r, const struct line *line, size_t *from,
                   const char *const *stops, struct block *block, const char *message,
                   const char *help);
bool heading_ends(struct reader *r, const struct line *line, size_t from);
bool heading_misplaced(struct reader *r, const struct line *line, const char *message,
                       const char *help);
bool block_plays(const struct block *top); /* a play or a drill */
void block_add(struct reader *r, struct block *parent, struct block *block);
/* branch: opened as `block`, with its answer. */
void branch_answered(struct reader *r, const struct line *line, const struct block *block,
                     const struct sentence *sentences, size_t count);
/* run_on_line: a run-on line that was refused, read clause by clause. False: it is none, or hardly
 * anything of it was understood; else it is in the block, or its one clause that was not is told.
 */
bool run_on_line(struct reader *r, const struct line *line);
/* The same of a line that was read already; false: it stays as it was read. */
bool run_on_instead(struct reader *r, const struct line *line);
/* The same of one in which something is asked, before it is read otherwise. False: none of it is in
 * the block; `*blame`: what there is to tell when nothing else reads it, or NULL. */
bool run_on_asks(struct reader *r, const struct line *line, struct diags **blame);
/* What was heard of the line takes the place of what its other readings reported. */
void run_on_hear(struct reader *r, const struct diags *heard, const struct line *line);
/* branch: a read or an option may stand here (false: reported), is opened, is read. */
bool branch_fits(struct reader *r, const struct line *line);
struct block *branch_open(struct reader *r, enum block_kind kind, const struct line *line);
bool read_heading(struct reader *r, const struct line *line, struct block *block);
bool option_heading(struct reader *r, const struct line *line, struct block *block);
void include_read(struct reader *r, const struct line *line);
bool setting_read(struct reader *r, const struct line *line, enum setting setting,
                  struct setting_form *out);
bool start_read(struct reader *r, struct cursor *c, struct setting_form *out);
bool note_read(struct reader *r, const struct line *line, enum form_kind kind,
               struct note_form *out);
/* Lines of a practice and of what was charted. */
void practice_line(struct reader *r, const struct line *line);
void charted_line(struct reader *r, const struct line *line);
/* Behind `charted`: the day and the occasion; false: reported. */
bool charted_heading_read(struct cursor *c, struct block *block);
/* What may stand behind `defense`; false: not a word of it is known. */
bool defense_words_read(struct cursor *c, struct setting_form *out);
void roster_read(struct reader *r, const struct line *line);
bool lineup_read(struct reader *r, struct cursor *c, struct form *form);

/* A file of its own, into a block. */
struct block *file_read(struct shelf *shelf, uint32_t source, int depth);

/* A title from token `from` on: quoted, or the words to the line's end, which `*quoted` tells
 * apart. For unquoted ones `stops` (NULL-ended, may be NULL) are words that would be ambiguous: an
 * error. Moves `*from` behind the title. false: none there (no diagnostic) or refused (`*refused`).
 */
struct title {
    struct str text;
    struct span span;
    bool quoted;
};
enum title_result { TITLE_FINE, TITLE_NONE, TITLE_REFUSED };
enum title_result title_read(struct reader *r, const struct line *line, size_t *from,
                             const char *const *stops, struct title *out);
/* A quoted text at the cursor. */
bool quoted_read(struct cursor *c, struct str *text, struct span *span);
/* A whole number at the cursor. */
bool integer_read(struct cursor *c, int *number, struct span *span);
/* taken: whether a word has a meaning in the language and so cannot be a role; the same, where a
 * book has many. */
bool word_is_taken(struct str word);
bool role_is_taken(struct shelf *shelf, struct str word);

#endif
