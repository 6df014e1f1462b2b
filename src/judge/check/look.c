/* SPDX-License-Identifier: MIT */
/* look: see look.h. */
#include "judge/check/look.h"

#include <math.h>
#include <string.h>

#include "base/real.h"

struct finding *look_report(struct checker *checker, double time, double amount, body first,
                            body second)
{
    struct finding finding = {.row = checker->row,
                              .severity = checker->row->severity,
                              .step = checker->segment->step,
                              .branch = checker->segment->branch,
                              .time = time,
                              .who = {first, second, BODY_NONE, BODY_NONE},
                              .amount = amount,
                              .limit = checker->limit};
    const struct segment *in;
    size_t index;
    const struct task *task = look_latest(checker->segment, first, time, &in, &index);
    const struct step *step = &checker->play->steps.at[checker->segment->step];
    finding.span = task && task->sentence ? task->span : step->span;
    VEC_PUSH(checker->arena, checker->findings, finding);
    VEC_PUSH(checker->arena, &checker->of, checker->segment);
    return &checker->findings->at[checker->findings->count - 1];
}

void look_say(struct checker *checker, struct str *text, const char *format, ...)
{
    struct strbuf out;
    strbuf_init(&out, checker->arena);
    va_list args;
    va_start(args, format);
    strbuf_vprint(&out, format, args);
    va_end(args);
    *text = strbuf_str(&out);
}

const char *look_length(struct checker *checker, double metres)
{
    struct strbuf out;
    strbuf_init(&out, checker->arena);
    play_length(&out, checker->play, metres);
    return out.at;
}

const char *look_seconds(struct checker *checker, double seconds)
{
    struct strbuf out;
    strbuf_init(&out, checker->arena);
    strbuf_number(&out, seconds, 1);
    strbuf_text(&out, " s");
    return out.at;
}

const char *look_body(struct checker *checker, body b)
{
    struct strbuf out;
    bool marked = body_is_attacker(b) && b != BODY_COACH;
    strbuf_init(&out, checker->arena);
    strbuf_text(&out, marked ? (const char[]){CHECK_BODY_ON, '\0'} : "");
    body_print(&out, b);
    strbuf_text(&out, marked ? (const char[]){CHECK_BODY_OFF, '\0'} : "");
    return out.at;
}

const char *look_spot(struct checker *checker, enum spot spot, enum side side)
{
    struct strbuf out;
    strbuf_init(&out, checker->arena);
    strbuf_print(&out, "%s%s",
                 side == SIDE_LEFT    ? "left "
                 : side == SIDE_RIGHT ? "right "
                                      : "",
                 spot_row(spot)->word);
    return out.at;
}

enum side look_side(const struct checker *checker, double x)
{
    bool left = x < 0 || (x == 0 && checker->play->mirrored);
    return left ? SIDE_LEFT : SIDE_RIGHT;
}

enum side look_side_in_turn(const struct checker *checker, int turn)
{
    return (turn > 0) == checker->play->mirrored ? SIDE_LEFT : SIDE_RIGHT;
}

struct vec2 look_at(const struct segment *segment, body b, size_t sample)
{
    return segment->track[b].sample[sample].at;
}

double look_speed(const struct segment *segment, body b, size_t sample)
{
    return vec2_length(segment->track[b].sample[sample].v);
}

bool look_plays(const struct checker *checker, body b)
{
    return body_is_attacker(b) && b != BODY_COACH && checker->segment->track[b].on_floor;
}

bool look_last(const struct checker *checker)
{
    for (size_t i = 0; i < checker->run->segments.count; i++) {
        if (checker->run->segments.at[i]->before == checker->segment) {
            return false;
        }
    }
    return true;
}

const struct task *look_latest(const struct segment *segment, body b, double t,
                               const struct segment **in, size_t *index)
{
    for (; segment; segment = segment->before) {
        const struct task *latest = NULL;
        double when = TIME_NEVER;
        for (size_t i = 0; i < segment->tasks; i++) {
            const struct task *task = segment_task(segment, i);
            double started = segment->record[i].time[MOMENT_STARTED];
            if (task->who == b && started >= 0 && started <= t && started >= when) {
                when = started;
                latest = task;
                *in = segment;
                *index = i;
            }
        }
        if (latest) {
            return latest;
        }
        t = segment->begins;
    }
    return NULL;
}

static bool concerns(const struct task *task, body b)
{
    bool aims = task->goal.kind == GOAL_BODY || task->goal.kind == GOAL_BESIDE;
    return task->other == b || task->other2 == b || task->path_who == b ||
           (aims && task->goal.who == b);
}

bool look_links(const struct task *task, body a, body b)
{
    if (task->kind == TASK_PASS || task->kind == TASK_SHOOT) {
        return false;
    }
    return (task->who == a && concerns(task, b)) || (task->who == b && concerns(task, a));
}

bool look_linked(const struct segment *segment, body a, body b)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        if (look_links(segment_task(segment, i), a, b)) {
            return true;
        }
    }
    return false;
}

bool look_uses_ball(const struct task *task)
{
    return task->kind == TASK_CARRY || strchr(verb_row(task->verb)->needs, 'B') != NULL;
}

bool look_shot(const struct segment *segment, double t)
{
    for (; segment; segment = segment->before) {
        for (size_t i = 0; i < segment->ball.count; i++) {
            const struct ball_span *span = &segment->ball.at[i];
            if (span->state == BALL_SHOT && span->from <= t) {
                return true;
            }
        }
        t = segment->begins;
    }
    return false;
}

bool look_dribbles(const struct segment *segment, body b, double t)
{
    for (size_t i = 0; i < segment->dribbles.count; i++) {
        const struct dribble_span *dribble = &segment->dribbles.at[i];
        if (dribble->who == b && t >= dribble->from && t <= dribble->to) {
            return true;
        }
    }
    return false;
}

bool look_slipped(const struct segment *segment, size_t screen)
{
    for (size_t i = screen + 1; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->slip && task->who == segment_task(segment, screen)->who) {
            return true;
        }
    }
    return false;
}

bool look_told(const struct checker *checker, body b)
{
    for (size_t i = 0; i < checker->findings->count; i++) {
        const struct finding *finding = &checker->findings->at[i];
        for (size_t k = 0; finding->row == checker->row && k < 4; k++) {
            if (b == BODY_NONE || finding->who[k] == b) {
                return true;
            }
        }
    }
    return false;
}

body look_mate(const struct checker *checker, body who, double t)
{
    body nearest = who;
    double least = INFINITY;
    struct vec2 at = segment_at(checker->segment, who, t);
    for (body b = 0; b < BODY_COACH; b++) {
        double far = b != who && look_plays(checker, b)
                         ? vec2_distance(segment_at(checker->segment, b, t), at)
                         : (double)INFINITY;
        if (far < least) {
            least = far;
            nearest = b;
        }
    }
    return nearest;
}

bool look_told_to_hold(const struct segment *segment, body b, double t)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double started = segment->record[i].time[MOMENT_STARTED];
        if (task->who == b && task->verb == VERB_HOLDS && started >= 0 && started <= t) {
            return true;
        }
    }
    return false;
}

double look_outside(const struct court *court, struct vec2 p)
{
    double far = 2 * court->half_court - court->baseline;
    return real_max(fabs(p.x) - court->half_width, real_max(court->baseline - p.y, p.y - far));
}

bool look_in_lane(const struct checker *checker, struct vec2 p)
{
    return court_in_wider_lane(checker->play->court, p, -FEET);
}

bool look_inside_player(const struct checker *checker, struct vec2 p)
{
    return court_in_wider_lane(checker->play->court, p,
                               FEET + 0.01); /* a high post stands a foot above the line */
}

const struct ball_span *look_held_over(const struct segment *segment, body holder)
{
    if (!segment || !segment->ball.count) {
        return NULL;
    }
    const struct ball_span *last = &segment->ball.at[segment->ball.count - 1];
    return last->state == BALL_HELD && last->holder == holder ? last : NULL;
}

segment_list look_held_through(struct checker *checker, body holder)
{
    segment_list back = {0};
    const struct segment *segment = checker->segment->before;
    while (look_held_over(segment, holder)) {
        VEC_PUSH(checker->arena, &back, segment);
        segment = segment->ball.count == 1 ? segment->before : NULL;
    }
    return back;
}

bool look_done(const struct checker *checker, body b, size_t sample)
{
    const struct segment *segment = checker->segment, *in;
    size_t index;
    double t = (double)sample * RUN_SAMPLE;
    const struct task *task = look_latest(segment, b, t, &in, &index);
    if (!task || task->kind == TASK_HOLD || task->kind == TASK_PASS) {
        return true;
    }
    if (task->kind == TASK_SCREEN || (task->kind == TASK_SHOOT && in == segment)) {
        return false; /* a screener stays one until his next task; who shoots is busy */
    }
    const struct task_record *record = &in->record[index];
    double done = record->time[task->kind == TASK_EXCHANGE ? MOMENT_CAUGHT : MOMENT_ARRIVED];
    return in != segment || (done >= 0 && done <= t);
}

bool look_idle(const struct checker *checker, body b, size_t sample)
{
    return look_speed(checker->segment, b, sample) <= REST_SPEED && look_done(checker, b, sample);
}
