/* SPDX-License-Identifier: MIT */
/* embed: the library in a program of one's own, with nothing but its public header.
 *
 *     cc embed.c $(pkg-config --cflags --libs courtwright) -o embed && ./embed > swing.svg
 *
 * Says on standard error what is in the book, what was found and what an editor would offer, and
 * writes the first diagram of its first play as live SVG. */
#include <courtwright/courtwright.h>
#include <stdio.h>
#include <string.h>

static const char book_text[] =
    "play \"Swing and go\"\n"
    "  start five-out\n"
    "  ball 1\n"
    "  defense man\n"
    "  step \"Swing\"\n"
    "    1 passes to 2\n"
    "    2 dribles to the rim\n" /* a word that is wrong, to see it told */
    "\n"
    "include \"second.play\"\n";
static const char second_text[] = "play \"Second side\"\n"
                                  "  start five-out\n"
                                  "  ball 1\n"
                                  "  step \"Swing it back\"\n"
                                  "    1 passes to 3\n"
                                  "    after 1 passes, 1 cuts to the rim\n";

/* The library reads no files: where an include comes from is for us to say. */
static enum courtwright_fetched fetch(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include)
{
    (void)ctx;
    (void)from;
    if (strcmp(path, "second.play") != 0) {
        return COURTWRIGHT_MISSING;
    }
    courtwright_include_text(include, path, second_text, sizeof second_text - 1);
    return COURTWRIGHT_FETCHED;
}

static bool write_out(void *ctx, const char *bytes, size_t size)
{
    return fwrite(bytes, 1, size, ctx) == size;
}

static void tell(const struct courtwright *book)
{
    for (size_t i = 0; i < courtwright_diagnostic_count(book); i++) {
        const struct courtwright_diagnostic *said = courtwright_diagnostic(book, i);
        fprintf(stderr, "%s:%u:%u: %s [%s]\n", said->file, said->line, said->column, said->message,
                said->id);
    }
    for (size_t i = 0; i < courtwright_play_count(book); i++) {
        const struct courtwright_play *play = courtwright_play(book, i);
        fprintf(stderr, "%s: %zu diagrams%s\n", play->name, play->diagrams,
                play->broken ? ", broken" : "");
    }
}

static bool offer(void *ctx, const struct courtwright_completion *completion)
{
    (void)ctx;
    fprintf(stderr, "  %s  (%s)\n", completion->text, completion->what);
    return true;
}

/* What an editor would offer behind the last letter typed. */
static void offer_all(const char *typed)
{
    size_t size = strlen(typed);
    fprintf(stderr, "behind \"%s\" could stand:\n", typed);
    courtwright_complete("book.play", typed, size, size, NULL, offer, NULL);
}

/* The first play that can be drawn. */
static size_t first_whole(const struct courtwright *book)
{
    size_t index = 0;
    while (index < courtwright_play_count(book) && courtwright_play(book, index)->broken) {
        index++;
    }
    return index;
}

int main(void)
{
    struct courtwright_host host = {.fetch = fetch};
    struct courtwright *book =
        courtwright_load("book.play", book_text, sizeof book_text - 1, &host);
    if (!book) {
        fputs("no memory\n", stderr);
        return 1;
    }
    tell(book);
    offer_all("2 dri");
    struct courtwright_draw draw = {.play = first_whole(book), .format = COURTWRIGHT_SVG_LIVE};
    struct courtwright_writer writer = {write_out, stdout};
    enum courtwright_status status = courtwright_draw(book, &draw, &writer);
    if (status != COURTWRIGHT_OK) {
        fprintf(stderr, "not drawn: %s\n", courtwright_status_text(status));
    }
    courtwright_free(book);
    return status == COURTWRIGHT_OK ? 0 : 1;
}
