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
    enum verb_task task = verb_row(k->act->verb)->task;
    bool noun = task == VERB_SCREEN || task == VERB_PASS || task == VERB_EXCHANGE;
    bool by = k->from_who && k->actor_count == 0 && k->act->frame != FRAME_RECEIVE &&
              k->act->frame != FRAME_TAKE && (k->by || noun);
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
    const struct token *spot = k->place && k->place->tokens.count > 1 ? k->place->tokens.at : NULL;
    if (spot && str_equal(spot->text, k->side->from->text)) { /* left, to the left slot */
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
    if (gets && k->act->frame == FRAME_RECEIVE && !k->from_who && !clause_stands_off(k, &taker)) {
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

/* comes off a down screen by 5: the screen, and its use. */
static bool fill_noun(struct clause *k, struct reading *out)
{
    enum frame_kind frame = k->act->frame;
    bool runs = frame == FRAME_GO || frame == FRAME_MOVE || frame == FRAME_USE ||
                frame == FRAME_CURL || frame == FRAME_DRIBBLE || frame == FRAME_DRIVE;
    const struct item *by = k->from_who;
    if (!by || !runs || k->object || k->side || several(k) || !who_is_one(&by->who)) {
        return false;
    }
    struct clause user = *k;
    user.from_who = NULL;
    user.said = (struct recast){.to = NULL};
    if (!put_actor(&user, &out->acts) || !who_is_one(&out->acts) ||
        same_who(&out->acts, &by->who)) {
        return false;
    }
    bool has = above_holds(k->c, &out->acts);
    enum screen_kind kind = has ? SCREEN_BALL : k->noun->act->screen;
    put_tokens(k, by);
    put_word(k, k->noun, phrase_words(VERB_SCREENS, PASS_PLAIN, kind, false));
    put_word(k, k->noun, STR("for"));
    put_who(k, &out->acts);
    put_stop(k);
    put_who(k, &out->acts);
    enum verb verb = frame == FRAME_CURL ? k->act->verb : clause_by_ball(k, VERB_COMES, &out->acts);
    put_verb(k, verb);
    put_word(k, k->noun, STR("off"));
    put_tokens(k, by);
    return (k->place || frame == FRAME_CURL || verb == VERB_DRIVES_OFF) && put_place(k, verb);
}

/* has it: so it is already, or it is not. */
static bool fill_has(struct clause *k, struct reading *out)
{
    struct who holder;
    bool more =
        k->object || k->from_who || k->actor_count > 1 || k->route || k->side || k->going->relative;
    if (more || !put_actor(k, &out->acts) || !above_holder(k->c, &holder)) {
        return false;
    }
    k->said.tokens.count = 0;
    return same_who(&holder, &out->acts);
}

static bool fill_plain(struct clause *k, struct reading *out)
{
    bool run = k->act->frame != FRAME_USE && k->act->frame != FRAME_CURL;
    if (k->noun && run) { /* runs off that screen to the block: a use of it */
        static const struct loose_act comes = {FRAME_USE, VERB_COMES, PASS_PLAIN, SCREEN_PLAIN, ""};
        k->act = k->place && verb_row(k->act->verb)->task == VERB_MOVE ? &comes : k->act;
    }
    enum verb verb =
        clause_lacks_object(k) || clause_could_be_two(k) ? VERB_COUNT : clause_verb_meant(k);
    bool guards = verb != VERB_COUNT && verb_row(verb)->task == VERB_GUARD;
    if (verb == VERB_COUNT ||
        (k->noun && !guards && k->act->frame != FRAME_USE && k->act->frame != FRAME_CURL &&
         k->act->frame != FRAME_DRIBBLE && k->act->frame != FRAME_DRIVE)) {
        return false;
    }
    if (!put_actor(k, &out->acts)) {
        return false;
    }
    if (k->from_who) { /* bursts away from 5 */
        return false;
    }
    if (clause_needs_ball(k, &out->acts)) {
        return false;
    }
    verb = clause_by_ball(k, verb, &out->acts);
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
    if (k->noun || !put_actor(k, &out->acts) || several(k)) { /* bends round the screen */
        return false;
    }
    if (above_holds(k->c, &out->acts) && said_at(from, from + 1, "go") && !k->going->more) {
        put_word(k, k->act_item, STR("drives"));
        return true;
    }
    out->run_in =
        (k->actor_count > 0 || (k->going->last && k->going->more)) && who_is_one(&out->acts);
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
    static const struct loose_act skips = {FRAME_PASS, VERB_PASSES, PASS_SKIP, SCREEN_PLAIN, ""};
    static const struct loose_act lobs = {FRAME_PASS, VERB_PASSES, PASS_LOB, SCREEN_PLAIN, ""};
    out->sure = k.unknown == 0;
    out->named = k.actor_count > 0 && k.actors[0]->who.kind != WHO_NONE;
    if (!k.act) {
        bool nothing = k.actor_count == 0 && !k.place && !k.object && !k.side && !k.from_who;
        bool where = k.actor_count == 0 && !k.object && k.place && (k.place_lead & L_TO) &&
                     (going->waits || clause_moves_on(&k));
        if (nothing || (k.actor_count == 0 && !where) || !k.place || k.place_lead == L_NONE) {
            return nothing && k.unknown == 0 && !k.route && !k.thing &&
                   !(k.led && items->count == 1);
        }
        for (size_t i = 0; i < items->count && going->more; i++) { /* is on the block: a state */
            if (items->at[i].kind == ITEM_SMALL &&
                said_at(items->at[i].from, items->at[i].to, "is|are")) {
                return false;
            }
        }
        if (token_is_player(k.place->from)) { /* 1 to 2: a pass, and nobody goes there */
            return false;
        }
        k.act = &goes;
        k.act_item = k.place;
    }
    if (k.act->frame == FRAME_RECEIVE && k.object && (k.object_lead & L_TO)) { /* gets it to 5 */
        k.act = &passes;
    }
    bool over = clause_passes_by(&k, "over top|over hedge|over front|over trap");
    bool across =
        clause_passes_by(&k, "clear across|all way across|across floor|across court|cross court");
    if (k.act->frame == FRAME_GIVE) {
        if (!over && !clause_apart_stand(&k)) {
            return false;
        }
        k.act = &passes;
    }
    k.act = over ? &lobs : across ? &skips : k.act;
    if (k.place && k.place_lead == L_NONE &&
        said_at(k.act_item->from, k.act_item->to, "vacate|evacuate|cross")) { /* vacates the top */
        out->run_in = going->more && put_actor(&k, &out->acts) && who_is_one(&out->acts);
        k.said.tokens.count = 0;
        return out->run_in;
    }
    bool fine;
    bool cuts = k.act->verb == VERB_CUTS || k.act->verb == VERB_BACK_CUTS;
    bool led = items->count > 0 && items->at[items->count - 1].kind == ITEM_LEAD; /* cuts up */
    if ((k.gone || (cuts && (k.away || led) && !k.side)) && !k.place && verb_goes(k.act->verb)) {
        return false; /* cuts away: not to the rim */
    }
    if (clause_goes_behind_ball(&k)) { /* where that is may come behind it */
        out->run_in = going->more && put_actor(&k, &out->acts) && who_is_one(&out->acts);
        return out->run_in;
    }
    if (k.noun && k.from_who) {
        fine = fill_noun(&k, out);
        out->uses = true;
        out->tokens = k.said.tokens;
        return fine;
    }
    switch (k.act->frame) {
    case FRAME_LIGHT:
        return false;
    case FRAME_IDLE:
        return fill_idle(&k, out);
    case FRAME_HAS:
        return fill_has(&k, out);
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
