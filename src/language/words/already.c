/* SPDX-License-Identifier: MIT */
/* already: what a dictated line tells and is so already, or tells once more behind it: `five has it
 * up top and`, `with the ball on the wing`, `4 and 5 they cross so 4 goes to the left block and 5
 * to the right`. Left out by what stands above, told by a note; where it is not so, nothing is.
 * Ways of plain.c. */
#include "language/words/people.h"
#include "language/words/put_plain.h"

/* has it, is taking it out of bounds: behind whoever has the ball. */
static const struct token *has_ball(const struct cursor *line, const struct token *at)
{
    static const char *const words[] = {"has it",
                                        "has ball",
                                        "has got it",
                                        "has got ball",
                                        "got it",
                                        "got ball",
                                        "is holding it",
                                        "is holding ball",
                                        "starts with it",
                                        "starts with ball",
                                        "is taking it out",
                                        "is taking ball out",
                                        "is throwing it in",
                                        "is inbounding",
                                        "is inbounder",
                                        "inbounder",
                                        "is the one inbounding",
                                        "taking it out",
                                        "taking ball out",
                                        "throwing it in",
                                        "inbounding",
                                        "is ball handler",
                                        "is bringing it up",
                                        "is passer in",
                                        "is out of bounds",
                                        "is out of line",
                                        "is out",
                                        NULL};
    static const char *const tails[] = {
        "up top",      "out top",         "out of bounds", "under basket",  "out there",
        "out of line", "on the sideline", "on baseline",   "down low",      "down there",
        "inside",      "in his hands",    "in her hands",  "first",         "to start",
        "on side",     "on sideline",     "on left side",  "on right side", "on top",
        "out front",   "side out",        "up there",      "over there",    NULL};
    struct cursor trial = line_look(line, at);
    if (!take_among(&trial, words)) {
        return NULL;
    }
    while (take_among(&trial, tails)) {
    }
    spot_behind(&trial, place_words);
    return trial.at;
}

/* The place is a spot, and he stands there. */
static bool stood_at(const struct spot_stood *stood, const struct place *place)
{
    return place && place->kind == PLACE_SPOT && stood->spot == place->spot &&
           (place->side == SIDE_NONE || place->side == stood->side);
}

/* 2's in the corner with it: where he stands, and that he has the ball. */
static const struct token *with_it(const struct cursor *line, const struct token *at,
                                   const struct who *who)
{
    static const char *const withs[] = {"with it", "with ball", "has it", NULL};
    struct cursor trial = line_look(line, at);
    struct spot_stood stood;
    const struct place *place = spot_behind(&trial, place_words);
    bool there = place && above_stands(line, who, &stood) && stood_at(&stood, place);
    return there && take_among(&trial, withs) ? trial.at : NULL;
}

/* The number of the attacker at `at`, five or, where what is so follows, five's; 0: none there. */
static int attacker_own_at(const struct token *at)
{
    struct token plain = *at;
    plain.possessive = false;
    return attacker_at(&plain, &plain + 1);
}

/* is on the left block: where he stands by the lines above. */
static const struct token *stands_there(const struct cursor *line, const struct token *at,
                                        const struct who *who)
{
    static const char *const words[] = {"is",         "is standing", "starts", "is waiting",
                                        "is sitting", "stands",      NULL};
    struct cursor trial = line_look(line, at);
    struct spot_stood stood;
    if (!take_among(&trial, words)) {
        return NULL;
    }
    const struct place *place = spot_behind(&trial, place_words);
    bool there = place && above_stands(line, who, &stood) && stood_at(&stood, place);
    return there ? trial.at : NULL;
}

/* and, so, a mark, with sounds between. */
static const struct token *past_joints(const struct cursor *line, const struct token *at)
{
    at = past_sounds(at, line->end);
    while (at < line->end &&
           (at->kind == TOKEN_MARK || token_is_word(at, "and") || token_is_word(at, "so"))) {
        at = past_sounds(at + 1, line->end);
    }
    return at;
}

/* five has it up top and he dribbles: so it is already; he is 5. */
static const struct token *is_so_already(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    struct who who = {.kind = WHO_PLAYER, .number = attacker_own_at(at)};
    struct who holder;
    bool owns = at->possessive; /* five's got it */
    if (who.number == 0 || past_joints(line, line->at) != at) {
        return NULL;
    }
    const struct token *end = NULL;
    if (above_holder(line, &holder) && same_who(&holder, &who)) {
        end = has_ball(line, at + 1);
        end = end || !owns ? end : with_it(line, at + 1, &who);
    }
    end = end || owns ? end : stands_there(line, at + 1, &who);
    if (!end || end == line->end) {
        return NULL;
    }
    const struct token *next = past_joints(line, end);
    if (next == line->end) {
        return NULL;
    }
    out->told = span_join(at->span, end[-1].span);
    if (token_is_word(next, "he") || token_is_word(next, "she") || verb_at(line, next)) {
        struct cursor here = line_look(line, at);
        recast_number(&here, out, who.number);
        next += token_is_among(next, subject_pronouns);
    }
    return next;
}

/* with the ball on the wing, with the ball in the post: where he stands who has it. */
static const struct token *ball_there(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const leads[] = {"with ball", "with ball now", "now that ball is",
                                        "when ball is", NULL};
    static const char *const posts[] = {"in post", "at post", "inside", "in low post", NULL};
    struct cursor trial = line_look(line, at);
    struct spot_stood stood;
    struct who holder;
    if (at != line->at || !take_among(&trial, leads) || !above_holder(line, &holder) ||
        !above_stands(line, &holder, &stood)) {
        return NULL;
    }
    bool post =
        take_among(&trial, posts) && (stood.spot == SPOT_BLOCK || stood.spot == SPOT_LOW_POST ||
                                      stood.spot == SPOT_MID_POST || stood.spot == SPOT_HIGH_POST);
    const struct place *place = post ? NULL : spot_behind(&trial, place_words);
    bool there = post || stood_at(&stood, place);
    const struct token *end = trial.at;
    take_mark(&trial, ',');
    if (!there || trial.at == line->end) {
        return NULL;
    }
    out->told = span_join(at->span, end[-1].span);
    return trial.at;
}

/* 4 and 5 they cross, so 4 goes to the left block and 5 to the right: told again, one by one. */
static const struct token *trade_told(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const trades[] = {"cross",
                                         "switch",
                                         "trade",
                                         "swap",
                                         "exchange",
                                         "change",
                                         "switch spots",
                                         "switch places",
                                         "trade spots",
                                         "trade places",
                                         "swap spots",
                                         "swap places",
                                         "change places",
                                         "change spots",
                                         "change sides",
                                         "switch sides",
                                         NULL};
    static const char *const wheres[] = {"in lane", "in paint", "underneath", "under basket", NULL};
    size_t count;
    const struct token *two = players_end(line, at, &count);
    struct cursor trial = line_look(line, past_sounds(two, line->end));
    take_words(&trial, "they");
    if (count != 2 || !clause_begins_at(line, at) || !take_among(&trial, trades)) {
        return NULL;
    }
    take_among(&trial, wheres);
    const struct token *end = trial.at;
    bool joined = take_mark(&trial, ',') || take_mark(&trial, ':');
    joined = take_words(&trial, "so") || joined;
    trial.at = past_sounds(trial.at, line->end);
    int first = attacker_at(at, line->end), second = attacker_at(two - 1, line->end);
    int next = joined && trial.at < line->end ? attacker_own_at(trial.at) : 0;
    int other = next == first ? second : next == second ? first : 0;
    bool both = false;
    for (const struct token *more = trial.at + 1; other && more < line->end; more++) {
        both = both || (more->kind == TOKEN_NUMBER && (int)more->number == other);
    }
    if (!both) {
        return NULL;
    }
    out->told = span_join(at->span, end[-1].span);
    return trial.at;
}

/* 3 and 2 do a pin-down so 2 goes down and screens: told step by step behind it. */
static const struct token *told_in_steps(const struct cursor *line, const struct token *at,
                                         struct recast *out)
{
    static const char *const does[] = {"do",   "run",       "play",           "just do", "just run",
                                       "have", "just pass", "pass it around", NULL};
    enum { FAR = 9 };
    size_t count;
    const struct token *two = players_end(line, at, &count);
    struct cursor trial = line_look(line, past_sounds(two, line->end));
    if (count < 2 || !clause_begins_at(line, at) || !take_among(&trial, does)) {
        return NULL;
    }
    for (const struct token *word = trial.at; word < line->end && word < trial.at + FAR; word++) {
        const struct token *next = word + 1;
        if (word->kind == TOKEN_MARK || word->kind == TOKEN_NUMBER || token_is_word(word, "for")) {
            return NULL;
        }
        bool one = token_is_word(word, "so") && attacker_at(next, line->end);
        for (const struct token *named = at; one && named < two; named++) {
            if (attacker_at(named, line->end) == attacker_at(next, line->end)) {
                out->told = span_join(at->span, word[-1].span);
                return next;
            }
        }
    }
    return NULL;
}

/* one's in the right corner: goes there. */
static const struct token *is_there(const struct cursor *line, const struct token *at,
                                    struct recast *out)
{
    struct cursor trial = line_look(line, at + 1);
    bool number = at->kind == TOKEN_NUMBER && at->possessive;
    if (!number || !clause_begins_at(line, at) || !spot_behind(&trial, place_words) ||
        !(trial.at == line->end || clause_ends(trial.at))) {
        return NULL;
    }
    struct cursor here = line_look(line, at);
    recast_number(&here, out, (int)at->number);
    recast_word(&here, out, "goes");
    recast_word(&here, out, "to");
    return at + 2;
}

const struct token *already_put(const struct cursor *line, const struct token *at,
                                struct recast *out)
{
    static plain_way *const ways[] = {is_so_already, ball_there, trade_told,
                                      told_in_steps, is_there,   NULL};
    return first_put(ways, line, at, out);
}
