/* SPDX-License-Identifier: MIT */
/* What must hold in every run, over many plays thrown together from a seed: speeds, the floor,
 * bodies that do not stand in each other, the same bytes twice, the mirror image in the mirror. */
#include "suites.h"

#include <math.h>
#include <string.h>

#include "base/real.h"
#include "base/rng.h"

static const char *const formations[] = {"fiveout", "fouroutonein", "horns", "box", "onefourhigh"};

static int other_than(struct rng *rng, int who)
{
    int other = 1 + (int)rng_below(rng, 4);
    return other >= who ? other + 1 : other;
}

/* Where everybody was last sent: a sound play sends no two to one place. */
static struct vec2 planned[6];

static bool is_free(int who, struct vec2 p)
{
    for (int i = 1; i <= 5; i++) {
        if (i != who && vec2_distance(planned[i], p) < 2.2) {
            return false;
        }
    }
    return true;
}

static void somewhere(const struct play *play, struct rng *rng, struct task *task)
{
    static const enum spot spots[] = {SPOT_TOP,   SPOT_WING,  SPOT_CORNER, SPOT_SLOT,
                                      SPOT_ELBOW, SPOT_BLOCK, SPOT_RIM};
    int who = body_number(task->who);
    for (int tries = 0; tries < 40; tries++) {
        enum spot spot = spots[rng_below(rng, 7)];
        enum side side = rng_below(rng, 2) ? SIDE_LEFT : SIDE_RIGHT;
        struct vec2 p = court_spot(play->court, spot, side);
        if (is_free(who, p) && vec2_distance(p, planned[who]) > 1) {
            build_to_spot(play, task, spot, side);
            planned[who] = p;
            return;
        }
    }
    build_to(task, planned[who].x / FEET, planned[who].y / FEET);
}

/* A step in which one screens and one uses it, one cuts, and the ball goes to somebody who moves.
 */
static void screen_step(struct play *play, struct rng *rng, int holder)
{
    struct step *step = build_step(&arena, play);
    int screener = other_than(rng, holder), user = other_than(rng, screener);
    while (user == holder || user == screener) {
        user = user % 5 + 1;
    }
    static const enum verb uses[] = {VERB_CURLS, VERB_FADES, VERB_COMES, VERB_BACK_CUTS_OFF};
    build_task(&arena, step, NULL, screener, VERB_SCREENS)->other = body_attacker(user);
    struct task *use = build_task(&arena, step, NULL, user, uses[rng_below(rng, 4)]);
    use->other = body_attacker(screener);
    use->screen_task = 0;
    somewhere(play, rng, use);
    build_task(&arena, step, NULL, holder, VERB_PASSES)->other = body_attacker(user);
}

static int cut_step(struct play *play, struct rng *rng, int holder)
{
    static const enum verb cuts[] = {VERB_CUTS, VERB_FILLS, VERB_V_CUTS, VERB_BACK_CUTS,
                                     VERB_L_CUTS};
    struct step *step = build_step(&arena, play);
    int to = other_than(rng, holder);
    for (int i = 1; i <= 5; i++) {
        if (i != holder && rng_below(rng, 3)) {
            somewhere(play, rng, build_task(&arena, step, NULL, i, cuts[rng_below(rng, 5)]));
        }
    }
    if (rng_below(rng, 2)) {
        somewhere(play, rng, build_task(&arena, step, NULL, holder, VERB_DRIBBLES));
    }
    build_task(&arena, step, NULL, holder, VERB_PASSES)->other = body_attacker(to);
    return to;
}

/* A screen on the ball, a drive off it, a hand-off or a shot, and reads of what the guard does. */
static void ball_step(struct play *play, struct rng *rng, int holder)
{
    static const enum verb answers[] = {VERB_GOES_UNDER, VERB_GOES_OVER, VERB_SWITCHES, VERB_COUNT};
    struct step *step = build_step(&arena, play);
    int screener = other_than(rng, holder), other = screener % 5 + 1;
    other = other == holder ? other % 5 + 1 : other;
    build_task(&arena, step, NULL, screener, VERB_SCREENS)->other = body_attacker(holder);
    for (int i = 0; i < 2; i++) {
        struct branch *branch = build_branch(&arena, step, "Read");
        build_condition(&arena, branch, holder, answers[rng_below(rng, 4)]);
        branch->conditions.at[0].other = (struct who){.kind = WHO_DEFENDER, .number = screener};
        struct task *drive =
            build_task(&arena, step, branch, holder, i ? VERB_DRIVES_OFF : VERB_DRIBBLES_OFF);
        drive->other = body_attacker(screener);
        drive->screen_task = 0;
        somewhere(play, rng, drive);
        struct task *roll = build_task(&arena, step, branch, screener, VERB_ROLLS);
        build_to(roll, 0, 0);
        build_wait(&arena, roll, 0, MOMENT_USED, false);
        if (i) {
            build_task(&arena, step, branch, holder, VERB_HANDS_OFF)->other = body_attacker(other);
        } else {
            build_task(&arena, step, branch, holder, VERB_SHOOTS);
        }
    }
}

static struct play *thrown_together(uint64_t seed)
{
    struct rng rng;
    rng_seed(&rng, seed);
    struct play *play = build_play(&arena, seed % 3 ? DEFENSE_MAN : DEFENSE_NONE);
    build_formation(play, formations[seed % 5]);
    for (int i = 1; i <= 5; i++) {
        planned[i] = play->start[body_attacker(i)].at;
    }
    int holder = cut_step(play, &rng, 1);
    if (seed % 4 == 3) {
        ball_step(play, &rng, holder);
    } else {
        screen_step(play, &rng, holder);
    }
    return play;
}

enum { SEEDS = 60 };

static void inside_and_no_faster_than_he_can(const struct segment *segment, int b)
{
    const struct play *play = segment->play;
    const struct track *track = &segment->track[b];
    for (size_t i = 0; track->sample && i < segment->samples; i++) {
        ck_assert_double_le(vec2_length(track->sample[i].v), play->speed->sprint * 1.0001);
        ck_assert(court_inside(play->court, track->sample[i].at, .1));
        if (i) { /* nobody is thrown about by a body either */
            double far = vec2_distance(track->sample[i].at, track->sample[i - 1].at);
            ck_assert_double_lt(far, (play->speed->sprint + 3) * RUN_SAMPLE);
        }
    }
}

START_TEST(nobody_is_too_fast_or_leaves_the_floor)
{
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct run *run = sim_of(thrown_together(seed));
        for (size_t s = 0; s < run->segments.count; s++) {
            for (int b = 0; b < BODY_COUNT; b++) {
                inside_and_no_faster_than_he_can(run->segments.at[s], b);
            }
        }
    }
}
END_TEST

START_TEST(all_of_them_come_to_their_end)
{
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct run *run = sim_of(thrown_together(seed));
        for (size_t s = 0; s < run->segments.count; s++) {
            ck_assert_msg(run->segments.at[s]->ran, "seed %d, step %d: %.*s", (int)seed, (int)s + 1,
                          STR_ARG(sim_diags.all.count
                                      ? sim_diags.all.at[sim_diags.all.count - 1].message
                                      : STR("-")));
        }
    }
}
END_TEST

static void count_overlaps(const struct segment *segment, size_t *deep, size_t *all)
{
    for (size_t i = 0; i < segment->samples; i++) {
        for (int a = 0; a < BODY_COUNT; a++) {
            for (int b = a + 1; b < BODY_COUNT; b++) {
                const struct track *one = &segment->track[a], *two = &segment->track[b];
                if (one->on_floor && two->on_floor) {
                    double far = vec2_distance(one->sample[i].at, two->sample[i].at);
                    *deep += far < 2 * MOTION_BODY - .10;
                }
            }
        }
        (*all)++;
    }
}

START_TEST(bodies_stand_in_each_other_in_few_moments_only)
{
    size_t deep = 0, all = 0;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct run *run = sim_of(thrown_together(seed));
        for (size_t s = 0; s < run->segments.count; s++) {
            count_overlaps(run->segments.at[s], &deep, &all);
        }
    }
    ck_assert_msg(deep * 100 < all, "%d deep overlaps in %d samples", (int)deep, (int)all);
}
END_TEST

START_TEST(the_same_play_gives_the_same_run_to_the_last_bit)
{
    for (uint64_t seed = 0; seed < 12; seed++) {
        struct play *play = thrown_together(seed);
        struct run *a = sim_of(play), *b = sim_of(play);
        struct str one = sim_dump(a), two = sim_dump(b);
        ck_assert(str_equal(one, two));
        const struct segment *x = a->segments.at[1], *y = b->segments.at[1];
        for (int i = 0; i < BODY_COUNT; i++) {
            if (x->track[i].sample) {
                ck_assert_int_eq(memcmp(x->track[i].sample, y->track[i].sample,
                                        x->samples * sizeof(struct sample)),
                                 0);
            }
        }
    }
}
END_TEST

START_TEST(the_other_side_of_a_play_is_its_mirror_image_to_the_last_bit)
{
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        struct play *play = thrown_together(seed);
        struct run *a = sim_of(play), *b = sim_of(build_mirror(&arena, play));
        for (size_t s = 0; s < a->segments.count; s++) {
            const struct segment *x = a->segments.at[s], *y = b->segments.at[s];
            ck_assert_uint_eq(x->samples, y->samples);
            for (int i = 0; i < BODY_COUNT; i++) {
                for (size_t k = 0; x->track[i].sample && k < x->samples; k++) {
                    struct sample p = x->track[i].sample[k], q = y->track[i].sample[k];
                    ck_assert_msg(p.at.x == -q.at.x && p.at.y == q.at.y,
                                  "seed %d step %d body %d sample %d", (int)seed, (int)s + 1, i,
                                  (int)k);
                }
            }
        }
    }
}
END_TEST

TCase *sim_whole_tests(void)
{
    TCase *all = tcase_create("whole");
    tcase_set_timeout(all, 120);
    tcase_add_test(all, all_of_them_come_to_their_end);
    tcase_add_test(all, nobody_is_too_fast_or_leaves_the_floor);
    tcase_add_test(all, bodies_stand_in_each_other_in_few_moments_only);
    tcase_add_test(all, the_same_play_gives_the_same_run_to_the_last_bit);
    tcase_add_test(all, the_other_side_of_a_play_is_its_mirror_image_to_the_last_bit);
    return all;
}
