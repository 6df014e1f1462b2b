/* SPDX-License-Identifier: MIT */
/* list: see list.h. */
#include "program/api/list.h"

const char *courtwright_list_name(enum courtwright_list list)
{
    static const char *const names[COURTWRIGHT_LIST_COUNT] = {
        [COURTWRIGHT_CHECKS] = "checks",         [COURTWRIGHT_ERRORS] = "errors",
        [COURTWRIGHT_VERBS] = "verbs",           [COURTWRIGHT_PLACES] = "places",
        [COURTWRIGHT_FORMATIONS] = "formations", [COURTWRIGHT_SETTINGS] = "settings",
        [COURTWRIGHT_COURTS] = "courts",         [COURTWRIGHT_LEVELS] = "levels",
        [COURTWRIGHT_SHEETS] = "sheets",         [COURTWRIGHT_THEMES] = "themes",
        [COURTWRIGHT_WORDS] = "words",           [COURTWRIGHT_ZONES] = "zones",
    };
    return (size_t)list < COURTWRIGHT_LIST_COUNT ? names[list] : NULL;
}

/* Letters and figures only, in lower case: "Five-out" and "five out" are one word. */
static struct str squeeze(struct arena *arena, const char *word)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (; *word; word++) {
        char c = *word >= 'A' && *word <= 'Z' ? (char)(*word - 'A' + 'a') : *word;
        if ((c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '.' ||
            (unsigned char)c >= 0x80) {
            strbuf_char(&out, c);
        }
    }
    return strbuf_str(&out);
}

static bool goes_by(struct lister *lister, const char *name)
{
    return name && *name &&
           str_equal(squeeze(lister->arena, lister->word), squeeze(lister->arena, name));
}

void list_row_named(struct lister *lister, const struct courtwright_entry *entry,
                    const char *const *other)
{
    if (lister->stopped) {
        return;
    }
    bool wanted = !lister->word || goes_by(lister, entry->word);
    for (; !wanted && other && *other; other++) {
        wanted = goes_by(lister, *other);
    }
    if (!wanted) {
        return;
    }
    struct courtwright_entry full = *entry;
    const char **texts[] = {&full.word, &full.what,   &full.why,  &full.good,
                            &full.bad,  &full.source, &full.limit};
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        if (!*texts[i]) {
            *texts[i] = "";
        }
    }
    full.list = lister->list;
    lister->given++;
    lister->stopped = !lister->each(lister->ctx, &full);
}

void list_row(struct lister *lister, const struct courtwright_entry *entry)
{
    list_row_named(lister, entry, NULL);
}

static enum courtwright_status list_one(struct arena *scratch, void *ctx)
{
    struct lister *lister = ctx;
    lister->arena = scratch;
    list_table(lister);
    return COURTWRIGHT_OK;
}

enum courtwright_status courtwright_list(enum courtwright_list list,
                                         const struct courtwright_host *host, courtwright_each each,
                                         void *ctx)
{
    struct lister lister = {.list = list, .each = each, .ctx = ctx};
    struct memory memory = memory_of(host);
    if ((size_t)list >= COURTWRIGHT_LIST_COUNT) {
        return COURTWRIGHT_NO_SUCH;
    }
    return with_scratch(&memory, list_one, &lister);
}

static enum courtwright_status list_all(struct arena *scratch, void *ctx)
{
    struct lister *lister = ctx;
    lister->arena = scratch;
    for (size_t i = 0; i < COURTWRIGHT_LIST_COUNT; i++) {
        lister->list = (enum courtwright_list)i;
        list_table(lister);
    }
    return lister->given ? COURTWRIGHT_OK : COURTWRIGHT_NO_SUCH;
}

enum courtwright_status courtwright_explain(const char *word, const struct courtwright_host *host,
                                            courtwright_each each, void *ctx)
{
    struct lister lister = {.word = word, .each = each, .ctx = ctx};
    struct memory memory = memory_of(host);
    return word ? with_scratch(&memory, list_all, &lister) : COURTWRIGHT_NO_SUCH;
}
