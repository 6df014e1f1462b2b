/* SPDX-License-Identifier: MIT */
/* visit: one request from its first line to its answer, as libmicrohttpd hands it over. */
#ifndef PROGRAM_SERVE_VISIT_H
#define PROGRAM_SERVE_VISIT_H

#include <microhttpd.h>
#include <pthread.h>

#include "program/serve/crowd.h"
#include "program/serve/gate.h"
#include "program/serve/rate.h"

struct visit;

struct server {
    struct serve_site site;
    struct gate gate;
    struct crowd crowd;
    struct rate known, strange; /* how often those with the token may ask, and all others */
    struct MHD_Daemon *daemon;
    int listening;
    char address[80], ticket[80]; /* the page's, and the one that leads there once */
    struct visit *slow; /* the one whose answer is being made in a thread of its own; or NULL */
    pthread_t thread;   /* of it */
    int wake;           /* an eventfd, that the thread writes to when it is done */
};

/* The slow answer is there, or is waited for: it is given in the next MHD_run. */
void visit_slow_done(struct server *server);
int64_t serve_now(void); /* ms, of a clock that is never set */

/* The callbacks of libmicrohttpd; cls is the server. */

/* What stands behind a NUL would be lost: a word with one stays as it was sent, and means nothing.
 */
size_t visit_unescape(void *cls, struct MHD_Connection *connection, char *text);
enum MHD_Result visit_goes_on(void *cls, struct MHD_Connection *connection, const char *url,
                              const char *method, const char *version, const char *bytes,
                              size_t *size, void **ctx);
void visit_is_over(void *cls, struct MHD_Connection *connection, void **ctx,
                   enum MHD_RequestTerminationCode code);

#endif
