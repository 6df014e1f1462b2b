/* SPDX-License-Identifier: MIT */
/* mark_words: what classes and roles are called, in dumps and as classes of live SVG. */
#include "picture/scene/scene.h"

static const char *const class_words[CLASS_COUNT] = {
    [CLASS_PAGE] = "page",
    [CLASS_COURT] = "court",
    [CLASS_BASKET] = "basket",
    [CLASS_CLEAR] = "clear",
    [CLASS_MOVE] = "move",
    [CLASS_PASS] = "pass",
    [CLASS_DRIBBLE] = "dribble",
    [CLASS_SCREEN] = "screen",
    [CLASS_HANDOFF] = "hand-off",
    [CLASS_SHOT] = "shot",
    [CLASS_DEFENSE_MOVE] = "defense-move",
    [CLASS_CONE] = "cone",
    [CLASS_LINE_OF_PLAYERS] = "line-of-players",
    [CLASS_BEAD] = "bead",
    [CLASS_END] = "end",
    [CLASS_DEFENDER] = "defender",
    [CLASS_PLAYER] = "player",
    [CLASS_BALL] = "ball",
    [CLASS_ORDER] = "order",
    [CLASS_FINDING] = "finding",
    [CLASS_CAPTION] = "caption",
};
static const char *const role_words[ROLE_COUNT] = {
    [ROLE_NONE] = "none",
#define ROLE(name, word, print, screen, dark) [ROLE_##name] = word,
#include "picture/scene/roles.def"
#undef ROLE
};

const char *scene_class_word(enum scene_class class)
{
    return class_words[class];
}

const char *scene_role_word(enum role role)
{
    return role_words[role];
}
