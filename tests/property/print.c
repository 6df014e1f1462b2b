/* SPDX-License-Identifier: MIT */
/* print: the generated play of a seed, to read, draw or hand to the program:
 *   generated SEED [COUNT] */
#include <stdio.h>
#include <stdlib.h>

#include "generate.h"

int main(int argc, char **argv)
{
    struct arena arena;
    struct strbuf text;
    uint64_t first = argc > 1 ? strtoull(argv[1], NULL, 10) : 1;
    uint64_t count = argc > 2 ? strtoull(argv[2], NULL, 10) : 1;
    arena_init(&arena, NULL, NULL);
    strbuf_init(&text, &arena);
    for (uint64_t seed = first; seed < first + count; seed++) {
        generate_play(&text, seed);
    }
    fwrite(text.at, 1, text.size, stdout);
    arena_finish(&arena);
    return 0;
}
