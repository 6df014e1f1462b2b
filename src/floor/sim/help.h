/* SPDX-License-Identifier: MIT */
/* help: who helps against a drive, and where; shared by help.c and help_pick.c. Private to sim. */
#ifndef FLOOR_SIM_HELP_H
#define FLOOR_SIM_HELP_H

#include "floor/sim/guard.h"

/* Who can be before him on his way to the rim, or BODY_NONE. */
body help_who(const struct world *world, body danger, const struct mover *seen);
/* Where the helper meets him, as soon as he can. */
struct aim help_meet(const struct world *world, body helper, const struct mover *seen);
/* Who sinks to the man whom the helper has left, or BODY_NONE; and where he goes. */
body help_second(const struct world *world);
struct aim help_sink(const struct mover *left, const struct mover *own, struct vec2 ball);

#endif
