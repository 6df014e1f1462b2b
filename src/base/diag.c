/* SPDX-License-Identifier: MIT */
/* diag: see diag.h. */
#include "base/diag.h"

#include "base/limits.h"

const struct diag_row diag_rows[DIAG_COUNT] = {
#define DIAG(symbol, id, severity, explain) [DIAG_##symbol] = {id, severity, EXPLAINED(explain)},
#include "base/diags.def"
#undef DIAG
};

struct diag_example diag_example(enum diag_code code)
{
#define IN_PLAY(lines) "play \"Lantern\"\n  start five-out\n" lines
#define IN_MAN(lines) IN_PLAY("  defense man\n" lines)
    static const struct diag_example examples[DIAG_COUNT] = {
#define EXAMPLE(symbol, bad, good) [DIAG_##symbol] = {EXPLAINED(bad), EXPLAINED(good)},
#include "base/diag_examples.def"
#undef EXAMPLE
    };
#undef IN_PLAY
#undef IN_MAN
    return examples[code];
}

void diags_init(struct diags *diags, struct arena *arena)
{
    *diags = (struct diags){.arena = arena};
}

static bool same_span(struct span a, struct span b)
{
    return a.source == b.source && a.begin == b.begin && a.end == b.end;
}

/* At most LIMIT_DIAGS looks: nothing is added behind that. */
static bool already_said(const struct diags *diags, const struct diag *diag)
{
    for (size_t i = 0; i < diags->all.count; i++) {
        const struct diag *old = &diags->all.at[i];
        if (old->row == diag->row && same_span(old->span, diag->span) &&
            str_equal(old->message, diag->message)) {
            return true;
        }
    }
    return false;
}

struct diag *diag_again(struct diags *diags, const struct diag *diag)
{
    if (!diags->full && already_said(diags, diag)) {
        return NULL;
    }
    diags->errors += diag->severity == SEVERITY_ERROR;
    diags->warnings += diag->severity == SEVERITY_WARNING;
    if (diags->full || diags->all.count == LIMIT_DIAGS) {
        diags->full = true;
        return NULL;
    }
    VEC_PUSH(diags->arena, &diags->all, *diag);
    return &diags->all.at[diags->all.count - 1];
}

struct diag *diag_add(struct diags *diags, enum diag_code code, struct span span,
                      const char *format, ...)
{
    const struct diag_row *row = &diag_rows[code];
    if (diags->full) { /* only counted: no words are made for it */
        diags->errors += row->severity == SEVERITY_ERROR;
        diags->warnings += row->severity == SEVERITY_WARNING;
        return NULL;
    }
    struct strbuf message;
    strbuf_init(&message, diags->arena);
    va_list args;
    va_start(args, format);
    strbuf_vprint(&message, format, args);
    va_end(args);
    struct diag diag = {.row = row,
                        .severity = row->severity,
                        .span = span,
                        .other = SPAN_NONE,
                        .message = strbuf_str(&message)};
    return diag_again(diags, &diag);
}

void diag_help(struct diags *diags, struct diag *diag, const char *format, ...)
{
    if (!diag) {
        return;
    }
    struct strbuf help;
    strbuf_init(&help, diags->arena);
    va_list args;
    va_start(args, format);
    strbuf_vprint(&help, format, args);
    va_end(args);
    diag->help = strbuf_str(&help);
}

static bool comes_before(const struct diag *a, const struct diag *b)
{
    if (a->span.source != b->span.source) {
        return a->span.source < b->span.source;
    }
    if (a->span.begin != b->span.begin) {
        return a->span.begin < b->span.begin;
    }
    return a->severity > b->severity;
}

void diags_sort(struct diags *diags)
{
    /* Insertion: the list is short and nearly sorted, and equal entries keep their order. */
    for (size_t i = 1; i < diags->all.count; i++) {
        struct diag diag = diags->all.at[i];
        size_t j = i;
        for (; j > 0 && comes_before(&diag, &diags->all.at[j - 1]); j--) {
            diags->all.at[j] = diags->all.at[j - 1];
        }
        diags->all.at[j] = diag;
    }
}
