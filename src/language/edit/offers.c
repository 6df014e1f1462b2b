/* SPDX-License-Identifier: MIT */
/* offers: see offers.h. */
#include "language/edit/offers.h"
#include "language/edit/paint.h"

#include <string.h>

#include "base/limits.h"
#include "language/syntax/chars.h"
#include "language/tidy/tidy_form.h"
#include "language/words/vocabulary.h"

struct gather {
    const struct context *context;
    struct arena *arena;
    candidate_list *out;
};

static struct candidate *add(struct gather *g, struct str text, enum edit_class class)
{
    struct candidate candidate = {.text = text, .name = text, .class = class};
    VEC_PUSH(g->arena, g->out, candidate);
    return &g->out->at[g->out->count - 1];
}

static void add_quoted(struct gather *g, struct str title, struct str what)
{
    struct strbuf out;
    strbuf_init(&out, g->arena);
    text_quote(&out, title);
    struct candidate *candidate = add(g, strbuf_str(&out), EDIT_QUOTED);
    candidate->name = STR("");
    candidate->what = what;
}

/* Her name, from the team of the book. */
static struct str player_name(const struct block *file, int number)
{
    for (size_t i = 0; i < file->forms.count; i++) {
        const struct form *form = &file->forms.at[i];
        if (form->kind == FORM_ROSTER && form->number == number) {
            return form->title;
        }
        bool inner = form->kind == FORM_INCLUDE ||
                     (form->kind == FORM_BLOCK && form->block->kind == BLOCK_TEAM);
        struct str name = inner && form->block ? player_name(form->block, number) : STR("");
        if (name.size > 0) {
            return name;
        }
    }
    return STR("");
}

static void add_people(struct gather *g)
{
    bool drill = g->context->top == BLOCK_DRILL;
    int most = drill ? LIMIT_ATTACKERS : 5;
    for (int i = 1; i <= most; i++) {
        add(g, str_format(g->arena, "%d", i), EDIT_PLAYER)->what =
            player_name(g->context->book->file, i);
    }
    for (int i = 1; i <= most; i++) {
        add(g, str_format(g->arena, "x%d", i), EDIT_DEFENDER)->what =
            str_format(g->arena, "guards %d", i);
    }
    for (int i = 1; i <= most; i++) {
        struct str owner = str_format(g->arena, "%d's spot", i);
        add(g, owner, EDIT_PLACE)->when_typed = true;
        owner = str_format(g->arena, "%d's defender", i);
        add(g, owner, EDIT_DEFENDER)->when_typed = true;
    }
    add(g, STR("coach"), EDIT_PLAYER);
    add(g, STR("everyone else"), EDIT_PLAYER);
    add(g, STR("the ball"), EDIT_PLAYER)->name = STR("");
}

static void add_roles(struct gather *g, const struct block *action)
{
    for (size_t i = 0; i < action->roles.count; i++) {
        struct candidate *role = add(g, action->roles.at[i], EDIT_PLAYER);
        role->what = STR("a role");
        role->sure = true;
    }
}

/* "passes to", "screens for", "down screens for": with the preposition it must have. */
static struct str phrase_text(struct gather *g, const struct phrase *phrase, struct str head)
{
    struct slot slots[SLOTS_MOST];
    size_t count = verb_slots(phrase->verb, slots);
    struct str preposition = count > 0 && slots[0].needed ? slots[0].preposition : STR("");
    bool said = preposition.size > 0 && head.size > preposition.size &&
                str_equal((struct str){head.at + head.size - preposition.size, preposition.size},
                          preposition) &&
                head.at[head.size - preposition.size - 1] == ' ';
    if (preposition.size == 0 || said || phrase_has(phrase, 'O')) {
        return head;
    }
    return str_format(g->arena, "%.*s %.*s", STR_ARG(head), STR_ARG(preposition));
}

/* as 1 …: a clause says who does what, without to whom or where. */
static bool in_clause(const struct gather *g)
{
    static const char *const words[] = {"as", "after", "when", "while", "once", "until", NULL};
    const struct line *line = &g->context->line;
    for (size_t i = line->count; i-- > 0;) {
        const struct token *token = &line->tokens[i];
        if (token->kind == TOKEN_MARK) {
            return false;
        }
        for (size_t k = 0; token->kind == TOKEN_WORD && words[k]; k++) {
            if (str_is(token->text, words[k])) {
                return true;
            }
        }
    }
    return false;
}

static void add_verbs(struct gather *g)
{
    bool clause = in_clause(g);
    for (size_t i = 0; i < phrase_count(); i++) {
        struct phrase phrase = phrase_at(i);
        struct str first = phrase_words(phrase.verb, phrase.pass, phrase.screen, false);
        struct str words = str_of(phrase.words);
        struct str text = phrase_text(g, &phrase, words);
        if (clause && str_equal(words, str_of(verb_row(phrase.verb)->words))) {
            text = verb_head(phrase.verb, false);
        } else if (clause) {
            text = words;
        }
        struct candidate *candidate = add(g, text, EDIT_VERB);
        candidate->name = str_of(verb_row(phrase.verb)->words);
        bool tidy = str_equal(words, first) || str_equal(words, candidate->name);
        candidate->when_typed = !tidy || phrase.pass != PASS_PLAIN || phrase.screen != SCREEN_PLAIN;
    }
}

static void add_entries(struct gather *g, const struct entry *entries, enum edit_class class)
{
    for (const struct entry *entry = entries; entry->words; entry++) {
        bool first = strcmp(entry_words(entries, entry->value), entry->words) == 0;
        add(g, str_of(entry->words), class)->when_typed = !first;
    }
}

static void add_places(struct gather *g)
{
    for (const struct entry *entry = spot_entries; entry->words; entry++) {
        bool first = strcmp(entry_words(spot_entries, entry->value), entry->words) == 0;
        for (int side = 0; side < 2 && spot_takes_side((enum spot)entry->value); side++) {
            const char *word = side ? "right" : "left";
            struct candidate *sided =
                add(g, str_format(g->arena, "%s %s", word, entry->words), EDIT_PLACE);
            sided->name = str_of(entry->words);
            sided->when_typed = !first;
        }
        bool needs = spot_needs_side((enum spot)entry->value);
        add(g, str_of(entry->words), EDIT_PLACE)->when_typed = !first || needs;
    }
    add_entries(g, side_entries, EDIT_PLACE);
    add_entries(g, direction_entries, EDIT_PLACE);
    add_entries(g, way_entries, EDIT_PLACE);
    add_entries(g, fraction_entries, EDIT_PLACE);
}

/* The prepositions of the verbs' slots and the words of a way round somebody. */
static void add_prepositions(struct gather *g)
{
    static const char *const others[] = {
        "around",  "over",       "under",     "past",         "and",     "with",    "of",
        "is open", "is covered", "is denied", "has the ball", "catches", "mirrors", NULL};
    for (int verb = 0; verb < VERB_COUNT; verb++) {
        struct slot slots[SLOTS_MOST];
        size_t count = verb_slots((enum verb)verb, slots);
        for (size_t i = 0; i < count; i++) {
            if (slots[i].preposition.size > 0) {
                add(g, slots[i].preposition, EDIT_PLAIN)->name = STR("");
            }
        }
    }
    for (size_t i = 0; others[i]; i++) {
        add(g, str_of(others[i]), EDIT_PLAIN);
    }
}

static bool is_among(const char *const *words, struct str word)
{
    while (*words && !str_is(word, *words)) {
        words++;
    }
    return *words != NULL;
}

static enum edit_class word_class(struct str word)
{
    return is_among(when_words, word)  ? EDIT_TIE
           : is_among(how_words, word) ? EDIT_MODIFIER
                                       : EDIT_PLAIN;
}

/* Whatever is in no other table: ties, modifiers, words of a place. */
static void add_words(struct gather *g)
{
    static const struct {
        const char *word, *names;
    } rows[] = {
#define WORD(word, names, what, example) {word, names},
#include "language/words/words.def"
#undef WORD
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        add(g, str_of(rows[i].word), word_class(str_of(rows[i].word)));
        for (const char *at = rows[i].names; *at;) {
            size_t size = strcspn(at, "|");
            struct candidate *other =
                add(g, (struct str){at, size}, word_class((struct str){at, size}));
            other->name = str_of(rows[i].word);
            other->when_typed = true;
            at += size + (at[size] == '|');
        }
    }
    add_entries(g, pace_entries, EDIT_MODIFIER);
}

static void add_openers(struct gather *g)
{
    static const struct {
        const char *word;
        enum line_class kind;
    } rows[] = {
#define OPENER(word, kind, which) {word, kind},
#include "language/words/openers.def"
#undef OPENER
    };
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        bool note = rows[i].kind == LINE_NOTE, version = rows[i].kind == LINE_VERSION;
        add(g, str_of(rows[i].word), note ? EDIT_NOTE : version ? EDIT_SETTING : EDIT_HEADING);
    }
    for (int i = 0; i < SETTING_COUNT; i++) {
        add(g, str_of(setting_word((enum setting)i)), EDIT_SETTING);
    }
}

static void add_values(struct gather *g)
{
    for (int i = 0; i < COURT_COUNT; i++) {
        add(g, str_of(court_of((enum court_code)i)->word), EDIT_VALUE);
    }
    for (int i = 0; i < LEVEL_COUNT; i++) {
        add(g, str_of(level_of((enum level_code)i)->word), EDIT_VALUE);
    }
    for (size_t i = 0; i < formation_count(); i++) {
        add(g, str_of(formation_at(i)->word), EDIT_VALUE);
    }
#define CHOICE(setting, word_, what_)                                                              \
    {                                                                                              \
        struct candidate *choice = add(g, STR(word_), EDIT_VALUE);                                 \
        choice->what = STR(what_);                                                                 \
        choice->name = STR("");                                                                    \
    }
#include "language/words/choices.def"
#undef CHOICE
    for (int i = ZONE_NONE + 1; i < ZONE_COUNT; i++) {
        add(g, str_of(zone_row((enum zone)i)->setting), EDIT_VALUE);
    }
}

/* Which of the book's own names stand where: by the line's first word and the one before. */
enum named { NAMED_PLAY, NAMED_ACTION, NAMED_READ, NAMED_LINEUP, NAMED_CHART };

static struct str conditions_text(struct gather *g, const struct block *block)
{
    struct strbuf out;
    strbuf_init(&out, g->arena);
    for (size_t i = 0; i < block->conditions.count; i++) {
        strbuf_text(&out, i ? " or " : "");
        tidy_condition(&out, &block->conditions.at[i]);
    }
    return strbuf_str(&out);
}

static struct str roles_text(struct gather *g, const struct block *block)
{
    struct strbuf out;
    strbuf_init(&out, g->arena);
    for (size_t i = 0; i < block->roles.count; i++) {
        strbuf_text(&out, i ? ", " : "for ");
        strbuf_add(&out, block->roles.at[i]);
    }
    return strbuf_str(&out);
}

static void add_named(struct gather *g, const struct block *in, enum named wanted)
{
    for (size_t i = 0; i < in->forms.count; i++) {
        const struct form *form = &in->forms.at[i];
        if (form->kind == FORM_LINEUP && wanted == NAMED_LINEUP) {
            add_quoted(g, form->title, STR("a lineup"));
        }
        if (form->kind == FORM_CHART && wanted == NAMED_CHART) {
            add(g, form->note->word, EDIT_QUOTED)->what = form->note->text;
        }
        const struct block *block = form->block;
        if ((form->kind != FORM_BLOCK && form->kind != FORM_INCLUDE) || !block) {
            continue;
        }
        bool play = block->kind == BLOCK_PLAY || block->kind == BLOCK_DRILL;
        bool read = block->kind == BLOCK_READ || block->kind == BLOCK_OPTION;
        if (play && wanted == NAMED_PLAY && block != g->context->play) {
            add_quoted(g, block->title, block->kind == BLOCK_PLAY ? STR("a play") : STR("a drill"));
        } else if (block->kind == BLOCK_ACTION && wanted == NAMED_ACTION) {
            add_quoted(g, block->title, roles_text(g, block));
        } else if (read && wanted == NAMED_READ && block->title.size > 0) {
            add_quoted(g, block->title, conditions_text(g, block));
        }
        add_named(g, block, wanted);
    }
}

static const struct block *action_named(const struct block *in, struct str title)
{
    for (size_t i = 0; i < in->forms.count; i++) {
        const struct form *form = &in->forms.at[i];
        const struct block *block =
            form->kind == FORM_BLOCK || form->kind == FORM_INCLUDE ? form->block : NULL;
        if (block && block->kind == BLOCK_ACTION && str_equal_fold(block->title, title)) {
            return block;
        }
        if (block && form->kind == FORM_INCLUDE) {
            const struct block *found = action_named(block, title);
            if (found) {
                return found;
            }
        }
    }
    return NULL;
}

static bool line_has(const struct line *line, const char *word)
{
    for (size_t i = 1; i < line->count; i++) {
        if (line->tokens[i].kind == TOKEN_WORD && str_is(line->tokens[i].text, word)) {
            return true;
        }
    }
    return false;
}

/* In a practice, plays behind their word; in what was charted, plays, their reads and chart words.
 */
static void add_plan_names(struct gather *g)
{
    const struct line *line = &g->context->line;
    const struct block *file = g->context->book->file;
    if (g->context->top == BLOCK_PRACTICE) {
        if (line_has(line, "drill") || line_has(line, "play")) {
            add_named(g, file, NAMED_PLAY);
        }
    } else if (line->count < 2) {
        add_named(g, file, line->count == 0 ? NAMED_PLAY : NAMED_CHART);
    } else {
        add_named(g, file, line_has(line, "read") ? NAMED_READ : NAMED_CHART);
    }
}

static void add_names(struct gather *g)
{
    const struct line *line = &g->context->line;
    const struct block *file = g->context->book->file;
    struct opener opener = opener_of(line, 0);
    bool note = opener.kind == LINE_NOTE, run = note && opener.which == FORM_RUN;
    if (opener.kind == LINE_HEADING_0 && line_has(line, "mirrors")) {
        add_named(g, file, NAMED_PLAY);
    } else if (run && !line_has(line, "with")) {
        add_named(g, file, NAMED_ACTION);
    } else if (note && opener.which == FORM_SAME && line_has(line, "of")) {
        add_named(g, file, NAMED_PLAY);
    } else if (opener.kind == LINE_STEP && line_has(line, "after") && g->context->play) {
        add_named(g, g->context->play, NAMED_READ);
    } else if (opener.kind == LINE_SETTING && opener.which == SETTING_LINEUP) {
        add_named(g, file, NAMED_LINEUP);
    }
    const struct block *action = run ? action_named(file, g->context->action) : NULL;
    if (action) {
        add_roles(g, action);
    }
}

/* The roles of the action that is being written. */
static void add_own_roles(struct gather *g)
{
    const struct block *file = g->context->book->file, *own = NULL;
    for (size_t i = 0; i < file->forms.count; i++) {
        const struct form *form = &file->forms.at[i];
        if (form->kind == FORM_BLOCK && form->block->span.begin <= g->context->at) {
            own = form->block;
        }
    }
    if (own && own->kind == BLOCK_ACTION) {
        add_roles(g, own);
    }
}

/* What opens the lines of a practice and stands in them; in what was charted. */
static void add_plan(struct gather *g)
{
    static const char *const extras[] = {"groups of", "against",      "contact", "no contact",
                                         "with",      "change every", NULL};
    static const char *const charted[] = {"points", "read", "of", "in", "by", NULL};
    bool practice = g->context->top == BLOCK_PRACTICE;
    for (int kind = PLAN_STARTS; practice && kind <= PLAN_STATION; kind++) {
        if (kind != PLAN_ITEM) {
            add(g, str_of(plan_word((enum plan_kind)kind)), EDIT_SETTING);
        }
    }
    for (int kind = 0; practice && kind < CONTENT_COUNT; kind++) {
        if (kind != CONTENT_TEXT) {
            add(g, str_of(content_word((enum content_kind)kind)), EDIT_NOTE);
        }
    }
    for (const char *const *word = practice ? extras : charted; *word; word++) {
        add(g, str_of(*word), EDIT_MODIFIER);
    }
}

void offers_gather(const struct context *context, const char *const *checks, candidate_list *out)
{
    struct gather gather = {context, context->text->arena, out};
    add_names(&gather);
    if (context->top == BLOCK_ACTION) {
        add_own_roles(&gather);
    }
    if (context->top == BLOCK_PRACTICE || context->top == BLOCK_CHARTED) {
        add_plan(&gather);
        add_plan_names(&gather);
    }
    add_people(&gather);
    add_openers(&gather);
    add_values(&gather);
    add_verbs(&gather);
    add_prepositions(&gather);
    add_places(&gather);
    add_words(&gather);
    for (; checks && *checks; checks++) {
        add(&gather, str_of(*checks), EDIT_CHECK);
    }
}
