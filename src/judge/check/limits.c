/* SPDX-License-Identifier: MIT */
/* limits: what a check allows: by the play's own line, else the level, the rules in force, the row.
 */
#include <stddef.h>
#include <string.h>

#include "base/real.h"
#include "judge/check/look.h"

#define BY_LEVEL(...)
static const struct check_rule rules[] = {
#define BY_RULES(id, code, field, source)                                                          \
    {id, COURT_##code, offsetof(struct court, field), EXPLAINED(source)},
#include "judge/check/limits.def"
#undef BY_RULES
};
#undef BY_LEVEL

static const struct level_limit {
    const char *id;
    enum level_code level;
    double limit;
} levels[] = {
#define BY_RULES(...)
#define BY_LEVEL(id, level, limit, source) {id, LEVEL_##level, limit},
#include "judge/check/limits.def"
#undef BY_LEVEL
#undef BY_RULES
};

const struct check_rule *check_rule(const struct check_row *row, enum court_code code)
{
    for (size_t i = 0; i < sizeof rules / sizeof *rules; i++) {
        if (rules[i].rules == code && strcmp(rules[i].id, row->id) == 0) {
            return &rules[i];
        }
    }
    return NULL;
}

double check_rule_seconds(const struct check_rule *rule)
{
    double seconds;
    memcpy(&seconds, (const char *)court_of(rule->rules) + rule->field, sizeof seconds);
    return seconds;
}

static double unwritten(const struct play *play, const struct check_row *row)
{
    for (size_t i = 0; i < sizeof levels / sizeof *levels; i++) {
        if (levels[i].level == play->level && strcmp(levels[i].id, row->id) == 0) {
            return levels[i].limit;
        }
    }
    for (int code = 0; code < COURT_COUNT; code++) {
        const struct check_rule *rule = check_rule(row, (enum court_code)code);
        if (rule && court_of((enum court_code)code) == play->court) {
            return check_rule_seconds(rule);
        }
    }
    return row->limit;
}

double look_limit(const struct play *play, const struct check_row *row, bool *written)
{
    double limit = unwritten(play, row);
    *written = false;
    for (size_t i = 0; i < play->limits.count; i++) {
        if (str_equal_fold(play->limits.at[i].check, str_of(row->id))) {
            *written = true;
            limit = play->limits.at[i].value;
        }
    }
    return limit;
}
