/* SPDX-License-Identifier: MIT */
/* Books: where each line belongs, what each complaint says and where, includes, limits. */
#include "base/limits.h"
#include "language/words/words.h"
#include "suite.h"

#include <string.h>
#include <time.h>

static struct sources sources;
static struct diags diags;
static struct book *book;

static void read_with(struct str text, const struct loader *loader)
{
    sources_init(&sources, &arena);
    diags_init(&diags, &arena);
    uint32_t source = sources_add(&sources, STR("main.play"), text);
    book = book_read(&arena, &sources, source, loader, &diags);
}

static void read_text(const char *text)
{
    read_with(str_of(text), NULL);
}

static void all_have_help(void)
{
    for (size_t i = 0; i < diags.all.count; i++) {
        ck_assert_msg(diags.all.at[i].help.size > 0, "%s", diags.all.at[i].row->id);
    }
}

/* "3:5 text.title" a complaint, in the order of the text. */
static const char *complaints(void)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    diags_sort(&diags);
    for (size_t i = 0; i < diags.all.count; i++) {
        const struct diag *diag = &diags.all.at[i];
        struct place_in_source place =
            source_place(&sources.all.at[diag->span.source], diag->span.begin);
        strbuf_print(&out, "%s%u:%u %s", i ? ", " : "", (unsigned)place.line,
                     (unsigned)place.column, diag->row->id);
    }
    return out.at;
}

static const char *const form_names[] = {
    [FORM_BLANK] = "",          [FORM_COMMENT] = "#",     [FORM_BROKEN] = "broken",
    [FORM_VERSION] = "version", [FORM_SETTING] = "set",   [FORM_STANDING] = "guards",
    [FORM_SENTENCE] = "s",      [FORM_POINT] = "point",   [FORM_MISTAKE] = "mistake",
    [FORM_CHART] = "chart",     [FORM_ACCEPT] = "accept", [FORM_RUN] = "run",
    [FORM_REPEAT] = "repeat",   [FORM_SAME] = "same",     [FORM_CONTINUE] = "continue",
    [FORM_ROSTER] = "roster",   [FORM_LINEUP] = "lineup", [FORM_INCLUDE] = "include",
    [FORM_CHAPTER] = "chapter", [FORM_BLOCK] = "block",   [FORM_PLAN] = "plan",
    [FORM_ROW] = "row",
};
static const char *const block_names[] = {
    [BLOCK_FILE] = "file",         [BLOCK_PLAYBOOK] = "playbook", [BLOCK_TEAM] = "team",
    [BLOCK_ACTION] = "action",     [BLOCK_PLAY] = "play",         [BLOCK_DRILL] = "drill",
    [BLOCK_STEP] = "step",         [BLOCK_READ] = "read",         [BLOCK_OPTION] = "option",
    [BLOCK_PRACTICE] = "practice", [BLOCK_CHARTED] = "charted",
};

/* play(set step(s read(s))); blank lines and comments are left out. */
static void put_block(struct strbuf *out, const struct block *block)
{
    const char *gap = "";
    for (size_t i = 0; i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_BLANK || form->kind == FORM_COMMENT) {
            continue;
        }
        bool opens = form->block != NULL;
        strbuf_print(out, "%s%s", gap,
                     opens ? block_names[form->block->kind] : form_names[form->kind]);
        gap = " ";
        if (opens) {
            strbuf_text(out, form->block->broken ? "!" : "");
            strbuf_char(out, '(');
            put_block(out, form->block);
            strbuf_char(out, ')');
        }
    }
}

static const char *shape(void)
{
    struct strbuf out;
    strbuf_init(&out, &arena);
    put_block(&out, book->file);
    return out.at;
}

struct book_case {
    const char *text, *shape, *complaints;
};
static const struct book_case book_cases[] = {
    /* files without headings */
    {"1 passes to 2\n", "play(s)", ""},
    {"start horns\n", "play(set)", ""},
    {"step \"A\"\n1 passes to 2\nstep \"B\"\n", "play(step(s) step())", ""},
    {"rules fiba\n", "set play()", ""},
    {"courtwright 1\nrules fiba\n1 passes to 2\nunits metres\n", "version set play(s broken)",
     "4:1 text.setting-late"},
    {"start horns\nunits metres\n1 passes to 2\n", "play(set set s)", ""},
    {"units metres\nplay \"A\"\n", "set play()", ""},
    {"start horns\nplay \"A\"\n", "play(set) play()", ""},
    {"call \"A\"\nplay \"A\"\n", "broken play()", "1:1 text.setting-place"},
    {"", "", "1:1 text.empty"},
    {"\n  # only words\n", "", "1:1 text.empty"},
    {"\xEF\xBB\xBF", "", "1:1 text.empty"},
    /* headings */
    {"playbook \"B\"\n rules fiba\nteam \"T\"\n1 \"W\" guard\nchapter \"C\"\nplay \"A\"\n",
     "playbook(set) team(roster) chapter play()", ""},
    {"play Down 2 (left)!\n", "play()", ""},
    {"PLAY Lantern.\n", "play()", ""},
    {"play\n", "play!()", "1:5 text.heading"},
    {"play \"\"\n", "play!()", "1:6 text.title"},
    {"play \"A\" \"B\"\n", "play!()", "1:10 text.left-over"},
    {"play A mirrors B\n", "play!()", "1:8 text.title"},
    {"play A \"B\"\n", "play!()", "1:8 text.title"},
    {"play \"A\" mirrors \"B\"\ncall \"C\"\n", "play(set)", ""},
    {"play \"A\" mirrors\n1 shoots\n", "play!(s)", "1:17 text.heading"},
    {"play \"A\" mirrors \"B\"\nstep \"C\"\n1 shoots\n", "play(broken broken)",
     "2:1 text.heading-place"},
    {"play \"A\" mirrors \"B\"\n1 shoots\n2 shoots\n", "play(broken broken)",
     "2:1 text.note-place"},
    {"play \"A\nstep \"B\"\n1 shoots\n", "play!(step(s))", "1:6 text.unclosed-quote"},
    {"playbook \"A\"\nplaybook \"B\"\nrules fiba\n", "playbook() playbook!(set)",
     "2:1 text.playbook-twice"},
    {"play \"A\"\nstep After that\n", "play(step!())", "2:12 text.clause-half"},
    {"play \"A\"\nstep Look when open\n", "play(step!())", "2:11 text.title"},
    {"play \"A\"\nstep 1 Swing it\nstep 2\nstep 2. Again\n", "play(step() step() step!())",
     "4:6 text.step-number"},
    {"play \"A\"\nstep two\n", "play(step!())", "2:6 text.step-number"},
    {"play \"A\"\nstep \"B\" as 5 screens\nstep after \"Fade\"\nstep \"C\" when 3 is open\n",
     "play(step() step() step())", ""},
    {"team \"T\"\nstep \"A\"\n1 shoots\n2 shoots\n", "team(broken broken broken)",
     "2:1 text.heading-place"},
    {"chapter \"C\"\n1 shoots\n2 shoots\nplay \"A\"\n1 shoots\n", "chapter broken broken play(s)",
     "2:1 text.outside-play"},
    {"playbook \"K\"\ncrest \"k.svg\"\nplay \"A\"\n1 shoots\n", "playbook(broken) play(s)",
     "2:1 text.outside-play"},
    {"chapter\nplay \"A\"\n", "broken play()", "1:8 text.heading"},
    {"action \"A\" for passer, receiver\npasser passes to receiver\n", "action(s)", ""},
    {"action \"A\" for passer and receiver\n", "action()", ""},
    {"action \"A\" for wing\naction \"B\" for passer, passer\naction \"C\"\naction D for x\n",
     "action!() action!() action!() action!()",
     "1:16 text.role, 2:24 text.role, 3:11 text.heading, 4:8 text.heading"},
    {"action \"A\" for guard, cutter\nlevel u16\n", "action!(broken)",
     "1:16 text.role, 2:1 text.setting-place"},
    {"practice \"P\"\n  starts 17:30\n  1 passes to 2,\nplay \"A\"\n",
     "practice(plan broken) play()", "3:16 text.stray-comma"},
    {"practice\n", "practice!()", "1:9 text.heading"},
    {"practice \"P\"\nstarts 17:30\nstarts 18:00\nends 5:30\n", "practice(plan broken plan)",
     "3:1 text.setting-twice, 4:6 text.plan-early"},
    {"practice \"P\"\nwater, 3 min\n3 min water\nplay \"A\" 12 minutes, contact\n"
     "12 min: drill \"D\" groups of 4, with \"guards\"\n5 min - \"Free throws\".\n",
     "practice(plan plan plan plan plan)", ""},
    {"practice \"P\"\nstations 8 min, change every 4 min\nstation \"A\" \"Shooting\"\n"
     "station \"B\", drill \"D\" with \"guards\"\n",
     "practice(plan plan plan)", ""},
    {"practice \"P\"\nstation \"A\" \"Shooting\"\nstations 8 min\nstations 8 min, change 4\n",
     "practice(broken broken broken)", "2:1 text.plan, 3:15 text.plan, 4:17 text.plan"},
    {"practice \"P\"\n10 min\n10 min scrimmage\n10 drill \"D\"\n0 min water\n601 min water\n"
     "5 min drill\n5 min water, loudly\n5 min water, contact, contact\n5 min water, groups of 0\n"
     "5 min play \"A\", against them\n5 min water, with us\nstarts at noon\nlasts long\n",
     "practice(broken plan broken broken broken broken broken broken broken broken broken broken "
     "broken)",
     "2:7 text.plan, 3:8 text.read-as, 4:1 text.plan, 5:1 text.plan, 6:1 text.plan, 7:12 "
     "text.plan, "
     "8:14 text.plan, 9:23 text.plan, 10:24 text.plan, 11:25 text.plan, 12:19 text.plan, "
     "13:11 text.plan, 14:7 text.plan"},
    {"practice \"P\"\n3 min water, contact\n3 min water, against man\n3 min water, no contact\n"
     "starts -17:30\n5 min \"\"\n5 min talk, with \"\"\n",
     "practice(broken broken plan broken broken broken)",
     "2:1 text.plan, 3:1 text.plan, 5:8 text.plan, 6:7 text.plan, 7:18 text.plan"},
    {"practice \"P\"\n10 min \"A\", five on five\n8 min \"B\" 3 on 3\n"
     "5 min \"C\", 5 on 5, contact\n",
     "practice(plan plan broken)",
     "2:13 text.read-as, 3:11 text.read-as, 4:12 text.read-as, 4:20 text.plan"},
    {"practice \"P\"\n10 min \"Scrimmage 5 on 5\"\n10 min \"Shell drill 4-on-4\"\n"
     "10 min \"Scrimmage\", no contact\n5 min \"Shooting 1 on 0, delivered live balls\"\n"
     "5 min \"Olive oil\"\n5 min \"Shell, no contact\"\n",
     "practice(plan plan plan plan plan plan)",
     "2:8 text.read-as, 3:8 text.read-as, 5:7 text.read-as"},
    {"practice \"P\"\n10 min scrimmage 4 on 4 full contact\n10 min shell, no contact\n"
     "5 min stretching\n3 min drinks break\n8 min shooting 1 on 0\n3 stations of 4 min\n"
     "8 min break the press\n",
     "practice(plan plan plan plan plan broken plan)",
     "2:8 text.read-as, 4:1 text.read-as, 5:1 text.read-as, 7:1 text.plan"},
    {"practice \"P\"\nstep \"A\"\n1 shoots\n", "practice(broken broken)", "2:1 text.heading-place"},
    {"charted 2026-12-01 film \"X\"\n  \"A\" set 7 of 12\n\"A\" read \"Fade\" 3 out of 4 by 2\n"
     "\"A\": points 14 in 12, by \"Wren\"\n",
     "charted(row row row)", ""},
    {"charted\ncharted 2026-02-29 game\ncharted 2028-02-29 game\ncharted 2026-12-01\n",
     "charted!() charted!() charted() charted!()",
     "1:8 text.heading, 2:9 text.heading, 4:19 text.heading"},
    {"charted 2026-12-01 game\nA set 1 of 2\n\"A\"\n\"A\" set\n\"A\" set 3 of 2\n\"A\" set 0 of 0\n"
     "\"A\" points 9 in 2\n\"A\" read Fade 1 of 2\n\"A\" set 1 of 2 by 6\n\"A\" set 1 of 2 by\n"
     "\"A\" set 1 of 2 today\n",
     "charted(broken broken broken broken broken broken broken broken broken broken)",
     "2:3 text.row, 3:4 text.row, 4:8 text.row, 5:9 text.row, 6:14 text.row, 7:12 text.row, "
     "8:10 text.row, 9:19 text.player-range, 10:18 text.row, 11:16 text.left-over"},
    /* settings */
    {"play \"A\"\nlevel u16\nlevel u18\n", "play(set broken)", "3:1 text.setting-twice"},
    {"play \"A\"\nlimit space.close 10 ft\nlimit space.far 20 ft\nlimit space.close 9 ft\n",
     "play(set set broken)", "4:1 text.setting-twice"},
    {"play \"A\"\ncaution \"a\"\ncaution \"b\"\n", "play(set set)", ""},
    {"play \"A\"\nunits metres\ngoal \"8\"\n", "play(broken broken)",
     "2:1 text.setting-place, 3:1 text.setting-place"},
    {"drill \"A\"\nstart five-out, cone at left elbow\n1 dribbles to the cone\n", "drill(set s)",
     ""},
    {"drill \"A\"\nstart five-out, cone at left elbow, cone at top\n1 dribbles to the cone\n",
     "drill(set broken)", "3:23 text.place-half"},
    {"play \"A\"\nstep\n1 shoots\nread x3 trails, continue here\n3 cuts to the rim\n",
     "play(step(s read!(s)))", "4:17 text.left-over"},
    {"play \"A\"\nstep\n1 shoots\non a trap by x9, 3 cuts to the rim\n", "play(step(s read(s)))",
     "4:14 text.player-range"},
    {"play \"A\"\nstep\n1 takes two dribbles toward the left wing\n", "play(step(s))",
     "3:33 text.length-taken"},
    {"drill \"A\"\ngoal 8 of 10\nstart 12 top, coach left wing\n", "drill(set set)", ""},
    {"play \"A\"\nstep\nlevel u16\n1 shoots\n", "play(step(broken s))", "3:1 text.setting-late"},
    {"play \"A\"\n1 shoots\nball 2\n", "play(s broken)", "3:1 text.setting-late"},
    {"play \"A\"\nlvel u16\n1 shoots\n", "play(broken s)", "2:1 text.unknown-line"},
    {"playbok \"A\"\nplay \"B\"\n", "broken play()", "1:1 text.unknown-line"},
    {"play \"A\"\nrules high school\nlevel college men\ndefence zone two three\nclock 6s\n",
     "play(set set set set)", ""},
    {"play \"A\"\nlevel u16 women\nrules fibaa\nclock 6\nnumber 1000\n",
     "play(broken broken broken broken)",
     "2:11 text.setting, 3:7 text.setting, 4:7 text.setting, 5:8 text.setting"},
    {"play \"A\"\ndefense man gap deny\n", "play(broken)", "2:17 text.setting"},
    {"play \"A\"\nstart 1 top, 1 nail\n", "play(broken)", "2:14 text.setting"},
    {"play \"A\"\nstart 1 top, 6 nail\n", "play(broken)", "2:14 text.player-range"},
    {"play \"A\"\nstart 1 top, cone at nail\n", "play(broken)", "2:14 text.drill-only"},
    {"play \"A\"\nball 2 out of bounds at left hash\n", "play(set)", ""},
    {"play \"A\"\nball 2 at left hash\n", "play(broken)", "2:8 text.setting"},
    {"play \"A\"\nabout The \"A\" thing\n", "play(broken)", "2:11 text.title"},
    {"play \"A\"\nx1 guards 3 and x3 guards 1\nx2 guards x3\n", "play(guards guards broken)",
     "3:11 text.object-unfit"},
    {"play \"A\"\n1 shoots\nx1 guards 3\n", "play(s s)", ""},
    /* notes */
    {"play \"A\"\npoint \"a\"\nmistake \"b\"\naccept space.close \"c\"\nstep\nchart set \"d\"\n",
     "play(point mistake accept step(chart))", ""},
    {"play \"A\"\nchart set \"d\"\n1 shoots\nstart horns\nstep\n", "play(broken broken set step())",
     "2:1 text.note-place"},
    {"1 shoots\nstep \"A\"\n", "play(broken step())", "1:1 text.note-place"},
    {"point 3 \"a\"\npoint 6 \"a\"\npoint Stop\npoint \"a\" \"b\"\n",
     "play(point broken broken broken)",
     "2:7 text.player-range, 3:7 text.note, 4:11 text.left-over"},
    {"chart read \"a\"\nchart \"a\"\naccept space \"a\"\ncontinue there\n",
     "play(broken broken broken broken)",
     "1:7 text.note, 2:7 text.note, 3:8 text.note, 4:10 text.note"},
    {"run \"g\" with passer 1, receiver 2, mirrored\nrun \"g\"\nrun \"g\" with 1\n",
     "play(run run broken)", "3:14 text.note"},
    {"repeat from step 1, mirrored\nrepeat step 1\nsame as step 1 of \"A\"\nsame as step of "
     "\"A\"\n",
     "play(repeat broken same broken)", "2:8 text.note, 4:14 text.note"},
    {"continue here\n", "play(continue)", ""},
    /* lines that go on and part */
    {"1 passes to 2. 3 cuts to the rim; 4 stays.\n", "play(s s s)", ""},
    {"1 passes to 2 and cuts to the rim\n", "play(s s)", ""},
    {"1 passes to 2. point \"a\". 2 shoots\n", "play(s point s)", ""},
    {"when 2 catches,\n\n# why\n3 cuts to the rim\n", "play(s s)", "1:6 text.verb-taken"},
    {"1 passes to 2,\npoint \"a\"\n", "play(broken point)", "1:14 text.stray-comma"},
    {"1 passes to 2,\n\n", "play(broken)", "1:14 text.stray-comma"},
    {"play \"A\",\n1 shoots\n", "play!(s)", "1:9 text.stray-comma"},
    {"start 1 top,\nball 1\n", "play(broken set)", "1:12 text.stray-comma"},
    {"1 shoots...\n;\n", "play(s)", ""},
    {"3 cuts to the rmi and 4 stays. 2 shoots\n", "play(broken s)", "1:15 text.place-unknown"},
    {"1 cuts - to the rim\n", "play(broken)", "1:8 text.stray-mark"},
    {"ball side wing fills top\n1 shoots\n", "play(broken s)", "1:6 text.setting"},
    {"1 shoots\nball side wing fills top\n", "play(s s)", ""},
    /* branches */
    {"play \"A\"\nstep\n1 passes to 2\nread x3 trails \"Curl\"\n2 shoots\noption \"B\"\n1 "
     "stays\nstep\n",
     "play(step(s read(s) option(s)) step())", ""},
    {"read x3 trails or x3 goes under\n 1 shoots\nread otherwise\n", "play(read(s) read())", ""},
    {"read x3 tralis\n1 shoots\nread\n", "play(read!(s) read!())", "1:9 text.read, 3:5 text.read"},
    {"option\n1 shoots\n", "play(option!(s))", "1:7 text.heading"},
    {"if x3 trails, 3 curls off 5\nif x3 goes under, 3 fades off 5 and shoots\n 1 stays\n",
     "play(read(s) read(s s s))", ""},
    {"if x3 trails, 3 curls off 5\n1 shoots\n2 stays\n", "play(read(s) broken broken)",
     "2:1 text.if"},
    {"if x3 trails: 3 curls off 5\nif x3 trails and 3 curls\n", "play(broken broken)",
     "1:13 text.stray-mark, 2:14 text.if"},
    {"play \"A\"\nread x3 trails\nstep\n", "play(broken step())", "2:1 text.heading-place"},
    {"read x3 trails\n    1 shoots\n  2 stays\n    3 stays\n", "play(read(s s s))",
     "3:3 text.read-indent"},
    {"read x3 trails\n  1 shoots\n  read x1 helps\n    2 stays\nread x2 helps\n  2 shoots\n",
     "play(read(s broken s) read(s))", "3:3 text.heading-place"},
    {"read x3 trails\n  if x1 helps, 2 shoots\n  2 stays\n", "play(read(broken s))",
     "2:3 text.heading-place"},
    {"  read x3 trails\n  1 shoots\n  read x1 helps\n  2 stays\n", "play(read(s) read(s))", ""},
    /* team */
    {"team \"T\"\n1 \"W\" point guard, jersey 00\n2 \"J\" jersey 4\nlineup \"Big\" 1 \"W\", 2 "
     "\"J\"\n",
     "team(roster roster lineup)", ""},
    {"team \"T\"\n6 \"W\"\nWren\n1 Wren\nlineup Big\n1 \"W\" guard 4\n",
     "team(broken broken broken broken broken)",
     "2:1 text.player-range, 3:1 text.roster, 4:3 text.roster, 5:8 text.roster, 6:13 "
     "text.left-over"},
    {"team \"T\"\n1 \"\"\n2 \"  \" guard\nlineup \"\" 1 \"W\"\nlineup \"B\" 1 \"\"\n",
     "team(broken broken broken broken)",
     "2:3 text.roster, 3:3 text.roster, 4:8 text.roster, 5:14 text.roster"},
    /* the version line */
    {"courtwright 2\n1 shoots\n", "broken play(s)", "1:13 text.version"},
    {"courtwright\n1 shoots\n", "broken play(s)", "1:12 text.version"},
    {"1 shoots\ncourtwright 1\n", "play(s broken)", "2:1 text.version"},
    {"# a book\ncourtwright 1\n1 shoots\n", "version play(s)", ""},
    /* includes without anybody to fetch them */
    {"include \"a.play\"\ninclude b\n", "include broken", "1:9 file.unreadable, 2:9 text.include"},
};

START_TEST(every_line_finds_its_block_or_is_told)
{
    const struct book_case *row = &book_cases[_i];
    read_text(row->text);
    ck_assert_str_eq(complaints(), row->complaints);
    ck_assert_str_eq(shape(), row->shape);
}
END_TEST

START_TEST(every_complaint_says_what_to_do_or_is_plain)
{
    for (size_t i = 0; i < sizeof book_cases / sizeof book_cases[0]; i++) {
        read_text(book_cases[i].text);
        for (size_t k = 0; k < diags.all.count; k++) {
            ck_assert_uint_gt(diags.all.at[k].message.size, 0);
            ck_assert_uint_gt(strlen(diags.all.at[k].row->explain), 40);
        }
    }
}
END_TEST

START_TEST(titles_and_settings_are_kept)
{
    read_text(
        "play Down 2:  the   left one.\n  tags man, \"late # clock\", After time-out\n  limit "
        "screen.angle 30 degrees\n"
        "  start five-out, 5 at (12, -3)\n  defense press 2-2-1\n  ball two\nstep 1. Swing it\n");
    const struct block *play = book->file->forms.at[0].block;
    ck_assert_str_eq(str_copy(&arena, play->title).at, "Down 2: the left one");
    const struct setting_form *tags = play->forms.at[0].setting;
    ck_assert_uint_eq(tags->tags.count, 3);
    ck_assert(str_is(tags->tags.at[1], "late # clock") &&
              str_is(tags->tags.at[2], "After time-out"));
    ck_assert(play->forms.at[1].setting->measure.unit == UNIT_DEGREES);
    const struct setting_form *start = play->forms.at[2].setting;
    ck_assert_uint_eq(start->placings.count, 2);
    ck_assert_str_eq(formation_at(start->placings.at[0].formation)->word, "five-out");
    ck_assert(start->placings.at[1].place->kind == PLACE_XY);
    ck_assert(play->forms.at[3].setting->defense == DEFENSE_PRESS &&
              str_is(play->forms.at[3].setting->zone, "2-2-1"));
    ck_assert_int_eq(play->forms.at[4].setting->ball.number, 2);
    ck_assert(str_is(play->forms.at[5].block->title, "Swing it"));
}
END_TEST

START_TEST(a_second_setting_shows_the_first)
{
    read_text("play \"A\"\nlevel u16\nlevel u18\n");
    ck_assert_uint_eq(diags.all.count, 1);
    ck_assert_uint_eq(source_place(&sources.all.at[0], diags.all.at[0].other.begin).line, 2);
}
END_TEST

/* Files that a loader knows: name and text, by turns, NULL-ended. */
static enum load_result load_listed(void *ctx, struct arena *in, struct str from, struct str path,
                                    struct str *name, struct str *text)
{
    (void)in;
    (void)from;
    if (str_starts(path, "../")) {
        return LOAD_OUTSIDE;
    }
    if (str_is(path, "large.play")) {
        return LOAD_TOO_LARGE;
    }
    for (const char *const *file = ctx; *file; file += 2) {
        if (str_is(path, file[0])) {
            *name = str_of(file[0]);
            *text = str_of(file[1]);
            return LOAD_OK;
        }
    }
    return LOAD_MISSING;
}

static void read_files(const char *const *files)
{
    struct loader loader = {load_listed, (void *)(uintptr_t)files};
    read_with(str_of(files[1]), &loader);
}

START_TEST(included_files_stand_where_their_line_stands)
{
    static const char *const files[] = {"main.play",
                                        "play \"A\"\n1 shoots\ninclude \"b.play\"\nplay \"C\"\n",
                                        "b.play", "play \"B\"\n2 shoots\n", NULL};
    read_files(files);
    ck_assert_str_eq(complaints(), "");
    ck_assert_str_eq(shape(), "play(s) file(play(s)) play()");
}
END_TEST

START_TEST(a_circle_of_files_is_told)
{
    static const char *const files[] = {"main.play", "include \"b.play\"\ninclude \"b.play\"\n",
                                        "b.play", "include \"main.play\"\nplay \"B\"\n", NULL};
    read_files(files);
    ck_assert_str_eq(complaints(), "2:9 file.cycle, 1:9 file.cycle");
    all_have_help();
    ck_assert_str_eq(shape(), "file(include play()) include");
}
END_TEST

START_TEST(what_cannot_be_included_is_told)
{
    static const char *const files[] = {"main.play",
                                        "include \"none.play\"\ninclude \"../b.play\"\ninclude "
                                        "\"large.play\"\ninclude \"e.play\"\n",
                                        "e.play", "\n", NULL};
    read_files(files);
    ck_assert_str_eq(complaints(),
                     "1:9 file.missing, 2:9 file.outside, 3:9 file.too-large, 1:1 text.empty");
    diags.all.count--; /* that a file is empty */
    all_have_help();
}
END_TEST

START_TEST(an_included_playbook_heading_is_ignored_with_a_note)
{
    static const char *const files[] = {"main.play", "playbook \"A\"\ninclude \"b.play\"\n",
                                        "b.play", "playbook \"B\"\nunits metres\nplay \"C\"\n",
                                        NULL};
    read_files(files);
    ck_assert_str_eq(complaints(), "1:1 text.include-playbook");
    ck_assert_int_eq(diags.all.at[0].severity, SEVERITY_NOTE);
    ck_assert_str_eq(shape(), "playbook() file(play())");
}
END_TEST

static enum load_result load_next(void *ctx, struct arena *in, struct str from, struct str path,
                                  struct str *name, struct str *text)
{
    int *count = ctx;
    (void)from;
    (void)path;
    *name = str_format(in, "file-%d.play", ++*count);
    *text = STR("include \"next.play\"\n");
    return LOAD_OK;
}

START_TEST(files_are_included_so_deep_and_no_deeper)
{
    int count = 0;
    struct loader loader = {load_next, &count};
    read_with(STR("include \"next.play\"\n"), &loader);
    ck_assert_str_eq(complaints(), "1:9 text.include-deep");
    all_have_help();
    ck_assert_int_eq(count, LIMIT_INCLUDE_DEPTH);
}
END_TEST

static enum load_result load_small(void *ctx, struct arena *in, struct str from, struct str path,
                                   struct str *name, struct str *text)
{
    int *count = ctx;
    (void)from;
    (void)path;
    *name = str_format(in, "file-%d.play", ++*count);
    *text = str_format(in, "play \"%d\"\n", *count);
    return LOAD_OK;
}

static struct str repeated(const char *head, const char *piece, size_t count)
{
    struct strbuf text;
    strbuf_init(&text, &arena);
    strbuf_text(&text, head);
    for (size_t i = 0; i < count; i++) {
        strbuf_text(&text, piece);
    }
    return strbuf_str(&text);
}

START_TEST(a_book_has_so_many_files)
{
    int count = 0;
    struct loader loader = {load_small, &count};
    read_with(repeated("", "include \"a.play\"\n", LIMIT_SOURCES - 1), &loader);
    ck_assert_str_eq(complaints(), "");
    count = 0;
    read_with(repeated("", "include \"a.play\"\n", LIMIT_SOURCES), &loader);
    ck_assert_str_eq(complaints(), "64:9 text.too-many");
}
END_TEST

START_TEST(a_file_too_large_to_include_is_told)
{
    char *text = arena_take(&arena, LIMIT_FILE_BYTES + 1);
    memset(text, '\n', LIMIT_FILE_BYTES + 1);
    const char *files[] = {"main.play", "include \"b.play\"\n", "b.play", text, NULL};
    read_files(files);
    ck_assert_str_eq(complaints(), "1:9 file.too-large");
}
END_TEST

struct limit_case {
    const char *head, *piece;
    size_t most;
    const char *complaints;
};
static const struct limit_case limit_cases[] = {
    {"play \"A\"\n", "1 stays\n", LIMIT_SENTENCES, "66:1 text.too-many"},
    {"play \"A\"\n", "step\n", LIMIT_STEPS, "26:1 text.too-many"},
    {"play \"A\"\n", "option \"B\"\n", LIMIT_BRANCHES, "10:1 text.too-many"},
    {"", "play \"A\"\n", LIMIT_PLAYS, "10001:1 text.too-many"},
};

START_TEST(limits_hold_and_are_told_once)
{
    const struct limit_case *row = &limit_cases[_i];
    read_with(repeated(row->head, row->piece, row->most), NULL);
    ck_assert_str_eq(complaints(), "");
    read_with(repeated(row->head, row->piece, row->most + 1), NULL);
    ck_assert_str_eq(complaints(), row->complaints);
}
END_TEST

static double seconds_for(const char *head, const char *piece, size_t count)
{
    struct str text = repeated(head, piece, count);
    clock_t begin = clock();
    read_with(text, NULL);
    return (double)(clock() - begin) / CLOCKS_PER_SEC;
}

START_TEST(time_grows_with_the_lines_and_no_faster)
{
    static const char *const pieces[] = {"3 cuts to the rim\n", "play \"A\"\n  1 passes to 2\n\n",
                                         "# words\n", "1 passes to 2,\n", "zork\n"};
    const char *piece = pieces[_i];
    size_t lines = 0;
    for (const char *at = piece; *at; at++) {
        lines += *at == '\n';
    }
    size_t most = _i == 0 ? 100000 : 30000;
    double few = seconds_for("play \"Z\"\n", piece, most / 10 / lines);
    double many = seconds_for("play \"Z\"\n", piece, most / lines);
    ck_assert_double_lt(many, 30 * few + 2); /* a square would be a hundred times */
}
END_TEST

int main(void)
{
    Suite *suite = suite_create("book");
    TCase *all = tcase_create("book");
    tcase_set_timeout(all, 120);
    tcase_add_checked_fixture(all, open_arena, close_arena);
    tcase_add_loop_test(all, every_line_finds_its_block_or_is_told, 0,
                        (int)(sizeof book_cases / sizeof book_cases[0]));
    tcase_add_test(all, every_complaint_says_what_to_do_or_is_plain);
    tcase_add_test(all, titles_and_settings_are_kept);
    tcase_add_test(all, a_second_setting_shows_the_first);
    tcase_add_test(all, included_files_stand_where_their_line_stands);
    tcase_add_test(all, a_circle_of_files_is_told);
    tcase_add_test(all, what_cannot_be_included_is_told);
    tcase_add_test(all, an_included_playbook_heading_is_ignored_with_a_note);
    tcase_add_test(all, files_are_included_so_deep_and_no_deeper);
    tcase_add_test(all, a_book_has_so_many_files);
    tcase_add_test(all, a_file_too_large_to_include_is_told);
    tcase_add_loop_test(all, limits_hold_and_are_told_once, 0,
                        (int)(sizeof limit_cases / sizeof limit_cases[0]));
    tcase_add_loop_test(all, time_grows_with_the_lines_and_no_faster, 0, 5);
    suite_add_tcase(suite, all);
    return suite_main(suite);
}
