/* SPDX-License-Identifier: MIT */
/* web: plays to one HTML file. */
#include "page/web/web.h"

#include "program/api/handle.h"

struct page_job {
    struct courtwright *book;
    const struct courtwright_web *web;
    struct writer writer;
};

/* Is it the whole book, and not some plays of it? */
static bool is_whole(const struct courtwright *book, const struct web_job *page)
{
    size_t count = 0;
    for (size_t i = 0; i < book->play_count; i++) {
        count += book->plays[i].ran;
    }
    return page->count == count;
}

struct web_job web_job_of(struct arena *scratch, struct courtwright *book,
                          const struct ran_plays *ran)
{
    struct web_play *plays = arena_array(scratch, struct web_play, ran->count);
    for (size_t i = 0; i < ran->count; i++) {
        plays[i] = (struct web_play){ran->at[i]->play, ran->at[i]->run};
    }
    return (struct web_job){.book = book->playbook,
                            .plays = plays,
                            .count = ran->count,
                            .run_again = runs_of_play,
                            .run_ctx = book};
}

static enum courtwright_status write_page(struct arena *scratch, void *ctx)
{
    struct page_job *job = ctx;
    struct ran_plays ran;
    enum courtwright_status status =
        runs_asked_for(scratch, job->book, job->web->plays, job->web->play_count, &ran);
    if (status != COURTWRIGHT_OK || ran.count == 0) {
        return status != COURTWRIGHT_OK ? status : COURTWRIGHT_NO_SUCH;
    }
    struct web_job page = web_job_of(scratch, job->book, &ran);
    page.names = job->web->names;
    page.date_text = str_of(job->web->date_text);
    page.a4 = paper_is_a4(job->book, COURTWRIGHT_BOOK_PAPER);
    page.season = is_whole(job->book, &page) ? job->book->season : NULL;
    web_book_write(scratch, &page, &job->writer);
    return job->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_web(struct courtwright *book, const struct courtwright_web *web,
                                        const struct courtwright_writer *writer)
{
    struct page_job job = {book, web, {writer->write, writer->ctx, false}};
    return book->playbook ? with_scratch(&book->memory, write_page, &job) : COURTWRIGHT_BROKEN;
}
