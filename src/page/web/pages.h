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
    const struct str *ids; /* of the job's plays, then of its practices: letters, digits and
                            * hyphens, each its own */
};
/* One diagram of a play with what is drawn of it. */
struct passage {
    const struct play *play;
    const struct step *step;
    const struct branch *branch; /* or NULL */
    const struct diagram *diagram;
    const struct picture *picture;
    const struct diagram *before; /* which it goes on from; NULL: none */
    struct str play_id;           /* its own is that, a dot and the diagram's label */
    bool on_paper;                /* no sentence is a link, no job put by */
    bool goes_on;                 /* what led up to it stands with another picture of its step */
};

struct str pages_club(const struct web_job *job);  /* "Larkspur Kites", or the book's name */
struct str pages_title(const struct web_job *job); /* of the book, unless that is the club's */
/* contents.c: every play's link, by chapter. */
void contents_put(const struct pages *pages);
/* play.c: the article of one play. */
void play_put(const struct pages *pages, size_t index, const struct run *run);
/* "My number": which player the page is looked at by; with the names of a play's, or NULL. It takes
 * the script. */
void numbers_put(const struct pages *pages, const struct play *play);
/* Points as paragraphs, behind whom they are for; common mistakes likewise, with their name: those
 * are for the coach's sheet alone, as on PDF. */
void points_put(const struct html *html, const struct play *play, const point_list *points);
void mistakes_put(const struct html *html, const struct play *play, const point_list *mistakes);
/* What stands with these plays for care, `page` being what it stands on: "page", "sheet"; and of
 * that only what is their own: for the young, and the coach's lines. */
void caution_put(const struct html *html, const struct play *const *plays, size_t count,
                 const char *page);
void care_put(const struct html *html, const struct play *const *plays, size_t count);
void care_open(const struct html *html); /* the box round such words, with its sign */
void care_close(const struct html *html);
/* plan.c: the article of one practice. */
size_t pages_practices(const struct web_job *job); /* how many there are */
void practice_put(const struct pages *pages, size_t index);
/* "5:30", or from 0:00 where it does not say when it starts. */
struct str plan_clock(const struct html *html, const struct web_job *job,
                      const struct practice *practice, double minutes);
void plan_care(const struct html *html, const struct practice *practice);
void plan_points(const struct html *html, const struct plan_item *item); /* of its play, if any */
struct str plan_isolated(struct arena *arena, struct str name); /* a name among other words */
/* passage.c: one step or read: its heading, its picture, its words, and what moves in it. */
struct passage passage_of(const struct play *play, const struct diagram *diagram);
void passage_put(const struct html *html, struct cast *cast, const struct passage *passage);
void passage_heading(const struct html *html, const struct passage *passage);
void passage_sentences(const struct html *html, const struct passage *passage);
void passage_points(const struct html *html, const struct passage *passage);
/* What this player does, told to her, where there is something to tell. */
void passage_job(const struct html *html, const struct passage *passage, int number);

#endif
