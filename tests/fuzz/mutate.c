/* SPDX-License-Identifier: MIT */
/* mutate: playbooks that no coach would write: the files named, with words, lines and bytes taken
 * out, put in, doubled and exchanged, by a row of numbers that is the same every time. Whatever
 * comes out is loaded, drawn, tidied and told; nothing may crash, hang, leak, or say nothing about
 * a play that is broken. Prints TAP. Usage: mutate ROUNDS FIRST_SEED FILE... */
#include <courtwright/courtwright.h>
#include <inttypes.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum { TEXT_MOST = 64 * 1024, WORDS_MOST = 4000, FILES_MOST = 128 };
#define SECONDS_MOST 20.0

struct text {
    char at[TEXT_MOST];
    size_t size;
};
struct piece {
    const char *at;
    size_t size;
};

static struct text files[FILES_MOST];
static size_t file_count;
static struct piece
    words[WORDS_MOST]; /* of all files: what is put in comes from the language itself */
static size_t word_count;
static uint64_t state;

static uint64_t next(void)
{
    uint64_t z = state += UINT64_C(0x9E3779B97F4A7C15);
    z = (z ^ (z >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94D049BB133111EB);
    return z ^ (z >> 31);
}

static size_t below(size_t most)
{
    return most ? (size_t)(next() % most) : 0;
}

static void collect_words(const struct text *text)
{
    size_t i = 0;
    while (i < text->size && word_count < WORDS_MOST) {
        size_t begin = i;
        while (i < text->size && !strchr(" \n,", text->at[i])) {
            i++;
        }
        if (i > begin) {
            words[word_count++] = (struct piece){text->at + begin, i - begin};
        }
        i += i < text->size;
    }
}

static bool read_text(const char *path)
{
    FILE *file = fopen(path, "rb");
    if (!file || file_count == FILES_MOST) {
        return false;
    }
    struct text *text = &files[file_count++];
    text->size = fread(text->at, 1, TEXT_MOST / 2, file);
    fclose(file);
    collect_words(text);
    return text->size > 0;
}

/* text[begin..end) becomes `piece`; nothing happens when it would not fit. */
static void replace(struct text *text, size_t begin, size_t end, struct piece piece)
{
    static char kept[TEXT_MOST];
    if (text->size - (end - begin) + piece.size > TEXT_MOST) {
        return;
    }
    memcpy(kept, piece.at, piece.size); /* it may lie in the text itself */
    memmove(text->at + begin + piece.size, text->at + end, text->size - end);
    memcpy(text->at + begin, kept, piece.size);
    text->size = text->size - (end - begin) + piece.size;
}

static void stretch_at(const struct text *text, size_t at, const char *ends, size_t *begin,
                       size_t *end)
{
    *begin = *end = at;
    while (*begin > 0 && !strchr(ends, text->at[*begin - 1])) {
        --*begin;
    }
    while (*end < text->size && !strchr(ends, text->at[*end])) {
        ++*end;
    }
}

static void mutate_once(struct text *text)
{
    size_t begin, end, at = below(text->size);
    bool line = below(2);
    stretch_at(text, at, line ? "\n" : " \n,", &begin, &end);
    struct piece word = words[below(word_count)];
    struct piece self = {text->at + begin, end - begin};
    char byte = (char)below(256);
    switch (below(9)) {
    case 0: /* gone */
        replace(text, begin, end + (line && end < text->size), (struct piece){"", 0});
        break;
    case 1: /* twice */
        replace(text, begin, begin, self);
        break;
    case 2: /* from elsewhere in this text */
        at = below(text->size);
        replace(text, at, at, self);
        break;
    case 3: /* a byte of any kind */
        replace(text, at, at + (at < text->size), (struct piece){&byte, 1});
        break;
    case 4: /* a new line in the middle */
        replace(text, at, at, (struct piece){"\n", 1});
        break;
    case 5: /* the rest is gone */
        text->size = below(4) ? text->size : at;
        break;
    default: /* another word of the language */
        stretch_at(text, at, " \n,", &begin, &end);
        replace(text, begin, end, word);
        break;
    }
}

static bool swallow(void *ctx, const char *bytes, size_t size)
{
    (void)bytes;
    *(size_t *)ctx += size;
    return true;
}

static bool use(struct courtwright *book)
{
    size_t size = 0;
    struct courtwright_writer writer = {swallow, &size};
    bool good = true;
    for (size_t i = 0; i < courtwright_play_count(book); i++) {
        const struct courtwright_play *play = courtwright_play(book, i);
        good = good && (!play->broken || courtwright_error_count(book) > 0);
        for (size_t j = 0; j < play->diagrams; j++) {
            struct courtwright_draw draw = {.play = i,
                                            .diagram = j,
                                            .format = COURTWRIGHT_SVG_LIVE,
                                            .caption = true,
                                            .show_checks = true,
                                            .beads = true,
                                            .names = true};
            good = courtwright_draw(book, &draw, &writer) == COURTWRIGHT_OK && good;
        }
        struct courtwright_animate animate = {.play = i};
        good = (play->diagrams == 0 ||
                courtwright_animate(book, &animate, &writer) == COURTWRIGHT_OK) &&
               good;
        courtwright_positions(book, i, 10, &writer);
    }
    struct courtwright_handout handout = {.reader = 3};
    courtwright_handout(book, &handout, &writer); /* says no when there is no whole play */
    enum courtwright_status tidied = courtwright_tidy(book, &writer);
    return good && (tidied == COURTWRIGHT_OK || courtwright_error_count(book) > 0);
}

static enum courtwright_fetched fetch(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include)
{
    (void)ctx;
    (void)from;
    const struct text *text = &files[strlen(path) % file_count];
    courtwright_include_text(include, path, text->at, text->size);
    return COURTWRIGHT_FETCHED;
}

static void keep(const struct text *text, uint64_t seed)
{
    char name[64];
    snprintf(name, sizeof name, "mutated-%" PRIu64 ".play", seed);
    FILE *file = fopen(name, "wb");
    if (file) {
        fwrite(text->at, 1, text->size, file);
        fclose(file);
    }
}

static bool round_of(uint64_t seed, bool quiet)
{
    static struct text text;
    static const struct courtwright_host host = {.fetch = fetch};
    state = seed;
    text = files[below(file_count)];
    for (size_t i = below(6) + 1; i > 0; i--) {
        mutate_once(&text);
    }
    if (!quiet) {
        keep(&text, seed);
    }
    clock_t begin = clock();
    struct courtwright *book = courtwright_load("mutated.play", text.at, text.size, &host);
    bool good = book && use(book);
    courtwright_free(book);
    double seconds = (double)(clock() - begin) / CLOCKS_PER_SEC;
    if (!good || seconds > SECONDS_MOST) {
        keep(&text, seed);
    }
    return good && seconds <= SECONDS_MOST;
}

int main(int argc, char **argv)
{
    if (argc < 4) {
        fputs("usage: mutate ROUNDS FIRST_SEED FILE...\n", stderr);
        return 2;
    }
    for (int i = 3; i < argc; i++) {
        if (!read_text(argv[i])) {
            printf("Bail out! %s cannot be read\n", argv[i]);
            return 2;
        }
    }
    uint64_t rounds = strtoull(argv[1], NULL, 10), first = strtoull(argv[2], NULL, 10);
    int failed = 0;
    for (uint64_t i = 0; i < rounds; i++) {
        bool good = round_of(first + i, rounds != 1);
        failed += !good;
        printf("%s %" PRIu64 " - mutation %" PRIu64 " is loaded, drawn and tidied\n",
               good ? "ok" : "not ok", i + 1, first + i);
        fflush(stdout);
    }
    printf("1..%" PRIu64 "\n", rounds);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
