/* SPDX-License-Identifier: MIT */
/* desk: see desk.h. How the file lies there; what is saved is in desk_save.c. */
#include <errno.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "program/cli/desk_parts.h"
#include "program/cli/say.h"

/* ---- Looking --------------------------------------------------------------------------------- */

/* FNV-1a, 64 bits: tells texts apart that were not made to be taken for each other. */
static uint64_t hash_on(uint64_t hash, const void *bytes, size_t size)
{
    const unsigned char *at = bytes;
    for (size_t i = 0; i < size; i++) {
        hash = (hash ^ at[i]) * 0x100000001b3;
    }
    return hash;
}

static const uint64_t hash_start = 0xcbf29ce484222325;

static uint64_t hash_word(uint64_t hash, const char *word)
{
    return hash_on(hash, word, strlen(word) + 1);
}

static const char version_gone[] = "none";

void desk_name_file(char *out, size_t room, const struct desk_look *look)
{
    if (look->gone) {
        snprintf(out, room, "%s", version_gone);
    } else {
        snprintf(out, room, "%016llx%zx",
                 (unsigned long long)hash_on(hash_start, look->text.at, look->text.size),
                 look->text.size);
    }
}

static void name_version(struct desk_look *look)
{
    char own[40];
    uint64_t others = hash_start;
    desk_name_file(own, sizeof own, look);
    for (size_t i = 0; i < look->include_count; i++) {
        const struct desk_include *include = &look->includes[i];
        others = hash_word(others, include->name ? include->name : include->path);
        others = hash_on(others, &include->fetched, sizeof include->fetched);
        others = hash_on(others, &include->text.size, sizeof include->text.size);
        others = hash_on(others, include->text.at, include->text.size);
    }
    snprintf(look->version, sizeof look->version, "%s-%016llx", own, (unsigned long long)others);
}

void desk_version_of(char version[DESK_VERSION], const struct bytes *text,
                     const struct desk_look *look)
{
    char own[40];
    desk_name_file(own, sizeof own, &(struct desk_look){.text = *text});
    snprintf(version, DESK_VERSION, "%s%s", own, strchr(look->version, '-'));
}

bool desk_same_file(const char *version, const char *other)
{
    size_t size = strcspn(version, "-");
    return size == strcspn(other, "-") && strncmp(version, other, size) == 0;
}

bool desk_is_version(const char *version)
{
    enum { HASH = 16 }; /* digits; those of the size follow */
    size_t size = strcspn(version, "-");
    return desk_same_file(version, version_gone) ||
           (size > HASH && strspn(version, "0123456789abcdef") == size);
}

/* How many bytes the letter at `at` has, of `left`; 0: it is none. */
static size_t letter_size(const unsigned char *at, size_t left)
{
    size_t more = at[0] < 0x80 ? 0 : at[0] < 0xC2 ? 9 : at[0] < 0xE0 ? 1 : at[0] < 0xF0 ? 2 : 3;
    if (at[0] == 0 || at[0] > 0xF4 || more >= left) {
        return 0;
    }
    for (size_t i = 1; i <= more; i++) {
        if ((at[i] & 0xC0) != 0x80) {
            return 0;
        }
    }
    bool long_way = (at[0] == 0xE0 && at[1] < 0xA0) || (at[0] == 0xF0 && at[1] < 0x90);
    bool no_letter = (at[0] == 0xED && at[1] > 0x9F) || (at[0] == 0xF4 && at[1] > 0x8F);
    return long_way || no_letter ? 0 : more + 1;
}

bool desk_is_text(const struct bytes *text)
{
    size_t size = 1;
    for (size_t i = 0; i < text->size && size > 0; i += size) {
        size = letter_size((const unsigned char *)text->at + i, text->size - i);
    }
    return size > 0;
}

static struct bytes copy_of(const struct bytes *text)
{
    struct bytes copy = {must(malloc(text->size + 1)), text->size};
    if (text->size > 0) {
        memcpy(copy.at, text->at, text->size);
    }
    return copy;
}

static void keep_include(void *ctx, const char *from, const char *path,
                         enum courtwright_fetched fetched, const char *name,
                         const struct bytes *text)
{
    struct desk_look *look = ctx;
    look->includes =
        must(realloc(look->includes, (look->include_count + 1) * sizeof *look->includes));
    look->includes[look->include_count++] =
        (struct desk_include){format_text("%s", from), format_text("%s", path), fetched,
                              name ? format_text("%s", name) : NULL, copy_of(text)};
}

static bool enough(void *ctx, const struct courtwright_sentence *sentence)
{
    (void)ctx, (void)sentence;
    return false; /* all includes are read before the first sentence is told */
}

bool desk_same_text(const struct bytes *a, const struct bytes *b)
{
    return a->size == b->size && (a->size == 0 || memcmp(a->at, b->at, a->size) == 0);
}

/* Whether every include that `last` looked for is what it was. */
static bool same_includes(struct input *input, const struct desk_look *last)
{
    bool same = true;
    for (size_t i = 0; i < last->include_count && same; i++) {
        const struct desk_include *include = &last->includes[i];
        char *name;
        struct bytes text;
        same = input_fetch(input, include->from, include->path, &name, &text) == include->fetched &&
               desk_same_text(&text, &include->text) && !name == !include->name &&
               (!name || strcmp(name, include->name) == 0);
        free(name);
        free(text.at);
    }
    return same;
}

static void check_text(struct desk_look *look)
{
    look->whole = !look->why && look->text.size <= COURTWRIGHT_TEXT_MOST;
    if (!look->why && !look->whole) {
        look->why = "it is too large";
    } else if (!look->why && !desk_is_text(&look->text)) {
        look->why = "it is no text in UTF-8";
    }
}

/* The text, and through the library's own reading what it includes. True when all of it is as in
 * `last`: then the includes are not in `look`. */
static bool read_through(const struct desk *desk, struct desk_look *look,
                         const struct desk_look *last)
{
    struct input input = {.looked_for = keep_include, .looked_for_ctx = look};
    look->why = input_read(&input, desk->path);
    look->text = input.text;
    input.text = (struct bytes){NULL, 0};
    check_text(look);
    bool same = !look->why && last && last->whole && !last->why && !last->gone &&
                desk_same_text(&look->text, &last->text) && same_includes(&input, last);
    if (!look->why && !same) {
        struct courtwright_host host = input_host(&input);
        courtwright_sentences(desk->path, look->text.at, look->text.size, &host, enough, NULL);
    }
    input_free(&input);
    return same;
}

/* The folder the file is in, links followed; to be freed; NULL, and errno, when there is none. */
static char *folder_of(const char *path)
{
    char *real = realpath(path, NULL);
    char *at = real ? real : format_text("%s", path);
    char *folder = folder_named(at);
    free(at);
    char *found = realpath(folder, NULL);
    free(folder);
    return found;
}

/* NULL: it is there, and a new file could be too. */
static const char *no_folder(const struct desk *desk)
{
    char *folder = folder_of(desk->path);
    free(folder);
    return folder ? NULL : "there is no such folder";
}

static bool look_at(const struct desk *desk, struct desk_look *look, const struct desk_look *last)
{
    struct stat facts;
    *look = (struct desk_look){0};
    if (stat(desk->path, &facts) != 0) {
        look->why = errno == ENOENT || errno == ENOTDIR ? no_folder(desk) : strerror(errno);
        look->whole = look->gone = !look->why;
    } else if (!S_ISREG(facts.st_mode)) {
        look->why = S_ISDIR(facts.st_mode) ? "it is a folder" : "it is no plain file";
    } else if (read_through(desk, look, last)) {
        return true;
    }
    name_version(look);
    return false;
}

void desk_look_anew(const struct desk *desk, struct desk_look *look)
{
    look_at(desk, look, NULL);
}

static void know(struct desk *desk, const struct desk_look *look)
{
    if (look->whole && !look->gone) {
        free(desk->known.at);
        desk->known = copy_of(&look->text);
    }
}

bool desk_is_lost(const struct desk *desk, const struct desk_look *look)
{
    return desk->known.at && (look->gone || no_folder(desk));
}

unsigned desk_number(const struct desk *desk)
{
    char *folder = folder_of(desk->path);
    uint64_t hash = hash_word(hash_word(hash_start, folder ? folder : ""), desk->name);
    free(folder);
    return (unsigned)(hash ^ hash >> 32);
}

const struct desk_look *desk_look(struct desk *desk)
{
    struct desk_look look;
    bool same = look_at(desk, &look, &desk->last);
    desk_look_free(same ? &look : &desk->last);
    if (!same) {
        desk->last = look;
        know(desk, &desk->last);
    }
    return &desk->last;
}

void desk_look_free(struct desk_look *look)
{
    for (size_t i = 0; i < look->include_count; i++) {
        free(look->includes[i].from);
        free(look->includes[i].path);
        free(look->includes[i].name);
        free(look->includes[i].text.at);
    }
    free(look->includes);
    free(look->text.at);
    *look = (struct desk_look){0};
}

/* ---- Opening --------------------------------------------------------------------------------- */

static bool cannot_open(const struct desk *desk, const char *why)
{
    say(desk->command, "%s cannot be opened: %s", shown(desk->path), why);
    return false;
}

static bool has_place(struct desk *desk)
{
    struct stat facts;
    const struct desk_look *look = desk_look(desk);
    if (look->why || !look->gone) {
        return look->why ? cannot_open(desk, look->why) : true;
    }
    if (lstat(desk->path, &facts) == 0) {
        return cannot_open(desk, "it is a link to a file that is not there");
    }
    return *desk->name ? true : cannot_open(desk, "it is a folder");
}

const char *desk_without_folder(const char *path)
{
    return path + folder_size(path);
}

bool desk_open(struct desk *desk, const char *command, const char *path)
{
    *desk = (struct desk){.command = command, .path = path, .name = desk_without_folder(path)};
    return has_place(desk);
}

void desk_close(struct desk *desk)
{
    desk_look_free(&desk->last);
    free(desk->known.at);
    desk->known = (struct bytes){NULL, 0};
    desk_forget_copies(desk);
}

char *desk_locked(const struct desk *desk)
{
    if (access(desk->path, W_OK) != 0 && errno != ENOENT) {
        return format_text("%s cannot be saved: %s", desk->name, strerror(errno));
    }
    char *folder = folder_of(desk->path);
    int error = !folder ? errno : access(folder, W_OK) != 0 ? errno : 0;
    bool gone = !folder && error == ENOENT;
    free(folder);
    if (gone) {
        return format_text("%s is gone, and its folder with it", desk->name);
    }
    return error ? format_text("%s cannot be saved: its folder cannot be written in: %s",
                               desk->name, strerror(error))
                 : NULL;
}
