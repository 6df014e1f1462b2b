/* SPDX-License-Identifier: MIT */
/* Every code of the text and of the play, raised: the corpora raise most, the texts below the rest.
 * A row that nothing raises is a row without a test, or one that can be taken away. Usage:
 * test_codes FILE... */
#include "base/limits.h"
#include "corpus.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static bool raised[DIAG_COUNT];

static const char *const texts[] = {
#define PLAY "play \"Lantern\"\n  start five-out\n"
    "",
    "1 passes to \xff 2\n",
    "1 passes to\x07 2\n",
    "play \"Lantern\n",
    "courtwright 7\n1 passes to 2\n",
    PLAY "  1 passes to 2,\nplay \"Orchard\"\n",
    "team \"Kites\"\n  1 2\n1 passes to 2\n",
    "plya \"Lantern\"\n",
    PLAY "  option 4 cuts to the corner\n    1 passes to 2\n",
    PLAY "  step 3\n    1 passes to 2\n",
    PLAY "  step Use it after\n    1 passes to 2\n",
    PLAY "  1 passes to 2\n  step\n    2 shoots\n",
    PLAY "  defense zone 9-9\n",
    "practice \"Tuesday\"\n  water, 2\n",
    PLAY "  units metres\n",
    PLAY "  1 passes to 2\n  defense man\n",
    PLAY "  defense man\n  defense man\n",
    PLAY "  point\n",
    PLAY "  1 passes to 2\n  step\n    2 passes to 1\n",
    "chapter \"One\"\n1 passes to 2\n",
    "action \"go\" for wing\n  wing cuts to the rim\n",
    PLAY "  step\n    5 screens for 3\n    read x3 trails\n      3 curls off 5\n   1 passes to 3\n",
    "include presses\n",
    "playbook \"One\"\nplaybook \"Two\"\n",
    PLAY "  3 cuts to the rim, at 2 s, 4 lifts to top\n",
    PLAY "  4 screens for 2 #4\n",
    PLAY "  1 passes to 2 = 3\n",
    /* the play */
    "team \"Kites\"\n  1 \"A\"\n  2 \"B\"\n  3 \"C\"\n  4 \"D\"\n  1 \"A\"\n"
    "  lineup \"Big\" 1 \"A\"\n  lineup \"Small\" 1 \"A\", 2 \"A\"\n" PLAY "  1 passes to 2\n",
    "play \"Lantern\"\n  start 1 top, 2 right wing\n  3 cuts to the rim\n",
    "drill \"Four\"\n  start 1 top, x6 at left wing\n  x6 sags\n",
    "play \"Lantern\"\n  start 1 top, 2 left wing, 3 right wing\n  the left corner fills top\n",
    "action \"go\" for passer, receiver\n  passer passes to receiver\n" PLAY
    "  run \"go\" with passer 1\n",
    PLAY "  run \"nothing\" with passer 1\n",
    "action \"go\" for passer\n  run \"go\" with passer passer\n" PLAY
    "  run \"go\" with passer 1\n",
    PLAY "  1 shoots\n  then the ball passes to 2\n",
    PLAY "  then everyone else passes to everyone else\n",
    PLAY "  5 fills 5's spot. 3 screens for the left wing\n",
    "play \"Lantern\"\n  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left corner\n"
    "  4 drifts to the next spot down\n",
    "drill \"Four\"\n  start 1 top\n  1 goes to the end of the line\n",
    "drill \"Four\"\n  start 1 top, cone at left elbow\n  1 goes to cone C\n",
    PLAY "  5 rolls\n",
    "play \"Lantern\"\n  start five-out, 3 at (0, 1000)\n  1 passes to 2\n",
    PLAY "  4 stays at the nail\n",
    PLAY "  4 cuts from the nail to the rim\n",
    PLAY "  1 dribbles to the nail and shoots a three\n",
    PLAY "  3 holds for 15 s\n",
    PLAY "  5 sets a flat screen for 3\n",
    PLAY "  3 curls off 5\n",
    PLAY "  1 inbounds to 2\n",
    PLAY "  4 rebounds\n",
    PLAY "  5 ball screens for 1\n  5 pops\n",
    PLAY "  1 passes to 2 at right corner\n",
    PLAY "  1 goes to right wing\n",
    PLAY "  1 cuts to the rim\n",
    PLAY "  as 4 screens, 3 cuts to the rim\n",
    PLAY "  5 screens for 3\n  after 5 screens, 4 lifts to right wing\n  3 curls off 5\n",
    PLAY "  after 2 cuts, 3 cuts to the rim\n  after 3 cuts, 2 cuts to the rim\n",
    PLAY "  step\n    1 cuts to left corner\n  step\n    repeat from step 1\n",
    PLAY "  step\n    same as step 1 of \"Nothing\"\n",
    PLAY "  step\n    continue here\n",
    PLAY "  step\n    1 passes to 2\n  step \"On\" after \"Curl\"\n    2 shoots\n",
    PLAY "  1 passes to 2\nplay \"lantern\"\n  1 shoots\n",
    "play \"Lantern left\" mirrors \"Nothing\"\n",
    PLAY "  lineup \"Big\"\n  1 passes to 2\n",
    "drill \"Four\"\n  start 1 top\n  coach passes to 1\n",
    PLAY "  defense none\n  x3 sags\n",
    PLAY "  defense man\n  x3 doubles 3\n",
    PLAY "  defense man\n  x3 sags\n  x3 denies\n",
    PLAY "  defense man\n  step\n    1 passes to 2\n    read x4 doubles\n      2 shoots\n",
    PLAY "  1 shoots until x4 helps\n",
    PLAY "  step as 1 passes\n    1 passes to 2\n",
    "team \"Kites\"\n  1 \"Imke Dorn\"\n  lineup \"Big\" 1 \"Wren Dorn\"\n" PLAY
    "  lineup \"Big\"\n  1 shoots\n",
    PLAY "  3 cuts to right corner, taking 0.1 s\n",
    "play \"Lantern\"\n  start 1 top, 2 top, 3 left wing\n  1 passes to 2\n",
    PLAY "  step\n    1 passes to 2\n    option \"Shot\"\n      2 shoots\n    option \"Shot\"\n    "
         "  2 drives\n",
    PLAY "  step \"Nothing\"\n",
    PLAY "  3 fills left wing\n",
    "practice \"Tuesday\"\n  5 water\n  starts 5:30\n",
    "charted 2026-12-01 game\n  \"Lantern\" set 2 of 1\n",
    "action \"go\" for passer, receiver\n  passer passes to receiver\n" PLAY
    "  run \"go\" with receiver 2\n",
    PLAY "  floor half\n  1 dribbles to backcourt left elbow\n",
    PLAY "  read x3 trails\n    3 curls off 5\n  step\n    1 shoots\n",
    PLAY "  1 shoots\n  3 cuts to the rim around the ball\n",
    PLAY "  1, 2, 3, 4 and 5 stay\n  everyone else cuts to the rim\n",
    PLAY "  the top and 1 stay\n",
    PLAY "  defense man\n  1 passes to 2\n  as 1 passes, x3 sags\n  as 1 passes, x3 denies\n",
    PLAY "  defense box-and-one\n  x2 guards 4\n  1 passes to 2\n",
    PLAY "  1 passes to 3\n  3 lays it in\n",
    "play \"Lantern\"\n  start five-out\n  point \"The right read\"\n  1 passes to 2\n"
    "play \"Lantern left\" mirrors \"Lantern\"\n",
};

/* Raised by tests/unit/words/test_book.c and test_sentence.c: they need other files, or one
 * sentence. */
static const enum diag_code elsewhere[] = {DIAG_TEXT_INCLUDE_DEEP, DIAG_TEXT_INCLUDE_PLAYBOOK,
                                           DIAG_TEXT_SENTENCES_MANY};

static void note(const struct diags *diags)
{
    for (size_t i = 0; i < diags->all.count; i++) {
        raised[diags->all.at[i].row - diag_rows] = true;
    }
}

static void raise(struct str text)
{
    struct arena arena;
    struct corpus_read read;
    arena_init(&arena, NULL, NULL);
    corpus_read(&arena, text, &read);
    note(&read.diags);
    arena_finish(&arena);
}

/* More than a line, a step, a book can hold. */
static void raise_limits(void)
{
    struct arena arena;
    struct strbuf line, steps;
    arena_init(&arena, NULL, NULL);
    strbuf_init(&line, &arena);
    strbuf_init(&steps, &arena);
    strbuf_text(&line, PLAY "  1 passes to 2");
    strbuf_text(&steps, PLAY);
    for (int i = 0; i < LIMIT_LINE_BYTES; i++) {
        strbuf_char(&line, ' ');
    }
    strbuf_text(&line, "and cuts to the rim\n");
    for (int i = 0; i <= LIMIT_ACTIONS; i++) {
        strbuf_print(&steps, "action \"a%d\" for mover\n  mover jabs\n", i);
    }
    strbuf_text(&steps, PLAY);
    for (int i = 0; i <= LIMIT_STEPS; i++) {
        strbuf_text(&steps, "  step\n    1 jabs\n");
    }
    raise(strbuf_str(&line));
    raise(strbuf_str(&steps));
    arena_finish(&arena);
}

int main(int argc, char **argv)
{
    size_t count = 0, failed = 0;
    for (int i = 1; i < argc; i++) {
        struct arena arena;
        corpus_lines lines;
        arena_init(&arena, NULL, NULL);
        if (!corpus_open(&arena, argv[i], &lines)) {
            printf("Bail out! %s cannot be read\n", argv[i]);
            return EXIT_FAILURE;
        }
        for (size_t k = 0; k < lines.count; k++) {
            raise(corpus_text(&arena, &lines.at[k], lines.at[k].written));
        }
        arena_finish(&arena);
    }
    for (size_t i = 0; i < sizeof texts / sizeof *texts; i++) {
        raise(str_of(texts[i]));
    }
    raise_limits();
    raise(STR("PNG\0\0\0\1\2\3")); /* a picture is no text */
    for (size_t i = 0; i < sizeof elsewhere / sizeof *elsewhere; i++) {
        raised[elsewhere[i]] = true;
    }
    for (size_t i = 0; i < DIAG_COUNT; i++) {
        struct str id = str_of(diag_rows[i].id);
        if (str_starts(id, "text.") || str_starts(id, "play.")) {
            count++;
            failed += !raised[i];
            printf("%sok %zu - %s is raised\n", raised[i] ? "" : "not ", count, diag_rows[i].id);
        }
    }
    printf("1..%zu\n", count);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
