/* SPDX-License-Identifier: MIT */
/* drive: by which side of whoever guards him a drive goes, and where one off a screen ends that
 * only says its side. */
#include "language/words/grammar.h"

/* drives left, going baseline: by which side of the one who guards the driver; -1: none of them. */
static int drive_way(const struct token *from, const struct token *end, bool side)
{
    static const struct entry words[] = {{"left", DRIVE_LEFT},
                                         {"right", DRIVE_RIGHT},
                                         {"baseline", DRIVE_BASELINE},
                                         {"middle", DRIVE_MIDDLE},
                                         {NULL, 0}};
    int way = -1;
    if (from + 1 < end && str_is(end[-1].text, "line") && str_is(end[-2].text, "end")) {
        return DRIVE_BASELINE; /* along the end line */
    }
    for (const struct entry *entry = words; entry->words && from < end; entry++) {
        if (str_is(end[-1].text, entry->words)) {
            return entry->value;
        }
        for (const struct token *at = from; side && at + 1 < end; at++) {
            if (str_is(at->text, "his") || str_is(at->text, "her")) { /* whose left? */
                return -1;
            }
            bool of_side = str_is(at->text, entry->words) && str_is(at[1].text, "side");
            way = of_side ? entry->value : way; /* on the baseline side, down the left side */
        }
    }
    return way;
}

const struct place *place_off_screen(struct cursor *c, enum drive_side way, struct span span)
{
    static const struct {
        enum spot spot;
        enum side side;
        const char *words;
    } ends[] = {[DRIVE_BASELINE] = {SPOT_SHORT_CORNER, SIDE_NONE, "the short corner"},
                [DRIVE_MIDDLE] = {SPOT_NAIL, SIDE_NONE, "the nail"},
                [DRIVE_LEFT] = {SPOT_ELBOW, SIDE_LEFT, "left elbow"},
                [DRIVE_RIGHT] = {SPOT_ELBOW, SIDE_RIGHT, "right elbow"}};
    struct place place = {
        .kind = PLACE_SPOT, .spot = ends[way].spot, .side = ends[way].side, .span = span};
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_PLACE_TAKEN, span,
                                 "`%.*s` off a screen: %s was taken, where the turn ends",
                                 STR_ARG(cursor_text(c, span)), ends[way].words);
    diag_help(c->diags, diag, "to go elsewhere, name it: `1 dribbles off 5 to left wing`");
    return place_keep(c->arena, place);
}

/* going left, off a screen: with the ball to where the turn round it ends; without it anywhere on
 * that side could be meant. -1: reported. */
static int off_to_side(struct predicate *p, const struct token *from, const struct token *end,
                       int way)
{
    struct cursor *c = p->c;
    struct span span = {from->span.source, from->span.begin, end[-1].span.end};
    bool ball = p->s->subject.count == 1 && above_holds(c, &p->s->subject.at[0]);
    if (ball || p->s->verb == VERB_DRIVES_OFF) {
        cursor_take(c, from, end);
        p->s->place = place_off_screen(c, (enum drive_side)way, span);
        p->s->verb = p->s->verb == VERB_COMES ? VERB_DRIVES_OFF : p->s->verb;
        return 1;
    }
    static const char *const to[] = {[DRIVE_BASELINE] = "left short corner",
                                     [DRIVE_MIDDLE] = "the nail",
                                     [DRIVE_LEFT] = "left wing",
                                     [DRIVE_RIGHT] = "right wing"};
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, span, "`%.*s`: off a screen, where does it end?",
                     STR_ARG(cursor_text(c, span))),
              "write where to, behind the screener: `to %s`", to[way]);
    return -1;
}

/* The way that ends before `end` changes what is run: taken for a drive; 1, 0: it is none that
 * does, -1: reported. */
int drive_runs(struct predicate *p, const struct token *from, const struct token *end, bool placed)
{
    struct cursor *c = p->c;
    int way = drive_way(from, end, p->s->verb == VERB_DRIVES);
    bool off = verb_row(p->s->verb)->task == VERB_USE;
    if (way < 0 || placed || (p->s->verb != VERB_DRIVES && !off)) {
        return 0;
    }
    struct span span = {from->span.source, from->span.begin, end[-1].span.end};
    if (p->s->verb == VERB_DRIVES && p->s->drive != DRIVE_FREE) {
        return said_twice(p, span, "the way");
    }
    if (p->s->verb == VERB_DRIVES) {
        cursor_take(c, from, end);
        p->s->drive = (enum drive_side)way;
        return 1;
    }
    return off_to_side(p, from, end, way);
}

/* drives off 5 going left: the same without speech. */
int going_read(struct predicate *p)
{
    static const char *const goings[] = {"going left", "going right", "going baseline",
                                         "going middle", NULL};
    struct cursor trial = *p->c;
    const struct token *from = past_fillers(p->c->at, p->c->end);
    return take_among(&trial, goings)
               ? drive_runs(p, from, trial.at, p->s->place || where_follows(&trial))
               : 0;
}

/* comes off 5 middle, rejects it baseline: with no preposition it is the way, and not the line. */
int way_off_screen(struct predicate *p)
{
    static const char *const ways[] = {"baseline", "middle", NULL};
    struct cursor trial = *p->c;
    const struct token *from = past_fillers(p->c->at, p->c->end);
    bool use = verb_row(p->s->verb)->task == VERB_USE && !p->s->place;
    if (!use || from > p->c->at || !take_among(&trial, ways) || !way_ends_here(&trial)) {
        return 0;
    }
    return drive_runs(p, from, trial.at, false);
}
