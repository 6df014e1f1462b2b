/* SPDX-License-Identifier: MIT */
/* site: a program that serves a text in memory, to try the server on: no page, no file, no book.
 * Prints the address and a ticket, then "over" when standard input ends. A sheet that is asked for
 * without a value takes two seconds; that it is begun stands on standard error. Usage: site
 */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "program/serve/serve.h"

static char text[1 << 20];
static size_t size;

/* Every value and the body, as they came in. */
static void echo(const struct serve_ask *ask, struct serve_answer *answer)
{
    size_t room = 4096 + ask->body_size, at = 0;
    answer->bytes = malloc(room);
    for (size_t i = 0; i < ask->value_count && at + 1 < room; i++) {
        at += (size_t)snprintf(answer->bytes + at, room - at, "%s=%s\n", ask->values[i].key,
                               ask->values[i].text);
    }
    if (ask->body_size > 0 && at + ask->body_size < room) {
        memcpy(answer->bytes + at, ask->body, ask->body_size);
        at += ask->body_size;
    }
    answer->size = at < room ? at : room - 1;
}

static void answer(void *ctx, const struct serve_ask *ask, struct serve_answer *out)
{
    (void)ctx;
    *out = (struct serve_answer){.status = 200, .type = "text/plain", .lasting = "", .size = 0};
    switch (ask->what) {
    case SERVE_PAGE:
        out->type = "text/html; charset=utf-8";
        out->policy = "default-src 'self'";
        out->lasting = "<!DOCTYPE html><title>kites</title>";
        out->size = strlen(out->lasting);
        return;
    case SERVE_READ:
        out->lasting = text;
        out->size = size;
        return;
    case SERVE_SAVE:
        if (ask->body_size > 0) {
            memcpy(text, ask->body, ask->body_size);
        }
        size = ask->body_size;
        out->bytes = strdup(ask->match ? ask->match : "");
        out->size = strlen(out->bytes);
        return;
    case SERVE_SHEET:
        if (ask->value_count == 0) {
            fputs("begun\n", stderr);
            sleep(2);
        }
        out->name = strdup("Kites \"two\".pdf");
        echo(ask, out);
        return;
    }
}

int main(void)
{
    struct serve_site site = {.answer = answer, .body_most = sizeof text};
    struct server *server = serve_open(&site, 0);
    if (!server) {
        perror("site");
        return 1;
    }
    printf("%s\n%s\n", serve_address(server), serve_ticket(server));
    fflush(stdout);
    bool good = serve_run(server, STDIN_FILENO);
    serve_close(server);
    puts("over");
    return good ? 0 : 1;
}
