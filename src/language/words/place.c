/* SPDX-License-Identifier: MIT */
/* place: everything that is counted from spots and from players; a spot itself is read by spot.c.
 */
#include "base/limits.h"
#include "language/words/grammar.h"

const struct place *place_keep(struct arena *arena, struct place place)
{
    struct place *kept = arena_new(arena, struct place);
    *kept = place;
    return kept;
}

const struct place *place_by(struct arena *arena, enum place_kind kind, struct who who)
{
    return place_keep(arena, (struct place){.kind = kind, .who = who, .span = who.span});
}

const struct place *place_new(struct cursor *c, struct place place, const struct token *from)
{
    place.span = cursor_taken(c, from);
    return place_keep(c->arena, place);
}

const struct place *place_sided(struct cursor *c, const struct place *place, enum side side)
{
    struct place *kept = arena_new(c->arena, struct place);
    *kept = *place;
    kept->side = side;
    return kept;
}

const struct place *place_half(struct cursor *c, struct cursor_mark mark, const char *message,
                               const char *help)
{
    struct span span = cursor_span(c);
    cursor_back(c, mark);
    diag_help(c->diags, REFUSE(c, TEXT_PLACE_HALF, span, "%s", message), "%s", help);
    return NULL;
}

void place_of_drills(struct cursor *c, const struct token *from)
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

/* A place inside another; NULL: reported. */
static const struct place *inner(struct cursor *c, int depth, struct cursor_mark mark,
                                 const char *message, const char *help)
{
    size_t before = c->refusals;
    const struct place *place = place_read(c, depth + 1);
    if (!place && c->refusals == before) {
        return place_half(c, mark, message, help);
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
        return place_half(c, mark, "`halfway between` takes two places with `and` in between",
                          help);
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
        return place_half(c, mark, "from there to which place? `to` is missing", help);
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
    return place_half(c, mark, "a distance from where?",
                      "write `3 ft above left corner` or `4 ft above 5`");
}

static bool coordinate_read(struct cursor *c, double *out)
{
    const struct token *at = c->at;
    bool minus = at < c->end && token_is_mark(at, '-');
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
        return place_half(c, mark, "in brackets stand two numbers with a comma in between",
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
    static const char *const gone[] = {"was before",  "was standing", "was",   "started from",
                                       "started out", "started",      "left",  "began",
                                       "came from",   "set up",       "stood", NULL};
    bool himself = c->speech && c->doer && take_among(c, he_or_she);
    bool somebody = himself || person_read(c, &place.who);
    if (himself) {
        place.who = *c->doer;
    }
    if (somebody && take_among(c, gone)) { /* where 2 was is the spot of 2 */
        place.kind = PLACE_SPOT_OF;
    } else if (!somebody || !take_words(c, "is")) {
        return place_half(c, mark, "where who is?", "write `where 3 is`");
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
        const char *behind = c->drill ? "write `behind 1`"
                                      : "name the place, or `beside 5`; who stays where he is: `1 "
                                        "stays`, then `1 shoots`";
        return place_half(c, mark, beside ? "beside whom?" : "behind whom?",
                          beside ? "write `beside 3`" : behind);
    }
    if (!beside) {
        place_of_drills(c, mark.at);
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
    place_of_drills(c, from);
    return place_new(c, (struct place){.kind = PLACE_END_OF_LINE}, from);
}

/* the right baseline, left sideline: where on that line a ball is put in as a rule. */
static const struct place *line_side_read(struct cursor *c, bool at)
{
    static const struct entry lines[] = {{"baseline", SPOT_SHORT_CORNER},
                                         {"endline", SPOT_SHORT_CORNER},
                                         {"side baseline", SPOT_SHORT_CORNER},
                                         {"sideline", SPOT_HASH},
                                         {NULL, 0}};
    struct cursor trial = *c;
    int side = take_entry(&trial, side_entries);
    int spot = take_entry(&trial, lines);
    if (side < 0 || spot < 0 || (at && spot == SPOT_HASH)) { /* at right sideline is a spot */
        return NULL;
    }
    const struct token *from = past_fillers(c->at, c->end);
    struct place place = {.kind = PLACE_SPOT, .spot = (enum spot)spot, .side = (enum side)side};
    c->at = trial.at;
    struct span span = cursor_taken(c, from);
    struct str words = cursor_text(c, (struct span){span.source, from->span.begin, from->span.end});
    const char *taken = entry_words(spot_entries, spot);
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_SPOT_TAKEN, span,
                                 "where on that line is not written: level with %.*s %s was taken",
                                 STR_ARG(words), taken);
    diag_help(c->diags, diag, "name the spot: `out of bounds at %.*s %s`", STR_ARG(words), taken);
    return place_new(c, place, from);
}

static bool spot_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    bool is = spot_read(&trial, true) != NULL;
    cursor_back(&trial, mark);
    return is;
}

static const struct place *out_read(struct cursor *c, int depth)
{
    struct cursor_mark mark = cursor_mark(c);
    static const char help[] = "write `out of bounds at left hash`";
    if (!take_words(c, "out of bounds")) {
        return NULL;
    }
    static const char *const unders[] = {
        "under basket",   "under the hoop", "under the rim", "underneath", "on baseline",
        "on the endline", "at the endline", "baseline",      "endline",    NULL};
    struct place place = {.kind = PLACE_OUT};
    const struct token *under = c->at;
    if (take_among(c, unders)) { /* under the basket: on the baseline */
        struct place line = {.kind = PLACE_SPOT, .spot = SPOT_BASELINE};
        place.a = place_new(c, line, under);
        return place_new(c, place, mark.at);
    }
    static const char *const ats[] = {"at", "on", NULL};
    bool at = take_among(c, ats);
    place.a = line_side_read(c, at);
    if (place.a) {
        return place_new(c, place, mark.at);
    }
    if (!at && !spot_is(c)) {
        return place_half(c, mark, "out of bounds at which place?", help);
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
