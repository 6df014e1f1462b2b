/* SPDX-License-Identifier: MIT */
/* standing: checks about who has nothing to do, and about a continuity that does not close. */
#include "base/real.h"
#include "judge/check/stand.h"

/* ---- move.standing ---- */

/* A sentence of this way through the step has him do something, or is done with him. */
static bool has_job(const struct segment *segment, body b)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        if (task->who == b || task->other == b || task->other2 == b || task->path_who == b) {
            return true;
        }
    }
    for (size_t i = 0; i < segment->ball.count; i++) {
        if (segment->ball.at[i].state == BALL_HELD && segment->ball.at[i].holder == b) {
            return true;
        }
    }
    return false;
}

/* It is his turn in a step that goes on from here. */
static bool has_job_next(const struct checker *checker, body b)
{
    for (size_t i = 0; i < checker->run->segments.count; i++) {
        const struct segment *next = checker->run->segments.at[i];
        if (next->before == checker->segment && has_job(next, b)) {
            return true;
        }
    }
    return false;
}

/* He was told to stay, and nothing else since: that holds in later steps too. */
static bool told_to_stay(const struct segment *segment, body b)
{
    for (; segment; segment = segment->before) {
        for (size_t i = segment->tasks; i-- > 0;) {
            const struct task *task = segment_task(segment, i);
            if (task->who == b && task->sentence) {
                return task->stay;
            }
        }
    }
    return false;
}

/* The play says of somebody that he stays: then whoever stands without a word was forgotten. A play
 * that says nothing of it is about the others. */
static bool says_who_stays(const struct play *play)
{
    for (size_t s = 0; s < play->steps.count; s++) {
        const struct step *step = &play->steps.at[s];
        for (size_t i = 0; i < step->tasks.count; i++) {
            if (step->tasks.at[i].stay && step->tasks.at[i].sentence) {
                return true;
            }
        }
    }
    return false;
}

/* Seconds for which he has stood with nothing to do by the end of the segment. */
static double stands_idle(const struct segment *segment, body b)
{
    double seconds = 0;
    for (; segment && segment->track[b].on_floor && !has_job(segment, b);
         segment = segment->before) {
        for (size_t i = segment->samples; i-- > 0;) {
            double t = (double)i * RUN_SAMPLE;
            const struct ball_span *span = segment_span(segment, t);
            bool counts = span && !span->throw_in && !look_shot(segment, t);
            if (look_speed(segment, b, i) > REST_SPEED) {
                return seconds;
            }
            seconds += counts ? RUN_SAMPLE : 0;
        }
    }
    return seconds;
}

static void idle(struct checker *checker, const body who[], size_t count, double seconds)
{
    const struct segment *segment = checker->segment;
    struct finding *finding = look_report(checker, segment->duration, seconds, who[0], BODY_NONE);
    struct strbuf names;
    strbuf_init(&names, checker->arena);
    for (size_t i = 0; i < count; i++) {
        finding->who[i] = who[i];
        strbuf_print(&names, "%s%s",
                     i == 0          ? ""
                     : i + 1 < count ? ", "
                                     : " and ",
                     look_body(checker, who[i]));
    }
    finding->span = checker->play->steps.at[segment->step].span;
    finding->mark = MARK_POINT;
    finding->a = segment_at(segment, who[0], segment->duration);
    look_say(checker, &finding->message,
             "%s: move, or stay on purpose. You stand %s%s with nothing to do; over %s your "
             "defenders rest.",
             names.at, count > 1 ? "up to " : "", look_seconds(checker, seconds),
             look_seconds(checker, checker->limit));
    look_say(checker, &finding->help, "write: %s %s", names.at, count > 1 ? "stay" : "stays");
}

void look_move_standing(struct checker *checker)
{
    body who[4];
    size_t count = 0;
    double most = 0;
    if (checker->play->is_drill || !says_who_stays(checker->play)) {
        return;
    }
    for (body b = 0; b < BODY_COACH && count < 4; b++) {
        double seconds = look_plays(checker, b) ? stands_idle(checker->segment, b) : 0;
        if (seconds > checker->limit + RUN_SAMPLE && !told_to_stay(checker->segment, b) &&
            !has_job_next(checker, b) && !look_told(checker, b)) {
            who[count++] = b;
            most = real_max(most, seconds);
        }
    }
    if (count) {
        idle(checker, who, count, most);
    }
}

/* ---- shape.end ---- */

#define ON_SPOT (4 * FEET) /* who ends so near to a spot has come back to it; ours */

/* The step that a `repeat` of this one names, from 1; 0: it has none. */
static int repeats(const struct step *step)
{
    for (size_t i = 0; step->block && i < step->block->forms.count; i++) {
        if (step->block->forms.at[i].kind == FORM_REPEAT) {
            return step->block->forms.at[i].note->step;
        }
    }
    return 0;
}

/* The first step of the round that the play ends in, from 1; 0: it ends in none. */
static int round_from(const struct checker *checker)
{
    const struct play *play = checker->play;
    int first = repeats(&play->steps.at[checker->segment->step]);
    for (int s = 0; first && s < checker->segment->step; s++) {
        int other = repeats(&play->steps.at[s]);
        first = other && other < first ? other : first;
    }
    return first;
}

/* The segment of that step on the way to the one in hand. */
static const struct segment *begin_of(const struct checker *checker, int step)
{
    const struct segment *segment = checker->segment;
    while (segment && segment->step != step - 1) {
        segment = segment->before;
    }
    return segment;
}

/* Where somebody stood as the round began, in the mirror or not. */
static struct vec2 began_at(const struct segment *begin, body b, bool mirrored)
{
    struct vec2 at = look_at(begin, b, 0);
    return vec2_of(mirrored ? -at.x : at.x, at.y);
}

/* How many of the places of the beginning nobody stands at; `empty` is the last of them. */
static int empty_places(const struct checker *checker, const struct segment *begin, bool mirrored,
                        struct vec2 *empty)
{
    int count = 0;
    for (body b = 0; b < BODY_COACH; b++) {
        if (!look_plays(checker, b)) {
            continue;
        }
        struct vec2 there = began_at(begin, b, mirrored);
        bool taken = false;
        for (body c = 0; c < BODY_COACH; c++) {
            taken = taken || (look_plays(checker, c) &&
                              vec2_near(look_at(checker->segment, c, checker->segment->samples - 1),
                                        there, ON_SPOT));
        }
        if (!taken) {
            *empty = there;
            count++;
        }
    }
    return count;
}

/* Who is to go to the empty place: the nearest of those who ended at none of the others. */
static body who_is_off(const struct checker *checker, const struct segment *begin, bool mirrored,
                       struct vec2 empty)
{
    body nearest = BODY_NONE;
    double least = 1e9;
    for (body c = 0; c < BODY_COACH; c++) {
        if (!look_plays(checker, c)) {
            continue;
        }
        struct vec2 at = look_at(checker->segment, c, checker->segment->samples - 1);
        bool home = false;
        for (body b = 0; b < BODY_COACH; b++) {
            home = home ||
                   (look_plays(checker, b) && vec2_near(began_at(begin, b, mirrored), at, ON_SPOT));
        }
        if (!home && vec2_distance(at, empty) < least) {
            least = vec2_distance(at, empty);
            nearest = c;
        }
    }
    return nearest;
}

static void not_back(struct checker *checker, body who, struct vec2 empty, int step)
{
    const struct segment *segment = checker->segment;
    struct vec2 at = look_at(segment, who, segment->samples - 1);
    double off = vec2_distance(at, empty);
    enum side side;
    double far;
    enum spot spot = court_nearest_perimeter(checker->play->court, empty, &side, &far);
    const char *name = look_spot(checker, spot, side), *player = look_body(checker, who);
    struct finding *finding = look_report(checker, segment->duration, off, who, BODY_NONE);
    finding->mark = MARK_DISTANCE;
    finding->a = at;
    finding->b = empty;
    look_say(checker, &finding->message,
             "%s: come back to %s. You end %s from a place of step %d's beginning, and nobody "
             "stands there for the next round.",
             player, far <= ON_SPOT ? name : "where the round began", look_length(checker, off),
             step);
    if (far <= ON_SPOT) {
        look_say(checker, &finding->help, "write: %s %s to %s", player,
                 stand_goes_by(checker, who, segment->duration), name);
    } else {
        look_say(checker, &finding->help, "send %s to that place before the step ends", player);
    }
}

void look_shape_end(struct checker *checker)
{
    const struct segment *segment = checker->segment;
    int first =
        look_last(checker) && segment->main && !checker->play->is_drill ? round_from(checker) : 0;
    const struct segment *begin = first ? begin_of(checker, first) : NULL;
    if (!begin || look_shot(segment, segment->duration) || !segment->samples) {
        return;
    }
    struct vec2 empty, other;
    int plain = empty_places(checker, begin, false, &empty);
    int mirrored = empty_places(checker, begin, true, &other);
    if (plain == 0 || mirrored == 0) {
        return;
    }
    bool flip = mirrored < plain;
    body who = who_is_off(checker, begin, flip, flip ? other : empty);
    if (who != BODY_NONE) {
        not_back(checker, who, flip ? other : empty, first);
    }
}
