/* SPDX-License-Identifier: MIT */
/* Every line of a corpus, as one check: what it means, or how it is refused; what tidy prints is
 * the same play and prints itself. Prints TAP, and for a line that failed its number, what was
 * wanted and what was got. Usage: test_corpus FILE... */
#include "corpus.h"

#include <stdio.h>
#include <stdlib.h>

static bool fails(const struct corpus_line *line, const char *what, struct str got)
{
    printf("# line %d [%.*s] %.*s\n#   wanted %s%.*s\n#   %s %.*s\n", line->number,
           STR_ARG(line->family), STR_ARG(line->written), line->refused ? "! " : "",
           STR_ARG(line->wanted), what, STR_ARG(got));
    return false;
}

/* Refused with these words, and with something to type instead. */
static bool refusal_fits(const struct corpus_line *line, const struct corpus_read *read,
                         struct str got, struct str errors)
{
    if (read->diags.errors == 0) {
        return fails(line, "was taken as", got);
    }
    if (!str_holds(errors, line->wanted)) {
        return fails(line, "was refused with", errors);
    }
    for (size_t i = 0; i < read->diags.all.count; i++) {
        const struct diag *diag = &read->diags.all.at[i];
        if (diag->severity == SEVERITY_ERROR && diag->help.size == 0) {
            return fails(line, "has no help:", diag->message);
        }
    }
    return true;
}

/* Printed and read again it is the same play, and prints the same. */
static bool comes_back(struct arena *arena, const struct corpus_line *line,
                       const struct corpus_read *read)
{
    struct corpus_read again;
    corpus_read(arena, read->tidy, &again);
    if (!str_equal(again.tidy, read->tidy)) {
        return fails(line, "tidied twice gives", again.tidy);
    }
    struct str dump = corpus_dump(arena, &again);
    return str_equal(dump, corpus_dump(arena, read)) || fails(line, "comes back as", dump);
}

static bool line_fits(struct arena *arena, const struct corpus_line *line)
{
    struct corpus_read head, read;
    corpus_read(arena, str_format(arena, "%.*s%.*s", STR_ARG(line->head), STR_ARG(line->above)),
                &head);
    corpus_read(arena, corpus_text(arena, line, line->written), &read);
    struct str got = corpus_behind(arena, read.tidy, head.tidy);
    struct str errors = corpus_errors(arena, &read.diags);
    if (line->refused) {
        return refusal_fits(line, &read, got, errors);
    }
    if (read.diags.errors > 0) {
        return fails(line, "was refused with", errors);
    }
    return str_equal(got, line->wanted) ? comes_back(arena, line, &read)
                                        : fails(line, "got   ", got);
}

int main(int argc, char **argv)
{
    size_t count = 0, failed = 0;
    for (int i = 1; i < argc; i++) {
        struct arena lines_arena;
        corpus_lines lines;
        arena_init(&lines_arena, NULL, NULL);
        if (!corpus_open(&lines_arena, argv[i], &lines)) {
            printf("Bail out! %s cannot be read\n", argv[i]);
            return EXIT_FAILURE;
        }
        for (size_t k = 0; k < lines.count; k++) {
            struct arena arena;
            arena_init(&arena, NULL, NULL);
            bool fine = line_fits(&arena, &lines.at[k]);
            arena_finish(&arena);
            failed += !fine;
            count++;
            printf("%sok %zu - line %d\n", fine ? "" : "not ", count, lines.at[k].number);
        }
        arena_finish(&lines_arena);
    }
    printf("1..%zu\n", count);
    printf("# %zu of %zu as meant\n", count - failed, count);
    return count > 0 && failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
