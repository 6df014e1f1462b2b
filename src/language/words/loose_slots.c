/* SPDX-License-Identifier: MIT */
/* loose_slots: the pieces of a clause by what they are in it: see loose_clause.h. */
#include "language/words/loose_clause.h"

enum { BY_NOBODY, BY_HOLDER };
static const struct frame frames[] = {
#define FRAME(name, who, leads, flags) {BY_##who == BY_HOLDER, leads, flags},
#include "language/words/loose_frames.def"
#undef FRAME
};

const struct frame *loose_frame(enum frame_kind kind)
{
    return &frames[kind];
}

/* ---- which act ---- */

static bool weak(const struct item *item)
{
    return (loose_frame(item->act->frame)->flags & F_WEAK) != 0;
}

static bool same_act(const struct loose_act *a, const struct loose_act *b)
{
    return a->frame == b->frame && a->verb == b->verb && a->screen == b->screen &&
           a->pass == b->pass;
}

/* The one of two acts that says more: throws a lob is a lob; uses the screen is a use. NULL: two
 * things are done. */
static const struct item *of_two_acts(const struct item *a, const struct item *b)
{
    bool a_plain = a->act->pass == PASS_PLAIN && a->act->screen == SCREEN_PLAIN;
    bool b_plain = b->act->pass == PASS_PLAIN && b->act->screen == SCREEN_PLAIN;
    bool a_use = a->act->frame == FRAME_USE || a->act->frame == FRAME_CURL;
    bool same_verb = a->act->verb == b->act->verb && a->act->frame == b->act->frame;
    if (weak(a) != weak(b)) {
        return weak(a) ? b : a;
    }
    if (weak(a)) {
        return a->act->frame == FRAME_GO || a->act->frame == FRAME_GIVE ? a : b;
    }
    if (a->act->frame == FRAME_SHOOT && b->act->frame == FRAME_RECEIVE) { /* on the catch */
        return a;
    }
    if (a->act->frame == FRAME_RECEIVE && b->act->frame == FRAME_PASS && /* the pocket pass */
        token_is_word(b->to - 1, "pass") && !ends_in_s(b->from) &&
        said_at(a->from, a->to, "catch|receive|grab|take|snare|collect")) {
        return a;
    }
    if (same_act(a->act, b->act) || (same_verb && b_plain)) {
        return a;
    }
    if (same_verb && a_plain) {
        return b;
    }
    bool ball = a->act->frame == FRAME_USE && /* uses it and dribbles to the wing */
                (b->act->frame == FRAME_DRIBBLE || b->act->frame == FRAME_DRIVE);
    return a_use && (ball || b->act->frame == FRAME_SCREEN) ? a : NULL;
}

/* off a down screen, uses a back screen: a thing, and nothing that is done here. */
static bool screen_noun(const struct items *items, size_t i)
{
    const struct item *item = &items->at[i];
    const struct item *before = i > 0 ? &items->at[i - 1] : NULL;
    while (before && before > items->at && before->kind == ITEM_SMALL) { /* off that screen */
        before--;
    }
    if (!before || item->act->frame != FRAME_SCREEN || ends_in_s(item->to - 1)) {
        return false;
    }
    bool uses = before->kind == ITEM_ACT && before->act->frame == FRAME_USE;
    return uses || (before->kind == ITEM_LEAD && (before->lead & L_OFF));
}

bool clause_act(struct clause *k, const struct items *items)
{
    for (size_t i = 0; i < items->count; i++) {
        const struct item *item = &items->at[i];
        if (item->kind != ITEM_ACT) {
            continue;
        }
        if (screen_noun(items, i)) {
            k->noun = k->noun ? k->noun : item;
            continue;
        }
        bool twice = i > 0 && items->at[i - 1].act == item->act && item->act; /* cuts cuts */
        bool gives = k->act_item && said_at(k->act_item->from, item->from, "give") &&
                     said_at(item->from, item->to, "ball"); /* a pass, or a hand-off */
        if (twice || gives) {
            return false;
        }
        k->act_item = k->act_item ? of_two_acts(k->act_item, item) : item;
        if (!k->act_item) {
            return false;
        }
    }
    k->act = k->act_item ? k->act_item->act : NULL;
    return true;
}

/* ---- who, whom, where ---- */

static bool who_found(struct clause *k, const struct item *item, unsigned lead, bool acted)
{
    const struct frame *frame = k->act ? loose_frame(k->act->frame) : NULL;
    bool takes = frame && (frame->leads & lead) != 0;
    if (lead == L_FROM) {
        bool fine = !k->from_who;
        k->from_who = item;
        return fine;
    }
    bool acts = lead == L_NONE && (!acted || (!takes && k->actor_count == 0));
    if (acts) {
        if (k->actor_count == ACTORS_MOST || k->place || k->object) {
            return false;
        }
        k->actors[k->actor_count++] = item;
        return true;
    }
    bool man = frame && (frame->flags & F_MAN) && who_defends(&item->who);
    if (man) {
        k->man = true;
        return lead != L_TO || (frame->flags & F_DEFENDS); /* drives to x4 */
    }
    if (k->object) {
        return false;
    }
    k->object = item;
    k->object_lead = lead;
    return true;
}

bool item_says(const struct item *item, const char *word)
{
    return item && item->tokens.count > 0 &&
           str_is(item->tokens.at[item->tokens.count - 1].text, word);
}

static bool place_found(struct clause *k, const struct item *item, unsigned lead)
{
    k->gone = k->gone || ((lead & L_FROM) && (item_says(item, "rim") || item_says(item, "lane")));
    if (lead & (L_FROM | L_ALONG | L_PAST)) {
        bool fine = !k->route || lead == L_FROM;
        k->route = lead == L_FROM ? k->route : item;
        return fine;
    }
    if (item_says(item, "baseline") && !(lead & L_TO)) { /* sneaks baseline: along it */
        k->route = item;
        return true;
    }
    if ((lead & (L_FOR | L_WITH | L_OFF)) || k->place) {
        return false;
    }
    k->place = item;
    k->place_lead = lead;
    return true;
}

static bool act_behind(const struct items *items, size_t i)
{
    bool behind = false;
    for (size_t n = i + 1; n < items->count; n++) {
        behind = behind || items->at[n].kind == ITEM_ACT;
    }
    return behind;
}

/* A spot in front of everything, of somebody who stands there: the corner lifts. */
static bool spot_acts(const struct clause *k, const struct items *items, size_t i, unsigned lead,
                      bool acted)
{
    return !acted && lead == L_NONE && k->actor_count == 0 && act_behind(items, i) && !k->place;
}

/* 5 turns to face the rim 2 is cutting: another sentence begins with this one. */
static bool begins_another(const struct items *items, size_t i)
{
    size_t n = i + 1;
    bool is = false;
    while (n < items->count && items->at[n].kind == ITEM_SMALL) {
        is = is || said_at(items->at[n].from, items->at[n].to, "is|are");
        n++;
    }
    if (n == items->count || items->at[n].kind != ITEM_ACT) {
        return false;
    }
    const struct token *verb = items->at[n].from;
    return ends_in_s(verb) || (is && ends_in_ing(verb));
}

bool clause_gather(struct clause *k, const struct items *items)
{
    unsigned lead = L_NONE;
    bool acted = false, into = false, through = false, at = false;
    for (size_t i = 0; i < items->count; i++) {
        const struct item *item = &items->at[i];
        bool fine = true;
        switch (item->kind) {
        case ITEM_FATAL:
        case ITEM_LOST:
            return false;
        case ITEM_UNKNOWN:
            fine = item->from->kind == TOKEN_WORD && ++k->unknown <= UNKNOWN_MOST;
            break;
        case ITEM_LEAD:
            lead = item->lead;
            if (i + 1 < items->count && item_says(&items->at[i + 1], "baseline") &&
                said_at(item->from, item->to, "by") == item->to) { /* by the baseline: along it */
                lead = L_ALONG;
            }
            k->led = true;
            at = said_at(item->from, item->to, "at") == item->to;
            through =
                said_at(item->from, item->to,
                        "down|through|thru|down through|straight down|straight through") != NULL;
            into = said_at(item->from, item->to, "into|to|toward|in to|out to|over to") != NULL;
            break;
        case ITEM_WHO:
            k->by = k->by || (lead == L_FROM && !k->from_who && i > 0 &&
                              said_at(items->at[i - 1].from, items->at[i - 1].to,
                                      "by|courtesy of") == items->at[i - 1].to);
            if ((acted && lead == L_NONE && begins_another(items, i)) ||
                (!acted && i > 0 && items->at[i - 1].kind == ITEM_WHO)) { /* the three elbow men */
                return false;
            }
            fine = who_found(k, item, lead, acted);
            lead = L_NONE;
            break;
        case ITEM_PLACE:
            if (spot_acts(k, items, i, lead, acted)) {
                k->actors[k->actor_count++] = item;
            } else if (!acted && k->actor_count > 0 && lead != L_NONE && !(lead & L_FROM) &&
                       act_behind(items, i)) {
                return false; /* 1 at the rim passes: where he stands, or where it goes? */
            } else {
                fine = place_found(k, item, lead);
                k->into = into;
                k->at = k->place == item && at;
                k->through = k->through || (k->route == item && through);
            }
            lead = L_NONE;
            break;
        case ITEM_SIDE:
            fine = !k->side && !(lead & (L_FROM | L_FOR | L_WITH | L_OFF)); /* from the right */
            k->side = item;
            lead = L_NONE;
            break;
        case ITEM_ACT:
            acted = true;
            lead = L_NONE;
            break;
        case ITEM_THING:
            k->thing = true;
            fine = !(lead & (L_TO | L_FOR | L_FROM | L_WITH)); /* passes to the ball */
            break;
        case ITEM_SMALL: /* off it: whose is lost */
            fine = !(lead & (L_OFF | L_PAST | L_FOR)) ||
                   !said_at(item->from, item->to, "it|that|this");
            k->gone = k->gone || said_at(item->from, item->to, "away");
            k->away = k->away || said_at(item->from, item->to, "out|away|back|off|up");
            break;
        case ITEM_CAUSE:
        case ITEM_REASON:
        case ITEM_HOPE:
            break;
        }
        if (!fine) {
            return false;
        }
    }
    /* cuts to: where to is lost */
    const struct item *last = items->count > 0 ? &items->at[items->count - 1] : NULL;
    return !last || last->kind != ITEM_LEAD ||
           !said_at(last->from, last->to,
                    "to|for|at|into|toward|towards|from|with|by|in to|out to");
}

/* a touch pass for a layup, goes in for a layup: a shot comes of it, by whom it is to or by him. */
bool clause_shot_lost(const struct clause *k)
{
    bool may = k->act->frame == FRAME_PASS || k->act->frame == FRAME_DRIVE;
    for (const struct token *at = k->c->at; may && at < k->c->end; at++) {
        if (said_at(at, k->c->end,
                    "for layup|for easy layup|for three|for open three|for jumper|for shot|for "
                    "open shot|for finish|for dunk|for two|for easy two|for easy one")) {
            return true;
        }
    }
    return false;
}

/* goes one on one, puts it on the floor: of one who does not have the ball it says nothing. */
bool clause_needs_ball(const struct clause *k, const struct who *who)
{
    struct who holder;
    return k->act->frame == FRAME_DRIVE && above_holder(k->c, &holder) && who_is_one(who) &&
           !same_who(&holder, who) &&
           said_at(
               k->act_item->from, k->act_item->to,
               "go one on one|iso|isolate|take|take it|take ball|put it on|put ball on|put it on "
               "floor|cross over|crossover|dribble drive|dribble penetrate|power dribble|keep "
               "it|keep and go|rip through|euro step") != NULL;
}
