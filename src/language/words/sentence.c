/* SPDX-License-Identifier: MIT */
/* sentence: subject, verb, slots, modifiers, clause, until, and nothing left over. */
#include "language/words/grammar.h"

#include <string.h>

enum phrase_side who_side(const struct who *who)
{
    return who_defends(who) ? FOR_DEFENDERS : FOR_ATTACKERS;
}

/* will, now, and `goes out and` before the verb add nothing. */
static void skip_run_in(struct cursor *c)
{
    static const char *const empty[] = {"will", "now", NULL};
    static const char *const going[] = {"goes", "go", "runs", "run", "comes", "come", NULL};
    while (take_among(c, empty)) {
    }
    struct cursor trial = *c;
    struct phrase phrase;
    if (!take_among(&trial, going)) {
        return;
    }
    take_among(&trial, particle_words);
    if (!take_words(&trial, "and")) {
        return;
    }
    struct cursor verb = trial;
    if (phrase_read(&verb, FOR_ANYONE, &phrase)) {
        c->at = trial.at;
    }
}

/* uses the screen and VERB, uses 5's screen and VERB: behind `uses`. */
static bool take_uses(struct cursor *c)
{
    static const char *const words[] = {"uses", "use", NULL};
    return take_among(c, words);
}

static bool uses_screen_is(const struct cursor *c)
{
    struct cursor trial = *c;
    return take_uses(&trial) && (word_is(&trial, 0, "screen") || word_is(&trial, 1, "screen"));
}

static bool verb_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct phrase phrase;
    skip_run_in(&trial);
    return pair_is(&trial) || uses_screen_is(&trial) || phrase_read(&trial, FOR_ANYONE, &phrase);
}

static bool everyone_read(struct cursor *c, struct who *out)
{
    const struct token *from = c->at;
    if (!take_words(c, "everyone else") && !take_words(c, "everybody else") &&
        !take_words(c, "the others")) {
        return false;
    }
    *out = (struct who){.kind = WHO_EVERYONE_ELSE, .span = cursor_taken(c, from)};
    return true;
}

bool subject_read(struct cursor *c, who_list *out)
{
    struct who who;
    *out = (who_list){NULL, 0, 0};
    if (everyone_read(c, &who)) {
        VEC_PUSH(c->arena, out, who);
        return true;
    }
    if (!who_read(c, &who)) {
        return false;
    }
    VEC_PUSH(c->arena, out, who);
    for (;;) {
        struct cursor_mark mark = cursor_mark(c);
        bool joined = take_mark(c, ',');
        joined = take_words(c, "and") || joined;
        if (!joined || verb_is(c) || !who_read(c, &who)) {
            cursor_back(c, mark);
            return true;
        }
        VEC_PUSH(c->arena, out, who);
    }
}

bool subject_verb_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    who_list list;
    bool both = subject_read(&trial, &list) && verb_is(&trial);
    cursor_back(&trial, mark);
    return both;
}

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

static void refuse_subject(struct cursor *c)
{
    struct span span = cursor_span(c);
    struct str found = cursor_text(c, span);
    if (negated(c) || points_back(c)) {
        return;
    }
    if (verb_is(c)) {
        diag_help(c->diags, REFUSE(c, TEXT_WHO_MISSING, span, "who `%.*s`?", STR_ARG(found)),
                  "begin with the player: `1 %.*s`", STR_ARG(found));
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

/* Who may be the one that acts. */
static bool subject_fits(struct cursor *c, const who_list *list)
{
    for (size_t i = 0; i < list->count; i++) {
        const struct who *who = &list->at[i];
        if (who->kind == WHO_COACH && !c->drill) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_DRILL_ONLY, who->span, "a coach takes part in drills only"),
                      "open it with `drill`, or write a player's number");
            return false;
        }
        if (who->kind == WHO_BALL) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_BALL_ACTS, who->span, "the ball does nothing by itself"),
                      "say who moves it: `1 passes to 2`");
            return false;
        }
        for (size_t k = 0; k < i; k++) {
            if (same_who(who, &list->at[k])) {
                struct str name = cursor_text(c, who->span);
                diag_help(c->diags,
                          REFUSE(c, TEXT_TWICE, who->span, "`%.*s` is named twice", STR_ARG(name)),
                          "name each player once: `3 and 4 cut to the rim`");
                return false;
            }
        }
        if (who_side(who) != who_side(&list->at[0])) {
            diag_help(c->diags,
                      REFUSE(c, TEXT_LIST_UNFIT, who->span,
                             "offense and defense do not share a sentence"),
                      "write two sentences: `3 cuts to the rim` and `x3 trails`");
            return false;
        }
    }
    return true;
}

static struct str subject_words(const struct cursor *c, const who_list *list)
{
    return cursor_text(c, span_join(list->at[0].span, list->at[list->count - 1].span));
}

static void refuse_light(struct cursor *c, struct str who, struct span span)
{
    bool gives = word_is(c, 0, "gives") || word_is(c, 0, "give");
    struct str word = cursor_text(c, span);
    if (gives) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_TWO_MEANINGS, span, "`%.*s` alone is two things", STR_ARG(word)),
                  "write `%.*s passes to 2` or `%.*s hands off to 2`", STR_ARG(who), STR_ARG(who));
        return;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, span,
                     "`%.*s` what? That noun is no pass, screen, cut or shot", STR_ARG(word)),
              "write `%.*s passes to 2` or `%.*s screens for 3`", STR_ARG(who), STR_ARG(who));
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

static void refuse_verb(struct cursor *c, const who_list *list)
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
        refuse_side(c, list, &phrase, cursor_taken(&trial, c->at));
        return;
    }
    if (word_among(c, light_words)) {
        refuse_light(c, who, span);
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
    const char *near = phrase_nearest(c, FOR_ANYONE);
    struct diag *diag = REFUSE(c, TEXT_VERB_UNKNOWN, span, "`%.*s` is no verb of the play language",
                               STR_ARG(cursor_text(c, span)));
    if (near) {
        diag_help(c->diags, diag, "did you mean `%s`?", near);
    } else {
        diag_help(c->diags, diag, "any move without a name of its own is `%.*s %s to left wing`",
                  STR_ARG(who), list->count > 1 ? "go" : "goes");
    }
}

/* `and VERB`, `, VERB`, `then VERB`, `and WHO VERB`: where the next sentence begins. */
struct joint {
    bool then, same_subject;
};
static bool joint_is(const struct cursor *c, enum phrase_side side, struct joint *out,
                     const struct token **begin)
{
    struct cursor trial = *c;
    struct phrase phrase;
    bool joined = take_mark(&trial, ',');
    joined = take_words(&trial, "and") || joined;
    joined = take_mark(&trial, ',') || joined;
    *out = (struct joint){.then = take_words(&trial, "then")};
    if (!joined && !out->then) {
        return false;
    }
    *begin = trial.at;
    struct cursor verb = trial;
    skip_run_in(&verb);
    bool attacks = side == FOR_ATTACKERS && (pair_is(&verb) || uses_screen_is(&verb));
    if (attacks || phrase_read(&verb, side, &phrase)) {
        out->same_subject = true;
        return true;
    }
    return subject_verb_is(&trial);
}

static bool stop_is(const struct cursor *c)
{
    return cursor_done(c) || mark_is(c, '.') || mark_is(c, ';');
}

static int trailing_clause(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    if (!clause_is(c)) {
        return 0;
    }
    if (p->s->tie.word != TIE_NONE || p->s->tie.meanwhile) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_TWO, cursor_span(c), "a second clause in one sentence"),
                  "a sentence waits for one thing: keep one of the two");
        return -1;
    }
    bool then = p->s->tie.then;
    if (!clause_read(c, &p->s->tie)) {
        return -1;
    }
    enum tie_word word = p->s->tie.word;
    if (then && (word == TIE_AS || word == TIE_AT || word == TIE_LATER)) {
        struct span span = cursor_taken(c, from);
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_THEN, span, "`then` and `%.*s` say two different moments",
                         STR_ARG(cursor_text(c, span))),
                  "keep one of them");
        return -1;
    }
    p->s->tie.span = cursor_taken(c, from);
    return 1;
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

static int refuse_left(struct predicate *p)
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
    struct str found = cursor_text(c, span);
    if (word_is(c, 0, "and") || word_is(c, 0, "then")) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_LEFT_OVER, span, "no sentence follows `%.*s`", STR_ARG(found)),
                  "write who does what behind it: `and 3 cuts to the rim`");
        return -1;
    }
    const char *near = nearest_left(c);
    struct diag *diag =
        REFUSE(c, TEXT_LEFT_OVER, span, "`%.*s` has no part in this sentence", STR_ARG(found));
    diag_help(c->diags, diag,
              near ? "did you mean `%s`?" : "leave it out, or make it a sentence of its own", near);
    return -1;
}

static int until_part(struct predicate *p)
{
    struct cursor *c = p->c;
    struct span span = cursor_span(c);
    if (!take_words(c, "until")) {
        return 0;
    }
    if (p->s->until.kind != EVENT_NONE) {
        diag_help(c->diags, REFUSE(c, TEXT_CLAUSE_TWO, span, "a second `until` in one sentence"),
                  "a sentence is cut short by one thing: keep one of the two");
        return -1;
    }
    return until_read(c, &p->s->until) ? 1 : -1;
}

/* One part behind the verb: 1 taken, 0 nothing fits, -1 reported. A comma may stand before all but
 * a slot. */
static int part_read(struct predicate *p)
{
    static int (*const readers[])(struct predicate *) = {modifier_read, trailing_clause,
                                                         until_part};
    struct cursor *c = p->c;
    struct cursor_mark mark = cursor_mark(c);
    bool comma = take_mark(c, ',');
    p->comma_clause = (struct span){0};
    for (size_t i = 0; i < sizeof readers / sizeof *readers; i++) {
        int taken = readers[i](p);
        if (taken != 0) {
            bool clause = comma && readers[i] == trailing_clause;
            p->comma_clause = clause ? p->s->tie.span : p->comma_clause;
            return taken;
        }
    }
    if (!comma) {
        return slot_read(p);
    }
    cursor_back(c, mark);
    return 0;
}

/* 3 cuts to the rim, at 2 s, 4 lifts to top: the clause could belong to either. */
static bool between(struct predicate *p)
{
    if (p->comma_clause.end == 0 || stop_is(p->c)) {
        return false;
    }
    diag_help(p->c->diags,
              REFUSE(p->c, TEXT_CLAUSE_BETWEEN, p->comma_clause,
                     "`%.*s` could belong to the sentence before it or behind it",
                     STR_ARG(cursor_text(p->c, p->comma_clause))),
              "end the first sentence with a full stop, or write two lines");
    return true;
}

static bool predicate_read(struct predicate *p)
{
    struct joint joint;
    const struct token *begin;
    enum phrase_side side = who_side(&p->s->subject.at[0]);
    while (!stop_is(p->c) && !joint_is(p->c, side, &joint, &begin)) {
        int taken = part_read(p);
        if (taken == 0) {
            if (!slots_filled(p)) {
                return false;
            }
            taken = refuse_left(p);
        }
        if (taken < 0) {
            return false;
        }
    }
    return slots_filled(p) && !between(p);
}

static bool double_fits(struct cursor *c, const struct sentence *s)
{
    if (s->screen != SCREEN_DOUBLE || s->subject.count == 2 ||
        s->subject.at[0].kind == WHO_EVERYONE_ELSE) {
        return true;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_DOUBLE_SCREEN, s->verb_span, "a double screen takes two screeners"),
              "write `4 and 5 double screen for 2`");
    return false;
}

/* Behind `uses`: whose screen, and the verb that says how. */
static bool used_screen_read(struct predicate *p)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    take_uses(c);
    int screen = above_screen_read(c, &p->s->subject.at[0], &p->s->object, &p->s->object2);
    if (screen < 0) {
        return false;
    }
    if (screen > 0 && take_words(c, "and")) {
        p->s->verb_span = cursor_taken(c, from);
        return player_fits(p, &p->s->object, 'U') > 0;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_VERB_MISSING, cursor_taken(c, from), "a screen is used how?"),
              "write `%.*s curls off 5`, `fades off 5` or `comes off 5 to top`",
              STR_ARG(subject_words(c, &p->s->subject)));
    return false;
}

/* A verb that uses a screen, by itself or with off. */
static bool use_verb(struct sentence *s)
{
    enum verb other = verb_sibling(s->verb, "off");
    if (other != VERB_COUNT) {
        s->verb = other;
    }
    return verb_row(s->verb)->task == VERB_USE;
}

static bool refuse_use(struct cursor *c, const struct sentence *s)
{
    diag_help(c->diags,
              REFUSE(c, TEXT_VERB_UNKNOWN, s->verb_span, "`%.*s` does not use a screen",
                     STR_ARG(cursor_text(c, s->verb_span))),
              "a screen is used by `curls`, `fades`, `flares`, `comes off`, `rejects`, `drives`");
    return false;
}

/* `3, 5 screens`: two players without `and` and a verb said of one. */
static bool and_before(const struct sentence *s, const struct token *verb)
{
    uint32_t first = s->subject.at[0].span.begin;
    do {
        verb--;
    } while (verb->span.begin > first && !str_is(verb->text, "and"));
    return verb->span.begin > first;
}

static bool refuse_run_on(struct cursor *c, const struct sentence *s)
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

/* Verb and all behind it, for a subject that is known. */
static bool rest_read(struct cursor *c, struct sentence *s)
{
    struct predicate p = {.c = c, .s = s};
    enum phrase_side side = who_side(&s->subject.at[0]);
    skip_run_in(c);
    p.from = c->at;
    if (side == FOR_ATTACKERS && uses_screen_is(c) && !used_screen_read(&p)) {
        return false;
    }
    const struct token *verb = c->at;
    if (!phrase_read(c, side, &p.phrase)) {
        refuse_verb(c, &s->subject);
        return false;
    }
    s->verb = p.phrase.verb;
    s->pass = p.phrase.pass;
    s->screen = p.phrase.screen;
    s->verb_span = cursor_taken(c, verb);
    c->screener = verb_row(s->verb)->task == VERB_SCREEN ? &s->subject.at[0] : NULL;
    if (s->object.kind != WHO_NONE && !use_verb(s)) {
        return refuse_use(c, s);
    }
    s->bare = s->subject.count > 1;
    if (s->bare && p.phrase.with_s && !and_before(s, p.from)) {
        return refuse_run_on(c, s);
    }
    return predicate_read(&p) && double_fits(c, s);
}

/* Nothing but another sentence may follow a pair. */
static bool ends_here(struct cursor *c, const sentence_list *out)
{
    struct joint joint;
    const struct token *begin;
    const struct sentence *last = &out->at[out->count - 1];
    bool two =
        last->verb == VERB_FILLS; /* an exchange: its two have no one subject to go on with */
    if (stop_is(c) || (joint_is(c, who_side(&last->subject.at[0]), &joint, &begin) &&
                       !(two && joint.same_subject))) {
        return true;
    }
    struct span span = cursor_span(c);
    diag_help(c->diags,
              REFUSE(c, TEXT_LEFT_OVER, span, "`%.*s` has no part in this sentence",
                     STR_ARG(cursor_text(c, span))),
              "these words are two sentences: write them out, each with what belongs to it");
    return false;
}

/* One sentence, or the two of a pair; `again` is the subject of the one before when this one shares
 * it. */
static bool one_read(struct cursor *c, const who_list *again, struct tie tie, sentence_list *out)
{
    const struct token *from = c->at;
    size_t before = c->refusals;
    struct sentence s = {.tie = tie};
    if (again) {
        s.subject = *again;
    } else if (!subject_read(c, &s.subject)) {
        refuse_subject(c);
        return false;
    } else if (!subject_fits(c, &s.subject)) {
        return false;
    }
    skip_run_in(c);
    int pair = pair_read(c, &s.subject, tie, out);
    if (pair != 0) {
        return pair > 0 && c->refusals == before && ends_here(c, out);
    }
    if (!rest_read(c, &s)) {
        return false;
    }
    s.span = cursor_taken(c, from);
    if (tie.span.end > 0 && tie.span.begin < s.span.begin) {
        s.span.begin = tie.span.begin;
    }
    if (c->refusals != before) {
        return false;
    }
    VEC_PUSH(c->arena, out, s);
    return true;
}

/* A chain of sentences up to a full stop: the clause in front governs those with a new subject. */
static bool chain_read(struct cursor *c, sentence_list *out)
{
    struct tie tie = {.word = TIE_NONE};
    struct joint joint = {.then = false};
    size_t before = c->refusals;
    if (!front_tie_read(c, &tie)) {
        return false;
    }
    bool fine = c->refusals == before;
    struct tie own = tie;
    for (;;) {
        const who_list *again = joint.same_subject ? &out->at[out->count - 1].subject : NULL;
        if (!one_read(c, again, own, out)) {
            return false;
        }
        const struct sentence *last = &out->at[out->count - 1];
        const struct token *begin;
        if (stop_is(c) || !joint_is(c, who_side(&last->subject.at[0]), &joint, &begin)) {
            return fine;
        }
        c->at = begin;
        own = joint.same_subject || joint.then ? (struct tie){.word = TIE_NONE} : tie;
        if (joint.then) {
            tie = (struct tie){.word = TIE_NONE};
            own.then = !joint.same_subject;
        }
    }
}

bool sentences_read(struct cursor *c, sentence_list *out)
{
    c->here = out;
    c->first = c->at;
    for (;;) {
        while (take_mark(c, '.') || take_mark(c, ';')) {
        }
        if (cursor_done(c)) {
            return true;
        }
        if (!chain_read(c, out)) {
            return false;
        }
    }
}

bool sentence_read(struct cursor *c, struct sentence *out)
{
    sentence_list list = {NULL, 0, 0};
    bool fine = sentences_read(c, &list);
    c->here = NULL;
    if (!fine) {
        return false;
    }
    if (list.count == 0) {
        refuse_subject(c);
        return false;
    }
    if (list.count > 1) {
        struct span span = list.at[1].span;
        diag_help(c->diags, REFUSE(c, TEXT_SENTENCES_MANY, span, "one sentence may stand here"),
                  "put the next one in a line of its own");
        return false;
    }
    *out = list.at[0];
    return true;
}
