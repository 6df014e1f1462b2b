/* SPDX-License-Identifier: MIT */
/* links: what a name to be written to stands for, links followed. */
#ifndef PROGRAM_CLI_LINKS_H
#define PROGRAM_CLI_LINKS_H

#include <stdbool.h>

struct led {
    char *name;  /* the last name, which is no link, whether it is there or not; to be freed */
    bool system; /* a name of the system's own: written into, never replaced */
    int open;    /* what of this program stands open under that name (1 for /dev/stdout); or -1 */
};

struct led links_follow(const char *path);

#endif
