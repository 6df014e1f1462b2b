/* SPDX-License-Identifier: MIT */
/* loose_fill: the pieces of a clause, put in the words of the language: see loose_read.h. */
#include "language/words/loose_read.h"

#include <string.h>

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

enum { ACTORS_MOST = 3, UNKNOWN_MOST = 2 };
/* What a clause says. */
struct clause {
    const struct cursor *c;
    const struct sentence *last; /* of the line; NULL: none */
    bool relative, more;         /* behind `who`; another clause follows */
    const struct loose_act *act;
    const struct item *act_item;
    const struct item *actors[ACTORS_MOST];
    size_t actor_count;
    const struct item *object, *from_who; /* whom it is done to; by whom, from whom */
    unsigned object_lead;
    const struct item *place, *route, *side;
    bool spot_object; /* the place stands for whom it is done to */
    size_t unknown;
    bool thing, into, at, away, through;
    unsigned place_lead;
    struct recast said; /* its tokens, as they come */
};

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
        return a->act->frame == FRAME_LIGHT ? b : a;
    }
    if (same_act(a->act, b->act) || (same_verb && b_plain)) {
        return a;
    }
    if (same_verb && a_plain) {
        return b;
    }
    return a_use && b->act->frame == FRAME_SCREEN ? a : NULL;
}

static bool find_act(struct clause *k, const struct items *items)
{
    for (size_t i = 0; i < items->count; i++) {
        const struct item *item = &items->at[i];
        if (item->kind != ITEM_ACT) {
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
        return true;
    }
    if (k->object) {
        return false;
    }
    k->object = item;
    k->object_lead = lead;
    return true;
}

static bool item_says(const struct item *item, const char *word)
{
    return item && item->tokens.count > 0 &&
           str_is(item->tokens.at[item->tokens.count - 1].text, word);
}

static bool place_found(struct clause *k, const struct item *item, unsigned lead)
{
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

/* A spot in front of everything, of somebody who stands there: the corner lifts. */
static bool spot_acts(const struct clause *k, const struct items *items, size_t i, unsigned lead,
                      bool acted)
{
    bool behind = false;
    for (size_t n = i + 1; n < items->count; n++) {
        behind = behind || items->at[n].kind == ITEM_ACT;
    }
    return !acted && lead == L_NONE && k->actor_count == 0 && behind && !k->place;
}

static bool gather(struct clause *k, const struct items *items)
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
            at = said_at(item->from, item->to, "at") == item->to;
            through =
                said_at(item->from, item->to,
                        "down|through|thru|down through|straight down|straight through") != NULL;
            into = said_at(item->from, item->to, "into|to|toward|in to|out to|over to") != NULL;
            break;
        case ITEM_WHO:
            fine = who_found(k, item, lead, acted);
            lead = L_NONE;
            break;
        case ITEM_PLACE:
            if (spot_acts(k, items, i, lead, acted)) {
                k->actors[k->actor_count++] = item;
            } else {
                fine = place_found(k, item, lead);
                k->into = into;
                k->at = k->place == item && at;
                k->through = k->through || (k->route == item && through);
            }
            lead = L_NONE;
            break;
        case ITEM_SIDE:
            fine = !k->side;
            k->side = item;
            break;
        case ITEM_ACT:
            acted = true;
            lead = L_NONE;
            break;
        case ITEM_THING:
            k->thing = true;
            fine = !(lead & (L_TO | L_FOR | L_FROM | L_WITH)); /* passes to the ball */
            break;
        case ITEM_SMALL:
            k->away = k->away || said_at(item->from, item->to, "out|away|back|off|up");
            break;
        case ITEM_CAUSE:
        case ITEM_REASON:
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

/* ---- as the language has it ---- */

static struct cursor here(const struct clause *k, const struct item *item)
{
    struct cursor at = *k->c;
    at.at = item ? item->from : k->c->at;
    return at;
}

static void put_word(struct clause *k, const struct item *item, struct str words)
{
    struct cursor at = here(k, item);
    if (words.size > 0) {
        recast_verb(&at, &k->said, words);
    }
}

static void put_tokens(struct clause *k, const struct item *item)
{
    recast_copy(k->c, &k->said, item->tokens.at, item->tokens.at + item->tokens.count);
}

static void put_who(struct clause *k, const struct who *who)
{
    struct cursor at = here(k, NULL);
    if (who->kind == WHO_PLAYER) {
        recast_number(&at, &k->said, who->number);
    } else if (who->kind == WHO_EVERYONE_ELSE) {
        recast_word(&at, &k->said, "everyone-else");
    } else if (who->kind == WHO_ROLE) {
        recast_verb(&at, &k->said, who->role);
    } else if (who->kind == WHO_DEFENDER) {
        struct str text = str_format(k->c->arena, "x%d", who->number);
        struct token token = token_number(k->c->arena, cursor_next(&at), who->number);
        token.kind = TOKEN_DEFENDER;
        token.text = text;
        token.first = '\0';
        VEC_PUSH(k->c->arena, &k->said.tokens, token);
    }
}

static bool several(const struct clause *k)
{
    return k->actor_count > 1 ||
           (k->actor_count == 1 && k->actors[0]->kind == ITEM_WHO &&
            k->actors[0]->tokens.count > 1 && k->actors[0]->who.kind == WHO_PLAYER);
}

/* Who goes on, where nobody is named or `he` is: behind a screen the one who set it rolls, and the
 * one it is for uses it; behind a pass only the passer goes on, and `he` could be either. */
static bool goes_on(struct clause *k, bool he, struct who *out)
{
    const struct sentence *last = k->last;
    enum frame_kind frame = k->act->frame;
    if (k->act && loose_frame(frame)->holder) {
        return above_holder(k->c, out);
    }
    if (!last || last->subject.count != 1) {
        return false;
    }
    *out = k->relative ? last->object : last->subject.at[0];
    bool two = !k->relative && who_is_one(&last->object);
    bool screen = verb_row(last->verb)->task == VERB_SCREEN;
    bool own =
        k->act->verb == VERB_ROLLS || k->act->verb == VERB_POPS || k->act->verb == VERB_SLIPS;
    bool uses = frame == FRAME_USE || frame == FRAME_CURL || frame == FRAME_TAKE ||
                k->act->verb == VERB_BACK_CUTS;
    if (two && screen && !own) {
        *out = last->object;
        return uses;
    }
    return !two || own || (!he && !screen);
}

/* Who acts: named, or by whom, or who has the ball, or who acted before. */
static bool put_actor(struct clause *k, struct who *out)
{
    bool by = k->from_who && k->actor_count == 0 && k->act->frame != FRAME_RECEIVE &&
              k->act->frame != FRAME_TAKE;
    if (by) {
        k->actors[k->actor_count++] = k->from_who;
        k->from_who = NULL;
    }
    const struct item *first = k->actor_count > 0 ? k->actors[0] : NULL;
    bool he = first && first->kind == ITEM_WHO && first->who.kind == WHO_NONE;
    if (!first || he) {
        struct str verb = k->act_item->from->text; /* passes to 2: who does is lost */
        bool lost = !k->last && !he && verb.size > 2 && verb.at[verb.size - 1] == 's' &&
                    verb.at[verb.size - 2] != 's';
        if (lost || k->actor_count > 1 || !goes_on(k, he, out)) {
            return false;
        }
        put_who(k, out);
        return out->kind == WHO_PLAYER || out->kind == WHO_ROLE || out->kind == WHO_DEFENDER ||
               out->kind == WHO_EVERYONE_ELSE;
    }
    for (size_t i = 0; i < k->actor_count; i++) {
        if (i > 0) {
            put_word(k, k->actors[i], STR("and"));
        }
        put_tokens(k, k->actors[i]);
    }
    *out = first->kind == ITEM_WHO ? first->who : (struct who){.kind = WHO_NONE};
    return true;
}

static bool slot_of(enum verb verb, const char *letters, struct slot *out)
{
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(verb, slots);
    for (size_t i = 0; i < count; i++) {
        if (strchr(letters, slots[i].letter)) {
            *out = slots[i];
            return true;
        }
    }
    return false;
}

/* cuts off 5: a use of the screen, as the movement before it says. */
static enum verb use_of(const struct clause *k)
{
    switch (k->act->frame) {
    case FRAME_DRIVE:
        return VERB_DRIVES_OFF;
    case FRAME_DRIBBLE:
        return VERB_DRIBBLES_OFF;
    case FRAME_GO:
    case FRAME_MOVE:
        if (k->act->verb == VERB_BACK_CUTS) {
            return VERB_BACK_CUTS_OFF;
        }
        return k->place ? VERB_COMES : k->act->verb == VERB_CUTS ? VERB_CURLS : VERB_COUNT;
    default:
        return VERB_COUNT;
    }
}

static void put_verb(struct clause *k, enum verb verb)
{
    put_word(k, k->act_item, phrase_words(verb, k->act->pass, k->act->screen, several(k)));
}

/* To whom, for whom. */
static bool put_object(struct clause *k, enum verb verb)
{
    struct slot slot;
    bool takes = slot_of(verb, "WUD", &slot);
    const struct item *object = k->object;
    if (!object) {
        return !takes || !slot.needed || k->act->frame == FRAME_USE ||
               k->act->frame == FRAME_PASS ||
               (k->act->frame == FRAME_SCREEN && k->act->screen == SCREEN_BALL);
    }
    if (!takes) {
        return false;
    }
    bool defender = k->act->frame == FRAME_SCREEN && who_defends(&object->who);
    if (defender && k->object_lead == L_FOR) { /* a screen is for a team-mate */
        return false;
    }
    if (!defender || object->who.kind == WHO_DEFENDER_OF) {
        put_word(k, object, slot.preposition);
    }
    if (defender && object->who.kind == WHO_DEFENDER_OF) {
        struct who owner = {.kind = WHO_PLAYER, .number = object->who.number};
        put_who(k, &owner);
    } else {
        put_tokens(k, object);
    }
    return true;
}

static bool put_place(struct clause *k, enum verb verb)
{
    struct slot slot;
    if (!k->place) {
        return true;
    }
    bool high = said_at(k->place->from, k->place->to, "high|low|up high|down low") == k->place->to;
    bool loose = (verb == VERB_DRIBBLES && k->at) ||
                 (verb == VERB_PASSES && (high || k->place_lead == L_NONE)) || /* high to 5 */
                 (verb == VERB_SCREENS && k->into); /* 3 into the corner: where 3 goes */
    if (loose) {
        return false;
    }
    if (!slot_of(verb, "PE", &slot)) {
        return false;
    }
    put_word(k, k->place, slot.preposition);
    put_tokens(k, k->place);
    return true;
}

/* left, right by themselves: the way of a drive is left out; who pops or fades ends on that wing.
 */
static bool put_side(struct clause *k, enum verb verb)
{
    bool wing = verb == VERB_POPS || verb == VERB_FADES || verb == VERB_FLARES;
    if (!k->side || verb == VERB_DRIVES || verb == VERB_DRIVES_OFF) {
        return true;
    }
    if (!wing || k->place) {
        return false;
    }
    put_word(k, k->side, STR("to"));
    put_word(k, k->side, k->side->from->text);
    put_word(k, k->side, STR("wing"));
    return true;
}

/* A drive baseline or middle, a cut down the lane. */
static bool put_way(struct clause *k, enum verb verb)
{
    bool lane = k->through && (item_says(k->route, "lane") || item_says(k->route, "paint") ||
                               item_says(k->route, "key") || item_says(k->route, "rim"));
    bool baseline = item_says(k->route, "baseline");
    if (k->place || k->side) {
        return true;
    }
    if (verb == VERB_DRIVES && baseline) {
        put_word(k, k->route, STR("baseline"));
        return true;
    }
    if (verb == VERB_CUTS) {
        put_word(k, k->act_item, STR("to"));
        put_word(k, k->act_item, STR("rim"));
        return !k->route || lane;
    }
    return (!k->route || lane || verb == VERB_DRIVES) && !(verb == VERB_DRIVES && k->away);
}

/* The place of a verb that takes none but somebody: feed the post, hit the corner. */
static bool spot_object(struct clause *k)
{
    struct slot slot;
    bool spot = (loose_frame(k->act->frame)->flags & F_SPOT) && !k->object && k->place;
    if (spot && slot_of(k->act->verb, "W", &slot)) {
        put_word(k, k->place, slot.preposition);
        put_tokens(k, k->place);
        k->place = NULL;
        return true;
    }
    return false;
}

static bool leads_fit(const struct clause *k)
{
    return !k->object || (loose_frame(k->act->frame)->leads & k->object_lead) != 0;
}

static void put_stop(struct clause *k)
{
    struct cursor at = here(k, k->act_item);
    recast_mark(&at, &k->said, '.');
}

/* gets it from 2, takes the hand-off from 5: said by who gives. */
static bool fill_inverse(struct clause *k, struct reading *out)
{
    struct who giver, taker;
    struct recast said = {.to = NULL};
    if (!put_actor(k, &taker) || !who_is_one(&taker) || several(k) || k->object || k->side) {
        return false;
    }
    bool gets = said_at(k->act_item->from, k->act_item->to, "get") != NULL; /* handed or passed? */
    if (gets && k->act->frame == FRAME_RECEIVE && !k->from_who) {
        return false;
    }
    bool known = k->from_who ? (giver = k->from_who->who, true) : above_holder(k->c, &giver);
    if (!known || !who_is_one(&giver)) {
        return false;
    }
    out->acts = taker;
    k->said = said;
    if (same_who(&giver, &taker)) { /* he has it: nothing is new */
        return k->act->frame == FRAME_RECEIVE && !k->place;
    }
    put_who(k, &giver);
    put_word(k, k->act_item, k->act->frame == FRAME_TAKE ? STR("hands-off") : STR("passes"));
    put_word(k, k->act_item, STR("to"));
    put_who(k, &taker);
    return put_place(k, k->act->verb);
}

/* pulls up at the elbow: there first. */
static bool fill_shot(struct clause *k, struct reading *out)
{
    if (k->object || !put_actor(k, &out->acts)) {
        return false;
    }
    if (k->place && who_is_one(&out->acts)) {
        put_word(k, k->act_item, STR("dribbles"));
        put_word(k, k->place, STR("to"));
        put_tokens(k, k->place);
        put_stop(k);
        put_who(k, &out->acts);
    }
    put_word(k, k->act_item, STR("shoots"));
    return true;
}

static bool holds(const struct clause *k, const struct who *who)
{
    struct who holder;
    return above_holder(k->c, &holder) && same_who(&holder, who);
}

/* Who acts without the ball does not drive; who has it dribbles or drives off the screen. */
static enum verb by_ball(const struct clause *k, enum verb verb, const struct who *who)
{
    struct who holder;
    bool known = above_holder(k->c, &holder) && who_is_one(who);
    bool has = known && same_who(&holder, who);
    if (verb == VERB_DRIVES && known && !has) {
        return VERB_CUTS;
    }
    if (verb == VERB_COMES && has) {
        return k->place ? VERB_DRIBBLES_OFF : VERB_DRIVES_OFF;
    }
    return verb;
}

/* The one screen that waits for him. */
static bool put_screener(struct clause *k, enum verb verb, const struct who *user)
{
    struct who one, two;
    bool many;
    bool uses = verb_row(verb)->task == VERB_USE && !k->object;
    if (!uses || !above_waiting_screen(k->c, user, &one, &two, &many)) {
        return !uses;
    }
    put_word(k, k->act_item, STR("off"));
    put_who(k, &one);
    return two.kind == WHO_NONE;
}

/* What is done, as who it is done to and his ball have it; VERB_COUNT: nothing the language has. */
static enum verb verb_meant(const struct clause *k)
{
    if (k->act->frame == FRAME_FILL && k->object && !k->place) {
        return VERB_REPLACES;
    }
    if (!leads_fit(k)) {
        return (k->object_lead & L_OFF) ? use_of(k) : VERB_COUNT;
    }
    bool at = k->act->frame == FRAME_DRIBBLE && k->object && !k->place;
    return at ? VERB_DRIBBLES_AT : k->act->verb;
}

static bool fill_plain(struct clause *k, struct reading *out)
{
    enum verb verb = verb_meant(k);
    if (verb == VERB_COUNT || !put_actor(k, &out->acts)) {
        return false;
    }
    verb = by_ball(k, verb, &out->acts);
    put_verb(k, verb);
    if (k->act->frame == FRAME_SCREEN && k->act->screen == SCREEN_BALL && !k->object) {
        struct who holder;
        if (!above_holder(k->c, &holder) || same_who(&holder, &out->acts)) {
            return false;
        }
        put_word(k, k->act_item, STR("for"));
        put_who(k, &holder);
    }
    return (spot_object(k) || put_object(k, verb)) && put_screener(k, verb, &out->acts) &&
           put_place(k, verb) && put_side(k, verb) && put_way(k, verb);
}

/* Goes, and no word says where: with the ball to the rim; else it is part of what comes. */
static bool fill_going(struct clause *k, struct reading *out)
{
    const struct token *from = k->act_item->from;
    if (k->place || k->object || k->side) {
        return fill_plain(k, out) && (k->place || k->object);
    }
    if (!put_actor(k, &out->acts) || several(k)) {
        return false;
    }
    if (holds(k, &out->acts) && said_at(from, from + 1, "go") && !k->more) {
        put_word(k, k->act_item, STR("drives"));
        return true;
    }
    out->run_in = k->actor_count > 0 && who_is_one(&out->acts);
    k->said.tokens.count = 0;
    return out->run_in;
}

bool clause_fill(const struct cursor *c, const struct items *items, const struct going *going,
                 struct reading *out)
{
    struct clause k = {
        .c = c, .last = going->last, .relative = going->relative, .more = going->more};
    *out = (struct reading){.sure = false};
    if (!find_act(&k, items) || !gather(&k, items)) {
        return false;
    }
    static const struct loose_act goes = {FRAME_GO, VERB_GOES, PASS_PLAIN, SCREEN_PLAIN, ""};
    static const struct loose_act passes = {FRAME_PASS, VERB_PASSES, PASS_PLAIN, SCREEN_PLAIN, ""};
    out->sure = k.unknown == 0;
    if (!k.act) {
        bool nothing = k.actor_count == 0 && !k.place && !k.object && !k.side && !k.from_who;
        if (nothing || k.actor_count == 0 || !k.place || k.place_lead == L_NONE) {
            return nothing && k.unknown == 0 && !k.route && !k.thing;
        }
        k.act = &goes;
        k.act_item = k.place;
    }
    if (k.act->frame == FRAME_RECEIVE && k.object && (k.object_lead & L_TO)) { /* gets it to 5 */
        k.act = &passes;
    }
    bool fine;
    switch (k.act->frame) {
    case FRAME_LIGHT:
        return false;
    case FRAME_GO:
        fine = fill_going(&k, out);
        break;
    case FRAME_RECEIVE:
    case FRAME_TAKE:
        fine = fill_inverse(&k, out);
        break;
    case FRAME_SHOOT:
        fine = fill_shot(&k, out);
        break;
    default:
        fine = fill_plain(&k, out);
        break;
    }
    out->tokens = k.said.tokens;
    return fine;
}
