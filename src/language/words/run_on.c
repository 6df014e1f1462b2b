/* SPDX-License-Identifier: MIT */
/* run_on: the clauses of a run-on line, read one behind the other: see run_on.h. Each is tried as
 * it is put plainly, as it stands, and together with the next one; what moves nobody is left out
 * with a note, and what is not understood is an error of that clause alone. */
#include "language/words/run_on.h"

#include "language/words/loose_read.h"

enum { SHORTEST = 9, LONGEST = 110, MARKS_MOST = 2, CLAUSES_FEWEST = 3 };

bool run_on_is(const struct cursor *c)
{
    static const char *const turns[] = {"hoping",  "hope",     "hopes",    "wishing", "unless",
                                        "except",  "pretend",  "maybe",    "almost",  "or",
                                        "either",  "supposed", "pretends", "forget",  "nobody",
                                        "neither", NULL};
    size_t marks = 0, words = 0, players = 0;
    for (const struct token *at = c->at; at < c->end; at++) {
        if (at->kind == TOKEN_QUOTED || token_is_mark(at, ':') || token_is_mark(at, '?') ||
            token_is_mark(at, '(') || token_is_among(at, turns)) {
            return false;
        }
        marks += at->kind == TOKEN_MARK;
        words += at->kind == TOKEN_WORD;
        players += at->kind == TOKEN_NUMBER;
    }
    return words >= SHORTEST && players >= 2 && words + players <= LONGEST && marks <= MARKS_MOST &&
           marks * 12 <= words;
}

bool run_on_is_note(const struct cursor *c)
{
    enum { LONGEST_NOTE = 30, WORDS_MOST_BETWEEN = 7 };
    static const char *const asks[] = {"if", "when", "as", "after", "he", "she", "who", NULL};
    size_t marks = 0, players = 0, words = 0;
    for (const struct token *at = c->at; at < c->end; at++) {
        bool told = at->kind == TOKEN_WORD && !at->filler && ends_in_s(at) && run_on_verb(c, at);
        if (at->kind == TOKEN_QUOTED || token_is_mark(at, '(') || told ||
            token_is_among(at, asks)) { /* screens: a sentence */
            return false;
        }
        marks += token_is_mark(at, ',') || token_is_mark(at, '.') || token_is_mark(at, ';') ||
                 token_is_mark(at, '/') || token_is_mark(at, '=');
        players += at->kind == TOKEN_NUMBER;
        words += at->kind == TOKEN_WORD && !at->filler;
    }
    return marks > 0 && players > 0 && c->end - c->at <= LONGEST_NOTE &&
           words <= (marks + 1) * WORDS_MOST_BETWEEN / 2 + 2;
}

/* ---- reads ---- */

static bool asked_up_to(struct run_on_run *r, const struct token *from, const struct token *to,
                        struct block *block)
{
    struct cursor_mark mark = cursor_mark(r->c);
    struct recast all = {.to = NULL};
    struct condition condition = {0};
    run_on_asked(r->c, from, to, &r->people, &all);
    struct cursor line = recast_afresh(r->c, &all);
    if (all.tokens.count == 0 || !condition_read(&line, &condition) ||
        line.refusals != mark.refusals || !cursor_done(&line)) {
        cursor_back(r->c, mark);
        return false;
    }
    VEC_PUSH(r->c->arena, &block->conditions, condition);
    strbuf_text(&r->text, r->text.size > 0 ? ". if " : "if ");
    strbuf_add(&r->text,
               tokens_typed(r->c->arena, all.tokens.at, all.tokens.at + all.tokens.count));
    return true;
}

/* What is asked behind `if`; gives where it ends, or NULL. */
static const struct token *asked_read(struct run_on_run *r, const struct run_on_piece *piece,
                                      struct block *block)
{
    const struct token *from = past_sounds(piece->from, piece->to);
    from += token_is_word(from, "if");
    for (int pass = 0; pass < 2; pass++) {
        for (const struct token *to = piece->to; to > from; to--) {
            bool begins = to == piece->to || run_on_begins(r->c, to);
            if (begins == (pass == 0) && asked_up_to(r, from, to, block)) {
                return to;
            }
        }
    }
    return NULL;
}

static bool read_open(struct run_on_run *r, size_t at)
{
    struct run_on_piece *piece = &r->pieces.at[at];
    struct run_on_read *read = &r->out->reads[r->out->read_count];
    if (r->out->read_count == RUN_ON_READS) {
        return false;
    }
    *read = (struct run_on_read){.first = r->out->sentences.count};
    const struct token *to = asked_read(r, piece, &read->block);
    if (!to) {
        return false;
    }
    const struct who *who = &read->block.conditions.at[0].who;
    if (who->kind == WHO_PLAYER) {
        r->people.said = who->number;
    }
    r->people.asked = who->kind == WHO_DEFENDER ? who->number : 0;
    r->out->read_count++;
    piece->from = to; /* what is left of it is done then */
    piece->kind = RUN_ON_DEED;
    return true;
}

/* ---- the line ---- */

/* What was not understood, as an error of that clause alone. */
static void refuse_piece(struct run_on_run *r, const struct run_on_piece *piece)
{
    struct recast all = {.to = NULL};
    struct cursor_mark mark = cursor_mark(r->c);
    bool nothing;
    if (r->moment.count > 0) { /* it is the moment that is not understood */
        struct diag *when = REFUSE(r->c, TEXT_CLAUSE_HALF, r->moment_span, "`%.*s`: when is that?",
                                   STR_ARG(cursor_text(r->c, r->moment_span)));
        diag_help(
            r->c->diags, when,
            "say who does what then, as a sentence above tells it, or whose defender: `when 1 "
            "passes`, `when x2 helps`; all but this is understood");
        return;
    }
    struct run_on_people people = r->people;
    if (piece->kind == RUN_ON_IF || !run_on_say(r->c, piece, &people, &all, &nothing)) {
        recast_copy(r->c, &all, piece->from, piece->to);
    }
    struct cursor line = recast_afresh(r->c, &all);
    line.parted = true;
    sentence_list out = r->out->sentences;
    struct diags *diags = r->c->diags;
    if (piece->kind != RUN_ON_IF) {
        sentences_read(&line, &out);
    }
    struct span span = span_join(piece->from->span, piece->to[-1].span);
    struct str said = cursor_text(r->c, span);
    struct diag *error = NULL;
    for (size_t i = mark.diags; i < diags->all.count; i++) {
        error = diags->all.at[i].severity == SEVERITY_ERROR ? &diags->all.at[i] : error;
    }
    if (!error) {
        cursor_back(r->c, mark);
        error = REFUSE(r->c, TEXT_VERB_UNKNOWN, span, "`%.*s`: who does what there is not clear",
                       STR_ARG(said));
    }
    r->c->refusals++;
    struct str help = error->help;
    diag_help(diags, error,
              "%.*s%sall but `%.*s` is understood: say that with who does it, what, and where or "
              "for whom",
              STR_ARG(help), help.size > 0 ? "; " : "", STR_ARG(said));
}

static bool pieces_read(struct run_on_run *r)
{
    for (size_t i = 0; i < r->pieces.count;) {
        struct run_on_piece *piece = &r->pieces.at[i];
        size_t count = 1;
        if (piece->kind == RUN_ON_IF && !read_open(r, i)) {
            refuse_piece(r, piece);
            return false;
        }
        if (past_sounds(piece->from, piece->to) == piece->to) {
            i++;
            continue;
        }
        if (piece->kind == RUN_ON_WHY || piece->kind == RUN_ON_TITLE ||
            (piece->kind == RUN_ON_DEED && run_on_not(r->c, piece))) {
            run_on_leave_out(r, piece);
        } else if (piece->kind == RUN_ON_MOMENT && i + 1 < r->pieces.count &&
                   r->pieces.at[i + 1].kind == RUN_ON_DEED && r->moment.count == 0) {
            run_on_moment(r, piece);
        } else if (piece->kind == RUN_ON_MOMENT) {
            count = 0;
        } else {
            count = run_on_clause(r, i);
        }
        if (count == 0) {
            refuse_piece(r, piece);
            return false;
        }
        r->out->understood += count;
        i += count;
    }
    return true;
}

/* The line as it was read, so that it can be seen at once. */
static void tell_all(struct run_on_run *r, struct span span)
{
    struct diag *diag = diag_add(r->c->diags, DIAG_TEXT_READ_AS, span, "read as `%.*s`",
                                 STR_ARG(strbuf_str(&r->text)));
    diag_help(r->c->diags, diag, "if something else is meant, write it so: who, what, where");
}

/* Every read has its answer. */
static bool all_answered(const struct run_on *out)
{
    for (size_t i = 0; i < out->read_count; i++) {
        size_t end = i + 1 < out->read_count ? out->reads[i + 1].first : out->sentences.count;
        const struct run_on_read *read = &out->reads[i];
        if (read->first == end) {
            return false;
        }
        const struct condition *asked = &read->block.conditions.at[0];
        const struct sentence *answer = &out->sentences.at[read->first];
        if (asked->kind == COND_COVERED && verb_row(answer->verb)->task == VERB_PASS &&
            same_who(&asked->who, &answer->object)) { /* it was another who was meant */
            return false;
        }
    }
    return true;
}

/* four's gonna, five's got it, the trap's coming: is, and nothing is his. */
static void open_short_forms(struct token *tokens, size_t count)
{
    static const char *const behind[] = {"gonna", "gotta", "got",  "going",   "not",
                                         "just",  "been",  "open", "there",   "up",
                                         "down",  "a",     "the",  "already", NULL};
    for (size_t i = 0; i + 1 < count; i++) {
        bool own = tokens[i].possessive && tokens[i].kind == TOKEN_NUMBER;
        static const char *const things[] = {"trap", "help",     "defense", "guy", "man",
                                             "big",  "defender", "double",  NULL};
        struct token thing = tokens[i];
        thing.possessive = false;
        bool does = tokens[i].possessive && token_is_among(&thing, things) &&
                    (ends_in_ing(&tokens[i + 1]) || token_is_among(&tokens[i + 1], behind));
        tokens[i].possessive = tokens[i].possessive && !does;
        if (own && token_is_among(&tokens[i + 1], behind)) {
            tokens[i].possessive = false;
        }
    }
}

/* a quick three, the corner three: a shot, and nobody. */
static void threes_open(struct token *tokens, size_t count)
{
    static const char *const before[] = {"quick", "open", "big", "early", NULL};
    static const char *const wants[] = {"need", "want", "get", "needs", "wants", "got", NULL};
    for (size_t i = 2; i < count; i++) {
        struct token *three = &tokens[i];
        bool article = tokens[i - 2].filler && token_is_among(three - 1, before);
        bool wanted = three[-1].filler && token_is_among(three - 2, wants);
        if (token_is_spelled(three) && three->number == 3 && !three->possessive &&
            (article || wanted)) {
            three->kind = TOKEN_WORD;
            three->text = STR("shot");
            three->first = 's';
        }
    }
}

/* One who screens for the same one twice: the second time tells of the first. */
bool run_on_told_twice(const sentence_list *all)
{
    for (size_t i = 0; i < all->count; i++) {
        for (size_t j = 0; j < i; j++) {
            const struct sentence *one = &all->at[i], *two = &all->at[j];
            if (verb_row(one->verb)->task == VERB_SCREEN &&
                verb_row(two->verb)->task == VERB_SCREEN && one->subject.count == 1 &&
                two->subject.count == 1 && same_who(&one->subject.at[0], &two->subject.at[0]) &&
                same_who(&one->object, &two->object)) {
                return true;
            }
        }
    }
    return false;
}

/* goes up and screens: told by two verbs. */
static size_t led(const struct run_on_pieces *pieces)
{
    size_t count = 0;
    for (size_t i = 0; i < pieces->count; i++) {
        count += pieces->at[i].led;
    }
    return count;
}

bool run_on_read(struct cursor *c, bool note, struct run_on *out)
{
    struct run_on_run r = {.note = note, .c = c, .out = out};
    struct cursor opened = *c;
    struct span span = span_join(c->at->span, c->end[-1].span);
    size_t room = 2 * (size_t)(c->end - c->at) + 2;
    struct token *tokens = arena_array(c->arena, struct token, room);
    size_t count = contractions_open(c->at, (size_t)(c->end - c->at), tokens, room);
    open_short_forms(tokens, count);
    threes_open(tokens, count);
    *out = (struct run_on){.read_count = 0};
    opened.at = opened.first = tokens;
    opened.end = tokens + count;
    opened.here = &out->sentences;
    opened.watch = NULL;
    if (!note) {
        run_on_again(&opened, tokens, count);
    }
    strbuf_init(&r.text, c->arena);
    r.c = &opened;
    size_t fewest = note ? 2 : CLAUSES_FEWEST;
    if (!(note ? run_on_cut_note : run_on_cut)(&opened, &r.pieces) ||
        r.pieces.count + led(&r.pieces) < fewest) {
        return false;
    }
    bool read = pieces_read(&r) && r.moment.count == 0 && out->sentences.count > 0 &&
                all_answered(out) && !run_on_told_twice(&out->sentences);
    c->refusals = opened.refusals;
    if (read) {
        tell_all(&r, span);
    }
    return read;
}
