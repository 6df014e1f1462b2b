/* SPDX-License-Identifier: MIT */
/* worked: how each kind of fact is held up against a run. */
#include "worked.h"

#include "suite.h"

#include "base/real.h"

#define EACH_SAMPLE(t, segment, from)                                                              \
    for (double t = (from); t <= (segment)->duration; t += RUN_SAMPLE)

static body body_of(int who)
{
    return who < 0 ? body_defender(-who) : body_attacker(who);
}

static struct vec2 at(const struct told *told, int who, double t)
{
    return segment_at(told->segment, body_of(who), t);
}

static const struct task_record *record_of(const struct told *told, const struct deed *deed)
{
    int nth = deed->nth;
    for (size_t i = 0; i < told->segment->tasks; i++) {
        const struct task *task = segment_task(told->segment, i);
        if (task->who == body_of(deed->who) && task->verb == deed->verb && nth-- == 0) {
            return &told->segment->record[i];
        }
    }
    ck_abort_msg("%s: %d has no such sentence", told->row, deed->who);
    return NULL;
}

static double time_of(const struct told *told, const struct deed *deed, enum moment moment)
{
    double time = record_of(told, deed)->time[moment];
    ck_assert_msg(time >= 0, "%s: the %s of %d never came", told->row, verb_row(deed->verb)->words,
                  deed->who);
    return time;
}

static struct vec2 spot_of(const struct told *told)
{
    return court_spot(told->segment->play->court, told->fact->spot, told->fact->side);
}

void worked_inside(const struct told *told)
{
    (void)told; /* the runner has gone there */
}

void worked_order(const struct told *told)
{
    double first = time_of(told, &told->fact->deed, told->fact->moment);
    double later = time_of(told, &told->fact->later, told->fact->later_moment);
    ck_assert_msg(later >= first - 1e-9, "%s: %d at %.2f s is not before %d at %.2f s", told->row,
                  told->fact->deed.who, first, told->fact->later.who, later);
}

void worked_lasts(const struct told *told)
{
    double first = time_of(told, &told->fact->deed, told->fact->moment);
    double later = time_of(told, &told->fact->later, told->fact->later_moment);
    ck_assert_msg(later - first >= told->fact->amount, "%s: only %.2f s lie between", told->row,
                  later - first);
}

void worked_ends(const struct told *told)
{
    double off = vec2_distance(spot_of(told), at(told, told->fact->who, told->segment->duration));
    ck_assert_msg(off <= told->fact->amount, "%s: %d ends %.2f m off", told->row, told->fact->who,
                  off);
}

void worked_ends_side(const struct told *told)
{
    double x = at(told, told->fact->who, told->segment->duration).x;
    double out = told->fact->side == SIDE_RIGHT ? x : -x;
    ck_assert_msg(out >= told->fact->amount, "%s: %d ends at x = %.2f m", told->row,
                  told->fact->who, x);
}

/* Who stands on the line is in the lane (rulebooks), and the free-throw line is one: a foot may be
 * a micrometre beyond it. */
static bool ends_in_lane(const struct told *told)
{
    const double on_it = .01;
    struct vec2 p = at(told, told->fact->who, told->segment->duration);
    return court_in_lane(told->segment->play->court, vec2_of(p.x * (1 - on_it), p.y - on_it));
}

void worked_ends_in_lane(const struct told *told)
{
    ck_assert_msg(ends_in_lane(told), "%s: %d is not in the lane", told->row, told->fact->who);
}

void worked_ends_outside(const struct told *told)
{
    ck_assert_msg(!ends_in_lane(told), "%s: %d is in the lane", told->row, told->fact->who);
}

void worked_has_ball(const struct told *told)
{
    body holder = segment_holder(told->segment, told->segment->duration);
    ck_assert_msg(holder == body_of(told->fact->who), "%s: %d has the ball, not %d", told->row,
                  body_number(holder), told->fact->who);
}

void worked_near_man(const struct told *told)
{
    const struct task_record *screen = record_of(told, &told->fact->deed);
    double set = time_of(told, &told->fact->deed, MOMENT_SET);
    double off = vec2_distance(at(told, told->fact->deed.who, set), screen->on);
    ck_assert_msg(off <= told->fact->amount, "%s: %d screens %.2f m from the defender", told->row,
                  told->fact->deed.who, off);
}

static double apart(const struct told *told)
{
    double t = time_of(told, &told->fact->deed, told->fact->moment);
    return vec2_distance(at(told, told->fact->who, t), at(told, told->fact->whom, t));
}

void worked_together(const struct told *told)
{
    ck_assert_msg(apart(told) <= told->fact->amount, "%s: %d and %d are %.2f m apart", told->row,
                  told->fact->who, told->fact->whom, apart(told));
}

void worked_apart(const struct told *told)
{
    ck_assert_msg(apart(told) >= told->fact->amount, "%s: %d and %d are only %.2f m apart",
                  told->row, told->fact->who, told->fact->whom, apart(told));
}

void worked_still(const struct told *told)
{
    double most = 0;
    EACH_SAMPLE(t, told->segment, 0)
    {
        most = real_max(most,
                        vec2_distance(at(told, told->fact->who, 0), at(told, told->fact->who, t)));
    }
    ck_assert_msg(most <= told->fact->amount, "%s: %d moved %.2f m", told->row, told->fact->who,
                  most);
}

void worked_on_axis(const struct told *told)
{
    double x = at(told, told->fact->who, told->segment->duration).x;
    ck_assert_msg(x <= told->fact->amount && x >= -told->fact->amount, "%s: %d ends at x = %.2f m",
                  told->row, told->fact->who, x);
}

void worked_gap(const struct told *told)
{
    double gap = record_of(told, &told->fact->deed)->gap;
    ck_assert_msg(gap >= 0 && gap <= told->fact->amount, "%s: %d passes the screen %.2f m off",
                  told->row, told->fact->deed.who, gap);
}

static double quickest(const struct told *told, const struct deed *deed)
{
    double from = time_of(told, deed, MOMENT_STARTED), to = time_of(told, deed, MOMENT_ARRIVED);
    double most = 0;
    for (double t = from; t <= to; t += RUN_SAMPLE) {
        most = real_max(most, vec2_length(segment_velocity(told->segment, body_of(deed->who), t)));
    }
    return most;
}

void worked_quicker_after(const struct told *told)
{
    double before = quickest(told, &told->fact->deed), after = quickest(told, &told->fact->later);
    ck_assert_msg(after >= before + told->fact->amount, "%s: %.2f m/s, then %.2f m/s", told->row,
                  before, after);
}

void worked_alone_on_side(const struct told *told)
{
    const struct fact *fact = told->fact;
    double t = time_of(told, &fact->deed, fact->moment);
    double side = at(told, fact->whom, t).x < 0 ? -1 : 1;
    for (int i = 1; i <= 5; i++) {
        double x = at(told, i, t).x * side;
        ck_assert_msg(i == fact->who || i == fact->whom || x <= 0,
                      "%s: %d stands on their side, %.2f m from the axis", told->row, i, x);
    }
}

void worked_carries(const struct told *told)
{
    double from = time_of(told, &told->fact->deed, told->fact->moment), way = 0;
    EACH_SAMPLE(t, told->segment, from)
    {
        bool holds = segment_holder(told->segment, t) == body_of(told->fact->who);
        way += holds ? vec2_distance(at(told, told->fact->who, t),
                                     at(told, told->fact->who, t + RUN_SAMPLE))
                     : 0;
    }
    ck_assert_msg(way >= told->fact->amount, "%s: %d carries the ball %.2f m", told->row,
                  told->fact->who, way);
}

void worked_by_sideline(const struct told *told)
{
    double least = 99;
    EACH_SAMPLE(t, told->segment, 0)
    {
        double x = at(told, told->fact->who, t).x;
        least = real_min(least, told->segment->play->court->half_width - real_max(x, -x));
    }
    ck_assert_msg(least <= told->fact->amount, "%s: %d comes no nearer than %.2f m", told->row,
                  told->fact->who, least);
}

void worked_nearer(const struct told *told)
{
    const struct fact *fact = told->fact;
    double end = told->segment->duration;
    double own = vec2_distance(at(told, fact->who, end), at(told, fact->whom, end));
    for (int i = 1; i <= 5; i++) {
        int other = fact->who < 0 ? -i : i;
        double his = vec2_distance(at(told, other, end), at(told, fact->whom, end));
        ck_assert_msg(other == fact->whom || his >= own,
                      "%s: %d is %.2f m from %d, but %d is %.2f m", told->row, fact->who, own,
                      fact->whom, other, his);
    }
}

static double from_man(const struct told *told, int defender)
{
    double end = told->segment->duration;
    return vec2_distance(at(told, defender, end), at(told, -defender, end));
}

void worked_looser(const struct told *told)
{
    double one = from_man(told, told->fact->who), other = from_man(told, told->fact->whom);
    ck_assert_msg(one >= other + told->fact->amount,
                  "%s: x%d is %.2f m from his man, x%d %.2f m from his", told->row,
                  -told->fact->who, one, -told->fact->whom, other);
}

static double off_line(struct vec2 p, struct vec2 a, struct vec2 b)
{
    struct vec2 way = vec2_sub(b, a);
    double along = vec2_dot(vec2_sub(p, a), way) / vec2_dot(way, way);
    return vec2_distance(p, vec2_mix(a, b, real_clamp(along, 0, 1)));
}

void worked_goes_between(const struct told *told)
{
    const struct fact *fact = told->fact;
    double least = 99;
    EACH_SAMPLE(t, told->segment, time_of(told, &fact->deed, fact->moment))
    {
        least = real_min(least, off_line(at(told, fact->who, t), at(told, fact->whom, t),
                                         at(told, fact->third, t)));
    }
    ck_assert_msg(least <= fact->amount, "%s: %d comes no nearer than %.2f m to between %d and %d",
                  told->row, fact->who, least, fact->whom, fact->third);
}

static double nearest_defender(const struct told *told, int player, double t)
{
    double least = 99;
    for (int i = 1; i <= 5; i++) {
        least = real_min(least, vec2_distance(at(told, player, t), at(told, -i, t)));
    }
    return least;
}

void worked_most_open(const struct told *told)
{
    const struct fact *fact = told->fact;
    double end = told->segment->duration, own = nearest_defender(told, fact->who, end);
    for (int i = 1; i <= 5; i++) {
        double his = nearest_defender(told, i, end);
        ck_assert_msg(segment_holder(told->segment, end) == body_of(i) || his <= own,
                      "%s: %d has %.2f m, but %d has %.2f m", told->row, fact->who, own, i, his);
    }
}

void worked_guarded(const struct told *told)
{
    double most = 0;
    EACH_SAMPLE(t, told->segment, time_of(told, &told->fact->deed, told->fact->moment))
    {
        most = real_max(most, nearest_defender(told, told->fact->who, t));
    }
    ck_assert_msg(most <= told->fact->amount, "%s: nobody within %.2f m of %d", told->row, most,
                  told->fact->who);
}

void worked_keeps_speed(const struct told *told)
{
    const struct deed *deed = &told->fact->deed;
    body who = body_of(deed->who);
    double from = time_of(told, deed, MOMENT_STARTED), way = 0, gone = 0, late = 0;
    EACH_SAMPLE(t, told->segment, from)
    {
        way += vec2_length(segment_velocity(told->segment, who, t)) * RUN_SAMPLE;
    }
    EACH_SAMPLE(t, told->segment, from)
    {
        double speed = vec2_length(segment_velocity(told->segment, who, t));
        gone += speed * RUN_SAMPLE;
        late = gone >= .75 * way && late == 0 ? speed : late;
    }
    double best = quickest(told, deed);
    ck_assert_msg(late >= told->fact->amount * best, "%s: %.2f m/s left of %.2f m/s", told->row,
                  late, best);
}

void worked_slow_in_lane(const struct told *told)
{
    double t = time_of(told, &told->fact->deed, told->fact->moment);
    struct vec2 p = at(told, told->fact->who, t);
    double speed = vec2_length(segment_velocity(told->segment, body_of(told->fact->who), t));
    ck_assert_msg(court_in_lane(told->segment->play->court, p), "%s: %d is not in the lane",
                  told->row, told->fact->who);
    ck_assert_msg(speed <= told->fact->amount, "%s: %d still runs %.2f m/s", told->row,
                  told->fact->who, speed);
}

void worked_comes_to(const struct told *told)
{
    const struct fact *fact = told->fact;
    double end = told->segment->duration;
    double before = vec2_distance(at(told, fact->who, 0), at(told, fact->whom, 0));
    double after = vec2_distance(at(told, fact->who, end), at(told, fact->whom, end));
    ck_assert_msg(after <= before - fact->amount, "%s: %d is %.2f m from %d, then %.2f m",
                  told->row, fact->who, before, fact->whom, after);
}

/* Degrees between the way a set screener faces and another. */
static double turned(const struct told *told, struct vec2 way)
{
    double facing = record_of(told, &told->fact->deed)->facing;
    return vec2_angle(vec2_of(real_cos(facing), real_sin(facing)), way) / REAL_PI * 180;
}

static struct vec2 set_at(const struct told *told)
{
    return at(told, told->fact->deed.who, time_of(told, &told->fact->deed, MOMENT_SET));
}

void worked_chest(const struct told *told)
{
    struct vec2 man = record_of(told, &told->fact->deed)->on;
    double off = turned(told, vec2_sub(man, set_at(told)));
    ck_assert_msg(off <= told->fact->amount, "%s: the chest of %d is %.0f degrees off", told->row,
                  told->fact->deed.who, off);
}

void worked_back(const struct told *told)
{
    double off = turned(told, vec2_of(0, 1));
    ck_assert_msg(off <= told->fact->amount, "%s: the back of %d is %.0f degrees off", told->row,
                  told->fact->deed.who, off);
}

void worked_level(const struct told *told)
{
    double off = set_at(told).y - spot_of(told).y;
    ck_assert_msg(off <= told->fact->amount && off >= -told->fact->amount,
                  "%s: %d screens %.2f m above", told->row, told->fact->deed.who, off);
}
