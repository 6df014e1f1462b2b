/* SPDX-License-Identifier: MIT */
/* Published plays, written in our language, must run as their books tell them: the order of what
 * happens, who ends where, who has the ball; and a sound play raises nothing above a note.
 *
 * Left out, of the rows that were read:
 * Z1, Z4, D10, D11   zones: test_zone.c
 * T3                 a bound on the clock (a break is over at 6 s), no play
 * D3                 a step made before the pass is thrown: ours answer what they saw
 * of the single statements: order of teaching, motion before plays, hands and grips on the ball,
 * situations, shot-clock bands, shares of a championship, the length of a drill: nothing that a run
 * shows; names of screens ("in", "out", "horizontal"): definitions; gaps in a zone: test_zone.c.
 * The weak-side wait is A18, the second screen's A2, the post that stays A1. */
#include "pipe.h"
#include "suite.h"
#include "worked.h"

#include "floor/sim/sim.h"

#include <string.h>

static const struct worked *row_at(const struct worked_table *table, int index)
{
    return &table->at[index];
}

static const struct segment *find_segment(const struct run *run, int step, int branch)
{
    for (size_t i = 0; i < run->segments.count; i++) {
        const struct segment *segment = run->segments.at[i];
        if (segment->step == step && segment->branch == branch) {
            ck_assert(segment->ran);
            return segment;
        }
    }
    ck_abort_msg("no such way through a step");
    return NULL;
}

static void runs_as_told(const struct worked *row)
{
    struct piped piped;
    pipe_text(&arena, str_of(row->text), &piped);
    ck_assert_msg(piped.diags.errors == 0, "%s:%s", row->row, piped_said(&arena, &piped));
    const struct run *run = sim_run(&arena, &piped.sources, &piped.book->plays.at[0], &piped.diags);
    struct told told = {NULL, NULL, row->row};
    size_t facts = 0;
    for (; facts < WORKED_FACTS && row->facts[facts].holds; facts++) {
        told.fact = &row->facts[facts];
        if (told.fact->holds == worked_inside || !told.segment) {
            bool inside = told.fact->holds == worked_inside;
            told.segment =
                find_segment(run, inside ? told.fact->step : 0, inside ? told.fact->branch : -1);
        }
        told.fact->holds(&told);
    }
    ck_assert_msg(facts > 0, "%s: nothing is held up against the run", row->row);
}

/* A note is well where the row says which and why; anything more is not. */
static void raises_no_warning(const struct worked *row)
{
    struct piped piped;
    pipe_text(&arena, str_of(row->text), &piped);
    ck_assert_msg(piped.diags.warnings == 0, "%s:%s", row->row, piped_said(&arena, &piped));
    for (size_t i = 0; i < piped.diags.all.count; i++) {
        ck_assert_msg(strstr(row->notes, piped.diags.all.at[i].row->id) != NULL, "%s:%s", row->row,
                      piped_said(&arena, &piped));
    }
    for (size_t i = 0; i < piped.findings.count; i++) {
        const struct finding *finding = &piped.findings.at[i];
        ck_assert_msg(finding->severity == SEVERITY_NOTE &&
                          strstr(row->notes, finding->row->id) != NULL,
                      "%s:%s", row->row, piped_said(&arena, &piped));
    }
}

#define TABLES(DO) DO(offense) DO(defense) DO(break)
#define TESTS(name)                                                                                \
    START_TEST(name##_plays_run_as_told)                                                           \
    {                                                                                              \
        runs_as_told(row_at(&worked_##name, _i));                                                  \
    }                                                                                              \
    END_TEST                                                                                       \
    START_TEST(name##_plays_raise_no_warning)                                                      \
    {                                                                                              \
        raises_no_warning(row_at(&worked_##name, _i));                                             \
    }                                                                                              \
    END_TEST
TABLES(TESTS)

int main(void)
{
    Suite *suite = suite_create("outside worked examples");
    TCase *all = tcase_create("worked");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
#define ADD(name)                                                                                  \
    tcase_add_loop_test(all, name##_plays_run_as_told, 0, (int)worked_##name.count);               \
    tcase_add_loop_test(all, name##_plays_raise_no_warning, 0, (int)worked_##name.count);
    TABLES(ADD)
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
