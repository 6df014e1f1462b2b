/* SPDX-License-Identifier: MIT */
/* motion: how a body moves: speed laws, braking, turning, paths by shape. No clock, no play: takes
 * points, speeds and levels, gives commands and points. Everything is odd or even in x, so that a
 * mirrored way is run as the mirror image, to the last bit. */
#ifndef FLOOR_MOTION_MOTION_H
#define FLOOR_MOTION_MOTION_H

#include "base/geom/path.h"
#include "base/vec.h"
#include "floor/court/court.h"
#include "floor/play/play.h"

#define MOTION_BODY .25     /* radius of a body between shoulder and chest, m (ours) */
#define MOTION_ACROSS 5.0   /* m/s^2: grip sideways (ours, of 4 to 6) */
#define MOTION_ROUND 5.8    /* m/s^2: sideways, gaining or braking on a bend counted in (4 to 6) */
#define MOTION_PLANT 18.0   /* m/s^2: of the one step that turns the feet: some .25 s (ours) */
#define MOTION_SHOULDER .08 /* m: air left between shoulder and shoulder when a screen is used */
#define MOTION_CURL 1.15    /* m: radius of a curl; tighter ones cost the speed (ours) */
#define MOTION_CORNER 2.0   /* m: radius at which a dribbler turns the corner */

/* Sprint law v = V - (V - v0) e^(-t/tau) and its distance (Furusawa, Hill & Parkinson 1927). */
double motion_speed(double top, double tau, double v0, double t);
/* 1 - e^-x for x >= 0, within 1 in 1,000 as far as x = .3: what fades in a short time, cheaply. */
static inline double motion_fades(double x)
{
    return 1 - 1 / (1 + x * (1 + x * (1.0 / 2 + x / 6)));
}
double motion_distance(double top, double tau, double v0, double t);
double motion_time(double top, double tau, double v0, double distance); /* inverse, by bisection */
/* Run from rest and brake to a stop in exactly `distance`. */
double motion_rush(double top, double tau, double brake, double distance);
/* Speed that can be carried through a turn of `angle` radians, as a share of top speed. */
double motion_turn_share(double angle);
double motion_effort(const struct level *level, enum verb_pace effort,
                     double *cap); /* target speed; cap: clip, or 0 */
/* The ball in the air, known whole as it leaves the hand. Its way over the floor is straight. */
struct flight {
    enum flight_law { FLIGHT_AIR, FLIGHT_BOUNCE, FLIGHT_SHOT } law;
    double length;         /* m over the floor */
    double seconds;        /* 0: no flight */
    double from_z, to_z;   /* m over the floor, of the ball's middle */
    double bounce_seconds; /* FLIGHT_BOUNCE: when it touches the floor */
};
struct flight motion_pass(const struct level *level, enum pass_kind kind, double distance);
/* A try for goal from `distance`, at a ring `ring` metres high. */
struct flight motion_shot(const struct level *level, double ring, double distance);
double motion_flight_along(const struct flight *flight, double t);  /* m over the floor */
double motion_flight_height(const struct flight *flight, double t); /* m */
double motion_pass_time(const struct level *level, enum pass_kind kind, double distance);
/* The same throw, slower or faster. */
void motion_flight_take(struct flight *flight, double seconds);
/* Seconds that a ball thrown up at `angle` takes to fall through a ring `rise` metres higher; the
 * angle at which it does, radians under the level. */
double motion_arc_time(double distance, double rise, double angle);
double motion_arc_entry(double distance, double rise, double angle);
/* A lob that rises `rise` metres over two hands of one height. */
double motion_lob_time(double rise);
double motion_fall_time(double height); /* of a ball let go */
#define MOTION_BALL .12                 /* m: the ball's radius (rulebooks: .119 to .124) */
#define MOTION_HELD .62 /* of a player's height: where two hands hold a ball (ours) */

/* One body on the floor, and what its legs can do now. */
struct mover {
    struct vec2 at, v;
    struct plant {
        struct vec2 to; /* the velocity that the planted foot turns him to, */
        double left;    /* and the seconds for which it still does; 0: it does not */
    } plant;
};
struct gait {
    double top;    /* the speed it would tend to, m/s */
    double clip;   /* and may not pass (walk, jog, slide); 0: none */
    double tau;    /* s */
    double brake;  /* m/s^2 */
    double sprint; /* the level's top speed: turns are shares of it */
    bool bends;    /* he follows a way: MOTION_ROUND holds in its bends */
};
struct gait motion_gait(const struct level *level, enum verb_pace effort, bool with_ball);
/* Somewhere on the way from a to b, which takes `seconds`: after the share `part` of it. */
struct mover motion_between(const struct mover *a, const struct mover *b, double seconds,
                            double part);
/* Toward the velocity `command` for dt seconds: the same in one piece or in many, but where he
 * bends as hard as his feet hold. */
void motion_advance(struct mover *mover, const struct gait *gait, struct vec2 command, double dt);
/* The same in two parts: what is wanted, worked out once, */
struct stride {
    struct vec2 way; /* unit */
    double speed;    /* m/s, no faster than the gait lets him */
};
struct stride motion_stride(const struct gait *gait, struct vec2 command);
/* and run. */
void motion_run(struct mover *mover, const struct gait *gait, const struct stride *stride,
                double dt);
/* Plants a foot: what is carried of the speed, at most `most` and what the angle lets through, is
 * turned into `way` (unit). Begun motion_plant_lead metres before a corner, it ends on the way out.
 */
void motion_plant(struct mover *mover, const struct gait *gait, struct vec2 way, double most);
double motion_plant_lead(double speed, double turn); /* turn: 2 sin(angle / 2) */

/* How a defender goes for a pass, and how far he comes short of it, m; below 0 he gets a hand on
 * it. */
#define LANE_FREE 99.0 /* m: all of it is over his reach */
struct lane {
    double reaction, top, tau; /* s, m/s, s */
    double hand, high;         /* m: a hand's reach, to the side and up */
    double behind; /* m of the way's end that he cannot reach from behind the receiver */
};
struct lane motion_lane(const struct level *level);
/* A flight as it is looked at for that, worked out once for all defenders who are as quick. */
enum { LANE_LOOKS = 200 };
struct lane_way {
    struct vec2 from, to;
    double length, behind, hand;
    struct lane_moment { /* one moment of it: */
        double along;    /* m from the hand, */
        struct vec2 ball;
        bool over;           /* everybody's reach; */
        double drift, reach; /* s that a defender has gone on as he went, m that he gets aside */
    } look[LANE_LOOKS + 1];
};
struct lane_way motion_lane_way(const struct flight *flight, struct vec2 from, struct vec2 to,
                                const struct lane *lane);
double motion_lane_short(const struct lane_way *way, struct mover defender);
/* The two above, for one defender. */
double motion_lane_margin(const struct flight *flight, struct vec2 from, struct vec2 to,
                          struct mover defender, const struct lane *lane);

/* A way to run: points, how fast each can be passed, and how far along it the body is. */
struct course {
    struct path path;
    double *cap; /* m/s at each point, braking before it counted in */
    struct corner {
        double along;
        double speed;    /* that can be carried through, m/s */
        struct vec2 out; /* unit */
    } * corner;          /* the sharp turns: there a foot is planted */
    size_t corners, passed;
    size_t piece; /* of the path, that holds: */
    double along; /* progress: never goes back */
    double goal;  /* length at which the place is reached; behind it is only a run-out */
    double turn;  /* at its end, into the next way: 2 sin(angle / 2) */
};
/* `run_out`: the last metres of the points lie behind the goal. */
struct course motion_course(struct arena *arena, const struct vec2 *points, size_t count,
                            const struct gait *gait, double run_out);
/* Moves the progress on to where `mover` is; at a sharp turn he plants a foot. */
void motion_progress(struct course *course, struct mover *mover, const struct gait *gait);
/* The velocity to want where `mover` is, or is about to be; `end_speed` may be carried over the
 * end.
 */
struct vec2 motion_wish(const struct course *course, const struct mover *mover,
                        const struct gait *gait, double end_speed);
/* Both in turn. */
struct vec2 motion_follow(struct course *course, struct mover *mover, const struct gait *gait,
                          double end_speed);
/* How far along it stands who is at p, and whether the next sharp turn is now to be made; both
 * leave the progress as it is. */
double motion_along(const struct course *course, struct vec2 p);
bool motion_at_corner(const struct course *course, const struct mover *mover,
                      const struct gait *gait);
/* Seconds until `along` is reached, and how it is moving there, if nothing is in the way. */
double motion_course_time(const struct course *course, struct mover mover, const struct gait *gait,
                          double end_speed, double along, struct mover *there);

/* Routes: the points of a way, by shape. */
struct route {
    struct arena *arena;
    VEC(struct vec2) points;
    bool has_corner;
    struct vec2 corner;
    bool has_shoulder;
    struct vec2 shoulder; /* where a used screener, or whoever was gone round, is passed */
};
/* What ties are broken by: the ball's side, and when that does not tell, a hand that mirrors. */
struct tie_side {
    struct vec2 ball;
    double hand; /* +1, or -1 in the other side of a play */
};
void route_start(struct route *route, struct arena *arena, struct vec2 from);
void route_to(struct route *route, struct vec2 to);
void route_corner(struct route *route, struct vec2 at); /* and remember it */
double route_length(const struct route *route);
/* Past the circle (c, r), turning with `turn` (+1 from x toward y about c, -1 the other way), then
 * on to `to`. A way that would not touch the circle on that side goes by its nearest point. */
void route_round(struct route *route, struct vec2 c, double r, double turn, struct vec2 to);
/* To `to`, bowed by `bow` metres away from `from_point`. */
void route_bow(struct route *route, struct vec2 to, double bow, struct vec2 from_point,
               const struct tie_side *tie);
/* Past somebody at `c` on the side `out` (unit), `near` metres from him, on a curve of `radius`. */
void route_shoulder(struct route *route, struct vec2 c, struct vec2 out, double near, double radius,
                    struct vec2 to);
/* The side on which a user passes a screener: outward, away from the turn; the ball's side when the
 * three stand in a line. */
struct vec2 route_outward(struct vec2 user, struct vec2 screener, struct vec2 exit,
                          const struct tie_side *tie);
/* The sign of the side of the way from -> to on which p lies: +1 left (from x toward y), -1 right;
 * a p on the line takes the ball's side, and if the ball is on it too, the hand's. */
double route_side(struct vec2 from, struct vec2 to, struct vec2 p, const struct tie_side *tie);

#endif
