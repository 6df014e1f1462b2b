/* SPDX-License-Identifier: MIT */
/* spare: a line that nothing else has read, and in which the grammar stumbles over what a sentence
 * can spare: the way somebody takes, where he comes from, how, what for. That is left out, with a
 * note, and the rest read again, whole or not at all. A verb of common English that no table has is
 * taken for what it means, and a clause that nothing joins begins a sentence, each with a note. By
 * the rows of spare.def; see loose_read.h. */
#include "language/words/loose_read.h"
#include "language/words/people.h"
#include "language/words/put_plain.h"

#include <string.h>

static const struct {
    const char *leads, *ends;
} rows[] = {
#define SPARE(leads, ends) {leads, ends},
#include "language/words/spare.def"
};

static const char *const before_words =
#define BEFORE(words) words
#include "language/words/spare.def"
    ;
static const char *const with_words =
#define WITH_IT(words) words
#include "language/words/spare.def"
    ;

static const struct {
    const char *verbs, *put;
} others[] = {
#define OTHER(verbs, verb) {verbs, verb},
#include "language/words/spare.def"
};

/* ---- a phrase ---- */

/* As many of these words as stand there. */
static const struct token *past_words(const struct token *at, const struct token *end,
                                      const char *words)
{
    for (const struct token *to = at; to; to = at < end ? said_at(at, end, words) : NULL) {
        at = past_fillers(to, end);
    }
    return at;
}

/* x4, 3's defender, his man. */
static const struct token *man_end(const struct cursor *c, const struct token *at)
{
    static const char *const parts[] = {"head", "back", "body", "hip", NULL};
    bool owned = at < c->end && (token_is_among(at, owner_words) || at->possessive);
    bool his =
        at + 1 < c->end && (token_is_among(at + 1, guard_words) || token_is_among(at + 1, parts));
    if (at < c->end && at->kind == TOKEN_DEFENDER) {
        return at + 1 + (at->possessive && his);
    }
    return owned && his ? at + 2 : NULL;
}

bool may_stand_there(const struct cursor *c, const struct token *at, const struct place *place)
{
    struct somebody one;
    struct spot_stood stood;
    bool own;
    const struct token *clause = clause_begin(c, at);
    if (!clause_subject(c, clause, &one, &own) || names_player(c->at, one.from, one.who.number) ||
        !above_stands(c, &one.who, &stood)) {
        return true; /* nothing tells: he may */
    }
    return stood_on(&stood, place);
}

/* behind her: where no `he` hangs on who that is. */
static const struct token *him_end(const struct cursor *c, const struct token *at)
{
    static const char *const pronouns[] = {"him", "her", "them", NULL};
    for (const struct token *other = at + 1; other < c->end && !sentence_ends(other); other++) {
        if (token_is_among(other, subject_pronouns)) {
            return NULL;
        }
    }
    return at < c->end && token_is_among(at, pronouns) ? at + 1 : NULL;
}

/* Where an end of this kind is over, or NULL. */
static const struct token *kind_end(const struct cursor *c, const struct token *at,
                                    const char *kind, size_t size)
{
    const struct place *place;
    struct str name = {kind, size};
    if (str_is(name, "MAN")) {
        return man_end(c, at);
    }
    if (str_is(name, "HIM")) {
        return him_end(c, at);
    }
    if (!str_is(name, "HOME")) {
        return NULL;
    }
    const struct token *spot = at;
    spot += at < c->end && token_is_among(at, owner_words);
    const struct token *end = spot_end(c, spot, &place);
    return end && may_stand_there(c, at, place) ? end : NULL;
}

/* The longest of these ends. */
static const struct token *ends_at(const struct cursor *c, const struct token *at, const char *ends)
{
    const struct token *longest = at < c->end ? said_at(at, c->end, ends) : NULL;
    for (const char *kind = ends; kind && *kind >= 'A' && *kind <= 'Z';) {
        const char *bar = strchr(kind, '|');
        const struct token *end = kind_end(c, at, kind, bar ? (size_t)(bar - kind) : strlen(kind));
        longest = end && (!longest || end > longest) ? end : longest;
        kind = bar ? bar + 1 : NULL;
    }
    return longest;
}

/* What a row spares from `at` on; NULL: nothing. */
static const struct token *row_end(const struct cursor *c, const struct token *at, size_t row)
{
    if (rows[row].leads[0] == '\0') {
        return said_at(at, c->end, rows[row].ends);
    }
    const struct token *lead = said_at(at, c->end, rows[row].leads);
    if (!lead || lead == c->end) {
        return NULL;
    }
    const struct token *near = past_fillers(lead, c->end);
    const struct token *end = ends_at(c, near, rows[row].ends);
    return end ? end : ends_at(c, past_words(lead, c->end, with_words), rows[row].ends);
}

/* The longest phrase that begins here and can be spared; NULL: none. */
static const struct token *phrase_end(const struct cursor *c, const struct token *at)
{
    const struct token *longest = NULL;
    const struct token *led = past_words(at, c->end, before_words);
    if (at->kind != TOKEN_WORD || at->filler) {
        return NULL;
    }
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        const struct token *end = row_end(c, at, i);
        bool further = led > at && led < c->end && rows[i].leads[0] != '\0';
        end = end || !further ? end : row_end(c, led, i);
        longest = end && (!longest || end > longest) ? end : longest;
    }
    return longest;
}

/* ---- what is done about it ---- */

struct mend {
    const struct token *from, *to;
    const char *put; /* NULL: left out */
};

static const struct token *token_at(const struct cursor *c, struct span blamed)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        if (at->span.begin >= blamed.begin && !at->filler) {
            return at;
        }
    }
    return NULL;
}

/* The phrase that the error lies in, or stands right in front of. */
static bool phrase_over(const struct cursor *c, const struct token *blamed, struct mend *out)
{
    enum { BACK = 4 };
    const struct token *from = blamed - c->at > BACK ? blamed - BACK : c->at;
    for (const struct token *at = from; at <= blamed; at++) {
        const struct token *end = at > c->at ? phrase_end(c, at) : NULL;
        bool away = end && token_is_word(at, "away") && !token_is_mark(at - 1, ',');
        if (end && end > blamed && !away) { /* to the corner away from the ball: which one */
            *out = (struct mend){.from = at, .to = end};
            return true;
        }
    }
    return false;
}

/* to 3, over to the roller: to whom it is given, and no place. */
static bool to_somebody(const struct cursor *c, const struct token *at)
{
    struct cursor trial = line_look(c, past_words(at, c->end, before_words));
    struct somebody one;
    return take_words(&trial, "to") && player_here(&trial, &one);
}

/* A verb that no table has, behind who acts. */
static bool verb_over(const struct cursor *c, const struct token *blamed, struct mend *out)
{
    struct mend best = {.to = NULL};
    bool acts = blamed > c->at && (number_token(blamed - 1) || clause_begins_at(c, blamed));
    for (size_t i = 0; acts && i < sizeof others / sizeof *others; i++) {
        const struct token *end = said_at(blamed, c->end, others[i].verbs);
        bool gives = strcmp(others[i].put, "passes") == 0;
        if (end && (!best.to || end > best.to) && (!gives || to_somebody(c, end))) {
            best = (struct mend){.from = blamed, .to = end, .put = others[i].put};
        }
    }
    *out = best.to ? best : *out;
    return best.to != NULL;
}

/* The first phrase behind the error that can be spared. */
static bool phrase_behind(const struct cursor *c, const struct token *blamed, struct mend *out)
{
    for (const struct token *at = blamed + 1; at < c->end; at++) {
        const struct token *end = phrase_end(c, at);
        if (end) {
            *out = (struct mend){.from = at, .to = end};
            return true;
        }
    }
    return false;
}

/* 4 flashes to the elbow gets the ball from 1, one goes five pops: another clause begins at the
 * error, and nothing joins it. */
static bool joint_over(const struct cursor *c, const struct token *blamed, struct mend *out)
{
    static const char *const persons[] = {
        "he", "she", "they", "everybody", "everyone", "everybody else", NULL};
    static const char *const lights[] = {"sets", "gets", "takes", "makes", "uses", "hits", NULL};
    static const char *const whoms[] = {"him", "her", "them", NULL}; /* passes to 2 cuts: who? */
    struct cursor trial = line_look(c, blamed);
    struct phrase phrase;
    bool acts = blamed > c->at + 1 && (number_token(blamed) || token_is_among(blamed, persons)) &&
                subject_verb_is(&trial) && bare_before(&trial);
    bool goes_on = blamed > c->at + 1 && ends_in_s(blamed) && !number_token(blamed - 1) &&
                   !token_is_among(blamed - 1, whoms) &&
                   ((phrase_read(&trial, FOR_ATTACKERS, &phrase) && phrase.with_s &&
                     verb_row(phrase.verb)->task != VERB_GUARD) ||
                    act_begins(blamed, c->end, false) || token_is_among(blamed, lights));
    struct span two = blamed > c->at ? span_join(blamed[-1].span, blamed->span) : blamed->span;
    struct str text = cursor_text(c, two);
    bool unit = memchr(text.at, '.', text.size) != NULL; /* taking 2 s. 4 stays */
    if ((!acts && !goes_on) || unit || counts_at(c->at, blamed, c->end)) {
        return false;
    }
    *out = (struct mend){.from = blamed, .to = blamed, .put = ","};
    return true;
}

static void tell(const struct cursor *c, const struct mend *mend)
{
    if (mend->from == mend->to) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_HEARD, mend->from->span,
                                     "a new sentence was taken to begin with `%.*s`",
                                     STR_ARG(cursor_text(c, mend->from->span)));
        diag_help(c->diags, diag, "write it in a line of its own");
        return;
    }
    struct span span = span_join(mend->from->span, mend->to[-1].span);
    if (!mend->put) {
        note_left_out(c, span);
        return;
    }
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_HEARD, span, "`%.*s` was taken as `%s`",
                                 STR_ARG(cursor_text(c, span)), mend->put);
    diag_help(c->diags, diag, "write it so, if it is meant");
}

/* The line as it is without it, read from the beginning. */
static bool mended_read(struct cursor *c, const struct mend *mend, sentence_list *out)
{
    struct recast r = {.told = SPAN_NONE};
    struct cursor here = *c;
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    here.at = mend->from;
    bool comma = !mend->put && token_is_mark(mend->from - 1, ',') && mend->to < c->end &&
                 mend->to->kind == TOKEN_MARK; /* no two of them behind one another */
    recast_copy(c, &r, c->at, mend->from - comma);
    if (mend->put && mend->from == mend->to) {
        recast_mark(&here, &r, ',');
    } else if (mend->put) {
        recast_verb(&here, &r, str_of(mend->put));
    }
    recast_copy(c, &r, mend->to, c->end);
    struct cursor line = recast_line(c, &r);
    line.spared++;
    if (line.at == line.end || !sentences_read(&line, out) || out->count == had) {
        cursor_back(c, mark);
        out->count = had;
        return false;
    }
    tell(c, mend);
    return true;
}

bool spare_read(struct cursor *c, sentence_list *out, const struct diag *error)
{
    enum { DEEP = 4 };
    const struct token *at = token_at(c, error->span);
    bool verb = error->row == &diag_rows[DIAG_TEXT_VERB_UNKNOWN];
    bool left = error->row == &diag_rows[DIAG_TEXT_LEFT_OVER] ||
                error->row == &diag_rows[DIAG_TEXT_PLACE_UNKNOWN] ||
                error->row == &diag_rows[DIAG_TEXT_LIST_UNFIT];
    struct mend mend;
    if (!at || error->row == &diag_rows[DIAG_TEXT_PLACE_HALF] || c->unfolded || c->spared >= DEEP ||
        line_turns(c)) {
        return false;
    }
    if (phrase_over(c, at, &mend) || (verb && verb_over(c, at, &mend)) ||
        (left && joint_over(c, at, &mend))) {
        if (mended_read(c, &mend, out)) {
            return true;
        }
    }
    return c->spared == 0 && phrase_behind(c, at, &mend) && mended_read(c, &mend, out);
}
