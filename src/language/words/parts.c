/* SPDX-License-Identifier: MIT */
/* parts: a line that nothing has read as a whole, taken part by part: each begins where somebody
 * begins to do something, and is read as a line of its own, by everything that reads lines. All of
 * them, or nothing. See loose_read.h. */
#include "language/words/loose_read.h"
#include "language/words/put_plain.h"

/* Where a part may begin: with whom, where that is not said there. */
struct part_start {
    const struct piece *piece;
    int goes_on; /* who acts in the part before, and in this one; 0: it says who does */
    bool run_on; /* nothing joins it to the part before */
};
enum { STARTS_MOST = 10 };
struct parts {
    struct pieces pieces;
    struct part_start at[STARTS_MOST];
    size_t count;
};

/* What makes of a line two stories, or of a clause a condition: its parts hang together. */
static bool hangs_together(const struct cursor *c)
{
    static const char *const ties[] = {"if",        "unless", "or",   "either", "else",
                                       "otherwise", "except", "read", "?",      NULL};
    for (const struct token *at = c->at; at < c->end; at++) {
        if (token_is_among(at, ties) || token_is_mark(at, '?') || token_is_mark(at, ':')) {
            return true;
        }
    }
    return line_turns(c);
}

/* A clause of time stands in the piece, or begins it: 5 dives when 1 passes, and ... */
static bool piece_is_tied(const struct piece *piece)
{
    static const char *const ties[] = {"when",   "as",    "after",  "once",    "while", "until",
                                       "before", "since", "so",     "because", "till",  "where",
                                       "with",   "like",  "moment", "minute",  "time",  NULL};
    for (const struct token *at = piece->from; at < piece->to; at++) {
        if (token_is_among(at, ties)) {
            return true;
        }
    }
    return false;
}

/* when 2 catches it 5 dives: what comes belongs to the moment in front of it. */
static bool leads_in(const struct piece *piece)
{
    static const char *const ties[] = {
        "when", "as",   "after", "once", "while", "until",   "before",   "since", "on", "because",
        "by",   "soon", "at",    "till", "where", "anytime", "whenever", "right", NULL};
    return token_is_among(past_fillers(piece->from, piece->to), ties);
}

/* 5 is on the block: how it is, which may be so or not. */
static bool tells_state(const struct piece *piece)
{
    static const char *const states[] = {"is", "are", "was", "were", NULL};
    for (const struct token *at = piece->from; at < piece->to; at++) {
        if (token_is_among(at, states)) {
            return true;
        }
    }
    return false;
}

/* so 2 can cut: what for. */
static bool for_what(const struct piece *piece)
{
    static const char *const cans[] = {"can",  "could", "has",   "have",   "is",   "are",
                                       "gets", "get",   "can't", "cannot", "will", NULL};
    enum { FAR = 4 };
    bool so = token_is_word(piece->from - 1, "so");
    for (const struct token *at = piece->from; so && at < piece->to && at < piece->from + FAR;
         at++) {
        if (token_is_among(at, cans)) {
            return true;
        }
    }
    return false;
}

static bool acts_at(const struct cursor *c, const struct token *at, bool defends)
{
    static const char *const lightly[] = {"just", "then", "now", "both", "all", NULL};
    at = past_sounds(at, c->end);
    while (at < c->end && token_is_among(at, lightly)) {
        at = past_sounds(at + 1, c->end);
    }
    return verb_at(c, at) || act_begins(at, c->end, defends);
}

/* 3 to 4, 4 up to the wing: who, and where to or to whom. */
static bool leg_at(const struct cursor *c, const struct token *at)
{
    const struct token *next = past_fillers(at + 1, c->end);
    return next < c->end && said_at(next, c->end, "to|up to|down to|out to|over to|back to");
}

/* Somebody begins to do something there. */
static bool who_begins(const struct cursor *c, const struct token *at)
{
    at = past_sounds(at, c->end);
    if (at + 1 >= c->end) {
        return false;
    }
    if (token_is_player(at)) {
        return acts_at(c, at + 1, at->kind == TOKEN_DEFENDER) ||
               (at->kind == TOKEN_NUMBER && leg_at(c, at));
    }
    return token_is_among(at, subject_pronouns) && acts_at(c, at + 1, false);
}

/* The attacker who is named at the head of a piece; 0: another, or nobody. */
static int named_at(const struct cursor *c, const struct piece *piece)
{
    const struct token *at = past_sounds(piece->from, piece->to);
    return at < piece->to && who_begins(c, at) ? attacker_at(at, c->end) : 0;
}

static void add_start(struct parts *parts, const struct piece *piece, int goes_on, bool run_on)
{
    if (parts->count < STARTS_MOST) {
        parts->at[parts->count++] =
            (struct part_start){.piece = piece, .goes_on = goes_on, .run_on = run_on};
    }
}

static void starts_find(const struct cursor *c, struct parts *parts)
{
    const struct pieces *pieces = &parts->pieces;
    int who = named_at(c, &pieces->at[0]);
    bool governed = false; /* by a moment in front: when 2 catches 3 cuts and 4 lifts */
    add_start(parts, &pieces->at[0], 0, false);
    for (size_t i = 1; i < pieces->count; i++) {
        const struct piece *piece = &pieces->at[i];
        const struct token *joint = piece->from - 1;
        bool begins = who_begins(c, piece->from);
        bool bare = token_is_word(joint, "and") && !piece->then;
        bool ends = piece->then || sentence_ends(joint);
        governed = !ends && (governed || leads_in(&pieces->at[i - 1]));
        bool loose = piece->relative || piece->meanwhile || token_is_word(joint, "before") ||
                     governed || (bare && piece_is_tied(&pieces->at[i - 1])) || for_what(piece) ||
                     tells_state(&pieces->at[i - 1]);
        bool run_on = piece->from == pieces->at[i - 1].to;
        bool goes_on = who > 0 && !begins && (run_on || piece->then) &&
                       piece->from->kind == TOKEN_WORD && ends_in_s(piece->from) &&
                       acts_at(c, piece->from, false);
        if (!loose && (begins || goes_on)) {
            add_start(parts, piece, begins ? 0 : who, run_on);
        }
        who = begins ? named_at(c, piece) : who;
    }
}

/* Who goes on behind a pass of his own could be the other one; and who stays goes nowhere. */
static bool may_not_go_on(const sentence_list *out, int who)
{
    const struct sentence *last = out->count > 0 ? &out->at[out->count - 1] : NULL;
    enum verb_task task = last ? verb_row(last->verb)->task : VERB_MOVE;
    return last && (task == VERB_PASS || task == VERB_EXCHANGE || task == VERB_HOLD) &&
           last->subject.count > 0 && last->subject.at[0].number == who;
}

/* The part from one start to where another begins, as a line of its own. */
static bool part_as_line(struct cursor *c, const struct part_start *start, const struct token *to,
                         sentence_list *out)
{
    struct recast words = {.to = NULL};
    struct cursor here = line_look(c, start->piece->from);
    if (start->goes_on && may_not_go_on(out, start->goes_on)) {
        return false;
    }
    if (start->piece->then) {
        recast_word(&here, &words, "then");
    }
    if (start->goes_on) {
        recast_number(&here, &words, start->goes_on);
    }
    recast_copy(c, &words, start->piece->from, to);
    struct cursor one = recast_afresh(c, &words);
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    one.parted = true;
    if (!sentences_read(&one, out) || one.refusals != mark.refusals ||
        (out->count == had && one.remark.end == 0)) {
        cursor_back(c, mark);
        out->count = had;
        return false;
    }
    if (out->count == had) {
        note_left_out(c, one.remark);
    }
    return true;
}

static void tell_run_on(const struct cursor *c, const struct part_start *start)
{
    const struct token *at = past_sounds(start->piece->from, c->end);
    if (start->run_on) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_HEARD, at->span,
                                     "a new sentence was taken to begin with `%.*s`",
                                     STR_ARG(cursor_text(c, at->span)));
        diag_help(c->diags, diag, "write a comma in front of it, if it does");
    }
}

/* From each start as much as can be read at once. */
static bool all_parts(struct cursor *c, const struct parts *parts, sentence_list *out)
{
    for (size_t i = 0; i < parts->count;) {
        size_t next = i == 0 ? parts->count - 1 : parts->count; /* the whole was refused */
        while (next > i) {
            const struct piece *last = next < parts->count
                                           ? parts->at[next].piece - 1
                                           : &parts->pieces.at[parts->pieces.count - 1];
            if (part_as_line(c, &parts->at[i], last->to, out)) {
                break;
            }
            next--;
        }
        if (next == i) {
            return false;
        }
        tell_run_on(c, &parts->at[i]);
        i = next;
    }
    return true;
}

bool parts_read(struct cursor *c, sentence_list *out)
{
    struct parts parts = {.count = 0};
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    if (c->parted || c->spared > 0 || c->at == c->end || hangs_together(c) ||
        !line_cut(c, &parts.pieces)) {
        return false;
    }
    starts_find(c, &parts);
    if (parts.count < 2 || parts.count == STARTS_MOST || !all_parts(c, &parts, out) ||
        out->count == had) {
        cursor_back(c, mark);
        out->count = had;
        return false;
    }
    c->at = c->end;
    return true;
}
