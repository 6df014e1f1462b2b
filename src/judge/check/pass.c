/* SPDX-License-Identifier: MIT */
/* pass: checks about passes, catches and what follows a shot. */
#include <math.h>

#include "base/real.h"
#include "judge/check/look.h"

#define AT_RIM (10 * FEET) /* nearer, the distance of a defender tells little of a shot; ours */
#define SHOT_FOLLOWS 1.6   /* s from catch to release: a catch-and-shoot; ours */

static const struct task *pass_of(const struct segment *segment, const struct ball_span *span)
{
    if (span->state != BALL_FLIGHT || span->task < 0 || (size_t)span->task >= segment->tasks) {
        return NULL;
    }
    const struct task *task = segment_task(segment, (size_t)span->task);
    return task->kind == TASK_PASS ? task : NULL;
}

/* ---- pass.long ---- */

void look_pass_long(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count && !checker->play->is_drill; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        const struct task *task = pass_of(segment, span);
        double length = vec2_distance(span->start, span->end);
        if (!task || task->pass == PASS_SKIP || length <= checker->limit + HALF_FOOT) {
            continue;
        }
        struct finding *finding =
            look_report(checker, span->from, length, span->holder, span->target);
        const char *who = look_body(checker, span->holder), *to = look_body(checker, span->target);
        finding->span = task->span;
        finding->mark = MARK_LANE;
        finding->a = span->start;
        finding->b = span->end;
        look_say(checker, &finding->message,
                 "%s: look for a shorter pass. It is %s to %s; over %s a defender has time to get "
                 "there.",
                 who, look_length(checker, length), to, look_length(checker, checker->limit));
        look_say(checker, &finding->help, "write: %s skip passes to %s, if it is meant", who, to);
    }
}

/* ---- open.catch ---- */

/* The catch that a shot follows, or TIME_NEVER when the shooter dribbled or held long before. */
static double catch_before(const struct segment *segment, body shooter, double shot, body *passer)
{
    for (size_t i = segment->ball.count; i-- > 0;) {
        const struct ball_span *span = &segment->ball.at[i];
        if (span->state == BALL_FLIGHT && span->target == shooter && span->to <= shot) {
            *passer = span->holder;
            return shot - span->to <= SHOT_FOLLOWS ? span->to : TIME_NEVER;
        }
    }
    return TIME_NEVER;
}

/* What the play has done by then to free the shooter. */
struct freed {
    body screener; /* whose screen he last came off, or BODY_NONE */
    bool cut;
};

static struct freed freed_by(const struct segment *segment, body shooter, double t)
{
    struct freed freed = {BODY_NONE, false};
    for (; segment && freed.screener == BODY_NONE; segment = segment->before) {
        for (size_t i = 0; i < segment->tasks; i++) {
            const struct task *task = segment_task(segment, i);
            double started = segment->record[i].time[MOMENT_STARTED];
            if (task->who != shooter || started < 0 || started > t || look_uses_ball(task)) {
                continue;
            }
            if (task->kind == TASK_USE) {
                freed.screener = task->other;
            }
            freed.cut |= task->kind == TASK_MOVE && task->effort >= EFFORT_CUT;
        }
        t = segment->begins;
    }
    return freed;
}

/* Who could screen: the nearest to the shooter who neither shoots nor passes. */
static body who_could_screen(const struct checker *checker, body shooter, body passer, double t)
{
    body nearest = BODY_NONE;
    double least = INFINITY;
    struct vec2 at = segment_at(checker->segment, shooter, t);
    for (body b = 0; b < BODY_COACH; b++) {
        if (b != shooter && b != passer && look_plays(checker, b) &&
            vec2_distance(segment_at(checker->segment, b, t), at) < least) {
            least = vec2_distance(segment_at(checker->segment, b, t), at);
            nearest = b;
        }
    }
    return nearest;
}

/* To drive by who comes out; or what the play has not done yet to free him. */
static void help_to_open(struct checker *checker, struct finding *finding, body shooter,
                         body passer, double caught)
{
    struct freed freed = freed_by(checker->segment, shooter, caught);
    const char *who = look_body(checker, shooter), *from = look_body(checker, passer);
    body mate = who_could_screen(checker, shooter, passer, 0);
    struct str other = STR("");
    if (freed.screener != BODY_NONE) {
        look_say(checker, &other, "; or have %s pass as %s comes off %s", from, who,
                 look_body(checker, freed.screener));
    } else if (mate != BODY_NONE) {
        look_say(checker, &other, "; or free %s %s: %s screens for %s", who,
                 freed.cut ? "for the cut" : "before the pass", look_body(checker, mate), who);
    }
    look_say(checker, &finding->help, "write: %s drives to the rim, before the shot%.*s", who,
             STR_ARG(other));
}

static body nearest_defender(const struct segment *segment, struct vec2 at, double t, double *least)
{
    body nearest = BODY_NONE;
    *least = INFINITY;
    for (int x = BODY_FIRST_DEFENDER; x < BODY_COUNT; x++) {
        double gap = segment->track[x].sample ? vec2_distance(segment_at(segment, (body)x, t), at)
                                              : (double)INFINITY;
        if (gap < *least) {
            *least = gap;
            nearest = (body)x;
        }
    }
    return nearest;
}

/* Of a shot that follows a catch at time t. */
static void covered(struct checker *checker, const struct ball_span *shot, body passer, double t)
{
    const struct segment *segment = checker->segment;
    double least;
    struct vec2 at = segment_at(segment, shot->holder, t);
    body nearest = nearest_defender(segment, at, t, &least);
    if (least >= checker->limit - HALF_FOOT || vec2_length(at) < AT_RIM) {
        return;
    }
    struct finding *finding = look_report(checker, t, least, shot->holder, nearest);
    const struct task *task = shot->task >= 0 && (size_t)shot->task < segment->tasks
                                  ? segment_task(segment, (size_t)shot->task)
                                  : NULL;
    if (task && task->sentence) {
        finding->span = task->span; /* the shot is what the coach would change */
    }
    const char *who = look_body(checker, shot->holder);
    finding->mark = MARK_DISTANCE;
    finding->a = at;
    finding->b = segment_at(segment, nearest, t);
    look_say(checker, &finding->message,
             "%s: get open before the catch. %s is %s away as you catch to shoot; %s is open.", who,
             look_body(checker, nearest), look_length(checker, least),
             look_length(checker, checker->limit));
    help_to_open(checker, finding, shot->holder, passer, t);
}

void look_open_catch(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    for (size_t i = 0; i < segment->ball.count && !checker->play->is_drill; i++) {
        const struct ball_span *span = &segment->ball.at[i];
        body passer = BODY_NONE;
        if (span->state != BALL_SHOT) {
            continue;
        }
        double t = catch_before(segment, span->holder, span->from, &passer);
        if (t >= 0) {
            covered(checker, span, passer, t);
        }
    }
}

/* ---- shot.balance ---- */

static int how_many(const struct segment *segment, enum verb verb)
{
    int count = 0;
    for (size_t i = 0; i < segment->tasks; i++) {
        count += segment_task(segment, i)->verb == verb;
    }
    return count;
}

static bool does(const struct segment *segment, body b, enum verb verb)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->who == b && task->verb == verb) {
            return true;
        }
    }
    return false;
}

/* Who has nothing to do after the shot yet: up to `wanted` of them, the shooter last. */
static int idle_at_shot(const struct checker *checker, body shooter, int wanted, body who[])
{
    int count = 0;
    for (int last = 0; last < 2; last++) {
        for (body b = 0; b < BODY_COACH && count < wanted; b++) {
            bool busy = does(checker->segment, b, VERB_REBOUNDS) ||
                        does(checker->segment, b, VERB_GETS_BACK);
            if (look_plays(checker, b) && !busy && (b == shooter) == (last == 1)) {
                who[count++] = b;
            }
        }
    }
    return count;
}

/* The sentence that is missing: who goes to the glass besides, and who gets back. */
static void help_balance(struct checker *checker, struct finding *finding, body shooter, int glass,
                         bool back)
{
    body who[BODY_COACH];
    int wanted = (glass < 3 ? 3 - glass : 0) + !back;
    int count = idle_at_shot(checker, shooter, wanted, who);
    struct strbuf line;
    strbuf_init(&line, checker->arena);
    for (int i = 0; i < count - !back; i++) {
        strbuf_print(&line, "%s%s",
                     i == 0                  ? ""
                     : i + 1 < count - !back ? ", "
                                             : " and ",
                     look_body(checker, who[i]));
    }
    if (count > !back) {
        strbuf_print(&line, count - !back == 1 ? " rebounds" : " rebound");
    }
    if (!back && count > 0) {
        strbuf_print(&line, "%s%s gets back", count > 1 ? " and " : "",
                     look_body(checker, who[count - 1]));
    }
    if (count > 0) {
        look_say(checker, &finding->help, "write: %s", line.at);
    } else {
        look_say(checker, &finding->help, "let one of them rebound less, and another get back");
    }
}

void look_shot_balance(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    int glass = how_many(segment, VERB_REBOUNDS), back = how_many(segment, VERB_GETS_BACK);
    const struct ball_span *shot = NULL;
    for (size_t i = 0; i < segment->ball.count && !shot; i++) {
        shot = segment->ball.at[i].state == BALL_SHOT ? &segment->ball.at[i] : NULL;
    }
    if (!shot || checker->play->is_drill || glass + back == 0 || (glass >= 3 && back >= 1)) {
        return;
    }
    struct finding *finding = look_report(checker, shot->from, glass, BODY_NONE, BODY_NONE);
    look_say(checker, &finding->message,
             "Send three to the glass and keep one back: %d %s, %d %s back.", glass,
             glass == 1 ? "rebounds" : "rebound", back, back == 1 ? "gets" : "get");
    help_balance(checker, finding, shot->holder, glass, back > 0);
}
