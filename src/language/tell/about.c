/* SPDX-License-Identifier: MIT */
/* about: what a page says of a play round its sentences: the series, the level, what a read turns
 * on, the coach's own lines with the players' numbers marked. */
#include "language/tell/teller.h"

#include "base/limits.h"

/* ---- players' numbers ---- */

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Behind a player's number: not "3-on-0", "3.5", "3:00", "3%" nor "3rd". */
static bool ends_number(struct str text, size_t end)
{
    if (end >= text.size) {
        return true;
    }
    char c = text.at[end];
    char next = end + 1 < text.size ? text.at[end + 1] : ' ';
    if (is_digit(c) || is_letter(c) || c == '-' || c == '%' || c == '/') {
        return false;
    }
    return !((c == '.' || c == ':' || c == ',') && is_digit(next));
}

/* "2 dribbles", "3 seconds", "4 ft": a count, not a player. */
static bool counts_things(struct str text, size_t end)
{
    static const char *const things[] = {
        "ft",    "feet",    "foot",   "in",      "inches",  "m",        "meters",  "s",
        "sec",   "seconds", "second", "min",     "minutes", "dribbles", "dribble", "steps",
        "step",  "passes",  "times",  "shots",   "points",  "players",  "hands",   "reps",
        "makes", "stops",   "people", "percent", "lines",   "balls",    "feints",  "fakes",
        "trips", "sets",    "rounds", NULL};
    while (end < text.size && text.at[end] == ' ') {
        end++;
    }
    size_t size = 0;
    while (end + size < text.size && is_letter(text.at[end + size])) {
        size++;
    }
    struct str word = {text.at + end, size};
    for (size_t i = 0; things[i]; i++) {
        if (str_equal_fold(word, str_of(things[i]))) {
            return true;
        }
    }
    return false;
}

static bool starts_number(struct str text, size_t at)
{
    if (at == 0) {
        return true;
    }
    char before = text.at[at - 1];
    return before == ' ' || before == '(' || before == '"' || before == '/' ||
           (unsigned char)before >= 0x80;
}

struct str tell_bold(struct arena *arena, struct str text, int players)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < text.size;) {
        size_t end = i;
        int number = 0;
        while (end < text.size && is_digit(text.at[end]) && end - i < 3) {
            number = number * 10 + (text.at[end++] - '0');
        }
        bool player = end > i && number >= 1 && number <= players && starts_number(text, i) &&
                      ends_number(text, end) && !counts_things(text, end);
        end = end > i ? end : i + 1;
        if (player) {
            strbuf_char(&out, TELL_BOLD);
        }
        strbuf_add(&out, (struct str){text.at + i, end - i});
        if (player) {
            strbuf_char(&out, TELL_PLAIN);
        }
        i = end;
    }
    return strbuf_str(&out);
}

/* "x3" as a word of its own: bit 1 << 3. */
static unsigned defenders_in(struct str text)
{
    unsigned found = 0;
    for (size_t i = 0; i + 1 < text.size; i++) {
        size_t end = i + 1;
        int number = 0;
        while (end < text.size && is_digit(text.at[end]) && end - i < 3) {
            number = number * 10 + (text.at[end++] - '0');
        }
        bool mark = (text.at[i] == 'x' || text.at[i] == 'X') && starts_number(text, i);
        if (mark && number >= 1 && number <= BODY_COACH && ends_number(text, end)) {
            found |= 1u << number;
        }
    }
    return found;
}

static unsigned defenders_in_points(const point_list *points)
{
    unsigned found = 0;
    for (size_t i = 0; i < points->count; i++) {
        found |= defenders_in(points->at[i].text);
    }
    return found;
}

unsigned tell_spoken_of(struct arena *arena, const struct play *play)
{
    unsigned found = defenders_in(play->goal) | defenders_in_points(&play->points);
    for (size_t i = 0; i < play->steps.count; i++) {
        const struct step *step = &play->steps.at[i];
        found |= defenders_in_points(&step->points);
        for (size_t k = 0; k < step->branches.count; k++) {
            found |= defenders_in(tell_branch(arena, &step->branches.at[k]));
        }
    }
    return found;
}

/* ---- phrases ---- */

struct str tell_level(struct arena *arena, enum level_code level)
{
    struct str word = str_of(level_of(level)->word);
    if (word.size > 1 && word.at[0] == 'u' && is_digit(word.at[1])) {
        return str_format(arena, "under %.*s", (int)word.size - 1, word.at + 1);
    }
    if (str_starts(word, "jv")) {
        return str_format(arena, "JV%.*s", (int)word.size - 2, word.at + 2);
    }
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < word.size; i++) {
        strbuf_char(&out, word.at[i] == '-' ? ' ' : word.at[i]);
    }
    return strbuf_str(&out);
}

struct str tell_series(struct arena *arena, const struct play *play)
{
    if (play->number > 0 && play->series.size > 0) {
        return str_format(arena, "%.*s, number %d", STR_ARG(play->series), play->number);
    }
    return play->number > 0 ? str_format(arena, "Number %d", play->number) : play->series;
}

/* Bodies, each once, in the order of their numbers. */
struct crowd {
    bool here[BODY_COUNT];
    size_t count;
};

static void join(struct crowd *crowd, body who)
{
    if (who < BODY_COUNT && !crowd->here[who]) {
        crowd->here[who] = true;
        crowd->count++;
    }
}

static body guard_of(const struct play *play, int number)
{
    for (int i = 1; i <= LIMIT_DEFENDERS; i++) {
        if (play->guards[body_defender(i)] == body_attacker(number)) {
            return body_defender(i);
        }
    }
    return BODY_NONE;
}

/* Who decides: a defender by what it does; of a player who is open or denied, the guard. */
static body decider_of(const struct play *play, struct who who)
{
    switch (who.kind) {
    case WHO_DEFENDER:
        return body_defender(who.number);
    case WHO_PLAYER:
    case WHO_DEFENDER_OF:
        return guard_of(play, who.number);
    default:
        return BODY_NONE;
    }
}

static void join_conditions(struct crowd *crowd, const struct play *play,
                            const struct branch *branch)
{
    for (size_t i = 0; i < branch->conditions.count; i++) {
        const struct condition *condition = &branch->conditions.at[i];
        join(crowd, decider_of(play, condition->who));
        if (condition->kind == COND_BOTH) {
            join(crowd, decider_of(play, condition->other));
        }
    }
}

/* "x3", "x3 and x5" */
static void print_crowd(struct strbuf *out, const struct crowd *crowd, body reader)
{
    size_t told = 0;
    for (body who = 0; who < BODY_COUNT; who++) {
        if (!crowd->here[who]) {
            continue;
        }
        strbuf_text(out, told == 0 ? "" : told + 1 == crowd->count ? " and " : ", ");
        if (who == reader) {
            strbuf_text(out, "you");
        } else {
            body_print(out, who);
        }
        told++;
    }
}

/* "x3 does", "x3 and x5 do". */
static void print_doers(struct strbuf *out, const struct crowd *crowd, body reader)
{
    print_crowd(out, crowd, reader);
    bool you = reader < BODY_COUNT && crowd->here[reader];
    strbuf_text(out, crowd->count == 1 && !you ? " does" : " do");
}

static bool has_read(const struct step *step)
{
    bool reads = false;
    for (size_t i = 0; i < step->branches.count; i++) {
        reads = reads || step->branches.at[i].kind == BRANCH_READ;
    }
    return reads;
}

enum { DECIDERS_MOST = 3 };

static struct crowd deciders_of(const struct play *play, const struct step *step)
{
    struct crowd deciders = {.count = 0};
    for (size_t i = 0; i < step->branches.count; i++) {
        join_conditions(&deciders, play, &step->branches.at[i]);
    }
    return deciders;
}

bool say_deciders(struct strbuf *out, const struct play *play, const struct step *step)
{
    struct crowd deciders = deciders_of(play, step);
    if (!has_read(step) || deciders.count == 0 || deciders.count > DECIDERS_MOST) {
        return false;
    }
    print_crowd(out, &deciders, BODY_NONE);
    return true;
}

/* Who answers a read: of those who move in it, who gets the ball last; else who moves first. */
static body answerer_of(const struct branch *branch)
{
    body answerer = branch->tasks.at[0].who;
    for (size_t i = 0; i < branch->tasks.count; i++) {
        const struct task *pass = &branch->tasks.at[i];
        for (size_t k = 0; k < i && pass->kind == TASK_PASS; k++) {
            answerer = branch->tasks.at[k].who == pass->other ? pass->other : answerer;
        }
    }
    return answerer;
}

/* Has one something to do in an answer to a read, without being who answers? */
static bool has_a_part(const struct step *step, const struct crowd *doers, body reader)
{
    if (reader >= BODY_COUNT || doers->here[reader]) {
        return false;
    }
    bool found = false;
    for (size_t i = 0; i < step->branches.count; i++) {
        const struct branch *branch = &step->branches.at[i];
        for (size_t k = 0; branch->kind == BRANCH_READ && k < branch->tasks.count; k++) {
            found = found || branch->tasks.at[k].who == reader;
        }
    }
    return found;
}

static void print_decides(struct strbuf *out, const struct play *play, const struct step *step,
                          body reader)
{
    struct crowd deciders = deciders_of(play, step);
    struct crowd doers = {.count = 0};
    bool reads = has_read(step);
    for (size_t i = 0; i < step->branches.count; i++) {
        const struct branch *branch = &step->branches.at[i];
        if (branch->kind == BRANCH_READ && branch->tasks.count > 0) {
            join(&doers, answerer_of(branch));
        }
    }
    if (!reads || deciders.count == 0 || deciders.count > DECIDERS_MOST) {
        strbuf_text(out, reads ? "what you see decides what comes next" : "the ways on");
        return;
    }
    strbuf_text(out, "what ");
    print_doers(out, &deciders, BODY_NONE);
    strbuf_text(out, " decides what ");
    if ((doers.count == 1 || doers.count == 2) && !has_a_part(step, &doers, reader)) {
        print_doers(out, &doers, reader);
    } else {
        strbuf_text(out, "comes next");
    }
}

struct str tell_decides(struct arena *arena, const struct play *play, const struct step *step,
                        body reader)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_print(&out, "Step %d: ", step->number);
    print_decides(&out, play, step, reader);
    return strbuf_str(&out);
}

/* "Ways on: 1a, 1b or 1c" */
static void print_ways(struct strbuf *out, const struct step *step)
{
    size_t count = step->branches.count;
    strbuf_text(out, count == 1 ? "Way on: " : "Ways on: ");
    for (size_t i = 0; i < count; i++) {
        strbuf_text(out, i == 0 ? "" : i + 1 == count ? " or " : ", ");
        strbuf_print(out, "%d%c", step->number, branch_letter(step, branch_told(step, (int)i)));
    }
}

struct str tell_decides_here(struct arena *arena, const struct play *play, const struct step *step,
                             body reader)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    if (has_read(step)) {
        print_decides(&out, play, step, reader);
        out.at[0] = (char)(out.at[0] - 'a' + 'A');
    } else {
        print_ways(&out, step);
    }
    strbuf_char(&out, '.');
    return strbuf_str(&out);
}
