/* SPDX-License-Identifier: MIT */
/* Lists of words are read by the longest that fits: turned round, each gives the same. */
#include "said.h"

#include "language/words/loose_read.h"
#include "language/words/vocabulary.h"

enum { WORDS = 12 };
static const struct {
    const char *line;
    const char *words[WORDS + 1]; /* as somebody might write them down */
    size_t tokens;                /* that are taken */
} lists[] = {
    {"they switch the screen", {"they switch", "they switch it", "they switch the screen"}, 4},
    {"they switch", {"they switch", "they switch it", "they switch the screen"}, 2},
    {"left on the clock", {"left", "left on clock", "on clock", "left on the shot clock"}, 4},
    {"five-out", {"five", "five out", "fiveout"}, 2},
    {"across the court", {"across", "over", "across court", "right over"}, 3},
    {"insider", {"in", "inside"}, 0},
    {"out of there", {"out", "out of", "up", "out of there", "out of the way"}, 3},
    {"up by two", {"up", "up by", "down by", "up by two"}, 3},
};

static size_t taken(const char *line, const char *const *words)
{
    struct cursor c = open_line(line, false);
    const struct token *from = c.at;
    bool found = take_among(&c, words);
    ck_assert(found == (c.at > from));
    return (size_t)(c.at - from);
}

START_TEST(the_order_of_a_list_of_words_says_nothing)
{
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        const char *turned[WORDS + 1] = {NULL};
        size_t count = 0;
        while (lists[i].words[count]) {
            count++;
        }
        for (size_t k = 0; k < count; k++) {
            turned[k] = lists[i].words[count - 1 - k];
        }
        ck_assert_uint_eq(taken(lists[i].line, lists[i].words), lists[i].tokens);
        ck_assert_uint_eq(taken(lists[i].line, turned), lists[i].tokens);
    }
}
END_TEST

START_TEST(the_order_of_ways_to_say_it_says_nothing)
{
    struct cursor c = open_line("big man at the top", false);
    ck_assert_ptr_eq(said_at(c.at, c.end, "big|big man|big guy"), c.at + 2);
    ck_assert_ptr_eq(said_at(c.at, c.end, "big guy|big man|big"), c.at + 2);
    ck_assert_ptr_null(said_at(c.at, c.end, "big guy|big girl"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("longest");
    TCase *all = tcase_create("longest");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, the_order_of_a_list_of_words_says_nothing);
    tcase_add_test(all, the_order_of_ways_to_say_it_says_nothing);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
