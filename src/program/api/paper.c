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

static enum courtwright_status pick(struct arena *scratch, const struct paper_call *call,
                                    struct paper_job *job)
{
    struct ran_plays ran;
    enum courtwright_status status =
        runs_asked_for(scratch, call->book, call->options->plays, call->options->play_count, &ran);
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    struct web_play *plays = arena_array(scratch, struct web_play, ran.count);
    const finding_list **findings = arena_array(scratch, const finding_list *, ran.count);
    for (size_t i = 0; i < ran.count; i++) {
        plays[i] = (struct web_play){ran.at[i]->play, ran.at[i]->run};
        findings[i] = &ran.at[i]->findings;
    }
    job->web.plays = plays;
    job->web.count = ran.count;
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
                .run_ctx = call->book,
                .season = call->book->season,
                .a4 = paper_is_a4(call->book, call->options->paper)},
        .reader = call->options->reader,
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
    if (call.options->reader < 0 || call.options->reader > 5 ||
        (unsigned)call.options->paper > COURTWRIGHT_A4) {
        return COURTWRIGHT_BAD_OPTION;
    }
    return book->playbook ? with_scratch(&book->memory, write_paper, &call) : COURTWRIGHT_BROKEN;
}
