/* SPDX-License-Identifier: MIT */
/* head: what stands at the head and foot of a page, shortened to its place; and in full what had to
 * be shortened, for the body: nothing is cut off. Private to sheet. */
#ifndef PAGE_SHEET_HEAD_H
#define PAGE_SHEET_HEAD_H

#include "page/sheet/bands.h"

#define HEAD_SIDE 200.0      /* how wide the words at either end of head and foot may be */
#define HEAD_DATE_WIDE 196.0 /* and the date between them */

enum head_part {
    HEAD_CLUB,
    HEAD_SHEET,
    HEAD_SERIES,
    HEAD_TITLE,
    HEAD_CLOCK,
    HEAD_ABOUT,
    HEAD_DATE,
    HEAD_PARTS
};
struct head {
    struct str whole[HEAD_PARTS];
    const struct text_block *shown[HEAD_PARTS]; /* no lines: nothing */
    bool shortened[HEAD_PARTS];
};

/* What a sheet says of itself at the head and foot of its pages; what is empty is left out. */
struct head_words {
    struct str sheet;  /* "Players' sheet, under 16 girls" */
    struct str series; /* beside the title: "Flex, number 7", "5:30 to 6:45 PM" */
    struct str title, clock, about;
    struct str foot; /* "Lantern, Motion 2" */
};
/* Of a play; `sheet` as it is. */
struct head_words head_of_play(struct arena *arena, const struct play *play, struct str sheet);
/* The job with a play's call at its head, which may spare the page where it would stand alone. */
const struct sheet_job *job_with_call(const struct setter *setter);
/* Puts what is called into its head, for a job that has the call there. */
void head_call(const struct setter *setter, struct head_words *head, const struct play *play);
/* "Players' sheet, under 16 girls", or whose. */
struct str head_players_sheet(const struct setter *setter, const struct play *play);
/* "Player's sheet for 3, Wren Castell", of a job with a reader: by name as asked; by number,
 * and with names, whoever has that spot in the play. */
struct str head_player(const struct setter *setter, const struct play *play);

/* Who plays where, for names in a play; NULL: none are to be shown, or it is a drill, where roles
 * go round. On the page of a player asked for by name her spot is hers. */
const struct team *head_names(const struct sheet_job *job, const struct play *play);

/* A further page has a title of one line and no about line. */
struct head head_make(const struct setter *setter, const struct head_words *words, bool first);
/* All that a first page shortens, in full; NULL when that is nothing. */
struct galley *head_surplus(const struct setter *setter, const struct head_words *words);
/* "Larkspur Kites" or the book's name. */
struct str head_club(const struct sheet_job *job);

#endif
