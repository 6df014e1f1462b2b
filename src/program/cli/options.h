/* SPDX-License-Identifier: MIT */
/* options: a command line against a table of rows. */
#ifndef PROGRAM_CLI_OPTIONS_H
#define PROGRAM_CLI_OPTIONS_H

#include "program/cli/command.h"

/* Reads argv[2..]; says on standard error what is wrong and gives false. */
bool options_read(const struct command *command, int argc, char **argv, struct request *request);
void options_help(const struct command *command); /* to standard output */

#endif
