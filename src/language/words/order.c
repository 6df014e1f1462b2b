/* SPDX-License-Identifier: MIT */
/* order: what comes first, said the other way round: `before 1 passes, 5 clears`, `3 doesn't go
 * until 2 catches`, `wait for 5 to get there, then 1 goes`; and a moment that names a move no
 * sentence has: `when 4 gets to the corner`. Rules for the second reading. */
#include "language/words/people.h"
#include "language/words/speech.h"

#include <string.h>

static const char *const tie_heads[] = {"when",  "once", "after", "until", "as",
                                        "while", "soon", "where", NULL};

static bool moves_in(const struct cursor *c, const struct who *who)
{
    above_list above = above_sentences(c, false);
    for (size_t i = 0; i < above.count; i++) {
        const struct sentence *s = above.at[i];
        enum verb_task task = verb_row(s->verb)->task;
        bool moves = task != VERB_PASS && task != VERB_SHOOT && task != VERB_GUARD;
        if (moves && acts_in(s, who)) {
            return true;
        }
    }
    return false;
}

/* A moment that names a move which no sentence has. */
struct unsent {
    struct somebody who;
    struct str verb, moment; /* the move's, and that of the moment it is waited for by */
    const char *to;          /* what stands before the place in the move and not in the moment */
    const struct token *clause, *place;
};

/* when 4 gets to the corner, until 3 is at the elbow. */
static bool arrival(struct cursor *c, struct unsent *out)
{
    static const char *const ties[] = {"when",       "once",      "after",      "until",
                                       "as soon as", "only when", "right when", NULL};
    static const char *const there[] = {
        "gets to",        "gets into",   "gets down to", "gets up to",
        "is at",          "is in",       "is on",        "is up at",
        "is down in",     "reaches",     "arrives at",   "arrives in",
        "is ready in",    "is ready at", "gets out to",  "is set in",
        "comes to",       "is set at",   "gets over to", "has reached",
        "has gotten to",  "has got to",  "has moved to", "has arrived at",
        "has arrived in", NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, ties)) {
        return false;
    }
    *out = (struct unsent){
        .verb = STR("goes"), .moment = STR("gets there"), .to = "to", .clause = trial.at};
    if (!somebody_read(&trial, &out->who) || out->who.who.kind != WHO_PLAYER ||
        !take_among(&trial, there)) {
        return false;
    }
    out->place = trial.at;
    if (!spot_read(&trial, true)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* after 5 has posted up on the right block: a verb and where, of a move. */
static bool move_there(struct cursor *c, struct unsent *out)
{
    static const char *const ties[] = {"when",       "once",      "after",     "only after",
                                       "as soon as", "only once", "only when", "right after",
                                       "right when", "as",        "just as",   NULL};
    struct cursor trial = *c;
    if (!take_among(&trial, ties)) {
        return false;
    }
    struct event event;
    *out = (struct unsent){.clause = trial.at};
    if (!somebody_read(&trial, &out->who) || out->who.who.kind != WHO_PLAYER) {
        return false;
    }
    trial.at = out->clause;
    if (!event_read(&trial, &event) || event.kind != EVENT_VERB || event.object.kind != WHO_NONE ||
        verb_row(event.verb)->task != VERB_MOVE || strchr(verb_row(event.verb)->needs, 'S')) {
        return false;
    }
    out->verb = out->moment = phrase_words(event.verb, event.pass, event.screen, false);
    out->place = trial.at;
    bool toward = event.verb == VERB_SETS_UP; /* fakes toward the rim: the way is in the verb */
    bool led = take_among(&trial, place_words);
    if ((!led && !toward) || !spot_read(&trial, true)) {
        return false;
    }
    if (toward) {
        out->verb = out->moment = verb_head(VERB_SETS_UP, false);
        out->to = led ? NULL : "toward";
    }
    c->at = trial.at;
    return true;
}

/* The move is put in front of all, and its moment is named by the verb; `behind`: its last word. */
static void put_in_front(const struct cursor *c, struct recast *r, const struct unsent *move,
                         const struct token *behind, const struct token *end)
{
    *r = (struct recast){.to = end, .told = SPAN_NONE};
    recast_somebody(c, r, &move->who);
    recast_verb(c, r, move->verb);
    if (move->to) {
        recast_word(c, r, move->to);
    }
    recast_copy(c, r, move->place, behind);
    recast_mark(c, r, '.');
    recast_copy(c, r, c->at, move->clause);
    recast_somebody(c, r, &move->who);
    recast_verb(c, r, move->moment);
    recast_copy(c, r, behind, end);
    struct str name = cursor_text(c, move->who.who.span);
    diag_add(c->diags, DIAG_TEXT_VERB_TAKEN, span_join(move->who.from->span, behind[-1].span),
             "no sentence sends %.*s there: `%.*s %.*s%s%s %.*s` was put in front", STR_ARG(name),
             STR_ARG(name), STR_ARG(move->verb), move->to ? " " : "", move->to ? move->to : "",
             STR_ARG(cursor_text(c, span_join(move->place->span, behind[-1].span))));
}

/* A sentence behind the moment sends him somewhere: the moment is of that one. */
static bool moves_behind(const struct cursor *c, const struct token *at, const struct unsent *move)
{
    for (; at < c->end && !sentence_ends(at); at++) {
        struct cursor next = look_between(c, at + 1, c->end);
        struct cursor_mark mark = cursor_mark(&next);
        struct phrase phrase;
        bool acts = at->kind == TOKEN_NUMBER && !at->possessive &&
                    (int)at->number == move->who.who.number && !token_is_among(at - 1, tie_heads) &&
                    phrase_read(&next, FOR_ATTACKERS, &phrase) &&
                    verb_row(phrase.verb)->task == VERB_MOVE;
        cursor_back(&next, mark);
        if (acts) {
            return true;
        }
    }
    return false;
}

static bool brought(const struct cursor *c, struct recast *r,
                    bool (*moment)(struct cursor *, struct unsent *))
{
    const struct token *end = chain_end(c);
    for (const struct token *at = c->at; at < end; at++) {
        struct cursor trial = look_between(c, at, end);
        struct unsent move;
        if (at->kind == TOKEN_WORD && moment(&trial, &move) && !moves_in(c, &move.who.who) &&
            !moves_behind(c, trial.at, &move)) {
            put_in_front(c, r, &move, trial.at, end);
            return true;
        }
    }
    return false;
}

bool arrival_brought(const struct cursor *c, struct recast *r)
{
    return brought(c, r, arrival);
}

bool move_brought(const struct cursor *c, struct recast *r)
{
    return brought(c, r, move_there);
}

/* Behind a clause: its comma, `then`, and who goes on, where that is said again. */
static bool take_goes_on(struct cursor *c)
{
    bool joined = take_joint(c);
    struct cursor trial = *c;
    if (take_among(&trial, he_or_she) && verb_begins(&trial)) {
        c->at = trial.at;
    }
    return joined && verb_begins(c);
}

/* waits, stays on the wing. */
static bool take_holds(struct cursor *c, const char *const *holds)
{
    if (!take_among(c, holds)) {
        return false;
    }
    struct cursor where = *c;
    if (take_among(&where, place_words) && spot_here(&where)) {
        c->at = where.at;
    }
    return true;
}

/* before passing to him: to whom the moment in front is of; gives how far it was copied. */
static const struct token *copy_him(const struct cursor *c, struct recast *r,
                                    const struct token *at, const struct event *event)
{
    bool to = at + 1 < c->end && token_is_word(at, "to");
    const struct token *him = to ? at + 1 : at;
    bool is = him < c->end && (token_is_word(him, "him") || token_is_word(him, "her"));
    if (!is || event->subject.kind != WHO_PLAYER) {
        return at;
    }
    recast_copy(c, r, at, him);
    recast_number(c, r, event->subject.number);
    return him + 1;
}

/* Where `before` stands in the sentence; else its end. */
static const struct token *before_word(const struct cursor *c)
{
    const struct token *at = c->at;
    while (at < c->end && !token_is_word(at, "before") && !token_is_mark(at, '.')) {
        at++;
    }
    return at < c->end && token_is_word(at, "before") ? at : c->end;
}

/* 3 doesn't go until 2 catches, then cuts: when 2 catches, 3 cuts; 1 holds it until 4 gets there,
 * then drives. */
bool not_until(const struct cursor *c, struct recast *r)
{
    static const char *const waits[] = {
        "doesn't go",  "doesn't move",   "doesn't leave", "does not go", "does not move",
        "doesn't cut", "doesn't come",   "doesn't start", "can't go",    "can't move",
        "can't leave", "don't go",       "don't move",    "don't leave", "holds spot",
        "won't go",    "does not leave", "isn't going",   NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    struct event event;
    static const char *const holds[] = {
        "holds it", "holds ball",      "keeps it",    "keeps ball", "holds",       "waits",
        "stays",    "waits with ball", "waits there", "stays put",  "stays there", "holds on to it",
        NULL};
    if (!somebody_read(&trial, &who)) {
        return false;
    }
    struct cursor holding = trial;
    bool held = !take_among(&trial, waits);
    if ((held && !take_holds(&trial, holds)) || !take_words(&trial, "until")) {
        return false;
    }
    const struct token *from = trial.at, *line_end = trial.end;
    trial.end = before_word(&trial); /* waits until 3 is up before passing to 3 */
    if (!event_read(&trial, &event) || (!part_ends(&trial) && !clause_ends(trial.at))) {
        trial.at = from;
        if (!event_told(&trial, &event)) {
            return false;
        }
    }
    const struct token *to = trial.at;
    trial.end = line_end;
    struct cursor end = trial;
    bool ball = held && word_is(&holding, 1, "it");
    ball = ball || (held && word_is(&holding, 1, "ball"));
    if (ball && event.over && stop_is(&end)) { /* and nothing behind it: he holds it */
        recast_somebody(c, r, &who);
        recast_word(c, r, "stays");
        r->told = span_join(from[-1].span, to[-1].span);
        r->to = to;
        return true;
    }
    struct str bare;
    struct phrase phrase;
    if (take_words(&trial, "before") && phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare)) {
        recast_when(c, r, from, to);
        recast_somebody(c, r, &who);
        recast_verb(c, r, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
        r->to = copy_him(c, r, trial.at, &event);
        return true;
    }
    if ((held && !event.over) || !take_goes_on(&trial)) { /* until 2 catches: as it stands */
        return false;
    }
    recast_when(c, r, from, to);
    recast_somebody(c, r, &who);
    r->to = trial.at;
    return true;
}

/* the big, the point guard: by what he is called. */
static bool called(struct cursor *c, struct who *out)
{
    const struct person_row *row = take_person(c);
    return row && person_above(c, row, out) && out->kind == WHO_PLAYER;
}

/* wait until 5 posts up, then throw it in: when 5 posts up. */
static bool wait_until(const struct cursor *c, struct recast *r)
{
    static const char *const waits[] = {"wait until",    "hold until",       "hold it until",
                                        "keep it until", "be patient until", NULL};
    struct cursor trial = cursor_look(c);
    struct event event;
    struct recast next;
    if (!take_among(&trial, waits)) {
        return false;
    }
    const struct token *from = trial.at;
    if (!event_read(&trial, &event)) {
        return false;
    }
    const struct token *to = trial.at;
    if (!take_joint(&trial) || !(subject_verb_is(&trial) || recast_find(&trial, &next))) {
        return false;
    }
    recast_when(c, r, from, to);
    r->to = trial.at;
    return true;
}

/* 1 waits for 4 to come up then passes to 4: 4 comes up, and when 4 gets there 1 passes. */
static bool waits_for_move(const struct cursor *c, struct recast *r)
{
    static const char *const waits[] = {
        "waits for", "wait for", "holds it for",   "hold it for", "holds for", "hold for",
        "waits on",  "wait on",  "holds ball for", "waiting for", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who = {.from = NULL}, other;
    struct phrase phrase;
    struct who holder;
    bool named = player_here(&trial, &who);
    if (!take_among(&trial, waits) || !player_here(&trial, &other) || !take_words(&trial, "to") ||
        !phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.with_s ||
        verb_row(phrase.verb)->task == VERB_SCREEN) {
        return false;
    }
    bool ball = verb_needs_ball(phrase.verb); /* to pass to 2: which untold.c sees to */
    const struct token *from = trial.at;
    while (trial.at < trial.end && !clause_ends(trial.at)) {
        trial.at++;
    }
    const struct token *end = trial.at;
    bool joined = take_joint(&trial), other_acts = joined && subject_verb_is(&trial);
    if (!joined || (!other_acts && !verb_begins(&trial)) ||
        (!named && !other_acts && !above_holder(c, &holder))) {
        return false;
    }
    if (ball && verb_row(phrase.verb)->task == VERB_CARRY) {
        return false;
    }
    if (!ball && !moves_in(c, &other.who)) {
        recast_somebody(c, r, &other);
        recast_verb(c, r, phrase_words(phrase.verb, PASS_PLAIN, SCREEN_PLAIN, false));
        recast_copy(c, r, from, end);
        recast_mark(c, r, '.');
    }
    recast_word(c, r, "when");
    recast_somebody(c, r, &other);
    recast_verb(c, r,
                ball ? phrase_words(phrase.verb, phrase.pass, SCREEN_PLAIN, false)
                     : STR("gets there"));
    recast_copy(c, r, from, ball ? end : from);
    recast_mark(c, r, ',');
    if (!other_acts && named) {
        recast_somebody(c, r, &who);
    } else if (!other_acts) {
        recast_number(c, r, holder.number);
    }
    r->to = trial.at;
    return true;
}

/* wait for the screen, then 1 drives; wait for 5 to get there and then 1 goes. */
static bool wait_for_it(const struct cursor *c, struct recast *r)
{
    static const char *const waits[] = {"wait for", "waiting for", "wait on", "hold for", NULL};
    static const char *const there[] = {
        "to get there", "to come across", "to set it", "to be planted", "to get set",
        "to set",       "to arrive",      "to be set", "to come",       "to get up",
        "to be there",  "to get to spot", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    struct event event;
    if (!take_among(&trial, waits)) {
        return false;
    }
    const struct token *from = trial.at;
    bool noun = above_event_read(&trial, &event) > 0;
    bool somebody = !noun && (person_read(&trial, &who.who) || called(&trial, &who.who));
    bool known = noun || (somebody && (take_among(&trial, there) || moves_in(c, &who.who)));
    const struct token *to = trial.at;
    if (!known) {
        return false;
    }
    if (!take_joint(&trial) || !subject_verb_is(&trial)) {
        return false;
    }
    recast_word(c, r, "when");
    if (noun) {
        recast_copy(c, r, from, to);
        if (event.kind == EVENT_VERB && verb_row(event.verb)->task == VERB_SCREEN) {
            recast_verb(c, r, STR("is set"));
        }
    } else if (who.who.kind == WHO_PLAYER) {
        recast_number(c, r, who.who.number);
        recast_verb(c, r, STR("gets there"));
    } else {
        return false;
    }
    recast_mark(c, r, ',');
    r->to = trial.at;
    return true;
}

bool wait_for(const struct cursor *c, struct recast *r)
{
    return waits_for_move(c, r) || wait_until(c, r) || wait_for_it(c, r);
}

/* 1 dribbles to the wing while 3 moves to the top: what no sentence says of 3, this one does. */
bool while_behind(const struct cursor *c, struct recast *r)
{
    const struct token *end = chain_end(c);
    for (const struct token *at = c->at; at < end; at++) {
        struct cursor rest = look_between(c, at + 1, end);
        struct somebody who;
        if (at == c->at || !token_is_word(at, "while") || token_is_mark(&at[-1], ',') ||
            token_is_word(&at[-1], "and") || !player_here(&rest, &who) || moves_in(c, &who.who) ||
            !verb_begins(&rest)) {
            continue;
        }
        struct cursor first = look_between(c, c->at, at), second = look_between(c, at + 1, end);
        struct somebody other;
        struct cursor subject = first;
        bool same = player_here(&subject, &other) && same_who(&other.who, &who.who);
        struct cursor front = first;
        bool tied = clause_is(&front); /* after the pass 1 cuts while 4 lifts */
        if (same || !(tied || whole_sentence_is(&first)) || !whole_sentence_is(&second)) {
            return false;
        }
        recast_copy(c, r, c->at, at);
        recast_mark(c, r, '.');
        recast_word(c, r, "meanwhile");
        recast_copy(c, r, at + 1, end);
        r->to = end;
        return true;
    }
    return false;
}

/* The tokens with `him` as the one who is named in what stood in front of them; 5 has to be up at
 * the nail: 5 goes to the nail. */
static void copy_named(const struct cursor *c, struct recast *r, const struct token *from,
                       const struct token *end, const struct somebody *who)
{
    static const char *const musts[] = {"has to be",     "must be",    "needs to be", "should be",
                                        "has got to be", "has to get", "must get",    NULL};
    while (from < end) {
        struct cursor must = look_between(c, from, end);
        bool him = token_is_word(from, "him") || token_is_word(from, "her");
        if (him && (from + 1 == end || from[1].kind == TOKEN_MARK)) {
            recast_number(c, r, who->who.number);
            from++;
        } else if (take_among(&must, musts)) {
            while (take_among(&must, particle_words)) {
            }
            bool led = take_among(&must, place_words);
            recast_word(c, r, "goes");
            recast_word(c, r, "to");
            from = led ? must.at : from;
            if (!led) {
                return;
            }
        } else {
            recast_copy(c, r, from, from + 1);
            from++;
        }
    }
}

/* Who acts there, or has to be somewhere. */
static bool acts_here(const struct cursor *c)
{
    static const char *const musts[] = {"has to be", "must be",       "needs to be",
                                        "should be", "has got to be", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    return subject_verb_is(c) || (player_here(&trial, &who) && take_among(&trial, musts));
}

/* before passing to 2, 1 dribbles to the wing: he dribbles, then he passes. */
static bool before_doing(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct str bare;
    struct somebody who;
    if (!take_words(&trial, "before") || !phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare)) {
        return false;
    }
    const struct token *object = trial.at, *comma = object, *end = chain_end(c);
    while (comma < end && !token_is_mark(comma, ',')) {
        comma++;
    }
    struct cursor main = look_between(c, comma + (comma < end), end), named = main;
    if (comma == end || !player_here(&named, &who) || who.who.kind != WHO_PLAYER ||
        !whole_sentence_is(&main)) {
        return false;
    }
    recast_copy(c, r, comma + 1, end);
    recast_mark(c, r, '.');
    recast_somebody(c, r, &who);
    recast_verb(c, r, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
    recast_copy(c, r, object, comma);
    r->to = end;
    return true;
}

/* before 1 passes to 2, 5 clears: 5 clears, then 1 passes to 2. */
bool before_in_front(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    if (before_doing(c, r)) {
        return true;
    }
    if (!take_words(&trial, "before") || !subject_verb_is(&trial)) {
        return false;
    }
    struct cursor first = trial;
    const struct token *from = trial.at, *end = chain_end(c);
    for (const struct token *at = from; at < end; at++) {
        struct cursor main = cursor_look(c);
        main.at = at + 1;
        if (!token_is_mark(at, ',') || !acts_here(&main)) {
            continue;
        }
        first.end = at;
        struct somebody who;
        struct cursor named = first;
        if (!whole_sentence_is(&first) || !player_here(&named, &who)) {
            return false;
        }
        copy_named(c, r, at + 1, end, &who);
        recast_mark(c, r, ',');
        recast_word(c, r, "then");
        recast_copy(c, r, from, at);
        r->to = end;
        return true;
    }
    return false;
}
