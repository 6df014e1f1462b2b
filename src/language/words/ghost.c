/* SPDX-License-Identifier: MIT */
/* ghost: a screen that is only shown: `looks like the pin-down for 3 but slips it`, `fakes the ball
 * screen and dives`, `4 ghosts to the left wing`. The language says it as the screen and a slip,
 * which leaves before contact. And the gate that two shut behind a runner. Rules of recast_find. */
#include "language/words/speech.h"

#include <string.h>

/* The screen that is shown, and for whom. */
struct shown {
    const struct token *from, *to; /* its noun or verb */
    struct phrase phrase;
    struct somebody user;
    bool has_user;
};

static bool screen_phrase(struct cursor *c, struct shown *out)
{
    static const char *const sets[] = {"to set", "set", "setting", "he's setting",
                                       "to",     "for", NULL};
    struct cursor trial = *c;
    struct str bare;
    take_among(&trial, sets);
    out->from = past_fillers(trial.at, trial.end);
    bool read =
        out->from < trial.end && (phrase_noun_read(&trial, &out->phrase) ||
                                  phrase_read(&trial, FOR_ATTACKERS, &out->phrase) ||
                                  phrase_ing_here(&trial, FOR_ATTACKERS, &out->phrase, &bare));
    if (!read || verb_row(out->phrase.verb)->task != VERB_SCREEN) {
        return false;
    }
    out->to = trial.at;
    struct cursor whom = trial;
    take_words(&whom, "for");
    out->has_user = player_here(&whom, &out->user);
    c->at = out->has_user ? whom.at : trial.at;
    return true;
}

/* but he slips it, and dives, then pops out: what comes of it. Takes all up to where to. */
static bool take_slip(struct cursor *c, bool *pops)
{
    static const char *const joints[] = {"but", "and", "then", "and then", "but then", NULL};
    static const char *const he[] = {"he", "she", "instead", NULL};
    static const char *const nevers[] = {"never stopping",      "without stopping",
                                         "never makes contact", "does not make contact",
                                         "never gets there",    NULL};
    static const char *const slips[] = {
        "slips it", "slips",       "slip it",      "slip",        "slips out",  "dives",
        "dive",     "rolls",       "goes",         "cuts",        "flies out",  "leaks out",
        "pops out", "pops",        "ghosts",       "ghosts it",   "runs out",   "bursts",
        "bounces",  "bounces out", "pulls out",    "breaks",      "sprints",    "fades",
        "drifts",   "spaces",      "relocates",    "sprints out", "ghosts out", "flares",
        "pop out",  "pop",         "runs through", "runs",        "runs on",    NULL};
    struct cursor trial = *c;
    take_mark(&trial, ',');
    take_among(&trial, joints);
    take_among(&trial, he);
    take_mark(&trial, ',');
    if (take_among(&trial, nevers)) { /* and, never stopping, runs out */
        take_mark(&trial, ',');
        take_among(&trial, joints);
    }
    *pops = word_is(&trial, 0, "pops") || word_is(&trial, 0, "pop");
    if (!take_among(&trial, slips)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static void put_shown(const struct cursor *c, struct recast *r, const struct somebody *who,
                      const struct shown *shown)
{
    bool ball = shown->phrase.screen == SCREEN_PLAIN &&
                (!shown->has_user || above_holds(c, &shown->user.who));
    recast_somebody(c, r, who);
    recast_verb(c, r,
                ball ? STR("ball screens")
                     : phrase_words(VERB_SCREENS, PASS_PLAIN, shown->phrase.screen, false));
    if (shown->has_user) { /* else it is on the ball */
        recast_word(c, r, "for");
        recast_somebody(c, r, &shown->user);
    }
    recast_mark(c, r, ',');
    recast_somebody(c, r, who);
}

/* Anything but the ball holder's screen says whom it is for. */
static bool whole(const struct cursor *c, const struct somebody *who, const struct shown *shown)
{
    struct who holder;
    bool own = above_holder(c, &holder) && !same_who(&holder, &who->who);
    bool ball = shown->phrase.screen == SCREEN_PLAIN || shown->phrase.screen == SCREEN_BALL;
    return shown->has_user ? !same_who(&shown->user.who, &who->who) : own && ball;
}

/* looks like the pin-down for 3 but slips it, fakes the screen and dives. */
bool screen_shown(const struct cursor *c, struct recast *r)
{
    static const char *const shows[] = {"goes",
                                        "moves",
                                        "steps up",
                                        "looks",
                                        "acts",
                                        "comes up",
                                        "runs up",
                                        "goes up",
                                        "comes",
                                        "looks like",
                                        "look like",
                                        "looks to",
                                        "acts like",
                                        "acts as if",
                                        "pretends",
                                        "pretend",
                                        "pretends to",
                                        "fakes like",
                                        "fakes",
                                        "fake",
                                        "shows like",
                                        "shows",
                                        "makes like",
                                        "makes it look like",
                                        "acts",
                                        "starts",
                                        "starts to",
                                        "begins",
                                        "looks as if",
                                        "comes like",
                                        "comes up like",
                                        "runs up like",
                                        "acts like it is",
                                        "threatens",
                                        "comes as if",
                                        "sprints up",
                                        "steps out",
                                        "jogs up",
                                        "hustles up",
                                        "makes",
                                        "looks like it is",
                                        "is going to",
                                        "acts to",
                                        "sells",
                                        NULL};
    static const char *const like[] = {
        "he's going", "she's going", "he is going", "she is going", "he is",     "she is", "he's",
        "she's",      "he wants",    "she wants",   "as if",        "as though", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    struct shown shown;
    bool pops;
    if (!player_here(&trial, &who) || !take_among(&trial, shows)) {
        return false;
    }
    take_among(&trial, like);
    if (!screen_phrase(&trial, &shown) || !take_slip(&trial, &pops) || !whole(c, &who, &shown)) {
        return false;
    }
    put_shown(c, r, &who, &shown);
    recast_word(c, r, pops && !leg_follows(&trial) ? "pops" : "slips");
    r->to = trial.at;
    return true;
}

/* 4 ghosts and flies out to the left wing, 4 ghost screens for 1 to the corner: by one who has set
 * none. */
bool ghosts(const struct cursor *c, struct recast *r)
{
    static const char *const names[] = {
        "ghosts",    "ghost",      "ghosts screen",     "ghost screens", "sets ghost screen",
        "ghosts it", "sets ghost", "runs ghost screen", "ghost screen",  NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    struct shown shown = {.phrase = {.screen = SCREEN_BALL}};
    bool pops;
    if (!player_here(&trial, &who) || !take_among(&trial, names)) {
        return false;
    }
    struct cursor whom = trial;
    shown.has_user = take_words(&whom, "for") && player_here(&whom, &shown.user);
    trial = shown.has_user ? whom : trial;
    take_slip(&trial, &pops);
    if (above_has_screened(c, &who.who, 1) || !leg_follows(&trial) || !whole(c, &who, &shown)) {
        return false;
    }
    put_shown(c, r, &who, &shown);
    recast_word(c, r, "slips");
    r->to = trial.at;
    return true;
}

static bool take_gate(struct cursor *c, const struct somebody two[2])
{
    static const char *const theys[] = {"they",      "both",      "bigs",         "two bigs",
                                        "both bigs", "screeners", "two of them",  "those two",
                                        "these two", "they both", "both of them", NULL};
    static const char *const shuts[] = {"close gate",
                                        "close door",
                                        "close doors",
                                        "shut door",
                                        "shut doors",
                                        "shut gate",
                                        "close it",
                                        "close up",
                                        "shut it",
                                        "close",
                                        "close elevator",
                                        "slam door",
                                        "slam gate",
                                        "come together",
                                        "close elevator doors",
                                        "pinch together",
                                        "close together",
                                        "squeeze",
                                        NULL};
    static const char *const behinds[] = {"behind him", "behind her", "behind it",  "behind",
                                          "on x1",      "on his man", "on her man", NULL};
    struct cursor trial = *c;
    struct somebody a, b;
    take_mark(&trial, ',');
    take_words(&trial, "and");
    take_words(&trial, "then");
    struct cursor named = trial;
    bool same = player_here(&named, &a) && take_words(&named, "and") && player_here(&named, &b) &&
                same_who(&a.who, &two[0].who) && same_who(&b.who, &two[1].who);
    trial = same ? named : trial;
    if ((!same && !take_among(&trial, theys)) || !take_among(&trial, shuts)) {
        return false;
    }
    take_among(&trial, behinds);
    struct cursor on = trial;
    struct who shut_out;
    if (take_words(&on, "on") && defender_read(&on, &shut_out)) { /* behind him on x3 */
        trial = on;
    }
    c->at = trial.at;
    return true;
}

/* 2 sprints up between 4 and 5 to the top and they shut the door: a double screen that he uses. */
bool gate_shut(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct somebody who, two[2];
    struct phrase phrase;
    if (!player_here(&trial, &who)) {
        return false;
    }
    skip_run_in(&trial);
    bool verb =
        phrase_read(&trial, FOR_ATTACKERS, &phrase) && verb_row(phrase.verb)->task == VERB_MOVE;
    bool up = word_is(&trial, 0, "up") || phrase.to == SPOT_TOP;
    take_particles(&trial);
    if (!verb || !take_words(&trial, "between") || !player_here(&trial, &two[0]) ||
        !take_words(&trial, "and") || !player_here(&trial, &two[1])) {
        return false;
    }
    struct cursor place = trial;
    take_particles(&place);
    take_among(&place, place_words);
    const struct token *to = past_fillers(place.at, place.end);
    bool placed = spot_here(&place) != NULL;
    const struct token *placed_to = place.at;
    trial.at = placed ? placed_to : trial.at;
    if (!take_gate(&trial, two) || (!placed && !up)) {
        return false;
    }
    recast_somebody(c, r, &two[0]);
    recast_word(c, r, "and");
    recast_somebody(c, r, &two[1]);
    recast_word(c, r, "double-screen");
    recast_word(c, r, "for");
    recast_somebody(c, r, &who);
    recast_mark(c, r, ',');
    recast_somebody(c, r, &who);
    recast_word(c, r, "comes");
    recast_word(c, r, "off");
    recast_somebody(c, r, &two[0]);
    recast_word(c, r, "and");
    recast_somebody(c, r, &two[1]);
    recast_word(c, r, "to");
    if (placed) {
        recast_copy(c, r, to, placed_to);
    } else {
        recast_word(c, r, "top");
    }
    r->to = trial.at;
    return true;
}
