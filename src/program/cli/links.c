/* SPDX-License-Identifier: MIT */
/* links: see links.h. One link at a time, since one on the way may be the system's own: what
 * /dev/stdout leads to in the end can be a plain file, which must not be replaced all the same. */
#include "program/cli/links.h"

#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "program/cli/files.h"

enum {
    LINKS_MOST = 40,  /* as many as Linux follows */
    NAME_MOST = 4096, /* PATH_MAX of Linux */
    FIGURES_DECIMAL = 10
};

/* What the link says, seen from where one stands; NULL: it is no link. */
static char *next_name(const char *path)
{
    char says[NAME_MOST];
    ssize_t size = readlink(path, says, sizeof says);
    if (size <= 0 || (size_t)size == sizeof says) {
        return NULL;
    }
    size_t folder = says[0] == '/' ? 0 : folder_size(path);
    return format_text("%.*s%.*s", (int)folder, path, (int)size, says);
}

static bool is_within(const char *folder, const char *outer)
{
    size_t size = strlen(outer);
    return strncmp(folder, outer, size) == 0 && (folder[size] == '\0' || folder[size] == '/');
}

/* /dev/shm holds plain files like any folder. */
static bool is_system(const char *folder)
{
    return is_within(folder, "/proc") ||
           (is_within(folder, "/dev") && !is_within(folder, "/dev/shm"));
}

/* 1 for /proc/self/fd/1; -1: it is no such name. */
static int open_under(const char *folder, const char *name)
{
    char *own = format_text("/proc/%ld/fd", (long)getpid()), *end;
    long number = strtol(name, &end, FIGURES_DECIMAL);
    bool good = strcmp(folder, own) == 0 && *name >= '0' && *name <= '9' && *end == '\0' &&
                number <= sysconf(_SC_OPEN_MAX);
    free(own);
    return good ? (int)number : -1;
}

static void look_at(struct led *led)
{
    char *before = folder_named(led->name), *folder = realpath(before, NULL);
    if (folder) {
        led->system = led->system || is_system(folder);
        led->open = open_under(folder, led->name + folder_size(led->name));
    }
    free(folder);
    free(before);
}

struct led links_follow(const char *path)
{
    struct led led = {format_text("%s", path), false, -1};
    for (int links = 0; links <= LINKS_MOST; links++) {
        look_at(&led);
        char *next = led.open < 0 ? next_name(led.name) : NULL;
        if (!next) {
            break;
        }
        free(led.name);
        led.name = next;
    }
    return led;
}
