/* SPDX-License-Identifier: MIT */
/* theme: the three palettes as rows. Each pair of colours that carries meaning meets WCAG AA
 * (text 4.5, lines 3) on page, floor and lane; see tests/unit/scene. */
#include "picture/scene/scene.h"

static const struct theme_row rows[THEME_COUNT] = {
    [THEME_PRINT] = {"print",
                     {[ROLE_PAGE] = 0xFFFFFF,
                      [ROLE_FLOOR] = 0xFFFFFF,
                      [ROLE_LANE] = 0xFFFFFF,
                      [ROLE_INK] = 0x000000,
                      [ROLE_TEXT] = 0x000000,
                      [ROLE_SOFT] = 0x4D4D4D,
                      [ROLE_DEFENDER] = 0x595959,
                      [ROLE_ACCENT] = 0x00598A,
                      [ROLE_WARNING] = 0x000000,
                      [ROLE_COURT] = 0x8C8C8C,
                      [ROLE_RULE] = 0x8C8C8C,
                      [ROLE_HAIRLINE] = 0xC8C8C8,
                      [ROLE_TINT] = 0xF0F0F0,
                      [ROLE_ORDER] = 0x4D4D4D,
                      [ROLE_ORDER_TEXT] = 0xFFFFFF},
                     false,
                     false},
    [THEME_SCREEN] = {"screen",
                      {[ROLE_PAGE] = 0xFFFFFF,
                       [ROLE_FLOOR] = 0xFFFFFF,
                       [ROLE_LANE] = 0xF0F3F5,
                       [ROLE_INK] = 0x14181B,
                       [ROLE_TEXT] = 0x14181B,
                       [ROLE_SOFT] = 0x50585E,
                       [ROLE_DEFENDER] = 0x566069,
                       [ROLE_ACCENT] = 0x00598A,
                       [ROLE_WARNING] = 0x9A3C00,
                       [ROLE_COURT] = 0x83898E,
                       [ROLE_RULE] = 0x8A9299,
                       [ROLE_HAIRLINE] = 0xD5D9DC,
                       [ROLE_TINT] = 0xF4F6F7,
                       [ROLE_ORDER] = 0x3B444B,
                       [ROLE_ORDER_TEXT] = 0xFFFFFF},
                      true,
                      true},
    [THEME_DARK] = {"dark",
                    {[ROLE_PAGE] = 0x121619,
                     [ROLE_FLOOR] = 0x1A2024,
                     [ROLE_LANE] = 0x20282D,
                     [ROLE_INK] = 0xF2F5F7,
                     [ROLE_TEXT] = 0xE8ECEF,
                     [ROLE_SOFT] = 0xA9B4BC,
                     [ROLE_DEFENDER] = 0xB3BEC6,
                     [ROLE_ACCENT] = 0x79C6F0,
                     [ROLE_WARNING] = 0xF2D95C,
                     [ROLE_COURT] = 0x76828B,
                     [ROLE_RULE] = 0x6D7982,
                     [ROLE_HAIRLINE] = 0x323C43,
                     [ROLE_TINT] = 0x1A2024,
                     [ROLE_ORDER] = 0xC3CDD4,
                     [ROLE_ORDER_TEXT] = 0x121619},
                    true,
                    true},
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
