/* SPDX-License-Identifier: MIT */
/* read: a text read without a word said about it, for whoever asks while it is typed. */
#include "language/edit/edit.h"

static const char *const names[EDIT_CLASS_COUNT] = {
#define CLASS(symbol, name, what) [EDIT_##symbol] = name,
#include "language/edit/classes.def"
#undef CLASS
};

const char *edit_class_name(enum edit_class class)
{
    return (size_t) class < EDIT_CLASS_COUNT ? names[class] : NULL;
}

/* Every included file is there, and empty but for a remark. */
static enum load_result load_nothing(void *ctx, struct arena *arena, struct str from,
                                     struct str path, struct str *name, struct str *text)
{
    (void)ctx;
    (void)arena;
    (void)from;
    *name = path;
    *text = STR("#\n");
    return LOAD_OK;
}

struct book *edit_read(const struct edit_text *text, struct diags *diags)
{
    static const struct loader nothing = {load_nothing, NULL};
    diags_init(diags, text->arena);
    return book_read(text->arena, text->sources, text->source,
                     text->loader ? text->loader : &nothing, diags);
}
