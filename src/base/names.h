/* SPDX-License-Identifier: MIT */
/* names: which of many texts is called so, whatever its capitals, without looking through them all.
 */
#ifndef BASE_NAMES_H
#define BASE_NAMES_H

#include <stdint.h>

#include "base/arena.h"
#include "base/str.h"

/* Numbers go by the order of adding; a name added twice keeps its first number. All zero: empty. */
struct names {
    struct name_slot *slots; /* open addressing, at most half full; NULL before the first name */
    size_t room, count;
};
#define NAME_NONE SIZE_MAX

/* The number given to this name, or NAME_NONE. */
size_t names_find(const struct names *names, struct str name);
/* `number` is what names_find gives from now on. The name itself is kept by reference. */
void names_add(struct arena *arena, struct names *names, struct str name, size_t number);

#endif
