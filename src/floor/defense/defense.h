/* SPDX-License-Identifier: MIT */
/* defense: where a defender wants to be, from what he has seen. No clock, no state. */
#ifndef FLOOR_DEFENSE_DEFENSE_H
#define FLOOR_DEFENSE_DEFENSE_H

#include "floor/court/court.h"
#include "floor/play/play.h"

/* The man rules: where the defender of the player at `man` stands with the ball at `ball`.
 * Continuous in all inputs. */
struct vec2 defense_man(const struct court *court, enum man_style style, struct vec2 man, struct vec2 ball,
                        bool has_ball);

enum strategy { STRATEGY_NONE, STRATEGY_TRAIL, STRATEGY_OVER, STRATEGY_UNDER, STRATEGY_OVERPLAY };

#endif
