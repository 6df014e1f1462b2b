/* SPDX-License-Identifier: MIT */
/* Every word of the language runs: a book with a play for each sentence verb, setting, defender's
 * word, tie and place in its tidy form. Nothing in it is an error, every play comes to its end, and
 * every verb there is has been started by somebody.
 *   test_every_word FILE */
#include "resolved.h"
#include "suite.h"
#include "whole_file.h"

#include "floor/sim/sim.h"

static const char *file;
static struct resolved text;

static void read_all(void)
{
    struct str words;
    ck_assert(whole_file(&arena, file, &words));
    resolve_text(&arena, &text, STR("every-word.play"), words);
}

static struct run *run_of(size_t play)
{
    return sim_run(&arena, &text.sources, &text.book->plays.at[play], &text.diags);
}

START_TEST(every_play_comes_to_its_end_without_an_error)
{
    read_all();
    ck_assert_uint_gt(text.book->plays.count, 200);
    for (size_t i = 0; i < text.book->plays.count; i++) {
        const struct run *run = run_of(i);
        for (size_t s = 0; s < run->segments.count; s++) {
            ck_assert_msg(run->segments.at[s]->ran, "%.*s", STR_ARG(text.book->plays.at[i].name));
        }
        ck_assert_msg(text.diags.errors == 0, "%.*s: %s", STR_ARG(text.book->plays.at[i].name),
                      resolved_said(&arena, &text));
    }
}
END_TEST

static void count_verbs(const struct run *run, size_t begun[VERB_COUNT])
{
    for (size_t s = 0; s < run->segments.count; s++) {
        const struct segment *segment = run->segments.at[s];
        for (size_t i = 0; i < segment->tasks; i++) {
            bool started = segment->record[i].time[MOMENT_STARTED] != TIME_NEVER;
            begun[segment_task(segment, i)->verb] += started;
        }
    }
}

START_TEST(every_verb_is_done_by_somebody)
{
    size_t begun[VERB_COUNT] = {0};
    read_all();
    for (size_t i = 0; i < text.book->plays.count; i++) {
        count_verbs(run_of(i), begun);
    }
    for (int verb = 0; verb < VERB_COUNT; verb++) {
        ck_assert_msg(begun[verb] > 0, "nobody %s", verb_row((enum verb)verb)->words);
    }
}
END_TEST

int main(int argc, char **argv)
{
    file = suite_argument(argc, argv, "FILE");
    Suite *suite = suite_create("every word");
    TCase *all = tcase_create("every word");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 120);
    tcase_add_test(all, every_play_comes_to_its_end_without_an_error);
    tcase_add_test(all, every_verb_is_done_by_somebody);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
