/* SPDX-License-Identifier: MIT */
/* set_name: what a play is called, said in front of it without a colon: so horns right one goes off
 * five; and a hand-off back from the one a player runs at: comes right off him for the get. Ways of
 * plain.c: see put_plain.h. */
#include "language/words/put_plain.h"

static bool take_name(struct cursor *c)
{
    static const char *const heads[] = {"so it's", "it's",   "its",      "this is", "we run",
                                        "here is", "run",    "we're in", "on",      "our",
                                        "so",      "out of", NULL};
    static const char *const tails[] = {"right", "left", "action", "set",    "look",
                                        "play",  "side", "cut",    "series", "game",
                                        "again", "one",  "two",    "three",  NULL};
    take_among(c, heads);
    if (!take_label(c)) {
        return false;
    }
    while (take_label(c)) {
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
    if ((!named && !take_among(&trial, him_or_her)) || !take_words(&trial, "for") ||
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

/* and now we got the whole right side empty so one drives: how they stand by then. */
static const struct token *scene_then(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const heads[] = {
        "and now we got", "and now we have", "and now we've got", "now we got",
        "now we have",    "and we got",      "and now there's",   NULL};
    static const char *const turns[] = {"if",  "when", "not", "unless", "until", "or", "he",
                                        "she", "they", "him", "her",    "ball",  "it", NULL};
    enum { FAR = 8 };
    struct cursor trial = *line;
    trial.at = at;
    if (at == line->at || !take_among(&trial, heads)) {
        return NULL;
    }
    const struct token *so = trial.at, *far = so + FAR;
    while (so < line->end && so < far && !token_is_word(so, "so")) {
        if (so->kind != TOKEN_WORD || attacker_at(so, line->end) || token_is_among(so, turns)) {
            return NULL;
        }
        so++;
    }
    bool now = token_is_word(at, "now") || token_is_word(at + 1, "now"); /* after all that */
    struct cursor acts = *line;
    acts.at = so + 1;
    if (so == trial.at || so == far || so + 1 >= line->end || !attacker_at(so + 1, line->end) ||
        !subject_verb_is(&acts)) {
        return NULL;
    }
    struct cursor here = *line;
    here.at = at;
    out->told = span_join(at->span, so[-1].span);
    recast_word(&here, out, now ? "then" : "and");
    return so + 1;
}

/* A > B, put as A to B, of two of ours: where it ends, or NULL. */
static const struct token *arrow_end(const struct cursor *line, const struct token *at)
{
    bool arrow = at + 2 < line->end && attacker_at(at, line->end) && token_is_word(at + 1, "to") &&
                 attacker_at(at + 2, line->end) &&
                 attacker_at(at, line->end) != attacker_at(at + 2, line->end);
    return arrow ? at + 3 : NULL;
}

/* 3>5 get: passes and gets it back by hand. dho 1>4. */
static const struct token *arrow_hand(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    struct cursor here = *line;
    here.at = at;
    const struct token *end;
    if (token_is_word(at, "dho") && at + 1 < line->end && (end = arrow_end(line, at + 1)) &&
        (at == line->at || clause_ends(at - 1))) {
        put_dho(&here, out, attacker_at(at + 1, line->end), attacker_at(end - 1, line->end));
        return end;
    }
    end = arrow_end(line, at);
    if (!end || end == line->end || !token_is_word(end, "get") ||
        !(end + 1 == line->end || clause_ends(end + 1))) {
        return NULL;
    }
    recast_copy(&here, out, at, at + 1);
    recast_word(&here, out, "passes");
    recast_word(&here, out, "to");
    recast_copy(&here, out, end - 1, end);
    recast_mark(&here, out, ',');
    recast_copy(&here, out, end - 1, end);
    recast_word(&here, out, "hands-off");
    recast_word(&here, out, "to");
    recast_copy(&here, out, at, at + 1);
    return end + 1;
}

const struct token *set_named_put(const struct cursor *line, const struct token *at,
                                  struct recast *out)
{
    static plain_way *const ways[] = {set_named, for_the_get, scene_then, arrow_hand, NULL};
    return first_put(ways, line, at, out);
}
