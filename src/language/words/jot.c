/* SPDX-License-Identifier: MIT */
/* jot: a line of notes: `1 pass 2`, `4 DHO 1`, `PnR 1-5`, `5 (post)`, `1: hold`. What its letters
 * stand for is a row of jots.def; here is what a row cannot say, because it is told by who has the
 * ball, or by what stands around. Ways of plain.c, tried before all others. */
#include "language/words/put_plain.h"

#include "language/words/loose_read.h"

/* ---- who has the ball in a line of notes ---- */

static const char *const note_throws[] = {
    "pass",       "lob",         "skip",      "kick",       "swing",     "bounce",
    "dump",       "throw",       "reverse",   "toss",       "dish",      "outlet",
    "skip pass",  "bounce pass", "lob pass",  "kick out",   "kick it",   "swing it",
    "skip it",    "lob it",      "pass it",   "throw it",   "dump it",   "bounce it",
    "pass back",  "throw back",  "kick back", "swing back", "pass over", "kick over",
    "throw over", "back",        "dump down", "drop",       "drop down", NULL};

/* 1 to 2, 1 pass 2: the ball is with 2 then. `at` stands behind who note_throws. */
static int thrown_to(const struct cursor *line, const struct token *at)
{
    static const char *const hands[] = {"dho", "ho", "hands-off", "hand-off", "handoff", NULL};
    struct cursor trial = line_look(line, at);
    bool thrown = take_among(&trial, note_throws) || take_among(&trial, hands);
    bool to = take_words(&trial, "to");
    return thrown || to ? attacker_at(trial.at, line->end) : 0;
}

/* kick 4, where nobody is named: the ball is with 4 then. */
static int thrown_bare(const struct cursor *line, const struct token *at)
{
    struct cursor trial = line_look(line, at);
    bool begins = at == line->at || at[-1].kind == TOKEN_MARK;
    if (!begins || !take_among(&trial, note_throws)) {
        return 0;
    }
    bool to = take_words(&trial, "to");
    int taker = attacker_at(trial.at, line->end);
    bool other = !to && taker && trial.at + 1 < line->end && token_is_word(trial.at + 1, "to");
    return other ? 0 : taker; /* skip 1 to 3 */
}

/* Who has the ball where `at` stands; 0: nothing tells. */
static int ball_at(const struct cursor *line, const struct token *at)
{
    struct who holder;
    int number = above_holder(line, &holder) && holder.kind == WHO_PLAYER ? holder.number : 0;
    for (const struct token *from = line->at; from + 1 < at; from++) {
        int giver = attacker_at(from, line->end);
        int taker = giver ? thrown_to(line, from + 1) : thrown_bare(line, from);
        number = taker ? taker : number;
    }
    return number;
}

/* ---- 1 pass 2 ---- */

/* A pass in the bare word, with nothing between it and the one it is to. */
static const struct token *pass_noted(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    struct cursor trial = line_look(line, at);
    if (at == line->at || (!attacker_at(at - 1, line->end) && !clause_begins_at(line, at)) ||
        token_is_word(at, "back") || !take_among(&trial, note_throws)) {
        return NULL;
    }
    const struct token *to = trial.at;
    if (!attacker_at(to, line->end)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, at, to);
    recast_word(&here, out, "to");
    return to;
}

/* , kick to 3: by the one who has the ball, whoever was named last. */
static const struct token *bare_throw(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    if (at == line->at || at[-1].kind != TOKEN_MARK || token_is_mark(at - 1, '/') ||
        at->kind != TOKEN_WORD || ends_in_s(at)) {
        return NULL;
    }
    static const char *const hands[] = {"dho", "ho", "hand", "handoff", "hands", "hand-off", NULL};
    int taker = thrown_bare(line, at), holder = taker ? ball_at(line, at) : 0;
    for (const struct token *word = line->at; word < at; word++) {
        holder = token_is_among(word, hands) ? 0 : holder; /* who has it then, they tell */
    }
    if (!holder || holder == taker) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_number(&here, out, holder);
    recast_copy(line, out, at, at + 1);
    return at + 1;
}

/* 1>3 lob, skip 2>1, where the arrow is put as `to`: what pass it is. */
static const struct token *arrow_kind(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const struct entry kinds[] = {{"skip", 0}, {"skip pass", 0},   {"sk", 0},
                                         {"lob", 1},  {"lob pass", 1},    {"bounce", 2},
                                         {"bnc", 2},  {"bounce pass", 2}, {NULL, 0}};
    static const char *const verbs[] = {"skip-passes", "lob-passes", "bounce-passes"};
    struct cursor trial = line_look(line, at);
    if (!clause_begins_at(line, at)) {
        return NULL;
    }
    int kind = take_entry(&trial, kinds);
    const struct token *from = trial.at;
    int giver = attacker_at(from, line->end);
    trial.at++;
    if (!giver || !take_words(&trial, "to") || !attacker_at(trial.at, line->end)) { /* the arrow */
        return NULL;
    }
    const struct token *to = trial.at;
    trial.at++;
    kind = kind < 0 ? take_entry(&trial, kinds) : kind;
    if (kind < 0) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, from, from + 1);
    recast_word(&here, out, verbs[kind]);
    recast_word(&here, out, "to");
    recast_copy(line, out, to, to + 1);
    return trial.at;
}

/* 2/3 wide, 1+3 back: both of them. */
static const struct token *both_noted(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    const struct token *mark = at + 1, *second = at + 2;
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || second + 1 >= line->end ||
        !(token_is_mark(mark, '/') || token_is_mark(mark, '+')) ||
        !attacker_at(second, line->end) || second[1].kind != TOKEN_WORD) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "and");
    return second;
}

/* 1-4 high. : how they stand. */
static const struct token *set_noted(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const sets[] = {"high", "low",    "flat",  "set",   "across",
                                       "hi",   "spread", "stack", "horns", NULL};
    struct cursor trial = line_look(line, at + 1);
    if (at != line->at || at->kind != TOKEN_GROUP || !take_among(&trial, sets) ||
        trial.at >= line->end || trial.at->kind != TOKEN_MARK || trial.at + 1 >= line->end) {
        return NULL;
    }
    out->told = span_join(at->span, trial.at[-1].span);
    return trial.at + 1;
}

/* ---- 4 DHO 1 ---- */

/* 4 DHO 1, 4 DHO w/ 1, 2 DHO: from whoever has the ball to the other one. */
static const struct token *dho_noted(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const names[] = {"dho", "d h o", "dhos", NULL};
    static const char *const withs[] = {"with", "w", "to", "for", NULL};
    int who = attacker_at(at, line->end);
    struct cursor trial = line_look(line, at + 1);
    if (!who || !clause_begins_at(line, at) || !take_among(&trial, names)) {
        return NULL;
    }
    take_among(&trial, withs);
    take_mark(&trial, '/');
    int other = attacker_at(trial.at, line->end), holder = ball_at(line, at);
    const struct token *end = trial.at + (other > 0);
    bool ends = end == line->end || clause_ends(end);
    if (!holder || (!other && (who == holder || !ends)) ||
        (other && holder != who && holder != other)) {
        return NULL;
    }
    int taker = who != holder ? who : other;
    struct cursor here = line_look(line, at);
    put_dho(&here, out, holder, taker);
    return end;
}

/* ---- 1 L, 1 mid ---- */

/* 5 scr 1: somebody screens for him in the line, before `at`. */
static bool screened_before(const struct cursor *line, const struct token *at, int number)
{
    static const char *const leads[] = {"for",  "scr",   "scrn", "screen",       "screens",
                                        "bs",   "picks", "pick", "pnr",          "drag",
                                        "bscr", "sets",  "up",   "ball-screens", NULL};
    for (const struct token *to = line->at + 1; to < at; to++) {
        if (attacker_at(to, at) == number && token_is_among(to - 1, leads)) {
            return true;
        }
    }
    return false;
}

/* 5 scr 1, 1 L: off the screen that way; 1 mid: who has the ball drives there. */
static const struct token *side_noted(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const struct entry sides[] = {
        {"l", 0},    {"left", 0},   {"lt", 0},       {"r", 1},    {"right", 1}, {"rt", 1},
        {"mid", 2},  {"middle", 2}, {"baseline", 3}, {"base", 3}, {"bl", 3},    {"go l", 0},
        {"go r", 1}, {"goes l", 0}, {"goes r", 1},   {NULL, 0}};
    static const char *const words[] = {"left", "right", "middle", "baseline"};
    int who = attacker_at(at, line->end);
    struct cursor trial = line_look(line, at + 1);
    if (!who || !clause_begins_at(line, at)) {
        return NULL;
    }
    int side = take_entry(&trial, sides);
    if (side < 0 || !(trial.at == line->end || clause_ends(trial.at)) || ball_at(line, at) != who) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_copy(line, out, at, at + 1);
    recast_word(&here, out, "drives");
    if (screened_before(line, at, who)) {
        recast_word(&here, out, "off");
        recast_word(&here, out, "it");
    }
    recast_word(&here, out, words[side]);
    return trial.at;
}

/* ---- PnR 1-5 ---- */

static const struct entry two_man[] = {
    {"pnr", 0},   {"p & r", 0}, {"p n r", 0},      {"p and r", 0}, {"pick & roll", 0}, {"pnp", 1},
    {"p & p", 1}, {"p n p", 1}, {"pick & pop", 1}, {"p and p", 1}, {NULL, 0}};

/* The letters as words or with the mark between; -1: none of them. */
static int take_two_man(struct cursor *c)
{
    int kind = take_entry(c, two_man);
    const struct token *at = c->at;
    if (kind < 0 && at + 2 < c->end && token_is_mark(at + 1, '&') &&
        (token_is_word(at, "p") || token_is_word(at, "pick"))) {
        static const char *const pops[] = {"p", "pop", NULL};
        static const char *const rolls[] = {"r", "roll", NULL};
        kind = token_is_among(at + 2, rolls) ? 0 : token_is_among(at + 2, pops) ? 1 : -1;
        c->at += kind < 0 ? 0 : 3;
    }
    return kind;
}

/* 1-5, 1+5, 1 and 5, 1/5; false: no two. */
static bool take_two(struct cursor *c, int *first, int *second)
{
    static const char *const withs[] = {"with", "w", "between", "for", NULL};
    const struct token *at = c->at;
    if (at < c->end && at->kind == TOKEN_GROUP && at->text.size == 3) {
        *first = at->text.at[0] - '0';
        *second = at->text.at[2] - '0';
        c->at++;
        return true;
    }
    take_among(c, withs);
    *first = attacker_at(c->at, c->end);
    if (!*first) {
        return false;
    }
    c->at++;
    if (c->at < c->end && (c->at->kind == TOKEN_MARK || token_is_word(c->at, "and") ||
                           token_is_among(c->at, withs))) {
        c->at++;
        c->at += c->at < c->end && token_is_mark(c->at, '/');
    }
    *second = attacker_at(c->at, c->end);
    c->at += *second > 0;
    return *second > 0 && *second != *first;
}

/* PnR 1-5, 5 roll: told again behind it; PnR 1-5, 5 pop: the other of the two, `*kind`. Gives where
 * that is told. */
static const struct token *past_its_end(struct cursor c, int screener, int *kind)
{
    static const struct entry ends[] = {
        {"roll", 0}, {"rolls", 0}, {"pop", 1}, {"pops", 1}, {NULL, 0}};
    const struct token *end = c.at;
    if (c.at >= c.end || c.at->kind != TOKEN_MARK) {
        return end;
    }
    c.at++;
    bool same = attacker_at(c.at, c.end) == screener;
    c.at++;
    int told = same ? take_entry(&c, ends) : -1;
    if (told < 0 || !(c.at == c.end || c.at->kind == TOKEN_MARK)) {
        return end;
    }
    *kind = told;
    return c.at;
}

/* PnR 1-5 going R; 5 PnR w/ 1; 1+5 PnR. */
static const struct token *pnr_noted(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const heads[] = {"hi", "high", "side", "mid", "top", "wing", "spread", NULL};
    static const char *const links[] = {"with", "w", "for", "and", NULL};
    if (!clause_begins_at(line, at)) {
        return NULL;
    }
    struct cursor trial = line_look(line, at);
    int first = attacker_at(at, line->end), second = 0;
    struct cursor pair = trial;
    bool before = first > 0 || at->kind == TOKEN_GROUP;
    if (before && take_two(&pair, &first, &second)) {
        trial = pair;
    } else {
        trial.at += first > 0;
    }
    take_among(&trial, heads);
    int kind = take_two_man(&trial);
    if (kind < 0) {
        return NULL;
    }
    take_among(&trial, links);
    take_mark(&trial, '/');
    if (!first && !take_two(&trial, &first, &second)) {
        return NULL;
    }
    if (!second) {
        second = attacker_at(trial.at, line->end);
        trial.at += second > 0;
    }
    int holder = ball_at(line, at);
    if (!second || (holder != first && holder != second)) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    static const struct entry sides[] = {
        {"l", 0},  {"lt", 0},    {"left", 0},       {"left side", 0}, {"l side", 0}, {"r", 1},
        {"rt", 1}, {"right", 1}, {"right side", 1}, {"r side", 1},    {NULL, 0}};
    struct cursor going = trial;
    take_mark(&going, ',');
    int side = take_entry(&going, sides);
    bool sided = side >= 0 && (going.at == line->end || clause_ends(going.at)); /* PnR 1-5 L */
    const struct token *end =
        past_its_end(sided ? going : trial, holder == first ? second : first, &kind);
    recast_verb(&here, out, kind == 0 ? STR("pick and roll") : STR("pick and pop"));
    recast_number(&here, out, first);
    recast_word(&here, out, "and");
    recast_number(&here, out, second);
    if (sided) {
        recast_word(&here, out, "going");
        recast_word(&here, out, side == 0 ? "left" : "right");
    }
    return end;
}

/* 5 BS 1: a ball screen for the one who has the ball, a back screen for anybody else. */
static const struct token *bs_noted(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    static const char *const letters[] = {"bs", "bscr", "bscrn", NULL};
    const struct token *whom = at + 1;
    if (at == line->at || !attacker_at(at - 1, line->end) || !token_is_among(at, letters) ||
        whom >= line->end) {
        return NULL;
    }
    whom += token_is_word(whom, "for");
    int holder = ball_at(line, at), other = attacker_at(whom, line->end);
    if (!other || !holder) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_word(&here, out, holder == other ? "ball-screens" : "back-screens");
    recast_word(&here, out, "for");
    return whom;
}

/* 2 shot; kick 4, shot: by the one who is named, or who has it then. */
static const struct token *shot_noted(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const shots[] = {
        "score",   "shot",    "layup",  "lay up", "jumper",         "finish",    "j",         "3pt",
        "pull up", "pull-up", "pullup", "pu",     "pull up jumper", "pull up j", "open shot", NULL};
    struct cursor trial = line_look(line, at);
    bool shot = at > line->at && take_among(&trial, shots);
    trial.at += shot && attacker_at(trial.at, line->end) == 3; /* for three points */
    if (!shot || !(trial.at == line->end || trial.at->kind == TOKEN_MARK)) {
        return NULL;
    }
    bool named = attacker_at(at - 1, line->end) && clause_begins_at(line, at - 1);
    bool thrown = attacker_at(at - 1, line->end) && !named;
    int holder = thrown ? attacker_at(at - 1, line->end) : ball_at(line, at);
    if (!named && (!holder || !(thrown || token_is_mark(at - 1, ',')))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    if (thrown) {
        recast_mark(&here, out, ',');
    }
    if (!named) {
        recast_number(&here, out, holder);
    }
    recast_word(&here, out, "shoots");
    return trial.at;
}

/* 2 pass 5, after 2 run to corner: afterwards, as nothing waits for it. */
static const struct token *after_noted(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    const struct token *who = at + 1;
    if (token_is_word(at, "after") && (at > line->at || behind_stop(line, at)) &&
        who + 1 < line->end && token_is_mark(who, ',') &&
        clause_begins_at(line, at)) { /* After, 4 comes in */
        struct cursor after = line_look(line, at);
        recast_word(&after, out, "then");
        return who + 1;
    }
    struct cursor trial = line_look(line, at + 2);
    struct phrase phrase;
    if (at == line->at || !token_is_word(at, "after") || !clause_begins_at(line, at) ||
        !attacker_at(who, line->end) || !phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
        phrase.with_s) {
        return NULL;
    }
    for (const struct token *more = trial.at; more < line->end && !token_is_mark(more, '.');
         more++) {
        if (token_is_mark(more, ',')) {
            return NULL;
        }
    }
    struct cursor here = line_look(line, at);
    recast_word(&here, out, "then");
    return who;
}

/* ---- marks ---- */

/* for 2: R crn -> L wing: from where to where he goes. */
static const struct token *way_noted(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    const struct place *place;
    int who = at > line->at && token_is_mark(at, ':') ? attacker_at(at - 1, line->end) : 0;
    const struct token *end = who ? spot_end(line, at + 1, &place) : NULL;
    if (!end || end >= line->end || !token_is_word(end, "to")) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_mark(&here, out, ',');
    recast_number(&here, out, who);
    recast_word(&here, out, "goes");
    out->told = span_join(at[1].span, end[-1].span);
    return end;
}

/* 5 (post), 4 (R blk): where he is; (ram): only said. */
static const struct token *in_brackets(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    enum { FAR = 6 };
    const struct token *end = at + 1;
    if (!token_is_mark(at, '(') || at == line->at) {
        return NULL;
    }
    while (end < line->end && end <= at + FAR && end->kind == TOKEN_WORD) {
        end++;
    }
    if (end == at + 1 || end >= line->end || !token_is_mark(end, ')')) {
        return NULL;
    }
    static const char *const letters[] = {"r",    "l",    "rt",     "lt",    "right", "left",
                                          "opp",  "post", "low",    "high",  "blk",   "block",
                                          "elb",  "cor",  "crn",    "cnr",   "wing",  "slot",
                                          "nail", "top",  "corner", "elbow", NULL};
    bool where = attacker_at(at - 1, line->end) && token_is_among(at + 1, letters);
    if (!where && attacker_at(at - 1, line->end) && verb_at(line, at + 1)) { /* 1 (pop R wing) */
        struct cursor here = line_look(line, at);
        recast_mark(&here, out, ',');
        recast_copy(line, out, at - 1, at);
        recast_copy(line, out, at + 1, end);
    } else if (where) {
        recast_copy(line, out, at + 1, end);
    } else {
        out->told = span_join(at->span, end->span);
    }
    return end + 1;
}

/* 1: hold; 5: flash nail. */
static const struct token *who_colon(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    if (!attacker_at(at, line->end) || !clause_begins_at(line, at) || at + 2 >= line->end ||
        !token_is_mark(at + 1, ':') || attacker_at(at + 2, line->end) || ends_in_s(at + 2)) {
        return NULL;
    }
    recast_copy(line, out, at, at + 1);
    return at + 2;
}

/* ---- without an ending ---- */

/* A clause of time begins the one that `at` stands in. */
static bool in_a_clause(const struct cursor *line, const struct token *at)
{
    static const char *const ties[] = {"when", "as",     "after", "once",    "while", "until",
                                       "if",   "before", "that",  "because", "so",    NULL};
    while (at > line->at && at[-1].kind != TOKEN_MARK) {
        at--;
        if (token_is_among(at, ties)) {
            return true;
        }
    }
    return false;
}

/* for 1, he go out; for 1 he goes out: and he goes. */
static const struct token *he_goes(const struct cursor *line, const struct token *at,
                                   struct recast *out)
{
    struct cursor trial = line_look(line, at + 1);
    struct phrase phrase;
    if (!token_is_among(at, he_or_she) || at + 1 >= line->end || at == line->at) {
        return NULL;
    }
    bool behind =
        token_is_mark(at - 1, ',') || (attacker_at(at - 1, line->end) && !in_a_clause(line, at));
    bool read = phrase_read(&trial, FOR_ATTACKERS, &phrase);
    bool bare = read && !phrase.with_s && !ends_in_s(at + 1);
    if (!read || (!behind && !bare) || (token_is_mark(at - 1, ',') && in_a_clause(line, at - 1))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    if (behind) {
        recast_word(&here, out, "and");
    }
    recast_copy(line, out, at, at + 1);
    if (bare) {
        recast_verb(&here, out, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
        return trial.at;
    }
    return at + 1;
}

const struct token *jot_put(const struct cursor *line, const struct token *at, struct recast *out)
{
    static plain_way *const ways[] = {side_noted,  arrow_kind, pnr_noted,  dho_noted,
                                      pass_noted,  bs_noted,   shot_noted, after_noted,
                                      in_brackets, who_colon,  way_noted,  bare_throw,
                                      both_noted,  set_noted,  he_goes,    NULL};
    return first_put(ways, line, at, out);
}
