/* SPDX-License-Identifier: MIT */
/* mutants: sentences of corpora and books with one word deleted, doubled, exchanged with the next
 * or misspelled: how many are errors, notes, the same play, another play. Those of the last kind go
 * to LOG, to be read: each must be a sentence a coach could mean. And a word that can be left out
 * of a sentence without a change or a note must be one that the language knows: none that it does
 * not know is ever read and forgotten. Prints TAP. Usage: mutants LOG FILE... */
#include "corpus.h"
#include "language/syntax/chars.h"
#include "language/words/reader.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { WORDS_OF_LINE = 64, WORDS_EACH = 24, CHANGES = 4 };
static const char *const changes[CHANGES] = {"deleted", "doubled", "exchanged", "misspelled"};

struct tally {
    size_t errors, notes, same, other;
};
struct total {
    struct tally of[CHANGES];
    FILE *log;
    bool failed;
};

/* Words of the language that stand in no table of it: words that say nothing, verbs that only carry
 * a noun, ways. They may be left out and change nothing. */
static const char *const idle[] = {
    "everybody", "everything:", "just",    "simply", "please",  "so",       "okay",     "first",
    "player",    "players",     "number",  "comma",  "both",    "now",      "will",     "also",
    "makes",     "make",        "sets",    "set",    "throws",  "executes", "delivers", "along",
    "ahead",     "towards",     "area",    "solid",  "have",    "want",     "get",      "let",
    "need",      "near",        "sure",    "period", "thru",    "pipe",     "our",      "together",
    "coming",    "starts",      "start:",  "zone",  /* a 2-3 is a zone */
    "does",      "do",          "second",  "where", /* only then does 1 pass; the second 2 catches;
                                                       where 1 passes him the ball */
    "only",      "but",         "doors",   "he's",   "setting", /* he's setting a screen, but slips
                                                                 */
    "already",   "room",        "dbl",                          /* on her way; room to cut */
    "one's",                                                    /* second one's the four */
    "sending",   "can",         "must",    "own", /* sending 2 to the top: 2 to the top */
    "rev",       "w/",          "(post)",         /* 1>3; 5 PnR 1; 4, who is in the post */
    "drv",       "att",         "whole", /* 2 drv mid: with the ball, 2 mid; the whole baseline */
    "they're",   "places",      "places,", "begins", /* 4 and 5 they're gonna; trade places; begins
                                                        a cut */
    "because",   "second,", /* because x2 sags, 1 passes; 4 first and 5 second, */
    "each",                 /* 2 and 4 each move up */
    "x5",        "getting", /* 5 seals his own man, and an ice is jumped by the screener's */
    NULL};
static const char *const fillers[] = {
#define FILLER(where, words) words,
#include "language/words/fillers.def"
#undef FILLER
#define IDLE_EMPTY(words) words,
#define IDLE_TO(words)
#define IDLE_FOR(words)
#define IDLE_AS(words)
#define IDLE_HEAD(words)
#define IDLE_OPEN(words)
#define IDLE_MOVING(words)
#define ASIDE(kind, words) IDLE_##kind(words)
#include "language/words/asides.def"
#undef ASIDE
#define CALLED_PLAYER(words) words, /* point guard 1 */
#define CALLED_HOLDER(words) words,
#define CALLED_PASSER(words) words,
#define CALLED_THROWER(words) words,
#define CALLED_SCREENER(words) words,
#define CALLED_BIG(words) words,
#define CALLED_TITLE(words) words,
#define CALLED_HELP(words) words,
#define CALLED_DEED(words)
#define CALLED_OTHERS(words)
#define CALLED_ACTOR(words)
#define CALLED_HIM(words)
#define PERSON(words, person, number, deed) CALLED_##person(words)
#include "language/words/people.def"
#undef PERSON
    NULL};

/* A whole word of what is said and says nothing. */
static bool is_filler(struct str word)
{
    for (const char *const *row = fillers; *row; row++) {
        for (const char *at = *row; at; at = strchr(at, ' ') ? strchr(at, ' ') + 1 : NULL) {
            size_t size = strcspn(at, " ");
            if (str_equal_fold(word, (struct str){at, size})) {
                return true;
            }
        }
    }
    return false;
}

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

/* Two letters in the middle change places. */
static void add_misspelled(struct strbuf *out, struct str word)
{
    size_t at = word.size / 2 - 1;
    for (size_t i = 0; i < word.size; i++) {
        size_t from = i == at ? at + 1 : i == at + 1 ? at : i;
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

/* Whether this change makes other words of them. */
static bool changes_words(const struct str *words, size_t count, size_t at, int change)
{
    size_t middle = words[at].size / 2;
    if (change == 2) {
        return at + 1 < count && !str_equal(words[at], words[at + 1]);
    }
    return change != 3 || (words[at].size >= 4 && words[at].at[middle - 1] != words[at].at[middle]);
}

/* The first line of `text` that differs from the line of `other` in its place. */
static struct str first_change(struct str text, struct str other)
{
    size_t same = 0, begin = 0;
    while (same < text.size && same < other.size && text.at[same] == other.at[same]) {
        same++;
        begin = text.at[same - 1] == '\n' ? same : begin;
    }
    size_t end = begin;
    while (end < text.size && text.at[end] != '\n') {
        end++;
    }
    return (struct str){text.at + begin, end - begin};
}

static bool is_idle(struct str word)
{
    for (const char *const *row = idle; *row; row++) {
        if (str_equal_fold(word, str_of(*row))) {
            return true;
        }
    }
    struct str letters = word; /* it, positions. */
    while (letters.size > 0 && strchr(".,;", letters.at[letters.size - 1])) {
        letters.size--;
    }
    struct arena arena;
    arena_init(&arena, NULL, NULL);
    bool known = letters.size <= 1 || word.at[0] == '"' || is_filler(letters) ||
                 word_is_taken(text_lower(&arena, letters));
    known = known || str_starts(letters, "→") || str_starts(letters, "->"); /* as a comma */
    known = known || str_starts(letters, "…") || (letters.at[0] >= '0' && letters.at[0] <= '9');
    arena_finish(&arena);
    return known;
}

/* A text of which one line is being changed. */
struct sample {
    struct str before, line, after;
    struct corpus_read whole;
    struct str dump;
};

static struct str with_line(struct arena *arena, const struct sample *sample, struct str line)
{
    return str_format(arena, "%.*s%.*s%.*s", STR_ARG(sample->before), STR_ARG(line),
                      STR_ARG(sample->after));
}

/* The same was told, word for word: a note that quotes what was left out tells of a change in it.
 */
static bool told_alike(const struct diags *a, const struct diags *b)
{
    bool alike = a->all.count == b->all.count;
    for (size_t i = 0; alike && i < a->all.count; i++) {
        alike = str_equal(a->all.at[i].message, b->all.at[i].message);
    }
    return alike;
}

static void judge(struct arena *arena, const struct sample *sample, struct str said, int change,
                  struct str word, struct total *total)
{
    struct tally *tally = &total->of[change];
    struct corpus_read mutant;
    corpus_read(arena, with_line(arena, sample, said), &mutant);
    if (mutant.diags.errors > 0) {
        tally->errors++;
    } else if (str_equal(sample->whole.tidy, mutant.tidy)) {
        tally->same++;
        bool told = !told_alike(&mutant.diags, &sample->whole.diags);
        if (change == 0 && !told && !is_idle(word)) {
            printf("# `%.*s` can be left out of: %.*s\n", STR_ARG(word), STR_ARG(sample->line));
            total->failed = true;
        }
    } else if (mutant.diags.all.count > sample->whole.diags.all.count) {
        tally->notes++;
    } else {
        tally->other++;
        if (total->log) {
            struct str got = first_change(mutant.tidy, sample->whole.tidy);
            fprintf(total->log, "%-10s %.*s => %.*s   (%.*s)\n", changes[change], STR_ARG(said),
                    STR_ARG(got), STR_ARG(sample->line));
        }
    }
}

static void mutate(struct sample *sample, struct total *total)
{
    struct str words[WORDS_OF_LINE];
    struct arena kept;
    arena_init(&kept, NULL, NULL);
    size_t count = split(sample->line, words);
    corpus_read(&kept, with_line(&kept, sample, sample->line), &sample->whole);
    size_t stride = count > WORDS_EACH ? 2 : 1; /* of a line in one breath every other word */
    for (size_t at = 0; at < count && words[at].at[0] != '#'; at += stride) {
        for (int change = 0; change < CHANGES; change++) {
            struct arena arena;
            if (!changes_words(words, count, at, change)) {
                continue;
            }
            arena_init(&arena, NULL, NULL);
            struct str said = changed(&arena, words, count, at, change);
            judge(&arena, sample, said, change, words[at], total);
            arena_finish(&arena);
        }
    }
    arena_finish(&kept);
}

static bool mutate_corpus(struct arena *arena, const char *path, struct total *total)
{
    corpus_lines lines;
    bool opened = corpus_open(arena, path, &lines);
    for (size_t i = 0; opened && i < lines.count; i++) {
        if (!lines.at[i].refused) {
            struct sample sample = {.before = corpus_text(arena, &lines.at[i], STR("")),
                                    .line = lines.at[i].written};
            sample.before.size--; /* its line end */
            sample.after = STR("\n");
            mutate(&sample, total);
        }
    }
    return opened;
}

/* Every line of a book that holds nothing but sentences. */
static void mutate_block(struct str text, const struct block *block, struct total *total)
{
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_BLOCK && form->block) {
            mutate_block(text, form->block, total);
        } else if (form->kind == FORM_SENTENCE && form->line->span.begin == form->span.begin) {
            struct span span = form->line->span;
            struct sample sample = {.before = {text.at, span.begin},
                                    .line = {text.at + span.begin, span.end - span.begin},
                                    .after = {text.at + span.end, text.size - span.end}};
            mutate(&sample, total);
        }
    }
}

static bool mutate_book(struct arena *arena, const char *path, struct total *total)
{
    static char bytes[1 << 20];
    FILE *file = fopen(path, "rb");
    if (!file) {
        return false;
    }
    struct corpus_read read;
    struct str text = {bytes, fread(bytes, 1, sizeof bytes, file)};
    fclose(file);
    corpus_read(arena, text, &read);
    mutate_block(text, read.book->file, total);
    return true;
}

int main(int argc, char **argv)
{
    struct total total = {.log = argc > 1 ? fopen(argv[1], "wb") : NULL};
    for (int i = 2; i < argc; i++) {
        struct arena arena;
        arena_init(&arena, NULL, NULL);
        bool corpus = strstr(argv[i], ".txt") != NULL;
        bool opened =
            corpus ? mutate_corpus(&arena, argv[i], &total) : mutate_book(&arena, argv[i], &total);
        if (!opened) {
            printf("# %s cannot be read\n", argv[i]);
        }
        total.failed |= !opened;
        arena_finish(&arena);
    }
    size_t errors = 0;
    for (int i = 0; i < CHANGES; i++) {
        const struct tally *tally = &total.of[i];
        errors += tally->errors;
        printf("# %-10s %zu errors, %zu notes, %zu the same, %zu another play\n", changes[i],
               tally->errors, tally->notes, tally->same, tally->other);
    }
    bool good = !total.failed && total.log && errors > 0;
    printf("1..1\n%s 1 - no unknown word is read and forgotten\n", good ? "ok" : "not ok");
    if (total.log) {
        fclose(total.log);
    }
    return good ? EXIT_SUCCESS : EXIT_FAILURE;
}
