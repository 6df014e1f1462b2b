/* SPDX-License-Identifier: MIT */
/* pick: see pick.h. */
#include "program/cli/pick.h"

#include <stdlib.h>
#include <strings.h>
#include <time.h>

#include "program/cli/say.h"

static void list_names(const struct courtwright *book)
{
    for (size_t i = 0; i < courtwright_play_count(book); i++) {
        fprintf(stderr, "%s%s", i ? ", " : "The plays are: ", courtwright_play(book, i)->name);
    }
    fputs(courtwright_play_count(book) ? "\n" : "There are no plays in it.\n", stderr);
}

bool pick_plays(struct picked *picked, const struct request *request,
                const struct courtwright *book)
{
    size_t all = courtwright_play_count(book);
    *picked = (struct picked){.plays = must(malloc((all + 1) * sizeof *picked->plays))};
    bool found = !request->play;
    for (size_t i = 0; i < all; i++) {
        const struct courtwright_play *play = courtwright_play(book, i);
        if (request->play && strcasecmp(play->name, request->play) != 0) {
            continue;
        }
        found = true;
        if (play->broken) {
            picked->left_out++;
        } else {
            picked->plays[picked->count++] = i;
        }
    }
    if (!found) {
        say(request->command, "there is no play called '%s'", shown(request->play));
        list_names(book);
        picked_free(picked);
    }
    return found;
}

int tell_and_pick(struct picked *picked, const struct request *request,
                  const struct courtwright *book)
{
    struct telling telling = {.least = COURTWRIGHT_WARNING};
    int said = tell(request, book, &telling);
    if (said == STATUS_FILE || pick_plays(picked, request, book)) {
        return said;
    }
    return said ? said : STATUS_USE;
}

/* What --step could have meant: 1, 1a, 1b, 2. */
static void list_labels(const struct courtwright *book, size_t play)
{
    const struct courtwright_play *meant = courtwright_play(book, play);
    for (size_t i = 0; i < meant->diagrams; i++) {
        fprintf(stderr, "%s%s",
                i ? ", " : "Its steps and reads are: ", courtwright_diagram(book, play, i)->label);
    }
    fputs(meant->diagrams ? "\n" : "", stderr);
}

int none_picked(const struct picked *picked, const struct request *request,
                const struct courtwright *book, const char *done)
{
    if (picked->count > 0 && request->step) {
        int status = wrong_use(request, "there is no step '%s'", shown(request->step));
        if (picked->count == 1) {
            list_labels(book, picked->plays[0]);
        }
        return status;
    }
    say(request->command, "nothing was %s: %s", done,
        picked->left_out ? "mend the errors first" : "there is no play with a step in it");
    return STATUS_TEXT;
}

void picked_free(struct picked *picked)
{
    free(picked->plays);
    picked->plays = NULL;
}

bool step_picked(const struct request *request, const struct courtwright_diagram *diagram)
{
    if (!request->step || strcasecmp(request->step, diagram->label) == 0) {
        return true;
    }
    char *end;
    long number = strtol(request->step, &end, 10);
    bool alone = end != request->step && strcasecmp(end, " alone") == 0;
    return end != request->step && (*end == '\0' || (alone && diagram->branch == 0)) &&
           number == diagram->step;
}

const char *epoch_date(void)
{
    static char date[40];
    const char *epoch = getenv("SOURCE_DATE_EPOCH");
    char *end;
    long long seconds = epoch ? strtoll(epoch, &end, 10) : -1;
    if (seconds < 0 || end == epoch || *end || seconds > 253402300799) { /* the year 9999 */
        return NULL;
    }
    time_t when = (time_t)seconds;
    struct tm parts;
    return gmtime_r(&when, &parts) && strftime(date, sizeof date, "%Y-%m-%dT%H:%M:%SZ", &parts)
               ? date
               : NULL;
}
