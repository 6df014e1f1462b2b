/* SPDX-License-Identifier: MIT */
/* shorthand: notes as coaches jot them down, put more plainly: `swing 1-2-4`, `DHO 1-2`, `5 BS 1`,
 * `2 R corner`, `vs 2-3:`, `b.pass`. What a letter may stand for is told by who has the ball, or it
 * is left to be refused. Ways of plain.c. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"

/* ---- 1-2-4 ---- */

enum { GROUP_MOST = 6 };

/* Players with hyphens between, each another than the one before. */
static size_t group_players(const struct cursor *line, const struct token *at, int *out)
{
    size_t count = 0;
    if (at >= line->end || at->kind != TOKEN_GROUP) {
        return 0;
    }
    for (size_t i = 0; i < at->text.size; i++) {
        char letter = at->text.at[i];
        if (i % 2 == 1 ? letter != '-' : letter < '1' || letter > '5' || count == GROUP_MOST) {
            return 0;
        }
        if (i % 2 == 0) {
            out[count++] = letter - '0';
        }
        if (count > 1 && i % 2 == 0 && out[count - 1] == out[count - 2]) {
            return 0;
        }
    }
    return count;
}

static const struct entry hand_words[] = {{"dho", 0},        {"d h o", 0},
                                          {"hand-off", 0},   {"handoff", 0},
                                          {"ho", 0},         {"dribble hand-off", 0},
                                          {"hand off", 0},   {"swing", 1},
                                          {"reverse", 1},    {"reversal", 1},
                                          {"rev", 1},        {"pass", 1},
                                          {"passes", 1},     {"ball", 1},
                                          {"ball goes", 1},  {"quick passes", 1},
                                          {"ball swing", 1}, {"swing it", 1},
                                          {"swing ball", 1}, {"skip", 2},
                                          {"skip pass", 2},  {"lob", 3},
                                          {"bounce", 4},     {"bounce pass", 4},
                                          {NULL, 0}};

static void put_pass(const struct cursor *here, struct recast *out, int kind, int from, int to)
{
    static const char *const verbs[] = {NULL, "passes", "skip-passes", "lob-passes",
                                        "bounce-passes"};
    if (kind == 0) {
        put_dho(here, out, from, to);
        return;
    }
    recast_number(here, out, from);
    recast_word(here, out, verbs[kind]);
    recast_word(here, out, "to");
    recast_number(here, out, to);
}

/* swing 1-2-4; 1-4: passes from one to the next. A zone or a formation is none: 2-3 zone. */
static const struct token *passes_listed(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    static const char *const other[] = {"zone", "high", "low",     "set",     "press",
                                        "look", "flat", "defense", "defence", NULL};
    int players[GROUP_MOST];
    struct cursor trial = line_look(line, at);
    if (!clause_begins_at(line, at)) {
        return NULL;
    }
    int kind = take_entry(&trial, hand_words);
    const struct token *group = past_fillers(trial.at, line->end);
    size_t count = group_players(line, group, players);
    if (count < 2 || (kind == 0 && count != 2)) {
        return NULL;
    }
    const struct token *end = group + 1;
    static const char *const hands[] = {"ho", "hand-off", "handoff", "hand off", NULL};
    struct cursor behind = line_look(line, end);
    bool hand = kind < 0 && count == 2 && take_among(&behind, hands); /* 5-2 HO */
    end = hand ? behind.at : end;
    struct who holder;
    bool known = at == line->at && above_holder(line, &holder);
    if ((known && !(holder.kind == WHO_PLAYER && holder.number == players[0])) ||
        (end < line->end && (token_is_among(end, other) || token_is_mark(end, ':')))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    for (size_t i = 0; i + 1 < count; i++) {
        if (i > 0) {
            recast_mark(&here, out, ',');
        }
        if (hand) {
            recast_number(&here, out, players[i]);
            recast_word(&here, out, "hands-off");
            recast_word(&here, out, "to");
            recast_number(&here, out, players[i + 1]);
            continue;
        }
        put_pass(&here, out, kind < 0 ? 1 : kind, players[i], players[i + 1]);
    }
    if (spot_alone(line, end)) { /* 4-3 corner */
        recast_word(&here, out, "at");
    }
    return end;
}

/* ---- who goes where ---- */

/* More is said, of others: in front of it, behind its mark, or before another full stop. */
static bool says_more(const struct cursor *line, const struct token *at, const struct token *end)
{
    while (at == line->at && end < line->end && end->kind == TOKEN_MARK) {
        end++;
    }
    return at > line->at || attacker_at(end, line->end) || behind_stop(line, at);
}

/* 2 R corner, where other things are said: he goes there. */
static const struct token *leg_noted(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const ways[] = {"up", "out", "down", "over", "back", NULL};
    const struct token *spot = at + 1;
    spot += spot + 1 < line->end && token_is_among(spot, ways); /* 3 up top */
    const struct token *end = spot < line->end ? spot_alone(line, spot) : NULL;
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || !end ||
        !says_more(line, at, end) || (at > line->at && token_is_word(at - 1, "and")) ||
        verb_at(line, at + 1)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "to");
    return spot;
}

/* 1 R wing w/ dribble: he takes the ball there. */
static const struct token *dribble_noted(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    static const char *const tails[] = {
        "with dribble", "with ball", "on dribble",     "off dribble", "by dribble", "w dribble",
        "dribbling",    "drib",      "on the dribble", "w / dribble", "w / ball",   NULL};
    const struct place *place;
    struct cursor trial = line_look(line, at + 1);
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at)) {
        return NULL;
    }
    take_words(&trial, "to");
    const struct token *spot = trial.at;
    const struct token *end = spot < line->end ? spot_end(line, spot, &place) : NULL;
    trial.at = end ? end : trial.at;
    if (!end || !take_among(&trial, tails) || !(trial.at == line->end || clause_ends(trial.at))) {
        return NULL;
    }
    struct cursor here = line_look(line, spot);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "dribbles");
    recast_word(&here, out, "to");
    recast_copy(line, out, spot, end);
    return trial.at;
}

/* 1 to 5 nail to 4: to 5 at the nail, and from him on; the arrow is put as `to`. */
static const struct token *chain_noted(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    const struct place *place;
    const struct token *whom = at + 2;
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || whom + 2 >= line->end ||
        !token_is_word(at + 1, "to") || !attacker_at(whom, line->end)) {
        return NULL;
    }
    const struct token *end = spot_end(line, whom + 1, &place);
    if (!end || end + 1 >= line->end || !token_is_word(end, "to") ||
        !attacker_at(end + 1, line->end)) {
        return NULL;
    }
    struct cursor here = line_look(line, end);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "passes");
    recast_copy(line, out, at + 1, whom + 1);
    recast_word(&here, out, "at");
    recast_copy(line, out, whom + 1, end);
    recast_mark(&here, out, ',');
    recast_copy(line, out, whom, whom + 1);
    return end;
}

/* 5 up, PnR w/ 1; 5 across, pick for 4: how he comes to what he does. */
static const struct token *comes_noted(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const ways[] = {"up", "across", "over", "out", "down", "away", NULL};
    static const char *const nouns[] = {"pnr", "dho", "bs", "ds", "scr", "p", NULL};
    const struct token *acts = at + 3;
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || acts >= line->end ||
        !token_is_among(at + 1, ways) || !token_is_mark(at + 2, ',') ||
        !(token_is_among(acts, nouns) || (acts->kind == TOKEN_WORD && verb_at(line, acts)))) {
        return NULL;
    }
    out->told = at[1].span;
    recast_copy(line, out, at, at + 1);
    return acts;
}

static bool posts_at(enum spot spot)
{
    return spot == SPOT_BLOCK || spot == SPOT_LOW_POST || spot == SPOT_MID_POST ||
           spot == SPOT_HIGH_POST || spot == SPOT_ELBOW || spot == SPOT_DUNKER;
}

/* to 5 post, to 5 in the post: where he stands already. */
static const struct token *in_the_post(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const posts[] = {"in post", "in low post", "at post",     "post",     "low",
                                        "on post", "posted up",   "in the post", "down low", NULL};
    struct cursor trial = line_look(line, at + 1);
    struct spot_stood stood;
    struct who who = {.kind = WHO_PLAYER, .number = attacker_at(at, line->end)};
    if (who.number == 0 || clause_begins_at(line, at) || !take_among(&trial, posts) ||
        !(trial.at == line->end || clause_ends(trial.at)) || !above_stands(line, &who, &stood) ||
        !posts_at(stood.spot)) {
        return NULL;
    }
    recast_copy(line, out, at, at + 1);
    return trial.at;
}

/* ---- what a letter stands for ---- */

/* stagger 5 and 4 for 2: who sets it, in that order. */
static const struct token *screens_noted(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    static const char *const nouns[] = {"stagger",       "stag",           "staggered", "double",
                                        "double screen", "stagger screen", "dbl",       NULL};
    struct cursor trial = line_look(line, at);
    if (!clause_begins_at(line, at) || !take_among(&trial, nouns)) {
        return NULL;
    }
    const struct token *first = trial.at, *second = first + 2;
    if (!attacker_at(first, line->end) || !attacker_at(second, line->end) ||
        !token_is_word(first + 1, "and") || second + 1 >= line->end ||
        !token_is_word(second + 1, "for")) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, first, second + 1);
    recast_word(&here, out, "screen");
    return second + 1;
}

/* 5 and 4, 5/4, 5 & 4, dbl 4+5: those who stand as screens; gives how many. */
static size_t screeners_noted(struct cursor *c, int out[2])
{
    static const char *const nouns[] = {"dbl",         "double",       "stagger", "stag",
                                        "double from", "stagger from", NULL};
    size_t count = 0;
    take_among(c, nouns);
    while (count < 2 && attacker_at(c->at, c->end)) {
        out[count++] = attacker_at(c->at, c->end);
        c->at++;
        const struct token *mark = c->at;
        bool joined = mark < c->end && (token_is_mark(mark, '/') || token_is_mark(mark, '+') ||
                                        token_is_mark(mark, ',') || token_is_word(mark, "and"));
        c->at += count < 2 && joined && attacker_at(mark + 1, c->end);
    }
    return count;
}

/* 3 off 5 & 4 to R wing, 3 off dbl 4+5, R corner: he comes off them. */
static const struct token *off_noted(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    int of[2], who = attacker_at(at, line->end);
    struct cursor trial = line_look(line, at + 1);
    if (!who || !clause_begins_at(line, at) || !take_words(&trial, "off")) {
        return NULL;
    }
    size_t count = screeners_noted(&trial, of);
    take_mark(&trial, ',');
    bool to = take_words(&trial, "to");
    if (count == 0 || of[0] == who || (count == 2 && (of[1] == who || of[1] == of[0])) ||
        !spot_alone(line, trial.at)) {
        return NULL;
    }
    struct cursor here = line_look(line, to ? trial.at - 1 : trial.at);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "goes"); /* with the ball, where he has it */
    recast_word(&here, out, "off");
    recast_number(&here, out, of[0]);
    if (count == 2) {
        recast_word(&here, out, "and");
        recast_number(&here, out, of[1]);
    }
    recast_word(&here, out, "to");
    return trial.at;
}

/* 1 in to 5, 5 back to 1: a pass; 1 BC: a cut to the rim, from in front of his man or behind him.
 */
static const struct token *act_noted(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const ways[] = {"in", "out", "inside", "over", NULL};
    const struct token *to = at + 2;
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || at + 1 >= line->end) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    bool cut = token_is_word(at + 1, "bc") && (to == line->end || clause_ends(to));
    bool pass = token_is_among(at + 1, ways) && to + 1 < line->end && token_is_word(to, "to") &&
                attacker_at(to + 1, line->end);
    bool bare = token_is_among(at + 1, ways) && attacker_at(to, line->end) &&
                (to + 1 == line->end || clause_ends(to + 1)); /* 5 out 2 */
    if (!cut && !pass && !bare) {
        return NULL;
    }
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, cut ? "cuts" : "passes");
    if (cut || bare) {
        recast_word(&here, out, "to");
    }
    if (cut) {
        recast_word(&here, out, "rim");
    }
    return to;
}

/* inb 1: 5 R corner: who puts it in is known. */
static const struct token *inbounder_noted(const struct cursor *line, const struct token *at,
                                           struct recast *out)
{
    static const char *const words[] = {"inb", "inbounder", "inbounds", "ball", NULL};
    struct who holder;
    if (at != line->at || at + 3 >= line->end || !token_is_among(at, words) ||
        !(token_is_mark(at + 2, ':') || token_is_mark(at + 2, ',')) ||
        !above_holder(line, &holder) || holder.number != attacker_at(at + 1, line->end)) {
        return NULL;
    }
    out->told = span_join(at->span, at[1].span);
    return at + 3;
}

/* b.pass, s.corner: the point is of the word. */
static const struct token *pointed(const struct cursor *line, const struct token *at,
                                   struct recast *out)
{
    static const struct {
        const char *said, *put;
    } rows[] = {{"b.pass", "bounce-passes"},  {"bnc.pass", "bounce-passes"},
                {"s.corner", "short-corner"}, {"sh.corner", "short-corner"},
                {"s.cnr", "short-corner"},    {"b.screen", "ball-screen"},
                {"d.screen", "down-screen"}};
    for (size_t i = 0; at->kind == TOKEN_CHECK_ID && i < sizeof rows / sizeof *rows; i++) {
        if (str_is(at->text, rows[i].said)) {
            struct cursor here = line_look(line, at);
            recast_word(&here, out, rows[i].put);
            return at + 1;
        }
    }
    return NULL;
}

/* ---- what it is for ---- */

/* two three, 2-3: the defense of the play. Where it is not, that is a condition. */
static const struct token *own_zone(const struct cursor *line, const struct token *at)
{
    static const char *const mans[] = {"man to man", "man", "man - to - man", NULL};
    const struct setting_form *defense = setting_of(line->top, SETTING_DEFENSE);
    struct str zone = defense ? defense->zone : (struct str){NULL, 0};
    struct cursor named = line_look(line, at);
    if (defense && (zone.size > 0 ? take_words(&named, "zone") : take_among(&named, mans))) {
        return named.at;
    }
    if (zone.size == 0 || at >= line->end) {
        return NULL;
    }
    if (at->kind == TOKEN_GROUP) {
        return str_equal(at->text, zone) ? at + 1 : NULL;
    }
    for (size_t i = 0; i < zone.size; i += 2, at++) {
        if (attacker_at(at, line->end) != zone.at[i] - '0') {
            return NULL;
        }
    }
    return at;
}

const struct token *against_said(const struct cursor *line, struct span *told)
{
    static const char *const heads[] = {"vs", "v", "versus", "against", NULL};
    static const char *const behind[] = {"zone", "defense", "defence", "look", NULL};
    static const char *const whose[] = {"their", "this", "that", "our", NULL};
    const struct token *at = line->at, *zone = at + 1;
    if (at >= line->end || !token_is_among(at, heads)) {
        return NULL;
    }
    while (zone < line->end &&
           (zone->filler || token_is_mark(zone, '.') || token_is_among(zone, whose))) {
        zone++;
    }
    const struct token *end = own_zone(line, zone);
    if (!end) {
        return NULL;
    }
    end += end < line->end && token_is_among(end, behind);
    *told = span_join(at->span, end[-1].span);
    static const char *const wes[] = {"we", "go", "run", "play", NULL};
    while (end < line->end && (end->kind == TOKEN_MARK || token_is_among(end, wes))) {
        end++;
    }
    return end < line->end ? end : NULL;
}

const struct token *shorthand_put(const struct cursor *line, const struct token *at,
                                  struct recast *out)
{
    static plain_way *const ways[] = {comes_noted, inbounder_noted, screens_noted, passes_listed,
                                      chain_noted, act_noted,       off_noted,     dribble_noted,
                                      leg_noted,   in_the_post,     pointed,       NULL};
    return first_put(ways, line, at, out);
}
