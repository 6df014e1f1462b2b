/* SPDX-License-Identifier: MIT */
/* What findings may not hang on: the order in which the checks are run, the name of the play, the
 * order of its settings, lines that say nothing of the floor, and the other plays of the file. Held
 * on every pair of plays. */
#include "pipe.h"
#include "suite.h"

#include <stdio.h>
#include <string.h>

#include "base/rng.h"
#include "floor/sim/sim.h"

enum { PAIR = 2, SHUFFLES = 4, LINES = 64 };

static const char *folder;

static struct str read_play(int index)
{
    return pipe_twin(&arena, folder, check_at((size_t)(index / PAIR)),
                     index % PAIR ? "flawed" : "sound");
}

/* Everything of the findings but where in the text they point, and the words they point at. */
static const char *told(const struct piped *piped, size_t from, size_t to)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = from; i < to; i++) {
        const struct finding *finding = &piped->findings.at[i];
        bool step =
            finding->span.end - finding->span.begin > 80; /* a whole step: its lines moved */
        struct str words = source_text(&piped->sources, finding->span);
        strbuf_print(&out, "%s %d %d.%d ", finding->row->id, (int)finding->severity, finding->step,
                     finding->branch);
        strbuf_number(&out, finding->time, 6);
        strbuf_char(&out, ' ');
        strbuf_number(&out, finding->amount, 6);
        strbuf_print(&out, " %d %d %d %d [%.*s] %.*s / %.*s\n", finding->who[0], finding->who[1],
                     finding->who[2], finding->who[3], step ? 0 : (int)words.size, words.at,
                     STR_ARG(finding->message), STR_ARG(finding->help));
    }
    return out.at ? out.at : "";
}

static const char *told_of(struct str text, struct piped *piped)
{
    pipe_text(&arena, text, piped);
    return told(piped, 0, piped->findings.count);
}

/* ---- the order of the checks ---- */

static void shuffle(size_t *order, size_t count, uint64_t seed)
{
    struct rng rng;
    rng_seed(&rng, seed);
    for (size_t i = 0; i < count; i++) {
        order[i] = i;
    }
    for (size_t i = count; i-- > 1;) {
        size_t k = rng_below(&rng, (uint32_t)i + 1);
        size_t swap = order[i];
        order[i] = order[k];
        order[k] = swap;
    }
}

START_TEST(the_order_of_the_checks_changes_nothing)
{
    struct piped piped;
    const char *first = told_of(read_play(_i), &piped);
    size_t *order = arena_array(&arena, size_t, check_count());
    struct run *run = sim_run(&arena, &piped.sources, &piped.book->plays.at[0], &piped.diags);
    for (uint64_t seed = 0; seed < SHUFFLES; seed++) {
        finding_list found;
        shuffle(order, check_count(), seed);
        check_run_in(&arena, run, order, &found);
        struct piped other = piped;
        other.findings = found;
        ck_assert_str_eq(told(&other, 0, found.count), first);
    }
}
END_TEST

/* ---- names and lines ---- */

START_TEST(another_name_changes_nothing)
{
    struct piped piped;
    struct str text = read_play(_i);
    const char *first = told_of(text, &piped), *name = strstr(text.at, "play \"");
    const char *end = strchr(name + strlen("play \""), '"');
    struct str renamed = str_format(&arena, "%.*splay \"Aardvark, the second time%s",
                                    (int)(name - text.at), text.at, end);
    ck_assert_str_eq(told_of(renamed, &piped), first);
}
END_TEST

static bool is_setting(struct str line)
{
    static const char *const words[] = {"  level ", "  start ", "  defense ", "  rules ",
                                        "  ball ",  "  limit ", "  clock "};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        if (line.size > strlen(words[i]) && memcmp(line.at, words[i], strlen(words[i])) == 0) {
            return true;
        }
    }
    return false;
}

static size_t lines_of(struct str text, struct str line[LINES])
{
    size_t count = 0, from = 0;
    for (size_t i = 0; i < text.size && count < LINES; i++) {
        if (text.at[i] == '\n') {
            line[count++] = (struct str){text.at + from, i - from};
            from = i + 1;
        }
    }
    return count;
}

START_TEST(the_settings_in_another_order_change_nothing)
{
    struct piped piped;
    struct str text = read_play(_i), line[LINES];
    const char *first = told_of(text, &piped);
    size_t count = lines_of(text, line), a = 0, b = count;
    while (a < b) { /* those of the play turn round */
        if (!is_setting(line[a])) {
            a++;
        } else if (!is_setting(line[b - 1])) {
            b--;
        } else {
            struct str swap = line[a];
            line[a++] = line[b - 1];
            line[--b] = swap;
        }
    }
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < count; i++) {
        strbuf_print(&out, "%.*s\n", STR_ARG(line[i]));
    }
    ck_assert_str_eq(told_of(strbuf_str(&out), &piped), first);
}
END_TEST

START_TEST(points_and_remarks_change_nothing)
{
    struct piped piped;
    struct str text = read_play(_i), line[LINES];
    const char *first = told_of(text, &piped);
    size_t count = lines_of(text, line);
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < count; i++) {
        bool sentence = line[i].size > 4 && memcmp(line[i].at, "    ", 4) == 0;
        strbuf_print(&out, "%.*s\n%s", STR_ARG(line[i]),
                     sentence ? "    point \"Low and quick.\"\n# a remark\n" : "");
    }
    ck_assert_str_eq(told_of(strbuf_str(&out), &piped), first);
}
END_TEST

START_TEST(another_play_in_the_file_changes_nothing)
{
    static const char other[] = "play \"Nobody else's\"\n  start five-out\n  defense man\n  step\n"
                                "    1 passes to 2\n";
    struct piped piped, before, after;
    struct str text = read_play(_i);
    const char *first = told_of(text, &piped);
    size_t mine = piped.findings.count;
    pipe_text(&arena, str_format(&arena, "%s%.*s", other, STR_ARG(text)), &before);
    pipe_text(&arena, str_format(&arena, "%.*s%s", STR_ARG(text), other), &after);
    ck_assert_str_eq(told(&before, before.findings.count - mine, before.findings.count), first);
    ck_assert_str_eq(told(&after, 0, mine), first);
    ck_assert_uint_eq(before.findings.count, after.findings.count);
}
END_TEST

int main(int argc, char **argv)
{
    folder = suite_argument(argc, argv, "FOLDER");
    Suite *suite = suite_create("check stable");
    TCase *all = tcase_create("stable");
    int count = PAIR * (int)check_count();
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, the_order_of_the_checks_changes_nothing, 0, count);
    tcase_add_loop_test(all, another_name_changes_nothing, 0, count);
    tcase_add_loop_test(all, the_settings_in_another_order_change_nothing, 0, count);
    tcase_add_loop_test(all, points_and_remarks_change_nothing, 0, count);
    tcase_add_loop_test(all, another_play_in_the_file_changes_nothing, 0, count);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
