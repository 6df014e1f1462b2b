/* SPDX-License-Identifier: MIT */
/* handle: memory, and the small public functions that need nothing else. */
#include "program/api/handle.h"

struct scratch_job {
    struct arena arena;
    enum courtwright_status (*work)(struct arena *scratch, void *job);
    void *job;
    enum courtwright_status status;
};

static void work_in_scratch(void *ctx)
{
    struct scratch_job *job = ctx;
    job->status = job->work(&job->arena, job->job);
}

enum courtwright_status
with_scratch(const struct memory *memory,
             enum courtwright_status (*work)(struct arena *scratch, void *job), void *job)
{
    struct scratch_job scratch = {.work = work, .job = job};
    arena_init(&scratch.arena, memory, NULL);
    int why = guard(&scratch.arena, work_in_scratch, &scratch);
    arena_finish(&scratch.arena);
    return why ? COURTWRIGHT_MEMORY : scratch.status;
}

struct memory memory_of(const struct courtwright_host *host)
{
    struct memory memory = {0};
    if (host && host->take && host->give) {
        memory = (struct memory){host->take, host->give, host->memory_ctx};
    }
    return memory;
}

/* Length of the valid UTF-8 sequence at `at`, 0 when there is none. */
static size_t utf8_length(const unsigned char *at, size_t size)
{
    static const unsigned least[] = {0, 0, 0x80, 0x800, 0x10000};
    size_t length = at[0] < 0x80                    ? 1
                    : at[0] >= 0xC2 && at[0] < 0xE0 ? 2
                    : at[0] >= 0xE0 && at[0] < 0xF0 ? 3
                    : at[0] >= 0xF0 && at[0] < 0xF5 ? 4
                                                    : 0;
    if (length == 0 || length > size) {
        return 0;
    }
    unsigned code = length == 1 ? at[0] : at[0] & (0xFFu >> (length + 1));
    for (size_t i = 1; i < length; i++) {
        if ((at[i] & 0xC0) != 0x80) {
            return 0;
        }
        code = code << 6 | (at[i] & 0x3Fu);
    }
    bool surrogate = code >= 0xD800 && code < 0xE000;
    return code < least[length] || code > 0x10FFFF || surrogate ? 0 : length;
}

static bool is_control(const unsigned char *at, size_t length)
{
    return (length == 1 && (at[0] < 0x20 || at[0] == 0x7F)) ||
           (length == 2 && at[0] == 0xC2 && at[1] < 0xA0);
}

const char *clean_copy(struct arena *arena, struct str text)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < text.size;) {
        const unsigned char *at = (const unsigned char *)text.at + i;
        size_t length = utf8_length(at, text.size - i);
        if (length == 0) {
            strbuf_text(&out, "\xEF\xBF\xBD");
            i++;
            continue;
        }
        if (is_control(at, length)) {
            strbuf_char(&out, ' ');
        } else {
            strbuf_add(&out, (struct str){text.at + i, length});
        }
        i += length;
    }
    return strbuf_str(&out).at;
}

const char *courtwright_version(void)
{
    return PROJECT_VERSION;
}

const char *courtwright_status_text(enum courtwright_status status)
{
    static const char *const texts[] = {
        [COURTWRIGHT_OK] = "done",
        [COURTWRIGHT_NO_SUCH] = "there is none of that number or name",
        [COURTWRIGHT_BAD_OPTION] = "an option is out of its range",
        [COURTWRIGHT_BROKEN] = "there is an error in the text",
        [COURTWRIGHT_WRITE] = "the output could not be written",
        [COURTWRIGHT_MEMORY] = "there was not enough memory",
        [COURTWRIGHT_NOT_BUILT] = "this library was built without pages and print",
        [COURTWRIGHT_NOTHING] = "nothing in it is for this sheet: nobody moves or passes",
        [COURTWRIGHT_PIXELS] = "more than 20,000 pixels a side: ask for less width, scale or steps",
    };
    size_t index = (size_t)status;
    return index < sizeof texts / sizeof *texts ? texts[index] : "unknown";
}
