/* SPDX-License-Identifier: MIT */
/* Lines read loosely: each says so, once, and what tidy prints of it is read by the grammar itself,
 * to the same. */
#include "corpus.h"
#include "suite.h"

static size_t notes(const struct corpus_read *read)
{
    size_t count = 0;
    for (size_t i = 0; i < read->diags.all.count; i++) {
        count += read->diags.all.at[i].row == &diag_rows[DIAG_TEXT_READ_AS];
    }
    return count;
}

static const char *path;

START_TEST(a_line_read_loosely_says_so_once_and_its_tidy_form_is_plain)
{
    corpus_lines lines = {0};
    ck_assert(corpus_open(&arena, path, &lines));
    size_t taken = 0;
    for (size_t i = 0; i < lines.count; i++) {
        struct corpus_read said, again;
        corpus_read(&arena, corpus_text(&arena, &lines.at[i], lines.at[i].written), &said);
        if (lines.at[i].refused) {
            ck_assert_msg(notes(&said) == 0, "line %d", lines.at[i].number);
            continue;
        }
        corpus_read(&arena, said.tidy, &again);
        ck_assert_msg(notes(&said) == 1, "line %d: %zu notes", lines.at[i].number, notes(&said));
        ck_assert_msg(notes(&again) == 0, "line %d", lines.at[i].number);
        ck_assert_msg(str_equal(said.tidy, again.tidy), "line %d", lines.at[i].number);
        taken++;
    }
    ck_assert(taken >= 10);
}
END_TEST

int main(int argc, char **argv)
{
    path = suite_argument(argc, argv, "the corpus of lines read loosely");
    Suite *suite = suite_create("read as");
    TCase *tcase = tcase_create("read as");
    tcase_add_checked_fixture(tcase, open_arena, close_arena);
    tcase_add_test(tcase, a_line_read_loosely_says_so_once_and_its_tidy_form_is_plain);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
