/* SPDX-License-Identifier: MIT */
/* questions: the words of a fill-in sheet: what is asked about each player's missing lines, and
 * the sentences that answer it. */
#include "language/tell/tell.h"
#include "page/sheet/asking.h"

#include <string.h>

/* ---- what is to be drawn ---- */

static bool opens_line(const struct looking *looking, const bool *tasks, size_t index)
{
    if (!tasks[index] || !task_is_drawn(looking, index)) {
        return false;
    }
    for (size_t i = 0; i < index; i++) {
        if (tasks[i] && looking->line[i] == looking->line[index]) {
            return false;
        }
    }
    return true;
}

/* The next line of these to be drawn after the one that `after` opens (end: the first), by when it
 * begins. */
static size_t next_line(const struct looking *looking, const bool *tasks, size_t after)
{
    size_t next = looking->end;
    for (size_t i = 0; i < looking->end; i++) {
        double at = task_began(looking, i);
        bool later = after == looking->end || at > task_began(looking, after) ||
                     (at == task_began(looking, after) && i > after);
        if (opens_line(looking, tasks, i) && later &&
            (next == looking->end || at < task_began(looking, next))) {
            next = i;
        }
    }
    return next;
}

/* Another one's line behind those of `who`: what is done with the ball is done by who has it then,
 * and who that is would tell whom it was passed to. */
static bool is_handed_on(const struct task *task, body who)
{
    bool takes = task->kind == TASK_EXCHANGE && task->other == who;
    return task->who != who && !takes;
}

/* "Draw the three passes."; false: they are not all of one kind. */
static bool print_draw_all(struct strbuf *out, const struct looking *looking, const bool *tasks)
{
    static const char *const counts[] = {"", "", "two", "three", "four", "five", "six"};
    const char *word = NULL;
    size_t count = 0;
    for (size_t i = next_line(looking, tasks, looking->end); i < looking->end;
         i = next_line(looking, tasks, i)) {
        const char *own = scene_key_word(line_class_of(looking, i), true);
        if ((word && strcmp(word, own) != 0) || task_of(looking, i)->kind == TASK_EXCHANGE) {
            return false;
        }
        word = own;
        count++;
    }
    if (count < 2 || count >= sizeof counts / sizeof *counts) {
        return false;
    }
    bool hisses = word[strlen(word) - 1] == 's';
    strbuf_print(out, "Draw the %s %s%s.", counts[count], word, hisses ? "es" : "s");
    return true;
}

/* "Draw a run, then the hand-off from 1, then a shot by whoever has the ball.", in the words of the
 * key; `who` is to do it. */
static void print_draw(struct strbuf *out, const struct looking *looking, const bool *tasks,
                       body who)
{
    const char *before = "Draw";
    if (print_draw_all(out, looking, tasks)) {
        return;
    }
    for (size_t i = next_line(looking, tasks, looking->end); i < looking->end;
         i = next_line(looking, tasks, i)) {
        const struct task *task = task_of(looking, i);
        bool takes = task->kind == TASK_EXCHANGE && task->other == who;
        strbuf_print(out, "%s %s %s", before, takes ? "the" : "a",
                     scene_key_word(line_class_of(looking, i), true));
        if (takes) {
            strbuf_text(out, " from ");
            tell_body(out, task->who);
        }
        strbuf_text(out, is_handed_on(task, who) ? " by whoever has the ball" : "");
        before = ", then";
    }
    strbuf_char(out, '.');
}

/* ---- questions ---- */

/* "5 screens", or of a stagger "5 and 4 screen". */
static void print_screeners(struct strbuf *out, const struct task *task)
{
    bool two = task->kind == TASK_USE && task->other2 != BODY_NONE;
    tell_body(out, task->other);
    if (two) {
        strbuf_text(out, " and ");
        tell_body(out, task->other2);
    }
    strbuf_text(out, two ? " screen" : " screens");
}

/* "$" stands for who does it, "&" for the other of the task, "^" for who screens for him and that
 * they do, "@" for what the read is of. */
static void print_question(struct strbuf *out, const char *text, const struct looking *looking,
                           const struct task *task)
{
    for (; *text; text++) {
        if (*text == '$' || *text == '&') {
            tell_body(out, *text == '$' ? task->who : task->other);
        } else if (*text == '^') {
            print_screeners(out, task);
        } else if (*text == '@') {
            strbuf_add(out, tell_conditions(looking->arena, looking->branch));
        } else {
            strbuf_char(out, *text);
        }
    }
}

/* Is the way there told, and not only where it ends? */
static bool is_way_told(const struct task *task)
{
    return task->path != PATH_NONE ||
           (task->shape != SHAPE_STRAIGHT && task->shape != SHAPE_DRIVE && task->shape != SHAPE_AT);
}

/* Did this one leave the screen that he went for before it was set? */
static bool slips(const struct looking *looking, body who)
{
    for (size_t i = 0; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        if (task->who == who && task->kind == TASK_SCREEN &&
            looking->diagram->segment->record[i].time[MOMENT_SET] < 0) {
            return true;
        }
    }
    return false;
}

/* Is there a screen for who comes off it? One may be told to go past somebody who stands there. */
static bool is_screened(const struct looking *looking, const struct task *use)
{
    for (size_t i = 0; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        if (task->kind == TASK_SCREEN && (task->who == use->other || task->who == use->other2)) {
            return true;
        }
    }
    return false;
}

static const char *topic_question(const struct looking *looking, enum topic topic, size_t index,
                                  bool more)
{
    const struct task *asked = task_of(looking, index);
    bool screen = topic == TOPIC_SCREENER || topic == TOPIC_SCREEN;
    if ((screen && slips(looking, asked->who)) ||
        (topic == TOPIC_USE && slips(looking, asked->other))) {
        return "What does $ do? "; /* there is no screen to tell of */
    }
    switch (topic) {
    case TOPIC_SCREENER:
        return looking_is_read(looking) ? "$ has set the screen, and @. What does $ do next? "
                                        : "$ has set the screen. What does $ do next? ";
    case TOPIC_USE:
        if (!is_screened(looking, asked)) {
            return more ? "$ goes past &. What does $ do? "
                        : "$ goes past &. Which way, and where does $ stop? ";
        }
        return more ? "^ for $. What does $ do? " : "^ for $. Which way does $ go? ";
    case TOPIC_SCREEN:
        return more ? "$ screens for &. Where, and what does $ do then? "
                    : "$ screens for &. Where does $ stop? ";
    case TOPIC_PASS:
        return more ? "$ gives up the ball. Who gets it, and what then? "
                    : "$ gives up the ball. Who gets it, and where? ";
    case TOPIC_PLACE:
        if (!more && is_way_told(asked)) {
            return "$ is on the move. Which way, and where does $ stop? ";
        }
        return more ? "What does $ do? " : "$ is on the move. Where does $ stop? ";
    default:
        return "What does $ do? ";
    }
}

/* Of a line that is missing with what a topic asks for. */
static const char *other_question(const struct looking *looking, size_t index, bool more)
{
    const struct task *task = task_of(looking, index);
    if (more) {
        return task->kind == TASK_PASS ? "$ gives up the ball. Who gets it, and what then? "
                                       : "And what does $ do? ";
    }
    switch (task->kind) {
    case TASK_PASS:
        return tell_says_when(looking->arena, looking->play, looking->step,
                              looking->diagram->branch, index)
                   ? "To whom does $ pass, where, and when? "
                   : "To whom does $ pass, and where? ";
    case TASK_EXCHANGE:
        return "Who gets the ball from $? ";
    case TASK_USE:
        return "Which way does $ go then? ";
    case TASK_SHOOT:
        return "What does $ do with the ball? ";
    default:
        return "Where does $ go? ";
    }
}

/* ---- answers ---- */

/* Has a sentence before, of the same answer, told where this one runs? One catch has one place. */
static bool runs_to_a_place(const struct looking *looking, const bool *tasks, size_t before,
                            body who)
{
    for (size_t i = before; i-- > 0;) {
        const struct task *task = task_of(looking, i);
        if (tasks[i] && task->who == who && task_is_way(task)) {
            return task->kind != TASK_SCREEN && task->goal.kind != GOAL_NONE;
        }
    }
    return false;
}

/* Where a cut to the rim ends: of such a catch no block or short corner is asked. */
static bool is_near_rim(struct vec2 at)
{
    const double near = 2.6; /* m, from the middle of the ring, which is (0, 0) */
    return vec2_length(at) < near;
}

/* He runs to a spot that has a name: to the block, of which it is said so. */
static bool runs_to_a_spot(const struct looking *looking, size_t before, body who)
{
    for (size_t i = before; i-- > 0;) {
        const struct task *task = task_of(looking, i);
        if (task->who == who && task_is_way(task)) {
            return task->goal.kind == GOAL_POINT && task->goal.spot != SPOT_COUNT &&
                   task->goal.spot != SPOT_RIM;
        }
    }
    return false;
}

/* Where a ball is caught and a screen stands, which their sentences leave to the floor: "2 gets it
 * on the left wing." */
static void print_where(struct strbuf *out, const struct looking *looking, const bool *tasks,
                        size_t index)
{
    const struct task *task = task_of(looking, index);
    const struct task_record *record = &looking->diagram->segment->record[index];
    bool throws = task->kind == TASK_PASS && record->time[MOMENT_CAUGHT] >= 0 &&
                  !runs_to_a_place(looking, tasks, index, task->other);
    bool screens = task->kind == TASK_SCREEN && record->time[MOMENT_SET] >= 0;
    if (throws || (screens && !task->goal_written)) {
        struct strbuf told;
        strbuf_init(&told, looking->arena);
        tell_body(&told, throws ? task->other : task->who);
        strbuf_text(&told, throws ? " gets it " : " stops ");
        if (throws && is_near_rim(record->to) && !runs_to_a_spot(looking, index, task->other)) {
            strbuf_text(&told, "near the rim");
        } else {
            tell_at(&told, looking->play, record->to);
        }
        strbuf_print(out, " %.*s.", STR_ARG(str_capital(looking->arena, strbuf_str(&told))));
    }
}

/* The sentences of what is missing, each once. `where`: it is one line, and where it ends is asked.
 */
static struct str answer_of(const struct looking *looking, const bool *tasks, bool where)
{
    struct strbuf out;
    strbuf_init(&out, looking->arena);
    const struct sentence *told = NULL;
    for (size_t i = 0; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        if (!tasks[i] || (told && task->sentence == told)) {
            continue;
        }
        size_t opens = i; /* a sentence is told at its first task */
        while (opens > 0 && task->sentence &&
               task_of(looking, opens - 1)->sentence == task->sentence) {
            opens--;
        }
        struct str text = (out.size > 0 ? tell_task : tell_task_first)(
            looking->arena, looking->play, looking->step, looking->diagram->branch, opens);
        told = task->sentence;
        strbuf_print(&out, "%s%.*s", out.size > 0 && text.size > 0 ? " " : "", STR_ARG(text));
        if (where) {
            print_where(&out, looking, tasks, i);
        }
    }
    return strbuf_str(&out);
}

/* ---- blanks ---- */

static bool runs_in(const struct looking *looking, const bool *missing, body who)
{
    for (size_t i = 0; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        if (missing[i] && task->who == who && task_is_way(task)) {
            return true;
        }
    }
    return false;
}

/* Whose blank a missing task is of: a hand-off goes with the one of the two who has to be drawn;
 * what is done with a ball whose pass is missing goes with the pass, else it would say who gets it.
 */
static body owner_of(const struct looking *looking, const bool *missing, size_t index)
{
    const struct task *task = task_of(looking, index);
    for (size_t pass = 0; pass < index; pass++) {
        if (missing[pass] && task_of(looking, pass)->kind == TASK_PASS &&
            task_tells_of_pass(looking, pass, index)) {
            return owner_of(looking, missing, pass);
        }
    }
    bool taken = task->kind == TASK_EXCHANGE && !runs_in(looking, missing, task->who) &&
                 runs_in(looking, missing, task->other);
    return taken ? task->other : task->who;
}

static void add_blank(const struct looking *looking, enum topic topic, size_t index,
                      const bool *missing, body who, blank_list *out)
{
    bool *tasks = arena_array(looking->arena, bool, looking->diagram->segment->tasks + 1);
    for (size_t i = 0; i < looking->end; i++) {
        tasks[i] = missing[i] && (topic == TOPIC_PASS || owner_of(looking, missing, i) == who);
    }
    size_t first = next_line(looking, tasks, looking->end);
    if (first == looking->end) {
        return; /* nothing of it can be seen */
    }
    struct blank blank = {.who = who, .tasks = tasks, .first = first};
    blank.lines = missing_lines(looking, tasks);
    bool lead = topic == TOPIC_PASS || owner_of(looking, missing, index) == who;
    const char *text = lead ? topic_question(looking, topic, index, blank.lines > 1)
                            : other_question(looking, first, blank.lines > 1);
    struct strbuf question;
    strbuf_init(&question, looking->arena);
    print_question(&question, text, looking, task_of(looking, lead ? index : first));
    print_draw(&question, looking, tasks, who);
    blank.question = str_capital(looking->arena, strbuf_str(&question)); /* "the coach" */
    blank.answer = answer_of(looking, tasks, blank.lines == 1);
    VEC_PUSH(looking->arena, out, blank);
}

void blanks_of(const struct looking *looking, enum topic topic, size_t index, const bool *missing,
               blank_list *out)
{
    if (topic == TOPIC_PASS) {
        add_blank(looking, topic, index, missing, task_of(looking, index)->who, out);
        return;
    }
    bool done[BODY_COUNT] = {false};
    for (size_t i = 0; i < looking->end; i++) {
        if (missing[i]) {
            body owner = owner_of(looking, missing, i);
            if (!done[owner]) {
                add_blank(looking, topic, index, missing, owner, out);
            }
            done[owner] = true;
        }
    }
}

/* ---- headings ---- */

bool looking_is_read(const struct looking *looking)
{
    return looking->branch && looking->branch->kind == BRANCH_READ &&
           looking->branch->conditions.count > 0 &&
           looking->branch->conditions.at[0].kind != COND_OTHERWISE;
}

struct str asked_title(const struct looking *looking)
{
    if (looking->branch) {
        struct str conditions = tell_conditions(looking->arena, looking->branch);
        if (looking->branch->kind == BRANCH_READ && !looking_is_read(looking)) {
            return STR("Otherwise");
        }
        return conditions.size > 0 ? conditions : looking->branch->title;
    }
    return looking->step->title;
}
