/* SPDX-License-Identifier: MIT */
/* condition: what a read asks of the defense. */
#include "language/words/condition.h"
#include "language/words/put_plain.h"

/* Where to: helps to left block. False: it was begun, and is no place. */
static bool place_part(struct cursor *c, struct condition *out)
{
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(out->verb, slots);
    for (size_t i = 0; i < count; i++) {
        if (slots[i].letter == 'P' && take_str(c, slots[i].preposition)) {
            out->place = place_read(c, 0);
            return out->place != NULL;
        }
    }
    return true;
}

/* What a defender does: trails, is trailing, chasing over the top. */
bool guard_verb_read(struct cursor *c, struct phrase *phrase)
{
    struct str said;
    struct cursor are = *c;
    if (take_words(&are, "are") && phrase_ing_here(&are, FOR_DEFENDERS, phrase, &said)) {
        c->at = are.at;
        return true;
    }
    return phrase_read(c, FOR_DEFENDERS, phrase) || phrase_ing_read(c, FOR_DEFENDERS, phrase) ||
           phrase_ing_here(c, FOR_DEFENDERS, phrase, &said);
}

/* helps off the corner, off 4: from where he stands, which is known. */
static void off_what(struct cursor *c, enum verb verb)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool off = verb == VERB_HELPS && take_words(&trial, "off") &&
               (person_read(&trial, &who) || spot_read(&trial, true));
    const struct token *end = trial.at;
    cursor_back(&trial, mark);
    c->at = off ? end : c->at;
}

/* Whom, or where, a helper leaves. */
static const char *const left_words[] = {"his man", "her man", "the corner", "the wing", NULL};

/* comes over to help, leaves his man and traps: only what he comes for is asked. */
static void comes_to(struct cursor *c)
{
    static const char *const goes[] = {"comes over", "comes up",  "comes down",  "comes in",
                                       "comes",      "runs over", "runs",        "rotates over",
                                       "rotates",    "steps in",  "slides over", "sprints over",
                                       "leaves",     "comes off", "drops down",  NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct phrase phrase;
    struct who man;
    bool goes_on = take_among(&trial, goes);
    if (goes_on && !take_among(&trial, left_words)) {
        person_read(&trial, &man);
    }
    goes_on = goes_on && (take_words(&trial, "to") || take_words(&trial, "and"));
    const struct token *verb = trial.at;
    goes_on = goes_on && guard_verb_read(&trial, &phrase);
    cursor_back(&trial, mark);
    c->at = goes_on ? verb : c->at;
}

/* leaves 4, leaves his man: to help. */
static bool leaves_read(struct cursor *c, struct condition *out)
{
    static const char *const leaves[] = {"leaves", "helps off", "helps off of", "comes off", NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who man;
    bool left =
        take_among(&trial, leaves) && (take_among(&trial, left_words) || person_read(&trial, &man));
    const struct token *end = trial.at;
    cursor_back(&trial, mark);
    if (left) {
        c->at = end;
        out->verb = VERB_HELPS;
    }
    return left;
}

/* x1 under, x1 over: with no verb at all. */
static bool side_read(struct cursor *c, struct condition *out)
{
    static const struct entry sides[] = {{"under", VERB_GOES_UNDER},       {"over", VERB_GOES_OVER},
                                         {"over the top", VERB_GOES_OVER}, {"behind", VERB_TRAILS},
                                         {"on top", VERB_OVERPLAYS},       {NULL, 0}};
    int verb = take_entry(c, sides);
    if (verb < 0) {
        return false;
    }
    out->verb = (enum verb)verb;
    return true;
}

/* the screen from 2, 5's screen: of which the one who uses it is his man. Gives where it ends. */
static const struct token *screen_tail(const struct cursor *c)
{
    static const char *const screens[] = {
        "screen", "the screen", "the ball screen", "the pick", "ball screen", "pick", NULL};
    static const char *const froms[] = {"from", "by", "of", "set by", NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    const struct token *last = &c->at[-1];
    bool said = token_is_word(last, "screen") || token_is_word(last, "pick");
    bool screen = (said || take_among(&trial, screens)) && take_among(&trial, froms) &&
                  person_read(&trial, &who) && who.kind == WHO_PLAYER;
    const struct token *end = screen ? trial.at : c->at;
    cursor_back(&trial, mark);
    return end;
}

/* Behind what he does, what changes nothing of it: shows hard, sags in, stays with 5. */
void condition_tail(struct cursor *c, const struct who *man)
{
    static const char *const tails[] = {"hard",
                                        "high",
                                        "in",
                                        "deep",
                                        "home",
                                        "early",
                                        "late",
                                        "way off",
                                        "off",
                                        "up",
                                        "over",
                                        "him",
                                        "her",
                                        "on him",
                                        "on her",
                                        "it",
                                        "low",
                                        "at all",
                                        "all the way",
                                        "to help",
                                        "the drive",
                                        "on the drive",
                                        "from the baseline",
                                        "from the top",
                                        "from the middle",
                                        "from behind",
                                        "from the weak side",
                                        "from the corner",
                                        "from the wing",
                                        "on the block",
                                        "on the post",
                                        "in the post",
                                        "in the lane",
                                        "in the paint",
                                        "on the catch",
                                        "on the wing",
                                        "at the top",
                                        NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who with;
    while (take_among(&trial, tails)) {
    }
    struct cursor his = trial;
    bool own = (take_words(&his, "with") || take_words(&his, "on")) && person_read(&his, &with) &&
               (!man || same_who(&with, man));
    const struct token *end = own ? his.at : screen_tail(&trial);
    cursor_back(c, mark);
    c->at = end;
}

/* denies the wing, the pass to 2: where his man stands, or what he is to get. False: it was begun,
 * and is of somebody else. */
static bool denied_what(struct cursor *c, const struct condition *out)
{
    static const char *const things[] = {"the pass",  "the entry",      "the ball",
                                         "the catch", "the entry pass", NULL};
    struct cursor trial = *c;
    struct who man, to;
    struct spot_stood at;
    if (take_among(&trial, things)) {
        bool whom = take_words(&trial, "to") && person_read(&trial, &to);
        c->at = trial.at;
        return !whom || !above_guarded(c, &out->who, &man) || same_who(&man, &to);
    }
    const struct place *place = spot_here(&trial);
    if (!place) {
        return true;
    }
    if (!above_guarded(c, &out->who, &man) || !above_stands(c, &man, &at)) {
        return false;
    }
    c->at = trial.at;
    return stood_on(&at, place);
}

/* comes up to 3: out on him; comes up: to help. */
static bool comes_up_read(struct cursor *c, struct condition *out, struct who *object)
{
    static const char *const ups[] = {"comes up",  "comes out", "moves up", "moves out",
                                      "steps out", "steps up",  "goes out", NULL};
    static const char *const tos[] = {"to", "on", "at", NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who man = {.kind = WHO_NONE};
    bool up = take_among(&trial, ups);
    bool to = up && take_among(&trial, tos);
    bool him = to && take_among(&trial, him_or_her) && above_holder(c, &man);
    bool whom = him || (to && person_read(&trial, &man) && man.kind == WHO_PLAYER &&
                        trial.refusals == mark.refusals);
    bool alone = up && !to && (cursor_done(&trial) || mark_is(&trial, ','));
    const struct token *end = trial.at;
    cursor_back(c, mark);
    if (!whom && !alone) {
        return false;
    }
    c->at = end;
    out->verb = whom ? VERB_CLOSES_OUT : VERB_HELPS;
    *object = man;
    return true;
}

/* The longest row of reads.def that is said here: its verb, taken; -1: none. */
static int take_read(struct cursor *c)
{
    static const struct entry says[] = {
#define READ(verb, words) {words, VERB_##verb},
#include "language/words/reads.def"
#undef READ
    };
    const struct token *from = cursor_next(c), *longest = NULL;
    int verb = -1;
    for (size_t i = 0; from && i < sizeof says / sizeof *says; i++) {
        const struct token *end = row_said(c, from, says[i].words);
        if (end && (!longest || end > longest)) {
            longest = end;
            verb = says[i].value;
        }
    }
    c->at = longest ? longest : c->at;
    return verb;
}

/* helps on 1's drive, which no sentence tells: of whose, is left out. */
static void of_whose(const struct cursor *c, const struct token *end)
{
    const struct token *whose = c->at;
    while (whose < end && !(whose->possessive && whose->kind == TOKEN_NUMBER)) {
        whose++;
    }
    if (whose == end) {
        return;
    }
    struct who who = {.kind = WHO_PLAYER, .number = (int)whose->number, .span = whose->span};
    above_list list = above_sentences(c, true);
    for (size_t i = 0; i < list.count; i++) {
        if (acts_in(list.at[i], &who)) {
            return;
        }
    }
    note_left_out(c, span_join(whose[-1].span, end[-1].span));
}

/* x4 steps up to stop him, x3 is late: as reads.def has it, with nothing of it left. */
static bool asked_read(struct cursor *c, struct condition *out, struct who *object)
{
    struct cursor trial = *c;
    struct who holder, man;
    int verb = take_read(&trial);
    static const char *const froms[] = {"from", "by", NULL};
    if (verb >= 0 && token_is_word(&trial.at[-1], "screen") && take_among(&trial, froms)) {
        person_read(&trial, &man); /* over the screen from 5 */
    }
    bool over = cursor_done(&trial) || mark_is(&trial, ',') || subject_verb_is(&trial) ||
                word_among(&trial, he_or_she);
    if (verb < 0 || !over) {
        return false;
    }
    bool at_ball = verb == VERB_STUNTS || verb == VERB_DOUBLES;
    bool own = above_guarded(c, &out->who, &man);
    if (at_ball && (!above_holder(c, &holder) || (own && same_who(&holder, &man)))) {
        return false;
    }
    of_whose(c, trial.at);
    c->at = trial.at;
    out->verb = (enum verb)verb;
    if (at_ball) {
        *object = holder;
    }
    return true;
}

static bool guard_read(struct cursor *c, struct condition *out, struct who *object)
{
    struct phrase phrase;
    struct who man;
    if (asked_read(c, out, object)) {
        return true;
    }
    if (leaves_read(c, out) || comes_up_read(c, out, object)) {
        return true;
    }
    comes_to(c);
    if (!guard_verb_read(c, &phrase)) {
        return side_read(c, out);
    }
    out->verb = phrase.verb;
    event_object_read(c, &out->verb, &phrase, object);
    off_what(c, out->verb);
    bool denies = out->verb == VERB_DENIES || out->verb == VERB_OVERPLAYS;
    if (denies && object->kind == WHO_NONE && !denied_what(c, out)) {
        return false;
    }
    struct who holder;
    if (out->verb == VERB_STUNTS && object->kind == WHO_NONE && above_holder(c, &holder)) {
        *object = holder; /* x4 stunts: at the ball */
    }
    if (!place_part(c, out)) {
        return false;
    }
    if (!out->place) {
        condition_tail(c, above_guarded(c, &out->who, &man) ? &man : NULL);
    }
    return true;
}

/* What two defenders do together: x1 and x3 switch, x1 and x5 trap 1. */
static bool both_read(struct cursor *c, struct condition *out)
{
    return take_words(c, "and") && person_read(c, &out->other) && who_defends(&out->other) &&
           guard_read(c, out, &out->object);
}

/* 5 is fronted: what his own defender does. */
static bool suffered_read(struct cursor *c, struct condition *out)
{
    static const struct entry words[] = {{"is fronted", VERB_FRONTS},
                                         {"gets fronted", VERB_FRONTS},
                                         {"is being fronted", VERB_FRONTS},
                                         {"is trailed", VERB_TRAILS},
                                         {"is top locked", VERB_OVERPLAYS},
                                         {"gets top locked", VERB_OVERPLAYS},
                                         {"is being top locked", VERB_OVERPLAYS},
                                         {"is chased", VERB_TRAILS},
                                         {"gets chased", VERB_TRAILS},
                                         {NULL, 0}};
    struct cursor trial = *c;
    struct who who = out->who;
    int verb = take_entry(&trial, words);
    if (verb < 0) {
        return false;
    }
    c->at = trial.at;
    out->kind = COND_VERB;
    out->verb = (enum verb)verb;
    out->who = above_defender_of(c, &who, who.span);
    out->other = (struct who){.kind = WHO_NONE};
    return true;
}

/* A read above in this step asks whether the same is done; COUNT: anything. */
static bool asked_above(const struct cursor *c, enum verb verb)
{
    const struct block *in = c->step ? c->step : c->top;
    for (size_t i = 0; in && i < in->forms.count; i++) {
        const struct form *form = &in->forms.at[i];
        for (size_t k = 0; form->kind == FORM_BLOCK && k < form->block->conditions.count; k++) {
            const struct condition *asked = &form->block->conditions.at[k];
            bool deed = asked->kind == COND_VERB || asked->kind == COND_BOTH;
            if (deed && (verb == VERB_COUNT || asked->verb == verb)) {
                return true;
            }
        }
    }
    return false;
}

/* x4 doesn't help: he stays; they don't switch, behind a read of it: otherwise. 1: read, 0: nothing
 * of that here, -1: reported. */
static int negated_read(struct cursor *c, struct condition *out)
{
    static const char *const theys[] = {"they",    "he", "she",  "the defense",
                                        "the big", "it", "that", NULL};
    static const char *const nots[] = {"does not", "do not", "doesn't", "don't",
                                       "doesnt",   "dont",   NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    const struct token *from = c->at;
    struct phrase phrase;
    struct who who = {.kind = WHO_NONE};
    bool they = take_among(&trial, theys);
    bool somebody = they || (person_read(&trial, &who) && who_defends(&who));
    if (!somebody || !take_among(&trial, nots)) {
        cursor_back(c, mark);
        return 0;
    }
    comes_to(&trial);
    bool read = guard_verb_read(&trial, &phrase);
    bool same = mark_is(&trial, ',') || cursor_done(&trial); /* if they don't */
    condition_tail(&trial, NULL);
    struct span span = cursor_taken(&trial, from);
    cursor_back(c, mark);
    if ((read || same) && asked_above(c, read ? phrase.verb : VERB_COUNT)) {
        c->at = trial.at;
        out->kind = COND_OTHERWISE;
        return 1;
    }
    if (read && phrase.verb == VERB_HELPS && !they) {
        c->at = trial.at;
        *out = (struct condition){.kind = COND_VERB, .who = who, .verb = VERB_STAYS};
        return 1;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_READ, span, "`%.*s`: a read asks what the defense does",
                     STR_ARG(cursor_text(c, span))),
              "say what is done instead, `x3 goes over`, or, behind a read of it, `otherwise`");
    return -1;
}

/* a trailing x3: x3 trails. */
static bool doing_read(struct cursor *c, struct condition *out)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct phrase phrase;
    struct str said;
    struct who who;
    if (phrase_ing_here(&trial, FOR_DEFENDERS, &phrase, &said) && person_read(&trial, &who) &&
        who.kind == WHO_DEFENDER && trial.refusals == mark.refusals) {
        *out = (struct condition){.kind = COND_VERB, .who = who, .verb = phrase.verb};
        c->at = trial.at;
        return true;
    }
    cursor_back(c, mark);
    return false;
}

static bool one_read(struct cursor *c, struct condition *out)
{
    static const char *const others[] = {"otherwise",
                                         "anything else",
                                         "if not",
                                         "else",
                                         "none of these",
                                         "it is not there",
                                         "it isn't there",
                                         "that is not there",
                                         "that isn't there",
                                         "nothing is there",
                                         "nothing is open",
                                         "nobody is open",
                                         "nobody is open inside",
                                         "no one is open inside",
                                         "no one inside is open",
                                         "nobody inside is open",
                                         "nothing else is there",
                                         "nothing is open inside",
                                         "nobody comes",
                                         "nobody comes up",
                                         "nobody steps up",
                                         "no one comes",
                                         "no one comes up",
                                         "no one steps up",
                                         "no one is open",
                                         "nothing there",
                                         "it is not open",
                                         "it isn't open",
                                         "they take it away",
                                         "they take that away",
                                         "it is taken away",
                                         "that is taken away",
                                         "nothing",
                                         NULL};
    struct cursor not = *c;
    bool none = take_words(&not, "not") && mark_is(&not, ','); /* if not, 1 shoots */
    c->at = none ? not .at : c->at;
    if (none || take_among(c, others)) {
        out->kind = COND_OTHERWISE;
        return true;
    }
    int negated = negated_read(c, out);
    if (negated != 0) {
        return negated > 0;
    }
    if (they_read(c, out) || coverage_read(c, out) || deed_state_read(c, out) ||
        doing_read(c, out)) {
        return true;
    }
    *out = (struct condition){.kind = COND_OTHERWISE};
    if (!person_read(c, &out->who) && !who_read(c, &out->who)) {
        return false;
    }
    if (!who_defends(&out->who)) {
        bool one =
            out->who.kind == WHO_PLAYER || out->who.kind == WHO_ROLE || out->who.kind == WHO_SPOT;
        return one &&
               (asked_state_read(c, out) || (out->who.kind != WHO_SPOT && suffered_read(c, out)));
    }
    struct cursor_mark mark = cursor_mark(c);
    if (both_read(c, out)) {
        out->kind = COND_BOTH;
        return true;
    }
    cursor_back(c, mark);
    out->other = out->object = (struct who){.kind = WHO_NONE};
    out->kind = COND_VERB;
    return guard_read(c, out, &out->other);
}

bool coverage_said(struct cursor *c, struct condition *out)
{
    return they_read(c, out);
}

bool coverage_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct condition condition = {.kind = COND_OTHERWISE};
    bool is = coverage_read(&trial, &condition) &&
              (mark_is(&trial, ',') || cursor_done(&trial) || subject_verb_is(&trial));
    cursor_back(&trial, mark);
    return is;
}

bool condition_read(struct cursor *c, struct condition *out)
{
    struct cursor_mark mark = cursor_mark(c);
    *out = (struct condition){.kind = COND_OTHERWISE};
    if (!one_read(c, out)) {
        if (c->refusals == mark.refusals) { /* else it has said why */
            cursor_back(c, mark);
        }
        return false;
    }
    out->span = cursor_taken(c, mark.at);
    return true;
}
