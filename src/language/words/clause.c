/* SPDX-License-Identifier: MIT */
/* clause: one clause, as, after, when, while and times, and what is wrong with it; what it names is
 * read by tie.c. */
#include "language/words/grammar.h"
#include "language/words/speech.h"

/* The first row of a value is the one messages use. */
static const struct entry clause_entries[] = {
    {"as", TIE_AS},
    {"after", TIE_AFTER},
    {"right after", TIE_AFTER},
    {"when", TIE_WHEN},
    {"once", TIE_WHEN},
    {"as soon as", TIE_WHEN},
    {"at same time as", TIE_AS},
    {"at same instant that", TIE_AS},
    {"at same moment that", TIE_AS},
    {"at same instant as", TIE_AS},
    {"at same moment as", TIE_AS},
    {"at very moment", TIE_WHEN},
    {"very moment", TIE_WHEN},
    {"at instant", TIE_WHEN},
    {"just as", TIE_AS},
    {"right as", TIE_AS},
    {"moment", TIE_WHEN},
    {"moment that", TIE_WHEN},
    {"instant", TIE_WHEN},
    {"second that", TIE_WHEN},
    {"second", TIE_WHEN}, /* behind article_second */
    {"minute", TIE_WHEN},
    {"whenever", TIE_WHEN},
    {"by the time", TIE_WHEN},
    {"only once", TIE_WHEN},
    {"not until", TIE_WHEN},
    {"every time", TIE_WHEN},
    {"each time", TIE_WHEN},
    {"soon as", TIE_WHEN},
    {"just when", TIE_WHEN},
    {"only when", TIE_WHEN},
    {"only after", TIE_AFTER},
    {"directly after", TIE_AFTER},
    {"shortly after", TIE_AFTER},
    {"following", TIE_AFTER},
    {"during", TIE_WHILE},
    {"exactly as", TIE_AS},
    {"exactly when", TIE_WHEN},
    {"at the moment", TIE_WHEN},
    {"just after", TIE_AFTER},
    {"right when", TIE_WHEN},
    {"while", TIE_WHILE},
    {"immediately after", TIE_AFTER},
    {NULL, 0},
};

/* on the pass, off 2's catch: as and after. */
static enum tie_word noun_clause(struct cursor *c)
{
    static const struct entry words[] = {{"on", TIE_AS},   {"upon", TIE_AS},   {"at", TIE_AS},
                                         {"with", TIE_AS}, {"off", TIE_AFTER}, {NULL, 0}};
    static const char *const stress[] = {"immediately", "right", "straight", "directly", NULL};
    static const char *const begins[] = {"immediately", "right", "straight", "directly", "on",
                                         "upon",        "at",    "off",      "with",     NULL};
    if (!word_among(c, begins)) {
        return TIE_NONE;
    }
    struct cursor trial = *c;
    take_among(&trial, stress);
    int word = take_entry(&trial, words);
    bool with = token_is_word(&trial.at[-1], "with");
    if (word < 0 || !above_noun_is(&trial, word == TIE_AFTER) ||
        (with && !above_catch_is(&trial))) { /* with the skip pass: how, and not when */
        return TIE_NONE;
    }
    c->at = trial.at;
    return (enum tie_word)word;
}

/* the second 1 gives it up, 3 cuts: a moment, and no number. */
bool article_second(const struct cursor *c)
{
    const struct token *next = cursor_next(c);
    struct cursor behind = *c;
    if (!next || next == c->at || !token_is_word(next, "second") ||
        !token_is_word(&next[-1], "the")) {
        return false;
    }
    behind.watch = NULL;
    behind.at = next + 1;
    if (subject_verb_is(&behind)) {
        return true;
    }
    struct event event;
    struct cursor_mark mark = cursor_mark(c);
    bool happens = event_read(&behind, &event) && event.kind == EVENT_CATCHES;
    cursor_back(&behind, mark);
    return happens;
}

bool clause_is(const struct cursor *c)
{
    struct cursor trial = *c;
    if (article_second(c)) {
        return true;
    }
    if (noun_clause(&trial) != TIE_NONE) {
        return true;
    }
    bool ordinal = word_is(c, 0, "second") && !word_is(c, 1, "that");
    if (!ordinal && take_entry(&trial, clause_entries) >= 0) {
        return true;
    }
    if (take_words(&trial, "at")) {
        return skip_seconds(&trial);
    }
    if (skip_seconds(&trial)) {
        return word_is(&trial, 0, "after") || word_is(&trial, 0, "later") ||
               (word_is(&trial, 0, "in") && (take_words(&trial, "in"), mark_is(&trial, ',')));
    }
    return false;
}

void event_refuse(struct cursor *c, const char *word)
{
    struct cursor trial = *c;
    struct who who;
    struct span span = cursor_span(c);
    if (!who_read(&trial, &who)) {
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_HALF, span, "`%s` what? Who does what is missing", word),
                  "write `%s 1 passes`", word);
        return;
    }
    c->refusals = trial.refusals;
    const char *near = phrase_nearest(&trial, who_side(&who));
    struct str name = cursor_text(c, who.span);
    struct diag *diag;
    if (word_is(&trial, 0, "and") || mark_is(&trial, ',')) {
        diag = REFUSE(c, TEXT_CLAUSE_HALF, cursor_span(&trial),
                      "`%s` takes one player and what that player does", word);
        near = NULL;
    } else {
        diag = REFUSE(c, TEXT_CLAUSE_HALF, cursor_span(&trial), "`%s %.*s` does what?", word,
                      STR_ARG(name));
    }
    if (word_is(&trial, 0, "is")) { /* as 1 is dribbling */
        diag_help(c->diags, diag, "write `%s %.*s dribbles`, or a state: `when %.*s is open`", word,
                  STR_ARG(name), STR_ARG(name));
        return;
    }
    diag_help(c->diags, diag,
              near ? "did you mean `%s`?" : "write `as 1 passes` or `when 2 catches`", near);
}

bool bare_before(const struct cursor *c)
{
    static const char *const words[] = {"to", "for", "off", "of", "at", "on", "with", NULL};
    return !token_is_among(&c->at[-1], words);
}

/* The longest event; one without its object where only that leaves the sentence a subject. */
static bool event_before_sentence(struct cursor *c, struct event *out)
{
    struct cursor_mark mark = cursor_mark(c);
    if (!event_read(c, out)) {
        return false;
    }
    struct cursor dropped = *c; /* when x2 goes under 2 stops: the own man is left out, and acts */
    while (dropped.at > mark.at && dropped.at[-1].filler) {
        dropped.at--;
    }
    dropped.at -= dropped.at > mark.at ? 1 : 0;
    if (out->object.kind == WHO_NONE && !cursor_done(c) && !mark_is(c, ',') &&
        !subject_verb_is(c) && who_defends(&out->subject) && dropped.at->kind == TOKEN_NUMBER &&
        !dropped.at->possessive && bare_before(&dropped) && subject_verb_is(&dropped)) {
        c->at = dropped.at;
        out->span = cursor_taken(c, mark.at);
        return true;
    }
    if (out->object.kind == WHO_NONE || event_is_state(out) || cursor_done(c) || mark_is(c, ',') ||
        subject_verb_is(c)) {
        return true;
    }
    struct cursor trial = *c;
    struct span object = out->object.span;
    while (trial.at > mark.at && trial.at[-1].span.begin >= object.begin) {
        trial.at--;
    }
    if (!bare_before(&trial) || !subject_verb_is(&trial)) {
        return true;
    }
    c->at = trial.at;
    out->object = (struct who){.kind = WHO_NONE};
    out->span = cursor_taken(c, mark.at);
    return true;
}

static bool state_refuse(struct cursor *c, const struct event *event, const char *word)
{
    struct str text = cursor_text(c, event->span);
    diag_help(c->diags,
              REFUSE(c, TEXT_STATE_UNFIT, event->span,
                     "`%.*s` is a state, and `%s` takes what somebody does", STR_ARG(text), word),
              "write `when %.*s`", STR_ARG(text));
    return false;
}

bool clause_place(struct cursor *c, const struct event *event, const char *word)
{
    if (!word_among(c, place_words) || clause_is(c) || moment_same_place(c, event)) {
        return false;
    }
    struct diag *diag = REFUSE(c, TEXT_CLAUSE_HALF, cursor_span(c),
                               "`%s` takes who does what, without where", word);
    struct str verb = above_verb(c, &event->subject);
    if (event->verb == VERB_GOES && verb.size > 0) { /* when 3 gets to the corner */
        diag_help(c->diags, diag, "write `after %.*s %.*s,`",
                  STR_ARG(cursor_text(c, event->subject.span)), STR_ARG(verb));
        return true;
    }
    diag_help(c->diags, diag, "write `%s %.*s,`", word, STR_ARG(cursor_text(c, event->span)));
    return true;
}

/* when 1 gets there: the moment has a name by what 1 does. */
static bool arrival_refused(struct cursor *c, const char *word)
{
    static const char *const moments[] = {"gets there", "get there",   "arrives", "arrive",
                                          "is there",   "has arrived", "is set",  "is in position",
                                          "is done",    "finishes",    NULL};
    struct cursor trial = *c;
    struct cursor_mark mark = cursor_mark(c);
    struct who who = {.kind = WHO_NONE};
    struct event event;
    bool noun = above_event_read(&trial, &event) != 0; /* the ball is in the air */
    cursor_back(c, mark);
    if (noun) {
        return false;
    }
    trial = *c;
    bool known = who_read(&trial, &who);
    if (known && who.kind == WHO_BALL) {
        cursor_back(c, mark);
        diag_help(c->diags,
                  REFUSE(c, TEXT_CLAUSE_HALF, who.span, "the ball does nothing by itself"),
                  "write `as 1 passes`, or `when 2 catches`");
        return true;
    }
    const struct token *from = trial.at;
    bool arrival = known && take_among(&trial, moments);
    struct span span = cursor_taken(&trial, from);
    cursor_back(c, mark);
    struct event same = {.subject = who};
    trial.at = from;
    if (!arrival || moment_arrival_read(&trial, &same)) { /* it is of a sentence above */
        return false;
    }
    struct str verb = above_verb(c, &who), name = cursor_text(c, who.span);
    verb = verb.size > 0 ? verb : STR("cuts");
    diag_help(c->diags,
              REFUSE(c, TEXT_CLAUSE_HALF, span,
                     "`%s %.*s %.*s`: a moment is named by a verb of the "
                     "play",
                     word, STR_ARG(name), STR_ARG(cursor_text(c, span))),
              "write `after %.*s %.*s`: that is when the sentence is done", STR_ARG(name),
              STR_ARG(verb));
    return true;
}

/* after two dribbles, 2 passes: a count, or the player two? */
static bool count_refused(struct cursor *c, const char *word)
{
    static const char *const counted[] = {"dribble", "dribbles", "hard dribbles",
                                          "bounce",  "bounces",  NULL};
    static const char *const alone[] = {"pass", "screen", "cut", "step", "steps", NULL};
    const struct token *next = cursor_next(c);
    if (!next || next->kind != TOKEN_NUMBER || next->possessive || next->first < 'a') {
        return false;
    }
    struct cursor trial = *c;
    trial.at = next + 1;
    trial.watch = NULL;
    if (!take_among(&trial, counted) && !take_among(&trial, alone)) {
        return false;
    }
    struct cursor where = trial; /* two dribbles at three, over to the slot; one dribbles */
    take_particles(&where);
    bool single =
        next->number == 1 && ends_in_s(trial.at - 1) && !str_is(trial.at[-1].text, "pass");
    if (word_among(&where, place_words) || word_is(&trial, 0, "for") || single) {
        return false;
    }
    struct span span = cursor_taken(&trial, next);
    diag_help(c->diags,
              REFUSE(c, TEXT_TWO_MEANINGS, span, "`%.*s`: the player of that number, or a count?",
                     STR_ARG(cursor_text(c, span))),
              "of the player: `%s %d dribbles`; of a count say where it ends, `2 dribbles to right "
              "slot`, and "
              "write what follows on the next line",
              word, (int)next->number);
    return true;
}

/* Nothing of the clause is left: a comma, or somebody else who acts. */
static bool clause_over(struct cursor *c)
{
    return cursor_done(c) || mark_is(c, ',') || stop_is(c) || subject_verb_is(c);
}

/* The event by its verb; in speech also as it is told, where that leaves nothing of the clause. */
static bool event_or_told(struct cursor *c, struct event *out, const char *word)
{
    struct cursor_mark mark = cursor_mark(c);
    struct cursor named = *c, told = *c;
    if (c->speech && event_pointed(&named, out) && clause_over(&named)) {
        *c = named;
        return true;
    }
    cursor_back(&named, mark);
    named = *c;
    bool read = !arrival_refused(&named, word) && event_before_sentence(&named, out);
    if (read && (!c->speech || clause_over(&named))) {
        out->over = out->over || (out->verb == VERB_GOES && event_arrives(c));
        *c = named;
        if (event_settled(c, out)) {
            note_told(c, out);
        }
        return true;
    }
    struct event event;
    cursor_back(&told, mark);
    if (c->speech && event_told(&told, &event)) {
        note_told(c, &event);
        *c = told;
        *out = event;
        return true;
    }
    cursor_back(&named, mark);
    named = *c;
    read = !arrival_refused(&named, word) && event_before_sentence(&named, out);
    *c = named;
    return read;
}

static bool clause_event_read(struct cursor *c, struct tie *tie, const char *word)
{
    size_t before = c->refusals;
    struct event event;
    if (count_refused(c, word)) {
        return false;
    }
    if (!event_or_told(c, &event, word)) {
        if (c->refusals == before) {
            event_refuse(c, word);
        }
        return false;
    }
    bool over = event.over;
    event.over = false;
    moment_catch_place(c, &event);
    tie->event = event_keep(c, event);
    if (over && (tie->word == TIE_AS || tie->word == TIE_WHEN)) {
        tie->word = TIE_AFTER;
    }
    if (event.kind == EVENT_HAS_BALL && tie->word == TIE_AFTER && c->speech) {
        tie->word = TIE_WHEN; /* after 2 has the ball: once he has it */
    }
    if (event_is_state(&event) && tie->word != TIE_WHEN) {
        return state_refuse(c, &event, word);
    }
    return !clause_place(c, &event, word);
}

/* at 2 s, 2 s in, 1 s later, after 1 s, 1 s after 2 catches. 1: read, 0: none here, -1: reported.
 */
static int seconds_read(struct cursor *c, struct tie *tie)
{
    static const char *const leads[] = {"at", "after", NULL};
    struct measure seconds;
    struct cursor trial = *c;
    bool at = word_is(&trial, 0, "at");
    bool led = take_among(&trial, leads);
    static const char *const tails[] = {"after", "later", "in", NULL};
    static const char *const laters[] = {"later",       "after that", "after this",
                                         "after which", "after it",   NULL};
    if (!skip_seconds(&trial) || (!led && !word_among(&trial, tails))) {
        return 0; /* the moment 4 is set */
    }
    if (led) {
        take_among(c, leads);
    }
    take_seconds(c, &seconds);
    tie->seconds = seconds.value;
    tie->word = at ? TIE_AT : TIE_LATER;
    if (led) {
        return 1;
    }
    if (take_among(c, laters)) {
        return 1;
    }
    tie->word = take_words(c, "in") ? TIE_AT : TIE_SECONDS_AFTER;
    return tie->word == TIE_AT || (take_words(c, "after") && clause_event_read(c, tie, "after"))
               ? 1
               : -1;
}

/* as soon as, where it was written so: for messages. */
static const char *tie_as_written(const struct cursor *c, const struct token *from, int word)
{
    for (const struct token *at = from; at < c->at; at++) {
        if (at->kind != TOKEN_WORD || (at > from && at->span.begin < at[-1].span.end)) {
            return entry_words(clause_entries, word);
        }
    }
    const char *plain = entry_words(clause_entries, word);
    struct str text = cursor_text(c, cursor_taken(c, from));
    return str_equal_fold(text, str_of(plain)) ? plain
                                               : str_format(c->arena, "%.*s", STR_ARG(text)).at;
}

bool clause_read(struct cursor *c, struct tie *tie)
{
    int seconds = seconds_read(c, tie);
    if (seconds != 0) {
        return seconds > 0;
    }
    const struct token *from = cursor_next(c);
    tie->word = noun_clause(c);
    bool noun = tie->word != TIE_NONE;
    int word = noun ? (int)tie->word : take_entry(c, clause_entries);
    tie->word = (enum tie_word)word;
    return clause_event_read(
        c, tie, noun || !from ? entry_words(clause_entries, word) : tie_as_written(c, from, word));
}
