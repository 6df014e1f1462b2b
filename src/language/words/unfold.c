/* SPDX-License-Identifier: MIT */
/* unfold: a refused line, its clauses one behind the other, read again: see unfold.h. */
#include "language/words/unfold.h"

#include "language/words/loose_read.h"

#include <string.h>

/* ---- a line as tokens ---- */

struct cursor line_look(const struct cursor *c, const struct token *at)
{
    return look_between(c, at, c->end);
}

bool number_token(const struct token *token)
{
    return token->kind == TOKEN_NUMBER && !token->possessive && token->integer;
}

static bool joins(const struct token *token)
{
    static const char *const words[] = {"and", "then", "while", "who", "so", "but", NULL};
    return token->kind == TOKEN_MARK || token_is_among(token, words);
}

static bool player_token(const struct token *token)
{
    return token->kind == TOKEN_NUMBER && !token->possessive;
}

/* `and` or a comma in a list of players that begins a clause: 4 and 5 set. */
static bool in_list(const struct cursor *c, const struct token *joint)
{
    if (joint == c->at || joint + 1 >= c->end || !player_token(joint + 1) ||
        !player_token(joint - 1)) {
        return false;
    }
    const struct token *first = joint - 1;
    return first == c->at || joins(first - 1);
}

const struct token *clause_begin(const struct cursor *c, const struct token *at)
{
    while (at > c->at && (!joins(&at[-1]) || in_list(c, &at[-1]))) {
        at--;
    }
    return at;
}

const struct token *joint_begin(const struct cursor *c, const struct token *clause, bool *then)
{
    *then = false;
    while (clause > c->at && joins(&clause[-1])) {
        *then = *then || token_is_word(&clause[-1], "then");
        clause--;
    }
    return clause;
}

/* A clause of time: when 2 catches. */
static bool tie_begins(const struct cursor *c, const struct token *clause)
{
    struct cursor look = line_look(c, clause);
    return clause_is(&look);
}

/* for 1, who goes off it: the one before `who` acts. */
static bool whose_clause(const struct cursor *c, const struct token *clause, struct somebody *out)
{
    if (clause < c->at + 2 || !token_is_word(&clause[-1], "who")) {
        return false;
    }
    const struct token *player = &clause[-2];
    player -= player > c->at && token_is_mark(player, ',');
    struct cursor trial = line_look(c, player);
    return player_token(player) && player_here(&trial, out) && out->who.kind == WHO_PLAYER;
}

/* From the block 5 throws: where he is stands in front of who acts. */
static bool behind_where(const struct cursor *c, const struct token *clause, struct somebody *out)
{
    struct cursor trial = line_look(c, clause);
    bool where = take_among(&trial, begin_words) && spot_here(&trial);
    take_mark(&trial, ',');
    return where && player_here(&trial, out) && out->who.kind == WHO_PLAYER && verb_begins(&trial);
}

bool clause_subject(const struct cursor *c, const struct token *clause, struct somebody *out,
                    bool *own)
{
    *own = true;
    if (whose_clause(c, clause, out)) {
        return !(*own = false);
    }
    for (bool then;; *own = false) {
        struct cursor trial = line_look(c, past_fillers(clause, c->end));
        struct cursor_mark mark = cursor_mark(&trial);
        who_list list;
        bool read = subject_read(&trial, &list) && trial.refusals == mark.refusals;
        const struct token *verb = trial.at;
        cursor_back(&trial, mark);
        trial.at = verb;
        if (read && (verb_begins(&trial) || !*own || list.count == 1)) {
            out->from = past_fillers(clause, c->end);
            out->to = verb;
            out->who = list.at[0];
            return list.count == 1 && out->who.kind == WHO_PLAYER;
        }
        if (*own && behind_where(c, clause, out)) {
            return true;
        }
        const struct token *joint = joint_begin(c, clause, &then);
        if (joint == c->at || sentence_ends(joint) || tie_begins(c, clause)) {
            return false;
        }
        const struct token *before = clause_begin(c, joint);
        if (before >= clause) { /* behind a full stop: nothing of this sentence stands before it */
            return false;
        }
        clause = before;
    }
}

const struct token *clause_end(const struct cursor *c, const struct token *at)
{
    for (; at < c->end && !sentence_ends(at); at++) {
        if (!joins(at) || in_list(c, at)) {
            continue;
        }
        struct cursor next = line_look(c, at);
        while (next.at < c->end && joins(next.at)) {
            next.at++;
        }
        if (subject_verb_is(&next) || clause_is(&next)) {
            return at;
        }
        if (verb_begins(&next)) {
            return NULL;
        }
    }
    return at;
}

bool names_player(const struct token *from, const struct token *to, int number)
{
    for (; from < to; from++) {
        if (from->kind == TOKEN_NUMBER && (int)from->number == number) {
            return true;
        }
    }
    return false;
}

bool phrase_passes(const struct phrase *phrase)
{
    enum verb_task task = verb_row(phrase->verb)->task;
    return task == VERB_PASS || task == VERB_EXCHANGE;
}

void put_third(const struct cursor *c, struct recast *r, struct str bare)
{
    size_t head = 0;
    while (head < bare.size && bare.at[head] != ' ') {
        head++;
    }
    char last = head > 0 ? bare.at[head - 1] : ' ', before = head > 1 ? bare.at[head - 2] : ' ';
    bool hisses = last == 's' || last == 'x' || last == 'o' || last == 'z' ||
                  (last == 'h' && (before == 's' || before == 'c'));
    bool y = last == 'y' && !strchr("aeou", before);
    recast_verb(c, r,
                str_format(c->arena, "%.*s%s%.*s", (int)(y ? head - 1 : head), bare.at,
                           y        ? "ies"
                           : hisses ? "es"
                                    : "s",
                           (int)(bare.size - head), bare.at + head));
}

void put_stop(const struct cursor *c, struct recast *r)
{
    size_t count = r->tokens.count;
    if (count > 0 && !sentence_ends(&r->tokens.at[count - 1])) {
        recast_mark(c, r, '.');
    }
}

void put_before(const struct cursor *c, struct recast *r, const struct token *clause)
{
    bool then;
    const struct token *joint = joint_begin(c, clause, &then);
    if (joint > c->at) {
        recast_copy(c, r, c->at, joint);
        put_stop(c, r);
    }
}

/* ---- the line ---- */

enum { ROUNDS = 12, LEFT_MOST = 8 };
struct unfolded {
    struct cursor line;
    struct span left[LEFT_MOST];
    size_t left_count;
    bool changed;
};

static bool unfold_once(struct unfolded *u)
{
    static bool (*const rules[])(const struct cursor *, struct recast *) = {
#define UNFOLD(rule) rule,
#include "language/words/unfold.def"
#undef UNFOLD
    };
    for (size_t i = 0; i < sizeof rules / sizeof *rules; i++) {
        struct recast r = {.told = SPAN_NONE};
        struct cursor trial = u->line;
        struct cursor_mark mark = cursor_mark(&trial);
        bool fits = rules[i](&u->line, &r) && r.tokens.count > 0;
        cursor_back(&trial, mark);
        if (!fits || (r.told.source != SOURCE_NONE && u->left_count == LEFT_MOST)) {
            continue;
        }
        if (r.told.source != SOURCE_NONE) {
            u->left[u->left_count++] = r.told;
        }
        u->line.at = u->line.first = r.tokens.at;
        u->line.end = r.tokens.at + r.tokens.count;
        return u->changed = true;
    }
    return false;
}

/* The line with its contractions opened: who's as who is. */
static void open_line(struct unfolded *u)
{
    struct cursor *line = &u->line;
    size_t count = (size_t)(line->end - line->at), room = 2 * count + 2;
    struct token *tokens = arena_array(line->arena, struct token, room);
    count = contractions_open(line->at, count, tokens, room);
    line->at = line->first = tokens;
    line->end = tokens + count;
}

static bool read_as_told(const struct diags *diags, size_t from)
{
    for (size_t i = from; i < diags->all.count; i++) {
        if (diags->all.at[i].row == &diag_rows[DIAG_TEXT_READ_AS]) {
            return true;
        }
    }
    return false;
}

static void tell(struct cursor *c, const struct unfolded *u, struct span whole, size_t from)
{
    for (size_t i = 0; i < u->left_count; i++) {
        note_left_out(c, u->left[i]);
    }
    if (!read_as_told(c->diags, from)) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_READ_AS, whole, "read as `%.*s`",
                                     STR_ARG(tokens_typed(u->line.arena, u->line.at, u->line.end)));
        diag_help(c->diags, diag, "if something else is meant, write it so: who, what, where");
    }
}

bool unfold_read(struct cursor *c, sentence_list *out)
{
    struct unfolded u = {.line = *c};
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    if (c->unfolded || c->at == c->end || line_turns(c)) {
        return false;
    }
    struct span whole = span_join(c->at->span, c->end[-1].span);
    u.line.watch = NULL;
    u.line.unfolded = true;
    u.line.doer = u.line.screener = NULL;
    open_line(&u);
    for (int i = 0; i < ROUNDS && unfold_once(&u); i++) {
    }
    struct cursor read = u.line;
    if (!u.changed || !sentences_read(&read, out) || read.refusals != mark.refusals ||
        out->count == had) {
        cursor_back(c, mark);
        out->count = had;
        return false;
    }
    tell(c, &u, whole, mark.diags);
    c->at = c->end;
    return true;
}
