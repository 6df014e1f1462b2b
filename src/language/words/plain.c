/* SPDX-License-Identifier: MIT */
/* plain: a line that the grammar has refused, put more plainly: players and places that are
 * described are named (the man guarding 3, the head of the key), and what says only why, or again
 * where somebody is, is left out with a note. By the rows of plain.def; see speech.h. */
#include <string.h>

#include "language/words/loose_read.h"
#include "language/words/put_plain.h"
#include "language/words/run_on.h"

struct plain_row {
    const char *said, *put; /* put NULL: left out */
    bool heard;             /* told by a note */
};
static const struct plain_row plain_rows[] = {
#define PLAIN(said, put) {said, put, false},
#define HEARD(said, put) {said, put, true},
#define LEFT(said) {said, NULL, false},
#include "language/words/plain.def"
#include "language/words/plain_told.def"
#include "language/words/plain_hung.def"
#undef PLAIN
#undef HEARD
#undef LEFT
};
static const struct plain_row jot_rows[] = {
#define JOT(said, put) {said, put, false},
#define LEFT(said) {said, NULL, false},
#define HEARD(said, put) {said, put, true},
#include "language/words/jots.def"
#include "language/words/says.def"
#include "language/words/says_more.def"
#include "language/words/says_coach.def"
#include "language/words/says_why.def"
#undef JOT
#undef LEFT
#undef HEARD
};

static const struct plain_row said_rows[] = {
#define SAY(said, put) {said, put, false},
#define HEARD(said, put) {said, put, true},
#define LEFT(said) {said, NULL, false},
#define ASKED(said, put)
#include "language/words/run_on.def"
#undef SAY
#undef HEARD
#undef LEFT
#undef ASKED
};
static const struct plain_row noted_rows[] = {
#define NOTED(said, put) {said, put, false},
#include "language/words/run_on_notes.def"
#undef NOTED
};
static const struct plain_row asked_rows[] = {
#define SAY(said, put)
#define HEARD(said, put)
#define LEFT(said)
#define ASKED(said, put) {said, put, false},
#include "language/words/run_on.def"
#undef SAY
#undef HEARD
#undef LEFT
#undef ASKED
};

/* What stood where a row has N, PLACE. */
struct found {
    struct who who;
    const struct token *who_at;
    const struct token *place, *place_end;
    const struct token *him;
    const struct token *defender;
    const struct token *far; /* so many feet, steps, seconds */
    const struct token *one; /* the last of several words of which one may stand there */
};

static struct str next_word(const char **text)
{
    while (**text == ' ') {
        (*text)++;
    }
    const char *from = *text;
    while (**text != '\0' && **text != ' ') {
        (*text)++;
    }
    return (struct str){from, (size_t)(*text - from)};
}

static bool ends_here(const struct cursor *c)
{
    static const char *const behind[] = {"and", "then", "while", "as", "when", "so", "until", NULL};
    return cursor_done(c) || cursor_next(c)->kind == TOKEN_MARK || word_among(c, behind);
}

static const char *const at_words[] = {"at", "on", "in", "by", NULL};
static const char *const ball_words[] = {"it", "ball", NULL};
/* Of what list a word of a row is. */
static const struct {
    const char *part;
    const char *const *words;
} kinds[] = {{"HIS", owner_words}, {"AT", at_words}, {"IT", ball_words}};

/* come|cut|get: one of them. */
static bool take_one(struct cursor *c, struct str part, struct found *found)
{
    const struct token *next = cursor_next(c);
    for (size_t from = 0; next->kind == TOKEN_WORD && from < part.size;) {
        size_t to = from;
        while (to < part.size && part.at[to] != '|') {
            to++;
        }
        if (str_equal(next->text, (struct str){part.at + from, to - from})) {
            found->one = next;
            c->at = next + 1;
            return true;
        }
        from = to + 1;
    }
    return false;
}

/* One word of a row at the cursor: taken, and kept where it stands for something. */
static bool take_part(struct cursor *c, struct str part, struct found *found)
{
    static const char *const him[] = {"him", "her", "he", "she", NULL};
    const struct token *next = cursor_next(c);
    if (str_is(part, "END")) {
        return ends_here(c);
    }
    if (str_is(part, "VERB")) {
        return verb_begins(c);
    }
    if (str_is(part, "PART")) {
        take_particles(c);
        return true;
    }
    if (str_is(part, "N's")) {
        found->who_at = next;
        return owner_read(c, &found->who) && found->who.kind == WHO_PLAYER;
    }
    if (!next || next->possessive) {
        return false;
    }
    if (memchr(part.at, '|', part.size)) {
        return take_one(c, part, found);
    }
    if (part.size == 1 && strchr(",.;:/-&@#=", part.at[0])) {
        return take_mark(c, part.at[0]);
    }
    if (str_is(part, "D")) {
        found->defender = next;
        c->at = next + 1;
        return next->kind == TOKEN_DEFENDER;
    }
    if (str_is(part, "FAR")) {
        found->far = next;
        c->at = next + 1;
        return next->kind == TOKEN_MEASURE;
    }
    if (str_is(part, "MAN")) {
        return take_among(c, man_words) || take_words(c, "defender");
    }
    if (str_is(part, "HIM")) {
        found->him = next;
        return take_among(c, him);
    }
    for (size_t i = 0; i < sizeof kinds / sizeof *kinds; i++) {
        if (str_is(part, kinds[i].part)) {
            return take_among(c, kinds[i].words);
        }
    }
    if (str_is(part, "SPOTS")) {
        enum spot spot;
        return several_spot(c, &spot);
    }
    if (str_is(part, "N")) {
        found->who_at = next;
        return person_read(c, &found->who) && found->who.kind == WHO_PLAYER;
    }
    if (str_is(part, "PLACE")) {
        bool place = spot_read(c, true) != NULL;
        found->place = next;
        found->place_end = c->at;
        return place;
    }
    bool bare = part.size > 4 && part.at[part.size - 1] == 's' && /* make screen, for makes */
                str_equal(next->text, (struct str){part.at, part.size - 1});
    if (next->kind != TOKEN_WORD || !(bare || str_equal(next->text, part))) {
        return false;
    }
    c->at = next + 1;
    return true;
}

/* The row from `at` on; gives where it ends, or NULL. */
static const struct token *row_at(const struct cursor *c, const struct token *at, const char *said,
                                  struct found *found)
{
    bool letter = said[0] >= 'a' && said[0] <= 'z'; /* most rows are none by their first letter */
    if (letter && (at->kind != TOKEN_WORD || at->text.at[0] != said[0])) {
        return NULL;
    }
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    trial.at = at;
    bool fits = true;
    for (struct str part = next_word(&said); fits && part.size > 0; part = next_word(&said)) {
        if (str_is(part, "START")) {
            fits = at == c->at || clause_ends(at - 1);
            continue;
        }
        fits = take_part(&trial, part, found) && trial.refusals == mark.refusals;
    }
    const struct token *end = trial.at;
    cursor_back(&trial, mark);
    return fits ? end : NULL;
}

const struct token *row_said(const struct cursor *c, const struct token *at, const char *said)
{
    struct found found = {.who_at = NULL};
    return at < c->end ? row_at(c, at, said, &found) : NULL;
}

static void put_whose(const struct cursor *c, struct recast *r, int number)
{
    recast_number(c, r, number);
    r->tokens.at[r->tokens.count - 1].possessive = true;
}

/* Writes a row's other words. False: nothing above tells who is meant. */
static bool put_row(const struct cursor *c, struct recast *r, const char *put,
                    const struct found *found)
{
    struct who holder = {.kind = WHO_NONE};
    if (strstr(put, "HOLDER") && (!above_holder(c, &holder) || holder.kind != WHO_PLAYER)) {
        return false;
    }
    for (struct str part = next_word(&put); part.size > 0; part = next_word(&put)) {
        if (str_is(part, "N's")) {
            put_whose(c, r, found->who.number);
        } else if (str_is(part, "N") && found->who_at->kind == TOKEN_NUMBER &&
                   !found->who_at->possessive) { /* as it is written, where it is */
            recast_copy(c, r, found->who_at, found->who_at + 1);
        } else if (str_is(part, "N")) {
            recast_number(c, r, found->who.number);
        } else if (str_is(part, "HOLDER's")) {
            put_whose(c, r, holder.number);
        } else if (str_is(part, "HOLDER")) {
            recast_number(c, r, holder.number);
        } else if (str_is(part, "PLACE")) {
            recast_copy(c, r, found->place, found->place_end);
        } else if (str_is(part, "ONE")) {
            recast_copy(c, r, found->one, found->one + 1);
        } else if (str_is(part, "FAR")) {
            recast_copy(c, r, found->far, found->far + 1);
        } else if (str_is(part, "D")) {
            recast_copy(c, r, found->defender, found->defender + 1);
        } else if (str_is(part, "HIM")) {
            recast_copy(c, r, found->him, found->him + 1);
        } else if (str_is(part, ",") || str_is(part, ".")) {
            recast_mark(c, r, part.at[0]);
        } else {
            recast_verb(c, r, part);
        }
    }
    return true;
}

/* ---- why ---- */

/* so that, because; so they can't, so nobody, where no action is told of one who is named. */
static bool why_begins(const struct cursor *c, const struct token *at)
{
    static const char *const always[] = {
        "so that", "because", "in order that", "in order to", "since", "so as to", NULL};
    static const char *const sos[] = {"so", NULL};
    static const char *const nobody[] = {"they",  "nobody", "no one", "there", "nothing",  "we",
                                         "their", "it",     "this",   "that",  "everyone", NULL};
    static const char *const states[] = {"can",   "can't",    "cannot", "could", "has",
                                         "have",  "is",       "are",    "isn't", "aren't",
                                         "will",  "won't",    "would",  "must",  "doesn't",
                                         "don't", "does not", "do not", NULL};
    struct cursor trial = cursor_look(c);
    trial.at = at;
    if (take_among(&trial, always)) {
        return true;
    }
    if (!take_among(&trial, sos)) {
        return false;
    }
    if (word_among(&trial, nobody)) {
        return true;
    }
    enum { FAR = 4 };
    for (const struct token *word = trial.at; word < c->end && word < trial.at + FAR; word++) {
        struct cursor state = trial;
        state.at = word;
        if (word->kind == TOKEN_MARK) {
            return false;
        }
        if (word_among(&state, states)) {
            return true;
        }
    }
    return false;
}

/* Up to the full stop, or to a comma behind which somebody does something. */
static const struct token *why_end(const struct cursor *c, const struct token *at)
{
    static const char *const joints[] = {"and then", "and", "then", NULL};
    for (; at < c->end; at++) {
        if (token_is_mark(at, '.') || token_is_mark(at, ';')) {
            return at;
        }
        struct cursor next = cursor_look(c);
        next.at = at;
        if (take_mark(&next, ',') &&
            ((take_among(&next, joints) && (verb_begins(&next) || subject_verb_is(&next))) ||
             subject_verb_is(&next))) {
            return at;
        }
    }
    return c->end;
}

static const char *const pronouns[] = {"he", "she", "they", "it", NULL};

/* so that 5 can come up to the slot: somebody is to go there, and it is no mere reason. */
static bool goes_in_it(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const moves[] = {"cut", "drive", "come", "curl", "roll", "flash", NULL};
    bool can = false;
    for (const struct token *at = from; at + 1 < to; at++) {
        struct cursor place = cursor_look(c);
        place.at = at;
        place.end = to;
        can = can || (at->kind == TOKEN_NUMBER && !at->possessive && token_is_word(at + 1, "can"));
        if (can && token_is_word(at, "can") && token_is_among(at + 1, moves)) {
            return true;
        }
        if (can && (token_is_word(at, "to") || token_is_word(at, "into")) &&
            spot_behind(&place, place_words)) {
            return true;
        }
    }
    return false;
}

static const struct token *why_at(const struct cursor *c, const struct token *at)
{
    const struct token *word = at;
    if (at == c->at) {
        return NULL;
    }
    bool comma = token_is_mark(at, ',');
    word += comma;
    if (word == c->end || token_is_mark(at - 1, '.') || !why_begins(c, word) ||
        (!comma && token_is_word(word, "since"))) {
        return NULL;
    }
    const struct token *end = why_end(c, word);
    if (goes_in_it(c, word, end)) {
        return NULL;
    }
    struct cursor so = cursor_look(c);
    so.at = word;
    static const char *const sos[] = {"so that", "in order that", NULL};
    bool purpose =
        take_among(&so, sos) && token_is_among(so.at, pronouns);   /* so that she arrives */
    return !purpose && action_told(c, word + 1, end) ? NULL : end; /* so that 2 cuts, 3 screens */
}

/* ---- the line ---- */

enum { LEFT_MOST = 8 };
struct plain {
    struct recast all;
    const struct plain_row *rows;
    size_t row_count;
    plain_way *const *ways;
    struct span left[LEFT_MOST], heard[LEFT_MOST];
    struct str heard_as[LEFT_MOST];
    size_t left_count, heard_count;
    bool changed;
};

static const struct token *leave_out(struct plain *p, const struct token *from,
                                     const struct token *to)
{
    from += from->kind == TOKEN_MARK && from + 1 < to;
    if (p->left_count < LEFT_MOST) {
        p->left[p->left_count++] = span_join(from->span, to[-1].span);
    }
    p->changed = true;
    return to;
}

/* What is put, as one reads it, from that token on. */
static struct str put_text(const struct cursor *c, const struct recast *r, size_t from)
{
    struct str text = {NULL, 0};
    for (size_t i = from; i < r->tokens.count; i++) {
        text = str_format(c->arena, "%.*s%s%.*s", STR_ARG(text), i > from ? " " : "",
                          STR_ARG(r->tokens.at[i].text));
    }
    return text;
}

/* The longest row at `at`, put; gives where it ends, or NULL. */
static const struct token *put_longest(const struct cursor *c, const struct token *at,
                                       struct plain *p)
{
    const struct token *longest = NULL;
    struct found found = {.who = {.kind = WHO_NONE}};
    size_t which = 0;
    for (size_t i = 0; i < p->row_count; i++) {
        struct found one = {.who = {.kind = WHO_NONE}};
        const struct token *end = row_at(c, at, p->rows[i].said, &one);
        if (end && (!longest || end > longest)) {
            longest = end;
            found = one;
            which = i;
        }
    }
    struct cursor here = *c;
    here.at = at;
    if (longest && !p->rows[which].put) {
        return p->left_count < LEFT_MOST ? leave_out(p, at, longest) : NULL;
    }
    size_t had = p->all.tokens.count;
    if (!longest || !put_row(&here, &p->all, p->rows[which].put, &found)) {
        return NULL;
    }
    if (p->rows[which].heard && p->heard_count < LEFT_MOST) {
        p->heard[p->heard_count] = span_join(at->span, longest[-1].span);
        p->heard_as[p->heard_count++] = put_text(&here, &p->all, had);
    }
    p->changed = true;
    return longest;
}

static void tell(const struct cursor *c, const struct plain *p)
{
    for (size_t i = 0; i < p->left_count; i++) {
        note_left_out(c, p->left[i]);
    }
    for (size_t i = 0; i < p->heard_count; i++) {
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_HEARD, p->heard[i], "`%.*s` was taken as `%.*s`",
                     STR_ARG(cursor_text(c, p->heard[i])), STR_ARG(p->heard_as[i]));
        diag_help(c->diags, diag, "write it so, if it is meant");
    }
}

/* What is said in one of the ways that no row tells; gives where it ends, or NULL. */
static const struct token *put_way(const struct cursor *c, const struct token *at, struct plain *p)
{
    struct recast one = {.told = SPAN_NONE};
    const struct token *to = first_put(p->ways, c, at, &one);
    bool told = one.told.source != SOURCE_NONE;
    if (!to || (told && p->left_count == LEFT_MOST)) {
        return NULL;
    }
    if (told) {
        p->left[p->left_count++] = one.told;
    }
    if (one.as.size > 0 && p->heard_count < LEFT_MOST) {
        p->heard[p->heard_count] = span_join(at->span, to[-1].span);
        p->heard_as[p->heard_count++] = put_text(c, &one, 0);
    }
    recast_copy(c, &p->all, one.tokens.at, one.tokens.at + one.tokens.count);
    p->changed = true;
    return to;
}

/* One time through the line; what was put may be part of another row the next time. */
static void put_once(const struct cursor *c, struct plain *p)
{
    p->all = (struct recast){.to = NULL};
    p->changed = false;
    for (const struct token *at = c->at; at < c->end;) {
        bool whys = p->rows == plain_rows && p->left_count < LEFT_MOST;
        const struct token *why = whys ? why_at(c, at) : NULL;
        const struct token *to = why ? leave_out(p, at, why) : put_way(c, at, p);
        to = to ? to : put_longest(c, at, p);
        if (!to) {
            recast_copy(c, &p->all, at, at + 1);
            to = at + 1;
        }
        at = to;
    }
}

static bool put_plainly(const struct cursor *c, struct plain *p)
{
    enum { TIMES_MOST = 4 };
    struct cursor line = *c;
    line.first = line.at;
    bool changed = false;
    for (int i = 0; i < TIMES_MOST && (i == 0 || p->changed); i++) {
        put_once(&line, p);
        changed = changed || p->changed;
        line.at = line.first = p->all.tokens.at;
        line.end = p->all.tokens.at + p->all.tokens.count;
    }
    return changed;
}

bool plain_read(struct cursor *c, sentence_list *out, bool loosely)
{
    static plain_way *const ways[] = {already_put,   talk_put,    shorthand_put, zone_men_put,
                                      described_put, in_turn_put, around_put,    beats_put,
                                      vacated_put,   he_then_put, NULL};
    struct plain p = {
        .rows = plain_rows, .row_count = sizeof plain_rows / sizeof *plain_rows, .ways = ways};
    struct cursor_mark mark = cursor_mark(c);
    struct str help;
    size_t had = out->count;
    if (!put_plainly(c, &p) || p.all.tokens.count == 0) {
        return false;
    }
    struct cursor plain = *c;
    plain.watch = NULL;
    plain.at = p.all.tokens.at;
    plain.end = p.all.tokens.at + p.all.tokens.count;
    struct cursor again = plain;
    bool read = strictly_read(&plain, out) && out->count > had;
    if (!read) { /* who is told by where he stands is named now, and may hang in a sentence */
        struct cursor hangs = again;
        cursor_back(&plain, mark);
        out->count = had;
        read = unfold_read(&hangs, out);
    }
    if (!read) {
        cursor_back(&plain, mark);
        out->count = had;
        read = loosely && loose_read(&again, out, SPAN_NONE, &help);
    }
    if (!read) {
        return false;
    }
    tell(c, &p);
    c->at = c->end;
    return true;
}

/* The line in full where it is a note: put so, and read again as any other. */
bool jot_read(struct cursor *c, sentence_list *out)
{
    static plain_way *const ways[] = {dictated_put, spoken_put,    rundown_put,
                                      likewise_put, each_his_put,  retold_put,
                                      jot_put,      set_named_put, NULL};
    struct plain p = {
        .rows = jot_rows, .row_count = sizeof jot_rows / sizeof *jot_rows, .ways = ways};
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    if (c->jotted || c->unfolded || c->spared > 0 || !put_plainly(c, &p) ||
        p.all.tokens.count == 0) {
        return false;
    }
    struct cursor full = recast_line(c, &p.all);
    full.jotted = true;
    full.doer = full.screener = NULL;
    if (!sentences_read(&full, out) || full.refusals != mark.refusals || out->count == had) {
        cursor_back(c, mark);
        out->count = had;
        return false;
    }
    tell(c, &p);
    c->at = c->end;
    return true;
}

/* The clause by these rows alone. */
static bool clause_put(const struct cursor *c, const struct plain_row *rows, size_t count,
                       struct recast *out)
{
    static plain_way *const ways[] = {NULL};
    struct plain p = {.rows = rows, .row_count = count, .ways = ways};
    if (!put_plainly(c, &p)) {
        return false;
    }
    tell(c, &p);
    *out = p.all;
    return true;
}

bool said_plainly(const struct cursor *c, struct recast *out)
{
    return clause_put(c, said_rows, sizeof said_rows / sizeof *said_rows, out);
}

bool asked_plainly(const struct cursor *c, struct recast *out)
{
    return clause_put(c, asked_rows, sizeof asked_rows / sizeof *asked_rows, out);
}

bool noted_plainly(const struct cursor *c, struct recast *out)
{
    return clause_put(c, noted_rows, sizeof noted_rows / sizeof *noted_rows, out);
}
