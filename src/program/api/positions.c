/* SPDX-License-Identifier: MIT */
/* positions: a run as JSON, written piece by piece: a season at 120 a second need not fit in
 * memory. The core has no JSON library, and numbers must not hang on the locale: so by hand. */
#include "program/api/handle.h"

struct positions_job {
    const struct compiled *compiled;
    int rate;
    struct writer writer;
};

static void put_text(struct positions_job *job, struct str text)
{
    struct writer *writer = &job->writer;
    writer_text(writer, "\"");
    for (size_t i = 0; i < text.size; i++) {
        char c = text.at[i];
        if (c == '"' || c == '\\') {
            writer_text(writer, "\\");
        }
        writer_bytes(writer, &c, 1);
    }
    writer_text(writer, "\"");
}

static void put_number(struct positions_job *job, const char *before, double value)
{
    writer_text(&job->writer, before);
    writer_number(&job->writer, value, 3);
}

static void put_point(struct positions_job *job, size_t index, struct vec2 p)
{
    put_number(job, index ? ",[" : "[", p.x);
    put_number(job, ",", p.y);
    writer_text(&job->writer, "]");
}

static void put_body(struct positions_job *job, struct arena *scratch, body b)
{
    struct strbuf name;
    strbuf_init(&name, scratch);
    body_print(&name, b);
    put_text(job, strbuf_str(&name));
}

static size_t frames(const struct positions_job *job, const struct segment *segment)
{
    return (size_t)(segment->duration * job->rate + 1e-9) + 1;
}

static void put_tracks(struct positions_job *job, struct arena *scratch,
                       const struct segment *segment)
{
    size_t count = frames(job, segment);
    bool first = true;
    writer_text(&job->writer, ",\"bodies\":{");
    for (int b = 0; b < BODY_COUNT; b++) {
        if (!segment->track[b].on_floor) {
            continue;
        }
        writer_text(&job->writer, first ? "\n" : ",\n");
        first = false;
        put_body(job, scratch, (body)b);
        writer_text(&job->writer, ":[");
        for (size_t i = 0; i < count; i++) {
            put_point(job, i, segment_at(segment, (body)b, (double)i / job->rate));
        }
        writer_text(&job->writer, "]");
    }
    writer_text(&job->writer, "}");
}

static void put_ball(struct positions_job *job, struct arena *scratch,
                     const struct segment *segment)
{
    size_t count = frames(job, segment);
    writer_text(&job->writer, ",\n\"ball\":[");
    for (size_t i = 0; i < count; i++) {
        put_point(job, i, segment_ball(segment, (double)i / job->rate));
    }
    writer_text(&job->writer, "],\n\"holder\":[");
    for (size_t i = 0; i < count; i++) {
        body holder = segment_holder(segment, (double)i / job->rate);
        writer_text(&job->writer, i ? "," : "");
        if (holder == BODY_NONE) {
            writer_text(&job->writer, "null");
        } else {
            put_body(job, scratch, holder);
        }
    }
    writer_text(&job->writer, "]");
}

static void put_tasks(struct positions_job *job, struct arena *scratch,
                      const struct segment *segment)
{
    static const char *const moments[MOMENT_COUNT] = {
        [MOMENT_STARTED] = ",\"started\":", [MOMENT_RELEASED] = ",\"released\":",
        [MOMENT_SET] = ",\"set\":",         [MOMENT_CAUGHT] = ",\"caught\":",
        [MOMENT_USED] = ",\"used\":",       [MOMENT_ARRIVED] = ",\"arrived\":"};
    writer_text(&job->writer, ",\n\"tasks\":[");
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        writer_text(&job->writer, i ? ",\n{\"who\":" : "\n{\"who\":");
        put_body(job, scratch, task->who);
        writer_text(&job->writer, ",\"verb\":");
        put_text(job, str_of(verb_row(task->verb)->words));
        for (int moment = 0; moment < MOMENT_COUNT; moment++) {
            if (segment->record[i].time[moment] >= 0) {
                put_number(job, moments[moment], segment->record[i].time[moment]);
            }
        }
        writer_text(&job->writer, "}");
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
    writer_text(&job->writer, segment->main ? ",\"main\":true" : ",\"main\":false");
    writer_text(&job->writer, segment->ran ? ",\"ran\":true" : ",\"ran\":false");
    put_number(job, ",\"start\":", segment->time_before);
    put_number(job, ",\"duration\":", segment->duration);
    writer_text(&job->writer, ",\n\"times\":[");
    for (size_t i = 0; i < frames(job, segment); i++) {
        put_number(job, i ? "," : "", (double)i / job->rate);
    }
    writer_text(&job->writer, "]");
    put_tracks(job, scratch, segment);
    put_ball(job, scratch, segment);
    put_tasks(job, scratch, segment);
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
    writer_text(&job->writer, "}");
}

static enum courtwright_status write_positions(struct arena *scratch, void *ctx)
{
    struct positions_job *job = ctx;
    writer_text(&job->writer, "{\"schema\":\"courtwright-positions-1\",\"play\":");
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
    job.compiled = &book->plays[play];
    return job.compiled->run ? with_scratch(&book->memory, write_positions, &job)
                             : COURTWRIGHT_BROKEN;
}
