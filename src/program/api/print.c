/* SPDX-License-Identifier: MIT */
/* print: pictures through cairo. Left out of the core. */
#include "language/tell/tell.h"
#include "picture/paint/paint.h"
#include "program/api/draw.h"
#include "program/api/fonts.h"

enum { GRID_ACROSS = 3, GUTTER = 18 };
#define SCALE_DEFAULT 3.0

struct print_job {
    struct courtwright *book;
    const struct compiled *compiled;
    const struct courtwright_draw *draw;
    struct writer *writer;
};

static struct str *headings_make(struct arena *scratch, const struct compiled *compiled,
                                 const struct courtwright_draw *draw, size_t count)
{
    struct str *headings = arena_array(scratch, struct str, count);
    for (size_t i = 0; i < count; i++) {
        const struct diagram *diagram = &compiled->diagrams.at[draw->diagram + i];
        const struct step *step = &compiled->play->steps.at[diagram->step];
        struct str title = diagram->branch < 0
                               ? diagram->title
                               : tell_branch(scratch, &step->branches.at[diagram->branch]);
        headings[i] = str_format(scratch, "%.*s%s%.*s", STR_ARG(diagram->label),
                                 title.size ? "  " : "", STR_ARG(title));
    }
    return headings;
}

static size_t across(const struct courtwright_draw *draw, size_t count)
{
    return draw->layout == COURTWRIGHT_GRID && count > GRID_ACROSS ? GRID_ACROSS : count;
}

/* One diagram brings its own title and words; several are told one after the other. */
static struct paint_options options_make(struct arena *scratch, const struct courtwright_draw *draw,
                                         struct str title, const struct scene *const *scenes,
                                         size_t count)
{
    struct paint_options options = {
        .title = count == 1 ? scenes[0]->title : title,
        .salt = str_of(draw->salt),
        .scale = draw->scale > 0 ? draw->scale : SCALE_DEFAULT,
        .fluid = draw->fluid,
        .date = draw->date,
    };
    struct strbuf words;
    strbuf_init(&words, scratch);
    for (size_t i = 0; i < count; i++) {
        strbuf_text(&words, i ? " " : "");
        strbuf_add(&words, scenes[i]->description);
    }
    options.description = strbuf_str(&words);
    return options;
}

static enum courtwright_status paint(struct arena *scratch, struct courtwright *book,
                                     const struct paint_sheet *sheet, struct str title,
                                     const struct courtwright_draw *draw, struct writer *writer)
{
    typedef bool painter(struct arena *, struct fonts *, const struct paint_sheet *,
                         const struct paint_options *, struct writer *);
    static painter *const painters[] = {[COURTWRIGHT_SVG] = paint_svg,
                                        [COURTWRIGHT_PDF] = paint_pdf,
                                        [COURTWRIGHT_PNG] = paint_png};
    struct fonts *fonts = fonts_of(book);
    if (!fonts) {
        return COURTWRIGHT_MEMORY;
    }
    struct paint_options options = options_make(scratch, draw, title, sheet->scenes, sheet->count);
    bool painted = painters[draw->format](scratch, fonts, sheet, &options, writer);
    fonts_note_missing(book);
    if (!painted && draw->format == COURTWRIGHT_PNG &&
        !paint_png_fits(scratch, fonts, sheet, options.scale)) {
        return COURTWRIGHT_PIXELS;
    }
    return writer->failed ? COURTWRIGHT_WRITE : painted ? COURTWRIGHT_OK : COURTWRIGHT_MEMORY;
}

enum courtwright_status print_side_by_side(struct arena *scratch, struct courtwright *book,
                                           const struct scene *const *scenes, size_t count,
                                           struct str title, const struct courtwright_draw *draw,
                                           struct writer *writer)
{
    struct paint_sheet sheet = {
        .scenes = scenes, .count = count, .across = count, .gutter = GUTTER};
    return paint(scratch, book, &sheet, title, draw, writer);
}

static enum courtwright_status print(struct arena *scratch, void *ctx)
{
    struct print_job *job = ctx;
    size_t count;
    job->compiled = runs_again(scratch, job->book, job->compiled);
    const struct scene *const *scenes =
        scenes_make(scratch, job->book, job->compiled, job->draw, &count);
    /* a caption opens with its own title */
    bool bare = job->draw->layout == COURTWRIGHT_SINGLE || job->draw->caption;
    struct paint_sheet sheet = {
        .scenes = scenes,
        .headings = bare ? NULL : headings_make(scratch, job->compiled, job->draw, count),
        .count = count,
        .across = across(job->draw, count),
        .gutter = GUTTER,
    };
    return paint(scratch, job->book, &sheet, job->compiled->play->name, job->draw, job->writer);
}

enum courtwright_status draw_print(struct courtwright *book, const struct compiled *compiled,
                                   const struct courtwright_draw *draw, struct writer *writer)
{
    struct print_job job = {book, compiled, draw, writer};
    return with_scratch(&book->memory, print, &job);
}
