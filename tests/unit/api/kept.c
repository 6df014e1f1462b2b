/* SPDX-License-Identifier: MIT */
/* kept: see kept.h. */
#include "kept.h"

#include <stdlib.h>
#include <string.h>

#include "suite.h"

const char kites[] =
    "playbook \"Kites at home\"\n"
    "team \"Larkspur Kites\"\n"
    "  1 \"Wren Castell\" guard, jersey 12\n"
    "  1 \"Ada Holm\" guard\n"
    "chapter \"Early\"\n"
    "play \"Lantern\"\n"
    "  number 7\n"
    "  start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"
    "  ball 1\n"
    "  defense man\n"
    "  step \"Read the down screen\"\n"
    "    5 down screens for 3\n"
    "    read x3 trails \"Curl\"\n"
    "      3 curls off 5 to the front of the rim\n"
    "      1 passes to 3\n"
    "    read x3 overplays \"Back cut\"\n"
    "      3 back cuts to the rim\n"
    "      1 bounce passes to 3\n"
    "play \"Broken\"\n"
    "  start five-out\n"
    "  ball 1\n"
    "  step\n"
    "    1 pases to 2\n"
    "play \"Leaning\" mirrors \"Broken\"\n";

struct kept kept;
struct courtwright *book;

static bool keep(void *ctx, const char *bytes, size_t size)
{
    struct kept *out = ctx;
    if (size == 0 || out->size + size >= out->most) {
        return false;
    }
    memcpy(out->at + out->size, bytes, size);
    out->size += size;
    out->at[out->size] = '\0';
    return true;
}

const struct courtwright_writer writer = {keep, &kept};

void start_over(void)
{
    kept.size = 0;
    kept.at[0] = '\0';
    kept.most = sizeof kept.at;
}

char *copy(const char *text)
{
    size_t size = strlen(text) + 1;
    return memcpy(malloc(size), text, size);
}

void open_book(void)
{
    start_over();
    book = courtwright_load("kites.play", kites, sizeof kites - 1, NULL);
    ck_assert_ptr_nonnull(book);
}

void close_book(void)
{
    courtwright_free(book);
    book = NULL;
}

struct courtwright *load(const char *name, const char *text)
{
    struct courtwright *loaded = courtwright_load(name, text, strlen(text), NULL);
    ck_assert_ptr_nonnull(loaded);
    return loaded;
}
