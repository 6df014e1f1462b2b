/* SPDX-License-Identifier: MIT */
/* place: spots and everything that is counted from them. */
#include <string.h>

#include "base/limits.h"
#include "language/words/grammar.h"

static const struct place *place_new(struct cursor *c, struct place place, const struct token *from)
{
    struct place *kept = arena_new(c->arena, struct place);
    *kept = place;
    kept->span = cursor_taken(c, from);
    return kept;
}

static const struct place *half(struct cursor *c, struct cursor_mark mark, const char *message,
                                const char *help)
{
    struct span span = cursor_span(c);
    cursor_back(c, mark);
    diag_help(c->diags, REFUSE(c, TEXT_PLACE_HALF, span, "%s", message), "%s", help);
    return NULL;
}

static void drills_only(struct cursor *c, const struct token *from)
{
    if (c->drill) {
        return;
    }
    struct span span = cursor_taken(c, from);
    diag_help(c->diags,
              REFUSE(c, TEXT_DRILL_ONLY, span, "`%.*s` stands in drills only",
                     STR_ARG(cursor_text(c, span))),
              "open it with `drill`, or name a spot: `left corner`, `beside 3`");
}

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
        drills_only(c, from);
        return place_new(c, (struct place){.kind = PLACE_CONE, .cone = 0}, from);
    }
    return half(c, mark, "which cone? Cones have letters, in the order of the start line",
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
    drills_only(c, from);
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
        return half(c, mark, "the next spot which way?",
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

const struct place *spot_read(struct cursor *c, bool quiet)
{
    struct cursor_mark mark = cursor_mark(c);
    const struct place *place = cone_read(c, quiet);
    if (!place) {
        place = next_read(c, quiet);
    }
    if (place || c->refusals != mark.refusals) {
        return place;
    }
    bool backcourt = take_words(c, "backcourt");
    take_open(c);
    int side = take_entry(c, side_entries);
    int spot = take_spot(c);
    spot = spot < 0 && side >= 0 ? side_spot_read(c) : spot;
    spot = spot < 0 && side < 0 ? short_side(c, &side) : spot;
    spot = spot < 0 && side < 0 ? run_together(c, &side) : spot;
    int plural = spot < 0 && side < 0 && !backcourt ? plural_read(c) : -1;
    spot = plural >= 0 ? plural : spot;
    if (spot >= 0) {
        behind_spot(c, &side);
        if (spot_takes_side((enum spot)spot)) {
            side_behind(c, &side);
        }
        return sided(c, mark,
                     (struct place){.kind = PLACE_SPOT,
                                    .spot = (enum spot)spot,
                                    .side = side < 0 ? SIDE_NONE : (enum side)side,
                                    .each = plural >= 0,
                                    .backcourt = backcourt},
                     quiet);
    }
    if (side >= 0 && !backcourt && (place = side_read(c, side, mark.at))) {
        return place;
    }
    if ((side >= 0 || backcourt) && !quiet) {
        return no_spot(c, mark, backcourt);
    }
    cursor_back(c, mark);
    return NULL;
}

/* A place inside another; NULL: reported. */
static const struct place *inner(struct cursor *c, int depth, struct cursor_mark mark,
                                 const char *message, const char *help)
{
    size_t before = c->refusals;
    const struct place *place = place_read(c, depth + 1);
    if (!place && c->refusals == before) {
        return half(c, mark, message, help);
    }
    if (!place) {
        c->at = mark.at;
    }
    return place;
}

static const struct place *between_read(struct cursor *c, int depth)
{
    struct cursor_mark mark = cursor_mark(c);
    static const char help[] = "write `halfway between top and left wing`";
    if (!take_words(c, "halfway between")) {
        return NULL;
    }
    struct place place = {.kind = PLACE_HALFWAY, .fraction = 0.5};
    place.a = inner(c, depth, mark, "halfway between which place and which?", help);
    if (!place.a) {
        return NULL;
    }
    if (!take_words(c, "and")) {
        return half(c, mark, "`halfway between` takes two places with `and` in between", help);
    }
    place.b = inner(c, depth, mark, "halfway between that and which other place?", help);
    return place.b ? place_new(c, place, mark.at) : NULL;
}

static const struct place *fraction_read(struct cursor *c, int depth)
{
    struct cursor_mark mark = cursor_mark(c);
    static const char help[] = "write `a third of the way from top to left wing`";
    int twelfths = take_entry(c, fraction_entries);
    if (twelfths < 0) {
        return NULL;
    }
    struct place place = {.kind = PLACE_FRACTION, .fraction = twelfths / 12.0};
    place.a = inner(c, depth, mark, "from which place?", help);
    if (!place.a) {
        return NULL;
    }
    if (!take_words(c, "to")) {
        return half(c, mark, "from there to which place? `to` is missing", help);
    }
    place.b = inner(c, depth, mark, "from there to which place?", help);
    return place.b ? place_new(c, place, mark.at) : NULL;
}

bool place_or_who_read(struct cursor *c, int depth, const struct place **place, struct who *who)
{
    struct cursor_mark mark = cursor_mark(c);
    *who = (struct who){.kind = WHO_NONE};
    *place = place_read(c, depth);
    if (*place || c->refusals != mark.refusals) {
        return *place != NULL;
    }
    return person_read(c, who);
}

static const struct place *offset_read(struct cursor *c, int depth)
{
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_OFFSET};
    if (!take_measure(c, false, &place.length)) {
        return NULL;
    }
    int direction = take_entry(c, direction_entries);
    if (direction < 0) {
        cursor_back(c, mark);
        return NULL;
    }
    place.direction = (enum direction)direction;
    size_t before = c->refusals;
    if (place_or_who_read(c, depth + 1, &place.a, &place.who)) {
        return place_new(c, place, mark.at);
    }
    if (c->refusals != before) {
        c->at = mark.at;
        return NULL;
    }
    return half(c, mark, "a distance from where?",
                "write `3 ft above left corner` or `4 ft above 5`");
}

static bool coordinate_read(struct cursor *c, double *out)
{
    const struct token *at = c->at;
    bool minus = at < c->end && at->kind == TOKEN_MARK && at->mark == '-';
    at += minus;
    if (at >= c->end || at->kind != TOKEN_NUMBER || at->possessive) {
        return false;
    }
    *out = minus ? -at->number : at->number;
    cursor_take(c, c->at, at + 1);
    return true;
}

static const struct place *xy_read(struct cursor *c, int depth)
{
    (void)depth;
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_XY};
    if (!take_mark(c, '(')) {
        return NULL;
    }
    bool whole = coordinate_read(c, &place.x) && take_mark(c, ',') && coordinate_read(c, &place.y);
    if (!whole || !take_mark(c, ')')) {
        return half(c, mark, "in brackets stand two numbers with a comma in between",
                    "write `(12, -3)`: to the right of the ring, and toward half court");
    }
    return place_new(c, place, mark.at);
}

static const struct place *owned_read(struct cursor *c, int depth)
{
    (void)depth;
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_SPOT_OF};
    if (!owner_read(c, &place.who)) {
        return NULL;
    }
    static const char *const words[] = {"old spot", "spot", "place", "position", NULL};
    if (!take_among(c, words)) {
        cursor_back(c, mark);
        return NULL;
    }
    return place_new(c, place, mark.at);
}

/* the spot that 2 left, the spot vacated by 2. */
static const struct place *left_read(struct cursor *c, int depth)
{
    (void)depth;
    static const char *const by[] = {"spot vacated by", "spot left by", "spot of", NULL};
    static const char *const whose[] = {"spot that", "spot where", "spot", NULL};
    static const char *const gone[] = {"left",       "just left", "vacated", "has left",
                                       "leaves",     "vacates",   "was in",  "was at",
                                       "started in", "was",       NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_SPOT_OF};
    bool passive = take_among(&trial, by);
    bool named = !passive && take_among(&trial, whose);
    bool spot = !passive && !named && c->speech && take_spot(&trial) >= 0; /* the corner 5 left */
    bool found = (passive || named || spot) && person_read(&trial, &place.who) &&
                 place.who.kind == WHO_PLAYER && (passive || take_among(&trial, gone));
    if (!found) {
        cursor_back(c, mark);
        return NULL;
    }
    c->at = trial.at;
    c->refusals = trial.refusals;
    return place_new(c, place, mark.at);
}

static const struct place *where_read(struct cursor *c, int depth)
{
    (void)depth;
    struct cursor_mark mark = cursor_mark(c);
    struct place place = {.kind = PLACE_WHERE};
    if (!take_words(c, "where")) {
        return NULL;
    }
    static const char *const gone[] = {"was", "started", "left", NULL};
    bool somebody = person_read(c, &place.who);
    if (somebody && take_among(c, gone)) { /* where 2 was is the spot of 2 */
        place.kind = PLACE_SPOT_OF;
    } else if (!somebody || !take_words(c, "is")) {
        return half(c, mark, "where who is?", "write `where 3 is`");
    }
    return place_new(c, place, mark.at);
}

static const struct place *beside_read(struct cursor *c, int depth)
{
    (void)depth;
    struct cursor_mark mark = cursor_mark(c);
    bool beside = take_words(c, "beside") || take_words(c, "next to");
    struct place place = {.kind = beside ? PLACE_BESIDE : PLACE_BEHIND};
    if (!beside && !take_words(c, "behind")) {
        return NULL;
    }
    if (!person_read(c, &place.who)) {
        return half(c, mark, beside ? "beside whom?" : "behind whom?",
                    beside ? "write `beside 3`" : "write `behind 1`");
    }
    if (!beside) {
        drills_only(c, mark.at);
    }
    return place_new(c, place, mark.at);
}

static const struct place *line_end_read(struct cursor *c, int depth)
{
    (void)depth;
    const struct token *from = c->at;
    static const char *const words[] = {
        "end of the line",  "back of the line",   "end of his line",
        "end of her line",  "end of their line",  "back of his line",
        "back of her line", "back of their line", NULL};
    bool taken = false;
    for (const char *const *word = words; *word && !taken; word++) {
        taken = take_words(c, *word);
    }
    if (!taken) {
        return NULL;
    }
    drills_only(c, from);
    return place_new(c, (struct place){.kind = PLACE_END_OF_LINE}, from);
}

static const struct place *out_read(struct cursor *c, int depth)
{
    struct cursor_mark mark = cursor_mark(c);
    static const char help[] = "write `out of bounds at left hash`";
    if (!take_words(c, "out of bounds")) {
        return NULL;
    }
    static const char *const unders[] = {"under basket",   "under the hoop",        "under the rim",
                                         "underneath",     "underneath the basket", "on baseline",
                                         "on the endline", "at the endline",        "baseline",
                                         "endline",        "on the end line",       NULL};
    struct place place = {.kind = PLACE_OUT};
    const struct token *under = c->at;
    if (take_among(c, unders)) { /* under the basket: on the baseline */
        struct place line = {.kind = PLACE_SPOT, .spot = SPOT_BASELINE};
        place.a = place_new(c, line, under);
        return place_new(c, place, mark.at);
    }
    static const char *const ats[] = {"at", "on", NULL};
    if (!take_among(c, ats)) {
        return half(c, mark, "out of bounds at which place?", help);
    }
    place.a = inner(c, depth, mark, "out of bounds at which place?", help);
    return place.a ? place_new(c, place, mark.at) : NULL;
}

static const struct place *any_read(struct cursor *c, int depth)
{
    static const struct place *(*const readers[])(struct cursor *, int) = {
        nearby_read, offset_read, between_read, fraction_read, xy_read,  owned_read,
        left_read,   where_read,  beside_read,  line_end_read, out_read,
    };
    size_t before = c->refusals;
    for (size_t i = 0; i < sizeof readers / sizeof *readers; i++) {
        const struct place *place = readers[i](c, depth);
        if (place || c->refusals != before) {
            return place;
        }
    }
    return spot_read(c, false);
}

/* A place of more than one part begins here. */
static bool starts_place(const struct cursor *c)
{
    static const char *const words[] = {"halfway", "third",  "two",    "quarter", "three", "one",
                                        "where",   "beside", "behind", "end",     "out",   NULL};
    const struct token *next = cursor_next(c);
    bool length = next && next->kind == TOKEN_MEASURE;
    return length || mark_is(c, '(') || word_among(c, words) || (next && next->possessive);
}

bool place_starts(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    bool found = spot_read(&trial, true) || starts_place(&trial);
    cursor_back(&trial, mark);
    return found;
}

const struct place *place_read(struct cursor *c, int depth)
{
    if (depth <= LIMIT_PLACE_DEPTH - 1) {
        return any_read(c, depth);
    }
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool place = spot_read(&trial, true) || starts_place(&trial);
    cursor_back(c, mark);
    if (place) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_PLACE_DEEP, cursor_span(c),
                         "places stand at most %d deep in one another", LIMIT_PLACE_DEPTH),
                  "name a nearer spot: `3 ft above left corner`");
    }
    return NULL;
}
