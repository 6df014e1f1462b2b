/* SPDX-License-Identifier: MIT */
/* apart: what becomes of a sentence that has just been read among those before it in its chain: how
 * long somebody stays is a sentence of its own, a shot told twice is one, what a clause in front
 * says is not of everybody behind it, and who runs to where he catches runs first. */
#include "language/words/speech.h"

#include <string.h>

/* scores, lays it in: what comes of the shot that was told before it. */
static bool comes_of_shot(const struct cursor *c, const struct sentence *s)
{
    static const char *const outcomes[] = {"score", "finish", "make", "made", "knock", "bur",
                                           "drain", "sink",   "lay",  "dunk", "hit",   "put",
                                           "can",   "nail",   "bank", NULL};
    struct str said = cursor_text(c, s->verb_span);
    for (const char *const *outcome = outcomes; *outcome; outcome++) {
        if (str_starts(said, *outcome)) {
            return true;
        }
    }
    return false;
}

/* pulls up at the elbow and shoots it, goes up strong and scores: once. */
bool shot_already(const struct cursor *c, const sentence_list *out, const struct sentence *s)
{
    const struct sentence *last = out->count > 0 ? &out->at[out->count - 1] : NULL;
    if (!last || s->verb != VERB_SHOOTS || last->verb != VERB_SHOOTS ||
        !same_who(&last->subject.at[0], &s->subject.at[0])) {
        return false;
    }
    bool pulled_up = out->count > 1 && last->verb_span.begin == last[-1].verb_span.begin;
    return pulled_up || comes_of_shot(c, s);
}

/* The elbow, the block, the nail, the rim: a drive ends there. */
static bool inside_spot(const struct place *place)
{
    static const enum spot inner[] = {SPOT_RIM,  SPOT_FRONT_OF_RIM, SPOT_LANE,
                                      SPOT_NAIL, SPOT_ELBOW,        SPOT_BLOCK};
    for (size_t i = 0; place->kind == PLACE_SPOT && i < sizeof inner / sizeof *inner; i++) {
        if (place->spot == inner[i]) {
            return true;
        }
    }
    return false;
}

bool drive_ends(const struct cursor *c, sentence_list *out)
{
    size_t last = out->count - 1;
    last -= last > 1 && out->at[last].verb == VERB_SHOOTS; /* and pulls up at the elbow */
    struct sentence *end = &out->at[last], *drive = end - 1;
    bool carries = end->verb == VERB_GOES || end->verb == VERB_DRIBBLES || end->verb == VERB_DRIVES;
    bool whole = !drive->place && !drive->until && drive->object.kind == WHO_NONE &&
                 drive->path == PATH_NONE;
    if (drive->verb != VERB_DRIVES || !carries || !whole || !end->place ||
        end->tie.word != TIE_NONE || end->tie.then ||
        !same_who(&drive->subject.at[0], &end->subject.at[0]) ||
        (str_starts(cursor_text(c, drive->verb_span), "driv") && !inside_spot(end->place))) {
        return false;
    }
    drive->place = end->place;
    drive->span = span_join(drive->span, end->span);
    drive->until = end->until;
    memmove(end, end + 1, (out->count - last - 1) * sizeof *end);
    out->count--;
    return true;
}

static const struct tie free_tie = {.word = TIE_NONE};

/* 5 flashes while 1 dribbles, and 1 passes: whoever does something meanwhile does the next thing
 * behind it. */
static void meanwhile_once(const sentence_list *out, size_t first, struct sentence *s)
{
    bool again = false;
    for (size_t i = first; i + 1 < out->count; i++) {
        again = again || (out->at[i].tie.meanwhile && acts_in(&out->at[i], &s->subject.at[0]));
    }
    if (s->tie.meanwhile && s->tie.word == TIE_NONE && again) {
        s->tie = free_tie;
    }
}

/* 3 comes off a screen by 4 as 1 dribbles: what is to be at one time is the screen, and 3 waits for
 * that. */
static void screen_waits(sentence_list *out, size_t first, struct sentence *s)
{
    bool beside = (s->tie.word == TIE_AS || s->tie.word == TIE_WHILE) && s->tie.event &&
                  s->tie.event->kind == EVENT_VERB && verb_row(s->verb)->task == VERB_USE &&
                  !acts_in(s, &s->tie.event->subject);
    for (size_t i = first; beside && i + 1 < out->count; i++) {
        struct sentence *screen = &out->at[i];
        if (verb_row(screen->verb)->task == VERB_SCREEN && acts_in(screen, &s->object) &&
            screen->tie.word == TIE_NONE && !acts_in(screen, &s->tie.event->subject)) {
            screen->tie = s->tie;
            s->tie = free_tie;
            return;
        }
    }
}

/* when x4 helps 1 passes to 4 and 4 shoots: not when x4 helps, but when he has it. */
static bool gets_it_first(const sentence_list *out, size_t first, const struct sentence *s)
{
    if (s->tie.word == TIE_NONE || s->subject.count != 1 || !verb_needs_ball(s->verb)) {
        return false;
    }
    for (size_t i = first; i + 1 < out->count; i++) {
        const struct sentence *pass = &out->at[i];
        enum verb_task task = verb_row(pass->verb)->task;
        if ((task == VERB_PASS || task == VERB_EXCHANGE) && pass->tie.event == s->tie.event &&
            same_who(&pass->object, &s->subject.at[0])) {
            return true;
        }
    }
    return false;
}

static bool goes_or_carries(const struct sentence *s)
{
    enum verb_task task = verb_row(s->verb)->task;
    return task == VERB_MOVE || task == VERB_CARRY || task == VERB_USE;
}

/* 1 attacks the rim and drives to the rim, 1 drives off 5 to the elbow and gets to the elbow: told
 * twice. A note says so. */
static bool told_again(const struct cursor *c, const struct sentence *last,
                       const struct sentence *s)
{
    bool same = last->subject.count == 1 && s->subject.count == 1 &&
                same_who(&last->subject.at[0], &s->subject.at[0]);
    bool free = s->tie.word == TIE_NONE && !s->tie.then && !s->until && !last->until &&
                s->duration.unit == UNIT_NONE && s->object.kind == WHO_NONE && s->path == PATH_NONE;
    bool there = s->place && last->place && s->place->kind == PLACE_SPOT &&
                 last->place->kind == PLACE_SPOT && same_spot(s->place, last->place);
    bool second = verb_row(s->verb)->task == VERB_CARRY ||
                  (s->verb == VERB_GOES && verb_row(last->verb)->task != VERB_MOVE);
    if (!same || !free || !there || !second || !goes_or_carries(last)) {
        return false;
    }
    note_left_out(c, s->span);
    return true;
}

/* 3 and 4 go up top, 3 to the wing, 4 to the slot: each of them is sent where he goes, by a leg
 * without a verb, and the first sentence only told what comes. */
static bool each_is_sent(const sentence_list *out, size_t group)
{
    const struct sentence *s = &out->at[group];
    bool goes = s->subject.count > 1 && verb_row(s->verb)->task == VERB_MOVE && s->place &&
                out->count > group + s->subject.count;
    for (size_t i = 0; goes && i < s->subject.count; i++) {
        bool sent = false;
        for (size_t k = group + 1; k <= group + s->subject.count; k++) {
            const struct sentence *leg = &out->at[k];
            sent = sent || (leg->elided && leg->place && acts_in(leg, &s->subject.at[i]));
        }
        goes = sent;
    }
    return goes;
}

/* pick and roll 1 and 5, 5 rolls to the rim: where to is said behind it. */
static bool goes_on_to_where(const sentence_list *out, size_t i)
{
    const struct sentence *s = &out->at[i], *next = s + 1;
    return i + 1 < out->count && (s->verb == VERB_ROLLS || s->verb == VERB_POPS) && !s->place &&
           next->verb == s->verb && next->place && next->tie.word == TIE_NONE &&
           s->subject.count == 1 && same_who(&s->subject.at[0], &next->subject.at[0]);
}

/* ---- off the screen of his own ---- */

/* Who has screened for this player in the line, up to `end`, or above it, and has not been used.
 * False: nobody, or several. */
static bool own_screener(const struct cursor *c, const sentence_list *out, size_t end,
                         const struct who *who, struct who *by)
{
    for (size_t i = end; i-- > 0;) {
        const struct sentence *s = &out->at[i];
        bool screens = verb_row(s->verb)->task == VERB_SCREEN && s->screen != SCREEN_BALL &&
                       s->subject.count == 1 && s->object.kind == WHO_PLAYER;
        if (screens && same_who(&s->object, who)) {
            *by = s->subject.at[0];
            return true;
        }
        if (acts_in(s, who)) {
            return false;
        }
    }
    struct who second;
    bool several;
    return above_waiting_screen(c, who, by, &second, &several) && !several &&
           by->kind == WHO_PLAYER;
}

/* 4 screens for 2, 5 for 3, 2 and 3 pop out to the wings: each comes off his own screen. */
static void each_off_his_screen(const struct cursor *c, sentence_list *out, size_t i)
{
    const struct sentence all = out->at[i];
    bool moves = all.verb == VERB_GOES || all.verb == VERB_POPS || all.verb == VERB_CUTS;
    bool both = moves && all.subject.count == 2 && all.place && all.place->kind == PLACE_SPOT &&
                all.object.kind == WHO_NONE && all.path == PATH_NONE;
    struct who by[2];
    for (size_t one = 0; both && one < 2; one++) {
        both = own_screener(c, out, i, &all.subject.at[one], &by[one]);
    }
    if (!both || same_who(&by[0], &by[1])) {
        return;
    }
    VEC_PUSH(c->arena, out, all);
    memmove(&out->at[i + 1], &out->at[i], (out->count - 1 - i) * sizeof *out->at);
    for (size_t one = 0; one < 2; one++) {
        struct sentence *s = &out->at[i + one];
        s->subject = (who_list){NULL, 0, 0};
        VEC_PUSH(c->arena, &s->subject, all.subject.at[one]);
        s->bare = false;
        s->verb = VERB_COMES;
        s->object = by[one];
        s->object.span = all.verb_span;
    }
    struct diag *diag = diag_add(c->diags, DIAG_TEXT_SCREEN_TAKEN, all.verb_span,
                                 "nobody is named to come off: the screens of %d and %d were taken",
                                 by[0].number, by[1].number);
    diag_help(c->diags, diag, "to go elsewhere, say it of each in a line of its own");
}

/* pick and roll 1 and 4; 4 pops: what comes of it is said behind, and not as it was supplied. */
static bool ends_otherwise(const struct cursor *c, const sentence_list *out, size_t i)
{
    const struct sentence *s = &out->at[i], *next = s + 1;
    if (i + 1 >= out->count || (s->verb != VERB_ROLLS && s->verb != VERB_POPS) || s->place ||
        (next->verb != VERB_ROLLS && next->verb != VERB_POPS && next->verb != VERB_SLIPS) ||
        next->tie.word != TIE_NONE || !same_who(&s->subject.at[0], &next->subject.at[0])) {
        return false;
    }
    struct str said = cursor_text(c, s->verb_span);
    return !str_starts(said, "roll") && !str_starts(said, "pop") &&
           !str_equal(said, cursor_text(c, next->verb_span));
}

/* 1 and 2 trade, so 1 down to the corner and 2 up to the wing: where each goes is told behind. */
static bool trade_told_again(const sentence_list *out, size_t i)
{
    const struct sentence *s = &out->at[i];
    if (i + 3 >= out->count || s[0].verb != VERB_FILLS || s[1].verb != VERB_FILLS) {
        return false;
    }
    for (size_t one = 0; one < 4; one++) {
        bool alone = s[one].subject.count == 1 && s[one].subject.at[0].kind == WHO_PLAYER;
        bool goes = one < 2 || (verb_row(s[one].verb)->task == VERB_MOVE && s[one].place &&
                                s[one].tie.word == TIE_NONE && !s[one].tie.then);
        if (!alone || !goes) {
            return false;
        }
    }
    const struct who *a = &s[0].subject.at[0], *b = &s[1].subject.at[0];
    const struct who *c = &s[2].subject.at[0], *d = &s[3].subject.at[0];
    return !same_who(a, b) &&
           ((same_who(a, c) && same_who(b, d)) || (same_who(a, d) && same_who(b, c)));
}

static void drop_trades(const struct cursor *c, sentence_list *out, size_t first)
{
    for (size_t i = first; i < out->count; i++) {
        if (!trade_told_again(out, i)) {
            continue;
        }
        note_left_out(c, span_join(out->at[i].span, out->at[i + 1].span));
        out->at[i + 2].tie = out->at[i].tie;
        out->at[i + 3].tie = out->at[i + 1].tie;
        memmove(&out->at[i], &out->at[i + 2], (out->count - i - 2) * sizeof *out->at);
        out->count -= 2;
    }
}

void told_once(const struct cursor *c, sentence_list *out, size_t first)
{
    drop_trades(c, out, first);
    for (size_t i = first; i < out->count; i++) {
        each_off_his_screen(c, out, i);
    }
    first -= first > 0 && ends_otherwise(c, out, first - 1);
    for (size_t i = first; i < out->count;) {
        bool group = each_is_sent(out, i);
        bool again = i > first && told_again(c, &out->at[i - 1], &out->at[i]);
        if (group) {
            note_left_out(c, out->at[i].span);
        }
        if (!group && !again && !goes_on_to_where(out, i) && !ends_otherwise(c, out, i)) {
            i++;
            continue;
        }
        memmove(&out->at[i], &out->at[i + 1], (out->count - i - 1) * sizeof *out->at);
        out->count--;
    }
}

/* as 1 passes, 4 cuts and 2 passes to 4: who gets that pass cannot pass then; and who comes off a
 * screen that is set then waits for it. What a clause in front says is of the others. */
void free_of_tie(sentence_list *out, size_t first)
{
    struct sentence *s = &out->at[out->count - 1];
    const struct event *event = s->tie.event;
    meanwhile_once(out, first, s);
    screen_waits(out, first, s);
    if (gets_it_first(out, first, s)) {
        s->tie = free_tie;
        return;
    }
    if (s->tie.word != TIE_AS || !event || event->kind != EVENT_VERB || out->count < first + 2) {
        return;
    }
    bool own = acts_in(s, &event->subject) && verb_row(event->verb)->task == VERB_CARRY;
    bool passes = own || (verb_row(event->verb)->task == VERB_PASS && verb_needs_ball(s->verb) &&
                          !acts_in(s, &event->subject));
    bool waits = false;
    for (size_t i = first; i + 1 < out->count; i++) {
        waits = waits || (verb_row(s->verb)->task == VERB_USE &&
                          verb_row(out->at[i].verb)->task == VERB_SCREEN &&
                          acts_in(&out->at[i], &s->object) && out->at[i].tie.event == event);
    }
    if (passes || waits) {
        s->tie = free_tie;
    }
}

/* posts up for two seconds, waits a second on the wing: he is there so long, in a sentence of its
 * own behind it. */
void hold_apart(struct cursor *c, sentence_list *out)
{
    struct sentence *s = &out->at[out->count - 1];
    if (s->duration.unit == UNIT_NONE || s->verb == VERB_HOLDS) {
        return;
    }
    struct sentence holds = {.verb = VERB_HOLDS,
                             .verb_span = s->verb_span,
                             .subject = s->subject,
                             .bare = s->bare,
                             .duration = s->duration,
                             .span = s->span};
    s->duration = (struct measure){.unit = UNIT_NONE};
    VEC_PUSH(c->arena, out, holds);
}

/* He is there when the ball comes: the two change places. */
static void first_moves(struct sentence *pass, struct sentence *move)
{
    struct sentence first = *move;
    *move = *pass;
    *pass = first;
}

/* 1 passes to 2, who slides to the slot to get it: the last of `out`, said from here to there, is
 * how he comes to the pass before it, and goes first. */
void comes_to_pass(const struct cursor *c, sentence_list *out, const struct token *from,
                   const struct token *to)
{
    static const char *const purposes[] = {"to get it",
                                           "to catch it",
                                           "to receive it",
                                           "for it",
                                           "to get ball",
                                           "to catch ball",
                                           "to receive ball",
                                           "for ball",
                                           "to get pass",
                                           "to catch pass",
                                           "to receive pass",
                                           "for pass",
                                           "to meet it",
                                           "to meet pass",
                                           "to meet ball",
                                           "for catch",
                                           "to get the pass",
                                           "to receive",
                                           "to catch",
                                           "to take it",
                                           "to take pass",
                                           "to come get it",
                                           NULL};
    if (out->count < 2) {
        return;
    }
    struct sentence *move = &out->at[out->count - 1], *pass = move - 1;
    bool his = verb_row(pass->verb)->task == VERB_PASS && move->subject.count == 1 &&
               same_who(&pass->object, &move->subject.at[0]) && move->tie.word == TIE_NONE &&
               !move->tie.then && verb_row(move->verb)->task == VERB_MOVE && move->place &&
               !pass->place;
    bool said = false;
    for (; his && from < to && !said; from++) {
        struct cursor trial = look_between(c, from, to);
        said = take_among(&trial, purposes) && cursor_done(&trial);
    }
    if (said) {
        first_moves(pass, move);
    }
}

/* passes to 3, who cuts to the corner; who comes or who goes there to catch it: he gets it where he
 * runs to, which is told in front of the pass. */
void runs_to_catch(const struct cursor *c, sentence_list *out, const struct token *from)
{
    struct sentence *run = &out->at[out->count - 1], *pass = run - 1;
    bool catches = token_is_among(from, catch_runs);
    for (const struct token *at = from; at + 1 < c->at; at++) {
        static const char *const gets[] = {"get", "catch", "receive", "meet", "collect", NULL};
        catches = catches || (token_is_word(at, "to") && token_is_among(at + 1, gets));
    }
    enum verb_task task = verb_row(pass->verb)->task;
    bool runs = verb_row(run->verb)->task == VERB_MOVE && !verb_needs_ball(run->verb) &&
                !strchr(verb_row(run->verb)->needs, 'S') && (catches || run->verb != VERB_GOES);
    if (task == VERB_PASS && runs && same_who(&pass->object, &run->subject.at[0])) {
        first_moves(pass, run);
    }
}
