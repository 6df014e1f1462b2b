/* SPDX-License-Identifier: MIT */
/* Memory taken piece by piece, small and large, through chunks of every size. */
#include "base/arena.h"
#include "base/heap.h"
#include "suite.h"

#include <stdalign.h>
#include <stdint.h>
#include <string.h>

enum { PIECES = 4000, LARGEST = 5000 };

static size_t size_of(size_t i)
{
    return i * 2654435761u % LARGEST + 1;
}

static bool all_are(const unsigned char *at, size_t size, unsigned char value)
{
    size_t same = 0;
    while (same < size && at[same] == value) {
        same++;
    }
    return same == size;
}

START_TEST(pieces_are_zeroed_aligned_and_never_shared)
{
    static unsigned char *pieces[PIECES];
    for (size_t i = 0; i < PIECES; i++) { /* 10 MB: past the largest chunk */
        pieces[i] = arena_take(&arena, size_of(i));
        ck_assert_uint_eq((uintptr_t)pieces[i] % alignof(max_align_t), 0);
        ck_assert(all_are(pieces[i], size_of(i), 0));
        memset(pieces[i], (int)(i % 255 + 1), size_of(i));
    }
    for (size_t i = 0; i < PIECES; i++) {
        ck_assert(all_are(pieces[i], size_of(i), (unsigned char)(i % 255 + 1)));
    }
}
END_TEST

START_TEST(one_piece_may_be_larger_than_any_chunk)
{
    size_t size = 3 * (size_t)HEAP_TOGETHER + 5;
    unsigned char *piece = arena_take(&arena, size);
    ck_assert(piece[0] == 0 && piece[size / 2] == 0 && piece[size - 1] == 0);
    memset(piece, 7, size);
    unsigned char *next = arena_take(&arena, 1);
    ck_assert(*next == 0);
    ck_assert_uint_lt(arena.taken, size + 2 * (size_t)HEAP_TOGETHER);
}
END_TEST

START_TEST(what_was_taken_since_a_mark_is_given_back)
{
    char *kept = arena_copy(&arena, "kept", 4);
    struct arena_mark mark = arena_mark(&arena);
    size_t taken = arena.taken;
    for (int round = 0; round < 3; round++) {
        memset(arena_take(&arena, 40 * (size_t)HEAP_TOGETHER), 1, 40 * (size_t)HEAP_TOGETHER);
        arena_release(&arena, mark);
        ck_assert_uint_eq(arena.taken, taken);
    }
    ck_assert_str_eq(kept, "kept");
}
END_TEST

START_TEST(past_its_limit_it_leaves_by_the_escape)
{
    static struct arena small;
    jmp_buf escape;
    arena_init(&small, NULL, &escape);
    small.limit = 100 * 1024;
    int why = setjmp(escape);
    if (why == 0) {
        for (int i = 0; i < 200; i++) {
            arena_take(&small, 1024);
        }
    }
    ck_assert_int_eq(why, ARENA_LIMIT);
    ck_assert_uint_le(small.taken, small.limit);
    arena_finish(&small);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("arena");
    TCase *all = tcase_create("arena");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, pieces_are_zeroed_aligned_and_never_shared);
    tcase_add_test(all, one_piece_may_be_larger_than_any_chunk);
    tcase_add_test(all, what_was_taken_since_a_mark_is_given_back);
    tcase_add_test(all, past_its_limit_it_leaves_by_the_escape);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
