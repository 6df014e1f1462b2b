/* SPDX-License-Identifier: MIT */
/* words: how fast a book is read, as a ratio to only looking at its bytes, and how much memory each
 * of its bytes takes. The files named are read one behind the other, again and again, as one book
 * of about a megabyte. Nothing here passes or fails. Usage: words FILE... */
#include "floor/play/play.h"
#include "language/tidy/tidy.h"
#include "spent.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { BOOK_BYTES = 1 << 20, ROUNDS = 5 };

static struct str read_files(struct arena *arena, int count, char **paths)
{
    struct strbuf all;
    strbuf_init(&all, arena);
    for (int i = 0; i < count; i++) {
        FILE *file = fopen(paths[i], "rb");
        char piece[4096];
        if (!file) {
            fprintf(stderr, "%s cannot be read\n", paths[i]);
            exit(EXIT_FAILURE);
        }
        for (size_t size; (size = fread(piece, 1, sizeof piece, file)) > 0;) {
            strbuf_add(&all, (struct str){piece, size});
        }
        fclose(file);
        strbuf_char(&all, '\n');
    }
    return strbuf_str(&all);
}

/* The text again and again, each time with its plays under other names. */
static struct str as_book(struct arena *arena, struct str text)
{
    struct strbuf book;
    strbuf_init(&book, arena);
    for (int copy = 0; book.size < BOOK_BYTES; copy++) {
        for (size_t i = 0; i < text.size; i++) {
            bool heading = i == 0 || text.at[i - 1] == '\n';
            strbuf_char(&book, text.at[i]);
            if (heading && i + 6 < text.size && memcmp(text.at + i, "play \"", 6) == 0) {
                strbuf_print(&book, "lay \"%d ", copy);
                i += 5;
            }
        }
    }
    return strbuf_str(&book);
}

static unsigned look(struct str text)
{
    unsigned sum = 0;
    for (size_t i = 0; i < text.size; i++) {
        sum = sum * 31 + (unsigned char)text.at[i];
    }
    return sum;
}

int main(int argc, char **argv)
{
    struct arena kept;
    arena_init(&kept, NULL, NULL);
    struct str text = as_book(&kept, read_files(&kept, argc - 1, argv + 1));
    double least_look = 1e9, least_read = 1e9, least_lines = 1e9;
    size_t taken = 0, taken_lines = 0, errors = 0;
    unsigned sum = 0;
    for (int i = 0; i < ROUNDS; i++) {
        struct arena arena;
        struct sources sources;
        struct diags diags;
        struct lines lines = {0};
        double t0 = now();
        sum += look(text);
        double t1 = now();
        arena_init(&arena, NULL, NULL);
        sources_init(&sources, &arena);
        diags_init(&diags, &arena);
        lines_read(&arena, &sources, sources_add(&sources, STR("a.play"), text), &diags, &lines);
        double t2 = now();
        taken_lines = arena.taken;
        arena_finish(&arena);
        arena_init(&arena, NULL, NULL);
        sources_init(&sources, &arena);
        diags_init(&diags, &arena);
        double t3 = now();
        book_read(&arena, &sources, sources_add(&sources, STR("a.play"), text), NULL, &diags);
        double t4 = now();
        taken = arena.taken;
        errors = diags.errors;
        arena_finish(&arena);
        least_look = t1 - t0 < least_look ? t1 - t0 : least_look;
        least_lines = t2 - t1 < least_lines ? t2 - t1 : least_lines;
        least_read = t4 - t3 < least_read ? t4 - t3 : least_read;
    }
    double size = (double)text.size;
    printf("%zu bytes, %zu errors (%u)\n", text.size, errors, sum);
    printf("lines: %6.1f MB/s, %5.1f x looking at the bytes, %5.1f bytes a byte\n",
           size / least_lines / 1e6, least_lines / least_look, (double)taken_lines / size);
    printf("book:  %6.1f MB/s, %5.1f x looking at the bytes, %5.1f bytes a byte\n",
           size / least_read / 1e6, least_read / least_look, (double)taken / size);
    arena_finish(&kept);
    return EXIT_SUCCESS;
}
