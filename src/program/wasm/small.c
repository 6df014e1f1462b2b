/* SPDX-License-Identifier: MIT */
/* small: qsort and strstr in the place of the C library's, which are made for long lists and texts:
 * here a few hundred findings are put in order, and words looked for in a sentence. Equal ones stay
 * in their order. Without memory for one of them it traps, as the page's own bytes do. */
#include <stdlib.h>
#include <string.h>

/* Behind all of the first `count` that are not to stand behind it. */
static size_t place_of(const unsigned char *first, size_t count, size_t size,
                       const unsigned char *one, int (*compare)(const void *, const void *))
{
    size_t low = 0, high = count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (compare(first + middle * size, one) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

void qsort(void *base, size_t count, size_t size, int (*compare)(const void *, const void *))
{
    unsigned char *first = base, *kept = malloc(size);
    if (!kept) {
        __builtin_trap();
    }
    for (size_t i = 1; i < count; i++) {
        unsigned char *one = first + i * size;
        unsigned char *to = first + place_of(first, i, size, one, compare) * size;
        if (to < one) {
            __builtin_memcpy(kept, one, size);
            __builtin_memmove(to + size, to, (size_t)(one - to));
            __builtin_memcpy(to, kept, size);
        }
    }
    free(kept);
}

char *strstr(const char *text, const char *wanted)
{
    size_t size = strlen(wanted);
    for (; *text; text++) {
        if (strncmp(text, wanted, size) == 0) {
            return (char *)text;
        }
    }
    return size == 0 ? (char *)text : NULL;
}
