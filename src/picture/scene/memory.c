/* SPDX-License-Identifier: MIT */
/* memory: what was moved in crowded pictures, for the next ones of the same diagram and size: a
 * season's pages for every player show each picture once for each of them. */
#include "picture/scene/again.h"

enum { PICTURES = 256 }; /* the crowded ones of a season at two sizes; then the oldest gives way */

struct remembered {
    const struct play *play; /* NULL: nothing yet */
    int step, branch;
    struct scene_options options;
    struct nudges nudges;
};
struct scene_memory {
    struct remembered at[PICTURES];
    size_t next;
};

struct scene_memory *scene_memory_new(struct arena *arena)
{
    return arena_new(arena, struct scene_memory);
}

/* Pictures on one floor have a frame that is told by a list, which another may take the place of.
 */
static bool is_remembered(const struct scene_options *options)
{
    return options->memory && !options->together;
}

/* All that decides where marks stand. Whose page it is, theme, names, findings, words over and
 * under the floor decide nothing of it; theirs are pointers besides, to what may be gone. */
static bool is_alike(const struct scene_options *a, const struct scene_options *b)
{
    return a->width == b->width && a->below == b->below && a->named == b->named &&
           a->plain == b->plain && a->order == b->order && a->hide_defense == b->hide_defense &&
           a->beads == b->beads;
}

const struct nudges *memory_find(const struct diagram *diagram, const struct scene_options *options)
{
    for (size_t i = 0; is_remembered(options) && i < PICTURES; i++) {
        const struct remembered *known = &options->memory->at[i];
        if (known->play == diagram->segment->play && known->step == diagram->step &&
            known->branch == diagram->branch && is_alike(&known->options, options)) {
            return &known->nudges;
        }
    }
    return NULL;
}

void memory_keep(const struct diagram *diagram, const struct scene_options *options,
                 const struct nudges *nudges)
{
    if (is_remembered(options)) {
        struct scene_memory *memory = options->memory;
        memory->at[memory->next++ % PICTURES] = (struct remembered){
            diagram->segment->play, diagram->step, diagram->branch, *options, *nudges};
    }
}
