/* SPDX-License-Identifier: MIT */
/* libFuzzer on the reader of books and on tidy: whatever the bytes, every span lies in its source,
 * printing what was printed changes nothing, what had no error has none when printed, and no
 * comment is lost.
 *
 *   CC=clang meson setup build-fuzz -Dfuzz=true -Dcore=true -Db_lundef=false \
 *     -Db_sanitize=address,undefined -Dc_args=-fsanitize=fuzzer-no-link
 *   ninja -C build-fuzz tests/fuzz/fuzz_words
 *   build-fuzz/tests/fuzz/fuzz_words -max_len=500 CORPUS tests/golden/words examples/topics */
#include <stdio.h>
#include <stdlib.h>

#include "language/syntax/chars.h"
#include "language/tidy/tidy.h"

int LLVMFuzzerTestOneInput(const unsigned char *bytes, size_t size);

/* Some files are there, some are not. */
static enum load_result load(void *ctx, struct arena *arena, struct str from, struct str path,
                             struct str *name, struct str *text)
{
    (void)ctx;
    (void)arena;
    (void)from;
    if (path.size % 3 == 0) {
        return LOAD_MISSING;
    }
    *name = path;
    *text = STR("playbook \"P\"\nplay \"I\"\n1 shoots\n");
    return LOAD_OK;
}

static void give_up(const char *why, struct str a, struct str b)
{
    fprintf(stderr, "%s\n<<%.*s>>\n<<%.*s>>\n", why, STR_ARG(a), STR_ARG(b));
    abort();
}

static struct str comments(struct arena *arena, struct str text)
{
    struct sources sources;
    struct diags diags;
    struct lines lines;
    struct strbuf out;
    sources_init(&sources, arena);
    diags_init(&diags, arena);
    strbuf_init(&out, arena);
    lines_read(arena, &sources, sources_add(&sources, STR("fuzz.play"), text), &diags, &lines);
    for (size_t i = 0; i < lines.all.count; i++) {
        if (lines.all.at[i].comment.size > 0) {
            strbuf_add(&out, lines.all.at[i].comment);
            strbuf_char(&out, '\n');
        }
    }
    return strbuf_str(&out);
}

static struct str tidied(struct arena *arena, struct str text, size_t *errors)
{
    struct sources sources;
    struct diags diags;
    const struct loader loader = {load, NULL};
    sources_init(&sources, arena);
    diags_init(&diags, arena);
    uint32_t source = sources_add(&sources, STR("fuzz.play"), text);
    struct book *book = book_read(arena, &sources, source, &loader, &diags);
    diags_sort(&diags);
    for (size_t i = 0; i < diags.all.count; i++) {
        struct span span = diags.all.at[i].span;
        if (span.source >= sources.all.count || span.begin > span.end ||
            span.end > sources.all.at[span.source].text.size) {
            give_up("a span outside its source", text, diags.all.at[i].message);
        }
    }
    *errors = diags.errors;
    return tidy_book(arena, &sources, book);
}

static void check(struct arena *arena, struct str text)
{
    size_t errors, again;
    struct str out = tidied(arena, text, &errors);
    struct str twice = tidied(arena, out, &again);
    if (!str_equal(out, twice)) {
        give_up("printed twice, it changes", out, twice);
    }
    struct str had = comments(arena, text), has = comments(arena, out);
    if (text_is_text(out) && !str_equal(had, has)) { /* broken bytes may have become too many */
        give_up("printed, it has other comments", text, out);
    }
    if (errors == 0 && again > 0) {
        give_up("printed, it has errors", text, out);
    }
}

int LLVMFuzzerTestOneInput(const unsigned char *bytes, size_t size)
{
    jmp_buf escape;
    struct arena arena;
    arena_init(&arena, NULL, &escape);
    if (setjmp(escape) == 0) {
        check(&arena, (struct str){(const char *)bytes, size});
    }
    arena_finish(&arena);
    return 0;
}
