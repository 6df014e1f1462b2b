/* SPDX-License-Identifier: MIT */
/* way: the way somebody takes, which is not where it ends: along the baseline or a sideline, which
 * are run along, down the lane, through the middle. By the lane or the rim is in via.c, by which
 * side of a defender in drive.c; a way without an end is asked for it. */
#include "language/words/grammar.h"

static const char *const ways[] = {
    "across",     "up",       "down",          "along",       "through",     "thru",      "over",
    "right down", "right up", "straight down", "straight up", "right along", "back down", NULL};
static const char *const lines[] = {"right side of lane",
                                    "left side of lane",
                                    "three-point line",
                                    "free-throw line",
                                    "middle of floor",
                                    "middle of paint",
                                    "right lane line",
                                    "right sideline",
                                    "middle of lane",
                                    "left lane line",
                                    "left sideline",
                                    "middle of key",
                                    "foul line",
                                    "main street",
                                    "perimeter",
                                    "gut of lane",
                                    "pipe",
                                    "gut",
                                    "lane line",
                                    "end line",
                                    "endline",
                                    "sideline",
                                    "baseline",
                                    "middle",
                                    "elbows",
                                    "paint",
                                    "floor",
                                    "court",
                                    "elbow",
                                    "lane",
                                    "side",
                                    "wing",
                                    "key",
                                    "arc",
                                    NULL};

bool take_way(struct cursor *c, bool led)
{
    struct cursor trial = *c;
    if ((!take_among(&trial, ways) && !led) || !take_among(&trial, lines)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* The first of these that stands here; in a plain line only the side of a drive. */
static int way_or_side(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {passing_by, toward_side, by_defender,
                                                         toward_read, guard_way};
    if (!p->c->speech) {
        return p->s->verb == VERB_DRIVES ? side_alone(p) : 0;
    }
    int found = 0;
    for (size_t i = 0; found == 0 && i < sizeof readers / sizeof *readers; i++) {
        found = readers[i](p);
    }
    return found;
}

/* down the lane, right down the middle: of a verb that goes to the rim, there. */
static bool down_to_rim(const struct cursor *c, enum verb verb)
{
    static const char *const downs[] = {"right down", "straight down", "back down", "down", NULL};
    static const char *const middles[] = {"lane",        "key", "paint", "pipe",
                                          "main street", "gut", NULL};
    struct cursor inner = *c;
    inner.watch = NULL;
    return take_among(&inner, downs) && word_among(&inner, middles) &&
           (verb == VERB_CUTS || verb == VERB_ROLLS || verb == VERB_DRIVES || verb == VERB_SLIPS ||
            ((verb == VERB_GOES || verb == VERB_COMES) && c->speech));
}

static const char *const baselines[] = {"baseline", "end line", "endline", NULL};

/* Baseline or sideline; NULL: none of them. */
static const struct place *line_place(struct cursor *c)
{
    const struct token *from = c->at;
    if (take_among(c, baselines)) {
        return place_new(c, (struct place){.kind = PLACE_SPOT, .spot = SPOT_BASELINE}, from);
    }
    const struct place *place = spot_read(c, true);
    return place && place->kind == PLACE_SPOT && place->spot == SPOT_SIDELINE ? place : NULL;
}

/* along the baseline, up the right sideline, runs the baseline: a line that is run along. */
static int line_read(struct predicate *p)
{
    static const char *const alongs[] = {"along",         "up",          "down",
                                         "right along",   "straight up", "right up",
                                         "straight down", "right down",  NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(p->s->verb, slots);
    bool takes = p->s->verb == VERB_DRIVES, article = c->at < c->end && c->at->filler;
    article = article || (c->speech && word_among(c, baselines) && word_is(c, 1, "to"));
    for (size_t i = 0; i < count; i++) {
        takes = takes || slots[i].letter == 'A';
    }
    bool whole = article && (p->s->verb == VERB_CUTS || p->s->verb == VERB_GOES);
    bool word = takes && take_among(&trial, alongs);
    const struct place *line = word || (takes && whole) ? line_place(&trial) : NULL;
    const struct token *end = trial.at;
    cursor_back(c, mark);
    if (!line) {
        return 0;
    }
    trial.at = end;
    bool goes_on = way_goes_on(&trial) || word_is(&trial, 0, "to");
    if ((!p->s->place && !goes_on) || (p->s->place && !word)) {
        return 0; /* where does it end? */
    }
    struct span span = cursor_taken(&trial, past_fillers(c->at, c->end));
    if (p->s->verb == VERB_DRIVES) {
        return line->spot == SPOT_BASELINE ? drive_runs(p, c->at, end, false) : 0;
    }
    if (p->path_done) {
        return said_twice(p, span, "the way");
    }
    p->path_done = p->way_said = true;
    p->s->path = PATH_ALONG;
    p->s->path_place = line;
    cursor_take(c, c->at, end);
    return 1;
}

/* throws it to 2 up the side: which way the ball goes. */
static bool ball_along(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    if (!c->speech || verb_row(p->s->verb)->task != VERB_PASS || p->s->object.kind == WHO_NONE ||
        !take_way(c, false)) {
        return false;
    }
    note_left_out(c, cursor_taken(c, from));
    return true;
}

/* A way that no end follows, which the verb or the words bring with them: through the lane and up
 * to the slot, rolls down the lane. */
static bool way_is_end(struct predicate *p, const struct token *end)
{
    struct cursor *c = p->c;
    struct cursor behind = *c;
    behind.at = end;
    bool through = c->speech && word_is(c, 0, "through") && !stop_is(&behind);
    if (through && (word_is(c, 1, "lane") || word_is(c, 1, "key") || word_is(c, 1, "paint"))) {
        p->phrase.to = SPOT_LANE;
    } else if (down_to_rim(c, p->s->verb)) {
        p->phrase.to = SPOT_RIM;
    } else {
        return false;
    }
    c->at = end;
    return true;
}

static int refuse_way(struct predicate *p, const struct token *end)
{
    struct cursor *c = p->c;
    bool right = false;
    for (const struct token *at = c->at; at < end; at++) {
        right = right || token_is_word(at, "right");
    }
    struct cursor said = *c;
    said.at = end;
    struct span span = cursor_taken(&said, c->at);
    diag_help(c->diags,
              REFUSE(c, TEXT_PLACE_HALF, span, "`%.*s` is the way: where does it end?",
                     STR_ARG(cursor_text(c, span))),
              "write the place behind it: `%.*s %.*s to %s corner`", STR_ARG(predicate_begun(p)),
              STR_ARG(cursor_text(c, span)), right ? "right" : "left");
    return -1;
}

/* runs the left sideline: along it, and not to its nearest point. */
static bool sideline_alone(const struct predicate *p, struct cursor *c)
{
    static const char *const sidelines[] = {"left sideline", "right sideline", "sideline", NULL};
    return (p->s->verb == VERB_CUTS || p->s->verb == VERB_GOES) && take_among(c, sidelines);
}

/* down the lane, through the middle, up the side; cuts the baseline. */
static int way_read(struct predicate *p)
{
    struct cursor *c = p->c;
    struct cursor trial = *c;
    const struct token *from = c->at;
    enum verb verb = p->s->verb;
    bool whole = word_among(c, baselines) && (verb == VERB_CUTS || verb == VERB_GOES) &&
                 cursor_next(c) > c->at;
    if (!p->s->place && sideline_alone(p, &trial)) {
        return refuse_way(p, trial.at);
    }
    if ((p->s->place && !c->speech) || !take_way(&trial, whole)) {
        return 0;
    }
    int runs = verb == VERB_DRIVES ? drive_runs(p, past_fillers(from, c->end), trial.at,
                                                p->s->place || where_follows(&trial))
                                   : 0;
    if (runs != 0) { /* down the left side of the lane */
        return runs;
    }
    if (word_is(&trial, 0, "to") || word_is(&trial, 0, "from") ||
        (c->speech &&
         (p->s->place || way_goes_on(&trial) || verb_row(verb)->place != DEFAULT_NONE))) {
        note_way(p, cursor_taken(&trial, from));
        c->at = trial.at;
        return 1;
    }
    return way_is_end(p, trial.at) ? 1 : refuse_way(p, trial.at);
}

int along_read(struct predicate *p)
{
    int line = line_read(p);
    if (line != 0) {
        return line;
    }
    if (p->s->verb == VERB_DRIVES && word_is(p->c, 1, "middle") && !p->s->place &&
        !word_is(p->c, 2, "to") && !word_is(p->c, 2, "of")) {
        return 0; /* drives down the middle: which way, to the rim */
    }
    int going = going_read(p);
    if (going != 0) {
        return going;
    }
    if (past_defender(p) || through_gap(p) || ball_along(p)) {
        return 1;
    }
    int by = way_or_side(p);
    return by != 0 ? by : way_read(p);
}
