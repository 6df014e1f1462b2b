/* SPDX-License-Identifier: MIT */
/* duty_watch: how a duty goes on: the jab that is done, the cutter who is met, the roller who is
 * let go when one's own man gets the ball, and who is there; and what of it can be seen from
 * outside. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define NEAR .35      /* m: there */
#define PLACE_AT .62  /* m: and at a place where somebody stands, as near as two bodies get */
#define THINKS .04    /* s until he has thought of it once */
#define AT_ONCE .1    /* s: he has had no way to go */
#define MET .64       /* m: two bodies and a hand: he has been bumped */
#define RUNS 1.0      /* m/s: a cutter */
#define LETS_GO 1.5   /* s that a bump or a jab may take */
#define HELPED 5.2    /* m from the rim: there the ball calls for help */
#define GOES_BACK 2.5 /* s of it, by rule */
#define TRAPPED 1.2   /* m */
#define COMES_AT 2.0  /* m: and nearer than that he troubles who has the ball (ours) */
#define GUARDED 2.0   /* m: a man who has a defender counts as so much further off */

static bool shot_is_up(const struct world *world)
{
    for (size_t i = 0; i < world->jobs; i++) {
        if (world->job[i].task->kind == TASK_SHOOT &&
            world->segment->record[i].time[MOMENT_RELEASED] != TIME_NEVER) {
            return true;
        }
    }
    return false;
}

static bool is_bumped(const struct world *world, body self)
{
    const struct duty *duty = &world->duty[self];
    body whom = duty->whom != BODY_NONE ? duty->whom : world->guards[self];
    if (whom == BODY_NONE) {
        return true;
    }
    const struct mover *cutter = &world->agent[whom].m, *own = &world->agent[self].m;
    bool runs = vec2_length(cutter->v) > RUNS;
    bool met = vec2_distance(cutter->at, own->at) < MET;
    bool past = vec2_dot(cutter->v, vec2_sub(own->at, cutter->at)) < 0 &&
                world->t > duty->since + world->agent[self].level->reaction;
    return runs && (met || (past && vec2_distance(cutter->at, own->at) < 2));
}

static bool jab_is_done(const struct world *world, body self)
{
    const struct agent *agent = &world->agent[self];
    bool near = agent->goes == DUTY_RUNS && vec2_distance(agent->m.at, agent->aim.at) < NEAR;
    double since = world->t - world->duty[self].since;
    return (near && since > .1) || since > LETS_GO;
}

/* His own man is passed to, or has the ball. */
static bool man_gets_ball(const struct world *world, body self)
{
    body man = world->guards[self];
    struct glimpse seen = see_ago(world, world->agent[self].level->reaction);
    return man != BODY_NONE && seen.holder == man;
}

static bool is_over(const struct world *world, body self)
{
    switch (world->duty[self].strategy) {
    case STRATEGY_BOX_OUT:
        return shot_is_up(world);
    case STRATEGY_BUMP:
        return is_bumped(world, self);
    case STRATEGY_STUNT:
        return jab_is_done(world, self);
    default:
        return false;
    }
}

/* The nearest attacker; one whom somebody guards has to be so much nearer. */
static body nearest_man(const struct world *world, struct vec2 p)
{
    body best = BODY_NONE;
    double least = 1e9;
    for (int b = 0; b < BODY_COACH; b++) {
        double far = vec2_distance(world->agent[b].m.at, p);
        far += world->guarded[b] != BODY_NONE ? GUARDED : 0;
        if (world->agent[b].here && far < least) {
            least = far;
            best = (body)b;
        }
    }
    return best;
}

/* A screen's defender is where he should be when the user has gone by it. */
static bool screen_is_through(const struct world *world, body man)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        bool his = job->task->who == man || job->task->other == man;
        if (job->task->kind == TASK_USE && his && job->phase != PHASE_WAITING &&
            world->t > job->begun + world->level->reaction) {
            return true;
        }
    }
    return false;
}

bool duty_arrives(const struct world *world, body self)
{
    const struct duty *duty = &world->duty[self];
    const struct agent *agent = &world->agent[self];
    bool takes_time = duty->strategy == STRATEGY_STUNT || duty->strategy == STRATEGY_BUMP ||
                      duty->strategy == STRATEGY_BOX_OUT;
    body man = duty_man(world, self);
    if (duty->there) {
        return true;
    }
    if (world->t <= duty->since + THINKS || (takes_time && !duty->over)) {
        return false;
    }
    if (defense_at_screens(duty->strategy) && man != BODY_NONE && duty_screen(world, man) &&
        !screen_is_through(world, man)) {
        return false;
    }
    double far = vec2_distance(agent->m.at, agent->aim.at);
    bool place = duty->strategy == STRATEGY_HELP || duty->strategy == STRATEGY_ROTATE;
    return far < (place ? PLACE_AT : NEAR);
}

/* What follows: the errand is done, or he takes whoever is nearest. */
void duty_arrive(struct world *world, body self)
{
    struct duty *duty = &world->duty[self];
    duty->there = true;
    if (duty->strategy == STRATEGY_RECOVER && !duty->by_rule && !world->agent[self].has_helped &&
        world->t <= duty->since + AT_ONCE) {
        reads_recover(world, self);
    }
    if (duty->strategy == STRATEGY_ROTATE && guard_has_area(world, self)) {
        return; /* he stays there */
    }
    if (duty->strategy == STRATEGY_ROTATE) {
        body man = nearest_man(world, world->agent[self].m.at);
        if (man != BODY_NONE) {
            guard_take(world, self, man);
        }
    }
    duty->holds = duty->strategy == STRATEGY_GUARD && duty->task != SIM_NO_TASK;
    switch (duty->strategy) {
    case STRATEGY_ROTATE:
    case STRATEGY_GUARD:
    case STRATEGY_RECOVER:
    case STRATEGY_STUNT:
    case STRATEGY_BUMP:
        duty->strategy = STRATEGY_NONE;
        break;
    default:
        break;
    }
}

/* The jab is out, the cutter met, the shot up: what comes then has to be thought of anew. */
static void end_of_way_out(struct world *world, body self)
{
    struct duty *duty = &world->duty[self];
    bool back = duty->strategy == STRATEGY_STUNT || duty->strategy == STRATEGY_BUMP;
    duty->over = true;
    duty->since = world->t;
    if (back && duty->task != SIM_NO_TASK) {
        struct task_record *record = world_record(world, duty->task);
        record->has_corner = true;
        record->corner = world->agent[self].m.at;
    }
}

/* The ball has changed hands since he was told, as far as he has seen. */
static bool has_come(const struct world *world, body self)
{
    double since = world->duty[self].since, seen = world->t - world->agent[self].level->reaction;
    for (int i = world->changes - 1; i >= 0 && i > world->changes - SIM_CHANGES; i--) {
        double t = world->change[i % SIM_CHANGES].t;
        if (t > since && t <= seen) {
            return true;
        }
    }
    return false;
}

static bool pass_comes(const struct world *world)
{
    for (size_t i = world->base; i < world->jobs; i++) {
        if (world->job[i].task->kind == TASK_PASS && !world->job[i].complete) {
            return true;
        }
    }
    return false;
}

/* The ball is there or on its way, the cutter runs, somebody drives. */
static bool is_called(const struct world *world, body self)
{
    double reaction = world->agent[self].level->reaction;
    body holder = see_ago(world, reaction).holder, whom = duty_about(world, self);
    struct mover ball = holder < BODY_COUNT ? see_body(world, holder, reaction) : (struct mover){0};
    switch (world->duty[self].strategy) {
    case STRATEGY_BUMP:
    case STRATEGY_TAG:
        return whom == BODY_NONE || vec2_length(see_body(world, whom, reaction).v) > RUNS;
    case STRATEGY_HELP: {
        double toward = vec2_dot(ball.v, vec2_unit(vec2_scale(ball.at, -1)));
        return holder < BODY_COUNT && (toward > RUNS || vec2_length(ball.at) < HELPED);
    }
    case STRATEGY_CLOSE_OUT:
        if (guard_has_area(world, self) && world->duty[self].whom == BODY_NONE) {
            return zone_has_ball(world, self) || has_come(world, self) || !pass_comes(world);
        }
        return whom == BODY_NONE || holder == whom;
    default:
        return whom == BODY_NONE || holder == whom;
    }
}

/* Going back by rule is over after a while, and when his man is about to use a screen or sets one.
 */
static bool is_called_off(const struct world *world, body self)
{
    body man = world->guards[self];
    if (world->t > world->duty[self].since + GOES_BACK || man == BODY_NONE) {
        return true;
    }
    for (int s = 0; s <= BODY_COACH; s++) {
        const struct screen *screen = &world->screen[s];
        if (screen->live && !screen->cleared && (screen->user == man || s == man)) {
            return true;
        }
    }
    return false;
}

/* Two were at the ball, or one out of his area, and it has gone, as far as he has seen: he leaves
 * whom he was at, for his own man or his area, at a sprint. */
static bool trap_is_left(struct world *world, body self)
{
    struct duty *duty = &world->duty[self];
    bool closes = duty->strategy == STRATEGY_CLOSE_OUT && guard_has_area(world, self);
    if (duty->strategy != STRATEGY_TRAP && duty->strategy != STRATEGY_DOUBLE && !closes) {
        return false;
    }
    body whom = duty_about(world, self);
    bool has = whom < BODY_COUNT && ball_is_held(world, whom);
    if (has && vec2_distance(world->agent[whom].m.at, world->agent[self].m.at) < TRAPPED) {
        duty->has_trapped = true;
        duty->trapped = whom;
    }
    body holder = see_ago(world, world->agent[self].level->reaction).holder;
    return duty->has_trapped && holder < BODY_COUNT && holder != duty->trapped;
}

/* He is at whom it is about; the cutter who is bumped, when he is over it. */
static bool meets(const struct world *world, body self)
{
    const struct duty *duty = &world->duty[self];
    body whom = duty_about(world, self);
    bool two = duty->strategy == STRATEGY_DOUBLE || duty->strategy == STRATEGY_TRAP;
    bool at = whom < BODY_COUNT && (!two || ball_is_held(world, whom)) &&
              vec2_near(world->agent[whom].m.at, world->agent[self].m.at, COMES_AT);
    return duty->strategy == STRATEGY_BUMP ? duty->over || is_bumped(world, self) : at;
}

static void call(struct world *world, body self)
{
    struct duty *duty = &world->duty[self];
    duty->waits = false;
    duty_meets(world, self);
    duty->since = world->t;
    duty->from = world->agent[self].m.at;
}

void duty_tick(struct world *world)
{
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        struct duty *duty = &world->duty[b];
        if (!world->agent[b].here || duty->strategy == STRATEGY_NONE) {
            continue;
        }
        if (duty->by_rule && is_called_off(world, (body)b)) {
            duty->strategy = STRATEGY_NONE;
            continue;
        }
        if (duty->waits && is_called(world, (body)b)) {
            call(world, (body)b);
        }
        if (duty->waits) {
            continue;
        }
        if (trap_is_left(world, (body)b)) {
            trap_rotate(world, (body)b, duty->trapped,
                        see_ago(world, world->agent[b].level->reaction).holder);
            continue;
        }
        duty->met = duty->met || meets(world, (body)b);
        if (!duty->over && is_over(world, (body)b)) {
            end_of_way_out(world, (body)b);
        }
        if (duty->strategy == STRATEGY_TAG && man_gets_ball(world, (body)b)) {
            duty_by_rule(world, (body)b, STRATEGY_RECOVER);
        } else if (!duty->there && duty_arrives(world, (body)b)) {
            duty_arrive(world, (body)b);
        }
    }
}

/* ---- what can be seen of it ---- */

static bool shows_by_rule(const struct world *world, body self, enum strategy strategy)
{
    body man = world->guards[self];
    bool ball = man != BODY_NONE && ball_is_held(world, man);
    switch (strategy) {
    case STRATEGY_HELP:
        return help_shows(world, self);
    case STRATEGY_TRAIL: /* what the man rules do at a screen */
        return man != BODY_NONE && screen_is_through(world, man) && duty_screen(world, man);
    case STRATEGY_DENY:
        return world->play->man == MAN_DENY && man != BODY_NONE && !ball;
    case STRATEGY_SAG:
        return world->play->man == MAN_SAG && man != BODY_NONE;
    default:
        return false;
    }
}

bool duty_shows(const struct world *world, body defender, enum verb verb)
{
    enum strategy strategy = defense_strategy_of(verb);
    const struct duty *duty = &world->duty[defender];
    if (strategy == STRATEGY_NONE || !world->agent[defender].here) {
        return false;
    }
    if (duty->strategy == STRATEGY_NONE || duty->waits) {
        return shows_by_rule(world, defender, strategy);
    }
    if (duty->strategy != strategy) {
        return duty->by_rule && strategy == STRATEGY_CLOSE_OUT && man_gets_ball(world, defender);
    }
    body man = duty_man(world, defender);
    if (strategy == STRATEGY_HELP) {
        return help_shows(world, defender);
    }
    if (strategy == STRATEGY_TRAP || strategy == STRATEGY_DOUBLE) { /* two at the ball */
        body whom = duty->whom != BODY_NONE ? duty->whom : world->ball.holder;
        return whom < BODY_COUNT &&
               vec2_distance(world->agent[whom].m.at, world->agent[defender].m.at) < TRAPPED;
    }
    bool waits = defense_at_screens(strategy) && man != BODY_NONE && duty_screen(world, man);
    return !waits || screen_is_through(world, man);
}
