/* SPDX-License-Identifier: MIT */
/* subject: who acts, and whether a verb follows. */
#include "language/words/grammar.h"

enum phrase_side who_side(const struct who *who)
{
    return who_defends(who) ? FOR_DEFENDERS : FOR_ATTACKERS;
}

/* will, now, and `goes out and` before the verb add nothing. */
void skip_run_in(struct cursor *c)
{
    static const char *const empty[] = {"will", "now", "both", "also", "immediately", NULL};
    static const char *const going[] = {"steps", "step", "goes",    "go",    "runs", "run",
                                        "comes", "come", "catches", "catch", NULL};
    while (take_among(c, empty)) {
    }
    struct cursor trial = *c;
    struct phrase phrase;
    if (!take_among(&trial, going)) {
        return;
    }
    if (!take_words(&trial, "it") && !take_words(&trial, "the ball")) {
        take_among(&trial, particle_words);
    }
    if (!take_words(&trial, "and")) {
        return;
    }
    struct cursor verb = trial;
    if (phrase_read(&verb, FOR_ANYONE, &phrase)) {
        c->at = trial.at;
    }
}

/* uses the screen and VERB, uses 5's screen and VERB: behind `uses`. */
bool take_uses(struct cursor *c)
{
    static const char *const words[] = {"uses", "use", NULL};
    return take_among(c, words);
}

bool uses_screen_is(const struct cursor *c)
{
    struct cursor trial = *c;
    static const char *const screens[] = {"screen", "pick", "ball screen", NULL};
    struct who owner;
    if (!take_uses(&trial)) {
        return false;
    }
    struct cursor_mark mark = cursor_mark(&trial);
    owner_read(&trial, &owner);
    bool screen = word_among(&trial, screens);
    cursor_back(&trial, mark);
    return screen;
}

bool verb_begins(const struct cursor *c)
{
    struct cursor trial = *c;
    struct phrase phrase;
    skip_run_in(&trial);
    return pair_is(&trial) || uses_screen_is(&trial) || phrase_read(&trial, FOR_ANYONE, &phrase);
}

static bool everyone_read(struct cursor *c, struct who *out)
{
    const struct token *from = c->at;
    static const char *const words[] = {
        "everyone else",    "everybody else", "the others", "all others",
        "the rest of them", "the rest",       NULL};
    if (!take_among(c, words)) {
        return false;
    }
    *out = (struct who){.kind = WHO_EVERYONE_ELSE, .span = cursor_taken(c, from)};
    return true;
}

/* Mostly there is only one. */
static void first_subject(struct cursor *c, who_list *out, struct who who)
{
    *out = (who_list){arena_new(c->arena, struct who), 1, 1};
    out->at[0] = who;
}

bool subject_read(struct cursor *c, who_list *out)
{
    struct who who;
    *out = (who_list){NULL, 0, 0};
    if (everyone_read(c, &who)) {
        first_subject(c, out, who);
        return true;
    }
    struct cursor_mark begin = cursor_mark(c);
    take_words(c, "players"); /* players 2 and 4 */
    if (!who_read(c, &who)) {
        cursor_back(c, begin);
        return false;
    }
    first_subject(c, out, who);
    for (;;) {
        struct cursor_mark mark = cursor_mark(c);
        bool joined = take_mark(c, ',');
        joined = take_words(c, "and") || joined;
        if (!joined || verb_begins(c) || !who_read(c, &who)) {
            cursor_back(c, mark);
            return true;
        }
        VEC_PUSH(c->arena, out, who);
    }
}

bool subject_verb_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    bool both = subject_read(&trial, &list) && verb_begins(&trial);
    cursor_back(&trial, mark);
    return both;
}

/* Who may be the one that acts. */
bool subject_fits(struct cursor *c, const who_list *list)
{
    for (size_t i = 0; i < list->count; i++) {
        const struct who *who = &list->at[i];
        if (who->kind == WHO_COACH && !c->drill) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_DRILL_ONLY, who->span, "a coach takes part in drills only"),
                      "open it with `drill`, or write a player's number");
            return false;
        }
        if (who->kind == WHO_BALL) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_BALL_ACTS, who->span, "the ball does nothing by itself"),
                      "say who moves it: `1 passes to 2`");
            return false;
        }
        for (size_t k = 0; k < i; k++) {
            if (same_who(who, &list->at[k])) {
                struct str name = cursor_text(c, who->span);
                diag_help(c->diags,
                          REFUSE(c, TEXT_TWICE, who->span, "`%.*s` is named twice", STR_ARG(name)),
                          "name each player once: `3 and 4 cut to the rim`");
                return false;
            }
        }
        if (who_side(who) != who_side(&list->at[0])) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_LIST_UNFIT, who->span,
                             "offense and defense do not share a sentence"),
                      "write two sentences: `3 cuts to the rim` and `x3 trails`");
            return false;
        }
    }
    return true;
}

struct str subject_words(const struct cursor *c, const who_list *list)
{
    return cursor_text(c, span_join(list->at[0].span, list->at[list->count - 1].span));
}
