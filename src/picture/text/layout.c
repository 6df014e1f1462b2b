/* SPDX-License-Identifier: MIT */
/* layout: pieces of text as lines of glyphs. Takes pieces, a style and a width; gives a block that
 * can be measured and drawn in part. Must not know pages. */
#include "picture/text/fonts.h"

#include "base/vec.h"
#include "picture/text/breaks.h"

/* Neighboring letters of one face on one line. */
struct run {
    face_code face;
    bool backward;         /* to the left */
    cairo_glyph_t *glyphs; /* from the line's start, on its baseline */
    int glyph_count;
    struct cluster_sink words; /* what was written; count 0: not in its order */
};
struct line {
    struct run *runs;
    size_t count;
    double width;
};
struct text_block {
    const struct fonts *fonts;
    double size, leading;
    VEC(struct line) lines;
};

/* A text on its way to lines. */
struct setting {
    struct arena *arena;
    struct fonts *fonts;
    const struct text_style *style;
    uint32_t *letters;
    face_code *face;       /* of each letter */
    bool borrowed;         /* one of them is not ours */
    bool leftward;         /* the text as a whole runs to the left */
    unsigned char *breaks; /* of each letter: enum break_kind */
    double *advance;       /* of each letter, spacing included */
    size_t count;
    double width; /* 0: no limit */
};

static double unit(const struct setting *setting, face_code face)
{
    return setting->style->size / (64 * fonts_em(setting->fonts, face));
}

static void gather(struct setting *setting, const struct text_piece *pieces, size_t count)
{
    size_t most = 0;
    for (size_t i = 0; i < count; i++) {
        most += pieces[i].text.size;
    }
    setting->letters = arena_array(setting->arena, uint32_t, most + 1);
    setting->face = arena_array(setting->arena, face_code, most + 1);
    for (size_t i = 0; i < count; i++) {
        struct str rest = pieces[i].text;
        while (rest.size > 0) {
            uint32_t letter = metrics_letter(&rest);
            letter = letter == '\t' ? ' ' : letter;
            if ((letter < ' ' && letter != '\n') || letter == 0x7F) {
                continue;
            }
            face_code before = setting->count > 0 ? setting->face[setting->count - 1] : 0;
            face_code code = fonts_code(setting->fonts, pieces[i].face, letter, before);
            setting->borrowed = setting->borrowed || code >= FACE_COUNT;
            setting->face[setting->count] = code;
            setting->letters[setting->count++] = letter;
        }
    }
}

/* Where the letters of one face from `begin` on end, at most `end`. */
static size_t face_end(const struct setting *setting, size_t begin, size_t end)
{
    size_t i = begin + 1;
    while (i < end && setting->face[i] == setting->face[begin]) {
        i++;
    }
    return i;
}

static void measure_mixed(struct setting *setting)
{
    size_t count;
    const raqm_glyph_t *glyphs = fonts_shape_mixed(setting->fonts, setting->face, setting->letters,
                                                   setting->count, setting->leftward, &count);
    for (size_t i = 0; i < count; i++) {
        setting->advance[glyphs[i].cluster] +=
            glyphs[i].x_advance * unit(setting, fonts_code_of(setting->fonts, glyphs[i].ftface)) +
            setting->style->spacing;
    }
}

static void measure(struct setting *setting)
{
    setting->advance = arena_array(setting->arena, double, setting->count + 1);
    if (setting->borrowed) {
        setting->leftward = fonts_leftward(setting->letters, setting->count);
        measure_mixed(setting);
        return;
    }
    for (size_t begin = 0, end; begin < setting->count; begin = end) {
        end = face_end(setting, begin, setting->count);
        enum face face = (enum face)setting->face[begin];
        size_t count;
        const raqm_glyph_t *glyphs =
            fonts_shape(setting->fonts, face, setting->letters + begin, end - begin, &count);
        for (size_t i = 0; i < count; i++) {
            setting->advance[begin + glyphs[i].cluster] +=
                glyphs[i].x_advance * unit(setting, setting->face[begin]) + setting->style->spacing;
        }
    }
}

static bool is_space(uint32_t letter)
{
    return letter == ' ' || letter == '\n';
}

/* Makes one run; returns its width. */
static double make_run(struct setting *setting, struct run *run, size_t begin, size_t end, double x)
{
    enum face face = (enum face)setting->face[begin];
    double scale = unit(setting, setting->face[begin]);
    size_t count;
    const raqm_glyph_t *glyphs =
        fonts_shape(setting->fonts, face, setting->letters + begin, end - begin, &count);
    double start = x;
    run->face = setting->face[begin];
    run->glyphs = arena_array(setting->arena, cairo_glyph_t, count + 1);
    run->glyph_count = (int)count;
    for (size_t i = 0; i < count; i++) {
        run->glyphs[i] = (cairo_glyph_t){glyphs[i].index, x + glyphs[i].x_offset * scale,
                                         -glyphs[i].y_offset * scale};
        x += glyphs[i].x_advance * scale + setting->style->spacing;
    }
    run->words.bytes = arena_take(setting->arena, 4 * (end - begin) + 1);
    run->words.clusters = arena_array(setting->arena, cairo_text_cluster_t, count + 1);
    if (!fonts_clusters(glyphs, count, setting->letters + begin, end - begin, &run->words)) {
        run->words.count = 0;
    }
    return x - start;
}

/* The glyphs of one run of a line with borrowed letters; returns its width. */
static double make_mixed_run(struct setting *setting, struct run *run, const raqm_glyph_t *glyphs,
                             double x)
{
    double scale = unit(setting, run->face), start = x;
    for (int i = 0; i < run->glyph_count; i++) {
        run->glyphs[i] = (cairo_glyph_t){glyphs[i].index, x + glyphs[i].x_offset * scale,
                                         -glyphs[i].y_offset * scale};
        x += glyphs[i].x_advance * scale + setting->style->spacing;
    }
    return x - start;
}

/* A line with borrowed letters is shaped as one, so that what runs to the left does so as a whole.
 */
static void make_mixed_line(struct setting *setting, struct line *line, size_t begin, size_t end)
{
    struct arena *arena = setting->arena;
    const uint32_t *letters = setting->letters + begin;
    size_t count, letter_count = end - begin;
    const raqm_glyph_t *glyphs = fonts_shape_mixed(setting->fonts, setting->face + begin, letters,
                                                   letter_count, setting->leftward, &count);
    size_t *ends = arena_array(arena, size_t, letter_count + 1);
    fonts_cluster_ends(glyphs, count, letter_count, ends);
    line->runs = arena_array(arena, struct run, count + 1);
    for (size_t i = 0, next; i < count; i = next) {
        struct run *run = &line->runs[line->count++];
        next = fonts_run_end(glyphs, count, i, &run->backward);
        run->face = fonts_code_of(setting->fonts, glyphs[i].ftface);
        run->glyph_count = (int)(next - i);
        run->glyphs = arena_array(arena, cairo_glyph_t, next - i);
        run->words.bytes = arena_take(arena, 4 * letter_count + 1);
        run->words.clusters = arena_array(arena, cairo_text_cluster_t, next - i);
        fonts_mixed_clusters(glyphs + i, next - i, run->backward, letters, ends, &run->words);
        line->width += make_mixed_run(setting, run, glyphs + i, line->width);
    }
}

static void make_plain_line(struct setting *setting, struct line *line, size_t begin, size_t end)
{
    for (size_t i = begin; i < end; i = face_end(setting, i, end)) {
        line->count++;
    }
    line->runs = arena_array(setting->arena, struct run, line->count + 1);
    size_t run = 0;
    for (size_t i = begin, next; i < end; i = next) {
        next = face_end(setting, i, end);
        line->width += make_run(setting, &line->runs[run++], i, next, line->width);
    }
}

static void make_line(struct setting *setting, struct text_block *block, size_t begin, size_t end)
{
    while (end > begin && is_space(setting->letters[end - 1])) {
        end--;
    }
    struct line line = {0};
    (setting->borrowed ? make_mixed_line : make_plain_line)(setting, &line, begin, end);
    if (line.width > 0) {
        line.width -= setting->style->spacing; /* none behind the last letter */
    }
    VEC_PUSH(setting->arena, &block->lines, line);
}

/* Where the line from `begin` ends: behind the last break that fits; inside a word only when the
 * word alone is too long. */
static size_t line_end(const struct setting *setting, size_t begin)
{
    const double slack = 1e-6; /* a text laid out at its own width stays one line */
    double x = 0;
    size_t best = begin;
    for (size_t i = begin; i < setting->count; i++) {
        x += setting->advance[i];
        bool fits = x - setting->style->spacing <= setting->width + slack;
        if (setting->width > 0 && !fits && !is_space(setting->letters[i])) {
            return best > begin ? best : i > begin ? i : begin + 1;
        }
        if (setting->breaks[i] == BREAK_MUST) {
            return i + 1;
        }
        if (setting->breaks[i] == BREAK_ALLOWED) {
            best = i + 1;
        }
    }
    return setting->count;
}

/* A last line of one short word takes one more from the line before it, when that is long enough:
 * where the line from `begin` had better end than at `end`, before the last line. */
static size_t spare_word(const struct setting *setting, size_t begin, size_t end)
{
    size_t breaks[2] = {0, 0}; /* the last two inside the line */
    double rest = 0;
    for (size_t i = begin; i + 1 < end; i++) {
        if (setting->breaks[i] == BREAK_ALLOWED) {
            breaks[0] = breaks[1];
            breaks[1] = i + 1;
        }
    }
    for (size_t i = end; i < setting->count; i++) {
        if (setting->breaks[i] != BREAK_NEVER && i + 1 < setting->count) {
            return end; /* more than one word, or more than one line */
        }
        rest += setting->advance[i];
    }
    if (breaks[0] == 0 || rest > setting->width / 5 || setting->breaks[end - 1] == BREAK_MUST) {
        return end;
    }
    for (size_t i = breaks[1]; i < end; i++) {
        rest += setting->advance[i];
    }
    return rest <= setting->width / 2 ? breaks[1] : end;
}

struct text_block *text_layout(struct arena *arena, struct fonts *fonts,
                               const struct text_piece *pieces, size_t count,
                               const struct text_style *style, double width)
{
    struct setting setting = {.arena = arena, .fonts = fonts, .style = style, .width = width};
    gather(&setting, pieces, count);
    setting.breaks = breaks_find(arena, setting.letters, setting.count);
    measure(&setting);
    struct text_block *block = arena_new(arena, struct text_block);
    block->fonts = fonts;
    block->size = style->size;
    block->leading = style->leading;
    for (size_t begin = 0, end; begin < setting.count; begin = end) {
        end = line_end(&setting, begin);
        end = end < setting.count ? spare_word(&setting, begin, end) : end;
        make_line(&setting, block, begin, end);
    }
    return block;
}

static void *copy_of(struct arena *arena, const void *bytes, size_t size)
{
    return size > 0 ? memcpy(arena_take(arena, size), bytes, size) : NULL;
}

static struct run copy_run(struct arena *arena, const struct run *run)
{
    struct run copy = *run;
    copy.glyphs = copy_of(arena, run->glyphs, (size_t)run->glyph_count * sizeof *run->glyphs);
    copy.words.bytes = copy_of(arena, run->words.bytes, run->words.size);
    copy.words.clusters =
        copy_of(arena, run->words.clusters, (size_t)run->words.count * sizeof *run->words.clusters);
    return copy;
}

struct text_block *text_copy(struct arena *arena, const struct text_block *block)
{
    struct text_block *copy = copy_of(arena, block, sizeof *block);
    copy->lines.at = copy_of(arena, block->lines.at, block->lines.count * sizeof *block->lines.at);
    copy->lines.room = block->lines.count;
    for (size_t i = 0; i < block->lines.count; i++) {
        struct line *line = &copy->lines.at[i];
        line->runs = copy_of(arena, line->runs, line->count * sizeof *line->runs);
        for (size_t k = 0; k < line->count; k++) {
            line->runs[k] = copy_run(arena, &block->lines.at[i].runs[k]);
        }
    }
    return copy;
}

size_t text_lines(const struct text_block *block)
{
    return block->lines.count;
}

double text_width(const struct text_block *block)
{
    double widest = 0;
    for (size_t i = 0; i < block->lines.count; i++) {
        widest = block->lines.at[i].width > widest ? block->lines.at[i].width : widest;
    }
    return widest;
}

double text_height(const struct text_block *block)
{
    return (double)block->lines.count * block->leading;
}

static void draw_run(cairo_t *cr, const struct text_block *block, const struct run *run)
{
    fonts_use(block->fonts, cr, run->face, block->size);
    if (run->words.count > 0) {
        cairo_show_text_glyphs(cr, run->words.bytes, (int)run->words.size, run->glyphs,
                               run->glyph_count, run->words.clusters, run->words.count,
                               run->backward ? CAIRO_TEXT_CLUSTER_FLAG_BACKWARD : 0);
    } else {
        cairo_show_glyphs(cr, run->glyphs, run->glyph_count);
    }
}

void text_draw(cairo_t *cr, const struct text_block *block, double x, double y, size_t from,
               size_t to)
{
    to = to < block->lines.count ? to : block->lines.count;
    for (size_t i = from; i < to; i++) {
        cairo_save(cr);
        cairo_translate(cr, x, y + (double)(i - from) * block->leading);
        for (size_t k = 0; k < block->lines.at[i].count; k++) {
            draw_run(cr, block, &block->lines.at[i].runs[k]);
        }
        cairo_restore(cr);
    }
}
