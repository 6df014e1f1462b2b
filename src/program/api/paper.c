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

static const finding_list *const *findings_of(struct arena *scratch, const struct ran_plays *ran)
{
    const finding_list **findings = arena_array(scratch, const finding_list *, ran->count);
    for (size_t i = 0; i < ran->count; i++) {
        findings[i] = &ran->at[i]->findings;
    }
    return findings;
}

static enum courtwright_status write_paper(struct arena *scratch, void *ctx)
{
    struct paper_call *call = ctx;
    const struct courtwright_handout *options = call->options;
    struct ran_plays ran;
    enum courtwright_status status =
        runs_asked_for(scratch, call->book, options->plays, options->play_count, &ran);
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    struct paper_job job = {
        .web = web_job_of(scratch, call->book, &ran),
        .findings = findings_of(scratch, &ran),
        .reader = options->reader,
        .title = str_of(options->title),
    };
    job.web.names = options->names;
    job.web.a4 = paper_is_a4(call->book, options->paper);
    job.web.season = call->book->season;
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
