/* SPDX-License-Identifier: MIT */
/* caution: the words that stand with every picture of contact, in our own words: the short form for
 * one picture, the lines of a page. The coach's own lines are added behind them, never put in their
 * place. */
#include "language/tell/tell.h"

#include "base/vec.h"

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

struct str tell_page_caution(struct arena *arena, int line, const char *page)
{
    return line == 0 ? STR("Screens: feet still, elbows in; a step behind a standing player, up to "
                           "two off a moving one. Young or new: no contact at first.")
                     : str_format(arena,
                                  "Hit to the head: stop, tell an adult, sit out until medically "
                                  "cleared. Local rules, league and medical staff come before "
                                  "this %s.",
                                  page);
}

struct str tell_card_caution(void)
{
    return STR("Feet still, elbows in. Head hit: out.");
}

struct str tell_young_caution(void)
{
    return STR("Under 12 and mini: local rules may bar zone defense, presses or screens. Ask "
               "before you teach it.");
}

bool tell_is_young(const struct play *play)
{
    return play->level == LEVEL_U12 || play->rules == COURT_MINI;
}

struct tell_care tell_care_of(struct arena *arena, const struct play *const *plays, size_t count)
{
    struct tell_care care = {.young = false};
    VEC(struct str) own = {0};
    for (size_t i = 0; i < count; i++) {
        care.young = care.young || tell_is_young(plays[i]);
        for (size_t k = 0; k < plays[i]->cautions.count; k++) {
            struct str line = plays[i]->cautions.at[k];
            bool known = false;
            for (size_t j = 0; j < own.count; j++) {
                known = known || str_equal(own.at[j], line);
            }
            if (!known) {
                VEC_PUSH(arena, &own, line);
            }
        }
    }
    care.own = own.at;
    care.own_count = own.count;
    return care;
}
