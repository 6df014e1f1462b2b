/* SPDX-License-Identifier: MIT */
/* set_name: what a play is called, said in front of it without a colon: so horns right one goes off
 * five; and a hand-off back from the one a player runs at: comes right off him for the get. Ways of
 * plain.c: see put_plain.h. */
#include "language/words/put_plain.h"

/* What stands in a name, and is left out with a note. Who does what is told behind it. */
static const char *const names[] = {"horns",
                                    "chicago",
                                    "flex cut",
                                    "flex",
                                    "spain",
                                    "stack",
                                    "blind pig",
                                    "split action",
                                    "split cut",
                                    "split",
                                    "press break",
                                    "sob",
                                    "blob",
                                    "slob",
                                    "quick hitter",
                                    "quick one",
                                    "elevator doors",
                                    "elevator",
                                    "double drag",
                                    "double ball screen",
                                    "zipper",
                                    "hammer",
                                    "floppy",
                                    "iverson",
                                    "ucla",
                                    "pistol",
                                    "motion",
                                    "triangle",
                                    "princeton",
                                    "weave",
                                    "shuffle",
                                    "ram",
                                    "twist",
                                    "delay",
                                    "baseline out of bounds",
                                    "sideline out of bounds",
                                    "box set",
                                    "box",
                                    "diamond",
                                    "four low",
                                    "four high",
                                    "special",
                                    NULL};

static bool take_name(struct cursor *c)
{
    static const char *const heads[] = {"so it's", "it's",   "its",      "this is", "we run",
                                        "here is", "run",    "we're in", "on",      "our",
                                        "so",      "out of", NULL};
    static const char *const tails[] = {"right", "left", "action", "set",    "look",
                                        "play",  "side", "cut",    "series", "game",
                                        "again", "one",  "two",    "three",  NULL};
    take_among(c, heads);
    if (!take_among(c, names)) {
        return false;
    }
    while (take_among(c, names)) {
    }
    while (c->at + 1 < c->end && !attacker_at(c->at, c->end) && take_among(c, tails)) {
    }
    return true;
}

/* so horns right one goes to his right: the name, and the small words around it. */
static const struct token *set_named(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const behind[] = {"so", "where", "right so", "okay", "okay so", NULL};
    static const char *const ours[] = {"we", NULL};
    struct cursor trial = *line;
    trial.at = past_sounds(at, line->end);
    if (at != line->at || !take_name(&trial)) {
        return NULL;
    }
    const struct token *end = trial.at;
    trial.at = past_sounds(trial.at, trial.end);
    bool comma = take_mark(&trial, ',') || take_mark(&trial, '.');
    trial.at = past_sounds(trial.at, trial.end);
    bool so = take_among(&trial, behind);
    trial.at = past_sounds(trial.at, trial.end);
    bool acts = attacker_at(trial.at, trial.end) && subject_verb_is(&trial);
    if (!acts && !((comma || so) && trial.at < trial.end && word_among(&trial, ours)) &&
        !(attacker_at(trial.at, trial.end) && trial.at[0].possessive)) {
        return NULL;
    }
    out->told = span_join(at->span, end[-1].span);
    return trial.at;
}

/* comes right off him for the flip back: takes the hand-off from him. */
static const struct token *for_the_get(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const verbs[] = {"runs", "comes",   "goes",   "cuts",  "run",   "come", "go",
                                        "cut",  "sprints", "chases", "walks", "curls", NULL};
    static const char *const rights[] = {"right", "straight", "hard", "tight", NULL};
    static const char *const offs[] = {"off of", "off", "at", "to", "around", "by", "past", NULL};
    static const char *const him[] = {"him", "her", NULL};
    static const char *const things[] = {"get back", "get",        "flip back", "flip",
                                         "hand-off", "hand off",   "handoff",   "dho",
                                         "return",   "give back",  "handback",  "hand back",
                                         "pitch",    "pitch back", NULL};
    struct cursor trial = *line;
    trial.at = at;
    if (at == line->at || !take_among(&trial, verbs)) {
        return NULL;
    }
    take_among(&trial, rights);
    const struct token *whom = trial.at;
    if (!take_among(&trial, offs)) {
        return NULL;
    }
    whom = past_fillers(trial.at, trial.end);
    bool named = attacker_at(whom, trial.end) != 0;
    trial.at = named ? whom + 1 : trial.at;
    if ((!named && !take_among(&trial, him)) || !take_words(&trial, "for") ||
        !take_among(&trial, things)) {
        return NULL;
    }
    struct cursor here = *line;
    here.at = at;
    recast_word(&here, out, "gets");
    recast_word(&here, out, "hand-off");
    recast_word(&here, out, "from");
    recast_copy(&here, out, whom, whom + 1);
    return trial.at;
}

const struct token *set_named_put(const struct cursor *line, const struct token *at,
                                  struct recast *out)
{
    static plain_way *const ways[] = {set_named, for_the_get, NULL};
    return first_put(ways, line, at, out);
}
