/* SPDX-License-Identifier: MIT */
/* handout: plays to pages for players. Left out of the core. */
#include "base/limits.h"
#include "page/sheet/sheet.h"
#include "picture/paint/crest.h"
#include "program/api/draw.h"
#include "program/api/fonts.h"
#include "program/api/list.h"
#include "program/api/tolerance.h"

enum { SPOTS = 5 }; /* of a roster */

struct handout_job {
    struct courtwright *book;
    const struct sheet_row *row;
    const struct courtwright_handout *handout;
    struct writer writer;
};

static bool options_good(const struct sheet_row *row, const struct courtwright_handout *handout)
{
    if (handout->crest_size > 0 && courtwright_crest_trouble(handout->crest, handout->crest_size)) {
        return false;
    }
    return sheet_takes(row, handout->per_page) && (unsigned)handout->paper <= COURTWRIGHT_A4 &&
           handout->reader >= 0 && handout->reader <= LIMIT_ATTACKERS;
}

/* A player's pages are of the plays that have that number on the floor. */
static bool is_on_floor(const struct compiled *compiled, int number)
{
    return compiled->play->start[body_attacker(number)].on_floor;
}

static bool plays_there(const struct handout_job *job, const struct compiled *compiled, int number)
{
    const struct courtwright_handout *handout = job->handout;
    struct str jersey = handout->reader_jersey ? str_of(handout->reader_jersey) : STR("");
    return is_on_floor(compiled, number) &&
           team_plays(&job->book->playbook->team, compiled->play, str_of(handout->reader_name),
                      jersey, number);
}

/* By name instead of by a number. */
static bool is_by_name(const struct courtwright_handout *handout)
{
    return handout->reader == 0 && handout->reader_name;
}

/* Is there something in the play for whoever reads as `number`, 0 for one not asked for by name? */
static bool is_wanted(const struct handout_job *job, const struct compiled *compiled, int number)
{
    const struct courtwright_handout *handout = job->handout;
    return is_by_name(handout) ? plays_there(job, compiled, number)
                               : handout->reader == 0 || is_on_floor(compiled, handout->reader);
}

/* The play as often as it is to be printed: for a player by name once for each spot she has. */
static size_t add_spots(const struct handout_job *job, const struct compiled *compiled,
                        struct sheet_play *plays)
{
    bool by_name = is_by_name(job->handout);
    size_t count = 0;
    for (int number = by_name ? 1 : 0; number <= (by_name ? SPOTS : 0); number++) {
        if (is_wanted(job, compiled, number)) {
            plays[count++] =
                (struct sheet_play){compiled->play, compiled->run, &compiled->findings, number};
        }
    }
    return count;
}

/* Who has a spot in some play of the book has a part in every drill: its numbers are spots that
 * everybody takes. */
static bool has_spot(const struct handout_job *job)
{
    struct sheet_play plays[SPOTS];
    for (size_t i = 0; i < job->book->play_count; i++) {
        const struct compiled *compiled = &job->book->plays[i];
        if (compiled->ran && add_spots(job, compiled, plays) > 0) {
            return true;
        }
    }
    return false;
}

static void add_play(const struct handout_job *job, const struct compiled *compiled,
                     struct sheet_play *plays, size_t *count)
{
    size_t spots = add_spots(job, compiled, plays + *count);
    bool in_turn = compiled->play->is_drill && (spots == 0 || is_by_name(job->handout));
    if (in_turn && has_spot(job)) {
        plays[(*count)++] =
            (struct sheet_play){compiled->play, compiled->run, &compiled->findings, SHEET_ANY_ROLE};
    } else {
        *count += spots;
    }
}

static enum courtwright_status pick_plays(struct arena *scratch, const struct handout_job *job,
                                          struct sheet_job *sheet)
{
    struct ran_plays ran;
    enum courtwright_status status =
        runs_asked_for(scratch, job->book, job->handout->plays, job->handout->play_count, &ran);
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    struct sheet_play *plays = arena_array(scratch, struct sheet_play, ran.count * SPOTS);
    for (size_t i = 0; i < ran.count; i++) {
        add_play(job, ran.at[i], plays, &sheet->count);
    }
    sheet->plays = plays;
    return sheet->count ? COURTWRIGHT_OK : COURTWRIGHT_NO_SUCH;
}

/* By one of the practices that are printed, at a station too. */
static bool is_planned(struct arena *scratch, const struct sheet_job *sheet,
                       const struct play *play)
{
    for (size_t i = 0; i < sheet->season->practices.count; i++) {
        const struct practice *practice = &sheet->season->practices.at[i];
        bool printed = sheet->title.size == 0 || str_equal_fold(sheet->title, practice->title);
        struct practice_plays plays = {0};
        if (printed) {
            plays = practice_plays(scratch, practice);
        }
        for (size_t k = 0; k < plays.count; k++) {
            if (plays.at[k] == play) {
                return true;
            }
        }
    }
    return false;
}

/* Those that a practice shows; false: one of them has an error, and no picture. */
static bool plan_plays(struct arena *scratch, const struct handout_job *job,
                       struct sheet_job *sheet)
{
    struct sheet_play *plays = arena_array(scratch, struct sheet_play, job->book->play_count);
    for (size_t i = 0; i < job->book->play_count; i++) {
        const struct compiled *compiled = &job->book->plays[i];
        if (!is_planned(scratch, sheet, compiled->play)) {
            continue;
        }
        if (!compiled->ran) {
            return false;
        }
        plays[sheet->count++] =
            (struct sheet_play){compiled->play, compiled->run, &compiled->findings, 0};
    }
    sheet->plays = plays;
    return true;
}

static bool tolerance_on_paper(void *ctx, struct arena *arena, const struct segment *segment,
                               struct sheet_tolerance *tolerance)
{
    struct tolerance found;
    if (tolerance_try(arena, ctx, segment, &found) != COURTWRIGHT_OK) {
        return false;
    }
    *tolerance = (struct sheet_tolerance){
        .runs = found.runs,
        .works = found.works,
        .tightest = tolerance_tightest(arena, segment, &found),
        .spare = found.spare,
        .trouble = tolerance_trouble(arena, segment, &found),
        .times = found.times,
    };
    return true;
}

static void tell_left_out(void *ctx, const struct play *play)
{
    const struct handout_job *job = ctx;
    const struct compiled *compiled = runs_find(job->book, play);
    if (compiled && job->handout->left_out) {
        job->handout->left_out(job->handout->left_out_ctx, (size_t)(compiled - job->book->plays));
    }
}

static enum courtwright_status gather(struct arena *scratch, const struct handout_job *job,
                                      struct sheet_job *sheet)
{
    if (!job->row->holds) {
        return pick_plays(scratch, job, sheet);
    }
    if (job->row->plans && !plan_plays(scratch, job, sheet)) {
        return COURTWRIGHT_BROKEN;
    }
    return job->row->holds(sheet) ? COURTWRIGHT_OK : COURTWRIGHT_NO_SUCH;
}

static enum courtwright_status write_handout(struct arena *scratch, void *ctx)
{
    struct handout_job *job = ctx;
    const struct courtwright_handout *handout = job->handout;
    bool nothing = false;
    struct sheet_job sheet = {
        .book = job->book->playbook,
        .a4 = paper_is_a4(job->book, handout->paper),
        .per_page = handout->per_page,
        .reader = handout->reader ? body_attacker(handout->reader) : BODY_NONE,
        .reader_jersey = handout->reader_jersey ? str_of(handout->reader_jersey) : STR(""),
        .reader_name = handout->reader_name ? str_of(handout->reader_name) : STR(""),
        .seed = handout->seed,
        .names = handout->names,
        .pictures = job->book->pictures,
        .date_text = str_of(handout->date_text),
        .date = handout->date,
        .season = job->book->season,
        .title = str_of(handout->title),
        .crest = {handout->crest, handout->crest_size},
        .two_sided = handout->two_sided,
        .run_again = runs_of_play,
        .run_ctx = job->book,
        .tolerance = handout->tolerance ? tolerance_on_paper : NULL,
        .tolerance_ctx = job->book,
        .left_out = tell_left_out,
        .left_out_ctx = job,
        .nothing = &nothing,
    };
    enum courtwright_status status = gather(scratch, job, &sheet);
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    struct fonts *fonts = fonts_of(job->book);
    if (!fonts) {
        return COURTWRIGHT_MEMORY;
    }
    bool written = sheet_write(job->row, scratch, fonts, &sheet, &job->writer);
    fonts_note_missing(job->book);
    return job->writer.failed ? COURTWRIGHT_WRITE
           : nothing          ? COURTWRIGHT_NOTHING
           : written          ? COURTWRIGHT_OK
                              : COURTWRIGHT_MEMORY;
}

const char *courtwright_crest_trouble(const void *bytes, size_t size)
{
    return crest_trouble((struct str){bytes, size});
}

enum courtwright_status courtwright_sheet(struct courtwright *book, const char *sheet,
                                          const struct courtwright_handout *options,
                                          const struct courtwright_writer *writer)
{
    struct handout_job job = {
        book, sheet_find(str_of(sheet)), options, {writer->write, writer->ctx, false}};
    if (!job.row) {
        return COURTWRIGHT_NO_SUCH;
    }
    if (!options_good(job.row, options)) {
        return COURTWRIGHT_BAD_OPTION;
    }
    return book->playbook ? with_scratch(&book->memory, write_handout, &job) : COURTWRIGHT_BROKEN;
}

enum courtwright_status courtwright_handout(struct courtwright *book,
                                            const struct courtwright_handout *handout,
                                            const struct courtwright_writer *writer)
{
    return courtwright_sheet(book, "handout", handout, writer);
}

void list_sheets(struct lister *lister)
{
    for (size_t i = 0; i < sheet_count(); i++) {
        const struct sheet_row *row = sheet_at(i);
        list_row(lister, &(struct courtwright_entry){.word = row->word, .what = row->what});
    }
}
