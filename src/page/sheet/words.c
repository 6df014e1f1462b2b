/* SPDX-License-Identifier: MIT */
/* words: text for paper. Takes plays and told sentences, gives blocks and phrases; must not know
 * where they stand on a page. */
#include "page/sheet/words.h"

#include "base/limits.h"
#include "base/rng.h"
#include "language/tell/tell.h"

struct type_row {
    double size, leading, spacing;
    enum face plain, bold;
};

static const struct type_row types[TYPE_COUNT] = {
    [TYPE_TITLE] = {24, 28, -0.35, FACE_BOLD, FACE_BOLD},
    [TYPE_LONG_TITLE] = {18, 22, -0.2, FACE_BOLD, FACE_BOLD},
    [TYPE_LONGEST_TITLE] = {14, 17, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SERIES] = {11, 14, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_CLOCK] = {10.5, 14.5, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_ABOUT] = {10.5, 14.5, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_HEADING] = {11, 14, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SMALL_HEADING] = {9.5, 12, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SENTENCE] = {9.5, 12.6, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_LARGE_SENTENCE] = {11, 14.6, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_JOB] = {9.5, 13, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_POINT] = {9, 12, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_OTHERS] = {8.5, 11.5, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_ASKED] = {9, 11.8, 0, FACE_MEDIUM, FACE_BOLD},
    [TYPE_NOTE] = {8, 11, 0, FACE_REGULAR, FACE_BOLD},
    [TYPE_CLUB] = {8, 11, 0.6, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_COVER] = {56, 60, -1.2, FACE_BOLD, FACE_BOLD},
    [TYPE_LONG_COVER] = {36, 42, -0.6, FACE_BOLD, FACE_BOLD},
    [TYPE_LONGEST_COVER] = {24, 28, -0.35, FACE_BOLD, FACE_BOLD},
    [TYPE_CHAPTER] = {14, 18, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_CALL] = {9, 11, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
    [TYPE_CARD_NAME] = {10.5, 12.5, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_SMALL_CARD_NAME] = {9, 11, 0, FACE_BOLD, FACE_BOLD},
    [TYPE_DISC] = {8, 10, 0, FACE_SEMIBOLD, FACE_SEMIBOLD},
};

double type_leading(enum type type)
{
    return types[type].leading;
}

static const struct text_block *lay_out(const struct setter *setter, enum type type,
                                        struct str text, double width)
{
    const struct type_row *row = &types[type];
    VEC(struct text_piece) pieces = {0};
    bool bold = false;
    size_t begin = 0;
    for (size_t i = 0; i <= text.size; i++) {
        bool mark = i < text.size && (text.at[i] == TELL_BOLD || text.at[i] == TELL_PLAIN);
        if (!mark && i < text.size) {
            continue;
        }
        if (i > begin) {
            struct text_piece piece = {{text.at + begin, i - begin}, bold ? row->bold : row->plain};
            VEC_PUSH(setter->arena, &pieces, piece);
        }
        bold = mark && text.at[i] == TELL_BOLD;
        begin = i + 1;
    }
    struct text_style style = {row->size, row->leading, row->spacing};
    return text_layout(setter->arena, setter->fonts, pieces.at, pieces.count, &style, width);
}

/* ---- words set before ---- */

struct kept_words {
    uint64_t hash;                  /* of text, type and width */
    const struct text_block *block; /* NULL: the place is free */
};

static uint64_t hash_of(enum type type, struct str text, double width)
{
    uint64_t hash = hash_bytes(HASH_SEED, text.at, text.size);
    hash = hash_bytes(hash, &type, sizeof type);
    return hash_bytes(hash, &width, sizeof width);
}

/* Where it stands, or where it may. 64 bits: two texts of a play are not taken for each other. */
static struct kept_words *find_kept(const struct kept *kept, uint64_t hash)
{
    size_t at = (size_t)hash & (kept->room - 1);
    while (kept->words[at].block && kept->words[at].hash != hash) {
        at = (at + 1) & (kept->room - 1);
    }
    return &kept->words[at];
}

static void make_room(struct arena *arena, struct kept *kept)
{
    if (2 * kept->count < kept->room) {
        return;
    }
    struct kept old = *kept;
    kept->room = old.room ? 2 * old.room : 256;
    kept->words = arena_array(arena, struct kept_words, kept->room);
    for (size_t i = 0; i < old.room; i++) {
        if (old.words[i].block) {
            *find_kept(kept, old.words[i].hash) = old.words[i];
        }
    }
}

const struct text_block *words_set(const struct setter *setter, enum type type, struct str text,
                                   double width)
{
    struct kept *kept = setter->kept;
    if (!kept) {
        return lay_out(setter, type, text, width);
    }
    make_room(setter->arena, kept);
    uint64_t hash = hash_of(type, text, width);
    struct kept_words *place = find_kept(kept, hash);
    if (!place->block) {
        *place = (struct kept_words){hash, lay_out(setter, type, text, width)};
        kept->count++;
    }
    return place->block;
}

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

struct str words_bold(struct arena *arena, struct str text, int players)
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

/* ---- phrases ---- */

/* The blocks of scripts that run to the left: Hebrew, Arabic and their neighbors. */
static bool may_run_left(struct str text)
{
    static const unsigned blocks[][2] = {
        {0x590, 0x8FF}, {0xFB1D, 0xFDFF}, {0xFE70, 0xFEFE}, {0x10800, 0x10FFF}, {0x1E800, 0x1EFFF}};
    while (text.size > 0) {
        unsigned letter = metrics_letter(&text);
        for (size_t i = 0; i < sizeof blocks / sizeof *blocks; i++) {
            if (letter >= blocks[i][0] && letter <= blocks[i][1]) {
                return true;
            }
        }
    }
    return false;
}

struct str words_isolated(struct arena *arena, struct str name)
{
    static const char first_strong_isolate[] = "\xE2\x81\xA8", pop[] = "\xE2\x81\xA9";
    return may_run_left(name)
               ? str_format(arena, "%s%.*s%s", first_strong_isolate, STR_ARG(name), pop)
               : name;
}

struct str words_capitals(struct arena *arena, struct str text)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    for (size_t i = 0; i < text.size; i++) {
        char c = text.at[i];
        bool latin = i > 0 && (unsigned char)text.at[i - 1] == 0xC3;
        unsigned char byte = (unsigned char)c;
        if (c >= 'a' && c <= 'z') {
            c = (char)(c - 32);
        } else if (latin && byte >= 0xA0 && byte <= 0xBE && byte != 0xB7) {
            c = (char)(byte - 32); /* à to þ, but for the division sign */
        }
        strbuf_char(&out, c);
    }
    return strbuf_str(&out);
}

struct str words_level(struct arena *arena, enum level_code level)
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

struct str words_sheet(struct arena *arena, const char *sheet, const struct play *play)
{
    if (!play->level_written) {
        return str_of(sheet);
    }
    struct str level = words_level(arena, play->level);
    return str_format(arena, "%s, %.*s", sheet, STR_ARG(level));
}

struct str words_series(struct arena *arena, const struct play *play)
{
    if (play->number > 0 && play->series.size > 0) {
        return str_format(arena, "%.*s, number %d", STR_ARG(play->series), play->number);
    }
    return play->number > 0 ? str_format(arena, "Number %d", play->number) : play->series;
}

struct str words_foot(struct arena *arena, const struct play *play)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_add(&out, play->name);
    if (play->series.size > 0) {
        strbuf_print(&out, ", %.*s", STR_ARG(play->series));
    }
    if (play->number > 0) {
        strbuf_print(&out, play->series.size > 0 ? " %d" : ", number %d", play->number);
    }
    return strbuf_str(&out);
}

static bool takes(const struct setter *setter, enum type type, struct str text, double width,
                  size_t lines)
{
    return text_lines(words_set(setter, type, text, width)) <= lines;
}

static struct str with_dots(const struct setter *setter, struct str text, size_t size)
{
    return str_format(setter->arena, "%.*s\xE2\x80\xA6", (int)size, text.at);
}

/* Back to the start of a letter. */
static size_t letter_start(struct str text, size_t at)
{
    while (at > 0 && at < text.size && ((unsigned char)text.at[at] & 0xC0) == 0x80) {
        at--;
    }
    return at;
}

struct str words_fit(const struct setter *setter, enum type type, struct str text, double width,
                     size_t lines)
{
    if (takes(setter, type, text, width, lines)) {
        return text;
    }
    size_t size = 0;
    for (size_t over = text.size; over - size > 1;) {
        size_t middle = size + (over - size) / 2;
        struct str tried = with_dots(setter, text, letter_start(text, middle));
        *(takes(setter, type, tried, width, lines) ? &size : &over) = middle;
    }
    size = letter_start(text, size);
    size_t word = size;
    while (word > 0 && text.at[word] != ' ') {
        word--;
    }
    return with_dots(setter, text, word * 2 > size ? word : size);
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

/* "x3 does", "x3 and x5 do". */
static void print_doers(struct strbuf *out, const struct crowd *crowd, body reader)
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
    bool you = reader < BODY_COUNT && crowd->here[reader];
    strbuf_text(out, crowd->count == 1 && !you ? " does" : " do");
}

static void print_decides(struct strbuf *out, const struct play *play, const struct step *step,
                          body reader)
{
    struct crowd deciders = {.count = 0};
    struct crowd doers = {.count = 0};
    bool reads = false;
    for (size_t i = 0; i < step->branches.count; i++) {
        const struct branch *branch = &step->branches.at[i];
        reads = reads || branch->kind == BRANCH_READ;
        join_conditions(&deciders, play, branch);
        if (branch->kind == BRANCH_READ && branch->tasks.count > 0) {
            join(&doers, branch->tasks.at[0].who);
        }
    }
    if (!reads || deciders.count == 0 || deciders.count > 3) {
        strbuf_text(out, reads ? "what you see decides what comes next" : "the ways on");
        return;
    }
    strbuf_text(out, "what ");
    print_doers(out, &deciders, BODY_NONE);
    strbuf_text(out, " decides what ");
    if (doers.count == 1 || doers.count == 2) {
        print_doers(out, &doers, reader);
    } else {
        strbuf_text(out, "comes next");
    }
}

struct str words_decides(struct arena *arena, const struct play *play, const struct step *step,
                         body reader)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    strbuf_print(&out, "Step %d: ", step->number);
    print_decides(&out, play, step, reader);
    return strbuf_str(&out);
}

struct str words_decides_here(struct arena *arena, const struct play *play, const struct step *step,
                              body reader)
{
    struct strbuf out;
    strbuf_init(&out, arena);
    print_decides(&out, play, step, reader);
    out.at[0] = (char)(out.at[0] - 'a' + 'A');
    strbuf_char(&out, '.');
    return strbuf_str(&out);
}
