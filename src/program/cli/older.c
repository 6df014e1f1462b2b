/* SPDX-License-Identifier: MIT */
/* older: see older.h. A sheet of ours is known by what stands in every PDF that we write, one of
 * this book by how its name begins. */
#include "program/cli/older.h"

#include <dirent.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "program/cli/files.h"
#include "program/cli/say.h"

enum { TAIL = 4096, TOLD_MOST = 5 }; /* bytes at the end of a PDF, with its facts; names (ours) */

static const char *base_name(const char *path)
{
    return path + folder_size(path);
}

static bool begins(const char *name, const char *stem, size_t size)
{
    return strncmp(name, stem, size) == 0 && name[size] == '-';
}

/* How much of a name stands before its ending. */
static size_t stem_size(const char *name)
{
    const char *ending = naming_ending(name);
    return ending ? (size_t)(ending - name) - 1 : 0;
}

/* As much of the name as begins the names of this book: that of a sheet from which those of others
 * go on, kites.pdf, kites-coach.pdf. 0: it is of none. */
static size_t book_part(const struct file_names *written, const char *name)
{
    for (size_t i = 0; i < written->count; i++) {
        const char *stem = base_name(written->at[i]);
        size_t size = stem_size(stem);
        bool goes_on = false;
        for (size_t k = 0; k < written->count && size > 0 && !goes_on; k++) {
            goes_on = begins(base_name(written->at[k]), stem, size);
        }
        if (goes_on && begins(name, stem, size)) {
            return size;
        }
    }
    return 0;
}

static bool is_ours(const char *folder, const char *name)
{
    static const char sign[] = "/Creator (courtwright)";
    char tail[TAIL], *path = format_text("%s/%s", folder, name);
    int fd = open(path, O_RDONLY | O_NONBLOCK | O_CLOEXEC);
    struct stat facts;
    ssize_t size = 0;
    if (fd >= 0 && fstat(fd, &facts) == 0 && S_ISREG(facts.st_mode)) {
        size = pread(fd, tail, sizeof tail, facts.st_size > TAIL ? facts.st_size - TAIL : 0);
    }
    if (fd >= 0) {
        close(fd);
    }
    free(path);
    return size > 0 && memmem(tail, (size_t)size, sign, strlen(sign)) != NULL;
}

static bool was_written(const struct file_names *written, const char *name)
{
    for (size_t i = 0; i < written->count; i++) {
        if (strcmp(base_name(written->at[i]), name) == 0) {
            return true;
        }
    }
    return false;
}

/* The sheets of another book, which begins as this one: kites, and kites-two. */
static bool is_anothers(struct dirent *const *entries, int count, const struct file_names *written,
                        const char *name, size_t part)
{
    for (int i = 0; i < count; i++) {
        const char *page = entries[i]->d_name, *ending = naming_ending(page);
        bool longer = stem_size(page) > part && begins(name, page, stem_size(page));
        if (longer && strcmp(ending, "html") == 0 && !was_written(written, page)) {
            return true;
        }
    }
    return false;
}

static bool is_older(struct dirent *const *entries, int count, const struct file_names *written,
                     const char *folder, const char *name)
{
    const char *ending = naming_ending(name);
    size_t part = book_part(written, name);
    return part > 0 && ending && strcmp(ending, "pdf") == 0 && !was_written(written, name) &&
           !is_anothers(entries, count, written, name, part) && is_ours(folder, name);
}

void older_tell(const struct request *request, const struct file_names *written)
{
    struct dirent **entries;
    size_t found = 0;
    char *folder = folder_named(written->count > 0 ? written->at[0] : "");
    char *list = format_text("%s", "");
    int count = scandir(folder, &entries, NULL, alphasort);
    for (int i = 0; i < count; i++) {
        const char *name = entries[i]->d_name;
        if (is_older(entries, count, written, folder, name) && found++ < TOLD_MOST) {
            char *longer = format_text("%s%s%s", list, found > 1 ? ", " : "", shown(name));
            free(list);
            list = longer;
        }
    }
    if (found > 0) {
        say(request->command,
            "%s%s: of an earlier time, and not written any more; take out what nobody needs", list,
            found > TOLD_MOST ? " and more" : "");
    }
    for (int i = 0; i < count; i++) {
        free(entries[i]);
    }
    if (count >= 0) {
        free(entries);
    }
    free(list);
    free(folder);
}
