/* SPDX-License-Identifier: MIT */
/* handout: pages for players. */
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "program/cli/files.h"
#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

/* Whose pages: everybody's, those of a number, or all spots of a name. */
struct reader {
    int number;
    const char *name, *jersey; /* NULL: nobody's; the one of that name */
    bool told;                 /* that the name stands there more than once */
};
enum { SPOTS_MOST = 12 }; /* of a drill; a play has five */
struct handing {
    const struct request *request;
    struct input *input;
    struct picked *picked;
    struct reader *readers;
    size_t count;
    struct naming naming;
    size_t written;
};

static void add_reader(struct handing *handing, int number, const char *name, const char *jersey)
{
    handing->readers =
        must(realloc(handing->readers, (handing->count + 1) * sizeof *handing->readers));
    handing->readers[handing->count++] = (struct reader){number, name, jersey, false};
}

/* Two of one name without a jersey cannot be told from one with two spots: it is said. */
static void tell_twice(const struct handing *handing, struct reader *reader)
{
    if (!*reader->jersey && !reader->told) {
        say(handing->request->command,
            "'%s' stands more than once in the roster without a jersey: taken for one player with "
            "several spots; if they are two, give each a jersey",
            shown(reader->name));
        reader->told = true;
    }
}

/* A name that stands in the roster more than once has more than one spot; with two jerseys it is
 * two players. */
static void add_player(struct handing *handing, const struct courtwright_player *player)
{
    for (size_t i = 0; i < handing->count; i++) {
        struct reader *reader = &handing->readers[i];
        if (reader->name && strcasecmp(reader->name, player->name) == 0 &&
            strcmp(reader->jersey, player->jersey) == 0) {
            tell_twice(handing, reader);
            return;
        }
    }
    add_reader(handing, 0, player->name, player->jersey);
}

/* Everyone of the roster; without one, the five places. */
static void add_everyone(struct handing *handing)
{
    const struct courtwright *book = handing->input->book;
    for (size_t i = 0; i < courtwright_player_count(book); i++) {
        add_player(handing, courtwright_player(book, i));
    }
    for (int number = 1; number <= 5 && courtwright_player_count(book) == 0; number++) {
        add_reader(handing, number, NULL, NULL);
    }
}

static void no_reader(const struct handing *handing, const char *reader,
                      const struct courtwright_player *other)
{
    const struct courtwright *book = handing->input->book;
    const struct courtwright_player *near = courtwright_player_near(book, reader);
    if (other && *reader == '#') {
        wrong_use(handing->request,
                  "more than one of the roster wears '%s', '%s' too: write the "
                  "whole name",
                  shown(reader), shown(other->name));
    } else if (other) {
        wrong_use(handing->request,
                  "'%s' may be more than one of the roster, '%s' too: write the "
                  "whole name, or a jersey as '#7'",
                  shown(reader), shown(other->name));
    } else if (near) {
        wrong_use(handing->request, "there is no '%s' in the roster: did you mean '%s'?",
                  shown(reader), shown(near->name));
    } else {
        wrong_use(handing->request, "there is no '%s' in the roster", shown(reader));
    }
}

/* Does her jersey ask for her alone? */
static bool is_told_apart(const struct courtwright *book, const struct reader *player)
{
    const struct courtwright_player *other = NULL;
    char *asked = format_text("#%s", player->jersey);
    bool one = courtwright_player_meant(book, asked, &other) && !other;
    free(asked);
    return one;
}

/* Two of one name: each has a file. */
static void tell_several(const struct handing *handing, const char *reader, size_t before)
{
    size_t several = handing->count - before, at = before;
    while (at < handing->count && !is_told_apart(handing->input->book, &handing->readers[at])) {
        at++;
    }
    if (at < handing->count) {
        say(handing->request->command,
            "'%s' are %zu players, each with a file of her own: --for '#%s' asks for one alone",
            shown(reader), several, shown(handing->readers[at].jersey));
    } else {
        say(handing->request->command,
            "'%s' are %zu players, each with a file of her own: with a jersey that nobody else "
            "wears each can be asked for alone",
            shown(reader), several);
    }
}

/* All rows of a name; of one by her jersey or a part of her name those that are hers. */
static void add_named(struct handing *handing, const char *reader)
{
    const struct courtwright *book = handing->input->book;
    size_t before = handing->count;
    for (size_t i = 0; i < courtwright_player_count(book); i++) {
        const struct courtwright_player *player = courtwright_player(book, i);
        if (strcasecmp(player->name, reader) == 0) {
            add_player(handing, player);
        }
    }
    if (handing->count > before + 1) {
        tell_several(handing, reader, before);
    }
    const struct courtwright_player *other = NULL, *meant = NULL;
    if (handing->count == before) {
        meant = courtwright_player_meant(book, reader, &other);
    }
    if (meant) {
        say(handing->request->command, "'%s' is taken for '%s'", shown(reader), shown(meant->name));
        add_player(handing, meant);
    } else if (handing->count == before) {
        no_reader(handing, reader, other);
    }
}

static bool pick_readers(struct handing *handing)
{
    const char *reader = handing->request->reader;
    char *end;
    long number = reader ? strtol(reader, &end, 10) : 0;
    if (!reader) {
        add_reader(handing, 0, NULL, NULL);
    } else if (strcasecmp(reader, "everyone") == 0) {
        add_everyone(handing);
    } else if (end != reader && *end == '\0') {
        if (number < 1 || number > SPOTS_MOST) {
            wrong_use(
                handing->request,
                "--for takes a player from 1 to 12, a name of the roster, a jersey as '#7', or "
                "everyone");
            return false;
        }
        add_reader(handing, (int)number, NULL, NULL);
    } else {
        add_named(handing, reader);
    }
    return handing->count > 0;
}

static int write_one(struct handing *handing, const struct reader *reader)
{
    const struct request *request = handing->request;
    const struct courtwright *book = handing->input->book;
    const char *title = courtwright_title(book);
    char number[12];
    snprintf(number, sizeof number, "%d", reader->number);
    bool one = request->play || !*title;
    struct name_parts parts = {
        .play = one ? courtwright_play(book, handing->picked->plays[0])->name : title,
        .player = reader->name     ? reader->name
                  : reader->number ? number
                                   : NULL,
    };
    struct courtwright_handout handout = sheet_options(request);
    handout.plays = handing->picked->plays;
    handout.play_count = handing->picked->count;
    handout.per_page = (int)request->per_page;
    handout.reader = reader->number;
    handout.reader_name = reader->name;
    handout.reader_jersey = reader->jersey;
    const char *path = naming_next(&handing->naming, &parts);
    struct output output;
    if (!output_open(&output, handing->input, request->command, path, false)) {
        return STATUS_FILE;
    }
    enum courtwright_status status =
        courtwright_handout(handing->input->book, &handout, &output.writer);
    if (status == COURTWRIGHT_NO_SUCH && parts.player) {
        say(request->command, "%s was not written: no play here has %s%s on the floor", shown(path),
            reader->name ? "" : "a player ", shown(parts.player));
        output_drop(&output);
        naming_drop(&handing->naming);
        return STATUS_FINE;
    }
    int ended = output_close(&output, status, shown(path), path);
    handing->written += ended == STATUS_FINE;
    return ended;
}

static int write_all(struct handing *handing)
{
    const struct request *request = handing->request;
    int status = STATUS_USE;
    if (naming_start(&handing->naming, request,
                     request->reader ? "{play}-{player}.pdf" : "{play}.pdf", handing->count > 1)) {
        status = STATUS_FINE;
        for (size_t i = 0; i < handing->count && status == STATUS_FINE; i++) {
            status = write_one(handing, &handing->readers[i]);
        }
        if (status == STATUS_FINE && handing->written == 0) {
            status = STATUS_USE;
        }
    }
    status = naming_end(&handing->naming, request, handing->input, status);
    tell_missing(request, handing->input->book);
    return status;
}

int write_handouts(const struct request *request, struct input *input, struct picked *picked)
{
    struct handing handing = {.request = request, .input = input, .picked = picked};
    int status = sheet_pick(request, input, picked);
    if (status == STATUS_FINE) {
        status = pick_readers(&handing) ? write_all(&handing) : STATUS_USE;
    }
    free(handing.readers);
    return status;
}

static int run(const struct request *request)
{
    return per_page_good(request) ? sheet_run(request, write_handouts) : STATUS_USE;
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, a name with {play} {player} {n}, or -"),
    ROW_PLAY,
    {"for", 0, OPTION_TEXT, FIELD(reader), "WHO",
     "one player's own pages: 3, \"Wren Adeyemi\", Wren, '#7', everyone", 0, 0},
    {"per-page", 0, OPTION_NUMBER, FIELD(per_page), "N",
     "diagrams a page: 1, 2, 4, 6 or 9; else as they fit best", 1, 9},
    ROW_PAPER,
    ROW_NAMES,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_handout = {
    "handout",
    "FILE",
    "write pages for players, as PDF",
    options,
    "  courtwright handout book.play --for everyone -o pages/{player}.pdf\n",
    1,
    1,
    run};
