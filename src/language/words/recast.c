/* SPDX-License-Identifier: MIT */
/* recast: sentences as they are said, put as they are written: `hit 2 on the wing`, `pump fake by
 * 2`, `have 3 cut` (between.c: what two do with the ball between them). Each rule knows one way of
 * saying, for every verb and noun of the tables; who acts and is not named is the one who has the
 * ball. */
#include "language/words/people.h"
#include "language/words/speech.h"

#include <string.h>

/* What is put stands where the next token does; at the end, where the last one did. */
static const struct token *stands_at(const struct cursor *c)
{
    const struct token *next = cursor_next(c);
    return next ? next : &c->end[-1];
}

void recast_word(const struct cursor *c, struct recast *r, const char *text)
{
    VEC_PUSH(c->arena, &r->tokens, token_word(stands_at(c), text));
}

void recast_verb(const struct cursor *c, struct recast *r, struct str words)
{
    char *text = arena_array(c->arena, char, words.size + 1);
    for (size_t i = 0; i < words.size; i++) {
        text[i] = words.at[i] == ' ' ? '-' : words.at[i];
    }
    text[words.size] = '\0';
    recast_word(c, r, text);
}

void recast_number(const struct cursor *c, struct recast *r, int number)
{
    VEC_PUSH(c->arena, &r->tokens, token_number(c->arena, stands_at(c), number));
}

void recast_mark(const struct cursor *c, struct recast *r, char mark)
{
    VEC_PUSH(c->arena, &r->tokens, token_mark(stands_at(c), mark));
}

void recast_copy(const struct cursor *c, struct recast *r, const struct token *from,
                 const struct token *to)
{
    for (; from < to; from++) {
        VEC_PUSH(c->arena, &r->tokens, *from);
    }
}

static bool attacks(const struct who *who)
{
    return who->kind == WHO_PLAYER || who->kind == WHO_ROLE || who->kind == WHO_SPOT;
}

bool somebody_read(struct cursor *c, struct somebody *out)
{
    struct cursor_mark mark = cursor_mark(c);
    out->from = past_fillers(c->at, c->end);
    if (who_read(c, &out->who) && attacks(&out->who) && c->refusals == mark.refusals) {
        out->to = c->at;
        return true;
    }
    cursor_back(c, mark);
    return false;
}

bool player_here(struct cursor *c, struct somebody *out)
{
    struct cursor trial = *c;
    if (!somebody_read(&trial, out) || out->who.kind == WHO_SPOT) {
        return false;
    }
    c->at = trial.at;
    return true;
}

struct somebody somebody_numbered(const struct cursor *c, const struct token *at, struct who who)
{
    struct token *number = arena_new(c->arena, struct token);
    *number = token_number(c->arena, at, who.number);
    return (struct somebody){.from = number, .to = number + 1, .who = who};
}

void recast_somebody(const struct cursor *c, struct recast *r, const struct somebody *one)
{
    recast_copy(c, r, one->from, one->to);
}

struct cursor cursor_look(const struct cursor *c)
{
    struct cursor trial = *c;
    trial.watch = NULL;
    return trial;
}

struct cursor recast_line(const struct cursor *c, const struct recast *recast)
{
    struct cursor line = cursor_look(c);
    line.at = line.first = recast->tokens.at;
    line.end = recast->tokens.at + recast->tokens.count;
    return line;
}

struct cursor recast_afresh(const struct cursor *c, const struct recast *recast)
{
    struct cursor line = recast_line(c, recast);
    line.doer = line.screener = NULL;
    line.remark = SPAN_NONE;
    return line;
}

struct cursor look_between(const struct cursor *c, const struct token *at, const struct token *end)
{
    struct cursor trial = cursor_look(c);
    trial.at = at;
    trial.end = end;
    return trial;
}

bool verb_needs_ball(enum verb verb)
{
    return strchr(verb_row(verb)->needs, 'B') != NULL || verb == VERB_JABS;
}

bool recast_holder(const struct cursor *c, struct recast *r)
{
    struct who holder;
    if (!above_holder(c, &holder)) {
        return false;
    }
    VEC_PUSH(c->arena, &r->subject, holder);
    return r->taken = true;
}

void recast_acts(const struct cursor *c, struct recast *r, const struct who *who)
{
    VEC_PUSH(c->arena, &r->subject, *who);
}

void recast_when(const struct cursor *c, struct recast *r, const struct token *from,
                 const struct token *to)
{
    recast_word(c, r, "when");
    recast_copy(c, r, from, to);
    recast_mark(c, r, ',');
}

bool clause_ends(const struct token *token)
{
    bool mark = token->kind == TOKEN_MARK &&
                (token->mark == ',' || token->mark == '.' || token->mark == ';');
    return mark || (token->kind == TOKEN_WORD &&
                    (str_is(token->text, "and") || str_is(token->text, "then") ||
                     str_is(token->text, "until") || str_is(token->text, "who")));
}

bool sentence_ends(const struct token *token)
{
    return token_is_mark(token, '.') || token_is_mark(token, ';');
}

const struct token *chain_end(const struct cursor *c)
{
    const struct token *at = c->at;
    while (at < c->end && !sentence_ends(at)) {
        at++;
    }
    return at;
}

/* `by 2`, `from 2` further on in the sentence: who does what a noun says. */
bool agent_ahead(const struct cursor *c, const struct token *from, struct somebody *agent,
                 const struct token **by)
{
    static const char *const words[] = {"by", "from", NULL};
    for (const struct token *at = from; at < c->end && !clause_ends(at); at++) {
        struct cursor trial = cursor_look(c);
        trial.at = at;
        if (!at->filler && take_among(&trial, words) && somebody_read(&trial, agent) &&
            agent->who.kind != WHO_SPOT) {
            *by = at;
            return true;
        }
    }
    return false;
}

/* The last sentence of this line; NULL: none. */
const struct sentence *sentence_before(const struct cursor *c)
{
    if (c->latest) {
        return c->latest;
    }
    return c->here && c->here->count > 0 ? &c->here->at[c->here->count - 1] : NULL;
}

void take_particles(struct cursor *c)
{
    while (take_among(c, particle_words)) {
    }
}

/* A pass, a fake, a screen, a shot, as a noun; `light` says which verb it stands with. */
static bool take_noun_phrase(struct cursor *c, struct phrase *phrase, const char **light)
{
    enum { MOST = 12 };
    struct token said[MOST + 1];
    const struct token *first = cursor_next(c);
    struct cursor trial = *c;
    *light = "makes";
    if (phrase_noun_read(&trial, phrase)) {
        c->at = trial.at;
        return !ends_in_s(&trial.at[-1]); /* passes is the verb */
    }
    bool dribbles = first && first->kind == TOKEN_NUMBER && /* three dribbles: player 3 does */
                    !(word_is(c, 0, "one") && c->end - first > 1 && !ends_in_s(first + 1));
    if (!first || dribbles || word_is(c, 0, "it") || word_is(c, 0, "ball")) {
        return false;
    }
    size_t left = (size_t)(c->end - first), count = left < MOST ? left : MOST;
    said[0] = token_word(first, "takes");
    memcpy(said + 1, first, count * sizeof *said);
    if (word_is(c, 0, "fade")) { /* off a screen, not away from the rim */
        return false;
    }
    trial.at = said;
    trial.end = said + count + 1;
    if (!phrase_read(&trial, FOR_ATTACKERS, phrase) || trial.at < said + 2 ||
        (phrase->verb != VERB_SHOOTS && phrase->verb != VERB_DRIBBLES)) {
        return false;
    }
    *light = "takes";
    c->at = first + (trial.at - said - 1);
    return true;
}

/* feed 5, feed the post: the verb, right before whom it is to. */
static bool feeds_whom(const struct cursor *c)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody to;
    return phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase_has(&phrase, 'O') &&
           verb_row(phrase.verb)->task == VERB_PASS && somebody_read(&trial, &to);
}

/* pump fake by 2, pass from 1 to 2, skip pass 3 to 4, pocket pass to 4, entry to 5 by 2, shot. */
bool nominal(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    const char *light;
    const struct token *from = cursor_next(c), *by;
    if (!from || feeds_whom(c) || !take_noun_phrase(&trial, &phrase, &light) ||
        word_is(&trial, 0, "it")) {
        return false; /* lob it: the verb */
    }
    const struct token *noun_end = trial.at;
    struct somebody agent, other;
    struct cursor behind = trial;
    bool shot = phrase.verb == VERB_SHOOTS;
    static const char *const of[] = {"by", "from", NULL};
    static const char *const shots[] = {"by", "for", NULL};
    enum verb_task task = verb_row(phrase.verb)->task;
    bool two = task == VERB_PASS || task == VERB_EXCHANGE;
    recast_word(c, r, light);
    recast_copy(c, r, from, noun_end);
    if (take_among(&behind, shot ? shots : of) && somebody_read(&behind, &agent)) {
        recast_acts(c, r, &agent.who);
        r->to = behind.at;
        return true;
    }
    behind = trial;
    if (task == VERB_MOVE && somebody_read(&behind, &agent) && agent.who.kind == WHO_PLAYER &&
        !verb_begins(&behind)) { /* shallow cut 1 thru to the slot */
        recast_acts(c, r, &agent.who);
        r->to = behind.at;
        return true;
    }
    behind = trial;
    if (two && somebody_read(&behind, &agent) && word_is(&behind, 0, "to")) {
        const struct token *to = behind.at;
        take_words(&behind, "to");
        if (somebody_read(&behind, &other)) {
            recast_acts(c, r, &agent.who);
            r->to = to;
            return true;
        }
    }
    if (agent_ahead(c, noun_end, &agent, &by)) {
        recast_copy(c, r, noun_end, by);
        recast_acts(c, r, &agent.who);
        r->to = agent.to;
        return true;
    }
    r->to = noun_end;
    return verb_needs_ball(phrase.verb) && recast_holder(c, r);
}

/* have 3 cut, get 2 to drive, I want 5 to screen; send 4 to the corner. */
bool told_to_do(const struct cursor *c, struct recast *r)
{
    static const char *const leads[] = {"make sure", "have",    "get",      "let",      "make",
                                        "want",      "need",    "i want",   "i need",   "i'd like",
                                        "we want",   "we need", "we have",  "you want", "i have",
                                        "we'd like", "we got",  "you have", NULL};
    struct cursor trial = cursor_look(c);
    bool send = take_words(&trial, "send");
    if (!send && !take_among(&trial, leads)) {
        return false;
    }
    const struct token *who = trial.at;
    who_list list;
    struct cursor_mark mark = cursor_mark(&trial);
    if (!subject_read(&trial, &list) || trial.refusals != mark.refusals) {
        cursor_back(&trial, mark);
        return false;
    }
    recast_copy(c, r, who, trial.at);
    r->to = trial.at;
    if (send) {
        recast_word(c, r, list.count > 1 ? "go" : "goes");
        return word_is(&trial, 0, "to") || word_among(&trial, particle_words);
    }
    struct cursor place = trial;
    take_words(&trial, "to");
    r->to = trial.at;
    if (verb_begins(&trial)) {
        return true;
    }
    static const char *const gone[] = {"out of there", "out of the way", NULL};
    take_among(&place, gone);
    take_particles(&place); /* get 4 up to the wing */
    struct cursor spot = place;
    if (!take_words(&spot, "to") || !spot_read(&spot, true)) {
        return false;
    }
    recast_word(c, r, list.count > 1 ? "go" : "goes");
    r->to = place.at;
    return true;
}

/* the corners fill the wings: each on his own side. */
bool both_sides(const struct cursor *c, struct recast *r)
{
    static const struct entry spots[] = {
        {"wings", 0},  {"corners", 1},       {"elbows", 2},    {"blocks", 3},       {"slots", 4},
        {"hashes", 5}, {"short corners", 6}, {"mid posts", 7}, {"dunker spots", 8}, {NULL, 0}};
    static const char *const one[] = {"wing", "corner",       "elbow",    "block",      "slot",
                                      "hash", "short-corner", "mid-post", "dunker-spot"};
    static const char *const sides[] = {"left", "right"};
    struct cursor trial = cursor_look(c);
    take_words(&trial, "both");
    take_words(&trial, "the two");
    struct cursor subject = trial;
    if (take_entry(&trial, spots) < 0 || !verb_begins(&trial)) {
        return false;
    }
    const struct token *end = trial.at;
    while (end < c->end && !(end->kind == TOKEN_MARK && clause_ends(end))) {
        end++;
    }
    for (int side = 0; side < 2; side++) {
        if (side > 0) {
            recast_mark(c, r, ',');
        }
        struct cursor at = subject;
        while (at.at < end) {
            int spot = take_entry(&at, spots);
            if (spot >= 0) {
                recast_word(c, r, sides[side]);
                recast_word(c, r, one[spot]);
            } else {
                recast_copy(c, r, at.at, at.at + 1);
                at.at++;
            }
        }
    }
    r->to = end;
    return true;
}

/* keeps it, driving to the rim; before coming back: his next sentence. */
bool goes_on_with(const struct cursor *c, struct recast *r)
{
    static const char *const keeps[] = {"keeps it", "keep it", "keeps ball", "keep ball", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    if (c->at == c->first) {
        return false;
    }
    if (take_among(&trial, keeps)) {
        take_mark(&trial, ',');
        take_words(&trial, "and");
    } else {
        take_words(&trial, "before");
    }
    struct str bare;
    bool modifies = word_is(&trial, 0, "facing") || take_entry(&trial, pace_entries) >= 0;
    if (modifies || !phrase_ing_here(&trial, FOR_ATTACKERS, &phrase, &bare)) {
        return false;
    }
    recast_verb(c, r, bare);
    r->to = trial.at;
    const struct sentence *last = sentence_before(c);
    enum verb_task task = verb_row(phrase.verb)->task;
    bool alone = trial.at > c->at && cursor_next(c) && ends_in_ing(cursor_next(c));
    if (alone && last && last->object.kind == WHO_PLAYER && last->subject.count == 1 &&
        last->subject.at[0].kind == WHO_PLAYER && task == VERB_MOVE) { /* it could be either */
        r->as = str_format(c->arena, "%d %.*s", last->subject.at[0].number,
                           STR_ARG(phrase_words(phrase.verb, phrase.pass, phrase.screen, false)));
    }
    return r->same = true;
}

/* and the ball is on the left side: how things stand then. */
bool stands_then(const struct cursor *c, struct recast *r)
{
    static const char *const words[] = {"ball is on",  "ball is in",      "ball is at",
                                        "ball is now", "ball is back on", NULL};
    static const char *const moving[] = {"air", NULL};
    struct cursor trial = cursor_look(c);
    if (c->at == c->first || !take_among(&trial, words) || word_among(&trial, moving)) {
        return false;
    }
    const struct token *at = trial.at, *from = cursor_next(c);
    while (at < c->end && !clause_ends(at)) {
        if (at->kind == TOKEN_NUMBER) { /* in 3's hands */
            return false;
        }
        at++;
    }
    r->to = at;
    r->told = span_join(from->span, at[-1].span);
    return at == c->end;
}

/* everybody crashes but 1 who gets back: 1 gets back, everyone else crashes. */
bool all_but(const struct cursor *c, struct recast *r)
{
    static const char *const all[] = {"everybody", "everyone", "all", NULL};
    static const char *const but[] = {"but", "except for", "except", NULL};
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct somebody one;
    if (!take_among(&trial, all)) {
        return false;
    }
    const struct token *verb = trial.at;
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return false;
    }
    const struct token *end = trial.at;
    if (!take_among(&trial, but) || !somebody_read(&trial, &one) || !take_words(&trial, "who") ||
        !verb_begins(&trial)) {
        return false;
    }
    recast_word(c, r, "everyone");
    recast_word(c, r, "else");
    recast_copy(c, r, verb, end);
    recast_mark(c, r, ',');
    recast_somebody(c, r, &one);
    r->to = trial.at;
    return true;
}

/* Who goes on with this verb behind that sentence, where nobody is named: 1 passes to 2. Cuts to
 * the rim. */
static bool goes_on_as(const struct sentence *last, const struct phrase *phrase, struct who *out)
{
    enum verb_task before = verb_row(last->verb)->task, task = verb_row(phrase->verb)->task;
    bool use = task == VERB_USE || verb_sibling(phrase->verb, "off") == VERB_CURLS;
    bool of_screen = strchr(verb_row(phrase->verb)->needs, 'S') != NULL;
    *out = before == VERB_SCREEN && use ? last->object : last->subject.at[0];
    bool screen = before == VERB_SCREEN && (use || of_screen);
    bool same = !use && before != VERB_SCREEN && before != VERB_SHOOT && before != VERB_GUARD;
    return (screen || same) && who_is_one(out);
}

/* cuts to the rim: behind a sentence of one player, who goes on. */
bool nobody_named(const struct cursor *c, struct recast *r)
{
    struct cursor trial = cursor_look(c);
    struct phrase phrase;
    struct who who;
    const struct token *before = c->at; /* behind a clause it would be anybody */
    while (before > c->first && before[-1].filler) {
        before--;
    }
    if (before > c->first &&
        !(token_is_mark(&before[-1], '.') || token_is_mark(&before[-1], ';'))) {
        return false;
    }
    skip_run_in(&trial);
    above_list above = above_sentences(c, false);
    const struct sentence *last = above.count > 0 ? above.at[above.count - 1] : NULL;
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase) || !phrase.with_s || !last) {
        return false;
    }
    r->to = c->at;
    if (verb_needs_ball(phrase.verb)) {
        return recast_holder(c, r);
    }
    if (last->subject.count != 1 || !goes_on_as(last, &phrase, &who)) {
        return false;
    }
    recast_acts(c, r, &who);
    return r->taken = true;
}

bool recast_by(const struct cursor *c, bool (*rule)(const struct cursor *, struct recast *),
               struct recast *out)
{
    *out = (struct recast){.to = c->at, .told = SPAN_NONE};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool found = !cursor_done(c) && rule(c, out);
    if (!found) {
        cursor_back(&trial, mark); /* what it has reported on its way is unsaid */
    }
    return found;
}

bool recast_find(const struct cursor *c, struct recast *out)
{
    static bool (*const rules[])(const struct cursor *, struct recast *) = {
#define RECAST(rule) rule,
#define REORDER(rule)
#include "language/words/recast.def"
#undef RECAST
#undef REORDER
    };
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool found = false;
    for (size_t i = 0; !found && i < sizeof rules / sizeof *rules; i++) {
        found = recast_by(c, rules[i], out);
    }
    cursor_back(&trial, mark); /* what is put is read once more, and reported then */
    return found;
}
