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
    if (!attacker_at(whom, c->end) || !(verb_at(c, at + 1) || ends_in_s(at + 1))) {
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
