/* SPDX-License-Identifier: MIT */
/* joint: where a sentence ends and the next one begins, and whose that is: `and VERB`, `, VERB`,
 * `then VERB`, `and WHO VERB`, and legs that have no verb of their own. Looks only; chain.c reads.
 */
#include "language/words/speech.h"

/* so, and so, so that. */
static bool take_so(struct cursor *c)
{
    return take_words(c, "so that") || take_words(c, "so");
}

/* 2 gets open, 2 has room: behind the subject stand words that are no verb of the language; but
 * pulls up is one, whatever else could be told of it. */
static bool hint_verb_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    struct phrase phrase;
    const struct token *end;
    bool hint =
        subject_read(&trial, &list) && hint_until(&trial, HINT_VERB, STR("2"), &end).size > 0;
    if (hint && phrase_read(&trial, who_side(&list.at[0]), &phrase)) {
        hint = trial.at < end;
    }
    cursor_back(&trial, mark);
    return hint;
}

/* out to the corner, to the rim, up top: where to, without a verb. */
bool leg_is(const struct cursor *c)
{
    static const char *const leads[] = {"to", "into", NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    bool led = false;
    while (take_among(&trial, particle_words)) {
        led = true;
    }
    led = take_among(&trial, leads) || led;
    bool found = led && place_starts(&trial);
    cursor_back(&trial, mark);
    return found;
}

bool leg_follows(const struct cursor *c)
{
    struct cursor trial = *c;
    take_among(&trial, place_words);
    return leg_is(c) || place_starts(&trial);
}

/* 5 for 3, behind `4 down screens for 2`: the verb is the one before. */
bool leg_again_is(const struct cursor *c, const struct sentence *last)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct who who;
    bool screen = last && verb_row(last->verb)->task == VERB_SCREEN;
    bool found = screen && take_words(&trial, "for") && person_read(&trial, &who);
    cursor_back(&trial, mark);
    return found;
}

/* the wing, and nothing behind it: 2 fills the top, 4 the wing. */
static bool place_ends(const struct cursor *c)
{
    struct cursor trial = *c;
    return spot_here(&trial) &&
           (stop_is(&trial) || mark_is(&trial, ',') || word_is(&trial, 0, "and"));
}

/* 4 to the wing, 5 for 3. */
static bool subject_leg_is(const struct cursor *c, const struct sentence *last)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    bool named = subject_read(&trial, &list) && list.at[0].kind != WHO_SPOT &&
                 who_side(&list.at[0]) == FOR_ATTACKERS;
    trial.several = named && list.count > 1;
    trial.doer = named && list.count == 1 ? &list.at[0] : NULL;
    bool move = last && verb_row(last->verb)->task == VERB_MOVE && last->place;
    bool found =
        named && ((move && place_ends(&trial)) || leg_is(&trial) || leg_again_is(&trial, last));
    cursor_back(&trial, mark);
    return found;
}

/* one dribble, two hard dribbles: not player 1, not player 2, where another one has the ball and
 * goes on. */
static bool counted_is(const struct cursor *c, const struct sentence *last)
{
    struct cursor trial = *c;
    struct phrase phrase;
    struct who holder;
    const struct token *next = cursor_next(c);
    trial.counted = true;
    if (!last || last->subject.count != 1 || !next || next->kind != TOKEN_NUMBER) {
        return false;
    }
    enum verb_task task = verb_row(last->verb)->task;
    bool keeps = task == VERB_HOLD || task == VERB_CARRY;
    return keeps && phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase.counted &&
           above_holder(c, &holder) && same_who(&holder, &last->subject.at[0]) &&
           !(holder.kind == WHO_PLAYER && holder.number == (int)next->number);
}

/* before 1 passes to 2; before 1 passes is a moment only, of which the other sentence is to tell.
 */
bool whole_sentence_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct phrase phrase;
    struct slot slots[SLOTS_MOST];
    who_list list;
    bool whole = subject_verb_is(c) && subject_read(&trial, &list) &&
                 phrase_read(&trial, who_side(&list.at[0]), &phrase) &&
                 (!stop_is(&trial) || verb_slots(phrase.verb, slots) == 0 || !slots[0].needed);
    cursor_back(&trial, mark);
    return whole;
}

/* but he slips: what comes, whatever was to be thought; no order, and nothing that is not. */
static bool take_but(struct cursor *c)
{
    static const char *const orders[] = {"first", "before", "if",    "when",   "only",
                                         "once",  "not",    "after", "unless", NULL};
    struct cursor trial = *c;
    if (!c->speech || !take_words(&trial, "but") || word_among(&trial, orders)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

bool joint_is(const struct cursor *c, enum phrase_side side, const struct sentence *last,
              struct joint *out, const struct token **begin)
{
    struct cursor trial = *c;
    struct phrase phrase;
    bool joined = take_mark(&trial, ',');
    bool added = take_words(&trial, "and") || take_but(&trial);
    joined = added || joined;
    joined = take_mark(&trial, ',') || joined;
    *out = (struct joint){.then = take_words(&trial, "then")};
    if (!out->then && take_words(&trial, "who")) { /* passes to 2, who shoots */
        *begin = trial.at;
        out->who = verb_begins(&trial);
        return out->who;
    }
    bool so = c->speech && !out->then && take_so(&trial);
    struct recast recast;
    *begin = trial.at;
    if (so) { /* x4 digs, so 5 passes; so swing it to 4: what comes of it comes behind it */
        out->so = (subject_verb_is(&trial) && !hint_verb_is(&trial)) ||
                  (verb_begins(&trial) && recast_find(&trial, &recast));
        return out->so;
    }
    if (c->speech && word_is(c, 0, "for") && !word_is(c, 1, "it") &&
        inverse_is(c)) { /* to the rim for the lob from 2 */
        *begin = c->at;
        return out->same_subject = true;
    }
    if (!joined && !out->then) {
        if (c->speech && take_words(&trial, "before") && whole_sentence_is(&trial)) {
            *begin = trial.at; /* 5 clears before 1 passes: 1 passes then */
            return out->then = true;
        }
        trial = *c;
        out->same_subject =
            c->speech && word_is(c, 0, "before") && recast_find(&trial, &recast) && recast.same;
        return out->same_subject;
    }
    if (aside_head_is(&trial)) { /* hands up */
        return false;
    }
    if (c->speech && front_ordinal(&trial)) { /* first 4 cuts, second 3 fills */
        *begin = trial.at;
        return out->then = true;
    }
    if (added && clause_is(&trial)) { /* and on the catch, 5 cuts */
        out->clause = true;
        return true;
    }
    if (side == FOR_ATTACKERS && counted_is(&trial, last)) {
        out->counted = out->same_subject = true;
        return true;
    }
    struct cursor verb = trial;
    skip_run_in(&verb);
    bool attacks =
        side == FOR_ATTACKERS && (pair_is(&verb) || uses_screen_is(&verb) || inverse_is(&verb));
    if (attacks || phrase_read(&verb, side, &phrase)) {
        out->same_subject = true;
        return true;
    }
    trial.latest = last;
    if (c->speech && recast_find(&trial, &recast)) {
        out->same_subject = recast.same;
        return true;
    }
    if (subject_verb_is(&trial)) {
        return true;
    }
    if (!c->speech || side == FOR_DEFENDERS) {
        return false;
    }
    /* to the block, then the corner; behind a comma alone it says the place before once more */
    bool pass = last && verb_row(last->verb)->task == VERB_PASS;
    bool second = (added && leg_is(&trial)) || (out->then && !pass && place_starts(&trial));
    out->leg = out->same_subject = second || (out->then && leg_is(&trial));
    out->leg = out->leg || subject_leg_is(&trial, last);
    return out->leg;
}

bool stop_is(const struct cursor *c)
{
    return cursor_done(c) || mark_is(c, '.') || mark_is(c, ';');
}

bool part_ends(const struct cursor *c)
{
    return stop_is(c) || mark_is(c, ',') || word_is(c, 0, "and") || word_is(c, 0, "then");
}

/* goes to the corner to screen for 2: once there. */
bool joint_purpose_is(const struct cursor *c, const struct token **begin)
{
    struct cursor trial = *c;
    struct phrase phrase;
    if (!take_words(&trial, "to")) {
        return false;
    }
    *begin = trial.at;
    if (spot_here(&trial) || !phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    enum verb_task task = verb_row(phrase.verb)->task;
    return task == VERB_SCREEN || task == VERB_SHOOT || task == VERB_PASS ||
           task == VERB_EXCHANGE || phrase.verb == VERB_REPLACES || phrase.verb == VERB_POSTS_UP;
}

/* The next sentence begins; `who` needs one player whom this one is to. */
bool next_is(const struct predicate *p, enum phrase_side side)
{
    struct joint joint;
    const struct token *begin;
    if (p->s->place && joint_purpose_is(p->c, &begin)) {
        return true;
    }
    bool to_one = p->s->object.kind == WHO_PLAYER || p->s->object.kind == WHO_ROLE;
    return joint_is(p->c, side, p->s, &joint, &begin) && (!joint.who || to_one);
}

bool joint_follows(const struct predicate *p)
{
    struct joint joint;
    const struct token *begin;
    return joint_is(p->c, who_side(&p->s->subject.at[0]), p->s, &joint, &begin);
}

bool spread_is(const struct predicate *p)
{
    const struct sentence *s = p->s;
    struct joint joint;
    const struct token *begin;
    enum verb_task task = verb_row(s->verb)->task;
    bool open = task == VERB_SCREEN ? s->object.kind == WHO_NONE : task == VERB_MOVE && !s->place;
    bool all = s->subject.at[0].kind == WHO_EVERYONE_ELSE;
    if (!open || (s->subject.count < 2 && !all) ||
        !joint_is(p->c, FOR_ATTACKERS, s, &joint, &begin) || !joint.leg || joint.same_subject) {
        return false;
    }
    struct cursor trial = *p->c;
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    trial.at = begin;
    bool own = subject_read(&trial, &list) && all;
    for (size_t i = 0; list.count > 0 && i < s->subject.count; i++) {
        own = own || same_who(&s->subject.at[i], &list.at[0]);
    }
    cursor_back(&trial, mark);
    return own;
}

bool next_is_anothers(const struct predicate *p)
{
    struct joint joint;
    const struct token *begin;
    return joint_is(p->c, FOR_ANYONE, p->s, &joint, &begin) && !joint.same_subject && !joint.who &&
           !joint.clause;
}
