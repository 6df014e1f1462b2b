/* SPDX-License-Identifier: MIT */
/* tie: what a sentence waits for: events and states, what stands in front of it, until. One clause
 * is read by clause.c. */
#include "language/words/speech.h"

const struct event *event_keep(struct cursor *c, struct event event)
{
    struct event *kept = arena_new(c->arena, struct event);
    *kept = event;
    return kept;
}

bool event_is_state(const struct event *event)
{
    return event->kind != EVENT_NONE && event->kind != EVENT_VERB && event->kind != EVENT_CATCHES;
}

/* "is open", "is past 1", "has the ball" behind somebody. */
static bool state_read(struct cursor *c, struct event *out)
{
    static const struct entry more[] = {{"is past", EVENT_PAST},
                                        {"has the ball", EVENT_HAS_BALL},
                                        {"has it", EVENT_HAS_BALL},
                                        {NULL, 0}};
    struct cursor trial = *c;
    int state = take_state(&trial);
    state = state < 0 ? take_entry(&trial, more) : state;
    if (state < 0 || (state == EVENT_PAST && !who_read(&trial, &out->object))) {
        return false;
    }
    out->kind = (enum event_kind)state;
    c->at = trial.at;
    return true;
}

/* Only a plain verb stands for its family: `bounce passes` means a bounce pass. */
static enum event_family family_of(const struct phrase *phrase)
{
    if (phrase->pass != PASS_PLAIN || phrase->screen != SCREEN_PLAIN || phrase->to != SPOT_COUNT) {
        return FAMILY_NONE;
    }
    switch (phrase->verb) {
    case VERB_PASSES:
        return FAMILY_PASSES;
    case VERB_SCREENS:
        return FAMILY_SCREENS;
    case VERB_CUTS:
        return FAMILY_CUTS;
    case VERB_DRIBBLES:
        return FAMILY_DRIBBLES;
    case VERB_DRIVES:
        return FAMILY_DRIVES;
    case VERB_BACK_CUTS:
        return FAMILY_BACK_CUTS;
    default:
        return phrase_has(phrase, 'M') ? FAMILY_MOVES : FAMILY_NONE;
    }
}

/* catches it, gets the ball, receives the pass. */
static bool take_catch(struct cursor *c)
{
    static const char *const catches[] = {"catches", "catch", "receives", "receive", NULL};
    static const char *const whole[] = {
        "gets ball",     "get ball",        "gets it",       "get it",
        "gets pass",     "get pass",        "has caught",    "is catching",
        "gets touch",    "gets ball back",  "gets it back",  "has ball back",
        "has it back",   "has got ball",    "has got it",    "has got pass",
        "has gotten it", "has gotten ball", "has received",  "got ball",
        "got it",        "is given ball",   "comes by ball", NULL};
    static const char *const caught[] = {"ball",          "it",    "pass",      "inbounds",
                                         "inbounds pass", "entry", "throw-in",  "throw - in",
                                         "entry pass",    "swing", "skip pass", "reversal",
                                         "hand-off",      "lob",   "kick-out",  NULL};
    bool taken = take_among(c, whole) || take_among(c, catches);
    return taken && (take_among(c, caught), true); /* what else would be caught */
}

/* when she catches it: whom the latest sentence above passes to. */
static bool he_catches(struct cursor *c, struct event *out)
{
    static const char *const words[] = {"he",           "she",      "middle", "post", "high post",
                                        "low post",     "big",      "corner", "wing", "elbow",
                                        "short corner", "receiver", "block",  NULL};
    static const char *const has[] = {"has it", "has ball", NULL};
    struct cursor trial = *c;
    above_list above = above_sentences(c, false);
    const struct sentence *last = above.count > 0 ? above.at[above.count - 1] : NULL;
    if (!last || verb_row(last->verb)->task != VERB_PASS || !who_is_one(&last->object) ||
        !take_among(&trial, words) || !(take_among(&trial, has) || take_catch(&trial))) {
        return false;
    }
    out->kind = EVENT_CATCHES;
    out->subject = last->object;
    c->at = trial.at;
    return true;
}

static bool happening_read(struct cursor *c, struct event *out)
{
    struct phrase phrase;
    struct cursor trial = *c;
    if (take_catch(&trial)) {
        out->kind = EVENT_CATCHES;
        c->at = trial.at;
        struct cursor passed = trial;
        if (owner_read(&passed, &out->object) && take_words(&passed, "pass")) {
            c->at = passed.at; /* catches 1's pass */
            return true;
        }
        if (!take_words(&trial, "from") || !person_read(&trial, &out->object)) {
            out->object = (struct who){.kind = WHO_NONE};
            return true;
        }
        c->at = trial.at; /* catches it from 1 */
        c->refusals = trial.refusals;
        return true;
    }
    if (uses_screen_is(c)) {
        take_uses(c);
        if (!owner_read(c, &out->object)) {
            out->object = (struct who){.kind = WHO_NONE};
        }
        take_words(c, "screen");
        out->kind = EVENT_VERB;
        out->verb = VERB_COMES;
        out->family = FAMILY_USES;
        return true;
    }
    if (moment_arrival_read(c, out)) { /* where that is stays to be compared: in the lane */
        return true;
    }
    enum phrase_side side = who_side(&out->subject);
    bool verb = phrase_read(c, side, &phrase) || phrase_ing_read(c, side, &phrase);
    if (!verb && !moment_read(c, out, &phrase, &verb)) {
        return false;
    }
    if (!verb) {
        moment_way(c, out);
        return true;
    }
    out->kind = EVENT_VERB;
    out->verb = phrase.verb;
    out->pass = phrase.pass;
    out->screen = phrase.screen;
    out->family = family_of(&phrase);
    event_object_read(c, &out->verb, &phrase, &out->object);
    above_drop_own_man(c, &out->subject, out->verb, &out->object);
    if (out->verb != phrase.verb) {
        out->family = FAMILY_NONE;
    }
    if (out->verb == VERB_COMES) {
        out->family = FAMILY_USES;
    }
    moment_way(c, out);
    return true;
}

bool event_read(struct cursor *c, struct event *out)
{
    struct cursor_mark mark = cursor_mark(c);
    *out = (struct event){.kind = EVENT_NONE};
    int noun = above_event_read(c, out);
    if (noun != 0) {
        return noun > 0;
    }
    if (c->speech && he_catches(c, out)) {
        out->span = cursor_taken(c, mark.at);
        return true;
    }
    if (who_read(c, &out->subject) && (state_read(c, out) || happening_read(c, out))) {
        out->span = cursor_taken(c, mark.at);
        return true;
    }
    cursor_back(c, mark);
    *out = (struct event){.kind = EVENT_NONE};
    return false;
}

static bool then_refuse(struct cursor *c, struct span span)
{
    diag_help(c->diags,
              REFUSE(c, TEXT_CLAUSE_THEN, span, "`then` and `%.*s` say two different moments",
                     STR_ARG(cursor_text(c, span))),
              "keep one of them; `then` may stand before `after`, `when` and `while`");
    return false;
}

/* Without its comma a clause must not run into a list: as 1 dribbles left wing, 3 cuts. */
static bool comma_may_miss(struct cursor *c, struct span clause)
{
    who_list list;
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool subject = subject_read(&trial, &list);
    bool comma = false;
    for (const struct token *at = c->at; subject && at < trial.at; at++) {
        comma = comma || token_is_mark(at, ',');
    }
    cursor_back(c, mark);
    if (!comma) {
        return true;
    }
    struct str text = cursor_text(c, clause);
    diag_help(c->diags,
              REFUSE(c, TEXT_CLAUSE_HALF, cursor_span(c), "where does the clause `%.*s` end?",
                     STR_ARG(text)),
              "put a comma behind it, and leave out places: `%.*s, 3 cuts to the rim`",
              STR_ARG(text));
    return false;
}

/* One of these in front of a sentence, its comma too; the next spot is no such word. */
static bool front_word(struct cursor *c, const char *const *words)
{
    struct cursor trial = *c;
    if (word_is(c, 1, "spot") || !take_among(&trial, words) ||
        (word_is(c, 1, "same") && word_is(&trial, 0, "as"))) { /* at the same time as */
        return false;
    }
    take_mark(&trial, c->speech && mark_is(&trial, ':') ? ':' : ',');
    c->at = trial.at;
    return true;
}

/* second, 2 goes to top: a role may have that name, so somebody else must act behind it. */
bool front_ordinal(struct cursor *c)
{
    static const char *const words[] = {"second", "third", "fourth", "fifth", "last", NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool ordinal = !article_second(c) && take_among(&trial, words);
    take_mark(&trial, ',');
    const struct token *behind = trial.at;
    struct recast recast; /* second, 2 up to the wing */
    bool acts = ordinal && (subject_verb_is(&trial) || (c->speech && recast_find(&trial, &recast)));
    who_list list;
    acts = acts || (c->speech && ordinal && subject_read(&trial, &list) && leg_is(&trial));
    cursor_back(&trial, mark);
    c->at = acts ? behind : c->at;
    return acts;
}

/* all of them at once, behind a wait: then everything: 1 cuts, 2 fills. */
static void take_everything(struct cursor *c)
{
    static const char *const words[] = {
        "everything",         "all of it", "all at once", "everybody goes",
        "everything at once", "go",        NULL};
    struct cursor trial = *c;
    if (c->speech && take_among(&trial, words) &&
        (take_mark(&trial, ':') || take_mark(&trial, ','))) {
        c->at = trial.at;
    }
}

static bool colon_behind(const struct cursor *c, const char *const *words)
{
    struct cursor trial = *c;
    return c->speech && take_among(&trial, words) && mark_is(&trial, ':');
}

/* Said of a step that has no sentence yet: all of it begins together anyway. */
static bool nothing_before(const struct cursor *c)
{
    return above_count(c) == 0;
}

/* after 5 screens, 0.5 s later, 5 slips: so long after that moment. */
static void seconds_behind(struct cursor *c, struct tie *tie)
{
    struct cursor trial = *c;
    struct measure seconds;
    if (tie->word == TIE_AFTER && take_mark(&trial, ',') && skip_seconds(&trial) &&
        take_words(&trial, "later")) {
        take_mark(c, ',');
        take_seconds(c, &seconds);
        take_words(c, "later");
        tie->word = TIE_SECONDS_AFTER;
        tie->seconds = seconds.value;
    }
}

bool front_tie_read(struct cursor *c, struct tie *tie)
{
    static const char *const thens[] = {
        "then",           "next",       "after that", "after this", "finally",     "and then",
        "lastly",         "from there", "last thing", "to finish",  "after which", "and finally",
        "after all that", "at the end", "in the end", "only then",  NULL};
    static const char *const firsts[] = {"first", "to start", "to begin", "ok",
                                         "okay",  "so",       "now",      NULL};
    static const char *const whiles[] = {"meanwhile",
                                         "at the same time",
                                         "at that same time",
                                         "same time",
                                         "in the meantime",
                                         "meantime",
                                         "while that is happening",
                                         "while this is happening",
                                         "as that happens",
                                         "all the while",
                                         "while this happens",
                                         "as this happens",
                                         "while that happens",
                                         "simultaneously",
                                         NULL};
    static const char *const together[] = {"at the same time", "same time", "simultaneously",
                                           "all together", NULL};
    static const char *const waits[] = {"everybody waits",
                                        "everyone waits",
                                        "nobody moves",
                                        "give it",
                                        "wait",
                                        "hold on",
                                        "pause",
                                        "count",
                                        "everybody holds",
                                        "everyone holds",
                                        "everybody freeze",
                                        "everyone freeze",
                                        "everybody stays",
                                        "everybody freezes",
                                        "everyone freezes",
                                        "hold it",
                                        "hold",
                                        "freeze",
                                        "everybody stands",
                                        "no one moves",
                                        "all stay",
                                        "everybody wait",
                                        "everybody hold",
                                        NULL};
    while (front_word(c, firsts)) {
    }
    const struct token *from = c->at;
    tie->then = front_word(c, thens) || front_ordinal(c);
    const struct token *word = c->at;
    struct cursor wait = *c;
    struct measure seconds;
    if (take_among(&wait, waits) && (take_words(&wait, "for"), skip_seconds(&wait))) {
        take_among(c, waits); /* give it a beat, and then */
        take_words(c, "for");
        take_seconds(c, &seconds);
        *tie = (struct tie){.word = TIE_LATER, .seconds = seconds.value};
        struct cursor stop = *c; /* for a second. Then */
        if (take_mark(&stop, '.') && word_is(&stop, 0, "then")) {
            *c = stop;
        }
        take_mark(c, ',');
        take_words(c, "and");
        take_words(c, "then");
        take_everything(c);
    } else if (nothing_before(c) && colon_behind(c, together) && front_word(c, together)) {
        note_left_out(c, cursor_taken(c, word));
    } else if (front_word(c, whiles)) {
        tie->meanwhile = true;
    } else if (clause_is(c)) {
        if (!clause_read(c, tie)) {
            return false;
        }
        seconds_behind(c, tie);
    }
    bool loose = tie->word == TIE_AS || tie->word == TIE_AT || tie->word == TIE_LATER;
    if (tie->then && (loose || tie->meanwhile)) {
        return then_refuse(c, cursor_taken(c, word));
    }
    if (tie->then || tie->meanwhile || tie->word != TIE_NONE) {
        tie->span = cursor_taken(c, from);
        return take_mark(c, ',') || tie->word == TIE_NONE || comma_may_miss(c, tie->span);
    }
    return true;
}

/* until 3 has cut: what is cut short is so at a beginning. */
static bool until_over(struct cursor *c, const struct event *event)
{
    if (!event->over) {
        return false;
    }
    struct str name = cursor_text(c, event->subject.span);
    struct str verb = phrase_words(event->verb, event->pass, event->screen, false);
    diag_help(c->diags,
              REFUSE(c, TEXT_CLAUSE_HALF, event->span,
                     "`until` takes the moment something begins, not its end"),
              "write `until %.*s %.*s`, or what is done then: `after %.*s %.*s, …`", STR_ARG(name),
              STR_ARG(verb), STR_ARG(name), STR_ARG(verb));
    return true;
}

bool until_read(struct cursor *c, struct event *out)
{
    size_t before = c->refusals;
    if ((c->speech && event_pointed(c, out)) || event_read(c, out)) {
        return !until_over(c, out) && !clause_place(c, out, "until");
    }
    if (c->speech && event_told(c, out)) {
        note_told(c, out);
        return !until_over(c, out);
    }
    if (c->refusals == before) {
        event_refuse(c, "until");
    }
    return false;
}

bool step_tie_read(struct cursor *c, struct tie *tie, struct str *after_title)
{
    const struct token *from = c->at;
    *tie = (struct tie){.word = TIE_NONE};
    *after_title = (struct str){NULL, 0};
    struct cursor trial = *c;
    if (take_words(&trial, "after") && cursor_next(&trial) &&
        cursor_next(&trial)->kind == TOKEN_QUOTED) {
        *after_title = cursor_next(&trial)->text;
        c->at = cursor_next(&trial) + 1;
    } else if (clause_is(c) && !clause_read(c, tie)) {
        return false;
    } else if (tie->word != TIE_NONE && tie->word != TIE_AS && tie->word != TIE_AFTER &&
               tie->word != TIE_WHEN) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_HALF, cursor_taken(c, from),
                         "a step is tied by `as`, `after` or `when`"),
                  "write `step \"Use it\" as 5 screens` or `step \"Swing it\" after \"Curl\"`");
        return false;
    }
    tie->span = cursor_taken(c, from);
    if (cursor_done(c)) {
        return true;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_LEFT_OVER, cursor_span(c), "`%.*s` has no part in this heading",
                     STR_ARG(cursor_text(c, cursor_span(c)))),
              "write `step \"Use it\" as 5 screens` or `step \"Swing it\" after \"Curl\"`");
    return false;
}
