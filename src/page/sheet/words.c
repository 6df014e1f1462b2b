/* SPDX-License-Identifier: MIT */
/* words: text for paper. Takes plays and told sentences, gives blocks and phrases; must not know
 * where they stand on a page. */
#include "page/sheet/words.h"

#include "base/limits.h"
#include "base/rng.h"
#include "language/tell/tell.h"

struct type_row {
    double size, leading, spacing;
    enum face plain, bold;
};

static const struct type_row types[TYPE_COUNT] = {
    [TYPE_TITLE] = {24, 28, -0.35, FACE_BOLD, FACE_BOLD},
    [TYPE_LONG_TITLE] = {18, 22, -0.2, FACE_BOLD, FACE_BOLD},
    [TYPE_LONGEST_TITLE] = {14, 17, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SERIES] = {11, 14, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_CLOCK] = {10.5, 14.5, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_ABOUT] = {10.5, 14.5, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_HEADING] = {11, 14, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SMALL_HEADING] = {9.5, 12, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SENTENCE] = {9.5, 12.6, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_LARGE_SENTENCE] = {11, 14.6, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_JOB] = {9.5, 13, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_POINT] = {9, 12, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_OTHERS] = {8.5, 11.5, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_ASKED] = {9, 11.8, 0, FACE_MEDIUM, FACE_BOLD},
    [TYPE_NOTE] = {8, 11, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_CLUB] = {8, 11, 0.6, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_COVER] = {56, 60, -1.2, FACE_BOLD, FACE_BOLD},
    [TYPE_LONG_COVER] = {36, 42, -0.6, FACE_BOLD, FACE_BOLD},
    [TYPE_LONGEST_COVER] = {24, 28, -0.35, FACE_BOLD, FACE_BOLD},
    [TYPE_CHAPTER] = {14, 18, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_CALL] = {9, 11, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_CARD_NAME] = {10.5, 12.5, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SMALL_CARD_NAME] = {9, 11, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_DISC] = {8, 10, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
};

double type_leading(enum type type)
{
    return types[type].leading;
}

static const struct text_block *lay_out(const struct setter *setter, enum type type,
                                        struct str text, double width)
{
    const struct type_row *row = &types[type];
    VEC(struct text_piece) pieces = {0};
    bool bold = false;
    size_t begin = 0;
    for (size_t i = 0; i <= text.size; i++) {
        bool mark = i < text.size && (text.at[i] == TELL_BOLD || text.at[i] == TELL_PLAIN);
        if (!mark && i < text.size) {
            continue;
        }
        if (i > begin) {
            struct text_piece piece = {{text.at + begin, i - begin}, bold ? row->bold : row->plain};
            VEC_PUSH(setter->arena, &pieces, piece);
        }
        bold = mark && text.at[i] == TELL_BOLD;
        begin = i + 1;
    }
    struct text_style style = {row->size, row->leading, row->spacing};
    return text_layout(setter->arena, setter->fonts, pieces.at, pieces.count, &style, width);
}

/* ---- words set before ---- */

struct kept_words {
    uint64_t hash;                  /* of text, type and width */
    const struct text_block *block; /* NULL: the place is free */
};

static uint64_t hash_of(enum type type, struct str text, double width)
{
    uint64_t hash = hash_bytes(HASH_SEED, text.at, text.size);
    hash = hash_bytes(hash, &type, sizeof type);
    return hash_bytes(hash, &width, sizeof width);
}

/* Where it stands, or where it may. 64 bits: two texts of a play are not taken for each other. */
static struct kept_words *find_kept(const struct kept *kept, uint64_t hash)
{
    size_t at = (size_t)hash & (kept->room - 1);
    while (kept->words[at].block && kept->words[at].hash != hash) {
        at = (at + 1) & (kept->room - 1);
    }
    return &kept->words[at];
}

static void make_room(struct arena *arena, struct kept *kept)
{
    if (2 * kept->count < kept->room) {
        return;
    }
    struct kept old = *kept;
    kept->room = old.room ? 2 * old.room : 256;
    kept->words = arena_array(arena, struct kept_words, kept->room);
    for (size_t i = 0; i < old.room; i++) {
        if (old.words[i].block) {
            *find_kept(kept, old.words[i].hash) = old.words[i];
        }
    }
}

const struct text_block *words_set(const struct setter *setter, enum type type, struct str text,
                                   double width)
{
    struct kept *kept = setter->kept;
    if (!kept) {
        return lay_out(setter, type, text, width);
    }
    make_room(setter->arena, kept);
    uint64_t hash = hash_of(type, text, width);
    struct kept_words *place = find_kept(kept, hash);
    if (!place->block) {
        *place = (struct kept_words){hash, lay_out(setter, type, text, width)};
        kept->count++;
    }
    return place->block;
}

/* ---- phrases ---- */

/* The blocks of scripts that run to the left: Hebrew, Arabic and their neighbors. */
static bool may_run_left(struct str text)
{
    static const unsigned blocks[][2] = {
        {0x590, 0x8FF}, {0xFB1D, 0xFDFF}, {0xFE70, 0xFEFE}, {0x10800, 0x10FFF}, {0x1E800, 0x1EFFF}};
    while (text.size > 0) {
        unsigned letter = metrics_letter(&text);
        for (size_t i = 0; i < sizeof blocks / sizeof *blocks; i++) {
            if (letter >= blocks[i][0] && letter <= blocks[i][1]) {
                return true;
            }
        }
    }
    return false;
}

struct str words_isolated(struct arena *arena, struct str name)
{
    static const char first_strong_isolate[] = "\xE2\x81\xA8", pop[] = "\xE2\x81\xA9";
    return may_run_left(name)
               ? str_format(arena, "%s%.*s%s", first_strong_isolate, STR_ARG(name), pop)
               : name;
}

struct str words_point(struct arena *arena, const struct point *point, int players)
{
    struct str text = tell_bold(arena, point->text, players);
    return point->player == 0 ? text
                              : str_format(arena, "%c%d%c: %.*s", TELL_BOLD, point->player,
                                           TELL_PLAIN, STR_ARG(words_isolated(arena, text)));
}

struct str words_capitals(struct arena *arena, struct str text)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < text.size; i++) {
        char c = text.at[i];
        bool latin = i > 0 && (unsigned char)text.at[i - 1] == 0xC3;
        unsigned char byte = (unsigned char)c;
        if (c >= 'a' && c <= 'z') {
            c = (char)(c - 32);
        } else if (latin && byte >= 0xA0 && byte <= 0xBE && byte != 0xB7) {
            c = (char)(byte - 32); /* à to þ, but for the division sign */
        }
        strbuf_char(&out, c);
    }
    return strbuf_str(&out);
}

struct str words_sheet(struct arena *arena, const char *sheet, const struct play *play)
{
    if (!play->level_written) {
        return str_of(sheet);
    }
    struct str level = tell_level(arena, play->level);
    return str_format(arena, "%s, %.*s", sheet, STR_ARG(level));
}

struct str words_joined(struct arena *arena, struct str name, struct str what)
{
    const char *comma = name.size > 0 && what.size > 0 ? ", " : "";
    return str_format(arena, "%.*s%s%.*s", STR_ARG(name), comma, STR_ARG(what));
}

struct str words_foot(struct arena *arena, const struct play *play)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_add(&out, words_isolated(arena, play->name));
    if (play->series.size > 0) {
        strbuf_print(&out, ", %.*s", STR_ARG(words_isolated(arena, play->series)));
    }
    if (play->number > 0) {
        strbuf_print(&out, play->series.size > 0 ? " %d" : ", number %d", play->number);
    }
    return strbuf_str(&out);
}

static bool takes(const struct setter *setter, enum type type, struct str text, double width,
                  size_t lines)
{
    return text_lines(words_set(setter, type, text, width)) <= lines;
}

static struct str with_dots(const struct setter *setter, struct str text, size_t size)
{
    return str_format(setter->arena, "%.*s\xE2\x80\xA6", (int)size, text.at);
}

/* Back to the start of a letter. */
static size_t letter_start(struct str text, size_t at)
{
    while (at > 0 && at < text.size && ((unsigned char)text.at[at] & 0xC0) == 0x80) {
        at--;
    }
    return at;
}

struct str words_fit(const struct setter *setter, enum type type, struct str text, double width,
                     size_t lines)
{
    if (takes(setter, type, text, width, lines)) {
        return text;
    }
    size_t size = 0;
    for (size_t over = text.size; over - size > 1;) {
        size_t middle = size + (over - size) / 2;
        struct str tried = with_dots(setter, text, letter_start(text, middle));
        *(takes(setter, type, tried, width, lines) ? &size : &over) = middle;
    }
    size = letter_start(text, size);
    size_t word = size;
    while (word > 0 && text.at[word] != ' ') {
        word--;
    }
    return with_dots(setter, text, word * 2 > size ? word : size);
}
