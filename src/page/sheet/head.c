/* SPDX-License-Identifier: MIT */
/* head: words for the head and foot of a page. Takes a play and the sheet's job, gives blocks that
 * fit their places; must not know where on the page these are. */
#include "page/sheet/head.h"

#include "language/tell/tell.h"
#include "page/sheet/telling.h"

#define BETWEEN 20.0 /* words at the left end at the right keep so far apart */

struct str head_club(const struct sheet_job *job)
{
    return job->book->team.name.size > 0 ? job->book->team.name : job->book->title;
}

const struct team *head_names(const struct sheet_job *job, const struct play *play)
{
    if (!job->names || play->is_drill) {
        return NULL;
    }
    return job->team ? job->team : &job->book->team;
}

/* Two of one name are told apart by the jersey: "Ana Reyes #12". */
static struct str name_apart(const struct setter *setter, struct str name)
{
    const struct sheet_job *job = setter->job;
    const struct team *team = &job->book->team;
    bool other = false;
    for (size_t i = 0; i < team->roster.count; i++) {
        const struct roster_entry *entry = &team->roster.at[i];
        other = other || (str_equal_fold(entry->name, job->reader_name) &&
                          !str_equal(entry->jersey, job->reader_jersey));
    }
    return other && job->reader_name.size > 0 && job->reader_jersey.size > 0
               ? str_format(setter->arena, "%.*s\xC2\xA0#%.*s", STR_ARG(name),
                            STR_ARG(job->reader_jersey))
               : name;
}

struct str head_player(const struct setter *setter, const struct play *play)
{
    const struct sheet_job *job = setter->job;
    struct str name = job->reader_name;
    const struct team *names = head_names(job, play);
    if (name.size == 0 && names && job->reader != BODY_NONE) {
        name = team_first_name(names, play, job->reader);
    }
    name = name_apart(setter, words_isolated(setter->arena, name));
    const char *sheet = "Player\xE2\x80\x99s sheet for";
    if (job->reader == BODY_NONE) {
        return str_format(setter->arena, "%s %.*s", sheet, STR_ARG(name));
    }
    if (job->instead_of) {
        return str_format(setter->arena, "%s %.*s, standing in as\xC2\xA0%d", sheet, STR_ARG(name),
                          body_number(job->reader));
    }
    return str_format(setter->arena, "%s %d%s%.*s", sheet, body_number(job->reader),
                      name.size > 0 ? ", " : "", STR_ARG(name));
}

struct str head_players_sheet(const struct setter *setter, const struct play *play)
{
    struct arena *arena = setter->arena;
    const struct sheet_job *job = setter->job;
    if (job->heading.size > 0) {
        return job->heading;
    }
    if (job->reader == BODY_NONE) {
        return words_sheet(arena, "Players\xE2\x80\x99 sheet", play);
    }
    return head_player(setter, play);
}

/* "6 s on the clock, down 2, lineup Small" */
static struct str clock_words(struct arena *arena, const struct play *play)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    if (play->clock > 0) {
        strbuf_number(&out, play->clock, 1);
        strbuf_text(&out, " s on the clock");
    }
    if (play->score.size > 0) {
        strbuf_print(&out, "%s%.*s", out.size > 0 ? ", " : "", STR_ARG(play->score));
    }
    if (play->lineup.size > 0) {
        strbuf_print(&out, "%s %.*s", out.size > 0 ? ", lineup" : "Lineup",
                     STR_ARG(words_isolated(arena, play->lineup)));
    }
    return strbuf_str(&out);
}

static void fit(const struct setter *setter, struct head *head, enum head_part part,
                struct str whole, enum type type, double width, size_t lines)
{
    struct str shown = words_fit(setter, type, whole, width, lines);
    head->whole[part] = whole;
    head->shortened[part] = !str_equal(whole, shown);
    head->shown[part] = words_set(setter, type, shown, width);
}

static double room_beside(const struct text_block *words)
{
    return PAGE_WIDE - (text_width(words) > 0 ? text_width(words) + BETWEEN : 0);
}

/* The largest type in which it takes few lines; at least a line of the smallest. */
static void fit_title(const struct setter *setter, struct head *head, struct str name, bool first)
{
    static const struct {
        enum type type;
        size_t first, further; /* lines it may take */
    } steps[] = {{TYPE_TITLE, 2, 1}, {TYPE_LONG_TITLE, 2, 1}, {TYPE_LONGEST_TITLE, 3, 1}};
    double width = room_beside(head->shown[HEAD_SERIES]);
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++) {
        fit(setter, head, HEAD_TITLE, name, steps[i].type, width,
            first ? steps[i].first : steps[i].further);
        if (!head->shortened[HEAD_TITLE]) {
            return;
        }
    }
}

struct head_words head_of_play(struct arena *arena, const struct play *play, struct str sheet)
{
    return (struct head_words){.sheet = sheet,
                               .series = tell_series(arena, play),
                               .title = play->name,
                               .clock = clock_words(arena, play),
                               .about = play->about,
                               .foot = words_foot(arena, play)};
}

const struct sheet_job *job_with_call(const struct setter *setter)
{
    struct sheet_job *job = arena_new(setter->arena, struct sheet_job);
    *job = *setter->job;
    job->call_at_head = true;
    return job;
}

void head_call(const struct setter *setter, struct head_words *head, const struct play *play)
{
    if (setter->job->call_at_head && play->call.size > 0) {
        head->clock =
            str_format(setter->arena, "Say \xE2\x80\x9C%.*s.\xE2\x80\x9D%s%.*s",
                       STR_ARG(play->call), head->clock.size > 0 ? " " : "", STR_ARG(head->clock));
    }
}

struct head head_make(const struct setter *setter, const struct head_words *words, bool first)
{
    const size_t about_lines = 6;
    struct arena *arena = setter->arena;
    struct head head = {.shown = {NULL}};
    fit(setter, &head, HEAD_CLUB, words_capitals(arena, head_club(setter->job)), TYPE_CLUB,
        HEAD_SIDE + 80, 2);
    fit(setter, &head, HEAD_SHEET, words->sheet, TYPE_NOTE, HEAD_SIDE, 2);
    fit(setter, &head, HEAD_SERIES, words->series, TYPE_SERIES, HEAD_SIDE, 2);
    fit(setter, &head, HEAD_CLOCK, first ? words->clock : STR(""), TYPE_CLOCK, HEAD_SIDE, 3);
    fit(setter, &head, HEAD_DATE, setter->job->date_text, TYPE_NOTE, HEAD_DATE_WIDE, 1);
    fit_title(setter, &head, words->title, first);
    fit(setter, &head, HEAD_ABOUT, first ? words->about : STR(""), TYPE_ABOUT,
        room_beside(head.shown[HEAD_CLOCK]), about_lines);
    if (head.shortened[HEAD_ABOUT]) { /* rather all in one place than a part of it twice */
        head.shown[HEAD_ABOUT] = words_set(setter, TYPE_ABOUT, STR(""), 0);
    }
    return head;
}

struct galley *head_surplus(const struct setter *setter, const struct head_words *words)
{
    static const char *const called[HEAD_PARTS] = {
        [HEAD_CLUB] = "Club",  [HEAD_SHEET] = "Whose sheet", [HEAD_SERIES] = "Series",
        [HEAD_TITLE] = "Name", [HEAD_CLOCK] = "Clock",       [HEAD_ABOUT] = "About",
        [HEAD_DATE] = "Date",
    };
    static const enum head_part order[HEAD_PARTS] = {
        HEAD_TITLE, HEAD_ABOUT, HEAD_SERIES, HEAD_CLOCK, HEAD_CLUB, HEAD_SHEET, HEAD_DATE};
    struct head head = head_make(setter, words, true);
    struct column column = {
        .setter = setter, .galley = galley_new(setter->arena), .width = PAGE_WIDE};
    for (size_t i = 0; i < HEAD_PARTS; i++) {
        if (head.shortened[order[i]]) {
            paragraph_set(&column, str_of(called[order[i]]), head.whole[order[i]]);
        }
    }
    return column.galley->items.count > 0 ? column.galley : NULL;
}
