/* SPDX-License-Identifier: MIT */
/* theme: the three palettes, the columns of roles.def. */
#include "picture/scene/scene.h"

static const struct theme_row rows[THEME_COUNT] = {
#define ROLE(name, word, print, screen, dark) [ROLE_##name] = print,
    [THEME_PRINT] = {"print",
                     {
#include "picture/scene/roles.def"
                     },
                     false,
                     false},
#undef ROLE
#define ROLE(name, word, print, screen, dark) [ROLE_##name] = screen,
    [THEME_SCREEN] = {"screen",
                      {
#include "picture/scene/roles.def"
                      },
                      true,
                      true},
#undef ROLE
#define ROLE(name, word, print, screen, dark) [ROLE_##name] = dark,
    [THEME_DARK] = {"dark",
                    {
#include "picture/scene/roles.def"
                    },
                    true,
                    true},
#undef ROLE
};

const struct theme_row *theme_row(enum theme theme)
{
    return &rows[theme < THEME_COUNT ? theme : THEME_PRINT];
}

bool theme_find(struct str word, enum theme *theme)
{
    for (int i = 0; i < THEME_COUNT; i++) {
        if (str_is(word, rows[i].word)) {
            *theme = (enum theme)i;
            return true;
        }
    }
    return false;
}
