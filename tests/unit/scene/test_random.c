/* SPDX-License-Identifier: MIT */
/* Plays made by chance (seeded): five on five in spots of a formation, cuts and fills to places
 * that are free, passes to whoever is open: nothing may lie on anything, at any width. */
#include "base/rng.h"
#include "picture/scene/drawing.h"
#include "staged.h"
#include "suite.h"

enum { PLAYS = 120, PLACES = 12 };

static const double places[PLACES][2] = {{0, 26},       {15.5, 19}, {-15.5, 19}, {20.8, 3.05},
                                         {-20.8, 3.05}, {8, 24.3},  {-8, 24.3},  {7.5, 7.6},
                                         {-7.5, 7.6},   {6, 19},    {-6, 19},    {0, 8.3}};

struct made {
    struct staged staged;
    struct rng rng;
    int who[PLACES]; /* whose place it is: 0 nobody's, -1 a line passes near it */
    int place[6];    /* by attacker */
    double free[6];  /* when he stands again */
    int holder;
    double time;
};

static double between(struct rng *rng, double low, double high)
{
    return low + (high - low) * rng_unit(rng);
}

static void make_start(struct made *made)
{
    for (int i = 1; i <= 5; i++) {
        int p;
        do {
            p = (int)rng_below(&made->rng, PLACES - 1);
        } while (made->who[p]);
        made->who[p] = i;
        made->place[i] = p;
        double x = places[p][0] + between(&made->rng, -0.4, 0.4),
               y = places[p][1] + between(&made->rng, -0.3, 0.3);
        staged_stands(&made->staged, body_attacker(i), x, y);
        double s = between(&made->rng, 0.68, 0.78);
        staged_stands(&made->staged, body_defender(i), x * s, 5.25 + (y - 5.25) * s + 1.2);
    }
    made->holder = 1 + (int)rng_below(&made->rng, 5);
    staged_ball(&made->staged, body_attacker(made->holder));
}

static void make_move(struct made *made, int i)
{
    int p = (int)rng_below(&made->rng, PLACES);
    if (made->who[p] || made->free[i] > 0) {
        return;
    }
    made->who[made->place[i]] = -1;
    made->who[p] = i;
    made->place[i] = p;
    double start = made->time, seconds = 1.6, points[2] = {places[p][0], places[p][1]};
    staged_move(&made->staged, i == made->holder ? TASK_CARRY : TASK_MOVE, body_attacker(i), start,
                seconds, points, 1);
    made->free[i] = start + seconds;
    made->time = i == made->holder ? start + seconds + 0.2 : start + 0.3;
}

static void make_pass(struct made *made)
{
    int to = 1 + (int)rng_below(&made->rng, 5);
    if (to == made->holder) {
        return;
    }
    double released = real_max(made->time, made->free[to] - 0.5);
    released =
        real_max(released, made->free[made->holder] > 0 ? made->free[made->holder] + 0.1 : 0);
    staged_pass(&made->staged, body_attacker(made->holder), body_attacker(to), released,
                released + 0.6);
    made->holder = to;
    made->time = released + 0.8;
}

static void make_play(struct made *made, uint64_t seed)
{
    rng_seed(&made->rng, seed);
    staged_begin(&made->staged, &arena, (enum court_code)rng_below(&made->rng, COURT_COUNT));
    make_start(made);
    for (int sentence = 0; sentence < 4; sentence++) {
        if (rng_below(&made->rng, 3) == 0) {
            make_pass(made);
        } else {
            make_move(made, 1 + (int)rng_below(&made->rng, 5));
        }
    }
    staged_end(&made->staged);
}

static bool play_is_clean(double width, uint64_t seed)
{
    open_arena();
    struct made *made = arena_new(&arena, struct made);
    make_play(made, seed);
    struct scene_options options = {.width = width, .accent = BODY_NONE};
    struct scene_measure found;
    scene_measure(&arena, scene_make(&arena, &made->staged.diagram, &options), &found);
    int bad = scene_measure_hidden(&found);
    close_arena();
    return bad == 0;
}

static void nothing_overlaps(double width, int most)
{
    int bad = 0, last = 0;
    for (uint64_t seed = 1; seed <= PLAYS; seed++) {
        if (!play_is_clean(width, seed)) {
            bad++;
            last = (int)seed;
        }
    }
    ck_assert_msg(bad <= most, "%d plays of %d have something on something, the last is seed %d",
                  bad, PLAYS, last);
}

START_TEST(nothing_overlaps_in_a_column)
{
    nothing_overlaps(237.6, 0);
}
END_TEST

START_TEST(nothing_overlaps_three_across)
{
    nothing_overlaps(152, 1);
}
END_TEST

START_TEST(nothing_overlaps_on_a_card)
{
    /* chance puts players where a coach would not: no way is left between two numerals */
    nothing_overlaps(115.2, 8);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("random");
    TCase *all = tcase_create("random");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, nothing_overlaps_in_a_column);
    tcase_add_test(all, nothing_overlaps_three_across);
    tcase_add_test(all, nothing_overlaps_on_a_card);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
