/* SPDX-License-Identifier: MIT */
/* paper: sheets as HTML for a browser's own printing: pieces to stand in a page that has the style
 * (edit/paper.css). The same words as on the PDF sheets, and the same live pictures; where a page
 * ends is the browser's to say, never inside a step. No cairo. */
#ifndef PAGE_WEB_PAPER_H
#define PAGE_WEB_PAPER_H

#include "judge/check/check.h"
#include "page/web/web.h"

struct html;

struct paper_job {
    struct web_job web;                  /* its plays are those of the sheet */
    const finding_list *const *findings; /* of each of them */
    int reader;                          /* whose sheet it is, 1..5; 0: everybody's */
    struct str title;                    /* of the practice; empty: all of them */
};
struct paper_row {
    const char *word;
    /* False: there is nothing in the book for it, and nothing was written. */
    bool (*write)(const struct html *html, const struct paper_job *job);
};
const struct paper_row *paper_find(struct str word); /* NULL: there is none */

/* paper_plan.c */
bool paper_plans(const struct html *html, const struct paper_job *job);

/* What the files of paper share. */
struct paper_picture {
    const struct diagram *diagram;
    const finding_list *findings; /* NULL: none are shown */
    int reader;
    bool caution, hide_defense, plain, order; /* as the scene's */
    unsigned named;
    double width; /* pt */
};
/* Gives what it needs a key for, see scene_key_uses. */
unsigned paper_picture(const struct html *html, const struct paper_job *job,
                       const struct paper_picture *picture);
/* paper_key.c: `salt` tells it from the other keys of the page. */
void paper_key(const struct html *html, unsigned uses, struct str salt);
const struct run *paper_run(const struct html *html, const struct paper_job *job, size_t index);

#endif
