/* SPDX-License-Identifier: MIT */
/* throw: the one who puts the ball in: he stands out of bounds where the start has him on a line
 * with the ball, and comes onto the floor when he has thrown it. */
#include "language/words/reader.h"
#include "language/words/speech.h"

/* ---- on the line with the ball ---- */

/* The line as it is said, level with where a ball is put in as a rule. */
static const struct place *level_with(struct arena *arena, const struct place *line)
{
    struct place level = *line;
    if (line->side == SIDE_LEFT || line->side == SIDE_RIGHT) {
        level.spot = line->spot == SPOT_BASELINE ? SPOT_SHORT_CORNER : SPOT_HASH;
    }
    return place_keep(arena, level);
}

static void put_out(struct reader *r, struct placing *placing)
{
    const struct place *line = placing->place;
    bool lined =
        line && line->kind == PLACE_SPOT && !line->backcourt &&
        (line->spot == SPOT_BASELINE || (line->spot == SPOT_SIDELINE && line->side != SIDE_NONE));
    if (!lined) {
        return;
    }
    struct place out = {.kind = PLACE_OUT, .a = level_with(r->arena, line), .span = line->span};
    placing->place = place_keep(r->arena, out);
    struct diag *diag = diag_add(r->diags, DIAG_TEXT_SPOT_TAKEN, placing->span,
                                 "with the ball on the line: out of bounds, to put it in, was "
                                 "taken");
    diag_help(r->diags, diag,
              "write `%d out of bounds at left short corner`; on the floor he "
              "stands at a spot: `left short corner`",
              placing->who.number);
}

void thrower_on_line(struct reader *r, const struct block *block, const struct setting_form *read)
{
    const struct setting_form *start = setting_of(block, SETTING_START);
    const struct setting_form *ball = setting_of(block, SETTING_BALL);
    if (read->setting != SETTING_BALL && read->setting != SETTING_START) {
        return;
    }
    for (size_t i = 0; start && ball && !ball->ball_out && i < start->placings.count; i++) {
        struct placing *placing = &start->placings.at[i];
        if (placing->kind == PLACING_WHO && same_who(&placing->who, &ball->ball)) {
            put_out(r, placing);
        }
    }
}

/* ---- the thrower comes onto the floor ---- */

/* Where this player stands out of bounds as the play begins; NULL: nowhere. */
static const struct place *out_at(const struct cursor *c, const struct who *who)
{
    const struct setting_form *ball = setting_of(c->top, SETTING_BALL);
    if (ball && ball->ball_out && same_who(&ball->ball, who)) {
        return ball->ball_out;
    }
    const struct placing *placing = above_placing(c, who);
    if (!placing) {
        return NULL;
    }
    if (placing->kind == PLACING_WHO) {
        bool out = placing->place && placing->place->kind == PLACE_OUT;
        return out ? placing->place->a : NULL;
    }
    const struct formation_spot *spot = &formation_at(placing->formation)->at[who->number - 1];
    struct place at = {
        .kind = PLACE_SPOT, .spot = spot->spot, .side = spot->side, .backcourt = spot->backcourt};
    return spot->out_of_bounds ? place_keep(c->arena, at) : NULL;
}

bool stands_outside(const struct cursor *c, const struct who *who)
{
    return out_at(c, who) != NULL;
}

bool starts_inside(const struct cursor *c, const struct who *who)
{
    if (out_at(c, who)) {
        return false;
    }
    above_list above = above_sentences(c, true);
    for (size_t i = 0; i < above.count; i++) { /* he may have gone out since */
        if (above.at[i]->place && above.at[i]->place->kind == PLACE_OUT) {
            return false;
        }
    }
    const struct placing *placing = above_placing(c, who);
    const struct place *place = placing && placing->kind == PLACING_WHO ? placing->place : NULL;
    return place && place->kind == PLACE_SPOT && place->spot != SPOT_BASELINE &&
           place->spot != SPOT_SIDELINE;
}

/* steps in behind the ball, behind her as the safety: where he stood out of bounds he is behind it.
 */
static void behind_the_ball(struct cursor *c, struct recast *r)
{
    static const char *const behinds[] = {"behind ball", "behind it",   "behind her",
                                          "behind him",  "behind play", NULL};
    static const char *const roles[] = {"as safety",  "as outlet",        "as safety valve",
                                        "for safety", "as safety outlet", NULL};
    const struct token *from = cursor_next(c);
    bool behind = take_among(c, behinds);
    if (take_among(c, roles) || behind) {
        r->told = cursor_taken(c, from);
    }
}

/* 3 steps in, steps in to the block: to the place that is named, or straight in. */
bool steps_in(const struct cursor *c, struct recast *r)
{
    static const char *const ins[] = {"steps in",
                                      "comes in",
                                      "steps inbounds",
                                      "comes inbounds",
                                      "steps on",
                                      "steps onto court",
                                      "comes onto court",
                                      "gets in",
                                      "gets inbounds",
                                      "steps onto floor",
                                      "comes onto floor",
                                      "follows in",
                                      "follows it in",
                                      "hops in",
                                      "jumps in",
                                      "comes on",
                                      "steps back in",
                                      "gets on floor",
                                      NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    bool named = somebody_read(&trial, &who);
    const struct sentence *last = sentence_before(c);
    if (!named && last && last->subject.count == 1) { /* throws it in and steps in */
        who = (struct somebody){.from = c->at, .to = c->at, .who = last->subject.at[0]};
    }
    if ((!named && !last) || !take_among(&trial, ins)) {
        return false;
    }
    const struct place *out = out_at(c, &who.who);
    if (!out) {
        return false;
    }
    behind_the_ball(&trial, r);
    recast_somebody(c, r, &who);
    recast_word(c, r, "goes");
    r->to = trial.at;
    r->same = !named;
    if (leg_follows(&trial)) {
        return true;
    }
    bool plain = out->kind == PLACE_SPOT && (out->side == SIDE_LEFT || out->side == SIDE_RIGHT);
    if (!plain || !(stop_is(&trial) || clause_ends(cursor_next(&trial)))) {
        return false;
    }
    recast_word(c, r, "to");
    if (out->backcourt) {
        recast_word(c, r, "backcourt");
    }
    recast_word(c, r, out->side == SIDE_LEFT ? "left" : "right");
    recast_verb(c, r, str_of(entry_words(spot_entries, (int)out->spot)));
    return true;
}

/* 3 takes it out and throws to 2: where he is already. */
bool takes_out(const struct cursor *c, struct recast *r)
{
    static const char *const outs[] = {"takes it out",
                                       "takes ball out",
                                       "takes it out of bounds",
                                       "is taking it out",
                                       "has it out of bounds",
                                       "is out of bounds",
                                       "inbounds the ball",
                                       "inbounds it",
                                       "is the inbounder",
                                       "puts it in play",
                                       "steps out of bounds",
                                       "is inbounding",
                                       "stands out of bounds",
                                       "slaps the ball",
                                       "slaps ball",
                                       NULL};
    static const char *const wheres[] = {
        "underneath",  "under basket",  "on the side", "on sideline",
        "on baseline", "with the ball", "with it",     NULL};
    struct cursor trial = cursor_look(c);
    struct somebody who;
    const struct token *from = cursor_next(c);
    if (!somebody_read(&trial, &who) || !take_among(&trial, outs) || !out_at(c, &who.who)) {
        return false;
    }
    take_among(&trial, wheres);
    r->told = cursor_taken(&trial, from);
    struct recast next;
    struct cursor on = trial;
    take_joint(&on);
    r->to = on.at;
    if (on.at > trial.at && !subject_verb_is(&on)) { /* and throws to 2: he does */
        recast_somebody(c, r, &who);
        return !cursor_done(&on);
    }
    r->remark = cursor_done(&trial);
    return r->remark || subject_verb_is(&on) || recast_find(&on, &next);
}

/* when 3 slaps the ball, on 3's call: with what the play begins, which moves nobody. */
bool on_signal(const struct cursor *c, struct recast *r)
{
    static const char *const leads[] = {"when", "as", "after", "once", "on", NULL};
    static const char *const does[] = {"slaps the ball",
                                       "slaps ball",
                                       "slaps it",
                                       "calls for it",
                                       "calls out the play",
                                       "calls the play",
                                       "calls it",
                                       "gives the signal",
                                       "yells",
                                       "claps",
                                       NULL};
    static const char *const signals[] = {"slap", "call",    "signal", "whistle",
                                          "go",   "command", "yell",   NULL};
    static const char *const of_ball[] = {"of ball", "on ball", NULL};
    struct cursor trial = cursor_look(c);
    struct cursor_mark mark = cursor_mark(c);
    struct somebody who;
    const struct token *from = cursor_next(c);
    if (!from || !take_among(&trial, leads)) {
        return false;
    }
    struct cursor named = trial;
    struct who owner;
    bool said = (player_here(&named, &who) && take_among(&named, does));
    if (!said) {
        named = trial;
        said = owner_read(&named, &owner) && take_among(&named, signals);
        named = said ? named : trial;
        said = said || take_among(&named, signals);
    }
    take_among(&named, of_ball);
    cursor_back(&trial, mark);
    r->told = said ? span_join(from->span, named.at[-1].span) : SPAN_NONE;
    take_mark(&named, ',');
    r->to = named.at;
    return said && (subject_verb_is(&named) || verb_begins(&named));
}
