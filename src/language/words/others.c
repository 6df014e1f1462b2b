/* SPDX-License-Identifier: MIT */
/* others: everyone but one: nobody moves but 4, who screens; everyone but 1 stands still; everyone
 * stays except 3; only 2 moves. Each of the others is named, but for those the line gives something
 * to do. Rule of unfold.h. */
#include "language/words/unfold.h"

static const char *const hes[] = {"he", "she", "who", NULL};

/* The one it does not hold for: a player, or who has the ball. */
static bool one_read(struct cursor *c, struct who *out)
{
    static const char *const holders[] = {"man with ball",
                                          "player with ball",
                                          "girl with ball",
                                          "guy with ball",
                                          "one with ball",
                                          "ball handler",
                                          "whoever has ball",
                                          "man who has ball",
                                          "dribbler",
                                          "player who has ball",
                                          NULL};
    struct somebody who;
    if (take_among(c, holders)) {
        return above_holder(c, out) && out->kind == WHO_PLAYER;
    }
    bool read = player_here(c, &who) && who.who.kind == WHO_PLAYER;
    *out = read ? who.who : *out;
    return read;
}

/* nobody moves but 4; everyone but 4 stays; only 4 moves. */
static bool but_one(struct cursor *c, struct who *out)
{
    static const char *const nobody[] = {"nobody moves",         "no one moves",
                                         "nobody else moves",    "no one else moves",
                                         "nobody does anything", NULL};
    static const char *const all[] = {"everyone", "everybody", "all", "all players", NULL};
    static const char *const buts[] = {"but",        "except for", "except",
                                       "other than", "besides",    NULL};
    static const char *const stays[] = {"stays",
                                        "stay",
                                        "stands still",
                                        "stand still",
                                        "holds still",
                                        "stays put",
                                        "stay put",
                                        "stays still",
                                        "holds spot",
                                        "stays home",
                                        "stay where they are",
                                        "stays where they are",
                                        "freezes",
                                        "holds ground",
                                        "holds his ground",
                                        "holds her ground",
                                        "holds position",
                                        "holds his position",
                                        "holds her position",
                                        "remains",
                                        NULL};
    static const char *const moves[] = {"moves", "does anything", "goes", NULL};
    struct cursor trial = *c;
    if (take_among(&trial, nobody)) {
        bool one = take_among(&trial, buts) && one_read(&trial, out);
        c->at = trial.at;
        return one;
    }
    if (take_among(&trial, all)) {
        bool first = take_among(&trial, stays); /* everyone stays except 4 */
        bool one = take_among(&trial, buts) && one_read(&trial, out) &&
                   (first ? !cursor_done(&trial) : take_among(&trial, stays));
        c->at = trial.at;
        return one;
    }
    bool only = take_words(&trial, "only") && one_read(&trial, out) && take_among(&trial, moves) &&
                (part_ends(&trial) || mark_is(&trial, ':'));
    c->at = trial.at;
    return only;
}

/* Who has something to do in the line: his number stands where somebody acts. */
static bool acts_here(const struct cursor *c, int number)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        struct cursor verb = line_look(c, at + 1);
        if (at->kind == TOKEN_NUMBER && !at->possessive && (int)at->number == number &&
            at + 1 < c->end && verb_begins(&verb)) {
            return true;
        }
    }
    return false;
}

static size_t put_others(const struct cursor *c, struct recast *r, int but)
{
    int others[12];
    size_t count = 0;
    for (int number = 1; number <= c->players && number <= 12; number++) {
        if (number != but && !acts_here(c, number)) {
            others[count++] = number;
        }
    }
    for (size_t i = 0; i < count; i++) {
        if (i > 0 && i + 1 < count) {
            recast_mark(c, r, ',');
        } else if (i > 0) {
            recast_word(c, r, "and");
        }
        recast_number(c, r, others[i]);
    }
    recast_word(c, r, count > 1 ? "stay" : "stays");
    return count;
}

bool others_stay(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct who one;
    if (!but_one(&trial, &one) || put_others(c, r, one.number) == 0) {
        return false;
    }
    put_stop(c, r);
    while (take_joint(&trial) || take_mark(&trial, ';') || take_mark(&trial, '.') ||
           take_mark(&trial, ':')) {
    }
    if (cursor_done(&trial)) {
        return true;
    }
    if (take_among(&trial, hes) || !subject_verb_is(&trial)) {
        recast_number(&trial, r, one.number);
    }
    recast_copy(c, r, trial.at, c->end);
    return true;
}
