/* SPDX-License-Identifier: MIT */
/* Bodies, goals, limits, mirrors, and what must hold for whatever a coach may write. */
#include <dirent.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "base/limits.h"
#include "base/real.h"
#include "resolved.h"
#include "suite.h"
#include "whole_file.h"

static void resolve(struct resolved *out, const char *text)
{
    resolve_text(&arena, out, STR("Test"), str_of(text));
}

static const struct play *only_play(struct resolved *resolved)
{
    ck_assert_uint_eq(resolved->book->plays.count, 1);
    return &resolved->book->plays.at[0];
}

/* ---- bodies and lengths ---- */

START_TEST(bodies_have_numbers_and_names)
{
    ck_assert_int_eq(body_attacker(1), 0);
    ck_assert_int_eq(body_attacker(12), 11);
    ck_assert_int_eq(body_attacker(13), BODY_NONE);
    ck_assert_int_eq(body_attacker(0), BODY_NONE);
    ck_assert_int_eq(body_number(body_defender(7)), 7);
    ck_assert_int_eq(body_defender(13), BODY_NONE);
    ck_assert(body_is_attacker(BODY_COACH) && !body_is_defender(BODY_COACH));
    ck_assert(!body_is_attacker(BODY_NONE) && !body_is_defender(BODY_NONE));
    struct strbuf out;
    strbuf_init(&out, &arena);
    body_print(&out, body_attacker(3));
    body_print(&out, body_defender(3));
    body_print(&out, BODY_COACH);
    ck_assert_str_eq(out.at, "3x3the coach");
}
END_TEST

START_TEST(lengths_are_in_the_coachs_units)
{
    struct play feet = {.metres = false}, metres = {.metres = true};
    struct strbuf out;
    strbuf_init(&out, &arena);
    play_length(&out, &feet, 9.2 * FEET);
    strbuf_char(&out, '|');
    play_length(&out, &feet, 2.4 * FEET);
    strbuf_char(&out, '|');
    play_length(&out, &feet, 2.99 * FEET);
    strbuf_char(&out, '|');
    play_length(&out, &metres, 2.74);
    ck_assert_str_eq(out.at, "9 ft|2.4 ft|3 ft|2.7 m");
}
END_TEST

/* ---- goals ---- */

static void goal_is(const struct goal *goal, struct vec2 from, double x, double y)
{
    struct vec2 position[BODY_COUNT] = {{0, 0}};
    position[1] = vec2_of(3, 4);
    struct vec2 at = goal_point(goal, court_of(COURT_FIBA), 0, from, position);
    ck_assert_msg(vec2_near(at, vec2_of(x, y), 1e-9), "(%d, %d) mm, not (%d, %d)",
                  (int)(at.x * 1000), (int)(at.y * 1000), (int)(x * 1000), (int)(y * 1000));
}

START_TEST(goals_hang_on_where_others_are)
{
    struct goal by = goal_none();
    by.who = 1;
    by.kind = GOAL_BODY;
    goal_is(&by, vec2_of(0, 4), 3, 4);
    by.kind = GOAL_BESIDE; /* 3 ft off on the mover's side */
    goal_is(&by, vec2_of(0, 4), 3 - 3 * FEET, 4);
    by.kind = GOAL_BEHIND; /* away from the ring, 3 ft */
    goal_is(&by, vec2_of(0, 4), 3 + .6 * 3 * FEET, 4 + .8 * 3 * FEET);
    struct goal a = goal_at(vec2_of(1, 1)), b = goal_at(vec2_of(4, 7));
    struct goal mix = goal_none();
    mix.kind = GOAL_MIX;
    mix.a = &a;
    mix.b = &b;
    mix.fraction = 1 / 3.0;
    goal_is(&mix, vec2_of(0, 0), 2, 3);
}
END_TEST

START_TEST(offsets_keep_their_direction)
{
    static const struct {
        enum direction direction;
        double x, y;
    } wanted[] = {{ABOVE, 3, 6},    {BELOW, 3, 2},      {LEFT_OF, 1, 4},
                  {RIGHT_OF, 5, 4}, {INSIDE, 1.8, 2.4}, {OUTSIDE, 4.2, 5.6}};
    struct goal a = goal_at(vec2_of(3, 4)), offset = goal_none();
    offset.kind = GOAL_OFFSET;
    offset.a = &a;
    offset.length = 2;
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++) {
        offset.direction = wanted[i].direction;
        goal_is(&offset, vec2_of(0, 0), wanted[i].x, wanted[i].y);
    }
    offset.direction = INSIDE; /* not through the ring */
    offset.length = 20;
    goal_is(&offset, vec2_of(0, 0), 0, 0);
}
END_TEST

START_TEST(the_lane_is_on_the_movers_side)
{
    struct goal lane = goal_none();
    lane.kind = GOAL_LANE;
    lane.spot = SPOT_LANE;
    const struct court *court = court_of(COURT_FIBA);
    struct vec2 left = court_spot(court, SPOT_LANE, SIDE_LEFT);
    goal_is(&lane, vec2_of(-3, 5), left.x, left.y);
    goal_is(&lane, vec2_of(3, 5), -left.x, left.y);
}
END_TEST

/* ---- notes said again ---- */

static const char *again(const char *note, const char *how)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"Tollgate\"\n  start 1 top, 2 right wing, 3 left wing, 4 right block, "
                 "5 left block\n  step\n    1 dribbles to the nail\n    1 dribbles to top\n"
                 "    point 2 \"%s\"\n  step\n    repeat from step 1%s\n",
                 note, how);
    return text.at;
}

START_TEST(a_note_of_a_mirrored_repeat_names_the_players_and_sides_there)
{
    static const struct {
        const char *note, *there; /* NULL: left out, with a note */
    } rows[] = {
        {"Shoulder to 4's hip", "Shoulder to 5's hip"},
        {"Shoulder to 4\xE2\x80\x99s hip", "Shoulder to 5\xE2\x80\x99s hip"},
        {"Keep it away from x3 until then.", "Keep it away from x2 until then."},
        {"2 and 3: look for 4.", "3 and 2: look for 5."},
        {"1 waits", "1 waits"},
        {"Low, 3 ft off the lane", "Low, 3 ft off the lane"},
        {"Two dribbles; 2 or 3 steps", "Two dribbles; 2 or 3 steps"},
        {"Beat the 2-3 zone, 2-on-1 or 3 on 2", "Beat the 2-3 zone, 2-on-1 or 3 on 2"},
        {"Be there in 2.5 seconds", "Be there in 2.5 seconds"},
        {"This is step 3, a 3", "This is step 3, a 3"},
        {"Left hand, RIGHT foot", "Right hand, LEFT foot"},
        {"Dribble left-handed to the left", "Dribble right-handed to the right"},
        {"Go right away when she is left open", "Go right away when she is left open"},
        {"With 2 hard dribbles", NULL},
        {"2 screens", NULL},
        {"Shoot from 3", NULL},
        {"2\xE2\x80\x93"
         "3 of them",
         NULL},
        {"The right read", NULL},
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        struct resolved r;
        resolve(&r, again(rows[i].note, ", mirrored"));
        const point_list *first = &only_play(&r)->steps.at[0].points;
        const point_list *second = &only_play(&r)->steps.at[1].points;
        ck_assert(str_is(first->at[0].text, rows[i].note));
        ck_assert_msg(second->count == (rows[i].there != NULL), "%s", rows[i].note);
        ck_assert_msg(has_diag(&r, "play.note-left") == !rows[i].there, "%s", rows[i].note);
        if (rows[i].there) {
            ck_assert_int_eq(second->at[0].player, 3);
            ck_assert_msg(str_is(second->at[0].text, rows[i].there), "%s became %.*s", rows[i].note,
                          STR_ARG(second->at[0].text));
        }
    }
}
END_TEST

START_TEST(a_note_of_a_plain_repeat_by_the_same_players_stays_as_it_is)
{
    struct resolved r;
    resolve(&r, again("With 2 hard dribbles, the right read", ""));
    ck_assert_uint_eq(only_play(&r)->steps.at[1].points.count, 1);
    ck_assert(!has_diag(&r, "play.note-left"));
}
END_TEST

START_TEST(notes_and_mistakes_of_a_mirror_keep_their_players_and_change_sides)
{
    struct resolved r;
    resolve(&r, "play \"A\"\n  start five-out\n  point \"2 goes to the left wing\"\n"
                "  step\n    1 passes to 2\n    mistake \"2 hard dribbles with the left hand\"\n"
                "play \"B\" mirrors \"A\"\n");
    const struct play *mirror = &r.book->plays.at[1];
    ck_assert(str_is(mirror->points.at[0].text, "2 goes to the right wing"));
    ck_assert(
        str_is(mirror->steps.at[0].mistakes.at[0].text, "2 hard dribbles with the right hand"));
}
END_TEST

/* ---- what is not as it is said ---- */

static void check_said(const char *lines, const char *id, bool said)
{
    struct resolved r;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "play \"P\"\n  start five-out\n  defense man\n%s", lines);
    resolve(&r, text.at);
    ck_assert_msg(has_diag(&r, id) == said, "%s: %s", id, lines);
}

START_TEST(a_lay_up_far_from_the_rim_is_told)
{
    check_said("  1 passes to 3\n  3 lays it in\n", "play.layup", true);
    check_said("  1 passes to 3 for a layup\n", "play.layup", true);
    check_said("  1 passes to 3\n  3 dunks\n", "play.layup", true);
    check_said("  1 passes to 3\n  3 drives to the rim\n  3 dunks\n", "play.layup", false);
    check_said("  3 cuts to the rim\n  1 passes to 3 for a layup\n", "play.layup", false);
    check_said("  1 passes to 3\n  3 shoots\n", "play.layup", false);
}
END_TEST

START_TEST(a_move_or_a_way_before_the_verb_is_told_when_it_is_left_out)
{
    check_said("  1 steps back and shoots\n", "text.word-dropped", true);
    check_said("  1 spins and drives\n", "text.word-dropped", true);
    check_said("  5 steps out and sets a screen on x1\n", "text.word-dropped", true);
    check_said("  5 comes to screen for 1\n", "text.word-dropped", false);
    check_said("  1 shoots\n", "text.word-dropped", false);
    check_said("  3 catches and shoots\n", "text.word-dropped", false);
}
END_TEST

static void check_help(const char *lines, const char *piece)
{
    struct resolved r;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "play \"P\"\n  start five-out\n  defense man\n%s", lines);
    resolve(&r, text.at);
    for (size_t i = 0; i < r.diags.all.count; i++) {
        const struct diag *diag = &r.diags.all.at[i];
        if (str_is(str_of(diag->row->id), "text.if")) {
            const char *help = str_copy(&arena, diag->help).at;
            ck_assert_msg(strstr(help, piece) != NULL, "no %s in: %s", piece, help);
            return;
        }
    }
    ck_abort_msg("no text.if");
}

START_TEST(the_help_about_an_if_uses_the_condition_of_the_file)
{
    check_help("  if x2 denies, 2 cuts to the rim\n  1 passes to 3\n", "`read x2 denies`");
    check_help("  if x2 denies, 2 cuts to the rim\n  1 passes to 3\n", "`and`");
    check_help("  if x2 denies\n  2 cuts to the rim\n", "if x2 denies, ");
}
END_TEST

/* ---- limits ---- */

static const char *repeated(const char *head, const char *line, int times)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, head);
    for (int i = 0; i < times; i++) {
        strbuf_text(&text, line);
    }
    return text.at;
}

START_TEST(who_starts_out_of_bounds_with_the_ball_throws_in)
{
    static const char *const balls[] = {"ball 3\n", ""};
    for (size_t i = 0; i < 2; i++) {
        struct resolved *out = arena_new(&arena, struct resolved);
        struct strbuf text;
        strbuf_init(&text, &arena);
        strbuf_print(&text,
                     "start 3 out of bounds at right hash, 1 top, 2 left wing, 4 nail, 5 left "
                     "block\n%s3 inbounds to 1\n",
                     balls[i]);
        resolve_text(&arena, out, STR("side"), strbuf_str(&text));
        const struct play *play = &out->book->plays.at[0];
        ck_assert(play->throw_in && play->ball == body_attacker(3) && !play->broken);
        ck_assert_double_gt(play->start[play->ball].at.x, play->court->half_width);
    }
}
END_TEST

START_TEST(a_sideline_without_a_level_is_where_the_list_has_it)
{
    struct resolved *out = arena_new(&arena, struct resolved);
    resolve_text(&arena, out, STR("side"),
                 STR("start 4 right sideline, 1 top, 2 left block, 3 right block, 5 nail\n"
                     "ball 4 out of bounds at right sideline\n1 stays\n"));
    const struct play *play = &out->book->plays.at[0];
    struct vec2 listed = court_spot(play->court, SPOT_SIDELINE, SIDE_RIGHT);
    struct vec2 at = play->start[body_attacker(4)].at;
    ck_assert_double_eq(at.y, listed.y);
    ck_assert_double_gt(at.x, play->court->half_width); /* outside the line, level with it */
}
END_TEST

/* Where the sentences have the first task of a step end; 1 and 5 start in the backcourt. */
static struct vec2 planned_at(const char *lines)
{
    struct resolved r;
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text,
                 "play \"P\"\n  rules high-school\n  floor full\n  start 1 backcourt top, 2 left "
                 "wing, 3 right "
                 "wing, 4 left corner, 5 backcourt left wing\n  ball 1\n  step\n%s",
                 lines);
    resolve(&r, text.at);
    const struct play *play = only_play(&r);
    ck_assert_msg(!play->broken && play->steps.at[0].tasks.count > 0, "%s", lines);
    return play->steps.at[0].tasks.at[0].planned;
}

START_TEST(a_named_sideline_gives_its_side_to_the_place)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    struct vec2 right = court_spot(court, SPOT_HASH, SIDE_RIGHT);
    struct vec2 left = court_spot(court, SPOT_HASH, SIDE_LEFT);
    ck_assert(vec2_near(planned_at("2 runs the right sideline to the hash\n"), right, 1e-9));
    ck_assert(vec2_near(planned_at("3 runs the left sideline to the hash\n"), left, 1e-9));
    ck_assert(vec2_near(planned_at("2 goes to the hash\n"), left, 1e-9)); /* his own */
    ck_assert(vec2_near(planned_at("2 goes to left hash along the right sideline\n"), left, 1e-9));
    struct vec2 half = planned_at("5 goes to half court along the right sideline\n");
    ck_assert_double_gt(half.x, 5);
    ck_assert_double_eq_tol(half.y, court->half_court, 1e-9);
}
END_TEST

START_TEST(who_brings_the_ball_up_ends_over_half_court)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    static const char *const brought[] = {"1 dribbles over half court\n", "1 crosses half court\n",
                                          "1 dribbles to half court\n",
                                          "1 goes to right half court\n"};
    for (size_t i = 0; i < sizeof brought / sizeof *brought; i++) {
        double y = planned_at(brought[i]).y;
        ck_assert_msg(y < court->half_court - 2 * FEET && y > court->half_court - 4 * FEET, "%s",
                      brought[i]);
    }
    ck_assert_double_eq_tol(planned_at("5 goes to half court\n").y, court->half_court, 1e-9);
    ck_assert_double_eq_tol(planned_at("2 gets back\n").y, court->half_court, 1e-9);
}
END_TEST

START_TEST(a_step_holds_so_many_sentences_with_those_it_runs)
{
    static const char head[] = "action \"four\" for runner\n"
                               "  runner jabs\n  runner jabs\n  runner jabs\n  runner jabs\n"
                               "play \"Long\"\n  start five-out\n  step\n";
    static const char run[] = "    run \"four\" with runner 1\n";
    struct resolved r;
    resolve(&r, repeated(head, run, LIMIT_SENTENCES / 4));
    ck_assert(!has_diag(&r, "play.too-many"));
    ck_assert_uint_eq(only_play(&r)->steps.at[0].tasks.count, LIMIT_SENTENCES);
    resolve(&r, repeated(head, run, LIMIT_SENTENCES / 4 + 1));
    ck_assert(has_diag(&r, "play.too-many"));
}
END_TEST

START_TEST(a_step_holds_so_many_branches_with_those_it_runs)
{
    static const char head[] = "action \"two ways\" for runner\n"
                               "  option \"a\"\n    runner jabs\n  option \"b\"\n    runner jabs\n"
                               "play \"Wide\"\n  start five-out\n  step\n";
    static const char run[] = "    run \"two ways\" with runner 1\n";
    struct resolved r;
    resolve(&r, repeated(head, run, LIMIT_BRANCHES / 2));
    ck_assert(!has_diag(&r, "play.too-many"));
    ck_assert_uint_eq(only_play(&r)->steps.at[0].branches.count, LIMIT_BRANCHES);
    resolve(&r, repeated(head, run, LIMIT_BRANCHES / 2 + 1));
    ck_assert(has_diag(&r, "play.too-many"));
    ck_assert_uint_eq(only_play(&r)->steps.at[0].branches.count, LIMIT_BRANCHES);
}
END_TEST

START_TEST(a_book_holds_so_many_plays)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    for (int i = 0; i <= LIMIT_PLAYS; i++) {
        strbuf_print(&text, "play \"p%d\"\n", i);
    }
    struct resolved r;
    resolve(&r, text.at);
    ck_assert(has_diag(&r, "text.too-many") && !has_diag(&r, "play.too-many")); /* said once */
    ck_assert_uint_eq(r.book->plays.count, LIMIT_PLAYS);
}
END_TEST

START_TEST(actions_run_so_deep)
{
    struct resolved r;
    resolve(&r, "action \"a\" for runner\n  runner cuts to the rim\n"
                "action \"b\" for runner\n  run \"a\" with runner runner\n"
                "action \"c\" for runner\n  run \"b\" with runner runner\n"
                "action \"d\" for runner\n  run \"c\" with runner runner\n"
                "action \"e\" for runner\n  run \"d\" with runner runner\n"
                "play \"fits\"\n  run \"d\" with runner 2\n");
    ck_assert(!has_diag(&r, "play.too-deep"));
    ck_assert_uint_eq(only_play(&r)->steps.at[0].tasks.count, 1);
    resolve(&r, "action \"a\" for runner\n  runner cuts to the rim\n"
                "action \"b\" for runner\n  run \"a\" with runner runner\n"
                "action \"c\" for runner\n  run \"b\" with runner runner\n"
                "action \"d\" for runner\n  run \"c\" with runner runner\n"
                "action \"e\" for runner\n  run \"d\" with runner runner\n"
                "play \"too deep\"\n  run \"e\" with runner 2\n");
    ck_assert(has_diag(&r, "play.too-deep"));
}
END_TEST

/* ---- books ---- */

START_TEST(an_error_in_one_play_leaves_the_others_whole)
{
    struct resolved r;
    resolve(&r, "play \"A\"\n  start five-out\n  1 cuts to wing\n"
                "play \"B\"\n  start five-out\n  1 passes to 2\n");
    ck_assert_uint_eq(r.book->plays.count, 2);
    ck_assert(r.book->plays.at[0].broken);
    ck_assert(!r.book->plays.at[1].broken);
    ck_assert_uint_eq(r.book->plays.at[1].steps.at[0].tasks.count, 1);
}
END_TEST

START_TEST(a_play_without_a_line_that_could_not_be_read_is_not_whole)
{
    struct resolved r;
    resolve(&r, "action \"half\" for runner\n  runner flies\n  runner jabs\n"
                "play \"A\"\n  start five-out\n  1 flies\n"
                "play \"B\"\n  start five-out\n  run \"half\" with runner 2\n"
                "play \"C\" mirrors \"A\"\n"
                "play \"D\"\n  start five-out\n  1 jabs\n");
    ck_assert_uint_eq(r.book->plays.count, 4);
    for (size_t i = 0; i < 4; i++) {
        ck_assert(r.book->plays.at[i].broken == (i < 3));
    }
}
END_TEST

START_TEST(a_file_without_a_heading_is_named_after_itself)
{
    struct resolved r;
    resolve(&r, "1 passes to 2\n");
    ck_assert(str_is(only_play(&r)->name, "Test"));
    resolve(&r, "# nothing but a comment\n");
    ck_assert_uint_eq(r.book->plays.count, 0);
}
END_TEST

START_TEST(two_of_a_name_show_both_places)
{
    struct resolved r;
    resolve(&r, "play \"Lantern\"\nplay \"LANTERN\"\n");
    ck_assert(has_diag(&r, "play.duplicate"));
    for (size_t i = 0; i < r.diags.all.count; i++) {
        const struct diag *diag = &r.diags.all.at[i];
        if (strcmp(diag->row->id, "play.duplicate") == 0) {
            ck_assert_uint_ne(diag->other.source, SOURCE_NONE);
            ck_assert_uint_lt(diag->other.begin, diag->span.begin);
        }
    }
}
END_TEST

/* ---- includes ---- */

static enum load_result load_part(void *ctx, struct arena *in, struct str from, struct str path,
                                  struct str *name, struct str *text)
{
    (void)ctx, (void)in, (void)from;
    *name = path;
    *text = STR("limit space.close 10 ft\nplaybook \"Part\"\n  rules nba\nplay \"Inside\"\n");
    return LOAD_OK;
}

START_TEST(an_included_file_brings_its_plays_and_not_its_playbook)
{
    struct resolved r;
    struct loader loader = {load_part, NULL};
    sources_init(&r.sources, &arena);
    diags_init(&r.diags, &arena);
    uint32_t source = sources_add(&r.sources, STR("book.play"),
                                  STR("playbook \"Whole\"\n  rules fiba\ninclude \"part.play\"\n"
                                      "play \"Outside\"\n"));
    struct book *book = book_read(&arena, &r.sources, source, &loader, &r.diags);
    r.book = playbook_resolve(&arena, &r.sources, book, STR("book"), &r.diags);
    ck_assert_uint_eq(r.diags.errors, 0);
    ck_assert(str_is(r.book->title, "Whole"));
    ck_assert_uint_eq(r.book->plays.count, 2);
    const struct play *inside = &r.book->plays.at[0], *outside = &r.book->plays.at[1];
    ck_assert(str_is(inside->name, "Inside") && str_is(outside->name, "Outside"));
    ck_assert_int_eq(inside->rules, COURT_FIBA);
    ck_assert_uint_eq(inside->limits.count, 1); /* the lines of its own file hold for it */
    ck_assert_uint_eq(outside->limits.count, 0);
}
END_TEST

/* ---- every golden ---- */

static char names[256][256];
static int count;

static void find_goldens(void)
{
    DIR *folder = opendir(GOLDEN_DIR);
    for (struct dirent *entry = folder ? readdir(folder) : NULL; entry; entry = readdir(folder)) {
        char *dot = strrchr(entry->d_name, '.');
        if (dot && strcmp(dot, ".play") == 0 && count < 256) {
            snprintf(names[count++], sizeof names[0], "%s", entry->d_name);
        }
    }
    if (folder) {
        closedir(folder);
    }
}

static struct str read_golden(int index)
{
    struct str text;
    ck_assert(whole_file(&arena, str_format(&arena, "%s/%s", GOLDEN_DIR, names[index]).at, &text));
    return text;
}

static void task_is_sound(const struct play *play, const struct step *step, int branch,
                          size_t index)
{
    int tasks = (int)step_task_count(step, branch);
    const struct task *task = step_task(step, branch, index);
    ck_assert(play->start[task->who].on_floor);
    ck_assert(isfinite(task->planned.x) && isfinite(task->planned.y));
    ck_assert_int_lt(task->screen_task, tasks);
    ck_assert(task->supplied == (task->sentence == NULL));
    ck_assert(task->kind != TASK_PASS || task->other < BODY_COUNT);
    ck_assert(task->kind != TASK_USE || task->other < BODY_COUNT);
    ck_assert(task->screen_task < 0 ||
              step_task(step, branch, (size_t)task->screen_task)->kind == TASK_SCREEN);
    for (size_t i = 0; i < task->waits.count; i++) {
        const struct wait *wait = &task->waits.at[i];
        ck_assert(wait->kind != WAIT_TASK || (wait->task >= 0 && wait->task < tasks));
        ck_assert(wait->kind != WAIT_TASK || wait->task != (int)index);
        ck_assert(wait->kind != WAIT_LEAVES || wait->who < BODY_COUNT);
    }
}

static void book_is_sound(const struct playbook *book)
{
    for (size_t p = 0; p < book->plays.count; p++) {
        const struct play *play = &book->plays.at[p];
        for (size_t s = 0; s < play->steps.count; s++) {
            const struct step *step = &play->steps.at[s];
            for (int b = -1; b < (int)step->branches.count; b++) {
                for (size_t i = 0; i < step_task_count(step, b); i++) {
                    task_is_sound(play, step, b, i);
                }
            }
        }
    }
}

START_TEST(without_any_one_line_a_play_still_resolves_soundly)
{
    struct str text = read_golden(_i);
    for (size_t at = 0; at < text.size;) {
        size_t end = at;
        while (end < text.size && text.at[end] != '\n') {
            end++;
        }
        struct strbuf rest;
        strbuf_init(&rest, &arena);
        strbuf_add(&rest, (struct str){text.at, at});
        strbuf_add(&rest, (struct str){text.at + end, text.size - end});
        struct resolved r;
        resolve(&r, rest.at);
        book_is_sound(r.book);
        at = end + 1;
    }
}
END_TEST

START_TEST(a_mirrored_play_is_the_mirror_image)
{
    struct str text = read_golden(_i);
    struct resolved plain;
    resolve_text(&arena, &plain, STR("Test"), text);
    size_t plays = plain.book->plays.count;
    struct strbuf both;
    strbuf_init(&both, &arena);
    strbuf_add(&both, text);
    for (size_t i = 0; i < plays; i++) {
        struct str name = plain.book->plays.at[i].name;
        strbuf_print(&both, "\nplay \"m%d\" mirrors \"%.*s\"\n", (int)i, STR_ARG(name));
    }
    struct resolved r;
    resolve_text(&arena, &r, STR("Test"), strbuf_str(&both));
    ck_assert_uint_eq(r.book->plays.count, 2 * plays);
    for (size_t i = 0; i < plays; i++) {
        const struct play *a = &r.book->plays.at[i], *b = &r.book->plays.at[plays + i];
        if (a->broken || a->metres) {
            continue; /* a broken play may name its own file; units hold for a file's own play */
        }
        ck_assert_uint_eq(a->steps.count, b->steps.count);
        for (body p = 0; p < BODY_COUNT; p++) {
            ck_assert(
                !a->start[p].on_floor ||
                vec2_near(vec2_of(-a->start[p].at.x, a->start[p].at.y), b->start[p].at, 1e-6));
        }
        for (size_t s = 0; s < a->steps.count; s++) {
            ck_assert_uint_eq(a->steps.at[s].tasks.count, b->steps.at[s].tasks.count);
            for (size_t t = 0; t < a->steps.at[s].tasks.count; t++) {
                struct vec2 p = a->steps.at[s].tasks.at[t].planned;
                struct vec2 q = b->steps.at[s].tasks.at[t].planned;
                ck_assert_msg(vec2_near(vec2_of(-p.x, p.y), q, 1e-6), "%s: task %d of step %d",
                              names[_i], (int)t, (int)s + 1);
            }
        }
    }
}
END_TEST

int main(void)
{
    find_goldens();
    Suite *suite = suite_create("play");
    TCase *all = tcase_create("play");
    tcase_set_timeout(all, 120);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, bodies_have_numbers_and_names);
    tcase_add_test(all, lengths_are_in_the_coachs_units);
    tcase_add_test(all, goals_hang_on_where_others_are);
    tcase_add_test(all, offsets_keep_their_direction);
    tcase_add_test(all, the_lane_is_on_the_movers_side);
    tcase_add_test(all, a_lay_up_far_from_the_rim_is_told);
    tcase_add_test(all, a_move_or_a_way_before_the_verb_is_told_when_it_is_left_out);
    tcase_add_test(all, the_help_about_an_if_uses_the_condition_of_the_file);
    tcase_add_test(all, a_note_of_a_mirrored_repeat_names_the_players_and_sides_there);
    tcase_add_test(all, a_note_of_a_plain_repeat_by_the_same_players_stays_as_it_is);
    tcase_add_test(all, notes_and_mistakes_of_a_mirror_keep_their_players_and_change_sides);
    tcase_add_test(all, who_starts_out_of_bounds_with_the_ball_throws_in);
    tcase_add_test(all, a_sideline_without_a_level_is_where_the_list_has_it);
    tcase_add_test(all, a_named_sideline_gives_its_side_to_the_place);
    tcase_add_test(all, who_brings_the_ball_up_ends_over_half_court);
    tcase_add_test(all, a_step_holds_so_many_sentences_with_those_it_runs);
    tcase_add_test(all, a_step_holds_so_many_branches_with_those_it_runs);
    tcase_add_test(all, a_book_holds_so_many_plays);
    tcase_add_test(all, actions_run_so_deep);
    tcase_add_test(all, an_error_in_one_play_leaves_the_others_whole);
    tcase_add_test(all, a_play_without_a_line_that_could_not_be_read_is_not_whole);
    tcase_add_test(all, a_file_without_a_heading_is_named_after_itself);
    tcase_add_test(all, two_of_a_name_show_both_places);
    tcase_add_test(all, an_included_file_brings_its_plays_and_not_its_playbook);
    tcase_add_loop_test(all, without_any_one_line_a_play_still_resolves_soundly, 0, count);
    tcase_add_loop_test(all, a_mirrored_play_is_the_mirror_image, 0, count);
    suite_add_tcase(suite, all);
    return count ? suite_main(suite) : 1;
}
