/* SPDX-License-Identifier: MIT */
/* spot: a place that has a name: a spot and its side, a side alone, the next spot, a cone. */
#include <string.h>

#include "language/words/grammar.h"

/* How many cones the drill sets out. */
static size_t cones_above(const struct cursor *c)
{
    size_t cones = 0;
    for (size_t i = 0; c->top && i < c->top->forms.count; i++) {
        const struct form *form = &c->top->forms.at[i];
        bool start = form->kind == FORM_SETTING && form->setting->setting == SETTING_START;
        for (size_t k = 0; start && k < form->setting->placings.count; k++) {
            cones += form->setting->placings.at[k].kind == PLACING_CONE;
        }
    }
    return cones;
}

/* "the cone" where there is one, or no letter behind it. */
static const struct place *only_cone_read(struct cursor *c, bool quiet)
{
    static const char *const words[] = {"cone", "cones", NULL};
    const struct token *from = c->at;
    struct cursor_mark mark = cursor_mark(c);
    bool one = word_is(c, 0, "cone") && cones_above(c) == 1;
    if (!take_among(c, words)) {
        return NULL;
    }
    if (one) {
        return place_new(c, (struct place){.kind = PLACE_CONE, .cone = 0}, from);
    }
    if (quiet) {
        cursor_back(c, mark);
        return NULL;
    }
    if (!c->drill) {
        place_of_drills(c, from);
        return place_new(c, (struct place){.kind = PLACE_CONE, .cone = 0}, from);
    }
    return place_half(c, mark, "which cone? Cones have letters, in the order of the start line",
                      "write the letter: `cone A`");
}

static const struct place *cone_read(struct cursor *c, bool quiet)
{
    const struct token *from = c->at;
    struct cursor trial = *c;
    if (!take_words(&trial, "cone")) {
        return only_cone_read(c, quiet);
    }
    /* The letter itself, not the next token that counts: cone A is no article. */
    const struct token *letter = trial.at;
    if (letter >= c->end || letter->kind != TOKEN_WORD || letter->text.size != 1 ||
        letter->text.at[0] < 'a' || letter->text.at[0] > 'z') {
        return only_cone_read(c, quiet);
    }
    cursor_take(c, letter, letter + 1);
    place_of_drills(c, from);
    return place_new(c, (struct place){.kind = PLACE_CONE, .cone = letter->text.at[0] - 'a'}, from);
}

static const struct place *next_read(struct cursor *c, bool quiet)
{
    const struct token *from = c->at;
    struct cursor_mark mark = cursor_mark(c);
    if (!take_words(c, "next spot")) {
        return NULL;
    }
    int way = take_entry(c, way_entries);
    if (way < 0) {
        if (quiet) {
            cursor_back(c, mark);
            return NULL;
        }
        return place_half(c, mark, "the next spot which way?",
                          "write `the next spot left`, `right`, `up` or `down`");
    }
    return place_new(c, (struct place){.kind = PLACE_NEXT, .way = (enum way)way}, from);
}

/* "right side", "the ball side", "the opposite side" without a spot behind; of the floor, if said.
 */
static const struct place *side_read(struct cursor *c, int side, const struct token *from)
{
    static const char *const floors[] = {"of the floor", "of the court", NULL};
    bool whole = side == SIDE_BALL || side == SIDE_WEAK;
    if (!whole && !take_words(c, "side")) {
        return NULL;
    }
    take_among(c, floors);
    return place_new(c, (struct place){.kind = PLACE_SIDE, .side = (enum side)side}, from);
}

/* over to the right side to the wing, to the left, to the corner: a side, and the spot on it. */
static const struct place *side_then_spot(struct cursor *c, int side, const struct token *from)
{
    struct cursor trial = *c;
    bool the = c->at - c->first > 1 && str_is(c->at[-2].text, "the"); /* right at the elbow */
    bool named = side == SIDE_BALL || side == SIDE_WEAK || take_words(&trial, "side");
    bool comma = take_mark(&trial, ',');
    if (!c->speech || (!named && (comma || !the)) || !take_among(&trial, place_words)) {
        return NULL;
    }
    int again = take_entry(&trial, side_entries);
    int spot = take_spot(&trial);
    bool ends = part_ends(&trial) || clause_is(&trial);
    if ((again >= 0 && again != side) || spot < 0 || !spot_takes_side((enum spot)spot) ||
        (comma && !ends)) {
        return NULL;
    }
    c->at = trial.at;
    struct place place = {.kind = PLACE_SPOT, .spot = (enum spot)spot, .side = (enum side)side};
    return place_new(c, place, from);
}

/* A side or `backcourt` is there, and no spot behind it. */
static const struct place *no_spot(struct cursor *c, struct cursor_mark mark, bool backcourt)
{
    const char *near = entry_nearest(c, spot_entries);
    struct span next = cursor_span(c), begun = cursor_taken(c, mark.at);
    struct str words = cursor_text(c, begun);
    const struct token *token = cursor_next(c);
    static const char *const joints[] = {"and", "then", "off", "for", "when", "as", NULL};
    bool word =
        token && token->kind == TOKEN_WORD && !word_among(c, place_words) && !word_among(c, joints);
    cursor_back(c, mark);
    if (word) {
        struct span both = span_join(begun, next);
        struct diag *diag = REFUSE(c, TEXT_PLACE_UNKNOWN, both, "there is no spot `%.*s`",
                                   STR_ARG(cursor_text(c, both)));
        diag_help(c->diags, diag, near ? "did you mean `%.*s %s`?" : "name a spot: `%.*s %s`",
                  STR_ARG(words),
                  near        ? near
                  : backcourt ? "left elbow"
                              : "wing");
        return NULL;
    }
    diag_help(c->diags, REFUSE(c, TEXT_PLACE_HALF, begun, "`%.*s` what?", STR_ARG(words)),
              "name the spot: `%.*s %s`", STR_ARG(words), backcourt ? "left elbow" : "wing");
    return NULL;
}

/* backcourt left, and no spot behind it: where the two guards of a press break stand. */
static const struct place *backcourt_side(struct cursor *c, int side, const struct token *from,
                                          bool quiet)
{
    const struct token *next = cursor_next(c);
    if ((side != SIDE_LEFT && side != SIDE_RIGHT) || (next && next->kind != TOKEN_MARK)) {
        return NULL;
    }
    struct place place = {
        .kind = PLACE_SPOT, .spot = SPOT_ELBOW, .side = (enum side)side, .backcourt = true};
    const struct place *kept = place_new(c, place, from);
    if (!quiet) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_SPOT_TAKEN, kept->span,
                                     "no spot is written: the %s elbow there was taken",
                                     side == SIDE_LEFT ? "left" : "right");
        diag_help(c->diags, diag, "name the spot: `backcourt %s elbow`, `backcourt %s wing`",
                  side == SIDE_LEFT ? "left" : "right", side == SIDE_LEFT ? "left" : "right");
    }
    return kept;
}

static const struct place *sided(struct cursor *c, struct cursor_mark mark, struct place place,
                                 bool quiet)
{
    if (place.side == SIDE_NONE || spot_takes_side(place.spot)) {
        return place_new(c, place, mark.at);
    }
    struct span span = cursor_taken(c, mark.at);
    const char *spot = entry_words(spot_entries, (int)place.spot);
    cursor_back(c, mark);
    if (!quiet) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_PLACE_UNKNOWN, span,
                         "there is only one %s: it has no left and right", spot),
                  "write `%s`", spot);
    }
    return NULL;
}

/* LW, rc: a side and a spot by their first letters. */
static int initials(struct cursor *c, struct str word, int *side)
{
    static const struct {
        char letter;
        enum spot spot;
    } spots[] = {{'w', SPOT_WING}, {'c', SPOT_CORNER}, {'e', SPOT_ELBOW}, {'b', SPOT_BLOCK}};
    if (word.size != 2 || (word.at[0] != 'l' && word.at[0] != 'r')) {
        return -1;
    }
    for (size_t i = 0; i < sizeof spots / sizeof *spots; i++) {
        if (spots[i].letter == word.at[1]) {
            *side = word.at[0] == 'l' ? SIDE_LEFT : SIDE_RIGHT;
            cursor_take(c, cursor_next(c), cursor_next(c) + 1);
            return (int)spots[i].spot;
        }
    }
    return -1;
}

/* leftwing: a side and its spot in one word. */
static int run_together(struct cursor *c, int *side)
{
    static const char *const sides[] = {"left", "right", NULL};
    const struct token *next = cursor_next(c);
    bool plain = next && next->kind == TOKEN_WORD && !next->possessive;
    struct str word = plain ? next->text : (struct str){"", 0};
    int initial = initials(c, word, side);
    if (initial >= 0) {
        return initial;
    }
    for (size_t i = 0; sides[i]; i++) {
        struct str name = str_of(sides[i]);
        if (!str_starts(word, sides[i]) || word.size == name.size) {
            continue;
        }
        for (const struct entry *entry = spot_entries; entry->words; entry++) {
            char both[WORDS_MOST], squeezed[WORDS_MOST];
            struct str spot = words_squeeze(str_of(entry->words), squeezed);
            if (name.size + spot.size >= WORDS_MOST) {
                continue;
            }
            memcpy(both, name.at, name.size);
            memcpy(both + name.size, spot.at, spot.size);
            if (take_str(c, (struct str){both, name.size + spot.size})) {
                *side = i == 0 ? SIDE_LEFT : SIDE_RIGHT;
                return entry->value;
            }
        }
    }
    return -1;
}

/* left side block: the `side` before a spot adds nothing. */
static int side_spot_read(struct cursor *c)
{
    struct cursor trial = *c;
    int spot = take_words(&trial, "side") ? take_spot(&trial) : -1;
    if (spot >= 0) {
        c->at = trial.at;
    }
    return spot;
}

/* the corners, the elbows: of several players each has the one on the own side. */
static int plural_read(struct cursor *c)
{
    for (const struct entry *entry = spot_entries; c->several && entry->words; entry++) {
        struct strbuf plural;
        if (!spot_needs_side((enum spot)entry->value) ||
            !may_open(cursor_opening(c), entry->words)) {
            continue;
        }
        strbuf_init(&plural, c->arena);
        strbuf_print(&plural, "%ss", entry->words);
        if (take_str(c, strbuf_str(&plural))) {
            return entry->value;
        }
    }
    return -1;
}

/* the right sideline at half court. */
static bool take_half(struct cursor *c)
{
    struct cursor trial = *c;
    if (!take_words(&trial, "at") || take_spot(&trial) != SPOT_HALF_COURT) {
        return false;
    }
    c->at = trial.at;
    return true;
}

/* Behind a spot: `area` and `spot` add nothing; `on the left side` is its side. */
static void behind_spot(struct cursor *c, int *side)
{
    static const char *const nothing[] = {"area", "spot", NULL};
    static const char *const floors[] = {"of the floor", "of the court", "of the lane", NULL};
    take_among(c, nothing);
    struct cursor trial = *c;
    int behind = take_words(&trial, "on") ? take_entry(&trial, side_entries) : -1;
    if (*side >= 0 || behind < 0 || take_spot(&trial) >= 0) {
        return;
    }
    take_words(&trial, "side");
    take_among(&trial, floors);
    *side = behind;
    c->at = trial.at;
}

/* the corner left, the foul line extended right side, the deep corner, right. */
static void side_behind(struct cursor *c, int *side)
{
    static const char *const own[] = {
        "on his side",     "on her side", "on same side", "on near side", "on his own side",
        "on her own side", NULL};
    static const struct entry far[] = {{"on far side", SIDE_OPPOSITE},
                                       {"on other side", SIDE_OPPOSITE},
                                       {"on opposite side", SIDE_OPPOSITE},
                                       {"on backside", SIDE_WEAK},
                                       {"far side", SIDE_OPPOSITE},
                                       {"other side", SIDE_OPPOSITE},
                                       {NULL, 0}};
    struct cursor trial = *c;
    if (!c->speech || *side >= 0 || take_among(c, own)) {
        return;
    }
    int behind = take_entry(&trial, far);
    if (behind < 0) {
        take_mark(&trial, ',');
        behind = take_entry(&trial, side_entries);
        bool whole = take_words(&trial, "side");
        bool ends = cursor_done(&trial) || cursor_next(&trial)->kind == TOKEN_MARK ||
                    word_is(&trial, 0, "and") || word_is(&trial, 0, "then");
        behind = whole || ends ? behind : -1;
    }
    if (behind >= 0) {
        *side = behind;
        c->at = trial.at;
    }
}

/* the left corner in the backcourt. */
static bool backcourt_behind(struct cursor *c)
{
    static const char *const words[] = {"in backcourt", "in the back court", "of backcourt", NULL};
    return c->speech && take_among(c, words);
}

/* the far corner, the strong block, the near wing: a side before a spot, in short. */
static int short_side(struct cursor *c, int *side)
{
    static const struct entry sides[] = {
        {"far", SIDE_OPPOSITE},   {"far side", SIDE_OPPOSITE}, {"strong", SIDE_BALL},
        {"weak", SIDE_WEAK},      {"backside", SIDE_WEAK},     {"near", SIDE_NONE},
        {"near side", SIDE_NONE}, {"same side", SIDE_NONE},    {"same", SIDE_NONE},
        {"away side", SIDE_WEAK}, {"off side", SIDE_WEAK},     {NULL, 0}};
    struct cursor trial = *c;
    int said = c->speech ? take_entry(&trial, sides) : -1;
    int spot = said >= 0 ? take_spot(&trial) : -1;
    if (spot < 0 || !spot_takes_side((enum spot)spot)) {
        return -1;
    }
    *side = said == SIDE_NONE ? -1 : said;
    c->at = trial.at;
    return spot;
}

/* the open corner on the left: open or not, where the side is said. */
static void take_open(struct cursor *c)
{
    static const char *const words[] = {"open", "empty", "vacant", NULL};
    struct cursor trial = *c;
    int side = -1;
    if (!c->speech || !take_among(&trial, words)) {
        return;
    }
    struct cursor spot = trial;
    take_entry(&spot, side_entries);
    bool sided = spot.at > trial.at;
    if (take_spot(&spot) < 0) {
        return;
    }
    struct cursor on = spot;
    take_words(&on, "on");
    side = take_entry(&on, side_entries);
    c->at = sided || side >= 0 ? trial.at : c->at;
}

/* in the middle: where somebody is, and not which way he goes. */
static bool stands_in(const struct cursor *c)
{
    const struct token *before = c->at;
    while (c->first && before > c->first && before[-1].filler) {
        before--;
    }
    return c->first && before > c->first && str_is(before[-1].text, "in");
}

/* the middle, the gut of the zone, the gap: of a zone the hole behind its first line, which is the
 * nail; in the middle of half a floor is that, too. */
static const struct place *hole_read(struct cursor *c, bool quiet)
{
    static const char *const holes[] = {"middle", "gut",       "gap",  "gaps", "soft spot",
                                        "heart",  "open area", "hole", "seam", NULL};
    static const char *const whose[] = {"of zone",    "of defense",    "in zone",
                                        "in defense", "between lines", NULL};
    struct cursor trial = *c;
    const struct token *from = past_fillers(c->at, c->end);
    static const char *const floors[] = {"of floor", "of court", NULL};
    bool middle = word_is(&trial, 0, "middle") && stands_in(c);
    if (!c->speech || !take_among(&trial, holes)) {
        return NULL;
    }
    middle = middle && !above_full_floor(c);
    bool zone = (middle && take_among(&trial, floors)) || take_among(&trial, whose) || middle ||
                (above_zone(c) && !above_full_floor(c));
    bool ends = part_ends(&trial) || clause_is(&trial);
    if (!zone || !ends) {
        return NULL;
    }
    c->at = trial.at;
    struct place place = {.kind = PLACE_SPOT, .spot = SPOT_NAIL};
    const struct place *kept = place_new(c, place, from);
    if (!quiet) {
        struct diag *diag =
            diag_add(c->diags, DIAG_TEXT_SPOT_TAKEN, kept->span, "`%.*s` was taken as the nail",
                     STR_ARG(cursor_text(c, kept->span)));
        diag_help(c->diags, diag, "name the spot to have another: `right high post`, `the lane`");
    }
    return kept;
}

/* at 45 degrees: the wing, as seen from the rim. */
static const struct place *degrees_read(struct cursor *c)
{
    const struct token *next = cursor_next(c), *from = c->at;
    if (!c->speech || !next || next->kind != TOKEN_MEASURE || next->unit != UNIT_DEGREES ||
        (int)next->number != 45) {
        return NULL;
    }
    cursor_take(c, next, next + 1);
    return place_new(c, (struct place){.kind = PLACE_SPOT, .spot = SPOT_WING}, from);
}

const struct place *spot_read(struct cursor *c, bool quiet)
{
    struct cursor_mark mark = cursor_mark(c);
    const struct place *place = cone_read(c, quiet);
    if (!place) {
        place = next_read(c, quiet);
    }
    if (!place) {
        place = hole_read(c, quiet);
    }
    if (!place) {
        place = degrees_read(c);
    }
    if (place || c->refusals != mark.refusals) {
        return place;
    }
    bool backcourt = take_words(c, "backcourt");
    take_open(c);
    int side = take_entry(c, side_entries);
    struct cursor far = *c;
    if (side >= 0 && !backcourt && take_words(&far, "backcourt") && take_spot(&far) >= 0) {
        backcourt = take_words(c, "backcourt"); /* ball side backcourt corner */
    }
    int spot = take_spot(c);
    spot = spot < 0 && side >= 0 ? side_spot_read(c) : spot;
    spot = spot < 0 && side < 0 ? short_side(c, &side) : spot;
    spot = spot < 0 && side < 0 ? run_together(c, &side) : spot;
    if (spot == SPOT_SIDELINE && side >= 0 && !backcourt && take_half(c)) {
        spot = SPOT_HALF_COURT;
    }
    int plural = spot < 0 && side < 0 && !backcourt ? plural_read(c) : -1;
    spot = plural >= 0 ? plural : spot;
    if (spot >= 0) {
        behind_spot(c, &side);
        if (spot_takes_side((enum spot)spot)) {
            side_behind(c, &side);
        }
        backcourt = backcourt || backcourt_behind(c);
        return sided(c, mark,
                     (struct place){.kind = PLACE_SPOT,
                                    .spot = (enum spot)spot,
                                    .side = side < 0 ? SIDE_NONE : (enum side)side,
                                    .each = plural >= 0,
                                    .backcourt = backcourt},
                     quiet);
    }
    if (side >= 0 && !backcourt &&
        ((place = side_then_spot(c, side, mark.at)) || (place = side_read(c, side, mark.at)))) {
        return place;
    }
    if (backcourt && side >= 0 && (place = backcourt_side(c, side, mark.at, quiet))) {
        return place;
    }
    if ((side >= 0 || backcourt) && !quiet) {
        return no_spot(c, mark, backcourt);
    }
    cursor_back(c, mark);
    return NULL;
}

const struct place *spot_here(struct cursor *c)
{
    struct cursor_mark mark = cursor_mark(c);
    const struct place *place = spot_read(c, true);
    const struct token *end = c->at;
    cursor_back(c, mark);
    c->at = place ? end : c->at;
    return place;
}

const struct place *spot_behind(struct cursor *c, const char *const *leads)
{
    struct cursor trial = *c;
    const struct place *place = take_among(&trial, leads) ? spot_here(&trial) : NULL;
    c->at = place ? trial.at : c->at;
    return place;
}
