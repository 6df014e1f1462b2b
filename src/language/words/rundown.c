/* SPDX-License-Identifier: MIT */
/* rundown: what a speaker tells beside what is done: where somebody looks, who it may be of several
 * before he says which (`hits whoever, let's say 2`), that it goes around before each pass is told,
 * who they are, that he comes for the hand-off. Ways of plain.c, tried before all others. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"

/* ---- where he looks ---- */

/* at 5 in the post, for 3, inside. */
static void take_looked(struct cursor *c)
{
    static const char *const leads[] = {"at",    "for",   "to",        "down at",
                                        "in at", "in to", "inside to", NULL};
    static const char *const ways[] = {"inside",   "over",         "down low",   "around", "up",
                                       "in there", "around first", "over there", NULL};
    static const char *const posts[] = {"in post", "inside", "down low", "at post", "first", NULL};
    struct cursor trial = *c;
    if (take_among(&trial, leads) && attacker_at(trial.at, c->end)) {
        trial.at++;
        take_among(&trial, posts);
        c->at = trial.at;
    } else {
        take_among(c, ways);
    }
}

/* The clause from `at` on names somebody before `end`: gives it to 4; drops it in is to whom he
 * looked at. */
static bool somebody_in(const struct cursor *line, const struct token *at, const struct token *end)
{
    while (at < end && !clause_ends(at) && !attacker_at(at, line->end)) {
        at++;
    }
    return at < end && attacker_at(at, line->end) > 0;
}

/* , 4 looks at 5: nobody moves by it; 5 looks and gives it to 4: he gives it. */
static const struct token *only_looks(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const looks[] = {"looks", "look", NULL};
    const struct token *who = at;
    while (who < line->end &&
           (token_is_word(who, "and") || token_is_word(who, "then") || token_is_mark(who, ','))) {
        who++;
    }
    struct cursor trial = line_look(line, who + 1);
    if (!attacker_at(who, line->end) || !(who > at || clause_begins_at(line, at)) ||
        !take_among(&trial, looks)) {
        return NULL;
    }
    take_looked(&trial);
    const struct token *end = trial.at;
    if (take_words(&trial, "and") && verb_at(line, trial.at)) { /* who goes on */
        if (somebody_in(line, who + 1, end) && !somebody_in(line, trial.at, line->end)) {
            return NULL;
        }
        recast_copy(line, out, at, who + 1);
        out->told = span_join(who[1].span, end[-1].span);
        return trial.at;
    }
    bool whole = who > at && (end == line->end || clause_ends(end));
    out->told = whole ? span_join(who->span, end[-1].span) : SPAN_NONE;
    return whole ? end : NULL;
}

/* ---- which of them ---- */

/* hits whoever's open, let's say 2: 2. */
static const struct token *says_which(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const any[] = {"whoever",  "whoevers",      "whichever",   "whichevers",
                                      "whomever", "either one",    "one of them", "somebody",
                                      "someone",  "whoever it is", "either",      NULL};
    static const char *const takes[] = {"takes", "picks", "chooses", "finds", NULL};
    static const char *const says[] = {"say", "i'll say", "call it", "make it", NULL};
    enum { FAR = 9 };
    struct cursor trial = line_look(line, at);
    bool take = take_among(&trial, takes);
    const struct token *from = trial.at;
    bool is = from < line->end && from->possessive && str_is(from->text, "whoever"); /* whoever's */
    trial.at += is;
    if (at == line->at || (!is && !take_among(&trial, any))) {
        return NULL;
    }
    for (; trial.at + 1 < line->end && trial.at < from + FAR; trial.at++) {
        struct cursor which = trial;
        bool said = take_among(&which, says) && attacker_at(which.at, line->end);
        if (said && (which.at + 1 == line->end || clause_ends(which.at + 1))) {
            struct cursor here = line_look(line, at);
            out->told = span_join(from->span, which.at[-1].span);
            if (take) {
                recast_word(&here, out, "passes");
                recast_word(&here, out, "to");
            }
            recast_copy(line, out, which.at, which.at + 1);
            return which.at + 1;
        }
        bool one = attacker_at(trial.at, line->end) == 1; /* whichever one */
        if ((attacker_at(trial.at, line->end) && !one) || token_is_mark(trial.at, '.') ||
            clause_ends(trial.at)) {
            return NULL;
        }
    }
    return NULL;
}

/* ---- around ---- */

/* 1, 2 and 3 pass it around, so 1 to 2: which passes is told behind it. */
static const struct token *goes_around(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const arounds[] = {"pass it around",
                                          "pass it back and forth",
                                          "swing it around",
                                          "move it around",
                                          "play catch",
                                          "reverse it",
                                          "pass ball around",
                                          "swing it",
                                          "move ball around",
                                          "swing ball around",
                                          "swing ball",
                                          "reverse ball",
                                          "throw it around",
                                          "pass it to each other",
                                          "pass back and forth",
                                          "move ball",
                                          NULL};
    static const char *const tops[] = {"top",    "perimeter",        "arc", "outside", "horn",
                                       "up top", "three point line", NULL};
    size_t count;
    const struct token *to = players_end(line, at, &count);
    while (attacker_at(to, line->end) || (to < line->end && token_is_word(to, "and"))) {
        count++; /* one two and three, without a mark */
        to++;
    }
    struct cursor trial = line_look(line, past_sounds(to, line->end));
    if (count < 2 || !clause_begins_at(line, at) || !take_among(&trial, arounds)) {
        return NULL;
    }
    take_among(&trial, tops);
    const struct token *end = trial.at;
    while (trial.at < line->end && (token_is_mark(trial.at, ',') || token_is_mark(trial.at, ':') ||
                                    token_is_word(trial.at, "so") || trial.at->filler)) {
        trial.at++;
    }
    const struct token *next = trial.at;
    if (next + 2 >= line->end || !attacker_at(next, line->end) || !token_is_word(next + 1, "to") ||
        !attacker_at(next + 2, line->end)) {
        return NULL;
    }
    out->told = span_join(at->span, end[-1].span);
    return next;
}

/* ---- who they are ---- */

/* The players from `at` on are those. */
static bool same_players(const struct token *at, const struct token *end, const struct token *from,
                         const struct token *to)
{
    bool same = end - at == to - from;
    for (long i = 0; same && i < end - at; i++) {
        same = str_equal(at[i].text, from[i].text);
    }
    return same;
}

/* The only two or more who act together in front of `at`, and who are named so: where, or NULL. */
static const struct token *together_before(const struct cursor *line, const struct token *at,
                                           const struct token **to)
{
    const struct token *found = NULL;
    bool act = false;
    for (const struct token *from = line->at; from < at; from++) {
        size_t count;
        const struct token *end = players_end(line, from, &count);
        if (count < 2 || end >= at) {
            continue;
        }
        if (found && !same_players(from, end, found, *to)) {
            return NULL;
        }
        act = act || (clause_begins_at(line, from) && verb_at(line, past_sounds(end, at)));
        found = from;
        *to = end;
        from = end - 1;
    }
    return act ? found : NULL;
}

/* 4 and 5 come up, and they both screen: 4 and 5, where no other two act. */
static const struct token *they_again(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    const struct token *to = NULL, *verb = past_sounds(at + 1, line->end);
    verb += verb < line->end && token_is_word(verb, "both");
    if (at == line->at || !token_is_word(at, "they") || !clause_begins_at(line, at) ||
        attacker_at(at - 1, line->end) || !verb_at(line, verb)) {
        return NULL;
    }
    const struct token *two = together_before(line, at, &to);
    if (two) {
        recast_copy(line, out, two, to);
    }
    return two ? verb : NULL;
}

/* comes off both of them, off the double: off 4 and 5, where no other two stand in the line. */
static const struct token *off_both(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    static const char *const boths[] = {
        "both of them", "both screens",  "both",      "double", "two of them",
        "stagger",      "double screen", "them both", "them",   NULL};
    const struct token *to = NULL;
    struct cursor trial = line_look(line, at + 1);
    if (at == line->at || !(token_is_word(at, "off") || token_is_word(at, "uses"))) {
        return NULL;
    }
    take_words(&trial, "of");
    const struct token *two = take_among(&trial, boths) ? together_before(line, at, &to) : NULL;
    if (!two) {
        return NULL;
    }
    recast_copy(line, out, at, at + 1);
    recast_copy(line, out, two, to);
    return trial.at;
}

/* ---- who sets it ---- */

/* 5 sets it 1 uses it: for 1, who goes on without a word between. */
static const struct token *set_for_next(const struct cursor *line, const struct token *at,
                                        struct recast *out)
{
    static const char *const sets[] = {"sets it", "sets screen",      "sets pick", "screens",
                                       "picks",   "sets ball screen", "set it",    NULL};
    static const char *const uses[] = {"uses",    "comes off", "goes off", "rejects",
                                       "refuses", "takes",     "turns",    NULL};
    struct cursor trial = line_look(line, at + 1);
    struct who holder;
    int who = attacker_at(at, line->end);
    if (!who || !clause_begins_at(line, at) || !take_among(&trial, sets)) {
        return NULL;
    }
    int user = attacker_at(trial.at, line->end);
    struct cursor use = line_look(line, trial.at + 1);
    if (!user || user == who || !take_among(&use, uses) || !above_holder(line, &holder)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, holder.number == user ? "ball-screens" : "screens");
    recast_word(&here, out, "for");
    recast_copy(line, out, trial.at, trial.at + 1);
    recast_mark(&here, out, ',');
    return trial.at;
}

/* ---- for the hand-off ---- */

/* runs in for the hand-off, comes by him for a hand-off: gets it. */
static const struct token *goes_for_it(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const goes[] = {"runs",    "run",  "goes",   "go",    "comes",   "come",
                                       "sprints", "cuts", "swings", "loops", "circles", NULL};
    static const char *const ways[] = {"right",  "in",   "by",     "over", "back",   "up",
                                       "around", "off",  "off of", "past", "behind", "under",
                                       "tight",  "hard", "out",    NULL};
    static const char *const whom[] = {"him", "her", "it", NULL};
    static const char *const fors[] = {"for hand off",      "for handoff",          "for hand-off",
                                       "for dho",           "for dribble hand off", "for exchange",
                                       "and gets hand off", "and takes hand off",   NULL};
    struct cursor trial = line_look(line, at);
    if (at == line->at || !take_among(&trial, goes)) {
        return NULL;
    }
    while (take_among(&trial, ways)) {
    }
    take_among(&trial, whom);
    if (!take_among(&trial, fors) || !(trial.at == line->end || clause_ends(trial.at))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_word(&here, out, "gets");
    recast_word(&here, out, "hand-off");
    return trial.at;
}

/* ---- who goes where, one behind the other ---- */

/* 3 to the left corner: where that is over; NULL: no leg. */
static const struct token *leg_end(const struct cursor *line, const struct token *at)
{
    static const char *const ways[] = {"up", "down", "over", "out", "back", "across", NULL};
    static const char *const tos[] = {"to", "in", "into", "on", "at", NULL};
    const struct place *place;
    struct cursor trial = line_look(line, at + 1);
    if (!attacker_at(at, line->end)) {
        return NULL;
    }
    while (take_among(&trial, ways)) {
    }
    if (!take_among(&trial, tos)) {
        return NULL;
    }
    const struct token *spot = past_fillers(trial.at, line->end);
    return spot < line->end && !attacker_at(spot, line->end) ? spot_end(line, spot, &place) : NULL;
}

/* 3 to the left corner 2 to the right corner: a stop between, and each goes there. */
static const struct token *legs_run_on(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    const struct token *end = clause_begins_at(line, at) ? leg_end(line, at) : NULL;
    if (!end || !leg_end(line, end)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    const struct token *leg = at;
    for (; end; leg = end, end = leg_end(line, leg)) {
        if (leg > at) {
            recast_mark(&here, out, ',');
        }
        recast_copy(line, out, leg, leg + 1);
        recast_word(&here, out, "goes");
        recast_copy(line, out, leg + 1, end);
    }
    return leg;
}

/* ---- where he is already ---- */

/* screens for 3 on the left side, hits 3 on the left: where 3 stands, and nothing else. */
static const struct token *on_his_side(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const struct entry sides[] = {{"on left side", SIDE_LEFT},
                                         {"on right side", SIDE_RIGHT},
                                         {"on left", SIDE_LEFT},
                                         {"on right", SIDE_RIGHT},
                                         {"over on left", SIDE_LEFT},
                                         {"over on right", SIDE_RIGHT},
                                         {"over on left side", SIDE_LEFT},
                                         {"over on right side", SIDE_RIGHT},
                                         {NULL, 0}};
    static const char *const leads[] = {"to", "for", "hits", "finds", "of", "screens", NULL};
    const struct place *place;
    struct who who = {.kind = WHO_PLAYER, .number = attacker_at(at, line->end)};
    struct spot_stood stood;
    struct cursor trial = line_look(line, at + 1);
    if (!who.number || at == line->at || !token_is_among(at - 1, leads)) {
        return NULL;
    }
    int side = take_entry(&trial, sides);
    bool ends = trial.at == line->end || clause_ends(trial.at) ||
                (attacker_at(trial.at, line->end) && verb_at(line, trial.at + 1));
    if (side < 0 || !ends || !above_stands(line, &who, &stood) || (int)stood.side != side ||
        spot_end(line, at + 1, &place) > trial.at) {
        return NULL;
    }
    out->told = span_join(at[1].span, trial.at[-1].span);
    recast_copy(line, out, at, at + 1);
    return trial.at;
}

const struct token *rundown_put(const struct cursor *line, const struct token *at,
                                struct recast *out)
{
    static plain_way *const ways[] = {only_looks,  says_which, goes_around,  they_again,
                                      goes_for_it, off_both,   set_for_next, legs_run_on,
                                      on_his_side, NULL};
    return first_put(ways, line, at, out);
}
