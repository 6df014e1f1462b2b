/* SPDX-License-Identifier: MIT */
/* input: the book's file, and its includes, which stay inside the book's own folder. */
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "program/cli/files.h"
#include "program/cli/jobs.h"
#include "program/cli/links.h"
#include "program/cli/say.h"

void *must(void *block)
{
    if (!block) {
        fputs("courtwright: there was not enough memory\n", stderr);
        exit(STATUS_FILE);
    }
    return block;
}

char *format_args(const char *format, va_list args)
{
    va_list again;
    va_copy(again, args);
    size_t size = (size_t)vsnprintf(NULL, 0, format, args) + 1;
    char *text = must(malloc(size));
    vsnprintf(text, size, format, again);
    va_end(again);
    return text;
}

char *format_text(const char *format, ...)
{
    va_list args;
    va_start(args, format);
    char *text = format_args(format, args);
    va_end(args);
    return text;
}

size_t folder_size(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash ? (size_t)(slash - path) + 1 : 0;
}

char *folder_named(const char *path)
{
    size_t size = folder_size(path);
    return size > 0 ? format_text("%.*s", (int)size, path) : format_text(".");
}

static void remember(struct input *input, const struct stat *facts)
{
    input->read = must(realloc(input->read, (input->read_count + 1) * sizeof *input->read));
    input->read[input->read_count].device = facts->st_dev;
    input->read[input->read_count++].inode = facts->st_ino;
}

/* Reads to the end, but no more than one byte past what a text may hold: that is enough to be told
 * that it is too large. */
static bool read_all(int fd, struct bytes *bytes)
{
    size_t room = 0;
    *bytes = (struct bytes){NULL, 0};
    for (;;) {
        if (bytes->size == room) {
            room = room ? room * 2 : 64 * 1024;
            bytes->at = must(realloc(bytes->at, room));
        }
        size_t most = COURTWRIGHT_TEXT_MOST + 1 - bytes->size;
        ssize_t got = read(fd, bytes->at + bytes->size,
                           room - bytes->size < most ? room - bytes->size : most);
        if (got < 0 && errno == EINTR) {
            continue;
        }
        if (got <= 0) {
            return got == 0;
        }
        bytes->size += (size_t)got;
        if (bytes->size > COURTWRIGHT_TEXT_MOST) {
            return true;
        }
    }
}

/* /dev/stdin, or /dev/fd/63, through which a shell hands over what another program writes. */
static bool stands_open(const char *path)
{
    struct led led = links_follow(path);
    free(led.name);
    return led.open >= 0;
}

/* NULL when it went well, else why not. A pipe with a name is not waited for. */
static const char *read_file(struct input *input, const char *path, bool beside,
                             struct bytes *bytes)
{
    *bytes = (struct bytes){NULL, 0};
    bool standard = strcmp(path, "-") == 0 && !beside;
    bool plain_only = !standard && (beside || !stands_open(path));
    int fd = standard ? dup(STDIN_FILENO)
                      : open(path, O_RDONLY | O_CLOEXEC | (plain_only ? O_NONBLOCK : 0));
    if (fd < 0) {
        return strerror(errno);
    }
    struct stat facts;
    const char *why = NULL;
    if (fstat(fd, &facts) != 0) {
        why = strerror(errno);
    } else if (S_ISDIR(facts.st_mode)) {
        why = "it is a folder";
    } else if (plain_only && !S_ISREG(facts.st_mode)) {
        why = beside ? "it is no plain file" : "it is no plain file; `-` reads what is piped in";
    } else if (!read_all(fd, bytes)) {
        why = strerror(errno);
    } else if (S_ISREG(facts.st_mode)) {
        remember(input, &facts);
    }
    close(fd);
    return why;
}

static bool inside(const char *folder, const char *path)
{
    size_t size = strlen(folder);
    if (strcmp(folder, "/") == 0) {
        return true;
    }
    return strncmp(path, folder, size) == 0 && path[size] == '/';
}

/* `from` is the including file's name as we gave it: prefix and the way inside the folder. The real
 * path of what is meant, to be freed, or NULL. */
static char *real_include(const struct input *input, const char *from, const char *path)
{
    const char *inner = from + strlen(input->prefix);
    char *meant = format_text("%s/%.*s%s", input->folder, (int)folder_size(inner), inner, path);
    char *real = realpath(meant, NULL);
    int why = errno;
    free(meant);
    errno = why;
    return real;
}

enum courtwright_fetched input_fetch(struct input *input, const char *from, const char *path,
                                     char **name, struct bytes *text)
{
    *name = NULL;
    *text = (struct bytes){NULL, 0};
    if (path[0] == '/' || !input->folder) {
        return COURTWRIGHT_OUTSIDE;
    }
    char *real = real_include(input, from, path);
    if (!real) {
        return errno == ENOENT || errno == ENOTDIR || errno == ENAMETOOLONG
                   ? COURTWRIGHT_MISSING
                   : COURTWRIGHT_UNREADABLE;
    }
    enum courtwright_fetched fetched = COURTWRIGHT_OUTSIDE;
    if (inside(input->folder, real)) {
        fetched = read_file(input, real, true, text) ? COURTWRIGHT_UNREADABLE : COURTWRIGHT_FETCHED;
        const char *inner = real + strlen(input->folder);
        *name = format_text("%s%s", input->prefix, *inner == '/' ? inner + 1 : inner);
    }
    free(real);
    return fetched;
}

static enum courtwright_fetched fetch(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include)
{
    struct input *input = ctx;
    char *name;
    struct bytes text;
    enum courtwright_fetched fetched = input_fetch(input, from, path, &name, &text);
    if (fetched == COURTWRIGHT_FETCHED) {
        courtwright_include_text(include, name, text.at, text.size);
    }
    if (input->looked_for) {
        input->looked_for(input->looked_for_ctx, from, path, fetched, name, &text);
    }
    free(name);
    free(text.at);
    return fetched;
}

static void find_folder(struct input *input)
{
    input->prefix = format_text("%.*s", (int)folder_size(input->path), input->path);
    input->folder = realpath(*input->prefix ? input->prefix : ".", NULL);
}

const char *input_read(struct input *input, const char *path)
{
    input->path = path;
    const char *why = read_file(input, path, false, &input->text);
    if (!why) {
        find_folder(input);
    }
    return why;
}

struct courtwright_host input_host(struct input *input)
{
    return (struct courtwright_host){.fetch = fetch,
                                     .fetch_ctx = input,
                                     .side_by_side = jobs_side_by_side,
                                     .side_by_side_ctx = &input->jobs};
}

bool input_was_read(const struct input *input, const struct stat *facts)
{
    for (size_t i = 0; i < input->read_count; i++) {
        if (input->read[i].device == facts->st_dev && input->read[i].inode == facts->st_ino) {
            return true;
        }
    }
    return false;
}

/* Told before anything is written. */
static bool deps_good(const struct input *input, const struct request *request)
{
    struct stat facts;
    bool bad = request->deps && stat(request->deps, &facts) == 0 && input_was_read(input, &facts);
    if (bad) {
        say(request->command, "%s is what was read: give --deps a file of its own",
            shown(request->deps));
    }
    return !bad;
}

static bool load(struct input *input, const struct request *request, int index, bool runs)
{
    *input = (struct input){.jobs = (int)request->jobs};
    const char *why = input_read(input, request->words[index]);
    bool standard = strcmp(input->path, "-") == 0;
    if (why) {
        say(request->command, "%s cannot be read: %s",
            standard ? "standard input" : shown(input->path), why);
        return false;
    }
    struct courtwright_host host = input_host(input);
    const char *name = standard ? "stdin" : input->path, *text = input->text.at;
    size_t size = input->text.size;
    input->book = runs ? courtwright_load(name, text, size, &host)
                       : courtwright_load_at(name, text, size, NULL, 0, &host);
    must(input->book);
    return deps_good(input, request);
}

bool input_load(struct input *input, const struct request *request, int index)
{
    return load(input, request, index, true);
}

bool input_load_words(struct input *input, const struct request *request, int index)
{
    return load(input, request, index, false);
}

bool input_read_beside(struct input *input, const struct request *request, const char *path,
                       struct bytes *bytes)
{
    const char *why = read_file(input, path, true, bytes);
    if (why) {
        say(request->command, "%s cannot be read: %s", shown(path), why);
    }
    input->beside = path;
    return !why && deps_good(input, request);
}

void input_free(struct input *input)
{
    courtwright_free(input->book);
    free(input->text.at);
    free(input->prefix);
    free(input->folder);
    free(input->read);
}
