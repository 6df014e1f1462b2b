/* SPDX-License-Identifier: MIT */
/* files: blocks for the page, and the files that a book may include: those the page was given. */
#include <stdlib.h>
#include <string.h>

#include "program/wasm/page.h"

enum { FILES_MOST = 200 };

static struct file {
    char *name, *text;
    size_t size;
} files[FILES_MOST];
static size_t count;

void *page_take(size_t size)
{
    return malloc(size);
}

void page_give(void *block)
{
    free(block);
}

void page_forget_files(void)
{
    while (count > 0) {
        count--;
        free(files[count].name);
        free(files[count].text);
    }
}

void page_add_file(char *name, size_t name_size, char *text, size_t size)
{
    char *kept = count < FILES_MOST ? malloc(name_size + 1) : NULL;
    if (!kept) {
        free(name);
        free(text);
        return;
    }
    memcpy(kept, name, name_size);
    kept[name_size] = '\0';
    free(name);
    files[count++] = (struct file){kept, text, size};
}

/* A path is looked up by its last part too: the page has files, no folders. */
static const char *last_part(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash ? slash + 1 : path;
}

static enum courtwright_fetched fetch(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include)
{
    (void)ctx, (void)from;
    for (int loose = 0; loose < 2; loose++) {
        for (size_t i = 0; i < count; i++) {
            const struct file *file = &files[i];
            const char *wanted = loose ? last_part(path) : path;
            const char *name = loose ? last_part(file->name) : file->name;
            if (strcmp(name, wanted) == 0) {
                courtwright_include_text(include, file->name, file->text, file->size);
                return COURTWRIGHT_FETCHED;
            }
        }
    }
    return COURTWRIGHT_MISSING;
}

const struct courtwright_host *page_host(void)
{
    static const struct courtwright_host host = {.fetch = fetch};
    return &host;
}
