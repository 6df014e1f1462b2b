/* SPDX-License-Identifier: MIT */
/* trap: two defenders within reach of who has the ball, and one of them there to trap him: he
 * cannot dribble through them. Takes where everybody is and what they are there for; where the two
 * stand is the defense room's. */
#include "floor/sim/guard.h"

#define REACH 1.1  /* m: an arm's length and half a body (ours) */
#define IN_WAY .3  /* cosine: his way leads at a defender */
#define GIVES 1.0  /* m/s: who backs up faster than that before him does not stop him (ours) */
#define NEARER 2.0 /* m: then the next one takes the open man, and who trapped takes his (ours) */
#define HELD .35   /* s of it, and the dribble is over (ours) */

/* He is at the ball to trap it: by his sentence, a read or a press; at a screen once the handler
 * has come off it. */
static bool traps(const struct world *world, body b, body holder)
{
    const struct duty *duty = &world->duty[b];
    const struct pick *pick = &world->pick;
    if (pick->live && pick->user == holder && (b == pick->guard || b == pick->big)) {
        const struct screen *screen = &world->screen[pick->screener];
        return pick->does.big == STRATEGY_TRAP && (screen->cleared || screen->slipped);
    }
    bool told = duty->strategy == STRATEGY_TRAP || duty->strategy == STRATEGY_DOUBLE;
    return (told && !duty->waits && duty_about(world, b) == holder) || zone_traps(world, b);
}

static bool is_at(const struct world *world, body b, body holder)
{
    const struct agent *agent = &world->agent[b];
    return agent->here && !agent->shadow &&
           vec2_near(agent->m.at, world->agent[holder].m.at, REACH);
}

/* Two are at him, and the way leads at one of them who stands his ground. */
static bool is_shut(const struct world *world, body holder, struct vec2 way)
{
    int near = 0;
    bool trapped = false, ahead = false;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        bool his = traps(world, (body)b, holder);
        if (!is_at(world, (body)b, holder) || !(his || guard_minds(world, (body)b) == holder)) {
            continue;
        }
        struct vec2 to = vec2_sub(world->agent[b].m.at, world->agent[holder].m.at);
        near++;
        trapped |= his;
        ahead |=
            vec2_dot(way, vec2_unit(to)) > IN_WAY && vec2_dot(way, world->agent[b].m.v) < GIVES;
    }
    return near > 1 && trapped && ahead;
}

/* ---- the ball has left the trap ---- */

/* Free to take another man: no sentence, no read, no help, and not at the ball himself. */
static bool may_rotate(const struct world *world, body b, body trapped)
{
    const struct duty *duty = &world->duty[b];
    body man = world->guards[b];
    return world->agent[b].here && man < BODY_COUNT && man != trapped &&
           duty->strategy == STRATEGY_NONE && !duty->holds && world->helper != b;
}

/* Who has tagged the open man has him, else who is so much nearer to him that he takes him; or
 * BODY_NONE. */
static body next_to(const struct world *world, body self, body open, body trapped)
{
    body tagger = world->pick.tagger;
    if (tagger != BODY_NONE && tagger != self && world->pick.screener == open) {
        return tagger;
    }
    struct vec2 at = world->agent[open].m.at;
    double least = vec2_distance(world->agent[self].m.at, at) - NEARER;
    body best = BODY_NONE;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        double far = vec2_distance(world->agent[b].m.at, at);
        if (b != self && far < least && may_rotate(world, (body)b, trapped)) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

void trap_rotate(struct world *world, body self, body trapped, body holder)
{
    body open = world->guards[self];
    bool his = open < BODY_COUNT && open == holder && open != trapped;
    body next = his ? next_to(world, self, open, trapped) : (body)BODY_NONE;
    if (next != BODY_NONE) {
        guard_swap(world, self, next);
        if (next == world->pick.tagger) {
            world->pick.tagger = BODY_NONE;
        }
        duty_by_rule(world, next, STRATEGY_RECOVER);
    }
    duty_by_rule(world, self, STRATEGY_RECOVER);
}

bool trap_holds(struct world *world, body holder, struct vec2 command)
{
    struct agent *agent = &world->agent[holder];
    bool shut = ball_is_held(world, holder) && is_shut(world, holder, vec2_unit(command));
    if (!shut || agent->held_since < 0) {
        agent->held_since = shut ? world->t : -1;
    }
    return shut;
}

bool trap_is_closed(const struct world *world, body holder)
{
    double since = world->agent[holder].held_since;
    return since >= 0 && world->t >= since + HELD;
}
