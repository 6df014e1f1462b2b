/* SPDX-License-Identifier: MIT */
/* zone_men: a defender of a zone by where he is at home: the top right defender, the bottom guy on
 * the left. He is told with a note, and only where the zone that is set has one such. Knows words,
 * and how the court names a zone's men. */
#include "language/words/grammar.h"

/* How coaches say where, and how the zone's own row has it. */
static const struct {
    const char *said, *row;
} where_words[] = {{"top", "top"},      {"front", "top"}, {"upper", "top"},   {"bottom", "low"},
                   {"low", "low"},      {"back", "low"},  {"lower", "low"},   {"baseline", "low"},
                   {"wing", "wing"},    {"left", "left"}, {"right", "right"}, {"middle", "middle"},
                   {"center", "middle"}};
enum { WHERE_COUNT = sizeof where_words / sizeof *where_words, WHERE_MOST = 3 };

static const char *where_word(const struct token *token)
{
    for (size_t i = 0; token->kind == TOKEN_WORD && !token->possessive && i < WHERE_COUNT; i++) {
        if (token->first == where_words[i].said[0] && token_is_word(token, where_words[i].said)) {
            return where_words[i].row;
        }
    }
    return NULL;
}

/* Its words up to the comma have this one. */
static bool part_has(struct str part, struct str word)
{
    for (size_t at = 0; at + word.size <= part.size; at++) {
        bool begins = at > 0 && part.at[at - 1] == ' ';
        bool ends = at + word.size == part.size || part.at[at + word.size] == ' ';
        if (begins && ends && str_equal((struct str){part.at + at, word.size}, word)) {
            return true;
        }
    }
    return false;
}

/* The one of "x1 left top, x2 right top, ..." who is at home there; 0: none, or more than one. */
static int man_at_home(const char *who, const char *const *where, size_t count)
{
    int found = 0;
    for (const char *at = who; *at == 'x';) {
        size_t size = strcspn(at, ",;");
        bool all = at[1] >= '1' && at[1] <= '5';
        for (size_t i = 0; all && i < count; i++) {
            all = part_has((struct str){at, size}, str_of(where[i]));
        }
        if (all && found) {
            return 0;
        }
        found = all ? at[1] - '0' : found;
        at += size + strspn(at + size, ", ");
    }
    return found;
}

static const struct zone_row *zone_set(const struct cursor *c)
{
    const struct setting_form *defense = setting_of(c->top, SETTING_DEFENSE);
    enum zone zone;
    if (!defense || defense->zone.size == 0) {
        return NULL;
    }
    bool press = defense->defense == DEFENSE_PRESS;
    struct str setting =
        str_format(c->arena, "%s%.*s", press ? "press " : "zone ", STR_ARG(defense->zone));
    return zone_find(setting, &zone) ? zone_row(zone) : NULL;
}

/* The middle one is so in his row, top or bottom. */
static size_t middle_alone(const char **where, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (where[i][0] == 'm') {
            where[0] = where[i];
            return 1;
        }
    }
    return count;
}

bool zone_man_read(struct cursor *c, struct who *out)
{
    static const char *const men[] = {"defender", "man", "guy", "girl", NULL};
    static const char *const sides[] = {"on the", "on", NULL};
    const char *where[WHERE_MOST + 1];
    size_t count = 0;
    const struct token *from = cursor_next(c);
    if (!from || !where_word(from)) {
        return false;
    }
    struct cursor trial = *c;
    for (const char *word;
         count < WHERE_MOST && cursor_next(&trial) && (word = where_word(cursor_next(&trial)));) {
        where[count++] = word;
        trial.at = cursor_next(&trial) + 1;
    }
    const struct token *man = cursor_next(&trial);
    if (!man || man->possessive || !take_among(&trial, men)) {
        return false;
    }
    struct cursor side = trial;
    if (take_among(&side, sides) && cursor_next(&side) &&
        (token_is_word(cursor_next(&side), "left") || token_is_word(cursor_next(&side), "right"))) {
        where[count++] = where_word(cursor_next(&side));
        trial.at = cursor_next(&side) + 1;
    }
    const struct zone_row *zone = zone_set(c);
    int number = zone ? man_at_home(zone->who, where, middle_alone(where, count)) : 0;
    if (number == 0) {
        return false;
    }
    cursor_take(c, from, trial.at);
    *out = (struct who){.kind = WHO_DEFENDER, .number = number, .span = cursor_taken(c, from)};
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, out->span, "`%.*s` of the %s: x%d was taken",
                 STR_ARG(cursor_text(c, out->span)), zone->word, number);
    diag_help(c->diags, diag, "to have another, write his number: %s", zone->who);
    return true;
}
