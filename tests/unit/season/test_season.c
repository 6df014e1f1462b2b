/* SPDX-License-Identifier: MIT */
/* Practices and charted rows: the clock of a plan, names found or missed, contact by rule. */
#include "floor/season/season.h"
#include "suite.h"

#define BOOK                                                                                       \
    "team \"Larkspur Kites\"\n  1 \"Wren Halloway\" guard\n  2 \"Juno Marsh\"\n"                   \
    "  lineup \"Big\" 1 \"Wren Halloway\"\n"                                                       \
    "play \"Lantern\"\n  start five-out\n  defense man\n  step\n    1 passes to 2\n"               \
    "    chart set \"Screen set\"\n    read x3 trails \"Curl\"\n      3 cuts to the rim\n"         \
    "      chart curl \"Shoulder to hip\"\n"                                                       \
    "drill \"Two counts\"\n  start 1 top, 2 right wing\n  1 passes to 2\n"                         \
    "drill \"Closeouts\"\n  start 1 top, x1 at nail\n  x1 closes out to 1\n"

static struct sources sources;
static struct diags diags;

static struct season *season_of(const char *text)
{
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("kites.play"), str_of(text));
    const struct book *book = book_read(&arena, &sources, source, NULL, &diags);
    const struct playbook *plays = playbook_resolve(&arena, &sources, book, STR("kites"), &diags);
    return season_resolve(&arena, book, plays, &diags);
}

/* "season.name 20: this book has …; did you mean …?" one a line, notes left out. */
static const char *complaints(void)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    for (size_t i = 0; i < diags.all.count; i++) {
        const struct diag *diag = &diags.all.at[i];
        if (diag->severity != SEVERITY_NOTE) {
            strbuf_print(&out, "%s: %.*s; %.*s\n", diag->row->id, STR_ARG(diag->message),
                         STR_ARG(diag->help));
        }
    }
    return strbuf_str(&out).at;
}

static struct str as_it_is(struct arena *to, struct str name)
{
    (void)to;
    return name;
}

static bool has(const char *id)
{
    for (size_t i = 0; i < diags.all.count; i++) {
        if (str_is(str_of(diags.all.at[i].row->id), id)) {
            return true;
        }
    }
    return false;
}

static struct str help_of(const char *id)
{
    for (size_t i = 0; i < diags.all.count; i++) {
        if (str_is(str_of(diags.all.at[i].row->id), id)) {
            return diags.all.at[i].help;
        }
    }
    return STR("");
}

START_TEST(a_plan_runs_against_the_clock)
{
    const struct season *season = season_of(
        BOOK
        "practice \"Week 3\"\n  about \"Closing out\"\n  starts 5:30 pm\n  lasts 75 min\n"
        "  lineup \"big\"\n  10 min warm-up \"Form running\"\n  12.5 min drill \"two counts\"\n"
        "  3 min water\n  15 min play \"Lantern\"\n");
    ck_assert_str_eq(complaints(), "");
    ck_assert_uint_eq(season->practices.count, 1);
    const struct practice *practice = &season->practices.at[0];
    ck_assert_int_eq(practice->starts, 17 * 60 + 30);
    ck_assert_double_eq(practice->booked, 75);
    ck_assert_double_eq(practice->planned, 40.5);
    ck_assert_uint_eq(practice->items.count, 4);
    ck_assert_double_eq(practice->items.at[3].begins, 25.5);
    ck_assert(str_is(practice->items.at[1].play->name, "Two counts"));
    ck_assert(str_is(practice->about, "Closing out"));
}
END_TEST

START_TEST(contact_is_where_somebody_defends_unless_it_is_said)
{
    const struct season *season = season_of(
        BOOK "practice \"P\"\n  5 min play \"Lantern\"\n  5 min play \"Lantern\", no contact\n"
             "  5 min drill \"Two counts\"\n  5 min drill \"Two counts\", contact\n"
             "  5 min drill \"Closeouts\"\n  5 min play \"Lantern\", against none\n"
             "  5 min \"Scrimmage\", against zone 2-3\n  5 min \"Shooting\"\n");
    static const bool contact[] = {true, false, false, true, true, false, true, false};
    ck_assert_str_eq(complaints(), "");
    const struct practice *practice = &season->practices.at[0];
    ck_assert_uint_eq(practice->items.count, sizeof contact / sizeof *contact);
    for (size_t i = 0; i < practice->items.count; i++) {
        ck_assert_msg(practice->items.at[i].contact == contact[i], "item %zu", i);
    }
    ck_assert(str_is(practice->items.at[6].against, "zone 2-3"));
}
END_TEST

START_TEST(without_contact_a_screen_still_stands_on_a_defender)
{
    const struct season *season = season_of(
        BOOK "play \"Tollgate\"\n  start 1 top, 2 right wing, 3 left wing, 4 right corner, 5 left "
             "block\n  ball 1\n  defense man\n  step\n    5 screens down for 3\n"
             "    3 comes off 5 to the top\n"
             "practice \"P\"\n  5 min play \"Lantern\", no contact\n"
             "  5 min play \"Tollgate\", no contact\n  5 min play \"Tollgate\"\n"
             "  5 min \"Shooting\", no contact\n");
    static const bool bare[] = {true, false, false, false};
    static const char *const how[] = {"No contact", "No contact", "Contact", ""};
    ck_assert_str_eq(complaints(), "");
    for (size_t i = 0; i < 4; i++) {
        const struct plan_item *item = &season->practices.at[0].items.at[i];
        ck_assert_int_eq(plan_is_undefended(item, 0), bare[i]);
        ck_assert_str_eq(plan_how(&arena, item, as_it_is).at, how[i]);
    }
}
END_TEST

/* The entry of a play tells a staff nothing. */
START_TEST(a_plan_shows_the_step_that_is_read_else_the_one_with_most_screens)
{
    static const struct {
        const char *steps;
        size_t shown;
    } plays[] = {
        {"  step\n    1 passes to 2\n  step\n    3 cuts to the rim\n", 0},
        {"  step\n    1 passes to 2\n  step\n    5 screens for 3\n    3 comes off 5 to the top\n",
         1},
        {"  step\n    5 screens for 3\n    3 comes off 5 to the top\n  step\n    5 clears to left "
         "corner\n    read x3 trails\n      3 cuts to the rim\n    read otherwise\n      3 clears "
         "to "
         "left wing\n",
         1}};
    for (size_t i = 0; i < sizeof plays / sizeof *plays; i++) {
        const char *text = str_format(&arena,
                                      BOOK "play \"Tollgate\"\n  start 1 top, 2 right wing, 3 left "
                                           "wing, 4 right corner, 5 left block\n  ball 1\n  "
                                           "defense man\n%spractice \"P\"\n  5 min play "
                                           "\"Tollgate\"\n",
                                      plays[i].steps)
                               .at;
        const struct season *season = season_of(text);
        ck_assert_str_eq(complaints(), "");
        ck_assert_uint_eq(plan_step(season->practices.at[0].items.at[0].play), plays[i].shown);
    }
}
END_TEST

START_TEST(stations_hold_their_time)
{
    const struct season *season =
        season_of(BOOK "practice \"P\"\n  5 min water\n  stations 8 min, change every 4 min\n"
                       "  station \"Left\" drill \"Closeouts\" with \"guards\"\n"
                       "  station \"Right\" \"Finishing\"\n");
    ck_assert_str_eq(complaints(), "");
    const struct plan_item *item = &season->practices.at[0].items.at[1];
    ck_assert_uint_eq(item->stations.count, 2);
    ck_assert_double_eq(item->stations.at[1].begins, 5);
    ck_assert_double_eq(item->stations.at[1].minutes, 4);
    ck_assert(item->contact);
    struct practice_plays plays = practice_plays(&arena, &season->practices.at[0]);
    ck_assert_uint_eq(plays.count, 1); /* whose cautions are the plan's */
    ck_assert_ptr_eq(plays.at[0], item->stations.at[0].play);
    season_of(BOOK "practice \"P\"\n  stations 12 min, change every 4 min\n"
                   "  station \"Left\" \"Finishing\"\n  station \"Right\" \"Passing\"\n"
                   "  stations 5 min, change every 5 min\n");
    ck_assert_str_eq(complaints(),
                     "season.stations: 2 stations with a change every 4 min take 8 min, not 12; "
                     "write `stations 8 min, change every 4 min`\n"
                     "season.stations: no station stands under these stations; add one: station "
                     "\"Basket 1\" \"Finishing in pairs\"\n");
}
END_TEST

START_TEST(what_a_practice_adds_up_to_is_held_to_what_is_booked)
{
    static const char plan[] = BOOK "practice \"P\"\n  lasts 40 min\n  20 min \"Shooting\"\n"
                                    "  10 min play \"Lantern\"\n  10 min drill \"Closeouts\"\n"
                                    "  3 min water\n  5 min talk\n";
    const struct season *season = season_of(plan);
    struct practice_sums sums = practice_sum(&season->practices.at[0]);
    ck_assert_double_eq(sums.contact, 20);
    ck_assert_int_eq(sums.blocks, 2);
    ck_assert_uint_eq(sums.row.blocks, 2);
    ck_assert_uint_eq(sums.row.first, 1);
    ck_assert_double_eq(sums.dry, 40);
    ck_assert_str_eq(complaints(), "practice.over: the items take 48 min, 40 min are booked; "
                                   "shorten something by 8 min\n");
    ck_assert(has("practice.load"));
    ck_assert(has("practice.break"));
    season_of(BOOK "practice \"P\"\n  lasts 51 min\n  25 min \"Shooting\"\n  3 min water\n"
                   "  10 min play \"Lantern\"\n  3 min water\n  10 min drill \"Closeouts\"\n");
    ck_assert_uint_eq(diags.all.count, 0);
    season_of("limit practice.break 20 min\n" BOOK
              "practice \"P\"\n  25 min \"Shooting\"\n  3 min water\n");
    ck_assert(has("practice.break"));
    ck_assert(str_equal(help_of("practice.break"),
                        STR("write `3 min water` on a line of its own in between: 20 min go by "
                            "without a break at most")));
    season_of("limit practice.break 30 min\n" BOOK "practice \"P\"\n  30 min \"Shooting\"\n");
    ck_assert(!has("practice.break"));
}
END_TEST

#define STRETCH                                                                                    \
    BOOK "practice \"P\"\n  10 min \"Shooting\"\n  10 min play \"Lantern\"\n  12 min drill "       \
         "\"Closeouts\"\n  stations 12 min, change every 4 min\n"                                  \
         "  station \"Left\" drill \"Closeouts\"\n  station \"Right\" \"Passing\"\n"               \
         "  station \"Side\" \"Free throws\"\n"

START_TEST(a_stretch_of_contact_is_told_whole)
{
    const struct season *season = season_of(STRETCH);
    struct practice_sums sums = practice_sum(&season->practices.at[0]);
    ck_assert_double_eq(sums.contact, 26); /* 4 of the stations' 12: everybody is at one of three */
    ck_assert_uint_eq(sums.row.blocks, 3);
    ck_assert_uint_eq(diags.all.count, 2); /* and no water */
    ck_assert(str_equal(diags.all.at[0].message,
                        STR("three blocks with contact follow each other: 26 min of contact, from "
                            "minute 10 on")));
    season = season_of(STRETCH "  3 min water\n  8 min play \"Lantern\"\n");
    struct str told = plan_sums_told(&arena, &season->practices.at[0]);
    ck_assert_msg(strstr(told.at, "Contact 34\xC2\xA0min in 4 blocks, three back to back for "
                                  "26\xC2\xA0min. ") != NULL,
                  "%s", told.at);
}
END_TEST

START_TEST(times_that_cannot_be_are_said)
{
    season_of(BOOK "practice \"P\"\n  starts 17:30\n  ends 17:00\n  5 min water\n");
    ck_assert_str_eq(complaints(),
                     "season.time: the practice ends before it starts; times are on a "
                     "clock of 24 hours: starts 17:30, ends 18:45\n");
    season_of(BOOK "practice \"P\"\n  starts 17:30\n  ends 18:45\n  lasts 70 min\n  5 min water\n");
    ck_assert_str_eq(complaints(), "season.time: from its start to its end are 75 minutes; keep "
                                   "`lasts` or `ends`, not both\n");
    season_of(BOOK "practice \"P\"\n  ends 18:45\n  5 min water\n");
    ck_assert_str_eq(complaints(),
                     "season.time: when it ends is said, when it starts is not; add `starts "
                     "17:30`, or write `lasts 75 min` instead\n");
    const struct season *season = season_of(
        BOOK "practice \"P\"\n  starts 17:30\n  ends 18:45\n  lasts 75 min\n  5 min water\n");
    ck_assert_str_eq(complaints(), "");
    ck_assert_double_eq(season->practices.at[0].booked, 75);
}
END_TEST

START_TEST(names_that_are_not_in_the_book_are_said_with_the_nearest)
{
    season_of(BOOK "practice \"P\"\n  lineup \"Bigg\"\n  5 min drill \"Closeout\"\n"
                   "  5 min play \"Orchard\"\n  5 min drill \"Lantern\"\n");
    ck_assert_str_eq(complaints(),
                     "season.name: the team has no lineup \"Bigg\"; did you mean \"Big\"?\n"
                     "season.name: this book has no drill \"Closeout\"; did you mean "
                     "\"Closeouts\"?\n"
                     "season.name: this book has no play \"Orchard\"; there is \"Lantern\"\n"
                     "season.name: \"Lantern\" is a play, not a drill; write `play \"Lantern\"`\n");
    const struct season *season = season_of(
        BOOK "charted 2026-12-01 film \"Millrace\"\n  \"Lanter\" set 1 of 2\n"
             "  \"Lantern\" sett 1 of 2\n  \"Lantern\" read \"Curly\" 1 of 2\n"
             "  \"Lantern\" set 1 of 2 by \"Juno March\"\n  \"Lantern\" curl 2 of 2 by 3\n");
    ck_assert_str_eq(complaints(),
                     "season.name: this book has no play \"Lanter\"; did you mean \"Lantern\"?\n"
                     "season.name: this play has no chart line \"sett\"; did you mean \"set\"?\n"
                     "season.name: this play has no read or option \"Curly\"; did you mean "
                     "\"Curl\"?\n"
                     "season.name: nobody on the roster is called \"Juno March\"; did you mean "
                     "\"Juno Marsh\"?\n");
    ck_assert_uint_eq(season->charted.at[0].rows.count, 1);
}
END_TEST

START_TEST(a_name_of_two_players_does_not_say_who_it_was)
{
    const struct season *season = season_of(
        "team \"Kites\"\n  1 \"Imo Vale\" guard, jersey 4\n  2 \"Imo Vale\" wing, jersey 7\n"
        "  3 \"Ada Fenn\" wing, jersey 9\n  4 \"Ada Fenn\" forward, jersey 9\n" BOOK
        "charted 2026-10-01 game\n  \"Lantern\" set 1 of 2 by \"Imo Vale\"\n"
        "  \"Lantern\" set 1 of 2 by \"Ada Fenn\"\n  \"Lantern\" set 1 of 2 by 2\n");
    ck_assert_str_eq(complaints(),
                     "season.name: two players are called \"Imo Vale\"; write whose jersey it was: "
                     "by \"#4\" or by \"#7\"\n");
    ck_assert_uint_eq(season->charted.at[0].rows.count, 2);
}
END_TEST

#define TWO_NORAS                                                                                  \
    "team \"Kites\"\n  1 \"Nora Vale\", jersey 4\n  1 \"Nora Fenn\", jersey 7\n"                   \
    "  2 \"Imo Roe\", jersey 8\n  3 \"Imo Roe\", jersey 9\n  4 \"Ada Fell\"\n" BOOK                \
    "charted 2026-10-01 game\n  \"Lantern\" set 1 of 2 by "

START_TEST(a_player_is_told_by_what_nobody_else_has)
{
    static const struct {
        const char *said, *by;
    } meant[] = {{"\"nora fenn\"", "Nora Fenn"},
                 {"\"Ada\"", "Ada Fell"},
                 {"\"Fell\"", "Ada Fell"},
                 {"\"Nora F.\"", "Nora Fenn"},
                 {"\"#7\"", "Nora Fenn"},
                 {"\"#8\"", "Imo Roe #8"},
                 {"2", "2"},
                 {"#7", "Nora Fenn"}};
    for (size_t i = 0; i < sizeof meant / sizeof *meant; i++) {
        const struct season *season =
            season_of(str_format(&arena, "%s%s\n", TWO_NORAS, meant[i].said).at);
        ck_assert_str_eq(complaints(), "");
        ck_assert(str_equal(season->charted.at[0].rows.at[0].by, str_of(meant[i].by)));
        ck_assert_int_eq(has("season.part"), i >= 1 && i <= 3);
    }
    season_of(TWO_NORAS "\"Nora\"\n");
    ck_assert_str_eq(complaints(), "season.name: \"Nora\" may be \"Nora Vale\" or \"Nora Fenn\"; "
                                   "write the whole name: by \"Nora Vale\"\n");
    season_of(TWO_NORAS "\"#77\"\n");
    ck_assert(has("season.name"));
    season_of(TWO_NORAS "1\n");
    ck_assert(has("season.spot"));
    season_of(TWO_NORAS "3\n");
    ck_assert(!has("season.spot"));
}
END_TEST

START_TEST(a_spot_is_no_jersey)
{
    season_of(TWO_NORAS "4\n"); /* Ada's spot; Nora wears it */
    ck_assert(has("season.worn"));
    ck_assert_str_eq(help_of("season.worn").at, "to count it for \"Nora Vale\", write by \"#4\"");
    season_of(TWO_NORAS "5\n");
    ck_assert(!has("season.worn"));
    season_of("team \"Kites\"\n  4 \"Ada Fell\", jersey 4\n  1 \"Imo Roe\", jersey 3\n" BOOK
              "charted 2026-10-01 game\n  \"Lantern\" set 1 of 2 by 4\n");
    ck_assert(!has("season.worn"));
}
END_TEST

static const struct {
    const char *row, *says; /* NULL: nothing */
} counts[] = {
    {"points 36 in 12", NULL},          {"points 37 in 12", "season.points"},
    {"points 4 in 1", "season.points"}, {"points 3 in 1", NULL},
    {"points 49 in 12", "text.row"},    {"points 5 in 1", "text.row"},
};

START_TEST(points_are_those_of_trips)
{
    season_of(
        str_format(&arena, BOOK "charted 2026-10-01 game\n  \"Lantern\" %s\n", counts[_i].row).at);
    const char *said = complaints();
    ck_assert_msg(counts[_i].says ? strstr(said, counts[_i].says) == said : *said == '\0', "%s: %s",
                  counts[_i].row, said);
}
END_TEST

static const struct {
    const char *days[4];
    size_t told; /* notes */
} far_days[] = {
    {{"2026-10-01", "2026-12-01", "2027-03-01"}, 0},
    {{"2025-10-01", "2026-10-02", "2026-12-01"}, 0}, /* 366 days */
    {{"2025-10-01", "2026-10-03", "2026-12-01"}, 1},
    {{"2026-10-01", "2062-12-01"}, 1},
    {{"2019-02-28", "2020-02-29"}, 0},
    {{"2026-12-01", "2028-12-01", "2016-12-01"}, 2},
};

START_TEST(a_day_far_from_all_others_is_told)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, BOOK);
    for (size_t i = 0; i < 4 && far_days[_i].days[i]; i++) {
        strbuf_print(&text, "charted %s game\n  \"Lantern\" set %zu of 9\n", far_days[_i].days[i],
                     i + 1);
    }
    season_of(strbuf_str(&text).at);
    size_t told = 0;
    for (size_t i = 0; i < diags.all.count; i++) {
        told += str_is(str_of(diags.all.at[i].row->id), "season.day");
    }
    ck_assert_uint_eq(told, far_days[_i].told);
    const struct diag *last = diags.all.count > 0 ? &diags.all.at[diags.all.count - 1] : NULL;
    if (_i == 3) { /* of two the later one */
        ck_assert(last && strstr(last->message.at, "and 2026-10-01"));
    }
}
END_TEST

#define FIVE                                                                                       \
    "team \"Kites\"\n  1 \"A Roe\", jersey 4\n  2 \"B Roe\", jersey 5\n  3 \"C Roe\"\n"            \
    "  4 \"D Roe\"\n"
#define FIFTH "  5 \"E Roe\"\n"

static const struct {
    const char *team, *says; /* NULL: nothing */
} teams[] = {
    {FIVE FIFTH, NULL},
    {FIVE, "play.lineup-hole"},
    {"team \"Kites\"\n  1 \"A Roe\"\n  2 \"B Roe\"\n", NULL}, /* hardly begun */
    {FIVE FIFTH "  lineup \"Big\" 1 \"B Roe\", 2 \"A Roe\"\n", NULL},
    {FIVE FIFTH "  lineup \"Big\" 1 \"B Roe\" and 2 \"A Roe\"\n", NULL},
    {FIVE FIFTH "  lineup \"Big\" 1 \"B Roe\" 2 \"A Roe\"\n", NULL},
    {FIVE FIFTH "  lineup \"Big\" 1 \"#5\", 2 \"A Roe\"\n", "play.not-on-roster"},
    {FIVE FIFTH "  lineup \"Big\" 1 \"B Roe\"\n", "play.lineup-hole"},
    {FIVE FIFTH "  2 \"F Roe\"\n  lineup \"Big\" 1 \"B Roe\"\n", NULL}, /* F is at 2 then */
    {FIVE FIFTH "  lineup \"Big\" 1 \"B Roe\", 2 \"B Roe\"\n", "play.lineup-twice"},
    {FIVE "  5 \"A Roe\", jersey 9\n  lineup \"Big\" 1 \"A Roe\", 5 \"A Roe\"\n", NULL},
    {FIVE FIFTH "  lineup \"Big\" 1 \"B Roe\", 1 \"A Roe\"\n", "play.lineup-twice"},
    {FIVE FIFTH "  lineup \"Big\" 1 \"A Roe\"\n  lineup \"big\" 2 \"B Roe\"\n",
     "play.lineup-twice"},
    {FIVE FIFTH "  1 \"A Roe\", jersey 4\n", "play.roster-twice"},
    {FIVE FIFTH "  1 \"A Roe\"\n", "play.roster-twice"},
    {FIVE FIFTH "  1 \"A Roe\", jersey 6\n", NULL}, /* two of one name */
    {FIVE FIFTH "  2 \"A Roe\", jersey 4\n", NULL}, /* one with two spots */
    {FIVE FIFTH "  1 \"F Roe\", jersey 4\n", "season.jersey"},
    {FIVE FIFTH "team \"More\"\n  1 \"F Roe\", jersey 4\n", "season.jersey"},
    {"team \"More\"\n  lineup \"Big\" 1 \"A Roe\"\n" FIVE FIFTH, NULL}, /* named further down */
};

START_TEST(holes_and_doubles_of_a_team_are_said)
{
    static const char *const ids[] = {"play.lineup-hole", "play.lineup-twice", "play.roster-twice",
                                      "season.jersey", "play.not-on-roster"};
    season_of(str_format(&arena, "%s%s", teams[_i].team,
                         "play \"Weir\"\n  start five-out\n"
                         "  1 passes to 2\n")
                  .at);
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) {
        bool wanted = teams[_i].says && strcmp(teams[_i].says, ids[i]) == 0;
        ck_assert_msg(has(ids[i]) == wanted, "%s: %s", teams[_i].team, ids[i]);
    }
}
END_TEST

/* Where a line of it is wrong, that is said; of another practice it says nothing. */
START_TEST(an_empty_practice_is_told_beside_one_with_an_error)
{
    season_of(BOOK "practice \"Empty\"\n  lasts 60 min\npractice \"Bad\"\n  0 min \"Ladder\"\n");
    const char *told = complaints(), *first = strstr(told, "season.empty");
    ck_assert_ptr_nonnull(first);
    ck_assert_ptr_null(strstr(first + 1, "season.empty"));
    ck_assert_ptr_nonnull(strstr(told, "text.plan"));
}
END_TEST

START_TEST(what_could_not_be_told_apart_is_said)
{
    season_of(BOOK "play \"Weir\"\n  start five-out\n  step\n    1 passes to 2\n"
                   "    chart set \"Feet still\"\n  step\n    2 passes to 1\n"
                   "    chart set \"Feet still\"\n    chart set \"Hip low\"\n"
                   "practice \"P\"\n  5 min \"Weir\"\npractice \"p\"\n");
    ck_assert_str_eq(
        complaints(),
        "season.empty: nothing is done in this practice; add what is, with its "
        "minutes: 10 min warm-up\n"
        "season.chart: `set` is the word for two things in this play; another word for "
        "one of them: chart set2 \"Second screen set\"\n"
        "season.twice: there are two practices \"p\"; give one of them another "
        "title\n");
    ck_assert(has("season.text"));
}
END_TEST

START_TEST(what_is_charted_twice_or_by_nobody_is_said)
{
    season_of(BOOK "charted 2026-12-01 game \"Away\"\n  \"Lantern\" set 1 of 2\n"
                   "  \"Lantern\" set 1 of 2 by 3\n  \"Lantern\" set 2 of 2\n"
                   "charted 2026-12-01 game \"Home\"\n  \"Lantern\" set 1 of 2\n");
    ck_assert_str_eq(complaints(), "");
    ck_assert(!has("season.row-twice"));
    season_of(BOOK "charted 2026-12-01 game\n  \"Lantern\" set 1 of 2\n"
                   "  \"lantern\" set 1 of 2\n");
    ck_assert(has("season.row-twice"));
    season_of(BOOK "charted 2026-12-01 game \"Away\"\n  \"Lantern\" set 1 of 2 by 3\n"
                   "charted 2026-12-01 game \"away\"\n  \"Lantern\" set 1 of 2 by 3\n");
    ck_assert(has("season.row-twice"));
    static const char play[] = "play \"Weir\"\n  start five-out\n  step\n    1 passes to 2\n"
                               "    chart set \"Feet still\"\n";
    static const char row[] = "charted 2026-12-01 game\n  \"Weir\" set 1 of 2 by \"Ada Fenn\"\n";
    season_of(str_format(&arena, "%s%s", play, row).at);
    ck_assert(has("season.no-roster"));
    season_of(str_format(&arena, "team \"Kites\"\n  1 \"Ada Fenn\"\n%s%s", play, row).at);
    ck_assert(!has("season.no-roster"));
}
END_TEST

START_TEST(players_rows_are_parts_of_the_teams_row)
{
    static const char rows[] = BOOK "charted 2026-12-01 game\n  \"Lantern\" set 6 of 8\n"
                                    "  \"Lantern\" set 4 of 5 by 3\n";
    season_of(rows);
    ck_assert_str_eq(complaints(), "");
    season_of(str_format(&arena, "%s  \"Lantern\" set 2 of 4 by 2\n", rows).at);
    ck_assert(has("season.over"));
    season_of(
        str_format(&arena, "%scharted 2026-12-02 game\n  \"Lantern\" set 2 of 4 by 2\n", rows).at);
    ck_assert(!has("season.over"));
}
END_TEST

START_TEST(one_number_is_worn_by_one_player)
{
    season_of("team \"Kites\"\n  1 \"Imo Vale\" guard, jersey 4\n"
              "  2 \"Ada Fenn\" wing, jersey 4\n" BOOK);
    ck_assert(has("season.jersey"));
    season_of("team \"Kites\"\n  1 \"Imo Vale\", jersey 0\n  2 \"Ada Fenn\", jersey 00\n"
              "  3 \"Imo Vale\", jersey 0\n  4 \"Juno Marsh\"\n  5 \"Wren Roe\"\n" BOOK);
    ck_assert(!has("season.jersey"));
    season_of("team \"Kites\"\n  1 \"Imo Vale\", jersey 999999999999\n" BOOK);
    ck_assert(has("text.roster"));
    season_of(BOOK "charted 9999-12-01 game\n  \"Lantern\" set 1 of 2\n");
    ck_assert(has("text.heading"));
}
END_TEST

START_TEST(what_was_charted_stands_by_date)
{
    const struct season *season =
        season_of(BOOK "charted 2026-12-08 game \"Away\"\n  \"lantern\" read \"curl\" 3 of 4\n"
                       "charted 2026-12-01 practice\n  \"Lantern\" points 14 in 12\n"
                       "charted 2026-12-08 film \"Home\"\n");
    ck_assert_str_eq(complaints(), "");
    ck_assert_uint_eq(season->charted.count, 3);
    ck_assert(str_is(season->charted.at[0].date, "2026-12-01"));
    ck_assert(season->charted.at[0].occasion == OCCASION_PRACTICE);
    ck_assert(str_is(season->charted.at[1].where, "Away"));
    ck_assert(str_is(season->charted.at[2].where, "Home"));
    ck_assert_int_eq(season->charted.at[0].rows.at[0].made, 14);
    ck_assert(str_is(season->charted.at[1].rows.at[0].play->name, "Lantern"));
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("season");
    TCase *tcase = tcase_create("practices and charts");
    tcase_add_checked_fixture(tcase, open_arena, close_arena);
    tcase_add_test(tcase, a_plan_runs_against_the_clock);
    tcase_add_test(tcase, contact_is_where_somebody_defends_unless_it_is_said);
    tcase_add_test(tcase, without_contact_a_screen_still_stands_on_a_defender);
    tcase_add_test(tcase, a_plan_shows_the_step_that_is_read_else_the_one_with_most_screens);
    tcase_add_test(tcase, stations_hold_their_time);
    tcase_add_test(tcase, what_a_practice_adds_up_to_is_held_to_what_is_booked);
    tcase_add_test(tcase, a_stretch_of_contact_is_told_whole);
    tcase_add_test(tcase, times_that_cannot_be_are_said);
    tcase_add_test(tcase, names_that_are_not_in_the_book_are_said_with_the_nearest);
    tcase_add_test(tcase, a_name_of_two_players_does_not_say_who_it_was);
    tcase_add_test(tcase, a_player_is_told_by_what_nobody_else_has);
    tcase_add_test(tcase, a_spot_is_no_jersey);
    tcase_add_loop_test(tcase, points_are_those_of_trips, 0, (int)(sizeof counts / sizeof *counts));
    tcase_add_loop_test(tcase, a_day_far_from_all_others_is_told, 0,
                        (int)(sizeof far_days / sizeof *far_days));
    tcase_add_loop_test(tcase, holes_and_doubles_of_a_team_are_said, 0,
                        (int)(sizeof teams / sizeof *teams));
    tcase_add_test(tcase, an_empty_practice_is_told_beside_one_with_an_error);
    tcase_add_test(tcase, what_could_not_be_told_apart_is_said);
    tcase_add_test(tcase, what_is_charted_twice_or_by_nobody_is_said);
    tcase_add_test(tcase, players_rows_are_parts_of_the_teams_row);
    tcase_add_test(tcase, one_number_is_worn_by_one_player);
    tcase_add_test(tcase, what_was_charted_stands_by_date);
    suite_add_tcase(suite, tcase);
    return suite_main(suite);
}
