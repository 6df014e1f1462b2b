/* SPDX-License-Identifier: MIT */
/* draw: diagrams to files. */
#include <jansson.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "program/cli/files.h"
#include "program/cli/naming.h"
#include "program/cli/pick.h"
#include "program/cli/say.h"

enum { TEXT_OUTLINES = 1, TEXT_LIVE };

/* One picture to come. */
struct picture {
    size_t play, diagram, count;
};
struct drawing {
    const struct request *request;
    struct input input;
    struct picked picked;
    struct picture *pictures;
    size_t count;
    struct naming naming;
    struct courtwright_draw options;
    FILE *measures; /* what is measured, until it is written */
};

static bool options_make(struct drawing *drawing)
{
    const struct request *request = drawing->request;
    enum courtwright_format format = format_meant(request);
    bool live = request->text == TEXT_LIVE;
    if (live && (format != COURTWRIGHT_SVG || request->layout > 1)) {
        wrong_use(request, "--text live goes with a single SVG diagram only");
        return false;
    }
    if (request->scale > 0 && (format != COURTWRIGHT_PNG || request->measure)) {
        wrong_use(request, "--scale goes with PNG only");
        return false;
    }
    if (request->json && !request->measure) {
        wrong_use(request, "--json goes with --measure only");
        return false;
    }
    if (request->measure && request->deps && !request->output) {
        wrong_use(request, "--deps tells of files that are written: with --measure, give -o");
        return false;
    }
    drawing->options = (struct courtwright_draw){
        .format = live ? COURTWRIGHT_SVG_LIVE : format,
        .layout =
            request->layout ? (enum courtwright_layout)(request->layout - 1) : COURTWRIGHT_SINGLE,
        .theme = request->theme ? (enum courtwright_theme)(request->theme - 1) : COURTWRIGHT_PRINT,
        .width = request->width,
        .scale = request->scale,
        .caption = request->caption,
        .caution = request->caution,
        .beads = request->beads,
        .names = request->names,
        .show_checks = request->show_checks,
        .hide_defense = request->defense == 2,
        .salt = request->salt,
        .date = epoch_date(),
    };
    return true;
}

static void add_picture(struct drawing *drawing, struct picture picture)
{
    drawing->pictures = must(realloc(drawing->pictures, (drawing->count + 1) * sizeof picture));
    drawing->pictures[drawing->count++] = picture;
}

/* Single: a picture a diagram; strip and grid: one for each row of diagrams that are meant. */
static void pick_pictures(struct drawing *drawing, size_t play)
{
    size_t all = courtwright_play(drawing->input.book, play)->diagrams;
    bool together = drawing->options.layout != COURTWRIGHT_SINGLE;
    for (size_t i = 0; i < all; i++) {
        if (!step_picked(drawing->request, courtwright_diagram(drawing->input.book, play, i))) {
            continue;
        }
        struct picture picture = {play, i, 1};
        while (
            together && i + 1 < all &&
            step_picked(drawing->request, courtwright_diagram(drawing->input.book, play, i + 1))) {
            i++;
            picture.count++;
        }
        add_picture(drawing, picture);
    }
}

/* What lies on what in one diagram, as words. */
static void measure_say(FILE *out, const char *play, const char *label,
                        const struct courtwright_measure *found)
{
    fprintf(out, "%s %s: ", play, label);
    for (int a = 0; a < COURTWRIGHT_MARKS; a++) {
        for (int b = a; b < COURTWRIGHT_MARKS; b++) {
            fprintf(out, "%s-%s %d, ", courtwright_mark_word((enum courtwright_mark)a),
                    courtwright_mark_word((enum courtwright_mark)b), found->on[a][b]);
        }
    }
    fprintf(out,
            "outside %d; labels %d, moved %d, astray %d, left out %d; crossings %d, flat %d, wrong "
            "sides %d",
            found->outside, found->labels, found->labels_moved, found->labels_astray,
            found->labels_left_out, found->crossings, found->flat_crossings, found->wrong_sides);
    fprintf(out, found->least_gap < 1000 ? "; least gap %.1f pt\n" : "\n", found->least_gap);
}

static bool measure_json(FILE *out, const char *play, const char *label,
                         const struct courtwright_measure *found)
{
    json_t *line =
        json_pack("{ss ss si si si si si si si si}", "play", play, "step", label, "outside",
                  found->outside, "labels", found->labels, "labels_moved", found->labels_moved,
                  "labels_astray", found->labels_astray, "labels_left_out", found->labels_left_out,
                  "crossings", found->crossings, "flat_crossings", found->flat_crossings,
                  "wrong_sides", found->wrong_sides);
    bool good = line != NULL;
    if (found->least_gap < 1000) {
        good = good && json_object_set_new(line, "least_gap", json_real(found->least_gap)) == 0;
    }
    json_t *on = json_object();
    for (int a = 0; a < COURTWRIGHT_MARKS; a++) {
        for (int b = a; b < COURTWRIGHT_MARKS; b++) {
            char *pair = format_text("%s-%s", courtwright_mark_word((enum courtwright_mark)a),
                                     courtwright_mark_word((enum courtwright_mark)b));
            good = good && json_object_set_new(on, pair, json_integer(found->on[a][b])) == 0;
            free(pair);
        }
    }
    good = good && json_object_set_new(line, "on", on) == 0 &&
           json_dumpf(line, out, JSON_COMPACT | JSON_REAL_PRECISION(6)) == 0;
    fputc('\n', out);
    json_decref(line);
    return good;
}

static int measure_one(const struct drawing *drawing, const struct courtwright_draw *options)
{
    const struct courtwright_play *play = courtwright_play(drawing->input.book, options->play);
    for (size_t i = 0; i < (options->count ? options->count : 1); i++) {
        struct courtwright_draw one = *options;
        struct courtwright_measure found;
        one.diagram += i;
        enum courtwright_status status = courtwright_measure(drawing->input.book, &one, &found);
        if (status != COURTWRIGHT_OK) {
            say(drawing->request->command, "%s", courtwright_status_text(status));
            return STATUS_FILE;
        }
        const char *label = courtwright_diagram(drawing->input.book, one.play, one.diagram)->label;
        if (!drawing->request->json) {
            measure_say(drawing->measures, play->name, label, &found);
        } else if (!measure_json(drawing->measures, play->name, label, &found)) {
            return STATUS_FILE;
        }
    }
    return STATUS_FINE;
}

static int draw_one(struct drawing *drawing, const struct picture *picture)
{
    struct courtwright_draw options = drawing->options;
    options.play = picture->play;
    options.diagram = picture->diagram;
    options.count = options.layout == COURTWRIGHT_SINGLE ? 0 : picture->count;
    if (drawing->request->measure) {
        return measure_one(drawing, &options);
    }
    struct name_parts parts = {
        .play = courtwright_play(drawing->input.book, picture->play)->name,
        .step = courtwright_diagram(drawing->input.book, picture->play, picture->diagram)->label};
    const char *path = naming_next(&drawing->naming, &parts);
    struct output output;
    if (!output_open(&output, &drawing->input, drawing->request->command, path, false)) {
        return STATUS_FILE;
    }
    enum courtwright_status status =
        courtwright_draw(drawing->input.book, &options, &output.writer);
    return output_close(&output, status, shown(path), path);
}

static int draw_each(struct drawing *drawing)
{
    int status = STATUS_FINE;
    for (size_t i = 0; i < drawing->count && status == STATUS_FINE; i++) {
        status = draw_one(drawing, &drawing->pictures[i]);
    }
    return status;
}

/* All that is measured, into one file; `-` when none is named. */
static int measure_all(struct drawing *drawing)
{
    const struct request *request = drawing->request;
    struct name_parts parts = {0};
    struct bytes found;
    struct output output;
    if (!naming_start(&drawing->naming, request, "{play}-measured", false)) {
        return STATUS_USE;
    }
    drawing->measures = must(open_memstream(&found.at, &found.size));
    int status = draw_each(drawing);
    fclose(drawing->measures);
    must(found.at);
    parts.play = courtwright_play(drawing->input.book, drawing->pictures[0].play)->name;
    const char *path = request->output ? naming_next(&drawing->naming, &parts) : "-";
    if (status == STATUS_FINE &&
        !output_open(&output, &drawing->input, request->command, path, false)) {
        status = STATUS_FILE;
    } else if (status == STATUS_FINE) {
        output.writer.write(&output, found.at, found.size);
        status = output_named(&output, path);
    }
    free(found.at);
    return status;
}

static int draw_all(struct drawing *drawing)
{
    const struct request *request = drawing->request;
    bool together = drawing->options.layout != COURTWRIGHT_SINGLE;
    char *pattern = format_text(together ? "{play}.%s" : "{play}-{step}.%s",
                                format_extension(format_meant(request)));
    int status = STATUS_USE;
    if (request->measure) {
        status = measure_all(drawing);
    } else if (naming_start(&drawing->naming, request, pattern, drawing->count > 1)) {
        status = draw_each(drawing);
    }
    status = naming_end(&drawing->naming, request, &drawing->input, status);
    tell_missing(request, drawing->input.book);
    free(pattern);
    return status;
}

static int draw_picked(struct drawing *drawing)
{
    int said = tell_and_pick(&drawing->picked, drawing->request, drawing->input.book);
    if (!drawing->picked.plays) {
        return said;
    }
    for (size_t i = 0; i < drawing->picked.count; i++) {
        pick_pictures(drawing, drawing->picked.plays[i]);
    }
    if (drawing->count == 0) {
        return none_picked(&drawing->picked, drawing->request, drawing->input.book, "drawn");
    }
    int status = draw_all(drawing);
    if (status == STATUS_FINE && said) {
        tell_written(drawing->request, drawing->input.book);
    }
    return status ? status : said;
}

static int run(const struct request *request)
{
    struct drawing drawing = {.request = request};
    if (!options_make(&drawing)) {
        return STATUS_USE;
    }
    int status = STATUS_FILE;
    if (input_load(&drawing.input, request, 0)) {
        status = draw_picked(&drawing);
    }
    picked_free(&drawing.picked);
    free(drawing.pictures);
    input_free(&drawing.input);
    return status;
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, a name with {play} {step} {n}, or -"),
    ROW_PLAY,
    ROW_STEP,
    ROW_FORMAT,
    {"text", 0, OPTION_CHOICE, FIELD(text), "outlines|live", "in SVG: drawn letters, or real text",
     0, 0},
    {"layout", 0, OPTION_CHOICE, FIELD(layout), "single|strip|grid",
     "a picture a diagram, or one a play", 0, 0},
    ROW_THEME,
    ROW_WIDTH,
    {"scale", 0, OPTION_NUMBER, FIELD(scale), "N", "PNG: pixels a point (3)", .5, 10},
    {"caption", 0, OPTION_FLAG, FIELD(caption), NULL, "the sentences under the floor", 0, 0},
    {"names", 0, OPTION_FLAG, FIELD(names), NULL, "names beside numbers", 0, 0},
    {"beats", 0, OPTION_FLAG, FIELD(beads), NULL, "a bead on each line every half second", 0, 0},
    {"show-checks", 0, OPTION_FLAG, FIELD(show_checks), NULL, "draw findings where they are", 0, 0},
    ROW_DEFENSE,
    ROW_SALT,
    {"measure", 0, OPTION_FLAG, FIELD(measure), NULL,
     "draw nothing: count what lies on what, told on standard output or in OUT", 0, 0},
    {"json", 0, OPTION_FLAG, FIELD(json), NULL, "with --measure: one JSON object a line", 0, 0},
    ROW_STRICT,
    ROW_DEPS,
    {"caution", 0, OPTION_FLAG, FIELD(caution), NULL, "the caution under the floor", 0, 0},
    OPTIONS_END,
};

const struct command command_draw = {
    "draw",
    "FILE",
    "draw diagrams, one for each step and read",
    options,
    "  courtwright draw book.play --play Lantern --format pdf -o diagrams/\n"
    "  courtwright draw - --step 2 -o - < away.play > away-2.svg\n",
    1,
    1,
    run};
