/* SPDX-License-Identifier: MIT */
/* zone_men: a defender of a zone by where he is at home: the top right defender, the bottom guy on
 * the left, the two front men. He is told with a note, and only where the zone that is set has one
 * such. Knows words, and how the court names a zone's men. */
#include "language/words/put_plain.h"

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

/* on the left, on the left side: behind who it is. */
static const char *take_side_behind(struct cursor *c)
{
    static const char *const ons[] = {"on the", "on", NULL};
    struct cursor side = *c;
    if (!take_among(&side, ons) || !cursor_next(&side) ||
        !(word_is(&side, 0, "left") || word_is(&side, 0, "right"))) {
        return NULL;
    }
    const char *where = where_word(cursor_next(&side));
    side.at = cursor_next(&side) + 1;
    take_words(&side, "side");
    c->at = side.at;
    return where;
}

/* The top right defender, the bottom guy on the left: where he is, in the words of the zone's row;
 * gives in how many words, 0: nobody is told so. */
static size_t take_where(struct cursor *c, const char *where[WHERE_MOST + 1])
{
    static const char *const men[] = {"defender", "man", "guy", "girl", NULL};
    size_t count = 0;
    struct cursor trial = *c;
    for (const char *word;
         count < WHERE_MOST && cursor_next(&trial) && (word = where_word(cursor_next(&trial)));) {
        where[count++] = word;
        trial.at = cursor_next(&trial) + 1;
    }
    const struct token *man = cursor_next(&trial);
    if (count == 0 || !man || man->possessive || !take_among(&trial, men)) {
        return 0;
    }
    const char *side = take_side_behind(&trial);
    if (side) {
        where[count++] = side;
    }
    c->at = trial.at;
    return count;
}

/* The bottom guy comes up on him: on the side where the ball is. */
static const char *ball_side(const struct cursor *c)
{
    struct who holder;
    struct spot_stood at;
    bool known = above_holder(c, &holder) && above_stands(c, &holder, &at);
    return !known ? NULL : at.side == SIDE_LEFT ? "left" : at.side == SIDE_RIGHT ? "right" : NULL;
}

bool zone_man_read(struct cursor *c, struct who *out)
{
    const char *where[WHERE_MOST + 2];
    const struct token *from = cursor_next(c);
    if (!from || !where_word(from)) {
        return false;
    }
    struct cursor trial = *c;
    size_t count = take_where(&trial, where);
    const struct zone_row *zone = count > 0 ? zone_set(c) : NULL;
    int number = zone ? man_at_home(zone->who, where, middle_alone(where, count)) : 0;
    const char *side = zone && number == 0 ? ball_side(c) : NULL;
    if (side) {
        where[count++] = side;
        number = man_at_home(zone->who, where, count);
    }
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

/* ---- in a line that was refused: their numbers in the place of what they are called ---- */

/* The side that is spoken of in front of them: a side by name, or of who acts there. */
static const char *side_before(const struct cursor *line, const struct token *at)
{
    while (at-- > line->at) {
        struct who who = {.kind = WHO_PLAYER, .number = attacker_at(at, line->end)};
        struct spot_stood stood;
        if (token_is_word(at, "left") || token_is_word(at, "right")) {
            return where_word(at);
        }
        if (who.number > 0 && above_stands(line, &who, &stood) &&
            (stood.side == SIDE_LEFT || stood.side == SIDE_RIGHT)) {
            return stood.side == SIDE_LEFT ? "left" : "right";
        }
    }
    return NULL;
}

static void put_man(const struct cursor *here, struct recast *out, int number)
{
    recast_number(here, out, number);
    struct token *man = &out->tokens.at[out->tokens.count - 1];
    man->kind = TOKEN_DEFENDER;
    man->text = str_format(here->arena, "x%d", number);
    man->first = 'x';
}

/* the top right defender; the bottom guy, on whose side is told in front. */
static const struct token *one_man_put(const struct cursor *line, const struct zone_row *zone,
                                       const struct token *at, struct recast *out)
{
    const char *where[WHERE_MOST + 2];
    struct cursor trial = line_look(line, at), here = trial;
    size_t count = take_where(&trial, where);
    int number = count > 0 ? man_at_home(zone->who, where, middle_alone(where, count)) : 0;
    const char *side = count > 0 && number == 0 ? side_before(line, at) : NULL;
    if (side) {
        where[count++] = side;
        number = man_at_home(zone->who, where, count);
    }
    if (number == 0) {
        return NULL;
    }
    put_man(&here, out, number);
    out->as = str_format(line->arena, "x%d", number);
    return trial.at;
}

/* the two top defenders, the front two, the first two guys: who they are, if there are two. */
static bool take_two_men(struct cursor *c, const struct zone_row *zone, int men[2])
{
    static const char *const nouns[] = {"defenders", "men", "guys", "girls", "guards", NULL};
    static const struct entry twos[] = {
        {"two", 0},        {"both", 0},       {"two top", 1},    {"two front", 1},
        {"two first", 1},  {"top two", 1},    {"front two", 3},  {"first two", 3},
        {"both top", 1},   {"both front", 1}, {"two bottom", 2}, {"two back", 2},
        {"bottom two", 2}, {"back two", 2},   {"two low", 2},    {NULL, 0}};
    struct cursor trial = *c;
    int row = take_entry(&trial, twos);
    bool noun = row > 0 && take_among(&trial, nouns);
    if (row < 1 || (!noun && row != 3)) { /* to the top two passes: by itself it is a player */
        return false;
    }
    const char *left[] = {row == 2 ? "low" : "top", "left"};
    const char *right[] = {left[0], "right"};
    men[0] = man_at_home(zone->who, left, 2);
    men[1] = man_at_home(zone->who, right, 2);
    c->at = trial.at;
    return men[0] > 0 && men[1] > 0;
}

/* Between them, where a gap is what is meant: the drive goes there. */
static const struct token *two_men_put(const struct cursor *line, const struct zone_row *zone,
                                       const struct token *at, struct recast *out)
{
    static const char *const gaps[] = {
        "at gap between",      "in gap between", "into gap between", "to gap between",
        "through gap between", "gap between",    "between",          NULL};
    static const char *const splits[] = {"splits", "split", NULL};
    static const char *const with[] = {"with the dribble", "on the dribble", "off the dribble",
                                       NULL};
    struct cursor trial = line_look(line, at), here = trial;
    int men[2];
    bool split = take_among(&trial, splits), gap = !split && take_among(&trial, gaps);
    if (!take_two_men(&trial, zone, men)) {
        return NULL;
    }
    if (split) {
        take_among(&trial, with);
        recast_verb(&here, out, STR("drives"));
    }
    if (split || gap) {
        recast_word(&here, out, "to");
        recast_word(&here, out, "halfway");
        recast_word(&here, out, "between");
    }
    put_man(&here, out, men[0]);
    recast_word(&here, out, "and");
    put_man(&here, out, men[1]);
    out->as = str_format(line->arena, "%sx%d and x%d",
                         split ? "drives to halfway between "
                         : gap ? "to halfway between "
                               : "",
                         men[0], men[1]);
    return trial.at;
}

bool zone_men_told(const struct cursor *c)
{
    const struct zone_row *zone = above_zone(c) ? zone_set(c) : NULL;
    int men[2];
    bool told = false;
    for (const struct token *at = c->at; zone && at < c->end && !told; at++) {
        struct cursor trial = line_look(c, at);
        told = take_two_men(&trial, zone, men);
    }
    return told;
}

const struct token *zone_men_put(const struct cursor *line, const struct token *at,
                                 struct recast *out)
{
    const struct zone_row *zone = at->kind == TOKEN_WORD ? zone_set(line) : NULL;
    if (!zone || at->filler) {
        return NULL;
    }
    const struct token *end = two_men_put(line, zone, at, out);
    return end ? end : one_man_put(line, zone, at, out);
}
