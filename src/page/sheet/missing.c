/* SPDX-License-Identifier: MIT */
/* missing: which tasks of a diagram have a line, and what must go with a line that is taken away.
 */
#include "page/sheet/asking.h"

static bool is_line_class(enum scene_class class)
{
    return class >= CLASS_MOVE && class <= CLASS_SHOT;
}

/* The lines of the scene, each with its class, and the tasks they tell of. */
static void find_lines(struct looking *looking)
{
    const struct scene *scene = looking->scene;
    size_t tasks = looking->diagram->segment->tasks;
    looking->line = arena_array(looking->arena, int, tasks + 1);
    for (size_t i = 0; i < tasks; i++) {
        looking->line[i] = -1;
    }
    for (size_t i = 0; i < scene->items.count; i++) {
        size_t line = (size_t)(scene->items.at[i].line + 1);
        looking->lines = line > looking->lines ? line : looking->lines;
    }
    looking->class = arena_array(looking->arena, enum scene_class, looking->lines + 1);
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->line < 0 || item->casing) {
            continue;
        }
        if (is_line_class(item->class)) {
            looking->class[item->line] = item->class;
        }
        if (item->task >= 0 && (is_line_class(item->class) || item->class == CLASS_ORDER)) {
            looking->line[item->task] = item->line;
        }
    }
}

struct looking looking_at(struct arena *arena, const struct play *play,
                          const struct diagram *diagram, double width)
{
    const struct step *step = &play->steps.at[diagram->step];
    bool way = diagram->branch >= 0;
    struct scene_options options = {.width = width, .theme = THEME_PRINT, .accent = BODY_NONE};
    struct looking looking = {.arena = arena,
                              .play = play,
                              .diagram = diagram,
                              .step = step,
                              .branch = way ? &step->branches.at[diagram->branch] : NULL,
                              .scene = scene_make(arena, diagram, &options),
                              .first = way ? step->tasks.count : 0,
                              .end = step_task_count(step, diagram->branch)};
    find_lines(&looking);
    return looking;
}

const struct task *task_of(const struct looking *looking, size_t index)
{
    return step_task(looking->step, looking->diagram->branch, index);
}

double task_began(const struct looking *looking, size_t index)
{
    const double *time = looking->diagram->segment->record[index].time;
    bool thrown = task_of(looking, index)->kind == TASK_PASS && time[MOMENT_RELEASED] >= 0;
    return time[thrown ? MOMENT_RELEASED : MOMENT_STARTED];
}

enum scene_class line_class_of(const struct looking *looking, size_t index)
{
    return looking->class[looking->line[index]];
}

bool task_is_drawn(const struct looking *looking, size_t index)
{
    return body_is_attacker(task_of(looking, index)->who) && looking->line[index] >= 0 &&
           is_line_class(line_class_of(looking, index)) && task_began(looking, index) >= 0;
}

bool task_gives(const struct task *task)
{
    return task->kind == TASK_PASS || task->kind == TASK_EXCHANGE;
}

bool task_is_way(const struct task *task)
{
    return task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE ||
           task->kind == TASK_SCREEN;
}

/* Is it said by where `who` is? "1 dribbles at 2" */
static bool is_measured_from(const struct task *task, body who)
{
    enum goal_kind kind = task->goal.kind;
    bool goal = kind == GOAL_BODY || kind == GOAL_BESIDE || kind == GOAL_BEHIND;
    return (goal && task->goal.who == who) || (task->kind == TASK_CARRY && task->other == who);
}

/* What tells of where a way ends. */
static bool tells_of_way(const struct looking *looking, size_t way, size_t index)
{
    const struct task *gone = task_of(looking, way), *task = task_of(looking, index);
    double began = task_began(looking, way), then = task_began(looking, index);
    bool later = then > began || (then == began && index > way);
    if (task_gives(task) && task->other == gone->who) {
        double caught = looking->diagram->segment->record[index].time[MOMENT_CAUGHT];
        return (caught < 0 ? then : caught) >= began;
    }
    bool uses = task->kind == TASK_USE && (task->other == gone->who || task->other2 == gone->who);
    bool screens = gone->kind == TASK_SCREEN && gone->other == task->who;
    return (uses && screens) ||
           (later && (task->who == gone->who || uses || is_measured_from(task, gone->who)));
}

/* What tells of who got the ball. */
bool task_tells_of_pass(const struct looking *looking, size_t pass, size_t index)
{
    const struct task *gone = task_of(looking, pass), *task = task_of(looking, index);
    bool with_ball =
        task_gives(task) || task->kind == TASK_SHOOT || task->kind == TASK_CARRY ||
        (task_is_drawn(looking, index) && line_class_of(looking, index) == CLASS_DRIBBLE);
    return task->who == gone->other && with_ball &&
           task_began(looking, index) >= task_began(looking, pass);
}

static bool goes_with(const struct looking *looking, size_t gone, size_t index)
{
    if (task_began(looking, index) < 0) {
        return false;
    }
    if (looking->line[gone] >= 0 && looking->line[index] == looking->line[gone]) {
        return true;
    }
    const struct task *task = task_of(looking, gone);
    return (task_is_way(task) && tells_of_way(looking, gone, index)) ||
           (task_gives(task) && task_tells_of_pass(looking, gone, index));
}

bool *missing_with(const struct looking *looking, size_t index)
{
    bool *missing = arena_array(looking->arena, bool, looking->diagram->segment->tasks + 1);
    missing[index] = true;
    for (bool more = true; more;) {
        more = false;
        for (size_t gone = 0; gone < looking->end; gone++) {
            for (size_t i = 0; i < looking->end && missing[gone]; i++) {
                if (!missing[i] && body_is_attacker(task_of(looking, i)->who) &&
                    goes_with(looking, gone, i)) {
                    missing[i] = true;
                    more = true;
                }
            }
        }
    }
    return missing;
}

static size_t count_lines(const struct looking *looking, const bool *missing, bool gone)
{
    bool *lost = arena_array(looking->arena, bool, looking->lines + 1);
    for (size_t i = 0; i < looking->end; i++) {
        if (missing[i] && looking->line[i] >= 0) {
            lost[looking->line[i]] = true;
        }
    }
    size_t count = 0;
    for (size_t line = 0; line < looking->lines; line++) {
        count += is_line_class(looking->class[line]) && lost[line] == gone;
    }
    return count;
}

size_t missing_lines(const struct looking *looking, const bool *missing)
{
    return count_lines(looking, missing, true);
}

size_t drawn_lines(const struct looking *looking, const bool *missing)
{
    return count_lines(looking, missing, false);
}
