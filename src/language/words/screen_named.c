/* SPDX-License-Identifier: MIT */
/* screen_named: a screen that is only named by the one who goes off it, anywhere in what he does:
 * `2 runs the baseline off a stagger, first 5 and then 4`, `fades behind a flare screen set by 5`,
 * `curls the screen that 5 brings`. Who sets it is told first. Rules of
 * reshape.h, for what purpose.c leaves: one screener by name, off whom one goes right behind his
 * verb, is put in order there, where a line unfolds, with where he screens. */
#include "language/words/reshape.h"

/* The screen as it is named. */
struct named {
    const struct token *from, *to;
    const struct token *by[2];
    size_t count;
    enum screen_kind kind;
    bool any;   /* a screen, another one: set now */
    bool owned; /* 4's screen */
};

/* 5 of 5's, as a token of its own. */
static const struct token *number_alone(const struct cursor *c, const struct token *owner)
{
    struct recast r = {.told = SPAN_NONE};
    struct cursor here = line_look(c, owner);
    recast_number(&here, &r, (int)owner->number);
    return r.tokens.at;
}

/* 5 second: who is the second, and no time. */
static const struct token *second_of(const struct cursor *c, const struct token *at)
{
    bool rank = at < c->end && at->kind == TOKEN_MEASURE && at->unit == UNIT_SECONDS &&
                at->integer && at->number >= 1 && at->number <= c->players;
    return rank ? number_alone(c, at) : NULL;
}

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
        const struct token *second = out->count == 1 ? second_of(c, who) : NULL;
        if (second) {
            out->by[out->count++] = second;
            c->at = who + 1;
            break;
        }
        struct cursor acts = line_look(c, who), ranked = line_look(c, who < c->end ? who + 1 : who);
        if (!attacker_at(who, c->end) ||
            (out->count == 1 && !take_among(&ranked, order) && subject_verb_is(&acts))) {
            break;
        }
        out->by[out->count++] = who;
        trial.at = who + 1;
        take_among(&trial, order);
        c->at = trial.at;
    }
    const struct token *more = past_fillers(c->at, c->end);
    bool left = out->count == 1 && more + 1 < c->end && token_is_word(more, "and") &&
                attacker_at(more + 1, c->end) && !verb_at(c, more + 2);
    return out->count > 0 && !left && (out->count < 2 || out->by[0]->number != out->by[1]->number);
}

/* a down screen, the stagger, a double screen. */
static bool noun_read(struct cursor *c, struct named *out, bool *several)
{
    static const char *const many[] = {"two staggered screens",
                                       "staggered screens",
                                       "staggered screen",
                                       "stagger screen",
                                       "double screen",
                                       "double stagger",
                                       "stagger",
                                       "two screens",
                                       "pair of screens",
                                       "two picks",
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
        if (!take_among(&trial, him_or_her)) {
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
    bool led = take_among(&trial, froms);
    bool comma = !led && several && take_mark(&trial, ',');
    if ((!led && !comma && !several) || !setters_read(&trial, out) || (!led && out->count != 2)) {
        return false;
    }
    out->kind = kind;
    c->at = trial.at;
    return true;
}

/* Behind what leads to it: whose screen it is, in front of the noun or behind it. */
static bool screen_named_read(struct cursor *c, bool owner, struct named *out)
{
    static const char *const anys[] = {"a", "an", "another", NULL};
    struct who whose;
    bool several;
    const struct token *noun = c->at, *by = past_fillers(noun, c->end);
    out->owned = owner && owner_read(c, &whose) && whose.kind == WHO_PLAYER;
    if (!noun_read(c, out, &several) || (out->owned && several)) {
        return false;
    }
    out->any = !none_among(noun, c->at, anys) || several || out->owned;
    if (out->owned) {
        out->by[0] = number_alone(c, by);
        out->count = 1;
        return true;
    }
    struct named that = *out;
    if (relative_setter(c, &that)) {
        *out = that;
        out->any = true;
        return true;
    }
    return setters_behind(c, out, several);
}

/* off a screen that is named so. */
static bool screen_named_at(const struct cursor *c, const struct token *at, struct named *out)
{
    static const char *const offs[] = {"off of", "off",  "behind", "around", "over top of", "over",
                                       "using",  "uses", "past",   "via",    NULL};
    static const char *const uses[] = {"curls", "takes", "rejects", "refuses", "wraps", NULL};
    struct cursor trial = line_look(c, at);
    *out = (struct named){.from = at};
    bool led = take_among(&trial, offs);
    bool using = token_is_word(at, "uses") || token_is_word(at, "using");
    if ((!led && !(at > c->at && token_is_among(at - 1, uses))) ||
        !screen_named_read(&trial, led && !using, out)) {
        return false;
    }
    struct cursor next = trial;
    if (take_mark(&next, ',') && (take_particles(&next), word_among(&next, place_words))) {
        take_mark(&trial, ','); /* off a stagger, 5 first, then 4, to the wing */
    }
    out->from = at;
    out->to = trial.at;
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
    bool set; /* it stands already */
};
static bool use_at(const struct cursor *c, const struct token *at, struct use *out)
{
    if (!screen_named_at(c, at, &out->named)) {
        return false;
    }
    struct who by = {.kind = WHO_PLAYER,
                     .number = (int)out->named.by[0]->number,
                     .span = out->named.by[0]->span};
    out->clause = clause_begin(c, at);
    if (!clause_subject(c, out->clause, &out->who, &out->own) || out->who.who.kind != WHO_PLAYER) {
        return false;
    }
    out->set = above_screened(c, &out->who.who, &by);
    struct who waits, second;
    bool several;
    if (out->named.owned && !out->set &&
        above_waiting_screen(c, &out->who.who, &waits, &second, &several)) {
        return false; /* off 4's screen, where 5's waits */
    }
    if (!out->named.any && !out->set) { /* the screen of 4: which nobody has set */
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

/* Where the clause begins, with the moment in front of it. */
static const struct token *with_moment(const struct cursor *c, const struct token *clause)
{
    static const char *const ties[] = {"after", "as",     "when",   "once",     "while", "on",
                                       "upon",  "having", "before", "whenever", NULL};
    const struct token *begin = clause;
    while (begin > c->at && !sentence_ends(begin - 1)) {
        begin--;
    }
    const struct token *first = past_fillers(begin, clause);
    bool comma = clause > c->at && token_is_mark(clause - 1, ',');
    return comma && first < clause && token_is_among(first, ties) ? begin : clause;
}

/* The line up to the clause, and the screen; nothing new where it stands already. */
static void put_until_use(const struct cursor *c, struct recast *r, const struct use *use)
{
    const struct token *begin = with_moment(c, use->clause);
    put_before(c, r, begin);
    if (use->named.any || !use->set) {
        put_set(c, r, &use->named, use->who.who.number);
    }
    struct cursor here = line_look(c, use->clause);
    if (use->then && begin == use->clause) {
        recast_word(&here, r, "then");
    }
    recast_copy(c, r, begin, use->clause);
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
    static const char *const sides[] = {"left", "right", NULL};
    bool ends = use.named.to == c->end || sentence_ends(use.named.to);
    if (!only_way(c, use.verb, way) || (ends && !where && !none_among(use.verb, at, sides))) {
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

/* The screen that is named from `at` on, as if `off` stood in front of it. */
static bool named_alone(const struct cursor *c, const struct token *at, struct named *out)
{
    struct recast off = {.told = SPAN_NONE};
    struct cursor here = line_look(c, at);
    recast_word(&here, &off, "off");
    recast_copy(c, &off, at, c->end);
    struct cursor line = recast_line(c, &off);
    if (at >= c->end || !screen_named_at(&line, line.at, out)) {
        return false;
    }
    out->from = at;
    out->to = at + (out->to - line.at - 1);
    return out->any;
}

/* Off a screen by 5, 3 comes to the top: who uses it is told behind it. */
bool shape_screen_in_front(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const leads[] = {"out of",      "with",      "after", "coming off",
                                        "from behind", "thanks to", NULL};
    struct named named;
    struct cursor lead = line_look(c, at);
    if (!sentence_begins_at(c, at) ||
        !(take_among(&lead, leads) ? named_alone(c, lead.at, &named)
                                   : screen_named_at(c, at, &named))) {
        return false;
    }
    struct cursor acts = line_look(c, named.to);
    take_mark(&acts, ',');
    const struct token *who = acts.at = past_fillers(acts.at, c->end);
    int user = attacker_at(who, c->end);
    if (!user || user == (int)named.by[0]->number || !named.any || !subject_verb_is(&acts)) {
        return false;
    }
    named.from = at;
    recast_copy(c, r, c->at, at);
    put_set(c, r, &named, user);
    recast_copy(c, r, who, who + 1);
    struct cursor verb = line_look(c, who + 1);
    skip_run_in(&verb);
    const struct token *behind = past_fillers(verb.at, c->end);
    recast_copy(c, r, behind, behind + 1);
    put_off(c, r, &named);
    recast_copy(c, r, behind + 1, c->end);
    return true;
}

/* frees 2: whom it is set for; the cursor goes behind him. */
static const struct token *freed_read(struct cursor *c)
{
    static const char *const frees[] = {"to bring", "to free",   "to get",  "to spring", "to send",
                                        "frees up", "frees",     "springs", "brings",    "opens up",
                                        "opens",    "gets open", "gets",    "sends",     "lets",
                                        "releases", NULL};
    static const char *const loose[] = {"free", "open", "loose", "off", "up", "out", "go", NULL};
    struct cursor on = *c;
    if (take_words(&on, "on") && on.at < c->end && on.at->kind == TOKEN_DEFENDER) {
        c->at = on.at + 1;
    }
    if (!take_among(c, frees)) {
        return NULL;
    }
    const struct token *who = past_fillers(c->at, c->end);
    if (!attacker_at(who, c->end)) {
        return NULL;
    }
    c->at = who + 1;
    take_among(c, loose);
    return who;
}

/* What he does with it: who comes to the wing, to the wing, or nothing that is said here. */
static bool put_freed(const struct cursor *c, struct recast *r, const struct named *named,
                      const struct token *who, const struct token *behind)
{
    struct cursor next = line_look(c, behind), here = line_look(c, who);
    if (behind == c->end || clause_ends(behind)) {
        take_mark(&next, ',');
        bool relative = take_words(&next, "who");
        recast_copy(c, r, who, who + (relative ? 1 : 0));
        recast_copy(c, r, relative ? next.at : behind, c->end);
        return true;
    }
    recast_copy(c, r, who, who + 1);
    recast_word(&here, r, "comes");
    put_off(c, r, named);
    recast_copy(c, r, behind, c->end);
    return leg_follows(&next);
}

/* A screen by 4 frees 2, who comes to the wing; use a pin-down by 5 to bring 3 up. */
bool shape_screen_frees(const struct cursor *c, const struct token *at, struct recast *r)
{
    static const char *const leads[] = {"use", "we use", "run", "set", NULL};
    struct named named;
    struct cursor lead = line_look(c, at);
    take_among(&lead, leads);
    if (!clause_begins_at(c, at) || !named_alone(c, lead.at, &named)) {
        return false;
    }
    struct cursor trial = line_look(c, named.to);
    const struct token *who = freed_read(&trial);
    if (!who || who->number == named.by[0]->number) {
        return false;
    }
    recast_copy(c, r, c->at, at);
    put_set(c, r, &named, (int)who->number);
    return put_freed(c, r, &named, who, trial.at);
}
