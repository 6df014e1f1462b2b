/* SPDX-License-Identifier: MIT */
/* vec: a growing array in an arena. `VEC(struct task) tasks;` then VEC_PUSH(arena, &tasks, task).
 */
#ifndef BASE_VEC_H
#define BASE_VEC_H

#include "base/arena.h"

#define VEC(type)                                                                                  \
    struct {                                                                                       \
        type *at;                                                                                  \
        size_t count, room;                                                                        \
    }

/* Room for the first elements: most lists of large ones, such as the sentences of a line, hold one.
 */
#define VEC_FIRST(size) ((size_t)((size) > 128 ? 1 : (size) > 32 ? 4 : 8))

/* Adds one element, by value. */
#define VEC_PUSH(arena, vec, value)                                                                \
    do {                                                                                           \
        if ((vec)->count == (vec)->room) {                                                         \
            size_t room_ = (vec)->room ? (vec)->room * 2 : VEC_FIRST(sizeof *(vec)->at);           \
            (vec)->at = arena_grow((arena), (vec)->at, (vec)->count * sizeof *(vec)->at,           \
                                   room_ * sizeof *(vec)->at);                                     \
            (vec)->room = room_;                                                                   \
        }                                                                                          \
        (vec)->at[(vec)->count++] = (value);                                                       \
    } while (0)

#endif
