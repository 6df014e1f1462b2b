/* SPDX-License-Identifier: MIT */
/* animate: a play, or one diagram of it, as one SVG that moves. */
#include "language/tell/tell.h"
#include "picture/svg/film.h"
#include "program/api/draw.h"

struct animate_job {
    struct courtwright *book;
    const struct courtwright_animate *animate;
    const struct compiled *compiled;
    struct writer writer;
};

static void parts_pick(struct arena *scratch, const struct animate_job *job,
                       moving_part_list *parts)
{
    const diagram_list *diagrams = &job->compiled->diagrams;
    if (!job->animate->alone) {
        moving_parts_of(scratch, diagrams, parts);
        return;
    }
    struct moving_part part = moving_part_of(&diagrams->at[job->animate->diagram]);
    part.before = MOVING_BEFORE;
    part.after = MOVING_AFTER;
    VEC_PUSH(scratch, parts, part);
}

/* Every part told, and the caution once. */
static struct str told(struct arena *scratch, const struct play *play,
                       const moving_part_list *parts)
{
    struct strbuf out;
    strbuf_init(&out, scratch);
    for (size_t i = 0; i < parts->count; i++) {
        const struct diagram *diagram = &parts->at[i].diagram;
        strbuf_print(&out, "%.*s. ", STR_ARG(diagram->label));
        const struct step *step = &play->steps.at[diagram->step];
        strbuf_add(&out, parts->at[i].again
                             ? tell_diagram_again(scratch, play, step, diagram->branch)
                             : tell_diagram(scratch, play, step, diagram->branch, 0));
        strbuf_char(&out, ' ');
    }
    strbuf_add(&out, tell_caution(scratch, play));
    return strbuf_str(&out);
}

static enum courtwright_status write_film(struct arena *scratch, void *ctx)
{
    struct animate_job *job = ctx;
    const struct courtwright_animate *animate = job->animate;
    job->compiled = runs_again(scratch, job->book, job->compiled);
    const diagram_list *diagrams = &job->compiled->diagrams;
    moving_part_list parts = {0};
    parts_pick(scratch, job, &parts);
    if (parts.count == 0) {
        return COURTWRIGHT_NO_SUCH;
    }
    struct scene_options options = {
        .width = animate->width,
        .theme = theme_meant(animate->theme),
        .accent = BODY_NONE,
        .hide_defense = animate->hide_defense,
        .together = diagrams,
        .heading = parts.count > 1 || parts.at[0].diagram.title.size > 0,
    };
    size_t first = animate->alone ? animate->diagram : 0;
    struct film film = {.still = scene_make(scratch, &diagrams->at[first], &options),
                        .moving = moving_make(scratch, parts.at, parts.count, &options)};
    film.title = animate->alone ? film.still->title : job->compiled->play->name;
    film.description = told(scratch, job->compiled->play, &parts);
    struct film_options how = {
        .salt = str_of(animate->salt), .fluid = animate->fluid, .loop = animate->loop};
    svg_film(scratch, &film, &how, &job->writer);
    return job->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_animate(struct courtwright *book,
                                            const struct courtwright_animate *animate,
                                            const struct courtwright_writer *writer)
{
    struct animate_job job = {book, animate, NULL, {writer->write, writer->ctx, false}};
    struct courtwright_draw same = {.theme = animate->theme, .width = animate->width};
    if (!draw_options_good(&same)) {
        return COURTWRIGHT_BAD_OPTION;
    }
    if (animate->play >= book->play_count) {
        return COURTWRIGHT_NO_SUCH;
    }
    job.compiled = &book->plays[animate->play];
    if (!job.compiled->ran) {
        return COURTWRIGHT_BROKEN;
    }
    if (animate->alone && animate->diagram >= job.compiled->diagrams.count) {
        return COURTWRIGHT_NO_SUCH;
    }
    return with_scratch(&book->memory, write_film, &job);
}
