/* SPDX-License-Identifier: MIT */
/* whose: who acts in the next sentence of a chain, where its own words do not say: the one whom a
 * read is about, whom the sentence before is to, or who has the ball by then; with a note. */
#include "language/words/speech.h"

#include <string.h>

/* Who acts and is not named. */
static void note_taken(struct cursor *c, struct span span, const who_list *who)
{
    const struct who *one = &who->at[0]; /* where its span stands may be x3, or he */
    struct str name =
        one->kind == WHO_PLAYER ? str_format(c->arena, "%d", one->number) : subject_words(c, who);
    if (who->count == 2 && who->at[1].kind == WHO_PLAYER) { /* both bigs */
        name = str_format(c->arena, "%.*s and %d", STR_ARG(name), who->at[1].number);
    }
    struct str word = cursor_text(c, cursor_span(c));
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, span,
                                 "who does this is not named: %.*s was taken", STR_ARG(name));
    diag_help(c->diags, diag, "to have another, begin with the number: `%.*s %.*s`", STR_ARG(name),
              STR_ARG(word));
}

who_list receiver_of(struct cursor *c, const struct sentence *s)
{
    who_list one = {NULL, 0, 0};
    struct who who = s->object, own;
    if (who.kind == WHO_NONE && who_defends(&s->subject.at[0]) &&
        above_guarded(c, &s->subject.at[0], &own)) { /* x2 overplays 2, who cuts: his own man */
        who = own;
    }
    VEC_PUSH(c->arena, &one, who);
    return one;
}

/* What is said another way is read as it is written; who acts in it, where that is known from
 * elsewhere. Only what goes on with the subject before it may stand behind one (`same`). */
static who_list said_otherwise(struct cursor *c, bool same)
{
    struct recast recast = {.told = SPAN_NONE};
    enum { MOST = 8 };
    for (int i = 0; i < MOST && c->speech && recast_find(c, &recast) && (!same || recast.same);
         i++) {
        struct span span = cursor_span(c);
        if (!recast_put(c, &recast)) {
            break;
        }
        if (recast.remark && cursor_done(c)) {
            c->remark = recast.told;
            break;
        }
        if (recast.subject.count > 0) {
            if (recast.taken) {
                note_taken(c, span, &recast.subject);
            }
            return recast.subject;
        }
    }
    return (who_list){NULL, 0, 0};
}

/* 1 passes to 2, dish to 4: not by the one who has passed already. */
static bool gave_away(const struct cursor *c, const who_list *subject, who_list *holder)
{
    struct cursor verb = *c;
    struct phrase phrase;
    struct who who;
    verb.watch = NULL;
    if (subject->count != 1 || !phrase_read(&verb, FOR_ATTACKERS, &phrase) || phrase.with_s ||
        !strchr(verb_row(phrase.verb)->needs, 'B') || !above_holder(c, &who) ||
        same_who(&who, &subject->at[0]) || word_is(c, 0, "takes") || word_is(c, 0, "makes") ||
        word_is(c, 0, "shoots")) {
        return false;
    }
    const struct sentence *last = &c->here->at[c->here->count - 1];
    enum verb_task task = verb_row(last->verb)->task;
    if (task != VERB_PASS && task != VERB_EXCHANGE) {
        return false;
    }
    VEC_PUSH(c->arena, holder, who);
    return true;
}

/* hammer by 4 for 3, slide to the corner: behind a screen called by its name, the one it is for. */
static bool called_user(const struct cursor *c, const struct sentence *last, who_list *out)
{
    struct cursor verb = *c;
    struct phrase phrase;
    verb.watch = NULL;
    bool called = c->speech && verb_row(last->verb)->task == VERB_SCREEN &&
                  last->subject.count == 1 && who_is_one(&last->object) &&
                  last->subject.at[0].span.begin > last->verb_span.begin;
    if (!called || !phrase_read(&verb, FOR_ATTACKERS, &phrase) || phrase.with_s ||
        verb_row(phrase.verb)->task != VERB_MOVE ||
        strchr(verb_row(phrase.verb)->needs, 'S') != NULL) {
        return false;
    }
    VEC_PUSH(c->arena, out, last->object);
    return true;
}

/* if x3 goes under, fade: the answer is of the one whose defender the read is about, or of the
 * screener where only he can give it. */
static bool answers(const struct cursor *c, who_list *out)
{
    struct cursor verb = *c;
    struct phrase phrase;
    struct who user, screener, who;
    verb.watch = NULL;
    if (!c->about || c->at != c->first || subject_verb_is(c)) {
        return false;
    }
    skip_run_in(&verb);
    if (!phrase_read(&verb, FOR_ATTACKERS, &phrase) || phrase.with_s ||
        strchr(verb_row(phrase.verb)->needs, 'B')) {
        return false;
    }
    who = *c->about;
    bool screens =
        phrase.verb == VERB_ROLLS || phrase.verb == VERB_POPS || phrase.verb == VERB_SLIPS;
    if (screens) {
        if (!above_last_screen(c, &user, &screener)) {
            return false;
        }
        who = screener;
    }
    VEC_PUSH(c->arena, out, who);
    return true;
}

who_list whose_next(struct cursor *c, const struct joint *joint, const struct sentence *last,
                    const who_list *subject)
{
    who_list other = {NULL, 0, 0};
    bool goes_on = joint->same_subject || joint->who;
    struct span verb = cursor_span(c);
    if (!goes_on && answers(c, &other)) {
        note_taken(c, verb, &other);
        return other;
    }
    other = said_otherwise(c, goes_on);
    verb = cursor_span(c);
    if (!joint->same_subject || !last) {
        return other;
    }
    if (other.count == 0 && called_user(c, last, &other)) {
        note_taken(c, verb, &other);
    }
    if (gave_away(c, subject, &other)) {
        note_taken(c, verb, &other);
    }
    return other;
}
