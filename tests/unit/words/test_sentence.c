/* SPDX-License-Identifier: MIT */
/* One line of sentences, as tables: what is written, and what tidy prints; what is refused, and
 * how. */
#include "language/tidy/tidy.h"
#include "language/words/cursor.h"
#include "suite.h"

#include <string.h>

static struct sources sources;
static struct diags diags;
static const struct str roles[] = {{"passer", 6}, {"receiver", 8}};

static struct cursor open_line(const char *text, bool drill)
{
    struct lines lines = {0};
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("a.play"), str_of(text));
    lines_read(&arena, &sources, source, &diags, &lines);
    ck_assert_msg(lines.all.count > 0 && diags.all.count == 0, "the tokens of: %s", text);
    const struct line *line = &lines.all.at[0];
    return (struct cursor){.arena = &arena,
                           .diags = &diags,
                           .sources = &sources,
                           .at = line->tokens,
                           .end = line->tokens + line->count,
                           .line_span = line->span,
                           .drill = drill,
                           .players = drill ? 12 : 5,
                           .roles = roles,
                           .role_count = 2};
}

static const char *complaint(void)
{
    return diags.all.count ? str_copy(&arena, diags.all.at[0].message).at : "";
}

static const char *printed(const sentence_list *list, const char *between)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < list->count; i++) {
        strbuf_text(&out, i > 0 ? between : "");
        tidy_sentence(&out, &list->at[i]);
    }
    return str_copy(&arena, strbuf_str(&out)).at;
}

/* Every sentence of the line in its tidy form, with " / " in between. */
static const char *tidied(const char *text, bool drill)
{
    struct cursor c = open_line(text, drill);
    sentence_list list = {NULL, 0, 0};
    bool read = sentences_read(&c, &list);
    ck_assert_msg(read && diags.errors + diags.warnings == 0, "%s: %s", text, complaint());
    return printed(&list, " / ");
}

struct pair {
    const char *written, *tidy; /* NULL: as written */
};

static void check_pairs(const struct pair *pairs, bool drill)
{
    for (; pairs->written; pairs++) {
        const char *wanted = pairs->tidy ? pairs->tidy : pairs->written;
        const char *found = tidied(pairs->written, drill);
        ck_assert_msg(strcmp(found, wanted) == 0, "%s\n  gave   %s\n  wanted %s", pairs->written,
                      found, wanted);
        char again[512];
        ck_assert_uint_lt(strlen(wanted), sizeof again);
        strcpy(again, wanted);
        for (char *slash = strstr(again, " / "); slash; slash = strstr(slash, " / ")) {
            memcpy(slash, " ; ", 3);
        }
        ck_assert_msg(strcmp(tidied(again, drill), wanted) == 0, "%s: tidied twice: %s", wanted,
                      tidied(again, drill));
    }
}

static const struct pair tidy_forms[] = {
    {"1 passes to 2", NULL},
    {"1 passes to 2 at left wing", NULL},
    {"1 passes to 2 beside 4", NULL},
    {"1 bounce passes to 2", NULL},
    {"1 skip passes to 4 at right corner", NULL},
    {"1 lob passes to 5 at the rim", NULL},
    {"1 overhead passes to 2", NULL},
    {"1 chest passes to 2", NULL},
    {"1 passes to the top", "1 passes to top"},
    {"3 inbounds to 2 at top", NULL},
    {"1 hands off to 2", NULL},
    {"1 dribbles to left wing", NULL},
    {"1 dribbles at 2", NULL},
    {"1 drives", NULL},
    {"1 drives baseline", NULL},
    {"1 drives middle", NULL},
    {"1 drives to the baseline", NULL},
    {"1 drives to the rim middle", NULL},
    {"1 shoots", NULL},
    {"3 cuts to the rim", NULL},
    {"3 cuts to the rim around 5", NULL},
    {"3 cuts to the rim past left elbow", NULL},
    {"3 cuts to top past 4", NULL},
    {"3 cuts to the rim over 5", NULL},
    {"3 cuts to the rim under 5", NULL},
    {"3 back cuts", NULL},
    {"3 back cuts to the front of the rim", NULL},
    {"3 v-cuts", NULL},
    {"3 v-cuts to left wing", NULL},
    {"3 l-cuts to left wing", NULL},
    {"3 sets up toward the rim 6 ft", NULL},
    {"3 sets up toward 5", NULL},
    {"5 screens for 3", NULL},
    {"5 screens for 3 at left block", NULL},
    {"5 screens away for 3", NULL},
    {"5 down screens for 3", NULL},
    {"5 back screens for 2", NULL},
    {"5 cross screens for 4 at the front of the rim", NULL},
    {"5 flare screens for 2", NULL},
    {"5 ball screens for 1 at top", NULL},
    {"4 and 5 double screen for 2", NULL},
    {"4 and 5 screen for 2", NULL},
    {"5 screens for 4 on x2 at left elbow, facing the rim", NULL},
    {"5 screens for 3, back to the baseline", NULL},
    {"5 screens for 3, facing 1, jogging", NULL},
    {"5 re-screens", NULL},
    {"5 re-screens for 3", NULL},
    {"3 curls off 5", NULL},
    {"3 curls off 5 to the rim", NULL},
    {"3 curls off 5 to the rim, tight, early, sprinting, taking 1.5 s", NULL},
    {"3 fades off 5 to left corner", NULL},
    {"3 flares off 5", NULL},
    {"3 comes off 4 and 5 to left wing", NULL},
    {"3 back cuts off 5", NULL},
    {"3 rejects 5", NULL},
    {"3 rejects 5 to the rim", NULL},
    {"1 dribbles off 5 to left slot", NULL},
    {"1 drives off 5", NULL},
    {"5 rolls", NULL},
    {"5 rolls to left block", NULL},
    {"5 pops", NULL},
    {"5 slips", NULL},
    {"5 seals", NULL},
    {"5 seals to the lane", NULL},
    {"2 fills left wing", NULL},
    {"2 fills 3's spot", NULL},
    {"2 replaces 3", NULL},
    {"4 clears to the weak side corner", NULL},
    {"4 lifts to 3 ft above left corner", NULL},
    {"4 drifts to right corner", NULL},
    {"4 sinks to right short corner", NULL},
    {"4 flashes to the nail", NULL},
    {"4 relocates to right dunker spot", NULL},
    {"4 posts up", NULL},
    {"4 posts up at left block", NULL},
    {"2 faces the rim", NULL},
    {"2 faces 3", NULL},
    {"2 jabs", NULL},
    {"2 shot fakes", NULL},
    {"2 holds for 1 s", NULL},
    {"2 stays", NULL},
    {"2, 3 and 4 stay", NULL},
    {"everyone else stays", NULL},
    {"4 rebounds", NULL},
    {"1 gets back", NULL},
    {"the left corner fills left wing", NULL},
    {"the top passes to 2", NULL},
    {"passer passes to receiver", NULL},
    {"receiver fills passer's spot", NULL},
    {NULL, NULL},
};

START_TEST(the_tidy_form_of_a_sentence_is_printed_as_written)
{
    check_pairs(tidy_forms, false);
}
END_TEST

static const struct pair guards[] = {
    {"x2 guards 4", NULL},
    {"x3 denies", NULL},
    {"x3 denies 3", "x3 denies"}, /* his own man is left out */
    {"x3 denies 4", NULL},
    {"x5 closes out on 5", "x5 closes out"},
    {"x3 sags", NULL},
    {"x3 stays", NULL},
    {"x3 helps", NULL},
    {"x3 helps to the lane", NULL},
    {"x3 closes out", NULL},
    {"x3 closes out on 3", "x3 closes out"},
    {"x3 closes out on 4", NULL},
    {"x3 closes out 4", "x3 closes out on 4"},
    {"x3 goes under", NULL},
    {"x3 goes under 5", NULL},
    {"x3 goes over 5", NULL},
    {"x3 trails 3", "x3 trails"},
    {"x3 trails 4", NULL},
    {"x3 overplays", NULL},
    {"x1 switches with x3", NULL},
    {"x1 and x3 switch", NULL},
    {"x2 doubles the ball", NULL},
    {"x5 hedges 1", NULL},
    {"x5 drops to the rim", NULL},
    {"x5 ices 1", NULL},
    {"x5 traps the ball", NULL},
    {"x5 fronts 5", "x5 fronts"},
    {"x5 traps 5", NULL},
    {"x5 bumps 3", NULL},
    {"x4 tags 5", NULL},
    {"x2 stunts at 1", NULL},
    {"x2 recovers to 2", "x2 recovers"},
    {"x2 recovers to 3", NULL},
    {"x2 boxes out 2", "x2 boxes out"},
    {"x2 boxes 3 out", "x2 boxes out 3"},
    {"x2 rotates to left corner", NULL},
    {"3's defender trails", NULL},
    {"passer's defender sags", NULL},
    {"x5 shows on 1 and recovers", "x5 hedges 1 / x5 recovers"},
    {"x5 blitzes 1", "x5 traps 1"},
    {"x3 chases 3", "x3 trails"},
    {"x2 digs at 5", "x2 stunts at 5"},
    {"x3 top-locks 3", "x3 overplays"},
    {"x4 jumps to the ball", "x4 denies"},
    {NULL, NULL},
};

START_TEST(defenders_have_verbs_of_their_own)
{
    check_pairs(guards, false);
}
END_TEST

static const struct pair places[] = {
    {"4 goes to top", NULL},
    {"4 goes to left slot", NULL},
    {"4 goes to left mid post", NULL},
    {"4 goes to high post", NULL},
    {"4 goes to right high post", NULL},
    {"4 goes to left low post", NULL},
    {"4 goes to left hash", NULL},
    {"4 goes to wing", NULL},
    {"4 goes to the free-throw line", NULL},
    {"4 goes to half court", NULL},
    {"4 goes to the sideline", NULL},
    {"4 goes to the opposite elbow", NULL},
    {"4 goes to the ball side wing", NULL},
    {"4 goes to the ball side", NULL},
    {"4 goes to the right side", NULL},
    {"4 goes to the opposite side", NULL},
    {"4 goes to the next spot left", NULL},
    {"4 goes to the next spot up", NULL},
    {"4 goes to backcourt left elbow", NULL},
    {"4 goes to 4 ft above 5", NULL},
    {"4 goes to 0.5 m left of the rim", NULL},
    {"4 goes to 2 steps below top", NULL},
    {"4 goes to 1 step inside left wing", NULL},
    {"4 goes to a foot outside left wing", "4 goes to 1 ft outside left wing"},
    {"4 goes to 6' right of 3's spot", "4 goes to 6 ft right of 3's spot"},
    {"4 goes to halfway between top and left wing", NULL},
    {"4 goes to a third of the way from top to left wing", NULL},
    {"4 goes to two thirds of the way from top to left wing", NULL},
    {"4 goes to a quarter of the way from top to 3's spot", NULL},
    {"4 goes to three quarters of the way from top to where 3 is", NULL},
    {"4 goes to (12, -3)", NULL},
    {"4 goes to (-12.5, 3)", NULL},
    {"4 goes to where 3 is", NULL},
    {"4 goes beside 3", NULL},
    {"4 goes out of bounds at left hash", NULL},
    {"4 goes to 3 ft above halfway between top and left wing", NULL},
    {"4 goes to the paint", "4 goes to the lane"},
    {"4 goes to the key", "4 goes to the lane"},
    {"4 goes to the basket", "4 goes to the rim"},
    {"4 goes to the point", "4 goes to top"},
    {"4 goes to the top of the key", "4 goes to top"},
    {"4 goes to the strong-side block", "4 goes to the ball side block"},
    {"4 goes to the help side", "4 goes to the weak side"},
    {"4 goes to the weakside corner", "4 goes to the weak side corner"},
    {"4 goes to the left dunkerspot", "4 goes to left dunker spot"},
    {"4 goes to free throw line", "4 goes to the free-throw line"},
    {NULL, NULL},
};

START_TEST(every_kind_of_place_is_read)
{
    check_pairs(places, false);
}
END_TEST

static const struct pair ties[] = {
    {"as 1 passes, 3 cuts to the rim", NULL},
    {"as 1 passes to 2, 3 cuts to the rim", NULL},
    {"as 1 bounce passes to 2, 3 cuts to the rim", NULL},
    {"after 5 screens, 3 curls off 5", NULL},
    {"after 5 down screens for 3, 4 lifts to top", NULL},
    {"after 3 curls off 5, 5 rolls", NULL},
    {"after 3 moves, 4 fills 3's spot", NULL},
    {"when 2 catches, 5 ball screens for 2", NULL},
    {"when 3 is past 1, 1 passes to 3", NULL},
    {"when 3 is open, 1 passes to 3", NULL},
    {"when 3 is covered, 1 passes to 2", NULL},
    {"when 3 is denied, 3 back cuts", NULL},
    {"when 2 has the ball, 4 lifts to top", NULL},
    {"while 5 screens, 3 sets up toward the baseline", NULL},
    {"1 s after 2 catches, 2 drives to the rim", NULL},
    {"at 2 s, 4 lifts to top", NULL},
    {"1.5 s later, 4 lifts to top", NULL},
    {"then 3 cuts to the rim", NULL},
    {"then, after 1 passes, 3 cuts to the rim", NULL},
    {"then when 3 is open, 1 passes to 3", "then, when 3 is open, 1 passes to 3"},
    {"meanwhile 3 cuts to the rim", NULL},
    {"meanwhile, 3 cuts to the rim", "meanwhile 3 cuts to the rim"},
    {"1 drives to the rim until x4 helps", NULL},
    {"as 1 passes, 3 cuts to the rim, sprinting until 3 is open", NULL},
    {"once 2 catches, 3 cuts to the rim", "when 2 catches, 3 cuts to the rim"},
    {"when 2 catches the ball, 3 cuts to the rim", "when 2 catches, 3 cuts to the rim"},
    {"as 1 passes 3 cuts to the rim", "as 1 passes, 3 cuts to the rim"},
    {"after x1 denies 2 3 cuts to the rim", "after x1 denies 2, 3 cuts to the rim"},
    {"after x1 denies 3 cuts to the rim", "after x1 denies, 3 cuts to the rim"},
    {"3 cuts to the rim as 1 passes", "as 1 passes, 3 cuts to the rim"},
    {"3 cuts to the rim at 2 s", "at 2 s, 3 cuts to the rim"},
    {"3 cuts to the rim 1 s after 2 catches", "1 s after 2 catches, 3 cuts to the rim"},
    {"3 cuts to the rim, when 1 passes", "when 1 passes, 3 cuts to the rim"},
    {"then 3 cuts to the rim after 1 passes", "then, after 1 passes, 3 cuts to the rim"},
    {NULL, NULL},
};

START_TEST(sentences_wait_for_events_states_and_the_clock)
{
    check_pairs(ties, false);
}
END_TEST

static const struct pair loose[] = {
    {"Two swings it over to three.", "2 passes to 3"},
    {"four sets a back screen for two", "4 back screens for 2"},
    {"5 comes over and pins down for 3", "5 down screens for 3"},
    {"3 comes off of 5 out to the left wing", "3 comes off 5 to left wing"},
    {"1 makes a skip pass to 4 in the right corner", "1 skip passes to 4 at right corner"},
    {"when 2 catches five goes and ball-screens for 2", "when 2 catches, 5 ball screens for 2"},
    {"2 drives hard off 5 into the paint", "2 drives off 5 to the lane, sprinting"},
    {"5 rolls; 3 lifts up to the top of the key", "5 rolls / 3 lifts to top"},
    {"4 goes backdoor when x4 denies", "when x4 denies, 4 back cuts"},
    {"3 steps toward the baseline, then curls off 5",
     "3 sets up toward the baseline / 3 curls off 5"},
    {"after 1 shoots 4 rebounds and 2 gets back",
     "after 1 shoots, 4 rebounds / after 1 shoots, 2 gets back"},
    {"2 gives a pump fake and attacks the basket", "2 shot fakes / 2 drives to the rim"},
    {"1 hands it off to 2, 5 slips", "1 hands off to 2 / 5 slips"},
    {"3 zipper cuts off 4", "3 comes off 4 to top"},
    {"1 dribbles slowly toward 2 until X1 traps", "1 dribbles at 2, jogging until x1 traps"},
    {"1 pass to 2", "1 passes to 2"},
    {"3 backcuts", "3 back cuts"},
    {"3 V CUTS to the LEFT wing", "3 v-cuts to left wing"},
    {"1 throws the ball to 2", "1 passes to 2"},
    {"1 finds 3 in the corner", "1 passes to 3 at corner"},
    {"1 throws it in to 2", "1 inbounds to 2"},
    {"1 lobs it to 5", "1 lob passes to 5"},
    {"1 brings it to the left wing", "1 dribbles to left wing"},
    {"1 handoffs to 2", "1 hands off to 2"},
    {"2 catches and shoots", "2 shoots"},
    {"2 pulls up and shoots", "2 shoots"},
    {"1 shoots a three", "1 shoots"},
    {"2 takes a jumper", "2 shoots"},
    {"2 takes the shot", "2 shoots"},
    {"3 shuffle cuts off 4", "3 comes off 4 to the rim"},
    {"3 basket cuts", "3 cuts to the rim"},
    {"3 runs to left wing", "3 cuts to left wing"},
    {"3 cuts left wing", "3 cuts to left wing"},
    {"3 goes over to left wing", "3 goes to left wing"},
    {"3 slides to left wing", "3 goes to left wing"},
    {"3 rotates to top", "3 goes to top"},
    {"5 dives", "5 cuts to the rim"},
    {"5 pops out to the left wing", "5 goes to left wing"},
    {"4 posts", "4 posts up"},
    {"2 squares up to the rim", "2 faces the rim"},
    {"5 picks for 3", "5 screens for 3"},
    {"4 crashes", "4 rebounds"},
    {"point fills left wing", "the top fills left wing"},
    {"3 just cuts to the rim please", "3 cuts to the rim"},
    {"3 cuts to the rim quickly", "3 cuts to the rim, sprinting"},
    {"1 passes to 2 and cuts to the rim. 4 lifts to top; 5 rolls",
     "1 passes to 2 / 1 cuts to the rim / 4 lifts to top / 5 rolls"},
    {"1 passes to 2, then 3 cuts to the rim", "1 passes to 2 / then 3 cuts to the rim"},
    {"1 passes to 2 and then cuts to the rim", "1 passes to 2 / 1 cuts to the rim"},
    {"1 passes to 2, 3 and 4 cut to the rim", "1 passes to 2 / 3 and 4 cut to the rim"},
    {"3 curls off 4 and 5 pops", "3 curls off 4 / 5 pops"},
    {"as 1 passes, 3 cuts to the rim, then 4 fills top",
     "as 1 passes, 3 cuts to the rim / then 4 fills top"},
    {NULL, NULL},
};

START_TEST(loose_sentences_come_out_in_the_one_form)
{
    check_pairs(loose, false);
}
END_TEST

/* As coaches say it: each means one thing, and is taken. */
static const struct pair spoken[] = {
    {"5 steps out to the top", "5 goes to top"},
    {"5 steps to the top", "5 goes to top"},
    {"5 steps up to the top", "5 goes to top"},
    {"5 steps into the lane", "5 goes to the lane"},
    {"5 steps toward the top", "5 sets up toward top"},
    {"5 screens x3", "5 screens for 3"},
    {"4 stays home", "4 stays"},
    {"3 dunks", "3 shoots"},
    {"3 waits", "3 stays"},
    {"3 waits for 1 s", "3 holds for 1 s"},
    {"3 lays it in", "3 shoots"},
    {"3 lays it up", "3 shoots"},
    {"3 finishes", "3 shoots"},
    {"3 finishes at the rim", "3 shoots"},
    {"3 spots up in the corner", "3 goes to corner"},
    {"3 spots up in the left corner", "3 goes to left corner"},
    {"1 dumps it in to 5", "1 passes to 5"},
    {"1 dumps it to 5", "1 passes to 5"},
    {"1 dumps the ball into 5", "1 passes to 5"},
    {"3 rubs off 5 to the rim", "3 comes off 5 to the rim"},
    {"1 resets to the top", "1 goes to top"},
    {"5 curls of 3 to nail", "5 curls off 3 to the nail"},
    {"5 screens for 3. after 3 comes off, 1 down screens for 4",
     "5 screens for 3 / after 3 comes off, 1 down screens for 4"},
    {"One passes to two.", "1 passes to 2"},
    {"one throws it to two", "1 passes to 2"},
    {"1 kicks it out to 2 in the corner", "1 passes to 2 at corner"},
    {"1 skips it over to 4", "1 skip passes to 4"},
    {"1 swings the ball to 2, then 2 swings it to 3", "1 passes to 2 / then 2 passes to 3"},
    {"1 hits 5 on the left block", "1 passes to 5 at left block"},
    {"1 throws an alley-oop to 5", "1 lob passes to 5"},
    {"1 pushes it to the right wing", "1 dribbles to right wing"},
    {"x1 goes under the ball screen", "x1 goes under"},
    {"3 goes to the left-hand corner", "3 goes to left corner"},
    {"5 steps up and screens for 1", "5 screens for 1"},
    {"once 3 comes off the screen, 5 goes to top", "when 3 comes off, 5 goes to top"},
    {"when 3 uses the screen, 5 goes to top", "when 3 comes off, 5 goes to top"},
    {"1 dribbles to top. after 1 dribbles off, 3 cuts to the rim",
     "1 dribbles to top / after 1 dribbles off, 3 cuts to the rim"},
    {"1 throws a lob to 5", "1 lob passes to 5"},
    {"1 lobs it to 5 at the rim", "1 lob passes to 5 at the rim"},
    {"1 gets the ball to 2 on the wing", "1 passes to 2 at wing"},
    {"1 makes a bounce pass to 5", "1 bounce passes to 5"},
    {"1 passes ahead to 2", "1 passes to 2"},
    {"2 passes it back to 1", "2 passes to 1"},
    {"1 dishes to 3", "1 passes to 3"},
    {"1 fires a pass to 3", "1 passes to 3"},
    {"1 hands it off to 2", "1 hands off to 2"},
    {"1 hands the ball to 2", "1 hands off to 2"},
    {"1 dribble hands off to 2", "1 dribbles at 2 / 1 hands off to 2"},
    {"1 dribbles over and hands off to 2", "1 dribbles at 2 / 1 hands off to 2"},
    {"1 dribble handoff with 2", "1 dribbles at 2 / 1 hands off to 2"},
    {"1 reverses the ball to 4 on the weak side", "1 passes to 4 at the weak side"},
    {"4 enters it to 5", "4 passes to 5"},
    {"1 enters to the high post", "1 passes to high post"},
    {"2 inbounds to 1", NULL},
    {"5 throws it back out to 1", "5 passes to 1"},
    {"3 cuts hard to the basket", "3 cuts to the rim, sprinting"},
    {"3 cuts backdoor", "3 back cuts"},
    {"3 goes backdoor to the rim", "3 back cuts to the rim"},
    {"3 flashes to the high post", "3 flashes to high post"},
    {"3 cuts through to the opposite corner", "3 cuts to the opposite corner"},
    {"2 relocates to the corner", "2 relocates to corner"},
    {"2 fills the top", "2 fills top"},
    {"2 fills up to the top", "2 fills top"},
    {"4 lifts up to the wing", "4 lifts to wing"},
    {"4 drifts down to the corner", "4 drifts to corner"},
    {"4 moves over to the weak side", "4 goes to the weak side"},
    {"4 clears to the other side", "4 clears to the opposite side"},
    {"4 clears out to the opposite corner", "4 clears to the opposite corner"},
    {"4 spaces to the corner", "4 goes to corner"},
    {"5 rolls hard to the rim", "5 rolls to the rim, sprinting"},
    {"5 short rolls to the free throw line", "5 rolls to the free-throw line"},
    {"5 slips to the rim", NULL},
    {"5 slips the screen and dives to the rim", "5 slips / 5 rolls to the rim"},
    {"5 posts up on the left block", "5 posts up at left block"},
    {"5 posts up hard", "5 posts up, sprinting"},
    {"5 seals his man", "5 seals"},
    {"3 curls around 5", "3 curls off 5"},
    {"3 curls into the lane off 5", "3 curls off 5 to the lane"},
    {"3 fades to the corner off 5", "3 fades off 5 to corner"},
    {"3 flares off of 4 to the wing", "3 flares off 4 to wing"},
    {"5 sets a screen for 3", "5 screens for 3"},
    {"5 comes up and sets a ball screen for 1", "5 ball screens for 1"},
    {"5 sets a pick for 1 at the top", "5 screens for 1 at top"},
    {"5 picks for 1", "5 screens for 1"},
    {"5 and 4 set a staggered screen for 2", "5 and 4 screen for 2"},
    {"4 and 5 stagger for 2", "4 and 5 screen for 2"},
    {"5 sets a down screen on x3", "5 down screens for 3"},
    {"5 sets a back screen for 2 at the left elbow", "5 back screens for 2 at left elbow"},
    {"5 back picks x2", "5 back screens for 2"},
    {"5 sets a flare screen for 1 on the right wing", "5 flare screens for 1 at right wing"},
    {"4 screens down for 3", "4 down screens for 3"},
    {"4 screens away from the ball for 2", "4 screens away for 2"},
    {"4 screens across for 5", "4 cross screens for 5"},
    {"4 cross screens for 5", NULL},
    {"5 screens again for 3", "5 re-screens for 3"},
    {"5 sets a drag screen for 1", "5 ball screens for 1"},
    {"x3 fights over the screen", "x3 goes over"},
    {"x3 switches", NULL},
    {"x3 and x5 switch", NULL},
    {"x1 and x5 trap", NULL},
    {"x3 hedges hard", "x3 hedges, sprinting"},
    {"x5 drops into the paint", "x5 drops to the lane"},
    {"x2 helps", NULL},
    {"x2 closes out to 3", "x2 closes out on 3"},
    {"x2 runs at 3", "x2 closes out on 3"},
    {"x4 traps the ball", NULL},
    {"x2 sags off", "x2 sags"},
    {"When 2 catches it, 3 cuts to the rim", "when 2 catches, 3 cuts to the rim"},
    {"As soon as 2 catches, 3 cuts to the rim", "when 2 catches, 3 cuts to the rim"},
    {"as soon as 1 passes, 3 cuts to the rim", "when 1 passes, 3 cuts to the rim"},
    {"after that 3 cuts to the rim", "then 3 cuts to the rim"},
    {"after this, 3 cuts to the rim", "then 3 cuts to the rim"},
    {"Then three cuts to the basket", "then 3 cuts to the rim"},
    {"next, 3 cuts to the rim", "then 3 cuts to the rim"},
    {"First, 1 passes to 2", "1 passes to 2"},
    {"First 1 passes to 2", "1 passes to 2"},
    {"finally 1 shoots", "then 1 shoots"},
    {"At the same time, 4 lifts to the wing", "meanwhile 4 lifts to wing"},
    {"at the same time 4 lifts to the wing", "meanwhile 4 lifts to wing"},
    {"meanwhile 4 lifts to the wing", "meanwhile 4 lifts to wing"},
    {"While this happens, 4 lifts to the wing", "meanwhile 4 lifts to wing"},
    {"1 passes to 2, cuts to the rim", "1 passes to 2 / 1 cuts to the rim"},
    {"1 drives and kicks to 3 in the corner", "1 drives / 1 passes to 3 at corner"},
    {"1 drives the lane", "1 drives to the lane"},
    {"1 drives baseline and passes to 3", "1 drives baseline / 1 passes to 3"},
    {"1 drives hard to the rim", "1 drives to the rim, sprinting"},
    {"1 attacks the basket", "1 drives to the rim"},
    {"1 dribbles across half court", "1 dribbles to half court"},
    {"1 brings it up the right side", "1 dribbles to the right side"},
    {"1 dribbles to the right side", NULL},
    {"1 dribbles toward 2, 2 goes backdoor", "1 dribbles at 2 / 2 back cuts"},
    {"1 takes two dribbles to the elbow", "1 dribbles to elbow"},
    {"1 shoots it", "1 shoots"},
    {"1 takes the open shot", "1 shoots"},
    {"1 shoots a floater", "1 shoots"},
    {"1 shoots the ball", "1 shoots"},
    {"1 pulls up for a jumper", "1 shoots"},
    {"3 catches and shoots", "3 shoots"},
    {"3 catches and drives", "3 drives"},
    {"3 catches and passes to 1", "3 passes to 1"},
    {"1 rebounds", NULL},
    {"5 crashes the offensive glass", "5 rebounds"},
    {"everybody else stays", "everyone else stays"},
    {"the rest stay", "everyone else stays"},
    {"3 waits until 5 screens", "3 stays until 5 screens"},
    {"3 waits for two seconds", "3 holds for 2 s"},
    {"3 waits, then curls off 5", "3 stays / 3 curls off 5"},
    {"2 and 3 exchange places", "2 fills 3's spot / 3 fills 2's spot"},
    {"2 and 3 swap", "2 fills 3's spot / 3 fills 2's spot"},
    {"3 takes two steps toward the baseline", "3 sets up toward the baseline 2 steps"},
    {"3 jab steps", "3 jabs"},
    {"3 shot fakes and drives", "3 shot fakes / 3 drives"},
    {"5 gets the rebound", "5 rebounds"},
    {"Player 3 cuts to the rim", "3 cuts to the rim"},
    {"1 passes to 2 on left wing.", "1 passes to 2 at left wing"},
    {"1’s man trails", "1's defender trails"},
    {"4 and 5 both screen for 2", "4 and 5 screen for 2"},
    {"1 immediately passes to 2", "1 passes to 2"},
    {"2 returns the pass to 1", "2 passes to 1"},
    {NULL, NULL},
};

START_TEST(what_coaches_say_is_read_where_it_means_one_thing)
{
    check_pairs(spoken, false);
}
END_TEST

static const struct pair drills[] = {
    {"coach passes to 2", NULL},
    {"1 passes to coach", NULL},
    {"1 goes to the end of the line", NULL},
    {"12 goes behind 1", NULL},
    {"4 goes to cone A", NULL},
    {"4 goes to 3 ft above cone b", "4 goes to 3 ft above cone B"},
    {"x7 guards 7", NULL},
    {"2 goes to the back of the line", "2 goes to the end of the line"},
    {"2 goes to the end of his line", "2 goes to the end of the line"},
    {"2 goes next to 3", "2 goes beside 3"},
    {NULL, NULL},
};

START_TEST(drills_have_cones_lines_a_coach_and_twelve_players)
{
    check_pairs(drills, true);
}
END_TEST

struct refusal {
    const char *written, *id, *at, *message, *help;
};

static const struct refusal refusals[] = {
    {"passes to 2", "text.who-missing", "passes", "who `passes`?",
     "begin with the player: `1 passes`"},
    {"bob passes to 2", "text.who-missing", "bob",
     "a sentence begins with who does it, and `bob` is nobody",
     "begin with a player's number: `1 passes to 2`"},
    {"1 passes to 2. cuts to the rim", "text.who-missing", "cuts", "who `cuts`?",
     "begin with the player: `1 cuts`"},
    {"2.5 cuts to the rim", "text.who-missing", "2.5",
     "a sentence begins with who does it, and `2.5` is nobody",
     "begin with a player's number: `1 passes to 2`"},
    {"3", "text.verb-missing", "", "`3` does what?", "write what happens: `3 cuts to the rim`"},
    {"x3", "text.verb-missing", "", "`x3` does what?", "write what happens: `x3 sags`"},
    {"3 cust to the rim", "text.verb-unknown", "cust", "`cust` is no verb of the play language",
     "did you mean `cuts`?"},
    {"3 scrambles to the rim", "text.verb-unknown", "scrambles",
     "`scrambles` is no verb of the play language",
     "the most usual verbs are `passes to`, `cuts to`, `screens for`, `dribbles to` and `goes to`"},
    {"3 cuts", "text.place-missing", "", "`3 cuts to` which place?",
     "name the place: `3 cuts to the rim`"},
    {"3 cuts to", "text.place-missing", "", "`3 cuts to` which place?",
     "name the place: `3 cuts to the rim`"},
    {"2 fills", "text.place-missing", "", "`2 fills` which place?",
     "name the place: `2 fills left corner`"},
    {"3 sets up toward", "text.place-missing", "", "`3 sets up toward` which place?",
     "name the place: `3 sets up toward the rim`"},
    {"x2 rotates", "text.place-missing", "", "`x2 rotates to` which place?",
     "name the place: `x2 rotates to the rim`"},
    {"3 cuts to 5", "text.place-unknown", "5", "`5` is somebody, not a place",
     "write `beside 5`, `5's spot` or `4 ft above 5`"},
    {"3 cuts to elbwo", "text.place-unknown", "elbwo", "there is no place called `elbwo`",
     "did you mean `elbow`?"},
    {"3 cuts to left wign", "text.place-unknown", "left wign", "there is no spot `left wign`",
     "did you mean `left wing`?"},
    {"3 cuts to left rim", "text.place-unknown", "left rim",
     "there is only one rim: it has no left and right", "write `rim`"},
    {"3 cuts to left", "text.place-half", "left", "`left` what?", "name the spot: `left wing`"},
    {"3 cuts to the next spot", "text.place-half", "", "the next spot which way?",
     "write `the next spot left`, `right`, `up` or `down`"},
    {"4 goes to (12 3)", "text.place-half", "3",
     "in brackets stand two numbers with a comma in between",
     "write `(12, -3)`: to the right of the ring, and toward half court"},
    {"4 goes to halfway between top", "text.place-half", "",
     "`halfway between` takes two places with `and` in between",
     "write `halfway between top and left wing`"},
    {"4 goes to 3 ft above", "text.place-half", "", "a distance from where?",
     "write `3 ft above left corner` or `4 ft above 5`"},
    {"4 goes to where top is", "text.place-half", "top", "where who is?", "write `where 3 is`"},
    {"4 goes out of bounds", "text.place-half", "", "out of bounds at which place?",
     "write `out of bounds at left hash`"},
    {"4 goes to 3 ft above 3 ft above 3 ft above top", "text.place-deep", "top",
     "places stand at most 3 deep in one another", "name a nearer spot: `3 ft above left corner`"},
    {"1 passes", "text.object-missing", "", "`1 passes to` whom?",
     "write the player's number: `1 passes to 3`"},
    {"3 curls to the rim", "text.object-missing", "", "`3 curls off` whom?",
     "write the player's number: `3 curls off 5`"},
    {"x2 guards", "text.object-missing", "", "`x2 guards` whom?",
     "write the player's number: `x2 guards 3`"},
    {"1 passes to sam", "text.object-missing", "sam", "`sam` is no player here",
     "write the player's number: `1 passes to 3`"},
    {"1 passes to x2", "text.object-unfit", "x2", "`x2` is a defender: `passes` takes an attacker",
     "write the attacker's number: `3`"},
    {"5 screens for x2", "text.object-unfit", "x2",
     "`x2` is a defender: a screen is for a team-mate",
     "write whom it frees: `5 screens for 2`, or `… for 2 on x2`"},
    {"x1 switches with 3", "text.object-unfit", "3",
     "`3` is no defender: `switches` takes a defender",
     "write the defender: `x1 switches with x3`"},
    {"1 dribbles at left wing", "text.object-unfit", "left wing",
     "`left wing` is a place: `dribbles` takes a player",
     "write `1 dribbles at 2`, or `1 dribbles to left wing`"},
    {"1 passes to the ball", "text.object-unfit", "ball",
     "`ball` is what is passed: `passes` takes a player",
     "write the player's number: `1 passes to 2`"},
    {"5 screens 3", "text.preposition-missing", "3", "`screens` needs `for` before `3`",
     "write `5 screens for 3`"},
    {"1 passes 2", "text.preposition-missing", "2", "`passes` needs `to` before `2`",
     "write `1 passes to 2`"},
    {"7 passes to 2", "text.player-range", "7", "there is no 7: a play has players 1 to 5",
     "write a player, 1 to 5; a distance needs its unit: `7 ft`"},
    {"1 passes to 0", "text.player-range", "0", "there is no 0: a play has players 1 to 5",
     "write a player, 1 to 5; a distance needs its unit: `0 ft`"},
    {"x9 guards 3", "text.player-range", "x9", "there is no x9: a play has defenders x1 to x5",
     "write the defender's number: `x5`"},
    {"2 fills 8's spot", "text.player-range", "8's", "there is no 8: a play has players 1 to 5",
     "write a player, 1 to 5; a distance needs its unit: `8 ft`"},
    {"3 denies 2", "text.defender-only", "denies", "`denies` is a defender's verb, and `3` attacks",
     "write the defender: `x3 denies`"},
    {"5 goes over 3", "text.defender-only", "goes over",
     "`goes over` is a defender's verb, and `5` attacks",
     "write the defender, `x3 goes over`, or name a place to go to"},
    {"everyone else sags", "text.defender-only", "sags",
     "`sags` is a defender's verb, and `everyone else` attacks", "write the defender: `x3 sags`"},
    {"x3 cuts to the rim", "text.attacker-only", "cuts",
     "`cuts` is an attacker's verb, and `x3` defends",
     "a defender `guards 4`, `denies`, `sags`, `helps to the lane`, `goes under`, "
     "`switches with x1`, `rotates to the rim`"},
    {"coach passes to 2", "text.drill-only", "coach", "a coach takes part in drills only",
     "open it with `drill`, or write a player's number"},
    {"4 goes behind 3", "text.drill-only", "behind 3", "`behind 3` stands in drills only",
     "open it with `drill`, or name a spot: `left corner`, `beside 3`"},
    {"4 goes to cone A", "text.drill-only", "cone A", "`cone A` stands in drills only",
     "open it with `drill`, or name a spot: `left corner`, `beside 3`"},
    {"4 and x5 screen for 2", "text.list-unfit", "x5",
     "offense and defense do not share a sentence",
     "write two sentences: `3 cuts to the rim` and `x3 trails`"},
    {"1 passes to 2 and 3", "text.list-unfit", "3", "a second player does not go here",
     "write two sentences, or give 3 a verb of its own"},
    {"3, 4 cuts to the rim", "text.list-unfit", "cuts",
     "`4 cuts`: one player, or those before the comma too?",
     "write `and` before the last of several players, or begin a new sentence"},
    {"1 passes to 1", "text.object-unfit", "1", "`1` does this: it takes another player",
     "write the other player's number"},
    {"x1 switches with x1", "text.object-unfit", "x1", "`x1` does this: it takes another player",
     "write the other player's number"},
    {"2 catches", "text.verb-unknown", "catches", "a catch is the end of a pass, not a sentence",
     "write `1 passes to 2`; another sentence waits for it with `when 2 catches`"},
    {"3, 4 and 3 stay", "text.twice", "3", "`3` is named twice",
     "name each player once: `3 and 4 cut to the rim`"},
    {"3 curls off 5 and 5", "text.twice", "5", "the screener is said twice: `5` is the second one",
     "keep one of the two, or write two sentences"},
    {"3 sets up the rim", "text.preposition-missing", "rim",
     "`sets up` needs `toward` before `rim`", "write `3 sets up toward rim`"},
    {"3 sets up at left wing", "text.preposition-missing", "at",
     "`at` does not lead to a place here",
     "write `3 sets up toward left wing`, or `goes to` for a move without a name of its own"},
    {"1 dribbles off 5", "text.place-missing", "", "`1 dribbles off 5 to` which place?",
     "name the place: `1 dribbles off 5 to top`"},
    {"3 cuts to the rim and", "text.left-over", "and", "no sentence follows `and`",
     "write who does what behind it: `and 3 cuts to the rim`"},
    {"2 faces x3 the rim", "text.twice", "rim", "where is said twice: `rim` is the second one",
     "keep one of the two, or write two sentences"},
    {"2 drives baseline off 5", "text.twice", "drives",
     "`drives` takes either a screener or a way round, not both",
     "keep one of the two, or write two sentences"},
    {"as 1 dribbles left wing, 3 cuts to the rim", "text.clause-half", "left",
     "where does the clause `as 1 dribbles` end?",
     "put a comma behind it, and leave out places: `as 1 dribbles, 3 cuts to the rim`"},
    {"3 cuts to the rim, at 2 s, 4 lifts to top", "text.clause-between", "at 2 s",
     "`at 2 s` could belong to the sentence before it or behind it",
     "end the first sentence with a full stop, or write two lines"},
    {"2 holds", "text.duration-missing", "", "`2 holds` for how long?",
     "write seconds: `2 holds for 1 s`; who only does not move `stays`"},
    {"2 holds for 6 ft", "text.duration-missing", "6 ft", "`2 holds` for how long?",
     "write seconds: `2 holds for 1 s`; who only does not move `stays`"},
    {"3 cuts to the rim, taking", "text.duration-missing", "", "`taking` how long?",
     "write seconds: `taking 1.5 s`"},
    {"3 cuts to the rim sideways", "text.left-over", "sideways",
     "`sideways` has no part in this sentence", "leave it out, or make it a sentence of its own"},
    {"3 cuts to the rim, sprintng", "text.left-over", "sprintng",
     "`sprintng` has no part in this sentence", "did you mean `sprinting`?"},
    {"1 shoots 3", "text.left-over", "3", "`3` has no part in this sentence",
     "`shoots` takes no player here: leave `3` out"},
    {"x2 stays at left wing", "text.left-over", "at left wing",
     "`at left wing`: `stays` takes no place",
     "write `x2 stays` for the place where the player is, or `x2 rotates to left wing` for "
     "another"},
    {"3 cuts to the rim to top", "text.twice", "top",
     "the place is said twice: `top` is the second one",
     "keep one of the two, or write two sentences"},
    {"1 passes to 2 to 3", "text.twice", "3", "the player is said twice: `3` is the second one",
     "keep one of the two, or write two sentences"},
    {"3 cuts to the rim, sprinting, walking", "text.twice", "walking",
     "the pace is said twice: `walking` is the second one", "keep one of the two"},
    {"3 curls off 5, wide, tight", "text.twice", "tight",
     "how far off is said twice: `tight` is the second one", "keep one of the two"},
    {"3 cuts to the rim, facing top", "text.modifier-unfit", "facing",
     "`facing` does not go with `cuts`",
     "it turns a screener: `5 screens for 3, facing the baseline`; else `2 faces the rim`"},
    {"5 screens for 3, early", "text.modifier-unfit", "early", "`early` does not go with `screens`",
     "it is for one who does not wait for a screen: `3 curls off 5, early`"},
    {"he cuts to the rim", "text.points-back", "he", "`he`: which player is meant?",
     "say the number: `4`"},
    {"1 passes to him", "text.points-back", "him", "`him`: which player is meant?",
     "say the number: `4`"},
    {"3 cuts to his spot", "text.points-back", "his", "`his`: which player is meant?",
     "say the number: `4's spot`"},
    {"4 doesn't roll", "text.negation", "doesn't",
     "`doesn't`: a play says what happens, not what does not",
     "say what happens instead: `4 stays`, `4 pops`"},
    {"4 does not roll", "text.negation", "does",
     "`does`: a play says what happens, not what does not",
     "say what happens instead: `4 stays`, `4 pops`"},
    {"4 never rolls", "text.negation", "never",
     "`never`: a play says what happens, not what does not",
     "say what happens instead: `4 stays`, `4 pops`"},
    {"1 gives it to 2", "text.two-meanings", "gives", "`gives` alone is two things",
     "write `1 passes to 2` or `1 hands off to 2`"},
    {"1 makes a move", "text.two-meanings", "makes",
     "`makes` what? That noun is no pass, screen, cut or shot",
     "write `1 passes to 2` or `1 screens for 2`; a screen may be a down, back, cross, flare, ball "
     "or double screen"},
    {"as, 3 cuts to the rim", "text.clause-half", ",", "`as` what? Who does what is missing",
     "write `as 1 passes`"},
    {"as 1, 3 cuts to the rim", "text.clause-half", ",",
     "`as` takes one player and what that player does", "write `as 1 passes` or `when 2 catches`"},
    {"as 4 and 5 screen, 3 cuts to the rim", "text.clause-half", "and",
     "`as` takes one player and what that player does", "write `as 1 passes` or `when 2 catches`"},
    {"as 1 dribbles to left wing, 3 cuts to the rim", "text.clause-half", "to",
     "`as` takes who does what, without where", "write `as 1 dribbles,`"},
    {"as 1 pases, 3 cuts to the rim", "text.clause-half", "pases", "`as 1` does what?",
     "did you mean `passes`?"},
    {"1 drives to the rim until", "text.clause-half", "", "`until` what? Who does what is missing",
     "write `until 1 passes`"},
    {"as 3 is open, 1 passes to 3", "text.state-unfit", "3 is open",
     "`3 is open` is a state, and `as` takes what somebody does", "write `when 3 is open`"},
    {"then as 1 passes, 3 cuts to the rim", "text.clause-then", "as 1 passes",
     "`then` and `as 1 passes` say two different moments",
     "keep one of them; `then` may stand before `after`, `when` and `while`"},
    {"as 1 passes, 3 cuts to the rim when 2 catches", "text.clause-two", "when",
     "a second clause in one sentence", "a sentence waits for one thing: keep one of the two"},
    {"3 cuts to the rim until x4 helps until x3 helps", "text.clause-two", "until",
     "a second `until` in one sentence",
     "a sentence is cut short by one thing: keep one of the two"},
    {"4 double screens for 2", "text.double-screen", "double screens",
     "a double screen takes two screeners", "write `4 and 5 double screen for 2`"},
    {"give it to 2", "text.who-missing", "give", "who `give`?", "begin with the player: `1 gives`"},
    {"throw to 2", "text.who-missing", "throw", "who `throw`?", "begin with the player: `1 passes`"},
    {"5 steps off the block", "text.who-missing", "5 steps", "`5 steps` is a length here",
     "if player 5 moves, write where to: `5 goes to top`"},
    {"5 kicks it out", "text.object-missing", "", "`5 passes to` whom?",
     "write the player's number: `5 passes to 3`"},
    {"as 1 is thinking, 3 cuts to the rim", "text.clause-half", "is", "`as 1` does what?",
     "write `as 1 dribbles`, or a state: `when 1 is open`"},
    {"when the ball goes to 2, 3 cuts to the rim", "text.clause-half", "ball",
     "the ball does nothing by itself", "write `as 1 passes`, or `when 2 catches`"},
    {"3 misses", "text.verb-unknown", "misses", "`misses` is no verb of the play language",
     "write `3 shoots`: whether it goes in, the coach sees"},
    {"2 replaces 1 at the top", "text.left-over", "at the top",
     "`at the top`: `replaces` takes no place", "leave it out: `2 replaces 1`"},
    {"5 steps out", "text.place-missing", "out", "`5 goes to` which place?",
     "name the place: `5 goes to left corner`"},
    {"1 takes one dribble and shoots", "text.place-missing", "and", "`1 dribbles to` which place?",
     "name the place: `1 dribbles to top`"},
    {"1 looks at 3", "text.verb-unknown", "looks", "`looks` is no verb of the play language",
     "a look moves nobody: write `point 1 \"Look at the cutter\"` under the step, or the pass "
     "itself"},
    {"3 gets open on the wing", "text.verb-unknown", "gets open",
     "`gets open` is no verb of the play language",
     "write `3 v-cuts to left wing`, or the screen that frees the player"},
    {"1 picks up his dribble", "text.verb-unknown", "picks up",
     "`picks up` is no verb of the play language",
     "a dribble ends by itself: write what follows, `1 shoots` or `1 passes to 2`; a defender `x3 "
     "guards 3`"},
    {"2 and 3 switch sides", "text.verb-unknown", "switch sides",
     "`switch sides` is no verb of the play language",
     "write where each goes: `2 goes to right wing`, `3 goes to left wing`; or `2 and 3 exchange`"},
    {"x3 bothers 3", "text.verb-unknown", "bothers", "`bothers` is no verb of the play language",
     "the most usual verbs are `guards`, `denies`, `sags`, `helps to` and `switches with`"},
    {"4 and 5 wander to the rim", "text.verb-unknown", "wander",
     "`wander` is no verb of the play language",
     "the most usual verbs are `pass to`, `cut to`, `screen for`, `dribble to` and `go to`"},
    {"the point guard passes to 2", "text.who-missing", "point",
     "a sentence begins with who does it, by number: `point` is none",
     "write the player's number: `1`"},
    {"\"1 passes to 2\"", "text.who-missing", "\"1 passes to 2\"",
     "a sentence stands without quotes", "take the quotation marks away: `1 passes to 2`"},
    {"1 passes to 2's spot", "text.object-missing", "2's", "`2's` is no player here",
     "write the player's number: `1 passes to 2`"},
    {"1 drives to his right", "text.points-back", "his",
     "left and right are the floor's, nobody's own", "name the place: `right wing`, `left elbow`"},
    {"1 drives right and kicks to 3", "text.place-half", "right", "`right` what?",
     "name the spot: `right wing`"},
    {"3 cuts off 5's screen", "text.place-missing", "", "`3 comes off 5 to` which place?",
     "name the place: `3 comes off 5 to the rim`"},
    {"3 waits for 5 to screen", "text.duration-missing", "5", "a wait for somebody is no time",
     "say what comes after it: `after 5 passes, 3 cuts to the rim`"},
    {"when 1 gets there, 3 cuts to the rim", "text.clause-half", "gets there",
     "`when 1 gets there`: a moment is named by a verb of the play",
     "write `after 1 cuts`: that is when the sentence is done"},
    {"1 drives. once 1 arrives, 3 cuts to the rim", "text.clause-half", "arrives",
     "`when 1 arrives`: a moment is named by a verb of the play",
     "write `after 1 drives`: that is when the sentence is done"},
    {"3 cuts to the rim. when 3 gets to the rim, 1 passes to 3", "text.clause-half", "to",
     "`when` takes who does what, without where", "write `after 3 cuts,`"},
    {"4 goes to the cone", "text.drill-only", "cone", "`cone` stands in drills only",
     "open it with `drill`, or name a spot: `left corner`, `beside 3`"},
    {"the ball goes to 2", "text.ball-acts", "ball", "the ball does nothing by itself",
     "say who moves it: `1 passes to 2`"},
    {NULL, NULL, NULL, NULL, NULL},
};

static const struct refusal pointing[] = {
    {"3 uses the screen and curls", "text.points-back", "screen",
     "`screen`: no screen for this player stands above", "say whose: `off 5`"},
    {"3 uses 5's screen for a shot", "text.verb-missing", "uses 5's screen",
     "a screen is used how?", "write `3 curls off 5`, `fades off 5` or `comes off 5 to top`"},
    {"3 uses 5's screen and passes to 2", "text.verb-unknown", "passes",
     "`passes` does not use a screen",
     "a screen is used by `curls`, `fades`, `flares`, `comes off`, `rejects`, `drives`"},
    {"5 screens for 3, 4 screens for 3, 3 curls", "text.object-missing", "curls",
     "`curls` off whom? More than one screen waits for this player", "say whose: `3 curls off 5`"},
    {"on the pass, 3 cuts to the rim", "text.points-back", "pass", "`pass`: no pass stands above",
     "say whose: `as 1 passes`, `as 2 catches`"},
    {"his defender trails", "text.points-back", "his defender",
     "`his defender`: no attacker stands above", "say the number: `x3` or `3's defender`"},
    {"2 follows the pass", "text.points-back", "follows the pass",
     "`follows the pass`: this player has made no pass above", "say to whom: `2 goes beside 4`"},
    {"2 and 5 exchange and cut to the rim", "text.left-over", "and",
     "`and` has no part in this sentence",
     "these words are two sentences: write them out, each with what belongs to it"},
    {"2, 3 and 4 exchange", "text.list-unfit", "exchange", "two players exchange",
     "write `3 and 5 exchange`"},
    {"1 gives and goes with", "text.object-missing", "", "`gives and goes with` whom?",
     "write the player's number: `1 passes to 4`"},
    {NULL, NULL, NULL, NULL, NULL},
};

static void same_text(struct str found, const char *wanted, const char *line)
{
    ck_assert_msg(str_is(found, wanted), "%s\n  gave   %.*s\n  wanted %s", line, STR_ARG(found),
                  wanted);
}

static void check_refusals(const struct refusal *row)
{
    for (; row->written; row++) {
        struct cursor c = open_line(row->written, false);
        sentence_list list = {NULL, 0, 0};
        ck_assert_msg(!sentences_read(&c, &list), "%s: taken", row->written);
        ck_assert_msg(diags.all.count == 1, "%s: %zu diagnostics", row->written, diags.all.count);
        const struct diag *diag = &diags.all.at[0];
        same_text(str_of(diag->row->id), row->id, row->written);
        same_text(source_text(&sources, diag->span), row->at, row->written);
        same_text(diag->message, row->message, row->written);
        same_text(diag->help, row->help, row->written);
    }
}

START_TEST(what_cannot_be_read_is_refused_with_its_reason)
{
    check_refusals(refusals);
}
END_TEST

START_TEST(words_that_point_at_nothing_are_refused)
{
    check_refusals(pointing);
}
END_TEST

static const struct pair back[] = {
    {"2 and 5 exchange", "2 fills 5's spot / 5 fills 2's spot"},
    {"1 gives and goes with four", "1 passes to 4 / 1 cuts to the rim"},
    {"2 kicks it out to 4 and follows the pass", "2 passes to 4 / 2 goes beside 4"},
    {"1 DHOs with 2", "1 dribbles at 2 / 1 hands off to 2"},
    {"as 1 passes, 2 and 5 exchange",
     "as 1 passes, 2 fills 5's spot / as 1 passes, 5 fills 2's spot"},
    {"5 screens X2 at the right elbow", "5 screens for 2 at right elbow"},
    {"x2 guards 4; 5 screens x2", "x2 guards 4 / 5 screens for 4"},
    {"5 screens x2 for 4", "5 screens for 4 on x2"},
    {"5 screens for 3. 3 steps toward the baseline, then uses the screen and curls",
     "5 screens for 3 / 3 sets up toward the baseline / 3 curls off 5"},
    {"5 screens for 3, 3 uses the screen and cuts to top",
     "5 screens for 3 / 3 comes off 5 to top"},
    {"3 uses 5's screen and fades", "3 fades off 5"},
    {"5 screens for 3, 3 curls", "5 screens for 3 / 3 curls off 5"},
    {"4 and 5 screen for 2; 2 comes off the screen to top",
     "4 and 5 screen for 2 / 2 comes off 4 and 5 to top"},
    {"5 screens for 3, 3 rejects the screen", "5 screens for 3 / 3 rejects 5"},
    {"1 passes to 2. 3 zipper cuts off 4 on the pass",
     "1 passes to 2 / as 1 passes, 3 comes off 4 to top"},
    {"1 passes to 2. on the catch, 3 cuts to the rim",
     "1 passes to 2 / as 2 catches, 3 cuts to the rim"},
    {"5 screens for 3. after the screen 5 rolls", "5 screens for 3 / after 5 screens, 5 rolls"},
    {"5 screens for 3 on his defender", "5 screens for 3 on 3's defender"},
    {"3 cuts to the rim until his defender helps", "3 cuts to the rim until 3's defender helps"},
    {NULL, NULL},
};

START_TEST(words_that_point_back_are_printed_as_what_they_mean)
{
    check_pairs(back, false);
}
END_TEST

/* Sentences with words lost, doubled and taken from one another: most are refused; what is taken
 * must come out of tidy as something that is taken again and printed the same. */
static unsigned random_next(unsigned long long *state, size_t below)
{
    *state = *state * 6364136223846793005ULL + 1442695040888963407ULL;
    return (unsigned)((*state >> 33) % below);
}

static const char *random_sentence(unsigned long long *state)
{
    static const struct pair *const tables[] = {tidy_forms, guards, ties, loose, spoken, back};
    const struct pair *table = tables[random_next(state, 5)];
    size_t rows = 0;
    while (table[rows].written) {
        rows++;
    }
    return table[random_next(state, rows)].written;
}

static size_t words_of(char *text, char **words, size_t most)
{
    size_t count = 0;
    for (char *word = strtok(text, " "); word && count < most; word = strtok(NULL, " ")) {
        words[count++] = word;
    }
    return count;
}

static const char *garbled(unsigned long long *state)
{
    static const char *const joints[] = {" ", " and ", ", ", ". ", "; ", " then "};
    char *words[80], *others[40];
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_print(&text, "%s%s", random_sentence(state), joints[random_next(state, 6)]);
    strbuf_text(&text, random_sentence(state));
    strbuf_char(&text, '\0');
    size_t count = words_of(text.at, words, 78);
    const char *other = random_sentence(state);
    size_t spare = words_of(arena_copy(&arena, other, strlen(other)), others, 40);
    for (unsigned change = random_next(state, 3); change > 0; change--) {
        size_t at = random_next(state, count);
        if (random_next(state, 2) && count > 1) {
            memmove(words + at, words + at + 1, (--count - at) * sizeof *words);
        } else {
            words[at] = others[random_next(state, spare)];
        }
    }
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < count; i++) {
        strbuf_print(&out, "%s%s", i > 0 ? " " : "", words[i]);
    }
    return str_copy(&arena, strbuf_str(&out)).at;
}

START_TEST(what_is_taken_from_garbled_words_means_what_tidy_prints)
{
    unsigned long long state = 20261201;
    size_t taken = 0;
    for (int turn = 0; turn < 1500; turn++) {
        const char *text = garbled(&state);
        struct cursor c = open_line(text, false);
        sentence_list list = {NULL, 0, 0};
        if (!sentences_read(&c, &list)) {
            ck_assert_msg(diags.errors > 0, "refused without a word: %s", text);
            continue;
        }
        ck_assert_msg(diags.all.count == 0 && cursor_done(&c), "%s: %s", text, complaint());
        const char *once = printed(&list, " ; "), *wanted = printed(&list, " / ");
        const char *found = list.count > 0 ? tidied(once, false) : "";
        ck_assert_msg(strcmp(found, wanted) == 0, "%s\n  gave   %s\n  wanted %s", text, found,
                      wanted);
        taken++;
    }
    ck_assert_uint_gt(taken, 300);
}
END_TEST

START_TEST(one_sentence_is_asked_for_and_two_are_refused)
{
    struct sentence sentence;
    struct cursor c = open_line("3 curls off 5", false);
    ck_assert(sentence_read(&c, &sentence));
    ck_assert_int_eq(sentence.verb, VERB_CURLS);
    c = open_line("3 curls off 5 and 5 rolls", false);
    ck_assert(!sentence_read(&c, &sentence));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.sentences-many");
    c = open_line(".", false);
    ck_assert(!sentence_read(&c, &sentence));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.who-missing");
}
END_TEST

static const struct pair conditions[] = {
    {"x3 trails", NULL},
    {"x3 goes under 5", NULL},
    {"x4 helps", NULL},
    {"x5 shows on 1", "x5 hedges 1"},
    {"x1 and x3 switch", NULL},
    {"3's defender sags", NULL},
    {"3 is open", NULL},
    {"3 is covered", NULL},
    {"passer is denied", NULL},
    {"otherwise", NULL},
    {NULL, NULL},
};

START_TEST(a_read_names_what_the_defense_does)
{
    for (const struct pair *pair = conditions; pair->written; pair++) {
        struct cursor c = open_line(pair->written, false);
        struct condition condition;
        ck_assert_msg(condition_read(&c, &condition) && cursor_done(&c), "%s", pair->written);
        struct strbuf out;
        strbuf_init(&out, &arena);
        tidy_condition(&out, &condition);
        ck_assert_str_eq(str_copy(&arena, strbuf_str(&out)).at,
                         pair->tidy ? pair->tidy : pair->written);
    }
    static const char *const unread[] = {"3 trails", "x3", "x3 cuts", "3 is past 1", "top", NULL};
    for (const char *const *text = unread; *text; text++) {
        struct cursor c = open_line(*text, false);
        const struct token *before = c.at;
        struct condition condition;
        ck_assert_msg(!condition_read(&c, &condition), "%s: taken", *text);
        ck_assert_ptr_eq(c.at, before);
    }
}
END_TEST

static const char lines_written[] = "play \"Lantern\"\n"
                                    "  defense man\n"
                                    "  x2 guards 4\n"
                                    "  step\n"
                                    "    1 passes to 2\n"
                                    "    on the catch, 3 cuts to the rim\n"
                                    "    1 follows the pass\n"
                                    "    his defender trails\n"
                                    "    5 screens for 3\n"
                                    "    5 screens x2\n"
                                    "  step\n"
                                    "    3 uses the screen and curls\n"
                                    "    read x3 trails\n"
                                    "      1 passes to 3. After the pass 2 lifts to top\n";
static const char lines_tidied[] = "play \"Lantern\"\n"
                                   "  defense man\n"
                                   "  x2 guards 4\n"
                                   "  step\n"
                                   "    1 passes to 2\n"
                                   "    as 2 catches, 3 cuts to the rim\n"
                                   "    1 goes beside 2\n"
                                   "    1's defender trails\n"
                                   "    5 screens for 3\n"
                                   "    5 screens for 4\n"
                                   "  step\n"
                                   "    3 curls off 5\n"
                                   "    read x3 trails\n"
                                   "      1 passes to 3\n"
                                   "      after 1 passes, 2 lifts to top\n";

START_TEST(words_point_back_over_lines_and_steps_but_the_pass_not_over_steps)
{
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("a.play"), str_of(lines_written));
    struct book *book = book_read(&arena, &sources, source, NULL, &diags);
    ck_assert_msg(diags.all.count == 0, "%s", complaint());
    ck_assert_str_eq(str_copy(&arena, tidy_book(&arena, &sources, book)).at, lines_tidied);

    static const char lost[] = "play \"Lantern\"\n"
                               "  step\n"
                               "    1 passes to 2\n"
                               "  step\n"
                               "    on the pass, 3 cuts to the rim\n";
    source = sources_add(&sources, STR("b.play"), str_of(lost));
    book_read(&arena, &sources, source, NULL, &diags);
    ck_assert_uint_eq(diags.all.count, 1);
    ck_assert_str_eq(diags.all.at[0].row->id, "text.points-back");

    static const char zone[] = "play \"Lantern\"\n"
                               "  defense zone 2-3\n"
                               "  5 screens x2\n"
                               "  5 screens for 4 on x2\n";
    diags_init(&diags, &arena);
    source = sources_add(&sources, STR("c.play"), str_of(zone));
    book_read(&arena, &sources, source, NULL, &diags);
    ck_assert_uint_eq(diags.all.count, 1);
    ck_assert_str_eq(diags.all.at[0].row->id, "text.object-unfit");
}
END_TEST

START_TEST(a_step_may_begin_with_an_event_or_follow_a_branch)
{
    struct tie tie;
    struct str title;
    struct cursor c = open_line("as 5 screens", false);
    ck_assert(step_tie_read(&c, &tie, &title));
    ck_assert_int_eq(tie.word, TIE_AS);
    ck_assert_int_eq(tie.event->family, FAMILY_SCREENS);
    c = open_line("after \"Fade\"", false);
    ck_assert(step_tie_read(&c, &tie, &title));
    ck_assert(str_is(title, "Fade"));
    ck_assert_int_eq(tie.word, TIE_NONE);
    c = open_line("while 5 screens", false);
    ck_assert(!step_tie_read(&c, &tie, &title));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.clause-half");
    c = open_line("as 5 screens badly", false);
    ck_assert(!step_tie_read(&c, &tie, &title));
    ck_assert_str_eq(diags.all.at[0].row->id, "text.left-over");
}
END_TEST

START_TEST(every_verb_has_words_slots_and_an_event)
{
    for (int verb = 0; verb < VERB_COUNT; verb++) {
        const struct verb_row *row = verb_row((enum verb)verb);
        ck_assert_ptr_nonnull(row->words);
        ck_assert_ptr_nonnull(row->bare);
        ck_assert_ptr_nonnull(row->slots);
        ck_assert_msg(strlen(row->bare) <= strlen(row->words), "%s", row->symbol);
        bool object = strpbrk(row->needs, "W") != NULL;
        bool slot = strstr(row->slots, ":W") || strstr(row->slots, ":U");
        ck_assert_msg(object == slot, "%s", row->symbol);
    }
    ck_assert_int_eq(verb_row(VERB_SCREENS)->last, WHEN_USED);
    ck_assert_str_eq(verb_row(VERB_PASSES)->words, "passes to");
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("sentence");
    TCase *all = tcase_create("sentence");
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, the_tidy_form_of_a_sentence_is_printed_as_written);
    tcase_add_test(all, defenders_have_verbs_of_their_own);
    tcase_add_test(all, every_kind_of_place_is_read);
    tcase_add_test(all, sentences_wait_for_events_states_and_the_clock);
    tcase_add_test(all, loose_sentences_come_out_in_the_one_form);
    tcase_add_test(all, what_coaches_say_is_read_where_it_means_one_thing);
    tcase_add_test(all, drills_have_cones_lines_a_coach_and_twelve_players);
    tcase_add_test(all, what_cannot_be_read_is_refused_with_its_reason);
    tcase_add_test(all, words_that_point_at_nothing_are_refused);
    tcase_add_test(all, words_that_point_back_are_printed_as_what_they_mean);
    tcase_add_test(all, what_is_taken_from_garbled_words_means_what_tidy_prints);
    tcase_add_test(all, one_sentence_is_asked_for_and_two_are_refused);
    tcase_add_test(all, a_read_names_what_the_defense_does);
    tcase_add_test(all, words_point_back_over_lines_and_steps_but_the_pass_not_over_steps);
    tcase_add_test(all, a_step_may_begin_with_an_event_or_follow_a_branch);
    tcase_add_test(all, every_verb_has_words_slots_and_an_event);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
