/* SPDX-License-Identifier: MIT */
/* verbless: screens and moves without a verb, as they are called out: 4 up for 3, 2 down for 4, 5
 * down the lane, double drag, 4 then 5 for 1; 2 right slot, 3 corner. Rules of recast_find. */
#include "language/words/speech.h"

enum slant { SLANT_UP, SLANT_DOWN, SLANT_ACROSS, SLANT_AWAY, SLANT_OVER };
static const struct entry slants[] = {
    {"up", SLANT_UP},
    {"down", SLANT_DOWN},
    {"across", SLANT_ACROSS},
    {"away", SLANT_AWAY},
    {"over", SLANT_OVER},
    {"up top", SLANT_UP},
    {"back up", SLANT_UP},
    {"out", SLANT_OVER},
    {"low", SLANT_DOWN},
    {"back down", SLANT_DOWN},
    {NULL, 0},
};

/* For whom: for 3, to 1's man, on x3. */
static bool for_whom(struct cursor *c, const struct token **whom, struct who *who)
{
    static const char *const leads[] = {"for", "to", "on", NULL};
    struct cursor trial = *c;
    bool plain = word_is(c, 0, "for");
    if (!take_among(&trial, leads)) {
        return false;
    }
    *whom = trial.at;
    if (!person_read(&trial, who) || plain == who_defends(who)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* 4 up for 3 is a back screen, 2 down for 4 a down screen: of the one who has the ball, a ball
 * screen. */
bool slanted(const struct cursor *c, struct recast *r)
{
    static const char *const screens[] = {[SLANT_UP] = "back-screen",
                                          [SLANT_DOWN] = "down-screen",
                                          [SLANT_ACROSS] = "cross-screen",
                                          [SLANT_AWAY] = "screen-away",
                                          [SLANT_OVER] = "screen"};
    static const char *const said[] = {[SLANT_UP] = "back-screens",
                                       [SLANT_DOWN] = "down-screens",
                                       [SLANT_ACROSS] = "cross-screens",
                                       [SLANT_AWAY] = "screens-away",
                                       [SLANT_OVER] = "screens"};
    static const char *const lanes[] = {"down lane", "down middle", "down paint", NULL};
    struct cursor trial = cursor_look(c);
    who_list list;
    const struct token *from = cursor_next(c);
    if (!subject_read(&trial, &list) || who_side(&list.at[0]) != FOR_ATTACKERS ||
        list.at[0].kind == WHO_SPOT) {
        return false;
    }
    const struct token *behind = trial.at;
    if (word_among(&trial, (const char *const[]){"down", NULL}) && take_among(&trial, lanes)) {
        recast_copy(c, r, from, behind);
        recast_word(c, r, list.count > 1 ? "cut" : "cuts");
        r->to = behind;
        return true;
    }
    trial.at = behind;
    int slant = take_entry(&trial, slants);
    const struct token *whom;
    struct who user, holder;
    if (slant < 0 || !for_whom(&trial, &whom, &user)) {
        return false;
    }
    bool ball = above_holder(c, &holder) &&
                (same_who(&holder, &user) ||
                 (user.kind == WHO_DEFENDER_OF && user.number == holder.number));
    recast_copy(c, r, from, behind);
    recast_word(c, r,
                ball             ? (list.count > 1 ? "ball-screen" : "ball-screens")
                : list.count > 1 ? screens[slant]
                                 : said[slant]);
    recast_word(c, r, who_defends(&user) ? "on" : "for");
    recast_copy(c, r, whom, trial.at);
    r->to = trial.at;
    return true;
}

/* double drag, 4 then 5 for 1; stagger by 4 and 5 for 2: who sets it and for whom, behind its name.
 */
bool screens_listed(const struct cursor *c, struct recast *r)
{
    static const char *const links[] = {"then", "and then", "and", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    const struct token *from = cursor_next(c);
    struct somebody first, second;
    if (!from || !phrase_noun_read(&trial, &phrase) || verb_row(phrase.verb)->task != VERB_SCREEN) {
        return false;
    }
    const struct token *noun_end = trial.at;
    bool parted = take_mark(&trial, ',') || take_mark(&trial, ':') || take_words(&trial, "by") ||
                  take_words(&trial, "from");
    take_words(&trial, "first");
    if (!parted || !somebody_read(&trial, &first) || first.who.kind == WHO_SPOT) {
        return false;
    }
    take_mark(&trial, ',');
    bool two = take_among(&trial, links) && (take_words(&trial, "second"), true) &&
               somebody_read(&trial, &second) && second.who.kind != WHO_SPOT;
    take_mark(&trial, ',');
    if (!two || !word_is(&trial, 0, "for")) {
        return false;
    }
    recast_somebody(c, r, &first);
    recast_word(c, r, "and");
    recast_somebody(c, r, &second);
    recast_word(c, r, "set");
    recast_copy(c, r, from, noun_end);
    r->to = trial.at;
    return true;
}

static const char *const acrosses[] = {"across", "opposite", "high", NULL};

/* right slot, across: where to, and nothing behind it. */
static bool bare_place(struct cursor *c)
{
    struct cursor_mark mark = cursor_mark(c);
    bool place = take_among(c, acrosses) || spot_read(c, true) != NULL;
    bool ends = part_ends(c);
    if (!place || !ends) {
        cursor_back(c, mark);
    }
    return place && ends;
}

/* 2 right slot, 3 corner: each of a list goes there. One alone is where somebody stands. */
bool listed_leg(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    who_list list;
    const struct sentence *last = sentence_before(c);
    const struct token *from = cursor_next(c);
    bool goes = last && last->place && verb_row(last->verb)->task == VERB_MOVE;
    if (!subject_read(&trial, &list) || list.count > 1 || !who_is_one(&list.at[0])) {
        return false;
    }
    const struct token *behind = trial.at;
    struct cursor said = trial;
    trial.doer = &list.at[0];
    if (!bare_place(&trial) || (goes && !word_among(&said, acrosses))) {
        return false; /* a spot goes on with the verb before: 2 fills top, 4 the wing */
    }
    bool across = word_among(&said, acrosses); /* 5 across */
    if (!goes && !across) {                    /* the first: another one goes on */
        struct cursor next = trial;
        bool joined = take_mark(&next, ',');
        joined = take_words(&next, "and") || joined;
        if (!joined || !subject_read(&next, &list) || !who_is_one(&list.at[0])) {
            return false;
        }
        struct cursor bare = next;
        if (!bare_place(&bare) && !leg_is(&next)) {
            return false;
        }
    }
    recast_copy(c, r, from, behind);
    recast_word(c, r, "goes");
    r->to = behind;
    return true;
}
