/* SPDX-License-Identifier: MIT */
/* upended: what happens first said behind, or with its verb before who acts: `only then does 1
 * drive`, `not until 2 has cleared does 5 post up`, `having screened, 5 pops`, `5 clears before 4
 * rim-runs`, `by the time 1 gets there 4 has lifted`, `whereupon 3 fills`. Put in its order, for
 * the second reading; rules of recast.def. */
#include <string.h>

#include "language/words/people.h"
#include "language/words/unfold.h"

/* Back over `and`, `but` and a comma, which the joint of sentences does not need. */
static const struct token *before_joints(const struct cursor *c, const struct token *at)
{
    static const char *const joints[] = {"and", "but", "so", NULL};
    while (at > c->at && (at[-1].filler || token_is_mark(&at[-1], ',') ||
                          (at[-1].kind == TOKEN_WORD && token_is_among(&at[-1], joints)))) {
        at--;
    }
    return at;
}

static bool subject_here(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    who_list list;
    bool here = subject_read(&trial, &list);
    cursor_back(&trial, mark);
    return here;
}

/* ---- only then does 1 drive; whereupon 3 fills; at that moment 4 cuts ---- */

static const char *const then_words[] = {"only then",
                                         "whereupon",
                                         "at which point",
                                         "upon which",
                                         "at which",
                                         "following which",
                                         "right after that",
                                         "directly after that",
                                         "immediately after that",
                                         "straight after that",
                                         "and not before then",
                                         NULL};
static const char *const together_words[] = {"in this moment",      "in that moment",
                                             "in same moment",      "at this moment",
                                             "at that moment",      "at that very moment",
                                             "at same moment",      "in same instant",
                                             "at same instant",     "at that instant",
                                             "in same breath",      "at exactly that moment",
                                             "in that same moment", NULL};

/* What stands behind one of these goes on by itself: `1 drives`, or `drives` of the same one. */
static bool turns_at(const struct cursor *c, const struct token *at, const struct token *end,
                     struct recast *r)
{
    struct cursor words = look_between(c, at, end);
    bool then = take_among(&words, then_words);
    bool only = then && token_is_word(at, "only");
    bool where = !then && at > c->at && token_is_mark(&at[-1], ',') && take_words(&words, "where");
    if (!then && !where && !take_among(&words, together_words)) {
        return false;
    }
    take_mark(&words, ',');
    if (where && !whole_sentence_is(&words)) {
        return false;
    }
    bool does = only && (take_words(&words, "does") || take_words(&words, "do"));
    bool who = subject_here(&words);
    bool front = before_joints(c, at) == c->at;
    if ((!who && (does || !then || front || !verb_begins(&words))) ||
        (who && front && only && !does)) {
        return false;
    }
    recast_copy(c, r, c->at, before_joints(c, at));
    if (!front) {
        recast_mark(c, r, who ? '.' : ',');
    }
    if (!where) {
        recast_word(c, r, then ? "then" : "meanwhile");
    }
    recast_copy(c, r, words.at, end);
    r->to = end;
    return true;
}

bool only_then(const struct cursor *c, struct recast *r)
{
    const struct token *end = chain_end(c);
    for (const struct token *at = c->at; at < end; at++) {
        if (at->kind == TOKEN_WORD && turns_at(c, at, end, r)) {
            return true;
        }
    }
    return false;
}

/* ---- not until 2 has cleared does 5 post up ---- */

bool does_turned(const struct cursor *c, struct recast *r)
{
    static const char *const limits[] = {"not until", "only when",       "only after",
                                         "only once", "not before",      "only as",
                                         "no sooner", "only as soon as", NULL};
    const struct token *end = chain_end(c);
    struct cursor head = cursor_look(c);
    bool limited = take_among(&head, limits);
    for (const struct token *at = head.at; limited && at < end; at++) {
        struct cursor behind = look_between(c, at + 1, end);
        struct somebody who;
        bool does = at > head.at && (token_is_word(at, "does") || token_is_word(at, "do"));
        if (does && player_here(&behind, &who) && verb_begins(&behind)) {
            const struct token *clause = token_is_mark(&at[-1], ',') ? at - 1 : at;
            recast_copy(c, r, c->at, clause);
            recast_mark(c, r, ',');
            recast_copy(c, r, at + 1, end);
            r->to = end;
            return true;
        }
    }
    return false;
}

/* ---- having screened, 5 pops; after passing to 2, 1 fades ---- */

static const struct sentence *done_above(const struct cursor *c, const struct who *who,
                                         enum verb verb)
{
    above_list above = above_sentences(c, false);
    for (size_t i = above.count; i-- > 0;) {
        const struct sentence *s = above.at[i];
        bool pass = verb_row(verb)->task == VERB_PASS && verb_row(s->verb)->task == VERB_PASS;
        if (s->subject.count == 1 && same_who(&s->subject.at[0], who) &&
            (s->verb == verb || pass)) {
            return s;
        }
    }
    return NULL;
}

/* Whom it was done to: him, the post; a number is who it was. */
static bool whom_fits(struct cursor *c, const struct sentence *done)
{
    static const char *const thems[] = {"him",  "her", "it",   "ball",   "pass",   "screen",
                                        "post", "big", "wing", "corner", "inside", NULL};
    static const char *const leads[] = {"to", "for", "off", "it to", "ball to", "it", NULL};
    struct somebody whom;
    take_among(c, leads);
    if (cursor_done(c) || take_among(c, thems)) {
        return cursor_done(c);
    }
    return somebody_read(c, &whom) && cursor_done(c) && same_who(&whom.who, &done->object);
}

static const char *const ball_words[] = {"ball", "it", "rock", "pass", NULL};

/* given it to, giving 2: a pass, with whom it is to. */
static bool gives_ball(struct cursor *c, struct phrase *phrase)
{
    static const char *const gives[] = {"giving", "given", NULL};
    static const char *const leads[] = {"ball to",    "it to",        "ball up to", "it up to",
                                        "up ball to", "ball back to", "it back to", NULL};
    struct cursor trial = *c;
    struct somebody whom;
    if (!take_among(&trial, gives)) {
        return false;
    }
    struct cursor whole = trial;
    bool led = take_among(&trial, leads);
    const struct token *to = trial.at;
    bool dative = !led && player_here(&whole, &whom) && take_among(&whole, ball_words) &&
                  (whole.at == whole.end || mark_is(&whole, ','));
    if (!led && !dative) {
        return false;
    }
    *phrase = (struct phrase){.words = "passes to", .verb = VERB_PASSES, .to = SPOT_COUNT};
    c->at = led ? to - 1 : to;
    return true;
}

/* The verb in front: passing, having passed. */
static bool participle(struct cursor *c, struct phrase *phrase, bool *having)
{
    static const char *const afters[] = {
        "after",     "right after", "upon",      "immediately after", "just after", "only after",
        "once done", "when done",   "following", "straight after",    NULL};
    static const char *const havings[] = {"having",      "after having", "once having",
                                          "just having", "having just",  "having already",
                                          NULL};
    struct str said;
    *having = take_among(c, havings);
    if (!*having && !take_among(c, afters)) {
        return false;
    }
    return gives_ball(c, phrase) || (*having ? past_read(c, FOR_ATTACKERS, phrase)
                                             : phrase_ing_here(c, FOR_ATTACKERS, phrase, &said));
}

bool gerund_in_front(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody who;
    bool having;
    if (!participle(&trial, &phrase, &having)) {
        return false;
    }
    const struct token *object = trial.at;
    struct cursor next = trial;
    while (next.at < next.end && !token_is_mark(next.at, ',')) {
        next.at++;
    }
    trial.end = next.at;
    if (!take_mark(&next, ',')) {
        return false;
    }
    const struct token *main = next.at;
    if (!somebody_read(&next, &who) || who.who.kind != WHO_PLAYER || !verb_begins(&next)) {
        return false;
    }
    const struct sentence *done = done_above(c, &who.who, phrase.verb);
    recast_word(c, r, "after");
    recast_somebody(c, r, &who);
    for (size_t i = 0; i < r->tokens.count; i++) { /* it is told here */
        r->tokens.at[i].span = c->at->span;
    }
    bool fits = done && whom_fits(&trial, done);
    if (fits) {
        recast_verb(c, r, phrase_words(done->verb, PASS_PLAIN, done->screen, false));
    } else { /* as a moment with all that is said of it: another sentence tells it, or none does */
        recast_verb(c, r, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
        const struct token *end = trial.end;
        while (phrase_passes(&phrase) && end > object + 1 &&
               (end[-1].filler || token_is_among(&end[-1], ball_words))) {
            end--; /* 2 the ball */
        }
        if (phrase_passes(&phrase) && object < end && !token_is_word(object, "to")) {
            recast_word(c, r, "to"); /* having hit 2 */
        }
        recast_copy(c, r, object, end);
    }
    recast_mark(c, r, ',');
    r->to = main;
    bool needs = strpbrk(verb_row(phrase.verb)->needs, "WPS") != NULL;
    return fits || having || (!done && (object < trial.end || !needs));
}

/* ---- 5 clears to the corner before 4 rim-runs ---- */

/* Who begins the chain, with a sentence that is whole. */
static bool first_act(const struct cursor *c, const struct token *end, struct somebody *who)
{
    struct cursor first = look_between(c, c->at, end);
    return whole_sentence_is(&first) && player_here(&first, who);
}

/* A sentence with all its verb needs, or with where to in its verb: 4 rim-runs. */
static bool says_all(const struct cursor *c)
{
    struct cursor verb = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct somebody who;
    struct phrase phrase;
    bool placed = subject_verb_is(&verb) && player_here(&verb, &who) &&
                  phrase_read(&verb, FOR_ATTACKERS, &phrase) && phrase.to != SPOT_COUNT;
    cursor_back(&verb, mark);
    return placed || whole_sentence_is(c);
}

/* Nobody besides who acts is named there, so that `he` can be nobody else. */
static bool alone(const struct token *from, const struct token *to, const struct somebody *who)
{
    for (; from < to; from++) {
        bool player = from->kind == TOKEN_NUMBER && from->integer;
        if (player && (int)from->number != who->who.number) {
            return false;
        }
    }
    return true;
}

static bool before_at(const struct cursor *c, const struct token *at, const struct token *end,
                      struct recast *r)
{
    struct cursor behind = look_between(c, at + 1, end);
    struct somebody first, other;
    const struct token *stop = before_joints(c, at);
    if (!first_act(c, stop, &first)) {
        return false;
    }
    bool he = take_among(&behind, he_or_she);
    const struct token *verb = behind.at;
    if (he ? !verb_begins(&behind) || !alone(c->at, stop, &first)
           : !says_all(&behind) || !player_here(&behind, &other)) {
        return false;
    }
    bool same = he || same_who(&other.who, &first.who);
    recast_copy(c, r, c->at, stop);
    recast_mark(c, r, '.');
    if (same) {
        recast_somebody(c, r, &first);
        recast_copy(c, r, he ? verb : behind.at, end);
    } else {
        recast_word(c, r, "then");
        recast_copy(c, r, at + 1, end);
    }
    r->to = end;
    return true;
}

bool before_behind(const struct cursor *c, struct recast *r)
{
    const struct token *end = chain_end(c);
    for (const struct token *at = c->at + 1; at < end; at++) {
        if (token_is_word(at, "before")) {
            return before_at(c, at, end, r);
        }
    }
    return false;
}

/* ---- by the time 1 gets there 4 has lifted; by then 4 must have cleared ---- */

/* 4 has lifted: who, and the verb as it is told; the cursor goes behind it. */
static bool has_done(struct cursor *c, struct somebody *who, struct phrase *phrase)
{
    static const char *const has[] = {"has",
                                      "will have",
                                      "must have",
                                      "should have",
                                      "has to have",
                                      "needs to have",
                                      "has already",
                                      "must already have",
                                      "has got to have",
                                      "should already have",
                                      "will already have",
                                      NULL};
    return player_here(c, who) && take_among(c, has) && past_read(c, FOR_ATTACKERS, phrase);
}

static bool by_then_at(const struct cursor *c, const struct token *at, const struct token *end,
                       struct recast *r)
{
    static const char *const words[] = {"by the time", "by then", "by that time", "by the moment",
                                        NULL};
    struct cursor clause = look_between(c, at, end);
    struct somebody who;
    struct phrase phrase;
    if (!take_among(&clause, words)) {
        return false;
    }
    bool then = token_is_word(&clause.at[-1], "then") || token_is_word(&clause.at[-2], "that");
    for (const struct token *main = clause.at; main < end; main++) {
        struct cursor behind = look_between(c, main, end);
        if (main->kind == TOKEN_NUMBER && (then || main > clause.at) &&
            has_done(&behind, &who, &phrase)) {
            const struct token *stop = before_joints(c, at);
            const struct token *last = token_is_mark(&main[-1], ',') ? main - 2 : main - 1;
            recast_copy(c, r, c->at, stop);
            if (stop > c->at) {
                recast_mark(c, r, '.');
            }
            recast_word(c, r, "meanwhile");
            recast_somebody(c, r, &who);
            recast_verb(c, r, phrase_words(phrase.verb, phrase.pass, phrase.screen, false));
            recast_copy(c, r, behind.at, end);
            r->told = span_join(at->span, last->span);
            r->to = end;
            return true;
        }
    }
    return false;
}

bool done_by_then(const struct cursor *c, struct recast *r)
{
    const struct token *end = chain_end(c);
    for (const struct token *at = c->at; at < end; at++) {
        if (token_is_word(at, "by") && by_then_at(c, at, end, r)) {
            return true;
        }
    }
    return false;
}

/* ---- with the ball on the wing, 4 runs the baseline ---- */

/* Where the ball is, behind `with the ball`: a spot, there, his side. */
static bool take_where(struct cursor *c, const struct place **place)
{
    static const char *const theres[] = {"over there",   "there",         "on that side",
                                         "on this side", "on other side", "in the post",
                                         "in post",      "inside",        "down low",
                                         "on his side",  "on her side",   "in the air",
                                         "up top",       "in his hands",  "in her hands",
                                         "on wing",      "in corner",     NULL};
    struct who owner;
    *place = NULL;
    struct cursor side = *c;
    if (take_words(&side, "on") && owner_read(&side, &owner) && take_words(&side, "side")) {
        c->at = side.at;
        return true;
    }
    if (take_among(c, theres)) {
        return !token_is_word(&c->at[-1], "air");
    }
    return take_among(c, place_words) && (*place = spot_read(c, true)) != NULL;
}

/* Who has it stands there, as far as the words tell. */
static bool stands_there(const struct cursor *c, const struct who *holder,
                         const struct place *place)
{
    struct spot_stood at;
    if (!place || !above_stands(c, holder, &at)) {
        return true;
    }
    return place->kind != PLACE_SPOT || stood_on(&at, place);
}

/* The latest pass of this step is to whoever has the ball; false: he had it before. */
static bool was_passed(const struct cursor *c, const struct who *holder)
{
    above_list above = above_sentences(c, false);
    for (size_t i = above.count; i-- > 0;) {
        enum verb_task task = verb_row(above.at[i]->verb)->task;
        if (task == VERB_PASS || task == VERB_EXCHANGE) {
            return same_who(&above.at[i]->object, holder);
        }
    }
    return false;
}

bool ball_is_there(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    const struct place *place;
    struct who holder;
    const struct token *from = cursor_next(c);
    if (!from || !take_words(&trial, "with ball") || !take_where(&trial, &place) ||
        !above_holder(c, &holder) || holder.kind != WHO_PLAYER ||
        !stands_there(c, &holder, place)) {
        return false;
    }
    const struct token *to = trial.at;
    take_mark(&trial, ',');
    if (!subject_here(&trial)) {
        return false;
    }
    if (was_passed(c, &holder)) {
        recast_word(c, r, "when");
        recast_number(c, r, holder.number);
        recast_verb(c, r, STR("catches"));
        recast_mark(c, r, ',');
    } else {
        r->told = span_join(from->span, to[-1].span);
    }
    r->to = trial.at;
    return true;
}

/* ---- after 1 passes to 2 and cuts to the rim, 3 fills: the last of the two is the moment ---- */

/* Behind who acts: `passes`, `has passed`; what it is as it is told. */
static bool act_told(struct cursor *c, bool has, struct phrase *phrase)
{
    return has ? past_read(c, FOR_ATTACKERS, phrase) : phrase_read(c, FOR_ATTACKERS, phrase);
}

/* Where the second act begins, behind `and`, before the comma; NULL: there is none. */
static const struct token *second_act(const struct cursor *c, bool has, const struct token **comma)
{
    struct phrase phrase;
    const struct token *second = NULL;
    for (const struct token *at = c->at; at < c->end; at++) {
        struct cursor act = look_between(c, at + 1, c->end);
        if (token_is_mark(at, ',')) {
            *comma = at;
            return second;
        }
        if (token_is_word(at, "and") && act_told(&act, has, &phrase)) {
            if (second) {
                return NULL;
            }
            second = at + 1;
        }
    }
    return NULL;
}

/* A sentence above tells what the tokens say. */
static bool told_so(const struct cursor *c, const struct token *from, const struct token *to)
{
    struct cursor moment = look_between(c, from, to);
    struct cursor_mark mark = cursor_mark(c);
    struct event event;
    bool told = event_read(&moment, &event) && event.kind == EVENT_VERB;
    cursor_back(&moment, mark);
    above_list above = above_sentences(c, false);
    for (size_t i = 0; told && i < above.count; i++) {
        if (event_of(above.at[i], &event)) {
            return true;
        }
    }
    return false;
}

bool two_in_front(const struct cursor *c, struct recast *r)
{
    static const char *const ties[] = {"when", "once",        "after",      "as soon as",
                                       "as",   "right after", "only after", NULL};
    static const char *const had[] = {"has", "have", NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    struct phrase first, last;
    const struct token *comma = NULL;
    if (!take_among(&trial, ties) || !player_here(&trial, &who)) {
        return false;
    }
    const struct token *tie_end = who.from;
    bool has = take_among(&trial, had);
    struct cursor act = trial;
    const struct token *second = second_act(&trial, has, &comma);
    if (!second || !act_told(&act, has, &first)) {
        return false;
    }
    struct cursor end = look_between(c, comma + 1, c->end), then = look_between(c, second, comma);
    if (!subject_here(&end) || !act_told(&then, has, &last)) {
        return false;
    }
    if (!told_so(c, who.from, second - 1)) {
        recast_somebody(c, r, &who);
        recast_verb(c, r, phrase_words(first.verb, first.pass, first.screen, false));
        recast_copy(c, r, act.at, second - 1);
        recast_mark(c, r, '.');
        struct span span = span_join(who.from->span, second[-2].span);
        diag_add(c->diags, DIAG_TEXT_VERB_TAKEN, span,
                 "no sentence tells this moment: `%.*s` was put in front as one",
                 STR_ARG(cursor_text(c, span)));
    }
    recast_copy(c, r, c->at, tie_end);
    recast_somebody(c, r, &who);
    recast_verb(c, r, phrase_words(last.verb, last.pass, last.screen, false));
    recast_copy(c, r, then.at, comma);
    r->to = comma;
    return true;
}
