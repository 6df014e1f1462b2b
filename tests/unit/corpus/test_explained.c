/* SPDX-License-Identifier: MIT */
/* What `explain` shows for what can be wrong with a text or a play: the bad example raises it, the
 * good one raises no error and not this. At least sixty have both. */
#include "corpus.h"

#include <stdio.h>
#include <stdlib.h>

enum { LEAST = 60 };

static bool raises(const struct corpus_read *read, enum diag_code code)
{
    for (size_t i = 0; i < read->diags.all.count; i++) {
        if (read->diags.all.at[i].row == &diag_rows[code]) {
            return true;
        }
    }
    return false;
}

static bool holds(struct arena *arena, enum diag_code code)
{
    struct diag_example example = diag_example(code);
    struct corpus_read bad, good;
    corpus_read(arena, str_of(example.bad), &bad);
    corpus_read(arena, str_of(example.good), &good);
    bool fine = raises(&bad, code) && good.diags.errors == 0 && !raises(&good, code);
    if (!fine) {
        struct str errors = corpus_errors(arena, &bad.diags);
        printf("# bad, %s:\n%s# %.*s\n", raises(&bad, code) ? "raised" : "not raised", example.bad,
               STR_ARG(errors));
        errors = corpus_errors(arena, &good.diags);
        printf("# good:\n%s# %.*s\n", example.good, STR_ARG(errors));
    }
    return fine;
}

int main(void)
{
    size_t count = 0, failed = 0;
    for (size_t i = 0; i < DIAG_COUNT; i++) {
        struct arena arena;
        if (!diag_example((enum diag_code)i).bad) {
            continue;
        }
        arena_init(&arena, NULL, NULL);
        bool fine = holds(&arena, (enum diag_code)i);
        arena_finish(&arena);
        count++;
        failed += !fine;
        printf("%sok %zu - %s is as its examples say\n", fine ? "" : "not ", count,
               diag_rows[i].id);
    }
    bool enough = count >= LEAST;
    failed += !enough;
    printf("%sok %zu - %zu have examples, at least %d\n", enough ? "" : "not ", count + 1, count,
           (int)LEAST);
    printf("1..%zu\n", count + 1);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
