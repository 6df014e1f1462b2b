/* SPDX-License-Identifier: MIT */
/* chars: see chars.h. */
#include "language/syntax/chars.h"

#include <string.h>

/* The bytes of one well-formed character, or 0: overlong forms, surrogates and what lies beyond
 * U+10FFFF are broken. */
static unsigned decode(const char *at, const char *end, uint32_t *code)
{
    unsigned char first = (unsigned char)*at;
    unsigned size = first >= 0xF0 ? 4 : first >= 0xE0 ? 3 : first >= 0xC0 ? 2 : 0;
    static const uint32_t least[5] = {0, 0, 0x80, 0x800, 0x10000};
    if (size == 0 || first > 0xF4 || (size_t)(end - at) < size) {
        return 0;
    }
    uint32_t value = first & (0xFFu >> (size + 1));
    for (unsigned i = 1; i < size; i++) {
        unsigned char next = (unsigned char)at[i];
        if ((next & 0xC0) != 0x80) {
            return 0;
        }
        value = value << 6 | (next & 0x3F);
    }
    if (value < least[size] || value > 0x10FFFF || (value >= 0xD800 && value <= 0xDFFF)) {
        return 0;
    }
    *code = value;
    return size;
}

static bool is_space(uint32_t code)
{
    return code == '\t' || code == 0xA0 || (code >= 0x2000 && code <= 0x200A) || code == 0x202F ||
           code == 0x205F || code == 0x3000 ||
           code == 0xFEFF; /* a byte-order mark, also where files were put together */
}

static bool is_quote(uint32_t code)
{
    return (code >= 0x201C && code <= 0x201F) || code == 0xAB || code == 0xBB;
}

static bool is_dash(uint32_t code)
{
    return (code >= 0x2010 && code <= 0x2015) || code == 0x2212 || code == 0xFE63 || code == 0xFF0D;
}

static bool is_apostrophe(uint32_t code)
{
    return code == 0x2018 || code == 0x2019 || code == 0x201B || code == 0x2032 || code == 0xB4 ||
           code == 0x2BC;
}

/* Two of those that are not seen turn round all that follows them, also behind a title; and some
 * codes are no letters and never will be (Unicode, noncharacters). */
static bool is_control(uint32_t code)
{
    return (code < 0x20 && code != '\t') || (code >= 0x7F && code <= 0x9F) || code == 0x2028 ||
           code == 0x2029 || code == 0x202D || code == 0x202E || (code & 0xFFFE) == 0xFFFE ||
           (code >= 0xFDD0 && code <= 0xFDEF);
}

static bool is_hidden(uint32_t code)
{
    return (code >= 0x200B && code <= 0x200F) || (code >= 0x202A && code <= 0x202C) ||
           (code >= 0x2060 && code <= 0x2069) || code == 0xAD || code == 0x61C;
}

static bool is_arrow(uint32_t code)
{
    return code == 0x2192 || code == 0x21D2 || code == 0x21E8 || code == 0x27F6 ||
           (code >= 0x2794 && code <= 0x27BE) || code == 0x2B95;
}

static uint32_t meaning(uint32_t code)
{
    return is_space(code)        ? ' '
           : is_quote(code)      ? '"'
           : is_dash(code)       ? '-'
           : is_apostrophe(code) ? '\''
           : code == 0x2026      ? '.'
           : is_arrow(code)      ? '>'
                                 : code;
}

struct letter letter_read_wide(const char *at, const char *end)
{
    unsigned char first = (unsigned char)*at;
    if (first < 0x80) {
        return (struct letter){first == '\t' ? ' ' : first, first, 1,
                               is_control(first) ? CHAR_CONTROL : CHAR_FINE};
    }
    struct letter letter = {.code = 0xFFFD, .raw = 0xFFFD, .size = 1, .fault = CHAR_BROKEN};
    unsigned size = decode(at, end, &letter.raw);
    if (size > 0) {
        letter.size = size;
        letter.code = meaning(letter.raw);
        letter.fault = is_control(letter.raw)  ? CHAR_CONTROL
                       : is_hidden(letter.raw) ? CHAR_HIDDEN
                                               : CHAR_FINE;
    }
    return letter;
}

/* Capitals of ASCII and of the western European letters, whose small forms lie 32 behind them. */
static bool is_capital(uint32_t code)
{
    return (code >= 'A' && code <= 'Z') || (code >= 0xC0 && code <= 0xDE && code != 0xD7);
}

static void put_lower(struct strbuf *out, struct letter letter, const char *at)
{
    if (is_capital(letter.raw)) {
        if (letter.raw < 0x80) {
            strbuf_char(out, (char)(letter.raw + 32));
        } else {
            char two[2] = {at[0], (char)(at[1] + 32)};
            strbuf_add(out, (struct str){two, 2});
        }
    } else if (letter.code != letter.raw && letter.code < 0x80) {
        strbuf_char(out, (char)letter.code);
    } else {
        strbuf_add(out, (struct str){at, letter.size});
    }
}

struct str text_lower(struct arena *arena, struct str s)
{
    const char *end = s.at + s.size;
    bool changes = false;
    const char *from = s.at;
    while (from < end && ((*from >= 'a' && *from <= 'z') || (*from >= ' ' && *from < 'A'))) {
        from++; /* mostly to the end */
    }
    for (const char *at = from; at < end && !changes;) {
        struct letter letter = letter_read(at, end);
        changes = is_capital(letter.raw) || letter.code != letter.raw;
        at += letter.size;
    }
    if (!changes) {
        return s;
    }
    struct strbuf out;
    strbuf_init(&out, arena);
    for (const char *at = s.at; at < end;) {
        struct letter letter = letter_read(at, end);
        put_lower(&out, letter, at);
        at += letter.size;
    }
    return strbuf_str(&out);
}

static bool needs_cleaning(struct str s, bool quoted)
{
    const char *end = s.at + s.size;
    bool space = false;
    for (const char *at = s.at; at < end;) {
        struct letter letter = letter_read(at, end);
        bool again = space && letter.code == ' ';
        space = letter.code == ' ';
        if (letter.fault == CHAR_BROKEN || letter.fault == CHAR_CONTROL || letter.raw == '\t' ||
            (quoted ? letter.raw == '\\' : again)) {
            return true;
        }
        at += letter.size;
    }
    return false;
}

void text_quote(struct strbuf *out, struct str text)
{
    strbuf_char(out, '"');
    const char *end = text.at + text.size;
    for (const char *at = text.at; at < end;) {
        struct letter letter = letter_read(at, end);
        if (letter.code == '"' || letter.raw == '\\') {
            strbuf_char(out, '\\');
        }
        strbuf_add(out, (struct str){at, letter.size});
        at += letter.size;
    }
    strbuf_char(out, '"');
}

bool text_is_blank(struct str text)
{
    for (size_t i = 0; i < text.size; i++) {
        if (text.at[i] != ' ') {
            return false;
        }
    }
    return true;
}

struct str text_clean(struct arena *arena, struct str s, bool quoted)
{
    if (!needs_cleaning(s, quoted)) {
        return s;
    }
    const char *end = s.at + s.size;
    struct strbuf out;
    strbuf_init(&out, arena);
    bool space = false;
    for (const char *at = s.at; at < end;) {
        struct letter letter = letter_read(at, end);
        if (quoted && letter.raw == '\\' && at + 1 < end) {
            struct letter next = letter_read(at + 1, end);
            if (next.code == '"' || next.raw == '\\') {
                at++;
                letter = next;
            }
        }
        bool again = !quoted && space && letter.code == ' ';
        space = letter.code == ' ';
        if (letter.fault == CHAR_BROKEN || letter.fault == CHAR_CONTROL) {
            strbuf_char(&out, '?');
        } else if (letter.raw == '\t') {
            strbuf_text(&out, again ? "" : " ");
        } else if (!again) {
            strbuf_add(&out, (struct str){at, letter.size});
        }
        at += letter.size;
    }
    return strbuf_str(&out);
}

static inline unsigned is_odd(char letter)
{
    unsigned char c = (unsigned char)letter;
    return (unsigned)(c >= 0x7F) | (unsigned)((c < ' ') & (c != '\n') & (c != '\r') & (c != '\t'));
}

bool text_is_plain(struct str s)
{
    enum { BLOCK = 64 }; /* of a fixed size the compiler looks at many letters at once */
    unsigned odd = 0;
    size_t i = 0;
    for (; i + BLOCK <= s.size; i += BLOCK) {
        unsigned char any = 0;
        for (size_t k = 0; k < BLOCK; k++) {
            any |= (unsigned char)is_odd(s.at[i + k]);
        }
        odd |= any;
    }
    for (; i < s.size; i++) {
        odd |= is_odd(s.at[i]);
    }
    return odd == 0;
}

bool text_is_text(struct str s)
{
    if (s.size > 0 && memchr(s.at, '\0', s.size)) {
        return false;
    }
    size_t faults = 0;
    const char *end = s.at + s.size;
    for (const char *at = s.at; at < end;) {
        struct letter letter = letter_read(at, end);
        bool line_end = letter.raw == '\n' || letter.raw == '\r';
        faults += letter.fault == CHAR_BROKEN || (letter.fault == CHAR_CONTROL && !line_end);
        at += letter.size;
    }
    return faults * 4 <= s.size; /* a quarter and more is another encoding, or a picture */
}
