/* SPDX-License-Identifier: MIT */
/* For each check that measures something, a run made by hand whose amount moves through the limit:
 * it is told beyond a border and nowhere else. The border is the limit with what the check
 * forgives. */
#include "base/real.h"
#include "suite.h"
#include "sweeps.h"

#include <math.h>
#include <string.h>

enum { P1, P2, P3, P4, P5, X1 = BODY_FIRST_DEFENDER, X2, X3 };

static struct made *wing_above(double feet)
{
    struct made *made = sweep_standing(3);
    made_stand(made, &made->segment[0], P2, 15.55, 13.75 + feet);
    return made;
}

static struct made *wing_below(double feet)
{
    return wing_above(-feet);
}

/* Two guards in the slots, and a wing under the line. */
static struct made *low_wing(double feet)
{
    struct made *made = wing_below(feet);
    made_stand(made, &made->segment[0], P1, -8, 19.1);
    made_stand(made, &made->segment[0], P3, 8, 19.1);
    made_stand(made, &made->segment[0], P4, 0, -2);
    return made;
}

static struct made *wing_inside(double feet)
{
    struct made *made = sweep_standing(3);
    double share = (19.75 - feet) / 20.75; /* toward the ring */
    made_stand(made, &made->segment[0], P2, 15.547 * share, 13.75 * share);
    return made;
}

static struct made *top_from_wings(double feet)
{
    struct made *made = sweep_standing(3);
    double up = sqrt(feet * feet - 15.547 * 15.547);
    made_stand(made, &made->segment[0], P1, 0, 13.75 + up);
    return made;
}

/* Horns cover 478 square feet: the right corner comes in along the baseline. */
static struct made *corner_in(double share)
{
    struct made *made = sweep_standing(3);
    static const double at[5][2] = {{0, 20.75}, {20.75, -2.25}, {-20.75, -2.25}, {8, 13}, {-8, 13}};
    for (int i = 0; i < 5; i++) {
        made->play.start[i].at = vec2_of(at[i][0] * FEET, at[i][1] * FEET);
        made_stand(made, &made->segment[0], (body)i, at[i][0] * share, (at[i][1] - 2) * share + 2);
    }
    return made;
}

/* 1 stands at the top and holds the ball by his sentence, x1 before him. */
static struct made *guarded(enum court_code rules, double seconds, double feet)
{
    struct made *made = sweep_standing(seconds + 1);
    struct segment *segment = &made->segment[0];
    made->play.rules = rules;
    made->play.court = court_of(rules);
    made_task(made, segment, TASK_HOLD, VERB_HOLDS, P1, BODY_NONE, 0, seconds);
    made_stand(made, segment, X1, 0, segment->track[P1].sample[0].at.y / FEET - feet);
    return made;
}

static struct made *held_guarded(double seconds)
{
    return guarded(COURT_HIGH_SCHOOL, seconds, 4);
}

static struct made *held_at_distance(double feet)
{
    return guarded(COURT_COLLEGE_MEN, 6.5, feet);
}

static struct made *held_at_distance_fiba(double metres)
{
    return guarded(COURT_FIBA, 6.5, metres / FEET);
}

static struct made *dribbled_guarded(double seconds)
{
    struct made *made = made_play(&arena, seconds + 1);
    struct segment *segment = &made->segment[0];
    made->play.rules = COURT_HIGH_SCHOOL;
    made_ball(made, segment, P1, 0, seconds + 1);
    made_task(made, segment, TASK_CARRY, VERB_DRIBBLES, P1, BODY_NONE, 0, seconds);
    made_stand(made, segment, X1, 0, 16.75);
    struct dribble_span dribble = {.who = P1, .from = 0, .to = seconds};
    VEC_PUSH(&arena, &segment->dribbles, dribble);
    return made;
}

/* 1 hands off at a moment that is written, to 2 so far away. */
static struct made *handed_off(double feet)
{
    struct made *made = sweep_standing(3);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P2, 0, 20.75 - feet);
    struct task *task = made_task(made, segment, TASK_EXCHANGE, VERB_HANDS_OFF, P1, P2, 1, 2);
    struct wait wait = {.kind = WAIT_CLOCK, .delay = 1, .fixed = true};
    VEC_PUSH(&arena, &task->waits, wait);
    return made;
}

/* 1, who has been in front, dribbles to so far from the ring. */
static struct made *taken_back(double feet)
{
    struct made *made = sweep_standing(4);
    made_walk(made, &made->segment[0], P1, 1, 3, 0, feet);
    return made;
}

/* 2 catches so far outside the sideline. */
static struct made *caught_out(double feet)
{
    struct made *made = made_play(&arena, 3);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P2, 25 + feet, 10);
    made_ball(made, segment, P1, 0, 1);
    made_flight(made, segment, P1, P2, 1, 2, false);
    made_ball(made, segment, P2, 2, 3);
    return made;
}

/* 1 passes to 2 while x2 stands beside the way, near its middle. */
static struct made *by_a_defender(double feet)
{
    struct made *made = made_play(&arena, 3);
    struct segment *segment = &made->segment[0];
    struct vec2 from = segment->track[P1].sample[0].at, to = segment->track[P2].sample[0].at;
    struct vec2 side = vec2_left(vec2_unit(vec2_sub(to, from)));
    struct vec2 at = vec2_along(vec2_mix(from, to, .5), side, feet * FEET);
    made_stand(made, segment, X1, 0, 18);
    made_stand(made, segment, X2, at.x / FEET, at.y / FEET);
    made_task(made, segment, TASK_PASS, VERB_PASSES, P1, P2, 1, 2);
    made_ball(made, segment, P1, 0, 1);
    made_flight(made, segment, P1, P2, 1, 2, false);
    struct ball_span *flight = &segment->ball.at[1];
    flight->flight = motion_pass(made->play.speed, PASS_PLAIN, vec2_distance(from, to));
    flight->task = 0;
    made_ball(made, segment, P2, 2, 3);
    return made;
}

static struct made *by_a_defender_below(double feet)
{
    return by_a_defender(-feet);
}

/* 2 and 3 run toward each other and pass each other so many feet apart. */
static struct made *head_on(double feet)
{
    struct made *made = sweep_standing(3);
    struct segment *segment = &made->segment[0];
    made_stand(made, segment, P2, 15, 14);
    made_stand(made, segment, P3, -15, 14 + feet);
    made_task(made, segment, TASK_MOVE, VERB_CUTS, P2, BODY_NONE, 0, 2)->group = 1;
    made_task(made, segment, TASK_MOVE, VERB_CUTS, P3, BODY_NONE, 0, 2)->group = 2;
    made_walk(made, segment, P2, 0, 2, -15, 14);
    made_walk(made, segment, P3, 0, 2, 15, 14 + feet);
    return made;
}

/* 5 stands in a play that tells 4 to stay. */
static struct made *stands_for(double seconds)
{
    struct made *made = sweep_standing(seconds);
    struct segment *segment = &made->segment[0];
    for (body b = P2; b <= P3; b++) {
        made_task(made, segment, TASK_MOVE, VERB_CUTS, b, BODY_NONE, 0, 1);
    }
    made_task(made, segment, TASK_HOLD, VERB_STAYS, P4, BODY_NONE, 0, TIME_NEVER)->stay = true;
    return made;
}

/* The second step repeats the first, and 4 ends so far from where it began. */
static struct made *ends_off(double feet)
{
    static struct form form;
    static struct block block;
    static struct note_form note;
    struct made *made = sweep_standing(2);
    struct segment *second = made_step(made, 2);
    form = (struct form){.kind = FORM_REPEAT};
    note = (struct note_form){.step = 1};
    form.note = &note;
    block = (struct block){.forms = {.at = &form, .count = 1, .room = 1}};
    made->step[1].block = &block;
    made_stand(made, second, P4, 20.75, -2.25 + feet);
    return made;
}

/* 5 sets a screen for 3 in the back of x3, at a place with a measure. */
static struct made *behind(enum level_code level, double metres)
{
    struct made *made = sweep_standing(3);
    struct segment *segment = &made->segment[0];
    made->play.level = level;
    made->play.speed = level_of(level);
    made_stand(made, segment, X3, -15, 10);
    made_stand(made, segment, P5, -15, 10 - (metres + 2 * MOTION_BODY) / FEET);
    struct task *task = made_task(made, segment, TASK_SCREEN, VERB_SCREENS, P5, P3, 0, TIME_NEVER);
    task->goal_written = task->goal.measured = true;
    struct task_record *record = made_record(segment, task);
    record->time[MOMENT_SET] = 1;
    record->defender = X3;
    record->to = segment->track[P5].sample[0].at;
    record->on = segment->track[X3].sample[0].at;
    return made;
}

static struct made *behind_u16(double metres)
{
    return behind(LEVEL_U16, metres);
}

static struct made *behind_u12(double metres)
{
    return behind(LEVEL_U12, metres);
}

static struct made *behind_u18(double metres)
{
    return behind(LEVEL_U18, metres);
}

/* 3 comes by at 2 s; 5, set since 1 s, leaves at that moment. */
static struct made *screener_leaves(double seconds)
{
    struct made *made = behind_u16(.7);
    struct segment *segment = &made->segment[0];
    made->step[0].tasks.at[0].goal_written = false;
    struct vec2 at = segment->track[P5].sample[0].at;
    struct task *use = made_task(made, segment, TASK_USE, VERB_COMES, P3, P5, 1.1, 2.8);
    use->screen_task = 0;
    made_walk(made, segment, P3, 1.1, 2, at.x / FEET - 2, at.y / FEET);
    made_walk(made, segment, P3, 2, 2.8, at.x / FEET - 2, at.y / FEET - 10);
    made_walk(made, segment, P5, seconds, seconds + .2, at.x / FEET + 3, at.y / FEET);
    return made;
}

/* 3 comes off the screen of 5, and has been so far away a second before; 2 has set up by a
 * sentence. */
static struct made *set_up(double feet)
{
    struct made *made = behind_u16(.7);
    struct segment *segment = &made->segment[0];
    made->step[0].tasks.at[0].goal_written = false;
    struct task *use = made_task(made, segment, TASK_USE, VERB_COMES, P3, P5, 2, 2.8);
    use->screen_task = 0;
    made_task(made, segment, TASK_MOVE, VERB_SETS_UP, P2, BODY_NONE, 0, 1)->shape = SHAPE_SETUP;
    made_stand(made, segment, P3, -18, 12 + feet);
    made_walk(made, segment, P3, 1, 1.8, -18, 12);
    return made;
}

static const struct sweep sweeps[] = {
    {"space.wing", "up from the free-throw line", wing_above, 0, 6.5, .1, 3.5, false},
    {"space.wing", "down from it", wing_below, 0, 7, .1, 3.5, false},
    {"space.wing", "down from it beside two guards", low_wing, 0, 6.9, .1, 5.6, false},
    {"space.inside-line", "inside the three-point line", wing_inside, -1, 3.5, .1, 1.5, false},
    {"space.far", "between the top and the wings", top_from_wings, 16, 21.3, .1, 20.5, false},
    {"space.area", "of the start's floor", corner_in, .72, 1.2, .01, .7746, true},
    {"pass.lane", "to one side of the ball's way", by_a_defender, 0, 4, .1, 1, true},
    {"pass.lane", "to the other", by_a_defender_below, 0, 4, .1, 1, true},
    {"cut.collide", "between two who cross", head_on, 0, 6, .1, 1.837, true},
    {"move.standing", "without a word", stands_for, 1, 8, .25, 3, false},
    {"shape.end", "off its place", ends_off, 0, 9, .1, 4, false},
    {"screen.step", "behind a defender, m, u16", behind_u16, .1, 1.5, .05, .5476, true},
    {"screen.step", "behind him, u12", behind_u12, .1, 1.5, .05, .4476, true},
    {"screen.step", "behind him, u18", behind_u18, .1, 1.5, .05, .6476, true},
    {"screen.no-setup", "away, before the cut", set_up, 0, 6, .1, 2.5, true},
    {"screen.moving", "when the screener leaves, s", screener_leaves, 1.2, 2.6, .05, 1.8, true},
    {"ball.backcourt", "from the ring", taken_back, 25, 50, .25, 36.75, false},
    {"ball.out", "over the line", caught_out, -2, 4, .1, .5, false},
    {"ball.handoff", "between giver and taker", handed_off, 1, 8, .1, 3.492, false},
    {"time.closely-guarded", "held", held_guarded, 1, 8, .1, 5.05, false},
    {"time.closely-guarded", "dribbled", dribbled_guarded, 1, 8, .1, 5.05, false},
    {"time.closely-guarded", "to the defender, US codes", held_at_distance, 1, 12, .1, 6.82, true},
    {"time.closely-guarded", "to him, FIBA", held_at_distance_fiba, .5, 3, .05, 1.25, true},
};

static bool is_told(struct made *made, const char *id)
{
    finding_list found;
    check_run(&arena, &made->run, &found);
    for (size_t i = 0; i < found.count; i++) {
        if (strcmp(found.at[i].row->id, id) == 0) {
            return true;
        }
    }
    return false;
}

static const struct sweep *sweep_at(size_t index)
{
    size_t mine = sizeof sweeps / sizeof *sweeps;
    return index < mine ? &sweeps[index] : &sweeps_more[index - mine];
}

static size_t sweep_count(void)
{
    return sizeof sweeps / sizeof *sweeps + sweeps_more_count;
}

START_TEST(it_is_told_beyond_the_border_and_nowhere_else)
{
    const struct sweep *sweep = sweep_at((size_t)_i);
    int told = 0, untold = 0;
    for (int k = 0; sweep->from + k * sweep->step <= sweep->to; k++) {
        double amount = sweep->from + k * sweep->step;
        if (fabs(amount - sweep->border) < sweep->step / 2) {
            continue; /* the border itself */
        }
        bool is = is_told(sweep->of(amount), sweep->id);
        bool wanted = sweep->below ? amount < sweep->border : amount > sweep->border;
        ck_assert_msg(is == wanted, "%s, %s: %g is%s told", sweep->id, sweep->what, amount,
                      is ? "" : " not");
        told += is;
        untold += !is;
    }
    ck_assert(told >= 3 && untold >= 3);
}
END_TEST

START_TEST(every_check_with_an_amount_is_swept)
{
    for (size_t i = 0; i < check_count(); i++) {
        const struct check_row *row = check_at(i);
        bool swept = !*row->unit; /* of no amount */
        for (size_t k = 0; k < sweep_count() && !swept; k++) {
            swept = strcmp(sweep_at(k)->id, row->id) == 0;
        }
        ck_assert_msg(swept, "%s is not swept", row->id);
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("check sweeps");
    TCase *all = tcase_create("sweeps");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, it_is_told_beyond_the_border_and_nowhere_else, 0, (int)sweep_count());
    tcase_add_test(all, every_check_with_an_amount_is_swept);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
