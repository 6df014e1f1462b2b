/* SPDX-License-Identifier: MIT */
/* gate: see gate.h. */
#include "program/serve/gate.h"

#include <stdio.h>
#include <string.h>

static const struct gate_route routes[] = {
    {"", "GET", "GET", SERVE_PAGE, false, false},
    {"file", "GET", "GET, PUT", SERVE_READ, false, false},
    {"file", "PUT", "GET, PUT", SERVE_SAVE, true, false},
    {"sheet", "POST", "POST", SERVE_SHEET, true, true},
};
enum { ROUTES = sizeof routes / sizeof *routes };

void gate_init(struct gate *gate, int port, const unsigned char bytes[GATE_TOKEN / 2])
{
    snprintf(gate->host, sizeof gate->host, "127.0.0.1:%d", port);
    snprintf(gate->origin, sizeof gate->origin, "http://%s", gate->host);
    for (size_t i = 0; i < GATE_TOKEN / 2; i++) {
        snprintf(gate->token + 2 * i, 3, "%02x", bytes[i]);
    }
}

/* The path behind "/TOKEN/"; NULL: it has another token. How long it takes tells nothing of where
 * the first wrong digit is. */
static const char *behind_token(const struct gate *gate, const char *path)
{
    unsigned differ = 0;
    if (strlen(path) < GATE_TOKEN + 2) {
        return NULL;
    }
    for (size_t i = 0; i < GATE_TOKEN; i++) {
        differ |= (unsigned)(path[1 + i] ^ gate->token[i]);
    }
    differ |= (unsigned)(path[0] ^ '/') | (unsigned)(path[GATE_TOKEN + 1] ^ '/');
    return differ ? NULL : path + GATE_TOKEN + 2;
}

static struct gate_verdict turned_away(unsigned status, const char *why)
{
    return (struct gate_verdict){.status = status, .why = why};
}

/* The row of this address and method; else 404 or 405. */
static struct gate_verdict find(const char *path, const char *method)
{
    struct gate_verdict verdict = turned_away(404, "there is no such address");
    for (size_t i = 0; i < ROUTES; i++) {
        if (strcmp(routes[i].path, path) != 0) {
            continue;
        }
        if (strcmp(routes[i].method, method) == 0) {
            return (struct gate_verdict){.route = &routes[i]};
        }
        verdict = turned_away(405, "this address does not take that");
        verdict.allow = routes[i].allow;
    }
    return verdict;
}

/* Whether the page itself asks, or whoever typed the address. */
static bool from_here(const struct gate *gate, const struct gate_request *request,
                      const struct gate_route *route)
{
    if (request->origin ? strcmp(request->origin, gate->origin) != 0 : route->sends) {
        return false;
    }
    /* the page itself may be come to from anywhere: a terminal in a browser, a mail to oneself */
    return !request->from || route->what == SERVE_PAGE ||
           strcmp(request->from, "same-origin") == 0 || strcmp(request->from, "none") == 0;
}

struct gate_verdict gate_judge(const struct gate *gate, const struct gate_request *request)
{
    if (!request->host || strcmp(request->host, gate->host) != 0) {
        return turned_away(403, "asked under another name than 127.0.0.1 and this port");
    }
    const char *path = behind_token(gate, request->path);
    if (!path) {
        return turned_away(404, "there is no such address");
    }
    struct gate_verdict verdict = find(path, request->method);
    if (verdict.route && !from_here(gate, request, verdict.route)) {
        verdict = turned_away(403, "asked by a page of another site");
    }
    verdict.known = true;
    return verdict;
}
