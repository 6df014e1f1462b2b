/* SPDX-License-Identifier: MIT */
/* card: plays small, for the bench. */
#include <stdlib.h>

#include "program/cli/one_sheet.h"
#include "program/cli/say.h"

/* A drill is for practice: it stays off the card unless it is asked for by name. */
static void drop_drills(const struct request *request, const struct courtwright *book,
                        struct picked *picked)
{
    size_t kept = 0;
    for (size_t i = 0; i < picked->count; i++) {
        if (request->play || !courtwright_play(book, picked->plays[i])->drill) {
            picked->plays[kept++] = picked->plays[i];
        }
    }
    picked->count = kept;
}

static int write_named(const struct request *request, struct input *input,
                       const struct picked *picked)
{
    const char *book = courtwright_title(input->book);
    bool one = request->play || !*book;
    struct courtwright_handout options = sheet_options(request);
    options.plays = picked->plays;
    options.play_count = picked->count;
    options.per_page = (int)request->per_page;
    char *name =
        format_text("%s card", one ? courtwright_play(input->book, picked->plays[0])->name : book);
    int status = one_sheet(request, input, "card", &options, name);
    free(name);
    return status;
}

int write_card(const struct request *request, struct input *input, struct picked *picked)
{
    int status = sheet_pick(request, input, picked);
    if (status != STATUS_FINE) {
        return status;
    }
    drop_drills(request, input->book, picked);
    if (picked->count == 0) {
        say(request->command, "nothing was written: there are only drills in it; --play names one");
        return STATUS_TEXT;
    }
    return write_named(request, input, picked);
}

static int run(const struct request *request)
{
    if (request->per_page != 0 && request->per_page != 12 && request->per_page != 20) {
        return wrong_use(request, "--per-page takes 12 or 20 for a card");
    }
    return sheet_run(request, write_card);
}

static const struct option_row options[] = {
    ROW_OUTPUT("a file, a folder, or -"),
    ROW_PLAY,
    {"per-page", 0, OPTION_NUMBER, FIELD(per_page), "N",
     "cards a page: 12 or 20, fewer where one is so tall that it takes the room of two (12 where "
     "one page is enough)",
     1, 20},
    ROW_PAPER,
    ROW_DATE,
    ROW_STRICT,
    ROW_DEPS,
    OPTIONS_END,
};

const struct command command_card = {"card",
                                     "FILE",
                                     "write a bench card: plays small, to cut apart, as PDF",
                                     options,
                                     "  courtwright card book.play -o bench.pdf\n",
                                     1,
                                     1,
                                     run};
