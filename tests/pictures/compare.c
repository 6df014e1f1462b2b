/* SPDX-License-Identifier: MIT */
/* compare: how far two pictures are apart, an SVG as librsvg draws it, a PNG as it is (at three
 * pixels a point). Prints the share of pixels that are dark in one and light in the other even when
 * they may be moved by a pixel, in millionths, and the share that is not paper in the first.
 * Usage: compare A.svg B.svg|B.png */
#include <librsvg/rsvg.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define SCALE 3.0

struct picture {
    cairo_surface_t *surface;
    int width, height;
};

static void fail(const char *path, const char *why)
{
    fprintf(stderr, "compare: %s: %s\n", path, why);
    exit(3);
}

static struct picture read_png(const char *path)
{
    cairo_surface_t *read = cairo_image_surface_create_from_png(path);
    if (cairo_surface_status(read) != CAIRO_STATUS_SUCCESS) {
        fail(path, "is no PNG");
    }
    struct picture picture = {NULL, cairo_image_surface_get_width(read),
                              cairo_image_surface_get_height(read)};
    picture.surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture.width, picture.height);
    cairo_t *cr = cairo_create(picture.surface);
    cairo_set_source_surface(cr, read, 0, 0);
    cairo_paint(cr);
    cairo_destroy(cr);
    cairo_surface_destroy(read);
    cairo_surface_flush(picture.surface);
    return picture;
}

static struct picture draw(const char *path)
{
    const char *dot = strrchr(path, '.');
    if (dot && strcmp(dot, ".png") == 0) {
        return read_png(path);
    }
    GError *error = NULL;
    RsvgHandle *handle = rsvg_handle_new_from_file(path, &error);
    if (!handle) {
        fail(path, error->message);
    }
    gdouble width, height;
    if (!rsvg_handle_get_intrinsic_size_in_pixels(handle, &width, &height)) {
        gboolean has_box; /* what fills its window is as large as its box */
        RsvgRectangle box;
        rsvg_handle_get_intrinsic_dimensions(handle, NULL, NULL, NULL, NULL, &has_box, &box);
        if (!has_box) {
            fail(path, "has no size");
        }
        width = box.width;
        height = box.height;
    }
    struct picture picture = {NULL, (int)ceil(width * SCALE), (int)ceil(height * SCALE)};
    picture.surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture.width, picture.height);
    cairo_t *cr = cairo_create(picture.surface);
    cairo_set_source_rgb(cr, 1, 1, 1);
    cairo_paint(cr);
    RsvgRectangle viewport = {0, 0, width * SCALE, height * SCALE};
    if (!rsvg_handle_render_document(handle, cr, &viewport, &error)) {
        fail(path, error->message);
    }
    cairo_destroy(cr);
    cairo_surface_flush(picture.surface);
    g_object_unref(handle);
    return picture;
}

/* Brightness, 0 to 255; outside the picture the nearest pixel's. */
static int light(const struct picture *picture, int x, int y)
{
    x = x < 0 ? 0 : x >= picture->width ? picture->width - 1 : x;
    y = y < 0 ? 0 : y >= picture->height ? picture->height - 1 : y;
    const unsigned char *pixel = cairo_image_surface_get_data(picture->surface) +
                                 y * cairo_image_surface_get_stride(picture->surface) + 4 * x;
    return (pixel[0] + pixel[1] + pixel[2]) / 3;
}

/* Is there nothing like `value` in the other picture, here or one pixel off? */
static int is_alone(const struct picture *other, int x, int y, int value)
{
    const int near = 72;
    for (int dy = -1; dy <= 1; dy++) {
        for (int dx = -1; dx <= 1; dx++) {
            if (abs(light(other, x + dx, y + dy) - value) <= near) {
                return 0;
            }
        }
    }
    return 1;
}

int main(int count, char **words)
{
    if (count != 3) {
        fail("usage", "compare A.svg B.svg");
    }
    struct picture a = draw(words[1]);
    struct picture b = draw(words[2]);
    /* half a pixel more or less is up to who draws it */
    if (abs(a.width - b.width) > 1 || abs(a.height - b.height) > 1) {
        fail(words[2], "is not as large as the other");
    }
    double apart = 0;
    double inked = 0;
    for (int y = 0; y < a.height; y++) {
        for (int x = 0; x < a.width; x++) {
            apart += is_alone(&b, x, y, light(&a, x, y)) || is_alone(&a, x, y, light(&b, x, y));
            inked += light(&a, x, y) < 200;
        }
    }
    double all = (double)a.width * a.height;
    printf("%.0f %.0f\n", 1e6 * apart / all, 1e6 * inked / all);
    cairo_surface_destroy(a.surface);
    cairo_surface_destroy(b.surface);
    return 0;
}
