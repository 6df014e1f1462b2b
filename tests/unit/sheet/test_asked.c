/* SPDX-License-Identifier: MIT */
/* What a fill-in sheet asks: which lines are taken away, by which words they are asked for, and
 * that nothing which stays tells where they go. */
#include "base/geom/shape.h"
#include "language/tell/tell.h"
#include "page/sheet/blanked.h"
#include "ran.h"
#include "suite.h"
#include "written.h"

#include <string.h>

#define WIDTH 237.6
#define WHEEL                                                                                      \
    "play \"Tollgate\"\n"                                                                          \
    "  start five-out\n"                                                                           \
    "  ball 1\n"                                                                                   \
    "  step \"Pass and cut\"\n"                                                                    \
    "    1 passes to 2\n"                                                                          \
    "    1 cuts to the rim\n"                                                                      \
    "    1 clears to left corner\n"                                                                \
    "    3 fills top\n"                                                                            \
    "    5 fills left wing\n"
#define HORNS                                                                                      \
    "play \"Windlass\"\n"                                                                          \
    "  start horns\n"                                                                              \
    "  ball 1\n"                                                                                   \
    "  defense man\n"                                                                              \
    "  step \"Screen at the top\"\n"                                                               \
    "    2 and 3 stay\n"                                                                           \
    "    5 ball screens for 1\n"                                                                   \
    "    read x5 drops \"Into the gap\"\n"                                                         \
    "      1 dribbles off 5 to left elbow\n"                                                       \
    "      4 clears to right wing\n"                                                               \
    "      5 rolls to right block\n"                                                               \
    "      1 shoots\n"                                                                             \
    "    read x5 traps \"Short roll\"\n"                                                           \
    "      1 dribbles off 5 to left wing\n"                                                        \
    "      5 rolls to the nail\n"                                                                  \
    "      1 passes to 5\n"                                                                        \
    "      as 5 catches, 4 cuts to the rim\n"                                                      \
    "      5 bounce passes to 4\n"
#define HANDOFF                                                                                    \
    "play \"Millrace\"\n"                                                                          \
    "  start four-out one-in, 1 top, 2 right wing\n"                                               \
    "  ball 1\n"                                                                                   \
    "  defense man\n"                                                                              \
    "  step \"Dribble at the wing\"\n"                                                             \
    "    1 dribbles at 2\n"                                                                        \
    "    read otherwise \"Hand-off\"\n"                                                            \
    "      2 sets up toward the baseline\n"                                                        \
    "      1 hands off to 2\n"                                                                     \
    "      2 drives to the rim\n"                                                                  \
    "    read 2 is denied \"Back door\"\n"                                                         \
    "      after 1 dribbles, 2 back cuts to the rim\n"                                             \
    "      1 bounce passes to 2\n"
static const char *const plays[] = {PLAY READS, WHEEL, HORNS, HANDOFF};
enum { PLAYS = sizeof plays / sizeof *plays, SEEDS = 8 };

static asked_list ask(const struct play *play, uint64_t seed, size_t least)
{
    asked_list asked = {0};
    asked_of(&arena, play, &diagrams, seed, least, WIDTH, &asked);
    return asked;
}

/* All questions about a play, or all answers, in one text. */
static const char *told(const asked_list *asked, bool answers)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < asked->count; i++) {
        for (size_t k = 0; k < asked->at[i].blanks.count; k++) {
            const struct blank *blank = &asked->at[i].blanks.at[k];
            struct str text = tell_strip(&arena, answers ? blank->answer : blank->question);
            strbuf_print(&out, "%c: %.*s ", blank->letter, STR_ARG(text));
        }
    }
    return text_of(strbuf_str(&out));
}

/* Is it said with one of so many seeds? */
static bool is_ever_told(const struct play *play, uint64_t seeds, size_t least, bool answers,
                         const char *words)
{
    bool found = false;
    for (uint64_t seed = 0; seed < seeds && !found; seed++) {
        asked_list asked = ask(play, seed, least);
        found = strstr(told(&asked, answers), words) != NULL;
    }
    return found;
}

static const struct asked *asked_as(const asked_list *asked, const char *title)
{
    for (size_t i = 0; i < asked->count; i++) {
        if (strcmp(plain(asked->at[i].title), title) == 0) {
            return &asked->at[i];
        }
    }
    ck_abort_msg("nothing is asked about \"%s\"", title);
    return NULL;
}

/* ---- words ---- */

START_TEST(a_read_is_asked_by_what_the_defender_does)
{
    const struct play *play = run_text(PLAY READS);
    asked_list asked = ask(play, 0, 3);
    const struct asked *curl = asked_as(&asked, "x3 trails");
    ck_assert_uint_eq(curl->blanks.count, 2);
    ck_assert_str_eq(plain(curl->blanks.at[0].question), "What does 3 do? Draw a run.");
    ck_assert_str_eq(plain(curl->blanks.at[1].question),
                     "To whom does 1 pass, and where? Draw a pass.");
    ck_assert_ptr_nonnull(strstr(plain(curl->blanks.at[0].answer), "3 curls off 5"));
    ck_assert_str_eq(plain(curl->blanks.at[1].answer),
                     "1 passes to 3 as 3 gets there. 3 gets it at the nail.");
    ck_assert_uint_eq(curl->lines, 2);
    ck_assert_ptr_null(strstr(told(&asked, false), "Curl")); /* its name gives it away */
    asked_as(&asked, "Otherwise");
}
END_TEST

START_TEST(who_takes_a_hand_off_is_asked_whose_it_is)
{
    const struct play *play = run_text(HANDOFF);
    bool found = false;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        asked_list asked = ask(play, seed, 2);
        const struct blank *blank = &asked_as(&asked, "Otherwise")->blanks.at[0];
        if (blank->lines == 3) { /* else the hand-off stays drawn */
            ck_assert_int_eq(blank->who, body_attacker(2));
            ck_assert_str_eq(
                plain(blank->question),
                "What does 2 do? Draw a run, then the hand-off from 1, then a dribble.");
            found = true;
        }
    }
    ck_assert(found);
}
END_TEST

START_TEST(a_shot_goes_with_the_way_to_its_place)
{
    const struct play *play = run_text(HORNS);
    asked_list asked = ask(play, 0, 2);
    const struct asked *gap = asked_as(&asked, "x5 drops");
    ck_assert_str_eq(plain(gap->blanks.at[0].question),
                     "What does 1 do? Draw a dribble, then a shot.");
    ck_assert_uint_eq(gap->blanks.at[0].lines, 2);
}
END_TEST

START_TEST(a_screener_is_asked_for_the_next_move)
{
    const struct play *play = run_text(PLAY "    3 curls off 5 to the nail\n"
                                            "    5 pops to left wing\n");
    bool found = false;
    for (uint64_t seed = 0; seed < SEEDS && !found; seed++) {
        asked_list asked = ask(play, seed, 1);
        const struct blank *blank = &asked.at[0].blanks.at[0];
        found = strcmp(plain(blank->question),
                       "5 has set the screen. What does 5 do next? Draw a run.") == 0;
        if (found) {
            ck_assert_ptr_nonnull(strstr(plain(blank->answer), "5 pops to the left wing"));
        }
    }
    ck_assert(found);
}
END_TEST

static void asks_alone(const char *text, const char *question, body who)
{
    const struct play *play = run_text(text);
    asked_list asked = ask(play, 0, 4);
    ck_assert_str_eq(told(&asked, false), question);
    ck_assert_int_eq(asked.at[0].blanks.at[0].who, who);
}

START_TEST(a_screener_of_a_read_is_asked_with_what_the_defender_does)
{
    const struct play *play = run_text(PLAY READS);
    ck_assert(is_ever_told(play, 20, 6, false,
                           "5 has set the screen, and x3 trails. What "
                           "does 5 do next? Draw a run."));
}
END_TEST

/* Nobody does anything there that would tell a roll from a pop. */
START_TEST(what_a_screener_does_when_nothing_is_read_is_asked_as_a_place)
{
    const struct play *play = run_text(PLAY "    read otherwise \"Wait\"\n"
                                            "      5 pops to left wing\n"
                                            "      3 comes off 5 to the rim\n"
                                            "    read x3 trails \"Curl\"\n"
                                            "      3 curls off 5 to the nail\n");
    bool found = false;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        asked_list asked = ask(play, seed, 6);
        ck_assert_ptr_null(strstr(told(&asked, false), "5 has set the screen"));
        found = found || strstr(told(&asked, false), "5 is on the move. Where does 5 stop?");
    }
    ck_assert(found);
}
END_TEST

START_TEST(when_is_asked_where_the_coach_says_when)
{
    const struct play *play = run_text(PLAY "    read x3 trails \"Curl\"\n"
                                            "      3 curls off 5 to the nail\n"
                                            "      1 s after 3 curls, 1 passes to 3\n"
                                            "    read otherwise\n"
                                            "      3 comes off 5 to left wing\n");
    ck_assert(is_ever_told(play, SEEDS, 6, false, "To whom does 1 pass, where, and when?"));
}
END_TEST

START_TEST(which_way_is_asked_where_it_is_told)
{
    asks_alone("play \"Loom\"\n  start five-out\n  ball 1\n  step \"Round\"\n"
               "    4 v-cuts to left wing\n    2 and 3 stay\n",
               "A: 4 is on the move. Which way, and where does 4 stop? Draw a run. ",
               body_attacker(4));
}
END_TEST

START_TEST(both_screeners_of_a_stagger_are_named)
{
    const struct play *play = run_text(
        "play \"Loom\"\n  start 1 left wing, 2 top, 3 right corner, 4 left block, 5 right block\n"
        "  ball 2\n  defense man\n  step \"Along the baseline\"\n"
        "    5 and 4 screen for 3\n    3 comes off 5 and 4 to left corner\n");
    ck_assert(is_ever_told(play, SEEDS, 4, false, "5 and 4 screen for 3. "));
    ck_assert(!is_ever_told(play, SEEDS, 4, false, "5 screens for 3. Which"));
}
END_TEST

/* A slip goes as if to screen; a screen that is set is answered with its place. */
START_TEST(a_screen_is_answered_with_its_place_when_it_is_set)
{
    const struct play *play = run_text(PLAY "    5 stays\n    4 clears to left wing\n");
    ck_assert(is_ever_told(play, SEEDS, 4, true, "5 stops "));
    run_text(HORNS "    read x5 hedges \"Slip\"\n      5 slips to the rim\n"
                   "      1 bounce passes to 5\n");
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        asked_list asked = ask(&resolved.book->plays.at[0], seed, 4);
        ck_assert_ptr_null(strstr(told(&asked, true), "5 stops "));
    }
}
END_TEST

/* Who gets the ball would be told by who has a blank for the pass after it. */
START_TEST(who_gets_the_ball_is_not_told_by_who_has_it_next)
{
    asks_alone("play \"Loom\"\n  start five-out\n  ball 1\n  step \"Round\"\n"
               "    1 passes to 3\n    3 shoots\n",
               "A: 1 gives up the ball. Who gets it, and what then? Draw a pass, then a shot by "
               "whoever has the ball. ",
               body_attacker(1));
}
END_TEST

/* "Draw a run, then a shot" would tell to whom the pass is. */
START_TEST(who_gets_the_ball_is_not_told_by_a_neighbors_question)
{
    const struct play *play = run_text(PLAY "    read x3 trails \"Curl\"\n"
                                            "      3 curls off 5 to the nail\n"
                                            "      1 passes to 3\n      3 shoots\n"
                                            "    read otherwise \"Wait\"\n      1 passes to 2\n");
    asked_list asked = ask(play, 0, 3);
    const struct asked *curl = asked_as(&asked, "x3 trails");
    ck_assert_uint_eq(curl->blanks.count, 2);
    ck_assert_str_eq(plain(curl->blanks.at[0].question), "What does 3 do? Draw a run.");
    ck_assert_str_eq(plain(curl->blanks.at[1].question),
                     "1 gives up the ball. Who gets it, and what then? Draw a pass, then a shot by "
                     "whoever has the ball.");
}
END_TEST

/* The pop to the wing is in both reads: where one asks for it, so does the other, or it has another
 * page. */
START_TEST(what_one_read_asks_for_its_sister_does_not_draw)
{
    const struct play *play = run_text(PLAY "    read x3 trails \"Curl\"\n"
                                            "      3 curls off 5 to the nail\n"
                                            "      5 pops to left wing\n"
                                            "    read x3 goes under \"Fade\"\n"
                                            "      3 fades off 5 to left corner\n"
                                            "      5 pops to left wing\n");
    bool pop = false;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        asked_list asked = ask(play, seed, 2);
        size_t asks = 0;
        for (size_t i = 0; i < asked.count; i++) {
            for (size_t k = 0; k < asked.at[i].blanks.count; k++) {
                asks += asked.at[i].blanks.at[k].who == body_attacker(5);
            }
        }
        ck_assert(asks == 0 || asks == 2 || asked_together(&asked, 0) == 1);
        pop = pop || asks > 0;
    }
    ck_assert(pop);
}
END_TEST

/* Where there are several things to ask, one seed and the next do not ask the same. */
START_TEST(the_next_seed_asks_for_other_lines)
{
    const struct play *play = run_text(PLAY "    3 curls off 5 to the nail\n"
                                            "    5 pops to left wing\n"
                                            "    1 passes to 3\n");
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        asked_list one = ask(play, seed, 1), next = ask(play, seed + 1, 1);
        ck_assert_str_ne(told(&one, true), told(&next, true));
    }
}
END_TEST

START_TEST(a_question_begins_with_a_capital)
{
    asks_alone(
        "drill \"Loom\"\n  start 1 top, coach left wing\n  ball coach\n"
        "  step \"Go\"\n    coach passes to 1\n    1 shoots\n",
        "A: The coach gives up the ball. Who gets it, and what then? Draw a pass, then a shot by "
        "whoever has the ball. ",
        BODY_COACH);
}
END_TEST

START_TEST(a_sentence_of_an_answer_begins_with_a_capital)
{
    const struct play *play = run_text("drill \"Loom\"\n  start 1 top, coach left wing\n  ball 1\n"
                                       "  step \"Go\"\n    1 passes to coach\n");
    asked_list asked = ask(play, 0, 4);
    ck_assert_str_eq(told(&asked, true),
                     "A: 1 passes to the coach. The coach gets it on the left wing. ");
}
END_TEST

START_TEST(the_same_seed_asks_the_same_and_others_ask_otherwise)
{
    const struct play *play = run_text(PLAY READS);
    bool differs = false;
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        asked_list one = ask(play, seed, 1), again = ask(play, seed, 1), first = ask(play, 0, 1);
        ck_assert_str_eq(told(&one, true), told(&again, true));
        differs = differs || strcmp(told(&one, true), told(&first, true)) != 0;
    }
    ck_assert(differs);
}
END_TEST

/* ---- pictures ---- */

START_TEST(each_picture_stands_once_with_a_letter_for_each_player)
{
    for (size_t i = 0; i < PLAYS; i++) {
        const struct play *play = run_text(plays[i]);
        for (uint64_t seed = 0; seed < SEEDS; seed++) {
            asked_list asked = ask(play, seed, 4);
            ck_assert_uint_ge(asked.count, 1);
            for (size_t k = 0; k < asked.count; k++) {
                const struct asked *one = &asked.at[k];
                ck_assert(k == 0 || asked.at[k - 1].diagram < one->diagram);
                ck_assert_uint_ge(one->blanks.count, 1);
                ck_assert_uint_le(one->blanks.count, 3);
                size_t lines = 0;
                for (size_t b = 0; b < one->blanks.count; b++) {
                    ck_assert_int_eq(one->blanks.at[b].letter, (char)('A' + b));
                    ck_assert(b == 0 || one->blanks.at[b].who != one->blanks.at[b - 1].who);
                    ck_assert(one->blanks.at[b].answer.size > 0);
                    lines += one->blanks.at[b].lines;
                }
                ck_assert_uint_eq(lines, one->lines);
            }
        }
    }
}
END_TEST

static struct vec2 on_paper(const struct scene *scene, struct vec2 metres)
{
    double x = metres.x / 0.3048, y = metres.y / 0.3048 + 5.25;
    return vec2_add(scene->floor.origin,
                    vec2_add(vec2_scale(scene->floor.across, x), vec2_scale(scene->floor.down, y)));
}

static bool is_line(const struct scene_item *item)
{
    return item->class >= CLASS_MOVE && item->class <= CLASS_SHOT && !item->casing &&
           item->shape == ITEM_PATH && item->count > 0;
}

/* How many lines and rings a picture has that begin or end there. */
static size_t count_at(const struct scene *scene, struct vec2 place, double within)
{
    size_t count = 0;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if (item->class == CLASS_END && item->shape == ITEM_CIRCLE) {
            count += vec2_near(item->at, place, within);
        } else if (is_line(item)) {
            const struct path_element *end = &item->path[item->count - 1];
            struct vec2 last = end->op == OP_CURVE ? end->p[2] : end->p[0];
            count += vec2_near(item->path[0].p[0], place, within) || vec2_near(last, place, within);
        }
    }
    return count;
}

static bool stands_near(const struct scene *scene, struct vec2 place, double within)
{
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        if ((item->class == CLASS_PLAYER || item->class == CLASS_ORDER) &&
            item->shape == ITEM_TEXT && vec2_near(item->at, place, within)) {
            return true;
        }
    }
    return false;
}

/* The ends of the missing ways, where the whole picture has a mark, and no player stands and no
 * other line stays near: is one left? */
static size_t count_told(const struct asked *asked, size_t *would)
{
    const double near = 7; /* points: what a ring may be pushed, and a line's gap to it */
    const struct scene *blanked = blanked_scene(&arena, asked);
    size_t left = 0;
    for (size_t i = 0; i < asked->diagram->segment->tasks; i++) {
        const struct task *task = segment_task(asked->diagram->segment, i);
        bool way = task->kind == TASK_MOVE || task->kind == TASK_CARRY || task->kind == TASK_USE;
        if (!asked->missing[i] || !way) {
            continue;
        }
        struct vec2 end = on_paper(asked->scene, asked->diagram->segment->record[i].to);
        size_t all = count_at(asked->scene, end, near);
        if (all > 0 && !stands_near(asked->scene, end, 20)) {
            *would += all;
            left += count_at(blanked, end, near);
        }
    }
    return left;
}

START_TEST(nothing_that_stays_tells_where_a_missing_line_ends)
{
    size_t would = 0;
    for (size_t i = 0; i < PLAYS; i++) {
        const struct play *play = run_text(plays[i]);
        for (uint64_t seed = 0; seed < SEEDS; seed++) {
            asked_list asked = ask(play, seed, 4);
            for (size_t k = 0; k < asked.count; k++) {
                size_t left = count_told(&asked.at[k], &would);
                ck_assert_msg(left == 0, "play %zu, seed %d, %s: %zu marks stay", i, (int)seed,
                              plain(asked.at[k].diagram->label), left);
            }
        }
    }
    ck_assert_uint_gt(would, 40);
}
END_TEST

/* A hand-off whose dribble is gone could not be drawn: what gives and what takes it stay or go as
 * one question. */
START_TEST(what_a_missing_line_hangs_on_is_there_or_asked_for_by_the_same_letter)
{
    const struct play *play = run_text(HANDOFF);
    for (uint64_t seed = 0; seed < SEEDS; seed++) {
        asked_list asked = ask(play, seed, 4);
        const struct asked *one = asked_as(&asked, "Otherwise");
        const struct segment *segment = one->diagram->segment;
        size_t missing = 0, dribble = segment->tasks, exchange = segment->tasks;
        for (size_t i = 0; i < segment->tasks; i++) {
            const struct task *task = segment_task(segment, i);
            dribble = task->kind == TASK_CARRY && i < dribble ? i : dribble;
            exchange = task->kind == TASK_EXCHANGE ? i : exchange;
            missing += one->missing[i];
        }
        ck_assert_uint_gt(missing, 0);
        ck_assert(!one->missing[exchange] || !one->missing[dribble]);
    }
}
END_TEST

/* How far a place is from the numeral of a body, and from the nearest of another. */
static void numeral_distances(const struct scene *scene, body who, struct vec2 at, double *own,
                              double *others)
{
    *own = *others = 1e9;
    for (size_t i = 0; i < scene->items.count; i++) {
        const struct scene_item *item = &scene->items.at[i];
        bool person = item->class == CLASS_PLAYER || item->class == CLASS_DEFENDER;
        if (person && item->shape == ITEM_TEXT) {
            struct vec2 middle = vec2_of(item->at.x, item->at.y - 0.36 * item->size);
            double *least = item->who == who ? own : others;
            double far = vec2_distance(middle, at);
            *least = far < *least ? far : *least;
        }
    }
}

/* A letter of a picture: disc and letter are the last of all. */
struct lettered {
    const struct scene *scene;
    const struct scene_item *letter, *disc;
    char should; /* be its letter */
};

/* Looks at each letter of each picture of all plays; returns how often `look` counted. */
static size_t look_at_letters(bool (*look)(const struct lettered *lettered))
{
    size_t counted = 0;
    for (size_t i = 0; i < PLAYS; i++) {
        const struct play *play = run_text(plays[i]);
        for (uint64_t seed = 0; seed < SEEDS; seed++) {
            asked_list asked = ask(play, seed, 4);
            for (size_t k = 0; k < asked.count; k++) {
                const struct scene *scene = blanked_scene(&arena, &asked.at[k]);
                size_t blanks = asked.at[k].blanks.count;
                for (size_t b = 0; b < blanks; b++) {
                    const struct scene_item *letter =
                        &scene->items.at[scene->items.count - 1 - 3 * b];
                    counted += look(&(struct lettered){scene, letter, letter - 1,
                                                       (char)('A' + blanks - 1 - b)});
                }
            }
        }
    }
    return counted;
}

static bool stands_by_its_player(const struct lettered *lettered)
{
    const double beside = 25; /* else it stands by a ring */
    double own, others;
    numeral_distances(lettered->scene, lettered->letter->who, lettered->disc->at, &own, &others);
    ck_assert_msg(own > beside || own < others, "%s: %s", plain(lettered->scene->title),
                  plain(lettered->letter->text));
    return own < beside;
}

START_TEST(a_letter_stands_nearest_to_its_own_player)
{
    ck_assert_uint_gt(look_at_letters(stands_by_its_player), 50);
}
END_TEST

static bool lies_on_nothing(const struct lettered *lettered)
{
    const struct scene_item *disc = lettered->disc;
    ck_assert_int_eq(lettered->letter->text.at[0], lettered->should);
    for (const struct scene_item *item = lettered->scene->items.at; item < disc - 1; item++) {
        bool person = item->class == CLASS_PLAYER || item->class == CLASS_DEFENDER;
        if (item->shape == ITEM_TEXT && (person || item->class == CLASS_ORDER)) {
            struct vec2 at = vec2_of(item->at.x, item->at.y - 0.36 * item->size);
            ck_assert_double_ge(vec2_distance(at, disc->at), disc->radius + 2);
        }
    }
    return true;
}

/* How far a line passes from a place, at the nearest. */
static double line_distance(const struct scene_item *item, struct vec2 at)
{
    double least = 1e9;
    for (size_t next = 0; next < item->count;) {
        points_list ink = {0};
        next = item_ink(&arena, item, next, 0.05, &ink);
        for (size_t i = 1; i < ink.count; i++) {
            double far = segment_distance(at, ink.at[i - 1], ink.at[i], NULL);
            least = far < least ? far : least;
        }
    }
    return least;
}

static bool lies_on_no_line(const struct lettered *lettered)
{
    const struct scene_item *disc = lettered->disc;
    for (const struct scene_item *item = lettered->scene->items.at; item < disc - 1; item++) {
        if (is_line(item) && line_distance(item, disc->at) < disc->radius) {
            return false;
        }
    }
    return true;
}

/* Long straight ones too, far from their ends. */
START_TEST(a_letter_lies_on_no_line)
{
    ck_assert_uint_eq(look_at_letters(lies_on_no_line), look_at_letters(lies_on_nothing));
}
END_TEST

START_TEST(a_letter_lies_on_no_player_and_no_other_letter)
{
    ck_assert_uint_gt(look_at_letters(lies_on_nothing), 50);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("asked");
    TCase *all = tcase_create("asked");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, a_read_is_asked_by_what_the_defender_does);
    tcase_add_test(all, who_takes_a_hand_off_is_asked_whose_it_is);
    tcase_add_test(all, a_shot_goes_with_the_way_to_its_place);
    tcase_add_test(all, a_screener_is_asked_for_the_next_move);
    tcase_add_test(all, a_screener_of_a_read_is_asked_with_what_the_defender_does);
    tcase_add_test(all, what_a_screener_does_when_nothing_is_read_is_asked_as_a_place);
    tcase_add_test(all, when_is_asked_where_the_coach_says_when);
    tcase_add_test(all, which_way_is_asked_where_it_is_told);
    tcase_add_test(all, both_screeners_of_a_stagger_are_named);
    tcase_add_test(all, a_screen_is_answered_with_its_place_when_it_is_set);
    tcase_add_test(all, who_gets_the_ball_is_not_told_by_who_has_it_next);
    tcase_add_test(all, who_gets_the_ball_is_not_told_by_a_neighbors_question);
    tcase_add_test(all, what_one_read_asks_for_its_sister_does_not_draw);
    tcase_add_test(all, the_next_seed_asks_for_other_lines);
    tcase_add_test(all, a_question_begins_with_a_capital);
    tcase_add_test(all, a_sentence_of_an_answer_begins_with_a_capital);
    tcase_add_test(all, the_same_seed_asks_the_same_and_others_ask_otherwise);
    tcase_add_test(all, each_picture_stands_once_with_a_letter_for_each_player);
    tcase_add_test(all, nothing_that_stays_tells_where_a_missing_line_ends);
    tcase_add_test(all, what_a_missing_line_hangs_on_is_there_or_asked_for_by_the_same_letter);
    tcase_add_test(all, a_letter_stands_nearest_to_its_own_player);
    tcase_add_test(all, a_letter_lies_on_no_player_and_no_other_letter);
    tcase_add_test(all, a_letter_lies_on_no_line);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
