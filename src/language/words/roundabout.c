/* SPDX-License-Identifier: MIT */
/* roundabout: what is said the long way: `gives 1 a pick`, `curl by 3`, `2 is open, 1 hits her`,
 * `3 is overplayed, back door`, `hits 5 on the roll`, `inside to 5`. Rules of recast_find. */
#include "language/words/speech.h"

static const char *const open_words[] = {
    "open",  "wide open", "free",       "all alone", "waiting",         "there",
    "ready", "alone",     "open there", "left open", "wide open there", NULL};

/* 5 gives 1 a pick, 1 throws 5 a lob, set 2 a flare: the noun stands behind whom it is for. */
bool dative(const struct cursor *c, struct recast *r)
{
    static const char *const gives[] = {"gives", "give",  "sets", "set",    "throws",
                                        "throw", "makes", "make", "offers", "tosses",
                                        "toss",  "sends", "send", "feeds",  NULL};
    struct cursor trial = cursor_look(c);
    struct somebody giver = {.from = NULL}, to;
    struct phrase phrase;
    bool named = player_here(&trial, &giver);
    if (!take_among(&trial, gives) || !player_here(&trial, &to)) {
        return false;
    }
    const struct token *noun = trial.at;
    if (!phrase_noun_read(&trial, &phrase) || ends_in_s(&trial.at[-1])) {
        return false;
    }
    enum verb_task task = verb_row(phrase.verb)->task;
    bool screen = task == VERB_SCREEN;
    if (!screen && task != VERB_PASS && task != VERB_EXCHANGE) {
        return false;
    }
    if (named) {
        recast_somebody(c, r, &giver);
    }
    recast_word(c, r, screen ? "sets" : "makes");
    recast_copy(c, r, noun, trial.at);
    recast_word(c, r, screen ? "for" : "to");
    recast_somebody(c, r, &to);
    r->to = trial.at;
    return named || (!screen && recast_holder(c, r));
}

/* 1 hits her with a bounce pass, hit 5 with the skip: what kind stands last. */
bool hits_with(const struct cursor *c, struct recast *r)
{
    static const char *const hits[] = {"hits", "hit", "finds", "find", "feeds", "feed", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody giver = {.from = NULL}, to = {.from = NULL};
    struct phrase phrase;
    struct who him;
    bool named = player_here(&trial, &giver);
    if (!take_among(&trial, hits)) {
        return false;
    }
    bool he = take_among(&trial, him_or_her) && named && above_him(c, &giver.who, &him) &&
              him.kind == WHO_PLAYER;
    if ((!he && !player_here(&trial, &to)) || !take_words(&trial, "with")) {
        return false;
    }
    const struct token *noun = trial.at;
    if (!phrase_noun_read(&trial, &phrase) || ends_in_s(&trial.at[-1]) ||
        verb_row(phrase.verb)->task != VERB_PASS) {
        return false;
    }
    if (named) {
        recast_somebody(c, r, &giver);
    }
    recast_word(c, r, "makes");
    recast_copy(c, r, noun, trial.at);
    recast_word(c, r, "to");
    if (he) {
        recast_number(c, r, him.number);
    } else {
        recast_somebody(c, r, &to);
    }
    r->to = trial.at;
    return named || recast_holder(c, r);
}

/* bounce pass, 1 to 5; handoff: 5 to 1: what it is, and of whom to whom. */
bool noun_of_two(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody from, to;
    const struct token *noun = cursor_next(c);
    if (!noun || !phrase_noun_read(&trial, &phrase) || ends_in_s(&trial.at[-1])) {
        return false;
    }
    enum verb_task task = verb_row(phrase.verb)->task;
    const struct token *end = trial.at;
    bool parted = take_mark(&trial, ',') || take_mark(&trial, ':');
    if ((task != VERB_PASS && task != VERB_EXCHANGE) || !parted || !player_here(&trial, &from) ||
        !take_words(&trial, "to") || !player_here(&trial, &to)) {
        return false;
    }
    recast_somebody(c, r, &from);
    recast_word(c, r, "makes");
    recast_copy(c, r, noun, end);
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    r->to = trial.at;
    return true;
}

/* 2 passes to 5 and goes to get it, goes and gets it back: out of his hands. */
bool goes_to_get(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"goes to get it back",       "goes to get it",
                                        "goes and gets it back",     "goes and gets it",
                                        "runs to get it back",       "runs and gets it back",
                                        "comes to get it back",      "comes and gets it back",
                                        "goes to get it right back", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who = {.from = NULL};
    struct who holder;
    const struct sentence *last = sentence_before(c);
    bool named = player_here(&trial, &who);
    above_list above = above_sentences(c, true);
    last = !last && above.count > 0 ? above.at[above.count - 1] : last;
    if (!last || last->verb != VERB_PASSES || last->object.kind != WHO_PLAYER ||
        !take_among(&trial, words) || !part_ends(&trial) || !above_holder(c, &holder) ||
        !same_who(&holder, &last->object) || last->subject.count != 1 ||
        (named && !same_who(&who.who, &last->subject.at[0]))) {
        return false;
    }
    if (named) {
        recast_somebody(c, r, &who);
    }
    recast_word(c, r, "takes");
    recast_word(c, r, "hand-off");
    recast_word(c, r, "from");
    recast_number(c, r, holder.number);
    r->to = trial.at;
    r->same = !named;
    return true;
}

/* 2 doesn't move, 4 does not leave: he stays. */
bool stays_still(const struct cursor *c, struct recast *r)
{
    static const char *const nots[] = {"doesn't move",         "does not move",
                                       "don't move",           "doesn't leave",
                                       "does not leave",       "doesn't go anywhere",
                                       "does not go anywhere", "never moves",
                                       "won't move",           NULL};
    struct cursor trial = cursor_look(c);
    who_list list;
    const struct token *from = cursor_next(c);
    if (!from || !subject_read(&trial, &list) || who_side(&list.at[0]) != FOR_ATTACKERS) {
        return false;
    }
    const struct token *end = trial.at;
    if (!take_among(&trial, nots) || !part_ends(&trial)) {
        return false;
    }
    recast_copy(c, r, from, end);
    recast_word(c, r, list.count > 1 ? "stay" : "stays");
    r->to = trial.at;
    return true;
}

/* reverse it through 1 to 3: to him, and by him to the other one. */
bool passes_through(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody giver = {.from = NULL}, by, to;
    struct who holder;
    bool named = player_here(&trial, &giver);
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || verb_row(phrase.verb)->task != VERB_PASS ||
        phrase.pass != PASS_PLAIN) {
        return false;
    }
    while (!word_is(&trial, 0, "through") && take_among(&trial, particle_words)) {
    }
    if (!take_words(&trial, "through") || !player_here(&trial, &by)) {
        return false;
    }
    take_particles(&trial);
    if (!take_words(&trial, "to") || !player_here(&trial, &to) || !above_holder(c, &holder) ||
        same_who(&holder, &by.who) || same_who(&by.who, &to.who) ||
        (named && !same_who(&holder, &giver.who)) || holder.kind != WHO_PLAYER ||
        by.who.kind != WHO_PLAYER) {
        return false;
    }
    recast_number(c, r, holder.number);
    recast_word(c, r, "passes");
    recast_word(c, r, "to");
    recast_number(c, r, by.who.number);
    recast_mark(c, r, ',');
    recast_number(c, r, by.who.number);
    recast_word(c, r, "passes");
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    r->to = trial.at;
    return true;
}

/* 5 kicks it out, 4 is waiting: to him. */
bool waits_for_it(const struct cursor *c, struct recast *r)
{
    static const char *const wheres[] = {"opposite",    "cross court",      "to the corner",
                                         "to the wing", "to the weak side", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody giver = {.from = NULL}, to;
    bool named = player_here(&trial, &giver);
    const struct token *verb = trial.at;
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || verb_row(phrase.verb)->task != VERB_PASS) {
        return false;
    }
    const struct token *verb_end = trial.at;
    take_particles(&trial);
    take_among(&trial, wheres);
    if (!take_mark(&trial, ',') || !player_here(&trial, &to) || !take_words(&trial, "is") ||
        !take_among(&trial, open_words) || !part_ends(&trial) ||
        (named && same_who(&giver.who, &to.who))) {
        return false;
    }
    if (named) {
        recast_somebody(c, r, &giver);
    }
    recast_copy(c, r, verb, verb_end);
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    r->to = trial.at;
    return named || recast_holder(c, r);
}

/* 1 off 5 to the right: the verb is left out. */
bool goes_off(const struct cursor *c, struct recast *r)
{
    static const char *const offs[] = {"off", "off of", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who, by;
    if (!player_here(&trial, &who)) {
        return false;
    }
    const struct token *off = trial.at;
    if (!take_among(&trial, offs) || !player_here(&trial, &by) || same_who(&who.who, &by.who)) {
        return false;
    }
    recast_somebody(c, r, &who);
    recast_word(c, r, "comes");
    r->to = off;
    return above_has_screened(c, &by.who, 1); /* else the screen itself would be lost */
}

/* curl by 3, short roll by 5, baseline drive by 1: a bare verb, and who does it behind it. */
bool done_by(const struct cursor *c, struct recast *r)
{
    static const char *const ways[] = {"baseline", "middle", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody agent;
    const struct token *way = cursor_next(&trial), *by;
    bool led = take_among(&trial, ways);
    const struct token *verb = cursor_next(&trial);
    if (!verb || !phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.with_s || ends_in_s(verb) ||
        (led && phrase.verb != VERB_DRIVES)) {
        return false;
    }
    enum verb_task task = verb_row(phrase.verb)->task;
    const struct token *verb_end = trial.at;
    if ((task != VERB_MOVE && task != VERB_USE && task != VERB_CARRY) ||
        !agent_ahead(c, trial.at, &agent, &by) || !str_is(by->text, "by")) {
        return false;
    }
    recast_somebody(c, r, &agent);
    recast_copy(c, r, verb, verb_end);
    if (led) {
        recast_copy(c, r, way, way + 1);
    }
    recast_copy(c, r, verb_end, by);
    r->to = agent.to;
    return true;
}

/* Up to where the clause ends, with `him` and `her` by the number of whom they are. */
static void copy_for(const struct cursor *c, struct recast *r, const struct token *from,
                     const struct somebody *him)
{
    for (; from < c->end && !clause_ends(from); from++) {
        bool same = str_is(from->text, "him") || str_is(from->text, "her");
        const struct token *next = from + 1;
        if (same && (next >= c->end || clause_ends(next) || str_is(next->text, "for") ||
                     str_is(next->text, "at") || str_is(next->text, "in"))) {
            recast_somebody(c, r, him);
        } else {
            recast_copy(c, r, from, from + 1);
        }
    }
    r->to = from;
}

static bool take_so(struct cursor *c)
{
    static const char *const joints[] = {"and so", "so then", "so", "and", NULL};
    bool joined = take_mark(c, ',') || take_mark(c, ';') || take_mark(c, ':');
    return take_among(c, joints) || joined;
}

/* Behind how somebody stands: what is done then, with who that is put for him and her. */
static bool then_done(const struct cursor *c, struct recast *r, const struct token *from,
                      const struct somebody *one, struct cursor *behind)
{
    struct cursor verb = *behind;
    if (!take_so(&verb)) {
        return false;
    }
    struct cursor next = verb;
    r->told = span_join(from->span, behind->at[-1].span);
    if (subject_verb_is(&next)) {
        copy_for(c, r, next.at, one);
        return true;
    }
    struct phrase phrase;
    const struct token *said = verb.at;
    if (!phrase_read(&verb, FOR_ATTACKERS, &phrase) || verb_needs_ball(phrase.verb)) {
        return false;
    }
    recast_somebody(c, r, one); /* he does it himself */
    copy_for(c, r, said, one);
    return true;
}

/* 2 is open, 1 hits her; 4 is waiting in the corner so 1 finds him; 1 has 2 open and hits her. */
bool stands_open(const struct cursor *c, struct recast *r)
{
    static const char *const is[] = {"is", "gets", "stands", NULL};
    static const char *const has[] = {"has", "sees", "finds", "spots", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody one, other;
    const struct token *from = cursor_next(c);
    if (!player_here(&trial, &one)) {
        return false;
    }
    struct cursor seen = trial;
    if (take_among(&seen, has) && player_here(&seen, &other) && take_among(&seen, open_words)) {
        const struct token *end = seen.at;
        struct cursor next = seen;
        if (!take_so(&next) || !verb_begins(&next) || subject_verb_is(&next)) {
            return false;
        }
        recast_somebody(c, r, &one);
        copy_for(c, r, next.at, &other);
        r->told = span_join(from->span, end[-1].span);
        return true;
    }
    if (!take_among(&trial, is) || !take_among(&trial, open_words)) {
        return false;
    }
    struct cursor_mark mark = cursor_mark(&trial);
    struct cursor place = trial;
    if (take_among(&place, place_words) && spot_read(&place, true)) {
        trial.at = place.at; /* is waiting in the corner */
    }
    cursor_back(&place, mark);
    return then_done(c, r, from, &one, &trial);
}

/* 3 is overplayed, back door; 2 is denied so 2 cuts: what his defender does. */
bool overplayed(const struct cursor *c, struct recast *r)
{
    static const struct entry done[] = {{"is overplayed", 1},       {"is being overplayed", 1},
                                        {"gets overplayed", 1},     {"is denied", 0},
                                        {"is being denied", 0},     {"gets denied", 0},
                                        {"is top locked", 1},       {"gets top locked", 1},
                                        {"is being top locked", 1}, {"is trailed", 2},
                                        {"is being trailed", 2},    {"gets trailed", 2},
                                        {"is fronted", 3},          {"is being fronted", 3},
                                        {"gets fronted", 3},        {NULL, 0}};
    static const char *const verbs[] = {"denies", "overplays", "trails", "fronts"};
    struct cursor trial = cursor_look(c);
    struct somebody one;
    if (!player_here(&trial, &one) || one.who.kind != WHO_PLAYER) {
        return false;
    }
    int what = take_entry(&trial, done);
    struct cursor next = trial;
    bool goes_on = what >= 0 && take_so(&next);
    if (what < 0 || (!goes_on && !stop_is(&trial))) {
        return false;
    }
    struct token guarded = token_number(c->arena, one.from, one.who.number);
    guarded.possessive = true;
    VEC_PUSH(c->arena, &r->tokens, guarded);
    recast_word(c, r, "defender");
    recast_word(c, r, verbs[what]);
    r->to = trial.at;
    if (!goes_on) {
        return true;
    }
    struct phrase phrase;
    recast_mark(c, r, ',');
    if (!subject_verb_is(&next)) { /* he himself goes on */
        struct cursor verb = next;
        skip_run_in(&verb);
        if (!phrase_read(&verb, FOR_ATTACKERS, &phrase) || verb_needs_ball(phrase.verb)) {
            return false;
        }
        recast_somebody(c, r, &one);
    }
    r->to = next.at;
    return true;
}

/* 1 hits 5 on the roll: 5 rolls, and gets the pass; where he has not rolled yet. */
bool hit_on_roll(const struct cursor *c, struct recast *r)
{
    static const struct entry deeds[] = {
        {"on roll", 0},       {"rolling", 0},  {"on dive", 0}, {"off roll", 0},
        {"on short roll", 1}, {"on pop", 2},   {"popping", 2}, {"off pop", 2},
        {"on slip", 3},       {"slipping", 3}, {NULL, 0}};
    static const struct entry cuts[] = {
        {"on backdoor cut", 0}, {"on back cut", 0},      {"on back door cut", 0},
        {"on backdoor", 0},     {"on back door", 0},     {"off back cut", 0},
        {"on cut", 1},          {"on his cut", 1},       {"on her cut", 1},
        {"on basket cut", 1},   {"on rim cut", 1},       {"on dive", 1},
        {"on cut to rim", 1},   {"on cut to basket", 1}, {NULL, 0}};
    static const char *const verbs[] = {"rolls", "short-rolls", "pops", "slips"};
    static const char *const cut_verbs[] = {"back-cuts", "cuts"};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody passer = {.from = NULL}, to;
    struct who holder;
    bool named = player_here(&trial, &passer);
    const struct token *verb = trial.at;
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || verb_row(phrase.verb)->task != VERB_PASS) {
        return false;
    }
    take_particles(&trial);
    take_words(&trial, "to");
    if (!player_here(&trial, &to)) {
        return false;
    }
    const struct token *end = trial.at;
    int deed = take_entry(&trial, deeds);
    struct str before = above_verb(c, &to.who);
    bool gone =
        str_starts(before, "rolls") || str_starts(before, "pops") || str_starts(before, "slips");
    bool screened = deed >= 0 && !gone && above_has_screened(c, &to.who, 1);
    int cut = screened ? -1 : (trial.at = end, take_entry(&trial, cuts));
    bool cutter = cut >= 0 && before.size == 0 && part_ends(&trial);
    if ((!screened && !cutter) ||
        (!named && (!above_holder(c, &holder) || holder.kind != WHO_PLAYER))) {
        return false;
    }
    recast_somebody(c, r, &to);
    recast_word(c, r, cutter ? cut_verbs[cut] : verbs[deed]);
    recast_mark(c, r, ',');
    if (named) {
        recast_somebody(c, r, &passer);
    } else {
        recast_number(c, r, holder.number);
    }
    recast_copy(c, r, verb, end);
    r->to = trial.at;
    return true;
}

/* inside to 5, cross-court to 3, and right back to 1: by the one who has the ball. */
bool sideways(const struct cursor *c, struct recast *r)
{
    static const struct entry ways[] = {{"inside", PASS_PLAIN},
                                        {"in", PASS_PLAIN},
                                        {"back", PASS_PLAIN},
                                        {"right back", PASS_PLAIN},
                                        {"back out", PASS_PLAIN},
                                        {"out", PASS_PLAIN},
                                        {"down low", PASS_PLAIN},
                                        {"down inside", PASS_PLAIN},
                                        {"ahead", PASS_PLAIN},
                                        {"back in", PASS_PLAIN},
                                        {"back up", PASS_PLAIN},
                                        {"straight back", PASS_PLAIN},
                                        {"down", PASS_PLAIN},
                                        {"on", PASS_PLAIN},
                                        {"over top", PASS_LOB},
                                        {"cross court", PASS_SKIP},
                                        {"crosscourt", PASS_SKIP},
                                        {"across court", PASS_SKIP},
                                        {NULL, 0}};
    struct cursor trial = cursor_look(c);
    struct somebody to;
    struct who holder;
    take_words(&trial, "and");
    int way = take_entry(&trial, ways);
    if (way < 0 || !take_words(&trial, "to") || !player_here(&trial, &to) ||
        !above_holder(c, &holder) || same_who(&holder, &to.who)) {
        return false;
    }
    recast_word(c, r, way == PASS_SKIP ? "skips" : way == PASS_LOB ? "lobs" : "passes");
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    r->to = trial.at;
    return recast_holder(c, r);
}
