/* SPDX-License-Identifier: MIT */
/* What a finding advises, done by hand in one line of the text: then the finding is gone, and
 * nothing worse has come in its place. */
#include "pipe.h"
#include "suite.h"

#include <string.h>

#define SWITCHBACK                                                                                 \
    "play \"Switchback\"\n"                                                                        \
    "  start 1 top, 2 right wing, 3 left corner, 4 right corner, 5 left elbow\n"                   \
    "  defense man\n"                                                                              \
    "  step\n"

static const struct {
    const char *id, *text; /* flawed; the line to change stands between < and > */
    const char *line;      /* as the help has it */
    const char *help;      /* what it says, in part */
} rows[] = {
    {"space.corner",
     "play \"Lantern\"\n<  start five-out, 4 at 7 ft above right corner>\n"
     "  step\n    1 passes to 2\n    2 holds for 1 s\n    2 passes to 1\n",
     "  start five-out, 4 right corner", "4 goes to right corner"},
    {"space.corner",
     "play \"Lantern\"\n  start five-out\n  step\n    1 passes to 2\n"
     "<    5 goes to 6 ft above left corner>\n    2 holds for 1.5 s\n"
     "    2 passes to 1\n",
     "    5 goes to left corner", "write: 5 goes to left corner"},
    {"space.close",
     "play \"Lantern\"\n  step\n    1 passes to 2\n"
     "<    3 goes to 8 ft inside left corner>\n    2 holds for 1.5 s\n"
     "    2 passes to 1\n",
     "    3 goes to left wing", "write: 3 goes to left wing"},
    {"space.close", /* who is at a post is sent to another one, and not out to the wing */
     "play \"Orchard\"\n  start 1 top, 2 right wing, 3 left wing, 4 left short corner, 5 right "
     "block\n"
     "  step\n    1 passes to 2\n<    5 goes to left block>\n    2 holds for 1.5 s\n"
     "    2 passes to 1\n",
     "    5 goes to right block", "write: 5 goes to right block"},
    {"space.close",
     "play \"Lantern\"\n  step\n<    1 dribbles to right slot>\n"
     "    1 holds for 1.5 s\n    1 passes to 3\n",
     "    1 dribbles to top", "write: 1 dribbles to top"},
    {"spot.taken",
     "play \"Orchard\"\n  start 1 top, 2 left wing, 3 right wing, 4 right corner, 5 left corner\n"
     "  step\n    1 dribbles at 2\n    1 hands off to 2\n<    1 fills left wing>\n"
     "  step\n    2 passes to 3\n",
     "    1 goes to top", "write: 1 goes to top"},
    {"screen.nobody",
     SWITCHBACK "<    5 screens for 3 at 2 ft left of the nail>\n"
                "    3 curls off 5 to the rim\n",
     "    5 screens for 3", "5 screens for 3"},
    {"screen.early", SWITCHBACK "    5 screens for 3\n<    3 curls off 5 to the rim, early>\n",
     "    3 curls off 5 to the rim", "leave out `early`"},
    {"screen.early", SWITCHBACK "    5 screens for 3\n<    at 1 s, 3 curls off 5 to the rim>\n",
     "    3 curls off 5 to the rim", "leave out the clause"},
    {"screen.angle",
     SWITCHBACK "<    5 screens for 3, facing the rim>\n"
                "    3 curls off 5 to the rim\n",
     "    5 screens for 3", "leave out the words about facing"},
    {"screen.gap", SWITCHBACK "    5 screens for 3\n<    3 curls off 5 to the rim, wide>\n",
     "    3 curls off 5 to the rim", "leave out `wide`"},
    {"screen.gap",
     "play \"Tollgate\"\n  start 1 out of bounds at right short corner, 2 right block, 3 left "
     "elbow, 4 left block, 5 right elbow\n  defense man\n  step\n<    2 cross screens for 4>\n"
     "    4 comes off 2 to right block, tight\n    5 down screens for 2\n    1 passes to 4\n",
     "    2 screens for 4 at (-5, 2)", "bring the screen before 4, `2 screens for 4 at (-5, 2)`"},
    {"screen.moving",
     SWITCHBACK "    5 screens for 3\n    3 curls off 5 to the rim\n"
                "<    as 3 curls, 5 pops to left wing>\n",
     "    5 pops to left wing", "leave out the clause"},
    {"ball.held",
     "play \"Lantern\"\n  step\n    1 passes to 2\n<    2 holds for 4 s>\n"
     "    2 passes to 4\n",
     "    2 holds for 1 s", "write: 2 holds for 1 s"},
    {"ball.held",
     "play \"Lantern\"\n  step\n    1 passes to 2\n<    2 holds for 3 s>\n"
     "    2 passes to 4\n",
     "    2 holds for 3 s\n    after 1 passes, 4 v-cuts to right corner",
     "4 v-cuts to right corner"},
    {"ball.holder", "play \"Lantern\"\n  step\n    1 passes to 2\n<    4 passes to 3>\n",
     "    2 passes to 4\n    4 passes to 3", "write: 2 passes to 4, before"},
    {"ball.holder", "play \"Lantern\"\n  step\n    1 passes to 2\n<    1 drives to the rim>\n",
     "    2 passes to 1\n    1 drives to the rim", "write: 2 passes to 1, before"},
    {"cut.traffic",
     "play \"Millrace\"\n  step\n    1 drives to the rim\n"
     "<    3 cuts to right block>\n",
     "    after 1 drives, 3 cuts to right block", "put before this sentence: after 1 drives,"},
    {"cut.collide",
     "play \"Switchback\"\n  step\n    2 cuts to left wing\n"
     "<    3 cuts to right wing>\n",
     "    after 2 cuts, 3 cuts to right wing", "put before this sentence: after 2 cuts,"},
    {"screen.early",
     "play \"Tollgate\"\n  defense man\n  step\n<    5 screens for 3 until 1 passes>\n"
     "    3 comes off 5 to the rim\n    at 1 s, 1 passes to 2\n",
     "    5 screens for 3", "leave out `until` in the screen"},
    {"player.out", "play \"Tollgate\"\n  step\n<    1 passes to 3 at (200, 3)>\n",
     "    1 passes to 3", "write: 1 passes to 3"},
    {"player.out", "play \"Tollgate\"\n  step\n<    1 passes to 3 out of bounds at left corner>\n",
     "    1 passes to 3", "write: 1 passes to 3"},
    {"inbound.board",
     "play \"Sluice\"\n<  start 3 out of bounds at left short corner, 1 top, 2 right wing, 4 left "
     "elbow, 5 right block>\n  ball 3\n  step\n    3 inbounds to 5\n",
     "  start 3 out of bounds at right short corner, 1 top, 2 right wing, 4 left elbow, 5 right "
     "block",
     "start 3 out of bounds at right short corner"},
    {"inbound.board",
     "play \"Weir\"\n  floor full\n<  start 4 out of bounds at backcourt left short corner, 1 "
     "backcourt right block, 2 half court, 3 right wing, 5 left wing>\n  ball 4\n  step\n    4 "
     "inbounds to 1\n",
     "  start 4 out of bounds at backcourt right short corner, 1 backcourt right block, 2 half "
     "court, "
     "3 right wing, 5 left wing",
     "start 4 out of bounds at backcourt right short corner"},
    {"pass.long", "play \"Millrace\"\n  ball 4\n  step\n<    4 passes to 3>\n",
     "    4 skip passes to 3", "write: 4 skip passes to 3"},
    {"ball.travel",
     "play \"Sandbar\"\n  start five-out, 5 at left block\n  defense man\n  step\n    2 goes to "
     "left corner\n"
     "<    as 2 goes, 1 passes to 2>\n",
     "    1 passes to 2", "let 1 pass later (without `as`"},
    {"time.clock",
     "play \"Last light\"\n  clock 3.3 s\n  step\n    1 passes to 2\n"
     "<    2 dribbles to right elbow, walking>\n    2 shoots\n",
     "    2 dribbles to right elbow", "leave out `walking`"},
    {"time.clock",
     "play \"Last light\"\n  clock 3 s\n  step\n    1 passes to 2\n<    2 holds for 2 s>\n"
     "    2 shoots\n",
     "    2 holds for 0.2 s", "write: 2 holds for 0.2 s"},
    {"time.shot-clock",
     "play \"Last light\"\n  limit time.shot-clock 3.3 s\n  step\n    1 passes to 2\n"
     "<    2 dribbles to right elbow, walking>\n    2 shoots\n",
     "    2 dribbles to right elbow", "leave out `walking`"},
    {"time.backcourt",
     "play \"Flume\"\n  rules nba\n  level professional men\n  start press break\n  step\n"
     "    4 inbounds to 1\n<    1 dribbles to backcourt left corner, walking>\n"
     "    1 dribbles to left hash\n",
     "    1 dribbles to backcourt left corner", "leave out `walking`"},
    {"time.throw-in",
     "play \"Last light\"\n  start sideline inbounds\n  step\n<    at 6 s, 1 cuts to right slot>\n"
     "    3 inbounds to 1\n",
     "    1 cuts to right slot", "leave out the clause: 1 then cuts at once"},
    {"time.throw-in",
     "play \"Last light\"\n  start sideline inbounds\n  step\n<    3 holds for 6 s>\n"
     "    3 inbounds to 1\n",
     "    3 holds for 0.2 s", "write: 3 holds for 0.2 s"},
    {"time.lane",
     "play \"Weir\"\n<  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 front of the "
     "rim>\n"
     "  step\n    1 passes to 2\n    2 passes to 1\n    1 passes to 3\n    3 passes to 1\n"
     "    1 passes to 2\n    2 passes to 4\n",
     "  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 right block",
     "write: 5 goes to right block"},
    {"time.lane", /* not onto the block that is taken */
     "play \"Weir\"\n<  start 1 top, 2 right wing, 3 left wing, 4 right block, 5 front of the "
     "rim>\n"
     "  step\n    1 passes to 2\n    2 passes to 1\n    1 passes to 3\n    3 passes to 1\n"
     "    1 passes to 2\n    2 passes to 1\n",
     "  start 1 top, 2 right wing, 3 left wing, 4 right block, 5 left block",
     "write: 5 goes to left block"},
    {"ball.double-dribble",
     "play \"Tollgate\"\n  step\n    1 dribbles to nail\n    1 shot fakes\n"
     "<    1 dribbles to top>\n",
     "    1 passes to 2", "write: 1 passes to 2, in place of this sentence"},
    {"open.catch",
     "play \"Lantern\"\n  defense man deny\n  step\n    1 passes to 2\n<    2 shoots>\n",
     "    2 drives to the rim\n    2 shoots", "write: 2 drives to the rim, before the shot"},
    {"ball.backcourt",
     "play \"Flume\"\n  step\n<    1 dribbles to 8 ft above half court>\n    1 passes to 3\n",
     "    1 dribbles to top", "write: 1 dribbles to top"},
    {"cut.traffic",
     "play \"Weir\"\n  defense man\n  step\n    2 cuts to left block\n"
     "<    as 2 cuts, 1 drives to the rim>\n",
     "    after 2 cuts, 1 drives to the rim", "begin 1's sentence with: after 2 cuts,"},
    {"cut.traffic",
     "play \"Weir\"\n  step\n    2 cuts to the rim\n<    3 cuts to the rim>\n    1 passes to 4\n",
     "    2 clears to right wing\n    after 2 clears, 3 cuts to the rim",
     "write: 2 clears to right wing, before this sentence, and begin this one: after 2 clears,"},
    {"screen.nobody",
     "play \"Ferry\"\n  start 1 top, 2 right corner, 3 left corner, 4 left wing, 5 right block\n"
     "  defense man\n  step\n    5 ball screens for 1\n<    1 dribbles to right wing>\n",
     "    as 5 screens, 1 dribbles to right wing", "put before 1's sentence: as 5 screens,"},
    {"screen.unused",
     "play \"Ferry\"\n  start 1 top, 2 right corner, 3 left corner, 4 left wing, 5 right block\n"
     "  defense man\n  step\n    5 ball screens for 1\n<    1 dribbles to right wing>\n",
     "    1 drives off 5 to the rim", "write: 1 drives off 5 to the rim"},
    {"screen.unused",
     "play \"Ferry\"\n  start 1 top, 2 right wing, 3 left wing, 4 left corner, 5 right block\n"
     "  defense man\n  step\n    1 passes to 2\n    2 passes to 5\n    2 screens for 1\n"
     "<    1 cuts to the rim>\n",
     "    1 comes off 2 to the rim", "write: 1 comes off 2 to the rim"},
    {"spot.taken",
     "play \"Orchard\"\n  start 1 out of bounds at right hash, 2 right slot, 3 left corner, 4 "
     "right "
     "elbow, 5 left block\n  defense zone 2-3\n  step\n    2 cuts to the top\n    4 screens for 2\n"
     "<    5 flashes to right high post>\n    1 inbounds to 2\n  step\n    2 passes to 3\n",
     "    5 goes to right block", "write: 5 goes to right block"},
    {"shot.balance",
     "play \"Weir\"\n  step\n    1 passes to 2\n    2 shoots\n    3 and 5 rebound\n"
     "<    1 gets back>\n",
     "    1 gets back\n    4 rebounds", "write: 4 rebounds"},
};

/* Plays a coach would call sound, each near to the border of a check. */
static const char *const sound[] = {
    "play \"A stagger\"\n  start 1 top, 2 right corner, 3 left corner, 4 right elbow, 5 right "
    "block\n"
    "  defense man\n  step\n    4 down screens for 2\n    5 down screens for 2\n"
    "    2 comes off 5 and 4 to right wing\n    1 passes to 2\n",
    "play \"A roll to the rim\"\n"
    "  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 right elbow\n  defense man\n"
    "  step\n    5 ball screens for 1\n    1 drives off 5 to the rim\n    5 rolls to the rim\n",
    "play \"A hand-off to end a step\"\n  start five-out\n  defense man\n  step\n"
    "    1 dribbles at 3\n    1 hands off to 3\n  step\n    3 dribbles to top\n",
    "play \"Held through two cuts\"\n  start five-out\n  step\n    1 passes to 2\n"
    "    3 cuts to the rim\n    3 clears to the left wing\n  step\n    4 v-cuts to right corner\n"
    "    after 4 v-cuts, 2 passes to 4\n",
    "play \"The corner by the book\"\n  start five-out, 4 at 3 ft above right corner\n  step\n"
    "    1 passes to 2\n    2 holds for 1 s\n    2 passes to 1\n",
    "play \"Posts on both blocks\"\n"
    "  start 1 top, 2 right wing, 3 left wing, 4 right block, 5 left block\n  step\n"
    "    1 passes to 2\n    2 holds for 1.5 s\n    2 passes to 1\n",
    "play \"An exchange\"\n  step\n    2 and 4 exchange\n    1 passes to 3\n",
    SWITCHBACK "    5 screens for 3\n    5 slips to the rim\n    3 comes off 5 to left wing\n",
};

/* The text with the marked line as it is (line NULL) or as given. */
static struct str with_line(const char *text, const char *line)
{
    const char *from = strchr(text, '<'), *to = strchr(text, '>');
    if (!line) {
        return str_format(&arena, "%.*s%.*s%s", (int)(from - text), text, (int)(to - from - 1),
                          from + 1, to + 1);
    }
    return str_format(&arena, "%.*s%s%s", (int)(from - text), text, line, to + 1);
}

START_TEST(the_help_done_by_hand_takes_the_finding_away)
{
    struct piped before, after;
    pipe_text(&arena, with_line(rows[_i].text, NULL), &before);
    const char *said = piped_said(&arena, &before);
    bool told = false;
    for (size_t i = 0; i < before.findings.count; i++) {
        const struct finding *finding = &before.findings.at[i];
        bool mine = strcmp(finding->row->id, rows[_i].id) == 0;
        if (mine && strstr(str_copy(&arena, finding->help).at, rows[_i].help)) {
            told = true;
        }
    }
    ck_assert_msg(told, "%s is not told, or not with this help:%s", rows[_i].id, said);
    pipe_text(&arena, with_line(rows[_i].text, rows[_i].line), &after);
    said = piped_said(&arena, &after);
    ck_assert_msg(after.diags.errors == 0 && piped_count(&after, rows[_i].id) == 0, "%s:%s",
                  rows[_i].id, said);
    for (size_t i = 0; i < after.findings.count; i++) {
        ck_assert_msg(after.findings.at[i].severity == SEVERITY_NOTE, "%s:%s", rows[_i].id, said);
    }
}
END_TEST

START_TEST(a_sound_play_is_told_nothing_above_a_note)
{
    struct piped piped;
    pipe_text(&arena, str_of(sound[_i]), &piped);
    const char *said = piped_said(&arena, &piped);
    ck_assert_msg(piped.diags.errors + piped.diags.warnings == 0, "%s:%s", sound[_i], said);
    for (size_t i = 0; i < piped.findings.count; i++) {
        ck_assert_msg(piped.findings.at[i].severity == SEVERITY_NOTE, "%s:%s", sound[_i], said);
    }
}
END_TEST

/* Who came too close, by a sentence, is the one to be told, and there; not who has stood a foot off
 * his spot since the start. */
START_TEST(who_came_too_close_is_told_at_the_sentence_that_brought_him)
{
    static const char text[] = "play \"Lantern\"\n  start five-out, 5 at 2 ft above left corner\n"
                               "  step\n    1 passes to 2\n    3 goes to 6 ft below left wing\n"
                               "  step\n    2 holds for 1.5 s\n    2 passes to 4\n";
    struct piped piped;
    pipe_text(&arena, str_of(text), &piped);
    ck_assert_msg(piped_count(&piped, "space.close") == 1, "%s", piped_said(&arena, &piped));
    for (size_t i = 0; i < piped.findings.count; i++) {
        const struct finding *finding = &piped.findings.at[i];
        if (strcmp(finding->row->id, "space.close") == 0) {
            struct str words = source_text(&piped.sources, finding->span);
            ck_assert_str_eq(str_copy(&arena, words).at, "3 goes to 6 ft below left wing");
            ck_assert_int_eq(finding->who[0], body_attacker(3));
        }
    }
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("check help");
    TCase *all = tcase_create("help");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_set_timeout(all, 60);
    tcase_add_loop_test(all, the_help_done_by_hand_takes_the_finding_away, 0,
                        (int)(sizeof rows / sizeof *rows));
    tcase_add_loop_test(all, a_sound_play_is_told_nothing_above_a_note, 0,
                        (int)(sizeof sound / sizeof *sound));
    tcase_add_test(all, who_came_too_close_is_told_at_the_sentence_that_brought_him);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
