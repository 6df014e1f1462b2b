/* SPDX-License-Identifier: MIT */
/* check: the table of checks and the one way they are run: each over each segment, what repeats is
 * said once, what the coach accepts is marked, the rest is sorted. Takes a run; never changes it.
 */
#include "judge/check/look.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "base/real.h"

#define SAME_AMOUNT 0.001 /* m, s or radians; a mirror image is exact */

static const struct check_row rows[] = {
#define CHECK(symbol, id, severity, unit, limit, lasting, what, why, source, good, bad)            \
    {id,   severity, what,    EXPLAINED(why), EXPLAINED(good), EXPLAINED(bad), EXPLAINED(source),  \
     unit, limit,    lasting, look_##symbol},
#include "judge/check/checks.def"
#undef CHECK
};

size_t check_count(void)
{
    return sizeof rows / sizeof *rows;
}

const struct check_row *check_at(size_t index)
{
    return &rows[index];
}

const struct check_row *check_find(struct str id)
{
    for (size_t i = 0; i < check_count(); i++) {
        if (str_equal_fold(id, str_of(rows[i].id))) {
            return &rows[i];
        }
    }
    return NULL;
}

static bool same_matter(const struct finding *a, const struct finding *b)
{
    return a->row == b->row && memcmp(a->who, b->who, sizeof a->who) == 0;
}

bool check_same(const struct finding *one, const struct finding *mirrored)
{
    return same_matter(one, mirrored) && one->severity == mirrored->severity &&
           one->accepted == mirrored->accepted && one->step == mirrored->step &&
           one->branch == mirrored->branch && one->span.source == mirrored->span.source &&
           one->span.begin == mirrored->span.begin &&
           fabs(one->time - mirrored->time) < RUN_SAMPLE / 2 &&
           fabs(one->amount - mirrored->amount) < SAME_AMOUNT;
}

static bool goes_on_from(const struct segment *segment, const struct segment *earlier)
{
    while (segment && segment != earlier) {
        segment = segment->before;
    }
    return segment != NULL;
}

/* Two who stand too close through three steps are told so once, in the first. */
static bool told_before(const struct checker *checker, size_t index)
{
    const struct finding *finding = &checker->findings->at[index];
    if (!finding->row->lasting) {
        return false;
    }
    for (size_t i = 0; i < index; i++) {
        if (same_matter(&checker->findings->at[i], finding) &&
            goes_on_from(checker->of.at[index], checker->of.at[i])) {
            return true;
        }
    }
    return false;
}

static void drop_repeated(struct checker *checker)
{
    size_t kept = 0;
    for (size_t i = 0; i < checker->findings->count; i++) {
        checker->findings->at[kept] = checker->findings->at[i];
        checker->of.at[kept] = checker->of.at[i];
        if (!told_before(checker, kept)) {
            kept++;
        }
    }
    checker->findings->count = checker->of.count = kept;
}

/* ---- one advice, one finding ---- */

/* Of those of one player at one place that give the same advice the first here is told. */
static const char *const surest[] = {
    "space.corner", "space.wing", "space.inside-line", "space.far", "space.close",
    "space.area",   NULL};

static int how_sure(const struct check_row *row)
{
    int at = 0;
    while (surest[at] && strcmp(surest[at], row->id) != 0) {
        at++;
    }
    return at;
}

static bool same_advice(const struct finding *a, const struct finding *b)
{
    return a->who[0] == b->who[0] && a->step == b->step && a->branch == b->branch && !a->accepted &&
           !b->accepted && str_equal(a->help, b->help);
}

/* Another one says it better, and no more mildly. */
static bool is_said_better(const finding_list *findings, size_t index)
{
    const struct finding *finding = &findings->at[index];
    int sure = how_sure(finding->row);
    for (size_t i = 0; surest[sure] && i < findings->count; i++) {
        const struct finding *other = &findings->at[i];
        if (i != index && same_advice(other, finding) && other->severity >= finding->severity &&
            how_sure(other->row) < sure) {
            return true;
        }
    }
    return false;
}

/* One sentence before the reads is run in each of them, and what is wrong with it told in the
 * first. A line of a read is run in no other. Accepted in one, it may be wrong in the other. */
#define AS_MUCH 0.3 /* m or s: with amounts no farther apart it is one and the same; ours */
static bool is_said_of_read_before(const finding_list *findings, size_t index)
{
    const struct finding *finding = &findings->at[index];
    for (size_t i = 0; finding->branch >= 0 && finding->who[1] != BODY_NONE && i < index; i++) {
        const struct finding *other = &findings->at[i];
        if (same_matter(other, finding) && other->step == finding->step && other->branch >= 0 &&
            other->branch != finding->branch && other->severity >= finding->severity &&
            other->accepted == finding->accepted && other->span.source == finding->span.source &&
            other->span.begin == finding->span.begin &&
            fabs(other->amount - finding->amount) < AS_MUCH) {
            return true;
        }
    }
    return false;
}

/* Nobody asks any more in which segment they are: checker.of stays, no longer parallel to them. */
static void drop_said_better(struct arena *arena, finding_list *findings)
{
    bool *drop = arena_array(arena, bool, findings->count + 1);
    for (size_t i = 0; i < findings->count; i++) {
        drop[i] = is_said_better(findings, i) || is_said_of_read_before(findings, i);
    }
    size_t kept = 0;
    for (size_t i = 0; i < findings->count; i++) {
        if (!drop[i]) {
            findings->at[kept++] = findings->at[i];
        }
    }
    findings->count = kept;
}

/* ---- accepted ---- */

bool finding_is_of(const struct finding *finding, int step, int branch)
{
    return !finding->accepted && finding->step == step && finding->branch == branch;
}

static bool accepted_in(const point_list *accepts, struct finding *finding)
{
    for (size_t i = 0; i < accepts->count; i++) {
        if (str_equal_fold(accepts->at[i].word, str_of(finding->row->id))) {
            finding->accepted = true;
            finding->reason = accepts->at[i].text;
            return true;
        }
    }
    return false;
}

/* An error cannot be on purpose: what is impossible stays so. */
static void accept(const struct play *play, struct finding *finding)
{
    if (finding->severity == SEVERITY_ERROR) {
        return;
    }
    const struct step *step = &play->steps.at[finding->step];
    bool done =
        finding->branch >= 0 && accepted_in(&step->branches.at[finding->branch].accepts, finding);
    if (!done && !accepted_in(&step->accepts, finding)) {
        accepted_in(&play->accepts, finding);
    }
}

static int order_of(long long a, long long b)
{
    return (a > b) - (a < b);
}

static int by_place(const void *left, const void *right)
{
    const struct finding *a = left, *b = right;
    int order = order_of(a->step, b->step);
    order = order ? order : order_of(a->branch, b->branch);
    order = order ? order : (a->time > b->time) - (a->time < b->time);
    order = order ? order : strcmp(a->row->id, b->row->id);
    return order ? order : memcmp(a->who, b->who, sizeof a->who);
}

static struct str unmarked(struct arena *arena, struct str text)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < text.size; i++) {
        if (text.at[i] != CHECK_BODY_ON && text.at[i] != CHECK_BODY_OFF) {
            strbuf_char(&out, text.at[i]);
        }
    }
    return strbuf_str(&out);
}

void check_run(struct arena *arena, const struct run *run, finding_list *findings)
{
    check_run_in(arena, run, NULL, findings);
}

/* The segment in hand, by the row in hand. */
static void look_at_segment(struct checker *checker, const struct segment *segment)
{
    checker->segment = segment;
    /* of a step that could not be run only what is impossible in it can be said */
    if (segment->ran || checker->row->severity == SEVERITY_ERROR) {
        checker->row->look(checker);
    }
}

static void take_row(struct checker *checker, const struct check_row *row)
{
    checker->row = row;
    checker->limit = look_limit(checker->play, row, &checker->limit_written);
}

/* Once nothing more is found: what was said of it is as it will be read. */
static void finish(struct checker *checker)
{
    for (size_t i = 0; i < checker->findings->count; i++) {
        struct finding *finding = &checker->findings->at[i];
        accept(checker->play, finding);
        finding->marked = finding->message;
        finding->message = unmarked(checker->arena, finding->marked);
        finding->help = unmarked(checker->arena, finding->help);
    }
}

void check_again(struct arena *arena, const struct segment *segment, const char *const ids[],
                 finding_list *findings)
{
    struct run alone = {.play = segment->play};
    struct segment *only = (struct segment *)segment; /* a list of them; none is changed */
    VEC_PUSH(arena, &alone.segments, only);
    struct checker checker = {
        .arena = arena, .run = &alone, .play = alone.play, .findings = findings};
    *findings = (finding_list){0};
    for (size_t i = 0; ids[i]; i++) {
        take_row(&checker, check_find(str_of(ids[i])));
        look_at_segment(&checker, segment);
    }
    finish(&checker);
}

void check_run_in(struct arena *arena, const struct run *run, const size_t *order,
                  finding_list *findings)
{
    struct checker checker = {.arena = arena, .run = run, .play = run->play, .findings = findings};
    *findings = (finding_list){0};
    for (size_t i = 0; i < check_count(); i++) {
        take_row(&checker, &rows[order ? order[i] : i]);
        for (size_t s = 0; s < run->segments.count; s++) {
            look_at_segment(&checker, run->segments.at[s]);
        }
    }
    drop_repeated(&checker);
    finish(&checker);
    drop_said_better(arena, findings);
    if (findings->count > 1) {
        qsort(findings->at, findings->count, sizeof *findings->at, by_place);
    }
}
