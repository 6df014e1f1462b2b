/* SPDX-License-Identifier: MIT */
/* tidy: the text in its one form, and the stages of the work as text. */
#include "language/tidy/tidy.h"
#include "program/api/handle.h"

struct text_job {
    struct courtwright *book;
    struct writer writer;
    const struct compiled *compiled;
    enum courtwright_stage stage;
};

static enum courtwright_status write_tidy(struct arena *scratch, void *ctx)
{
    struct text_job *job = ctx;
    writer_str(&job->writer, tidy_book(scratch, &job->book->sources, job->book->book));
    return job->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_tidy(struct courtwright *book,
                                         const struct courtwright_writer *writer)
{
    struct text_job job = {.book = book, .writer = {writer->write, writer->ctx, false}};
    return book->book ? with_scratch(&book->memory, write_tidy, &job) : COURTWRIGHT_BROKEN;
}

static enum courtwright_status write_upgraded(struct arena *scratch, void *ctx)
{
    struct text_job *job = ctx;
    writer_str(&job->writer, tidy_upgrade(scratch, &job->book->sources, job->book->book));
    return job->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_upgrade(struct courtwright *book,
                                            const struct courtwright_writer *writer)
{
    struct text_job job = {.book = book, .writer = {writer->write, writer->ctx, false}};
    bool broken = !book->book || !tidy_can_upgrade(book->book);
    return broken ? COURTWRIGHT_BROKEN : with_scratch(&book->memory, write_upgraded, &job);
}

static void dump_scenes(struct arena *scratch, struct strbuf *out, const struct compiled *compiled)
{
    struct scene_options options = {.accent = BODY_NONE};
    for (size_t i = 0; i < compiled->diagrams.count; i++) {
        scene_dump(out, scene_make(scratch, &compiled->diagrams.at[i], &options));
    }
}

static enum courtwright_status write_dump(struct arena *scratch, void *ctx)
{
    struct text_job *job = ctx;
    struct strbuf out;
    strbuf_init(&out, scratch);
    if (job->stage != COURTWRIGHT_RESOLVED) {
        job->compiled = runs_again(scratch, job->book, job->compiled);
    }
    switch (job->stage) {
    case COURTWRIGHT_RESOLVED:
        play_dump(&out, job->compiled->play);
        break;
    case COURTWRIGHT_RUN:
        run_dump(&out, job->compiled->run);
        break;
    case COURTWRIGHT_SCENE:
        dump_scenes(scratch, &out, job->compiled);
        break;
    default:
        return COURTWRIGHT_BAD_OPTION;
    }
    writer_str(&job->writer, strbuf_str(&out));
    return job->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_dump(struct courtwright *book, size_t play,
                                         enum courtwright_stage stage,
                                         const struct courtwright_writer *writer)
{
    struct text_job job = {
        .book = book, .writer = {writer->write, writer->ctx, false}, .stage = stage};
    if (play >= book->play_count) {
        return COURTWRIGHT_NO_SUCH;
    }
    job.compiled = &book->plays[play];
    if (!job.compiled->ran && stage != COURTWRIGHT_RESOLVED) {
        return COURTWRIGHT_BROKEN;
    }
    return with_scratch(&book->memory, write_dump, &job);
}
