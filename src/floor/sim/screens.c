/* SPDX-License-Identifier: MIT */
/* screens: what is known of the screens of a step: which one a user uses, where its user is to go,
 * when the screener will be there. */
#include "floor/sim/world.h"

#include "base/real.h"

#define LATER 99.0  /* s: not on the way yet */
#define STRAIGHT .8 /* cosine: a way that leads on past the defender, to neither side of him */
#define CURLS_IN .8 /* of his own way to the ring: nearer to it ends a curl that goes in (ours) */
#define KEEP_CARRIED .3 /* s a screen of an earlier step stands after it has been used */

/* Unlike ball_is_for: of balls under way only a pass counts, not a loose one that he goes for. */
bool screen_on_ball(const struct world *world, body user)
{
    const struct ball *ball = &world->ball;
    return ball_is_held(world, user) || (ball->state == IN_FLIGHT && ball->target == user);
}

int screen_task_for(struct world *world, body user)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        bool set = world->segment->record[i].time[MOMENT_SET] != TIME_NEVER;
        if (job->task->kind == TASK_SCREEN && job->task->other == user &&
            job->phase != PHASE_DONE && !set) {
            return (int)i;
        }
    }
    return SIM_NO_TASK;
}

/* The coach has tied the fake to a screen for its player: that is not to wait for it. */
static bool comes_after_screen(const struct world *world, const struct task *fake)
{
    for (size_t i = 0; i < fake->waits.count; i++) {
        const struct wait *wait = &fake->waits.at[i];
        const struct task *on = wait->kind == WAIT_TASK ? world->job[wait->task].task : NULL;
        if (on && on->kind == TASK_SCREEN && on->other == fake->who &&
            wait->moment != MOMENT_STARTED) {
            return true;
        }
    }
    return false;
}

bool screen_setup_pending(struct world *world, body user)
{
    const struct agent *agent = &world->agent[user];
    for (size_t i = agent->head; i < agent->queued; i++) {
        const struct task *task = world->job[agent->queue[i]].task;
        if (task->kind == TASK_USE) {
            return false;
        }
        if (task->kind == TASK_MOVE && task->shape == SHAPE_SETUP) {
            return !comes_after_screen(world, task);
        }
    }
    return false;
}

double screen_eta(struct world *world, int task)
{
    const struct job *job = &world->job[task];
    if (job->phase != PHASE_ACTIVE) {
        return LATER;
    }
    const struct screen *screen = &world->screen[job->task->who];
    double far = vec2_distance(world->agent[job->task->who].m.at, screen->spot);
    return far / (.6 * world->agent[job->task->who].level->sprint);
}

static bool is_use_of(const struct task *task, body screener, body user)
{
    return task->kind == TASK_USE && task->who == user &&
           (task->other == screener || task->other2 == screener);
}

/* ---- where the user is to go: what all the reads want of one screen ---- */

/* The uses of one screen: the first that is written (one away from it only when there is no other),
 * and of those that come off it on either side of the defender how many, and the first one. */
struct uses {
    const struct task *first, *side[2];
    int sides[2], straight_off; /* of so many in all that are no curls, fades or rejections */
    int first_side;             /* 0: straight on */
};

/* The user's way as his defender divides it. */
struct divide {
    struct vec2 user, ahead; /* from the user to his defender, unit */
};

static struct divide divide_of(const struct world *world, body user)
{
    struct vec2 at = world->agent[user].m.at, d;
    body guard = guard_of(world, user);
    if (guard != BODY_NONE && world->agent[guard].here && !world->agent[guard].shadow) {
        d = world->agent[guard].m.at;
    } else {
        d = defense_man(world->court, world->play->man, at, ball_place(world),
                        ball_is_held(world, user));
    }
    return (struct divide){at, vec2_unit(vec2_sub(d, at))};
}

/* +1 left of the line from user to defender, -1 right, 0 straight on. */
static int side_of(const struct divide *divide, struct vec2 exit)
{
    struct vec2 way = vec2_unit(vec2_sub(exit, divide->user));
    double off = vec2_cross(divide->ahead, way);
    return vec2_dot(way, divide->ahead) > STRAIGHT ? 0 : off > 0 ? 1 : off < 0 ? -1 : 0;
}

static bool is_straight_off(const struct task *use)
{
    return use->shape != SHAPE_BACK && use->shape != SHAPE_FADE && use->shape != SHAPE_CURL;
}

/* A place that is reckoned from the screener says nothing of where he is to stand. */
static bool hangs_on(const struct goal *goal, body who)
{
    bool body_goal =
        goal->kind == GOAL_BODY || goal->kind == GOAL_BESIDE || goal->kind == GOAL_BEHIND;
    return (body_goal && goal->who == who) || (goal->a && hangs_on(goal->a, who)) ||
           (goal->b && hangs_on(goal->b, who));
}

static void count_use(struct world *world, const struct divide *divide, const struct task *use,
                      body screener, struct uses *uses)
{
    bool tells = is_straight_off(use) && !hangs_on(&use->goal, screener);
    int side = tells ? side_of(divide, move_goal(world, use)) : 0;
    bool away = use->shape == SHAPE_BACK;
    if (!uses->first || (uses->first->shape == SHAPE_BACK && !away)) {
        uses->first = use;
        uses->first_side = side;
    }
    uses->straight_off += is_straight_off(use);
    if (side) {
        int i = side > 0;
        uses->sides[i]++;
        uses->side[i] = uses->side[i] ? uses->side[i] : use;
    }
}

/* It is of a screen that he has set before: one stands in front of it, and he sets the next. */
static bool is_over(struct world *world, const struct step *step, size_t index, body screener)
{
    int use = (int)(world->base + index);
    const struct job *now = queue_head(world, screener);
    if (step != world->step || (size_t)use >= world->jobs || !now || now->index <= use) {
        return false;
    }
    for (int i = (int)world->base; i < use; i++) {
        const struct task *task = world->job[i].task;
        if (task->kind == TASK_SCREEN && task->who == screener &&
            task->other == world->job[use].task->who) {
            return now->task->kind == TASK_SCREEN;
        }
    }
    return false;
}

const struct task *screen_use(struct world *world, const struct step *step, body screener,
                              body user, int *side)
{
    struct divide divide = divide_of(world, user);
    struct uses uses = {0};
    *side = 0;
    for (size_t i = 0; i < step->tasks.count; i++) {
        if (is_use_of(&step->tasks.at[i], screener, user) && !is_over(world, step, i, screener)) {
            count_use(world, &divide, &step->tasks.at[i], screener, &uses);
        }
    }
    for (size_t b = 0; b < step->branches.count; b++) {
        const struct branch *branch = &step->branches.at[b];
        for (size_t i = 0; i < branch->tasks.count; i++) {
            if (is_use_of(&branch->tasks.at[i], screener, user)) {
                count_use(world, &divide, &branch->tasks.at[i], screener, &uses);
            }
        }
    }
    if (!uses.first) {
        return NULL;
    }
    int more = uses.sides[1] > uses.sides[0], their_side = more ? 1 : -1;
    bool even = uses.sides[0] == uses.sides[1] || !is_straight_off(uses.first);
    *side = even ? uses.first_side : their_side;
    bool most = uses.first_side == 0 && 2 * uses.sides[more] > uses.straight_off;
    bool theirs = !even && (uses.first_side == -their_side || most);
    return theirs ? uses.side[more] : uses.first;
}

/* Who goes away from a screen leaves it on the other side of his defender. */
static struct vec2 mirrored(const struct world *world, body user, struct vec2 exit)
{
    struct divide divide = divide_of(world, user);
    if (side_of(&divide, exit) == 0) {
        return exit;
    }
    struct vec2 way = vec2_sub(exit, divide.user);
    double along = vec2_dot(way, divide.ahead), across = vec2_cross(divide.ahead, way);
    return vec2_along(vec2_along(divide.user, divide.ahead, along), vec2_left(divide.ahead),
                      -across);
}

/* Who curls in comes off the screen toward the ball, and turns behind it: a screen on the straight
 * way in would leave nothing to curl round. */
static bool curls_in(const struct world *world, const struct task *use, struct vec2 goal)
{
    double far = vec2_length(world->agent[use->who].m.at);
    return use->shape == SHAPE_CURL && vec2_length(goal) < CURLS_IN * far &&
           !ball_is_held(world, use->who);
}

/* Half the way from him to the ball; he is the ball himself, or beside it: to the rim. */
static struct vec2 toward_ball(const struct world *world, body user)
{
    struct vec2 at = world->agent[user].m.at, ball = ball_place(world);
    return vec2_distance(at, ball) > 1 ? vec2_mix(at, ball, .5) : vec2_of(0, 0);
}

/* The user's next run of this way through the step, when nobody says that he uses the screen. */
static const struct task *next_run(const struct world *world, body user)
{
    const struct agent *agent = &world->agent[user];
    for (size_t i = agent->head; i < agent->queued; i++) {
        const struct task *task = world->job[agent->queue[i]].task;
        if (task->kind == TASK_MOVE && task->shape != SHAPE_SETUP) {
            return task;
        }
    }
    return NULL;
}

/* Also by what the next step says of it. */
struct vec2 screen_exit(struct world *world, body screener, body user)
{
    const struct screen *screen = &world->screen[screener];
    const struct task *use =
        screen->live && screen->user == user && screen->task != SIM_NO_TASK ? screen->use : NULL;
    const struct step *next = border_next(world);
    int side;
    if (!use) {
        use = screen_use(world, world->step, screener, user, &side);
    }
    if (!use) {
        use = next_run(world, user);
    }
    if (!use && next) {
        use = screen_use(world, next, screener, user, &side);
    }
    if (use) {
        struct vec2 goal = move_goal(world, use);
        if (curls_in(world, use, goal)) {
            return toward_ball(world, user);
        }
        bool away = use->verb == VERB_REJECTS && use->goal_written && ball_is_held(world, user);
        return away ? mirrored(world, user, goal) : goal;
    }
    return toward_ball(world, user);
}

void screen_watch(struct world *world)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        struct screen *screen = &world->screen[b];
        bool over = screen->live && screen->task == SIM_NO_TASK && screen->cleared &&
                    world->t > screen->clear_at + KEEP_CARRIED;
        if (over) {
            screen->live = false;
            world->agent[b].anchored = false;
        }
    }
}
