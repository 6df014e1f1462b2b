/* SPDX-License-Identifier: MIT */
/* loose_fill: a clause, put in the words of the language: see loose_read.h. */
#include "language/words/loose_clause.h"

#include <string.h>

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
        bool lost = /* passes to 2: who does is lost */
            !k->going->last && !he && ends_in_s(k->act_item->from);
        if (lost || k->actor_count > 1 || !clause_goes_on(k, he, out)) {
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
    bool middle = item_says(k->place, "middle");
    if (middle && verb == VERB_DRIVES) { /* drives middle: the way, not a place */
        put_word(k, k->place, STR("middle"));
        return true;
    }
    put_word(k, k->place, slot.preposition);
    if (middle) { /* of the lane, of the zone: not said */
        return false;
    }
    put_tokens(k, k->place);
    return true;
}

/* left, right by themselves: the way of a drive; off a screen it is not said; who pops or fades
 * ends on that wing.
 */
static bool put_side(struct clause *k, enum verb verb)
{
    bool wing = verb == VERB_POPS || verb == VERB_FADES || verb == VERB_FLARES;
    if (!k->side) {
        return true;
    }
    if (verb == VERB_DRIVES) {
        put_word(k, k->side, k->side->from->text);
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
    if (k->place && baseline && verb_row(verb)->task == VERB_MOVE) {
        const struct token *first = k->place->tokens.count > 0 ? k->place->tokens.at : NULL;
        return first && /* runs the baseline to the corner: to which? */
               (str_is(first->text, "left") || str_is(first->text, "right") ||
                str_is(first->text, "opposite") || k->side);
    }
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

static bool leads_fit(struct clause *k)
{
    bool moves =
        k->act->frame == FRAME_GO || k->act->frame == FRAME_MOVE || k->act->frame == FRAME_FILL;
    if (moves && k->object && k->object_lead == L_PAST && k->place) { /* to the wing behind 3 */
        k->object = NULL;
    }
    return !k->object || (loose_frame(k->act->frame)->leads & k->object_lead) != 0;
}

static void put_stop(struct clause *k)
{
    struct cursor at = here(k, k->act_item);
    recast_mark(&at, &k->said, '.');
}

/* flashes to the elbow and gets it: on a spot of his own it is passed, not handed. */
static bool stands_off(const struct clause *k, const struct who *taker)
{
    const struct sentence *last = k->going->last;
    return last && last->subject.count == 1 && same_who(&last->subject.at[0], taker) &&
           verb_row(last->verb)->task == VERB_MOVE && last->place &&
           last->place->kind == PLACE_SPOT;
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
    if (gets && k->act->frame == FRAME_RECEIVE && !k->from_who && !stands_off(k, &taker)) {
        return false;
    }
    bool known = k->from_who ? (giver = k->from_who->who, true) : above_holder(k->c, &giver);
    if (!known || !who_is_one(&giver)) {
        return false;
    }
    out->acts = taker;
    out->taker = k->act->frame == FRAME_TAKE || k->act->frame == FRAME_RECEIVE;
    k->said = said;
    if (same_who(&giver, &taker)) { /* he has it: nothing is new */
        return k->act->frame == FRAME_RECEIVE && !k->place;
    }
    struct who screener, second;
    enum screen_kind kind;
    if (k->act->frame == FRAME_TAKE && above_screen_here(k->c, &taker, &screener, &kind, &second) &&
        second.kind == WHO_NONE) { /* off it, into the hand-off */
        put_who(k, &taker);
        put_word(k, k->act_item, STR("comes"));
        put_word(k, k->act_item, STR("off"));
        put_who(k, &screener);
        put_word(k, k->act_item, STR("beside"));
        put_who(k, &giver);
        put_stop(k);
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
    if (k->object || k->side || !put_actor(k, &out->acts)) {
        return false;
    }
    bool rim = item_says(k->place, "rim") || item_says(k->place, "basket") ||
               item_says(k->place, "hoop"); /* shoots on the basket */
    if (k->place && !rim && who_is_one(&out->acts)) {
        put_word(k, k->act_item, STR("dribbles"));
        put_word(k, k->place, STR("to"));
        put_tokens(k, k->place);
        put_stop(k);
        put_who(k, &out->acts);
    }
    put_word(k, k->act_item, STR("shoots"));
    return true;
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

/* What needs to be done to somebody, and nobody is named; his man will do. */
static bool lacks_object(const struct clause *k)
{
    static const struct {
        enum frame_kind frame;
        const char *said;
    } needs[] = {
#define NEEDS(frame, said) {FRAME_##frame, said},
#include "language/words/loose_needs.def"
#undef NEEDS
    };
    if (k->object || k->man || (k->act->frame == FRAME_SCREEN && k->from_who)) {
        return false; /* step-up by 5 */
    }
    for (const struct token *at = k->act_item->to; at < k->c->end; at++) {
        if (said_at(at, k->c->end, "man|girl|guy|check|defender|defense|screen|ball|pick|lane")) {
            return false;
        }
    }
    for (size_t i = 0; i < sizeof needs / sizeof *needs; i++) {
        if (needs[i].frame == k->act->frame &&
            said_at(k->act_item->from, k->act_item->to, needs[i].said) == k->act_item->to) {
            return true;
        }
    }
    return false;
}

/* sends 3 to the corner, sends 3 away: 3 may go there; shoots off the screen, with the ball: a shot
 * or a use. */
static bool could_be_two(const struct clause *k)
{
    const struct token *from = k->act_item->from, *to = k->act_item->to;
    bool sends = k->act->frame == FRAME_PASS && k->object && k->object_lead == L_NONE &&
                 said_at(from, to, "send") && (k->place || !k->thing);
    bool shoots = k->act->frame == FRAME_USE && said_at(from, to, "shoot off") &&
                  (k->actor_count == 0 || above_holds(k->c, &k->actors[0]->who));
    return sends || shoots;
}

/* What is done, as who it is done to and his ball have it; VERB_COUNT: nothing the language has. */
static enum verb verb_meant(struct clause *k)
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

/* jogs to the corner, drives hard: how fast, as the modifier the language has. */
static void put_pace(struct clause *k, enum verb verb)
{
    static const struct {
        const char *acts, *words, *modifier;
    } paces[] = {
        {"jog", "slow|slowly|easy|easily", "jogging"},
        {"walk|walk up", "at a walk", "walking"},
        {"sprint|race|hustle|sprint off",
         "hard|fast|quick|quickly|full speed|at full speed|with speed", "sprinting"},
    };
    enum verb_task task = verb_row(verb)->task;
    if (task != VERB_MOVE && task != VERB_CARRY && task != VERB_USE) {
        return;
    }
    for (size_t i = 0; i < sizeof paces / sizeof *paces; i++) {
        bool said = said_at(k->act_item->from, k->act_item->to, paces[i].acts) != NULL;
        for (const struct token *at = k->act_item->to; at < k->c->end && !said; at++) {
            said = said_at(at, k->c->end, paces[i].words) != NULL;
        }
        if (said) {
            struct cursor at = here(k, k->act_item);
            recast_mark(&at, &k->said, ',');
            put_word(k, k->act_item, str_of(paces[i].modifier));
            return;
        }
    }
}

static bool fill_plain(struct clause *k, struct reading *out)
{
    enum verb verb = lacks_object(k) || could_be_two(k) ? VERB_COUNT : verb_meant(k);
    if (verb == VERB_COUNT || !put_actor(k, &out->acts)) {
        return false;
    }
    if (k->from_who) { /* bursts away from 5 */
        return false;
    }
    if (clause_needs_ball(k, &out->acts)) {
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
    if ((!spot_object(k) && !put_object(k, verb)) || !put_screener(k, verb, &out->acts) ||
        !put_place(k, verb) || !put_side(k, verb) || !put_way(k, verb)) {
        return false;
    }
    put_pace(k, verb);
    return true;
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
    if (above_holds(k->c, &out->acts) && said_at(from, from + 1, "go") && !k->going->more) {
        put_word(k, k->act_item, STR("drives"));
        return true;
    }
    out->run_in = k->actor_count > 0 && who_is_one(&out->acts);
    k->said.tokens.count = 0;
    return out->run_in;
}

/* looks inside, draws help: nobody moves, and who does it may go on. */
static bool fill_idle(struct clause *k, struct reading *out)
{
    bool more = k->object || k->place || k->side || k->from_who || k->route || k->actor_count > 1;
    if (k->actor_count == 1) {
        out->acts = k->actors[0]->who;
    } else if (k->going->relative && k->going->last &&
               !clause_whom(k, &out->acts)) { /* who plants and */
        return false;
    }
    return !more && (k->actor_count == 0 ? k->going->last != NULL : who_is_one(&out->acts));
}

/* steps in behind the ball: where to, and not to the spot that the verb has without a place. */
static bool goes_behind_ball(const struct clause *k)
{
    bool behind = false;
    for (const struct token *at = k->act_item->to; at < k->c->end && !behind; at++) {
        behind = said_at(at, k->c->end, "behind ball|behind the ball|in back of the ball") != NULL;
    }
    return behind && !k->place && verb_row(k->act->verb)->task == VERB_MOVE;
}

bool clause_fill(const struct cursor *c, const struct items *items, const struct going *going,
                 struct reading *out)
{
    struct clause k = {.c = c, .going = going};
    *out = (struct reading){.sure = false};
    if (!clause_act(&k, items) || !clause_gather(&k, items)) {
        return false;
    }
    static const struct loose_act goes = {FRAME_GO, VERB_GOES, PASS_PLAIN, SCREEN_PLAIN, ""};
    static const struct loose_act passes = {FRAME_PASS, VERB_PASSES, PASS_PLAIN, SCREEN_PLAIN, ""};
    out->sure = k.unknown == 0;
    out->named = k.actor_count > 0 && k.actors[0]->who.kind != WHO_NONE;
    if (!k.act) {
        bool nothing = k.actor_count == 0 && !k.place && !k.object && !k.side && !k.from_who;
        if (nothing || k.actor_count == 0 || !k.place || k.place_lead == L_NONE) {
            return nothing && k.unknown == 0 && !k.route && !k.thing &&
                   !(k.led && items->count == 1);
        }
        k.act = &goes;
        k.act_item = k.place;
    }
    if (k.act->frame == FRAME_RECEIVE && k.object && (k.object_lead & L_TO)) { /* gets it to 5 */
        k.act = &passes;
    }
    bool fine;
    bool cuts = k.act->verb == VERB_CUTS || k.act->verb == VERB_BACK_CUTS;
    bool led = items->count > 0 && items->at[items->count - 1].kind == ITEM_LEAD; /* cuts up */
    if ((k.gone || (cuts && (k.away || led) && !k.side)) && !k.place && verb_goes(k.act->verb)) {
        return false; /* cuts away: not to the rim */
    }
    if (goes_behind_ball(&k)) {
        return false;
    }
    switch (k.act->frame) {
    case FRAME_LIGHT:
        return false;
    case FRAME_IDLE:
        return fill_idle(&k, out);
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
        fine = fill_plain(&k, out) && !clause_shot_lost(&k);
        break;
    }
    out->uses = k.act->frame == FRAME_USE || k.act->frame == FRAME_CURL;
    out->tokens = k.said.tokens;
    return fine;
}
