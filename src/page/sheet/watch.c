/* SPDX-License-Identifier: MIT */
/* watch: see watch.h. */
#include "page/sheet/watch.h"

#include "language/tell/tell.h"

_Static_assert(CHECK_BODY_ON == TELL_BOLD && CHECK_BODY_OFF == TELL_PLAIN, "marked alike");

#define INDENT 15.0
#define SQUARE 10.2 /* numbers on paper: 1.28 of the lettering */
#define TO_FIRST 14.0
#define TO_NEXT 15.5 /* from row to row */

void watch_findings(struct arena *arena, const finding_list *findings, int step, int branch,
                    watched_list *out)
{
    size_t letter = 0;
    for (size_t i = 0; i < findings->count; i++) {
        const struct finding *finding = &findings->at[i];
        if (finding_is_of(finding, step, branch)) {
            VEC_PUSH(arena, out, ((struct watched){finding, letter++, finding->marked}));
        }
    }
}

/* ---- figures of the run ---- */

static void print_seconds(struct strbuf *out, double seconds)
{
    strbuf_fixed(out, seconds, 1);
    strbuf_text(out, "\xC2\xA0s");
}

/* Did a check of this family find fault with what `who` does? */
static bool has_fault(const watched_list *found, const char *family, body who)
{
    for (size_t i = 0; i < found->count; i++) {
        const struct finding *finding = found->at[i].finding;
        bool his = false;
        for (size_t k = 0; k < sizeof finding->who / sizeof *finding->who; k++) {
            his = his || finding->who[k] == who;
        }
        if (his && str_starts(str_of(finding->row->id), family)) {
            return true;
        }
    }
    return false;
}

/* How long a screen has stood when its user starts, s; below 0: he started first. False: it was
 * never used, or never set. */
static bool screen_spare(const struct segment *segment, size_t use, double *spare)
{
    const struct task *task = segment_task(segment, use);
    double start = segment->record[use].time[MOMENT_STARTED];
    if (task->kind != TASK_USE || task->screen_task < 0 || start < 0) {
        return false;
    }
    double set = segment->record[task->screen_task].time[MOMENT_SET];
    *spare = start - set;
    return set >= 0;
}

static void watch_screens(struct arena *arena, const struct segment *segment,
                          const watched_list *found, watched_list *out)
{
    size_t tightest = segment->tasks;
    double least = 0, spare;
    for (size_t i = 0; i < segment->tasks; i++) {
        if (screen_spare(segment, i, &spare) && (tightest == segment->tasks || spare < least)) {
            tightest = i;
            least = spare;
        }
    }
    if (tightest == segment->tasks ||
        has_fault(found, "screen.", segment_task(segment, tightest)->who)) {
        return;
    }
    const struct task *use = segment_task(segment, tightest);
    struct strbuf text;
    strbuf_init(&text, arena);
    tell_body(&text, use->who);
    strbuf_text(&text, " waits for ");
    tell_body(&text, use->other);
    strbuf_text(&text, ": the screen is set at ");
    print_seconds(&text, segment->record[use->screen_task].time[MOMENT_SET]);
    strbuf_text(&text, "; ");
    tell_body(&text, use->who);
    strbuf_text(&text, " leaves at ");
    print_seconds(&text, segment->record[tightest].time[MOMENT_STARTED]);
    strbuf_char(&text, '.');
    VEC_PUSH(arena, out, ((struct watched){NULL, 0, strbuf_str(&text)}));
}

/* A cut that is to pass close, and does: what passes wider is a finding where a check looks at it,
 * and nothing to learn from where none does. */
static bool passes_close(const struct segment *segment, size_t use)
{
    const struct task *task = segment_task(segment, use);
    double gap = segment->record[use].gap, most = check_find(STR("screen.gap"))->limit;
    bool away = task->shape == SHAPE_BACK || task->shape == SHAPE_FADE;
    return task->kind == TASK_USE && !away && gap >= 0 && gap <= most;
}

static void watch_gaps(struct arena *arena, const struct segment *segment,
                       const watched_list *found, watched_list *out)
{
    size_t widest = segment->tasks;
    for (size_t i = 0; i < segment->tasks; i++) {
        bool wider =
            passes_close(segment, i) &&
            (widest == segment->tasks || segment->record[i].gap > segment->record[widest].gap);
        widest = wider ? i : widest;
    }
    if (widest == segment->tasks ||
        has_fault(found, "screen.", segment_task(segment, widest)->who)) {
        return;
    }
    const struct task *use = segment_task(segment, widest);
    struct strbuf text;
    strbuf_init(&text, arena);
    tell_body(&text, use->who);
    strbuf_text(&text, " brushes ");
    tell_body(&text, use->other);
    strbuf_text(&text, "\xE2\x80\x99s shoulder: the cut passes at ");
    play_length(&text, segment->play, segment->record[widest].gap);
    strbuf_char(&text, '.');
    VEC_PUSH(arena, out, ((struct watched){NULL, 0, strbuf_str(&text)}));
}

/* Where nobody defends, the run has defenders to reckon by, who stand on no floor. */
static bool is_seen(const struct segment *segment, body defender)
{
    return defender != BODY_NONE && segment->track[defender].on_floor;
}

/* ": the ball clears x3's hand by 0.6 ft." */
static void print_clear(struct strbuf *text, const struct segment *segment,
                        const struct task_record *pass)
{
    const double hardly = .03; /* m: "0 ft" at the precision it is told */
    bool any = pass->lane >= hardly;
    strbuf_text(text, any ? ": the ball clears " : ": the ball only just clears ");
    tell_body(text, pass->lane_by);
    strbuf_text(text, "\xE2\x80\x99s hand");
    if (any) {
        strbuf_text(text, " by ");
        play_length(text, segment->play, pass->lane);
    }
    strbuf_char(text, '.');
}

static void watch_passes(struct arena *arena, const struct segment *segment,
                         const watched_list *found, watched_list *out)
{
    size_t nearest = segment->tasks;
    for (size_t i = 0; i < segment->tasks; i++) {
        bool nearer =
            segment_task(segment, i)->kind == TASK_PASS &&
            segment_task(segment, i)->who != BODY_COACH && /* he feeds, and is taught nothing */
            is_seen(segment, segment->record[i].lane_by) &&
            segment->record[i].time[MOMENT_RELEASED] >= 0 &&
            (nearest == segment->tasks || segment->record[i].lane < segment->record[nearest].lane);
        nearest = nearer ? i : nearest;
    }
    if (nearest == segment->tasks || segment->record[nearest].lane < 0 ||
        has_fault(found, "pass.", segment_task(segment, nearest)->who)) {
        return; /* below 0 it is picked off: a check tells that */
    }
    const struct task *pass = segment_task(segment, nearest);
    struct strbuf text;
    strbuf_init(&text, arena);
    tell_body(&text, pass->who);
    strbuf_text(&text, " looks for ");
    tell_body(&text, segment->record[nearest].lane_by);
    strbuf_text(&text, " before the pass to ");
    tell_body(&text, pass->other);
    print_clear(&text, segment, &segment->record[nearest]);
    VEC_PUSH(arena, out, ((struct watched){NULL, 0, strbuf_str(&text)}));
}

void watch_figures(struct arena *arena, const struct segment *segment, const watched_list *found,
                   watched_list *out)
{
    watch_screens(arena, segment, found, out);
    watch_gaps(arena, segment, found, out);
    watch_passes(arena, segment, found, out);
}

/* ---- on paper ---- */

/* The square of a finding with its letter: filled for a warning, outlined for a note. */
static void put_square(const struct setter *setter, struct galley *galley,
                       const struct watched *watched, double x, double base)
{
    bool filled = watched->finding->severity != SEVERITY_NOTE;
    double top = base - SQUARE + 1.9;
    galley_box(galley, vec2_of(x + 0.5, top), vec2_of(x + 0.5 + SQUARE, top + SQUARE), 1.1,
               ROLE_INK, filled ? FILL_ROLE : FILL_OPEN);
    galley_keep(galley);
    struct str letter = str_format(setter->arena, "%c", (char)('A' + watched->letter % 26));
    const struct text_block *words = words_set(setter, TYPE_DISC, letter, 0);
    galley_text(galley, words, x + 0.5 + SQUARE / 2 - text_width(words) / 2, base - 0.3,
                filled ? ROLE_PAGE : ROLE_TEXT);
    galley_keep(galley);
}

double watch_set(const struct setter *setter, struct galley *galley, const watched_list *list,
                 double width, double pitch, size_t across, double top)
{
    double base = top + TO_FIRST, last = top;
    for (size_t i = 0; i < list->count; i++) {
        const struct watched *watched = &list->at[i];
        if (i > 0 && i % across == 0) {
            base = last + TO_NEXT;
        }
        double x = (double)(i % across) * pitch;
        if (watched->finding) {
            put_square(setter, galley, watched, x, base);
        } else {
            galley_text(galley, words_set(setter, TYPE_POINT, STR("\xE2\x80\x93"), 0), x + 3, base,
                        ROLE_TEXT);
            galley_keep(galley);
        }
        double end =
            galley_text(galley, words_set(setter, TYPE_POINT, watched->text, width - INDENT),
                        x + INDENT, base, ROLE_TEXT);
        last = end > last ? end : last;
    }
    return last;
}
