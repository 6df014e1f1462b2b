/* SPDX-License-Identifier: MIT */
/* front: what is said before who acts and belongs behind the verb: `off the pindown 3 comes out`,
 * `from the corner 4 lifts`, `in the corner 2 stays`; and `5 steps` where 5 is the player. Put as
 * it is written, for the second reading. */
#include "language/words/unfold.h"

/* off the pindown, off 5, out of the corner, on the weak side: taken whole. */
static bool take_front(struct cursor *c)
{
    static const char *const uses[] = {"coming off", "using", "off of", "off",
                                       "around",     "over",  NULL};
    static const char *const places[] = {"starting from", "out of", "from", "in", "on", "at", NULL};
    struct cursor trial = *c;
    struct who who;
    if (take_among(&trial, uses)) {
        struct who owner;
        struct cursor named = trial;
        if (owner_read(&named, &owner)) {
            trial = named;
        }
        struct phrase phrase;
        bool it = take_words(&trial, "it") || take_words(&trial, "both screens") ||
                  take_words(&trial, "both");
        bool screen =
            it || (phrase_noun_read(&trial, &phrase) && verb_row(phrase.verb)->task == VERB_SCREEN);
        if (!screen && !person_read(&trial, &who)) {
            return false;
        }
        c->at = trial.at;
        return true;
    }
    if (!take_among(&trial, places) || !spot_read(&trial, true)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static void drop_leads(struct cursor *c)
{
    while (take_among(c, particle_words)) {
    }
    take_among(c, place_words);
}

/* Behind a side by itself, `on the left side`: a spot that has sides, without one, ends here. */
static bool sideless(struct cursor *c, const struct token *front)
{
    struct cursor side = *c;
    side.at = front + 1;
    const struct place *on = spot_read(&side, true);
    struct cursor spot = *c;
    drop_leads(&spot);
    const struct place *place = spot_read(&spot, true);
    bool fits = on && on->kind == PLACE_SIDE && place && place->kind == PLACE_SPOT &&
                place->side == SIDE_NONE && spot_takes_side(place->spot);
    c->at = fits ? spot.at : c->at;
    return fits;
}

/* on the other side 4 screens for 3: a screen is set on a spot, and the side is where they are. */
static bool side_only(const struct cursor *c, const struct token *front, enum verb verb)
{
    struct cursor side = *c;
    side.at = front + 1;
    side.watch = NULL;
    const struct place *on = spot_read(&side, true);
    return on && on->kind == PLACE_SIDE && verb_row(verb)->task == VERB_SCREEN;
}

/* off the pindown 3 comes out to the wing: 3 comes off the pindown out to the wing. */
bool fronted(const struct cursor *c, struct recast *r)
{
    struct cursor trial = *c;
    trial.watch = NULL;
    const struct token *front = cursor_next(c);
    front += word_is(c, 0, "coming") && word_is(c, 1, "off") ? 1 : 0;
    if (clause_is(c) || !take_front(&trial)) {
        return false;
    }
    const struct token *front_end = trial.at;
    take_mark(&trial, ',');
    const struct token *who = trial.at;
    who_list list;
    struct phrase phrase;
    if (!subject_read(&trial, &list) || who_side(&list.at[0]) != FOR_ATTACKERS) {
        return false;
    }
    skip_run_in(&trial);
    bool using = str_is(front->text, "using");
    if (pair_is(&trial)) { /* on the weak side 3 and 5 exchange: where they are */
        r->to = who;
        r->told = span_join(front->span, front_end[-1].span);
        return true;
    }
    if (using || !phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    bool leads = word_among(&(struct cursor){.at = front, .end = c->end},
                            (const char *const[]){"in", "on", "at", NULL});
    struct cursor_mark mark = cursor_mark(&trial);
    bool other = leads && (leg_follows(&trial) || !verb_takes_place(phrase.verb));
    cursor_back(&trial, mark);
    recast_copy(c, r, who, trial.at);
    r->to = trial.at;
    if (other && sideless(&trial, front)) { /* on the left side 2 cuts to the corner: to that one */
        recast_copy(c, r, r->to, trial.at);
        recast_copy(c, r, front, front_end);
    } else if (other || side_only(c, front, phrase.verb)) { /* on the left, 3 cuts to the rim */
        r->told = span_join(front->span, front_end[-1].span);
    } else {
        recast_copy(c, r, front, front_end);
    }
    r->to = other && r->told.source == SOURCE_NONE ? trial.at : r->to;
    return true;
}

/* instead of rolling 5 pops, since 3 curled, 1 pops: why, which moves nobody; a note tells. */
bool reasoned(const struct cursor *c, struct recast *r)
{
    struct cursor trial = *c;
    trial.watch = NULL;
    const struct token *from = cursor_next(c), *at;
    bool instead = take_words(&trial, "instead of"),
         having = !instead && take_words(&trial, "having");
    struct who who;
    if (!instead && !having &&
        (!take_words(&trial, "since") || !person_read(&trial, &who) || who_defends(&who))) {
        return false; /* since x3 trails: a read */
    }
    at = trial.at + (instead ? 1 : 0); /* instead of rolling */
    if (!(instead && at < c->end && at->kind == TOKEN_NUMBER)) {
        while (at < c->end && !token_is_mark(at, ',')) {
            if (at->kind == TOKEN_MARK || (having && number_token(at))) {
                return false; /* having passed to 2: that moves somebody */
            }
            at++;
        }
    }
    if (at >= c->end) {
        return false;
    }
    trial.at = at;
    take_mark(&trial, ',');
    r->to = trial.at;
    r->told = span_join(from->span, at[-1].span);
    return subject_verb_is(&trial);
}

/* Behind what is not done, what is done instead: but, he, or the one who is named once more. */
static bool takes_instead(struct cursor *c, const struct who *who)
{
    static const char *const links[] = {"but", "instead", "rather", "he", "she", "just", NULL};
    struct who again;
    bool joined = take_mark(c, ',');
    while (take_among(c, links)) {
        joined = true;
    }
    struct cursor named = *c;
    if (joined && person_read(&named, &again) && same_who(&again, who)) {
        take_among(&named, links);
        *c = named;
    }
    return joined && verb_begins(c);
}

/* 5 doesn't roll, he pops: what is not done is left out, where what is done stands behind it. */
bool corrected(const struct cursor *c, struct recast *r)
{
    static const char *const nots[] = {"doesn't",  "does not",       "don't",           "won't",
                                       "will not", "isn't going to", "is not going to", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody who;
    const struct token *from = cursor_next(c);
    if (!somebody_read(&trial, &who) || who.who.kind != WHO_PLAYER || !take_among(&trial, nots) ||
        !phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    while (trial.at < c->end && !clause_ends(trial.at) && trial.at->kind != TOKEN_NUMBER &&
           !word_is(&trial, 0, "but")) {
        trial.at++;
    }
    const struct token *end = trial.at;
    if (!takes_instead(&trial, &who.who)) {
        return false;
    }
    recast_somebody(c, r, &who);
    r->to = trial.at;
    r->told = span_join(from->span, end[-1].span);
    return true;
}

/* Behind one who feints, and joined to it: the verb he goes on with. */
static bool goes_into(struct cursor *c, const char *const *verbs)
{
    take_mark(c, ',');
    bool joined = take_words(c, "and") || take_words(c, "but");
    take_words(c, "then");
    return joined && take_among(c, verbs);
}

/* he is: where only being something can follow. */
static bool take_he_is(struct cursor *c)
{
    static const char *const words[] = {"he is", "she is", "he was", "she was", NULL};
    return take_among(c, words);
}

/* 5 fakes a screen for 3 and slips, comes up like he's screening for 1 and slips it: a slip is a
 * screen left before contact. */
bool feint(const struct cursor *c, struct recast *r)
{
    /* like is a filler */
    static const char *const likes[] = {"comes up", "goes up", "comes over", "acts", NULL};
    static const char *const sets[] = {"screening for", "ball screening for", "going to screen for",
                                       "setting screen for", NULL};
    static const char *const slips[] = {"slips it", "slips", "dives", "rolls", NULL};
    struct cursor trial = *c;
    trial.watch = NULL;
    struct phrase phrase;
    struct who who, user;
    const struct token *from = cursor_next(c);
    if (!from || !person_read(&trial, &who) || who_defends(&who)) {
        return false;
    }
    const struct token *who_end = trial.at, *noun = NULL, *noun_end = NULL;
    if (take_words(&trial, "fakes")) {
        noun = trial.at;
        if (!phrase_noun_read(&trial, &phrase) || verb_row(phrase.verb)->task != VERB_SCREEN) {
            return false;
        }
        noun_end = trial.at;
        if (!take_words(&trial, "for")) {
            return false;
        }
    } else if (!take_among(&trial, likes) || !take_he_is(&trial) || !take_among(&trial, sets)) {
        return false;
    }
    const struct token *whom = trial.at;
    if (!person_read(&trial, &user) || who_defends(&user)) {
        return false;
    }
    const struct token *end = trial.at;
    if (!goes_into(&trial, slips)) {
        return false;
    }
    bool ball = above_holds(c, &user);
    recast_copy(c, r, from, who_end);
    recast_word(c, r, noun ? "sets" : ball ? "ball-screens" : "screens");
    if (noun) {
        recast_copy(c, r, noun, noun_end);
    }
    recast_word(c, r, "for");
    recast_copy(c, r, whom, end);
    recast_word(c, r, "and");
    recast_word(c, r, "slips");
    r->to = trial.at;
    return true;
}

/* 5 steps inside the lane: nothing but who acts stands where a sentence begins. */
bool stepping(const struct cursor *c, struct recast *r)
{
    const struct token *next = cursor_next(c);
    if (!next || next->kind != TOKEN_MEASURE || next->unit != UNIT_STEPS || !next->integer ||
        next->number < 1 || next->number > c->players) {
        return false;
    }
    struct cursor behind = *c;
    behind.at = next + 1;
    struct cursor to = behind;
    if (take_words(&to, "off") && !word_is(&to, 0, "to")) { /* away from there: where to? */
        return false;
    }
    VEC_PUSH(c->arena, &r->tokens, token_number(c->arena, next, (int)next->number));
    recast_word(c, r, "steps");
    r->to = next + 1;
    return true;
}
