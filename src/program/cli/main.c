/* SPDX-License-Identifier: MIT */
/* main: which command is meant, and what holds for all of them. */
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "program/cli/files.h"
#include "program/cli/options.h"
#include "program/cli/say.h"

static const struct command *const commands[] = {
#define COMMAND(name) &command_##name,
#define LATER(name)
#include "program/cli/commands.def"
#undef COMMAND
#undef LATER
};
static const char *const later[] = {
#define COMMAND(name)
#define LATER(name) name,
#include "program/cli/commands.def"
#undef COMMAND
#undef LATER
};
enum { COMMANDS = sizeof commands / sizeof *commands, LATERS = sizeof later / sizeof *later };

static void help(FILE *to)
{
    fputs("courtwright COMMAND [FILE.play | -] [options]\n\n"
          "Basketball plays from text: run on one clock, checked, drawn.\n\nCommands:\n",
          to);
    for (size_t i = 0; i < COMMANDS; i++) {
        char left[40];
        snprintf(left, sizeof left, "%s %s", commands[i]->name, commands[i]->arguments);
        fprintf(to, "  %-22s %s\n", left, commands[i]->what);
    }
    fputs("\n'courtwright COMMAND --help' tells more; '-' is standard input or output.\n"
          "Status: 0 fine; 1 an error in the text; 2 wrong use; 3 a file could not be read or "
          "written.\n\n"
          "Example:\n  courtwright new first.play && courtwright draw first.play\n",
          to);
}

/* A file opened where standard output was closed would be taken for it. */
static void hold_standard_streams(void)
{
    for (int fd = 0; fd <= 2; fd++) {
        if (fcntl(fd, F_GETFD) == -1 && errno == EBADF) {
            /* the wrong way round on purpose: reading or writing it fails as on the closed one */
            if (open("/dev/null", fd == 0 ? O_WRONLY : O_RDONLY) != fd) {
                return;
            }
        }
    }
}

static const struct command *find(const char *name)
{
    for (size_t i = 0; i < COMMANDS; i++) {
        if (strcmp(commands[i]->name, name) == 0) {
            return commands[i];
        }
    }
    return NULL;
}

static int unknown(const char *name)
{
    for (size_t i = 0; i < LATERS; i++) {
        if (strcmp(later[i], name) == 0) {
            say(NULL, "%s is not built yet", name);
            return STATUS_USE;
        }
    }
    say(NULL, "there is no command '%s'", shown(name));
    fputs("Try 'courtwright --help'.\n", stderr);
    return STATUS_USE;
}

static int run(int argc, char **argv)
{
    const char *word = argc > 1 ? argv[1] : "";
    if (strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0 || strcmp(word, "help") == 0) {
        help(stdout);
        return STATUS_FINE;
    }
    if (strcmp(word, "--version") == 0) {
        printf("courtwright %s\n", courtwright_version());
        return STATUS_FINE;
    }
    if (!*word) {
        help(stderr);
        return STATUS_USE;
    }
    const struct command *command = find(word);
    struct request request = {0};
    if (!command) {
        return unknown(word);
    }
    if (!options_read(command, argc, argv, &request)) {
        return STATUS_USE;
    }
    if (request.help) {
        options_help(command);
        return STATUS_FINE;
    }
    return command->run(&request);
}

int main(int argc, char **argv)
{
    hold_standard_streams();
    signal(SIGPIPE, SIG_IGN); /* a reader that went away is a failed write, and said */
    output_tidy_at_signals();
    int status = run(argc, argv);
    errno = 0;
    if ((fflush(stdout) != 0 || ferror(stdout)) && status != STATUS_FILE) {
        say(NULL, "standard output cannot be written%s%s", errno ? ": " : "",
            errno ? strerror(errno) : "");
        return STATUS_FILE;
    }
    /* what there was to say did not arrive, and nowhere is left to say so */
    return ferror(stderr) ? STATUS_FILE : status;
}
