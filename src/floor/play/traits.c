/* SPDX-License-Identifier: MIT */
/* traits: see traits.def. */
#include "floor/play/resolve.h"

#include <string.h>

static const char *const traits[VERB_COUNT] = {
#define TRAITS(verb, letters) [VERB_##verb] = letters,
#include "floor/play/traits.def"
#undef TRAITS
};

bool verb_is(enum verb verb, char trait)
{
    return traits[verb] && strchr(traits[verb], trait);
}
