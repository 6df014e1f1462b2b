/* SPDX-License-Identifier: MIT */
/* edit: what an editor asks at a keystroke, timed: the pieces of a whole text, what may stand at a
 * place and what the word there means, over every line's end of the files named, taken as one text.
 * Milliseconds of the processor's own time; nothing here passes or fails. Usage: edit FILE... */
#include "courtwright/courtwright.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "spent.h"

static char text[1 << 20];
static size_t size, answers;

static bool token(void *ctx, const struct courtwright_token *given)
{
    (void)ctx;
    answers += given->end > given->begin;
    return true;
}

static bool completion(void *ctx, const struct courtwright_completion *given)
{
    (void)ctx;
    answers += *given->text != '\0';
    return true;
}

static bool hover(void *ctx, const struct courtwright_hover *given)
{
    (void)ctx;
    answers += *given->title != '\0';
    return true;
}

static bool sentence(void *ctx, const struct courtwright_sentence *given)
{
    (void)ctx;
    answers += *given->tidy != '\0';
    return true;
}

enum { TOKENS, COMPLETE, HOVER, SENTENCES, QUESTIONS };

static void ask(int question, size_t at)
{
    switch (question) {
    case TOKENS:
        courtwright_tokens(text, size, NULL, token, NULL);
        break;
    case COMPLETE:
        courtwright_complete("book.play", text, size, at, NULL, completion, NULL);
        break;
    case HOVER:
        courtwright_hover("book.play", text, size, at, NULL, hover, NULL);
        break;
    default:
        courtwright_sentences("book.play", text, size, NULL, sentence, NULL);
        break;
    }
}

int main(int argc, char **argv)
{
    static const char *const names[QUESTIONS] = {"tokens", "complete", "hover", "sentences"};
    for (int i = 1; i < argc; i++) {
        FILE *file = fopen(argv[i], "rb");
        if (!file) {
            fprintf(stderr, "%s cannot be read\n", argv[i]);
            return EXIT_FAILURE;
        }
        size += fread(text + size, 1, sizeof text - size, file);
        fclose(file);
    }
    printf("a text of %zu bytes\n", size);
    for (int question = 0; question < QUESTIONS; question++) {
        double all = 0, most = 0;
        int asked = 0;
        for (size_t at = 0; at < size; at++) {
            if (text[at] != '\n' && at + 1 < size) {
                continue;
            }
            double begin = now();
            ask(question, at);
            double spent = (now() - begin) * 1e3;
            all += spent;
            most = spent > most ? spent : most;
            asked++;
        }
        printf("%-10s %8.3f ms each, at most %8.3f\n", names[question], asked ? all / asked : 0,
               most);
    }
    return answers > 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
