/* SPDX-License-Identifier: MIT */
/* pronoun: he and she, where exactly one player can be meant: by the ball, by the screen, by who
 * was named last. A rule of recast_find. */
#include "language/words/people.h"
#include "language/words/speech.h"

/* 1 dribbles at 2 and he goes backdoor: not the one with the ball. */
static bool cuts_at(const struct cursor *c, const struct phrase *phrase, struct who *out)
{
    const struct sentence *last = sentence_before(c);
    bool at = last && last->verb == VERB_DRIBBLES_AT && verb_row(phrase->verb)->task == VERB_MOVE;
    if (at) {
        *out = last->object;
    }
    return at;
}

/* 1 passes to 2 and he cuts: a run without the ball, which 2 has now; he screens, the same. Where
 * he just goes, with the ball or without, it could be either. */
bool passer_goes_on(const struct sentence *last, enum verb verb, struct who *out)
{
    enum verb_task before = last ? verb_row(last->verb)->task : VERB_HOLD,
                   task = verb_row(verb)->task;
    bool gave = before == VERB_PASS || before == VERB_EXCHANGE;
    bool runs = (task == VERB_MOVE && verb != VERB_GOES) || task == VERB_SCREEN;
    if (!gave || !runs || last->subject.count != 1 || !who_is_one(&last->object)) {
        return false;
    }
    *out = last->subject.at[0];
    return who_is_one(out);
}

static const struct sentence *latest(const struct cursor *c)
{
    above_list above = above_sentences(c, false);
    return above.count > 0 ? above.at[above.count - 1] : NULL;
}

/* he drives: whoever has the ball; she cuts: the only one named in the sentence above. */
bool he_does(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    const struct person_row *row = take_person(&trial);
    enum person person = row ? row->person : PERSON_TITLE;
    bool handles = person == PERSON_HOLDER || person == PERSON_THROWER;
    if (!handles && person != PERSON_ACTOR) {
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
    struct who screener;
    bool curls =
        verb_row(phrase.verb)->task == VERB_USE || verb_sibling(phrase.verb, "off") == VERB_CURLS;
    bool use = !handles && curls && above_last_screen(c, &who, &screener); /* she curls off it */
    bool done = c->about_done && (!c->here || c->here->count == 0); /* x4 doubles 5, she passes */
    bool known = handles ? person_above(c, row, &who)
                 : verb_needs_ball(phrase.verb) && !done
                     ? above_holder(c, &who)
                     : above_him(c, NULL, &who) || cuts_at(c, &phrase, &who) ||
                           passer_goes_on(latest(c), phrase.verb, &who);
    if (!use && !known) {
        return false;
    }
    recast_acts(c, r, &who);
    return r->taken = true;
}
