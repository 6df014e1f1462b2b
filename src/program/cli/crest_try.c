/* SPDX-License-Identifier: MIT */
/* crest_try: a crest is drawn once in a process of its own, with a limit on its time and its
 * memory: a few hundred bytes of SVG can ask for hours or gigabytes, and no reading of them tells.
 */
#include "program/cli/crest_try.h"

#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include "courtwright/courtwright.h"

#define SECONDS 2           /* of processor; a crest takes a few hundredths (ours) */
#define ROOM (1024UL << 20) /* bytes (ours) */
#define TOLD 500            /* bytes of what is wrong with it */

#if defined(__SANITIZE_ADDRESS__)
#define SANITIZED 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SANITIZED 1
#endif
#endif

/* In the other process: what is wrong goes into the pipe, nothing when it can be drawn. */
static void try_it(int out, const void *bytes, size_t size)
{
    const struct rlimit time = {SECONDS, SECONDS}, none = {0, 0};
    (void)setrlimit(RLIMIT_CPU, &time);
    (void)setrlimit(RLIMIT_CORE, &none);
#ifndef SANITIZED /* they reserve terabytes that nobody uses */
    const struct rlimit room = {ROOM, ROOM};
    (void)setrlimit(RLIMIT_AS, &room);
#endif
    if (!freopen("/dev/null", "w", stderr)) { /* a library's last words are not ours */
        _exit(1);
    }
    const char *trouble = courtwright_crest_trouble(bytes, size);
    size_t left = trouble ? strlen(trouble) : 0;
    _exit(left > 0 && write(out, trouble, left) != (ssize_t)left);
}

static const char *read_trouble(int in, char *told)
{
    size_t count = 0;
    ssize_t got;
    while (count < TOLD && (got = read(in, told + count, TOLD - count)) > 0) {
        count += (size_t)got;
    }
    told[count] = '\0';
    return count > 0 ? told : NULL;
}

const char *crest_try(const void *bytes, size_t size)
{
    static char told[TOLD + 1];
    int ends[2];
    if (pipe(ends) != 0) {
        return courtwright_crest_trouble(bytes, size);
    }
    pid_t child = fork();
    if (child < 0) {
        (void)close(ends[0]);
        (void)close(ends[1]);
        return courtwright_crest_trouble(bytes, size);
    }
    if (child == 0) {
        (void)close(ends[0]);
        try_it(ends[1], bytes, size);
    }
    (void)close(ends[1]);
    const char *trouble = read_trouble(ends[0], told);
    (void)close(ends[0]);
    int status = 0;
    bool ended = waitpid(child, &status, 0) == child && WIFEXITED(status) && !WEXITSTATUS(status);
    return trouble ? trouble
           : ended ? NULL
                   : "takes too long or too much memory to draw; save it as plain shapes, "
                     "without effects and parts made of other parts";
}
