/* SPDX-License-Identifier: MIT */
/* body: numbers of the bodies on the floor, the tasks of one way through a step, and lengths in a
 * coach's units. Must not know words. */
#include "floor/play/play.h"

#include <math.h>

#include "base/limits.h"
#include "base/real.h"

body body_attacker(int number)
{
    return number >= 1 && number <= LIMIT_ATTACKERS ? (body)(number - 1) : (body)BODY_NONE;
}

body body_defender(int number)
{
    return number >= 1 && number <= LIMIT_DEFENDERS ? (body)(BODY_FIRST_DEFENDER + number - 1)
                                                    : (body)BODY_NONE;
}

bool body_is_attacker(body b)
{
    return b <= BODY_COACH;
}

bool body_is_defender(body b)
{
    return b >= BODY_FIRST_DEFENDER && b < BODY_COUNT;
}

int body_number(body b)
{
    if (b < BODY_COACH) {
        return b + 1;
    }
    return body_is_defender(b) ? b - BODY_FIRST_DEFENDER + 1 : 0;
}

void body_print(struct strbuf *out, body b)
{
    if (b == BODY_COACH) {
        strbuf_text(out, "the coach");
    } else if (body_number(b)) {
        strbuf_print(out, body_is_defender(b) ? "x%d" : "%d", body_number(b));
    } else {
        strbuf_text(out, "nobody");
    }
}

struct str team_first_of(struct str name)
{
    for (size_t i = 0; i < name.size; i++) {
        if (name.at[i] == ' ') {
            name.size = i;
        }
    }
    return name;
}

static const struct lineup *lineup_of(const struct team *team, const struct play *play)
{
    for (size_t i = 0; i < team->lineups.count && play->lineup.size > 0; i++) {
        if (str_equal(team->lineups.at[i].title, play->lineup)) {
            return &team->lineups.at[i];
        }
    }
    return NULL;
}

bool team_plays(const struct team *team, const struct play *play, struct str name,
                struct str jersey, int number)
{
    const struct lineup *lineup = lineup_of(team, play);
    bool named = false, here = false;
    for (size_t i = 0; lineup && i < lineup->spots.count; i++) {
        bool hers = str_equal_fold(lineup->spots.at[i].name, name);
        named = named || hers;
        here = here || (hers && lineup->spots.at[i].number == number);
    }
    for (size_t i = 0; i < team->roster.count && !named; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        here = here || (str_equal_fold(entry->name, name) && entry->number == number &&
                        (jersey.size == 0 || str_equal(entry->jersey, jersey)));
    }
    return here;
}

const struct roster_entry *team_instead(const struct team *team, const struct play *play,
                                        struct str name, int number)
{
    const struct lineup *lineup = lineup_of(team, play);
    for (size_t i = 0; lineup && i < lineup->spots.count; i++) {
        const struct roster_entry *spot = &lineup->spots.at[i];
        if (spot->number == number) {
            return str_equal_fold(spot->name, name) ? NULL : team_at(team, lineup, number);
        }
    }
    return NULL;
}

size_t playbook_chapter(const struct playbook *book, const struct play *play)
{
    size_t index = (size_t)(play - book->plays.at);
    for (size_t i = book->chapters.count; i > 0; i--) {
        const struct chapter *chapter = &book->chapters.at[i - 1];
        if (index >= chapter->first && index < chapter->first + chapter->count) {
            return chapter->title.size > 0 ? i - 1 : book->chapters.count;
        }
    }
    return book->chapters.count;
}

/* A lineup tells a name and a spot; the rest of her stands in the roster. */
static const struct roster_entry *listed(const struct team *team, const struct roster_entry *spot)
{
    const struct roster_entry *found = spot;
    for (size_t i = 0; i < team->roster.count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        if (str_equal_fold(entry->name, spot->name) &&
            (found == spot || entry->number == spot->number)) {
            found = entry;
        }
    }
    return found;
}

static bool is_elsewhere(const struct lineup *lineup, struct str name)
{
    for (size_t i = 0; lineup && i < lineup->spots.count; i++) {
        if (str_equal_fold(lineup->spots.at[i].name, name)) {
            return true;
        }
    }
    return false;
}

const struct roster_entry *team_at(const struct team *team, const struct lineup *lineup, int number)
{
    for (size_t i = 0; lineup && i < lineup->spots.count; i++) {
        if (lineup->spots.at[i].number == number) {
            return listed(team, &lineup->spots.at[i]);
        }
    }
    const struct roster_entry *found = NULL;
    for (size_t i = 0; i < team->roster.count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        bool here = entry->number == number && !is_elsewhere(lineup, entry->name);
        if (here && (!found || entry->starter)) {
            found = entry;
        }
    }
    return found;
}

static const struct roster_entry *entry_of(const struct team *team, const struct play *play,
                                           body who)
{
    bool spot = body_is_attacker(who) && who != BODY_COACH;
    return spot ? team_at(team, lineup_of(team, play), body_number(who)) : NULL;
}

struct str team_name(const struct team *team, const struct play *play, body who)
{
    const struct roster_entry *entry = entry_of(team, play, who);
    return entry ? entry->name : STR("");
}

struct str team_jersey(const struct team *team, const struct play *play, body who)
{
    const struct roster_entry *entry = entry_of(team, play, who);
    return entry ? entry->jersey : STR("");
}

struct str team_first_name(const struct team *team, const struct play *play, body who)
{
    return team_first_of(team_name(team, play, who));
}

static const struct branch *branch_of(const struct step *step, int branch)
{
    bool there = branch >= 0 && (size_t)branch < step->branches.count;
    return there ? &step->branches.at[branch] : NULL;
}

size_t step_task_count(const struct step *step, int branch)
{
    const struct branch *own = branch_of(step, branch);
    return step->tasks.count + (own ? own->tasks.count : 0);
}

const struct task *step_task(const struct step *step, int branch, size_t index)
{
    if (index < step->tasks.count) {
        return &step->tasks.at[index];
    }
    const struct branch *own = branch_of(step, branch);
    index -= step->tasks.count;
    return own && index < own->tasks.count ? &own->tasks.at[index] : NULL;
}

bool task_gives_ball(const struct task *task)
{
    return task->kind == TASK_PASS || task->kind == TASK_EXCHANGE;
}

bool task_gives_ball_to(const struct task *task, body who)
{
    return task_gives_ball(task) && task->other == who;
}

bool task_is_throw(const struct task *task)
{
    return task_gives_ball(task) || task->kind == TASK_SHOOT;
}

void play_length(struct strbuf *out, const struct play *play, double metres)
{
    if (play->metres) {
        strbuf_number(out, metres, 1);
        strbuf_text(out, " m");
        return;
    }
    double feet = metres / FEET;
    strbuf_number(out, feet, fabs(feet) < 2.95 ? 1 : 0);
    strbuf_text(out, " ft");
}
