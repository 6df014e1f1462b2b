/* SPDX-License-Identifier: MIT */
/* screen_named: a screen that is only named by the one who goes off it, anywhere in what he does:
 * `2 runs the baseline off a stagger, first 5 and then 4`, `fades behind a flare screen set by 5`,
 * `curls the screen that 5 brings`. Who sets it is told first. Rules of reshape.h. */
#include "language/words/reshape.h"

/* The screen as it is named. */
struct named {
    const struct token *from, *to;
    const struct token *by[2];
    size_t count;
    enum screen_kind kind;
    bool any; /* a screen, another one: set now */
};

/* One player, and perhaps one more: 5 and then 4; first 5, then 4; 4 first and 5 second. */
static bool setters_read(struct cursor *c, struct named *out)
{
    static const char *const ands[] = {"and then", "and after that", "and", "then", NULL};
    static const char *const order[] = {"first", "second", "next", "last", "after that", NULL};
    out->count = 0;
    for (struct cursor trial = *c; out->count < 2;) {
        if (out->count == 1) {
            bool comma = take_mark(&trial, ',');
            if (!take_among(&trial, ands) && !comma) {
                break;
            }
        }
        take_among(&trial, order);
        const struct token *who = past_fillers(trial.at, c->end);
        struct cursor acts = line_look(c, who);
        if (!attacker_at(who, c->end) || (out->count == 1 && subject_verb_is(&acts))) {
            break;
        }
        out->by[out->count++] = who;
        trial.at = who + 1;
        take_among(&trial, order);
        c->at = trial.at;
    }
    return out->count > 0 && (out->count < 2 || out->by[0]->number != out->by[1]->number);
}

/* a down screen, the stagger, a double screen. */
static bool noun_read(struct cursor *c, struct named *out, bool *several)
{
    static const char *const many[] = {"staggered screens",
                                       "staggered screen",
                                       "stagger screen",
                                       "double screen",
                                       "double stagger",
                                       "stagger",
                                       "double",
                                       "screens",
                                       NULL};
    struct phrase phrase;
    *several = take_among(c, many);
    out->kind = SCREEN_PLAIN;
    if (*several) {
        return true;
    }
    if (!phrase_noun_read(c, &phrase) || verb_row(phrase.verb)->task != VERB_SCREEN) {
        return false;
    }
    out->kind = phrase.screen;
    return true;
}

/* that 5 brings, which 5 sets on x2, 5 puts up for him. */
static bool relative_setter(struct cursor *c, struct named *out)
{
    static const char *const sets[] = {"brings",       "sets",    "gives",  "puts up",
                                       "puts",         "makes",   "offers", "holds",
                                       "comes to set", "has set", NULL};
    struct cursor trial = *c;
    if (!take_words(&trial, "that")) {
        take_words(&trial, "which");
    }
    const struct token *who = past_fillers(trial.at, c->end);
    trial.at = who < c->end ? who + 1 : who;
    if (!attacker_at(who, c->end) || !take_among(&trial, sets)) {
        return false;
    }
    if (take_words(&trial, "on")) {
        const struct token *man = past_fillers(trial.at, c->end);
        if (man == c->end || man->kind != TOKEN_DEFENDER) {
            return false;
        }
        trial.at = man + 1;
    } else if (take_words(&trial, "for")) {
        static const char *const hims[] = {"him", "her", NULL};
        if (!take_among(&trial, hims)) {
            return false;
        }
    }
    *out = (struct named){.by = {who}, .count = 1, .kind = out->kind};
    c->at = trial.at;
    return true;
}

/* Behind the noun: from 5, set by 5, first 5 and then 4. */
static bool setters_behind(struct cursor *c, struct named *out, bool several)
{
    static const char *const froms[] = {"set by", "given by", "made by", "put up by", "brought by",
                                        "from",   "by",       "of",      NULL};
    enum screen_kind kind = out->kind;
    struct cursor trial = *c;
    if (relative_setter(c, out)) {
        return true;
    }
    bool led = take_among(&trial, froms);
    bool comma = !led && several && take_mark(&trial, ',');
    if ((!led && !comma && !several) || !setters_read(&trial, out) || (!led && out->count != 2)) {
        return false;
    }
    out->kind = kind;
    c->at = trial.at;
    return true;
}

/* off a screen that is named so. */
static bool named_at(const struct cursor *c, const struct token *at, struct named *out)
{
    static const char *const offs[] = {"off of", "off",  "behind", "around", "over top of", "over",
                                       "using",  "uses", "past",   "via",    NULL};
    static const char *const uses[] = {"curls", "takes", "rejects", "refuses", "wraps", NULL};
    static const char *const anys[] = {"a", "an", "another", NULL};
    struct cursor trial = line_look(c, at);
    bool several;
    *out = (struct named){.from = at};
    bool led = take_among(&trial, offs);
    if (!led && !(at > c->at && token_is_among(at - 1, uses))) {
        return false;
    }
    const struct token *noun = trial.at;
    if (!noun_read(&trial, out, &several)) {
        return false;
    }
    bool any = !none_among(noun, trial.at, anys) || several;
    if (!setters_behind(&trial, out, several)) {
        return false;
    }
    out->from = at;
    out->to = trial.at;
    out->any = any;
    return true;
}

/* Who sets it for whom, as sentences of their own. */
static void put_set(const struct cursor *c, struct recast *r, const struct named *n, int user)
{
    struct cursor here = line_look(c, n->by[0]);
    struct who who = {.kind = WHO_PLAYER, .number = user, .span = n->by[0]->span};
    bool ball = n->kind == SCREEN_PLAIN && n->count == 1 && above_holds(c, &who);
    recast_copy(c, r, n->by[0], n->by[0] + 1);
    if (n->count == 2) {
        recast_word(&here, r, "and");
        recast_copy(c, r, n->by[1], n->by[1] + 1);
        recast_word(&here, r, "screen");
    } else {
        recast_verb(&here, r,
                    ball ? STR("ball screens")
                         : phrase_words(VERB_SCREENS, PASS_PLAIN, n->kind, false));
    }
    recast_word(&here, r, "for");
    recast_number(&here, r, user);
    put_stop(c, r);
    r->as = n->count == 2 ? str_format(c->arena, "%d and %d screen for %d, who uses them",
                                       (int)n->by[0]->number, (int)n->by[1]->number, user)
                          : str_format(c->arena, "%d screens for %d, who uses it",
                                       (int)n->by[0]->number, user);
}

static void put_off(const struct cursor *c, struct recast *r, const struct named *n)
{
    struct cursor here = line_look(c, n->from);
    recast_word(&here, r, "off");
    recast_copy(c, r, n->by[0], n->by[0] + 1);
    if (n->count == 2) {
        recast_word(&here, r, "and");
        recast_copy(c, r, n->by[1], n->by[1] + 1);
    }
}

/* The screen at `at`, and who goes off it: the clause, and where his verb begins. */
struct use {
    struct named named;
    struct somebody who;
    const struct token *clause, *verb;
    bool own, then;
};
static bool use_at(const struct cursor *c, const struct token *at, struct use *out)
{
    if (!named_at(c, at, &out->named)) {
        return false;
    }
    out->clause = clause_begin(c, at);
    if (!clause_subject(c, out->clause, &out->who, &out->own) || out->who.who.kind != WHO_PLAYER) {
        return false;
    }
    out->verb = out->own ? out->who.to : out->clause;
    joint_begin(c, out->clause, &out->then);
    for (size_t i = 0; i < out->named.count; i++) {
        if ((int)out->named.by[i]->number == out->who.who.number) {
            return false;
        }
    }
    return out->verb <= at;
}

/* The line up to the clause, and the screen; nothing new where it stands already. */
static void put_until_use(const struct cursor *c, struct recast *r, const struct use *use)
{
    struct who by = {.kind = WHO_PLAYER,
                     .number = (int)use->named.by[0]->number,
                     .span = use->named.by[0]->span};
    put_before(c, r, use->clause);
    if (use->named.any || !above_screened(c, &use->who.who, &by)) {
        put_set(c, r, &use->named, use->who.who.number);
    }
    if (use->then) {
        struct cursor here = line_look(c, use->clause);
        recast_word(&here, r, "then");
    }
    struct cursor here = line_look(c, use->clause);
    recast_number(&here, r, use->who.who.number);
}

/* runs the baseline off a screen by 4 to the corner: off 4. */
bool shape_screen_kept(const struct cursor *c, const struct token *at, struct recast *r)
{
    struct use use;
    if (!use_at(c, at, &use)) {
        return false;
    }
    put_until_use(c, r, &use);
    recast_copy(c, r, use.verb, at);
    put_off(c, r, &use.named);
    recast_copy(c, r, use.named.to, c->end);
    return true;
}

/* to the top, right before `at`: where it begins; NULL: where to is not said there. */
static const struct token *where_to(const struct cursor *c, const struct token *from,
                                    const struct token *at)
{
    for (; from < at; from++) {
        struct cursor trial = line_look(c, from);
        const struct place *place;
        bool led = take_among(&trial, place_words);
        const struct token *end = led && trial.at < at ? spot_end(c, trial.at, &place) : NULL;
        if (end && past_fillers(end, at) == at) {
            return from;
        }
    }
    return NULL;
}

/* Only a way is told by these words: runs the baseline, comes out left. */
static bool only_way(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const ways[] = {"baseline", "lane", "middle", "sideline", "end", NULL};
    const struct place *place;
    for (; from < to; from++) {
        if (from->kind != TOKEN_WORD || token_is_among(from, turning_words) ||
            (!token_is_among(from, ways) && spot_end(c, from, &place))) {
            return false;
        }
    }
    return true;
}

/* comes out left off a screen by 4 and gets it: comes off 4 and gets it. */
bool shape_screen_used(const struct cursor *c, const struct token *at, struct recast *r)
{
    struct use use;
    if (!use_at(c, at, &use)) {
        return false;
    }
    const struct token *where = where_to(c, use.verb, at), *way = where ? where : at;
    if (!only_way(c, use.verb, way)) {
        return false;
    }
    put_until_use(c, r, &use);
    struct cursor here = line_look(c, at);
    recast_word(&here, r, "comes");
    put_off(c, r, &use.named);
    if (where) {
        recast_copy(c, r, where, at);
    }
    recast_copy(c, r, use.named.to, c->end);
    if (way > use.verb + 1) {
        r->told = span_join(use.verb->span, way[-1].span);
    }
    return true;
}
