/* SPDX-License-Identifier: MIT */
/* likewise: what is told of one by what another one does: `3 does the same on the left`, `5 does
 * the same for 3`; and what one has another one do: `1 waves 5 up for a screen`, `1 calls for a
 * screen from 5`, `1 sends 2 through to the corner`. Ways of plain.c, tried before all others. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"

static bool ends_clause(const struct cursor *line, const struct token *at)
{
    return at == line->end || clause_ends(at) || token_is_word(at, "so");
}

/* ---- the same ---- */

/* A clause that stands in front of another one: what its subject does. */
struct done_before {
    const struct token *from, *to;
};

/* The clause right in front of `at`; false: none of somebody named. */
static bool done_in_front(const struct cursor *line, const struct token *at,
                          struct done_before *out)
{
    static const char *const joints[] = {"and", "then", "so", "while", NULL};
    const struct token *to = at, *from;
    while (to > line->at &&
           (to[-1].filler || to[-1].kind == TOKEN_MARK || token_is_among(to - 1, joints))) {
        to--;
    }
    for (from = to; from > line->at; from--) {
        size_t count;
        const struct token *who = from - 1;
        const struct token *end = players_end(line, who, &count);
        if (count > 0 && clause_begins_at(line, who) && end < to && verb_at(line, end)) {
            *out = (struct done_before){end, to};
            return true;
        }
    }
    return false;
}

/* does the same thing, the same; false: not said. */
static bool take_same(struct cursor *c)
{
    static const char *const sames[] = {
        "does same thing", "does same", "do same thing", "do same", "does likewise",
        "same thing",      "same",      "likewise",      NULL};
    return take_among(c, sames);
}

/* on the left, on the other side: the word for the side, or `other`; NULL: none. */
static const char *side_told(struct cursor *c)
{
    static const struct entry sides[] = {
        {"on left side", 0},  {"on left", 0},          {"to left", 0},     {"to left side", 0},
        {"on right side", 1}, {"on right", 1},         {"to right", 1},    {"to right side", 1},
        {"on other side", 2}, {"on opposite side", 2}, {"on far side", 2}, {"to other side", 2},
        {"on other end", 2},  {"opposite", 2},         {"other side", 2},  {NULL, 0}};
    static const char *const words[] = {"left", "right", "other"};
    int side = take_entry(c, sides);
    return side < 0 ? NULL : words[side];
}

static bool is_side(const struct token *at)
{
    return token_is_word(at, "left") || token_is_word(at, "right");
}

/* What is done before, on the side that is said; false: no side stands in it. */
static bool put_on_side(const struct cursor *line, struct recast *out,
                        const struct done_before *done, const char *side)
{
    bool found = false;
    for (const struct token *at = done->from; at < done->to; at++) {
        struct cursor here = line_look(line, at);
        if (!is_side(at)) {
            recast_copy(line, out, at, at + 1);
            continue;
        }
        bool other = str_is(str_of(side), "other");
        const char *turned = token_is_word(at, "left") ? "right" : "left";
        recast_word(&here, out, other ? turned : side);
        found = true;
    }
    return found;
}

/* What is done before for one, done for another; false: it is not for anybody. */
static bool put_for(const struct cursor *line, struct recast *out, const struct done_before *done,
                    const struct token *whom)
{
    for (const struct token *at = done->from; at + 1 < done->to; at++) {
        bool whose = token_is_word(at, "for") || token_is_word(at, "screens");
        if (whose && attacker_at(at + 1, done->to)) {
            recast_copy(line, out, done->from, at + 1);
            recast_copy(line, out, whom, whom + 1);
            return at + 2 == done->to;
        }
    }
    return false;
}

/* It is done without another one, and on no side: as it stands. */
static bool put_as_it_is(const struct cursor *line, struct recast *out,
                         const struct done_before *done)
{
    for (const struct token *at = done->from; at < done->to; at++) {
        if (attacker_at(at, done->to) || at->kind == TOKEN_DEFENDER || is_side(at)) {
            return false;
        }
    }
    recast_copy(line, out, done->from, done->to);
    return true;
}

/* 2 cuts to the right corner and 3 does the same on the left: to the left corner. */
static const struct token *does_the_same(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    struct done_before done;
    struct cursor trial = line_look(line, at + 1);
    bool does = trial.at < line->end && token_is_word(trial.at, "does");
    if (!attacker_at(at, line->end) || !(does || clause_begins_at(line, at)) || at == line->at ||
        !take_same(&trial)) {
        return NULL;
    }
    const struct token *whom = NULL;
    const char *side = side_told(&trial);
    if (!side && take_words(&trial, "for") && attacker_at(trial.at, line->end)) {
        whom = trial.at++;
        side_told(&trial);
    }
    if (!ends_clause(line, trial.at) || !done_in_front(line, at, &done)) {
        return NULL;
    }
    if (!clause_begins_at(line, at)) {
        struct cursor here = line_look(line, at);
        recast_mark(&here, out, ',');
    }
    recast_copy(line, out, at, at + 1);
    bool put = whom   ? put_for(line, out, &done, whom)
               : side ? put_on_side(line, out, &done, side)
                      : put_as_it_is(line, out, &done);
    if (!put) {
        out->tokens.count = 0;
    }
    return put ? trial.at : NULL;
}

/* ---- what one has another one do ---- */

/* Behind what the other one is to do the first goes on: and drives, and he drives. */
static const struct token *goes_on_himself(const struct cursor *line, const struct token *at,
                                           const struct token *who, struct recast *out)
{
    const struct token *next = at;
    next += next < line->end && (token_is_word(next, "and") || token_is_mark(next, ','));
    next += next > at && next < line->end && token_is_word(next, "then");
    bool he = next > at && next < line->end && token_is_among(next, he_or_she);
    if (next == at || next >= line->end || attacker_at(next, line->end) ||
        !verb_at(line, past_sounds(next + he, line->end))) {
        return at;
    }
    recast_copy(line, out, at, next);
    recast_copy(line, out, who, who + 1);
    return next + he;
}

static const struct token *put_ball_screen(const struct cursor *line, struct recast *out,
                                           const struct token *screener, const struct token *who,
                                           const struct token *end)
{
    struct cursor here = line_look(line, screener);
    recast_copy(line, out, screener, screener + 1);
    recast_word(&here, out, "ball-screens");
    recast_word(&here, out, "for");
    recast_copy(line, out, who, who + 1);
    return goes_on_himself(line, end, who, out);
}

/* 1 calls for a screen from 5: 5 sets it. */
static const struct token *calls_for_it(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    static const char *const calls[] = {"calls for", "asks for", "wants", "signals for", NULL};
    static const char *const nouns[] = {"screen",      "ball screen",      "pick",
                                        "high screen", "high ball screen", NULL};
    static const char *const froms[] = {"from", "by", "of", NULL};
    struct cursor trial = line_look(line, at + 1);
    struct who holder;
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || !take_among(&trial, calls) ||
        !take_among(&trial, nouns) || !take_among(&trial, froms) ||
        !attacker_at(trial.at, line->end) || !ends_clause(line, trial.at + 1) ||
        (at == line->at && above_holder(line, &holder) &&
         holder.number != attacker_at(at, line->end))) {
        return NULL;
    }
    return put_ball_screen(line, out, trial.at, at, trial.at + 1);
}

/* 1 waves 5 up for a screen, sends 2 through to the corner: what 5 and 2 do. */
static const struct token *has_him_do(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const has[] = {"waves",     "calls",   "motions",  "points",
                                      "signals",   "directs", "gestures", "sends",
                                      "waves for", "brings",  NULL};
    static const char *const ways[] = {"up",   "over", "out",    "through", "down",
                                       "away", "back", "across", "off",     NULL};
    static const char *const screens[] = {
        "for screen",      "for ball screen",      "for pick",    "to set screen",
        "to screen",       "to set ball screen",   "to set pick", "to ball screen",
        "for high screen", "to screen for him",    "to set it",   "into ball screen",
        "into screen",     "for high ball screen", NULL};
    struct cursor trial = line_look(line, at + 1);
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || !take_among(&trial, has) ||
        !attacker_at(trial.at, line->end)) {
        return NULL;
    }
    const struct token *other = trial.at++;
    while (take_among(&trial, ways)) {
    }
    struct cursor to = trial;
    if (take_among(&trial, screens) && ends_clause(line, trial.at)) {
        return put_ball_screen(line, out, other, at, trial.at);
    }
    const struct token *spot = take_among(&to, place_words) ? to.at : NULL;
    const struct place *place;
    const struct token *end = spot && spot < line->end ? spot_end(line, spot, &place) : NULL;
    if (!end || !ends_clause(line, end)) {
        return NULL;
    }
    struct cursor here = line_look(line, other);
    out->told = span_join(at->span, other[-1].span);
    recast_copy(line, out, other, other + 1);
    recast_word(&here, out, "goes");
    recast_copy(line, out, trial.at, end);
    return goes_on_himself(line, end, at, out);
}

const struct token *likewise_put(const struct cursor *line, const struct token *at,
                                 struct recast *out)
{
    static plain_way *const ways[] = {does_the_same, calls_for_it, has_him_do, NULL};
    return first_put(ways, line, at, out);
}
