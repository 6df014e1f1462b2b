/* SPDX-License-Identifier: MIT */
/* above: words that point back to what stands above: the pass, the catch, the screen, his defender,
 * a defender's own man. They mean the latest that fits; none is an error, nothing is guessed. */
#include "language/words/grammar.h"

/* The sentences of a block behind those of `out`, which has room; without `out` only counted. */
static size_t add_forms(const struct block *block, above_list *out)
{
    size_t count = 0;
    for (size_t i = 0; block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_SENTENCE) {
            count++;
            if (out) {
                out->at[out->count++] = form->sentence;
            }
        }
    }
    return count;
}

static size_t add_above(const struct cursor *c, bool earlier, above_list *out)
{
    size_t count = 0;
    for (size_t i = 0; earlier && c->top && i < c->top->forms.count; i++) {
        const struct form *form = &c->top->forms.at[i];
        if (form->kind == FORM_BLOCK && form->block->kind == BLOCK_STEP && form->block != c->step) {
            count += add_forms(form->block, out);
        }
    }
    count += add_forms(c->top, out);
    count += add_forms(c->step != c->top ? c->step : NULL, out);
    count += add_forms(c->branch, out);
    for (size_t i = 0; out && c->here && i < c->here->count; i++) {
        out->at[out->count++] = &c->here->at[i];
    }
    return count + (c->here ? c->here->count : 0);
}

above_list above_sentences(const struct cursor *c, bool earlier)
{
    above_list list = {NULL, 0, 0};
    list.room = add_above(c, earlier, NULL);
    if (list.room > 0) {
        list.at = arena_take_array(c->arena, list.room, sizeof *list.at);
        add_above(c, earlier, &list);
    }
    return list;
}

size_t above_count(const struct cursor *c)
{
    return add_above(c, false, NULL);
}

bool acts_in(const struct sentence *s, const struct who *who)
{
    for (size_t k = 0; k < s->subject.count; k++) {
        if (same_who(&s->subject.at[k], who)) {
            return true;
        }
    }
    return false;
}

static bool task_is(const struct sentence *s, enum verb_task task)
{
    return verb_row(s->verb)->task == task;
}

/* A line above could not be read: it may have said what is pointed at. */
static bool broken_above(const struct cursor *c)
{
    const struct block *const blocks[] = {c->top, c->step, c->branch};
    for (size_t b = 0; b < sizeof blocks / sizeof *blocks; b++) {
        for (size_t i = 0; blocks[b] && i < blocks[b]->forms.count; i++) {
            if (blocks[b]->forms.at[i].kind == FORM_BROKEN) {
                return true;
            }
        }
    }
    return false;
}

static int none_above(struct cursor *c, struct span span, const char *what, const char *help)
{
    if (broken_above(c)) { /* reported there: one cause, one error */
        c->refusals++;
        return -1;
    }
    diag_help(c->diags,
              REFUSE(c, TEXT_POINTS_BACK, span, "`%.*s`: no %s stands above",
                     STR_ARG(cursor_text(c, span)), what),
              "%s", help);
    return -1;
}

/* The attacker whose number (or role) this token is. */
static bool attacker_token(const struct cursor *c, const struct token *token, struct who *out)
{
    struct cursor one = *c;
    struct cursor_mark mark = cursor_mark(&one);
    one.at = token;
    one.end = token + 1;
    bool number = token->kind == TOKEN_NUMBER || token->kind == TOKEN_WORD;
    bool found = number && !token->possessive && person_read(&one, out) &&
                 (out->kind == WHO_PLAYER || out->kind == WHO_ROLE);
    bool owner = number && token->possessive && owner_read(&one, out);
    cursor_back(&one, mark);
    return found || owner;
}

/* The latest attacker among tokens, from the last one back. */
static bool latest_attacker(const struct cursor *c, const struct token *begin,
                            const struct token *end, const struct who * not, struct who *out)
{
    while (end > begin) {
        end--;
        if (attacker_token(c, end, out) && !same_who(out, not )) {
            return true;
        }
    }
    return false;
}

static bool attacker_above(const struct cursor *c, const struct who * not, struct who *out)
{
    const struct block *const blocks[] = {c->branch, c->step, c->top};
    for (size_t b = 0; b < sizeof blocks / sizeof *blocks; b++) {
        for (size_t i = blocks[b] ? blocks[b]->forms.count : 0; i-- > 0;) {
            const struct form *form = &blocks[b]->forms.at[i];
            if (form->kind == FORM_SENTENCE &&
                latest_attacker(c, form->line->tokens, form->line->tokens + form->line->count, not,
                                out)) {
                return true;
            }
        }
    }
    return false;
}

bool his_defender_read(struct cursor *c, struct who *out)
{
    struct cursor trial = *c;
    if (!take_among(&trial, owner_words) || !take_among(&trial, defender_words)) {
        return false;
    }
    const struct token *from = c->at;
    struct who owner, nobody = {.kind = WHO_NONE};
    const struct who *not = c->screener ? c->screener : &nobody;
    c->at = trial.at;
    struct span span = cursor_taken(c, from);
    bool here = latest_attacker(c, c->first ? c->first : from, from, not, &owner);
    if (!here && !attacker_above(c, not, &owner)) {
        none_above(c, span, "attacker", "say the number: `x3` or `3's defender`");
        owner = nobody;
    } else if (!here && c->screener && owner.kind == WHO_PLAYER) {
        struct diag *diag = diag_add(c->diags, DIAG_TEXT_WHO_TAKEN, span,
                                     "whose is not written: that of %d, who was named last above, "
                                     "was taken",
                                     owner.number);
        diag_help(c->diags, diag, "to have another, say whose: `%d's defender`", owner.number);
    }
    *out = (struct who){
        .kind = WHO_DEFENDER_OF, .number = owner.number, .role = owner.role, .span = span};
    return true;
}

static void screeners(const struct sentence *s, struct who *out, struct who *second)
{
    *out = s->subject.at[0];
    *second = s->subject.count > 1 ? s->subject.at[1] : (struct who){.kind = WHO_NONE};
}

/* A screen on the ball is for whoever has it. */
static bool screens(const struct cursor *c, const struct sentence *s, const struct who *user)
{
    if (!task_is(s, VERB_SCREEN)) {
        return false;
    }
    return s->object.kind == WHO_BALL ? above_holds(c, user) : same_who(&s->object, user);
}

static const struct sentence *screen_for(const struct cursor *c, const struct who *user)
{
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0;) {
        const struct who *screener = &list.at[i]->subject.at[0];
        bool named = screener->kind == WHO_PLAYER || screener->kind == WHO_ROLE;
        if (named && screens(c, list.at[i], user)) {
            return list.at[i];
        }
    }
    return NULL;
}

bool above_last_screen(const struct cursor *c, struct who *user, struct who *screener)
{
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        const struct who *by = &s->subject.at[0];
        bool named = (by->kind == WHO_PLAYER || by->kind == WHO_ROLE) && s->subject.count == 1;
        if (task_is(s, VERB_SCREEN)) {
            *user = s->object;
            *screener = *by;
            return named && (user->kind == WHO_PLAYER || user->kind == WHO_ROLE);
        }
    }
    return false;
}

/* the screen, the down screen, the back pick: any noun of a screen. */
static bool take_screen_noun(struct cursor *c)
{
    static const char *const screens[] = {"screen", "ball screen",       "pick", "staggered screen",
                                          "double", "staggered screens", NULL};
    struct phrase phrase;
    struct cursor trial = *c;
    if (phrase_noun_read(&trial, &phrase) && verb_row(phrase.verb)->task == VERB_SCREEN) {
        c->at = trial.at;
        return true;
    }
    return take_among(c, screens);
}

bool above_screen_noun_is(const struct cursor *c)
{
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(&trial);
    struct who owner;
    trial.watch = NULL;
    bool owned = owner_read(&trial, &owner);
    bool found = take_screen_noun(&trial) || (!owned && take_words(&trial, "it"));
    cursor_back(&trial, mark);
    return found;
}

/* both, both screens, both of them: the two latest screens for this player that are not used. */
static int both_read(struct cursor *c, const struct who *user, struct who *out, struct who *second)
{
    static const char *const words[] = {
        "both of them",        "both screens", "both picks",  "two screens",
        "both of the screens", "pair of them", "two of them", "them",
        "their screens",       "both",         NULL};
    const struct token *from = c->at;
    if (!take_among(c, words)) {
        return 0;
    }
    above_list list = above_sentences(c, true);
    *out = *second = (struct who){.kind = WHO_NONE};
    for (size_t i = list.count; i-- > 0 && out->kind == WHO_NONE;) {
        const struct sentence *s = list.at[i];
        const struct who *by = &s->subject.at[0];
        bool screen = task_is(s, VERB_SCREEN) && same_who(&s->object, user);
        if (!screen || (by->kind != WHO_PLAYER && by->kind != WHO_ROLE)) {
            continue;
        }
        if (s->subject.count > 1) { /* a stagger is both */
            screeners(s, out, second);
        } else if (second->kind == WHO_NONE) {
            *second = *by;
        } else if (!same_who(second, by)) {
            *out = *by;
        }
    }
    return out->kind != WHO_NONE && second->kind != WHO_NONE
               ? 1
               : none_above(c, cursor_taken(c, from), "two screens for this player",
                            "say whose: `off 4 and 5`");
}

/* drives off that, comes off that to the block, off that screen: where nothing else follows that it
 * could be of. */
static bool take_that(struct cursor *c)
{
    struct cursor trial = *c;
    if (!c->speech || !take_words(&trial, "that")) {
        return false;
    }
    bool that = take_screen_noun(&trial) || part_ends(&trial) || word_among(&trial, place_words) ||
                word_among(&trial, particle_words);
    c->at = that ? trial.at : c->at;
    return that;
}

int above_screen_read(struct cursor *c, const struct who *user, struct who *out, struct who *second)
{
    const struct token *from = c->at;
    struct cursor_mark mark = cursor_mark(c);
    *second = (struct who){.kind = WHO_NONE};
    if (owner_read(c, out)) {
        if (take_screen_noun(c)) {
            return 1;
        }
        cursor_back(c, mark);
        return 0;
    }
    int both = c->speech ? both_read(c, user, out, second) : 0;
    if (both != 0) {
        return both;
    }
    if (!take_words(c, "it") && !take_screen_noun(c) && !take_that(c)) {
        return 0;
    }
    struct span span = cursor_taken(c, from);
    const struct sentence *s = screen_for(c, user);
    if (!s) {
        return none_above(c, span, "screen for this player", "say whose: `off 5`");
    }
    screeners(s, out, second);
    return 1;
}

static bool uses(const struct sentence *s, const struct who *user, const struct who *screener)
{
    return task_is(s, VERB_USE) && same_who(&s->subject.at[0], user) &&
           (same_who(&s->object, screener) || (s->object2 && same_who(s->object2, screener)));
}

bool above_waiting_screen(const struct cursor *c, const struct who *user, struct who *out,
                          struct who *second, bool *several)
{
    above_list list = above_sentences(c, true);
    size_t found = 0;
    *several = false;
    for (size_t i = 0; i < list.count; i++) {
        const struct sentence *s = list.at[i];
        bool named = s->subject.at[0].kind == WHO_PLAYER || s->subject.at[0].kind == WHO_ROLE;
        if (!named || !screens(c, s, user)) {
            continue;
        }
        bool used = false;
        for (size_t k = i + 1; k < list.count; k++) {
            bool again = task_is(list.at[k], VERB_SCREEN) &&
                         same_who(&list.at[k]->subject.at[0], &s->subject.at[0]);
            used = used || again || uses(list.at[k], user, &s->subject.at[0]);
        }
        if (!used) {
            screeners(s, out, second);
            found++;
        }
    }
    *several = found > 1;
    return found == 1;
}

/* Written on the line that is being read, behind another full stop or not. */
static bool on_this_line(const struct cursor *c, const struct sentence *s)
{
    for (size_t i = 0; c->here && i < c->here->count; i++) {
        if (&c->here->at[i] == s) {
            return true;
        }
    }
    struct span here = c->line_span;
    if (s->span.source != here.source || here.source == SOURCE_NONE) {
        return false;
    }
    const struct source *source = &c->sources->all.at[here.source];
    return source_place(source, s->span.begin).line == source_place(source, here.begin).line;
}

/* The last of these that is a screen set for somebody, as an index; their count: none is. */
static size_t last_screen(const struct cursor *c, const above_list *list, const struct who *user)
{
    for (size_t i = list->count; i-- > 0;) {
        if (task_is(list->at[i], VERB_SCREEN) && screens(c, list->at[i], user)) {
            return i;
        }
    }
    return list->count;
}

bool above_screen_here(const struct cursor *c, const struct who *user, struct who *out,
                       enum screen_kind *kind, struct who *second)
{
    bool several;
    above_list list = above_sentences(c, false);
    size_t set = last_screen(c, &list, user);
    if (set == list.count || !above_waiting_screen(c, user, out, second, &several)) {
        return false;
    }
    *kind = list.at[set]->screen;
    return on_this_line(c, list.at[set]);
}

bool above_screen_holds(const struct cursor *c, const struct who *user, struct who *out,
                        enum screen_kind *kind, struct who *second)
{
    bool several;
    above_list list = above_sentences(c, true);
    size_t set = last_screen(c, &list, user);
    if (set == list.count || !above_waiting_screen(c, user, out, second, &several)) {
        return false;
    }
    for (size_t i = set + 1; i < list.count; i++) {
        const struct sentence *s = list.at[i];
        bool caught =
            (task_is(s, VERB_PASS) || task_is(s, VERB_EXCHANGE)) && same_who(&s->object, user);
        if (acts_in(s, user) || acts_in(s, out) || caught) {
            return false;
        }
    }
    *kind = list.at[set]->screen;
    return true;
}

bool above_screened(const struct cursor *c, const struct who *user, const struct who *screener)
{
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        bool his = task_is(s, VERB_SCREEN) &&
                   (same_who(&s->subject.at[0], screener) ||
                    (s->subject.count > 1 && same_who(&s->subject.at[1], screener)));
        if (his) {
            return screens(c, s, user);
        }
    }
    return false;
}

/* A line whose sentences stand elsewhere. */
static bool runs_others(const struct block *block)
{
    for (size_t i = 0; block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        if (form->kind == FORM_RUN || form->kind == FORM_REPEAT || form->kind == FORM_SAME ||
            (form->kind == FORM_BLOCK && runs_others(form->block))) {
            return true;
        }
    }
    return false;
}

static bool set_one(const struct sentence *s, const struct who *who)
{
    /* who hands off stands as a screen for who takes it; who has slipped one set one */
    bool screen = task_is(s, VERB_SCREEN) || task_is(s, VERB_EXCHANGE) || s->verb == VERB_SLIPS ||
                  s->verb == VERB_ROLLS || s->verb == VERB_POPS;
    for (size_t k = 0; screen && k < s->subject.count; k++) {
        const struct who *by = &s->subject.at[k];
        if (same_who(by, who) || by->kind == WHO_SPOT || by->kind == WHO_EVERYONE_ELSE) {
            return true;
        }
    }
    return false;
}

static bool has_set_one(const above_list *list, const struct who *who)
{
    for (size_t i = 0; i < list->count; i++) {
        if (set_one(list->at[i], who)) {
            return true;
        }
    }
    return false;
}

/* The same of a sentence of any branch above: the step goes on from one of them. */
static bool set_in_branches(const struct block *block, const struct who *who)
{
    for (size_t i = 0; block && i < block->forms.count; i++) {
        const struct form *form = &block->forms.at[i];
        bool inside = form->kind == FORM_BLOCK && set_in_branches(form->block, who);
        if (inside || (form->kind == FORM_SENTENCE && set_one(form->sentence, who))) {
            return true;
        }
    }
    return false;
}

/* Screens may stand where nobody looks: in an action that is run, or before the one being written.
 */
static bool screens_unseen(const struct cursor *c)
{
    return runs_others(c->top) || (c->top && c->top->kind == BLOCK_ACTION);
}

bool above_may_have_screened(const struct cursor *c, const struct who *user,
                             const struct who *screener)
{
    return above_screened(c, user, screener) || screens_unseen(c);
}

bool above_has_screened(const struct cursor *c, const struct who *who, size_t count)
{
    above_list list = above_sentences(c, true);
    if (screens_unseen(c)) {
        return true;
    }
    for (size_t i = 0; i < count; i++) {
        bool one = who[i].kind == WHO_PLAYER || who[i].kind == WHO_ROLE;
        if (one && !has_set_one(&list, &who[i]) && !set_in_branches(c->top, &who[i])) {
            return false;
        }
    }
    return true;
}

struct str above_verb(const struct cursor *c, const struct who *who)
{
    above_list list = above_sentences(c, true);
    for (size_t i = list.count; i-- > 0;) {
        const struct sentence *s = list.at[i];
        if (acts_in(s, who)) {
            return phrase_words(s->verb, s->pass, s->screen, false);
        }
    }
    return (struct str){"", 0};
}

struct who above_receiver(const struct cursor *c, const struct who *passer)
{
    above_list list = above_sentences(c, false);
    for (size_t i = list.count; i-- > 0;) {
        if (task_is(list.at[i], VERB_PASS) && same_who(&list.at[i]->subject.at[0], passer)) {
            return list.at[i]->object;
        }
    }
    return (struct who){.kind = WHO_NONE};
}
