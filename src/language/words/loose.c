/* SPDX-License-Identifier: MIT */
/* loose: settings said as sentences before the first one: 1 has the ball, they are in a 2-3, no
 * defense, we start in horns. What leads in is left out; the rest is read as the setting's own
 * line. */
#include "language/words/people.h"
#include "language/words/reader.h"
#include "language/words/situation.h"

/* `line` with its tokens from `from` on, behind one that stands for the setting's word. */
static struct line shortened(struct reader *r, const struct line *line, const struct token *from,
                             const struct token *end)
{
    struct line part = *line;
    part.count = (size_t)(end - from) + 1;
    part.tokens = arena_array(r->arena, struct token, part.count);
    part.tokens[0] = line->tokens[0];
    for (size_t i = 1; i < part.count; i++) {
        part.tokens[i] = from[i - 1];
    }
    return part;
}

/* 1 has the ball, 2 starts with it. */
static bool ball_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const has[] = {
        "has",       "starts with",     "begins with",       "starts off with", "will start with",
        "will have", "starts out with", "starts off having", "will begin with", "brings up",
        NULL};
    static const char *const balls[] = {"ball", "it", "rock", NULL};
    static const char *const tails[] = {"to start with", "to begin with", "to start", "to begin",
                                        "first",         "at the start",  "at first", NULL};
    struct cursor c = reader_cursor(r, line, 0);
    struct who who;
    if (!c.end || !person_read(&c, &who) || who.kind != WHO_PLAYER) {
        return false;
    }
    const struct token *behind = c.at;
    if (!take_among(&c, has)) {
        return false;
    }
    take_among(&c, balls);
    take_among(&c, tails);
    take_mark(&c, '.');
    *out = shortened(r, line, behind - 1, behind);
    return cursor_done(&c);
}

/* ball starts with 3, the ball is in 3's hands, start with the ball in 3's hands. */
bool loose_ball(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"ball starts with",
                                        "ball begins with",
                                        "ball is with",
                                        "ball is in hands of",
                                        "ball with",
                                        "start ball with",
                                        "start with ball in hands of",
                                        "ball starts in hands of",
                                        "ball belongs to",
                                        "start with",
                                        NULL};
    static const char *const owners[] = {"ball is in",         "ball starts in", "ball in",
                                         "start with ball in", "ball begins in", NULL};
    static const char *const tails[] = {"hands",     "to start",    "first", "at the start",
                                        "with ball", "having ball", NULL};
    struct cursor c = reader_cursor(r, line, 0);
    struct who who;
    bool owned = take_among(&c, owners);
    if (owned ? !owner_read(&c, &who) : !take_among(&c, leads) || !person_read(&c, &who)) {
        return false;
    }
    const struct token *from = &c.at[-1];
    bool with = take_among(&c, tails), start = str_is(line->tokens[0].text, "start");
    take_mark(&c, '.');
    if (who.kind != WHO_PLAYER || !cursor_done(&c) || ((owned || start) && !with)) {
        return false;
    }
    *out = shortened(r, line, from, from + 1);
    out->tokens[1].possessive = false;
    return true;
}

static bool none_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const words[] = {
        "no defense", "no defence",   "no d",           "no defenders", "without defense",
        "5 on 0",     "five on zero", "against nobody", "against air",  "on air",
        NULL};
    struct cursor c = reader_cursor(r, line, 0);
    if (!take_among(&c, words) || !cursor_done(&c)) {
        return false;
    }
    *out = shortened(r, line, line->tokens, line->tokens + 1);
    out->tokens[1].text = STR("none");
    out->tokens[1].first = 'n';
    out->tokens[1].kind = TOKEN_WORD;
    return true;
}

static bool defense_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"they play",
                                        "they are in",
                                        "they're in",
                                        "they run",
                                        "they're playing",
                                        "they are playing",
                                        "they're",
                                        "defense plays",
                                        "defense is in",
                                        "defense is",
                                        "defense in",
                                        "we're against",
                                        "we are against",
                                        "d is in",
                                        "d is",
                                        "playing against",
                                        "facing",
                                        "going against",
                                        "against",
                                        "versus",
                                        "vs",
                                        "they sit in",
                                        "they guard us",
                                        "we face",
                                        "they press",
                                        "opponents play",
                                        "opponents are in",
                                        "opponent plays",
                                        "opponents",
                                        "opponent",
                                        "other team plays",
                                        "other team is in",
                                        "they drop in",
                                        "they go",
                                        "they show",
                                        "d",
                                        NULL};
    struct cursor c = reader_cursor(r, line, 0);
    static const char *const tails[] = {"defense",    "d",          "zone", "on us",  "full court",
                                        "press",      "half court", "now",  "1 to 1", "1 on 1",
                                        "one to one", "one on one", NULL};
    struct setting_form form = {.setting = SETTING_DEFENSE};
    take_among(&c, leads);
    take_mark(&c, '.');
    take_mark(&c, ':');
    const struct token *from = past_fillers(c.at, c.end);
    size_t refusals = c.refusals;
    bool fine = from < c.end && defense_words_read(&c, &form) && c.refusals == refusals;
    const struct token *end = c.at;
    take_mark(&c, ',');
    while (take_among(&c, tails)) {
    }
    if (!fine || !cursor_done(&c)) {
        return false;
    }
    *out = shortened(r, line, from, end);
    return true;
}

static bool start_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"we start in",
                                        "we start",
                                        "set up in",
                                        "set up",
                                        "line up in",
                                        "we line up in",
                                        "start out in",
                                        "begin in",
                                        "we begin in",
                                        "starting in",
                                        "we're in",
                                        "we are in",
                                        "alignment",
                                        "formation",
                                        "they line up in",
                                        "everyone starts in",
                                        "we set up in",
                                        "lineup is",
                                        "players start",
                                        "out of",
                                        NULL};
    struct cursor c = reader_cursor(r, line, 0);
    if (!take_among(&c, leads)) {
        return false;
    }
    take_mark(&c, ':');
    take_among(&c, (const char *const[]){"a", NULL});
    const struct token *from = past_fillers(c.at, c.end);
    if (from == c.end) {
        return false;
    }
    *out = shortened(r, line, from, c.end);
    return true;
}

/* 1 up top, wings 2 and 3, 4 in the left corner; horns set; five out: what a start would say, and
 * nothing else. Three players at least: fewer could be a sentence. */
static bool placed_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const tails[] = {"set",    "look",    "alignment", "formation", "offense",
                                        "motion", "spacing", "to start",  NULL};
    if (block_sets(r->top, SETTING_START)) {
        return false;
    }
    struct cursor c = reader_cursor(r, line, 0);
    struct cursor name = c;
    struct setting_form form = {.setting = SETTING_START};
    const struct token *from = c.at, *end = c.end;
    for (const struct token *at = c.at; at < c.end; at++) { /* horns set */
        struct cursor tail = c;
        tail.at = at;
        if (at > from && take_among(&tail, tails) && cursor_done(&tail)) {
            end = at;
            break;
        }
    }
    while (name.at < name.end && name.at->kind == TOKEN_WORD) { /* box: 4 and 5 at the elbows */
        name.at++;
    }
    if (name.at > from && take_mark(&name, ':') && !cursor_done(&name)) {
        from = name.at;
    }
    c.at = from;
    c.end = end;
    size_t refusals = c.refusals;
    bool fine = start_read(r, &c, &form) && c.refusals == refusals && cursor_done(&c);
    bool formation = form.placings.count > 0 && form.placings.at[0].kind == PLACING_FORMATION;
    if (!fine || (form.placings.count < 3 && !formation)) {
        return false;
    }
    *out = shortened(r, line, from, end);
    return true;
}

static const struct {
    enum setting setting;
    bool (*said)(struct reader *r, const struct line *line, struct line *out);
} rows[] = {
    {SETTING_BALL, ball_said},   {SETTING_DEFENSE, none_said}, {SETTING_DEFENSE, defense_said},
    {SETTING_START, start_said}, {SETTING_START, placed_said}, {SETTING_BALL, throw_in_said},
    {SETTING_RULES, rules_said}, {SETTING_LEVEL, level_said},  {SETTING_FLOOR, half_said},
    {SETTING_CLOCK, clock_said}, {SETTING_SCORE, score_said},  {SETTING_CALL, call_said},
};

/* Which setting the line says, and its own line; SETTING_COUNT: none. */
static enum setting setting_of_line(struct reader *r, const struct line *line, struct line *part)
{
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (rows[i].said(r, line, part)) {
            return rows[i].setting;
        }
    }
    return loose_ball(r, line, part) ? SETTING_BALL : SETTING_COUNT;
}

struct two_settings {
    enum setting setting[2];
    struct line part[2];
};

/* horns, ball with 1: two of them in one line. */
static bool two_said(struct reader *r, const struct line *line, struct two_settings *out)
{
    for (size_t at = 1; at + 1 < line->count; at++) {
        if (!token_is_mark(&line->tokens[at], ',')) {
            continue;
        }
        struct line left = *line, right = *line;
        left.count = at;
        right.tokens = &line->tokens[at + 1];
        right.count = line->count - at - 1;
        out->setting[0] = setting_of_line(r, &left, &out->part[0]);
        out->setting[1] = setting_of_line(r, &right, &out->part[1]);
        if (out->setting[0] != SETTING_COUNT && out->setting[1] != SETTING_COUNT &&
            out->setting[0] != out->setting[1]) {
            return true;
        }
    }
    return false;
}

/* point guard up top with the ball, wings in the corners: who has it, said beside where he stands.
 */
static bool with_ball_said(struct reader *r, const struct line *line, struct two_settings *out)
{
    static const char *const withs[] = {"with ball",    "with it",      "has ball",     "has it",
                                        "and has ball", "who has ball", "and the ball", NULL};
    struct line rest = *line;
    rest.tokens = arena_array(r->arena, struct token, line->count);
    for (size_t at = 1; at < line->count; at++) {
        struct cursor with = reader_cursor(r, line, at), who = with;
        if (!take_among(&with, withs) || !(cursor_done(&with) || mark_is(&with, ','))) {
            continue;
        }
        size_t from = at; /* the placing it stands in */
        while (from > 0 && !token_is_mark(&line->tokens[from - 1], ',')) {
            from--;
        }
        who.at = line->tokens + from;
        const struct person_row *row = NULL;
        const struct token *name = cursor_next(&who);
        int number = name && name->kind == TOKEN_NUMBER && name->integer ? (int)name->number : 0;
        row = number == 0 ? take_person(&who) : NULL;
        number = row && row->person == PERSON_PLAYER ? row->number : number;
        if (number == 0) {
            return false;
        }
        size_t to = (size_t)(with.at - line->tokens), count = 0;
        for (size_t i = 0; i < line->count; i++) {
            if (i < at || i >= to) {
                rest.tokens[count++] = line->tokens[i];
            }
        }
        rest.count = count;
        out->setting[0] = setting_of_line(r, &rest, &out->part[0]);
        out->setting[1] = SETTING_BALL;
        out->part[1] = shortened(r, line, line->tokens + at, line->tokens + at + 1);
        out->part[1].tokens[1] = token_number(r->arena, &line->tokens[at], number);
        return out->setting[0] == SETTING_START;
    }
    return false;
}

bool loose_setting(struct reader *r, const struct line *line)
{
    struct diags *heard = r->diags, unheard;
    struct two_settings two;
    diags_init(&unheard, r->arena);
    r->diags = &unheard;
    enum setting one = setting_of_line(r, line, &two.part[0]);
    two.setting[0] = one;
    bool both = one == SETTING_COUNT && (with_ball_said(r, line, &two) || two_said(r, line, &two));
    r->diags = heard;
    if (!both && one == SETTING_COUNT) {
        return false;
    }
    setting_line(r, line_keep(r, two.part[0]), two.setting[0]);
    if (both) {
        setting_line(r, line_keep(r, two.part[1]), two.setting[1]);
    }
    return true;
}
