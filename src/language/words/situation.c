/* SPDX-License-Identifier: MIT */
/* situation: settings said in a few words before the first sentence: who puts the ball in and from
 * where, whose rules, the clock, the score, what the play is called. Rows of loose.c. */
#include "language/words/situation.h"

#include "language/words/grammar.h"

/* What is said of a throw-in. */
struct throw_in {
    const struct token *who;
    int side;         /* enum side; -1: not said */
    bool said, along; /* that it is one; from the sideline */
    bool line;        /* which line is known */
};

static bool take_piece(struct cursor *c, struct throw_in *out)
{
    static const char *const throws[] = {"takes it out",
                                         "takes ball out",
                                         "inbounds it",
                                         "inbounds ball",
                                         "inbounds",
                                         "throws it in",
                                         "is inbounding",
                                         "is inbounder",
                                         "trigger man",
                                         "is trigger man",
                                         "is thrower",
                                         "throw-in",
                                         "out of bounds",
                                         "puts it in play",
                                         "takes it",
                                         "triggers it",
                                         "triggers",
                                         "inbounder",
                                         "trigger",
                                         "is out of bounds",
                                         "starts out of bounds",
                                         "passes it in",
                                         NULL};
    static const struct entry lines[] = {{"underneath", 0},
                                         {"under basket", 0},
                                         {"under the rim", 0},
                                         {"under hoop", 0},
                                         {"baseline out", 0},
                                         {"baseline", 0},
                                         {"endline", 0},
                                         {"under", 0},
                                         {"side out", 1},
                                         {"sideline out", 1},
                                         {"sideline", 1},
                                         {"on side", 1},
                                         {"blob", 0},
                                         {"slob", 1},
                                         {"out under", 0},
                                         {"out underneath", 0},
                                         {"out on side", 1},
                                         {"from side", 1},
                                         {NULL, 0}};
    static const char *const small[] = {"on",           "from",      "at",  "with ball", "has it",
                                        "has ball",     "side",      "is",  "with it",   "in",
                                        "of the floor", "of bounds", "and", "of",        NULL};
    static const struct entry sides[] = {{"left", SIDE_LEFT}, {"right", SIDE_RIGHT}, {NULL, 0}};
    struct cursor trial = *c;
    if (take_among(c, throws)) {
        return out->said = true;
    }
    int line = take_entry(c, lines);
    if (line >= 0) {
        struct str first = trial.at->text; /* side out says that it is a throw-in */
        out->said = out->said || str_is(c->at[-1].text, "out") || str_is(first, "underneath") ||
                    str_is(first, "blob") || str_is(first, "slob") || str_is(first, "out");
        out->along = line == 1;
        return out->line = true;
    }
    int side = take_entry(c, sides);
    if (side >= 0) {
        out->side = side;
        return true;
    }
    const struct token *next = cursor_next(c);
    if (next && next->kind == TOKEN_NUMBER && next->integer && !out->who) {
        out->who = next;
        cursor_take(c, next, next + 1);
        return true;
    }
    return take_mark(c, ',') || take_mark(c, ':') || take_among(c, small);
}

/* 3 takes it out underneath; side out on the right, 4's the trigger man. */
bool throw_in_said(struct reader *r, const struct line *line, struct line *out)
{
    enum { MOST = 9 };
    struct cursor c = reader_cursor(r, line, 0);
    struct throw_in in = {.side = -1};
    while (!cursor_done(&c)) {
        if (!take_piece(&c, &in)) {
            return false;
        }
    }
    if (in.said && !in.line && in.side >= 0) { /* on the right side */
        in.line = in.along = true;
    }
    if (!in.who || !in.said || !in.line || (in.along && in.side < 0)) {
        return false;
    }
    static const char *const words[] = {"out", "of", "bounds", "at"};
    struct token *tokens = arena_array(r->arena, struct token, MOST);
    size_t size = 0;
    tokens[size++] = line->tokens[0];
    tokens[size] = *in.who;
    tokens[size++].possessive = false;
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        tokens[size++] = token_word(in.who, words[i]);
    }
    if (in.side >= 0) {
        tokens[size++] = token_word(in.who, in.side == SIDE_LEFT ? "left" : "right");
        tokens[size++] = token_word(in.who, in.along ? "hash" : "short-corner");
    } else {
        tokens[size++] = token_word(in.who, "baseline");
    }
    *out = *line;
    out->tokens = tokens;
    out->count = size;
    return true;
}

/* `line` cut to what stands between a lead and a tail of these; false: neither, or nothing left. */
static bool between(struct reader *r, const struct line *line, const char *const *leads,
                    const char *const *tails, struct line *out)
{
    struct cursor c = reader_cursor(r, line, 0);
    bool led = take_among(&c, leads);
    take_mark(&c, ':');
    const struct token *from = past_fillers(c.at, c.end), *end = c.end;
    bool tailed = false;
    for (const struct token *at = from; at < c.end && !tailed; at++) {
        struct cursor tail = c;
        tail.at = at;
        if (at > from && take_among(&tail, tails) && cursor_done(&tail)) {
            end = at;
            tailed = true;
        }
    }
    if ((!led && !tailed) || from >= end) {
        return false;
    }
    *out = *line;
    out->count = (size_t)(end - from) + 1;
    out->tokens = arena_array(r->arena, struct token, out->count);
    out->tokens[0] = line->tokens[0];
    for (size_t i = 1; i < out->count; i++) {
        out->tokens[i] = from[i - 1];
    }
    return true;
}

/* All of it, behind a token that stands for the setting's word. */
static bool whole(struct reader *r, const struct line *line, struct line *out)
{
    *out = *line;
    out->count = line->count + 1;
    out->tokens = arena_array(r->arena, struct token, out->count);
    out->tokens[0] = line->tokens[0];
    for (size_t i = 1; i < out->count; i++) {
        out->tokens[i] = line->tokens[i - 1];
    }
    return true;
}

/* Whether the setting's own reader takes the line whole. */
static bool reads_as(struct reader *r, const struct line *line, enum setting setting)
{
    struct setting_form form = {.setting = setting};
    size_t errors = r->diags->errors;
    return setting_read(r, line, setting, &form) && r->diags->errors == errors;
}

bool rules_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"court of", "court is",  "playing", "we play by", "we play",
                                        "rules of", "rules are", "we use",  NULL};
    static const char *const tails[] = {"rules", "court", "floor", "basketball", NULL};
    return between(r, line, leads, tails, out) && reads_as(r, out, SETTING_RULES);
}

bool level_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"we are",       "we're",   "for", "this is for",
                                        "our level is", "team is", NULL};
    static const char *const tails[] = {"team", "level", NULL};
    return (between(r, line, leads, tails, out) || whole(r, line, out)) &&
           reads_as(r, out, SETTING_LEVEL);
}

/* full court, on the whole floor. */
bool half_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"on",       "played on", "we use", "the court is",
                                        "court is", "court",     NULL};
    static const char *const tails[] = {"court play", "court", "floor", NULL};
    return between(r, line, leads, tails, out) && reads_as(r, out, SETTING_FLOOR);
}

bool clock_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"with", "there are", "there is", "we have", NULL};
    static const char *const tails[] = {
        "left on the clock", "left", "on the clock", "on the shot clock", "to go",
        "remaining",         NULL};
    struct cursor c = reader_cursor(r, line, 0);
    take_among(&c, leads);
    return cursor_next(&c) && cursor_next(&c)->kind == TOKEN_MEASURE &&
           between(r, line, leads, tails, out) && reads_as(r, out, SETTING_CLOCK);
}

/* down 2, we're up three: as it is said. */
bool score_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {"we are", "we're", "score is", NULL};
    static const char *const words[] = {"down by", "up by", "down", "up", NULL};
    static const char *const points[] = {"points", "point", NULL};
    struct cursor c = reader_cursor(r, line, 0);
    struct span span;
    int number;
    take_among(&c, leads);
    const struct token *from = past_fillers(c.at, c.end);
    bool tied = take_words(&c, "tied") || take_words(&c, "tie game");
    if (!tied && (!take_among(&c, words) || !integer_read(&c, &number, &span))) {
        return false;
    }
    take_among(&c, points);
    if (!cursor_done(&c)) {
        return false;
    }
    *out = *line;
    out->count = (size_t)(c.end - from) + 1;
    out->tokens = arena_array(r->arena, struct token, out->count);
    out->tokens[0] = line->tokens[0];
    for (size_t i = 1; i < out->count; i++) {
        out->tokens[i] = from[i - 1];
    }
    return true;
}

/* we call it Fist. */
bool call_said(struct reader *r, const struct line *line, struct line *out)
{
    static const char *const leads[] = {
        "we call this one",  "call this one",  "this one is called",  "this one is",
        "we call this play", "call this play", "this play is called", "we call it",
        "we call this",      "call it",        "call this",           "it is called",
        "it's called",       "the call is",    "this is called",      NULL};
    static const char *const tails[] = {
        "from the bench", "from the sideline", "on the floor", "as a team",
        "out loud",       "in games",          "here",         NULL};
    struct cursor c = reader_cursor(r, line, 0);
    return take_among(&c, leads) && between(r, line, leads, tails, out);
}
