/* SPDX-License-Identifier: MIT */
/* explain: why a check is there, what an error means, what a word does. */
#include "program/cli/say.h"

#include <stdio.h>
#include <string.h>

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
    return STATUS_FINE;
}

static int run(const struct request *request)
{
    bool first = true;
    if (request->word_count == 0) {
        return list_words();
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
    {"draw", 0, OPTION_LATER, 0, NULL, NULL, 0, 0},
    OPTIONS_END,
};

const struct command command_explain = {
    "explain",
    "[WORD]",
    "explain a check, an error or a word of the language",
    options,
    "  courtwright explain space.close\n  courtwright explain curls\n",
    0,
    1,
    run};
