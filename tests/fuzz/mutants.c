/* SPDX-License-Identifier: MIT */
/* mutants: sentences of a corpus with one word deleted, doubled, exchanged with the next or
 * misspelled: how many are errors, notes, the same play, another play. Those of the last kind are
 * printed, to be looked at: each must be a sentence a coach could mean. Not a test. Usage: mutants
 * FILE... */
#include "corpus.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { WORDS_OF_LINE = 64, CHANGES = 4 };
static const char *const changes[CHANGES] = {"deleted", "doubled", "exchanged", "misspelled"};

struct tally {
    size_t errors, notes, same, other;
};

static size_t split(struct str line, struct str words[WORDS_OF_LINE])
{
    size_t count = 0;
    for (size_t i = 0; i < line.size && count < WORDS_OF_LINE;) {
        size_t end = i;
        while (end < line.size && line.at[end] != ' ') {
            end++;
        }
        if (end > i) {
            words[count++] = (struct str){line.at + i, end - i};
        }
        i = end + 1;
    }
    return count;
}

/* Two letters in the middle change places; a word of less than four is left as it is. */
static void add_misspelled(struct strbuf *out, struct str word)
{
    size_t at = word.size / 2 - 1;
    for (size_t i = 0; i < word.size; i++) {
        size_t from = word.size < 4 ? i : i == at ? at + 1 : i == at + 1 ? at : i;
        strbuf_char(out, word.at[from]);
    }
}

static struct str changed(struct arena *arena, const struct str *words, size_t count, size_t at,
                          int change)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < count; i++) {
        size_t from = change == 2 && i == at ? at + 1 : change == 2 && i == at + 1 ? at : i;
        if (change == 0 && i == at) {
            continue;
        }
        strbuf_text(&out, out.size > 0 ? " " : "");
        if (change == 3 && i == at) {
            add_misspelled(&out, words[i]);
        } else {
            strbuf_add(&out, words[from]);
        }
        if (change == 1 && i == at) {
            strbuf_char(&out, ' ');
            strbuf_add(&out, words[i]);
        }
    }
    return strbuf_str(&out);
}

static void judge(struct arena *arena, const struct corpus_line *line, struct str said, int change,
                  struct tally *tally)
{
    struct corpus_read whole, mutant, head;
    corpus_read(arena, corpus_text(arena, line, line->written), &whole);
    corpus_read(arena, corpus_text(arena, line, said), &mutant);
    if (mutant.diags.errors > 0) {
        tally->errors++;
    } else if (str_equal(whole.tidy, mutant.tidy)) {
        tally->same++;
    } else if (mutant.diags.all.count > whole.diags.all.count) {
        tally->notes++;
    } else {
        tally->other++;
        corpus_read(arena, str_format(arena, "%.*s%.*s", STR_ARG(line->head), STR_ARG(line->above)),
                    &head);
        struct str got = corpus_behind(arena, mutant.tidy, head.tidy);
        printf("%-10s %.*s => %.*s   (%.*s)\n", changes[change], STR_ARG(said), STR_ARG(got),
               STR_ARG(line->wanted));
    }
}

static void mutate(const struct corpus_line *line, struct tally *tally)
{
    struct str words[WORDS_OF_LINE];
    size_t count = split(line->written, words);
    for (size_t at = 0; at < count; at++) {
        for (int change = 0; change < CHANGES; change++) {
            struct arena arena;
            if ((change == 2 && at + 1 == count) || (change == 3 && words[at].size < 4)) {
                continue;
            }
            arena_init(&arena, NULL, NULL);
            judge(&arena, line, changed(&arena, words, count, at, change), change, &tally[change]);
            arena_finish(&arena);
        }
    }
}

int main(int argc, char **argv)
{
    struct tally tally[CHANGES] = {{0}};
    for (int i = 1; i < argc; i++) {
        struct arena arena;
        corpus_lines lines;
        arena_init(&arena, NULL, NULL);
        if (!corpus_open(&arena, argv[i], &lines)) {
            fprintf(stderr, "%s cannot be read\n", argv[i]);
            return EXIT_FAILURE;
        }
        for (size_t k = 0; k < lines.count; k++) {
            if (!lines.at[k].refused) {
                mutate(&lines.at[k], tally);
            }
        }
        arena_finish(&arena);
    }
    for (int i = 0; i < CHANGES; i++) {
        printf("# %-10s %zu errors, %zu notes, %zu the same, %zu another play\n", changes[i],
               tally[i].errors, tally[i].notes, tally[i].same, tally[i].other);
    }
    return EXIT_SUCCESS;
}
