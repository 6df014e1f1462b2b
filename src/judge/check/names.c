/* SPDX-License-Identifier: MIT */
/* names: the checks that a book names, in `limit` and `accept`, held against the table: an unknown
 * name, a unit that does not suit, a check that is not built yet. Takes plays, gives diagnostics.
 */
#include "judge/check/look.h"

#include <string.h>

#include "base/real.h"

/* Said to be coming; a line that names one is not an error. */
static const char *const planned[] = {
#define PLANNED(id) id,
#include "judge/check/planned.def"
#undef PLANNED
    NULL};

static bool is_planned(struct str id)
{
    for (size_t i = 0; planned[i]; i++) {
        if (str_equal_fold(id, str_of(planned[i]))) {
            return true;
        }
    }
    return false;
}

/* Said of practices, not of runs: their rows are those of the diagnostics. */
static bool is_of_practice(struct str id)
{
    for (size_t i = 0; str_starts(id, "practice.") && i < DIAG_COUNT; i++) {
        if (str_equal_fold(id, str_of(diag_rows[i].id))) {
            return true;
        }
    }
    return false;
}

static const char *nearest(struct arena *arena, struct str id)
{
    const char **names = arena_array(arena, const char *, check_count() + 1);
    for (size_t i = 0; i < check_count(); i++) {
        names[i] = check_at(i)->id;
    }
    return words_nearest(id, names);
}

/* The row, or NULL when something was said about the name. */
static const struct check_row *named(struct diags *diags, struct str id, struct span span)
{
    const struct check_row *row = check_find(id);
    if (row) {
        return row;
    }
    if (is_planned(id)) {
        struct diag *diag =
            diag_add(diags, DIAG_CHECK_NOT_BUILT, span,
                     "the check %.*s is not built yet: this line has no effect", STR_ARG(id));
        diag_help(diags, diag, "it may stay; list checks prints those that are built");
        return NULL;
    }
    struct diag *diag =
        diag_add(diags, DIAG_CHECK_UNKNOWN, span, "there is no check %.*s", STR_ARG(id));
    const char *near = nearest(diags->arena, id);
    if (near) {
        diag_help(diags, diag, "did you mean %s?", near);
    } else {
        diag_help(diags, diag, "list checks prints their names, such as space.close");
    }
    return NULL;
}

static bool suits(enum unit unit, const char *wanted)
{
    switch (unit) {
    case UNIT_FEET:
    case UNIT_METRES:
    case UNIT_STEPS:
        return strcmp(wanted, "ft") == 0;
    case UNIT_SECONDS:
    case UNIT_MINUTES:
        return strcmp(wanted, "s") == 0;
    case UNIT_DEGREES:
        return strcmp(wanted, "degrees") == 0;
    case UNIT_PERCENT:
        return strcmp(wanted, "%") == 0;
    case UNIT_NONE:
        break;
    }
    return false;
}

/* Only the time without water has a limit that a coach sets. */
static void name_practice_limit(struct diags *diags, const struct limit_entry *limit)
{
    if (!str_equal_fold(limit->check, STR("practice.break"))) {
        diag_add(diags, DIAG_CHECK_NO_LIMIT, limit->span, "%.*s has no limit to set",
                 STR_ARG(limit->check));
    } else if (!suits(limit->unit, "s")) {
        struct diag *diag = diag_add(diags, DIAG_CHECK_UNIT, limit->span,
                                     "practice.break is measured in min, and this limit is not");
        diag_help(diags, diag, "write limit practice.break 20 min");
    }
}

/* What a limit may be, by its unit: more would be off every floor, over every play, or no angle; to
 * 0 ft a check of distance can be set, and is then silent. */
static const struct measured {
    const char *unit, *example;
    double least, most; /* metres, seconds, radians, shares */
    const char *range;
} measured[] = {
    {"ft", "10 ft", 0, 94 * FEET, "0 to 94 ft, the length of a floor"},
    {"s", "3 s", .1, 60, "0.1 to 60 s"},
    {"degrees", "40 degrees", REAL_PI / 180, REAL_PI, "1 to 180 degrees"},
    {"%", "60 %", .01, 1, "1 to 100 %"},
};

static const struct measured *measured_in(const char *unit)
{
    size_t i = 0;
    while (i + 1 < sizeof measured / sizeof *measured && strcmp(measured[i].unit, unit) != 0) {
        i++;
    }
    return &measured[i];
}

static void name_limit(struct diags *diags, const struct limit_entry *limit)
{
    if (is_of_practice(limit->check)) {
        name_practice_limit(diags, limit);
        return;
    }
    const struct check_row *row = named(diags, limit->check, limit->span);
    if (!row) {
        return;
    }
    struct diag *diag = NULL;
    const struct measured *as = measured_in(row->unit);
    double least = row->limit > 0 ? as->least : 0, hair = 1e-9;
    if (!*row->unit) {
        diag_add(diags, DIAG_CHECK_NO_LIMIT, limit->span, "%s has no limit to set", row->id);
    } else if (!suits(limit->unit, row->unit)) {
        diag = diag_add(diags, DIAG_CHECK_UNIT, limit->span,
                        "%s is measured in %s, and this limit is not", row->id, row->unit);
    } else if (!(limit->value >= least - hair && limit->value <= as->most + hair)) {
        diag = diag_add(diags, DIAG_CHECK_RANGE, limit->span,
                        "a limit of %s goes from %s; this one does not", row->id, as->range);
    }
    if (diag) {
        diag_help(diags, diag, "write limit %s %s", row->id, as->example);
    }
}

static void name_accepts(struct diags *diags, const point_list *accepts)
{
    for (size_t i = 0; i < accepts->count; i++) {
        const struct point *point = &accepts->at[i];
        const struct check_row *row = named(diags, point->word, point->span);
        if (row && row->severity == SEVERITY_ERROR) {
            struct diag *diag = diag_add(diags, DIAG_CHECK_NO_ACCEPT, point->span,
                                         "%s is an error and cannot be accepted", row->id);
            diag_help(diags, diag, "take the line out and change the sentence");
        } else if (row && point->text.size == 0) {
            struct diag *diag = diag_add(diags, DIAG_CHECK_NO_REASON, point->span,
                                         "this accept does not say why %s is on purpose", row->id);
            diag_help(diags, diag, "write the reason: accept %s \"they cross\"", row->id);
        }
    }
}

void check_names(const struct play *play, struct diags *diags)
{
    for (size_t i = 0; i < play->limits.count; i++) {
        name_limit(diags, &play->limits.at[i]);
    }
    name_accepts(diags, &play->accepts);
    for (size_t s = 0; s < play->steps.count; s++) {
        const struct step *step = &play->steps.at[s];
        name_accepts(diags, &step->accepts);
        for (size_t b = 0; b < step->branches.count; b++) {
            name_accepts(diags, &step->branches.at[b].accepts);
        }
    }
}
