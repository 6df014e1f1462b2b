/* SPDX-License-Identifier: MIT */
/* print_png: scenes as pixels, encoded by libpng in gray or with a palette where the colors allow:
 * smaller and several times faster than cairo's own writer. */
#include <math.h>
#include <png.h>
#include <stdint.h>
#include <string.h>

#include "picture/paint/document.h"
#include "picture/paint/lay.h"
#include "picture/paint/sink.h"

enum { PALETTE_MOST = 256, SLOTS = 1024, SIDE_MOST = 20000, SPEED = 3 };

/* The colors of a picture, as long as they are few. */
struct palette {
    uint32_t color[PALETTE_MOST];
    int count;         /* PALETTE_MOST + 1: too many */
    bool gray;         /* all are */
    short slot[SLOTS]; /* place in `color` plus one, 0: free */
};

struct picture {
    cairo_surface_t *surface;
    int width, height;
    double scale;
    unsigned char *row; /* room for one encoded row */
    struct palette *palette;
    struct sink *sink;
    const char *title;
};

static const uint32_t *pixels(const struct picture *picture, int y)
{
    const unsigned char *data = cairo_image_surface_get_data(picture->surface);
    return (const uint32_t *)(const void *)(data +
                                            y * cairo_image_surface_get_stride(picture->surface));
}

/* The color's place in the palette; -1 when there is no room for it. */
static int palette_place(struct palette *palette, uint32_t color)
{
    unsigned slot = (color * 2654435761u) >> 22;
    while (palette->slot[slot]) {
        int place = palette->slot[slot] - 1;
        if (palette->color[place] == color) {
            return place;
        }
        slot = (slot + 1) % SLOTS;
    }
    if (palette->count >= PALETTE_MOST) {
        return -1;
    }
    palette->color[palette->count++] = color;
    palette->slot[slot] = (short)palette->count;
    return palette->count - 1;
}

static void find_colors(struct picture *picture)
{
    struct palette *palette = picture->palette;
    palette->gray = true;
    for (int y = 0; y < picture->height; y++) {
        const uint32_t *row = pixels(picture, y);
        for (int x = 0; x < picture->width; x++) {
            uint32_t color = row[x] & 0xFFFFFF;
            palette->gray = palette->gray && color == (color & 0xFF) * 0x010101;
            if (palette->count <= PALETTE_MOST && palette_place(palette, color) < 0) {
                palette->count = PALETTE_MOST + 1;
            }
            if (palette->count > PALETTE_MOST && !palette->gray) {
                return;
            }
        }
    }
}

static int color_type(const struct palette *palette)
{
    if (palette->gray) {
        return PNG_COLOR_TYPE_GRAY;
    }
    return palette->count <= PALETTE_MOST ? PNG_COLOR_TYPE_PALETTE : PNG_COLOR_TYPE_RGB;
}

static void encode_row(struct picture *picture, int type, int y)
{
    const uint32_t *from = pixels(picture, y);
    unsigned char *to = picture->row;
    for (int x = 0; x < picture->width; x++) {
        uint32_t color = from[x] & 0xFFFFFF;
        if (type == PNG_COLOR_TYPE_GRAY) {
            *to++ = (unsigned char)(color & 0xFF);
        } else if (type == PNG_COLOR_TYPE_PALETTE) {
            *to++ = (unsigned char)palette_place(picture->palette, color);
        } else {
            *to++ = (unsigned char)(color >> 16);
            *to++ = (unsigned char)(color >> 8);
            *to++ = (unsigned char)color;
        }
    }
}

static void put_bytes(png_structp png, png_bytep bytes, size_t size)
{
    if (sink_take(png_get_io_ptr(png), bytes, (unsigned)size) != CAIRO_STATUS_SUCCESS) {
        png_error(png, "no memory");
    }
}

static void put_nothing(png_structp png)
{
    (void)png;
}

/* A library does not print: the status tells. */
static void stay_silent(png_structp png, png_const_charp message)
{
    (void)png;
    (void)message;
}

static void fail(png_structp png, png_const_charp message)
{
    (void)message;
    png_longjmp(png, 1);
}

static void put_palette(png_structp png, png_infop info, const struct palette *palette)
{
    png_color colors[PALETTE_MOST];
    for (int i = 0; i < palette->count; i++) {
        uint32_t color = palette->color[i];
        colors[i] = (png_color){(png_byte)(color >> 16), (png_byte)(color >> 8), (png_byte)color};
    }
    png_set_PLTE(png, info, colors, palette->count);
}

static void put_head(png_structp png, png_infop info, const struct picture *picture, int type)
{
    const double points_per_meter = 72 / 0.0254;
    png_set_IHDR(png, info, (png_uint_32)picture->width, (png_uint_32)picture->height, 8, type,
                 PNG_INTERLACE_NONE, PNG_COMPRESSION_TYPE_DEFAULT, PNG_FILTER_TYPE_DEFAULT);
    if (type == PNG_COLOR_TYPE_PALETTE) {
        put_palette(png, info, picture->palette);
    }
    png_uint_32 dots = (png_uint_32)(picture->scale * points_per_meter + 0.5);
    png_set_pHYs(png, info, dots, dots, PNG_RESOLUTION_METER);
    char key[] = "Title";
    png_text text = {.compression = PNG_ITXT_COMPRESSION_NONE,
                     .key = key,
                     .text = (char *)(uintptr_t)picture->title};
    png_set_text(png, info, &text, 1);
    png_write_info(png, info);
}

/* libpng jumps back here when it cannot go on: nothing that changes stands on this stack. */
static bool put_image(png_structp png, png_infop info, struct picture *picture)
{
    if (setjmp(png_jmpbuf(png))) {
        return false;
    }
    int type = color_type(picture->palette);
    png_set_write_fn(png, picture->sink, put_bytes, put_nothing);
    png_set_compression_level(png, SPEED);
    png_set_filter(png, 0, type == PNG_COLOR_TYPE_PALETTE ? PNG_FILTER_NONE : PNG_FILTER_UP);
    put_head(png, info, picture, type);
    for (int y = 0; y < picture->height; y++) {
        encode_row(picture, type, y);
        png_write_row(png, picture->row);
    }
    png_write_end(png, NULL);
    return true;
}

static bool encode(struct picture *picture)
{
    png_structp png = png_create_write_struct(PNG_LIBPNG_VER_STRING, NULL, fail, stay_silent);
    png_infop info = png ? png_create_info_struct(png) : NULL;
    bool good = info && put_image(png, info, picture);
    png_destroy_write_struct(&png, &info);
    return good;
}

static bool draw(struct picture *picture, struct fonts *fonts, const struct laid *laid)
{
    picture->surface =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, picture->width, picture->height);
    cairo_t *cr = cairo_create(picture->surface);
    paint_role(cr, laid->theme, ROLE_PAGE);
    cairo_paint(cr);
    cairo_scale(cr, picture->scale, picture->scale);
    laid_paint(cr, fonts, laid);
    bool good = cairo_status(cr) == CAIRO_STATUS_SUCCESS;
    cairo_destroy(cr);
    cairo_surface_flush(picture->surface);
    return good && cairo_surface_status(picture->surface) == CAIRO_STATUS_SUCCESS;
}

/* The size in pixels of what was laid out; false when that is too large. */
static bool measure(struct picture *picture, const struct laid *laid, double scale)
{
    double width = ceil(laid->width * scale - 1e-6), height = ceil(laid->height * scale - 1e-6);
    if (width > SIDE_MOST || height > SIDE_MOST) {
        return false;
    }
    picture->width = (int)width;
    picture->height = (int)height;
    return true;
}

bool paint_png_fits(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
                    double scale)
{
    struct laid laid = lay(arena, fonts, sheet);
    struct picture picture;
    return measure(&picture, &laid, scale);
}

bool paint_png(struct arena *arena, struct fonts *fonts, const struct paint_sheet *sheet,
               const struct paint_options *options, struct writer *writer)
{
    if (sheet->count == 0 || !(options->scale > 0)) {
        return false;
    }
    struct laid laid = lay(arena, fonts, sheet);
    struct sink sink;
    struct picture picture = {.scale = options->scale,
                              .palette = arena_new(arena, struct palette),
                              .sink = &sink,
                              .title = document_text(arena, options->title)};
    if (!measure(&picture, &laid, options->scale)) {
        return false;
    }
    sink_init(&sink, arena);
    picture.row = arena_take(arena, (size_t)picture.width * 3 + 1);
    bool good = draw(&picture, fonts, &laid);
    if (good) {
        find_colors(&picture);
        good = encode(&picture);
    }
    cairo_surface_destroy(picture.surface);
    sink_end(&sink);
    if (!good || fonts_failed(fonts)) {
        return false;
    }
    writer_str(writer, strbuf_str(&sink.bytes));
    return !writer->failed;
}
