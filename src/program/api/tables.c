/* SPDX-License-Identifier: MIT */
/* tables: the rows of every table of the language, told in words. */
#include <string.h>

#include "base/real.h"
#include "floor/court/court.h"
#include "language/words/vocabulary.h"
#include "language/tidy/tidy.h"
#include "language/words/words.h"
#include "program/api/draw.h"
#include "program/api/list.h"

static enum courtwright_severity severity_told(enum severity severity)
{
    return severity == SEVERITY_ERROR     ? COURTWRIGHT_ERROR
           : severity == SEVERITY_WARNING ? COURTWRIGHT_WARNING
                                          : COURTWRIGHT_NOTE;
}

static void feet(struct strbuf *out, double metres)
{
    strbuf_number(out, metres / FEET, 1);
    strbuf_text(out, " ft");
}

/* What all codes allow; 0: they differ, or none of them says. */
static double by_all_rules(const struct check_row *row)
{
    const struct check_rule *first = check_rule(row, (enum court_code)0);
    double seconds = first ? check_rule_seconds(first) : 0;
    for (int i = 1; first && i < COURT_COUNT; i++) {
        const struct check_rule *other = check_rule(row, (enum court_code)i);
        seconds = other && check_rule_seconds(other) == seconds ? seconds : 0;
    }
    return seconds;
}

/* The row's own, then what each code allows and its article. */
static const char *sources(struct lister *lister, const struct check_row *row)
{
    struct strbuf out;
    strbuf_init(&out, lister->arena);
    strbuf_text(&out, row->source);
    for (int i = 0; i < COURT_COUNT; i++) {
        const struct check_rule *rule = check_rule(row, (enum court_code)i);
        if (rule) {
            double seconds = check_rule_seconds(rule);
            strbuf_text(&out, "; ");
            if (seconds > 0) {
                strbuf_number(&out, seconds, 2);
                strbuf_text(&out, " s: ");
            }
            strbuf_text(&out, rule->source);
        }
    }
    return out.at;
}

static const char *limit_text(struct lister *lister, const struct check_row *row)
{
    struct strbuf out;
    strbuf_init(&out, lister->arena);
    const char *unit = row->unit ? row->unit : "";
    double limit = row->limit > 0 ? row->limit : by_all_rules(row);
    if (limit <= 0) {
        return "";
    }
    if (strcmp(unit, "ft") == 0) {
        feet(&out, limit);
        return out.at;
    }
    bool angle = strcmp(unit, "degrees") == 0, share = strcmp(unit, "%") == 0;
    strbuf_number(&out, angle ? limit * 180 / REAL_PI : share ? limit * 100 : limit, 2);
    strbuf_print(&out, "%s%s", *unit && !share ? " " : "", unit);
    return out.at;
}

static void list_checks(struct lister *lister)
{
    for (size_t i = 0; i < check_count(); i++) {
        const struct check_row *row = check_at(i);
        list_row(lister, &(struct courtwright_entry){.word = row->id,
                                                     .what = row->what,
                                                     .why = row->why,
                                                     .good = row->good,
                                                     .bad = row->bad,
                                                     .source = sources(lister, row),
                                                     .limit = limit_text(lister, row),
                                                     .severity = severity_told(row->severity)});
    }
}

/* The first sentence of an explanation: what a table has room for. */
static const char *first_sentence(struct lister *lister, const char *text)
{
    const char *end = strstr(text, ". ");
    size_t size = end ? (size_t)(end - text) + 1 : strlen(text);
    return arena_copy(lister->arena, text, size);
}

static void list_errors(struct lister *lister)
{
    for (size_t i = 0; i < DIAG_COUNT; i++) {
        const struct diag_row *row = &diag_rows[i];
        struct diag_example example = diag_example((enum diag_code)i);
        list_row(lister, &(struct courtwright_entry){.word = row->id,
                                                     .good = example.good,
                                                     .bad = example.bad,
                                                     .what = first_sentence(lister, row->explain),
                                                     .why = row->explain,
                                                     .severity = severity_told(row->severity)});
    }
}

static const char *drawn_as(const struct verb_row *row)
{
    switch (row->task) {
    case VERB_PASS:
        return "a dashed line with an arrow head";
    case VERB_EXCHANGE:
        return "two short bars across the line between the two";
    case VERB_CARRY:
        return "a zigzag line with an arrow head";
    case VERB_SHOOT:
        return "a thin double line to the ring";
    case VERB_SCREEN:
        return "a solid line ending in a bar";
    case VERB_HOLD:
        return "a player who stays";
    case VERB_GUARD:
        return "a defender's gray line";
    default:
        return strchr(row->needs, 'B') ? "a zigzag line with an arrow head"
                                       : "a solid line with an arrow head";
    }
}

static const char *place_taken(const struct verb_row *row)
{
    static const char *const places[] = {
        [DEFAULT_NONE] = NULL,
        [DEFAULT_RIM] = "to the rim",
        [DEFAULT_OWN_SPOT] = "back to the player's own spot",
        [DEFAULT_EMPTY_PERIMETER] = "to the nearest empty perimeter spot",
        [DEFAULT_AWAY_PERIMETER] = "to the nearest empty perimeter spot away from the ball",
        [DEFAULT_NEAREST_BLOCK] = "at the nearest block",
        [DEFAULT_LANE] = "to the lane",
        [DEFAULT_HALF_COURT] = "to half court",
        [DEFAULT_WHERE_HE_IS] = NULL,
    };
    return places[row->place];
}

static const char *moment_word(enum verb_event event)
{
    static const char *const words[] = {
        [WHEN_STARTED] = "starts",       [WHEN_ARRIVED] = "has arrived",
        [WHEN_SET] = "is set",           [WHEN_USED] = "has been used",
        [WHEN_RELEASED] = "is released", [WHEN_CAUGHT] = "has been caught",
    };
    return words[event];
}

/* "What must be written, where it goes when that is left out, what `as` and `after` wait for." */
static const char *verb_why(struct lister *lister, const struct verb_row *row)
{
    static const struct {
        char letter;
        const char *text;
    } needs[] = {
        {'W', "It names a player. "},
        {'P', "It names a place. "},
        {'T', "It names a time, as in 1 s. "},
        {'B', "The player must have the ball. "},
        {'S', "It follows a screen of the same player. "},
        {'O', "The thrower stands out of bounds. "},
    };
    struct strbuf out;
    strbuf_init(&out, lister->arena);
    for (size_t i = 0; i < sizeof needs / sizeof *needs; i++) {
        strbuf_text(&out, strchr(row->needs, needs[i].letter) ? needs[i].text : "");
    }
    if (place_taken(row)) {
        strbuf_print(&out, "Without a place: %s. ", place_taken(row));
    }
    strbuf_print(&out, "\"as\" waits until it %s, \"after\" until it %s.", moment_word(row->fixed),
                 moment_word(row->last));
    return out.at;
}

/* A sentence with this verb and what it must have, in the tidy form. */
static const char *verb_example(struct lister *lister, const struct verb_row *row, enum verb verb)
{
    static const int subjects[] = {
        [VERB_PASS] = 1,   [VERB_EXCHANGE] = 1, [VERB_CARRY] = 1, [VERB_SHOOT] = 1, [VERB_HOLD] = 1,
        [VERB_SCREEN] = 5, [VERB_USE] = 3,      [VERB_MOVE] = 3,  [VERB_GUARD] = 3};
    bool guards = row->task == VERB_GUARD;
    struct place place = {.kind = PLACE_SPOT, .spot = SPOT_WING, .side = SIDE_LEFT};
    struct who subject = {.kind = guards ? WHO_DEFENDER : WHO_PLAYER,
                          .number = subjects[row->task]};
    struct sentence sentence = {.verb = verb};
    VEC_PUSH(lister->arena, &sentence.subject, subject);
    if (strchr(row->needs, 'W')) {
        int number = row->task == VERB_SCREEN ? 3 : row->task == VERB_USE ? 5 : guards ? 4 : 2;
        sentence.object = (struct who){.kind = WHO_PLAYER, .number = number};
    }
    if (strchr(row->needs, 'P') || strchr(row->slots, 'E')) {
        sentence.place = &place;
    }
    if (strchr(row->needs, 'T')) {
        sentence.duration = (struct measure){1, UNIT_SECONDS};
    }
    struct strbuf out;
    strbuf_init(&out, lister->arena);
    tidy_sentence(&out, &sentence);
    return out.at;
}

/* The word without its last preposition: "passes to" also goes by "passes". */
static const char *without_preposition(struct lister *lister, const char *words)
{
    static const char *const last[] = {" to", " for", " off", " at", " toward", " with"};
    size_t size = strlen(words);
    for (size_t i = 0; i < sizeof last / sizeof *last; i++) {
        size_t tail = strlen(last[i]);
        if (size > tail && strcmp(words + size - tail, last[i]) == 0) {
            return arena_copy(lister->arena, words, size - tail);
        }
    }
    return words;
}

/* Every way to say it in phrases.def, with its preposition and without: NULL at the end. */
static const char *const *verb_names(struct lister *lister, enum verb verb)
{
    const struct verb_row *row = verb_row(verb);
    size_t count = 0;
    const char **names = arena_array(lister->arena, const char *, 2 * phrase_count() + 5);
    names[count++] = row->bare;
    names[count++] = without_preposition(lister, row->words);
    names[count++] = without_preposition(lister, row->bare);
    for (size_t i = 0; i < phrase_count(); i++) {
        struct phrase phrase = phrase_at(i);
        if (phrase.verb == verb) {
            names[count++] = phrase.words;
            names[count++] = phrase.bare;
        }
    }
    names[count] = NULL;
    return names;
}

static const char *spot_where(struct lister *lister, enum spot spot)
{
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    enum side side = spot_row(spot)->sided && !spot_row(spot)->optional ? SIDE_RIGHT : SIDE_NONE;
    struct vec2 p = court_spot(court, spot, side);
    struct strbuf out;
    strbuf_init(&out, lister->arena);
    strbuf_text(&out, side == SIDE_RIGHT ? "left and right: " : "");
    feet(&out, p.x < 0 ? -p.x : p.x);
    strbuf_text(&out, side == SIDE_RIGHT ? " to the side, " : " from the middle, ");
    feet(&out, p.y - court->baseline);
    strbuf_text(&out, " from the baseline (high-school floor)");
    return out.at;
}

static void list_verbs(struct lister *lister)
{
    for (int verb = 0; verb < VERB_COUNT; verb++) {
        const struct verb_row *row = verb_row((enum verb)verb);
        list_row_named(
            lister,
            &(struct courtwright_entry){.word = row->words,
                                        .what = drawn_as(row),
                                        .why = verb_why(lister, row),
                                        .good = verb_example(lister, row, (enum verb)verb)},
            verb_names(lister, (enum verb)verb));
    }
}

/* left wing, right wing, and other words for the spot; NULL at the end. */
static const char *const *spot_names(struct lister *lister, enum spot spot)
{
    size_t count = 0, most = 3;
    for (const struct entry *entry = spot_entries; entry->words; entry++) {
        most++;
    }
    const char **names = arena_array(lister->arena, const char *, most);
    if (spot_row(spot)->sided) {
        names[count++] = str_format(lister->arena, "left %s", spot_row(spot)->word).at;
        names[count++] = str_format(lister->arena, "right %s", spot_row(spot)->word).at;
    }
    for (const struct entry *entry = spot_entries; entry->words; entry++) {
        if (entry->value == (int)spot) {
            names[count++] = entry->words;
        }
    }
    names[count] = NULL;
    return names;
}

static void list_places(struct lister *lister)
{
    for (int spot = 0; spot < SPOT_COUNT; spot++) {
        const struct spot_row *row = spot_row((enum spot)spot);
        list_row_named(lister,
                       &(struct courtwright_entry){.word = row->word,
                                                   .what = spot_where(lister, (enum spot)spot),
                                                   .source = row->source},
                       spot_names(lister, (enum spot)spot));
    }
}

static void formation_place(struct strbuf *out, const struct formation_spot *at)
{
    strbuf_text(out, at->backcourt ? "backcourt " : "");
    strbuf_text(out, at->side == SIDE_LEFT ? "left " : at->side == SIDE_RIGHT ? "right " : "");
    strbuf_text(out, spot_row(at->spot)->word);
    if (at->between != SPOT_COUNT) {
        strbuf_print(out, " (half way to the %s)", spot_row(at->between)->word);
    }
    if (at->above != 0) {
        strbuf_text(out, ", ");
        feet(out, at->above);
        strbuf_text(out, " above");
    }
    strbuf_text(out, at->out_of_bounds ? ", out of bounds" : "");
}

static void list_formations(struct lister *lister)
{
    for (size_t i = 0; i < formation_count(); i++) {
        const struct formation *formation = formation_at(i);
        struct strbuf out;
        strbuf_init(&out, lister->arena);
        for (int player = 0; player < 5; player++) {
            strbuf_print(&out, "%s%d ", player ? "; " : "", player + 1);
            formation_place(&out, &formation->at[player]);
        }
        const char *names[] = {formation->figures, NULL};
        list_row_named(lister, &(struct courtwright_entry){.word = formation->word, .what = out.at},
                       names);
    }
}

/* "x1 -5, 17": feet, as the table has them; or what he does at the ball. */
static void zone_place(struct strbuf *out, int defender, const struct zone_home *home)
{
    strbuf_print(out, "x%d ", defender + 1);
    if (home->point > .5) {
        strbuf_number(out, home->at.x / FEET, 0);
        strbuf_text(out, ", ");
        strbuf_number(out, home->at.y / FEET, 0);
    } else {
        strbuf_text(out, home->ball > .5    ? "on the ball"
                         : home->above > .5 ? "on the ball from above"
                         : home->trap > .5  ? "traps it"
                                            : "on a man");
    }
}

static const char *zone_rows(struct lister *lister, enum zone zone)
{
    static const char *const balls[ANCHOR_COUNT] = {
        [ANCHOR_TOP] = "top",
        [ANCHOR_SLOT] = "right slot",
        [ANCHOR_WING] = "right wing",
        [ANCHOR_CORNER] = "right corner",
        [ANCHOR_HIGH] = "nail",
        [ANCHOR_BLOCK] = "right block",
        [ANCHOR_THROW_IN] = "thrown in from behind the far baseline",
        [ANCHOR_BACK_DEEP] = "in front of the far rim",
        [ANCHOR_BACK_CORNER] = "backcourt right corner",
        [ANCHOR_BACK_TOP] = "backcourt nail",
        [ANCHOR_BACK_WING] = "backcourt right wing",
        [ANCHOR_HALF_MIDDLE] = "half court",
        [ANCHOR_HALF_SIDE] = "half court, right sideline",
    };
    const struct court *court = court_of(COURT_HIGH_SCHOOL);
    struct strbuf out;
    strbuf_init(&out, lister->arena);
    strbuf_text(&out, "Feet right of the rim and up from it, high-school floor; the left is the "
                      "mirror image. ");
    for (int a = 0; a < ANCHOR_COUNT; a++) {
        if ((a < ANCHOR_FRONT_COUNT) == zone_row(zone)->press) {
            continue;
        }
        struct zone_home home[ZONE_DEFENDERS];
        struct vec2 ball = zone_anchor_point(court, (enum zone_anchor)a);
        zone_homes(court, zone, ball, a == ANCHOR_THROW_IN, false, home);
        strbuf_print(&out, "Ball %s: ", balls[a]);
        for (int k = 0; k < ZONE_DEFENDERS; k++) {
            zone_place(&out, k, &home[k]);
            strbuf_text(&out, k + 1 < ZONE_DEFENDERS ? "; " : ". ");
        }
    }
    return out.at;
}

static void list_zones(struct lister *lister)
{
    for (int z = ZONE_NONE + 1; z < ZONE_COUNT; z++) {
        const struct zone_row *row = zone_row((enum zone)z);
        const char *names[] = {row->word, NULL};
        list_row_named(lister,
                       &(struct courtwright_entry){
                           .word = row->setting,
                           .what = row->who,
                           .why = zone_rows(lister, (enum zone)z),
                           .good = str_format(lister->arena, "defense %s", row->setting).at,
                           .source = row->source},
                       names);
    }
}

static const char *setting_where(struct lister *lister, const char *where)
{
    struct strbuf out;
    strbuf_init(&out, lister->arena);
    static const struct {
        char letter;
        const char *text;
    } places[] = {{'F', "at the head of the file or under playbook"},
                  {'P', "in a play"},
                  {'D', "in a drill"}};
    for (size_t i = 0; i < sizeof places / sizeof *places; i++) {
        if (strchr(where, places[i].letter)) {
            strbuf_print(&out, "%s%s", out.size ? ", " : "", places[i].text);
        }
    }
    return out.at;
}

static const char *const setting_examples[SETTING_COUNT] = {
    [SETTING_RULES] = "rules high-school",
    [SETTING_LEVEL] = "level u16 girls",
    [SETTING_UNITS] = "units metres",
    [SETTING_PAPER] = "paper a4",
    [SETTING_BASKET] = "basket bottom",
    [SETTING_LIMIT] = "limit space.close 10 ft",
    [SETTING_CAUTION] = "caution \"No dunking at our rims.\"",
    [SETTING_ABOUT] = "about \"A screen away for the best shooter.\"",
    [SETTING_CALL] = "call \"Fist up\"",
    [SETTING_SERIES] = "series \"Motion\"",
    [SETTING_NUMBER] = "number 4",
    [SETTING_TAGS] = "tags man, late clock",
    [SETTING_FLOOR] = "floor half",
    [SETTING_START] = "start five-out",
    [SETTING_BALL] = "ball 1",
    [SETTING_DEFENSE] = "defense man",
    [SETTING_CLOCK] = "clock 6 s",
    [SETTING_SCORE] = "score \"down 2\"",
    [SETTING_LINEUP] = "lineup \"Big\"",
    [SETTING_GOAL] = "goal \"8 of 10\"",
};

static void list_settings(struct lister *lister)
{
    static const struct {
        const char *word, *where;
    } rows[SETTING_COUNT] = {
#define SETTING(symbol, word, where) [SETTING_##symbol] = {word, where},
#include "language/words/settings.def"
#undef SETTING
    };
    for (size_t i = 0; i < SETTING_COUNT; i++) {
        list_row(lister, &(struct courtwright_entry){.word = rows[i].word,
                                                     .what = setting_where(lister, rows[i].where),
                                                     .good = setting_examples[i]});
    }
}

static void list_courts(struct lister *lister)
{
    for (int code = 0; code < COURT_COUNT; code++) {
        const struct court *court = court_of((enum court_code)code);
        struct strbuf out;
        strbuf_init(&out, lister->arena);
        strbuf_print(&out, "%s: ", court->name);
        feet(&out, court->half_width * 2);
        strbuf_text(&out, " wide, ");
        feet(&out, court->half_court - court->baseline);
        strbuf_text(&out, " to half court");
        if (court->arc > 0) {
            strbuf_text(&out, ", arc ");
            feet(&out, court->arc);
        }
        list_row(lister, &(struct courtwright_entry){
                             .word = court->word, .what = out.at, .source = court->source});
    }
}

static void list_levels(struct lister *lister)
{
    for (int code = 0; code < LEVEL_COUNT; code++) {
        const struct level *level = level_of((enum level_code)code);
        struct strbuf out;
        strbuf_init(&out, lister->arena);
        strbuf_text(&out, "top speed ");
        feet(&out, level->sprint);
        strbuf_text(&out, " a second, chest pass ");
        feet(&out, level->pass);
        strbuf_text(&out, " a second, reacts in ");
        strbuf_number(&out, level->reaction, 2);
        strbuf_text(&out, " s");
        list_row(lister, &(struct courtwright_entry){
                             .word = level->word, .what = out.at, .source = level->source});
    }
}

/* "play|plays" as a list, NULL at the end. */
static const char *const *names_split(struct lister *lister, const char *names)
{
    size_t count = 1;
    for (const char *at = names; *at; at++) {
        count += *at == '|';
    }
    const char **out = arena_array(lister->arena, const char *, count + 1);
    for (size_t i = 0; i < count; i++) {
        size_t size = strcspn(names, "|");
        out[i] = arena_copy(lister->arena, names, size);
        names += size + (names[size] == '|');
    }
    out[count] = NULL;
    return out;
}

static void list_words(struct lister *lister)
{
    static const struct {
        const char *word, *names, *what, *example;
    } rows[] = {
#define WORD(word, names, what, example) {word, names, what, example},
#include "language/words/words.def"
#undef WORD
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        list_row_named(lister,
                       &(struct courtwright_entry){
                           .word = rows[i].word, .what = rows[i].what, .good = rows[i].example},
                       names_split(lister, rows[i].names));
    }
}

static void list_themes(struct lister *lister)
{
    static const char *const what[THEME_COUNT] = {
        [THEME_PRINT] = "black on white, for paper and the copier",
        [THEME_SCREEN] = "a tinted floor, for a bright screen",
        [THEME_DARK] = "light on dark",
    };
    for (int theme = 0; theme < THEME_COUNT; theme++) {
        list_row(lister, &(struct courtwright_entry){.word = theme_row((enum theme)theme)->word,
                                                     .what = what[theme]});
    }
}

void list_table(struct lister *lister)
{
    static void (*const tables[COURTWRIGHT_LIST_COUNT])(struct lister *) = {
        [COURTWRIGHT_CHECKS] = list_checks,         [COURTWRIGHT_ERRORS] = list_errors,
        [COURTWRIGHT_VERBS] = list_verbs,           [COURTWRIGHT_PLACES] = list_places,
        [COURTWRIGHT_FORMATIONS] = list_formations, [COURTWRIGHT_SETTINGS] = list_settings,
        [COURTWRIGHT_COURTS] = list_courts,         [COURTWRIGHT_LEVELS] = list_levels,
        [COURTWRIGHT_SHEETS] = list_sheets,         [COURTWRIGHT_THEMES] = list_themes,
        [COURTWRIGHT_WORDS] = list_words,           [COURTWRIGHT_ZONES] = list_zones,
    };
    tables[lister->list](lister);
}
