/* SPDX-License-Identifier: MIT */
/* property: plays from seeds, run, and what must hold in all of them. Prints each number measured.
 */
#include <stdio.h>
#include <stdlib.h>

#include "generate.h"
#include "resolved.h"

/* Of the play of a seed: the errors that the rooms before the clock report. */
static size_t refused(struct arena *memory, uint64_t seed)
{
    struct strbuf text;
    struct resolved resolved;
    strbuf_init(&text, memory);
    generate_play(&text, seed);
    resolve_text(memory, &resolved, STR("generated"), strbuf_str(&text));
    for (size_t i = 0; i < resolved.diags.all.count; i++) {
        const struct diag *diag = &resolved.diags.all.at[i];
        if (diag->severity == SEVERITY_ERROR) {
            printf("# seed %llu: %.*s\n", (unsigned long long)seed, STR_ARG(diag->message));
        }
    }
    return resolved.diags.errors;
}

int main(int argc, char **argv)
{
    uint64_t plays = argc > 1 ? strtoull(argv[1], NULL, 10) : 100;
    size_t errors = 0;
    for (uint64_t seed = 1; seed <= plays; seed++) {
        struct arena memory;
        arena_init(&memory, NULL, NULL);
        errors += refused(&memory, seed);
        arena_finish(&memory);
    }
    printf("1..1\n%sok 1 - every generated play is one the program takes\n", errors ? "not " : "");
    return errors ? EXIT_FAILURE : EXIT_SUCCESS;
}
