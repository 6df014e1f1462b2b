/* SPDX-License-Identifier: MIT */
/* hash: one number for each play and one for all: every sample, facing, moment and span of the ball
 * to the last bit. Another compiler, or another level of optimization, must print the same.
 *   hash [-g PLAYS] FILE... */
#include <stdio.h>

#include "base/rng.h"
#include "floor/sim/sim.h"
#include "plays.h"

static uint64_t add(uint64_t hash, const void *bytes, size_t size)
{
    return hash_bytes(hash, bytes, (uint64_t)size);
}

static uint64_t add_number(uint64_t hash, double number)
{
    return add(hash, &number, sizeof number);
}

static uint64_t add_point(uint64_t hash, struct vec2 p)
{
    return add_number(add_number(hash, p.x), p.y);
}

static uint64_t add_tracks(uint64_t hash, const struct segment *segment)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        const struct track *track = &segment->track[b];
        for (size_t i = 0; track->sample && i < segment->samples; i++) {
            hash = add_point(add_point(hash, track->sample[i].at), track->sample[i].v);
            hash = add_number(hash, (double)track->facing[i]);
        }
    }
    return hash;
}

static uint64_t add_segment(uint64_t hash, const struct segment *segment)
{
    hash = add_tracks(add_number(hash, segment->duration), segment);
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task_record *record = &segment->record[i];
        for (int m = 0; m < MOMENT_COUNT; m++) {
            hash = add_number(hash, record->time[m]);
        }
        hash = add_point(add_point(add_point(hash, record->from), record->to), record->on);
        hash = add_number(add_number(hash, record->facing), record->gap);
    }
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        hash = add_number(add_number(hash, span->from), span->to);
        hash = add_point(add_point(hash, span->start), span->end);
    }
    return hash;
}

static void one_play(void *ctx, struct arena *arena, const struct sources *sources,
                     const struct play *play)
{
    uint64_t *all = ctx, hash = HASH_SEED;
    struct diags diags;
    diags_init(&diags, arena);
    const struct run *run = sim_run(arena, sources, play, &diags);
    for (size_t i = 0; i < run->segments.count; i++) {
        hash = add_segment(hash, run->segments.at[i]);
    }
    printf("%016llx %.*s\n", (unsigned long long)hash, STR_ARG(play->name));
    *all = add(*all, &hash, sizeof hash);
}

int main(int argc, char **argv)
{
    uint64_t all = HASH_SEED;
    plays_each(argc, argv, one_play, &all);
    printf("%016llx all\n", (unsigned long long)all);
    return 0;
}
