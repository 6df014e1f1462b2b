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

static void spell(char *out, const unsigned char bytes[GATE_TOKEN / 2])
{
    for (size_t i = 0; i < GATE_TOKEN / 2; i++) {
        snprintf(out + 2 * i, 3, "%02x", bytes[i]);
    }
}

void gate_init(struct gate *gate, int port, const unsigned char bytes[GATE_TOKEN / 2])
{
    snprintf(gate->host, sizeof gate->host, "127.0.0.1:%d", port);
    snprintf(gate->origin, sizeof gate->origin, "http://%s", gate->host);
    spell(gate->token, bytes);
    gate->ticket[0] = '\0';
}

void gate_allow_once(struct gate *gate, const unsigned char bytes[GATE_TOKEN / 2])
{
    spell(gate->ticket, bytes);
}

/* Whether this is the token or ticket behind the first '/'. How long it takes tells nothing of
 * where the first wrong digit is. */
static bool has_digits(const char *path, const char *digits)
{
    unsigned differ = 0;
    if (strlen(path) < GATE_TOKEN + 1 || !*digits) {
        return false;
    }
    for (size_t i = 0; i < GATE_TOKEN; i++) {
        differ |= (unsigned)(path[1 + i] ^ digits[i]);
    }
    return (differ | (unsigned)(path[0] ^ '/')) == 0;
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
    const char *behind = request->path + GATE_TOKEN + 1; /* looked at only where it is so long */
    struct gate_verdict verdict = turned_away(404, "there is no such address");
    if (has_digits(request->path, gate->ticket) && !*behind &&
        strcmp(request->method, "GET") == 0) {
        verdict.ticket = true;
        return verdict;
    }
    if (!has_digits(request->path, gate->token) || *behind != '/') {
        return verdict;
    }
    verdict = find(behind + 1, request->method);
    if (verdict.route && !from_here(gate, request, verdict.route)) {
        verdict = turned_away(403, "asked by a page of another site");
    }
    verdict.known = true;
    return verdict;
}
