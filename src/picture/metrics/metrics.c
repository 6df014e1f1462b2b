/* SPDX-License-Identifier: MIT */
/* metrics: widths of words from the advance table. Takes text, gives numbers; must not know what
 * the words are for, nor any font library. */
#include "picture/metrics/metrics.h"

#include "picture/metrics/advances.h"

#include <assert.h>

enum { REPLACEMENT = 0xFFFD };

/* How many bytes a letter has that starts with this one; 0: none can start so. */
static size_t letter_size(unsigned char lead)
{
    if (lead < 0x80) {
        return 1;
    }
    if (lead >= 0xC2 && lead < 0xE0) {
        return 2;
    }
    if (lead >= 0xE0 && lead < 0xF0) {
        return 3;
    }
    return lead >= 0xF0 && lead < 0xF5 ? 4 : 0;
}

static bool letter_allowed(unsigned letter, size_t size)
{
    static const unsigned least[] = {0, 0, 0x80, 0x800, 0x10000};
    return letter >= least[size] && letter <= 0x10FFFF && (letter < 0xD800 || letter > 0xDFFF);
}

unsigned metrics_letter(struct str *rest)
{
    assert(rest->size > 0);
    const unsigned char *at = (const unsigned char *)rest->at;
    size_t size = letter_size(at[0]);
    unsigned letter = size > 1 ? at[0] & (0x7Fu >> size) : at[0];
    bool whole = size > 0 && size <= rest->size;
    for (size_t i = 1; whole && i < size; i++) {
        whole = (at[i] & 0xC0) == 0x80;
        letter = letter << 6 | (at[i] & 0x3F);
    }
    if (!whole || !letter_allowed(letter, size)) {
        letter = REPLACEMENT;
        size = 1;
    }
    rest->at += size;
    rest->size -= size;
    return letter;
}

/* In units of the em. */
static unsigned letter_width(enum face face, unsigned letter)
{
    size_t low = 0;
    size_t high = advances_count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (advances[middle].letter < letter) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    if (low < advances_count && advances[low].letter == letter) {
        return advances[low].width[face];
    }
    return advances_em;
}

double metrics_width(enum face face, double size, struct str text)
{
    unsigned long sum = 0;
    while (text.size > 0) {
        sum += letter_width(face, metrics_letter(&text));
    }
    return size * (double)sum / (double)advances_em;
}

int metrics_weight(enum face face)
{
    static const int weights[FACE_COUNT] = {400, 500, 600, 700, 800};
    assert(face < FACE_COUNT);
    return weights[face];
}
