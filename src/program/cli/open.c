/* SPDX-License-Identifier: MIT */
/* open: the page to write in, served to the browser of this machine, with one file; or the same
 * page as a file that works without us. */
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <spawn.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "program/cli/naming.h"
#include "program/cli/say.h"
#include "program/cli/site.h"

/* ---- Ending ---------------------------------------------------------------------------------- */

static int end_pipe[2] = {-1, -1};

static void end(int number)
{
    int error = errno;
    (void)number;
    ssize_t written = write(end_pipe[1], "", 1);
    (void)written; /* it is full: the end was asked for already */
    errno = error;
}

/* Ctrl-C, and what a terminal that is closed sends, end it well; the second time at once. */
static bool wait_for_signals(void)
{
    static const int numbers[] = {SIGINT, SIGTERM, SIGHUP};
    struct sigaction action = {.sa_handler = end, .sa_flags = SA_RESTART | (int)SA_RESETHAND};
    if (pipe2(end_pipe, O_CLOEXEC | O_NONBLOCK) != 0) {
        return false;
    }
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        sigaction(numbers[i], &action, NULL);
    }
    return true;
}

/* ---- The browser ----------------------------------------------------------------------------- */

/* Where there is a screen and somebody at the terminal; or when it is told to. */
enum { BROWSER_YES = 1 }; /* of --browser */

static bool wants_browser(const struct request *request)
{
    bool screen = getenv("DISPLAY") || getenv("WAYLAND_DISPLAY");
    return request->browser == BROWSER_YES ||
           (request->browser == 0 && screen && isatty(STDOUT_FILENO));
}

static void show_in_browser(const struct request *request, const char *address)
{
    extern char **environ;
    char program[] = "xdg-open";
    char *words[] = {program, format_text("%s", address), NULL};
    pid_t child;
    int error = posix_spawnp(&child, program, NULL, NULL, words, environ);
    if (error) {
        say(request->command, "%s cannot be started (%s): open the address in a browser", program,
            strerror(error));
    }
    free(words[1]);
}

/* ---- Serving --------------------------------------------------------------------------------- */

static void tell_terminal(const struct request *request, const struct site *site)
{
    char *locked = desk_locked(&site->desk);
    if (locked) {
        say(request->command, "%s; the page shows it, read only", shown(locked));
    } else if (access(site->desk.path, F_OK) != 0) {
        say(request->command, "%s is not there yet: the first save makes it",
            shown(site->desk.path));
    }
    free(locked);
    if (isatty(STDERR_FILENO)) {
        say(request->command, "Ctrl-C ends it; who has the address can read and write the file");
    }
}

/* Below those that systems give out themselves (ours). */
enum { PORT_FIRST = 30000, PORTS = 2700 };

/* On a port of the file's own where that is free: what a browser keeps, it keeps for a port, and
 * so finds what was typed and not saved the next time the file is opened. */
static struct server *open_server(const struct request *request, const struct site *site,
                                  const struct serve_site *given)
{
    int own = PORT_FIRST + (int)(desk_number(&site->desk) % PORTS);
    struct server *server = serve_open(given, request->port > 0 ? (int)request->port : own);
    return server || request->port > 0 ? server : serve_open(given, 0);
}

static int serve(const struct request *request, struct site *site)
{
    struct serve_site given = {site, site_answer, COURTWRIGHT_TEXT_MOST};
    struct server *server = open_server(request, site, &given);
    if (!server) {
        char *port = request->port > 0 ? format_text("port %d cannot be had", (int)request->port)
                                       : format_text("no port can be had");
        say(request->command, "%s: %s", port, strerror(errno));
        free(port);
        return STATUS_FILE;
    }
    site_page(site, serve_address(server));
    tell_terminal(request, site);
    printf("%s\n", serve_address(server));
    bool good = fflush(stdout) == 0;
    const char *ticket = good && wants_browser(request) ? serve_ticket(server) : NULL;
    if (ticket) {
        show_in_browser(request, ticket);
    }
    if (good && !serve_run(server, end_pipe[0])) {
        say(request->command, "it cannot go on: %s", strerror(errno));
        good = false;
    }
    serve_close(server);
    return good ? STATUS_FINE : STATUS_FILE;
}

static int open_file(const struct request *request)
{
    struct site site = {0};
    int status = STATUS_FILE;
    if (desk_open(&site.desk, request->command, request->words[0])) {
        if (wait_for_signals()) {
            status = serve(request, &site);
        } else {
            say(request->command, "it cannot be ended well, and does not begin: %s",
                strerror(errno));
        }
    }
    site_close(&site);
    return status;
}

static int write_offline(const struct request *request)
{
    /* a slip of the hand must not write the page over a playbook */
    const char *ending = naming_ending(request->offline);
    if (ending && strcmp(ending, "html") != 0 && strcmp(ending, "htm") != 0) {
        return wrong_use(request, "--offline writes a page: its name ends in .html");
    }
    struct output output;
    size_t size;
    const char *page = page_whole(&size);
    if (!output_open(&output, NULL, request->command, request->offline, false)) {
        return STATUS_FILE;
    }
    output.writer.write(&output, page, size);
    return output_close(&output, COURTWRIGHT_OK, request->offline, request->offline);
}

/* Whether all that is wanted is in this program; else it is said what is not. */
static bool is_built(const struct request *request)
{
    if (page_missing()) {
        say(request->command,
            "this program was built without the page to write in (%s); "
            "examples/first-run --page builds both",
            page_missing());
        return false;
    }
    if (!request->offline && serve_missing()) {
        say(request->command,
            "this program was built without a server (%s); --offline PAGE.html "
            "writes the page",
            serve_missing());
        return false;
    }
    return true;
}

static int run(const struct request *request)
{
    if (request->offline && (request->word_count > 0 || request->port > 0 || request->browser)) {
        return wrong_use(request,
                         "--offline writes the page alone: without a file, --port or --browser");
    }
    if (!request->offline && request->word_count == 0) {
        return wrong_use(request, "what is missing: FILE, or --offline PAGE.html");
    }
    if (!request->offline && strcmp(request->words[0], "-") == 0) {
        return wrong_use(request, "standard input cannot be saved to: give a file");
    }
    if (!is_built(request)) {
        return STATUS_FILE;
    }
    return request->offline ? write_offline(request) : open_file(request);
}

static const struct option_row options[] = {
    {"offline", 0, OPTION_TEXT, FIELD(offline), "PAGE",
     "write the page itself as one HTML file, which needs no program and no network", 0, 0},
    {"port", 0, OPTION_NUMBER, FIELD(port), "N",
     "on this port; else on the file's own, or one that is free", 1, 65535},
    {"browser", 0, OPTION_CHOICE, FIELD(browser), "yes|no",
     "open it in the browser; else where there is a screen, and a terminal", 0, 0},
    OPTIONS_END,
};

const struct command command_open = {
    "open",
    "[FILE]",
    "serve the page to write in to this machine's browser, with one file",
    options,
    "  courtwright open book.play\n  courtwright open --offline page.html\n",
    0,
    1,
    run};
