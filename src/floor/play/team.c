/* SPDX-License-Identifier: MIT */
/* team: the roster and its lineups, of every `team` block of the book, and what is wrong with them
 * taken together: a number that two wear, a row that stands twice, a lineup's name that is not on
 * the roster, one player at two spots, two at one, a spot where nobody stands. */
#include "floor/play/resolve.h"

enum { SPOTS = 5 };    /* of a play */
#define FILLED_LEAST 3 /* with fewer the roster is not written yet: nobody is missed (ours) */

static void beside(struct diag *diag, struct span other)
{
    if (diag) {
        diag->other = other;
    }
}

/* ---- gathering ---- */

static void gather_player(struct maker *m, const struct form *form)
{
    struct team *team = &m->out->team;
    struct roster_entry entry = {.number = form->number,
                                 .name = form->title,
                                 .role = form->roster->role,
                                 .jersey = form->roster->jersey,
                                 .starter = true,
                                 .span = form->span};
    for (size_t i = 0; i < team->roster.count; i++) {
        entry.starter = entry.starter && team->roster.at[i].number != entry.number;
    }
    VEC_PUSH(m->arena, &team->roster, entry);
}

static void gather_lineup(struct maker *m, const struct form *form)
{
    struct lineup lineup = {.title = form->title, .span = form->span};
    for (size_t i = 0; i < form->roster->lineup.count; i++) {
        const struct role_binding *own = &form->roster->lineup.at[i];
        struct roster_entry spot = {
            .number = own->who.number, .name = own->role, .span = form->span};
        VEC_PUSH(m->arena, &lineup.spots, spot);
    }
    VEC_PUSH(m->arena, &m->out->team.lineups, lineup);
}

void team_gather(struct maker *m, const struct block *block)
{
    struct team *team = &m->out->team;
    if (team->name.size == 0) {
        team->name = block->title;
    }
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_ROSTER) {
            gather_player(m, form);
        } else if (form->kind == FORM_LINEUP) {
            gather_lineup(m, form);
        }
    }
}

/* ---- the roster ---- */

/* A row that stands twice would put a player on every sheet twice. */
static bool hold_row(struct maker *m, const struct roster_entry *own,
                     const struct roster_entry *other)
{
    if (own->number != other->number || !team_same_player(own, other)) {
        return false;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_ROSTER_TWICE, own->span,
                                 "\"%.*s\" stands at %d already", STR_ARG(own->name), own->number);
    diag_help(m->diags, diag,
              "take one of the two out; of two who have one name each wears a jersey of her own");
    beside(diag, other->span);
    return true;
}

static bool hold_jersey(struct maker *m, const struct roster_entry *own,
                        const struct roster_entry *other)
{
    if (own->jersey.size == 0 || !str_equal(own->jersey, other->jersey) ||
        str_equal_fold(own->name, other->name)) {
        return false;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_SEASON_JERSEY, own->span, "jersey %.*s is \"%.*s\"'s already",
                 STR_ARG(own->jersey), STR_ARG(other->name));
    diag_help(m->diags, diag, "give one of the two another number");
    beside(diag, other->span);
    return true;
}

static void hold_roster(struct maker *m)
{
    const struct team *team = &m->out->team;
    for (size_t i = 0; i < team->roster.count; i++) {
        bool said = false;
        for (size_t k = 0; k < i && !said; k++) {
            const struct roster_entry *own = &team->roster.at[i], *other = &team->roster.at[k];
            said = hold_row(m, own, other) || hold_jersey(m, own, other);
        }
    }
}

/* ---- lineups ---- */

/* A lineup may name only players of the roster: a name spelled otherwise would play unseen. */
static void hold_name(struct maker *m, const struct roster_entry *spot)
{
    const struct team *team = &m->out->team;
    const char **names = arena_array(m->arena, const char *, team->roster.count + 1);
    for (size_t i = 0; i < team->roster.count; i++) {
        if (str_equal_fold(team->roster.at[i].name, spot->name)) {
            return;
        }
        names[i] = str_copy(m->arena, team->roster.at[i].name).at;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_NOT_ON_ROSTER, spot->span,
                                 "nobody on the roster is called \"%.*s\"", STR_ARG(spot->name));
    const char *near = words_nearest(spot->name, names);
    struct team_found meant = team_find(team, spot->name);
    if (meant.entry && !meant.other) { /* Wren, #7 */
        diag_help(m->diags, diag, "a lineup has whole names: %d \"%.*s\"", spot->number,
                  STR_ARG(meant.entry->name));
    } else if (near) {
        diag_help(m->diags, diag, "did you mean \"%s\"?", near);
    } else {
        diag_help(m->diags, diag,
                  "add the player under `team`, by the spot he plays, which others may have "
                  "too: %d \"%.*s\"",
                  spot->number, STR_ARG(spot->name));
    }
}

/* Two who wear a jersey each. */
static bool is_of_two(const struct team *team, struct str name)
{
    const struct roster_entry *first = NULL;
    for (size_t i = 0; i < team->roster.count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        if (str_equal_fold(entry->name, name) && first && !team_same_player(first, entry)) {
            return true;
        }
        first = !first && str_equal_fold(entry->name, name) ? entry : first;
    }
    return false;
}

/* One player at two spots, two at one. */
static bool hold_spot(struct maker *m, const struct roster_entry *own,
                      const struct roster_entry *other)
{
    bool one = own->number == other->number;
    bool her = str_equal_fold(own->name, other->name) && !is_of_two(&m->out->team, own->name);
    struct diag *diag = NULL;
    if (one) {
        diag = diag_add(m->diags, DIAG_PLAY_LINEUP_TWICE, own->span,
                        "this lineup has two at %d: \"%.*s\" and \"%.*s\"", own->number,
                        STR_ARG(other->name), STR_ARG(own->name));
        diag_help(m->diags, diag, "a spot has one player: leave one of them out");
    } else if (her) {
        diag = diag_add(m->diags, DIAG_PLAY_LINEUP_TWICE, own->span,
                        "this lineup has \"%.*s\" at %d and at %d", STR_ARG(own->name),
                        other->number, own->number);
        diag_help(m->diags, diag, "leave one of the two out, and name who else is there");
    }
    return one || her;
}

/* Of the spots of a play those with somebody; *empty: the first without. */
static int filled(const struct team *team, const struct lineup *lineup, int *empty)
{
    int filled = 0;
    for (int n = SPOTS; n >= 1; n--) {
        bool here = team_at(team, lineup, n) != NULL;
        filled += here;
        *empty = here ? *empty : n;
    }
    return filled;
}

/* Whom the lineup has somewhere, and who starts at the empty spot; NULL: nobody does. */
static const struct roster_entry *moved_from(const struct team *team, int spot)
{
    for (size_t i = 0; i < team->roster.count; i++) {
        if (team->roster.at[i].number == spot) {
            return &team->roster.at[i];
        }
    }
    return NULL;
}

static void hold_holes(struct maker *m, const struct lineup *lineup, struct span span)
{
    const struct team *team = &m->out->team;
    int empty = 0, count = filled(team, lineup, &empty);
    if (count < FILLED_LEAST || count == SPOTS) {
        return;
    }
    const struct roster_entry *moved = moved_from(team, empty);
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_LINEUP_HOLE, span, "nobody is at %d %s", empty,
                                 lineup ? "in this lineup" : "on the roster");
    if (lineup && moved) {
        diag_help(m->diags, diag, "\"%.*s\", who starts there, is at another spot: add %d \"…\"",
                  STR_ARG(moved->name), empty);
    } else {
        diag_help(m->diags, diag, "add who plays there%s: %d \"…\"",
                  lineup ? ", or put her on the roster" : "", empty);
    }
}

static void hold_title(struct maker *m, size_t index)
{
    const struct team *team = &m->out->team;
    const struct lineup *own = &team->lineups.at[index];
    for (size_t i = 0; i < index; i++) {
        if (str_equal_fold(team->lineups.at[i].title, own->title)) {
            struct diag *diag = diag_add(m->diags, DIAG_PLAY_LINEUP_TWICE, own->span,
                                         "there are two lineups \"%.*s\"", STR_ARG(own->title));
            diag_help(m->diags, diag, "give one of them another title: plays take the first");
            beside(diag, team->lineups.at[i].span);
            return;
        }
    }
}

static void hold_lineup(struct maker *m, size_t index)
{
    const struct lineup *lineup = &m->out->team.lineups.at[index];
    bool said = false;
    for (size_t i = 0; i < lineup->spots.count; i++) {
        hold_name(m, &lineup->spots.at[i]);
        for (size_t k = 0; k < i && !said; k++) {
            said = hold_spot(m, &lineup->spots.at[i], &lineup->spots.at[k]);
        }
    }
    hold_title(m, index);
    if (!said) {
        hold_holes(m, lineup, lineup->span);
    }
}

void team_hold(struct maker *m)
{
    const struct team *team = &m->out->team;
    hold_roster(m);
    for (size_t i = 0; i < team->lineups.count; i++) {
        hold_lineup(m, i);
    }
    if (team->lineups.count == 0 && team->roster.count > 0) {
        hold_holes(m, NULL, team->roster.at[0].span);
    }
}
