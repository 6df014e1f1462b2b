/* SPDX-License-Identifier: MIT */
/* lacks: what a defender's word needs to come about, and what of it this way through the step has
 * not. Takes the sentences that are still to come and who guards whom; says and changes nothing.
 * Private to sim. */
#ifndef FLOOR_SIM_LACKS_H
#define FLOOR_SIM_LACKS_H

#include "floor/sim/world.h"

enum lack {
    LACK_NONE,
    LACK_USER,    /* his man uses no screen */
    LACK_SCREEN,  /* his man sets none */
    LACK_PICK,    /* his man is at none on the ball */
    LACK_PAIR,    /* nor with the other one's man */
    LACK_PART,    /* there is one, and whom he names has no part in it */
    LACK_MOVE,    /* whom it is about goes nowhere */
    LACK_BALL,    /* never has the ball */
    LACK_NO_BALL, /* always has it */
    LACK_SHOT,    /* nobody shoots */
    LACK_CATCH,   /* has it from the start, with him at hand: there is no way to come */
    LACK_STEP,    /* has no part in the step */
    LACK_DRIVE,   /* nobody drives at the rim; more of it is known when the step is over */
    LACK_OWN,     /* nobody but his own man does */
    LACK_THREAT,  /* nor cuts, nor has the ball near the rim */
    LACK_LEAVING, /* he is with his man already: known when he has come to him */
    LACK_COUNT
};
/* A defender's verb with whom it is about. */
struct word {
    enum verb verb;
    body self, man;   /* who does it, and whom he guards; BODY_NONE: he has an area */
    body whom, other; /* an attacker who is named; the other defender's man; or BODY_NONE */
    bool has_place;
    bool is_read; /* a sentence has him do it, whatever for; a read tells what is seen, and why */
};

enum lack lacks(const struct world *world, const struct word *word);
/* What a duty has waited for, or tried, in vain, now that the step is over. */
enum lack lacks_still(enum strategy strategy);
/* Who could do it instead: whose man is the first to be screened, or to screen; or BODY_NONE. */
body lacks_instead(const struct world *world, enum lack lack);

#endif
