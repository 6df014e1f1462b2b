/* SPDX-License-Identifier: MIT */
/* caption: when asked for, the step's title over the floor and its sentences under it, each opened
 * by the disc that stands on its line; what the checks saw, by the square that stands on the floor.
 * Broken into lines by the face's own widths. */
#include "language/tell/tell.h"
#include "picture/scene/drawing.h"

#include <assert.h>

static_assert(TELL_BOLD == CHECK_BODY_ON && TELL_PLAIN == CHECK_BODY_OFF, "one way to mark");

#define TITLE_SIZE 11.0
#define TITLE_LEAST 8.0 /* what is not to be read so small is broken into lines */
#define TITLE_BASE 10.0 /* its first baseline */
#define TITLE_BELOW 4.0 /* under its last one */
#define AFTER_SIZE 8.0
#define AFTER_SPACE 7.0
#define DISC 5.2      /* points, beside a sentence */
#define DISC_RISE 3.3 /* its middle above the baseline */
#define LETTER 8.0    /* in the square of a finding */
#define INDENT 15.0
#define FIRST 15.0  /* from the floor to the first baseline */
#define BETWEEN 1.2 /* more between sentences than between lines */
#define BELOW 4.0   /* under the last baseline */

/* A word, or a piece of one, as it will be set. */
struct caption_word {
    struct str text;
    bool bold, joined; /* joined: no space before it */
    int line;
    double x;
};
struct caption_text {
    int order, task;
    const struct finding *finding; /* opened by its square; or NULL */
    size_t letter;
    struct caption_word *word;
    size_t count;
    int lines;
};
typedef VEC(struct caption_text) caption_texts;

/* How text is broken into lines. */
struct lettering {
    double size, leading, indent;
};
static const struct lettering title_setting = {TITLE_LEAST, 9.6, 1};

static struct lettering caption_setting(double width)
{
    return width < 200 ? (struct lettering){8.0, 11.0, INDENT}
                       : (struct lettering){9.5, 12.6, INDENT};
}

static enum face word_face(const struct caption_word *word)
{
    return word->bold ? FACE_BOLD : FACE_REGULAR;
}

/* Words at spaces and where bold begins or ends. */
static void split_words(struct arena *arena, struct str text, struct caption_text *into)
{
    VEC(struct caption_word) words = {0};
    bool bold = false, joined = true;
    size_t begin = 0;
    for (size_t i = 0; i <= text.size; i++) {
        char c = i < text.size ? text.at[i] : ' ';
        if (c != ' ' && c != TELL_BOLD && c != TELL_PLAIN) {
            continue;
        }
        if (i > begin) {
            struct caption_word word = {
                .text = {text.at + begin, i - begin}, .bold = bold, .joined = joined};
            VEC_PUSH(arena, &words, word);
            joined = true;
        }
        joined = c == ' ' ? false : joined;
        bold = c == TELL_BOLD ? true : c == TELL_PLAIN ? false : bold;
        begin = i + 1;
    }
    into->word = words.at;
    into->count = words.count;
}

/* Sets the words of one sentence in lines; pieces that are joined stay on one. */
static void set_lines(struct caption_text *text, const struct lettering *how, double width)
{
    double size = how->size, space = 0.28 * size, x = how->indent;
    int line = 0;
    for (size_t i = 0; i < text->count;) {
        size_t end = i;
        double wide = 0;
        do {
            wide += metrics_width(word_face(&text->word[end]), size, text->word[end].text);
            end++;
        } while (end < text->count && text->word[end].joined);
        double gap = x > how->indent ? space : 0;
        if (x + gap + wide > width && x > how->indent) {
            line++;
            x = how->indent;
            gap = 0;
        }
        x += gap;
        for (; i < end; i++) {
            text->word[i].line = line;
            text->word[i].x = x;
            x += metrics_width(word_face(&text->word[i]), size, text->word[i].text);
        }
    }
    text->lines = line + 1;
}

static void text_add(struct arena *arena, caption_texts *texts, struct caption_text text,
                     struct str words, double width)
{
    struct lettering how = caption_setting(width);
    split_words(arena, words, &text);
    set_lines(&text, &how, width);
    VEC_PUSH(arena, texts, text);
}

static caption_texts texts_of(struct arena *arena, const struct diagram *diagram,
                              const struct scene_options *options, double width)
{
    const struct segment *segment = diagram->segment;
    const struct step *step = &segment->play->steps.at[diagram->step];
    struct scope scope = scope_of(diagram);
    caption_texts texts = {0};
    for (size_t i = scope.first; options->caption && i < scope.end; i++) {
        struct str told = tell_task(arena, segment->play, step, segment->branch, i);
        if (told.size > 0) {
            struct caption_text text = {.order = segment_task(segment, i)->order, .task = (int)i};
            text_add(arena, &texts, text, told, width);
        }
    }
    struct finding_refs shown = findings_of(arena, diagram, options);
    for (size_t i = 0; !options->told_elsewhere && i < shown.count; i++) {
        struct caption_text text = {.task = -1, .finding = shown.at[i], .letter = i};
        text_add(arena, &texts, text, shown.at[i]->marked, width);
    }
    if (options->caution) {
        struct caption_text text = {.task = -1};
        text_add(arena, &texts, text, tell_caution(arena, segment->play), width);
    }
    return texts;
}

double caption_height(struct arena *arena, const struct diagram *diagram,
                      const struct scene_options *options, double width)
{
    caption_texts texts = texts_of(arena, diagram, options, width);
    double height = 0, leading = caption_setting(width).leading;
    for (size_t i = 0; i < texts.count; i++) {
        height += texts.at[i].lines * leading + (i > 0 ? BETWEEN : 0);
    }
    return texts.count == 0 ? 0 : FIRST + height - leading + BELOW;
}

static void word_put(struct drawing *drawing, const struct caption_word *word, double x, double y,
                     double size)
{
    struct scene_item *item = item_add(drawing, CLASS_CAPTION, ITEM_TEXT);
    item->at = vec2_of(x, y);
    item->text = word->text;
    item->size = size;
    item->face = word_face(word);
    item->fill = ROLE_TEXT;
    item->anchor = ANCHOR_START;
}

static void disc_put(struct drawing *drawing, const struct caption_text *text, double y)
{
    struct vec2 at = vec2_of(DISC, y - DISC_RISE);
    if (text->finding) {
        finding_square(drawing, text->finding, text->letter, at, LETTER, CLASS_CAPTION);
    }
    if (text->order <= 0) {
        return;
    }
    put_circle(drawing, CLASS_CAPTION, at, DISC, ROLE_ORDER, ROLE_NONE, 0)->task = text->task;
    put_text(drawing, CLASS_CAPTION, str_format(drawing->arena, "%d", text->order), at, 8.0,
             FACE_SEMIBOLD, ROLE_ORDER_TEXT)
        ->task = text->task;
}

/* Words of one line and face are one text, so that a reader can copy them. */
static void text_put(struct drawing *drawing, const struct caption_text *text,
                     const struct lettering *how, double top)
{
    for (size_t i = 0; i < text->count;) {
        struct caption_word whole = text->word[i];
        struct strbuf run;
        strbuf_init(&run, drawing->arena);
        size_t begin = i;
        while (i < text->count && text->word[i].line == whole.line &&
               text->word[i].bold == whole.bold) {
            if (i > begin && !text->word[i].joined) {
                strbuf_char(&run, ' ');
            }
            strbuf_add(&run, text->word[i++].text);
        }
        whole.text = strbuf_str(&run);
        word_put(drawing, &whole, whole.x, top + whole.line * how->leading, how->size);
    }
}

/* Has the step's own picture lines with numbers, which this one shows again? */
static bool shows_again(const struct diagram *diagram)
{
    const struct step *step = &diagram->segment->play->steps.at[diagram->step];
    for (size_t i = 0; i < step->tasks.count; i++) {
        if (step->tasks.at[i].order > 0) {
            return scene_first_task(diagram) == 0;
        }
    }
    return false;
}

struct str scene_after(struct arena *arena, const struct diagram *diagram)
{
    const struct play *play = diagram->segment->play;
    const struct step *step = &play->steps.at[diagram->step];
    if (diagram->branch < 0) {
        return tell_after(arena, play, step);
    }
    return shows_again(diagram) ? str_format(arena, "from the start of step %d", step->number)
                                : STR("");
}

/* A step's title, and smaller behind it what the picture takes up; in lines where the two are too
 * long for one. */
struct title {
    struct str text, after;
    double size;
    struct caption_text broken; /* no words: it is one line */
};

static struct str title_text(struct arena *arena, const struct diagram *diagram, bool back)
{
    const struct step *step = &diagram->segment->play->steps.at[diagram->step];
    struct str text = diagram->label;
    if (diagram->title.size > 0) {
        struct str title = diagram->branch < 0
                               ? diagram->title
                               : tell_branch(arena, &step->branches.at[diagram->branch]);
        text = str_format(arena, "%.*s  %.*s", STR_ARG(diagram->label), STR_ARG(title));
    }
    return back ? str_format(arena, "Back: %.*s", STR_ARG(text)) : text;
}

static struct title title_of(struct arena *arena, const struct diagram *diagram, bool back,
                             double width)
{
    struct title title = {.text = title_text(arena, diagram, back),
                          .after = scene_after(arena, diagram),
                          .size = TITLE_SIZE,
                          .broken = {.lines = 1}};
    struct str after = title.after;
    double behind = after.size ? AFTER_SPACE + metrics_width(FACE_REGULAR, AFTER_SIZE, after) : 0;
    double room = width - 2 - behind, wide = metrics_width(FACE_BOLD, TITLE_SIZE, title.text);
    title.size = wide > room ? TITLE_SIZE * room / wide : TITLE_SIZE;
    if (title.size < TITLE_LEAST) {
        struct str both = str_format(arena, "%c%.*s%c %.*s", TELL_BOLD, STR_ARG(title.text),
                                     TELL_PLAIN, STR_ARG(after));
        split_words(arena, both, &title.broken);
        set_lines(&title.broken, &title_setting, width);
    }
    return title;
}

double title_height(struct arena *arena, const struct diagram *diagram,
                    const struct scene_options *options, double width)
{
    const diagram_list *all = options->together;
    int most = 0;
    for (size_t i = 0; i < (all ? all->count : 1); i++) {
        const struct diagram *one = all ? &all->at[i] : diagram;
        int lines = title_of(arena, one, options->heading, width).broken.lines;
        most = lines > most ? lines : most;
    }
    return TITLE_BASE + (most - 1) * title_setting.leading + TITLE_BELOW;
}

void title_put(struct drawing *drawing, const struct diagram *diagram, bool back)
{
    struct title title = title_of(drawing->arena, diagram, back, drawing->frame.width);
    if (title.broken.count > 0) {
        text_put(drawing, &title.broken, &title_setting, TITLE_BASE);
        return;
    }
    struct caption_word text = {.text = title.text, .bold = true}, after = {.text = title.after};
    word_put(drawing, &text, 1, TITLE_BASE, title.size);
    if (after.text.size) {
        double x = 1 + metrics_width(FACE_BOLD, title.size, text.text) + AFTER_SPACE;
        word_put(drawing, &after, x, TITLE_BASE, AFTER_SIZE);
    }
}

void caption_draw(struct drawing *drawing)
{
    if (drawing->options->caption || drawing->options->heading) {
        title_put(drawing, drawing->diagram, false);
    }
    double width = drawing->frame.width, y = drawing->frame.height + FIRST;
    struct lettering how = caption_setting(width);
    caption_texts texts = texts_of(drawing->arena, drawing->diagram, drawing->options, width);
    for (size_t i = 0; i < texts.count; i++) {
        disc_put(drawing, &texts.at[i], y);
        text_put(drawing, &texts.at[i], &how, y);
        y += texts.at[i].lines * how.leading + BETWEEN;
    }
}
