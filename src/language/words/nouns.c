/* SPDX-License-Identifier: MIT */
/* nouns: what happened above as a noun, the pass, 2's drive, and who did it, the roller. The latest
 * that fits is meant; none is an error. */
#include "language/words/people.h"

static bool task_is(const struct sentence *s, enum verb_task task)
{
    return verb_row(s->verb)->task == task;
}

/* the pass, the drive: what happened as a noun, and the sentence it is of. */
enum noun {
    NOUN_PASS,
    NOUN_CATCH,
    NOUN_SCREEN,
    NOUN_HAND_OFF,
    NOUN_SHOT,
    NOUN_CUT,
    NOUN_DRIVE,
    NOUN_DRIBBLE,
    NOUN_ROLL,
    NOUN_CURL,
    NOUN_FLASH
};

static const struct {
    const char *name; /* for messages */
    enum verb verb;
    enum event_family family;
    bool off;
} noun_rows[] = {
    [NOUN_PASS] = {"pass", VERB_PASSES, FAMILY_PASSES, true},
    [NOUN_CATCH] = {"pass", VERB_PASSES, FAMILY_PASSES, true},
    [NOUN_SCREEN] = {"screen", VERB_SCREENS, FAMILY_SCREENS, false},
    [NOUN_HAND_OFF] = {"hand-off", VERB_HANDS_OFF, FAMILY_NONE, true},
    [NOUN_SHOT] = {"shot", VERB_SHOOTS, FAMILY_NONE, false},
    [NOUN_CUT] = {"cut", VERB_CUTS, FAMILY_CUTS, true},
    [NOUN_DRIVE] = {"drive", VERB_DRIVES, FAMILY_DRIVES, true},
    [NOUN_DRIBBLE] = {"dribble", VERB_DRIBBLES, FAMILY_DRIBBLES, false},
    [NOUN_ROLL] = {"roll", VERB_ROLLS, FAMILY_NONE, false},
    [NOUN_CURL] = {"curl", VERB_CURLS, FAMILY_NONE, false},
    [NOUN_FLASH] = {"flash", VERB_FLASHES, FAMILY_NONE, false},
};

static const struct entry nouns[] = {
    {"pass", NOUN_PASS},
    {"entry pass", NOUN_PASS},
    {"entry", NOUN_PASS},
    {"skip pass", NOUN_PASS},
    {"skip", NOUN_PASS},
    {"swing", NOUN_PASS},
    {"ball reversal", NOUN_PASS},
    {"return pass", NOUN_PASS},
    {"reversal", NOUN_PASS},
    {"inbounds pass", NOUN_PASS},
    {"kick-out", NOUN_PASS},
    {"post feed", NOUN_PASS},
    {"feed", NOUN_PASS},
    {"post entry", NOUN_PASS},
    {"catch", NOUN_CATCH},
    {"screen", NOUN_SCREEN},
    {"ball screen", NOUN_SCREEN},
    {"down screen", NOUN_SCREEN},
    {"back screen", NOUN_SCREEN},
    {"cross screen", NOUN_SCREEN},
    {"flare screen", NOUN_SCREEN},
    {"pick", NOUN_SCREEN},
    {"hand-off", NOUN_HAND_OFF},
    {"dho", NOUN_HAND_OFF},
    {"shot", NOUN_SHOT},
    {"jumper", NOUN_SHOT},
    {"cut", NOUN_CUT},
    {"drive", NOUN_DRIVE},
    {"penetration", NOUN_DRIVE},
    {"dribble", NOUN_DRIBBLE},
    {"roll", NOUN_ROLL},
    {"curl", NOUN_CURL},
    {"flash", NOUN_FLASH},
    {NULL, 0},
};

/* Takes the noun, and whose it is where that is said: 2's drive. */
static int take_noun(struct cursor *c, struct who *owner)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    *owner = (struct who){.kind = WHO_NONE};
    owner_read(&trial, owner);
    int noun = take_entry(&trial, nouns);
    if (noun < 0) {
        cursor_back(c, mark);
        return -1;
    }
    c->at = trial.at;
    c->refusals = trial.refusals;
    return noun;
}

bool above_noun_is(const struct cursor *c, bool behind_off)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct who owner;
    int noun = take_noun(&trial, &owner);
    cursor_back(&trial, mark);
    return noun >= 0 && (!behind_off || noun_rows[noun].off);
}

static bool noun_fits(const struct sentence *s, enum noun noun)
{
    switch (noun) {
    case NOUN_CATCH:
        return task_is(s, VERB_PASS) || task_is(s, VERB_EXCHANGE);
    case NOUN_PASS:
        return task_is(s, VERB_PASS);
    case NOUN_SCREEN:
        return task_is(s, VERB_SCREEN);
    case NOUN_CUT:
        return s->verb == VERB_CUTS || s->verb == VERB_BACK_CUTS || s->verb == VERB_V_CUTS ||
               s->verb == VERB_L_CUTS ||
               (task_is(s, VERB_USE) && s->verb != VERB_DRIVES_OFF && s->verb != VERB_DRIBBLES_OFF);
    case NOUN_DRIVE:
        return s->verb == VERB_DRIVES || s->verb == VERB_DRIVES_OFF;
    case NOUN_DRIBBLE:
        return task_is(s, VERB_CARRY);
    default:
        return s->verb == noun_rows[noun].verb;
    }
}

/* `to`: to whom; WHO_NONE: anybody. */
static const struct sentence *latest(const struct cursor *c, enum noun noun, const struct who *to)
{
    above_list list = above_sentences(c, false);
    for (size_t i = list.count; i-- > 0;) {
        if (noun_fits(list.at[i], noun) &&
            (to->kind == WHO_NONE || same_who(&list.at[i]->object, to))) {
            return list.at[i];
        }
    }
    return NULL;
}

/* The last one named does it last: of 4 and 5 the second screener. */
static struct who doer(const struct sentence *s)
{
    return s->subject.at[s->subject.count - 1];
}

static int noun_missing(struct cursor *c, struct span span, int noun)
{
    const char *name = noun_rows[noun].name;
    struct str help = STR("say whose: `as 1 passes`, `as 2 catches`");
    if (noun_rows[noun].family != FAMILY_PASSES) {
        help = str_format(c->arena, "say whose: `as %d %.*s`", noun == NOUN_SCREEN ? 5 : 2,
                          STR_ARG(verb_head(noun_rows[noun].verb, false)));
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_POINTS_BACK, span, "`%.*s`: no %s stands above",
                     STR_ARG(cursor_text(c, span)), name),
              "%.*s", STR_ARG(help));
    return -1;
}

bool above_noun_verb(struct cursor *c, struct event *out)
{
    int noun = take_entry(c, nouns);
    if (noun < 0 || noun == NOUN_CATCH || noun == NOUN_SCREEN) {
        return false;
    }
    *out = (struct event){
        .kind = EVENT_VERB, .verb = noun_rows[noun].verb, .family = noun_rows[noun].family};
    return true;
}

static bool is_flight(int noun)
{
    return noun == NOUN_PASS || noun == NOUN_CATCH || noun == NOUN_HAND_OFF;
}

/* The ball alone is no moment: only with what it does. */
static int take_ball(struct cursor *c, struct event *out)
{
    struct cursor trial = *c;
    if (!take_words(&trial, "ball")) {
        return -1;
    }
    const struct token *behind = trial.at;
    moment_behind_noun(&trial, out, true);
    if (trial.at == behind) {
        return -1;
    }
    c->at = trial.at;
    return NOUN_PASS;
}

int above_event_read(struct cursor *c, struct event *out)
{
    const struct token *from = c->at;
    struct who owner;
    struct cursor_mark mark = cursor_mark(c);
    int noun = take_noun(c, &owner);
    *out = (struct event){.kind = noun == NOUN_CATCH ? EVENT_CATCHES : EVENT_VERB,
                          .subject = owner,
                          .verb = noun_rows[noun < 0 ? NOUN_PASS : noun].verb,
                          .family = noun_rows[noun < 0 ? NOUN_PASS : noun].family};
    if (noun >= 0) {
        moment_behind_noun(c, out, is_flight(noun));
    } else {
        noun = take_ball(c, out);
    }
    if (noun < 0) {
        cursor_back(c, mark);
        return 0;
    }
    out->span = cursor_taken(c, from);
    bool caught = out->kind == EVENT_CATCHES && noun != NOUN_CATCH; /* 1's pass is caught */
    if (out->subject.kind != WHO_NONE && !(caught && owner.kind != WHO_NONE)) {
        return 1;
    }
    const struct sentence *s = latest(c, (enum noun)noun, &out->object);
    if (!s || doer(s).kind == WHO_EVERYONE_ELSE) {
        return noun_missing(c, out->span, noun);
    }
    out->subject = out->kind == EVENT_CATCHES ? s->object : doer(s);
    return 1;
}

bool above_noun_doer(struct cursor *c, struct who *out)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct event event;
    bool found = above_event_read(&trial, &event) > 0 && event.kind == EVENT_VERB &&
                 event.subject.kind != WHO_NONE;
    const struct token *end = trial.at;
    cursor_back(c, mark);
    if (!found) {
        return false;
    }
    *out = event.subject;
    out->span = event.span;
    c->at = end;
    return true;
}

static bool handles(const struct sentence *s)
{
    return task_is(s, VERB_CARRY) || s->verb == VERB_DRIVES_OFF || s->verb == VERB_DRIBBLES_OFF;
}

/* Whom such a noun means in a sentence; WHO_NONE: nobody. */
static struct who doer_in(const struct sentence *s, enum deed deed)
{
    static const struct who nobody = {.kind = WHO_NONE};
    switch (deed) {
    case DEED_SCREENER:
        return task_is(s, VERB_SCREEN) && s->subject.count == 1 ? doer(s) : nobody;
    case DEED_ROLLER:
        return s->verb == VERB_ROLLS || s->verb == VERB_SLIPS ? doer(s) : nobody;
    case DEED_CUTTER:
        return noun_fits(s, NOUN_CUT) && s->subject.count == 1 ? doer(s) : nobody;
    case DEED_PASSER:
        return task_is(s, VERB_PASS) ? doer(s) : nobody;
    case DEED_THROWER:
        return s->verb == VERB_INBOUNDS ? doer(s) : nobody;
    case DEED_RECEIVER:
        return task_is(s, VERB_PASS) || task_is(s, VERB_EXCHANGE) ? s->object : nobody;
    case DEED_POST:
        return s->verb == VERB_POSTS_UP || s->verb == VERB_SEALS ? doer(s) : nobody;
    case DEED_POPPER:
        return s->verb == VERB_POPS ? doer(s) : nobody;
    case DEED_FLASHER:
        return s->verb == VERB_FLASHES ? doer(s) : nobody;
    case DEED_SHOOTER:
        return task_is(s, VERB_SHOOT) ? doer(s) : nobody;
    default:
        return handles(s) ? doer(s) : nobody;
    }
}

/* 4 and 5 have both set one, in one breath: the screener could be either. */
static bool either(const above_list *list, size_t latest, enum deed deed, const struct who *who)
{
    bool one = deed == DEED_PASSER || deed == DEED_THROWER || deed == DEED_RECEIVER ||
               deed == DEED_SHOOTER || deed == DEED_DRIVER;
    if (one || latest == 0) {
        return false;
    }
    struct who other = doer_in(list->at[latest - 1], deed);
    const struct tie *tie = &list->at[latest]->tie;
    return who_is_one(&other) && !same_who(&other, who) && tie->word == TIE_NONE && !tie->then;
}

bool above_doer_read(struct cursor *c, struct who *out)
{
    struct cursor trial = *c;
    const struct token *next = cursor_next(c);
    if (!next || next == c->at || next->possessive) { /* `the` stands before it */
        return false;
    }
    const struct person_row *row = take_person(&trial);
    enum deed deed = row ? row->deed : DEED_NOTHING;
    if (deed == DEED_POST && word_is(c, 1, "up")) {
        return false;
    }
    above_list list = {NULL, 0, 0};
    if (deed != DEED_NOTHING) {
        list = above_sentences(c, true);
    }
    for (size_t i = list.count; i-- > 0;) {
        struct who who = doer_in(list.at[i], deed);
        if (who_is_one(&who) && either(&list, i, deed, &who)) {
            return false;
        }
        if (who_is_one(&who)) {
            *out = who;
            out->span = next->span;
            c->at = trial.at;
            return true;
        }
    }
    return false;
}
