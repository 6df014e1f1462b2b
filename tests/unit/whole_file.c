/* SPDX-License-Identifier: MIT */
#include "whole_file.h"

#include <stdio.h>

bool whole_file(struct arena *arena, const char *path, struct str *out)
{
    struct strbuf text;
    char piece[4096];
    FILE *file = fopen(path, "rb");
    strbuf_init(&text, arena);
    for (size_t size; file && (size = fread(piece, 1, sizeof piece, file)) > 0;) {
        strbuf_add(&text, (struct str){piece, size});
    }
    if (file) {
        fclose(file);
    }
    *out = strbuf_str(&text);
    return file != NULL;
}

struct str whole_file_or_said(struct arena *arena, const char *path)
{
    struct str text;
    if (!whole_file(arena, path, &text)) {
        fprintf(stderr, "%s cannot be read\n", path);
    }
    return text;
}
