/* SPDX-License-Identifier: MIT */
/* handoff: hand-offs as they are said: `pitch it to 2 on the run`, `1 gives to 3 who stands beside
 * him`, `weave, 1 to 2 to 3`, `exchange between 5 and 2`, and those that are not taken or not
 * given. Rules of recast_find. */
#include "language/words/speech.h"

/* on the run, coming by: he is near when he gets it. */
static bool take_near(struct cursor *c)
{
    static const char *const nears[] = {"on the run",
                                        "on the move",
                                        "on the way by",
                                        "coming by",
                                        "coming up",
                                        "coming off",
                                        "coming around",
                                        "coming over",
                                        "coming over top",
                                        "going by",
                                        "as he comes by",
                                        "as she comes by",
                                        "as he comes up",
                                        "as she comes up",
                                        "as he comes over",
                                        "as she comes over",
                                        "as he goes by",
                                        "as she goes by",
                                        "coming off his hip",
                                        "coming off her hip",
                                        "on a hand-off",
                                        "for a hand-off",
                                        "as a hand-off",
                                        "in a hand-off",
                                        "with a hand-off",
                                        "as he comes around",
                                        "as she comes around",
                                        "curling around",
                                        NULL};
    return take_among(c, nears);
}

static const char *const gives[] = {"gives it to",
                                    "give it to",
                                    "gives to",
                                    "give to",
                                    "gives ball to",
                                    "give ball to",
                                    "pitches it to",
                                    "pitch it to",
                                    "pitches to",
                                    "pitch to",
                                    "flips it to",
                                    "flip it to",
                                    "flips to",
                                    "flip to",
                                    "tosses it to",
                                    "toss it to",
                                    "drops it to",
                                    "drop it to",
                                    "flips it back to",
                                    "flip it back to",
                                    "pitches it back to",
                                    "pitch it back to",
                                    "shovels it to",
                                    "shovel it to",
                                    "hands it to",
                                    "hand it to",
                                    "gives it back to",
                                    "give it back to",
                                    NULL};

/* 3 went beside 4, or 4 dribbled at 3. */
static bool stands_beside(const struct cursor *c, const struct who *one, const struct who *other)
{
    above_list list = above_sentences(c, false);
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        if (acts_in(s, one)) {
            return s->place && s->place->kind == PLACE_BESIDE && same_who(&s->place->who, other);
        }
        if (s->verb == VERB_DRIBBLES_AT && same_who(&s->subject.at[0], other) &&
            same_who(&s->object, one)) {
            return true;
        }
    }
    return false;
}

/* runs around her for the hand-off: he wants it back. */
static bool back_ahead(const struct cursor *c)
{
    static const char *const backs[] = {
        "for hand-off", "for handback",  "for dho",   "to get hand-off",

        "for it back",  "into hand-off", "for pitch", NULL};
    for (const struct token *at = c->at; at < c->end && !token_is_mark(at, '.'); at++) {
        struct cursor here = *c;
        here.at = at;
        if (!at->filler && word_among(&here, backs)) {
            return true;
        }
    }
    return false;
}

/* 4 cuts to the rim, 5 gives it to 4: too far off to be handed. */
static bool has_gone(const struct cursor *c, const struct who *who)
{
    const struct sentence *last = sentence_before(c);
    return last && last->subject.count == 1 && same_who(&last->subject.at[0], who) &&
           verb_row(last->verb)->task == VERB_MOVE && last->place &&
           last->place->kind == PLACE_SPOT && last->verb != VERB_FLASHES;
}

/* gives it to 3: handed, where he is near or comes by; passed, where it comes back in a hand-off.
 */
bool gives_to(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody giver = {.from = NULL}, to;
    struct who holder;
    bool named = player_here(&trial, &giver);
    bool plain = word_is(&trial, 0, "gives") || word_is(&trial, 0, "give");
    if (!take_among(&trial, gives) || !player_here(&trial, &to)) {
        return false;
    }
    if (!named && !above_holder(c, &holder)) {
        return false;
    }
    const struct who *who = named ? &giver.who : &holder;
    struct cursor back = trial;
    static const char *const ways[] = {"going middle", "going baseline", "going left",
                                       "going right",  "going downhill", NULL};
    bool near = take_near(&trial) || stands_beside(c, &to.who, who);
    bool comes_back = !near && plain && (back_ahead(&back) || has_gone(c, &to.who));
    if ((!near && !comes_back) || same_who(&to.who, who)) {
        return false;
    }
    if (named) {
        recast_somebody(c, r, &giver);
    }
    recast_word(c, r, comes_back ? "passes" : "hands-off");
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    struct cursor way = trial;
    take_mark(&way, ',');
    if (near && take_among(&way, ways)) { /* who drives on */
        recast_mark(c, r, ',');
        recast_somebody(c, r, &to);
        recast_word(c, r, "drives");
        recast_copy(c, r, way.at - 1, way.at);
        trial = way;
    }
    r->to = trial.at;
    return named || recast_holder(c, r);
}

/* flip it right back: to the one it came from. */
bool flips_back(const struct cursor *c, struct recast *r)
{
    static const char *const flips[] = {"flip it", "pitch it", "give it", "hand it", NULL};
    static const char *const backs[] = {"right back", "straight back", "back", NULL};
    struct cursor trial = cursor_look(c);
    if (!take_among(&trial, flips) || !word_among(&trial, backs)) {
        return false;
    }
    const struct token *back = trial.at;
    take_among(&trial, backs);
    if (!part_ends(&trial)) {
        return false;
    }
    recast_word(c, r, "throw");
    recast_word(c, r, "it");
    r->to = back;
    return recast_holder(c, r);
}

static void put_hand_off(const struct cursor *c, struct recast *r, const struct somebody *from,
                         const struct somebody *to)
{
    if (r->tokens.count > 0) {
        recast_mark(c, r, ',');
    }
    recast_somebody(c, r, from);
    recast_word(c, r, "dho-with");
    recast_somebody(c, r, to);
}

/* three man weave, 1 to 2, 2 to 3: each on the dribble. */
bool weave(const struct cursor *c, struct recast *r)
{
    static const char *const names[] = {"three weave",
                                        "3 weave",
                                        "five weave",
                                        "weave",
                                        "weave it",
                                        "weave it up top",
                                        "three man weave",
                                        "3 man weave",
                                        "run weave",
                                        "weave up top",
                                        "five man weave",
                                        "dribble weave",
                                        "weave action",
                                        "hand-offs",
                                        "dribble hand-offs",
                                        "weave it out top",
                                        NULL};
    static const char *const verbs[] = {"gives it",  "gives",        "give",        "hands it",
                                        "hands off", "hands it off", "dribbles it", "dribbles over",
                                        "hands",     "pitches it",   "goes",        "dhos",
                                        "flips it",  "passes",       NULL};
    static const char *const how[] = {
        "all by hand-offs", "by hand-off", "by hand-offs", "all hand-offs", "hand-offs",
        "all on hand-offs", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody from, to;
    if (!take_among(&trial, names)) {
        return false;
    }
    bool any = false;
    for (;;) {
        struct cursor next = trial;
        take_mark(&next, ':');
        take_joint(&next);
        if (!player_here(&next, &from)) {
            break;
        }
        take_among(&next, verbs);
        size_t before = r->tokens.count;
        while (take_words(&next, "to") && player_here(&next, &to)) {
            put_hand_off(c, r, &from, &to);
            from = to;
            trial = next;
        }
        if (r->tokens.count == before) {
            break;
        }
        any = true;
    }
    struct cursor told = trial;
    take_mark(&told, ',');
    r->to = take_among(&told, how) ? told.at : trial.at;
    return any;
}

/* exchange at the elbow between 5 and 2, where 5 has the ball: it is the ball that changes hands.
 */
bool exchanges_ball(const struct cursor *c, struct recast *r)
{
    static const char *const names[] = {"exchange", "ball exchange", "exchange of ball",
                                        "hand-off", "swap",          NULL};
    static const char *const links[] = {"and", "to", "with", NULL};
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct somebody two[2];
    if (!take_among(&trial, names)) {
        return false;
    }
    const struct token *where = past_fillers(trial.at, trial.end);
    bool placed = take_among(&trial, place_words) && spot_read(&trial, true) != NULL;
    const struct token *where_end = trial.at;
    cursor_back(&trial, mark);
    trial.at = placed ? where_end : where;
    take_words(&trial, "between");
    if (!player_here(&trial, &two[0]) || !take_among(&trial, links) ||
        !player_here(&trial, &two[1]) ||
        above_holds(c, &two[0].who) == above_holds(c, &two[1].who)) {
        return false;
    }
    bool second = above_holds(c, &two[1].who);
    recast_somebody(c, r, &two[second]);
    recast_word(c, r, "hands-off");
    recast_word(c, r, "to");
    recast_somebody(c, r, &two[!second]);
    if (placed) {
        r->told = span_join(where->span, where_end[-1].span);
    }
    r->to = trial.at;
    return true;
}

/* no give, no hand-off: what is not done. */
bool no_give(const struct cursor *c, struct recast *r)
{
    static const char *const nos[] = {"no give", "no hand-off", "no handoff",
                                      "no dho",  "no pitch",    NULL};
    struct cursor trial = cursor_look(c);
    const struct token *from = cursor_next(c);
    if (!take_among(&trial, nos) || !(take_mark(&trial, ',') || take_words(&trial, "and"))) {
        return false;
    }
    r->to = trial.at;
    r->told = span_join(from->span, trial.at[-2].span);
    return subject_verb_is(&trial) || verb_begins(&trial);
}

/* 2 refuses it, backdoor instead; 5 keeps it and fakes the hand-off to 2 coming up. */
bool not_taken(const struct cursor *c, struct recast *r)
{
    static const char *const refuses[] = {"refuses it",
                                          "rejects it",
                                          "waves it off",
                                          "denies it",
                                          "refuses hand-off",
                                          "rejects hand-off",
                                          "waves off hand-off",
                                          "turns down hand-off",
                                          "turns it down",
                                          "declines hand-off",
                                          "does not take it",
                                          "doesn't take it",
                                          "refuses dho",
                                          "skips hand-off",
                                          "declines it",
                                          "runs by hand-off",
                                          NULL};
    static const char *const keeps[] = {"keeps it", "keeps ball", "keeps", "holds it", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    struct who user, screener;
    if (!player_here(&trial, &who)) {
        return false;
    }
    const struct token *from = past_fillers(trial.at, trial.end);
    bool keep = take_among(&trial, keeps) && above_holds(c, &who.who);
    bool screen = above_last_screen(c, &user, &screener) && same_who(&user, &who.who);
    if (!keep && (screen || !take_among(&trial, refuses))) {
        return false;
    }
    const struct token *to = trial.at;
    bool joined = take_joint(&trial);
    if ((!joined && !keep) || subject_verb_is(&trial) || !verb_begins(&trial)) {
        return false;
    }
    recast_somebody(c, r, &who);
    r->told = keep ? SPAN_NONE : span_join(from->span, to[-1].span);
    r->to = trial.at;
    return true;
}

/* fakes the hand-off to 2 coming up: who comes is sent there. */
bool faked_to_comer(const struct cursor *c, struct recast *r)
{
    static const char *const fakes[] = {"fakes hand-off", "fakes dho",     "fakes it",
                                        "fakes pitch",    "fake hand-off", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who, to;
    if (!player_here(&trial, &who) || !take_among(&trial, fakes) ||
        !(take_words(&trial, "to") || take_words(&trial, "with")) || !player_here(&trial, &to) ||
        !take_near(&trial)) {
        return false;
    }
    recast_somebody(c, r, &to);
    recast_word(c, r, "goes");
    recast_word(c, r, "beside");
    recast_somebody(c, r, &who);
    recast_mark(c, r, ',');
    recast_somebody(c, r, &who);
    recast_word(c, r, "pass-fakes");
    recast_word(c, r, "to");
    recast_somebody(c, r, &to);
    r->to = trial.at;
    return true;
}
