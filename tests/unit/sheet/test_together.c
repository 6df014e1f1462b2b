/* SPDX-License-Identifier: MIT */
/* Which pictures of a fill-in sheet stand on one page, over the example book and several seeds:
 * none shows where somebody stands, or who has the ball, when another has been drawn. */
#include "page/sheet/blanked.h"
#include "ran.h"
#include "suite.h"
#include "whole_file.h"
#include "written.h"

#define WIDTH 237.6
static const char *const books[] = {"motion",
                                    "sets",
                                    "bounds",
                                    "zones",
                                    "drills",
                                    "../topics/back-cut",
                                    "../topics/ball-screen",
                                    "../topics/cross-screen",
                                    "../topics/defenders",
                                    "../topics/hand-off",
                                    "../topics/overlap",
                                    "../topics/press",
                                    "../topics/ties",
                                    "../topics/until",
                                    "../topics/v-cut",
                                    "../topics/zone"};
enum { BOOKS = sizeof books / sizeof *books, SEEDS = 6 };

/* The middle of a player's numeral. */
static bool find_numeral(const struct scene *scene, body who, struct vec2 *at)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_PLAYER && item->shape == ITEM_TEXT && item->who == who) {
            *at = vec2_of(item->at.x, item->at.y - 0.5 * METRICS_CAP_HEIGHT * item->size);
            return true;
        }
    }
    return false;
}

static bool stands_at(const struct scene *scene, body who, struct vec2 place)
{
    const double near = 12; /* points: what a numeral may be pushed */
    struct vec2 at;
    return find_numeral(scene, who, &at) && vec2_near(at, place, near);
}

static bool has_ball(const struct scene *scene, body who)
{
    struct vec2 at;
    for (size_t i = 0; i < scene->items.count && find_numeral(scene, who, &at); i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_BALL && item->shape == ITEM_CIRCLE &&
            vec2_near(item->at, at, item->radius)) {
            return true;
        }
    }
    return false;
}

static struct vec2 on_paper(const struct scene *scene, struct vec2 metres)
{
    double x = metres.x / 0.3048, y = metres.y / 0.3048 + 5.25;
    return vec2_add(scene->floor.origin,
                    vec2_add(vec2_scale(scene->floor.across, x), vec2_scale(scene->floor.down, y)));
}

/* The last that this player does of what is missing. */
static bool is_last_of(const struct blank *blank, const struct segment *segment, size_t index)
{
    for (size_t i = index + 1; i < segment->tasks; i++) {
        if (blank->tasks[i] && segment_task(segment, i)->who == segment_task(segment, index)->who) {
            return false;
        }
    }
    return blank->tasks[index];
}

/* Does it begin later? A way on may begin behind what its step has in common. */
static bool begins_behind(const struct asked *one, const struct asked *other)
{
    int step = one->diagram->step, before = other->diagram->step;
    return step != before ? step > before
                          : scene_first_task(one->diagram) > scene_first_task(other->diagram);
}

/* How many of its answers the other picture begins with, that its own does not. */
static size_t count_told(const struct asked *asked, const struct asked *other)
{
    size_t told = 0;
    const struct segment *segment = asked->diagram->segment;
    if (!begins_behind(other, asked)) {
        return 0; /* who stood where before tells nothing */
    }
    for (size_t b = 0; b < asked->blanks.count; b++) {
        for (size_t i = 0; i < segment->tasks; i++) {
            const struct task *task = segment_task(segment, i);
            if (!is_last_of(&asked->blanks.at[b], segment, i)) {
                continue;
            }
            struct vec2 end = segment->record[i].to;
            if (task->kind == TASK_PASS || task->kind == TASK_EXCHANGE) {
                told += has_ball(other->scene, task->other) && !has_ball(asked->scene, task->other);
            } else if (task->kind != TASK_SHOOT) {
                told += stands_at(other->scene, task->who, on_paper(other->scene, end)) &&
                        !stands_at(asked->scene, task->who, on_paper(asked->scene, end));
            }
        }
    }
    return told;
}

static bool shows_task(const struct scene *scene, size_t task)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        if (scene->items.at[i].task == (int)task && scene->items.at[i].line >= 0) {
            return true;
        }
    }
    return false;
}

static bool slips(const struct segment *segment, body who)
{
    for (size_t i = 0; i < segment->tasks; i++) {
        if (segment_task(segment, i)->who == who && segment_task(segment, i)->slip) {
            return true;
        }
    }
    return false;
}

/* The same player's way, or the ball from him to the same one, to the same place in another read.
 */
static bool ends_alike(const struct segment *a, size_t i, const struct segment *b, size_t k)
{
    const struct task *one = segment_task(a, i), *other = segment_task(b, k);
    bool passes = one->kind == TASK_PASS && other->kind == TASK_PASS && one->other == other->other;
    bool runs = (one->kind == TASK_MOVE || one->kind == TASK_USE || one->kind == TASK_CARRY) &&
                (other->kind == TASK_MOVE || other->kind == TASK_USE || other->kind == TASK_CARRY);
    return one->who == other->who && (passes || runs) &&
           vec2_distance(a->record[i].to, b->record[k].to) < .9;
}

/* Does the other picture draw a line that this one asks for? Ways on have their step's own in
 * common; that somebody goes to screen tells nothing of a slip. */
static bool draws_asked(const struct asked *asked, const struct asked *other)
{
    const struct segment *segment = asked->diagram->segment, *seen = other->diagram->segment;
    const struct scene *scene = blanked_scene(&arena, other);
    for (size_t i = 0; i < segment->tasks; i++) {
        const struct task *task = segment_task(segment, i);
        bool asks = asked->missing[i] && !slips(segment, task->who);
        for (size_t k = 0; asks && k < seen->tasks; k++) {
            bool tells = segment_task(seen, k) == task ||
                         (shows_task(asked->scene, i) && ends_alike(segment, i, seen, k));
            if (tells && shows_task(scene, k)) {
                return true;
            }
        }
    }
    return false;
}

static size_t count_told_by_each_other(const asked_list *asked, size_t from, size_t to,
                                       const char *name)
{
    size_t told = 0;
    for (size_t i = from; i < to; i++) {
        for (size_t k = from; k < to; k++) {
            size_t here = i == k ? 0 : count_told(&asked->at[i], &asked->at[k]);
            if (here > 0 && name) {
                ck_abort_msg("%s: %s is told by %s", name, text_of(asked->at[i].diagram->label),
                             text_of(asked->at[k].diagram->label));
            }
            told += here;
            if (i != k && name && draws_asked(&asked->at[i], &asked->at[k])) {
                ck_abort_msg("%s: a line of %s is drawn in %s", name,
                             text_of(asked->at[i].diagram->label),
                             text_of(asked->at[k].diagram->label));
            }
        }
    }
    return told;
}

/* Every page of every play; returns what one page with all would have told. */
static size_t look_at_play(const struct play *play, uint64_t seed)
{
    asked_list asked = {0};
    asked_of(&arena, play, &diagrams, seed, 4, WIDTH, &asked);
    bool *seen = arena_array(&arena, bool, play->steps.count);
    for (size_t i = 0; i < asked.count;) {
        size_t count = asked_together(&asked, i);
        ck_assert_uint_ge(count, 1);
        ck_assert_uint_le(i + count, asked.count);
        count_told_by_each_other(&asked, i, i + count, text_of(play->name));
        i += count;
    }
    for (size_t i = 0; i < asked.count; i++) {
        seen[asked.at[i].diagram->step] = true;
    }
    for (size_t step = 0; step < play->steps.count; step++) {
        ck_assert_msg(seen[step], "%s: step %zu is not asked", text_of(play->name), step + 1);
    }
    return count_told_by_each_other(&asked, 0, asked.count, NULL);
}

static size_t look_at_book(const char *name, uint64_t seed)
{
    size_t would = 0;
    struct str text =
        whole_file_or_said(&arena, text_of(str_format(&arena, EXAMPLES "/%s.play", name)));
    resolve_text(&arena, &resolved, str_of(name), text);
    ck_assert_uint_eq(resolved.diags.errors, 0);
    for (size_t i = 0; i < resolved.book->plays.count; i++) {
        would += look_at_play(run_play(&resolved.book->plays.at[i]), seed);
    }
    return would;
}

START_TEST(no_picture_shows_what_another_on_its_page_asks_for)
{
    size_t would = 0;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        for (size_t i = 0; i < BOOKS; i++) {
            would += look_at_book(books[i], seed);
        }
    }
    ck_assert_uint_gt(would, 30 * SEEDS); /* all on one page would show so much */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("together");
    TCase *all = tcase_create("together");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, no_picture_shows_what_another_on_its_page_asks_for);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
