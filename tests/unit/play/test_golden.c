/* SPDX-License-Identifier: MIT */
/* Every tests/golden/play/NAME.play resolves to NAME.resolved: plays first, then what was said.
 * `test_golden --write` writes the files anew, to be looked at before they are kept. */
#include "golden.h"
#include "resolved.h"
#include "suite.h"

static struct str resolved_text(const char *name, struct str text)
{
    struct resolved resolved;
    resolve_text(&arena, &resolved, str_of(name), text);
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < resolved.book->plays.count; i++) {
        play_dump(&out, &resolved.book->plays.at[i]);
    }
    print_diags(&out, &resolved);
    return strbuf_str(&out);
}

int main(int argc, char **argv)
{
    const struct golden golden = {GOLDEN_DIR, ".resolved", resolved_text};
    return golden_main(&golden, argc, argv);
}
