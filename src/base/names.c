/* SPDX-License-Identifier: MIT */
/* names: see names.h. Nothing ever goes through the slots in their order: what comes out does not
 * hang on how names are spread over them. */
#include "base/names.h"

struct name_slot {
    struct str name; /* at NULL: free */
    size_t number;
};

/* FNV-1a over the letters in lower case. */
static size_t hash(struct str name)
{
    uint64_t sum = 14695981039346656037u;
    for (size_t i = 0; i < name.size; i++) {
        unsigned char c = (unsigned char)name.at[i];
        sum = (sum ^ (c >= 'A' && c <= 'Z' ? c + 32u : c)) * 1099511628211u;
    }
    return (size_t)(sum ^ sum >> 32);
}

/* Where the name stands, or the free slot where it would. */
static struct name_slot *slot_of(const struct names *names, struct str name)
{
    size_t at = hash(name) % names->room;
    while (names->slots[at].name.at && !str_equal_fold(names->slots[at].name, name)) {
        at = (at + 1) % names->room;
    }
    return &names->slots[at];
}

size_t names_find(const struct names *names, struct str name)
{
    if (names->room == 0) {
        return NAME_NONE;
    }
    const struct name_slot *slot = slot_of(names, name);
    return slot->name.at ? slot->number : NAME_NONE;
}

static void grow(struct arena *arena, struct names *names)
{
    struct names larger = {.room = names->room ? names->room * 2 : 32, .count = names->count};
    larger.slots = arena_array(arena, struct name_slot, larger.room);
    for (size_t i = 0; i < names->room; i++) {
        if (names->slots[i].name.at) {
            *slot_of(&larger, names->slots[i].name) = names->slots[i];
        }
    }
    *names = larger;
}

void names_add(struct arena *arena, struct names *names, struct str name, size_t number)
{
    if (names->count * 2 >= names->room) {
        grow(arena, names);
    }
    struct name_slot *slot = slot_of(names, name);
    if (!slot->name.at) {
        *slot = (struct name_slot){{name.size ? name.at : "", name.size}, number};
        names->count++;
    }
}
