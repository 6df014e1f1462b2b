/* SPDX-License-Identifier: MIT */
/* between: what two players do with the ball between them, as it is said: `1 to 2 to 4`, `the ball
 * is swung to 3`, `give and go with 2`, `comes for the hand-off from 4`. Rules of recast_find. */
#include "language/words/speech.h"

/* Who passes and who takes it, in the many ways two are named; `first` may be missing. */
struct parties {
    bool both;
    struct somebody first, second;
};

static bool take_parties(struct cursor *c, struct parties *out)
{
    static const char *const leads[] = {"from", "between", "with", "for", "by", "of", NULL};
    static const char *const links[] = {"to", "and", "with", "for", NULL};
    struct cursor trial = *c;
    bool with = word_is(c, 0, "with") || word_is(c, 0, "to");
    out->both = false;
    if (take_among(&trial, leads), somebody_read(&trial, &out->first)) {
        struct cursor link = trial;
        if (take_among(&link, links) && somebody_read(&link, &out->second)) {
            out->both = true;
            c->at = link.at;
            return true;
        }
    }
    trial = *c;
    if (!with || !(take_words(&trial, "with") || take_words(&trial, "to")) ||
        !somebody_read(&trial, &out->second)) {
        return false;
    }
    struct cursor agent = trial;
    if (take_words(&agent, "by") && somebody_read(&agent, &out->first)) {
        out->both = true;
        trial = agent;
    }
    c->at = trial.at;
    return true;
}

enum two_name { TWO_GIVE_AND_GO, TWO_HAND_OFF, TWO_ROLL, TWO_POP };
static const struct entry two_names[] = {
    {"give and go", TWO_GIVE_AND_GO},
    {"give n go", TWO_GIVE_AND_GO},
    {"dho", TWO_HAND_OFF},
    {"dribble hand-off", TWO_HAND_OFF},
    {"pick and roll", TWO_ROLL},
    {"pick n roll", TWO_ROLL},
    {"pnr", TWO_ROLL},
    {"screen and roll", TWO_ROLL},
    {"ball screen and roll", TWO_ROLL},
    {"pick and pop", TWO_POP},
    {"pick n pop", TWO_POP},
    {"two-man game", TWO_ROLL},
    {"2-man game", TWO_ROLL},
    {"two-man", TWO_ROLL},
    {"2-man", TWO_ROLL},
    {"screen and pop", TWO_POP},
    {NULL, 0},
};

bool take_two_name(struct cursor *c)
{
    return take_entry(c, two_names) >= 0;
}

/* going right, left side: which way it is run; the last word says. NULL: nothing of that. */
static const struct token *take_run_side(struct cursor *c)
{
    static const char *const sides[] = {
        "going right",  "going left",    "going middle", "to right", "to left", "right side",
        "left side",    "on right side", "on left side", "on right", "on left", "to right side",
        "to left side", "goes right",    "goes left",    NULL};
    struct cursor trial = *c;
    const struct token *from = past_fillers(c->at, c->end);
    take_mark(&trial, ',');
    if (!take_among(&trial, sides) || !part_ends(&trial)) {
        return NULL;
    }
    const struct token *side = NULL;
    for (; from < trial.at; from++) {
        bool way = token_is_word(from, "left") || token_is_word(from, "right") ||
                   token_is_word(from, "middle");
        side = way ? from : side;
    }
    c->at = side ? trial.at : c->at;
    return side;
}

static void put_ball_screen(const struct cursor *c, struct recast *r, const struct parties *p,
                            const struct token *from, const struct token *name, bool pop,
                            const struct token *side)
{
    bool first = above_holds(c, &p->first.who);
    const struct somebody *handler = first ? &p->first : &p->second;
    const struct somebody *screener = first ? &p->second : &p->first;
    recast_somebody(c, r, screener);
    recast_word(c, r, "sets");
    recast_copy(c, r, from, name);
    recast_word(c, r, "ball-screen");
    recast_word(c, r, "for");
    recast_somebody(c, r, handler);
    recast_mark(c, r, ',');
    recast_somebody(c, r, handler);
    recast_word(c, r, "drives");
    recast_word(c, r, "off");
    recast_somebody(c, r, screener);
    if (side) {
        recast_word(c, r, "going");
        recast_copy(c, r, side, side + 1);
    }
    recast_mark(c, r, ',');
    recast_somebody(c, r, screener);
    recast_word(c, r, pop ? "pops" : "rolls");
}

/* give and go 1 and 2, DHO between 1 and 2, high pick and roll 1 and 5. */
bool of_two(const struct cursor *c, struct recast *r)
{
    static const char *const heads[] = {"run",    "set", "play", "high",    "side",
                                        "middle", "top", "wing", "step-up", NULL};
    struct cursor trial = cursor_look(c);
    struct parties parties;
    const struct token *from = cursor_next(c);
    if (take_words(&trial, "run") || take_words(&trial, "play")) {
        from = trial.at;
    }
    while (take_among(&trial, heads)) {
    }
    const struct token *name = trial.at;
    int two = take_entry(&trial, two_names);
    take_mark(&trial, ',');
    take_mark(&trial, ':');
    if (two < 0 || !take_parties(&trial, &parties)) {
        return false;
    }
    struct who holder = {.kind = WHO_NONE};
    above_holder(c, &holder);
    if (two == TWO_ROLL || two == TWO_POP) {
        if (!parties.both && holder.kind == WHO_PLAYER && !same_who(&holder, &parties.second.who)) {
            parties.first = somebody_numbered(c, from, holder);
            parties.both = true;
        }
        bool one = parties.both &&
                   (above_holds(c, &parties.first.who) != above_holds(c, &parties.second.who));
        if (!one) {
            return false;
        }
        const struct token *side = take_run_side(&trial);
        put_ball_screen(c, r, &parties, from, name, two == TWO_POP, side);
        r->to = trial.at;
        return true;
    }
    bool swapped = parties.both && same_who(&holder, &parties.second.who);
    const struct somebody *to = swapped ? &parties.first : &parties.second;
    recast_word(c, r, two == TWO_GIVE_AND_GO ? "gives-and-goes-with" : "dho-with");
    recast_somebody(c, r, to);
    r->to = trial.at;
    if (!parties.both) {
        return !same_who(&holder, &to->who) && recast_holder(c, r);
    }
    recast_acts(c, r, swapped ? &parties.second.who : &parties.first.who);
    return true;
}

/* 1 and 5 run a pick and roll. */
bool two_roll(const struct cursor *c, struct recast *r)
{
    static const char *const plays[] = {"run", "play",      "go into", "set up",
                                        "do",  "flow into", NULL};
    static const char *const heads[] = {"high", "side", "middle", "top", "wing", "step-up", NULL};
    struct cursor trial = cursor_look(c);
    struct parties parties = {.both = true};
    if (!somebody_read(&trial, &parties.first) || !take_words(&trial, "and") ||
        !somebody_read(&trial, &parties.second)) {
        return false;
    }
    take_among(&trial, plays);
    const struct token *from = cursor_next(&trial);
    while (take_among(&trial, heads)) {
    }
    const struct token *name = trial.at;
    int two = take_entry(&trial, two_names);
    bool one = above_holds(c, &parties.first.who) != above_holds(c, &parties.second.who);
    if ((two != TWO_ROLL && two != TWO_POP) || !one || !from) {
        return false;
    }
    const struct token *side = take_run_side(&trial);
    put_ball_screen(c, r, &parties, from, name, two == TWO_POP, side);
    r->to = trial.at;
    return true;
}

/* the ball goes, it is swung: a pass by whoever has it. */
static int take_ball_moves(struct cursor *c)
{
    static const char *const helpers[] = {"is",         "gets",     "is then", "is now",
                                          "is quickly", "has been", "is next", "is being",
                                          "then gets",  "then is",  NULL};
    static const struct entry moves[] = {{"goes", PASS_PLAIN},     {"moves", PASS_PLAIN},
                                         {"comes", PASS_PLAIN},    {"swings", PASS_PLAIN},
                                         {"travels", PASS_PLAIN},  {"is passed", PASS_PLAIN},
                                         {"swung", PASS_PLAIN},    {"passed", PASS_PLAIN},
                                         {"thrown", PASS_PLAIN},   {"kicked", PASS_PLAIN},
                                         {"reversed", PASS_PLAIN}, {"moved", PASS_PLAIN},
                                         {"entered", PASS_PLAIN},  {"dumped", PASS_PLAIN},
                                         {"fed", PASS_PLAIN},      {"sent", PASS_PLAIN},
                                         {"skipped", PASS_SKIP},   {"lobbed", PASS_LOB},
                                         {"bounced", PASS_BOUNCE}, {NULL, 0}};
    struct cursor trial = *c;
    static const char *const balls[] = {"ball", "it", "pass", "first pass", NULL};
    if (!take_among(&trial, balls)) {
        return -1;
    }
    take_among(&trial, helpers);
    int kind = take_entry(&trial, moves);
    if (kind >= 0) {
        c->at = trial.at;
    }
    return kind;
}

static const char *pass_word(int kind)
{
    return kind == PASS_SKIP     ? "skips"
           : kind == PASS_LOB    ? "lobs"
           : kind == PASS_BOUNCE ? "bounce-passes"
                                 : "passes";
}

/* the ball is swung to 3, the ball goes from 1 over to 2. */
bool ball_moves(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody agent, to;
    const struct token *by;
    int kind = take_ball_moves(&trial);
    if (kind < 0) {
        return false;
    }
    take_particles(&trial);
    bool from = take_words(&trial, "from");
    if (from && !somebody_read(&trial, &agent)) {
        return false;
    }
    take_particles(&trial);
    bool in = take_words(&trial, "in");     /* bounced in to 4 */
    if (in && !from && part_ends(&trial)) { /* it's bounced in: to whom, the pass finds out */
        recast_word(c, r, pass_word(kind));
        r->to = trial.at;
        return recast_holder(c, r);
    }
    if (!take_words(&trial, "to") || !somebody_read(&trial, &to)) {
        return false;
    }
    recast_word(c, r, pass_word(kind));
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    r->to = trial.at;
    bool done = !from && agent_ahead(c, trial.at, &agent, &by);
    const struct token *behind = done ? agent.to : c->end;
    behind += behind < c->end && token_is_mark(behind, ',');
    if (behind < c->end && token_is_word(behind, "who")) {
        return false; /* by 1, who relocates: he, and not 2 */
    }
    if (from || done) {
        recast_acts(c, r, &agent.who);
        if (!from) {
            recast_copy(c, r, trial.at, by);
            r->to = agent.to;
        }
        return true;
    }
    return recast_holder(c, r);
}

/* 2 is hit by 1. */
bool passive(const struct cursor *c, struct recast *r)
{
    enum { PASSED, SCREENED };
    static const struct entry done[] = {{"is hit", PASSED},
                                        {"gets hit", PASSED},
                                        {"is found", PASSED},
                                        {"gets found", PASSED},
                                        {"is fed", PASSED},
                                        {"gets fed", PASSED},
                                        {"is passed to", PASSED},
                                        {"is passed the ball", PASSED},
                                        {"is thrown the ball", PASSED},
                                        {"is given the ball", PASSED},
                                        {"gets passed the ball", PASSED},
                                        {"is screened", SCREENED},
                                        {"is screened for", SCREENED},
                                        {"gets screened", SCREENED},
                                        {"gets screened for", SCREENED},
                                        {"is picked", SCREENED},
                                        {"is picked for", SCREENED},
                                        {"is freed", SCREENED},
                                        {"gets freed", SCREENED},
                                        {"is freed by a screen", SCREENED},
                                        {NULL, 0}};
    struct cursor trial = cursor_look(c);
    struct somebody to, agent;
    const struct token *by;
    int what = -1;
    if (!somebody_read(&trial, &to) || (what = take_entry(&trial, done)) < 0 ||
        !agent_ahead(c, trial.at, &agent, &by)) {
        return false;
    }
    recast_word(c, r, what == SCREENED ? "screens" : "passes");
    recast_word(c, r, what == SCREENED ? "for" : "to");
    recast_somebody(c, r, &to);
    recast_copy(c, r, trial.at, by);
    recast_acts(c, r, &agent.who);
    r->to = agent.to;
    struct cursor next = cursor_look(c);
    next.at = agent.to;
    if (take_joint(&next) && !subject_verb_is(&next) && verb_begins(&next)) {
        recast_mark(c, r, ','); /* and comes to the wing: of whom it is told */
        recast_somebody(c, r, &to);
        r->to = next.at;
    }
    return true;
}

/* reversal, swing: of a chain of them. */
static bool noun_of_pass(struct cursor *c)
{
    struct cursor trial = *c;
    struct phrase phrase;
    struct somebody one;
    bool plain = phrase_noun_read(&trial, &phrase) && phrase.verb == VERB_PASSES &&
                 phrase.pass == PASS_PLAIN;
    struct cursor from = trial;
    take_words(&from, "from");
    if (!plain || !somebody_read(&from, &one)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* ball goes 1 to 2 to 4, swing it 2 to 1 to 3, 1 to 2. */
bool chained(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody from, to;
    const struct token *verb = cursor_next(c);
    const char *word = "passes";
    int kind = take_ball_moves(&trial);
    bool said = false;
    if (kind >= 0) {
        word = pass_word(kind);
    } else if (phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        enum verb_task task = verb_row(phrase.verb)->task;
        if (task != VERB_PASS && task != VERB_EXCHANGE) {
            return false;
        }
        said = true;
    } else if (!noun_of_pass(&trial)) {
        take_words(&trial, "ball");
    }
    const struct token *verb_end = trial.at;
    static const char *const overs[] = {"over zone", "over top",     "over defense",
                                        "across",    "across court", NULL};
    static const char *const tops[] = {"over top", "right over top", "up over top", NULL};
    if (said) { /* skip it over the zone 1 to 4 */
        take_among(&trial, overs);
    }
    take_words(&trial, "from");
    if (!somebody_read(&trial, &from) || from.who.kind == WHO_SPOT) {
        return false;
    }
    bool top = take_among(&trial, tops); /* 2 over the top to 3 */
    take_particles(&trial);
    if (!word_is(&trial, 0, "to")) {
        return false;
    }
    for (bool first = true;; first = false) {
        struct cursor next = trial;
        top = take_among(&next, tops) || (first && top);
        take_particles(&next);
        if (!take_words(&next, "to") || !somebody_read(&next, &to) ||
            (to.who.kind == WHO_SPOT && first && !said && kind < 0)) {
            return !first;
        }
        if (!first) {
            recast_mark(c, r, ',');
        }
        recast_somebody(c, r, &from);
        if (said) {
            recast_copy(c, r, verb, verb_end);
        } else {
            recast_word(c, r, top ? "lob-passes" : word);
        }
        recast_word(c, r, "to");
        recast_somebody(c, r, &to);
        from = to;
        trial = next;
        r->to = trial.at;
    }
}

/* 1 dribbles at 2 and flips it to him: a hand-off, to one so near. */
bool gives_there(const struct cursor *c, struct recast *r)
{
    static const char *const gives[] = {"flips it",
                                        "flip it",
                                        "pitches it",
                                        "pitch it",
                                        "gives it",
                                        "give it",
                                        "tosses it",
                                        "toss it",
                                        "shovels it",
                                        "shovel it",
                                        "drops it",
                                        "drop it",
                                        "flips",
                                        "pitches",
                                        "hands it over",
                                        "goes dho",
                                        "goes into hand-off",
                                        "goes into dho",
                                        "goes hand-off",
                                        "dho",
                                        "into hand-off",
                                        NULL};
    struct cursor trial = cursor_look(c);
    const struct sentence *last = sentence_before(c);
    if (!last || last->verb != VERB_DRIBBLES_AT || !take_among(&trial, gives)) {
        return false;
    }
    struct cursor to = trial;
    struct somebody other;
    bool him = false;
    take_particles(&to);
    if (take_words(&to, "to")) {
        him = take_words(&to, "him") || take_words(&to, "her");
        if (!him && (!somebody_read(&to, &other) || !same_who(&other.who, &last->object))) {
            return false;
        }
        trial = to;
    }
    recast_word(c, r, "hands-off"); /* to the one just dribbled at */
    r->to = trial.at;
    return r->same = true;
}

/* 1 passes to 2, back to 1, over to 3: on by whoever has it then. */
bool onward(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    const struct sentence *last = sentence_before(c);
    above_list above = above_sentences(c, true);
    struct somebody to;
    if (!last && word_is(c, 0, "back") && above.count > 0) { /* back to 1, in a line of its own */
        last = above.at[above.count - 1];
    }
    if (!last || verb_row(last->verb)->task != VERB_PASS) {
        return false;
    }
    static const char *const fars[] = {"long", "deep", "right", "straight", NULL};
    while (take_among(&trial, fars) || take_among(&trial, particle_words)) { /* long ahead to 5 */
    }
    take_words(&trial, "on");
    const struct token *from = trial.at;
    if (!take_words(&trial, "to") || !somebody_read(&trial, &to) || to.who.kind == WHO_SPOT) {
        return false;
    }
    recast_word(c, r, "passes");
    recast_copy(c, r, from, trial.at);
    r->to = trial.at;
    return recast_holder(c, r);
}

/* 2 from 1: who gets it, from whom. */
bool from_whom(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody to, by;
    bool article = c->at < c->end && (str_is(c->at->text, "a") || str_is(c->at->text, "another"));
    if (article || !somebody_read(&trial, &to) || to.who.kind == WHO_SPOT ||
        !take_words(&trial, "from") || !somebody_read(&trial, &by) || by.who.kind == WHO_SPOT) {
        return false;
    }
    recast_word(c, r, "passes");
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    recast_acts(c, r, &by.who);
    r->to = trial.at;
    return true;
}

/* Nothing but particles and where he is stands between the verb and the noun. */
static bool straight_for(struct cursor *c, const char *const *fors, const char *const *nouns)
{
    static const char *const outs[] = {"out of", "from", NULL};
    struct cursor trial = *c;
    for (bool more = true; more;) {
        struct cursor out = trial;
        if (take_among(&out, outs) && spot_read(&out, true)) {
            trial = out;
            continue;
        }
        more = take_among(&trial, particle_words);
    }
    bool found = take_among(&trial, fors) && take_among(&trial, nouns);
    c->at = found ? trial.at : c->at;
    return found;
}

/* Further on, behind a place: where `for` stands; NULL: nowhere. */
static const struct token *noun_ahead(struct cursor *c, const char *const *fors,
                                      const char *const *nouns)
{
    for (const struct token *at = c->at; at < c->end && !clause_ends(at); at++) {
        struct cursor trial = cursor_look(c);
        trial.at = at;
        if (take_among(&trial, fors) && take_among(&trial, nouns)) {
            c->at = trial.at;
            return at;
        }
    }
    return NULL;
}

/* 4 comes up out of the corner for the hand-off from 2: it brings him to the ball by itself; where
 * he comes to, if that is said, stays his own movement. */
bool comes_for(const struct cursor *c, struct recast *r)
{
    static const char *const fors[] = {"for",        "into",     "to get",   "to take",
                                       "to receive", "to catch", "and gets", "and takes",
                                       "right into", NULL};
    static const char *const nouns[] = {"hand-off", "dribble hand-off", "dho", "pitch", NULL};
    static const char *const whose[] = {"from", "off of", "off", "by", "with", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody who, giver = {.from = NULL};
    if (!somebody_read(&trial, &who) || who.who.kind == WHO_SPOT ||
        !phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
        (verb_row(phrase.verb)->task != VERB_MOVE && verb_row(phrase.verb)->task != VERB_USE)) {
        return false;
    }
    struct cursor off = trial;
    static const char *const rounds[] = {"off", "around", NULL};
    bool round = take_among(&off, rounds) || phrase_has(&phrase, 'O');
    bool past = round && somebody_read(&off, &giver); /* comes off 4, loops around 4 for it */
    trial = past ? off : trial;
    struct cursor noun = trial;
    bool placed = !straight_for(&noun, fors, nouns);
    const struct token *at = placed ? noun_ahead(&noun, fors, nouns) : noun.at;
    struct cursor by = noun;
    bool named =
        at && ((take_among(&by, whose) && somebody_read(&by, &giver)) || (past && !placed));
    struct who holder = giver.who;
    if (!at || (!named && !above_holder(c, &holder)) || same_who(&holder, &who.who)) {
        return false;
    }
    struct who screener, second;
    enum screen_kind kind;
    if (!placed && above_screen_here(c, &who.who, &screener, &kind, &second) &&
        screener.kind == WHO_PLAYER && second.kind == WHO_NONE &&
        !same_who(&screener, named ? &giver.who : &holder)) { /* off it, into the hand-off */
        recast_somebody(c, r, &who);
        recast_word(c, r, "comes");
        recast_word(c, r, "off");
        recast_number(c, r, screener.number);
        recast_word(c, r, "beside");
        if (named) {
            recast_somebody(c, r, &giver);
        } else {
            recast_number(c, r, holder.number);
        }
        recast_mark(c, r, ',');
    }
    if (placed) { /* comes to the wing for the hand-off */
        recast_copy(c, r, who.from, at);
        recast_mark(c, r, ',');
    }
    r->to = named ? by.at : noun.at;
    if (named) {
        recast_somebody(c, r, &giver);
    } else if (holder.kind == WHO_PLAYER) {
        recast_number(c, r, holder.number);
    } else {
        return false;
    }
    recast_word(c, r, "hands-off");
    recast_word(c, r, "to");
    recast_somebody(c, r, &who);
    struct cursor next = trial; /* and drives: he who took it */
    next.at = r->to;
    if (take_joint(&next) && verb_begins(&next)) {
        recast_mark(c, r, ',');
        recast_word(c, r, "who");
        r->to = next.at;
    }
    return true;
}
