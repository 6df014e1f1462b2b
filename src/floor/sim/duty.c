/* SPDX-License-Identifier: MIT */
/* duty: what one defender does instead of the man rules: how it begins, by a read, his sentence or
 * the rule, and where it wants him. What ends it is in duty_watch.c; the targets are the defense
 * room's. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define ARM .44  /* of the height: shoulder to fingertip (Drillis & Contini) */
#define AFTER .8 /* s after a screen was used in which it is still what he minds */

void duty_clear(struct world *world)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        world->duty[b] = (struct duty){.whom = BODY_NONE, .with = BODY_NONE, .task = SIM_NO_TASK};
    }
}

body duty_man(const struct world *world, body self)
{
    const struct duty *duty = &world->duty[self];
    if (duty->whom == BODY_NONE) {
        return world->guards[self];
    }
    bool plays = defense_plays_him(duty->strategy) ||
                 (guard_has_area(world, self) && defense_at_screens(duty->strategy));
    return plays ? duty->whom : world->guards[self];
}

bool duty_screen(const struct world *world, body man)
{
    for (int s = 0; s <= BODY_COACH; s++) {
        const struct screen *screen = &world->screen[s];
        bool over = screen->cleared && world->t > screen->clear_at + AFTER;
        if (screen->live && !over && (screen->user == man || s == man)) {
            return true;
        }
    }
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        const struct task *task = job->task;
        bool screens = task->kind == TASK_SCREEN && job->phase == PHASE_WAITING;
        bool uses = task->kind == TASK_USE && !job->complete;
        if ((screens || uses) && (task->who == man || task->other == man)) {
            return true;
        }
    }
    return false;
}

/* ---- how it begins ---- */

/* The attacker nearest to p among those who are open; any, when `open` is false. */
static body nearest_man(const struct world *world, struct vec2 p, bool open)
{
    body best = BODY_NONE;
    double least = 1e9;
    for (int b = 0; b < BODY_COACH; b++) {
        double far = vec2_distance(world->agent[b].m.at, p);
        if (world->agent[b].here && far < least && (!open || world->guarded[b] == BODY_NONE)) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

/* A defender without a man goes to the nearest one who is open. */
static void find_man(struct world *world, body self)
{
    body man = nearest_man(world, world->agent[self].m.at, true);
    if (world->guards[self] == BODY_NONE && man != BODY_NONE) {
        guard_take(world, self, man);
    }
}

void duty_pick_up(struct world *world)
{
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        if (world->agent[b].here && world->play->zone == ZONE_NONE) {
            find_man(world, (body)b);
        }
    }
}

/* The team-mate who takes his man: named, or whose man is the nearest to his own. */
static body partner(const struct world *world, body self)
{
    if (world->duty[self].with != BODY_NONE) {
        return world->duty[self].with;
    }
    struct vec2 at = world->agent[world->guards[self]].m.at;
    body best = BODY_NONE;
    double least = 1e9;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        body man = world->guards[b];
        if (b == self || !world->agent[b].here || man >= BODY_COUNT) {
            continue;
        }
        double far = vec2_distance(world->agent[man].m.at, at);
        if (far < least) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

/* At a screen both wait for it; where there is none the two change men at once. */
static void begin_switch(struct world *world, body self)
{
    body other = partner(world, self);
    if (other == BODY_NONE || world->guards[self] == BODY_NONE ||
        world->guards[other] == BODY_NONE) {
        world->duty[self].strategy = STRATEGY_NONE;
        return;
    }
    if (!duty_screen(world, world->guards[self])) {
        guard_swap(world, self, other);
    } else if (world->duty[self].with != BODY_NONE) {
        world->duty[other].strategy = STRATEGY_SWITCH;
    }
}

/* Who has an area minds whoever is nearest to him; to recover is to go back to it. */
static void begin_in_area(struct world *world, body self)
{
    struct duty *duty = &world->duty[self];
    bool ball = duty->strategy == STRATEGY_CLOSE_OUT || duty->strategy == STRATEGY_TRAP;
    bool back = duty->strategy == STRATEGY_RECOVER && duty->whom == BODY_NONE;
    if (back || duty->strategy == STRATEGY_SWITCH) { /* there is no man to give away */
        duty->strategy = STRATEGY_NONE;
    } else if (duty->whom != BODY_NONE || ball) {
        return;
    } else if (!defense_leaves(duty->strategy)) {
        duty->whom = nearest_man(world, world->agent[self].m.at, false);
    }
}

void duty_meets(struct world *world, body self)
{
    struct duty *duty = &world->duty[self];
    body holder = see_ago(world, world->agent[self].level->reaction).holder;
    if (duty->strategy == STRATEGY_CLOSE_OUT && guard_has_area(world, self) && !duty->waits) {
        duty->has_trapped = holder < BODY_COUNT;
        duty->trapped = holder;
    }
}

static void begin(struct world *world, body self, struct duty duty)
{
    duty.since = world->t;
    duty.from = world->agent[self].m.at;
    world->duty[self] = duty;
    duty_meets(world, self);
    if (guard_has_area(world, self)) {
        begin_in_area(world, self);
    } else if (duty.whom == BODY_NONE && !defense_leaves(duty.strategy)) {
        find_man(world, self);
    }
    duty = world->duty[self];
    switch (duty.strategy) {
    case STRATEGY_GUARD:
        guard_take(world, self, duty.whom);
        break;
    case STRATEGY_RECOVER:
        if (duty.whom != BODY_NONE) {
            guard_take(world, self, duty.whom);
        }
        break;
    case STRATEGY_SWITCH:
        begin_switch(world, self);
        break;
    default:
        break;
    }
}

void duty_begin(struct world *world, struct job *job)
{
    const struct task *task = job->task;
    struct vec2 position[BODY_COUNT];
    world_position(world, position);
    struct duty duty = {.strategy = defense_strategy_of(task->verb),
                        .whom = task->other,
                        .with = task->on,
                        .has_place = task->goal_written,
                        .task = job->index};
    duty.place =
        goal_point(&task->goal, world->court, task->who, world->agent[task->who].m.at, position);
    begin(world, task->who, duty);
}

void duty_by_rule(struct world *world, body self, enum strategy strategy)
{
    begin(world, self,
          (struct duty){.strategy = strategy,
                        .whom = BODY_NONE,
                        .with = BODY_NONE,
                        .task = SIM_NO_TASK,
                        .by_rule = true});
}

/* ---- what a read says ---- */

static body condition_body(const struct who *who)
{
    if (who->kind == WHO_DEFENDER) {
        return body_defender(who->number);
    }
    return who->kind == WHO_PLAYER || who->kind == WHO_DEFENDER_OF ? body_attacker(who->number)
                                                                   : (body)BODY_NONE;
}

body duty_read_of(const struct world *world, const struct who *who)
{
    body b = condition_body(who);
    return b != BODY_NONE && body_is_attacker(b) ? guard_of(world, b) : b;
}

/* `goal`: where it takes him, or NULL. */
static void suppose(struct world *world, body self, const struct condition *condition,
                    const struct goal *goal)
{
    enum strategy strategy;
    if (self >= BODY_COUNT || !defense_strategy(condition, &strategy)) {
        return;
    }
    body about = condition_body(&condition->who);
    if (guard_has_area(world, self) && condition->kind == COND_OPEN) {
        world->zone.left = about; /* nobody's area reaches out to him */
        return;
    }
    bool both = condition->kind == COND_BOTH;
    body second = both ? duty_read_of(world, &condition->other) : (body)BODY_NONE;
    body whom = condition_body(both ? &condition->object : &condition->other);
    struct vec2 position[BODY_COUNT];
    world_position(world, position);
    struct duty duty = {.strategy = strategy,
                        .whom = whom,
                        .with = second == self ? duty_read_of(world, &condition->who) : second,
                        .vain = world->duty[self].vain, /* as reads_look has it */
                        .task = SIM_NO_TASK,
                        .waits = defense_waits(strategy) && !goal,
                        .has_place = goal != NULL};
    if (goal) {
        duty.place = goal_point(goal, world->court, self, world->agent[self].m.at, position);
    }
    if (whom != BODY_NONE && body_is_defender(whom)) {
        duty.whom = BODY_NONE;
        duty.with = whom;
    }
    if (guard_has_area(world, self) && about != BODY_NONE && body_is_attacker(about)) {
        duty.whom = about;
    }
    begin(world, self, duty);
}

/* Of several conditions joined by `or`, the first. */
static void suppose_read(struct world *world)
{
    const struct step *step = world->step;
    if (world->branch < 0 || step->branches.at[world->branch].conditions.count == 0) {
        return;
    }
    const struct branch *branch = &step->branches.at[world->branch];
    const struct condition *condition = &branch->conditions.at[0];
    const struct goal *goal = branch->goal_written ? &branch->goal : NULL;
    if (condition->kind == COND_OTHERWISE) {
        return;
    }
    suppose(world, duty_read_of(world, &condition->who), condition, goal);
    if (condition->kind == COND_BOTH && condition->verb != VERB_SWITCHES) {
        suppose(world, duty_read_of(world, &condition->other), condition, goal);
    }
}

static struct who who_of(body b)
{
    enum who_kind kind = body_is_defender(b)   ? WHO_DEFENDER
                         : body_is_attacker(b) ? WHO_PLAYER
                                               : WHO_NONE;
    return (struct who){.kind = kind, .number = body_number(b)};
}

struct condition deed_condition(const struct wait *deed)
{
    return (struct condition){.kind = COND_VERB,
                              .who = who_of(deed->who),
                              .other = who_of(deed->other),
                              .verb = deed->verb,
                              .span = deed->span};
}

void duty_suppose(struct world *world)
{
    suppose_read(world);
    for (size_t i = 0; world->supposed && i < world->supposed->count; i++) {
        const struct wait *deed = world->supposed->at[i];
        struct condition condition = deed_condition(deed);
        suppose(world, deed->who, &condition, NULL);
    }
}

/* ---- where it wants him ---- */

/* Whom it is about: named; a trap without a name is of the ball. */
body duty_about(const struct world *world, body self)
{
    const struct duty *duty = &world->duty[self];
    body holder = see_ago(world, world->agent[self].level->reaction).holder;
    bool ball = duty->strategy == STRATEGY_TRAP ||
                (duty->strategy == STRATEGY_CLOSE_OUT && guard_has_area(world, self));
    if (duty->whom == BODY_NONE && ball && holder != BODY_NONE) {
        return holder;
    }
    return duty->whom != BODY_NONE ? duty->whom : world->guards[self];
}

/* The other defender at a man who is doubled: whose man it is, else one with the same duty. */
static body mate_at(const struct world *world, body self, body whom)
{
    body own = world->guarded[whom];
    if (own != self && own != BODY_NONE && world->agent[own].here) {
        return own;
    }
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        const struct duty *duty = &world->duty[b];
        bool same = duty->strategy == STRATEGY_DOUBLE || duty->strategy == STRATEGY_TRAP;
        if (b != self && world->agent[b].here && same && duty_about(world, (body)b) == whom) {
            return (body)b;
        }
    }
    return BODY_NONE;
}

static void see_mate(const struct world *world, body self, body whom, struct seen_duty *seen)
{
    body mate = whom == BODY_NONE ? (body)BODY_NONE : mate_at(world, self, whom);
    seen->has_mate = mate != BODY_NONE;
    seen->first = whom != BODY_NONE && world->guarded[whom] == self;
    if (seen->has_mate) {
        seen->mate_first = world->guarded[whom] == mate;
        seen->mate = world->agent[mate].m.at;
    }
}

static struct seen_duty seen_of(const struct world *world, body self, const struct view *view)
{
    const struct duty *duty = &world->duty[self];
    body own = world->guards[self], whom = duty_about(world, self);
    double reaction = world->agent[self].level->reaction;
    body holder = see_ago(world, reaction).holder;
    struct mover man = own == BODY_NONE               ? world->agent[self].m
                       : own == duty_man(world, self) ? view->man
                                                      : see_body(world, own, reaction);
    struct mover him = whom == BODY_NONE || whom == own ? man
                       : whom == duty_man(world, self)
                           ? view->man
                           : see_body(world, whom, guard_reaction(world, self, whom));
    struct seen_duty seen = {.court = world->court,
                             .style = world->play->man,
                             .self = world->agent[self].m.at,
                             .from = duty->from,
                             .man = man.at,
                             .man_v = man.v,
                             .whom = him.at,
                             .whom_v = him.v,
                             .ball = view->ball,
                             .has_man = own != BODY_NONE,
                             .has_ball = own != BODY_NONE && holder == own,
                             .whom_has_ball = whom != BODY_NONE && holder == whom,
                             .place = duty->place,
                             .has_place = duty->has_place,
                             .over = duty->over,
                             .side = duty->side,
                             .hand = world->play->mirrored ? -1 : 1,
                             .arm = ARM * world->agent[self].level->height,
                             .step = world->agent[self].level->step};
    see_mate(world, self, whom, &seen);
    return seen;
}

bool duty_aim(struct world *world, body self, const struct view *view, struct aim *aim)
{
    const struct duty *duty = &world->duty[self];
    if (duty->strategy == STRATEGY_NONE) {
        if (world->guards[self] != BODY_NONE || world->helper == self) {
            return false;
        }
        *aim = (struct aim){defense_free(view->ball), vec2_of(0, 0)};
        return true;
    }
    body man = duty_man(world, self);
    if (duty->waits) {
        return false;
    }
    if (defense_at_screens(duty->strategy) && man != BODY_NONE && duty_screen(world, man)) {
        return false;
    }
    struct seen_duty seen = seen_of(world, self, view);
    struct duty_aim wanted;
    if (duty->side == 0) {
        world->duty[self].side = seen.side = defense_side(&seen);
    }
    if (!defense_duty(duty->strategy, &seen, &wanted)) {
        return false;
    }
    world->agent[self].goes = wanted.gait;
    *aim = wanted.aim;
    return true;
}
