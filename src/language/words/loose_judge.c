/* SPDX-License-Identifier: MIT */
/* loose_judge: what a clause can and cannot mean, by the ball, by who stands where, by the words
 * that are not slots of it: see loose_clause.h. */
#include "language/words/loose_clause.h"

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

static bool leads_fit(struct clause *k)
{
    bool moves =
        k->act->frame == FRAME_GO || k->act->frame == FRAME_MOVE || k->act->frame == FRAME_FILL;
    if (moves && k->object && k->object_lead == L_PAST && k->place) { /* to the wing behind 3 */
        k->object = NULL;
    }
    return !k->object || (loose_frame(k->act->frame)->leads & k->object_lead) != 0;
}

/* flashes to the elbow and gets it: on a spot of his own it is passed, not handed. */
bool clause_stands_off(const struct clause *k, const struct who *taker)
{
    const struct sentence *last = k->going->last;
    return last && last->subject.count == 1 && same_who(&last->subject.at[0], taker) &&
           verb_row(last->verb)->task == VERB_MOVE && last->place &&
           last->place->kind == PLACE_SPOT;
}

/* Who acts without the ball does not drive; who has it dribbles or drives off the screen. */
enum verb clause_by_ball(const struct clause *k, enum verb verb, const struct who *who)
{
    struct who holder;
    bool known = above_holder(k->c, &holder) && who_is_one(who);
    bool has = known && same_who(&holder, who);
    if (verb == VERB_GOES && has && k->place && k->act->frame == FRAME_GO) {
        return VERB_DRIBBLES;
    }
    if (verb == VERB_DRIVES && known && !has) {
        return VERB_CUTS;
    }
    if (verb == VERB_COMES && has) {
        return k->place ? VERB_DRIBBLES_OFF : VERB_DRIVES_OFF;
    }
    return verb;
}

/* What needs to be done to somebody, and nobody is named; his man will do. */
bool clause_lacks_object(const struct clause *k)
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
bool clause_could_be_two(const struct clause *k)
{
    const struct token *from = k->act_item->from, *to = k->act_item->to;
    bool sends = k->act->frame == FRAME_PASS && k->object && k->object_lead == L_NONE &&
                 said_at(from, to, "send") && (k->place || !k->thing);
    bool shoots = k->act->frame == FRAME_USE && said_at(from, to, "shoot off") &&
                  (k->actor_count == 0 || above_holds(k->c, &k->actors[0]->who));
    bool uses = k->act->frame == FRAME_USE && said_at(from, to, "use") && k->object &&
                k->actor_count == 1 && k->actors[0]->kind == ITEM_WHO &&
                !above_holds(k->c, &k->actors[0]->who) &&
                !above_screened(k->c, &k->actors[0]->who, &k->object->who);
    return sends || shoots || uses; /* uses 5's screen, which nobody has set: is it set now? */
}

/* steps in behind the ball: where to, and not to the spot that the verb has without a place. */
bool clause_goes_behind_ball(const struct clause *k)
{
    bool behind = false;
    for (const struct token *at = k->act_item->to; at < k->c->end && !behind; at++) {
        behind = said_at(at, k->c->end, "behind ball|behind the ball|in back of the ball") != NULL;
    }
    return behind && !k->place && verb_row(k->act->verb)->task == VERB_MOVE;
}

/* throws it to 5 over the top: a lob; clear across the floor: a skip. */
bool clause_passes_by(const struct clause *k, const char *way)
{
    bool plain = (k->act->frame == FRAME_PASS || k->act->frame == FRAME_GIVE) &&
                 k->act->verb == VERB_PASSES && k->act->pass == PASS_PLAIN;
    bool by = false;
    for (const struct token *at = k->act_item->from; plain && at < k->c->end && !by; at++) {
        const struct token *behind = said_at(at, k->c->end, way);
        by = behind && !said_at(behind, k->c->end, "of");
    }
    return by;
}

/* cuts to the rim, out to the corner: the same player goes on. */
bool clause_moves_on(const struct clause *k)
{
    const struct sentence *last = k->going->last;
    enum verb_task task = last ? verb_row(last->verb)->task : VERB_HOLD;
    bool moves = (task == VERB_MOVE || task == VERB_CARRY) && last->place && !k->going->relative;
    return moves && last->subject.count == 1 && who_is_one(&last->subject.at[0]) &&
           said_at(k->c->at, k->c->end,
                   "out to|down to|up to|over to|across to|all way to|on to|"
                   "down into|up into|out into|over into|then to|and to|through to");
}

/* gives it to 4: over some distance it is passed; near to, it could be handed. */
bool clause_apart_stand(struct clause *k)
{
    struct who giver, taker;
    struct spot_stood from, to;
    if (!k->object || k->object_lead == L_WITH) {
        return false;
    }
    taker = k->object->who;
    const struct item *first = k->actor_count > 0 ? k->actors[0] : NULL;
    bool named = first && first->kind == ITEM_WHO && who_is_one(&first->who);
    bool known = named ? (giver = first->who, true) : above_holder(k->c, &giver);
    return known && who_is_one(&giver) && who_is_one(&taker) && above_stands(k->c, &giver, &from) &&
           above_stands(k->c, &taker, &to) && (from.spot != to.spot || from.side != to.side);
}

/* What is done, as who it is done to and his ball have it; VERB_COUNT: nothing the language has. */
enum verb clause_verb_meant(struct clause *k)
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
