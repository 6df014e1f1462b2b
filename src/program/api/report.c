/* SPDX-License-Identifier: MIT */
/* report: diagnostics of text and findings of checks become one list in the order of the text. */
#include <stdlib.h>

#include "program/api/handle.h"

struct entry {
    struct span span;
    enum severity severity;
    size_t number; /* as met: keeps equal ones in order */
    struct courtwright_diagnostic told;
};
typedef VEC(struct entry) entry_list;

static enum courtwright_severity severity_told(enum severity severity)
{
    static const enum courtwright_severity told[] = {
        [SEVERITY_NOTE] = COURTWRIGHT_NOTE,
        [SEVERITY_WARNING] = COURTWRIGHT_WARNING,
        [SEVERITY_ERROR] = COURTWRIGHT_ERROR,
    };
    return told[severity];
}

static void tell_place(struct courtwright *book, struct span span,
                       struct courtwright_diagnostic *told)
{
    told->file = told->excerpt = "";
    if (span.source >= book->sources.all.count) {
        return;
    }
    const struct source *source = &book->sources.all.at[span.source];
    struct place_in_source begin = source_place(source, span.begin);
    struct place_in_source end = source_place(source, span.end);
    struct str line = source_line(source, begin.line);
    if (begin.line == 1 && str_starts(line, "\xEF\xBB\xBF")) {
        line = (struct str){line.at + 3, line.size - 3};
    }
    if (end.line != begin.line) {
        uint32_t line_end = (uint32_t)(line.at + line.size - source->text.at);
        end = source_place(source, line_end);
    }
    told->file = book->source_names[span.source];
    told->excerpt = clean_copy(&book->arena, line);
    told->line = begin.line;
    told->column = begin.column;
    told->end = end.column > begin.column ? end.column : begin.column;
}

static void tell_other(struct courtwright *book, struct span span,
                       struct courtwright_diagnostic *told)
{
    told->other_file = "";
    if (span.source < book->sources.all.count) {
        told->other_file = book->source_names[span.source];
        told->other_line = source_place(&book->sources.all.at[span.source], span.begin).line;
    }
}

static void add(struct courtwright *book, entry_list *entries, struct entry entry,
                struct str message, struct str help)
{
    struct arena *arena = &book->arena;
    entry.number = entries->count;
    entry.told.severity = severity_told(entry.severity);
    entry.told.message = clean_copy(arena, message);
    entry.told.help = clean_copy(arena, help);
    entry.told.named = entry.told.finding ? entry.told.named : entry.told.message;
    tell_place(book, entry.span, &entry.told);
    VEC_PUSH(arena, entries, entry);
}

const char *names_put(struct arena *arena, const struct courtwright *book, const struct play *play,
                      struct str marked)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < marked.size; i++) {
        int number = 0;
        if (marked.at[i] != CHECK_BODY_ON) {
            strbuf_char(&out, marked.at[i]);
            continue;
        }
        for (i++; i < marked.size && marked.at[i] != CHECK_BODY_OFF; i++) {
            number = 10 * number + (marked.at[i] - '0');
        }
        struct str name = team_first_name(&book->playbook->team, play, body_attacker(number));
        if (name.size > 0) {
            strbuf_print(&out, "%.*s (%d)", STR_ARG(name), number);
        } else {
            strbuf_print(&out, "%d", number);
        }
    }
    return clean_copy(arena, strbuf_str(&out));
}

static void add_diag(struct courtwright *book, entry_list *entries, const struct diag *diag)
{
    struct entry entry = {.span = diag->span, .severity = diag->severity};
    entry.told.id = diag->row->id;
    entry.told.play = entry.told.step = entry.told.reason = "";
    tell_other(book, diag->other, &entry.told);
    add(book, entries, entry, diag->message, diag->help);
}

static const char *label_of(struct courtwright *book, const struct compiled *compiled,
                            const struct finding *finding)
{
    for (size_t i = 0; i < compiled->diagrams.count; i++) {
        const struct diagram *diagram = &compiled->diagrams.at[i];
        if (diagram->step == finding->step && diagram->branch == finding->branch) {
            return compiled->told_diagrams[i].label;
        }
    }
    /* of a play that cannot be run nothing is drawn: then the step's own number */
    int number = compiled->play->steps.at[finding->step].number;
    return str_format(&book->arena, "%d", number).at;
}

/* Pictures letter what they show in the order in which it was found: see the scene's findings. */
static unsigned letter_of(const struct compiled *compiled, const struct finding *finding)
{
    unsigned letter = 1;
    for (const struct finding *other = compiled->findings.at; other < finding; other++) {
        letter += finding_is_of(other, finding->step, finding->branch);
    }
    return finding->accepted || !compiled->ran ? 0 : letter;
}

static void add_finding(struct courtwright *book, entry_list *entries,
                        const struct compiled *compiled, const struct finding *finding)
{
    struct entry entry = {.span = finding->span,
                          .severity = finding->accepted ? SEVERITY_NOTE : finding->severity};
    entry.told.id = finding->row->id;
    entry.told.play = compiled->told.name;
    entry.told.step = label_of(book, compiled, finding);
    entry.told.time = finding->time;
    entry.told.finding = true;
    entry.told.accepted = finding->accepted;
    entry.told.letter = letter_of(compiled, finding);
    entry.told.reason = clean_copy(&book->arena, finding->reason);
    entry.told.other_file = "";
    entry.told.named = names_put(&book->arena, book, compiled->play, finding->marked);
    book->errors += entry.severity == SEVERITY_ERROR;
    book->warnings += entry.severity == SEVERITY_WARNING;
    add(book, entries, entry, finding->message, finding->help);
}

typedef VEC(const struct finding *) found_list;

static int compare_spans(struct span a, struct span b)
{
    if (a.source != b.source) {
        return a.source < b.source ? -1 : 1;
    }
    return (a.begin > b.begin) - (a.begin < b.begin);
}

static int by_span(const void *left, const void *right)
{
    const struct finding *const *a = left, *const *b = right;
    return compare_spans((*a)->span, (*b)->span);
}

/* What was found in plays that are no mirrors, in the order of the text. */
static found_list found_unmirrored(struct courtwright *book)
{
    found_list found = {0};
    for (size_t i = 0; i < book->play_count; i++) {
        const struct compiled *compiled = &book->plays[i];
        for (size_t k = 0; k < compiled->findings.count && !compiled->play->mirrored; k++) {
            VEC_PUSH(&book->arena, &found, &compiled->findings.at[k]);
        }
    }
    if (found.count > 1) {
        qsort(found.at, found.count, sizeof *found.at, by_span);
    }
    return found;
}

/* A mirror runs as its play does: what is told of the play is not told again of its mirror. */
static bool told_of_its_play(const found_list *found, const struct finding *finding)
{
    size_t low = 0, high = found->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (compare_spans(found->at[middle]->span, finding->span) < 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    for (; low < found->count && compare_spans(found->at[low]->span, finding->span) == 0; low++) {
        if (check_same(found->at[low], finding)) {
            return true;
        }
    }
    return false;
}

static int compare(const void *left, const void *right)
{
    const struct entry *a = left, *b = right;
    int order = compare_spans(a->span, b->span);
    if (order != 0) {
        return order;
    }
    if (a->severity != b->severity) {
        return a->severity > b->severity ? -1 : 1;
    }
    return (a->number > b->number) - (a->number < b->number);
}

void report_make(struct courtwright *book)
{
    entry_list entries = {0};
    found_list found = found_unmirrored(book);
    book->errors = book->diags.errors;
    book->warnings = book->diags.warnings;
    for (size_t i = 0; i < book->diags.all.count; i++) {
        add_diag(book, &entries, &book->diags.all.at[i]);
    }
    for (size_t i = 0; i < book->play_count; i++) {
        for (size_t j = 0; j < book->plays[i].findings.count; j++) {
            const struct finding *finding = &book->plays[i].findings.at[j];
            if (!book->plays[i].play->mirrored || !told_of_its_play(&found, finding)) {
                add_finding(book, &entries, &book->plays[i], finding);
            }
        }
    }
    if (entries.count > 1) {
        qsort(entries.at, entries.count, sizeof *entries.at, compare);
    }
    book->said = arena_array(&book->arena, struct courtwright_diagnostic, entries.count);
    for (size_t i = 0; i < entries.count; i++) {
        book->said[i] = entries.at[i].told;
    }
    book->said_count = entries.count;
}

size_t courtwright_diagnostic_count(const struct courtwright *book)
{
    return book->said_count;
}

const struct courtwright_diagnostic *courtwright_diagnostic(const struct courtwright *book,
                                                            size_t index)
{
    return index < book->said_count ? &book->said[index] : NULL;
}

size_t courtwright_error_count(const struct courtwright *book)
{
    return book->errors;
}

size_t courtwright_warning_count(const struct courtwright *book)
{
    return book->warnings;
}

bool courtwright_list_full(const struct courtwright *book)
{
    return book->diags.full;
}
