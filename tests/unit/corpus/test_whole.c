/* SPDX-License-Identifier: MIT */
/* Texts read whole. Of every sentence that is understood each word is taken, once: the pieces taken
 * lie end to end from its first word to its last, with nothing between them but words that say
 * nothing. And what is understood survives tidy: the tidy text is the same play, moment by moment,
 * and its own tidy text. Held over the corpora (.txt), over files of plays, over the samples of a
 * document
 * (.md) and over plays thrown together from a seed. Usage: test_whole PLAYS FILE... */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "base/limits.h"
#include "corpus.h"
#include "generate.h"
#include "language/words/cursor.h"

/* The pieces taken while one line was read, on ways that lead nowhere too. */
struct pieces {
    struct arena *arena;
    VEC(const struct token *) from;
    VEC(const struct token *) to;
    size_t sentences, words;
    struct span passed_over; /* the first word that no piece holds, or SPAN_NONE */
    bool blind;              /* to see the test fail: the last piece of every line is forgotten */
};
struct total {
    size_t texts, sentences, words, plays;
    bool failed;
};

static void took(void *watcher, const struct token *from, const struct token *to)
{
    struct pieces *pieces = watcher;
    VEC_PUSH(pieces->arena, &pieces->from, from);
    VEC_PUSH(pieces->arena, &pieces->to, to);
}

static void sentence_read_whole(void *watcher, const struct token *begin, const struct token *end)
{
    struct pieces *pieces = watcher;
    bool reached[LIMIT_TOKENS + 1] = {true}; /* pieces lie end to end from begin to there */
    size_t count = (size_t)(end - begin), furthest = 0;
    for (size_t at = 0; at < count; at++) {
        furthest = reached[at] ? at : furthest;
        pieces->words += !begin[at].filler;
        reached[at + 1] = reached[at + 1] || (reached[at] && begin[at].filler);
        for (size_t i = 0; reached[at] && i < pieces->from.count - pieces->blind; i++) {
            if (pieces->from.at[i] == begin + at && pieces->to.at[i] <= end) {
                reached[pieces->to.at[i] - begin] = true;
            }
        }
    }
    if (!reached[count] && pieces->passed_over.source == SOURCE_NONE) {
        pieces->passed_over = begin[furthest].span;
    }
    pieces->sentences++;
    pieces->from.count = pieces->to.count = 0;
}

static void fail(struct total *total, const char *what, struct str text, struct str more)
{
    if (!total->failed) {
        printf("# %s: %.*s\n<<%.*s>>\n", what, STR_ARG(more), STR_ARG(text));
    }
    total->failed = true;
}

/* Reads a text and watches; counts what was understood. */
static struct str words_taken(struct arena *arena, struct str text, bool blind, struct total *total)
{
    struct pieces pieces = {.arena = arena, .passed_over = SPAN_NONE, .blind = blind};
    struct cursor_watch watch = {took, sentence_read_whole, &pieces};
    struct sources sources;
    struct diags diags;
    sources_init(&sources, arena);
    diags_init(&diags, arena);
    uint32_t source = sources_add(&sources, STR("whole.play"), text);
    book_read_watched(arena, &sources, source, NULL, &diags, &watch);
    total->sentences += pieces.sentences;
    total->words += pieces.words;
    return source_text(&sources, pieces.passed_over);
}

static void round_trip(struct arena *arena, struct str text, struct total *total)
{
    struct corpus_read first, second;
    corpus_read(arena, text, &first);
    if (first.diags.errors > 0) {
        return;
    }
    corpus_read(arena, first.tidy, &second);
    if (second.diags.errors > 0) {
        fail(total, "its tidy form is refused", text, corpus_errors(arena, &second.diags));
    } else if (!str_equal(first.tidy, second.tidy)) {
        fail(total, "its tidy form has another", text, second.tidy);
    } else if (!str_equal(corpus_dump(arena, &first), corpus_dump(arena, &second))) {
        fail(total, "its tidy form is another play", text, first.tidy);
    }
    total->plays += first.plays->plays.count;
}

static void hold_text(struct str text, struct total *total)
{
    struct arena arena;
    arena_init(&arena, NULL, NULL);
    struct str over = words_taken(&arena, text, false, total);
    if (over.size > 0) {
        fail(total, "a word is passed over", text, over);
    }
    round_trip(&arena, text, total);
    total->texts++;
    arena_finish(&arena);
}

static bool hold_corpus(const char *path, struct total *total)
{
    struct arena arena;
    corpus_lines lines;
    arena_init(&arena, NULL, NULL);
    bool opened = corpus_open(&arena, path, &lines);
    for (size_t i = 0; opened && i < lines.count; i++) {
        hold_text(corpus_text(&arena, &lines.at[i], lines.at[i].written), total);
    }
    arena_finish(&arena);
    return opened;
}

/* Every block of a document that opens with ```play. */
static void hold_samples(char *text, struct total *total)
{
    while ((text = strstr(text, "\n```play")) != NULL) {
        char *begin = strchr(text + 1, '\n');
        char *end = begin ? strstr(begin, "\n```") : NULL;
        if (!end) {
            return;
        }
        hold_text((struct str){begin + 1, (size_t)(end - begin)}, total);
        text = end + 1;
    }
}

static bool hold_file(const char *path, struct total *total)
{
    static char text[1 << 20];
    size_t length = strlen(path);
    if (length > 4 && strcmp(path + length - 4, ".txt") == 0) {
        return hold_corpus(path, total);
    }
    FILE *file = fopen(path, "rb");
    size_t size = file ? fread(text, 1, sizeof text - 1, file) : 0;
    text[size] = '\0';
    if (file) {
        fclose(file);
    }
    if (length > 3 && strcmp(path + length - 3, ".md") == 0) {
        hold_samples(text, total);
    } else {
        hold_text((struct str){text, size}, total);
    }
    return file != NULL;
}

static void hold_generated(uint64_t plays, struct total *total)
{
    for (uint64_t seed = 1; seed <= plays; seed++) {
        struct arena arena;
        struct strbuf text;
        arena_init(&arena, NULL, NULL);
        strbuf_init(&text, &arena);
        generate_play(&text, seed);
        hold_text(strbuf_str(&text), total);
        arena_finish(&arena);
    }
}

static bool report(int number, const char *what, const struct total *total)
{
    bool good = !total->failed && total->texts > 0;
    printf("%s %d - %s is read whole, and is the same play when it is tidy\n",
           good ? "ok" : "not ok", number, what);
    printf("# %zu texts, %zu sentences, %zu words, %zu plays\n", total->texts, total->sentences,
           total->words, total->plays);
    return good;
}

int main(int argc, char **argv)
{
    int failed = 0, number = 0;
    if (argc < 3) {
        fputs("usage: test_whole PLAYS FILE...\n", stderr);
        return 2;
    }
    printf("1..%d\n", argc);
    for (int i = 2; i < argc; i++) {
        struct total total = {0};
        if (!hold_file(argv[i], &total)) {
            printf("# %s cannot be read\n", argv[i]);
        }
        failed += !report(++number, argv[i], &total);
    }
    struct total total = {0}, unseen = {0};
    hold_generated(strtoull(argv[1], NULL, 10), &total);
    failed += !report(++number, "what is generated", &total);
    struct arena arena;
    arena_init(&arena, NULL, NULL);
    struct str over = words_taken(&arena, STR("1 passes to 2\n"), true, &unseen);
    bool seen = str_is(over, "2");
    printf("%s %d - a word that no piece holds is seen\n", seen ? "ok" : "not ok", ++number);
    arena_finish(&arena);
    return failed || !seen ? EXIT_FAILURE : EXIT_SUCCESS;
}
