/* SPDX-License-Identifier: MIT */
/* reads: what a read or a sentence has a defender do, and he cannot: of a screen where his man has
 * to do with none, of a ball that never comes, too late. Looks before a way through a step is run,
 * as a sentence starts, and when all is over; changes nothing but what is reported, and a duty's
 * `vain`. */
#include "floor/sim/lacks.h"

/* Of what is missing: of whom it is said, what, and what can be typed: @ is he, # a team-mate. */
enum of_whom { OF_MAN, OF_WHOM, OF_NOBODY };
static const struct {
    enum of_whom who;
    const char *text, *help;
} say_of[LACK_COUNT] = {
    [LACK_USER] = {OF_MAN, "uses no screen", "write the screen it answers: # screens for @"},
    [LACK_SCREEN] = {OF_MAN, "sets no screen", "write the screen it answers: @ screens for #"},
    [LACK_PICK] = {OF_MAN, "is at no screen on the ball",
                   "write the screen it answers, 5 ball screens for 1, or name who is at one"},
    [LACK_PAIR] = {OF_MAN, "is at no screen with the other one's man",
                   "write the screen that it answers, or name the two who do it"},
    [LACK_PART] = {OF_WHOM, "has no part in that screen", "leave @ out"},
    [LACK_MOVE] = {OF_WHOM, "goes nowhere", "write where: @ cuts to the rim"},
    [LACK_BALL] = {OF_WHOM, "never has the ball then",
                   "write the pass, # passes to @, or name who has the ball"},
    [LACK_NO_BALL] = {OF_WHOM, "has the ball all the while",
                      "name a player without the ball, or write the pass: @ passes to #"},
    [LACK_CATCH] = {OF_WHOM, "has the ball from the start, within reach",
                    "write the pass first that it answers: # passes to @"},
    [LACK_STEP] = {OF_WHOM, "has no part in this step",
                   "name somebody whom the step is about, or write what it opens: # passes to @"},
    [LACK_OWN] =
        {OF_MAN, "is the one who drives",
         "name a defender of a player without the ball, or what he does himself: goes over, "
         "trails"},
    [LACK_THREAT] = {OF_NOBODY, "nobody drives, cuts or screens in this step",
                     "write first what it answers: 1 drives to the rim"},
    [LACK_SHOT] = {OF_NOBODY, "nobody shoots in this step", "write the shot first: 2 shoots"},
    [LACK_DRIVE] = {OF_NOBODY, "nobody comes at the rim with the ball in this step",
                    "write the drive, 1 drives to the rim, or where to: helps to the lane"},
    [LACK_LEAVING] = {OF_MAN, "is near",
                      "leave it out, or write first what draws the defender off: helps, tags, "
                      "doubles"},
};

/* What is missing, in words: "x3 guards 3, and 3 uses no screen". */
static struct str what_lacks(const struct world *world, const struct word *word, enum lack lack)
{
    struct strbuf out;
    strbuf_init(&out, world->arena);
    bool named = say_of[lack].who == OF_WHOM && word->whom != BODY_NONE;
    if (say_of[lack].who == OF_NOBODY) {
        strbuf_text(&out, say_of[lack].text);
    } else if (named && word->whom != word->man) {
        strbuf_print(&out, "%s %s", said_who(world, word->whom), say_of[lack].text);
    } else if (word->man == BODY_NONE) {
        strbuf_text(&out, "there is no screen for it in this step");
    } else {
        const char *man = said_who(world, word->man);
        strbuf_print(&out, "%s guards %s, and %s %s", said_who(world, word->self), man, man,
                     say_of[lack].text);
    }
    return strbuf_str(&out);
}

/* Who may give him the ball or use his screen: who has it, or is about to; else the first. To
 * screen for him: the last. */
static body mate_of(const struct world *world, body who, bool screens)
{
    body mate = BODY_NONE;
    for (int b = 0; b < BODY_COACH; b++) {
        bool has = ball_is_for(world, (body)b);
        if (world->agent[b].here && b != who && (mate == BODY_NONE || screens || has)) {
            mate = (body)b;
        }
    }
    return mate;
}

static struct str help_of(const struct world *world, const struct word *word, enum lack lack)
{
    body who = say_of[lack].who == OF_WHOM && word->whom != BODY_NONE ? word->whom : word->man;
    body mate = mate_of(world, who, lack == LACK_USER);
    struct strbuf out;
    strbuf_init(&out, world->arena);
    for (const char *c = say_of[lack].help; *c; c++) {
        if (*c == '@' || *c == '#') {
            body b = *c == '@' ? who : mate;
            strbuf_text(&out, b == BODY_NONE ? "3" : said_who(world, b));
        } else {
            strbuf_char(&out, *c);
        }
    }
    return strbuf_str(&out);
}

static void say(struct world *world, enum diag_code code, struct span span, const struct word *word,
                enum lack lack)
{
    struct str what = what_lacks(world, word, lack);
    struct diag *diag = diag_add(world->diags, code, span, "`%.*s` cannot come about here: %.*s",
                                 STR_ARG(source_text(world->sources, span)), STR_ARG(what));
    body other = lacks_instead(world, lack);
    if (other != BODY_NONE && other != word->self) {
        diag_help(world->diags, diag, "write: %s%s %s", code == DIAG_RUN_READ ? "read " : "",
                  said_who(world, other), verb_row(word->verb)->words);
    } else {
        diag_help(world->diags, diag, "%.*s", STR_ARG(help_of(world, word, lack)));
    }
}

/* ---- reads ---- */

static body man_of(const struct world *world, body self)
{
    bool his = self < BODY_COUNT && body_is_defender(self) && !guard_has_area(world, self);
    return his ? world->guards[self] : (body)BODY_NONE;
}

static body attacker(const struct who *who)
{
    return who->kind == WHO_PLAYER ? body_attacker(who->number) : (body)BODY_NONE;
}

/* What a condition asks of one of the defenders it names; false: of no defender, or nothing. */
static bool word_of(const struct world *world, const struct condition *condition, bool second,
                    struct word *word)
{
    bool both = condition->kind == COND_BOTH;
    body self = duty_read_of(world, second ? &condition->other : &condition->who);
    body mate = duty_read_of(world, second ? &condition->who : &condition->other);
    if (self >= BODY_COUNT || (second && !both)) {
        return false;
    }
    *word = (struct word){.verb = condition->verb,
                          .self = self,
                          .man = man_of(world, self),
                          .whom = attacker(both ? &condition->object : &condition->other),
                          .other = man_of(world, mate),
                          .has_place = condition->place != NULL,
                          .is_read = true};
    if (condition->kind == COND_DENIED) {
        word->verb = VERB_DENIES;
        word->whom = attacker(&condition->who);
    }
    if (condition->kind == COND_OPEN) {
        word->verb = VERB_SAGS;
        word->whom = attacker(&condition->who);
    }
    return condition->kind != COND_COVERED && condition->kind != COND_OTHERWISE;
}

static const struct branch *branch_of(const struct world *world)
{
    return world->branch < 0 ? NULL : &world->step->branches.at[world->branch];
}

static void read_lacks(struct world *world, const struct condition *condition)
{
    for (int second = 0; second < 2; second++) {
        struct word word;
        bool asks = word_of(world, condition, second > 0, &word);
        enum lack lack = asks ? lacks(world, &word) : LACK_NONE;
        if (asks) {
            world->duty[word.self].vain = lack != LACK_NONE;
        }
        if (lack != LACK_NONE && world_is_written(world, condition->span)) {
            say(world, DIAG_RUN_READ, condition->span, &word, lack);
            return;
        }
    }
}

/* The read or a sentence says what he does. */
static bool is_told(const struct world *world, body self)
{
    const struct branch *branch = branch_of(world);
    for (size_t i = 0; branch && i < branch->conditions.count; i++) {
        const struct condition *condition = &branch->conditions.at[i];
        if (duty_read_of(world, &condition->who) == self ||
            duty_read_of(world, &condition->other) == self) {
            return true;
        }
    }
    for (size_t i = 0; i < world->jobs; i++) {
        if (world->job[i].task->who == self) {
            return true;
        }
    }
    return false;
}

static bool may_be_supposed(const struct world *world, const struct wait *deed)
{
    struct condition condition = deed_condition(deed);
    struct word word;
    return !is_told(world, deed->who) &&
           (!word_of(world, &condition, false, &word) || lacks(world, &word) == LACK_NONE);
}

/* All of those joined by `or`, though only the first is run; before the read has anybody change his
 * man. */
void reads_look(struct world *world)
{
    const struct branch *branch = branch_of(world);
    for (size_t i = 0; branch && i < branch->conditions.count; i++) {
        read_lacks(world, &branch->conditions.at[i]);
    }
    for (size_t i = 0; world->supposed && i < world->supposed->count; i++) {
        world->failed |= !may_be_supposed(world, world->supposed->at[i]);
    }
}

/* ---- sentences ---- */

static struct word word_told(const struct world *world, const struct job *job)
{
    const struct task *task = job->task;
    return (struct word){.verb = task->verb,
                         .self = task->who,
                         .man = man_of(world, task->who),
                         .whom = task->other,
                         .other = man_of(world, task->on),
                         .has_place = task->goal_written};
}

void reads_start(struct world *world, const struct job *job)
{
    struct word word = word_told(world, job);
    enum lack lack = lacks(world, &word);
    world->duty[job->task->who].vain = lack != LACK_NONE;
    if (lack != LACK_NONE && lack != LACK_PAIR && /* without a screen they switch at once */
        world_is_written(world, job->task->span) && !trouble_told(world, job)) {
        say(world, DIAG_RUN_DUTY, job->task->span, &word, lack);
    }
}

/* ---- when it is over ---- */

/* The sentence or the read that he has his duty from. */
static struct span span_of(const struct world *world, const struct duty *duty)
{
    const struct branch *branch = branch_of(world);
    if (duty->task != SIM_NO_TASK) {
        return world->job[duty->task].task->span;
    }
    bool read = branch && branch->conditions.count > 0 && !duty->by_rule;
    return read ? branch->conditions.at[0].span : SPAN_NONE;
}

static void say_late(struct world *world, body self, struct span span)
{
    const struct duty *duty = &world->duty[self];
    body whom = duty->whom != BODY_NONE ? duty->whom : duty_about(world, self);
    struct diag *diag =
        diag_add(world->diags, DIAG_RUN_DUTY_LATE, span, "`%.*s`: %s never gets to %s in this step",
                 STR_ARG(source_text(world->sources, span)), said_who(world, self),
                 whom < BODY_COUNT ? said_who(world, whom) : "the ball");
    diag_help(world->diags, diag, "start %s nearer, or give it time: 1 holds for 1 s",
              said_who(world, self));
}

/* He was to meet somebody: at the ball, on his way. */
static bool meets_nobody(const struct duty *duty)
{
    bool comes = duty->strategy == STRATEGY_DOUBLE || duty->strategy == STRATEGY_TRAP ||
                 duty->strategy == STRATEGY_TAG || duty->strategy == STRATEGY_BUMP;
    return comes && !duty->met && !duty->by_rule && !duty->waits;
}

static bool told_of(const struct world *world, const struct duty *duty)
{
    return duty->vain ||
           (duty->task != SIM_NO_TASK && trouble_told(world, &world->job[duty->task]));
}

static void say_waits(struct world *world, body self, struct span span, enum lack lack)
{
    struct word word = {.verb = branch_of(world)->conditions.at[0].verb,
                        .self = self,
                        .man = man_of(world, self),
                        .whom = world->duty[self].whom,
                        .other = BODY_NONE};
    say(world, DIAG_RUN_READ, span, &word, lack);
}

/* Something else was written for him before in the step. */
static bool had_another(const struct world *world, body self)
{
    for (size_t i = 0; i < world->jobs; i++) {
        const struct job *job = &world->job[i];
        bool his = job->task->kind == TASK_GUARD && job->task->who == self;
        if (his && job->phase != PHASE_WAITING && job->index != world->duty[self].task) {
            return true;
        }
    }
    return false;
}

void reads_recover(struct world *world, body self)
{
    const struct duty *duty = &world->duty[self];
    struct span span = span_of(world, duty);
    struct word word = {.verb = VERB_RECOVERS,
                        .self = self,
                        .man = man_of(world, self),
                        .whom = BODY_NONE,
                        .other = BODY_NONE};
    if (world_is_written(world, span) && !told_of(world, duty) && !had_another(world, self)) {
        say(world, duty->task == SIM_NO_TASK ? DIAG_RUN_READ : DIAG_RUN_DUTY, span, &word,
            LACK_LEAVING);
    }
}

void reads_end(struct world *world)
{
    for (int b = BODY_FIRST_DEFENDER; b < BODY_COUNT && !world->failed; b++) {
        const struct duty *duty = &world->duty[b];
        struct span span = span_of(world, duty);
        if (!world->agent[b].here || !world_is_written(world, span) || told_of(world, duty)) {
            continue;
        }
        enum lack lack = duty->waits ? lacks_still(duty->strategy) : LACK_NONE;
        if (lack != LACK_NONE) {
            say_waits(world, (body)b, span, lack);
        } else if (meets_nobody(duty)) {
            say_late(world, (body)b, span);
        }
    }
}
