/* SPDX-License-Identifier: MIT */
/* libFuzzer on what an editor asks: whatever the bytes and wherever the place, pieces lie in the
 * text one behind the other, every answer lies in the text, and what is offered was not refused.
 * Built as fuzz_words is; the first two bytes say where the place is.
 *
 *   ninja -C build-fuzz tests/fuzz/fuzz_edit
 *   build-fuzz/tests/fuzz/fuzz_edit -max_len=400 CORPUS tests/golden/words examples/topics */
#include <stdio.h>
#include <stdlib.h>

#include "language/edit/edit.h"

int LLVMFuzzerTestOneInput(const unsigned char *bytes, size_t size);

static void hold(bool good, const char *what, struct str text)
{
    if (!good) {
        fprintf(stderr, "%s\n<<%.*s>>\n", what, STR_ARG(text));
        abort();
    }
}

static void check_tokens(const struct edit_text *edit, struct str text)
{
    edit_token_list tokens = {0};
    uint32_t last = 0;
    edit_tokens(edit, &tokens);
    for (size_t i = 0; i < tokens.count; i++) {
        const struct edit_token *token = &tokens.at[i];
        hold(token->begin >= last && token->begin < token->end && token->end <= text.size,
             "a piece is out of its place", text);
        last = token->end;
    }
}

static void check_place(const struct edit_text *edit, struct str text, uint32_t at)
{
    struct edit_word word;
    edit_offer_list offers = {0};
    if (edit_word_at(edit, at, &word)) {
        hold(word.begin <= at && at <= word.end && word.end <= text.size,
             "a word is not where it was asked for", text);
    }
    edit_complete(edit, at, NULL, &offers);
    for (size_t i = 0; i < offers.count; i++) {
        const struct edit_offer *offer = &offers.at[i];
        hold(offer->begin <= offer->end && offer->end <= at && offer->text.size > 0,
             "an offer is out of its place", text);
    }
}

static void check_sentences(const struct edit_text *edit, struct str text)
{
    edit_sentence_list sentences = {0};
    edit_sentences(edit, STR("fuzz"), &sentences);
    for (size_t i = 0; i < sentences.count; i++) {
        const struct edit_sentence *sentence = &sentences.at[i];
        hold(sentence->span.begin < sentence->span.end && sentence->span.end <= text.size &&
                 sentence->tidy.size > 0 && (sentence->tasks > 0 || sentence->diagrams.count == 0),
             "a sentence is out of its place", text);
    }
}

static void check(struct arena *arena, struct str text, uint32_t at)
{
    struct sources sources;
    sources_init(&sources, arena);
    struct edit_text edit = {arena, &sources, sources_add(&sources, STR("fuzz.play"), text), NULL};
    check_tokens(&edit, text);
    check_place(&edit, text, at);
    check_sentences(&edit, text);
}

int LLVMFuzzerTestOneInput(const unsigned char *bytes, size_t size)
{
    jmp_buf escape;
    struct arena arena;
    if (size < 2) {
        return 0;
    }
    struct str text = {(const char *)bytes + 2, size - 2};
    uint32_t at = (uint32_t)((bytes[0] * 256u + bytes[1]) % size);
    arena_init(&arena, NULL, &escape);
    if (setjmp(escape) == 0) {
        check(&arena, text, at);
    }
    arena_finish(&arena);
    return 0;
}
