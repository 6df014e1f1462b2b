/* SPDX-License-Identifier: MIT */
/* counted: so many dribbles are so much of the way, where no more is said: takes one dribble, takes
 * two dribbles toward half court. */
#include "language/words/grammar.h"

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
    if (s->place && p->part_way) {
        toward_place(p);
    } else if (p->c->speech && !s->place && !p->way_said && p->phrase.to == SPOT_COUNT) {
        toward_rim(p);
    }
    p->part_way = false;
}
