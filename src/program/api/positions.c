/* SPDX-License-Identifier: MIT */
/* positions: a run as JSON, written piece by piece: a season at 120 a second need not fit in
 * memory. The core has no JSON library, and numbers must not hang on the locale: so by hand.
 * positions.schema.json says what each field means; a test holds the two against each other. */
#include "program/api/handle.h"

#define DECIMALS 6 /* micrometres, microseconds */

struct positions_job {
    const struct courtwright *book;
    const struct compiled *compiled;
    int rate;
    struct writer writer;
};

static void put_text(struct positions_job *job, struct str text)
{
    static const char hex[] = "0123456789abcdef";
    struct writer *writer = &job->writer;
    writer_text(writer, "\"");
    for (size_t i = 0; i < text.size; i++) {
        unsigned char c = (unsigned char)text.at[i];
        if (c < ' ') {
            char escaped[] = {'\\', 'u', '0', '0', hex[c >> 4], hex[c & 15]};
            writer_bytes(writer, escaped, sizeof escaped);
            continue;
        }
        if (c == '"' || c == '\\') {
            writer_text(writer, "\\");
        }
        writer_bytes(writer, &text.at[i], 1);
    }
    writer_text(writer, "\"");
}

static void put_number(struct positions_job *job, const char *before, double value)
{
    writer_text(&job->writer, before);
    writer_number(&job->writer, value, DECIMALS);
}

static void put_list(struct positions_job *job, const char *before, const double *values,
                     size_t count)
{
    writer_text(&job->writer, before);
    for (size_t i = 0; i < count; i++) {
        put_number(job, i ? "," : "[", values[i]);
    }
    writer_text(&job->writer, "]");
}

static void put_body(struct positions_job *job, struct arena *scratch, const char *before, body b)
{
    struct strbuf name;
    writer_text(&job->writer, before);
    if (b == BODY_NONE) {
        writer_text(&job->writer, "null");
        return;
    }
    strbuf_init(&name, scratch);
    body_print(&name, b);
    put_text(job, strbuf_str(&name));
}

static void put_flag(struct positions_job *job, const char *before, bool flag)
{
    writer_text(&job->writer, before);
    writer_text(&job->writer, flag ? "true" : "false");
}

/* ---- at even times, and at the end ---- */

static size_t frames(const struct positions_job *job, const struct segment *segment)
{
    size_t whole = (size_t)(segment->duration * job->rate + 1e-6);
    bool ends = segment->duration - (double)whole / job->rate > 1e-6;
    return whole + 1 + ends;
}

static double frame_time(const struct positions_job *job, const struct segment *segment, size_t i)
{
    double even = (double)i / job->rate;
    return even < segment->duration ? even : segment->duration;
}

static void put_times(struct positions_job *job, const struct segment *segment)
{
    writer_text(&job->writer, ",\n\"times\":[");
    for (size_t i = 0; i < frames(job, segment); i++) {
        put_number(job, i ? "," : "", frame_time(job, segment, i));
    }
    writer_text(&job->writer, "]");
}

static void put_track(struct positions_job *job, const struct segment *segment, body b)
{
    for (size_t i = 0; i < frames(job, segment); i++) {
        double t = frame_time(job, segment, i);
        struct vec2 at = segment_at(segment, b, t), v = segment_velocity(segment, b, t);
        double values[] = {at.x, at.y, v.x, v.y};
        put_list(job, i ? "," : "[", values, 4);
    }
    writer_text(&job->writer, "]");
}

static void put_tracks(struct positions_job *job, struct arena *scratch,
                       const struct segment *segment)
{
    bool first = true;
    writer_text(&job->writer, ",\n\"bodies\":{");
    for (int b = 0; b < BODY_COUNT; b++) {
        if (segment->track[b].on_floor) {
            put_body(job, scratch, first ? "\n" : ",\n", (body)b);
            writer_text(&job->writer, ":");
            put_track(job, segment, (body)b);
            first = false;
        }
    }
    writer_text(&job->writer, "}");
}

static void put_ball(struct positions_job *job, struct arena *scratch,
                     const struct segment *segment)
{
    size_t count = segment->ball.count ? frames(job, segment) : 0;
    writer_text(&job->writer, ",\n\"ball\":[");
    for (size_t i = 0; i < count; i++) {
        double t = frame_time(job, segment, i);
        struct vec2 at = segment_ball(segment, t);
        double values[] = {at.x, at.y, segment_ball_height(segment, t)};
        put_list(job, i ? "," : "", values, 3);
    }
    writer_text(&job->writer, "],\n\"holder\":[");
    for (size_t i = 0; i < count; i++) {
        body holder = segment_holder(segment, frame_time(job, segment, i));
        put_body(job, scratch, i ? "," : "", holder);
    }
    writer_text(&job->writer, "]");
}

/* ---- at their own times ---- */

static void put_spans(struct positions_job *job, struct arena *scratch,
                      const struct segment *segment)
{
    static const char *const states[] = {[BALL_HELD] = "held",
                                         [BALL_FLIGHT] = "passed",
                                         [BALL_SHOT] = "shot",
                                         [BALL_LOOSE] = "loose"};
    writer_text(&job->writer, ",\n\"spans\":[");
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        struct vec2 end = segment_ball(segment, span->to);
        double high = segment_ball_height(segment, span->to);
        if (span->state != BALL_HELD) {
            end = span->end;
            high = motion_flight_height(&span->flight, span->to - span->from);
        }
        const double places[] = {span->start.x, span->start.y, span->flight.from_z,
                                 end.x,         end.y,         high};
        put_number(job, i ? ",\n{\"from\":" : "\n{\"from\":", span->from);
        put_number(job, ",\"to\":", span->to);
        writer_text(&job->writer, ",\"state\":");
        put_text(job, str_of(states[span->state]));
        put_body(job, scratch, ",\"by\":", span->holder);
        put_body(job, scratch, ",\"for\":", span->target);
        put_list(job, ",\"start\":", places, 3);
        put_list(job, ",\"end\":", places + 3, 3);
        put_flag(job, ",\"throw_in\":", span->throw_in);
        if (span->flight.law == FLIGHT_BOUNCE) {
            put_number(job, ",\"bounce\":", span->from + span->flight.bounce_seconds);
        }
        writer_text(&job->writer, "}");
    }
    writer_text(&job->writer, "]");
}

static void put_dribbles(struct positions_job *job, struct arena *scratch,
                         const struct segment *segment)
{
    writer_text(&job->writer, ",\n\"dribbles\":[");
    for (size_t i = 0; i < segment->dribbles.count; i++) {
        const struct dribble_span *dribble = &segment->dribbles.at[i];
        put_body(job, scratch, i ? ",\n{\"who\":" : "\n{\"who\":", dribble->who);
        put_number(job, ",\"from\":", dribble->from);
        put_number(job, ",\"to\":", dribble->to);
        put_number(job, ",\"length\":", dribble->length);
        put_number(job, ",\"bounces\":", dribble->bounces);
        writer_text(&job->writer, "}");
    }
    writer_text(&job->writer, "]");
}

static const char *const moments[MOMENT_COUNT] = {
    [MOMENT_STARTED] = "started", [MOMENT_RELEASED] = "released", [MOMENT_SET] = "set",
    [MOMENT_CAUGHT] = "caught",   [MOMENT_USED] = "used",         [MOMENT_ARRIVED] = "arrived"};

static void put_tasks(struct positions_job *job, struct arena *scratch,
                      const struct segment *segment)
{
    writer_text(&job->writer, ",\n\"tasks\":[");
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        const struct task_record *record = &segment->record[i];
        const double places[] = {record->from.x, record->from.y, record->to.x, record->to.y};
        put_body(job, scratch, i ? ",\n{\"who\":" : "\n{\"who\":", task->who);
        writer_text(&job->writer, ",\"verb\":");
        put_text(job, str_of(verb_row(task->verb)->words));
        put_body(job, scratch, ",\"other\":", task->other);
        put_list(job, ",\"from\":", places, 2);
        put_list(job, ",\"to\":", places + 2, 2);
        for (int moment = 0; moment < MOMENT_COUNT; moment++) {
            if (record->time[moment] >= 0) {
                writer_text(&job->writer, ",\"");
                writer_text(&job->writer, moments[moment]);
                put_number(job, "\":", record->time[moment]);
            }
        }
        if (record->miss >= 0) {
            put_number(job, ",\"off\":", record->miss);
        }
        if (record->lane_by != BODY_NONE) {
            put_number(job, ",\"lane\":", record->lane);
            put_body(job, scratch, ",\"lane_by\":", record->lane_by);
        }
        writer_text(&job->writer, "}");
    }
    writer_text(&job->writer, "]");
}

struct happening {
    double t;
    size_t task;
    int moment;
};

/* The next one behind `last`, by time, task and moment; false: there is none. */
static bool next_event(const struct segment *segment, const struct happening *last,
                       struct happening *next)
{
    bool found = false;
    for (size_t i = 0; i < segment->tasks; i++) {
        for (int moment = 0; moment < MOMENT_COUNT; moment++) {
            double t = segment->record[i].time[moment];
            bool behind =
                t > last->t ||
                (t == last->t && (i > last->task || (i == last->task && moment > last->moment)));
            if (t >= 0 && behind && (!found || t < next->t)) {
                *next = (struct happening){t, i, moment};
                found = true;
            }
        }
    }
    return found;
}

static void put_events(struct positions_job *job, const struct segment *segment)
{
    struct happening now = {.t = -1}, next;
    const char *before = "\n{\"t\":";
    writer_text(&job->writer, ",\n\"events\":[");
    while (next_event(segment, &now, &next)) {
        put_number(job, before, next.t);
        writer_text(&job->writer, ",\"what\":");
        put_text(job, str_of(moments[next.moment]));
        put_number(job, ",\"task\":", (double)next.task);
        writer_text(&job->writer, "}");
        before = ",\n{\"t\":";
        now = next;
    }
    writer_text(&job->writer, "]");
}

static void put_segment(struct positions_job *job, struct arena *scratch, size_t index)
{
    const struct diagram *diagram = &job->compiled->diagrams.at[index];
    const struct courtwright_diagram *told = &job->compiled->told_diagrams[index];
    const struct segment *segment = diagram->segment;
    put_number(job, index ? ",\n{\"step\":" : "\n{\"step\":", told->step);
    put_number(job, ",\"branch\":", told->branch);
    writer_text(&job->writer, ",\"label\":");
    put_text(job, str_of(told->label));
    writer_text(&job->writer, ",\"title\":");
    put_text(job, str_of(told->title));
    put_flag(job, ",\"main\":", segment->main);
    put_flag(job, ",\"ran\":", segment->ran);
    put_number(job, ",\"start\":", segment->time_before);
    put_number(job, ",\"duration\":", segment->duration);
    put_times(job, segment);
    put_tracks(job, scratch, segment);
    put_ball(job, scratch, segment);
    put_spans(job, scratch, segment);
    put_dribbles(job, scratch, segment);
    put_tasks(job, scratch, segment);
    put_events(job, segment);
    writer_text(&job->writer, "}");
}

static void put_court(struct positions_job *job, const struct court *court)
{
    writer_text(&job->writer, ",\"court\":{\"rules\":");
    put_text(job, str_of(court->word));
    put_number(job, ",\"half_width\":", court->half_width);
    put_number(job, ",\"baseline\":", court->baseline);
    put_number(job, ",\"half_court\":", court->half_court);
    put_number(job, ",\"arc\":", court->arc);
    put_number(job, ",\"ring_height\":", court->ring_height);
    writer_text(&job->writer, "}");
}

static enum courtwright_status write_positions(struct arena *scratch, void *ctx)
{
    struct positions_job *job = ctx;
    job->compiled = runs_again(scratch, job->book, job->compiled);
    writer_text(&job->writer, "{\"schema\":\"courtwright-positions-2\",\"play\":");
    put_text(job, str_of(job->compiled->told.name));
    put_number(job, ",\"rate\":", job->rate);
    put_court(job, job->compiled->play->court);
    writer_text(&job->writer, ",\"segments\":[");
    for (size_t i = 0; i < job->compiled->diagrams.count; i++) {
        put_segment(job, scratch, i);
    }
    writer_text(&job->writer, "]}\n");
    return job->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_positions(struct courtwright *book, size_t play, int rate,
                                              const struct courtwright_writer *writer)
{
    struct positions_job job = {.rate = rate ? rate : 30,
                                .writer = {writer->write, writer->ctx, false}};
    if (play >= book->play_count) {
        return COURTWRIGHT_NO_SUCH;
    }
    if (rate < 0 || rate > 120) {
        return COURTWRIGHT_BAD_OPTION;
    }
    job.book = book;
    job.compiled = &book->plays[play];
    return job.compiled->ran ? with_scratch(&book->memory, write_positions, &job)
                             : COURTWRIGHT_BROKEN;
}

static const char schema[] = {
#include "positions_schema.inc"
    , 0};

const char *courtwright_positions_schema(void)
{
    return schema;
}
