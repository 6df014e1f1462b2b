/* SPDX-License-Identifier: MIT */
/* opener: what the first word makes of a line. */
#include "language/words/reader.h"
#include "language/words/vocabulary.h"

static const struct {
    const char *word;
    struct opener opener;
} openers[] = {
#define OPENER(word, kind, which) {word, {kind, which}},
#include "language/words/openers.def"
#undef OPENER
#define SETTING(symbol, word, where) {word, {LINE_SETTING, SETTING_##symbol}},
#include "language/words/settings.def"
#undef SETTING
    {"defence", {LINE_SETTING, SETTING_DEFENSE}},
};
enum { OPENER_COUNT = sizeof openers / sizeof openers[0] };

/* number three passes: a player, and no number of the play. */
static bool number_acts(const struct line *line, size_t token)
{
    return str_is(line->tokens[token].text, "number") && token + 2 < line->count &&
           line->tokens[token + 1].kind == TOKEN_NUMBER &&
           line->tokens[token + 2].kind == TOKEN_WORD;
}

/* ball goes 1 to 2, ball screen by 5: what happens, and not who has it at first. */
static bool ball_acts(const struct line *line, size_t token)
{
    static const char *const words[] = {"goes",   "moves", "swings",   "comes", "travels", "from",
                                        "screen", "fake",  "reversal", "→",     "⇒",       NULL};
    bool ball = str_is(line->tokens[token].text, "ball") && token + 1 < line->count;
    if (ball && token_is_mark(&line->tokens[token + 1], '>')) { /* ball > 4, as arrows are folded */
        return true;
    }
    for (const char *const *word = words; ball && *word; word++) {
        if (str_is(line->tokens[token + 1].text, *word)) {
            return true;
        }
    }
    return false;
}

/* same time 3 cuts: together with what stands above. */
static bool same_time(const struct line *line, size_t token)
{
    return str_is(line->tokens[token].text, "same") && token + 1 < line->count &&
           str_is(line->tokens[token + 1].text, "time");
}

/* step-up by 5: a screen, and no step. */
static bool step_up(const struct line *line, size_t token)
{
    size_t next = token + 1;
    next += next < line->count && token_is_mark(&line->tokens[next], '-');
    return str_is(line->tokens[token].text, "step") && next < line->count &&
           str_is(line->tokens[next].text, "up");
}

/* point guard hits 2: he does something; a note has its text in quotes. */
static bool guard_acts(const struct line *line, size_t token)
{
    return str_is(line->tokens[token].text, "point") && token + 2 < line->count &&
           token_is_word(&line->tokens[token + 1], "guard");
}

struct opener opener_of(const struct line *line, size_t token)
{
    const struct token *word = token < line->count ? &line->tokens[token] : NULL;
    if (!word || word->kind != TOKEN_WORD || word->first == '\0' || word->text.size < 2) {
        return (struct opener){LINE_OTHER, 0};
    }
    struct index_rows rows = index_of(INDEX_OPENERS, word->first, word->text.at[1]);
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        if (str_is(word->text, openers[*row].word)) {
            bool acts = guard_acts(line, token) || number_acts(line, token) ||
                        ball_acts(line, token) || same_time(line, token) || step_up(line, token);
            return acts ? (struct opener){LINE_OTHER, 0} : openers[*row].opener;
        }
    }
    return (struct opener){LINE_OTHER, 0};
}

const char *opener_nearest(const struct line *line)
{
    if (line->count == 0 || line->tokens[0].kind != TOKEN_WORD || line->tokens[0].possessive) {
        return NULL;
    }
    const char *words[OPENER_COUNT + 1];
    for (size_t i = 0; i < OPENER_COUNT; i++) {
        words[i] = openers[i].word;
    }
    words[OPENER_COUNT] = NULL;
    return words_nearest(line->tokens[0].text, words);
}

static const struct {
    const char *word, *where;
} settings[SETTING_COUNT] = {
#define SETTING(symbol, word, where) [SETTING_##symbol] = {word, where},
#include "language/words/settings.def"
#undef SETTING
};

bool setting_stands(enum setting setting, char where)
{
    for (const char *letter = settings[setting].where; *letter; letter++) {
        if (*letter == where) {
            return true;
        }
    }
    return false;
}

const char *setting_word(enum setting setting)
{
    return settings[setting].word;
}

static const struct {
    enum setting setting;
    const char *word;
} choices[] = {
#define CHOICE(setting, word, what) {SETTING_##setting, word},
#include "language/words/choices.def"
#undef CHOICE
};
enum { CHOICE_COUNT = sizeof choices / sizeof choices[0] };

const char *choice_word(enum setting setting, size_t index)
{
    for (size_t i = 0; i < CHOICE_COUNT; i++) {
        if (choices[i].setting == setting && index-- == 0) {
            return choices[i].word;
        }
    }
    return NULL;
}

size_t choice_count(enum setting setting)
{
    size_t count = 0;
    while (choice_word(setting, count)) {
        count++;
    }
    return count;
}
