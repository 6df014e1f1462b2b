/* SPDX-License-Identifier: MIT */
/* desk_save: the page's text into the file, over the version it knew; of what two have written
 * nothing is lost: it is kept beside it. */
#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "program/cli/desk_parts.h"

enum { BESIDE_MOST = 1000 }; /* files kept beside one, before it is called trouble (ours) */

/* ---- Writing --------------------------------------------------------------------------------- */

static bool fill(struct output *output, const struct bytes *text)
{
    if (text->size > 0) {
        output->writer.write(output, text->at, text->size);
    }
    return output_complete(output);
}

/* Writes a file that is there already or is a new one, whole and on the disk. */
static bool put(const struct desk *desk, struct desk_saving *saving, const char *path,
                const struct bytes *text)
{
    struct output output;
    bool good = output_open(&output, NULL, desk->command, path, true) && fill(&output, text) &&
                output_finish(&output);
    saving->why = good ? NULL : strerror(output.error);
    return good;
}

/* "plays/kites (from the page).play", with a number where that is taken; to be freed. */
static char *name_beside(const struct desk *desk, const char *from)
{
    const char *dot = strrchr(desk->name, '.');
    int stem = (int)(dot && dot > desk->name ? (size_t)(dot - desk->path) : strlen(desk->path));
    for (int number = 1; number < BESIDE_MOST; number++) {
        char count[16] = "";
        if (number > 1) {
            snprintf(count, sizeof count, " %d", number);
        }
        char *path =
            format_text("%.*s (from the %s%s)%s", stem, desk->path, from, count, desk->path + stem);
        if (access(path, F_OK) != 0) {
            return path;
        }
        free(path);
    }
    return NULL;
}

/* ---- The page's copies ----------------------------------------------------------------------- */

/* One page's copy beside the file is its coach's own from now on. */
static void forget_copy(struct desk *desk, size_t index)
{
    free(desk->copies[index].page);
    free(desk->copies[index].path);
    desk->copies[index] = desk->copies[--desk->copy_count];
}

void desk_forget_copies(struct desk *desk)
{
    while (desk->copy_count > 0) {
        forget_copy(desk, 0);
    }
    free(desk->copies);
    desk->copies = NULL;
}

/* Of this page, else copy_count. */
static size_t find_copy(const struct desk *desk, const char *page)
{
    size_t i = 0;
    while (i < desk->copy_count && strcmp(desk->copies[i].page, page) != 0) {
        i++;
    }
    return i;
}

/* Copies of quarrels with another version of the file stay as they are. */
static void forget_old_quarrels(struct desk *desk, const char *version)
{
    for (size_t i = desk->copy_count; i-- > 0;) {
        if (!desk_same_file(desk->copies[i].quarrel, version)) {
            forget_copy(desk, i);
        }
    }
}

/* Where this page's text goes: one place for each page and quarrel, however often the page tries.
 */
static size_t place_of_copy(struct desk *desk, const char *page, const char *version)
{
    forget_old_quarrels(desk, version);
    size_t found = find_copy(desk, page);
    char *path = found < desk->copy_count ? NULL : name_beside(desk, "page");
    if (path) {
        desk->copies = must(realloc(desk->copies, (found + 1) * sizeof *desk->copies));
        struct desk_copy *copy = &desk->copies[desk->copy_count++];
        *copy = (struct desk_copy){.page = format_text("%s", page), .path = path};
        snprintf(copy->quarrel, sizeof copy->quarrel, "%s", version);
    }
    return found;
}

static void keep_pages_text(struct desk *desk, struct desk_saving *saving, const char *version)
{
    size_t index = place_of_copy(desk, saving->page, version);
    free(saving->kept);
    saving->kept = NULL;
    if (index == desk->copy_count) {
        return; /* there are too many beside it */
    }
    const char *path = desk->copies[index].path;
    if (put(desk, saving, path, &saving->text)) {
        saving->kept = format_text("%s", desk_without_folder(path));
    } else {
        forget_copy(desk, index);
    }
}

/* Whether the file beside it still holds that text. */
static bool is_copy_of(const struct desk *desk, const char *path, const struct bytes *text)
{
    const struct desk copy = {.command = desk->command, .path = path};
    struct desk_look look;
    desk_look_anew(&copy, &look);
    bool same = !look.gone && !look.why && desk_same_text(&look.text, text);
    desk_look_free(&look);
    return same;
}

/* The page's text is in the file, and its quarrel over. Copies of that text say nothing more: also
 * that of the page which this one was before it was loaded anew. */
static void drop_copies(struct desk *desk, const struct desk_saving *saving)
{
    for (size_t i = desk->copy_count; i-- > 0;) {
        bool same = is_copy_of(desk, desk->copies[i].path, &saving->text);
        if (same) {
            unlink(desk->copies[i].path);
        }
        if (same || strcmp(desk->copies[i].page, saving->page) == 0) {
            forget_copy(desk, i);
        }
    }
}

/* ---- Saving ---------------------------------------------------------------------------------- */

static bool keep_disks_text(const struct desk *desk, struct desk_saving *saving,
                            const struct bytes *text)
{
    char *path = name_beside(desk, "folder");
    bool good = path && put(desk, saving, path, text);
    if (good) {
        saving->kept = format_text("%s", desk_without_folder(path));
    } else if (!path) {
        saving->why = "too many files are kept beside it";
    }
    free(path);
    return good;
}

/* Whether the file is still of that version: asked once more when all is written and has only to
 * take its place. */
static bool is_still(const struct desk *desk, const char *version)
{
    struct input input = {0};
    char own[40];
    struct desk_look look = {.gone = access(desk->path, F_OK) != 0 && errno == ENOENT};
    bool read = look.gone || !input_read(&input, desk->path);
    look.text = input.text;
    desk_name_file(own, sizeof own, &look);
    input_free(&input);
    return read && desk_same_file(own, version);
}

static enum desk_saved replace(const struct desk *desk, struct desk_saving *saving)
{
    struct output output;
    enum desk_saved saved = DESK_FAILED;
    if (output_open(&output, NULL, desk->command, desk->path, true) &&
        fill(&output, &saving->text)) {
        if (!is_still(desk, saving->version)) {
            output_drop(&output);
            return DESK_CHANGED;
        }
        saved = output_finish(&output) ? DESK_SAVED : DESK_FAILED;
    }
    saving->why = saved == DESK_FAILED ? strerror(output.error) : NULL;
    return saved;
}

enum desk_saved desk_save(struct desk *desk, struct desk_saving *saving)
{
    const struct desk_look *look = desk_look(desk);
    enum desk_saved saved = DESK_CHANGED;
    bool same = desk_same_text(&look->text, &saving->text) && !look->gone && look->whole;
    if (!look->whole) { /* nobody can tell what would be written over */
        saved = DESK_FAILED;
        saving->why = look->why;
    } else if (same) {
        saved = DESK_SAVED; /* whoever wrote it wrote the same */
    } else if (desk_same_file(look->version, saving->version)) {
        bool keep = saving->mine && look->text.size > 0; /* of nothing there is nothing to keep */
        saved = keep && !keep_disks_text(desk, saving, &look->text) ? DESK_FAILED
                                                                    : replace(desk, saving);
    }
    if (saved == DESK_CHANGED) {
        look = desk_look(desk); /* it may have become so just now */
        keep_pages_text(desk, saving, look->version);
    } else if (saved == DESK_SAVED && (same || saving->mine)) {
        drop_copies(desk, saving);
    }
    return saved;
}
