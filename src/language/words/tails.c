/* SPDX-License-Identifier: MIT */
/* tails: what hangs behind a sentence and is one of its own: `, with 4 crashing to the block`,
 * `, who pitches it to 3`; or only says where it ends: `, stopping at the block`, `and stops at the
 * nail`. Rules of reshape.h. */
#include "language/words/reshape.h"

/* 5 shoots, with 4 crashing to the block: and 4 crashes. */
bool shape_with_doing(const struct cursor *c, const struct token *at, struct recast *r)
{
    struct cursor trial = line_look(c, at);
    struct phrase phrase;
    struct str said;
    bool comma = take_mark(&trial, ','), with = take_words(&trial, "with");
    if (at < c->at + 2 || (!comma && !with)) {
        return false;
    }
    const struct token *who = past_fillers(trial.at, c->end);
    trial.at = who < c->end ? who + 1 : who;
    if (!attacker_at(who, c->end) || !phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &said)) {
        return false;
    }
    struct cursor here = line_look(c, who);
    recast_copy(c, r, c->at, at);
    recast_mark(c, r, ',');
    recast_copy(c, r, who, who + 1);
    put_third(&here, r, said);
    recast_copy(c, r, trial.at, c->end);
    return true;
}

/* 1 enters to 5, who pitches it to 3: 5 does. */
bool shape_who(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const is[] = {"is", "was", "has", "had", "were", "are", NULL};
    const struct token *whom = at - 1;
    if (!token_is_word(at, "who") || at < c->at + 3 || at + 2 >= c->end ||
        token_is_among(at + 1, is)) {
        return false;
    }
    whom -= token_is_mark(whom, ',') ? 1 : 0;
    if (!attacker_at(whom, c->end) || !deed_at(c, at + 1)) {
        return false;
    }
    recast_copy(c, r, c->at, whom + 1);
    recast_mark(c, r, '.');
    recast_copy(c, r, whom, whom + 1);
    recast_copy(c, r, at + 1, c->end);
    return true;
}

/* drives right, stopping at the block; runs off the pair, ending at the slot: to there. */
bool shape_ending(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const endings[] = {"stopping",   "ending up",      "ending",     "finishing",
                                          "winding up", "landing",        "pulling up", "settling",
                                          "arriving",   "stopping short", "coming out", NULL};
    static const char *const leads[] = {"at", "on", "in", "into", "to", NULL};
    struct cursor trial = line_look(c, at);
    const struct place *place;
    take_mark(&trial, ',');
    if (at < c->at + 2 || !take_among(&trial, endings) || !take_among(&trial, leads) ||
        !spot_end(c, trial.at, &place)) {
        return false;
    }
    struct cursor here = line_look(c, at);
    recast_copy(c, r, c->at, at);
    recast_word(&here, r, "to");
    recast_copy(c, r, trial.at, c->end);
    return true;
}

/* the skip from 1, 1's pass, the pocket pass of who has the ball: who throws it; 0: nobody known.
 */
static int pass_noun_read(struct cursor *c, struct phrase *phrase)
{
    struct who owner, holder;
    int giver = owner_read(c, &owner) && owner.kind == WHO_PLAYER ? owner.number : 0;
    if (!phrase_noun_read(c, phrase) || verb_row(phrase->verb)->task != VERB_PASS) {
        return 0;
    }
    if (giver) {
        return giver;
    }
    if (!take_words(c, "from")) {
        return above_holder(c, &holder) && holder.kind == WHO_PLAYER ? holder.number : 0;
    }
    const struct token *who = past_fillers(c->at, c->end);
    giver = attacker_at(who, c->end);
    c->at = giver ? who + 1 : c->at;
    return giver;
}

/* and the skip from 1 meets him there, where the pocket pass comes to him: 1 passes to him. */
bool shape_pass_comes(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const comes[] = {"meets",       "finds",    "reaches", "hits",
                                        "goes to",     "comes to", "is for",  "gets to",
                                        "arrives for", "leads",    NULL};
    static const char *const ends[] = {"there", "at once", "right there", "on the spot", NULL};
    struct cursor trial = line_look(c, at), here = trial;
    struct phrase phrase;
    const struct token *clause;
    if (at < c->at + 2 || !clause_begins_at(c, at)) {
        return false;
    }
    take_words(&trial, "where");
    int giver = pass_noun_read(&trial, &phrase);
    const struct token *whom =
        giver && take_among(&trial, comes) ? past_fillers(trial.at, c->end) : c->end;
    if (whom == c->end) {
        return false;
    }
    int number = attacker_at(whom, c->end);
    number =
        !number && token_is_among(whom, him_or_her) ? acts_in_clause(c, at - 1, &clause) : number;
    if (!number || number == giver) {
        return false;
    }
    trial.at = whom + 1;
    take_among(&trial, ends);
    recast_copy(c, r, c->at, at);
    if (!clause_ends(at - 1)) {
        recast_mark(c, r, ',');
    }
    recast_number(&here, r, giver);
    recast_verb(&here, r, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
    recast_word(&here, r, "to");
    recast_number(&here, r, number);
    recast_copy(c, r, trial.at, c->end);
    return true;
}

/* fills the top as our safety: what he is there. */
bool shape_role(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const leads[] = {"as our", "as a", "as an", "as the", "as", NULL};
    static const char *const roles[] = {
        "safety",       "safety valve",    "outlet",    "decoy",  "release",   "release man",
        "last man",     "man behind ball", "trailer",   "valve",  "insurance", "second option",
        "first option", "option",          "threat",    "target", "screener",  "third man",
        "man back",     "spacer",          "extra man", "help",   NULL};
    struct cursor trial = line_look(c, at);
    if (at < c->at + 2 || !take_among(&trial, leads) || !take_among(&trial, roles) ||
        !(trial.at == c->end || clause_ends(trial.at))) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    recast_copy(c, r, trial.at, c->end);
    r->told = span_join(at->span, trial.at[-1].span);
    return true;
}

/* passes to 5 popping to the wing: he pops, and gets it there. */
bool shape_to_whom_doing(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const leads[] = {"to",  "hits", "finds", "feeds",
                                        "hit", "find", "spots", NULL};
    struct cursor verb = line_look(c, at + 1);
    struct somebody acts;
    struct phrase phrase;
    struct str said;
    bool own;
    if (!attacker_at(at, c->end) || at < c->at + 2 || at + 2 >= c->end ||
        !token_is_among(at - 1, leads) || !phrase_ing_here(&verb, FOR_ATTACKERS, &phrase, &said) ||
        verb_row(phrase.verb)->task != VERB_MOVE || verb_needs_ball(phrase.verb)) {
        return false;
    }
    const struct token *end = clause_end(c, verb.at), *clause = clause_begin(c, at);
    if (!end || !clause_subject(c, clause, &acts, &own) ||
        acts.who.number == attacker_at(at, c->end)) {
        return false;
    }
    struct cursor here = line_look(c, at);
    bool then;
    joint_begin(c, clause, &then);
    put_before(c, r, clause);
    recast_copy(c, r, at, at + 1);
    put_third(&here, r, said);
    recast_copy(c, r, verb.at, end);
    put_stop(c, r);
    if (own && then) {
        recast_word(&here, r, "then");
    } else if (!own) {
        recast_somebody(c, r, &acts);
    }
    recast_copy(c, r, clause, at + 1);
    recast_copy(c, r, end, c->end);
    return true;
}

/* the inbounder: who has thrown in, or who is to. */
bool shape_inbounder(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const words[] = {"inbounder", "thrower-in", NULL};
    above_list above = above_sentences(c, false);
    struct who who = {.kind = WHO_NONE};
    if (!token_is_among(at, words) || at->possessive) {
        return false;
    }
    for (size_t i = 0; i < above.count; i++) {
        if (above.at[i]->verb == VERB_INBOUNDS && above.at[i]->subject.count == 1) {
            who = above.at[i]->subject.at[0];
        }
    }
    bool out = who.kind == WHO_PLAYER;
    if (!out && (!above_holder(c, &who) || who.kind != WHO_PLAYER || starts_inside(c, &who))) {
        return false;
    }
    struct cursor here = line_look(c, at);
    const struct token *from = at;
    while (from > c->at && from[-1].filler) {
        from--;
    }
    recast_copy(c, r, c->at, from);
    recast_number(&here, r, who.number);
    recast_copy(c, r, at + 1, c->end);
    return true;
}
