/* SPDX-License-Identifier: MIT */
/* Every tests/golden/tell/NAME.play is told as in NAME.told: captions, jobs, the picture in words.
 * `test_golden_tell --write` writes the files anew, to be looked at before they are kept. */
#include "golden.h"
#include "language/tell/tell.h"
#include "resolved.h"
#include "suite.h"

static void marked(struct strbuf *out, struct str text)
{
    for (size_t i = 0; i < text.size; i++) {
        char c = text.at[i];
        strbuf_char(out, c == TELL_BOLD || c == TELL_PLAIN ? '*' : c);
    }
    strbuf_char(out, '\n');
}

static void way_told(struct strbuf *out, const struct play *play, const struct step *step,
                     int branch)
{
    strbuf_print(out, "step %d", step->number);
    if (branch >= 0) {
        strbuf_print(out, "%c if %.*s", 'a' + branch,
                     STR_ARG(tell_conditions(&arena, &step->branches.at[branch])));
    }
    strbuf_char(out, '\n');
    for (size_t i = 0; i < step_task_count(step, branch); i++) {
        struct str caption = tell_task(&arena, play, step, branch, i);
        if (caption.size) {
            strbuf_print(out, "  (%d) ", step_task(step, branch, i)->order);
            marked(out, caption);
        }
    }
    for (int number = 1; number <= play->players; number++) {
        strbuf_print(out, "  job of %d: ", number);
        marked(out, tell_job(&arena, play, step, branch, body_attacker(number), false));
    }
    strbuf_text(out, "  picture: ");
    marked(out, tell_diagram(&arena, play, step, branch, 0));
}

static struct str told_text(const char *name, struct str text)
{
    struct resolved resolved;
    resolve_text(&arena, &resolved, str_of(name), text);
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t p = 0; p < resolved.book->plays.count; p++) {
        const struct play *play = &resolved.book->plays.at[p];
        for (size_t s = 0; s < play->steps.count; s++) {
            const struct step *step = &play->steps.at[s];
            way_told(&out, play, step, -1);
            for (size_t b = 0; b < step->branches.count; b++) {
                way_told(&out, play, step, (int)b);
            }
        }
    }
    print_diags(&out, &resolved);
    return strbuf_str(&out);
}

int main(int argc, char **argv)
{
    const struct golden golden = {GOLDEN_DIR, ".told", told_text};
    return golden_main(&golden, argc, argv);
}
