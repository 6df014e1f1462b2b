/* SPDX-License-Identifier: MIT */
/* turns: see turns.h. Who goes on to which spot is told where the drill itself tells it: where
 * players wait, who goes to the end of the line, who ends where another began. */
#include "page/sheet/turns.h"

#include "base/limits.h"
#include "language/tell/tell.h"

#define THERE (4 * FEET) /* so near a spot one stands on it (ours) */

/* "1, 2 and 3": of those who are on the floor; returns how many. */
static int print_spots(struct strbuf *out, const struct play *play, body (*of)(int number))
{
    int count = 0, last = 0;
    for (int n = 1; n <= LIMIT_ATTACKERS; n++) {
        last = play->start[of(n)].on_floor ? n : last;
    }
    for (int n = 1; n <= last; n++) {
        if (play->start[of(n)].on_floor) {
            strbuf_text(out, count == 0 ? "" : n == last ? " and " : ", ");
            tell_body(out, of(n));
            count++;
        }
    }
    return count;
}

static void print_each(struct strbuf *out, const struct play *play)
{
    struct strbuf spots;
    strbuf_init(&spots, out->arena);
    int count = print_spots(&spots, play, body_attacker);
    bool one = count == 1;
    strbuf_print(out,
                 one ? "You are %.*s when it is your turn"
                     : "The numbers are spots here, and you take each in turn: %.*s",
                 STR_ARG(strbuf_str(&spots)));
    spots.size = 0;
    if (play->defense != DEFENSE_NONE && print_spots(&spots, play, body_defender) > 0) {
        strbuf_print(out, one ? ", and then %.*s on defense" : ", then %.*s on defense",
                     STR_ARG(strbuf_str(&spots)));
    }
    strbuf_char(out, '.');
}

static void print_lines(struct strbuf *out, const struct play *play)
{
    for (size_t i = 0; i < play->lines.count; i++) {
        strbuf_text(out, i == 0 ? " Wait in the line behind " : " or behind ");
        tell_body(out, play->lines.at[i]);
    }
    if (play->lines.count > 1) {
        strbuf_text(out, ": whoever is first takes that spot next.");
    } else if (play->lines.count == 1) {
        strbuf_text(out, ": whoever is first is the next ");
        tell_body(out, play->lines.at[0]);
        strbuf_char(out, '.');
    }
}

static bool moves(const struct task *task, body who)
{
    return task->who == who && (task->kind == TASK_MOVE || task->kind == TASK_CARRY ||
                                task->kind == TASK_USE || task->kind == TASK_SCREEN);
}

/* The last way that `who` goes, whatever the defense does; NULL: none, a screen, or it hangs on a
 * read. */
static const struct task *last_way(const struct play *play, body who)
{
    const struct task *last = NULL;
    for (size_t s = 0; s < play->steps.count; s++) {
        const struct step *step = &play->steps.at[s];
        for (size_t i = 0; i < step->tasks.count; i++) {
            last = moves(&step->tasks.at[i], who) ? &step->tasks.at[i] : last;
        }
        for (size_t b = 0; b < step->branches.count; b++) {
            for (size_t i = 0; i < step->branches.at[b].tasks.count; i++) {
                if (moves(&step->branches.at[b].tasks.at[i], who)) {
                    return NULL;
                }
            }
        }
    }
    return last && last->kind != TASK_SCREEN ? last : NULL;
}

/* On whose spot one ends who goes this way; BODY_NONE: on nobody else's. */
static body spot_of(const struct play *play, const struct task *way)
{
    for (int n = 1; n <= LIMIT_ATTACKERS; n++) {
        body other = body_attacker(n);
        if (play->start[other].on_floor && other != way->who &&
            vec2_distance(play->start[other].at, way->planned) <= THERE) {
            return other;
        }
    }
    return BODY_NONE;
}

static void print_next(struct strbuf *out, const struct play *play)
{
    for (int n = 1; n <= LIMIT_ATTACKERS; n++) {
        const struct task *way = last_way(play, body_attacker(n));
        body next = way ? spot_of(play, way) : (body)BODY_NONE;
        if (!way || !play->start[way->who].on_floor || (!way->goal.line_end && next == BODY_NONE)) {
            continue;
        }
        strbuf_text(out, " After ");
        tell_body(out, way->who);
        if (way->goal.line_end) {
            strbuf_text(out, " you are last in the line.");
        } else {
            strbuf_text(out, " you are ");
            tell_body(out, next);
            strbuf_char(out, '.');
        }
    }
}

struct str turns_told(struct arena *arena, const struct play *play)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    print_each(&out, play);
    print_lines(&out, play);
    print_next(&out, play);
    return strbuf_str(&out);
}
