/* SPDX-License-Identifier: MIT */
/* clause_where: a place in a clause of time, which names a moment and not where: taken where it
 * says again what the sentence it is of has said, or where who catches stands. */
#include "language/words/grammar.h"

bool same_spot(const struct place *a, const struct place *b)
{
    return a->kind == PLACE_SPOT && b->kind == PLACE_SPOT && a->spot == b->spot &&
           a->backcourt == b->backcourt &&
           (a->side == b->side || a->side == SIDE_NONE || b->side == SIDE_NONE);
}

/* as 1 drives to the rim: where is part of the sentence already, here said again. */
static bool said_above(const struct cursor *c, const struct event *event, const struct place *place)
{
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        if (s->verb == event->verb && acts_in(s, &event->subject)) {
            bool rim = !s->place && verb_row(s->verb)->place == DEFAULT_RIM &&
                       place->kind == PLACE_SPOT && place->spot == SPOT_RIM;
            return rim || (s->place && same_spot(s->place, place));
        }
    }
    return false;
}

/* once 4 has it in the corner: where 4 stands, or where the pass to 4 goes. */
static bool caught_there(const struct cursor *c, const struct event *event,
                         const struct place *place)
{
    above_list list = above_sentences(c, true);
    struct spot_stood at;
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        if (verb_row(s->verb)->task == VERB_PASS && same_who(&s->object, &event->subject)) {
            if (s->place) {
                return same_spot(s->place, place);
            }
            break;
        }
    }
    return above_stands(c, &event->subject, &at) && stood_on(&at, place);
}

bool moment_same_place(struct cursor *c, const struct event *event)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool catches = event->kind == EVENT_CATCHES || event->kind == EVENT_HAS_BALL;
    const struct place *place =
        (event->kind == EVENT_VERB || catches) && take_among(&trial, place_words)
            ? place_read(&trial, 0)
            : NULL;
    bool same = place && (catches ? caught_there(c, event, place) : said_above(c, event, place));
    cursor_back(c, mark);
    c->at = same ? trial.at : c->at;
    return same;
}

/* A pass to him stands above. */
static bool passed_above(const struct cursor *c, const struct who *to)
{
    above_list list = above_sentences(c, true);
    for (size_t i = 0; i < list.count; i++) {
        enum verb_task task = verb_row(list.at[i]->verb)->task;
        bool gives = task == VERB_PASS || task == VERB_EXCHANGE;
        if (gives && same_who(&list.at[i]->object, to)) {
            return true;
        }
    }
    return false;
}

/* when 5 catches at the elbow, which no sentence above tells: where the pass to 5 goes. */
void moment_catch_place(struct cursor *c, struct event *event)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool catches = event->kind == EVENT_CATCHES || event->kind == EVENT_HAS_BALL;
    const struct place *place = c->speech && catches && event->subject.kind == WHO_PLAYER &&
                                        !passed_above(c, &event->subject) &&
                                        take_among(&trial, place_words)
                                    ? place_read(&trial, 0)
                                    : NULL;
    cursor_back(c, mark);
    if (!place || !(cursor_done(&trial) || mark_is(&trial, ','))) {
        return;
    }
    struct sentence *pass = arena_new(c->arena, struct sentence);
    *pass = (struct sentence){.verb = VERB_PASSES, .object = event->subject, .place = place};
    event->told = pass;
    c->at = trial.at;
}

void moment_way(struct cursor *c, const struct event *event)
{
    static const char *const ways[] = {"through the lane", "through",      "the lane",
                                       "the key",          "the paint",    "out of the way",
                                       "all the way",      "by",           "in the lane",
                                       "off the screen",   "in the paint", NULL};
    if (event->kind == EVENT_VERB && verb_goes(event->verb)) {
        take_among(c, ways);
    }
}
