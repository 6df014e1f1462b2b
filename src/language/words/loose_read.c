/* SPDX-License-Identifier: MIT */
/* loose_read: a refused line, cut into clauses, each read by the grammar or else by its pieces: see
 * loose_read.h. */
#include "language/words/loose_read.h"

#include "language/words/put_plain.h"

static const char same_time_words[] =
    "at the same time|same time|at same time|simultaneously|in the meantime|meantime|meanwhile|at "
    "that "
    "same time|all at once|together with that|on the other side|at that moment|at this moment";
static const char then_words[] = "after that|next|from there|finally|last|lastly|last "
                                 "thing|afterwards|afterward|later|second|third|"
                                 "and then|then|out of that|off that|off of that|following "
                                 "that|once that's done|when that's done";
enum { TOKENS_MOST = 120 };
struct loose {
    struct cursor *c; /* on the speech */
    sentence_list *out;
    struct pieces pieces;
    struct who carried; /* the last piece only named who acts: 5 goes down and; else WHO_NONE */
    struct who idle;    /* who did what moves nobody, and may go on; else WHO_NONE */
    token_list tie;     /* a clause of time that goes with the next piece */
    struct strbuf text;
    bool sure;
    bool pair;                /* the last piece was of two who each do it */
    const struct piece *lost; /* one that is not understood; NULL: none */
    size_t had;               /* sentences before it */
};

/* ---- telling ---- */

static void tell(struct loose *l, struct str words)
{
    if (l->text.size > 0) {
        strbuf_text(&l->text, ", ");
    }
    strbuf_add(&l->text, words);
}

/* Tokens as somebody types them. */
static void tell_tokens(struct loose *l, const token_list *tokens)
{
    bool gap = l->text.size > 0;
    for (size_t i = 0; i < tokens->count; i++) {
        const struct token *token = &tokens->at[i];
        if (token->kind == TOKEN_MARK) {
            strbuf_text(&l->text, i + 1 < tokens->count ? "," : "");
            continue;
        }
        strbuf_text(&l->text, i > 0 ? " " : gap ? ", " : "");
        if (token->kind == TOKEN_NUMBER) {
            strbuf_print(&l->text, "%d", (int)token->number);
        } else {
            for (size_t n = 0; n < token->text.size; n++) {
                strbuf_char(&l->text, token->text.at[n] == '-' ? ' ' : token->text.at[n]);
            }
        }
        strbuf_text(&l->text, token->possessive ? "'s" : "");
    }
}

/* The tokens are what is typed there: of what was put in the place of other words the text between
 * two of them says something else. */
static bool as_typed(const struct token *from, const struct token *to)
{
    for (const struct token *at = from; at < to; at++) {
        bool word = at->kind == TOKEN_WORD && !at->possessive;
        if ((word && at->span.end - at->span.begin != at->text.size) ||
            (at > from && at->span.begin < at[-1].span.end)) {
            return false;
        }
    }
    return true;
}

/* As it is written; where that has been put in another order, as it stands now. */
static void tell_said(struct loose *l, const struct token *from, const struct token *to)
{
    struct recast said = {.to = NULL};
    if (!l->c->unfolded && as_typed(from, to)) {
        tell(l, source_text(l->c->sources, span_join(from->span, to[-1].span)));
        return;
    }
    recast_copy(l->c, &said, from, to);
    tell_tokens(l, &said.tokens);
}

/* ---- reading ---- */

static void joined(struct loose *l)
{
    l->carried = l->idle = (struct who){.kind = WHO_NONE};
    l->tie.count = 0;
}

/* What was left out names somebody: so one stops for the jumper. */
static bool left_out_somebody(const struct cursor *c, struct cursor_mark mark,
                              const struct token *from, const struct token *to)
{
    for (size_t i = mark.diags; i < c->diags->all.count; i++) {
        const struct diag *diag = &c->diags->all.at[i];
        for (const struct token *at = from; at < to && diag->row == &diag_rows[DIAG_TEXT_ASIDE];
             at++) {
            if (token_is_player(at) && at->span.begin >= diag->span.begin &&
                at->span.end <= diag->span.end) {
                return true;
            }
        }
    }
    return false;
}

static bool strict_part(struct loose *l, const struct token *from, const struct token *to)
{
    struct cursor part = *l->c;
    struct cursor_mark mark = cursor_mark(l->c);
    size_t had = l->out->count;
    part.speech = NULL;
    part.watch = NULL;
    part.remark = SPAN_NONE;
    part.at = part.first = from;
    part.end = to;
    if (strictly_read(&part, l->out) && part.refusals == mark.refusals &&
        !left_out_somebody(&part, mark, from, to)) {
        return true;
    }
    cursor_back(&part, mark);
    l->out->count = had;
    return false;
}

/* 1 picks 5, who has the ball: he chooses him. */
static bool chooses(const struct loose *l, const struct token *from, const struct token *to)
{
    const struct sentence *last = &l->out->at[l->out->count - 1];
    bool picks = false;
    for (const struct token *at = from; at < to && !picks; at++) {
        picks = said_at(at, to, "pick") && !said_at(at, to, "pick up|pick for");
    }
    return picks && verb_row(last->verb)->task == VERB_SCREEN && last->subject.count == 1 &&
           above_holds(l->c, &last->subject.at[0]);
}

/* The next piece only says where the use of a screen ends. */
static bool ends_behind(const struct loose *l, const struct piece *piece)
{
    const struct piece *next = piece + 1;
    return next < l->pieces.at + l->pieces.count && !next->relative && !next->meanwhile &&
           said_at(next->from, next->to,
                   "go|get|come|head|run|move|end up|land|sprint|break|finish|dribble|drive|"
                   "carry it|take it|bring it") &&
           !token_is_player(&next->to[-1]);
}

/* comes up and lays a pick: up there. */
static bool leads_on(const struct loose *l, const struct piece *piece)
{
    const struct token *verb = past_fillers(piece->from, piece->to);
    verb = verb < piece->to && token_is_player(verb) ? verb + 1 : verb;
    return piece + 1 < l->pieces.at + l->pieces.count &&
           !token_is_player(past_fillers(piece[1].from, piece[1].to)) && verb < piece->to &&
           said_at(verb, piece->to, "come up|comes up") == piece->to;
}

/* comes off, and gets to the right slot: one use of the screen. */
static bool use_without_end(const struct loose *l, const struct piece *piece)
{
    const struct sentence *last = &l->out->at[l->out->count - 1];
    return verb_row(last->verb)->task == VERB_USE && !last->place && ends_behind(l, piece);
}

/* plants and goes to the rim: the piece with who goes on in front of it. */
static bool strict_named(struct loose *l, const struct piece *piece)
{
    struct recast all = {.to = NULL};
    struct cursor here = *l->c;
    size_t had = l->out->count;
    here.at = piece->from;
    recast_number(&here, &all, l->idle.number);
    recast_copy(l->c, &all, piece->from, piece->to);
    if (l->idle.kind != WHO_PLAYER ||
        !strict_part(l, all.tokens.at, all.tokens.at + all.tokens.count) || l->out->count == had) {
        return false;
    }
    tell_tokens(l, &all.tokens);
    joined(l);
    l->pair = false;
    return true;
}

/* 2 waits for the ball and drives: he does, who does not have it yet, and not who has it. */
static bool waits_without(struct loose *l, const struct piece *piece)
{
    const struct sentence *last = l->out->count > l->had ? &l->out->at[l->out->count - 1] : NULL;
    struct cursor verb = cursor_look(l->c);
    struct who holder;
    verb.at = past_fillers(piece->from, piece->to);
    return last && last->verb == VERB_STAYS && last->subject.count == 1 &&
           above_holder(l->c, &holder) && !same_who(&holder, &last->subject.at[0]) &&
           verb_begins(&verb);
}

/* The most pieces from `from` on that the grammar reads as they are; gives how many. */
static size_t strict_pieces(struct loose *l, size_t from)
{
    const struct piece *first = &l->pieces.at[from];
    if (waits_without(l, first)) {
        return 0;
    }
    bool bound =
        l->carried.kind != WHO_NONE || l->tie.count > 0 || first->relative || first->meanwhile;
    if (!bound && l->idle.kind != WHO_NONE && !token_is_player(first->from)) {
        return strict_named(l, first) ? 1 : 0;
    }
    for (size_t to = l->pieces.count; to > from && !bound; to--) {
        const struct token *begin = first->from;
        while (first->then && begin > l->c->first && !token_is_word(begin, "then")) {
            begin--;
        }
        size_t had = l->out->count;
        const struct piece *last = &l->pieces.at[to - 1]; /* comes off, catches: a pass is meant */
        last = from > 0 && said_at(first->from, first->to, "catch|receive") ? first : last;
        if (l->pieces.count > 1 &&
            (said_at(last->from, last->to, "catch|receive") || leads_on(l, last))) {
            continue;
        }
        struct cursor_mark mark = cursor_mark(l->c);
        bool read =
            (from > 0 || to < l->pieces.count) && strict_part(l, begin, l->pieces.at[to - 1].to);
        if (read && l->out->count > had &&
            (use_without_end(l, &l->pieces.at[to - 1]) ||
             chooses(l, begin, l->pieces.at[to - 1].to))) {
            cursor_back(l->c, mark);
            l->out->count = had;
            continue;
        }
        if (read) {
            if (l->out->count > had) {
                tell_said(l, begin, l->pieces.at[to - 1].to);
                joined(l);
                l->pair = l->out->count - had > to - from;
            } else if (begin->kind == TOKEN_NUMBER &&
                       token_is_player(begin)) { /* 4 plants: he goes on */
                l->idle = (struct who){
                    .kind = WHO_PLAYER, .number = (int)begin->number, .span = begin->span};
            }
            return to - from;
        }
    }
    return 0;
}

/* A clause of time in front of the piece goes with it. */
static void take_tie(struct loose *l, struct piece *piece)
{
    struct cursor front = *l->c;
    struct cursor_mark mark = cursor_mark(l->c);
    struct tie tie = {.then = false};
    front.watch = NULL;
    front.at = front.first = piece->from;
    front.end = piece->to;
    bool clause = clause_is(&front) && clause_read(&front, &tie) && front.refusals == mark.refusals;
    const struct token *to = clause ? front.at : piece->from;
    cursor_back(&front, mark);
    for (const struct token *at = piece->from; at < to; at++) {
        VEC_PUSH(l->c->arena, &l->tie, *at);
    }
    if (clause) {
        VEC_PUSH(l->c->arena, &l->tie, token_mark(&to[-1], ','));
        piece->from = to;
    }
}

/* The sentence before; NULL: none, or two are said in one: 2 and 5 exchange. */
static const struct sentence *latest(const struct loose *l)
{
    return l->out->count > l->had && !l->pair ? &l->out->at[l->out->count - 1] : NULL;
}

static token_list tied(struct loose *l, const struct piece *piece, const struct reading *reading)
{
    struct recast all = {.to = NULL};
    struct cursor here = *l->c;
    here.at = piece->from;
    const struct sentence *last = latest(l);
    bool other =
        !last || last->subject.count != 1 || !same_who(&last->subject.at[0], &reading->acts);
    if (l->tie.count == 0 && piece->meanwhile && l->out->count > 0) {
        recast_word(&here, &all, "meanwhile");
    } else if (l->tie.count == 0 && piece->then && other) {
        recast_word(&here, &all, "then");
    }
    recast_copy(l->c, &all, l->tie.at, l->tie.at + l->tie.count);
    recast_copy(l->c, &all, reading->tokens.at, reading->tokens.at + reading->tokens.count);
    return all.tokens;
}

/* at the same time, after that: how the piece hangs on what went before. */
static void take_joint_words(struct piece *piece)
{
    const struct token *same = said_at(piece->from, piece->to, same_time_words);
    const struct token *then = said_at(piece->from, piece->to, then_words);
    piece->meanwhile = piece->meanwhile || same;
    piece->then = piece->then || then;
    piece->from = same ? same : then ? then : piece->from;
}

/* is 4 on the wing: a question, with or without its mark. */
static bool asks(const struct piece *piece)
{
    const struct token *at =
        said_at(piece->from, piece->to, "is|are|was|were|will|does|did|has|would|could|shall");
    return at && at < piece->to && token_is_player(at);
}

static bool says_token(const token_list *tokens, const struct token *said)
{
    for (size_t i = 0; i < tokens->count; i++) {
        const struct token *token = &tokens->at[i];
        bool number = said->kind == TOKEN_NUMBER && token->kind == TOKEN_NUMBER;
        if (number ? token->number == said->number : str_equal(token->text, said->text)) {
            return true;
        }
    }
    return false;
}

/* runs the baseline, and throws it in: somewhere, and where it ends is not said. */
static void note_run_in(const struct cursor *c, struct span span)
{
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_WORD_DROPPED, span, "`%.*s` is not drawn and was left out",
                 STR_ARG(cursor_text(c, span)));
    diag_help(c->diags, diag, "to keep it, write where it ends: `5 goes to left slot`");
}

/* Everybody who is named in the clause is in the sentence: of 3 over 4 to the top nobody is lost. A
 * defender who is passed, and whose place a thing is in, may be. */
static bool nobody_lost(const struct items *items, const struct reading *reading)
{
    for (size_t i = 0; i < items->count; i++) {
        const struct item *item = &items->at[i];
        bool named = item->kind == ITEM_WHO && item->who.kind == WHO_PLAYER &&
                     item->tokens.count > 0 && item->tokens.at[0].kind == TOKEN_NUMBER &&
                     item->from->kind == TOKEN_NUMBER; /* behind her: of whom it is said already */
        if (named && !same_who(&item->who, &reading->acts) &&
            !says_token(&reading->tokens, &item->tokens.at[0])) {
            return false;
        }
    }
    return true;
}

static bool loose_piece(struct loose *l, struct piece *piece)
{
    struct items items;
    struct reading reading;
    struct cursor part = *l->c;
    take_joint_words(piece);
    take_tie(l, piece);
    part.watch = NULL;
    part.at = part.first = piece->from;
    part.end = piece->to;
    if (piece->from == piece->to) {
        return l->tie.count > 0;
    }
    if (asks(piece)) {
        return false;
    }
    struct sentence carried = {.verb = VERB_GOES};
    struct going going = {.relative = piece->relative,
                          .last = latest(l),
                          .more = piece + 1 < l->pieces.at + l->pieces.count};
    const struct who *doer = l->carried.kind != WHO_NONE ? &l->carried : &l->idle;
    if (doer->kind != WHO_NONE) {
        VEC_PUSH(l->c->arena, &carried.subject, *doer);
        going.last = &carried;
        going.waits = true;
    }
    if (!items_after(&part, going.relative ? NULL : going.last, &items) ||
        !clause_fill(&part, &items, &going, &reading)) {
        return false;
    }
    if (reading.uses && ends_behind(l, piece)) { /* comes off and gets to the right slot */
        part.end = piece[1].to;
        piece[1].taken = true;
        if (!items_after(&part, going.relative ? NULL : going.last, &items) ||
            !clause_fill(&part, &items, &going, &reading)) {
            return false;
        }
    }
    if (reading.named && l->carried.kind != WHO_NONE && !same_who(&l->carried, &reading.acts)) {
        return false; /* 4 works, 5 scoots to the block: what 4 does is lost */
    }
    bool whose =
        piece->meanwhile && !reading.named; /* 1 passes to 2 while dribbling: which of them? */
    if (whose || (reading.tokens.count > 0 && !nobody_lost(&items, &reading))) {
        return false;
    }
    l->sure = l->sure && reading.sure;
    if (reading.run_in) {
        l->carried = reading.acts;
        note_run_in(l->c, span_join(part.at->span, part.end[-1].span));
        return true;
    }
    if (reading.tokens.count == 0) {
        if (said_at(piece->from, piece->to, "back|away|out|forward") == piece->to) {
            return false; /* out to 2 and back */
        }
        l->idle = who_is_one(&reading.acts) ? reading.acts : l->idle;
        note_left_out(l->c, span_join(part.at->span, part.end[-1].span));
        return l->tie.count == 0;
    }
    token_list said = tied(l, piece, &reading);
    size_t had = l->out->count;
    if (!strict_part(l, said.at, said.at + said.count) || l->out->count == had) {
        return false;
    }
    comes_to_pass(&part, l->out, piece->from, piece->to);
    tell_tokens(l, &said);
    joined(l);
    l->pair = false;
    l->idle = reading.taker ? reading.acts : l->idle; /* takes it and goes to the top */
    return true;
}

/* be patient: told by a note. */
static bool remark_piece(struct loose *l, const struct piece *piece)
{
    struct cursor part = cursor_look(l->c);
    part.at = part.first = piece->from;
    part.end = piece->to;
    bool acts = act_begins(past_fillers(piece->from, piece->to), piece->to, false); /* screens */
    for (const struct token *at = piece->from; at < piece->to; at++) {
        acts = acts || at->kind == TOKEN_DEFENDER; /* x3 is cheating: what he does */
    }
    if (l->tie.count > 0 || l->carried.kind != WHO_NONE || acts || !remark_is(&part)) {
        return false;
    }
    note_left_out(l->c, span_join(piece->from->span, piece->to[-1].span));
    return true;
}

/* False: more than one piece is lost. */
static bool all_pieces(struct loose *l)
{
    for (size_t i = 0; i < l->pieces.count;) {
        if (l->pieces.at[i].taken) {
            i++;
            continue;
        }
        size_t strict = strict_pieces(l, i);
        if (strict == 0 && !loose_piece(l, &l->pieces.at[i]) &&
            !remark_piece(l, &l->pieces.at[i])) {
            if (l->lost) {
                return false;
            }
            l->lost = &l->pieces.at[i];
            l->carried = (struct who){.kind = WHO_NONE};
            l->tie.count = 0;
        }
        i += strict > 0 ? strict : 1;
    }
    return l->out->count > l->had && l->tie.count == 0 && l->carried.kind == WHO_NONE;
}

/* 3 waits then cuts: for how long is not said. */
static bool stays_and_goes(const struct loose *l)
{
    for (size_t i = l->had; i + 1 < l->out->count; i++) {
        const struct sentence *s = &l->out->at[i];
        if (s->verb == VERB_STAYS && same_who(&s->subject.at[0], &s[1].subject.at[0])) {
            return true;
        }
    }
    return false;
}

/* everybody else rotates up one: they move on by a spot, and do not all go where 1 was. */
static bool all_replace_one(const struct loose *l)
{
    for (size_t i = l->had; i < l->out->count; i++) {
        const struct sentence *s = &l->out->at[i];
        bool several = s->subject.count > 1 ||
                       (s->subject.count == 1 && s->subject.at[0].kind == WHO_EVERYONE_ELSE);
        if (several && (s->verb == VERB_REPLACES || s->verb == VERB_FILLS) &&
            s->object.kind == WHO_PLAYER) {
            return true;
        }
    }
    return false;
}

/* What helps where the line is not taken: all of it as it may be meant, or the part that is lost,
 * unless that is blamed already. */
static struct str help_for(const struct loose *l, struct span blamed)
{
    struct str text = strbuf_str(&l->text);
    if (!l->lost) {
        return str_format(l->c->arena, "did you mean: `%.*s`?", STR_ARG(text));
    }
    struct span span = span_join(l->lost->from->span, l->lost->to[-1].span);
    if (blamed.begin <= span.end && blamed.end >= span.begin) {
        return STR("");
    }
    return str_format(
        l->c->arena,
        "all but `%.*s` is understood: say that part with who does it, what, and where "
        "or for whom",
        STR_ARG(source_text(l->c->sources, span)));
}

bool loose_read(struct cursor *c, sentence_list *out, struct span blamed, struct str *help)
{
    struct cursor said = *c;
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    *help = STR("");
    if (c->end - c->at > TOKENS_MOST || c->at == c->end) {
        return false;
    }
    speech_begin(&said);
    struct loose l = {.c = &said, .out = out, .sure = true, .had = had};
    strbuf_init(&l.text, c->arena);
    bool fine = !line_turns(&said) && !line_doubled(&said) && !zone_men_told(&said) &&
                line_cut(&said, &l.pieces) && all_pieces(&l) && !stays_and_goes(&l) &&
                !all_replace_one(&l);
    if (!fine || !l.sure || l.lost) {
        cursor_back(c, mark);
        out->count = had;
        *help = fine && l.pieces.count > 1 ? help_for(&l, blamed) : STR("");
        return false;
    }
    struct span whole = span_join(c->at->span, c->end[-1].span);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_READ_AS, whole, "read as `%.*s`",
                                 STR_ARG(strbuf_str(&l.text)));
    diag_help(c->diags, diag, "if something else is meant, write it so: who, what, where");
    c->at = c->end;
    return true;
}
