/* SPDX-License-Identifier: MIT */
/* pieces: what plays are made of: a pass and a cut, a screen with its use, a hand-off, a drive and
 * a kick. Each piece looks for players and places that suit it and says nothing if there are none.
 */
#include "maker.h"

#include <stdio.h>

#include "base/real.h"

/* ---- the ball ---- */

static void caught_by(struct maker *maker, int to)
{
    int from = maker->holder;
    maker->begins = real_max(maker->begins, maker->free[to]); /* it flies to where he ends */
    maker_busy(maker, from, .7);
    maker->holder = to;
    maker->dribbled = false;
    maker->free[to] = real_max(maker->free[to], maker->free[from] + .5);
    if (maker->events < MAKER_EVENTS) {
        maker->event[maker->events++] = (struct made_event){to, "catches", maker->free[to]};
    }
}

static void pass_to(struct maker *maker, int to, enum tie_kind tie)
{
    static const char *const kinds[] = {"", "", "", "", "bounce ", "chest ", "overhead ", "lob "};
    int from = maker->holder;
    double far = vec2_distance(maker->at[from], maker->at[to]);
    const char *kind = far > 9 && maker_chance(maker, 40) ? "skip " : kinds[maker_roll(maker, 8)];
    bool ready = !maker->said[from] && maker->first_holder == from;
    enum tie_kind most = ready ? tie : tie == TIE_ANY ? TIE_LATER : tie;
    maker_say(maker, from, most, "passes", "%spasses to %d", kind, to);
    caught_by(maker, to);
}

static void pass(struct maker *maker)
{
    int from = maker->holder, to = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    struct made_place place;
    if (!maker->moved[to] && maker_chance(maker, 15) && maker_place(maker, to, true, &place)) {
        maker_say(maker, from, TIE_LATER, "passes", "passes to %d at %s", to, place.words);
        maker_send(maker, to, place.at);
        caught_by(maker, to);
    } else {
        pass_to(maker, to, TIE_ANY);
    }
    if (maker_chance(maker, 40) && maker_rim_free(maker, from)) {
        maker_say(maker, from, TIE_LATER, "cuts", "cuts to the rim");
        maker_send(maker, from, vec2_of(0, 0));
        if (maker_place(maker, from, true, &place)) {
            maker_say(maker, from, TIE_NOT, "moves", "clears to %s", place.words);
            maker_send(maker, from, place.at);
        }
    }
}

static void dribble(struct maker *maker)
{
    struct made_place place;
    int who = maker->holder;
    if (maker->dribbled || !maker_place(maker, who, maker_chance(maker, 70), &place)) {
        return;
    }
    maker_say(maker, who, TIE_LATER, "dribbles", "dribbles to %s%s", place.words,
              maker_chance(maker, 20) ? ", jogging" : "");
    maker_send(maker, who, place.at);
    maker->dribbled = true;
}

static void drive(struct maker *maker)
{
    static const char *const ways[] = {" to the rim", "", " baseline", " middle"};
    int who = maker->holder;
    if (maker->dribbled || !maker_rim_free(maker, who)) {
        return;
    }
    maker_say(maker, who, TIE_LATER, "dribbles", "drives%s", ways[maker_roll(maker, 4)]);
    maker_send(maker, who, vec2_of(0, 0));
    maker->dribbled = true;
    int mate = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    struct made_place place;
    if (maker_chance(maker, 50) && maker_place(maker, mate, true, &place)) {
        maker_say(maker, mate, TIE_ANY, "moves", "%s to %s",
                  maker_chance(maker, 50) ? "drifts" : "lifts", place.words);
        maker_send(maker, mate, place.at);
    }
    if (maker_chance(maker, 80)) {
        pass_to(maker, mate, TIE_LATER);
        if (maker_place(maker, who, true, &place)) {
            maker_say(maker, who, TIE_LATER, "moves", "clears to %s", place.words);
            maker_send(maker, who, place.at);
        }
    }
}

static void hand_off(struct maker *maker)
{
    int from = maker->holder, to = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    if (maker->dribbled || vec2_distance(maker->at[from], maker->at[to]) < 2.4) {
        return;
    }
    maker_say(maker, from, TIE_LATER, "dribbles", "dribbles at %d", to);
    struct vec2 way = vec2_unit(vec2_sub(maker->at[from], maker->at[to]));
    maker_say(maker, from, TIE_NOT, "hands off", "hands off to %d", to);
    caught_by(maker, to);
    struct vec2 met = vec2_along(maker->at[to], way, .9);
    maker_send(maker, from, met);
    struct made_place place;
    if (maker_chance(maker, 50) && maker_rim_free(maker, to)) {
        maker_say(maker, to, TIE_LATER, "dribbles", "drives to the rim");
        maker_send(maker, to, vec2_of(0, 0));
        maker->dribbled = true;
    } else if (maker_place(maker, to, true, &place)) {
        maker_say(maker, to, TIE_NOT, "dribbles", "dribbles to %s", place.words);
        maker_send(maker, to, place.at);
        maker->dribbled = true;
    }
}

/* ---- off the ball ---- */

static void cut(struct maker *maker)
{
    static const char *const verbs[] = {"cuts to",     "v-cuts to", "l-cuts to",    "back cuts to",
                                        "clears to",   "lifts to",  "drifts to",    "sinks to",
                                        "flashes to",  "fills",     "relocates to", "goes to",
                                        "posts up at", "cuts to",   "cuts to",      "v-cuts to"};
    static const char *const paces[] = {", sprinting", ", jogging", ", running", ", walking"};
    unsigned verb = maker_roll(maker, 16);
    int who = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    struct made_place place;
    bool cuts = verb < 4 || verb > 12;
    if (cuts && maker_chance(maker, 30) && maker_rim_free(maker, who)) {
        maker_say(maker, who, TIE_ANY, "cuts", "%s", verb == 3 ? "back cuts" : "cuts to the rim");
        maker_send(maker, who, vec2_of(0, 0));
    } else if (maker_place(maker, who, verb >= 4 && verb <= 7, &place)) {
        maker_say(maker, who, TIE_ANY, cuts ? "cuts" : "moves", "%s %s%s", verbs[verb], place.words,
                  maker_chance(maker, 15) ? paces[maker_roll(maker, 4)] : "");
        maker_send(maker, who, place.at);
    }
}

/* Somebody has left his spot: another fills it, when nobody else is sent there. */
static void fill(struct maker *maker)
{
    for (int gone = 1; gone <= MAKER_PLAYERS; gone++) {
        int who = maker_other(maker, gone, MAKER_NOBODY);
        struct vec2 spot = maker->began[gone];
        bool left = maker->moved[gone] && vec2_distance(spot, maker->at[gone]) > 2.5;
        if (left && maker_is_free(maker, who, spot) && court_inside(maker->court, spot, .6) &&
            vec2_distance(spot, maker->at[who]) > 1.5) {
            maker_say(maker, who, TIE_LATER, "moves", "fills %d's spot", gone);
            maker_send(maker, who, spot);
            return;
        }
    }
}

static void exchange(struct maker *maker)
{
    int a = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY), b = maker_other(maker, a, MAKER_NOBODY);
    if (maker->moved[a] || maker->moved[b] || vec2_distance(maker->at[a], maker->at[b]) < 3) {
        return;
    }
    strbuf_print(maker->out, "%s%d and %d exchange\n", maker->indent, a, b);
    struct vec2 spot = maker->at[a];
    maker_send(maker, a, maker->at[b]);
    maker_send(maker, b, spot);
    maker->said[a] = maker->said[b] = true;
}

static void stand(struct maker *maker)
{
    static const char *const holds[] = {"shot fakes", "jabs", "faces the rim", "holds for 0.8 s"};
    if (maker_chance(maker, 50)) {
        maker_say(maker, maker->holder, TIE_NOT, NULL, "%s", holds[maker_roll(maker, 4)]);
        maker_busy(maker, maker->holder, .8);
        return;
    }
    int who = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    if (!maker->said[who]) {
        maker_say(maker, who, TIE_NOT, NULL, "stays");
    }
}

/* ---- screens ---- */

/* What the screener does next: to the rim, or out. */
static void after_screen(struct maker *maker, int screener)
{
    struct made_place place;
    unsigned roll = maker_roll(maker, 5);
    if (roll == 0) {
        return;
    }
    if (roll <= 2 && maker_rim_free(maker, screener)) {
        maker_say(maker, screener, TIE_NOT, "moves", "rolls%s", roll == 1 ? "" : " to the rim");
        maker_send(maker, screener, vec2_of(0, 0));
    } else if (maker_place(maker, screener, true, &place)) {
        maker_say(maker, screener, TIE_NOT, "moves", "pops to %s", place.words);
        maker_send(maker, screener, place.at);
    }
}

/* The use of a screen: round it, away from it, behind it. */
static bool use(struct maker *maker, int user, int screener)
{
    static const char *const verbs[] = {"comes off", "comes off",     "curls off",
                                        "curls off", "fades off",     "flares off",
                                        "comes off", "back cuts off", "rejects"};
    unsigned verb = maker_roll(maker, 9);
    struct made_place place;
    bool rim = verb == 2 || verb >= 7;
    if (rim && maker_rim_free(maker, user)) {
        maker_say(maker, user, TIE_NOT, "cuts", "%s %d", verbs[verb], screener);
        maker_send(maker, user, vec2_of(0, 0));
    } else if (maker_place(maker, user, verb == 4 || verb == 5, &place)) {
        maker_say(maker, user, TIE_NOT, "cuts", "%s %d to %s", verbs[verb], screener, place.words);
        maker_send(maker, user, place.at);
    } else {
        return false;
    }
    return true;
}

static void set_up(struct maker *maker, int user)
{
    static const char *const toward[] = {"the rim", "the baseline", "half court"};
    if (maker_chance(maker, 50)) {
        maker_say(maker, user, TIE_LATER, NULL, "sets up toward %s", toward[maker_roll(maker, 3)]);
        maker_busy(maker, user, 2);
    }
}

/* Where a screener ends is beside his user; he is taken to stand there. */
static void say_screen(struct maker *maker, int screener, int user, bool ball)
{
    static const char *const kinds[] = {"", "", "down ", "back ", "cross ", "flare "};
    const char *kind = ball ? "ball " : kinds[maker_roll(maker, 6)];
    maker_say(maker, screener, TIE_ANY, "screens", "%sscreens for %d", kind, user);
    struct vec2 way = vec2_unit(vec2_sub(maker->at[screener], maker->at[user]));
    maker_send(maker, screener, vec2_along(maker->at[user], way, 1));
    maker_busy(maker, screener, 1); /* to stand, and to be waited for */
    maker->screened[screener] = true;
    maker->open_screen = true;
    maker->free[user] = real_max(maker->free[user], maker->free[screener]);
}

/* The screener is free once the user has left. */
static void screen_used(struct maker *maker, int screener, int user)
{
    maker->open_screen = false;
    maker->free[screener] = real_max(maker->free[screener], maker->free[user] - .5);
    for (size_t i = 0; i < maker->events; i++) {
        if (maker->event[i].who == screener) {
            maker->event[i].end = real_max(maker->event[i].end, maker->free[user] - .5);
        }
    }
}

static void off_ball_screen(struct maker *maker)
{
    int screener = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    int user = maker_other(maker, screener, MAKER_NOBODY);
    struct made_place place;
    if (maker->screened[screener] || !maker_place(maker, user, true, &place)) {
        return;
    }
    set_up(maker, user);
    say_screen(maker, screener, user, false);
    if (!use(maker, user, screener)) {
        maker_say(maker, user, TIE_NOT, "cuts", "comes off %d to %s", screener, place.words);
        maker_send(maker, user, place.at);
    }
    screen_used(maker, screener, user);
    after_screen(maker, screener);
    if (maker_chance(maker, 60)) {
        pass_to(maker, user, TIE_LATER);
    }
}

static void slip(struct maker *maker)
{
    int screener = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    int user = maker_other(maker, screener, MAKER_NOBODY);
    if (maker->screened[screener] || !maker_rim_free(maker, screener)) {
        return;
    }
    say_screen(maker, screener, user, false);
    maker->open_screen = false;
    maker->events--; /* it is never set: he leaves before contact */
    maker_say(maker, screener, TIE_NOT, "moves", "slips");
    maker_send(maker, screener, vec2_of(0, 0));
    if (maker_chance(maker, 60)) {
        pass_to(maker, screener, TIE_NOT);
    }
}

static void stagger(struct maker *maker)
{
    int user = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    int near = maker_other(maker, user, MAKER_NOBODY), far = maker_other(maker, user, near);
    struct made_place place;
    if (maker->screened[near] || maker->screened[far] || maker->said[near] || maker->said[far] ||
        !maker_place(maker, user, true, &place)) {
        return;
    }
    strbuf_print(maker->out, "%s%d and %d screen for %d\n", maker->indent, near, far, user);
    maker->said[near] = maker->said[far] = maker->screened[near] = maker->screened[far] = true;
    maker->free[user] += 4; /* until both stand */
    maker_say(maker, user, TIE_NOT, "cuts", "comes off %d and %d to %s", near, far, place.words);
    struct vec2 from = maker->at[user];
    maker_send(maker, near, vec2_mix(from, place.at, .3));
    maker_send(maker, far, vec2_mix(from, place.at, .6));
    maker_send(maker, user, place.at);
    if (maker_chance(maker, 60)) {
        pass_to(maker, user, TIE_LATER);
    }
}

static void ball_screen(struct maker *maker)
{
    int user = maker->holder, screener = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    struct made_place place;
    if (maker->screened[screener] || maker->dribbled || !maker_place(maker, user, true, &place)) {
        return;
    }
    say_screen(maker, screener, user, true);
    bool rim = maker_chance(maker, 40) && maker_rim_free(maker, user);
    if (rim) {
        maker_say(maker, user, TIE_NOT, "dribbles", "drives off %d", screener);
        maker_send(maker, user, vec2_of(0, 0));
    } else {
        maker_say(maker, user, TIE_NOT, "dribbles", "dribbles off %d to %s", screener, place.words);
        maker_send(maker, user, place.at);
    }
    maker->dribbled = true;
    screen_used(maker, screener, user);
    after_screen(maker, screener);
    if (maker_chance(maker, 60)) {
        int mate = maker_chance(maker, 50) ? screener : maker_other(maker, screener, MAKER_NOBODY);
        pass_to(maker, mate, TIE_LATER);
    }
}

/* ---- whole pieces ---- */

void piece_random(struct maker *maker)
{
    static void (*const pieces[])(struct maker *) = {pass,
                                                     pass,
                                                     cut,
                                                     cut,
                                                     cut,
                                                     fill,
                                                     fill,
                                                     exchange,
                                                     stand,
                                                     dribble,
                                                     drive,
                                                     hand_off,
                                                     off_ball_screen,
                                                     off_ball_screen,
                                                     slip,
                                                     stagger,
                                                     ball_screen};
    pieces[maker_roll(maker, sizeof pieces / sizeof *pieces)](maker);
}

void piece_throw_in(struct maker *maker)
{
    int thrower = maker->holder, to = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    struct made_place place;
    if (maker_place(maker, to, false, &place)) {
        maker_say(maker, to, TIE_NOT, "cuts", "cuts to %s", place.words);
        maker_send(maker, to, place.at);
    }
    maker_say(maker, thrower, TIE_NOT, "passes", "inbounds to %d", to);
    caught_by(maker, to);
    if (maker_place(maker, thrower, false, &place)) {
        maker_say(maker, thrower, TIE_NOT, "cuts", "cuts to %s", place.words);
        maker_send(maker, thrower, place.at);
    }
}

void piece_finish(struct maker *maker)
{
    maker_say(maker, maker->holder, TIE_LATER, "shoots", "shoots");
    int to_glass = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    maker_say(maker, to_glass, TIE_NOT, NULL, "rebounds");
    maker_say(maker, maker_other(maker, to_glass, MAKER_NOBODY), TIE_NOT, NULL, "gets back");
    maker->over = true;
}

struct made_read {
    const char *answer; /* of the user's defender */
    const char *verb;
    bool rim;
};

void piece_reads(struct maker *maker)
{
    static const struct made_read reads[] = {{"trails", "curls off", true},
                                             {"goes under", "fades off", false},
                                             {"overplays", "back cuts off", true},
                                             {"goes over", "comes off", false}};
    int screener = maker_other(maker, MAKER_NOBODY, MAKER_NOBODY);
    int user = maker_other(maker, screener, MAKER_NOBODY), holder = maker->holder;
    unsigned first = maker_roll(maker, 4), apart = 1 + maker_roll(maker, 3);
    struct made_place place;
    if (maker->screened[screener] || !maker_rim_free(maker, user) ||
        !maker_place(maker, user, true, &place)) {
        return;
    }
    set_up(maker, user);
    say_screen(maker, screener, user, false);
    for (unsigned i = 0; i < 2; i++) {
        const struct made_read *read = &reads[(first + i * apart) % 4];
        strbuf_print(maker->out, "%sread x%d %s\n", maker->indent, user, read->answer);
        strbuf_print(maker->out, "%s  %d %s %d to %s\n", maker->indent, user, read->verb, screener,
                     read->rim ? "the rim" : place.words);
        strbuf_print(maker->out, "%s  %d passes to %d\n", maker->indent, holder, user);
    }
    maker->over = true;
}
