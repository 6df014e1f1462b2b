/* SPDX-License-Identifier: MIT */
/* animate: plays as SVGs that move. */
#include <stdlib.h>

#include "program/cli/files.h"
#include "program/cli/naming.h"
#include "program/cli/pick.h"
#include "program/cli/say.h"

/* The films to come: of whole plays, or of the diagrams that --step means. */
struct filming {
    const struct request *request;
    struct input input;
    struct picked picked;
    struct courtwright_animate *films;
    size_t count;
};

static void add_film(struct filming *filming, struct courtwright_animate film)
{
    filming->films = must(realloc(filming->films, (filming->count + 1) * sizeof film));
    filming->films[filming->count++] = film;
}

static void pick_films(struct filming *filming, size_t play)
{
    const struct request *request = filming->request;
    struct courtwright_animate film = {
        .play = play,
        .theme = request->theme ? (enum courtwright_theme)(request->theme - 1) : COURTWRIGHT_SCREEN,
        .width = request->width,
        .loop = request->loop,
        .hide_defense = request->defense == 2,
        .salt = request->salt,
    };
    size_t all = courtwright_play(filming->input.book, play)->diagrams;
    if (!request->step && all > 0) {
        add_film(filming, film);
    }
    for (size_t i = 0; request->step && i < all; i++) {
        if (step_picked(request, courtwright_diagram(filming->input.book, play, i))) {
            film.alone = true;
            film.diagram = i;
            add_film(filming, film);
        }
    }
}

static int put_film(const struct filming *filming, struct naming *naming,
                    const struct courtwright_animate *film)
{
    struct courtwright *book = filming->input.book;
    struct name_parts parts = {.play = courtwright_play(book, film->play)->name};
    if (film->alone) {
        parts.step = courtwright_diagram(book, film->play, film->diagram)->label;
    }
    const char *path = naming_next(naming, &parts);
    struct output output;
    if (!output_open(&output, &filming->input, filming->request->command, path, false)) {
        return STATUS_FILE;
    }
    enum courtwright_status status = courtwright_animate(book, film, &output.writer);
    return output_close(&output, status, shown(path), path);
}

static int put_films(struct filming *filming)
{
    const struct request *request = filming->request;
    struct naming naming;
    const char *pattern = request->step ? "{play}-{step}.svg" : "{play}.svg";
    if (!naming_start(&naming, request, pattern, filming->count > 1)) {
        return STATUS_USE;
    }
    int status = STATUS_FINE;
    for (size_t i = 0; i < filming->count && status == STATUS_FINE; i++) {
        status = put_film(filming, &naming, &filming->films[i]);
    }
    return naming_end(&naming, request, &filming->input, status);
}

static int film_all(struct filming *filming)
{
    int said = tell_and_pick(&filming->picked, filming->request, filming->input.book);
    if (!filming->picked.plays) {
        return said;
    }
    for (size_t i = 0; i < filming->picked.count; i++) {
        pick_films(filming, filming->picked.plays[i]);
    }
    if (filming->count == 0) {
        return none_picked(&filming->picked, filming->request, filming->input.book, "written");
    }
    int status = put_films(filming);
    if (status == STATUS_FINE && said) {
        tell_written(filming->request, filming->input.book);
    }
    return status ? status : said;
}

static int run(const struct request *request)
{
    struct filming filming = {.request = request};
    int status = STATUS_FILE;
    if (input_load(&filming.input, request, 0)) {
        status = film_all(&filming);
    }
    picked_free(&filming.picked);
    free(filming.films);
    input_free(&filming.input);
    return status;
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, a name with {play} {step} {n}, or -"),
    ROW_PLAY,
    ROW_STEP,
    {"loop", 0, OPTION_FLAG, FIELD(loop), NULL, "begin again at the end; else it stays there", 0,
     0},
    ROW_THEME,
    ROW_WIDTH,
    ROW_DEFENSE,
    ROW_SALT,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_animate = {
    "animate",
    "FILE",
    "draw plays that move, one SVG each",
    options,
    "  courtwright animate book.play --play Lantern -o lantern.svg\n"
    "  courtwright animate book.play --play Lantern --step 2a --loop -o read.svg\n",
    1,
    1,
    run};
