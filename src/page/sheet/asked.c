/* SPDX-License-Identifier: MIT */
/* asked: see asked.h. */
#include "page/sheet/asked.h"

#include <string.h>

#include "base/rng.h"
#include "language/tell/tell.h"

/* What can be asked, the most telling first. */
enum topic {
    TOPIC_READ,     /* what the defender's deed means */
    TOPIC_SCREENER, /* what a screener does next */
    TOPIC_USE,      /* which way round a screen */
    TOPIC_SCREEN,   /* where a screen is set */
    TOPIC_PASS,     /* who gets the ball */
    TOPIC_PLACE,    /* where to stop */
    TOPIC_COUNT
};
struct topic_at {
    enum topic topic;
    size_t task;
};
typedef VEC(struct topic_at) topic_list;

/* One diagram while it is looked through. */
struct looking {
    struct arena *arena;
    const struct play *play;
    const struct diagram *diagram;
    const struct step *step;
    const struct branch *branch; /* or NULL */
    size_t first, end;           /* its own tasks */
};

static struct looking look_at(struct arena *arena, const struct play *play,
                              const struct diagram *diagram)
{
    const struct step *step = &play->steps.at[diagram->step];
    bool way = diagram->branch >= 0;
    return (struct looking){.arena = arena,
                            .play = play,
                            .diagram = diagram,
                            .step = step,
                            .branch = way ? &step->branches.at[diagram->branch] : NULL,
                            .first = way ? step->tasks.count : 0,
                            .end = step_task_count(step, diagram->branch)};
}

static const struct task *task_of(const struct looking *looking, size_t index)
{
    return step_task(looking->step, looking->diagram->branch, index);
}

static bool happens(const struct looking *looking, size_t index)
{
    const struct task *task = task_of(looking, index);
    return body_is_attacker(task->who) && task->order > 0 && !task->stay &&
           looking->diagram->segment->record[index].time[MOMENT_STARTED] >= 0;
}

static bool is_run(const struct task *task)
{
    return task->kind == TASK_MOVE || task->kind == TASK_CARRY;
}

static bool has_screened(const struct looking *looking, size_t before, body who)
{
    for (size_t i = 0; i < before; i++) {
        if (task_of(looking, i)->who == who && task_of(looking, i)->kind == TASK_SCREEN) {
            return true;
        }
    }
    return false;
}

/* A read that a defender decides; what is left over is no read of anybody. */
static bool is_read(const struct looking *looking)
{
    return looking->branch && looking->branch->kind == BRANCH_READ &&
           looking->branch->conditions.count > 0 &&
           looking->branch->conditions.at[0].kind != COND_OTHERWISE;
}

static enum topic topic_of(const struct looking *looking, size_t index)
{
    const struct task *task = task_of(looking, index);
    if (is_run(task) && has_screened(looking, index, task->who)) {
        return TOPIC_SCREENER;
    }
    switch (task->kind) {
    case TASK_USE:
        return TOPIC_USE;
    case TASK_SCREEN:
        return TOPIC_SCREEN;
    case TASK_PASS:
    case TASK_EXCHANGE:
        return TOPIC_PASS;
    case TASK_MOVE:
    case TASK_CARRY:
        return TOPIC_PLACE;
    default:
        return TOPIC_COUNT;
    }
}

static bool gives(const struct task *task)
{
    return task->kind == TASK_PASS || task->kind == TASK_EXCHANGE;
}

/* Who answers a read: who gets the ball last, of those who run for it; BODY_NONE: nobody does. */
static body answerer_of(const struct looking *looking)
{
    body answerer = BODY_NONE;
    for (size_t i = looking->first; i < looking->end; i++) {
        const struct task *pass = task_of(looking, i);
        for (size_t k = looking->first; k < i && happens(looking, i) && gives(pass); k++) {
            const struct task *run = task_of(looking, k);
            bool his = happens(looking, k) && run->who == pass->other && !gives(run);
            answerer = his ? run->who : answerer;
        }
    }
    return answerer;
}

static void topics_of(const struct looking *looking, topic_list *out)
{
    bool read = is_read(looking);
    body answerer = read ? answerer_of(looking) : BODY_NONE;
    for (size_t i = looking->first; i < looking->end; i++) {
        if (!happens(looking, i)) {
            continue;
        }
        enum topic topic = topic_of(looking, i);
        bool his = answerer == BODY_NONE || task_of(looking, i)->who == answerer;
        if (read && his && topic != TOPIC_COUNT && topic != TOPIC_PASS) {
            topic = TOPIC_READ;
            read = false;
        }
        if (topic != TOPIC_COUNT) {
            VEC_PUSH(looking->arena, out, ((struct topic_at){topic, i}));
        }
    }
}

static enum topic best_topic(const topic_list *topics, enum topic after)
{
    enum topic best = TOPIC_COUNT;
    for (size_t i = 0; i < topics->count; i++) {
        enum topic topic = topics->at[i].topic;
        best = topic > after && topic < best ? topic : best;
    }
    return best;
}

/* Mostly of the most telling topic there is, now and then of the next. */
static struct topic_at pick_topic(const topic_list *topics, struct rng *rng)
{
    enum topic best = TOPIC_COUNT;
    for (size_t i = 0; i < topics->count; i++) {
        best = topics->at[i].topic < best ? topics->at[i].topic : best;
    }
    enum topic next = best_topic(topics, best);
    bool other = rng_below(rng, 3) == 0 && next != TOPIC_COUNT && best != TOPIC_READ;
    enum topic wanted = other ? next : best;
    uint32_t count = 0;
    for (size_t i = 0; i < topics->count; i++) {
        count += topics->at[i].topic == wanted;
    }
    uint32_t place = rng_below(rng, count);
    for (size_t i = 0; i < topics->count; i++) {
        if (topics->at[i].topic == wanted && place-- == 0) {
            return topics->at[i];
        }
    }
    return topics->at[0];
}

/* ---- what is taken away ---- */

/* What he runs stands in one line: all of it goes, of a screener what he does from there on. The
 * pass to him would give it away. */
static bool *take_away(const struct looking *looking, struct topic_at at)
{
    const struct task *asked = task_of(looking, at.task);
    bool *missing = arena_array(looking->arena, bool, looking->diagram->segment->tasks + 1);
    for (size_t i = looking->first; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        bool screens = at.topic == TOPIC_SCREENER || at.topic == TOPIC_SCREEN;
        bool own = task->who == asked->who && !gives(task) && task->kind != TASK_SHOOT &&
                   (i >= at.task || !screens);
        bool to = gives(task) && task->other == asked->who;
        missing[i] = happens(looking, i) && (gives(asked) ? i == at.task : own || to);
    }
    return missing;
}

/* Does who comes off a screen have the ball? */
static bool with_ball(const struct task *task)
{
    return strchr(verb_row(task->verb)->needs, 'B') != NULL;
}

/* How it is drawn. */
static enum scene_class line_class(const struct task *task)
{
    switch (task->kind) {
    case TASK_CARRY:
        return CLASS_DRIBBLE;
    case TASK_PASS:
        return CLASS_PASS;
    case TASK_EXCHANGE:
        return CLASS_HANDOFF;
    case TASK_SCREEN:
        return CLASS_SCREEN;
    default:
        return with_ball(task) ? CLASS_DRIBBLE : CLASS_MOVE;
    }
}

/* How many lines of each kind are missing. Runs of one player in a row are one line. */
static void count_lines(const struct looking *looking, const bool *missing, int counts[CLASS_COUNT])
{
    const struct task *last = NULL;
    for (size_t i = looking->first; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        if (!missing[i]) {
            continue;
        }
        bool goes_on =
            last && last->who == task->who && !gives(task) && line_class(last) == line_class(task);
        counts[line_class(task)] += goes_on ? 0 : 1;
        last = task;
    }
}

/* "Draw a screen, a run and a pass.", in the words of the key. */
static struct str draw_words(const struct looking *looking, const bool *missing, size_t *lines)
{
    static const enum scene_class order[] = {CLASS_SCREEN, CLASS_MOVE, CLASS_DRIBBLE, CLASS_PASS,
                                             CLASS_HANDOFF};
    enum { KINDS = sizeof order / sizeof *order };
    int counts[CLASS_COUNT] = {0}, kinds = 0;
    count_lines(looking, missing, counts);
    *lines = 0;
    for (int k = 0; k < KINDS; k++) {
        kinds += counts[order[k]] > 0;
        *lines += (size_t)counts[order[k]];
    }
    struct strbuf out;
    strbuf_init(&out, looking->arena);
    strbuf_text(&out, "Draw ");
    for (int k = 0, told = 0; k < KINDS; k++) {
        int count = counts[order[k]];
        const char *word = scene_key_word(order[k], true);
        if (count == 0) {
            continue;
        }
        strbuf_text(&out, told == 0 ? "" : told + 1 == kinds ? " and " : ", ");
        if (count == 1) {
            strbuf_print(&out, "a %s", word);
        } else {
            strbuf_print(&out, "%d %s%s", count, word, order[k] == CLASS_PASS ? "es" : "s");
        }
        told++;
    }
    strbuf_char(&out, '.');
    return strbuf_str(&out);
}

/* ---- words ---- */

/* "$" stands for who does it, "&" for the other of the task. */
static void print_question(struct strbuf *out, const char *text, const struct task *task)
{
    for (; *text; text++) {
        if (*text == '$' || *text == '&') {
            tell_body(out, *text == '$' ? task->who : task->other);
        } else {
            strbuf_char(out, *text);
        }
    }
}

static struct str question_of(const struct looking *looking, struct topic_at at,
                              const bool *missing)
{
    static const char *const questions[TOPIC_COUNT] = {
        [TOPIC_READ] = "What does $ do?",
        [TOPIC_SCREENER] = "$ has set the screen. What does $ do next?",
        [TOPIC_USE] = "& screens for $. Which way does $ go?",
        [TOPIC_SCREEN] = "$ screens for &. Where does $ stop?",
        [TOPIC_PASS] = "$ gives up the ball. Who gets it, and where?",
        [TOPIC_PLACE] = "$ is on the move. Where does $ stop?",
    };
    const struct task *task = task_of(looking, at.task);
    struct strbuf out;
    strbuf_init(&out, looking->arena);
    if (at.topic == TOPIC_READ) {
        strbuf_print(&out, "%.*s. ", STR_ARG(tell_conditions(looking->arena, looking->branch)));
    }
    print_question(&out, questions[at.topic], task);
    for (size_t i = looking->first; i < looking->end; i++) {
        if (missing[i] && gives(task_of(looking, i)) && !gives(task)) {
            strbuf_text(&out, " Who gives up the ball?");
            break;
        }
    }
    return strbuf_str(&out);
}

/* The sentences of what is missing, each once. */
static struct str answer_of(const struct looking *looking, const bool *missing)
{
    struct strbuf out;
    strbuf_init(&out, looking->arena);
    const struct sentence *told = NULL;
    for (size_t i = looking->first; i < looking->end; i++) {
        const struct task *task = task_of(looking, i);
        if (!missing[i] || (told && task->sentence == told)) {
            continue;
        }
        size_t opens = i; /* a sentence is told at its first task */
        while (opens > looking->first && task->sentence &&
               task_of(looking, opens - 1)->sentence == task->sentence) {
            opens--;
        }
        struct str text = (out.size > 0 ? tell_task : tell_task_first)(
            looking->arena, looking->play, looking->step, looking->diagram->branch, opens);
        told = task->sentence;
        strbuf_print(&out, "%s%.*s", out.size > 0 && text.size > 0 ? " " : "", STR_ARG(text));
    }
    return strbuf_str(&out);
}

static struct str title_of(const struct looking *looking)
{
    if (looking->branch) {
        struct str conditions = tell_conditions(looking->arena, looking->branch);
        if (looking->branch->kind == BRANCH_READ && !is_read(looking)) {
            return STR("Otherwise");
        }
        return conditions.size > 0 ? conditions : looking->branch->title;
    }
    return looking->step->title;
}

/* ---- which diagrams ---- */

/* Asks about one of the topics; keeps the list in the order of the diagrams. */
static void ask(const struct looking *looking, const topic_list *topics, struct rng *rng,
                asked_list *out)
{
    struct topic_at at = pick_topic(topics, rng);
    const bool *missing = take_away(looking, at);
    struct asked asked = {.diagram = looking->diagram,
                          .missing = missing,
                          .title = title_of(looking),
                          .question = question_of(looking, at, missing),
                          .answer = answer_of(looking, missing)};
    asked.draw = draw_words(looking, missing, &asked.lines);
    VEC_PUSH(looking->arena, out, asked);
    for (size_t i = out->count - 1; i > 0 && out->at[i - 1].diagram > out->at[i].diagram; i--) {
        struct asked later = out->at[i - 1];
        out->at[i - 1] = out->at[i];
        out->at[i] = later;
    }
}

/* Has an earlier question about this diagram this task for its answer? */
static bool is_asked(const asked_list *asked, const struct diagram *diagram, size_t task)
{
    for (size_t i = 0; i < asked->count; i++) {
        if (asked->at[i].diagram == diagram && asked->at[i].missing[task]) {
            return true;
        }
    }
    return false;
}

/* What has not been asked yet about a diagram; false: nothing is left. */
static bool ask_next(struct arena *arena, const struct play *play, const struct diagram *diagram,
                     struct rng *rng, asked_list *out)
{
    struct looking looking = look_at(arena, play, diagram);
    topic_list all = {0}, left = {0};
    topics_of(&looking, &all);
    for (size_t i = 0; i < all.count; i++) {
        if (!is_asked(out, diagram, all.at[i].task)) {
            VEC_PUSH(arena, &left, all.at[i]);
        }
    }
    if (left.count > 0) {
        ask(&looking, &left, rng, out);
    }
    return left.count > 0;
}

/* How much a diagram is worth asking about: its best topic. */
static enum topic worth(struct arena *arena, const struct play *play, const struct diagram *diagram)
{
    struct looking looking = look_at(arena, play, diagram);
    topic_list topics = {0};
    topics_of(&looking, &topics);
    enum topic best = TOPIC_COUNT;
    for (size_t i = 0; i < topics.count; i++) {
        best = topics.at[i].topic < best ? topics.at[i].topic : best;
    }
    return best;
}

/* Of the diagrams that are free, of this step (-1: of any), one with the best to ask about. */
static size_t pick_diagram(struct arena *arena, const struct play *play,
                           const diagram_list *diagrams, const bool *chosen, int step,
                           struct rng *rng)
{
    enum topic best = TOPIC_COUNT;
    uint32_t count = 0;
    for (size_t i = 0; i < diagrams->count; i++) {
        bool free = !chosen[i] && (step < 0 || diagrams->at[i].step == step);
        enum topic topic = free ? worth(arena, play, &diagrams->at[i]) : TOPIC_COUNT;
        count = topic < best ? 1 : topic == best && topic != TOPIC_COUNT ? count + 1 : count;
        best = topic < best ? topic : best;
    }
    if (best == TOPIC_COUNT) {
        return diagrams->count;
    }
    uint32_t place = rng_below(rng, count);
    for (size_t i = 0; i < diagrams->count; i++) {
        bool free = !chosen[i] && (step < 0 || diagrams->at[i].step == step);
        if (free && worth(arena, play, &diagrams->at[i]) == best && place-- == 0) {
            return i;
        }
    }
    return diagrams->count;
}

/* ---- what is not drawn ---- */

/* Is this task of a diagram what another question asks for? Ways through a step share its common
 * part, which comes first. */
static bool asks_for(const struct asked *asked, const struct diagram *diagram, size_t task,
                     size_t common)
{
    const struct diagram *own = asked->diagram;
    bool same = own->step == diagram->step && (task < common || own->branch == diagram->branch);
    return same && task < own->segment->tasks && asked->missing[task];
}

/* What one question asks for no other picture may show. */
static void put_away(struct arena *arena, const struct play *play, asked_list *list)
{
    for (size_t i = 0; i < list->count; i++) {
        struct asked *asked = &list->at[i];
        size_t tasks = asked->diagram->segment->tasks;
        size_t common = play->steps.at[asked->diagram->step].tasks.count;
        bool *away = arena_array(arena, bool, tasks + 1);
        for (size_t task = 0; task < tasks; task++) {
            for (size_t k = 0; k < list->count; k++) {
                away[task] = away[task] || asks_for(&list->at[k], asked->diagram, task, common);
            }
            asked->others = asked->others || away[task] != asked->missing[task];
        }
        asked->away = away;
    }
}

void asked_of(struct arena *arena, const struct play *play, const diagram_list *diagrams,
              uint64_t seed, size_t least, asked_list *out)
{
    struct rng rng;
    rng_seed(&rng, seed ^ hash_bytes(HASH_SEED, play->name.at, play->name.size));
    bool *chosen = arena_array(arena, bool, diagrams->count + 1);
    size_t count = 0;
    for (size_t step = 0; step < play->steps.count; step++) {
        size_t picked = pick_diagram(arena, play, diagrams, chosen, (int)step, &rng);
        chosen[picked] = true;
        count += picked < diagrams->count;
    }
    for (size_t i = 0; i < diagrams->count && count < least; i++) {
        size_t picked = pick_diagram(arena, play, diagrams, chosen, -1, &rng);
        chosen[picked] = true;
        count += picked < diagrams->count;
    }
    for (size_t i = 0; i < diagrams->count; i++) {
        if (chosen[i]) {
            ask_next(arena, play, &diagrams->at[i], &rng, out);
        }
    }
    bool more = out->count > 0;
    while (more && out->count < least) { /* a short play is asked about again */
        more = false;
        for (size_t i = 0; i < diagrams->count && out->count < least; i++) {
            more = ask_next(arena, play, &diagrams->at[i], &rng, out) || more;
        }
    }
    put_away(arena, play, out);
}
