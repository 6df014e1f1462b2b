/* SPDX-License-Identifier: MIT */
/* who: a player, a defender, a role, the coach, the ball, or the spot where somebody stands. */
#include "language/words/people.h"

bool same_who(const struct who *a, const struct who *b)
{
    return a->kind == b->kind && a->kind != WHO_NONE && a->kind != WHO_SPOT &&
           a->number == b->number && str_equal(a->role, b->role);
}

const struct who *who_keep(struct cursor *c, struct who who)
{
    struct who *kept = arena_new(c->arena, struct who);
    *kept = who;
    return kept;
}

bool who_defends(const struct who *who)
{
    return who->kind == WHO_DEFENDER || who->kind == WHO_DEFENDER_OF;
}

bool who_is_one(const struct who *who)
{
    return who->kind == WHO_PLAYER || who->kind == WHO_ROLE;
}

static void check_number(struct cursor *c, const struct token *token, bool defender)
{
    int number = (int)token->number;
    if (number >= 1 && number <= c->players) {
        return;
    }
    const char *x = defender ? "x" : "";
    struct diag *diag = REFUSE(
        c, TEXT_PLAYER_RANGE, token->span, "there is no %s%d: %s has %s %s1 to %s%d", x, number,
        c->drill ? "a drill" : "a play", defender ? "defenders" : "players", x, x, c->players);
    if (defender) {
        diag_help(c->diags, diag, "write the defender's number: `x%d`", c->players);
    } else {
        diag_help(c->diags, diag, "write a player, 1 to %d; a distance needs its unit: `%d ft`",
                  c->players, number);
    }
}

static bool number_fits(const struct token *token)
{
    return token->integer && token->number >= 0 && token->number < 1000000;
}

static bool role_find(const struct cursor *c, struct str word, struct str *role)
{
    for (size_t i = 0; i < c->role_count; i++) {
        if (str_equal_fold(c->roles[i], word)) {
            *role = c->roles[i];
            return true;
        }
    }
    return false;
}

/* the roller's, the screener's: whoever that is by what stands above. */
static bool doer_owns(const struct cursor *c, const struct token *token, struct who *out)
{
    if (!c->speech || token->kind != TOKEN_WORD || token == c->at) {
        return false;
    }
    struct token said[2] = {token[-1], *token};
    struct cursor one = *c;
    said[1].possessive = false;
    one.watch = NULL;
    one.at = said;
    one.end = said + 2;
    return said[0].filler && above_doer_read(&one, out);
}

/* "3's", "passer's": the owner of a spot or of a defender. */
bool owner_read(struct cursor *c, struct who *out)
{
    const struct token *token = cursor_next(c);
    if (!token || !token->possessive) {
        return false;
    }
    *out = (struct who){.span = token->span};
    if (token->kind == TOKEN_NUMBER && number_fits(token)) {
        check_number(c, token, false);
        out->kind = WHO_PLAYER;
        out->number = (int)token->number;
    } else if (token->kind == TOKEN_WORD && role_find(c, token->text, &out->role)) {
        out->kind = WHO_ROLE;
    } else if (!doer_owns(c, token, out)) {
        return false;
    }
    cursor_take(c, token, token + 1);
    return true;
}

static bool defender_of_read(struct cursor *c, struct who *out)
{
    const struct token *from = c->at;
    struct cursor_mark mark = cursor_mark(c);
    struct who owner;
    if (!owner_read(c, &owner)) {
        return false;
    }
    if (!take_among(c, defender_words)) {
        cursor_back(c, mark);
        return false;
    }
    *out = (struct who){.kind = WHO_DEFENDER_OF,
                        .number = owner.number,
                        .role = owner.role,
                        .span = cursor_taken(c, from)};
    return true;
}

static bool numbered_read(struct cursor *c, const struct token *token, struct who *out)
{
    if (token->possessive || !number_fits(token)) {
        return false;
    }
    bool defender = token->kind == TOKEN_DEFENDER;
    check_number(c, token, defender);
    out->kind = defender ? WHO_DEFENDER : WHO_PLAYER;
    out->number = (int)token->number;
    cursor_take(c, token, token + 1);
    return true;
}

static bool ball_read(struct cursor *c)
{
    struct cursor trial = *c;
    if (!take_words(&trial, "the ball") || word_is(&trial, 0, "side")) {
        return false;
    }
    c->at = trial.at;
    return true;
}

static bool spot_who_read(struct cursor *c, struct who *out)
{
    const struct token *from = c->at;
    const struct place *place = spot_read(c, true);
    struct cursor post = *c;
    if (!place && c->speech && from < c->end && from->filler && take_words(&post, "post") &&
        (stop_is(&post) || mark_is(&post, ',') || word_is(&post, 0, "and") || clause_is(&post) ||
         word_is(&post, 0, "from"))) { /* feeds the post */
        c->at = post.at;
        place = place_new(c, (struct place){.kind = PLACE_SPOT, .spot = SPOT_LOW_POST}, from);
    }
    if (!place) {
        return false;
    }
    if (c->speech && place->kind == PLACE_SPOT) { /* the corner man */
        take_among(c, man_words);
    }
    *out = (struct who){.kind = WHO_SPOT, .place = place, .span = cursor_taken(c, from)};
    return true;
}

/* 2's girl overplays her, is in front of her: whom he guards, if no other word says so. */
static bool his_own_man(const struct cursor *c, struct who *out)
{
    static const char *const guards[] = {
        "overplays", "overplay", "overplaying", "denies",  "deny",  "denying",
        "fronts",    "front",    "fronting",    "trails",  "trail", "trailing",
        "guarding",  "guards",   "chases",      "chasing", NULL};
    const struct token *verb = c->at;
    while (verb > c->first && verb[-1].filler) {
        verb--;
    }
    return verb > c->first && token_is_among(verb - 1, guards) && above_guarded(c, c->doer, out);
}

/* passes to him, hits her: the only one it can be. */
bool him_read(struct cursor *c, struct who *out)
{
    struct cursor trial = *c;
    const struct token *next = cursor_next(c);
    struct who who;
    bool her = take_words(&trial, "her");
    if (!her && !take_words(&trial, "him")) {
        return false;
    }
    const struct token *behind = cursor_next(&trial);
    static const char *const goes_on[] = {
        "and",  "for",    "there",   "right there", "back",   "again",  "over there", "from",
        "out",  "off",    "with",    "so",          "coming", "going",  "cutting",    "rolling",
        "then", "inside", "quickly", "while",       "by",     "around", "over",       "under",
        "who",  "up",     "down",    "before",      "across", "early",  "late",       NULL};
    bool alone = !behind || behind->kind == TOKEN_MARK || word_among(&trial, place_words) ||
                 word_among(&trial, goes_on) || clause_is(&trial);
    bool defends = c->doer && who_defends(c->doer);
    bool known = (defends && his_own_man(c, &who)) || above_him(c, c->doer, &who) ||
                 (defends && above_holder(c, &who));
    if ((her && !alone) || !known) {
        return false;
    }
    *out = who;
    out->span = next->span;
    c->at = trial.at;
    return true;
}

bool person_read(struct cursor *c, struct who *out)
{
    skip_title(c);
    const struct token *token = cursor_next(c);
    *out = (struct who){.span = token ? token->span : SPAN_NONE};
    if (!token) {
        return false;
    }
    if (defender_of_read(c, out) || his_defender_read(c, out)) {
        return true;
    }
    if (token->kind == TOKEN_NUMBER || token->kind == TOKEN_DEFENDER) {
        return numbered_read(c, token, out);
    }
    bool named = word_is(c, 0, "player") || word_is(c, 0, "number");
    if (named && token + 1 < c->end && token[1].kind == TOKEN_NUMBER && !token[1].possessive &&
        number_fits(&token[1])) { /* player 3, number three */
        static const char *const words[] = {"player", "number", NULL};
        take_among(c, words);
        out->span = token[1].span;
        return numbered_read(c, token + 1, out);
    }
    if (token->kind != TOKEN_WORD || token->possessive) {
        return false;
    }
    if (zone_man_read(c, out)) { /* the top right defender */
        return true;
    }
    if (role_find(c, token->text, &out->role)) {
        out->kind = WHO_ROLE;
        cursor_take(c, token, token + 1);
        return true;
    }
    if (above_doer_read(c, out) || (c->speech && him_read(c, out))) {
        return true;
    }
    if (take_words(c, "coach")) {
        out->kind = WHO_COACH;
        return true;
    }
    if (ball_read(c)) {
        out->kind = WHO_BALL;
        out->span = cursor_taken(c, token);
        return true;
    }
    return false;
}

bool defender_read(struct cursor *c, struct who *out)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool found = person_read(&trial, out) && who_defends(out) && trial.refusals == mark.refusals;
    const struct token *end = trial.at;
    cursor_back(c, mark);
    c->at = found ? end : c->at;
    return found;
}

bool who_read(struct cursor *c, struct who *out)
{
    return person_read(c, out) || spot_who_read(c, out);
}
