/* SPDX-License-Identifier: MIT */
/* crest: see crest.h. Takes bytes, draws; must not know pages. */
#include "picture/paint/crest.h"

#include <dlfcn.h>
#include <stdint.h>

#include "base/limits.h"
#include "picture/paint/crest_scan.h"

enum { SHARP = 800 }; /* pixels at most on the page, each way: 66 points at more than 600 an inch */

static const char huge_file[] = "is too large: 4 MiB is the most";
static const char huge_picture[] = "is too large: 4000 pixels each way is the most";
static const char broken[] = "is broken, or empty: it cannot be drawn";
static const char tangled[] = "is too much to draw: its parts are made of one another, again and "
                              "again; save it as plain shapes, without `use`";
static const char nothing[] = "shows nothing: look at its viewBox, width and height";
static const char unknown[] = "is neither SVG nor PNG";
static const char outside[] =
    "refers to something outside itself; a crest has to be whole in its file";
static const char no_library[] =
    "is SVG, and librsvg, which draws it, is not installed here; a PNG can do without";

static const unsigned char png_sign[] = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

static bool is_png(struct str bytes)
{
    return bytes.size > sizeof png_sign && memcmp(bytes.at, png_sign, sizeof png_sign) == 0;
}

static bool is_xml(struct str bytes)
{
    size_t i = bytes.size > 3 && memcmp(bytes.at, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    while (i < bytes.size && strchr(" \t\r\n", bytes.at[i]) && bytes.at[i]) {
        i++;
    }
    return i < bytes.size && bytes.at[i] == '<' && !memchr(bytes.at, '\0', bytes.size);
}

/* ---- PNG ---- */

/* Its size stands at the same place of every PNG. */
static unsigned png_number(struct str bytes, size_t at)
{
    unsigned number = 0;
    for (size_t i = 0; i < 4; i++) {
        number = number << 8 | (unsigned char)bytes.at[at + i];
    }
    return number;
}

static const char *png_trouble(struct str bytes)
{
    const size_t width_at = 16, height_at = 20, head = 24;
    if (bytes.size < head) {
        return broken;
    }
    unsigned width = png_number(bytes, width_at), height = png_number(bytes, height_at);
    bool small = width <= LIMIT_CREST_PIXELS && height <= LIMIT_CREST_PIXELS;
    return width == 0 || height == 0 ? broken : small ? NULL : huge_picture;
}

static cairo_status_t give_bytes(void *ctx, unsigned char *out, unsigned size)
{
    struct str *rest = ctx;
    if (size > rest->size) {
        return CAIRO_STATUS_READ_ERROR;
    }
    memcpy(out, rest->at, size);
    rest->at += size;
    rest->size -= size;
    return CAIRO_STATUS_SUCCESS;
}

static cairo_surface_t *scaled(cairo_surface_t *picture, double scale)
{
    int width = (int)(cairo_image_surface_get_width(picture) * scale + 0.5);
    int height = (int)(cairo_image_surface_get_height(picture) * scale + 0.5);
    cairo_surface_t *smaller = cairo_image_surface_create(
        CAIRO_FORMAT_ARGB32, width > 0 ? width : 1, height > 0 ? height : 1);
    cairo_t *cr = cairo_create(smaller);
    cairo_scale(cr, scale, scale);
    cairo_set_source_surface(cr, picture, 0, 0);
    cairo_pattern_set_filter(cairo_get_source(cr), CAIRO_FILTER_BEST);
    cairo_paint(cr);
    cairo_destroy(cr);
    return smaller;
}

/* Whoever made it destroys it; its status tells whether it is whole. */
static cairo_surface_t *read_png(struct str bytes)
{
    cairo_surface_t *picture = cairo_image_surface_create_from_png_stream(give_bytes, &bytes);
    int width = cairo_image_surface_get_width(picture);
    int height = cairo_image_surface_get_height(picture);
    int most = width > height ? width : height;
    if (most <= SHARP || cairo_surface_status(picture) != CAIRO_STATUS_SUCCESS) {
        return picture;
    }
    cairo_surface_t *smaller = scaled(picture, (double)SHARP / most);
    cairo_surface_destroy(picture);
    return smaller;
}

/* ---- SVG ---- */

/* What is used of librsvg and of glib under it, by their own names and kinds. */
struct rsvg_box {
    double x, y, width, height;
};
struct rsvg {
    void *library;
    void *(*rsvg_handle_new_from_data)(const uint8_t *bytes, size_t size, void **error);
    int (*rsvg_handle_render_document)(void *handle, cairo_t *cr, const struct rsvg_box *box,
                                       void **error);
    int (*rsvg_handle_get_intrinsic_size_in_pixels)(void *handle, double *width, double *height);
    void (*g_object_unref)(void *object);
    void (*g_error_free)(void *error);
};
struct rsvg_error {
    uint32_t domain;
    int code;
    const char *message;
};

/* ISO C knows no way from a pointer to a function. */
static bool find(void *library, const char *name, void *function, size_t size)
{
    void *found = dlsym(library, name);
    memcpy(function, &found, size);
    return found != NULL;
}

/* It stays loaded: glib cannot be let go of. */
static bool rsvg_load(struct rsvg *rsvg)
{
    rsvg->library = dlopen("librsvg-2.so.2", RTLD_NOW | RTLD_LOCAL);
#define FIND(name) find(rsvg->library, #name, &rsvg->name, sizeof rsvg->name)
    return rsvg->library && FIND(rsvg_handle_new_from_data) && FIND(rsvg_handle_render_document) &&
           FIND(rsvg_handle_get_intrinsic_size_in_pixels) && FIND(g_object_unref) &&
           FIND(g_error_free);
#undef FIND
}

static void forget(const struct rsvg *rsvg, void *error)
{
    if (error) {
        rsvg->g_error_free(error);
    }
}

static void *read_svg(const struct rsvg *rsvg, struct str bytes)
{
    void *error = NULL;
    void *handle = rsvg->rsvg_handle_new_from_data((const uint8_t *)bytes.at, bytes.size, &error);
    forget(rsvg, error);
    return handle;
}

/* ---- both ---- */

/* The largest of its shape in the box, at the right end. */
static struct rsvg_box fit(double wide, double tall, struct rsvg_box box)
{
    double across = box.width / wide, down = box.height / tall;
    double scale = across < down ? across : down;
    return (struct rsvg_box){box.x + box.width - wide * scale,
                             box.y + (box.height - tall * scale) / 2, wide * scale, tall * scale};
}

static bool draw_png(cairo_t *cr, struct str bytes, struct rsvg_box box)
{
    cairo_surface_t *picture = read_png(bytes);
    bool good = cairo_surface_status(picture) == CAIRO_STATUS_SUCCESS;
    if (good && cr) {
        double wide = cairo_image_surface_get_width(picture);
        double tall = cairo_image_surface_get_height(picture);
        struct rsvg_box at = fit(wide, tall, box);
        cairo_save(cr);
        cairo_translate(cr, at.x, at.y);
        cairo_scale(cr, at.width / wide, at.height / tall);
        cairo_set_source_surface(cr, picture, 0, 0);
        cairo_rectangle(cr, 0, 0, wide, tall);
        cairo_fill(cr); /* after a paint without bounds cairo 1.16 loses the tags of all links */
        cairo_restore(cr);
    }
    cairo_surface_destroy(picture);
    return good;
}

/* NULL: it is drawn. */
static const char *draw_svg(cairo_t *cr, const struct rsvg *rsvg, struct str bytes,
                            struct rsvg_box box)
{
    void *handle = read_svg(rsvg, bytes);
    if (!handle) {
        return broken;
    }
    double wide = 0, tall = 0;
    bool sized = rsvg->rsvg_handle_get_intrinsic_size_in_pixels(handle, &wide, &tall) && wide > 0 &&
                 tall > 0;
    struct rsvg_box at = sized ? fit(wide, tall, box) : fit(1, 1, box);
    void *error = NULL;
    cairo_save(cr);
    /* What lies outside would paint the page. */
    cairo_rectangle(cr, at.x, at.y, at.width, at.height);
    cairo_clip(cr);
    bool good = rsvg->rsvg_handle_render_document(handle, cr, &at, &error);
    const struct rsvg_error *told = good ? NULL : error;
    bool limit = told && told->message && strstr(told->message, "exceeded");
    cairo_restore(cr);
    forget(rsvg, error);
    rsvg->g_object_unref(handle);
    return good ? NULL : limit ? tangled : broken;
}

static bool shows_something(cairo_surface_t *surface)
{
    cairo_surface_flush(surface);
    const unsigned char *bytes = cairo_image_surface_get_data(surface);
    size_t count = (size_t)cairo_image_surface_get_stride(surface) *
                   (size_t)cairo_image_surface_get_height(surface);
    unsigned any = 0;
    for (size_t i = 0; bytes && i < count; i++) {
        any |= bytes[i];
    }
    return any != 0;
}

/* Drawn once where nobody sees it: what is broken is found before anything is written. */
static const char *svg_trouble(struct str bytes)
{
    struct rsvg rsvg = {.library = NULL};
    if (crest_refers_outside(bytes)) {
        return outside;
    }
    if (!rsvg_load(&rsvg)) {
        return no_library;
    }
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_ARGB32, 64, 64);
    cairo_t *cr = cairo_create(surface);
    const char *trouble = draw_svg(cr, &rsvg, bytes, (struct rsvg_box){0, 0, 64, 64});
    if (!trouble && cairo_status(cr) != CAIRO_STATUS_SUCCESS) {
        trouble = broken;
    }
    bool shown = !trouble && shows_something(surface);
    cairo_destroy(cr);
    cairo_surface_destroy(surface);
    return trouble || shown ? trouble : nothing;
}

const char *crest_trouble(struct str bytes)
{
    if (bytes.size > LIMIT_CREST_BYTES) {
        return huge_file;
    }
    if (is_png(bytes)) {
        const char *trouble = png_trouble(bytes);
        return trouble ? trouble : draw_png(NULL, bytes, (struct rsvg_box){0}) ? NULL : broken;
    }
    return bytes.size == 0 ? broken : is_xml(bytes) ? svg_trouble(bytes) : unknown;
}

bool crest_draw(cairo_t *cr, struct str bytes, double x, double y, double width, double height)
{
    struct rsvg rsvg = {.library = NULL};
    struct rsvg_box box = {x, y, width, height};
    if (is_png(bytes)) {
        return draw_png(cr, bytes, box);
    }
    return rsvg_load(&rsvg) && !draw_svg(cr, &rsvg, bytes, box);
}
