/* SPDX-License-Identifier: MIT */
/* season: every sheet of the book at one go, for whoever has changed something and prints anew. */
#include <stdlib.h>
#include <string.h>

#include "program/cli/older.h"
#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

static bool has_plays(const struct request *request, const struct courtwright *book)
{
    return request->play || courtwright_play_count(book) > 0;
}

static bool has_cards(const struct request *request, const struct courtwright *book)
{
    size_t drills = 0, count = courtwright_play_count(book);
    for (size_t i = 0; i < count; i++) {
        drills += courtwright_play(book, i)->drill;
    }
    return request->play || drills < count;
}

/* A practice is of many plays: it is not one play's. */
static bool has_practices(const struct request *request, const struct courtwright *book)
{
    return !request->play && courtwright_practice_count(book) > 0;
}

static bool has_charted(const struct request *request, const struct courtwright *book)
{
    return courtwright_is_charted(book, request->play);
}

/* One row a command, in the order they are written: what may fail for the crest comes first. */
static const struct season_part {
    const char *command;
    sheet_work *work;
    bool (*wanted)(const struct request *request, const struct courtwright *book);
    const char *reader, *pattern; /* NULL: the command's own */
    bool names;                   /* takes --names */
} parts[] = {
    {"book", write_book, has_plays, NULL, NULL, true},
    {"book", write_book, has_plays, NULL, "{play}.html", true},
    {"handout", write_handouts, has_plays, NULL, NULL, true},
    {"handout", write_handouts, has_plays, "everyone", NULL, true},
    {"coach", write_coach, has_plays, NULL, NULL, true},
    {"fill-in", write_fill_in, has_plays, NULL, NULL, false},
    {"card", write_card, has_cards, NULL, NULL, false},
    {"practice", write_practices, has_practices, NULL, NULL, false},
    {"chart", write_tally, has_plays, NULL, NULL, true},
    {"trend", write_trend, has_charted, NULL, NULL, false},
};
enum { PARTS = sizeof parts / sizeof *parts };

/* A page for phones has no cover to put a crest on and no sides. */
static struct request part_request(const struct request *request, const struct season_part *part,
                                   struct file_names *written)
{
    struct request one = *request;
    one.command = part->command;
    one.reader = part->reader;
    one.names = request->names && part->names;
    one.written = written;
    if (part->pattern) {
        one.crest = NULL;
        one.two_sided = false;
        one.paper = 0;
    }
    return one;
}

static int write_part(const struct request *request, struct input *input,
                      const struct season_part *part, struct file_names *written)
{
    struct request one = part_request(request, part, written);
    struct picked picked = {0};
    const char *folder = request->output ? request->output : "";
    bool slash = *folder && folder[strlen(folder) - 1] != '/';
    char *output =
        part->pattern ? format_text("%s%s%s", folder, slash ? "/" : "", part->pattern) : NULL;
    one.output = output ? output : request->output;
    int status = part->work(&one, input, &picked);
    free(output);
    picked_free(&picked);
    return status;
}

static int write_parts(const struct request *request, struct input *input,
                       struct file_names *written)
{
    int worst = STATUS_FINE;
    for (size_t i = 0; i < PARTS && worst != STATUS_FILE; i++) {
        if (parts[i].wanted(request, input->book)) {
            int status = write_part(request, input, &parts[i], written);
            worst = status > worst ? status : worst;
        }
    }
    return worst;
}

/* Whether all of it can be written: half a season on paper would be worse than none. */
static int all_good(const struct request *request, const struct input *input, struct picked *picked)
{
    int status = has_plays(request, input->book) ? sheet_pick(request, input, picked)
                                                 : sheet_part(request, input, COURTWRIGHT_ROUND);
    if (status != STATUS_FINE) {
        return status;
    }
    int practices = has_practices(request, input->book)
                        ? sheet_part(request, input, COURTWRIGHT_PRACTICES)
                        : STATUS_FINE;
    return practices == STATUS_FINE && has_charted(request, input->book)
               ? sheet_part(request, input, COURTWRIGHT_CHARTED)
               : practices;
}

static int write_season(const struct request *request, struct input *input, struct picked *picked)
{
    int status = all_good(request, input, picked);
    if (status != STATUS_FINE) {
        return status;
    }
    struct file_names written = {0};
    status = write_parts(request, input, &written);
    tell_missing(request, input->book);
    if (status == STATUS_FINE && written.count == 0) {
        say(request->command, "nothing was written: there is no play or practice in it");
        status = STATUS_TEXT;
    }
    if (status == STATUS_FINE && request->deps && !names_deps(&written, request, input)) {
        status = STATUS_FILE;
    }
    if (status == STATUS_FINE && !request->play) {
        older_tell(request, &written);
    }
    names_free(&written);
    return status;
}

static int run(const struct request *request)
{
    if (request->output && !naming_folder(request->output)) {
        return wrong_use(request, "many files come out: -o takes a folder that is there");
    }
    return sheet_run(request, write_season);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a folder"),
    ROW_PLAY,
    {"two-sided", 0, OPTION_FLAG, FIELD(two_sided), NULL,
     "the book for binding: left and right pages lean to the outside", 0, 0},
    {"crest", 0, OPTION_TEXT, FIELD(crest), "FILE", "the team's picture for the book's cover", 0,
     0},
    ROW_PAPER,
    ROW_NAMES,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_season = {
    "season",
    "FILE",
    "write every sheet for everybody: all of the commands for paper at one go",
    options,
    "  courtwright season kites.play --crest kites.svg -o print/\n",
    1,
    1,
    run};
