/* SPDX-License-Identifier: MIT */
/* apart: what becomes of a sentence that has just been read among those before it in its chain: how
 * long somebody stays is a sentence of its own, a shot told twice is one, what a clause in front
 * says is not of everybody behind it, and who runs to where he catches runs first. */
#include "language/words/speech.h"

#include <string.h>

/* pulls up at the elbow and shoots it: once. */
bool shot_already(const sentence_list *out, const struct sentence *s)
{
    const struct sentence *last = out->count > 1 ? &out->at[out->count - 1] : NULL;
    return last && s->verb == VERB_SHOOTS && last->verb == VERB_SHOOTS &&
           last->verb_span.begin == last[-1].verb_span.begin &&
           same_who(&last->subject.at[0], &s->subject.at[0]);
}

/* as 1 passes, 4 cuts and 2 passes to 4: who gets that pass cannot pass then; and who comes off a
 * screen that is set then waits for it. What a clause in front says is of the others. */
void free_of_tie(sentence_list *out, size_t first)
{
    struct sentence *s = &out->at[out->count - 1];
    const struct event *event = s->tie.event;
    if (s->tie.word != TIE_AS || !event || event->kind != EVENT_VERB || out->count < first + 2) {
        return;
    }
    bool passes = verb_row(event->verb)->task == VERB_PASS && verb_needs_ball(s->verb) &&
                  !acts_in(s, &event->subject);
    bool waits = false;
    for (size_t i = first; i + 1 < out->count; i++) {
        waits = waits || (verb_row(s->verb)->task == VERB_USE &&
                          verb_row(out->at[i].verb)->task == VERB_SCREEN &&
                          acts_in(&out->at[i], &s->object) && out->at[i].tie.event == event);
    }
    if (passes || waits) {
        s->tie = (struct tie){.word = TIE_NONE, .span = SPAN_NONE};
    }
}

/* posts up for two seconds, waits a second on the wing: he is there so long, in a sentence of its
 * own behind it. */
void hold_apart(struct cursor *c, sentence_list *out)
{
    struct sentence *s = &out->at[out->count - 1];
    if (s->duration.unit == UNIT_NONE || s->verb == VERB_HOLDS) {
        return;
    }
    struct sentence holds = {.verb = VERB_HOLDS,
                             .verb_span = s->verb_span,
                             .subject = s->subject,
                             .bare = s->bare,
                             .duration = s->duration,
                             .span = s->span};
    s->duration = (struct measure){.unit = UNIT_NONE};
    VEC_PUSH(c->arena, out, holds);
}

/* He is there when the ball comes: the two change places. */
static void first_moves(struct sentence *pass, struct sentence *move)
{
    struct sentence first = *move;
    *move = *pass;
    *pass = first;
}

/* 1 passes to 2, who slides to the slot to get it: the last of `out`, said from here to there, is
 * how he comes to the pass before it, and goes first. */
void comes_to_pass(const struct cursor *c, sentence_list *out, const struct token *from,
                   const struct token *to)
{
    static const char *const purposes[] = {"to get it",
                                           "to catch it",
                                           "to receive it",
                                           "for it",
                                           "to get ball",
                                           "to catch ball",
                                           "to receive ball",
                                           "for ball",
                                           "to get pass",
                                           "to catch pass",
                                           "to receive pass",
                                           "for pass",
                                           "to meet it",
                                           "to meet pass",
                                           "to meet ball",
                                           "for catch",
                                           "to get the pass",
                                           "to receive",
                                           "to catch",
                                           "to take it",
                                           "to take pass",
                                           "to come get it",
                                           NULL};
    if (out->count < 2) {
        return;
    }
    struct sentence *move = &out->at[out->count - 1], *pass = move - 1;
    bool his = verb_row(pass->verb)->task == VERB_PASS && move->subject.count == 1 &&
               same_who(&pass->object, &move->subject.at[0]) && move->tie.word == TIE_NONE &&
               !move->tie.then && verb_row(move->verb)->task == VERB_MOVE && move->place &&
               !pass->place;
    bool said = false;
    for (; his && from < to && !said; from++) {
        struct cursor trial = look_between(c, from, to);
        said = take_among(&trial, purposes) && cursor_done(&trial);
    }
    if (said) {
        first_moves(pass, move);
    }
}

/* passes to 3, who cuts to the corner; who goes there to catch it: he gets it where he runs to,
 * which is told in front of the pass. */
void runs_to_catch(const struct cursor *c, sentence_list *out, const struct token *from)
{
    struct sentence *run = &out->at[out->count - 1], *pass = run - 1;
    bool catches = false;
    for (const struct token *at = from; at + 1 < c->at; at++) {
        static const char *const gets[] = {"get", "catch", "receive", "meet", "collect", NULL};
        catches = catches || (token_is_word(at, "to") && token_is_among(at + 1, gets));
    }
    enum verb_task task = verb_row(pass->verb)->task;
    bool runs = verb_row(run->verb)->task == VERB_MOVE && !verb_needs_ball(run->verb) &&
                !strchr(verb_row(run->verb)->needs, 'S') && (catches || run->verb != VERB_GOES);
    if (task == VERB_PASS && runs && same_who(&pass->object, &run->subject.at[0])) {
        first_moves(pass, run);
    }
}
