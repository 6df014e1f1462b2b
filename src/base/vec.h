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

/* Adds one element, by value. */
#define VEC_PUSH(arena, vec, value)                                                                \
    do {                                                                                           \
        if ((vec)->count == (vec)->room) {                                                         \
            size_t room_ = (vec)->room ? (vec)->room * 2 : 8;                                      \
            (vec)->at = arena_grow((arena), (vec)->at, (vec)->count * sizeof *(vec)->at,           \
                                   room_ * sizeof *(vec)->at);                                     \
            (vec)->room = room_;                                                                   \
        }                                                                                          \
        (vec)->at[(vec)->count++] = (value);                                                       \
    } while (0)

#endif
