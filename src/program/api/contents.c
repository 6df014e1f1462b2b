/* SPDX-License-Identifier: MIT */
/* contents: what a book holds, told in the public structs: plays, diagrams, players, files. */
#include <stdio.h>
#include <string.h>

#include "picture/scene/moving.h"
#include "program/api/handle.h"

static unsigned line_of(const struct courtwright *book, struct span span)
{
    return source_place(&book->sources.all.at[span.source], span.begin).line;
}

static struct span diagram_span(const struct play *play, const struct diagram *diagram)
{
    const struct step *step = &play->steps.at[diagram->step];
    return diagram->branch < 0 ? step->span : step->branches.at[diagram->branch].span;
}

static void tell_diagrams(struct courtwright *book, struct compiled *compiled)
{
    struct arena *arena = &book->arena;
    size_t count = compiled->diagrams.count;
    compiled->told_diagrams = arena_array(arena, struct courtwright_diagram, count);
    for (size_t i = 0; i < count; i++) {
        const struct diagram *diagram = &compiled->diagrams.at[i];
        compiled->told_diagrams[i] = (struct courtwright_diagram){
            .label = clean_copy(arena, diagram->label),
            .title = clean_copy(arena, diagram->title),
            .step = diagram->step + 1,
            .branch = diagram->branch + 1,
            .seconds = moving_part_of(diagram).to,
            .tasks = step_task_count(&compiled->play->steps.at[diagram->step], diagram->branch),
            .line = line_of(book, diagram_span(compiled->play, diagram)),
            .step_line = line_of(book, compiled->play->steps.at[diagram->step].span),
        };
    }
    compiled->told.diagrams = count;
}

static double main_seconds(const struct run *run)
{
    double seconds = 0;
    for (size_t i = 0; i < run->segments.count; i++) {
        seconds += run->segments.at[i]->main ? run->segments.at[i]->duration : 0;
    }
    return seconds;
}

void contents_tell_play(struct courtwright *book, struct compiled *compiled)
{
    struct arena *arena = &book->arena;
    const struct play *play = compiled->play;
    compiled->told = (struct courtwright_play){
        .name = clean_copy(arena, play->name),
        .series = clean_copy(arena, play->series),
        .call = clean_copy(arena, play->call),
        .about = clean_copy(arena, play->about),
        .chapter = clean_copy(arena, play->chapter),
        .number = play->number,
        .steps = (int)play->steps.count,
        .drill = play->is_drill,
        .broken = !compiled->ran && (compiled->broken || !compiled->waiting),
        .seconds = compiled->run ? main_seconds(compiled->run) : 0,
        .counted = play_is_counted(arena, play),
        .waiting = compiled->waiting,
        .file = clean_copy(arena, book->sources.all.at[play->span.source].name),
        .line = line_of(book, play->span),
    };
    tell_diagrams(book, compiled);
}

static void tell_practices(struct courtwright *book)
{
    size_t count = courtwright_practice_count(book);
    book->practices = arena_array(&book->arena, const char *, count);
    for (size_t i = 0; i < count; i++) {
        book->practices[i] = clean_copy(&book->arena, book->season->practices.at[i].title);
    }
}

static void tell_players(struct courtwright *book)
{
    const struct team *team = &book->playbook->team;
    book->player_count = team->roster.count;
    book->players = arena_array(&book->arena, struct courtwright_player, book->player_count);
    for (size_t i = 0; i < book->player_count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        book->players[i] = (struct courtwright_player){
            .name = clean_copy(&book->arena, entry->name),
            .role = clean_copy(&book->arena, entry->role),
            .jersey = clean_copy(&book->arena, entry->jersey),
            .number = entry->number,
            .starter = entry->starter,
        };
    }
}

void contents_make(struct courtwright *book)
{
    struct arena *arena = &book->arena;
    book->source_count = book->sources.all.count;
    book->source_names = arena_array(arena, const char *, book->source_count);
    for (size_t i = 0; i < book->source_count; i++) {
        book->source_names[i] = clean_copy(arena, book->sources.all.at[i].name);
    }
    book->title = book->team = "";
    if (book->playbook) {
        book->title = clean_copy(arena, book->playbook->title);
        book->team = clean_copy(arena, book->playbook->team.name);
        tell_players(book);
        tell_practices(book);
    }
}

const char *courtwright_title(const struct courtwright *book)
{
    return book->title;
}

const char *courtwright_team(const struct courtwright *book)
{
    return book->team;
}

size_t courtwright_source_count(const struct courtwright *book)
{
    return book->source_count;
}

const char *courtwright_source(const struct courtwright *book, size_t index)
{
    return index < book->source_count ? book->source_names[index] : NULL;
}

size_t courtwright_play_count(const struct courtwright *book)
{
    return book->play_count;
}

const struct courtwright_play *courtwright_play(const struct courtwright *book, size_t index)
{
    return index < book->play_count ? &book->plays[index].told : NULL;
}

const struct courtwright_diagram *courtwright_diagram(const struct courtwright *book, size_t play,
                                                      size_t index)
{
    if (play >= book->play_count || index >= book->plays[play].diagrams.count) {
        return NULL;
    }
    return &book->plays[play].told_diagrams[index];
}

const char *courtwright_borrowed_letters(const struct courtwright *book)
{
    return book->borrowed;
}

const char *courtwright_borrowed_face(const struct courtwright *book)
{
    return book->borrowed_face;
}

const char *courtwright_missing_letters(const struct courtwright *book)
{
    return book->missing;
}

size_t courtwright_player_count(const struct courtwright *book)
{
    return book->player_count;
}

const struct courtwright_player *courtwright_player(const struct courtwright *book, size_t index)
{
    return index < book->player_count ? &book->players[index] : NULL;
}

/* The players stand as the roster has them, row for row. */
static const struct courtwright_player *player_of(const struct courtwright *book,
                                                  const struct roster_entry *entry)
{
    return entry ? courtwright_player(book, (size_t)(entry - book->playbook->team.roster.at))
                 : NULL;
}

const struct courtwright_player *courtwright_player_meant(const struct courtwright *book,
                                                          const char *said,
                                                          const struct courtwright_player **other)
{
    if (!book->playbook) {
        *other = NULL;
        return NULL;
    }
    struct team_found found = team_find(&book->playbook->team, str_of(said));
    *other = player_of(book, found.other);
    return *other ? NULL : player_of(book, found.entry);
}

/* Near the whole of a name, or one of its words. */
static bool is_near(struct str said, const char *name)
{
    const char *const whole[] = {name, NULL};
    bool near = words_nearest(said, whole) != NULL;
    for (const char *space = strchr(name, ' '), *word = name; !near && word;
         word = space ? space + 1 : NULL, space = word ? strchr(word, ' ') : NULL) {
        char part[64];
        size_t size = space ? (size_t)(space - word) : strlen(word);
        snprintf(part, sizeof part, "%.*s", (int)size, word);
        const char *const one[] = {part, NULL};
        near = words_nearest(said, one) != NULL;
    }
    return near;
}

const struct courtwright_player *courtwright_player_near(const struct courtwright *book,
                                                         const char *said)
{
    for (size_t i = 0; i < book->player_count; i++) {
        if (is_near(str_of(said), book->players[i].name)) {
            return &book->players[i];
        }
    }
    return NULL;
}

size_t courtwright_practice_count(const struct courtwright *book)
{
    return book->season ? book->season->practices.count : 0;
}

const char *courtwright_practice(const struct courtwright *book, size_t index)
{
    return index < courtwright_practice_count(book) ? book->practices[index] : NULL;
}

bool courtwright_is_charted(const struct courtwright *book, const char *play)
{
    for (size_t i = 0; book->season && i < book->season->charted.count; i++) {
        const struct charted *charted = &book->season->charted.at[i];
        for (size_t k = 0; k < charted->rows.count; k++) {
            if (!play || str_equal_fold(charted->rows.at[k].play->name, str_of(play))) {
                return true;
            }
        }
    }
    return false;
}

bool paper_is_a4(const struct courtwright *book, enum courtwright_paper paper)
{
    return paper == COURTWRIGHT_BOOK_PAPER ? book->playbook->a4 : paper == COURTWRIGHT_A4;
}
