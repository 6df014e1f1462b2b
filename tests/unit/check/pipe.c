/* SPDX-License-Identifier: MIT */
/* pipe: see pipe.h. */
#include "pipe.h"

#include <check.h>

#include "whole_file.h"

#include <string.h>

#include "floor/sim/sim.h"

void pipe_text(struct arena *arena, struct str text, struct piped *piped)
{
    *piped = (struct piped){0};
    sources_init(&piped->sources, arena);
    diags_init(&piped->diags, arena);
    uint32_t source = sources_add(&piped->sources, STR("example.play"), text);
    const struct book *book = book_read(arena, &piped->sources, source, NULL, &piped->diags);
    struct playbook *plays =
        playbook_resolve(arena, &piped->sources, book, STR("example"), &piped->diags);
    piped->book = plays;
    for (size_t i = 0; i < plays->plays.count; i++) {
        const struct play *play = &plays->plays.at[i];
        if (play->broken) {
            continue;
        }
        struct run *run = sim_run(arena, &piped->sources, play, &piped->diags);
        finding_list found;
        check_run(arena, run, &found);
        for (size_t k = 0; k < found.count; k++) {
            VEC_PUSH(arena, &piped->findings, found.at[k]);
        }
    }
}

struct str pipe_twin(struct arena *arena, const char *folder, const struct check_row *row,
                     const char *which)
{
    struct str text, name = str_format(arena, "%s/%s-%s.play", folder, row->id, which);
    ck_assert_msg(whole_file(arena, name.at, &text) && text.size > 0, "there is no %s", name.at);
    return text;
}

size_t piped_count(const struct piped *piped, const char *id)
{
    size_t count = 0;
    for (size_t i = 0; i < piped->findings.count; i++) {
        count += strcmp(piped->findings.at[i].row->id, id) == 0;
    }
    return count;
}

const char *piped_said(struct arena *arena, const struct piped *piped)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < piped->diags.all.count; i++) {
        const struct diag *diag = &piped->diags.all.at[i];
        strbuf_print(&out, "\n  %s: %.*s", diag->row->id, STR_ARG(diag->message));
    }
    for (size_t i = 0; i < piped->findings.count; i++) {
        const struct finding *finding = &piped->findings.at[i];
        strbuf_print(&out, "\n  %s (step %d, ", finding->row->id, finding->step + 1);
        strbuf_number(&out, finding->time, 2);
        strbuf_print(&out, " s): %.*s", STR_ARG(finding->message));
    }
    strbuf_char(&out, '\n');
    return out.at;
}
