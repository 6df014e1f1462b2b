/* SPDX-License-Identifier: MIT */
/* compile: the whole way of a book on one page: text, words, plays, runs, findings, and what is
 * said about them. */
#include <string.h>

#include "language/words/words.h"
#include "program/api/handle.h"

struct courtwright_include {
    struct arena *arena;
    struct str name, text;
    const char *given_name, *given_text;
    size_t given_size;
    bool given, too_large;
    int gave_up;
};

static void copy_include(void *job)
{
    struct courtwright_include *include = job;
    include->name = str_copy(include->arena, str_of(include->given_name));
    include->text =
        str_copy(include->arena, (struct str){include->given_text, include->given_size});
}

bool courtwright_include_text(struct courtwright_include *include, const char *name,
                              const char *text, size_t size)
{
    include->given = true;
    if (size > COURTWRIGHT_TEXT_MOST) {
        include->too_large = true;
        return true;
    }
    include->given_name = name;
    include->given_text = text;
    include->given_size = size;
    /* The host's frames lie between here and load: do not unwind through them. */
    include->gave_up = guard(include->arena, copy_include, include);
    return include->gave_up == 0;
}

static const char *find_nul(struct str text)
{
    return text.size > 0 ? memchr(text.at, '\0', text.size) : NULL;
}

bool has_nul(struct str text)
{
    return find_nul(text) != NULL;
}

enum load_result load_include(void *ctx, struct arena *arena, struct str from, struct str path,
                              struct str *name, struct str *text)
{
    static const enum load_result results[] = {
        [COURTWRIGHT_FETCHED] = LOAD_OK,
        [COURTWRIGHT_MISSING] = LOAD_MISSING,
        [COURTWRIGHT_UNREADABLE] = LOAD_UNREADABLE,
        [COURTWRIGHT_OUTSIDE] = LOAD_OUTSIDE,
        [COURTWRIGHT_TOO_LARGE] = LOAD_TOO_LARGE,
    };
    const struct courtwright_host *host = ctx;
    if (has_nul(path)) {
        return LOAD_MISSING;
    }
    struct courtwright_include include = {.arena = arena};
    struct str from_copy = str_copy(arena, from), path_copy = str_copy(arena, path);
    enum courtwright_fetched fetched =
        host->fetch(host->fetch_ctx, from_copy.at, path_copy.at, &include);
    if (include.gave_up) {
        longjmp(*arena->escape, include.gave_up);
    }
    if ((size_t)fetched >= sizeof results / sizeof *results) {
        return LOAD_UNREADABLE;
    }
    if (fetched == COURTWRIGHT_FETCHED && include.too_large) {
        return LOAD_TOO_LARGE;
    }
    if (fetched == COURTWRIGHT_FETCHED && (!include.given || has_nul(include.text))) {
        return LOAD_UNREADABLE;
    }
    *name = include.name;
    *text = include.text;
    return results[fetched];
}

struct str name_stem(struct str name)
{
    size_t begin = 0, end = name.size;
    for (size_t i = 0; i < name.size; i++) {
        if (name.at[i] == '/') {
            begin = i + 1;
        }
    }
    for (size_t i = name.size; i > begin + 1; i--) {
        if (name.at[i - 1] == '.') {
            end = i - 1;
            break;
        }
    }
    return end > begin ? (struct str){name.at + begin, end - begin} : STR("play");
}

static bool is_text(struct courtwright *book, uint32_t source, struct str text)
{
    struct span start = {source, 0, 0};
    if (text.size > COURTWRIGHT_TEXT_MOST) {
        struct diag *diag =
            diag_add(&book->diags, DIAG_FILE_TOO_LARGE, start, "this file holds more than 8 MiB");
        diag_help(&book->diags, diag, "make several files of it, each with an include of its own");
        return false;
    }
    const char *nul = find_nul(text);
    if (nul) {
        uint32_t at = (uint32_t)(nul - text.at);
        struct diag *diag =
            diag_add(&book->diags, DIAG_FILE_BINARY, (struct span){source, at, at + 1},
                     "this is not a text file: here stands a byte that is zero");
        diag_help(&book->diags, diag, "a playbook is plain text, saved as UTF-8");
        return false;
    }
    return true;
}

/* The clock says that a sentence never starts, the checks why: then the reason is enough. */
static void say_once(struct diags *diags, const finding_list *findings)
{
    size_t kept = 0;
    for (size_t i = 0; i < diags->all.count; i++) {
        const struct diag *diag = &diags->all.at[i];
        bool explained = false;
        for (size_t k = 0; k < findings->count && diag->row == &diag_rows[DIAG_RUN_STUCK]; k++) {
            const struct finding *finding = &findings->at[k];
            explained |= finding->severity == SEVERITY_ERROR &&
                         finding->span.source == diag->span.source &&
                         finding->span.begin == diag->span.begin;
        }
        diags->errors -= explained;
        diags->all.at[kept] = *diag;
        kept += !explained;
    }
    diags->all.count = kept;
}

static void run_play(struct courtwright *book, struct compiled *compiled)
{
    check_names(compiled->play, &book->diags); /* a wrong name leaves the play as it is */
    size_t errors = book->diags.errors;
    if (compiled->broken || compiled->waiting) {
        return; /* a run of half a play would be checked for what the coach never wrote */
    }
    struct run *run = sim_run(&book->runs, &book->sources, compiled->play, &book->diags);
    bool ran = book->diags.errors == errors;
    check_run(&book->arena, run, &compiled->findings); /* also says why a step cannot be run */
    say_once(&book->diags, &compiled->findings);
    if (!ran) {
        return;
    }
    compiled->ran = true;
    compiled->run = run;
    scene_diagrams(&book->arena, run, &compiled->diagrams);
}

static void compile_play(struct courtwright *book, struct compiled *compiled)
{
    struct arena_mark before = arena_mark(&book->runs);
    run_play(book, compiled);
    contents_tell_play(book, compiled);
    runs_keep_or_release(book, compiled, before);
}

struct load_job {
    struct courtwright *book;
    const char *text;
    size_t size;
    bool one;         /* only the play that `line` of `file` is in */
    const char *file; /* NULL or empty: the text itself */
    unsigned line;
};

static bool is_of(const struct courtwright *book, uint32_t source, const char *file)
{
    return file && *file ? str_equal(book->sources.all.at[source].name, str_of(file)) : source == 0;
}

/* Of the plays of that file the last that begins on that line or above it runs. */
static void let_others_wait(struct courtwright *book, const char *file, unsigned line)
{
    struct compiled *wanted = NULL;
    for (size_t i = 0; i < book->play_count; i++) {
        struct span span = book->plays[i].play->span;
        if (is_of(book, span.source, file) &&
            source_place(&book->sources.all.at[span.source], span.begin).line <= line) {
            wanted = &book->plays[i];
        }
    }
    for (size_t i = 0; i < book->play_count; i++) {
        book->plays[i].waiting = &book->plays[i] != wanted;
    }
}

static void compile(void *ctx)
{
    struct load_job *job = ctx;
    struct courtwright *book = job->book;
    struct arena *arena = &book->arena;
    book->runs.escape = arena->escape;
    sources_init(&book->sources, arena);
    diags_init(&book->diags, arena);
    bool fits = job->size <= COURTWRIGHT_TEXT_MOST;
    struct str text = fits ? str_copy(arena, (struct str){job->text, job->size}) : STR("");
    struct str name = str_of(book->name);
    uint32_t source = sources_add(&book->sources, name, text);
    if (is_text(book, source, (struct str){text.at, job->size})) {
        struct loader loader = {load_include, &book->host};
        book->book = book_read(arena, &book->sources, source, book->host.fetch ? &loader : NULL,
                               &book->diags);
        book->playbook =
            playbook_resolve(arena, &book->sources, book->book, name_stem(name), &book->diags);
        book->play_count = book->playbook->plays.count;
        book->plays = arena_array(arena, struct compiled, book->play_count);
        book->pictures = scene_memory_new(arena);
    }
    if (book->playbook) {
        book->season = season_resolve(arena, book->book, book->playbook, &book->diags);
        broken_find(book);
    }
    for (size_t i = 0; i < book->play_count; i++) {
        book->plays[i].play = &book->playbook->plays.at[i];
    }
    if (job->one) {
        let_others_wait(book, job->file, job->line);
    }
    for (size_t i = 0; i < book->play_count; i++) {
        compile_play(book, &book->plays[i]);
    }
    if (!job->one) { /* one may be for a play that waits */
        accepts_note_idle(book);
    }
    contents_make(book);
    report_make(book);
    book->runs.escape = NULL;
}

/* Nothing is left but the handle and the one thing to say. */
static void give_up(struct courtwright *book, int why)
{
    const struct diag_row *row =
        &diag_rows[why == ARENA_LIMIT ? DIAG_FILE_LIMIT : DIAG_FILE_MEMORY];
    arena_finish(&book->runs);
    arena_finish(&book->arena);
    *book = (struct courtwright){.host = book->host, .memory = book->memory, .name = book->name};
    arena_init(&book->arena, &book->memory, NULL);
    arena_init(&book->runs, &book->memory, NULL);
    book->gave_up = (struct courtwright_diagnostic){
        .severity = COURTWRIGHT_ERROR,
        .id = row->id,
        .file = book->name,
        .help = "",
        .excerpt = "",
        .play = "",
        .step = "",
        .reason = "",
        .other_file = "",
        .named = why == ARENA_LIMIT ? "the book is larger than this program can hold"
                                    : "there was not enough memory to finish",
        .message = why == ARENA_LIMIT ? "the book is larger than this program can hold"
                                      : "there was not enough memory to finish"};
    book->said = &book->gave_up;
    book->said_count = book->errors = 1;
    book->title = book->team = "";
}

static struct courtwright *load(const char *name, struct load_job job,
                                const struct courtwright_host *host)
{
    static const struct courtwright_host bare = {0};
    struct str called = name && *name ? str_of(name) : STR("play");
    struct arena probe; /* settles which memory is meant */
    struct memory memory = memory_of(host);
    arena_init(&probe, &memory, NULL);
    struct courtwright *book = probe.memory.take(probe.memory.ctx, sizeof *book + called.size + 1);
    if (!book) {
        return NULL;
    }
    char *kept = (char *)(book + 1);
    memcpy(kept, called.at, called.size);
    kept[called.size] = '\0';
    *book = (struct courtwright){.host = host ? *host : bare, .memory = probe.memory, .name = kept};
    arena_init(&book->arena, &book->memory, NULL);
    arena_init(&book->runs, &book->memory, NULL);
    job.book = book;
    int why = guard(&book->arena, compile, &job);
    if (why) {
        give_up(book, why);
    }
    return book;
}

struct courtwright *courtwright_load(const char *name, const char *text, size_t size,
                                     const struct courtwright_host *host)
{
    return load(name, (struct load_job){.text = text, .size = size}, host);
}

struct courtwright *courtwright_load_at(const char *name, const char *text, size_t size,
                                        const char *file, unsigned line,
                                        const struct courtwright_host *host)
{
    struct load_job job = {.text = text, .size = size, .one = true, .file = file, .line = line};
    return load(name, job, host);
}

void courtwright_free(struct courtwright *book)
{
    if (!book) {
        return;
    }
    struct memory memory = book->memory;
    fonts_let_go(book);
    arena_finish(&book->runs);
    arena_finish(&book->arena);
    memory.give(memory.ctx, book);
}
