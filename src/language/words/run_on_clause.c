/* SPDX-License-Identifier: MIT */
/* run_on_clause: one clause of a run-on line, read as it is put plainly, as it stands, with the
 * next one, and without its last words. See run_on.h.
 */
#include "language/words/grammar.h"
#include "language/words/loose_read.h"
#include "language/words/run_on.h"

enum { TOGETHER_MOST = 3 };

/* These tokens as a line of their own; false: nothing of it, silently. `*idle`: they are read, and
 * tell nothing to do. */
static bool tokens_read(struct run_on_run *r, const token_list *tokens, bool *idle)
{
    struct recast all = {.to = NULL};
    struct cursor_mark mark = cursor_mark(r->c);
    sentence_list *out = &r->out->sentences;
    size_t had = out->count;
    recast_copy(r->c, &all, tokens->at, tokens->at + tokens->count);
    struct cursor line = recast_afresh(r->c, &all);
    line.parted = true;
    line.meant = (struct str){NULL, 0};
    *idle = false;
    bool read = tokens->count > 0 && sentences_read(&line, out) && line.refusals == mark.refusals;
    if (!r->note && read && out->count == had && line.remark.end > 0 &&
        !run_on_moves(r->c, tokens->at, tokens->at + tokens->count)) {
        note_left_out(r->c, line.remark);
        *idle = true;
        return true;
    }
    if (!read || out->count == had) {
        cursor_back(r->c, mark);
        out->count = had;
        return false;
    }
    return true;
}

static void told(struct run_on_run *r, const token_list *tokens)
{
    strbuf_text(&r->text, r->text.size > 0 ? ". " : "");
    strbuf_add(&r->text, tokens_typed(r->c->arena, tokens->at, tokens->at + tokens->count));
}

/* The clauses from `from` to `to`, the first of them put plainly (`plainly`), the others as they
 * stand behind it. */
static bool together_read(struct run_on_run *r, size_t from, size_t to, bool plainly)
{
    struct cursor_mark mark = cursor_mark(r->c);
    struct run_on_people had = r->people;
    const struct run_on_piece *piece = &r->pieces.at[from];
    struct run_on_piece whole = *piece;
    struct recast all = {.to = NULL};
    struct recast line = {.to = NULL};
    bool nothing = false, idle = false, said = true;
    whole.to = r->pieces.at[to - 1].to;
    struct recast full = {.to = NULL};
    struct cursor piece_line = look_between(r->c, whole.from, whole.to);
    if (r->note && noted_plainly(&piece_line, &full) && full.tokens.count > 0) {
        whole.from = full.tokens.at;
        whole.to = full.tokens.at + full.tokens.count;
    }
    if (plainly) {
        said = run_on_say(r->c, &whole, &r->people, &all, &nothing);
    } else {
        recast_copy(r->c, &all, whole.from, whole.to);
    }
    recast_copy(r->c, &line, r->moment.at, r->moment.at + r->moment.count);
    recast_copy(r->c, &line, all.tokens.at, all.tokens.at + all.tokens.count);
    if (said && nothing) {
        note_left_out(r->c, span_join(whole.from->span, whole.to[-1].span));
        return true;
    }
    if (!said || !tokens_read(r, &line.tokens, &idle)) {
        cursor_back(r->c, mark);
        r->people = had;
        return false;
    }
    if (!idle) {
        told(r, &line.tokens);
        r->moment.count = 0;
    }
    if (!plainly && r->out->sentences.count > 0) { /* he in the next clause is of this one */
        const struct sentence *last = &r->out->sentences.at[r->out->sentences.count - 1];
        bool one = last->subject.count == 1 && last->subject.at[0].kind == WHO_PLAYER;
        r->people.said = one ? last->subject.at[0].number : r->people.said;
    }
    return true;
}

/* Nobody in this line has passed to him yet. */
static bool waits_for_pass(const struct run_on_run *r, int number)
{
    const sentence_list *all = &r->out->sentences;
    for (size_t i = 0; i < all->count; i++) {
        enum verb_task task = verb_row(all->at[i].verb)->task;
        if ((task == VERB_PASS || task == VERB_EXCHANGE) && all->at[i].object.number == number) {
            return false;
        }
    }
    return true;
}

/* when 4 catches it, and nobody passes to him: whoever has the ball does, with a note. */
static void pass_supplied(struct run_on_run *r, const struct token *at, const struct token *to)
{
    static const char *const gets[] = {"catches",  "catch",  "gets it", "gets the ball",
                                       "receives", "get it", NULL};
    struct who holder;
    struct cursor here = line_look(r->c, at);
    struct cursor verb = line_look(r->c, at + 1);
    int number = attacker_at(at, to);
    bool idle;
    if (!number || !take_among(&verb, gets) || !above_holder(r->c, &holder) ||
        holder.kind != WHO_PLAYER || holder.number == number || !waits_for_pass(r, number)) {
        return;
    }
    struct recast pass = {.to = NULL};
    recast_number(&here, &pass, holder.number);
    recast_word(&here, &pass, "passes");
    recast_word(&here, &pass, "to");
    recast_number(&here, &pass, number);
    struct span span = span_join(at->span, verb.at[-1].span);
    if (tokens_read(r, &pass.tokens, &idle)) {
        told(r, &pass.tokens);
        note_pass_brought(r->c, span, holder.number, number);
    }
}

/* The moment goes with the clause behind it; it is kept as it stands, he named. */
void run_on_moment(struct run_on_run *r, const struct run_on_piece *piece)
{
    struct recast all = {.to = NULL};
    const struct token *behind = piece->from;
    while (behind < piece->to && !run_on_begins(r->c, behind)) {
        behind++;
    }
    pass_supplied(r, past_sounds(behind, piece->to), piece->to);
    recast_copy(r->c, &all, piece->from, behind);
    run_on_asked(r->c, behind, piece->to, &r->people, &all);
    struct cursor here = line_look(r->c, piece->from);
    recast_mark(&here, &all, ',');
    r->moment = all.tokens;
    r->moment_span = span_join(piece->from->span, piece->to[-1].span);
    int number = attacker_at(past_sounds(behind, piece->to), piece->to);
    r->moment_idle = run_on_seen(past_sounds(behind, piece->to), piece->to);
    r->people.said = number ? number : r->people.said;
}

/* Behind what is done, how or by whom it is: it can be left out, with a note. */
static bool tail_at(const struct cursor *c, const struct token *at)
{
    static const char *const leads[] = {"behind",
                                        "in front of",
                                        "on",
                                        "for",
                                        "with",
                                        "like",
                                        "down low",
                                        "up top",
                                        "around",
                                        "over",
                                        "past",
                                        "at",
                                        "as",
                                        "from",
                                        "in",
                                        "where",
                                        "who",
                                        "so",
                                        "to get",
                                        "to pull",
                                        "to draw",
                                        "to be",
                                        "to make",
                                        "to take",
                                        "to keep",
                                        "to help",
                                        "to clear",
                                        "to free",
                                        "the other way",
                                        "right behind",
                                        "to fill",
                                        "out of",
                                        "off of",
                                        "to bring",
                                        "give and go",
                                        "the second",
                                        "overload",
                                        "to stretch",
                                        "by",
                                        "wide",
                                        NULL};
    struct cursor trial = line_look(c, at);
    return word_among(&trial, leads);
}

/* The clause without its last words, the fewer the better; a note tells which. Nobody is named in
 * them but behind `behind`, and nobody's deed is in them. */
static bool shortened_read(struct run_on_run *r, size_t at)
{
    enum { LEFT_LEAST = 3, TRIES_MOST = 4 };
    struct run_on_piece *piece = &r->pieces.at[at];
    const struct token *end = piece->to;
    int tries = 0;
    for (const struct token *tail = end - 1; tail >= piece->from + LEFT_LEAST; tail--) {
        if (attacker_at(tail, end) && !token_is_word(tail - 1, "behind")) {
            break;
        }
        if (!tail_at(r->c, tail) || tries++ == TRIES_MOST) {
            continue;
        }
        struct cursor_mark mark = cursor_mark(r->c);
        note_left_out(r->c, span_join(tail->span, end[-1].span));
        piece->to = tail;
        if (together_read(r, at, at + 1, true)) {
            return true;
        }
        piece->to = end;
        cursor_back(r->c, mark);
    }
    return false;
}

/* 5 looks at 4: he is spoken of, and so is 4. */
static void look_from(struct run_on_run *r, const struct run_on_piece *piece)
{
    const struct token *at = past_sounds(piece->from, piece->to);
    int said = attacker_at(at, piece->to);
    r->people.said = said ? said : r->people.said;
    for (at++; at < piece->to && !attacker_at(at, piece->to);) {
        at++;
    }
    r->people.moved = at < piece->to ? attacker_at(at, piece->to) : r->people.moved;
}

void run_on_leave_out(struct run_on_run *r, const struct run_on_piece *piece)
{
    static const char *const yous[] = {"you", "don't", "you're", NULL};
    const struct token *at = past_sounds(piece->from, piece->to);
    int said = at < piece->to ? attacker_at(at, piece->to) : 0;
    note_left_out(r->c, span_join(piece->from->span, piece->to[-1].span));
    if (said && piece->kind == RUN_ON_DEED) { /* 2 you don't watch him: it goes on with 2 */
        bool you = at + 1 < piece->to && token_is_among(at + 1, yous);
        r->people.said = said;
        r->people.addressed = you ? said : r->people.addressed;
    }
}

/* The clause at `at`, or it and the next ones; gives how many were read, 0: none. */
size_t run_on_clause(struct run_on_run *r, size_t at)
{
    const struct run_on_piece *piece = &r->pieces.at[at];
    if (together_read(r, at, at + 1, true)) {
        return 1;
    }
    if (!r->note && r->moment.count == 0 && run_on_idle(r->c, piece)) {
        run_on_leave_out(r, piece);
        look_from(r, piece);
        return 1;
    }
    if (together_read(r, at, at + 1, false)) {
        return 1;
    }
    for (size_t to = at + 2; to <= r->pieces.count && to <= at + TOGETHER_MOST; to++) {
        if (r->pieces.at[to - 1].kind == RUN_ON_IF) {
            break;
        }
        if (together_read(r, at, to, true) || together_read(r, at, to, false)) {
            return to - at;
        }
    }
    if (!r->note && shortened_read(r, at)) {
        return 1;
    }
    if (r->moment.count > 0 &&
        r->moment_idle) { /* without its moment, behind what stands before it */
        struct cursor_mark mark = cursor_mark(r->c);
        token_list moment = r->moment;
        struct recast then = {.to = NULL};
        struct cursor here = line_look(r->c, piece->from);
        recast_word(&here, &then, "then");
        r->moment = then.tokens;
        note_left_out(r->c, r->moment_span);
        if (together_read(r, at, at + 1, true)) {
            return 1;
        }
        cursor_back(r->c, mark);
        r->moment = moment;
    }
    return 0;
}
