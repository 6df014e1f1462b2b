/* SPDX-License-Identifier: MIT */
/* deeds: what a defender does by rule, as the floor shows it: he helps, he closes out, he is under
 * the screen. Takes where everybody is; so that a sentence can wait for it. Changes nothing but
 * when it first was so. */
#include "floor/sim/world.h"

#include "base/real.h"

/* All ours, by eye on the floor: */
#define TOUCH 1.2     /* m: an arm's length and a half */
#define ARM 1.5       /* m */
#define CLOSES 1.5    /* m/s toward somebody */
#define LANE_HAND .65 /* m off the ball's way: a hand in the lane */
#define SAGGED 2.5    /* m from his man */
#define THERE .5      /* m from where he wants to be */
#define AROUND 1.7    /* m from the screener: he is at the screen */
#define SIDE .25      /* m to be on one side of somebody */
#define STANDS .3     /* m/s */
#define DROPPED 1.2   /* m nearer to the ring than the screener */

struct look { /* one defender, for one question */
    const struct world *world;
    body self, whom; /* whom the question names, else his own man */
    bool named;
    const struct mover *x, *man; /* man: of `whom` */
    bool end;                    /* has he done it, or does he begin to */
};

static double apart(const struct mover *a, const struct mover *b)
{
    return vec2_distance(a->at, b->at);
}

static double toward(const struct mover *a, const struct mover *b)
{
    return vec2_dot(a->v, vec2_unit(vec2_sub(b->at, a->at)));
}

static bool is_own(const struct look *look)
{
    return look->world->guards[look->self] == look->whom;
}

static bool guards(const struct look *look)
{
    return is_own(look);
}

static bool helps(const struct look *look)
{
    const struct world *world = look->world;
    if (!help_shows(world, look->self)) {
        return false;
    }
    body at = world->helper == look->self ? world->helped : world->ball.holder;
    return !look->end || apart(look->x, &world->agent[at].m) < ARM;
}

static bool closes_out(const struct look *look)
{
    const struct ball *ball = &look->world->ball;
    bool comes = ball->state == IN_FLIGHT && ball->target == look->whom;
    bool has = ball->state == HELD && ball->holder == look->whom;
    if (look->end) {
        return has && apart(look->x, look->man) < ARM;
    }
    return (has || comes) && apart(look->x, look->man) > ARM && toward(look->x, look->man) > CLOSES;
}

static bool recovers(const struct look *look)
{
    const struct agent *agent = &look->world->agent[look->self];
    if (!agent->has_helped || look->world->helper == look->self) {
        return false;
    }
    return look->end ? vec2_distance(agent->m.at, agent->aim.at) < THERE
                     : toward(look->x, look->man) > CLOSES;
}

static bool denies(const struct look *look)
{
    struct vec2 ball = ball_place(look->world), to = vec2_sub(look->man->at, ball);
    struct vec2 way = vec2_unit(to), x = vec2_sub(look->x->at, ball);
    double along = vec2_dot(x, way), off = vec2_cross(way, x);
    bool between = along > .5 * vec2_length(to) && along < vec2_length(to);
    return between && (off < 0 ? -off : off) < LANE_HAND;
}

static bool sags(const struct look *look)
{
    return !ball_is_held(look->world, look->whom) && apart(look->x, look->man) > SAGGED &&
           vec2_length(look->x->at) < vec2_length(look->man->at);
}

static bool stays(const struct look *look)
{
    return vec2_length(look->x->v) < STANDS;
}

/* The screen that `user` is going off; NULL: none. */
static const struct screen *in_use(const struct world *world, body user, body *screener)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        const struct screen *screen = &world->screen[b];
        if (screen->live && screen->user == user && screen->left) {
            *screener = (body)b;
            return screen;
        }
    }
    return NULL;
}

/* He is at the screen his man goes off: how far on the ring's side of the screener, in *rim. */
static bool at_screen(const struct look *look, double *rim)
{
    body screener;
    body man = look->world->guards[look->self];
    if (man >= BODY_COUNT || !in_use(look->world, man, &screener)) {
        return false;
    }
    if (look->named && look->whom != man && look->whom != screener) {
        return false;
    }
    struct vec2 s = look->world->agent[screener].m.at;
    *rim = vec2_dot(vec2_sub(look->x->at, s), vec2_unit(vec2_scale(s, -1)));
    return vec2_distance(look->x->at, s) < AROUND;
}

static bool goes_under(const struct look *look)
{
    double rim;
    return at_screen(look, &rim) && rim > SIDE;
}

static bool goes_over(const struct look *look)
{
    double rim;
    return at_screen(look, &rim) && rim < -SIDE;
}

static bool trails(const struct look *look)
{
    body man = look->world->guards[look->self], screener;
    if (man >= BODY_COUNT || !in_use(look->world, man, &screener)) {
        return false;
    }
    const struct mover *m = &look->world->agent[man].m;
    struct vec2 behind = vec2_sub(m->at, look->x->at);
    return vec2_length(m->v) > 1 && vec2_length(behind) < ARM + .5 &&
           vec2_dot(behind, vec2_unit(m->v)) > SIDE;
}

static bool overplays(const struct look *look)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        const struct screen *screen = &look->world->screen[b];
        if (screen->live && screen->user == look->whom) {
            struct vec2 exit = vec2_unit(vec2_sub(screen->exit, look->man->at));
            return apart(look->x, look->man) < ARM &&
                   vec2_dot(vec2_sub(look->x->at, look->man->at), exit) > SIDE;
        }
    }
    return denies(look);
}

static bool switches(const struct look *look)
{
    return look->world->guards[look->self] != look->world->guards_first[look->self];
}

/* The user of the screen that his own man sets, while it is used with the ball. */
static bool off_his_man(const struct look *look, body *user)
{
    body man = look->world->guards[look->self];
    const struct screen *screen = man < BODY_COUNT ? &look->world->screen[man] : NULL;
    if (!screen || !screen->live || !screen->left) {
        return false;
    }
    *user = screen->user;
    return ball_is_held(look->world, screen->user);
}

static bool hedges(const struct look *look)
{
    body user;
    return off_his_man(look, &user) && apart(look->x, &look->world->agent[user].m) < ARM;
}

static bool drops(const struct look *look)
{
    body user;
    if (!off_his_man(look, &user)) {
        return false;
    }
    body man = look->world->guards[look->self];
    struct vec2 s = look->world->agent[man].m.at;
    return vec2_length(look->x->at) < vec2_length(s) - DROPPED;
}

static double middle(struct vec2 p)
{
    return p.x < 0 ? -p.x : p.x;
}

static bool ices(const struct look *look)
{
    for (int b = 0; b <= BODY_COACH; b++) {
        const struct screen *screen = &look->world->screen[b];
        if (screen->live && screen->user == look->whom && ball_is_held(look->world, look->whom)) {
            return apart(look->x, look->man) < ARM &&
                   middle(look->x->at) < middle(look->man->at) - SIDE;
        }
    }
    return false;
}

static bool doubles(const struct look *look)
{
    int near = 0;
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT; b++) {
        const struct agent *agent = &look->world->agent[b];
        near += b != look->self && agent->here && apart(&agent->m, look->man) < ARM;
    }
    return near > 0 && apart(look->x, look->man) < ARM && ball_is_held(look->world, look->whom);
}

static bool fronts(const struct look *look)
{
    struct vec2 ball = vec2_unit(vec2_sub(ball_place(look->world), look->man->at));
    return apart(look->x, look->man) < TOUCH &&
           vec2_dot(vec2_sub(look->x->at, look->man->at), ball) > .5;
}

static bool bumps(const struct look *look)
{
    return vec2_length(look->man->v) > 1 && apart(look->x, look->man) < TOUCH;
}

static bool tags(const struct look *look)
{
    return !is_own(look) && apart(look->x, look->man) < TOUCH;
}

static bool stunts(const struct look *look)
{
    return !is_own(look) && ball_is_held(look->world, look->whom) &&
           apart(look->x, look->man) < 2 * SAGGED &&
           (look->end ? vec2_length(look->x->v) < STANDS : toward(look->x, look->man) > 1);
}

static bool boxes_out(const struct look *look)
{
    const struct ball *ball = &look->world->ball;
    bool shot = ball->state == IN_SHOT || ball->state == LOOSE;
    return shot && apart(look->x, look->man) < TOUCH &&
           vec2_length(look->x->at) < vec2_length(look->man->at);
}

/* Another helps, and he goes to whom that one has left. */
static bool rotates(const struct look *look)
{
    const struct world *world = look->world;
    bool other = world->helper < BODY_COUNT && world->helper != look->self;
    return other && vec2_length(look->x->v) > CLOSES;
}

static const struct deed_row {
    enum verb verb;
    bool (*holds)(const struct look *look);
} rows[] = {{VERB_GUARDS, guards},
            {VERB_DENIES, denies},
            {VERB_SAGS, sags},
            {VERB_STAYS, stays},
            {VERB_HELPS, helps},
            {VERB_CLOSES_OUT, closes_out},
            {VERB_GOES_UNDER, goes_under},
            {VERB_GOES_OVER, goes_over},
            {VERB_TRAILS, trails},
            {VERB_OVERPLAYS, overplays},
            {VERB_SWITCHES, switches},
            {VERB_DOUBLES, doubles},
            {VERB_HEDGES, hedges},
            {VERB_DROPS, drops},
            {VERB_ICES, ices},
            {VERB_TRAPS, doubles},
            {VERB_FRONTS, fronts},
            {VERB_BUMPS, bumps},
            {VERB_TAGS, tags},
            {VERB_STUNTS, stunts},
            {VERB_RECOVERS, recovers},
            {VERB_BOXES_OUT, boxes_out},
            {VERB_ROTATES, rotates}};

bool deed_holds(const struct world *world, const struct wait *wait)
{
    body self = wait->who, own = world->guards[self];
    if (guard_has_area(world, self)) { /* what he does, he does to who has the ball */
        own = world->ball.state == HELD        ? world->ball.holder
              : world->ball.state == IN_FLIGHT ? world->ball.target
                                               : (body)BODY_NONE;
    }
    struct look look = {.world = world,
                        .self = self,
                        .named = body_is_attacker(wait->other),
                        .whom = body_is_attacker(wait->other) ? wait->other : own,
                        .end = wait->moment == MOMENT_ARRIVED};
    if (!world->agent[self].here || look.whom >= BODY_COUNT || !world->agent[look.whom].here) {
        return false;
    }
    if (!look.end && !look.named && duty_shows(world, self, wait->verb)) {
        return true; /* by what he has been told, or the rule */
    }
    look.x = &world->agent[self].m;
    look.man = &world->agent[look.whom].m;
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        if (rows[i].verb == wait->verb) {
            return rows[i].holds(&look);
        }
    }
    return false;
}

void deeds_list(struct world *world)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        for (size_t w = 0; w < task->waits.count; w++) {
            if (task->waits.at[w].kind == WAIT_DEED) {
                struct deed deed = {&task->waits.at[w], TIME_NEVER};
                VEC_PUSH(world->arena, &world->deeds, deed);
            }
        }
    }
}

void deeds_watch(struct world *world)
{
    if (world->helper < BODY_COUNT) {
        world->agent[world->helper].has_helped = true;
    }
    for (size_t i = 0; i < world->deeds.count; i++) {
        struct deed *deed = &world->deeds.at[i];
        if (deed->time == TIME_NEVER && deed_holds(world, deed->wait)) {
            deed->time = world->t;
            world->news = true;
        }
    }
}

double deed_time(const struct world *world, const struct wait *wait)
{
    for (size_t i = 0; i < world->deeds.count; i++) {
        if (world->deeds.at[i].wait == wait) {
            return world->deeds.at[i].time;
        }
    }
    return TIME_NEVER;
}
