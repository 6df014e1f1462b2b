/* SPDX-License-Identifier: MIT */
/* recast: sentences as they are said, put as they are written: `hit 2 on the wing`, `pump fake by
 * 2`, `1 to 2 to 4`, `the ball is swung to 3`, `have 3 cut`. Each rule knows one way of saying, for
 * every verb and noun of the tables; who acts and is not named is the one who has the ball. */
#include "language/words/speech.h"

#include <string.h>

static struct token word_token(const char *text, const struct token *like)
{
    struct token token = *like;
    token.kind = TOKEN_WORD;
    token.text = str_of(text);
    token.first = text[0];
    token.filler = token.possessive = token.integer = token.stopped = false;
    return token;
}

static void put_word(const struct cursor *c, struct recast *r, const char *text)
{
    const struct token *like = cursor_next(c);
    VEC_PUSH(c->arena, &r->tokens, word_token(text, like));
}

static void put_number(const struct cursor *c, struct recast *r, int number)
{
    struct token token = word_token("", cursor_next(c));
    token.kind = TOKEN_NUMBER;
    token.number = number;
    token.integer = true;
    token.text = str_format(c->arena, "%d", number);
    token.first = token.text.at[0];
    VEC_PUSH(c->arena, &r->tokens, token);
}

static void put_comma(const struct cursor *c, struct recast *r)
{
    struct token token = word_token(",", cursor_next(c));
    token.kind = TOKEN_MARK;
    token.mark = ',';
    token.first = '\0';
    VEC_PUSH(c->arena, &r->tokens, token);
}

static void put_copy(const struct cursor *c, struct recast *r, const struct token *from,
                     const struct token *to)
{
    for (; from < to; from++) {
        VEC_PUSH(c->arena, &r->tokens, *from);
    }
}

/* Where the tokens of somebody stand. */
struct somebody {
    const struct token *from, *to;
    struct who who;
};

static bool attacks(const struct who *who)
{
    return who->kind == WHO_PLAYER || who->kind == WHO_ROLE || who->kind == WHO_SPOT;
}

static bool take_somebody(struct cursor *c, struct somebody *out)
{
    struct cursor_mark mark = cursor_mark(c);
    out->from = past_fillers(c->at, c->end);
    if (who_read(c, &out->who) && attacks(&out->who) && c->refusals == mark.refusals) {
        out->to = c->at;
        return true;
    }
    cursor_back(c, mark);
    return false;
}

static void put_somebody(const struct cursor *c, struct recast *r, const struct somebody *one)
{
    put_copy(c, r, one->from, one->to);
}

static struct cursor look(const struct cursor *c)
{
    struct cursor trial = *c;
    trial.watch = NULL;
    return trial;
}

static bool needs_ball(enum verb verb)
{
    return strchr(verb_row(verb)->needs, 'B') != NULL || verb == VERB_JABS;
}

static bool holder_acts(const struct cursor *c, struct recast *r)
{
    struct who holder;
    if (!above_holder(c, &holder)) {
        return false;
    }
    VEC_PUSH(c->arena, &r->subject, holder);
    return r->taken = true;
}

static void acts(const struct cursor *c, struct recast *r, const struct who *who)
{
    VEC_PUSH(c->arena, &r->subject, *who);
}

static bool clause_ends(const struct token *token)
{
    bool mark = token->kind == TOKEN_MARK &&
                (token->mark == ',' || token->mark == '.' || token->mark == ';');
    return mark || (token->kind == TOKEN_WORD &&
                    (str_is(token->text, "and") || str_is(token->text, "then") ||
                     str_is(token->text, "until") || str_is(token->text, "who")));
}

/* `by 2`, `from 2` further on in the sentence: who does what a noun says. */
static bool find_agent(const struct cursor *c, const struct token *from, struct somebody *agent,
                       const struct token **by)
{
    static const char *const words[] = {"by", "from", NULL};
    for (const struct token *at = from; at < c->end && !clause_ends(at); at++) {
        struct cursor trial = look(c);
        trial.at = at;
        if (!at->filler && take_among(&trial, words) && take_somebody(&trial, agent) &&
            agent->who.kind != WHO_SPOT) {
            *by = at;
            return true;
        }
    }
    return false;
}

/* passes, fakes; but not pass. */
static bool ends_in_s(const struct token *token)
{
    struct str text = token->text;
    return text.size > 2 && text.at[text.size - 1] == 's' && text.at[text.size - 2] != 's';
}

/* hit 2 on the wing, swing it to 3: whoever has the ball. */
static bool imperative(const struct cursor *c, struct recast *r)
{
    struct cursor trial = look(c);
    struct phrase phrase;
    skip_run_in(&trial);
    struct cursor verb = trial;
    if (pair_needs_ball(&trial)) {
        r->to = c->at;
        return holder_acts(c, r);
    }
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || !needs_ball(phrase.verb) || phrase.with_s ||
        ends_in_s(cursor_next(&verb))) {
        return false;
    }
    r->to = c->at;
    return holder_acts(c, r);
}

/* A pass, a fake, a screen, a shot, as a noun; `light` says which verb it stands with. */
static bool take_noun_phrase(struct cursor *c, struct phrase *phrase, const char **light)
{
    enum { MOST = 12 };
    struct token said[MOST + 1];
    const struct token *first = cursor_next(c);
    struct cursor trial = *c;
    *light = "makes";
    if (phrase_noun_read(&trial, phrase)) {
        c->at = trial.at;
        return !ends_in_s(&trial.at[-1]); /* passes is the verb */
    }
    bool dribbles = first && first->kind == TOKEN_NUMBER && /* three dribbles: player 3 does */
                    !(word_is(c, 0, "one") && c->end - first > 1 && !ends_in_s(first + 1));
    if (!first || dribbles || word_is(c, 0, "it") || word_is(c, 0, "ball")) {
        return false;
    }
    size_t left = (size_t)(c->end - first), count = left < MOST ? left : MOST;
    said[0] = word_token("takes", first);
    memcpy(said + 1, first, count * sizeof *said);
    trial.at = said;
    trial.end = said + count + 1;
    if (!phrase_read(&trial, FOR_ATTACKERS, phrase) || trial.at < said + 2 ||
        (phrase->verb != VERB_SHOOTS && phrase->verb != VERB_DRIBBLES)) {
        return false;
    }
    *light = "takes";
    c->at = first + (trial.at - said - 1);
    return true;
}

/* pump fake by 2, pass from 1 to 2, skip pass 3 to 4, pocket pass to 4, entry to 5 by 2, shot. */
static bool nominal(const struct cursor *c, struct recast *r)
{
    struct cursor trial = look(c);
    struct phrase phrase;
    const char *light;
    const struct token *from = cursor_next(c), *by;
    if (!from || !take_noun_phrase(&trial, &phrase, &light)) {
        return false;
    }
    const struct token *noun_end = trial.at;
    struct somebody agent, other;
    struct cursor behind = trial;
    bool shot = phrase.verb == VERB_SHOOTS;
    static const char *const of[] = {"by", "from", NULL};
    static const char *const shots[] = {"by", "for", NULL};
    enum verb_task task = verb_row(phrase.verb)->task;
    bool two = task == VERB_PASS || task == VERB_EXCHANGE;
    put_word(c, r, light);
    put_copy(c, r, from, noun_end);
    if (take_among(&behind, shot ? shots : of) && take_somebody(&behind, &agent)) {
        acts(c, r, &agent.who);
        r->to = behind.at;
        return true;
    }
    behind = trial;
    if (two && take_somebody(&behind, &agent) && word_is(&behind, 0, "to")) {
        const struct token *to = behind.at;
        take_words(&behind, "to");
        if (take_somebody(&behind, &other)) {
            acts(c, r, &agent.who);
            r->to = to;
            return true;
        }
    }
    if (find_agent(c, noun_end, &agent, &by)) {
        put_copy(c, r, noun_end, by);
        acts(c, r, &agent.who);
        r->to = agent.to;
        return true;
    }
    r->to = noun_end;
    return needs_ball(phrase.verb) && holder_acts(c, r);
}

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
    if (take_among(&trial, leads), take_somebody(&trial, &out->first)) {
        struct cursor link = trial;
        if (take_among(&link, links) && take_somebody(&link, &out->second)) {
            out->both = true;
            c->at = link.at;
            return true;
        }
    }
    trial = *c;
    if (!with || !(take_words(&trial, "with") || take_words(&trial, "to")) ||
        !take_somebody(&trial, &out->second)) {
        return false;
    }
    struct cursor agent = trial;
    if (take_words(&agent, "by") && take_somebody(&agent, &out->first)) {
        out->both = true;
        trial = agent;
    }
    c->at = trial.at;
    return true;
}

/* Has the ball as written so far. */
static bool has_ball(const struct cursor *c, const struct who *who)
{
    struct who holder;
    return above_holder(c, &holder) && same_who(&holder, who);
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
    {"screen and pop", TWO_POP},
    {NULL, 0},
};

static void put_ball_screen(const struct cursor *c, struct recast *r, const struct parties *p,
                            const struct token *from, const struct token *name, bool pop)
{
    bool first = has_ball(c, &p->first.who);
    const struct somebody *handler = first ? &p->first : &p->second;
    const struct somebody *screener = first ? &p->second : &p->first;
    put_somebody(c, r, screener);
    put_word(c, r, "sets");
    put_copy(c, r, from, name);
    put_word(c, r, "ball-screen");
    put_word(c, r, "for");
    put_somebody(c, r, handler);
    put_comma(c, r);
    put_somebody(c, r, handler);
    put_word(c, r, "drives");
    put_word(c, r, "off");
    put_somebody(c, r, screener);
    put_comma(c, r);
    put_somebody(c, r, screener);
    put_word(c, r, pop ? "pops" : "rolls");
}

/* give and go 1 and 2, DHO between 1 and 2, high pick and roll 1 and 5. */
static bool of_two(const struct cursor *c, struct recast *r)
{
    static const char *const heads[] = {"run",    "set", "play", "high",    "side",
                                        "middle", "top", "wing", "step-up", NULL};
    struct cursor trial = look(c);
    struct parties parties;
    const struct token *from = cursor_next(c);
    if (take_words(&trial, "run") || take_words(&trial, "play")) {
        from = trial.at;
    }
    while (take_among(&trial, heads)) {
    }
    const struct token *name = trial.at;
    int two = take_entry(&trial, two_names);
    if (two < 0 || !take_parties(&trial, &parties)) {
        return false;
    }
    struct who holder = {.kind = WHO_NONE};
    above_holder(c, &holder);
    if (two == TWO_ROLL || two == TWO_POP) {
        bool one =
            parties.both && (has_ball(c, &parties.first.who) != has_ball(c, &parties.second.who));
        if (!one) {
            return false;
        }
        put_ball_screen(c, r, &parties, from, name, two == TWO_POP);
        r->to = trial.at;
        return true;
    }
    bool swapped = parties.both && same_who(&holder, &parties.second.who);
    const struct somebody *to = swapped ? &parties.first : &parties.second;
    put_word(c, r, two == TWO_GIVE_AND_GO ? "gives-and-goes-with" : "dho-with");
    put_somebody(c, r, to);
    r->to = trial.at;
    if (!parties.both) {
        return !same_who(&holder, &to->who) && holder_acts(c, r);
    }
    acts(c, r, swapped ? &parties.second.who : &parties.first.who);
    return true;
}

/* 1 and 5 run a pick and roll. */
static bool two_roll(const struct cursor *c, struct recast *r)
{
    static const char *const plays[] = {"run", "play",      "go into", "set up",
                                        "do",  "flow into", NULL};
    static const char *const heads[] = {"high", "side", "middle", "top", "wing", "step-up", NULL};
    struct cursor trial = look(c);
    struct parties parties = {.both = true};
    if (!take_somebody(&trial, &parties.first) || !take_words(&trial, "and") ||
        !take_somebody(&trial, &parties.second)) {
        return false;
    }
    take_among(&trial, plays);
    const struct token *from = cursor_next(&trial);
    while (take_among(&trial, heads)) {
    }
    const struct token *name = trial.at;
    int two = take_entry(&trial, two_names);
    bool one = has_ball(c, &parties.first.who) != has_ball(c, &parties.second.who);
    if ((two != TWO_ROLL && two != TWO_POP) || !one || !from) {
        return false;
    }
    put_ball_screen(c, r, &parties, from, name, two == TWO_POP);
    r->to = trial.at;
    return true;
}

/* the ball goes, it is swung: a pass by whoever has it. */
static int take_ball_moves(struct cursor *c)
{
    static const char *const helpers[] = {"is", "gets", "is then", NULL};
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

static void drop_particles(struct cursor *c)
{
    while (take_among(c, particle_words)) {
    }
}

/* the ball is swung to 3, the ball goes from 1 over to 2. */
static bool ball_moves(const struct cursor *c, struct recast *r)
{
    struct cursor trial = look(c);
    struct somebody agent, to;
    const struct token *by;
    int kind = take_ball_moves(&trial);
    if (kind < 0) {
        return false;
    }
    drop_particles(&trial);
    bool from = take_words(&trial, "from");
    if (from && !take_somebody(&trial, &agent)) {
        return false;
    }
    drop_particles(&trial);
    if (!take_words(&trial, "to") || !take_somebody(&trial, &to)) {
        return false;
    }
    put_word(c, r, pass_word(kind));
    put_word(c, r, "to");
    put_somebody(c, r, &to);
    r->to = trial.at;
    if (from || find_agent(c, trial.at, &agent, &by)) {
        acts(c, r, &agent.who);
        if (!from) {
            put_copy(c, r, trial.at, by);
            r->to = agent.to;
        }
        return true;
    }
    return holder_acts(c, r);
}

/* 2 is hit by 1. */
static bool passive(const struct cursor *c, struct recast *r)
{
    static const char *const done[] = {
        "is hit",   "gets hit",     "is found",           "gets found",         "is fed",
        "gets fed", "is passed to", "is passed the ball", "is thrown the ball", NULL};
    struct cursor trial = look(c);
    struct somebody to, agent;
    const struct token *by;
    if (!take_somebody(&trial, &to) || !take_among(&trial, done) ||
        !find_agent(c, trial.at, &agent, &by)) {
        return false;
    }
    put_word(c, r, "passes");
    put_word(c, r, "to");
    put_somebody(c, r, &to);
    put_copy(c, r, trial.at, by);
    acts(c, r, &agent.who);
    r->to = agent.to;
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
    if (!plain || !take_somebody(&from, &one)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* ball goes 1 to 2 to 4, swing it 2 to 1 to 3, 1 to 2. */
static bool chain(const struct cursor *c, struct recast *r)
{
    struct cursor trial = look(c);
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
    take_words(&trial, "from");
    if (!take_somebody(&trial, &from) || from.who.kind == WHO_SPOT) {
        return false;
    }
    drop_particles(&trial);
    if (!word_is(&trial, 0, "to")) {
        return false;
    }
    for (bool first = true;; first = false) {
        struct cursor next = trial;
        drop_particles(&next);
        if (!take_words(&next, "to") || !take_somebody(&next, &to) ||
            (to.who.kind == WHO_SPOT && first && !said && kind < 0)) {
            return !first;
        }
        if (!first) {
            put_comma(c, r);
        }
        put_somebody(c, r, &from);
        if (said) {
            put_copy(c, r, verb, verb_end);
        } else {
            put_word(c, r, word);
        }
        put_word(c, r, "to");
        put_somebody(c, r, &to);
        from = to;
        trial = next;
        r->to = trial.at;
    }
}

/* have 3 cut, get 2 to drive, I want 5 to screen; send 4 to the corner. */
static bool lead(const struct cursor *c, struct recast *r)
{
    static const char *const leads[] = {"have",    "get",      "let",      "make",     "want",
                                        "need",    "i want",   "i need",   "i'd like", "we want",
                                        "we need", "we have",  "you want", "i have",   "we'd like",
                                        "we got",  "you have", NULL};
    struct cursor trial = look(c);
    bool send = take_words(&trial, "send");
    if (!send && !take_among(&trial, leads)) {
        return false;
    }
    const struct token *who = trial.at;
    who_list list;
    struct cursor_mark mark = cursor_mark(&trial);
    if (!subject_read(&trial, &list) || trial.refusals != mark.refusals) {
        cursor_back(&trial, mark);
        return false;
    }
    put_copy(c, r, who, trial.at);
    r->to = trial.at;
    if (send) {
        put_word(c, r, list.count > 1 ? "go" : "goes");
        return word_is(&trial, 0, "to") || word_among(&trial, particle_words);
    }
    struct cursor place = trial;
    take_words(&trial, "to");
    r->to = trial.at;
    if (verb_begins(&trial)) {
        return true;
    }
    drop_particles(&place); /* get 4 up to the wing */
    struct cursor spot = place;
    if (!take_words(&spot, "to") || !spot_read(&spot, true)) {
        return false;
    }
    put_word(c, r, list.count > 1 ? "go" : "goes");
    r->to = place.at;
    return true;
}

/* he drives: whoever has the ball; she cuts: the only one named in the sentence above. */
static bool pronoun(const struct cursor *c, struct recast *r)
{
    static const char *const handlers[] = {"ball handler",
                                           "ballhandler",
                                           "handler",
                                           "dribbler",
                                           "player with the ball",
                                           "inbounder",
                                           "man with the ball",
                                           "guy with the ball",
                                           "whoever has the ball",
                                           "thrower",
                                           NULL};
    struct cursor trial = look(c);
    bool handles = take_among(&trial, handlers);
    if (!handles && !take_words(&trial, "he") && !take_words(&trial, "she")) {
        return false;
    }
    struct cursor verb = trial;
    struct phrase phrase;
    struct who who;
    r->to = trial.at;
    skip_run_in(&verb);
    if (!phrase_read(&verb, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    if (handles || needs_ball(phrase.verb) ? !above_holder(c, &who) : !above_him(c, NULL, &who)) {
        return false;
    }
    acts(c, r, &who);
    return r->taken = true;
}

/* zoom action, / give and go, : the name of what comes. */
static bool label(const struct cursor *c, struct recast *r)
{
    static const char *const last[] = {"action", "look",    "set",     "series", "game",
                                       "motion", "dribble", "offense", "cut",    NULL};
    static const char *const clauses[] = {
        "as",  "after", "when",  "while", "once", "if",     "until", "on",      "off",   "then",
        "not", "no",    "don't", "never", "or",   "before", "at",    "instead", "avoid", NULL};
    const struct token *from = cursor_next(c);
    if (!from || word_among(c, clauses)) {
        return false;
    }
    for (const struct token *at = from; at < c->end && at < from + 8; at++) {
        bool colon = at->kind == TOKEN_MARK && at->mark == ':';
        bool comma = at->kind == TOKEN_MARK && at->mark == ',';
        if (at->kind != TOKEN_WORD && !(at->kind == TOKEN_MARK && at->mark == '-') && !colon &&
            !comma) {
            return false;
        }
        struct cursor word = look(c);
        word.at = at;
        if (!colon && !comma && (word_is(&word, 0, "not") || word_is(&word, 0, "never"))) {
            return false;
        }
        if (!colon && !comma) {
            continue;
        }
        struct cursor name = look(c), end = name;
        end.at = at - 1;
        name.end = at;
        bool named = take_entry(&name, two_names) >= 0 && name.at == at;
        if (at == from || (comma && !named && !word_among(&end, last))) {
            return false;
        }
        r->to = at + 1;
        r->told = span_join(from->span, at[-1].span);
        return at + 1 < c->end;
    }
    return false;
}

/* the corners fill the wings: each on his own side. */
static bool plural(const struct cursor *c, struct recast *r)
{
    static const struct entry spots[] = {
        {"wings", 0},  {"corners", 1},       {"elbows", 2},    {"blocks", 3},       {"slots", 4},
        {"hashes", 5}, {"short corners", 6}, {"mid posts", 7}, {"dunker spots", 8}, {NULL, 0}};
    static const char *const one[] = {"wing", "corner",       "elbow",    "block",      "slot",
                                      "hash", "short-corner", "mid-post", "dunker-spot"};
    static const char *const sides[] = {"left", "right"};
    struct cursor trial = look(c);
    take_words(&trial, "both");
    take_words(&trial, "the two");
    struct cursor subject = trial;
    if (take_entry(&trial, spots) < 0 || !verb_begins(&trial)) {
        return false;
    }
    const struct token *end = trial.at;
    while (end < c->end && !(end->kind == TOKEN_MARK && clause_ends(end))) {
        end++;
    }
    for (int side = 0; side < 2; side++) {
        if (side > 0) {
            put_comma(c, r);
        }
        struct cursor at = subject;
        while (at.at < end) {
            int spot = take_entry(&at, spots);
            if (spot >= 0) {
                put_word(c, r, sides[side]);
                put_word(c, r, one[spot]);
            } else {
                put_copy(c, r, at.at, at.at + 1);
                at.at++;
            }
        }
    }
    r->to = end;
    return true;
}

/* keeps it, driving to the rim; before coming back: his next sentence. */
static bool tail(const struct cursor *c, struct recast *r)
{
    static const char *const keeps[] = {"keeps it", "keep it", "keeps ball", "keep ball", NULL};
    struct cursor trial = look(c);
    struct phrase phrase;
    if (c->at == c->first) {
        return false;
    }
    if (take_among(&trial, keeps)) {
        take_mark(&trial, ',');
        take_words(&trial, "and");
    } else {
        take_words(&trial, "before");
    }
    struct str bare;
    bool modifies = word_is(&trial, 0, "facing") || take_entry(&trial, pace_entries) >= 0;
    if (modifies || !phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare)) {
        return false;
    }
    char *text = arena_array(c->arena, char, bare.size + 1);
    for (size_t i = 0; i < bare.size; i++) {
        text[i] = bare.at[i] == ' ' ? '-' : bare.at[i];
    }
    text[bare.size] = '\0';
    put_word(c, r, text);
    r->to = trial.at;
    return r->same = true;
}

/* The last sentence of this line; NULL: none. */
static const struct sentence *last_here(const struct cursor *c)
{
    if (c->latest) {
        return c->latest;
    }
    return c->here && c->here->count > 0 ? &c->here->at[c->here->count - 1] : NULL;
}

/* 1 dribbles at 2 and flips it to him: a hand-off, to one so near. */
static bool gives_there(const struct cursor *c, struct recast *r)
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
    struct cursor trial = look(c);
    const struct sentence *last = last_here(c);
    if (!last || last->verb != VERB_DRIBBLES_AT || !take_among(&trial, gives)) {
        return false;
    }
    struct cursor to = trial;
    struct somebody other;
    bool him = false;
    drop_particles(&to);
    if (take_words(&to, "to")) {
        him = take_words(&to, "him") || take_words(&to, "her");
        if (!him && (!take_somebody(&to, &other) || !same_who(&other.who, &last->object))) {
            return false;
        }
        trial = to;
    }
    put_word(c, r, "hands-off"); /* to the one just dribbled at */
    r->to = trial.at;
    return r->same = true;
}

/* 1 passes to 2, back to 1, over to 3: on by whoever has it then. */
static bool onward(const struct cursor *c, struct recast *r)
{
    struct cursor trial = look(c);
    const struct sentence *last = last_here(c);
    struct somebody to;
    if (!last || verb_row(last->verb)->task != VERB_PASS) {
        return false;
    }
    drop_particles(&trial);
    take_words(&trial, "on");
    const struct token *from = trial.at;
    if (!take_words(&trial, "to") || !take_somebody(&trial, &to) || to.who.kind == WHO_SPOT) {
        return false;
    }
    put_word(c, r, "passes");
    put_copy(c, r, from, trial.at);
    r->to = trial.at;
    return holder_acts(c, r);
}

/* 2 from 1: who gets it, from whom. */
static bool from_whom(const struct cursor *c, struct recast *r)
{
    struct cursor trial = look(c);
    struct somebody to, by;
    if (!take_somebody(&trial, &to) || to.who.kind == WHO_SPOT || !take_words(&trial, "from") ||
        !take_somebody(&trial, &by) || by.who.kind == WHO_SPOT) {
        return false;
    }
    put_word(c, r, "passes");
    put_word(c, r, "to");
    put_somebody(c, r, &to);
    acts(c, r, &by.who);
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
        struct cursor trial = look(c);
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
static bool comes_for(const struct cursor *c, struct recast *r)
{
    static const char *const fors[] = {"for",        "into",     "to get",   "to take",
                                       "to receive", "to catch", "and gets", "and takes",
                                       "right into", NULL};
    static const char *const nouns[] = {"hand-off", "dribble hand-off", "dho", "pitch", NULL};
    static const char *const whose[] = {"from", "off of", "off", "by", "with", NULL};
    struct cursor trial = look(c);
    struct phrase phrase;
    struct somebody who, giver = {.from = NULL};
    if (!take_somebody(&trial, &who) || who.who.kind == WHO_SPOT ||
        !phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
        (verb_row(phrase.verb)->task != VERB_MOVE && phrase.verb != VERB_COMES)) {
        return false;
    }
    struct cursor off = trial;
    bool past = take_words(&off, "off") && take_somebody(&off, &giver); /* comes off 4 for it */
    trial = past ? off : trial;
    struct cursor noun = trial;
    bool placed = !straight_for(&noun, fors, nouns);
    const struct token *at = placed ? noun_ahead(&noun, fors, nouns) : noun.at;
    struct cursor by = noun;
    bool named =
        at && ((take_among(&by, whose) && take_somebody(&by, &giver)) || (past && !placed));
    struct who holder = giver.who;
    if (!at || (!named && !above_holder(c, &holder)) || same_who(&holder, &who.who)) {
        return false;
    }
    if (placed) { /* comes to the wing for the hand-off */
        put_copy(c, r, who.from, at);
        put_comma(c, r);
    }
    r->to = named ? by.at : noun.at;
    if (named) {
        put_somebody(c, r, &giver);
    } else if (holder.kind == WHO_PLAYER) {
        put_number(c, r, holder.number);
    } else {
        return false;
    }
    put_word(c, r, "hands-off");
    put_word(c, r, "to");
    put_somebody(c, r, &who);
    return true;
}

/* and the ball is on the left side: how things stand then. */
static bool remark(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"ball is on",      "ball is in", "ball is at",
                                        "ball is now",     "ball's on",  "ball's in",
                                        "ball is back on", NULL};
    static const char *const moving[] = {"air", NULL};
    struct cursor trial = look(c);
    if (c->at == c->first || !take_among(&trial, words) || word_among(&trial, moving)) {
        return false;
    }
    const struct token *at = trial.at, *from = cursor_next(c);
    while (at < c->end && !clause_ends(at)) {
        if (at->kind == TOKEN_NUMBER) { /* in 3's hands */
            return false;
        }
        at++;
    }
    r->to = at;
    r->told = span_join(from->span, at[-1].span);
    return at == c->end;
}

bool recast_find(const struct cursor *c, struct recast *out)
{
    static bool (*const rules[])(const struct cursor *, struct recast *) = {
        label,      remark, gives_there, onward,  comes_for, from_whom, lead,
        pronoun,    chain,  ball_moves,  passive, of_two,    two_roll,  nominal,
        imperative, plural, tail,        fronted, stepping};
    for (size_t i = 0; i < sizeof rules / sizeof *rules; i++) {
        *out = (struct recast){.to = c->at, .told = SPAN_NONE};
        struct cursor trial = *c;
        struct cursor_mark mark = cursor_mark(c);
        bool found = !cursor_done(c) && rules[i](c, out);
        cursor_back(&trial, mark); /* what a rule has reported on its way is unsaid */
        if (found) {
            return true;
        }
    }
    return false;
}
