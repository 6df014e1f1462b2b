/* SPDX-License-Identifier: MIT */
/* sizes: the sizes of all marks at a scale, from the rows of sizes.def. */
#include "picture/scene/drawing.h"

struct sizes sizes_of(double k)
{
    struct sizes sizes = {.k = k, .small = k < SCENE_SMALL};
#define SIZE(name, feet, least) sizes.name = real_max((feet)*k, (least));
#include "picture/scene/sizes.def"
#undef SIZE
    return sizes;
}
