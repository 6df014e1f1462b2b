/* SPDX-License-Identifier: MIT */
/* site: what the local server gives: the page to write in, the file on the desk, sheets made of it.
 * What page and server have agreed on is told at the head of page/web/edit/store.js. */
#ifndef PROGRAM_CLI_SITE_H
#define PROGRAM_CLI_SITE_H

#include "program/cli/desk.h"
#include "program/serve/serve.h"

struct site {
    struct desk desk;
    char *page; /* as it is served; NULL before site_page */
    size_t page_size;
    char *policy; /* what the page may do, for a header */
};

/* Makes the page for this address out of the one that is in the program. */
void site_page(struct site *site, const char *address);
void site_close(struct site *site);
void site_answer(void *ctx, const struct serve_ask *ask, struct serve_answer *answer);

/* ---- What the parts of it share -------------------------------------------------------------- */

/* {"message": "…"} with a status. */
void answer_trouble(struct serve_answer *answer, unsigned status, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* SERVE_SHEET; in a thread of its own. */
void sheet_answer(const struct desk *desk, const struct serve_ask *ask,
                  struct serve_answer *answer);

/* The page in the program: one file, for both ways. */
const char *page_missing(void); /* why there is none; NULL: there is one */
const char *page_whole(size_t *size);

/* The text that a file begins with which is not there yet. */
extern const char starting_text[];

#endif
