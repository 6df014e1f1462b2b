/* SPDX-License-Identifier: MIT */
/* sweeps_more: runs made by hand for the checks of the ball, screens, clocks and spots; see
 * sweeps.h. */
#include "sweeps.h"

#include "base/real.h"
#include "suite.h"

enum { P1, P2, P3, P4, P5, X1 = BODY_FIRST_DEFENDER, X2, X3 };

struct made *sweep_standing(double seconds)
{
    struct made *made = made_play(&arena, seconds);
    made_ball(made, &made->segment[0], P1, 0, seconds);
    return made;
}

/* ---- the ball ---- */

static struct made *held(double seconds)
{
    struct made *made = made_play(&arena, seconds + 1);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, seconds);
    made_flight(made, segment, P1, P2, seconds, seconds + 0.5, false);
    made_ball(made, segment, P2, seconds + 0.5, seconds + 1);
    return made;
}

static struct made *ran_with_ball(double feet)
{
    return made_run_with_ball(&arena, feet);
}

static struct made *passed(double feet)
{
    struct made *made = made_play(&arena, 3);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P1, -18, 5);
    made_stand(made, segment, P2, -18 + feet, 5);
    made_task(made, segment, TASK_PASS, VERB_PASSES, P1, P2, 1, 2);
    made_ball(made, segment, P1, 0, 1);
    made_flight(made, segment, P1, P2, 1, 2, false);
    segment->ball.at[1].task = 0;
    made_ball(made, segment, P2, 2, 3);
    return made;
}

/* 2 catches at the wing and shoots, x2 so far away. */
static struct made *caught_to_shoot(double feet)
{
    struct made *made = made_play(&arena, 4);
    struct segment *segment = &made->segment[0];
    made_ball(made, segment, P1, 0, 1);
    made_flight(made, segment, P1, P2, 1, 1.5, false);
    made_ball(made, segment, P2, 1.5, 2.5);
    made_flight(made, segment, P2, BODY_NONE, 2.5, 3.5, true);
    made_stand(made, segment, X2, 15.547 - feet, 13.75);
    return made;
}

/* 1 drives down the lane and 3 cuts beside him. */
static struct made *side_by_side(double feet)
{
    struct made *made = sweep_standing(3);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P1, -5, 13);
    made_stand(made, segment, P3, -5 + feet, 13);
    made_task(made, segment, TASK_CARRY, VERB_DRIVES, P1, BODY_NONE, 0, 2);
    made_task(made, segment, TASK_MOVE, VERB_CUTS, P3, BODY_NONE, 0, 2);
    made_walk(made, segment, P1, 0, 2, -5, 1);
    made_walk(made, segment, P3, 0, 2, -5 + feet, 1);
    return made;
}

/* ---- screens ---- */

/* 5 has set a screen for 3 on x3. */
static struct made *screened(struct task **screen, struct task_record **record)
{
    struct made *made = sweep_standing(4);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P5, -12, 8);
    made_stand(made, segment, X3, -13.7, 9);
    *screen = made_task(made, segment, TASK_SCREEN, VERB_SCREENS, P5, P3, 0, TIME_NEVER);
    *record = made_record(segment, *screen);
    (*record)->time[MOMENT_SET] = 1;
    (*record)->defender = X3;
    (*record)->to = segment->track[P5].sample[0].at;
    (*record)->on = segment->track[X3].sample[0].at;
    return made;
}

static struct made *turned(double degrees)
{
    struct task *screen;
    struct task_record *record;
    struct made *made = screened(&screen, &record);
    screen->faces = true;
    record->exit = vec2_of(record->to.x + 5, record->to.y);
    record->facing = REAL_PI + degrees * REAL_PI / 180; /* the back is half a turn off */
    return made;
}

static struct task *used(struct made *made, double leaves)
{
    struct task *use = made_task(made, &made->segment[0], TASK_USE, VERB_COMES, P3, P5, leaves, 3);
    use->screen_task = 0;
    return use;
}

static struct made *left_before_set(double seconds)
{
    struct task *screen;
    struct task_record *record;
    struct made *made = screened(&screen, &record);
    record->time[MOMENT_SET] = 2.5;
    used(made, 2.5 - seconds);
    return made;
}

static struct made *wide_of_it(double feet)
{
    struct task *screen;
    struct task_record *record;
    struct made *made = screened(&screen, &record);
    made_record(&made->segment[0], used(made, 1.2))->gap = feet * FEET;
    return made;
}

static struct made *set_away(double feet)
{
    struct task *screen;
    struct task_record *record;
    struct made *made = screened(&screen, &record);
    record->on = vec2_of(record->to.x - feet * FEET - 2 * MOTION_BODY, record->to.y);
    used(made, 1.2);
    return made;
}

/* ---- spots ---- */

static struct made *below_the_wing(double feet)
{
    struct made *made = sweep_standing(3);
    made_stand(made, &made->segment[0], P4, 15.547, 13.75 - feet);
    return made;
}

static struct made *up_in_the_corner(double feet)
{
    struct made *made = sweep_standing(3);
    made_stand(made, &made->segment[0], P4, 20.75, -2.25 + feet);
    return made;
}

/* ---- the clocks ---- */

static struct made *in_the_lane(double seconds)
{
    struct made *made = sweep_standing(seconds);
    made_stand(made, &made->segment[0], P5, 0, 2);
    return made;
}

static struct made *behind_half(enum court_code rules, double seconds)
{
    struct made *made = sweep_standing(seconds);
    made->play.rules = rules;
    made->play.court = court_of(rules);
    made_stand(made, &made->segment[0], P1, 0, 60);
    return made;
}

static struct made *behind_half_high_school(double seconds)
{
    return behind_half(COURT_HIGH_SCHOOL, seconds);
}

static struct made *behind_half_college(double seconds)
{
    return behind_half(COURT_COLLEGE_WOMEN, seconds);
}

static struct made *behind_half_fiba(double seconds)
{
    return behind_half(COURT_FIBA, seconds);
}

static struct made *behind_half_nba(double seconds)
{
    return behind_half(COURT_NBA, seconds);
}

static struct made *out_of_bounds(double seconds)
{
    struct made *made = made_play(&arena, seconds);
    made_stand(made, &made->segment[0], P3, 13, -7);
    made_ball(made, &made->segment[0], P3, 0, seconds);
    return made;
}

static struct made *shot_after(enum court_code rules, double seconds)
{
    struct made *made = made_play(&arena, seconds + 1);
    struct segment *segment = &made->segment[0];
    made->play.rules = rules;
    made->play.court = court_of(rules);
    made_ball(made, segment, P1, 0, seconds);
    made_flight(made, segment, P1, BODY_NONE, seconds, seconds + 1, true);
    return made;
}

static struct made *shot_fiba(double seconds)
{
    return shot_after(COURT_FIBA, seconds);
}

static struct made *shot_nba(double seconds)
{
    return shot_after(COURT_NBA, seconds);
}

static struct made *shot_college(double seconds)
{
    return shot_after(COURT_COLLEGE_MEN, seconds);
}

static struct made *shot_with_clock(double seconds)
{
    struct made *made = shot_after(COURT_HIGH_SCHOOL, seconds);
    made->play.clock = 6;
    return made;
}

const struct sweep sweeps_more[] = {
    {"ball.held", "with nobody on the move", held, 1, 5, .1, 2.05, false},
    {"ball.travel", "run with the ball", ran_with_ball, 4.5, 30, 1, 12, false},
    {"pass.long", "the pass", passed, 20, 38, .25, 30.5, false},
    {"open.catch", "to the defender", caught_to_shoot, 1, 8, .1, 3.5, true},
    {"cut.traffic", "between driver and cutter", side_by_side, 2, 9.5, .1, 5.5, true},
    {"screen.angle", "degrees off", turned, 0, 90, 1, 32, false},
    {"screen.early", "s before it is set", left_before_set, -1, 2, .05, .1, false},
    {"screen.gap", "of the cut", wide_of_it, 0, 6, .1, 2.5, false},
    {"screen.nobody", "to the defender", set_away, 0, 9, .1, 3.5, false},
    {"space.close", "between wing and corner", below_the_wing, 4, 16, .1, 11.5, true},
    {"space.corner", "up from deep", up_in_the_corner, 0, 7.5, .1, 3.5, false},
    {"spot.taken", "between the two", below_the_wing, .5, 8, .1, 3, true},
    {"time.lane", "in the lane", in_the_lane, 1, 6, .1, 3.05, false},
    {"time.backcourt", "high school", behind_half_high_school, 7, 13, .1, 10, false},
    {"time.backcourt", "college", behind_half_college, 7, 13, .1, 10, false},
    {"time.backcourt", "FIBA", behind_half_fiba, 6, 13, .1, 8.05, false},
    {"time.backcourt", "NBA", behind_half_nba, 6, 13, .1, 8.05, false},
    {"time.throw-in", "out of bounds", out_of_bounds, 3, 8, .1, 5.05, false},
    {"time.shot-clock", "FIBA", shot_fiba, 20, 28, .25, 24, false},
    {"time.shot-clock", "NBA", shot_nba, 20, 28, .25, 24, false},
    {"time.shot-clock", "college", shot_college, 26, 34, .25, 30, false},
    {"time.clock", "of the play", shot_with_clock, 3, 9, .25, 6, false},
};
const size_t sweeps_more_count = sizeof sweeps_more / sizeof *sweeps_more;
