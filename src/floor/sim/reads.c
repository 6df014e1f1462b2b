/* SPDX-License-Identifier: MIT */
/* reads: a read whose answer the defense cannot give: of a screen where its defender has to do with
 * none. Takes the sentences of one way through a step and who guards whom; changes nothing. */
#include "floor/sim/world.h"

/* What a defender needs to be able to do it. */
static const struct cause {
    enum verb verb;
    enum { HIS_MAN_IS_SCREENED, HIS_MAN_MOVES, HIS_MAN_SCREENS, AT_A_SCREEN, OF_ONE_SCREEN } needs;
} causes[] = {{VERB_GOES_UNDER, HIS_MAN_IS_SCREENED},
              {VERB_GOES_OVER, HIS_MAN_IS_SCREENED},
              {VERB_ICES, AT_A_SCREEN},
              {VERB_TRAILS, HIS_MAN_MOVES},
              {VERB_HEDGES, HIS_MAN_SCREENS},
              {VERB_DROPS, HIS_MAN_SCREENS},
              {VERB_SWITCHES, OF_ONE_SCREEN}};

static const struct cause *cause_of(enum verb verb)
{
    for (size_t i = 0; i < sizeof causes / sizeof *causes; i++) {
        if (causes[i].verb == verb) {
            return &causes[i];
        }
    }
    return NULL;
}

/* The two of a screen, of a post gone round, or of a hand-off; BODY_NONE: anybody. */
static bool is_pair(body user, body screener, body a, body b)
{
    return (user == BODY_NONE || user == a) && (screener == BODY_NONE || screener == b);
}

static bool task_pairs(const struct task *task, body user, body screener)
{
    switch (task->kind) {
    case TASK_SCREEN:
    case TASK_EXCHANGE:
        return is_pair(user, screener, task->other, task->who);
    case TASK_USE:
        return is_pair(user, screener, task->who, task->other) ||
               (task->other2 < BODY_COUNT && is_pair(user, screener, task->who, task->other2));
    default:
        return false;
    }
}

static bool is_screened(const struct world *world, body user, body screener)
{
    for (size_t i = 0; i < world->jobs; i++) {
        if (task_pairs(world->job[i].task, user, screener)) {
            return true;
        }
    }
    for (int b = 0; b <= BODY_COACH; b++) { /* one that stands from an earlier step */
        const struct screen *screen = &world->screen[b];
        if (screen->live && is_pair(user, screener, screen->user, (body)b)) {
            return true;
        }
    }
    return false;
}

static bool moves(const struct world *world, body who)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        if (task->who == who && task_class(task->kind)->movement) {
            return true;
        }
    }
    return is_screened(world, who, BODY_NONE);
}

/* `other`: the man of the second defender named, or BODY_NONE. */
static bool can_be(const struct world *world, const struct cause *cause, body man, body other)
{
    switch (cause->needs) {
    case HIS_MAN_MOVES:
        return moves(world, man);
    case HIS_MAN_IS_SCREENED:
        return is_screened(world, man, BODY_NONE);
    case HIS_MAN_SCREENS:
        return is_screened(world, BODY_NONE, man);
    case AT_A_SCREEN: /* either of the two calls it */
        return is_screened(world, man, BODY_NONE) || is_screened(world, BODY_NONE, man);
    case OF_ONE_SCREEN:
        break;
    }
    return is_screened(world, man, other) || is_screened(world, other, man);
}

/* The defender who could do it: whose man is the first to be screened, or to screen. */
static body instead(const struct world *world, const struct cause *cause)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct task *task = world->job[i].task;
        bool use = task->kind == TASK_USE;
        if (use || task->kind == TASK_SCREEN) {
            bool screener = cause->needs == HIS_MAN_SCREENS;
            return guard_of(world, screener == use ? task->other : task->who);
        }
    }
    return BODY_NONE;
}

static void say(struct world *world, const struct cause *cause, const struct condition *condition,
                body self, body man)
{
    static const char *const lacks[] = {[HIS_MAN_IS_SCREENED] = "uses no screen",
                                        [HIS_MAN_MOVES] = "goes nowhere",
                                        [HIS_MAN_SCREENS] = "sets no screen",
                                        [AT_A_SCREEN] = "is at no screen",
                                        [OF_ONE_SCREEN] =
                                            "is at no screen with the other one's man"};
    struct strbuf x, who, could;
    strbuf_init(&x, world->arena);
    strbuf_init(&who, world->arena);
    strbuf_init(&could, world->arena);
    body_print(&x, self);
    body_print(&who, man);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_READ, condition->span,
                 "`%.*s` cannot come about here: %s guards %s, and %s %s",
                 STR_ARG(source_text(world->sources, condition->span)), strbuf_str(&x).at,
                 strbuf_str(&who).at, strbuf_str(&who).at, lacks[cause->needs]);
    body other = instead(world, cause);
    if (other != BODY_NONE && other != self && cause->needs != OF_ONE_SCREEN) {
        body_print(&could, other);
        diag_help(world->diags, diag, "write: read %s %s", strbuf_str(&could).at,
                  verb_row(condition->verb)->words);
    } else {
        diag_help(world->diags, diag, "write the screen that it answers, or name who does it");
    }
}

void reads_look(struct world *world)
{
    const struct branch *branch =
        world->branch < 0 ? NULL : &world->step->branches.at[world->branch];
    const struct condition *condition =
        branch && branch->conditions.count ? &branch->conditions.at[0] : NULL;
    bool named = condition && (condition->kind == COND_VERB || condition->kind == COND_BOTH) &&
                 condition->span.source < world->sources->all.count;
    const struct cause *cause = named ? cause_of(condition->verb) : NULL;
    if (!cause) {
        return;
    }
    body self = duty_read_of(world, &condition->who);
    body mate = duty_read_of(world, &condition->other), man = BODY_NONE, other = BODY_NONE;
    if (self < BODY_COUNT && !guard_has_area(world, self)) {
        man = world->guards[self];
    }
    if (mate < BODY_COUNT && body_is_defender(mate)) {
        other = world->guards[mate];
    }
    if (man != BODY_NONE && !can_be(world, cause, man, other)) {
        say(world, cause, condition, self, man);
    }
}
