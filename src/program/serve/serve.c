/* SPDX-License-Identifier: MIT */
/* serve: the socket, who is let through to libmicrohttpd, and the round in which all of it is done.
 */
#include "program/serve/serve.h"

#include <errno.h>
#include <netinet/in.h>
#include <poll.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/eventfd.h>
#include <sys/random.h>
#include <sys/socket.h>
#include <time.h>
#include <unistd.h>

#include "program/serve/visit.h"

/* All ours. A page asks once in two seconds and saves once in one; a wrong token is a mistake or an
 * attack. */
enum {
    KNOWN_BURST = 400,
    KNOWN_A_SECOND = 100,
    STRANGE_BURST = 50,
    STRANGE_A_SECOND = 20,
    HEAD_MOST = 64 * 1024, /* bytes of a request's head, and of a piece of its body */
    IDLE_S = 30,           /* a connection that nothing comes over */
    WAITING_MOST = 4096,   /* that wait at the door, if the system keeps so many */
    ROUND_MOST = 1024,     /* taken up in one round */
    REST_MS = 100          /* when the system has no more file descriptors */
};

const char *serve_missing(void)
{
    return NULL;
}

int64_t serve_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (int64_t)now.tv_sec * 1000 + now.tv_nsec / 1000000;
}

static void seat_taken_or_left(void *cls, struct MHD_Connection *connection, void **socket_context,
                               enum MHD_ConnectionNotificationCode code)
{
    struct server *server = cls;
    if (code == MHD_CONNECTION_NOTIFY_STARTED) {
        int fd = MHD_get_connection_info(connection, MHD_CONNECTION_INFO_CONNECTION_FD)->connect_fd;
        *socket_context = crowd_enter(&server->crowd, fd, serve_now());
    } else {
        crowd_leave(&server->crowd, *socket_context);
    }
}

/* ---- Opening and closing --------------------------------------------------------------------- */

/* The port it got; 0, and errno. */
static int listen_on(struct server *server, int port)
{
    struct sockaddr_in address = {.sin_family = AF_INET,
                                  .sin_port = htons((uint16_t)port),
                                  .sin_addr = {htonl(INADDR_LOOPBACK)}};
    socklen_t size = sizeof address;
    int yes = 1;
    server->listening = socket(AF_INET, SOCK_STREAM | SOCK_NONBLOCK | SOCK_CLOEXEC, 0);
    if (server->listening < 0 ||
        setsockopt(server->listening, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes) != 0 ||
        bind(server->listening, (struct sockaddr *)&address, sizeof address) != 0 ||
        listen(server->listening, WAITING_MOST) != 0 ||
        getsockname(server->listening, (struct sockaddr *)&address, &size) != 0) {
        return 0;
    }
    return ntohs(address.sin_port);
}

static bool start(struct server *server, int port)
{
    unsigned char chance[GATE_TOKEN / 2];
    int got = listen_on(server, port);
    if (!got || getrandom(chance, sizeof chance, 0) != (ssize_t)sizeof chance) {
        return false;
    }
    gate_init(&server->gate, got, chance);
    snprintf(server->address, sizeof server->address, "%s/%s/", server->gate.origin,
             server->gate.token);
    crowd_init(&server->crowd);
    rate_init(&server->known, KNOWN_BURST, KNOWN_A_SECOND, serve_now());
    rate_init(&server->strange, STRANGE_BURST, STRANGE_A_SECOND, serve_now());
    server->wake = eventfd(0, EFD_CLOEXEC | EFD_NONBLOCK);
    if (server->wake < 0) {
        return false;
    }
    errno = ENOMEM; /* libmicrohttpd does not say */
    server->daemon = MHD_start_daemon(
        MHD_USE_EPOLL | MHD_USE_NO_LISTEN_SOCKET | MHD_ALLOW_SUSPEND_RESUME, 0, NULL, NULL,
        visit_goes_on, server, MHD_OPTION_UNESCAPE_CALLBACK, visit_unescape, server,
        MHD_OPTION_NOTIFY_COMPLETED, visit_is_over, server, MHD_OPTION_NOTIFY_CONNECTION,
        seat_taken_or_left, server, MHD_OPTION_CONNECTION_LIMIT, (unsigned)CROWD_MOST + 1,
        MHD_OPTION_CONNECTION_TIMEOUT, (unsigned)IDLE_S, MHD_OPTION_CONNECTION_MEMORY_LIMIT,
        (size_t)HEAD_MOST, MHD_OPTION_STRICT_FOR_CLIENT, 1, MHD_OPTION_SIGPIPE_HANDLED_BY_APP, 1,
        MHD_OPTION_END);
    return server->daemon != NULL;
}

struct server *serve_open(const struct serve_site *site, int port)
{
    struct server *server = calloc(1, sizeof *server);
    if (!server) {
        return NULL;
    }
    server->site = *site;
    server->listening = server->wake = -1;
    if (start(server, port)) {
        return server;
    }
    int error = errno;
    serve_close(server);
    errno = error;
    return NULL;
}

const char *serve_address(const struct server *server)
{
    return server->address;
}

const char *serve_ticket(struct server *server)
{
    unsigned char chance[GATE_TOKEN / 2];
    if (getrandom(chance, sizeof chance, 0) != (ssize_t)sizeof chance) {
        return NULL;
    }
    gate_allow_once(&server->gate, chance);
    snprintf(server->ticket, sizeof server->ticket, "%s/%s", server->gate.origin,
             server->gate.ticket);
    return server->ticket;
}

void serve_close(struct server *server)
{
    if (!server) {
        return;
    }
    if (server->daemon) {
        if (server->slow) {
            visit_slow_done(server);
        }
        MHD_run(server->daemon); /* what is ready is still sent */
        MHD_stop_daemon(server->daemon);
    }
    if (server->wake >= 0) {
        close(server->wake);
    }
    if (server->listening >= 0) {
        close(server->listening);
    }
    free(server);
}

/* ---- The round ------------------------------------------------------------------------------- */

static void show_out(struct crowd_seat *seat)
{
    seat->leaving = true;
    shutdown(seat->fd, SHUT_RDWR); /* libmicrohttpd sees the end, and gives the seat back */
}

static bool make_room(struct server *server)
{
    struct crowd_seat *seat =
        server->crowd.count < CROWD_MOST ? NULL : crowd_yields(&server->crowd, serve_now());
    if (seat) {
        show_out(seat);
        MHD_run(server->daemon);
    }
    return server->crowd.count < CROWD_MOST;
}

/* A newcomer gets a seat, or is shown the door. */
static void seat_or_refuse(struct server *server, int fd)
{
    struct sockaddr_in from = {0};
    socklen_t size = sizeof from;
    if (make_room(server) && getpeername(fd, (struct sockaddr *)&from, &size) == 0) {
        MHD_add_connection(server->daemon, fd, (struct sockaddr *)&from, size); /* or closes it */
        return;
    }
    const struct linger at_once = {1, 0};
    setsockopt(fd, SOL_SOCKET, SO_LINGER, &at_once, sizeof at_once);
    close(fd);
}

/* Everybody who waits at the door; false when the system cannot take one up now. */
static bool open_door(struct server *server)
{
    for (int i = 0; i < ROUND_MOST; i++) {
        int fd = accept4(server->listening, NULL, NULL, SOCK_NONBLOCK | SOCK_CLOEXEC);
        if (fd >= 0) {
            seat_or_refuse(server, fd);
        } else if (errno == EAGAIN || errno == EWOULDBLOCK) {
            return true;
        } else if (errno != ECONNABORTED && errno != EINTR) {
            return false;
        }
    }
    return true;
}

static int least_wait(int a, int b)
{
    return a < 0 ? b : b < 0 ? a : a < b ? a : b;
}

static int wait_for(const struct server *server)
{
    MHD_UNSIGNED_LONG_LONG wanted;
    bool any = MHD_get_timeout(server->daemon, &wanted) == MHD_YES;
    int library = !any ? -1 : wanted > IDLE_S * 1000 ? IDLE_S * 1000 : (int)wanted;
    return least_wait(library, crowd_wait(&server->crowd, serve_now()));
}

static void show_out_late(struct server *server)
{
    struct crowd_seat *seat;
    while ((seat = crowd_late(&server->crowd, serve_now())) != NULL) {
        show_out(seat);
    }
}

bool serve_run(struct server *server, int stop)
{
    enum { STOP, WORK, DONE, DOOR, FDS };
    struct pollfd fds[FDS] = {
        [STOP] = {.fd = stop, .events = POLLIN},
        [WORK] = {.fd = MHD_get_daemon_info(server->daemon, MHD_DAEMON_INFO_EPOLL_FD)->epoll_fd,
                  .events = POLLIN},
        [DONE] = {.fd = server->wake, .events = POLLIN},
        [DOOR] = {.events = POLLIN},
    };
    bool resting = false;
    for (;;) {
        fds[DOOR].fd = resting ? -1 : server->listening;
        if (poll(fds, FDS, least_wait(wait_for(server), resting ? REST_MS : -1)) < 0) {
            if (errno != EINTR) {
                return false;
            }
            continue; /* what is in fds is of the round before */
        }
        if (fds[STOP].revents) {
            return true;
        }
        if (fds[DONE].revents) {
            visit_slow_done(server);
        }
        resting = fds[DOOR].revents && !open_door(server);
        MHD_run(server->daemon);
        show_out_late(server);
    }
}
