/* SPDX-License-Identifier: MIT */
/* Crowded pictures of texts that were run: lines that no bow brings clear find a way between the
 * marks, and the waves of a dribble swing so that none lies along another line. */
#include "pictured.h"
#include "written.h"

struct crowd {
    const char *what, *text;
};

/* A dribble that crosses a line, or comes off a screen beside the screener's: the sides of its
 * waves are as steep as that line. */
static const struct crowd waves[] = {
    {"crosses the screener's way out", "play \"Quay\"\n"
                                       "  rules high-school\n"
                                       "  level varsity girls\n"
                                       "  defense man\n"
                                       "  start one-three-one\n"
                                       "  step 1\n"
                                       "    5 v-cuts to left hash\n"
                                       "    3 ball screens for 1\n"
                                       "    1 drives off 3\n"
                                       "    3 pops to right corner\n"},
    {"goes back beside the dribble", "play \"Quay\"\n"
                                     "  rules high-school\n"
                                     "  level college men\n"
                                     "  defense man sag\n"
                                     "  start 1 right slot, 2 right corner, 3 at (-2, 14), "
                                     "4 left slot, 5 right hash\n"
                                     "  ball 1\n"
                                     "  step 1\n"
                                     "    1 drives to the rim\n"
                                     "    1 overhead passes to 5\n"
                                     "    1 clears to right slot\n"},
};

/* Where a bow to either side would only lead onto the next mark. */
static const struct crowd marks[] = {
    {"between a numeral and the hoop", "play \"Quay\"\n"
                                       "  rules high-school\n"
                                       "  level u16\n"
                                       "  defense man gap\n"
                                       "  start baseline inbounds box\n"
                                       "  step 1\n"
                                       "    1 cuts to right hash\n"
                                       "    3 inbounds to 1\n"
                                       "    3 cuts to left high post\n"
                                       "    0.3 s after 3 passes, 1 drives baseline\n"
                                       "    1 shoots\n"
                                       "    3 rebounds\n"
                                       "    4 gets back\n"},
    {"round a screen beside a numeral", "play \"Quay\"\n"
                                        "  rules high-school\n"
                                        "  level varsity\n"
                                        "  defense man gap\n"
                                        "  start one-four high\n"
                                        "  step 1\n"
                                        "    3 sets up toward the baseline\n"
                                        "    4 screens for 3\n"
                                        "    3 curls off 4\n"
                                        "    4 pops to right corner\n"
                                        "    1 passes to 3\n"},
    {"off the ring at which it ends", "play \"Quay\"\n"
                                      "  rules nba\n"
                                      "  level u14 boys\n"
                                      "  defense man deny\n"
                                      "  start 1 right corner, 2 left corner, 3 the nail, "
                                      "4 left wing, 5 right wing\n"
                                      "  ball 1\n"
                                      "  step 1\n"
                                      "    5 and 2 exchange\n"
                                      "    3 stays\n"
                                      "    1 dribbles at 2\n"
                                      "    1 hands off to 2\n"
                                      "    2 drives to the rim\n"},
    {"on the side of a bar on which it was run", "play \"Quay\"\n"
                                                 "  rules high-school\n"
                                                 "  level u16\n"
                                                 "  defense man gap\n"
                                                 "  start one-four high\n"
                                                 "  step 1\n"
                                                 "    2 and 4 screen for 5\n"
                                                 "    5 comes off 2 and 4 to right corner\n"
                                                 "    5 screens for 2\n"
                                                 "    2 comes off 5 to right wing\n"
                                                 "    5 rolls to the rim\n"
                                                 "    1 chest passes to 2\n"},
};

/* A hand-off where somebody stands, or runs end, moves aside. */
static const struct crowd handoffs[] = {
    {"where others stand in a stack", "play \"Quay\"\n"
                                      "  rules high-school\n"
                                      "  level professional men\n"
                                      "  defense man gap\n"
                                      "  start stack\n"
                                      "  step 1\n"
                                      "    1 dribbles at 2\n"
                                      "    1 hands off to 2\n"
                                      "    2 dribbles to left wing\n"
                                      "    after 2 dribbles, 1 screens for 3\n"
                                      "    1 slips\n"
                                      "    2 chest passes to 1\n"},
    {"where somebody finishes", "play \"Quay\"\n"
                                "  rules fiba\n"
                                "  level jv girls\n"
                                "  defense man\n"
                                "  start three-out two-in\n"
                                "  step 1\n"
                                "    1 dribbles at 2\n"
                                "    1 hands off to 2\n"
                                "    after 1 hands off, 2 drives to the rim\n"
                                "    as 1 dribbles, 4 back screens for 1\n"
                                "    1 fades off 4 to top\n"
                                "    4 pops to right wing\n"},
    {"a screener takes a hand-off at his bar",
     "play \"Quay\"\n"
     "  rules nba\n"
     "  level varsity boys\n"
     "  defense man\n"
     "  start 1 right corner, 2 left slot, 3 the nail, 4 left dunker spot, 5 left wing\n"
     "  ball 1\n"
     "  step 1\n"
     "    4 stays\n"
     "    2 screens for 3\n"
     "    3 rejects 2\n"
     "    1 overhead passes to 3\n"
     "    after 1 passes, 3 dribbles at 2\n"
     "    3 hands off to 2\n"
     "    after 1 passes, 2 drives to the rim\n"},
};

/* Where so many stand about one place that no line finds a way: a numeral a foot off its place
 * makes one. */
static const struct tight {
    struct crowd crowd;
    double width; /* points */
} numerals[] = {
    {{"a screener beside a drive", "play \"Quay\"\n"
                                   "  rules nba\n"
                                   "  level jv girls\n"
                                   "  defense man gap\n"
                                   "  start box\n"
                                   "  step 1\n"
                                   "    2 sets up toward the rim\n"
                                   "    4 cross screens for 2\n"
                                   "    2 curls off 4\n"
                                   "    4 pops to right wing\n"
                                   "    1 passes to 2\n"
                                   "    3 sinks to left slot\n"
                                   "    2 dribbles at 4\n"
                                   "    2 hands off to 4\n"
                                   "    after 3 moves, 4 drives to the rim\n"},
     237.6},
    {{"two bars at one place", "play \"Quay\"\n"
                               "  rules nba\n"
                               "  level jv boys\n"
                               "  defense man\n"
                               "  start stack\n"
                               "  step 1\n"
                               "    1 dribbles at 3\n"
                               "    1 hands off to 3\n"
                               "    3 dribbles to top\n"
                               "    4 back screens for 5\n"
                               "    4 slips\n"
                               "    after 4 moves, 3 shoots\n"
                               "    1 rebounds\n"
                               "    4 gets back\n"},
     237.6},
    {{"a screen at the edge",
      "play \"Quay\"\n"
      "  rules nba\n"
      "  level jv boys\n"
      "  defense man gap\n"
      "  start 1 right corner, 2 left wing, 3 top, 4 left corner, 5 at 2 ft above left block\n"
      "  ball 1\n"
      "  step 1\n"
      "    2 ball screens for 1\n"
      "    1 dribbles off 2 to left slot\n"
      "    2 pops to left wing\n"
      "    1 passes to 5\n"},
     115.2},
    {{"a corner full of marks",
      "play \"Quay\"\n"
      "  rules high-school\n"
      "  level jv girls\n"
      "  defense man\n"
      "  start 1 right corner, 2 left corner, 3 the nail, 4 right dunker spot, 5 right mid post\n"
      "  ball 1\n"
      "  step 1\n"
      "    1 passes to 4\n"
      "    1 s after 4 catches, 1 cuts to the rim\n"
      "    1 clears to left wing\n"
      "    after 1 passes, 4 dribbles at 1\n"
      "    4 hands off to 1\n"
      "    1 drives to the rim\n"},
     115.2},
};

/* Where no numeral of those on whom something lies makes room by itself: a ring does, who stands
 * beside, or more of it; a bowed pass goes back into the picture. */
static const struct {
    struct crowd crowd;
    int step;
    double width; /* points */
} parted[] = {
    {{"a screen beside another",
      "play \"Quay\"\n"
      "  rules high-school\n"
      "  level middle-school boys\n"
      "  defense man gap\n"
      "  start 1 left corner, 2 left slot, 3 the nail, 4 left dunker spot, 5 right short corner\n"
      "  ball 1\n"
      "  step 1\n"
      "    5 and 2 exchange\n"
      "  step 2\n"
      "    4 and 2 exchange\n"
      "    3 and 5 screen for 2\n"
      "    2 comes off 3 and 5 to left wing\n"
      "    1 lob passes to 2\n"
      "    0.5 s after 1 passes, 5 sets up toward the baseline\n"},
     2,
     115.2},
    {{"a pass below the floor", "play \"Quay\"\n"
                                "  rules fiba\n"
                                "  level u14 girls\n"
                                "  defense man\n"
                                "  start horns\n"
                                "  step 1\n"
                                "    5 cuts to 2 ft above left dunker spot\n"
                                "    1 shot fakes\n"
                                "    5 cuts to left wing\n"
                                "  step 2\n"
                                "    1 skip passes to 3\n"
                                "    1 ball screens for 3\n"
                                "    3 dribbles off 1 to right slot\n"
                                "    1 pops to top\n"
                                "    3 overhead passes to 1\n"},
     2,
     237.6},
    {{"a hand-off beside a numeral",
      "play \"Quay\"\n"
      "  rules fiba\n"
      "  level professional men\n"
      "  defense man sag\n"
      "  start 1 left slot, 2 top, 3 left elbow, 4 left hash, 5 left wing\n"
      "  ball 1\n"
      "  step 1\n"
      "    2 stays\n"
      "    3 and 4 exchange\n"
      "    1 dribbles at 3\n"
      "    1 hands off to 3\n"
      "    0.5 s later, 3 drives to the rim\n"},
     1,
     115.2},
};

/* A screener and his bar are one mark. */
static const char screener[] =
    "play \"Quay\"\n"
    "  start 1 right slot, 2 right corner, 3 left slot, 4 right block, 5 left corner\n"
    "  ball 1\n"
    "  defense man\n"
    "  step\n"
    "    5 stays\n"
    "    1 passes to 3\n"
    "    4 back screens for 2\n"
    "    2 comes off 4 to left block\n";

static void is_clean(const struct crowd *crowd, int step, double width)
{
    struct scene_measure found;
    scene_measure(&arena, pictured(crowd->text, step, -1, width), &found);
    ck_assert_msg(scene_measure_hidden(&found) == 0, "%s: %d lie on something", crowd->what,
                  scene_measure_hidden(&found));
    ck_assert_msg(found.wrong_sides == 0, "%s: passed on the other side", crowd->what);
}

START_TEST(waves_lie_along_no_line)
{
    is_clean(&waves[_i], 1, 237.6);
}
END_TEST

START_TEST(a_line_finds_its_way_between_marks)
{
    is_clean(&marks[_i], 1, 237.6);
}
END_TEST

START_TEST(a_hand_off_moves_aside)
{
    is_clean(&handoffs[_i], 1, 237.6);
}
END_TEST

START_TEST(a_numeral_makes_room)
{
    is_clean(&numerals[_i].crowd, 1, numerals[_i].width);
}
END_TEST

START_TEST(a_crowd_is_parted)
{
    is_clean(&parted[_i].crowd, parted[_i].step, parted[_i].width);
}
END_TEST

START_TEST(no_line_lies_between_a_screener_and_his_bar)
{
    struct scene_measure found;
    scene_measure(&arena, pictured(screener, 1, -1, 151.2), &found);
    ck_assert_int_eq(found.crossings, 0);
}
END_TEST

/* A ball screen at the top, and what is read of it. */
#define HORNS                                                                                      \
    "play \"P\"\n  start horns\n  ball 1\n  defense man\n  step\n    2 and 3 stay\n    5 ball "    \
    "screens for 1\n"

/* Where a number has no place beside its line, a numeral makes room for it as well. */
START_TEST(a_numeral_makes_room_for_a_number)
{
    struct scene_measure found;
    const struct scene *scene = pictured(HORNS "    read x5 traps\n"
                                               "      1 dribbles off 5 to left wing\n"
                                               "      5 rolls to the nail\n"
                                               "      1 passes to 5\n"
                                               "      as 5 catches, 4 cuts to the rim\n"
                                               "      5 bounce passes to 4\n",
                                         1, 0, 237.6);
    scene_measure(&arena, scene, &found);
    ck_assert_int_eq(found.labels_left_out, 0);
    ck_assert_int_eq(scene_measure_hidden(&found), 0);
}
END_TEST

/* The thin line from the disc of a number; NULL: it has none. */
static const struct scene_item *leader_of(const struct scene *scene, const char *number)
{
    for (size_t i = 2; i < scene->items.count; i++) { /* behind its line and its disc */
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_ORDER && item->shape == ITEM_TEXT && str_is(item->text, number)) {
            const struct scene_item *before = &scene->items.at[i - 2];
            return before->class == CLASS_ORDER && before->shape == ITEM_PATH ? before : NULL;
        }
    }
    ck_abort_msg("no disc %s", number);
    return NULL;
}

START_TEST(a_thin_line_leads_to_a_number_without_a_place)
{
    struct scene_measure found;
    struct scene *scene = pictured(HORNS "    read x5 drops\n"
                                         "      1 dribbles off 5 to left elbow\n"
                                         "      4 clears to right wing\n"
                                         "      5 rolls to right block\n"
                                         "      1 shoots\n",
                                   1, 0, 152);
    scene_measure(&arena, scene, &found);
    ck_assert_int_eq(found.labels_left_out, 0);
    ck_assert_int_eq(found.labels_astray, 0);
    const struct scene_item *leader = leader_of(scene, "1");
    ck_assert_ptr_nonnull(leader);
    ck_assert_ptr_null(leader_of(scene, "3"));
    const struct scene_item *screen = drawn_line(scene, CLASS_SCREEN, body_attacker(5));
    struct vec2 tip = leader->path[leader->count - 1].p[0], a = screen->path[0].p[0],
                b = screen->path[screen->count - 1]
                        .p[screen->path[screen->count - 1].op == OP_CURVE ? 2 : 0];
    ck_assert_double_lt(segment_distance(tip, a, b, NULL), 1.5);
}
END_TEST

static const char *dumped(const struct diagram *diagram, body reader, struct scene_memory *memory)
{
    struct scene_options options = {.width = 237.6, .accent = reader, .memory = memory};
    struct strbuf out;
    strbuf_init(&out, &arena);
    scene_dump(&out, scene_make(&arena, diagram, &options));
    return text_of(strbuf_str(&out));
}

/* In whatever order they are made, and whether or not anything is known of them. */
START_TEST(each_players_picture_is_the_same_with_what_is_known_of_it)
{
    struct scene_memory *memory = scene_memory_new(&arena);
    for (size_t i = 0; i < sizeof numerals / sizeof *numerals; i++) {
        const struct diagram *diagram = diagram_of(numerals[i].crowd.text, 1, -1);
        const body readers[] = {body_attacker(1), BODY_NONE, body_attacker(5)};
        for (size_t n = 0; n < sizeof readers / sizeof *readers; n++) {
            body reader = readers[n];
            ck_assert_str_eq(dumped(diagram, reader, memory), dumped(diagram, reader, NULL));
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("crowds");
    TCase *all = tcase_create("crowds");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, waves_lie_along_no_line, 0, sizeof waves / sizeof *waves);
    tcase_add_loop_test(all, a_line_finds_its_way_between_marks, 0, sizeof marks / sizeof *marks);
    tcase_add_loop_test(all, a_hand_off_moves_aside, 0, sizeof handoffs / sizeof *handoffs);
    tcase_add_loop_test(all, a_numeral_makes_room, 0, sizeof numerals / sizeof *numerals);
    tcase_add_loop_test(all, a_crowd_is_parted, 0, sizeof parted / sizeof *parted);
    tcase_add_test(all, no_line_lies_between_a_screener_and_his_bar);
    tcase_add_test(all, a_numeral_makes_room_for_a_number);
    tcase_add_test(all, each_players_picture_is_the_same_with_what_is_known_of_it);
    tcase_add_test(all, a_thin_line_leads_to_a_number_without_a_place);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
