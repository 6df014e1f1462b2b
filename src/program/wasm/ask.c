/* SPDX-License-Identifier: MIT */
/* ask: what the page's editor asks of a text while it is typed, as JSON or words of four bytes. */
#include "program/wasm/out.h"
#include "program/wasm/page.h"

static bool each_token(void *ctx, const struct courtwright_token *token)
{
    (void)ctx;
    out_word((uint32_t)token->begin);
    out_word((uint32_t)token->end);
    out_word((uint32_t)token->kind);
    return true;
}

enum courtwright_status page_tokens(const char *text, size_t size)
{
    out_clear();
    return courtwright_tokens(text, size, page_host(), each_token, NULL);
}

void page_classes(void)
{
    out_clear();
    out_open('[');
    for (int i = 0; i < COURTWRIGHT_CLASS_COUNT; i++) {
        out_string(courtwright_class_name((enum courtwright_class)i));
    }
    out_close(']');
}

static void tell_stretch(size_t begin, size_t end)
{
    out_whole_member("begin", (long)begin);
    out_whole_member("end", (long)end);
}

static bool each_completion(void *ctx, const struct courtwright_completion *completion)
{
    (void)ctx;
    out_open('{');
    tell_stretch(completion->begin, completion->end);
    out_string_member("kind", courtwright_class_name(completion->kind));
    out_string_member("text", completion->text);
    out_string_member("what", completion->what);
    out_close('}');
    return true;
}

enum courtwright_status page_complete(const char *name, const char *text, size_t size, size_t at)
{
    out_clear();
    out_open('[');
    enum courtwright_status status =
        courtwright_complete(name, text, size, at, page_host(), each_completion, NULL);
    out_close(']');
    return status;
}

static bool each_hover(void *ctx, const struct courtwright_hover *hover)
{
    (void)ctx;
    out_open('{');
    tell_stretch(hover->begin, hover->end);
    out_string_member("kind", courtwright_class_name(hover->kind));
    out_flag_member("sentence", hover->sentence);
    out_string_member("title", hover->title);
    out_string_member("text", hover->text);
    out_string_member("example", hover->example);
    out_close('}');
    return true;
}

enum courtwright_status page_hover(const char *name, const char *text, size_t size, size_t at)
{
    out_clear();
    out_open('[');
    enum courtwright_status status =
        courtwright_hover(name, text, size, at, page_host(), each_hover, NULL);
    out_close(']');
    return status;
}
