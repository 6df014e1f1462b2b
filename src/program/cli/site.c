/* SPDX-License-Identifier: MIT */
/* site: see site.h. */
#include "program/cli/site.h"

#include <assert.h>
#include <jansson.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

/* ---- The page -------------------------------------------------------------------------------- */

/* Puts `new` in the place of the one `old` in the page. */
static void put_in_place(struct site *site, const char *old, const char *new)
{
    char *at = memmem(site->page, site->page_size, old, strlen(old));
    assert(at); /* a test sees to it */
    size_t before = (size_t)(at - site->page), after = site->page_size - before - strlen(old);
    char *page = must(malloc(before + strlen(new) + after + 1));
    memcpy(page, site->page, before);
    memcpy(page + before, new, strlen(new));
    memcpy(page + before + strlen(new), at + strlen(old), after);
    free(site->page);
    site->page = page;
    site->page_size = before + strlen(new) + after;
}

/* The policy that stands in the page, and what only a header can say. */
static char *policy_of(const struct site *site)
{
    static const char mark[] = "http-equiv=\"Content-Security-Policy\" content=\"";
    const char *at = memmem(site->page, site->page_size, mark, strlen(mark));
    assert(at);
    at += strlen(mark);
    const char *end = memchr(at, '"', site->page_size - (size_t)(at - site->page));
    assert(end);
    return format_text("%.*s; frame-ancestors 'none'", (int)(end - at), at);
}

void site_page(struct site *site, const char *address)
{
    const char *token = strchr(address + strlen("http://"), '/') + 1;
    const char *whole = page_whole(&site->page_size);
    char *meta = format_text("<meta name=\"courtwright-server\" content=\"%.*s\">",
                             (int)strcspn(token, "/"), token);
    site->page = must(malloc(site->page_size + 1));
    memcpy(site->page, whole, site->page_size);
    put_in_place(site, "<!--courtwright-server-->", meta);
    put_in_place(site, "connect-src 'none'", "connect-src 'self'");
    site->policy = policy_of(site);
    free(meta);
}

void site_close(struct site *site)
{
    free(site->page);
    free(site->policy);
    desk_close(&site->desk);
}

/* ---- Answers --------------------------------------------------------------------------------- */

/* Takes the object. */
static void answer_json(struct serve_answer *answer, unsigned status, json_t *object)
{
    *answer = (struct serve_answer){.status = status, .type = "application/json"};
    answer->bytes = must(json_dumps(must(object), JSON_COMPACT));
    answer->size = strlen(answer->bytes);
    json_decref(object);
}

/* A file's name may be no UTF-8: then a question mark stands for each byte that is no ASCII. */
static json_t *words_of(const char *text)
{
    json_t *words = json_string(text);
    if (!words) {
        char *plain = format_text("%s", text);
        for (char *at = plain; *at; at++) {
            *at = (unsigned char)*at < 0x80 ? *at : '?';
        }
        words = json_string(plain);
        free(plain);
    }
    return must(words);
}

void answer_trouble(struct serve_answer *answer, unsigned status, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    char *text = format_args(format, args);
    va_end(args);
    answer_json(answer, status, json_pack("{s:o}", "message", words_of(text)));
    free(text);
}

static json_t *text_of(const struct bytes *text)
{
    return json_stringn(text->size > 0 ? text->at : "", text->size);
}

/* As JSON, each file once; what is no text is left out, and so is not found by the page either. */
static json_t *includes_of(const struct desk *desk, const struct desk_look *look)
{
    size_t folder = (size_t)(desk->name - desk->path); /* includes are told as they lie in it */
    json_t *list = must(json_array());
    json_t *seen = must(json_object());
    for (size_t i = 0; i < look->include_count; i++) {
        const struct desk_include *include = &look->includes[i];
        const char *name = include->name ? include->name + folder : "";
        if (include->fetched == COURTWRIGHT_FETCHED && desk_is_text(&include->text) &&
            !json_object_get(seen, name)) {
            json_object_set_new(seen, name, json_true());
            json_array_append_new(
                list, json_pack("{s:s, s:o}", "name", name, "text", text_of(&include->text)));
        }
    }
    json_decref(seen);
    return list;
}

/* What is between the quotes of an ETag; the whole where there are none. To be freed. */
static char *without_quotes(const char *tag)
{
    size_t size = strlen(tag);
    bool quoted = size >= 2 && tag[0] == '"' && tag[size - 1] == '"';
    return format_text("%.*s", (int)(quoted ? size - 2 : size), quoted ? tag + 1 : tag);
}

/* What the page is to show: of a file that was never there something to begin with. */
static json_t *text_shown(const struct desk *desk, const struct desk_look *look)
{
    return desk_is_lost(desk, look) ? text_of(&desk->known)
           : look->gone             ? json_string(starting_text)
                                    : text_of(&look->text);
}

static void read_file(struct site *site, const struct serve_ask *ask, struct serve_answer *answer)
{
    const struct desk_look *look = desk_look(&site->desk);
    char *known = ask->none_match ? without_quotes(ask->none_match) : NULL;
    bool lost = desk_is_lost(&site->desk, look);
    if (look->why && !lost) {
        answer_trouble(answer, 500, "%s cannot be read: %s", site->desk.name, look->why);
    } else if (known && strcmp(known, look->version) == 0) {
        *answer = (struct serve_answer){.status = 304, .type = "application/json", .lasting = ""};
    } else {
        char *locked = desk_locked(&site->desk);
        json_t *told = json_pack("{s:o, s:o, s:s, s:b, s:b, s:b, s:o}", "name",
                                 words_of(site->desk.name), "text", text_shown(&site->desk, look),
                                 "version", look->version, "new", look->gone || lost, "gone", lost,
                                 "writable", !locked, "includes", includes_of(&site->desk, look));
        if (locked) {
            json_object_set_new(told, "why", words_of(locked));
        }
        answer_json(answer, 200, told);
        free(locked);
    }
    free(known);
}

static struct bytes body_of(const struct serve_ask *ask)
{
    return (struct bytes){(char *)(size_t)ask->body, ask->body_size}; /* it is only read */
}

/* How the file lies there now that the page's text was not taken, or was. */
static void tell_saved(struct site *site, enum desk_saved saved, const struct desk_saving *saving,
                       struct serve_answer *answer)
{
    const struct desk_look *look = desk_look(&site->desk);
    char version[DESK_VERSION]; /* of what was saved, even if it has been written over already */
    desk_version_of(version, &saving->text, look);
    json_t *told =
        json_pack("{s:s, s:o}", "version", saved == DESK_CHANGED ? look->version : version,
                  "includes", includes_of(&site->desk, look));
    if (saving->kept) {
        json_object_set_new(told, "kept", words_of(saving->kept));
    }
    if (saved == DESK_CHANGED) {
        char *words = format_text("%s was %s meanwhile.%s%s%s", site->desk.name,
                                  look->gone             ? "taken away"
                                  : look->text.size == 0 ? "emptied"
                                                         : "changed",
                                  saving->kept ? " What you wrote is kept as " : "",
                                  saving->kept ? saving->kept : "",
                                  saving->kept ? "." : " What you wrote is kept nowhere but here.");
        json_t *text = text_of(&look->text);
        json_object_set_new(told, "message", words_of(words));
        json_object_set_new(told, "gone", json_boolean(look->gone));
        json_object_set_new(told, "text", text ? text : json_string(""));
        free(words);
    }
    answer_json(answer, saved == DESK_CHANGED ? 412 : 200, told);
}

static void save(struct site *site, const struct serve_ask *ask, const char *version,
                 struct serve_answer *answer)
{
    const char *keep = serve_value(ask, "keep"), *page = serve_value(ask, "page");
    struct desk_saving saving = {.page = page ? page : "",
                                 .version = version,
                                 .mine = keep && strcmp(keep, "yes") == 0,
                                 .text = body_of(ask)};
    enum desk_saved saved = desk_save(&site->desk, &saving);
    if (saved == DESK_FAILED) {
        answer_trouble(answer, 507, "%s could not be saved: %s. It is as it was.", site->desk.name,
                       saving.why);
    } else {
        tell_saved(site, saved, &saving, answer);
    }
    free(saving.kept);
}

static void save_if_it_may_be(struct site *site, const struct serve_ask *ask,
                              struct serve_answer *answer)
{
    const struct bytes text = body_of(ask);
    char *locked = desk_locked(&site->desk);
    char *version = without_quotes(ask->match ? ask->match : "");
    if (!desk_is_version(version)) {
        answer_trouble(answer, 428, "a text is saved over a version that is named in If-Match");
    } else if (!desk_is_text(&text)) {
        answer_trouble(answer, 400, "this is no text in UTF-8");
    } else if (locked) {
        answer_trouble(answer, 403, "%s", locked);
    } else {
        save(site, ask, version, answer);
    }
    free(version);
    free(locked);
}

void site_answer(void *ctx, const struct serve_ask *ask, struct serve_answer *answer)
{
    struct site *site = ctx;
    switch (ask->what) {
    case SERVE_PAGE:
        *answer = (struct serve_answer){.status = 200,
                                        .type = "text/html; charset=utf-8",
                                        .policy = site->policy,
                                        .lasting = site->page,
                                        .size = site->page_size};
        return;
    case SERVE_READ:
        read_file(site, ask, answer);
        return;
    case SERVE_SAVE:
        save_if_it_may_be(site, ask, answer);
        return;
    case SERVE_SHEET:
        sheet_answer(&site->desk, ask, answer);
        return;
    }
}
