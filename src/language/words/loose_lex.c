/* SPDX-License-Identifier: MIT */
/* loose_lex: the pieces of a clause, each the longest that a table knows: see loose_read.h. */
#include "language/words/loose_read.h"
#include "language/words/people.h"

#include <string.h>

static const struct loose_act acts[] = {
#define ACT(frame, verb, pass, screen, said)                                                       \
    {FRAME_##frame, VERB_##verb, PASS_##pass, SCREEN_##screen, said},
#include "language/words/loose_acts.def"
#undef ACT
};

static const struct {
    const char *words, *said;
} places[] = {
#define SAID_AT(words, said) {words, said},
#include "language/words/loose_places.def"
#undef SAID_AT
};

static const struct {
    enum item_kind kind;
    unsigned lead;
    const char *said;
} smalls[] = {
#define LEAD(lead, said) {ITEM_LEAD, lead, said},
#define SMALL(said) {ITEM_SMALL, 0, said},
#define THING(said) {ITEM_THING, 0, said},
#define LOST(said) {ITEM_LOST, 0, said},
#define CAUSE(said) {ITEM_CAUSE, 0, said},
#define REASON(said) {ITEM_REASON, 0, said},
#define HOPE(said) {ITEM_HOPE, 0, said},
#define FATAL(said) {ITEM_FATAL, 0, said},
#include "language/words/loose_small.def"
#undef LEAD
#undef SMALL
#undef THING
#undef LOST
#undef CAUSE
#undef REASON
#undef HOPE
#undef FATAL
};

/* ---- people ---- */

bool counts_at(const struct token *from, const struct token *at, const struct token *end)
{
    static const char counted[] =
        "step|dribble|time|cut|set|option|thing|of|beat|count|feet|foot|more|hard|quick|long|big|"
        "little"; /* each bent, too */
    if (at->kind != TOKEN_NUMBER || at->possessive || at == from || at + 1 >= end) {
        return false;
    }
    const struct token *before = at - 1;
    bool behind = said_at(before, at, "in|just|about|only|takes|after") ||
                  (before->kind == TOKEN_WORD &&
                   (act_begins(before, at, false) || act_begins(before, at, true)));
    return behind && said_at(at + 1, end, counted);
}

static struct who player(const struct token *at, int number)
{
    return (struct who){.kind = WHO_PLAYER, .number = number, .span = at->span};
}

static void put_who(const struct cursor *c, struct item *item, struct who who)
{
    struct recast r = {.to = NULL};
    struct cursor here = *c;
    here.at = item->from;
    item->who = who;
    if (who.kind == WHO_PLAYER) {
        recast_number(&here, &r, who.number);
    } else if (who.kind == WHO_EVERYONE_ELSE) {
        recast_word(&here, &r, "everyone-else");
    } else if (who.kind != WHO_NONE) {
        recast_copy(c, &r, item->from, item->to);
    }
    item->tokens = r.tokens;
}

/* Who acts where `him` stands, and is somebody else: named in front of it, else who acted last. */
static const struct who *acts_before(const struct cursor *c, const struct token *at,
                                     struct who *named)
{
    for (const struct token *who = c->at; who < at; who++) {
        if (token_is_player(who)) {
            *named = (struct who){.kind = who->kind == TOKEN_NUMBER ? WHO_PLAYER : WHO_DEFENDER,
                                  .number = (int)who->number,
                                  .span = who->span};
            return named;
        }
    }
    const struct sentence *last = sentence_before(c);
    return last && last->subject.count == 1 ? &last->subject.at[0] : NULL;
}

static bool him_of(const struct cursor *c, const struct token *at, struct who *out)
{
    struct cursor him = cursor_look(c);
    struct speech none = {NULL, 0};
    struct who named;
    him.doer = acts_before(c, at, &named);
    him.speech = him.speech ? him.speech : &none;
    him.at = at;
    return him_read(&him, out);
}

/* he, him, the big: who that is; false: nothing tells. */
static bool named_otherwise(const struct cursor *c, struct item *item)
{
    struct cursor trial = cursor_look(c);
    trial.at = item->from;
    const struct person_row *row = take_person(&trial);
    struct cursor here = cursor_look(c);
    struct who who = {.kind = WHO_NONE};
    here.at = item->from;
    bool known = row && (row->person == PERSON_ACTOR || /* loose_fill knows who goes on */
                         (row->person == PERSON_HIM ? him_of(c, item->from, &who)
                                                    : person_above(&here, row, &who)));
    if (known) {
        item->to = trial.at;
        put_who(c, item, who);
    }
    return known;
}

static bool person_said(const struct cursor *c, struct item *item)
{
    const struct token *at = item->from;
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct who who;
    trial.at = at;
    bool fine = person_read(&trial, &who) && trial.refusals == c->refusals && who.kind != WHO_BALL;
    const struct token *to = trial.at;
    cursor_back(&trial, mark);
    bool own = at->possessive && at->kind == TOKEN_NUMBER && at->integer; /* 4's screen */
    if (!fine && own && at->number >= 1 && at->number <= c->players) {
        who = player(at, (int)at->number);
        to = at + 1;
        fine = true;
    }
    if (fine) {
        item->to = to;
        put_who(c, item, who);
        return true;
    }
    return named_otherwise(c, item);
}

/* ---- places ---- */

static const struct {
    const char *said, *side;
} sides[] = {{"far|other|opp|opposing|far side|other side", "opposite"},
             {"opposite", "opposite"},
             {"near|nearest|closest|his|her|own|same side|near side|that|his own|her own", ""},
             {"weak side|weakside|back side|backside|help side", "weak-side"},
             {"ball side|ballside|strong side|strongside", "ball-side"},
             {"left|left side|left hand", "left"},
             {"right|right side|right hand", "right"}};

static const struct token *side_at(const struct token *at, const struct token *end,
                                   const char **side)
{
    const struct token *longest = NULL;
    for (size_t i = 0; i < sizeof sides / sizeof *sides; i++) {
        const struct token *to = said_at(at, end, sides[i].said);
        if (to && to < end && (!longest || to > longest)) {
            *side = sides[i].side;
            longest = to;
        }
    }
    return longest;
}

/* 4 ft above the corner, halfway between the wing and the top. */
static bool measured(const struct token *at, const struct token *end)
{
    bool feet = at->kind == TOKEN_NUMBER && at + 1 < end && said_at(at + 1, end, "ft|foot|feet");
    return feet || said_at(at, end, "halfway");
}

static const struct place *spot_full(struct cursor *c)
{
    const struct place *place = NULL;
    struct who who = {.kind = WHO_NONE};
    return place_or_who_read(c, 0, &place, &who) && place ? place : NULL;
}

/* A spot as the grammar knows it, or as loose_places.def has it. */
static const struct token *spot_said(const struct cursor *c, const struct token *at,
                                     token_list *out)
{
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct recast r = {.to = NULL};
    trial.at = at;
    const struct place *place = at < c->end ? spot_read(&trial, true) : NULL;
    if (!place && at < c->end && measured(at, c->end)) { /* 4 ft below the wing, halfway to */
        cursor_back(&trial, mark);
        trial.at = at;
        place = spot_full(&trial);
    }
    const struct token *to = place && trial.refusals == c->refusals ? trial.at : NULL;
    cursor_back(&trial, mark);
    enum spot spot;
    trial.at = at;
    if (!to && at < c->end && several_spot(&trial, &spot)) { /* the corners: each his own */
        to = trial.at;
    }
    if (to) {
        recast_copy(c, &r, at, to);
        *out = r.tokens;
    }
    for (size_t i = 0; at < c->end && i < sizeof places / sizeof *places; i++) {
        const struct token *said = said_at(at, c->end, places[i].said);
        if (said && (!to || said > to)) {
            struct recast other = {.to = NULL};
            struct cursor here = *c;
            here.at = at;
            recast_verb(&here, &other, str_of(places[i].words));
            *out = other.tokens;
            to = said;
        }
    }
    return to;
}

/* corner on the left, wing right side: the side behind the spot. */
static const struct token *side_behind(const struct cursor *c, const struct token *at,
                                       const char **side)
{
    const struct token *end = c->end;
    const struct token *on = said_at(at, end, "on|on the|to the");
    const struct token *from = on ? on : at;
    while (from < end && from->filler) {
        from++;
    }
    const struct token *left = from < end ? said_at(from, end, "left side|left") : NULL;
    const struct token *right = from < end ? said_at(from, end, "right side|right") : NULL;
    const struct token *to = left ? left : right;
    bool leads_on =
        to && to < end &&
        (said_at(to, end,
                 "to|at|back|away|off|down|up|in|into|there|now|wing|corner|elbow|block|slot"));
    token_list spot = {NULL, 0, 0};
    const struct token *farther = to ? spot_said(c, from, &spot) : NULL;
    leads_on = leads_on || (farther && farther > to); /* under the rim to the right short corner */
    *side = left ? "left" : "right";
    return leads_on ? NULL : to;
}

static bool place_said(const struct cursor *c, struct item *item)
{
    const struct token *at = item->from;
    const char *side = NULL;
    token_list spot = {NULL, 0, 0};
    const struct token *to = spot_said(c, at, &spot);
    const struct token *sided = side_at(at, c->end, &side);
    token_list behind = {NULL, 0, 0};
    const struct token *with_side = sided ? spot_said(c, sided, &behind) : NULL;
    struct recast r = {.to = NULL};
    struct cursor here = *c;
    here.at = at;
    if (with_side && (!to || with_side > to)) {
        if (side[0] != '\0') {
            recast_word(&here, &r, side);
        }
        recast_copy(c, &r, behind.at, behind.at + behind.count);
        to = with_side;
    } else if (to) {
        const struct token *after = to < c->end ? side_behind(c, to, &side) : NULL;
        if (after && spot.count == 1) {
            recast_word(&here, &r, side);
            to = after;
        }
        recast_copy(c, &r, spot.at, spot.at + spot.count);
    }
    item->to = to;
    item->tokens = r.tokens;
    return to != NULL;
}

/* ---- pieces ---- */

static void longer(struct item *best, struct item item, enum item_kind kind)
{
    item.kind = kind;
    if (item.to && (best->kind == ITEM_UNKNOWN || item.to > best->to)) {
        *best = item;
    }
}

static void act_said(const struct cursor *c, bool defends, struct item *best)
{
    for (size_t i = 0; i < sizeof acts / sizeof *acts; i++) {
        enum frame_kind frame = acts[i].frame;
        bool guards = (loose_frame(frame)->flags & F_DEFENDS) != 0;
        if (guards != defends &&
            !(defends && (frame == FRAME_STAND || frame == FRAME_STAY || frame == FRAME_IDLE))) {
            continue;
        }
        struct item item = {.from = best->from, .act = &acts[i]};
        item.to = said_at(best->from, c->end, acts[i].said);
        longer(best, item, ITEM_ACT);
    }
}

bool act_begins(const struct token *at, const struct token *end, bool defends)
{
    for (size_t i = 0; i < sizeof acts / sizeof *acts; i++) {
        bool guards = (loose_frame(acts[i].frame)->flags & F_DEFENDS) != 0;
        if (guards == defends && acts[i].frame != FRAME_LIGHT && said_at(at, end, acts[i].said)) {
            return true;
        }
    }
    return false;
}

bool action_told(const struct cursor *c, const struct token *from, const struct token *to)
{
    static const char *const pronouns[] = {"he", "she", "they", "you", NULL};
    struct cursor_mark mark = cursor_mark(c);
    bool told = false;
    for (const struct token *at = from; at < to && !told; at++) {
        struct cursor trial = cursor_look(c);
        struct who who;
        trial.at = at;
        bool somebody = !at->filler && !at->possessive &&
                        (take_among(&trial, pronouns) || person_read(&trial, &who));
        told =
            somebody && trial.at < to && (verb_begins(&trial) || act_begins(trial.at, to, false));
        cursor_back(&trial, mark);
    }
    return told;
}

/* Why somebody does it, up to the end of the clause: nobody is named there, or it is a cause in
 * which nobody does anything. */
static bool why_said(const struct cursor *c, const struct token *from, enum item_kind kind)
{
    if (token_is_word(from, "before")) { /* before feeding the post: that is done, too */
        const struct token *next = past_fillers(from + 1, c->end);
        bool tells = false;
        for (const struct token *at = next; at < c->end; at++) {
            tells = tells || said_at(at, c->end, "can|could|is|are|has|have|shift|recover|react");
        }
        if (!tells || ends_in_ing(next)) {
            return false;
        }
    }
    for (const struct token *at = from; at < c->end && kind == ITEM_REASON; at++) {
        if (at->kind == TOKEN_NUMBER || at->kind == TOKEN_DEFENDER) {
            return false;
        }
    }
    return kind == ITEM_REASON || !action_told(c, from, c->end);
}

/* Small words of this kind at `best->from`. */
static void small_said(const struct cursor *c, enum item_kind kind, struct item *best)
{
    for (size_t i = 0; i < sizeof smalls / sizeof *smalls; i++) {
        if (smalls[i].kind != kind) {
            continue;
        }
        struct item item = {.from = best->from, .lead = smalls[i].lead};
        item.to = said_at(best->from, c->end, smalls[i].said);
        bool why = kind == ITEM_CAUSE || kind == ITEM_REASON;
        if (item.to && (!why || why_said(c, item.from, kind))) {
            longer(best, item, kind);
        }
    }
}

/* two steps: how far is left to him; of what else is counted nothing can be drawn. */
static struct item counted(const struct token *at, const struct token *end)
{
    const struct token *behind = token_is_spelled(at) ? said_at(at + 1, end, "step|dribble") : NULL;
    bool steps = behind && !said_at(behind, end, "toward|towards"); /* how far */
    return (struct item){
        .kind = steps ? ITEM_SMALL : ITEM_FATAL, .from = at, .to = at + (steps ? 2 : 1)};
}

/* off 5's shoulder, by his own hip: 5, or nobody new. */
static bool body_said(const struct cursor *c, const struct token *at, struct item *item)
{
    static const char which[] = "high|low|top|bottom|upper|lower|inside|outside|left|right|back|"
                                "front|near|far|baseline|weak|strong|ball";
    static const char bodies[] = "shoulder|hip|back|butt|side|body|hand|tail|heels|outside|inside";
    static const char own[] =
        "shoulder|hip|back|butt|side|body|tail|heels|man|defender|guy|girl|check|lane|lanes|way|"
        "own side|own sides|sides|feet|foot|knees|arms|elbows|eyes|head|chest|numbers|dribble|"
        "own man|own girl|own guy|own dribble|outside shoulder|inside shoulder|outside foot|inside "
        "foot|pivot foot|side of floor|side of court|time|breath|balance|momentum|shot|rhythm|"
        "left shoulder|right shoulder|own shoulder|own defender|speed|pace|angle|tracks|stance";
    bool numbers = at->possessive && at->kind == TOKEN_NUMBER && at->integer;
    const struct token *to = NULL;
    const struct token *side = numbers ? said_at(at + 1, c->end, which) : NULL;
    if (numbers && at + 1 < c->end &&
        ((side && (to = said_at(side, c->end, bodies))) ||
         (to = said_at(at + 1, c->end, bodies)))) {
        item->kind = ITEM_WHO;
        item->to = to;
        put_who(c, item, player(at, (int)at->number));
        return true;
    }
    if (at + 1 < c->end && said_at(at, at + 1, "his|her|their") == at + 1 &&
        (to = said_at(at + 1, c->end, own))) {
        item->kind = ITEM_SMALL;
        item->to = to;
    }
    return to != NULL;
}

/* The longest piece at `at`; of two as long, what stands first here. */
/* runs the left sideline: along it, and where that ends is not said. */
static bool line_run(const struct cursor *c, const struct token *at)
{
    const struct token *behind = said_at(at, c->end, "left sideline|right sideline|sideline");
    bool led = at > c->at &&
               said_at(at - 1, at, "to|at|on|from|near|by|along|of|off|down|up|toward|towards");
    return behind && at > c->at && !led && said_at(behind, c->end, "to|into") != behind + 1;
}

static struct item item_at(const struct cursor *c, const struct token *at, bool defends, bool led)
{
    struct item best = {.kind = ITEM_UNKNOWN, .from = at, .to = at + 1};
    if (at->kind == TOKEN_MARK || at->kind == TOKEN_QUOTED) {
        return best;
    }
    bool anothers = defends && at > c->at && at[-1].kind == TOKEN_NUMBER && !at[-1].possessive &&
                    act_begins(at, c->end, false) && !act_begins(at, c->end, true);
    if (anothers) { /* x3 overplays 3 back cuts */
        best.kind = ITEM_FATAL;
        return best;
    }
    small_said(c, ITEM_FATAL, &best);
    small_said(c, ITEM_CAUSE, &best);
    small_said(c, ITEM_REASON, &best);
    small_said(c, ITEM_HOPE, &best);
    if (best.kind == ITEM_HOPE) {
        best.kind = why_said(c, at, ITEM_REASON) ? ITEM_REASON : ITEM_FATAL;
    }
    struct item item = {.from = at};
    if (measured(at, c->end) && place_said(c, &item)) {
        item.kind = ITEM_PLACE;
        return item;
    }
    item = (struct item){.from = at};
    if (counts_at(c->at, at, c->end)) {
        return counted(at, c->end);
    }
    if (person_said(c, &item)) {
        longer(&best, item, ITEM_WHO);
    }
    item = (struct item){.from = at};
    if (body_said(c, at, &item)) {
        longer(&best, item, item.kind);
    }
    if (line_run(c, at)) {
        best.kind = ITEM_FATAL;
        return best;
    }
    item = (struct item){.from = at};
    bool place = place_said(c, &item);
    if (place && led) { /* into the post */
        longer(&best, item, ITEM_PLACE);
    }
    act_said(c, defends, &best);
    if (place) {
        longer(&best, item, ITEM_PLACE);
    }
    small_said(c, ITEM_LEAD, &best);
    small_said(c, ITEM_SMALL, &best);
    small_said(c, ITEM_THING, &best);
    item = (struct item){.from = at, .to = said_at(at, c->end, "left|right")};
    longer(&best, item, ITEM_SIDE);
    small_said(c, ITEM_LOST, &best);
    return best;
}

static bool defenders_clause(const struct cursor *c)
{
    for (const struct token *at = c->at; at < c->end; at++) {
        if (at->kind == TOKEN_DEFENDER) {
            return true;
        }
        if (at->kind == TOKEN_NUMBER && !at->possessive) {
            return false;
        }
    }
    return false;
}

bool items_after(const struct cursor *c, const struct sentence *last, struct items *out)
{
    const struct token *first = past_fillers(c->at, c->end);
    bool goes_on = last && last->subject.count > 0 && who_defends(&last->subject.at[0]) &&
                   first < c->end && first->kind == TOKEN_WORD && /* and gets back to 4 */
                   (ends_in_s(first) || ends_in_ing(first));
    bool defends = goes_on || defenders_clause(c);
    out->count = 0;
    for (const struct token *at = past_fillers(c->at, c->end); at < c->end;) {
        const struct item *before = out->count > 0 ? &out->at[out->count - 1] : NULL;
        bool led = before && before->kind == ITEM_LEAD && (before->lead & (L_TO | L_FROM));
        struct item item = item_at(c, at, defends, led);
        if (out->count == ITEMS_MOST) {
            return false;
        }
        if (item.kind == ITEM_REASON || item.kind == ITEM_CAUSE) {
            item.to = c->end;
        }
        out->at[out->count++] = item;
        at = past_fillers(item.to, c->end);
    }
    return true;
}

bool items_find(const struct cursor *c, struct items *out)
{
    return items_after(c, NULL, out);
}
