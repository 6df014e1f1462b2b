/* SPDX-License-Identifier: MIT */
/* said: see said.h. */
#include "said.h"

#include <string.h>

struct sources sources;
struct diags diags;
static const struct str roles[] = {{"passer", 6}, {"receiver", 8}};

struct cursor open_line(const char *text, bool drill)
{
    struct lines lines = {0};
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("a.play"), str_of(text));
    lines_read(&arena, &sources, source, &diags, &lines);
    ck_assert_msg(lines.all.count > 0 && diags.all.count == 0, "the tokens of: %s", text);
    const struct line *line = &lines.all.at[0];
    return (struct cursor){.arena = &arena,
                           .diags = &diags,
                           .sources = &sources,
                           .at = line->tokens,
                           .end = line->tokens + line->count,
                           .line_span = line->span,
                           .drill = drill,
                           .players = drill ? 12 : 5,
                           .roles = roles,
                           .role_count = 2};
}

const char *complaint(void)
{
    return diags.all.count ? str_copy(&arena, diags.all.at[0].message).at : "";
}

const char *printed(const sentence_list *list, const char *between)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < list->count; i++) {
        strbuf_text(&out, i > 0 ? between : "");
        tidy_sentence(&out, &list->at[i]);
    }
    return str_copy(&arena, strbuf_str(&out)).at;
}

const char *tidied(const char *text, bool drill)
{
    struct cursor c = open_line(text, drill);
    sentence_list list = {NULL, 0, 0};
    bool read = sentences_read(&c, &list);
    ck_assert_msg(read && diags.errors + diags.warnings == 0, "%s: %s", text, complaint());
    return printed(&list, " / ");
}

void check_pairs(const struct pair *pairs, bool drill)
{
    for (; pairs->written; pairs++) {
        const char *wanted = pairs->tidy ? pairs->tidy : pairs->written;
        const char *found = tidied(pairs->written, drill);
        ck_assert_msg(strcmp(found, wanted) == 0, "%s\n  gave   %s\n  wanted %s", pairs->written,
                      found, wanted);
        char again[512];
        ck_assert_uint_lt(strlen(wanted), sizeof again);
        strcpy(again, wanted);
        for (char *slash = strstr(again, " / "); slash; slash = strstr(slash, " / ")) {
            memcpy(slash, " ; ", 3);
        }
        ck_assert_msg(strcmp(tidied(again, drill), wanted) == 0, "%s: tidied twice: %s", wanted,
                      tidied(again, drill));
    }
}
