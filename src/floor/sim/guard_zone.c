/* SPDX-License-Identifier: MIT */
/* guard_zone: the defenders who have an area and no man. Who of them is on the ball is decided
 * here: he by whose area it is, once he is there; until then whoever has it, or the low man who
 * comes out for him. Where they all stand is the defense room's to say. */
#include "floor/sim/guard.h"

#include "base/real.h"

#define SOON .08       /* s: how fast the place that is named moves */
#define HIS .4         /* of the ball: it is in his area */
#define AS_GOOD .35    /* less of it than another */
#define NOT_HIS .2     /* of it: and no more */
#define THERE .6       /* m further from the ball than the one who has it: he is there */
#define FAR_OFF 2.6    /* m from the ball: who has it is no use there */
#define COMES_LATE 2.2 /* m: the low man comes out for one who has as far to go */
#define STOPS_IT 3.0   /* m from the ball: he stops it in a press (ours) */
#define CLOSED 1.2     /* m from the ball: he has closed out */
#define BEFORE .35     /* cosine: between the ball and the rim */

bool guard_has_area(const struct world *world, body self)
{
    if (world->play->zone == ZONE_NONE || !body_is_defender(self)) {
        return false;
    }
    int k = body_number(self) - 1;
    return k < ZONE_DEFENDERS && world->guards[self] == BODY_NONE &&
           !zone_is_man(world->play->zone, k);
}

bool zone_traps(const struct world *world, body self)
{
    return guard_has_area(world, self) && world->zone.traps[body_number(self) - 1];
}

/* Told to close out, on nobody by name: on the ball when it comes to him. */
static bool closes_out(const struct world *world, int k)
{
    const struct duty *duty = &world->duty[body_defender(k + 1)];
    return duty->strategy == STRATEGY_CLOSE_OUT && duty->whom == BODY_NONE && !duty->waits;
}

bool zone_has_ball(const struct world *world, body self)
{
    return guard_has_area(world, self) && world->zone.his[body_number(self) - 1];
}

/* And nothing else to do: no sentence, no read, no help. */
static bool is_free(const struct world *world, int k)
{
    body self = body_defender(k + 1);
    return world->agent[self].here && guard_has_area(world, self) &&
           (world->duty[self].strategy == STRATEGY_NONE || world->duty[self].waits ||
            closes_out(world, k));
}

body guard_nearest_area(const struct world *world, struct vec2 p)
{
    body best = BODY_NONE;
    double least = 1e9;
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        body self = body_defender(k + 1);
        double far = vec2_distance(world->agent[self].m.at, p);
        if (world->agent[self].here && guard_has_area(world, self) && far < least) {
            least = far;
            best = self;
        }
    }
    return best;
}

body guard_of(const struct world *world, body man)
{
    body own = world->guarded[man];
    bool zone = own == BODY_NONE && world->play->zone != ZONE_NONE && world->agent[man].here;
    return zone ? guard_nearest_area(world, world->agent[man].m.at) : own;
}

body guard_minds(const struct world *world, body self)
{
    body man = duty_man(world, self);
    bool on = man == BODY_NONE && world->zone.on_ball == body_number(self) - 1;
    return on && guard_has_area(world, self)
               ? see_ago(world, world->agent[self].level->reaction).holder
               : man;
}

/* ---- what they see ---- */

/* One of them has been told to close out on him. */
static bool is_told(const struct world *world, body holder)
{
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        const struct duty *duty = &world->duty[body_defender(k + 1)];
        if (duty->strategy == STRATEGY_CLOSE_OUT && duty->whom == holder) {
            return true;
        }
    }
    return false;
}

/* One who plays him is between him and the rim: no business of the zone's. */
static bool is_taken(const struct world *world, body holder)
{
    if (holder < BODY_COUNT && is_told(world, holder)) {
        return true;
    }
    body own = holder < BODY_COUNT ? world->guarded[holder] : (body)BODY_NONE;
    if (own == BODY_NONE || !world->agent[own].here) {
        return false;
    }
    struct vec2 at = world->agent[holder].m.at, off = vec2_sub(world->agent[own].m.at, at);
    return vec2_length(off) < FAR_OFF &&
           vec2_dot(vec2_unit(off), vec2_unit(vec2_scale(at, -1))) > BEFORE;
}

static void see_men(const struct world *world, body holder, double ahead, struct zone_seen *seen)
{
    for (int b = 0; b < BODY_COACH; b++) {
        const struct agent *agent = &world->agent[b];
        bool minded = world->guarded[b] != BODY_NONE && world->agent[world->guarded[b]].here;
        if (agent->here && !agent->outside && b != holder && !minded && b != world->zone.left &&
            seen->men < ZONE_MEN) {
            struct mover man = see_body(world, (body)b, world->level->reaction);
            seen->man[seen->men++] = vec2_along(man.at, man.v, ahead);
        }
    }
}

static struct zone_seen see(const struct world *world, double ahead)
{
    double reaction = world->level->reaction;
    struct glimpse past = see_ago(world, reaction);
    struct zone_seen seen = {.court = world->court,
                             .zone = world->play->zone,
                             .mirrored = world->play->mirrored,
                             .ball = vec2_along(past.ball, past.ball_v, reaction + ahead),
                             .on_ball = world->zone.on_ball,
                             .comes = world->zone.comes};
    seen.thrown_in = past.holder < BODY_COUNT && world->agent[past.holder].outside;
    see_men(world, past.holder, ahead, &seen);
    return seen;
}

/* ---- who is on the ball ---- */

static double from_ball(const struct world *world, int k, struct vec2 ball)
{
    return vec2_distance(world->agent[body_defender(k + 1)].m.at, ball);
}

/* In whose area the ball is, ZONE_DEFENDERS: between them all. Where it is as good as two's, he has
 * it who has it already or is nearer. */
static int whose(const struct world *world, const struct zone_home home[ZONE_DEFENDERS],
                 struct vec2 ball)
{
    double most = 0, least = 1e9;
    int best = ZONE_DEFENDERS;
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        if (is_free(world, k) && closes_out(world, k) && home[k].ball + home[k].until > NOT_HIS) {
            return k;
        }
        most = is_free(world, k) ? real_max(most, home[k].ball) : most;
    }
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        bool his = home[k].ball > real_max(HIS, most - AS_GOOD);
        double far = from_ball(world, k, ball) - (k == world->zone.on_ball ? THERE : 0);
        if (his && is_free(world, k) && far < least) {
            least = far;
            best = k;
        }
    }
    return best;
}

/* He may be on the ball until the one whose ball it is can be there: the low man who comes out; in
 * a press whoever is there and has it before him. */
static bool may_stand_in(const struct world *world, const struct zone_home home[ZONE_DEFENDERS],
                         int k, struct vec2 ball)
{
    struct vec2 off = vec2_sub(world->agent[body_defender(k + 1)].m.at, ball);
    bool press = world->play->defense == DEFENSE_PRESS && vec2_length(off) < STOPS_IT &&
                 vec2_dot(vec2_unit(off), vec2_unit(vec2_scale(ball, -1))) > BEFORE;
    return is_free(world, k) && (press || home[k].until > HIS);
}

static int stand_in(const struct world *world, const struct zone_home home[ZONE_DEFENDERS], int his,
                    struct vec2 ball)
{
    double far = from_ball(world, his, ball), least = far;
    int best = his;
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        double off = from_ball(world, k, ball);
        bool at_it = off < CLOSED && off + THERE < far; /* there already: he waits for him */
        if (k != his && off < least && (at_it || far > COMES_LATE) &&
            may_stand_in(world, home, k, ball)) {
            least = off;
            best = k;
        }
    }
    return best;
}

static void take_over(struct world *world, const struct zone_home home[ZONE_DEFENDERS],
                      struct vec2 ball)
{
    int his = whose(world, home, ball), has = world->zone.on_ball;
    bool holds = has < ZONE_DEFENDERS && is_free(world, has);
    world->zone.comes = ZONE_DEFENDERS;
    if (his == ZONE_DEFENDERS) { /* who has it keeps it until it is plainly not his */
        bool keeps = holds && (home[has].ball > NOT_HIS || home[has].until > NOT_HIS);
        world->zone.on_ball = keeps ? has : ZONE_DEFENDERS;
        return;
    }
    double far = holds ? from_ball(world, has, ball) : 1e9;
    bool stands_in = holds && home[has].until > HIS && far < from_ball(world, his, ball) + THERE;
    bool beside = holds && home[has].trap > HIS;
    bool useless = !stands_in && (far > FAR_OFF || beside);
    if (has == his || (!useless && from_ball(world, his, ball) < far + THERE)) {
        world->zone.on_ball = his;
    } else if (useless) {
        world->zone.on_ball = stand_in(world, home, his, ball);
        world->zone.comes = his;
    } else {
        world->zone.comes = his;
    }
}

/* Who has far to go to the ball sprints most of the way and comes in under control. */
static void close_out(struct world *world, struct vec2 ball)
{
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        body self = body_defender(k + 1);
        bool goes = k == world->zone.on_ball || k == world->zone.comes;
        double far = from_ball(world, k, ball);
        if (goes && !world->zone.closing[k] && far > COMES_LATE && is_free(world, k)) {
            world->duty[self].from = world->agent[self].m.at;
            world->zone.closing[k] = true;
        }
        world->zone.closing[k] = world->zone.closing[k] && goes && far > CLOSED;
    }
}

void zone_start(struct world *world)
{
    world->zone =
        (struct zone_watch){.on_ball = ZONE_DEFENDERS, .comes = ZONE_DEFENDERS, .left = BODY_NONE};
}

void zone_tick(struct world *world)
{
    if (world->play->zone == ZONE_NONE) {
        return;
    }
    struct zone_home home[ZONE_DEFENDERS];
    struct zone_seen now = see(world, 0);
    zone_homes(now.court, now.zone, now.ball, now.thrown_in, now.mirrored, home);
    if (is_taken(world, see_ago(world, world->level->reaction).holder)) {
        world->zone.on_ball = world->zone.comes = ZONE_DEFENDERS;
    } else {
        take_over(world, home, now.ball);
    }
    close_out(world, now.ball);
    struct vec2 at[ZONE_DEFENDERS] = {{0, 0}}, then[ZONE_DEFENDERS] = {{0, 0}};
    struct zone_seen soon = see(world, SOON);
    now.on_ball = soon.on_ball, now.comes = soon.comes;
    defense_zone(&now, at);
    defense_zone(&soon, then);
    for (int k = 0; k < ZONE_DEFENDERS; k++) {
        world->zone.his[k] = home[k].ball > HIS;
        world->zone.traps[k] = is_free(world, k) && home[k].trap > HIS;
        world->zone.aim[k] = (struct aim){at[k], vec2_scale(vec2_sub(then[k], at[k]), 1 / SOON)};
    }
}

bool guard_zone(struct world *world, body self, const struct view *view, struct aim *aim)
{
    (void)view;
    bool his = guard_has_area(world, self) && is_free(world, body_number(self) - 1);
    if (his) {
        int k = body_number(self) - 1;
        *aim = world->zone.aim[k];
        world->agent[self].goes = world->zone.closing[k] ? DUTY_CLOSES : DUTY_SLIDES;
    }
    return his;
}

/* Before anything moves: at home, with the ball where it is. */
struct vec2 zone_first(const struct world *world, body self)
{
    struct zone_seen seen = {.court = world->court,
                             .zone = world->play->zone,
                             .mirrored = world->play->mirrored,
                             .ball = ball_place(world),
                             .on_ball = ZONE_BY_ROWS,
                             .comes = ZONE_DEFENDERS};
    body holder = world->ball.state == HELD ? world->ball.holder : (body)BODY_NONE;
    seen.thrown_in = holder < BODY_COUNT && world->agent[holder].outside;
    if (holder < BODY_COUNT && world->guarded[holder] != BODY_NONE) {
        seen.on_ball = ZONE_DEFENDERS; /* he has a man of his own on him */
    }
    for (int b = 0; b < BODY_COACH; b++) {
        const struct agent *agent = &world->agent[b];
        if (agent->here && !agent->outside && b != holder && world->guarded[b] == BODY_NONE) {
            seen.man[seen.men++] = agent->m.at;
        }
    }
    struct vec2 at[ZONE_DEFENDERS] = {{0, 0}};
    defense_zone(&seen, at);
    return at[body_number(self) - 1];
}
