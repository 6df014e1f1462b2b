/* SPDX-License-Identifier: MIT */
/* blame: what is wrong with what follows a verb, said in the coach's words with something to type.
 */
#include "language/words/grammar.h"

static struct str subject_text(const struct predicate *p)
{
    const who_list *list = &p->s->subject;
    if (list->at[0].kind == WHO_EVERYONE_ELSE) {
        return STR("everyone else");
    }
    return subject_words(p->c, list);
}

/* "5 screens": the sentence as far as its verb, for helps. */
struct str predicate_begun(const struct predicate *p)
{
    struct str verb = phrase_words(p->s->verb, p->s->pass, p->s->screen, p->s->bare);
    return str_format(p->c->arena, "%.*s %.*s", STR_ARG(subject_text(p)), STR_ARG(verb));
}

/* As begun, with the preposition of the slot: "5 screens for". */
struct str predicate_begun_to(const struct predicate *p, struct str preposition)
{
    struct str said = predicate_begun(p);
    return preposition.size == 0
               ? said
               : str_format(p->c->arena, "%.*s %.*s", STR_ARG(said), STR_ARG(preposition));
}

/* A player for an example: not the one who acts. */
static int other_number(const struct predicate *p)
{
    const struct who *who = &p->s->subject.at[0];
    return who->kind == WHO_PLAYER && who->number == 3 ? 5 : 3;
}

static struct str verb_text(const struct predicate *p)
{
    return cursor_text(p->c, p->s->verb_span);
}

int said_twice(struct predicate *p, struct span span, const char *what)
{
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_TWICE, span, "%s is said twice: `%.*s` is the second one", what,
                     STR_ARG(cursor_text(p->c, span))),
              "keep one of the two, or write two sentences");
    return -1;
}

/* What stands where a player should. */
int player_missing(struct predicate *p, struct str preposition)
{
    struct cursor *c = p->c;
    struct cursor behind = *c;
    while (take_among(&behind, particle_words)) { /* kicks it out: to whom? */
    }
    if (cursor_done(&behind) || cursor_next(&behind)->kind == TOKEN_MARK) {
        c->at = behind.at;
    }
    struct str said = predicate_begun_to(p, preposition);
    struct str found = cursor_text(c, cursor_span(c));
    bool missing = cursor_done(c) || cursor_next(c)->kind == TOKEN_MARK;
    const char *near = missing ? NULL : entry_nearest(c, spot_entries);
    struct diag *diag =
        missing ? REFUSE(c, TEXT_OBJECT_MISSING, cursor_span(c), "`%.*s` whom?", STR_ARG(said))
                : REFUSE(c, TEXT_OBJECT_MISSING, cursor_span(c), "`%.*s` is no player here",
                         STR_ARG(found));
    struct str hint = missing ? (struct str){"", 0} : hint_for(c, HINT_REST, subject_text(p));
    if (p->s->verb == VERB_COMES && missing && p->s->place) {
        struct str place = cursor_text(c, p->s->place->span);
        diag_help(c->diags, diag, "write `%.*s %d to %.*s`; without a screen `%.*s goes to %.*s`",
                  STR_ARG(said), other_number(p), STR_ARG(place), STR_ARG(subject_text(p)),
                  STR_ARG(place));
    } else if (hint.size > 0) {
        diag_help(c->diags, diag, "%.*s", STR_ARG(hint));
    } else if (near) {
        diag_help(c->diags, diag,
                  "write the player's number, or the spot where one stands: did you mean `%s`?",
                  near);
    } else {
        const struct token *next = missing ? NULL : cursor_next(c);
        bool number = next && next->kind == TOKEN_NUMBER && next->integer && next->number < 100;
        diag_help(c->diags, diag, "write the player's number: `%.*s %d`", STR_ARG(said),
                  number ? (int)next->number : other_number(p));
    }
    return -1;
}

static int unfit(struct predicate *p, const struct who *who, const char *what, const char *takes,
                 const char *help)
{
    struct str found = cursor_text(p->c, who->span);
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_OBJECT_UNFIT, who->span, "`%.*s` is %s: `%.*s` takes %s",
                     STR_ARG(found), what, STR_ARG(verb_text(p)), takes),
              "%s", help);
    return -1;
}

/* A defender where an attacker should stand. */
static int defender_unfit(struct predicate *p, const struct who *who)
{
    struct cursor *c = p->c;
    if (p->s->verb != VERB_SCREENS) {
        return unfit(p, who, "a defender", "an attacker", "write the attacker's number: `3`");
    }
    struct str found = cursor_text(c, who->span), subject = subject_text(p);
    int guarded = who->kind == WHO_DEFENDER ? who->number : 4;
    struct diag *diag = REFUSE(c, TEXT_OBJECT_UNFIT, who->span,
                               "`%.*s` is a defender: a screen is for a team-mate", STR_ARG(found));
    diag_help(c->diags, diag, "write whom it frees: `%.*s screens for %d`, or `… for %d on %.*s`",
              STR_ARG(subject), guarded, guarded, STR_ARG(found));
    return -1;
}

/* 5, who stands at the nail, cuts off the nail: where he comes from, and nobody's screen. */
static bool comes_from_there(struct predicate *p, const struct who *who)
{
    struct cursor *c = p->c;
    struct spot_stood stood;
    if (verb_row(p->s->verb)->task != VERB_USE || who->kind != WHO_SPOT ||
        p->s->subject.count != 1 || !above_stands(c, &p->s->subject.at[0], &stood) ||
        !stood_on(&stood, who->place)) {
        return false;
    }
    const struct token *off = NULL;
    for (const struct token *at = p->from; at < c->at; at++) {
        off = at->span.end <= who->span.begin && !at->filler ? at : off;
    }
    if (!off) {
        return false;
    }
    struct str where = cursor_text(c, who->span);
    diag_help(c->diags,
              REFUSE(c, TEXT_LEFT_OVER, off->span, "`%.*s` is where %.*s stands", STR_ARG(where),
                     STR_ARG(subject_text(p))),
              "leave it out, or name the screener: `off 5`");
    return true;
}

int player_fits(struct predicate *p, const struct who *who, char letter)
{
    struct cursor *c = p->c;
    enum verb_task task = verb_row(p->s->verb)->task;
    for (size_t i = 0; i < p->s->subject.count; i++) {
        if (same_who(&p->s->subject.at[i], who)) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_OBJECT_UNFIT, who->span,
                             "`%.*s` does this: it takes another player",
                             STR_ARG(cursor_text(c, who->span))),
                      "write the other player's number");
            return -1;
        }
    }
    if (letter == 'D') {
        const char *help =
            str_format(c->arena, "write the defender: `%.*s switches with x%d`",
                       STR_ARG(subject_text(p)), who->kind == WHO_PLAYER ? who->number : 3)
                .at;
        return who_defends(who) ? 1 : unfit(p, who, "no defender", "a defender", help);
    }
    if (who_defends(who)) {
        return defender_unfit(p, who);
    }
    if (who->kind == WHO_COACH && !c->drill) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_DRILL_ONLY, who->span, "a coach takes part in drills only"),
                  "open it with `drill`, or write a player's number");
        return -1;
    }
    if (who->kind == WHO_BALL && (task == VERB_PASS || task == VERB_EXCHANGE)) {
        return unfit(p, who, "what is passed", "a player",
                     "write the player's number: `1 passes to 2`");
    }
    if (comes_from_there(p, who)) {
        return -1;
    }
    if (who->kind == WHO_SPOT && p->s->verb == VERB_DRIBBLES_AT) {
        return unfit(p, who, "a place", "a player",
                     "write `1 dribbles at 2`, or `1 dribbles to left wing`");
    }
    return 1;
}

static void person_unfit(struct cursor *c, const struct who *who)
{
    struct str found = cursor_text(c, who->span);
    struct diag *diag =
        REFUSE(c, TEXT_PLACE_UNKNOWN, who->span, "`%.*s` is somebody, not a place", STR_ARG(found));
    if (who->kind == WHO_PLAYER || who->kind == WHO_ROLE) {
        diag_help(c->diags, diag,
                  "write `beside %.*s`, `%.*s's spot` or `4 ft above %.*s`; or, of the ball, "
                  "`passes to %.*s`",
                  STR_ARG(found), STR_ARG(found), STR_ARG(found), STR_ARG(found));
    } else if (who->kind == WHO_BALL) {
        diag_help(c->diags, diag, "name the player who has it: `beside 1`");
    } else {
        diag_help(c->diags, diag, "write `beside %.*s` or a spot: `the lane`", STR_ARG(found));
    }
}

static struct str first_word(struct str words)
{
    size_t size = 0;
    while (size < words.size && words.at[size] != ' ') {
        size++;
    }
    return (struct str){words.at, size};
}

/* Where one who does this would go. */
static const char *example_place(struct str before)
{
    static const char *const inward[] = {"cut", "come", "drive", "roll", "back", "set", "rotate"};
    for (size_t i = 0; i + 2 < before.size; i++) {
        struct str rest = {before.at + i, before.size - i};
        for (size_t k = 0; k < sizeof inward / sizeof *inward; k++) {
            if (str_starts(rest, inward[k])) {
                return "the rim";
            }
        }
        if (str_starts(rest, "dribble")) {
            return "top";
        }
    }
    return "left corner";
}

void place_refuse(struct cursor *c, struct str before)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    struct span span = cursor_span(c);
    struct str hint = hint_for(c, HINT_REST, first_word(before));
    bool person = hint.size == 0 && person_read(&trial, &who);
    cursor_back(c, mark);
    if (person) {
        person_unfit(c, &who);
        return;
    }
    trial = *c;
    while (take_among(&trial, particle_words)) { /* steps out: where to? */
    }
    if (hint.size == 0 && (cursor_done(&trial) || cursor_next(&trial)->kind == TOKEN_MARK)) {
        c->at = trial.at;
    }
    bool joint = word_is(c, 0, "and") || word_is(c, 0, "then");
    if (cursor_done(c) || cursor_next(c)->kind == TOKEN_MARK || joint) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_PLACE_MISSING, span, "`%.*s` which place?", STR_ARG(before)),
                  "name the place: `%.*s %s`", STR_ARG(before), example_place(before));
        return;
    }
    if (word_among(c, place_words)) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_PREPOSITION_MISSING, span, "`%.*s` does not lead to a place here",
                         STR_ARG(cursor_text(c, span))),
                  "write `%.*s left wing`, or `goes to` for a move without a name of its own",
                  STR_ARG(before));
        return;
    }
    const char *near = entry_nearest(c, spot_entries);
    struct diag *diag = REFUSE(c, TEXT_PLACE_UNKNOWN, span, "there is no place called `%.*s`",
                               STR_ARG(cursor_text(c, span)));
    if (hint.size > 0) {
        diag_help(c->diags, diag, "%.*s", STR_ARG(hint));
    } else if (near) {
        diag_help(c->diags, diag, "did you mean `%s`?", near);
    } else {
        diag_help(c->diags, diag, "write a spot: `left wing`, `the rim`, `3's spot`");
    }
}

bool points_back(struct cursor *c)
{
    static const char *const words[] = {"him", "her", "his",  "them", "their",
                                        "he",  "she", "they", "it",   NULL};
    struct span span = cursor_span(c);
    if (!word_among(c, words)) {
        return false;
    }
    struct cursor trial = *c;
    struct who who;
    if (c->speech && him_read(&trial, &who)) { /* it can be one only */
        return false;
    }
    bool spot = word_is(c, 1, "spot"), defender = word_is(c, 1, "defender");
    if (word_is(c, 1, "right") || word_is(c, 1, "left")) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_POINTS_BACK, span, "left and right are the floor's, nobody's own"),
                  "name the place: `right wing`, `left elbow`");
        return true;
    }
    struct phrase phrase;
    trial = *c;
    bool they = take_words(&trial, "they") && phrase_read(&trial, FOR_DEFENDERS, &phrase) &&
                verb_row(phrase.verb)->task == VERB_GUARD;
    if (they) { /* they trap 1 in the corner */
        diag_help(c->diags,
                  REFUSE(c, TEXT_POINTS_BACK, span, "`%.*s`: which defenders are meant?",
                         STR_ARG(cursor_text(c, span))),
                  "say who they are: `x1 and x2 %.*s`",
                  STR_ARG(phrase_words(phrase.verb, PASS_PLAIN, SCREEN_PLAIN, true)));
        return true;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_POINTS_BACK, span, "`%.*s`: which player is meant?",
                     STR_ARG(cursor_text(c, span))),
              "say the number: `%s`",
              spot       ? "4's spot"
              : defender ? "x4"
                         : "4");
    return true;
}

/* Whether the same words are a defender's: goes over 3. Gives them. */
static bool guard_said(const struct predicate *p, struct span *span)
{
    struct cursor trial = *p->c;
    struct phrase phrase;
    trial.at = p->from;
    if (!phrase_read(&trial, FOR_DEFENDERS, &phrase) || trial.at <= p->after_verb) {
        return false;
    }
    *span = cursor_taken(&trial, p->from);
    return true;
}

/* 5 of 5's screen. */
static struct str object_text(const struct predicate *p)
{
    const struct who *who = &p->s->object;
    return who->kind == WHO_PLAYER ? str_format(p->c->arena, "%d", who->number)
                                   : cursor_text(p->c, who->span);
}

bool place_needed(struct predicate *p, const struct slot *slot)
{
    struct cursor *c = p->c;
    struct span span;
    if (verb_row(p->s->verb)->task != VERB_GUARD && guard_said(p, &span)) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_DEFENDER_ONLY, span,
                         "`%.*s` is a defender's verb, and `%.*s` attacks",
                         STR_ARG(cursor_text(c, span)), STR_ARG(subject_text(p))),
                  "write the defender, `x3 %.*s`, or name a place to go to",
                  STR_ARG(cursor_text(c, span)));
        return false;
    }
    struct str said = predicate_begun(p);
    if (p->s->object.kind != WHO_NONE) {
        struct slot slots[SLOTS_MOST];
        verb_slots(p->s->verb, slots);
        said =
            str_format(c->arena, "%.*s %.*s", STR_ARG(predicate_begun_to(p, slots[0].preposition)),
                       STR_ARG(object_text(p)));
    }
    if (slot->preposition.size > 0) {
        said = str_format(c->arena, "%.*s %.*s", STR_ARG(said), STR_ARG(slot->preposition));
    }
    place_refuse(c, said);
    return false;
}

int preposition_missing(struct predicate *p, const struct who *who, struct str preposition)
{
    struct cursor *c = p->c;
    struct str found = cursor_text(c, who->span), said = predicate_begun_to(p, preposition);
    diag_help(c->diags,
              REFUSE(c, TEXT_PREPOSITION_MISSING, who->span, "`%.*s` needs `%.*s` before `%.*s`",
                     STR_ARG(verb_text(p)), STR_ARG(preposition), STR_ARG(found)),
              "write `%.*s %.*s`", STR_ARG(said), STR_ARG(found));
    return -1;
}
