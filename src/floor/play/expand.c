/* SPDX-License-Identifier: MIT */
/* expand: a step with its runs, repeats and sames written out: lines, each with the voice it is
 * said in. Knows who stands where as the step begins, not where anybody is sent. */
#include "floor/play/resolve.h"

#include <math.h>
#include <string.h>

#include "base/real.h"

#define AT_SPOT (2 * FEET)   /* of a spot with a name (ours) */
#define SAME_SPOT (6 * FEET) /* nearer than this a player stands where another stood (ours) */

struct expansion {
    struct maker *m;
    struct script *script;
    bool take_branches;               /* of a step that is repeated or shared */
    const struct source_play *source; /* inside `same as`: whose step this is; else NULL */
    bool turned;                      /* and it is shared as the other side */
    const struct block *running[LIMIT_ACTION_DEPTH + 1];
    unsigned depth;
    unsigned runs;           /* actions and shared steps written out so far */
    size_t lines;            /* lines written out so far, in the branches too */
    const struct form *asks; /* the line of the step itself that is being written out */
    bool unwinds;            /* reported: the rest of what the line runs is not written out */
    bool stopped;            /* reported: nor is the rest of the step */
};

static void expand_forms(struct expansion *x, const struct block *block, const struct voice *voice,
                         said_list *into, bool branches);

static struct voice *voice_copy(struct maker *m, const struct voice *voice)
{
    struct voice *copy = arena_new(m->arena, struct voice);
    *copy = *voice;
    return copy;
}

/* ---- run ---- */

static const struct block *find_action(struct maker *m, const struct note_form *note)
{
    const struct block *action = action_by_name(m, note->text);
    if (action) {
        return action;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_ACTION, note->text_span,
                                 "there is no action \"%.*s\"", STR_ARG(note->text));
    const char **names = arena_array(m->arena, const char *, m->actions.count + 1);
    for (size_t i = 0; i < m->actions.count; i++) {
        names[i] = str_copy(m->arena, m->actions.at[i]->title).at;
    }
    const char *near = words_nearest(note->text, names);
    if (near) {
        diag_help(m->diags, diag, "did you mean \"%s\"?", near);
    } else {
        diag_help(m->diags, diag, "write it before the plays: action \"%.*s\" for passer, receiver",
                  STR_ARG(note->text));
    }
    return NULL;
}

static bool is_role(const struct who *who, struct str role)
{
    return who->kind == WHO_ROLE && str_equal_fold(who->role, role);
}

/* The role's first sentence needs the ball, and nobody has passed to it before. */
static bool must_have_ball(const struct block *action, struct str role)
{
    for (size_t i = 0; i < action->forms.count; i++) {
        const struct form *form = &action->forms.at[i];
        if (form->kind != FORM_SENTENCE) {
            continue;
        }
        const struct sentence *s = form->sentence;
        const struct verb_row *row = verb_row(s->verb);
        for (size_t j = 0; j < s->subject.count; j++) {
            if (is_role(&s->subject.at[j], role)) {
                return row->task == VERB_PASS || row->task == VERB_EXCHANGE ||
                       row->task == VERB_CARRY || row->task == VERB_SHOOT;
            }
        }
        if (is_role(&s->object, role) && (row->task == VERB_PASS || row->task == VERB_EXCHANGE)) {
            return false;
        }
    }
    return false;
}

static bool plays_a_role(const struct voice *voice, body b)
{
    for (size_t i = 0; i < voice->roles.count; i++) {
        if (voice->roles.at[i].who == b) {
            return true;
        }
    }
    return false;
}

static void ask_role(struct maker *m, const struct form *form, const struct voice *voice,
                     struct str role)
{
    struct strbuf fits;
    strbuf_init(&fits, m->arena);
    for (body b = 0; b < BODY_COACH; b++) {
        if (on_floor(m, b) && !plays_a_role(voice, b)) {
            strbuf_print(&fits, "%s%d", fits.size ? ", " : "", body_number(b));
        }
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_ROLE, form->span, "who is the %.*s?", STR_ARG(role));
    diag_help(m->diags, diag, "add it to the line: with %.*s 2 (it fits: %s)", STR_ARG(role),
              fits.at);
    m->play->broken = true;
}

static const struct role_binding *binding_of(const struct note_form *note, struct str role)
{
    for (size_t i = 0; i < note->roles.count; i++) {
        if (str_equal_fold(note->roles.at[i].role, role)) {
            return &note->roles.at[i];
        }
    }
    return NULL;
}

static void check_bindings(struct maker *m, const struct block *action,
                           const struct note_form *note)
{
    for (size_t i = 0; i < note->roles.count; i++) {
        bool known = false;
        for (size_t j = 0; j < action->roles.count; j++) {
            known = known || str_equal_fold(action->roles.at[j], note->roles.at[i].role);
        }
        if (!known) {
            diag_add(m->diags, DIAG_PLAY_ROLE, note->roles.at[i].who.span,
                     "the action \"%.*s\" has no role `%.*s`", STR_ARG(action->title),
                     STR_ARG(note->roles.at[i].role));
        }
    }
}

static void note_role(struct maker *m, const struct form *form, const struct role_is *is)
{
    struct str who = who_text(m, is->who);
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_ROLE_TAKEN, form->span,
                                 "the %.*s is not named: %.*s has the ball as the step begins",
                                 STR_ARG(is->role), STR_ARG(who));
    diag_help(m->diags, diag, "add it to the line to choose: %.*s %.*s", STR_ARG(is->role),
              STR_ARG(who));
}

static void bind_roles(struct maker *m, const struct form *form, const struct block *action,
                       const struct voice *outer, struct voice *voice)
{
    const struct note_form *note = form->note;
    voice->roles.at = NULL;
    voice->roles.count = voice->roles.room = 0;
    check_bindings(m, action, note);
    for (size_t i = 0; i < action->roles.count; i++) { /* the written ones first */
        struct role_is is = {.role = action->roles.at[i], .who = BODY_NONE};
        const struct role_binding *written = binding_of(note, is.role);
        if (written) {
            is.who = who_body(m, &written->who, outer);
            VEC_PUSH(m->arena, &voice->roles, is);
        }
    }
    for (size_t i = 0; i < action->roles.count; i++) {
        struct role_is is = {.role = action->roles.at[i], .who = m->flow.holder};
        if (binding_of(note, is.role)) {
            continue;
        }
        if (must_have_ball(action, is.role) && is.who != BODY_NONE) {
            VEC_PUSH(m->arena, &voice->roles, is);
            note_role(m, form, &is);
        } else {
            ask_role(m, form, voice, is.role);
        }
    }
}

static void say_loop(struct maker *m, const struct block *block, struct span span)
{
    if (block->kind != BLOCK_ACTION) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_TOO_DEEP, span, "this step is the same as itself");
        diag_help(m->diags, diag, "write its sentences out");
        return;
    }
    for (size_t i = 0; i < m->loops.count; i++) {
        if (m->loops.at[i] == block) { /* said as the actions were gathered */
            return;
        }
    }
    diag_add(m->diags, DIAG_PLAY_TOO_DEEP, span, "the action \"%.*s\" runs itself",
             STR_ARG(block->title));
}

/* True, and reported, when what is to be written out here cannot be. */
static bool already_running(struct expansion *x, const struct block *action, struct span span)
{
    struct maker *m = x->m;
    for (unsigned i = 0; i < x->depth; i++) {
        if (x->running[i] == action) {
            say_loop(m, action, span);
            x->unwinds = true;
            return true;
        }
    }
    if (x->depth == LIMIT_ACTION_DEPTH) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_TOO_DEEP, span,
                     "runs stand more than %d deep in one another", LIMIT_ACTION_DEPTH);
        diag_help(m->diags, diag, "write the innermost sentences out where they are run");
        if (diag) {
            diag->other = x->asks->span;
        }
        x->unwinds = true;
        return true;
    }
    if (x->runs++ == LIMIT_RUNS) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_TOO_MANY, x->asks->span,
                     "a step runs at most %d actions, those in one another included", LIMIT_RUNS);
        diag_help(m->diags, diag, "make two steps of it, or run fewer actions in one another");
        x->stopped = true;
        return true;
    }
    return false;
}

static void expand_run(struct expansion *x, const struct form *form, const struct voice *voice,
                       said_list *into, bool branches)
{
    struct maker *m = x->m;
    const struct block *action = find_action(m, form->note);
    if (!action || already_running(x, action, form->span)) {
        m->play->broken = true;
        return;
    }
    struct voice *inner = voice_copy(m, voice);
    inner->mirrored = voice->mirrored != form->note->mirrored;
    bind_roles(m, form, action, voice, inner);
    if (inner->roles.count < action->roles.count) {
        return;
    }
    m->play->broken = m->play->broken || block_is_broken(action);
    x->running[x->depth++] = action;
    expand_forms(x, action, inner, into, branches);
    x->depth--;
}

/* ---- repeat ---- */

/* " at left wing", for a place that has a name that coaches use; else nothing. */
static const char *at_spot(struct maker *m, struct vec2 p)
{
    enum side side;
    double far;
    enum spot spot = court_nearest_perimeter(m->play->court, p, &side, &far);
    struct strbuf out;
    strbuf_init(&out, m->arena);
    if (far < AT_SPOT) {
        strbuf_print(&out, " at %s%s",
                     side == SIDE_LEFT    ? "left "
                     : side == SIDE_RIGHT ? "right "
                                          : "",
                     spot_row(spot)->word);
    }
    return out.at ? out.at : "";
}

static void say_empty(struct maker *m, const struct form *form, body b, struct vec2 then)
{
    const char *spot = at_spot(m, then);
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_REPEAT, form->span,
                 "nobody stands now%s where %s stood as step %d began%s", *spot ? spot : "",
                 who_text(m, b).at, form->note->step, form->note->mirrored ? ", mirrored" : "");
    diag_help(m->diags, diag,
              *spot ? "a step repeats from the same spots: in the step before send a player to%s"
                    : "a step repeats from the same spots: send a player there first, or write "
                      "the step out%s",
              *spot ? spot + strlen(" at") : "");
    m->play->broken = true;
}

/* The ball has to be where it was, too. */
static bool ball_is_there(struct maker *m, const struct form *form, body then,
                          const int number[LIMIT_ATTACKERS + 1])
{
    body now = m->flow.holder;
    if (!body_is_attacker(then) || !body_is_attacker(now) || then == BODY_COACH ||
        now == BODY_COACH || number[body_number(then)] == body_number(now)) {
        return true;
    }
    body wanted = body_attacker(number[body_number(then)]);
    struct diag *diag = diag_add(
        m->diags, DIAG_PLAY_REPEAT, form->span,
        "step %d began with the ball in %s's hands; %s stands there now, and %s has the ball",
        form->note->step, who_text(m, then).at, who_text(m, wanted).at, who_text(m, now).at);
    diag_help(m->diags, diag, "write before it: %s passes to %s", who_text(m, now).at,
              who_text(m, wanted).at);
    m->play->broken = true;
    return false;
}

/* Who stands now where each number stood then, or on the other side; false with an error. */
static bool match_spots(struct maker *m, const struct form *form, const struct vec2 *stance,
                        bool mirrored, int number[LIMIT_ATTACKERS + 1])
{
    bool taken[BODY_COUNT] = {false};
    for (body b = 0; b < BODY_COACH; b++) {
        number[body_number(b)] = body_number(b);
        if (!on_floor(m, b)) {
            continue;
        }
        struct vec2 then = stance[b];
        if (mirrored) {
            then.x = -then.x;
        }
        body best = BODY_NONE;
        double least = SAME_SPOT;
        for (body now = 0; now < BODY_COACH; now++) {
            double far = vec2_distance(m->stood[now], then);
            if (on_floor(m, now) && !taken[now] && far < least) {
                least = far;
                best = now;
            }
        }
        if (best == BODY_NONE) {
            say_empty(m, form, b, then);
            return false;
        }
        taken[best] = true;
        number[body_number(b)] = body_number(best);
    }
    return true;
}

static const struct voice *compose(struct maker *m, const struct voice *inner,
                                   const int number[LIMIT_ATTACKERS + 1], bool mirrored)
{
    struct voice *voice = voice_copy(m, inner);
    voice->mirrored = inner->mirrored != mirrored;
    for (int i = 1; i <= LIMIT_ATTACKERS; i++) {
        voice->number[i] = number[inner->number[i]];
    }
    voice->roles.at = NULL;
    voice->roles.count = voice->roles.room = 0;
    for (size_t i = 0; i < inner->roles.count; i++) {
        struct role_is is = inner->roles.at[i];
        int old = body_is_attacker(is.who) ? body_number(is.who) : 0;
        is.who = old ? body_attacker(number[old]) : is.who;
        VEC_PUSH(m->arena, &voice->roles, is);
    }
    return voice;
}

static void copy_lines(struct maker *m, const said_list *lines, said_list *into,
                       const int number[LIMIT_ATTACKERS + 1], bool mirrored)
{
    const struct voice *last = NULL, *composed = NULL;
    for (size_t i = 0; i < lines->count; i++) {
        struct said said = lines->at[i];
        if (said.voice != last) {
            last = said.voice;
            composed = compose(m, last, number, mirrored);
        }
        said.voice = composed;
        VEC_PUSH(m->arena, into, said);
    }
}

static void copy_script(struct expansion *x, const struct script *script, said_list *into,
                        const int number[LIMIT_ATTACKERS + 1], bool mirrored, bool branches)
{
    struct maker *m = x->m;
    copy_lines(m, &script->lines, into, number, mirrored);
    x->lines += script->lines.count;
    for (size_t i = 0; branches && x->take_branches && i < script->branches.count; i++) {
        const struct branch_script *old = &script->branches.at[i];
        struct branch_script branch = {.block = old->block,
                                       .voice = compose(m, old->voice, number, mirrored)};
        copy_lines(m, &old->lines, &branch.lines, number, mirrored);
        x->lines += old->lines.count;
        VEC_PUSH(m->arena, &x->script->branches, branch);
    }
}

static bool step_is_known(struct maker *m, const struct form *form, size_t steps, bool own)
{
    int step = form->note->step;
    if (step >= 1 && (size_t)step <= steps) {
        return true;
    }
    if (own && (size_t)step == steps + 1) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_REPEAT, form->span,
                                     "this line stands in step %d itself, which cannot repeat "
                                     "itself",
                                     step);
        diag_help(m->diags, diag, "put it under a heading of its own: step \"Again\"");
        m->play->broken = true;
        return false;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_REPEAT, form->span,
                                 "there is no step %d before this one", step);
    diag_help(m->diags, diag,
              steps ? "name an earlier step: repeat from step 1"
                    : "write what is repeated as step 1, and this line under step 2");
    m->play->broken = true;
    return false;
}

/* A shared step that repeats another one of its play: that play says who stood where. */
static const struct maker *play_of_repeat(struct expansion *x)
{
    struct maker *m = x->m;
    const struct maker *aside = play_aside(m, x->source);
    if (aside && !aside->play->broken) {
        return aside;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_SAME, x->asks->span,
                                 aside ? "\"%.*s\" has faults of its own, and this step of it "
                                         "repeats another one"
                                       : "\"%.*s\" shares and repeats steps of too many others",
                                 STR_ARG(x->source->name));
    diag_help(m->diags, diag, aside ? "mend that play first" : "write this step's sentences out");
    m->play->broken = true;
    return NULL;
}

static void expand_repeat(struct expansion *x, const struct form *form, said_list *into,
                          bool branches)
{
    struct maker *m = x->m;
    const struct maker *of = x->source ? play_of_repeat(x) : m;
    if (!of || !step_is_known(m, form, of->scripts.count, !x->source)) {
        return;
    }
    int number[LIMIT_ATTACKERS + 1] = {0};
    size_t index = (size_t)form->note->step - 1;
    bool mirrored = form->note->mirrored != (x->source && x->turned);
    if (match_spots(m, form, of->stances[index], mirrored, number) &&
        ball_is_there(m, form, of->holders[index], number)) {
        copy_script(x, &of->scripts.at[index], into, number, mirrored, branches);
    }
}

/* ---- same ---- */

static const struct block *nth_step(const struct block *whole, int number)
{
    int seen = 0;
    for (size_t i = 0; i < whole->forms.count; i++) {
        const struct form *form = &whole->forms.at[i];
        if (form->kind == FORM_BLOCK && form->block->kind == BLOCK_STEP && ++seen == number) {
            return form->block;
        }
    }
    return seen == 0 && number == 1 ? whole : NULL;
}

static void expand_same(struct expansion *x, const struct form *form, const struct voice *voice,
                        said_list *into, bool branches)
{
    struct maker *m = x->m;
    const struct note_form *note = form->note;
    const struct source_play *source = play_by_name(m, note->text);
    bool mirrored = false;
    const struct block *whole = source ? play_body(m, source, &mirrored) : NULL;
    const struct block *step = whole ? nth_step(whole, note->step) : NULL;
    if (!step) {
        struct diag *diag =
            source ? diag_add(m->diags, DIAG_PLAY_SAME, form->span, "\"%.*s\" has no step %d",
                              STR_ARG(note->text), note->step)
                   : diag_add(m->diags, DIAG_PLAY_SAME, note->text_span,
                              "there is no play \"%.*s\" in this book", STR_ARG(note->text));
        diag_help(m->diags, diag,
                  "name a step of a play of this book: same as step 1 of "
                  "\"Lantern\"");
        m->play->broken = true;
        return;
    }
    if (already_running(x, step, form->span)) {
        m->play->broken = true;
        return;
    }
    struct voice *shared = voice_copy(m, voice);
    shared->mirrored = voice->mirrored != mirrored;
    const struct source_play *outer = x->source;
    bool turned = x->turned;
    x->source = source;
    x->turned = voice->mirrored;
    m->play->broken = m->play->broken || block_is_broken(step);
    x->running[x->depth++] = step;
    expand_forms(x, step, shared, into, branches && x->take_branches);
    x->depth--;
    x->source = outer;
    x->turned = turned;
}

/* ---- a block ---- */

/* Follows the ball through the words, for roles that must have it. */
static void follow_ball(struct maker *m, const struct sentence *s, const struct voice *voice)
{
    const struct verb_row *row = verb_row(s->verb);
    if (row->task == VERB_SHOOT) {
        m->flow.holder = BODY_NONE;
    } else if (row->task == VERB_PASS || row->task == VERB_EXCHANGE) {
        struct diags aside, *kept = m->diags;
        diags_init(&aside, m->arena);
        m->diags = &aside;
        m->flow.holder = who_body(m, &s->object, voice);
        m->diags = kept;
    }
}

static void expand_branch(struct expansion *x, const struct block *block, const struct voice *voice)
{
    struct branch_script branch = {.block = block, .voice = voice};
    body holder = x->m->flow.holder;
    expand_forms(x, block, voice, &branch.lines, false);
    x->m->flow.holder = holder;
    VEC_PUSH(x->m->arena, &x->script->branches, branch);
}

static void add_line(struct expansion *x, said_list *into, const struct form *form,
                     const struct voice *voice)
{
    VEC_PUSH(x->m->arena, into, ((struct said){form, voice}));
    x->lines++;
}

/* Past a limit the step is refused as a whole: no more of it needs writing out. */
static bool is_full(const struct expansion *x)
{
    return x->unwinds || x->stopped || x->lines > LIMIT_SENTENCES ||
           x->script->branches.count > LIMIT_BRANCHES;
}

static bool is_branch(const struct form *form)
{
    return form->kind == FORM_BLOCK &&
           (form->block->kind == BLOCK_READ || form->block->kind == BLOCK_OPTION);
}

static void expand_forms(struct expansion *x, const struct block *block, const struct voice *voice,
                         said_list *into, bool branches)
{
    struct maker *m = x->m;
    for (size_t i = 0; i < block->forms.count && !is_full(x); i++) {
        const struct form *form = &block->forms.at[i];
        x->asks = x->depth ? x->asks : form; /* what is run stands elsewhere */
        switch (form->kind) {
        case FORM_SENTENCE:
            follow_ball(m, form->sentence, voice);
            add_line(x, into, form, voice);
            break;
        case FORM_POINT:
        case FORM_MISTAKE:
        case FORM_CHART:
        case FORM_ACCEPT:
        case FORM_CONTINUE:
            add_line(x, into, form, voice);
            break;
        case FORM_RUN:
            expand_run(x, form, voice, into, branches);
            break;
        case FORM_REPEAT:
            expand_repeat(x, form, into, branches);
            break;
        case FORM_SAME:
            expand_same(x, form, voice, into, branches);
            break;
        case FORM_BLOCK:
            if (is_branch(form) && branches) {
                expand_branch(x, form->block, voice);
            }
            break;
        default:
            break;
        }
        x->unwinds = x->unwinds && x->depth > 0;
    }
}

void expand_step(struct maker *m, const struct block *block, struct script *script)
{
    struct expansion x = {.m = m, .script = script, .take_branches = true};
    for (size_t i = 0; i < block->forms.count; i++) { /* its own reads stand in for shared ones */
        x.take_branches = x.take_branches && !is_branch(&block->forms.at[i]);
    }
    body holder = m->flow.holder;
    expand_forms(&x, block, m->plain, &script->lines, true);
    m->flow.holder = holder;
    script->last = x.asks ? x.asks->span : block->span;
}
