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
    {"flight of ball", NOUN_PASS},
    {"flight of pass", NOUN_PASS},
    {"throw-in", NOUN_PASS},
    {"inbound", NOUN_PASS},
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

static const struct entry orders[] = {
    {"first", 1}, {"second", 2}, {"third", 3}, {"fourth", 4}, {NULL, 0}};

/* Which of several a word in front of the noun says, one that says nothing in front of a sentence:
 * the first screener. 0: none does; -1: another one. */
static int counted_between(const struct token *from, const struct token *to)
{
    static const char *const others[] = {"other", "last", NULL};
    for (; from < to; from++) {
        for (size_t i = 0; orders[i].words; i++) {
            if (token_is_word(from, orders[i].words)) {
                return orders[i].value;
            }
        }
        if (token_is_among(from, others)) {
            return -1;
        }
    }
    return 0;
}

/* The same, taken: of those of this step; 0: unmoved. */
static int take_order(struct cursor *c)
{
    const struct token *next = cursor_next(c);
    int order = next ? counted_between(c->at, next) : 0;
    if (order == 0) {
        struct cursor trial = *c;
        int taken = take_entry(&trial, orders);
        order = taken > 0 ? taken : 0;
        c->at = taken > 0 ? trial.at : c->at;
    }
    return order;
}

/* Takes the noun, and whose it is where that is said: 2's drive. `*order`: which of them, or 0. */
static int take_noun(struct cursor *c, struct who *owner, int *order)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    *owner = (struct who){.kind = WHO_NONE};
    *order = 0;
    if (!owner_read(&trial, owner)) {
        static const char *const whose[] = {"that same", "this same", "that",  "this",
                                            "his",       "her",       "their", NULL};
        static const char *const last[] = {"last", "final", "next", NULL};
        take_among(&trial, whose); /* the latest, as `the` is */
        take_among(&trial, last);
        *order = take_order(&trial);
    }
    int noun = take_entry(&trial, nouns);
    if (noun < 0 || *order < 0) {
        cursor_back(c, mark);
        return -1;
    }
    c->at = trial.at;
    c->refusals = trial.refusals;
    return noun;
}

/* The noun that begins here; -1: none. */
static int noun_here(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct who owner;
    int order, noun = take_noun(&trial, &owner, &order);
    cursor_back(&trial, mark);
    return noun;
}

bool above_noun_is(const struct cursor *c, bool behind_off)
{
    int noun = noun_here(c);
    return noun >= 0 && (!behind_off || noun_rows[noun].off);
}

bool above_catch_is(const struct cursor *c)
{
    return noun_here(c) == NOUN_CATCH;
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

/* That of this step's which `order` says, from the first on; NULL: there are not that many. */
static const struct sentence *counted(const struct cursor *c, enum noun noun, int order)
{
    above_list list = above_sentences(c, false);
    for (size_t i = 0; i < list.count; i++) {
        if (noun_fits(list.at[i], noun) && --order == 0) {
            return list.at[i];
        }
    }
    return NULL;
}

/* A moment is of the latest sentence that it fits: this one must be it. */
static bool latest_of_its(const struct cursor *c, enum noun noun, const struct sentence *s)
{
    above_list list = above_sentences(c, false);
    for (size_t i = list.count; i-- > 0;) {
        if (list.at[i] == s) {
            return true;
        }
        if (noun_fits(list.at[i], noun) &&
            same_who(&list.at[i]->subject.at[0], &s->subject.at[0]) &&
            same_who(&list.at[i]->object, &s->object)) {
            return false;
        }
    }
    return false;
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

/* on the pass, where two have been made: the latest was taken. */
static void note_latest(struct cursor *c, enum noun noun, const struct sentence *latest,
                        struct span span)
{
    above_list list = above_sentences(c, false);
    for (size_t i = 0; i < list.count && list.at[i] != latest; i++) {
        if (noun_fits(list.at[i], noun) && who_is_one(&latest->subject.at[0]) &&
            !same_who(&list.at[i]->subject.at[0], &latest->subject.at[0])) {
            struct diag *diag =
                diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, span,
                         "more than one %s stands above: the latest was taken, `%.*s`",
                         noun_rows[noun].name, STR_ARG(source_text(c->sources, latest->span)));
            diag_help(c->diags, diag,
                      "to have another, say whose: `after 1 passes`, or `after the first %s`",
                      noun_rows[noun].name);
            return;
        }
    }
}

/* after the first pass: that of this step, and of no other. */
static int counted_event(struct cursor *c, enum noun noun, int order, struct event *out)
{
    const struct sentence *s = counted(c, noun, order);
    if (!s || s->subject.count != 1 || !who_is_one(&s->subject.at[0]) ||
        !latest_of_its(c, noun, s)) {
        return noun_missing(c, out->span, (int)noun);
    }
    out->subject = doer(s);
    if (out->kind == EVENT_CATCHES) {
        out->subject = s->object;
    } else if (who_is_one(&s->object)) {
        out->object = s->object;
    }
    return 1;
}

int above_event_read(struct cursor *c, struct event *out)
{
    const struct token *from = c->at;
    struct who owner;
    struct cursor_mark mark = cursor_mark(c);
    int order, noun = take_noun(c, &owner, &order);
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
    if (order > 0) {
        return counted_event(c, (enum noun)noun, order, out);
    }
    const struct sentence *s = latest(c, (enum noun)noun, &out->object);
    struct who holder;
    if (!s && c->speech && noun == NOUN_PASS && who_is_one(&out->object) &&
        above_holder(c, &holder) && !same_who(&holder, &out->object)) {
        out->subject = holder; /* the ball goes in to 4: from who has it */
        return 1;
    }
    if (!s || doer(s).kind == WHO_EVERYONE_ELSE) {
        return noun_missing(c, out->span, noun);
    }
    out->subject = out->kind == EVENT_CATCHES ? s->object : doer(s);
    note_latest(c, (enum noun)noun, s, out->span);
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

/* The screen of this sentence has been used since: it is over. */
static bool used_since(const above_list *list, size_t at)
{
    const struct sentence *set = list->at[at];
    for (size_t i = at + 1; i < list->count; i++) {
        const struct sentence *s = list->at[i];
        if (task_is(s, VERB_USE) && same_who(&s->object, &set->subject.at[0])) {
            return true;
        }
    }
    return false;
}

/* Another one does the same in this step, and nothing tells which of the two is meant: 4 screens
 * for 3, 5 screens for 2, the screener pops. Passes go one behind the other, and the latest is
 * meant. */
static bool another_does(const struct cursor *c, enum deed deed, const struct who *latest,
                         struct who *out)
{
    bool many = deed == DEED_SCREENER || deed == DEED_ROLLER || deed == DEED_CUTTER ||
                deed == DEED_POST || deed == DEED_POPPER || deed == DEED_FLASHER;
    above_list list = above_sentences(c, false);
    for (size_t i = list.count; many && i-- > 0;) {
        struct who who = doer_in(list.at[i], deed);
        bool over = deed == DEED_SCREENER && used_since(&list, i);
        if (who_is_one(&who) && !same_who(&who, latest)) {
            *out = who;
            return !over;
        }
        if (list.at[i]->tie.then) { /* what came before is done */
            return false;
        }
    }
    return false;
}

bool above_two_screen(const struct cursor *c, const struct who *latest)
{
    struct who other;
    return another_does(c, DEED_SCREENER, latest, &other);
}

static void refuse_two(struct cursor *c, struct span span, const struct who *one,
                       const struct who *other)
{
    if (one->kind != WHO_PLAYER || other->kind != WHO_PLAYER) {
        return;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_POINTS_BACK, span, "`%.*s` may be %d or %d here",
                     STR_ARG(cursor_text(c, span)), other->number, one->number),
              "say the number: `%d`", one->number);
}

/* The first screener, the second passer, of this step; a stagger counts them in its order. */
static bool counted_doer(const struct cursor *c, enum deed deed, int order, struct who *out)
{
    above_list list = above_sentences(c, false);
    for (size_t i = 0; i < list.count; i++) {
        const struct sentence *s = list.at[i];
        bool several = deed == DEED_SCREENER && task_is(s, VERB_SCREEN) && s->subject.count > 1;
        for (size_t k = 0; several && k < s->subject.count; k++) {
            *out = s->subject.at[k];
            if (who_is_one(out) && --order == 0) {
                return true;
            }
        }
        *out = doer_in(s, deed);
        if (!several && who_is_one(out) && --order == 0) {
            return true;
        }
    }
    return false;
}

static void refuse_counted(struct cursor *c, struct span span)
{
    diag_help(c->diags,
              REFUSE(c, TEXT_POINTS_BACK, span, "`%.*s`: not so many stand above in this step",
                     STR_ARG(cursor_text(c, span))),
              "say the number: `4`");
}

bool above_doer_read(struct cursor *c, struct who *out)
{
    struct cursor trial = *c;
    const struct token *next = cursor_next(c);
    if (!next || next == c->at || next->possessive) { /* `the` stands before it */
        return false;
    }
    int order = take_order(&trial);
    const struct person_row *row = order < 0 ? NULL : take_person(&trial);
    enum deed deed = row ? row->deed : DEED_NOTHING;
    if (order > 0 && (deed == DEED_NOTHING || trial.at[-1].possessive)) {
        return false;
    }
    if (order > 0) {
        const struct token *from = c->at;
        c->at = trial.at;
        struct span span = cursor_taken(c, from);
        if (!counted_doer(c, deed, order, out)) {
            refuse_counted(c, span);
            *out = (struct who){.kind = WHO_PLAYER, .number = 1};
        }
        out->span = span;
        return true;
    }
    if (deed == DEED_POST && word_is(c, 1, "up")) {
        return false;
    }
    above_list list = {NULL, 0, 0};
    if (deed != DEED_NOTHING) {
        list = above_sentences(c, true);
    }
    for (size_t i = list.count; i-- > 0;) {
        struct who who = doer_in(list.at[i], deed);
        if (who_is_one(&who)) {
            struct who other;
            *out = who;
            out->span = next->span;
            c->at = trial.at;
            if (another_does(c, deed, &who, &other)) {
                refuse_two(c, next->span, &who, &other);
            }
            return true;
        }
    }
    return false;
}
