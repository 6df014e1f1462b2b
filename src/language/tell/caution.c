/* SPDX-License-Identifier: MIT */
/* caution: the short form of the words that stand with every picture of contact, in our own words.
 * The coach's own lines are added behind them, never put in their place. */
#include "language/tell/tell.h"

struct str tell_caution(struct arena *arena, const struct play *play)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_text(&out,
                "Caution: feet still, elbows in. Hit to the head: out until medically cleared. "
                "Local rules, league and medical staff come before this picture.");
    for (size_t i = 0; i < play->cautions.count; i++) {
        strbuf_char(&out, ' ');
        strbuf_add(&out, play->cautions.at[i]);
    }
    return strbuf_str(&out);
}
