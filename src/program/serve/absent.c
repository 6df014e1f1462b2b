/* SPDX-License-Identifier: MIT */
/* absent: what stands for the server in a program that was built without libmicrohttpd. */
#include <errno.h>

#include "program/serve/serve.h"

const char *serve_missing(void)
{
    return "there was no libmicrohttpd";
}

const char *serve_value(const struct serve_ask *ask, const char *key)
{
    (void)ask, (void)key;
    return NULL;
}

struct server *serve_open(const struct serve_site *site, int port)
{
    (void)site, (void)port;
    errno = ENOSYS;
    return NULL;
}

const char *serve_address(const struct server *server)
{
    (void)server;
    return "";
}

const char *serve_ticket(struct server *server)
{
    (void)server;
    return NULL;
}

bool serve_run(struct server *server, int stop)
{
    (void)server, (void)stop;
    return true;
}

void serve_close(struct server *server)
{
    (void)server;
}
