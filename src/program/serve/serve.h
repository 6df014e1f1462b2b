/* SPDX-License-Identifier: MIT */
/* serve: one site for one person on this machine: http on 127.0.0.1, behind a token that nobody can
 * guess. Takes requests apart, lets in what may come in, and asks the site for each answer. It must
 * not know what the site gives, and never opens a file: of a request's path nothing leaves this
 * room but which of the few addresses below it was. */
#ifndef PROGRAM_SERVE_SERVE_H
#define PROGRAM_SERVE_SERVE_H

#include <stdbool.h>
#include <stddef.h>

/* What is asked for: each is one address below http://127.0.0.1:PORT/TOKEN/ and one method. */
enum serve_what {
    SERVE_PAGE, /* GET  ""       the page to write in */
    SERVE_READ, /* GET  "file"   the text, as JSON */
    SERVE_SAVE, /* PUT  "file"   the text, as it is to stand on the disk */
    SERVE_SHEET /* POST "sheet"  pages made of a text */
};

struct serve_ask {
    enum serve_what what;
    const char *match, *none_match;   /* of If-Match and If-None-Match, as said; NULL: not said */
    const struct serve_value *values; /* behind the '?', in their order */
    size_t value_count;
    const char *body; /* need not end in a NUL */
    size_t body_size;
};
struct serve_value {
    const char *key, *text; /* UTF-8 as far as the browser keeps to it; text may be empty */
};
/* The first of that key; NULL: there is none. */
const char *serve_value(const struct serve_ask *ask, const char *key);

struct serve_answer {
    unsigned status;    /* 200; of HTTP */
    const char *type;   /* "text/html; charset=utf-8"; lasts */
    const char *policy; /* content security policy; lasts; NULL: nothing may be loaded by it */
    char *name;         /* what a browser may call it when it is kept; from malloc; NULL: none */
    char *bytes;        /* from malloc; NULL: `lasting` instead */
    const char *lasting;
    size_t size;
};

/* Who gives the answers. SERVE_SHEET is asked for in a thread of its own, one at a time; all else
 * in the thread of serve_run, and never two at once. */
struct serve_site {
    void *ctx;
    void (*answer)(void *ctx, const struct serve_ask *ask, struct serve_answer *answer);
    size_t body_most; /* bytes that a text may have */
};

struct server;

/* Why there is no server in this program; NULL: there is one. */
const char *serve_missing(void);

/* Takes the port (0: any that is free). NULL, and errno, when it cannot be had. */
struct server *serve_open(const struct serve_site *site, int port);
/* "http://127.0.0.1:40123/4fe2…/"; whoever knows it may read and write the file. */
const char *serve_address(const struct server *server);
/* An address that leads to that one, once: for where others may see it, as in the list of what runs
 * on the machine. It takes the place of the ticket before. NULL, and errno. */
const char *serve_ticket(struct server *server);
/* Answers until `stop` (a file descriptor) can be read from, or false and errno. */
bool serve_run(struct server *server, int stop);
void serve_close(struct server *server); /* NULL is fine */

#endif
