/* SPDX-License-Identifier: MIT */
/* fault: every call of the library with its 1st, 2nd, 3rd … allocation failing, until it succeeds;
 * and with a writer that fails at each point. Nothing may crash or leak; what comes back must say
 * so; and with memory back the same call must give the same bytes as ever. Prints TAP. */
#include <courtwright/courtwright.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char book_text[] =
    "playbook \"Kites\"\n"
    "team \"Larkspur Kites\"\n"
    "  1 \"Wren Adeyemi\" guard\n"
    "include \"other.play\"\n"
    "play \"Lantern\"\n"
    "  about \"The post screens down for the corner, who reads the defender.\"\n"
    "  start 1 left slot, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"
    "  ball 1\n"
    "  defense man\n"
    "  step \"Read the down screen\"\n"
    "    5 down screens for 3\n"
    "    chart set \"Screen set\"\n"
    "    point 5 \"Feet still.\"\n"
    "    read x3 trails \"Curl\"\n"
    "      3 curls off 5 to the front of the rim\n"
    "      1 passes to 3\n"
    "    read x3 overplays \"Back cut\"\n"
    "      3 back cuts to the rim\n"
    "      1 bounce passes to 3\n"
    "play \"Wrong\"\n"
    "  start five-out\n"
    "  step\n"
    "    1 pases to 2\n"
    "practice \"Week 3\"\n"
    "  10 min play \"Lantern\"\n"
    "charted 2026-11-10 game\n"
    "  \"Lantern\" set 1 of 2\n"
    "charted 2026-11-17 game\n"
    "  \"Lantern\" set 2 of 2\n";
static const char other_text[] =
    "play \"Tollgate\"\n  start five-out\n  ball 1\n  defense man\n  step\n    1 passes to 2\n"
    "    after 1 passes, 1 cuts to the rim\n";

/* Memory that fails on order. `fail_at` 0: never; `for_good`: and every time after. */
struct memory {
    size_t taken, given, fail_at;
    bool for_good;
};

static void *take(void *ctx, size_t size)
{
    struct memory *memory = ctx;
    memory->taken++;
    if (memory->fail_at && (memory->taken == memory->fail_at ||
                            (memory->for_good && memory->taken > memory->fail_at))) {
        memory->given++; /* never handed out: nothing to give back */
        return NULL;
    }
    return malloc(size);
}

static void give(void *ctx, void *block)
{
    struct memory *memory = ctx;
    memory->given += block != NULL;
    free(block);
}

static enum courtwright_fetched fetch(void *ctx, const char *from, const char *path,
                                      struct courtwright_include *include)
{
    (void)ctx;
    (void)from;
    courtwright_include_text(include, path, other_text, sizeof other_text - 1);
    return COURTWRIGHT_FETCHED;
}

/* Where bytes go: a hash and a count, failing after `most`. */
struct sink {
    size_t size, most, calls;
    uint64_t hash;
};

static bool swallow(void *ctx, const char *bytes, size_t size)
{
    struct sink *sink = ctx;
    sink->calls++;
    if (size == 0 || size > sink->most - sink->size) {
        return false;
    }
    for (size_t i = 0; i < size; i++) {
        sink->hash = (sink->hash ^ (unsigned char)bytes[i]) * 1099511628211u;
    }
    sink->size += size;
    return true;
}

static bool count_rows(void *ctx, const struct courtwright_entry *entry)
{
    struct sink *sink = ctx;
    return swallow(sink, entry->word, strlen(entry->word));
}

struct call {
    const char *name;
    enum courtwright_status (*make)(struct courtwright *book, const struct courtwright_host *host,
                                    struct sink *sink); /* NULL: the sheet of that name */
};

static enum courtwright_status draw(struct courtwright *book, struct sink *sink,
                                    struct courtwright_draw options)
{
    struct courtwright_writer writer = {swallow, sink};
    options.play = 1;
    options.show_checks = options.caption = options.beads = true;
    return courtwright_draw(book, &options, &writer);
}

#define CALL(name)                                                                                 \
    static enum courtwright_status name(struct courtwright *book,                                  \
                                        const struct courtwright_host *host, struct sink *sink)
#define UNUSED_HOST (void)host

CALL(call_live)
{
    UNUSED_HOST;
    return draw(book, sink, (struct courtwright_draw){.format = COURTWRIGHT_SVG_LIVE});
}
CALL(call_svg)
{
    UNUSED_HOST;
    return draw(book, sink,
                (struct courtwright_draw){.format = COURTWRIGHT_SVG, .layout = COURTWRIGHT_GRID});
}
CALL(call_pdf)
{
    UNUSED_HOST;
    return draw(book, sink,
                (struct courtwright_draw){.format = COURTWRIGHT_PDF, .layout = COURTWRIGHT_STRIP});
}
CALL(call_png)
{
    UNUSED_HOST;
    return draw(book, sink, (struct courtwright_draw){.format = COURTWRIGHT_PNG, .scale = 1});
}
CALL(call_handout)
{
    UNUSED_HOST;
    struct courtwright_writer writer = {swallow, sink};
    struct courtwright_handout options = {.reader = 3, .names = true, .date_text = "November 3"};
    return courtwright_handout(book, &options, &writer);
}
CALL(call_card)
{
    UNUSED_HOST;
    struct courtwright_writer writer = {swallow, sink};
    struct courtwright_handout options = {.per_page = 20};
    return courtwright_sheet(book, "card", &options, &writer);
}
CALL(call_book)
{
    UNUSED_HOST;
    static const char crest[] =
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"9\" height=\"9\">"
        "<rect width=\"9\" height=\"9\"/></svg>";
    struct courtwright_writer writer = {swallow, sink};
    struct courtwright_handout options = {.two_sided = true};
    options.crest = crest;
    options.crest_size = strlen(crest);
    return courtwright_sheet(book, "book", &options, &writer);
}
CALL(call_web)
{
    UNUSED_HOST;
    struct courtwright_writer writer = {swallow, sink};
    struct courtwright_web options = {.names = true, .date_text = "November 3"};
    return courtwright_web(book, &options, &writer);
}
CALL(call_tidy)
{
    UNUSED_HOST;
    struct courtwright_writer writer = {swallow, sink};
    return courtwright_tidy(book, &writer);
}
CALL(call_positions)
{
    UNUSED_HOST;
    struct courtwright_writer writer = {swallow, sink};
    return courtwright_positions(book, 1, 30, &writer);
}
CALL(call_animate)
{
    UNUSED_HOST;
    struct courtwright_writer writer = {swallow, sink};
    struct courtwright_animate options = {.play = 1, .loop = true};
    return courtwright_animate(book, &options, &writer);
}
CALL(call_dump)
{
    UNUSED_HOST;
    struct courtwright_writer writer = {swallow, sink};
    return courtwright_dump(book, 1, COURTWRIGHT_SCENE, &writer);
}
CALL(call_measure)
{
    UNUSED_HOST;
    struct courtwright_measure found;
    struct courtwright_draw options = {.play = 1};
    enum courtwright_status status = courtwright_measure(book, &options, &found);
    return status == COURTWRIGHT_OK && !swallow(sink, (const char *)&found, sizeof found)
               ? COURTWRIGHT_WRITE
               : status;
}
static bool swallow_tolerance(void *ctx, const struct courtwright_tolerance *told)
{
    return swallow(ctx, told->message, strlen(told->message));
}

/* Of the short play: a hundred runs each time. */
CALL(call_tolerance)
{
    UNUSED_HOST;
    return courtwright_tolerance(book, 0, swallow_tolerance, sink);
}
CALL(call_list)
{
    (void)book;
    return courtwright_list(COURTWRIGHT_PLACES, host, count_rows, sink);
}
CALL(call_explain)
{
    (void)book;
    return courtwright_explain("curls", host, count_rows, sink);
}

static const struct call calls[] = {
    {"draw live SVG", call_live},
    {"draw SVG", call_svg},
    {"draw PDF", call_pdf},
    {"draw PNG", call_png},
    {"handout", call_handout},
    {"card", call_card},
    {"book", call_book},
    {"tidy", call_tidy},
    {"positions", call_positions},
    {"dump", call_dump},
    {"measure", call_measure},
    {"list", call_list},
    {"explain", call_explain},
    {"tolerance", call_tolerance},
    {"coach", NULL},
    {"fill-in", NULL},
    {"chart", NULL},
    {"practice", NULL},
    {"trend", NULL},
    {"web", call_web},
    {"animate", call_animate},
};
enum { CALLS = sizeof calls / sizeof *calls, MOST_TRIES = 20000, WRITER_TRIES = 40 };

/* A sheet of Lantern, by its name; as the program picks the play with --play. */
static enum courtwright_status sheet(struct courtwright *book, struct sink *sink, const char *name)
{
    static const size_t sound[] = {1};
    struct courtwright_writer writer = {swallow, sink};
    struct courtwright_handout options = {.plays = sound, .play_count = 1, .names = true};
    return courtwright_sheet(book, name, &options, &writer);
}

static enum courtwright_status made(const struct call *call, struct courtwright *book,
                                    const struct courtwright_host *host, struct sink *sink)
{
    return call->make ? call->make(book, host, sink) : sheet(book, sink, call->name);
}

static int checks, failures;

static bool ok(bool good, const char *what, const char *which, size_t number)
{
    checks++;
    failures += !good;
    if (number) {
        printf("%s %d - %s: %s, number %zu\n", good ? "ok" : "not ok", checks, which, what, number);
    } else {
        printf("%s %d - %s: %s\n", good ? "ok" : "not ok", checks, which, what);
    }
    return good;
}

static struct courtwright *load(struct memory *memory, struct courtwright_host *host)
{
    *host =
        (struct courtwright_host){.fetch = fetch, .take = take, .give = give, .memory_ctx = memory};
    return courtwright_load("book.play", book_text, sizeof book_text - 1, host);
}

/* Whether a load that ran out says so, and nothing else. */
static bool says_memory(const struct courtwright *book)
{
    return !book ||
           (courtwright_diagnostic_count(book) == 1 && courtwright_error_count(book) == 1 &&
            strcmp(courtwright_diagnostic(book, 0)->id, "file.memory") == 0 &&
            courtwright_play_count(book) == 0);
}

static void fail_load(bool for_good)
{
    const char *which = for_good ? "load, memory gone for good" : "load";
    bool whole = false;
    for (size_t at = 1; at < MOST_TRIES && !whole; at++) {
        struct memory memory = {.fail_at = at, .for_good = for_good};
        struct courtwright_host host;
        struct courtwright *book = load(&memory, &host);
        whole = memory.taken < at;
        bool good = whole ? book && courtwright_play_count(book) == 3 : says_memory(book);
        courtwright_free(book);
        ok(good && memory.taken == memory.given,
           whole ? "all is well in the end" : "one diagnostic and nothing kept", which, at);
    }
    ok(whole, "comes to an end", which, 0);
}

static void fail_call(const struct call *call, struct courtwright *book, struct memory *memory,
                      const struct courtwright_host *host, const struct sink *wanted)
{
    bool whole = false;
    size_t stride = call->make == call_tolerance ? 13 : 1; /* a hundred runs are much alike */
    for (size_t at = 1; at < MOST_TRIES && !whole; at += stride) {
        struct sink sink = {.most = SIZE_MAX};
        size_t held = memory->taken - memory->given;
        memory->taken = held;
        memory->given = 0;
        memory->fail_at = held + at;
        enum courtwright_status status = made(call, book, host, &sink);
        whole = memory->taken < held + at;
        memory->fail_at = 0;
        bool good = whole ? status == COURTWRIGHT_OK && sink.hash == wanted->hash &&
                                sink.size == wanted->size
                          : status == COURTWRIGHT_MEMORY;
        ok(good && memory->taken - memory->given == held,
           whole ? "the same bytes in the end" : "says so and keeps nothing", call->name, at);
    }
    ok(whole, "comes to an end", call->name, 0);
}

static void fail_writer(const struct call *call, struct courtwright *book,
                        const struct courtwright_host *host, size_t size)
{
    bool lists = call->make == call_list || call->make == call_explain ||
                 call->make == call_measure || call->make == call_tolerance;
    for (size_t i = 0; i < WRITER_TRIES && !lists; i++) {
        struct sink sink = {.most = size * i / WRITER_TRIES};
        enum courtwright_status status = made(call, book, host, &sink);
        ok(status == COURTWRIGHT_WRITE, "a writer that fails is told of", call->name, i + 1);
    }
}

int main(void)
{
    fail_load(false);
    fail_load(true);
    struct memory memory = {0};
    struct courtwright_host host;
    struct courtwright *book = load(&memory, &host);
    if (!ok(book && courtwright_play_count(book) == 3 && courtwright_error_count(book) == 1,
            "three plays, one error", "the book", 0)) {
        for (size_t i = 0; book && i < courtwright_diagnostic_count(book); i++) {
            const struct courtwright_diagnostic *said = courtwright_diagnostic(book, i);
            printf("# %s:%u: %s [%s]\n", said->file, said->line, said->message, said->id);
        }
    }
    for (size_t i = 0; book && i < CALLS; i++) {
        struct sink wanted = {.most = SIZE_MAX};
        enum courtwright_status status = made(&calls[i], book, &host, &wanted);
        if (status == COURTWRIGHT_NOT_BUILT) {
            continue;
        }
        if (ok(status == COURTWRIGHT_OK && wanted.size > 0, courtwright_status_text(status),
               calls[i].name, 0)) {
            fail_call(&calls[i], book, &memory, &host, &wanted);
            fail_writer(&calls[i], book, &host, wanted.size);
        }
    }
    courtwright_free(book);
    ok(memory.taken == memory.given, "everything was given back", "the book", 0);
    printf("1..%d\n", checks);
    return failures ? EXIT_FAILURE : EXIT_SUCCESS;
}
