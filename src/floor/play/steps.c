/* SPDX-License-Identifier: MIT */
/* steps: the steps of one play with their branches, notes and conditions. */
#include "floor/play/resolve.h"

#include <assert.h>
#include <string.h>

/* ---- notes ---- */

struct notes {
    point_list *points, *mistakes, *charts, *accepts;
};

/* A reason to accept a finding is for the coach alone: it stays as he wrote it. */
static bool note_text(struct maker *m, const struct form *form, const struct voice *voice,
                      struct str *text)
{
    struct str unsure;
    *text = form->note->text;
    if (form->kind == FORM_ACCEPT || retold_note(m, *text, voice, text, &unsure)) {
        return true;
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_NOTE_LEFT, form->span,
                 "left out where this is said again%s: `%.*s` may have to change there, or not",
                 voice->mirrored ? " on the other side" : " for other players", STR_ARG(unsure));
    if (unsure.at[0] >= '1' && unsure.at[0] <= '0' + LIMIT_ATTACKERS) {
        diag_help(m->diags, diag,
                  "write a count in letters, `two`; a player so that nothing is counted: `%c is`, "
                  "`%c's`",
                  unsure.at[0], unsure.at[0]);
    } else {
        diag_help(m->diags, diag, "say what is on that side: `the left side`, `left hand`");
    }
    return false;
}

static void add_point(struct maker *m, point_list *list, const struct form *form, int player,
                      const struct voice *voice)
{
    struct point point = {.player = player, .word = form->note->word, .span = form->span};
    if (note_text(m, form, voice, &point.text)) {
        VEC_PUSH(m->arena, list, point);
    }
}

static void note_line(struct maker *m, const struct notes *to, const struct form *form,
                      const struct voice *voice)
{
    if (form->kind < FORM_POINT || form->kind > FORM_ACCEPT) {
        return;
    }
    int player = form->note->player;
    if (player) {
        struct who who = {.kind = WHO_PLAYER, .number = player, .span = form->span};
        body b = who_body(m, &who, voice);
        if (b == BODY_NONE) {
            return;
        }
        player = body_number(b);
    }
    point_list *const lists[] = {[FORM_POINT] = to->points,
                                 [FORM_MISTAKE] = to->mistakes,
                                 [FORM_CHART] = to->charts,
                                 [FORM_ACCEPT] = to->accepts};
    if (lists[form->kind]) {
        add_point(m, lists[form->kind], form, player, voice);
    }
}

/* ---- the lines of a block ---- */

/* One way only goes on: the one before it is shown, of this read or of another. */
static void continue_here(struct maker *m, struct span span)
{
    for (size_t i = 0; i < m->step->branches.count; i++) {
        const struct branch *other = &m->step->branches.at[i];
        if (other->continues) {
            struct diag *diag = diag_add(m->diags, DIAG_PLAY_CONTINUE, span,
                                         "`continue here` stands twice in this step");
            diag_help(m->diags, diag, "keep the one that the next step goes on from");
            if (diag) {
                diag->other = other->continues_span;
            }
            m->play->broken = true;
            return;
        }
    }
    m->branch->continues = true;
    m->branch->continues_span = span;
}

static void block_lines(struct maker *m, const said_list *lines, const struct notes *notes)
{
    m->block = lines;
    for (m->line = 0; m->line < lines->count; m->line++) {
        const struct said *said = &lines->at[m->line];
        if (said->form->kind == FORM_SENTENCE) {
            sentence_tasks(m, said->form->sentence, said->voice);
        } else if (said->form->kind == FORM_CONTINUE) {
            if (m->branch) {
                continue_here(m, said->form->span);
            } else {
                struct diag *diag = diag_add(m->diags, DIAG_PLAY_CONTINUE, said->form->span,
                                             "`continue here` belongs under a read or an option");
                diag_help(m->diags, diag, "without it the next step goes on from the first branch");
            }
        } else {
            note_line(m, notes, said->form, said->voice);
        }
    }
}

/* ---- conditions ---- */

static bool settle_who(struct maker *m, struct who *who, const struct voice *voice)
{
    if (who->kind == WHO_NONE) {
        return true;
    }
    body b = who_body(m, who, voice);
    if (b == BODY_NONE) {
        return false;
    }
    who->kind = body_is_defender(b) ? WHO_DEFENDER : b == BODY_COACH ? WHO_COACH : WHO_PLAYER;
    who->number = body_number(b);
    return true;
}

static void add_condition(struct maker *m, struct branch *branch, struct condition condition,
                          const struct voice *voice)
{
    if (!settle_who(m, &condition.who, voice) || !settle_who(m, &condition.other, voice) ||
        !settle_who(m, &condition.object, voice) || !duty_condition(m, branch, &condition, voice)) {
        m->play->broken = true;
        return;
    }
    VEC_PUSH(m->arena, &branch->conditions, condition);
}

static bool who_is(const struct who *who, body you)
{
    return you != BODY_NONE && who->kind == WHO_PLAYER && body_attacker(who->number) == you;
}

static void who_print(struct strbuf *out, const struct who *who, const char *before, body you)
{
    if (who_is(who, you)) {
        strbuf_print(out, "%syou", before);
    } else if (who->kind == WHO_COACH) {
        strbuf_print(out, "%sthe coach", before);
    } else if (who->kind != WHO_NONE) {
        strbuf_print(out, "%s%s%d", before, who->kind == WHO_DEFENDER ? "x" : "", who->number);
    }
}

static void condition_print(struct strbuf *out, const struct condition *condition, body you)
{
    static const char *const states[] = {
        [COND_OPEN] = "open", [COND_COVERED] = "covered", [COND_DENIED] = "denied"};
    if (condition->kind == COND_OTHERWISE) {
        strbuf_text(out, "otherwise");
        return;
    }
    bool yours = who_is(&condition->who, you);
    who_print(out, &condition->who, "", you);
    if (condition->kind == COND_BOTH) {
        who_print(out, &condition->other, " and ", you);
        strbuf_print(out, " %s", verb_row(condition->verb)->bare);
        who_print(out, &condition->object, " ", you);
    } else if (condition->kind == COND_VERB) {
        const struct verb_row *row = verb_row(condition->verb);
        strbuf_print(out, " %s", yours ? row->bare : row->words);
        who_print(out, &condition->other, " ", you);
    } else {
        strbuf_print(out, " %s %s", yours ? "are" : "is", states[condition->kind]);
    }
}

/* " to the left block": a spot by its name; any other place goes unsaid. */
static void place_print(struct strbuf *out, const struct place *place)
{
    static const char *const sides[] = {
        [SIDE_NONE] = "",           [SIDE_LEFT] = "left ",      [SIDE_RIGHT] = "right ",
        [SIDE_BALL] = "ball side ", [SIDE_WEAK] = "weak side ", [SIDE_OPPOSITE] = "opposite "};
    if (place && place->kind == PLACE_SPOT) {
        strbuf_print(out, " to the %s%s", sides[place->side], spot_row(place->spot)->word);
    }
}

void branch_conditions_print(struct strbuf *out, const struct branch *branch, body you)
{
    for (size_t i = 0; i < branch->conditions.count; i++) {
        if (i > 0) {
            strbuf_text(out, " or ");
        }
        condition_print(out, &branch->conditions.at[i], you);
        place_print(out, branch->conditions.at[i].place);
    }
}

static struct branch branch_of(struct maker *m, const struct branch_script *script)
{
    struct branch branch = {.goal = goal_none(),
                            .kind =
                                script->block->kind == BLOCK_OPTION ? BRANCH_OPTION : BRANCH_READ,
                            .title = script->block->title,
                            .block = script->block,
                            .span = script->block->span};
    for (size_t i = 0; i < script->block->conditions.count; i++) {
        add_condition(m, &branch, script->block->conditions.at[i], script->voice);
    }
    if (branch.title.size == 0) {
        struct strbuf title;
        strbuf_init(&title, m->arena);
        branch_conditions_print(&title, &branch, BODY_NONE);
        branch.title = title.size ? strbuf_str(&title) : STR("read");
    }
    return branch;
}

/* ---- one step ---- */

static void begin_flow(struct maker *m, size_t index)
{
    m->flow.gave = -1;
    for (body b = 0; b < BODY_COUNT; b++) {
        m->flow.screen[b] = -1;
        m->stood[b] = m->flow.at[b];
    }
    memcpy(m->stances[index], m->stood, sizeof m->stood);
    m->holders[index] = m->flow.holder;
}

/* Which screens still stand unused when the way through the step is over. */
static void carry_screens(struct maker *m)
{
    body carried[BODY_COUNT];
    memcpy(carried, m->flow.carried, sizeof carried);
    for (body b = 0; b < BODY_COUNT; b++) {
        m->flow.carried[b] = BODY_NONE;
    }
    bool acted[BODY_COUNT] = {false};
    for (size_t i = 0; i < task_count(m); i++) {
        const struct task *task = task_at(m, i);
        acted[task->who] = acted[task->who] || task->kind != TASK_HOLD;
        if (task->kind == TASK_SCREEN) {
            m->flow.carried[task->who] = task->other;
        } else if (task->kind == TASK_MOVE || task->kind == TASK_CARRY) {
            m->flow.carried[task->who] = BODY_NONE;
        } else if (task->kind == TASK_USE) {
            m->flow.carried[task->who] = BODY_NONE;
            m->flow.carried[task->other] = BODY_NONE;
            carried[task->other] = BODY_NONE;
        }
    }
    for (body b = 0; b < BODY_COUNT; b++) {
        if (!acted[b]) {
            m->flow.carried[b] = carried[b];
        }
    }
}

static struct notes step_notes(struct step *step)
{
    return (struct notes){&step->points, &step->mistakes, &step->charts, &step->accepts};
}

static struct notes branch_notes(struct branch *branch)
{
    return (struct notes){&branch->points, &branch->mistakes, &branch->charts, &branch->accepts};
}

struct outcome { /* what a branch leaves behind */
    struct flow flow;
    work_list works;
};

static work_list works_copy(struct maker *m, const work_list *works)
{
    work_list copy = {0};
    for (size_t i = 0; i < works->count; i++) {
        VEC_PUSH(m->arena, &copy, works->at[i]);
    }
    return copy;
}

static void step_branches(struct maker *m, const struct script *script, struct outcome *ways)
{
    struct flow flow = m->flow;
    work_list common = m->works;
    int order = m->order, group = m->group, above = m->above;
    for (size_t i = 0; i < script->branches.count; i++) {
        struct branch branch = branch_of(m, &script->branches.at[i]);
        VEC_PUSH(m->arena, &m->step->branches, branch);
        m->branch = &m->step->branches.at[i];
        m->flow = flow;
        m->works = works_copy(m, &common);
        m->order = order;
        m->group = group;
        m->above = above;
        struct notes notes = branch_notes(m->branch);
        block_lines(m, &script->branches.at[i].lines, &notes);
        ways[i] = (struct outcome){m->flow, m->works};
    }
    m->branch = NULL;
    m->flow = flow;
    m->works = common;
    branches_contradict(m, m->step);
}

static void step_ties(struct maker *m, const struct outcome *ways)
{
    work_list common = m->works;
    size_t from = m->step->tasks.count;
    ties_resolve(m, 0);
    for (size_t i = 0; i < m->step->branches.count; i++) {
        m->branch = &m->step->branches.at[i];
        m->works = ways[i].works;
        ties_resolve(m, from);
    }
    m->branch = NULL;
    m->works = common;
}

/* ---- which branch a step follows ---- */

static int branch_named(const struct step *before, struct str name)
{
    for (size_t i = 0; i < before->branches.count; i++) {
        if (str_equal_fold(before->branches.at[i].title, name)) {
            return (int)i;
        }
    }
    return -1;
}

/* Where a step begins: at the end of this way through that step. */
struct following {
    int step, branch;
};

static void no_branch(struct maker *m, const struct block *block)
{
    struct strbuf names;
    strbuf_init(&names, m->arena);
    for (size_t s = 0; s < m->play->steps.count; s++) {
        const struct step *before = &m->play->steps.at[s];
        for (size_t i = 0; i < before->branches.count; i++) {
            strbuf_print(&names, "%s\"%.*s\"", names.size ? ", " : "",
                         STR_ARG(before->branches.at[i].title));
        }
    }
    struct diag *diag =
        diag_add(m->diags, DIAG_PLAY_NO_BRANCH, block->span,
                 "no step before this one has a branch \"%.*s\"", STR_ARG(block->after));
    if (names.size) {
        diag_help(m->diags, diag, "their branches: %s", names.at);
    } else {
        diag_help(m->diags, diag, "take `after` away: the step before has one way through");
    }
    m->play->broken = true;
}

/* The first step follows nothing. */
static void nothing_before(struct maker *m, const struct block *block)
{
    if (block->after.size == 0) {
        return;
    }
    struct diag *diag = diag_add(m->diags, DIAG_PLAY_NO_BRANCH, block->span,
                                 "there is no step before this one to have a branch \"%.*s\"",
                                 STR_ARG(block->after));
    diag_help(m->diags, diag, "take `after` away, or write first the step whose branch it is");
    m->play->broken = true;
}

/* The branch named, of the nearest step that has it; else the way on of the step before. */
static struct following step_to_follow(struct maker *m, size_t index, const struct block *block)
{
    for (size_t s = index; block->after.size && s-- > 0;) {
        int named = branch_named(&m->play->steps.at[s], block->after);
        if (named >= 0) {
            return (struct following){(int)s, named};
        }
    }
    if (index == 0) {
        nothing_before(m, block);
        return (struct following){-1, -1};
    }
    if (block->after.size) {
        no_branch(m, block);
    }
    const struct step *before = &m->play->steps.at[index - 1];
    for (size_t i = 0; i < before->branches.count; i++) {
        if (before->branches.at[i].continues) {
            return (struct following){(int)index - 1, (int)i};
        }
    }
    return (struct following){(int)index - 1, before->branches.count ? 0 : -1};
}

/* What is planned at the end of every way through the step. */
static void finish_step(struct maker *m, const struct outcome *ways)
{
    size_t branches = m->step->branches.count, index = m->play->steps.count - 1;
    struct flow *ends = arena_array(m->arena, struct flow, branches + 1);
    if (branches == 0) {
        carry_screens(m);
        ends[0] = m->flow;
    }
    for (size_t b = 0; b < branches; b++) {
        m->flow = ways[b].flow;
        m->branch = &m->step->branches.at[b];
        carry_screens(m);
        ends[b] = m->flow;
    }
    m->branch = NULL;
    m->ends[index] = ends;
}

static size_t sentences_in(const struct script *script)
{
    size_t count = script->lines.count;
    for (size_t i = 0; i < script->branches.count; i++) {
        count += script->branches.at[i].lines.count;
    }
    return count;
}

static bool within_limits(struct maker *m, struct script *script)
{
    if (sentences_in(script) > LIMIT_SENTENCES) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_TOO_MANY, script->last,
                                     "a step holds at most %d lines, with those it runs and those "
                                     "of its branches",
                                     LIMIT_SENTENCES);
        diag_help(m->diags, diag, "make two steps of it");
        m->play->broken = true;
        return false;
    }
    if (script->branches.count > LIMIT_BRANCHES) {
        struct diag *diag =
            diag_add(m->diags, DIAG_PLAY_TOO_MANY, script->last,
                     "a step holds at most %d branches, with those it runs", LIMIT_BRANCHES);
        diag_help(m->diags, diag, "make two steps of it");
        script->branches.count = LIMIT_BRANCHES;
        m->play->broken = true;
    }
    return true;
}

/* The moment of the step before at which this one begins, if it is tied to one. */
static void step_begins(struct maker *m, const struct block *block)
{
    const struct tie *tie = &block->tie;
    struct step *step = m->step;
    if (tie->word == TIE_NONE) {
        return;
    }
    if (step->after_step < 0) {
        struct diag *diag = diag_add(m->diags, DIAG_PLAY_STEP_TIE, tie->span,
                                     "there is no step before this one that could go on meanwhile");
        diag_help(m->diags, diag, "take the tie away: the first step begins at once");
        m->play->broken = true;
        return;
    }
    m->step = &m->play->steps.at[step->after_step];
    m->branch = step->after_branch >= 0 ? &m->step->branches.at[step->after_branch] : NULL;
    struct named by = {.subject = who_body(m, &tie->event->subject, m->plain), .object = BODY_NONE};
    if (tie->event->object.kind != WHO_NONE) {
        by.object = who_body(m, &tie->event->object, m->plain);
    }
    struct asked asked = {.event = tie->event,
                          .by = by,
                          .word = tie->word,
                          .index = (int)task_count(m),
                          .group = -1,
                          .holder = BODY_NONE,
                          .until = true,
                          .of_step = true};
    struct wait wait;
    if (event_asked(m, &asked, &wait)) {
        VEC_PUSH(m->arena, &step->begins, wait);
    }
    m->step = step;
    m->branch = NULL;
}

static void one_step(struct maker *m, const struct block *block)
{
    size_t index = m->play->steps.count;
    struct following follows = step_to_follow(m, index, block);
    struct step step = {.number = (int)index + 1,
                        .title = block->kind == BLOCK_STEP ? block->title : STR(""),
                        .block = block,
                        .after_step = follows.step,
                        .after_branch = follows.branch,
                        .span = block->span};
    VEC_PUSH(m->arena, &m->play->steps, step);
    m->step = &m->play->steps.at[index];
    if (follows.step >= 0) {
        m->flow = m->ends[follows.step][follows.branch < 0 ? 0 : follows.branch];
    }
    step_begins(m, block);
    begin_flow(m, index);
    m->order = m->group = 0;
    m->above = -1;
    m->works = (work_list){0};
    struct script script = {0};
    expand_step(m, block, &script);
    if (within_limits(m, &script)) {
        note_empty(m, &script, block);
    } else {
        script = (struct script){0};
    }
    VEC_PUSH(m->arena, &m->scripts, script);
    m->script = &m->scripts.at[index];
    struct notes notes = step_notes(m->step);
    block_lines(m, &script.lines, &notes);
    struct outcome *ways = arena_array(m->arena, struct outcome, script.branches.count + 1);
    step_branches(m, m->script, ways);
    step_ties(m, ways);
    finish_step(m, ways);
}

/* ---- the play ---- */

static bool is_step(const struct form *form)
{
    return form->kind == FORM_BLOCK && form->block->kind == BLOCK_STEP;
}

static size_t next_step(const struct block *whole, size_t from)
{
    while (from < whole->forms.count && !is_step(&whole->forms.at[from])) {
        from++;
    }
    return from;
}

/* Before the first step stand notes for the whole play; the reader has refused what happens. */
static void before_steps(struct maker *m, const struct block *whole, size_t first)
{
    struct notes notes = {&m->play->points, &m->play->mistakes, NULL, &m->play->accepts};
    for (size_t i = 0; i < first; i++) {
        note_line(m, &notes, &whole->forms.at[i], m->plain);
    }
}

void play_steps(struct maker *m)
{
    const struct block *whole = m->body;
    size_t at = next_step(whole, 0);
    if (at == whole->forms.count) {
        one_step(m, whole);
        screens_fit_ball(m);
        return;
    }
    before_steps(m, whole, at);
    while (at < whole->forms.count) {
        size_t next = next_step(whole, at + 1);
        assert(m->play->steps.count < LIMIT_STEPS); /* the reader of books sees to it */
        one_step(m, whole->forms.at[at].block);
        at = next;
    }
    screens_fit_ball(m);
}
