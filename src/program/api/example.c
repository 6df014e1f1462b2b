/* SPDX-License-Identifier: MIT */
/* example: the good and the bad example of a check, run and drawn side by side, with what the check
 * sees in the bad one. */
#include <string.h>

#include "program/api/draw.h"

/* One of the two, as it runs; a bad one that cannot be run to its end as far as it goes. */
struct half {
    struct courtwright *book;
    finding_list findings; /* of the check alone */
    diagram_list diagrams;
    size_t shown; /* of the diagrams */
};

static void run_side(struct arena *scratch, struct half *side, const struct check_row *row)
{
    const struct play *play = side->book->plays[0].play;
    struct diags *unsaid = arena_new(scratch, struct diags);
    diags_init(unsaid, scratch);
    struct run *run = sim_run(scratch, &side->book->sources, play, unsaid);
    finding_list all;
    check_run(scratch, run, &all);
    scene_diagrams(scratch, run, &side->diagrams);
    for (size_t i = 0; i < all.count; i++) {
        if (all.at[i].row == row) {
            VEC_PUSH(scratch, &side->findings, all.at[i]);
        }
    }
}

/* The first diagram in which the check sees something. */
static size_t found_in(const struct half *side)
{
    for (size_t i = 0; i < side->diagrams.count; i++) {
        const struct diagram *diagram = &side->diagrams.at[i];
        for (size_t k = 0; k < side->findings.count; k++) {
            const struct finding *finding = &side->findings.at[k];
            if (finding->step == diagram->step && finding->branch == diagram->branch) {
                return i;
            }
        }
    }
    return 0;
}

static const struct scene *scene_of_side(struct arena *scratch, const struct half *side,
                                         const struct courtwright_draw *draw, const char *label)
{
    struct diagram diagram = side->diagrams.at[side->shown];
    struct str step = diagram.label;
    diagram.label = str_of(label);
    if (side->diagrams.count > 1) {
        diagram.label = str_format(scratch, "%s: step %.*s", label, STR_ARG(step));
    }
    diagram.title = STR("");
    struct scene_options options = {.width = draw->width,
                                    .theme = theme_meant(draw->theme),
                                    .accent = BODY_NONE,
                                    .caption = true,
                                    .findings = &side->findings};
    return scene_make(scratch, &diagram, &options);
}

struct example_job {
    const struct check_row *row;
    const struct courtwright_draw *draw;
    struct half good, bad;
    struct writer writer;
};

static enum courtwright_status draw_both(struct arena *scratch, void *ctx)
{
    struct example_job *job = ctx;
    run_side(scratch, &job->good, job->row);
    run_side(scratch, &job->bad, job->row);
    if (job->good.diagrams.count == 0 || job->bad.diagrams.count == 0) {
        return COURTWRIGHT_BROKEN;
    }
    job->bad.shown = found_in(&job->bad);
    job->good.shown =
        job->bad.shown < job->good.diagrams.count ? job->bad.shown : job->good.diagrams.count - 1;
    const struct scene *scenes[] = {scene_of_side(scratch, &job->good, job->draw, "Good"),
                                    scene_of_side(scratch, &job->bad, job->draw, "Not good")};
    return print_side_by_side(scratch, job->good.book, scenes, 2, str_of(job->row->id), job->draw,
                              &job->writer);
}

static struct courtwright *load_side(const char *text, const struct courtwright_host *host)
{
    struct courtwright *book = courtwright_load("example", text, strlen(text), host);
    bool whole = book && book->play_count > 0 && !book->plays[0].broken;
    if (book && !whole) {
        courtwright_free(book);
    }
    return whole ? book : NULL;
}

enum courtwright_status courtwright_draw_example(const char *check,
                                                 const struct courtwright_host *host,
                                                 const struct courtwright_draw *draw,
                                                 const struct courtwright_writer *writer)
{
    struct example_job job = {.row = check ? check_find(str_of(check)) : NULL,
                              .draw = draw,
                              .writer = {writer->write, writer->ctx, false}};
    if (!job.row || !job.row->good || !job.row->bad) {
        return COURTWRIGHT_NO_SUCH;
    }
    if (draw->format == COURTWRIGHT_SVG_LIVE || !draw_options_good(draw)) {
        return COURTWRIGHT_BAD_OPTION;
    }
    struct courtwright_host bare = host ? *host : (struct courtwright_host){0};
    bare.fetch = NULL;
    job.good.book = load_side(job.row->good, &bare);
    job.bad.book = load_side(job.row->bad, &bare);
    enum courtwright_status status = COURTWRIGHT_MEMORY;
    if (job.good.book && job.bad.book) {
        status = with_scratch(&job.good.book->memory, draw_both, &job);
    }
    courtwright_free(job.good.book);
    courtwright_free(job.bad.book);
    return status;
}
