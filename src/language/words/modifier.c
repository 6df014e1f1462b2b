/* SPDX-License-Identifier: MIT */
/* modifier: how it is done: pace, time, width, early, and which way a screener looks. */
#include "language/words/grammar.h"

static int twice(struct predicate *p, const struct token *from, const char *what)
{
    struct span span = cursor_taken(p->c, from);
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_TWICE, span, "%s is said twice: `%.*s` is the second one", what,
                     STR_ARG(cursor_text(p->c, span))),
              "keep one of the two");
    return -1;
}

static int unfit(struct predicate *p, const struct token *from, const char *where)
{
    struct span span = cursor_taken(p->c, from);
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_MODIFIER_UNFIT, span, "`%.*s` does not go with `%.*s`",
                     STR_ARG(cursor_text(p->c, span)), STR_ARG(cursor_text(p->c, p->s->verb_span))),
              "%s", where);
    return -1;
}

static int pace_read(struct predicate *p)
{
    const struct token *from = p->c->at;
    int pace = take_entry(p->c, pace_entries);
    if (pace < 0) {
        return 0;
    }
    if (p->s->pace != PACE_VERB) {
        return twice(p, from, "the pace");
    }
    p->s->pace = (enum pace)pace;
    return 1;
}

static int taking_read(struct predicate *p)
{
    const struct token *from = p->c->at;
    struct measure seconds;
    if (!take_words(p->c, "taking")) {
        return 0;
    }
    struct span span = cursor_span(p->c);
    if (!take_measure(p->c, true, &seconds)) {
        diag_help(p->c->diags, REFUSE(p->c, TEXT_DURATION_MISSING, span, "`taking` how long?"),
                  "write seconds: `taking 1.5 s`");
        return -1;
    }
    if (p->s->taking.unit != UNIT_NONE) {
        return twice(p, from, "the time");
    }
    p->s->taking = seconds;
    return 1;
}

static bool task_is(const struct predicate *p, enum verb_task a, enum verb_task b)
{
    enum verb_task task = verb_row(p->s->verb)->task;
    return task == a || task == b;
}

static int width_read(struct predicate *p)
{
    const struct token *from = p->c->at;
    bool wide = take_words(p->c, "wide");
    if (!wide && !take_words(p->c, "tight")) {
        return 0;
    }
    if (task_is(p, VERB_HOLD, VERB_HOLD)) {
        return unfit(p, from, "name the place before: `4 goes to right corner`, then `4 stays`");
    }
    if (!task_is(p, VERB_USE, VERB_MOVE) && !task_is(p, VERB_CARRY, VERB_CARRY)) {
        return unfit(p, from,
                     "it says how far off another player a cutter goes: `3 curls off 5, tight`");
    }
    if (p->s->width != WIDTH_NORMAL) {
        return twice(p, from, "how far off");
    }
    p->s->width = wide ? WIDTH_WIDE : WIDTH_TIGHT;
    return 1;
}

static int early_read(struct predicate *p)
{
    const struct token *from = p->c->at;
    if (!take_words(p->c, "early")) {
        return 0;
    }
    if (!task_is(p, VERB_USE, VERB_MOVE)) {
        return unfit(p, from,
                     "it is for one who does not wait for a screen: `3 curls off 5, early`");
    }
    if (p->s->early) {
        return twice(p, from, "`early`");
    }
    p->s->early = true;
    return 1;
}

/* back to, with his back to. */
static bool take_back_to(struct cursor *c)
{
    struct cursor trial = *c;
    take_words(&trial, "with");
    take_among(&trial, owner_words);
    if (!take_words(&trial, "back to")) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static int face_read(struct predicate *p)
{
    const struct token *from = p->c->at;
    bool screen = task_is(p, VERB_SCREEN, VERB_SCREEN);
    bool facing = take_words(p->c, "facing");
    if (!facing && !(screen && take_back_to(p->c))) {
        return 0;
    }
    if (!screen) {
        return unfit(p, from,
                     "it turns a screener: `5 screens for 3, facing the baseline`; else "
                     "`2 faces the rim`");
    }
    size_t before = p->c->refusals;
    struct who who;
    const struct place *place;
    if (!place_or_who_read(p->c, 0, &place, &who)) {
        if (p->c->refusals == before) {
            place_refuse(p->c, facing ? STR("facing") : STR("back to"));
        }
        return -1;
    }
    if (p->s->face != FACE_NONE) {
        return twice(p, from, "which way the screener looks");
    }
    p->s->face = facing ? FACE_TO : FACE_BACK;
    p->s->face_who = place ? NULL : who_keep(p->c, who);
    p->s->face_place = place;
    return 1;
}

int modifier_read(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {face_read, width_read, early_read,
                                                         pace_read, taking_read};
    for (size_t i = 0; i < sizeof readers / sizeof *readers; i++) {
        int taken = readers[i](p);
        if (taken != 0) {
            return taken;
        }
    }
    return 0;
}
