/* SPDX-License-Identifier: MIT */
/* sentence: subject, verb, slots, modifiers, clause, until, and nothing left over. */
#include "language/words/grammar.h"

#include <string.h>

/* `and VERB`, `, VERB`, `then VERB`, `and WHO VERB`: where the next sentence begins. */
struct joint {
    bool then, same_subject, clause, who; /* who: of the one whom the sentence is to */
};
static bool joint_is(const struct cursor *c, enum phrase_side side, struct joint *out,
                     const struct token **begin)
{
    struct cursor trial = *c;
    struct phrase phrase;
    bool joined = take_mark(&trial, ',');
    bool added = take_words(&trial, "and");
    joined = added || joined;
    joined = take_mark(&trial, ',') || joined;
    *out = (struct joint){.then = take_words(&trial, "then")};
    if (!out->then && take_words(&trial, "who")) { /* passes to 2, who shoots */
        *begin = trial.at;
        out->who = verb_begins(&trial);
        return out->who;
    }
    if (!joined && !out->then) {
        return false;
    }
    *begin = trial.at;
    if (added && clause_is(&trial)) { /* and on the catch, 5 cuts */
        out->clause = true;
        return true;
    }
    struct cursor verb = trial;
    skip_run_in(&verb);
    bool attacks =
        side == FOR_ATTACKERS && (pair_is(&verb) || uses_screen_is(&verb) || inverse_is(&verb));
    if (attacks || phrase_read(&verb, side, &phrase)) {
        out->same_subject = true;
        return true;
    }
    return subject_verb_is(&trial);
}

static bool stop_is(const struct cursor *c)
{
    return cursor_done(c) || mark_is(c, '.') || mark_is(c, ';');
}

static int trailing_clause(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    if (!clause_is(c)) {
        return 0;
    }
    if (p->s->tie.word != TIE_NONE || p->s->tie.meanwhile) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_TWO, cursor_span(c), "a second clause in one sentence"),
                  "a sentence waits for one thing: keep one of the two");
        return -1;
    }
    bool then = p->s->tie.then;
    if (!clause_read(c, &p->s->tie)) {
        return -1;
    }
    enum tie_word word = p->s->tie.word;
    if (then && (word == TIE_AS || word == TIE_AT || word == TIE_LATER)) {
        struct span span = cursor_taken(c, from);
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_THEN, span, "`then` and `%.*s` say two different moments",
                         STR_ARG(cursor_text(c, span))),
                  "keep one of them");
        return -1;
    }
    p->s->tie.span = cursor_taken(c, from);
    return 1;
}

static int until_part(struct predicate *p)
{
    struct cursor *c = p->c;
    struct span span = cursor_span(c);
    if (!take_words(c, "until")) {
        return 0;
    }
    if (p->s->until) {
        diag_help(c->diags, REFUSE(c, TEXT_CLAUSE_TWO, span, "a second `until` in one sentence"),
                  "a sentence is cut short by one thing: keep one of the two");
        return -1;
    }
    struct event until;
    if (!until_read(c, &until)) {
        return -1;
    }
    p->s->until = event_keep(c, until);
    return 1;
}

/* A length or a time behind a comma: sets up toward the rim, 6 ft. */
static int length_read(struct predicate *p)
{
    const struct token *next = cursor_next(p->c);
    struct slot slots[SLOTS_MOST];
    for (size_t i = verb_slots(p->s->verb, slots); next && i-- > 0;) {
        bool time = next->unit == UNIT_SECONDS;
        if (next->kind == TOKEN_MEASURE && slots[i].letter == (time ? 'T' : 'L')) {
            return slot_read(p);
        }
    }
    return 0;
}

/* One part behind the verb: 1 taken, 0 nothing fits, -1 reported. A comma may stand before all but
 * a slot. */
static int part_read(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {modifier_read, trailing_clause, until_part,
                                                         length_read};
    struct cursor *c = p->c;
    struct cursor_mark mark = cursor_mark(c);
    bool comma = take_mark(c, ',');
    p->comma_clause = (struct span){0};
    for (size_t i = 0; i < sizeof readers / sizeof *readers; i++) {
        int taken = readers[i](p);
        if (taken != 0) {
            bool clause = comma && readers[i] == trailing_clause;
            p->comma_clause = clause ? p->s->tie.span : p->comma_clause;
            return taken;
        }
    }
    if (!comma) {
        return slot_read(p);
    }
    cursor_back(c, mark);
    return 0;
}

/* 3 cuts to the rim, at 2 s, 4 lifts to top: the clause could belong to either. */
static bool between(struct predicate *p)
{
    if (p->comma_clause.end == 0 || stop_is(p->c)) {
        return false;
    }
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_CLAUSE_BETWEEN, p->comma_clause,
                     "`%.*s` could belong to the sentence before it or behind it",
                     STR_ARG(cursor_text(p->c, p->comma_clause))),
              "end the first sentence with a full stop, or write two lines");
    return true;
}

/* goes to the corner to screen for 2: once there. */
static bool purpose_is(const struct cursor *c, const struct token **begin)
{
    struct cursor trial = *c;
    struct phrase phrase;
    if (!take_words(&trial, "to")) {
        return false;
    }
    *begin = trial.at;
    struct cursor_mark mark = cursor_mark(&trial);
    bool spot = spot_read(&trial, true) != NULL;
    cursor_back(&trial, mark);
    if (spot || !phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    enum verb_task task = verb_row(phrase.verb)->task;
    return task == VERB_SCREEN || task == VERB_SHOOT || task == VERB_PASS ||
           task == VERB_EXCHANGE || phrase.verb == VERB_REPLACES || phrase.verb == VERB_POSTS_UP;
}

/* The next sentence begins; `who` needs one player whom this one is to. */
static bool next_is(const struct predicate *p, enum phrase_side side)
{
    struct joint joint;
    const struct token *begin;
    if (p->s->place && purpose_is(p->c, &begin)) {
        return true;
    }
    bool to_one = p->s->object.kind == WHO_PLAYER || p->s->object.kind == WHO_ROLE;
    return joint_is(p->c, side, &joint, &begin) && (!joint.who || to_one);
}

/* A verb that uses a screen, by itself or with off. */
static bool use_verb(struct sentence *s)
{
    enum verb other = verb_sibling(s->verb, "off");
    if (other != VERB_COUNT) {
        s->verb = other;
    }
    return verb_row(s->verb)->task == VERB_USE;
}

/* comes off 5 and drives: one use of the screen, as the second verb says it. */
static bool comes_and(struct predicate *p)
{
    struct sentence *s = p->s;
    struct cursor trial = *p->c;
    if (s->verb != VERB_COMES || s->place || s->object.kind == WHO_NONE) {
        return false;
    }
    take_mark(&trial, ',');
    bool joined = take_words(&trial, "and") || take_words(&trial, "to");
    struct phrase phrase;
    const struct token *verb = trial.at;
    if (!joined || !phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    struct sentence used = {.verb = phrase.verb};
    if (!use_verb(&used)) {
        return false;
    }
    p->c->at = trial.at;
    p->phrase = phrase;
    s->verb = used.verb;
    s->pace = phrase.pace != PACE_VERB ? phrase.pace : s->pace;
    s->verb_span = cursor_taken(p->c, verb);
    return true;
}

static bool predicate_read(struct predicate *p)
{
    enum phrase_side side = who_side(&p->s->subject.at[0]);
    while (!stop_is(p->c)) {
        if (comes_and(p)) {
            continue;
        }
        if (next_is(p, side)) {
            break;
        }
        int taken = part_read(p);
        if (taken == 0) {
            if (!slots_filled(p)) {
                return false;
            }
            taken = refuse_left(p);
        }
        if (taken < 0) {
            return false;
        }
    }
    return slots_filled(p) && !between(p);
}

static bool double_fits(struct cursor *c, const struct sentence *s)
{
    if (s->screen != SCREEN_DOUBLE || s->subject.count == 2 ||
        s->subject.at[0].kind == WHO_EVERYONE_ELSE) {
        return true;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_DOUBLE_SCREEN, s->verb_span, "a double screen takes two screeners"),
              "write `4 and 5 double screen for 2`");
    return false;
}

/* Behind `uses`: whose screen, and the verb that says how. */
static bool used_screen_read(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    take_uses(c);
    struct who second;
    int screen = above_screen_read(c, &p->s->subject.at[0], &p->s->object, &second);
    p->s->object2 = second.kind == WHO_NONE ? NULL : who_keep(c, second);
    if (screen < 0) {
        return false;
    }
    if (screen > 0 && (take_words(c, "and") || take_words(c, "to"))) {
        p->s->verb_span = cursor_taken(c, from);
        return player_fits(p, &p->s->object, 'U') > 0;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_VERB_MISSING, cursor_taken(c, from), "a screen is used how?"),
              "write `%.*s curls off 5`, `fades off 5` or `comes off 5 to top`",
              STR_ARG(subject_words(c, &p->s->subject)));
    return false;
}

/* `3, 5 screens`: two players without `and` and a verb said of one. */
static bool and_before(const struct sentence *s, const struct token *verb)
{
    uint32_t first = s->subject.at[0].span.begin;
    do {
        verb--;
    } while (verb->span.begin > first && !str_is(verb->text, "and"));
    return verb->span.begin > first;
}

/* boxes 2 out: the player between the words of the verb. */
static bool inside_read(struct predicate *p)
{
    struct cursor inner = *p->c;
    inner.at = p->phrase.inside;
    bool read = who_read(&inner, &p->s->object);
    p->c->refusals = inner.refusals;
    return read && player_fits(p, &p->s->object, 'W') > 0;
}

/* sets a flat screen: what the word would change is not in the language. */
static void note_dropped(struct cursor *c, const struct phrase *phrase)
{
    if (!phrase->dropped) {
        return;
    }
    struct span span = phrase->dropped->span;
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span,
                 "`%.*s` changes nothing here and was left out", STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag,
              "say where or how the screener stands: `at right wing`, `facing the baseline`");
}

/* Verb and all behind it, for a subject that is known. */
static bool rest_read(struct cursor *c, struct sentence *s)
{
    struct predicate p = {.c = c, .s = s};
    enum phrase_side side = who_side(&s->subject.at[0]);
    enum pace pace = skip_run_in(c);
    p.from = c->at;
    if (side == FOR_ATTACKERS && uses_screen_is(c) && !used_screen_read(&p)) {
        return false;
    }
    const struct token *verb = c->at;
    if (!phrase_read(c, side, &p.phrase)) {
        refuse_verb(c, &s->subject);
        return false;
    }
    if (refuse_longer(c, &s->subject, verb)) {
        return false;
    }
    s->verb = p.phrase.verb;
    if (s->verb == VERB_DOUBLES && s->subject.count == 2) {
        s->verb = VERB_TRAPS; /* x4 and x1 double 1: one of them guards him */
    }
    s->pass = p.phrase.pass;
    s->screen = p.phrase.screen;
    s->verb_span = cursor_taken(c, verb);
    p.after_verb = c->at;
    s->three = p.phrase.three;
    note_dropped(c, &p.phrase);
    s->pace = p.phrase.pace != PACE_VERB ? p.phrase.pace : pace;
    if (p.phrase.steps > 0) {
        s->length = (struct measure){.value = p.phrase.steps, .unit = UNIT_STEPS};
    }
    c->screener = verb_row(s->verb)->task == VERB_SCREEN ? &s->subject.at[0] : NULL;
    c->several = s->subject.count > 1 || s->subject.at[0].kind == WHO_EVERYONE_ELSE;
    if (s->object.kind != WHO_NONE && !use_verb(s)) {
        return refuse_use(c, s);
    }
    s->bare = s->subject.count > 1;
    if (s->bare && p.phrase.with_s && !and_before(s, p.from)) {
        return refuse_run_on(c, s);
    }
    if (p.phrase.inside && !inside_read(&p)) {
        return false;
    }
    if (!predicate_read(&p) || !double_fits(c, s)) {
        return false;
    }
    if (s->subject.count == 1) {
        above_drop_own_man(c, &s->subject.at[0], s->verb, &s->object);
    }
    return true;
}

/* Nothing but another sentence may follow a pair. */
static bool ends_here(struct cursor *c, const sentence_list *out)
{
    struct joint joint;
    const struct token *begin;
    const struct sentence *last = &out->at[out->count - 1];
    bool two =
        last->verb == VERB_FILLS; /* an exchange: its two have no one subject to go on with */
    if (stop_is(c) || (joint_is(c, who_side(&last->subject.at[0]), &joint, &begin) &&
                       !(two && joint.same_subject) && !joint.who)) {
        return true;
    }
    struct span span = cursor_span(c);
    diag_help(c->diags,
              REFUSE(c, TEXT_LEFT_OVER, span, "`%.*s` has no part in this sentence",
                     STR_ARG(cursor_text(c, span))),
              "these words are two sentences: write them out, each with what belongs to it");
    return false;
}

/* 3 and 5 quickly exchange: of both, where they move. */
static void set_pace(sentence_list *out, size_t first, enum pace pace)
{
    for (size_t i = first; i < out->count; i++) {
        enum verb_task task = verb_row(out->at[i].verb)->task;
        bool moves = task == VERB_MOVE || task == VERB_CARRY;
        out->at[i].pace = moves ? pace : PACE_VERB;
    }
}

static bool refuse_then(struct cursor *c, const struct tie *tie)
{
    diag_help(c->diags,
              REFUSE(c, TEXT_CLAUSE_THEN, cursor_span(c),
                     "`then` and `%.*s` say two different moments",
                     STR_ARG(cursor_text(c, tie->span))),
              "keep one of them");
    return false;
}

/* One sentence, or the two of a pair; `again` is the subject of the one before when this one shares
 * it. */
static bool one_read(struct cursor *c, const who_list *again, struct tie tie, sentence_list *out,
                     who_list *subject)
{
    const struct token *from = c->at;
    size_t before = c->refusals;
    struct sentence s = {.tie = tie};
    if (again) {
        s.subject = *again;
    } else if ((word_is(c, 0, "point") && word_is(c, 1, "guard")) || /* no spot */
               !subject_read(c, &s.subject)) {
        refuse_subject(c);
        return false;
    } else if (!subject_fits(c, &s.subject)) {
        return false;
    }
    *subject = s.subject;
    struct cursor then = *c;
    if (!again && take_words(&then, "then") && verb_begins(&then)) {
        if (tie.word == TIE_AS || tie.word == TIE_AT || tie.word == TIE_LATER || tie.meanwhile) {
            return refuse_then(c, &tie);
        }
        tie.then = s.tie.then = true; /* 1 then cuts */
        struct span span = tie.word == TIE_NONE ? cursor_span(c) : tie.span;
        tie.span = s.tie.span = span;
        c->at = then.at;
    }
    const struct token *verb = c->at;
    enum pace pace = skip_run_in(c);
    size_t first = out->count;
    int pair = pair_read(c, &s.subject, tie, out);
    pair = pair == 0 ? inverse_read(c, &s.subject, tie, out) : pair;
    if (pair != 0) {
        set_pace(out, first, pace);
        return pair > 0 && c->refusals == before && ends_here(c, out);
    }
    c->at = verb;
    if (!rest_read(c, &s)) {
        return false;
    }
    s.span = cursor_taken(c, from);
    if (tie.span.end > 0 && tie.span.begin < s.span.begin) {
        s.span.begin = tie.span.begin;
    }
    if (c->refusals != before) {
        return false;
    }
    VEC_PUSH(c->arena, out, s);
    if (s.hands_off) { /* dribbles at 2 for a hand-off */
        out->at[out->count - 1].hands_off = false;
        struct sentence second = {.subject = s.subject,
                                  .verb = VERB_HANDS_OFF,
                                  .verb_span = s.verb_span,
                                  .object = s.object,
                                  .span = s.span};
        VEC_PUSH(c->arena, out, second);
    }
    return true;
}

/* Whom a sentence is to, as who acts next. */
static who_list receiver_of(struct cursor *c, const struct sentence *s)
{
    who_list one = {NULL, 0, 0};
    VEC_PUSH(c->arena, &one, s->object);
    return one;
}

/* until 2 is open, 1 dribbles: said in front, it is of the first sentence. */
static bool keeps_until(struct cursor *c, struct event *until, struct sentence *s)
{
    if (until->kind == EVENT_NONE) {
        return true;
    }
    if (s->until) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_TWO, until->span, "a second `until` in one sentence"),
                  "a sentence is cut short by one thing: keep one of the two");
        return false;
    }
    s->until = event_keep(c, *until);
    until->kind = EVENT_NONE;
    return true;
}

static bool goes_on(const struct cursor *c, const struct sentence *last, struct joint *joint,
                    const struct token **begin)
{
    if (joint_is(c, who_side(&last->subject.at[0]), joint, begin)) {
        return true;
    }
    *joint = (struct joint){.same_subject = true};
    return last->place && purpose_is(c, begin);
}

/* A chain of sentences up to a full stop: the clause in front governs those with a new subject. */
static bool chain_read(struct cursor *c, sentence_list *out)
{
    struct tie tie = {.word = TIE_NONE};
    struct joint joint = {.then = false};
    size_t before = c->refusals;
    struct event until = {.kind = EVENT_NONE};
    if (take_words(c, "until") ? !until_read(c, &until) : !front_tie_read(c, &tie)) {
        return false;
    }
    take_mark(c, ',');
    size_t first = out->count;
    bool fine = c->refusals == before;
    struct tie own = tie;
    who_list subject = {NULL, 0, 0};
    for (;;) {
        who_list before_it = joint.who ? receiver_of(c, &out->at[out->count - 1]) : subject;
        const who_list *again = joint.same_subject || joint.who ? &before_it : NULL;
        if (!one_read(c, again, own, out, &subject)) {
            return false;
        }
        if (!keeps_until(c, &until, &out->at[first])) {
            return false;
        }
        const struct sentence *last = &out->at[out->count - 1];
        const struct token *begin;
        if (stop_is(c) || !goes_on(c, last, &joint, &begin)) {
            return fine;
        }
        c->at = begin;
        if (joint.clause) {
            tie = (struct tie){.word = TIE_NONE};
            if (!front_tie_read(c, &tie)) {
                return false;
            }
            own = tie;
            continue;
        }
        own = joint.same_subject || joint.who || joint.then ? (struct tie){.word = TIE_NONE} : tie;
        if (joint.then) {
            tie = (struct tie){.word = TIE_NONE};
            own.then = !joint.same_subject;
        }
    }
}

/* A word typed twice could be taken for something else the second time: to the baseline baseline.
 */
static bool doubled(struct cursor *c)
{
    for (const struct token *at = c->at; at + 1 < c->end; at++) {
        struct span gap = {at->span.source, at[0].span.end, at[1].span.begin};
        bool words = at[0].kind == TOKEN_WORD && at[1].kind == TOKEN_WORD && !at->filler &&
                     !at[0].possessive && str_starts(cursor_text(c, gap), " "); /* small-small */
        if (words && str_equal(at[0].text, at[1].text)) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_TWICE, at[1].span, "`%.*s` stands here twice",
                             STR_ARG(cursor_text(c, at[1].span))),
                      "keep one of the two");
            return true;
        }
    }
    return false;
}

bool sentences_read(struct cursor *c, sentence_list *out)
{
    c->here = out;
    c->first = c->at;
    if (doubled(c)) {
        return false;
    }
    for (;;) {
        while (take_mark(c, '.') || take_mark(c, ';')) {
        }
        if (cursor_done(c)) {
            if (c->watch) {
                c->watch->read(c->watch->watcher, c->first, c->end);
            }
            return true;
        }
        if (!chain_read(c, out)) {
            return false;
        }
    }
}

bool sentence_read(struct cursor *c, struct sentence *out)
{
    sentence_list list = {NULL, 0, 0};
    bool fine = sentences_read(c, &list);
    c->here = NULL;
    if (!fine) {
        return false;
    }
    if (list.count == 0) {
        refuse_subject(c);
        return false;
    }
    if (list.count > 1) {
        struct span span = list.at[1].span;
        diag_help(c->diags, REFUSE(c, TEXT_SENTENCES_MANY, span, "one sentence may stand here"),
                  "put the next one in a line of its own");
        return false;
    }
    *out = list.at[0];
    return true;
}
