/* SPDX-License-Identifier: MIT */
/* phrase: verbs as they are said: the longest entry wins, bare or with its -s. */
#include <string.h>

#include "language/words/grammar.h"

/* As phrases.def has them, small: there are more than a thousand. */
static const struct phrase_row {
    const char *words, *bare, *with;
    unsigned char verb, pass, screen, to;
} phrases[] = {
#define PHRASE(verb_, words_, bare_, pass_, screen_, with_, spot_)                                 \
    {.words = words_,                                                                              \
     .bare = bare_,                                                                                \
     .verb = VERB_##verb_,                                                                         \
     .pass = PASS_##pass_,                                                                         \
     .screen = SCREEN_##screen_,                                                                   \
     .with = with_,                                                                                \
     .to = SPOT_##spot_},
#include "language/words/phrases.def"
#undef PHRASE
};

_Static_assert(VERB_COUNT < 256 && SPOT_COUNT < 256, "a byte holds them");

enum { OWN = sizeof phrases / sizeof *phrases };

size_t phrase_count(void)
{
    return OWN + VERB_COUNT;
}

/* The rows of phrases.def, then each verb's own words. */
struct phrase phrase_at(size_t index)
{
    if (index < OWN) {
        const struct phrase_row *row = &phrases[index];
        return (struct phrase){.words = row->words,
                               .bare = row->bare,
                               .verb = (enum verb)row->verb,
                               .pass = (enum pass_kind)row->pass,
                               .screen = (enum screen_kind)row->screen,
                               .with = row->with,
                               .to = (enum spot)row->to};
    }
    enum verb verb = (enum verb)(index - OWN);
    return (struct phrase){.words = verb_row(verb)->words,
                           .bare = verb_row(verb)->bare,
                           .verb = verb,
                           .with = "",
                           .to = SPOT_COUNT};
}

bool phrase_has(const struct phrase *phrase, char letter)
{
    return phrase->with[0] != '\0' && strchr(phrase->with, letter) != NULL;
}

static bool suits(const struct phrase *phrase, enum phrase_side side)
{
    if (phrase_has(phrase, 'n')) { /* said with make, set, take, give only */
        return false;
    }
    bool guard = verb_row(phrase->verb)->task == VERB_GUARD;
    if (side == FOR_ANYONE || phrase->verb == VERB_STAYS) {
        return true;
    }
    return guard == (side == FOR_DEFENDERS);
}

/* `it` and `the ball` behind a word of a ball verb are used up, but not where they begin something
 * else: ball side, ball screens. */
static void take_it(struct cursor *c)
{
    if (take_words(c, "it")) {
        return;
    }
    bool other = word_is(c, 1, "side") || word_is(c, 1, "screen") || word_is(c, 1, "screens") ||
                 word_is(c, 0, "ballside");
    if (word_is(c, 0, "ball") && !other) {
        take_words(c, "ball");
    }
}

/* `his man`, `her defender`: who guards the one that acts. */
static bool take_own_defender(struct cursor *c)
{
    static const char *const defenders[] = {"man",   "defender", "girl", "guy",
                                            "check", "player",   NULL};
    struct cursor trial = *c;
    const struct token *next = cursor_next(c);
    bool own = next && next->kind == TOKEN_DEFENDER && c->doer && c->doer->kind == WHO_PLAYER &&
               next->number == c->doer->number; /* 5 buries x5 */
    if (own) {
        cursor_take(c, next, next + 1);
        return true;
    }
    take_among(&trial, owner_words);
    if (!take_among(&trial, defenders)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static void take_screen(struct cursor *c)
{
    static const char *const screens[] = {"screen",        "ball screen", "pick",
                                          "top of screen", "it",          NULL};
    take_among(c, screens);
}

/* rips baseline, keeps it to the rim: but not rips alone. */
static bool way_follows(const struct cursor *c)
{
    static const char *const words[] = {"baseline", "middle", "to", "into", "in", "toward", NULL};
    struct cursor trial = *c;
    while (take_among(&trial, particle_words)) {
    }
    return word_among(&trial, words);
}

/* What may stand inside or behind the words of a row and adds nothing to them; false: it must, and
 * does not. */
static bool take_extra(struct cursor *c, struct phrase *phrase)
{
    if (phrase_has(phrase, 'B')) {
        take_it(c);
    }
    if (phrase_has(phrase, 'S')) {
        take_screen(c);
    }
    if (phrase_has(phrase, 'Y')) {
        return way_follows(c);
    }
    const struct token *next = cursor_next(c);
    if (phrase_has(phrase, 'F')) {
        return word_is(c, 0, "for");
    }
    if (phrase_has(phrase, 'Z')) {
        return !next || (next->kind == TOKEN_MARK && next->mark != ',');
    }
    struct who holder;
    if (phrase_has(phrase, 'H')) {
        return c->doer && c->speech && above_holder(c, &holder) && same_who(&holder, c->doer);
    }
    if (phrase_has(phrase, 'P')) {
        return next && next->kind == TOKEN_NUMBER && !next->possessive;
    }
    if (phrase_has(phrase, 'V')) {
        return next && (next->possessive || (c->speech && word_among(c, owner_words)));
    }
    if (phrase_has(phrase, 'D') || phrase_has(phrase, 'E')) {
        return take_own_defender(c) || phrase_has(phrase, 'D');
    }
    return true;
}

/* The player of boxes 2 out. */
static bool take_inside(struct cursor *c, struct phrase *phrase)
{
    const struct token *next = cursor_next(c);
    bool player = next && next->kind == TOKEN_NUMBER && next->integer && !next->possessive;
    if (!phrase_has(phrase, 'I') || !player) {
        return !phrase_has(phrase, 'I') && take_extra(c, phrase);
    }
    phrase->inside = next;
    cursor_take(c, next, next + 1);
    return true;
}

/* shoots a 3: without its article the number would be a player. */
static bool article_fits(const struct cursor *c, const struct phrase *phrase)
{
    return !phrase_has(phrase, 'a') || str_is(c->at[-2].text, "a");
}

/* gets it over to: particles before the last word. */
static bool take_before_last(struct cursor *c, struct str words)
{
    struct str first = words, last;
    struct cursor trial = *c;
    while (first.at[first.size - 1] != ' ') {
        first.size--;
    }
    last = (struct str){first.at + first.size, words.size - first.size};
    first.size--;
    if (!take_str(&trial, first)) {
        return false;
    }
    while (take_among(&trial, particle_words)) {
    }
    if (!take_str(&trial, last)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* Takes the words in one piece, or with something inside or behind: swings it over, sets his man
 * up, boxes 2 out. */
static bool take_form(struct cursor *c, struct str words, struct phrase *phrase)
{
    struct cursor trial = *c;
    if (take_str(&trial, words) && article_fits(&trial, phrase) && take_extra(&trial, phrase)) {
        c->at = trial.at;
        return true;
    }
    if (phrase_has(phrase, 'Q')) {
        return take_before_last(c, words);
    }
    bool parts = phrase_has(phrase, 'B') || phrase_has(phrase, 'D') || phrase_has(phrase, 'E') ||
                 phrase_has(phrase, 'I');
    const char *space = parts ? memchr(words.at, ' ', words.size) : NULL;
    if (!space) {
        return false;
    }
    struct str first = {words.at, (size_t)(space - words.at)};
    struct str rest = {space + 1, words.size - first.size - 1};
    trial = *c;
    if (!take_str(&trial, first) || !take_inside(&trial, phrase) || !take_str(&trial, rest)) {
        phrase->inside = NULL;
        return false;
    }
    c->at = trial.at;
    return true;
}

/* What the letters of a row say besides its verb. */
static void say_more(struct phrase *phrase)
{
    static const struct {
        char letter;
        enum pace pace;
    } paces[] = {{'w', PACE_WALK}, {'j', PACE_JOG}, {'s', PACE_SPRINT}};
    for (size_t i = 0; i < sizeof paces / sizeof *paces; i++) {
        phrase->pace = phrase_has(phrase, paces[i].letter) ? paces[i].pace : phrase->pace;
    }
    for (char digit = '1'; digit <= '3'; digit++) {
        phrase->steps = phrase_has(phrase, digit) ? digit - '0' : phrase->steps;
    }
}

static bool take_phrase(struct cursor *c, struct phrase *phrase, bool own)
{
    struct str words = own ? verb_head(phrase->verb, false) : str_of(phrase->words);
    struct str bare = own ? verb_head(phrase->verb, true) : str_of(phrase->bare);
    phrase->with_s = take_form(c, words, phrase);
    return phrase->with_s || take_form(c, bare, phrase);
}

static const struct entry efforts[] = {{"hard", PACE_SPRINT},  {"fast", PACE_SPRINT},
                                       {"quick", PACE_SPRINT}, {"slow", PACE_JOG},
                                       {"easy", PACE_JOG},     {NULL, 0}};

/* What stands before a noun and changes nothing that is run; what a coach might miss is kept for a
 * note. */
static void take_adjectives(struct cursor *c, struct phrase *phrase)
{
    static const char *const empty[] = {"good", "solid", "nice", "simple", "big", "strong", NULL};
    static const char *const told[] = {
        "high",     "flat",     "side",     "wing",   "angle",       "middle", "early",    "corner",
        "inverted", "diagonal", "baseline", "flex",   "small-small", "low",    "angled",   "short",
        "long",     "direct",   "wide",     "horns",  "spread",      "elbow",  "sideline", "slot",
        "quick",    "empty",    "tight",    "second", "first",       "hard",   NULL};
    for (;;) {
        int effort = take_entry(c, efforts);
        const struct token *from = past_fillers(c->at, c->end);
        phrase->pace = effort >= 0 ? (enum pace)effort : phrase->pace; /* makes a hard cut */
        if (effort < 0 && !take_among(c, empty)) {
            if (!take_among(c, told)) {
                return;
            }
            phrase->dropped = phrase->dropped ? phrase->dropped : from;
        }
    }
}

/* The longest noun of the table, words of it or with its -s: a down screen, double drags. */
static bool table_noun(struct cursor *c, struct phrase *out)
{
    const struct token *longest = NULL;
    struct index_rows rows = rows_here(c, INDEX_PHRASES);
    size_t best = OWN; /* of those that are as long, the one written first */
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        if (*row >= OWN || !strchr(phrases[*row].with, 'N')) {
            continue;
        }
        struct cursor noun = *c;
        const struct phrase_row *phrase = &phrases[*row];
        bool taken = take_words(&noun, phrase->words) || take_words(&noun, phrase->bare);
        if (taken && (!longest || noun.at > longest || (noun.at == longest && *row < best))) {
            longest = noun.at;
            best = *row;
            *out = phrase_at(best);
        }
    }
    c->at = longest ? longest : c->at;
    return longest != NULL;
}

bool phrase_noun_read(struct cursor *c, struct phrase *out)
{
    struct cursor trial = *c;
    struct phrase said = {.pace = PACE_VERB};
    if (!table_noun(&trial, out)) { /* a noun of the table goes first: step-up screen */
        take_adjectives(&trial, &said);
        if (!table_noun(&trial, out)) {
            return false;
        }
    }
    out->pace = said.pace;
    out->dropped = said.dropped;
    c->at = trial.at;
    return true;
}

/* make, set, take, give and a noun: sets a down screen, gives a pump fake. */
static bool light_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    static const char *const going[] = {
        "goes",  "go",   "flows",  "flow",  "runs",  "run",  "sprints", "sprint", "steps", "step",
        "comes", "come", "gets",   "get",   "moves", "move", "rolls",   "roll",   "turns", "turn",
        "jogs",  "jog",  "slides", "slide", "pops",  "pop",  "flashes", "flash",  NULL};
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS) {
        return false;
    }
    bool light = take_among(&trial, light_words);
    bool led = !light && c->speech && take_among(&trial, going);
    while (led && (take_among(&trial, particle_words) || take_words(&trial, "straight") ||
                   take_words(&trial, "right"))) {
    }
    led = led && (take_words(&trial, "into") || take_words(&trial, "in to"));
    if ((!light && !led) || !phrase_noun_read(&trial, out) ||
        (led && verb_row(out->verb)->task != VERB_SCREEN)) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* A three: said so, and not a player. */
static bool take_three(struct cursor *c, bool described)
{
    static const char *const words[] = {"three-pointer", "three-point shot", "three ball",
                                        "3-pointer",     "3-point shot",     "3 ball",
                                        "trey",          "shot from three",  NULL};
    struct cursor trial = *c;
    const struct token *next = cursor_next(&trial);
    bool article = next && next > c->at;
    if (take_among(&trial, words) ||
        ((article || described) && (take_words(&trial, "three") || take_words(&trial, "3")))) {
        c->at = trial.at;
        return true;
    }
    return false;
}

/* shoots the open jumper, takes a corner three, pulls up for a floater. */
static bool shot_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    static const char *const verbs[] = {"shoots",
                                        "shoot",
                                        "takes",
                                        "take",
                                        "puts up",
                                        "put up",
                                        "pulls up for",
                                        "pull up for",
                                        "fires",
                                        "fire",
                                        "launches",
                                        "launch",
                                        "attempts",
                                        "attempt",
                                        "gets up",
                                        "get up",
                                        "rises for",
                                        "rise for",
                                        "steps into",
                                        "step into",
                                        "goes up for",
                                        "go up for",
                                        "finishes with",
                                        "finish with",
                                        "pulls up and takes",
                                        "pull up and take",
                                        "lets fly with",
                                        NULL};
    static const char *const adjectives[] = {
        "open",         "wide-open",   "corner",          "wing",
        "top",          "deep",        "elbow",           "pull-up",
        "step-back",    "mid-range",   "quick",           "contested",
        "reverse",      "short",       "catch-and-shoot", "left-handed",
        "right-handed", "left-hand",   "right-hand",      "baseline",
        "bank",         "easy",        "power",           "jump",
        "hard",         "little",      "turnaround",      "wide",
        "one-handed",   "one-dribble", "running",         NULL};
    static const char *const nouns[] = {
        "shot",      "jumper",    "jump shot", "lay-up",      "lay-in",    "floater",
        "runner",    "fadeaway",  "hook",      "dunk",        "mid-range", "two-pointer",
        "bank shot", "finish",    "pull-up",   "shots",       "teardrop",  "j",
        "fade",      "step-back", "bunny",     "finger roll", "baby hook", NULL};
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS || !take_among(&trial, verbs)) {
        return false;
    }
    static const char *const shots[] = {"pull-up", "step-back", "turnaround", NULL};
    bool described = false, whole = false, three;
    for (;;) {
        bool shot = word_among(&trial, shots); /* a pull-up, a step-back: a shot by itself */
        if (!take_among(&trial, adjectives)) {
            break;
        }
        described = true;
        whole = shot;
    }
    three = take_three(&trial, described);
    if (!three && !take_among(&trial, nouns) && !whole) {
        return false;
    }
    c->at = trial.at;
    *out = (struct phrase){.words = "shoots",
                           .bare = "shoot",
                           .verb = VERB_SHOOTS,
                           .with = "",
                           .to = SPOT_COUNT,
                           .with_s = false,
                           .three = three};
    return true;
}

/* takes one power dribble, takes a couple of hard dribbles. */
static bool dribble_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    static const char *const verbs[] = {"takes",     "take",     "uses",  "use",
                                        "puts down", "put down", "needs", NULL};
    static const char *const counts[] = {"one", "two",       "three", "1",      "2",
                                         "3",   "couple of", "few",   "couple", NULL};
    static const char *const adjectives[] = {
        "hard",  "power",   "long",  "quick",  "crab",  "slow",   "strong", "big",
        "more",  "retreat", "pull",  "drag",   "short", "little", "attack", "extra",
        "speed", "escape",  "pound", "rhythm", "side",  NULL};
    static const char *const nouns[] = {"dribble", "dribbles", "bounce", "bounces", NULL};
    struct cursor trial = *c;
    if (side == FOR_DEFENDERS || (!take_among(&trial, verbs) && !c->counted)) {
        return false;
    }
    if (!take_among(&trial, counts) && c->counted) {
        return false;
    }
    while (take_among(&trial, adjectives)) {
    }
    if (!take_among(&trial, nouns)) {
        return false;
    }
    c->at = trial.at;
    *out = (struct phrase){.words = "dribbles",
                           .bare = "dribble",
                           .verb = VERB_DRIBBLES,
                           .with = "",
                           .to = SPOT_COUNT,
                           .counted = true};
    return true;
}

bool phrase_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    const struct token *longest = c->at;
    struct index_rows rows = rows_here(c, INDEX_PHRASES);
    size_t best = phrase_count(); /* of those that are as long, the one written first */
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        struct phrase phrase = phrase_at(*row);
        struct cursor trial = *c;
        if (suits(&phrase, side) && take_phrase(&trial, &phrase, *row >= OWN) &&
            (trial.at > longest || (trial.at == longest && *row < best))) {
            longest = trial.at;
            best = *row;
            say_more(&phrase);
            *out = phrase;
        }
    }
    static bool (*const nouns[])(struct cursor *, enum phrase_side,
                                 struct phrase *) = {light_read, shot_read, dribble_read};
    for (size_t i = 0; i < sizeof nouns / sizeof *nouns; i++) {
        struct cursor trial = *c;
        struct phrase noun = {.with = ""};
        if (nouns[i](&trial, side, &noun) &&
            (trial.at > longest || (noun.counted && trial.at == longest))) {
            longest = trial.at;
            *out = noun;
        }
    }
    bool found = longest > c->at;
    c->at = longest;
    return found;
}

/* "dribbling" for dribble, "cutting" for cut: its first word, the rest as it is. Empty: too long.
 */
static struct str ing_of(struct str bare, char out[2 * WORDS_MOST])
{
    size_t first = 0;
    while (first < bare.size && bare.at[first] != ' ' && bare.at[first] != '-') {
        first++;
    }
    if (first < 2 || bare.size + 5 > 2 * WORDS_MOST) {
        return (struct str){out, 0};
    }
    static const char vowels[] = "aeiou";
    char last = bare.at[first - 1], before = bare.at[first - 2];
    size_t sounds = 0;
    for (size_t i = 0; i < first; i++) {
        sounds += strchr(vowels, bare.at[i]) != NULL;
    }
    bool silent = last == 'e' && before != 'e';
    bool doubled = sounds == 1 && strchr(vowels, before) && !strchr("aeiouwyx", last);
    size_t size = first - silent;
    memcpy(out, bare.at, size);
    if (doubled) {
        out[size++] = last;
    }
    memcpy(out + size, "ing", 3);
    memcpy(out + size + 3, bare.at + first, bare.size - first);
    return (struct str){out, size + 3 + bare.size - first};
}

bool phrase_ing_here(struct cursor *c, enum phrase_side side, struct phrase *out, struct str *said)
{
    const struct token *longest = c->at;
    struct index_rows rows = rows_here(c, INDEX_PHRASES);
    for (const unsigned short *row = rows.at; row < rows.end; row++) {
        size_t i = *row;
        struct phrase phrase = phrase_at(i);
        struct str bare = i >= OWN ? verb_head(phrase.verb, true) : str_of(phrase.bare);
        char room[2 * WORDS_MOST];
        struct cursor trial = *c;
        if (!suits(&phrase, side)) {
            continue;
        }
        struct str ing = ing_of(bare, room);
        if (ing.size > 0 && take_form(&trial, ing, &phrase) && trial.at > longest) {
            longest = trial.at;
            say_more(&phrase);
            *out = phrase;
            *said = bare;
        }
    }
    bool found = longest > c->at;
    c->at = longest;
    return found;
}

bool phrase_ing_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    struct cursor is = *c;
    struct str bare;
    if ((!take_words(&is, "is") && !take_words(&is, "starts")) ||
        !phrase_ing_here(&is, side, out, &bare)) {
        return false;
    }
    c->at = is.at;
    return true;
}

struct str phrase_words(enum verb verb, enum pass_kind pass, enum screen_kind screen, bool bare)
{
    for (size_t i = 0; i < OWN && (pass != PASS_PLAIN || screen != SCREEN_PLAIN); i++) {
        const struct phrase_row *phrase = &phrases[i];
        if (phrase->verb == verb && phrase->pass == pass && phrase->screen == screen) {
            return str_of(bare ? phrase->bare : phrase->words);
        }
    }
    return verb_head(verb, bare);
}

const char *phrase_nearest(const struct cursor *c, enum phrase_side side)
{
    const char *nearest = NULL;
    size_t best = 3;
    /* a full list keeps no helps: a long file of mistakes is read as fast as any */
    for (size_t i = 0; i < phrase_count() && !c->diags->full; i++) {
        struct phrase phrase = phrase_at(phrase_count() - 1 - i);
        if (!suits(&phrase, side)) {
            continue;
        }
        size_t with_s = words_distance(c, phrase.words);
        size_t bare = words_distance(c, phrase.bare);
        size_t distance = with_s < bare ? with_s : bare;
        if (distance > 0 && distance < 3 &&
            distance <= best) { /* the very word is what was refused */
            best = distance;
            nearest = phrase.words;
        }
    }
    return nearest;
}
