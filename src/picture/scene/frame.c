/* SPDX-License-Identifier: MIT */
/* frame: which tasks a diagram draws, how much floor is shown, and how feet become points. */
#include "picture/scene/drawing.h"

#include <math.h>

#define NEAR_END 28.6   /* feet from the baseline: whoever is beyond gets more floor */
#define FAR_END 38.0    /* beyond it the half-court line is shown */
#define LEFT_TO_RUN 0.6 /* metres a player still has to go for his line to be unfinished */
#define PAGE_WIDE 400.0 /* points: a full floor lies on its side from here */

static size_t common_tasks(const struct diagram *diagram)
{
    const struct step *step = &diagram->segment->play->steps.at[diagram->step];
    return step_task_count(step, -1);
}

double task_start(const struct segment *segment, size_t index)
{
    return segment->record[index].time[MOMENT_STARTED];
}

static double own_start(const struct segment *segment, size_t first)
{
    double earliest = TIME_NEVER;
    for (size_t i = first; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        bool throws = task_is_throw(task);
        /* a passer has waited for his moment since the step began */
        double start = throws ? segment->record[i].time[MOMENT_RELEASED] : task_start(segment, i);
        bool idle = task->kind == TASK_HOLD;
        if (!idle && start >= 0 && (earliest < 0 || start < earliest)) {
            earliest = start;
        }
    }
    return earliest < 0 ? 0 : earliest;
}

double task_end(const struct segment *segment, size_t index)
{
    const struct task_record *record = &segment->record[index];
    const struct task *task = segment_task(segment, index);
    double end = TIME_NEVER;
    switch (task->kind) {
    case TASK_SCREEN:
        end = record->time[MOMENT_SET];
        break;
    case TASK_PASS:
    case TASK_EXCHANGE:
        end = record->time[MOMENT_CAUGHT];
        break;
    case TASK_SHOOT:
        end = record->time[MOMENT_RELEASED];
        break;
    case TASK_MOVE:
    case TASK_HOLD:
    case TASK_CARRY:
    case TASK_USE:
    case TASK_GUARD:
        end = record->time[MOMENT_ARRIVED];
        break;
    }
    return end < 0 ? segment->duration : end;
}

/* Would the line of this task still be drawn on after the time? A screen that is set has none. */
static bool under_way(const struct segment *segment, size_t index, double time)
{
    const struct task *task = segment_task(segment, index);
    double end = task_end(segment, index);
    bool throws = task_is_throw(task);
    double start =
        throws ? segment->record[index].time[MOMENT_RELEASED] : task_start(segment, index);
    if (start < 0 || task->kind == TASK_HOLD || end <= time + 0.05) {
        return false;
    }
    if (throws) {
        return true;
    }
    struct vec2 from = segment_at(segment, task->who, real_max(start, time));
    return vec2_distance(from, segment_at(segment, task->who, end)) > LEFT_TO_RUN;
}

double answer_start(const struct diagram *diagram)
{
    return own_start(diagram->segment, common_tasks(diagram));
}

/* A screen that was left before it was set: where its screener came from is part of the answer. */
static bool was_slipped(const struct segment *segment, size_t index)
{
    const struct task_record *record = &segment->record[index];
    return segment_task(segment, index)->kind == TASK_SCREEN && record->time[MOMENT_STARTED] >= 0 &&
           record->time[MOMENT_SET] < 0;
}

struct scope scope_of(const struct diagram *diagram)
{
    const struct segment *segment = diagram->segment;
    size_t common = common_tasks(diagram);
    if (diagram->branch >= 0) {
        double start = own_start(segment, common);
        for (size_t i = 0; i < common && i < segment->tasks; i++) {
            if (under_way(segment, i, start) ||
                was_slipped(segment, i)) { /* half a line would lie: the whole step */
                return (struct scope){0, segment->tasks, 0};
            }
        }
        return (struct scope){common, segment->tasks, start};
    }
    return (struct scope){0, common < segment->tasks ? common : segment->tasks, 0};
}

size_t scene_first_task(const struct diagram *diagram)
{
    return scope_of(diagram).first;
}

size_t scene_own_task(const struct diagram *diagram)
{
    return diagram->branch >= 0 && scene_first_task(diagram) > 0 ? common_tasks(diagram) : 0;
}

bool scene_begins_again(const struct diagram *diagram)
{
    return diagram->branch >= 0 && scene_first_task(diagram) == 0;
}

struct vec2 frame_feet(const struct frame *frame, struct vec2 metres)
{
    return vec2_of(metres.x / FEET, (metres.y - frame->court->baseline) / FEET);
}

struct vec2 frame_point_feet(const struct frame *frame, double x, double y)
{
    return vec2_along(vec2_along(frame->origin, frame->across, x), frame->down, y);
}

struct vec2 frame_point(const struct frame *frame, struct vec2 metres)
{
    struct vec2 feet = frame_feet(frame, metres);
    return frame_point_feet(frame, feet.x, feet.y);
}

struct vec2 frame_direction(const struct frame *frame, double angle)
{
    struct vec2 way =
        vec2_along(vec2_scale(frame->across, real_cos(angle)), frame->down, real_sin(angle));
    return vec2_unit(way);
}

struct vec2 frame_back(const struct frame *frame, struct vec2 point)
{
    struct vec2 off = vec2_sub(point, frame->origin);
    double k2 = frame->k * frame->k;
    double x = vec2_dot(off, frame->across) / k2, y = vec2_dot(off, frame->down) / k2;
    return vec2_of(x * FEET, y * FEET + frame->court->baseline);
}

/* The least box, in feet, round everyone who is drawn and every line. */
struct reach {
    double left, right, low, high;
};

static void reach_add(struct reach *reach, struct vec2 feet)
{
    reach->left = real_min(reach->left, feet.x);
    reach->right = real_max(reach->right, feet.x);
    reach->low = real_min(reach->low, feet.y);
    reach->high = real_max(reach->high, feet.y);
}

static void reach_add_cones(struct reach *reach, const struct frame *frame, const struct play *play)
{
    for (size_t i = 0; i < play->cones.count; i++) {
        reach_add(reach, frame_feet(frame, play->cones.at[i]));
    }
}

static struct reach reach_of(const struct frame *frame, const struct diagram *diagram, bool defense)
{
    const struct segment *segment = diagram->segment;
    struct scope scope = scope_of(diagram);
    struct reach reach = {0, 0, 5, 5};
    for (int b = 0; b < BODY_COUNT; b++) {
        body who = (body)b;
        if (segment->track[b].on_floor && (defense || !body_is_defender(who))) {
            reach_add(&reach, frame_feet(frame, segment_at(segment, who, scope.start)));
        }
    }
    for (size_t i = scope.first; i < scope.end; i++) {
        double start = task_start(segment, i);
        const struct task *task = segment_task(segment, i);
        if (start < 0 || task->kind == TASK_HOLD || (!defense && body_is_defender(task->who))) {
            continue;
        }
        double end = task_end(segment, i);
        for (double t = start; t < end + RUN_SAMPLE; t += RUN_SAMPLE) {
            reach_add(&reach, frame_feet(frame, segment_at(segment, task->who, real_min(t, end))));
        }
    }
    reach_add_cones(&reach, frame, segment->play);
    return reach;
}

/* Everybody, at every moment of all of them. */
static struct reach reach_together(const struct frame *frame, const diagram_list *diagrams,
                                   bool defense)
{
    struct reach reach = {0, 0, 5, 5};
    for (size_t d = 0; d < diagrams->count; d++) {
        const struct segment *segment = diagrams->at[d].segment;
        reach_add_cones(&reach, frame, segment->play);
        for (int b = 0; b < BODY_COUNT; b++) {
            if (!segment->track[b].on_floor || (!defense && body_is_defender((body)b))) {
                continue;
            }
            for (size_t i = 0; i < segment->samples; i++) {
                reach_add(&reach, frame_feet(frame, segment->track[b].sample[i].at));
            }
        }
    }
    return reach;
}

static bool is_thrower(const struct frame *frame, double beyond)
{
    (void)frame;
    return beyond > 0.3; /* feet past the line: standing on it is not a throw-in */
}

/* Grows the floor shown for throw-ins at this scale. */
static void frame_throwers(struct frame *frame, const struct reach *reach, double length)
{
    struct sizes size = sizes_of(frame->k);
    double ring = size.ring / frame->k, half = frame->court->half_width / FEET;
    if (!frame->full) { /* a ringed numeral low on the floor, too */
        frame->high.y = real_max(frame->high.y, reach->high + ring + 0.4);
    }
    if (is_thrower(frame, -reach->low)) {
        frame->low.y = real_min(frame->low.y, -(2.4 + ring + 0.65));
    }
    if (frame->full && is_thrower(frame, reach->high - length)) {
        frame->high.y = real_max(frame->high.y, length + 2.4 + ring + 0.65);
    }
    double side = real_max(half + 5.2, half + 2.2 + ring + 0.65);
    if (is_thrower(frame, reach->right - half)) {
        frame->high.x = side;
    }
    if (is_thrower(frame, -reach->left - half)) {
        frame->low.x = -side;
    }
}

static void frame_floor(struct frame *frame, const struct reach *reach,
                        const struct scene_options *options)
{
    const struct court *court = frame->court;
    double half = court->half_width / FEET,
           length = 2 * (court->half_court - court->baseline) / FEET;
    double edge = theme_row(options->theme)->has_floor ? 1.2 : 0.4;
    frame->low = vec2_of(-half - edge + 0.2, -edge);
    frame->high = vec2_of(half + edge - 0.2, 30.2);
    if (theme_row(options->theme)->has_floor) {
        frame->low.x = -half - 1.4;
        frame->high.x = half + 1.4;
    }
    frame->half_line = frame->full || reach->high > FAR_END;
    if (frame->full) {
        frame->high.y = length + 0.4;
        return;
    }
    bool sideline = is_thrower(frame, real_max(reach->right, -reach->left) - half);
    double usual = options->below > 0 ? options->below : sideline ? 32.2 : 30.2;
    frame->high.y = reach->high > NEAR_END || reach->high + 1.6 > usual
                        ? real_max(usual, reach->high + 1.6)
                        : usual;
    if (frame->half_line) {
        frame->high.y = real_max(length / 2 + 0.5, reach->high + 1.6);
    }
}

/* Points a foot and the axes, once the floor shown is known. */
static void frame_axes(struct frame *frame, double width, bool bottom)
{
    double wide = frame->high.x - frame->low.x, tall = frame->high.y - frame->low.y;
    bool aside = frame->full && width >= PAGE_WIDE;
    double k = width / (aside ? tall : wide);
    frame->k = k;
    frame->width = width;
    frame->height = k * (aside ? wide : tall) + frame->top;
    struct vec2 corner = vec2_of(0, frame->top);
    if (aside) { /* the attack goes right, the attackers' left is up */
        frame->across = vec2_of(0, k);
        frame->down = vec2_of(-k, 0);
        corner = vec2_add(corner, vec2_of(k * frame->high.y, -k * frame->low.x));
    } else if (bottom) {
        frame->across = vec2_of(-k, 0);
        frame->down = vec2_of(0, -k);
        corner = vec2_add(corner, vec2_of(k * frame->high.x, k * frame->high.y));
    } else {
        frame->across = vec2_of(k, 0);
        frame->down = vec2_of(0, k);
        corner = vec2_add(corner, vec2_of(-k * frame->low.x, -k * frame->low.y));
    }
    frame->origin = corner;
}

struct frame frame_of(struct arena *arena, const struct diagram *diagram,
                      const struct scene_options *options)
{
    const struct play *play = diagram->segment->play;
    struct frame frame = {.court = play->court, .k = 1};
    double width = options->width > 0 ? options->width : 237.6;
    bool defense = !options->hide_defense;
    bool titled = options->caption || options->heading;
    frame.top = titled ? title_height(arena, diagram, options, width) : 0.0;
    struct reach reach = options->together ? reach_together(&frame, options->together, defense)
                                           : reach_of(&frame, diagram, defense);
    double length = 2 * (play->court->half_court - play->court->baseline) / FEET;
    frame.full = play->full_floor || reach.high > length / 2 + 4.0;
    frame_floor(&frame, &reach, options);
    for (int i = 0; i < 4; i++) { /* rings have a least size: the scale and the floor agree soon */
        frame_axes(&frame, width, play->basket_bottom);
        frame_throwers(&frame, &reach, length);
    }
    frame_axes(&frame, width, play->basket_bottom);
    return frame;
}
