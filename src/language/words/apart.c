/* SPDX-License-Identifier: MIT */
/* apart: what becomes of a sentence that has just been read among those before it in its chain: how
 * long somebody stays is a sentence of its own, a shot told twice is one, and what a clause in
 * front says is not of everybody behind it. */
#include "language/words/speech.h"

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
