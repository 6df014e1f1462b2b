/* SPDX-License-Identifier: MIT */
/* paper: sheets as HTML, for a browser's own printing. */
#include "page/web/paper.h"

#include "page/web/html.h"
#include "program/api/handle.h"

struct paper_call {
    struct courtwright *book;
    const struct paper_row *row;
    const struct courtwright_handout *options;
    struct writer writer;
};

/* Of the plays that are meant those that were run. */
static enum courtwright_status pick(struct arena *scratch, const struct paper_call *call,
                                    struct paper_job *job)
{
    const struct courtwright_handout *options = call->options;
    const struct courtwright *book = call->book;
    size_t count = options->plays ? options->play_count : book->play_count;
    struct web_play *plays = arena_array(scratch, struct web_play, count);
    const finding_list **findings = arena_array(scratch, const finding_list *, count);
    for (size_t i = 0; i < count; i++) {
        size_t index = options->plays ? options->plays[i] : i;
        if (index >= book->play_count) {
            return COURTWRIGHT_NO_SUCH;
        }
        const struct compiled *compiled = &book->plays[index];
        if (compiled->ran) {
            findings[job->web.count] = &compiled->findings;
            plays[job->web.count++] = (struct web_play){compiled->play, compiled->run};
        } else if (options->plays) {
            return COURTWRIGHT_BROKEN;
        }
    }
    job->web.plays = plays;
    job->findings = findings;
    return COURTWRIGHT_OK;
}

static enum courtwright_status write_paper(struct arena *scratch, void *ctx)
{
    struct paper_call *call = ctx;
    struct paper_job job = {
        .web = {.book = call->book->playbook,
                .names = call->options->names,
                .run_again = runs_of_play,
                .run_ctx = call->book},
        .season = call->book->season,
        .reader = call->options->reader,
        .a4 = call->options->paper == COURTWRIGHT_A4,
        .title = str_of(call->options->title),
    };
    enum courtwright_status status = pick(scratch, call, &job);
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    struct html html = {scratch, &call->writer};
    if (!call->row->write(&html, &job)) {
        return COURTWRIGHT_NO_SUCH;
    }
    return call->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_paper_html(struct courtwright *book, const char *sheet,
                                               const struct courtwright_handout *options,
                                               const struct courtwright_writer *writer)
{
    static const struct courtwright_handout plain = {0};
    struct paper_call call = {.book = book,
                              .row = paper_find(str_of(sheet)),
                              .options = options ? options : &plain,
                              .writer = {writer->write, writer->ctx, false}};
    if (!call.row) {
        return COURTWRIGHT_NO_SUCH;
    }
    if (call.options->reader < 0 || call.options->reader > 5) {
        return COURTWRIGHT_BAD_OPTION;
    }
    return book->playbook ? with_scratch(&book->memory, write_paper, &call) : COURTWRIGHT_BROKEN;
}
