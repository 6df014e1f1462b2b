/* SPDX-License-Identifier: MIT */
/* put_plain: what the ways of plain.c share: a line as tokens, and the first of them that fits. */
#include "language/words/put_plain.h"

#include "language/words/people.h"

bool clause_begins_at(const struct cursor *line, const struct token *at)
{
    static const char *const joints[] = {"so", "but", "while", "now", "okay", "alright", NULL};
    while (at > line->at && at[-1].filler) {
        at--;
    }
    return at == line->at || clause_ends(at - 1) || token_is_mark(at - 1, ':') ||
           token_is_among(at - 1, joints);
}

bool behind_stop(const struct cursor *line, const struct token *at)
{
    if (at->span.source == SOURCE_NONE) {
        return false;
    }
    struct str text = line->sources->all.at[at->span.source].text;
    uint32_t from = at->span.begin;
    while (from > 0 && (text.at[from - 1] == ' ' || text.at[from - 1] == '\t')) {
        from--;
    }
    return from > 0 && (text.at[from - 1] == '.' || text.at[from - 1] == ';');
}

int attacker_at(const struct token *at, const struct token *end)
{
    bool player = at < end && at->kind == TOKEN_NUMBER && at->integer && !at->possessive &&
                  at->number >= 1 && at->number <= 12;
    return player ? (int)at->number : 0;
}

bool verb_at(const struct cursor *line, const struct token *at)
{
    struct cursor verb = line_look(line, at);
    return at < line->end && verb_begins(&verb);
}

const struct token *spot_end(const struct cursor *line, const struct token *at,
                             const struct place **place)
{
    struct cursor trial = line_look(line, at);
    struct cursor_mark mark = cursor_mark(line);
    *place = at < line->end ? spot_read(&trial, true) : NULL;
    const struct token *end = *place && trial.refusals == mark.refusals ? trial.at : NULL;
    cursor_back(&trial, mark);
    return end;
}

const struct token *spot_alone(const struct cursor *line, const struct token *at)
{
    const struct place *place;
    const struct token *end = spot_end(line, at, &place);
    bool alone = end && (end == line->end || end->kind == TOKEN_MARK || clause_ends(end));
    return alone ? end : NULL;
}

const char *const subject_pronouns[] = {"he", "she", "they", NULL};

const struct token *players_end(const struct cursor *line, const struct token *at, size_t *count)
{
    *count = 0;
    while (attacker_at(at, line->end) || (at < line->end && at->kind == TOKEN_DEFENDER)) {
        ++*count;
        at++;
        const struct token *next = at;
        next += next < line->end && (token_is_word(next, "and") || token_is_mark(next, ','));
        if (next == at || !attacker_at(next, line->end)) {
            break;
        }
        at = next;
    }
    return at;
}

const struct token *past_sounds(const struct token *at, const struct token *end)
{
    static const char *const sounds[] = {"uh",   "um",   "er",   "yeah",      "okay",  "you know",
                                         "like", "just", "well", "basically", "kinda", NULL};
    while (at < end && (at->filler || token_is_among(at, sounds))) {
        at++;
    }
    return at;
}

const struct token *first_put(plain_way *const *ways, const struct cursor *line,
                              const struct token *at, struct recast *out)
{
    const struct token *to = NULL;
    while (*ways && !to) {
        to = (*ways++)(line, at, out);
    }
    return to;
}

void put_dho(const struct cursor *here, struct recast *out, int from, int to)
{
    recast_number(here, out, from);
    recast_word(here, out, "dribbles");
    recast_word(here, out, "at");
    recast_number(here, out, to);
    recast_mark(here, out, ',');
    recast_number(here, out, from);
    recast_word(here, out, "hands-off");
    recast_word(here, out, "to");
    recast_number(here, out, to);
}
