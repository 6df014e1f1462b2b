/* SPDX-License-Identifier: MIT */
/* pictures: what the diagrams of some books cost, each the least of several rounds: its scene, its
 * live SVG, its PDF beside cairo's own replay of the same drawing, and how many bytes they are.
 * Nothing here passes or fails; figures are of one core.
 *   pictures EXAMPLES... */
#include <cairo-pdf.h>
#include <stdio.h>
#include <stdlib.h>

#include "floor/sim/sim.h"
#include "picture/paint/paint.h"
#include "picture/svg/svg.h"
#include "resolved.h"
#include "stopwatch.h"
#include "whole_file.h"

enum { ROUNDS = 9, MOST = 1000 };

struct figures { /* by diagram */
    double scene[MOST], live[MOST], pdf[MOST], replay[MOST], live_size[MOST], print_size[MOST];
    size_t count;
};

static bool swallow(void *ctx, const char *bytes, size_t size)
{
    (void)bytes;
    *(double *)ctx += (double)size;
    return true;
}

static cairo_status_t swallow_cairo(void *ctx, const unsigned char *bytes, unsigned size)
{
    return swallow(ctx, (const char *)bytes, size) ? CAIRO_STATUS_SUCCESS
                                                   : CAIRO_STATUS_WRITE_ERROR;
}

/* The same drawing, recorded once and played to a PDF by cairo alone. */
static void replay(cairo_surface_t *recorded, const struct scene *scene, double *figure)
{
    double size = 0, begin = now();
    cairo_surface_t *surface =
        cairo_pdf_surface_create_for_stream(swallow_cairo, &size, scene->width, scene->height);
    cairo_t *cr = cairo_create(surface);
    cairo_set_source_surface(cr, recorded, 0, 0);
    cairo_paint(cr);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    least(figure, begin);
}

static void time_one(struct figures *all, struct fonts *fonts, const struct diagram *diagram)
{
    size_t n = all->count++;
    const struct scene_options options = {.accent = BODY_NONE};
    for (int round = 0; round < ROUNDS; round++) {
        struct arena memory;
        arena_init(&memory, NULL, NULL);
        double size = 0, begin = now();
        struct scene *scene = scene_make(&memory, diagram, &options);
        least(&all->scene[n], begin);
        struct writer writer = {swallow, &size, false};
        begin = now();
        svg_write(&memory, scene, &(struct svg_options){.salt = STR("")}, &writer);
        least(&all->live[n], begin);
        all->live_size[n] = size;
        const struct scene *scenes[] = {scene};
        struct paint_sheet sheet = {.scenes = scenes, .count = 1, .across = 1};
        struct paint_options paint = {
            .title = scene->title, .description = scene->description, .scale = 1};
        begin = now();
        paint_pdf(&memory, fonts, &sheet, &paint, &writer);
        least(&all->pdf[n], begin);
        size = 0;
        paint_svg(&memory, fonts, &sheet, &paint, &writer);
        all->print_size[n] = size;
        cairo_rectangle_t whole = {0, 0, scene->width, scene->height};
        cairo_surface_t *recorded =
            cairo_recording_surface_create(CAIRO_CONTENT_COLOR_ALPHA, &whole);
        cairo_t *cr = cairo_create(recorded);
        paint_scene(cr, fonts, scene);
        cairo_destroy(cr);
        replay(recorded, scene, &all->replay[n]);
        cairo_surface_destroy(recorded);
        arena_finish(&memory);
    }
}

static void time_play(struct figures *all, struct fonts *fonts, struct resolved *text, size_t k)
{
    struct arena memory;
    struct diags diags;
    diagram_list diagrams = {0};
    arena_init(&memory, NULL, NULL);
    diags_init(&diags, &memory);
    struct run *run = sim_run(&memory, &text->sources, &text->book->plays.at[k], &diags);
    scene_diagrams(&memory, run, &diagrams);
    for (size_t i = 0; i < diagrams.count && all->count < MOST; i++) {
        time_one(all, fonts, &diagrams.at[i]);
    }
    arena_finish(&memory);
}

static int by_size(const void *a, const void *b)
{
    double x = *(const double *)a, y = *(const double *)b;
    return x < y ? -1 : x > y;
}

static double median(double *figures, size_t count)
{
    qsort(figures, count, sizeof *figures, by_size);
    return count ? figures[count / 2] : 0;
}

int main(int argc, char **argv)
{
    static struct figures all;
    struct fonts *fonts = fonts_create();
    for (int i = 1; i < argc; i++) {
        struct arena memory;
        struct resolved text;
        arena_init(&memory, NULL, NULL);
        resolve_text(&memory, &text, str_of(argv[i]), whole_file_or_said(&memory, argv[i]));
        for (size_t k = 0; k < text.book->plays.count; k++) {
            time_play(&all, fonts, &text, k);
        }
        arena_finish(&memory);
    }
    fonts_destroy(fonts);
    static double ratio[MOST];
    for (size_t i = 0; i < all.count; i++) {
        ratio[i] = all.pdf[i] / all.replay[i];
    }
    printf("%d diagrams, medians (most):\n", (int)all.count);
    size_t last = all.count ? all.count - 1 : 0;
    const struct {
        const char *what;
        double *figures;
    } rows[] = {{"a scene, us", all.scene},
                {"live SVG from it, us", all.live},
                {"PDF from it, us", all.pdf},
                {"cairo's replay of it, us", all.replay},
                {"PDF, times the replay", ratio},
                {"live SVG, bytes", all.live_size},
                {"print-true SVG, bytes", all.print_size}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        double middle = median(rows[i].figures, all.count);
        printf("%-26s %8.2f (%.2f)\n", rows[i].what, middle, rows[i].figures[last]);
    }
    return EXIT_SUCCESS;
}
