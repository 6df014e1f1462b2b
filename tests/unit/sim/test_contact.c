/* SPDX-License-Identifier: MIT */
/* Two bodies in touch, without a clock: who is put aside, and whose feet begin to go. */
#include "floor/sim/world.h"
#include "suite.h"

static struct world world;

#define RUNNER body_attacker(3)
#define OTHER body_defender(5)

/* The runner comes from the left at 2 m/s and is `deep` m in the other. */
static void meet(double deep)
{
    world = (struct world){.bodies = 2, .present = {RUNNER, OTHER}, .h = 1.0 / 480};
    struct agent *runner = &world.agent[RUNNER], *other = &world.agent[OTHER];
    runner->here = other->here = other->defends = true;
    runner->m = (struct mover){.v = {2, 0}};
    runner->command = runner->m.v;
    other->m.at = vec2_of(2 * MOTION_BODY - deep, 0);
    contact_list(&world);
    contact_look(&world, world.h);
    ck_assert_int_eq(world.meetings, 1);
}

START_TEST(who_stands_is_put_aside_and_does_not_begin_to_walk)
{
    meet(.03);
    double from = world.agent[OTHER].m.at.x;
    contact_part(&world);
    ck_assert_double_gt(world.agent[OTHER].m.at.x, from);
    ck_assert_double_eq(world.agent[OTHER].m.v.x, 0);
    ck_assert_double_lt(world.agent[RUNNER].m.v.x, 2);
}
END_TEST

START_TEST(who_goes_himself_is_pushed_on)
{
    meet(.03);
    world.agent[OTHER].command = vec2_of(0, 1);
    contact_part(&world);
    ck_assert_double_gt(world.agent[OTHER].m.v.x, 0);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("contact");
    TCase *all = tcase_create("contact");
    tcase_add_test(all, who_stands_is_put_aside_and_does_not_begin_to_walk);
    tcase_add_test(all, who_goes_himself_is_pushed_on);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
