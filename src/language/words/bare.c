/* SPDX-License-Identifier: MIT */
/* bare: verbs said to nobody by name, where what stands above tells who is meant: `hit 2` is said
 * to the one who has the ball, `roll` to the one who set the last screen, `reject it` to the one it
 * is for. A verb that anybody could do is left to be refused. Rules of recast_find. */
#include "language/words/speech.h"

#include <string.h>

/* passes, fakes; but not pass. */
bool ends_in_s(const struct token *token)
{
    struct str text = token->text;
    return text.size > 2 && text.at[text.size - 1] == 's' && text.at[text.size - 2] != 's';
}

bool ends_in_ing(const struct token *token)
{
    struct str text = token->text;
    return text.size > 3 && memcmp(text.at + text.size - 3, "ing", 3) == 0;
}

/* hit 2 on the wing, swing it to 3: whoever has the ball. */
bool imperative(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    skip_run_in(&trial);
    struct cursor verb = trial;
    if (pair_needs_ball(&trial)) {
        r->to = c->at;
        return recast_holder(c, r);
    }
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || !verb_needs_ball(phrase.verb)) {
        return false;
    }
    bool shot = phrase.verb == VERB_SHOOTS;
    struct somebody agent;
    const struct token *by = trial.at;
    if (shot && take_words(&trial, "by") && somebody_read(&trial, &agent)) { /* by 2 */
        recast_copy(c, r, c->at, by);
        recast_acts(c, r, &agent.who);
        r->to = trial.at;
        return true;
    }
    if ((phrase.with_s || ends_in_s(cursor_next(&verb))) && !shot) {
        return false;
    }
    r->to = c->at;
    return recast_holder(c, r);
}

/* pitch to the corner: to whoever stands there it is a pass; to a player it could be handed. */
bool pitches_far(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {
        "pitch it out to", "pitch out to", "pitch it to", "pitch to",
        "flip it out to",  "flip out to",  NULL};
    static const char *const out[] = {"pitch it out to", "pitch out to", "flip it out to",
                                      "flip out to", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody to;
    bool far = word_among(c, out);
    if (!take_among(&trial, words)) {
        return false;
    }
    const struct token *whom = trial.at;
    if (!somebody_read(&trial, &to) || (to.who.kind != WHO_SPOT && !far)) {
        return false;
    }
    recast_word(c, r, "pass");
    recast_word(c, r, "to");
    r->to = whom;
    return recast_holder(c, r);
}

/* both bigs stay: 4 and 5, by the numbers every coach gives them. */
bool bigs(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"both bigs",     "two bigs", "bigs",         "big guys",
                                        "both big guys", "big men",  "both big men", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    if (!take_among(&trial, words)) {
        return false;
    }
    r->to = trial.at;
    skip_run_in(&trial);
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.with_s) {
        return false;
    }
    for (int number = 4; number <= 5; number++) {
        struct who who = {.kind = WHO_PLAYER, .number = number, .span = cursor_next(c)->span};
        recast_acts(c, r, &who);
    }
    return r->taken = true;
}

/* everybody rebounds, all stay, nobody moves: all five. */
bool all_five(const struct cursor *c, struct recast *r)
{
    static const char *const all[] = {"everybody",   "everyone",   "all five",       "all",
                                      "all of them", "all of you", "the whole team", NULL};
    static const char *const none[] = {"nobody moves", "no one moves", NULL};
    static const char *const else_none[] = {"nobody else moves", "no one else moves", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    if (take_among(&trial, else_none)) {
        recast_word(c, r, "everyone-else");
        recast_word(c, r, "stays");
        r->to = trial.at;
        return true;
    }
    bool stay = take_among(&trial, none);
    if (!stay && (!take_among(&trial, all) || !phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
                  (phrase.verb != VERB_STAYS && phrase.verb != VERB_REBOUNDS) || c->drill ||
                  !part_ends(&trial))) {
        return false;
    }
    recast_verb(c, r, stay ? STR("stay") : str_of(phrase.bare));
    r->to = trial.at;
    for (int number = 1; number <= 5; number++) {
        struct who who = {.kind = WHO_PLAYER, .number = number, .span = cursor_next(c)->span};
        recast_acts(c, r, &who);
    }
    return true;
}

/* both curl: each of the two for whom the latest screens were set. */
static bool both_use(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct who users[2], by, second;
    size_t count = 0;
    bool several;
    take_words(&trial, "they");
    if (!take_words(&trial, "both") || !phrase_read(&trial, FOR_ATTACKERS, &phrase) ||
        phrase.with_s || !stop_is(&trial) ||
        (verb_row(phrase.verb)->task != VERB_USE &&
         verb_sibling(phrase.verb, "off") != VERB_CURLS)) {
        return false;
    }
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0 && count < 2;) {
        const struct sentence *s = list.at[i];
        bool screen = verb_row(s->verb)->task == VERB_SCREEN && s->object.kind == WHO_PLAYER;
        if (screen && !(count > 0 && same_who(&users[0], &s->object)) &&
            above_waiting_screen(c, &s->object, &by, &second, &several)) {
            users[count++] = s->object;
        }
    }
    for (size_t i = count; count == 2 && i-- > 0;) { /* as they stand above */
        recast_number(c, r, users[i].number);
        recast_verb(c, r, str_of(phrase.words));
        if (i > 0) {
            recast_mark(c, r, ',');
        }
    }
    r->to = trial.at;
    return count == 2;
}

/* roll, slip it, hard dive: the one who set the last screen; reject it, curl: the one it is for. */
bool of_the_screen(const struct cursor *c, struct recast *r)
{
    static const char *const manners[] = {"hard", "quick", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct who user, screener;
    if (word_is(c, 0, "both") || word_is(c, 0, "they")) {
        return both_use(c, r);
    }
    take_among(&trial, manners);
    skip_run_in(&trial);
    const struct token *verb = cursor_next(&trial);
    if (!verb || !phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.with_s || ends_in_s(verb)) {
        return false;
    }
    bool of_screener = strchr(verb_row(phrase.verb)->needs, 'S') != NULL;
    static const char *const offs[] = {"off it", "off screen", "off pick", "off of it", NULL};
    bool use = verb_row(phrase.verb)->task == VERB_USE ||
               verb_sibling(phrase.verb, "off") == VERB_CURLS ||
               (verb_sibling(phrase.verb, "off") != VERB_COUNT && word_among(&trial, offs));
    if ((!of_screener && !use) || !above_last_screen(c, &user, &screener)) {
        return false;
    }
    recast_acts(c, r, of_screener ? &screener : &user);
    r->to = verb;
    return r->taken = true;
}
