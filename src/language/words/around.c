/* SPDX-License-Identifier: MIT */
/* around: somebody goes past, around, over or under a team-mate to where he goes, up past 4 to the
 * wing, or between two; or round a screen, which is to use it. A way of plain.c: see put_plain.h.
 */
#include "language/words/put_plain.h"

/* What a cut may take: past 4, around 4. */
static const struct entry by_words[] = {{"past", 0},          {"by", 0},          {"around", 1},
                                        {"round", 1},         {"over top of", 2}, {"over", 2},
                                        {"under", 3},         {"underneath", 3},  {"beneath", 3},
                                        {"around behind", 1}, {NULL, 0}};
static const char *const by_names[] = {"past", "around", "over", "under"};
static const char *const going[] = {"goes",    "go",     "comes",  "come",  "moves",   "move",
                                    "bends",   "bend",   "loops",  "loop",  "swings",  "swing",
                                    "circles", "circle", "runs",   "run",   "sprints", "sprint",
                                    "slides",  "slide",  "curves", "curve", "cuts",    "cut",
                                    "breaks",  "break",  "steps",  "step",  NULL};

/* Who acts in the clause of this verb; 0: nobody by number. */
static int acting(const struct cursor *line, const struct token *verb)
{
    struct somebody one;
    bool own;
    return clause_subject(line, clause_begin(line, verb), &one, &own) ? one.who.number : 0;
}

/* and out to the wing, to the wing: where it goes on to; NULL: nowhere. */
static const struct token *on_to(const struct cursor *line, const struct token *at)
{
    static const char *const tos[] = {"to", "into", "toward", NULL};
    const struct place *place;
    struct cursor trial = line_look(line, at);
    take_words(&trial, "and");
    take_particles(&trial);
    const struct token *to = cursor_next(&trial);
    return to && token_is_among(to, tos) && spot_end(line, past_fillers(to + 1, line->end), &place)
               ? to
               : NULL;
}

/* round the screen, around the pick to the wing: off it. */
static const struct token *round_screen(const struct cursor *line, const struct token *at,
                                        struct cursor *behind, struct recast *out)
{
    static const char *const screens[] = {"screen", "screens", "pick", "picks", NULL};
    const struct token *screen = behind->at;
    if (!take_among(behind, screens)) {
        return NULL;
    }
    const struct token *to = on_to(line, behind->at);
    struct cursor here = *line;
    here.at = at;
    if (to) {
        recast_word(&here, out, "comes");
        recast_word(&here, out, "off");
        recast_copy(line, out, screen, behind->at);
    }
    return to;
}

/* between 4 and 5: left out; NULL: none. */
static const struct token *between_two(const struct cursor *line, struct cursor *trial, int doer)
{
    size_t count;
    if (!take_words(trial, "between")) {
        return NULL;
    }
    const struct token *end = players_end(line, past_fillers(trial->at, line->end), &count);
    return count == 2 && doer != 0 ? on_to(line, end) : NULL;
}

/* ---- that clears the top ---- */

/* cuts to the rim, that clears the top: what comes of it, and nobody does: left out. */
static const struct token *effect_put(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const heads[] = {"that", "this", "which", NULL};
    static const char *const effects[] = {
        "clears",  "moves",    "opens",  "draws",   "occupies", "pulls",     "frees",     "leaves",
        "makes",   "gives",    "keeps",  "takes",   "forces",   "shifts",    "stretches", "spreads",
        "empties", "creates",  "helps",  "buys",    "brings",   "collapses", "holds",     "gets",
        "freezes", "flattens", "widens", "shrinks", "occupy",   "opened",    "cleared",   NULL};
    struct cursor trial = line_look(line, at);
    if (at == line->at || !take_among(&trial, heads) || !take_among(&trial, effects)) {
        return NULL;
    }
    const struct token *end = trial.at;
    while (end < line->end && !clause_ends(end) && !token_is_word(end, "so")) {
        if (end->kind == TOKEN_NUMBER || end->kind == TOKEN_DEFENDER || end->kind == TOKEN_MARK) {
            return NULL; /* that frees 3, and that is told */
        }
        end++;
    }
    if (end == trial.at) {
        return NULL;
    }
    out->told = span_join(at->span, end[-1].span);
    recast_mark(line, out, ',');
    return end < line->end && end->kind == TOKEN_MARK && end->mark == ',' ? end + 1 : end;
}

/* toward the ball to the wing: which way, and where to. */
static const struct token *toward_put(const struct cursor *line, const struct token *at,
                                      struct recast *out)
{
    static const char *const towards[] = {"toward", "towards", "to meet", NULL};
    static const char *const tos[] = {"to", "in", "into", "at", "on", NULL};
    struct cursor trial = line_look(line, at);
    const struct place *place;
    if (at == line->at || !take_among(&trial, towards)) {
        return NULL;
    }
    const struct token *end = take_words(&trial, "ball")
                                  ? trial.at
                                  : spot_end(line, past_fillers(trial.at, line->end), &place);
    if (!end || end >= line->end || !token_is_among(end, tos) ||
        !spot_end(line, past_fillers(end + 1, line->end), &place)) {
        return NULL;
    }
    out->told = span_join(at->span, end[-1].span);
    recast_word(line, out, "to");
    return end + 1;
}

/* past 4 to the wing, behind words of going and what stands between: a cut past him. `straight`: it
 * says `cuts past 4` already. */
static const struct token *past_one(const struct cursor *line, const struct token *at,
                                    struct cursor *trial, bool straight, struct recast *out)
{
    int by = take_entry(trial, by_words), doer = acting(line, at);
    const struct token *who = cursor_next(trial);
    if (by < 0 || !who || doer == 0) {
        return NULL;
    }
    int number = attacker_at(who, line->end);
    if (number == 0) {
        return round_screen(line, at, trial, out);
    }
    const struct token *to = on_to(line, who + 1);
    if (number == doer || !to || straight) {
        return NULL;
    }
    struct cursor here = *line;
    here.at = at;
    recast_word(&here, out, "cuts");
    recast_word(&here, out, by_names[by]);
    recast_copy(line, out, who, who + 1);
    return to;
}

static const struct token *by_somebody(const struct cursor *line, const struct token *at,
                                       struct recast *out)
{
    static const char *const small[] = {"up",   "out",   "down",     "across", "in",
                                        "back", "right", "straight", "on",     NULL};
    static const char *const cuts[] = {"cuts", "cut", NULL};
    struct cursor trial = line_look(line, at);
    if (at == line->at || !take_among(&trial, going)) {
        return NULL;
    }
    const struct token *way = trial.at;
    while (take_among(&trial, small)) {
    }
    struct cursor two = trial;
    const struct token *to = between_two(line, &two, acting(line, at));
    if (!to) {
        return past_one(line, at, &trial, trial.at == way && token_is_among(at, cuts), out);
    }
    recast_copy(line, out, at, way);
    out->told = span_join(way->span, to[-1].span);
    return to;
}

const struct token *around_put(const struct cursor *line, const struct token *at,
                               struct recast *out)
{
    static plain_way *const ways[] = {by_somebody, effect_put, toward_put, NULL};
    return first_put(ways, line, at, out);
}
