/* SPDX-License-Identifier: MIT */
/* Diagrams made by hand are drawn as in tests/golden/scene/NAME.scene, to the hundredth of a point,
 * with whatever compiler. `test_golden --write` writes the files anew, to be looked at before they
 * are kept. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "staged.h"
#include "suite.h"

#define POINTS(...)                                                                                \
    ((const double[]){__VA_ARGS__}), sizeof((const double[]){__VA_ARGS__}) / sizeof(double) / 2

static struct staged staged;

static void five(const double spots[5][2], const double defenders[5][2])
{
    for (int i = 0; i < 5; i++) {
        staged_stands(&staged, body_attacker(i + 1), spots[i][0], spots[i][1]);
        if (defenders) {
            staged_stands(&staged, body_defender(i + 1), defenders[i][0], defenders[i][1]);
        }
    }
}

static void screens(void)
{
    static const double spots[5][2] = {
        {8.4, 25.4}, {-16, 19.2}, {20.8, 3.05}, {-20.8, 3.05}, {-7.5, 7.6}};
    static const double defenders[5][2] = {{6, 22}, {-11, 16}, {17, 7}, {-14, 6}, {10.4, 9.5}};
    five(spots, defenders);
    staged_ball(&staged, body_attacker(1));
    size_t cut =
        staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 1.6, POINTS(-10, 15.5, -8.4, 25.4));
    staged.segment->record[cut].has_corner = true;
    staged.segment->record[cut].corner = staged_feet(&staged, -10, 15.5);
    staged_pass(&staged, body_attacker(1), body_attacker(2), 1.3, 1.6);
    staged_screen(&staged, body_attacker(5), body_defender(3), 1.6, 1.5, POINTS(0, 9, 14.3, 6));
    size_t setup = staged_move(&staged, TASK_MOVE, body_attacker(3), 1.8, 1.3, POINTS(20, 9));
    staged_task(&staged, setup)->shape = SHAPE_SETUP;
    size_t curl = staged_move(&staged, TASK_USE, body_attacker(3), 3.1, 1.8,
                              POINTS(15, 3, 12.5, 2.3, 8, 2.8, 0.5, 5));
    staged_task(&staged, curl)->other = body_attacker(5);
    staged_screen(&staged, body_attacker(1), body_defender(5), 2, 1.4, POINTS(10, 18, 10, 12.4));
}

static void hand_off(void)
{
    static const double spots[5][2] = {
        {10.4, 12.6}, {-8.8, 25}, {-8, 8}, {-21.6, 3.4}, {2.6, 20.7}};
    five(spots, NULL);
    staged_ball(&staged, body_attacker(5));
    staged_pass(&staged, body_attacker(5), body_attacker(2), 0, .4);
    staged_move(&staged, TASK_CARRY, body_attacker(2), 0.6, 1.4, POINTS(-15.4, 14));
    staged_move(&staged, TASK_MOVE, body_attacker(4), 0.9, 1.1, POINTS(-22, 9, -19, 15.5));
    staged_handoff(&staged, body_attacker(2), body_attacker(4), 2.1);
    staged_shot(&staged, body_attacker(4), 3);
}

static void throw_in(void)
{
    static const double spots[5][2] = {{-6, 19}, {6, 19}, {13.5, -3}, {7.5, 7.6}, {-7.5, 7.6}};
    static const double defenders[5][2] = {{-3.5, 16.5}, {6, 16}, {11.5, 2}, {5, 8.4}, {-5, 5.3}};
    five(spots, defenders);
    staged_ball(&staged, body_attacker(3));
    staged_screen(&staged, body_attacker(4), body_defender(2), 0, 1, POINTS(5.6, 13));
    size_t cut =
        staged_move(&staged, TASK_USE, body_attacker(2), .8, 1.4, POINTS(3, 17, 2, 13, 2.2, 6));
    staged_task(&staged, cut)->other = body_attacker(4);
    staged_pass(&staged, body_attacker(3), body_attacker(2), 1.9, 2.2);
    staged_move(&staged, TASK_MOVE, body_attacker(5), 1, 1.4, POINTS(-20.8, 3.1));
}

static void drill(void)
{
    staged_stands(&staged, BODY_COACH, 0, 26);
    staged_stands(&staged, body_attacker(1), -8.5, 5.6);
    staged_stands(&staged, body_attacker(2), 16, 19.7);
    staged.play->start[body_attacker(1)].at = staged.home[body_attacker(1)];
    VEC_PUSH(&arena, &staged.play->cones, staged_feet(&staged, 6.6, 19));
    VEC_PUSH(&arena, &staged.play->lines, body_attacker(1));
    staged_ball(&staged, BODY_COACH);
    staged_pass(&staged, BODY_COACH, body_attacker(2), 0, .5);
    staged_move(&staged, TASK_MOVE, body_attacker(1), .5, 2, POINTS(0, 14, 6.5, 20, 13, 17));
    staged_move(&staged, TASK_CARRY, body_attacker(2), .6, 2, POINTS(18.5, 15, 18, 12, 12.6, 6));
}

static void full_floor(void)
{
    static const double spots[5][2] = {{-6, 65}, {6, 65}, {0, 42}, {13.5, 87}, {0, 9.4}};
    five(spots, NULL);
    staged.play->full_floor = true;
    staged_ball(&staged, body_attacker(4));
    staged_move(&staged, TASK_MOVE, body_attacker(2), 0, 1, POINTS(19, 69));
    staged_pass(&staged, body_attacker(4), body_attacker(2), .5, 1);
    staged_move(&staged, TASK_MOVE, body_attacker(3), .5, 1.5, POINTS(1.4, 55));
    staged_pass(&staged, body_attacker(2), body_attacker(3), 1.6, 2);
}

struct golden {
    const char *name;
    void (*stage)(void);
    enum court_code court;
    double width;
    body accent;
    bool beads;
    enum theme theme;
};
static const struct golden goldens[] = {
    {"screens", screens, COURT_HIGH_SCHOOL, 237.6, BODY_NONE, false, THEME_PRINT},
    {"screens-for-3", screens, COURT_HIGH_SCHOOL, 237.6, 3 - 1, false, THEME_PRINT},
    {"screens-small", screens, COURT_HIGH_SCHOOL, 115.2, BODY_NONE, false, THEME_PRINT},
    {"screens-beads", screens, COURT_HIGH_SCHOOL, 237.6, BODY_NONE, true, THEME_PRINT},
    {"screens-dark", screens, COURT_HIGH_SCHOOL, 300, BODY_NONE, false, THEME_DARK},
    {"hand-off", hand_off, COURT_NBA, 237.6, BODY_NONE, false, THEME_PRINT},
    {"throw-in", throw_in, COURT_FIBA, 237.6, BODY_NONE, false, THEME_PRINT},
    {"drill", drill, COURT_MINI, 237.6, BODY_NONE, false, THEME_SCREEN},
    {"full-floor", full_floor, COURT_HIGH_SCHOOL, 504, BODY_NONE, false, THEME_PRINT},
};
enum { GOLDENS = sizeof goldens / sizeof *goldens };

static struct str drawn(const struct golden *golden)
{
    staged_begin(&staged, &arena, golden->court);
    golden->stage();
    staged_end(&staged);
    struct scene_options options = {.width = golden->width,
                                    .theme = golden->theme,
                                    .accent = golden->accent,
                                    .beads = golden->beads};
    struct strbuf out;
    strbuf_init(&out, &arena);
    scene_dump(&out, scene_make(&arena, &staged.diagram, &options));
    return strbuf_str(&out);
}

static FILE *golden_open(const struct golden *golden, const char *mode)
{
    char path[512];
    snprintf(path, sizeof path, "%s/%s.scene", GOLDEN_DIR, golden->name);
    return fopen(path, mode);
}

START_TEST(a_diagram_is_drawn_as_kept)
{
    const struct golden *golden = &goldens[_i];
    struct str now = drawn(golden);
    FILE *file = golden_open(golden, "rb");
    ck_assert_msg(file != NULL, "%s.scene is missing", golden->name);
    char *kept = arena_take(&arena, now.size + 2);
    size_t size = fread(kept, 1, now.size + 1, file);
    fclose(file);
    size_t same = 0, line = 1;
    while (same < size && same < now.size && kept[same] == now.at[same]) {
        line += kept[same++] == '\n' ? 1 : 0;
    }
    ck_assert_msg(size == now.size && same == size, "%s.scene differs in line %zu", golden->name,
                  line);
}
END_TEST

static int write_goldens(void)
{
    open_arena();
    for (int i = 0; i < GOLDENS; i++) {
        struct str now = drawn(&goldens[i]);
        FILE *file = golden_open(&goldens[i], "wb");
        if (!file || fwrite(now.at, 1, now.size, file) != now.size || fclose(file) != 0) {
            return EXIT_FAILURE;
        }
    }
    close_arena();
    return EXIT_SUCCESS;
}

int main(int argc, char **argv)
{
    if (argc > 1 && strcmp(argv[1], "--write") == 0) {
        return write_goldens();
    }
    Suite *suite = suite_create("golden");
    TCase *all = tcase_create("golden");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, a_diagram_is_drawn_as_kept, 0, GOLDENS);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
