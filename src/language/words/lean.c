/* SPDX-License-Identifier: MIT */
/* lean: a line that nothing else has read, without what it can do without: what a play is called in
 * front of a colon, what is only shown before what is done, how, with what, out of what. One of
 * them is left out, or two, as it takes until the rest is read, whole; each with a note. Never what
 * names somebody who acts, a place, a moment, or turns the sense round. See loose_read.h. */
#include "language/words/lean.h"
#include "language/words/loose_read.h"

enum { TRIES_MOST = 24, TRIES_PART = 6, LINE_MOST = 60 };

/* ---- the rest ---- */

/* when 2 catches, in the place of what says where the ball is. */
static void put_catch(const struct cursor *c, struct recast *rest, const struct cut *cut)
{
    struct cursor here = line_look(c, cut->from);
    recast_word(&here, rest, "when");
    recast_number(&here, rest, cut->catches);
    recast_word(&here, rest, "catches");
    recast_mark(&here, rest, ',');
}

/* `with the ball on the wing` was taken as `when 2 catches`. */
static void tell_cut(const struct cursor *c, const struct cut *cut)
{
    struct span span = span_join(cut->from->span, cut->to[-1].span);
    if (!cut->catches) {
        note_left_out(c, span);
        return;
    }
    struct diag *diag =
        diag_add(c->diags, DIAG_TEXT_HEARD, span, "`%.*s` was taken as `when %d catches`",
                 STR_ARG(cursor_text(c, span)), cut->catches);
    diag_help(c->diags, diag, "write it so, if it is meant");
}

/* The line without these of its cuts, read from the beginning. */
static bool rest_is_read(struct cursor *c, const struct cuts *cuts, unsigned which,
                         sentence_list *out)
{
    struct recast rest = {.told = SPAN_NONE};
    struct cursor_mark mark = cursor_mark(c);
    size_t had = out->count;
    for (const struct token *at = c->at; at < c->end; at++) {
        bool gone = false;
        for (size_t i = 0; i < cuts->count; i++) {
            if ((which >> i & 1) && cuts->at[i].catches && at == cuts->at[i].from) {
                put_catch(c, &rest, &cuts->at[i]);
            }
            gone = gone || ((which >> i & 1) && at >= cuts->at[i].from && at < cuts->at[i].to);
        }
        if (!gone) {
            recast_copy(c, &rest, at, at + 1);
        }
    }
    struct cursor line = recast_afresh(c, &rest);
    line.lean = true;
    if (rest.tokens.count < 2 || line_turns(&line) || !sentences_read(&line, out) ||
        line.refusals != mark.refusals || out->count == had) {
        cursor_back(c, mark);
        out->count = had;
        return false;
    }
    for (size_t i = 0; i < cuts->count; i++) {
        if (which >> i & 1) {
            tell_cut(c, &cuts->at[i]);
        }
    }
    return true;
}

bool lean_read(struct cursor *c, sentence_list *out)
{
    struct cuts cuts = {.count = 0};
    if (c->lean || (c->parted && !c->thin) || c->unfolded || c->spared > 0 ||
        c->end - c->at > LINE_MOST) {
        return false;
    }
    cuts_find(c, &cuts);
    int tries = 0, most = c->parted ? TRIES_PART : TRIES_MOST;
    for (size_t i = 0; i < cuts.count && tries < most; i++) {
        if (rest_is_read(c, &cuts, 1u << i, out)) {
            c->at = c->end;
            return true;
        }
        tries++;
    }
    for (size_t i = 0; i < cuts.count; i++) {
        for (size_t j = i + 1; j < cuts.count && tries < most; j++, tries++) {
            if (rest_is_read(c, &cuts, 1u << i | 1u << j, out)) {
                c->at = c->end;
                return true;
            }
        }
    }
    bool all = cuts.count > 2 && rest_is_read(c, &cuts, (1u << cuts.count) - 1, out);
    c->at = all ? c->end : c->at;
    return all;
}

bool lean_parts_read(struct cursor *c, sentence_list *out)
{
    const int longest = 48; /* what runs on longer costs too much to read so often */
    if (c->lean || c->parted || c->thin || c->end - c->at > longest) {
        return false;
    }
    struct cursor thin = *c;
    thin.thin = true;
    bool read = parts_read(&thin, out);
    c->at = read ? c->end : c->at;
    return read;
}
