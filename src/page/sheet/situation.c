/* SPDX-License-Identifier: MIT */
/* situation: see situation.h. Takes a play, gives the word it is grouped by; must not know pages.
 */
#include "page/sheet/situation.h"

struct situation_row {
    const char *word, *tags;
    bool special;
};
enum situation_code {
#define SITUATION(symbol, word, tags, special) SITUATION_##symbol,
#include "page/sheet/situations.def"
#undef SITUATION
    SITUATION_COUNT
};
static const struct situation_row rows[] = {
#define SITUATION(symbol, word, tags, special) {word, tags, special},
#include "page/sheet/situations.def"
#undef SITUATION
};

size_t situation_count(void)
{
    return SITUATION_COUNT;
}

static bool is_among(struct str tag, const char *tags)
{
    struct str rest = str_of(tags);
    while (rest.size > 0) {
        const char *bar = memchr(rest.at, '|', rest.size);
        size_t size = bar ? (size_t)(bar - rest.at) : rest.size;
        if (str_equal_fold(tag, (struct str){rest.at, size})) {
            return true;
        }
        size += bar ? 1 : 0;
        rest.at += size;
        rest.size -= size;
    }
    return false;
}

static enum situation_code code_of(struct str tag)
{
    size_t code = 0;
    while (code < SITUATION_COUNT && !is_among(tag, rows[code].tags)) {
        code++;
    }
    return (enum situation_code)code;
}

struct str situation_tag(struct arena *arena, struct str tag)
{
    enum situation_code code = code_of(tag);
    return code < SITUATION_COUNT ? str_of(rows[code].word) : str_capital(arena, tag);
}

/* Without a tag. */
static enum situation_code code_by_start(const struct play *play)
{
    bool far = false;
    if (play->throw_in && play->ball < BODY_COUNT && play->defense != DEFENSE_PRESS) {
        struct vec2 from = play->start[play->ball].at;
        bool aside = (from.x < 0 ? -from.x : from.x) > play->court->half_width;
        far = !aside && from.y > play->court->half_court;
        if (!far) {
            return aside ? SITUATION_SIDELINE : SITUATION_BASELINE;
        }
    }
    if (play->clock > 0) {
        return SITUATION_LATE;
    }
    if (far) { /* from under the other basket, with all the floor to go */
        return SITUATION_PRESS;
    }
    switch (play->defense) {
    case DEFENSE_MAN:
        return SITUATION_MAN;
    case DEFENSE_ZONE:
    case DEFENSE_BOX_AND_ONE:
    case DEFENSE_TRIANGLE_AND_TWO:
        return SITUATION_ZONE;
    case DEFENSE_PRESS:
        return SITUATION_PRESS;
    case DEFENSE_NONE:
        break;
    }
    return SITUATION_COUNT;
}

/* "Late clock, man": all of its tags that are ours, the special ones first, so that who looks for
 * any of them sees it. */
static struct str all_words(struct arena *arena, const struct play *play)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    unsigned seen = 0;
    for (size_t i = 0; i < 2 * play->tags.count; i++) {
        bool special = i < play->tags.count;
        enum situation_code code = code_of(play->tags.at[i % play->tags.count]);
        if (code == SITUATION_COUNT || rows[code].special != special || seen >> code & 1) {
            continue;
        }
        struct str word = str_of(rows[code].word);
        if (seen) {
            strbuf_print(&out, ", %c%.*s", word.at[0] - 'A' + 'a', (int)word.size - 1, word.at + 1);
        } else {
            strbuf_add(&out, word);
        }
        seen |= 1u << code;
    }
    return strbuf_str(&out);
}

/* The first of its tags that is none of ours. */
static struct str own_tag(const struct play *play)
{
    for (size_t i = 0; i < play->tags.count; i++) {
        if (code_of(play->tags.at[i]) == SITUATION_COUNT) {
            return play->tags.at[i];
        }
    }
    return STR("");
}

/* The first of its tags that is one of ours, special or general; SITUATION_COUNT: none. */
static enum situation_code first_code(const struct play *play, bool special)
{
    for (size_t i = 0; i < play->tags.count; i++) {
        enum situation_code code = code_of(play->tags.at[i]);
        if (code < SITUATION_COUNT && rows[code].special == special) {
            return code;
        }
    }
    return SITUATION_COUNT;
}

struct situation situation_of(struct arena *arena, const struct play *play)
{
    enum situation_code code = first_code(play, true);
    struct str words = all_words(arena, play);
    if (code < SITUATION_COUNT) {
        return (struct situation){code, words};
    }
    struct str own = own_tag(play);
    if (own.size > 0) {
        return (struct situation){SITUATION_COUNT, str_capital(arena, own)};
    }
    if (words.size > 0) {
        return (struct situation){first_code(play, false), words};
    }
    code = code_by_start(play);
    words = code < SITUATION_COUNT ? str_of(rows[code].word)
            : play->is_drill       ? STR("Drills")
                                   : STR("Other plays");
    return (struct situation){code, words};
}
