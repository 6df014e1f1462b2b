/* SPDX-License-Identifier: MIT */
/* moment: how a moment is named in a clause besides by a plain verb: has cut, starts his drive,
 * gets there, the pass is in the air, the screen is set. Each is the moment of a sentence that
 * stands above. */
#include <string.h>

#include "language/words/grammar.h"

/* ---- has cut, drove ---- */

static const struct {
    const char *past, *bare;
} irregular[] = {
    {"cut", "cut"},      {"set", "set"},     {"put", "put"},       {"hit", "hit"},
    {"come", "come"},    {"came", "come"},   {"gone", "go"},       {"went", "go"},
    {"run", "run"},      {"ran", "run"},     {"thrown", "throw"},  {"threw", "throw"},
    {"given", "give"},   {"gave", "give"},   {"taken", "take"},    {"took", "take"},
    {"driven", "drive"}, {"drove", "drive"}, {"got", "get"},       {"gotten", "get"},
    {"left", "leave"},   {"shot", "shoot"},  {"made", "make"},     {"found", "find"},
    {"fed", "feed"},     {"swung", "swing"}, {"sunk", "sink"},     {"slid", "slide"},
    {"broken", "break"}, {"broke", "break"}, {"brought", "bring"}, {"held", "hold"},
    {"begun", "begin"},  {"began", "begin"}, {"spun", "spin"},     {"let", "let"},
};
enum { BASES_MOST = 4 };

static struct str letters(struct cursor *c, struct str stem, const char *tail)
{
    return str_format(c->arena, "%.*s%s", STR_ARG(stem), tail);
}

/* What a word in the past may be of: cleared -> clear, posted -> post, popped -> pop, used -> use.
 */
static size_t bases_of(struct cursor *c, struct str word, struct str bases[BASES_MOST])
{
    size_t count = 0;
    for (size_t i = 0; i < sizeof irregular / sizeof *irregular && count < 1; i++) {
        if (str_is(word, irregular[i].past)) {
            bases[count++] = str_of(irregular[i].bare);
        }
    }
    if (word.size < 4 || memcmp(word.at + word.size - 2, "ed", 2) != 0) {
        return count;
    }
    struct str stem = {word.at, word.size - 2};
    char last = stem.at[stem.size - 1];
    bases[count++] = stem;
    bases[count++] = letters(c, stem, "e");
    if (last == 'i') {
        bases[count++] = letters(c, (struct str){stem.at, stem.size - 1}, "y");
    } else if (stem.size > 2 && last == stem.at[stem.size - 2]) {
        bases[count++] = (struct str){stem.at, stem.size - 1};
    }
    return count;
}

bool past_base(struct cursor *c, enum phrase_side side, struct phrase *out, struct str *bare)
{
    const struct token *next = cursor_next(c);
    if (!next || next->kind != TOKEN_WORD || next->possessive) {
        return false;
    }
    struct str bases[BASES_MOST];
    size_t count = bases_of(c, next->text, bases), rest = (size_t)(c->end - next);
    for (size_t i = 0; i < count; i++) {
        struct token *tokens = arena_array(c->arena, struct token, rest);
        memcpy(tokens, next, rest * sizeof *tokens);
        tokens[0].text = bases[i];
        tokens[0].first = bases[i].at[0];
        struct cursor trial = *c;
        trial.at = tokens;
        trial.end = tokens + rest;
        trial.watch = NULL;
        if (phrase_read(&trial, side, out)) {
            cursor_take(c, next, next + (trial.at - tokens));
            *bare = bases[i];
            return true;
        }
    }
    return false;
}

bool past_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    struct str bare;
    return past_base(c, side, out, &bare);
}

/* ---- what is over, and what begins ---- */

static const struct sentence *latest_of(const struct cursor *c, const struct who *who, bool carries)
{
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        bool fits = !carries || verb_row(s->verb)->task == VERB_CARRY ||
                    s->verb == VERB_DRIVES_OFF || s->verb == VERB_DRIBBLES_OFF;
        if (fits && acts_in(s, who)) {
            return s;
        }
    }
    return NULL;
}

/* Of a pass, a shot, a screen the moment that counts is the release, or that it is set. */
static bool ends_late(enum verb verb)
{
    enum verb_task task = verb_row(verb)->task;
    return task != VERB_PASS && task != VERB_SHOOT && task != VERB_SCREEN && task != VERB_EXCHANGE;
}

void moment_of(struct event *out, const struct sentence *s, bool over)
{
    out->kind = EVENT_VERB;
    out->family = s->verb == VERB_COMES ? FAMILY_USES : FAMILY_NONE; /* with the ball too */
    out->verb = s->verb;
    out->pass = s->pass;
    out->screen = s->screen;
    out->over = over && ends_late(s->verb);
}

/* gets there, is set, picks it up: of whatever this player does last above. */
bool moment_arrival_read(struct cursor *c, struct event *out)
{
    static const char *const there[] = {"gets there",
                                        "get there",
                                        "arrives",
                                        "arrive",
                                        "is there",
                                        "are there",
                                        "has arrived",
                                        "is set",
                                        "are set",
                                        "gets set",
                                        "is in position",
                                        "gets into position",
                                        "gets to spot",
                                        "is in place",
                                        "is done",
                                        "are done",
                                        "finishes",
                                        "is finished",
                                        "has gotten there",
                                        "has got there",
                                        "is through",
                                        "gets through",
                                        "has finished",
                                        "comes to a stop",
                                        "stops",
                                        "has stopped",
                                        "gets in position",
                                        "is clear",
                                        "is past screen",
                                        "is by screen",
                                        "gets past screen",
                                        "is off screen",
                                        "clears screen",
                                        "has cleared screen",
                                        "is by",
                                        "has gone by",
                                        "is past",
                                        NULL};
    static const char *const picked[] = {"picks up",
                                         "picks it up",
                                         "picks ball up",
                                         "picks his dribble up",
                                         "picks her dribble up",
                                         "stops dribbling",
                                         "stops his dribble",
                                         "stops her dribble",
                                         "kills his dribble",
                                         "kills her dribble",
                                         "kills dribble",
                                         "ends his dribble",
                                         NULL};
    static const char *const leaves[] = {"leaves",         "goes",     "takes off",
                                         "is on the move", "is going", "is moving",
                                         "gets going",     "moves",    "starts",
                                         "is on his way",  "is gone",  "is on her way",
                                         "makes his move", "goes by",  "makes her move",
                                         "goes past",      NULL};
    struct cursor trial = *c;
    bool carries = take_among(&trial, picked);
    bool begins = !carries && c->speech && take_among(&trial, leaves) &&
                  (cursor_done(&trial) || mark_is(&trial, ',') || subject_verb_is(&trial));
    trial.at = carries || begins ? trial.at : c->at;
    if (!carries && !begins && !take_among(&trial, there)) {
        return false;
    }
    const struct sentence *s = latest_of(c, &out->subject, carries);
    bool goes = s && verb_row(s->verb)->task != VERB_PASS &&
                verb_row(s->verb)->task != VERB_SHOOT && verb_row(s->verb)->task != VERB_HOLD;
    if (!goes) {
        return false;
    }
    moment_of(out, s, !begins);
    c->at = trial.at;
    return true;
}

/* his cut, her roll, the drive: as a noun of what this player does. */
static bool noun_after(struct cursor *c, struct event *out)
{
    struct cursor trial = *c;
    struct event noun;
    take_among(&trial, owner_words);
    if (!above_noun_verb(&trial, &noun)) {
        return false;
    }
    out->kind = noun.kind;
    out->verb = noun.verb;
    out->family = noun.family;
    c->at = trial.at;
    return true;
}

/* starts to roll, begins his drive, makes his cut; finishes his cut, is done cutting. */
static bool edge_read(struct cursor *c, struct event *out, struct phrase *phrase, bool *verb)
{
    static const char *const begins[] = {
        "starts",  "start", "begins",    "begin",   "goes into",    "makes",        "make",
        "goes on", "is on", "is making", "is into", "takes off on", "goes to make", NULL};
    static const char *const ends[] = {
        "finishes",     "finish",        "completes", "complete", "is done with", "is through with",
        "has finished", "has completed", "ends",      "is done",  "has made",     NULL};
    struct cursor trial = *c;
    bool over = take_among(&trial, ends);
    if (!over && !take_among(&trial, begins)) {
        return false;
    }
    *verb = false;
    if (noun_after(&trial, out)) {
        out->over = over && ends_late(out->verb);
        c->at = trial.at;
        return true;
    }
    struct str said;
    bool to = take_words(&trial, "to");
    enum phrase_side side = who_side(&out->subject);
    if (to && !over ? phrase_read(&trial, side, phrase)
                    : phrase_ing_here(&trial, side, phrase, &said)) {
        *verb = true;
        out->over = over && ends_late(phrase->verb);
        c->at = trial.at;
        return true;
    }
    return false;
}

bool moment_read(struct cursor *c, struct event *out, struct phrase *phrase, bool *verb)
{
    static const char *const had[] = {"has", "have", "had", "is", "are", NULL};
    static const char *const adverbs[] = {"just", "already", "finally", "now", NULL};
    *verb = false;
    if (edge_read(c, out, phrase, verb)) {
        return true;
    }
    struct cursor trial = *c;
    take_among(&trial, had);
    take_among(&trial, adverbs);
    if (!past_read(&trial, who_side(&out->subject), phrase)) {
        return false;
    }
    c->at = trial.at;
    out->over = ends_late(phrase->verb);
    const struct sentence *s = latest_of(c, &out->subject, false);
    bool moved = s && verb_runs(s->verb);
    if (out->over && moved && verb_row(phrase->verb)->task == VERB_MOVE &&
        s->verb != phrase->verb) {
        moment_of(out, s, true); /* 1 cuts … once 1 has cleared */
        return true;
    }
    *verb = true;
    return true;
}

/* ---- behind a noun: the pass is in the air, the screen is set, the catch by 2 ---- */

enum tail { TAIL_BEGINS, TAIL_OVER, TAIL_CAUGHT };
static const struct entry tails[] = {
    {"is in the air", TAIL_BEGINS},
    {"in the air", TAIL_BEGINS},
    {"is in flight", TAIL_BEGINS},
    {"travels", TAIL_BEGINS},
    {"is travelling", TAIL_BEGINS},
    {"is traveling", TAIL_BEGINS},
    {"flies", TAIL_BEGINS},
    {"is flying", TAIL_BEGINS},
    {"is moving", TAIL_BEGINS},
    {"is released", TAIL_BEGINS},
    {"in flight", TAIL_BEGINS},
    {"is on the way", TAIL_BEGINS},
    {"is on its way", TAIL_BEGINS},
    {"leaves his hands", TAIL_BEGINS},
    {"leaves her hands", TAIL_BEGINS},
    {"leaves his hand", TAIL_BEGINS},
    {"leaves her hand", TAIL_BEGINS},
    {"leaves the hand", TAIL_BEGINS},
    {"leaves the hands", TAIL_BEGINS},
    {"leaves", TAIL_BEGINS},
    {"is out of his hands", TAIL_BEGINS},
    {"is out of her hands", TAIL_BEGINS},
    {"comes out of his hands", TAIL_BEGINS},
    {"is thrown", TAIL_BEGINS},
    {"is passed", TAIL_BEGINS},
    {"gets passed", TAIL_BEGINS},
    {"is swung", TAIL_BEGINS},
    {"swings", TAIL_BEGINS},
    {"is reversed", TAIL_BEGINS},
    {"is skipped", TAIL_BEGINS},
    {"is entered", TAIL_BEGINS},
    {"is inbounded", TAIL_BEGINS},
    {"is made", TAIL_BEGINS},
    {"goes", TAIL_BEGINS},
    {"moves", TAIL_BEGINS},
    {"comes", TAIL_BEGINS},
    {"goes back", TAIL_BEGINS},
    {"is passed back", TAIL_BEGINS},
    {"is thrown back", TAIL_BEGINS},
    {"is swung back", TAIL_BEGINS},
    {"swings back", TAIL_BEGINS},
    {"comes around", TAIL_BEGINS},
    {"comes in", TAIL_BEGINS},
    {"goes in", TAIL_BEGINS},
    {"starts", TAIL_BEGINS},
    {"begins", TAIL_BEGINS},
    {"happens", TAIL_BEGINS},
    {"goes up", TAIL_BEGINS},
    {"is up", TAIL_BEGINS},
    {"is taken", TAIL_BEGINS},
    {"is set", TAIL_BEGINS},
    {"gets set", TAIL_BEGINS},
    {"is there", TAIL_OVER},
    {"is over", TAIL_OVER},
    {"is done", TAIL_OVER},
    {"ends", TAIL_OVER},
    {"is finished", TAIL_OVER},
    {"stops", TAIL_OVER},
    {"is caught", TAIL_CAUGHT},
    {"gets caught", TAIL_CAUGHT},
    {"is complete", TAIL_CAUGHT},
    {"is completed", TAIL_CAUGHT},
    {"arrives", TAIL_CAUGHT},
    {"gets there", TAIL_CAUGHT},
    {"lands", TAIL_CAUGHT},
    {NULL, 0},
};
/* Who stands behind these has the ball then. */
static const char *const reaches[] = {
    "gets to",      "reaches",    "arrives at",   "hits",       "is in",
    "gets into",    "is at",      "is caught by", "finds",      "comes back to",
    "gets back to", "is back in", "is back with", "returns to", NULL};
static const char *const from_words[] = {"by", "from", "of", NULL};
static const char *const hands[] = {"hands", "hand", "fingers", "fingertips", "grip", NULL};

/* 2, 2's hands. */
static bool person_or_hands(struct cursor *c, struct who *out)
{
    struct cursor_mark mark = cursor_mark(c);
    if (owner_read(c, out) && take_among(c, hands)) {
        return true;
    }
    cursor_back(c, mark);
    return person_read(c, out) && (out->kind == WHO_PLAYER || out->kind == WHO_ROLE);
}

static void be_caught(struct event *out, struct who by)
{
    out->kind = EVENT_CATCHES;
    out->subject = by;
    out->object = (struct who){.kind = WHO_NONE};
    out->over = false;
}

/* leaves 1's hands */
static bool leaves_read(struct cursor *c, struct event *out)
{
    static const char *const words[] = {"leaves", "is out of", "comes out of", NULL};
    struct cursor trial = *c;
    struct who who;
    struct cursor_mark mark = cursor_mark(c);
    if (take_among(&trial, words) && owner_read(&trial, &who) && take_among(&trial, hands)) {
        out->subject = who;
        c->at = trial.at;
        if (take_words(&trial, "to") && person_read(&trial, &out->object)) {
            c->at = trial.at;
        }
        return true;
    }
    cursor_back(c, mark);
    return false;
}

/* Whose pass it is has passed above: then it is that one. */
static bool passed_above(const struct cursor *c, const struct event *event)
{
    above_list list = above_sentences(c, false);
    for (size_t i = 0; i < list.count; i++) {
        if (verb_row(list.at[i]->verb)->task == VERB_PASS && acts_in(list.at[i], &event->subject)) {
            return true;
        }
    }
    return false;
}

void moment_behind_noun(struct cursor *c, struct event *out, bool ball)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    if (leaves_read(c, out)) {
        return;
    }
    if (ball && take_among(&trial, reaches) && person_or_hands(&trial, &who)) {
        be_caught(out, who);
        c->at = trial.at;
        return;
    }
    cursor_back(c, mark);
    trial = *c;
    if (out->subject.kind == WHO_NONE && take_among(&trial, from_words) &&
        person_or_hands(&trial, &who)) {
        out->subject = who;
        c->at = trial.at;
        trial = *c;
    }
    if (ball && take_words(&trial, "to") && person_or_hands(&trial, &who)) {
        out->object = out->subject.kind == WHO_NONE || !passed_above(c, out) ? who : out->object;
        c->at = trial.at;
    }
    int tail = take_entry(c, tails);
    trial = *c;
    if (tail == TAIL_BEGINS && ball && out->subject.kind == WHO_NONE &&
        take_words(&trial, "from") && person_or_hands(&trial, &who)) {
        out->subject = who; /* the ball goes from 2 to 1 */
        c->at = trial.at;
    }
    trial = *c;
    take_words(&trial, "in"); /* goes in to 4 */
    if (tail == TAIL_BEGINS && ball && take_words(&trial, "to") && person_or_hands(&trial, &who)) {
        bool known = out->subject.kind != WHO_NONE && passed_above(c, out);
        out->object = known ? out->object : who; /* the ball goes to 2 */
        c->at = trial.at;
    }
    if (tail == TAIL_CAUGHT && ball) {
        out->kind = EVENT_CATCHES;
    } else if (tail == TAIL_OVER && ends_late(out->verb)) {
        out->over = true;
    }
}

/* ---- a beat ---- */

static const struct {
    const char *words, *as;
    double seconds;
} beats[] = {
    {"half a beat", "0.25 s", 0.25},
    {"half beat", "0.25 s", 0.25},
    {"two beats", "1 s", 1.0},
    {"2 beats", "1 s", 1.0},
    {"one beat", "0.5 s", 0.5},
    {"beat", "0.5 s", 0.5},
    {"1 beat", "0.5 s", 0.5},
    {"split second", "0.25 s", 0.25},
    {"tick", "0.25 s", 0.25},
    {"moment", "0.5 s", 0.5},
    {"one count", "1 s", 1.0},
    {"two count", "2 s", 2.0},
    {"count of one", "1 s", 1.0},
    {"count of two", "2 s", 2.0},
    {"1 count", "1 s", 1.0},
    {"two counts", "2 s", 2.0},
    {"2 counts", "2 s", 2.0},
    {"count", "1 s", 1.0},
    {"one thousand one one thousand two", "2 s", 2.0},
    {"one thousand one", "1 s", 1.0},
    {"one mississippi", "1 s", 1.0},
    {"two mississippi", "2 s", 2.0},
    {"one one thousand", "1 s", 1.0},
    {"couple of seconds", "2 s", 2.0},
    {"a couple seconds", "2 s", 2.0},
    {"half second", "0.5 s", 0.5},
    {"good second", "1 s", 1.0},
    {"full second", "1 s", 1.0},
    {NULL, NULL, 0},
};
enum { BEAT_COUNT = sizeof beats / sizeof *beats - 1 };

/* 2 beats, one count, two mississippi: a number that counts, and is no player. */
static bool number_counts(const struct cursor *c)
{
    const struct token *next = cursor_next(c);
    const struct token *behind = next ? past_fillers(next + 1, c->end) : c->end;
    return !next || next->kind != TOKEN_NUMBER ||
           (behind < c->end &&
            (behind->first == 'b' || behind->first == 'c' || behind->first == 'm' ||
             token_is_word(behind, "thousand") || behind->kind != TOKEN_WORD));
}

/* The row whose words stand here; BEAT_COUNT: none. */
static size_t take_beat(struct cursor *c)
{
    if (!number_counts(c)) {
        return BEAT_COUNT;
    }
    struct opening opening = cursor_opening(c);
    size_t row =
        sieves_let(c->sieves, beats, sizeof *beats, opening.first, opening.second) ? 0 : BEAT_COUNT;
    while (row < BEAT_COUNT && !take_words(c, beats[row].words)) {
        row++;
    }
    return row;
}

bool skip_seconds(struct cursor *c)
{
    const struct token *next = cursor_next(c);
    if (next && next->kind == TOKEN_MEASURE && next->unit == UNIT_SECONDS) {
        cursor_take(c, next, next + 1);
        return true;
    }
    return take_beat(c) < BEAT_COUNT;
}

bool take_seconds(struct cursor *c, struct measure *out)
{
    if (take_measure(c, true, out)) {
        return true;
    }
    const struct token *from = c->at;
    size_t row = take_beat(c);
    if (row == BEAT_COUNT) {
        return false;
    }
    *out = (struct measure){.value = beats[row].seconds, .unit = UNIT_SECONDS};
    struct span span = cursor_taken(c, from);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_BEAT_TAKEN, span, "`%.*s` was taken as %s",
                                 STR_ARG(cursor_text(c, span)), beats[row].as);
    diag_help(c->diags, diag, "write the seconds where they matter: `1 s later`");
    return true;
}
