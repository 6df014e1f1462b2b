/* SPDX-License-Identifier: MIT */
/* draw: diagrams to pictures: options checked, scenes made, and given to the writer of the format.
 */
#include <assert.h>
#include <string.h>

#include "picture/svg/svg.h"
#include "program/api/draw.h"

struct draw_job {
    struct courtwright *book;
    const struct courtwright_draw *draw;
    struct writer writer;
    const struct compiled *compiled;
};

static bool in_range(double value, double low, double high)
{
    return value == 0 || (value >= low && value <= high);
}

bool draw_options_good(const struct courtwright_draw *draw)
{
    bool known = (unsigned)draw->format <= COURTWRIGHT_PNG &&
                 (unsigned)draw->layout <= COURTWRIGHT_GRID &&
                 (unsigned)draw->theme <= COURTWRIGHT_DARK;
    bool alone = draw->format != COURTWRIGHT_SVG_LIVE || draw->layout == COURTWRIGHT_SINGLE;
    return known && alone && in_range(draw->width, 72, 2000) && in_range(draw->scale, .5, 10);
}

static enum courtwright_status find(struct courtwright *book, const struct courtwright_draw *draw,
                                    const struct compiled **compiled)
{
    if (!draw_options_good(draw)) {
        return COURTWRIGHT_BAD_OPTION;
    }
    if (draw->play >= book->play_count) {
        return COURTWRIGHT_NO_SUCH;
    }
    *compiled = &book->plays[draw->play];
    if (!(*compiled)->ran) {
        return COURTWRIGHT_BROKEN;
    }
    size_t all = (*compiled)->diagrams.count;
    if (draw->diagram >= all || draw->count > all - draw->diagram) {
        return COURTWRIGHT_NO_SUCH;
    }
    return COURTWRIGHT_OK;
}

enum theme theme_meant(enum courtwright_theme theme)
{
    static const enum theme themes[] = {
        [COURTWRIGHT_PRINT] = THEME_PRINT,
        [COURTWRIGHT_SCREEN] = THEME_SCREEN,
        [COURTWRIGHT_DARK] = THEME_DARK,
    };
    return themes[theme];
}

static struct scene_options scene_wanted(const struct courtwright *book,
                                         const struct courtwright_draw *draw,
                                         const struct compiled *compiled)
{
    return (struct scene_options){
        .width = draw->width,
        .theme = theme_meant(draw->theme),
        .accent = BODY_NONE,
        .hide_defense = draw->hide_defense,
        .caption = draw->caption,
        .caution = draw->caution,
        .beads = draw->beads,
        .names = draw->names && book->playbook ? &book->playbook->team : NULL,
        .told_elsewhere = draw->only_lettered,
        .findings = draw->show_checks ? &compiled->findings : NULL,
    };
}

const struct scene **scenes_make(struct arena *scratch, const struct courtwright *book,
                                 const struct compiled *compiled,
                                 const struct courtwright_draw *draw, size_t *count)
{
    struct scene_options options = scene_wanted(book, draw, compiled);
    size_t rest = compiled->diagrams.count - draw->diagram;
    *count = draw->layout == COURTWRIGHT_SINGLE ? 1 : draw->count ? draw->count : rest;
    const struct scene **scenes = arena_array(scratch, const struct scene *, *count);
    for (size_t i = 0; i < *count; i++) {
        scenes[i] = scene_make(scratch, &compiled->diagrams.at[draw->diagram + i], &options);
    }
    return scenes;
}

static enum courtwright_status draw_live(struct arena *scratch, void *ctx)
{
    struct draw_job *job = ctx;
    size_t count;
    job->compiled = runs_again(scratch, job->book, job->compiled);
    const struct scene **scenes = scenes_make(scratch, job->book, job->compiled, job->draw, &count);
    struct svg_options options = {.salt = str_of(job->draw->salt), .fluid = job->draw->fluid};
    svg_write(scratch, scenes[0], &options, &job->writer);
    return job->writer.failed ? COURTWRIGHT_WRITE : COURTWRIGHT_OK;
}

enum courtwright_status courtwright_draw(struct courtwright *book,
                                         const struct courtwright_draw *draw,
                                         const struct courtwright_writer *writer)
{
    struct draw_job job = {book, draw, {writer->write, writer->ctx, false}, NULL};
    enum courtwright_status status = find(book, draw, &job.compiled);
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    if (draw->format == COURTWRIGHT_SVG_LIVE) {
        return with_scratch(&book->memory, draw_live, &job);
    }
    return draw_print(book, job.compiled, draw, &job.writer);
}

struct measure_job {
    const struct courtwright *book;
    const struct compiled *compiled;
    const struct courtwright_draw *draw;
    struct scene_measure found;
};

static enum courtwright_status measure_one(struct arena *scratch, void *ctx)
{
    struct measure_job *job = ctx;
    size_t count;
    job->compiled = runs_again(scratch, job->book, job->compiled);
    const struct scene **scenes = scenes_make(scratch, job->book, job->compiled, job->draw, &count);
    scene_measure(scratch, scenes[0], &job->found);
    return COURTWRIGHT_OK;
}

enum courtwright_status courtwright_measure(struct courtwright *book,
                                            const struct courtwright_draw *draw,
                                            struct courtwright_measure *measure)
{
    struct courtwright_draw single = *draw;
    single.layout = COURTWRIGHT_SINGLE;
    single.count = 0;
    struct measure_job job = {.book = book, .draw = &single};
    enum courtwright_status status = find(book, &single, &job.compiled);
    if (status == COURTWRIGHT_OK) {
        status = with_scratch(&book->memory, measure_one, &job);
    }
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    const struct scene_measure *found = &job.found;
    *measure = (struct courtwright_measure){
        .least_gap = found->least_gap,
        .outside = found->outside,
        .labels = found->labels,
        .labels_left_out = found->labels_left_out,
        .labels_moved = found->labels_beside,
        .labels_astray = found->labels_astray,
        .crossings = found->crossings,
        .flat_crossings = found->crossings_flat,
        .wrong_sides = found->wrong_sides,
    };
    static_assert((int)COURTWRIGHT_MARKS == (int)MEASURED_KINDS, "one table of marks");
    memcpy(measure->on, found->on, sizeof measure->on);
    return COURTWRIGHT_OK;
}

const char *courtwright_mark_word(enum courtwright_mark mark)
{
    return mark < COURTWRIGHT_MARKS ? measured_word((enum measured)mark) : NULL;
}
