/* SPDX-License-Identifier: MIT */
/* chain: how sentences follow one another in a line: what joins them, and what a clause in front
 * governs. Whose the next one is, is told by whose.c. What one of them holds is read by sentence.c.
 */
#include "language/words/speech.h"

#include <string.h>

/* Nothing but another sentence may follow a pair. */
static bool ends_here(struct cursor *c, const sentence_list *out)
{
    struct joint joint;
    const struct token *begin;
    const struct sentence *last = &out->at[out->count - 1];
    bool two =
        last->verb == VERB_FILLS; /* an exchange: its two have no one subject to go on with */
    if (stop_is(c) ||
        (joint_is(c, who_side(&last->subject.at[0]), last, &joint, &begin) &&
         !(two && joint.same_subject) && !(joint.who && last->object.kind == WHO_NONE))) {
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
        out->at[i].pace = verb_goes(out->at[i].verb) ? pace : PACE_VERB;
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

/* The verb of a leg: on from where the sentence before ended, or the verb that went before. */
static void leg_verb(const struct sentence *last, bool again, struct sentence *s)
{
    enum verb_task task = last ? verb_row(last->verb)->task : VERB_HOLD;
    bool ball = task == VERB_CARRY ||
                (last && (last->verb == VERB_DRIVES_OFF || last->verb == VERB_DRIBBLES_OFF));
    s->verb = VERB_GOES;
    if (task == VERB_SCREEN && !again) {
        s->verb = last->verb;
        s->screen = last->screen;
    } else if (again && ball) {
        s->verb = VERB_DRIBBLES;
    } else if (last && (last->verb == VERB_CUTS || (last->verb == VERB_FILLS && !again))) {
        s->verb = last->verb;
    }
}

/* Behind the subject: where to, without a verb. */
static bool leg_read(struct cursor *c, const sentence_list *out, bool again, struct sentence *s)
{
    const struct sentence *last = out->count > 0 ? &out->at[out->count - 1] : NULL;
    leg_verb(c->at > c->first ? last : NULL, again, s);
    if (verb_row(s->verb)->task == VERB_SCREEN && !leg_again_is(c, last)) {
        s->verb = VERB_GOES;
        s->screen = SCREEN_PLAIN;
    }
    const struct token *from = c->at;
    if (!elided_read(c, s)) {
        return false;
    }
    if (!again && s->verb == VERB_GOES && s->place) {
        struct span span = cursor_taken(c, from);
        diag_add(c->diags, DIAG_TEXT_VERB_TAKEN, span, "no verb is written: it was read as `%s`",
                 s->bare ? "go to" : "goes to");
    }
    return true;
}

/* 3 and 4 exchange as 1 drives: the clause is of both. False: reported. */
static bool pair_clause(struct cursor *c, sentence_list *out, size_t first)
{
    struct tie tie = {.word = TIE_NONE};
    struct cursor trial = *c;
    take_mark(&trial, ',');
    bool tied = false;
    for (size_t i = first; i < out->count; i++) {
        const struct tie *own = &out->at[i].tie;
        tied = tied || own->word != TIE_NONE || own->then || own->meanwhile;
    }
    if (tied || !clause_is(&trial) || out->at[first].verb != VERB_FILLS) {
        return true;
    }
    c->at = trial.at;
    const struct token *from = c->at;
    if (!clause_read(c, &tie)) {
        return false;
    }
    tie.span = cursor_taken(c, from);
    for (size_t i = first; i < out->count; i++) {
        out->at[i].tie = tie;
    }
    return true;
}

/* Behind the subject: 1 then cuts; the next verb begins behind `then`. Of somebody else, behind a
 * sentence, at once is then. False: reported. */
static bool then_taken(struct cursor *c, struct tie *tie, bool behind)
{
    static const char *const at_once[] = {"immediately", "instantly", "at once",
                                          "right away",  "promptly",  NULL};
    struct cursor then = *c;
    bool taken = take_words(&then, "then") ||
                 (behind && tie->word == TIE_NONE && !tie->meanwhile && take_among(&then, at_once));
    if (!taken || !verb_begins(&then)) {
        return true;
    }
    if (tie->word == TIE_AS || tie->word == TIE_AT || tie->word == TIE_LATER || tie->meanwhile) {
        return refuse_then(c, tie);
    }
    tie->then = true;
    tie->span = tie->word == TIE_NONE ? cursor_span(c) : tie->span;
    c->at = then.at;
    return true;
}

/* The way to where it begins, as a sentence in front of it. */
static void put_ahead(struct cursor *c, struct sentence *s, sentence_list *out)
{
    if (!s->ahead) {
        return;
    }
    struct sentence ahead = *s->ahead;
    if (same_who(&ahead.subject.at[0], &s->subject.at[0])) { /* the way: it comes first */
        ahead.tie = s->tie;
        s->tie = (struct tie){.word = TIE_NONE};
    }
    VEC_PUSH(c->arena, out, ahead);
    s->ahead = NULL;
}

/* What the words of `s` say is done behind it, each a sentence of its own. */
static void put_behind(struct cursor *c, const struct sentence *s, sentence_list *out,
                       who_list *subject)
{
    if (s->shoots) { /* for a jumper */
        struct sentence *tried = &out->at[out->count - 1];
        struct sentence shot = {.verb = VERB_SHOOTS, .verb_span = s->verb_span, .span = s->span};
        tried->shoots = false;
        shot.subject = s->object.kind == WHO_PLAYER ? receiver_of(c, tried) : s->subject;
        VEC_PUSH(c->arena, out, shot);
        *subject = shot.subject;
    }
    if (s->hands_off) { /* dribbles at 2 for a hand-off */
        out->at[out->count - 1].hands_off = false;
        struct sentence second = {.subject = s->subject,
                                  .verb = VERB_HANDS_OFF,
                                  .verb_span = s->verb_span,
                                  .object = s->object,
                                  .span = s->span};
        VEC_PUSH(c->arena, out, second);
    }
}

/* One sentence, or the two of a pair; `again` is the subject of the one before when this one shares
 * it; `leg`: it has no verb. */
static bool one_read(struct cursor *c, const who_list *again, bool leg, struct tie tie,
                     sentence_list *out, who_list *subject)
{
    const struct token *from = c->at;
    size_t before = c->refusals;
    struct sentence s = {.tie = tie};
    c->doer = c->screener = NULL;
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
    c->doer = s.subject.count == 1 ? &s.subject.at[0] : NULL;
    bool behind =
        out->count > 0 && !same_who(&out->at[out->count - 1].subject.at[0], &s.subject.at[0]);
    if (!again && !then_taken(c, &tie, behind)) {
        return false;
    }
    s.tie = tie;
    const struct token *verb = c->at;
    enum pace pace = skip_run_in(c);
    size_t first = out->count;
    int pair = pair_read(c, &s.subject, tie, out);
    pair = pair == 0 ? inverse_read(c, &s.subject, tie, out) : pair;
    if (pair != 0) {
        set_pace(out, first, pace);
        if (pair > 0 && !pair_clause(c, out, first)) {
            return false;
        }
        return pair > 0 && c->refusals == before && ends_here(c, out);
    }
    c->at = verb;
    c->several = s.subject.count > 1;
    bool elided = leg || (c->speech && who_side(&s.subject.at[0]) == FOR_ATTACKERS &&
                          !verb_begins(c) && leg_is(c));
    if (!(elided ? leg_read(c, out, again != NULL, &s) : rest_read(c, &s))) {
        return false;
    }
    s.elided = elided;
    s.span = cursor_taken(c, from);
    if (tie.span.end > 0 && tie.span.begin < s.span.begin) {
        s.span.begin = tie.span.begin;
    }
    if (c->refusals != before) {
        return false;
    }
    if (leg && out->count > 0 && out->at[out->count - 1].spread) {
        out->count--; /* each of its players is said now */
    }
    put_ahead(c, &s, out);
    if (again && shot_already(c, out, &s)) {
        return true;
    }
    VEC_PUSH(c->arena, out, s);
    comes_to_pass(c, out, from, c->at);
    hold_apart(c, out);
    put_behind(c, &s, out, subject);
    return true;
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
    if (joint_is(c, who_side(&last->subject.at[0]), last, joint, begin)) {
        return true;
    }
    *joint = (struct joint){.same_subject = true};
    return last->place && joint_purpose_is(c, begin);
}

/* so 3 curls: a use waits for its screen, and `then` would have it wait for its own use. */
static void waits_by_itself(struct sentence *s)
{
    if (verb_row(s->verb)->task == VERB_USE) {
        s->tie.then = false;
    }
}

/* 4 pops and rolls, 3 curls and fades off 5: two ends of one screen, and not one behind the other.
 */
static bool either_end(struct cursor *c, const sentence_list *out)
{
    const struct sentence *last = &out->at[out->count - 1], *first = last - 1;
    bool same = same_who(&first->subject.at[0], &last->subject.at[0]);
    bool rolls = (first->verb == VERB_ROLLS && last->verb == VERB_POPS) ||
                 (first->verb == VERB_POPS && last->verb == VERB_ROLLS);
    bool uses = verb_row(first->verb)->task == VERB_USE && verb_row(last->verb)->task == VERB_USE &&
                first->verb != last->verb && first->object.kind != WHO_NONE &&
                same_who(&first->object, &last->object);
    if (!same || (!rolls && !uses)) {
        return false;
    }
    struct str name = subject_words(c, &last->subject), word = verb_head(first->verb, false);
    struct diag *diag = REFUSE(c, TEXT_TWO_MEANINGS, last->verb_span,
                               "one screen, and two things done from it: which?");
    if (rolls) {
        diag_help(c->diags, diag, "keep one of them: `%.*s %.*s`", STR_ARG(name), STR_ARG(word));
    } else {
        struct str screener = first->object.kind == WHO_PLAYER
                                  ? str_format(c->arena, "%d", first->object.number)
                                  : cursor_text(c, first->object.span);
        diag_help(c->diags, diag, "keep one of them: `%.*s %s %.*s`", STR_ARG(name),
                  verb_row(first->verb)->words, STR_ARG(screener));
    }
    return true;
}

/* 3 waits, then cuts: until when is not said, and without it there is no wait at all. */
static bool waits_for_nothing(struct cursor *c, const struct sentence *last,
                              const struct joint *joint, const struct token *begin)
{
    struct cursor next = *c;
    next.at = begin;
    next.watch = NULL;
    bool uses = use_follows(&next); /* waits, then curls off 5 */
    bool waits = str_starts(cursor_text(c, last->verb_span), "wait") || joint->then;
    if (uses || !joint->same_subject || !waits || last->verb != VERB_STAYS || last->until ||
        last->duration.value > 0) {
        return false;
    }
    struct str name = subject_words(c, &last->subject);
    diag_help(c->diags,
              REFUSE(c, TEXT_DURATION_MISSING, last->verb_span, "`%.*s waits` for how long?",
                     STR_ARG(name)),
              "write seconds, `%.*s holds for 1 s`, or when it goes on: `after 1 passes, %.*s cuts "
              "to the rim`",
              STR_ARG(name), STR_ARG(name));
    return true;
}

/* 3 stays in the corner and 3 cuts to the rim: in one moment he does not do both. */
static bool stays_in_going(struct cursor *c, const sentence_list *out)
{
    const struct sentence *last = &out->at[out->count - 1], *stays = last - 1;
    enum verb_task task = verb_row(last->verb)->task;
    bool goes = task == VERB_MOVE || task == VERB_CARRY; /* waits, then curls off 5 */
    bool both = goes && stays->verb == VERB_STAYS && !stays->until && stays->duration.value <= 0 &&
                stays->tie.word == TIE_NONE && last->tie.word == TIE_NONE && !last->tie.then &&
                last->subject.count > 0;
    bool one_of_them = false; /* all stay, 1 drives */
    for (size_t i = 0; both && i < stays->subject.count; i++) {
        one_of_them = one_of_them || same_who(&stays->subject.at[i], &last->subject.at[0]);
    }
    both = both && one_of_them;
    if (!both) {
        return false;
    }
    struct str name = subject_words(c, &last->subject);
    diag_help(c->diags,
              REFUSE(c, TEXT_DURATION_MISSING, last->verb_span,
                     "`%.*s` stays and moves in one moment: for how long does he stay?",
                     STR_ARG(name)),
              "keep one of the two, or say `everyone else stays`; or write seconds, `%.*s holds "
              "for 1 s`, or when it goes on: "
              "`after 1 passes, %.*s cuts to the rim`",
              STR_ARG(name), STR_ARG(name));
    return true;
}

/* What is said the other way round, up to the full stop, is put in its order. */
static void reordered(struct cursor *c)
{
    static bool (*const rules[])(const struct cursor *, struct recast *) = {
#define RECAST(rule)
#define REORDER(rule) rule,
#include "language/words/recast.def"
#undef RECAST
#undef REORDER
    };
    for (size_t i = 0; c->speech && i < sizeof rules / sizeof *rules; i++) {
        struct recast recast;
        if (recast_by(c, rules[i], &recast) && !recast_put(c, &recast)) {
            return;
        }
    }
}

/* At the same time 3 fills top and 4 lifts: of one another, where nothing stands above. */
static void together(sentence_list *out, size_t first, bool nothing)
{
    if (nothing && out->count > first + 1) {
        for (size_t i = first; i < out->count; i++) {
            out->at[i].tie.meanwhile = false;
        }
    }
}

/* The tie of the sentence behind a joint: that of the clause in front, as far as it governs; behind
 * `then` it governs no more. */
static struct tie tie_behind(const struct joint *joint, struct tie *tie)
{
    static const struct tie none = {.word = TIE_NONE};
    bool goes_on = joint->same_subject || joint->who || joint->then || joint->so;
    struct tie own = goes_on ? none : *tie;
    own.then = joint->so;
    if (own.word == TIE_LATER) { /* 1 s later, 3 cuts and 4 fills: both at that moment */
        own = (struct tie){.meanwhile = true, .span = own.span};
    }
    if (joint->then) {
        *tie = none;
        own.then = !joint->same_subject;
    }
    return own;
}

/* A chain of sentences up to a full stop: the clause in front governs those with a new subject. */
static bool chain_read(struct cursor *c, sentence_list *out)
{
    struct tie tie = {.word = TIE_NONE};
    struct joint joint = {.then = false};
    size_t before = c->refusals;
    struct event until = {.kind = EVENT_NONE};
    c->doer = NULL; /* of what was read before it, or tried */
    if (amends_refused(c)) {
        return false;
    }
    reordered(c);
    bool nothing = above_count(c) == 0;
    c->told = NULL;
    if (take_words(c, "until") ? !until_read(c, &until) : !front_tie_read(c, &tie)) {
        return false;
    }
    c->told = told_in_front(&tie);
    nothing = nothing && tie.meanwhile;
    take_mark(c, ',');
    size_t first = out->count;
    bool fine = c->refusals == before;
    struct tie own = tie;
    who_list subject = {NULL, 0, 0};
    bool clause_alone = false; /* and when 2 catches: nobody does anything then */
    for (;;) {
        who_list before_it = joint.who ? receiver_of(c, &out->at[out->count - 1]) : subject;
        const who_list *again = joint.same_subject || joint.who ? &before_it : NULL;
        const struct sentence *left = out->count > first ? &out->at[out->count - 1] : NULL;
        who_list other = whose_next(c, &joint, left, &subject);
        again = other.count > 0 ? &other : again;
        if ((out->count > first || c->remark.end > 0) && cursor_done(c) && !clause_alone) {
            together(out, first, nothing);
            told_once(c, out, first);
            return fine; /* what stood there said how things are */
        }
        c->counted = joint.counted;
        const struct token *from = c->at;
        size_t had = out->count;
        if (!one_read(c, again, joint.leg && other.count == 0, own, out, &subject)) {
            return false;
        }
        if (joint.who && had > first && out->count == had + 1) {
            runs_to_catch(c, out, from);
        }
        c->told = NULL;
        free_of_tie(out, first);
        bool goes_on_at_once = !joint.then && out->count > first + 1;
        if (goes_on_at_once && !drive_ends(c, out) && joint.same_subject && either_end(c, out)) {
            return false;
        }
        if (out->count > 1 && stays_in_going(c, out)) {
            return false;
        }
        if (joint.so) {
            waits_by_itself(&out->at[out->count - 1]);
        }
        if (!keeps_until(c, &until, &out->at[first])) {
            return false;
        }
        const struct sentence *last = &out->at[out->count - 1];
        const struct token *begin;
        if (stop_is(c) || !goes_on(c, last, &joint, &begin)) {
            together(out, first, nothing);
            told_once(c, out, first);
            return fine;
        }
        if (waits_for_nothing(c, last, &joint, begin)) {
            return false;
        }
        c->at = begin;
        if (joint.clause) {
            tie = (struct tie){.word = TIE_NONE};
            c->doer = NULL; /* of the sentence before it */
            if (!front_tie_read(c, &tie)) {
                return false;
            }
            c->told = told_in_front(&tie);
            clause_alone = cursor_done(c);
            own = tie;
            continue;
        }
        own = tie_behind(&joint, &tie);
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

bool chains_read(struct cursor *c, sentence_list *out)
{
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
