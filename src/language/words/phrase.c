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
    struct cursor trial = *c;
    const struct token *next = cursor_next(c);
    bool own = next && next->kind == TOKEN_DEFENDER && c->doer && c->doer->kind == WHO_PLAYER &&
               next->number == c->doer->number; /* 5 buries x5 */
    if (own) {
        cursor_take(c, next, next + 1);
        return true;
    }
    take_among(&trial, owner_words);
    if (!take_among(&trial, defender_words) && !take_words(&trial, "player")) {
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

bool one_of_a_zone(const struct cursor *c)
{
    static const char *const lines[] = {"middle", "high",   "low",      "deep",
                                        "inside", "bottom", "baseline", NULL};
    return token_is_among(&c->at[-1], lines);
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
    bool his = c->doer && c->speech && above_holds(c, c->doer);
    if (phrase_has(phrase, 'Z')) {
        bool end = !next || (next->kind == TOKEN_MARK && next->mark != ',');
        return end && (his || !phrase_has(phrase, 'H')); /* keeps it: who has it */
    }
    if (phrase_has(phrase, 'H') && (!his || !phrase_has(phrase, 'P'))) {
        return his;
    }
    if (phrase_has(phrase, 'P') || phrase_has(phrase, 'K')) {
        struct cursor part = *c; /* two thirds of the way from */
        return next && next->kind == TOKEN_NUMBER && !next->possessive &&
               take_entry(&part, fraction_entries) < 0;
    }
    if (phrase_has(phrase, 'G')) { /* x3 has the nail */
        struct cursor trial = *c;
        struct cursor_mark mark = cursor_mark(c);
        bool spot = c->speech && spot_read(&trial, true) && part_ends(&trial);
        cursor_back(&trial, mark);
        return spot;
    }
    if (phrase_has(phrase, 'V')) {
        return next && (next->possessive || (c->speech && word_among(c, owner_words)));
    }
    if (phrase_has(phrase, 'D') || phrase_has(phrase, 'E')) {
        return (!one_of_a_zone(c) && take_own_defender(c)) || phrase_has(phrase, 'D');
    }
    return true;
}

/* The player of boxes 2 out; the ball of drops it down to. */
static bool take_inside(struct cursor *c, struct phrase *phrase)
{
    const struct token *next = cursor_next(c), *from = c->at;
    if (phrase_has(phrase, 'K')) {
        take_it(c);
        return c->at != from;
    }
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
                 phrase_has(phrase, 'I') || phrase_has(phrase, 'K');
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

enum { FORM_S = 1, FORM_BARE = 2 };

/* `forms`: those that are worth a look. */
static bool take_phrase(struct cursor *c, struct phrase *phrase, bool own, unsigned forms)
{
    phrase->with_s =
        (forms & FORM_S) &&
        take_form(c, own ? verb_head(phrase->verb, false) : str_of(phrase->words), phrase);
    return phrase->with_s ||
           ((forms & FORM_BARE) &&
            take_form(c, own ? verb_head(phrase->verb, true) : str_of(phrase->bare), phrase));
}

/* How a row's words begin, beside the next token: BEGIN_NOT is certain, and most rows of a bucket
 * end there; of BEGIN_SAME all its letters are theirs, and `*behind` is what is left of them. */
enum begin { BEGIN_NOT, BEGIN_MAYBE, BEGIN_SAME };
static inline enum begin begin_of(const struct token *next, const char *words, const char **behind)
{
    struct str text = next->text;
    for (size_t i = 0; i < text.size; i++, words++) {
        if (*words != text.at[i]) {
            bool gap = *words == ' ' && words[1] != 'a' && words[1] != 't';
            words += gap ? 1 : 0; /* one word for two: backpick */
            bool letters = letter_is_plain(*words) && letter_is_plain(text.at[i]);
            bool over = *words == '\0' && text.at[i] != '-' && !str_is(text, "towards");
            if (i < 2 || !gap || *words != text.at[i]) {
                return i >= 2 && (letters || over) ? BEGIN_NOT : BEGIN_MAYBE;
            }
        }
    }
    *behind = words;
    return BEGIN_SAME;
}

/* Whether these words may stand here, by the first letter of their second one too: false is
 * certain. `with`: what may stand between the two. */
static inline bool may_be(const struct token *next, char second, const char *words,
                          const char *with)
{
    const char *behind;
    enum begin begin = begin_of(next, words, &behind);
    if (begin != BEGIN_SAME || behind[0] != ' ' || behind[1] == second || behind[1] == 'a' ||
        behind[1] == 't') { /* an article may be skipped */
        return begin != BEGIN_NOT;
    }
    for (; *with; with++) {
        bool it = *with == 'B' && (second == 'i' || second == 'b');
        if (it || *with == 'D' || *with == 'E' || *with == 'I' || *with == 'Q') {
            return true;
        }
    }
    return false;
}

/* The forms of a row that may stand here. */
static unsigned forms_here(const struct token *next, char second, size_t row)
{
    const struct verb_row *verb = row < OWN ? NULL : verb_row((enum verb)(row - OWN));
    const char *words = verb ? verb->words : phrases[row].words;
    const char *bare = verb ? verb->bare : phrases[row].bare;
    const char *with = verb ? "Q" : phrases[row].with; /* of a verb only its head is looked for */
    return (may_be(next, second, words, with) ? FORM_S : 0u) |
           (may_be(next, second, bare, with) ? FORM_BARE : 0u);
}

/* The first letter of what follows this token; NUL: nothing, or no letter. */
static char letter_behind(const struct cursor *c, const struct token *next)
{
    const struct token *at = past_fillers(next + 1, c->end);
    while (at < c->end && (at->filler || token_is_mark(at, '-'))) {
        at++;
    }
    return at < c->end ? at->first : '\0';
}

/* The third letter of a word, which rows are passed over by; NUL: none, or no plain one. */
static char third_of(const struct token *next)
{
    bool plain = next->text.size > 2 && letter_is_plain(next->text.at[2]);
    return plain ? next->text.at[2] : '\0';
}

/* sets an up screen, a back screen; sets up the screen is any. */
static bool an_up_screen(const struct token *from, const struct token *to)
{
    while (from < to && !token_is_word(from, "an")) {
        from++;
    }
    return from < to;
}

bool phrase_read(struct cursor *c, enum phrase_side side, struct phrase *out)
{
    const struct token *longest = c->at;
    struct index_rows rows = rows_here(c, INDEX_PHRASES);
    const struct token *next = cursor_next(c);
    char second = rows.at < rows.end ? letter_behind(c, next) : '\0';
    size_t best = phrase_count(); /* of those that are as long, the one written first */
    char third = rows.at < rows.end ? third_of(next) : '\0';
    const char *thirds = rows.at < rows.end ? index_thirds(rows.at) : NULL;
    for (const unsigned short *row = rows.at; row < rows.end; row++, thirds++) {
        bool otherwise = third != '\0' && *thirds != '\0' && *thirds != third;
        unsigned forms = otherwise ? 0 : forms_here(next, second, *row);
        if (forms == 0) {
            continue;
        }
        struct phrase phrase = phrase_at(*row);
        struct cursor trial = *c;
        if (suits(&phrase, side) && take_phrase(&trial, &phrase, *row >= OWN, forms) &&
            (trial.at > longest || (trial.at == longest && *row < best))) {
            longest = trial.at;
            best = *row;
            say_more(&phrase);
            *out = phrase;
        }
    }
    static bool (*const nouns[])(struct cursor *, enum phrase_side, struct phrase *) = {
        light_verb_read, light_shot_read, light_dribble_read};
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
    if (found && str_is(str_of(out->words), "sets up screen") && an_up_screen(c->at, longest)) {
        out->screen = SCREEN_BACK;
    }
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
    static const char *const ises[] = {"is", "starts", "keeps", "keep", "continues", NULL};
    if (!take_among(&is, ises) || !phrase_ing_here(&is, side, out, &bare)) {
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
    struct said_words said;
    said_read(c, &said);
    /* a full list keeps no helps: a long file of mistakes is read as fast as any */
    for (size_t i = 0; i < phrase_count() && !c->diags->full; i++) {
        struct phrase phrase = phrase_at(phrase_count() - 1 - i);
        if (!suits(&phrase, side)) {
            continue;
        }
        size_t with_s = words_distance(&said, phrase.words);
        size_t bare = words_distance(&said, phrase.bare);
        size_t distance = with_s < bare ? with_s : bare;
        if (distance > 0 && distance < 3 &&
            distance <= best) { /* the very word is what was refused */
            best = distance;
            nearest = phrase.words;
        }
    }
    return nearest;
}
