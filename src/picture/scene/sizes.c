/* SPDX-License-Identifier: MIT */
/* sizes: the sizes of all marks at a scale, from the rows of sizes.def. */
#include "picture/scene/drawing.h"

#define CARD (151.2 / 50.4) /* points a foot of half a floor on a bench card */

struct sizes sizes_as_card(double k)
{
    struct sizes sizes = sizes_of(CARD);
    double grow = k / CARD;
    sizes.k = k;
#define SIZE(name, feet, least) sizes.name *= grow;
#include "picture/scene/sizes.def"
#undef SIZE
    return sizes;
}

struct sizes sizes_of(double k)
{
    struct sizes sizes = {.k = k, .small = k < SCENE_SMALL};
#define SIZE(name, feet, least) sizes.name = real_max((feet)*k, (least));
#include "picture/scene/sizes.def"
#undef SIZE
    return sizes;
}
