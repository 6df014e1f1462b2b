/* SPDX-License-Identifier: MIT */
/* run: reading a run: where somebody was at a moment; and its dump. */
#include "floor/sim/run.h"

#include "base/real.h"

static size_t sample_before(const struct segment *segment, double t, double *part)
{
    double place =
        real_clamp(t / RUN_SAMPLE, 0, segment->samples ? (double)(segment->samples - 1) : 0);
    size_t index = (size_t)place;
    if (index + 1 >= segment->samples && index > 0) {
        index--;
    }
    *part = place - (double)index;
    return index;
}

static bool has_track(const struct segment *segment, body b)
{
    return b < BODY_COUNT && segment->track[b].sample && segment->samples;
}

struct vec2 segment_at(const struct segment *segment, body b, double t)
{
    double u;
    if (!has_track(segment, b)) {
        return vec2_of(0, 0);
    }
    size_t i = sample_before(segment, t, &u);
    const struct sample *a = &segment->track[b].sample[i];
    if (segment->samples == 1) {
        return a->at;
    }
    const struct sample *c = a + 1;
    double u2 = u * u, u3 = u2 * u;
    double h00 = 2 * u3 - 3 * u2 + 1, h10 = u3 - 2 * u2 + u, h01 = 3 * u2 - 2 * u3, h11 = u3 - u2;
    struct vec2 p = vec2_add(vec2_scale(a->at, h00), vec2_scale(c->at, h01));
    return vec2_add(
        p, vec2_add(vec2_scale(a->v, h10 * RUN_SAMPLE), vec2_scale(c->v, h11 * RUN_SAMPLE)));
}

struct vec2 segment_velocity(const struct segment *segment, body b, double t)
{
    double u;
    if (!has_track(segment, b)) {
        return vec2_of(0, 0);
    }
    size_t i = sample_before(segment, t, &u);
    const struct sample *a = &segment->track[b].sample[i];
    return segment->samples == 1 ? a->v : vec2_mix(a->v, a[1].v, u);
}

const struct task *segment_task(const struct segment *segment, size_t index)
{
    return step_task(&segment->play->steps.at[segment->step], segment->branch, index);
}

/* ---- dump ---- */

static const char *const moment_names[MOMENT_COUNT] = {
    [MOMENT_STARTED] = "started", [MOMENT_RELEASED] = "released", [MOMENT_SET] = "set",
    [MOMENT_CAUGHT] = "caught",   [MOMENT_USED] = "used",         [MOMENT_ARRIVED] = "arrived"};

static void dump_point(struct strbuf *out, struct vec2 p)
{
    strbuf_char(out, '(');
    strbuf_fixed(out, p.x / FEET, 1);
    strbuf_text(out, ", ");
    strbuf_fixed(out, p.y / FEET, 1);
    strbuf_char(out, ')');
}

static void dump_task(struct strbuf *out, const struct segment *segment, size_t i)
{
    const struct task *task = segment_task(segment, i);
    const struct task_record *record = &segment->record[i];
    strbuf_text(out, "  ");
    body_print(out, task->who);
    strbuf_print(out, " %s", verb_row(task->verb)->words);
    if (task->other != BODY_NONE) {
        strbuf_char(out, ' ');
        body_print(out, task->other);
    }
    strbuf_char(out, ':');
    for (int m = 0; m < MOMENT_COUNT; m++) {
        if (record->time[m] != TIME_NEVER) {
            strbuf_print(out, " %s ", moment_names[m]);
            strbuf_fixed(out, record->time[m], 2);
        }
    }
    strbuf_text(out, "  ");
    dump_point(out, record->from);
    strbuf_text(out, " -> ");
    dump_point(out, record->to);
    if (task->kind == TASK_SCREEN && record->defender != BODY_NONE) {
        strbuf_text(out, " on ");
        body_print(out, record->defender);
        dump_point(out, record->on);
    }
    if (record->gap >= 0) {
        strbuf_text(out, " gap ");
        strbuf_fixed(out, record->gap / FEET, 1);
    }
    if (record->lane_by != BODY_NONE) {
        strbuf_text(out, " lane ");
        strbuf_fixed(out, record->lane / FEET, 1);
        strbuf_char(out, ' ');
        body_print(out, record->lane_by);
    }
    if (record->miss >= 0) {
        strbuf_text(out, " off ");
        strbuf_fixed(out, record->miss / FEET, 1);
    }
    strbuf_text(out, record->carried ? " carried\n" : "\n");
}

static void dump_ball(struct strbuf *out, const struct segment *segment)
{
    static const char *const states[] = {"held by", "from", "shot by", "loose"};
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        strbuf_text(out, "  ball ");
        strbuf_fixed(out, span->from, 2);
        strbuf_text(out, " to ");
        strbuf_fixed(out, span->to, 2);
        strbuf_print(out, " %s", states[span->state]);
        if (span->state != BALL_LOOSE) {
            strbuf_char(out, ' ');
            body_print(out, span->holder);
        }
        if (span->state == BALL_FLIGHT) {
            strbuf_text(out, " to ");
            body_print(out, span->target);
        }
        strbuf_text(out, span->throw_in ? ", throw-in" : "");
        strbuf_char(out, '\n');
    }
}

static void dump_dribbles(struct strbuf *out, const struct segment *segment)
{
    for (size_t i = 0; i < segment->dribbles.count; i++) {
        const struct dribble_span *dribble = &segment->dribbles.at[i];
        strbuf_text(out, "  ");
        body_print(out, dribble->who);
        strbuf_text(out, " dribbles ");
        strbuf_fixed(out, dribble->from, 2);
        strbuf_text(out, " to ");
        strbuf_fixed(out, dribble->to, 2);
        strbuf_text(out, ", ");
        strbuf_fixed(out, dribble->length / FEET, 1);
        strbuf_print(out, " ft, %d\n", dribble->bounces);
    }
}

static void dump_ends(struct strbuf *out, const struct segment *segment)
{
    for (int b = 0; b < BODY_COUNT; b++) {
        if (has_track(segment, (body)b)) {
            strbuf_text(out, "  ");
            body_print(out, (body)b);
            strbuf_text(out, segment->track[b].on_floor ? " ends " : " (shadow) ends ");
            dump_point(out, segment_at(segment, (body)b, segment->duration));
            strbuf_char(out, '\n');
        }
    }
}

void run_dump(struct strbuf *out, const struct run *run)
{
    for (size_t s = 0; s < run->segments.count; s++) {
        const struct segment *segment = run->segments.at[s];
        strbuf_print(out, "step %d", segment->step + 1);
        if (segment->branch >= 0) {
            strbuf_char(out,
                        branch_letter(&segment->play->steps.at[segment->step], segment->branch));
        }
        strbuf_text(out, segment->ran ? " " : " FAILED ");
        strbuf_fixed(out, segment->duration, 2);
        strbuf_text(out, segment->main ? " s, main\n" : " s\n");
        for (size_t i = 0; i < segment->tasks; i++) {
            dump_task(out, segment, i);
        }
        dump_ball(out, segment);
        dump_dribbles(out, segment);
        dump_ends(out, segment);
    }
}
