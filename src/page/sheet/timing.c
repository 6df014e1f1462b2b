/* SPDX-License-Identifier: MIT */
/* timing: see timing.h. Takes a segment, gives a strip; must not know the page. A run is a white
 * box, a screen that stands a tinted one with a heavy edge, the ball a line from holder to holder,
 * broken while it flies. */
#include "page/sheet/timing.h"

#include <math.h>

#include "language/tell/tell.h"
#include "page/sheet/bands.h"

#define HOLDER 6.2     /* radius of the ring round who has the ball */
#define DISC_ROOM 13.0 /* a box narrower than this has no disc */
#define SHORTEST 0.05  /* s: what is shorter is not shown */

struct timing_form {
    double labels; /* the column of the lanes' names */
    double pitch;  /* from lane to lane */
    double bar;    /* how high a box is */
    double least;  /* between two labels of the scale, and a second whose half has a line */
    struct str ball;
    bool still; /* tells who stands all the while */
};
const struct timing_form timing_whole = {34, 16, 11, 26, {"Ball", 4}, true};
/* A column's: its sentences tell who stays (sizes ours). */
const struct timing_form timing_column = {28, 14, 11, 24, {"Ball", 4}, false};

struct strip {
    const struct timing_form *form;
    double wide;
    const struct setter *setter;
    const struct segment *segment;
    struct galley *galley;
    double seconds; /* of the scale */
    double top;     /* of the lane being filled */
};

static double at_time(const struct strip *strip, double t)
{
    t = t < 0 ? 0 : t > strip->seconds ? strip->seconds : t;
    return strip->form->labels + (strip->wide - strip->form->labels) * t / strip->seconds;
}

static double middle(const struct strip *strip)
{
    return strip->top + strip->form->pitch / 2;
}

static const struct text_block *set(const struct strip *strip, enum type type, struct str text)
{
    return words_set(strip->setter, type, text, 0);
}

/* ---- the scale ---- */

static void put_second(struct strip *strip, int second, double base)
{
    struct str text = second == 0 ? STR("0") : str_format(strip->setter->arena, "%d s", second);
    const struct text_block *words = set(strip, TYPE_NOTE, text);
    double x = at_time(strip, second), half = text_width(words) / 2;
    x = x + half > strip->wide ? strip->wide - half : x;
    galley_text(strip->galley, words, x - half, base, ROLE_SOFT);
}

static void put_scale(struct strip *strip, double bottom)
{
    const double least = strip->form->least;
    double second = at_time(strip, 1) - at_time(strip, 0);
    int every = 1;
    while (every * second < least) {
        every = every == 1 ? 2 : every == 2 ? 5 : every * 2;
    }
    for (int half = 0; half <= 2 * (int)strip->seconds; half++) {
        double x = at_time(strip, half / 2.0);
        if (half % 2 == 0 || second > least) {
            galley_rule(strip->galley, vec2_of(x, 0), vec2_of(x, bottom), half % 2 ? 0.3 : 0.6,
                        ROLE_HAIRLINE);
        }
        if (half % (2 * every) == 0) {
            put_second(strip, half / 2, bottom + 10);
        }
    }
}

/* The lane's name, and a dotted line along it. */
static void open_lane(struct strip *strip, struct str name)
{
    galley_text(strip->galley, set(strip, TYPE_SMALL_HEADING, name), 0, middle(strip) + 3.4,
                ROLE_TEXT);
    galley_dots(strip->galley, vec2_of(strip->form->labels, middle(strip)),
                vec2_of(strip->wide, middle(strip)), 0.6, ROLE_RULE);
}

/* ---- the ball ---- */

static void put_disc(struct strip *strip, int order, double x)
{
    struct str number = str_format(strip->setter->arena, "%d", order);
    galley_disc(strip->galley, set(strip, TYPE_DISC, number), x, middle(strip), ROLE_ORDER);
}

static void put_holder(struct strip *strip, body holder, double t)
{
    double x = at_time(strip, t);
    struct strbuf name;
    strbuf_init(&name, strip->setter->arena);
    if (holder == BODY_COACH) {
        strbuf_char(&name, 'C');
    } else {
        body_print(&name, holder);
    }
    const struct text_block *words = set(strip, TYPE_DISC, strbuf_str(&name));
    galley_dot(strip->galley, vec2_of(x, middle(strip)), HOLDER, ROLE_INK, FILL_OPEN);
    galley_text_middle(strip->galley, words, x, middle(strip) + 2.9, ROLE_TEXT);
}

static int order_of(const struct segment *segment, int task)
{
    return task >= 0 && (size_t)task < segment->tasks ? segment_task(segment, (size_t)task)->order
                                                      : 0;
}

/* The lines first, then what stands on them. */
static void put_ball(struct strip *strip)
{
    const struct segment *segment = strip->segment;
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        double to = span->to < segment->duration ? span->to : segment->duration;
        if (span->state == BALL_HELD) {
            galley_rule(strip->galley, vec2_of(at_time(strip, span->from), middle(strip)),
                        vec2_of(at_time(strip, to), middle(strip)), 1.3, ROLE_INK);
        } else if (span->state == BALL_FLIGHT || span->state == BALL_SHOT) {
            galley_dashes(strip->galley, vec2_of(at_time(strip, span->from), middle(strip)),
                          vec2_of(at_time(strip, to), middle(strip)), 1.3, ROLE_INK);
        }
    }
    for (size_t i = 0; i < segment->ball.count; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        int order = order_of(segment, span->task);
        bool flies = span->state == BALL_FLIGHT || span->state == BALL_SHOT;
        if (span->state == BALL_HELD && span->from < segment->duration) {
            put_holder(strip, span->holder, span->from);
        } else if (flies && order > 0 &&
                   at_time(strip, span->to) - at_time(strip, span->from) > 2 * HOLDER + DISC_ROOM) {
            put_disc(strip, order, (at_time(strip, span->from) + at_time(strip, span->to)) / 2);
        }
    }
}

/* ---- one attacker ---- */

/* When he starts the next thing of his own after t. */
static double next_start(const struct segment *segment, body who, double t)
{
    double next = segment->duration;
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        double start = segment->record[i].time[MOMENT_STARTED];
        bool own = task->who == who && task->kind != TASK_PASS && task->kind != TASK_EXCHANGE &&
                   task->kind != TASK_SHOOT && !task->stay;
        if (own && start > t + SHORTEST && start < next) {
            next = start;
        }
    }
    return next;
}

/* "run to a spot 4": the figure of a measure that is cut off. */
static struct str without_figure(struct str text)
{
    const struct str spot = STR(" spot ");
    size_t end = text.size;
    while (end > 0 &&
           ((text.at[end - 1] >= '0' && text.at[end - 1] <= '9') || text.at[end - 1] == '.')) {
        end--;
    }
    bool cut = end < text.size && end >= spot.size &&
               str_equal((struct str){text.at + end - spot.size, spot.size}, spot);
    return cut ? (struct str){text.at, end - 1} : text;
}

/* Without a last word that wants another: "flash to the nail of", "cut to the right", "run to a".
 */
static struct str whole_words(struct str text)
{
    static const char *const ends[] = {
        " to",     " for",    " off",    " of",      " at",   " on",    " the",     " left",
        " right",  " toward", " and",    " between", " half", " short", " halfway", " a",
        " a spot", " from",   " inside", " outside", " ft",   " m"};
    text = without_figure(text);
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        struct str end = str_of(ends[i]);
        if (text.size > end.size &&
            str_equal((struct str){text.at + text.size - end.size, end.size}, end)) {
            return whole_words((struct str){text.at, text.size - end.size});
        }
    }
    return text;
}

/* "cut to the left wing" of "3's cut to the left wing"; what does not fit in `room` goes from the
 * end on, word by word, down to the first. */
static const struct text_block *fitting(const struct strip *strip, struct str told, double room)
{
    size_t begin = 0;
    while (begin < told.size && told.at[begin] != ' ') {
        begin++;
    }
    begin = begin < told.size ? begin + 1 : 0;
    struct str text = {told.at + begin, told.size - begin};
    while (text.size > 0) {
        const struct text_block *words = set(strip, TYPE_NOTE, text);
        if (text_width(words) <= room) {
            return words;
        }
        size_t cut = text.size;
        while (cut > 0 && text.at[cut - 1] != ' ') {
            cut--;
        }
        text = whole_words((struct str){text.at, cut > 0 ? cut - 1 : 0});
    }
    return NULL;
}

static void put_box(struct strip *strip, double from, double to, int order, struct str told)
{
    double x = at_time(strip, from), x2 = at_time(strip, to),
           y = middle(strip) - strip->form->bar / 2;
    galley_box(strip->galley, vec2_of(x, y), vec2_of(x2, y + strip->form->bar), 1.1, ROLE_INK,
               FILL_OPEN);
    bool disc = order > 0 && x2 - x >= DISC_ROOM;
    if (disc) {
        put_disc(strip, order, x + 6.6);
    }
    double left = x + (disc ? 14.5 : 4);
    const struct text_block *words = fitting(strip, told, x2 - 3 - left);
    if (words) {
        galley_text(strip->galley, words, left, middle(strip) + 2.9, ROLE_TEXT);
    }
}

/* A screen that stands: tinted, with a heavy edge where it was set. */
static void put_set(struct strip *strip, double from, double to)
{
    double x = at_time(strip, from), x2 = at_time(strip, to),
           y = middle(strip) - strip->form->bar / 2;
    galley_box(strip->galley, vec2_of(x, y), vec2_of(x2, y + strip->form->bar), 0.6, ROLE_INK,
               FILL_LIGHT);
    galley_rule(strip->galley, vec2_of(x, y - 1.6), vec2_of(x, y + strip->form->bar + 1.6), 2.2,
                ROLE_INK);
    const struct text_block *words = set(strip, TYPE_NOTE, STR("set"));
    if (x2 - x > text_width(words) + 7) {
        galley_text(strip->galley, words, x + 5, middle(strip) + 2.9, ROLE_TEXT);
    }
}

static double least_of(double a, double b)
{
    return b >= 0 && b < a ? b : a;
}

static struct str lane_name(struct arena *arena, body who)
{
    return who == BODY_COACH ? STR("Coach") : str_format(arena, "%d", body_number(who));
}

static bool takes_time(const struct task *task)
{
    return task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE ||
           task->kind == TASK_SCREEN || (task->kind == TASK_HOLD && !task->stay);
}

static void put_task(struct strip *strip, size_t index)
{
    const struct segment *segment = strip->segment;
    const struct task *task = segment_task(segment, index);
    const struct task_record *record = &segment->record[index];
    double start = record->time[MOMENT_STARTED];
    if (!takes_time(task) || start < 0) {
        return;
    }
    double next = next_start(segment, task->who, start), set = record->time[MOMENT_SET];
    bool stands = task->kind == TASK_SCREEN && set >= 0;
    double end = stands ? set : least_of(next, record->time[MOMENT_ARRIVED]);
    if (end - start > SHORTEST) {
        const struct step *step = &segment->play->steps.at[segment->step];
        put_box(strip, start, end, task->order,
                tell_thing(strip->setter->arena, segment->play, step, segment->branch, index));
    }
    double used = least_of(next_start(segment, task->who, set), record->time[MOMENT_USED]);
    if (stands && used - set > SHORTEST) {
        put_set(strip, set, used);
    }
}

static bool is_lane(const struct segment *segment, body who)
{
    return body_is_attacker(who) && segment->track[who].on_floor;
}

/* Has he anything that takes time? */
static bool is_busy(const struct segment *segment, body who)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->who == who && takes_time(task) && segment->record[i].time[MOMENT_STARTED] >= 0) {
            return true;
        }
    }
    return false;
}

static void put_player(struct strip *strip, body who)
{
    for (size_t i = 0; i < strip->segment->tasks; i++) {
        if (segment_task(strip->segment, i)->who == who) {
            put_task(strip, i);
        }
    }
}

/* "3 stays on the left wing, ", behind the first without the verb. */
static void print_still(const struct strip *strip, struct strbuf *out, body who)
{
    bool first = out->size == 0;
    strbuf_text(out, first ? "" : ", ");
    tell_body(out, who);
    strbuf_text(out, first ? " stays " : " ");
    tell_at(out, strip->segment->play, segment_at(strip->segment, who, 0));
}

/* Who stands where all the while, in one line without a lane: "2 stays on the right wing, 4 in the
 * right corner." */
static const struct text_block *still_words(const struct strip *strip)
{
    struct strbuf out;
    strbuf_init(&out, strip->setter->arena);
    for (body who = 0; who <= BODY_COACH; who++) {
        if (is_lane(strip->segment, who) && !is_busy(strip->segment, who)) {
            print_still(strip, &out, who);
        }
    }
    strbuf_char(&out, '.');
    struct str text = str_capital(strip->setter->arena, strbuf_str(&out)); /* "the coach" */
    return words_set(strip->setter, TYPE_NOTE, text, strip->wide);
}

/* How far its further lines reach down. */
static double still_more(const struct text_block *words)
{
    return type_leading(TYPE_NOTE) * (double)(text_lines(words) - 1);
}

static void put_still(struct strip *strip, const struct text_block *words)
{
    double y = middle(strip);
    galley_box(strip->galley, vec2_of(0, y - 5),
               vec2_of(text_width(words) + 2, y + 5 + still_more(words)), 0, ROLE_PAGE, FILL_ROLE);
    galley_text(strip->galley, words, 0, y + 2.9, ROLE_SOFT);
}

/* ---- all of it ---- */

bool timing_holds(const struct segment *segment)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (body_is_attacker(task->who) && task->kind != TASK_HOLD &&
            segment->record[i].time[MOMENT_STARTED] >= 0) {
            return true;
        }
    }
    return false;
}

bool timing_has_set(const struct segment *segment)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        if (segment_task(segment, i)->kind == TASK_SCREEN &&
            segment->record[i].time[MOMENT_SET] >= 0) {
            return true;
        }
    }
    return false;
}

struct galley *timing_set(const struct setter *setter, const struct segment *segment,
                          const struct timing_form *form, double wide)
{
    struct strip strip = {.form = form,
                          .wide = wide,
                          .setter = setter,
                          .segment = segment,
                          .galley = galley_new(setter->arena),
                          .seconds = ceil(segment->duration - 1e-9)};
    strip.seconds = strip.seconds < 1 ? 1 : strip.seconds;
    size_t busy = 0, still = 0;
    for (body who = 0; who <= BODY_COACH; who++) {
        busy += is_lane(segment, who) && is_busy(segment, who);
        still += form->still && is_lane(segment, who) && !is_busy(segment, who);
    }
    const struct text_block *words = still > 0 ? still_words(&strip) : NULL;
    double lanes = (double)((segment->ball.count > 0) + busy + (still > 0));
    put_scale(&strip, lanes * form->pitch + (words ? still_more(words) : 0));
    if (segment->ball.count > 0) {
        open_lane(&strip, strip.form->ball);
        put_ball(&strip);
        strip.top += form->pitch;
    }
    for (body who = 0; who <= BODY_COACH; who++) {
        if (is_lane(segment, who) && is_busy(segment, who)) {
            open_lane(&strip, lane_name(setter->arena, who));
            put_player(&strip, who);
            strip.top += form->pitch;
        }
    }
    if (words) {
        put_still(&strip, words);
    }
    return strip.galley;
}
