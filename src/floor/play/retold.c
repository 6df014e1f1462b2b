/* SPDX-License-Identifier: MIT */
/* retold: a coach's note in the voice of a repeat or a mirror. Takes the note's own words and who
 * plays the part of whom; gives them with the players and sides of that voice, or the words that
 * may be a player, a side, or neither. Knows nothing of the floor. */
#include "floor/play/resolve.h"

enum group { COUNTS, NAMES, NUMBERS, SHOTS, LOOKS, SIDES, PLACES, SPEECH };

static const struct {
    enum group group;
    const char *word;
} words[] = {
#define WORD(group, word) {group, word},
#include "floor/play/retold.def"
#undef WORD
};

static bool is_in(enum group group, struct str word)
{
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        if (words[i].group == group && str_equal_fold(word, str_of(words[i].word))) {
            return true;
        }
    }
    return false;
}

/* ---- pieces of the text ---- */

#define DASH 0xE2 /* first byte of typographic dashes and quotes in UTF-8 */

static bool in_word(char c)
{
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           ((unsigned char)c & 0x80 && (unsigned char)c != DASH);
}

/* The letters and digits from `at` on; empty when none begins there. */
static struct str word_at(struct str text, size_t at)
{
    size_t end = at;
    while (end < text.size && in_word(text.at[end])) {
        end++;
    }
    return (struct str){text.at + at, end - at};
}

/* The next word with only blanks between; empty at a mark or the end. */
static struct str word_behind(struct str text, size_t end)
{
    size_t at = end;
    while (at < text.size && text.at[at] == ' ') {
        at++;
    }
    return at > end ? word_at(text, at) : (struct str){"", 0};
}

static struct str word_before(struct str text, size_t begin)
{
    size_t end = begin;
    while (end > 0 && text.at[end - 1] == ' ') {
        end--;
    }
    size_t at = end;
    while (end < begin && at > 0 && in_word(text.at[at - 1])) {
        at--;
    }
    return (struct str){text.at + at, end - at};
}

static size_t offset(struct str text, struct str word)
{
    return (size_t)(word.at - text.at);
}

/* 1 to 5, for "3" and "x3"; else 0. */
static int player_of(struct str word, bool *defends)
{
    *defends = word.size == 2 && (word.at[0] == 'x' || word.at[0] == 'X');
    char digit = word.size == 1 || *defends ? word.at[word.size - 1] : '0';
    return digit >= '1' && digit <= '0' + LIMIT_ATTACKERS ? digit - '0' : 0;
}

/* ---- what a word is ---- */

enum sense { OTHER, MEANT, UNSURE };

/* 2-on-1, 1.5, 5:00, 3%, 1/2, #4: part of something longer. */
static bool is_bound(struct str text, size_t begin, size_t end)
{
    char before = begin > 0 ? text.at[begin - 1] : ' ';
    char behind = end < text.size ? text.at[end] : ' ';
    char next = end + 1 < text.size ? text.at[end + 1] : ' ';
    bool digit = next >= '0' && next <= '9';
    bool past = begin > 1 && text.at[begin - 2] >= '0' && text.at[begin - 2] <= '9';
    return strchr("-/#+$", before) || strchr("-/%+", behind) || (strchr(".:", behind) && digit) ||
           (strchr(".:", before) && past);
}

static enum sense sense_of_player(struct str text, struct str word);

/* `2 or 3 steps`, `1 and 4 screen`: as the one behind it. */
static enum sense sense_of_first(struct str text, struct str joint)
{
    static const char *const joints[] = {"and", "or", "to"};
    for (size_t i = 0; i < sizeof joints / sizeof *joints; i++) {
        if (str_equal_fold(joint, str_of(joints[i]))) {
            struct str next = word_behind(text, offset(text, joint) + joint.size);
            bool defends;
            return player_of(next, &defends) && !defends ? sense_of_player(text, next) : MEANT;
        }
    }
    return MEANT;
}

static enum sense sense_before(struct str text, struct str word)
{
    struct str before = word_before(text, offset(text, word));
    if (is_in(NUMBERS, before)) {
        return OTHER;
    }
    if (str_equal_fold(before, STR("on"))) { /* 2 on 1; but a screen on 1 */
        struct str far = word_before(text, offset(text, before));
        bool defends;
        return player_of(far, &defends) && !defends ? OTHER : MEANT;
    }
    if (!is_in(SHOTS, before)) {
        return MEANT;
    }
    bool looks =
        str_equal_fold(before, STR("for")) && is_in(LOOKS, word_before(text, offset(text, before)));
    return looks ? MEANT : UNSURE;
}

/* The typographic apostrophe. */
static bool owns_at(struct str text, size_t at)
{
    return at + 3 <= text.size && memcmp(text.at + at, "\xE2\x80\x99", 3) == 0;
}

static enum sense sense_of_player(struct str text, struct str word)
{
    size_t end = offset(text, word) + word.size;
    if (is_bound(text, offset(text, word), end)) {
        return OTHER;
    }
    struct str behind = word_behind(text, end);
    if (end < text.size && (text.at[end] == '\'' || owns_at(text, end))) {
        return MEANT;
    }
    if (end < text.size && (unsigned char)text.at[end] == DASH) {
        return UNSURE; /* 2 to 3 seconds, with a dash */
    }
    if (is_in(COUNTS, behind)) {
        return OTHER;
    }
    if (behind.size > 0 && !is_in(NAMES, behind)) {
        return UNSURE;
    }
    enum sense sense = sense_before(text, word);
    return sense == MEANT ? sense_of_first(text, behind) : sense;
}

static enum sense sense_of_side(struct str text, struct str word)
{
    size_t end = offset(text, word) + word.size;
    if (end < text.size && text.at[end] == '-') { /* left-hand, right-handed */
        struct str bound = word_at(text, end + 1);
        return str_starts(bound, "hand") || is_in(SIDES, bound) ? MEANT : UNSURE;
    }
    struct str behind = word_behind(text, end);
    if (is_in(SIDES, behind)) {
        return MEANT;
    }
    if (is_in(SPEECH, behind)) {
        return OTHER;
    }
    if (is_in(PLACES, word_before(text, offset(text, word)))) {
        return behind.size == 0 || is_in(NAMES, behind) ? MEANT : UNSURE;
    }
    return UNSURE;
}

/* ---- said again ---- */

static bool is_plain(const struct voice *voice)
{
    for (int i = 1; i <= LIMIT_ATTACKERS; i++) {
        if (voice->number[i] != i) {
            return false;
        }
    }
    return !voice->mirrored;
}

/* Capitals as the word had them. */
static void add_side(struct strbuf *out, struct str word, bool left)
{
    const char *other = left ? "right" : "left";
    for (size_t i = 0; other[i]; i++) {
        bool capital = word.at[i == 0 ? 0 : 1] <= 'Z';
        strbuf_char(out, (char)(capital ? other[i] - 'a' + 'A' : other[i]));
    }
}

/* A word of the note, as this voice has it; what it may mean goes to `*sense`. */
static void add_word(struct strbuf *out, struct str text, struct str word,
                     const struct voice *voice, enum sense *sense)
{
    bool defends, left = str_equal_fold(word, STR("left"));
    int player = player_of(word, &defends);
    if (player && voice->number[player] != player) {
        *sense = defends ? MEANT : sense_of_player(text, word);
        if (*sense == MEANT) {
            strbuf_print(out, "%.*s%d", (int)(word.size - 1), word.at, voice->number[player]);
            return;
        }
    } else if (voice->mirrored && (left || str_equal_fold(word, STR("right")))) {
        *sense = sense_of_side(text, word);
        if (*sense == MEANT) {
            add_side(out, word, left);
            return;
        }
    }
    strbuf_add(out, word);
}

bool retold_note(struct maker *m, struct str text, const struct voice *voice, struct str *out,
                 struct str *unsure)
{
    *out = text;
    if (is_plain(voice)) {
        return true;
    }
    struct strbuf told;
    strbuf_init(&told, m->arena);
    for (size_t at = 0; at < text.size;) {
        struct str word = word_at(text, at);
        enum sense sense = OTHER;
        if (word.size == 0) {
            strbuf_char(&told, text.at[at++]);
            continue;
        }
        add_word(&told, text, word, voice, &sense);
        at += word.size;
        if (sense == UNSURE) {
            struct str behind = word_behind(text, at);
            *unsure =
                behind.size
                    ? (struct str){word.at, offset(text, behind) + behind.size - offset(text, word)}
                    : word;
            return false;
        }
    }
    *out = strbuf_str(&told);
    return true;
}
