/* SPDX-License-Identifier: MIT */
/* refuse: what is wrong with a sentence as a whole: nobody who acts, a verb that is none or belongs
 * to the other side, something left over. (What follows the verb: blame.) */
#include <string.h>

#include "language/words/grammar.h"

static bool negated(struct cursor *c)
{
    const struct token *next = cursor_next(c);
    struct str word = next && next->kind == TOKEN_WORD ? next->text : (struct str){"", 0};
    bool short_form = word.size > 3 && memcmp(word.at + word.size - 3, "n't", 3) == 0;
    if (!short_form && !str_is(word, "not") && !str_is(word, "never")) {
        struct cursor trial = *c;
        if (!(take_words(&trial, "does") || take_words(&trial, "do") ||
              take_words(&trial, "will")) ||
            !word_is(&trial, 0, "not")) {
            return false;
        }
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_NEGATION, next->span,
                     "`%.*s`: a play says what happens, not what does not",
                     STR_ARG(cursor_text(c, next->span))),
              "say what happens instead: `4 stays`, `4 pops`");
    return true;
}

void refuse_subject(struct cursor *c)
{
    struct span span = cursor_span(c);
    struct str found = cursor_text(c, span);
    if (negated(c) || points_back(c)) {
        return;
    }
    struct str hint = hint_for(c, HINT_SUBJECT, STR(""));
    if (hint.size > 0) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_WHO_MISSING, span,
                         "a sentence begins with who does it, by number: `%.*s` is none",
                         STR_ARG(found)),
                  "%.*s", STR_ARG(hint));
        return;
    }
    /* once nothing is kept, no trouble over words */
    if (!c->diags->full && (verb_begins(c) || word_among(c, light_words))) {
        struct cursor trial = *c;
        struct phrase phrase;
        bool bare = phrase_read(&trial, FOR_ANYONE, &phrase) && !phrase.with_s;
        bool guard = bare && verb_row(phrase.verb)->task == VERB_GUARD;
        struct str verb = found;
        if (bare) {
            verb = phrase_words(phrase.verb, phrase.pass, phrase.screen, false);
        } else if (!verb_begins(c) && found.at[found.size - 1] != 's') { /* give it to 2 */
            verb = str_format(c->arena, "%.*ss", STR_ARG(found));
        }
        diag_help(c->diags, REFUSE(c, TEXT_WHO_MISSING, span, "who `%.*s`?", STR_ARG(found)),
                  "begin with the player: `%s1 %.*s`", guard ? "x" : "", STR_ARG(verb));
        return;
    }
    const struct token *next = cursor_next(c);
    if (next && next->kind == TOKEN_MEASURE && next->unit == UNIT_STEPS && next->integer &&
        next->number >= 1 && next->number <= c->players) {
        int number = (int)next->number; /* 5 steps off the block */
        diag_help(c->diags,
                  REFUSE(c, TEXT_WHO_MISSING, span, "`%.*s` is a length here", STR_ARG(found)),
                  "if player %d moves, write where to: `%d goes to top`", number, number);
        return;
    }
    if (next && next->kind == TOKEN_QUOTED) {
        diag_help(c->diags, REFUSE(c, TEXT_WHO_MISSING, span, "a sentence stands without quotes"),
                  "take the quotation marks away: `1 passes to 2`");
        return;
    }
    if (cursor_done(c)) {
        diag_help(c->diags, REFUSE(c, TEXT_WHO_MISSING, span, "who does something here is missing"),
                  "write a sentence: `3 cuts to the rim`");
        return;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_WHO_MISSING, span,
                     "a sentence begins with who does it, and `%.*s` is nobody", STR_ARG(found)),
              "begin with a player's number: `1 passes to 2`");
}

static void refuse_light(struct cursor *c, const who_list *list, struct span span)
{
    bool gives = word_is(c, 0, "gives") || word_is(c, 0, "give");
    struct str word = cursor_text(c, span), who = subject_words(c, list);
    const char *s = list->count > 1 ? "" : "s", *es = list->count > 1 ? "" : "es";
    int other = list->at[0].kind == WHO_PLAYER && list->at[0].number == 2 ? 3 : 2;
    if (gives && list->at[0].kind == WHO_DEFENDER) { /* gives the cutter a bump */
        diag_help(c->diags,
                  REFUSE(c, TEXT_TWO_MEANINGS, span, "`%.*s` what? A defender has nothing to give",
                         STR_ARG(word)),
                  "a defender `%.*s bumps 3`, `helps to the lane`, `recovers`, `guards 4`",
                  STR_ARG(who));
        return;
    }
    if (gives) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_TWO_MEANINGS, span, "`%.*s` alone is two things", STR_ARG(word)),
                  "write `%.*s pass%s to %d` or `%.*s hand%s off to %d`", STR_ARG(who), es, other,
                  STR_ARG(who), s, other);
        return;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, span,
                     "`%.*s` what? That noun is no pass, screen, cut or shot", STR_ARG(word)),
              "write `%.*s pass%s to %d` or `%.*s screen%s for %d`; a screen may be a down, back, "
              "cross, flare, ball or double screen",
              STR_ARG(who), es, other, STR_ARG(who), s, other);
}

static void refuse_side(struct cursor *c, const who_list *list, const struct phrase *phrase,
                        struct span span)
{
    struct str who = subject_words(c, list), verb = cursor_text(c, span);
    if (who_side(&list->at[0]) == FOR_ATTACKERS) {
        int number = list->at[0].kind == WHO_PLAYER ? list->at[0].number : 3;
        diag_help(c->diags,
                  REFUSE(c, TEXT_DEFENDER_ONLY, span,
                         "`%.*s` is a defender's verb, and `%.*s` attacks", STR_ARG(verb),
                         STR_ARG(who)),
                  "write the defender: `x%d %s`", number, phrase->words);
        return;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_ATTACKER_ONLY, span,
                     "`%.*s` is an attacker's verb, and `%.*s` defends", STR_ARG(verb),
                     STR_ARG(who)),
              "a defender `guards 4`, `denies`, `sags`, `helps to the lane`, `goes under`, "
              "`switches with x1`, `rotates to the rim`");
}

bool refuse_longer(struct cursor *c, const who_list *list, const struct token *verb)
{
    struct cursor at = *c;
    at.at = verb;
    const struct token *end;
    struct str who = cursor_text(c, list->at[list->count - 1].span);
    struct str hint = hint_until(&at, HINT_VERB, who, &end);
    if (hint.size == 0 || end <= c->at) {
        return false;
    }
    at.at = end;
    struct span span = cursor_taken(&at, verb);
    diag_help(c->diags,
              REFUSE(c, TEXT_VERB_UNKNOWN, span, "`%.*s` is no verb of the play language",
                     STR_ARG(cursor_text(c, span))),
              "%.*s", STR_ARG(hint));
    return true;
}

void refuse_verb(struct cursor *c, const who_list *list)
{
    struct str who = subject_words(c, list);
    struct span span = cursor_span(c);
    struct phrase phrase;
    struct cursor trial = *c;
    enum phrase_side side = who_side(&list->at[0]);
    if (negated(c)) {
        return;
    }
    if (cursor_done(c) || cursor_next(c)->kind != TOKEN_WORD) {
        diag_help(c->diags, REFUSE(c, TEXT_VERB_MISSING, span, "`%.*s` does what?", STR_ARG(who)),
                  "write what happens: `%.*s %s`", STR_ARG(who),
                  side == FOR_DEFENDERS ? "sags" : "cuts to the rim");
        return;
    }
    if (phrase_read(&trial, FOR_ANYONE, &phrase)) {
        if (refuse_longer(&trial, list, c->at)) {
            c->refusals = trial.refusals;
            return;
        }
        refuse_side(c, list, &phrase, cursor_taken(&trial, c->at));
        return;
    }
    struct str hint = hint_for(c, HINT_VERB, cursor_text(c, list->at[list->count - 1].span));
    if (hint.size == 0 && word_among(c, light_words)) {
        refuse_light(c, list, span);
        return;
    }
    if (word_is(c, 0, "catches") || word_is(c, 0, "catch")) {
        diag_help(
            c->diags,
            REFUSE(c, TEXT_VERB_UNKNOWN, span, "a catch is the end of a pass, not a sentence"),
            "write `1 passes to %.*s`; another sentence waits for it with `when %.*s catches`",
            STR_ARG(who), STR_ARG(who));
        return;
    }
    const char *near = phrase_nearest(c, side);
    near = near || side == FOR_DEFENDERS ? near : phrase_nearest(c, FOR_ANYONE);
    struct diag *diag = REFUSE(c, TEXT_VERB_UNKNOWN, span, "`%.*s` is no verb of the play language",
                               STR_ARG(cursor_text(c, span)));
    if (hint.size > 0) {
        diag_help(c->diags, diag, "%.*s", STR_ARG(hint));
    } else if (near) {
        diag_help(c->diags, diag, "did you mean `%s`?", near);
    } else {
        diag_help(c->diags, diag, "the most usual verbs are %.*s",
                  STR_ARG(hint_usual(c, side, list->count > 1)));
    }
}

static const char *nearest_left(const struct cursor *c)
{
    static const struct entry words[] = {
        {"to", 0},    {"toward", 0}, {"around", 0}, {"past", 0},   {"under", 0},  {"off", 0},
        {"wide", 0},  {"tight", 0},  {"early", 0},  {"taking", 0}, {"facing", 0}, {"back to", 0},
        {"until", 0}, {"when", 0},   {"while", 0},  {"after", 0},  {"middle", 0}, {NULL, 0}};
    const char *near = entry_nearest(c, words);
    near = near ? near : entry_nearest(c, pace_entries);
    return near ? near : entry_nearest(c, spot_entries);
}

/* 4 stays in the corner: the verb takes no place. */
static bool place_left(struct predicate *p)
{
    static const char *const from[] = {"from", "near", "by", "off", NULL};
    struct cursor *c = p->c;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct slot slots[SLOTS_MOST];
    for (size_t i = verb_slots(p->s->verb, slots); i-- > 0;) {
        bool stays = p->s->verb == VERB_STAYS && who_side(&p->s->subject.at[0]) == FOR_DEFENDERS;
        if (!stays && (slots[i].letter == 'P' || slots[i].letter == 'E')) {
            return false;
        }
    }
    while (take_among(&trial, place_words) || take_among(&trial, particle_words) ||
           take_among(&trial, from)) {
    }
    const struct place *place = spot_read(&trial, true);
    struct span span = place ? cursor_taken(&trial, mark.at) : SPAN_NONE;
    cursor_back(c, mark);
    if (!place) {
        return false;
    }
    bool sideless =
        place->kind == PLACE_SPOT && spot_needs_side(place->spot) && place->side == SIDE_NONE;
    bool defends = who_side(&p->s->subject.at[0]) == FOR_DEFENDERS;
    struct span said = span_join(p->s->subject.at[0].span, c->at[-1].span);
    struct str begun = cursor_text(c, said), where = cursor_text(c, place->span);
    struct diag *diag =
        REFUSE(c, TEXT_LEFT_OVER, span, "`%.*s`: `%.*s` takes no place",
               STR_ARG(cursor_text(c, span)), STR_ARG(cursor_text(c, p->s->verb_span)));
    if (verb_row(p->s->verb)->task == VERB_SHOOT) {
        diag_help(
            c->diags, diag,
            "write `%.*s`: from where the player is. To move first: `%.*s dribbles to %s%.*s`",
            STR_ARG(begun), STR_ARG(subject_words(c, &p->s->subject)), sideless ? "right " : "",
            STR_ARG(where));
        return true;
    }
    if (p->s->object.kind != WHO_NONE) { /* 2 replaces 1 at the top */
        diag_help(c->diags, diag, "leave it out: `%.*s`", STR_ARG(begun));
        return true;
    }
    diag_help(c->diags, diag,
              "write `%.*s` for the place where the player is, or `%.*s %s %s%.*s` for another",
              STR_ARG(begun), STR_ARG(subject_words(c, &p->s->subject)),
              defends      ? p->s->bare ? "rotate to" : "rotates to"
              : p->s->bare ? "go to"
                           : "goes to",
              sideless ? "right " : "", STR_ARG(where));
    return true;
}

int refuse_left(struct predicate *p)
{
    struct cursor *c = p->c;
    struct span span = cursor_span(c);
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool comma = take_mark(&trial, ',');
    if (negated(&trial)) {
        c->refusals = trial.refusals;
        return -1;
    }
    bool list = (take_words(&trial, "and") || comma) && person_read(&trial, &who);
    cursor_back(c, mark);
    if (list) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_LIST_UNFIT, who.span, "a second player does not go here"),
                  "write two sentences, or give %.*s a verb of its own",
                  STR_ARG(cursor_text(c, who.span)));
        return -1;
    }
    if (mark_is(c, ',')) {
        take_mark(c, ',');
        span = cursor_done(c) ? span : cursor_span(c);
    }
    if (place_left(p)) {
        return -1;
    }
    struct str found = cursor_text(c, span);
    if (word_is(c, 0, "and") || word_is(c, 0, "then")) {
        struct cursor behind = *c;
        while (take_words(&behind, "and") || take_words(&behind, "then")) {
        }
        if (points_back(&behind)) { /* and she shoots */
            c->refusals = behind.refusals;
            return -1;
        }
        diag_help(c->diags,
                  REFUSE(c, TEXT_LEFT_OVER, span, "no sentence follows `%.*s`", STR_ARG(found)),
                  "write who does what behind it: `and 3 cuts to the rim`");
        return -1;
    }
    const char *near = nearest_left(c);
    struct diag *diag =
        REFUSE(c, TEXT_LEFT_OVER, span, "`%.*s` has no part in this sentence", STR_ARG(found));
    if (c->at[-1].stopped) { /* 6 ft. above: the subject and the verb stand before it */
        diag_help(c->diags, diag,
                  "after a unit a full stop closes nothing: put the next sentence on a new line");
        return -1;
    }
    trial = *c;
    if (person_read(&trial, &who) && cursor_taken(&trial, c->at).end > 0) {
        c->refusals = trial.refusals;
        diag_help(c->diags, diag, "`%.*s` takes no player here: leave `%.*s` out",
                  STR_ARG(cursor_text(c, p->s->verb_span)), STR_ARG(found));
        return -1;
    }
    struct str hint = hint_for(c, HINT_REST, cursor_text(c, p->s->subject.at[0].span));
    if (hint.size > 0) {
        diag_help(c->diags, diag, "%.*s", STR_ARG(hint));
        return -1;
    }
    diag_help(c->diags, diag,
              near ? "did you mean `%s`?" : "leave it out, or make it a sentence of its own", near);
    return -1;
}

bool refuse_use(struct cursor *c, const struct sentence *s)
{
    diag_help(c->diags,
              REFUSE(c, TEXT_VERB_UNKNOWN, s->verb_span, "`%.*s` does not use a screen",
                     STR_ARG(cursor_text(c, s->verb_span))),
              "a screen is used by `curls`, `fades`, `flares`, `comes off`, `rejects`, `drives`");
    return false;
}

bool refuse_run_on(struct cursor *c, const struct sentence *s)
{
    struct str who = cursor_text(c, s->subject.at[s->subject.count - 1].span);
    struct str verb = cursor_text(c, s->verb_span);
    diag_help(c->diags,
              REFUSE(c, TEXT_LIST_UNFIT, s->verb_span,
                     "`%.*s %.*s`: one player, or those before the comma too?", STR_ARG(who),
                     STR_ARG(verb)),
              "write `and` before the last of several players, or begin a new sentence");
    return false;
}
