/* SPDX-License-Identifier: MIT */
/* site_sheet: sheets as PDF for the page, of the text as it stands there. The text came with a
 * request, so what it includes is not looked for on the disk: it gets what the saved file includes.
 */
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "program/cli/one_sheet.h"
#include "program/cli/site.h"

static const char mend_first[] = "There is an error in it: mend that first.";

struct making {
    const struct serve_ask *ask;
    struct serve_answer *answer;
    struct desk_look look;
    struct courtwright *book;
    const char *sheet;
    struct courtwright_handout options;
    size_t *plays;
    struct bytes pages;
};

static enum courtwright_fetched fetch(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include)
{
    const struct desk_look *look = ctx;
    for (size_t i = 0; i < look->include_count; i++) {
        const struct desk_include *found = &look->includes[i];
        if (strcmp(found->from, from) == 0 && strcmp(found->path, path) == 0) {
            if (found->fetched == COURTWRIGHT_FETCHED) {
                courtwright_include_text(include, found->name, found->text.at, found->text.size);
            }
            return found->fetched;
        }
    }
    return COURTWRIGHT_MISSING;
}

static bool keep(void *ctx, const char *bytes, size_t size)
{
    struct bytes *kept = ctx;
    char *more = realloc(kept->at, kept->size + size);
    if (!more) {
        return false;
    }
    memcpy(more + kept->size, bytes, size);
    *kept = (struct bytes){more, kept->size + size};
    return true;
}

static bool no(struct making *making, const char *why)
{
    answer_trouble(making->answer, 422, "%s", why);
    return false;
}

/* ---- What is wanted -------------------------------------------------------------------------- */

static const char *word_or_null(const struct making *making, const char *key)
{
    const char *text = serve_value(making->ask, key);
    return text && *text ? text : NULL;
}

/* A whole number of the request, from 0, which it is where nothing is said; false: it is none. */
static bool whole_number(const struct making *making, const char *key, long most, long *number)
{
    const char *text = word_or_null(making, key);
    char *end;
    *number = 0;
    if (!text) {
        return true;
    }
    *number = strtol(text, &end, 10);
    return *end == '\0' && *number >= 0 && *number <= most;
}

static bool is_sheet(void *ctx, const struct courtwright_entry *entry)
{
    const char **wanted = ctx; /* becomes NULL when it is found */
    *wanted = *wanted && strcmp(entry->word, *wanted) == 0 ? NULL : *wanted;
    return *wanted != NULL;
}

static bool read_sheet(struct making *making)
{
    const char *wanted = serve_value(making->ask, "sheet");
    making->sheet = wanted;
    if (wanted) {
        courtwright_list(COURTWRIGHT_SHEETS, NULL, is_sheet, &wanted);
    }
    return (making->sheet && !wanted) || no(making, "There is no such sheet.");
}

static bool read_options(struct making *making)
{
    struct courtwright_handout *options = &making->options;
    const char *paper = word_or_null(making, "paper");
    const char *names = word_or_null(making, "names");
    long reader, per_page, seed;
    if (!whole_number(making, "reader", 5, &reader) ||
        !whole_number(making, "per-page", 20, &per_page) ||
        !whole_number(making, "seed", 1000000000, &seed)) {
        return no(making, "A number of it is out of its range.");
    }
    options->reader = (int)reader;
    options->per_page = (int)per_page;
    options->seed = (unsigned)seed;
    options->names = names && strcmp(names, "1") == 0;
    options->reader_name = word_or_null(making, "for");
    options->title = word_or_null(making, "title");
    options->date_text = word_or_null(making, "date");
    options->date = epoch_date();
    options->paper = !paper                     ? COURTWRIGHT_BOOK_PAPER
                     : strcmp(paper, "a4") == 0 ? COURTWRIGHT_A4
                                                : COURTWRIGHT_LETTER;
    return true;
}

/* ---- Which plays ----------------------------------------------------------------------------- */

static bool is_meant(const struct making *making, const struct courtwright_play *play, bool *named)
{
    bool meant = false;
    *named = false;
    for (size_t i = 0; i < making->ask->value_count; i++) {
        const struct serve_value *value = &making->ask->values[i];
        if (strcmp(value->key, "play") == 0 && *value->text) {
            *named = true;
            meant = meant || strcasecmp(value->text, play->name) == 0;
        }
    }
    return meant || !*named;
}

/* Those that are meant, without an error in them. A drill stays off a card unless it is named. */
static bool pick(struct making *making)
{
    size_t all = courtwright_play_count(making->book);
    bool card = strcmp(making->sheet, "card") == 0, broken = false;
    making->plays = must(malloc((all + 1) * sizeof *making->plays));
    for (size_t i = 0; i < all; i++) {
        bool named;
        const struct courtwright_play *play = courtwright_play(making->book, i);
        if (is_meant(making, play, &named) && !(card && play->drill && !named)) {
            broken = broken || play->broken;
            making->plays[making->options.play_count++] = i;
        }
    }
    making->options.plays = making->plays;
    if (broken) {
        return no(making, mend_first);
    }
    return making->options.play_count > 0 || no(making, "There is no such play in it.");
}

static bool part_is_good(struct making *making, enum courtwright_part part)
{
    return part_good(making->book, part) || no(making, mend_first);
}

static bool has_something(struct making *making)
{
    const char *play = word_or_null(making, "play");
    if (strcmp(making->sheet, "practice") == 0) {
        return part_is_good(making, COURTWRIGHT_PRACTICES) &&
               (courtwright_practice_count(making->book) > 0 ||
                no(making, "There is no practice in it; one begins with practice \"Week 3\"."));
    }
    if (strcmp(making->sheet, "trend") == 0) {
        making->options.title = play;
        return part_is_good(making, COURTWRIGHT_CHARTED) &&
               (courtwright_is_charted(making->book, play) ||
                no(making,
                   "Nothing is charted; a block of it begins with charted 2026-12-01 game."));
    }
    return part_is_good(making, COURTWRIGHT_ROUND) && pick(making);
}

/* ---- Pages ----------------------------------------------------------------------------------- */

/* "Larkspur Kites handout 3.pdf" */
static char *name_pages(const struct making *making)
{
    const char *book = courtwright_title(making->book), *of = book;
    char whose[40] = "";
    if (making->options.play_count == 1 || !*book) {
        of = making->plays ? courtwright_play(making->book, making->plays[0])->name : book;
    }
    if (making->options.reader > 0) {
        snprintf(whose, sizeof whose, " %d", making->options.reader);
    }
    const char *name = making->options.reader_name;
    return format_text("%s%s%s%s%s%s.pdf", of, *of ? " " : "", making->sheet, whose,
                       name ? " " : "", name ? name : "");
}

static void print(struct making *making)
{
    struct courtwright_writer writer = {keep, &making->pages};
    enum courtwright_status status =
        courtwright_sheet(making->book, making->sheet, &making->options, &writer);
    if (status == COURTWRIGHT_NO_SUCH) {
        no(making, "There is nothing in it for that sheet or that player.");
    } else if (status != COURTWRIGHT_OK) {
        answer_trouble(making->answer, status == COURTWRIGHT_MEMORY ? 500 : 422, "No sheet: %s.",
                       courtwright_status_text(status));
    } else {
        *making->answer = (struct serve_answer){.status = 200,
                                                .type = "application/pdf",
                                                .policy = "frame-ancestors 'self'",
                                                .name = name_pages(making),
                                                .bytes = making->pages.at,
                                                .size = making->pages.size};
        making->pages = (struct bytes){NULL, 0};
    }
}

static void make(struct making *making, const struct desk *desk)
{
    struct input jobs = {0};
    struct courtwright_host host = input_host(&jobs);
    const struct serve_ask *ask = making->ask;
    desk_look_anew(desk, &making->look);
    host.fetch = fetch;
    host.fetch_ctx = &making->look;
    making->book =
        must(courtwright_load(desk->path, ask->body ? ask->body : "", ask->body_size, &host));
    if (has_something(making)) {
        print(making);
    }
}

void sheet_answer(const struct desk *desk, const struct serve_ask *ask, struct serve_answer *answer)
{
    struct making making = {.ask = ask, .answer = answer};
    if (read_sheet(&making) && read_options(&making)) {
        make(&making, desk);
    }
    courtwright_free(making.book);
    free(making.plays);
    free(making.pages.at);
    desk_look_free(&making.look);
}
