/* SPDX-License-Identifier: MIT */
/* counted: so many dribbles are so much of the way, where no more is said: takes one dribble, takes
 * two dribbles toward half court; so many steps; and back again from there. */
#include "language/words/speech.h"

/* Twelfths of the way: a third of it for one dribble, half for two, two thirds for more (ours). */
static int twelfths(const struct predicate *p)
{
    static const struct entry counts[] = {{"one", 4}, {"1", 4},      {"two", 6},
                                          {"2", 6},   {"couple", 6}, {NULL, 0}};
    int found = 8;
    for (const struct token *at = p->from; at < p->after_verb; at++) {
        for (const struct entry *entry = counts; entry->words; entry++) {
            found = str_is(at->text, entry->words) ? entry->value : found;
        }
    }
    return found;
}

static const char *part_words(int part)
{
    return part == 4 ? "a third" : part == 6 ? "half" : "two thirds";
}

static const struct place *part_of(struct predicate *p, const struct place *to, int part)
{
    struct place *parts = arena_array(p->c->arena, struct place, 2);
    struct span span = to->span;
    parts[0] = (struct place){.kind = PLACE_WHERE, .who = p->s->subject.at[0], .span = span};
    parts[1] = (struct place){.kind = part == 6 ? PLACE_HALFWAY : PLACE_FRACTION,
                              .fraction = part / 12.0,
                              .a = &parts[0],
                              .b = to,
                              .span = span};
    return &parts[1];
}

/* takes one dribble, and nowhere said: toward the rim. */
static void toward_rim(struct predicate *p)
{
    struct sentence *s = p->s;
    struct place rim = {.kind = PLACE_SPOT, .spot = SPOT_RIM, .span = s->verb_span};
    int part = twelfths(p);
    s->place = part_of(p, place_keep(p->c->arena, rim), part);
    struct diag *diag = diag_add(p->c->diags, DIAG_TEXT_LENGTH_TAKEN, s->verb_span,
                                 "`%.*s`: where to is not written: %s of the way to the rim was "
                                 "taken",
                                 STR_ARG(cursor_text(p->c, s->verb_span)), part_words(part));
    diag_help(p->c->diags, diag, "to go elsewhere, name it: `%.*s to left elbow`",
              STR_ARG(predicate_begun(p)));
}

/* takes two dribbles toward half court: that far, and not all the way. */
static void toward_place(struct predicate *p)
{
    struct sentence *s = p->s;
    int part = twelfths(p);
    struct str where = cursor_text(p->c, s->place->span);
    struct diag *diag =
        diag_add(p->c->diags, DIAG_TEXT_LENGTH_TAKEN, s->place->span,
                 "`%.*s` toward `%.*s`: %s of the way was taken",
                 STR_ARG(cursor_text(p->c, s->verb_span)), STR_ARG(where), part_words(part));
    diag_help(p->c->diags, diag, "to go all the way, write `1 dribbles to %.*s`", STR_ARG(where));
    s->place = part_of(p, s->place, part);
}

void counted_part(struct predicate *p)
{
    const struct sentence *s = p->s;
    if (s->verb != VERB_DRIBBLES || !p->phrase.counted || s->subject.count != 1) {
        return;
    }
    bool bounce = str_is(cursor_text(p->c, s->verb_span), "bounce");
    if (bounce && !s->place && p->c->speech) { /* 3 backdoor, bounce: a pass, mostly */
        diag_help(p->c->diags,
                  REFUSE(p->c, TEXT_LEFT_OVER, s->verb_span, "`bounce` alone: what is bounced?"),
                  "write `bounce pass to 3`, or `takes one dribble`");
    } else if (s->place && p->part_way) {
        toward_place(p);
    } else if (p->c->speech && !s->place && !p->way_said && p->phrase.to == SPOT_COUNT) {
        toward_rim(p);
    }
    p->part_way = false;
}

/* Two steps, a step, a couple of steps: how many; 0: none. The scanner has two steps as one token
 * where nothing follows that could be done. */
static int take_steps(struct cursor *c)
{
    static const char *const words[] = {"step", "steps", NULL};
    static const char *const couples[] = {"couple of", "couple", NULL};
    struct cursor trial = *c;
    const struct token *next = cursor_next(c);
    int count = 1;
    if (next && next->kind == TOKEN_MEASURE && next->unit == UNIT_STEPS && next->integer) {
        c->at = next + 1;
        return (int)next->number;
    }
    if (next && next->kind == TOKEN_NUMBER && next->integer && !next->possessive) {
        count = (int)next->number;
        trial.at = next + 1;
    } else if (take_among(&trial, couples)) {
        count = 2;
    }
    if (!take_among(&trial, words)) {
        return 0;
    }
    c->at = trial.at;
    return count;
}

/* 2 takes two steps down: that far down from where he is. */
bool takes_steps(const struct cursor *c, struct recast *r)
{
    static const char *const verbs[] = {"takes", "take",  "goes",  "go",   "slides",
                                        "slide", "moves", "walks", "runs", NULL};
    static const struct entry ways[] = {
        {"down", 0}, {"up", 1},       {"in", 2},      {"out", 3},     {"left", 4},     {"right", 5},
        {"back", 1}, {"back out", 3}, {"back up", 1}, {"to left", 4}, {"to right", 5}, {NULL, 0}};
    static const char *const directions[] = {"below",   "above", "inside",
                                             "outside", "left",  "right"};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    if (!player_here(&trial, &who) || above_holds(c, &who.who) || !take_among(&trial, verbs)) {
        return false;
    }
    const struct token *at = cursor_next(&trial);
    int count = take_steps(&trial), way = count > 0 ? take_entry(&trial, ways) : -1;
    if (way < 0 || !part_ends(&trial)) {
        return false;
    }
    struct token steps = *at;
    steps.kind = TOKEN_MEASURE;
    steps.unit = UNIT_STEPS;
    steps.number = count;
    steps.integer = true;
    recast_somebody(c, r, &who);
    recast_word(c, r, "goes");
    recast_word(c, r, "to");
    VEC_PUSH(c->arena, &r->tokens, steps);
    recast_word(c, r, directions[way]);
    if (way >= 4) {
        recast_word(c, r, "of");
    }
    recast_somebody(c, r, &who);
    r->to = trial.at;
    return true;
}

/* then comes back up: from where he has gone in this step, to where he stood. */
bool comes_back(const struct cursor *c, struct recast *r)
{
    static const char *const backs[] = {
        "comes back",       "goes back",       "gets back",
        "comes right back", "goes right back", "comes straight back",
        "cuts back",        "runs back",       NULL};
    static const char *const ways[] = {"up", "out", "down", "in", "over", "out to ball", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    bool named = player_here(&trial, &who);
    const struct sentence *last = sentence_before(c);
    if (!named && last && last->subject.count == 1) {
        who = (struct somebody){.from = c->at, .to = c->at, .who = last->subject.at[0]};
    }
    if ((!named && !last) || !take_among(&trial, backs) || !last || last->subject.count != 1 ||
        verb_row(last->verb)->task != VERB_MOVE || !same_who(&last->subject.at[0], &who.who)) {
        return false;
    }
    take_among(&trial, ways);
    struct cursor pace = trial;
    take_entry(&pace, pace_entries);
    if (!part_ends(&pace)) {
        return false;
    }
    recast_somebody(c, r, &who);
    recast_word(c, r, "goes");
    recast_word(c, r, "to");
    recast_word(c, r, "where");
    recast_word(c, r, "he");
    recast_word(c, r, "started");
    r->to = trial.at;
    r->same = !named;
    return true;
}
