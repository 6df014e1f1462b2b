/* SPDX-License-Identifier: MIT */
/* explain: why a check is there, what an error means, what a word does. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "program/cli/files.h"
#include "program/cli/naming.h"
#include "program/cli/pick.h"
#include "program/cli/say.h"

enum { CHECK_NAME = 64 };

static void indented(const char *heading, const char *text)
{
    if (!*text) {
        return;
    }
    printf("\n%s\n", heading);
    while (*text) {
        size_t size = strcspn(text, "\n");
        printf(size ? "    %.*s\n" : "\n", (int)size, text);
        text += size + (text[size] == '\n');
    }
}

/* Words to lines of at most 78 letters. */
static void wrapped(const char *text)
{
    size_t column = 0;
    while (*text) {
        size_t size = strcspn(text, " \n");
        if (column > 0 && column + 1 + size > 78) {
            putchar('\n');
            column = 0;
        }
        printf(column ? " %.*s" : "%.*s", (int)size, text);
        column += size + (column > 0);
        text += size;
        while (*text == ' ' || *text == '\n') {
            text++;
        }
    }
    if (column) {
        putchar('\n');
    }
}

static bool show(void *ctx, const struct courtwright_entry *entry)
{
    static const char *const severities[] = {"note", "warning", "error"};
    bool *first = ctx;
    const char *table = courtwright_list_name(entry->list);
    printf("%s%s (", *first ? "" : "\n", entry->word);
    if (entry->list == COURTWRIGHT_ERRORS) {
        printf("%s)\n", severities[entry->severity]);
    } else {
        bool graded = entry->list == COURTWRIGHT_CHECKS;
        printf("%.*s%s%s)\n", (int)(strlen(table) - 1), table, graded ? ", " : "",
               graded ? severities[entry->severity] : "");
    }
    *first = false;
    if (entry->list != COURTWRIGHT_ERRORS) {
        wrapped(entry->what);
    }
    if (*entry->why) {
        putchar('\n');
        wrapped(entry->why);
    }
    if (*entry->limit) {
        printf("\nLimit: %s; change it with: limit %s %s\n", entry->limit, entry->word,
               entry->limit);
    }
    indented(*entry->bad ? "Good:" : "Example:", entry->good);
    indented("Not good:", entry->bad);
    if (*entry->source) {
        putchar('\n');
        printf("Source: ");
        wrapped(entry->source);
    }
    return true;
}

/* ---- what is no row of a table ---- */

static const struct page {
    const char *word, *text, *example;
} pages[] = {
    {"tolerance",
     "No two players are alike, and none is the same twice. `check --tolerance` runs every "
     "step and read 100 times, each time with everybody's speed (8 %) and reaction (20 %, "
     "one deviation each) drawn anew, always the same hundred teams. A run works when "
     "every pass is caught, every screen is used, and none of the checks of passes and "
     "screens finds anything: pass.lane, screen.early, screen.gap, screen.moving, "
     "screen.nobody, ball.handoff. They are the same checks as of the play itself, with "
     "its limits and what it accepts. The tightest is the movement with the least time to "
     "spare in the middle one of the runs: later by so much, and it would not have come "
     "off. Where fewer than 75 of 100 work, the check that found most of them says what to "
     "write. What else is warned of in the step is named at the end: a play can be on time "
     "and still crowded. It is a model's answer, good for comparing two ways to write a "
     "step, not for betting on one.",
     "courtwright check book.play --tolerance\n"
     "courtwright check book.play --tolerance --jobs 2 --json\n"},
};
enum { PAGES = sizeof pages / sizeof *pages };

static bool show_page(const char *word)
{
    for (size_t i = 0; i < PAGES; i++) {
        if (strcmp(pages[i].word, word) == 0) {
            printf("%s\n", pages[i].word);
            wrapped(pages[i].text);
            indented("Example:", pages[i].example);
            return true;
        }
    }
    return false;
}

static bool show_word(void *ctx, const struct courtwright_entry *entry)
{
    (void)ctx;
    printf("  %s\n", entry->word);
    return true;
}

static int list_words(void)
{
    static const enum courtwright_list lists[] = {
        COURTWRIGHT_CHECKS,     COURTWRIGHT_ERRORS, COURTWRIGHT_VERBS,    COURTWRIGHT_PLACES,
        COURTWRIGHT_FORMATIONS, COURTWRIGHT_ZONES,  COURTWRIGHT_SETTINGS, COURTWRIGHT_WORDS};
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        printf("%s%s:\n", i ? "\n" : "", courtwright_list_name(lists[i]));
        courtwright_list(lists[i], NULL, show_word, NULL);
    }
    printf("\nanswers:\n");
    for (size_t i = 0; i < PAGES; i++) {
        printf("  %s\n", pages[i].word);
    }
    return STATUS_FINE;
}

/* ---- --draw ---- */

static bool remember(void *ctx, const struct courtwright_entry *entry)
{
    char *check = ctx; /* its id as the table has it */
    if (entry->list == COURTWRIGHT_CHECKS) {
        snprintf(check, CHECK_NAME, "%s", entry->word);
    }
    return !*check;
}

/* "space.close" is drawn to space-close.svg. */
static char *name_of(const char *check, enum courtwright_format format)
{
    char *name = format_text("%s.%s", check, format_extension(format));
    name[strcspn(name, ".")] = '-';
    return name;
}

static int draw_to(const struct request *request, const char *check, const char *path)
{
    const struct input nothing_read = {0};
    struct output output;
    struct courtwright_draw draw = {
        .format = format_meant(request),
        .theme = request->theme ? (enum courtwright_theme)(request->theme - 1) : COURTWRIGHT_PRINT,
        .width = request->width,
        .date = epoch_date(),
    };
    if (!output_open(&output, &nothing_read, request->command, path, false)) {
        return STATUS_FILE;
    }
    enum courtwright_status status = courtwright_draw_example(check, NULL, &draw, &output.writer);
    return output_close(&output, status, check, path);
}

static int draw_example(const struct request *request)
{
    char check[CHECK_NAME] = "";
    if (request->word_count == 0) {
        return wrong_use(request, "--draw wants the name of a check, such as space.close");
    }
    if (courtwright_explain(request->words[0], NULL, remember, check) == COURTWRIGHT_OK &&
        !*check) {
        return wrong_use(request, "only checks have a good and a bad example to draw; '%s' is none",
                         shown(request->words[0]));
    }
    if (!*check) {
        return wrong_use(request, "no check is called '%s'; 'courtwright list checks' prints them",
                         shown(request->words[0]));
    }
    char *name = name_of(check, format_meant(request));
    struct naming naming;
    const struct name_parts parts = {NULL, NULL, NULL};
    int status = STATUS_USE;
    if (naming_start(&naming, request, name, false)) {
        status = draw_to(request, check, naming_next(&naming, &parts));
    }
    naming_free(&naming);
    free(name);
    return status;
}

static int run(const struct request *request)
{
    bool first = true;
    bool drawn = request->output || request->format || request->theme || request->width > 0;
    if (request->draw) {
        return draw_example(request);
    }
    if (drawn) {
        return wrong_use(request, "-o, --format, --theme and --width go with --draw");
    }
    if (request->word_count == 0) {
        return list_words();
    }
    if (show_page(request->words[0])) {
        return STATUS_FINE;
    }
    enum courtwright_status status = courtwright_explain(request->words[0], NULL, show, &first);
    if (status == COURTWRIGHT_NO_SUCH) {
        say(request->command, "nothing is called '%s'; 'courtwright explain' lists all there is",
            shown(request->words[0]));
        return STATUS_USE;
    }
    return status == COURTWRIGHT_OK ? STATUS_FINE : STATUS_FILE;
}

static const struct option_row options[] = {
    {"draw", 0, OPTION_FLAG, FIELD(draw), NULL,
     "draw a check's good and bad example side by side, with what it sees", 0, 0},
    ROW_OUTPUT("with --draw: a file, or -"),
    ROW_FORMAT,
    ROW_THEME,
    ROW_WIDTH,
    OPTIONS_END,
};

const struct command command_explain = {
    "explain",
    "[WORD]",
    "explain a check, an error or a word of the language",
    options,
    "  courtwright explain space.close\n  courtwright explain curls\n"
    "  courtwright explain screen.angle --draw -o angle.png\n",
    0,
    1,
    run};
