/* SPDX-License-Identifier: MIT */
/* courtwright: a coach's text in, plays checked and drawn out.
 *
 * This is the only public header and its comments are the manual. A short program:
 *
 *     struct courtwright *book = courtwright_load("book.play", text, size, NULL);
 *     for (size_t i = 0; i < courtwright_diagnostic_count(book); i++) {
 *         const struct courtwright_diagnostic *said = courtwright_diagnostic(book, i);
 *         printf("%s:%u: %s\n", said->file, said->line, said->message);
 *     }
 *     struct courtwright_draw draw = {.play = 0, .diagram = 0, .format = COURTWRIGHT_SVG_LIVE};
 *     courtwright_draw(book, &draw, &writer);
 *     courtwright_free(book);
 *
 * Rules that hold everywhere
 * - All text is UTF-8. Text that goes in is pointer and length, need not end in a NUL and may be
 * let go once the call is back. Text that comes out ends in a NUL, is never NULL (empty when there
 * is none) and lives as long as the handle it came from.
 * - Metres and seconds. The floor's origin is the point under the ring; x goes to the attackers'
 *   right as they face the basket, y toward half court. Sizes on paper are points, 1/72 inch.
 * - Indices count from 0; numbers that a coach sees (steps, players) count from 1.
 * - A struct of options that is all zeros asks for the defaults. Fill in what you want otherwise.
 * - Nothing here prints, reads a file, the environment or the clock, ends the program or keeps
 * state outside the handle. The same input gives the same bytes.
 * - One handle must not be used by two threads at once; different handles may.
 * - No input makes a call crash. What is wrong with the text is a diagnostic, what is wrong with
 * the call is a courtwright_status. */
#ifndef COURTWRIGHT_H
#define COURTWRIGHT_H

#include <stdbool.h>
#include <stddef.h>

#ifdef __cplusplus
extern "C" {
#endif

#if defined(__GNUC__)
#define COURTWRIGHT_API __attribute__((visibility("default")))
#else
#define COURTWRIGHT_API
#endif

/* A book as loaded, run and checked. */
struct courtwright;

enum courtwright_status {
    COURTWRIGHT_OK,
    COURTWRIGHT_NO_SUCH,    /* no play, diagram, player, sheet or word of that number or name */
    COURTWRIGHT_BAD_OPTION, /* an option out of its range */
    COURTWRIGHT_BROKEN,     /* there is an error in that play: see the diagnostics; or it waits */
    COURTWRIGHT_WRITE,      /* the writer said no: what it has is not whole */
    COURTWRIGHT_MEMORY,     /* not enough memory, or past the library's own limit */
    COURTWRIGHT_NOT_BUILT,  /* the library was built without cairo (-Dcore=true) */
    COURTWRIGHT_NOTHING, /* these plays hold nothing for this sheet: a fill-in where nobody moves */
    COURTWRIGHT_PIXELS   /* a PNG of more than 20,000 pixels a side */
};

/* In a few words, for a message: "no such play or diagram". */
COURTWRIGHT_API const char *courtwright_status_text(enum courtwright_status status);

/* "0.1.0" */
COURTWRIGHT_API const char *courtwright_version(void);

/* ---- Load ------------------------------------------------------------------------------------ */

/* The most one text may hold, in bytes; a larger one is the diagnostic file.too-large. */
#define COURTWRIGHT_TEXT_MOST ((size_t)8 << 20)

enum courtwright_fetched {
    COURTWRIGHT_FETCHED,
    COURTWRIGHT_MISSING,
    COURTWRIGHT_UNREADABLE,
    COURTWRIGHT_OUTSIDE, /* you do not let a book reach there */
    COURTWRIGHT_TOO_LARGE
};

/* Where a fetch puts what it found. */
struct courtwright_include;

/* Hands over the text of an include; both are copied. `name` is shown in messages and tells whether
 * a file was included before: give one file always the same name. False when memory ran out (return
 * what you like then: the load ends with file.memory). */
COURTWRIGHT_API bool courtwright_include_text(struct courtwright_include *include, const char *name,
                                              const char *text, size_t size);

/* What the library asks of the program around it. Any member may be NULL. */
struct courtwright_host {
    /* Finds what `include "path"` in the text called `from` means: on success calls
     * courtwright_include_text once and returns COURTWRIGHT_FETCHED. Without it every include is an
     * error. Which places may be read is for the callback to decide. */
    enum courtwright_fetched (*fetch)(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include);
    void *fetch_ctx;

    /* Memory in place of malloc and free; both or neither. `take` may return NULL; blocks must be
     * aligned for any type. (cairo and the font library below print-true pictures take their own.)
     */
    void *(*take)(void *ctx, size_t size);
    void (*give)(void *ctx, void *block);
    void *memory_ctx;

    /* Calls job(jobs, i) once for each i below `count`, in whatever order and by as many threads
     * at once as you like, and comes back when all are done. `take` and `give`, where there are
     * any, must bear that. Without it the jobs are done one after the other: what comes of them
     * is the same. */
    void (*side_by_side)(void *ctx, size_t count, void (*job)(void *jobs, size_t i), void *jobs);
    void *side_by_side_ctx;
};

/* Reads, runs and checks a book. `name` is what messages call it ("book.play"); without a play
 * heading in the text the play is named after it. `host` is copied and may be NULL.
 * Returns NULL only when there was no memory for the handle itself. Whatever else goes wrong is a
 * diagnostic, and a handle with errors is still good for everything that has none. */
COURTWRIGHT_API struct courtwright *courtwright_load(const char *name, const char *text,
                                                     size_t size,
                                                     const struct courtwright_host *host);
/* As courtwright_load, but of all the plays only one is run and checked: the one that `line` of
 * `file` is in (0, or above the first play: none); `file` is the name of an include, as
 * courtwright_play tells it; NULL or empty: the text itself. The others are told as `waiting`, and
 * of accept lines it is not told which silence nothing: they may be for one that waits. For a
 * picture at every key while a book is written: reading is a small part of the work, running
 * plays the rest. */
COURTWRIGHT_API struct courtwright *courtwright_load_at(const char *name, const char *text,
                                                        size_t size, const char *file,
                                                        unsigned line,
                                                        const struct courtwright_host *host);
COURTWRIGHT_API void courtwright_free(struct courtwright *book); /* NULL is fine */

/* ---- What is said about it ------------------------------------------------------------------- */

enum courtwright_severity { COURTWRIGHT_NOTE, COURTWRIGHT_WARNING, COURTWRIGHT_ERROR };

struct courtwright_diagnostic {
    enum courtwright_severity severity;
    const char *id; /* "text.unknown-word", "space.close": never changes; see courtwright_explain */
    const char *file;     /* as named to load or by fetch */
    unsigned line;        /* from 1; 0: of no place, and then column and end are 0 too */
    unsigned column, end; /* code points from 1; `end` is behind the last, on the same line */
    const char *message;  /* one sentence */
    const char *named;    /* the same with "Ada (1)" for 1, where the lineup or roster names her */
    const char *help;     /* what the coach could write or do; may be empty */
    const char *excerpt;  /* the line, without its end; control characters are spaces */
    const char *play;     /* the play a finding is about; empty for errors of text */
    const char *step;     /* its diagram: "2", "2a"; may be empty */
    double time;          /* seconds into that step; 0 for errors of text */
    bool finding;         /* a check found it in the run (else: said about the text) */
    bool accepted;      /* a finding that the coach has said is on purpose: counts as no warning */
    const char *reason; /* of an accepted one */
    unsigned letter; /* of its square in its diagram's picture, 1 for A; 0: it is not drawn there */
    const char *other_file; /* a second place the message speaks of; empty: none */
    unsigned other_line;
};

/* In the order of the text. */
COURTWRIGHT_API size_t courtwright_diagnostic_count(const struct courtwright *book);
COURTWRIGHT_API const struct courtwright_diagnostic *
courtwright_diagnostic(const struct courtwright *book, size_t index);
/* How many there were in all, accepted ones apart: more than the list holds when that is full. */
COURTWRIGHT_API size_t courtwright_error_count(const struct courtwright *book);
COURTWRIGHT_API size_t courtwright_warning_count(const struct courtwright *book);
/* Whether the list is full: then there was more to say, notes too, than is in it. */
COURTWRIGHT_API bool courtwright_list_full(const struct courtwright *book);

/* How well one diagram's step bears it that players are never twice the same: run many times, each
 * time with everybody's speed (8 %) and reaction (20 %, one deviation each) drawn anew. It works
 * when every pass is caught, every screen is used, and no check of passes and screens finds
 * anything that the coach has not accepted.
 * The draws are fixed: the same step gives the same numbers every time, on every machine. */
struct courtwright_tolerance {
    const char *play, *step; /* its diagram: "2", "2a" */
    size_t play_index, diagram;
    int runs, works;      /* runs is 0 when nothing in it can be late: no pass, no screen in use */
    const char *tightest; /* "3's cut to the left wing"; empty: nothing is tight */
    double spare; /* s: later by so much, and it would not have come off; of the middle run */
    const char *trouble; /* what went wrong most often: "x3 may pick off 1's pass to 3"; or empty */
    const char *check;   /* the check that found it; empty: none, it did not come about */
    int times;           /* how often */
    /* What checks warn of in the step as it is written: "spot.taken"; or empty. */
    const char *warned;
    const char *help;    /* where it works in few of the runs: what to write or do; else empty */
    const char *message; /* all that in one sentence */
    const char *named;   /* the same, with players by first name and number where there is one */
    const char *file;    /* of the tightest movement's sentence, or of the step */
    unsigned line, column, end;
};
typedef bool (*courtwright_each_tolerance)(void *ctx,
                                           const struct courtwright_tolerance *tolerance);
/* Every diagram of a play, in order; uses the host's side_by_side. Text lives as long as the call
 * of the callback. COURTWRIGHT_BROKEN when there is an error in the play. */
COURTWRIGHT_API enum courtwright_status courtwright_tolerance(struct courtwright *book, size_t play,
                                                              courtwright_each_tolerance each,
                                                              void *ctx);

/* ---- What is in it --------------------------------------------------------------------------- */

COURTWRIGHT_API const char *courtwright_title(const struct courtwright *book); /* of the playbook */
COURTWRIGHT_API const char *courtwright_team(const struct courtwright *book);

/* The texts it was made of: the one given first, then includes as they were met. */
COURTWRIGHT_API size_t courtwright_source_count(const struct courtwright *book);
COURTWRIGHT_API const char *courtwright_source(const struct courtwright *book, size_t index);

struct courtwright_play {
    const char *name, *series, *call, *about, *chapter;
    int number; /* the coach's own; 0: none */
    int steps;
    bool drill;
    bool broken;      /* there is an error in it: it is not drawn */
    size_t diagrams;  /* 0 when broken or waiting */
    double seconds;   /* of play along its main way */
    bool counted;     /* it has chart lines or reads: a tally sheet of the book shows it */
    bool waiting;     /* it was not run: see courtwright_load_at; never drawn, broken or not */
    const char *file; /* of its heading */
    unsigned line;
};
COURTWRIGHT_API size_t courtwright_play_count(const struct courtwright *book);
/* NULL past the end. */
COURTWRIGHT_API const struct courtwright_play *courtwright_play(const struct courtwright *book,
                                                                size_t index);

/* One diagram: a step, or one read or option of it. */
struct courtwright_diagram {
    const char *label; /* "2", "2a" */
    const char *title; /* may be empty */
    int step;          /* from 1 */
    int branch;        /* from 1; 0: the step has none */
    double seconds;    /* of a step before its reads: until these begin */
    size_t tasks;      /* how many of those on its clock it tells of: what follows is a read's */
    unsigned line; /* of the heading of its read or option, else of its step, in the play's file */
    unsigned step_line; /* of its step's heading */
};
COURTWRIGHT_API const struct courtwright_diagram *
courtwright_diagram(const struct courtwright *book, size_t play, size_t index);

/* The team's roster, in the order written. */
struct courtwright_player {
    const char *name, *role, *jersey;
    int number;   /* her place in the plays, 1..5 */
    bool starter; /* the first with that number */
};
COURTWRIGHT_API size_t courtwright_player_count(const struct courtwright *book);
COURTWRIGHT_API const struct courtwright_player *courtwright_player(const struct courtwright *book,
                                                                    size_t index);
/* Whom somebody means by a name, a part of one that nobody else has, or a jersey, "#7": the first
 * of her rows. NULL: nobody, or one of two; then *other is the second of them, else NULL. */
COURTWRIGHT_API const struct courtwright_player *
courtwright_player_meant(const struct courtwright *book, const char *said,
                         const struct courtwright_player **other);
/* The player whose name is spelled most like it; NULL: no name is near. */
COURTWRIGHT_API const struct courtwright_player *
courtwright_player_near(const struct courtwright *book, const char *said);

/* ---- Draw ------------------------------------------------------------------------------------ */

/* Where bytes go: false ends the call with COURTWRIGHT_WRITE. `size` is never 0. */
struct courtwright_writer {
    bool (*write)(void *ctx, const char *bytes, size_t size);
    void *ctx;
};

enum courtwright_format {
    COURTWRIGHT_SVG,      /* print-true: text as outlines, the same picture everywhere */
    COURTWRIGHT_SVG_LIVE, /* real text, classes by meaning, follows dark and print; a single diagram
                           */
    COURTWRIGHT_PDF,
    COURTWRIGHT_PNG
};
enum courtwright_layout {
    COURTWRIGHT_SINGLE, /* one diagram */
    COURTWRIGHT_STRIP,  /* side by side */
    COURTWRIGHT_GRID    /* three across */
};
enum courtwright_theme { COURTWRIGHT_PRINT, COURTWRIGHT_SCREEN, COURTWRIGHT_DARK };

struct courtwright_draw {
    size_t play;
    size_t diagram; /* the first one drawn */
    size_t count;   /* STRIP, GRID: how many; 0: to the end of the play */
    enum courtwright_format format;
    enum courtwright_layout layout;
    enum courtwright_theme theme;
    double width;     /* of one diagram, points, 72..2000; 0: 237.6 (3.3 in) */
    double scale;     /* PNG: pixels a point, 0.5..10; 0: 3 (216 dpi) */
    bool caption;     /* the sentences under the floor */
    bool caution;     /* the short caution under the floor; it is in an SVG's description always */
    bool beads;       /* a bead on each line every half second */
    bool names;       /* players' names beside their numbers, from the roster */
    bool show_checks; /* findings where they are, and told under the floor */
    bool only_lettered; /* of show_checks: they are told elsewhere, behind the same letters */
    bool hide_defense;
    bool fluid; /* SVG: as wide as where it stands */
    const char
        *salt; /* SVG: makes ids differ where one drawing stands twice in a page; NULL: none */
    const char *date; /* PDF: when it was made, ISO 8601; NULL: none is told */
};
COURTWRIGHT_API enum courtwright_status courtwright_draw(struct courtwright *book,
                                                         const struct courtwright_draw *draw,
                                                         const struct courtwright_writer *writer);

/* What lies on what in one diagram (draw->play, draw->diagram): all but the crossings should be 0.
 */
enum courtwright_mark {
    COURTWRIGHT_SYMBOL /* a player, an X, its numeral, a cone */,
    COURTWRIGHT_LINE,
    COURTWRIGHT_BAR /* of a screen or a hand-off */,
    COURTWRIGHT_DOT /* where a player ends */,
    COURTWRIGHT_LABEL,
    COURTWRIGHT_HEAD /* of an arrow */,
    COURTWRIGHT_BASKET /* its ring */,
    COURTWRIGHT_TICK /* who waits in a line of players */,
    COURTWRIGHT_MARKS
};
struct courtwright_measure {
    double least_gap; /* points, between a line and a symbol that is not its own */
    int on[COURTWRIGHT_MARKS]
          [COURTWRIGHT_MARKS]; /* [a][b], a <= b; lines so near each other that they look one */
    int outside;
    int labels, labels_left_out, labels_moved; /* moved: beside their line, not on it */
    int labels_astray;             /* nearer to another line than to their own, or far from it */
    int crossings, flat_crossings; /* flat: under 12 degrees */
    int wrong_sides; /* numerals and bars that a line passes on the other side than its run */
};
/* "symbol", "line" ...; NULL beyond them. */
COURTWRIGHT_API const char *courtwright_mark_word(enum courtwright_mark mark);
COURTWRIGHT_API enum courtwright_status courtwright_measure(struct courtwright *book,
                                                            const struct courtwright_draw *draw,
                                                            struct courtwright_measure *measure);

/* ---- Movement -------------------------------------------------------------------------------- */

/* A play as one SVG in which players and ball move in real time, its parts in the order of their
 * labels. What does not go on from the part before begins with everybody going back, and its title
 * says so; a step that was told before is taken up a little before its answer. Without a script, so
 * that it moves in an image too; played once, and the end stays. On paper, where less motion is
 * asked for, and in programs that do not animate, the first diagram stands still in its place. (A
 * browser may not tell an image of paper and of less motion: written into the page, it hears of
 * both.) */
struct courtwright_animate {
    size_t play;
    bool alone;     /* one diagram of it only: */
    size_t diagram; /* this one */
    enum courtwright_theme theme;
    double width; /* points, 72..2000; 0: 237.6 (3.3 in) */
    bool loop;    /* begins again at its end */
    bool hide_defense;
    bool fluid;       /* as wide as where it stands */
    const char *salt; /* makes ids differ where one stands twice in a page; NULL: none */
};
COURTWRIGHT_API enum courtwright_status
courtwright_animate(struct courtwright *book, const struct courtwright_animate *animate,
                    const struct courtwright_writer *writer);

/* ---- Pages ----------------------------------------------------------------------------------- */

enum courtwright_paper {
    COURTWRIGHT_BOOK_PAPER /* as the text says; letter */,
    COURTWRIGHT_LETTER,
    COURTWRIGHT_A4
};

/* Pages, PDF. A handout for players: a reader's pages leave out the plays in which nobody has that
 * number; COURTWRIGHT_NO_SUCH when that leaves none. */
struct courtwright_handout {
    const size_t *plays; /* which, in order; NULL: every play without an error */
    size_t play_count;
    int per_page; /* diagrams a page: 1, 2, 4, 6, 9, of a card 12, 20; 0: as the sheet likes */
    enum courtwright_paper paper;
    int reader;                /* whose page it is, 1..5; 0: everybody's */
    const char *reader_name;   /* shown; NULL: the starter of that number, where there is a roster.
                                * With reader 0: every spot that this player has, play by play, as its
                                * lineup or the roster says */
    const char *reader_jersey; /* tells two of that name apart; NULL: there is one */
    bool names;                /* names beside numbers */
    const char *date_text;     /* shown at the foot of the page; NULL: none */
    const char *date;          /* of the file, ISO 8601; NULL: none is told */
    unsigned seed;             /* which lines a fill-in sheet leaves out */
    const char *title;         /* of the practice, or the play of a trend; NULL: all of them */
    const void *crest; /* of a book: the team's picture for the cover, bytes of an SVG or PNG */
    size_t crest_size; /* 0: none; see courtwright_crest_trouble */
    bool two_sided;    /* of a book, for binding: left and right pages lean to the outside */
    bool tolerance; /* of a coach's sheet: every step is run a hundred times by other players, and
                     * how often it worked stands beside its timing (courtwright_tolerance) */
    /* Told of each play that holds nothing for the sheet and is left out: a fill-in sheet of one in
     * which nobody moves. NULL: nobody is. */
    void (*left_out)(void *ctx, size_t play);
    void *left_out_ctx;
};
COURTWRIGHT_API enum courtwright_status
courtwright_handout(struct courtwright *book, const struct courtwright_handout *handout,
                    const struct courtwright_writer *writer);

/* The sheet of that word, one of those that courtwright_list names: "handout"; "practice", "trend":
 * what the book plans and what was charted, whatever `plays` says. COURTWRIGHT_NO_SUCH
 * when there is no such sheet, or nothing in the book for it. */
COURTWRIGHT_API enum courtwright_status courtwright_sheet(struct courtwright *book,
                                                          const char *sheet,
                                                          const struct courtwright_handout *options,
                                                          const struct courtwright_writer *writer);

/* The playbook as one HTML file, for phones and larger screens: every play with its diagrams, its
 * sentences and points, players' jobs, a search; light, dark and on paper. It needs a browser and
 * no network, asks for nothing from elsewhere, and without its script the diagrams and all words
 * stand there. Part of the core. COURTWRIGHT_NO_SUCH when no play is left to show. */
struct courtwright_web {
    const size_t *plays; /* which, in order; NULL: every play without an error */
    size_t play_count;
    bool names; /* players' names beside their numbers, for a page that is not passed on */
    const char *date_text; /* shown at the foot; NULL: none */
};
COURTWRIGHT_API enum courtwright_status courtwright_web(struct courtwright *book,
                                                        const struct courtwright_web *web,
                                                        const struct courtwright_writer *writer);

/* A sheet as pieces of HTML, for a browser's own printing and for a library without cairo:
 * "handout", "coach", "card", "practice". Of `options` plays, reader, names, paper and title count;
 * NULL asks for the defaults.
 * It stands in a page that brings the style (that of the page to write in: its paper.css).
 * COURTWRIGHT_NO_SUCH when there is no such sheet, or nothing in the book for it. */
COURTWRIGHT_API enum courtwright_status
courtwright_paper_html(struct courtwright *book, const char *sheet,
                       const struct courtwright_handout *options,
                       const struct courtwright_writer *writer);

/* What is wrong with a picture for the cover, to stand behind "the crest": "is neither SVG nor
 * PNG"; NULL when it can be drawn. A sheet that is given a crest with trouble gives
 * COURTWRIGHT_BAD_OPTION. It has to be whole in its bytes: nothing else is opened. */
COURTWRIGHT_API const char *courtwright_crest_trouble(const void *bytes, size_t size);

/* The practice plans of the book, in order. */
COURTWRIGHT_API size_t courtwright_practice_count(const struct courtwright *book);
COURTWRIGHT_API const char *courtwright_practice(const struct courtwright *book, size_t index);
/* Whether something was charted: of this play, or with NULL of any. */
COURTWRIGHT_API bool courtwright_is_charted(const struct courtwright *book, const char *play);

/* Errors that stand in no play, by the part of the book they are in: a sheet that shows such a part
 * is better not printed before it is mended. (courtwright_play tells which plays are broken.) */
enum courtwright_part {
    COURTWRIGHT_ROUND,     /* the settings, the team, chapters, what stands round plays */
    COURTWRIGHT_PRACTICES, /* practice plans */
    COURTWRIGHT_CHARTED    /* what was charted */
};
COURTWRIGHT_API size_t courtwright_error_count_in(const struct courtwright *book,
                                                  enum courtwright_part part);

/* Letters that the bundled face lacks, met so far in print-true pictures and pages of this handle,
 * and drawn in a face of this machine (found by fontconfig, which is asked for nothing else): on
 * another machine they may look otherwise. The first few, as text, and the name of the first such
 * face; empty: there were none. */
COURTWRIGHT_API const char *courtwright_borrowed_letters(const struct courtwright *book);
COURTWRIGHT_API const char *courtwright_borrowed_face(const struct courtwright *book);
/* Letters that no face of this machine has either: an empty box stands for each. */
COURTWRIGHT_API const char *courtwright_missing_letters(const struct courtwright *book);

/* ---- Text and numbers ------------------------------------------------------------------------ */

/* The text given to load in its one written form (includes stay the line they are). What could not
 * be read is printed as it stands: a book with errors loses nothing. */
COURTWRIGHT_API enum courtwright_status courtwright_tidy(struct courtwright *book,
                                                         const struct courtwright_writer *writer);

/* As courtwright_tidy, in the newest version of the language, which the first line then names
 * ("courtwright 1", the only one so far): what an older version said otherwise is written anew.
 * A line for the version is added where there is none. COURTWRIGHT_BROKEN when the text names a
 * version this library does not know, or names it in the wrong place. */
COURTWRIGHT_API enum courtwright_status
courtwright_upgrade(struct courtwright *book, const struct courtwright_writer *writer);

/* Where everybody and the ball are over time, as one JSON object: samples at even times with
 * velocities (a cubic Hermite curve between them gives the run back), who has the ball, how it came
 * from one to the other, and every event at its own time. Its fields are told by
 * courtwright_positions_schema(). Metres and seconds to the sixth decimal. rate 1..120; 0: 30. */
COURTWRIGHT_API enum courtwright_status
courtwright_positions(struct courtwright *book, size_t play, int rate,
                      const struct courtwright_writer *writer);

/* The JSON schema (draft 2020-12) of what courtwright_positions writes, also installed as
 * share/courtwright/positions.schema.json. Its id changes when a field does. */
COURTWRIGHT_API const char *courtwright_positions_schema(void);

/* A stage of the work as text, for looking at and for tests; no promise is made about its form. */
enum courtwright_stage { COURTWRIGHT_RESOLVED, COURTWRIGHT_RUN, COURTWRIGHT_SCENE };
COURTWRIGHT_API enum courtwright_status courtwright_dump(struct courtwright *book, size_t play,
                                                         enum courtwright_stage stage,
                                                         const struct courtwright_writer *writer);

/* ---- The language ---------------------------------------------------------------------------- */

enum courtwright_list {
    COURTWRIGHT_CHECKS,
    COURTWRIGHT_ERRORS, /* what can be wrong with a text, a play or a file */
    COURTWRIGHT_VERBS,
    COURTWRIGHT_PLACES,
    COURTWRIGHT_FORMATIONS,
    COURTWRIGHT_SETTINGS,
    COURTWRIGHT_COURTS,
    COURTWRIGHT_LEVELS,
    COURTWRIGHT_SHEETS,
    COURTWRIGHT_THEMES,
    COURTWRIGHT_WORDS, /* headings, notes and whatever is in no other table */
    COURTWRIGHT_ZONES, /* zones and presses: who stands where, by where the ball is */
    COURTWRIGHT_LIST_COUNT
};

/* A row of a table. Text lives only as long as the call of the callback. */
struct courtwright_entry {
    enum courtwright_list list;
    const char *word;       /* "screens for", "space.close", "horns" */
    const char *what;       /* one line */
    const char *why;        /* the explanation; may be empty */
    const char *good, *bad; /* examples in the play language; may be empty */
    const char *source;     /* where a number comes from; may be empty */
    const char
        *limit; /* of a check, as it stands unless the book says otherwise: "12 ft"; or empty */
    enum courtwright_severity severity; /* the highest, of checks and errors */
};
/* False ends the listing. */
typedef bool (*courtwright_each)(void *ctx, const struct courtwright_entry *entry);

/* "checks", "verbs", …: the word a list goes by, or NULL past the end. */
COURTWRIGHT_API const char *courtwright_list_name(enum courtwright_list list);
/* Every row of one table. Of `host` only the memory is used; it may be NULL. */
COURTWRIGHT_API enum courtwright_status courtwright_list(enum courtwright_list list,
                                                         const struct courtwright_host *host,
                                                         courtwright_each each, void *ctx);
/* The rows, of whatever table, that go by `word`: a check, an error, a word of the language, in any
 * of its forms. COURTWRIGHT_NO_SUCH when there is none. */
COURTWRIGHT_API enum courtwright_status courtwright_explain(const char *word,
                                                            const struct courtwright_host *host,
                                                            courtwright_each each, void *ctx);

/* A check's good and bad example, as courtwright_explain gives them, run and drawn side by side,
 * with what the check sees in the bad one. Of `draw` the format (print-true), theme, width, scale,
 * fluid, salt and date count. COURTWRIGHT_NO_SUCH: no check goes by that id. */
COURTWRIGHT_API enum courtwright_status
courtwright_draw_example(const char *check, const struct courtwright_host *host,
                         const struct courtwright_draw *draw,
                         const struct courtwright_writer *writer);

/* ---- For whoever writes an editor ------------------------------------------------------------ */

/* These calls take a text as it stands at the moment, half typed or wrong, and keep nothing between
 * two calls: two threads may ask at once, also about the same text. Places are bytes of the text,
 * from 0, `end` behind the last; text that is handed to a callback lives as long as its call.
 * A callback that returns false ends the call, which is COURTWRIGHT_OK then too. Of `host` (may be
 * NULL) the memory is used, and fetch, so that the names of included files are known; without fetch
 * an included file counts as empty. A text that is none (with a NUL in it, or longer than
 * COURTWRIGHT_TEXT_MOST) gives COURTWRIGHT_BROKEN, memory that runs out COURTWRIGHT_MEMORY. Nothing
 * is run: no call takes longer than reading the text, but courtwright_complete, which reads a few
 * lines once for each word that it tries (a few milliseconds). What is wrong with a text is not
 * said here: see courtwright_load. */

/* What a piece of the text is to the eye. The name, fit for a style sheet: "heading", "player". */
enum courtwright_class {
    COURTWRIGHT_CLASS_PLAIN,    /* a filler or a mark: to, the, a comma */
    COURTWRIGHT_CLASS_HEADING,  /* opens a block: play, step, read, if */
    COURTWRIGHT_CLASS_SETTING,  /* the word a setting opens with: level, start */
    COURTWRIGHT_CLASS_NOTE,     /* the word a note line opens with: point, run, accept */
    COURTWRIGHT_CLASS_PLAYER,   /* an attacker, the coach, a role, the ball */
    COURTWRIGHT_CLASS_DEFENDER, /* x3, 3's defender */
    COURTWRIGHT_CLASS_VERB,     /* what somebody does: curls off */
    COURTWRIGHT_CLASS_PLACE,    /* left wing, 3 ft above 5 */
    COURTWRIGHT_CLASS_TIE,      /* when: as, after, until, then */
    COURTWRIGHT_CLASS_MODIFIER, /* how: wide, early, jogging */
    COURTWRIGHT_CLASS_MEASURE,  /* a number with its unit */
    COURTWRIGHT_CLASS_VALUE,    /* what a setting is: u16, five-out; a number that is no player */
    COURTWRIGHT_CLASS_QUOTED,   /* a text of the coach's own, a title without quotes too */
    COURTWRIGHT_CLASS_CHECK,    /* space.close */
    COURTWRIGHT_CLASS_COMMENT,
    COURTWRIGHT_CLASS_ERROR, /* was not understood */
    COURTWRIGHT_CLASS_COUNT
};
/* NULL past the end. */
COURTWRIGHT_API const char *courtwright_class_name(enum courtwright_class kind);

struct courtwright_token {
    size_t begin, end;
    enum courtwright_class kind;
};
typedef bool (*courtwright_each_token)(void *ctx, const struct courtwright_token *token);
/* Every piece of the text, in its order, none over another; blanks are in none. */
COURTWRIGHT_API enum courtwright_status courtwright_tokens(const char *text, size_t size,
                                                           const struct courtwright_host *host,
                                                           courtwright_each_token each, void *ctx);

struct courtwright_completion {
    size_t begin, end; /* the bytes it takes the place of: what was typed of it; end is `at` */
    enum courtwright_class kind;
    const char *text; /* what to put there: "curls off", "left wing", "\"Lantern\"" */
    const char *what; /* a few words about it, those of courtwright_explain; may be empty */
};
typedef bool (*courtwright_each_completion)(void *ctx,
                                            const struct courtwright_completion *completion);
/* What could stand at byte `at` (past the end: at the end), when the line ended there: words of the
 * language, players, and the book's own names. Where nothing is typed yet, only the usual way to
 * say a thing is offered; the others come with their first letter. In a comment, in a text of the
 * coach's own, and behind words that are not understood, there is nothing. */
COURTWRIGHT_API enum courtwright_status courtwright_complete(const char *name, const char *text,
                                                             size_t size, size_t at,
                                                             const struct courtwright_host *host,
                                                             courtwright_each_completion each,
                                                             void *ctx);

struct courtwright_hover {
    size_t begin, end; /* what it is about */
    enum courtwright_class kind;
    bool sentence;       /* it is about the whole sentence; else about the word */
    const char *title;   /* "curls off", "space.close"; a sentence in its tidy form */
    const char *text;    /* what it means; what the sentence became: "3 curls around 5 …" */
    const char *example; /* in the play language; may be empty */
};
typedef bool (*courtwright_each_hover)(void *ctx, const struct courtwright_hover *hover);
/* What there is to say about byte `at`: what the word there means (in each of the tables that know
 * it), then the sentence it is in. COURTWRIGHT_NO_SUCH when there is nothing. */
COURTWRIGHT_API enum courtwright_status courtwright_hover(const char *name, const char *text,
                                                          size_t size, size_t at,
                                                          const struct courtwright_host *host,
                                                          courtwright_each_hover each, void *ctx);

/* One thing a sentence waits for. */
struct courtwright_tie {
    size_t begin, end;  /* the sentence it waits for; both 0: a time, a state, all that is above */
    const char *moment; /* of that one: "started", "released", "set", "caught", "used", "arrived" */
    double seconds;     /* so long after it */
    bool written;       /* in the coach's words; else it comes with the verb */
    bool fixed;         /* exactly then; else not before */
};
struct courtwright_drawn {
    size_t play;       /* as in courtwright_play */
    const char *label; /* of the diagram, as in courtwright_diagram: "2a" */
};
struct courtwright_sentence {
    size_t begin, end;
    unsigned line;    /* from 1 */
    const char *tidy; /* "3 curls off 5 to the rim" */
    const char *told; /* as it was understood, in the first diagram; may be empty */
    int tasks;        /* it became in that diagram: 1 for each who acts; 0: see the diagnostics */
    const struct courtwright_tie *ties; /* of the first of them */
    size_t tie_count;
    const struct courtwright_drawn *diagrams; /* an action's sentence is in as many as run it */
    size_t diagram_count;
};
typedef bool (*courtwright_each_sentence)(void *ctx, const struct courtwright_sentence *sentence);
/* Every sentence of the text that could be read, in its order; those of included files are not
 * among them. `name` as for courtwright_load. */
COURTWRIGHT_API enum courtwright_status courtwright_sentences(const char *name, const char *text,
                                                              size_t size,
                                                              const struct courtwright_host *host,
                                                              courtwright_each_sentence each,
                                                              void *ctx);

#ifdef __cplusplus
}
#endif

#endif
