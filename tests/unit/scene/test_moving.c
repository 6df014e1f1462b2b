/* SPDX-License-Identifier: MIT */
/* What moves, from texts that were run: held against the run itself at every tick. */
#include "picture/scene/moving.h"

#include <math.h>

#include "floor_text.h"

#define SPOTS                                                                                      \
    "play \"Gate\"\n"                                                                              \
    "  start 1 top, 2 right corner, 3 left corner, 4 right wing, 5 left elbow\n"
#define SCREEN                                                                                     \
    SPOTS "  defense man\n"                                                                        \
          "  step \"Screen\"\n"                                                                    \
          "    5 ball screens for 1\n"
#define READS                                                                                      \
    SCREEN "    read x5 drops\n"                                                                   \
           "      1 dribbles off 5 to left elbow\n"                                                \
           "      1 shoots\n"                                                                      \
           "    read x5 traps \"Roll\"\n"                                                          \
           "      5 rolls to left block\n"                                                         \
           "      1 passes to 5\n"
#define AFTER_B                                                                                    \
    READS "    read otherwise \"Out\"\n"                                                           \
          "      1 passes to 2\n"                                                                  \
          "  step \"On\" after \"Roll\"\n"                                                         \
          "    5 passes to 3\n"
#define TWO_STEPS                                                                                  \
    SPOTS "  step\n"                                                                               \
          "    1 passes to 4\n"                                                                    \
          "    3 cuts to the rim\n"                                                                \
          "  step\n"                                                                               \
          "    4 passes to 2\n"                                                                    \
          "    3 goes to right block\n"

static const struct run *run;
static diagram_list diagrams;

static void ran(const char *text)
{
    run = floor_run(text);
    diagrams = (diagram_list){0};
    scene_diagrams(&arena, run, &diagrams);
}

static const struct scene_options options = {
    .accent = BODY_NONE, .theme = THEME_SCREEN, .together = &diagrams};

static struct moving *whole(moving_part_list *parts)
{
    *parts = (moving_part_list){0};
    moving_parts_of(&arena, &diagrams, parts);
    return moving_make(&arena, parts->at, parts->count, &options);
}

static struct moving *alone(size_t diagram, struct moving_part *part)
{
    *part = moving_part_of(&diagrams.at[diagram]);
    return moving_make(&arena, part, 1, &options);
}

/* As a reader of the file would: evenly between two keys. */
static struct vec2 key_at(const moving_keys *keys, double t)
{
    ck_assert_uint_gt(keys->count, 0);
    struct vec2 at = keys->at[0].at;
    for (size_t i = 0; i < keys->count && keys->at[i].t <= t + 1e-9; i++) {
        at = keys->at[i].at;
        if (i + 1 < keys->count && keys->at[i + 1].t > t + 1e-9) {
            double part = (t - keys->at[i].t) / (keys->at[i + 1].t - keys->at[i].t);
            at = vec2_mix(at, keys->at[i + 1].at, part);
        }
    }
    return at;
}

static bool seen(const moving_shows *shows, double t)
{
    bool is = shows->count == 0;
    for (size_t i = 0; i < shows->count; i++) {
        is = is || (t >= shows->at[i].from - 1e-9 && t < shows->at[i].to - 1e-9);
    }
    return is;
}

static const struct moving_group *actor(const struct moving *moving, body who)
{
    for (size_t i = 0; i < moving->groups.count; i++) {
        const struct moving_group *group = &moving->groups.at[i];
        bool marks = group->class == CLASS_PLAYER || group->class == CLASS_DEFENDER;
        if (group->who == who && marks && group->way.count > 0) {
            return group;
        }
    }
    return NULL;
}

static struct vec2 paper(const struct moving *moving, struct vec2 metres)
{
    double baseline = run->play->court->baseline;
    struct vec2 at = vec2_along(moving->floor.origin, moving->floor.across, metres.x / FEET);
    return vec2_along(at, moving->floor.down, (metres.y - baseline) / FEET);
}

/* The most that anybody is away from where the run has him in that part, metres. */
static double most_off(const struct moving *moving, const struct moving_part *part, size_t index,
                       bool defenders)
{
    const struct segment *segment = part->diagram.segment;
    double begin = moving->parts.at[index].from, most = 0;
    for (int b = 0; b < BODY_COUNT; b++) {
        if (!segment->track[b].on_floor || body_is_defender((body)b) != defenders) {
            continue;
        }
        const struct moving_group *group = actor(moving, (body)b);
        ck_assert_ptr_nonnull(group);
        for (double t = part->from; t < part->to - moving->tick; t += 0.01) {
            struct vec2 is = key_at(&group->way, begin + part->before + t - part->from);
            struct vec2 truth = paper(moving, segment_at(segment, (body)b, t));
            most = real_max(most, vec2_distance(is, truth) / moving->scale * FEET);
        }
    }
    return most;
}

START_TEST(everybody_is_where_the_run_has_him)
{
    moving_part_list parts;
    ran(READS);
    const struct moving *moving = whole(&parts);
    ck_assert_uint_ge(parts.count, 2);
    for (size_t i = 0; i < parts.count; i++) {
        ck_assert_double_lt(most_off(moving, &parts.at[i], i, false), 0.04);
        ck_assert_double_lt(most_off(moving, &parts.at[i], i, true), 0.06);
    }
    struct moving_part late = parts.at[0];
    late.before += 0.4;
    ck_assert_double_gt(most_off(moving, &late, 0, false), 0.5); /* it would be seen */
}
END_TEST

START_TEST(keys_are_few_and_stand_on_ticks)
{
    moving_part_list parts;
    ran(READS);
    const struct moving *moving = whole(&parts);
    size_t count = 0;
    for (size_t i = 0; i < moving->groups.count; i++) {
        const moving_keys *keys = &moving->groups.at[i].way;
        for (size_t k = 0; k < keys->count; k++) {
            double ticks = keys->at[k].t / moving->tick;
            ck_assert_double_eq_tol(ticks, floor(ticks + 0.5), 1e-6);
            ck_assert(k == 0 || keys->at[k].t >= keys->at[k - 1].t);
            double grains = keys->at[k].at.x / MOVING_GRAIN;
            bool ring = moving->groups.at[i].class == CLASS_BALL; /* begins between two keys */
            ck_assert(ring || fabs(grains - floor(grains + 0.5)) < 1e-6);
        }
        count += keys->count;
    }
    ck_assert_double_lt((double)count, 1.5 * 11 * moving->duration); /* not three in two seconds */
    double ticks = 1;
    for (int i = 0; i < moving->decimals; i++) {
        ticks *= 10;
    }
    ck_assert_double_eq_tol(moving->tick * ticks, moving->duration, 1e-9);
}
END_TEST

START_TEST(who_has_the_ball_has_a_ring_and_a_thrown_ball_is_a_dot)
{
    struct moving_part part;
    ran(TWO_STEPS);
    const struct moving *moving = alone(0, &part);
    const struct segment *segment = part.diagram.segment;
    const struct moving_group *ball = &moving->groups.at[moving->groups.count - 1];
    const struct moving_group *ring = NULL;
    for (size_t i = 0; i + 1 < moving->groups.count; i++) {
        bool is = moving->groups.at[i].class == CLASS_BALL;
        ring = is ? &moving->groups.at[i] : ring;
    }
    ck_assert_int_eq(ball->class, CLASS_BALL);
    ck_assert_ptr_nonnull(ring);
    ck_assert(ring < actor(moving, body_attacker(1))); /* under everybody's numeral */
    int flew = 0;
    for (double t = 0.03; t < segment->duration; t += 0.06) {
        double past = segment_span(segment, t)->from, next = segment_span(segment, t)->to;
        if (t - past < moving->tick || next - t < moving->tick) {
            continue; /* it changes hands within this tick */
        }
        body holder = segment_holder(segment, t);
        ck_assert_int_eq(seen(&ball->shows, t), holder == BODY_NONE);
        flew += holder == BODY_NONE;
        if (holder == BODY_NONE) {
            struct vec2 truth = paper(moving, segment_ball(segment, t));
            ck_assert_double_lt(vec2_distance(key_at(&ball->way, t), truth) / moving->scale * FEET,
                                0.04);
        }
        ck_assert_int_eq(seen(&ring->shows, t), holder != BODY_NONE);
        if (holder != BODY_NONE) {
            struct vec2 him = key_at(&actor(moving, holder)->way, t);
            ck_assert_double_lt(vec2_distance(key_at(&ring->way, t), him), 1e-6);
        }
    }
    ck_assert_int_gt(flew, 3);
}
END_TEST

START_TEST(steps_follow_each_other_without_a_stop)
{
    moving_part_list parts;
    ran(TWO_STEPS);
    const struct moving *moving = whole(&parts);
    ck_assert_uint_eq(parts.count, 2);
    double seconds = parts.at[0].to - parts.at[0].from + parts.at[1].to - parts.at[1].from;
    ck_assert_double_eq_tol(moving->duration, MOVING_BEFORE + seconds + MOVING_AFTER, 1e-9);
    double border = moving->parts.at[1].from;
    for (int n = 1; n <= 5; n++) {
        const moving_keys *way = &actor(moving, body_attacker(n))->way;
        struct vec2 before = key_at(way, border - moving->tick), after = key_at(way, border);
        ck_assert_double_lt(vec2_distance(before, after) / moving->scale * FEET,
                            9 * moving->tick); /* nobody runs 9 m/s */
    }
}
END_TEST

START_TEST(a_step_before_its_reads_stops_as_they_are_answered)
{
    ran(READS);
    struct moving_part common = moving_part_of(&diagrams.at[0]),
                       read = moving_part_of(&diagrams.at[1]);
    ck_assert_int_eq(diagrams.at[0].branch, -1);
    ck_assert(common.common && !read.common);
    ck_assert_double_gt(common.to, 0.5);
    ck_assert_double_lt(common.to, common.diagram.segment->duration - 0.5);
    ck_assert_double_eq(read.from, 0);
    ck_assert_double_eq(read.to, read.diagram.segment->duration);
}
END_TEST

/* 4 is away at once, as part of the answer: what the reads share is shown to its end all the same,
 * and no further. */
START_TEST(a_step_ends_where_what_its_reads_share_is_done)
{
    ran(SCREEN "    read x5 drops\n"
               "      4 goes to right corner\n"
               "      1 dribbles off 5 to left elbow\n"
               "      1 shoots\n"
               "    read x5 traps \"Roll\"\n"
               "      5 rolls to left block\n"
               "      1 passes to 5\n");
    struct moving_part common = moving_part_of(&diagrams.at[0]);
    const struct segment *segment = common.diagram.segment;
    ck_assert_int_eq(diagrams.at[0].branch, -1);
    ck_assert_double_gt(segment->record[0].time[MOMENT_SET], 0.5);
    ck_assert_double_eq(common.to, segment->record[0].time[MOMENT_SET]);
    ck_assert_double_lt(common.to, segment->duration - 0.5);
}
END_TEST

START_TEST(a_second_read_goes_back_to_what_led_to_it)
{
    moving_part_list parts;
    ran(READS);
    const struct moving *moving = whole(&parts);
    ck_assert_uint_eq(parts.count, 2);
    ck_assert(parts.at[0].from <= 0 && parts.at[0].back <= 0 && !parts.at[0].again);
    const struct moving_part *read = &parts.at[1];
    ck_assert(read->again);
    ck_assert_double_eq(read->back, MOVING_BACK);
    ck_assert_double_eq(read->before, MOVING_BACK + MOVING_BEFORE);
    ck_assert_double_lt(read->from, read->to - MOVING_LEAD);
    ck_assert_double_eq_tol(moving->parts.at[parts.count - 1].to, moving->duration, 1e-9);
}
END_TEST

/* While they return nobody jumps: half of the time is half of the way, and then all stand. */
START_TEST(between_parts_everybody_walks_back)
{
    moving_part_list parts;
    ran(READS);
    const struct moving *moving = whole(&parts);
    double border = moving->parts.at[1].from, most = 0;
    for (int n = 1; n <= 5; n++) {
        const moving_keys *way = &actor(moving, body_attacker(n))->way;
        struct vec2 end = key_at(way, border - 0.5),
                    there = key_at(way, border + MOVING_BACK + 0.1);
        struct vec2 half = key_at(way, border + MOVING_BACK / 2);
        double far = vec2_distance(end, there) / moving->scale;
        ck_assert_double_lt(vec2_distance(half, vec2_scale(vec2_add(end, there), 0.5)) /
                                moving->scale,
                            0.1 + 0.1 * far);
        struct vec2 waits = key_at(way, border + MOVING_BACK + MOVING_BEFORE / 2);
        ck_assert_double_lt(vec2_distance(waits, there) / moving->scale, 0.2);
        most = real_max(most, far);
    }
    ck_assert_double_gt(most, 3); /* feet: somebody had gone somewhere */
}
END_TEST

/* Labels of the parts, in their order. */
static void parts_are(const char *text, const char *labels)
{
    moving_part_list parts;
    struct strbuf told;
    ran(text);
    whole(&parts);
    strbuf_init(&told, &arena);
    for (size_t i = 0; i < parts.count; i++) {
        strbuf_print(&told, "%.*s ", STR_ARG(parts.at[i].diagram.label));
    }
    ck_assert(str_is(strbuf_str(&told), labels));
}

START_TEST(parts_play_in_the_order_of_their_letters)
{
    parts_are(READS, "1a 1b ");
    parts_are(TWO_STEPS, "1 2 ");
    parts_are(AFTER_B, "1a 1b 1c 2 ");
}
END_TEST

/* The groups of a class and player, of a part; trails or roads. */
static const struct moving_group *line_of(const struct moving *moving, enum scene_class class,
                                          int number, bool trail)
{
    for (size_t i = 0; i < moving->groups.count; i++) {
        const struct moving_group *group = &moving->groups.at[i];
        if (group->class == class && group->who == body_attacker(number) && group->part >= 0 &&
            group->trail == trail && group->marks.count > 0) {
            return group;
        }
    }
    return NULL;
}

START_TEST(a_road_is_gone_as_he_arrives_and_the_trail_stays)
{
    struct moving_part part;
    ran(TWO_STEPS);
    const struct moving *moving = alone(0, &part);
    const struct moving_group *road = line_of(moving, CLASS_MOVE, 3, false);
    const struct moving_group *trail = line_of(moving, CLASS_MOVE, 3, true);
    ck_assert_ptr_nonnull(road);
    ck_assert_ptr_nonnull(trail);
    const moving_keys *erased = &road->erased;
    ck_assert_double_lt(erased->at[0].at.x, 0.02);
    ck_assert_double_gt(erased->at[erased->count - 1].at.x, 0.98);
    for (size_t i = 1; i < erased->count; i++) {
        ck_assert_double_ge(erased->at[i].at.x, erased->at[i - 1].at.x - 1e-9);
    }
    ck_assert(seen(&road->shows, 0.0)); /* the road ahead is there before he starts */
    ck_assert(seen(&trail->shows, moving->duration - 0.01));
}
END_TEST

START_TEST(the_head_of_a_road_stops_beside_who_stands_at_its_end)
{
    struct moving_part part;
    ran(SPOTS "  step\n"
              "    1 passes to 4\n"
              "    1 cuts to the rim\n"
              "    3 goes to top\n");
    const struct moving *moving = alone(0, &part);
    const struct moving_group *road = line_of(moving, CLASS_MOVE, 3, false);
    const struct moving_group *trail = line_of(moving, CLASS_MOVE, 3, true);
    ck_assert_ptr_nonnull(road);
    ck_assert_ptr_nonnull(trail);
    struct vec2 first = key_at(&actor(moving, body_attacker(1))->way, 0);
    const struct scene_item *line[] = {&road->marks.at[0].item, &trail->marks.at[0].item};
    double far[2];
    for (int i = 0; i < 2; i++) {
        const struct path_element *last = &line[i]->path[line[i]->count - 1];
        far[i] = vec2_distance(last->p[last->op == OP_CURVE ? 2 : 0], first) / moving->scale;
    }
    ck_assert_double_gt(far[0], far[1] + 0.8); /* feet, of which a numeral takes 0.8 */
}
END_TEST

START_TEST(a_bar_comes_with_the_road_and_goes_with_the_screener)
{
    moving_part_list parts;
    ran(READS);
    const struct moving *moving = whole(&parts);
    const struct segment *segment = parts.at[parts.count - 1].diagram.segment;
    ck_assert_int_eq(segment->branch, 1); /* in which 5 rolls */
    double shift = moving->parts.at[parts.count - 1].from + MOVING_BACK + MOVING_BEFORE -
                   parts.at[parts.count - 1].from;
    double set = segment->record[0].time[MOMENT_SET],
           rolls = segment->record[1].time[MOMENT_STARTED];
    ck_assert_double_gt(set, 0);
    ck_assert_double_gt(rolls, set);
    bool stands = false, after = false;
    for (size_t i = 0; i < moving->groups.count; i++) {
        const struct moving_group *group = &moving->groups.at[i];
        bool bar = group->class == CLASS_SCREEN && group->part < 0;
        stands = stands || (bar && seen(&group->shows, set + shift + moving->tick));
        after = after || (bar && seen(&group->shows, rolls + shift + 2 * moving->tick));
    }
    ck_assert(stands && !after);
}
END_TEST

START_TEST(the_answer_is_not_given_away_before_the_read)
{
    struct moving_part part;
    ran(READS);
    size_t last = diagrams.count - 1;
    const struct moving *moving = alone(last, &part);
    const struct moving_group *roll = line_of(moving, CLASS_MOVE, 5, false);
    ck_assert_ptr_nonnull(roll);
    double set = part.diagram.segment->record[0].time[MOMENT_SET];
    ck_assert(!seen(&roll->shows, set / 2));
}
END_TEST

START_TEST(defenders_may_be_left_out)
{
    struct moving_part part;
    ran(READS);
    part = moving_part_of(&diagrams.at[1]);
    struct scene_options bare = options;
    bare.hide_defense = true;
    const struct moving *moving = moving_make(&arena, &part, 1, &bare);
    ck_assert_ptr_nonnull(actor(moving, body_attacker(1)));
    for (size_t i = 0; i < moving->groups.count; i++) {
        ck_assert(!body_is_defender(moving->groups.at[i].who));
    }
}
END_TEST

START_TEST(all_diagrams_of_a_play_lie_on_one_floor)
{
    ran(READS);
    ck_assert_uint_gt(diagrams.count, 2);
    const struct scene *first = scene_make(&arena, &diagrams.at[0], &options);
    for (size_t i = 1; i < diagrams.count; i++) {
        const struct scene *other = scene_make(&arena, &diagrams.at[i], &options);
        ck_assert_double_eq(other->height, first->height);
        ck_assert_double_eq(other->floor.origin.y, first->floor.origin.y);
    }
    moving_part_list parts;
    ck_assert_double_eq(whole(&parts)->height, first->height);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("moving");
    TCase *tcase = tcase_create("moving");
    tcase_add_checked_fixture(tcase, open_arena, close_arena);
    tcase_set_timeout(tcase, 60);
    tcase_add_test(tcase, everybody_is_where_the_run_has_him);
    tcase_add_test(tcase, keys_are_few_and_stand_on_ticks);
    tcase_add_test(tcase, who_has_the_ball_has_a_ring_and_a_thrown_ball_is_a_dot);
    tcase_add_test(tcase, steps_follow_each_other_without_a_stop);
    tcase_add_test(tcase, a_step_before_its_reads_stops_as_they_are_answered);
    tcase_add_test(tcase, a_step_ends_where_what_its_reads_share_is_done);
    tcase_add_test(tcase, a_second_read_goes_back_to_what_led_to_it);
    tcase_add_test(tcase, between_parts_everybody_walks_back);
    tcase_add_test(tcase, parts_play_in_the_order_of_their_letters);
    tcase_add_test(tcase, a_road_is_gone_as_he_arrives_and_the_trail_stays);
    tcase_add_test(tcase, the_head_of_a_road_stops_beside_who_stands_at_its_end);
    tcase_add_test(tcase, a_bar_comes_with_the_road_and_goes_with_the_screener);
    tcase_add_test(tcase, the_answer_is_not_given_away_before_the_read);
    tcase_add_test(tcase, defenders_may_be_left_out);
    tcase_add_test(tcase, all_diagrams_of_a_play_lie_on_one_floor);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
