/* SPDX-License-Identifier: MIT */
/* clefts: who acts told in a roundabout way: `3, in the left corner, lifts`, `it is 3 who comes off
 * the screen`, `no sooner has 1 passed than he cuts`, `because x5 helps, 1 passes`. Put in the
 * plain order. Rules of reshape.h. */
#include "language/words/reshape.h"

#include "language/words/loose_read.h"

/* ---- 3, in the left corner, lifts ---- */

/* in the left corner, the screener, still there: what he is, and nothing that is done. */
static bool only_is(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const is[] = {"who is",       "who stands", "who was", "who has been",
                                     "who has ball", "who holds",  NULL};
    struct cursor trial = line_look(c, from);
    const struct place *place;
    take_among(&trial, is);
    for (const struct token *at = trial.at; at < to; at++) {
        if (at->kind == TOKEN_NUMBER || at->kind == TOKEN_DEFENDER || at->kind == TOKEN_QUOTED ||
            at->kind == TOKEN_MARK || token_is_word(at, "who") || token_is_word(at, "and") ||
            token_is_among(at, turning_words)) {
            return false;
        }
        const struct token *end = spot_end(c, at, &place);
        if (end && !(end == to && may_stand_there(c, at, place))) {
            return false;
        }
        if (end) {
            return true;
        }
    }
    return trial.at < to && !verb_at(c, trial.at);
}

bool shape_apposed(const struct cursor *c, const struct token *at, struct recast *r)
{
    enum { FAR = 8 };
    if (!attacker_at(at, c->end) || !clause_begins_at(c, at) || at + 4 >= c->end ||
        !token_is_mark(at + 1, ',')) {
        return false;
    }
    const struct token *end = mark_ahead(c, at + 2, FAR);
    if (end + 1 >= c->end || !token_is_mark(end, ',') || !only_is(c, at + 2, end) ||
        !deed_at(c, end + 1)) {
        return false;
    }
    recast_copy(c, r, c->at, at + 1);
    recast_copy(c, r, end + 1, c->end);
    r->told = span_join(at[2].span, end[-1].span);
    return true;
}

/* ---- it is 3 who comes ---- */

/* 2 is the one who cuts: 2 cuts. */
static bool one_who(const struct cursor *c, const struct token *at, struct recast *r)
{
    struct cursor trial = line_look(c, at + 1);
    if (!attacker_at(at, c->end) || !take_words(&trial, "is")) {
        return false;
    }
    const struct token *one = past_fillers(trial.at, c->end);
    bool is = one + 2 < c->end && token_is_spelled(one) && one->number == 1 &&
              token_is_word(one + 1, "who");
    if (!is || !deed_at(c, one + 2)) {
        return false;
    }
    recast_copy(c, r, c->at, at + 1);
    recast_copy(c, r, one + 2, c->end);
    return true;
}

bool shape_cleft(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const heads[] = {"it is", "it's", "it will be", "that is", NULL};
    static const char *const whos[] = {"who", "that", "to", NULL};
    struct cursor trial = line_look(c, at);
    if (!clause_begins_at(c, at)) {
        return false;
    }
    if (!take_among(&trial, heads)) {
        return one_who(c, at, r);
    }
    const struct token *who = past_fillers(trial.at, c->end);
    if (!attacker_at(who, c->end)) {
        return false;
    }
    trial.at = who + 1;
    if (!take_among(&trial, whos) || trial.at >= c->end || !deed_at(c, trial.at)) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_copy(c, r, who, who + 1);
    recast_copy(c, r, trial.at, c->end);
    return true;
}

/* ---- no sooner has 1 passed than he cuts ---- */

bool shape_no_sooner(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const heads[] = {"no sooner has", "no sooner does", "no sooner is",
                                        "hardly has",    "scarcely has",   NULL};
    static const char *const links[] = {"than", "when", NULL};
    struct cursor trial = line_look(c, at), here = trial;
    if (!sentence_begins_at(c, at) || !take_among(&trial, heads)) {
        return false;
    }
    bool has = token_is_word(trial.at - 1, "has");
    const struct token *who = past_fillers(trial.at, c->end), *than = who;
    while (than < c->end && !token_is_among(than, links)) {
        than++;
    }
    if (!attacker_at(who, c->end) || than + 1 >= c->end || than <= who + 1) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_word(&here, r, "once");
    recast_copy(c, r, who, who + 1);
    if (has) {
        recast_word(&here, r, "has");
    }
    recast_copy(c, r, who + 1, than);
    recast_mark(c, r, ',');
    struct cursor main = line_look(c, than + 1);
    if (take_among(&main, subject_pronouns)) {
        recast_copy(c, r, who, who + 1);
    }
    recast_copy(c, r, main.at, c->end);
    return true;
}

/* ---- because x5 helps, 1 passes ---- */

/* What a defender does, told as the reason: he does it, so the other one does that. */
bool shape_because(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const heads[] = {"because", "seeing that", "now that", NULL};
    struct cursor trial = line_look(c, at);
    if (!sentence_begins_at(c, at) || !take_among(&trial, heads)) {
        return false;
    }
    const struct token *man = past_fillers(trial.at, c->end);
    const struct token *comma = mark_ahead(c, man, c->end - man);
    struct cursor main = line_look(c, comma < c->end ? comma + 1 : comma), here = main;
    if (man >= c->end || man->kind != TOKEN_DEFENDER || comma + 1 >= c->end ||
        !token_is_mark(comma, ',') || !subject_verb_is(&main)) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_copy(c, r, man, comma + 1);
    recast_word(&here, r, "so");
    recast_copy(c, r, comma + 1, c->end);
    return true;
}

/* ---- when x1 and x2 trap 2, 2 passes ---- */

/* Two of them come, and it is waited for: they are told to, and one of them is waited for. */
bool shape_two_come(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const ties[] = {"when", "as", "once", "as soon as", "whenever", NULL};
    static const char *const comes[] = {"trap", "double", "double team", "jump", "blitz", NULL};
    struct cursor trial = line_look(c, at), here = trial;
    if (!clause_begins_at(c, at) || !take_among(&trial, ties)) {
        return false;
    }
    const struct token *one = trial.at;
    if (one + 4 >= c->end || one->kind != TOKEN_DEFENDER || !token_is_word(one + 1, "and") ||
        one[2].kind != TOKEN_DEFENDER || one->possessive || one[2].possessive) {
        return false;
    }
    struct cursor verb = line_look(c, one + 3);
    if (!take_among(&verb, comes)) {
        return false;
    }
    const struct token *whom = past_fillers(verb.at, c->end);
    if (!attacker_at(whom, c->end) || !(whom + 1 == c->end || clause_ends(whom + 1))) {
        return false;
    }
    recast_copy(c, r, one, one + 3);
    recast_word(&here, r, "trap");
    recast_copy(c, r, whom, whom + 1);
    put_stop(c, r);
    recast_copy(c, r, c->at, one + 1);
    recast_word(&here, r, "traps");
    recast_copy(c, r, whom, c->end);
    r->as = str_format(c->arena, "x%d and x%d trap %d", (int)one->number, (int)one[2].number,
                       (int)whom->number);
    return true;
}

/* ---- 1, after passing to 3, cuts ---- */

/* The moment that stands between who acts and what he does: in front of him. */
bool shape_moment_inside(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const ties[] = {"after",  "once", "when", "as",    "before",
                                       "having", "on",   "upon", "while", NULL};
    enum { FAR = 9 };
    if (!attacker_at(at, c->end) || !clause_begins_at(c, at) || at + 5 >= c->end ||
        !token_is_mark(at + 1, ',') || !token_is_among(at + 2, ties)) {
        return false;
    }
    const struct token *end = mark_ahead(c, at + 3, FAR);
    if (end + 1 >= c->end || !token_is_mark(end, ',') || !deed_at(c, end + 1)) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_copy(c, r, at + 2, end + 1);
    recast_copy(c, r, at, at + 1);
    recast_copy(c, r, end + 1, c->end);
    return true;
}

/* ---- drives left, drawing x3, and pitches to 3 ---- */

/* What comes of it, or how he does it, between commas or at the end: nothing that is done by a
 * player with the ball or for another one. */
bool shape_doing_inside(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const aims[] = {"to",   "into", "toward", "towards", "onto", "for",  "from",
                                       "off",  "at",   "on",     "in",      "room", "lane", "out",
                                       "over", "up",   "down",   "behind",  NULL};
    static const char *const acts[] = {
        "ending",   "stopping", "coming",  "going",  "cutting",   "using",     "sending", "leaving",
        "clearing", "making",   "letting", "taking", "finishing", "screening", "facing",  NULL};
    enum { FAR = 8 };
    const struct token *from = at + 1, *end = from;
    if (at == c->at || !token_is_mark(at, ',') || from + 1 >= c->end || !ends_in_ing(from) ||
        token_is_among(from, acts)) {
        return false;
    }
    while (end < c->end && end < from + FAR && end->kind != TOKEN_MARK) {
        if (end->kind == TOKEN_NUMBER || end->kind == TOKEN_QUOTED) {
            return false;
        }
        end++;
    }
    struct cursor verb = line_look(c, from);
    struct phrase phrase;
    struct str said;
    static const char *const sees[] = {"seeing",  "reading",  "noticing", "feeling",
                                       "sensing", "watching", "hearing",  NULL};
    bool ends = end == c->end || sentence_ends(end), sight = token_is_among(from, sees);
    bool act = phrase_ing_here(&verb, FOR_ATTACKERS, &phrase, &said) &&
               verb_row(phrase.verb)->task != VERB_HOLD;
    if (act || end - from < 2 || (!ends && !token_is_mark(end, ',')) ||
        !none_among(from, end, turning_words) || !(sight || none_among(from + 1, end, aims))) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    struct cursor next = line_look(c, ends ? end : end + 1);
    bool joined = !ends && ((next.at < c->end && token_is_word(next.at, "and")) ||
                            token_is_word(at - 1, "and"));
    recast_copy(c, r, joined ? end + 1 : end, c->end);
    r->told = span_join(from->span, end[-1].span);
    return true;
}

/* ---- cuts by 4 to the rim ---- */

/* Off him who has screened for the one who goes, else past him. */
bool shape_by(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const goes[] = {"cuts",  "goes",  "runs",  "dribbles", "comes", "drives",
                                       "cut",   "go",    "run",   "sprints",  "dives", "slides",
                                       "moves", "right", "close", NULL};
    const struct token *whom = at + 1, *clause;
    if (!token_is_word(at, "by") || at < c->at + 2 || whom + 1 >= c->end ||
        !token_is_among(at - 1, goes)) {
        return false;
    }
    int user = acts_in_clause(c, at, &clause);
    struct who who = {.kind = WHO_PLAYER, .number = user, .span = at->span}, by = who, second;
    bool several, waits = user && above_waiting_screen(c, &who, &by, &second, &several);
    bool him = token_is_among(whom, him_or_her);
    if (!user || (him ? !waits || several : !attacker_at(whom, c->end))) {
        return false;
    }
    by.number = him ? by.number : (int)whom->number;
    bool off = him || above_screened(c, &who, &by);
    struct cursor here = line_look(c, at);
    recast_copy(c, r, c->at, at);
    recast_word(&here, r, off ? "off" : "past");
    recast_number(&here, r, by.number);
    recast_copy(c, r, whom + 1, c->end);
    return true;
}

/* ---- bumps 2 as he cuts; screens for 2, and he comes off ---- */

/* The only attacker who is named before `at`; 0: none, or several. */
static int one_named(const struct cursor *c, const struct token *at)
{
    int one = 0;
    for (const struct token *word = c->at; word < at; word++) {
        bool number = word->kind == TOKEN_NUMBER && word->integer && !token_is_spelled(word);
        if (number && one && one != (int)word->number) {
            return 0;
        }
        one = number ? (int)word->number : one;
    }
    return one;
}

/* for 2, of two who screen: the one they do it for. */
static int screened_for(const struct cursor *c, const struct token *at)
{
    static const char *const sets[] = {"screen", "screens", "stagger", "double", NULL};
    const struct token *word = at;
    while (word > c->at + 2 && !(attacker_at(word - 1, c->end) && token_is_word(word - 2, "for"))) {
        word--;
    }
    bool found = word > c->at + 2;
    const struct token *clause = found ? clause_begin(c, word - 2) : NULL;
    size_t count = 0;
    if (!found || none_among(clause, word, sets)) {
        return 0;
    }
    players_end(c, past_fillers(clause, c->end), &count);
    return count > 1 ? (int)word[-1].number : 0;
}

/* he, where that can only be one: in a moment, of the only attacker in the line; behind a screen of
 * two, for whom it is. */
bool shape_he(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const ties[] = {"as", "when", "once", "while", "after", "until", NULL};
    struct cursor verb = line_look(c, at + 1);
    struct phrase phrase;
    if (at < c->at + 3 || at + 1 >= c->end || !token_is_among(at, he_or_she)) {
        return false;
    }
    bool tie = token_is_among(at - 1, ties), joint = clause_begins_at(c, at);
    bool attacks = phrase_read(&verb, FOR_ATTACKERS, &phrase);
    int who = tie && attacks ? one_named(c, at) : joint ? screened_for(c, at) : 0;
    if (!who) {
        return false;
    }
    struct cursor here = line_look(c, at);
    recast_copy(c, r, c->at, at);
    recast_number(&here, r, who);
    recast_copy(c, r, at + 1, c->end);
    return true;
}

/* ---- and 5 flare screens for 2 right after ---- */

bool shape_right_after(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const afters[] = {
        "right after that", "right after", "right afterwards", "immediately after",
        "directly after",   "just after",  "straight after",   NULL};
    struct cursor trial = line_look(c, at), here = trial;
    if (at < c->at + 4 || !take_among(&trial, afters) ||
        !(trial.at == c->end || sentence_ends(trial.at))) {
        return false;
    }
    const struct token *clause = clause_begin(c, at - 1);
    if (clause == c->at) {
        return false;
    }
    put_before(c, r, clause);
    recast_word(&here, r, "then");
    recast_copy(c, r, clause, at);
    recast_copy(c, r, trial.at, c->end);
    return true;
}

/* ---- 2 passes back to 1 as soon as he gets it ---- */

/* His own catch, before what he does with the ball. */
bool shape_own_catch(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const ties[] = {"as soon as", "once", "when", "after", NULL};
    static const char *const gets[] = {"gets it",       "has it",     "catches it", "catches ball",
                                       "receives it",   "gets ball",  "has ball",   "catches",
                                       "has caught it", "has got it", NULL};
    struct cursor trial = line_look(c, at);
    struct somebody acts;
    struct phrase phrase;
    bool own;
    if (at < c->at + 3 || !take_among(&trial, ties) || !take_among(&trial, he_or_she) ||
        !take_among(&trial, gets) || !(trial.at == c->end || clause_ends(trial.at))) {
        return false;
    }
    const struct token *clause = clause_begin(c, at - 1);
    if (!clause_subject(c, clause, &acts, &own)) {
        return false;
    }
    struct cursor verb = line_look(c, own ? acts.to : clause);
    skip_run_in(&verb);
    if (!phrase_read(&verb, FOR_ATTACKERS, &phrase) || !verb_needs_ball(phrase.verb)) {
        return false;
    }
    recast_copy(c, r, c->at, at - (token_is_mark(at - 1, ',') ? 1 : 0));
    recast_copy(c, r, trial.at, c->end);
    r->told = span_join(at->span, trial.at[-1].span);
    return true;
}

/* ---- on 1's drive to the left elbow, 3 slides ---- */

/* drive, catch, screen: as the verb it is. */
static const char *deed_read(struct cursor *c)
{
    static const struct {
        const char *noun, *verb;
    } deeds[] = {{"drive", "drives"},   {"cut", "cuts"},         {"roll", "rolls"},
                 {"pass", "passes"},    {"dribble", "dribbles"}, {"pop", "pops"},
                 {"flash", "flashes"},  {"dive", "dives"},       {"lift", "lifts"},
                 {"catch", "catches"},  {"move", "goes"},        {"slip", "slips"},
                 {"screen", "screens"}, {"shot", "shoots"}};
    for (size_t i = 0; i < sizeof deeds / sizeof *deeds; i++) {
        if (take_words(c, deeds[i].noun)) {
            return deeds[i].verb;
        }
    }
    return NULL;
}

/* 1's, or his, who acts in the clause before; 0: nobody's. */
static int whose_deed(const struct cursor *c, const struct token *at, struct cursor *trial)
{
    static const char *const his[] = {"his", "her", NULL};
    const struct token *clause;
    struct who owner;
    if (take_among(trial, his)) {
        return at > c->at + 1 ? acts_in_clause(c, at - 2, &clause) : 0;
    }
    return owner_read(trial, &owner) && owner.kind == WHO_PLAYER ? owner.number : 0;
}

bool shape_on_deed(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const leads[] = {"on", "with", "off", "upon", NULL};
    struct cursor trial = line_look(c, at), here = trial;
    bool after = take_words(&trial, "after");
    if (!clause_begins_at(c, at) || (!after && !take_among(&trial, leads))) {
        return false;
    }
    int who = whose_deed(c, at, &trial);
    const char *verb = who ? deed_read(&trial) : NULL;
    const struct token *comma = trial.at;
    while (comma < c->end && comma->kind != TOKEN_MARK && !attacker_at(comma, c->end)) {
        comma++;
    }
    bool whom = comma < c->end && attacker_at(comma, c->end) && token_is_word(comma - 1, "for");
    comma += whom ? 1 : 0; /* 4's screen for 2, */
    struct cursor main = line_look(c, comma + (comma < c->end && token_is_mark(comma, ',')));
    if (!verb || comma + 1 >= c->end || !subject_verb_is(&main)) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_word(&here, r, after ? "after" : "as");
    recast_number(&here, r, who);
    recast_word(&here, r, verb);
    recast_copy(c, r, trial.at, comma);
    recast_mark(c, r, ',');
    recast_copy(c, r, main.at, c->end);
    return true;
}

/* ---- 2 and 3 cut one after the other ---- */

/* one after the other, in turn, one by one; where it ends, or NULL. */
static const struct token *in_turn_end(const struct cursor *c, const struct token *at)
{
    static const char *const turns[] = {"in turn", "in that order", "in order", NULL};
    struct cursor trial = line_look(c, at), behind = line_look(c, at + 1);
    if (take_among(&trial, turns)) {
        return trial.at;
    }
    bool one = token_is_spelled(at) && at->number == 1 &&
               (take_words(&behind, "after other") || take_words(&behind, "after another"));
    return one ? behind.at : NULL;
}

bool shape_in_turn(const struct cursor *c, const struct token *at, struct recast *r)
{
    const struct token *end = in_turn_end(c, at), *from = at, *to = end, *begin = at;
    if (!end) {
        return false;
    }
    while (begin > c->at && !sentence_ends(begin - 1)) {
        begin--;
    }
    const struct token *who = past_fillers(begin == at ? end : begin, c->end);
    if (who + 3 >= c->end || !attacker_at(who, c->end) || !token_is_word(who + 1, "and") ||
        !attacker_at(who + 2, c->end)) {
        return false;
    }
    from -= from > c->at && token_is_mark(from - 1, ',') ? 1 : 0;
    to += to < c->end && token_is_mark(to, ',') ? 1 : 0;
    struct cursor here = line_look(c, who);
    bool inside = who < at;
    recast_copy(c, r, c->at, inside ? who + 1 : from);
    if (!inside) {
        recast_copy(c, r, who, who + 1);
    }
    recast_word(&here, r, "then");
    recast_copy(c, r, who + 2, inside ? from : c->end);
    if (inside) {
        recast_copy(c, r, to, c->end);
    }
    return true;
}
