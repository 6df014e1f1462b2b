/* SPDX-License-Identifier: MIT */
/* seal: a post who has his defender on his back: he steps between him and the ball and holds him
 * there, until he has it or does something else. Takes where both stand; must not know verbs. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define CONTACT (2 * MOTION_BODY + .04)
#define NEARBY 2.5 /* m from the place: a defender further off is not sealed (ours) */
#define HELD 1.2   /* m from his man: within an arm, he feels him (ours) */
#define STEP 1.2   /* m from the place that a seal may be made at (ours) */
/* m before the ring's middle: nearer to the baseline the board is in the way of the shot, and
 * nobody steps there who does not stand there (ours). */
#define LOWEST .45

static bool can_seal(const struct world *world, body guard)
{
    return guard != BODY_NONE && world->agent[guard].here && !world->agent[guard].shadow;
}

/* The next pass that is written to him, and has not been thrown; or NULL. */
static const struct task *his_pass(const struct world *world, body who)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        if (task->kind == TASK_PASS && task->other == who && world->job[i].phase != PHASE_DONE) {
            return task;
        }
    }
    return NULL;
}

/* Where he wants the ball from: where who is to pass it to him will have it; else where it is. */
static struct vec2 comes_from(const struct world *world, body who)
{
    const struct task *pass = his_pass(world, who);
    if (!pass || ball_is_for(world, pass->who)) {
        return ball_place(world);
    }
    const struct agent *passer = &world->agent[pass->who];
    return passer->going ? path_point(&passer->course.path, passer->course.goal) : passer->m.at;
}

struct vec2 seal_place(const struct world *world, body who, struct vec2 goal)
{
    body guard = guard_of(world, who);
    if (!can_seal(world, guard) || vec2_distance(world->agent[guard].m.at, goal) > NEARBY) {
        return goal;
    }
    struct vec2 at = world->agent[guard].m.at;
    struct vec2 front = vec2_along(at, vec2_unit(vec2_sub(comes_from(world, who), at)), CONTACT);
    front.y = real_max(front.y, real_min(goal.y, LOWEST));
    double far = vec2_distance(goal, front);
    return far > STEP ? vec2_mix(goal, front, STEP / far) : front;
}

void seal_begin(struct world *world, body who)
{
    world->agent[who].seals = true;
}

void seal_set(struct world *world, body who)
{
    struct agent *agent = &world->agent[who];
    if (agent->seals) {
        agent->anchored = true;
        agent->going = false;
        agent->m.v = vec2_of(0, 0);
    }
}

void seal_tick(struct world *world, body who)
{
    struct agent *agent = &world->agent[who];
    if (!agent->seals) {
        return;
    }
    if (ball_is_held(world, who)) {
        agent->seals = agent->anchored = false;
    } else if (agent->anchored) {
        agent->face = vec2_unit(vec2_sub(ball_place(world), agent->m.at));
    }
}

/* His man's back is in his chest: he stays where he is while it comes there, and then behind it. */
bool seal_aim(struct world *world, body self, const struct view *view, struct aim *aim)
{
    body man = world->guards[self];
    if (man == BODY_NONE || !world->agent[man].seals ||
        !vec2_near(world->agent[self].m.at, world->agent[man].m.at, HELD)) {
        return false;
    }
    struct vec2 back = vec2_unit(vec2_sub(view->man.at, comes_from(world, man)));
    bool set = world->agent[man].anchored;
    *aim =
        (struct aim){.at = set ? vec2_along(view->man.at, back, CONTACT) : world->agent[self].m.at};
    return true;
}
