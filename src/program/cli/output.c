/* SPDX-License-Identifier: MIT */
/* output: a file is whole or it is not there; what was read is not written over. */
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "program/cli/files.h"
#include "program/cli/links.h"
#include "program/cli/say.h"

/* The file that is being written beside its place: there is one at a time. Ending the program by a
 * signal must not leave it there. */
static _Atomic(const char *) unfinished;

static void end_early(int number)
{
    const char *path = atomic_load(&unfinished);
    int removed = path ? unlink(path) : 0;
    (void)removed; /* nobody is left to be told */
    raise(number); /* ends the program: it is no longer caught */
}

static const int numbers[] = {SIGINT, SIGTERM, SIGHUP};

void output_tidy_at_signals(void)
{
    /* A file that may not grow is an error of writing like a full disk. */
    signal(SIGXFSZ, SIG_IGN);
    struct sigaction action = {.sa_handler = end_early, .sa_flags = (int)SA_RESETHAND}, before;
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        if (sigaction(numbers[i], NULL, &before) == 0 && before.sa_handler != SIG_IGN) {
            sigaction(numbers[i], &action, NULL);
        }
    }
}

static bool write_bytes(void *ctx, const char *bytes, size_t size)
{
    struct output *output = ctx;
    errno = 0;
    if (fwrite(bytes, 1, size, output->file) == size) {
        return true;
    }
    output->error = errno ? errno : EIO;
    return false;
}

static bool cannot(struct output *output, int error)
{
    bool standard = strcmp(output->path, "-") == 0;
    output->error = error;
    const char *name = output->target ? output->target : output->path;
    const char *slash = standard ? NULL : strrchr(name, '/');
    if (error == ENOENT && slash && slash > name) {
        char *folder = format_text("%.*s", (int)(slash - name), name);
        struct stat facts;
        bool missing = stat(folder, &facts) != 0;
        if (missing) {
            say(output->command, "%s cannot be written: %s; make the folder %s first",
                shown(output->path), strerror(error), shown(folder));
        }
        free(folder);
        if (missing) {
            return false;
        }
    }
    say(output->command, "%s cannot be written: %s",
        standard ? "standard output" : shown(output->path), strerror(error));
    return false;
}

/* As the file that it takes the place of, whatever new files get. Whose it was only root can say.
 */
static void keep_rights(int fd, const struct stat *old)
{
    if (old->st_uid != geteuid() || old->st_gid != getegid()) {
        int kept = fchown(fd, old->st_uid, old->st_gid);
        (void)kept;
    }
    (void)fchmod(fd, old->st_mode & 0777);
}

/* Gives an open file that has no name yet this one, or not. */
static bool give_name(int fd, const char *path)
{
    char *open_as = format_text("/proc/self/fd/%d", fd);
    bool given = linkat(AT_FDCWD, open_as, AT_FDCWD, path, AT_SYMLINK_FOLLOW) == 0;
    int error = errno;
    free(open_as);
    errno = error;
    return given;
}

/* Makes a file that was not there, or names one that is open (`nameless`; -1: none), or not: a
 * signal that comes meanwhile waits until it is known what has to be removed. */
static int open_new(const char *path, mode_t mode, int nameless)
{
    sigset_t ends, before;
    sigemptyset(&ends);
    for (size_t i = 0; i < sizeof numbers / sizeof *numbers; i++) {
        sigaddset(&ends, numbers[i]);
    }
    pthread_sigmask(SIG_BLOCK, &ends, &before);
    int fd = nameless < 0                ? open(path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode)
             : give_name(nameless, path) ? nameless
                                         : -1;
    int error = errno;
    if (fd >= 0) {
        atomic_store(&unfinished, path);
    }
    pthread_sigmask(SIG_SETMASK, &before, NULL);
    errno = error;
    return fd;
}

/* The unfinished file's name, in the folder where it goes, so that moving it is one step; the file,
 * or -1. */
static int name_beside(struct output *output, mode_t mode, int nameless)
{
    int folder = (int)folder_size(output->target);
    for (unsigned attempt = 0; attempt < 100; attempt++) {
        free(output->beside);
        output->beside =
            format_text("%.*s.courtwright-%ld-%u", folder, output->target, (long)getpid(), attempt);
        int fd = open_new(output->beside, mode, nameless);
        if (fd >= 0) {
            return fd;
        }
        if (errno != EEXIST) {
            break;
        }
    }
    int error = errno;
    free(output->beside);
    output->beside = NULL;
    errno = error;
    return -1;
}

/* A file without a name in that folder, which is gone with the program however that ends, or -1
 * where the system has no such thing. */
static int open_nameless(const struct output *output, mode_t mode)
{
    if (access("/proc/self/fd", X_OK) != 0) {
        return -1;
    }
    char *folder = folder_named(output->target);
    int fd = open(folder, O_WRONLY | O_TMPFILE | O_CLOEXEC, mode);
    free(folder);
    return fd;
}

/* A new file; `old`: what it takes the place of, or NULL. */
static bool open_beside(struct output *output, const struct stat *old)
{
    mode_t mode = old ? old->st_mode & 0777 : 0666;
    int fd = open_nameless(output, mode);
    output->nameless = fd >= 0;
    if (fd < 0) {
        fd = name_beside(output, mode, -1);
    }
    if (fd < 0) {
        return cannot(output, errno);
    }
    if (output->precious && old) {
        keep_rights(fd, old);
    }
    output->file = must(fdopen(fd, "wb"));
    return true;
}

static bool open_straight(struct output *output, FILE *file)
{
    output->file = file;
    output->standard = file == stdout;
    return file ? true : cannot(output, errno);
}

/* Into what stands open already, or as >> does: nothing of what is there is lost. */
static bool open_system(struct output *output, const struct led *led)
{
    if (output->precious) {
        say(output->command, "%s is no plain file: it is not written over", shown(output->path));
        return false;
    }
    if (led->open == STDOUT_FILENO) {
        return open_straight(output, stdout);
    }
    int fd = led->open >= 0 ? dup(led->open)
                            : open(led->name, O_WRONLY | O_APPEND | O_CREAT | O_CLOEXEC, 0666);
    FILE *file = fd >= 0 ? fdopen(fd, "wb") : NULL;
    int error = errno;
    if (fd >= 0 && !file) {
        close(fd);
    }
    errno = error;
    return open_straight(output, file);
}

/* A pipe with a name, while somebody reads from it: nobody is waited for. */
static bool open_pipe(struct output *output, const struct stat *facts)
{
    int fd = S_ISFIFO(facts->st_mode) ? open(output->path, O_WRONLY | O_NONBLOCK | O_CLOEXEC) : -1;
    if (fd < 0) {
        output->error = S_ISFIFO(facts->st_mode) ? errno : EINVAL;
        say(output->command, "%s is no plain file%s: nothing is written into it",
            shown(output->path), S_ISFIFO(facts->st_mode) ? ", and nobody reads from it" : "");
        return false;
    }
    (void)fcntl(fd, F_SETFL, O_WRONLY); /* who reads may take his time */
    return open_straight(output, must(fdopen(fd, "wb")));
}

/* `facts`: of what is there; NULL: nothing. */
static bool open_led(struct output *output, const struct led *led, const struct stat *facts)
{
    if (led->system) {
        return open_system(output, led);
    }
    output->target = format_text("%s", led->name);
    if (!facts) {
        return open_beside(output, NULL);
    }
    if (!S_ISREG(facts->st_mode)) {
        return open_pipe(output, facts);
    }
    if (access(output->path, W_OK) != 0) {
        return cannot(output, errno);
    }
    output->linked = output->precious && facts->st_nlink > 1;
    return open_beside(output, facts);
}

static bool open_target(struct output *output, const struct input *input, bool over_input)
{
    struct stat facts;
    if (strcmp(output->path, "-") == 0) {
        return open_straight(output, stdout);
    }
    bool there = stat(output->path, &facts) == 0;
    if (!there && errno != ENOENT) {
        return cannot(output, errno);
    }
    if (there && S_ISDIR(facts.st_mode)) {
        return cannot(output, EISDIR);
    }
    if (there && !over_input && input && input_was_read(input, &facts)) {
        say(output->command, "%s is what was read: give another name with -o", shown(output->path));
        return false;
    }
    struct led led = links_follow(output->path);
    bool good = open_led(output, &led, there ? &facts : NULL);
    free(led.name);
    return good;
}

bool output_open(struct output *output, const struct input *input, const char *command,
                 const char *path, bool over_input)
{
    *output = (struct output){.command = command, .path = format_text("%s", path)};
    output->writer = (struct courtwright_writer){write_bytes, output};
    output->precious = over_input;
    if (open_target(output, input, over_input)) {
        return true;
    }
    output_drop(output);
    return false;
}

/* A new name for a file is on the disk once its folder is. */
static int sync_folder(const char *target)
{
    char *folder = folder_named(target);
    int fd = open(folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    free(folder);
    /* EINVAL: a file system that has no such thing */
    int error = fd < 0 ? errno : fsync(fd) != 0 && errno != EINVAL ? errno : 0;
    if (fd >= 0) {
        close(fd);
    }
    return error;
}

/* Writes into the file itself, whose other names then hold the same; the whole text already stands
 * beside it on the disk. */
static int write_into(const char *target, const char *beside)
{
    FILE *from = fopen(beside, "rb"), *to = fopen(target, "r+b");
    char piece[1 << 14];
    int error = from && to ? 0 : errno;
    for (size_t size; !error && (size = fread(piece, 1, sizeof piece, from)) > 0;) {
        error = fwrite(piece, 1, size, to) == size ? 0 : errno ? errno : EIO;
    }
    bool done = !error && !ferror(from) && fflush(to) == 0 &&
                ftruncate(fileno(to), ftello(to)) == 0 && fsync(fileno(to)) == 0;
    error = error || done ? error : errno ? errno : EIO;
    if (from) {
        fclose(from);
    }
    if (to && fclose(to) != 0 && !error) {
        error = errno;
    }
    return error;
}

/* The finished file takes its place; 0 or what went wrong. */
static int take_place(struct output *output)
{
    atomic_store(&unfinished, NULL); /* it is whole: nothing may be lost now */
    if (!output->linked) {
        if (rename(output->beside, output->target) != 0) {
            return errno;
        }
        free(output->beside);
        output->beside = NULL;
        return output->precious ? sync_folder(output->target) : 0;
    }
    int error = write_into(output->target, output->beside);
    if (error) { /* the file may be half written: what stands beside it is whole */
        say(output->command, "the whole text was kept as %s", shown(output->beside));
        free(output->beside);
        output->beside = NULL;
    }
    return error;
}

bool output_complete(struct output *output)
{
    bool standard = output->file == stdout;
    errno = 0;
    bool good = fflush(output->file) == 0 && !output->error;
    int error = output->error ? output->error : errno;
    bool fresh = output->beside || output->nameless;
    if (good && output->precious && fresh && fsync(fileno(output->file)) != 0) {
        good = false;
        error = errno;
    }
    if (good && output->nameless && name_beside(output, 0, fileno(output->file)) < 0) {
        good = false;
        error = errno;
    }
    if (!standard) {
        errno = 0;
        if (fclose(output->file) != 0 && good) {
            good = false;
            error = errno;
        }
    }
    output->file = NULL;
    output->complete = good;
    if (!good) {
        cannot(output, error);
        output_drop(output);
    }
    return good;
}

bool output_finish(struct output *output)
{
    if (!output->complete && !output_complete(output)) {
        return false;
    }
    int error = output->beside ? take_place(output) : 0;
    if (error) {
        cannot(output, error);
    }
    output_drop(output);
    return !error;
}

void output_drop(struct output *output)
{
    if (output->file && output->file != stdout) {
        fclose(output->file);
    }
    if (output->beside) {
        unlink(output->beside);
        atomic_store(&unfinished, NULL);
    }
    free(output->beside);
    free(output->target);
    free(output->path);
    *output = (struct output){
        .command = output->command, .error = output->error, .standard = output->standard};
}

int output_named(struct output *output, const char *path)
{
    if (!output_finish(output)) {
        return STATUS_FILE;
    }
    if (!output->standard) {
        printf("%s\n", path);
    }
    return STATUS_FINE;
}

int output_close(struct output *output, enum courtwright_status written, const char *of,
                 const char *path)
{
    if (written != COURTWRIGHT_OK && written != COURTWRIGHT_WRITE) {
        say(output->command, "%s: %s", of, courtwright_status_text(written));
        output_drop(output);
        bool text = written == COURTWRIGHT_NOTHING || written == COURTWRIGHT_BROKEN;
        return text ? STATUS_TEXT : written == COURTWRIGHT_PIXELS ? STATUS_USE : STATUS_FILE;
    }
    return output_named(output, path);
}
