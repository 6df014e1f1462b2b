/* SPDX-License-Identifier: MIT */
/* season: practice plans and what was charted, with their names found in the book. Made from the
 * book's words and its plays. Minutes; nothing runs here. */
#ifndef FLOOR_SEASON_SEASON_H
#define FLOOR_SEASON_SEASON_H

#include "floor/play/play.h"

/* One thing that is done for some minutes: an item of a practice, or a station of one. */
struct plan_item {
    double begins, minutes;    /* after the practice's start */
    enum content_kind content; /* CONTENT_COUNT: stations, which stand in `stations` */
    struct str text;           /* the coach's words, or the name of the play; may be empty */
    const struct play *play;   /* of drill and play; NULL: none, or not found (reported) */
    int groups;                /* players in each, 0 not said */
    struct str against;        /* "zone 2-3" as tidy has it; empty: not said */
    bool contact;              /* said, or by rule: somebody defends */
    bool passive;              /* somebody defends, and there is no contact */
    struct str with;           /* who, in the coach's words */
    struct str station;        /* a station's name */
    double change;             /* stations: minutes at each */
    VEC(struct plan_item) stations;
    struct span span;
};
struct practice {
    struct str title, about, lineup;
    int starts;     /* minutes after midnight; -1: not said */
    double booked;  /* minutes: lasts, or from start to end; 0: not said */
    double planned; /* what the items add up to */
    double dry;     /* minutes that may go by without water */
    VEC(struct plan_item) items;
    struct span span, booked_span;
};

struct charted_row {
    int kind;                /* as in row_form */
    const struct play *play; /* never NULL */
    struct str word;         /* a chart line's, or the name of a read; empty for points */
    int made, of;
    struct str by; /* a name of the roster or "3"; empty: not said */
    struct span span;
};
struct charted {
    struct str date, where; /* "2026-12-01"; where may be empty */
    enum occasion occasion;
    VEC(struct charted_row) rows; /* those whose names were found */
    struct span span;
};
/* Of what a row counts: the row of the same day that counts all of it, without a name, and what the
 * rows with players' names are together. */
struct charted_parts {
    const struct charted_row *whole, *part; /* the last of each; or NULL */
    int made, of;
    bool fit; /* they are parts of the whole; else that is of others */
};
struct charted_parts charted_parts(const struct charted *charted, const struct charted_row *row);
/* Days from one fixed day on: how far two of them are apart is true. */
int charted_day(const struct charted *charted);
struct season {
    VEC(struct practice) practices; /* as they stand in the book */
    VEC(struct charted) charted;    /* by date, those of one day as they stand in the book */
};

/* Items with contact that follow each other. */
struct practice_row {
    size_t first, blocks; /* of the practice's items */
    double minutes;       /* of contact in them */
};
/* What a practice adds up to, in minutes. Stations count as one block, and of their time what
 * everybody spends at those with contact. */
struct practice_sums {
    double contact;          /* minutes with contact */
    int blocks;              /* of it: items in a row with contact are as many */
    struct practice_row row; /* the most of them that follow each other */
    double dry;              /* the longest time without water */
    double dry_from;         /* begins so long after the start */
};
struct practice_sums practice_sum(const struct practice *practice);

/* The plays and drills of its items and of their stations, in its order; one may stand twice. */
struct practice_plays {
    const struct play *const *at;
    size_t count;
};
struct practice_plays practice_plays(struct arena *arena, const struct practice *practice);

/* ---- plan_words.c ---- */
const char *plan_count(struct arena *arena, size_t count);    /* "three" */
struct str plan_minutes(struct arena *arena, double minutes); /* "2.5" */
/* "17:30", with a clock of twelve hours "5:30"; `at` minutes after midnight. */
struct str plan_time(struct arena *arena, double at, bool twelve_hours);
struct str plan_before(void); /* what is seen to before anybody plays */
/* The lines of caution of every page of a plan. */
enum { PLAN_CAUTION_LINES = 2 };
struct str plan_caution(int line);
/* The step of a play whose picture stands for it on a plan: where it is read, else where most
 * screens are set, else the first. */
size_t plan_step(const struct play *play);
/* Is this step of the item's play drawn without its defense? There is no contact, and nobody sets a
 * screen in its picture: that stands on a defender. */
bool plan_is_undefended(const struct plan_item *item, size_t step);
/* How a page sets a name among other words: whatever its script, they keep their places. */
typedef struct str plan_name(struct arena *arena, struct str name);
/* "Play: Lantern against zone 2-3"; "Groups of 4, with guards, contact". */
struct str plan_what(struct arena *arena, const struct plan_item *item, plan_name *name);
struct str plan_how(struct arena *arena, const struct plan_item *item, plan_name *name);
/* "In all: fits the time booked. Contact in 38 of 75 min, 3 blocks, none back to back. …" */
struct str plan_sums_told(struct arena *arena, const struct practice *practice);
/* "Look at this again: 60 min without water; three blocks with contact back to back." Empty: no
 * need. */
struct str plan_warned(struct arena *arena, const struct practice *practice);

/* Reports every name that is not in the book, and times that cannot be; goes on. */
struct season *season_resolve(struct arena *arena, const struct book *book,
                              const struct playbook *plays, struct diags *diags);

/* What may be counted of a play: the words of its chart lines, in order, each once. */
void play_chart_words(struct arena *arena, const struct play *play, point_list *out);
/* It has such words, or reads that are counted. */
bool play_is_counted(struct arena *arena, const struct play *play);

#endif
