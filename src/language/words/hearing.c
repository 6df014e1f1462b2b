/* SPDX-License-Identifier: MIT */
/* hearing: what stands in a dictated line because a phone heard it so, or because the speaker went
 * back on it: `won passes to too`, `ex five`, `1 dribbles right no wait 1 dribbles left`. Puts the
 * tokens of the second reading right, each with a note. */
#include "language/words/speech.h"

#include <string.h>

/* ---- numbers heard as words ---- */

/* Nobody but a player can stand behind these. */
static bool waits_for_player(const struct token *from, const struct token *at)
{
    static const char *const words[] = {"to",     "for",  "off",   "with",  "toward", "towards",
                                        "beside", "hits", "finds", "feeds", NULL};
    return at > from && token_is_among(at - 1, words);
}

static bool verb_behind(const struct cursor *c, const struct token *at)
{
    struct cursor trial = cursor_look(c);
    trial.at = at + 1;
    return trial.at < c->end && verb_begins(&trial);
}

static bool ends_behind(const struct cursor *c, const struct token *at)
{
    return at + 1 == c->end || clause_ends(at + 1);
}

static int heard_number(const struct cursor *c, const struct token *from, const struct token *at)
{
    static const struct {
        const char *word;
        int number;
        bool alone; /* it means nothing else anywhere */
    } rows[] = {{"won", 1, true},  {"too", 2, false}, {"to", 2, false},
                {"for", 4, false}, {"fore", 4, true}, {"fife", 5, true}};
    bool first = at == from || clause_ends(at - 1);
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (!token_is_word(at, rows[i].word)) {
            continue;
        }
        bool object = waits_for_player(from, at) && ends_behind(c, at);
        bool fits = rows[i].alone || object || (first && verb_behind(c, at));
        return fits ? rows[i].number : 0;
    }
    return 0;
}

static void note_heard(const struct cursor *c, struct span span, const char *what, int number)
{
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_HEARD, span, "`%.*s` was taken as %s%d",
                                 STR_ARG(cursor_text(c, span)), what, number);
    diag_help(c->diags, diag, "write the digit: `%s%d`", what, number);
}

static void put_number(const struct cursor *c, struct token *token, int number)
{
    note_heard(c, token->span, "", number);
    *token = token_number(c->arena, token, number);
}

static size_t drop(struct token *tokens, size_t count, size_t from, size_t to)
{
    memmove(tokens + from, tokens + to, (count - to) * sizeof *tokens);
    return count - (to - from);
}

/* ex five: two words for one. */
static bool ex_number(const struct cursor *c, struct token *at)
{
    if (!token_is_word(at, "ex") || at + 1 >= c->end || at[1].kind != TOKEN_NUMBER ||
        !at[1].integer) {
        return false;
    }
    int number = (int)at[1].number;
    struct span span = span_join(at->span, at[1].span);
    note_heard(c, span, "x", number);
    at[0] = at[1];
    at->kind = TOKEN_DEFENDER;
    at->span = span;
    at->text = str_format(c->arena, "x%d", number);
    at->first = '\0';
    return true;
}

/* ---- taken back ---- */

/* A bare `no`, `sorry`: who or where stands behind it, and it is no part of what stands before, as
 * in with no hurry. */
static bool said_instead(const struct cursor *c, const struct cursor *behind)
{
    static const char *const nouns[] = {"with", "by",    "has", "is", "are", "at",
                                        "of",   "there", "say", "in", "for", NULL};
    static const char *const heads[] = {"he",  "she",  "to",    "at", "into", "they",
                                        "off", "left", "right", "on", "for",  NULL};
    const struct token *next = behind->at;
    bool again = false; /* hits 4 no hits 2 */
    for (const struct token *at = c->at; next < c->end && at > c->first; at--) {
        again = again || (ends_in_s(next) && str_equal(at[-1].text, next->text));
    }
    return next < c->end && !(c->at > c->first && token_is_among(c->at - 1, nouns)) &&
           (again || next->kind == TOKEN_NUMBER || next->kind == TOKEN_DEFENDER ||
            token_is_among(next, heads));
}

/* no wait, scratch that, with the commas around it. `*loose`: I mean, actually, which may take back
 * or only be said so. */
static bool take_back(struct cursor *c, bool *loose)
{
    static const char *const words[] = {"no wait",
                                        "wait no",
                                        "scratch that",
                                        "strike that",
                                        "correction",
                                        "no no",
                                        "forget that",
                                        "forget it",
                                        "hmm no",
                                        "uh no",
                                        "um no",
                                        "er no",
                                        "no sorry",
                                        "sorry no",
                                        "no i mean",
                                        "no make that",
                                        "make that",
                                        "wait wait",
                                        "actually no",
                                        "take that back",
                                        "let me redo that",
                                        "sorry",
                                        "no",
                                        "nope",
                                        "oops",
                                        "oh no",
                                        "no no no",
                                        "oh wait",
                                        "hold on",
                                        "no hold on",
                                        NULL};
    static const char *const mean[] = {"i mean", "actually", NULL};
    struct cursor trial = *c;
    take_mark(&trial, ',');
    *loose = !take_among(&trial, words);
    if (*loose && !take_among(&trial, mean)) {
        return false;
    }
    take_mark(&trial, ',');
    if (!*loose && trial.at == c->at + 1 && !said_instead(c, &trial)) {
        return false;
    }
    bool not = token_is_word(trial.at, "not") && trial.at + 2 < c->end &&
               trial.at[1].kind == TOKEN_NUMBER; /* no wait, not 3, to 2 */
    trial.at += not ? 2 : 0;
    take_mark(&trial, ',');
    c->at = trial.at;
    return true;
}

/* How a sentence begins: who acts, where that is said, and the verb, where it is a plain one. */
struct head {
    const struct token *verb;
    struct who who;
    bool plain, pronoun;
    struct phrase phrase;
};

static bool head_read(const struct cursor *c, const struct token *at, struct head *out)
{
    static const char *const pronouns[] = {"he", "she", "they", NULL};
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    who_list list;
    *out = (struct head){.who = {.kind = WHO_NONE}};
    trial.at = at;
    out->pronoun = take_among(&trial, pronouns);
    if (!out->pronoun && subject_verb_is(&trial) && subject_read(&trial, &list)) {
        out->who = list.at[0];
    }
    out->verb = trial.at;
    bool is = verb_begins(&trial);
    skip_run_in(&trial);
    out->plain = phrase_read(&trial, FOR_ANYONE, &out->phrase);
    cursor_back(&trial, mark);
    return is;
}

static bool leads(const struct token *token)
{
    static const char *const words[] = {"to", "at", "in", "into", "on", "for", NULL};
    return token_is_among(token, words);
}

/* Where the place ends that begins here, or the player a pass is to; NULL: none does. */
static const struct token *place_end(const struct cursor *c, const struct token *at)
{
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    bool to = leads(at), of = token_is_word(at, "for");
    trial.at = at + to;
    bool found = (!of && spot_read(&trial, true)) || (to && person_read(&trial, &who));
    const struct token *end = found ? trial.at : NULL;
    cursor_back(&trial, mark);
    return end;
}

/* What a place behind stands for: the one right before it, and its preposition where it brings its
 * own. */
static const struct token *replaced_place(const struct cursor *c, const struct token *from,
                                          const struct token *back, const struct token *behind)
{
    const struct token *at = back;
    if (!place_end(c, behind)) {
        return NULL;
    }
    do {
        if (at-- == from) {
            return NULL;
        }
    } while (place_end(c, at) != back);
    while (at > from && place_end(c, at - 1) == back && (leads(behind) || !leads(at - 1))) {
        at--;
    }
    return at;
}

/* 1 passes to 2, actually 3 cuts: taken back, or only said so? */
static bool either(const struct head *before, const struct head *said)
{
    bool subject = said->who.kind == WHO_NONE || same_who(&before->who, &said->who);
    bool verb = before->plain && said->plain && before->phrase.verb == said->phrase.verb;
    return said->pronoun || (!subject && !verb);
}

/* The sentence that is taken back begins at `at`: behind a joint, or, while he does that 2 drifts
 * no wait 2 stays, where the one begins who is spoken of again. */
static bool taken_from(const struct cursor *c, const struct token *from, const struct token *at,
                       const struct head *said, struct head *before)
{
    bool begins = at == from || clause_ends(at - 1);
    bool number = at->kind == TOKEN_NUMBER && !at->possessive;
    return (begins || number) && head_read(c, at, before) &&
           (begins || (said->who.kind == WHO_PLAYER && same_who(&before->who, &said->who)));
}

static bool plain_number(const struct token *at)
{
    return at->kind == TOKEN_NUMBER && at->integer && !at->possessive;
}

/* 4 no 5 cuts, passes to 4 no 5, to the left no right corner: one player or side for another, with
 * nothing else said again. Gives what is taken back, or NULL. */
static const struct token *replaced_word(const struct cursor *c, const struct token *from,
                                         const struct token *back, const struct token *behind)
{
    static const char *const sides[] = {"left", "right", NULL};
    const struct token *said = past_fillers(behind, c->end);
    if (back == from || said == c->end || str_equal(back[-1].text, said->text)) {
        return NULL;
    }
    bool side = token_is_among(back - 1, sides) && token_is_among(said, sides) &&
                said + 1 < c->end && !clause_ends(said + 1);
    bool players = plain_number(back - 1) && plain_number(said);
    bool acts = players && (back - 1 == from || clause_ends(back - 2)) && verb_behind(c, said);
    bool taken = players && waits_for_player(from, back - 1) && ends_behind(c, said);
    return side || acts || taken ? back - 1 : NULL;
}

/* He of whom it is said anew is named here, and does something that no verb tells. */
static bool said_of_him(const struct cursor *c, const struct token *from, const struct token *at,
                        const struct head *said)
{
    struct head before;
    return said->who.kind == WHO_PLAYER && plain_number(at) &&
           (int)at->number == said->who.number && at > from && !waits_for_player(from, at) &&
           !head_read(c, at, &before);
}

/* What the words behind stand for: the sentence right before them, of which the subject stays where
 * they name none, or the place; NULL: nothing, or a sentence that could stand beside it, reported.
 */
static const struct token *replaced(struct cursor *c, const struct token *from,
                                    const struct token *back, const struct token *behind,
                                    bool loose)
{
    struct head before, said;
    const struct token *word = replaced_word(c, from, back, behind);
    if (word) {
        return word;
    }
    if (!head_read(c, behind, &said)) {
        return replaced_place(c, from, back, behind);
    }
    const struct token *at = back;
    do {
        if (at-- == from) {
            return NULL;
        }
        if (said_of_him(c, from, at, &said)) { /* 4 ducks across no 4 sets: as far back as him */
            return at;
        }
    } while (!taken_from(c, from, at, &said, &before));
    if (!loose || !either(&before, &said)) {
        bool verb = said.who.kind == WHO_NONE && said.plain && before.plain &&
                    said.phrase.with_s == before.phrase.with_s;
        return verb ? before.verb : at;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, behind->span, "instead of `%.*s`, or besides it?",
                     STR_ARG(cursor_text(c, span_join(at->span, back[-1].span)))),
              "leave out what is taken back; if both are meant, write `and`");
    return NULL;
}

static size_t take_backs(struct cursor *c, struct token *tokens, size_t count)
{
    for (size_t i = 1; i + 1 < count; i++) {
        struct cursor trial = cursor_look(c);
        bool loose;
        trial.at = tokens + i;
        trial.end = c->end = tokens + count;
        if (!take_back(&trial, &loose) || (loose && clause_ends(&tokens[i - 1]))) {
            continue; /* and actually */
        }
        const struct token *from = replaced(c, tokens, tokens + i, trial.at, loose);
        if (!from) {
            continue;
        }
        struct span gone = span_join(past_fillers(from, trial.at)->span, tokens[i - 1].span);
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_TAKEN_BACK, gone, "`%.*s` is taken back, and left out",
                     STR_ARG(cursor_text(c, gone)));
        diag_help(c->diags, diag, "delete it, and what takes it back");
        size_t to = (size_t)(trial.at - tokens);
        i = (size_t)(from - tokens);
        count = drop(tokens, count, i, to);
        i += i == 0;
    }
    return count;
}

/* four like four lifts: said twice over; what stands between says nothing. */
static bool stuttered(const struct token *at, const struct token *next)
{
    return at->kind == TOKEN_NUMBER && next->kind == TOKEN_NUMBER && !at->possessive &&
           !next->possessive && str_equal(at->text, next->text);
}

static size_t stutters(const struct cursor *c, struct token *tokens, size_t count)
{
    static const char *const between[] = {"like", "uh", "um", "er", "i mean", NULL};
    for (size_t i = 0; i + 1 < count; i++) {
        size_t next = i + 1;
        while (next + 1 < count && token_is_among(&tokens[next], between)) {
            next++;
        }
        size_t and = i + 1 + (i + 1 < count && token_is_word(&tokens[i + 1], "and"));
        while (and > i + 1 && and+1 < count && token_is_among(&tokens[and], between)) {
            and++;
        }
        bool head = i == 0 || clause_ends(&tokens[i - 1]); /* 5 and uh 5 sets */
        next = head && and > i + 2 && stuttered(&tokens[i], &tokens[and]) ? and : next;
        bool two = next == i + 1 && waits_for_player(tokens, tokens + i) &&
                   verb_behind(c, &tokens[next]); /* 1 passes to 2 2 cuts */
        if (!two && stuttered(&tokens[i], &tokens[next])) {
            struct diag *diag = diag_add(c->diags, DIAG_TEXT_TAKEN_BACK, tokens[i].span,
                                         "`%.*s` is said twice, and was taken as one player",
                                         STR_ARG(cursor_text(c, tokens[i].span)));
            diag_help(c->diags, diag, "delete one of the two");
            count = drop(tokens, count, i, next);
        }
    }
    return count;
}

/* waits waits waits: said for how long it takes, which a wait finds by itself. */
static size_t lingers(const struct cursor *c, struct token *tokens, size_t count)
{
    static const char *const words[] = {"waits", "wait", NULL};
    for (size_t i = 0; i + 1 < count; i++) {
        while (i + 1 < count && token_is_among(&tokens[i], words) &&
               str_equal(tokens[i].text, tokens[i + 1].text)) {
            struct diag *diag = diag_add(c->diags, DIAG_TEXT_TAKEN_BACK, tokens[i].span,
                                         "`%.*s` is said again, and was taken once",
                                         STR_ARG(cursor_text(c, tokens[i].span)));
            diag_help(c->diags, diag, "delete one of the two");
            count = drop(tokens, count, i, i + 1);
        }
    }
    return count;
}

/* rolls only until the free-throw line: to there. */
static void only_until(const struct cursor *c, struct token *tokens, size_t count)
{
    static const char *const onlys[] = {"only", "just", "short", NULL};
    for (size_t i = 1; i + 1 < count; i++) {
        struct cursor place = cursor_look(c);
        place.at = tokens + i + 1;
        place.end = tokens + count;
        struct cursor_mark mark = cursor_mark(&place);
        bool spot = token_is_word(&tokens[i], "until") && spot_read(&place, true) != NULL;
        cursor_back(&place, mark);
        if (!spot) {
            continue;
        }
        tokens[i].text = STR("to");
        tokens[i].first = 't';
        tokens[i - 1].filler = tokens[i - 1].filler || token_is_among(&tokens[i - 1], onlys);
    }
}

size_t heard_right(struct cursor *c, struct token *tokens, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        c->end = tokens + count;
        int number = heard_number(c, tokens, tokens + i);
        if (number > 0) {
            put_number(c, &tokens[i], number);
        } else if (token_is_word(&tokens[i], "till") || token_is_word(&tokens[i], "til")) {
            tokens[i].text = STR("until");
            tokens[i].first = 'u';
        } else if (ex_number(c, &tokens[i])) {
            count = drop(tokens, count, i + 1, i + 2);
        }
    }
    count = heard_again(c, tokens, count);
    only_until(c, tokens, count);
    count = lingers(c, tokens, count);
    count = stutters(c, tokens, count);
    c->end = tokens + count;
    return take_backs(c, tokens, count);
}
