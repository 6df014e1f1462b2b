/* SPDX-License-Identifier: MIT */
/* What a player is told as her job goes with what the checks say of her: who is told to leave the
 * lane is told of its seconds, and never just to stay. */
#include "language/tell/tell.h"
#include "pipe.h"
#include "suite.h"

#include <string.h>

/* Plays in which 5 is in the lane for long: what she does there, and where the ball is meanwhile.
 */
static const char *const plays[] = {
    "play \"Weir\"\n  floor full\n  defense press 2-2-1\n"
    "  start 4 out of bounds at backcourt right short corner, 1 backcourt right elbow, "
    "2 backcourt left elbow, 3 half court, 5 front of the rim\n  ball 4\n"
    "  step \"In\"\n    4 inbounds to 1\n    1 dribbles to right wing\n    1 passes to 3\n"
    "  step \"Up\"\n    3 holds for 4 s\n",
    "play \"Pool\"\n  start four-out one-in, 5 at the rim\n"
    "  step \"Swing\"\n    1 passes to 2\n    2 holds for 3 s\n    2 passes to 1\n",
    "play \"Lock\"\n  start four-out one-in, 5 at lane\n"
    "  step \"Swing\"\n    1 passes to 2\n    2 holds for 3 s\n    2 passes to 1\n",
    "play \"Basin\"\n  start four-out one-in\n"
    "  step \"In\"\n    5 cuts to the front of the rim\n    1 holds for 3 s\n"
    "  step \"On\"\n    1 passes to 2\n    2 holds for 3 s\n",
    "play \"Seal\"\n  start four-out one-in\n  defense man\n"
    "  step \"In\"\n    5 seals at the front of the rim\n    1 holds for 5 s\n    1 passes to 5\n",
    "play \"Drive\"\n  start five-out\n"
    "  step \"In\"\n    1 dribbles to the rim\n"
    "  step \"On\"\n    2 cuts to right corner\n    1 holds for 4 s\n    3 cuts to top\n",
};

static bool is_told(const struct play *play, const struct finding *finding)
{
    const struct step *step = &play->steps.at[finding->step];
    struct str job = tell_job(&arena, play, step, finding->branch, finding->who[0], false);
    bool holds = strstr(job.at, "Stay") || strstr(job.at, "Hold") || strstr(job.at, "Wait at");
    return !holds || strstr(job.at, "the lane");
}

START_TEST(who_is_sent_out_of_the_lane_is_not_told_to_stay_in_it)
{
    struct piped piped;
    pipe_text(&arena, str_of(plays[_i]), &piped);
    ck_assert_uint_eq(piped.diags.errors, 0);
    ck_assert_msg(piped_count(&piped, "time.lane") > 0, "%s", piped_said(&arena, &piped));
    for (size_t i = 0; i < piped.findings.count; i++) {
        const struct finding *finding = &piped.findings.at[i];
        if (strcmp(finding->row->id, "time.lane") == 0) {
            ck_assert_msg(is_told(&piped.book->plays.at[0], finding), "%s", finding->message.at);
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("advice");
    TCase *all = tcase_create("advice");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, who_is_sent_out_of_the_lane_is_not_told_to_stay_in_it, 0,
                        sizeof plays / sizeof *plays);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
