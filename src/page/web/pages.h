/* SPDX-License-Identifier: MIT */
/* pages: what the files of this room share. Private to web. */
#ifndef PAGE_WEB_PAGES_H
#define PAGE_WEB_PAGES_H

#include "page/web/film.h"
#include "page/web/html.h"
#include "page/web/picture.h"
#include "page/web/web.h"

/* A playbook being written. */
struct pages {
    struct html html;
    const struct web_job *job;
    const struct str *ids; /* of the job's plays: letters, digits and hyphens, each its own */
};
/* One diagram of a play with what is drawn of it. */
struct passage {
    const struct play *play;
    const struct step *step;
    const struct branch *branch; /* or NULL */
    const struct diagram *diagram;
    const struct picture *picture;
    struct str play_id; /* its own is that, a dot and the diagram's label */
    bool on_paper;      /* no sentence is a link, no job put by */
};

struct str pages_club(const struct web_job *job);  /* "Larkspur Kites", or the book's name */
struct str pages_title(const struct web_job *job); /* of the book, unless that is the club's */
/* contents.c: every play's link, by chapter. */
void contents_put(const struct pages *pages);
/* play.c: the article of one play. */
void play_put(const struct pages *pages, size_t index, const struct run *run);
/* Points as paragraphs, behind whom they are for. */
void points_put(const struct html *html, const struct play *play, const point_list *points);
/* What stands with every play for care, `page` being what it stands on: "page", "sheet". */
void caution_put(const struct html *html, const struct play *play, const char *page);
/* passage.c: one step or read: its heading, its picture, its words, and what moves in it. */
struct passage passage_of(const struct play *play, const struct diagram *diagram);
void passage_put(const struct html *html, struct cast *cast, const struct passage *passage);
void passage_heading(const struct html *html, const struct passage *passage);
void passage_sentences(const struct html *html, const struct passage *passage);
/* What this player does, told to her, where there is something to tell. */
void passage_job(const struct html *html, const struct passage *passage, int number);

#endif
