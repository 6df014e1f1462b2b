/* SPDX-License-Identifier: MIT */
/* team_find: whom of the roster somebody means who does not say the whole name. Takes a roster and
 * what was said; whether that will do, and what is told about it, is for the caller to say. */
#include "floor/play/play.h"

/* The next word of a text from *at on; empty: there is none. */
static struct str next_word(struct str text, size_t *at)
{
    while (*at < text.size && text.at[*at] == ' ') {
        (*at)++;
    }
    size_t from = *at;
    while (*at < text.size && text.at[*at] != ' ') {
        (*at)++;
    }
    return (struct str){text.at + from, *at - from};
}

/* "C." is short for Castell. */
static bool is_word(struct str said, struct str word)
{
    bool brief = said.size > 1 && said.at[said.size - 1] == '.' && said.size - 1 <= word.size;
    return str_equal_fold(said, word) ||
           (brief && str_equal_fold((struct str){said.at, said.size - 1},
                                    (struct str){word.at, said.size - 1}));
}

/* Every word that was said is one of the name's, in their order. */
static bool is_part(struct str name, struct str said)
{
    size_t at = 0, in = 0;
    struct str word = next_word(said, &at);
    while (word.size > 0) {
        struct str own = next_word(name, &in);
        if (own.size == 0) {
            return false;
        }
        if (is_word(word, own)) {
            word = next_word(said, &at);
        }
    }
    return said.size > 0;
}

static bool is_name(const struct roster_entry *entry, struct str said)
{
    return str_equal_fold(entry->name, said);
}

static bool is_part_of(const struct roster_entry *entry, struct str said)
{
    return is_part(entry->name, said);
}

static bool is_jersey(const struct roster_entry *entry, struct str said)
{
    return said.size > 1 && said.at[0] == '#' &&
           str_equal(entry->jersey, (struct str){said.at + 1, said.size - 1});
}

bool team_same_player(const struct roster_entry *a, const struct roster_entry *b)
{
    return str_equal_fold(a->name, b->name) &&
           (a->jersey.size == 0 || b->jersey.size == 0 || str_equal(a->jersey, b->jersey));
}

struct team_found team_find(const struct team *team, struct str said)
{
    static bool (*const ways[])(const struct roster_entry *, struct str) = {is_name, is_part_of,
                                                                            is_jersey};
    struct team_found found = {NULL, NULL, false};
    for (size_t w = 0; w < sizeof ways / sizeof *ways && !found.entry; w++) {
        for (size_t i = 0; i < team->roster.count; i++) {
            const struct roster_entry *entry = &team->roster.at[i];
            if (!ways[w](entry, said)) {
                continue;
            }
            if (!found.entry) {
                found.entry = entry;
                found.whole = w == 0;
            } else if (!found.other && !team_same_player(found.entry, entry)) {
                found.other = entry;
            }
        }
    }
    return found;
}
