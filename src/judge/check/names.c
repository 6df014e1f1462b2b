/* SPDX-License-Identifier: MIT */
/* names: the checks that a book names, in `limit` and `accept`, held against the table: an unknown
 * name, a unit that does not suit, a check that is not built yet. Takes plays, gives diagnostics.
 */
#include "judge/check/look.h"

#include <string.h>

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
    if (!*row->unit) {
        diag_add(diags, DIAG_CHECK_NO_LIMIT, limit->span, "%s has no limit to set", row->id);
    } else if (!suits(limit->unit, row->unit)) {
        struct diag *diag =
            diag_add(diags, DIAG_CHECK_UNIT, limit->span,
                     "%s is measured in %s, and this limit is not", row->id, row->unit);
        diag_help(diags, diag, "write limit %s %s", row->id,
                  strcmp(row->unit, "ft") == 0  ? "10 ft"
                  : strcmp(row->unit, "s") == 0 ? "3 s"
                                                : "40 degrees");
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
