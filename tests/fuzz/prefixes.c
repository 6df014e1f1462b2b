/* SPDX-License-Identifier: MIT */
/* prefixes: what an editor asks, asked of the beginnings of every file named, as if it were being
 * typed: after each STEP bytes, and of the whole, what the pieces are and what became of the
 * sentences; now and then and at a line's end also what the word there means and what could stand
 * there. Nothing may crash; every place must lie in the text; pieces lie one behind the other; a
 * completion must put its words where it says. Prints TAP. Usage: prefixes STEP FILE... */
#include <courtwright/courtwright.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { STRIDE = 23 }; /* bytes: how often all is asked */

struct typed { /* what stands there, and what was wrong with an answer */
    const char *text;
    size_t size, last, answers;
    const char *wrong;
};

static void hold(struct typed *typed, bool good, const char *what)
{
    typed->answers++;
    typed->wrong = good || typed->wrong ? typed->wrong : what;
}

static bool token(void *ctx, const struct courtwright_token *given)
{
    struct typed *typed = ctx;
    hold(typed, typed->last <= given->begin, "a piece begins before the end of another");
    hold(typed, given->begin < given->end && given->end <= typed->size,
         "a piece is out of the text");
    hold(typed, courtwright_class_name(given->kind) != NULL, "a piece has no class");
    typed->last = given->end;
    return true;
}

static bool sentence(void *ctx, const struct courtwright_sentence *given)
{
    struct typed *typed = ctx;
    bool inside = given->begin < given->end && given->end <= typed->size;
    hold(typed, inside && *given->tidy, "a sentence is out of the text, or has no form");
    hold(typed, given->line >= 1 && (given->tasks > 0 || given->diagram_count == 0),
         "a sentence is drawn and became nothing");
    for (size_t i = 0; i < given->tie_count; i++) {
        hold(typed, given->ties[i].end <= typed->size && *given->ties[i].moment,
             "a tie is out of the text");
    }
    return true;
}

static bool completion(void *ctx, const struct courtwright_completion *given)
{
    struct typed *typed = ctx;
    hold(typed, given->begin <= given->end && given->end <= typed->size && *given->text,
         "a completion is out of the text, or empty");
    return true;
}

static bool hover(void *ctx, const struct courtwright_hover *given)
{
    struct typed *typed = ctx;
    hold(typed, given->begin < given->end && given->end <= typed->size && *given->title,
         "a word is out of the text, or has no name");
    return true;
}

static bool answered(enum courtwright_status status)
{
    return status == COURTWRIGHT_OK || status == COURTWRIGHT_NO_SUCH;
}

static void ask(struct typed *typed, bool all)
{
    const char *text = typed->text;
    size_t size = typed->size;
    typed->last = 0;
    hold(typed, courtwright_tokens(text, size, NULL, token, typed) == COURTWRIGHT_OK, "tokens");
    hold(typed,
         courtwright_sentences("typed.play", text, size, NULL, sentence, typed) == COURTWRIGHT_OK,
         "sentences");
    if (all) {
        hold(typed, answered(courtwright_hover("typed.play", text, size, size, NULL, hover, typed)),
             "hover");
        hold(typed,
             courtwright_complete("typed.play", text, size, size, NULL, completion, typed) ==
                 COURTWRIGHT_OK,
             "complete");
    }
}

/* Each beginning is a block of its own, so that a byte read behind it is caught. */
static const char *type(const char *text, size_t size, size_t step, size_t *answers)
{
    const char *wrong = NULL;
    for (size_t i = 0; i <= size && !wrong; i = i < size && size - i < step ? size : i + step) {
        char *own = malloc(i ? i : 1);
        if (!own) {
            return "memory";
        }
        memcpy(own, text, i);
        struct typed typed = {.text = own, .size = i};
        ask(&typed, i % STRIDE == 0 || i == size || text[i] == '\n');
        *answers += typed.answers;
        wrong = typed.wrong;
        free(own);
    }
    return wrong;
}

int main(int argc, char **argv)
{
    static char text[1 << 16];
    size_t step = argc > 2 ? (size_t)strtoul(argv[1], NULL, 10) : 0;
    int failed = 0;
    if (step == 0) {
        fputs("usage: prefixes STEP FILE...\n", stderr);
        return 2;
    }
    printf("1..%d\n", argc - 2);
    for (int i = 2; i < argc; i++) {
        FILE *file = fopen(argv[i], "rb");
        size_t size = file ? fread(text, 1, sizeof text, file) : 0, answers = 0;
        const char *wrong = file ? type(text, size, step, &answers) : "it cannot be read";
        bool good = !wrong && answers > size / step;
        if (file) {
            fclose(file);
        }
        failed += !good;
        printf("%s %d - beginnings of %s\n", good ? "ok" : "not ok", i - 1, argv[i]);
        printf("# %zu bytes, %zu answers%s%s\n", size, answers, wrong ? ": " : "",
               wrong ? wrong : "");
        fflush(stdout);
    }
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
