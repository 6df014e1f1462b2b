/* SPDX-License-Identifier: MIT */
/* edit: what an editor asks of a text; see the public header. Takes bytes, gives bytes; the tables
 * that explain a word are those of list.c. */
#include "language/edit/edit.h"

#include "program/api/list.h"

/* The public classes are the room's own. */
_Static_assert((int)COURTWRIGHT_CLASS_COUNT == (int)EDIT_CLASS_COUNT, "one list of classes");
#define CLASS(symbol, name, what)                                                                  \
    _Static_assert((int)COURTWRIGHT_CLASS_##symbol == (int)EDIT_##symbol, "in one order");
#include "language/edit/classes.def"
#undef CLASS

const char *courtwright_class_name(enum courtwright_class kind)
{
    return edit_class_name((enum edit_class)kind);
}

struct asked { /* one call */
    struct str name, text;
    size_t at;
    const struct courtwright_host *host;
    void *ctx;
    courtwright_each_token each_token;
    courtwright_each_completion each_completion;
    courtwright_each_hover each_hover;
    courtwright_each_sentence each_sentence;
    /* in the call's arena */
    struct arena *arena;
    struct sources sources;
    struct loader loader;
    struct edit_text edit;
};

static bool text_begin(struct arena *scratch, struct asked *asked)
{
    if (asked->text.size > COURTWRIGHT_TEXT_MOST || has_nul(asked->text)) {
        return false;
    }
    bool fetches = asked->host && asked->host->fetch;
    asked->arena = scratch;
    sources_init(&asked->sources, scratch);
    uint32_t source = sources_add(&asked->sources, asked->name, asked->text);
    asked->loader.load = load_include;
    asked->loader.ctx = (void *)(uintptr_t)asked->host; /* it is only read */
    asked->edit =
        (struct edit_text){scratch, &asked->sources, source, fetches ? &asked->loader : NULL};
    return true;
}

static enum courtwright_status ask(struct asked *asked,
                                   enum courtwright_status (*work)(struct arena *, void *))
{
    struct memory memory = memory_of(asked->host);
    if (asked->name.size == 0) {
        asked->name = STR("play");
    }
    if (!asked->text.at) {
        asked->text = STR("");
    }
    return with_scratch(&memory, work, asked);
}

static enum courtwright_status give_tokens(struct arena *scratch, void *ctx)
{
    struct asked *asked = ctx;
    edit_token_list tokens = {0};
    if (!text_begin(scratch, asked)) {
        return COURTWRIGHT_BROKEN;
    }
    edit_tokens(&asked->edit, &tokens);
    for (size_t i = 0; i < tokens.count; i++) {
        struct courtwright_token token = {tokens.at[i].begin, tokens.at[i].end,
                                          (enum courtwright_class)tokens.at[i].class};
        if (!asked->each_token(asked->ctx, &token)) {
            break;
        }
    }
    return COURTWRIGHT_OK;
}

enum courtwright_status courtwright_tokens(const char *text, size_t size,
                                           const struct courtwright_host *host,
                                           courtwright_each_token each, void *ctx)
{
    struct asked asked = {.text = {text, size}, .host = host, .each_token = each, .ctx = ctx};
    return ask(&asked, give_tokens);
}

/* ---- the tables, once through, for short texts ---- */

struct known {
    struct arena *arena;
    VEC(struct courtwright_entry) rows;
};

static bool know(void *ctx, const struct courtwright_entry *entry)
{
    struct known *known = ctx;
    VEC_PUSH(known->arena, &known->rows, *entry);
    return true;
}

static void know_all(struct arena *arena, struct known *known)
{
    static const enum courtwright_list lists[] = {
        COURTWRIGHT_VERBS,    COURTWRIGHT_PLACES, COURTWRIGHT_FORMATIONS,
        COURTWRIGHT_SETTINGS, COURTWRIGHT_COURTS, COURTWRIGHT_LEVELS,
        COURTWRIGHT_WORDS,    COURTWRIGHT_ZONES,  COURTWRIGHT_CHECKS};
    known->arena = arena;
    for (size_t i = 0; i < sizeof lists / sizeof *lists; i++) {
        struct lister lister = {.arena = arena, .list = lists[i], .each = know, .ctx = known};
        list_table(&lister);
    }
}

static const char *what_of(const struct known *known, struct str name)
{
    for (size_t i = 0; name.size > 0 && i < known->rows.count; i++) {
        if (str_equal_fold(name, str_of(known->rows.at[i].word))) {
            return known->rows.at[i].what;
        }
    }
    return "";
}

static const char *const *check_ids(struct arena *arena)
{
    const char **ids = arena_array(arena, const char *, check_count() + 1);
    for (size_t i = 0; i < check_count(); i++) {
        ids[i] = check_at(i)->id;
    }
    return ids;
}

static enum courtwright_status give_completions(struct arena *scratch, void *ctx)
{
    struct asked *asked = ctx;
    struct known known = {0};
    edit_offer_list offers = {0};
    if (!text_begin(scratch, asked)) {
        return COURTWRIGHT_BROKEN;
    }
    uint32_t at = (uint32_t)(asked->at < asked->text.size ? asked->at : asked->text.size);
    edit_complete(&asked->edit, at, check_ids(scratch), &offers);
    know_all(scratch, &known);
    for (size_t i = 0; i < offers.count; i++) {
        const struct edit_offer *offer = &offers.at[i];
        struct courtwright_completion completion = {.begin = offer->begin,
                                                    .end = offer->end,
                                                    .kind = (enum courtwright_class)offer->class,
                                                    .text = clean_copy(scratch, offer->text),
                                                    .what = offer->what.size > 0
                                                                ? clean_copy(scratch, offer->what)
                                                                : what_of(&known, offer->name)};
        if (!asked->each_completion(asked->ctx, &completion)) {
            break;
        }
    }
    return COURTWRIGHT_OK;
}

enum courtwright_status courtwright_complete(const char *name, const char *text, size_t size,
                                             size_t at, const struct courtwright_host *host,
                                             courtwright_each_completion each, void *ctx)
{
    struct asked asked = {.name = str_of(name),
                          .text = {text, size},
                          .at = at,
                          .host = host,
                          .each_completion = each,
                          .ctx = ctx};
    return ask(&asked, give_completions);
}

/* ---- sentences ---- */

static const char *moment_text(enum moment moment)
{
    static const char *const words[MOMENT_COUNT] = {
        [MOMENT_STARTED] = "started", [MOMENT_RELEASED] = "released", [MOMENT_SET] = "set",
        [MOMENT_CAUGHT] = "caught",   [MOMENT_USED] = "used",         [MOMENT_ARRIVED] = "arrived"};
    return (size_t)moment < MOMENT_COUNT ? words[moment] : "";
}

static void told_sentence(struct asked *asked, const struct edit_sentence *sentence,
                          struct courtwright_sentence *told)
{
    struct arena *arena = asked->arena;
    const struct source *source = &asked->sources.all.at[sentence->span.source];
    struct courtwright_tie *ties = arena_array(arena, struct courtwright_tie, sentence->ties.count);
    struct courtwright_drawn *drawn =
        arena_array(arena, struct courtwright_drawn, sentence->diagrams.count);
    for (size_t i = 0; i < sentence->ties.count; i++) {
        const struct edit_tie *tie = &sentence->ties.at[i];
        bool here = tie->sentence && tie->sentence->span.source == sentence->span.source;
        ties[i] = (struct courtwright_tie){
            .begin = here ? tie->sentence->span.begin : 0,
            .end = here ? tie->sentence->span.end : 0,
            .moment = moment_text(tie->moment),
            .seconds = tie->delay,
            .written = tie->written,
            .fixed = tie->fixed,
        };
    }
    for (size_t i = 0; i < sentence->diagrams.count; i++) {
        drawn[i] = (struct courtwright_drawn){sentence->diagrams.at[i].play,
                                              clean_copy(arena, sentence->diagrams.at[i].label)};
    }
    *told = (struct courtwright_sentence){
        .begin = sentence->span.begin,
        .end = sentence->span.end,
        .line = source_place(source, sentence->span.begin).line,
        .tidy = clean_copy(arena, sentence->tidy),
        .told = clean_copy(arena, sentence->told),
        .tasks = sentence->tasks,
        .ties = ties,
        .tie_count = sentence->ties.count,
        .diagrams = drawn,
        .diagram_count = sentence->diagrams.count,
    };
}

static enum courtwright_status give_sentences(struct arena *scratch, void *ctx)
{
    struct asked *asked = ctx;
    edit_sentence_list sentences = {0};
    if (!text_begin(scratch, asked)) {
        return COURTWRIGHT_BROKEN;
    }
    edit_sentences(&asked->edit, name_stem(asked->name), &sentences);
    for (size_t i = 0; i < sentences.count; i++) {
        struct courtwright_sentence told;
        told_sentence(asked, &sentences.at[i], &told);
        if (!asked->each_sentence(asked->ctx, &told)) {
            break;
        }
    }
    return COURTWRIGHT_OK;
}

enum courtwright_status courtwright_sentences(const char *name, const char *text, size_t size,
                                              const struct courtwright_host *host,
                                              courtwright_each_sentence each, void *ctx)
{
    struct asked asked = {.name = str_of(name),
                          .text = {text, size},
                          .host = host,
                          .each_sentence = each,
                          .ctx = ctx};
    return ask(&asked, give_sentences);
}

/* ---- hover ---- */

struct hovering {
    struct asked *asked;
    const struct edit_word *word;
    size_t given;
    bool stopped;
};

static bool hover_row(void *ctx, const struct courtwright_entry *entry)
{
    struct hovering *hovering = ctx;
    struct arena *arena = hovering->asked->arena;
    struct courtwright_hover hover = {
        .begin = hovering->word->begin,
        .end = hovering->word->end,
        .kind = (enum courtwright_class)hovering->word->class,
        .title = entry->word,
        .text = *entry->why ? str_format(arena, "%s%s %s", entry->what,
                                         entry->list == COURTWRIGHT_CHECKS ? "" : ".", entry->why)
                                  .at
                            : entry->what,
        .example = entry->good};
    hovering->given++;
    hovering->stopped = !hovering->asked->each_hover(hovering->asked->ctx, &hover);
    return !hovering->stopped;
}

/* Where to look for a word of a class; what is in no row here is looked for among the words. */
static const struct {
    enum edit_class class;
    enum courtwright_list list;
} tables_of[] = {
    {EDIT_VERB, COURTWRIGHT_VERBS},       {EDIT_PLACE, COURTWRIGHT_PLACES},
    {EDIT_SETTING, COURTWRIGHT_SETTINGS}, {EDIT_CHECK, COURTWRIGHT_CHECKS},
    {EDIT_VALUE, COURTWRIGHT_FORMATIONS}, {EDIT_VALUE, COURTWRIGHT_COURTS},
    {EDIT_VALUE, COURTWRIGHT_LEVELS},     {EDIT_VALUE, COURTWRIGHT_ZONES},
};

/* Every row that goes by this word, of the tables of its class. */
static void hover_tables(struct hovering *hovering, struct str name)
{
    struct arena *arena = hovering->asked->arena;
    struct lister lister = {.arena = arena,
                            .each = hover_row,
                            .ctx = hovering,
                            .list = COURTWRIGHT_WORDS,
                            .word = str_copy(arena, name).at};
    if (name.size == 0) {
        return;
    }
    for (size_t i = 0; i < sizeof tables_of / sizeof *tables_of; i++) {
        if (tables_of[i].class == hovering->word->class) {
            lister.list = tables_of[i].list;
            list_table(&lister);
        }
    }
    if (hovering->given == 0) {
        lister.list = COURTWRIGHT_WORDS;
        list_table(&lister);
    }
}

static void hover_word(struct asked *asked, struct hovering *hovering)
{
    struct edit_word word;
    bool says_nothing = !edit_word_at(&asked->edit, (uint32_t)asked->at, &word) ||
                        word.class == EDIT_QUOTED || word.class == EDIT_COMMENT;
    if (says_nothing) {
        return;
    }
    hovering->word = &word;
    hover_tables(hovering, word.name);
    if (hovering->given == 0 && !str_equal(word.name, word.written)) {
        hover_tables(hovering, word.written);
    }
}

static void hover_sentence(struct asked *asked, struct hovering *hovering)
{
    edit_sentence_list sentences = {0};
    edit_sentences(&asked->edit, name_stem(asked->name), &sentences);
    for (size_t i = 0; i < sentences.count && !hovering->stopped; i++) {
        const struct edit_sentence *sentence = &sentences.at[i];
        if (sentence->span.begin > asked->at || asked->at > sentence->span.end) {
            continue;
        }
        struct courtwright_hover hover = {.begin = sentence->span.begin,
                                          .end = sentence->span.end,
                                          .sentence = true,
                                          .title = clean_copy(asked->arena, sentence->tidy),
                                          .text = clean_copy(asked->arena, sentence->told),
                                          .example = ""};
        hovering->given++;
        hovering->stopped = !asked->each_hover(asked->ctx, &hover);
    }
}

static enum courtwright_status give_hover(struct arena *scratch, void *ctx)
{
    struct asked *asked = ctx;
    struct hovering hovering = {.asked = asked};
    if (!text_begin(scratch, asked)) {
        return COURTWRIGHT_BROKEN;
    }
    if (asked->at > asked->text.size) {
        return COURTWRIGHT_NO_SUCH;
    }
    hover_word(asked, &hovering);
    if (!hovering.stopped) {
        hover_sentence(asked, &hovering);
    }
    return hovering.given > 0 ? COURTWRIGHT_OK : COURTWRIGHT_NO_SUCH;
}

enum courtwright_status courtwright_hover(const char *name, const char *text, size_t size,
                                          size_t at, const struct courtwright_host *host,
                                          courtwright_each_hover each, void *ctx)
{
    struct asked asked = {.name = str_of(name),
                          .text = {text, size},
                          .at = at,
                          .host = host,
                          .each_hover = each,
                          .ctx = ctx};
    return ask(&asked, give_hover);
}
