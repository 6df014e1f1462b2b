/* SPDX-License-Identifier: MIT */
/* run_on_say: one clause of a run-on line, put as the language has it: without what leads up to it,
 * with who acts in it named, and what he does said plainly (the rows of run_on.def). See run_on.h.
 * Takes tokens, gives tokens; reads no sentence. */
#include "language/words/loose_read.h"
#include "language/words/run_on.h"

/* What leads up to who acts, and tells nothing by itself: we want, let's have. */
static const char *const openers[] = {"what we want here is",
                                      "what we want is",
                                      "what i want is",
                                      "what i want here is",
                                      "what we're gonna do is",
                                      "what we're going to do is",
                                      "what we do is",
                                      "what we do here is",
                                      "what he does is",
                                      "what she does is",
                                      "what happens is",
                                      "the idea is",
                                      "the key is",
                                      "the biggest thing is",
                                      "the whole thing is",
                                      "the thing is",
                                      "the play is",
                                      "it starts with",
                                      "i want",
                                      "i'd like",
                                      "i need",
                                      "i want to see",
                                      "i'd like to see",
                                      "we want",
                                      "we want to see",
                                      "we want to have",
                                      "we want to get",
                                      "we need",
                                      "we'd like",
                                      "we just want",
                                      "we like",
                                      "let's have",
                                      "lets have",
                                      "let's get",
                                      "let's let",
                                      "let's say",
                                      "let's start with",
                                      "let's go with",
                                      "let's bring",
                                      "let's send",
                                      "we have",
                                      "we've got",
                                      "we got",
                                      "we get",
                                      "we're gonna have",
                                      "we're going to have",
                                      "we're gonna get",
                                      "we're going to get",
                                      "we'll have",
                                      "we're gonna start with",
                                      "we're going to start with",
                                      "we start with",
                                      "start with",
                                      "we're gonna bring",
                                      "we're gonna send",
                                      "we start off with",
                                      "starting with",
                                      "you've got",
                                      "you got",
                                      "you have",
                                      "you'll have",
                                      "have",
                                      "we bring",
                                      "we're bringing",
                                      "bring",
                                      "we send",
                                      "we're sending",
                                      "send",
                                      "let",
                                      "we let",
                                      "you'll see",
                                      "you see",
                                      "i got",
                                      "i've got",
                                      "i have",
                                      "i'm gonna have",
                                      "we see",
                                      "this is",
                                      "it is",
                                      "that is",
                                      "there is",
                                      "now we have",
                                      "get",
                                      "say",
                                      "that means",
                                      "which means",
                                      "make sure",
                                      "go ahead and have",
                                      "we put",
                                      "put",
                                      "so we have",
                                      "watch",
                                      "see",
                                      "look for",
                                      "with",
                                      "player",
                                      "number",
                                      "our",
                                      "so then",
                                      "once",
                                      "we want our",
                                      "for us",
                                      "the first thing is",
                                      "the next thing is",
                                      "the quick one is",
                                      NULL};

/* Past openers in front of a player. */
const struct token *run_on_past_openers(const struct cursor *c, const struct token *at)
{
    static const char *const two[] = {"player", "number", NULL};
    struct cursor trial = line_look(c, at);
    const struct token *from = at;
    while (trial.at < c->end && take_among(&trial, openers)) {
        trial.at = past_sounds(trial.at, c->end);
        take_among(&trial, two);
        if (attacker_at(trial.at, c->end) ||
            (trial.at < c->end && trial.at->kind == TOKEN_DEFENDER) || word_is(&trial, 0, "ball")) {
            from = trial.at;
        }
    }
    return from;
}

/* ---- who acts ---- */

/* Done with the ball in hand. */
static const char with_ball[] =
    "pass|throw|hit|feed|find|give|swing|skip|lob|dump|kick|drop it|dish|hand|shoot|drive|dribble|"
    "score|finish|lay it|pull up|rise up|attack|look|deliver|reverse|inbound|enter|pitch|pull|"
    "take it|bring it|put it|get it to|get it in|get it over|get it inside|get it back to|let it|"
    "get ball to|move it|one more|spray|flip it|bounce|fire|whip|rip|penetrate|turn corner|"
    "turns corner|get downhill|send it|hold it|keep it|push it|flip it|fake|wait|hold";

static bool needs_ball(const struct cursor *c, const struct token *verb)
{
    return verb < c->end && said_at(verb, c->end, with_ball) != NULL;
}

int run_on_holder(const struct cursor *c)
{
    struct who who;
    return above_holder(c, &who) && who.kind == WHO_PLAYER ? who.number : 0;
}

static int number_of(const struct who *who)
{
    return who->kind == WHO_PLAYER ? who->number : 0;
}

/* he, behind what was said last; 0: it could be either of two. */
static int he_is(const struct cursor *c, const struct run_on_people *people,
                 const struct token *verb)
{
    static const char rolls[] = "roll|pop|slip|seal|dive|rescreen|re screen|step out|short roll|"
                                "ghost|flip|duck";
    static const char uses[] =
        "come off|curl|use|go off|fade|cut off|come around|come over|run off|reject|refuse|turn";
    static const char gets[] = "get|catch|receive|take handoff|take hand off|take it";
    const struct sentence *last =
        c->here && c->here->count > 0 ? &c->here->at[c->here->count - 1] : NULL;
    if (needs_ball(c, verb)) {
        return run_on_holder(c);
    }
    if (!last || last->subject.count != 1) {
        return people->said;
    }
    int acts = number_of(&last->subject.at[0]), other = number_of(&last->object);
    enum verb_task task = verb_row(last->verb)->task;
    if (task == VERB_SCREEN && other && verb < c->end) {
        return said_at(verb, c->end, rolls)                                    ? acts
               : said_at(verb, c->end, uses) || said_at(verb, c->end, gets)    ? other
               : people->said == acts && !said_at(verb, c->end, "go|come|cut") ? acts
                                                                               : 0;
    }
    if (task == VERB_PASS && other && verb < c->end) {
        return said_at(verb, c->end, gets) ? acts : people->said == other ? other : acts;
    }
    return people->said ? people->said : acts;
}

static void tell_who(const struct cursor *c, struct span span, int number)
{
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, span,
                                 "who does this is not named: %d was taken", number);
    diag_help(c->diags, diag, "to have another, begin with the number: `%d goes`",
              number == 4 ? 3 : 4);
}

/* Who acts, in the words of the clause. */
struct actor {
    const struct token *from, *to; /* the words for him; to: where what he does begins */
    int number;                    /* 0: several, or no attacker */
    bool named;
};

static const char *const you_words[] = {"you", "you're", "you'll", "you've", NULL};
static const char *const we_words[] = {"we", "we're", "we'll", "we've", "let's", "lets", NULL};

static bool said_for_all(const struct token *at)
{
    static const char *const words[] = {"i", "i'm", "guys", NULL};
    return token_is_among(at, you_words) || token_is_among(at, we_words) ||
           token_is_among(at, words);
}

/* To whom it is said, or who has the ball, where nobody is named. */
static int whom_said_to(const struct cursor *c, const struct run_on_people *people,
                        const struct token *from, const struct token *verb)
{
    if (token_is_among(from, you_words) && people->addressed) {
        return people->addressed;
    }
    if (needs_ball(c, verb) || said_at(verb, c->end, "go to|go inside|go back|go in|get") ||
        token_is_among(from, we_words)) {
        return run_on_holder(c);
    }
    return token_is_among(from, you_words) ? people->said : 0;
}

/* 4 set it: said to him. */
static bool told_to_him(const struct cursor *c, const struct token *next)
{
    const struct token *verb = run_on_past_aux(c, next);
    return verb < c->end && verb == next && !ends_in_s(verb) && !ends_in_ing(verb) &&
           run_on_verb(c, verb);
}

static bool actor_find(const struct cursor *c, const struct token *at, struct run_on_people *people,
                       struct actor *out)
{
    size_t count;
    const struct token *people_end = players_end(c, at, &count);
    *out = (struct actor){.from = at, .to = at};
    if (at->kind == TOKEN_NUMBER && at->possessive) { /* four's gonna */
        const struct token *aux = run_on_past_aux(c, at + 1);
        bool is =
            aux > at + 1 || token_is_among(at + 1, (const char *const[]){"got", "gonna", NULL});
        if (is) {
            out->number = (int)at->number;
            out->named = true;
            out->to = at + 1;
            return true;
        }
        return false;
    }
    if (count > 0) {
        out->number = count == 1 ? attacker_at(at, c->end) : 0;
        out->named = true;
        out->to = people_end;
        const struct token *next = past_sounds(people_end, c->end);
        const struct token *where = run_on_past_where(c, next);
        if (where) {
            note_left_out(c, span_join(next->span, where[-1].span));
            out->to = next = where;
        }
        bool you = next < c->end && (token_is_among(next, you_words) || told_to_him(c, next));
        people->addressed = you ? out->number : people->addressed;
        return true;
    }
    const struct token *verb = run_on_past_aux(c, at + 1);
    if (token_is_among(at, he_or_she)) {
        out->to = at + 1;
        out->number = he_is(c, people, verb);
        return out->number != 0;
    }
    if (said_for_all(at)) {
        out->to = at + 1;
        out->number = whom_said_to(c, people, at, verb);
        return out->number != 0;
    }
    verb = run_on_past_aux(c, at);
    if (verb < c->end && run_on_verb(c, verb)) {
        bool third = ends_in_s(verb);
        int holder = run_on_holder(c);
        out->number = !third && needs_ball(c, verb) && people->said != holder && !people->addressed
                          ? holder
                          : people->said;
        return out->number != 0;
    }
    return false;
}

/* ---- what he does ---- */

/* comes up and sets, come set, goes screens: of two verbs the first only leads there. */
const struct token *run_on_past_run_in(const struct cursor *c, const struct token *at)
{
    static const char *const goes[] = {"goes", "go",      "comes",  "come", "runs", "run", "steps",
                                       "step", "sprints", "sprint", "gets", "get",  NULL};
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, goes)) {
        return at;
    }
    take_particles(&trial);
    take_words(&trial, "right");
    bool joined = take_words(&trial, "and");
    struct cursor noun = trial;
    bool verb =
        trial.at < c->end && verb_begins(&noun) && trial.at->kind == TOKEN_WORD &&
        !token_is_among(trial.at, (const char *const[]){"down", "right", "left", "up", NULL});
    return verb && (joined || ends_in_s(trial.at) == ends_in_s(at)) && trial.at > at ? trial.at
                                                                                     : at;
}

/* dribbling, to dribble, dribbles: adds the verb as one says it of him; gives where it ends. */
static const struct token *put_verb(const struct cursor *c, const struct token *at,
                                    struct recast *out)
{
    struct cursor trial = line_look(c, at);
    struct phrase phrase;
    struct str bare;
    struct cursor here = line_look(c, at);
    if (at < c->end && at->kind == TOKEN_WORD && at->text.size > 4 && ends_in_ing(at) &&
        phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare)) {
        put_third(&here, out, bare);
        return trial.at;
    }
    return at;
}

/* 2 comes over and 4 hits him: he is the one who came. */
static int him_is(const struct cursor *c, const struct run_on_people *people, int acts)
{
    const struct sentence *last =
        c->here && c->here->count > 0 ? &c->here->at[c->here->count - 1] : NULL;
    int holder = run_on_holder(c);
    int freed = last && verb_row(last->verb)->task == VERB_SCREEN ? number_of(&last->object) : 0;
    if (freed && freed != acts) { /* screens for 2 and 1 hits him */
        return freed;
    }
    return people->said && people->said != acts ? people->said : holder != acts ? holder : 0;
}

static bool names_him(const struct cursor *c, const struct token *at)
{
    static const char *const behind[] = {
        "for", "on",   "in",  "at", "back", "down",   "up",      "right", "with", "and", "there",
        "off", "over", "out", "if", "to",   "coming", "cutting", "wide",  "a",    "the", NULL};
    if (token_is_word(at, "him")) {
        return true;
    }
    return token_is_word(at, "her") &&
           (at + 1 >= c->end || at[1].kind == TOKEN_MARK || token_is_among(at + 1, behind));
}

/* gives it to you, behind you: to whom it was said last. */
static int you_is(const struct cursor *c, const struct token *at,
                  const struct run_on_people *people, int acts)
{
    static const char *const before[] = {
        "to",    "for",    "behind", "hits", "hit", "finds", "find", "of",     "off", "past",
        "feeds", "around", "by",     "with", "on",  "gives", "give", "toward", NULL};
    return token_is_word(at, "you") && at > c->at && token_is_among(at - 1, before) &&
                   people->addressed != acts
               ? people->addressed
               : 0;
}

static void put_rest(const struct cursor *c, const struct token *at,
                     const struct run_on_people *people, int acts, struct recast *out)
{
    for (; at < c->end; at++) {
        int him = names_him(c, at) ? him_is(c, people, acts) : you_is(c, at, people, acts);
        if (!him) {
            recast_copy(c, out, at, at + 1);
            continue;
        }
        struct cursor here = line_look(c, at);
        recast_number(&here, out, him);
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_HEARD, at->span, "`%.*s` was taken as `%d`",
                     STR_ARG(cursor_text(c, at->span)), him);
        diag_help(c->diags, diag, "write it so, if it is meant");
    }
}

/* goes on to 3, goes inside to 5: of one who has the ball, with another behind it: he passes. */
static const struct token *goes_to(const struct cursor *c, const struct token *at)
{
    static const char *const goes[] = {"goes", "go", "gets it", "get it", "back", NULL};
    static const char *const ways[] = {"on",     "over",  "back",     "right away", "inside",
                                       "in",     "right", "straight", "quickly",    "quick",
                                       "across", "down",  NULL};
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, goes) && !word_is(&trial, 0, "to") && !word_is(&trial, 0, "over")) {
        return NULL;
    }
    while (take_among(&trial, ways)) {
    }
    bool to = take_words(&trial, "to") || take_words(&trial, "into");
    return to && attacker_at(trial.at, c->end) ? trial.at : NULL;
}

/* the ball comes out to 2, it's the kick to 1: it is passed to him. */
static const struct token *ball_goes(const struct cursor *c, const struct token *at)
{
    static const char *const things[] = {"ball", "it is", "pass", "it",    "that is",
                                         "kick", "one",   "we",   "entry", NULL};
    static const char *const flies[] = {
        "goes",     "comes",         "gets",       "is",     "swings",     "a",      "the",
        "in",       "out",           "up",         "back",   "over",       "quick",  "kick",
        "one more", "pass",          "skip",       "swing",  "entered",    "thrown", "passed",
        "inside",   "right",         "down",       "first",  "gets swung", "swung",  "reversed",
        "lob",      "gets reversed", "quickly",    "kicked", "entry",      "drop",   "dump",
        "throw",    "goes right",    "first pass", "read",   "look",       "going",  NULL};
    struct cursor trial = line_look(c, at);
    if (!take_among(&trial, things)) {
        return NULL;
    }
    while (take_among(&trial, flies)) {
    }
    bool to = take_words(&trial, "to") || take_words(&trial, "into");
    return to && attacker_at(trial.at, c->end) ? trial.at : NULL;
}

static void put_pass(const struct cursor *c, const struct token *at, int from, struct recast *out)
{
    struct cursor here = line_look(c, at);
    recast_number(&here, out, from);
    recast_word(&here, out, "passes");
    recast_word(&here, out, "to");
}

/* What stands around the clause says whether it is tied to the one before. */
static void put_joint(const struct cursor *c, const struct run_on_piece *piece, struct recast *out,
                      bool other)
{
    struct cursor here = line_look(c, piece->from);
    if (piece->meanwhile) {
        recast_word(&here, out, "meanwhile");
    } else if (piece->then && other && c->here && c->here->count > 0) {
        recast_word(&here, out, "then");
    }
}

/* The ball goes to somebody: whoever has it passes. */
static bool say_pass(const struct cursor *c, const struct run_on_piece *piece,
                     const struct token *at, struct run_on_people *people, struct recast *out,
                     struct recast *said)
{
    int holder = run_on_holder(c);
    const struct token *ball = ball_goes(c, at);
    int to = ball ? attacker_at(ball, c->end) : 0;
    if (!to || !holder || to == holder) {
        return false;
    }
    put_joint(c, piece, out, holder != people->said);
    put_pass(c, at, holder, said);
    recast_copy(c, said, ball, c->end);
    people->said = people->moved = to;
    return true;
}

/* What the actor does, behind who he is. */
static void put_deed(const struct cursor *c, const struct actor *actor, const struct token *verb,
                     bool plainly, const struct run_on_people *people, struct recast *said)
{
    if (actor->named && !actor->from->possessive) {
        size_t count;
        recast_copy(c, said, actor->from, players_end(c, actor->from, &count));
    } else {
        recast_number(c, said, actor->number);
    }
    put_rest(c, plainly ? put_verb(c, verb, said) : verb, people, actor->number, said);
}

/* Somebody does something. */
static bool say_deed(const struct cursor *c, const struct run_on_piece *piece,
                     const struct token *at, struct run_on_people *people, struct recast *out,
                     struct recast *said)
{
    struct actor actor;
    if (!actor_find(c, at, people, &actor)) {
        return false;
    }
    put_joint(c, piece, out, actor.number == 0 || actor.number != people->said);
    int holder = run_on_holder(c);
    const struct token *aux = run_on_past_aux(c, actor.to), *verb = run_on_past_run_in(c, aux);
    bool has_ball = holder && actor.number == holder;
    const struct token *to = has_ball ? goes_to(c, verb) : NULL;
    to = !to && has_ball ? goes_to(c, actor.to) : to;
    if (to) {
        put_pass(c, at, holder, said);
        recast_copy(c, said, to, c->end);
    } else {
        put_deed(c, &actor, verb, aux > actor.to || at > piece->from, people, said);
    }
    if (!actor.named) {
        tell_who(c, span_join(at->span, verb < c->end ? verb->span : at->span), actor.number);
    }
    people->said = actor.number ? actor.number : people->said;
    people->moved = actor.number && !has_ball ? actor.number : people->moved;
    return true;
}

bool run_on_say(const struct cursor *line, const struct run_on_piece *piece,
                struct run_on_people *people, struct recast *out, bool *nothing)
{
    struct cursor part = look_between(line, piece->from, piece->to);
    const struct token *at = run_on_past_openers(&part, past_sounds(piece->from, piece->to));
    struct recast said = {.to = NULL}, rows = {.to = NULL};
    part.at = part.first = at;
    *nothing = at >= part.end;
    if (*nothing) {
        return true;
    }
    if (!say_pass(&part, piece, at, people, out, &said) &&
        !say_deed(&part, piece, at, people, out, &said)) {
        put_joint(&part, piece, out, true);
        recast_copy(&part, &said, at, part.end);
    }
    struct cursor plain = recast_line(&part, &said);
    const struct recast *all = said_plainly(&plain, &rows) ? &rows : &said;
    recast_copy(&part, out, all->tokens.at, all->tokens.at + all->tokens.count);
    *nothing = all->tokens.count == 0;
    return true;
}
