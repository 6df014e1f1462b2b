/* SPDX-License-Identifier: MIT */
/* tolerance: every diagram of a play run a hundred times by other players, side by side where the
 * host can, and what came of it in a coach's words. */
#include "program/api/tolerance.h"

#include <string.h>

#include "language/tell/tell.h"

struct tries { /* of one segment */
    const struct memory *memory;
    const struct segment *segment;
    struct trial *trial;
    enum courtwright_status *status;
};
struct one_try {
    struct tries *tries;
    size_t number;
};

static enum courtwright_status try_once(struct arena *scratch, void *ctx)
{
    const struct one_try *one = ctx;
    struct tries *tries = one->tries;
    trial_run(scratch, tries->segment, (int)one->number, &tries->trial[one->number]);
    return COURTWRIGHT_OK;
}

/* Its own arena, its own place for what it finds: any thread may do it. */
static void do_try(void *jobs, size_t number)
{
    struct tries *tries = jobs;
    struct one_try one = {tries, number};
    tries->status[number] = with_scratch(tries->memory, try_once, &one);
}

static enum courtwright_status try_all(struct arena *scratch, const struct courtwright *book,
                                       const struct segment *segment, struct tolerance *tolerance)
{
    struct tries tries = {&book->memory, segment, arena_array(scratch, struct trial, TRIALS),
                          arena_array(scratch, enum courtwright_status, TRIALS)};
    for (size_t i = 0; i < TRIALS; i++) {
        tries.trial[i].spare = arena_array(scratch, double, segment->tasks + 1);
    }
    if (book->host.side_by_side) {
        book->host.side_by_side(book->host.side_by_side_ctx, TRIALS, do_try, &tries);
    } else {
        for (size_t i = 0; i < TRIALS; i++) {
            do_try(&tries, i);
        }
    }
    for (size_t i = 0; i < TRIALS; i++) {
        if (tries.status[i] != COURTWRIGHT_OK) {
            return tries.status[i];
        }
    }
    *tolerance = tolerance_of(scratch, segment, tries.trial, TRIALS);
    return COURTWRIGHT_OK;
}

enum courtwright_status tolerance_try(struct arena *scratch, const struct courtwright *book,
                                      const struct segment *segment, struct tolerance *found)
{
    *found = (struct tolerance){.tightest = -1, .example = -1};
    return trial_has_timing(segment) ? try_all(scratch, book, segment, found) : COURTWRIGHT_OK;
}

/* ---- in words ---- */

#define FEW .75 /* of the runs: a step that works in fewer is told what to change; ours */

static struct str thing(struct arena *scratch, const struct segment *segment, int task)
{
    const struct play *play = segment->play;
    return tell_thing(scratch, play, &play->steps.at[segment->step], segment->branch, (size_t)task);
}

/* What a check of a trial has found: %w who the sentence is about, %o whom else, %b who else has
 * part in it, %t what the sentence does. */
static const struct {
    const char *check, *words;
} found_words[] = {
    {"ball.handoff", "%w and %o are too far apart for the hand-off"},
    {"pass.lane", "%b may pick off %t"},
    {"screen.early", "%w is gone before %o's screen is set"},
    {"screen.gap", "%w leaves a gap at %o's screen"},
    {"screen.moving", "%w moves before %o is past the screen"},
    {"screen.nobody", "%w's screen is set away from %b"},
};

static void put_words(struct strbuf *out, const char *words, const struct task *task, body by,
                      struct str what)
{
    for (; *words; words++) {
        if (*words != '%') {
            strbuf_char(out, *words);
            continue;
        }
        switch (*++words) {
        case 'w':
            tell_body(out, task->who);
            break;
        case 'o':
            tell_body(out, task->other);
            break;
        case 'b':
            tell_body(out, by);
            break;
        default:
            strbuf_add(out, what);
        }
    }
}

struct str tolerance_tightest(struct arena *scratch, const struct segment *segment,
                              const struct tolerance *found)
{
    return found->tightest < 0 ? STR("") : thing(scratch, segment, found->tightest);
}

struct str tolerance_trouble(struct arena *scratch, const struct segment *segment,
                             const struct tolerance *found)
{
    if (found->trouble == TRIAL_WORKS) {
        return STR("");
    }
    if (found->task < 0) {
        return STR("it does not come to its end");
    }
    struct strbuf out;
    strbuf_init(&out, scratch);
    struct str what = thing(scratch, segment, found->task);
    const struct task *task = segment_task(segment, (size_t)found->task);
    const char *words =
        found->trouble == TRIAL_MISSED ? "%t is not caught" : "%w does not use %o's screen";
    for (size_t i = 0; found->check && i < sizeof found_words / sizeof *found_words; i++) {
        words = strcmp(found_words[i].check, found->check->id) == 0 ? found_words[i].words : words;
    }
    put_words(&out, words, task, found->by, what);
    return strbuf_str(&out);
}

static bool warns_here(const struct finding *finding, const struct segment *segment)
{
    return finding->step == segment->step && finding->branch == segment->branch &&
           !finding->accepted && finding->severity > SEVERITY_NOTE;
}

/* What the checks warn of in the step as it is written, each once: "space.close, spot.taken". */
static const char *warned_of(struct arena *scratch, const finding_list *findings,
                             const struct segment *segment)
{
    struct strbuf out;
    strbuf_init(&out, scratch);
    for (size_t i = 0; i < findings->count; i++) {
        bool told = !warns_here(&findings->at[i], segment);
        for (size_t k = 0; k < i && !told; k++) {
            told =
                findings->at[k].row == findings->at[i].row && warns_here(&findings->at[k], segment);
        }
        if (!told) {
            strbuf_print(&out, "%s%s", out.size ? ", " : "", findings->at[i].row->id);
        }
    }
    return out.at;
}

/* What is told, with marks round the players' numbers. */
struct words {
    struct str tightest, trouble;
    const char *warned;
};

static void put_tightest(struct strbuf *out, struct str tightest, double spare)
{
    bool none = spare > -.05 && spare < .05; /* would print as 0.0 */
    strbuf_print(out, "; the tightest: %.*s, ", STR_ARG(tightest));
    strbuf_fixed(out, spare < 0 ? -spare : spare, 1);
    strbuf_text(out, spare < 0 && !none ? " s late" : " s");
}

static struct str message_of(struct arena *scratch, const struct tolerance *found,
                             const struct words *words)
{
    struct strbuf out;
    strbuf_init(&out, scratch);
    if (found->runs == 0) {
        strbuf_text(&out, "nothing in it can be late: no pass, no screen in use");
    } else {
        strbuf_print(&out, "works %d times in %d computer runs", found->works, found->runs);
    }
    if (words->tightest.size) {
        put_tightest(&out, words->tightest, found->spare);
    } else if (found->runs > 0 && found->works == found->runs) {
        strbuf_text(&out, "; nothing in it is tight");
    }
    if (found->times > 0) {
        strbuf_print(&out, ". %d time%s %.*s", found->times, found->times == 1 ? "" : "s",
                     STR_ARG(words->trouble));
    }
    if (*words->warned) {
        strbuf_print(&out, ". As it is written, check warns of it: %s", words->warned);
    }
    return strbuf_str(&out);
}

static void tell_place(const struct courtwright *book, struct span span,
                       struct courtwright_tolerance *told)
{
    told->file = "";
    if (span.source < book->sources.all.count) {
        const struct source *source = &book->sources.all.at[span.source];
        struct place_in_source begin = source_place(source, span.begin),
                               end = source_place(source, span.end);
        told->file = book->source_names[span.source];
        told->line = begin.line;
        told->column = begin.column;
        told->end = end.line == begin.line ? end.column : begin.column;
    }
}

/* What the check advises in one of the runs in which it found it. */
static struct str help_of(struct arena *scratch, const struct segment *segment,
                          const struct tolerance *found)
{
    if (found->example < 0 || found->works >= FEW * found->runs) {
        return STR("");
    }
    struct trial again = {.spare = arena_array(scratch, double, segment->tasks + 1)};
    trial_run(scratch, segment, found->example, &again);
    return again.help;
}

static enum courtwright_status tell_one(struct arena *scratch, const struct courtwright *book,
                                        const struct compiled *compiled,
                                        const struct segment *segment,
                                        struct courtwright_tolerance *told)
{
    struct tolerance found;
    enum courtwright_status status = tolerance_try(scratch, book, segment, &found);
    if (status != COURTWRIGHT_OK) {
        return status;
    }
    bool tight = found.tightest >= 0;
    const struct words words = {
        tolerance_tightest(scratch, segment, &found),
        tolerance_trouble(scratch, segment, &found),
        warned_of(scratch, &compiled->findings, segment),
    };
    struct str message = message_of(scratch, &found, &words);
    told->runs = found.runs;
    told->works = found.works;
    told->tightest = clean_copy(scratch, tell_strip(scratch, words.tightest));
    told->spare = tight ? found.spare : 0;
    told->trouble = clean_copy(scratch, tell_strip(scratch, words.trouble));
    told->times = found.times;
    told->check = found.check ? found.check->id : "";
    told->help = clean_copy(scratch, help_of(scratch, segment, &found));
    told->warned = words.warned;
    told->message = clean_copy(scratch, tell_strip(scratch, message));
    told->named = names_put(scratch, book, compiled->play, message);
    tell_place(book,
               tight ? segment_task(segment, (size_t)found.tightest)->span
                     : segment->play->steps.at[segment->step].span,
               told);
    return COURTWRIGHT_OK;
}

struct tolerance_job {
    const struct courtwright *book;
    courtwright_each_tolerance each;
    void *ctx;
};
struct segment_job {
    const struct tolerance_job *of;
    const struct compiled *compiled;
    const struct segment *segment;
    struct courtwright_tolerance told;
    bool more;
};

static enum courtwright_status do_segment(struct arena *scratch, void *ctx)
{
    struct segment_job *job = ctx;
    enum courtwright_status status =
        tell_one(scratch, job->of->book, job->compiled, job->segment, &job->told);
    job->more = status == COURTWRIGHT_OK && job->of->each(job->of->ctx, &job->told);
    return status;
}

/* A diagram of a step's common part shows one of its ways: each way is told by itself. */
static bool is_way(const struct diagram *diagram)
{
    return diagram->branch >= 0 ||
           diagram->segment->play->steps.at[diagram->step].branches.count == 0;
}

struct play_job {
    const struct tolerance_job *of;
    const struct compiled *compiled;
    size_t play;
};

static enum courtwright_status do_play(struct arena *scratch, void *ctx)
{
    const struct play_job *job = ctx;
    const struct courtwright *book = job->of->book;
    const struct compiled *compiled = runs_again(scratch, book, job->compiled);
    enum courtwright_status status = COURTWRIGHT_OK;
    bool more = true;
    for (size_t i = 0; status == COURTWRIGHT_OK && more && i < compiled->diagrams.count; i++) {
        const struct diagram *diagram = &compiled->diagrams.at[i];
        if (is_way(diagram)) {
            struct segment_job one = {
                .of = job->of, .compiled = compiled, .segment = diagram->segment};
            one.told.play = compiled->told.name;
            one.told.step = compiled->told_diagrams[i].label;
            one.told.play_index = job->play;
            one.told.diagram = i;
            status = with_scratch(&book->memory, do_segment, &one);
            more = one.more;
        }
    }
    return status;
}

enum courtwright_status courtwright_tolerance(struct courtwright *book, size_t play,
                                              courtwright_each_tolerance each, void *ctx)
{
    if (play >= book->play_count) {
        return COURTWRIGHT_NO_SUCH;
    }
    const struct tolerance_job of = {book, each, ctx};
    struct play_job job = {&of, &book->plays[play], play};
    return job.compiled->ran ? with_scratch(&book->memory, do_play, &job) : COURTWRIGHT_BROKEN;
}
