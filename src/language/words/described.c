/* SPDX-License-Identifier: MIT */
/* described: players who are not named but told by where they stand, the two corner men, our big at
 * the elbow; those who are named and told of besides, the shooter in the corner, 4; and a screen
 * inside a zone that is told by whom it is set on. Ways of plain.c: see put_plain.h. */
#include "language/words/people.h"
#include "language/words/put_plain.h"

static const char *const at_words[] = {
    "standing at",  "standing in",  "standing on", "waiting at", "waiting in", "waiting on",
    "posted at",    "posted on",    "who are at",  "who are in", "who are on", "who stand at",
    "who stand in", "who stand on", "at",          "in",         "on",         NULL};

/* ---- where they stand ---- */

/* Where somebody is said to stand: a spot, on one side or on both. */
struct area {
    enum spot spot;
    enum side side; /* SIDE_NONE: either */
};

static bool area_read(struct cursor *c, struct area *out)
{
    *out = (struct area){.side = SIDE_NONE};
    if (several_spot(c, &out->spot)) {
        return true;
    }
    const struct place *place = spot_here(c);
    if (!place || place->kind != PLACE_SPOT || place->backcourt ||
        (place->side != SIDE_NONE && place->side != SIDE_LEFT && place->side != SIDE_RIGHT)) {
        return false;
    }
    *out = (struct area){.spot = place->spot, .side = place->side};
    return true;
}

/* The numbers of those who stand there by the lines above; gives how many. */
static size_t standing(const struct cursor *line, const struct area *area, int numbers[])
{
    size_t count = 0;
    for (int number = 1; number <= line->players; number++) {
        struct who who = {.kind = WHO_PLAYER, .number = number};
        struct spot_stood at;
        if (above_stands(line, &who, &at) && at.spot == area->spot &&
            (area->side == SIDE_NONE || at.side == area->side)) {
            numbers[count++] = number;
        }
    }
    return count;
}

/* Somebody is sent to such a spot in front of `at`, in this line: who stands there then? */
static bool sent_before(const struct cursor *line, const struct token *at, const struct area *area)
{
    for (const struct token *seen = line->at; seen < at; seen++) {
        struct cursor spot = line_look(line, seen);
        struct area other;
        if (area_read(&spot, &other) && other.spot == area->spot && spot.at <= at) {
            return true;
        }
    }
    return false;
}

/* two, both: how many are said to be; 0: one, or as many as there are. */
static size_t take_count(struct cursor *c)
{
    static const char *const twos[] = {"both of", "both",      "two of", "two",
                                       "pair of", "other two", NULL};
    return take_among(c, twos) ? 2 : 0;
}

static bool plural(const struct token *noun)
{
    static const char *const without_s[] = {"men", "people", "pair", "duo", NULL};
    return token_is_among(noun, without_s) || ends_in_s(noun);
}

/* the two slot players, our elbow man; the two at the elbows, our man in the corner. */
static bool people_read(struct cursor *c, struct area *area, size_t *count)
{
    static const char *const ours[] = {"our", "your", "my", NULL};
    take_among(c, ours);
    *count = take_count(c);
    struct cursor first = *c;
    const struct token *noun = NULL;
    if (area_read(&first, area) && (noun = cursor_next(&first)) &&
        take_among(&first, people_words)) {
        *count = *count == 0 && !plural(noun) ? 1 : *count;
        c->at = first.at;
        return true;
    }
    noun = cursor_next(c);
    bool named = noun && (take_among(c, people_words) || take_among(c, man_words));
    *count = named && *count == 0 && !plural(noun) ? 1 : *count;
    return (named || *count == 2) && take_among(c, at_words) && area_read(c, area);
}

/* our big in the left post, the big man down low: the only one who stands inside, on that side. */
static const struct token *inside_man_put(const struct cursor *line, const struct token *at,
                                          struct recast *out)
{
    static const char *const bigs[] = {"big man",     "big guy", "big girl", "big",   "post man",
                                       "post player", "center",  "centre",   "pivot", NULL};
    static const char *const ours[] = {"our", "your", "my", NULL};
    static const struct entry wheres[] = {{"in left post", SIDE_LEFT},
                                          {"in left low post", SIDE_LEFT},
                                          {"inside on left", SIDE_LEFT},
                                          {"in right post", SIDE_RIGHT},
                                          {"in right low post", SIDE_RIGHT},
                                          {"inside on right", SIDE_RIGHT},
                                          {"in post", SIDE_NONE},
                                          {"down low", SIDE_NONE},
                                          {"inside", SIDE_NONE},
                                          {"down inside", SIDE_NONE},
                                          {"down there", SIDE_NONE},
                                          {NULL, 0}};
    static const enum spot inside[] = {SPOT_BLOCK, SPOT_LOW_POST, SPOT_MID_POST, SPOT_DUNKER};
    struct cursor trial = line_look(line, at);
    bool ours_said = take_among(&trial, ours), article = at == line->at || at[-1].filler;
    int side = (ours_said || article) && take_among(&trial, bigs) ? take_entry(&trial, wheres) : -1;
    int found = 0;
    for (size_t i = 0; side >= 0 && i < sizeof inside / sizeof *inside; i++) {
        enum { MOST = 12 };
        int numbers[MOST];
        struct area area = {.spot = inside[i], .side = (enum side)side};
        size_t count = standing(line, &area, numbers);
        if (count > 1 || (count == 1 && found)) {
            return NULL;
        }
        found = count == 1 ? numbers[0] : found;
    }
    if (!found) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_number(&here, out, found);
    out->as = str_format(line->arena, "%d", found);
    return trial.at;
}

/* the roller's man, the passer's spot: whose, by what he did above. */
static const struct token *owner_put(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    struct token name = *at;
    name.possessive = false; /* of which no list has the first letter */
    name.first = at->text.size > 0 ? at->text.at[0] : '\0';
    struct cursor one = look_between(line, &name, &name + 1);
    const struct person_row *row =
        at->possessive && at->kind == TOKEN_WORD ? take_person(&one) : NULL;
    struct who who;
    struct cursor here = line_look(line, at);
    bool did = row && (row->person == PERSON_SCREENER || row->person == PERSON_PASSER ||
                       row->person == PERSON_HOLDER || row->person == PERSON_THROWER);
    if (!did || !person_above(&here, row, &who) || who.kind != WHO_PLAYER) {
        return NULL;
    }
    recast_number(&here, out, who.number);
    out->tokens.at[out->tokens.count - 1].possessive = true;
    out->as = str_format(line->arena, "%d", who.number);
    return at + 1;
}

/* Their numbers, 2 and 3, in the place of what they are called. */
static const struct token *people_put(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    enum { MOST = 12 };
    struct cursor trial = line_look(line, at);
    struct area area;
    size_t said;
    int numbers[MOST];
    struct cursor called = trial; /* the point guard stands nowhere */
    bool digit = at->kind == TOKEN_NUMBER && at->text.at[0] <= '9';
    bool counted = at->kind != TOKEN_NUMBER || at == line->at || at[-1].filler; /* passes to two */
    const struct person_row *row = digit ? NULL : take_person(&called);
    if (digit || !counted || at->filler || (row && row->person == PERSON_PLAYER) ||
        !people_read(&trial, &area, &said) || sent_before(line, at, &area)) {
        return NULL;
    }
    size_t count = standing(line, &area, numbers);
    if (count == 0 || count > 2 || (said != 0 && count != said)) {
        return NULL;
    }
    struct cursor here = *line;
    here.at = at;
    for (size_t i = 0; i < count; i++) {
        if (i > 0) {
            recast_word(&here, out, "and");
        }
        recast_number(&here, out, numbers[i]);
    }
    return trial.at;
}

/* ---- who is named, and told of besides ---- */

/* Our best shooter in the left corner: nobody's number, nothing that is done; where it ends. */
static const struct token *told_of(const struct cursor *line, const struct token *at)
{
    static const char *const joints[] = {"and",   "then", "who", "when", "as",  "after", "while",
                                         "until", "but",  "so",  "if",   "not", "or",    NULL};
    enum { FAR = 9 };
    bool sort = false;
    const struct token *from = at;
    while (at < line->end && at->kind == TOKEN_WORD && at - from < FAR &&
           !token_is_among(at, joints)) {
        sort = sort || token_is_among(at, sort_words);
        at++;
    }
    return sort ? at : NULL;
}

/* A player's number or a defender, between two marks or where the line ends. */
static bool set_apart(const struct cursor *line, const struct token *who)
{
    return who < line->end && (attacker_at(who, line->end) || who->kind == TOKEN_DEFENDER) &&
           !who->possessive && (who + 1 == line->end || who[1].kind == TOKEN_MARK);
}

/* Where the numbers end that stand between two marks, 2 and 3; NULL: no such list. */
static const struct token *list_apart(const struct cursor *line, const struct token *who)
{
    size_t count;
    const struct token *end = who < line->end ? players_end(line, who, &count) : who;
    bool list = end > who && count > 1 && attacker_at(end - 1, line->end);
    return list && (end == line->end || end->kind == TOKEN_MARK) ? end : NULL;
}

/* our shooters, 2 and 3, stay: several by name, and their numbers. */
static const struct token *several_put(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const heads[] = {"our", "their", "two", "both", NULL};
    enum { FAR = 8 };
    bool article = at == line->at || at[-1].filler;
    const struct token *end = at;
    bool people = false;
    if ((!article && !token_is_among(at, heads)) || !clause_begins_at(line, at)) {
        return NULL;
    }
    while (end < line->end && end < at + FAR && !token_is_mark(end, ',')) {
        bool two = end < at + 2 && token_is_spelled(end) && end->number == 2; /* our two guards */
        struct cursor spot = line_look(line, end);
        enum spot several;
        people = people || token_is_among(end, people_words) || several_spot(&spot, &several);
        if ((end->kind != TOKEN_WORD && !two) || (verb_at(line, end) && !two && end > at + 3)) {
            return NULL;
        }
        end++;
    }
    const struct token *last =
        people && end < line->end && token_is_mark(end, ',') ? list_apart(line, end + 1) : NULL;
    if (!last) {
        return NULL;
    }
    recast_copy(line, out, end + 1, last);
    out->told = span_join(at->span, end[-1].span);
    return last < line->end && token_is_mark(last, ',') ? last + 1 : last;
}

/* the shooter in the corner, 4, lifts: only the number is kept. */
static const struct token *named_put(const struct cursor *line, const struct token *at,
                                     struct recast *out)
{
    static const char *const ours[] = {"our", "their", NULL};
    bool article = at == line->at || at[-1].filler;
    const struct token *end = article || token_is_among(at, ours) ? told_of(line, at) : NULL;
    if (!end || end == line->end || !token_is_mark(end, ',') || !set_apart(line, end + 1)) {
        return NULL;
    }
    recast_copy(line, out, end + 1, end + 2);
    out->told = span_join(at->span, end[-1].span);
    end += 2;
    return end < line->end && token_is_mark(end, ',') ? end + 1 : end;
}

/* 2, the screener, and x4, the bottom man of the zone, so that: the same behind it. */
static const struct token *called_put(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const heads[] = {"our", "their", "the", NULL};
    bool player = attacker_at(at, line->end) || (at->kind == TOKEN_DEFENDER && !at->possessive);
    if (!player || at + 3 >= line->end || !token_is_mark(at + 1, ',') ||
        !(at[2].filler || token_is_among(at + 2, heads))) {
        return NULL;
    }
    const struct token *end = told_of(line, at + 2);
    if (!end || (end < line->end && end->kind != TOKEN_MARK)) {
        return NULL;
    }
    recast_copy(line, out, at, at + 1);
    out->told = span_join(at[2].span, end[-1].span);
    bool verb = end + 1 < line->end && token_is_mark(end, ',') && verb_at(line, end + 1);
    return verb ? end + 1 : end;
}

/* ---- a screen inside a zone ---- */

/* the top of the zone, the middle man: whom it is set on, where nobody says whom. */
static bool take_part_of_zone(struct cursor *c)
{
    static const char *const parts[] = {
        "top",  "middle",    "bottom",     "back",     "front",       "wing",
        "side", "back line", "front line", "top line", "bottom line", "baseline",
        "low",  "high",      "center",     "inside",   "outside",     NULL};
    static const char *const zones[] = {"of zone", "of their zone", "of 2-3", NULL};
    if (take_words(c, "zone")) {
        return true;
    }
    if (!take_among(c, parts)) {
        return false;
    }
    bool said = take_among(c, sort_words) ||
                take_words(c, "part"); /* the top man, the top of the zone, or both */
    return take_among(c, zones) || said;
}

/* Who comes off the screen. */
struct user {
    int number;             /* 0: nobody is said to */
    const struct token *at; /* his number; behind `so that` what he is to do, else what joins it */
    bool can;               /* so that he can */
};

/* Behind the screen: so that 4 can, and 2, while 3. */
static struct user user_behind(const struct cursor *line, const struct token *at, int screener)
{
    static const char *const joints[] = {"and so", "and then", "and", "while", "then", NULL};
    static const char *const sos[] = {"so that", "so", NULL};
    static const char *const zones[] = {"in zone",       "inside zone", "of zone",
                                        "in their zone", "inside",      NULL};
    struct cursor trial = line_look(line, at);
    take_among(&trial, zones);
    struct user user = {.at = trial.at};
    bool mark = take_mark(&trial, ',') || take_mark(&trial, '.') || take_mark(&trial, ';');
    bool so = take_among(&trial, sos), joint = so || take_among(&trial, joints);
    const struct token *next = cursor_next(&trial);
    int number = (mark || joint) && next ? attacker_at(next, line->end) : 0;
    if (number == 0 || number == screener) {
        return user;
    }
    trial.at = next + 1;
    user.can = take_words(&trial, "can") && so;
    user.at = user.can ? trial.at : user.at;
    struct phrase phrase;
    skip_run_in(&trial);
    bool moves =
        phrase_read(&trial, FOR_ATTACKERS, &phrase) &&
        (verb_runs(phrase.verb) || verb_row(phrase.verb)->task == VERB_CARRY); /* dribbles off it */
    user.number = moves ? number : 0;
    return user;
}

/* pins the middle man: a seal, and no screen; pins in the zone, pins it for 3 are screens. */
static bool pins_man(const struct cursor *c)
{
    static const char *const pins[] = {"pins", "pin", "pinning", NULL};
    struct cursor trial = *c;
    return take_among(&trial, pins) && take_part_of_zone(&trial) && trial.at > c->at + 1 &&
           token_is_among(trial.at - 1, sort_words);
}

/* 5 screens x4, so that 4 can step out; 5 screens the top of the zone, and 2 cuts: for whom it is,
 * and on whom. */
static const struct token *inside_put(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    struct phrase phrase;
    struct somebody by;
    bool own;
    struct cursor trial = line_look(line, at);
    if (at == line->at || !above_zone(line) || pins_man(&trial) ||
        !phrase_read(&trial, FOR_ATTACKERS, &phrase) || phrase.verb != VERB_SCREENS ||
        trial.at == line->end || !clause_subject(line, clause_begin(line, at), &by, &own)) {
        return NULL;
    }
    take_words(&trial, "for");
    const struct token *on = cursor_next(&trial), *verb_end = trial.at;
    bool part = on && take_part_of_zone(&trial);
    const struct token *x = cursor_next(&trial);
    bool man = x && x->kind == TOKEN_DEFENDER && !x->possessive;
    trial.at = man ? x + 1 : trial.at;
    struct user user = user_behind(line, trial.at, by.who.number);
    if ((!man && !part) || user.number == 0) {
        return NULL;
    }
    struct cursor here = *line;
    here.at = at;
    recast_copy(line, out, at, verb_end);
    if (!token_is_word(verb_end - 1, "for")) {
        recast_word(&here, out, "for");
    }
    recast_number(&here, out, user.number);
    if (man) {
        recast_word(&here, out, "on");
        recast_copy(line, out, x, x + 1);
    } else {
        out->told = span_join(on->span, trial.at[-1].span);
    }
    if (user.can) {
        recast_mark(&here, out, ',');
        recast_number(&here, out, user.number);
    }
    return user.at;
}

const struct token *described_put(const struct cursor *line, const struct token *at,
                                  struct recast *out)
{
    static plain_way *const ways[] = {people_put, inside_man_put, owner_put,  several_put,
                                      named_put,  called_put,     inside_put, NULL};
    return first_put(ways, line, at, out);
}
