/* SPDX-License-Identifier: MIT */
/* book: the book that is open in the page: loaded, told as JSON, drawn. Knows the public header. */
#include "program/wasm/out.h"
#include "program/wasm/page.h"

static struct courtwright *book;

static bool write_out(void *ctx, const char *bytes, size_t size)
{
    (void)ctx;
    out_bytes(bytes, size);
    return true;
}

static const struct courtwright_writer to_page = {write_out, NULL};

static void tell_said(const struct courtwright_diagnostic *said)
{
    static const char *const words[] = {"note", "warning", "error"};
    out_open('{');
    out_string_member("severity", words[said->severity]);
    out_string_member("id", said->id);
    out_string_member("file", said->file);
    out_whole_member("line", (long)said->line);
    out_whole_member("column", (long)said->column);
    out_whole_member("end", (long)said->end);
    out_string_member("message", said->message);
    out_string_member("help", said->help);
    out_string_member("play", said->play);
    out_string_member("step", said->step);
    out_milliseconds_member("at", said->time);
    out_flag_member("finding", said->finding);
    out_flag_member("accepted", said->accepted);
    out_string_member("reason", said->reason);
    out_whole_member("letter", (long)said->letter);
    out_close('}');
}

static void tell_diagram(const struct courtwright_diagram *diagram)
{
    out_open('{');
    out_string_member("label", diagram->label);
    out_string_member("title", diagram->title);
    out_whole_member("step", diagram->step);
    out_whole_member("branch", diagram->branch);
    out_milliseconds_member("lasts", diagram->seconds);
    out_whole_member("tasks", (long)diagram->tasks);
    out_whole_member("line", (long)diagram->line);
    out_whole_member("step_line", (long)diagram->step_line);
    out_close('}');
}

static void tell_play(size_t index)
{
    const struct courtwright_play *play = courtwright_play(book, index);
    out_open('{');
    out_string_member("name", play->name);
    out_string_member("series", play->series);
    out_string_member("call", play->call);
    out_string_member("about", play->about);
    out_string_member("chapter", play->chapter);
    out_whole_member("number", play->number);
    out_flag_member("drill", play->drill);
    out_flag_member("broken", play->broken);
    out_flag_member("counted", play->counted);
    out_flag_member("waiting", play->waiting);
    out_string_member("file", play->file);
    out_whole_member("line", (long)play->line);
    out_milliseconds_member("lasts", play->seconds);
    out_member("diagrams");
    out_open('[');
    for (size_t i = 0; i < play->diagrams; i++) {
        tell_diagram(courtwright_diagram(book, index, i));
    }
    out_close(']');
    out_close('}');
}

static void tell_plays(void)
{
    out_member("plays");
    out_open('[');
    for (size_t i = 0; i < courtwright_play_count(book); i++) {
        tell_play(i);
    }
    out_close(']');
}

static void tell_team(void)
{
    out_member("players");
    out_open('[');
    for (size_t i = 0; i < courtwright_player_count(book); i++) {
        const struct courtwright_player *player = courtwright_player(book, i);
        out_open('{');
        out_string_member("name", player->name);
        out_string_member("role", player->role);
        out_string_member("jersey", player->jersey);
        out_whole_member("number", player->number);
        out_flag_member("starter", player->starter);
        out_close('}');
    }
    out_close(']');
    out_member("practices");
    out_open('[');
    for (size_t i = 0; i < courtwright_practice_count(book); i++) {
        out_open('{');
        out_string_member("title", courtwright_practice(book, i));
        out_close('}');
    }
    out_close(']');
}

static void tell_book(void)
{
    out_open('{');
    out_string_member("title", courtwright_title(book));
    out_string_member("team", courtwright_team(book));
    out_whole_member("errors", (long)courtwright_error_count(book));
    out_whole_member("warnings", (long)courtwright_warning_count(book));
    tell_team();
    tell_plays();
    out_member("said");
    out_open('[');
    for (size_t i = 0; i < courtwright_diagnostic_count(book); i++) {
        tell_said(courtwright_diagnostic(book, i));
    }
    out_close(']');
    out_close('}');
}

void page_load(const char *name, const char *text, size_t size, const char *file, int line)
{
    courtwright_free(book);
    book = line < 0 ? courtwright_load(name, text, size, page_host())
                    : courtwright_load_at(name, text, size, file, (unsigned)line, page_host());
    if (!book) {
        __builtin_trap();
    }
    out_clear();
    tell_book();
}

static enum courtwright_theme theme_of(unsigned wishes)
{
    return wishes & PAGE_DARK    ? COURTWRIGHT_DARK
           : wishes & PAGE_PRINT ? COURTWRIGHT_PRINT
                                 : COURTWRIGHT_SCREEN;
}

enum courtwright_status page_draw(size_t play, size_t diagram, unsigned wishes, double width,
                                  const char *salt)
{
    struct courtwright_draw draw = {
        .play = play,
        .diagram = diagram,
        .format = COURTWRIGHT_SVG_LIVE,
        .theme = theme_of(wishes),
        .width = width,
        .show_checks = wishes & PAGE_CHECKS,
        .only_lettered = true,
        .fluid = wishes & PAGE_FLUID,
        .salt = salt,
    };
    out_clear();
    return courtwright_draw(book, &draw, &to_page);
}

enum courtwright_status page_animate(size_t play, size_t diagram, unsigned wishes, const char *salt)
{
    struct courtwright_animate animate = {
        .play = play,
        .alone = true,
        .diagram = diagram,
        .theme = theme_of(wishes),
        .fluid = wishes & PAGE_FLUID,
        .salt = salt,
    };
    out_clear();
    return courtwright_animate(book, &animate, &to_page);
}

enum courtwright_status page_paper(const char *sheet, int play, int reader, unsigned wishes)
{
    size_t index = play < 0 ? 0 : (size_t)play;
    struct courtwright_handout options = {
        .plays = play < 0 ? NULL : &index,
        .play_count = 1,
        .reader = reader,
        .names = wishes & PAGE_NAMES,
        .paper = wishes & PAGE_A4 ? COURTWRIGHT_A4 : COURTWRIGHT_LETTER,
    };
    out_clear();
    return courtwright_paper_html(book, sheet, &options, &to_page);
}

enum courtwright_status page_tidy(void)
{
    out_clear();
    return courtwright_tidy(book, &to_page);
}

enum courtwright_status page_positions(size_t play, int rate)
{
    out_clear();
    return courtwright_positions(book, play, rate, &to_page);
}

static bool each_tolerance(void *ctx, const struct courtwright_tolerance *tolerance)
{
    (void)ctx;
    out_open('{');
    out_whole_member("diagram", (long)tolerance->diagram);
    out_whole_member("runs", tolerance->runs);
    out_whole_member("works", tolerance->works);
    out_string_member("message", tolerance->message);
    out_string_member("help", tolerance->help);
    out_close('}');
    return true;
}

enum courtwright_status page_tolerance(size_t play)
{
    out_clear();
    out_open('[');
    enum courtwright_status status = courtwright_tolerance(book, play, each_tolerance, NULL);
    out_close(']');
    return status;
}
