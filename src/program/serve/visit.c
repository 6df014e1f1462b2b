/* SPDX-License-Identifier: MIT */
/* visit: see visit.h. */
#include "program/serve/visit.h"

#include <assert.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>
#include <sys/eventfd.h>

enum {
    VALUES_MOST = 400, /* behind the '?': the plays of a sheet among them (ours) */
    /* How many times the largest text is read to its end, so that a browser hears that it is too
     * large; of a longer one it hears nothing (ours). */
    HEARD_OUT = 8
};

struct visit {
    struct server *server;
    struct MHD_Connection *connection;
    const struct gate_route *route;
    struct crowd_seat *seat;
    struct serve_ask ask;
    struct serve_value values[VALUES_MOST];
    char *body;
    size_t room, arrived; /* of `body`; in all */
    struct serve_answer answer;
    bool answered;        /* `answer` is there */
    bool too_many_values; /* some of them are not in `values` */
};

const char *serve_value(const struct serve_ask *ask, const char *key)
{
    for (size_t i = 0; i < ask->value_count; i++) {
        if (strcmp(ask->values[i].key, key) == 0) {
            return ask->values[i].text;
        }
    }
    return NULL;
}

/* ---- Answers --------------------------------------------------------------------------------- */

struct header {
    const char *name, *value; /* value NULL: left out */
};
static const struct header always[] = {
    {"Cache-Control", "no-store"},
    {"X-Content-Type-Options", "nosniff"},
    {"Referrer-Policy", "no-referrer"}, /* the address is the key */
    {"X-Frame-Options", "DENY"},
    {"Cross-Origin-Resource-Policy", "same-origin"},
    {"Cross-Origin-Opener-Policy", "same-origin"},
};

/* `more` ends with a row without a name. */
static enum MHD_Result put_answer(struct MHD_Connection *connection,
                                  const struct serve_answer *answer, const struct header *more)
{
    struct MHD_Response *response = MHD_create_response_from_buffer(
        answer->size, answer->bytes ? (void *)answer->bytes : (void *)(size_t)answer->lasting,
        answer->bytes ? MHD_RESPMEM_MUST_FREE : MHD_RESPMEM_PERSISTENT);
    if (!response) {
        free(answer->bytes);
        return MHD_NO;
    }
    for (size_t i = 0; i < sizeof always / sizeof *always; i++) {
        MHD_add_response_header(response, always[i].name, always[i].value);
    }
    MHD_add_response_header(response, "Content-Type", answer->type);
    MHD_add_response_header(response, "Content-Security-Policy",
                            answer->policy ? answer->policy
                                           : "default-src 'none'; frame-ancestors 'none'");
    for (; more->name; more++) {
        if (more->value) {
            MHD_add_response_header(response, more->name, more->value);
        }
    }
    enum MHD_Result result = MHD_queue_response(connection, answer->status, response);
    MHD_destroy_response(response);
    return result;
}

/* A refusal in a few words; a stranger's connection ends with it. */
static enum MHD_Result refuse(struct MHD_Connection *connection, const struct gate_verdict *verdict)
{
    char text[160];
    int size = snprintf(text, sizeof text, "{\"message\":\"%s\"}\n", verdict->why);
    struct serve_answer answer = {.status = verdict->status,
                                  .type = "application/json",
                                  .bytes = strdup(text),
                                  .size = (size_t)size};
    if (!answer.bytes) {
        return MHD_NO;
    }
    const struct header more[] = {{"Allow", verdict->allow},
                                  {"Retry-After", verdict->status == 429 ? "1" : NULL},
                                  {"Connection", verdict->known ? NULL : "close"},
                                  {NULL, NULL}};
    return put_answer(connection, &answer, more);
}

static enum MHD_Result refuse_for(struct visit *visit, unsigned status, const char *why)
{
    return refuse(visit->connection,
                  &(struct gate_verdict){.status = status, .why = why, .known = true});
}

/* inline; filename="…": what would end the quotes, or is no letter, becomes an underscore. */
static void file_name(char *out, size_t room, const char *name)
{
    size_t size = (size_t)snprintf(out, room, "inline; filename=\"");
    for (; *name && size + 2 < room; name++) {
        unsigned char c = (unsigned char)*name;
        out[size++] = c < 0x20 || c > 0x7E || c == '"' || c == '\\' || c == '/' ? '_' : (char)c;
    }
    snprintf(out + size, room - size, "\"");
}

static enum MHD_Result give(struct visit *visit)
{
    char name[160];
    if (visit->answer.name) {
        file_name(name, sizeof name, visit->answer.name);
    }
    const struct header more[] = {{"Content-Disposition", visit->answer.name ? name : NULL},
                                  {NULL, NULL}};
    enum MHD_Result result = put_answer(visit->connection, &visit->answer, more);
    free(visit->answer.name);
    visit->answer = (struct serve_answer){0}; /* its bytes are libmicrohttpd's now */
    return result;
}

/* ---- A thread of its own --------------------------------------------------------------------- */

static void *make_slowly(void *ctx)
{
    struct visit *visit = ctx;
    struct serve_site *site = &visit->server->site;
    site->answer(site->ctx, &visit->ask, &visit->answer);
    eventfd_write(visit->server->wake, 1);
    return NULL;
}

static enum MHD_Result start_slowly(struct visit *visit)
{
    struct server *server = visit->server;
    if (server->slow) {
        return refuse_for(visit, 503, "another sheet is being made: ask again");
    }
    if (pthread_create(&server->thread, NULL, make_slowly, visit) != 0) {
        return refuse_for(visit, 503, "there is no thread to be had: ask again");
    }
    server->slow = visit;
    MHD_suspend_connection(visit->connection);
    return MHD_YES;
}

void visit_slow_done(struct server *server)
{
    eventfd_t times;
    pthread_join(server->thread, NULL);
    eventfd_read(server->wake, &times);
    server->slow->answered = true;
    MHD_resume_connection(server->slow->connection); /* visit_goes_on is called once more */
    server->slow = NULL;
}

/* ---- From the first line to the last --------------------------------------------------------- */

static enum MHD_Result keep_value(void *ctx, enum MHD_ValueKind kind, const char *key,
                                  const char *text)
{
    struct visit *visit = ctx;
    (void)kind;
    if (visit->ask.value_count == VALUES_MOST) {
        visit->too_many_values = true;
        return MHD_NO;
    }
    visit->values[visit->ask.value_count++] = (struct serve_value){key, text ? text : ""};
    return MHD_YES;
}

struct said_once {
    const char *name, *text;
    int times;
};

static enum MHD_Result look_for(void *ctx, enum MHD_ValueKind kind, const char *key,
                                const char *text)
{
    struct said_once *said = ctx;
    (void)kind;
    if (strcasecmp(key, said->name) == 0) {
        said->text = text ? text : "";
        said->times++;
    }
    return MHD_YES;
}

/* What a header says; of two of that name none is believed. */
static const char *header_of(struct MHD_Connection *connection, const char *name)
{
    struct said_once said = {.name = name};
    MHD_get_connection_values(connection, MHD_HEADER_KIND, look_for, &said);
    return said.times > 1 ? "" : said.text;
}

/* To the page, and the ticket is worth nothing any more. */
static enum MHD_Result lead_to_page(struct server *server, struct MHD_Connection *connection)
{
    const struct serve_answer answer = {.status = 303, .type = "text/plain", .lasting = ""};
    const struct header more[] = {{"Location", server->address}, {NULL, NULL}};
    server->gate.ticket[0] = '\0';
    return put_answer(connection, &answer, more);
}

static struct gate_verdict judge(struct server *server, struct MHD_Connection *connection,
                                 const char *url, const char *method)
{
    const struct gate_request request = {
        .method = method,
        .path = url,
        .host = header_of(connection, "Host"),
        .origin = header_of(connection, "Origin"),
        .from = header_of(connection, "Sec-Fetch-Site"),
    };
    struct gate_verdict verdict = gate_judge(&server->gate, &request);
    if (!rate_takes(verdict.known ? &server->known : &server->strange, serve_now())) {
        verdict = (struct gate_verdict){.status = 429,
                                        .why = "too many at once: ask again in a second",
                                        .known = verdict.known};
    }
    return verdict;
}

/* Whether it says that its body is longer than anybody would hear out. */
static bool far_too_long(struct visit *visit)
{
    const char *length = header_of(visit->connection, "Content-Length");
    return length && strtoull(length, NULL, 10) / HEARD_OUT > visit->server->site.body_most;
}

static bool too_long(const struct visit *visit)
{
    return visit->arrived > visit->server->site.body_most;
}

static enum MHD_Result begin(struct server *server, struct MHD_Connection *connection,
                             const struct gate_route *route, void **ctx)
{
    struct visit *visit = calloc(1, sizeof *visit);
    if (!visit) {
        return MHD_NO;
    }
    *ctx = visit;
    visit->server = server;
    visit->connection = connection;
    visit->route = route;
    visit->ask.what = route->what;
    visit->ask.values = visit->values;
    visit->ask.match = header_of(connection, "If-Match");
    visit->ask.none_match = header_of(connection, "If-None-Match");
    MHD_get_connection_values(connection, MHD_GET_ARGUMENT_KIND, keep_value, visit);
    visit->seat =
        MHD_get_connection_info(connection, MHD_CONNECTION_INFO_SOCKET_CONTEXT)->socket_context;
    crowd_knows(visit->seat);
    crowd_begins(visit->seat, serve_now());
    return visit->too_many_values ? refuse_for(visit, 414, "that is asked with too many words")
           : far_too_long(visit)  ? refuse_for(visit, 413, "the text is too large")
                                  : MHD_YES;
}

size_t visit_unescape(void *cls, struct MHD_Connection *connection, char *text)
{
    (void)cls, (void)connection;
    return strstr(text, "%00") ? strlen(text) : MHD_http_unescape(text);
}

/* One more piece of the body. */
static enum MHD_Result take(struct visit *visit, const char *bytes, size_t size)
{
    size_t whole = visit->ask.body_size + size;
    visit->arrived += size;
    if (too_long(visit)) { /* it is heard out, and not kept */
        return visit->arrived / HEARD_OUT > visit->server->site.body_most ? MHD_NO : MHD_YES;
    }
    if (whole > visit->room) {
        size_t room = whole * 2;
        char *more = realloc(visit->body, room);
        if (!more) {
            return MHD_NO;
        }
        visit->body = more;
        visit->room = room;
    }
    memcpy(visit->body + visit->ask.body_size, bytes, size);
    visit->ask.body_size = whole;
    return MHD_YES;
}

enum MHD_Result visit_goes_on(void *cls, struct MHD_Connection *connection, const char *url,
                              const char *method, const char *version, const char *bytes,
                              size_t *size, void **ctx)
{
    struct server *server = cls;
    struct visit *visit = *ctx;
    (void)version;
    if (!visit) {
        struct gate_verdict verdict = judge(server, connection, url, method);
        return verdict.route    ? begin(server, connection, verdict.route, ctx)
               : verdict.ticket ? lead_to_page(server, connection)
                                : refuse(connection, &verdict);
    }
    if (*size > 0) {
        size_t piece = *size;
        *size = 0;
        return take(visit, bytes, piece);
    }
    crowd_ends(visit->seat);
    if (too_long(visit)) {
        return refuse_for(visit, 413, "the text is too large");
    }
    visit->ask.body = visit->body;
    if (visit->route->slow && !visit->answered) {
        return start_slowly(visit);
    }
    if (!visit->answered) {
        server->site.answer(server->site.ctx, &visit->ask, &visit->answer);
    }
    return give(visit);
}

void visit_is_over(void *cls, struct MHD_Connection *connection, void **ctx,
                   enum MHD_RequestTerminationCode code)
{
    struct server *server = cls;
    struct visit *visit = *ctx;
    (void)connection, (void)code, (void)server;
    if (!visit) {
        return;
    }
    assert(server->slow != visit); /* it is asleep as long as it is */
    crowd_ends(visit->seat);
    free(visit->answer.name);
    free(visit->answer.bytes);
    free(visit->body);
    free(visit);
    *ctx = NULL;
}
