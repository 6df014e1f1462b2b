/* SPDX-License-Identifier: MIT */
/* runs: the runs of a book's plays. They are by far the largest part of it: while there is room
 * they are kept; those of a book beyond that are let go once they are checked, and made again, the
 * same to the last bit, for whoever asks to see one. */
#include "program/api/handle.h"

void runs_keep_or_release(struct courtwright *book, struct compiled *compiled,
                          struct arena_mark before)
{
    if (compiled->ran && book->runs.taken <= LIMIT_RUNS_BYTES) {
        return;
    }
    compiled->run = NULL;
    for (size_t i = 0; i < compiled->diagrams.count; i++) {
        compiled->diagrams.at[i].segment = NULL;
    }
    arena_release(&book->runs, before);
}

const struct compiled *runs_again(struct arena *scratch, const struct courtwright *book,
                                  const struct compiled *compiled)
{
    if (compiled->run || !compiled->ran) {
        return compiled;
    }
    struct compiled *again = arena_new(scratch, struct compiled);
    struct diags *said_before = arena_new(scratch, struct diags);
    diags_init(said_before, scratch);
    *again = *compiled;
    again->run = sim_run(scratch, &book->sources, compiled->play, said_before);
    again->diagrams = (diagram_list){0};
    scene_diagrams(scratch, again->run, &again->diagrams);
    return again;
}

enum courtwright_status runs_asked_for(struct arena *scratch, const struct courtwright *book,
                                       const size_t *asked, size_t count, struct ran_plays *ran)
{
    count = asked ? count : book->play_count;
    *ran = (struct ran_plays){arena_array(scratch, const struct compiled *, count), 0};
    for (size_t i = 0; i < count; i++) {
        size_t index = asked ? asked[i] : i;
        if (index >= book->play_count) {
            return COURTWRIGHT_NO_SUCH;
        }
        if (book->plays[index].ran) {
            ran->at[ran->count++] = &book->plays[index];
        } else if (asked) {
            return COURTWRIGHT_BROKEN;
        }
    }
    return COURTWRIGHT_OK;
}

const struct compiled *runs_find(const struct courtwright *book, const struct play *play)
{
    for (size_t i = 0; i < book->play_count; i++) {
        if (book->plays[i].play == play) {
            return &book->plays[i];
        }
    }
    return NULL;
}

const struct run *runs_of_play(void *ctx, struct arena *arena, const struct play *play)
{
    const struct compiled *compiled = runs_find(ctx, play);
    return compiled ? runs_again(arena, ctx, compiled)->run : NULL;
}
