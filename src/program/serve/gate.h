/* SPDX-License-Identifier: MIT */
/* gate: what may come in. Takes what a request says of itself, gives which address it means or why
 * it is turned away. Opens nothing, keeps nothing.
 *
 * A page of some other site can make a browser ask us anything; it cannot know the token, cannot
 * read an answer, and its name stands in Origin. A name that it lets point to 127.0.0.1 (so that
 * the browser takes us for that site) stands in Host. */
#ifndef PROGRAM_SERVE_GATE_H
#define PROGRAM_SERVE_GATE_H

#include "program/serve/serve.h"

enum { GATE_TOKEN = 32 }; /* hexadecimal digits: 128 bits */

struct gate {
    char host[32];   /* "127.0.0.1:40123" */
    char origin[40]; /* "http://127.0.0.1:40123" */
    char token[GATE_TOKEN + 1];
    char ticket[GATE_TOKEN + 1]; /* leads to the page, once; empty: there is none */
};

struct gate_request {
    const char *method, *path; /* "GET", "/4fe2…/file" */
    const char *host;          /* NULL: not said, or not said once */
    const char *origin;        /* NULL: not said */
    const char *from;          /* Sec-Fetch-Site; NULL: not said */
};

struct gate_route {
    const char *path, *method; /* "file", "PUT" */
    const char *allow;         /* every method of this address */
    enum serve_what what;
    bool sends; /* a text: whose page does has to be said */
    bool slow;  /* has a thread of its own */
};

struct gate_verdict {
    const struct gate_route *route; /* NULL: turned away */
    unsigned status;                /* of HTTP, when it is */
    const char *why;                /* for whoever looks on */
    const char *allow;              /* methods, with status 405 */
    bool known;                     /* it had the token */
    bool ticket;                    /* it had the ticket: the token's address may be told to it */
};

/* Chance makes the token. */
void gate_init(struct gate *gate, int port, const unsigned char bytes[GATE_TOKEN / 2]);
/* And a ticket. */
void gate_allow_once(struct gate *gate, const unsigned char bytes[GATE_TOKEN / 2]);
struct gate_verdict gate_judge(const struct gate *gate, const struct gate_request *request);

#endif
