/* SPDX-License-Identifier: MIT */
/* Sentences as they are said and typed, and as they are garbled: what tidy prints of them. */
#include "said.h"

#include <string.h>

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
        ck_assert_msg(diags.errors == 0 && cursor_done(&c), "%s: %s", text, complaint());
        const char *once = printed(&list, " ; "), *wanted = printed(&list, " / ");
        const char *found = list.count > 0 ? tidied(once, false) : "";
        ck_assert_msg(strcmp(found, wanted) == 0, "%s\n  gave   %s\n  wanted %s", text, found,
                      wanted);
        taken++;
    }
    ck_assert_uint_gt(taken, 300);
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("loose");
    TCase *all = tcase_create("loose");
    tcase_set_timeout(all, 60);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_test(all, loose_sentences_come_out_in_the_one_form);
    tcase_add_test(all, what_coaches_say_is_read_where_it_means_one_thing);
    tcase_add_test(all, what_is_taken_from_garbled_words_means_what_tidy_prints);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
