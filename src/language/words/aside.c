/* SPDX-License-Identifier: MIT */
/* aside: what is said behind a verb and moves nobody: why (to free 3, so 2 can curl), what for (for
 * the catch), what is looked for (looking for the lob), how it is held (with high hands). Left out
 * by rule, with a note that quotes it; what somebody else does in it is told how to be written. */
#include "language/words/unfold.h"

enum aside { ASIDE_TO, ASIDE_FOR, ASIDE_AS, ASIDE_HEAD, ASIDE_OPEN, ASIDE_EMPTY, ASIDE_MOVING };
static const struct {
    enum aside kind;
    const char *words;
} asides[] = {
#define ASIDE(kind, words) {ASIDE_##kind, words},
#include "language/words/asides.def"
#undef ASIDE
};

static bool take_words_of(struct cursor *c, enum aside kind)
{
    const struct token *longest = NULL;
    struct index_rows rows = rows_here(c, INDEX_ASIDES);
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        struct cursor trial = *c;
        trial.watch = NULL;
        if (asides[*row].kind == kind && take_str(&trial, str_of(asides[*row].words)) &&
            (!longest || trial.at > longest)) {
            longest = trial.at;
        }
    }
    if (longest) {
        cursor_take(c, c->at, longest);
    }
    return longest != NULL;
}

static bool aside_is(const struct cursor *c, enum aside kind)
{
    struct cursor trial = *c;
    trial.watch = NULL;
    return take_words_of(&trial, kind);
}

bool aside_aim_is(const struct cursor *c)
{
    return aside_is(c, ASIDE_TO);
}

bool aside_head_is(const struct cursor *c)
{
    return aside_is(c, ASIDE_HEAD);
}

static struct cursor behind(const struct cursor *c, const char *word)
{
    struct cursor trial = *c;
    take_words(&trial, word);
    return trial;
}

static bool article_next(const struct cursor *c)
{
    return c->at < c->end && c->at->filler;
}

static bool plain_word(const struct cursor *c)
{
    const struct token *next = cursor_next(c);
    return next && next->kind == TOKEN_WORD && !next->possessive && next->first != '\0';
}

/* A place, a player or a verb begins here: nothing that is only said. */
static bool means_something(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct phrase phrase;
    struct who who;
    bool found = spot_read(&trial, true) || person_read(&trial, &who) ||
                 word_among(&trial, particle_words) || phrase_read(&trial, FOR_ANYONE, &phrase);
    cursor_back(&trial, mark);
    return found;
}

/* What a verb still waits for behind this preposition is no aside. */
static bool slot_waits(const struct predicate *p, const char *preposition)
{
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(p->s->verb, slots);
    for (size_t i = 0; i < count; i++) {
        bool place = slots[i].letter == 'P' || slots[i].letter == 'E';
        bool time = slots[i].letter == 'T';
        bool open = place  ? !p->s->place && slots[i].needed
                    : time ? p->s->duration.unit == UNIT_NONE
                           : p->s->object.kind == WHO_NONE;
        if (open && str_is(slots[i].preposition, preposition)) {
            return true;
        }
    }
    return false;
}

/* to free 3, to be the next pass, to clear that side; but not `to the rim`, `to screen for 3`. */
static bool purpose_is_said(const struct predicate *p)
{
    if (slot_waits(p, "to")) {
        return false;
    }
    struct cursor trial = behind(p->c, "to");
    if (article_next(&trial) || !plain_word(&trial)) {
        return false;
    }
    if (aside_is(&trial, ASIDE_TO)) {
        return true;
    }
    bool said = p->s->place || p->s->object.kind != WHO_NONE;
    return said && !means_something(&trial) && !entry_nearest(&trial, spot_entries) &&
           !entry_nearest(&trial, side_entries) && !phrase_nearest(&trial, FOR_ATTACKERS);
}

/* for the pass to 4: it is to be thrown. */
static bool to_somebody(const struct cursor *c)
{
    const struct token *at = c->at;
    while (at < c->end && at->kind == TOKEN_WORD && !token_is_word(at, "to")) {
        at++;
    }
    return at + 1 < c->end && token_is_word(at, "to") && at[1].kind == TOKEN_NUMBER;
}

/* for the catch, for safety, for a three; but not `for 3`, `for 2 s`. */
static bool reason_is_said(const struct predicate *p)
{
    struct cursor trial = behind(p->c, "for");
    const struct token *next = cursor_next(&trial);
    struct sentence shot = *p->s;
    struct cursor here = *p->c;
    here.watch = NULL;
    struct predicate shoots = *p;
    shoots.s = &shot;
    shoots.c = &here;
    bool passes = verb_row(p->s->verb)->task == VERB_PASS;
    if (p->s->verb == VERB_DRIBBLES_AT || p->s->verb == VERB_DRIBBLES || /* for a hand-off */
        word_is(&trial, 0, "high") ||                                    /* the high-low pass */
        (passes && for_shot(&shoots))) {
        return false;
    }
    struct cursor count = trial;
    bool time = verb_sibling(p->s->verb, "for") != VERB_COUNT || p->s->verb == VERB_HOLDS;
    struct cursor three = trial;
    if (!slot_waits(p, "for") && article_next(&trial) && take_words(&three, "three") &&
        (stop_is(&three) || mark_is(&three, ','))) { /* for a three */
        return true;
    }
    struct cursor moment = trial; /* shows for a second */
    if (verb_row(p->s->verb)->task == VERB_GUARD && skip_seconds(&moment)) {
        return true;
    }
    if (slot_waits(p, "for") || !plain_word(&trial) || (time && skip_seconds(&count))) {
        return false;
    }
    struct cursor_mark mark = cursor_mark(&trial);
    struct who who;
    bool somebody = person_read(&trial, &who) && who.kind != WHO_BALL; /* ball reversal */
    cursor_back(&trial, mark);
    bool said = p->s->place || p->s->object.kind != WHO_NONE;
    return !somebody && next && !to_somebody(&trial) &&
           (said || article_next(&trial) || aside_is(&trial, ASIDE_FOR));
}

/* looking for the lob, calling for it; but not what moves somebody: going left, coming off 5. */
/* hoping for a pass from 2, calling for it off 3: what he is to do is not done. */
static bool hoped_of_somebody(const struct cursor *c)
{
    const struct token *at = past_fillers(cursor_next(c) + 1, c->end);
    if (at == c->end || !token_is_word(at, "for")) {
        return false;
    }
    while (at < c->end && at->kind == TOKEN_WORD) {
        at++;
    }
    return at < c->end && (at->kind == TOKEN_NUMBER || at->kind == TOKEN_DEFENDER);
}

static bool doing_is_said(const struct predicate *p)
{
    const struct token *next = cursor_next(p->c);
    return !hoped_of_somebody(p->c) && plain_word(p->c) && next->text.size > 5 &&
           ends_in_ing(next) && !aside_is(p->c, ASIDE_MOVING);
}

/* with his hands up, with a purpose; but not `with 3`, nor with the ball, which would be a dribble.
 */
static bool manner_is_said(const struct predicate *p)
{
    struct cursor trial = behind(p->c, "with");
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(p->s->verb, slots);
    bool with = count > 0 && str_is(slots[0].preposition, "with");
    static const char *const done[] = {"ball", "it", "screen", "pick", NULL};
    struct cursor noun = trial;
    struct phrase phrase;
    noun.watch = NULL;
    bool flies = verb_row(p->s->verb)->task == VERB_PASS && phrase_noun_read(&noun, &phrase) &&
                 phrase.verb == VERB_PASSES; /* with the bounce pass */
    return !with && !flies && plain_word(&trial) && !word_among(&trial, done);
}

/* as a safety, as the outlet. */
static bool office_is_said(const struct predicate *p)
{
    struct cursor trial = behind(p->c, "as");
    return aside_is(&trial, ASIDE_AS);
}

/* ready to shoot, hands up, under control: heads of what is only said. */
static bool head_is_said(const struct predicate *p)
{
    return !slot_waits(p, "at") && aside_is(p->c, ASIDE_HEAD);
}

static bool open_is_said(const struct predicate *p)
{
    return aside_is(p->c, ASIDE_OPEN);
}

/* so 2 can curl, so that 1 has room; where a player and a verb follow it is the next sentence. */
static bool result_is_said(const struct predicate *p)
{
    static const char *const leads[] = {"that",     "he",    "she",   "they", "we",   "you",
                                        "his",      "her",   "it",    "no",   "as",   "nobody",
                                        "everyone", "there", "their", "our",  "ball", NULL};
    struct cursor trial = behind(p->c, "so");
    struct cursor_mark mark = cursor_mark(&trial);
    struct who who;
    bool led = word_among(&trial, leads) || article_next(&trial) || person_read(&trial, &who);
    cursor_back(&trial, mark);
    trial = behind(p->c, "so");
    /* so pull up: somebody is to do it */
    return word_is(p->c, 0, "so") && led && !verb_begins(&trial);
}

/* `, hands up`, `and showing his hands`: behind a joint it goes on only so. */
static bool goes_on_behind(const struct predicate *p)
{
    struct cursor trial = *p->c;
    bool joined = take_mark(&trial, ',');
    joined = take_words(&trial, "and") || joined;
    if (!joined) {
        return !word_is(&trial, 0, "then");
    }
    const struct token *next = cursor_next(&trial);
    bool owned = word_is(&trial, 0, "his") || word_is(&trial, 0, "her");
    bool doing = next && next->text.size > 5 && ends_in_ing(next);
    return owned || aside_is(&trial, ASIDE_HEAD) || aside_is(&trial, ASIDE_OPEN) ||
           (doing && !aside_is(&trial, ASIDE_MOVING) && take_entry(&trial, pace_entries) < 0);
}

/* to get open on the wing: the place is the verb's, which has none yet. */
static bool own_place_is(const struct predicate *p)
{
    struct cursor trial = *p->c;
    return verb_takes_place(p->s->verb) && !p->s->place && spot_behind(&trial, place_words);
}

/* Behind `so`, or where somebody in it goes on to do something: `let 3 curl and shoot`. */
static bool ends_aside(struct predicate *p, bool others)
{
    struct cursor *c = p->c;
    if (stop_is(c)) {
        return true;
    }
    if (others) {
        return next_is_anothers(p);
    }
    return joint_follows(p) || word_is(c, 0, "until") || clause_is(c) || !goes_on_behind(p);
}

/* Up to where the sentence goes on; of `to get open` where. */
static void take_aside(struct predicate *p, bool others)
{
    struct cursor *c = p->c;
    const struct token *from = c->at;
    bool person = false, open = take_words(c, "to get open");
    if (open && (stop_is(c) || own_place_is(p) || ends_aside(p, others))) {
        return;
    }
    if (take_words_of(c, ASIDE_HEAD)) {
        return;
    }
    c->at = from;
    do {
        const struct token *next = cursor_next(c);
        bool number = next->kind == TOKEN_NUMBER && !next->possessive;
        others = others || (person && next->kind == TOKEN_WORD && !word_is(c, 0, "and") &&
                            !word_is(c, 0, "then") && !word_is(c, 0, "or"));
        person = number;
        cursor_take(c, next, next + 1);
    } while (!ends_aside(p, others));
}

/* 2 can curl: what it would be as a sentence of its own. */
static struct str action_in(const struct predicate *p, const struct token *from)
{
    struct cursor trial = *p->c;
    struct phrase phrase;
    trial.at = from;
    trial.end = p->c->at;
    while (trial.at < trial.end && trial.at->kind != TOKEN_NUMBER) {
        trial.at++;
    }
    if (trial.at >= trial.end) {
        return (struct str){"", 0};
    }
    struct str who = cursor_text(p->c, trial.at->span);
    trial.at++;
    static const char *const may[] = {"can", "could", "may", "might", "will", "to", NULL};
    take_among(&trial, may);
    if (!phrase_read(&trial, FOR_ATTACKERS, &phrase)) {
        return (struct str){"", 0};
    }
    return str_format(p->c->arena, "%.*s %.*s", STR_ARG(who),
                      STR_ARG(verb_head(phrase.verb, false)));
}

/* meaning 2 back cuts to the rim, so he curls: told as what is done, and no reason. */
static bool done_in(const struct cursor *c, const struct token *from)
{
    static const char *const getting[] = {"gets", "has", NULL};
    static const char *const giving[] = {"gives", "throws", "puts", "hands",
                                         "drops", "finds",  NULL};
    for (const struct token *at = from; at + 1 < c->at; at++) {
        struct cursor verb = cursor_look(c);
        struct phrase phrase;
        bool who = (at->kind == TOKEN_NUMBER && !at->possessive) || token_is_among(at, he_or_she);
        bool told = who && token_is_word(at + 1, "you"); /* so 5 you slide up */
        verb.at = at + 1 + told;
        verb.end = c->at;
        if (told && verb.at < verb.end && phrase_read(&verb, FOR_ATTACKERS, &phrase)) {
            return true;
        }
        if (who && !token_is_among(at + 1, getting) &&
            (token_is_among(at + 1, giving) ||
             (phrase_read(&verb, FOR_ATTACKERS, &phrase) && phrase.with_s))) {
            return true;
        }
    }
    return false;
}

/* so that 5 can come up to the top. */
static bool goes_so(const struct cursor *c, const struct token *from)
{
    bool can = false, one = false;
    for (const struct token *at = from + 1; token_is_word(from, "so") && at < c->at; at++) {
        struct cursor place = line_look(c, at);
        place.end = c->at;
        one = one || (at->kind == TOKEN_NUMBER && !at->possessive);
        can = can || (one && token_is_word(at, "can"));
        if (can && take_words(&place, "to") && spot_here(&place)) {
            return true;
        }
    }
    return false;
}

/* for a hand-off with 1, sending 2 to the top: somebody has a part in it, or goes somewhere. */
static bool another_in(const struct cursor *c, const struct token *from)
{
    static const char *const mates[] = {"with", "from", "by", NULL};
    static const char *const sent[] = {"him", "her", "them", NULL};
    bool noun = token_is_word(from, "for");
    bool doing = ends_in_ing(from);
    for (const struct token *at = from + 1; at < c->at; at++) {
        bool player = at->kind == TOKEN_NUMBER && !at->possessive;
        struct cursor place = line_look(c, at + 1);
        place.end = c->at;
        if ((noun && player && token_is_among(at - 1, mates)) ||
            (doing && (player || token_is_among(at, sent)) && take_words(&place, "to") &&
             spot_here(&place))) {
            return true;
        }
    }
    return goes_so(c, from);
}

/* `action`: what it would be as a sentence of its own; empty: nothing. */
static void left_out(const struct cursor *c, struct span span, struct str action)
{
    struct str text = cursor_text(c, span);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_ASIDE, span,
                                 "`%.*s` moves nobody and was left out", STR_ARG(text));
    if (action.size > 0) {
        diag_help(c->diags, diag, "what a player does in it is a sentence of its own: `%.*s …`",
                  STR_ARG(action));
    } else {
        diag_help(c->diags, diag, "to keep it, write it as a note: `point \"%.*s\"`",
                  STR_ARG(text));
    }
}

void note_left_out(const struct cursor *c, struct span span)
{
    left_out(c, span, (struct str){"", 0});
}

static const struct {
    const char *word; /* "": any */
    bool (*is_said)(const struct predicate *p);
} rules[] = {
    {"to", purpose_is_said}, {"for", reason_is_said}, {"with", manner_is_said},
    {"as", office_is_said},  {"so", result_is_said},  {"", doing_is_said},
    {"", head_is_said},      {"", open_is_said},
};

/* to receive the throw-in, for a hand-off with 1: it comes to him, who moves for it and does not
 * have it; sending 3 to the corner: 3 goes there. Both are sentences of their own. */
static bool sentence_is(const struct predicate *p)
{
    struct who holder;
    const struct sentence *s = p->s;
    bool comes = s->subject.count == 1 && s->subject.at[0].kind == WHO_PLAYER &&
                 verb_runs(s->verb) && above_holder(p->c, &holder) &&
                 !same_who(&holder, &s->subject.at[0]) && gets_is(p->c);
    return comes || consequence_is(p->c);
}

/* 1, who has the ball, waits for the ball: for another one, or for how long? */
static bool waits_for_his_own(struct predicate *p)
{
    static const char *const balls[] = {"for ball", "for pass", "for it", "to get ball", NULL};
    struct cursor *c = p->c;
    const struct token *from = cursor_next(c);
    const struct sentence *s = p->s;
    struct cursor trial = *c;
    if (s->verb != VERB_STAYS || s->subject.count != 1 || !take_among(&trial, balls) ||
        !part_ends(&trial) || !above_holds(c, &s->subject.at[0])) {
        return false;
    }
    above_list above = above_sentences(c, true);
    const struct sentence *last = above.count > 0 ? above.at[above.count - 1] : NULL;
    if (last && same_who(&last->object, &s->subject.at[0])) { /* it is on its way to him */
        return false;
    }
    struct str who = cursor_text(c, s->subject.at[0].span);
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, cursor_taken(&trial, from),
                     "%.*s has the ball by what stands above", STR_ARG(who)),
              "who waits, is another; who keeps it, `%.*s holds for 1 s`", STR_ARG(who));
    return true;
}

int aside_read(struct predicate *p)
{
    struct cursor *c = p->c;
    if (!c->speech || !plain_word(c)) { /* what reads as it stands has none */
        return 0;
    }
    if (waits_for_his_own(p)) {
        return -1;
    }
    struct cursor_mark mark = cursor_mark(c);
    bool spot = spot_read(c, true) != NULL; /* the deep corner */
    cursor_back(c, mark);
    if ((!spot && take_words_of(c, ASIDE_EMPTY)) || hurry_behind(c)) {
        return 1;
    }
    for (size_t i = 0; i < sizeof rules / sizeof *rules; i++) {
        const char *word = rules[i].word;
        if ((*word && !str_is(cursor_next(c)->text, word)) || !rules[i].is_said(p)) {
            continue;
        }
        if (sentence_is(p)) {
            return 0;
        }
        const struct token *from = c->at;
        take_aside(p, str_is(from->text, "so"));
        if (done_in(c, from) || another_in(c, from)) {
            cursor_back(c, mark);
            return 0;
        }
        left_out(c, cursor_taken(c, from), action_in(p, from));
        return 1;
    }
    return 0;
}
